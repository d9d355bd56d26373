"""The browser reads dates as the Python side does: vectors written here, run under Node.js.

The vectors are spec examples, phrases with a known meaning, real museum phrases where they are present, and
texts put together at random (always the same ones) from the words, digits and marks that dates are made of.
"""

from __future__ import annotations

import csv
import json
import random
import subprocess
from pathlib import Path
from typing import Any

import pytest

from dating.meanings import PAIRS
from inperiod.dating import (
    Seasons,
    Span,
    Undated,
    Unreadable,
    in_words,
    iso_day,
    lexicon,
    read_edtf,
    read_phrase,
    widened,
)

pytestmark = pytest.mark.node

CHECKOUT = Path(__file__).parents[2]
SCRIPT = CHECKOUT / "site" / "assets" / "dating.js"
RUNNER = Path(__file__).parent / "run_vectors.js"
MUSEUM = CHECKOUT.parent / "shared" / "data" / "museum-dates" / "dates.csv"

SPECIFIED = """
1985-04-12 1985-04 1985 1985-04-12T23:20:30Z 1985-04-12T23:20:30+04:30 1964/2008 2004-02-01/2005
Y170000002 Y-170000002 2001-21 2001-24 1984? 2004-06~ 2004-06-11% 201X 20XX 2004-XX 1985-04-XX 1985-XX-XX
1985-04-12/.. ../1985 1985/ /1985-04 -1985 -01XX Y-17E7 1950S2 Y171010000S3 Y3388E2S3 2001-25 2001-30
2001-34 2001-37 2001-41 [1667,1668,1670..1672] [..1760-12-03] [1760-12..] {1960,1961-12} {..1984}
2004-06~-11 ?2004-06-~11 2004-%06-11 156X-12-25 XXXX-12-XX 1XXX-XX 1984-1X 1984?-XX
2004-06-~01/2004-06-~20 219X-02-29 XXXX-02-29 XXX1-02-29 0000 1912-13 1926-02-30 1915/1910 / [] -0000
Y9E99 1985-04-12T25:00:00 -0001 -0004-02-29
"""
PHRASES = """
ca. 1885–90|late 1920s|second quarter of the 19th century|Autumn and Winter 1912-13|before 1907
mid-18th century|1939, printed 1946|early 20th c.|1926 or 1927|between 1910 and 1915|after 1920
not before 1917|n.d.|12.V.1926
19th–early 20th century|June 19-20, 1964|1920s–30s|1890s-1900s|May 12, 1926|5/12/1926|Summer 1912-13|1905/10
designed 1938, made 1955|Edo period (1603-1867), 19th century|Edwardian, c. 1905|Müller 1926|été 1926|1912-23
1. Hälfte 19. Jh.|fin XIXe s.|siglos XVIII-XIX|prima metà del XIX secolo|eerste helft 19e eeuw|[192-?]|1 9 2 6
1900s (decade)|19th century (late)|1940s, possibly early 1950s|pre-1912?|C18-C19|©1926|İ1926|①926|١٩٢٦|1926½
"""
PIECES = [
    *(
        "1912 1926 1920s 30s 1900s 1800s 19th XIX 5 12 13 0 99 21 24 1912-13 1926-05 192X 9999 0000 " * 6
    ).split(),
    *("- – / , ( ) ? [ ] c. ca. and or .. X ~ % ; : 's . century period to " * 6).split(),
    *(word for table in (lexicon.MONTHS, lexicon.WORDS, lexicon.EVENTS) for word in table.split()),
    *(word for table in (lexicon.FILLERS, lexicon.PERIODS) for word in table.split()),
]
MARKS = "X 0 1 9 19 1912 12 - / .. [ ] { } , ? ~ % Y E S 2 21 24 30 31 02 -02-29".split()


def texts() -> list[str]:
    chance = random.Random(1912)
    museum: list[str] = []
    if MUSEUM.is_file():
        with MUSEUM.open(encoding="utf-8", newline="") as file:
            museum = [row["date_text"] for row in csv.DictReader(file)]
    phrases = [" ".join(chance.choices(PIECES, k=chance.randint(1, 7))) for _ in range(4000)]
    phrases += [each.replace(" ", "") for each in phrases[:500]]
    marks = ["".join(chance.choices(MARKS, k=chance.randint(1, 9))) for _ in range(2500)]
    said = [phrase for line in PHRASES.strip().splitlines() for phrase in line.split("|")]
    meant = [phrase for phrase, _ in PAIRS]
    return [*SPECIFIED.split(), *said, *meant, *museum, *phrases, *marks, "", " ", "1912 " * 50]


def as_list(span: Span) -> list[Any]:
    margins = [span.early_margin, span.late_margin]
    return [span.earliest, span.latest, span.approximate, span.uncertain, *margins]


def read(text: str, seasons: Seasons) -> Any:
    try:
        return as_list(read_edtf(text, seasons))
    except Unreadable:
        return None


def understood(text: str, seasons: Seasons, circa_years: int) -> dict[str, Any]:
    try:
        meant = read_phrase(text, seasons)
    except Undated:
        return {"refused": "undated"}
    except Unreadable:
        return {"refused": "unreadable"}
    days = [day for day in (meant.span.earliest, meant.span.latest) if day is not None]
    return {
        "edtf": meant.edtf,
        "span": as_list(meant.span),
        "widened": as_list(widened(meant.span, circa_years)),
        "words": meant.words,
        "note": meant.note,
        "bare": in_words(meant.span),
        "days": [iso_day(day) for day in days],
    }


def vectors() -> list[dict[str, Any]]:
    chance = random.Random(1926)
    found = []
    for text in texts():
        seasons: Seasons = chance.choice(["northern", "northern", "southern"])
        circa_years = chance.choice([0, 5, 10])
        asked = {"text": text, "seasons": seasons, "circaYears": circa_years}
        found.append(asked | {"phrase": understood(text, seasons, circa_years), "edtf": read(text, seasons)})
    return found


def test_the_browser_understands_every_vector_as_the_python_side_does(node: str, tmp_path: Path) -> None:
    written = vectors()
    assert len(written) >= 2000
    assert sum("edtf" in each["phrase"] for each in written) >= 1000
    file = tmp_path / "vectors.json"
    file.write_text(json.dumps({"words": lexicon.as_data(), "vectors": written}), encoding="utf-8")
    ran = subprocess.run(
        [node, str(RUNNER), str(SCRIPT), str(file)], capture_output=True, text=True, check=False, timeout=300
    )
    assert ran.returncode == 0, ran.stdout + ran.stderr
    assert ran.stdout.strip() == f"{len(written)} vectors agree"


def test_no_text_of_the_longest_length_keeps_the_browser_busy(node: str) -> None:
    from parity import in_node

    seeds = [
        "1",
        "1 ",
        "- ",
        "c. ",
        "early ",
        "(",
        ", ",
        "patent 1",
        "1912 or ",
        "1912-",
        "1. ",
        "x",
        "' s",
        "111,",
    ]
    long = [(seed * 200)[:200] for seed in seeds]
    milliseconds = in_node(
        node,
        "given.map((text) => { const start = process.hrtime.bigint();"
        " try { dating.readPhrase(text); }"
        " catch (refused) { if (!(refused instanceof dating.Unreadable)) throw refused; }"
        " return Number(process.hrtime.bigint() - start) / 1e6; })",
        {"dating": SCRIPT},
        long,
    )
    assert max(milliseconds) < 250  # a rule that doubles with every letter would take for ever
