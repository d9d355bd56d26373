/* Lists the regular expressions of the browser's scripts, and times them: node patterns.js list ASSETS ACORN | try */
"use strict";

const fs = require("node:fs");
const path = require("node:path");
const [, , what, assets, parser] = process.argv;

/** Every expression that is written out, and every one that is put together while the files load. */
function list() {
  const acorn = require(path.resolve(parser)),
    found = new Map();
  const note = (source, flags, place) => found.set(`${source}/${flags}`, { source, flags: flags.replace("g", ""), place });
  const Made = RegExp;
  globalThis.RegExp = new Proxy(Made, {
    construct: (made, given) => {
      const it = new Made(...given);
      note(it.source, it.flags, "put together");
      return it;
    },
  });
  for (const file of fs.readdirSync(assets).filter((each) => each.endsWith(".js"))) {
    const text = fs.readFileSync(path.join(assets, file), "utf8");
    const walk = (node) => {
      if (!node || typeof node !== "object") return;
      if (node.type === "Literal" && node.regex) note(node.regex.pattern, node.regex.flags, file);
      for (const name of Object.keys(node)) if (name !== "regex") walk(node[name]);
    };
    walk(acorn.parse(text, { ecmaVersion: "latest" }));
    try {
      require(path.resolve(assets, file));
    } catch (slip) {
      continue; // a file that wants a page; what it writes out has been listed
    }
  }
  return [...found.values()];
}

const QUICK = 20,
  STEEPEST = 3;
const seconds = (it, text) => {
  const began = process.cpuUsage();
  text.replace(it, "");
  return process.cpuUsage(began).user / 1000;
};

function steep({ source, flags, attacks, place }) {
  const it = new RegExp(source, flags + "g");
  for (const [before, part, end] of attacks) {
    let took = 0;
    for (const length of [8, 12, 16, 20, 24, 28, 32, 1000, 2000, 4000, 8000]) {
      const text = before + part.repeat(Math.floor(length / part.length) + 1) + end;
      let now = seconds(it, text);
      const said = `${place} /${source}/: it took ${now} ms for ${length} characters: ${JSON.stringify([before, part, end])}`;
      if (now > (length < 500 ? 200 : 2000)) return said;
      if (now > QUICK && took > QUICK / 8 && now / took > STEEPEST && seconds(it, text) / took > STEEPEST) return said;
      took = now;
    }
  }
  return null;
}

if (what === "list") process.stdout.write(JSON.stringify(list()));
else process.stdout.write(JSON.stringify(JSON.parse(fs.readFileSync(0, "utf8")).map(steep).filter(Boolean)));
