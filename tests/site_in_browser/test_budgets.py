"""What a reader has to fetch, compressed as a host would (gzip), pictures left out.

Bounded are: each page with the one stylesheet; all the demonstration's data together; the scripts of any
page of the catalogue; and, by shelf, all scripts together: the catalogue's own and those of each work room
(writing a board, recording a source), which come only to the pages where one works. The caps of work
rooms stand just above what they are, and fail when they grow.
"""

from __future__ import annotations

import gzip
import re
from functools import cache
from pathlib import Path

import pytest

from conftest import missing
from inperiod.publishing.scripts import JOINED
from shipping import SHIPPED, TERSER, expected_files

KB = 1024
WORK_ROOMS = {
    "boards": (re.compile(r"board-|making|cautions"), 36),
    "recording": (re.compile(r"record-"), 64),
    "live flats": (re.compile(r"flat-"), 40),
}
"""The scripts of each, and the most they may weigh together, in KB."""


@cache
def weight(file: Path) -> int:
    return len(gzip.compress(file.read_bytes(), 9))


def scripts_of(page: Path, folder: str = "assets") -> set[Path]:
    """The scripts a page names that stand in that folder of the site."""
    named = re.findall(rf'<script src="([^"]*{folder}/[^"]+)"', page.read_text(encoding="utf-8"))
    return {(page.parent / name).resolve() for name in named}


def test_a_page_with_its_look_is_at_most_60_kb(demo_site):
    look = weight(demo_site / "assets/style.css")
    heaviest = max(demo_site.rglob("*.html"), key=weight)
    assert weight(heaviest) + look <= 60 * KB, heaviest


def test_the_demonstrations_data_is_at_most_40_kb(demo_site):
    """All data that answers are made of, whoever asks for it. What only the page for recording loads, and
    citations and drawings, fetched a file at a time, have their own bounds."""
    data = demo_site / "data"
    recording = data / "recording.js"
    apart = {file for folder in ("cite", "sources", "drawn") for file in (data / folder).glob("*.js")}
    asked = set(data.rglob("*.js")) - apart - {recording}
    assert {file.stem for file in asked} >= {"index", "every", "vocabulary", "dates", "0"}
    assert weight(recording) <= 16 * KB
    assert sum(map(weight, asked)) <= 40 * KB
    assert max(map(weight, apart), default=0) <= 8 * KB


def test_no_page_names_data_that_it_may_not_need(demo_site):
    """The questions and the timelines stand there whole; their data come when somebody asks."""
    named = {
        page.name: {each.stem for each in scripts_of(page, "data")} for page in demo_site.rglob("*.html")
    }
    assert {name: held for name, held in named.items() if held} == {
        "plates.html": {"index", "every"},
        "my-board.html": {"index", "every", "vocabulary", "dates"},
        "record.html": {"recording", "dates"},
    }


def room_of(script: Path) -> str | None:
    """The work room a script belongs to; None for the catalogue's own."""
    return next((room for room, (named, _) in WORK_ROOMS.items() if named.match(script.name)), None)


def test_the_scripts_of_the_catalogue_are_at_most_40_kb_in_all(demo_site):
    scripts = [each for each in (demo_site / "assets").glob("*.js") if room_of(each) is None]
    assert {"asking.js", "weighing.js", "listing.js", "timeline.js"} <= {each.name for each in scripts}
    assert sum(map(weight, scripts)) <= 40 * KB


@pytest.mark.parametrize("room", WORK_ROOMS)
def test_a_work_rooms_scripts_grow_no_further(demo_site, room):
    scripts = [each for each in (demo_site / "assets").glob("*.js") if room_of(each) == room]
    assert scripts
    assert sum(map(weight, scripts)) <= WORK_ROOMS[room][1] * KB


def test_a_page_loads_the_scripts_of_no_more_than_it_does(demo_site):
    """Gathering for a board is offered on the pages of the catalogue: two small scripts of the board's."""
    gathering = {"board-store.js", "board-gather.js"}
    at_work = {"boards.html", "my-board.html", "record.html"}
    pages = [page for page in demo_site.rglob("*.html") if page.name not in at_work]
    strangers = {
        (page.name, each.name)
        for page in pages
        for each in scripts_of(page)
        if room_of(each) and each.name not in gathering
    }
    assert strangers == set()
    assert max(sum(map(weight, scripts_of(page))) for page in pages) <= 40 * KB


@pytest.mark.node
def test_the_short_forms_that_are_sent_are_those_of_the_scripts(demo_site, node):
    """``python tests/shipping.py`` writes them; a script that changed since would be sent at full length."""
    if not TERSER.is_dir():
        missing(f"{TERSER} is absent: run npm ci in tests/")
    wanted = expected_files(node)
    kept = {each.name: each.read_text(encoding="utf-8") for each in SHIPPED.iterdir()}
    assert sorted(kept) == sorted(wanted)
    assert [name for name in wanted if kept[name] != wanted[name]] == []
    sent = {each.name: each.read_text(encoding="utf-8") for each in (demo_site / "assets").glob("*.js")}
    joined = {path.removeprefix("assets/"): parts for path, parts in JOINED.items()}
    expected = {name: "".join(kept[part] for part in joined.get(name, [name])) for name in sent}
    assert [name for name in sent if sent[name] != expected[name]] == []
