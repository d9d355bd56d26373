// The reader of source files: a tree that remembers where every value was written, and what is wrong, in plain words.
//
// In step with generator/inperiod/records/yaml_reading.py and yaml_words.py: the same files are taken and refused, with
// the same words at the same lines and columns. Nodes are {is: "scalar", text, plain, line, column},
// {is: "items", line, column, items} and {is: "table", line, column, entries: Map, keys: Map of [line, column]};
// problems are {line, column, severity, message, hint}. Lines and columns count from 1, columns in code points.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod ||= {});
  const { events, Stopped } = InPeriod.recordYaml || require("./record-yaml-events.js");

  const MAX_BYTES = 5000000, MAX_DEPTH = 60, MAX_ALIASES = 100, MAX_REPEATED = 10000, MOST_SLIPS = 200, LONGEST_LINE = 2000;

  const CLOSE_QUOTE = "Close it with the same mark at the end of the value. If it is an apostrophe, put double marks around the whole value.";
  const QUOTE_VALUE = "Put the value in quotation marks.";
  // Each: what is wrong, and what to do about it; {…} are filled in.
  const WORDS = {
    large: ["This file is larger than 5 MB, too large for a record.", "Split it into several files, and keep pictures in the folder images."],
    utf16: ["This file is saved as UTF-16.", "Save the file as UTF-8."],
    byte: ["This file is not saved as UTF-8: byte 0x{byte} stands here{meant}.", "Save the file as UTF-8 in your editor."],
    invisible: [
      "There is an invisible character here that does not belong in text (U+{code}).",
      "Delete it; it often comes along when text is pasted.",
    ],
    tooMuch: ["From here on this file is not read: too much is wrong.", "Mend the top first."],
    second: [
      "A second document starts here: one file holds one record.",
      "Take out the line --- or move what follows it into a file of its own.",
    ],
    deep: ["Lists and entries are nested more than {most} deep here.", "Make it flatter."],
    half: ["This text holds half a character (a lone surrogate).", "Type it again."],
    nul: ["This text holds a NUL character (\\0).", "Take it out."],
    curly: [
      "The curly quotation marks {open} and {close} are kept as part of the text here.",
      'Take them out, or put straight ones around them: "…".',
    ],
    lost: [
      "What follows the sign # is taken for a comment, not for text: {text}",
      "Put the whole value in quotation marks, or a space after the sign if it is a comment.",
    ],
    noAnchor: [
      "*{name} repeats something marked &{name}, and nothing above is.",
      "If the asterisk is part of your text, put the text in quotation marks.",
    ],
    repeats: ["Too much is repeated by & and * in this file.", "Write the repeats out."],
    tag: ["An exclamation mark at the start of a value has a technical meaning that is not used here.", QUOTE_VALUE],
    notAName: [
      "A list or group stands here where a field name was expected.",
      "Curly braces {…} need name: value pairs; put text that starts with a brace in quotation marks.",
    ],
    merge: ["Merging with << is not used here.", "Write the fields out."],
    twice: [
      "{name} is given twice; it stands on line {first} already.",
      "Keep one of the two, or put several values in a list.",
    ],
    // Where the parser stopped.
    unlike: [
      "This line, or the one above it, is not written the way records are.",
      "Each field is name: value; what belongs to it is indented by two spaces. Text with a colon, a # or other signs in it goes in quotation marks.",
    ],
    tabIndent: ["This line is indented with a tab.", "Indent with spaces: two for each step."],
    tabHere: ["A tab stands here where a space belongs.", "Type one space instead."],
    afterBar: ["Nothing may follow the sign | or > on its line.", "Start the text on the next line, two spaces further in."],
    underBar: ["The text after | or > must be indented more deeply than the name of its field.", "Indent all its lines by two more spaces."],
    openQuote: ["The quotation mark opened here is never closed.", CLOSE_QUOTE],
    escape: [
      "A backslash inside double quotation marks has a technical meaning, and this one is not known.",
      "Use single quotation marks '…' around text with a backslash.",
    ],
    afterBracket: [
      "The value ended at the closing bracket, but the line goes on.",
      "If the brackets are part of the text, put the whole value in quotation marks.",
    ],
    afterQuote: [
      "The value ended at the quotation mark, but the line goes on.",
      "Put the whole value between one pair of marks, of the kind that does not occur inside it; inside '…' an apostrophe is written twice.",
    ],
    secondColon: [
      "There is a second colon in this line, so the value cannot be told from a field name.",
      'Put the whole value in straight quotation marks: "…".{curly}',
    ],
    tooDeep: ["This line is indented more deeply than the fields it belongs with.", "Start it in the same column as its neighbours above."],
    noColon: ["This line has no colon after the name of a field.", "Write name: value, with a space after the colon."],
    noSpace: ["There is no space after the colon in this line.", "Write name: value, with a space after the colon."],
    signFirst: ["A value cannot start with {sign}.", QUOTE_VALUE],
    starFirst: ["A value that starts with * or & has a technical meaning.", QUOTE_VALUE],
    markFirst: ["A value that starts with an exclamation mark has a technical meaning.", QUOTE_VALUE],
    bracket: [
      "The bracket opened here is not closed, or a comma is missing inside it.",
      "Close it on the same line, with commas between the parts; put text that holds a comma, a colon or a bracket in quotation marks.",
    ],
    listBeside: [
      "A list cannot start on the line of its field.",
      "Start each entry on a line of its own below it, indented by two spaces.",
    ],
    listHere: [
      "A list entry starts here (a hyphen) where a field or the end of the group was expected.",
      "Indent all entries of a list alike, below the field they belong to.",
    ],
    indent: [
      "This line does not start in the same column as the lines it belongs with.",
      "Fields of one group start in one column; what belongs to a field is indented by two spaces.",
    ],
  };

  const FORBIDDEN = /[^\t\n\r\x20-\x7e\xa0-\u2027\u202a-\ud7ff\ue000-\ufefe\uff00-\ufffd\u{10000}-\u{10ffff}]/u;
  const CURLY = { "“": "”", "‘": "’", "„": "“”", "«": "»", "”": "”", "’": "’" };
  // The bytes from 0x80 in the older coding of western Europe; a space where there is none.
  const WINDOWS_1252 = "€ ‚ƒ„…†‡ˆ‰Š‹Œ Ž  ‘’“”•–—˜™š›œ žŸ";
  const INT = /^[-+]?[0-9]{1,15}$/;
  const FLOAT = /^[-+]?(?:\.[0-9]{1,30}|[0-9]{1,30}(?:\.[0-9]{0,30})?)(?:[eE][-+]?[0-9]{1,3})?$/;
  const PLAIN_WORDS = new Map([
    ...["", "~", "null", "Null", "NULL"].map((word) => [word, null]),
    ...["true", "True", "TRUE"].map((word) => [word, true]),
    ...["false", "False", "FALSE"].map((word) => [word, false]),
  ]);

  const lineEnds = (text) => text.split(/\r\n|\r|\n/);
  const codePoints = (text) => text.length - (text.match(/[\ud800-\udbff][\udc00-\udfff]/g) || []).length;
  const indentOf = (text) => text.length - text.trimStart().length;

  function problem([line, column], word, filled = {}, severity = "error") {
    const [message, hint] = WORDS[word].map((text) => text.replace(/\{(\w+)\}/g, (whole, name) => filled[name]));
    return { line, column, severity, message, hint };
  }

  class Refused extends Error {
    constructor(...said) {
      super("refused");
      this.problem = problem(...said);
    }
  }

  // ---- Where the parser stopped, in words: the first slip that recognises the line speaks; order is the order of trust.

  /** A line as the slips see it: not too long, and every code point one sign wide. */
  const seen = (line) =>
    line
      .slice(0, 2 * LONGEST_LINE)
      .replace(/[\ud800-\udbff][\udc00-\udfff]/g, (c) => (/[\p{L}\p{N}]/u.test(c) ? "\u00aa" : "\u00a7"))
      .slice(0, LONGEST_LINE);

  const SLIPS = [
    function tab({ line, lines, said }) {
      for (const each of [line, line - 1]) {
        const text = lines[each] || "", at = text.slice(0, indentOf(text)).indexOf("\t");
        if (at >= 0 && /tab|token|expected/.test(said)) return [each, at, "tabIndent"];
      }
    },
    function otherTab({ line, column, text }) {
      if (text[column] === "\t") return [line, column, "tabHere"];
    },
    function textAfterBar({ line, column, lines, said, since }) {
      if (said.includes("block scalar") && said.includes("comment or line break")) return [line, column, "afterBar"];
      const at = since && said.includes("could not find") ? since[0] : line;
      const before = lines.slice(0, at).reverse().find((each) => each.trim()) || "";
      if (/:\s+[|>][-+0-9]*\s*$/.test(before) && /expected|find/.test(said)) return [at, indentOf(lines[at]), "underBar"];
    },
    function escape({ line, column, said }) {
      if (/escape|hexdecimal/.test(said)) return [line, column, "escape"];
    },
    function openQuote({ said, since }) {
      if (said.includes("quoted scalar") && since) return [...since, "openQuote"];
    },
    function textAfterEnd({ line, column, text, said }) {
      if (!said.includes("expected")) return;
      const bracketed = /^\s*(?:-\s+)*[\p{L}\p{N}_-]+:\s+(?:\[[^\]]*\]|\{[^}]*\})\s*(?=[^\s#])/u.exec(text);
      if (bracketed) return [line, bracketed[0].length, "afterBracket"];
      if (/(?:^|[:-]\s+)(['"]).*\1\s*$/.test(text.slice(0, column))) return [line, column, "afterQuote"];
    },
    function colon({ line, column, text, said }) {
      if (!said.includes("mapping values are not allowed")) return;
      const before = text.slice(0, column);
      if (!/^\s*(?:-\s+)*[^\s:][^:]*:\s+(?=\S)/.test(before)) return [line, indentOf(before), "tooDeep"];
      return [line, column, "secondColon", { curly: before.includes("“") ? " Curly marks “ ” do not count as quotation marks." : "" }];
    },
    function noColon({ line, lines, said, since }) {
      if (!said.includes("could not find expected ':'")) return;
      const at = since ? since[0] : line, text = lines[at];
      return [at, indentOf(text), /^\s*(?:-\s+)*[\p{L}\p{N}_-]+:\S/u.test(text) ? "noSpace" : "noColon"];
    },
    function signAtStart({ line, column, text, said }) {
      const sign = text[column];
      if (sign && "@`%|>".includes(sign) && said.includes("token")) return [line, column, "signFirst", { sign }];
      if (/anchor|alias/.test(said)) return [line, column, "starFirst"];
      if (said.includes("tag")) return [line, column, "markFirst"];
    },
    function bracket({ line, column, said, since }) {
      if (said.includes("flow")) return [...(since || [line, column]), "bracket"];
    },
    function listAmongFields({ line, column, text, said }) {
      if (/:\s+-\s/.test(text.slice(0, column + 2)) && said.includes("not allowed")) return [line, column, "listBeside"];
      if (text.trimStart().startsWith("-") && /expected|not allowed/.test(said)) return [line, indentOf(text), "listHere"];
    },
    function indent({ line, text, said }) {
      if (said.includes("expected") && text.trim()) return [line, indentOf(text), "indent"];
    },
  ];

  /** One stop of the parser as a problem. */
  function explain(stopped, lines) {
    const last = lines.length - 1, within = (mark) => [Math.min(mark.line, last), mark.column];
    const [line, column] = within(stopped.mark);
    const near = new Set([line - 1, line, stopped.since ? stopped.since.line : line]);
    // Only the lines that are looked at are made ready: a file may have a million.
    const looked = lines.map((each, at) => (near.has(at) || each.length > LONGEST_LINE ? seen(each) : each));
    const stop = { line, column, lines: looked, text: looked[line], said: stopped.message, since: stopped.since && within(stopped.since) };
    for (const slip of SLIPS) {
      const said = slip(stop);
      if (said) return problem([said[0] + 1, said[1] + 1], ...said.slice(2));
    }
    return problem([line + 1, column + 1], "unlike");
  }

  // ---- From bytes to text.

  /** Where text is not UTF-8: the place of the first byte of what cannot be read, or -1. */
  function badByte(bytes) {
    for (let at = 0; at < bytes.length; ) {
      const lead = bytes[at];
      const length = lead < 0x80 ? 1 : lead < 0xc2 ? 0 : lead < 0xe0 ? 2 : lead < 0xf0 ? 3 : lead < 0xf5 ? 4 : 0;
      if (!length) return at;
      const low = lead === 0xe0 ? 0xa0 : lead === 0xf0 ? 0x90 : 0x80, high = lead === 0xed ? 0x9f : lead === 0xf4 ? 0x8f : 0xbf;
      for (let each = 1; each < length; each += 1) {
        const next = bytes[at + each];
        if (next === undefined || next < (each === 1 ? low : 0x80) || next > (each === 1 ? high : 0xbf)) return at;
      }
      at += length;
    }
    return -1;
  }

  const text8 = (bytes) => new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);

  /** The place of what follows a text, as line and column. */
  function placeAfter(text) {
    const lines = lineEnds(text);
    return [lines.length, codePoints(lines[lines.length - 1]) + 1];
  }

  /** The text of a file's bytes, a byte order mark with it: {text, problems}; text is null where it cannot be had. */
  function decode(data) {
    const bytes = data instanceof Uint8Array ? data : new Uint8Array(data);
    const refused = (...said) => ({ text: null, problems: [problem(...said)] });
    if (bytes.length > MAX_BYTES) return refused([1, 1], "large");
    if ((bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff)) return refused([1, 1], "utf16");
    const bad = badByte(bytes);
    if (bad < 0) return { text: text8(bytes), problems: [] };
    const guess = WINDOWS_1252[bytes[bad] - 0x80] || String.fromCharCode(bytes[bad]);
    const meant = /[ \xa0\xad]/.test(guess) ? "" : ` (perhaps meant as ${guess})`;
    const byte = bytes[bad].toString(16).toUpperCase().padStart(2, "0");
    return refused(placeAfter(withoutMark(text8(bytes.subarray(0, bad)))), "byte", { byte, meant });
  }

  const withoutMark = (text) => (text.startsWith("\ufeff") ? text.slice(1) : text);

  function checkedText(given) {
    const most = given.length * 3 > MAX_BYTES ? new TextEncoder().encode(given).length : 0;
    if (most > MAX_BYTES) throw new Refused([1, 1], "large");
    const text = withoutMark(given), bad = FORBIDDEN.exec(text);
    if (bad) {
      const code = bad[0].codePointAt(0).toString(16).toUpperCase().padStart(4, "0");
      throw new Refused(placeAfter(text.slice(0, bad.index)), "invisible", { code });
    }
    return text;
  }

  // ---- From events to the tree.

  /** Hears the events of a text and builds its tree; `lines` where some text may have been taken for a comment, else none. */
  function builder(lines) {
    const problems = [], anchors = new Map(), stack = [];
    let documents = 0, aliases = 0, repeated = 0, count = 0, height = 0, top = null, met = { number: -1, signs: "" };
    const at = (mark) => [mark.line + 1, mark.column + 1];

    function complain(where, word, filled) {
      if (problems.length >= MOST_SLIPS) throw new Refused(where, "tooMuch");
      problems.push(problem(where, word, filled));
    }

    function warn(where, word, filled) {
      if (problems.length < MOST_SLIPS) problems.push(problem(where, word, filled, "warning"));
    }

    const refuseTag = (event) => {
      if (event.tagged) throw new Refused(at(event.start), "tag");
    };

    function opened(event) {
      const [line, column] = at(event.start);
      if (stack.length >= MAX_DEPTH) throw new Refused([line, column], "deep", { most: MAX_DEPTH });
      refuseTag(event);
      count += 1;
      const node = event.is === "items" ? { is: "items", line, column, items: [] } : { is: "table", line, column, entries: new Map(), keys: new Map() };
      stack.push({ node, anchor: event.anchor, started: count, height: 1, key: null });
    }

    function closed() {
      const it = stack.pop();
      height = it.height;
      if (it.anchor) anchors.set(it.anchor, { node: it.node, size: count - it.started + 1, levels: height });
      return it.node;
    }

    function scalar(event) {
      const [line, column] = at(event.start), { text } = event, plain = !event.style;
      refuseTag(event);
      count += 1;
      height = 0;
      const close = Object.hasOwn(CURLY, text[0] || "") && text.length > 1 && CURLY[text[0]].includes(text[text.length - 1]);
      if (plain && close) warn([line, column], "curly", { open: text[0], close: text[text.length - 1] });
      if (plain && lines) lostText(event);
      if (/\p{Cs}/u.test(text)) throw new Refused([line, column], "half");
      if (!plain && text.includes("\0")) throw new Refused([line, column], "nul");
      const node = { is: "scalar", text, plain, line, column };
      if (event.anchor) anchors.set(event.anchor, { node, size: 1, levels: 0 });
      return node;
    }

    /** Warn where the end of a value may have been taken for a comment. */
    function lostText({ end }) {
      if (met.number !== end.line) {
        const line = lines[end.line] || "";
        met = { number: end.line, signs: /[\ud800-\udfff]/.test(line) ? Array.from(line) : line };
      }
      const { signs } = met;
      let at = end.column;
      while (signs[at] === " " || signs[at] === "\t") at += 1;
      if (signs[at] !== "#" || !/[^\s#]/.test(signs[at + 1] || "")) return;
      const rest = typeof signs === "string" ? signs.slice(at) : signs.slice(at).join("");
      const letters = Array.from(rest.trim()), short = `“${letters.slice(0, 40).join("")}${letters.length > 40 ? "…" : ""}”.`;
      warn([end.line + 1, at + 1], "lost", { text: short });
    }

    function alias(event) {
      const where = at(event.start), name = event.anchor;
      aliases += 1;
      if (!anchors.has(name)) throw new Refused(where, "noAnchor", { name });
      const { node, size, levels } = anchors.get(name);
      height = levels;
      if (stack.length + levels > MAX_DEPTH) throw new Refused(where, "deep", { most: MAX_DEPTH });
      repeated += size;
      count += size;
      if (aliases > MAX_ALIASES || repeated > MAX_REPEATED) throw new Refused(where, "repeats");
      return node;
    }

    /** Put a finished node into the list or table that is open around it. */
    function place(it, node) {
      if (it.node.is === "items") it.node.items.push(node);
      else if (!it.key) it.key = key(it.node, node);
      else {
        const { name, where } = it.key;
        it.key = null;
        if (name === null) return;
        it.node.entries.set(name, node);
        it.node.keys.set(name, where);
      }
    }

    /** The name of the next entry; null as the name of one that is refused and left out. */
    function key(table, node) {
      const where = [node.line, node.column], name = node.text;
      const refused = (...said) => complain(where, ...said) || { name: null, where };
      if (node.is !== "scalar") return refused("notAName");
      if (name === "<<" && node.plain) return refused("merge");
      if (table.entries.has(name)) return refused("twice", { name, first: table.keys.get(name)[0] });
      return { name, where };
    }

    function hear(event) {
      let node;
      if (event.is === "scalar") node = scalar(event);
      else if (event.is === "alias") node = alias(event);
      else if (event.is === "end") node = closed();
      else if (event.is === "document") {
        documents += 1;
        if (documents > 1) throw new Refused(at(event.start), "second");
        return;
      } else return event.is === "items" || event.is === "table" ? opened(event) : undefined;
      const it = stack[stack.length - 1];
      if (it) it.height = Math.max(it.height, height + 1);
      if (it) place(it, node);
      else top = node;
    }

    return { hear, problems, root: () => (top && top.is === "scalar" && top.plain && !top.text ? null : top) };
  }

  /** The tree of a text, null where it cannot be read or is empty, and its problems: {root, problems}. Never throws. */
  function read(given) {
    let text, built;
    try {
      text = checkedText(given);
      built = builder(/[ \t]#[^\s#]/.test(text) ? lineEnds(text) : null);
      events(text, built.hear);
    } catch (error) {
      const before = built ? built.problems : [];
      if (error instanceof Refused) return { root: null, problems: [...before, error.problem] };
      if (error instanceof Stopped) return { root: null, problems: [...before, explain(error, lineEnds(text))] };
      throw error;
    }
    return { root: built.root(), problems: built.problems };
  }

  /** The value of a scalar by the core schema of YAML 1.2.2 (§10.3.2), less its rarities. */
  function coreValue({ text, plain }) {
    if (!plain) return text;
    if (PLAIN_WORDS.has(text)) return PLAIN_WORDS.get(text);
    return INT.test(text) ? Number(text) + 0 : FLOAT.test(text) ? Number(text) : text;
  }

  /** A node as ordinary lists, objects and core values, without positions. */
  function plainValue(node) {
    if (node.is === "scalar") return coreValue(node);
    if (node.is === "items") return node.items.map(plainValue);
    return Object.fromEntries([...node.entries].map(([name, each]) => [name, plainValue(each)]));
  }

  Object.assign(InPeriod.recordYaml, { read, decode, plainValue, coreValue, lineEnds, withoutMark });
  if (typeof module !== "undefined") module.exports = InPeriod.recordYaml;
})(globalThis);
