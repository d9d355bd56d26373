// The page put together: begin or go on, keep every change, turn pages, the keys, save.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod ||= {});

  function start() {
    const { h, announce, counted } = InPeriod,
      { recording, recordPages: pages, recordFigures: figures, recordSave: saving } = InPeriod,
      { inOrder, put } = InPeriod.recordState;
    const given = InPeriod.data.recording,
      { settings } = given,
      shape = InPeriod.recordShape.sourceShape(given.shapes),
      feature = shape.fields.get("plates").item.fields.get("features").item.table,
      vocabulary = InPeriod.recordTerms.vocabularyOf(given.vocabulary, feature.fields.get("at").words);
    const byId = (id) => document.getElementById(id);
    const on = (id, act) => byId(id).addEventListener("click", act);
    const today = () => new Date().toLocaleDateString("sv");
    let savedAs = "",
      rest = null;
    const clock = (moment) => new Date(moment).toLocaleTimeString("en-GB", { hour: "2-digit", minute: "2-digit" });

    // ---- the page image

    const boxes = () => {
      const work = recording.get(),
        page = work.pages[work.page],
        facts = pages.factsOf(page);
      if (!facts) return [];
      const name = figures.imageName(work, page);
      return (work.source.plates || []).flatMap((plate, index) =>
        plate.image && plate.image.file === name
          ? [{ index, number: (plate.locator && plate.locator.figure) || plate.id, current: index === work.at, box: figures.boxOf(plate.image.region, facts.width, facts.height) }]
          : []);
    };

    /** A box of this page given to the figure in hand; where that is on another page, to a new one. */
    function mark(box, what) {
      const work = recording.get(),
        page = work.pages[work.page],
        facts = pages.factsOf(page);
      if (!facts) return;
      const region = figures.region(box, facts.width, facts.height),
        plate = recording.figure(),
        key = (at) => what && `${what} ${at}`;
      if (plate && (!plate.image || figures.pageOf(work, plate) === work.page)) {
        const file = figures.imageName(work, page);
        form.edit(key(work.at), (held) => {
          const { region: old, ...image } = held.image || { alt: form.altOf(held) };
          return { ...held, image: inOrder({ ...image, file, ...(region ? { region } : {}) }, "image") };
        });
      } else {
        const at = work.at < 0 ? (work.source.plates || []).length : work.at + 1;
        recording.change(key(at), (old) => figures.withPlate(old, figures.nextPlate(old, region, today(), form.altOf)));
      }
    }

    const view = InPeriod.recordPageImage.pageView(
      { view: byId("record-view"), sheet: byId("record-sheet"), canvas: byId("record-canvas"), overlay: byId("record-overlay"), words: byId("record-view-words"), draw: byId("record-finger") },
      {
        page: () => recording.get().pages[recording.get().page] || null,
        boxes,
        mark,
        pick: (index) => pick(index),
        done: () => form.line.focus(),
        without: () => form.edit("", (plate) => put(plate, ["image"], undefined)),
      },
    );

    function turn(by) {
      const { pages: all, page, at } = recording.get(),
        to = page + by;
      if (to < 0 || to >= all.length) return announce(by > 0 ? "This is the last page image." : "This is the first page image.");
      recording.look(to, at);
      announce(`Page image ${to + 1} of ${all.length}.`);
      return undefined;
    }

    function pick(index) {
      const work = recording.get(),
        of = figures.pageOf(work, work.source.plates[index]);
      recording.look(of < 0 ? work.page : of, index);
    }

    async function showPage() {
      await view.show();
      view.draw();
      strip.draw();
    }

    // ---- figures

    const form = InPeriod.recordForm.form({
      recording, vocabulary, today, seasons: settings.seasons, taken: new Set(Object.keys(given.sources)), panelBox: byId("record-panel"), rightsIn, next,
      detail: (index) => rest && rest.detail(index),
    });

    function rightsIn(address) {
      const option = [...byId("record-rights").options].find((each) => each.value === address);
      return option ? option.textContent : "";
    }

    async function next(again) {
      if (!form.finish()) return;
      const box = await view.proposal();
      const work = recording.get(),
        facts = pages.factsOf(work.pages[work.page]);
      const region = box && facts ? figures.region(box, facts.width, facts.height) : undefined;
      const last = recording.figure();
      recording.change("", (old) => {
        const plate = figures.nextPlate(old, region, today(), form.altOf);
        const features = again && last && last.features;
        return figures.withPlate(old, features ? { ...plate, features, ...(plate.image ? { image: { ...plate.image, alt: form.altOf({ ...plate, features }) } } : {}) } : plate);
      });
      byId("record-source").open = false;
      byId("record-plate-locator-item").focus();
      const { source, at } = recording.get();
      announce(`Figure ${at + 1}, ${source.plates[at].id}.${box ? "" : " The whole page."}`);
    }

    /** A second plate of the same figure: both get the same outfit, the second the same picture and place. */
    function anotherGarment() {
      const plate = recording.figure(),
        outfit = plate.outfit || String(plate.id);
      recording.change("", (old) => {
        const { source, at } = figures.withChanged(old, old.at, (held) => ({ ...held, outfit }), form.altOf);
        const { garment, features, confirmations, note, price, same_cut_as: cut, ...shared } = source.plates[at];
        const second = { ...shared, outfit, garment: "" };
        second.id = figures.plateId(second, figures.othersIds(source.plates, -1));
        delete second.garment;
        if (second.image) second.image = { ...second.image, alt: form.altOf(second) };
        return figures.withPlate({ ...old, source }, second);
      });
      byId("record-garment").focus();
    }

    function move(by) {
      const { at, source } = recording.get(),
        to = at + by;
      if (at < 0 || to < 0 || to >= source.plates.length) return;
      recording.change("", (old) => {
        const plates = old.source.plates.slice();
        plates.splice(to, 0, plates.splice(at, 1)[0]);
        return { ...old, source: { ...old.source, plates }, at: to };
      });
      announce(`Now ${to + 1} of ${source.plates.length}.`);
    }

    function drop() {
      if (!recording.figure()) return;
      recording.change("", (old) => {
        const plates = old.source.plates.filter((_, i) => i !== old.at);
        return { ...put(old, ["source", "plates"], plates.length ? plates : undefined), at: Math.min(old.at, plates.length - 1) };
      });
      announce("Taken away. Undo brings it back.");
    }

    const strip = InPeriod.recordStrip.strip({ recording, pick });
    rest = InPeriod.recordRest.rest({ recording, form, shape });
    const complaints = InPeriod.recordComplaints.complaints({
      recording,
      go: (path) => path[0] === "plates" && Number.isInteger(path[1]) && recording.get().source.plates[path[1]] && pick(path[1]),
      onFound: (found) => (strip.complain(found), showSaved()),
    });

    // ---- what is shown around the form

    function summary({ source, name }) {
      const kind = byId("record-source-kind").selectedOptions[0];
      let date = source.date || "";
      try {
        date = date && InPeriod.dating.inWords(date, settings.seasons);
      } catch (slip) {
        date = source.date;
      }
      return [source.title || "not named yet", source.kind && kind ? kind.textContent.toLowerCase() : "", date, name && `${name}.yaml`].filter(Boolean).join(" · ");
    }

    function showWork() {
      const work = recording.get(),
        { source, at } = work,
        plates = source.plates || [],
        plate = recording.figure();
      byId("record-summary").textContent = summary(work);
      byId("record-undo").disabled = !recording.canUndo();
      byId("record-redo").disabled = !recording.canRedo();
      byId("record-hand").hidden = !plate;
      byId("record-figure-head").textContent = plate ? `Figure ${at + 1} of ${plates.length}: ${plate.id}` : "No figure yet";
      byId("record-plate-image-alt").parentNode.hidden = !(plate && plate.image);
      byId("record-again").disabled = !plate;
      byId("record-earlier").disabled = at <= 0;
      byId("record-later").disabled = at >= plates.length - 1;
      const choice = byId("record-page-choice");
      if (choice.options.length !== work.pages.length || [...choice.options].some((option, i) => !option.textContent.endsWith(work.pages[i].name)))
        choice.replaceChildren(...work.pages.map((page, i) => h("option", { value: i }, `${i + 1} of ${work.pages.length}: ${page.name}`)));
      choice.value = String(work.page);
      byId("record-page-before").disabled = work.page <= 0;
      byId("record-page-after").disabled = work.page >= work.pages.length - 1;
      byId("record-work").classList.toggle("record-pictureless", !work.pages.length);
      const missing = work.pages.filter((page) => !pages.isOpen(page)).map((page) => page.name);
      byId("record-missing").hidden = !missing.length;
      if (missing.length)
        byId("record-missing").replaceChildren(
          h("p", {}, `The browser does not keep pictures. To be opened again: ${missing.slice(0, 6).join(", ")}${missing.length > 6 ? ` and ${missing.length - 6} more` : ""}.`),
          h("button", { type: "button", onclick: session.openAgain }, "Open them again"));
    }

    recording.subscribe((work, before) => {
      showWork();
      if (work.page !== before.page || work.pages !== before.pages) showPage();
      else view.draw();
    });

    // ---- files out

    /** Whether the file that was opened or saved last says all that stands here now. */
    function showSaved() {
      const work = recording.get(),
        { file } = work;
      byId("record-saved").textContent = !file ? "" : !saving.isSaved(work) ? `Changed since ${file.name} was ${savedAs ? "saved" : "opened"}.` : savedAs || `As in ${file.name}.`;
    }

    function draft() {
      const { name } = recording.get();
      InPeriod.download(`${name || "source"}-unfinished.yaml`, "application/yaml", saving.textOf(recording.get()));
    }

    const session = InPeriod.recordSession.session({ recording, draft, shown: () => ((savedAs = ""), showWork(), showPage()), check: () => complaints.check() });
    const { notice } = session;

    async function save(where, over) {
      if (!form.finish()) return undefined;
      const found = complaints.check(),
        errors = found.filter((each) => each.severity === "error");
      const work = recording.get();
      if (!work.name) return notice("Give the source a title, or an id of small letters: its file is called by it.", [["Good", () => byId("record-name").focus()]]);
      if (errors.length)
        return notice(`Not saved yet: ${counted(errors.length, "thing")} to put right first. ${errors[0].message}`, [["Show me", complaints.next], ["Save as unfinished", draft], ["Later"]]);
      if (!where && !session.folder && saving.canPick())
        return notice("Where is it to go?", [["Download it", () => save("download")], ["Into the catalogue’s folder", () => save("folder")], ["Not now"]]);
      const text = saving.textOf(work);
      try {
        if (where === "download" || (!where && !session.folder)) return saved(work, text, await saving.download(work, text));
        session.folder = session.folder || (await root.showDirectoryPicker({ id: "inperiod-catalogue", mode: "readwrite" }));
        if (!(await saving.mayWrite(session.folder))) throw new DOMException("", "NotAllowedError");
        const done = await saving.intoFolder(session.folder, work, text, over);
        if (!("inTheWay" in done)) return saved(work, text, done);
        return notice(`There is another ${work.name}.yaml in that folder, and it is not the one you opened. Nothing was written.`, [
          ["Give this one another id", () => byId("record-name").focus()],
          ["Write over it", () => save("folder", true)],
          ["Leave it"],
        ]);
      } catch (slip) {
        session.folder = null;
        if (slip.name === "AbortError") return undefined;
        return notice("The browser would not write there. The file can be downloaded in place of that.", [["Download it", () => save("download")], ["Not now"]]);
      }
    }

    function saved(work, text, { file, pictures, absent }) {
      recording.change(null, (old) => saving.markSaved(old, work.name, text));
      const words = `Saved: ${file}${pictures ? ` with ${counted(pictures, "picture")}` : ""}, ${clock(new Date())}.`;
      savedAs = words;
      showSaved();
      announce(words);
      if (absent.length) notice(`${words} Not with it, because not open: ${absent.join(", ")}.`, [["Good"]]);
    }

    // ---- keys and buttons

    const undo = (way) => announce(recording[way]() ? (way === "undo" ? "Undone." : "Done again.") : "Nothing more.");
    const KEYS = {
      "C z": () => undo("undo"), "CS z": () => undo("redo"), "C y": () => undo("redo"), "C s": () => save(), "C Enter": () => next(false), "CS Enter": () => next(true),
      " F2": () => byId("record-view").focus(), " F4": () => form.line.focus(), " F8": () => complaints.next(),
      " F9": () => ((byId("record-source").open = true), byId("record-source-title").focus()),
      " PageDown": () => turn(1), " PageUp": () => turn(-1),
      "S PageDown": () => step(1), "S PageUp": () => step(-1),
    };
    const step = (by) => {
      const { at, source } = recording.get();
      if ((source.plates || [])[at + by]) pick(at + by);
    };
    document.addEventListener("keydown", (event) => {
      if (byId("record-work").hidden || byId("record-work").inert || event.isComposing || event.altKey) return;
      const mark_ = `${event.ctrlKey || event.metaKey ? "C" : ""}${event.shiftKey ? "S" : ""} ${event.key.length === 1 ? event.key.toLowerCase() : event.key}`;
      const act = KEYS[mark_];
      // What is being typed in the line of features is not part of the record yet: the box's own undo sees to it.
      if (!act || (/ [zy]$/.test(mark_) && event.target.matches("[role=combobox]") && event.target.value && event.target.id === "record-line")) return;
      event.preventDefault();
      act();
    });
    on("record-undo", () => undo("undo"));
    on("record-redo", () => undo("redo"));
    on("record-save", () => save());
    on("record-leave", session.leave);
    on("record-next", () => next(false));
    on("record-again", () => next(true));
    on("record-garment-more", anotherGarment);
    on("record-earlier", () => move(-1));
    on("record-later", () => move(1));
    on("record-drop-figure", drop);
    on("record-page-before", () => turn(-1));
    on("record-page-after", () => turn(1));
    on("record-smaller", () => view.zoomBy(1 / 1.5));
    on("record-larger", () => view.zoomBy(1.5));
    on("record-open-folder", session.openFolder);
    on("record-open-pages", session.openPages);
    on("record-more-pages", session.openFolder);
    on("record-open-file", session.openFile);
    on("record-bare", session.bare);
    byId("record-page-choice").addEventListener("change", () => recording.look(Number(byId("record-page-choice").value), recording.get().at));
    session.first();
  }

  if (typeof document !== "undefined") document.addEventListener("DOMContentLoaded", start);
})(globalThis);
