// Source files in the house style, and any file laid out tidily: what Python's importing/writing.py and
// records/tidying.py make of the same, letter for letter.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod ||= {});
  const { events, read, lineEnds, withoutMark } = InPeriod.recordYaml || require("./record-yaml-read.js");

  const SOURCE_ORDER = (
    "title kind date on_sale made photographed altered worn date_basis date_note date_printed publisher creators container " +
    "volume issue pages edition drafting_system market language held_by rights examined reprint_of publish note plates"
  ).split(" ");
  const PLATE_ORDER = (
    "id locator date garment outfit wearer occasion caption translation price view medium treatment features same_cut_as " +
    "image publish recorded confirmations note"
  ).split(" ");
  const DATE_FIELDS = new Set(["date", "on_sale", "made", "photographed", "altered", "worn", "on", "accessed"]);
  const WIDEST = 90;

  const PLAIN = /^[\p{L}\p{N}](?:[\p{L}\p{N}_ .,()/'’&+;–—-]*[\p{L}\p{N}_.)'’])?$/u;
  const PLAIN_ADDRESS = /^https?:\/\/[\p{L}\p{N}_./~%?=&+-]+$/u;
  const PLAIN_DATE = /^[0-9.][0-9X./~-]*$/;
  const NUMBER_LIKE = /^[-+.]?[0-9][0-9a-fA-FxXoO_.,:+-]*$/;
  // What some reader of YAML or other takes for more than text.
  const OTHER_MEANING = new Set(["true", "false", "yes", "no", "on", "off", "y", "n", "null", "nan", "inf"]);
  const ESCAPED = /[\x00-\x1f\x7f-\x9f\u2028\u2029\ufeff\ud800-\udfff\ufffe\uffff"\\]/gu;
  const SHORT = { "\n": "\\n", "\t": "\\t", "\r": "\\r", '"': '\\"', "\\": "\\\\" };

  const isTable = (value) => typeof value === "object" && value !== null && !Array.isArray(value);
  const isOpen = (value) => typeof value === "object" && value !== null;
  const fields = (table) => Object.entries(table).filter(([, value]) => value !== undefined);
  const width = (text) => Array.from(text).length;
  const nothing = (value) => value === undefined || value === null || value === "" || (isOpen(value) && !fields(value).length);

  // ---- The house style.

  /** The fields that have something in them, by `order`, unknown ones last. */
  function inOrder(record, order) {
    const names = [...order.filter((name) => Object.hasOwn(record, name)), ...Object.keys(record).filter((name) => !order.includes(name))];
    return Object.fromEntries(names.filter((name) => !nothing(record[name])).map((name) => [name, record[name]]));
  }

  // What a value is by where it stands, as far as that decides how it is written.
  const INSIDE = { source: { plates: "plates" }, plate: { features: "features" } };
  const EACH = { plates: "plate", features: "feature" };
  const ORDERS = { source: SOURCE_ORDER, plate: PLATE_ORDER };
  const inside = (place, name) => (INSIDE[place] || {})[name];

  /** A value with the fields of a source and of a plate in the house order, empty ones left out, features written short. */
  function ordered(value, place) {
    if (Array.isArray(value)) return EACH[place] ? value.map((each) => ordered(each, EACH[place])) : value;
    if (!isTable(value)) return value;
    if (place === "feature") return Object.keys(value).join() === "term" ? String(value.term) : value;
    if (!ORDERS[place]) return value;
    return Object.fromEntries(fields(inOrder(value, ORDERS[place])).map(([name, each]) => [name, ordered(each, inside(place, name))]));
  }

  /** A record as a YAML document. Throws `TypeError` for what is no text, number, true, false, null, list or table. */
  const toYaml = (value) => tableLines(value).map((line) => `${line}\n`).join("") || "{}\n";

  /** A source with its plates as a YAML document. */
  const sourceYaml = (source) => toYaml(ordered(source, "source"));

  function tableLines(table) {
    return fields(table).flatMap(([name, value]) => {
      const lead = `${scalar(name)}:`;
      if (isTable(value)) return nested(lead, value, () => tableLines(value));
      if (Array.isArray(value)) return nested(lead, value, () => itemLines(value));
      return [`${lead} ${single(value, name)}`];
    });
  }

  function itemLines(items) {
    return items.flatMap((item) => {
      if (!isOpen(item)) return [`- ${scalar(item)}`];
      const line = oneLine(item);
      if (line && width(line) < WIDEST) return [`- ${line}`];
      const [first, ...later] = isTable(item) ? tableLines(item) : itemLines(item);
      return [`- ${first}`, ...later.map((each) => `  ${each}`)];
    });
  }

  function nested(lead, value, lines) {
    const line = oneLine(value);
    if (line && (isTable(value) || !value.length) && width(lead) + width(line) < WIDEST) return [`${lead} ${line}`];
    return [lead, ...lines().map((each) => `  ${each}`)];
  }

  /** A table or list without tables and lists inside, in braces or brackets; null for any other. */
  function oneLine(value) {
    if (isTable(value)) {
      const pairs = fields(value);
      if (pairs.some(([, each]) => isOpen(each))) return null;
      return `{${pairs.map(([name, each]) => `${between(name, "")}: ${between(each, name)}`).join(", ")}}`;
    }
    return value.some(isOpen) ? null : `[${value.map((each) => between(each, "")).join(", ")}]`;
  }

  /** A single value between braces, where a comma would end it. */
  function between(value, name) {
    const text = single(value, name);
    return text.startsWith('"') || !/[,[\]{}?]/.test(text) ? text : quoted(value);
  }

  /** A single value as its field has it: a date stands plain (`1926`, `1912-23`), what it means is settled by the field. */
  const single = (value, name) => (DATE_FIELDS.has(name) && typeof value === "string" && PLAIN_DATE.test(value) ? value : scalar(value));

  /** A single value: plain where any reader of YAML takes it for the same text, else in double quotes. */
  function scalar(value) {
    if (value === null || typeof value === "boolean") return String(value);
    if (typeof value === "number") return number(value);
    if (typeof value !== "string") throw new TypeError(`a record holds text, numbers, lists and tables, not ${typeof value}`);
    return standsPlain(value) ? value : quoted(value);
  }

  /** A number as Python writes it; one without a fraction as a whole number, up to the 15 digits that are read as one. */
  function number(value) {
    if (Number.isInteger(value) && Math.abs(value) < 1e16) return String(value);
    const text = Math.abs(value) >= 1e16 || (value && Math.abs(value) < 1e-4) ? value.toExponential() : String(value);
    return text.replace(/e([+-])(\d)$/, "e$10$2");
  }

  const standsPlain = (text) =>
    PLAIN_ADDRESS.test(text) || (PLAIN.test(text) && !OTHER_MEANING.has(text.toLowerCase()) && !NUMBER_LIKE.test(text));

  /** Double-quoted, with every letter of every language left legible and nothing invisible left bare. */
  const quoted = (text) => `"${text.replace(ESCAPED, (c) => SHORT[c] || `\\u${c.charCodeAt(0).toString(16).padStart(4, "0")}`)}"`;

  // ---- Tidy: two spaces a step, hyphens under their field, no stray blanks.

  const isBlank = (sign) => sign === " " || sign === "\t";
  const stripStart = (line) => line.replace(/^[ \t]+/, "");
  const strip = (line) => stripEnd(stripStart(line));

  /** Step by step: a pattern would try every blank of a long run in the middle of a line. */
  function stripEnd(line) {
    let end = line.length;
    while (isBlank(line[end - 1])) end -= 1;
    return line.slice(0, end);
  }

  const indentOf = (line) => line.length - stripStart(line).length;
  const spacesOf = (line) => line.length - line.replace(/^ +/, "").length;

  /** Without blanks at its end, unless a backslash makes the first of them part of the text. */
  function stripped(line) {
    const bare = stripEnd(line);
    return bare.endsWith("\\") && bare !== line ? line : bare;
  }

  /** Gives where a mark stands in its line, counted as JavaScript counts. */
  function placing(lines) {
    let met = { number: -1, starts: null };
    return ({ line: number, column }) => {
      if (met.number !== number) {
        const line = lines[number] || "";
        met = { number, starts: /[\ud800-\udfff]/.test(line) ? [0] : null };
        if (met.starts) for (const sign of line) met.starts.push(met.starts[met.starts.length - 1] + sign.length);
      }
      return { line: number, column: met.starts ? met.starts[column] : column };
    };
  }

  /** The last line of a text after | or >, which started at `start` and was read up to `end`; and its sign. */
  function blockEnd(lines, start, end) {
    const header = /^[|>][-+0-9]*/.exec(lines[start.line].slice(start.column)), sign = header ? header[0] : "";
    let last = Math.min(end.column === 0 ? end.line - 1 : end.line, lines.length - 1);
    if (!sign.includes("+")) while (last > start.line && !lines[last].trim()) last -= 1;
    return { last, sign };
  }

  /** Where values of several lines are, and the gaps between a field's name and its value on one line. */
  function anatomy(text, lines) {
    const spans = new Map(), gaps = new Map(), open = [], brackets = [], place = placing(lines);

    /** Names and values alternate: a value closes the gap that its name opened. */
    function noteGap(level, event) {
      if (!level.name) {
        level.name = event.end;
        return;
      }
      const end = place(level.name), start = place(event.start);
      level.name = null;
      const line = lines[start.line] || "", gap = end.line === start.line ? line.slice(end.column, start.column) : "";
      if (!/^[ \t]*:[ \t]+$/.test(gap) || !line[start.column] || line[start.column] === "#") return;
      gaps.set(end.line, [...(gaps.get(end.line) || []), [end.column, start.column]]);
    }

    function noteText(event) {
      const start = place(event.start), first = start.line;
      if (event.style === "|" || event.style === ">") {
        const { last, sign } = blockEnd(lines, start, event.end);
        if (last > first) spans.set(first, { kind: "block", first, last, column: start.column, header: sign });
      } else if (event.end.line > first) {
        spans.set(first, { kind: "text", first, last: event.end.line, column: start.column, header: "" });
      }
    }

    events(text, (event) => {
      const level = open[open.length - 1], starts = event.is === "table" || event.is === "items";
      if (!brackets.length && level && level.table && (starts || event.is === "scalar" || event.is === "alias")) noteGap(level, event);
      if (starts) {
        open.push({ table: event.is === "table", name: null });
        if (event.flow || brackets.length) brackets.push(event.start);
      } else if (event.is === "end") {
        open.pop();
        const start = brackets.pop();
        if (start && !brackets.length && event.end.line > start.line) {
          const { line, column } = place(start);
          spans.set(line, { kind: "brackets", first: line, last: event.end.line, column, header: "" });
        }
      } else if (event.is === "scalar" && !brackets.length) noteText(event);
    });
    return { spans, gaps };
  }

  /** Where each hyphen of a line stands, and what follows the last of them: column, and whether a hyphen. */
  function columnsOf(line) {
    const found = [];
    let at = spacesOf(line);
    while (line[at] === "-" && [undefined, " ", "\t"].includes(line[at + 1])) {
      found.push([at, true]);
      at += 1 + indentOf(line.slice(at + 1));
      if (at >= line.length || line[at] === "#") return found;
    }
    return [...found, [at, false]];
  }

  /** The lines of a file laid out, one after another from the top. */
  function layout(lines, { spans, gaps }) {
    const levels = [], done = [];
    let waiting = [];

    /** Write the blank lines and comments before an entry that moves from column `old` to `to`. */
    function flush(old, to, ended) {
      const columns = new Map([...ended.map((each) => [each.old, each.to]), [old, to]]);
      for (const line of waiting) {
        const bare = strip(line), column = indentOf(line);
        if (bare) done.push(" ".repeat(columns.has(column) ? columns.get(column) : to) + bare);
        else if (done.length && done[done.length - 1]) done.push("");
      }
      waiting = [];
    }

    /** The level that starts at a column as written, opened where there is none yet. */
    function levelAt(column, dash) {
      const top = () => levels[levels.length - 1];
      while (top() && (top().old > column || (top().old === column && top().dash && !dash))) levels.pop();
      if (!top() || top().old !== column || top().dash !== dash) levels.push({ old: column, to: top() ? top().to + 2 : 0, dash });
      return top();
    }

    /** Lay out the line where an entry starts, and the later lines of its value; gives the next line. */
    function entry(at) {
      const line = lines[at], columns = columnsOf(line), ended = [...levels];
      const first = levelAt(...columns[0]);
      let level = first;
      flush(columns[0][0], first.to, ended);
      for (const each of columns.slice(1)) level = levelAt(...each);
      const [start, bareHyphen] = columns[columns.length - 1];
      const rest = bareHyphen ? stripStart(line.slice(start + 1)) : closedGaps(at).slice(start);
      done.push(stripped(" ".repeat(first.to) + "- ".repeat(columns.filter(([, dash]) => dash).length) + rest));
      const span = spans.get(at);
      if (!span) return at + 1;
      laterLines(span, level);
      return span.last + 1;
    }

    function closedGaps(at) {
      const found = [...(gaps.get(at) || [])].sort((one, other) => other[0] - one[0]);
      return found.reduce((line, [left, right]) => `${line.slice(0, left)}: ${line.slice(right)}`, lines[at]);
    }

    function laterLines(span, level) {
      const later = lines.slice(span.first + 1, span.last + 1), into = span.column === level.old ? level.to : level.to + 2;
      if (span.kind === "text") {
        for (const each of later) done.push(stripped(" ".repeat(into) + stripStart(each)));
        return;
      }
      let shift = level.to - level.old;
      if (span.kind === "block" && !/[0-9]/.test(span.header)) {
        const least = later.filter((each) => /[^ ]/.test(each)).reduce((so, each) => Math.min(so, spacesOf(each)), Infinity);
        shift = into - (least === Infinity ? into : least);
      }
      for (const each of later) {
        const indent = spacesOf(each), moved = " ".repeat(Math.max(0, indent + shift)) + each.slice(indent);
        const onlyIndent = each.length === indent && indent + shift <= into;
        done.push(span.kind === "brackets" || onlyIndent ? stripped(moved) : moved);
      }
    }

    for (let at = 0; at < lines.length; ) {
      const line = lines[at], bare = strip(line);
      if (!bare || bare.startsWith("#")) {
        waiting.push(line);
        at += 1;
      } else if (/^(?:---|\.\.\.|%)/.test(line)) {
        flush(0, 0, []);
        done.push(stripEnd(line));
        at += 1;
      } else at = entry(at);
    }
    flush(0, 0, levels);
    const last = [...spans.values()].reduce((so, each) => (so && so.last >= each.last ? so : each), null);
    const keeps = last && last.header.includes("+") && last.last >= lines.length - 1;
    while (!keeps && done.length && !done[done.length - 1]) done.pop();
    return `${done.join("\n")}\n`;
  }

  /** Whether two trees hold the same, wherever it was written. */
  function sameNode(one, other) {
    if (one.is !== other.is) return false;
    if (one.is === "scalar") return one.text === other.text && one.plain === other.plain;
    if (one.is === "items") return one.items.length === other.items.length && one.items.every((each, at) => sameNode(each, other.items[at]));
    const ours = [...one.entries], theirs = [...other.entries];
    return ours.length === theirs.length && ours.every(([name, each], at) => name === theirs[at][0] && sameNode(each, theirs[at][1]));
  }

  /** The same record laid out tidily, with its tree: {text, root}; text as given where that cannot be done safely. */
  function tidied(given) {
    const { root: before, problems } = read(given), wrong = problems.some(({ severity }) => severity === "error");
    if (!before || wrong) return { text: given, root: null, wrong };
    const text = withoutMark(given), lines = lineEnds(text), after = layout(lines, anatomy(text, lines));
    const { root: tree } = read(after), letters = (all) => all.replace(/\s+/g, "");
    const safe = tree && letters(text) === letters(after) && sameNode(before, tree);
    return safe ? { text: after, root: tree, wrong } : { text: given, root: before, wrong };
  }

  const tidy = (text) => tidied(text).text;

  const writing = { tidied, tableLines, itemLines, oneLine, single, ordered, inside, EACH, ORDERS, WIDEST, blockEnd, placing, isTable, isOpen, width, nothing };
  Object.assign(InPeriod.recordYaml, { sourceYaml, tidy, writing });
  if (typeof module !== "undefined") module.exports = InPeriod.recordYaml;
})(globalThis);
