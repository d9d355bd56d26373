// The tokens of a YAML text: signs, names, values, and where each begins and ends.
//
// It mirrors the scanner of libyaml (the parser behind PyYAML's CSafeLoader) for text without NEL, LS, PS and control
// characters, which are refused before: the same marks, and where it stops the same words. Columns count code points.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod ||= {});

  const LONGEST_KEY = 1024, MOST_BRACKETS = 1000;
  const SHORT_ESCAPES = {
    0: "\0", a: "\x07", b: "\b", t: "\t", "\t": "\t", n: "\n", v: "\v", f: "\f", r: "\r", e: "\x1b", " ": " ", '"': '"', "/": "/",
    "\\": "\\", N: "\x85", _: "\xa0", L: "\u2028", P: "\u2029",
  };
  const CODE_ESCAPES = { x: 2, u: 4, U: 8 };
  const ALPHA = /[\w-]/, DIGIT = /[0-9]/, HEX = /[0-9A-Fa-f]/, ADDRESS = /[\w\-;/?:@&=+$.!~*'()]/, MORE_ADDRESS = /[,[\]]/;
  const NOT_FIRST = "-?:,[]{}#&*!|>'\"%@`";

  const blank = (c) => c === " " || c === "\t";
  const broken = (c) => c === "\n" || c === "\r";
  const over = (c) => c === "\0" || broken(c);
  const gap = (c) => blank(c) || over(c);

  /** Where the parser stopped: what it was at and since where, what is amiss and where. */
  class Stopped extends Error {
    constructor(problem, mark, context = "", since = null) {
      super(`${context} ${problem}`);
      Object.assign(this, { mark, since });
    }
  }

  /** The characters of a text with the place reached in it; columns and lengths count code points. */
  function reader(text, hear) {
    const chars = /[\ud800-\udfff]/.test(text) ? Array.from(text) : text;
    let at = 0, line = 0, from = 0;
    const look = (ahead = 0) => chars[at + ahead] || "\0";
    const piece = (start, end) => (typeof chars === "string" ? chars.slice(start, end) : chars.slice(start, end).join(""));
    function skip(count = 1) {
      at += count;
    }
    /** Steps over a line's end and gives it as one sign; nothing where there is none. */
    function lineEnd() {
      if (!broken(look())) return "";
      at += look() === "\r" && look(1) === "\n" ? 2 : 1;
      line += 1;
      from = at;
      return "\n";
    }
    /** Steps on while a character is wanted, and gives what was passed. */
    function while_(wanted) {
      const start = at;
      while (wanted(look())) at += 1;
      return piece(start, at);
    }
    function newLine() {
      if (at > from) [line, from] = [line + 1, at];
    }
    return {
      look, skip, lineEnd, while_, newLine,
      column: () => at - from,
      mark: () => ({ at, line, column: at - from }),
      comment() {
        if (look() !== "#") return;
        const start = { at, line, column: at - from };
        hear({ is: "comment", start, text: while_((c) => !over(c)) });
      },
      /** Whether --- or ... stands here at the start of a line. */
      divides: (signs) => at === from && look() === signs && look(1) === signs && look(2) === signs && gap(look(3)),
    };
  }

  /** The tokens of a text: `peek()` the next, `take()` it. */
  function tokens(text, hear) {
    const it = reader(text, hear), { look, skip, mark, column, while_, lineEnd } = it;
    let flow = 0, indent = -1, keyAllowed = true, taken = 0, known = false;
    const indents = [], queue = [], keys = [null];

    const add = (is, start, more) => queue.push(Object.assign({ is, start, end: mark() }, more));

    function stop(problem, context, since) {
      throw new Stopped(problem, mark(), context, since);
    }

    const missing = (key) => stop("could not find expected ':'", "while scanning a simple key", key.mark);

    /** A name before a colon stands on one line and is not longer than 1024 characters. */
    function dropStale() {
      const here = mark();
      keys.forEach((key, level) => {
        if (!key || (key.mark.line === here.line && key.mark.at + LONGEST_KEY >= here.at)) return;
        if (key.required) missing(key);
        keys[level] = null;
      });
    }

    function dropKey() {
      const key = keys[flow];
      if (key && key.required) missing(key);
      keys[flow] = null;
    }

    /** What comes next may turn out to be the name before a colon. */
    function saveKey() {
      if (!keyAllowed) return;
      dropKey();
      keys[flow] = { required: !flow && indent === column(), number: taken + queue.length, mark: mark() };
    }

    function roll(to, is, place, at) {
      if (flow || indent >= to) return;
      indents.push(indent);
      indent = to;
      queue.splice(place, 0, { is, start: at, end: at });
    }

    function unroll(to) {
      if (flow) return;
      for (; indent > to; indent = indents.pop()) add("block end", mark());
    }

    function sign(is, length = 1) {
      const start = mark();
      skip(length);
      add(is, start);
    }

    function alone(is, length) {
      unroll(-1);
      dropKey();
      keyAllowed = false;
      if (length) sign(is, length);
    }

    function blockEntry() {
      if (!flow) {
        if (!keyAllowed) stop("block sequence entries are not allowed in this context");
        roll(column(), "block [", queue.length, mark());
      }
      dropKey();
      keyAllowed = true;
      sign("-");
    }

    function longKey() {
      if (!flow) {
        if (!keyAllowed) stop("mapping keys are not allowed in this context");
        roll(column(), "block {", queue.length, mark());
      }
      dropKey();
      keyAllowed = !flow;
      sign("?");
    }

    function value() {
      const key = keys[flow];
      if (key) {
        queue.splice(key.number - taken, 0, { is: "?", start: key.mark, end: key.mark });
        roll(key.mark.column, "block {", key.number - taken, key.mark);
        keys[flow] = null;
        keyAllowed = false;
      } else {
        if (!flow) {
          if (!keyAllowed) stop("mapping values are not allowed in this context");
          roll(column(), "block {", queue.length, mark());
        }
        keyAllowed = !flow;
      }
      sign(":");
    }

    function open(is) {
      saveKey();
      if (flow === MOST_BRACKETS) stop("exceeded maximum nesting depth", "while increasing flow level", mark());
      flow += 1;
      keys[flow] = null;
      keyAllowed = true;
      sign(is);
    }

    function close(is) {
      dropKey();
      if (flow) {
        keys.pop();
        flow -= 1;
      }
      keyAllowed = false;
      sign(is);
    }

    function anchor(is) {
      const start = mark(), context = `while scanning an ${is}`;
      skip();
      const name = while_((c) => ALPHA.test(c));
      if (!name || !(gap(look()) || "?:,]}%@`".includes(look()))) {
        stop("did not find expected alphabetic or numeric character", context, start);
      }
      add(is, start, { name });
    }

    function tagHandle(directive, start) {
      if (look() !== "!") stop("did not find expected '!'", `while scanning a ${directive ? "tag directive" : "tag"}`, start);
      skip();
      const name = while_((c) => ALPHA.test(c));
      if (look() === "!") {
        skip();
        return `!${name}!`;
      }
      if (directive && name) stop("did not find expected '!'", "while parsing a tag directive", start);
      return `!${name}`;
    }

    function tagAddress(more, directive, head, start) {
      const context = directive ? "while parsing a %TAG directive" : "while parsing a tag";
      let address = head.slice(1), length = head.length;
      for (;;) {
        const c = look();
        if (c === "%") address += octets(context, start);
        else if (ADDRESS.test(c) || (more && MORE_ADDRESS.test(c))) {
          address += c;
          skip();
        } else break;
        length += 1;
      }
      if (!length) stop("did not find expected tag URI", context, start);
      return address;
    }

    function octets(context, start) {
      let left = 0, found = "";
      do {
        if (look() !== "%" || !HEX.test(look(1)) || !HEX.test(look(2))) stop("did not find URI escaped octet", context, start);
        const octet = parseInt(look(1) + look(2), 16);
        if (found) {
          if ((octet & 0xc0) !== 0x80) stop("found an incorrect trailing UTF-8 octet", context, start);
        } else {
          left = octet < 0x80 ? 1 : (octet & 0xe0) === 0xc0 ? 2 : (octet & 0xf0) === 0xe0 ? 3 : (octet & 0xf8) === 0xf0 ? 4 : 0;
          if (!left) stop("found an incorrect leading UTF-8 octet", context, start);
        }
        found += `%${octet}`;
        skip(3);
        left -= 1;
      } while (left);
      return found;
    }

    function tag() {
      const start = mark();
      let handle = "", suffix = "!";
      if (look(1) === "<") {
        skip(2);
        suffix = tagAddress(true, false, "", start);
        if (look() !== ">") stop("did not find the expected '>'", "while scanning a tag", start);
        skip();
      } else {
        const head = tagHandle(false, start), whole = head.length > 1 && head.endsWith("!");
        const address = tagAddress(false, false, whole ? "" : head, start);
        if (whole || address) [handle, suffix] = [whole ? head : "!", address];
      }
      if (!gap(look()) && !(flow && look() === ",")) {
        stop("did not find expected whitespace or line break", "while scanning a tag", start);
      }
      add("tag", start, { handle, suffix });
    }

    function directive() {
      alone("%");
      const start = mark(), context = "while scanning a directive";
      skip();
      const name = while_((c) => ALPHA.test(c));
      if (!name) stop("could not find expected directive name", context, start);
      if (!gap(look())) stop("found unexpected non-alphabetical character", context, start);
      if (name === "YAML") version(start);
      else if (name === "TAG") tagDirective(start);
      else stop("found unknown directive name", context, start);
      while_(blank);
      it.comment();
      if (!over(look())) stop("did not find expected comment or line break", context, start);
      lineEnd();
    }

    function version(start) {
      const context = "while scanning a %YAML directive";
      const number = () => {
        let digits = "";
        while (DIGIT.test(look())) {
          if (digits.length === 9) stop("found extremely long version number", context, start);
          digits += look();
          skip();
        }
        if (!digits) stop("did not find expected version number", context, start);
        return Number(digits);
      };
      while_(blank);
      const major = number();
      if (look() !== ".") stop("did not find expected digit or '.' character", context, start);
      skip();
      add("%YAML", start, { major, minor: number() });
    }

    function tagDirective(start) {
      const context = "while scanning a %TAG directive";
      while_(blank);
      const handle = tagHandle(true, start);
      if (!blank(look())) stop("did not find expected whitespace", context, start);
      while_(blank);
      tagAddress(true, true, "", start);
      if (!gap(look())) stop("did not find expected whitespace or line break", context, start);
      add("%TAG", start, { handle });
    }

    function blockText(style) {
      dropKey();
      keyAllowed = true;
      const start = mark(), context = "while scanning a block scalar";
      let keep = "", wide = 0;
      const chomping = () => {
        if (look() !== "+" && look() !== "-") return;
        keep = look();
        skip();
      };
      const indicator = () => {
        if (!DIGIT.test(look())) return;
        if (look() === "0") stop("found an indentation indicator equal to 0", context, start);
        wide = Number(look());
        skip();
      };
      skip();
      chomping();
      indicator();
      if (!keep) chomping();
      while_(blank);
      it.comment();
      if (!over(look())) stop("did not find expected comment or line break", context, start);
      lineEnd();
      let end = mark(), depth = wide && Math.max(indent, 0) + wide;

      /** The empty lines before the next line of the text; finds out how far that is indented. */
      function emptyLines() {
        let widest = 0, lines = "";
        end = mark();
        for (;;) {
          while ((!depth || column() < depth) && look() === " ") skip();
          widest = Math.max(widest, column());
          if ((!depth || column() < depth) && look() === "\t") {
            stop("found a tab character where an indentation space is expected", context, start);
          }
          if (!broken(look())) break;
          lines += lineEnd();
          end = mark();
        }
        depth = depth || Math.max(widest, indent + 1, 1);
        return lines;
      }

      let found = "", lead = "", lines = emptyLines(), wasBlank = false;
      while (column() === depth && look() !== "\0") {
        const isBlank = blank(look());
        if (style === ">" && lead && !wasBlank && !isBlank) found += lines ? "" : " ";
        else found += lead;
        found += lines;
        wasBlank = isBlank;
        found += while_((c) => !over(c));
        lead = lineEnd();
        lines = emptyLines();
      }
      if (keep !== "-") found += lead;
      if (keep === "+") found += lines;
      queue.push({ is: "scalar", start, end, text: found, style });
    }

    function escaped(context, start) {
      const c = look(1), length = CODE_ESCAPES[c];
      if (!length) {
        if (!Object.hasOwn(SHORT_ESCAPES, c)) stop("found unknown escape character", context, start);
        skip(2);
        return SHORT_ESCAPES[c];
      }
      skip(2);
      let code = 0;
      for (let each = 0; each < length; each += 1) {
        if (!HEX.test(look(each))) stop("did not find expected hexdecimal number", context, start);
        code = code * 16 + parseInt(look(each), 16);
      }
      if ((code >= 0xd800 && code <= 0xdfff) || code > 0x10ffff) stop("found invalid Unicode character escape code", context, start);
      skip(length);
      return String.fromCodePoint(code);
    }

    function quoted(quote) {
      saveKey();
      keyAllowed = false;
      const start = mark(), scanning = "while scanning a quoted scalar", single = quote === "'";
      const parts = [];
      skip();
      for (;;) {
        if (it.divides("-") || it.divides(".")) stop("found unexpected document indicator", scanning, start);
        if (look() === "\0") stop("found unexpected end of stream", scanning, start);
        let fresh = false;
        while (!gap(look())) {
          if (single && look() === "'" && look(1) === "'") {
            parts.push("'");
            skip(2);
          } else if (look() === quote) break;
          else if (!single && look() === "\\" && broken(look(1))) {
            skip();
            lineEnd();
            fresh = true;
            break;
          } else if (!single && look() === "\\") parts.push(escaped("while parsing a quoted scalar", start));
          else parts.push(while_((c) => !gap(c) && c !== quote && c !== "\\") || while_((c) => single && c === "\\"));
        }
        if (look() === quote) break;
        parts.push(joined(fresh));
      }
      skip();
      add("scalar", start, { text: parts.join(""), style: quote });
    }

    /** The blanks and line ends between two words, as they count; `fresh` where a line's end was taken away already. */
    function joined(fresh, check = () => {}) {
      let spaces = "", lead = "", lines = "", passed = fresh;
      for (;;) {
        if (blank(look())) {
          check(passed);
          if (!passed) spaces += look();
          skip();
        } else if (broken(look())) {
          if (passed) lines += lineEnd();
          else lead = lineEnd();
          passed = true;
        } else break;
      }
      return passed ? (lead && !lines ? " " : lines) : spaces;
    }

    function plain() {
      saveKey();
      keyAllowed = false;
      const start = mark(), context = "while scanning a plain scalar";
      const parts = [];
      let end = start, between = "", fresh = false;
      const ends = (c) => {
        if (gap(c)) return true;
        if (c === ":") {
          const next = look(1);
          if (flow && ",?[]{}".includes(next)) stop("found unexpected ':'", context, start);
          return gap(next);
        }
        return flow > 0 && ",[]{}".includes(c);
      };
      const tabs = (passed) => {
        if (passed && column() < indent + 1 && look() === "\t") {
          stop("found a tab character that violates indentation", context, start);
        }
      };
      for (;;) {
        if (it.divides("-") || it.divides(".") || look() === "#") break;
        const word = while_((c) => !ends(c));
        if (word) {
          parts.push(between, word);
          fresh = false;
          between = "";
          end = mark();
        }
        if (!blank(look()) && !broken(look())) break;
        const line = end.line;
        between = joined(false, tabs);
        fresh = mark().line > line;
        if (!flow && column() < indent + 1) break;
      }
      if (fresh) keyAllowed = true;
      queue.push({ is: "scalar", start, end, text: parts.join(""), style: "" });
    }

    function toNext() {
      for (;;) {
        while (look() === " " || ((flow || !keyAllowed) && look() === "\t")) skip();
        it.comment();
        if (!lineEnd()) return;
        if (!flow) keyAllowed = true;
      }
    }

    function fetch() {
      toNext();
      dropStale();
      unroll(column());
      const c = look(), next = look(1);
      if (c === "\0") {
        it.newLine();
        alone("end");
        return add("end", mark());
      }
      if (c === "%" && column() === 0) return directive();
      if (it.divides("-")) return alone("---", 3);
      if (it.divides(".")) return alone("...", 3);
      if (c === "[" || c === "{") return open(c);
      if (c === "]" || c === "}") return close(c);
      if (c === ",") {
        dropKey();
        keyAllowed = true;
        return sign(",");
      }
      if (c === "-" && gap(next)) return blockEntry();
      if (c === "?" && (flow || gap(next))) return longKey();
      if (c === ":" && (flow || gap(next))) return value();
      if (c === "*" || c === "&" || c === "!") {
        saveKey();
        keyAllowed = false;
        return c === "!" ? tag() : anchor(c === "*" ? "alias" : "anchor");
      }
      if ((c === "|" || c === ">") && !flow) return blockText(c);
      if (c === "'" || c === '"') return quoted(c);
      const starts = !gap(c) && !NOT_FIRST.includes(c);
      if (starts || (c === "-" && !blank(next)) || (!flow && (c === "?" || c === ":") && !gap(next))) return plain();
      return stop("found character that cannot start any token", "while scanning for the next token", mark());
    }

    /** The next token; it is known only when it can no longer turn out to be the name before a colon. */
    function peek() {
      while (!known) {
        if (queue.length) {
          dropStale();
          known = !keys.some((key) => key && key.number === taken);
        }
        if (!known) fetch();
      }
      return queue[0];
    }

    return {
      peek,
      take() {
        const token = peek();
        queue.shift();
        taken += 1;
        known = false;
        return token;
      },
    };
  }

  InPeriod.recordYaml = Object.assign(InPeriod.recordYaml || {}, { tokens, Stopped });
  if (typeof module !== "undefined") module.exports = InPeriod.recordYaml;
})(globalThis);
