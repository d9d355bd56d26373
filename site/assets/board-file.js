// A research board as the file the catalogue folder takes: a careful writer, and a strict reader of the same.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod ||= {});

  const { LISTS, TABLES, boardOf, empty, nested } = InPeriod.boards || require("./board-store.js");
  const LONGEST_LINK = 8000;
  const ORDER =
    "title target garment wearer place features plates notes questions departures worn_under measures making care revisions signed_off permanent_mark citation_style publish".split(
      " ",
    );
  const INSIDE = {
    features: "term facet none not_visible at width count colour reading note".split(" "),
    plates: "plate reason supports".split(" "),
    departures: "original stand_in reason shows_at feature".split(" "),
    wearer: "who age sizes status".split(" "),
    signed_off: "by on pages".split(" "),
  };

  // ---- writing

  const PLAIN = /^[\p{L}\p{N}](?:[\p{L}\p{N} _.,()/'’&+;–—-]*[\p{L}\p{N}.)'’%])?$/u;
  const NUMBER = /^[-+.]?[0-9][0-9a-fA-FxXoO_.,:+-]*$/;
  const MEANS_MORE = /^(true|false|yes|no|on|off|y|n|null|nan|inf)$/i;
  const UNSEEN = /[\u0000-\u001f\u007f-\u009f\u2028\u2029\ufeff\ud800-\udfff\ufffe\uffff"\\]/g;
  const PAIRS = /[\ud800-\udbff][\udc00-\udfff]/g;

  function quoted(text) {
    const code = (sign) => "\\u" + sign.charCodeAt(0).toString(16).padStart(4, "0");
    // No record may hold NUL or half a character: they came by accident.
    const escape = (sign) => (/[\0\ud800-\udfff]/.test(sign) ? "" : sign === "\n" ? "\\n" : sign === "\t" ? "\\t" : /["\\]/.test(sign) ? "\\" + sign : code(sign));
    let written = "",
      from = 0;
    for (const pair of text.matchAll(PAIRS)) {
      written += text.slice(from, pair.index).replace(UNSEEN, escape) + pair[0];
      from = pair.index + 2;
    }
    return `"${written}${text.slice(from).replace(UNSEEN, escape)}"`;
  }

  function scalar(value, name, inside) {
    if (typeof value !== "string") return String(value);
    if (/^(target|on)$/.test(name) && /^[0-9.][0-9X./~-]*$/.test(value)) return value;
    const plain = PLAIN.test(value) && !MEANS_MORE.test(value) && !NUMBER.test(value);
    return plain && !(inside && /[,[\]{}?]/.test(value)) ? value : quoted(value);
  }

  /** A table or list without others inside, on one line; null for any other. */
  function oneLine(value) {
    if (Object.values(value).some(nested)) return null;
    const line = Array.isArray(value)
      ? `[${value.map((each) => scalar(each, "", true)).join(", ")}]`
      : "{" + Object.entries(value).map(([name, each]) => (/^[a-z_]+$/.test(name) ? name : scalar(name, "", true)) + ": " + scalar(each, name, true)).join(", ") + "}";
    return line.length < 90 ? line : null;
  }

  /** Text of several lines as it stands, where every sign of it is sure to be read back. */
  function standing(text) {
    const clean = /\n/.test(text) && /^\S/.test(text) && !/[ \t]$|\n\n$/m.test(text) && !/\n\n$/.test(text);
    return clean && !text.replace(/\n/g, "").replace(PAIRS, "").match(/[\u0000-\u001f\u007f-\u009f\u2028\u2029\ufeff\ud800-\udfff\ufffe\uffff]/);
  }

  function table(value) {
    return Object.entries(value).flatMap(([name, each]) => {
      const lead = (/^[a-z_]+$/.test(name) ? name : scalar(name, "")) + ":";
      if (!nested(each)) {
        if (typeof each !== "string" || !standing(each)) return [`${lead} ${scalar(each, name)}`];
        const ends = each.endsWith("\n");
        const lines = (ends ? each.slice(0, -1) : each).split("\n");
        return [`${lead} ${ends ? "|" : "|-"}`, ...lines.map((line) => line && "  " + line)];
      }
      const line = Array.isArray(each) && each.length ? null : oneLine(each);
      if (line) return [`${lead} ${line}`];
      return [lead, ...(Array.isArray(each) ? items(each) : table(each)).map((inner) => inner && "  " + inner)];
    });
  }

  function items(list) {
    return list.flatMap((each) => {
      if (!nested(each)) return ["- " + scalar(each, "")];
      const line = oneLine(each);
      if (line) return ["- " + line];
      const inner = Array.isArray(each) ? items(each) : table(each);
      return inner.map((text, i) => text && (i ? "  " : "- ") + text);
    });
  }

  const filled = (record) => Object.fromEntries(Object.entries(record).filter(([, value]) => !empty(value)));

  /** The board as a file. What is empty is left out, but for the title. */
  function writeBoard(board) {
    const whole = {};
    for (const name of ORDER) {
      let value = board[name];
      if (name === "features") value = value.map((each) => (Object.keys(filled(each)).join() === "term" ? each.term : filled(each)));
      else if (LISTS.includes(name)) value = value.map((each) => (nested(each) ? filled(each) : each)).filter((each) => !empty(each));
      else if (TABLES.includes(name)) value = filled(value);
      if ((name === "title" || !empty(value)) && !(name === "publish" && value === true)) whole[name] = value;
    }
    return table(whole).join("\n") + "\n";
  }

  // ---- reading: block and flow tables and lists, plain and quoted text, text after | and >, comments

  class Unreadable extends Error {}

  /** A YAML text as tables, lists and values. Throws Unreadable with the line for anything else. */
  function readYaml(text) {
    const lines = text.replace(/^\ufeff|(\r\n?|\n)$/g, "").split(/\r\n?|\n/),
      ended = /[\r\n]$/.test(text);
    let at = 0,
      depth = 0;
    const fail = (words, line) => {
      throw new Unreadable(`Line ${(line === undefined ? at : line) + 1}: ${words}`);
    };
    const bare = (line) => (/^[ \t]*(#.*)?$/.test(line));
    const indentOf = (line) => line.length - line.replace(/^[ \t]+/, "").length;
    const skip = () => {
      while (at < lines.length && bare(lines[at])) at += 1;
      if (at < lines.length && /^ *\t/.test(lines[at])) fail("a tab stands where blanks belong.");
      return at < lines.length ? indentOf(lines[at]) : -1;
    };
    const isItem = (line) => (/^ *-( |$)/.test(line));

    function typed(plain) {
      if (/^(|~|null|Null|NULL)$/.test(plain)) return null;
      if (/^(true|True|TRUE|false|False|FALSE)$/.test(plain)) return /^t/i.test(plain);
      return /^-?[0-9]/.test(plain) && plain.length < 16 && String(Number(plain)) === plain ? Number(plain) : plain;
    }

    function block(indent) {
      if ((depth += 1) > 40) fail("this is nested too deeply.");
      const found = isItem(lines[at]) ? list(indent) : record(indent);
      depth -= 1;
      return found;
    }

    function list(indent) {
      const found = [];
      while (skip() === indent && isItem(lines[at])) {
        const line = lines[at],
          start = at;
        const rest = line.slice(indent + 1);
        if (bare(rest)) found.push(below(indent + 1));
        else {
          lines[at] = " ".repeat(indent + 1) + rest;
          const inner = indentOf(lines[at]);
          found.push(isItem(lines[at]) || KEY.test(lines[at].replace(/^[ \t]+/, "")) ? block(inner) : value(rest.replace(/^[ \t]+/, ""), indent));
        }
        if (at === start) fail("this line is not understood.");
      }
      if (skip() > indent) fail("this line stands further in than the list it follows.");
      return found;
    }

    const KEY = /^("(?:[^"\\]|\\.)*"[ \t]*|'(?:[^']|'')*'[ \t]*|[^\s#&*!|>'"%@`[\]{},?-][^#]*?|[?-][^\s#][^#]*?):(?=[ \t]|$)/;

    function record(indent) {
      const found = Object.create(null);
      let column;
      while ((column = skip()) === indent && !isItem(lines[at])) {
        const line = lines[at].replace(/^[ \t]+/, ""),
          key = KEY.exec(line);
        if (!key) fail("a name with a colon and a blank was expected here, such as title: …");
        const written = key[1].replace(/(?<![ \t])[ \t]+$/, ""),
          name = /^["']/.test(written) ? unquoted(written) : written;
        if (Object.hasOwn(found, name)) fail(`${name} is given twice.`);
        found[name] = value(line.slice(key[0].length).replace(/^[ \t]+/, ""), indent, true);
      }
      if (column > indent) fail("this line stands further in than the one before it.");
      return found;
    }

    /** What stands below a name or a hyphen that has nothing beside it. */
    function below(least, besideLists) {
      at += 1;
      const indent = skip();
      const inside = indent >= least || (besideLists && indent === least - 1 && isItem(lines[at]));
      return inside ? block(indent) : null;
    }

    function value(rest, indent, ofName) {
      if (bare(rest)) return below(indent + 1, ofName);
      if (/^[|>]/.test(rest)) return text_(rest, indent);
      if (/^[&*!%@`]/.test(rest)) fail(`text that starts with ${rest[0]} belongs in quotation marks.`);
      if (/^-( |$)/.test(rest)) fail("a list starts on a line of its own, below its field.");
      if (/^[{["']/.test(rest)) return flow(rest, indent);
      let plain = uncommented(rest);
      const noted = plain.length < rest.replace(/(?<![ \t])[ \t]+$/, "").length;
      at += 1;
      let gap = "";
      while (!noted && at < lines.length && (lines[at].replace(/^[ \t]+|(?<![ \t])[ \t]+$/g, "") === "" || indentOf(lines[at]) > indent)) {
        const line = lines[at].replace(/^[ \t]+|(?<![ \t])[ \t]+$/g, "");
        if (/^#/.test(line)) break;
        if (line === "") gap += "\n";
        else {
          if (/:([ \t]|$)/.test(uncommented(line))) fail("a colon and a blank inside text: put the text in quotation marks.");
          plain += (gap || " ") + uncommented(line);
          gap = "";
        }
        at += 1;
      }
      if (/:([ \t]|$)/.test(plain)) fail("a colon and a blank inside text: put the text in quotation marks.", at - 1);
      return typed(plain);
    }

    const uncommented = (line) => line.replace(/(?<![ \t])[ \t]+#.*$/, "").replace(/^[ \t]+|(?<![ \t])[ \t]+$/g, "");

    function text_(rest, indent) {
      const head = /^([|>])([-+]?)[ \t]*(#.*)?$/.exec(rest);
      if (!head) fail("after | or > nothing else may stand but - or +.");
      at += 1;
      const taken = [];
      while (at < lines.length && (lines[at].replace(/^[ \t]+|(?<![ \t])[ \t]+$/g, "") === "" || indentOf(lines[at]) > indent)) taken.push(lines[at++]);
      const first = taken.find((line) => line.replace(/^[ \t]+|(?<![ \t])[ \t]+$/g, "") !== ""),
        cut = first === undefined ? 0 : indentOf(first);
      let body = taken.map((line) => line.slice(cut)).join("\n");
      if (taken.some((line) => line.replace(/^[ \t]+|(?<![ \t])[ \t]+$/g, "") !== "" && indentOf(line) < cut)) fail("a line of this text stands further out than its first.", at - 1);
      const ending = /(?<!\n)\n*$/.exec(body)[0];
      body = body.slice(0, body.length - ending.length);
      if (head[1] === ">") {
        if (/^[ \t]/m.test(body)) fail("lines of different depth after >; use | instead.", at - 1);
        body = body.replace(/\n(\n*)/g, (all, more) => more || " ");
      }
      // A file may end without the end of its last line, and its last text then does too.
      const last = at >= lines.length && !ended ? "" : "\n";
      return first === undefined ? "" : body + (head[2] === "-" ? "" : head[2] === "+" ? ending + last : ending ? "\n" : last);
    }

    const ESCAPES = {
      ...{ n: "\n", t: "\t", "\t": "\t", r: "\r", 0: "\0", '"': '"', "\\": "\\", "/": "/", " ": " ", e: "\x1b", _: "\xa0" },
      ...{ N: "\x85", L: "\u2028", P: "\u2029", a: "\x07", b: "\b", v: "\v", f: "\f" },
    };

    function unquoted(text) {
      if (text[0] === "'") return text.slice(1, -1).replace(/''/g, "'");
      return text.slice(1, -1).replace(/\\(x[0-9a-fA-F]{2}|u[0-9a-fA-F]{4}|U[0-9a-fA-F]{8}|[\s\S])/g, (all, sign) => {
        if (sign.length > 1) return String.fromCodePoint(parseInt(sign.slice(1), 16));
        return sign in ESCAPES ? ESCAPES[sign] : fail(`the sign \\${sign} is not known.`);
      });
    }

    /** A value in braces, brackets or quotation marks, over as many lines as it takes. */
    function flow(rest, indent) {
      let text = rest,
        i = 0;
      const first = at;
      const more = () => {
        at += 1;
        if (at >= lines.length || (lines[at].replace(/^[ \t]+|(?<![ \t])[ \t]+$/g, "") && indentOf(lines[at]) <= indent && !/^[ ]*[\]}]/.test(lines[at])))
          fail(`what opens with ${rest[0]} is not closed.`, first);
        return lines[at].replace(/^[ \t]+|(?<![ \t])[ \t]+$/g, "");
      };
      const room = () => {
        for (;;) {
          while (text[i] === " " || text[i] === "\t") i += 1;
          if (i < text.length && !(text[i] === "#" && (i === 0 || /[ \t]/.test(text[i - 1])))) return;
          text = more();
          i = 0;
        }
      };
      function quote() {
        const sign = text[i],
          shut = sign === '"' ? /^"((?:[^"\\]|\\[\s\S])*)"/ : /^'((?:[^']|'')*)'(?!')/;
        let found = shut.exec(text.slice(i));
        while (!found) {
          let line = more(),
            breaks = 0;
          while (line === "") {
            breaks += 1;
            line = more();
          }
          const whole = text.replace(/(?<![ \t])[ \t]+$/, "");
          text = sign === '"' && /(^|[^\\])\\$/.test(whole) ? whole.slice(0, -1) + line : whole + ("\n".repeat(breaks) || " ") + line;
          found = shut.exec(text.slice(i));
        }
        i += found[0].length;
        return unquoted(found[0]);
      }
      function one() {
        if ((depth += 1) > 40) fail("this is nested too deeply.");
        room();
        const shut = { "[": "]", "{": "}" }[text[i]];
        let found;
        if (shut) {
          i += 1;
          found = shut === "]" ? [] : Object.create(null);
          for (;;) {
            room();
            if (text[i] === shut) break;
            const given = one();
            if (shut === "]") found.push(given);
            else {
              room();
              if (text[i] !== ":") fail("a colon was expected between a name and its value.");
              i += 1;
              if (Object.hasOwn(found, given)) fail(`${given} is given twice.`);
              room();
              found[given] = /[,}]/.test(text[i]) ? null : one();
            }
            room();
            if (text[i] === ",") i += 1;
            else if (text[i] !== shut) fail(`a comma or ${shut} was expected.`);
          }
          i += 1;
        } else if (/["']/.test(text[i])) found = quote();
        else {
          const plain = /^(?:[^,[\]{}:#]|:(?![\s,[\]{}]|$)|(?<!\s)#)+/.exec(text.slice(i));
          if (!plain || /^([&*!|>%@`?]|-([ \t]|$))/.test(plain[0])) fail(`${text[i]} is not expected here.`);
          i += plain[0].length;
          found = typed(plain[0].replace(/^[ \t]+|(?<![ \t])[ \t]+$/g, ""));
          if (found !== null && /^[ \t]*:/.test(text.slice(i)) ) found = plain[0].replace(/^[ \t]+|(?<![ \t])[ \t]+$/g, "");
        }
        depth -= 1;
        return found;
      }
      const found = one();
      if (!bare(text.slice(i)) || /^#/.test(text.slice(i))) fail("something follows after the closing sign.");
      at += 1;
      return found;
    }

    if (skip() < 0) fail("the file is empty.", 0);
    const found = block(indentOf(lines[at]));
    if (skip() >= 0) fail("this line is not understood.");
    return found;
  }

  /** A board from a file's text. Throws Unreadable, with the line, rather than lose a word of it. */
  function readBoard(file) {
    const given = readYaml(file),
      line = (name) => {
        const found = file.split(/\r\n?|\n/).findIndex((each) => each.startsWith(name));
        return found < 0 ? "" : `Line ${found + 1}: `;
      };
    if (Array.isArray(given)) throw new Unreadable("Line 1: a board starts with a line such as title: …");
    const refuse = (name, words) => {
      throw new Unreadable(`${line(name)}${words}`);
    };
    for (const [name, value] of Object.entries(given)) {
      if (!ORDER.includes(name)) refuse(name, `${name} is not a field of a board.`);
      if (empty(value)) continue;
      if (LISTS.includes(name) !== Array.isArray(value)) refuse(name, `${name} ${Array.isArray(value) ? "is not a list" : "should be a list"}.`);
      if (!Array.isArray(value) && TABLES.includes(name) !== nested(value)) refuse(name, `${name} ${nested(value) ? "should be text" : "should have fields"}.`);
      for (const each of TABLES.includes(name) ? [value] : LISTS.includes(name) ? value : []) {
        if (!nested(each) ? /departures|making|revisions/.test(name) : name === "questions" || Array.isArray(each))
          refuse(name, `an entry of ${name} is not of the right shape.`);
        if (!nested(each) || !INSIDE[name]) continue;
        const strange = Object.keys(each).find((field) => !INSIDE[name].includes(field) || nested(each[field]));
        if (strange) refuse(name, `${strange} has no place in ${name}.`);
      }
    }
    return boardOf(given);
  }

  // ---- a link that carries a board

  /** The part after the # that carries a board, or null where the board is too large for a link. */
  function inLink(board) {
    const bytes = new TextEncoder().encode(writeBoard(board));
    let text = "";
    for (const byte of bytes) text += String.fromCharCode(byte);
    const packed = btoa(text).replace(/\+/g, "-").replace(/\//g, "_").replace(/=+$/, "");
    return packed.length > LONGEST_LINK ? null : `board=${bytes.length}.${packed}`;
  }

  /** The board a link carries: how many bytes, a full stop, and they. Throws where it was cut short or changed. */
  function fromLink(carried) {
    const [length, packed = ""] = carried.split(".");
    const bytes = Uint8Array.from(atob(packed.replace(/-/g, "+").replace(/_/g, "/")), (sign) => sign.charCodeAt(0));
    if (bytes.length !== Number(length)) throw new Unreadable("The link was cut short.");
    return readBoard(new TextDecoder("utf-8", { fatal: true }).decode(bytes));
  }

  /** The file name of a board. */
  function fileName(board) {
    const words = board.title.toLowerCase().normalize("NFD").replace(/\p{M}/gu, "").match(/[a-z0-9]+/g) || ["board"];
    return words.join("-").slice(0, 60).replace(/-+$/, "") + ".yaml";
  }

  InPeriod.boardFile = { writeBoard, writeTable: table, readBoard, readYaml, inLink, fromLink, fileName, Unreadable };
  if (typeof module !== "undefined") module.exports = InPeriod.boardFile;
})(globalThis);
