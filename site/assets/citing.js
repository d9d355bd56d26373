// Citations on the page: one style at a time, the reader's choice remembered; files for reference managers.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod = root.InPeriod || {});
  const STYLE = "inperiod-style", FORMAT = "inperiod-format";
  const KINDS = { "csl-json": "application/vnd.citationstyles.csl+json", biblatex: "text/x-bibtex", ris: "application/x-research-info-systems" };
  const ENDINGS = { "csl-json": "csl.json", biblatex: "bib", ris: "ris" };

  /** Hands the text over as a file of that name. */
  function keep(name, text, kind) {
    const link = document.createElement("a");
    link.href = URL.createObjectURL(new Blob([text], { type: `${kind};charset=utf-8` }));
    link.download = name;
    document.body.append(link);
    link.click();
    link.remove();
    setTimeout(() => URL.revokeObjectURL(link.href), 1000);
  }

  function button(label, pressed) {
    const made = document.createElement("button");
    made.type = "button";
    made.className = "copy";
    made.textContent = label;
    made.addEventListener("click", () => pressed(made));
    return made;
  }

  /** All styles in one list, of which the chosen one shows. */
  function oneStyle(box) {
    const lists = [...box.querySelectorAll(".citations")], list = lists[0];
    for (const more of lists.slice(1)) list.append(...more.children);
    for (const details of box.querySelectorAll(".more-citations")) details.remove();
    const terms = [...list.querySelectorAll("dt")];
    if (terms.length < 2) return;
    const select = document.createElement("select"), label = document.createElement("label");
    label.className = "cite-style";
    label.append("Style ", select);
    terms.forEach((term, place) => select.append(new Option(term.textContent, term.dataset.style || String(place))));
    const show = () => {
      for (const term of terms) {
        term.hidden = true; // the select says which style it is
        term.nextElementSibling.hidden = term.dataset.style !== select.value;
      }
    };
    const remembered = InPeriod.recall(STYLE);
    if (terms.some((term) => term.dataset.style === remembered)) select.value = remembered;
    select.addEventListener("change", () => { InPeriod.remember(STYLE, select.value); show(); });
    list.before(label);
    show();
  }

  /** Files of one page: what stands in the page is what is kept. */
  function files(box) {
    for (const holder of box.querySelectorAll("[data-format]")) {
      const text = holder.querySelector("pre"), format = holder.dataset.format;
      holder.querySelector(".keep-holder").append(
        button("Keep as a file", () => keep(holder.dataset.file, text.textContent, KINDS[format])));
    }
  }

  function copyLink(box) {
    const canonical = document.querySelector('link[rel="canonical"]');
    const address = canonical ? canonical.href : location.href.split("#")[0];
    const said = document.createElement("span");
    said.className = "copied";
    said.setAttribute("role", "status");
    box.append(button("Copy a link to this page", async () => {
      said.textContent = (await InPeriod.copy(address)) ? "Copied" : `Your browser would not copy: ${address}`;
    }), said);
  }

  /** Loads a data script once; the page's policy lets no file be fetched. */
  const asked = new Map();
  function load(path, name) {
    if (!asked.has(path)) asked.set(path, new Promise((done, failed) => {
      const script = document.createElement("script");
      script.src = path;
      script.onload = () => done(InPeriod.data[name]);
      script.onerror = () => { asked.delete(path); failed(new Error(path)); };
      document.head.append(script);
    }));
    return asked.get(path);
  }

  /** The citations of the plates with these keys as the text of one file. */
  async function cited(keys, format) {
    const sources = [...new Set(keys.map((key) => key.split("/")[0]))];
    const held = new Map(await Promise.all(sources.map(async (source) =>
      [source, await load(`data/cite/${source}.js`, `cite:${source}`)])));
    const texts = keys.map((key) => { const [source, plate] = key.split("/"); return held.get(source)[plate][format]; });
    return format === "csl-json" ? `[\n${texts.join(",\n")}\n]\n` : texts.join("\n");
  }

  function filteredList(box) {
    const select = box.querySelector("select"), said = box.querySelector("[role=status]");
    const remembered = InPeriod.recall(FORMAT);
    if (ENDINGS[remembered]) select.value = remembered;
    box.querySelector("button").addEventListener("click", async () => {
      const keys = InPeriod.listedPlates(), format = select.value;
      InPeriod.remember(FORMAT, format);
      if (!keys.length) { said.textContent = "There is no plate to cite."; return; }
      said.textContent = "Gathering …";
      try {
        keep(`plates.${ENDINGS[format]}`, await cited(keys, format), KINDS[format]);
        said.textContent = `${keys.length} ${keys.length === 1 ? "citation" : "citations"} kept.`;
      } catch (missing) {
        said.textContent = "The citations could not be loaded: is the folder data/cite beside this page?";
      }
    });
  }

  function start() {
    for (const box of document.querySelectorAll(".cite-box")) { oneStyle(box); files(box); }
    for (const box of document.querySelectorAll(".link-holder")) copyLink(box);
    for (const box of document.querySelectorAll(".cite-list")) filteredList(box);
  }

  InPeriod.cited = cited;
  if (typeof document !== "undefined") {
    if (document.readyState === "loading") document.addEventListener("DOMContentLoaded", start);
    else start();
  }
})(globalThis);
