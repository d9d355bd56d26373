"""Records with slips made by the hundred: page and checker complain of them alike, word for word."""

from __future__ import annotations

import copy
import random
from dataclasses import replace
from pathlib import Path
from typing import Any, NamedTuple

import pytest

from dating.test_both_languages import texts
from inperiod.dating import Unreadable, read_edtf
from inperiod.importing.writing import to_yaml
from inperiod.records import read_catalogue
from inperiod.records.model import Catalogue
from inperiod.records.problems import nearest
from inperiod.records.yaml_reading import plain_value, read_yaml
from parity import in_node
from recording.checks_in_node import ASSETS
from recording.test_checks_same_words import compared

pytestmark = pytest.mark.node

WHOLE = Path(__file__).parents[1] / "records" / "whole" / "sources" / "autumn-list.yaml"

DATES = """
1912|1912-23|192X|1925~|1912/1913|1913/1912|1912-13|1912-32|1926-02-30|1912–1918|1912-1918|c.1912|ca. 1910
1920s|192u|12/5/26|5|912|autumn-1912|autumn 1912|before 1907|after 1920|n.d.|1912-9|[1912|[1912,1911..1910]|{}
{..}|1912-23-04|Y17E7|Y1912-05|-0000|1912-05-01T25:00:00|/|late 1920s|spring of 1912, printed 1920|éte|XXXX
1912 or so|😀|Y9E99|1912/1910-05|0000|1850|1880-05/1881
"""
WORDS = """
neckline/square|neckline/sqare|neckline/Square|necklin/square|neckline|square|neckline square|neckline/none
neckline/not visible|garment/blouse|closure/zip|closure/slide-fastener|sleeve/puffed|trim/lace|neckline/
/square|a/b/c|trim/none|0|007|o1|01|-5|1.5|10000|yes|No|true|FALSE|null|~|day-dress|blowse|shirtwaist|coat
printed|prnted|style|front|bak|text only|colour plate|GBP|£|gbp|en|English|en-gb|https://example.org/x|http:/x
javascript:alert(1)|mailto:a@b|http://rightsstatements.org/vocab/InC/1.0/|1 in|1/2 in|1½ in|2.5cm|wide
120,80,400,900|pct:0,0,50,50|pct:90,0,50,50|9999,0,1,1|1,2,3|a.png|p14.PNG|autumn-list/p14.png|../p14.png
./autumn-list//p14.png|/etc/p.png|image|Plate 3|p14.jpg|confirmed|disputed|corrected|denied|woman|lady|seen
herself|collars|bust|autumn-list|autumn-list/p14-3|summer-list/p3|sumer-list/p3|summer-list/p4|–|-x|• a|a: b
neckline / square|neckline_square|İ|Straße/ß|\u0430bc|square\u00a0
"""
KEYS = """
titel Title tite date_bais dates plates plate features feature term facet none not_visible at width count
colour reading note garment garmet id by on instead confirmations image file alt region rights publish outfit
same_cut_as reprint_of xyz é constructor __proto__ price amount currency wearer who
"""


def pool_of(catalogue: Catalogue) -> list[Any]:
    """Values to put where they do not belong, or do."""
    terms = [*catalogue.vocabulary.terms][::3]
    return [
        *(each for text in (DATES, WORDS) for line in text.strip().split("\n") for each in line.split("|")),
        *("//example.org", "java\tscript:x", "\u200bdata:x", "\u00a0vbscript:x", "https://a b"),
        *("", " ", "x" * 90, "é" * 1001, "x" * 20001, "a\nb", "a\x85b", "😀" * 70, "colour \u2003 plate"),
        *(None, True, False, 0, 1, -3, 12345678901234567, 1.5, [], {}, [[]], [None], ["a", "b"], [{}]),
        *(
            {"term": "neckline/round"},
            {"neckline": "round"},
            {"facet": "trim", "none": True},
            {"a": {"b": 1}},
        ),
        *({"facet": "trim"}, {"term": "trim/braid", "facet": "trim"}, {"facet": "collar", "none": False}),
        *({"id": "p1", "garment": "blouse"}, {"id": "pl", "garment": "coat", "publish": False}),
        {"file": "autumn-list/p14.png", "region": "2,2,9,9", "alt": "A frock."},
        *(chosen for term in terms for chosen in (term, {"term": term, "at": "hem"})),
        *({"facet": facet, "none": True} for facet in catalogue.vocabulary.facets),
        [
            {"by": "A. B.", "reading": "disputed", "feature": "neckline/v", "instead": "neckline/round"},
            {"by": "C. D.", "on": "2026-03-02", "reading": "confirmed", "feature": "neckline/v"},
            {"by": "E. F.", "on": "2026", "reading": "corrected", "instead": "garment/coat"},
            {"by": "G. H.", "on": "2026-02", "reading": "disputed"},
        ],
    ]


def places(value: Any, path: tuple[Any, ...] = ()) -> list[tuple[Any, ...]]:
    """The path of every value inside a value."""
    inner = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    return [found for key, each in inner for found in ((*path, key), *places(each, (*path, key)))]


