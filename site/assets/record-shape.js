// The tree of one source file held against the schema, in the same words as the checker: records/shaping.py, part by part.
// The shapes come from the build (data/recording.js): a list, each naming its parts by their place in it, the source's last.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod ||= {});
  const MOST_COMPLAINTS = 200;

  // ---- text as Python sees it: by characters, not by halves of them, with its own idea of a space

  const SPACE = "\\t-\\r\\x1c-\\x20\\x85\\xa0\\u1680\\u2000-\\u200a\\u2028\\u2029\\u202f\\u205f\\u3000";
  const ENDS = new RegExp(`^[${SPACE}]+|[${SPACE}]+$`, "g"),
    SPACES = new RegExp(`[${SPACE}]+`, "g"),
    GAPS = new RegExp(`[${SPACE}-]+`, "g"),
    SLASH = new RegExp(`[${SPACE}]*/[${SPACE}]*`, "g"),
    JOINTS = new RegExp(`(^|[^${SPACE}/])[${SPACE}_]+(?![${SPACE}/])`, "g");
  const cut = (text, most) => (text.length <= most ? text : [...text.slice(0, 2 * most)].slice(0, most).join(""));
  const size = (text) => [...text].length;
  const strip = (text) => text.replace(ENDS, "");

  function quoted(text) {
    const shown = strip(cut(text, 200)).replace(SPACES, " ");
    return `“${cut(shown, 60)}${size(shown) > 60 ? "…" : ""}”`;
  }

  // ---- the nearest word: get_close_matches of Python's difflib, for the first match alone

  /** How many letters two words have in common, by the longest common pieces (Ratcliff and Obershelp). */
  function matching(a, b) {
    const places = new Map();
    b.forEach((sign, j) => places.set(sign, [...(places.get(sign) || []), j]));
    let total = 0;
    const parts = [[0, a.length, 0, b.length]];
    while (parts.length) {
      const [fromA, toA, fromB, toB] = parts.pop();
      let bestA = fromA,
        bestB = fromB,
        best = 0,
        lengths = new Map();
      for (let i = fromA; i < toA; i += 1) {
        const next = new Map();
        for (const j of places.get(a[i]) || []) {
          if (j < fromB || j >= toB) continue;
          const length = (lengths.get(j - 1) || 0) + 1;
          next.set(j, length);
          if (length > best) [bestA, bestB, best] = [i - length + 1, j - length + 1, length];
        }
        lengths = next;
      }
      if (!best) continue;
      total += best;
      parts.push([fromA, bestA, fromB, bestB], [bestA + best, toA, bestB + best, toB]);
    }
    return total;
  }

  const remembered = new Map();

  /** The valid word most like `word`, or null; `likeness` from 0 to 1. As records.problems.nearest. */
  function nearest(word, words, likeness = 0.6) {
    const asked = [cut(word, 100), likeness, ...words].join("\n");
    if (!remembered.has(asked)) {
      if (remembered.size > 2000) remembered.clear();
      remembered.set(asked, closest([...cut(word, 100)], words, likeness));
    }
    return remembered.get(asked);
  }

  function closest(wanted, words, likeness) {
    let best = null,
      highest = 0;
    for (const each of words) {
      const letters = [...each],
        all = letters.length + wanted.length;
      const ratio = (shared) => (all ? (2 * shared) / all : 1);
      if (ratio(Math.min(letters.length, wanted.length)) < likeness) continue;
      const found = ratio(matching(letters, wanted));
      if (found >= likeness && (best === null || found > highest || (found === highest && each > best))) [best, highest] = [each, found];
    }
    return best;
  }

  // ---- values as YAML has them

  const NOTHING = /^(~|null|Null|NULL|)$/,
    TRUE = /^(true|True|TRUE)$/,
    FALSE = /^(false|False|FALSE)$/,
    WHOLE = /^[-+]?[0-9]{1,15}$/;
  const isEmpty = (node) => node.is === "scalar" && node.plain && NOTHING.test(node.text);
  const truth = (node) => (node.plain && TRUE.test(node.text) ? true : node.plain && FALSE.test(node.text) ? false : null);

  // ---- the walk

  const INVALID = Symbol("invalid");
  const compiled = new WeakMap();

  /** The shapes with their parts in the place of numbers, names in a Map, patterns ready; the source's. */
  function sourceShape(shapes) {
    if (!compiled.has(shapes)) {
      const made = [];
      for (const each of shapes)
        made.push({
          expected: "", called: "", words: [], longest: 0, fewest: 0, most: 0, required: [], oneOf: [],
          ...each,
          pattern: each.pattern && new RegExp(each.pattern),
          fields: new Map(Object.entries(each.fields || {}).map(([name, at]) => [name, made[at]])),
          item: made[each.item], scalar: made[each.scalar], table: made[each.table],
        });
      compiled.set(shapes, made[made.length - 1]);
    }
    return compiled.get(shapes);
  }

  /**
   * The fields of a whole file and what is wrong with them: {fields, problems}. A table becomes
   * {line, column, at: {name: value}, spots: {name: [line, column]}, leftOut: [names]}; a list an array with `spots`
   * and `lost`; `fields` is null where the file holds none. Problems: {line, column, severity, message, hint, field}, the
   * last a name in the table spoken of, where that is known.
   */
  function shape(node, wanted) {
    const problems = [];
    let unsaid = 0;

    function complain(at, message, hint = "", field) {
      if (problems.length < MOST_COMPLAINTS) problems.push({ line: at.line, column: at.column, severity: "error", message, hint, field });
      else unsaid += 1;
      return INVALID;
    }
    const near = (word, words) => (unsaid ? null : nearest(word, words));

    function value(it, of, subject) {
      if (of.kind === "either") return either(it, of, subject);
      if (of.kind === "fields") return it.is === "table" ? table(it, of, subject) : noFields(it, of, subject);
      if (of.kind === "list") return items(it, of, subject);
      if (it.is !== "scalar") return notText(it, of, subject);
      return { text, word, integer, flag, true: flag }[of.kind](it, of, subject);
    }

    function either(it, of, subject) {
      if (it.is === "scalar") return value(it, of.scalar, subject);
      if (it.is === "items") return notText(it, of, subject);
      const known = [...it.entries.keys()].some((name) => of.table.fields.has(name));
      return it.entries.size && !known ? notText(it, of, subject) : table(it, of.table, subject);
    }

    function text(it, of, subject) {
      const said = it.text;
      if (of.longest && said.length > of.longest && size(said) > of.longest)
        return complain(it, `${subject} is ${size(said)} characters long; at most ${of.longest} are allowed.`, "Shorten it.");
      if (truth(it) !== null)
        return complain(it, `${subject} must be ${of.expected}; ${said} without quotation marks means yes or no.`, `If you mean the word, write '${said}'.`);
      if (of.pattern && !of.pattern.test(said)) return complain(it, `${subject} must be ${of.expected}, not ${quoted(said)}.`, rewritten(said, of));
      return said;
    }

    function word(it, of, subject) {
      if (of.words.includes(it.text)) return it.text;
      const meant = near(strip(cut(it.text, 100)).toLowerCase().replace(SPACES, "-"), of.words);
      let hint = `It must be ${of.expected}.`;
      if (meant) hint = `Did you mean ${meant}?${of.words.length <= 12 ? ` ${hint}` : ""}`;
      return complain(it, `${subject} cannot be ${quoted(it.text)}.`, hint);
    }

    function integer(it, of, subject) {
      if (!it.plain || !WHOLE.test(it.text)) return complain(it, `${subject} must be ${of.expected}, not ${quoted(it.text)}.`);
      const number = Number(it.text);
      if (number < of.low || number > of.high) return complain(it, `${subject} cannot be ${number}.`, `It must lie between ${of.low} and ${of.high}.`);
      return number;
    }

    function flag(it, of, subject) {
      const said = truth(it);
      if (said || (said === false && of.kind === "flag")) return said;
      const short = strip(cut(it.text, 10)).toLowerCase();
      const hint = /^(no|off|n|false)$/.test(short) ? "Write false." : /^(yes|on|y|true)$/.test(short) ? "Write true." : "";
      return complain(it, `${subject} must be ${of.expected}, not ${quoted(it.text)}.`, hint);
    }

    function items(it, of, subject) {
      if (it.is !== "items") return complain(it, `${subject} must be ${of.expected || "a list"}.`, of.expected ? "" : asList(it));
      const count = it.items.length;
      if (count < of.fewest || (of.most && count > of.most))
        return complain(it, `${subject} must be ${of.expected || `a list of at most ${of.most} entries`}; here are ${count} entries.`);
      const called = of.item.called.split(" ").slice(1).join(" ");
      const entry = called ? `This ${called}` : `An entry of ${subject}`;
      const shaped = Object.assign([], { spots: [], lost: false });
      for (const each of it.items) {
        const made = isEmpty(each)
          ? complain(each, `An entry of ${subject} is empty.`, "Fill it in, or take the hyphen out.")
          : value(each, of.item, entry);
        if (made === INVALID) shaped.lost = true;
        else {
          shaped.push(made);
          shaped.spots.push([each.line, each.column]);
        }
      }
      return shaped.length < of.fewest ? INVALID : shaped;
    }

    function table(it, of, subject) {
      const fields = { line: it.line, column: it.column, at: {}, spots: {}, leftOut: [] };
      for (const [key, each] of it.entries) {
        const known = of.fields.get(key);
        if (!known) fields.leftOut.push(unknownField(it, key, of, subject));
        else if (isEmpty(each)) {
          if (of.required.includes(key)) complain(each, `${key} has no value.`, "Write it after the colon.");
        } else {
          const made = value(each, known, key);
          if (made !== INVALID) {
            fields.at[key] = made;
            fields.spots[key] = [each.line, each.column];
          }
          if (made === INVALID || made.lost) fields.leftOut.push(key);
        }
      }
      for (const key of of.required)
        if (!it.entries.has(key) && !fields.leftOut.includes(key)) {
          const called = of.called.slice(0, 1).toUpperCase() + of.called.slice(1);
          complain(it, `${called || subject} must have the field ${key}.`, `Add a line ${key}: …`, key);
        }
      if (of.oneOf.length) {
        const given = [...it.entries].filter(([, each]) => !isEmpty(each)).map(([key]) => key);
        const fits = ([must, mustNot]) => must.every((key) => given.includes(key)) && !mustNot.some((key) => given.includes(key));
        if (!of.oneOf.some(fits)) return complain(it, `${subject} is not complete, or says two things at once.`, `It must be ${of.expected}.`);
      }
      return fields;
    }

    /** Complains of a field nobody knows; gives the field that was probably meant. */
    function unknownField(it, key, of, subject) {
      const names = [...of.fields.keys()],
        meant = near(strip(cut(key, 100)).toLowerCase().replace(GAPS, "_"), names);
      let hint = meant ? `Did you mean ${meant}?` : `The fields here are: ${names.join(", ")}.`;
      if (key !== strip(key)) hint = "An odd kind of blank stands beside the name: type ordinary spaces.";
      else if (!meant && isEmpty(it.entries.get(key))) hint = "If it belongs to the text before the comma, put that text in quotation marks.";
      const [line, column] = it.keys.get(key);
      complain({ line, column }, `${quoted(key)} is not a field of ${of.called || subject}.`, hint, key);
      return meant || key;
    }

    function notText(it, of, subject) {
      if (it.is === "items")
        return complain(it, `${subject} must be ${of.expected}, but a list stands here.`, "Write it after the colon; text that starts with a bracket goes in quotation marks.");
      return complain(it, `${subject} must be ${of.expected}${of.table ? "" : ", but a group of fields stands here"}.`, oneLine(it, of));
    }

    function noFields(it, of, subject) {
      const found = it.is === "items" ? "a list" : quoted(it.text),
        names = [...of.fields.keys()].slice(0, 6).join(", ");
      return complain(it, `${subject} must hold fields${names && ` (${names})`}, but ${found} stands here.`, "Write them below it, each as name: value, indented by two spaces.");
    }

    if (node.is !== "table") {
      complain(node, "This file must hold fields, each as name: value.", `Start with a line such as ${wanted.fields.keys().next().value}: …`);
      return { fields: null, problems };
    }
    const made = table(node, wanted, wanted.called);
    if (unsaid)
      problems.push({ line: 1, column: 1, severity: "error", message: `There is more wrong in this file: ${unsaid} more complaints.`, hint: "Put the first ones right, then check again." });
    return { fields: made, problems };
  }

  // ---- hints

  /** How to write as a list what stands there as text. */
  function asList(it) {
    const text = it.is === "scalar" ? it.text : "";
    if (text && "–—‐‑‒−•·*".includes(text[0])) return `Start each entry with a plain hyphen and a space; ${text[0]} is another sign.`;
    if (text.startsWith("-")) return "Put a space after each hyphen.";
    if (text && size(text) <= 60 && !/[[\]{}:#]/.test(text)) return `Write [${text}], or each entry on a line of its own that starts with a hyphen: - …`;
    return "Write each entry on a line of its own that starts with a hyphen: - …";
  }

  /** What to write instead of a group that holds a single name and value. */
  function oneLine(it, of) {
    const [pair, ...more] = it.entries;
    if (!pair || more.length || pair[1].is !== "scalar") return "Text with a colon or braces in it goes in quotation marks.";
    const [key, text] = [pair[0], pair[1].text].map((each) => cut(each, 60).replace(ENDS, "").replace(SPACES, " ")),
      pattern = (of.scalar || of).pattern;
    if (pattern && pattern.test(`${key}/${text}`) && !pattern.test(`${key}: ${text}`)) return `Write ${key}/${text}, with a slash.`;
    return `If it is text with a colon in it, put it in quotation marks: "${key}: ${text}".`;
  }

  /** The same text put into the wanted form, where that is easily done. */
  function rewritten(text, of) {
    if (of.longest && size(text) <= 200) {
      const candidate = strip(text).toLowerCase().replace(JOINTS, "$1-").replace(SLASH, "/");
      if (of.pattern.test(candidate)) return `Write ${candidate}.`;
    }
    const odd = [...cut(text, 200)].find((each) => each.codePointAt(0) > 127 && /\p{L}/u.test(each));
    return odd && of.expected.includes("letters") ? `“${odd}” is not one of the letters a–z; it may only look like one.` : "";
  }

  InPeriod.recordShape = { shape, sourceShape, nearest, cut, SPACE };
  if (typeof module !== "undefined") module.exports = InPeriod.recordShape;
})(globalThis);
