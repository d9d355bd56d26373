/* Dates in the browser: spans, EDTF and the phrases people type, by the same rules as the Python package's
   dating room. That room explains the rules; this is its port, part by part and in the same order, and
   vectors written there are run against it. Everything stands on InPeriod.dating. The words are not here:
   they come as the data "dates" (lexicon.py), which have to be there before a phrase is read. */
"use strict";

(function (root) {

  const InPeriod = (root.InPeriod ||= {});

  class Unreadable extends Error {}
  class Undated extends Unreadable {}
  const refuse = (why) => { throw new Unreadable(why); };

  /* The match of a whole text, as an array, or null. */
  const matcher = (pattern) => {
    const whole = new RegExp(`^(?:${pattern.source})$`);
    return (text) => whole.exec(text);
  };
  const two = (n) => String(n).padStart(2, "0");
  const lines = (text) => text.split("\n").map((line) => line.split(" "));

  // ---- days (days.py) ----

  const MONTH_NAMES = "January February March April May June July August September October November December".split(" ");
  const BEFORE_MONTH = [0, 0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334, 365];
  const mod = (n, by) => ((n % by) + by) % by;
  const isLeap = (year) => mod(year, 4) === 0 && (mod(year, 100) !== 0 || mod(year, 400) === 0);
  const monthLength = (year, month) => BEFORE_MONTH[month + 1] - BEFORE_MONTH[month] + (month === 2 && isLeap(year) ? 1 : 0);

  /* 1 is 0001-01-01 in the proleptic Gregorian calendar. */
  function dayNumber(year, month = 1, day = 1) {
    if (month < 1 || month > 12) refuse(`there is no month ${month}`);
    if (day < 1 || day > monthLength(year, month)) refuse(`there is no ${day} ${MONTH_NAMES[month - 1]} in the year ${year}`);
    const past = year - 1, leapDay = month > 2 && isLeap(year) ? 1 : 0;
    return past * 365 + Math.floor(past / 4) - Math.floor(past / 100) + Math.floor(past / 400) + BEFORE_MONTH[month] + leapDay + day;
  }

  function dateOf(number) {
    let year = Math.floor((number - 1) / 365.2425) + 1, month = 12;
    while (number < dayNumber(year)) year -= 1;
    while (number >= dayNumber(year + 1)) year += 1;
    while (number < dayNumber(year, month)) month -= 1;
    return [year, month, number - dayNumber(year, month) + 1];
  }

  const isoYear = (year) => (year < 0 ? "-" : year > 9999 ? "+" : "") + String(Math.abs(year)).padStart(4, "0");

  function isoDay(number) {
    const [year, month, day] = dateOf(number);
    return `${isoYear(year)}-${two(month)}-${two(day)}`;
  }

  function monthsLater(number, months) {
    const [year, month, day] = dateOf(number);
    const count = year * 12 + month - 1 + months, y = Math.floor(count / 12), m = mod(count, 12) + 1;
    return dayNumber(y, m, Math.min(day, monthLength(y, m)));
  }

  // ---- spans (span.py) ----

  const span = (earliest, latest, approximate = false, uncertain = false, earlyMargin = null, lateMargin = null) =>
    ({ earliest, latest, approximate, uncertain, earlyMargin, lateMargin });

  function widened(of, circaYears = 5) {
    const months = { years: 12 * circaYears, months: 3 };
    const moved = (day, margin, sign) => (margin && day !== null ? monthsLater(day, sign * months[margin]) : day);
    return span(moved(of.earliest, of.earlyMargin, -1), moved(of.latest, of.lateMargin, 1), of.approximate, of.uncertain);
  }

  // ---- EDTF (edtf.py) ----

  const MOST_YEARS = 1e12;
  const DATE = matcher(/([?~%]?)(-?[0-9X]{4}|Y-?(?:[0-9]{5,13}|[0-9]{1,13}E[0-9]{1,2}))(?:S([1-9][0-9]?))?([?~%]?)(?:-([?~%]?)([0-9X]{2})([?~%]?)(?:-([?~%]?)([0-9X]{2})([?~%]?))?)?/);
  const TIME = matcher(/(-?[0-9]{4}-[0-9]{2}-[0-9]{2})T([0-9]{2}):([0-9]{2}):([0-9]{2})(?:Z|[+-][0-9]{2}(?::?[0-9]{2})?)?/);
  const STARTS = { northern: [3, 6, 9, 12], southern: [9, 12, 3, 6] };
  const WRAPPING = { northern: 24, southern: 22 };

  function readEdtf(text, seasons = "northern") {
    if (text.length > 1000) refuse(`a date of ${[...text].length} characters is too long to be one`);
    if (text[0] === "[" || text[0] === "{") return readSet(text, seasons);
    if (!text.includes("/")) return readDate(text, seasons);
    const ends = text.split("/");
    if (ends.length !== 2) refuse(advice(text));
    if (ends.every((end) => end === "" || end === "..")) refuse(`“${text}” has neither a beginning nor an end: give one of them`);
    return fromTo(ends.map((end) => (end === ".." ? "" : end)), "/", text, text, seasons);
  }

  function fromTo([first, last], between, text, whole, seasons) {
    const [start, end] = [first, last].map((each) => (each ? readDate(each, seasons, whole) : span(null, null)));
    if (first && last && start.earliest > end.latest) refuse(`“${text}” ends before it begins: did you mean ${last}${between}${first}?`);
    return span(start.earliest, end.latest, start.approximate || end.approximate, start.uncertain || end.uncertain, start.earlyMargin, end.lateMargin);
  }

  function readSet(text, seasons) {
    if (text.at(-1) !== (text[0] === "[" ? "]" : "}") || text.length < 3)
      refuse(`“${text}” is not a set: write [1926,1927] for one of them, {1926,1927} for all`);
    const members = text.slice(1, -1).split(",").map((member) => {
      const at = member.indexOf("..");
      if (at < 0) return readDate(member, seasons, text);
      if (member === "..") refuse(`“${text}” has a member with neither a beginning nor an end`);
      return fromTo([member.slice(0, at), member.slice(at + 2)], "..", member, text, seasons);
    });
    const outermost = (key, pick) => {
      const days = members.map((each) => each[key]);
      return days.includes(null) ? null : pick(...days);
    };
    const earliest = outermost("earliest", Math.min), latest = outermost("latest", Math.max);
    const widest = (key, day, margin) => {
      const found = members.filter((each) => each[key] === day).map((each) => each[margin]);
      return ["years", "months"].find((each) => found.includes(each)) || null;
    };
    return span(earliest, latest, members.some((each) => each.approximate), members.some((each) => each.uncertain),
      widest("earliest", earliest, "earlyMargin"), widest("latest", latest, "lateMargin"));
  }

  /* `whole` is what the date is a part of, for complaints. */
  function readDate(text, seasons, whole = text) {
    const found = DATE(text);
    if (!found) {
      const timed = TIME(text);
      if (!timed) refuse(advice([...whole].length < 60 ? whole : text));
      if (timed[2] > 24 || timed[3] > 59 || timed[4] > 60) refuse(`“${text}” gives a time of day that does not exist`);
      return readDate(timed[1], seasons, whole);
    }
    const [, q1, year, figures, g1, q2, month, g2, q3, day, g3] = found;
    if ((figures || year[0] === "Y") && (month || year.includes("X"))) refuse(`“${text}” mixes a year of its own kind with other parts: give the year alone`);
    const marks = [q1, g1, q2, g2, q3, g3].join("");
    const finer = (day && day !== "XX" && (q3 || g3)) || (month && month !== "XX" && (q2 || g2 || g3));
    const margin = marks ? (finer ? "months" : "years") : null;
    const [low, high] = bounds(text, seasons, year, figures, month, day);
    return span(low, high, /[~%]/.test(marks), /[?%]/.test(marks), margin, margin);
  }

  function bounds(text, seasons, year, figures, month, day) {
    if (figures || year[0] === "Y") {
      const [first, last] = countedYears(text, year, Number(figures || 0));
      return [dayNumber(first), dayNumber(last, 12, 31)];
    }
    if (/^-(?:0000|000X|00XX|0XXX|XXXX)$/.test(year)) refuse(`“${text}”: the year before 0001 is 0000, without a minus`);
    const [low, high] = yearsFrom(year);
    if (month > 20) {
      if (day) refuse(`“${text}” gives a day in a season: give a month, or leave the day out`);
      return grouping(text, Number(month), low, high, seasons);
    }
    const months = fits(month || "XX", 12), days = fits(day || "XX", 31);
    if (!months.length) refuse(noMonth(text, year, month));
    if (!days.length) refuse(`“${text}”: there is no day ${day} in any month`);
    const exists = (y, m, d) => d <= monthLength(y, m);
    if (!months.some((m) => days.some((d) => exists(4, m, d)))) refuse(`“${text}”: there is no ${days[0]} ${MONTH_NAMES[months[0] - 1]}`);
    const fitting = matcher(new RegExp(year.replace("-", "").replace(/X/g, "[0-9]")));
    const seek = (from, to, step, ms, ds) => {
      for (let y = from; step > 0 ? y <= to : y >= to; y += step)
        if (fitting(String(Math.abs(y)).padStart(4, "0")))
          for (const m of ms) for (const d of ds) if (exists(y, m, d)) return dayNumber(y, m, d);
      return refuse(`“${text}”: ${days[0]} ${MONTH_NAMES[months[0] - 1]} is not in that year: it is no leap year`);
    };
    const first = seek(low, high, 1, months, days);
    return [first, seek(high, low, -1, months.reverse(), days.reverse())];
  }

  function yearsFrom(pattern) {
    const ends = ["0", "9"].map((digit) => Number(pattern.replace("-", "").replace(/X/g, digit)));
    return pattern[0] === "-" ? [-ends[1], -ends[0]] : ends;
  }

  function fits(pattern, most) {
    const fitting = matcher(new RegExp(pattern.replace(/X/g, "[0-9]")));
    return Array.from({ length: most }, (_, at) => at + 1).filter((n) => fitting(two(n)));
  }

  function countedYears(text, year, figures) {
    const [number, exponent] = year.replace("Y", "").split("E");
    const size = Math.abs(Number(number)) * 10 ** Number(exponent || 0);
    if (!(size <= MOST_YEARS)) refuse(`“${text}” is too far away in time to be counted`);
    const step = figures ? 10 ** Math.max(String(size).length - figures, 0) : 1;
    const low = Math.floor(size / step) * step, high = low + step - 1;
    return number[0] === "-" ? [0 - high, 0 - low] : [low, high];
  }

  function grouping(text, code, firstYear, lastYear, seasons) {
    if (code > 41) refuse(noMonth(text, text.slice(0, 4), String(code)));
    const start = code < 25 ? STARTS[seasons][code - 21] : code < 29 ? STARTS.northern[code - 25]
      : code < 33 ? STARTS.southern[code - 29] : code < 37 ? 1 + 3 * (code - 33) : code < 40 ? 1 + 4 * (code - 37) : 1 + 6 * (code - 40);
    const count = start + (code < 37 ? 3 : code < 40 ? 4 : 6) - 2;
    const year = lastYear + Math.floor(count / 12), month = (count % 12) + 1;
    return [dayNumber(firstYear, start), dayNumber(year, month, monthLength(year, month))];
  }

  function noMonth(text, year, month) {
    const said = `“${text}”: ${month} is not a month or a season`;
    if (/^\d{4}\d\d$/.test(year + month) && month > year.slice(2)) {
      const end = year.slice(0, 2) + month;
      return `${said}; for ${year} to ${end} write ${year}/${end}`;
    }
    return `${said}; months are 01 to 12, seasons 21 (spring) to 24 (winter)`;
  }

  function advice(text) {
    const bare = text.trim();
    for (const [pattern, meant] of InPeriod.data.dates.slips) {
      const found = new RegExp(`^(?:${pattern})$`, "i").exec(bare);
      if (found) return `“${text}” is not an EDTF date: ${meant.replace(/\{(\d)\}/g, (_, at) => found[Number(at) + 1])}`;
    }
    if (!bare) return "there is no date here";
    return `“${shortened(text)}” is not an EDTF date; write for example 1912, 1912-09, 1912-23 (autumn 1912), 1910~ (about 1910), 1910/1915 or ../1906`;
  }
  const shortened = (text) => (text.length <= 60 || [...text].length <= 60 ? text : [...text].slice(0, 57).join("") + "…");

  // ---- in words (words.py) ----

  const PLAIN = matcher(/(-?)(\d{4})(?:-(\d\d)(?:-(\d\d))?)?/);
  const DOUBTS = { "": "", "~": "about ", "?": "perhaps ", "%": "perhaps about " };
  const trailing = (date) => date.replace(/[~?%]+$/, "");

  function inWords(date, seasons = "northern") {
    if (typeof date !== "string") return spanInWords(date);
    readEdtf(date, seasons);
    if (date[0] === "[" || date[0] === "{") {
      return date.slice(1, -1).split(",").map((each) => (each.includes("..") ? betweenWords(each.split(".."), seasons) : dateWords(each, seasons)))
        .join(date[0] === "[" ? " or " : " and ");
    }
    return date.includes("/") ? betweenWords(date.split("/"), seasons) : dateWords(date, seasons);
  }

  function betweenWords([first, last], seasons) {
    const open = (end) => end === "" || end === "..";
    if (open(first)) {
      const bare = trailing(last);
      if (!/^\d{4}$/.test(bare) || bare === "9999") return `${dateWords(last, seasons)} or earlier`;
      const told = dateWords(String(Number(bare) + 1).padStart(4, "0") + last.slice(bare.length), seasons);
      return told.startsWith("perhaps ") ? `perhaps before ${told.slice(8)}` : `before ${told}`;
    }
    return open(last) ? `${dateWords(first, seasons)} or later` : toWords(dateWords(first, seasons), dateWords(last, seasons));
  }

  function toWords(first, last) {
    const doubt = ["perhaps about ", "about ", "perhaps "].find((each) => first.startsWith(each) && last.startsWith(each));
    if (doubt) last = last.slice(doubt.length);
    const front = first.split(" "), back = last.split(" ");
    while (front.length > 1 && back.length > 1 && front.at(-1) === back.at(-1)) { front.pop(); back.pop(); }
    return `${front.join(" ")} to ${last}`;
  }

  function dateWords(text, seasons) {
    const marks = [...new Set(text.match(/[~?%]/g) || [])];
    return DOUBTS[marks.length > 1 ? "%" : marks.join("")] + bareWords(text.replace(/[~?%]/g, ""), seasons);
  }

  function bareWords(text, seasons) {
    let found;
    if (/^\d{3}X$/.test(text)) return `the ${text.slice(0, 3)}0s`;
    if ((found = /^(-?)(\d\d)XX$/.exec(text))) return `the ${ordinal(Number(found[2]) + 1)} century${found[1] && " BC"}`;
    if ((found = PLAIN(text))) {
      const year = yearWords(Number(found[1] + found[2])), number = Number(found[3] || 0);
      const years = number === WRAPPING[seasons] || number === 28 || number === 30 ? `${year}–${two((Number(found[2]) + 1) % 100)}` : year;
      if (number > 20) return InPeriod.data.dates.groupings[number - 21].replace("{}", years);
      const day = found[4] ? Number(found[4]) + " " : "";
      const month = number ? MONTH_NAMES[number - 1] + " " : "";
      return day + month + year;
    }
    if ((found = /^Y?(-?[0-9E]+)(?:S([0-9]+))?$/.exec(text))) {
      const figures = found[2] ? ` to ${found[2]} significant ${found[2] === "1" ? "digit" : "digits"}` : "";
      return `the year ${found[1].replace("E", "×10^")}${figures}`;
    }
    return spanInWords(readEdtf(text, seasons));
  }

  const yearWords = (year) => (year < 1 ? `${1 - year} BC` : year < 1000 ? `AD ${year}` : String(year));
  const ordinal = (n) => n + (n % 100 > 10 && n % 100 < 14 ? "th" : ["th", "st", "nd", "rd"][n % 10] || "th");

  function spanInWords(of) {
    const first = of.earliest === null ? null : dateOf(of.earliest), last = of.latest === null ? null : dateOf(of.latest);
    const years = (!first || (first[1] === 1 && first[2] === 1)) && (!last || (last[1] === 12 && last[2] === 31));
    const months = (!first || first[2] === 1) && (!last || last[2] === monthLength(last[0], last[1]));
    const told = ([y, m, d], margin) => (margin ? (of.uncertain ? "perhaps " : "") + (of.approximate ? "about " : "") : "")
      + (years || months ? "" : `${d} `) + (years ? "" : `${MONTH_NAMES[m - 1]} `) + yearWords(y);
    const start = first ? told(first, of.earlyMargin) : "", end = last ? told(last, of.lateMargin) : "";
    if (start && end) return start === end ? start : toWords(start, end);
    if (end) return years ? `before ${told([last[0] + 1, 1, 1], of.lateMargin)}` : `${end} or earlier`;
    return start ? `${start} or later` : "no date";
  }

  // ---- tokens (tokens.py) ----

  const SPACES = /[\s\x1c-\x1f\x85\u200b]+/g;
  const TOKEN = /[0-9]+(?:st|nd|rd|th|ste|de|eme|ere|re|ies|ern|er|s|e|o|a)?(?![a-z0-9])|[0-9]+|[a-z]+|[^ a-z0-9]/g;
  const ROMAN = matcher(/(x{0,2})(ix|iv|v?i{0,3})(?:e|eme|th|o)?/);
  const UNITS = ["", "i", "ii", "iii", "iv", "v", "vi", "vii", "viii", "ix"];
  const AFTER_CENTURY = ["", "-", "/", "to", "and", "or", ",", ")", "(", "?", ";", "bc", "ad", "circa"];
  const YEARLESS = /(?:^| )(?:s\d\d|m\d+(?: \d\d?(?: (?:-|to|and|or|\/) \d\d?)?)?)$/;
  const DOUBTFUL = ["circa", "poss", "?"];
  const COUNTED = matcher(/r?\d\d?/);
  const BEFORE_DASH = ["early", "mid", "late", "later", "earlier", "circa", "before", "after"];

  /* The words made ready, when a phrase is first read. */
  const lexicon = () => (lexicon.made ||= madeReady(InPeriod.data.dates));

  function madeReady({ months, words, fillers, decade_words, undated, events, ranks, periods, idioms }) {
    return {
      known: knownWords(months, words),
      fillers: new Set(fillers.split(/\s/)),
      decadeWords: decade_words.split(" "),
      undated: new Set(undated.split(/[|\n]/)),
      eventRanks: new Map(lines(events).flatMap(([rank, ...called]) => called.map((word) => [word, ranks[rank]]))),
      unnamed: ranks.unnamed,
      periods: new Map(periods.split("\n").map((line) => line.split(/ (?=\d)/))),
      idioms: idioms.map(([pattern, instead]) => [new RegExp(pattern, "g"), instead]),
    };
  }

  function knownWords(months, others) {
    const numbers = new Map(), words = new Map();
    lines(months).forEach((line, at) => line.forEach((word) => {
      for (let length = 3; length <= word.length; length += 1) {
        const start = word.slice(0, length);
        numbers.set(start, numbers.has(start) && numbers.get(start) !== at ? -1 : at);
      }
    }));
    numbers.forEach((at, word) => { if (at >= 0) words.set(word, `m${at + 1}`); });
    for (const [said, ...called] of lines(others)) {
      for (const word of called) words.set(word, said);
      if (/^[a-z]+$/.test(said)) words.set(said, said);
    }
    return words;
  }

  function tidy(text) {
    return text.replace(/[\u2010-\u2015\u2212\ufe58\ufe63\uff0d]/g, "-").toLowerCase().normalize("NFKD")
      .replace(SPACES, " ").replace(/[\u0300-\u036f]/g, "").replace(/\u00df/g, "ss")
      .replace(/['`\u00b4\u2018\u2019\u201b\u2032]/g, "'").replace(/([0-9]) ?' ?s\b/g, "$1s").replace(/\b[dl]'/g, "").replace(/'/g, " ")
      .replace(/([0-9]) ?\. ?(?=[0-9])/g, "$1 # ").replace(/[[\]"“”„«».]/g, " ")
      .split(" ").filter((word) => word).join(" ")
      .replace(/\b([0-9]) ([0-9]) ([0-9]) ([0-9])\b/g, "$1$2$3$4");
  }

  function tokens(plain) {
    for (const [pattern, instead] of lexicon().idioms) plain = plain.replace(pattern, instead);
    const found = (plain.match(TOKEN) || []).map((typed) => ({ said: saidBy(typed), typed }));
    return joinedUp(found.filter((each) => !lexicon().fillers.has(each.typed) && each.typed !== ":"));
  }

  function saidBy(word) {
    if (/^[0-9]/.test(word)) {
      const number = /^[0-9]+/.exec(word)[0], ending = word.slice(number.length);
      if (["s", "er", "ern", "ies"].includes(ending) && (number.length === 2 || number.length === 4) && number.endsWith("0")) return `${number}s`;
      return number.length <= 2 ? number : word;
    }
    const { known } = lexicon();
    if (known.has(word)) return known.get(word);
    const roman = ROMAN(word);
    return roman && roman[1] + roman[2] ? `r${10 * roman[1].length + UNITS.indexOf(roman[2])}` : word;
  }

  function joinedUp(row) {
    const kept = [], { decadeWords } = lexicon();
    let before = "";
    const decades = row.some((each) => decadeWords.includes(each.typed)) && row.every((each) => !/^\d{3}[1-9]$/.test(each.said));
    row.forEach(({ said, typed }, at) => {
      const [after, nextAfter] = [at + 1, at + 2].map((each) => (each < row.length ? row[each].said : ""));
      if (typed === "c") {
        said = (COUNTED(before) && AFTER_CENTURY.includes(after)) || (COUNTED(after) && AFTER_CENTURY.includes(nextAfter) && !(at > 1 && /^\d{4}$/.test(row[at - 2].said))) ? "century" : "circa";
      }
      else if (typed === "s" && before[0] === "r") said = "century";
      else if (/^\d{3}0$/.test(said) && (after === "s" || decades)) said += "s";
      else if (decadeWords.includes(typed) || (said === "s" && before.endsWith("0s")) || (typed === "-" && joinsWords(before, after))
        || (typed === "(" && DOUBTFUL.includes(after) && nextAfter === ")") || (typed === ")" && DOUBTFUL.includes(before))
        || (typed === "," && /^\d{4}$/.test(after) && YEARLESS.test(saidIn(row.slice(Math.max(0, at - 4), at))))) return;
      kept.push({ said, typed });
      before = said;
    });
    return kept;
  }

  const joinsWords = (before, after) => before === "to" || after === "to" || (after === "century" && COUNTED(before))
    || (BEFORE_DASH.includes(before) && /^(?:[0-9]|[mrs][0-9]|century)/.test(after));

  // ---- rules for one date (rules.py); each gives { edtf, note } or null ----

  const say = (edtf, note = "") => ({ edtf, note });
  const notesOf = (...notes) => [...new Set(notes.filter((note) => note))].join("; ");
  const CENTURY = matcher(/(?:r?(\d\d?) century|century r?(\d\d?))( bc| ad)?/);
  const MONTH_YEAR = matcher(/[mr](\d+) (\d{4})|(\d{4}) m(\d+)|(\d{4}) \/ r(\d+)|(\d\d?) [/#-] (\d{4})|(\d{4}) \/ (\d\d?)/);
  const DAYS = [[/(\d\d?) m(\d+) (\d{4})/, "dmy"], [/m(\d+) (\d\d?) (\d{4})/, "mdy"], [/(\d{4}) (?:, )?m(\d+) (\d\d?)/, "ymd"],
    [/(\d\d?) (?:[/#-] )?r(\d+) (?:[/#-] )?(\d{4})/, "dmy"], [/(\d{4}) [/#-] (\d\d?) [/#-] (\d\d?)/, "ymd"],
    [/(\d\d?) # (\d\d?) # (\d{4})/, "dmy"]].map(([pattern, order]) => [matcher(pattern), order]);
  const NUMERIC = matcher(/(\d\d?) ([/-]) (\d\d?) \2 (\d{4})/);
  const SEASON = matcher(/s(\d\d) (\d{4})(?: [-/] (\d\d|\d{4}))?/);
  const TWO_SEASONS = matcher(/s(\d\d)(?: (?:and|-|\/|to))? s(\d\d) (\d{4})(?: [-/] (\d\d|\d{4}))?/);
  const YEAR_FIRST = matcher(/(\d{4}(?: [-/] (?:\d\d|\d{4}))?) (s\d\d.*)/);
  const titled = (name) => name.replace(/\b[a-z]/g, (letter) => letter.toUpperCase());
  const completedBy = (year, digits) => year.slice(0, -digits.length) + digits;

  function existingDay(y, m, d) {
    dayNumber(y, m, d);
    return say(`${String(y).padStart(4, "0")}-${two(m)}-${two(d)}`);
  }

  const year = (text) => (/^\d{4}$/.test(text) ? say(text) : null);

  function decade(text) {
    const found = /^(\d\d)(\d)0(?:(s)|d|s \( decade \))$/.exec(text);
    if (!found) return null;
    const [, hundred, ten, mark] = found;
    return ten === "0" && mark
      ? say(`${hundred}XX`, `${hundred}00s is read as the century; for the decade write ${hundred}0X`) : say(`${hundred}${ten}X`);
  }

  function century(text) {
    const found = CENTURY(text), number = found ? Number(found[1] || found[2]) : 0;
    if (number < 1 || number > 21) return null;
    if (found[3] === " bc") return say(number === 1 ? "-0099/0000" : `-${two(number - 1)}XX`);
    return say(`${two(number - 1)}XX`);
  }

  function withBlanks(text) {
    const found = /^(?:(\d{3}) -|(\d\d) - -)$/.exec(text);
    return found ? say(found[1] ? `${found[1]}X` : `${found[2]}XX`) : null;
  }

  function withEra(text) {
    const found = /^(?:(\d{1,4}) (bc|ad)|ad (\d{1,4}))$/.exec(text), number = found ? Number(found[1] || found[3]) : 0;
    return number ? say(isoYear(found[2] === "bc" ? 1 - number : number)) : null;
  }

  function part(text) {
    const found = /^(early|mid|late|later|earlier) (.+)$/.exec(text), whole = found && divisible(found[2]);
    if (!whole) return null;
    const third = ["early", "mid", "late"].indexOf(found[1]);
    return third < 0 ? piece(whole, 2, found[1] === "later" ? 2 : 1) : piece(whole, 3, third + 1);
  }

  function fraction(text) {
    const found = /^(\d|third|last) (quarter|half|third) (?:, )?(.+)$/.exec(text), whole = found && divisible(found[3]);
    if (!whole) return null;
    const pieces = { half: 2, third: 3, quarter: 4 }[found[2]];
    return piece(whole, pieces, count(found[1], pieces));
  }

  function partLast(text, seasons) {
    const found = /^(.+?) [,(] (early|mid|late|later|earlier|[ms]\d+|(?:\d|third|last) (?:quarter|half|third))(?: \))?$/.exec(text);
    return found && firstOf([part, fraction, monthAndYear, season], `${found[2]} ${found[1]}`, seasons);
  }

  function nthDecade(text) {
    const found = /^(\d\d?|third|last) decade (\d\d? century)$/.exec(text), whole = found && century(found[2]);
    const number = whole ? count(found[1], 10) : 0;
    return number >= 1 && number <= 10 ? say(`${whole.edtf.slice(0, 2)}${number - 1}X`) : null;
  }

  function monthAndYear(text) {
    const found = MONTH_YEAR(text);
    if (!found) return null;
    const y = found[2] || found[3] || found[5] || found[8] || found[9];
    const m = Number(found[1] || found[4] || found[6] || found[7] || found[10]);
    const end = found[10];
    if (end && Number(end) > Number(y.slice(-end.length))) {
      const later = completedBy(y, end);
      if (m > 12) return say(`${y}/${later}`);
      refuse(`“${y}/${end}” can be a month or a year: write ${y}-${two(m)} or ${y}/${later}`);
    }
    return m >= 1 && m <= 12 ? say(`${y}-${two(m)}`) : null;
  }

  function day(text) {
    for (const [match, order] of DAYS) {
      const found = match(text);
      if (found) return existingDay(...["y", "m", "d"].map((which) => Number(found[order.indexOf(which) + 1])));
    }
    return null;
  }

  function numericDay(text) {
    const found = NUMERIC(text);
    if (!found) return null;
    const first = Number(found[1]), second = Number(found[3]), y = Number(found[4]);
    if (first > 12) return existingDay(y, second, first);
    const doubtful = first !== second && second <= 12;
    if (found[2] === "-" && doubtful) refuse(`${first}-${second}-${y} can be read in two ways: write the month as a word`);
    return say(existingDay(y, first, second).edtf, doubtful ? "the month is read first, then the day" : "");
  }

  const yearLast = (text) => {
    const found = YEAR_FIRST(text);
    return found ? `${found[2]} ${found[1]}` : text;
  };

  function season(text, seasons) {
    const found = SEASON(yearLast(text));
    if (!found) return null;
    const [, code, y, next] = found;
    const follows = !next || (Number(completedBy(y, next)) === Number(y) + 1 && Number(code) === WRAPPING[seasons]);
    return follows ? say(`${y}-${code}`) : null;
  }

  function twoSeasons(text, seasons) {
    const found = TWO_SEASONS(yearLast(text));
    if (!found) return null;
    const first = Number(found[1]), second = Number(found[2]), wrapping = WRAPPING[seasons];
    let y = Number(found[3]);
    if (second !== ((first - 20) % 4) + 21) return null;
    const pair = found[4] && Number(completedBy(found[3], found[4])) === y + 1;
    if (found[4] && (!pair || (wrapping !== first && wrapping !== second))) return null;
    if (first === wrapping && !pair) y -= 1;
    return say(`${isoYear(y)}-${first}/${isoYear(y + (first === wrapping || second === 21 ? 1 : 0))}-${second}`);
  }

  function period(text) {
    const name = text.replace(/(?: era)?(?: dynasty)?(?: period)?$/, ""), dates = lexicon().periods.get(name);
    return dates ? say(dates, `${titled(name)} is read as ${dates.replace("/", " to ")}`) : null;
  }

  const RULES_FOR_DATES = [year, decade, century, withBlanks, withEra, part, fraction, partLast, nthDecade, day, numericDay, monthAndYear, season, twoSeasons, period];

  function firstOf(rules, text, seasons) {
    for (const rule of rules) {
      const said = rule(text, seasons);
      if (said) return said;
    }
    return null;
  }

  const divisible = (text) => firstOf([year, decade, century, monthAndYear], text);
  const count = (word, of) => (word === "last" ? of : word === "third" ? 3 : Number(word));

  function piece(whole, pieces, number) {
    if (number < 1 || number > pieces) return null;
    const { edtf, note } = whole;
    if (/^\d\dXX$/.test(edtf)) {
      const cuts = { 2: [0, 50, 100], 3: [0, 34, 67, 100], 4: [0, 25, 50, 75, 100] }[pieces], hundred = edtf.slice(0, 2);
      return say(`${hundred}${two(cuts[number - 1])}/${hundred}${two(cuts[number] - 1)}`, note);
    }
    if (/^\d{3}X$/.test(edtf) && pieces < 4) {
      const tens = { 2: [0, 5, 10], 3: [0, 4, 7, 10] }[pieces], ten = edtf.slice(0, 3);
      return say(`${ten}${tens[number - 1]}/${ten}${tens[number] - 1}`, note);
    }
    if (/^\d{4}$/.test(edtf)) return say(`${edtf}-${{ 2: 39, 3: 36, 4: 32 }[pieces] + number}`);
    if (/^\d{4}-(?:0[1-9]|1[0-2])$/.test(edtf) && pieces === 3) {
      const days = ["01", "10", "11", "20", "21", String(monthLength(Number(edtf.slice(0, 4)), Number(edtf.slice(5))))];
      return say(`${edtf}-${days[2 * number - 2]}/${edtf}-${days[2 * number - 1]}`);
    }
    return null;
  }

  function withoutDoubts(text) {
    const words = text.split(" "), doubts = DOUBTFUL;
    let marks = "";
    while (words.length && doubts.includes(words[0])) marks += words.shift() === "circa" ? "~" : "?";
    while (words.length && doubts.includes(words.at(-1))) marks += words.pop() === "circa" ? "~" : "?";
    return [words.join(" "), marks];
  }

  function dated(text, seasons) {
    const [bare, marks] = withoutDoubts(text), said = firstOf(RULES_FOR_DATES, bare, seasons);
    return said && qualified(said, marks);
  }

  function qualified(said, marks) {
    if (!marks) return said;
    return say(said.edtf.replace(/[^[\]{},/.]+/g, (date) => {
      const bare = trailing(date), all = marks + date.slice(bare.length);
      return bare + (/%/.test(all) || (/~/.test(all) && /\?/.test(all)) ? "%" : /~/.test(all) ? "~" : "?");
    }), said.note);
  }

  // ---- rules for whole phrases (wholes.py) ----

  const AROUND = ["circa", "poss", "?", "early", "mid", "late"];

  function doubted(text, seasons) {
    const [rest, marks] = withoutDoubts(text), said = marks && rest ? whole(rest, seasons) : null;
    return said && qualified(said, marks);
  }

  function bounded(text, seasons) {
    const found = /^after (.+?) (?:(?:and|,|-) )?before (.+)$/.exec(text);
    if (found) {
      const first = dated(found[1], seasons), last = dated(found[2], seasons);
      return first && last ? joined(after(first, seasons), before(last, seasons)) : null;
    }
    if (text.startsWith("from ")) text = text.replace(/ onward$/, "");
    for (const [word, rule] of BOUNDS) {
      const behind = word === "onward" || word === "upto";
      if (behind ? !text.endsWith(` ${word}`) : !text.startsWith(`${word} `)) continue;
      const said = dated(behind ? text.slice(0, -word.length - 1) : text.slice(word.length + 1), seasons);
      if (said) return rule(said, seasons);
    }
    return null;
  }

  function between(text, seasons) {
    const found = /^(?:from|between) (.+?) (?:-|to|and) (.+)$/.exec(text);
    return found ? range(found[1].split(" "), found[2].split(" "), seasons) : null;
  }

  function ranged(text, seasons) {
    const words = text.split(" ");
    for (let at = 1; at < words.length - 1; at += 1) {
      const said = ["-", "to", "/"].includes(words[at]) && range(words.slice(0, at), words.slice(at + 1), seasons);
      if (said) return said;
    }
    return null;
  }

  function chosen(text, seasons) {
    let words = text.split(" ");
    if (amongDecades(words)) words = asDecades(words);
    const members = [[]], read = [];
    for (const word of words) {
      if (!["or", "and", ","].includes(word)) members.at(-1).push(word);
      else if (members.at(-1).length) members.push([]);
    }
    const last = members.length - 1;
    if (last < 1 || !members[last].length) return null;
    for (let at = 0; at <= last; at += 1) {
      members[at] = (at && completed(members[at - 1], members[at])) || members[at];
      const said = firstSide(members[at], members[last], seasons);
      if (!said) return null;
      read.push(said);
    }
    const inside = read.map((each) => each.edtf.replace(/\//g, "..")).join(",");
    const note = notesOf(...read.map((each) => each.note));
    if (words.includes("or") || /[?%]/.test(inside)) return say(`[${inside}]`, note);
    const spans = read.map((each) => readEdtf(each.edtf, seasons));
    return spans.every((each, at) => !at || spans[at - 1].latest < each.earliest) ? say(`{${inside}}`, note) : null;
  }

  const RULES_FOR_WHOLES = [dated, doubted, bounded, between, chosen, ranged];
  const whole = (text, seasons) => firstOf(RULES_FOR_WHOLES, text, seasons);

  function range(first, last, seasons) {
    const ends = [first, last].map((words) => words.at(-1));
    if (ends[1] === "bc" && ends[0] !== "bc" && ends[0] !== "ad") first = [...first, "bc"];
    if (amongDecades([...first, ...last])) { first = asDecades(first); last = asDecades(last); }
    const end = lastSide(first, last, seasons), start = firstSide(first, last, seasons);
    return start && end ? joined(start, end) : null;
  }

  const amongDecades = (words) => words.some((word) => /^(?:\d\d[1-9]0s|\d0s|\d{4})$/.test(word));
  const asDecades = (words) => words.map((word) => (/^\d\d00s$/.test(word) ? `${word.slice(0, 4)}d` : word));

  function lastSide(first, last, seasons) {
    const said = dated(last.join(" "), seasons);
    if (said) return said;
    const full = withCentury(first, last);
    if (full) return dated(full.join(" "), seasons);
    let begun = null;
    for (let length = Math.min(first.length - 1, 3); !begun && length > 0; length -= 1) begun = dated([...first.slice(0, length), ...last].join(" "), seasons);
    return begun;
  }

  function firstSide(first, last, seasons) {
    let said = dated(first.join(" "), seasons);
    for (let length = 1; !said && length <= Math.min(last.length, 3); length += 1) said = dated([...first, ...last.slice(-length)].join(" "), seasons);
    return said;
  }

  function completed(before, member) {
    const whole = member.length === 1 && before.length > 1 && /^\d{4} \d{4}$/.test(`${member[0]} ${before.at(-1)}`);
    return whole ? [...before.slice(0, -1), ...member] : withCentury(before, member);
  }

  function withCentury(first, last) {
    const others = first.filter((word) => !DOUBTFUL.includes(word)), year = /^(\d{4})[sd]?$/.exec(others.pop() || "");
    if (!year || !others.every((word) => AROUND.includes(word))) return null;
    const at = last.findIndex((word) => /^(?:\d\d?|\d0s)$/.test(word));
    if (at < 0 || !last.every((word, where) => where === at || AROUND.includes(word))) return null;
    const digits = last[at].replace("s", ""), full = completedBy(year[1], digits);
    if (Number(full) <= Number(year[1])) return null;
    return [...last.slice(0, at), full + last[at].slice(digits.length), ...last.slice(at + 1)];
  }

  function joined(start, end) {
    const dates = (said) => said.edtf.replace(/^[[{]+|[\]}]+$/g, "").split(/\/|\.\.|,/);
    return say(`${dates(start)[0]}/${dates(end).pop()}`, notesOf(start.note, end.note));
  }

  function before(said, seasons) {
    const first = said.edtf.split("/")[0];
    return say(`../${asFineAs(first, readEdtf(first, seasons).earliest - 1)}`, said.note);
  }

  function after(said, seasons) {
    const last = said.edtf.split("/").pop();
    return say(`${asFineAs(last, readEdtf(last, seasons).latest + 1)}/..`, said.note);
  }

  const since = (said) => say(`${said.edtf.split("/")[0]}/..`, said.note);
  const upTo = (said) => say(`../${said.edtf.split("/").pop()}`, said.note);
  const BOUNDS = [["before", before], ["after", after], ["from", since], ["to", upTo], ["onward", since], ["upto", upTo]];

  function asFineAs(date, number) {
    const bare = trailing(date), parts = bare.replace(/^-/, "").split("-").length, [y, m] = dateOf(number);
    return (parts === 1 ? isoYear(y) : parts === 2 ? `${isoYear(y)}-${two(m)}` : isoDay(number)) + date.slice(bare.length);
  }

  // ---- phrases with several events (events.py) ----

  const KINDS = ["period", "dynasty", "era", "reign"];
  const LOOSE = ["-", "/", "and"];
  const ABOUT_TIME = matcher(/[mrs]\d+|\d.*|early|mid|late|before|after|from|to|century|decade|quarter|half|circa|poss/);
  const hasDate = (row) => row.some(({ said }) => /\d$|0s$/.test(said));
  const saidIn = (row) => row.map((each) => each.said).join(" ");
  const typedIn = (row) => row.map((each) => each.typed).join(" ");
  const readClause = (clause, seasons) => whole(saidIn(clause.rest), seasons);
  const rankOf = (clause) => (clause.events.length ? Math.min(...clause.events.map((each) => lexicon().eventRanks.get(each))) : lexicon().unnamed);

  const periodName = (clause) => saidIn(clause.rest.filter((each) => !KINDS.includes(each.said)));

  function withEvents(row, seasons) {
    const [clauses, periodClause] = gathered(row);
    if (!clauses) return null;
    const dates = clauses.filter((each) => hasDate(each.rest)), asides = clauses.filter((each) => !hasDate(each.rest)).map((each) => typedIn(each.row));
    if (periodClause) return withinPeriod(periodClause, dates, asides, seasons);
    if (!dates.length) return null;
    const best = Math.min(...dates.map(rankOf)), [taken, ...more] = dates.filter((each) => rankOf(each) === best);
    const said = readClause(taken, seasons);
    const told = dates.filter((each) => each !== taken).map((each) => {
      const read = readClause(each, seasons);
      return read ? [...each.events, inWords(read.edtf, seasons)].join(" ") : "";
    });
    if (more.length || !said || told.includes("")) return null;
    return say(said.edtf, notesOf(said.note, taken.events.length ? `the date given for “${taken.events.join(" ")}”` : "",
      told.length || asides.length ? `also ${[...told, ...asides].join(", ")}` : ""));
  }

  function gathered(row) {
    const clauses = [];
    let periodClause = null;
    for (const clause of cut(row)) {
      const named = clause.events.length > 0, previous = clauses.at(-1);
      if ((clause.rest.some((each) => KINDS.includes(each.said)) || lexicon().periods.has(periodName(clause))) && !hasDate(clause.rest)) periodClause = clause;
      else if (hasDate(clause.rest)) clauses.push(clause);
      else if (clause.rest.some((each) => ABOUT_TIME(each.said))) return [null, null];
      else if (named && !clause.rest.length && previous && clause.opening !== "," && !previous.events.length) previous.events = clause.events;
      else if (named || clause.opening === "(") clauses.push(clause);
      else return [null, null];
    }
    return [clauses, periodClause];
  }

  function cut(row) {
    const clause = (opening = "") => ({ opening, row: [], events: [], rest: [] });
    const clauses = [clause()];
    for (const token of row) {
      if ([",", ";", "(", ")"].includes(token.said)) { clauses.push(clause(token.said === ";" ? "," : token.said)); continue; }
      const event = lexicon().eventRanks.has(token.typed);
      if (event && hasDate(clauses.at(-1).rest)) clauses.push(clause());
      const now = clauses.at(-1);
      now.row.push(token);
      if (event) now.events.push(token.typed);
      else now.rest.push(token);
    }
    for (const { rest } of clauses) {
      while (rest.length && LOOSE.includes(rest.at(-1).said)) rest.pop();
      while (rest.length && LOOSE.includes(rest[0].said)) rest.shift();
    }
    return clauses.filter((each) => each.rest.length || each.events.length);
  }

  function withinPeriod(periodClause, dates, asides, seasons) {
    const read = dates.filter((each) => !each.events.length).map((each) => readClause(each, seasons));
    const dates0 = lexicon().periods.get(periodName(periodClause));
    if (dates0 && dates.length < 2 && (!dates.length || dates[0].opening !== "(")) read.unshift(say(dates0));
    if (!read.length || read.includes(null) || read.length > 2 || read.length < dates.length) return null;
    const outer = read[0], inner = read.at(-1);
    const kind = periodClause.rest.some((each) => KINDS.includes(each.said)) ? "" : " period";
    const name = periodClause.rest.map((each) => (KINDS.includes(each.said) ? each.typed : titled(each.typed))).join(" ") + kind;
    return say(common(outer.edtf, inner.edtf, seasons), notesOf(inner.note, read.length > 1 ? `within the ${name}` : name, ...asides));
  }

  function common(outer, inner, seasons) {
    const wide = readEdtf(outer, seasons), narrow = readEdtf(inner, seasons);
    if ([wide.earliest, wide.latest, narrow.earliest, narrow.latest].includes(null)) return refuse("the date does not lie in the period it is given for");
    if (narrow.earliest > wide.latest || narrow.latest < wide.earliest) refuse("the date does not lie in the period it is given for");
    if (wide.earliest <= narrow.earliest && narrow.latest <= wide.latest) return inner;
    const start = wide.earliest > narrow.earliest ? outer : inner, end = wide.latest < narrow.latest ? outer : inner;
    return `${start.split("/")[0].replace(/X/g, "0")}/${end.split("/").pop().replace(/X/g, "9")}`;
  }

  // ---- the door (phrases.py) ----

  const LOOKS_LIKE_EDTF = matcher(/[0-9XYES~?%/.,[\]{}-]*[0-9X][0-9XYES~?%/.,[\]{}-]*/);
  const LATEST_BY_HYPHEN = 2030;

  /* { edtf, span, words, note }; throws Unreadable, or Undated where the phrase says that there is no date. */
  function readPhrase(text, seasons = "northern") {
    const length = [...text].length;
    if (length > 200) refuse(`a phrase of ${length} characters is too long to be a date`);
    const plain = tidy(text);
    if (!plain) refuse("there is no date here");
    let [said, complaint] = asEdtf(text.replace(/^[ \t\r\n]+|[ \t\r\n]+$/g, ""), seasons);
    if (!said) said = asPhrase(text, plain, seasons, complaint);
    return { edtf: said.edtf, span: readEdtf(said.edtf, seasons), words: inWords(said.edtf, seasons), note: said.note || null };
  }

  function asEdtf(text, seasons) {
    if (!LOOKS_LIKE_EDTF(text)) return [null, null];
    try {
      readEdtf(text, seasons);
    } catch (problem) {
      if (problem instanceof Unreadable) return [null, problem];
      throw problem;
    }
    const years = /^(\d\d)(\d\d)-(\d\d)$/.exec(text);
    if (!years || years[2] >= years[3] || Number(years[1] + years[3]) > LATEST_BY_HYPHEN) return [say(text), null];
    const first = text.slice(0, 4), last = years[1] + years[3], meant = inWords(text, seasons);
    return [Number(years[3]) > 24 ? say(`${first}/${last}`, `read as the years; in EDTF it would be ${meant}`)
      : say(text, `read as ${meant}; for the years ${first} to ${last} write ${first}/${last}`), null];
  }

  function asPhrase(text, plain, seasons, complaint) {
    if (lexicon().undated.has(plain)) throw new Undated("the phrase says that there is no date");
    const row = tokens(plain);
    if (!row.length || row.length > 40) refuse(`“${shortened(text)}” is not read as a date`);
    const said = whole(saidIn(row), seasons) || withEvents(row, seasons);
    if (said) return said;
    if (complaint) throw complaint;
    return refuse(why(text, row));
  }

  function why(text, row) {
    const shown = `“${shortened(text)}”`, { known, eventRanks } = lexicon(), words = new Set([...known.values(), "century", "circa"]);
    const stranger = row.find(({ said, typed }) => /^[a-z]+$/.test(said) && !words.has(said) && !eventRanks.has(typed));
    if (!hasDate(row)) return `${shown} names no year that can be read`;
    if (stranger) return `${shown}: the word “${shortened(stranger.typed)}” is not one of those read in dates`;
    return `${shown} is not read as a date; write for example c. 1912, 1910–15, autumn 1912, late 1920s`;
  }

  const dating = {
    Unreadable, Undated, isoDay, widened, readEdtf, readPhrase, inWords,
  };
  InPeriod.dating = dating;
  if (typeof module !== "undefined") module.exports = dating;
})(globalThis);
