// Source files as YAML, the whole door: `read`, `decode`, `plainValue` (record-yaml-scan.js, -events.js, -read.js), `sourceYaml`,
// `tidy` (-write.js), and here `updated`: a file that a person wrote, with other values in it.
//
// A file is changed line by line. Each field and each entry of a list has its own lines: comments directly above it, in its
// column; what it says; and what stands after it up to the next one. Those of what did not change are taken over as they are.
// What comes out is read again and compared; where it would not say what was asked, plainer ways are tried, the plainest last.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod ||= {});
  if (typeof module !== "undefined") for (const part of ["scan", "events", "read", "write"]) require(`./record-yaml-${part}.js`);
  const { events, plainValue, coreValue, lineEnds, withoutMark, sourceYaml, tidy, writing } = InPeriod.recordYaml;
  const { tidied, tableLines, itemLines, oneLine, single, ordered, inside, EACH, ORDERS, WIDEST, blockEnd, placing, isTable, isOpen, width, nothing } = writing;

  const FOLD = 100;

  const indentOf = (line) => line.length - line.trimStart().length;
  const isBlank = (line) => !line.trim();
  const isComment = (line) => line.trimStart().startsWith("#");
  const append = (to, more) => more.forEach((line) => to.push(line));
  const deeper = (lines, column) => lines.map((line) => (line ? " ".repeat(column) + line : line));

  /** Whether two values are the same, whatever the order of their fields. */
  function same(one, other) {
    if (Array.isArray(one)) return Array.isArray(other) && one.length === other.length && one.every((each, at) => same(each, other[at]));
    if (!isTable(one) || !isTable(other)) return one === other;
    const present = (value) => Object.keys(value).filter((name) => value[name] !== undefined);
    const names = present(one);
    return names.length === present(other).length && names.every((name) => Object.hasOwn(other, name) && same(one[name], other[name]));
  }

  /** A value as it is read again: a date that is text, 1912, stands plain and is read as a number. */
  function asRead(value, name, exactly = false) {
    if (Array.isArray(value)) return value.map((each) => asRead(each, "", exactly));
    if (isTable(value)) return Object.fromEntries(Object.entries(value).map(([inner, each]) => [inner, asRead(each, inner, exactly)]));
    if (typeof value !== "string" || single(value, name) !== value) return value;
    const read_ = coreValue({ text: value, plain: true });
    return exactly && String(read_) !== value ? value : read_;
  }

  /** A value in a form that is the same for the same values. */
  const keyOf = (value) =>
    JSON.stringify(value, (name, each) => (isTable(each) ? Object.fromEntries(Object.entries(each).sort(([a], [b]) => (a < b ? -1 : 1))) : each));

  // ---- What was written where.

  /**
   * The nodes of a text that can be read, with their places: {is, start, end, flow, style, shared, value} and, in lists,
   * `items` and the places of their `dashes`, in tables `entries` of {name, key, node}; and all comments.
   */
  function written(text, lines) {
    const comments = [], stack = [], anchors = new Map();
    const at = placing(lines);
    let top = null;

    function finished(node) {
      if (node.anchor) anchors.set(node.anchor, node.value);
      const it = stack[stack.length - 1];
      if (!it) top = node;
      else if (it.is === "items") {
        it.items.push(node);
        it.value.push(node.value);
      } else if (!it.key) it.key = node;
      else {
        const name = it.key.text;
        it.entries.push({ name, key: it.key, node });
        Object.defineProperty(it.value, name, { value: node.value, enumerable: true, configurable: true, writable: true });
        it.key = null;
      }
      if (it && node.shared) it.shared = true;
    }

    events(text, (event) => {
      const { is } = event;
      if (is === "document") return;
      const flow = stack.some((each) => each.flow);
      if (is === "comment") comments.push({ ...at(event.start), text: event.text });
      else if (is === "dash") stack[stack.length - 1].dashes.push(at(event.start));
      else if (is === "end") {
        const node = stack.pop();
        node.end = flow ? at(event.end) : null;
        finished(node);
      } else {
        const node = { is, start: at(event.start), anchor: event.anchor, shared: is === "alias" || Boolean(event.anchor) };
        if (is === "table" || is === "items") {
          stack.push({ ...node, flow: event.flow || flow, value: is === "items" ? [] : {}, entries: [], items: [], dashes: [], key: null });
          return;
        }
        const { text: said, style } = event;
        const value = is === "alias" ? anchors.get(event.anchor) : coreValue({ text: said, plain: !style });
        finished({ ...node, is: "scalar", anchor: is === "alias" ? null : event.anchor, end: at(event.end), text: said, style, value });
      }
    });
    return { top, comments };
  }

  // ---- The lines of a changed file.

  function changing(text, daring) {
    const lines = lineEnds(text);
    if (!lines[lines.length - 1]) lines.pop();
    const { top, comments } = written(text, lines);
    const isBlock = (node) => isOpen(node.value) && !node.flow && node.is !== "scalar";
    const isKept = (node, raw, value) => (daring || !node.shared) && (same(node.value, raw) || same(node.value, value));

    /** Where a list or table that is not in brackets begins, behind an anchor. */
    const begin = (node) => (node.is === "items" ? node.dashes[0] : node.entries[0].key.start);

    /** The last line on which something of a node stands. */
    function lastLine(node) {
      if (isBlock(node)) {
        const inner = node.is === "items" ? node.items : node.entries.map((entry) => entry.node);
        return Math.max(node.start.line, ...(inner.length ? [lastLine(inner[inner.length - 1])] : []), ...(node.dashes.length ? [node.dashes[node.dashes.length - 1].line] : []));
      }
      if (node.style === "|" || node.style === ">") return blockEnd(lines, node.start, node.end).last;
      return Math.max(node.start.line, node.end.line - (node.end.column || node.end.line === node.start.line ? 0 : 1));
    }

    /**
     * The lines [from, to) of a list or table cut into its parts: {head, parts: [{lead, body, tail}], foot}. `starts` are the
     * lines on which the parts begin, `ends` the last of each; `column` is theirs.
     */
    function cut(from, to, starts, ends, column) {
      const parts = [];
      let before = from, head = [];
      starts.forEach((start, at) => {
        let lead = start;
        while (lead > before && isComment(lines[lead - 1]) && indentOf(lines[lead - 1]) === column) lead -= 1;
        // What stands at the top of a file speaks of all of it.
        if (lead === 0) lead = start;
        if (at) parts[at - 1].tail = lines.slice(before, lead);
        else head = lines.slice(before, lead);
        before = ends[at] + 1;
        const limit = at + 1 < starts.length ? starts[at + 1] : to;
        // Comments further in than the part's own column belong inside it.
        for (let next = before; next < limit && (isBlank(lines[next]) || (isComment(lines[next]) && indentOf(lines[next]) > column)); next += 1) {
          if (!isBlank(lines[next])) before = next + 1;
        }
        parts.push({ lead: lines.slice(lead, start), start, end: before, body: lines.slice(start, before), tail: [] });
      });
      return { head, parts, foot: lines.slice(before, to) };
    }

    /** Comments that stand between two places and would be lost, as lines of their own. */
    const lostComments = (from, to, column) =>
      comments
        .filter(({ line, column: at }) => (line > from.line || (line === from.line && at >= from.column)) && (line < to.line || (line === to.line && at < to.column)))
        .map((comment) => " ".repeat(column) + comment.text);

    /** The lines of a part written anew, the comments inside it above. */
    const anew = (part, column, fresh) => [...lostComments({ line: part.start, column: 0 }, { line: part.end, column: 0 }, column), ...deeper(fresh, column)];

    /** A value that was one scalar, or in brackets, in its old place on its line; null where it does not fit. */
    function inPlace(part, node, value, name, column) {
      const wanted = isOpen(value) ? (Array.isArray(value) && value.length && !(node.flow && node.is === "items") ? null : oneLine(value)) : single(value, name);
      if (wanted === null || (isOpen(value) && width(wanted) >= WIDEST)) return null;
      const first = lines[node.start.line], isText = node.style === "|" || node.style === ">";
      const block = daring && isText && typeof value === "string" ? blockText(value, node.style) : null;
      const rest = isText || node.end.line >= lines.length ? "" : lines[node.end.line].slice(node.end.column);
      // An empty value has its place right after the colon or hyphen.
      const gap = first[node.start.column - 1] === ":" || (name === null && node.start.column === column + 1) ? " " : "";
      const changed = first.slice(0, node.start.column) + gap;
      const upTo = lastLine(node);
      const inner = isText ? lostComments(node.start, { line: node.start.line + 1, column: 0 }, column) : lostComments(node.start, node.end, column);
      const fresh = block ? [changed + block[0], ...deeper(block.slice(1), column + 2)] : [changed + wanted + rest];
      return [...inner, ...lines.slice(part.start, node.start.line), ...fresh, ...lines.slice(upTo + 1, part.end)];
    }

    /** Text after | or > as it was written before, where it can be; null where it cannot. */
    function blockText(value, style) {
      const all = value.split("\n"), ended = all.length > 1 && all[all.length - 1] === "";
      if (ended) all.pop();
      if (!all.some((line) => line) || all.some((line) => /^\s|\s$|[\x00-\x1f]/.test(line)) || all[0] === "" || all[all.length - 1] === "") return null;
      const sign = `${style}${ended ? "" : "-"}`;
      return [sign, ...(style === "|" ? all : all.flatMap((line, at) => [...(at ? [""] : []), ...(line ? folded(line) : [])]))];
    }

    /** A line broken between words, so that it is read as one again. */
    function folded(line) {
      const words = line.split(" "), found = [words[0]];
      let wide = width(words[0]);
      words.slice(1).forEach((word, at) => {
        const fits = wide + width(word) < FOLD || !word || !words[at];
        if (fits) found[found.length - 1] += ` ${word}`;
        else found.push(word);
        wide = (fits ? wide + 1 : 0) + width(word);
      });
      return found;
    }

    /** Whether the fields of a table each begin a line in one column, name and colon, so that they can be changed apart. */
    const isPlainTable = (node) => {
      const begun = new Set();
      return node.entries.every(({ key }) => {
        const { line, column } = key.start, fresh = !begun.has(line);
        begun.add(line);
        const before = lines[line].slice(0, column);
        return fresh && column === begin(node).column && key.end.line === line && /^[ \t]*(?:-[ \t]+)*$/.test(before) && /^[ \t]*:/.test(lines[line].slice(key.end.column));
      });
    };

    /** A changed table in the lines [from, to). */
    function table(node, raw, value, place, from, to) {
      const { column } = begin(node);
      const { head, parts, foot } = cut(from, to, node.entries.map(({ key }) => key.start.line), node.entries.map(({ node: each }) => lastLine(each)), column);
      const kept = [];
      node.entries.forEach(({ name, node: each }, at) => {
        const part = parts[at];
        if (!Object.hasOwn(value, name) || value[name] === undefined) {
          // A field that was empty already, and is left out of what is written, may stay.
          if (!(ORDERS[place] && Object.hasOwn(raw, name) && isKept(each, raw[name]))) {
            append(kept.length ? kept[kept.length - 1].tail : head, part.tail);
            return;
          }
        } else if (!isKept(each, raw[name], value[name])) part.body = field(part, each, name, raw[name], value[name], place, column);
        kept.push({ ...part, name });
      });
      const had = new Set(kept.map(({ name }) => name));
      const names = Object.keys(value).filter((name) => value[name] !== undefined && !had.has(name));
      for (const name of names) {
        const at = placeFor(name, kept, place), tail = at ? kept[at - 1].tail : [], blank = tail.findIndex(isBlank);
        const body = deeper(tableLines({ [name]: value[name] }), column);
        kept.splice(at, 0, { name, lead: [], body, tail: blank < 0 ? [] : tail.splice(blank) });
      }
      return [...head, ...kept.flatMap(({ lead, body, tail }) => [...lead, ...body, ...tail]), ...foot];
    }

    /** Where a new field stands among those there are: after those that come before it in the house order, else last. */
    function placeFor(name, kept, place) {
      const order = ORDERS[place] || [], rank = order.indexOf(name);
      if (rank < 0) return kept.length;
      for (let at = rank - 1; at >= 0; at -= 1) {
        const found = kept.findIndex((each) => each.name === order[at]);
        if (found >= 0) return found + 1;
      }
      return 0;
    }

    /** The lines of a field whose value changed. */
    function field(part, node, name, raw, value, place, column) {
      const within = inside(place, name);
      const inner = changed(node, raw, value, within, part, name, column);
      return inner || anew(part, column, tableLines({ [name]: value }));
    }

    /** The lines of a part whose value changed, as far as its old lines can be used; else null. */
    function changed(node, raw, value, place, part, name, column) {
      if (!daring && node.anchor) return null;
      if (!isBlock(node)) return inPlace(part, node, value, name, column);
      const from = begin(node).line;
      if (from === part.start && name !== null) return null;
      const first = from === part.start ? from : part.start + 1;
      const header = lines.slice(part.start, first);
      if (node.is === "items" && Array.isArray(value) && value.length) return [...header, ...list(node, raw, value, place, first, part.end)];
      if (node.is === "table" && isTable(value) && Object.keys(value).length && isPlainTable(node)) {
        return [...header, ...table(node, raw, value, place, first, part.end)];
      }
      return null;
    }

    /** A changed list in the lines [from, to). */
    function list(node, raw, value, place, from, to) {
      const { column } = begin(node);
      const { head, parts, foot } = cut(from, to, node.dashes.map(({ line }) => line), node.items.map(lastLine), column);
      const apart = parts.filter((part, at) => at && [...parts[at - 1].tail, ...part.lead].some(isBlank)).length * 2 > parts.length - 1;
      const partners = matched(node.items.map((each) => each.value), raw, value), used = new Set(partners);
      // What stood after an entry that is gone stays, behind the one before it.
      parts.forEach((part, at) => {
        if (!used.has(at)) append(at ? parts[at - 1].tail : head, part.tail.filter((line) => !isBlank(line)));
      });
      const done = [];
      let before = null;
      value.forEach((each, at) => {
        const old = partners[at], part = old === null ? { lead: [], body: deeper(itemLines([each]), column), tail: [] } : parts[old];
        const neighbours = before === old - 1 && old !== null;
        if (apart && at && !neighbours && !isBlank(done[done.length - 1])) done.push("");
        const item = node.items[old];
        const body = old === null || isKept(item, raw[at], each) ? part.body : entry(part, item, raw[at], each, EACH[place], column);
        for (const these of [part.lead, body, part.tail]) append(done, these);
        before = old;
      });
      return [...head, ...done, ...foot];
    }

    /** The lines of a list's entry that changed: without its hyphen an entry is like any other part. */
    function entry(part, node, raw, value, place, column) {
      const dashed = lines[part.start];
      const fresh = () => anew(part, column, itemLines([value]));
      if (isBlock(node) && begin(node).line > part.start) return changed(node, raw, value, place, part, "", column) || fresh();
      lines[part.start] = `${dashed.slice(0, column)} ${dashed.slice(column + 1)}`;
      const bare = changed(node, raw, value, place, part, null, column);
      lines[part.start] = dashed;
      if (!bare) return fresh();
      const first = bare.findIndex((line) => !isBlank(line) && !isComment(line));
      if (first < 0) return fresh();
      const lead = bare.slice(0, first).filter((line) => !isBlank(line)).map((line) => " ".repeat(column) + line.trim());
      return [...lead, `${bare[first].slice(0, column)}-${bare[first].slice(column + 1)}`, ...bare.slice(first + 1)];
    }

    /**
     * For each new entry of a list the number of the old one it was, or null: by what names it, else by being the same, else
     * by standing in the place of one that is gone.
     */
    function matched(old, raw, value) {
      const named = (each) => (isTable(each) && typeof each.id === "string" ? `id ${each.id}` : null);
      const alike = (each) => named(each) || (isTable(each) && typeof each.term === "string" ? `term ${each.term}` : typeof each === "string" ? `term ${each}` : null);
      const renamed = (each) => (named(each) ? keyOf({ ...each, id: "" }) : null);
      const found = value.map(() => null), free = new Set(old.keys());
      for (const way of [keyOf, named, alike, renamed]) {
        const places = new Map();
        for (const at of free) {
          const key = way(old[at]);
          if (key !== null && !places.has(key)) places.set(key, []);
          if (key !== null) places.get(key).push(at);
        }
        for (const queue of places.values()) queue.reverse();
        value.forEach((each, at) => {
          if (found[at] !== null) return;
          const queue = places.get(way(raw[at])) || places.get(way(each));
          if (!queue || !queue.length) return;
          found[at] = queue.pop();
          free.delete(found[at]);
        });
      }
      value.forEach((each, at) => {
        const before = at ? found[at - 1] : -1;
        if (found[at] !== null || before === null || !free.has(before + 1)) return;
        if (named(each) && named(old[before + 1])) return;
        found[at] = before + 1;
        free.delete(before + 1);
      });
      return found;
    }

    return (raw) => {
      if (!top || top.is !== "table" || top.flow || !isPlainTable(top)) return null;
      return `${table(top, raw, ordered(raw, "source"), "source", 0, lines.length).join("\n")}\n`;
    };
  }

  /** All comments of a text, each a line of its own. */
  const commentsOf = (text) => written(text, lineEnds(text)).comments.map((comment) => comment.text);

  /**
   * The text of a source file with other values in it, tidy: comments, the order of fields and the layout of what did not change
   * are kept. `given` is the whole source as `plainValue` gives it. A text that cannot be read is written anew.
   */
  function updated(text, given) {
    const value = asRead(given, "", true), wanted = ordered(asRead(value), "source");
    const meant = ({ root: tree, wrong }) => (tree && tree.is === "table" && !wrong ? plainValue(tree) : null);
    const neat = tidied(text), before = meant(neat);
    const anew = () => tidy([...commentsOf(withoutMark(neat.text)), sourceYaml(value)].join("\n"));
    if (!before) return neat.wrong ? sourceYaml(value) : anew();
    if (same(before, value) || same(ordered(before, "source"), wanted)) return neat.text;
    for (const daring of [true, false]) {
      const result = changing(neat.text, daring)(value), after = result && tidied(result), found = after && meant(after);
      if (found && same(ordered(found, "source"), wanted)) return after.text;
    }
    return anew();
  }

  InPeriod.recordYaml.updated = updated;
  if (typeof module !== "undefined") module.exports = InPeriod.recordYaml;
})(globalThis);
