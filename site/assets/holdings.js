// The facts and the plates' data joined: what the catalogue holds, as the pages one asks of need it.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod = root.InPeriod || {});
  const GRADES = { A: "A", B: "B", C: "C", style: "C", none: "" };

  /** A scan as it is given; a flat by its size, its path following from the plate's key. */
  function pictureOf(key, given) {
    if (!given) return null;
    if (given.length === 2) return { path: `flat/${key}.svg`, alt: "", width: given[0], height: given[1] };
    return { path: given[0], alt: given[1], width: given[2], height: given[3] };
  }

  /** {facts, plate(number), numberOf(key), terms(number)}; plates are numbered as in the facts. */
  function hold(factsData, given) {
    const facts = InPeriod.evidence.factsFromJson(factsData);
    const { keys, documentOf, garmentOf, wearers, starts, shown } = facts.plates;
    const numbers = new Map(keys.map((key, number) => [key, number]));

    /** All that a list says of a plate. Paths are from the root of the site. */
    function plate(number) {
      const document = facts.documents[documentOf[number]];
      const [title, begins, ends] = given.sources[document.source];
      const [where, middle, picture] = given.rows[number];
      return {
        key: keys[number],
        path: `plate/${keys[number]}.html`,
        label: InPeriod.raised(facts.garments[garmentOf[number]].label),
        garment: garmentOf[number],
        who: wearers[number],
        source: title,
        kind: document.kind,
        places: document.places,
        grade: GRADES[document.basis],
        days: document.days,
        when: given.when[documentOf[number]],
        where,
        cite: begins + middle + ends,
        picture: pictureOf(keys[number], picture),
      };
    }

    /** Term indices a plate shows, wider terms with them. */
    function terms(number) {
      return Array.from(shown.subarray(starts[number], starts[number + 1]), (code) => code >> 1);
    }

    return { facts, plate, terms, numberOf: (key) => numbers.get(key) };
  }

  /** A plate as a line of a printed list, as the macro of the templates makes it. */
  function plateLine(plate) {
    const { h } = InPeriod,
      { path, label, source, where, when, grade } = plate;
    return h(
      "p",
      { class: "trade-line" },
      h(
        "span",
        { class: "trade-text" },
        h("a", { class: "trade-what", href: path }, label),
        " ",
        h(
          "span",
          { class: "trade-where" },
          source,
          where && ", ",
          where && h("span", { class: "plate-number" }, where),
        ),
      ),
      " ",
      h("span", { class: "leader", "aria-hidden": "true" }),
      " ",
      h("span", { class: "trade-when" }, when, grade && " ", grade && gradeSign(grade)),
    );
  }

  const gradeSign = (grade) => InPeriod.h("abbr", { class: "grade", title: `Dating grade ${grade}` }, grade);

  Object.assign(InPeriod, { hold, plateLine, gradeSign });
  if (typeof module !== "undefined") module.exports = InPeriod;
})(typeof window !== "undefined" ? window : globalThis);
