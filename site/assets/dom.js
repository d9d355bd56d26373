// Small shared hands of every page: the data loader, making elements, the address, copying, saying things aloud.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod = root.InPeriod || {});

  /** Data scripts call this: a plain script tag works from a double-clicked file, where fetch does not. */
  const data = (InPeriod.data = InPeriod.data || {}), coming = new Map();
  InPeriod.receive = function (name, value) {
    data[name] = value;
  };

  /** The data of that name, brought by a script element once it is asked for. Rejects where it does not come. */
  const top = typeof document !== "undefined" && document.currentScript ? document.currentScript.src : "";
  function load(name) {
    if (!coming.has(name))
      coming.set(
        name,
        new Promise((resolve, reject) => {
          if (name in data) return resolve(data[name]);
          const failed = () => {
            coming.delete(name);
            reject(new Error(`data/${name}.js did not come`));
          };
          document.head.append(
            h("script", { src: new URL(`../data/${name}.js`, top), onload: () => (name in data ? resolve(data[name]) : failed()), onerror: failed }),
          );
        }),
      );
    return coming.get(name);
  }

  /** What to say where data did not come. */
  const UNLOADED = "Part of the catalogue’s data could not be loaded. Please load the page again.";

  const SVG = "http://www.w3.org/2000/svg";

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

  /** An HTML element; text children are text, never markup. */
  function h(tag, attributes, ...children) {
    return furnish(document.createElement(tag), attributes, children);
  }

  /** An SVG element. */
  function s(tag, attributes, ...children) {
    return furnish(document.createElementNS(SVG, tag), attributes, children);
  }

  /** The question after the # as a list of [name, value] pairs; a malformed escape is read as written. */
  function readAddress(hash) {
    return [...new URLSearchParams(hash.replace(/^#/, ""))];
  }

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

  /** Says a text through the page's live region; nothing while the page is still being read for the first time. */
  function announce(text) {
    if (document.readyState !== "complete") return;
    const region = document.getElementById("said");
    if (region && region.textContent !== text) region.textContent = text;
  }

  /** Loads scripts that are needed at times only, each once, to run in their order. */
  const needed = new Map();
  function need(...paths) {
    const loaded = (path) =>
      new Promise((done, failed) => {
        const script = document.createElement("script");
        Object.assign(script, { src: path, async: false, onload: done });
        script.onerror = () => {
          needed.delete(path);
          failed(new Error(path));
        };
        document.head.append(script);
      });
    for (const path of paths) if (!needed.has(path)) needed.set(path, loaded(path));
    return Promise.all(paths.map((path) => needed.get(path)));
  }

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

  /** Offers a text as a file to keep. */
  function download(name, type, text) {
    const address = URL.createObjectURL(new Blob([text], { type }));
    const link = h("a", { href: address, download: name, hidden: true });
    document.body.append(link);
    link.click();
    link.remove();
    setTimeout(() => URL.revokeObjectURL(address), 1000);
  }

  Object.assign(InPeriod, {
    load,
    UNLOADED,
    h,
    s,
    readAddress,
    writeAddress,
    goTo,
    announce,
    need,
    later,
    perCent,
    amount,
    counted,
    raised,
    download,
  });
  if (typeof module !== "undefined") module.exports = InPeriod;
})(globalThis);
