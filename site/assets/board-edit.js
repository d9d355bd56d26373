// The page on which one's own board is written: saved as one goes, its verdicts worked out while one types.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod ||= {});
  const { h, announce, later, perCent, raised, readAddress } = InPeriod;
  const { PREFIX, boardOf, nested, opened, read, save, remove, fresh } = InPeriod.boards;
  const { writeBoard, writeTable, readYaml, inLink, fromLink, fileName } = InPeriod.boardFile;
  const SIDES = {
    inside: "inside the window",
    "mostly outside": "mostly outside the window",
    before: "before the window",
    after: "after the window",
    undated: "undated",
  };
  const SHOWS_AT = ["across the field", "at arm's length", "inside"];
  const ROWS = {
    questions: { one: "question", cells: [["", "Question", "area"]] },
    departures: {
      one: "departure",
      cells: [
        ["original", "The original", "area"],
        ["stand_in", "What stands in", "area"],
        ["reason", "Why", "area"],
        ["shows_at", "It shows", SHOWS_AT],
        ["feature", "Feature", "planned"],
      ],
    },
    revisions: { one: "revision", cells: [["on", "When", "date"], ["by", "Who", "text"], ["what", "What", "area"]] },
  };
  const KINDS = {
    frill: "what: Gathered edging\nedge: 36 in\nfullness: 1.5",
    tucks: "what: Pin tucks\nstyle: pin\nwidth: 1/4 in\ngap: 1/2 in\nnumber: 6",
    pleats: "what: Knife pleats\nstyle: knife\nfinished: 36 in\npleat: 1 in",
    bias: "what: Bias strip\nwidth: 1 in\nlength: 60 in",
    insertion: "what: Lace insertion\nof: insertion\nalong: 36 in",
    fastenings: "what: Buttons\nof: buttons\nopening: 10 in\nspacing: 2 in",
    stitching: "what: Feather stitch\nstitch: feather stitch\nalong: 36 in\nfactor: 3",
    cloth: "what: Cloth\nwidth: 36 in\npieces:\n  - {name: front, width: 20 in, length: 42 in, turning: 5/8 in}",
  };
  const KIND_WORDS = {
    frill: "gathered edging or frill",
    insertion: "insertion, ribbon, braid, tape",
    fastenings: "buttons, hooks, press studs",
    stitching: "stitching by hand",
    bias: "bias strips",
    cloth: "cloth and its lay",
  };

  function start() {
    const holdings = InPeriod.hold(InPeriod.data.index, InPeriod.data.every);
    const at = (id) => document.getElementById(id);
    const { vocabulary } = InPeriod.data;
    const options = InPeriod.question.featureOptions(holdings, vocabulary);
    const exclusive = new Set(vocabulary.facets.filter((facet) => facet.exclusive).map((facet) => facet.id));
    const past = [],
      future = [];
    let entry,
      carried = false,
      clash = null,
      unsaved = false,
      lastEdit = "",
      editedAt = 0;

    // ---- opening, saving, two tabs

    function open() {
      const asked = new Map(readAddress(location.hash)),
        id = asked.get("id");
      past.length = future.length = 0;
      carried = false;
      settled();
      entry = id ? read(id) : null;
      if (entry && entry.broken) {
        const broken = entry;
        entry = fresh({});
        notice(`${broken.broken} It is left as it is.`, [
          ["Save its text as a file", () => InPeriod.download(`board-${broken.id}.txt`, "text/plain", broken.text)],
        ]);
      } else if (asked.get("board")) {
        try {
          entry = fresh(fromLink(asked.get("board")));
          carried = true;
          notice("This board came in a link. It is kept here once you change it, or now:", [["Keep this board", () => keep()]]);
        } catch (slip) {
          entry = fresh({});
          notice("The link to a board was cut short or changed on its way, so nothing could be read from it.", []);
        }
      } else if (!entry) {
        if (id) notice("There is no such board in this browser. This is a new, empty one.", []);
        entry = fresh({});
      }
      draw();
      told(entry.revision ? `Saved ${clock(entry.saved)}` : "Not saved yet");
    }

    const clock = (moment) => new Date(moment).toLocaleTimeString("en-GB", { hour: "2-digit", minute: "2-digit" });

    function told(words, bad) {
      at("own-saved").textContent = words;
      at("own-saved").classList.toggle("own-bad", Boolean(bad));
      at("own-undo").disabled = !past.length;
      at("own-redo").disabled = !future.length;
    }

    function keep() {
      const stored = clash ? null : read(entry.id);
      if (!clash && stored && !stored.broken && stored.revision > entry.revision) clashed(stored);
      if (clash) return told("Not saved: first choose between the two tabs, above", true);
      const first = entry.revision === 0,
        slip = save(entry);
      unsaved = Boolean(slip);
      if (slip) return told(`Not saved: ${slip}. Nothing is lost while this page stays open; save it as a file.`, true);
      if (first) history.replaceState(null, "", "#id=" + entry.id);
      if (carried) settled();
      carried = false;
      told(`Saved ${clock(entry.saved)}`);
    }

    function notice(words, choices) {
      at("own-notice").replaceChildren(
        h("p", {}, words),
        h("p", { class: "own-tools" }, ...choices.map(([label, act]) => h("button", { type: "button", onclick: act }, label))),
      );
      at("own-notice").hidden = false;
    }

    function settled() {
      clash = null;
      at("own-notice").hidden = true;
    }

    function clashed(other) {
      clash = other;
      const mine = JSON.stringify(entry.board);
      notice(`This board was changed in another tab (at ${clock(other.saved)}). Which one is to stay? The other can be had back with Undo.`, [
        ["Show the other", () => { settled(); past.push(mine); entry.board = other.board; entry.revision = other.revision; draw(); told(`Saved ${clock(other.saved)}`); }],
        ["Keep this one", () => { settled(); past.push(JSON.stringify(other.board)); entry.revision = other.revision; keep(); }],
        ["Keep both", () => { settled(); entry = fresh({ ...entry.board, title: `${entry.board.title} (second copy)` }); draw(); keep(); }],
      ]);
      told("Changed in another tab", true);
    }

    root.addEventListener("storage", (event) => {
      if (event.key !== PREFIX + entry.id && event.key !== null) return;
      if (!entry.revision) return;
      if (event.newValue === null || event.newValue === undefined) {
        entry.revision = 0;
        unsaved = true;
        notice("This board was deleted in another tab. What you see is the last copy.", [["Keep it", () => { settled(); keep(); }]]);
        return told("Not saved: deleted in another tab", true);
      }
      const other = opened(entry.id, event.newValue);
      if (other.broken || other.revision < entry.revision) return;
      if (JSON.stringify(other.board) === JSON.stringify(boardOf(entry.board))) entry.revision = other.revision;
      else clashed(other);
    });
    root.addEventListener("beforeunload", (event) => (unsaved || clash) && event.preventDefault());

    // ---- changing

    /** One change, to be undone as one; changes of the same field in quick succession count as one. */
    function edit(what, change, redraw) {
      if (!what || what !== lastEdit || Date.now() - editedAt > 4000) {
        past.push(JSON.stringify(entry.board));
        future.length = 0;
      }
      lastEdit = what;
      editedAt = Date.now();
      change(entry.board);
      keep();
      if (redraw) draw();
      else {
        if (/^(target|wearer)/.test(what)) drawPlan();
        checkSoon();
      }
    }

    function step(from, to) {
      if (!from.length) return;
      to.push(JSON.stringify(entry.board));
      entry.board = JSON.parse(from.pop());
      lastEdit = "";
      draw();
      keep();
      announce(from === past ? "Undone." : "Done again.");
    }

    function move(list, from, to, focus) {
      const held = entry.board[list];
      if (to < 0 || to >= held.length || from === to) return;
      edit("", () => held.splice(to, 0, held.splice(from, 1)[0]), true);
      const item = document.querySelector(`[data-list="${list}"]`).children[to];
      const wanted = focus && item.querySelector(focus);
      if (wanted) (wanted.disabled ? item.querySelector(".own-moves button:enabled") : wanted).focus();
      announce(`Now ${to + 1} of ${held.length}.`);
    }

    function drop(list, index) {
      edit("", (board) => board[list].splice(index, 1), true);
      const items = document.querySelector(`[data-list="${list}"]`).children;
      const next = items[Math.min(index, items.length - 1)];
      if (next) (next.querySelector("textarea, input, select, button") || next).focus();
    }

    function moves(list, index, name) {
      const last = entry.board[list].length - 1;
      const button = (kind, sign, says, act, off) =>
        h("button", { type: "button", class: kind, "aria-label": `${says}: ${name}`, title: says, disabled: off, onclick: act }, sign);
      const handle = h("span", { class: "own-handle", draggable: "true", title: "Drag to another place", "aria-hidden": "true" }, "⠿");
      handle.addEventListener("dragstart", (event) => {
        event.dataTransfer.setData("text/plain", `${list} ${index}`);
        event.dataTransfer.effectAllowed = "move";
        dragged = { list, index };
      });
      return h("p", { class: "own-moves" }, handle,
        button("own-up", "↑", "Up", () => move(list, index, index - 1, ".own-up"), index === 0),
        button("own-down", "↓", "Down", () => move(list, index, index + 1, ".own-down"), index === last),
        button("own-off", "×", "Take away", () => drop(list, index)));
    }

    let dragged = null;
    for (const box of document.querySelectorAll("[data-list]")) {
      const list = box.dataset.list;
      const itemAt = (target) => [...box.children].findIndex((item) => item.contains(target));
      box.addEventListener("dragover", (event) => {
        if (!dragged || dragged.list !== list) return;
        event.preventDefault();
        for (const item of box.children) item.classList.toggle("own-over", item.contains(event.target));
      });
      box.addEventListener("drop", (event) => {
        if (!dragged || dragged.list !== list) return;
        event.preventDefault();
        move(list, dragged.index, itemAt(event.target));
      });
      box.addEventListener("dragend", () => {
        dragged = null;
        for (const item of box.children) item.classList.remove("own-over");
      });
      box.addEventListener("keydown", (event) => {
        if (!event.altKey || !/^Arrow(Up|Down)$/.test(event.key) || list === "measures") return;
        const index = itemAt(event.target);
        if (index < 0) return;
        event.preventDefault();
        const up = event.key === "ArrowUp";
        move(list, index, index + (up ? -1 : 1), up ? ".own-up" : ".own-down");
      });
    }

    // ---- fields

    const fieldOf = (name) => name.split(".").reduce((held, part) => (held || {})[part], entry.board);

    function setField(name, value) {
      const parts = name.split("."),
        last = parts.pop();
      edit(name, (board) => { (parts.length ? board[parts[0]] : board)[last] = value; }, name === "garment");
    }

    /** A box that grows with its text, on the screen and on paper. */
    function grown(area) {
      area.parentNode.dataset.text = area.value + " ";
    }

    function control(kind, value, label, set) {
      const attributes = { "aria-label": label };
      let box;
      if (kind === "area") {
        box = h("textarea", { rows: 1, maxlength: 20000, placeholder: " ", ...attributes });
      } else if (kind === "planned" || Array.isArray(kind)) {
        const given = kind === "planned" ? entry.board.features.map((each) => each.term).filter(Boolean) : kind;
        const known = given.includes(value) || !value ? given : [...given, value];
        box = h("select", attributes, h("option", { value: "" }, "not said"),
          ...known.map((each) => h("option", { value: each }, kind === "planned" ? labelOf(each) : each)));
      } else box = h("input", { type: kind, maxlength: 1000, placeholder: " ", ...attributes });
      box.value = value || "";
      box.addEventListener(box.tagName === "SELECT" ? "change" : "input", () => set(box.value));
      if (kind !== "area") return box;
      const frame = h("span", { class: "grow" }, box);
      grown(box);
      box.addEventListener("input", () => grown(box));
      return frame;
    }

    const labelled = (words, box) => h("label", { class: "own-cell" }, h("span", { class: "own-label" }, words), " ", box);
    const termOf = (word) => holdings.facts.terms[holdings.facts.termIndex.get(word)];
    const labelOf = (word) => { const term = termOf(word || ""); return term ? term.label : (word || "").replace(/[/-]/g, " "); };

    function draw() {
      document.title = document.title.replace(/^.*?( · |$)/, `${entry.board.title || "A board of your own"}$1`);
      at("own-head").textContent = entry.board.title || "A board of your own";
      for (const box of document.querySelectorAll("[data-field]")) {
        const value = fieldOf(box.dataset.field);
        box.value = value === undefined || value === null ? "" : String(value);
        if (box.tagName === "SELECT" && box.value !== String(value || "")) {
          box.append(h("option", { value }, String(value)));
          box.value = value;
        }
        if (box.parentNode.className === "grow") grown(box);
      }
      at("own-target").value = entry.board.target;
      drawFeatures();
      drawPlan();
      drawPlates();
      for (const list of Object.keys(ROWS)) drawRows(list);
      drawMeasures();
      drawMaking();
      check();
    }

    const listBox = (list) => document.querySelector(`[data-list="${list}"]`);

    function drawFeatures() {
      listBox("features").replaceChildren(...entry.board.features.map((feature, index) => {
        const word = feature.term || `${feature.facet}/none`,
          term = termOf(word),
          name = term ? term.label : labelOf(word);
        const details = [feature.at && `at the ${feature.at}`, feature.width && `${feature.width} wide`, feature.count && `${feature.count} of them`, feature.colour];
        const facet = term && holdings.facts.facets[term.facet].label;
        return h("li", { class: "planned", "data-term": word },
          h("div", { class: "planned-head" },
            h("h3", {}, facet && h("i", {}, facet), facet && ", ", term ? h("a", { href: `term/${word}.html` }, name) : name, " ",
              h("span", { class: "detail" }, details.filter(Boolean).join(", "))),
            h("p", { class: "planned-verdict" })),
          h("div", { class: "planned-found" }),
          h("div", { class: "own-foot" },
            h("details", { class: "own-note", open: Boolean(feature.note) }, h("summary", {}, "Note"),
              control("area", feature.note, `Note on ${name}`, (value) => edit(`note ${index}`, (board) => { board.features[index].note = value; }))),
            moves("features", index, name)));
      }));
    }

    const FLATS = ["words", "drawing", "live"].map((part) => `assets/flat-${part}.js`);
    let planned = 0;

    /** The planned garment as a flat, in the next frame; what draws it is loaded when first needed. */
    function drawPlan() {
      const box = at("own-flat");
      box.hidden = !entry.board.garment;
      if (box.hidden) return;
      cancelAnimationFrame(planned);
      planned = requestAnimationFrame(() => InPeriod.need(...FLATS).then(() => {
        const { garment, features, wearer, target } = entry.board;
        const { window } = InPeriod.question.readWindow(target.trim(), holdings.facts.circaYears);
        const words = { caption: "Drawn from the plan as it stands", by: "the plan", said: "Planned" };
        box.hidden = !InPeriod.flats.show(box, { garment, features, window, who: (wearer || {}).who }, holdings.facts, words);
      }).catch(() => { box.hidden = true; }));
    }

    /** Whether what is said of these plates is there; where it is not it is brought, and then the task done. */
    function atHand(keys, task) {
      const coming = holdings.need(keys.map(holdings.numberOf).filter((number) => number !== undefined));
      if (coming) coming.then(task, () => notice(InPeriod.UNLOADED, [["Good", settled]]));
      return !coming;
    }

    function drawPlates() {
      const { board } = entry;
      if (!atHand(board.plates.map((each) => each.plate), drawPlates)) return;
      listBox("plates").replaceChildren(...board.plates.map((each, index) => {
        const number = holdings.numberOf(each.plate),
          plate = number === undefined ? null : holdings.plate(number);
        const name = plate ? `${plate.label}, ${plate.when}` : each.plate;
        const set = (field) => (value) => edit(`${field} ${index}`, () => { board.plates[index][field] = value; });
        const image = plate && plate.picture;
        return h("li", { class: "gathered-plate", "data-plate": each.plate },
          image && h("a", { class: "gathered-picture", href: plate.path, tabindex: -1, "aria-hidden": "true" },
            h("img", { src: image.path, alt: "", width: image.width, height: image.height, draggable: "false" })),
          h("div", { class: "gathered-body" },
            h("p", { class: "gathered-name" }, plate ? h("a", { href: plate.path }, plate.label) : each.plate, plate && `, ${plate.when}`,
              plate && plate.grade && h("abbr", { class: "grade", title: `Dating grade ${plate.grade}` }, plate.grade),
              h("span", { class: "gathered-stands" })),
            labelled("Reason", control("area", each.reason, `Reason for ${name}`, set("reason"))),
            labelled("Gathered for", control("planned", each.supports, `${name} is gathered for`, set("supports"))),
            plate && h("p", { class: "gathered-cite" }, plate.cite),
            moves("plates", index, name)));
      }));
    }

    function drawRows(list) {
      const { one, cells } = ROWS[list];
      const rows = entry.board[list].map((row, index) =>
        h("li", { class: `own-row own-${list}` },
          ...cells.map(([field, label, kind]) => {
            const put = (value) => edit(`${list} ${index} ${field}`, (board) => {
              if (field) board[list][index][field] = value;
              else board[list][index] = value;
            });
            const value = field ? row[field] : row,
              fits = kind !== "date" || !value || /^\d{4}-\d\d-\d\d$/.test(value);
            return labelled(label, control(fits ? kind : "text", value, `${label}, ${one} ${index + 1}`, put));
          }),
          moves(list, index, `${one} ${index + 1}`)));
      listBox(list).replaceChildren(...rows);
      adder(list, `Add a ${one}`, () => edit("", (board) => board[list].push(list === "questions" ? "" : list === "revisions" ? { on: new Date().toISOString().slice(0, 10) } : {}), true));
    }

    function adder(list, words, act) {
      const box = listBox(list),
        held = box.nextElementSibling;
      if (held && held.classList.contains("own-adder")) return;
      box.after(h("p", { class: "own-adder" }, h("button", { type: "button", onclick: () => {
        act();
        const added = box.lastElementChild && box.lastElementChild.querySelector("textarea, input");
        if (added) added.focus();
      } }, words)));
    }

    function drawMeasures() {
      const pairs = Object.entries(entry.board.measures);
      const put = (index, name, value) => edit(`measure ${index}`, (board) => {
        const taken = Object.keys(board.measures).filter((each, i) => i !== index);
        let own = name;
        for (let copy = 2; taken.includes(own); copy += 1) own = `${name} ${copy}`;
        board.measures = Object.fromEntries(Object.entries(board.measures).map((pair, i) => (i === index ? [own, value] : pair)));
      });
      listBox("measures").replaceChildren(...pairs.map(([name, value], index) => {
        const now = () => Object.entries(entry.board.measures)[index];
        const names = control("text", name, `Measure ${index + 1}`, (text) => put(index, text, now()[1]));
        const values = nested(value)
          ? h("span", {}, JSON.stringify(value))
          : control("text", String(value), `Length ${index + 1}`, (text) => put(index, now()[0], text));
        return h("li", { class: "own-row own-measures" }, labelled("Measure", names), labelled("Length", values),
          h("span", { class: "own-both" }),
          h("p", { class: "own-moves" }, h("button", { type: "button", class: "own-off", "aria-label": `Take away: ${name}`, title: "Take away",
            onclick: () => edit("", (board) => { board.measures = Object.fromEntries(pairs.filter((pair, i) => i !== index)); }, true) }, "×")));
      }));
      adder("measures", "Add a measure", () => edit("", (board) => {
        let name = "measure";
        for (let copy = 2; name in board.measures; copy += 1) name = `measure ${copy}`;
        board.measures = { ...board.measures, [name]: "" };
      }, true));
    }

    function drawMaking() {
      listBox("making").replaceChildren(...entry.board.making.map((line, index) => {
        const { kind, ...rest } = line,
          words = KIND_WORDS[kind] || kind || "line";
        const slip = h("p", { class: "own-slip", role: "status" });
        const area = control("area", writeTable(rest).join("\n"), `Figures of line ${index + 1}, ${words}`, (text) => {
          try {
            const given = text.trim() ? readYaml(text) : {};
            if (Array.isArray(given)) throw new Error("Line 1: a name with a colon and a blank was expected here, such as width: 1 in");
            slip.textContent = "";
            edit(`making ${index}`, (board) => { board.making[index] = { kind, ...given }; });
          } catch (problem) {
            slip.textContent = `Not taken yet. ${problem.message}`;
          }
        });
        area.querySelector("textarea").spellcheck = false;
        return h("li", { class: "making-line" },
          h("div", { class: "own-made" }),
          h("details", { class: "own-figures", open: !line.what || undefined }, h("summary", {}, `Its figures: ${words}`),
            area, slip, h("p", { class: "own-hint" }, "One to a line: a name, a colon, a blank, and what it is. Measures with their unit: 1 1/2 in, 4 cm.")),
          moves("making", index, line.what || `line ${index + 1}`));
      }));
      const box = listBox("making");
      if (box.nextElementSibling.classList.contains("own-adder")) return;
      const select = h("select", { "aria-label": "Kind of work" },
        ...Object.keys(KINDS).map((kind) => h("option", { value: kind }, KIND_WORDS[kind] || kind)));
      box.after(h("p", { class: "own-adder" }, select, " ", h("button", { type: "button", onclick: () => {
        edit("", (board) => board.making.push({ kind: select.value, ...readYaml(KINDS[select.value]) }), true);
        box.lastElementChild.querySelector("details").open = true;
        box.lastElementChild.querySelector("textarea").focus();
      } }, "Add a line")));
    }

    // ---- what is worked out

    function check() {
      const { board } = entry,
        given = board.target.trim();
      const reading = given ? InPeriod.question.readWindow(given, holdings.facts.circaYears) : { error: "For when? A year, a decade, a range or a phrase: 1926, the 1920s, summer 1912." };
      at("own-reading").textContent = reading.error || reading.reading;
      at("own-reading").classList.toggle("ask-wrong", Boolean(reading.error) && given !== "");
      at("own-target").setAttribute("aria-invalid", String(Boolean(reading.error) && given !== ""));
      const found = InPeriod.checkBoard(holdings, vocabulary, board, reading.window || null);
      const named = [...board.plates, ...found.suggested, ...found.remarks].map((each) => each.plate);
      if (!atHand([...named, ...found.planned.flatMap((each) => each.cite)], check)) return;
      showFeatures(board, found);
      found.gathered.forEach((each, index) => {
        const item = listBox("plates").children[index],
          said = [SIDES[each.side], each.aside && each.aside !== "undated" && "not weighed"].filter(Boolean).join(", ");
        item.querySelector(".gathered-stands").textContent = each.known ? said : "not in this catalogue";
        item.classList.toggle("gathered-aside", !each.known || Boolean(each.aside) || each.side !== "inside");
      });
      showTogether(found.together);
      showSettle(found);
      showSuggested(found);
      showMaking(board);
      showCautions(board);
      showSources(board);
    }
    const checkSoon = later(250, check);

    const leads = (finding) => [vocabulary.leads[finding.verdict], ...finding.reasons.slice(0, 1)].join(" ");

    function showFeatures(board, found) {
      const tally = new Map();
      found.planned.forEach(({ finding, usual, cite }, index) => {
        const item = listBox("features").children[index],
          feature = board.features[index];
        item.querySelector(".planned-verdict").replaceChildren(...(finding ? [InPeriod.verdict(finding.verdict)] : []));
        if (finding) tally.set(finding.verdict, (tally.get(finding.verdict) || 0) + 1);
        const gathered = board.plates.some((each) => each.supports === feature.term);
        item.querySelector(".planned-found").replaceChildren(
          ...[
            finding && h("p", {}, leads(finding)),
            usual.length > 0 && h("p", { class: "planned-usual" }, h("span", { class: "label" }, "Usual then"), " ",
              ...usual.flatMap((each, i) => [i ? ", " : "", h("a", { href: `term/${each.term}.html` }, each.label), ` ${perCent(each.share.value)}`])),
            finding && finding.reasons.length > 1 && h("details", { class: "planned-why" }, h("summary", {}, "Why"),
              h("ul", { class: "reasons" }, ...finding.reasons.slice(1).map((reason) => h("li", {}, reason)))),
            !gathered && cite.length > 0 && h("div", { class: "own-cites" }, h("p", { class: "label" }, "Nothing gathered for it yet; best to cite"),
              h("ol", { class: "trade-list" }, ...cite.map((key) => offered(key, feature.term)))),
          ].filter(Boolean));
      });
      at("own-tally").replaceChildren(...[...tally].sort((a, b) => b[1] - a[1]).map(([verdict, count]) =>
        h("span", { class: "tally-part" }, `${count} `, InPeriod.verdict(verdict))));
    }

    /** A plate that can be gathered, as the line of a list. */
    function offered(key, supports, more) {
      const plate = holdings.plate(holdings.numberOf(key));
      return h("li", {}, InPeriod.plateLine(plate), more,
        h("button", { type: "button", class: "own-gather", "aria-label": `Gather ${plate.label}, ${plate.source}, ${plate.when}`,
          onclick: () => {
            edit("", (board) => board.plates.push(supports ? { plate: key, supports } : { plate: key }), true);
            announce("Gathered.");
          } }, "Gather"));
    }

    function showTogether(together) {
      at("own-together").hidden = !together;
      if (together) at("own-together").lastElementChild.replaceChildren(h("p", { class: "planned-verdict" }, InPeriod.verdict(together.verdict)), h("p", {}, leads(together)));
    }

    function showSettle({ remarks, label }) {
      const parts = Object.entries(InPeriod.boardRemarks).flatMap(([kind, heading]) => {
        const some = remarks.filter((each) => each.kind === kind);
        if (!some.length) return [];
        return [h("h3", {}, heading), h("ul", { class: `settle settle-${kind.replace(" ", "-")}` }, ...some.map(({ plate, term, sentence }) => {
          const number = plate && holdings.numberOf(plate);
          const known = number !== null && number !== undefined && holdings.plate(number);
          const lead = plate && [known ? h("a", { href: known.path }, `${known.label}, ${known.where || known.when}`) : plate, term && `, gathered for ${label(term)}`, ". "];
          return h("li", {}, lead, sentence);
        }))];
      });
      const lacks = lacking();
      if (lacks.length) parts.unshift(h("h3", {}, "Before the catalogue takes its file"), h("ul", { class: "settle" }, ...lacks.map((each) => h("li", {}, each))));
      at("own-settle").replaceChildren(...parts);
    }

    /** What the catalogue would complain of. */
    function lacking() {
      const { board } = entry,
        found = [];
      if (!board.title.trim()) found.push("The board has no title.");
      if (!board.garment) found.push("No garment is chosen.");
      if (!edtfOf(board.target)) found.push("The time it is for cannot be read.");
      if (board.departures.some((each) => !each.original || !each.stand_in || !each.reason)) found.push("A departure needs its original, what stands in, and why.");
      return found;
    }

    function edtfOf(text) {
      try {
        return InPeriod.dating.readPhrase(text).edtf;
      } catch (slip) {
        return null;
      }
    }

    function showSuggested({ suggested, label }) {
      at("own-suggested").hidden = !suggested.length;
      at("own-suggested").querySelector("ol").replaceChildren(
        ...suggested.map((each) => offered(each.plate, "", h("p", { class: "trade-note" }, `shows ${each.shows.map(label).join(", ")}`))));
    }

    function showMaking(board) {
      const made = InPeriod.making.sheet(board.making);
      [...listBox("making").children].forEach((item, index) => {
        const line = made.lines.find((each) => each.index === index);
        item.querySelector(".own-made").replaceChildren(
          ...(line ? [h("h3", {}, line.title), h("p", { class: "making-cut" }, line.cut), h("p", { class: "making-formula" }, line.formula),
            line.figure && h("figure", { class: "making-figure" }, InPeriod.making.draw(line.figure)),
            ...line.notes.map((note) => h("p", { class: "making-note" }, note)),
            ...line.cautions.map((each) => h("p", { class: "caution", role: "note" }, h("span", { class: "caution-word" }, "Caution"), " ", each))] : []).filter(Boolean),
          ...made.problems.filter((each) => each.index === index).map((each) => h("p", { class: "own-slip" }, `${each.message} ${each.hint}`)),
          h("div", { "data-cautions": `making ${index + 1}` }));
      });
      at("own-shopping").replaceChildren(...(made.shopping.length ? [h("h3", {}, "To buy"), h("table", { class: "table shopping" },
        h("thead", {}, h("tr", {}, ...["What", "How much", "Cost"].map((word) => h("th", { scope: "col" }, word)))),
        h("tbody", {}, ...made.shopping.map((each) => h("tr", {}, h("th", { scope: "row" }, raised(each.what)), h("td", {}, each.text), h("td", { class: "number" }, each.cost || "")))))] : []));
      [...listBox("measures").children].forEach((item, index) => {
        const both = item.querySelector(".own-both");
        try {
          const read = InPeriod.making.readMeasure(Object.values(board.measures)[index]);
          both.textContent = InPeriod.making.shown(read.inches, read.metric);
        } catch (slip) {
          both.textContent = "";
        }
      });
    }

    const marked = new Map(vocabulary.facets.flatMap(({ id, cautions }) => Object.entries(cautions || {}).map(([term, which]) => [`${id}/${term}`, which])));
    const known = {
      kindOf: (plate) => {
        const number = holdings.numberOf(plate);
        const { documents, plates } = holdings.facts; // which are there before what is said of the plates is
        return number === undefined ? null : documents[plates.documentOf[number]].kind;
      },
      cautionsOf: (term) => marked.get(term) || [],
    };

    function showCautions(board) {
      const found = InPeriod.cautionsFor(board, known);
      for (const feature of listBox("features").children) feature.querySelector(".planned-found").append(h("div", { "data-cautions": feature.dataset.term }));
      for (const box of document.querySelectorAll("[data-cautions]"))
        box.replaceChildren(...found.filter((each) => each.where === box.dataset.cautions).map((each) =>
          h("p", { class: "caution", role: "note" }, h("a", { class: "caution-word", href: `cautions.html#${each.id}` }, each.name), " ", each.sentence)));
    }

    /** The sources of the gathered plates, in the style of list that goes with the board's; each style is a script. */
    function showSources(board) {
      const chosen = at("own-style").selectedOptions[0],
        style = (chosen && chosen.dataset.list) || at("own-style").options[0].dataset.list;
      const name = `sources/${style}`,
        cited = InPeriod.data[name];
      const { documents, plates } = holdings.facts;
      const numbers = board.plates.map((each) => holdings.numberOf(each.plate)).filter((number) => number !== undefined);
      const sources = [...new Set(numbers.map((number) => documents[plates.documentOf[number]].source))];
      at("own-sources").hidden = !sources.length;
      if (!sources.length) return;
      if (!cited) InPeriod.load(name).then(() => showSources(entry.board), () => {});
      else at("own-sources").querySelector("ul").replaceChildren(...sources.map((each) => cited[each]).sort((one, other) => one.localeCompare(other)).map((each) => h("li", {}, each)));
    }

    // ---- the page

    for (const box of document.querySelectorAll("[data-field]")) {
      box.addEventListener(box.tagName === "SELECT" ? "change" : "input", () => {
        if (box.dataset.field === "title") box.value = box.value.replace(/\s*\n\s*/g, " ");
        if (box.parentNode.className === "grow") grown(box);
        setField(box.dataset.field, box.value);
      });
    }
    at("own-target").addEventListener("input", () => setField("target", at("own-target").value));

    InPeriod.combobox(at("own-feature"), at("own-found"), {
      find: (query) => {
        const features = entry.board.features.map((each) => each.term);
        if (!entry.board.garment) return [];
        return InPeriod.rank(options({ garment: entry.board.garment, features }), query).slice(0, 60);
      },
      show: ({ option, by }) => h("li", {}, h("span", { class: "found-label" }, option.label), " ", h("span", { class: "found-facet" }, option.facetLabel), by && " ", by && h("span", { class: "found-by" }, by)),
      take: (option) => {
        edit("", (board) => board.features.push({ term: option.key }), true);
        const facet = option.key.split("/")[0];
        const several = exclusive.has(facet) && entry.board.features.filter((each) => (each.term || "").startsWith(facet + "/")).length > 1;
        announce(`${option.label} is planned.${several ? " It contradicts another." : ""}`);
      },
    });

    at("own-undo").addEventListener("click", () => step(past, future));
    at("own-redo").addEventListener("click", () => step(future, past));
    document.addEventListener("keydown", (event) => {
      if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== "z" || event.target.matches("textarea, input")) return;
      event.preventDefault();
      step(...(event.shiftKey ? [future, past] : [past, future]));
    });
    const asFile = () => ({ ...entry.board, target: edtfOf(entry.board.target) || entry.board.target });
    at("own-export").addEventListener("click", () => {
      InPeriod.download(fileName(entry.board), "application/yaml", writeBoard(asFile()));
      const lacks = lacking();
      announce(lacks.length ? `Saved as a file. The catalogue will not take it yet: ${lacks.join(" ")}` : `Saved as ${fileName(entry.board)}.`);
      if (lacks.length) notice(`Saved as a file. The catalogue will not take it yet: ${lacks.join(" ")}`, [["Good", settled]]);
    });
    at("own-link").addEventListener("click", async () => {
      const carries = inLink(asFile());
      if (!carries) return notice("This board is too large for a link. Save it as a file instead; the file can be opened on the page of boards.", [["Good", settled]]);
      const address = location.href.split("#")[0] + "#" + carries;
      const done = await InPeriod.copy(address);
      if (done) announce("The link is copied.");
      notice(done ? "The link is copied. It carries this board as it is now; whoever opens it gets a copy of their own." : `Your browser would not copy. The link is: ${address}`, [["Good", settled]]);
    });
    at("own-print").addEventListener("click", () => root.print());
    at("own-delete").addEventListener("click", () =>
      notice("Delete this board from this browser for good?", [
        ["Delete it", () => { remove(entry.id); unsaved = false; location.href = "boards.html#own-boards"; }],
        ["Leave it", settled],
      ]));
    root.addEventListener("hashchange", open);
    root.addEventListener("beforeprint", () => document.querySelectorAll("#own textarea").forEach(grown));
    open();
  }

  if (typeof document !== "undefined") document.addEventListener("DOMContentLoaded", start);
})(globalThis);
