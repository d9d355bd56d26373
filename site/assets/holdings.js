// The facts and what is said of the plates joined: what the catalogue holds, as the pages one asks of need it.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod = root.InPeriod || {});
  const GRADES = { A: "A", B: "B", C: "C", style: "C", none: "" };
  const rows = {};

  /** A scan as it is given; a flat by its size, its path following from the plate's key. */
  function pictureOf(key, given) {
    if (!given) return null;
    if (given.length === 2) return { path: `flat/${key}.svg`, alt: "", width: given[0], height: given[1] };
    return { path: given[0], alt: given[1], width: given[2], height: given[3] };
  }

  /**
   * {facts, plate(number), numberOf(key), terms(number), need(numbers)} for the plates of these columns. What is said
   * of a plate has to be there: `need` is null where it is, else a promise of its coming.
   */
  function hold(index, columns) {
    const { evidence } = InPeriod,
      facts = evidence.factsFromJson(index, columns);
    const { count, keyOf, documentOf, within, garmentOf, wearers, starts, shown } = facts.plates;
    let numbers = null, blocks = null;

    /** The number of the plate with that key. */
    function numberOf(key) {
      numbers = numbers || new Map(Array.from({ length: count }, (_, number) => [keyOf(number), number]));
      return numbers.get(key);
    }

    /** All that a list says of a plate. Paths are from the root of the site. */
    function plate(number) {
      const document = facts.documents[documentOf[number]];
      const [title, begins, ends, when, all] = rows[documentOf[number]];
      const [where, middle, picture] = all[within[number]],
        key = keyOf(number);
      return {
        key,
        path: `plate/${key}.html`,
        label: InPeriod.raised(facts.garments[garmentOf[number]].label),
        garment: garmentOf[number],
        who: wearers[number],
        source: title,
        kind: document.kind,
        places: document.places,
        grade: GRADES[document.basis],
        days: document.days,
        when,
        where,
        cite: begins + middle + ends,
        picture: pictureOf(key, picture),
      };
    }

    /** Brings what is said of these plates; `more` names what else lies in the same blocks and is wanted, by document. */
    function need(wanted, more = {}) {
      blocks = blocks || evidence.unpacked(index.blocks);
      const coming = [];
      for (const [folder, into] of Object.entries({ rows, ...more })) {
        const lacking = wanted.map((number) => documentOf[number]).filter((document) => !(document in into));
        for (const block of new Set(lacking.map((document) => blocks[document])))
          coming.push(InPeriod.load(`${folder}/${block}`).then((given) => Object.assign(into, given)));
      }
      return coming.length ? Promise.all(coming) : null;
    }

    /** Term indices a plate shows, wider terms with them. */
    const terms = (number) => Array.from(shown.subarray(starts[number], starts[number + 1]), (code) => code >> 1);

    return { facts, plate, terms, need, numberOf };
  }

  /** The name of the data with the plates of a garment: in a small catalogue one holds those of all. */
  const platesOf = (index, garment) => (index.apart ? `garment/${garment}` : "every");

  /** A line of a printed list: what, a link to it, where, and across the leader when. */
  function tradeLine(what, href, where, ...when) {
    const { h } = InPeriod;
    return h(
      "p",
      { class: "trade-line" },
      h("span", { class: "trade-text" }, h("a", { class: "trade-what", href }, what), where && " ", where),
      " ",
      h("span", { class: "leader", "aria-hidden": "true" }),
      " ",
      h("span", { class: "trade-when" }, ...when),
    );
  }

  /** A plate as a line of a printed list, as the macro of the templates makes it. */
  function plateLine({ path, label, source, where, when, grade }) {
    const { h } = InPeriod;
    const found = h("span", { class: "trade-where" }, source, where && ", ", where && h("span", { class: "plate-number" }, where));
    return tradeLine(label, path, found, when, grade && " ", grade && gradeSign(grade));
  }

  const gradeSign = (grade) => InPeriod.h("abbr", { class: "grade", title: `Dating grade ${grade}` }, grade);

  /** The picture of a plate in a list; the words beside it say what it is. */
  const thumbnail = ({ path, width, height }, name) =>
    InPeriod.h("img", { class: name, src: path, alt: "", width, height, loading: "lazy", decoding: "async" });

  /** Something that is asked or chosen, as a button that takes it away. */
  function chip(facet, label, onclick) {
    const { h } = InPeriod;
    return h(
      "li",
      {},
      h(
        "button",
        { type: "button", class: "chip", onclick },
        h("span", { class: "chip-facet" }, facet),
        " ",
        label,
        h("span", { class: "chip-off", "aria-hidden": "true" }, "×"),
        h("span", { class: "unseen" }, ": take away"),
      ),
    );
  }

  Object.assign(InPeriod, { hold, platesOf, tradeLine, plateLine, gradeSign, thumbnail, chip });
  if (typeof module !== "undefined") module.exports = InPeriod;
})(globalThis);
