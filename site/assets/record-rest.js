// Every other field a source or a figure may have, straight from the schema's shapes: nothing a record can say is out of reach.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod ||= {});
  /** What the form shows by itself, by path within the source or the plate. */
  const SHOWN = {
    source: ["title", "kind", "date", "date_basis", "language", "publisher", "held_by.name", "held_by.shelfmark", "rights", "examined.pages", "plates"],
    plate: ["locator.page", "locator.figure", "locator.item", "garment", "caption", "price.amount", "price.currency", "view", "medium", "features", "wearer.who", "image.alt"],
  };
  const NAMES = { id: "Id", url: "Web address", by: "By", on: "On", who: "For", publish: "On the site", file: "Picture file", region: "Part of the picture", at: "Where", count: "How many", reading: "How it was read" };
  const LONG = 2000;

  const labelOf = (name) => NAMES[name] || InPeriod.raised(String(name).replace(/_/g, " "));

  /** Of a shape of two forms the one a value has; a table where there is no value yet. */
  const formOf = (shape, value) =>
    shape.kind !== "either" ? shape : value !== undefined && !InPeriod.recordState.isTable(value) ? shape.scalar : shape.table;

  /** The fields of a table that the form does not show by itself, as [name, shape]. */
  function others(shape, kind, within) {
    return [...shape.fields].filter(([name]) => !SHOWN[kind].includes([...within, name].join(".")));
  }

  /** A number where digits alone are typed into a number's field; anything else stays the text it is, for the checks to judge. */
  const numbered = (text) => (/^\d{1,9}$/.test(text.trim()) ? Number(text) : text);

  /** `with_`: {recording, form, shape: the shape of a source}. */
  function rest({ recording, form, shape }) {
    const { h } = InPeriod,
      { at: valueAt, isTable } = InPeriod.recordState;
    const KINDS = {
      source: { box: document.getElementById("record-rest-source"), shape, path: () => ["source"] },
      plate: { box: document.getElementById("record-rest-plate"), shape: shape.fields.get("plates").item, path: () => ["source", "plates", recording.get().at] },
    };

    /** A row of the form for one field; `path` is within the source or plate. */
    function field(kind, name, given, path, refresh) {
      const value = () => {
        const held = valueAt(recording.get(), [...KINDS[kind].path(), ...path]);
        return typeof held === "function" ? undefined : held;
      };
      const set = (next) => (kind === "plate" ? form.setPlate(path, next) : recording.set([...KINDS.source.path(), ...path], next));
      const own = formOf(given, value()),
        label = typeof name === "number" ? `${name + 1}` : labelOf(name),
        id = `record-rest-${[kind, ...path].join("-")}`,
        words = [kind, ...path].join(".");
      const bound = (control, read = () => control.value, write = (held) => (control.value = held === undefined ? "" : String(held))) => {
        control.id = id;
        control.dataset.path = words;
        control.addEventListener(control.tagName === "SELECT" || control.type === "checkbox" ? "change" : "input", () => set(read()));
        const show = () => {
          const held = value();
          if (control.tagName === "SELECT" && held !== undefined && ![...control.options].some((option) => option.value === String(held))) control.append(h("option", {}, String(held)));
          if (document.activeElement !== control || String(held ?? "") !== String(read() ?? "")) write(held);
        };
        refresh.push(show);
        show();
        return control;
      };
      const row = (control, wide) => h("p", { class: wide ? "record-field" : "record-field record-half" }, h("label", { for: id }, label), control);
      if (own.kind === "fields") return group(label, others(own, kind, path).map(([inner, of]) => field(kind, inner, of, [...path, inner], refresh)));
      if (own.kind === "list") return list(kind, label, own, path, value, set, refresh);
      if (own.kind === "word") {
        // A feature of which nothing is said was seen.
        const seen = path[0] === "features" && name === "reading";
        const words_ = seen ? own.words.filter((word) => word !== "seen") : own.words;
        return row(bound(h("select", {}, h("option", { value: "" }, seen ? "seen in the picture" : "not said"), ...words_.map((word) => h("option", { value: word }, seen && word === "read" ? "read in the text" : word)))));
      }
      if (own.kind === "flag") {
        const select = h("select", {}, h("option", { value: "" }, "not said"), h("option", { value: "true" }, "yes"), h("option", { value: "false" }, "no"));
        return row(bound(select, () => ({ true: true, false: false })[select.value], (held) => (select.value = held === undefined ? "" : String(held))));
      }
      if (own.kind === "true") {
        const box = h("input", { type: "checkbox" });
        return h("p", { class: "record-field record-check" }, bound(box, () => (box.checked ? true : undefined), (held) => (box.checked = held === true)), h("label", { for: id }, label));
      }
      if (own.kind === "integer") {
        const box = h("input", { type: "text", inputmode: "numeric", autocomplete: "off" });
        return row(bound(box, () => numbered(box.value)));
      }
      if (own.longest >= LONG) return row(bound(h("textarea", { rows: path[0] === "features" ? 1 : 2, maxlength: own.longest })), true);
      return row(bound(h("input", { type: "text", maxlength: own.longest || 1000, autocomplete: "off" })));
    }

    const group = (label, rows) => rows.length > 0 && h("fieldset", { class: "record-group" }, h("legend", {}, label), h("div", { class: "record-fields" }, ...rows));

    function list(kind, label, given, path, value, set, refresh) {
      const held = Array.isArray(value()) ? value() : [];
      if (given.item.kind === "word") {
        // A few words, any of them: boxes to tick.
        return group(label, given.item.words.map((word) => {
          const box = h("input", { type: "checkbox", id: `record-rest-${[kind, ...path, word].join("-")}` });
          const show = () => (box.checked = (value() || []).includes(word));
          box.addEventListener("change", () => {
            const others_ = (value() || []).filter((each) => each !== word);
            const next = box.checked ? [...others_, word] : others_;
            set(next.length ? next : undefined);
          });
          refresh.push(show);
          show();
          return h("p", { class: "record-field record-half record-check" }, box, h("label", { for: box.id }, word));
        }));
      }
      const without = (index) => {
        const next = value().filter((_, i) => i !== index);
        set(next.length ? next : undefined);
        draw(kind, true);
      };
      const rows = held.map((_, index) => {
        const inner = field(kind, index, given.item, [...path, index], refresh);
        const off = h("p", { class: "record-field record-tools" }, h("button", { type: "button", onclick: () => without(index) }, `Take away ${index + 1}`));
        return [inner, off];
      });
      const blank = formOf(given.item, undefined).kind === "fields" ? {} : "";
      const add = h("p", { class: "record-field" }, h("button", { type: "button", onclick: () => {
        set([...(value() || []), blank]);
        draw(kind, true);
        const inputs = KINDS[kind].box.querySelectorAll(`[data-path^="${[kind, ...path, held.length].join(".")}"]`);
        if (inputs[0]) inputs[0].focus();
      } }, `Add to: ${label.toLowerCase()}`));
      return group(label, [...rows.flat(), add]);
    }

    /** What decides which rows there are: how long every list is, and which form each entry has. */
    const outline = (value) =>
      Array.isArray(value) ? value.map(outline) : isTable(value) ? Object.fromEntries(Object.entries(value).filter(([name, each]) => typeof each === "object" && name !== "plates" && name !== "features").map(([name, each]) => [name, outline(each)])) : 0;

    const state = { source: { key: "", refresh: [] }, plate: { key: "", refresh: [] } };

    function draw(kind, anew) {
      const { box, shape: given, path } = KINDS[kind];
      if (!box.closest("details").open) return;
      const value = valueAt(recording.get(), path());
      const key = JSON.stringify([path(), outline(value || {})]);
      if (!anew && key === state[kind].key) return void state[kind].refresh.forEach((show) => show());
      const refresh = [],
        focused = document.activeElement && box.contains(document.activeElement) && document.activeElement.id;
      state[kind] = { key, refresh };
      box.replaceChildren(...(value === undefined ? [] : others(given, kind, []).map(([name, of]) => field(kind, name, of, [name], refresh)).filter(Boolean)));
      const again = focused && document.getElementById(focused);
      if (again) again.focus();
    }

    // ---- the feature that is being changed

    const details = document.getElementById("record-detail"),
      DETAILS = ["at", "width", "count", "colour", "reading", "note"];
    let shownDetail = "";

    /** The fields beside the term of one feature; null puts them away. */
    function detail(index) {
      const key = index === null ? "" : `${recording.get().at} ${index}`;
      details.hidden = !key;
      if (key && key === shownDetail) return void state.detail.refresh.forEach((show) => show());
      shownDetail = key;
      const { fields } = KINDS.plate.shape.fields.get("features").item.table,
        refresh = [];
      state.detail = { refresh };
      details.replaceChildren(...(key ? DETAILS.map((name) => field("plate", name, fields.get(name), ["features", index, name], refresh)) : []));
    }

    for (const kind of ["source", "plate"]) KINDS[kind].box.closest("details").addEventListener("toggle", () => draw(kind));
    recording.subscribe(() => (draw("source"), draw("plate")));
    return { detail };
  }

  InPeriod.recordRest = { rest, SHOWN };
  if (typeof module !== "undefined") module.exports = InPeriod.recordRest;
})(globalThis);
