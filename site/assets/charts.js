// The charts, mark for mark as the build draws them (timeline_chart.py, small_charts.py).
// Horizontal places are per cent and vertical ones pixels, so a chart fits any width and keeps its lettering.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod = root.InPeriod || {});
  const s = (...given) => InPeriod.s(...given);

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
        ground && s("rect", { width: size, height: size, class: "weave-ground" }),
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
      s("rect", {
        x: left,
        y: TOP - 4,
        width: percent(100 / count),
        height: height - TOP + 4,
        class: unseen ? "chart-unseen" : "chart-seen",
        fill: unseen ? "url(#unseen)" : "none",
      }),
      s("line", { x1: left, x2: left, y1: 4, y2: height, class: "chart-rule" }),
      named && s("text", { x: middle, y: 14, class: "chart-decade" }, `${chart.decades[index]}s`),
      named &&
        s(
          "text",
          { x: middle, y: 29, class: "chart-looked" },
          String(looked),
          s("tspan", { class: "chart-word" }, word),
        ),
    );
  }

  function timelineRow(chart, row, top, scale, at, start, end) {
    const middle = top + 44;
    const line = (left, right, name) => s("line", { x1: at(left), x2: at(right), y1: middle, y2: middle, class: name });
    const text = s("text", { x: 4, y: top + 17, class: "chart-label" }, row.label);
    const parts = [
      s("line", { x1: "0%", x2: "100%", y1: top, y2: top, class: "chart-line" }),
      row.href ? s("a", { href: row.href }, text) : text,
      s("text", { x: "100%", dx: -6, y: top + 17, class: "chart-note" }, row.note),
    ];
    row.cells.forEach((cell, index) =>
      parts.push(...timelineCell(cell, index, row.cells.length, chart.looked[index], middle, scale)),
    );
    if (row.first !== null && row.last !== null) {
      const [earliest, latest] = row.reach;
      parts.push(line(earliest === null ? start : earliest, row.first, "chart-reach"));
      parts.push(line(row.last, latest === null ? end : latest, "chart-reach"));
      parts.push(line(row.first, row.last, "chart-range"));
      for (const x of row.first === row.last ? [row.first] : [row.first, row.last])
        parts.push(s("circle", { cx: at(x), cy: middle, r: 3.5, class: "chart-end" }));
    }
    for (const x of row.alone)
      if (start <= x && x <= end) parts.push(s("circle", { cx: at(x), cy: middle, r: 3, class: "chart-alone" }));
    if (row.notBefore !== null && start <= row.notBefore && row.notBefore <= end) {
      const x = at(row.notBefore);
      parts.push(s("line", { x1: x, x2: x, y1: middle - 20, y2: middle + 20, class: "chart-not-before" }));
      parts.push(
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
      return [s("line", { x1: left, x2: right, y1: middle, y2: middle, class: "chart-thread" })];
    }
    const half = Math.max(1, BAND * Math.min(1, (100 * cell.share) / scale));
    const kind = weave(Math.max(1, looked));
    const band = s("rect", {
      x: left,
      y: number(middle - half),
      width,
      height: number(2 * half),
      class: `chart-band chart-weave-${kind}`,
      fill: kind === 4 ? null : `url(#weave-${kind})`,
    });
    const whole = s("rect", { x: left, y: middle - 21, width, height: 42, class: "chart-cell", fill: "none" });
    if (!cell.href) return [s("g", { class: "chart-link" }, s("title", {}, cell.says), whole, band)];
    return [s("a", { href: cell.href, class: "chart-link", "aria-label": cell.says }, whole, band)];
  }

  /** A share as a point on a line from none to all, with its interval and the bounds of the words. */
  function drawShare({ value, low, high }, says) {
    const middle = SHARE / 2,
      x = (share) => percent(100 * share);
    const tick = (share) =>
      s("line", { x1: x(share), x2: x(share), y1: middle - 5, y2: middle + 5, class: "share-tick" });
    return s(
      "svg",
      { class: "share-bar", width: "100%", height: SHARE + SHARE_FOOT, role: "img", "aria-label": says },
      s("line", { x1: "0%", x2: "100%", y1: middle, y2: middle, class: "share-line" }),
      tick(0.05),
      tick(0.2),
      s("rect", { x: x(low), y: middle - 4, width: x(Math.max(0, high - low)), height: 8, class: "share-interval" }),
      s("line", { x1: x(value), x2: x(value), y1: 1, y2: SHARE - 1, class: "share-point" }),
      ...[
        ["0%", "start", "none"],
        ["20%", "middle", "20 %"],
        ["100%", "end", "all"],
      ].map(([place, anchor, text]) =>
        s("text", { x: place, y: SHARE + SHARE_FOOT - 3, "text-anchor": anchor, class: "share-scale" }, text),
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
        parts.push(
          s("rect", {
            x,
            y: STRIP_HEAD,
            width,
            height: ground - STRIP_HEAD,
            fill: "url(#unseen)",
            class: "strip-unseen",
          }),
        );
      else if (share > 0) {
        const tall = Math.max(2, (ground - STRIP_HEAD) * Math.min(1, (100 * share) / scale));
        parts.push(s("rect", { x, y: number(ground - tall), width, height: number(tall), class: "strip-share" }));
        if (count <= STRIP_FEW)
          parts.push(
            s("text", { x: middle, y: number(ground - tall - 4), class: "strip-value" }, InPeriod.perCent(share)),
          );
      }
      if (index % Math.ceil(count / STRIP_FEW) === 0)
        parts.push(s("text", { x: middle, y: STRIP - 3, class: "strip-decade" }, `${decades[index]}s`));
    });
    parts.push(s("line", { x1: "0%", x2: "100%", y1: ground, y2: ground, class: "strip-line" }));
    if (right > left)
      parts.push(
        s("rect", { x: percent(left), y: ground + 2, width: percent(right - left), height: 5, class: "strip-window" }),
      );
    return s("svg", { class: "strip", width: "100%", height: STRIP, role: "img", "aria-label": says }, ...parts);
  }

  Object.assign(InPeriod, { drawTimeline, drawShare, drawStrip, weave, scaleOf });
  if (typeof module !== "undefined") module.exports = InPeriod;
})(globalThis);
