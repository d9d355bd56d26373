// The home page: the answer appears as one chooses. The address after the # is the question.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod = root.InPeriod || {});
  const { h, announce, goTo, later, readAddress, writeAddress } = InPeriod;
  const { featureOptions, pairsOf, readQuestion, readWindow, withTerm } = InPeriod.question;
  const OFFERED = 60;

  function start() {
    const { facts: factsData, vocabulary, plates } = InPeriod.data;
    const holdings = InPeriod.hold(factsData, plates),
      { facts } = holdings;
    const exclusive = new Set(vocabulary.facets.filter((facet) => facet.exclusive).map((facet) => facet.id));
    const page = { facts, holdings, exclusive, leads: vocabulary.leads, grades: vocabulary.grades };
    const options = featureOptions(holdings, vocabulary);
    const at = (id) => document.getElementById(id);
    const answerBox = at("answer"),
      example = answerBox.dataset.question,
      // Drawn beforehand, for the question the page opens with and no other.
      exampleFlat = answerBox.querySelector(".asked-part");
    let asked,
      shown = null;

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
      const button = h(
        "button",
        { type: "button", class: "chip" },
        h("span", { class: "chip-facet" }, facts.facets[term.facet].label),
        " ",
        term.label,
        h("span", { class: "chip-off", "aria-hidden": "true" }, "×"),
        h("span", { class: "unseen" }, ": take away"),
      );
      button.addEventListener("click", () => {
        ask({ features: asked.features.filter((each) => each !== feature) });
        at("ask-feature").focus();
      });
      return h("li", {}, button);
    }

    function show(unknown) {
      const read = readWindow(asked.when, facts.circaYears, at("ask").dataset.seasons);
      const box = at("ask-when"),
        reading = at("ask-reading");
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
      const { parts, said } = InPeriod.answerParts(page, asked, read.window);
      answerBox.replaceChildren(...parts, ...(exampleFlat && shown === example ? [exampleFlat] : []));
      InPeriod.copyButtons(answerBox);
      announce(said);
    }

    const list = InPeriod.combobox(at("ask-feature"), at("ask-found"), {
      find: (query) => InPeriod.rank(options(asked), query).slice(0, OFFERED),
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
    at("ask-when").addEventListener(
      "change",
      () => asked.when !== at("ask-when").value && ask({ when: at("ask-when").value }),
    );
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

  if (typeof document !== "undefined") document.addEventListener("DOMContentLoaded", start);
})(typeof window !== "undefined" ? window : globalThis);
