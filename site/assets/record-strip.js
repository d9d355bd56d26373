// The figures recorded so far, as a strip of small pictures: where one stands, and where something is to put right.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod ||= {});
  const WIDTH = 120,
    HEIGHT = 150;

  /** The strip. Gives {draw(), complain(found)}: `found` are the complaints of record-complaints. */
  function strip({ recording, pick }) {
    const { h, counted, later } = InPeriod,
      { pageOf } = InPeriod.recordFigures;
    const box = document.getElementById("record-strip");
    const thumbs = new Map();
    let wrong = new Map();

    /** The canvas of a figure, drawn when its page is there; kept as long as the part of the page is the same. */
    function thumb(plate, page) {
      const key = `${plate.image.file}|${plate.image.region || ""}`;
      if (!thumbs.has(key)) {
        const canvas = h("canvas", { width: WIDTH, height: HEIGHT, "aria-hidden": "true" });
        thumbs.set(key, canvas);
        waiting.push([key, canvas, page, plate.image.region]);
        drawWaiting();
      }
      return thumbs.get(key);
    }

    const waiting = [];
    let drawing = false;
    const drawWaiting = later(120, async () => {
      if (drawing) return;
      drawing = true;
      while (waiting.length) {
        const [key, canvas, page, region] = waiting.shift();
        // A rectangle that is being drawn passes through many parts: only those still wanted are drawn.
        if (!canvas.isConnected || !(await InPeriod.recordPages.drawPart(canvas, page, region))) thumbs.delete(key);
        else canvas.classList.add("record-thumb-drawn");
      }
      drawing = false;
    });

    function draw() {
      const work = recording.get(),
        plates = work.source.plates || [];
      const focused = box.contains(document.activeElement);
      box.replaceChildren(...plates.map((plate, index) => {
        const page = work.pages[pageOf(work, plate)],
          amiss = wrong.get(index) || { errors: 0, warnings: 0 };
        const said = [amiss.errors && `${amiss.errors} wrong`, amiss.warnings && `${amiss.warnings} doubtful`].filter(Boolean).join(", ");
        const features = (plate.features || []).length;
        return h("li", {},
          h("button", { type: "button", class: "record-thumb", tabindex: index === Math.max(0, work.at) ? 0 : -1, "aria-current": index === work.at && "true", onclick: () => pick(index) },
            h("span", { class: "unseen" }, `Figure ${index + 1}, ${plate.id}, ${counted(features, "feature")}${said ? `; ${said}` : ""}`),
            page && plate.image && InPeriod.recordPages.isOpen(page) ? thumb(plate, page) : h("span", { class: "record-thumb-none", "aria-hidden": "true" }, plate.image ? "picture not open" : "text only"),
            h("span", { class: "record-thumb-id", "aria-hidden": "true" }, String(plate.id)),
            h("span", { class: amiss.errors ? "record-thumb-state record-thumb-wrong" : amiss.warnings ? "record-thumb-state record-thumb-doubt" : "record-thumb-state", "aria-hidden": "true" },
              amiss.errors ? `${amiss.errors} wrong` : amiss.warnings ? `${amiss.warnings} doubtful` : String(features))));
      }));
      if (!plates.length) box.append(h("li", { class: "record-strip-none" }, "Figures stand here as they are recorded."));
      const here = plates.length && box.children[work.at];
      if (!here) return;
      box.scrollLeft = here.offsetLeft - box.clientWidth / 2 + here.offsetWidth / 2;
      if (focused) here.firstElementChild.focus({ preventScroll: true });
    }

    box.addEventListener("keydown", (event) => {
      const buttons = [...box.querySelectorAll("button")],
        at = buttons.indexOf(event.target);
      const to = { ArrowLeft: at - 1, ArrowRight: at + 1, Home: 0, End: buttons.length - 1 }[event.key];
      if (at < 0 || to === undefined || !buttons[to]) return;
      event.preventDefault();
      pick(to);
      box.children[to].firstElementChild.focus();
    });

    const drawSoon = later(30, draw);
    recording.subscribe((work, before) => {
      if (work.at !== before.at || work.pages !== before.pages || work.source === before.source) draw();
      else drawSoon();
    });

    return {
      draw,
      complain(found) {
        wrong = new Map();
        for (const { path, severity } of found) {
          if (path[0] !== "plates" || !Number.isInteger(path[1])) continue;
          const held = wrong.get(path[1]) || { errors: 0, warnings: 0 };
          held[severity === "error" ? "errors" : "warnings"] += 1;
          wrong.set(path[1], held);
        }
        draw();
      },
    };
  }

  InPeriod.recordStrip = { strip };
  if (typeof module !== "undefined") module.exports = InPeriod.recordStrip;
})(globalThis);
