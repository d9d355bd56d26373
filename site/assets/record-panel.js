// The vocabulary beside the form: drawings and definitions of the facet at hand, to look up and to choose from.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod ||= {});

  /** Data that are brought when they are wanted, or null where they do not come. */
  const fetched = (name) => InPeriod.load(name).catch(() => null);

  /** What is told of a facet: {question, note, told: {id: [definition, told apart]}, drawings: {id: svg}}; null where it cannot be had. */
  async function facetTold(id) {
    const about = await fetched(`drawn/${id}`);
    if (!about) return null;
    const sheets = await Promise.all(Array.from({ length: about.sheets }, (_, i) => fetched(`drawn/${id}-${i + 1}`)));
    return { ...about, drawings: Object.assign({}, ...sheets) };
  }

  /** A drawing of ours as an element. */
  function drawing(svg) {
    const parsed = document.importNode(new DOMParser().parseFromString(svg, "image/svg+xml").documentElement, true);
    parsed.setAttribute("aria-hidden", "true");
    parsed.removeAttribute("role");
    parsed.querySelectorAll("title").forEach((title) => title.remove());
    return parsed;
  }

  /** One stop of the Tab key for a row of buttons, arrows within it (the toolbar of the ARIA Authoring Practices). */
  function roving(box) {
    const buttons = () => [...box.querySelectorAll("button")];
    const settle = (wanted) => buttons().forEach((each) => (each.tabIndex = each === wanted ? 0 : -1));
    box.addEventListener("focusin", (event) => event.target.matches("button") && settle(event.target));
    box.addEventListener("keydown", (event) => {
      const all = buttons(),
        at = all.indexOf(event.target);
      if (at < 0 || event.altKey || event.ctrlKey || event.metaKey) return;
      const next = target(all, at, event.key);
      if (next === undefined) return;
      event.preventDefault();
      if (all[next]) all[next].focus();
    });
    return settle;
  }

  function target(all, at, pressed) {
    if (pressed === "ArrowRight") return Math.min(at + 1, all.length - 1);
    if (pressed === "ArrowLeft") return Math.max(at - 1, 0);
    if (pressed === "Home") return 0;
    if (pressed === "End") return all.length - 1;
    if (pressed !== "ArrowDown" && pressed !== "ArrowUp") return undefined;
    // The nearest button of the next row that has any.
    const here = all[at].getBoundingClientRect(),
      down = pressed === "ArrowDown";
    const rows = all.map((each, i) => [i, each.getBoundingClientRect()]).filter(([, frame]) => (down ? frame.top > here.top + 4 : frame.top < here.top - 4));
    if (!rows.length) return at;
    const near = ([, frame]) => Math.abs(frame.top - here.top) * 100 + Math.abs(frame.left - here.left);
    return rows.sort((one, other) => near(one) - near(other))[0][0];
  }

  /**
   * The panel in `box`. `plate()` is the plate in hand or null; `take(feature)` is told what is chosen; `back()` when she
   * leaves it. Gives {show(facet, term), follow(), focus()}: a facet with one term marked, the next facet not recorded yet,
   * the drawings.
   */
  function panel(box, vocabulary, { plate, take, back }) {
    const { h } = InPeriod,
      { facetOf } = InPeriod.recordTerms;
    const facets = h("div", { class: "record-facets", role: "toolbar", "aria-label": "Facets" }),
      head = h("p", { class: "record-question" }),
      grid = h("div", { class: "record-grid", role: "toolbar", "aria-label": "Terms" }),
      told = h("p", { class: "record-told", id: "record-told" });
    box.replaceChildren(facets, head, told, grid);
    const settleFacets = roving(facets),
      settleTerms = roving(grid);
    let shown = "",
      marked = "",
      garmentShown = "",
      known = null;

    const facetsNow = () => {
      const now = plate();
      return [...vocabulary.facets.values()].filter((facet) => vocabulary.facetApplies(facet, now && now.garment));
    };
    const recorded = () => new Set(((plate() || {}).features || []).map(facetOf));

    function drawFacets() {
      const held = recorded(),
        focused = document.activeElement && facets.contains(document.activeElement) && document.activeElement.dataset.facet;
      const buttons = facetsNow().map((facet) =>
        h("button", { type: "button", tabindex: -1, "data-facet": facet.id, class: held.has(facet.id) ? "record-facet record-facet-held" : "record-facet",
          "aria-pressed": String(facet.id === shown), onclick: () => show(facet.id) },
          facet.label, held.has(facet.id) && h("span", { class: "unseen" }, ", recorded")));
      facets.replaceChildren(...buttons);
      const wanted = buttons.find((each) => each.dataset.facet === (focused || shown)) || buttons[0];
      if (wanted) settleFacets(wanted);
      if (focused && wanted) wanted.focus();
    }

    async function show(id, term) {
      const garment = (plate() || {}).garment || "";
      const facet = vocabulary.facets.get(id);
      if (!facet) return;
      if (id === shown && garment === garmentShown) {
        drawFacets();
        return mark(term);
      }
      shown = id;
      garmentShown = garment;
      drawFacets();
      const found = await facetTold(id);
      if (shown !== id) return;
      known = found || { question: facet.question || facet.label, told: {}, drawings: {} };
      head.textContent = known.question;
      const terms = facet.terms.filter((each) => vocabulary.applies(each, garment));
      const within = grid.contains(document.activeElement);
      grid.replaceChildren(
        ...terms.map((each) => termButton(each)),
        h("button", { type: "button", class: "record-term record-term-none", tabindex: -1, onclick: () => take({ facet: id, none: true }) }, h("span", {}, "None"), h("small", {}, "looked for")),
        h("button", { type: "button", class: "record-term record-term-none", tabindex: -1, onclick: () => take({ facet: id, not_visible: true }) }, h("span", {}, "Not visible"), h("small", {}, "cannot be seen")),
      );
      settleTerms(grid.querySelector("button"));
      if (within) grid.querySelector("button").focus();
      mark(term);
    }

    function termButton(term) {
      const svg = known.drawings[term.id];
      return h("button", { type: "button", class: svg ? "record-term" : "record-term record-term-plain", tabindex: -1, "data-term": term.key, "aria-describedby": "record-told",
        onclick: () => take(term.key), onfocus: () => tell(term), onpointerenter: () => tell(term), onpointerleave: () => tell(vocabulary.terms.get(marked)) },
        svg && drawing(svg), h("span", {}, term.label));
    }

    function tell(term) {
      const [definition, apart] = (term && known && known.told[term.id]) || ["", ""];
      if (!term) return void told.replaceChildren((known && known.note) || "From an empty line, the arrow down leads to the drawings.");
      told.replaceChildren(...[h("b", {}, term.label), ". ", definition, apart && " ", apart && h("i", {}, apart)].filter(Boolean));
    }

    function mark(term) {
      marked = term || "";
      for (const each of grid.children) each.classList.toggle("record-term-here", each.dataset.term === marked);
      const here = marked && grid.querySelector(".record-term-here");
      if (here) grid.scrollTop = Math.max(0, here.offsetTop - grid.offsetTop - 8);
      tell(vocabulary.terms.get(marked));
    }

    box.addEventListener("keydown", (event) => {
      if (event.key !== "Escape") return;
      event.preventDefault();
      back();
    });

    return {
      show,
      follow() {
        const held = recorded(),
          all = facetsNow();
        const after = all.findIndex((facet) => facet.id === shown);
        const next = [...all.slice(Math.max(0, after)), ...all].find((facet) => !held.has(facet.id));
        if (next) show(next.id);
        else drawFacets();
      },
      focus() {
        const first = grid.querySelector(".record-term-here") || grid.querySelector("button");
        if (first) first.focus();
      },
    };
  }

  InPeriod.recordPanel = { panel, facetTold, drawing };
  if (typeof module !== "undefined") module.exports = InPeriod.recordPanel;
})(globalThis);
