"""How fast the arithmetic of evidence is on ten thousand plates, as ratios that hold on any machine.

Run: python bench/evidence.py [PLATES]. Every time is the best of several. The unit of the ratios is one plain
pass over the plates (a sum), so that they say how many such passes an answer costs. With Node.js on the path
the browser's file is timed too, on the same facts.
"""

from __future__ import annotations

import json
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path
from random import Random

from inperiod.dating import day_number
from inperiod.evidence import (
    Facts,
    Question,
    Window,
    answer,
    facts_from_json,
    facts_to_json,
    sensitivity,
    timeline,
    usual_in_window,
)
from inperiod.evidence.facts import DocumentFact, GarmentFact, PlateFact, TermFact

FACETS, TERMS_EACH, GARMENTS, PER_DOCUMENT = 18, 16, 40, 12
NODE = """
const fs = require("fs"), evidence = require(process.argv[2]);
const data = JSON.parse(fs.readFileSync(process.argv[3], "utf8"));
const now = () => Number(process.hrtime.bigint()) / 1e6;
const time = (task, times) => {
  let best = Infinity;
  for (let i = 0; i < times; i += 1) {
    const start = now();
    task(i);
    best = Math.min(best, now() - start);
  }
  return best;
};
const loaded = time(() => evidence.factsFromJson(data), 5);
const day = evidence.yearStart, facts = evidence.factsFromJson(data);
const ask = (term, year) => ({
  garment: "g0", features: [`f0/t${term}`], window: { earliest: day(year), latest: day(year + 1) - 1 },
});
const cold = time(() => evidence.answer({ ...facts, memo: new Map() }, ask(1, 1926)), 20);
evidence.answer(facts, ask(1, 1926));
const warm = time((i) => evidence.answer(facts, ask(i % 16, 1900 + i % 40)), 200);
const line = time(() => evidence.timeline(facts, "g0", "f0"), 20);
console.log(JSON.stringify({ loaded, cold, warm, line }));
"""


def facts_of(plates: int, seed: int = 1) -> Facts:
    """Facts of that many plates, 1890–1939, with as many facets and terms as the vocabulary has."""
    chance = Random(seed)
    terms = tuple(TermFact(facet, f"t{i}", f"Term {i}") for facet in range(FACETS) for i in range(TERMS_EACH))
    documents = []
    for number in range(plates // PER_DOCUMENT):
        begins = day_number(chance.randint(1890, 1939))
        days = (begins, begins + chance.choice((0, 30, 91, 364)))
        held = tuple(
            PlateFact(
                f"p{i}",
                chance.choice((0, 1, 2, 3)) if chance.random() < 0.5 else chance.randrange(GARMENTS),
                "woman",
                tuple(
                    (facet * TERMS_EACH + chance.randrange(TERMS_EACH), 0)
                    for facet in sorted(chance.sample(range(FACETS), 8))
                ),
            )
            for i in range(PER_DOCUMENT)
        )
        source = f"source-{number:05d}"
        documents.append(
            DocumentFact(source, source, "trade-catalogue", ("london",), "A", days, (days, days), None, held)
        )
    garments = tuple(
        GarmentFact(f"g{i}", f"Garment {i}", f"garments {i}", None if i % 10 == 0 else i // 10 * 10)
        for i in range(GARMENTS)
    )
    return Facts(
        5, (1890, 1930), {f"f{i}": f"Facet {i}" for i in range(FACETS)}, garments, terms, tuple(documents)
    )


def best(task: Callable[[], object], times: int = 5) -> float:
    """The shortest of so many runs, in milliseconds."""
    spent = []
    for _ in range(times):
        start = time.perf_counter()
        task()
        spent.append(time.perf_counter() - start)
    return min(spent) * 1000


def main(plates: int) -> None:
    facts = facts_of(plates)
    data = facts_to_json(facts)
    text = json.dumps(data, separators=(",", ":"))
    question = Question("g0", ("f0/t1",), Window(day_number(1926), day_number(1927) - 1))
    answer(facts, question)

    def cold() -> None:
        facts.memo.clear()
        answer(facts, question)

    unit = best(lambda: sum(len(plate.shown) for _, plate in facts.plates), 20)
    times = {
        "facts back from JSON": best(lambda: facts_from_json(data), 3),
        "first answer for a garment and facet": best(cold),
        "later answers": best(lambda: answer(facts, question), 20),
        "timeline of a facet": best(lambda: timeline(facts, "g0", "f0")),
        "usual in that window": best(lambda: usual_in_window(facts, question, "f0")),
        "sensitivity": best(lambda: sensitivity(facts, question)),
    }
    print(f"{plates} plates, {len(facts.documents)} documents; facts {len(text) / 1024:.0f} KB as JSON")
    print(f"one plain pass over the plates: {unit:.2f} ms")
    for name, spent in times.items():
        print(f"{name:40} {spent:9.2f} ms {spent / unit:9.1f} passes")
    node = shutil.which("node")
    if node is None:
        print("Node.js is not on the path: the browser's file is not timed")
        return
    with tempfile.TemporaryDirectory() as folder:
        script, held = Path(folder) / "time.js", Path(folder) / "facts.json"
        script.write_text(NODE)
        held.write_text(text)
        file = Path(__file__).parents[1] / "site" / "assets" / "evidence.js"
        run = subprocess.run([node, script, file, held], capture_output=True, text=True, check=True)
    for name, spent in json.loads(run.stdout).items():
        words = {"loaded": "facts read", "cold": "first answer", "warm": "later answers", "line": "timeline"}
        print(f"{'browser: ' + words[name]:40} {spent:9.2f} ms {spent / unit:9.1f} passes")


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 10_000)
