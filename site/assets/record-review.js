// A second pair of eyes: each figure beside its record, read again by somebody else, who confirms, corrects or disputes
// each reading. What they find is kept in the record under `confirmations`, with name and date.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod ||= {});
  const asTable = (feature) => (typeof feature === "string" ? { term: feature } : feature);

  /** A feature as a word: neckline/square, collar/none, sleeve/not visible. */
  function wordOf(feature) {
    const { term, facet, none } = asTable(feature);
    return term || `${facet}/${none ? "none" : "not visible"}`;
  }

  /** What is read again of a figure, in order: {word, feature}; the garment first, which is no feature. */
  function readingsOf(plate) {
    const garment = plate.garment ? [{ word: `garment/${plate.garment}`, feature: null }] : [];
    return [...garment, ...(plate.features || []).map((feature) => ({ word: wordOf(feature), feature }))];
  }

  /** What was found last of a reading: a word on it, on what replaced it, or on the whole figure; null where nothing was. */
  function lastWord(plate, word) {
    const about = (each) => !each.feature || (each.reading === "corrected" ? each.instead || each.feature : each.feature) === word;
    return (plate.confirmations || []).filter(about).pop() || null;
  }

  /** Whether everything in the figure was read again, and nothing is in dispute. */
  function isReadAgain(plate) {
    const words = readingsOf(plate).map(({ word }) => lastWord(plate, word));
    return words.length > 0 && words.every((each) => each && each.reading !== "disputed");
  }

  /** The figure with one more word of a second reader. */
  function withWord(plate, { by, on, reading, feature, instead, note }) {
    const word = Object.fromEntries(Object.entries({ by, on, reading, feature, instead, note }).filter(([, value]) => value));
    return { ...plate, confirmations: [...(plate.confirmations || []), word] };
  }

  /** The figure with a reading changed to `instead`, what stood beside it kept; without `instead` the reading is taken out. */
  function corrected(plate, word, instead) {
    if (word.startsWith("garment/")) return instead ? { ...plate, garment: instead.slice("garment/".length) } : plate;
    const features = (plate.features || []).flatMap((feature) => (wordOf(feature) === word ? (instead ? [replaced(feature, instead)] : []) : [feature]));
    if (features.length) return { ...plate, features };
    const { features: gone, ...rest } = plate;
    return rest;
  }

  function replaced(feature, instead) {
    const [facet, term] = instead.split("/");
    if (term === "none") return { facet, none: true };
    if (term === "not visible") return { facet, not_visible: true };
    if (typeof feature === "string") return instead;
    const { term: old, facet: family, none, not_visible: hidden, ...beside } = feature;
    return Object.keys(beside).length ? { term: instead, ...beside } : instead;
  }

  InPeriod.recordReview = { wordOf, readingsOf, lastWord, isReadAgain, withWord, corrected };

  // ---- the panel

  const STANDS = { confirmed: "confirmed", corrected: "corrected", disputed: "disputed" };

  /** Put the panel into the page. `vocabulary` as record-terms makes it. */
  function panel(vocabulary) {
    const { h, announce, recording, recordTerms: terms } = InPeriod;
    const byId = (id) => document.getElementById(id);
    const today = () => new Date().toLocaleDateString("sv");
    const desk = byId("record");
    const toggle = h("button", { type: "button", id: "record-review-open", "aria-pressed": "false", "aria-controls": "record-review", onclick: () => show(!on) }, "Read again");
    const reader = h("input", { id: "record-reader", type: "text", maxlength: "200", autocomplete: "off", oninput: () => recording.change(null, (work) => ({ ...work, reader: reader.value })) });
    const rows = h("ol", { class: "review-list" });
    const tally = h("p", { class: "record-small", role: "status" });
    const head = h("h2", { id: "record-review-head" });
    const earlier = h("ul", { class: "review-earlier" });
    const past = h("details", { class: "record-rest" }, h("summary", {}, "What was found before"), earlier);
    const box = h("section", { id: "record-review", class: "record-figure record-review", "aria-labelledby": "record-review-head", hidden: true },
      h("div", { class: "record-figure-bar" }, head,
        h("p", { class: "record-tools" },
          h("button", { type: "button", class: "record-first", onclick: () => onward() }, "Next figure ", h("kbd", { "aria-hidden": "true" }, "n")),
          h("button", { type: "button", onclick: () => all() }, "All as recorded ", h("kbd", { "aria-hidden": "true" }, "a")))),
      h("p", { class: "record-field record-half" }, h("label", { for: "record-reader" }, "Second reader: your name or initials"), reader),
      h("p", { class: "record-small review-own" }), tally, rows, past,
      h("p", { class: "record-small record-keys" }, key("y"), " the same, ", key("o"), " read otherwise, ", key("a"), " all as recorded, ", key("n"), " next figure, ", key("Esc"), " back. Each word is kept in the record with your name and the date."));
    let on = false, asked = -1;

    function key(words) {
      return h("kbd", { "aria-hidden": "true" }, words);
    }

    byId("record-save").before(toggle);
    byId("record-figure").after(box);

    function show(wanted) {
      on = wanted;
      asked = -1;
      desk.classList.toggle("record-reviewing", on);
      box.hidden = !on;
      toggle.setAttribute("aria-pressed", String(on));
      toggle.textContent = on ? "Back to recording" : "Read again";
      if (!on) return toggle.focus();
      const first = plates().findIndex((plate) => !isReadAgain(plate));
      if (plates().length && (recording.get().at < 0 || isReadAgain(recording.figure()) || !recording.figure().confirmations)) lookAt(Math.max(0, first));
      reader.value = recording.get().reader || "";
      draw();
      return reader.value ? firstOpen() : reader.focus();
    }

    function lookAt(index) {
      const of = InPeriod.recordFigures.pageOf(recording.get(), plates()[index]);
      recording.look(of < 0 ? recording.get().page : of, index);
    }

    const plates = () => recording.get().source.plates || [];

    function firstOpen() {
      const button = rows.querySelector("li:not(.review-done):not(.review-disputed) button") || box.querySelector(".record-first");
      if (button) button.focus();
    }

    /** The reader's name, or null with the caret where it is asked for. */
    function named() {
      const by = reader.value.trim();
      if (by) return by;
      announce("Say first who reads: your name or initials.");
      reader.focus();
      return null;
    }

    function edit(recipe) {
      const { at } = recording.get();
      recording.change("", (work) => InPeriod.recordState.put(work, ["source", "plates", at], recipe(work.source.plates[at])));
    }

    function say(word, reading, instead, note) {
      const by = named();
      if (!by) return;
      edit((plate) => withWord(reading === "corrected" ? corrected(plate, word, instead) : plate, { by, on: today(), reading, feature: word, instead, note }));
      announce(`${nameOf(word)}: ${STANDS[reading]}.`);
      asked = -1;
      draw();
      firstOpen();
    }

    function all() {
      const by = named();
      if (!by || !recording.figure()) return;
      edit((plate) => withWord(plate, { by, on: today(), reading: "confirmed" }));
      announce("Confirmed as recorded.");
      draw();
      firstOpen();
    }

    /** The next figure that was not read again, or else the next one. */
    function onward() {
      const { at } = recording.get(), list = plates();
      const after = list.map((plate, index) => index).filter((index) => index > at);
      const to = after.find((index) => !isReadAgain(list[index])) ?? after[0];
      if (to === undefined) return announce("This is the last figure.");
      asked = -1;
      lookAt(to);
      announce(`Figure ${to + 1} of ${list.length}.`);
      return firstOpen();
    }

    function nameOf(word) {
      const [facet, id] = word.split("/");
      if (facet === "garment") return (vocabulary.garments.get(id) || { label: id }).label;
      return terms.said(word, vocabulary).name;
    }

    const facetOf = (word) => (word.startsWith("garment/") ? "Garment" : terms.said(word, vocabulary).facet);

    /** What a typed line means in the place of that reading, as a word; null for nothing. */
    function meant(line, word) {
      const plate = recording.figure(), uses = new Map();
      if (!line.trim()) return null;
      if (word.startsWith("garment/")) {
        const [first] = terms.garmentsFor(line, vocabulary, uses);
        return first ? `garment/${first.option.id}` : null;
      }
      const [first] = terms.readLine(line, vocabulary, { garment: plate.garment, held: [], uses });
      return first && first.sure ? wordOf(first.feature) : null;
    }

    function otherwise(word, index) {
      const reply = h("p", { class: "record-reading", role: "status", id: `review-meant-${index}` });
      const line = h("input", { type: "text", id: `review-line-${index}`, autocomplete: "off", autocapitalize: "off", spellcheck: "false", "aria-describedby": `review-meant-${index}`,
        oninput: () => reply.replaceChildren(line.value.trim() ? (meant(line.value, word) ? `Understood as ${nameOf(meant(line.value, word))}` : "No term is called so yet") : "") });
      const note = h("input", { type: "text", id: `review-note-${index}`, maxlength: "2000", autocomplete: "off" });
      const done = (reading) => () => {
        const instead = meant(line.value, word);
        if (line.value.trim() && !instead) return line.focus();
        if (reading === "corrected" && !instead && word.startsWith("garment/")) return line.focus();
        return say(word, reading, instead || undefined, note.value.trim() || undefined);
      };
      return h("div", { class: "review-otherwise", onkeydown: (event) => event.key === "Escape" && (event.stopPropagation(), (asked = -1), draw(), firstOpen()) },
        h("p", { class: "record-field record-half" }, h("label", { for: `review-line-${index}` }, "I read"), line), reply,
        h("p", { class: "record-field record-half" }, h("label", { for: `review-note-${index}` }, "Why"), note),
        h("p", { class: "record-tools" },
          h("button", { type: "button", onclick: done("disputed") }, "Dispute it"),
          h("button", { type: "button", onclick: done("corrected") }, "Correct the record")));
    }

    function row({ word, feature }, index, plate) {
      const last = lastWord(plate, word),
        more = feature ? terms.said(feature, vocabulary).more : "";
      const stands = last ? `${STANDS[last.reading]} by ${last.by}${last.reading === "disputed" && last.instead ? `, who reads ${nameOf(last.instead)}` : ""}` : "";
      const of = h("span", { class: "unseen" }, `: ${nameOf(word)} `);
      return h("li", { class: last && last.reading !== "disputed" ? "review-done" : last ? "review-disputed" : "", "data-word": word },
        h("div", { class: "review-row" },
          h("p", { class: "review-what" }, h("span", { class: "review-facet" }, facetOf(word)), " ", h("span", { class: "review-name" }, nameOf(word)), more ? h("span", { class: "review-more" }, `, ${more}`) : "",
            stands ? h("span", { class: "review-stands" }, stands) : ""),
          h("p", { class: "record-tools" },
            h("button", { type: "button", onclick: () => say(word, "confirmed") }, "The same ", of, key("y")),
            h("button", { type: "button", "aria-expanded": String(asked === index), onclick: () => ask(index) }, "Otherwise ", of.cloneNode(true), key("o")))),
        asked === index ? otherwise(word, index) : "");
    }

    function ask(index) {
      asked = asked === index ? -1 : index;
      draw();
      const line = byId(`review-line-${index}`);
      if (line) line.focus();
      else rows.children[index].querySelectorAll("button")[1].focus();
    }

    function draw() {
      if (!on) return;
      const plate = recording.figure(), list = plates();
      head.textContent = plate ? `Figure ${recording.get().at + 1} of ${list.length}: ${plate.id}` : "No figure to read again";
      tally.textContent = plate ? `${list.filter(isReadAgain).length} of ${list.length} read again` : "";
      sayWhose();
      rows.replaceChildren(...(plate ? readingsOf(plate).map((reading, index) => row(reading, index, plate)) : []));
      const found = (plate && plate.confirmations) || [];
      past.hidden = !found.length;
      earlier.replaceChildren(...found.map((each) => h("li", {},
        `${each.on ? `${each.on}, ` : ""}${each.by}: ${each.feature ? `${facetOf(each.feature).toLowerCase()} ${nameOf(each.feature)}` : "the whole figure"} ${STANDS[each.reading] || each.reading}${each.instead ? `, reads ${nameOf(each.instead)}` : ""}${each.note ? `. ${each.note}` : ""}`)));
    }

    function sayWhose() {
      const plate = recording.figure(),
        own = plate && plate.recorded && plate.recorded.by && plate.recorded.by === reader.value.trim();
      box.querySelector(".review-own").textContent = own ? "You recorded this figure yourself: a second pair of eyes should be another’s." : "";
    }

    box.addEventListener("keydown", (event) => {
      if (event.altKey || event.ctrlKey || event.metaKey) return;
      if (event.key === "Escape") return show(false);
      if (event.target.matches("input, textarea, select")) return;
      const at = [...rows.children].findIndex((each) => each.contains(event.target));
      const act = { y: () => at >= 0 && say(rows.children[at].dataset.word, "confirmed"), o: () => at >= 0 && ask(at), a: all, n: onward }[event.key];
      if (!act) return;
      event.preventDefault();
      act();
    });
    reader.addEventListener("change", sayWhose);
    reader.addEventListener("keydown", (event) => {
      if (event.key !== "Enter" || !reader.value.trim()) return;
      event.preventDefault(); // or the same key would press the button that is gone to
      firstOpen();
    });
    recording.subscribe((work, before) => {
      if (!on) return;
      if (work.at !== before.at) asked = -1;
      if (work.source !== before.source || work.at !== before.at) draw();
    });
  }

  if (typeof document !== "undefined" && document.getElementById("record"))
    document.addEventListener("DOMContentLoaded", () => {
      const given = InPeriod.data.recording,
        places = InPeriod.recordShape.sourceShape(given.shapes).fields.get("plates").item.fields.get("features").item.table.fields.get("at").words;
      panel(InPeriod.recordTerms.vocabularyOf(given.vocabulary, places));
    });
  if (typeof module !== "undefined") module.exports = InPeriod.recordReview;
})(globalThis);
