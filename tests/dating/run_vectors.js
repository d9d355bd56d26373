/* Runs the browser's date file against vectors: node run_vectors.js DATING.JS VECTORS.JSON */
"use strict";

const assert = require("node:assert");
const { words, vectors } = JSON.parse(require("node:fs").readFileSync(process.argv[3], "utf8"));
globalThis.InPeriod = { data: { dates: words } };
const dating = require(require("node:path").resolve(process.argv[2]));

const asList = (span) => [span.earliest, span.latest, span.approximate, span.uncertain, span.earlyMargin, span.lateMargin];

function orRefused(what, refused) {
  try {
    return what();
  } catch (problem) {
    if (!(problem instanceof dating.Unreadable)) throw problem;
    return refused(problem);
  }
}

function understood({ text, seasons, circaYears }) {
  const meant = dating.readPhrase(text, seasons);
  const days = [meant.span.earliest, meant.span.latest].filter((day) => day !== null);
  return {
    edtf: meant.edtf,
    span: asList(meant.span),
    widened: asList(dating.widened(meant.span, circaYears)),
    words: meant.words,
    note: meant.note,
    bare: dating.inWords(meant.span),
    days: days.map(dating.isoDay),
  };
}

const wrong = [];
for (const vector of vectors) {
  const phrase = orRefused(() => understood(vector),
    (problem) => ({ refused: problem instanceof dating.Undated ? "undated" : "unreadable" }));
  const edtf = orRefused(() => asList(dating.readEdtf(vector.text, vector.seasons)), () => null);
  try {
    assert.deepStrictEqual([phrase, edtf], [vector.phrase, vector.edtf]);
  } catch (difference) {
    wrong.push(`${JSON.stringify(vector.text)} (${vector.seasons}): ${difference.message}`);
  }
}

if (wrong.length) {
  console.log(`${wrong.length} of ${vectors.length} vectors differ`);
  console.log(wrong.slice(0, 10).join("\n\n"));
  process.exitCode = 1;
} else {
  console.log(`${vectors.length} vectors agree`);
}
