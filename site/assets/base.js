/* Every page: light or dark as the reader chose, and copying of citations. The pages are whole without it. */
"use strict";

/* One global object, to which every later script adds its own part. */
globalThis.InPeriod = Object.assign(globalThis.InPeriod || {}, (() => {
  const THEME = "inperiod-theme";

  /* Storage can be full, switched off or refused; the page then simply follows the system. */
  function remember(key, value) {
    try {
      if (value === null) localStorage.removeItem(key);
      else localStorage.setItem(key, value);
    } catch (refused) {
      return false;
    }
    return true;
  }

  function recall(key) {
    try {
      return localStorage.getItem(key);
    } catch (refused) {
      return null;
    }
  }

  /* The mark and word of a verdict, as the macro of the same name makes them. */
  function verdict(name, size) {
    const id = name.replace(/ /g, "-");
    const box = document.createElement("span");
    box.className = `verdict verdict-${id}` + (size ? ` verdict-${size}` : "");
    const svg = document.createElementNS("http://www.w3.org/2000/svg", "svg");
    svg.setAttribute("class", "mark");
    svg.setAttribute("aria-hidden", "true");
    svg.setAttribute("focusable", "false");
    svg.setAttribute("width", "16");
    svg.setAttribute("height", "16");
    const use = document.createElementNS("http://www.w3.org/2000/svg", "use");
    use.setAttribute("href", `#mark-${id}`);
    svg.append(use);
    const word = document.createElement("span");
    word.className = "verdict-word";
    word.textContent = name;
    box.append(svg, word);
    return box;
  }

  /* Copies text; where the clipboard is refused (some browsers, from file:) a selection is copied instead. */
  async function copy(text) {
    try {
      await navigator.clipboard.writeText(text);
      return true;
    } catch (refused) {
      const area = document.createElement("textarea");
      area.value = text;
      area.className = "unseen";
      document.body.append(area);
      area.select();
      let done = false;
      try {
        done = document.execCommand("copy");
      } catch (again) {
        done = false;
      }
      area.remove();
      return done;
    }
  }

  function themeButton() {
    const nav = document.querySelector(".sections");
    if (!nav) return;
    const button = document.createElement("button");
    button.type = "button";
    button.className = "theme";
    const more = document.createElement("span");
    more.className = "unseen";
    const dark = () => {
      const chosen = document.documentElement.dataset.theme;
      return chosen ? chosen === "dark" : matchMedia("(prefers-color-scheme: dark)").matches;
    };
    const label = () => {
      more.textContent = dark() ? "light pages" : "dark pages";
      button.replaceChildren(dark() ? "Day " : "Night ", more);
    };
    button.addEventListener("click", () => {
      const next = dark() ? "light" : "dark";
      document.documentElement.dataset.theme = next;
      remember(THEME, next);
      label();
    });
    matchMedia("(prefers-color-scheme: dark)").addEventListener("change", label);
    label();
    nav.append(button);
  }

  /* [data-copy="id"] copies the text of the element of that id and says so. */
  function copyButtons(root) {
    for (const holder of root.querySelectorAll("[data-copy]")) {
      const button = document.createElement("button");
      button.type = "button";
      button.className = "copy";
      button.textContent = "Copy";
      if (holder.dataset.copyName) button.setAttribute("aria-label", `Copy: ${holder.dataset.copyName}`);
      const said = document.createElement("span");
      said.className = "copied";
      said.setAttribute("role", "status");
      button.addEventListener("click", async () => {
        const from = document.getElementById(holder.dataset.copy);
        const text = from ? from.textContent.trim().replace(/\s+/g, " ") : "";
        const done = from && (await copy(text));
        said.textContent = done ? "Copied" : "Your browser would not copy: please select the text.";
      });
      holder.append(said, button);
    }
  }

  function start() {
    themeButton();
    copyButtons(document);
  }

  if (typeof document !== "undefined") {
    const chosen = recall(THEME);
    if (chosen === "light" || chosen === "dark") document.documentElement.dataset.theme = chosen;
    document.documentElement.classList.add("scripted");
    if (document.readyState === "loading") document.addEventListener("DOMContentLoaded", start);
    else start();
  }

  return { verdict, copy, copyButtons, remember, recall };
})());

if (typeof module !== "undefined") module.exports = globalThis.InPeriod;
