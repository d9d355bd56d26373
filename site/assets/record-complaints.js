// The catalogue's own checks while she types: each complaint beside its field, all of them in a list that leads there.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod ||= {});
  const SHOWN = 60;

  /**
   * Every complaint about the source: [{severity, message, hint, path}]. It is checked as a file of its own would be, which says the
   * same as the file that was opened and is made fifty times as quickly; lines and columns are therefore not to be shown.
   */
  function complaintsOf(work) {
    const { root: tree, problems } = InPeriod.recordYaml.read(InPeriod.recordYaml.sourceYaml(work.source));
    const { check, place } = InPeriod.recordChecks;
    const all = tree ? [...problems, ...check(tree, { file: `sources/${work.name}.yaml`, pictures: picturesFor(work) })] : problems;
    return all.map((each) => ({ ...each, path: (tree && place(each, tree)) || [] }));
  }

  /** The pictures the checks may look for, with their sizes: those of the opened pages, where they are all there is. */
  function picturesFor(work) {
    const { imageName } = InPeriod.recordFigures;
    const sizes = work.pages.map((page) => InPeriod.recordPages.factsOf(page));
    const names = new Map(work.pages.map((page, i) => [imageName(work, page), sizes[i] && [sizes[i].width, sizes[i].height]]));
    const own = (work.source.plates || []).every((plate) => !plate.image || names.has(plate.image.file));
    return own ? names : null;
  }

  /**
   * Shows complaints. `with_`: {recording, go(path)}. Gives {check() (at once), found(), next()}; `onFound(list)` after each
   * round.
   */
  function complaints(with_) {
    const { recording, go, onFound } = with_;
    const { h, later, counted } = InPeriod;
    const byId = (id) => document.getElementById(id);
    let found = [],
      turn = -1;

    function check() {
      const work = recording.get();
      found = work.past.length || work.file ? complaintsOf(work) : [];
      draw();
      onFound(found);
      return found;
    }

    /** The words of a path in the form: ["plates", 2, "price"] with plate 2 in hand is plate.price. */
    function fieldOf(path) {
      const inHand = path[0] === "plates" && path[1] === recording.get().at;
      return path[0] === "plates" ? (inHand ? ["plate", ...path.slice(2)].join(".") : null) : ["source", ...path].join(".");
    }

    /** The element a field's complaint stands beside: the field itself or the nearest around it. */
    function beside(words) {
      for (let steps = words.split("."); steps.length > 1; steps.pop()) {
        const hit = document.querySelector(`#record-form [data-path="${CSS.escape(steps.join("."))}"]`);
        if (hit) return hit;
      }
      return document.querySelector(`[data-slips="${words.split(".")[0]}"]`);
    }

    const words = (each) => [each.message, each.hint].filter(Boolean).join(" ");

    function draw() {
      for (const slip of document.querySelectorAll("#record-form .record-slip")) slip.remove();
      for (const control of document.querySelectorAll("#record-form [data-slipped]")) {
        control.removeAttribute("aria-invalid");
        const own = control.dataset.slipped;
        delete control.dataset.slipped;
        const rest = (control.getAttribute("aria-describedby") || "").split(" ").filter((id) => id && id !== own);
        if (rest.length) control.setAttribute("aria-describedby", rest.join(" "));
        else control.removeAttribute("aria-describedby");
      }
      found.forEach((each, number) => {
        const field = fieldOf(each.path),
          control = field && beside(field);
        if (!control) return;
        const id = `record-slip-${number}`,
          kind = each.severity === "error" ? "record-slip record-slip-error" : "record-slip";
        if (control.matches("ul")) return void control.append(h("li", { class: kind }, words(each)));
        const slip = h("span", { class: kind, id }, words(each));
        (control.closest(".record-field") || control).append(slip);
        if (!control.matches("input, select, textarea") || control.dataset.slipped) return;
        control.dataset.slipped = id;
        if (each.severity === "error") control.setAttribute("aria-invalid", "true");
        control.setAttribute("aria-describedby", [control.getAttribute("aria-describedby"), id].filter(Boolean).join(" "));
      });
      drawList();
    }

    function nameOf({ path }) {
      if (path[0] !== "plates") return "The source";
      const plate = (recording.get().source.plates || [])[path[1]];
      return plate ? `Figure ${path[1] + 1}, ${plate.id}` : "The figures";
    }

    function drawList() {
      byId("record-wrong").hidden = !found.length;
      byId("record-problems").replaceChildren(
        ...found.slice(0, SHOWN).map((each, number) =>
          h("li", { class: each.severity === "error" ? "record-problem record-problem-error" : "record-problem" },
            h("button", { type: "button", onclick: () => jump(number) },
              h("span", { class: "record-problem-kind" }, each.severity === "error" ? "Wrong" : "Doubtful"), " ",
              h("b", {}, nameOf(each)), " ", h("span", {}, words(each))))),
        ...(found.length > SHOWN ? [h("li", {}, `and ${counted(found.length - SHOWN, "more complaint")}`)] : []),
      );
    }

    function jump(number) {
      turn = number;
      const { path } = found[number];
      go(path);
      const field = fieldOf(path),
        control = field && beside(field);
      const target = control && (control.matches("input, select, textarea") ? control : control.matches("[data-path^='plate.features']") ? byId("record-line") : control.querySelector("input, select, textarea"));
      for (let fold = target && target.closest("details"); fold; fold = fold.parentElement.closest("details")) fold.open = true;
      (target || byId("record-line")).focus();
      InPeriod.announce(words(found[number]));
    }

    // Where checking takes long, it waits for a longer pause in the typing.
    let took = 0;
    const timed = () => {
      const began = performance.now();
      check();
      took = performance.now() - began;
    };
    const quick = later(180, timed),
      slow = later(900, timed);
    const soon = () => (took < 80 ? quick : slow)();
    recording.subscribe((work, before) => {
      if (work.at !== before.at && work.source === before.source) draw();
      if (work.source !== before.source || work.name !== before.name || work.pages !== before.pages) soon();
    });

    return { check, found: () => found, next: () => found.length && jump((turn + 1) % found.length) };
  }

  InPeriod.recordComplaints = { complaints, complaintsOf, picturesFor };
  if (typeof module !== "undefined") module.exports = InPeriod.recordComplaints;
})(globalThis);
