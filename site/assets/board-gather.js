// Gathering a plate for a board of one's own, from its page and from any answer; and the list of those boards.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod ||= {});
  const { h, announce } = InPeriod;
  const { all, save, remove, fresh } = InPeriod.boards;
  const EDITOR = "my-board.html";
  const NEW = "new";

  /** The window that asks which board a plate goes to. `given` is {plate, label, base, supports, term, board}. */
  function ask(given) {
    const boards = all().filter((each) => !each.broken);
    const select = h("select", { id: "gather-board" },
      ...boards.map((each) => h("option", { value: each.id }, each.board.title || "A board without a title")),
      h("option", { value: NEW }, "a new board"));
    const reason = h("textarea", { id: "gather-reason", rows: 3, maxlength: 20000 });
    const said = h("p", { class: "gather-said", role: "status" });
    const dialog = h("dialog", { class: "gather", "aria-labelledby": "gather-head" },
      h("form", { method: "dialog" },
        h("h2", { id: "gather-head" }, "Gather for a board"),
        h("p", { class: "gather-what" }, given.label, given.term && `, for ${given.term}`),
        h("p", {}, h("label", { for: "gather-board" }, "Board"), select),
        h("p", {}, h("label", { for: "gather-reason" }, "Reason"), reason),
        said,
        h("p", { class: "own-tools" },
          h("button", { type: "button", class: "gather-do", onclick: gather }, "Gather"),
          h("button", { type: "submit" }, "Close"))));

    function gather() {
      const entry = boards.find((each) => each.id === select.value) || fresh(given.board());
      const { board } = entry;
      const link = h("a", { href: `${given.base}${EDITOR}#id=${entry.id}` }, "Open the board");
      if (board.plates.some((each) => each.plate === given.plate)) return said.replaceChildren("It is on that board already. ", link);
      if (given.supports && !board.features.some((each) => each.term === given.supports)) board.features.push({ term: given.supports });
      board.plates.push({ plate: given.plate, reason: reason.value.trim(), supports: given.supports || "" });
      const slip = save(entry);
      if (slip) return said.replaceChildren(`Not gathered: ${slip}.`);
      said.replaceChildren(`Gathered for “${board.title || "a board without a title"}”. `, link);
      dialog.querySelector(".gather-do").disabled = true;
    }

    dialog.addEventListener("close", () => dialog.remove());
    document.body.append(dialog);
    dialog.showModal();
  }

  const button = (says, act) => h("button", { type: "button", class: "copy gather-button", "aria-label": says, onclick: act }, "Gather for a board");

  /** On a plate's page: [data-gather] holds all there is to know. */
  function onPlate(holder) {
    const { gather: plate, label, garment, target, base } = holder.dataset;
    const board = () => ({ title: `Board for ${label}`, garment, target });
    holder.append(button(`Gather for a board: ${label}`, () => ask({ plate, label, base, board })));
  }

  /** In an answer: every plate that is cited, for the feature it answers. */
  function onAnswer(answer) {
    const value = (id) => document.getElementById(id).value;
    const furnish = () => {
      for (const cite of answer.querySelectorAll(".cite")) {
        if (cite.querySelector(".gather-button")) continue;
        const term = cite.closest("[data-term]").dataset.term,
          one = !term.includes(" + "),
          words = (found) => (found ? found.textContent.replace(/\s+/g, " ").trim() : "");
        const label = `${words(cite.querySelector(".trade-what"))}, ${words(cite.querySelector(".trade-where"))}, ${cite.querySelector(".trade-when").firstChild.textContent.trim()}`;
        const board = () => {
          const features = [...answer.querySelectorAll("[data-term]")].map((each) => each.dataset.term).filter((each) => !each.includes(" + "));
          return { title: document.getElementById("answer-head").textContent, garment: value("ask-garment"), target: value("ask-when"), features: [...new Set(features)] };
        };
        const given = { plate: cite.dataset.plate, label, base: "", board, supports: one ? term : "", term: one ? words(cite.closest("[data-term]").querySelector(".fit-name a")) : "" };
        cite.querySelector(".cite-copy").append(button(`Gather for a board: ${label}`, () => ask(given)));
      }
    };
    new MutationObserver(furnish).observe(answer, { childList: true });
    furnish();
  }

  // ---- the list on the page of boards

  function listed(box) {
    const said = document.getElementById("own-said");
    const draw = () => box.replaceChildren(...all().map((each) => each.broken ? damaged(each) : line(each)));
    const go = (entry) => {
      const slip = save(entry);
      if (!slip) location.href = `${EDITOR}#id=${entry.id}`;
      else {
        const carries = InPeriod.boardFile.inLink(entry.board);
        said.replaceChildren(`It cannot be kept here: ${slip}. `, carries && h("a", { href: `${EDITOR}#${carries}` }, "Open it all the same"));
      }
    };

    function line({ id, saved, board }) {
      const when = saved ? `saved ${new Date(saved).toLocaleString("en-GB", { dateStyle: "long", timeStyle: "short" })}` : "";
      const plates = InPeriod.counted(board.plates.length, "plate");
      return h("li", {}, h("p", { class: "board-name" }, h("a", { href: `${EDITOR}#id=${id}` }, board.title || "A board without a title")),
        h("p", { class: "board-what" }, [(board.garment || "").replace(/-/g, " "), board.target, `${plates} gathered`, when].filter(Boolean).join(", ")));
    }

    function damaged({ id, text, broken }) {
      return h("li", {}, h("p", { class: "board-name" }, "A saved board that cannot be opened"), h("p", { class: "board-what" }, `${broken} It is left as it is.`),
        h("p", { class: "own-tools" },
          h("button", { type: "button", onclick: () => InPeriod.download(`board-${id}.txt`, "text/plain", text) }, "Save its text as a file"),
          h("button", { type: "button", onclick: () => { remove(id); draw(); announce("Deleted."); } }, "Delete it")));
    }

    async function take(file) {
      if (!file) return;
      try {
        go(fresh(InPeriod.boardFile.readBoard(await file.text())));
      } catch (slip) {
        said.textContent = `${file.name} was not opened, and nothing was changed. ${slip.message}`;
      }
    }

    document.getElementById("own-new").addEventListener("click", () => go(fresh({})));
    const input = document.getElementById("own-import");
    input.addEventListener("change", async () => {
      await take(input.files[0]);
      input.value = "";
    });
    root.addEventListener("storage", draw);
    draw();
  }

  function start() {
    for (const holder of document.querySelectorAll("[data-gather]")) onPlate(holder);
    const answer = document.getElementById("answer"),
      list = document.getElementById("own-boards-list");
    if (answer) onAnswer(answer);
    if (list) listed(list);
  }

  if (typeof document !== "undefined") document.addEventListener("DOMContentLoaded", start);
})(globalThis);
