// One source at a time: begun, gone on with, left; kept with every change; its files let in. And what is said at the top.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod ||= {});

  /**
   * `with_`: {recording, shown() (a work has come), draft() (what there is, as a file), check()}. Gives {notice(words, choices), told(words, bad),
   * leave(), openFolder(), openAgain(), openPages(), openFile(), bare(), folder (the catalogue's, where she chose one), first()}.
   */
  function session({ recording, shown, draft, check }) {
    const { h, announce, counted, readAddress } = InPeriod,
      { recordKeep: keep, recordPages: pages, recordSave: saving } = InPeriod;
    const byId = (id) => document.getElementById(id);
    const clock = (moment) => new Date(moment).toLocaleTimeString("en-GB", { hour: "2-digit", minute: "2-digit" });
    let claim = null,
      mine = false,
      revision = 0,
      unkept = false,
      failed = false;

    // ---- what is said

    let cameFrom = null;

    /** Says something that wants an answer; Escape gives the answer that does nothing, where there is one. */
    function notice(words, choices = []) {
      const box = byId("record-notice"),
        list = Array.isArray(words) && words.length > 1;
      if (!box.contains(document.activeElement)) cameFrom = document.activeElement;
      const answer = (act) => {
        settled();
        if (cameFrom && cameFrom.isConnected) cameFrom.focus();
        if (act) act();
      };
      box.replaceChildren(
        list ? h("ul", {}, ...words.map((each) => h("li", {}, each))) : h("p", {}, words),
        h("p", { class: "own-tools" }, ...choices.map(([label, act]) => h("button", { type: "button", onclick: () => answer(act) }, label))),
      );
      box.onkeydown = (event) => void (event.key === "Escape" && choices.some(([, act]) => !act) && answer());
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
        const before = failed;
        unkept = failed = Boolean(slip);
        if (!slip) return told(`Kept in this browser, ${clock(work.saved)}`);
        told(`Not kept: ${slip}.`, true);
        if (!before && byId("record-notice").hidden)
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
      byId("record").parentElement.scrollIntoView({ block: "start", behavior: "instant" });
      shown();
    }

    function begin(given) {
      const by = InPeriod.recall("inperiod-recorded-by") || "";
      const work = { id: newId(), by, ...given };
      revision = 0;
      self.folder = null;
      open(InPeriod.recordState.workOf(work));
      take(work, true);
      told("Kept in this browser as you go");
      byId(byId("record-source").open ? "record-source-title" : "record-line").focus();
    }

    async function goOn(work) {
      if (keep.tooNew(work))
        return notice("This was kept by a newer version of this page, which alone can go on with it. It is left as it is.", [["Good"]]);
      revision = work.revision || 0;
      self.folder = null;
      open(work);
      take(work, false);
      told(work.saved ? `Kept in this browser, ${clock(work.saved)}` : "");
      return undefined;
    }

    async function leave(sure) {
      if (failed && sure !== true)
        return notice("What stands here is not kept in this browser, and would be lost.", [["Save it as a file", draft], ["Leave it all the same", () => leave(true)], ["Stay"]]);
      failed = unkept = false;
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
      return undefined;
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
      if (working && sheets.length && !pictures.length) return notice("To open another source file, leave this one first; it is kept.", [["Good"]]);
      if (!pictures.length) return notice(files.length ? "There is no picture among these that a browser can show: PNG, JPEG, WebP, GIF or AVIF." : "There is nothing in it.", [["Good"]]);
      if (working) return addPages(pictures);
      pages.forget();
      return begin({ pages: pages.take(pictures, []) });
    }

    /** Shows the page of the figure in hand, where it is among those that are open. */
    function turnToFigure() {
      const work = recording.get(),
        of = InPeriod.recordFigures.pageOf(work, recording.figure());
      if (of >= 0) recording.look(of, work.at);
    }

    function addPages(pictures) {
      const work = recording.get(),
        list = pages.take(pictures, work.pages);
      if (list !== work.pages) recording.change(null, (old) => ({ ...old, pages: list }));
      announce(`${counted(pictures.length, "page")} opened.`);
      turnToFigure();
      shown();
    }

    async function openSheet(file, pictures) {
      try {
        const opened = await saving.open(file);
        pages.forget();
        const inside = opened.pictures.length ? opened.pictures : pictures || [];
        begin({ ...opened.work, pages: pages.take(inside, []), at: (opened.work.source.plates || []).length - 1 });
        turnToFigure();
        check();
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

    // The attribute is in every browser and in no standard.
    byId("record-choose-folder").webkitdirectory = true;
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

    recording.subscribe((work, before) => {
      if (work.by !== before.by) InPeriod.remember("inperiod-recorded-by", work.by);
      if (work.id && work.id === before.id) keepNow();
    });
    root.addEventListener("beforeunload", (event) => (unkept || writer.busy()) && recording.get().id && event.preventDefault());

    const self = {
      folder: null,
      notice,
      told,
      leave,
      openFolder,
      openAgain,
      openPages: () => byId("record-choose-pages").click(),
      openFile: () => byId("record-choose-file").click(),
      bare: () => begin({}),
      /** What the address asks for, or what was begun before. */
      async first() {
        const asked = new Map(readAddress(location.hash)).get("id"),
          work = asked && (await keep.read(asked));
        if (work) return goOn(work);
        if (asked) notice("There is nothing of that name kept in this browser.", [["Good"]]);
        return showBegun();
      },
    };
    return self;
  }

  InPeriod.recordSession = { session };
  if (typeof module !== "undefined") module.exports = InPeriod.recordSession;
})(globalThis);
