// The form: what is known of the source and of the figure in hand, each field bound to its place in the record.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod ||= {});
  const WHERE = { plate: (work) => ["source", "plates", work.at] };

  /** The path in the work that a field stands for: "plate.locator.page" is of the plate in hand. */
  function pathOf(words, work) {
    const [first, ...rest] = words.split(".");
    return WHERE[first] ? [...WHERE[first](work), ...rest] : [first, ...rest];
  }

  /** The date of a source as typed: {edtf, words, error}; edtf is "" where the words say that there is no date. */
  function readDate(text, seasons) {
    if (!text.trim()) return { edtf: "", words: "", error: "" };
    try {
      const { edtf, words, note } = InPeriod.dating.readPhrase(text, seasons);
      return { edtf, words: `${InPeriod.raised(words)}: ${edtf} in the record.${note ? ` ${InPeriod.raised(note)}.` : ""}`, error: "" };
    } catch (slip) {
      if (slip instanceof InPeriod.dating.Undated) return { edtf: "", words: "Undated. Say in the note on the date what is known.", error: "" };
      return { edtf: text, words: "", error: `${InPeriod.raised(slip.message)}.` };
    }
  }

  /**
   * Binds the form to the record. `with_`: {recording, vocabulary, seasons, taken (ids of other sources), today(), rightsIn(address) →
   * words, next(), detail(index) (the feature that is being changed, or null), panelBox}. Gives {edit(what, change), altOf, setPlate(path, value),
   * finish(), line}.
   */
  function form(with_) {
    const { recording, vocabulary, seasons, taken, today, next } = with_;
    const { h, announce } = InPeriod,
      { at: valueAt, put, putInOrder, inOrder } = InPeriod.recordState,
      { lineOf, facetOf, asTable, readLine, said, garmentsFor, withFeature } = InPeriod.recordTerms,
      figures = InPeriod.recordFigures;
    const byId = (id) => document.getElementById(id);
    const altOf = (plate) => figures.inWords(plate, vocabulary);
    let editing = null,
      explicit = false,
      lastLine = "";

    // ---- changes

    /** Changes the plate in hand. */
    const edit = (what, change) =>
      recording.change(what, (work) => (recording.figure() ? figures.withChanged(work, work.at, change, altOf) : work));

    /** One detail of a feature: where it sits, how wide, how it was read. A term alone stays a word. */
    function setDetail(plate, index, name, value) {
      const full = inOrder(put(asTable(plate.features[index]), [name], name === "reading" && value === "seen" ? undefined : value), "features");
      const short = Object.keys(full).length === 1 && full.term;
      return put(plate, ["features", index], short || full);
    }

    function setPlate(path, value) {
      edit(`plate ${recording.get().at} ${path.join(".")}`, (plate) => {
        if (path[0] === "features" && path.length === 3) return setDetail(plate, path[1], path[2], value);
        if (valueAt(plate, path) === value || (value === "" && valueAt(plate, path) === undefined)) return plate;
        const after = putInOrder(plate, path, value);
        if (path[0] !== "price") return after;
        if (!after.price || !after.price.amount) return path[1] === "amount" && after.price && !after.price.note ? put(after, ["price"], undefined) : after;
        const currency = after.price.currency || (path[1] === "amount" && !(plate.price || {}).amount && lastCurrency());
        return currency ? putInOrder(after, ["price", "currency"], currency) : after;
      });
    }

    function lastCurrency() {
      const { source, at } = recording.get();
      const priced = (source.plates || []).filter((plate, i) => i !== at && plate.price && plate.price.currency);
      return priced.length ? priced[priced.length - 1].price.currency : "";
    }

    function setField(words, value) {
      const work = recording.get();
      if (words.startsWith("plate.")) return setPlate(words.split(".").slice(1), value);
      if (words === "source.date") return setDate(value);
      if (words === "name") return recording.change("name", (old) => ({ ...figures.renamed(old, value.trim()), named: value.trim() !== "" }));
      recording.change(words, (old) => {
        let made = putInOrder(old, pathOf(words, work), value);
        if (words === "source.examined.pages" && value && made.by && !made.source.examined.by)
          made = putInOrder(putInOrder(made, ["source", "examined", "by"], made.by), ["source", "examined", "on"], today());
        return words === "source.title" ? figures.withName(made, taken) : made;
      });
    }

    function setDate(text) {
      const { edtf } = readDate(text, seasons);
      recording.change("source.date", (old) => figures.withName(put(put(old, ["said", "date"], text), ["source", "date"], edtf), taken));
    }

    // ---- features

    const usesOf = (() => {
      let held = null,
        uses = new Map();
      return () => {
        const plates = recording.get().source.plates || [];
        if (plates !== held) {
          held = plates;
          uses = new Map();
          const count = (key) => uses.set(key, (uses.get(key) || 0) + 1);
          for (const plate of plates) {
            count(plate.garment);
            for (const feature of plate.features || []) count(asTable(feature).term);
          }
        }
        return uses;
      };
    })();

    function takeFeature(feature) {
      if (!recording.figure()) return;
      const index = editing;
      edit("", (plate) => {
        return { ...plate, features: withFeature(plate.features || [], feature, index, vocabulary) };
      });
      editing = null;
      const { name, facet, more } = said(feature, vocabulary);
      announce(`${facet}: ${name}${more ? `, ${more}` : ""}.`);
      panel.follow();
    }

    function dropFeature(index) {
      edit("", (plate) => put(plate, ["features"], plate.features.length > 1 ? plate.features.filter((_, i) => i !== index) : undefined));
      editing = null;
    }

    /** A feature's words put back into the line, to be changed there. */
    function reopen(index) {
      editing = index;
      line.value = lineOf(recording.figure().features[index], vocabulary);
      line.focus();
      line.dispatchEvent(new Event("input"));
      featureBox.close();
      drawChips();
    }

    function stopEditing() {
      editing = null;
      line.value = "";
      featureBox.close();
      drawChips();
      return true;
    }

    /** What is still in the line is taken as a feature; false where it means none that is sure. */
    function finish() {
      const plate = recording.figure();
      if (!plate || !line.value.trim()) return true;
      if (editing !== null && line.value === lineOf(plate.features[editing], vocabulary)) return stopEditing();
      const [top] = findFeatures(line.value);
      if (!top || !top.option.sure) {
        line.focus();
        announce("What stands in the line of features names none yet.");
        return false;
      }
      line.value = "";
      featureBox.close();
      takeFeature(top.option.feature);
      return true;
    }

    const line = byId("record-line");
    const panel = InPeriod.recordPanel.panel(with_.panelBox, vocabulary, {
      plate: recording.figure,
      take: (feature) => {
        takeFeature(feature);
        line.focus();
      },
      back: () => line.focus(),
    });

    function findFeatures(query) {
      const plate = recording.figure();
      lastLine = query;
      if (!plate || !query.trim()) return [];
      const held = (plate.features || []).filter((_, i) => i !== editing);
      const found = readLine(query, vocabulary, { garment: plate.garment, held, uses: usesOf() });
      if (found.length) panel.show(found[0].facet.id, found[0].term && found[0].term.key);
      return found.slice(0, 40).map((option) => ({ option, by: option.by }));
    }

    const featureBox = InPeriod.combobox(line, byId("record-found"), {
      find: findFeatures,
      show: ({ option, by }) => {
        const { name, facet, more } = said(option.feature, vocabulary);
        return h("li", {}, h("span", { class: "found-label" }, name), more && " ", more && h("span", { class: "record-more" }, more), " ",
          h("span", { class: "found-facet" }, facet), by && " ", by && h("span", { class: "found-by" }, by));
      },
      take: (option) => {
        if (option.sure || explicit) return takeFeature(option.feature);
        line.value = lastLine;
        line.dispatchEvent(new Event("input"));
        announce(`${option.facet.label}: go on typing, or choose with the arrow keys.`);
      },
    });

    byId("record-found").addEventListener("mousedown", () => (explicit = true));
    line.addEventListener("keydown", (event) => {
      explicit = Boolean(line.getAttribute("aria-activedescendant"));
      const empty = line.value === "",
        plain = !event.ctrlKey && !event.metaKey && !event.altKey && !event.shiftKey;
      const took = () => {
        event.preventDefault();
        event.stopImmediatePropagation();
      };
      const features = (recording.figure() || {}).features || [];
      if (event.isComposing) return;
      if (event.key === "Tab" && !empty) {
        const held = editing === null ? "" : lineOf(features[editing], vocabulary),
          [top] = line.value === held ? [] : findFeatures(line.value);
        if (top && top.option.sure) finish();
      } else if (event.key === "Escape" && editing !== null) stopEditing();
      else if (!empty || !plain) return;
      else if (event.key === "Enter") (took(), next(false));
      else if (event.key === "=") (took(), repeat());
      else if (event.key === "Backspace" && features.length) (took(), editing === null ? reopen(features.length - 1) : dropFeature(editing));
      else if (event.key === "ArrowDown") (took(), panel.focus());
      else if (event.key === "ArrowUp" && features.length) (took(), chips.lastElementChild.firstElementChild.focus());
    }, true);

    function repeat() {
      const { source, at } = recording.get(),
        last = (source.plates || [])[at - 1];
      if (!last || !last.features) return announce("There is no figure before this one.");
      edit("", (plate) => ({ ...plate, features: figures.repeated(plate, last) }));
      announce(`As the figure before: ${InPeriod.counted(last.features.length, "feature")}.`);
      panel.follow();
    }

    byId("record-detail").addEventListener("keydown", (event) => {
      if (event.key !== "Escape" && (event.key !== "Enter" || event.ctrlKey || event.target.matches("textarea"))) return;
      event.preventDefault();
      stopEditing();
      line.focus();
    });

    const chips = byId("record-chips");
    function drawChips() {
      const plate = recording.figure() || {};
      chips.replaceChildren(...(plate.features || []).map((feature, index) => {
        const { name, facet, more } = said(feature, vocabulary),
          called = `${facet}: ${name}`;
        return h("li", { class: index === editing ? "record-chip record-chip-open" : "record-chip", "data-path": `plate.features.${index}` },
          h("button", { type: "button", class: "record-chip-name", tabindex: -1, title: "Change it", onclick: () => reopen(index) },
            h("i", {}, facet), " ", name, more && h("small", {}, more)),
          h("button", { type: "button", class: "record-chip-off", tabindex: -1, "aria-label": `Take away ${called}`, onclick: () => (dropFeature(index), line.focus()) }, "×"));
      }));
      chips.hidden = !(plate.features || []).length;
      with_.detail(editing);
    }
    chips.addEventListener("keydown", (event) => {
      const items = [...chips.children],
        index = items.findIndex((item) => item.contains(event.target));
      const go = { ArrowLeft: index - 1, ArrowUp: index - 1, ArrowRight: index + 1, Home: 0, End: items.length - 1 }[event.key];
      if (go !== undefined) (items[Math.max(0, Math.min(go, items.length - 1))].firstElementChild.focus(), event.preventDefault());
      else if (event.key === "Delete" || event.key === "Backspace") (event.preventDefault(), dropFeature(index), line.focus());
      else if (event.key === "Escape" || event.key === "ArrowDown") (event.preventDefault(), line.focus());
    });

    // ---- garment

    const garment = byId("record-garment");
    const takeGarment = (option) => {
      setPlate(["garment"], option.id);
      drawGarment(true);
    };
    const findGarments = (query) => garmentsFor(query, vocabulary, usesOf());
    InPeriod.combobox(garment, byId("record-garments"), {
      find: findGarments,
      show: ({ option, by }) => h("li", {}, h("span", { class: "found-label" }, option.label), by && " ", by && h("span", { class: "found-by" }, by)),
      take: takeGarment,
      noun: "garment",
    });
    function drawGarment(always) {
      const plate = recording.figure();
      if (!always && document.activeElement === garment) return;
      const term = plate && vocabulary.garments.get(plate.garment);
      garment.value = term ? term.label : (plate && plate.garment) || "";
      if (document.activeElement === garment) garment.select();
    }
    garment.addEventListener("focus", () => garment.select());
    garment.addEventListener("blur", () => drawGarment(true));
    garment.addEventListener("keydown", (event) => {
      if (event.key !== "Tab" || byId("record-garments").hidden || !garment.value.trim()) return;
      const [top] = findGarments(garment.value);
      if (top) takeGarment(top.option);
    }, true);

    // ---- every other field

    const controls = [...document.querySelectorAll("#record-form :is(input, select, textarea)[data-path]")].filter((each) => each !== garment);
    for (const control of controls)
      control.addEventListener(control.tagName === "SELECT" ? "change" : "input", () => {
        if (control.dataset.path === "plate.price.currency") control.value = control.value.toUpperCase();
        setField(control.dataset.path, control.value);
      });
    byId("record-name").addEventListener("change", () => setField("name", figures.slug(byId("record-name").value, 80)));

    function shownValue(words, work) {
      if (words === "source.date") {
        const typed = work.said.date;
        return typed !== undefined && readDate(typed, seasons).edtf === (work.source.date || "") ? typed : work.source.date || "";
      }
      const value = valueAt(work, pathOf(words, work));
      return value === undefined || value === null ? "" : String(value);
    }

    function drawFields(work) {
      for (const control of controls) {
        const value = shownValue(control.dataset.path, work);
        if (control.value === value) continue;
        if (control.tagName === "SELECT" && value && ![...control.options].some((option) => option.value === value)) control.append(h("option", { value }, value));
        control.value = value;
      }
      const caption = byId("record-caption");
      caption.parentNode.dataset.text = caption.value + " ";
      const typed = byId("record-date").value,
        reading = readDate(typed, seasons);
      const words = byId("record-reading");
      if (words.textContent !== (reading.error || reading.words)) words.textContent = reading.error || reading.words;
      words.classList.toggle("record-bad", Boolean(reading.error));
      byId("record-rights-words").textContent = with_.rightsIn(work.source.rights || "");
      const again = !work.file && taken.has(work.name);
      byId("record-name-words").textContent = again ? "This catalogue has a source of that id already." : "";
      byId("record-name").placeholder = figures.sourceId(work.source, taken) || "title-1912";
    }

    let wasPlate = null,
      wasAt = null;
    function draw(work) {
      const plate = recording.figure();
      if (work.at !== wasAt) {
        editing = null;
        line.value = "";
        featureBox.close();
      }
      drawFields(work);
      if (plate !== wasPlate) {
        if (editing !== null && !((plate || {}).features || [])[editing]) stopEditing();
        if (editing !== null && document.activeElement !== line && plate && (plate.features || [])[editing]) line.value = lineOf(plate.features[editing], vocabulary);
        drawChips();
        drawGarment(false);
      }
      if (plate && (work.at !== wasAt || !wasPlate || plate.garment !== wasPlate.garment)) panel.follow();
      wasPlate = plate;
      wasAt = work.at;
    }
    recording.subscribe(draw);

    return { edit, altOf, setPlate, finish, line };
  }

  InPeriod.recordForm = { form, pathOf, readDate };
  if (typeof module !== "undefined") module.exports = InPeriod.recordForm;
})(globalThis);
