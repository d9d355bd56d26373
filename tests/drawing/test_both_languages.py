"""The browser draws what the Python side draws: the same marks, string for string, without any tolerance."""

from __future__ import annotations

import ast
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

import flat_script
from conftest import CHECKOUT
from drawing.invented_records import Asked, records
from inperiod.drawing.flats import Flat, draw_plan
from inperiod.evidence import Facts, facts_to_json, gather_facts
from inperiod.publishing.flats import middle_year
from inperiod.publishing.lookup import Lookup
from inperiod.publishing.view_lineup import typical
from inperiod.records.model import Catalogue, Feature, Mark
from parity import in_node
from python_in_script import Script
from python_read import Known, Refused

ASSETS = CHECKOUT / "site/assets"
SCRIPTS = {
    "words": ASSETS / "flat-words.js",
    "evidence": ASSETS / "evidence.js",
    "drawing": ASSETS / "flat-drawing.js",
    "live": ASSETS / "flat-live.js",
}
DRAW = """(() => {
  const facts = evidence.factsFromJson(given.facts);
  return given.asked.map((each) => live.flats.draw(each, facts));
})()"""


def in_python(catalogue: Catalogue, asked: Asked) -> dict[str, Any] | None:
    flat = draw_plan(asked.features, asked.garment, catalogue.vocabulary, asked.year, asked.who)
    return None if flat is None else told(flat)


def told(flat: Flat) -> dict[str, Any]:
    return {
        "svg": str(flat.svg),
        "title": flat.title,
        "undrawn": list(flat.undrawn),
        "assumed": list(flat.assumed),
        "width": flat.width,
        "height": flat.height,
    }


def alike(node: str, catalogue: Catalogue, facts: Facts, asked: Sequence[Asked]) -> int:
    """Draw all on both sides and compare; how many of them have a flat."""
    given = {"facts": facts_to_json(facts), "asked": [each.as_json() for each in asked]}
    theirs = in_node(node, DRAW, SCRIPTS, given)
    ours = [in_python(catalogue, each) for each in asked]
    for one, mine, other in zip(asked, ours, theirs, strict=True):
        assert mine == other, one
    return sum(each is not None for each in ours)


@pytest.mark.node
def test_the_flats_of_all_plates_are_the_same(
    node: str, demo_catalogue: Catalogue, demo_facts: Facts
) -> None:
    asked = [
        Asked(plate.features, plate.garment, middle_year(demo_catalogue.dated(plate)), plate.wearer.who)
        for plate in demo_catalogue.plates.values()
    ]
    assert alike(node, demo_catalogue, demo_facts, asked) > 500


@pytest.mark.node
def test_the_flats_of_lineups_are_the_same(node: str, demo_catalogue: Catalogue, demo_facts: Facts) -> None:
    look = Lookup(demo_catalogue)
    asked = []
    for garment in demo_catalogue.vocabulary.garments:
        for decade in typical(look, demo_facts, garment):
            features = [
                Feature(each.facet, each.term, Mark(""), "shown" if each.term else "none")
                for each in decade.usual
            ]
            asked.append(Asked(tuple(features), garment, decade.decade + 5.0, "any"))
    assert alike(node, demo_catalogue, demo_facts, asked) >= 60


@pytest.mark.node
def test_the_flats_of_invented_records_are_the_same(
    node: str, demo_catalogue: Catalogue, demo_facts: Facts
) -> None:
    asked = list(records(demo_catalogue.vocabulary, 1300, seed=6))
    assert alike(node, demo_catalogue, demo_facts, asked) >= 1000
    assert {each.garment for each in asked} > set(demo_catalogue.vocabulary.garments)
    shown = {feature.term for each in asked for feature in each.features if feature.term}
    assert len(shown) > 300


@pytest.mark.node
def test_labels_stay_text(node: str, demo_catalogue: Catalogue) -> None:
    vocabulary = demo_catalogue.vocabulary
    facet = vocabulary.facets["neckline"]
    bad = """<script>alert("1")</script> & 'so on'"""
    terms = tuple(replace(term, label=bad) if term.id == "square" else term for term in facet.terms)
    changed = replace(vocabulary, facets={**vocabulary.facets, "neckline": replace(facet, terms=terms)})
    catalogue = replace(demo_catalogue, vocabulary=changed)
    asked = Asked((Feature("neckline", "neckline/square", Mark("")),), "day-dress", 1912.0, "woman")
    assert alike(node, catalogue, gather_facts(catalogue), [asked]) == 1
    drawn = in_python(catalogue, asked)
    assert drawn is not None
    assert "<script" not in drawn["svg"]
    assert "&lt;script&gt;" in drawn["svg"]


def test_the_script_is_made_of_the_python_as_it_stands() -> None:
    """Where this fails, run ``python tests/flat_script.py`` and ``python tests/shipping.py``."""
    assert flat_script.SCRIPT.read_text(encoding="utf-8") == flat_script.make()


@pytest.mark.parametrize(
    "line",
    ["x = {1, 2}", "x = a[::2]", "x = a @ b", "x = a.unheard()", "x = f'{a:.2f}'", "with a: pass", "del a"],
)
def test_what_cannot_be_put_over_is_refused_by_its_place(line: str) -> None:
    module = _parsed(f"def f(a, b):\n    {line}\n")
    with pytest.raises(Refused, match=r"^here\.py:2: "):
        Script("here.py", Known(), ()).definition(module)


def test_tables_are_not_gone_through_by_key_unseen() -> None:
    known = Known(tables={"TABLE"})
    module = _parsed("def f():\n    return [key for key in TABLE]\n")
    with pytest.raises(Refused):
        Script("here.py", known, ()).definition(module)


def _parsed(text: str) -> ast.stmt:
    return ast.parse(text).body[0]


@pytest.mark.node
def test_words_mean_in_the_browser_what_they_mean_in_python(node: str, tmp_path: Path) -> None:
    """Python's own answers are the authority."""
    values = [-2.5, -1.5, -0.5, 0.5, 1.5, 2.5, 2.4999, 1e9 + 0.5, 7.0]
    texts = ["12 in", "in", "", "  3 cm ", "a/b/c"]
    program = """((values, texts) => [
      values.map(w.round),
      texts.map((text) => w.partition(text, " ")),
      texts.map((text) => w.rstrip(text, "cn ")),
      [7, -7].map((value) => w.mod(value, 3)),
      w.range(5, -1, -2),
      w.range(3),
      values.map(w.truth),
      [[], "", null, 0, new Map(), [0], "a"].map(w.truth),
      w.bisect_left([1, 2, 2, 3], 2),
      w.bisect_right([1, 2, 2, 3], 2),
      String(w.escape("<&>\\"'")),
      w.same([1, [2]], [1, [2]]),
      w.maxOf([], 4),
    ])(...given)"""
    scripts = {"all": ASSETS / "flat-words.js", "w": _words(tmp_path)}
    theirs = in_node(node, program, scripts, [values, texts])
    assert theirs == [
        [round(each) for each in values],
        [list(each.partition(" ")) for each in texts],
        [each.rstrip("cn ") for each in texts],
        [7 % 3, -7 % 3],
        list(range(5, -1, -2)),
        [0, 1, 2],
        [True] * len(values),
        [False, False, False, False, False, True, True],
        1,
        3,
        "&lt;&amp;&gt;&#34;&#39;",
        True,
        4,
    ]


def _words(folder: Path) -> Path:
    """A script that gives the words themselves."""
    file = folder / "words.js"
    file.write_text("module.exports = globalThis.InPeriod.flatWords;\n", encoding="utf-8")
    return file
