// A board against the facts: verdicts, what is still to settle, plates worth gathering; as boards/ of the Python side.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod ||= {});
  const MOSTLY = 0.5,
    WIDEST_DAYS = 4383,
    SUGGESTED = 6,
    ALTERNATIVES = 4,
    CITED = 3;
  const KINDS = {
    contradiction: "Contradictions",
    gap: "Gaps: planned, and not attested",
    outside: "Supports that lie outside the window",
    weak: "Supports whose date is not weighed",
    "not shown": "Supports that do not show it",
    garment: "Supports from other garments",
    unplanned: "Supports for what is not planned",
    unknown: "Plates this catalogue does not have",
  };
  const AWAY = {
    undated: "It has no date, so it dates nothing.",
    style: "Its date rests on the style of the dress itself, so it dates nothing.",
    none: "Nobody says what its date rests on, so it is set aside.",
    B: "It is dated only by the institution that keeps it (grade B), so it is set aside.",
    C: "It is weakly dated (grade C: a seller’s word or an estimate), so it is set aside.",
    wide: "Its date spans more than twelve years, so it is set aside.",
    reprint: "It is a reprint, and counts only as its original.",
  };
  const OUTSIDE = {
    before: "Its date lies before the window.",
    after: "Its date lies after the window.",
    "mostly outside": "Its date lies mostly outside the window.",
  };
  const wordOf = (feature) => feature.term || `${feature.facet}/${feature.none ? "none" : "not visible"}`;

  /** The share of a document's days in the window. */
  function weight(days, window) {
    const { earliest, latest } = days;
    if (earliest === null || latest === null) {
      const first = earliest === null && window.earliest === null,
        last = latest === null && window.latest === null;
      return earliest === null && latest === null ? (first + last) / 2 : Number(first || last);
    }
    const begins = window.earliest === null ? earliest : Math.max(earliest, window.earliest);
    const ends = window.latest === null ? latest : Math.min(latest, window.latest);
    return Math.max(0, ends - begins + 1) / (latest - earliest + 1);
  }

  function away({ root: original, days, basis }, grades) {
    if (original !== null) return "reprint";
    if (days === null) return "undated";
    if (basis === "style" || basis === "none" || !grades.includes(basis)) return basis;
    return days.earliest === null || days.latest === null || days.latest - days.earliest + 1 > WIDEST_DAYS ? "wide" : null;
  }

  function sideOf(days, part, window) {
    if (days === null) return "undated";
    if (part >= MOSTLY) return "inside";
    if (part === 0 && window.earliest !== null && days.latest !== null && days.latest < window.earliest) return "before";
    if (part === 0 && window.latest !== null && days.earliest !== null && days.earliest > window.latest) return "after";
    return "mostly outside";
  }

  /** What is worked out for a board; `window` is null where its target cannot be read. */
  function checkBoard({ facts, numberOf }, vocabulary, board, window) {
    const { plates, documents, terms, termIndex, garmentIndex } = facts,
      grades = vocabulary.grades,
      { shows } = InPeriod.evidence;
    const named = [...new Set(board.features.map((each) => each.term).filter((term) => term && !/\/(none|not visible)$/.test(term)))];
    const asked = named.filter((term) => termIndex.has(term)),
      garment = garmentIndex.get(board.garment);
    const question = { garment: board.garment, features: asked, window, grades };
    const can = window && garment !== undefined && asked.length;
    const answer = can ? InPeriod.evidence.answer(facts, question) : { features: [], together: null };
    const findings = new Map(answer.features.map((each) => [each.term, each]));
    const everywhere = window || { earliest: null, latest: null };
    const part = (number) => {
      const { days } = documents[plates.documentOf[number]];
      return days ? weight(days, everywhere) : 0;
    };
    const ofGarment = (number) => garment !== undefined && facts.garmentChains[plates.garmentOf[number]].includes(garment);
    const shown = (number) => asked.filter((term) => shows(facts, number, termIndex.get(term)) === 2);

    const label = (word) => {
      const [facet, name] = word.split("/");
      if (name === "none") return `no ${facetLabel(facet)}`;
      return termIndex.has(word) ? terms[termIndex.get(word)].label : (name || word).replace(/-/g, " ");
    };
    const facetLabel = (id) => (facts.facets.find((each) => each.id === id) || { label: id }).label.toLowerCase();

    const gathered = board.plates.map((each) => {
      const number = numberOf(each.plate);
      if (number === undefined) return { ...each, known: false };
      const document = documents[plates.documentOf[number]];
      const index = termIndex.get(each.supports);
      const sure = index === undefined ? null : shows(facts, number, index);
      return {
        ...each,
        known: true,
        number,
        side: window ? sideOf(document.days, part(number), window) : null,
        aside: away(document, grades),
        shows: shown(number),
        supported: sure === null ? null : sure ? ["inferred", "shown"][sure - 1] : plates.ofFacet(terms[index].facet).recorded[number] ? "not shown" : "not recorded",
        ofGarment: ofGarment(number),
      };
    });

    // ---- remarks, in the order of remarks.py

    const remarks = [];
    const remark = (kind, sentence, term, plate) => remarks.push({ kind, sentence, term: term || null, plate: plate || null });
    const byFacet = new Map();
    for (const term of named) byFacet.set(term.split("/")[0], [...(byFacet.get(term.split("/")[0]) || []), term]);
    for (const [facet, several] of byFacet) {
      if (several.length < 2 || !(vocabulary.facets.find((each) => each.id === facet) || {}).exclusive) continue;
      remark("contradiction", `A garment has one ${facetLabel(facet)} at a time, and ${several.map(label).join(" and ")} are planned.`, several[1]);
    }
    const absent = board.features.map(wordOf).filter((word) => word.endsWith("/none")).map((word) => word.split("/")[0]);
    for (const term of named)
      if (absent.includes(term.split("/")[0]))
        remark("contradiction", `The plan says that there is no ${facetLabel(term.split("/")[0])}, and also ${label(term)}.`, term);
    for (const each of answer.features)
      if (each.verdict === "too early" && each.not_before)
        remark("contradiction", `${InPeriod.raised(label(each.term))} cannot be before ${InPeriod.dating.inWords(each.not_before)} (${each.not_before_because.split(";")[0]}), which is after the window.`, each.term);
    for (const each of answer.features)
      if (each.verdict !== "attested" && each.verdict !== "too early") remark("gap", `${InPeriod.raised(label(each.term))}: ${each.verdict}.`, each.term);
    for (const term of named) if (!asked.includes(term)) remark("gap", `${InPeriod.raised(label(term))}: this catalogue has no such term.`, term);
    const supports = gathered.filter((each) => each.known && named.includes(each.supports));
    const about = (kind, each, sentence) => sentence && remark(kind, sentence, each.supports, each.plate);
    for (const each of supports) about("outside", each, OUTSIDE[each.side]);
    for (const each of supports) about("weak", each, AWAY[each.aside]);
    for (const each of supports)
      about("not shown", each, {
        inferred: `It shows ${label(each.supports)} only by inference, which is not counted.`,
        "not shown": `It does not show ${label(each.supports)}.`,
        "not recorded": `Nothing is recorded of its ${facetLabel(each.supports.split("/")[0])}.`,
      }[each.supported]);
    if (garment !== undefined)
      for (const each of supports)
        if (!each.ofGarment) about("garment", each, `It is recorded as ${facts.garments[plates.garmentOf[each.number]].label}, so it does not count for this one.`);
    const words = board.features.map(wordOf);
    for (const each of gathered)
      if (each.supports && !words.includes(each.supports)) about("unplanned", each, `It supports ${label(each.supports)}, which is not planned.`);
    for (const each of gathered) if (!each.known) about("unknown", each, "There is no such plate in this catalogue.");

    // ---- what to gather

    const planned = board.features.map((feature) => {
      const finding = findings.get(feature.term) || null,
        sure = finding && /attested|seen once/.test(finding.verdict);
      const inside = sure ? finding.cite.filter((key) => part(numberOf(key)) >= MOSTLY) : [];
      const others = finding && finding.verdict !== "attested" ? InPeriod.evidence.usualInWindow(facts, question, feature.term.split("/")[0]) : [];
      return {
        finding,
        usual: others.filter((each) => each.term !== feature.term).slice(0, ALTERNATIVES),
        cite: sure ? (inside.length ? inside : finding.cite).slice(0, CITED) : [],
      };
    });
    const held = new Set(board.plates.map((each) => each.plate)),
      suggested = [];
    for (let number = 0; can && number < plates.count; number += 1) {
      if (!ofGarment(number) || held.has(plates.keyOf(number)) || away(documents[plates.documentOf[number]], grades)) continue;
      const given = shown(number);
      if (part(number) >= MOSTLY && given.length >= Math.min(2, asked.length)) suggested.push({ plate: plates.keyOf(number), part: part(number), shows: given });
    }
    suggested.sort((a, b) => b.shows.length - a.shows.length || b.part - a.part || (a.plate < b.plate ? -1 : 1));
    return { planned, together: answer.together, gathered, remarks, suggested: suggested.slice(0, SUGGESTED), label };
  }

  InPeriod.checkBoard = checkBoard;
  InPeriod.boardRemarks = KINDS;
  if (typeof module !== "undefined") module.exports = InPeriod;
})(globalThis);
