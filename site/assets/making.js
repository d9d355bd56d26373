// The making sheet: what the Python side reckons from the same lines, in the same words. In step with
// generator/inperiod/making, room by room; one file of vectors is run against both. Lengths are exact fractions of
// an inch in whole numbers of any size, so that both round alike.
(function (root) {
  "use strict";

  // ---- exact fractions: { n, d }, d above 0, in lowest terms; plain whole numbers are taken as such

  function fraction(n, d) {
    if (d < 0n) [n, d] = [-n, -d];
    let a = n < 0n ? -n : n, b = d;
    while (b) [a, b] = [b, a % b];
    return a > 1n ? { n: n / a, d: d / a } : { n, d };
  }
  const F = (value) => (typeof value === "object" ? value : { n: BigInt(value), d: 1n });
  const per = (above, below) => fraction(BigInt(above), BigInt(below));
  const two = (work) => (a, b) => work(F(a), F(b));
  const add = two((a, b) => fraction(a.n * b.d + b.n * a.d, a.d * b.d));
  const sub = two((a, b) => fraction(a.n * b.d - b.n * a.d, a.d * b.d));
  const mul = two((a, b) => fraction(a.n * b.n, a.d * b.d));
  const div = two((a, b) => fraction(a.n * b.d, a.d * b.n));
  const compare = two((a, b) => { const left = a.n * b.d, right = b.n * a.d; return left < right ? -1 : left > right ? 1 : 0; });
  const less = (a, b) => compare(a, b) < 0;
  const same = (a, b) => compare(a, b) === 0;
  const above = (a) => compare(a, 0) > 0;
  const least = (a, b) => (less(b, a) ? F(b) : F(a));
  const most = (a, b) => (less(a, b) ? F(b) : F(a));
  const sum = (list) => list.reduce(add, NONE);
  const down = ({ n, d }) => (n >= 0n ? n / d : -((d - 1n - n) / d));
  const up = ({ n, d }) => -down({ n: -n, d });
  const nearest = (a) => down(add(a, per(1, 2)));
  const real = (a) => { const { n, d } = F(a); return Number(n) / Number(d); };
  const NONE = F(0), HALF = per(1, 2);

  // ---- measures.py

  const CM = per(50, 127), METRE = mul(CM, 100), YARD = F(36);
  const LONGEST = 36000, LARGEST = 1e6, SMALLEST = 1e-4;
  const UNITS = {};
  for (const [words, size] of [
    ["in ins inch inches", F(1)], ["ft foot feet", F(12)], ["yd yds yard yards", YARD],
    ["mm millimetre millimetres millimeter millimeters", div(CM, 10)],
    ["cm cms centimetre centimetres centimeter centimeters", CM], ["m metre metres meter meters", METRE],
  ]) for (const word of words.split(" ")) UNITS[word] = size;
  const SIGNS = {
    "½": " 1/2", "¼": " 1/4", "¾": " 3/4", "⅓": " 1/3", "⅔": " 2/3", "⅛": " 1/8", "⅜": " 3/8", "⅝": " 5/8", "⅞": " 7/8",
    "⁄": "/", "″": " in ", "”": " in ", '"': " in ", "′": " ft ", "’": " ft ", "'": " ft ",
  };
  const D = "[0-9]{1,9}";
  const QUANTITY = `${D}[ -]${D}/${D}|${D}/${D}|${D}[.][0-9]{1,20}|${D},[0-9]{1,2}|${D}`;
  const NUMBER = new RegExp(`^(?:${QUANTITY})$`), PART = new RegExp(`^(${QUANTITY}) ?([a-z]+)[.,]?(?: |$)`);
  const EXPECTED = "a length with its unit, such as 34 1/2 in, 1/4 in, 1 yd 4 in, 2.5 cm or 1.2 m";
  const A_NUMBER = "a number, such as 2, 1.5 or 1 1/2";

  class Unreadable extends Error {
    constructor(message, expected) {
      super(message);
      this.expected = expected;
    }
  }

  const tidied = (text) => text.replace(/[ \t\r\n\u00a0\u2007\u2009\u200a\u202f]+/g, " ").replace(/^ +| +$/g, "");
  const plain = (text) => tidied(Array.from(text, (sign) => SIGNS[sign] || sign).join("").toLowerCase());
  const cutTo = (text, length) => Array.from(text).slice(0, length).join("");
  const isFields = (value) => value !== null && typeof value === "object" && !Array.isArray(value);

  function numberText(value) {
    return !(Math.abs(value) < LARGEST) || (value !== 0 && Math.abs(value) < SMALLEST) ? null : String(value);
  }

  function quoted(value) {
    if (value === null || value === undefined) return "Nothing";
    if (typeof value === "boolean") return `“${value}”`;
    if (typeof value === "number") return numberText(value) === null ? "This number" : `“${numberText(value)}”`;
    if (typeof value === "string") {
      const text = tidied(value);
      return `“${Array.from(text).length <= 60 ? text : cutTo(text, 59) + "…"}”`;
    }
    return Array.isArray(value) ? "A list" : "A set of fields";
  }

  function quantity(text) {
    if (!text.includes("/")) {
      const [whole, part = ""] = text.replace(",", ".").split(".");
      return per(whole + part, 10n ** BigInt(part.length));
    }
    const words = text.replace(/-/g, " ").split(" "), [over, under] = words.pop().split("/");
    return BigInt(under) ? add(per(words[0] || 0, 1), per(over, under)) : null;
  }

  function readNumber(value) {
    let text = typeof value === "number" ? numberText(value) : value;
    if (typeof text === "string") {
      text = plain(text);
      const found = NUMBER.test(text) ? quantity(text) : null;
      if (found) return found;
    }
    const beyond = text === null && value !== null;
    throw new Unreadable(beyond ? "This number is beyond all garments." : `${quoted(value)} is not a number.`, A_NUMBER);
  }

  /** A length as { inches, metric }; throws Unreadable with what was expected. */
  function readMeasure(value) {
    if (typeof value !== "string") {
      const text = typeof value === "number" && numberText(value);
      if (text) throw new Unreadable(`“${text}” has no unit.`, `${text} in or ${text} cm`);
      throw new Unreadable(`${quoted(value)} is not a measure.`, EXPECTED);
    }
    let rest = plain(value), total = NONE, first = "", part;
    if (NUMBER.test(rest)) throw new Unreadable(`${quoted(value)} has no unit.`, `${rest} in or ${rest} cm`);
    while (rest && (part = PART.exec(rest))) {
      const amount = quantity(part[1]), unit = part[2];
      if (!Object.hasOwn(UNITS, unit) || !amount) break;
      total = add(total, mul(amount, UNITS[unit]));
      first = first || unit;
      rest = rest.slice(part[0].length);
    }
    if (rest || !first) throw new Unreadable(`${quoted(value)} is not a measure.`, EXPECTED);
    if (less(LONGEST, total)) throw new Unreadable(`${quoted(value)} is longer than 1000 yards.`, EXPECTED);
    return { inches: total, metric: /^[cm]/.test(first) };
  }
  const inchesOf = (text) => readMeasure(text).inches;

  function mixed(value) {
    const whole = down(value), { n, d } = sub(value, per(whole, 1));
    if (!n) return String(whole);
    return whole ? `${whole} ${n}/${d}` : `${n}/${d}`;
  }

  function decimal(value, places = 3) {
    const scale = 10n ** BigInt(places), count = nearest(mul(value, per(scale, 1)));
    return `${count / scale}.${String(count % scale).padStart(places, "0")}`.replace(/0+$/, "").replace(/\.$/, "");
  }

  function roundInches(value, upwards, fine) {
    const parts = fine || less(value, 6) ? 16 : 8, count = mul(value, parts);
    return per(upwards ? up(count) : nearest(count), parts);
  }
  const roundCm = (value, upwards) => per((upwards ? up : nearest)(mul(div(value, CM), 10)), 10);

  function both(value, metric, upwards, fine) {
    const inches = `${mixed(roundInches(F(value), upwards, fine))} in`, cm = `${decimal(roundCm(value, upwards), 1)} cm`;
    return metric ? `${cm} (${inches})` : `${inches} (${cm})`;
  }
  const shown = (value, metric) => both(value, metric, false, true);
  const toCut = (value, metric) => both(value, metric, true, false);

  function said(value, metric) {
    const rounded = metric ? roundCm(value, false) : roundInches(F(value), false, true);
    const text = metric ? `${decimal(rounded, 1)} cm` : `${mixed(rounded)} in`;
    return same(metric ? mul(rounded, CM) : rounded, value) ? text : `about ${text}`;
  }

  const upTo = (value, step) => mul(per(up(div(value, step)), 1), step);

  function toBuy(value, metric, step) {
    const eighth = div(YARD, 8), tenth = div(METRE, 10), bought = upTo(value, step || (metric ? tenth : eighth));
    const yards = `${mixed(div(metric ? upTo(value, eighth) : bought, YARD))} yd`;
    const metres = `${decimal(div(metric ? bought : upTo(value, tenth), METRE))} m`;
    return [bought, metric ? `${metres} (${yards})` : `${yards} (${metres})`];
  }

  // ---- asking.py

  const MOST = 400, MOST_EDGES = 60, LONGEST_TEXT = 300, STOP = {};
  const listed = (value) => (Array.isArray(value) ? value : [value]);
  const nothing = (value) => value === "0" || value === 0;
  const plural = (count, one, many) => (count === 1 ? one : many);
  const capital = (text) => { const signs = Array.from(text); return (signs[0] || "").toUpperCase() + signs.slice(1).join(""); };

  class Asked {
    constructor(index, given, metric = null) {
      Object.assign(this, { index, given, problems: [], known: metric, used: [], stop: false, looked: false });
    }
    get metric() { return this.known === true; }
    get(name) { return Object.hasOwn(this.given, name) && this.given[name] !== undefined ? this.given[name] : null; }
    has(name) {
      if (!this.used.includes(name)) this.used.push(name);
      return this.get(name) !== null;
    }
    wrong(field, message, hint) {
      this.problems.push({ index: this.index, field, message, hint });
      this.stop = true;
    }
    look() {
      if (this.looked) return;
      this.looked = true;
      for (const name of Object.keys(this.given)) {
        if (["kind", "what", "at", "note", "buy", ...this.used].includes(name)) continue;
        const hint = `One of: ${this.used.join(", ")}.`;
        this.problems.push({ index: this.index, field: name, message: `${quoted(name)} is not a field here.`, hint });
      }
    }
    settle() {
      this.look();
      if (this.stop) throw STOP;
    }
    take(inner, place) {
      inner.look();
      for (const each of inner.problems) this.problems.push({ ...each, field: place, message: `${place}: ${each.message}` });
      this.stop = this.stop || inner.stop;
    }
    measure(name, normal, reach = {}) {
      if (this.has(name)) return this.length(name, this.get(name), reach);
      if (normal) return inchesOf(normal[this.metric ? 1 : 0]);
      this.wrong(name, `${name} is missing.`, `Expected ${EXPECTED}.`);
      return F(1);
    }
    measureOr(name, other, reach) { return this.has(name) ? this.measure(name, null, reach) : other; }
    length(name, value, reach) {
      let read;
      try {
        read = nothing(value) ? { inches: NONE, metric: this.metric } : readMeasure(value);
      } catch (slip) {
        if (!(slip instanceof Unreadable)) throw slip;
        this.wrong(name, `${name}: ${slip.message}`, `Expected ${slip.expected}.`);
        return F(1);
      }
      if (reach.least ? less(read.inches, inchesOf(reach.least)) : !above(read.inches)) {
        this.wrong(name, `${name}: ${quoted(value)} is too little.`, `Expected ${reach.least || "more than nothing"}.`);
        return F(1);
      }
      if (reach.most && less(inchesOf(reach.most), read.inches)) {
        this.wrong(name, `${name}: ${quoted(value)} is too much.`, `Expected at most ${reach.most}.`);
        return F(1);
      }
      if (this.known === null && !nothing(value)) this.known = read.metric;
      return read.inches;
    }
    edges(name) {
      const value = this.has(name) ? this.get(name) : null;
      let entries = isFields(value)
        ? Object.entries(value).flatMap(([key, at]) => listed(at).map((each) => [key, each]))
        : listed(value).map((each) => ["", each]);
      if (value === null || !entries.length) {
        this.wrong(name, `${name} is missing.`, `Expected ${EXPECTED}; or several, in a list or each with its name.`);
        entries = [];
      }
      if (entries.length > MOST_EDGES) {
        this.wrong(name, `${name} has more than ${MOST_EDGES} lengths.`, "Expected fewer; make another line.");
        entries = [];
      }
      return entries.map(([called, each]) => ({ name: called, inches: this.length(name, each, {}) }));
    }
    number(name, normal, low, high) {
      if (!this.has(name)) {
        if (normal) return readNumber(normal);
        this.wrong(name, `${name} is missing.`, `Expected ${A_NUMBER}.`);
        return F(1);
      }
      const value = this.get(name);
      let found;
      try {
        found = readNumber(value);
      } catch (slip) {
        if (!(slip instanceof Unreadable)) throw slip;
        this.wrong(name, `${name}: ${slip.message}`, `Expected ${slip.expected}.`);
        return F(1);
      }
      if ((low && less(found, readNumber(low))) || (high && less(readNumber(high), found))) {
        this.wrong(name, `${name}: ${quoted(value)} is out of reach.`, `Expected a number from ${low} to ${high}.`);
        return F(1);
      }
      return found;
    }
    count(name, normal, low = 1, high = MOST) {
      const found = this.number(name, normal === undefined ? null : String(normal));
      if (!this.has(name)) return Number(down(found));
      if (found.d === 1n && !less(found, low) && !less(high, found)) return Number(found.n);
      if (!this.problems.some((problem) => problem.field === name)) {
        const message = `${name}: ${quoted(this.get(name))} is not a number of pieces.`;
        this.wrong(name, message, `Expected a whole number from ${low} to ${high}.`);
      }
      return low;
    }
    countOr(name, other) { return this.has(name) ? this.count(name) : other; }
    share(name) {
      if (!this.has(name)) return NONE;
      const value = this.get(name), text = typeof value === "string" ? value.replace(/^ +| +$/g, "") : "";
      let found = F(1);
      try {
        found = text.endsWith("%") ? div(readNumber(text.slice(0, -1)), 100) : readNumber(value);
      } catch (slip) {
        if (!(slip instanceof Unreadable)) throw slip;
      }
      if (less(found, HALF)) return found;
      this.wrong(name, `${name}: ${quoted(value)} is not a share below a half.`, "Expected 5 % or 0.05.");
      return NONE;
    }
    choice(name, words, normal) {
      if (!this.has(name)) return normal;
      const value = this.get(name);
      if (words.includes(value)) return value;
      this.wrong(name, `${name}: ${quoted(value)} is not known.`, `Expected one of: ${words.join(", ")}.`);
      return words[0];
    }
    flag(name) {
      const value = this.has(name) ? this.get(name) : false;
      if (typeof value !== "boolean") {
        this.wrong(name, `${name}: ${quoted(value)} is neither true nor false.`, "Expected true or false.");
      }
      return value === true;
    }
    text(name, normal = "") {
      if (!this.has(name)) return normal;
      const value = this.get(name);
      if (typeof value === "number") return numberText(value) || normal;
      return (typeof value === "string" && cutTo(tidied(value), LONGEST_TEXT)) || normal;
    }
    draft(title) {
      const called = this.text("what", title), place = this.text("at"), note = this.text("note");
      return {
        index: this.index, kind: this.given.kind, title: place ? `${called}, ${place}` : called, metric: this.metric,
        buy: this.text("buy", called), named: this.has("buy"), cut: "", formula: "", numbers: [], cautions: [],
        notes: note ? [note] : [], needs: [], figure: null,
      };
    }
    summed(edges) {
      const parts = [];
      for (let at = 0, count; at < edges.length; at += count) {
        const { name, inches } = edges[at];
        count = 1;
        while (at + count < edges.length && edges[at + count].name === name && same(edges[at + count].inches, inches)) count += 1;
        const words = `${name} ${count > 1 ? count + " × " : ""}${said(inches, this.metric)}`;
        parts.push(words.replace(/^ +| +$/g, ""));
      }
      return edges.length === 1 ? parts[0] : `${parts.join(" + ")} = ${said(total(edges), this.metric)}`;
    }
  }

  const NO = ["0 in", "0 cm"], FROM_NONE = { least: "0 in" }, TURNING = ["1/2 in", "1 cm"];
  const total = (edges) => sum(edges.map((edge) => edge.inches));
  const figureOf = (draft, label, value, text) => draft.numbers.push({ label, value: real(value), text });
  const shows = (draft, label, value) => figureOf(draft, label, value, shown(value, draft.metric));
  const cuts = (draft, label, value) => figureOf(draft, label, value, toCut(value, draft.metric));
  const counts = (draft, label, count) => figureOf(draft, label, count, String(count));

  function need(draft, amount, { onlyNamed = false, counted = false, ...more } = {}) {
    if (draft.named || !onlyNamed) {
      const { buy, named, metric, index } = draft;
      draft.needs.push({ what: buy, named, amount: F(amount), counted, metric, index, ...more });
    }
  }

  // ---- trims.py

  function perEdge(draft, edges, lengths) {
    if (edges.length > 1) edges.forEach((edge, i) => cuts(draft, edge.name || `Length ${i + 1}`, lengths[i]));
  }

  function start(asked, edges) {
    const summed = asked.summed(edges);
    return edges.length === 1 ? summed : `${summed}; ${said(total(edges), asked.metric)}`;
  }

  function frill(asked) {
    const edges = asked.edges("edge"), fullness = asked.number("fullness", "1.5", "1", "6");
    const turning = asked.measure("turning", TURNING, FROM_NONE), depth = asked.measureOr("depth", NONE);
    const hem = asked.measure("hem", NO, FROM_NONE), width = asked.measureOr("cloth_width", null);
    const open = asked.flag("open"), metric = asked.metric, twice = mul(turning, 2);
    if (width && !above(depth)) asked.wrong("depth", "depth is missing: how deep the finished frill is.", "Expected depth: 2 in.");
    asked.settle();
    if (width && !less(twice, width)) asked.wrong("cloth_width", "cloth_width is used up by the turnings.", "Expected a wider cloth.");
    asked.settle();
    const strips = edges.map((e) => (width ? Math.max(1, Number(up(div(mul(e.inches, fullness), sub(width, twice))))) : 1));
    const lengths = edges.map((e, i) => add(mul(e.inches, fullness), mul(twice, strips[i])));
    const edge = total(edges), count = strips.reduce((a, b) => a + b, 0), all = sum(lengths);
    const draft = asked.draft("Frill"), lost = said(twice, metric);
    const ends = open ? ["ends", "joins and ends"] : ["join", "joins"];
    const allowed = count === 1 ? `${lost} for the ${ends[0]}` : `${count} × ${lost} for the ${ends[1]}`;
    draft.formula = `${start(asked, edges)} × ${decimal(fullness)} = ${said(mul(edge, fullness), metric)}, and ${allowed}: ${said(all, metric)}.`;
    perEdge(draft, edges, lengths);
    cuts(draft, "Together", all);
    const deep = add(add(depth, hem), turning);
    if (!width) {
      draft.cut = `Cut or buy ${toCut(all, metric)} of edging`;
      need(draft, all);
    } else {
      draft.cut = `Cut ${count} ${plural(count, "strip", "strips")} ${toCut(deep, metric)} deep, across cloth ${shown(width, metric)} wide`;
      cuts(draft, "Cloth taken along the selvedge", mul(deep, count));
      need(draft, mul(deep, count), { onlyNamed: true });
    }
    if (above(depth)) {
      draft.formula += ` Depth ${said(depth, metric)} + hem ${said(hem, metric)} + turning ${said(turning, metric)} = ${said(deep, metric)}.`;
      cuts(draft, "Depth to cut", deep);
    }
    draft.notes.push("1.5 times the edge is light; 2 is fuller, 2.5 to 3 fullest.");
    return draft;
  }

  function trimming(asked) {
    const of = asked.choice("of", ["insertion", "beading", "ribbon", "braid", "tape", "piping", "lace"], "insertion");
    const edges = asked.edges("along"), corners = asked.count("corners", 0, 0);
    const width = corners ? asked.measure("width") : asked.measureOr("width", NONE);
    const turning = asked.measure("turning", TURNING, FROM_NONE), takeUp = asked.share("take_up");
    const ties = asked.measure("ties", NO, FROM_NONE), metric = asked.metric;
    asked.settle();
    const grown = (length) => mul(length, add(1, takeUp)), twice = mul(turning, 2);
    const lengths = edges.map((e) => add(grown(e.inches), twice));
    const all = add(add(sum(lengths), mul(mul(width, 2), corners)), ties);
    const draft = asked.draft(capital(of)), parts = [asked.summed(edges)];
    if (above(takeUp)) parts.push(`${decimal(mul(takeUp, 100))} % taken up: ${said(grown(total(edges)), metric)}`);
    parts.push(`and ${edges.length > 1 ? edges.length + " × " : ""}${said(twice, metric)} for the ends or the overlap`);
    if (corners) parts.push(`and ${corners} × ${said(mul(width, 2), metric)} for the ${plural(corners, "mitre", "mitres")}, twice the width each`);
    if (above(ties)) parts.push(`and ${said(ties, metric)} for the ties`);
    draft.formula = `${parts.join(", ")}: ${said(all, metric)}.`;
    draft.cut = `Cut or buy ${toCut(all, metric)} of ${of}`;
    perEdge(draft, edges, lengths);
    cuts(draft, "Together", all);
    if (of === "insertion" && above(width)) {
      draft.notes.push(`It sets ${shown(width, metric)} into the cloth: take as much away, less the turnings beneath it.`);
    }
    need(draft, all);
    return draft;
  }

  function stitching(asked) {
    const stitch = asked.text("stitch", "hand work"), edges = asked.edges("along"), factor = asked.number("factor", null, "1", "40");
    const strands = asked.count("strands", 1, 1, 12), skein = asked.measureOr("skein", null), metric = asked.metric;
    asked.settle();
    const all = mul(mul(total(edges), factor), strands), draft = asked.draft(capital(stitch));
    const many = strands > 1 ? ` × ${strands} strands` : "";
    draft.formula = `${start(asked, edges)} × ${decimal(factor)}${many} = ${said(all, metric)} of thread.`;
    const large = `${decimal(div(all, METRE), 1)} m (${decimal(div(all, YARD), 1)} yd)`;
    draft.cut = `About ${large} of thread`;
    figureOf(draft, "Thread", all, large);
    draft.notes.push("The factor is the worker’s own: work 10 in, unpick it, and measure the thread.");
    if (skein) {
      const skeins = up(div(all, skein));
      draft.formula += ` ÷ ${decimal(div(skein, METRE), 1)} m in a skein: ${skeins}.`;
      need(draft, per(skeins, 1), { counted: true });
    } else need(draft, all);
    return draft;
  }

  // ---- figures.py

  class Plan {
    constructor(pixel) { Object.assign(this, { pixel, shapes: [] }); }
    put(form, look, at, text = "") { this.shapes.push({ form, at: at.map(real), look, text }); }
    box(look, ...at) { this.put("box", look, at); }
    line(look, ...at) { this.put("line", look, at); }
    word(look, x, y, text) { this.put("word", look, [x, y], text); }
    px(count) { return mul(this.pixel, count); }
    scaleBar(y, room, metric) {
      const unit = metric ? CM : F(1), count = [100, 50, 20, 10, 5, 2, 1].find((bar) => !less(room, mul(unit, bar)));
      if (!count) return;
      const long = mul(unit, count), tick = sub(y, this.px(4));
      this.line("scale", 0, y, long, y);
      this.line("scale", 0, tick, 0, y);
      this.line("scale", long, tick, long, y);
      const inches = metric ? decimal(mul(CM, count), 1) : count, cm = metric ? count : decimal(div(count, CM), 1);
      this.word("label start", add(long, this.px(6)), y, metric ? `${cm} cm (${inches} in)` : `${inches} in (${cm} cm)`);
    }
    figure(name, title, width, height) {
      return { name, title, width: real(width), height: real(height), scale: real(div(1, this.pixel)), shapes: this.shapes };
    }
  }

  // ---- tucks.py

  const span = (number, width, spacing) => add(mul(spacing, number - 1), width);
  const atLeastNone = (count) => Math.max(0, Number(count));

  function tuckSpacing(asked, style, width) {
    const folds = asked.has("fold_to_fold"), gap = folds ? asked.has("gap") : false;
    if (folds && gap) asked.wrong("gap", "gap and fold_to_fold are both given.", "Give one; the other follows from it.");
    if (folds) return asked.measure("fold_to_fold");
    if (asked.has("gap")) return add(width, asked.measure("gap", null, FROM_NONE));
    if (style !== "blind" && style !== "growth") {
      const hint = "Give gap: (plain cloth that shows between two tucks) or fold_to_fold: (one fold to the next).";
      asked.wrong("gap", "The spacing is missing.", hint);
    }
    return width;
  }

  function tucks(asked) {
    const style = asked.choice("style", ["pin", "wide", "blind", "growth"], "pin"), width = asked.measure("width");
    const spacing = tuckSpacing(asked, style, width), number = asked.countOr("number", null);
    let finished = asked.measureOr("finished", null);
    const flat = asked.measureOr("flat", null), margin = asked.measureOr("margin", null, FROM_NONE);
    const turning = asked.measure("turning", NO, FROM_NONE), panels = asked.count("panels", 1);
    if (finished && flat) asked.wrong("flat", "finished and flat are both given.", "Give one; the other follows from it.");
    if (number === null && !finished && !flat) {
      asked.wrong("number", "number is missing.", "Give number:, or finished: or flat: to see how many fit.");
    }
    asked.settle();
    const plainAt = margin || NONE, sides = mul(plainAt, 2), double = mul(width, 2), bare = flat && sub(flat, mul(turning, 2));
    let count = number;
    if (count === null) {
      count = flat
        ? atLeastNone(down(div(add(sub(sub(bare, sides), width), spacing), add(spacing, double))))
        : atLeastNone(down(div(sub(sub(finished, sides), width), spacing)) + 1n);
    }
    const covered = span(count, width, spacing);
    if (!finished) finished = flat ? sub(bare, mul(double, count)) : add(covered, sides);
    const room = sub(sub(finished, covered), sides);
    if (!count || less(room, 0) || count > MOST) tucksDoNotFit(asked, count, finished, width, spacing, sides);
    asked.settle();
    const first = margin || div(sub(finished, covered), 2), takenUp = mul(double, count);
    const lines = Array.from({ length: count }, (_, i) => {
      const at = add(first, mul(add(spacing, double), i));
      return [at, add(at, width), add(at, double)];
    });
    const made = { count, width, spacing, finished, first, takenUp, lines, flat: add(finished, takenUp), gap: sub(spacing, width) };
    return tucksDraft(asked, made, style, turning, panels, number === null);
  }

  function tucksDoNotFit(asked, count, finished, width, spacing, sides) {
    if (count > MOST) asked.wrong("number", `${count} tucks are too many for one line.`, `Expected at most ${MOST}.`);
    else if (!above(finished)) asked.wrong("flat", `${count} tucks take up all of the cloth.`, "Give fewer tucks, or a wider flat.");
    else {
      const one = Math.max(1, count), needs = said(add(span(one, width, spacing), sides), asked.metric);
      const message = `${one} ${plural(one, "tuck needs", "tucks need")} ${needs}; the finished panel is ${said(finished, asked.metric)}.`;
      asked.wrong("number", message, "Give fewer or narrower tucks, a smaller margin, or a wider panel.");
    }
  }

  function tucksDraft(asked, made, style, turning, panels, counted) {
    const { metric } = asked, { count, gap, takenUp } = made, flat = add(made.flat, mul(turning, 2)), growth = style === "growth";
    const draft = asked.draft(`${capital(style)} tucks`), say = (value) => said(value, metric);
    const times = panels > 1 ? `${panels} panels, each ` : "", word = plural(count, "tuck", "tucks");
    draft.cut = `Cut ${times}${toCut(flat, metric)} ${growth ? "long" : "wide"} before tucking, for ${shown(made.finished, metric)} finished`;
    const sentences = counted ? [`${count} ${word} fit.`] : [];
    sentences.push(
      `${count} ${word} × 2 × ${say(made.width)} = ${say(takenUp)} taken up; ${say(made.finished)} finished + ${say(takenUp)} = ` +
      `${say(made.flat)}${seams(turning, made.flat, metric)}`,
    );
    if (count > 1) {
      const stand = `They stand ${say(made.spacing)} fold to fold`;
      if (above(gap)) sentences.push(`${stand}, with a gap of ${say(gap)} between a fold and the next stitching.`);
      else if (less(gap, 0)) sentences.push(`${stand} and lap by ${say(sub(0, gap))}.`);
      else sentences.push(`${stand} and touch: each fold lies on the next stitching.`);
    }
    draft.formula = sentences.join(" ");
    counts(draft, "Tucks", count);
    shows(draft, "Taken up", takenUp);
    cuts(draft, "Flat", flat);
    shows(draft, "Finished", made.finished);
    shows(draft, "Fold to fold", made.spacing);
    if (less(gap, 0)) draft.cautions.push("Each tuck laps over the stitching of the next: it is thick, and must be stitched in order.");
    else shows(draft, "Gap", gap);
    made.lines.forEach((line, i) => {
      const [a, fold, b] = line.map((each) => add(each, turning));
      figureOf(draft, `Tuck ${i + 1}`, fold, `fold at ${shown(fold, metric)}; stitch at ${shown(a, metric)} and ${shown(b, metric)}`);
    });
    if (growth) draft.notes.push(`Let out, the tucks give back ${shown(takenUp, metric)}; stitch them so that they come out.`);
    if (!above(turning)) draft.notes.push("Seam allowances are not counted: give turning for them.");
    if (panels > 1) cuts(draft, "All panels", mul(flat, panels));
    draft.figure = tucksFigure(made, turning, flat, metric);
    need(draft, mul(flat, panels), { onlyNamed: true });
    return draft;
  }

  function tucksFigure(made, turning, flat, metric) {
    const plan = new Plan(div(flat, 640)), px = (count) => plan.px(count), high = px(84), top = px(16), foot = add(top, high);
    plan.word("label start", 0, px(11), `Flat, ${shown(flat, metric)}`);
    plan.box("cloth", 0, top, flat, high);
    if (above(turning)) for (const at of [turning, sub(flat, turning)]) plan.line("seam", at, top, at, foot);
    let taken = px(-1);
    made.lines.forEach((line, i) => {
      const [a, fold, b] = line.map((each) => add(each, turning));
      plan.box("tuck", a, top, sub(b, a), high);
      plan.line("stitch", a, top, a, foot);
      plan.line("fold", fold, top, fold, foot);
      plan.line("stitch", b, top, b, foot);
      if (less(taken, sub(fold, px(9)))) {
        plan.word("label middle", fold, add(foot, px(13)), String(i + 1));
        taken = add(fold, px(9));
      }
    });
    const below = add(foot, px(36)), end = add(below, high);
    plan.word("label start", 0, sub(below, px(5)), `Tucked, ${shown(made.finished, metric)}`);
    plan.box("cloth", 0, below, add(made.finished, mul(turning, 2)), high);
    for (let i = 0; i < made.count; i += 1) {
      const at = add(add(turning, made.first), mul(made.spacing, i)), fold = add(at, made.width);
      plan.box("tuck", at, below, made.width, high);
      plan.line("stitch", at, below, at, end);
      plan.line("fold", fold, below, fold, end);
    }
    const last = add(end, px(18));
    plan.scaleBar(last, div(flat, 4), metric);
    const title = `${made.count} ${plural(made.count, "tuck", "tucks")} on the flat cloth and when tucked, to scale`;
    return plan.figure("tucks", title, flat, add(last, px(4)));
  }

  // ---- pleats.py

  const FOLDS = { knife: 2, box: 4, inverted: 4 }, FULLNESS = { gathers: "1.5", shirring: "2", cartridge: "3" };

  function seams(turning, flat, metric) {
    const twice = mul(turning, 2);
    return above(turning) ? `, and 2 × ${said(turning, metric)} for the seams: ${said(add(flat, twice), metric)}.` : ".";
  }

  function pleats(asked) {
    const style = asked.choice("style", [...Object.keys(FOLDS), ...Object.keys(FULLNESS)], "knife");
    const finished = asked.measure("finished"), turning = asked.measure("turning", NO, FROM_NONE);
    return (FOLDS[style] ? folded : drawnUp)(asked, style, finished, turning);
  }

  function folded(asked, style, finished, turning) {
    const pleat = asked.measureOr("pleat", null);
    let count = asked.countOr("number", null);
    const depth = asked.measureOr("depth", null), metric = asked.metric, say = (value) => said(value, metric);
    if (!pleat && count === null) asked.wrong("pleat", "pleat is missing: how wide one pleat shows.", "Give pleat: 1 in, or number: 12.");
    if (style === "inverted" && !pleat && !depth) {
      asked.wrong("depth", "depth is missing: how deep each fold lies behind.", "Give depth: 2 in.");
    }
    asked.settle();
    if (count === null) {
      count = Number(down(div(finished, pleat)));
      if (count < 1 || count > MOST) asked.wrong("pleat", `${count} pleats of ${say(pleat)} fit ${say(finished)}.`, `Expected from 1 to ${MOST} pleats.`);
    }
    count = count || 1;
    const width = pleat || div(finished, count), left = sub(finished, mul(width, count));
    if (less(left, 0)) {
      asked.wrong("number", `${count} pleats of ${say(width)} are wider than ${say(finished)}.`, "Give fewer or narrower pleats.");
    }
    asked.settle();
    const full = style === "knife" ? width : div(width, 2), deep = depth || full, taken = mul(deep, count * FOLDS[style]);
    const flat = add(finished, taken), cut = add(flat, mul(turning, 2)), word = plural(count, "pleat", "pleats");
    const draft = asked.draft(`${capital(style)} ${word}`);
    draft.cut = `Cut ${toCut(cut, metric)} before pleating, for ${shown(finished, metric)} finished`;
    draft.formula = `${count} ${word} × ${FOLDS[style]} × ${say(deep)} deep = ${say(taken)} taken up; ` +
      `${say(finished)} + ${say(taken)} = ${say(flat)}${seams(turning, flat, metric)}`;
    counts(draft, "Pleats", count);
    shows(draft, "One pleat shows", width);
    shows(draft, "Depth", deep);
    shows(draft, "Taken up", taken);
    cuts(draft, "Flat", cut);
    shows(draft, "Finished", finished);
    if (above(left)) shows(draft, "Left plain", left);
    else if (same(deep, full)) draft.notes.push("Full depth and touching: three times the finished width.");
    if (less(full, deep)) draft.cautions.push("The pleats are deeper than full: they lap over each other behind and make the band thick.");
    need(draft, cut, { onlyNamed: true });
    return draft;
  }

  function drawnUp(asked, style, finished, turning) {
    const fullness = asked.number("fullness", FULLNESS[style], "1", "20"), metric = asked.metric;
    asked.settle();
    const flat = mul(finished, fullness), cut = add(flat, mul(turning, 2));
    const draft = asked.draft(style === "cartridge" ? "Cartridge pleats" : capital(style));
    draft.cut = `Cut ${toCut(cut, metric)} before drawing up, for ${shown(finished, metric)} finished`;
    draft.formula = `${said(finished, metric)} × ${decimal(fullness)} = ${said(flat, metric)}${seams(turning, flat, metric)}`;
    figureOf(draft, "Fullness", fullness, decimal(fullness));
    cuts(draft, "Flat", cut);
    shows(draft, "Finished", finished);
    if (style === "cartridge") draft.notes.push("How much draws up depends on the cloth and the stitch: try a hand’s breadth first.");
    need(draft, cut, { onlyNamed: true });
    return draft;
  }

  // ---- bias.py

  const ROOT_2 = per(1414213562373095049n, 10n ** 18n);
  const STRETCHES = "Bias stretches as it is sewn and narrows as it stretches. Cut and sew a trial strip first, and cut a " +
    "little wider where the finished width matters.";

  function pieced(across, along, width, seam, shortest) {
    const small = least(across, along), large = most(across, along), step = mul(width, ROOT_2);
    const lost = mul(mul(ROOT_2, 2), seam), low = div(most(shortest, lost), ROOT_2);
    const steps = (length) => Number(down(div(length, step)));
    const middle = less(small, low) ? 0 : steps(sub(large, small)), below = Math.max(0, steps(sub(small, low)));
    const first = steps(sub(large, small)) + 1, last = steps(sub(large, low)), beyond = Math.max(0, last - first + 1);
    let found = sub(mul(small, middle + below), mul(step, (below * (below + 1)) / 2));
    if (beyond) found = add(found, sub(mul(large, beyond), div(mul(step, (first + last) * beyond), 2)));
    const pieces = middle + below + beyond;
    return { pieces, length: most(0, sub(mul(ROOT_2, found), mul(lost, Math.max(0, pieces - 1)))) };
  }

  function continuous(across, along, width, seam) {
    const small = sub(least(across, along), mul(seam, 2)), large = sub(most(across, along), mul(seam, 2));
    if (!above(small)) return { pieces: 0, length: NONE };
    const pieces = Number(down(div(large, mul(width, ROOT_2))));
    return { pieces, length: mul(mul(ROOT_2, small), pieces) };
  }

  function bias(asked) {
    const width = asked.measure("width", null, { least: "1/4 in", most: "1 yd" });
    const wanted = asked.has("length") ? asked.edges("length") : [];
    const method = asked.choice("method", ["pieced", "continuous"], "pieced");
    const seam = asked.measure("seam", ["1/4 in", "6 mm"], { least: "0 in", most: "2 in" });
    const turning = asked.measure("turning", TURNING, FROM_NONE), cloth = asked.measureOr("cloth_width", null);
    const remnant = asked.has("remnant") ? asked.edges("remnant") : [];
    if (asked.has("remnant") && remnant.length !== 2) asked.wrong("remnant", "remnant has not two sides.", "Expected remnant: [18 in, 24 in].");
    if (!wanted.length && !remnant.length) {
      asked.wrong("length", "length is missing.", "Give length: what is wanted, or remnant: [18 in, 24 in].");
    }
    const ends = add(total(wanted), mul(turning, 2 * wanted.length));
    if (less(3600, ends)) asked.wrong("length", "length is more than 100 yards of strip.", "Make several lines of it.");
    let shortest = asked.measure("shortest", ["6 in", "15 cm"], { least: "0 in", most: "1 yd" });
    if (wanted.length) shortest = least(shortest, ends);
    const metric = asked.metric, say = (value) => said(value, metric);
    asked.settle();
    const gives = (a, b) => (method === "continuous" ? continuous(a, b, width, seam) : pieced(a, b, width, seam, shortest));
    const draft = asked.draft("Bias strip"), narrow = shown(width, metric);
    if (wanted.length) {
      const times = wanted.length > 1 ? `${wanted.length} × ` : "";
      draft.formula = `${asked.summed(wanted)}, and ${times}${say(mul(turning, 2))} for the ends: ${say(ends)}. `;
      cuts(draft, "Wanted", ends);
    }
    let across, along, found;
    if (remnant.length) {
      [across, along] = remnant.map((edge) => edge.inches);
      found = gives(across, along);
      const enough = wanted.length ? `; ${less(found.length, ends) ? "not enough" : "enough"}` : "";
      draft.cut = `A remnant ${shown(across, metric)} by ${shown(along, metric)} yields ${shown(found.length, metric)} of strip ${narrow} wide${enough}`;
    } else {
      [across, along] = clothFor(asked, ends, width, cloth, gives);
      asked.settle();
      found = gives(across, along);
      const place = cloth ? `a rectangle of ${shown(across, metric)} by ${shown(along, metric)}` : `a square of ${shown(across, metric)}`;
      draft.cut = `Cut strip ${narrow} wide from ${place}; it gives ${shown(found.length, metric)}`;
      need(draft, along, { onlyNamed: true });
    }
    const limit = div(mul(across, along), width), apart = mul(width, ROOT_2), pieces = found.pieces;
    draft.formula += `Cuts lie ${say(width)} × √2 = ${say(apart)} apart along the selvedge. ` +
      `${say(across)} × ${say(along)} ÷ ${say(width)} = ${say(limit)} at most`;
    if (method === "continuous") {
      draft.formula += `; the two seams and whole turns leave ${say(found.length)} in ${pieces} ${plural(pieces, "turn", "turns")}.`;
      counts(draft, "Turns", pieces);
      draft.notes.push("Shift the second seam by one strip, so that the cut runs on round the tube.");
    } else {
      const joins = Math.max(0, pieces - 1);
      draft.formula += `; ${pieces} ${plural(pieces, "strip", "strips")} with ${joins} ${plural(joins, "join", "joins")} give ${say(found.length)}.`;
      counts(draft, "Strips", pieces);
      counts(draft, "Joins", joins);
      draft.notes.push(`Strips shorter than ${shown(shortest, metric)} are not counted. Join on the straight grain.`);
    }
    shows(draft, "Yield", found.length);
    shows(draft, "At most", limit);
    shows(draft, "Apart along the selvedge", apart);
    shows(draft, "Across", across);
    shows(draft, "Along the selvedge", along);
    draft.cautions.push(STRETCHES);
    draft.figure = biasFigure(across, along, width, metric);
    return draft;
  }

  function clothFor(asked, ends, width, cloth, gives) {
    const step = asked.metric ? CM : HALF, area = mul(ends, width);
    const side = cloth || F(Math.floor(Math.sqrt(Number(down(area)))));
    let along = most(step, upTo(cloth ? div(area, cloth) : side, step));
    for (let tries = 0; tries < 2000; tries += 1) {
      const across = cloth || along, missing = sub(ends, gives(across, along).length);
      if (!above(missing)) return [across, along];
      const grown = div(mul(missing, width), mul(across, cloth ? 2 : 4));
      along = add(along, most(step, mul(step, per(down(div(grown, step)), 1))));
    }
    asked.wrong("cloth_width", "No such strip can be cut from cloth of this width.", "Expected a wider cloth.");
    return [F(1), F(1)];
  }

  function biasFigure(across, along, width, metric) {
    const seen = least(along, mul(across, 2)), plan = new Plan(div(most(across, seen), 420)), step = mul(width, ROOT_2);
    plan.box("cloth", 0, 0, across, seen);
    plan.line("selvedge", 0, 0, 0, seen);
    const torn = less(seen, along);
    if (torn) plan.line("torn", 0, seen, across, seen);
    const small = least(across, along);
    const first = -Number(down(div(small, step))), last = Number(down(div(sub(add(across, seen), small), step)));
    for (let number = first; number <= last && last - first <= 600; number += 1) {
      const c = add(small, mul(step, number)), left = most(0, sub(c, seen)), right = least(across, c);
      if (less(left, right)) plan.line(number ? "cut" : "diagonal", left, sub(c, left), right, sub(c, right));
    }
    const foot = add(seen, plan.px(18));
    plan.scaleBar(foot, div(across, 2), metric);
    const title = `Strips ${shown(width, metric)} wide on the cross, to scale${torn ? "; the cloth goes on below" : ""}`;
    return plan.figure("bias", title, across, add(foot, plan.px(4)));
  }

  // ---- fastenings.py

  const FASTENINGS = {
    "buttons": "button", "hooks and eyes": "hook and eye", "hooks and bars": "hook and bar", "press studs": "press stud",
    "eyelets": "eyelet", "tape ties": "tape tie", "toggles": "toggle",
  };

  function fastenings(asked) {
    const of = asked.choice("of", Object.keys(FASTENINGS), "buttons"), opening = asked.measure("opening");
    const number = asked.countOr("number", null), spacing = asked.measureOr("spacing", null);
    const top = asked.measure("top", TURNING, FROM_NONE), bottom = asked.measure("bottom", TURNING, FROM_NONE);
    const sets = asked.count("sets", 1), spare = asked.count("spare", 0, 0), metric = asked.metric, say = (value) => said(value, metric);
    if (number !== null && spacing) asked.wrong("spacing", "number and spacing are both given.", "Give one; the other follows from it.");
    if (number === null && !spacing) asked.wrong("number", "number is missing.", "Give number: how many, or spacing: how far apart at most.");
    asked.settle();
    const room = sub(sub(opening, top), bottom);
    if (less(room, 0)) {
      asked.wrong("top", `top and bottom take more than the opening of ${say(opening)}.`, "Expected less at the top and the bottom.");
    }
    asked.settle();
    const count = number === null ? Number(up(div(room, spacing))) + 1 : number;
    if (count > MOST) asked.wrong("spacing", `${count} ${of} are too many for one line.`, `Expected at most ${MOST}.`);
    if (count > 1 && !above(room)) {
      asked.wrong("number", `${count} ${of} have no room between top and bottom.`, "Expected less at the top and the bottom.");
    }
    asked.settle();
    const one = FASTENINGS[of], all = count * sets + spare, draft = asked.draft(capital(of));
    const times = sets > 1 ? `${sets} openings, each with ` : "";
    draft.cut = `Set ${times}${count} ${count === 1 ? one : of}${spare ? ", and " + spare + " to spare" : ""}`;
    draft.formula = `${say(opening)} − ${say(top)} at the top − ${say(bottom)} at the bottom = ${say(room)}`;
    const gap = count > 1 ? div(room, count - 1) : NONE;
    if (count > 1) {
      draft.formula += `; ÷ ${count - 1} ${count === 2 ? "space" : "spaces"} = ${say(gap)} apart.`;
      shows(draft, "Apart", gap);
    } else draft.formula += "; one alone sits at the top.";
    counts(draft, "Together", all);
    for (let i = 0; i < count; i += 1) {
      const position = add(top, mul(gap, i));
      figureOf(draft, `${capital(one)} ${i + 1}`, position, `${shown(position, metric)} from the top`);
    }
    if (spacing) draft.notes.push(`No two are further apart than ${say(spacing)}.`);
    need(draft, all, { counted: true });
    return draft;
  }

  // ---- packing.py

  const ORDERS = [
    (box) => -box.along, (box) => -box.across, (box) => -box.across * box.along, (box) => -Math.max(box.across, box.along), () => 0,
  ];
  const lengthOf = (laid) => laid.reduce((far, each) => Math.max(far, each.y + each.along), 0);

  /** The shortest lay found, of boxes { piece, across, along, turns, atFold } in whole steps. */
  function lay(boxes, width) {
    let best = null;
    for (const order of ORDERS) {
      const laid = laidInOrder([...boxes].sort((a, b) => order(a) - order(b)), width);
      if (!best || lengthOf(laid) < lengthOf(best)) best = laid;
    }
    return best;
  }

  function laidInOrder(boxes, width) {
    let skyline = [[0, 0]];
    const found = [];
    for (const box of boxes) {
      const ways = [[box.across, box.along, false]];
      if (box.turns) ways.push([box.along, box.across, true]);
      let place = null;
      for (const [across, along, turned] of ways) {
        for (const [x] of box.atFold ? skyline.slice(0, 1) : skyline) {
          if (x + across > width) continue;
          const y = Math.max(...under(skyline, x, x + across, width).map(([, level]) => level)), far = y + along;
          // Of equals the leftmost, and of those the one not turned, which was tried before.
          if (!place || far < place.y + place.along || (far === place.y + place.along && x < place.x)) {
            place = { piece: box.piece, x, y, across, along, turned };
          }
        }
      }
      found.push(place);
      skyline = raised(skyline, place, width);
    }
    return found;
  }

  function under(skyline, left, right, width) {
    return skyline.filter(([begin], i) => begin < right && (i + 1 < skyline.length ? skyline[i + 1][0] : width) > left);
  }

  function raised(skyline, place, width) {
    const left = place.x, right = left + place.across;
    const atRight = right < width ? under(skyline, right, right + 1, width) : [];
    return [
      ...skyline.filter(([begin]) => begin < left), [left, place.y + place.along],
      ...atRight.map(([, level]) => [right, level]), ...skyline.filter(([begin]) => begin > right),
    ];
  }

  // ---- cloth.py

  const MOST_BOXES = 200;

  function readPieces(asked, cloth, warp, weft) {
    const given = asked.has("pieces") ? asked.get("pieces") : null;
    if (!Array.isArray(given) || !given.length) {
      const hint = "Expected a list, such as pieces: [{name: front, width: 20 in, length: 44 in, number: 2}].";
      asked.wrong("pieces", "pieces are missing.", hint);
      return [];
    }
    return given.slice(0, MOST_BOXES).flatMap((each, i) => {
      if (isFields(each)) return [readPiece(asked, each, i + 1, cloth, warp, weft)];
      asked.wrong("pieces", `Piece ${i + 1} has no fields.`, "Expected {name: front, width: 20 in, length: 44 in}.");
      return [];
    });
  }

  function readPiece(asked, given, place, cloth, warp, weft) {
    const inner = new Asked(asked.index, given, asked.metric), name = inner.text("name", `piece ${place}`);
    const width = inner.measure("width"), length = inner.measure("length"), turning = inner.measure("turning", NO, FROM_NONE);
    const number = inner.count("number", 1, 1, MOST_BOXES);
    const grain = inner.choice("grain", ["lengthwise", "crosswise", "any"], "lengthwise"), atFold = inner.flag("fold");
    if (atFold && !cloth.doubled) {
      inner.wrong("fold", "fold needs cloth that is doubled.", "Give doubled: true, or the whole piece.");
    }
    asked.take(inner, `pieces, ${name}`);
    let wide = add(width, mul(turning, atFold ? 1 : 2)), long = add(length, mul(turning, 2));
    if (grain === "crosswise") [wide, long] = [long, wide];
    const turns = grain === "any" && !cloth.oneWay && !atFold;
    if (turns) warp = weft = most(warp, weft);
    const steps = (size, share) => Number(up(div(div(size, sub(1, share)), cloth.step)));
    return { name, number, across: steps(wide, weft), along: steps(long, warp), turns, atFold };
  }

  function cloth(asked) {
    const full = asked.measure("width", null, { least: "2 in" }), selvedge = asked.measure("selvedge", NO, FROM_NONE);
    const warp = asked.share("warp"), weft = asked.share("weft"), doubled = asked.flag("doubled"), oneWay = asked.flag("one_way");
    const soldBy = asked.measureOr("sold_by", null, { least: "1 in", most: "10 yd" });
    const price = asked.has("price") ? asked.number("price") : null, currency = asked.text("currency"), metric = asked.metric;
    const step = metric ? div(CM, 10) : per(1, 16), usable = div(sub(full, mul(selvedge, 2)), doubled ? 2 : 1);
    const lying = { width: Math.max(1, Number(down(div(usable, step)))), step, doubled, oneWay };
    const pieces = readPieces(asked, lying, warp, weft);
    asked.settle();
    if (less(usable, step)) asked.wrong("selvedge", "The selvedges leave no cloth between them.", "Expected narrower selvedges.");
    asked.settle();
    const boxes = pieces.flatMap((piece, i) =>
      Array.from({ length: doubled && !piece.atFold ? Math.ceil(piece.number / 2) : piece.number }, () => ({ ...piece, piece: i })));
    if (boxes.length > MOST_BOXES) {
      asked.wrong("pieces", `${boxes.length} pieces are too many for one lay.`, `Expected at most ${MOST_BOXES}.`);
    }
    for (const piece of pieces) {
      if (piece.across <= lying.width || (piece.turns && piece.along <= lying.width)) continue;
      const half = doubled ? "half the cloth" : "the cloth", across = shown(mul(step, piece.across), metric);
      const message = `${piece.name} is ${across} across; ${half} is ${shown(usable, metric)}.`;
      asked.wrong("pieces", message, "Piece it, turn it if the grain allows, or take wider cloth.");
    }
    asked.settle();
    const laid = lay(boxes, lying.width), length = mul(step, lengthOf(laid)), draft = asked.draft("Cloth"), say = (value) => said(value, metric);
    const area = boxes.reduce((all, box) => all + BigInt(box.across) * BigInt(box.along), 0n);
    const simple = mul(step, boxes.reduce((all, box) => all + box.along, 0));
    const longest = Math.max(...boxes.map((box) => (box.turns ? Math.min(box.along, box.across) : box.along)));
    const low = mul(most(per(area, lying.width), longest), step);
    draft.formula = `${boxes.length} ${plural(boxes.length, "box", "boxes")} laid on ${say(mul(step, lying.width))}: ${say(length)}. ` +
      `One behind the other they would take ${say(simple)}; no lay can take less than ${say(low)} (area ÷ width, or the longest piece).`;
    cuts(draft, "Laid", length);
    cuts(draft, "One behind the other", simple);
    shows(draft, "No lay takes less than", low);
    const used = div(mul(per(area * 100n, lying.width), step), length);
    figureOf(draft, "Cloth used", used, `${decimal(used, 0)} %`);
    pieces.forEach((piece, i) => {
      const text = `${piece.number} × ${shown(mul(step, piece.across), metric)} across by ${shown(mul(step, piece.along), metric)} along`;
      figureOf(draft, `${i + 1}. ${piece.name}`, piece.number, piece.atFold ? `${text}, on the fold` : text);
    });
    draft.cut = `Buy ${toBuy(length, metric, soldBy)[1]} of cloth ${shown(full, metric)} wide; the lay takes ${toCut(length, metric)}`;
    if (above(warp) || above(weft)) {
      draft.formula += ` Let out for shrinking, ÷ (1 − ${decimal(warp)}) along and ÷ (1 − ${decimal(weft)}) across: cut = finished ÷ (1 − s).`;
      draft.notes.push("The shares are your own: wash a square of the cloth and measure it again.");
    }
    if (oneWay) draft.notes.push("One-way design: every piece points the same way, and none is turned.");
    if (doubled) draft.notes.push("The cloth lies doubled, right sides together: each box is cut through both layers.");
    draft.notes.push("Shaped pieces are laid as their boxes; they may nest closer than this.");
    draft.figure = layFigure(pieces, laid, lying, length, metric);
    if (!draft.named) draft.buy = `${draft.title}, ${shown(full, metric)} wide`;
    need(draft, length, { step: soldBy, price, currency });
    return draft;
  }

  function layFigure(pieces, laid, lying, length, metric) {
    const { step, doubled } = lying, width = mul(step, lying.width), plan = new Plan(div(length, 640)), px = (count) => plan.px(count);
    const top = px(18), end = add(top, width);
    plan.word("label start", 0, px(12), doubled ? "Fold" : "Selvedge");
    plan.box("cloth", 0, top, length, width);
    plan.line(doubled ? "fold" : "selvedge", 0, top, length, top);
    plan.line("selvedge", 0, end, length, end);
    for (const each of laid) {
      const x = mul(step, each.y), y = add(top, mul(step, each.x)), wide = mul(step, each.along), high = mul(step, each.across);
      const arrow = !less(wide, px(30)) && !less(high, px(28));
      plan.box("piece", x, y, wide, high);
      if (arrow) grainArrow(plan, x, y, wide, high, lying.oneWay);
      const { name } = pieces[each.piece], number = String(each.piece + 1);
      const text = less(px(7 * (Array.from(name).length + number.length + 1)), wide) ? `${number} ${name}` : number;
      if (less(px(13), least(wide, high))) plan.word("label middle", add(x, div(wide, 2)), add(add(y, div(high, 2)), px(arrow ? -3 : 4)), text);
    }
    const foot = add(end, px(20)), count = laid.length;
    plan.scaleBar(foot, div(length, 4), metric);
    const title = `Lay plan: ${count} ${plural(count, "box", "boxes")} on cloth ${shown(width, metric)} wide${doubled ? ", doubled" : ""}`;
    return plan.figure("lay-plan", title, length, add(foot, px(4)));
  }

  function grainArrow(plan, x, y, wide, high, oneWay) {
    const left = add(x, div(wide, 4)), right = add(x, div(mul(wide, 3), 4)), at = add(add(y, div(high, 2)), plan.px(6)), head = plan.px(4);
    plan.line("grain", left, at, right, at);
    for (const side of [-1, 1]) {
      const off = add(at, mul(head, side));
      plan.line("grain", right, at, sub(right, head), off);
      if (!oneWay) plan.line("grain", left, at, add(left, head), off);
    }
  }

  // ---- sheets.py

  const KINDS = { frill, tucks, pleats, bias, insertion: trimming, fastenings, stitching, cloth };

  /** The making sheet of a board's list, untrusted as it was read: { lines, shopping, cautions, problems }. */
  function sheet(making) {
    const drafts = [], problems = [];
    making.forEach((given, index) => {
      const { kind } = given;
      if (typeof kind !== "string" || !Object.hasOwn(KINDS, kind)) {
        const missing = kind === null || kind === undefined;
        const message = missing ? "kind is missing." : `${quoted(kind)} is not a kind of work known here.`;
        problems.push({ index, field: "kind", message, hint: `Expected one of: ${Object.keys(KINDS).join(", ")}.` });
        return;
      }
      const asked = new Asked(index, given);
      try {
        drafts.push(KINDS[kind](asked));
      } catch (stop) {
        if (stop !== STOP) throw stop;
      }
      problems.push(...asked.problems);
    });
    const lines = drafts.map(({ index, kind, title, cut, formula, numbers, notes, cautions, figure }) => (
      { index, kind, title, cut: `${cut}.`, formula, numbers, notes, cautions, figure }));
    const cautions = [...new Set(lines.flatMap((line) => line.cautions))];
    return { lines, shopping: shopping(drafts.flatMap((draft) => draft.needs)), cautions, problems };
  }

  function shopping(needs) {
    const groups = new Map();
    for (const each of needs) {
      const key = JSON.stringify([each.named ? each.what : each.index, each.counted]);
      groups.set(key, [...(groups.get(key) || []), each]);
    }
    return [...groups.values()].map((group) => {
      const { what, metric, counted } = group[0], all = sum(group.map((each) => each.amount)), lines = group.map((each) => each.index);
      if (counted) return { what, value: real(all), text: String(all.n), cost: null, lines };
      const priced = group.find((each) => each.price), step = (group.find((each) => each.step) || {}).step;
      const [bought, text] = toBuy(all, metric, step);
      const cost = priced ? `${money(mul(div(bought, metric ? METRE : YARD), priced.price))} ${priced.currency}`.replace(/ +$/, "") : null;
      return { what, value: real(bought), text, cost, lines };
    });
  }

  function money(amount) {
    const hundredths = nearest(mul(amount, 100));
    return `${hundredths / 100n}.${String(hundredths % 100n).padStart(2, "0")}`;
  }

  // ---- drawings.py

  const DRAWN = {
    "cloth": { "fill": "currentColor", "fill-opacity": "0.04" },
    "tuck": { "fill": "currentColor", "fill-opacity": "0.12", "stroke": "none" },
    "piece": { "fill": "currentColor", "fill-opacity": "0.1" },
    "selvedge": { "stroke-width": "3" }, "fold": { "stroke-width": "2", "stroke-dasharray": "10 3" },
    "stitch": { "stroke-dasharray": "3 3" }, "seam": { "stroke-opacity": "0.5", "stroke-dasharray": "1 3" },
    "torn": { "stroke-dasharray": "2 4" }, "diagonal": { "stroke-width": "2" },
  };
  const PLACES = { box: ["rect", "x", "y", "width", "height"], line: ["line", "x1", "y1", "x2", "y2"], word: ["text", "x", "y"] };
  const short = (value) => String(Math.floor(value * 100 + 0.5) / 100);

  /** A line's figure as an SVG element; `s` makes elements as InPeriod.s does. */
  function draw(figure, s = root.InPeriod.s) {
    const { name, title, scale } = figure, width = short(figure.width * scale + 4), height = short(figure.height * scale + 4);
    const shapes = figure.shapes.map(({ form, at, look, text }) => {
      const [tag, ...names] = PLACES[form], [called, anchor] = look.split(" "), drawn = { class: called };
      names.forEach((each, i) => { drawn[each] = short(at[i] * scale); });
      if (anchor) return s(tag, { ...drawn, "fill": "currentColor", "stroke": "none", "text-anchor": anchor }, text);
      return s(tag, { ...drawn, ...DRAWN[look] });
    });
    const frame = { "class": `making-figure making-${name}`, "viewBox": `-2 -2 ${width} ${height}`, width, height, "role": "img", "aria-label": title };
    const common = { "fill": "none", "stroke": "currentColor", "stroke-width": "1", "font-size": "11" };
    return s("svg", frame, s("title", {}, title), s("g", common, ...shapes));
  }

  const making = { sheet, draw, readMeasure, shown, kinds: Object.keys(KINDS) };
  (root.InPeriod ||= {}).making = making;
  if (typeof module !== "undefined") module.exports = making;
})(globalThis);
