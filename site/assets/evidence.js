// The arithmetic of evidence: what the Python side computes, from the same facts, with the same sentences.
// In step with generator/inperiod/evidence; one file of vectors is run against both.
(function (root) {
  "use strict";

  // Numbers: see constants.py for what each means and where it comes from.
  const DAYS_PER_YEAR = 365.25, WIDEST_DAYS = 4383, MOSTLY = 0.5, BACKING = 5;
  const Z_95 = 1.959963984540054, ALIKE = 0.2, SPREAD = 4, USE = 0.05, ALPHA = 0.05, GAP_ALPHA = 0.0087, STRONGEST = 15;
  const NEAR_YEARS = 10, USUAL = 0.2, OCCASIONAL = 0.05, CITED = 12, NAMED = 5, CIRCA_TRIED = [0, 10];
  const INFERRED = 2, FORMAT = 4;
  const BASES = ["A", "B", "C", "style", "none"];
  const MONTHS = "January February March April May June July August September October November December".split(" ");

  // ---- days and years

  /** Day number of 1 January; day 1 is 0001-01-01, proleptic Gregorian. */
  function yearStart(year) {
    const past = year - 1;
    return past * 365 + Math.floor(past / 4) - Math.floor(past / 100) + Math.floor(past / 400) + 1;
  }

  function yearOf(day) {
    let year = Math.floor((Math.floor(day) - 1) / 365.2425) + 1;
    while (day < yearStart(year)) year -= 1;
    while (day >= yearStart(year + 1)) year += 1;
    return year;
  }

  /** A day number, halves allowed, as a decimal year. */
  function decimalYear(day) {
    const year = yearOf(day), start = yearStart(year);
    return year + (day - start) / (yearStart(year + 1) - start);
  }

  function dateOf(day) {
    const date = new Date((day - yearStart(1970)) * 864e5);
    return [date.getUTCFullYear(), date.getUTCMonth() + 1, date.getUTCDate()];
  }

  function dayInWords(day) {
    const [year, month, date] = dateOf(day);
    return `${date} ${MONTHS[month - 1]} ${year}`;
  }

  /** A window as said: 1926, 1924–1928, the 1920s, June 1926, the time from 1920. */
  function windowInWords(window) {
    const { earliest, latest } = window;
    const edge = (day, turn) => (turn === yearStart(yearOf(turn)) ? String(yearOf(day)) : dayInWords(day));
    if (earliest === null && latest === null) return "all time";
    if (earliest === null) return `the time up to ${edge(latest, latest + 1)}`;
    if (latest === null) return `the time from ${edge(earliest, earliest)}`;
    const first = yearOf(earliest), last = yearOf(latest);
    if (earliest === yearStart(first) && latest === yearStart(last + 1) - 1) {
      if (first === last) return String(first);
      return last === first + 9 && first % 10 === 0 ? `the ${first}s` : `${first}–${last}`;
    }
    if (earliest === latest) return dayInWords(earliest);
    const begins = dateOf(earliest), ends = dateOf(latest);
    if (begins[2] === 1 && dateOf(latest + 1)[2] === 1) {
      const from = MONTHS[begins[1] - 1], to = MONTHS[ends[1] - 1];
      if (first === last) return begins[1] === ends[1] ? `${from} ${first}` : `${from}–${to} ${first}`;
      return `${from} ${first} – ${to} ${last}`;
    }
    return `${dayInWords(earliest)} – ${dayInWords(latest)}`;
  }

  // ---- facts

  const orNull = (index, none) => (index === none ? null : index);

  function milestone(given) {
    return given ? { day: given[0], text: given[1], words: given[2], event: given[3], source: given[4] } : null;
  }

  function daysIn(days) {
    if (days === 0) return null;
    const [earliest, other] = days;
    return { earliest, latest: earliest === null || other === null ? other : earliest + other - 1 };
  }

  /** An entry and all broader ones, cut where a circle closes. */
  function chain(entries, at) {
    const found = [];
    while (at !== null && !found.includes(at)) {
      found.push(at);
      at = entries[at].broader;
    }
    return found;
  }

  /** The numbers of a packed text: five bits a sign, the lowest first, 32 added where another sign follows. */
  function unpacked(text) {
    const numbers = new Int32Array(text.length);
    let count = 0, shift = 0, number = 0;
    for (let i = 0; i < text.length; i += 1) {
      const sign = text.charCodeAt(i);
      const value = sign > 96 ? sign - 71 : sign === 95 ? 63 : sign > 64 ? sign - 65 : sign > 47 ? sign + 4 : 62;
      number |= (value & 31) << shift;
      if (value < 32) {
        numbers[count++] = number;
        number = shift = 0;
      } else shift += 5;
    }
    return numbers.subarray(0, count);
  }

  const known = new WeakMap();

  /**
   * The facts from their index and the columns of some plates, without columns the facts but for the plates.
   * exchange.py says what both hold. Throws for another format.
   */
  function factsFromJson(index, columns = index.plates) {
    if (index.format !== FORMAT) throw new Error(`facts of format ${index.format}; this reads ${FORMAT}`);
    const facts = once(known, index, () => indexed(index));
    return columns ? { ...facts, plates: platesOf(index, columns, facts), memo: new Map() } : facts;
  }

  function indexed(index) {
    const garments = index.garments.map(([id, label, plural, broader]) => ({ id, label, plural, broader: orNull(broader, -1) }));
    const terms = index.terms.map(([facet, id, label, broader, notBefore, inDress]) => ({
      key: `${index.facets[facet][0]}/${id}`, facet, label, broader: orNull(broader, -1),
      notBefore: milestone(notBefore), inDress: milestone(inDress),
    }));
    return {
      circaYears: index.circa_years, decades: index.decades, facets: index.facets.map(([id, label]) => ({ id, label })),
      garments, terms, wearers: index.wearers, whyLeftOut: index.left_out,
      documents: index.documents.map(([source, , kind, place, basis, root, days, ...tried]) => ({
        source, kind: index.kinds[kind], places: index.places[place],
        basis: BASES[basis], root: orNull(root, -2), days: daysIn(days),
        tried: tried.length ? tried : [days, days],
      })),
      daysOf: ({ days }) => days,
      garmentChains: garments.map((_, garment) => chain(garments, garment)),
      garmentIndex: new Map(garments.map((each, i) => [each.id, i])),
      termIndex: new Map(terms.map((each, i) => [each.key, i])),
    };
  }

  /**
   * The plates of the columns. `within` is the place of each in its document, `who` the number of its wearer.
   */
  function platesOf(index, columns, { terms, documents }) {
    const garmentOf = unpacked(columns.garments), who = unpacked(columns.wearers), count = who.length, steps = unpacked(columns.numbers);
    const documentOf = new Int32Array(count), within = new Int32Array(count), cuts = new Int32Array(count).fill(-1);
    const read = [], told = new Map();
    let ids = null, document = 0, first = 0, number = -1;
    for (let plate = 0; plate < count; plate += 1) {
      number += steps.length ? steps[plate] + 1 : 1;
      while (number >= first + index.counts[document]) first += index.counts[document++];
      documentOf[plate] = document;
      within[plate] = number - first;
    }
    const cut = unpacked(columns.cuts);
    for (let i = 0, plate = 0; i < cut.length; i += 2) cuts[plate += cut[i]] = cut[i + 1];

    /** The ids are one text until somebody asks for one; to a key that was told its number is known at once. */
    function keyOf(plate) {
      const key = `${documents[documentOf[plate]].source}/${(ids ||= columns.ids.split(" "))[plate]}`;
      told.set(key, plate);
      return key;
    }

    function numberOf(key) {
      if (!told.has(key)) who.forEach((_, plate) => keyOf(plate));
      return told.get(key);
    }

    /**
     * {starts, shown, recorded} of a facet, read when first asked for: `shown` holds the terms of each plate, wider ones with
     * them, as twice the term and 1 where it is seen or read, from the plate's start to that of the next.
     */
    const ofFacet = (facet) => (read[facet] ||= facetOf(columns.features[facet], facet));

    function facetOf([there, absent], facet) {
      const own = terms.map((_, term) => term).filter((term) => terms[term].facet === facet), chains = own.map((term) => chain(terms, term));
      const codes = unpacked(there), recorded = new Uint8Array(count), starts = new Int32Array(count + 1);
      const places = new Int32Array(terms.length).fill(-1), shown = [];
      let plate = -1;
      for (let i = 0; i < codes.length; i += 2) {
        for (let left = codes[i]; left > 0; left -= 1) starts[++plate] = shown.length;
        recorded[plate] = 1;
        const surely = codes[i + 1] < INFERRED * own.length ? 1 : 0;
        for (const term of chains[codes[i + 1] % own.length]) {
          if (places[term] < starts[plate]) places[term] = shown.push(term * 2) - 1;
          shown[places[term]] |= surely;
        }
      }
      starts.fill(shown.length, plate + 1);
      plate = 0;
      for (const step of unpacked(absent)) recorded[plate += step] = 1;
      return { starts, shown, recorded };
    }

    return { count, keyOf, numberOf, documentOf, within, garmentOf, who, cuts, ofFacet };
  }

  /** The same facts with "circa" read as 0 or 10 years either side. */
  function atCirca(facts, years) {
    const at = CIRCA_TRIED.indexOf(years);
    return once(facts.memo, years, () => ({ ...facts, daysOf: ({ tried }) => daysIn(tried[at]), memo: new Map() }));
  }

  /** 0 where the plate does not show the term, 1 where that is inferred, 2 where it is seen or read. */
  function shows(facts, number, term) {
    const { starts, shown } = facts.plates.ofFacet(facts.terms[term].facet);
    for (let i = starts[number]; i < starts[number + 1]; i += 1) {
      if (shown[i] >> 1 === term) return 1 + (shown[i] & 1);
    }
    return 0;
  }

  /** What a map holds under a key, made where there is nothing yet. */
  function once(map, key, make) {
    if (!map.has(key)) map.set(key, make());
    return map.get(key);
  }

  const listIn = (map, key) => once(map, key, () => []);

  // ---- surveys: the documents that count for a garment and its facets

  function placeParts(place) {
    return place.split(",").map((part) => part.trim().toLowerCase().replace(/ß/g, "ss")).filter(Boolean);
  }

  function survey(facts, question, facets) {
    const garment = facts.garmentIndex.get(question.garment);
    if (garment === undefined) throw new Error(`no garment “${question.garment}” in the vocabulary`);
    const { place, wearer, kind, grades } = question;
    const key = JSON.stringify([garment, facets, place, wearer, kind, grades]);
    return once(facts.memo, key, () => makeSurvey(facts, garment, facets, question));
  }

  /**
   * The documents that count as `entries`, in order: {document, earliest, latest, size}, with so many of the `plates`, which
   * stand in the same order; `positions` says of each in which entry it is, `showing(facet)` which show its terms.
   */
  function makeSurvey(facts, garment, facets, { place, wearer, kind, grades }) {
    const away = new Map(Object.keys(facts.whyLeftOut).map((reason) => [reason, []])), parts = place === null ? [] : placeParts(place);
    const plates = [], entries = [], met = new Set(), dated = [], positions = new Int32Array(facts.plates.count);
    const held = standing(facts, recording(facts, garment, facets, wearer), away.get("reprint"));
    held.forEach((own, document) => {
      const fact = facts.documents[document], days = facts.daysOf(fact);
      if ((kind !== null && fact.kind !== kind) || !parts.every((part) => fact.places.includes(part))) return;
      const reason = notWeighed(fact.basis, days, grades);
      if (reason) away.get(reason).push(...own);
      else dated.push({ document, ...days, own });
    });
    // By the middle of their days, then as they stand.
    for (const { own, ...entry } of dated.sort((a, b) => a.earliest + a.latest - b.earliest - b.latest)) {
      const kept = withoutReusedCuts(facts, own, met, away);
      for (const number of kept) positions[number] = entries.length;
      plates.push(...kept);
      if (kept.length) entries.push({ ...entry, size: kept.length });
    }
    const shown = [], showing = (facet) => (shown[facet] ||= gatherShowing(facts, facet, plates));
    return { entries, plates, positions, middles: entries.map(({ earliest, latest }) => earliest + latest), showing, away, memo: new Map() };
  }

  /** By document its plates that are of the garment and wearer and record every facet. */
  function recording(facts, garment, facets, wearer) {
    const { count, garmentOf, documentOf, who, ofFacet } = facts.plates, found = [];
    const wanted = facts.garmentChains.map((each) => each.includes(garment));
    const meant = facts.wearers.map((each) => [null, "any", each].includes(wearer) || each === "any");
    const columns = facets.map((facet) => ofFacet(facet).recorded);
    for (let number = 0; number < count; number += 1) {
      const document = documentOf[number];
      if (wanted[garmentOf[number]] && meant[who[number]] && columns.every((column) => column[number])) (found[document] ||= []).push(number);
    }
    return found;
  }

  /** Without reprints; the earliest stands in for an original that itself records nothing. */
  function standing({ documents, daysOf }, found, reprint) {
    const reprints = new Map(), originals = new Set(), held = [];
    found.forEach((own, document) => {
      const { root, source } = documents[document];
      if (root !== null) return listIn(reprints, root).push(document);
      held[document] = own;
      originals.add(source);
    });
    for (const [original, copies] of reprints) {
      const middle = (document, days = daysOf(documents[document])) => (days?.earliest ?? Infinity) + (days?.latest ?? Infinity);
      if (original >= 0 && !originals.has(documents[original].source)) {
        const first = copies.reduce((first, each) => (middle(each) < middle(first) ? each : first));
        held[original] = found[first];
        copies.splice(copies.indexOf(first), 1);
      }
      for (const document of copies) reprint.push(...found[document]);
    }
    return held;
  }

  function notWeighed(basis, days, grades) {
    if (days === null) return "undated";
    if (basis === "style") return "style";
    if (basis === "none") return "no basis";
    if (!grades.includes(basis)) return `grade ${basis}`;
    const { earliest, latest } = days;
    return earliest === null || latest === null || latest - earliest + 1 > WIDEST_DAYS ? "wide" : null;
  }

  function withoutReusedCuts(facts, plates, met, away) {
    return plates.filter((number) => {
      const cut = facts.plates.cuts[number], again = met.has(cut);
      if (again) away.get("reused cut").push(number);
      return !again && (cut < 0 || met.add(cut));
    });
  }

  /** By term of the facet, ascending: those of the plates that show it, in order. */
  function gatherShowing(facts, facet, plates) {
    const { starts, shown } = facts.plates.ofFacet(facet), found = {};
    for (const number of plates) {
      for (let i = starts[number]; i < starts[number + 1]; i += 1) (found[shown[i] >> 1] ||= []).push(number);
    }
    return found;
  }

  /** The plates, which stand in order, by the position of their entry. */
  function byEntry(looked, plates) {
    const found = new Map();
    for (const number of plates) listIn(found, looked.positions[number]).push(number);
    return found;
  }

  /** How many of the ascending numbers lie below the given one, or up to it. */
  function below(numbers, given, orEqual) {
    let low = 0, high = numbers.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (numbers[middle] < given || (orEqual && numbers[middle] === given)) low = middle + 1;
      else high = middle;
    }
    return low;
  }

  const between = (looked, after, before) =>
    Math.max(0, below(looked.middles, before, false) - below(looked.middles, after, true));
  const within = (looked, first, last) => below(looked.middles, last, true) - below(looked.middles, first, false);

  /** Aoristic weight of a closed span in a window: the share of its days that lies there. */
  function weight(entry, window) {
    const begins = window.earliest === null ? entry.earliest : Math.max(entry.earliest, window.earliest);
    const ends = window.latest === null ? entry.latest : Math.min(entry.latest, window.latest);
    return Math.max(0, ends - begins + 1) / (entry.latest - entry.earliest + 1);
  }

  /** [position, weight] of the documents with any weight in the window, in order. */
  function weighed(looked, window) {
    const { earliest, latest } = window, found = [];
    const low = earliest === null ? 0 : below(looked.middles, 2 * earliest - WIDEST_DAYS, false);
    const high = latest === null ? looked.middles.length : below(looked.middles, 2 * latest + WIDEST_DAYS, true);
    for (let position = low; position < high; position += 1) {
      const part = weight(looked.entries[position], window);
      if (part > 0) found.push([position, part]);
    }
    return found;
  }

  // ---- shares

  function wilson(p, n) {
    const z2 = Z_95 * Z_95, middle = p + z2 / (2 * n);
    const half = Z_95 * Math.sqrt(Math.max(0, p * (1 - p)) / n + z2 / (4 * n * n)), whole = 1 + z2 / n;
    return [Math.max(0, (middle - half) / whole), Math.min(1, (middle + half) / whole)];
  }

  function shareIn(looked, of, weights) {
    let showing = 0, recorded = 0, squares = 0;
    for (const [position, part] of weights) {
      const plates = looked.entries[position].size, shown = of.showing.get(position);
      showing += part * (shown ? shown.length : 0);
      recorded += part * plates;
      squares += part * plates * plates;
    }
    if (recorded <= 0) return { showing: 0, recorded: 0, effective: 0, value: null, low: null, high: null };
    const effective = Math.min(recorded, recorded / (1 + (squares / recorded - 1) * ALIKE));
    const [low, high] = wilson(showing / recorded, effective);
    return { showing, recorded, effective, value: showing / recorded, low, high };
  }

  function frequency(share) {
    if (share.value === null || share.showing <= 0) return null;
    return share.value >= USUAL ? "usual" : share.value >= OCCASIONAL ? "occasional" : "rare";
  }

  // ---- ranges and absence

  /** McCarthy's bound: (E_in / (E_in + E_gap))^min(N − 1, 15), and 1 where N < 2. */
  function absenceP(sightings, inside, gap) {
    if (sightings < 2) return 1;
    const part = inside / (inside + gap);
    let p = 1;
    for (let i = Math.min(sightings - 1, STRONGEST); i > 0; i -= 1) p *= part;
    return p;
  }

  /** The chance that none of these documents shows a term in use at 5 % (beta-binomial). */
  function silence(counts) {
    let p = 1;
    for (const count of counts) {
      for (let j = 0; j < count; j += 1) p *= ((1 - USE) * SPREAD + j) / (SPREAD + j);
      if (p < 1e-12) return p;
    }
    return p;
  }

  function straussSadler(sightings, years) {
    return sightings < 2 ? 0 : years * (Math.pow(ALPHA, -1 / (sightings - 1)) - 1);
  }

  /** Where the terms are shown, all on one plate; which of these are sightings; which sightings are backed. */
  function seen(facts, looked, terms) {
    return once(looked.memo, terms.join(" "), () => {
      const all = looked.showing(facts.terms[terms[0]].facet)[terms[0]] || [], backed = new Set();
      const atLeast = (least) => byEntry(looked, all.filter((number) => terms.every((term) => shows(facts, number, term) >= least)));
      const showing = atLeast(1), sighted = atLeast(2), order = [...sighted.keys()];
      for (let i = 1; i < order.length; i += 1) {
        if (order[i] - order[i - 1] <= BACKING) backed.add(order[i - 1]).add(order[i]);
      }
      return { showing, sighted, order, backed };
    });
  }

  function documentsNeeded(sightings, inside, beyond) {
    if (beyond === 0 || absenceP(sightings, inside, beyond) >= ALPHA) return 0;
    let low = 1, high = beyond;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (absenceP(sightings, inside, middle) < ALPHA) high = middle;
      else low = middle + 1;
    }
    return low;
  }

  /** The attested range; null where there is no sighting. */
  function attested(looked, of) {
    if (!of.order.length) return null;
    const { middles } = looked;
    const backed = of.order.filter((position) => of.backed.has(position));
    const order = backed.length ? backed : of.order;
    const first = order[0], last = order.at(-1), begins = middles[first], ends = middles[last];
    const isInside = (position) => begins <= middles[position] && middles[position] <= ends;
    const sightings = of.order.filter(isInside).length, documents = within(looked, begins, ends);
    const before = below(middles, begins, false), after = middles.length - before - documents;
    const out = documentsNeeded(sightings, documents, before), onward = documentsNeeded(sightings, documents, after);
    return {
      first, last, firstTwice: begins, lastTwice: ends, sightings, documents,
      setAside: of.order.filter((position) => !isInside(position)),
      guideYears: straussSadler(sightings, (ends - begins) / 2 / DAYS_PER_YEAR),
      before: out ? middles[before - out] : null, after: onward ? middles[before + documents + onward - 1] : null,
    };
  }

  function extension(found) {
    return {
      earliest: found && found.before !== null ? decimalYear(found.before / 2) : null,
      latest: found && found.after !== null ? decimalYear(found.after / 2) : null,
    };
  }

  // ---- verdicts

  function positionOf(found, { earliest, latest }) {
    if (earliest !== null && 2 * earliest > found.lastTwice) return "after";
    if (latest !== null && 2 * latest < found.firstTwice) return "before";
    const inside = earliest !== null && latest !== null && 2 * earliest > found.firstTwice && 2 * latest < found.lastTwice;
    return inside ? "inside" : "overlapping";
  }

  /** Whether all that lies between the sightings on either side of the window's documents is silent. */
  function isSilentGap(looked, of, at) {
    let before = -1, after = looked.entries.length;
    for (const position of of.order) {
      if (position < at[0]) before = position;
      else if (position > at.at(-1)) after = Math.min(after, position);
    }
    const plates = [];
    for (let position = before + 1; position < after; position += 1) {
      if (of.showing.has(position)) return false;
      plates.push(looked.entries[position].size);
    }
    return silence(plates) < GAP_ALPHA;
  }

  function judge(looked, of, found, window, wornFor, notBefore) {
    const mostly = (part) => part >= MOSTLY;
    const at = weighed(looked, window).filter(([, part]) => mostly(part)).map(([position]) => position);
    let inside = at.filter((position) => of.sighted.has(position)), worn = [];
    if (wornFor > 0 && window.earliest !== null) {
      const by = new Set(inside);
      const longer = { earliest: window.earliest - Math.floor(wornFor * DAYS_PER_YEAR + 0.5), latest: window.latest };
      inside = weighed(looked, longer)
        .filter(([position, part]) => (mostly(part) && of.sighted.has(position)) || by.has(position))
        .map(([position]) => position);
      worn = inside.filter((position) => !by.has(position));
    }
    const silent = !at.some((position) => of.showing.has(position)) &&
      silence(at.map((position) => looked.entries[position].size)) < ALPHA;
    const position = found ? positionOf(found, window) : null;
    let gap = 0, beyondYears = 0, p = null;
    if (position === "after") {
      gap = between(looked, found.lastTwice, 2 * window.earliest);
      beyondYears = (window.earliest - found.lastTwice / 2) / DAYS_PER_YEAR;
    } else if (position === "before") {
      gap = between(looked, 2 * window.latest, found.firstTwice);
      beyondYears = (found.firstTwice / 2 - window.latest) / DAYS_PER_YEAR;
    }
    if (position === "after" || position === "before") p = absenceP(found.sightings, found.documents, gap);
    const silentGap = position === "inside" && !inside.length && at.length > 0 && isSilentGap(looked, of, at);
    const judged = { verdict: "unproven", position, inside, worn, at, gap, beyondYears, p, silent, silentGap };
    if (notBefore && window.latest !== null && window.latest < notBefore.day) judged.verdict = "too early";
    else if (inside.length >= 2 || inside.some((each) => of.backed.has(each))) judged.verdict = "attested";
    else if (inside.length) judged.verdict = "seen once";
    else if (!found) judged.verdict = "unrecorded";
    else if (position === "inside") judged.verdict = silent || silentGap ? "lapsed" : "bracketed";
    else if (p !== null && (p < ALPHA || silent)) judged.verdict = "unsupported";
    else if (position === "overlapping" || beyondYears <= Math.min(found.guideYears, NEAR_YEARS)) judged.verdict = "plausible";
    return judged;
  }

  // ---- sentences

  const number = (count, thing) => `${count} ${thing}${count === 1 ? "" : "s"}`;
  const show = (count) => (count === 1 ? "shows" : "show");
  const years = (length) => (length + 0.5 < 1 ? "less than a year" : number(Math.floor(length + 0.5), "year"));
  const middleYear = (twice) => yearOf(twice / 2);
  const span = (first, last) => (first === last ? String(first) : `${first}–${last}`);
  const percent = (share) => `${Math.floor(share * 100 + 0.5)} %`;
  const percentUp = (p) => `${Math.max(1, Math.floor(p * 100) + 1)} %`;
  const milestoneSaid = (of) => `${of.words} (${of.event}; ${of.source})`;
  const raised = (text) => text.slice(0, 1).toUpperCase() + text.slice(1);

  function lower(label) {
    const words = label.split("(")[0].trim();
    return words.slice(0, 1).toLowerCase() + words.slice(1);
  }

  function reasons(c) {
    const said = [...deciding(c), ...lookedAt(c)];
    if (c.judged.worn.length) said.push(`Counted by the wear allowance of ${years(c.wornFor)}: ${named(c, c.judged.worn)}.`);
    if (c.found) said.push(rangeSaid(c.found));
    if (c.inDress && c.window.latest !== null && c.window.latest < c.inDress.day) {
      said.push(`Known in dress only from ${milestoneSaid(c.inDress)}.`);
    }
    if (c.found && c.found.setAside.length) {
      const count = c.found.setAside.length, alone = named(c, c.found.setAside);
      said.push(count === 1
        ? `Outside that range one sighting stands alone; check its date: ${alone}.`
        : `Outside that range ${count} sightings stand alone; check their dates: ${alone}.`);
    }
    const little = !c.judged.at.length || ["unrecorded", "unproven"].includes(c.judged.verdict);
    const parts = c.leftOut.filter(({ showing }) => showing || little);
    if (parts.length) said.push(notCounted(c.facts, parts, ({ showing }) => (showing ? ` (${showing} ${show(showing)} ${c.it})` : "")));
    return said;
  }

  /** What is not counted: by each reason how many plates, and what else is said of them. */
  function notCounted(facts, leftOut, more) {
    const said = leftOut.map((each) => `${number(each.recording, "plate")} ${facts.whyLeftOut[each.reason]}${more(each)}`);
    return `Not counted: ${said.join("; ")}.`;
  }

  function deciding(c) {
    const { judged, when, it, found } = c;
    if (judged.verdict === "too early") {
      return [`${c.terms.length === 1 ? "It" : "All together they"} cannot be earlier than ${milestoneSaid(c.notBefore)}.`];
    }
    if (judged.verdict === "attested") {
      return [judged.inside.length === 1
        ? `A document in ${when} shows ${it}, and others close to it in time agree.`
        : `${judged.inside.length} documents in ${when} show ${it}.`];
    }
    if (judged.verdict === "seen once") {
      return [`One document alone in ${when} shows ${it}, and none of the ${BACKING} before it or the ${BACKING} ` +
        "after it agrees: cite it, and doubt it."];
    }
    if (!found) return [neverSeen(c)];
    if (judged.position === "inside") {
      const [before, after] = neighbours(c);
      const seenThen = `seen before it (${middleYear(before)}) and after it (${middleYear(after)})`;
      const gap = number(between(c.looked, before, after), "document");
      const where = judged.silent ? "although enough was looked at"
        : `nor in any of the ${gap} about it, and that is enough to have looked at`;
      return [judged.verdict === "lapsed"
        ? `Not found in ${when}, ${where}, yet ${seenThen}: a gap, or an old use and a revival.`
        : `Not seen in ${when} itself, but ${seenThen}, with ${gap} between and no sighting in them.`];
    }
    if (judged.position === "overlapping") {
      const ends = span(middleYear(found.firstTwice), middleYear(found.lastTwice));
      return [`Not seen in ${when} itself, but ${when} reaches an end of the attested range, ${ends}.`];
    }
    return outside(c);
  }

  function neverSeen(c) {
    const { looked, facts, things } = c;
    if (!looked.plates.length) {
      const facets = new Set(c.terms.map((term) => lower(facts.facets[facts.terms[term].facet].label)));
      return `No document weighed here records the ${[...facets].join(" and the ")} of ${things}: ` +
        "nobody has looked, so nothing can be said.";
    }
    return `Not seen at any time among ${number(looked.plates.length, "plate")} of ${things} in ${number(looked.entries.length, "document")}.`;
  }

  function outside(c) {
    const { judged, when, it, found } = c;
    const [end, inUse] = judged.position === "after"
      ? [`after the last sighting (${middleYear(found.lastTwice)})`, "still in use as before"]
      : [`before the first sighting (${middleYear(found.firstTwice)})`, "in use as it was later"];
    const away = `${raised(when)} lies ${years(judged.beyondYears)} ${end}`, gap = number(judged.gap, "document");
    if (judged.verdict === "unsupported") {
      const said = [];
      if (judged.p < ALPHA) {
        said.push(`${away}, and ${gap} between without ${it}: were it ${inUse}, ` +
          `the chance of that is at most ${percentUp(judged.p)}.`);
      }
      if (judged.silent) said.push(`Enough was looked at in ${when} that a use by one in twenty would probably have shown.`);
      said.push("Not found, and use at 5 % or more is unlikely; that is not the same as not in use.");
      return said;
    }
    if (judged.verdict === "plausible") {
      const reach = years(Math.min(found.guideYears, NEAR_YEARS));
      return [`${away}; after ${found.sightings} sightings a use up to ${reach} further would be no surprise, ` +
        "and nothing looked at speaks against it."];
    }
    return [`${away}, and too little was looked at to say (${gap} between).`];
  }

  function lookedAt(c) {
    const { judged, when, it, things, looked, of, share } = c;
    if (!looked.entries.length) return [];
    const plates = judged.at.reduce((sum, position) => sum + looked.entries[position].size, 0);
    if (!plates) return [`No document dated mostly in ${when} was looked at for this.`];
    const documents = number(judged.at.length, "document");
    const counts = judged.at.filter((position) => of.showing.has(position)).map((position) => of.showing.get(position).length);
    const shown = counts.reduce((sum, count) => sum + count, 0), recorded = `recorded in ${when}`;
    if (plates === 1) return [`The one plate of ${things} ${recorded} ${shown ? "shows" : "does not show"} ${it}.`];
    if (!shown) return [`None of the ${plates} ${things} ${recorded} shows ${it}, in ${documents}.`];
    const said = [`${shown} of the ${plates} ${things} ${recorded} ${show(shown)} ${it}, in ${counts.length} of ${documents}.`];
    if (share.value !== null) {
      said.push(`By weight that is ${percent(share.value)} (95 % interval ${percent(share.low)} to ` +
        `${percent(share.high)}): ${frequency(share)}.`);
    }
    const inferred = shown - judged.at.reduce((sum, position) => sum + (of.sighted.get(position) || []).length, 0);
    if (inferred) {
      said.push(`${inferred} of these ${inferred === 1 ? "is" : "are"} inferred: counted in the share, never as a sighting.`);
    }
    return said;
  }

  function rangeSaid(found) {
    const said = `Attested ${span(middleYear(found.firstTwice), middleYear(found.lastTwice))}: ` +
      `${number(found.sightings, "sighting")} in ${number(found.documents, "document")} looked at`;
    const ends = [];
    if (found.before !== null) ends.push(`before ${middleYear(found.before)}`);
    if (found.after !== null) ends.push(`after ${middleYear(found.after)}`);
    if (!ends.length) return `${said}. Both ends stay open: too little was looked at beyond them.`;
    return `${said}. Use ${ends.join(" or ")} is unlikely, by what was looked at.`;
  }

  function neighbours(c) {
    let before = c.found.firstTwice, after = c.found.lastTwice;
    for (const position of c.of.order) {
      const middle = c.looked.middles[position];
      if (middle < 2 * c.window.earliest) before = Math.max(before, middle);
      else if (middle > 2 * c.window.latest) after = Math.min(after, middle);
    }
    return [before, after];
  }

  function named(c, positions) {
    const parts = positions.slice(0, NAMED).map((position) =>
      `${c.facts.plates.keyOf(c.of.sighted.get(position)[0])} (${middleYear(c.looked.middles[position])})`);
    if (positions.length > NAMED) parts.push(`and ${positions.length - NAMED} more`);
    return parts.join(", ");
  }

  // ---- answers

  /** The question with everything it may leave out filled in. */
  function whole(question) {
    const asked = { features: [], place: null, wearer: null, kind: null, grades: "A", worn_for: 0, ...question };
    for (const name of ["place", "wearer", "kind"]) if (asked[name] === undefined || asked[name] === "") asked[name] = null;
    const { earliest = null, latest = null } = asked.window || {};
    asked.window = { earliest, latest };
    return asked;
  }

  /**
   * Weighs a question, whose garment and features are in the vocabulary: {garment, features: ["facet/term", …], window: {earliest, latest} as day numbers or null,
   * place, wearer, kind, grades: "A" | "AB" | "ABC", worn_for: years}. Gives what `inperiod fit --json` prints but for the window.
   */
  function answer(facts, question) {
    const asked = whole(question), features = [...new Set(asked.features)];
    const { garment, place, wearer, kind, grades, worn_for } = asked;
    return {
      garment, place, wearer, kind, grades, worn_for,
      features: features.map((feature) => finding(facts, asked, [feature])),
      together: features.length > 1 ? finding(facts, asked, features) : null,
    };
  }

  const latestOf = (milestones) =>
    milestones.reduce((last, each) => (each && (!last || each.day > last.day) ? each : last), null);

  const termsOf = (facts, features) => features.map((feature) => facts.termIndex.get(feature));
  const facetsOf = (facts, terms) => [...new Set(terms.map((term) => facts.terms[term].facet))].sort((a, b) => a - b);

  function finding(facts, question, features) {
    const terms = termsOf(facts, features), { window } = question, looked = survey(facts, question, facetsOf(facts, terms));
    const of = seen(facts, looked, terms), found = attested(looked, of);
    const notBefore = latestOf(terms.map((term) => facts.terms[term].notBefore));
    const inDress = latestOf(terms.map((term) => facts.terms[term].inDress));
    const judged = judge(looked, of, found, window, question.worn_for, notBefore);
    const share = shareIn(looked, of, weighed(looked, window));
    const plates = (positions) => positions.flatMap((position) => of.sighted.get(position).map(facts.plates.keyOf));
    const leftOut = [];
    for (const [reason, numbers] of looked.away) {
      if (!numbers.length) continue;
      const showing = numbers.filter((n) => terms.every((term) => shows(facts, n, term) === 2)).length;
      leftOut.push({ reason, recording: numbers.length, showing });
    }
    return {
      term: features.join(" + "), verdict: judged.verdict, frequency: frequency(share), share,
      sightings: of.order.length, in_window: judged.inside.length, documents_in_window: judged.at.length,
      set_aside: plates(found ? found.setAside : []), worn: plates(judged.worn),
      first: found && sighted(facts, looked, of, found.first), last: found && sighted(facts, looked, of, found.last),
      guide_years: found ? found.guideYears : 0, extension: extension(found),
      absence_p: judged.p, direct_absence: judged.silent,
      not_before: notBefore && notBefore.text,
      not_before_because: notBefore && `${notBefore.event}; ${notBefore.source}`,
      in_dress_from: inDress && inDress.text, left_out: leftOut,
      cite: best(facts, looked, of, found, judged, window).map(facts.plates.keyOf),
      reasons: reasons({
        facts, things: facts.garments[facts.garmentIndex.get(question.garment)].plural, terms, window,
        when: windowInWords(window), it: terms.length === 1 ? "it" : "them all together",
        wornFor: question.worn_for, looked, of, found, judged, share, leftOut, notBefore, inDress,
      }),
    };
  }

  function sighted(facts, looked, of, position) {
    return { plate: facts.plates.keyOf(of.sighted.get(position)[0]), date: decimalYear(looked.middles[position] / 2) };
  }

  /** Plates to cite, best first: place to the window, grade, narrowness, not after the target day, nearness. */
  function best(facts, looked, of, found, judged, { earliest, latest }) {
    const from = earliest === null ? latest : earliest, to = latest === null ? earliest : latest;
    const inside = new Set(judged.inside), worn = new Set(judged.worn), aside = new Set(found ? found.setAside : []);
    const where = (position) =>
      worn.has(position) ? 1 : inside.has(position) ? 0 : aside.has(position) ? 3 : 2;
    const better = (a, b) => a[0] - b[0] || a[1] - b[1] || a[2] - b[2] || a[3] - b[3] || a[4] - b[4] || a[5] - b[5], ranked = [];
    for (const position of judged.inside.length >= CITED ? judged.inside : of.order) {
      const entry = looked.entries[position];
      const away = from === null ? 0 : entry.earliest + entry.latest - from - to;
      const rank = [where(position), BASES.indexOf(facts.documents[entry.document].basis),
        entry.latest - entry.earliest, away > 0 ? 1 : 0, Math.abs(away), position];
      if (ranked.length === CITED && better(rank, ranked[CITED - 1]) > 0) continue;
      ranked.push(rank);
      ranked.sort(better).splice(CITED);
    }
    return ranked.flatMap((rank) => of.sighted.get(rank[5])).slice(0, CITED);
  }

  /** In each window the share of plates that show the features, all on one; null where none was looked at. */
  function sharesIn(facts, question, features, windows) {
    const terms = termsOf(facts, features), looked = survey(facts, whole(question), facetsOf(facts, terms)), of = seen(facts, looked, terms);
    return windows.map((window) => shareIn(looked, of, weighed(looked, window)).value);
  }

  const facetIndex = (facts, facet) => facts.facets.findIndex((each) => each.id === facet);

  /** The commonest terms of a facet in the question's window, most usual first, twelve at most. */
  function usualInWindow(facts, question, facet) {
    const asked = whole(question), at = facetIndex(facts, facet), looked = survey(facts, asked, [at]);
    const weights = weighed(looked, asked.window), parts = new Map(weights);
    return Object.entries(gatherShowing(facts, at, looked.plates.filter((number) => parts.has(looked.positions[number]))))
      .map(([term, plates]) => {
        const showing = byEntry(looked, plates), share = shareIn(looked, { showing }, weights);
        const documents = [...showing.keys()].filter((position) => parts.get(position) >= MOSTLY).length;
        return { term: facts.terms[term].key, label: facts.terms[term].label, share, documents };
      })
      .filter((each) => each.share.showing > 0)
      .sort((a, b) => b.share.showing - a.share.showing)
      .slice(0, CITED);
  }

  /** What a timeline is counted from: its survey, its decades, and what weighs how much in each. */
  function byDecade(facts, garment, facet, limits) {
    const { decades: given, ...rest } = limits || {};
    const asked = whole({ ...rest, garment }), looked = survey(facts, asked, [facetIndex(facts, facet)]);
    let [first, last] = given || facts.decades;
    if (!given && looked.middles.length) {
      const decade = (twice) => Math.floor(middleYear(twice) / 10) * 10;
      first = Math.min(first, decade(looked.middles[0]));
      last = Math.max(last, decade(looked.middles.at(-1)));
    }
    const decades = [];
    for (let decade = first; decade <= last; decade += 10) decades.push(decade);
    const each = decades.map((decade) => weighed(looked, { earliest: yearStart(decade), latest: yearStart(decade + 10) - 1 }));
    return { looked, decades, each, lookedIn: each.map((list) => list.filter(([, part]) => part >= MOSTLY).length) };
  }

  /** What a timeline would stand on: how many terms, and how many documents in each of its decades. */
  function standsOn(facts, garment, facet, limits) {
    const { looked, lookedIn } = byDecade(facts, garment, facet, limits);
    return { terms: Object.keys(looked.showing(facetIndex(facts, facet))).length, looked: lookedIn };
  }

  /** Term against decade. limits: {place, kind, wearer, grades, decades: [first, last]}, all optional. */
  function timeline(facts, garment, facet, limits) {
    const { looked, decades, each, lookedIn } = byDecade(facts, garment, facet, limits);
    const sum = (weights, count) => weights.reduce((total, [position, part]) => total + part * count(position), 0);
    const recorded = each.map((weights) => sum(weights, (position) => looked.entries[position].size));
    const rows = Object.keys(looked.showing(facetIndex(facts, facet))).map(Number).map((term) => {
      const of = seen(facts, looked, [term]), found = attested(looked, of), { notBefore } = facts.terms[term];
      const weights = each.map((list) => sum(list, (position) => (of.showing.get(position) || []).length));
      const end = (position) => sighted(facts, looked, of, position);
      return {
        term: facts.terms[term].key, label: facts.terms[term].label, weights,
        shares: weights.map((shown, i) => (recorded[i] > 0 ? shown / recorded[i] : null)),
        documents: each.map((list) => list.filter(([position, part]) => part >= MOSTLY && of.showing.has(position)).length),
        sightings: of.order.length, first: found && end(found.first), last: found && end(found.last),
        extension: extension(found), set_aside: found ? found.setAside.map(end) : [],
        not_before: notBefore && notBefore.text,
      };
    });
    const leftOut = [...looked.away].filter(([, plates]) => plates.length).map(([reason, plates]) => ({ reason, recording: plates.length }));
    return { garment, facet, decades, rows, recorded, looked: lookedIn, left_out: leftOut };
  }

  /** What would be judged otherwise were circa read as 0 or 10 years, or grade C counted as well. */
  function sensitivity(facts, question) {
    const asked = whole(question), trials = [];
    for (const tried of CIRCA_TRIED) {
      if (tried !== facts.circaYears) trials.push([`“circa” were read as ${tried} years either side`, atCirca(facts, tried), asked]);
    }
    if (!asked.grades.includes("C")) trials.push(["dates of grade C were counted too", facts, { ...asked, grades: "ABC" }]);
    const all = (given) => [...given.features, ...(given.together ? [given.together] : [])];
    const was = all(answer(facts, asked)), changes = [];
    for (const [condition, otherFacts, otherQuestion] of trials) {
      all(answer(otherFacts, otherQuestion)).forEach((now, i) => {
        if (now.verdict === was[i].verdict) return;
        const sentence = `If ${condition}, the verdict would be ${now.verdict}, not ${was[i].verdict}.`;
        changes.push({ term: now.term, condition, verdict: now.verdict, sentence });
      });
    }
    return changes;
  }

  const evidence = {
    unpacked, factsFromJson, shows, gatherShowing, answer, timeline, standsOn, sharesIn, notCounted, usualInWindow, sensitivity, windowInWords, yearStart, yearOf, decimalYear,
  };
  (root.InPeriod ||= {}).evidence = evidence;
  if (typeof module !== "undefined") module.exports = evidence;
})(globalThis);
