// A flat drawn on the page itself: of what a board plans, or of what is asked about.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod ||= {});

  /** What the drawing asks of the vocabulary, from the facts that every page of questions holds. */
  function vocabularyOf(facts) {
    const known = vocabularyOf.known.get(facts);
    if (known) return known;
    const garments = new Map(
      facts.garments.map(({ id, label, broader }) => [
        id,
        { label, broader: broader === null ? null : facts.garments[broader].id },
      ]),
    );
    const terms = new Map(facts.terms.map(({ key, label }) => [key, { label }]));
    const broader_garments = (garment) => {
      const chain = [];
      for (let at = garment; at && !chain.includes(at); at = garments.has(at) ? garments.get(at).broader : null)
        chain.push(at);
      return chain;
    };
    const made = { terms, garments, broader_garments };
    vocabularyOf.known.set(facts, made);
    return made;
  }
  vocabularyOf.known = new WeakMap();

  /** A feature as the drawing knows it: from a term alone, or from a line of a board. */
  function featureOf(given) {
    const { term, facet, none, not_visible, at, width, count } = typeof given === "string" ? { term: given } : given;
    return {
      facet: term ? term.split("/")[0] : facet || "",
      term: term || null,
      state: term ? "shown" : none ? "none" : not_visible ? "not visible" : "shown",
      at: at || null,
      width: width || null,
      count: Number.isInteger(count) ? count : null,
    };
  }

  /**
   * The flat of a garment with these features in a year (decimal, null where nothing tells it). null for garments
   * that have none. ``svg`` is its markup; ``undrawn`` and ``assumed`` are what is said under it.
   */
  function draw({ features, garment, year = null, who, by = "the records" }, facts) {
    const flat = InPeriod.drawPlan(features.map(featureOf), garment, vocabularyOf(facts), year, who || "any", by);
    if (!flat) return null;
    const { svg, title, undrawn, assumed, width, height } = flat;
    return { svg: String(svg), title, undrawn, assumed, width, height };
  }

  /** The middle of a time in decimal years; the closed end where the other is open, null without either. */
  function middleOf(window) {
    const ends = [window && window.earliest, window && window.latest]
      .filter((day) => day !== null && day !== undefined)
      .map(InPeriod.evidence.decimalYear);
    return ends.length ? ends.reduce((sum, each) => sum + each, 0) / ends.length : null;
  }

  /** Markup of the drawing as elements: read as XML, in which nothing runs. */
  function elementOf(svg) {
    return document.importNode(new DOMParser().parseFromString(svg, "image/svg+xml").documentElement, true);
  }

  /** What is said under a flat, in the words of the macro ``drawn`` of lineup.html. */
  function saidOf({ assumed, undrawn }, words) {
    const { h } = InPeriod;
    const usual =
      assumed.length > 0 &&
      h("p", { class: "flat-said" }, h("span", { class: "flat-word" }, "As was usual then"),
        `, because ${words.by} does not say: ${assumed.join(", ")}.`);
    const left =
      undrawn.length > 0 &&
      h("details", { class: "flat-said", open: undrawn.length <= 4 }, h("summary", {}, `${words.said} but not drawn`),
        h("ul", {}, ...undrawn.map((each) => h("li", {}, each))));
    return [usual, left];
  }

  /**
   * Puts the flat of what is asked, in the middle of its window, into the box in place of what was there; whether
   * there is one. ``words``: the caption, what it is drawn from (``by``), what "but not drawn" is said of (``said``).
   */
  function show(box, { window, ...asked }, facts, words) {
    const year = middleOf(window),
      flat = draw({ ...asked, year, by: words.by }, facts);
    const undated = year === null ? `, in the line of ${InPeriod.neutralYear}, as no time is given` : "";
    const figure =
      flat &&
      InPeriod.h("figure", { class: "plate-picture plate-flat" }, elementOf(flat.svg),
        InPeriod.h("figcaption", {}, `${words.caption}${undated}.`, ...saidOf(flat, words)));
    box.replaceChildren(figure || "");
    return Boolean(flat);
  }

  InPeriod.flats = { draw, show };
  if (typeof module !== "undefined") module.exports = InPeriod;
})(globalThis);
