/* Runs batches of inputs against the browser's own files: node browser.js ASSETS WORDS, one batch a line;
   WORDS are those of dates, as the page's data give them. */
"use strict";

const path = require("node:path");
const { Session } = require("node:inspector");
const assets = path.resolve(process.argv[2]);
globalThis.InPeriod = { data: { dates: JSON.parse(process.argv[3]) } };
const dating = require(path.join(assets, "dating.js"));
const store = require(path.join(assets, "board-store.js"));
const file = require(path.join(assets, "board-file.js"));

const coverage = new Session();
coverage.connect();
const posted = (method, given) => {
  let answer;
  coverage.post(method, given, (error, found) => { answer = found; });
  return answer;
};
const begin = () => {
  posted("Profiler.enable");
  posted("Profiler.startPreciseCoverage", { callCount: true, detailed: true });
};

/** The blocks of the browser's files that were run since the coverage began. */
function reached() {
  const found = [];
  for (const script of posted("Profiler.takePreciseCoverage").result) {
    if (!script.url.includes("/site/assets/")) continue;
    const name = path.basename(script.url);
    for (const { ranges } of script.functions)
      for (const { startOffset, endOffset, count } of ranges) if (count) found.push(`${name}:${startOffset}-${endOffset}`);
  }
  return found;
}

/** What a board says: less what is empty, and less NUL and half characters, which the writer takes out. */
function said(value) {
  if (typeof value === "string") return value.replace(/\0|\p{Surrogate}/gu, "") || undefined;
  if (typeof value !== "object" || value === null) return value === null ? undefined : value;
  if (Array.isArray(value)) return orNothing(value.map(said).filter((each) => each !== undefined));
  return orNothing(Object.fromEntries(Object.entries(value).map(([name, each]) => [said(name) || "", said(each)]).filter(([, each]) => each !== undefined)));
}
const orNothing = (value) => (Object.keys(value).length ? value : undefined);
const whole = (board) => JSON.stringify(said(board));

function boards(text) {
  let read, board;
  try {
    read = file.readYaml(text);
    board = file.readBoard(text);
  } catch (slip) {
    if (!(slip instanceof file.Unreadable)) throw slip;
    return null;
  }
  const written = file.writeBoard(board);
  if (whole(file.readBoard(written)) !== whole(board)) throw new Error(`written and read again it differs: ${written.slice(0, 200)}`);
  file.fileName(board);
  return { read, written };
}

/** A link that was tampered with is refused in words, or is a board; its own errors are caught by the page. */
function links(text) {
  try {
    file.fromLink(text);
  } catch (slip) {
    const known = slip instanceof file.Unreadable || slip instanceof TypeError || slip.name === "InvalidCharacterError";
    if (!known) throw slip;
  }
  return null;
}

function dates(text) {
  const orRefused = (what) => {
    try {
      return what();
    } catch (slip) {
      if (!(slip instanceof dating.Unreadable)) throw slip;
      return slip instanceof dating.Undated ? ["Undated"] : ["Unreadable"];
    }
  };
  const phrase = orRefused(() => {
    const { edtf, span, words, note } = dating.readPhrase(text);
    return [edtf, span.earliest, span.latest, words, note];
  });
  const edtf = orRefused(() => {
    const span = dating.readEdtf(text);
    return [span.earliest, span.latest, span.approximate, span.uncertain];
  });
  return { phrase, edtf: typeof edtf[0] === "string" && /^Un/.test(edtf[0]) ? null : edtf };
}

const TARGETS = { "browser-boards": boards, "browser-links": links, "browser-dates": dates };

function one(target, data, watch) {
  const text = data.toString("utf8");
  if (watch) begin();
  const began = process.cpuUsage();
  const answer = {};
  try {
    answer.value = TARGETS[target](text);
  } catch (slip) {
    const at = /\((.*?):\d+\)/.exec(String(slip.stack).split("\n").find((line) => /site.assets/.test(line)) || "");
    answer.fault = `${slip.name}: ${String(slip.message).slice(0, 300)} at ${at ? path.basename(at[1]) : target}`;
  }
  answer.seconds = watch ? 0 : process.cpuUsage(began).user / 1e6;
  if (watch) {
    answer.reached = reached();
    posted("Profiler.stopPreciseCoverage");
    posted("Profiler.disable");
  }
  return answer;
}

require("node:readline").createInterface({ input: process.stdin }).on("line", (line) => {
  const { target, inputs, watched } = JSON.parse(line);
  const answers = inputs.map((each, i) => one(target, Buffer.from(each, "base64"), watched[i]));
  process.stdout.write(JSON.stringify(answers) + "\n");
});
