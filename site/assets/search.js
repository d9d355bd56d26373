// Finding by word: which options answer what is typed, and the type-ahead box that shows them.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod ||= {});

  const { fold, searchable } = InPeriod;

  /** Whether every word of the query begins some word of the searchable text. */
  function finds(ready, query) {
    return fold(query)
      .split(" ")
      .every((word) => !word || ready.includes(" " + word));
  }

  /**
   * Options that answer a query, best first: the label starts with it, then a word of the label, then
   * another name (which is handed back as `by`, so that the list can say why it is there).
   * An option is {label, names: [text]} and whatever else the caller keeps in it.
   */
  function rank(options, query) {
    const wanted = fold(query);
    const found = [];
    for (const option of options) {
      const label = searchable(option.label);
      if (!wanted || label.startsWith(" " + wanted)) found.push([0, option, null]);
      else if (finds(label, wanted)) found.push([1, option, null]);
      else {
        const by = option.names.find((name) => finds(searchable(name), wanted));
        if (by) found.push([2, option, by]);
      }
    }
    return found.sort((a, b) => a[0] - b[0]).map(([, option, by]) => ({ option, by }));
  }

  /**
   * A type-ahead box after the combobox pattern of the ARIA Authoring Practices (list autocomplete,
   * manual selection): arrows move, Enter takes, Escape closes and then clears, Tab leaves.
   * `find(query)` gives [{option, by}], or null while they are still coming; `take(option)` is told the choice; `undo()` is told of a
   * Backspace in an empty box; `noun` is what one thing found is called.
   */
  function combobox(input, list, { find, show, take, undo, noun = "feature" }) {
    let shown = [];
    let active = -1;

    function close() {
      shown = [];
      list.hidden = true;
      input.setAttribute("aria-expanded", "false");
      input.removeAttribute("aria-activedescendant");
      active = -1;
    }

    function open() {
      shown = find(input.value);
      active = -1;
      if (!shown) return close();
      list.replaceChildren(
        ...shown.map((each, index) => {
          const item = show(each, index);
          item.id = `${list.id}-${index}`;
          item.setAttribute("role", "option");
          item.setAttribute("aria-selected", "false");
          item.addEventListener("mousedown", (event) => event.preventDefault());
          item.addEventListener("click", () => choose(index));
          return item;
        }),
      );
      const nothing = shown.length === 0 && input.value.trim() !== "";
      if (nothing)
        list.append(
          InPeriod.h(
            "li",
            { class: "found-none", role: "option", "aria-disabled": "true" },
            `No other ${noun} of that name`,
          ),
        );
      list.hidden = shown.length === 0 && !nothing;
      input.setAttribute("aria-expanded", String(!list.hidden));
      input.removeAttribute("aria-activedescendant");
      if (input.value.trim()) {
        const count = shown.length;
        InPeriod.announce(
          count === 0 ? `No other ${noun} of that name.` : `${InPeriod.counted(count, noun)}.`,
        );
      }
    }

    function move(to) {
      if (!shown.length) return;
      const items = list.children;
      if (active >= 0) items[active].setAttribute("aria-selected", "false");
      active = (to + shown.length) % shown.length;
      items[active].setAttribute("aria-selected", "true");
      items[active].scrollIntoView({ block: "nearest" });
      input.setAttribute("aria-activedescendant", items[active].id);
    }

    function choose(index) {
      const { option } = shown[index];
      input.value = "";
      close();
      take(option);
    }

    input.addEventListener("input", open);
    input.addEventListener("click", () => list.hidden && open());
    input.addEventListener("blur", close);
    input.addEventListener("keydown", (event) => {
      const closed = list.hidden;
      if (event.key === "ArrowDown" || event.key === "ArrowUp") {
        event.preventDefault();
        if (closed) open();
        if (!event.altKey) move(event.key === "ArrowDown" ? active + 1 : active < 0 ? shown.length - 1 : active - 1);
      } else if (event.key === "Enter") {
        event.preventDefault();
        if (!closed && active >= 0) choose(active);
        else if (!closed && input.value.trim() && shown.length) choose(0);
      } else if (event.key === "Escape") {
        if (!closed) close();
        else input.value = "";
      } else if (event.key === "Backspace" && input.value === "" && undo) undo();
    });
    return { open, close };
  }

  Object.assign(InPeriod, { finds, rank, combobox });
  if (typeof module !== "undefined") module.exports = InPeriod;
})(globalThis);
