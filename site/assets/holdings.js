// The facts and what is said of the plates joined: what the catalogue holds, as the pages one asks of need it.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod ||= {});
  const GRADES = { A: "A", B: "B", C: "C", style: "C", none: "" };
  const rows = {};

  /** A scan as it is given; a flat by its size, its path following from the plate's key. */
  function pictureOf(key, given) {
    if (!given) return null;
    if (given.length === 2) return { path: `flat/${key}.svg`, alt: "", width: given[0], height: given[1] };
    return { path: given[0], alt: given[1], width: given[2], height: given[3] };
  }

  /**
   * {facts, dated, plate(number), numberOf(key), need(numbers)} for the plates of these columns; `dated` are the documents
   * by date, those without one last. What is said of a plate has to be there: `need` is null where it is, else a promise of its coming.
   */
  function hold(index, columns) {
    const { evidence } = InPeriod,
      facts = evidence.factsFromJson(index, columns);
    const { keyOf, numberOf, documentOf, within, garmentOf } = facts.plates;
    const held = evidence.unpacked(index.blocks), dated = [], blocks = [];
    for (let i = 0, block = 0; i < held.length; block += 1)
      for (let left = held[i++]; left > 0; left -= 1) {
        dated.push(held[i]);
        blocks[held[i++]] = block;
      }

    /** All that a list says of a plate. Paths are from the root of the site. */
    function plate(number) {
      const [title, begins, ends, when, all] = rows[documentOf[number]];
      const [where, middle, picture] = all[within[number]],
        key = keyOf(number);
      return {
        key,
        path: `plate/${key}.html`,
        label: InPeriod.raised(facts.garments[garmentOf[number]].label),
        source: title,
        grade: GRADES[facts.documents[documentOf[number]].basis],
        when,
        where,
        cite: begins + middle + ends,
        picture: pictureOf(key, picture),
      };
    }

    /** Brings what is said of these plates; `more` names what else lies in the same blocks and is wanted, by document. */
    function need(wanted, more = {}) {
      const coming = [];
      for (const [folder, into] of Object.entries({ rows, ...more })) {
        const lacking = wanted.map((number) => documentOf[number]).filter((document) => !(document in into));
        for (const block of new Set(lacking.map((document) => blocks[document])))
          coming.push(InPeriod.load(`${folder}/${block}`).then((given) => Object.assign(into, given)));
      }
      return coming.length ? Promise.all(coming) : null;
    }

    return { facts, dated, plate, need, numberOf };
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
