// The home page: the answer appears as one chooses. The address after the # is the question.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod ||= {});
  const { at, h, announce, goTo, later, load, readAddress, writeAddress } = InPeriod;
  const { featureOptions, pairsOf, readQuestion, readWindow, withTerm } = InPeriod.question;
  const OFFERED = 60,
    ASKED = "Drawn from the features asked about, in the line of that time",
    DRAWING = ["words", "drawing", "live"].map((part) => `assets/flat-${part}.js`);

  function start() {
    if (!at("ask")) return;
    const answerBox = at("answer"),
      example = answerBox.dataset.question,
      held = new Map(),
      // Drawn beforehand, for the question the page opens with and no other.
      exampleFlat = answerBox.querySelector(".asked-part");
    let page = null,
      asked,
      shown = example,
      turn = 0,
      toHead = false;

    // The worked answer stands there without any data. They come when the address asks, or somebody does.
    const brought = () => Promise.all(["index", "vocabulary", "dates"].map(load)).then(([index, vocabulary]) => {
      if (page) return;
      const exclusive = new Set(vocabulary.facets.filter((facet) => facet.exclusive).map((facet) => facet.id));
      const facts = InPeriod.evidence.factsFromJson(index, null);
      page = { index, vocabulary, facts, exclusive, leads: vocabulary.leads, grades: vocabulary.grades };
      asked = readQuestion(readAddress(example), facts, page.grades).asked;
    });

    /** Does it at once where the data are there, else when they have come. */
    const ready = (task) => (page ? task() : brought().then(task).catch(failed));

    function failed(problem) {
      answerBox.removeAttribute("aria-busy");
      answerBox.replaceChildren(h("p", { class: "empty" }, InPeriod.UNLOADED));
      throw problem;
    }

    /** What is held of the garment asked about; null where it is only coming, and `then` is done when it is there. */
    function holdingsOf(garment, then) {
      if (!held.has(garment)) {
        const name = InPeriod.platesOf(page.index, garment);
        load(name).then((columns) => {
          if (!held.has(garment)) held.set(garment, hold(garment, columns));
          then();
        }).catch(failed);
        return null;
      }
      return held.get(garment);
    }

    function hold(garment, columns) {
      const holdings = [...held.values()].find((each) => each.columns === columns) || InPeriod.hold(page.index, columns);
      return { ...holdings, columns, options: featureOptions(holdings, page.vocabulary) };
    }

    function fromAddress() {
      const pairs = readAddress(location.hash);
      const read = readQuestion(pairs.length ? pairs : readAddress(example), page.facts, page.grades);
      asked = read.asked;
      syncForm();
      show(read.unknown);
    }

    function ask(changes, replace) {
      answerBox.setAttribute("aria-busy", "true");
      ready(() => {
        asked = { ...asked, ...changes(asked) };
        goTo(pairsOf(asked, page.grades), replace);
        syncForm();
        show([]);
      });
    }

    /** Only where it differs: writing into a box cuts off what is being typed in it. */
    function syncForm() {
      for (const name of ["garment", "when", "place", "kind", "wearer", "grades", "worn"]) {
        const box = at(`ask-${name}`),
          value = asked[name] || (name === "worn" ? "0" : "");
        if (box.value !== value) box.value = value;
      }
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
      const { facts } = page,
        term = facts.terms[facts.termIndex.get(feature)];
      return InPeriod.chip(facts.facets[term.facet].label, term.label);
    }

    function show(unknown) {
      const now = (turn += 1);
      const read = readWindow(asked.when, page.facts.circaYears, at("ask").dataset.seasons);
      const box = at("ask-when"),
        reading = at("ask-reading");
      box.setAttribute("aria-invalid", String(Boolean(read.error)));
      const strange = unknown.length ? ` Not in this catalogue: ${unknown.join(", ")}.` : "";
      reading.textContent = (read.error || read.reading) + strange;
      reading.classList.toggle("ask-wrong", Boolean(read.error || strange));
      shown = writeAddress(pairsOf(asked, page.grades));
      answerBox.setAttribute("aria-busy", "true");
      if (read.error) {
        put(h("p", { class: "empty" }, "No answer without a time to ask about."));
        announce(read.error);
      } else answer(read.window, () => now === turn);
    }

    function put(...parts) {
      answerBox.replaceChildren(...parts);
      answerBox.removeAttribute("aria-busy");
      if (toHead && at("answer-head")) at("answer-head").focus();
      toHead = false;
    }

    /** Answers when what is held of the garment, and of the plates to cite, is there, unless something else is asked by then. */
    function answer(window, current) {
      const holdings = holdingsOf(asked.garment, () => current() && answer(window, current));
      if (!holdings) return;
      const { coming, parts, said, cite, hang } = InPeriod.answerTo({ ...page, holdings, facts: holdings.facts }, asked, window);
      const finish = () => {
        if (!current()) return;
        cite();
        put(...parts, flatPart(window) || "");
        InPeriod.copyButtons(answerBox);
        announce(said);
        answerBox.setAttribute("aria-busy", "true");
        setTimeout(() => {
          if (!current()) return;
          hang();
          answerBox.removeAttribute("aria-busy");
        });
      };
      if (coming) coming.then(finish, failed);
      else finish();
    }

    /** The garment asked about, drawn once the answer stands; what draws it is loaded when first needed. */
    function flatPart(window) {
      if (exampleFlat && shown === example) return exampleFlat;
      if (!asked.features.length || (window.earliest === null && window.latest === null)) return null;
      const box = h("div", { class: "part-body asked-flat" }),
        head = h("h2", { id: "asked-head" }, "What is asked about"),
        part = h("section", { class: "part part-wide asked-part", "aria-labelledby": "asked-head" }, head, box);
      const given = { garment: asked.garment, features: asked.features, window, who: asked.wearer };
      const words = { caption: ASKED, by: "the question", said: "Asked about" };
      const draw = () => part.isConnected && !InPeriod.flats.show(box, given, page.facts, words) && part.remove();
      setTimeout(() => InPeriod.need(...DRAWING).then(draw).catch(() => part.remove()), 0);
      return part;
    }

    /** The features that can be added, as one types; null while they are coming, and the list opens when they are there. */
    function find(query) {
      const open = () => document.activeElement === at("ask-feature") && list.open();
      if (!page) ready(open);
      const holdings = page && holdingsOf(asked.garment, open);
      return holdings && InPeriod.rank(holdings.options(asked), query).slice(0, OFFERED);
    }

    const list = InPeriod.combobox(at("ask-feature"), at("ask-found"), {
      find,
      show: ({ option, by }) =>
        h(
          "li",
          {},
          h("span", { class: "found-label" }, option.label),
          " ",
          h("span", { class: "found-facet" }, option.facetLabel),
          by && " ",
          by && h("span", { class: "found-by" }, by),
        ),
      take: (option) => ask((now) => withTerm(now, option.key, page.exclusive)),
      undo: () => ask(({ features }) => ({ features: features.slice(0, -1) })),
    });

    at("ask").addEventListener("submit", (event) => event.preventDefault());
    for (const name of ["garment", "place", "kind", "wearer", "grades"])
      at(`ask-${name}`).addEventListener("change", (event) => ask(() => ({ [name]: event.target.value })));
    at("ask-worn").addEventListener("change", (event) => {
      const years = Math.min(60, Math.max(0, Math.round(Number(event.target.value) || 0)));
      ask(() => ({ worn: years ? String(years) : "" }));
    });
    at("ask-chosen").addEventListener("click", (event) => {
      const chip = event.target.closest("li"),
        place = [...at("ask-chosen").children].indexOf(chip);
      if (!chip) return;
      ask(({ features }) => ({ features: features.filter((_, i) => i !== place) }));
      at("ask-feature").focus();
    });
    // While one types, the address keeps pace without filling the history; leaving the box makes a step.
    const when = (replace) => {
      const written = at("ask-when").value;
      if (!asked || asked.when !== written) ask(() => ({ when: written }), replace);
    };
    at("ask-when").addEventListener("input", later(250, () => when(true)));
    at("ask-when").addEventListener("change", () => when());
    answerBox.addEventListener("click", (event) => {
      if (event.target.closest(".usual-ask")) toHead = true;
    });
    const moved = () => {
      const pairs = readAddress(location.hash);
      if (writeAddress(pairs.length ? pairs : readAddress(example)) === shown) return;
      list.close();
      answerBox.setAttribute("aria-busy", "true");
      ready(fromAddress);
    };
    InPeriod.onAddress(moved);
    at("ask").addEventListener("focusin", () => ready(() => holdingsOf(asked.garment, () => {})), { once: true });
    moved();
  }

  if (typeof document !== "undefined") document.addEventListener("DOMContentLoaded", start);
})(globalThis);
