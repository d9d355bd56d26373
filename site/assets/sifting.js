// What the page of plates sifts by: the groups of its filters, the words of a plate, one pass over all plates.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod = root.InPeriod || {});
  const WHO = { woman: "women", man: "men", girl: "girls", boy: "boys", infant: "infants", any: "anyone" };
  const GRADES = { A: "A, firm", B: "B, an institution’s", C: "C, weak", "": "none given" };

  /**
   * The groups of the filters. A group has an id (its name in the address), a label, values {id, label} and
   * `of(number)`: the ids of its values a plate has. Within a group any chosen value will do; all groups must be met.
   */
  function makeGroups({ facts, plate, terms }, vocabulary, places) {
    const { plates } = facts;
    const all = Array.from({ length: plates.count }, (_, number) => plate(number));
    const garments = facts.garments.map((each) => ({ id: each.id, label: each.label }));
    const plain = (id, label, of, name) => {
      const held = [...new Set(all.flatMap((each) => of(each)))];
      return {
        id,
        label,
        values: held.map((value) => ({ id: value, label: name(value) })),
        of: (number) => of(all[number]),
      };
    };
    const groups = [
      {
        id: "garment",
        label: "Garment",
        values: garments,
        of: (number) => facts.garmentChains[plates.garmentOf[number]].map((each) => facts.garments[each].id),
      },
      plain(
        "kind",
        "Kind of source",
        (each) => [each.kind],
        (kind) => vocabulary.kinds[kind] || kind,
      ),
      plain(
        "place",
        "Place",
        (each) => each.places,
        (place) => places[place] || place,
      ),
      plain(
        "who",
        "Wearer",
        (each) => [each.who],
        (who) => WHO[who] || who,
      ),
      plain(
        "grade",
        "Dating",
        (each) => [each.grade || "none"],
        (grade) => GRADES[grade === "none" ? "" : grade],
      ),
    ];
    facts.facets.forEach((facet, index) => {
      const values = facts.terms
        .filter((term) => term.facet === index)
        .map((term) => ({ id: term.key, label: term.label }));
      const of = (number) =>
        terms(number)
          .filter((term) => facts.terms[term].facet === index)
          .map((term) => facts.terms[term].key);
      groups.push({ id: "feature", facet: facet.id, label: facet.label, values, of });
    });
    for (const group of groups) {
      group.held = all.map((_, number) => group.of(number));
      const total = new Map();
      for (const held of group.held) for (const value of held) total.set(value, (total.get(value) || 0) + 1);
      group.values = group.values
        .filter((value) => total.get(value.id))
        .sort((a, b) => total.get(b.id) - total.get(a.id));
    }
    return { all, groups: groups.filter((group) => group.values.length) };
  }

  /** Everything a plate can be found by: garment, source, what is said of it, its terms and their other names. */
  function makeText({ facts, terms }, vocabulary, each, number, said) {
    const names = new Map(vocabulary.facets.map((facet) => [facet.id, facet.names || {}]));
    const garment = facts.garments[each.garment];
    const called = terms(number).flatMap((term) => {
      const { key, label } = facts.terms[term],
        [facet, id] = key.split("/");
      return [label, ...((names.get(facet) || {})[id] || [])];
    });
    return InPeriod.searchable(
      [garment.label, ...(vocabulary.garments[garment.id] || []), each.source, each.where, said, ...called].join(" "),
    );
  }

  /** Which plates pass, and how many would were one more value chosen: one pass over all plates. */
  function sift(groups, count, chosen, passesRest, passesYears) {
    const wanted = groups.map((group) => chosen.get(group) || null);
    const counts = groups.map(() => new Map());
    const found = [],
      apartFromYears = [];
    for (let number = 0; number < count; number += 1) {
      if (!passesRest(number)) continue;
      let failed = 0,
        failing = -1;
      for (let i = 0; i < groups.length && failed < 2; i += 1) {
        if (wanted[i] && !groups[i].held[number].some((value) => wanted[i].has(value))) {
          failed += 1;
          failing = i;
        }
      }
      if (failed === 0) apartFromYears.push(number);
      if (failed > 1 || !passesYears(number)) continue;
      if (failed === 0) found.push(number);
      for (let i = 0; i < groups.length; i += 1) {
        if (failed === 1 && failing !== i) continue;
        for (const value of groups[i].held[number]) counts[i].set(value, (counts[i].get(value) || 0) + 1);
      }
    }
    return { found, counts, apartFromYears };
  }

  /** Plates in every `step` years from `first` to `last`, one that may lie in several of them shared out. */
  function perStep(plates, numbers, first, last, step) {
    const { yearOf, yearStart } = InPeriod.evidence,
      counts = new Array(Math.floor((last - first) / step) + 1).fill(0);
    for (const number of numbers) {
      const { days } = plates[number];
      if (!days || days.earliest === null || days.latest === null) continue;
      const length = days.latest - days.earliest + 1;
      const at = (day) => Math.floor((yearOf(day) - first) / step);
      for (let i = at(days.earliest); i <= at(days.latest); i += 1) {
        const year = first + i * step;
        const from = Math.max(days.earliest, yearStart(year)),
          to = Math.min(days.latest, yearStart(year + step) - 1);
        counts[i] += (to - from + 1) / length;
      }
    }
    return counts;
  }

  Object.assign(InPeriod, { makeGroups, makeText, sift, perStep });
  if (typeof module !== "undefined") module.exports = InPeriod;
})(typeof window !== "undefined" ? window : globalThis);
