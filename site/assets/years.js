// A range of years: two handles on one track and two boxes for numbers, which always agree.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod ||= {});

  /**
   * Joins #from, #to, #from-handle and #to-handle. `now()` gives {from, to}; `set({from, to}, replace)` is told of
   * a change, with `replace` while a handle is still being moved. The one handle never passes the other.
   */
  function yearRange(now, set) {
    const { at } = InPeriod, first = Number(at("from").min), last = Number(at("from").max);
    const within = (year) => Math.min(last, Math.max(first, Math.round(year)));

    function changed(name, value, replace) {
      const { from, to } = now(),
        year = within(value);
      set(name === "from" ? { from: Math.min(year, to), to } : { from, to: Math.max(year, from) }, replace);
    }

    for (const name of ["from", "to"]) {
      const handle = at(`${name}-handle`),
        box = at(name);
      handle.addEventListener("input", () => changed(name, Number(handle.value), true));
      box.addEventListener("change", () => {
        const value = Number(box.value);
        if (box.value.trim() === "" || !Number.isFinite(value))
          return changed(name, name === "from" ? first : last, false);
        const { from, to } = now(),
          year = within(value);
        // A number typed beyond the other end moves that end with it: one types the first before the second.
        if (name === "from" ? year > to : year < from) return set({ from: year, to: year }, false);
        changed(name, value, false);
      });
    }

    /** The years an address asks for: {from, to}. */
    function read(pairs) {
      const given = new Map(pairs);
      const year = (name, otherwise) => {
        const value = Number(given.get(name));
        return given.get(name) && Number.isFinite(value) ? within(value) : otherwise;
      };
      const from = year("from", first);
      return { from, to: Math.max(from, year("to", last)) };
    }

    function show(years) {
      for (const name of ["from", "to"]) at(name).value = at(`${name}-handle`).value = String(years[name]);
    }

    const pairs = ({ from, to }) => [["from", from === first ? "" : String(from)], ["to", to === last ? "" : String(to)]];
    const isWhole = ({ from, to }) => from === first && to === last;
    const said = ({ from, to }) => (from === to ? String(from) : `${from}–${to}`);
    return { first, last, read, show, pairs, isWhole, said };
  }

  InPeriod.yearRange = yearRange;
  if (typeof module !== "undefined") module.exports = InPeriod;
})(globalThis);
