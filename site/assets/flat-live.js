// A flat drawn on the page itself: of what a board plans, or of what is asked about.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod = root.InPeriod || {});

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
  function draw({ features, garment, year = null, who = "any" }, facts) {
    const flat = InPeriod.drawPlan(features.map(featureOf), garment, vocabularyOf(facts), year, who || "any");
    if (!flat) return null;
    const { svg, title, undrawn, assumed, width, height } = flat;
    return { svg: String(svg), title, undrawn, assumed, width, height };
  }

  InPeriod.flats = { draw };
  if (typeof module !== "undefined") module.exports = InPeriod;
})(typeof window !== "undefined" ? window : globalThis);
