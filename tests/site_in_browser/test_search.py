"""Finding by word, as the browser does it: folding, beginnings of words, other names."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from parity import in_node

pytestmark = pytest.mark.node
ASSETS = Path(__file__).parents[2] / "site" / "assets"


def search(node: str, expression: str, given: Any) -> Any:
    return in_node(node, expression, {"base": ASSETS / "base.js", "search": ASSETS / "search.js"}, given)


@pytest.mark.parametrize(
    ("text", "folded"),
    [
        ("Crêpe de Chine", "crepe de chine"),
        ("COL CHÂLE À REVERS", "col chale a revers"),
        ("Gürtelschließe", "gurtelschliesse"),
        ("œuvre, Ærmer & Łódź", "oeuvre aermer lodz"),
        ("the “Pierhead’s” own", "the pierheads own"),
        ("No. 2207—8/11", "no 2207 8 11"),
        ("  \t ", ""),
    ],
)
def test_two_spellings_of_a_word_are_folded_into_one(node, text, folded):
    assert search(node, "search.fold(given)", text) == folded


@pytest.mark.parametrize(
    ("query", "found"),
    [
        ("crepe", True),
        ("CRÊP", True),
        ("chine crep", True),
        ("repe", False),
        ("crepe georgette", False),
        ("", True),
        ("'", True),
    ],
)
def test_every_word_of_a_query_begins_some_word_of_the_text(node, query, found):
    given = {"text": "Jumper frock, crêpe de Chine", "query": query}
    assert search(node, "search.finds(search.searchable(given.text), given.query)", given) is found


OPTIONS = [
    {"label": "slide fastener", "names": ["zip", "zipper", "hookless fastener"]},
    {"label": "fastening, hidden", "names": []},
    {"label": "press studs", "names": ["snap fasteners", "poppers"]},
]


@pytest.mark.parametrize(
    ("query", "expected"),
    [
        ("fast", [("fastening, hidden", None), ("slide fastener", None), ("press studs", "snap fasteners")]),
        ("zipp", [("slide fastener", "zipper")]),
        ("popp", [("press studs", "poppers")]),
        ("nothing", []),
    ],
)
def test_the_label_comes_before_its_words_and_those_before_other_names(node, query, expected):
    found = search(
        node,
        "search.rank(given.options, given.query).map(({ option, by }) => [option.label, by])",
        {"options": OPTIONS, "query": query},
    )
    assert [tuple(each) for each in found] == expected


def test_an_address_comes_back_as_it_was_written(node):
    pairs = [["feature", "neckline/square"], ["words", "crêpe & 8/11 #2 +"], ["when", "1926~"], ["empty", ""]]
    back = search(node, "base.readAddress('#' + base.writeAddress(given))", pairs)
    assert back == pairs[:-1]
