// The source that is being recorded: what is known of it so far, how it changes, what can be undone.
//
// The door for other scripts of this page (a review, the help) is `InPeriod.recording`:
//
//   get()                    the work, a plain object that is never changed in place:
//     source                   the source as its YAML file holds it, its plates in `source.plates`
//     name                     the id of the source: its file is sources/<name>.yaml
//     said                     {date}: the date as it was typed, of which source.date holds the reading
//     by                       who records; stands in `recorded` of every plate made here
//     pages                    [{name}]: the page images, in order; the files themselves are with InPeriod.recordPages
//     page                     which of them is looked at
//     at                       which plate is in hand: an index into source.plates, -1 for none
//     file                     {name, text} of the file that was opened or last saved, or null
//   set(path, value)         one value of the work, such as (["source", "plates", 2, "caption"], "…"); nothing, "" or an
//                            empty table takes it out
//   change(what, recipe)     any change: recipe(work) gives the new work. Changes of the same `what` (text) in quick
//                            succession are undone as one; what "" is a step of its own; null is not undone at all
//   look(page, at)           look at another page or plate: no change, nothing to undo
//   undo(), redo(), canUndo(), canRedo()
//   open(work)               another work in the place of this one
//   subscribe(listener)      listener(work, before) after each change and look; gives a function that ends it
//   figure()                 the plate in hand, or null
//
// Undo goes back without end while the page is open, and by KEPT_STEPS steps in a work opened again: every step is a
// whole work, of which all that did not change is shared with the step before it.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod ||= {});
  const FORMAT = 1,
    KEPT_STEPS = 100,
    QUICK = 4000;
  /** The order of fields inside tables; that of sources and plates is the writer's. */
  const ORDERS = {
    publisher: ["name", "place"],
    held_by: ["name", "shelfmark", "accession", "url", "accessed"],
    examined: ["pages", "by", "on"],
    recorded: ["by", "on", "pages"],
    locator: ["page", "plate", "figure", "item", "column"],
    wearer: ["who", "age", "sizes", "status"],
    price: ["amount", "currency", "note"],
    image: ["file", "region", "alt", "rights"],
    features: ["term", "facet", "not_visible", "none", "at", "width", "count", "colour", "reading", "note"],
    confirmations: ["by", "on", "reading", "feature", "instead", "note"],
  };
  const STEPS = ["source", "name", "named", "said", "by", "page", "at"];

  const isTable = (value) => typeof value === "object" && value !== null && !Array.isArray(value);
  const isNothing = (value) =>
    value === undefined || value === null || value === "" || (isTable(value) && !Object.keys(value).length);

  /** A work with every field there, whatever was given; what is not known is kept. */
  function workOf(given) {
    const work = { format: FORMAT, id: "", name: "", named: false, said: {}, by: "", pages: [], page: 0, at: -1, file: null, ...given };
    work.source = isTable(work.source) ? work.source : {};
    for (const name of ["past", "future", "pages"]) work[name] = Array.isArray(work[name]) ? work[name] : [];
    return work;
  }

  /** A copy of a table or list with the value at that path; all beside the path is shared with the old one. */
  function put(held, path, value) {
    if (!path.length) return value;
    const [step, ...rest] = path;
    if (typeof step === "number") {
      const list = Array.isArray(held) ? held.slice() : [];
      list[step] = put(list[step], rest, value);
      return list;
    }
    const table = isTable(held) ? { ...held } : {};
    const inner = put(table[step], rest, value);
    if (isNothing(inner)) delete table[step];
    else table[step] = inner;
    return table;
  }

  /** The fields of a table in the order of its kind, unknown ones last. */
  function inOrder(table, kind) {
    const order = ORDERS[kind];
    if (!order || !isTable(table)) return table;
    const names = Object.keys(table);
    const wanted = [...order.filter((name) => names.includes(name)), ...names.filter((name) => !order.includes(name))];
    return wanted.some((name, i) => name !== names[i]) ? Object.fromEntries(wanted.map((name) => [name, table[name]])) : table;
  }

  /** As `put`, with the fields of the table that holds the value in their order. */
  function putInOrder(held, path, value) {
    const made = put(held, path, value),
      above = path.slice(0, -1),
      kind = above.filter((step) => typeof step === "string").pop();
    const table = above.reduce((inner, step) => (inner === undefined ? inner : inner[step]), made);
    return isTable(table) && ORDERS[kind] ? put(made, above, inOrder(table, kind)) : made;
  }

  const at = (held, path) => path.reduce((inner, step) => (inner === undefined || inner === null ? undefined : inner[step]), held);

  function recording() {
    let work = workOf({}),
      lastWhat = "",
      changedAt = 0;
    const listeners = new Set();

    const snapshot = (from) => Object.fromEntries(STEPS.map((name) => [name, from[name]]));

    function become(next) {
      const before = work;
      work = next;
      for (const listener of [...listeners]) listener(work, before);
    }

    function change(what, recipe) {
      const next = recipe(work);
      if (next === work) return;
      const now = Date.now(),
        same = what && what === lastWhat && now - changedAt < QUICK;
      lastWhat = what;
      changedAt = now;
      if (what === null) return become(next);
      become({ ...next, past: same ? work.past : [...work.past, snapshot(work)], future: [] });
    }

    function step(from, to) {
      if (!work[from].length) return false;
      lastWhat = "";
      const target = work[from][work[from].length - 1];
      become({ ...work, ...target, [from]: work[from].slice(0, -1), [to]: [...work[to], snapshot(work)] });
      return true;
    }

    return {
      get: () => work,
      figure: () => at(work, ["source", "plates", work.at]) || null,
      set: (path, value) => change(path.join("."), (old) => (at(old, path) === value ? old : putInOrder(old, path, value))),
      change,
      look(page, index) {
        if (page === work.page && index === work.at) return;
        lastWhat = "";
        become({ ...work, page, at: index });
      },
      undo: () => step("past", "future"),
      redo: () => step("future", "past"),
      canUndo: () => work.past.length > 0,
      canRedo: () => work.future.length > 0,
      open(given) {
        lastWhat = "";
        become(workOf(given));
      },
      subscribe(listener) {
        listeners.add(listener);
        return () => listeners.delete(listener);
      },
    };
  }

  /** The work as it is kept: with the last steps of its history only. */
  const toKeep = (work) => ({ ...work, past: work.past.slice(-KEPT_STEPS), future: work.future.slice(-KEPT_STEPS) });

  InPeriod.recordState = { FORMAT, recording, workOf, put, putInOrder, inOrder, at, isTable, isNothing, toKeep };
  InPeriod.recording = recording();
  if (typeof module !== "undefined") module.exports = InPeriod.recordState;
})(globalThis);
