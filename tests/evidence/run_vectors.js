// Runs the browser's arithmetic against the file of vectors: node --test, INPERIOD_VECTORS naming the file.
"use strict";
const test = require("node:test");
const assert = require("node:assert");
const fs = require("node:fs");
const path = require("node:path");
const evidence = require(path.join(__dirname, "..", "..", "site", "assets", "evidence.js"));

const TOLERANCE = 1e-9;

/** The first place where two values differ, or null. Numbers may differ by 1e-9 of the larger. */
function difference(ours, theirs, at) {
  if (typeof ours === "number" && typeof theirs === "number") {
    const scale = Math.max(1, Math.abs(ours), Math.abs(theirs));
    return Math.abs(ours - theirs) <= TOLERANCE * scale ? null : `${at}: ${ours}, not ${theirs}`;
  }
  if (ours === null || theirs === null || typeof ours !== "object" || typeof theirs !== "object") {
    return ours === theirs ? null : `${at}: ${JSON.stringify(ours)}, not ${JSON.stringify(theirs)}`;
  }
  for (const key of new Set([...Object.keys(ours), ...Object.keys(theirs)])) {
    if (!(key in ours) || !(key in theirs)) return `${at}.${key}: on one side only`;
    const found = difference(ours[key], theirs[key], `${at}.${key}`);
    if (found) return found;
  }
  return null;
}

const sets = JSON.parse(fs.readFileSync(process.env.INPERIOD_VECTORS, "utf8"));
for (const { name, facts: data, cases } of sets) {
  test(name, () => {
    const facts = evidence.factsFromJson(data);
    for (const { question, answer, facet, usual, sensitivity, timeline } of cases) {
      const said = JSON.stringify(question);
      const { place, kind, wearer, grades } = question;
      const pairs = [
        ["answer", { ...evidence.answer(facts, question), when: answer.when }, answer],
        ["usual", evidence.usualInWindow(facts, question, facet), usual],
        ["sensitivity", evidence.sensitivity(facts, question), sensitivity],
      ];
      if (timeline) {
        const limits = { place, kind, wearer, grades };
        pairs.push(["timeline", evidence.timeline(facts, question.garment, facet, limits), timeline]);
      }
      for (const [what, ours, theirs] of pairs) assert.strictEqual(difference(ours, theirs, what), null, said);
    }
    console.log(`cases: ${cases.length}`);
  });
}
