// Made by tests/flat_script.py from generator/inperiod/drawing, where every word of it is explained.
// Change it there. What Python's own words mean here is in flat-words.js.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod = root.InPeriod || {});
  const { Markup, Named, bisect_left, bisect_right, bound, enumerate, escape, get, has, item, maxOf, minOf, mod, named, pairwise, partition, radians, range, replace, reversed, round, rstrip, same, setdefault, sorted, truth, zip } = InPeriod.flatWords;
  
  const marks = (() => {
    function number(value) {
      let rounded;
      if (Number.isInteger(value)) {
        return String(value);
      }
      rounded = Math.floor((value * 100) + 0.5) / 100;
      return (same(rounded, Math.trunc(rounded))) ? String(Math.trunc(rounded)) : String(rounded);
    }
    function _escaped(text) {
      return String(escape(text));
    }
    function tag(name, attributes, ...children) {
      let written, inside;
      written = ([...attributes.entries()].filter(([key, value]) => (value != null)).map(([key, value]) => (` ${key}="${(typeof value === "string" || value instanceof Markup) ? _escaped(value) : number(value)}"`))).join("");
      inside = ([...children].map((child) => (child instanceof Markup ? child : escape(child)))).join("");
      return new Markup(`<${name}${written}>${inside}</${name}>`);
    }
    return { number, tag };
  })();
  
  const paths = (() => {
    const { number } = marks;
    const CENTRE = 48;
    class Path {
      constructor(start, steps = [], closed = false) { this.start = start; this.steps = steps; this.closed = closed; }
      get end() {
        return truth(this.steps) ? this.steps.at(-1).at(-1) : this.start;
      }
      _on(steps) {
        return new Path(this.start, [...this.steps, ...steps], this.closed);
      }
      to(...points) {
        return this._on([...points].map((point) => [point]));
      }
      through(...points) {
        const { ease = 1 } = named(points);
        return this._on(_smooth([this.end, ...points], ease));
      }
      bend(control, end) {
        let first, last;
        [first, last] = [_towards(this.end, control, 2 / 3), _towards(end, control, 2 / 3)];
        return this._on([[first, last, end]]);
      }
      curve(first, second, end) {
        return this._on([[first, second, end]]);
      }
      then(other) {
        let bridge;
        bridge = _near(this.end, other.start) ? [] : [[other.start]];
        return this._on([...bridge, ...other.steps]);
      }
      close() {
        return new Path(this.start, this.steps, true);
      }
      reverse() {
        let places, steps, index, step, back;
        places = [this.start, ...([...this.steps].map((step) => step.at(-1)))];
        steps = [];
        for (index of range(this.steps.length - 1, -1, -1)) {
          [step, back] = [item(this.steps, index), item(places, index)];
          steps.push((step.length === 3) ? [step[1], step[0], back] : [back]);
        }
        return new Path(this.end, [...steps], this.closed);
      }
      mapped(change) {
        let steps;
        steps = [...this.steps].map((step) => ((step.length === 3) ? [change(step[0]), change(step[1]), change(step[2])] : [change(step[0])]));
        return new Path(change(this.start), [...steps], this.closed);
      }
      mirror(axis = CENTRE) {
        let twice, steps, step, ax, ay, bx, by, x, y;
        twice = 2 * axis;
        steps = [];
        for (step of this.steps) {
          if ((step.length === 3)) {
            [[ax, ay], [bx, by], [x, y]] = step;
            steps.push([[twice - ax, ay], [twice - bx, by], [twice - x, y]]);
          } else {
            [[x, y]] = step;
            steps.push([[twice - x, y]]);
          }
        }
        return new Path([twice - this.start[0], this.start[1]], [...steps], this.closed);
      }
      move(across, down = 0) {
        return this.mapped((point) => [point[0] + across, point[1] + down]);
      }
      scale(across, down = null, about = [0, 0]) {
        let factor, x, y;
        [factor, [x, y]] = [(down == null) ? across : down, about];
        return this.mapped((point) => [x + ((point[0] - x) * across), y + ((point[1] - y) * factor)]);
      }
      turn(angle, about = [0, 0]) {
        let cos, sin, x, y;
        [cos, sin, [x, y]] = [Math.cos(radians(angle)), Math.sin(radians(angle)), about];
        const turned = (point) => {
          let dx, dy;
          [dx, dy] = [point[0] - x, point[1] - y];
          return [(x + (dx * cos)) - (dy * sin), (y + (dx * sin)) + (dy * cos)];
        };
        return this.mapped(turned);
      }
      points(per = 10) {
        let found, step, ax, ay, bx, by, cx, cy, dx, dy;
        found = [this.start];
        for (step of this.steps) {
          if ((step.length === 1)) {
            found.push(step[0]);
          } else {
            [[ax, ay], [[bx, by], [cx, cy], [dx, dy]]] = [found.at(-1), step];
            found.push(...[..._shares(per)].map(([p, q, r, w]) => [(((p * ax) + (q * bx)) + (r * cx)) + (w * dx), (((p * ay) + (q * by)) + (r * cy)) + (w * dy)]));
          }
        }
        if ((truth(this.closed) && !_near(found.at(-1), this.start))) {
          found.push(this.start);
        }
        return [...found];
      }
      d() {
        let parts, step;
        parts = ["M" + _pair(this.start)];
        for (step of this.steps) {
          parts.push(((step.length === 3) ? "C" : "L") + [...step].map((each) => _pair(each)).join(" "));
        }
        return parts.join("") + (truth(this.closed) ? "Z" : "");
      }
    }
    function path(...points) {
      return new Path(points[0]).to(...points.slice(1));
    }
    function smooth(...points) {
      const { ease = 1 } = named(points);
      return new Path(points[0]).through(...points.slice(1), new Named({ ease: ease }));
    }
    function ring(centre, across, down = null) {
      let x, y, rx, ry, k;
      [[x, y], rx, ry] = [centre, across, (down == null) ? across : down];
      k = 0.5523;
      return new Path([x + rx, y], [[[x + rx, y + (k * ry)], [x + (k * rx), y + ry], [x, y + ry]], [[x - (k * rx), y + ry], [x - rx, y + (k * ry)], [x - rx, y]], [[x - rx, y - (k * ry)], [x - (k * rx), y - ry], [x, y - ry]], [[x + (k * rx), y - ry], [x + rx, y - (k * ry)], [x + rx, y]]], true);
    }
    function box(x, y, wide, high) {
      return path([x, y], [x + wide, y], [x + wide, y + high], [x, y + high]).close();
    }
    function apart(a, b) {
      let across, down;
      [across, down] = [a[0] - b[0], a[1] - b[1]];
      return Math.sqrt((across * across) + (down * down));
    }
    function length(line) {
      return _whole(_spans(line));
    }
    function _spans(line) {
      return [...pairwise(line.points())].map(([a, b]) => [a, b, apart(a, b)]);
    }
    function _whole(spans) {
      let gone, span;
      gone = 0;
      for ([, , span] of spans) {
        gone += span;
      }
      return gone;
    }
    function at(line, distance) {
      return _at(line.start, _spans(line), distance);
    }
    function _at(start, spans, distance) {
      let left, place, way, a, b, span;
      left = distance;
      [place, way] = [start, [1, 0]];
      for ([a, b, span] of spans) {
        if ((span === 0)) {
          continue;
        }
        way = [(b[0] - a[0]) / span, (b[1] - a[1]) / span];
        if ((left <= span)) {
          return [[a[0] + (way[0] * left), a[1] + (way[1] * left)], way];
        }
        [left, place] = [left - span, b];
      }
      return [place, way];
    }
    function evenly(line, count, ends = false) {
      let start, spans, whole;
      [start, spans] = [line.start, _spans(line)];
      whole = _whole(spans);
      if (truth(ends)) {
        return [...range(count)].map((index) => _at(start, spans, (whole * index) / Math.max(1, count - 1)));
      }
      return [...range(count)].map((index) => _at(start, spans, (whole * (index + 0.5)) / count));
    }
    function beside(line, distance) {
      let points, found, index, x, y, before, after, first, second, across, down, reach, made;
      points = _distinct(line.points());
      found = [];
      for ([index, [x, y]] of enumerate(points)) {
        [before, after] = [item(points, Math.max(0, index - 1)), item(points, Math.min(points.length - 1, index + 1))];
        if ((truth(line.closed) && ([0, points.length - 1].includes(index)))) {
          [before, after] = [points.at(-2), points[1]];
        }
        [first, second] = [_way(before, [x, y]), _way([x, y], after)];
        [first, second] = [first || second || [1, 0], second || first || [1, 0]];
        [across, down] = [(-(first[1] + second[1])) / 2, (first[0] + second[0]) / 2];
        reach = distance / Math.max(0.25, (across * across) + (down * down));
        found.push([x + (across * reach), y + (down * reach)]);
      }
      made = path(...found);
      return truth(line.closed) ? made.close() : made;
    }
    function waved(line, high, count, shape) {
      let spans, found, whole, knots, index;
      [spans, found] = [_spans(line), new Path(line.start)];
      whole = _whole(spans);
      const place = (index, rise) => {
        let x, y, dx, dy;
        [[x, y], [dx, dy]] = _at(line.start, spans, (whole * index) / count);
        return [x - (dy * rise), y + (dx * rise)];
      };
      if ((shape === "wave")) {
        knots = [...range((2 * count) + 1)].map((index) => place(index / 2, (high * (((mod(index, 4)) === 1) ? 1 : (-1))) * (mod(index, 2))));
        return smooth(...knots);
      }
      for (index of range(count)) {
        if ((shape === "points")) {
          found = found.to(place(index + 0.5, high), place(index + 1, 0));
        } else {
          found = found.curve(place(index, (high * 4) / 3), place(index + 1, (high * 4) / 3), place(index + 1, 0));
        }
      }
      return found;
    }
    function _pair(point) {
      return `${number(point[0])} ${number(point[1])}`;
    }
    function _near(a, b) {
      return apart(a, b) < 1e-06;
    }
    function _towards(a, b, share) {
      return [a[0] + ((b[0] - a[0]) * share), a[1] + ((b[1] - a[1]) * share)];
    }
    function _way(a, b) {
      let span;
      span = apart(a, b);
      return (span === 0) ? null : [(b[0] - a[0]) / span, (b[1] - a[1]) / span];
    }
    function _distinct(points) {
      return [...enumerate(points)].filter(([index, point]) => ((index === 0) || !_near(point, item(points, index - 1)))).map(([index, point]) => point);
    }
    function _smooth(points, ease) {
      let steps, index, a, b, before, after, first, second;
      steps = [];
      for (index of range(points.length - 1)) {
        [a, b] = [item(points, index), item(points, index + 1)];
        [before, after] = [item(points, Math.max(0, index - 1)), item(points, Math.min(points.length - 1, index + 2))];
        first = [a[0] + (((b[0] - before[0]) * ease) / 6), a[1] + (((b[1] - before[1]) * ease) / 6)];
        second = [b[0] - (((after[0] - a[0]) * ease) / 6), b[1] - (((after[1] - a[1]) * ease) / 6)];
        steps.push([first, second, b]);
      }
      return [...steps];
    }
    function _shares(per) {
      let along;
      along = [...range(1, per + 1)].map((place) => [place / per, 1 - (place / per)]);
      return [...([...along].map(([t, s]) => [(s * s) * s, ((3 * s) * s) * t, ((3 * s) * t) * t, (t * t) * t]))];
    }
    return { CENTRE, Path, apart, at, beside, box, evenly, length, path, ring, smooth, waved };
  })();
  
  const hand = (() => {
    const { CENTRE, Path, path } = paths;
    class Stroke {
      constructor(path, pen) { this.path = path; this.pen = pen; }
    }
    class Pen {
      constructor(faint = false, dotted = false, fill = "none", line = true) { this.faint = faint; this.dotted = dotted; this.fill = fill; this.line = line; }
      strokes(...paths) {
        return [...([..._flat(paths)].map((one) => new Stroke(one, this)))];
      }
      both(...paths) {
        const { axis = CENTRE } = named(paths);
        let kept, images;
        kept = _flat(paths);
        images = [...kept].map((one) => one.mirror(axis));
        return [...([...[...kept, ...images]].map((one) => new Stroke(one, this)))];
      }
      attributes() {
        let found;
        found = new Map([]);
        if ((this.fill === "ground")) {
          found = new Map([["class", "ground"], ["fill", "Canvas"]]);
        } else if ((this.fill === "tint")) {
          found = new Map([["class", "tint"], ["fill", "currentColor"], ["fill-opacity", "0.1"]]);
        }
        if (!truth(this.line)) {
          return new Map([...found, ["stroke", "none"]]);
        }
        if (truth(this.faint)) {
          found.set("stroke-opacity", "0.45");
        }
        if (truth(this.dotted)) {
          found.set("stroke-dasharray", "0.1 2.9");
        }
        return found;
      }
    }
    const LINE = new Pen();
    const FAINT = new Pen(true);
    const GROUND = new Pen(undefined, undefined, "ground");
    const TINT = new Pen(undefined, undefined, "tint");
    const WASH = new Pen(undefined, undefined, "tint", false);
    function _flat(paths) {
      let found, one;
      found = [];
      for (one of paths) {
        if (one instanceof Path) {
          found.push(one);
        } else {
          found.push(...[...one]);
        }
      }
      return found;
    }
    return { FAINT, GROUND, LINE, Pen, TINT, WASH };
  })();
  
  const ink = (() => {
    const { FAINT, LINE, Pen } = hand;
    const { tag } = marks;
    const SCALE = 10;
    const CLOTH = new Pen(undefined, undefined, "tint", false);
    const [INK, PAPER] = ["#21242c", "#f4f1e9"];
    class Mark {
      constructor(part, stroke, group = 0) { this.part = part; this.stroke = stroke; this.group = group; }
    }
    class Sheet {
      constructor(marks = []) { this.marks = marks; }
      put(part, pen, ...paths) {
        let group;
        group = this.marks.length;
        this.marks.push(...[...pen.strokes(...paths)].map((stroke) => new Mark(part, stroke, group)));
      }
      both(part, pen, ...paths) {
        let group;
        group = this.marks.length;
        this.marks.push(...[...pen.both(...paths, new Named({ axis: 0 }))].map((stroke) => new Mark(part, stroke, group)));
      }
      cloth(part, ...areas) {
        this.put(part, CLOTH, areas);
      }
      faint(part, ...paths) {
        this.both(part, FAINT, ...paths);
      }
      line(part, ...paths) {
        this.both(part, LINE, ...paths);
      }
    }
    function whole(half) {
      return half.then(half.mirror(0).reverse()).close();
    }
    function data(path, scale = SCALE, across = 0, down = 0) {
      let x, y, parts, last, step, ex, ey, ax, ay, bx, by, letter, text;
      [x, y] = path.start;
      [x, y] = [round((x + across) * scale), round((y + down) * scale)];
      parts = [`M${x} ${y}`];
      last = "";
      for (step of path.steps) {
        [ex, ey] = step.at(-1);
        [ex, ey] = [round((ex + across) * scale), round((ey + down) * scale)];
        if ((step.length === 3)) {
          [[ax, ay], [bx, by], ] = step;
          [ax, ay] = [round((ax + across) * scale), round((ay + down) * scale)];
          [bx, by] = [round((bx + across) * scale), round((by + down) * scale)];
          [letter, text] = ["c", ` ${ax - x} ${ay - y} ${bx - x} ${by - y} ${ex - x} ${ey - y}`];
        } else if (((same(ex, x)) && (same(ey, y)))) {
          continue;
        } else {
          [letter, text] = ["l", ` ${ex - x} ${ey - y}`];
        }
        parts.push((same(letter, last)) ? text : (letter + text));
        [last, x, y] = [letter, ex, ey];
      }
      if (truth(path.closed)) {
        parts.push("z");
      }
      return _closer(parts.join(""));
    }
    function _closer(data) {
      return data.replaceAll(" -", "-").replaceAll("c ", "c").replaceAll("l ", "l");
    }
    function markup(marks, pattern, scale = SCALE, across = 0) {
      let found, pen, group, written, mark, stroke;
      found = [];
      pen = null;
      group = 0;
      written = [];
      const close = () => {
        let extra, fill, base;
        if (((pen == null) || !truth(written))) {
          return;
        }
        extra = truth(pen.line) ? (new Map([["vector-effect", "non-scaling-stroke"]])) : (new Map([]));
        if ((pen === CLOTH)) {
          fill = truth(pattern) ? (`url(#${pattern})`) : "Canvas";
          base = new Map([["fill", fill], ["stroke", "none"]]);
          if (!truth(pattern)) {
            base.set("class", "ground");
          }
        } else {
          base = new Map(pen.attributes());
        }
        found.push(tag("path", new Map([...base, ...extra, ["d", written.join("")]])));
      };
      for (mark of marks) {
        stroke = mark.stroke;
        if (((stroke.pen !== pen) || ((pen.fill === "ground") && (!same(mark.group, group))))) {
          close();
          [pen, written, group] = [stroke.pen, [], mark.group];
        }
        written.push(data(stroke.path, scale, across));
      }
      close();
      return found;
    }
    return { INK, PAPER, SCALE, Sheet, markup, whole };
  })();
  
  const figure = (() => {
    const LEVELS = ["underarm", "bust", "waist", "high-hip", "hip", "crotch", "thigh", "knee", "calf", "floor"];
    class Figure {
      constructor(name, levels, girth, straight, neck, slope, arm) { this.name = name; this.levels = levels; this.girth = girth; this.straight = straight; this.neck = neck; this.slope = slope; this.arm = arm; }
      y(level) {
        return item(this.levels, level);
      }
      get scale() {
        return item(this.levels, "floor") / 138;
      }
    }
    function _figure(name, heights, girth, straight, neck, slope, arm) {
      return new Figure(name, new Map(zip(LEVELS, heights)), girth, straight, neck, slope, arm);
    }
    const WOMAN = _figure("woman", [20, 27, 40, 50, 60, 71, 80, 99, 115, 138], 1, 0, 6.4, 4.4, 57);
    const MAN = _figure("man", [22, 29, 44, 53, 62, 75, 84, 103, 120, 145], 1.12, 0.62, 7, 4.2, 62);
    const CHILD = _figure("child", [14, 19, 27, 34, 40, 48, 54, 66, 78, 94], 0.78, 0.55, 5.3, 3, 39);
    const INFANT = _figure("infant", [10.5, 13, 18, 22, 26, 31, 35, 42, 49, 58], 0.62, 0.8, 4.6, 2.2, 25);
    const FIGURES = new Map([["woman", WOMAN], ["man", MAN], ["girl", CHILD], ["boy", CHILD], ["infant", INFANT], ["any", WOMAN]]);
    function figure_for(who) {
      return get(FIGURES, who, WOMAN);
    }
    return { LEVELS, figure_for };
  })();
  
  const periods = (() => {
    const NEUTRAL_YEAR = 1920;
    class Period {
      constructor(start, silhouette, waist, length, cut, sleeve, neckline, shoulder) { this.start = start; this.silhouette = silhouette; this.waist = waist; this.length = length; this.cut = cut; this.sleeve = sleeve; this.neckline = neckline; this.shoulder = shoulder; }
    }
    const PERIODS = [new Period(0, "fitted-flared", "natural", "ground", "gathered", "elbow", "square", 15), new Period(1795, "empire", "raised", "instep", "gathered", "puff-short", "scoop", 14.5), new Period(1822, "fitted-flared", "natural", "ankle", "gathered", "gigot", "boat", 15), new Period(1837, "fitted-flared", "basque-point", "ground", "gathered", "long-fitted", "high", 15.5), new Period(1852, "crinoline-bell", "natural", "ground", "gathered", "pagoda", "high", 15.5), new Period(1868, "bustle-back", "natural", "ground", "draped", "long-fitted", "high", 14.5), new Period(1889, "hourglass", "natural", "ground", "gored", "gigot", "high", 14), new Period(1897.5, "s-bend", "pouched", "ground", "gored", "bishop", "high", 14.5), new Period(1907.5, "columnar", "raised", "ground", "gored", "set-in-long", "high", 15), new Period(1910.5, "columnar", "raised", "instep", "straight", "kimono", "round", 15.5), new Period(1914.5, "fitted-flared", "raised", "above-ankle", "gored", "set-in-long", "v", 15.5), new Period(1918.5, "barrel", "natural", "above-ankle", "gathered", "kimono", "round", 16), new Period(1921.5, "tubular", "low", "mid-calf", "straight", "short", "round", 16.6), new Period(1925.5, "tubular", "low", "knee", "straight", "set-in-long", "v", 16.6), new Period(1929.5, "bias-cling", "natural", "mid-calf", "bias-cut", "set-in-long", "v", 16.6), new Period(1936.5, "fitted-flared", "natural", "below-knee", "gored", "puff-short", "v", 18.6), new Period(1947, "fitted-flared", "natural", "mid-calf", "circular", "short", "round", 16.4), new Period(1958, "a-line", "natural", "knee", "straight", "sleeveless", "round", 16.2), new Period(1965, "a-line", "no-waist", "above-knee", "straight", "sleeveless", "round", 15.8), new Period(1972, "loose", "natural", "mid-calf", "gathered", "set-in-long", "v", 16.2)];
    function period_of(year) {
      return item(PERIODS, Math.max(0, bisect_right([...PERIODS].map((period) => period.start), year) - 1));
    }
    function gigot_fullness(year) {
      if ((year < 1860)) {
        return _between(year, [[1818, 0.3], [1829, 1], [1836, 1], [1838, 0.25]]);
      }
      return _between(year, [[1888, 0.28], [1892, 0.55], [1894, 0.95], [1896.6, 1], [1898, 0.42], [1909, 0.4]]);
    }
    function leg_width(year) {
      return _between(year, [[1885, 19], [1905, 21], [1915, 20], [1923, 22], [1926, 26], [1934, 27], [1950, 24]]);
    }
    function _between(year, knots) {
      let left, low, right, high;
      if ((year <= knots[0][0])) {
        return knots[0][1];
      }
      for ([[left, low], [right, high]] of pairwise(knots)) {
        if ((year <= right)) {
          return low + (((high - low) * (year - left)) / (right - left));
        }
      }
      return knots.at(-1)[1];
    }
    const SILHOUETTES = new Map([["hourglass", [14.6, 15.4, 10, 15.6, 19.8, 23, 25.8, 32, 38, 47]], ["s-bend", [14.6, 16, 10.4, 14.8, 18.4, 20.2, 21.6, 25.5, 31, 45.5]], ["columnar", [15.6, 16, 13.4, 16.2, 17.6, 18.2, 18.5, 19, 19.6, 21.5]], ["hobble", [15.6, 16, 13.4, 18.4, 20.4, 20.6, 20, 17, 14.8, 14.4]], ["tubular", [15.6, 16, 15.6, 16.4, 17.6, 18.1, 18.5, 19.4, 20, 21]], ["barrel", [15.8, 16.2, 14.2, 19.5, 23.6, 25.2, 25.2, 22.6, 19.2, 16]], ["bias-cling", [15.2, 15.4, 11.8, 15.2, 17.4, 17.4, 17.2, 19.2, 24, 34]], ["a-line", [15.4, 16, 14.8, 18.8, 22, 25.4, 28, 34, 38.5, 45]], ["fitted-flared", [15.4, 16, 11.6, 17, 21, 24.8, 27.6, 33.5, 38.5, 45]], ["crinoline-bell", [15.4, 16, 10.8, 25, 34, 39.5, 43, 48, 50.5, 52]], ["bustle-back", [14.8, 15.6, 11, 16, 18.8, 20.6, 22, 24.6, 27.5, 33]], ["empire", [15, 15.6, 15.4, 17.2, 18.6, 19.8, 20.8, 22.6, 24.4, 28]], ["loose", [16.4, 17.4, 19.8, 22, 24, 26.2, 28, 31.5, 34.5, 38.5]]]);
    return { NEUTRAL_YEAR, SILHOUETTES, gigot_fullness, leg_width, period_of };
  })();
  
  const outline = (() => {
    const { LEVELS } = figure;
    const { Path, smooth } = paths;
    const { SILHOUETTES } = periods;
    const CUTS = new Map([["straight", 0.72], ["hobble-cut", 0.8], ["wrap-skirt", 0.85], ["circular", 1.12], ["umbrella", 1.15], ["gathered", 1.08], ["godet-skirt", 1.06], ["divided", 1.05], ["tiered", 1.1], ["flounced", 1.06]]);
    class Outline {
      constructor(figure, neck, shoulder, underarm, side, heights, halves, hem, dip, waist, neckline = "round", depth = 0, top = 0) { this.figure = figure; this.neck = neck; this.shoulder = shoulder; this.underarm = underarm; this.side = side; this.heights = heights; this.halves = halves; this.hem = hem; this.dip = dip; this.waist = waist; this.neckline = neckline; this.depth = depth; this.top = top; }
      half(y) {
        let at, low, high, share;
        at = bisect_left(this.heights, y);
        if ((at === 0)) {
          return this.halves[0];
        }
        if ((same(at, this.heights.length))) {
          return this.halves.at(-1);
        }
        [low, high] = [item(this.heights, at - 1), item(this.heights, at)];
        share = (high > low) ? ((y - low) / (high - low)) : 0;
        return item(this.halves, at - 1) + ((item(this.halves, at) - item(this.halves, at - 1)) * share);
      }
      across(y, dip = null) {
        let half, bend;
        half = this.half(y);
        bend = (dip == null) ? Math.min(0.05 * half, 1.6) : dip;
        return new Path([-half, y]).bend([0, y + (2 * bend)], [half, y]);
      }
      down(share, top, bottom, lean = 0) {
        let places;
        places = [...range(4)].map((step) => (top + (((bottom - top) * step) / 3)));
        return smooth(...([...enumerate(places)].map(([step, y]) => [this.half(y) * (share + ((lean * step) / 3)), y])));
      }
      on_shoulder(x) {
        let neck, slope, span;
        [neck, slope] = [this.figure.neck, this.figure.slope];
        span = Math.max(1, this.shoulder[0] - neck);
        return (slope * Math.max(0, x - neck)) / span;
      }
      armhole() {
        let sx, sy, ux, uy;
        [[sx, sy], [ux, uy]] = [this.shoulder, this.underarm];
        if ((this.neckline === "halter")) {
          return new Path([sx, sy]).curve([sx + 0.6, sy + ((uy - sy) * 0.5)], [ux * 0.72, uy - 4], [ux, uy]);
        }
        if ((this.neckline === "off-shoulder")) {
          return new Path([sx, sy]).bend([sx + 0.2, uy - 3], [ux, uy]);
        }
        return new Path([sx, sy]).curve([Math.min(sx, ux) - 0.8, sy + ((uy - sy) * 0.45)], [Math.min(sx, ux) - 0.9, uy - 2.2], [ux, uy]);
      }
      hem_line(inset = 0) {
        let y, half;
        y = this.hem - inset;
        half = this.half(y);
        return new Path([half, y]).bend([0, y + (2 * this.dip)], [-half, y]);
      }
    }
    function profile(figure, silhouette, cut, waist, ease) {
      let breadths, hip, keep, found, level, breadth, y, wide;
      breadths = item(SILHOUETTES, silhouette);
      hip = item(breadths, LEVELS.indexOf("hip"));
      keep = get(CUTS, cut || "", 1);
      if (((["barrel", "hobble", "crinoline-bell", "s-bend"].includes(silhouette)) && (keep < 1))) {
        keep = (keep + 1) / 2;
      }
      found = [];
      for ([level, breadth] of zip(LEVELS, breadths)) {
        [y, wide] = [figure.y(level), breadth];
        if ((y > figure.y("hip"))) {
          wide = (breadth > hip) ? (hip + ((breadth - hip) * keep)) : breadth;
        }
        if ((level === "waist")) {
          wide += (breadths[0] > breadth) ? ((breadths[0] - breadth) * figure.straight) : 0;
          if (((waist != null) && (waist < y) && (!["loose", "a-line"].includes(silhouette)))) {
            y = waist;
          }
        }
        if (((waist != null) && (waist > (figure.y("waist") + 4)) && (["waist", "high-hip"].includes(level)))) {
          wide = Math.max(Math.min(wide, breadths[0] + 1.2), breadths[0] * 0.96);
        }
        found.push([(wide * figure.girth) * ease, y]);
      }
      return found;
    }
    function trimmed(points, top, bottom) {
      let inner;
      const at = (y) => {
        let a, low, b, high;
        for ([[a, low], [b, high]] of pairwise(points)) {
          if ((low <= y && y <= high)) {
            return [a + (((b - a) * (y - low)) / (high - low)), y];
          }
        }
        return (y > points.at(-1)[1]) ? [points.at(-1)[0], y] : [points[0][0], y];
      };
      inner = [...points].filter((point) => ((top + 1.5) < point[1] && point[1] < (bottom - 1.5))).map((point) => point);
      return [at(top), ...inner, at(bottom)];
    }
    function sampled(side) {
      let heights, halves, x, y;
      heights = [];
      halves = [];
      for ([x, y] of side.points(4)) {
        if ((!truth(heights) || (y > heights.at(-1)))) {
          heights.push(y);
          halves.push(x);
        }
      }
      return [[...heights], [...halves]];
    }
    return { Outline, profile, sampled, trimmed };
  })();
  
  const bodies = (() => {
    const { Outline, profile, sampled, trimmed } = outline;
    const { Path, smooth } = paths;
    const { SILHOUETTES, leg_width } = periods;
    const LENGTHS = new Map([["train", ["floor", 0]], ["ground", ["floor", -0.5]], ["instep", ["floor", -4.5]], ["ankle", ["floor", -9.5]], ["above-ankle", ["floor", -15]], ["mid-calf", ["calf", 0]], ["below-knee", ["knee", 7]], ["knee", ["knee", 0.5]], ["above-knee", ["knee", -9]], ["handkerchief-uneven", ["calf", -4]]]);
    const GROWN_ON = new Map([["kimono", 4.5], ["dolman", 11]]);
    const WAISTS = new Map([["natural", ["waist", 0]], ["raised", ["waist", -5.5]], ["low", ["hip", -4]], ["dropped-hip", ["hip", 3.5]], ["basque-point", ["waist", 0]], ["pouched", ["waist", 0]], ["yoked-waist", ["waist", 0]]]);
    const NECKS = new Map([["high", [0, 6.6]], ["jewel", [0.6, 8.2]], ["round", [1.6, 11]], ["square", [3, 15]], ["v", [1, 22]], ["sweetheart", [3.8, 18.5]], ["boat", [6.6, 6.2]], ["scoop", [3.8, 19]], ["cowl", [3.2, 14.5]], ["halter", [-1.6, 17]], ["surplice", [1, 25]], ["keyhole", [0.6, 8.2]], ["slit", [0.6, 8.2]], ["off-shoulder", [9, 17]], ["one-shoulder", [3, 11.6]], ["u", [3, 22]], ["henley", [1, 9.6]]]);
    class Legs {
      constructor(path, waist, fork, hem, outer, inner, free) { this.path = path; this.waist = waist; this.fork = fork; this.hem = hem; this.outer = outer; this.inner = inner; this.free = free; }
      across(inset) {
        let y, outer, inner;
        y = this.hem - inset;
        [outer, inner] = this._at(y);
        return new Path([inner, y]).bend([(inner + outer) / 2, y + 1.2], [outer, y]);
      }
      _at(y) {
        let points, found;
        points = this.path.points(4);
        found = [...zip(points, [...points.slice(1), points[0]])].filter(([a, b]) => ((a[1] <= y) !== (b[1] <= y))).map(([a, b]) => (a[0] + (((b[0] - a[0]) * (y - a[1])) / (b[1] - a[1]))));
        return truth(found) ? [maxOf(found), minOf(found)] : [this.outer, this.inner];
      }
    }
    function level_of(figure, place) {
      return figure.y(place[0]) + (place[1] * figure.scale);
    }
    function neck_of(figure, neckline, sleeve, shoulder) {
      let wide, depth, size, x, slope;
      [wide, depth] = get(NECKS, neckline, item(NECKS, "round"));
      size = figure.girth;
      x = figure.neck + (wide * size);
      if ((sleeve === "strap")) {
        x = Math.max(x, figure.neck + (3.4 * size));
        depth = Math.max(depth, 15.5);
      }
      x = Math.min(x, shoulder[0] - 1.6);
      slope = (figure.slope * Math.max(0, x - figure.neck)) / Math.max(1, shoulder[0] - figure.neck);
      return [[x, slope], depth * Math.min(1, 0.35 + ((0.65 * item(figure.levels, "waist")) / 40))];
    }
    function body_of(build, figure, period, silhouette, neckline, sleeve, waist, cut, length) {
      let level, seam, ease, points, top, shoulder_half, bottom, side, heights, halves, shoulder, neck, depth, half, dip;
      level = get(WAISTS, waist.id);
      seam = (level == null) ? null : level_of(figure, level);
      silhouette = (has(SILHOUETTES, silhouette)) ? silhouette : "tubular";
      ease = build.ease;
      if (((silhouette === "loose") && (!["skirt", ""].includes(build.body)) && (build.shape !== "loose"))) {
        [silhouette, ease] = ["tubular", ease * 1.07];
      }
      points = profile(figure, silhouette, cut || null, seam, ease);
      top = figure.y("underarm");
      shoulder_half = ((figure.name === "woman") ? period.shoulder : (17 * figure.girth)) * Math.min(1.06, build.ease);
      if ((["child", "infant"].includes(figure.name))) {
        shoulder_half = (13.8 * figure.girth) / 0.78;
      }
      if ((["sleeveless", "strap"].includes(sleeve))) {
        shoulder_half -= 1.6 * figure.girth;
      }
      if ((sleeve === "strap")) {
        shoulder_half = figure.neck + (5.4 * figure.girth);
      }
      bottom = _bottom(build, figure, length);
      if (truth(build.skirt)) {
        top = (seam != null) ? seam : figure.y("waist");
      }
      if ((["sleeveless", "strap"].includes(sleeve))) {
        top += !truth(build.skirt) ? (1.5 * figure.scale) : 0;
      }
      if (((has(GROWN_ON, sleeve)) && !truth(build.skirt))) {
        top += item(GROWN_ON, sleeve) * figure.scale;
      }
      points = trimmed(points, top, bottom);
      side = smooth(...points);
      if (((waist.id === "pouched") && !truth(build.skirt) && (seam != null))) {
        side = _pouch(points, seam, figure);
      }
      [heights, halves] = sampled(side);
      shoulder = [shoulder_half, figure.slope];
      [neck, depth] = neck_of(figure, neckline, sleeve, shoulder);
      if ((neckline === "off-shoulder")) {
        [neck, shoulder] = [[points[0][0] - 1.2, top - 5.5], [points[0][0] - 0.4, top - 5]];
      }
      if ((neckline === "halter")) {
        neck = [neck[0], -0.6];
        shoulder = [neck[0] + (2.2 * figure.girth), neck[1] + 0.3];
      }
      depth = Math.min(depth, (seam || bottom) - 4);
      half = halves.at(-1);
      dip = Math.min(0.04 * half, 2.2) + ((half > 30) ? 0.4 : 0);
      return new Outline(figure, neck, shoulder, points[0], side, heights, halves, bottom, dip, seam, neckline, depth, top);
    }
    function _bottom(build, figure, length) {
      if ((build.body === "brassiere")) {
        return figure.y("bust") + (6 * figure.scale);
      }
      if (((build.body === "skirt") || truth(build.skirt))) {
        return level_of(figure, get(LENGTHS, length, item(LENGTHS, "knee")));
      }
      return figure.y(build.body);
    }
    function _pouch(points, seam, figure) {
      let s, above, below, narrow, fold, path;
      s = figure.girth;
      above = [...points].filter((point) => (point[1] < (seam - 4))).map((point) => point);
      below = [...points].filter((point) => (point[1] > (seam + 2))).map((point) => point);
      narrow = minOf([...points].map(([x, ]) => x));
      fold = [((above.at(-1)[0] * 0.5) + (narrow * 0.5)) + (0.6 * s), seam - 1.6];
      path = smooth(...above, [above.at(-1)[0] * 0.94, seam - 7], fold);
      path = path.curve([fold[0] - 0.6, seam - 0.2], [narrow + 0.4, seam - 0.4], [narrow, seam + 0.2]);
      return truth(below) ? path.through(...below) : path;
    }
    function legs_of(build, figure, year, outline, edge, wide) {
      let s, size, waist, fork, hip, waist_half, hip_half, kind, hem, outer, inner, width, top, side, middle, right, inside;
      [s, size] = [figure.scale, figure.girth];
      waist = figure.y("waist") - (1 * s);
      fork = figure.y("crotch") + (2 * s);
      hip = figure.y("hip");
      waist_half = (13 + (2.6 * figure.straight)) * size;
      hip_half = 18.2 * size;
      kind = build.legs;
      if ((kind === "trunk")) {
        hem = fork + (((year < 1924) ? 11 : ((year < 1932) ? 7.5 : 2.5)) * s);
        if ((edge === "short-skirt-leg")) {
          hem += 3 * s;
        }
        [outer, inner] = [hip_half + (0.6 * s), 1.6 * s];
      } else if ((kind === "thigh")) {
        [hem, outer, inner] = [figure.y("thigh") + (8 * s), 21 * size, 1.4];
      } else if ((kind === "knee")) {
        [hem, outer, inner] = [figure.y("knee") - (4 * s), 21.5 * size, 2.2];
      } else if ((kind === "below-knee")) {
        [hem, outer, inner] = [figure.y("knee") + (9 * s), 16.5 * size, 3.4];
      } else {
        width = (leg_width(year) * s) * wide;
        hem = figure.y("floor") - (3 * s);
        [outer, inner] = [1.8 + width, 1.8];
      }
      top = waist;
      if (((outline != null) && (build.body !== "brassiere"))) {
        top = ((build.body === "hip") && (outline.waist != null)) ? outline.waist : outline.hem;
        top = Math.min(top, fork - 1.5);
        [waist_half, hip_half] = [outline.half(top), Math.max(hip_half, outline.half(hip) - 0.4)];
        if ((build.body === "hip")) {
          [waist_half, hip_half] = [waist_half - 0.4, outline.half(outline.hem) - 0.4];
        }
        if (((build.body === "crotch") && (kind === "trunk"))) {
          hip_half = outline.half(hip);
          outer = Math.max(outer, hip_half);
          top = outline.hem;
        }
      }
      side = [[waist_half, top]];
      if ((top < (hip - 4))) {
        side.push(...[[((waist_half + hip_half) / 2) + (1.1 * s), (top + hip) / 2], [hip_half, hip]]);
      } else if ((top < (hip + 4))) {
        side.push(...[[hip_half, hip + 3]]);
      }
      if ((hem > (hip + (30 * s)))) {
        middle = (outer > hip_half) ? ((hip_half + outer) / 2) : ((hip_half * 0.45) + (outer * 0.55));
        side.push([middle, (hip + hem) / 2]);
      }
      side.push([outer, hem]);
      right = smooth(...side);
      inside = right.bend([(inner + outer) / 2, hem + 1.4], [inner, hem]);
      inside = inside.curve([inner, hem - ((hem - fork) * 0.4)], [0.9, fork + ((hem - fork) * 0.25)], [0, fork]);
      return new Legs(inside.to([0, top]).close(), top, fork, hem, outer, inner, top);
    }
    return { GROWN_ON, body_of, legs_of };
  })();
  
  const necks = (() => {
    const { FAINT, LINE, WASH } = hand;
    const { whole } = ink;
    const { Path, smooth } = paths;
    const STANDING = ["boned-stand", "stand", "mandarin", "wing", "eton"];
    function neckline(outline, inset = 0) {
      let x, y, d, start, kind, fall, lobe;
      [[x, y], d] = [outline.neck, outline.depth];
      x += inset;
      y = (!["off-shoulder", "halter"].includes(outline.neckline)) ? outline.on_shoulder(x) : (y + (inset * 0.3));
      d += inset * ((["v", "surplice"].includes(outline.neckline)) ? 1.6 : 1);
      [start, kind] = [new Path([x, y]), outline.neckline];
      fall = d - y;
      if ((["v", "surplice"].includes(kind))) {
        return start.curve([x - 0.6, y + (fall * 0.3)], [x * 0.45, y + (fall * 0.72)], [0, d]);
      }
      if ((kind === "square")) {
        return start.to([x - 0.9, d]).bend([x * 0.5, d + 0.5], [0, d + 0.5]);
      }
      if ((kind === "sweetheart")) {
        lobe = [x - 0.4, d - (fall * 0.42)];
        return start.to(lobe).curve([x - 1.4, d - 1.2], [x * 0.4, d - 2.2], [0, d]);
      }
      if ((kind === "boat")) {
        return start.curve([x * 0.7, y + (fall * 0.75)], [x * 0.3, d], [0, d]);
      }
      if ((kind === "u")) {
        return start.curve([x - 0.6, y + (fall * 0.75)], [x * 0.85, d], [0, d]);
      }
      if ((kind === "off-shoulder")) {
        return start.curve([x * 0.7, y + 2], [x * 0.3, d - 3.2], [0, d - 3]);
      }
      if ((kind === "halter")) {
        return start.curve([x + 0.2, y + (fall * 0.45)], [x * 0.45, y + (fall * 0.8)], [0, d]);
      }
      if ((kind === "one-shoulder")) {
        return start.curve([x - 1, y + (fall * 0.4)], [x * 0.5, d - (x * 0.26)], [0, d]);
      }
      if ((kind === "cowl")) {
        return start.curve([x - 0.4, y + (fall * 0.5)], [x * 0.7, d], [0, d]);
      }
      return start.curve([x + 0.2, y + (fall * 0.58)], [x * 0.62, d], [0, d]);
    }
    function slant(outline, inset = 0) {
      let line, x, y, low;
      [line, [x, y]] = [neckline(outline, inset), outline.underarm];
      low = y + inset;
      return line.curve([(-x) * 0.35, line.end[1] + (x * 0.18)], [(-x) * 0.78, low - 2.4], [(0.4 * inset) - x, low]);
    }
    function back_top(outline) {
      if ((outline.neckline === "halter")) {
        return outline.underarm[1] + 3;
      }
      return (["off-shoulder", "one-shoulder"].includes(outline.neckline)) ? outline.depth : outline.neck[1];
    }
    function back_neck(outline, inset = 0) {
      let x, y, ux, uy, low, deep;
      [x, y] = outline.neck;
      if ((["off-shoulder", "one-shoulder"].includes(outline.neckline))) {
        return neckline(outline, inset);
      }
      if ((outline.neckline === "halter")) {
        [[ux, uy], low] = [outline.underarm, back_top(outline) + inset];
        return new Path([ux, uy + inset]).bend([ux * 0.6, low], [0, low]);
      }
      deep = (y + 1.4) + ((["boat", "scoop", "off-shoulder"].includes(outline.neckline)) ? 1 : 0);
      return new Path([x + inset, y]).bend([x * 0.5, deep + inset], [0, deep + inset]);
    }
    function draw_behind(work) {
      let outline, front, back, seen, area;
      outline = work.outline;
      if (((outline == null) || truth(work.build.skirt) || truth(work.back))) {
        return;
      }
      if ((["halter", "one-shoulder"].includes(outline.neckline))) {
        return;
      }
      [front, back] = [neckline(outline), back_neck(outline)];
      seen = back.reverse().then(front);
      area = seen.then(seen.mirror(0).reverse()).close();
      work.sheet.put("neck", WASH, area);
      work.sheet.both("neck", FAINT, back);
    }
    function draw_neckline(work) {
      let outline, pen, sheet, d, line, kind, waist, start, end, x, y, deep, wide;
      outline = work.outline;
      if (((outline == null) || truth(work.build.skirt))) {
        return;
      }
      [pen, sheet, d] = [work.edge(work.chosen.neckline), work.sheet, outline.depth];
      if ((outline.neckline === "one-shoulder")) {
        sheet.put("neck", LINE, truth(work.back) ? slant(outline).mirror(0) : slant(outline));
        return;
      }
      if (truth(work.back)) {
        sheet.both("neck", LINE, back_neck(outline));
        if ((outline.neckline === "halter")) {
          _round_the_neck(work, outline);
        }
        return;
      }
      line = neckline(outline);
      sheet.both("neck", pen, line);
      kind = outline.neckline;
      if ((kind === "keyhole")) {
        sheet.put("neck", pen, new Path([0, d]).curve([3.4, d + 3], [2.6, d + 8], [0, d + 8]).curve([-2.6, d + 8], [-3.4, d + 3], [0, d]));
      } else if ((["slit", "henley"].includes(kind))) {
        sheet.put("neck", pen, new Path([0, d]).to([0, d + (11 * work.s)]));
        if ((kind === "henley")) {
          sheet.both("neck", pen, new Path([1.4, d]).to([1.4, d + 11.6]).to([0, d + 11.6]));
        }
      } else if ((kind === "surplice")) {
        waist = work.waist;
        start = outline.depth * 0.86;
        end = [(-outline.half(waist)) * 0.55, waist];
        sheet.put("neck", pen, new Path([0, d]).curve([-2.5, d + 3], [end[0] * 0.8, ((start + waist) / 2) + 4], end));
      } else if ((kind === "cowl")) {
        [x, y] = outline.neck;
        for ([deep, wide] of [[3.2, 0.2], [7, 1.2], [11, 2.6]]) {
          sheet.put("neck", FAINT, smooth([(-x) - wide, (y + 2) + (deep * 0.5)], [0, d + deep], [x + wide, (y + 2) + (deep * 0.5)]));
        }
      } else if ((kind === "halter")) {
        [x, y] = outline.neck;
        sheet.both("neck", pen, new Path([x, y]).bend([x * 0.6, y - 1.4], [0, y - 1.6]));
      }
    }
    function _round_the_neck(work, outline) {
      let x, y, sx, sy, band;
      [[x, y], [sx, sy]] = [outline.neck, outline.shoulder];
      band = new Path([0, y - 0.8]).bend([x * 0.6, y - 0.6], [x, y]).to([sx, sy + 0.8]);
      work.sheet.cloth("collar", whole(band.bend([x * 0.7, sy + 1.4], [0, sy + 1.2])));
      work.sheet.both("neck", LINE, band.bend([x * 0.7, sy + 1.4], [0, sy + 1.2]));
    }
    return { STANDING, back_neck, back_top, draw_behind, draw_neckline, neckline, slant };
  })();
  
  const skirts = (() => {
    const { FAINT, LINE } = hand;
    const { Path, smooth, waved } = paths;
    function draw_hem(work) {
      let outline, pen;
      outline = work.outline;
      if (((outline == null) || ((work.build.legs === "trunk") && (work.build.body === "crotch")))) {
        return;
      }
      pen = truth(work.has_skirt) ? work.edge(work.chosen.length) : LINE;
      work.sheet.put("hem", pen, hem_edge(work, outline));
    }
    function hem_edge(work, outline) {
      let line, edges, half, y, dip, feature, kind;
      line = outline.hem_line();
      edges = [...work.record.all("lower-edge")].filter((feature) => ([null, "skirt", "hem"].includes(feature.at))).map((feature) => feature);
      [half, y, dip] = [outline.halves.at(-1), outline.hem, outline.dip];
      if (!truth(work.has_skirt)) {
        return line;
      }
      for (feature of edges) {
        kind = partition(feature.term || "", "/")[2];
        if ((kind === "scalloped")) {
          work.record.drew(feature);
          return waved(line, (-1.7) * work.s, 11, "scallops");
        }
        if ((kind === "vandyked")) {
          work.record.drew(feature);
          return waved(line, (-2.4) * work.s, 11, "points");
        }
        if ((kind === "handkerchief")) {
          work.record.drew(feature);
          return hem_of_points(outline);
        }
      }
      if ((work.chosen.length.id === "handkerchief-uneven")) {
        return hem_of_points(outline);
      }
      if ((work.chosen.length.id === "train")) {
        return new Path([half, y]).curve([half + 3, y + 1.4], [half * 0.5, (y + 3) + dip], [0, y + (2 * dip)]).curve([(-half) * 0.5, (y + 3) + dip], [(-half) - 3, y + 1.4], [-half, y]);
      }
      return line;
    }
    function hem_of_points(outline) {
      let half, y;
      [half, y] = [outline.halves.at(-1), outline.hem];
      return new Path([half, y]).bend([half * 0.86, y + 8], [half * 0.8, y + 10]).bend([half * 0.6, y + 1], [half * 0.38, y - 3]).bend([half * 0.14, y + 3], [0, y + 4]).bend([(-half) * 0.14, y + 3], [(-half) * 0.38, y - 3]).bend([(-half) * 0.6, y + 1], [(-half) * 0.8, y + 10]).bend([(-half) * 0.86, y + 8], [-half, y]);
    }
    function draw_waist(work) {
      let outline, choice, pen, sheet, s, y, share, half, deep, wide, low;
      [outline, choice] = [work.outline, work.chosen.waist];
      if ((outline == null)) {
        return;
      }
      [pen, sheet, s] = [work.edge(choice), work.sheet, work.s];
      if (truth(work.build.skirt)) {
        sheet.put("waist", pen, outline.across(outline.top), outline.across(outline.top + (3.2 * s)));
        return;
      }
      y = outline.waist;
      if ((choice.id === "princess")) {
        for (share of [0.42]) {
          sheet.both("waist", pen, smooth([outline.shoulder[0] * 0.62, outline.on_shoulder(outline.shoulder[0] * 0.62)], ...([...[outline.underarm[1], work.figure.y("waist"), work.figure.y("hip"), outline.hem - 1]].map((level) => [outline.half(level) * share, level]))));
        }
        return;
      }
      if (((y == null) || (y > (outline.hem - 3)))) {
        return;
      }
      half = outline.half(y);
      if ((choice.id === "basque-point")) {
        sheet.both("waist", pen, new Path([half, y]).curve([half * 0.6, y + 1], [half * 0.3, y + (5 * s)], [0, y + (8 * s)]));
      } else if ((choice.id === "pouched")) {
        deep = (1890 <= work.year && work.year < 1908) ? (6 * s) : (2 * s);
        wide = outline.half(y - 1.6);
        sheet.put("waist", pen, new Path([wide, y - 1.6]).curve([wide * 0.6, y + 1.5], [wide * 0.35, y + deep], [0, y + deep]).curve([(-wide) * 0.35, y + deep], [(-wide) * 0.6, y + 1.5], [-wide, y - 1.6]));
        for (share of [0.2, 0.46, 0.72]) {
          sheet.faint("waist", new Path([wide * share, (y + (deep * (1 - (share * share)))) - 0.8]).bend([(wide * share) * 1.05, y - (4 * s)], [(wide * share) * 1.1, y - (9 * s)]));
        }
      } else if ((choice.id === "yoked-waist")) {
        low = y + (9 * s);
        sheet.put("waist", pen, outline.across(y), outline.across(low));
      } else {
        sheet.put("waist", pen, outline.across(y));
      }
    }
    function draw_folds(work) {
      let outline, choice, top, make;
      [outline, choice] = [work.outline, work.chosen.cut];
      if (((outline == null) || !truth(work.has_skirt))) {
        return;
      }
      top = truth(work.build.skirt) ? (outline.top + (3.2 * work.s)) : (outline.waist || work.figure.y("hip"));
      if (((outline.hem - top) < 8)) {
        return;
      }
      make = get(_CUTS, choice.id);
      if ((make == null)) {
        return;
      }
      make(work, outline, top);
    }
    function _folds(work, outline, shares, reach, top) {
      let hem, share, lift;
      hem = outline.hem;
      for (share of shares) {
        lift = ((outline.dip * 2) * (1 - (share * share))) * 0.55;
        work.sheet.faint("folds", outline.down(share * 0.94, hem - ((hem - top) * reach), (hem - 0.6) + lift, share * 0.06));
      }
    }
    function _straight(work, outline, top) {
      _folds(work, outline, [0.45], 0.22, top);
    }
    function _gored(work, outline, top) {
      let hem, share;
      hem = outline.hem + outline.dip;
      for (share of ((outline.halves.at(-1) < 30) ? [0.34] : [0.3, 0.66])) {
        work.sheet.both("seam", work.edge(work.chosen.cut), outline.down(share, top, hem - 0.5));
      }
      if ((outline.halves.at(-1) > 28)) {
        _folds(work, outline, [0.16, 0.48, 0.84], 0.36, top);
      }
    }
    function _circular(work, outline, top) {
      _folds(work, outline, [0.2, 0.46, 0.74], 0.72, top);
      _folds(work, outline, [0.33, 0.6, 0.88], 0.4, top);
    }
    function _gathered(work, outline, top) {
      let long, place, share, reach, start;
      if (((outline.waist == null) && !truth(work.build.skirt))) {
        _folds(work, outline, [0.16, 0.5, 0.82], 0.62, outline.underarm[1] + 8);
        _folds(work, outline, [0.33, 0.66], 0.34, outline.underarm[1] + 8);
        return;
      }
      long = (outline.hem - top) * 0.3;
      for (place of range(6)) {
        share = 0.08 + (0.16 * place);
        reach = long * item([1, 0.55], mod(place, 2));
        start = top + (((2 * _bend(outline, top)) * (1 - (share * share))) * 0.5);
        work.sheet.faint("gathers", outline.down(share, start, top + reach, 0.02));
      }
      _folds(work, outline, [0.24, 0.55, 0.82], 0.34, top);
    }
    function _bend(outline, y) {
      return Math.min(0.05 * outline.half(y), 1.6);
    }
    function _pleated(work, outline, top) {
      let hem, place, share;
      hem = outline.hem + outline.dip;
      for (place of range(6)) {
        share = 0.08 + (0.16 * place);
        work.sheet.both("pleats", work.edge(work.chosen.cut), outline.down(share, top, hem - ((outline.dip * share) * share)));
      }
    }
    function _tiered(work, outline, top, count = 3) {
      let step, tier, y, place, share;
      step = (outline.hem - top) / count;
      for (tier of range(count)) {
        y = top + (step * tier);
        if (truth(tier)) {
          work.sheet.put("tiers", work.edge(work.chosen.cut), outline.across(y));
        }
        for (place of range(5)) {
          share = 0.1 + (0.2 * place);
          work.sheet.faint("gathers", outline.down(share, (y + (((2 * _bend(outline, y)) * (1 - (share * share))) * 0.5)) + 0.3, y + (step * item([0.5, 0.3], mod(place, 2)))));
        }
      }
    }
    function _flounced(work, outline, top) {
      let y, place, share;
      y = outline.hem - ((outline.hem - top) * 0.24);
      work.sheet.put("tiers", work.edge(work.chosen.cut), outline.across(y));
      for (place of range(7)) {
        share = 0.06 + (0.135 * place);
        work.sheet.faint("gathers", outline.down(share, (y + (((2 * _bend(outline, y)) * (1 - (share * share))) * 0.5)) + 0.3, y + ((outline.hem - y) * item([0.66, 0.4], mod(place, 2)))));
      }
    }
    function _draped(work, outline, top) {
      let sheet, x, y, deep, share, low, end;
      sheet = work.sheet;
      [x, y] = [outline.half(top + 8) - 0.6, top + 8];
      for ([deep, share] of [[8, 0.95], [16, 0.92], [25, 0.86], [36, 0.7]]) {
        low = Math.min(y + deep, outline.hem - 3);
        end = [(-outline.half(low)) * share, low];
        sheet.put("folds", FAINT, new Path([x, y]).curve([x * 0.4, y + (deep * 0.9)], [(-x) * 0.3, low + 2], end));
      }
    }
    function _tunic(work, outline, top) {
      let y, share;
      y = top + ((outline.hem - top) * 0.58);
      work.sheet.put("tunic", work.edge(work.chosen.cut), outline.across(y));
      work.sheet.put("tunic", FAINT, outline.across(y - 0.9));
      for (share of [0.35, 0.72]) {
        work.sheet.faint("folds", outline.down(share, y - ((y - top) * 0.35), y - 0.2));
      }
    }
    function _hobble(work, outline, top) {
      let y;
      y = work.figure.y("knee") + 3;
      if ((y < (outline.hem - 6))) {
        work.sheet.put("band", work.edge(work.chosen.cut), outline.across(y));
      }
      _folds(work, outline, [0.4], 0.5, top);
    }
    function _bias(work, outline, top) {
      let start, half;
      start = top + (truth(work.record.has("yoke/hip-yoke")) ? 15 : 11);
      half = outline.half(start);
      work.sheet.both("seam", work.edge(work.chosen.cut), new Path([half, start]).bend([half * 0.5, start + 8], [0, start + 13]));
      _folds(work, outline, [0.18, 0.42, 0.66, 0.88], 0.42, top);
    }
    function _godets(work, outline, top) {
      draw_godets(work, 3);
    }
    function draw_godets(work, count) {
      let outline, hem, high, shares, share, tip, low, left, right;
      outline = work.outline;
      if ((outline == null)) {
        return;
      }
      hem = outline.hem;
      high = hem - Math.min(30 * work.figure.scale, (hem - work.waist) * 0.42);
      shares = (count > 2) ? [0.36, 0.78] : [0.55];
      for (share of shares) {
        tip = [outline.half(high) * share, high];
        low = hem + (outline.dip * (1 - (share * share)));
        [left, right] = [outline.half(hem) * (share - 0.15), outline.half(hem) * Math.min(0.98, share + 0.15)];
        work.sheet.both("godet", LINE, new Path([left, low]).bend([tip[0] - 0.4, high + 9], tip).bend([tip[0] + 0.6, high + 9], [right, low - 0.5]));
      }
    }
    function _wrapped(work, outline, top) {
      let hem;
      hem = outline.hem + outline.dip;
      work.sheet.put("seam", work.edge(work.chosen.cut), smooth([outline.half(top) * 0.5, top + 0.6], [outline.half(top + 20) * 0.46, top + 20], [outline.half(outline.hem) * 0.4, hem - 0.5]));
      _folds(work, outline, [0.7], 0.3, top);
    }
    function _divided(work, outline, top) {
      let hem;
      hem = outline.hem + outline.dip;
      work.sheet.put("seam", work.edge(work.chosen.cut), new Path([0, top + 1]).to([0, hem]));
      work.sheet.faint("folds", new Path([0.4, top + 16]).bend([3, hem - 20], [outline.half(hem) * 0.2, hem - 1]));
    }
    const _CUTS = new Map([["straight", _straight], ["gored", _gored], ["circular", _circular], ["umbrella", _circular], ["gathered", _gathered], ["pleated-all", _pleated], ["tiered", _tiered], ["flounced", _flounced], ["draped", _draped], ["tunic-over", _tunic], ["hobble-cut", _hobble], ["bias-cut", _bias], ["godet-skirt", _godets], ["wrap-skirt", _wrapped], ["divided", _divided]]);
    return { draw_folds, draw_godets, draw_hem, draw_waist, hem_edge, hem_of_points };
  })();
  
  const garments = (() => {
    class Build {
      constructor(body = "skirt", legs = "", skirt = false, open = false, shape = "", ease = 1, neck = "", collar = "none", sleeve = "", waist = "", length = "", cut = "", frame = "whole", head = "", under = false) { this.body = body; this.legs = legs; this.skirt = skirt; this.open = open; this.shape = shape; this.ease = ease; this.neck = neck; this.collar = collar; this.sleeve = sleeve; this.waist = waist; this.length = length; this.cut = cut; this.frame = frame; this.head = head; this.under = under; }
    }
    const DRESS = new Build();
    const SKIRT = new Build("", undefined, true, undefined, undefined, undefined, undefined, undefined, undefined, undefined, undefined, undefined, "lower");
    const LOOSE = new Build(undefined, undefined, undefined, undefined, "loose", undefined, undefined, undefined, undefined, "no-waist", undefined, "gathered");
    const TOP = new Build("high-hip", undefined, undefined, undefined, undefined, undefined, undefined, undefined, undefined, undefined, undefined, "straight", "upper");
    const SUIT = new Build("crotch", "trunk", undefined, undefined, "tubular", 0.97, "scoop", undefined, "sleeveless", "no-waist", undefined, "straight", "suit");
    const GARMENTS = new Map([["dress", DRESS], ["evening-dress", new Build(undefined, undefined, undefined, undefined, undefined, undefined, "scoop", undefined, "short")], ["tea-gown", new Build(undefined, undefined, undefined, undefined, "loose", undefined, undefined, undefined, undefined, "no-waist", "ground")], ["maternity-dress", new Build(undefined, undefined, undefined, undefined, undefined, 1.08)], ["blouse", TOP], ["jumper-blouse", replace(TOP, { body: "hip", shape: "tubular", waist: "no-waist", sleeve: "short", neck: "v" })], ["middy-blouse", replace(TOP, { body: "hip", shape: "tubular", ease: 1.1, waist: "no-waist", collar: "sailor", sleeve: "set-in-long", neck: "v" })], ["shirt", replace(TOP, { body: "crotch", shape: "tubular", ease: 1.08, waist: "no-waist", neck: "high", collar: "shirt-collar", sleeve: "shirt-sleeve" })], ["jumper", replace(TOP, { body: "hip", shape: "tubular", ease: 1.03, waist: "no-waist", neck: "v", sleeve: "set-in-long" })], ["cardigan", replace(TOP, { body: "hip", shape: "tubular", ease: 1.05, waist: "no-waist", neck: "v", sleeve: "set-in-long", open: true })], ["waistcoat", replace(TOP, { neck: "v", sleeve: "sleeveless", waist: "no-waist", shape: "tubular", open: true })], ["jacket", new Build("crotch", undefined, undefined, true, "tubular", 1.1, "v", "notched", "two-piece-coat", "no-waist", undefined, "straight", "jacket")], ["coat", new Build("skirt", undefined, undefined, true, undefined, 1.12, "v", "notched", "two-piece-coat", "no-waist", "mid-calf")], ["costume-suit", new Build("crotch", undefined, undefined, true, undefined, 1.06, "v", "notched", "two-piece-coat", "no-waist", undefined, undefined, undefined, undefined, true)], ["lounge-suit", new Build("crotch", "floor", undefined, true, "tubular", 1.1, "v", "notched", "two-piece-coat", "no-waist", undefined, "straight")], ["wrap", new Build(undefined, undefined, undefined, true, "loose", 1.05, "high", undefined, "cape-sleeve", "no-waist", "below-knee")], ["bathing-wrap", new Build(undefined, undefined, undefined, true, "loose", undefined, "v", "shawl", "kimono", "no-waist", "mid-calf")], ["skirt", SKIRT], ["petticoat", new Build("", undefined, true, undefined, undefined, undefined, undefined, undefined, undefined, undefined, undefined, "gathered", "lower")], ["crinoline", new Build("", undefined, true, undefined, "crinoline-bell", undefined, undefined, undefined, undefined, "natural", undefined, undefined, "lower")], ["trousers", new Build("", "floor", undefined, undefined, undefined, undefined, undefined, undefined, undefined, undefined, undefined, undefined, "lower")], ["shorts", new Build("", "thigh", undefined, undefined, undefined, undefined, undefined, undefined, undefined, undefined, undefined, undefined, "seat")], ["knickerbockers", new Build("", "below-knee", undefined, undefined, undefined, undefined, undefined, undefined, undefined, undefined, undefined, undefined, "lower")], ["drawers", new Build("", "knee", undefined, undefined, undefined, undefined, undefined, undefined, undefined, undefined, undefined, undefined, "seat")], ["bathing-wear", SUIT], ["bathing-dress", new Build("skirt", "below-knee", undefined, undefined, "fitted-flared", 1.02, "v", undefined, "short", "natural", "above-knee", "gathered", "bather")], ["bathing-suit", SUIT], ["bathing-two-piece", replace(SUIT, { body: "brassiere", neck: "sweetheart", sleeve: "strap" })], ["bathing-trunks", new Build("", "trunk", undefined, undefined, "tubular", undefined, undefined, undefined, undefined, undefined, undefined, undefined, "seat")], ["beach-pyjamas", new Build("hip", "floor", undefined, undefined, "bias-cling", 1.04, "v", undefined, "sleeveless", "natural", undefined, "straight")], ["nightwear", LOOSE], ["nightdress", LOOSE], ["nightshirt", new Build(undefined, undefined, undefined, undefined, "loose", 0.96, "high", "shirt-collar", "shirt-sleeve", "no-waist", "below-knee", "straight")], ["pyjamas", new Build("crotch", "floor", undefined, true, "tubular", 1.1, "v", undefined, "set-in-long", "no-waist", undefined, "straight")], ["dressing-gown", new Build(undefined, undefined, undefined, true, "loose", 0.98, "v", "shawl", "set-in-long", "natural", "instep", "straight")], ["underwear", new Build(undefined, undefined, undefined, undefined, "tubular", undefined, "scoop", undefined, "strap", "no-waist", "knee")], ["chemise", new Build(undefined, undefined, undefined, undefined, "loose", 0.9, "scoop", undefined, "cap", "no-waist", "knee")], ["slip", new Build(undefined, undefined, undefined, undefined, undefined, undefined, "scoop", undefined, "strap", "no-waist")], ["combinations", new Build("crotch", "knee", undefined, undefined, undefined, undefined, "scoop", undefined, "strap", "no-waist", undefined, "straight", "bather")], ["camisole", replace(TOP, { neck: "scoop", sleeve: "strap" })], ["brassiere", new Build("brassiere", undefined, undefined, undefined, "tubular", undefined, "scoop", undefined, "strap", "no-waist", undefined, "straight", "upper")], ["corset", new Build("hip", undefined, undefined, undefined, undefined, undefined, "off-shoulder", undefined, "sleeveless", "natural", undefined, "straight", "upper")], ["child-frock", new Build(undefined, undefined, undefined, undefined, "a-line", undefined, "round", undefined, "short", "low", "above-knee", "gathered")], ["infant-gown", new Build(undefined, undefined, undefined, undefined, "a-line", undefined, "round", undefined, "set-in-long", "no-waist", "ground", "gathered")], ["overall", new Build(undefined, undefined, undefined, undefined, "a-line", 1.06, "square", undefined, "sleeveless", "no-waist", undefined, "straight")], ["child-suit", new Build("hip", "thigh", undefined, undefined, "tubular", 1.06, "high", "turnover", "set-in-long", "natural", undefined, "straight")], ["sailor-suit", new Build("hip", "thigh", undefined, undefined, "tubular", 1.08, "v", "sailor", "set-in-long", "no-waist", undefined, "straight")], ["romper", new Build("crotch", "trunk", undefined, undefined, "loose", 0.9, "round", undefined, "short", "no-waist", undefined, "straight")], ["hat", new Build("", undefined, undefined, undefined, undefined, undefined, undefined, undefined, undefined, undefined, undefined, undefined, "head", "hat")], ["headwear", new Build("", undefined, undefined, undefined, undefined, undefined, undefined, undefined, undefined, undefined, undefined, undefined, "head", "hat")], ["cap", new Build("", undefined, undefined, undefined, undefined, undefined, undefined, undefined, undefined, undefined, undefined, undefined, "head", "cap")], ["bathing-cap", new Build("", undefined, undefined, undefined, undefined, undefined, undefined, undefined, undefined, undefined, undefined, undefined, "head", "bathing-cap")]]);
    function build_of(chain, year) {
      let garment;
      for (garment of chain) {
        if ((has(GARMENTS, garment))) {
          return _by_year(garment, item(GARMENTS, garment), year);
        }
      }
      return null;
    }
    function _by_year(garment, build, year) {
      let length;
      if ((garment === "evening-dress")) {
        if ((year >= 1921.5)) {
          build = replace(build, { sleeve: "sleeveless", neck: "v" });
        }
        if ((year >= 1929.5)) {
          build = replace(build, { length: "ground" });
        }
      } else if ((["blouse", "camisole"].includes(garment))) {
        if ((1897.5 <= year && year < 1909)) {
          build = replace(build, { waist: "pouched" });
        } else if (((year >= 1921.5) && (year < 1931))) {
          build = replace(build, { body: "hip", waist: "no-waist", shape: "tubular" });
        } else {
          build = replace(build, { waist: "natural" });
        }
      } else if ((["nightdress", "nightwear"].includes(garment))) {
        if ((year < 1912)) {
          build = replace(build, { length: "ground", neck: "high", sleeve: "set-in-long" });
        } else if ((year < 1930)) {
          length = (year < 1922) ? "instep" : "mid-calf";
          build = replace(build, { length: length, neck: "v", sleeve: "kimono", ease: 0.86 });
        } else {
          build = replace(build, { shape: "bias-cling", length: "ankle", neck: "v", sleeve: "cap", cut: "bias-cut" });
        }
      } else if (((garment === "slip") && (year < 1930))) {
        build = replace(build, { shape: "tubular" });
      } else if (((["child-frock"].includes(garment)) && !(1905 <= year && year < 1931))) {
        build = replace(build, { waist: (year < 1905) ? "no-waist" : "natural" });
      } else if ((garment === "costume-suit")) {
        build = replace(build, { shape: (year < 1921) ? "fitted-flared" : "tubular" });
      } else if (((garment === "tea-gown") && (year < 1915))) {
        build = replace(build, { sleeve: "bishop", neck: "high" });
      } else if (((garment === "wrap") && (year >= 1915))) {
        build = replace(build, { neck: "v" });
      }
      return build;
    }
    return { SKIRT, build_of };
  })();
  
  const record = (() => {
    const UNDRAWN = new Map([["fabric", "a line does not tell this cloth from another"], ["colour", "not told by line or tone"], ["closure", "no place for such an opening on this garment"], ["fastening", "no opening recorded that it could close"], ["trim", "no place for it on this garment as drawn"], ["seam", "too small to show in a whole garment"]]);
    class Choice {
      constructor(id, feature = null) { this.id = id; this.feature = feature; }
      get assumed() {
        return (this.feature == null) && (this.id !== "none");
      }
    }
    class Record {
      constructor(features, fate = new Map(), assumed = []) { this.features = features; this.fate = fate; this.assumed = assumed; }
      _shown(facet) {
        return [...enumerate(this.features)].filter(([place, feature]) => ((same(feature.facet, facet)) && (feature.state === "shown") && !truth(get(this.fate, place)))).map(([place, feature]) => feature);
      }
      all(facet) {
        return this._shown(facet);
      }
      has(...keys) {
        let place, feature;
        for ([place, feature] of enumerate(this.features)) {
          if (((has(keys, feature.term)) && (feature.state === "shown") && !truth(get(this.fate, place)))) {
            return feature;
          }
        }
        return null;
      }
      none(facet) {
        return [...this.features].map((feature) => ((same(feature.facet, facet)) && (feature.state === "none"))).some(truth);
      }
      choose(facet, default_, allowed = null) {
        let feature, name;
        for (feature of this._shown(facet)) {
          name = _id(feature);
          if (((allowed == null) || truth(allowed(name)))) {
            this.drew(feature);
            return new Choice(name, feature);
          }
        }
        if (this.none(facet)) {
          return new Choice("none");
        }
        if ((default_ !== "none")) {
          this.assumed.push(`${facet}/${default_}`);
        }
        return new Choice(default_);
      }
      drew(...features) {
        let feature;
        for (feature of features) {
          if ((feature != null)) {
            setdefault(this.fate, this._place(feature), "");
          }
        }
      }
      leave(feature, reason) {
        this.fate.set(this._place(feature), reason);
      }
      _place(feature) {
        let place, each;
        for ([place, each] of enumerate(this.features)) {
          if ((each === feature)) {
            return place;
          }
        }
        throw new Error("a feature of another plate");
      }
      left() {
        return [...enumerate(this.features)].filter(([place, feature]) => ((feature.state === "shown") && (get(this.fate, place, "-") !== ""))).map(([place, feature]) => [feature, get(this.fate, place) || get(UNDRAWN, feature.facet, "no line for it on this garment")]);
      }
      drawn() {
        return [...enumerate(this.features)].filter(([place, feature]) => (get(this.fate, place) === "")).map(([place, feature]) => feature);
      }
    }
    function _id(feature) {
      return partition(feature.term || "", "/")[2];
    }
    function term_id(feature) {
      return _id(feature);
    }
    return { Choice, Record, term_id };
  })();
  
  const work = (() => {
    const { FAINT, LINE } = hand;
    const { Sheet } = ink;
    const { Choice } = record;
    const NONE = new Choice("none");
    class Chosen {
      constructor(silhouette = NONE, neckline = NONE, collar = NONE, sleeve = NONE, waist = NONE, cut = NONE, length = NONE, closure = NONE) { this.silhouette = silhouette; this.neckline = neckline; this.collar = collar; this.sleeve = sleeve; this.waist = waist; this.cut = cut; this.length = length; this.closure = closure; }
    }
    class Work {
      constructor(record, build, figure, period, year, chosen, outline, legs, back = false, sheet = new Sheet(), sleeve_end = null, sleeve_outer = null, opening = null, fold = 0, collar_edge = null, flap = null, under = null, seams = []) { this.record = record; this.build = build; this.figure = figure; this.period = period; this.year = year; this.chosen = chosen; this.outline = outline; this.legs = legs; this.back = back; this.sheet = sheet; this.sleeve_end = sleeve_end; this.sleeve_outer = sleeve_outer; this.opening = opening; this.fold = fold; this.collar_edge = collar_edge; this.flap = flap; this.under = under; this.seams = seams; }
      get s() {
        return this.figure.girth;
      }
      edge(choice) {
        return truth(choice.assumed) ? FAINT : LINE;
      }
      get waist() {
        if (((this.outline != null) && (this.outline.waist != null))) {
          return this.outline.waist;
        }
        return this.figure.y("waist");
      }
      get has_skirt() {
        return (this.outline != null) && (this.build.skirt || (this.build.body === "skirt"));
      }
    }
    return { Chosen, Work };
  })();
  
  const heads = (() => {
    const { FAINT, GROUND, LINE } = hand;
    const { Path, ring } = paths;
    function draw_head(work) {
      let kind, year, sheet, crown, brim;
      [kind, year, sheet] = [work.build.head, work.year, work.sheet];
      if ((kind === "bathing-cap")) {
        sheet.cloth("hat", new Path([-9.2, 6]).curve([-11, -8], [11, -8], [9.2, 6]).bend([0, 9], [-9.2, 6]).close());
        sheet.put("hat", LINE, new Path([-9.2, 6]).curve([-11, -8], [11, -8], [9.2, 6]).bend([0, 9], [-9.2, 6]).close());
        sheet.put("hat", FAINT, new Path([-9.4, 3.6]).bend([0, 6.6], [9.4, 3.6]));
        return;
      }
      if ((kind === "cap")) {
        sheet.put("hat", GROUND, new Path([-9, 5]).curve([-15, -2], [-9, -7], [0, -7]).curve([9, -7], [15, -2], [9, 5]).close());
        sheet.put("hat", GROUND, new Path([-9, 5]).bend([0, 2.6], [9, 5]).curve([7, 9.6], [-7, 9.6], [-9, 5]).close());
        return;
      }
      if ((1922 <= year && year < 1932)) {
        crown = new Path([-9.6, 9]).curve([-12.5, -9], [12.5, -9], [9.6, 9]);
        brim = new Path([-9.6, 6]).curve([-15, 11], [-7, 15], [0, 13]).curve([7, 15], [15, 11], [9.6, 6]).bend([0, 10], [-9.6, 6]).close();
        sheet.put("hat", GROUND, crown, brim);
      } else if ((1908 <= year && year < 1915)) {
        sheet.put("hat", GROUND, ring([0, 7], 26, 5.5));
        sheet.put("hat", GROUND, new Path([-11, 7]).curve([-14, -8], [14, -8], [11, 7]).bend([0, 10.5], [-11, 7]).close());
      } else if ((year < 1908)) {
        sheet.put("hat", GROUND, ring([0, 8], 18, 3.8));
        sheet.put("hat", GROUND, new Path([-8.8, 8]).to([-8.4, -1.5]).bend([0, -3], [8.4, -1.5]).to([8.8, 8]).bend([0, 11], [-8.8, 8]).close());
      } else {
        sheet.put("hat", GROUND, ring([0, 8], 20, 4.4));
        sheet.put("hat", GROUND, new Path([-9, 8]).curve([-10.5, -6], [10.5, -6], [9, 8]).bend([0, 11], [-9, 8]).close());
      }
    }
    return { draw_head };
  })();
  
  const collars = (() => {
    const { FAINT, GROUND, LINE, TINT } = hand;
    const { whole } = ink;
    const { neckline } = necks;
    const { Path, evenly, ring, smooth, waved } = paths;
    function draw_collar(work) {
      let outline, kind, make;
      outline = work.outline;
      kind = work.chosen.collar.id;
      if (((outline == null) || truth(work.build.skirt) || (kind === "none"))) {
        return;
      }
      if ((truth(work.back) && (!["sailor", "bertha", "boned-stand", "stand", "mandarin", "wing"].includes(kind)))) {
        if ((has(BACKS, kind))) {
          _back_collar(work, item(BACKS, kind));
        }
        return;
      }
      make = get(_MAKERS, kind);
      if ((make != null)) {
        make(work);
      }
    }
    const BACKS = new Map([["peter-pan", 5.6], ["turnover", 4.4], ["shirt-collar", 3.4], ["eton", 6], ["shawl", 5], ["notched", 4.4], ["ruffle", 3.4]]);
    function _back_collar(work, wide) {
      let x, y, s, w, tip, half;
      [[x, y], , s] = _points(work);
      w = wide * s;
      tip = [x + (w * 0.75), work.outline.on_shoulder(x + (w * 0.75))];
      half = new Path([0, y - (1.6 * s)]).bend([x * 0.6, y - (1.6 * s)], [x - 0.3, y - (0.6 * s)]).to(tip);
      half = half.curve([tip[0] - 0.4, y + (w * 1.1)], [x * 0.6, (y + w) + 1.2], [0, (y + w) + 1.2]);
      _lay(work, whole(half), new Named({ both: false }));
      work.collar_edge = new Path(tip).curve([tip[0] - 0.4, y + (w * 1.1)], [x * 0.6, (y + w) + 1.2], [0, (y + w) + 1.2]);
    }
    function _lay(work, ...areas) {
      const { both = true } = named(areas);
      let lay, feature;
      lay = truth(both) ? bound(work.sheet, "both") : bound(work.sheet, "put");
      lay("collar", GROUND, ...areas);
      if ((truth(work.record.has("colour/contrast-two-colour")) || [...work.record.all("fabric")].map((feature) => (feature.at === "collar")).some(truth))) {
        lay("collar", TINT, ...areas);
        for (feature of [...work.record.all("fabric"), ...work.record.all("colour")]) {
          if ((feature.at === "collar")) {
            work.record.drew(feature);
          }
        }
      }
    }
    function _points(work) {
      return [work.outline.neck, work.outline.depth, work.s];
    }
    function _stand(work, height, spread) {
      let x, y, d, s, front, dip, rise, area, top;
      [[x, y], d, s] = _points(work);
      front = truth(work.back) ? (y + 1) : Math.min(d, 7 * s);
      dip = truth(work.back) ? (-0.6) : 3.4;
      rise = height * s;
      area = new Path([x, y + 0.4]).to([x - (spread * s), y - rise]).bend([0, (y - rise) + (dip * s)], [(-x) + (spread * s), y - rise]).to([-x, y + 0.4]).curve([(-x) * 0.9, front], [(-x) * 0.3, front + 1], [0, front + 1]).curve([x * 0.3, front + 1], [x * 0.9, front], [x, y + 0.4]).close();
      top = new Path([x - (spread * s), y - rise]).bend([0, (y - rise) - (2 * s)], [(-x) + (spread * s), y - rise]);
      if (!truth(work.back)) {
        work.sheet.put("collar", FAINT, top);
      }
      _lay(work, area, new Named({ both: false }));
      work.collar_edge = new Path([x - (spread * s), y - rise]).curve([x * 0.5, (y - rise) + (1.6 * s)], [x * 0.2, (y - rise) + (1.7 * s)], [0, (y - rise) + (1.7 * s)]);
    }
    function _boned(work) {
      let x, y, s, share, bone;
      _stand(work, 6.2, 0.9);
      [[x, y], , s] = _points(work);
      for (share of [0.33, 0.78]) {
        bone = new Path([x * share, (y + (5 * s)) - ((3.6 * share) * s)]).to([(x * share) * 0.95, (y - (4.4 * s)) - ((share * 0.8) * s)]);
        work.sheet.faint("collar", bone);
      }
    }
    function _low_stand(work) {
      _stand(work, 3.4, 0.6);
    }
    function _mandarin(work) {
      let y, d, s;
      _stand(work, 3.2, 0.5);
      [[, y], d, s] = _points(work);
      work.sheet.put("collar", LINE, new Path([0, Math.min(d, 7 * s) + 1]).to([0, y - (1.4 * s)]));
    }
    function _wing(work) {
      let x, y, s, tip;
      _stand(work, 4.6, 0.6);
      [[x, y], , s] = _points(work);
      tip = new Path([0.4, y - (2.6 * s)]).to([x * 0.72, y + (0.6 * s)]).to([x * 0.72, y - (3.1 * s)]).close();
      _lay(work, tip);
    }
    function _turned(work, wide, tip, round_end) {
      let x, y, d, s, line, w, shoulder, end, edge, corner, back, inner, area;
      [[x, y], d, s] = _points(work);
      line = neckline(work.outline);
      w = wide * s;
      shoulder = [x + w, work.outline.on_shoulder(x + w) + 0.4];
      end = [Math.max(1, x * 0.16), d + (tip * s)];
      if (truth(round_end)) {
        edge = new Path(shoulder).curve([(x + w) + 0.6, (y + ((d - y) * 0.6)) + (w * 0.4)], [(x * 0.85) + (w * 0.5), d + ((tip * 1.3) * s)], end);
        edge = edge.curve([0.4, d + ((tip * 0.8) * s)], [0, d + ((tip * 0.3) * s)], [0, d]);
      } else {
        corner = [(x * 0.62) + (w * 0.35), d + (tip * s)];
        edge = new Path(shoulder).curve([x + w, y + ((d - y) * 0.5)], [corner[0] + (w * 0.4), d], corner).to([0, d]);
      }
      back = new Path([x - 0.4, y - (1.2 * s)]).bend([x + (w * 0.6), y - (0.6 * s)], shoulder);
      inner = line.reverse();
      area = back.then(edge).then(inner).close();
      _lay(work, area);
      work.sheet.both("collar", LINE, new Path([x - 0.4, y - (1.2 * s)]).bend([x * 0.5, y - (1.9 * s)], [0, y - (1.9 * s)]));
      work.collar_edge = edge;
    }
    function _peter_pan(work) {
      _turned(work, 5.4, 5.4, true);
    }
    function _turnover(work) {
      _turned(work, 4, 4.2, false);
    }
    function _shirt(work) {
      _turned(work, 2.6, 6, false);
    }
    function _eton(work) {
      _turned(work, 6, 6, true);
    }
    function _sailor(work) {
      let outline, x, y, d, s, w, deep, half, low, end, edge, area;
      outline = work.outline;
      [[x, y], d, s] = _points(work);
      if (truth(work.back)) {
        w = Math.min(outline.shoulder[0] - 0.6, x + (9 * s));
        deep = outline.underarm[1] - (2 * s);
        half = new Path([0, y + 1.2]).bend([x * 0.5, y + 1.2], [x, y]).to([w, outline.on_shoulder(w)]);
        half = half.to([w - (1 * s), deep]).to([0, deep]);
        _lay(work, whole(half), new Named({ both: false }));
        work.collar_edge = new Path([w, outline.on_shoulder(w)]).to([w - (1 * s), deep]).to([0, deep]);
        return;
      }
      w = Math.min(outline.shoulder[0] - 0.4, x + (8.6 * s));
      low = [w - (1.6 * s), Math.min(outline.underarm[1] - (3 * s), d * 0.75)];
      end = d + (2 * s);
      edge = new Path([w, outline.on_shoulder(w)]).to(low).curve([low[0] * 0.7, low[1] + (1.6 * s)], [2.5 * s, end - (4 * s)], [0, end]);
      area = new Path([x - 0.4, y - 1]).to([w, outline.on_shoulder(w)]).then(edge).then(neckline(outline).reverse()).close();
      _lay(work, area);
      work.sheet.both("collar", LINE, new Path([x - 0.4, y - 1]).bend([x * 0.5, y - (1.6 * s)], [0, y - (1.6 * s)]));
      work.collar_edge = edge;
    }
    function _shawl(work) {
      let x, y, d, s, w, shoulder, edge, area;
      [[x, y], d, s] = _points(work);
      w = 4.6 * s;
      shoulder = [x + (w * 0.8), work.outline.on_shoulder(x + (w * 0.8))];
      edge = new Path(shoulder).curve([x + (w * 1.3), y + ((d - y) * 0.42)], [(x * 0.7) + (w * 0.6), d * 0.8], [0, d + (3.2 * s)]);
      area = new Path([x - 0.3, y - (1.6 * s)]).bend([x + (1.6 * s), y - (1 * s)], shoulder).then(edge);
      area = area.then(neckline(work.outline).reverse()).close();
      _lay(work, area);
      work.sheet.both("collar", LINE, new Path([x - 0.3, y - (1.6 * s)]).bend([x * 0.5, y - (2.3 * s)], [0, y - (2.3 * s)]));
      work.collar_edge = edge;
    }
    function _notched(work) {
      let x, y, d, s, gorge, shoulder, collar_tip, lapel_tip, notch, inner, area, on_roll;
      [[x, y], d, s] = _points(work);
      gorge = y + ((d - y) * 0.42);
      shoulder = [x + (2.6 * s), work.outline.on_shoulder(x + (2.6 * s))];
      collar_tip = [x + (2.4 * s), gorge + (0.4 * s)];
      lapel_tip = [x + (4.8 * s), gorge + (1.6 * s)];
      notch = [x + (0.4 * s), gorge + (2.6 * s)];
      inner = neckline(work.outline);
      area = new Path([x - 0.3, y - (1.6 * s)]).to(shoulder).to(collar_tip, notch, lapel_tip);
      area = area.curve([x + (2.6 * s), d * 0.78], [2 * s, d + 0.5], [0, d + (2.4 * s)]).then(inner.reverse()).close();
      _lay(work, area);
      on_roll = [x * 0.72, gorge - (0.6 * s)];
      work.sheet.both("collar", LINE, new Path(notch).to(on_roll), new Path([x - 0.3, y - (1.6 * s)]).bend([x * 0.5, y - (2.3 * s)], [0, y - (2.3 * s)]));
      work.collar_edge = new Path(lapel_tip).curve([x + (2.6 * s), d * 0.78], [2 * s, d + 0.5], [0, d + (2.4 * s)]);
    }
    function _revers(work) {
      let x, y, d, s, tip, area;
      [[x, y], d, s] = _points(work);
      tip = [Math.min(x + (6.4 * s), work.outline.shoulder[0] - 1), y + ((d - y) * 0.4)];
      area = new Path([x, y]).to(tip).curve([x + (3 * s), d * 0.72], [2.6 * s, d], [0, d + (1.6 * s)]);
      area = area.then(neckline(work.outline).reverse()).close();
      _lay(work, area);
      work.collar_edge = new Path(tip).curve([x + (3 * s), d * 0.72], [2.6 * s, d], [0, d + (1.6 * s)]);
    }
    function _bertha(work) {
      let outline, x, y, d, s, tip, deep, edge, outer, share;
      outline = work.outline;
      [[x, y], d, s] = _points(work);
      tip = [outline.shoulder[0] + (1.6 * s), outline.shoulder[1] + (5 * s)];
      deep = Math.max(d + (6.5 * s), 16 * s);
      edge = new Path(tip).curve([tip[0] - 2, deep - 2], [x, deep], [0, deep]);
      outer = new Path([x, y]).to(outline.shoulder).bend([tip[0] + 0.4, tip[1] - 3], tip);
      _lay(work, outer.then(edge).then(neckline(outline).reverse()).close());
      for (share of [0.34, 0.68]) {
        work.sheet.faint("collar", new Path([tip[0] * share, (deep - 0.4) - ((3 * share) * share)]).to([((x * share) * 0.98) + (1.2 * share), (d * (1 - (share * 0.4))) + 2.4]));
      }
      work.collar_edge = edge;
    }
    function _ruffle(work) {
      let line, edge, inner, inner_spots, outer_spots, a, b;
      line = neckline(work.outline, 3 * work.s);
      edge = waved(line, 0.8 * work.s, 7, "wave");
      inner = neckline(work.outline);
      _lay(work, new Path(inner.start).then(edge).then(inner.reverse()).close());
      [inner_spots, outer_spots] = [evenly(inner, 8), evenly(line, 8)];
      for ([[a, ], [b, ]] of zip(inner_spots, outer_spots)) {
        work.sheet.faint("collar", new Path(a).to([(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]));
      }
      work.collar_edge = line;
    }
    function _jabot(work) {
      let x, y, d, s, deep_neck, top, deep, wide, fall, lean;
      [[x, y], d, s] = _points(work);
      deep_neck = d > (11 * s);
      top = truth(deep_neck) ? (d - (7 * s)) : Math.min(d, 8 * s);
      deep = top + ((truth(deep_neck) ? 19 : 17) * s);
      wide = truth(deep_neck) ? (((x * 7) * s) / Math.max(1, d - y)) : 0.4;
      fall = new Path([0, top + (truth(deep_neck) ? 1.2 : 0)]).to([wide, top]);
      fall = fall.curve([wide + (2.2 * s), top + 2], [5.4 * s, top + (5 * s)], [4.8 * s, top + (8 * s)]);
      fall = fall.curve([3.4 * s, top + (7.4 * s)], [6.2 * s, top + (12 * s)], [4.6 * s, top + (14 * s)]);
      _lay(work, whole(fall.curve([3.2 * s, top + (13 * s)], [3.6 * s, deep], [0, deep])), new Named({ both: false }));
      for (lean of [0, 1]) {
        work.sheet.faint("collar", smooth([((wide * 0.5) + 0.3) + lean, top + 2], [(1.4 * s) + lean, top + (7 * s)], [(1 * s) + (1.4 * lean), top + (13 * s)]));
      }
      work.collar_edge = new Path([x, y]).curve([x * 0.9, top], [2, top], [0, top]);
    }
    function _tie(work) {
      let d, s;
      [, d, s] = _points(work);
      draw_bow(work, "collar", [0, Math.min(d, 24 * s)], 5.6 * s, 9.5 * s);
    }
    function draw_bow(work, part, spot, wide, fall) {
      let x, y, loop, end, piece;
      [x, y] = spot;
      loop = new Path([x, y]).curve([x + (wide * 0.4), y - (wide * 0.62)], [x + wide, y - (wide * 0.5)], [x + wide, y]);
      loop = loop.curve([x + wide, y + (wide * 0.42)], [x + (wide * 0.4), y + (wide * 0.3)], [x, y]).close();
      end = new Path([x + 0.2, y + 0.4]).curve([x + (wide * 0.3), y + (fall * 0.4)], [x + (wide * 0.3), y + (fall * 0.7)], [x + (wide * 0.5), y + fall]);
      end = end.to([x + (wide * 0.08), y + (fall * 0.96)]).curve([x + (wide * 0.1), y + (fall * 0.6)], [x - (wide * 0.02), y + (fall * 0.3)], [x - 0.1, y + 0.4]).close();
      for (piece of [end, loop]) {
        work.sheet.put(part, GROUND, piece, piece.mirror(x));
      }
      work.sheet.put(part, GROUND, ring([x, y], wide * 0.16, wide * 0.19));
    }
    const _MAKERS = new Map([["boned-stand", _boned], ["stand", _low_stand], ["mandarin", _mandarin], ["wing", _wing], ["peter-pan", _peter_pan], ["turnover", _turnover], ["shirt-collar", _shirt], ["eton", _eton], ["sailor", _sailor], ["shawl", _shawl], ["notched", _notched], ["revers", _revers], ["bertha", _bertha], ["ruffle", _ruffle], ["jabot", _jabot], ["tie-bow", _tie]]);
    return { draw_bow, draw_collar };
  })();
  
  const closures = (() => {
    const { draw_bow } = collars;
    const { FAINT, GROUND, LINE } = hand;
    const { back_top } = necks;
    const { Path, at, box, length, ring, smooth } = paths;
    const { term_id } = record;
    const BUTTONS = ["buttons", "pearl-buttons", "shank-buttons", "celluloid-buttons", "phenolic-buttons"];
    function draw_closure(work) {
      let outline, record, found, parted, feature;
      [outline, record] = [work.outline, work.record];
      found = [...record.all("closure")].map((feature) => feature);
      parted = work.build.open && (![...found].map((f) => (["side-front", "wrap-over"].includes(term_id(f)))).some(truth));
      if ((truth(parted) && !truth(work.back) && (outline != null))) {
        _front(work, outline, outline.hem + outline.dip);
      }
      for (feature of found) {
        if (_open(work, outline, term_id(feature), feature)) {
          record.drew(feature);
        }
      }
    }
    function _open(work, outline, kind, feature) {
      let sheet, s, y, low, top, x, start, x2, line, begin, waist, nx, ny, sx, sy, strap;
      [sheet, s] = [work.sheet, work.s];
      if ((kind === "slip-on")) {
        return true;
      }
      if (((kind === "crotch") && (work.legs != null))) {
        y = work.legs.fork;
        sheet.put("opening", LINE, new Path([(-3) * s, y - 2.2]).bend([0, y - 1.2], [3 * s, y - 2.2]));
        if ((work.opening == null)) {
          work.opening = new Path([(-2.4) * s, y - 2]).to([2.4 * s, y - 2]);
        }
        return true;
      }
      if ((outline == null)) {
        return _on_legs(work, kind);
      }
      if ((kind === "back")) {
        if (!truth(work.back)) {
          return false;
        }
        low = Math.min(outline.hem - 1, work.waist + (truth(work.has_skirt) ? (16 * s) : 0));
        top = truth(work.build.skirt) ? (outline.top + 0.4) : (back_top(outline) + 1.5);
        work.opening = new Path([0, top]).to([0, low]);
        sheet.put("opening", LINE, work.opening);
        return true;
      }
      if ((kind === "back-yoke")) {
        if (!truth(work.back)) {
          return false;
        }
        top = back_top(outline) + 1.5;
        work.opening = new Path([0, top]).to([0, Math.max(outline.underarm[1] - 4, top + (6 * s))]);
        sheet.put("opening", LINE, work.opening);
        return true;
      }
      if (truth(work.back)) {
        return false;
      }
      if ((["front", "front-placket"].includes(kind))) {
        if (truth(work.build.open)) {
          return true;
        }
        top = truth(work.build.skirt) ? (outline.top + 0.4) : outline.depth;
        low = outline.hem + outline.dip;
        if (((kind === "front-placket") || truth(work.record.has("closure/front-placket")))) {
          low = Math.min(low, top + (((kind === "front-placket") ? 18 : 20) * s));
        } else if ((truth(work.has_skirt) && !_to_hem(work))) {
          low = work.waist + (((work.chosen.waist.id === "pouched") ? 6 : 0.6) * s);
          if ((low < (top + 8))) {
            low = Math.min(outline.hem, top + (22 * s));
          }
        }
        if ((kind === "front-placket")) {
          sheet.put("opening", LINE, new Path([(-1.5) * s, top]).to([(-1.5) * s, low], [1.5 * s, low], [1.5 * s, top]));
          work.opening = new Path([0, top + 1]).to([0, low - 1]);
          return true;
        }
        _front(work, outline, low);
        return true;
      }
      if ((kind === "side-front")) {
        x = Math.min(7.5 * s, outline.half(work.waist) * 0.6);
        top = truth(work.build.skirt) ? outline.top : (outline.on_shoulder(outline.neck[0]) + 3);
        start = !truth(work.build.skirt) ? [outline.neck[0] * 0.9, top] : [x, top];
        if (((["notched", "shawl", "revers", "sailor"].includes(work.chosen.collar.id)) && !truth(work.build.skirt))) {
          start = [2.2 * s, outline.depth + 2];
        }
        low = (_to_hem(work) || truth(work.build.skirt)) ? outline.hem : Math.min(work.waist, outline.hem);
        if (truth(work.build.open)) {
          low = outline.hem - 0.4;
        }
        x2 = Math.min(x * 1.15, outline.half(low) * 0.7);
        line = !truth(work.build.skirt) ? smooth(start, [x, Math.max(outline.underarm[1] + 3, start[1] + (7 * s))], [x2, low]) : smooth([x, top], [x2, low]);
        work.opening = line;
        sheet.put("opening", LINE, line);
        return true;
      }
      if ((kind === "wrap-over")) {
        if ((outline.neckline === "surplice")) {
          work.opening = new Path([(-outline.half(work.waist)) * 0.5, work.waist - 1]).to([(-outline.half(work.waist)) * 0.56, work.waist]);
          if (truth(work.has_skirt)) {
            _wrapped(work, outline, work.waist);
          }
          return true;
        }
        begin = [0, outline.depth];
        waist = [-Math.min(outline.half(work.waist) * 0.55, 8 * s), Math.min(work.waist, outline.hem - 2)];
        if (truth(work.build.skirt)) {
          _wrapped(work, outline, outline.top);
          return true;
        }
        line = new Path(begin).curve([(-1.5) * s, begin[1] + 3], [waist[0] * 0.8, waist[1] - 6], waist);
        sheet.put("opening", LINE, line);
        work.opening = line;
        if ((truth(work.has_skirt) || (work.build.body === "crotch"))) {
          _wrapped(work, outline, waist[1], waist[0]);
        }
        return true;
      }
      if ((kind === "shoulder")) {
        [[nx, ny], [sx, sy]] = [outline.neck, outline.shoulder];
        strap = (sx - nx) < 5;
        line = new Path([nx + 0.4, ny + 1.2]).to([sx - 0.6, !truth(strap) ? (sy + 1.2) : (ny + 1.4)]);
        sheet.put("opening", LINE, line);
        work.opening = line;
        return true;
      }
      if ((kind === "side")) {
        top = truth(work.build.skirt) ? (outline.top + 0.6) : (outline.underarm[1] + (4 * s));
        low = Math.min(top + (17 * s), outline.hem - 1);
        if ((!truth(work.build.skirt) && (work.waist < outline.hem))) {
          low = Math.min(outline.hem - 1, Math.max(low, work.waist + (5 * s)));
        }
        line = smooth(...([...[top, (top + low) / 2, low]].map((y) => [outline.half(y) - 1.1, y])));
        sheet.put("opening", LINE, line, new Path([outline.half(top) - 0.1, top]).to([outline.half(top) - 1.1, top]), new Path([outline.half(low) - 0.1, low]).to([outline.half(low) - 1.1, low]));
        work.opening = line;
        return true;
      }
      return false;
    }
    function _on_legs(work, kind) {
      let legs, low, x, y, line;
      legs = work.legs;
      if ((legs == null)) {
        return false;
      }
      if ((["front", "front-placket", "wrap-over"].includes(kind))) {
        low = legs.fork - 2;
        work.sheet.put("opening", LINE, new Path([0, legs.waist + 3]).to([0, low]));
        work.sheet.put("opening", FAINT, new Path([3.4 * work.s, legs.waist + 3.4]).to([3.4 * work.s, low - 6]).bend([3.2 * work.s, low - 2], [0.2, low]));
        work.opening = new Path([0, legs.waist + 3]).to([0, low - 2]);
        return !truth(work.back);
      }
      if ((kind === "side")) {
        [x, y] = legs.path.start;
        line = new Path([x - 0.6, y + 1]).to([x + 0.6, y + 10]);
        work.sheet.put("opening", LINE, line);
        work.opening = line;
        return true;
      }
      return false;
    }
    function _front(work, outline, low) {
      let top, over, start, edge, round_off;
      top = truth(work.build.skirt) ? (outline.top + 0.4) : outline.depth;
      work.opening = new Path([0, top]).to([0, low - 0.4]);
      over = 1.5 * work.s;
      work.fold = over;
      start = top + ((!["v", "surplice"].includes(outline.neckline)) ? 0.6 : (-1.6));
      edge = new Path([over, Math.max(start, top - 2)]).to([over, low]);
      if ((truth(work.build.open) && (low > (outline.hem - 2)))) {
        round_off = 3 * work.s;
        edge = new Path([over, top - 1]).to([over, low - round_off]).bend([over, low - 0.2], [over - (round_off * 0.5), low]);
      }
      work.sheet.put("opening", LINE, edge);
    }
    function _wrapped(work, outline, y, x = null) {
      let left;
      left = (x == null) ? ((-outline.half(y)) * 0.55) : x;
      work.sheet.put("opening", LINE, smooth([left, y], [left * 1.05, (y + outline.hem) / 2], [left * 0.95, outline.hem + (outline.dip * 0.8)]));
    }
    function _to_hem(work) {
      let counts;
      counts = [...work.record.all("fastening")].map((feature) => (feature.count || 0));
      return (maxOf(counts, 0) >= 10) && (!["ground", "train"].includes(work.chosen.length.id));
    }
    function draw_fastenings(work) {
      let feature;
      if ((truth(work.back) && (work.opening == null))) {
        return;
      }
      for (feature of work.record.all("fastening")) {
        if (_fasten(work, term_id(feature), feature)) {
          work.record.drew(feature);
        }
      }
    }
    function _level(work, at_place) {
      if ((at_place === "hip")) {
        return Math.min(work.figure.y("hip"), truth(work.outline) ? (work.outline.hem - 4) : 999);
      }
      if (((work.outline != null) && truth(work.build.skirt))) {
        return work.outline.top + 1.6;
      }
      if (((work.outline == null) && (work.legs != null))) {
        return work.legs.waist + 1.5;
      }
      return work.waist;
    }
    function _fasten(work, kind, feature) {
      let sheet, s, outline, opening, y, whole, count, spots, size, x, loop, x2, y2, teeth;
      [sheet, s, outline] = [work.sheet, work.s, work.outline];
      opening = work.opening;
      if (((["buckle", "belt-tie"].includes(kind)) && !truth(work.back))) {
        return _belt(work, kind, feature);
      }
      if (((kind === "elastic") && !truth(work.back))) {
        return _elastic(work, feature);
      }
      if (((kind === "drawstring") && !truth(work.back))) {
        return _drawstring(work, feature);
      }
      if ((((kind === "ribbon-tie") && ([null, "neckline", "waist", "front"].includes(feature.at)) && !truth(work.back) && (opening == null)) || ((kind === "tape-ties") && (opening == null)))) {
        y = ((outline != null) && (feature.at !== "waist")) ? (outline.depth + 0.5) : _level(work, "waist");
        draw_bow(work, "tie", [0, y], 3.6 * s, 6.5 * s);
        return true;
      }
      if (((opening == null) || ((feature.at === "back") && !truth(work.back)))) {
        return false;
      }
      whole = length(opening);
      if (((has(BUTTONS, kind)) || (["loops-and-buttons", "toggle", "frogs"].includes(kind)))) {
        count = feature.count || Math.max((whole > 6) ? 2 : 1, Math.min(9, round(whole / (((whole > 30) ? 7.5 : 4.5) * s)) + ((whole > 30) ? 1 : 0)));
        spots = _spread(opening, Math.min(count, 40), whole);
        size = (((count > 14) ? 0.62 : ((whole > 12) ? 0.95 : 0.75)) * s) * ((kind === "shank-buttons") ? 1.25 : 1);
        for ([x, y] of spots) {
          if ((["frogs", "toggle"].includes(kind))) {
            loop = new Path([x, y]).curve([x + 2, y - 2], [x + (5.4 * s), y - 1.6], [x + (5.4 * s), y]).curve([x + (5.4 * s), y + 1.6], [x + 2, y + 2], [x, y]);
            sheet.put("fastening", LINE, loop, loop.mirror(x));
          }
          if ((kind === "loops-and-buttons")) {
            sheet.put("fastening", LINE, new Path([x, y]).bend([x - (2.4 * s), y - 1.4], [x - (2 * s), y]));
          }
        }
        sheet.put("button", GROUND, [...spots].map((spot) => ring(spot, size)));
        if (((size > 0.8) && (["pearl-buttons", "buttons"].includes(kind)))) {
          sheet.put("button", FAINT, [...spots].map(([x, y]) => new Path([x - 0.15, y]).to([x + 0.15, y])));
        }
        return true;
      }
      if ((["hooks-and-eyes", "hooks-and-bars", "press-studs", "safety-pin", "hook-and-loop"].includes(kind))) {
        count = feature.count || Math.max(2, Math.min(9, round(whole / (6 * s))));
        for ([x, y] of _spread(opening, count, whole)) {
          if ((kind === "press-studs")) {
            sheet.put("stud", LINE, ring([x + 0.9, y], 0.32 * s));
          } else {
            sheet.put("hook", LINE, new Path([x - 0.1, y]).to([x + 1.1, y]).bend([x + 1.6, y + 0.1], [x + 1.2, y + 0.55]));
          }
        }
        return true;
      }
      if ((["lacing", "eyelets-metal", "busk-front"].includes(kind))) {
        count = Math.max(4, Math.min(10, round(whole / (3.2 * s))));
        spots = _spread(opening, count, whole);
        for ([x, y] of spots) {
          sheet.put("lacing", LINE, ring([x - 1.4, y], 0.3), ring([x + 1.4, y], 0.3));
        }
        if ((kind === "lacing")) {
          for ([[x, y], [x2, y2]] of pairwise(spots)) {
            sheet.put("lacing", LINE, new Path([x - 1.4, y]).to([x2 + 1.4, y2]), new Path([x + 1.4, y]).to([x2 - 1.4, y2]));
          }
        }
        return true;
      }
      if ((kind === "slide-fastener")) {
        count = Math.max(6, round(whole / 0.9));
        teeth = [...range(count)].map((n) => at(opening, (whole * (n + 0.5)) / count));
        sheet.put("slide", LINE, [...teeth].map(([[x, y], [dx, dy]]) => new Path([x - (0.7 * dy), y + (0.7 * dx)]).to([x + (0.7 * dy), y - (0.7 * dx)])));
        [[x, y], ] = at(opening, 0);
        sheet.put("slide", GROUND, box(x - 0.7, y + 0.5, 1.4, 2.4));
        return true;
      }
      if ((["ribbon-tie", "tape-ties"].includes(kind))) {
        count = feature.count || ((whole < 12) ? 1 : 2);
        for ([x, y] of _spread(opening, count, whole).slice(0, 4)) {
          draw_bow(work, "tie", [x, y], 2.8 * s, 4.8 * s);
        }
        return true;
      }
      return false;
    }
    function _spread(opening, count, whole) {
      let first, last;
      if ((count === 1)) {
        return [at(opening, Math.min(1.6, whole / 2))[0]];
      }
      [first, last] = [Math.min(2, whole * 0.1), whole - Math.min(3.5, whole * 0.1)];
      return [...range(count)].map((n) => at(opening, first + (((last - first) * n) / (count - 1)))[0]);
    }
    function _belt(work, kind, feature) {
      let y, s, high, half, half_low, bend, band, x, lean, end;
      [y, s] = [_level(work, feature.at), work.s];
      high = 3.4 * s;
      [half, half_low] = [_half(work, y - (high / 2)), _half(work, y + (high / 2))];
      if (((half == null) || (half_low == null))) {
        return false;
      }
      bend = 1.4;
      band = new Path([-half, y - (high / 2)]).bend([0, (y - (high / 2)) + bend], [half, y - (high / 2)]).to([half_low, y + (high / 2)]);
      band = band.bend([0, (y + (high / 2)) + bend], [-half_low, y + (high / 2)]).close();
      work.sheet.put("belt", GROUND, band);
      y += bend / 2;
      if ((kind === "buckle")) {
        work.sheet.put("buckle", GROUND, box((-2.2) * s, y - (2.3 * s), 4.4 * s, 4.6 * s));
        work.sheet.put("buckle", LINE, box((-1.2) * s, y - (1.3 * s), 2.4 * s, 2.6 * s), new Path([0, y]).to([2 * s, y]));
      } else {
        x = half * 0.35;
        for (lean of [0.1, 0.5]) {
          end = new Path([x, y]).bend([x + (lean * 4), y + 7], [(x + (lean * 5)) + 0.5, y + (15 * s)]).to([(x + (lean * 5)) + (2.6 * s), y + (14.6 * s)]).bend([(x + (lean * 4)) + 2, y + 7], [x + 1.2, y]).close();
          work.sheet.put("belt", GROUND, end);
        }
        work.sheet.put("belt", GROUND, box(x - (1 * s), y - (1.9 * s), 3 * s, 3.8 * s));
      }
      return true;
    }
    function _half(work, y) {
      if (((work.outline != null) && (y < work.outline.hem))) {
        return work.outline.half(y);
      }
      if ((work.legs != null)) {
        return maxOf([...[work.legs.path.start, [work.legs.path.start[0], 0]]].map(([x, ]) => x));
      }
      return null;
    }
    function _elastic(work, feature) {
      let legs, outline, step, x, ax, ay, bx, by, share, y, half;
      [legs, outline] = [work.legs, work.outline];
      if (((feature.at === "leg") && (legs != null))) {
        for (step of range(8)) {
          x = legs.inner + (((legs.outer - legs.inner) * (step + 0.7)) / 8.6);
          work.sheet.faint("elastic", new Path([x, legs.hem - 0.2]).to([x, legs.hem - 3.2]));
        }
        work.sheet.both("elastic", LINE, legs.across(1.6));
        return true;
      }
      if (((feature.at === "sleeve") && (work.sleeve_end != null))) {
        [[ax, ay], [bx, by]] = [work.sleeve_end.start, work.sleeve_end.end];
        for (share of [0.2, 0.4, 0.6, 0.8]) {
          [x, y] = [ax + ((bx - ax) * share), ay + ((by - ay) * share)];
          work.sheet.faint("elastic", new Path([x, y - 0.3]).to([x - 0.8, y - 3]));
        }
        return true;
      }
      y = _level(work, feature.at);
      half = _half(work, y);
      if ((half == null)) {
        return false;
      }
      for (step of range(7)) {
        x = (half * (step + 0.5)) / 7.4;
        work.sheet.faint("elastic", new Path([x, y + 0.5]).to([x * 1.02, y + 4]), new Path([x, y - 0.4]).to([x, y - 1.6]));
      }
      return (outline != null) || (legs != null);
    }
    function _drawstring(work, feature) {
      let y, half, found, step, x;
      if (((["neckline"].includes(feature.at)) && (work.outline != null))) {
        [y, half] = [work.outline.depth, 3];
      } else {
        y = _level(work, feature.at);
        found = _half(work, y);
        if ((found == null)) {
          return false;
        }
        half = found;
      }
      for (step of range(6)) {
        x = (half * (step + 0.5)) / 6.4;
        work.sheet.faint("drawstring", new Path([x, y + 0.6]).to([x * 1.02, y + 3.4]));
      }
      draw_bow(work, "drawstring", [0, y + 0.6], 3 * work.s, 7 * work.s);
      return true;
    }
    return { draw_closure, draw_fastenings };
  })();
  
  const trim_places = (() => {
    const { back_neck, neckline, slant } = necks;
    const { Path, apart, beside, path } = paths;
    const { hem_of_points } = skirts;
    function lines_of(work, place, inset) {
      let outline, legs, s, outer, half, edge, y, front, top, nx, ny, sx, sy, low, x;
      [outline, legs, s] = [work.outline, work.legs, work.s];
      if (((work.under != null) && (["hem", "skirt"].includes(place)))) {
        return lines_of(work.under, place, inset);
      }
      if ((((place === "leg") && (legs != null)) || ((outline == null) && (legs != null) && (["hem", "edge"].includes(place))))) {
        return [[legs.across(inset), true]];
      }
      if ((["sleeve", "cuff", "armhole"].includes(place))) {
        return _on_sleeve(work, inset);
      }
      if ((outline == null)) {
        if (((legs != null) && (["side"].includes(place)))) {
          outer = path(...legs.path.points(3).slice(0, legs.path.steps.slice(0, -3).length * 3));
          return [[beside(outer, 1 + inset), true]];
        }
        if (((legs != null) && (["waist", "hip"].includes(place)))) {
          half = legs.path.start[0];
          return [[new Path([-half, (legs.waist + 1) + inset]).bend([0, (legs.waist + 2.4) + inset], [half, (legs.waist + 1) + inset]), false]];
        }
        return [];
      }
      if (((place === "collar") && (work.collar_edge != null))) {
        return [[_right_of_centre(beside(work.collar_edge, 0.9 + inset)), true]];
      }
      if (((["neckline", "collar"].includes(place)) && !truth(work.build.skirt) && (outline.neckline === "one-shoulder"))) {
        edge = slant(outline, inset + 0.7);
        return [[truth(work.back) ? edge.mirror(0).reverse() : edge, false]];
      }
      if (((["neckline", "collar"].includes(place)) && !truth(work.build.skirt))) {
        if (truth(work.back)) {
          return [[back_neck(outline, inset + 0.6), true]];
        }
        if ((work.collar_edge != null)) {
          return [[_right_of_centre(beside(work.collar_edge, 0.7 + inset)), true]];
        }
        return [[neckline(outline, inset + 0.7), true]];
      }
      if (((place === "chest") && !truth(work.build.skirt))) {
        y = Math.min(Math.max(outline.underarm[1] + 1.5, outline.depth + 2), outline.hem - 8);
        return [[outline.across(y + inset), false]];
      }
      if ((place === "yoke")) {
        if (truth(work.seams)) {
          return [...work.seams.slice(0, 2)].map((seam) => [(Math.abs(seam.start[1] - seam.end[1]) < 8) ? seam.move(0, 0.9 + inset) : seam.move(0.9 + inset), true]);
        }
        y = Math.min(outline.underarm[1] + 1.5, outline.hem - 2);
        return [[outline.across(y + inset, 0.6), false]];
      }
      if ((["hem", "skirt", "edge"].includes(place))) {
        if (((place === "hem") || (place === "edge"))) {
          if (((place === "edge") && truth(work.build.open))) {
            front = new Path([2.4 + inset, outline.depth + 3]).to([2.4 + inset, outline.hem - 2.5]);
            if (((work.opening != null) && truth(work.record.has("closure/side-front", "closure/wrap-over")))) {
              front = beside(work.opening, (-0.9) - inset);
            }
            return [[front, false], [outline.hem_line(1.6 + inset).reverse(), false]];
          }
          if (((work.build.legs === "trunk") && (legs != null) && (work.flap == null))) {
            return [[legs.across(1 + inset), true]];
          }
          if ((work.flap != null)) {
            return [[work.flap.move(0, (-1) - inset), false]];
          }
          if (((work.chosen.length.id === "handkerchief-uneven") && truth(work.has_skirt))) {
            return [[hem_of_points(outline).scale(0.99).move(0, ((outline.hem * 0.01) - 1.4) - inset), false]];
          }
          return [[outline.hem_line(1.4 + inset), false]];
        }
        top = work.waist;
        y = top + ((outline.hem - top) * 0.7);
        return [[outline.across(y - inset).reverse(), false]];
      }
      if ((place === "waist")) {
        y = truth(work.build.skirt) ? (outline.top + 1.6) : Math.min(work.waist, outline.hem - 2);
        return [[outline.across(y + inset), false]];
      }
      if ((place === "hip")) {
        y = Math.min(Math.max(work.figure.y("hip"), work.waist + 2), outline.hem - 3);
        return [[outline.across(y + inset), false]];
      }
      if ((place === "shoulder")) {
        [[nx, ny], [sx, sy]] = [outline.neck, outline.shoulder];
        return [[new Path([nx + 0.6, (ny + 1) + inset]).to([sx - 0.5, (sy + 1) + inset]), true]];
      }
      if ((place === "side")) {
        [top, low] = [outline.underarm[1] + 2, outline.hem - 1];
        return [[new Path([(outline.half(top) - 1) - inset, top]).through(...([...[(top + low) / 2, low]].map((y) => [(outline.half(y) - 1) - inset, y]))), true]];
      }
      if ((place === "pocket")) {
        return [...[Math.min(outline.hem - (9 * s), work.figure.y("high-hip"))]].map((p) => [new Path([9.5 * s, p + inset]).to([15 * s, p + inset]), true]);
      }
      if (truth(work.build.skirt)) {
        return [[outline.down(0.12, outline.top + 4, outline.hem - 1).move(inset), true]];
      }
      low = Math.min(work.waist, outline.hem) - 1;
      x = (((place === "front") ? 3 : 6) * s) + inset;
      top = Math.max(_reach(work, x), outline.on_shoulder(x) + 0.8);
      if (((low - top) < 6)) {
        y = outline.underarm[1] + 2;
        return (y < (outline.hem - 2)) ? [[outline.across(y + inset), false]] : [];
      }
      return [[new Path([x, top]).to([Math.min(x, outline.half(low) * 0.85), low]), true]];
    }
    function _right_of_centre(line) {
      let points;
      points = [...line.points()].filter((point) => (point[0] > 0.15)).map((point) => point);
      return (points.length > 1) ? path(...points) : line;
    }
    function _reach(work, x) {
      let lines, found;
      lines = [...[neckline(work.outline)], ...((work.collar_edge != null) ? [work.collar_edge] : [])];
      found = [...lines].flatMap((line) => [...line.points(6)].filter(([px, y]) => (px >= (x - 1.2))).map(([px, y]) => y));
      return maxOf(found, work.outline.depth) + 1.2;
    }
    function _on_sleeve(work, inset) {
      let outline, _sx, _sy, _ux, _uy, line, end, ax, ay, bx, by, span, up, k, a, b;
      outline = work.outline;
      if ((work.sleeve_end == null)) {
        if (((outline == null) || truth(work.build.skirt))) {
          return [];
        }
        [[_sx, _sy], [_ux, _uy]] = [outline.shoulder, outline.underarm];
        line = outline.armhole();
        return [[line.move((-0.8) - inset), true]];
      }
      end = work.sleeve_end;
      [[ax, ay], [bx, by]] = [end.start, end.end];
      span = apart(end.start, end.end) || 1;
      up = [(by - ay) / span, (-(bx - ax)) / span];
      if ((up[1] > 0)) {
        up = [-up[0], -up[1]];
      }
      k = 1.1 + inset;
      a = [(ax + (up[0] * k)) - ((0.5 * (ax - bx)) / span), (ay + (up[1] * k)) - ((0.5 * (ay - by)) / span)];
      b = [(bx + (up[0] * k)) + ((0.3 * (ax - bx)) / span), (by + (up[1] * k)) + ((0.3 * (ay - by)) / span)];
      return [[new Path(b).to(a), true]];
    }
    function spot_of(work, at_place, kind) {
      let outline, s, legs, y, ax, ay, bx, by;
      [outline, s] = [work.outline, work.s];
      if ((outline == null)) {
        legs = work.legs;
        return (legs == null) ? null : [legs.outer * 0.6, (at_place === "leg") ? Math.min((legs.fork + legs.hem) / 2, legs.hem - (5.5 * s)) : (legs.waist + (9 * s))];
      }
      if (((["anchor-motif", "monogram"].includes(kind)) && ([null, "front", "bodice", "pocket"].includes(at_place)))) {
        if (truth(work.build.skirt)) {
          return [outline.half(outline.top + 14) * 0.5, outline.top + 14];
        }
        y = Math.max(outline.underarm[1] + (3.5 * s), 0);
        return ((outline.depth > (12 * s)) || (work.opening != null) || (kind === "monogram")) ? [outline.half(y) * 0.52, y] : [0, y];
      }
      if ((at_place === "waist")) {
        return [outline.half(work.waist) * ((kind !== "bow") ? 0.55 : 0), Math.min(work.waist, outline.hem - 4) + 1];
      }
      if ((at_place === "hip")) {
        y = Math.min(Math.max(work.figure.y("hip"), work.waist), outline.hem - 6);
        return [outline.half(y) * 0.62, y];
      }
      if ((["sleeve", "cuff"].includes(at_place))) {
        if ((work.sleeve_end == null)) {
          return null;
        }
        [[ax, ay], [bx, by]] = [work.sleeve_end.start, work.sleeve_end.end];
        return [((ax + bx) / 2) - 0.8, ((ay + by) / 2) - 4.5];
      }
      if ((at_place === "shoulder")) {
        return [outline.shoulder[0] - 4, outline.shoulder[1] + 4];
      }
      if ((["skirt", "hem"].includes(at_place))) {
        y = work.waist + ((outline.hem - work.waist) * ((at_place === "skirt") ? 0.4 : 0.85));
        return [outline.half(y) * 0.45, y];
      }
      if (((at_place === "collar") && (["anchor-motif", "monogram", "applique"].includes(kind)))) {
        return [outline.neck[0] + (3.4 * s), outline.on_shoulder(outline.neck[0] + (3.4 * s)) + (6 * s)];
      }
      if (((at_place === "leg") && (work.legs != null))) {
        return [work.legs.outer * 0.6, work.legs.hem - (5 * s)];
      }
      if ((["bodice", "front", "yoke"].includes(at_place))) {
        y = Math.max(outline.depth + (5 * s), outline.underarm[1] - 2);
        return [0, Math.min(y, outline.hem - 5)];
      }
      if (truth(work.build.skirt)) {
        return [outline.half(outline.top) * 0.6, outline.top + 4];
      }
      return [0, Math.min(outline.depth + 1, outline.hem - 6)];
    }
    return { lines_of, spot_of };
  })();
  
  const lower = (() => {
    const { FAINT, LINE } = hand;
    const { neckline } = necks;
    const { Path, evenly, ring, smooth, waved } = paths;
    const { term_id } = record;
    function draw_legs(work) {
      let legs, sheet, s, outer, half, middle, hip;
      legs = work.legs;
      if ((legs == null)) {
        return;
      }
      [sheet, s] = [work.sheet, work.s];
      sheet.cloth("leg", legs.path, legs.path.mirror(0));
      outer = new Path(legs.path.start, legs.path.steps.slice(0, -1));
      sheet.both("leg", LINE, outer);
      if (((work.outline == null) || (work.build.body === "brassiere"))) {
        half = legs.path.start[0];
        sheet.put("waistband", LINE, new Path([-half, legs.waist]).bend([0, legs.waist + 1.4], [half, legs.waist]), new Path([(-half) - 0.4, legs.waist + 3.2]).bend([0, legs.waist + 4.6], [half + 0.4, legs.waist + 3.2]));
      }
      if (!((work.build.legs === "trunk") && (work.outline != null))) {
        sheet.put("leg", FAINT, new Path([0, legs.waist + 4]).to([0, legs.fork]));
      }
      if (((work.build.legs === "floor") && (work.outline == null))) {
        middle = (legs.inner + legs.outer) / 2;
        hip = legs.path.start[0] * 0.55;
        sheet.faint("crease", smooth([hip, legs.waist + (12 * s)], [middle * 0.96, (legs.fork + legs.hem) / 2], [middle, legs.hem]));
      }
    }
    function draw_lower_edges(work) {
      let feature;
      for (feature of work.record.all("lower-edge")) {
        if (_edge(work, term_id(feature), feature)) {
          work.record.drew(feature);
        }
      }
    }
    function _edge(work, kind, feature) {
      let sheet, s, legs, outline, y, half, top, top_half, flap, hem, deep, row, step, share, x;
      [sheet, s, legs, outline] = [work.sheet, work.s, work.legs, work.outline];
      if (((kind === "trunk-leg") && (legs != null))) {
        sheet.both("edge", FAINT, legs.across(1));
        return true;
      }
      if (((kind === "short-skirt-leg") && (legs != null))) {
        y = legs.fork + ((legs.hem - legs.fork) * 0.42);
        half = Math.max(legs.outer, truth(outline) ? outline.half(outline.hem) : 0) + 0.5;
        top = work.figure.y("hip") - 2;
        top_half = ((outline != null) && (top < outline.hem)) ? outline.half(top) : legs.path.start[0];
        flap = new Path([top_half, top]).bend([half, (top + y) / 2], [half, y]).bend([0, y + 2.6], [-half, y]).bend([-half, (top + y) / 2], [-top_half, top]);
        flap = flap.bend([0, top + 1.6], [top_half, top]).close();
        work.flap = new Path([half - 0.2, y]).bend([0, y + 2.6], [0.2 - half, y]);
        sheet.cloth("edge", flap);
        sheet.put("edge", LINE, flap);
        return true;
      }
      if (((kind === "cuffed") && (legs != null))) {
        sheet.both("edge", LINE, legs.across(4.2 * s));
        return true;
      }
      if (((feature.at === "sleeve") && (work.sleeve_end != null))) {
        return _small(work, kind, [work.sleeve_end.reverse()], true);
      }
      if ((["collar", "neckline"].includes(feature.at))) {
        if (((feature.at === "collar") && (work.collar_edge != null))) {
          return _small(work, kind, [work.collar_edge], true);
        }
        if (((outline != null) && !truth(work.build.skirt))) {
          return _small(work, kind, [neckline(outline, 0.9).reverse()], true);
        }
        return false;
      }
      if (((outline == null) || truth(work.back))) {
        if (((legs != null) && (["straight-hem", "scalloped", "picot-edge", "faced-hem"].includes(kind)))) {
          return _small(work, kind, [legs.across(1.2)], true);
        }
        return false;
      }
      hem = outline.hem_line(1.4);
      if (((["scalloped", "vandyked", "handkerchief"].includes(kind)) && truth(work.has_skirt))) {
        return true;
      }
      if ((["faced-hem", "deep-hem"].includes(kind))) {
        deep = _width(feature.width) || ((kind === "faced-hem") ? 20 : 12);
        sheet.put("edge", FAINT, outline.hem_line(truth(work.has_skirt) ? Math.min(deep, (outline.hem - work.waist) * 0.4) : 4));
        return true;
      }
      if (((kind === "flounce") && truth(work.has_skirt))) {
        for (row of range(feature.count || 1)) {
          y = outline.hem - ((outline.hem - work.waist) * (0.2 + (0.19 * row)));
          sheet.put("edge", LINE, outline.across(y));
          for (step of range(7)) {
            share = 0.07 + (0.135 * step);
            sheet.faint("gathers", outline.down(share, y + 1.4, y + ((outline.hem - work.waist) * item([0.11, 0.07], mod(step, 2)))));
          }
        }
        return true;
      }
      if ((kind === "straight-hem")) {
        sheet.put("edge", FAINT, outline.hem_line(3));
        return true;
      }
      if ((kind === "fringe")) {
        half = outline.halves.at(-1);
        for (step of range(12)) {
          x = (half * (step + 0.5)) / 12;
          y = outline.hem + (outline.dip * (1 - ((x / half) * (x / half))));
          sheet.both("edge", LINE, new Path([x, y - 5.5]).to([x, y - 0.2]));
        }
        sheet.put("edge", LINE, outline.hem_line(5.5));
        return true;
      }
      return _small(work, kind, [hem], false);
    }
    function _small(work, kind, lines, both) {
      let put, line;
      put = truth(both) ? bound(work.sheet, "both") : bound(work.sheet, "put");
      for (line of lines) {
        if ((kind === "picot-edge")) {
          put("edge", LINE, [...evenly(line, truth(both) ? 9 : 28)].map(([spot, ]) => ring(spot, 0.28)));
        } else if ((kind === "scalloped")) {
          put("edge", LINE, waved(line, (-1.1) * work.s, truth(both) ? 6 : 12, "scallops"));
        } else if ((["pinked", "vandyked"].includes(kind))) {
          put("edge", LINE, waved(line, 0.7, truth(both) ? 9 : 26, "points"));
        } else if ((["rolled-hem", "faced-hem", "straight-hem"].includes(kind))) {
          put("edge", FAINT, line);
        } else {
          return false;
        }
      }
      return true;
    }
    function _width(text) {
      return width_in_cm(text);
    }
    function width_in_cm(text) {
      let number, unit, factor, total, sign, share, whole;
      if (!truth(text)) {
        return null;
      }
      [number, , unit] = partition(text.trim(), " ");
      factor = get(new Map([["in", 2.54], ["inch", 2.54], ["inches", 2.54], ["cm", 1], ["mm", 0.1]]), rstrip(unit.trim(), "."));
      if ((factor == null)) {
        return null;
      }
      total = 0;
      for ([sign, share] of [["¼", 0.25], ["½", 0.5], ["¾", 0.75], ["⅛", 0.125], ["⅜", 0.375], ["⅝", 0.625], ["⅞", 0.875]]) {
        if (number.endsWith(sign)) {
          [total, number] = [share, number.slice(0, -1)];
          break;
        }
      }
      whole = truth(number) ? _decimal(number) : 0;
      if ((whole == null)) {
        return null;
      }
      total += whole;
      return (0 < (total * factor) && (total * factor) < 200) ? (total * factor) : null;
    }
    function _decimal(text) {
      let before, after, digits;
      [before, , after] = partition(text, ".");
      digits = before + after;
      return (truth(digits) && [...digits].map((sign) => (has("0123456789", sign))).every(truth)) ? Number(text) : null;
    }
    return { draw_legs, draw_lower_edges, width_in_cm };
  })();
  
  const trims = (() => {
    const { draw_bow } = collars;
    const { FAINT, GROUND, LINE, TINT } = hand;
    const { width_in_cm } = lower;
    const { Path, at, evenly, length, path, ring, waved } = paths;
    const { term_id } = record;
    const { lines_of, spot_of } = trim_places;
    const USUAL = new Map([["sash", ["waist"]], ["bow", ["neckline"]], ["rosette", ["waist"]], ["lace-edging", ["neckline", "sleeve"]], ["frill", ["hem"]], ["braid", ["collar", "hem"]], ["stripes-knitted", ["bodice", "hem"]], ["contrast-band", ["hem"]], ["ribbon", ["waist"]], ["beading-slotted", ["neckline"]], ["embroidery-white", ["bodice"]], ["embroidery-colour", ["bodice"]], ["beads", ["bodice"]], ["sequins", ["bodice"]], ["soutache", ["front"]], ["buttons-ornamental", ["front"]], ["fringe-trim", ["hem"]], ["tassel", ["waist"]], ["fur-band", ["hem"]], ["smocking-band", ["bodice"]], ["fagoting", ["yoke"]], ["binding", ["neckline", "sleeve"]], ["piping", ["neckline", "sleeve"]]]);
    const SINGLE = ["anchor-motif", "monogram", "applique", "bow", "rosette", "tassel"];
    const WIDTHS = new Map([["insertion", 2], ["contrast-band", 4], ["ribbon", 1.8], ["beading-slotted", 1.8], ["fur-band", 5], ["lace-edging", 2.2], ["frill", 3.4], ["ruching", 2.6], ["tape", 1], ["stripes-knitted", 1.8], ["embroidery-white", 3], ["embroidery-colour", 3], ["fringe-trim", 4.5]]);
    function draw_trims(work) {
      let feature, kind, done;
      for (feature of work.record.all("trim")) {
        kind = term_id(feature);
        if ((((feature.at === "back") !== work.back) && !(truth(work.back) && (feature.at === "collar")))) {
          continue;
        }
        if ((kind === "sash")) {
          done = _sash(work, feature);
        } else if ((has(SINGLE, kind))) {
          done = _single(work, kind, feature);
        } else {
          done = _along(work, kind, feature);
        }
        if (truth(done)) {
          work.record.drew(feature);
        }
      }
    }
    function _along(work, kind, feature) {
      let places, drawn, width, rows, place, step, row, inset, outer, inner, line, twin, within;
      places = truth(feature.at) ? [feature.at] : get(USUAL, kind, ["neckline"]);
      drawn = false;
      width = width_in_cm(feature.width) || (get(WIDTHS, kind, 1.2) * Math.max(work.s, 0.7));
      rows = Math.max(1, Math.min(feature.count || ((kind === "stripes-knitted") ? 3 : 1), 6));
      for (place of places) {
        if (((kind === "stripes-knitted") && (["bodice", "front"].includes(place)))) {
          place = "chest";
        }
        if (((place === "crown") && truth(work.build.head))) {
          _on_crown(work, kind);
          drawn = true;
          continue;
        }
        step = (kind !== "braid") ? (1.2 * width) : (0.9 * width);
        for (row of range(rows)) {
          inset = row * Math.max(1, step);
          outer = lines_of(work, place || "neckline", inset);
          inner = lines_of(work, place || "neckline", inset + width);
          inner = (same(inner.length, outer.length)) ? inner : outer;
          for ([[line, twin], [within, ]] of zip(outer, inner)) {
            if ((length(line) > 1.5)) {
              _trim(work, kind, line, within, width, twin);
              drawn = true;
            }
          }
        }
      }
      return drawn;
    }
    function _trim(work, kind, line, inner, width, twin) {
      let put, count, band, rungs, pairs, spots, place, spot, dx, dy;
      put = truth(twin) ? bound(work.sheet, "both") : bound(work.sheet, "put");
      count = Math.max(3, round(length(line) / Math.max(2.2, width * 1.1)));
      if ((["braid", "soutache", "tape"].includes(kind))) {
        if ((kind === "soutache")) {
          put("trim", LINE, waved(line, 0.9, count, "wave"));
        } else {
          put("trim", LINE, line);
        }
      } else if ((["binding", "piping"].includes(kind))) {
        put("trim", LINE, line);
        if ((kind === "piping")) {
          put("trim", FAINT, [...evenly(line, Math.min(count * 2, 24))].map(([spot, ]) => new Path(spot).to([spot[0] + 0.5, spot[1] - 0.5])));
        }
      } else if ((["contrast-band", "fur-band", "stripes-knitted", "ribbon"].includes(kind))) {
        band = line.then(inner.reverse()).close();
        put("trim", TINT, band);
        put("trim", TINT, band);
        if ((kind === "fur-band")) {
          put("trim", LINE, [...evenly(line, Math.min(30, count * 3))].map(([spot, ]) => new Path(spot).to([spot[0] + 0.4, spot[1] + 1.2])));
        }
      } else if ((["insertion", "fagoting", "beading-slotted"].includes(kind))) {
        put("trim", LINE, line, inner);
        rungs = Math.min(26, Math.max(4, round(length(line) / Math.max(1.4, width))));
        pairs = [...zip(evenly(line, rungs), evenly(inner, rungs))];
        if ((kind === "fagoting")) {
          put("trim", FAINT, [...pairs].map(([[a, ], [b, ]]) => new Path(a).to(b)));
        } else if ((kind === "beading-slotted")) {
          put("trim", LINE, [...pairs].map(([[a, ], [b, ]]) => new Path(_mid(a, b, 0.25)).to(_mid(a, b, 0.75))));
        } else {
          spots = [...pairs].flatMap(([[a, ], [b, ]]) => [...[a, b]].map((spot) => spot));
          put("trim", FAINT, path(...spots));
        }
      } else if ((["lace-edging"].includes(kind))) {
        put("trim", LINE, waved(line, (0.55 * width) * _outward(work, line, inner), count, "scallops"));
        put("trim", FAINT, line);
      } else if ((["frill", "ruching"].includes(kind))) {
        put("trim", LINE, line, waved(inner, 0.5, count, "wave"));
        rungs = Math.min(22, count * 2);
        put("trim", FAINT, [...zip(evenly(line, rungs), evenly(inner, rungs))].map(([[a, ], [b, ]]) => new Path(a).to(_mid(a, b, 0.6))));
      } else if ((kind === "rickrack")) {
        put("trim", LINE, waved(line, 0.7, Math.max(4, round(length(line) / 1.8)), "points"));
      } else if ((["embroidery-white", "embroidery-colour", "applique"].includes(kind))) {
        for ([place, [spot, [dx, dy]]] of enumerate(evenly(line, Math.min(9, Math.max(2, round(length(line) / 5)))))) {
          _sprig(work, spot, [dx, dy], truth(mod(place, 2)) ? 1 : (-1), twin);
        }
      } else if ((["beads", "sequins"].includes(kind))) {
        put("trim", LINE, [...evenly(line, Math.min(22, Math.max(4, round(length(line) / 1.7))))].map(([spot, ]) => ring(spot, 0.26)));
      } else if ((kind === "fringe-trim")) {
        put("trim", LINE, line);
        put("trim", FAINT, [...evenly(inner, Math.min(30, count * 2))].map(([spot, ]) => new Path(spot).to([spot[0], spot[1] + width])));
      } else if ((kind === "buttons-ornamental")) {
        put("trim", GROUND, [...evenly(line, Math.min(8, Math.max(3, round(length(line) / 5))))].map(([spot, ]) => ring(spot, 0.75 * work.s)));
      } else if ((kind === "smocking-band")) {
        put("trim", FAINT, waved(line, 0.8, count, "points"), waved(inner, 0.8, count, "points"));
      } else {
        put("trim", LINE, line);
      }
    }
    function _outward(work, line, inner) {
      let x, y, dx, dy, bx, by, right;
      [[x, y], [dx, dy]] = at(line, length(line) / 2);
      [bx, by] = at(inner, length(inner) / 2)[0];
      right = ((bx - x) * (-dy)) + ((by - y) * dx);
      return (right > 0) ? 1 : (-1);
    }
    function _mid(a, b, share) {
      return [a[0] + ((b[0] - a[0]) * share), a[1] + ((b[1] - a[1]) * share)];
    }
    function _sprig(work, spot, way, side, twin) {
      let x, y, dx, dy, s, nx, ny, stem, put;
      [[x, y], [dx, dy]] = [spot, way];
      s = 1 * work.s;
      [nx, ny] = [(-dy) * side, dx * side];
      stem = new Path([x - ((dx * 1.8) * s), y - ((dy * 1.8) * s)]).bend([x + ((nx * 1) * s), y + ((ny * 1) * s)], [x + ((dx * 1.2) * s), y + ((dy * 1.2) * s)]);
      put = truth(twin) ? bound(work.sheet, "both") : bound(work.sheet, "put");
      put("trim", LINE, stem, ring([x + ((dx * 1.7) * s), y + ((dy * 1.7) * s)], 0.55 * s));
      put("trim", FAINT, new Path([x, y]).to([(x - ((nx * 1) * s)) - (dx * 0.5), (y - ((ny * 1) * s)) - (dy * 0.5)]));
    }
    function _sash(work, feature) {
      let outline, s, y, high, top, low, share, x, long, lean, end;
      [outline, s] = [work.outline, work.s];
      if ((outline == null)) {
        return false;
      }
      y = truth(work.build.skirt) ? (outline.top + 2) : Math.min(work.waist, outline.hem - 6);
      if ((feature.at === "hip")) {
        y = Math.min(Math.max(work.figure.y("hip"), y), outline.hem - 6);
      }
      high = 5 * s;
      [top, low] = [outline.across(y - (high / 2)), outline.across(y + (high / 2))];
      work.sheet.put("sash", GROUND, top.to(low.end).then(low.reverse()).close());
      for (share of [0.33, 0.66]) {
        work.sheet.put("sash", FAINT, outline.across((y - (high / 2)) + (high * share)));
      }
      x = outline.half(y) * 0.5;
      long = Math.min(30 * s, (outline.hem - y) * 0.6);
      for (lean of [0, 2.4]) {
        end = new Path([x - 1, y + 1]).bend([x + lean, y + (long * 0.5)], [x + lean, y + long]).to([(x + lean) + (4.4 * s), (y + long) - 1]).bend([(x + lean) + 2.5, y + (long * 0.5)], [x + 1.4, y + 1]).close();
        work.sheet.put("sash", GROUND, end);
      }
      work.sheet.put("sash", GROUND, ring([x, y + 0.8], 2 * s, 2.4 * s));
      return true;
    }
    function _single(work, kind, feature) {
      let outline, s, spot, x, y, r;
      [outline, s] = [work.outline, work.s];
      if (truth(work.build.head)) {
        if ((["bow", "rosette", "applique"].includes(kind))) {
          (kind === "bow") ? draw_bow(work, "trim", [9, 3], 4, 6) : _rosette(work, [9, 3], 2.6);
          return true;
        }
        return false;
      }
      spot = spot_of(work, feature.at, kind);
      if ((spot == null)) {
        return false;
      }
      [x, y] = spot;
      if ((kind === "bow")) {
        draw_bow(work, "trim", spot, 4.6 * s, 8 * s);
        if ((truth(feature.count) && (feature.count > 1) && (outline != null))) {
          draw_bow(work, "trim", [x, Math.min(y + (13 * s), outline.hem - 8)], 4 * s, 6.5 * s);
        }
      } else if ((kind === "rosette")) {
        _rosette(work, spot, 3 * s);
      } else if ((kind === "tassel")) {
        work.sheet.put("trim", LINE, new Path([x, y - (5 * s)]).to([x, y]), new Path([x - (1 * s), y]).to([x - (1.5 * s), y + (5 * s)], [x + (1.5 * s), y + (5 * s)], [x + (1 * s), y]).close(), new Path([x - 0.4, y + 0.8]).to([x - 0.6, y + (4.6 * s)]), new Path([x + 0.4, y + 0.8]).to([x + 0.6, y + (4.6 * s)]));
      } else if ((kind === "anchor-motif")) {
        r = 2.6 * s;
        work.sheet.put("trim", LINE, ring([x, y - r], 0.55 * s), new Path([x, (y - r) + 0.5]).to([x, y + r]), new Path([x - (r * 0.6), y - (r * 0.45)]).to([x + (r * 0.6), y - (r * 0.45)]), new Path([x - (r * 0.9), y + (r * 0.35)]).bend([x - (r * 0.5), y + r], [x, y + r]).bend([x + (r * 0.5), y + r], [x + (r * 0.9), y + (r * 0.35)]));
      } else if ((kind === "monogram")) {
        r = 1.9 * s;
        work.sheet.put("trim", LINE, new Path([x - r, y + r]).to([x - r, y - r], [x, y + (r * 0.4)], [x + r, y - r], [x + r, y + r]), new Path([x - (r * 1.3), y + (r * 1.6)]).bend([x, y + (r * 1.1)], [x + (r * 1.3), y + (r * 1.6)]));
      } else {
        _rosette(work, spot, 2.4 * s);
        work.sheet.put("trim", LINE, new Path([x, y + (2.4 * s)]).bend([x + 1.4, y + (4.6 * s)], [x + 0.4, y + (7 * s)]));
      }
      return true;
    }
    function _rosette(work, spot, size) {
      let x, y, petals;
      [x, y] = spot;
      petals = [...range(6)].map((n) => ring([x + ((size * 0.6) * Math.cos((n * 2 * Math.PI) / 6)), y + ((size * 0.6) * Math.sin((n * 2 * Math.PI) / 6))], size * 0.34));
      work.sheet.put("trim", GROUND, petals);
      work.sheet.put("trim", GROUND, ring(spot, size * 0.32));
    }
    function _on_crown(work, kind) {
      let band;
      band = new Path([-8.4, 4]).bend([0, 6.6], [8.4, 4]).to([8.7, 7.2]).bend([0, 9.8], [-8.7, 7.2]).close();
      work.sheet.put("trim", TINT, band);
    }
    return { draw_trims };
  })();
  
  const bodices = (() => {
    const { FAINT, LINE, TINT, WASH } = hand;
    const { whole } = ink;
    const { neckline } = necks;
    const { Path, ring, smooth } = paths;
    const { term_id } = record;
    const { draw_godets } = skirts;
    function draw_yokes(work) {
      let outline, feature, name, x, y, s, legs;
      outline = work.outline;
      for (feature of work.record.all("yoke")) {
        name = term_id(feature);
        if ((name === "gusset")) {
          if (((outline != null) && (feature.at == null) && (work.legs == null))) {
            [[x, y], s] = [outline.underarm, work.s];
            work.sheet.both("yoke", LINE, new Path([x - 0.2, y + 0.2]).to([x - (3 * s), y + (3.4 * s)], [outline.half(y + (7 * s)), y + (7 * s)]));
            work.record.drew(feature);
          } else if ((work.legs != null)) {
            legs = work.legs;
            work.sheet.both("yoke", LINE, new Path([0, legs.fork - 5]).to([3.4 * work.s, legs.fork + 0.6]));
            work.record.drew(feature);
          }
          continue;
        }
        if ((outline == null)) {
          continue;
        }
        if ((name === "godet")) {
          if (truth(work.has_skirt)) {
            draw_godets(work, feature.count || 3);
            work.record.drew(feature);
          }
          continue;
        }
        if (_yoke(work, outline, name, feature)) {
          work.record.drew(feature);
        }
      }
    }
    function _yoke(work, outline, name, feature) {
      let sheet, s, sx, sy, ux, uy, on_armhole, neck, nx, ny, d, seam, y, start, half, low, wide, top, edge, x, area, share, panel;
      [sheet, s] = [work.sheet, work.s];
      [[sx, sy], [ux, uy]] = [outline.shoulder, outline.underarm];
      on_armhole = [Math.min(sx, ux) - 0.75, sy + ((uy - sy) * 0.55)];
      neck = neckline(outline);
      [[nx, ny], d] = [outline.neck, outline.depth];
      if ((name === "back-yoke")) {
        if (!truth(work.back)) {
          return false;
        }
        seam = new Path([0, uy - (5 * s)]).to([on_armhole[0], uy - (5.6 * s)]);
        sheet.both("yoke", LINE, seam);
        return true;
      }
      if (truth(work.back)) {
        return false;
      }
      if (truth(work.build.skirt)) {
        if ((name !== "hip-yoke")) {
          return false;
        }
        y = outline.top + (15 * s);
        sheet.put("yoke", LINE, outline.across(y));
        work.seams.push(new Path([outline.half(y), y]).bend([outline.half(y) * 0.5, y + 1], [0, y + 1]));
        return true;
      }
      if ((["shoulder-yoke", "shirt-yoke"].includes(name))) {
        y = sy + (((name === "shoulder-yoke") ? 3.6 : 2) * s);
        start = new Path([(nx + ((d - ny) * 0)) + 0.3, Math.max(ny + (2 * s), y - (0.6 * s))]);
        seam = start.bend([(nx + on_armhole[0]) / 2, y], [Math.min(sx, ux) - 0.55, sy + ((uy - sy) * 0.26)]);
      } else if ((name === "hip-yoke")) {
        y = Math.min(work.waist + (13 * s), outline.hem - 8);
        seam = new Path([outline.half(y), y]).bend([outline.half(y) * 0.5, y + 1.4], [0, y + 1.4]);
      } else if ((["square-yoke", "lace-yoke"].includes(name))) {
        y = Math.max(uy - (5 * s), (d < uy) ? (d + (2.5 * s)) : 0);
        if ((y > (uy + 3))) {
          y = uy - (3 * s);
        }
        seam = new Path([on_armhole[0], y - 0.4]).to([(d < y) ? 0 : (nx * 0.2), y]);
        if ((name === "lace-yoke")) {
          half = neck.reverse().to([sx, sy]).bend([Math.min(sx, ux) - 0.8, sy + 4], [on_armhole[0], y - 0.4]).to([0, y]);
          _lace(work, half, y);
        }
      } else if ((name === "round-yoke")) {
        seam = new Path([on_armhole[0], sy + ((uy - sy) * 0.4)]).curve([on_armhole[0] - 2, d + (6 * s)], [nx * 0.7, d + (7 * s)], [0, d + (7 * s)]);
      } else if ((name === "pointed-yoke")) {
        seam = new Path([on_armhole[0], uy - (8 * s)]).to([0, Math.max(uy + 1, d + (4 * s))]);
      } else if ((["vestee", "plastron", "chemisette"].includes(name))) {
        low = (name === "plastron") ? work.waist : ((name === "chemisette") ? Math.max(d, 8 * s) : Math.max(d, Math.min(work.waist, outline.hem) - 2));
        wide = (name === "plastron") ? (5.5 * s) : Math.min(nx, 6 * s);
        top = 7.5 * s;
        if (((["v", "surplice", "scoop", "square", "u", "sweetheart"].includes(outline.neckline)) && (d > (top + 3)))) {
          edge = (name === "vestee") ? Math.min(d * 0.5, 11 * s) : top;
          x = _neck_half(outline, edge);
          area = new Path([0, edge + 0.4]).to([x, edge]).curve([x * 0.8, edge + ((d - edge) * 0.4)], [x * 0.4, edge + ((d - edge) * 0.8)], [0, d]);
          sheet.put("yoke", WASH, whole(area));
          sheet.both("yoke", LINE, new Path([0, edge + 0.4]).to([x, edge]));
          if ((name === "chemisette")) {
            for (share of [0.3, 0.6]) {
              sheet.faint("yoke", new Path([x * share, edge]).to([(x * share) * 0.7, edge + ((d - edge) * (0.8 - (share * 0.5)))]));
            }
          }
          return true;
        }
        half = new Path([0, d]).bend([wide * 0.6, d], [wide, Math.min(d, ny + (6 * s))]).to([wide * 0.7, low]).to([0, low + 0.6]);
        sheet.put("yoke", TINT, whole(half));
        work.seams.push(new Path([wide, d]).to([wide * 0.7, low]));
        return true;
      } else if ((name === "panel")) {
        top = ((feature.at === "skirt") && truth(work.has_skirt)) ? work.waist : Math.max(d, uy - 2);
        low = truth(work.has_skirt) ? (outline.hem + outline.dip) : outline.hem;
        panel = outline.down(0.3, top, low - 0.3);
        sheet.both("yoke", LINE, panel);
        work.seams.push(panel);
        return true;
      } else {
        return false;
      }
      sheet.both("yoke", LINE, seam);
      work.seams.push(seam);
      return true;
    }
    function _neck_half(outline, y) {
      let points, a, b;
      points = neckline(outline).points(8);
      for ([a, b] of pairwise(points)) {
        if (((a[1] <= y && y <= b[1]) && (b[1] > a[1]))) {
          return a[0] + (((b[0] - a[0]) * (y - a[1])) / (b[1] - a[1]));
        }
      }
      return outline.neck[0];
    }
    function _lace(work, half, y) {
      let outline, top, row, level, column, x;
      outline = work.outline;
      work.sheet.put("yoke", WASH, whole(half));
      top = (outline.depth < (y - 3)) ? (outline.depth + 1.8) : (y - 4);
      for ([row, level] of enumerate([top, (top + y) / 2, y - 1.4])) {
        for (column of range(1, 5)) {
          x = ((column - (0.5 * (mod(row, 2)))) * 3) * work.s;
          if ((x < (outline.shoulder[0] - 2.5))) {
            work.sheet.faint("yoke", ring([x, level], 0.5));
          }
        }
      }
    }
    function draw_fullness(work) {
      let feature;
      for (feature of work.record.all("fullness")) {
        if (_fullness(work, term_id(feature), feature)) {
          work.record.drew(feature);
        }
      }
    }
    function _region(work, at, kind) {
      let outline, s, d, waist, bodice, top;
      outline = work.outline;
      if ((outline == null)) {
        return null;
      }
      [s, d] = [work.s, outline.depth];
      waist = Math.min(work.waist, outline.hem);
      bodice = [outline, Math.max(Math.min(d, 13 * s) + 1.5, outline.shoulder[1] + 4), Math.min(waist, outline.hem) - 0.5];
      if (truth(work.build.skirt)) {
        bodice = [outline, outline.top + (3.2 * s), outline.hem - 1];
      }
      if ((["hem"].includes(at))) {
        return [outline, outline.hem - (16 * work.figure.scale), outline.hem - 2];
      }
      if ((["skirt", "hip", "side"].includes(at))) {
        if (!truth(work.has_skirt)) {
          return [outline, outline.hem - (14 * s), outline.hem - 0.6];
        }
        top = truth(work.build.skirt) ? (outline.top + (3.2 * s)) : (waist + 0.4);
        return [outline, Math.max(top, ((at === "hip") && (top < work.figure.y("high-hip"))) ? work.figure.y("high-hip") : top), outline.hem + (outline.dip * 0.6)];
      }
      if ((at === "waist")) {
        return [outline, waist + 0.6, Math.min(waist + (9 * s), outline.hem - 1)];
      }
      if (((at == null) && (["knife-pleats", "box-pleats", "inverted-pleat", "accordion-pleats"].includes(kind)) && truth(work.has_skirt))) {
        return _region(work, "skirt", kind);
      }
      if (((at == null) && (["growth-tucks", "ruffle-tier"].includes(kind)) && truth(work.has_skirt))) {
        return _region(work, "hem", kind);
      }
      if (((at == null) && (kind === "gathers") && truth(work.has_skirt))) {
        return _region(work, "waist", kind);
      }
      return bodice;
    }
    function _fullness(work, kind, feature) {
      let at, place, outline, top, low, sheet, s, count, shares, half, share, number, centres, centre, wide, x, rows, row, long, place_on, deep, y;
      at = feature.at;
      if (((at === "leg") && (work.legs != null))) {
        return _on_leg(work, kind);
      }
      if ((at === "sleeve")) {
        return _on_sleeve(work, kind);
      }
      if (((at === "back") !== work.back)) {
        return false;
      }
      place = _region(work, at, kind);
      if ((place == null)) {
        return (work.legs != null) ? _on_leg(work, kind) : false;
      }
      [outline, top, low] = place;
      if (((low - top) < 2)) {
        return false;
      }
      [sheet, s] = [work.sheet, work.s];
      if ((["pin-tucks", "wide-tucks", "blind-tucks", "cross-tucks", "growth-tucks", "darts"].includes(kind))) {
        return _tucks(work, outline, kind, feature, top, low);
      }
      count = feature.count || 0;
      if ((["knife-pleats", "accordion-pleats"].includes(kind))) {
        if ((at === "side")) {
          shares = [0.62, 0.7, 0.78, 0.86];
        } else {
          half = Math.max(2, Math.min(10, Math.floor((count || ((kind === "knife-pleats") ? 10 : 18)) / 2)));
          shares = [...range(half)].map((place) => (((place + 0.5) / half) * 0.94));
        }
        for (share of shares) {
          sheet.both("pleats", LINE, outline.down(share, top, low - ((outline.dip * share) * share)));
        }
      } else if ((["box-pleats", "inverted-pleat", "cartridge-pleats"].includes(kind))) {
        number = count || ((kind === "inverted-pleat") ? 1 : 2);
        centres = (number === 1) ? [0] : ((number === 2) ? [0.3] : ((number === 3) ? [0, 0.5] : [0.22, 0.62]));
        for (centre of centres) {
          wide = (kind !== "inverted-pleat") ? 0.09 : 0.035;
          for (share of [centre - wide, centre + wide]) {
            if ((share > 0)) {
              sheet.both("pleats", LINE, outline.down(share, top, low, (share > centre) ? 0.03 : (-0.02)));
            }
          }
          if ((kind === "inverted-pleat")) {
            x = outline.half(top) * centre;
            if (truth(centre)) {
              sheet.both("pleats", LINE, outline.down(centre, top, low));
            } else {
              sheet.put("pleats", LINE, new Path([x, top]).to([x, low]));
            }
          }
        }
      } else if ((["gathers", "gauging", "shirring", "ruffle-tier"].includes(kind))) {
        rows = (["shirring", "gauging"].includes(kind)) ? 4 : ((kind === "ruffle-tier") ? (feature.count || 3) : 0);
        if ((kind === "ruffle-tier")) {
          for (row of range(rows)) {
            sheet.put("tiers", LINE, outline.across(low - (((low - top) * (row + 1)) / (rows + 0.4))));
          }
        }
        for (row of range((kind !== "ruffle-tier") ? rows : 0)) {
          sheet.put("gathers", FAINT, _row(outline, (top + 0.6) + ((row * 1.3) * s)));
        }
        long = Math.min(7.5 * s, (low - top) - 0.5);
        for (place_on of range(7)) {
          share = 0.07 + (0.13 * place_on);
          if (((top < outline.underarm[1]) && ((outline.half(top) * share) > (outline.shoulder[0] - 1.5)))) {
            continue;
          }
          sheet.faint("gathers", outline.down(share, top + 0.5, top + (long * item([1, 0.6], mod(place_on, 2)))));
        }
      } else if ((["smocking"].includes(kind))) {
        deep = Math.min(9 * s, low - top);
        rows = 4;
        for (row of range(rows)) {
          y = (top + 0.6) + ((deep * row) / rows);
          wide = outline.half(y) * 0.62;
          sheet.put("smocking", FAINT, _zigzag(-wide, wide, y, deep / rows, 12, (mod(row, 2)) === 1));
        }
      } else {
        return false;
      }
      return true;
    }
    function _row(outline, y) {
      let half;
      half = (y > outline.underarm[1]) ? outline.half(y) : Math.min(outline.half(y), outline.shoulder[0] - 2);
      return new Path([-half, y]).bend([0, y + 0.8], [half, y]);
    }
    function _zigzag(left, right, y, high, count, flip) {
      let step;
      step = (right - left) / count;
      return new Path([left, y + (truth(flip) ? high : 0)]).to(...([...range(count)].map((n) => [left + (step * (n + 1)), y + ((((mod(n, 2)) === 0) !== flip) ? high : 0)])));
    }
    function _tucks(work, outline, kind, feature, top, low) {
      let sheet, s, share, x, row, y, gap, half, first, end, lines, place, begin, stop;
      [sheet, s] = [work.sheet, work.s];
      if ((kind === "darts")) {
        for (share of [0.5]) {
          x = outline.half(work.waist) * share;
          sheet.both("tucks", LINE, new Path([x - 0.7, work.waist]).to([x, work.waist - (11 * s)], [x + 0.7, work.waist]));
        }
        return true;
      }
      if (((["growth-tucks"].includes(kind)) || (feature.at === "hem"))) {
        for (row of range(feature.count || ((kind === "growth-tucks") ? 2 : 3))) {
          y = outline.hem - ((5 + (3.2 * row)) * work.figure.scale);
          sheet.put("tucks", LINE, outline.across(y, outline.dip));
        }
        return true;
      }
      if (((["wide-tucks", "blind-tucks"].includes(kind)) && (["skirt", "hip"].includes(feature.at)))) {
        for (row of range(feature.count || 3)) {
          sheet.put("tucks", LINE, outline.across(low - ((6 + (4 * row)) * work.figure.scale)));
        }
        return true;
      }
      gap = item((new Map([["pin-tucks", 1.1], ["cross-tucks", 2.4], ["wide-tucks", 3], ["blind-tucks", 2.4]])), kind) * s;
      half = Math.max(2, Math.min((kind === "pin-tucks") ? 11 : 4, round((feature.count || 10) / 2)));
      if ((feature.at === "shoulder")) {
        first = outline.neck[0] + 1.2;
      } else if (((work.opening != null) || (outline.depth > (16 * s)))) {
        first = 1.6 * s;
      } else {
        first = gap / 2;
      }
      end = Math.min(low, top + (((kind === "pin-tucks") && (["yoke", "neckline"].includes(feature.at))) ? (15 * s) : 60));
      lines = [];
      for (place of range(half)) {
        x = first + (gap * place);
        if ((x > (outline.shoulder[0] - 2))) {
          break;
        }
        begin = Math.max((x < (outline.neck[0] * 0.5)) ? top : (_opening_at(outline, x) + 1), outline.on_shoulder(x) + 0.4);
        stop = (x < (outline.half(end) - 1)) ? end : ((begin + end) / 2);
        if (((stop - begin) > 3)) {
          lines.push(new Path([x, begin]).bend([x, stop - 4], [Math.min(x, outline.half(stop) * 0.92), stop]));
        }
      }
      sheet.both("tucks", (kind !== "pin-tucks") ? LINE : FAINT, ...lines);
      if ((kind === "cross-tucks")) {
        for (row of range(4)) {
          y = (top + 3) + ((row * 2.6) * s);
          x = first + (gap * half);
          sheet.put("tucks", FAINT, new Path([-x, y]).to([x, y]));
        }
      }
      return truth(lines);
    }
    function _opening_at(outline, x) {
      let best, px, py;
      best = outline.on_shoulder(x);
      for ([px, py] of neckline(outline).points(6)) {
        if ((Math.abs(px - x) < 1.3)) {
          best = Math.max(best, py);
        }
      }
      return best;
    }
    function _on_leg(work, kind) {
      let legs, middle, top, x, share;
      legs = work.legs;
      if ((legs == null)) {
        return false;
      }
      middle = (legs.inner + legs.outer) / 2;
      if ((["knife-pleats", "box-pleats", "inverted-pleat"].includes(kind))) {
        top = legs.waist + 3;
        x = legs.outer * 0.42;
        work.sheet.both("pleats", LINE, smooth([x, top], [middle, (legs.fork + legs.hem) / 2], [middle, legs.hem]));
        work.sheet.faint("pleats", new Path([x + 2.2, top]).to([x + 2.6, top + 9]));
        return true;
      }
      if ((["gathers", "shirring", "gauging", "smocking"].includes(kind))) {
        for (share of [0.2, 0.4, 0.6, 0.8]) {
          x = legs.inner + ((legs.outer - legs.inner) * share);
          work.sheet.faint("gathers", new Path([x, legs.hem]).to([x * 1.01, legs.hem - 4]));
        }
        return true;
      }
      if ((["wide-tucks", "pin-tucks", "growth-tucks"].includes(kind))) {
        work.sheet.both("tucks", LINE, legs.across(3), legs.across(4.6));
        return true;
      }
      return false;
    }
    function _on_sleeve(work, kind) {
      let end, ax, ay, bx, by, share, x, y;
      end = work.sleeve_end;
      if ((end == null)) {
        return false;
      }
      [[ax, ay], [bx, by]] = [end.start, end.end];
      for (share of [0.2, 0.4, 0.6, 0.8]) {
        [x, y] = [ax + ((bx - ax) * share), ay + ((by - ay) * share)];
        work.sheet.faint("gathers", new Path([x - 0.3, y - 0.6]).to([x - 1.3, y - 5]));
      }
      return true;
    }
    return { draw_fullness, draw_yokes };
  })();
  
  const sleeves = (() => {
    const { GROWN_ON } = bodies;
    const { FAINT, GROUND, LINE, TINT } = hand;
    const { Path, smooth } = paths;
    const { gigot_fullness } = periods;
    const NO_SLEEVE = ["none", "sleeveless", "strap"];
    class Shape {
      constructor(stations, lean = 17, rise = 0, cuff = 0, wrist = 0, gathers = [false, false]) { this.stations = stations; this.lean = lean; this.rise = rise; this.cuff = cuff; this.wrist = wrist; this.gathers = gathers; }
    }
    function _gigot(year) {
      let f;
      f = gigot_fullness(year);
      return new Shape([[5, 4 + (9 * f), 19 + (7 * f)], [14, 4 + (11 * f), 20 + (13 * f)], [23, 2 + (7 * f), 16 + (10 * f)], [31, 1 + (1.5 * f), 12 + (2 * f)], [42, 0.2, 10], [57, -0.4, 7]], 15, 1.6 + (3.6 * f), undefined, undefined, [true, false]);
    }
    function _bishop(year) {
      let full;
      full = (year < 1912) ? 1 : 0.7;
      return new Shape([[12, 0.6, 14], [26, 1.6, 15.5], [40, 2 + (2.2 * full), 16 + (5 * full)], [48, 2 + (2.4 * full), 17 + (5 * full)], [53, 0.4, 9.5]], undefined, undefined, 5, 8.4, [false, true]);
    }
    function _puff(year) {
      let high;
      high = (year < 1911) ? 1 : 0.6;
      return new Shape([[3, 3.4 + (1.5 * high), 18.5], [9, 4.4 + (1.6 * high), 20.5], [15, 2.8, 18], [18, -0.4, 12.5]], 19, 2.2 + (1.6 * high), 2.2, 12, [true, true]);
    }
    function _elbow(year) {
      if ((year >= 1909)) {
        return new Shape([[14, 0.8, 14.2], [31, 1.4, 13.6]]);
      }
      return new Shape([[10, 1, 14.6], [22, 3, 18], [29, 3.2, 18.6], [33, 0.2, 12]], undefined, undefined, 2.4, 11.4, [false, true]);
    }
    function _always(shape) {
      return (year) => shape;
    }
    const SHAPES = new Map([["set-in-long", _always(new Shape([[14, 0.7, 14], [30, 0.6, 12.2], [57, 0, 9.2]]))], ["long-fitted", _always(new Shape([[12, 0.5, 12.5], [30, 0.6, 10.2], [44, 0.1, 8.6], [58, -0.2, 6.4]]))], ["two-piece-coat", _always(new Shape([[13, 1, 15], [30, 1.4, 13.4], [45, 0.6, 12], [58, -0.8, 10.6]]))], ["shirt-sleeve", _always(new Shape([[14, 0.8, 15], [32, 0.8, 14], [50, 0.9, 12.8], [53, -0.6, 9.6]], undefined, undefined, 5, 9.2))], ["bishop", _bishop], ["gigot", _gigot], ["puff-short", _puff], ["virago", _always(new Shape([[8, 4, 20], [18, 0.6, 12], [28, 4.4, 20], [38, 0.4, 11], [42, 0, 10]], undefined, 1.5))], ["short", _always(new Shape([[9, 0.8, 15], [17, 1.3, 15.2]], 22))], ["cap", _always(new Shape([[7.5, 0.9, 11.5]], 30))], ["elbow", _elbow], ["three-quarter", _always(new Shape([[14, 0.8, 14], [42, 0.8, 12.4]]))], ["raglan", _always(new Shape([[14, 0.9, 14.6], [30, 0.9, 13], [57, 0, 9.6]]))], ["kimono", _always(new Shape([[14, 1, 17], [27, 2, 17.6]], 25))], ["dolman", _always(new Shape([[20, 1, 20], [40, 0.6, 12], [57, 0, 7.6]], 22))], ["bell", _always(new Shape([[14, 0.6, 14], [30, 1.8, 16.4], [44, 4.6, 24]]))], ["pagoda", _always(new Shape([[14, 0.3, 13], [32, 1.6, 17], [48, 7.5, 33]]))], ["flutter", _always(new Shape([[7, 1.8, 15.5], [17, 6.2, 25]], 22))], ["cape-sleeve", _always(new Shape([[12, 2.4, 19], [30, 8, 33]], 18))]]);
    function draw_sleeves(work) {
      let outline, choice, shape, arm, pen, area, outer, inner, end, sheet, cuff, foot, t, o, w, share;
      [outline, choice] = [work.outline, work.chosen.sleeve];
      if (((outline == null) || truth(work.build.skirt) || (has(NO_SLEEVE, choice.id)))) {
        return;
      }
      shape = get(SHAPES, choice.id, item(SHAPES, "set-in-long"))(work.year);
      if (((choice.id === "kimono") && (work.build.body === "skirt") && truth(work.build.open) && (work.build.shape === "loose"))) {
        shape = new Shape([[14, 1, 19], [46, 3, 22]], 22);
      }
      arm = new _Arm(work, shape);
      pen = work.edge(choice);
      [area, outer, inner, end] = arm.pieces((has(GROWN_ON, choice.id)) || (choice.id === "raglan"));
      sheet = work.sheet;
      sheet.cloth("sleeve", area, area.mirror(0));
      sheet.both("sleeve", pen, outer, inner, end);
      [work.sleeve_end, work.sleeve_outer] = [end, outer];
      if (truth(shape.cuff)) {
        [cuff, foot] = arm.cuff();
        sheet.both("cuff", truth(work.chosen.sleeve.feature) ? GROUND : FAINT, cuff);
        if (truth(work.record.has("colour/contrast-two-colour"))) {
          sheet.both("cuff", TINT, cuff);
        }
        work.sleeve_end = foot;
      }
      _gathers(work, arm, shape);
      if ((choice.id === "two-piece-coat")) {
        sheet.faint("sleeve", smooth(arm.spot(12, -9), arm.spot(31, -7.4), arm.spot(46, -7), arm.spot(56.5, -7.4)));
      }
      if ((["flutter", "cape-sleeve", "pagoda", "bell"].includes(choice.id))) {
        [t, o, w] = shape.stations.at(-1);
        for (share of [0.3, 0.6]) {
          sheet.faint("sleeve", new Path(arm.spot(t - 0.4, o - (w * share))).to(arm.spot(t * 0.45, (-4.5) - (6 * share))));
        }
      }
      if ((choice.id === "virago")) {
        for (share of [0.25, 0.5, 0.75]) {
          sheet.faint("sleeve", smooth(arm.spot(4, 2 - (14 * share)), arm.spot(18, 0.4 - (11 * share)), arm.spot(40, (-10) * share)));
        }
        for ([t, w] of [[18, 12], [38, 11]]) {
          sheet.both("sleeve", LINE, new Path(arm.spot(t, 0.4)).to(arm.spot(t, 0.6 - w)));
        }
      }
    }
    function draw_armholes(work) {
      let outline, choice, pen, x, y, ux, uy;
      [outline, choice] = [work.outline, work.chosen.sleeve];
      if (((outline == null) || truth(work.build.skirt) || (has(GROWN_ON, choice.id)))) {
        return;
      }
      pen = work.edge(choice);
      if ((choice.id === "raglan")) {
        [[x, y], [ux, uy]] = [outline.neck, outline.underarm];
        work.sheet.both("armhole", pen, new Path([x * 0.92, y + 2.5]).curve([x + 3, y + 6], [ux - 3, uy - 5], [ux, uy]));
        return;
      }
      if (((["halter", "off-shoulder"].includes(outline.neckline)) && !(truth(work.back) && (outline.neckline === "halter")))) {
        work.sheet.both("armhole", LINE, outline.armhole());
      } else if ((outline.neckline === "one-shoulder")) {
        work.sheet.put("armhole", LINE, truth(work.back) ? outline.armhole().mirror(0) : outline.armhole());
      } else if ((outline.neckline !== "halter")) {
        pen = ((!has(NO_SLEEVE, choice.id)) || truth(choice.assumed)) ? pen : LINE;
        work.sheet.both("armhole", pen, outline.armhole());
      }
    }
    class _Arm {
      constructor(work, shape) {
        let degrees, lean;
        [this.outline, this.shape] = [work.outline, shape];
        this.size = work.figure.girth;
        this.long = work.figure.arm / 57;
        this.way = [0, 1];
        for (degrees of range(round(shape.lean), 34, 2)) {
          lean = radians(degrees);
          this.way = [Math.sin(lean), Math.cos(lean)];
          if ((truth(work.has_skirt) || this._clears())) {
            break;
          }
        }
      }
      _clears() {
        let places;
        places = [...this.shape.stations.slice(1)].map(([t, o, w]) => this.spot(t, o - w));
        return [...places].filter(([x, y]) => (y < this.outline.hem)).map(([x, y]) => (x > (this.outline.half(y) - 0.5))).every(truth);
      }
      spot(along, out) {
        let sx, sy, dx, dy, t, o;
        [[sx, sy], [dx, dy]] = [this.outline.shoulder, this.way];
        [t, o] = [along * this.long, out * this.size];
        return [(sx + (dx * t)) + (dy * o), (sy + (dy * t)) - (dx * o)];
      }
      pieces(from_neck) {
        let shape, outline, under, outs, ins, start, outer, up, head, end, inner;
        [shape, outline] = [this.shape, this.outline];
        under = outline.underarm;
        outs = [...shape.stations].map(([t, o, ]) => this.spot(t, o));
        ins = [...shape.stations].map(([t, o, w]) => this.spot(t, o - w));
        ins = [...enumerate(ins)].map(([index, [x, y]]) => [Math.max(x, under[0] + (0.4 * index)), y]);
        start = outline.shoulder;
        if (truth(from_neck)) {
          outer = smooth(outline.neck, outline.shoulder, ...outs);
        } else if (truth(shape.rise)) {
          up = shape.rise * this.size;
          head = [start[0] + (3.2 * this.size), start[1] - up];
          outer = smooth(start, head, ...outs);
        } else {
          outer = smooth(start, ...outs);
        }
        end = new Path(outs.at(-1)).bend([((outs.at(-1)[0] + ins.at(-1)[0]) / 2) + 0.5, ((outs.at(-1)[1] + ins.at(-1)[1]) / 2) + 1.2], ins.at(-1));
        inner = smooth(...reversed(ins), under);
        return [outer.then(end).then(inner).close(), outer, inner, end];
      }
      cuff() {
        let t, o, w, middle, half, top_out, top_in, low_out, low_in;
        [t, o, w] = this.shape.stations.at(-1);
        [middle, half] = [o - (w / 2), this.shape.wrist / 2];
        [top_out, top_in] = [this.spot(t, (middle + half) + 0.3), this.spot(t, (middle - half) - 0.3)];
        [low_out, low_in] = [this.spot(t + this.shape.cuff, middle + half), this.spot(t + this.shape.cuff, middle - half)];
        return [new Path(top_out).to(low_out, low_in, top_in).close(), new Path(low_out).to(low_in)];
      }
    }
    function _gathers(work, arm, shape) {
      let top, end, lines, t, o, w, share, head, t2, o2, w2;
      [top, end] = shape.gathers;
      lines = [];
      if (truth(top)) {
        [t, o, w] = item(shape.stations, Math.min(1, shape.stations.length - 1));
        for (share of [0.12, 0.36, 0.6]) {
          head = arm.spot(1 + (7 * share), (shape.rise * (0.7 - share)) - (1.5 * share));
          lines.push(new Path(head).bend(arm.spot(t * 0.5, (o * 0.7) - ((w * share) * 0.7)), arm.spot(t * 0.95, (o * 0.75) - (w * share))));
        }
      }
      if (truth(end)) {
        [t, o, w] = shape.stations.at(-1);
        [t2, o2, w2] = shape.stations.at(-2);
        for (share of [0.16, 0.34, 0.52]) {
          lines.push(new Path(arm.spot(t, o - (w * share))).bend(arm.spot(t2 + 1, o2 - (w2 * share)), arm.spot(t2 - 5, (o2 * 0.8) - (w2 * ((share * 0.8) + 0.1)))));
        }
      }
      work.sheet.faint("sleeve", ...lines);
    }
    return { draw_armholes, draw_sleeves };
  })();
  
  const cloth = (() => {
    const { tag } = marks;
    const { term_id } = record;
    const FLOWER = "M14 22c6-12 16-4 8 3c12-3 12 10 1 8c2 12-12 10-8 0c-11 3-11-9-1-11";
    const PATTERNS = new Map([["striped", [42, "M10 0v42", 0]], ["tennis-stripe", [60, "M20 0v60M27 0v60", 0]], ["checked", [56, "M0 16h56M0 24h56M16 0v56M24 0v56", 0]], ["spotted", [64, "M16 16l.1 0M48 48l.1 0", 0]], ["floral-print", [88, FLOWER + "M60 66c5-9 13-3 7 3c9-3 9 8 1 7c2 9-10 8-7 0c-9 2-9-8-1-10M58 16l8-8M20 74l-8 8", 0]], ["border-print", [88, FLOWER, 0]], ["jacquard-woven", [60, "M30 12l14 18l-14 18l-14-18z", 0]], ["navy", [26, "M0 26L26 0M-5 5L5 -5M21 31L31 21", 0.1]], ["black", [20, "M0 20L20 0M-5 5L5 -5M15 25L25 15", 0.2]], ["bright", [40, "M0 40L40 0", 0.05]], ["mauve-aniline", [40, "M0 40L40 0", 0.07]], ["synthetic-indigo-blue", [30, "M0 30L30 0", 0.09]], ["khaki", [44, "M0 44L44 0", 0.05]], ["pastel", [0, "", 0.035]], ["natural", [0, "", 0.03]]]);
    const FABRICS = new Map([["gingham", [44, "M0 11h44M11 0v44", 0]], ["seersucker", [30, "M8 0c4 8-4 12 0 30", 0]], ["tweed", [36, "M4 8l6 6M22 4l6 6M14 24l6 6M30 20l4 4", 0.04]], ["towelling", [34, "M6 6c4 0 4 5 0 5M22 20c4 0 4 5 0 5", 0]], ["pique", [20, "M0 10h20", 0]], ["velvet", [18, "M6 0v18", 0.14]], ["velveteen", [18, "M6 0v18", 0.1]], ["lace-cloth", [36, "M18 8a10 10 0 1 0 .1 0", 0]], ["worsted-knit", [22, "M4 4l5 8l5-8", 0]], ["cotton-knit", [22, "M4 4l5 8l5-8", 0]], ["elastic-knit", [22, "M4 4l5 8l5-8", 0]], ["wool-jersey", [28, "M5 6l4 7l4-7", 0]], ["smocked", [22, "M4 4l5 8l5-8", 0]]]);
    const PLAIN = ["white", "plain"];
    function cloth_of(record) {
      let pattern, tone, names, feature, name, size, lines, dark;
      pattern = null;
      tone = 0;
      names = [];
      for (feature of record.all("colour")) {
        name = term_id(feature);
        if ((has(PLAIN, name))) {
          record.drew(feature);
        } else if (((has(PATTERNS, name)) && (feature.at == null))) {
          [size, lines, dark] = item(PATTERNS, name);
          record.drew(feature);
          names.push(name);
          tone = Math.max(tone, dark);
          if ((truth(size) && ((pattern == null) || (!["navy", "black", "bright"].includes(name))))) {
            pattern = [size, lines, dark];
          }
        }
      }
      for (feature of record.all("fabric")) {
        name = term_id(feature);
        if (((has(FABRICS, name)) && (feature.at == null) && (pattern == null))) {
          [size, lines, dark] = item(FABRICS, name);
          [pattern, tone] = [[size, lines, dark], Math.max(tone, dark)];
          names.push(name);
          record.drew(feature);
        }
      }
      if (((pattern == null) && (tone === 0))) {
        return [null, new Markup("")];
      }
      [size, lines, ] = pattern || [40, "", 0];
      return ["cloth-" + names.join("-"), _definition("cloth-" + names.join("-"), size, lines, tone)];
    }
    function _definition(name, size, lines, tone) {
      let square, parts, wide;
      square = new Map([["width", size], ["height", size]]);
      parts = [tag("rect", new Map([...square, ["class", "ground"], ["fill", "Canvas"], ["stroke", "none"]]))];
      if (truth(tone)) {
        parts.push(tag("rect", new Map([...square, ["fill", "currentColor"], ["fill-opacity", tone], ["stroke", "none"]])));
      }
      if (truth(lines)) {
        wide = (has(lines, "l.1 0")) ? 9 : 2.2;
        parts.push(tag("path", new Map([["d", lines], ["fill", "none"], ["stroke", "currentColor"], ["stroke-width", wide], ["stroke-linecap", "round"], ["stroke-opacity", 0.5]])));
      }
      return tag("pattern", new Map([["id", name], ...square, ["patternUnits", "userSpaceOnUse"]]), ...parts);
    }
    return { cloth_of };
  })();
  
  const rules = (() => {
    class Rule {
      constructor(says, hides) { this.says = says; this.hides = hides; }
    }
    function _in(...facets) {
      return (feature, record, build) => (has(facets, feature.facet));
    }
    function _no_trunk(feature, record, build) {
      let trunk;
      trunk = ["neckline", "collar", "sleeve"];
      return (!truth(build.body)) && (!truth(build.head)) && (has(trunk, feature.facet));
    }
    function _second_of_one(feature, record, build) {
      let single, shown;
      single = ["silhouette", "neckline", "collar", "waist", "skirt-length", "sleeve", "skirt-cut"];
      if ((!has(single, feature.facet))) {
        return false;
      }
      shown = [...record.features].filter((each) => ((same(each.facet, feature.facet)) && (each.state === "shown"))).map((each) => each);
      return (shown.length > 1) && (feature !== shown[0]);
    }
    function _slip_on(feature, record, build) {
      return (["fastening/hooks-and-eyes", "fastening/press-studs", "fastening/slide-fastener"].includes(feature.term)) && (record.has("closure/slip-on") != null) && (record.all("closure").length === 1);
    }
    function _no_skirt(feature, record, build) {
      let skirted;
      skirted = build.skirt || (build.body === "skirt") || build.under;
      return (["skirt-cut", "skirt-length"].includes(feature.facet)) && (!truth(skirted));
    }
    function _inside_waist(feature, record, build) {
      return (feature.facet === "waist") && (!truth(build.body)) && (!truth(build.skirt));
    }
    function _no_silhouette(feature, record, build) {
      return (feature.facet === "silhouette") && (!truth(build.body)) && (!truth(build.skirt));
    }
    function _sleeveless_cuff(feature, record, build) {
      return (feature.at === "cuff") && ((record.has("sleeve/sleeveless", "sleeve/strap") != null) || (!truth(build.body)));
    }
    function _unseen_seam(feature, record, build) {
      let shows;
      shows = ["seam/hem-stitched", "seam/slot-seam", "seam/lapped-seam", "seam/welt-seam", "seam/picot-machine"];
      return (feature.facet === "seam") && (!has(shows, feature.term));
    }
    const RULES = [new Rule("a lining or its boning lies inside", _in("lining")), new Rule("how it was worked does not show in outline", _in("work")), new Rule("the inside of a seam does not show", _unseen_seam), new Rule("nothing above the waist is drawn of this garment", _no_trunk), new Rule("another term of the same kind is drawn; only one can be", _second_of_one), new Rule("a garment slipped on has no opening for it to close", _slip_on), new Rule("this garment has no skirt", _no_skirt), new Rule("legs are drawn by their own width and length", _inside_waist), new Rule("legs are drawn by their own width and length", _no_silhouette), new Rule("there is no sleeve for it to be on", _sleeveless_cuff)];
    function apply_rules(record, build) {
      let feature, rule;
      for (feature of record.features) {
        if ((feature.state !== "shown")) {
          continue;
        }
        for (rule of RULES) {
          if (truth(rule.hides(feature, record, build))) {
            record.leave(feature, rule.says);
            break;
          }
        }
      }
    }
    return { apply_rules };
  })();
  
  const drawn = (() => {
    const { GROWN_ON, body_of, legs_of } = bodies;
    const { cloth_of } = cloth;
    const { figure_for } = figure;
    const { SKIRT, build_of } = garments;
    const { LINE } = hand;
    const { draw_head } = heads;
    const { whole } = ink;
    const { Path } = paths;
    const { NEUTRAL_YEAR, period_of } = periods;
    const { Choice, Record } = record;
    const { apply_rules } = rules;
    const { Chosen, Work } = work;
    class View {
      constructor(marks, outline, legs, opening) { this.marks = marks; this.outline = outline; this.legs = legs; this.opening = opening; }
    }
    class Drawn {
      constructor(front, back, frame, pattern, definition, undrawn, drawn, assumed = []) { this.front = front; this.back = back; this.frame = frame; this.pattern = pattern; this.definition = definition; this.undrawn = undrawn; this.drawn = drawn; this.assumed = assumed; }
    }
    const FRAMES = new Map([["whole", [56, -12, 146]], ["bather", [48, -12, 116]], ["suit", [34, -10, 98]], ["upper", [48, -12, 80]], ["jacket", [52, -12, 86]], ["lower", [56, 32, 146]], ["seat", [34, 34, 112]], ["head", [30, -14, 22]]]);
    const CHILDRENS = ["child-frock", "child-suit", "romper"];
    const MENS = ["lounge-suit", "nightshirt", "flannels", "shirt"];
    function draw(features, chain, who, year) {
      let told, build, figure, record, period, chosen, outline, legs, pattern, definition, front, back, frame;
      told = (year == null) ? NEUTRAL_YEAR : year;
      build = build_of(chain, told);
      if ((build == null)) {
        return null;
      }
      figure = _figure(chain, who);
      record = new Record([...features]);
      apply_rules(record, build);
      period = period_of(told);
      chosen = _choose(record, build, period, figure);
      [outline, legs] = _outlines(record, build, figure, period, told, chosen, chain);
      [pattern, definition] = cloth_of(record);
      front = _side(new Work(record, build, figure, period, told, chosen, outline, legs));
      back = null;
      if (((outline != null) && _shows_back(record))) {
        back = _side(new Work(record, build, figure, period, told, chosen, outline, legs, true));
      }
      frame = _frame(build, figure);
      return new Drawn(front, back, frame, pattern, definition, [...record.left()], [...record.drawn()], [...record.assumed]);
    }
    function _figure(chain, who) {
      if ((has(chain, "infant-gown"))) {
        return figure_for("infant");
      }
      if (((["any", "woman", "man"].includes(who)) && [...CHILDRENS].map((each) => (has(chain, each))).some(truth))) {
        return figure_for("girl");
      }
      if (((who === "any") && [...MENS].map((each) => (has(chain, each))).some(truth))) {
        return figure_for("man");
      }
      return figure_for(who);
    }
    function _frame(build, figure) {
      let half, top, foot, k;
      [half, top, foot] = item(FRAMES, build.frame);
      if ((figure.name === "infant")) {
        half += 14;
      }
      k = (build.frame === "head") ? 1 : ((figure.name === "man") ? 1.05 : Math.min(1, figure.scale));
      return [(-half) * k, top * k, (2 * half) * k, (foot - top) * k];
    }
    function _shows_back(record) {
      if ((record.has("closure/back", "closure/back-yoke", "yoke/back-yoke") != null)) {
        return true;
      }
      return [...record.features].map((f) => ((f.at === "back") && (f.state === "shown"))).some(truth);
    }
    function _choose(record, build, period, figure) {
      let grown, trunk, skirted, chosen;
      grown = figure.name === "woman";
      const usual = (own, of_period, plain) => {
        return own || (truth(grown) ? of_period : plain);
      };
      if (truth(build.head)) {
        return new Chosen();
      }
      trunk = truth(build.body) && (!truth(build.skirt));
      skirted = build.skirt || (build.body === "skirt") || build.under;
      chosen = new Chosen((truth(trunk) || truth(skirted)) ? record.choose("silhouette", usual(build.shape, period.silhouette, "tubular")) : new Chosen().silhouette, truth(trunk) ? _neckline(record, usual(build.neck, period.neckline, "round")) : new Chosen().neckline, truth(trunk) ? record.choose("collar", build.collar) : new Chosen().collar, truth(trunk) ? _sleeve(record, usual(build.sleeve, period.sleeve, "set-in-long")) : new Chosen().sleeve, (truth(trunk) || truth(skirted)) ? record.choose("waist", usual(build.waist, period.waist, "natural")) : new Chosen().waist, truth(skirted) ? record.choose("skirt-cut", usual(build.cut, period.cut, "straight")) : new Chosen().cut, truth(skirted) ? record.choose("skirt-length", usual(build.length, period.length, "knee")) : new Chosen().length);
      return chosen;
    }
    function _neckline(record, default_) {
      let choice;
      if (truth(record.has(...([...necks.STANDING].map((name) => (`collar/${name}`))), "collar/shirt-collar"))) {
        default_ = "high";
      } else if (truth(record.has("collar/notched", "collar/shawl", "collar/revers", "collar/sailor"))) {
        default_ = "v";
      }
      choice = record.choose("neckline", default_);
      return (choice.id !== "none") ? choice : new Choice("round");
    }
    function _sleeve(record, default_) {
      let choice;
      if (truth(record.has("neckline/halter", "neckline/one-shoulder"))) {
        default_ = "sleeveless";
      }
      choice = record.choose("sleeve", default_);
      return (choice.id === "none") ? new Choice("sleeveless", choice.feature) : choice;
    }
    function _outlines(record, build, figure, period, year, chosen, chain) {
      let outline, neckline, legs, edge, wide;
      outline = null;
      if ((truth(build.body) || truth(build.skirt))) {
        neckline = chosen.neckline.id;
        if ((truth(build.open) && (["round", "jewel"].includes(neckline)) && (["notched", "shawl", "revers"].includes(chosen.collar.id)))) {
          neckline = "v";
        }
        outline = body_of(build, figure, period, chosen.silhouette.id, neckline, chosen.sleeve.id, chosen.waist, truth(build.under) ? "" : chosen.cut.id, chosen.length.id);
      }
      legs = null;
      if (truth(build.legs)) {
        edge = truth(record.has("lower-edge/short-skirt-leg")) ? "short-skirt-leg" : "";
        wide = (has(chain, "beach-pyjamas")) ? 1.5 : ((has(chain, "pyjamas")) ? 1.2 : 1);
        legs = legs_of(build, figure, year, outline, edge, wide);
      }
      return [outline, legs];
    }
    function _side(work) {
      let part;
      for (part of PARTS) {
        part(work);
      }
      return new View([...work.sheet.marks], work.outline, work.legs, work.opening);
    }
    function _draw_body(work) {
      let outline, hem, middle, foot, half, edge, area, shoulder, neck, right;
      outline = work.outline;
      if ((outline == null)) {
        return;
      }
      hem = outline.hem_line();
      middle = [0, outline.hem + outline.dip];
      foot = new Path([outline.halves.at(-1), outline.hem]).bend([outline.halves.at(-1) * 0.5, middle[1]], middle);
      if (truth(work.build.skirt)) {
        half = new Path([0, outline.top]).to(outline.side.start).then(outline.side).then(foot);
        work.sheet.cloth("body", whole(half));
        work.sheet.line("side", outline.side);
        return;
      }
      edge = skirts.hem_edge(work, outline);
      if ((outline.neckline === "one-shoulder")) {
        area = necks.slant(outline).reverse().to(outline.shoulder).then(outline.armhole()).then(outline.side);
        area = area.then(edge).then(outline.side.mirror(0).reverse()).close();
        work.sheet.cloth("body", truth(work.back) ? area.mirror(0) : area);
        work.sheet.line("side", outline.side);
        shoulder = new Path(outline.neck).to(outline.shoulder);
        work.sheet.put("shoulder", LINE, truth(work.back) ? shoulder.mirror(0) : shoulder);
        return;
      }
      neck = truth(work.back) ? necks.back_neck(outline) : necks.neckline(outline);
      half = neck.reverse();
      if (!(truth(work.back) && (outline.neckline === "halter"))) {
        half = half.to(outline.shoulder).then(outline.armhole());
      }
      if ((same(edge, hem))) {
        work.sheet.cloth("body", whole(half.then(outline.side).then(foot)));
      } else {
        right = half.then(outline.side).then(edge);
        work.sheet.cloth("body", right.then(half.then(outline.side).mirror(0).reverse()).close());
      }
      work.sheet.line("side", outline.side);
      if (((!has(GROWN_ON, work.chosen.sleeve.id)) && !(truth(work.back) && (outline.neckline === "halter")))) {
        work.sheet.line("shoulder", new Path(outline.neck).to(outline.shoulder));
      }
    }
    function _draw_pockets(work) {
      let outline, s, y, pocket;
      [outline, s] = [work.outline, work.s];
      if (((outline == null) || truth(work.back) || ![...work.record.features].map((feature) => (feature.at === "pocket")).some(truth))) {
        return;
      }
      y = Math.min(outline.hem - (10 * s), work.figure.y("high-hip"));
      pocket = new Path([9 * s, y]).to([15.5 * s, y], [15.5 * s, y + (8 * s)]).bend([12.2 * s, y + (9.4 * s)], [9 * s, y + (8 * s)]).close();
      if (((15.5 * s) < outline.half(y + (8 * s)))) {
        work.sheet.both("pocket", LINE, pocket);
      }
    }
    function _draw_under(work) {
      let chosen, outline, under;
      if (!truth(work.build.under)) {
        return;
      }
      chosen = work.chosen;
      outline = body_of(SKIRT, work.figure, work.period, chosen.silhouette.id, "", "", new Choice("natural"), chosen.cut.id, chosen.length.id);
      under = new Work(work.record, SKIRT, work.figure, work.period, work.year, chosen, outline, null, work.back, work.sheet);
      _draw_body(under);
      skirts.draw_folds(under);
      skirts.draw_hem(under);
      work.under = under;
    }
    function _only_heads(work) {
      if (truth(work.build.head)) {
        draw_head(work);
      }
    }
    const PARTS = [_only_heads, necks.draw_behind, lower.draw_legs, _draw_under, sleeves.draw_sleeves, _draw_body, sleeves.draw_armholes, skirts.draw_folds, skirts.draw_waist, skirts.draw_hem, necks.draw_neckline, bodices.draw_yokes, closures.draw_closure, bodices.draw_fullness, _draw_pockets, lower.draw_lower_edges, collars.draw_collar, trims.draw_trims, closures.draw_fastenings];
    return { draw };
  })();
  
  const flat = (() => {
    const { draw } = drawn;
    const { INK, PAPER, SCALE, markup } = ink;
    const { number, tag } = marks;
    const PIXELS = 4;
    class Flat {
      constructor(drawn, title, undrawn, assumed) { this.drawn = drawn; this.title = title; this.undrawn = undrawn; this.assumed = assumed; }
      get width() {
        return round(this.drawn.frame[2] * SCALE);
      }
      get height() {
        return round(this.drawn.frame[3] * SCALE);
      }
      get svg() {
        return this._inline(this.drawn.back, 1.25);
      }
      get small() {
        return this._inline(null, 1);
      }
      get _front() {
        return _view(this.drawn, this.drawn.front, 0);
      }
      _inline(back, weight) {
        let left, top, wide, high, body, definition;
        [left, top, wide, high] = this.drawn.frame;
        [body, definition] = [[this._front], this.drawn.definition];
        if ((back == null)) {
          return this._svg([left, top, wide, high], body, "currentColor", weight, definition);
        }
        body.push(_view(this.drawn, back, wide));
        return this._svg([left, top, 2 * wide, high], body, "currentColor", weight, definition);
      }
      get file() {
        let left, top, wide, high, ground, body, definition;
        [left, top, wide, high] = this.drawn.frame;
        ground = tag("rect", new Map([["x", round(left * SCALE)], ["y", round(top * SCALE)], ["width", this.width], ["height", this.height], ["fill", PAPER], ["stroke", "none"]]));
        [body, definition] = [[ground, this.printed], printed(this.drawn.definition)];
        return this._svg([left, top, wide, high], body, INK, (0.0088 * high) * SCALE, definition);
      }
      get printed() {
        return printed(this._front);
      }
      _svg(frame, body, ink, weight, defs) {
        let wide, high, box, lines, parts;
        [, , wide, high] = frame;
        box = new Map([["xmlns", "http://www.w3.org/2000/svg"], ["class", "flat"], ["viewBox", ([...frame].map((each) => String(round(each * SCALE)))).join(" ")], ["width", round(wide * PIXELS)], ["height", round(high * PIXELS)], ["role", "img"], ["aria-label", this.title]]);
        lines = new Map([["fill", "none"], ["stroke", ink], ["stroke-width", number(weight)], ["stroke-linecap", "round"], ["stroke-linejoin", "round"]]);
        parts = [tag("title", new Map([]), this.title)];
        if (truth(defs)) {
          parts.push(tag("defs", new Map([]), defs));
        }
        return tag("svg", box, ...parts, tag("g", lines, ...body));
      }
    }
    function _view(drawn, view, across) {
      return new Markup(markup(view.marks, drawn.pattern, undefined, across).join(""));
    }
    function printed(drawing) {
      let inked;
      inked = String(drawing).replaceAll("currentColor", INK).replaceAll("Canvas", PAPER);
      return new Markup(inked.replaceAll(" vector-effect=\"non-scaling-stroke\"", ""));
    }
    function draw_plan(features, garment, vocabulary, year, who = "any", by = "the records") {
      return _flat(features, vocabulary.broader_garments(garment), who, year, vocabulary, by);
    }
    function _flat(features, chain, who, year, vocabulary, by) {
      let drawn, garment, name, shown, title, undrawn;
      drawn = draw(features, chain, who, year);
      if ((drawn == null)) {
        return null;
      }
      const label = (key) => {
        let term;
        term = get(vocabulary.terms, key);
        return truth(term) ? term.label : partition(key, "/")[2].replaceAll("-", " ");
      };
      garment = get(vocabulary.garments, chain[0]);
      name = truth(garment) ? garment.label : chain[0].replaceAll("-", " ");
      shown = [...new Set([...drawn.drawn].filter((f) => truth(f.term)).map((f) => label(f.term)))].join(", ");
      title = (`${name.slice(0, 1).toUpperCase()}${name.slice(1)}, a flat drawn from ${by}`) + (truth(shown) ? (`: ${shown}`) : "");
      undrawn = [...([...drawn.undrawn].map(([f, reason]) => (`${label(f.term || "")}${truth(f.at) ? (` (${f.at})`) : ""}: ${reason}`)))];
      return new Flat(drawn, title, undrawn, [...([...drawn.assumed].map((key) => label(key)))]);
    }
    return { draw_plan };
  })();
  InPeriod.drawPlan = flat.draw_plan;
  InPeriod.neutralYear = periods.NEUTRAL_YEAR;
  if (typeof module !== "undefined") module.exports = InPeriod;
})(globalThis);
