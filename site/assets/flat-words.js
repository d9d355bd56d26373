// What Python's own words mean in a browser, for the drawing of flats that was put over from Python.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod ||= {});

  /** Text that is markup already and is not escaped again. */
  class Markup {
    constructor(text) {
      this.text = text;
    }
    toString() {
      return this.text;
    }
  }

  /** Arguments given by name to a function that takes any number of others: the last of them. */
  class Named {
    constructor(values) {
      this.values = values;
    }
  }
  const named = (given) => (given.at(-1) instanceof Named ? given.pop().values : {});

  const SIGNS = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&#34;", "'": "&#39;" };
  const escape = (value) => (value instanceof Markup ? value : String(value).replace(/[&<>"']/g, (sign) => SIGNS[sign]));

  /** Nothing is true that is empty, nought or absent. */
  function truth(value) {
    if (value instanceof Markup) return value.text !== "";
    if (value instanceof Map) return value.size > 0;
    return Array.isArray(value) ? value.length > 0 : Boolean(value);
  }

  /** Values are the same when all in them is, as tuples and dataclasses are. */
  function same(a, b) {
    if (a === b || typeof a !== "object" || typeof b !== "object" || a === null || b === null) return a === b;
    if (a.constructor !== b.constructor) return false;
    const names = Object.keys(a);
    return names.length === Object.keys(b).length && names.every((name) => same(a[name], b[name]));
  }

  /** To the nearest whole number, a half to the even one. */
  function round(value) {
    const low = Math.floor(value),
      rest = value - low;
    return rest < 0.5 || (rest === 0.5 && low % 2 === 0) ? low : low + 1;
  }

  const get = (table, key, otherwise = null) => (table.has(key) ? table.get(key) : otherwise);
  const item = (held, key) => (held instanceof Map ? held.get(key) : held.at(key));
  const has = (held, key) => (held instanceof Map ? held.has(key) : held.includes(key));
  const setdefault = (table, key, value) => (table.has(key) ? table.get(key) : (table.set(key, value), value));
  const bound = (held, name) => held[name].bind(held);
  const replace = (value, changes) => Object.assign(Object.create(Object.getPrototypeOf(value)), value, changes);

  const range = (...ends) => {
    const [begin, end] = ends.length > 1 ? ends : [0, ends[0]],
      step = ends[2] || 1;
    return Array.from({ length: Math.max(0, Math.ceil((end - begin) / step)) }, (_, at) => begin + at * step);
  };
  const enumerate = (values) => [...values].map((value, at) => [at, value]);
  const pairwise = (values) => [...values].slice(1).map((value, at) => [values[at], value]);
  const zip = (first, second) => [...first].slice(0, second.length).map((value, at) => [value, second[at]]);
  const reversed = (values) => [...values].reverse();
  const sorted = (values) => [...values].sort((a, b) => a - b);
  const least = (values, otherwise, better) =>
    values.length ? values.reduce((best, each) => (better(each, best) ? each : best)) : otherwise;
  const maxOf = (values, otherwise) => least([...values], otherwise, (a, b) => a > b);
  const minOf = (values, otherwise) => least([...values], otherwise, (a, b) => a < b);
  const mod = (value, by) => value - by * Math.floor(value / by);
  const radians = (degrees) => degrees * (Math.PI / 180);

  function bisect_left(values, value) {
    const at = values.findIndex((each) => each >= value);
    return at < 0 ? values.length : at;
  }
  function bisect_right(values, value) {
    const at = values.findIndex((each) => each > value);
    return at < 0 ? values.length : at;
  }

  function partition(text, sign) {
    const at = text.indexOf(sign);
    return at < 0 ? [text, "", ""] : [text.slice(0, at), sign, text.slice(at + sign.length)];
  }
  function rstrip(text, signs) {
    let end = text.length;
    while (end && signs.includes(text[end - 1])) end -= 1;
    return text.slice(0, end);
  }

  InPeriod.flatWords = {
    Markup, Named, bisect_left, bisect_right, bound, enumerate, escape, get, has, item, maxOf, minOf, mod, named,
    pairwise, partition, radians, range, replace, reversed, round, rstrip, same, setdefault, sorted, truth, zip,
  };
  if (typeof module !== "undefined") module.exports = InPeriod;
})(globalThis);
