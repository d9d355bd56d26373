// Citations on the page: one style at a time, the reader's choice remembered; files for reference managers.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod ||= {});
  const { h, remember, recall, download } = InPeriod;
  const STYLE = "inperiod-style", FORMAT = "inperiod-format";
  const KINDS = { "csl-json": "application/vnd.citationstyles.csl+json", biblatex: "text/x-bibtex", ris: "application/x-research-info-systems" };
  const ENDINGS = { "csl-json": "csl.json", biblatex: "bib", ris: "ris" };

  const keep = (name, text, format) => download(name, `${KINDS[format]};charset=utf-8`, text);

  /** All styles in one list, of which the chosen one shows. */
  function oneStyle(box) {
    const [list, ...others] = box.querySelectorAll(".citations");
    for (const more of others) list.append(...more.children);
    for (const details of box.querySelectorAll(".more-citations")) details.remove();
    const terms = [...list.querySelectorAll("dt")];
    if (terms.length < 2) return;
    const show = () => {
      for (const term of terms) {
        term.hidden = true; // the select says which style it is
        term.nextElementSibling.hidden = term.dataset.style !== select.value;
      }
    };
    const chosen = () => {
      remember(STYLE, select.value);
      show();
    };
    const select = h("select", { onchange: chosen }, ...terms.map((term) => h("option", { value: term.dataset.style }, term.textContent)));
    const remembered = recall(STYLE);
    if (terms.some((term) => term.dataset.style === remembered)) select.value = remembered;
    list.before(h("label", { class: "cite-style" }, "Style ", select));
    show();
  }

  /** Files of one page: what stands in the page is what is kept. */
  function files(box) {
    for (const holder of box.querySelectorAll("[data-format]")) {
      const { format, file } = holder.dataset, text = holder.querySelector("pre").textContent;
      holder.querySelector(".keep-holder").append(
        h("button", { type: "button", class: "copy", onclick: () => keep(file, text, format) }, "Keep as a file"));
    }
  }

  function copyLink(box) {
    const canonical = document.querySelector('link[rel="canonical"]');
    const address = () => (canonical ? canonical.href : location.href.split("#")[0]);
    box.append(...InPeriod.copyButton("Copy a link to this page", null, address, address));
  }

  /** The citations of the plates with these keys as the text of one file. */
  async function cited(keys, format) {
    const pairs = keys.map((key) => key.split("/")), sources = [...new Set(pairs.map(([source]) => source))];
    const held = await Promise.all(sources.map((source) => InPeriod.load(`cite/${source}`)));
    const texts = pairs.map(([source, plate]) => held[sources.indexOf(source)][plate][format]);
    return format === "csl-json" ? `[\n${texts.join(",\n")}\n]\n` : texts.join("\n");
  }

  function filteredList(box) {
    const select = box.querySelector("select"), said = box.querySelector("[role=status]");
    const remembered = recall(FORMAT);
    if (ENDINGS[remembered]) select.value = remembered;
    box.querySelector("button").addEventListener("click", async () => {
      const keys = InPeriod.listedPlates(), format = select.value;
      remember(FORMAT, format);
      if (!keys.length) { said.textContent = "There is no plate to cite."; return; }
      said.textContent = "Gathering …";
      try {
        keep(`plates.${ENDINGS[format]}`, await cited(keys, format), format);
        said.textContent = `${InPeriod.counted(keys.length, "citation")} kept.`;
      } catch (missing) {
        said.textContent = "The citations could not be loaded: is the folder data/cite beside this page?";
      }
    });
  }

  document.addEventListener("DOMContentLoaded", () => {
    for (const box of document.querySelectorAll(".cite-box")) { oneStyle(box); files(box); }
    for (const box of document.querySelectorAll(".link-holder")) copyLink(box);
    for (const box of document.querySelectorAll(".cite-list")) filteredList(box);
  });
})(globalThis);
