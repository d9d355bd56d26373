// Every page: light or dark as the reader chose, and small shared hands: making elements, the address, scripts and
// data that come when they are needed, copying, saying things aloud. The pages are whole without it.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod ||= {});
  const THEME = "inperiod-theme", SVG = "http://www.w3.org/2000/svg";
  const isPage = typeof document !== "undefined";

  /** Storage can be full, switched off or refused; the page then simply follows the system. */
  function remember(key, value) {
    try {
      if (value === null) localStorage.removeItem(key);
      else localStorage.setItem(key, value);
      return true;
    } catch (refused) {
      return false;
    }
  }

  function recall(key) {
    try {
      return localStorage.getItem(key);
    } catch (refused) {
      return null;
    }
  }

  // ---- elements

  function furnish(element, attributes, children) {
    for (const [name, value] of Object.entries(attributes || {})) {
      if (value === null || value === undefined || value === false) continue;
      if (name.startsWith("on")) element.addEventListener(name.slice(2), value);
      else element.setAttribute(name, value === true ? "" : String(value));
    }
    element.append(
      ...children.flat().filter((child) => child !== null && child !== undefined && child !== false && child !== ""),
    );
    return element;
  }

  const at = (id) => document.getElementById(id);

  /** An HTML element; text children are text, never markup. */
  const h = (tag, attributes, ...children) => furnish(document.createElement(tag), attributes, children);

  /** An SVG element. */
  const s = (tag, attributes, ...children) => furnish(document.createElementNS(SVG, tag), attributes, children);

  /** The mark and word of a verdict, as the macro of the same name makes them. */
  function verdict(name, size) {
    const id = name.replace(/ /g, "-"), use = s("use", { href: `#mark-${id}` });
    return h(
      "span",
      { class: `verdict verdict-${id}` + (size ? ` verdict-${size}` : "") },
      s("svg", { class: "mark", "aria-hidden": "true", focusable: "false", width: 16, height: 16 }, use),
      h("span", { class: "verdict-word" }, name),
    );
  }

  // ---- scripts and data that come when they are needed

  /** Data scripts call this: a plain script tag works from a double-clicked file, where fetch does not. */
  const data = (InPeriod.data ||= {}), coming = new Map();
  const receive = (name, value) => {
    data[name] = value;
  };
  const own = (isPage && document.currentScript) || {};

  /** Brings a script of the site once, unless `lacks` finds when it has run that it did not do what it is for. */
  function bring(path, lacks = () => false) {
    if (!coming.has(path))
      coming.set(
        path,
        new Promise((resolve, reject) => {
          const failed = () => {
            coming.delete(path);
            reject(new Error(`${path} did not come`));
          };
          const onload = () => (lacks() ? failed() : resolve());
          const script = h("script", { src: new URL(`../${path}`, own.src), onload, onerror: failed });
          script.async = false; // they run in their order
          document.head.append(script);
        }),
      );
    return coming.get(path);
  }

  /** The data of that name, brought once they are asked for. Rejects where they do not come. */
  async function load(name) {
    if (!(name in data)) await bring(`data/${name}.js`, () => !(name in data));
    return data[name];
  }

  /** Brings scripts that are needed at times only, to run in their order. */
  const need = (...paths) => Promise.all(paths.map((path) => bring(path)));

  /** What to say where data did not come. */
  const UNLOADED = "Part of the catalogue’s data could not be loaded. Please load the page again.";

  // ---- the address

  /** The question after the # as a list of [name, value] pairs; a malformed escape is read as written. */
  const readAddress = (hash) => [...new URLSearchParams(hash.replace(/^#/, ""))];

  /** Pairs as an address after the #, with the slashes and commas of term names left readable. */
  function writeAddress(pairs) {
    const text = new URLSearchParams(
      pairs.filter(([, value]) => value !== "" && value !== null && value !== undefined),
    );
    return text.toString().replace(/%2F/g, "/").replace(/%2C/g, ",");
  }

  /** Puts pairs into the address bar: a new step for the back button, or in place of the present one. */
  function goTo(pairs, replace) {
    const address = writeAddress(pairs);
    if (address === location.hash.replace(/^#/, "")) return;
    const target = address ? "#" + address : location.pathname + location.search;
    history[replace ? "replaceState" : "pushState"](null, "", target);
  }

  /** Calls it whenever another address is gone to. */
  function onAddress(moved) {
    root.addEventListener("popstate", moved);
    root.addEventListener("hashchange", moved);
  }

  // ---- saying, copying, keeping

  /** Says a text through the page's live region; nothing while the page is still being read for the first time. */
  function announce(text) {
    if (document.readyState !== "complete") return;
    const region = at("said");
    if (region && region.textContent !== text) region.textContent = text;
  }

  /** Copies text; where the clipboard is refused (some browsers, from file:) a selection is copied instead. */
  async function copy(text) {
    try {
      await navigator.clipboard.writeText(text);
      return true;
    } catch (refused) {
      const area = h("textarea", { class: "unseen" });
      area.value = text;
      document.body.append(area);
      area.select();
      try {
        return document.execCommand("copy");
      } catch (again) {
        return false;
      } finally {
        area.remove();
      }
    }
  }

  /** A button that copies what `text()` gives, and where it says so; `refused(text)` is said where it could not. */
  function copyButton(label, name, text, refused) {
    const said = h("span", { class: "copied", role: "status" });
    const pressed = async () => {
      const given = text();
      said.textContent = (await copy(given)) ? "Copied" : `Your browser would not copy: ${refused(given)}`;
    };
    return [h("button", { type: "button", class: "copy", "aria-label": name, onclick: pressed }, label), said];
  }

  /** [data-copy="id"] copies the text of the element of that id and says so. */
  function copyButtons(within) {
    for (const holder of within.querySelectorAll("[data-copy]")) {
      const { copy: id, copyName } = holder.dataset;
      const text = () => at(id).textContent.trim().replace(/\s+/g, " ");
      const [button, said] = copyButton("Copy", copyName && `Copy: ${copyName}`, text, () => "please select the text.");
      holder.append(said, button);
    }
  }

  /** Offers a text as a file to keep. */
  function download(name, type, text) {
    const address = URL.createObjectURL(new Blob([text], { type }));
    const link = h("a", { href: address, download: name, hidden: true });
    document.body.append(link);
    link.click();
    link.remove();
    setTimeout(() => URL.revokeObjectURL(address), 1000);
  }

  // ---- small things

  /** The task, run once the calls have been quiet for so many milliseconds. */
  function later(milliseconds, task) {
    let timer = 0;
    return function (...given) {
      clearTimeout(timer);
      timer = setTimeout(() => task(...given), milliseconds);
    };
  }

  // Numbers in words, as wording.py and words.py put them.
  const perCent = (share) => (share > 0 && share < 0.01 ? "under 1 %" : `${Math.floor(100 * share + 0.5)} %`);
  const amount = (weight) => String(Math.floor(weight * 10 + 0.5) / 10);
  const counted = (number, one) => `${number.toLocaleString("en-GB")} ${number === 1 ? one : one + "s"}`;
  const raised = (text) => text.slice(0, 1).toUpperCase() + text.slice(1);

  const LIGATURES = { æ: "ae", œ: "oe", ß: "ss", ø: "o", ł: "l", đ: "d", ð: "d", þ: "th" };

  /** Lower case, without diacritics, every other sign a space: what two spellings of one word share. */
  function fold(text) {
    return text
      .toLowerCase()
      .normalize("NFD")
      .replace(/\p{M}/gu, "")
      .replace(/[æœßøłđðþ]/g, (letter) => LIGATURES[letter])
      .replace(/['’]/g, "")
      .replace(/[^\p{L}\p{N}]+/gu, " ")
      .trim();
  }

  /** A text made ready for `finds`: folded, with a space before every word. */
  function searchable(text) {
    return " " + fold(text);
  }

  /** The button in the masthead that turns day into night. */
  function themeButton(button) {
    const { dataset } = document.documentElement, system = matchMedia("(prefers-color-scheme: dark)");
    const isNight = () => (dataset.theme ? dataset.theme === "dark" : system.matches);
    const tell = () => button.setAttribute("aria-pressed", String(isNight()));
    button.addEventListener("click", () => {
      dataset.theme = isNight() ? "light" : "dark";
      remember(THEME, dataset.theme);
      tell();
    });
    system.addEventListener("change", tell);
    tell();
  }

  if (isPage) {
    const chosen = recall(THEME);
    if (chosen === "light" || chosen === "dark") document.documentElement.dataset.theme = chosen;
    document.documentElement.classList.add("scripted");
    // What an address is sure to ask for comes while the page is still being read; {} stands for its garment.
    const garment = Object.fromEntries(readAddress(location.hash)).garment || "";
    if (/^[\w-]+$/.test(garment)) for (const name of own.dataset.ahead?.split(" ") || []) load(name.replace("{}", garment)).catch(() => {});
    document.addEventListener("DOMContentLoaded", () => {
      document.querySelectorAll(".theme").forEach(themeButton);
      copyButtons(document);
    });
  }

  Object.assign(InPeriod, {
    remember, recall, at, h, s, verdict, receive, load, need, UNLOADED, readAddress, writeAddress, goTo, onAddress,
    announce, copy, copyButton, copyButtons, download, later, perCent, amount, counted, raised, fold, searchable,
  });
  if (typeof module !== "undefined") module.exports = InPeriod;
})(globalThis);
