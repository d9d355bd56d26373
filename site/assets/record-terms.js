// One line, one feature: "sq n", "insertion @hem 1 in read", "no collar", "closure ?" - read into what the record holds.
//
//   a few letters of any name, of the facet too     sq n            neckline/square
//   @ or at, and the place                          braid @hem      at: hem (or the place alone, at the end)
//   a width with its unit                           braid 1/2 in    width: 1/2 in
//   x and a number                                  buttons x6      count: 6
//   # and a colour                                  braid #white    colour: white
//   read (r), inferred (i), seen                    lawn r          reading: read
//   none or no; ? or not visible (nv)               no collar       {facet: collar, none: true}
//   after a semicolon, a note                       lawn; hardly    note: hardly
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod ||= {});
  const NUMBER = "(?:[0-9]{1,4}(?:\\.[0-9]{1,3}|[ -][0-9]{1,2}/[0-9]{1,2}|/[0-9]{1,2}| ?[¼½¾⅛⅜⅝⅞])?|[¼½¾⅛⅜⅝⅞])";
  const WIDTH = new RegExp(`(^|\\s)(${NUMBER}(?: ?(?:-|–|to) ?${NUMBER})?) ?(in|cm|mm|")(?=\\s|$)`);
  const READINGS = { seen: "seen", read: "read", inferred: "inferred", inf: "inferred", r: "read", i: "inferred" };

  const wordsOf = (text) => InPeriod.fold(text).split(" ").filter(Boolean);

  /**
   * The vocabulary made ready for the line, from what the build hands over (`vocabulary` of data/recording.js): `facets`,
   * `terms` and `garments`, each a Map by its id. `applies(term, garment)` as in Python's Vocabulary.
   */
  function vocabularyOf(facetList, places) {
    const facets = new Map(),
      terms = new Map(),
      garments = new Map();
    for (const given of facetList) {
      const facet = { ...given, words: [...wordsOf(given.label), ...wordsOf(given.id)], terms: [] };
      if (facet.id !== "garment") facets.set(facet.id, facet);
      for (const each of given.terms) {
        const term = { ...each, key: `${facet.id}/${each.id}`, facet, words: [...wordsOf(each.label), ...wordsOf(each.id)] };
        term.named = term.names.map((name) => [name, wordsOf(name)]);
        if (facet.id === "garment") garments.set(term.id, term);
        else {
          facet.terms.push(term);
          terms.set(term.key, term);
        }
      }
    }
    const chains = new Map();
    const chainOf = (garment) => {
      if (!chains.has(garment)) {
        const chain = [];
        for (let each = garment; each && !chain.includes(each); each = (garments.get(each) || {}).broader) chain.push(each);
        chains.set(garment, chain);
      }
      return chains.get(garment);
    };
    const within = (list, garment) => !list || !list.length || !garment || chainOf(garment).some((each) => list.includes(each));
    const applies = (term, garment) => within(term.applies && term.applies.length ? term.applies : term.facet.applies, garment);
    const facetApplies = (facet, garment) => facet.terms.some((term) => applies(term, garment));
    return { facets, terms, garments, places, applies, facetApplies };
  }

  const begins = (words, token) => words.some((word) => word.startsWith(token));

  /** What is said of a feature beside its name, and the words that are left. */
  function taken(line, places) {
    const said = {},
      semicolon = line.indexOf(";");
    let rest = semicolon < 0 ? line : line.slice(0, semicolon);
    const cut = (pattern, use) => {
      const found = pattern.exec(rest);
      if (!found || use(found) === false) return;
      rest = rest.slice(0, found.index) + " " + rest.slice(found.index + found[0].length);
    };
    cut(/\?|(^|\s)(nv|not visible)(?=\s|$)/i, () => (said.not_visible = true));
    cut(/(^|\s)none(?=\s|$)|^\s*no(?=\s+\S)/i, () => (said.none = true));
    cut(/\s#(\S+(?:-\S+)*)/, (found) => (said.colour = found[1].replace(/_/g, " ")));
    cut(/(?:\s|^)@ ?([\w-]+)|\sat ([\w-]+)(?=\s|$)/i, (found) => {
      const place = placeOf(found[1] || found[2], places);
      if (!place) return false;
      said.at = place;
    });
    cut(WIDTH, (found) => (said.width = `${found[2]} ${found[3] === '"' ? "in" : found[3]}`));
    cut(/\s(?:x ?(\d{1,5})|(\d{1,5}) ?x)(?=\s|$)/i, (found) => (said.count = Number(found[1] || found[2])));
    cut(/\s(seen|read|inferred|inf)(?=\s|$)/i, (found) => (said.reading = READINGS[found[1].toLowerCase()]));
    if (said.count === 0) delete said.count;
    const note = semicolon < 0 ? "" : line.slice(semicolon + 1).trim();
    if (note) said.note = note;
    return { said, tokens: wordsOf(rest) };
  }

  const placeOf = (word, places) =>
    places.find((place) => place === word.toLowerCase()) || places.find((place) => place.startsWith(word.toLowerCase()));

  /**
   * How well a term answers the tokens: [class, by]; null for not at all. Class 0: its label begins so; 1: a word of its label does;
   * 2: another of its names; 3: all that was typed names its facet alone. Tokens that name the facet only narrow.
   */
  function fit(term, tokens) {
    const own = tokens.filter((token) => begins(term.words, token));
    const others = tokens.filter((token) => !begins(term.words, token));
    const facetWords = term.facet.words;
    if (own.length && others.every((token) => begins(facetWords, token)))
      return [InPeriod.fold(term.label).startsWith(own.join(" ")) ? 0 : 1, null];
    for (const [name, words] of term.named) {
      const named = tokens.filter((token) => begins(words, token));
      if (named.length && tokens.every((token) => begins(words, token) || begins(facetWords, token))) return [2, name];
    }
    return tokens.every((token) => begins(facetWords, token)) ? [3, null] : null;
  }

  /**
   * What a line can mean, best first: [{feature, term, facet, by, sure}]. `sure` is false where only the facet was named, so
   * that a term must be chosen. `asked`: {garment, held: features of the plate, uses: Map of term or facet → how often
   * in this source}.
   */
  function readLine(line, vocabulary, asked) {
    const { said, tokens } = taken(` ${line}`, vocabulary.places);
    if (said.none || said.not_visible) {
      // Some terms are called “no …” themselves.
      const { said: own, tokens: whole } = taken(` ${line.replace(/^ *no /i, " \u0000no ")}`, vocabulary.places);
      const called = said.none && own.none === undefined ? ranked(whole, vocabulary, asked, own).filter((each) => each.rank[0] < 2 && /^no /i.test(each.term.label)) : [];
      return [...called.map(({ term }) => ({ feature: featureOf(term.key, own), term, facet: term.facet, by: null, sure: true })), ...absences(said, tokens, vocabulary, asked)];
    }
    if (!tokens.length) return [];
    let found = ranked(tokens, vocabulary, asked, said).map((each) => ({ ...each, said }));
    // A place or the letter of a reading at the end needs no sign where the words before it are a term without it.
    const last = tokens[tokens.length - 1],
      place = !said.at && last.length > 2 && placeOf(last, vocabulary.places);
    const more = tokens.length < 2 ? null : place ? { at: place } : !said.reading && /^[ri]$/.test(last) ? { reading: READINGS[last] } : null;
    if (more && !found.some((each) => each.sure)) {
      const wider = { ...said, ...more };
      found = ranked(tokens.slice(0, -1), vocabulary, asked, wider).map((each) => ({ ...each, said: wider }));
    }
    return found.map(({ term, by, sure, said: own }) => ({ feature: featureOf(term.key, own), term, facet: term.facet, by, sure }));
  }

  function ranked(tokens, vocabulary, { garment, held, uses }, { at, width, count }) {
    const full = new Set(held.map(facetOf).filter((id) => (vocabulary.facets.get(id) || {}).exclusive));
    const found = [];
    let order = 0;
    for (const term of vocabulary.terms.values()) {
      order += 1;
      if (!vocabulary.applies(term, garment)) continue;
      const [grade, by] = fit(term, tokens) || [];
      if (grade === undefined) continue;
      const used = uses.get(term.key) || 0;
      // What this source has shown before goes before what is as near by its name.
      // What can be there but once seldom has a place or a width.
      const unlike = full.has(term.facet.id) || (term.facet.exclusive && (at || width || count)) ? 1 : 0;
      const rank = [grade === 3 ? 3 : Math.max(0, grade - (used ? 1 : 0)), unlike, -used, grade, term.label.length, order];
      found.push({ term, by, rank, sure: grade < 3 });
    }
    return found.sort((one, other) => {
      const i = one.rank.findIndex((value, at) => value !== other.rank[at]);
      return i < 0 ? 0 : one.rank[i] - other.rank[i];
    });
  }

  /** Facets of which there is none, or which cannot be seen. */
  function absences(said, tokens, vocabulary, { garment }) {
    const found = [...vocabulary.facets.values()].filter(
      (facet) => vocabulary.facetApplies(facet, garment) && tokens.every((token) => begins(facet.words, token)),
    );
    return found
      .sort((one, other) => begun(other, tokens) - begun(one, tokens))
      .map((facet) => ({ feature: absent(facet.id, said), facet, by: null, sure: tokens.length > 0 }));
  }

  const begun = (facet, tokens) => (InPeriod.fold(facet.label).startsWith(tokens.join(" ")) ? 1 : 0);

  /** Garments a few letters may mean, best first: [{option: term, by}]. */
  function garmentsFor(query, vocabulary, uses) {
    const options = [...vocabulary.garments.values()].sort((one, other) => (uses.get(other.id) || 0) - (uses.get(one.id) || 0));
    return InPeriod.rank(options, query);
  }

  function absent(facet, said) {
    const { not_visible, none, ...rest } = said;
    return { facet, ...(not_visible ? { not_visible } : { none }), ...rest };
  }

  /** A feature as the record holds it: a word where there is nothing beside the term. */
  function featureOf(term, said) {
    const { at, width, count, colour, reading, note } = said,
      full = { term };
    const wanted = { at, width, count, colour, reading: reading === "seen" ? undefined : reading, note };
    for (const [name, value] of Object.entries(wanted)) if (value !== undefined) full[name] = value;
    return Object.keys(full).length === 1 ? term : full;
  }

  /**
   * The features of a plate with one more. It takes the place of what cannot stand beside it: another term of a facet that has one
   * at a time, the same at the same place, and that there is none or that it cannot be seen. `index` is that of a feature which is being changed, or null.
   */
  function withFeature(features, feature, index, vocabulary) {
    const id = facetOf(feature),
      { term } = asTable(feature),
      facet = vocabulary.facets.get(id);
    const clash = (other) => {
      if (facetOf(other) !== id) return false;
      if (!isTerm(feature, vocabulary) || !isTerm(other, vocabulary)) return true;
      return Boolean(facet && facet.exclusive) || (asTable(other).term === term && asTable(other).at === asTable(feature).at);
    };
    const same = features.findIndex((other, i) => i !== index && clash(other));
    const at = index !== null ? index : same < 0 ? features.length : same;
    const made = features.slice();
    made[at] = feature;
    return made.filter((other, i) => i === at || !clash(other));
  }

  const isTerm = (feature, vocabulary) => vocabulary.terms.has(asTable(feature).term);

  const asTable = (feature) => (typeof feature === "string" ? { term: feature } : feature);

  /** The facet a feature is of. */
  const facetOf = (feature) => asTable(feature).facet || String(asTable(feature).term || "").split("/")[0];

  /** What the line would say: the words that `readLine` reads into the same feature. */
  function lineOf(feature, vocabulary) {
    const { term, facet, not_visible, none, at, width, count, colour, reading, note } = asTable(feature);
    const known = vocabulary.terms.get(term);
    const own = /^([^/]+)\/(none|not visible)$/.exec(term || "");
    const id = facet || (own && own[1]);
    const name = known ? `${known.label} ${known.facet.id.replace(/-/g, " ")}` : id ? id.replace(/-/g, " ") : term || "";
    const parts = [
      name.toLowerCase().replace(/[?;@#]/g, ""),
      none || (own && own[2] === "none") ? "none" : "",
      not_visible || (own && own[2] !== "none") ? "?" : "",
      at && `@${at}`, width, count && `x${count}`, colour && `#${colour.replace(/ /g, "_")}`, reading,
    ];
    return parts.filter(Boolean).join(" ") + (note ? `; ${note}` : "");
  }

  /** A feature said in words: {name, facet, more}. */
  function said(feature, vocabulary) {
    const { term, facet, not_visible, none, at, width, count, colour, reading, note } = asTable(feature);
    const own = /^([^/]+)\/(none|not visible)$/.exec(term || "");
    const known = vocabulary.terms.get(term),
      of = vocabulary.facets.get(facetOf(feature));
    const absentHere = none || (own && own[2] === "none"),
      hidden = not_visible || (own && own[2] !== "none");
    const more = [at && (at === "all-over" ? "all over" : `at the ${at}`), width && `${width} wide`, count && `${count} of them`, colour,
      { read: "read from the text", inferred: "inferred", seen: "" }[reading] ?? reading, note];
    return {
      name: absentHere ? "none" : hidden ? "not visible" : known ? known.label : String(term || facet || "").replace(/^.*\//, ""),
      facet: of ? of.label : facetOf(feature),
      more: more.filter(Boolean).join(", "),
    };
  }

  InPeriod.recordTerms = { vocabularyOf, withFeature, readLine, garmentsFor, featureOf, facetOf, asTable, lineOf, said };
  if (typeof module !== "undefined") module.exports = InPeriod.recordTerms;
})(globalThis);
