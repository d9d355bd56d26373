// The timeline drawn anew for a place or a kind of source, a range of years read out, and both to keep as files.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod ||= {});
  const { at, h, s, amount, announce, counted, goTo, later, perCent, readAddress, writeAddress } = InPeriod;

  /** Where the plates are listed that show the term in those years. */
  function listOf(root, garment, term, from, to, limits) {
    const pairs = [["garment", garment], ["feature", term], ["from", String(from)], ["to", String(to)], ...limits];
    return `${root}plates.html#${writeAddress(pairs)}`;
  }

  /** A timeline made ready to draw, as view_timeline.py makes it. `root` leads to the top of the site. */
  function chartOf(facts, drawn, name, root, limits) {
    const milestone = (term) => facts.terms[facts.termIndex.get(term)].notBefore;
    return {
      name,
      decades: drawn.decades,
      looked: drawn.looked,
      rows: drawn.rows.map((row) => {
        const notBefore = milestone(row.term);
        return {
          label: row.label,
          href: `${root}term/${row.term}.html`,
          note: rowNote(drawn, row),
          cells: drawn.decades.map((decade, i) => ({
            share: row.shares[i],
            says: cellSays(drawn, row, i),
            href: row.weights[i] > 0 ? listOf(root, drawn.garment, row.term, decade, decade + 9, limits) : null,
          })),
          first: row.first && row.first.date,
          last: row.last && row.last.date,
          reach: [row.extension.earliest, row.extension.latest],
          notBefore: notBefore && InPeriod.evidence.decimalYear(notBefore.day),
          alone: row.set_aside.map((each) => each.date),
        };
      }),
    };
  }

  function cellSays(drawn, row, i) {
    const share = row.shares[i],
      where = `${row.label}, ${drawn.decades[i]}s`;
    if (share === null) return `${where}: nobody looked`;
    const of = `${amount(row.weights[i])} of ${amount(drawn.recorded[i])} plates by weight`;
    return `${where}: ${perCent(share)}, ${of}, ${counted(drawn.looked[i], "document")} looked at`;
  }

  function rowNote(drawn, row) {
    if (!row.first || !row.last) return "inferred only";
    const first = Math.floor(row.first.date),
      last = Math.floor(row.last.date);
    const seen = first === last ? String(first) : `${first}–${last}`;
    const shares = row.shares.map((share) => share || 0),
      most = Math.max(0, ...shares);
    return most ? `${seen}, most in the ${drawn.decades[shares.indexOf(most)]}s, ${perCent(most)}` : seen;
  }

  function tableRow(drawn, row, made) {
    const year = (end) => (end ? String(Math.floor(end.date)) : "");
    const open = (end) => (end === null ? "open" : Math.floor(end));
    const { earliest, latest } = row.extension;
    const reach = earliest === null && latest === null ? "open" : `${open(earliest)}–${open(latest)}`;
    const cells = made.cells.map((cell, i) => {
      const text = cell.share === null ? "nobody looked" : cell.share ? perCent(cell.share) : "–";
      const of = cell.share === null ? "" : `${amount(row.weights[i])} of ${amount(drawn.recorded[i])}`;
      return h("td", {}, cell.href ? h("a", { href: cell.href }, text) : text, of && " ", of && h("small", {}, of));
    });
    return h(
      "tr",
      {},
      h("th", { scope: "row" }, h("a", { href: made.href }, made.label)),
      ...cells,
      h("td", {}, year(row.first)),
      h("td", {}, year(row.last)),
      h("td", {}, row.first ? reach : ""),
      h("td", {}, row.not_before || ""),
    );
  }

  /** The numbers as CSV (RFC 4180), one line for every style and decade. */
  function asCsv(drawn) {
    const field = (value) => {
      let text = value === null || value === undefined ? "" : String(value);
      if (/^[=+\-@\t\r\n＝＋－＠]/.test(text) && Number.isNaN(Number(text))) text = "'" + text;
      return /[",\r\n]/.test(text) ? `"${text.replace(/"/g, '""')}"` : text;
    };
    const rows = [
      "term label decade share showing recorded documents_showing documents_looked first_seen last_seen earliest latest not_before".split(" "),
    ];
    for (const row of drawn.rows)
      drawn.decades.forEach((decade, i) =>
        rows.push([
          row.term,
          row.label,
          decade,
          row.shares[i],
          row.weights[i],
          drawn.recorded[i],
          row.documents[i],
          drawn.looked[i],
          row.first && row.first.date,
          row.last && row.last.date,
          row.extension.earliest,
          row.extension.latest,
          row.not_before,
        ]),
      );
    return rows.map((row) => row.map(field).join(",") + "\r\n").join("");
  }

  /** The drawing as a file of its own: the page's colours written into it, 960 pixels wide. */
  function asSvg(chart, title) {
    const copy = chart.cloneNode(true);
    const drawn = chart.querySelectorAll("*"),
      made = copy.querySelectorAll("*");
    const kept = "fill stroke stroke-width stroke-dasharray font-family font-size font-style text-anchor opacity".split(" ");
    drawn.forEach((element, i) => {
      const look = getComputedStyle(element);
      for (const name of kept) {
        const value = look.getPropertyValue(name);
        if (!(name === "fill" && element.getAttribute("fill"))) made[i].setAttribute(name, value.replace(/"/g, "'"));
      }
      made[i].removeAttribute("class");
    });
    for (const link of copy.querySelectorAll("a")) {
      const group = s("g", {}, ...link.childNodes);
      if (link.getAttribute("aria-label")) group.prepend(s("title", {}, link.getAttribute("aria-label")));
      link.replaceWith(group);
    }
    const paper = getComputedStyle(document.body).backgroundColor;
    copy.prepend(s("title", {}, title), s("rect", { width: "100%", height: "100%", fill: paper }));
    copy.setAttribute("width", "960");
    copy.removeAttribute("class");
    return '<?xml version="1.0" encoding="UTF-8"?>\n' + new XMLSerializer().serializeToString(copy);
  }

  function start() {
    const form = at("timeline-form");
    if (!form) return;
    const { evidence, load } = InPeriod;
    const { garment, facet, grades, root: top } = form.dataset;
    const range = InPeriod.yearRange(() => state, step),
      { first, last } = range;
    const name = at("drawing").querySelector(".chart").getAttribute("aria-label");
    // The plates of the grades that were counted, so that a cell and its list agree.
    const gradePairs = [...grades].map((grade) => ["grade", grade]);
    const limits = () => [["place", state.place], ["kind", state.kind], ...gradePairs];
    let state = null,
      address = null,
      facts = null,
      drawn = null,
      // The whole drawing stands there without any data; they come when something else is asked.
      drawnFor = writeAddress(gradePairs);

    /** Does it at once where the data are there, else when they have come. */
    function ready(task) {
      if (facts) return task();
      at("timeline").setAttribute("aria-busy", "true");
      return load("index").then(async (index) => {
        const columns = await load(InPeriod.platesOf(index, garment));
        facts ||= evidence.factsFromJson(index, columns);
        at("timeline").removeAttribute("aria-busy");
        task();
      }).catch((problem) => {
        announce(InPeriod.UNLOADED);
        throw problem;
      });
    }

    function fromAddress() {
      const pairs = new Map(readAddress(location.hash));
      const offered = (key) =>
        [...at(`timeline-${key}`).options].some((each) => each.value === pairs.get(key)) ? pairs.get(key) : "";
      state = { ...range.read(pairs), place: offered("place"), kind: offered("kind") };
      syncForm();
      show();
    }

    const pairs = () => [
      ["place", state.place],
      ["kind", state.kind],
      ...range.pairs(state),
    ];

    // While a handle is dragged one look a frame is enough, and one address once it rests.
    let frame = 0;
    const rested = later(150, () => goTo(pairs(), true));
    function step(changes, replace) {
      state = { ...state, ...changes };
      syncForm();
      cancelAnimationFrame(frame);
      if (replace) {
        frame = requestAnimationFrame(show);
        return rested();
      }
      goTo(pairs());
      show();
    }

    function syncForm() {
      at("timeline-place").value = state.place;
      at("timeline-kind").value = state.kind;
      range.show(state);
    }

    function show() {
      address = writeAddress(pairs());
      at("range").hidden = range.isWhole(state);
      if (writeAddress(limits()) !== drawnFor) ready(redraw);
      if (!at("range").hidden) ready(readOut);
      shade();
    }

    function count() {
      const { place, kind } = state;
      // The decades stay those of the whole drawing, so that a narrower look is laid beside the wider one.
      drawn = evidence.timeline(facts, garment, facet, { place, kind, grades, decades: [first, last - 9] });
    }

    function redraw() {
      if (writeAddress(limits()) === drawnFor) return;
      drawnFor = writeAddress(limits());
      count();
      const chart = chartOf(facts, drawn, name, top, limits());
      at("drawing").replaceChildren(InPeriod.drawTimeline(chart));
      at("timeline-scale").textContent =
        `full height: ${InPeriod.scaleOf(chart.rows.flatMap((row) => row.cells.map((cell) => cell.share)))} % of the plates looked at`;
      const rows = drawn.rows.map((row, i) => tableRow(drawn, row, chart.rows[i]));
      if (!rows.length)
        rows.push(
          h("tr", {}, h("td", { colspan: drawn.decades.length + 5 }, "Nothing from there was looked at for this.")),
        );
      at("table-body").replaceChildren(...rows);
      const looked = document.querySelectorAll("#table tfoot td");
      drawn.looked.forEach((count, i) => {
        looked[i].textContent = String(count);
      });
      at("left-out").textContent = drawn.left_out.length ? evidence.notCounted(facts, drawn.left_out, () => "") : "";
      at("left-out").hidden = !drawn.left_out.length;
      shade();
      announce(
        rows.length === drawn.rows.length
          ? `${counted(rows.length, "style")} drawn.`
          : "Nothing from there was looked at for this.",
      );
    }

    /** What lies outside the range is veiled. */
    function shade() {
      const chart = at("drawing").querySelector(".chart"),
        span = last + 1 - first;
      for (const veil of chart.querySelectorAll(".chart-veil")) veil.remove();
      // Row by row, so that no name is veiled with its band.
      const veil = (from, to) => {
        if (to <= from) return;
        const place = { class: "chart-veil", x: `${(100 * from) / span}%`, width: `${(100 * (to - from)) / span}%` };
        for (const row of chart.querySelectorAll(".chart-row"))
          row.append(
            s("rect", { ...place, y: Number(row.querySelector(".chart-line").getAttribute("y1")) + 23, height: 42 }),
          );
      };
      veil(0, state.from - first);
      veil(state.to + 1 - first, span);
    }

    /** The styles of the range, most usual first, with their shares. */
    function readOut() {
      const { from, to, place, kind } = state;
      if (range.isWhole(state)) return;
      const window = { earliest: evidence.yearStart(from), latest: evidence.yearStart(to + 1) - 1 };
      const usual = evidence.usualInWindow(facts, { garment, features: [], window, place, kind, grades }, facet);
      const years = range.said(state);
      at("range-head").textContent = `In ${years}`;
      const items = usual.map(({ term, label, share, documents }) => {
        const told = `${perCent(share.value)} (${perCent(share.low)} to ${perCent(share.high)}), ${counted(documents, "document")}`;
        return h("li", {}, InPeriod.tradeLine(label, listOf(top, garment, term, from, to, limits()), null, told));
      });
      at("range-body").replaceChildren(
        items.length
          ? h("ol", { class: "trade-list" }, ...items)
          : h("p", { class: "empty" }, `Nothing dated ${years} was looked at for this.`),
      );
      const commonest = usual.slice(0, 3).map((each) => `${each.label} ${perCent(each.share.value)}`);
      announce(`${years}: ${items.length ? commonest.join(", ") : "nothing looked at"}.`);
    }

    form.addEventListener("submit", (event) => event.preventDefault());
    at("timeline-place").addEventListener("change", (event) => step({ place: event.target.value }));
    at("timeline-kind").addEventListener("change", (event) => step({ kind: event.target.value }));
    const file = `${garment}-${facet}`;
    at("keep-svg").addEventListener("click", () =>
      InPeriod.download(`${file}.svg`, "image/svg+xml", asSvg(at("drawing").querySelector(".chart"), name)),
    );
    at("keep-csv").addEventListener("click", () =>
      ready(() => {
        if (!drawn) count();
        InPeriod.download(`${file}.csv`, "text/csv;charset=utf-8", asCsv(drawn));
      }),
    );
    const moved = () => {
      if (writeAddress(readAddress(location.hash)) !== address) fromAddress();
    };
    InPeriod.onAddress(moved);
    fromAddress();
  }

  Object.assign(InPeriod, { chartOf, asCsv });
  if (typeof document !== "undefined") document.addEventListener("DOMContentLoaded", start);
  if (typeof module !== "undefined") module.exports = InPeriod;
})(globalThis);
