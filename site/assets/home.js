// The question, and its answer as one chooses. The address after the # is the question.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod = root.InPeriod || {});
  const { h, amount, announce, goTo, later, perCent, raised, readAddress, writeAddress } = InPeriod;
  const CITED = 3, USUAL = 6, OFFERED = 60, LEAST_DOCUMENTS = 3;
  const NOTHING = "No feature asked about yet: add one above, or ask about what was usual, below.";
  const FRAMED = "By decade; the mark under the line is the time asked about. Hatched: nobody looked.";
  const SIMPLE = ["garment", "when", "place", "kind", "wearer", "grades", "worn"];

  // ---- the question

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
  function readWindow(text, circaYears) {
    if (!text.trim()) return { error: "Say a year, a decade, a range or a phrase: 1926, the 1920s, 1924–28, summer 1912." };
    try {
      const read = InPeriod.dating.readPhrase(text);
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
    const kept = asked.features.filter((each) => each !== term && !(exclusive.has(facet) && each.startsWith(facet + "/")));
    return { ...asked, features: [...kept, term] };
  }

  // ---- the answer, in the same elements as home_answer.html

  function decadeShares(facts, question, features) {
    const [first, last] = facts.decades;
    const decades = [];
    for (let decade = first; decade <= last; decade += 10) decades.push(decade);
    if (features.length === 1) {
      const drawn = InPeriod.evidence.timeline(facts, question.garment, features[0].split("/")[0], {
        place: question.place, kind: question.kind, wearer: question.wearer, grades: question.grades, decades: facts.decades,
      });
      const row = drawn.rows.find((each) => each.term === features[0]);
      return { decades, shares: row ? row.shares : drawn.recorded.map((looked) => (looked > 0 ? 0 : null)) };
    }
    const { answer, yearStart } = InPeriod.evidence;
    const shares = decades.map((decade) => {
      const window = { earliest: yearStart(decade), latest: yearStart(decade + 10) - 1 };
      return answer(facts, { ...question, features, window }).together.share.value;
    });
    return { decades, shares };
  }

  const worthDrawing = (drawn) => drawn.rows.length > 0 && drawn.looked.reduce((sum, count) => sum + count, 0) >= LEAST_DOCUMENTS;

  function strip({ facts, grades }, question, features, label) {
    const { decades, shares } = decadeShares(facts, question, features);
    const { earliest, latest } = question.window, year = InPeriod.evidence.decimalYear;
    const told = decades.map((decade, i) => `${decade}s ${shares[i] === null ? "not looked at" : perCent(shares[i])}`);
    const window = [earliest === null ? null : year(earliest), latest === null ? null : year(latest + 1)];
    const drawing = InPeriod.drawStrip({ decades, shares, window, says: `${label} by decade: ${told.join(", ")}.` });
    const facet = features[0].split("/")[0];
    const link = features.length === 1 && worthDrawing(InPeriod.evidence.timeline(facts, question.garment, facet, { grades })) &&
      h("a", { href: `timeline/${question.garment}/${facet}.html` }, "The whole timeline");
    return h("figure", { class: "fit-strip" }, drawing, h("figcaption", {}, FRAMED, link && " ", link));
  }

  function shareFigure({ share, frequency }) {
    if (share.value === null) return null;
    const interval = `${perCent(share.low)} to ${perCent(share.high)}`;
    const text =
      `${perCent(share.value)}, ${frequency || "not seen"}: ${amount(share.showing)} of ` +
      `${amount(share.recorded)} plates by weight; 95 % interval ${interval}.`;
    return h("figure", { class: "fit-share" }, InPeriod.drawShare(share, `Share: ${text}`), h("figcaption", {}, text));
  }

  function cited(plate, id) {
    const { path, picture } = plate;
    const image = picture && h("a", { class: "cite-picture", href: path, tabindex: -1, "aria-hidden": "true" },
      h("img", { src: picture.path, alt: "", width: picture.width, height: picture.height, loading: "lazy", decoding: "async" }));
    return h("li", { class: "cite", "data-plate": plate.key },
      image,
      h("div", { class: "cite-body" },
        InPeriod.plateLine(plate),
        h("p", { class: "cite-text" }, h("span", { id }, plate.cite), " ",
          h("span", { class: "cite-copy", "data-copy": id, "data-copy-name": `citation of ${plate.label}, ${plate.when}` }))));
  }

  function citeHead({ verdict, cite }) {
    const one = cite.length === 1;
    if (verdict === "attested" || verdict === "seen once") return one ? "A plate to cite" : "Plates to cite, best first";
    return one ? "The one plate that shows it" : "The nearest plates that show it";
  }

  function fit(page, asked, question, found, hangs, index) {
    const { facts, holdings, leads } = page;
    const features = found.term.split(" + ");
    const together = features.length > 1;
    const term = together ? null : facts.terms[facts.termIndex.get(found.term)];
    const label = together ? "All of them on one garment" : term.label;
    const more = "plates.html#" + writeAddress([["garment", asked.garment], ...features.map((each) => ["feature", each])]);
    return h("li", { class: together ? "fit fit-together" : "fit", "data-term": found.term, "data-verdict": found.verdict },
      h("div", { class: "fit-head" },
        h("h3", { class: "fit-name" },
          together ? label : [h("span", { class: "fit-facet" }, facts.facets[term.facet].label), " ",
            h("a", { href: `term/${found.term}.html` }, label)]),
        h("p", { class: "fit-verdict" }, InPeriod.verdict(found.verdict, "large"))),
      h("p", { class: "fit-says" }, [leads[found.verdict], ...found.reasons.slice(0, 1)].join(" ")),
      h("div", { class: "fit-figures" }, shareFigure(found), strip(page, question, features, label)),
      h("details", { class: "fit-why" }, h("summary", {}, "How this was reached"),
        h("ul", {}, ...found.reasons.slice(1).map((reason) => h("li", {}, reason)),
          ...hangs.map((sentence) => h("li", { class: "fit-hangs" }, sentence)))),
      found.cite.length > 0 && h("h4", { class: "cites-head" }, citeHead(found)),
      found.cite.length > 0 && h("ol", { class: "cites" },
        ...found.cite.slice(0, CITED).map((key, number) =>
          cited(holdings.plate(holdings.numberOf(key)), `cite-${index}-${number}`))),
      found.cite.length > 0 && h("p", { class: "cites-more" },
        h("a", { href: more }, together ? "Every plate that shows them all" : "Every plate that shows it")));
  }

  function usual(page, asked, question, when) {
    const { facts, exclusive } = page;
    const facets = [...new Set(asked.features.map((feature) => feature.split("/")[0]))];
    const most = facets.length ? USUAL : USUAL / 2;
    const groups = (facets.length ? facets : facts.facets.map((facet) => facet.id)).map((facet) => {
      const others = InPeriod.evidence.usualInWindow(facts, question, facet)
        .filter((each) => !asked.features.includes(each.term)).slice(0, most);
      if (!others.length) return null;
      const items = others.map((each) => {
        const ask = "#" + writeAddress(pairsOf(withTerm(asked, each.term, exclusive), page.grades));
        return h("li", {},
          h("a", { class: "usual-name", href: `term/${each.term}.html` }, each.label), " ",
          h("span", { class: "leader", "aria-hidden": "true" }), " ",
          h("span", { class: "usual-share" }, perCent(each.share.value)), " ",
          h("a", { class: "usual-ask scripted-only", href: ask }, "ask", h("span", { class: "unseen" }, ` about ${each.label}`)));
      });
      const { label } = facts.facets.find((each) => each.id === facet);
      return h("div", { class: "usual-group" }, h("h3", {}, label), h("ol", { class: "usual-list" }, ...items));
    });
    if (!groups.some(Boolean)) return null;
    return h("section", { class: "part part-wide usual", "aria-labelledby": "usual-head" },
      h("h2", { id: "usual-head" }, asked.features.length ? `Also usual in ${when}` : `Usual in ${when}`),
      h("div", { class: "part-body usual-groups" }, ...groups));
  }

  /** A term's label; nothing for several together. */
  function labelOf(facts, term) {
    const index = facts.termIndex.get(term);
    return index === undefined ? "" : facts.terms[index].label;
  }

  /** The whole answer as elements, and what a screen reader is told of it. */
  function answerParts(page, asked, window) {
    const { facts } = page, question = questionOf(asked, window);
    const when = InPeriod.evidence.windowInWords(window);
    const given = InPeriod.evidence.answer(facts, question), changes = InPeriod.evidence.sensitivity(facts, question);
    const found = given.together ? [...given.features, given.together] : given.features;
    const garment = facts.garments[facts.garmentIndex.get(asked.garment)];
    const head = `${raised(garment.label)} for ${when}`;
    const fits = h("ol", { class: "fits" }, ...found.map((each, index) => {
      const hangs = changes.filter((change) => change.term === each.term).map((change) => change.sentence);
      return fit(page, asked, question, each, hangs, index);
    }));
    const section = h("section", { class: "part part-wide", "aria-labelledby": "answer-head" },
      h("h2", { id: "answer-head", tabindex: -1 }, head),
      found.length > 1 && h("ul", { class: "glance" }, ...found.map((each) => h("li", {}, InPeriod.verdict(each.verdict), " ",
        h("span", { class: "glance-what" }, labelOf(facts, each.term) || "together")))),
      h("div", { class: "part-body" }, found.length ? fits : h("p", { class: "empty" }, NOTHING)));
    const said = found.map((each) => `${labelOf(facts, each.term) || "All together"}: ${each.verdict}.`);
    return { parts: [section, usual(page, asked, question, when)].filter(Boolean), said: [`${head}.`, ...said].join(" ") };
  }

  // ---- the page

  function start() {
    const { facts: factsData, vocabulary, plates } = InPeriod.data;
    const holdings = InPeriod.hold(factsData, plates), { facts } = holdings;
    const exclusive = new Set(vocabulary.facets.filter((facet) => facet.exclusive).map((facet) => facet.id));
    const page = { facts, holdings, exclusive, leads: vocabulary.leads, grades: vocabulary.grades };
    const options = featureOptions(holdings, vocabulary);
    const at = (id) => document.getElementById(id);
    const answerBox = at("answer"), example = answerBox.dataset.question;
    let asked, shown = null;

    function fromAddress() {
      const pairs = readAddress(location.hash);
      const read = readQuestion(pairs.length ? pairs : readAddress(example), facts, page.grades);
      asked = read.asked;
      syncForm();
      show(read.unknown);
    }

    function ask(changes, replace) {
      asked = { ...asked, ...changes };
      goTo(pairsOf(asked, page.grades), replace);
      syncForm();
      show([]);
    }

    function syncForm() {
      at("ask-garment").value = asked.garment;
      if (at("ask-when").value !== asked.when) at("ask-when").value = asked.when;
      for (const name of ["place", "kind", "wearer", "grades"]) at(`ask-${name}`).value = asked[name];
      at("ask-worn").value = asked.worn || "0";
      at("ask-chosen").replaceChildren(...asked.features.map(chip));
      const narrowed = ["place", "kind", "wearer"].filter((name) => asked[name]).map((name) => chosen(`ask-${name}`));
      if (asked.grades !== page.grades) narrowed.push(`grades ${asked.grades.split("").join(", ")}`);
      if (asked.worn) narrowed.push(`${asked.worn} years of wear`);
      at("narrow-said").textContent = narrowed.length ? `: ${narrowed.join(", ")}` : "";
    }

    function chosen(id) {
      const option = at(id).selectedOptions[0];
      return option ? option.textContent.trim() : "";
    }

    function chip(feature) {
      const term = facts.terms[facts.termIndex.get(feature)];
      const button = h("button", { type: "button", class: "chip" },
        h("span", { class: "chip-facet" }, facts.facets[term.facet].label), " ", term.label,
        h("span", { class: "chip-off", "aria-hidden": "true" }, "×"), h("span", { class: "unseen" }, ": take away"));
      button.addEventListener("click", () => {
        ask({ features: asked.features.filter((each) => each !== feature) });
        at("ask-feature").focus();
      });
      return h("li", {}, button);
    }

    function show(unknown) {
      const read = readWindow(asked.when, facts.circaYears);
      const box = at("ask-when"), reading = at("ask-reading");
      box.setAttribute("aria-invalid", String(Boolean(read.error)));
      const strange = unknown.length ? ` Not in this catalogue: ${unknown.join(", ")}.` : "";
      reading.textContent = (read.error || read.reading) + strange;
      reading.classList.toggle("ask-wrong", Boolean(read.error || strange));
      shown = writeAddress(pairsOf(asked, page.grades));
      if (read.error) {
        answerBox.replaceChildren(h("p", { class: "empty" }, "No answer without a time to ask about."));
        announce(read.error);
        return;
      }
      const { parts, said } = answerParts(page, asked, read.window);
      answerBox.replaceChildren(...parts);
      InPeriod.copyButtons(answerBox);
      announce(said);
    }

    const list = InPeriod.combobox(at("ask-feature"), at("ask-found"), {
      find: (query) => InPeriod.rank(options(asked), query).slice(0, OFFERED),
      show: ({ option, by }) =>
        h("li", {}, h("span", { class: "found-label" }, option.label), " ",
          h("span", { class: "found-facet" }, option.facetLabel), by && " ", by && h("span", { class: "found-by" }, by)),
      take: (option) => ask(withTerm(asked, option.key, exclusive)),
      undo: () => asked.features.length && ask({ features: asked.features.slice(0, -1) }),
    });

    at("ask").addEventListener("submit", (event) => event.preventDefault());
    at("ask-garment").addEventListener("change", (event) => ask({ garment: event.target.value }));
    for (const name of ["place", "kind", "wearer", "grades"])
      at(`ask-${name}`).addEventListener("change", (event) => ask({ [name]: event.target.value }));
    at("ask-worn").addEventListener("change", (event) => {
      const years = Math.min(60, Math.max(0, Math.round(Number(event.target.value) || 0)));
      ask({ worn: years ? String(years) : "" });
    });
    // While one types, the address keeps pace without filling the history; leaving the box makes a step.
    const typed = later(250, () => ask({ when: at("ask-when").value }, true));
    at("ask-when").addEventListener("input", typed);
    at("ask-when").addEventListener("change", () => asked.when !== at("ask-when").value && ask({ when: at("ask-when").value }));
    answerBox.addEventListener("click", (event) => {
      if (!event.target.closest(".usual-ask")) return;
      setTimeout(() => at("answer-head") && at("answer-head").focus(), 0);
    });
    const moved = () => {
      const pairs = readAddress(location.hash);
      if (writeAddress(pairs.length ? pairs : readAddress(example)) === shown) return;
      list.close();
      fromAddress();
    };
    root.addEventListener("popstate", moved);
    root.addEventListener("hashchange", moved);
    fromAddress();
  }

  /** By garment: the terms that can be asked of it and are not asked yet, those its plates show most often first. */
  function featureOptions({ facts, terms }, vocabulary) {
    const facets = new Map(vocabulary.facets.map((facet) => [facet.id, facet]));
    const known = new Map();

    function of(garment) {
      const index = facts.garmentIndex.get(garment);
      const chain = facts.garmentChains[index].map((each) => facts.garments[each].id);
      const applies = (list) => !list || list.some((each) => chain.includes(each));
      const counts = new Array(facts.terms.length).fill(0);
      for (let number = 0; number < facts.plates.count; number += 1) {
        if (facts.garmentChains[facts.plates.garmentOf[number]].includes(index))
          for (const term of terms(number)) counts[term] += 1;
      }
      return facts.terms
        .map((term, i) => {
          const facetId = facts.facets[term.facet].id, id = term.key.split("/")[1];
          const facet = facets.get(facetId) || {};
          if (!applies((facet.termApplies && facet.termApplies[id]) || facet.applies)) return null;
          const names = (facet.names && facet.names[id]) || [];
          return { key: term.key, label: term.label, facetLabel: facts.facets[term.facet].label, names, count: counts[i] };
        })
        .filter(Boolean)
        .sort((a, b) => b.count - a.count);
    }

    return (asked) => {
      if (!known.has(asked.garment)) known.set(asked.garment, of(asked.garment));
      return known.get(asked.garment).filter((option) => !asked.features.includes(option.key));
    };
  }

  if (typeof document !== "undefined") document.addEventListener("DOMContentLoaded", start);
})(typeof window !== "undefined" ? window : globalThis);
