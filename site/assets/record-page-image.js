// The page on the left: the image, the rectangles of its figures, and the one in hand, moved by pointer or by keys.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod ||= {});
  const STEP = 0.02,
    FINE = 0.0025,
    LEAST = 0.01,
    MOST_ZOOM = 8;
  const within = (value, low, high) => Math.min(high, Math.max(low, value));

  /** A box moved, kept on the page. */
  const moved = (box, dx, dy) => ({ ...box, x: within(box.x + dx, 0, 1 - box.w), y: within(box.y + dy, 0, 1 - box.h) });

  /** A box with its sides moved, each to be named n, s, e or w; kept on the page and never turned inside out. */
  function stretched(box, sides, dx, dy) {
    let [left, top, right, bottom] = [box.x, box.y, box.x + box.w, box.y + box.h];
    if (sides.includes("w")) left = within(left + dx, 0, right - LEAST);
    if (sides.includes("e")) right = within(right + dx, left + LEAST, 1);
    if (sides.includes("n")) top = within(top + dy, 0, bottom - LEAST);
    if (sides.includes("s")) bottom = within(bottom + dy, top + LEAST, 1);
    return { x: left, y: top, w: right - left, h: bottom - top };
  }

  /** How much of one box another covers. */
  function covered(one, other) {
    const w = Math.min(one.x + one.w, other.x + other.w) - Math.max(one.x, other.x),
      h = Math.min(one.y + one.h, other.y + other.h) - Math.max(one.y, other.y);
    return w > 0 && h > 0 ? (w * h) / (one.w * one.h) : 0;
  }

  /** The first block that no figure stands on yet, or null. */
  const freeBlock = (blocks, boxes) => blocks.find((block) => !boxes.some((box) => covered(block, box) > 0.3)) || null;

  /**
   * The view. `asked` gives what it shows: `page()` (or null), `boxes()` → [{index, box, number, current}], and takes what
   * is done: `mark(box, what)` (a box of the page for the figure in hand, or for a new one), `pick(index)`, `done()`,
   * `without()`, `turn(by)`. Gives {draw(), show(), proposal()}.
   */
  function pageView({ view, sheet, canvas, overlay, words, draw: finger }, asked) {
    const { s } = InPeriod;
    let zoom = 1,
      held = null,
      shownPage = "",
      drag = null;

    /** Loads the page that is to be seen and draws it. */
    async function show() {
      const page = asked.page();
      shownPage = page ? page.name : "";
      words.textContent = "";
      let loaded = null;
      try {
        loaded = page && (await InPeriod.recordPages.load(page));
        if (page && !loaded) words.textContent = `${page.name} is not open: open its folder again.`;
      } catch (slip) {
        words.textContent = `${page.name} cannot be shown: this browser cannot read that kind of picture.`;
      }
      if ((asked.page() || { name: "" }).name !== shownPage) return;
      held = loaded;
      view.classList.toggle("record-blank", !held);
      sheet.hidden = !held;
      draw();
    }

    function draw() {
      if (!held) return;
      const room = { width: view.clientWidth, height: Math.max(200, view.clientHeight) },
        ratio = held.width / held.height;
      const width = Math.max(1, Math.min(room.width, room.height * ratio) * zoom);
      sheet.style.width = `${width}px`;
      sheet.style.height = `${width / ratio}px`;
      const points = Math.min(Math.round(width * (root.devicePixelRatio || 1)), held.bitmap.width);
      if (canvas.width !== points || canvas.dataset.page !== shownPage) {
        canvas.width = points;
        canvas.height = Math.max(1, Math.round(points / ratio));
        canvas.dataset.page = shownPage;
        const context = canvas.getContext("2d");
        context.imageSmoothingQuality = "high";
        context.drawImage(held.bitmap, 0, 0, canvas.width, canvas.height);
      }
      mark(width);
    }

    const percent = (value) => `${(100 * value).toFixed(3)}%`;

    function mark() {
      const boxes = asked.boxes();
      overlay.replaceChildren(
        ...boxes.filter((each) => !each.current).flatMap((each) => rectangle(each)),
        ...boxes.filter((each) => each.current).flatMap((each) => [...rectangle(each), ...handles(each.box)]),
      );
    }

    function rectangle({ box, number, current, index }) {
      const kind = current ? "record-box record-box-here" : "record-box";
      return [
        s("rect", { class: kind, "data-index": index, x: percent(box.x), y: percent(box.y), width: percent(box.w), height: percent(box.h) }),
        s("text", { class: "record-box-number", x: percent(box.x), y: percent(box.y), dx: 5, dy: 16 }, number),
      ];
    }

    function handles(box) {
      const places = [["nw", 0, 0], ["n", 0.5, 0], ["ne", 1, 0], ["e", 1, 0.5], ["se", 1, 1], ["s", 0.5, 1], ["sw", 0, 1], ["w", 0, 0.5]];
      return places.map(([sides, x, y]) =>
        s("circle", { class: `record-handle record-handle-${sides}`, "data-sides": sides, cx: percent(box.x + box.w * x), cy: percent(box.y + box.h * y), r: 6 }));
    }

    const here = () => asked.boxes().find((each) => each.current);

    // ---- by pointer

    function spot(event) {
      const frame = sheet.getBoundingClientRect();
      return { x: within((event.clientX - frame.left) / frame.width, 0, 1), y: within((event.clientY - frame.top) / frame.height, 0, 1) };
    }

    overlay.addEventListener("pointerdown", (event) => {
      const byFinger = event.pointerType === "touch" && finger.getAttribute("aria-pressed") !== "true";
      const { sides, index } = event.target.dataset,
        current = here();
      if (event.button || (byFinger && !sides)) return;
      event.preventDefault();
      view.focus({ preventScroll: true });
      overlay.setPointerCapture(event.pointerId);
      const inHand = current && Number(index) === current.index;
      drag = { from: spot(event), box: current && current.box, sides, kind: sides ? "stretch" : inHand ? "move" : "draw", index, far: false, key: `region ${Date.now()}` };
    });

    overlay.addEventListener("pointermove", (event) => {
      if (!drag) return;
      const to = spot(event),
        dx = to.x - drag.from.x,
        dy = to.y - drag.from.y;
      drag.far = drag.far || Math.hypot(dx * sheet.clientWidth, dy * sheet.clientHeight) > 4;
      if (!drag.far) return;
      if (drag.kind === "stretch") asked.mark(stretched(drag.box, drag.sides, dx, dy), drag.key);
      else if (drag.kind === "move") asked.mark(moved(drag.box, dx, dy), drag.key);
      else {
        const box = { x: Math.min(to.x, drag.from.x), y: Math.min(to.y, drag.from.y), w: Math.abs(dx), h: Math.abs(dy) };
        if (box.w > LEAST && box.h > LEAST) asked.mark(box, drag.key);
      }
    });

    const letGo = () => {
      if (drag && !drag.far && drag.index !== undefined) asked.pick(Number(drag.index));
      drag = null;
    };
    overlay.addEventListener("pointerup", letGo);
    overlay.addEventListener("pointercancel", letGo);

    // A finger scrolls the page until she says that it draws.
    finger.addEventListener("click", () => {
      const on = finger.getAttribute("aria-pressed") !== "true";
      finger.setAttribute("aria-pressed", String(on));
      overlay.classList.toggle("record-drawing", on);
    });
    overlay.addEventListener("touchstart", (event) => (drag ? event.preventDefault() : undefined), { passive: false });

    // ---- by keys

    const ARROWS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };

    view.addEventListener("keydown", (event) => {
      if (event.target !== view || event.ctrlKey || event.metaKey) return;
      const current = here(),
        arrow = ARROWS[event.key],
        box = current ? current.box : { x: 0, y: 0, w: 1, h: 1 };
      const took = () => event.preventDefault();
      if (arrow && current) {
        took();
        const [dx, dy] = arrow.map((way) => way * (event.altKey ? FINE : STEP));
        asked.mark(event.shiftKey ? stretched(box, "se", dx, dy) : whole(box) ? stretched(box, "se", -STEP, -STEP) : moved(box, dx, dy), "region keys");
        say();
      } else if (event.altKey) return;
      else if (event.key === "w") (took(), asked.mark({ x: 0, y: 0, w: 1, h: 1 }, ""), say());
      else if (event.key === "n" || event.key === "b") (took(), toBlock(event.key === "n" ? 1 : -1, box), say());
      else if (event.key === "Delete" || event.key === "x") (took(), asked.without());
      else if (event.key === "+" || event.key === "=") (took(), zoomTo(zoom * 1.5));
      else if (event.key === "-") (took(), zoomTo(zoom / 1.5));
      else if (event.key === "0") (took(), zoomTo(1));
      else if (event.key === "Enter" || event.key === "Escape") (took(), asked.done());
    });

    const whole = (box) => box.w > 0.995 && box.h > 0.995;

    function toBlock(by, box) {
      const blocks = held ? held.blocks : [];
      if (!blocks.length) return;
      const at = blocks.findIndex((block) => covered(block, box) > 0.6 && covered(box, block) > 0.6);
      asked.mark(blocks[(at < 0 ? (by > 0 ? 0 : blocks.length - 1) : at + by + blocks.length) % blocks.length], "");
    }

    const say = InPeriod.later(350, () => {
      const current = here(),
        round = (value) => Math.round(100 * value);
      if (!current) return;
      const { x, y, w, h } = current.box;
      InPeriod.announce(`Rectangle from ${round(x)} to ${round(x + w)} % across and ${round(y)} to ${round(y + h)} % down.`);
    });

    function zoomTo(wanted) {
      const current = here(),
        middle = current ? { x: current.box.x + current.box.w / 2, y: current.box.y + current.box.h / 2 } : { x: 0.5, y: 0.3 };
      zoom = within(wanted, 1, MOST_ZOOM);
      draw();
      view.scrollLeft = middle.x * sheet.clientWidth - view.clientWidth / 2;
      view.scrollTop = middle.y * sheet.clientHeight - view.clientHeight / 2;
    }

    new ResizeObserver(InPeriod.later(60, draw)).observe(view);

    return {
      show,
      draw: () => mark(),
      zoomBy: (factor) => zoomTo(factor ? zoom * factor : 1),
      /** Where the next figure of this page probably stands; null where that cannot be told. */
      async proposal() {
        const page = asked.page(),
          loaded = page && (await InPeriod.recordPages.load(page).catch(() => null));
        return loaded ? freeBlock(loaded.blocks, asked.boxes().map((each) => each.box)) : null;
      },
    };
  }

  InPeriod.recordPageImage = { pageView, moved, stretched, covered, freeBlock };
  if (typeof module !== "undefined") module.exports = InPeriod.recordPageImage;
})(globalThis);
