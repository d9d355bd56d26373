// The charts, mark for mark as the build draws them (timeline_chart.py, small_charts.py).
// Horizontal places are per cent and vertical ones pixels, so a chart fits any width and keeps its lettering.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod ||= {});
  const s = (...given) => InPeriod.s(...given);
  const line = (name, x1, y1, x2, y2) => s("line", { x1, x2, y1, y2, class: name });
  const rect = (name, x, y, width, height, fill) => s("rect", { x, y, width, height, class: name, fill });
  const text = (name, x, y, ...said) => s("text", { x, y, class: name }, ...said);

  const TOP = 40,
    ROW = 66,
    FOOT = 12,
    BAND = 18;
  const FEW = 8;
  const SCALES = [5, 10, 20, 25, 40, 50, 75, 100];
  const WEAVES = [1, 3, 6, 12];
  const STRIP = 82,
    STRIP_FOOT = 24,
    STRIP_HEAD = 16,
    STRIP_FEW = 6,
    SHARE = 18,
    SHARE_FOOT = 14;

  const number = (value) => String(Math.floor(value * 100 + 0.5) / 100);
  const percent = (value) => number(value) + "%";

  /** 0 where nobody looked, then 1 (net) to 4 (cloth). */
  const weave = (documents) => WEAVES.filter((least) => documents >= least).length;

  /** The share, in per cent, of a band at full weight: the least round one that holds them all. */
  function scaleOf(shares) {
    const most = 100 * Math.max(0, ...shares.filter((share) => share !== null));
    return SCALES.find((scale) => most <= scale) || 100;
  }

  function weaves() {
    const pattern = (id, size, ground, ...paths) =>
      s(
        "pattern",
        { id, width: size, height: size, patternUnits: "userSpaceOnUse" },
        ground && rect("weave-ground", null, null, size, size),
        ...paths,
      );
    const thread = (d, heavy) => s("path", { d, class: heavy ? "weave-thread weave-heavy" : "weave-thread" });
    return s(
      "defs",
      {},
      pattern("weave-1", 9, true, thread("M0 4.5H9M4.5 0V9")),
      pattern("weave-2", 5, true, thread("M0 2.5H5M2.5 0V5")),
      pattern("weave-3", 6, true, thread("M-1.5 1.5L1.5 -1.5M0 6L6 0M4.5 7.5L7.5 4.5", true)),
      pattern("unseen", 8, false, s("path", { d: "M-2 2L2 -2M0 8L8 0M6 10L10 6", class: "unseen-stroke" })),
    );
  }

  /**
   * Style against decade. The chart is {decades, looked, name, rows: [{label, href, note, cells:
   * [{share, href, says}], first, last, reach: [earliest, latest], notBefore, alone}]}; years are decimal,
   * null is unknown or open.
   */
  function drawTimeline(chart) {
    const count = chart.decades.length;
    const height = TOP + ROW * chart.rows.length + FOOT;
    const start = chart.decades[0],
      end = chart.decades[count - 1] + 10;
    const scale = scaleOf(chart.rows.flatMap((row) => row.cells.map((cell) => cell.share)));
    const at = (year) => percent(Math.min(100, Math.max(0, (100 * (year - start)) / (end - start))));
    return s(
      "svg",
      { class: "chart", width: "100%", height, role: "group", "aria-label": chart.name },
      weaves(),
      ...chart.decades.map((decade, index) => column(chart, index, height)),
      ...chart.rows.map((row, index) => timelineRow(chart, row, TOP + ROW * index, scale, at, start, end)),
    );
  }

  function column(chart, index, height) {
    const count = chart.decades.length,
      looked = chart.looked[index];
    const left = percent((100 * index) / count),
      middle = percent((100 * (index + 0.5)) / count);
    const unseen = looked === 0 && chart.rows.every((row) => row.cells[index].share === null);
    const word = count > FEW ? "" : looked === 1 ? " document" : " documents";
    const named = index % (1 + Math.floor(count / (2 * FEW + 1))) === 0;
    return s(
      "g",
      { class: "chart-column" },
      rect(
        unseen ? "chart-unseen" : "chart-seen",
        left,
        TOP - 4,
        percent(100 / count),
        height - TOP + 4,
        unseen ? "url(#unseen)" : "none",
      ),
      line("chart-rule", left, 4, left, height),
      named && text("chart-decade", middle, 14, `${chart.decades[index]}s`),
      named && text("chart-looked", middle, 29, String(looked), s("tspan", { class: "chart-word" }, word)),
    );
  }

  function timelineRow(chart, row, top, scale, at, start, end) {
    const middle = top + 44;
    const along = (left, right, name) => line(name, at(left), middle, at(right), middle);
    const label = text("chart-label", 4, top + 17, row.label);
    const parts = [
      line("chart-line", "0%", top, "100%", top),
      row.href ? s("a", { href: row.href }, label) : label,
      s("text", { x: "100%", dx: -6, y: top + 17, class: "chart-note" }, row.note),
    ];
    row.cells.forEach((cell, index) =>
      parts.push(...timelineCell(cell, index, row.cells.length, chart.looked[index], middle, scale)),
    );
    if (row.first !== null && row.last !== null) {
      const [earliest, latest] = row.reach;
      parts.push(
        along(earliest === null ? start : earliest, row.first, "chart-reach"),
        along(row.last, latest === null ? end : latest, "chart-reach"),
        along(row.first, row.last, "chart-range"),
      );
      for (const x of row.first === row.last ? [row.first] : [row.first, row.last])
        parts.push(s("circle", { cx: at(x), cy: middle, r: 3.5, class: "chart-end" }));
    }
    for (const x of row.alone)
      if (start <= x && x <= end) parts.push(s("circle", { cx: at(x), cy: middle, r: 3, class: "chart-alone" }));
    if (row.notBefore !== null && start <= row.notBefore && row.notBefore <= end) {
      const x = at(row.notBefore);
      parts.push(
        line("chart-not-before", x, middle - 20, x, middle + 20),
        s(
          "svg",
          { x, y: middle, overflow: "visible", width: 8, height: 8 },
          s("path", { d: "M0 -20L8 -16L0 -12Z", class: "chart-flag" }),
        ),
      );
    }
    return s("g", { class: "chart-row" }, ...parts);
  }

  function timelineCell(cell, index, count, looked, middle, scale) {
    const left = percent((100 * index) / count),
      width = percent(100 / count);
    if (cell.share === null) return [];
    if (cell.share <= 0) {
      const right = percent((100 * (index + 1)) / count);
      return [line("chart-thread", left, middle, right, middle)];
    }
    const half = Math.max(1, BAND * Math.min(1, (100 * cell.share) / scale));
    const kind = weave(Math.max(1, looked));
    const band = rect(
      `chart-band chart-weave-${kind}`,
      left,
      number(middle - half),
      width,
      number(2 * half),
      kind === 4 ? null : `url(#weave-${kind})`,
    );
    const whole = rect("chart-cell", left, middle - 21, width, 42, "none");
    if (!cell.href) return [s("g", { class: "chart-link" }, s("title", {}, cell.says), whole, band)];
    return [s("a", { href: cell.href, class: "chart-link", "aria-label": cell.says }, whole, band)];
  }

  /** A share as a point on a line from none to all, with its interval and the bounds of the words. */
  function drawShare({ value, low, high }, says) {
    const middle = SHARE / 2,
      x = (share) => percent(100 * share);
    const tick = (name, share, half) => line(name, x(share), middle - half, x(share), middle + half);
    return s(
      "svg",
      { class: "share-bar", width: "100%", height: SHARE + SHARE_FOOT, role: "img", "aria-label": says },
      line("share-line", "0%", middle, "100%", middle),
      tick("share-tick", 0.05, 5),
      tick("share-tick", 0.2, 5),
      rect("share-interval", x(low), middle - 4, x(Math.max(0, high - low)), 8),
      tick("share-point", value, middle - 1),
      ...[
        ["0%", "start", "none"],
        ["20%", "middle", "20 %"],
        ["100%", "end", "all"],
      ].map(([place, anchor, said]) =>
        s("text", { x: place, y: SHARE + SHARE_FOOT - 3, "text-anchor": anchor, class: "share-scale" }, said),
      ),
    );
  }

  /** Columns of the share by decade with the window (decimal years, null open) marked. */
  function drawStrip({ decades, shares, window, says }) {
    const count = decades.length,
      start = decades[0],
      end = decades[count - 1] + 10;
    const ground = STRIP - STRIP_FOOT,
      scale = scaleOf(shares);
    const [left, right] = window.map((edge, side) => {
      const year = edge === null ? [start, end][side] : edge;
      return Math.min(100, Math.max(0, (100 * (year - start)) / (end - start)));
    });
    const parts = [];
    shares.forEach((share, index) => {
      const x = percent((100 * index) / count + 0.4),
        width = percent(100 / count - 0.8);
      const middle = percent((100 * (index + 0.5)) / count);
      if (share === null)
        parts.push(rect("strip-unseen", x, STRIP_HEAD, width, ground - STRIP_HEAD, "url(#unseen)"));
      else if (share > 0) {
        const tall = Math.max(2, (ground - STRIP_HEAD) * Math.min(1, (100 * share) / scale));
        parts.push(rect("strip-share", x, number(ground - tall), width, number(tall)));
        if (count <= STRIP_FEW) parts.push(text("strip-value", middle, number(ground - tall - 4), InPeriod.perCent(share)));
      }
      if (index % Math.ceil(count / STRIP_FEW) === 0)
        parts.push(text("strip-decade", middle, STRIP - 3, `${decades[index]}s`));
    });
    parts.push(line("strip-line", "0%", ground, "100%", ground));
    if (right > left) parts.push(rect("strip-window", percent(left), ground + 2, percent(right - left), 5));
    return s("svg", { class: "strip", width: "100%", height: STRIP, role: "img", "aria-label": says }, ...parts);
  }

  Object.assign(InPeriod, { drawTimeline, drawShare, drawStrip, weave, scaleOf });
  if (typeof module !== "undefined") module.exports = InPeriod;
})(globalThis);
