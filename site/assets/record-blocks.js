// Where the figures of a page stand: a proposal, from the white between them. A proposal only: she moves it at will.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod ||= {});
  const SMALLEST = 0.025, // of the page's area: less is a caption, a rule, a number
    GAP = 0.012, // of the page's longer side: less white parts nothing
    EDGE = 0.015; // of each side: shadows of the scan

  /**
   * Boxes {x, y, w, h}, in shares of the page, in the order one reads: row by row, each from the left.
   * `grey` holds the brightness (0–255) of width × height points. Recursive cuts along the white (after Nagy &
   * Seth 1984, the X-Y cut); what is dark is told from paper by Otsu's threshold (1979).
   */
  function findBlocks(grey, width, height) {
    const threshold = otsu(grey),
      dark = Uint8Array.from(grey, (value) => (value < threshold ? 1 : 0));
    const edgeX = Math.round(width * EDGE),
      edgeY = Math.round(height * EDGE);
    const gap = Math.max(2, Math.round(GAP * Math.max(width, height)));
    const found = [];
    cut({ left: edgeX, top: edgeY, right: width - edgeX, bottom: height - edgeY });
    const boxes = found
      .filter((box) => (box.right - box.left) * (box.bottom - box.top) >= SMALLEST * width * height)
      .map((box) => ({ x: box.left / width, y: box.top / height, w: (box.right - box.left) / width, h: (box.bottom - box.top) / height }));
    return inReadingOrder(boxes);

    function cut(box) {
      const rows = counts(box, true),
        first = rows.findIndex(Boolean);
      if (first < 0) return;
      const columns = counts(box, false);
      const tight = {
        left: box.left + columns.findIndex(Boolean),
        right: box.left + lastOf(columns) + 1,
        top: box.top + first,
        bottom: box.top + lastOf(rows) + 1,
      };
      const across = widest(counts(tight, true)),
        down = widest(counts(tight, false));
      if (Math.max(across.length, down.length) < gap) return void found.push(tight);
      if (across.length >= down.length) {
        cut({ ...tight, bottom: tight.top + across.start });
        cut({ ...tight, top: tight.top + across.start + across.length });
      } else {
        cut({ ...tight, right: tight.left + down.start });
        cut({ ...tight, left: tight.left + down.start + down.length });
      }
    }

    /** How many dark points each row (or column) of the box has; a speck counts as none. */
    function counts({ left, top, right, bottom }, byRow) {
      const found = new Array(byRow ? bottom - top : right - left).fill(0);
      for (let y = top; y < bottom; y += 1) for (let x = left; x < right; x += 1) found[byRow ? y - top : x - left] += dark[y * width + x];
      return found;
    }
  }

  const lastOf = (counted) => counted.length - 1 - counted.slice().reverse().findIndex(Boolean);

  /** The longest run of nothing inside. */
  function widest(counted) {
    let best = { start: 0, length: 0 },
      start = 0;
    counted.forEach((count, i) => {
      if (count) start = i + 1;
      else if (i + 1 - start > best.length) best = { start, length: i + 1 - start };
    });
    return best;
  }

  function inReadingOrder(boxes) {
    const rows = [];
    for (const box of boxes.sort((a, b) => a.y - b.y)) {
      const row = rows.find((each) => box.y < each.y + each.h * 0.5);
      if (row) row.boxes.push(box);
      else rows.push({ y: box.y, h: box.h, boxes: [box] });
    }
    return rows.flatMap((row) => row.boxes.sort((a, b) => a.x - b.x));
  }

  function otsu(grey) {
    const histogram = new Array(256).fill(0);
    for (const value of grey) histogram[value] += 1;
    const total = grey.length,
      sum = histogram.reduce((all, count, value) => all + count * value, 0);
    let below = 0,
      sumBelow = 0,
      best = 0,
      threshold = 128;
    for (let value = 0; value < 255; value += 1) {
      below += histogram[value];
      sumBelow += value * histogram[value];
      if (!below || below === total) continue;
      const apart = sumBelow / below - (sum - sumBelow) / (total - below);
      const between = below * (total - below) * apart * apart;
      if (between > best) {
        best = between;
        threshold = value + 1;
      }
    }
    return threshold;
  }

  InPeriod.findBlocks = findBlocks;
  if (typeof module !== "undefined") module.exports = { findBlocks };
})(globalThis);
