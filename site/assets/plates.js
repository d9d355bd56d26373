// Every plate, sifted: years, words, and a count beside every value of every filter. The address holds the state.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod ||= {});
  const { at, h, announce, goTo, later, load, readAddress, writeAddress } = InPeriod;
  const { beginner, common, has, inYears, makeGroups, order, perStep, sift, size, those, wordsOf } = InPeriod.sifting;
  const SCREEN = 12,
    FIRST = 24,
    MORE = 60,
    SHORT = 150,
    HISTOGRAM = 72;
  const SORTS = ["latest", "garment", "source"];
  const VIEWS = ["list"];

  async function begin() {
    try {
      await start(...(await Promise.all(["index", "every"].map(load))));
    } catch (problem) {
      at("sifting").prepend(h("p", { class: "empty" }, InPeriod.UNLOADED));
      throw problem;
    }
  }

  async function start(index, every) {
    const holdings = InPeriod.hold(index, every),
      { facts, dated } = holdings,
      { count } = facts.plates;
    const range = InPeriod.yearRange(() => state, step),
      { first, last } = range;
    const years = Number(document.querySelector("#years-box .years").dataset.step);
    const everything = those(count, () => true),
      groups = makeGroups(holdings, every),
      titles = InPeriod.evidence.unpacked(every.titles);
    const orders = {},
      written = new Map(),
      said = {},
      boxes = new Map();
    let state = { sort: "", view: "", chosen: new Map() },
      address = null,
      frame = 0,
      turn = 0,
      counts = null,
      beginning = null,
      items = new Map(),
      inSteps = null,
      barsFor = everything; // as the page comes

    at("all-plates").hidden = true;

    // ---- state and address

    function fromAddress() {
      const pairs = readAddress(location.hash),
        one = (name) => pairs.find(([key]) => key === name)?.[1] || "";
      const chosen = new Map();
      const isOf = (group, [key, value]) => key === group.id && value.startsWith(group.begins) && group.values.some(({ id }) => id === value);
      for (const group of groups) {
        const values = pairs.filter((pair) => isOf(group, pair)).map(([, value]) => value);
        if (values.length) chosen.set(group, new Set(values));
      }
      const sort = SORTS.includes(one("sort")) ? one("sort") : "",
        view = VIEWS.includes(one("view")) ? one("view") : "";
      // A value nothing has is kept in mind: it must find nothing, not everything.
      const strange = pairs.filter((pair) => groups.some(({ id }) => id === pair[0]) && !groups.some((group) => isOf(group, pair)));
      state = { ...range.read(pairs), words: one("words"), sort, view, chosen, strange };
      syncForm();
      return show();
    }

    function pairs() {
      const { words, sort, view, chosen, strange } = state;
      return [
        ...[...chosen].flatMap(([group, values]) => [...values].map((value) => [group.id, value])),
        ...strange,
        ...range.pairs(state),
        ["words", words],
        ["sort", sort],
        ["view", view],
      ];
    }

    /** While something is dragged or typed (`replace`) one look a frame is enough, and one address once it rests. */
    function step(changes, replace) {
      state = { ...state, ...changes };
      syncForm();
      if (!replace) return show(() => goTo(pairs()));
      cancelAnimationFrame(frame);
      frame = requestAnimationFrame(() => show(rested));
    }
    const rested = later(150, () => goTo(pairs(), true));

    /** With that value of the group, or without it. */
    function choose(group, value, wanted) {
      const values = new Set(state.chosen.get(group)),
        chosen = new Map(state.chosen);
      values[wanted ? "add" : "delete"](value);
      if (values.size) chosen.set(group, values);
      else chosen.delete(group);
      step({ chosen });
    }

    const isChosen = (group, { id }) => state.chosen.get(group)?.has(id);

    function syncForm() {
      range.show(state);
      if (at("sift-words").value !== state.words) at("sift-words").value = state.words;
      at("sort").value = state.sort;
      at("as-grid").setAttribute("aria-pressed", String(state.view === ""));
      at("as-list").setAttribute("aria-pressed", String(state.view === "list"));
      for (const [group, { inputs }] of boxes)
        inputs.forEach(({ input }, i) => {
          input.checked = isChosen(group, group.values[i]);
        });
    }

    // ---- sifting and showing

    /** Sifts and shows; `done` is called when what is found is known, which a word not met before may delay. */
    async function show(done) {
      const now = (turn += 1),
        { from, to, words, chosen, strange } = state;
      const typed = InPeriod.fold(words).split(" ").filter(Boolean);
      const coming = bringWords(typed);
      if (coming) {
        at("results").setAttribute("aria-busy", "true");
        await coming;
        if (now !== turn) return;
      }
      const rest = strange.length
        ? those(count, () => false)
        : typed.length
          ? common(everything, typed.map((word) => beginning(word, wordsFor(word))))
          : null;
      const given = sift(groups, everything, count, chosen, rest, range.isWhole(state) ? null : inYears(facts, from, to));
      counts = given.counts;
      const number = size(given.found, given.found), listing = showPlates(given.found, number, () => now === turn);
      drawYears(given.apartFromYears);
      showCounts();
      showChosen();
      at("sifted-count").textContent = number === count ? `${count} plates` : `${number} of ${count} plates`;
      announce(`${number} ${number === 1 ? "plate" : "plates"}.`);
      address = writeAddress(pairs());
      if (done) done();
      await listing;
    }

    /** The words of the letters that are typed, and other names: brought when somebody types. null where all are there. */
    function bringWords(typed) {
      const letters = index.apart ? typed.map((word) => word[0]).filter((letter) => every.letters.includes(letter)) : ["captions"];
      const lacking = [...new Set(letters)].filter((letter) => !written.has(letter));
      if (!typed.length || (!lacking.length && beginning)) return null;
      const all = Array.from({ length: index.apart ? 0 : count }, (_, number) => number);
      return Promise.all([
        load("vocabulary"),
        holdings.need(all),
        ...lacking.map(async (letter) => {
          if (index.apart) written.set(letter, Object.entries(await load(`words/${letter.codePointAt(0)}`)));
        }),
      ]).then(() => {
        beginning ||= beginner(holdings, InPeriod.data.vocabulary);
        if (index.apart) return;
        const captions = saidOnPage();
        written.set("captions", wordsOf(all.map((number) => {
          const { source, where, key } = holdings.plate(number);
          return `${source} ${where} ${captions.get(key) || ""}`;
        })));
      });
    }
    const wordsFor = (word) => written.get(index.apart ? word[0] : "captions") || [];

    function drawYears(set) {
      const svg = document.querySelector("#years-box .years"),
        most = Number(svg.dataset.most),
        bars = svg.querySelectorAll(".years-left");
      if (set.some((bits, i) => bits !== barsFor[i])) {
        barsFor = set;
        (inSteps ||= perStep(facts, first, last, years))(set).forEach((held, i) => {
          const tall = (HISTOGRAM - 4) * (held / most);
          bars[i].setAttribute("y", HISTOGRAM - tall);
          bars[i].setAttribute("height", tall);
        });
      }
      bars.forEach((bar, i) => {
        const year = first + i * years;
        bar.classList.toggle("years-outside", year + years - 1 < state.from || year > state.to);
      });
    }

    /** The counts of the groups that stand open; a group that is opened is told its own then. */
    function showCounts() {
      for (const [group, { details, inputs }] of boxes) {
        if (!details.open || !inputs.length || !counts) continue;
        counts(group).forEach((number, i) => {
          const { input, tally, item } = inputs[i];
          if (tally.data !== String(number)) tally.data = String(number);
          item.classList.toggle("sift-none", number === 0 && !input.checked);
        });
      }
    }

    function showChosen() {
      const chips = [];
      const chip = (...given) => chips.push(InPeriod.chip(...given));
      for (const [group, values] of state.chosen)
        for (const value of values)
          chip(group.label, group.values.find((each) => each.id === value).label, () => choose(group, value, false));
      for (const pair of state.strange)
        chip("not on any plate", pair[1], () => step({ strange: state.strange.filter((each) => each !== pair) }));
      if (state.words) chip("Words", state.words, () => step({ words: "" }));
      if (!range.isWhole(state)) chip("Years", range.said(state), () => step({ from: first, to: last }));
      if (chips.length > 1)
        chips.push(
          h("li", {}, h("button", { type: "button", class: "chip chip-all", onclick: clear }, "Take all away")),
        );
      at("sifted-by").replaceChildren(...chips);
      at("sifted-by").hidden = chips.length === 0;
    }

    function clear() {
      step({ words: "", from: first, to: last, strange: [], chosen: new Map() });
      at("sift-words").focus();
    }

    const ordered = (sort) => (orders[sort] ||= order(facts, dated, titles, sort));

    /** The first so many of the set, in the order chosen, from that place in the order. */
    function some(set, many, from) {
      const numbers = [],
        all = ordered(state.sort);
      let place = from;
      for (; place < all.length && numbers.length < many; place += 1) if (has(set, all[place])) numbers.push(all[place]);
      return { numbers, place };
    }

    async function showPlates(found, number, current) {
      const list = at("results"),
        { sort, view } = state;
      InPeriod.listedPlates = () => [...ordered(sort)].filter((each) => has(found, each)).map(facts.plates.keyOf);
      // What stands in the list already is moved, not made again.
      const listedBefore = list.className === (view === "list" ? "trade-list" : "cards") ? items : new Map();
      items = new Map();
      const make = (each) => {
        const plate = holdings.plate(each);
        const item = listedBefore.get(each) || (view === "list" ? line : card)(plate, saying(each, plate.key));
        items.set(each, item);
        return item;
      };

      /** Lists more of them, when what is said of them is there; gives the place in the order that comes next, or null. */
      async function listed(many, from, before = () => {}) {
        const { numbers, place } = some(found, many, from);
        const coming = holdings.need(numbers, index.apart ? { said } : {});
        if (coming) {
          list.setAttribute("aria-busy", "true");
          await coming;
          if (!current()) return null;
        }
        before();
        list.append(...numbers.map(make));
        list.removeAttribute("aria-busy");
        const left = number - list.children.length;
        at("more").hidden = left <= 0;
        at("more").textContent = `${Math.min(MORE, left)} more of ${left}`;
        at("more").onclick = async () => {
          const next = list.children.length;
          await listed(MORE, place);
          list.children[next]?.querySelector("a").focus();
        };
        return place;
      }

      const next = await listed(SCREEN, 0, () => {
        list.className = view === "list" ? "trade-list" : "cards";
        list.replaceChildren();
      });
      // What lies below the screen is not drawn in the same frame, and not at all while a handle goes on moving.
      if (next && number > SCREEN) {
        list.setAttribute("aria-busy", "true");
        await new Promise((done) => requestAnimationFrame(() => setTimeout(done)));
        if (current()) await listed(FIRST - SCREEN, next);
      }
      if (!number && current())
        list.replaceChildren(h("li", { class: "empty" }, "No plate has all of this. Take one of the filters away."));
    }

    /** What is said of a plate: in a small catalogue the page itself lists it. */
    function saying(number, key) {
      if (!index.apart) return saidOnPage().get(key) || "";
      return said[facts.plates.documentOf[number]][facts.plates.within[number]];
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
    const wide = matchMedia("(min-width: 60rem)");
    at("sift-more").open = wide.matches;
    wide.addEventListener("change", () => {
      at("sift-more").open = wide.matches;
    });
    const moved = () => {
      if (writeAddress(readAddress(location.hash)) !== address) fromAddress();
    };
    InPeriod.onAddress(moved);
    await fromAddress();
    buildGroups(); // the plates come first

    function buildGroups() {
      groups.forEach((group, place) => {
        const details = h("details", { class: "sift-group", open: place === 0 }, h("summary", {}, group.label));
        const box = { details, inputs: [] };
        boxes.set(group, box);
        const open = () => {
          if (!details.open) return;
          if (!box.inputs.length) fill(group, box, place);
          showCounts();
        };
        details.addEventListener("toggle", open);
        at("sift-groups").append(details);
        open();
      });
    }

    /** The values of a group, made when it is first opened. */
    function fill(group, box, place) {
      box.inputs = group.values.map((value, i) => {
        const id = `sift-${place}-${i}`,
          tally = document.createTextNode(String(value.total));
        const input = h("input", { type: "checkbox", id, onchange: () => choose(group, value.id, input.checked) });
        input.checked = isChosen(group, value);
        const count = h("span", { class: "sift-count" }, tally);
        return { input, tally, item: h("li", { class: "sift-value" }, input, h("label", { for: id }, value.label, " ", count)) };
      });
      box.details.append(h("ul", {}, ...box.inputs.map((each) => each.item)));
    }
  }

  /** What is said of the plates that the page itself lists, by key. */
  function saidOnPage() {
    return (saidOnPage.found ||= new Map([...document.querySelectorAll("#all-plates [data-plate]")].map((item) =>
      [item.dataset.plate, item.querySelector(".trade-note")?.textContent || ""])));
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
      picture && InPeriod.thumbnail(picture, "card-picture"),
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

  if (typeof document !== "undefined") document.addEventListener("DOMContentLoaded", begin);
})(globalThis);
