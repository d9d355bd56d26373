// Formats CSL items with the reference processor: node reference.js CASES STYLES LOCALES < nothing.
// CASES: [{item, locator}]; STYLES: {name: path}; prints [{style, id, note, bibliography}] as JSON.
const fs = require("fs");
const CSL = require("citeproc");
const { cases, styles, locales } = JSON.parse(fs.readFileSync(process.argv[2], "utf8"));

function locale(name) {
  const file = `${locales}/locales-${name}.xml`;
  return fs.readFileSync(fs.existsSync(file) ? file : `${locales}/locales-en-US.xml`, "utf8");
}

// One engine a style: reading a style takes longer than all its cases.
const answers = [];
for (const [style, path] of Object.entries(styles)) {
  let asked = null;
  const engine = new CSL.Engine({ retrieveLocale: locale, retrieveItem: () => asked }, fs.readFileSync(path, "utf8"));
  engine.setOutputFormat("html");
  for (const { item, locator } of cases) {
    asked = item;
    engine.updateItems([]);
    engine.updateItems([item.id]);
    const cited = { id: item.id };
    if (locator) Object.assign(cited, { locator, label: "page" });
    const note = engine.makeCitationCluster([cited]);
    const made = engine.makeBibliography();
    answers.push({ style, id: item.id, note, bibliography: made ? made[1][0].trim() : null });
  }
}
process.stdout.write(JSON.stringify(answers));
