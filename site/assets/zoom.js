// Looking closely at a picture: enlarged, moved and put back by keys, wheel, fingers and buttons.
// Without this script the link leads to the largest copy, which the browser shows by itself.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod ||= {});
  const STEP = 1.5;
  const MOST = 6;

  /** The view that shows the whole picture in the middle of the stage, at most at twice its own size. */
  function fitted(picture, stage) {
    const scale = Math.min(2, stage.width / picture.width, stage.height / picture.height);
    return placed({ scale, x: 0, y: 0 }, picture, stage);
  }

  /** The view with the picture held to the stage: in the middle where it is smaller, else over its edges. */
  function placed(view, picture, stage) {
    const along = (at, length, room) => (length <= room ? (room - length) / 2 : Math.min(0, Math.max(room - length, at)));
    return {
      scale: view.scale,
      x: along(view.x, picture.width * view.scale, stage.width),
      y: along(view.y, picture.height * view.scale, stage.height),
    };
  }

  /** Larger by a factor, what lies at the point (from the stage's corner) staying there; between whole and MOST. */
  function scaled(view, factor, point, picture, stage) {
    const least = fitted(picture, stage).scale;
    const scale = Math.min(Math.max(MOST, least), Math.max(least, view.scale * factor));
    const by = scale / view.scale;
    return placed({ scale, x: point.x - (point.x - view.x) * by, y: point.y - (point.y - view.y) * by }, picture, stage);
  }

  function moved(view, across, down, picture, stage) {
    return placed({ scale: view.scale, x: view.x + across, y: view.y + down }, picture, stage);
  }

  InPeriod.zoom = { fitted, placed, scaled, moved, STEP, MOST };
  if (typeof module !== "undefined") module.exports = InPeriod.zoom;
  if (typeof document === "undefined") return;

  const { h } = InPeriod;

  /** Opens the picture a link leads to; closing gives the focus back to the link, as dialogs do. */
  function open(link) {
    const picture = { width: Number(link.dataset.width), height: Number(link.dataset.height) };
    const { alt, currentSrc } = link.querySelector("img");
    const image = h("img", { src: link.dataset.zoom, alt, width: picture.width, height: picture.height, draggable: "false" });
    const how = h("p", { class: "zoom-how", role: "status" });
    const stage = h("div", { class: "zoom-stage", tabindex: 0, role: "group", "aria-describedby": "zoom-keys", "aria-label": "The picture" }, image);
    const button = (name, sign, task) => h("button", { type: "button", "aria-label": name, title: name, onclick: task }, sign);
    const dialog = h(
      "dialog",
      { class: "zoom", "aria-label": "Looking closely" },
      h(
        "div",
        { class: "zoom-bar" },
        h("p", { class: "zoom-name" }, alt),
        h("p", { class: "unseen", id: "zoom-keys" }, "Plus and minus enlarge and make smaller, arrows move, nought shows the whole, Escape closes."),
        how,
        button("Smaller", "−", () => step(1 / STEP)),
        button("Larger", "+", () => step(STEP)),
        button("The whole picture", "Whole", () => show(fitted(picture, size()), true)),
        h("button", { type: "button", onclick: () => dialog.close() }, "Close"),
      ),
      stage,
    );
    const fingers = new Map();
    let view;
    let whole = true;

    const size = () => ({ width: stage.clientWidth, height: stage.clientHeight });
    const middle = () => ({ x: stage.clientWidth / 2, y: stage.clientHeight / 2 });
    const within = (event) => {
      const { left, top } = stage.getBoundingClientRect();
      return { x: event.clientX - left, y: event.clientY - top };
    };

    function show(next, stepping) {
      view = next;
      whole = view.scale <= fitted(picture, size()).scale;
      stage.classList.toggle("stepping", Boolean(stepping));
      image.style.transform = `translate(${view.x}px, ${view.y}px) scale(${view.scale})`;
      const text = `${Math.round(view.scale * 100)} %`;
      if (how.textContent !== text) how.textContent = text;
    }

    const step = (factor, point) => show(scaled(view, factor, point || middle(), picture, size()), true);
    const move = (across, down, stepping) => show(moved(view, across, down, picture, size()), stepping);

    const KEYS = {
      "+": () => step(STEP),
      "=": () => step(STEP),
      "-": () => step(1 / STEP),
      "−": () => step(1 / STEP),
      0: () => show(fitted(picture, size()), true),
      ArrowLeft: () => move(80, 0, true),
      ArrowRight: () => move(-80, 0, true),
      ArrowUp: () => move(0, 80, true),
      ArrowDown: () => move(0, -80, true),
    };

    dialog.addEventListener("keydown", (event) => {
      const task = event.ctrlKey || event.metaKey || event.altKey ? null : KEYS[event.key];
      if (!task) return;
      event.preventDefault();
      task();
    });

    stage.addEventListener("wheel", (event) => {
      event.preventDefault();
      const lines = event.deltaMode === 1 ? 16 : event.deltaMode === 2 ? 100 : 1;
      const factor = Math.exp(-Math.max(-200, Math.min(200, event.deltaY * lines)) / (event.ctrlKey ? 100 : 400));
      show(scaled(view, factor, within(event), picture, size()));
    }, { passive: false });

    stage.addEventListener("dblclick", (event) => step(STEP * STEP, within(event)));

    stage.addEventListener("pointerdown", (event) => {
      if (event.button) return;
      stage.setPointerCapture(event.pointerId);
      fingers.set(event.pointerId, within(event));
      stage.classList.add("held");
    });

    stage.addEventListener("pointermove", (event) => {
      const before = fingers.get(event.pointerId);
      if (!before) return;
      const now = within(event);
      const other = [...fingers].find(([id]) => id !== event.pointerId);
      fingers.set(event.pointerId, now);
      if (!other) {
        move(now.x - before.x, now.y - before.y);
        return;
      }
      // Two fingers: larger as they part, about the point between them, which the picture goes along with.
      const apart = (a, b) => Math.hypot(a.x - b.x, a.y - b.y);
      const point = { x: (before.x + other[1].x) / 2, y: (before.y + other[1].y) / 2 };
      const grown = scaled(view, apart(now, other[1]) / Math.max(1, apart(before, other[1])), point, picture, size());
      show(moved(grown, (now.x - before.x) / 2, (now.y - before.y) / 2, picture, size()));
    });

    const letGo = (event) => {
      fingers.delete(event.pointerId);
      if (!fingers.size) stage.classList.remove("held");
    };
    for (const name of ["pointerup", "pointercancel"]) stage.addEventListener(name, letGo);

    // A picture seen whole stays whole when the window turns or grows.
    const watcher = new ResizeObserver(() => show(whole ? fitted(picture, size()) : placed(view, picture, size())));

    dialog.addEventListener("close", () => {
      watcher.disconnect();
      dialog.remove();
      link.focus();
    });
    document.body.append(dialog);
    // Until the large copy is there, the one that is there already stands for it.
    if (currentSrc) image.style.background = `0 0 / 100% 100% url("${currentSrc}")`;
    dialog.showModal();
    show(fitted(picture, size()));
    stage.focus();
    watcher.observe(stage);
  }

  for (const link of document.querySelectorAll("a.scan")) {
    link.setAttribute("aria-haspopup", "dialog");
    link.addEventListener("click", (event) => {
      if (event.button || event.ctrlKey || event.metaKey || event.shiftKey || event.altKey) return;
      if (typeof HTMLDialogElement === "undefined") return;
      event.preventDefault();
      open(link);
    });
  }
})(globalThis);
