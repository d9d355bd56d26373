// The question of the home page: read from an address, written into one, made ready for the evidence.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod ||= {});
  const SIMPLE = ["garment", "when", "place", "kind", "wearer", "grades", "worn"];

  /** A question from the pairs of an address. Names it does not know are handed back in `unknown`. */
  function readQuestion(pairs, facts, grades) {
    const asked = { garment: "", when: "", features: [], place: "", kind: "", wearer: "", grades, worn: "" };
    const unknown = [];
    for (const [name, value] of pairs) {
      if (name === "feature") {
        if (!facts.termIndex.has(value)) unknown.push(value);
        else if (!asked.features.includes(value)) asked.features.push(value);
      } else if (SIMPLE.includes(name)) asked[name] = value;
    }
    if (!facts.garmentIndex.has(asked.garment)) {
      if (asked.garment) unknown.push(asked.garment);
      asked.garment = facts.garments.length ? facts.garments[0].id : "";
    }
    if (!["A", "AB", "ABC"].includes(asked.grades)) asked.grades = grades;
    if (!(Number(asked.worn) > 0 && Number(asked.worn) <= 60)) asked.worn = "";
    return { asked, unknown };
  }

  function pairsOf(asked, grades) {
    return [
      ["garment", asked.garment],
      ["when", asked.when],
      ...asked.features.map((feature) => ["feature", feature]),
      ["place", asked.place],
      ["kind", asked.kind],
      ["wearer", asked.wearer],
      ["grades", asked.grades === grades ? "" : asked.grades],
      ["worn", asked.worn],
    ];
  }

  /** The window a text asks for, circa widened: {window, reading}, or {error}. */
  function readWindow(text, circaYears, seasons) {
    if (!text.trim())
      return { error: "Say a year, a decade, a range or a phrase: 1926, the 1920s, 1924–28, summer 1912." };
    try {
      const read = InPeriod.dating.readPhrase(text, seasons);
      const { earliest, latest } = InPeriod.dating.widened(read.span, circaYears);
      const reading = `Understood as ${read.words}.` + (read.note ? ` ${read.note}` : "");
      return { window: { earliest, latest }, reading };
    } catch (problem) {
      return { error: problem.message };
    }
  }

  /** The question in the form the evidence takes. */
  function questionOf(asked, window) {
    const { garment, features, place, kind, wearer, grades } = asked;
    return { garment, features, window, place, kind, wearer, grades, worn_for: Number(asked.worn) || 0 };
  }

  /** With that term; in a facet that allows one at a time it takes the place of the other. */
  function withTerm(asked, term, exclusive) {
    const facet = term.split("/")[0];
    const kept = asked.features.filter(
      (each) => each !== term && !(exclusive.has(facet) && each.startsWith(facet + "/")),
    );
    return { ...asked, features: [...kept, term] };
  }

  /** By garment: the terms that can be asked of it and are not asked yet, those its plates show most often first. */
  function featureOptions({ facts }, vocabulary) {
    const facets = new Map(vocabulary.facets.map((facet) => [facet.id, facet]));
    const known = new Map();

    function of(garment) {
      const index = facts.garmentIndex.get(garment);
      const chain = facts.garmentChains[index].map((each) => facts.garments[each].id);
      const applies = (list) => !list || list.some((each) => chain.includes(each));
      const own = [...facts.plates.garmentOf.keys()].filter((number) => facts.garmentChains[facts.plates.garmentOf[number]].includes(index));
      const shown = Object.assign({}, ...facts.facets.map((_, facet) => InPeriod.evidence.gatherShowing(facts, facet, own)));
      return facts.terms
        .map((term, i) => {
          const facetId = facts.facets[term.facet].id,
            id = term.key.split("/")[1];
          const facet = facets.get(facetId) || {};
          if (!applies((facet.termApplies && facet.termApplies[id]) || facet.applies)) return null;
          const names = (facet.names && facet.names[id]) || [];
          return {
            key: term.key,
            label: term.label,
            facetLabel: facts.facets[term.facet].label,
            names,
            count: (shown[i] || []).length,
          };
        })
        .filter(Boolean)
        .sort((a, b) => b.count - a.count);
    }

    return (asked) => {
      if (!known.has(asked.garment)) known.set(asked.garment, of(asked.garment));
      return known.get(asked.garment).filter((option) => !asked.features.includes(option.key));
    };
  }

  InPeriod.question = { readQuestion, pairsOf, readWindow, questionOf, withTerm, featureOptions };
  if (typeof module !== "undefined") module.exports = InPeriod;
})(globalThis);