def misspelt(word: str, chance: random.Random) -> str:
    at = chance.randrange(len(word) + 1)
    return chance.choice(
        [
            word[:at] + word[at + 1 :],
            word[:at] + chance.choice("aeiours-_/ 01") + word[at:],
            word.upper(),
            word + " ",
        ]
    )


def with_slip(source: Any, chance: random.Random, pool: list[Any]) -> Any:
    """One value changed, misspelt, taken out, added, given twice, or put under another name."""
    slipped = copy.deepcopy(source)
    *steps, last = chance.choice(places(slipped) or [("title",)])
    around = slipped
    for step in steps:
        around = around[step]
    old = around[last] if isinstance(around, list) or last in around else None
    other = copy.deepcopy(chance.choice(pool))
    match chance.choice(("change", "misspell", "misspell", "drop", "add", "add", "rename", "repeat")):
        case "misspell" if isinstance(old, str):
            around[last] = misspelt(old, chance)
        case "drop":
            del around[last]
        case "add" if isinstance(around, list):
            around.append(other)
        case "add" | "rename" if isinstance(around, dict):
            around[chance.choice(KEYS.split())] = chance.choice([copy.deepcopy(old), other])
        case "repeat" if isinstance(around, list):
            around.append(copy.deepcopy(old))
        case _:
            around[last] = other
    return slipped


def slipped_files(count: int, small: Small, seed: int) -> list[tuple[str, bytes]]:
    chance, pool = random.Random(seed), pool_of(small.catalogue)
    made = []
    for _ in range(count):
        name, source = chance.choice(small.written)
        for _ in range(chance.choice((1, 1, 2, 6))):
            source = with_slip(source, chance, pool)
        text = to_yaml(source)
        # As people write: quotation marks are forgotten at times.
        made.append((name, text.replace('"', "") if chance.random() < 0.15 else text))
    return [(name, text.encode()) for name, text in made]


class Small(NamedTuple):
    """A few sources of the demonstration and the record that has every field, read and as plain values."""

    catalogue: Catalogue
    written: list[tuple[str, Any]]


@pytest.fixture(scope="module")
def small(demo_catalogue: Catalogue) -> Small:
    return small_of(demo_catalogue)


def small_of(demo: Catalogue) -> Small:
    chosen = sorted(demo.sources)[::14]
    files = [demo.folder / "sources" / f"{each}.yaml" for each in chosen]
    named = [*((f"sources/{file.name}", file) for file in files), *[("sources/autumn-list.yaml", WHOLE)] * 4]
    roots = [(name, read_yaml(file.read_bytes(), name).root) for name, file in named]
    whole = read_catalogue(WHOLE.parents[1]).catalogue
    sources = {**{each: demo.sources[each] for each in chosen}, **whole.sources}
    # The folder is that of the record with every field, which has the pictures.
    return Small(
        replace(demo, folder=whole.folder, sources=sources, boards={}),
        [(name, plain_value(root)) for name, root in roots if root],
    )


@pytest.mark.parametrize("seed", range(4))
def test_of_records_with_slips_both_say_the_same(node: str, small: Small, seed: int) -> None:
    files = [(name, data, small.catalogue) for name, data in slipped_files(150, small, seed)]
    differences, agreed = compared(node, files)
    assert differences == []
    assert agreed > 200


def test_an_unreadable_date_is_told_in_the_same_words(node: str, small: Small) -> None:
    def told(text: str) -> str | None:
        try:
            read_edtf(text)
        except Unreadable as reason:
            return str(reason)
        return None

    said = [*dict.fromkeys([*(each for each in pool_of(small.catalogue) if isinstance(each, str)), *texts()])]
    theirs = in_node(
        node,
        "given.map((text) => {"
        " try { dates.readEdtf(text); return null; } catch (reason) { return reason.message; } })",
        {"dates": ASSETS / "dating.js"},
        said,
    )
    ours = [told(text) for text in said]
    assert [each for each in zip(said, ours, theirs, strict=True) if each[1] != each[2]] == []
    assert len({each for each in ours if each}) > 1000


def test_the_nearest_word_is_the_one_difflib_finds(node: str, demo_catalogue: Catalogue) -> None:
    chance = random.Random(7)
    ids = [term.id for term in demo_catalogue.vocabulary.terms.values()]
    words = [misspelt(misspelt(chance.choice(ids), chance), chance) for _ in range(400)]
    words += ["", "a", "aaaaaaaa", "-", "x" * 150, "😀quare", "abcabcabc"]
    asked = [(word, chance.sample(ids, 40), chance.choice((0.4, 0.6, 0.75))) for word in words]
    asked.append(("ab", ["abc", "abd", "abx", "xab"], 0.6))
    theirs = in_node(
        node, "given.map((each) => shapes.nearest(...each))", {"shapes": ASSETS / "record-shape.js"}, asked
    )
    assert theirs == [nearest(*each) for each in asked]
    assert len([each for each in theirs if each]) > 100
