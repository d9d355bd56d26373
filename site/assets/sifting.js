// What the page of plates sifts by. A set of plates is one bit for each, so that a step costs next to nothing.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod ||= {});

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
   * The groups of the filters. A group has an id (its name in the address), what the ids of its values begin with, a label,
   * and values {id, label, set, total}, those most plates have first, which are made when they are first asked for. Within a
   * group any chosen value will do; all groups must be met.
   */
  function makeGroups({ facts }, { kinds, places, who, grades, features }) {
    const { plates, documents, facets, terms, garments, garmentChains, wearers } = facts, { count, documentOf, garmentOf } = plates;
    const grade = ({ basis }) => (basis === "style" ? "C" : basis);

    /** A group from what `each` tells of every plate: the ids, or the indices, of its values. */
    function group(id, label, name, each, begins = "") {
      let values = null;
      function made() {
        const sets = new Map();
        each((number, value) => {
          if (!sets.has(value)) sets.set(value, empty(count));
          put(sets.get(value), number);
        });
        return [...sets].map(([value, set]) => ({ ...name(value), set, total: size(set, set) })).sort((a, b) => b.total - a.total);
      }
      return { id, label, begins, get values() { return (values ||= made()); } };
    }

    const plain = (of) => (tell) => {
      for (let number = 0; number < count; number += 1) for (const value of of(number)) tell(number, value);
    };
    const ofDocument = (of) => {
      const held = documents.map(of);
      return plain((number) => held[documentOf[number]]);
    };
    const listed = (names) => (id) => ({ id, label: names[id] || id });
    const ofTerms = (facet) => (tell) => {
      for (const [term, numbers] of Object.entries(InPeriod.evidence.gatherShowing(facts, facet, garmentOf.keys())))
        for (const number of numbers) tell(number, term);
    };
    return count ? [
      group("garment", "Garment", (garment) => garments[garment], plain((number) => garmentChains[garmentOf[number]])),
      group("kind", "Kind of source", listed(kinds), ofDocument(({ kind }) => [kind])),
      documents.some((each) => each.places.length) && group("place", "Place", listed(places), ofDocument((each) => each.places)),
      group("who", "Wearer", listed(who), plain((number) => [wearers[plates.who[number]]])),
      group("grade", "Dating", listed(grades), ofDocument((each) => [grade(each)])),
      ...facets.map(({ id, label }, facet) => features[facet][0] &&
        group("feature", label, (term) => ({ id: terms[term].key, label: terms[term].label }), ofTerms(facet), `${id}/`)),
    ].filter(Boolean) : [];
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

  /**
   * Every plate in the order named: by date (""), "latest", "garment" or "source". `dated` are the documents by date, the
   * undated last; `titles` ranks them.
   */
  function order({ documents, plates, garments }, dated, titles, sort) {
    const { count, documentOf, within, garmentOf } = plates, listed = new Int32Array(count), firsts = [];
    const end = ({ days }) => days?.earliest ?? days?.latest, isDated = (number) => end(documents[documentOf[number]]) != null;
    let at = 0;
    documentOf.forEach((document, number) => within[number] || (firsts[document] = number));
    for (const document of sort === "source" ? dated.slice().sort((a, b) => titles[a] - titles[b]) : dated)
      for (let number = firsts[document]; documentOf[number] === document; number += 1) listed[at++] = number;
    if (sort === "latest") return [isDated, (number) => !isDated(number)].flatMap((is) => [...listed.filter(is).reverse()]);
    if (sort !== "garment") return listed;
    const ordered = garments.map((_, garment) => garment).sort((a, b) => garments[a].label.localeCompare(garments[b].label));
    const shelves = garments.map(() => []);
    for (const number of listed) shelves[garmentOf[number]].push(number);
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
  function beginner({ facts }, vocabulary) {
    const { count, garmentOf } = facts.plates, { searchable } = InPeriod, { gatherShowing } = InPeriod.evidence, shown = [];
    const facets = new Map(vocabulary.facets.map((each) => [each.id, each.names || {}]));
    const named = (label, names) => searchable([label, ...(names || [])].join(" "));
    const garments = facts.garments.map(({ id, label }) => named(label, vocabulary.garments[id]));
    const terms = facts.terms.map(({ key, label }) => {
      const [facet, term] = key.split("/");
      return named(label, (facets.get(facet) || {})[term]);
    });
    const found = new Map();
    return (word, words) => {
      if (!found.has(word)) {
        const begun = (names) => names.includes(" " + word), garment = garments.map(begun), term = terms.map(begun);
        const set = those(count, (number) => garment[garmentOf[number]]);
        for (const [each, held] of words) if (each.startsWith(word)) for (const number of numbersOf(held)) put(set, number);
        facts.terms.forEach(({ facet }, i) => {
          if (term[i]) for (const number of (shown[facet] ||= gatherShowing(facts, facet, garmentOf.keys()))[i] || []) put(set, number);
        });
        found.set(word, set);
      }
      return found.get(word);
    };
  }

  Object.assign(InPeriod, { sifting: { has, those, common, size, makeGroups, sift, inYears, perStep, order, wordsOf, beginner } });
  if (typeof module !== "undefined") module.exports = InPeriod;
})(globalThis);
