// Every plate, sifted: years, words, and a count beside every value of every filter. The address holds the state.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod = root.InPeriod || {});
  const { h, announce, goTo, later, makeGroups, makeText, perStep, readAddress, sift, writeAddress } = InPeriod;
  const PAGE = 60,
    SHORT = 150,
    HISTOGRAM = 72;
  const SORTS = ["latest", "garment", "source"];
  const VIEWS = ["list"];

  function start() {
    const { facts: factsData, vocabulary, plates: given, captions } = InPeriod.data;
    const at = (id) => document.getElementById(id);
    const holdings = InPeriod.hold(factsData, given);
    const { all, groups } = makeGroups(holdings, vocabulary, vocabulary.places || {});
    const first = Number(at("from").min),
      last = Number(at("from").max);
    const said = sayings(all, captions);
    const texts = all.map((each, number) => makeText(holdings, vocabulary, each, number, said[number]));
    const boxes = buildGroups(groups, at("sift-groups"), () => step());
    const years = Number(document.querySelector("#years-box .years").dataset.step);
    let state = null,
      shown = PAGE,
      address = null;

    at("all-plates").hidden = true;

    // ---- state and address

    function fromAddress() {
      const pairs = readAddress(location.hash),
        one = (name) => (pairs.find(([key]) => key === name) || [])[1] || "";
      const year = (name, otherwise) => {
        const value = Math.round(Number(one(name)));
        return one(name) && Number.isFinite(value) ? Math.min(last, Math.max(first, value)) : otherwise;
      };
      const from = year("from", first),
        to = Math.max(from, year("to", last));
      const chosen = new Map();
      for (const group of groups) {
        const known = new Set(group.values.map((value) => value.id));
        const values = pairs.filter(([key, value]) => key === group.id && known.has(value)).map(([, value]) => value);
        if (values.length) chosen.set(group, new Set(values));
      }
      const sort = SORTS.includes(one("sort")) ? one("sort") : "",
        view = VIEWS.includes(one("view")) ? one("view") : "";
      // A value nothing has is kept in mind: it must find nothing, not everything.
      const strange = pairs.filter(
        ([key, value]) =>
          groups.some((group) => group.id === key) &&
          !groups.some((group) => group.id === key && group.values.some((each) => each.id === value)),
      );
      state = { from, to, words: one("words"), sort, view, chosen, strange };
      shown = PAGE;
      syncForm();
      show();
    }

    function pairs() {
      const { from, to, words, sort, view, chosen, strange } = state;
      return [
        ...[...chosen].flatMap(([group, values]) => [...values].map((value) => [group.id, value])),
        ...strange,
        ["from", from === first ? "" : String(from)],
        ["to", to === last ? "" : String(to)],
        ["words", words],
        ["sort", sort],
        ["view", view],
      ];
    }

    function step(changes, replace) {
      state = { ...state, ...changes, chosen: readBoxes() };
      shown = PAGE;
      goTo(pairs(), replace);
      syncForm();
      show();
    }

    function readBoxes() {
      const chosen = new Map();
      for (const [group, inputs] of boxes) {
        const values = [...inputs].filter(([, { input }]) => input.checked).map(([value]) => value);
        if (values.length) chosen.set(group, new Set(values));
      }
      return chosen;
    }

    function syncForm() {
      for (const [name, value] of [
        ["from", state.from],
        ["to", state.to],
      ]) {
        at(name).value = String(value);
        at(`${name}-handle`).value = String(value);
      }
      if (at("sift-words").value !== state.words) at("sift-words").value = state.words;
      at("sort").value = state.sort;
      at("as-grid").setAttribute("aria-pressed", String(state.view === ""));
      at("as-list").setAttribute("aria-pressed", String(state.view === "list"));
      for (const [group, inputs] of boxes) {
        const values = state.chosen.get(group);
        for (const [value, { input }] of inputs) input.checked = Boolean(values && values.has(value));
      }
    }

    // ---- sifting and showing

    function show() {
      const { from, to, words, chosen, strange } = state;
      const { yearStart } = InPeriod.evidence,
        earliest = yearStart(from),
        latest = yearStart(to + 1) - 1;
      const everyYear = from === first && to === last;
      const inYears = (number) => {
        const { days } = all[number];
        if (everyYear) return true;
        return (
          Boolean(days) &&
          (days.latest === null || days.latest >= earliest) &&
          (days.earliest === null || days.earliest <= latest)
        );
      };
      const wanted = InPeriod.fold(words);
      const rest = (number) => strange.length === 0 && (!wanted || InPeriod.finds(texts[number], wanted));
      const { found, counts, apartFromYears } = sift(groups, all.length, chosen, rest, inYears);
      found.sort(order(state.sort));
      drawYears(perStep(all, apartFromYears, first, last, years));
      showCounts(counts);
      showChosen();
      showPlates(found);
      address = writeAddress(pairs());
      announce(`${found.length} ${found.length === 1 ? "plate" : "plates"}.`);
    }

    function order(sort) {
      const middle = ({ days }) => {
        const ends = days ? [days.earliest, days.latest].filter((end) => end !== null) : [];
        return ends.length ? ends.reduce((sum, end) => sum + end, 0) / ends.length : Infinity;
      };
      const byDate = (a, b) => (middle(all[a]) === middle(all[b]) ? a - b : middle(all[a]) - middle(all[b]));
      const byText = (name) => (a, b) => all[a][name].localeCompare(all[b][name]) || byDate(a, b);
      if (sort === "latest") {
        const dated = (number) => Number.isFinite(middle(all[number]));
        return (a, b) => dated(b) - dated(a) || byDate(b, a);
      }
      return sort === "garment" ? byText("label") : sort === "source" ? byText("source") : byDate;
    }

    function drawYears(counts) {
      const svg = document.querySelector("#years-box .years"),
        most = Number(svg.dataset.most);
      const outside = (i) => first + i * years + years - 1 < state.from || first + i * years > state.to;
      svg.querySelectorAll(".years-left").forEach((bar, i) => {
        const tall = (HISTOGRAM - 4) * (counts[i] / most);
        bar.setAttribute("y", HISTOGRAM - tall);
        bar.setAttribute("height", tall);
        bar.setAttribute("class", outside(i) ? "years-left years-outside" : "years-left");
      });
    }

    function showCounts(counts) {
      groups.forEach((group, i) => {
        for (const [value, { input, count, item }] of boxes.get(group)) {
          const number = counts[i].get(value) || 0;
          count.textContent = String(number);
          item.className = number === 0 && !input.checked ? "sift-value sift-none" : "sift-value";
        }
      });
    }

    function showChosen() {
      const chips = [];
      const chip = (label, off) =>
        chips.push(
          h(
            "li",
            {},
            h(
              "button",
              { type: "button", class: "chip", onclick: off },
              label,
              h("span", { class: "chip-off", "aria-hidden": "true" }, "×"),
              h("span", { class: "unseen" }, ": take away"),
            ),
          ),
        );
      for (const [group, values] of state.chosen)
        for (const value of values)
          chip(
            [
              h("span", { class: "chip-facet" }, group.label),
              " ",
              group.values.find((each) => each.id === value).label,
            ],
            () => {
              boxes.get(group).get(value).input.checked = false;
              step();
            },
          );
      for (const pair of state.strange)
        chip([h("span", { class: "chip-facet" }, "not on any plate"), " ", pair[1]], () =>
          step({ strange: state.strange.filter((each) => each !== pair) }),
        );
      if (state.words) chip([h("span", { class: "chip-facet" }, "Words"), " ", state.words], () => step({ words: "" }));
      if (state.from !== first || state.to !== last)
        chip([h("span", { class: "chip-facet" }, "Years"), " ", state.from === state.to ? String(state.from) : `${state.from}–${state.to}`], () =>
          step({ from: first, to: last }),
        );
      if (chips.length > 1)
        chips.push(
          h("li", {}, h("button", { type: "button", class: "chip chip-all", onclick: clear }, "Take all away")),
        );
      at("sifted-by").replaceChildren(...chips);
      at("sifted-by").hidden = chips.length === 0;
    }

    function clear() {
      for (const inputs of boxes.values()) for (const { input } of inputs.values()) input.checked = false;
      step({ words: "", from: first, to: last, strange: [] });
      at("sift-words").focus();
    }

    function showPlates(found) {
      InPeriod.listedPlates = () => found.map((number) => all[number].key);
      const list = at("results");
      at("sifted-count").textContent =
        found.length === all.length ? `${all.length} plates` : `${found.length} of ${all.length} plates`;
      list.className = state.view === "list" ? "trade-list" : "cards";
      const make = (number) =>
        state.view === "list" ? line(all[number], said[number]) : card(all[number], said[number]);
      list.replaceChildren(...found.slice(0, shown).map(make));
      if (!found.length)
        list.replaceChildren(h("li", { class: "empty" }, "No plate has all of this. Take one of the filters away."));
      const left = found.length - shown;
      at("more").hidden = left <= 0;
      at("more").textContent = `${Math.min(PAGE, left)} more of ${left}`;
      at("more").onclick = () => {
        const next = list.children.length;
        shown += PAGE;
        list.append(...found.slice(next, shown).map(make));
        showMore(found.length - shown);
        const link = list.children[next] && list.children[next].querySelector("a");
        if (link) link.focus();
      };
    }

    function showMore(left) {
      at("more").hidden = left <= 0;
      at("more").textContent = `${Math.min(PAGE, left)} more of ${left}`;
    }

    // ---- listening

    at("sift").addEventListener("submit", (event) => event.preventDefault());
    at("sift-words").addEventListener(
      "input",
      later(150, () => step({ words: at("sift-words").value }, true)),
    );
    at("sort").addEventListener("change", (event) => step({ sort: event.target.value }));
    at("as-grid").addEventListener("click", () => step({ view: "" }));
    at("as-list").addEventListener("click", () => step({ view: "list" }));
    InPeriod.yearRange({ at, first, last, now: () => state, set: (years, replace) => step(years, replace) });
    const wide = matchMedia("(min-width: 60rem)");
    at("sift-more").open = wide.matches;
    wide.addEventListener("change", () => {
      at("sift-more").open = wide.matches;
    });
    const moved = () => {
      if (writeAddress(readAddress(location.hash)) !== address) fromAddress();
    };
    root.addEventListener("popstate", moved);
    root.addEventListener("hashchange", moved);
    fromAddress();
  }

  /** What is said of each plate: from the page's own list, or from the data where there are too many for a page. */
  function sayings(all, captions) {
    if (captions) return captions;
    const said = new Map();
    for (const item of document.querySelectorAll("[data-plate]")) {
      const note = item.querySelector(".trade-note");
      said.set(item.dataset.plate, note ? note.textContent : "");
    }
    return all.map((each) => said.get(each.key) || "");
  }

  function buildGroups(groups, parent, changed) {
    const boxes = new Map();
    groups.forEach((group, index) => {
      const inputs = new Map();
      const items = group.values.map((value, i) => {
        const id = `sift-${index}-${i}`;
        const input = h("input", { type: "checkbox", id, onchange: changed });
        const count = h("span", { class: "sift-count" });
        const item = h("li", { class: "sift-value" }, input, h("label", { for: id }, value.label, " ", count));
        inputs.set(value.id, { input, count, item });
        return item;
      });
      boxes.set(group, inputs);
      parent.append(
        h("details", { class: "sift-group", open: index === 0 }, h("summary", {}, group.label), h("ul", {}, ...items)),
      );
    });
    return boxes;
  }

  const short = (text) => (text.length <= SHORT ? text : text.slice(0, text.lastIndexOf(" ", SHORT)) + " …");

  function line(plate, said) {
    return h(
      "li",
      { "data-plate": plate.key },
      InPeriod.plateLine(plate),
      said && h("p", { class: "trade-note" }, short(said)),
    );
  }

  function card(plate, said) {
    const { picture } = plate;
    return h(
      "li",
      { class: "card", "data-plate": plate.key },
      picture &&
        h("img", {
          class: "card-picture",
          src: picture.path,
          alt: "",
          width: picture.width,
          height: picture.height,
          loading: "lazy",
          decoding: "async",
        }),
      h("p", { class: "card-when" }, plate.when, plate.grade && " ", plate.grade && InPeriod.gradeSign(plate.grade)),
      h("h3", { class: "card-what" }, h("a", { href: plate.path }, plate.label)),
      h(
        "p",
        { class: "card-where" },
        plate.source,
        plate.where && ", ",
        plate.where && h("span", { class: "plate-number" }, plate.where),
      ),
      said && h("p", { class: "card-said" }, short(said)),
    );
  }

  if (typeof document !== "undefined") document.addEventListener("DOMContentLoaded", start);
})(typeof window !== "undefined" ? window : globalThis);
