"""Where a page stands, what comes before and after it, and that links lead both ways."""

from __future__ import annotations

import itertools
from collections.abc import Iterator
from pathlib import Path
from posixpath import dirname, join, normpath
from urllib.parse import unquote, urlsplit
from xml.etree import ElementTree

import pytest

from inperiod.publishing.paths import plate_path, source_path, term_path
from inperiod.records.model import Catalogue
from publishing.pages import Read

Links = dict[str, list[tuple[str | None, str]]]


@pytest.fixture(scope="module")
def pages(demo_site: Path, demo_pages: dict[Path, Read]) -> dict[str, Read]:
    return {file.relative_to(demo_site).as_posix(): page for file, page in demo_pages.items()}


@pytest.fixture(scope="module")
def links(pages: dict[str, Read]) -> Links:
    """The links of each page to others of the site: what it is for (``rel``), and where it leads."""
    return {path: list(_links(path, page)) for path, page in pages.items()}


def _links(path: str, page: Read) -> Iterator[tuple[str | None, str]]:
    for tag, attributes in page.elements:
        href = attributes.get("href")
        if tag in ("a", "link") and href and not urlsplit(href).scheme and urlsplit(href).path:
            yield attributes.get("rel"), normpath(join(dirname(path), unquote(urlsplit(href).path)))


def test_every_page_has_the_sites_picture_in_its_tab(demo_site: Path, links: Links) -> None:
    for path, led in links.items():
        assert [to for rel, to in led if rel == "icon"] == ["assets/favicon.svg"], path
    drawn = ElementTree.parse(demo_site / "assets/favicon.svg").getroot()
    assert drawn.tag == "{http://www.w3.org/2000/svg}svg"
    assert len(list(drawn.iter())) > 1


def test_following_and_previous_answer_each_other(links: Links) -> None:
    turns = {(path, rel): to for path, led in links.items() for rel, to in led if rel in ("prev", "next")}
    assert len(turns) > 1000
    other = {"prev": "next", "next": "prev"}
    assert [turn for turn, to in turns.items() if turns.get((to, other[turn[1] or ""])) != turn[0]] == []


def test_turning_the_pages_of_a_source_passes_every_plate(links: Links, demo_catalogue: Catalogue) -> None:
    following = {path: to for path, led in links.items() for rel, to in led if rel == "next"}
    for source in demo_catalogue.sources.values():
        shown = [plate_path(plate.key) for plate in source.plates if plate.publish and source.publish]
        for one, after in itertools.pairwise(shown):
            assert following[one] == after


def test_a_trail_names_where_the_page_stands(
    pages: dict[str, Read], links: Links, demo_catalogue: Catalogue
) -> None:
    for plate in demo_catalogue.plates.values():
        path = plate_path(plate.key)
        if path in pages:
            assert source_path(plate.source) in {to for _, to in links[path]}
    below = [path for path in pages if "/" in path]
    assert below
    for path in below:
        trails = [each for tag, each in pages[path].elements if each.get("class") == "trail"]
        assert len(trails) == 1, path
        assert trails[0].get("aria-label")


def test_links_lead_both_ways(links: Links, demo_catalogue: Catalogue) -> None:
    """A plate and its source name each other; so do a plate and the terms it shows, by the list of plates."""
    led = {path: {to for _, to in found} for path, found in links.items()}
    for plate in demo_catalogue.plates.values():
        path = plate_path(plate.key)
        if path not in led:
            continue
        assert path in led[source_path(plate.source)]
        for feature in plate.features:
            if feature.term:
                assert term_path(feature.term) in led[path]


def test_every_page_can_be_reached_from_home(links: Links) -> None:
    led = {path: {to for _, to in found} for path, found in links.items()}
    reached, waiting = {"index.html"}, ["index.html"]
    while waiting:
        for to in led.get(waiting.pop(), ()):
            if to in led and to not in reached:
                reached.add(to)
                waiting.append(to)
    opened_by_a_button = {"my-board.html"}
    assert set(led) - reached - opened_by_a_button == {"404.html"}
