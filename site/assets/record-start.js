// The page put together: begin or go on, keep every change, turn pages, the keys, save.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod = root.InPeriod || {});

  function start() {
    const { h, announce, counted, later, readAddress } = InPeriod,
      { recording, recordKeep: keep, recordPages: pages, recordFigures: figures, recordSave: saving } = InPeriod;
    const given = InPeriod.data.recording,
      { settings } = given,
      shape = InPeriod.recordShape.sourceShape(given.shapes),
      feature = shape.fields.get("plates").item.fields.get("features").item.table,
      vocabulary = InPeriod.recordTerms.vocabularyOf(given.vocabulary, feature.fields.get("at").words);
    const byId = (id) => document.getElementById(id);
    const on = (id, act) => byId(id).addEventListener("click", act);
    const today = () => new Date().toLocaleDateString("sv");
    const clock = (moment) => new Date(moment).toLocaleTimeString("en-GB", { hour: "2-digit", minute: "2-digit" });
    let claim = null,
      mine = false,
      revision = 0,
      unkept = false,
      folder = null;

    // ---- what is said

    function notice(words, choices = []) {
      const box = byId("record-notice");
      const list = Array.isArray(words) && words.length > 1;
      box.replaceChildren(
        list ? h("ul", {}, ...words.map((each) => h("li", {}, each))) : h("p", {}, words),
        h("p", { class: "own-tools" }, ...choices.map(([label, act]) => h("button", { type: "button", onclick: () => (settled(), act && act()) }, label))),
      );
      box.hidden = false;
      const first = box.querySelector("button");
      if (first) first.focus();
    }
    const settled = () => {
      byId("record-notice").hidden = true;
    };

    function told(words, bad) {
      byId("record-kept").textContent = words;
      byId("record-kept").classList.toggle("record-bad", Boolean(bad));
    }

    // ---- kept in the browser

    const writer = keep.writer(
      (slip, work) => {
        unkept = Boolean(slip);
        if (!slip) return told(`Kept in this browser, ${clock(work.saved)}`);
        told(`Not kept: ${slip}.`, true);
        if (byId("record-notice").hidden)
          notice(`Not kept: ${slip}. Nothing is lost while this page stays open. Save what there is as a file, and open that file later.`, [["Save it as a file", draft], ["Later"]]);
        return undefined;
      },
      (newer) => {
        mine = false;
        lock(`This source was changed in another tab, at ${clock(newer.saved)}.`);
      },
    );

    function keepNow() {
      if (!mine || !recording.get().id) return;
      revision += 1;
      unkept = true;
      writer.write({ ...InPeriod.recordState.toKeep(recording.get()), revision, saved: new Date().toISOString() });
    }

    /** Only one tab writes a source: the others show it and wait. */
    function lock(words) {
      byId("record-work").inert = true;
      told("Not kept from this tab", true);
      notice(words, [["Go on here", () => claim.take()], ["Leave it", leave]]);
    }

    function take(work, fresh) {
      if (claim) claim.leave();
      mine = false;
      const { id } = work;
      let first = true;
      claim = keep.claim(id, {
        async granted() {
          const again = first && fresh ? null : await keep.read(id);
          first = false;
          if (again && again.id === id) {
            revision = again.revision || 0;
            open(again);
          }
          mine = true;
          byId("record-work").inert = false;
          settled();
          if (fresh && !again) keepNow();
          fresh = false;
        },
        refused: () => lock("This source is open in another tab. Go on there; or go on here, and the other tab steps back."),
        lost() {
          mine = false;
          lock("This source was taken over in another tab.");
          claim.wait();
        },
      });
    }

    // ---- begin, go on, leave

    const newId = () => Date.now().toString(36) + Math.random().toString(36).slice(2, 7);

    function open(work) {
      recording.open(work);
      byId("record-start").hidden = true;
      byId("record-lead").hidden = true;
      byId("record-work").hidden = false;
      document.documentElement.classList.add("record-working");
      if (location.hash !== `#id=${work.id}`) history.replaceState(null, "", `#id=${work.id}`);
      byId("record-source").open = !(work.source && (work.source.plates || []).length);
      showWork();
      showPage();
    }

    function begin(given) {
      const by = InPeriod.recall("inperiod-recorded-by") || "";
      const work = { id: newId(), by, ...given };
      revision = 0;
      folder = null;
      open(InPeriod.recordState.workOf(work));
      take(work, true);
      told("Kept in this browser as you go");
      byId(byId("record-source").open ? "record-source-title" : "record-line").focus();
    }

    async function goOn(work) {
      if (keep.tooNew(work))
        return notice("This was kept by a newer version of this page, which alone can go on with it. It is left as it is.", [["Good"]]);
      revision = work.revision || 0;
      folder = null;
      open(work);
      take(work, false);
      told(work.saved ? `Kept in this browser, ${clock(work.saved)}` : "");
      return undefined;
    }

    async function leave() {
      if (claim) claim.leave();
      claim = null;
      mine = false;
      history.replaceState(null, "", location.pathname + location.search);
      pages.forget();
      recording.open({});
      settled();
      byId("record-work").hidden = true;
      byId("record-work").inert = false;
      byId("record-start").hidden = false;
      byId("record-lead").hidden = false;
      document.documentElement.classList.remove("record-working");
      await showBegun();
      byId("record-open-folder").focus();
    }

    async function showBegun() {
      const works = await keep.all();
      byId("record-begun").hidden = !works.length;
      byId("record-begun-list").replaceChildren(...works.map((work) => {
        const source = work.source || {},
          title = source.title || work.name || "Without a title yet";
        return h("li", {},
          h("button", { type: "button", class: "record-begun-name", onclick: () => goOn(work) }, title),
          h("span", { class: "record-small" }, `${counted((source.plates || []).length, "figure")}, kept ${new Date(work.saved).toLocaleDateString("en-GB")} ${clock(work.saved)}`),
          h("button", { type: "button", "aria-label": `Delete: ${title}`, onclick: () =>
            notice(`Delete “${title}” from this browser for good? Files that were saved stay.`, [["Delete it", async () => { await keep.remove(work.id); showBegun(); }], ["Leave it"]]) }, "Delete"));
      }));
    }

    // ---- files in

    async function receive(files) {
      const sheets = files.filter((each) => pages.SHEET.test(each.name) || /\.zip$/i.test(each.name)),
        working = !byId("record-work").hidden;
      const pictures = files.filter((each) => pages.isPicture(each.name));
      if (!working && sheets.length === 1) return openSheet(sheets[0].getFile ? await sheets[0].getFile() : sheets[0], pictures);
      if (!pictures.length) return notice(files.length ? "There is no picture among these that a browser can show: PNG, JPEG, WebP, GIF or AVIF." : "There is nothing in it.", [["Good"]]);
      if (working) return addPages(pictures);
      pages.forget();
      return begin({ pages: pages.take(pictures, []) });
    }

    function addPages(pictures) {
      const work = recording.get(),
        list = pages.take(pictures, work.pages);
      if (list !== work.pages) recording.change(null, (old) => ({ ...old, pages: list }));
      announce(`${counted(pictures.length, "page")} opened.`);
      showWork();
      showPage();
    }

    async function openSheet(file, pictures) {
      try {
        const opened = await saving.open(file);
        pages.forget();
        const inside = opened.pictures.length ? opened.pictures : pictures || [];
        begin({ ...opened.work, pages: pages.take(inside, []), at: (opened.work.source.plates || []).length - 1 });
        complaints.check();
      } catch (slip) {
        const sentences = slip instanceof saving.Unopened ? slip.sentences : [`${file.name} could not be read.`];
        notice([`${file.name} is left as it is; it cannot be opened yet.`, ...sentences.slice(0, 12)], [["Good"]]);
      }
    }

    async function openFolder() {
      if (!saving.canPick()) return byId("record-choose-folder").click();
      try {
        const handle = await root.showDirectoryPicker({ id: "inperiod-pages" });
        const files = await pages.filesIn(handle);
        await receive(files.filter((each) => pages.isPicture(each.name)));
        if (recording.get().id) keep.rememberFolder(recording.get().id, handle);
      } catch (slip) {
        if (slip.name !== "AbortError") byId("record-choose-folder").click();
      }
      return undefined;
    }

    async function openAgain() {
      const handle = await keep.folder(recording.get().id);
      try {
        if (handle && (!handle.requestPermission || (await handle.requestPermission({ mode: "read" })) === "granted"))
          return addPages((await pages.filesIn(handle)).filter((each) => recording.get().pages.some((page) => page.name === each.name)));
      } catch (gone) {
        // The folder was moved or deleted: she shows where it is.
      }
      return openFolder();
    }

    for (const id of ["record-choose-folder", "record-choose-pages", "record-choose-file"]) {
      byId(id).addEventListener("change", () => {
        const chosen = [...byId(id).files];
        byId(id).value = "";
        receive(id === "record-choose-folder" ? chosen.filter((each) => pages.isPicture(each.name)) : chosen);
      });
    }
    document.addEventListener("dragover", (event) => {
      if (![...event.dataTransfer.types].includes("Files")) return;
      event.preventDefault();
      byId("record-drop").classList.add("record-over");
    });
    document.addEventListener("dragleave", (event) => event.relatedTarget || byId("record-drop").classList.remove("record-over"));
    document.addEventListener("drop", async (event) => {
      if (![...event.dataTransfer.types].includes("Files")) return;
      event.preventDefault();
      byId("record-drop").classList.remove("record-over");
      receive(await pages.dropped(event.dataTransfer));
    });

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

    async function mark(box, what) {
      const work = recording.get(),
        page = work.pages[work.page],
        facts = pages.factsOf(page);
      if (!facts) return;
      const region = figures.region(box, facts.width, facts.height),
        name = figures.imageName(work, page);
      const plate = recording.figure(),
        elsewhere = plate && plate.image && figures.pageOf(work, plate) !== work.page;
      if (!plate || elsewhere) return void recording.change(what, (old) => figures.withPlate(old, figures.nextPlate(old, region, today(), form.altOf)));
      form_edit(what && `${what} ${work.at}`, (held) => {
        const image = { file: name, ...(region ? { region } : {}), alt: (held.image && held.image.alt) || form.altOf(held) };
        const { alt, rights, ...rest } = { ...held.image, ...image };
        if (!region) delete rest.region;
        return { ...held, image: { ...rest, alt, ...(rights ? { rights } : {}) } };
      });
    }

    const view = InPeriod.recordPageImage.pageView(
      { view: byId("record-view"), sheet: byId("record-sheet"), canvas: byId("record-canvas"), overlay: byId("record-overlay"), words: byId("record-view-words"), draw: byId("record-finger") },
      {
        page: () => recording.get().pages[recording.get().page] || null,
        boxes,
        mark,
        pick: (index) => pick(index),
        done: () => form.line.focus(),
        without: () => form_edit("", (plate) => InPeriod.recordState.put(plate, ["image"], undefined)),
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
    });
    const form_edit = form.edit;

    function rightsIn(address) {
      const option = [...byId("record-rights").options].find((each) => each.value === address);
      return option ? option.textContent : "";
    }

    async function next(again) {
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
        return { ...InPeriod.recordState.put(old, ["source", "plates"], plates.length ? plates : undefined), at: Math.min(old.at, plates.length - 1) };
      });
      announce("Taken away. Undo brings it back.");
    }

    const strip = InPeriod.recordStrip.strip({ recording, pick });
    const rest = InPeriod.recordRest.rest({ recording, form, shape });
    const complaints = InPeriod.recordComplaints.complaints({
      recording,
      go: (path) => path[0] === "plates" && Number.isInteger(path[1]) && recording.get().source.plates[path[1]] && pick(path[1]),
      onFound: (found) => strip.complain(found),
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
          h("button", { type: "button", onclick: openAgain }, "Open them again"));
    }

    recording.subscribe((work, before) => {
      showWork();
      if (work.page !== before.page || work.pages !== before.pages) showPage();
      else view.draw();
      if (work.by !== before.by) InPeriod.remember("inperiod-recorded-by", work.by);
      if (work.id && work.id === before.id) keepNow();
    });

    // ---- files out

    const draft = () => {
      const { name } = recording.get();
      InPeriod.download(`${name || "source"}-unfinished.yaml`, "application/yaml", saving.textOf(recording.get()));
    };

    async function save(where, over) {
      const found = complaints.check(),
        errors = found.filter((each) => each.severity === "error");
      const work = recording.get();
      if (!work.name) return notice("Give the source a title, or an id of small letters: its file is called by it.", [["Good", () => byId("record-name").focus()]]);
      if (errors.length)
        return notice(`Not saved yet: ${counted(errors.length, "thing")} to put right first. ${errors[0].message}`, [["Show me", complaints.next], ["Save as unfinished", draft], ["Later"]]);
      if (!where && !folder && saving.canPick())
        return notice("Where is it to go?", [["Download it", () => save("download")], ["Into the catalogue’s folder", () => save("folder")], ["Not now"]]);
      const text = saving.textOf(work);
      try {
        if (where === "download" || (!where && !folder)) return saved(work, text, await saving.download(work, text));
        folder = folder || (await root.showDirectoryPicker({ id: "inperiod-catalogue", mode: "readwrite" }));
        if (!(await saving.mayWrite(folder))) throw new DOMException("", "NotAllowedError");
        const done = await saving.intoFolder(folder, work, text, over);
        if (!("inTheWay" in done)) return saved(work, text, done);
        return notice(`There is another ${work.name}.yaml in that folder, and it is not the one you opened. Nothing was written.`, [
          ["Give this one another id", () => byId("record-name").focus()],
          ["Write over it", () => save("folder", true)],
          ["Leave it"],
        ]);
      } catch (slip) {
        folder = null;
        if (slip.name === "AbortError") return undefined;
        return notice("The browser would not write there. The file can be downloaded in place of that.", [["Download it", () => save("download")], ["Not now"]]);
      }
    }

    function saved(work, text, { file, pictures, absent }) {
      recording.change(null, (old) => saving.markSaved(old, work.name, text));
      const words = `Saved: ${file}${pictures ? ` with ${counted(pictures, "picture")}` : ""}, ${clock(new Date())}.`;
      told(words);
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
    on("record-leave", leave);
    on("record-next", () => next(false));
    on("record-again", () => next(true));
    on("record-earlier", () => move(-1));
    on("record-later", () => move(1));
    on("record-drop-figure", drop);
    on("record-page-before", () => turn(-1));
    on("record-page-after", () => turn(1));
    on("record-smaller", () => view.zoomBy(1 / 1.5));
    on("record-larger", () => view.zoomBy(1.5));
    on("record-open-folder", openFolder);
    on("record-open-pages", () => byId("record-choose-pages").click());
    on("record-more-pages", openFolder);
    on("record-open-file", () => byId("record-choose-file").click());
    on("record-bare", () => begin({}));
    byId("record-page-choice").addEventListener("change", () => recording.look(Number(byId("record-page-choice").value), recording.get().at));
    root.addEventListener("beforeunload", (event) => (unkept || writer.busy()) && recording.get().id && event.preventDefault());

    const asked = new Map(readAddress(location.hash)).get("id");
    Promise.resolve(asked && keep.read(asked)).then((work) => {
      if (work) return goOn(work);
      if (asked) notice("There is nothing of that name kept in this browser.", [["Good"]]);
      return showBegun();
    });
    later(0, () => byId("record").classList.add("record-ready"))();
  }

  if (typeof document !== "undefined") document.addEventListener("DOMContentLoaded", start);
})(typeof window !== "undefined" ? window : globalThis);
