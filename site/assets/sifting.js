// What the page of plates sifts by. A set of plates is one bit for each, so that a step costs next to nothing.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod = root.InPeriod || {});

  // ---- sets of plates

  const empty = (count) => new Int32Array((count + 31) >> 5);
  const put = (set, number) => {
    set[number >> 5] |= 1 << (number & 31);
  };
  const has = (set, number) => (set[number >> 5] >> (number & 31)) & 1;

  /** The set of the numbers from 0 up to `count` that pass. */
  function those(count, passes) {
    const set = empty(count);
    for (let number = 0; number < count; number += 1) if (passes(number)) put(set, number);
    return set;
  }

  /** What is in any of the sets. */
  function joined(count, sets) {
    const all = empty(count);
    for (const set of sets) for (let i = 0; i < all.length; i += 1) all[i] |= set[i];
    return all;
  }

  /** What is in the first set and in every other; null is no limit. */
  function common(first, others) {
    const all = first.slice();
    for (const set of others) if (set) for (let i = 0; i < all.length; i += 1) all[i] &= set[i];
    return all;
  }

  /** How many are in both sets. */
  function size(one, other) {
    let count = 0;
    for (let i = 0; i < one.length; i += 1) {
      let bits = one[i] & other[i];
      if (!bits) continue;
      bits -= (bits >>> 1) & 0x55555555;
      bits = (bits & 0x33333333) + ((bits >>> 2) & 0x33333333);
      count += (((bits + (bits >>> 4)) & 0x0f0f0f0f) * 0x01010101) >>> 24;
    }
    return count;
  }

  // ---- groups

  /**
   * The groups of the filters. A group has an id (its name in the address), a label, and values {id, label, set, total},
   * those most plates have first. Within a group any chosen value will do; all groups must be met.
   */
  function makeGroups({ facts }, { kinds, places, who, grades }) {
    const { plates, documents, facets, terms, garments, garmentChains } = facts;
    const { count, documentOf, garmentOf, wearers, starts, shown } = plates;
    const grade = ({ basis }) => (basis === "style" ? "C" : basis);

    /** A group from what `each` tells of every plate: the ids, or the indices, of its values. */
    function group(more, name, each) {
      const sets = new Map();
      each((number, value) => {
        let set = sets.get(value);
        if (!set) sets.set(value, (set = empty(count)));
        put(set, number);
      });
      const values = [...sets].map(([value, set]) => ({ ...name(value), set, total: size(set, set) }));
      return { ...more, values: values.sort((a, b) => b.total - a.total) };
    }

    const plain = (of) => (tell) => {
      for (let number = 0; number < count; number += 1) for (const value of of(number)) tell(number, value);
    };
    const ofDocument = (of) => {
      const held = documents.map(of);
      return plain((number) => held[documentOf[number]]);
    };
    const listed = (names) => (id) => ({ id, label: names[id] || id });
    const groups = [
      group({ id: "garment", label: "Garment" }, (garment) => garments[garment], plain((number) => garmentChains[garmentOf[number]])),
      group({ id: "kind", label: "Kind of source" }, listed(kinds), ofDocument(({ kind }) => [kind])),
      group({ id: "place", label: "Place" }, listed(places), ofDocument((each) => each.places)),
      group({ id: "who", label: "Wearer" }, listed(who), plain((number) => [wearers[number]])),
      group({ id: "grade", label: "Dating" }, listed(grades), ofDocument((each) => [grade(each)])),
    ];
    const features = group({}, (term) => ({ ...terms[term], id: terms[term].key }), (tell) => {
      for (let number = 0; number < count; number += 1)
        for (let i = starts[number]; i < starts[number + 1]; i += 1) tell(number, shown[i] >> 1);
    });
    facets.forEach(({ label }, facet) =>
      groups.push({ id: "feature", label, values: features.values.filter((each) => each.facet === facet) }),
    );
    return groups.filter((each) => each.values.length);
  }

  /**
   * Which plates pass: {found, apartFromYears, counts(group)}, the last how many would pass were each of its values
   * chosen. `chosen` maps groups to sets of ids; `rest` and `years` are sets of plates, or null.
   */
  function sift(groups, everything, count, chosen, rest, years) {
    const wanted = new Map(
      [...chosen].map(([group, ids]) => [group, joined(count, group.values.filter(({ id }) => ids.has(id)).map((each) => each.set))]),
    );
    const apartFromYears = common(everything, [...wanted.values(), rest]);
    const found = common(apartFromYears, [years]);
    const others = (group) => [...wanted].filter(([each]) => each !== group).map(([, set]) => set);
    return {
      found,
      apartFromYears,
      counts: (group) => {
        const left = wanted.has(group) ? common(everything, [...others(group), rest, years]) : found;
        return group.values.map(({ set }) => size(left, set));
      },
    };
  }

  // ---- years, order, words

  /** The plates that may lie in the years. */
  function inYears({ documents, plates }, from, to) {
    const { yearStart } = InPeriod.evidence, earliest = yearStart(from), latest = yearStart(to + 1) - 1;
    const meets = documents.map(({ days }) =>
      days && (days.latest === null || days.latest >= earliest) && (days.earliest === null || days.earliest <= latest));
    return those(plates.count, (number) => meets[plates.documentOf[number]]);
  }

  /** A function from a set to its plates in every `step` years, one that may lie in several of them shared out. */
  function perStep({ documents, plates }, first, last, step) {
    const { yearOf, yearStart } = InPeriod.evidence, length = Math.floor((last - first) / step) + 1;
    const at = (day) => Math.floor((yearOf(day) - first) / step);
    const parts = documents.map(({ days }) => {
      const found = [];
      if (!days || days.earliest === null || days.latest === null) return found;
      for (let i = at(days.earliest); i <= at(days.latest); i += 1) {
        const year = first + i * step;
        const from = Math.max(days.earliest, yearStart(year)), to = Math.min(days.latest, yearStart(year + step) - 1);
        found.push([i, (to - from + 1) / (days.latest - days.earliest + 1)]);
      }
      return found;
    });
    return (set) => {
      const held = new Int32Array(documents.length), counts = new Array(length).fill(0);
      for (let number = 0; number < plates.count; number += 1) held[plates.documentOf[number]] += has(set, number);
      parts.forEach((found, document) => {
        if (held[document]) for (const [i, part] of found) counts[i] += part * held[document];
      });
      return counts;
    };
  }

  /** Every plate in the order named: by date (""), "latest", "garment" or "source". `titles` ranks the documents. */
  function order({ documents, plates, garments }, titles, sort) {
    const away = sort === "latest" ? -1 : 1;
    const middle = documents.map(({ days }) => {
      const ends = days ? [days.earliest, days.latest].filter((end) => end !== null) : [];
      return ends.length ? (away * ends.reduce((sum, end) => sum + end, 0)) / ends.length : Infinity;
    });
    const held = documents.map(() => []);
    plates.documentOf.forEach((document, number) => held[document].push(number));
    if (away < 0) for (const numbers of held) numbers.reverse();
    const listed = held
      .map((_, document) => document)
      .sort((a, b) => (sort === "source" && titles[a] - titles[b]) || middle[a] - middle[b] || away * (a - b))
      .flatMap((document) => held[document]);
    if (sort !== "garment") return listed;
    const ordered = garments.map((_, garment) => garment).sort((a, b) => garments[a].label.localeCompare(garments[b].label));
    const shelves = garments.map(() => []);
    for (const number of listed) shelves[plates.garmentOf[number]].push(number);
    return ordered.flatMap((garment) => shelves[garment]);
  }

  /** The words of texts, by plate: by word the numbers. */
  function wordsOf(texts) {
    const words = new Map();
    texts.forEach((text, number) => {
      for (const word of new Set(InPeriod.fold(text).split(" "))) {
        if (!words.has(word)) words.set(word, []);
        words.get(word).push(number);
      }
    });
    return words;
  }

  /** The numbers kept of a word; as the build gives them for a large catalogue they stay packed until they are looked for. */
  function numbersOf(held) {
    let number = 0;
    return typeof held === "string" ? InPeriod.evidence.unpacked(held).map((step) => (number += step)) : held;
  }

  /**
   * A function from a word to the plates of which some word begins with it: a word of theirs (`words` are pairs of a word
   * and its numbers), of the garment, of a term they show, or of another name of these. Names are folded once, words
   * looked for once.
   */
  function beginner({ facts }, groups, vocabulary) {
    const { count, garmentOf } = facts.plates, { searchable } = InPeriod;
    const facets = new Map(vocabulary.facets.map((each) => [each.id, each.names || {}]));
    const named = (label, names) => searchable([label, ...(names || [])].join(" "));
    const garments = facts.garments.map(({ id, label }) => named(label, vocabulary.garments[id]));
    const terms = groups.filter(({ id }) => id === "feature").flatMap(({ values }) => values.map(({ id, label, set }) => {
      const [facet, term] = id.split("/");
      return [named(label, (facets.get(facet) || {})[term]), set];
    }));
    const found = new Map();
    return (word, words) => {
      if (!found.has(word)) {
        const wanted = garments.map((names) => names.includes(" " + word));
        const own = those(count, (number) => wanted[garmentOf[number]]);
        for (const [each, held] of words) if (each.startsWith(word)) for (const number of numbersOf(held)) put(own, number);
        found.set(word, joined(count, [own, ...terms.filter(([names]) => names.includes(" " + word)).map(([, set]) => set)]));
      }
      return found.get(word);
    };
  }

  Object.assign(InPeriod, { sifting: { has, those, common, size, makeGroups, sift, inYears, perStep, order, wordsOf, beginner } });
  if (typeof module !== "undefined") module.exports = InPeriod;
})(globalThis);
