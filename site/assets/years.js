// A range of years: two handles on one track and two boxes for numbers, which always agree.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod = root.InPeriod || {});

  /**
   * Joins #from, #to, #from-handle and #to-handle. `now()` gives {from, to}; `set({from, to}, replace)` is told of
   * a change, with `replace` while a handle is still being moved. The one handle never passes the other.
   */
  function yearRange({ at, first, last, now, set }) {
    const within = (year) => Math.min(last, Math.max(first, Math.round(year)));

    function changed(name, value, replace) {
      const { from, to } = now(),
        year = within(value);
      const next = name === "from" ? { from: Math.min(year, to), to } : { from, to: Math.max(year, from) };
      set(next, replace);
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
        if (name === "from" && year > to) return set({ from: year, to: year }, false);
        if (name === "to" && year < from) return set({ from: year, to: year }, false);
        changed(name, value, false);
      });
    }
  }

  InPeriod.yearRange = yearRange;
  if (typeof module !== "undefined") module.exports = InPeriod;
})(globalThis);
