"""The browser's file gives the Python side's sheet: the same words, numbers to 1e-9, the same drawings."""

from __future__ import annotations

import json
import random
from dataclasses import replace
from pathlib import Path
from xml.etree import ElementTree

import pytest

from inperiod.making import KINDS, cautions_for, draw, sheet
from inperiod.making.cautions import SENTENCES
from inperiod.records.model import Catalogue, Feature, Gathered, Mark
from making.vectors import caution_boards, write_vectors
from parity import differences, in_node

ASSETS = Path(__file__).parents[2] / "site" / "assets"
SCRIPT = ASSETS / "making.js"

# An element maker that writes what a page would hold.
WRITER = """(() => {
  const safe = (text) => String(text).replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/"/g, "&quot;");
  return (tag, attributes, ...children) => `<${tag}${Object.entries(attributes).map(([name, value]) =>
    ` ${name}="${safe(value)}"`).join("")}>${children.map((child) =>
    (child.startsWith("<") ? child : safe(child))).join("")}</${tag}>`;
})()"""


@pytest.mark.node
def test_browser_and_python_give_the_same_sheet(node: str, tmp_path: Path) -> None:
    file = tmp_path / "vectors.json"
    counts = write_vectors(file)
    assert counts["cases"] >= 1000
    assert all(counts[kind] >= 60 for kind in KINDS), counts
    assert counts["problems"] >= 200
    cases = json.loads(file.read_text(encoding="utf-8"))
    found = in_node(
        node, "given.map((each) => making.sheet(each))", {"making": SCRIPT}, [c["making"] for c in cases]
    )
    assert len(found) == len(cases)
    for case, theirs in zip(cases, found, strict=True):
        assert differences(case["sheet"], theirs) == [], json.dumps(case["making"])


@pytest.mark.node
def test_browser_and_python_draw_alike(node: str) -> None:
    making = [
        {
            "kind": "tucks",
            "width": "1/4 in",
            "gap": "1/4 in",
            "number": 6,
            "finished": "8 in",
            "turning": "1/2 in",
        },
        {"kind": "bias", "width": "2.5 cm", "remnant": ["30 cm", "90 cm"]},
        {
            "kind": "cloth",
            "width": "36 in",
            "pieces": [{"name": "a & b", "width": "20 in", "length": "40 in", "number": 2}],
        },
    ]
    written = in_node(
        node,
        f"making.sheet(given).lines.map((line) => making.draw(line.figure, {WRITER}))",
        {"making": SCRIPT},
        making,
    )
    for line, theirs in zip(sheet(making).lines, written, strict=True):
        assert line.figure is not None
        ours = ElementTree.fromstring(
            str(draw(line.figure)).replace(' xmlns="http://www.w3.org/2000/svg"', "")
        )
        assert flat(ours) == flat(ElementTree.fromstring(theirs))


@pytest.mark.node
def test_browser_and_python_caution_alike(node: str) -> None:
    boards = caution_boards()
    found = in_node(
        node,
        "given.map((board) => cautions.cautionsFor(board))",
        {"cautions": ASSETS / "cautions.js"},
        [written for written, _ in boards],
    )
    told = set()
    for (written, board), theirs in zip(boards, found, strict=True):
        ours = [each._asdict() for each in cautions_for(board)]
        assert ours == theirs, json.dumps(written)
        told |= {each["id"] for each in ours}
    # Dyes show in the colour of a plate, which only the catalogue knows.
    assert told == set(SENTENCES) - {"arsenic-dyes"}


@pytest.mark.node
def test_browser_and_python_caution_alike_with_a_catalogue(node: str, demo_catalogue: Catalogue) -> None:
    """Boards of the vocabulary's marked terms, with plates gathered of every kind of source."""
    by, mark = random.Random(1927), Mark("boards/some.yaml")
    terms = demo_catalogue.vocabulary.terms
    marked = {key: list(term.cautions) for key, term in terms.items() if term.cautions}
    kinds = {key: demo_catalogue.sources[plate.source].kind for key, plate in demo_catalogue.plates.items()}
    of_kind: dict[str, list[str]] = {}
    for key, kind in kinds.items():
        of_kind.setdefault(kind, []).append(key)
    planned = [key for key in marked if not key.startswith("garment/")]
    assert "extant" in of_kind
    boards = []
    for written, board in caution_boards():
        plates = [by.choice(of_kind[by.choice(list(of_kind))]) for _ in range(by.randint(0, 2))]
        more = by.choices(planned, k=by.randint(0, 2))
        features = tuple(Feature(key.split("/")[0], key, mark) for key in more)
        gathered = tuple(Gathered(plate, mark) for plate in [*plates, "no-such/plate"])
        written |= {
            "features": [*written["features"], *more],
            "plates": [{"plate": each.plate} for each in gathered],
        }
        boards.append((written, replace(board, features=board.features + features, plates=gathered)))
    found = in_node(
        node,
        "given.boards.map((board) => cautions.cautionsFor(board, { kindOf: (plate) => given.kinds[plate],"
        " cautionsOf: (term) => given.marked[term] || [] }))",
        {"cautions": ASSETS / "cautions.js"},
        {"boards": [written for written, _ in boards], "kinds": kinds, "marked": marked},
    )
    told = set()
    for (written, board), theirs in zip(boards, found, strict=True):
        ours = [each._asdict() for each in cautions_for(board, demo_catalogue)]
        assert ours == theirs, json.dumps(written)
        told |= {(each["id"], each["where"]) for each in ours}
    assert ("old-garments", "plates") in told
    assert {which for which, _ in told} == set(SENTENCES)


def flat(svg: ElementTree.Element) -> list[tuple[str, dict[str, str], str]]:
    return [(each.tag, dict(each.attrib), each.text or "") for each in svg.iter()]
