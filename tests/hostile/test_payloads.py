"""More than a hundred payloads in every text field of every kind of record: all stay text.

One catalogue holds a source with a plate, a facet with a term and a board for each payload; pages made of
them are opened in Chromium, and what the scripts draw themselves is looked at as well.
"""

from __future__ import annotations

import csv
import json
import os
import re
from collections.abc import Iterator
from html.parser import HTMLParser
from pathlib import Path
from typing import TYPE_CHECKING
from urllib.parse import quote
from xml.etree import ElementTree

import pytest

from hostile import catalogues
from hostile.payloads import ALL, PAYLOADS
from hostile.watched import Watched
from inperiod.cli import main
from inperiod.records import read_catalogue
from inperiod.records.shapes import shape_of

if TYPE_CHECKING:
    from windows import Windows

REFUSED = re.compile("^The rights .* are no web address that can be followed")


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return catalogues.write(tmp_path_factory.mktemp("hostile") / "catalogue", ALL)


@pytest.fixture(scope="module")
def site(folder: Path) -> Path:
    target = folder.parent / "public"
    assert main(["build", "--anyway", str(folder), "--out", str(target)]) == 0
    return target


@pytest.fixture(scope="module")
def watched(windows: Windows, site: Path) -> Iterator[Watched]:
    window = windows.lend()
    yield Watched(window, site.as_uri() + "/")
    windows.take_back(window)


def test_there_are_a_hundred_payloads_at_least_of_every_kind() -> None:
    assert len(ALL) >= 100
    assert min(map(len, PAYLOADS.values())) >= 5
    assert not [each for each in ALL if "\n" in each or len(each) > 500]


def test_no_text_field_of_any_record_is_missed() -> None:
    """The fields the schemas let any text stand in, and those of the records made here."""
    made = {
        "source": catalogues.source("PAYLOAD", 0),
        "vocabulary": catalogues.facet("PAYLOAD", 0),
        "board": catalogues.board("PAYLOAD", 0),
        "settings": catalogues.settings("PAYLOAD"),
    }
    for kind, record in made.items():
        wanted = set(catalogues.text_fields(shape_of(kind)))
        found = set(paths(record))
        assert not {each for each in wanted - found if each[-1] != "width"}, kind
        assert len(wanted) > 3


def paths(value: object, path: tuple[str, ...] = ()) -> Iterator[tuple[str, ...]]:
    if isinstance(value, dict):
        for name, each in value.items():
            yield from paths(each, (*path, name))
    elif isinstance(value, list):
        for each in value:
            yield from paths(each, (*path, "*"))
    elif value == "PAYLOAD":
        yield path


def test_the_records_are_read_and_only_addresses_that_run_something_are_refused(folder: Path) -> None:
    reading = read_catalogue(folder)
    assert len(reading.catalogue.sources) == len(reading.catalogue.boards) == len(ALL)
    refused = {each.file: each for each in reading.errors if REFUSED.match(each.message)}
    assert [each for each in reading.errors if not REFUSED.match(each.message)] == []
    for number, payload in enumerate(ALL):
        runs = re.match(
            r"[\x00-\x20\ufeff\u2028]*(javascript|data|vbscript|blob|file):|//",
            payload.replace("\t", ""),
            re.I,
        )
        said = refused.get(f"sources/s-{number}.yaml")
        assert not runs or said, payload
        if said:
            lines = (folder / said.file).read_text(encoding="utf-8").split("\n")
            assert re.search(r"(rights|file): $", lines[said.line - 1][: said.column - 1]), said


# --- what is written ----------------------------------------------------------------------------------


class Markup(HTMLParser):
    """Notes what no record's text may become."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.odd: list[str] = []
        self.inside = ""

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = dict(attrs)
        self.inside = tag
        if tag in ("iframe", "object", "embed", "base", "math", "marquee", "style", "video", "audio"):
            self.odd.append(tag)
        if tag == "script" and not given.get("src") and given.get("type") != "application/ld+json":
            self.odd.append("script")
        for name, value in given.items():
            link = name in ("href", "src", "action", "formaction", "srcdoc", "xlink:href", "data", "poster")
            scheme = re.match(r"[\x00-\x20]*([A-Za-z][A-Za-z0-9+.-]*):", value or "") if link else None
            if (
                name.startswith("on")
                or name == "style"
                or (scheme and scheme[1].lower() not in ("http", "https"))
            ):
                self.odd.append(f"{tag} {name}={value}")

    def handle_data(self, data: str) -> None:
        if self.inside == "script" and data.strip():
            json.loads(data)  # nothing but data stands inside a page's script

    def handle_endtag(self, tag: str) -> None:
        self.inside = ""


def test_no_file_of_the_site_holds_markup_that_came_from_a_record(site: Path) -> None:
    pages = sorted(site.rglob("*.html"))
    assert len(pages) > 4 * len(ALL)
    for page in pages:
        text = page.read_text(encoding="utf-8")
        markup = Markup()
        markup.feed(text)
        assert markup.odd == [], page
        assert "{{ 7 * 7 }}" not in text or "49" not in re.findall(r"(49)\{%", text), page
        assert "root:" not in text, page


def test_every_drawing_feed_and_data_file_of_the_site_is_sound(site: Path) -> None:
    for file in sorted(site.rglob("*")):
        if file.suffix in (".svg", ".xml"):
            tree = ElementTree.fromstring(file.read_text(encoding="utf-8"))
            for element in tree.iter():
                assert element.tag.rpartition("}")[2] not in (
                    "script",
                    "foreignObject",
                    "animate",
                    "set",
                    "image",
                ), file
                assert not [name for name in element.attrib if name.startswith("on")], file
                hrefs = [value for name, value in element.attrib.items() if name.rpartition("}")[2] == "href"]
                assert all(re.match(r"(https?://|#|[\w./-]+$)", value) for value in hrefs), (file, hrefs)
        elif file.suffix == ".json":
            json.loads(file.read_text(encoding="utf-8"))
        elif file.suffix == ".csv" and file.parent.name == "download":
            with file.open(encoding="utf-8", newline="") as stream:
                for row in csv.reader(stream):
                    assert not [
                        cell for cell in row if cell.startswith(("=", "+", "-", "@", "\t", "\r", "\n", "＝"))
                    ], file


# --- what runs ----------------------------------------------------------------------------------------


def test_the_watch_sees_the_payloads_where_they_are_not_escaped(windows: Windows, tmp_path: Path) -> None:
    """The other half of the proof: on a page that writes them as they are they run, or are stopped."""
    policy = "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; script-src 'self'\">"
    window = windows.lend()
    it = Watched(window, tmp_path.as_uri() + "/")
    payloads = PAYLOADS["script"][:8] + PAYLOADS["handler"][:12] + PAYLOADS["drawing"][:4]
    found = {}
    for name, head in (("open", ""), ("closed", policy)):
        found[name] = []
        for payload in payloads:
            page = f"<!doctype html><meta charset=utf-8><title>x</title>{head}<p>{payload}"
            (tmp_path / "page.html").write_text(page, encoding="utf-8")
            found[name].append(" ".join(it.visit("page.html")))
    windows.take_back(window)
    assert sum("boom ran" in each for each in found["open"]) >= len(payloads) // 2
    assert sum("policy: " in each for each in found["closed"]) >= len(payloads) // 2
    assert not any("boom ran" in each for each in found["closed"])
    assert all(found["open"])
    assert all(found["closed"])


FRAMES = 20
KINDS = ("source/s-{}.html", "term/facet-{0}/term-{0}.html", "facet/facet-{}.html", "board/b-{}.html")


@pytest.mark.browser
def test_no_page_of_a_record_runs_anything(watched: Watched, site: Path) -> None:
    """The plate of every payload, and one more page of it by turns; all, where INPERIOD_EVERY_PAGE is set."""
    every = bool(os.environ.get("INPERIOD_EVERY_PAGE"))
    pages = {}
    for number, payload in enumerate(ALL):
        for kind in ("plate/s-{}/p1.html", *(KINDS if every else (KINDS[number % len(KINDS)],))):
            pages[kind.format(number)] = payload
    for first in range(0, len(pages), FRAMES):
        seen = watched.visit_all(list(pages)[first : first + FRAMES])
        assert not any(seen.values()), {pages.get(page, page): said for page, said in seen.items() if said}


@pytest.mark.browser
def test_no_other_page_runs_anything(watched: Watched, site: Path) -> None:
    # The page of lost addresses leads to the site's address and not to the folder; its markup is read above.
    elsewhere = {"404.html", "plate", "source", "term", "facet", "board"}
    others = [
        each for each in sorted(site.rglob("*.html")) if each.relative_to(site).parts[0] not in elsewhere
    ]
    assert len(others) >= 14
    for page in others:
        assert watched.visit(page.relative_to(site).as_posix()) == [], page


@pytest.mark.browser
def test_the_answer_that_is_drawn_on_asking_runs_nothing(watched: Watched) -> None:
    watched.visit("index.html")
    for number, payload in enumerate(ALL):
        address = f"garment=dress&when=1926&feature=facet-{number}/term-{number}"
        watched.page.evaluate("(to) => { location.hash = to; }", address)
        watched.page.wait_for_function(
            "(term) => document.querySelector(`#answer [data-term='${term}']`)",
            arg=f"facet-{number}/term-{number}",
        )
        assert watched.look() == [], payload
    for payload in ALL:
        watched.page.evaluate(
            "(to) => { location.hash = to; }",
            f"garment={quote(payload)}&when={quote(payload)}&feature={quote(payload)}&place={quote(payload)}",
        )
    watched.page.wait_for_timeout(100)
    assert watched.look() == []


@pytest.mark.browser
def test_the_boxes_that_search_as_one_types_run_nothing(watched: Watched) -> None:
    watched.visit("index.html")
    box = watched.page.locator("#ask input[role=combobox]").first
    for word in ("boom", "script", "<img", "=1"):
        box.fill(word)
        watched.page.wait_for_timeout(50)
        assert watched.page.locator("[role=option]").count() > 3
        assert watched.look() == []


@pytest.mark.browser
def test_the_list_of_plates_that_scripts_draw_runs_nothing(watched: Watched) -> None:
    for address in (
        "",
        "#view=list",
        "#words=boom",
        f"#words={quote(ALL[0])}&has={quote(ALL[1])}&garment={quote(ALL[2])}",
        "#from=1900&to=1950",
    ):
        watched.visit("data.html")
        assert watched.visit("plates.html" + address) == [], address
        watched.page.wait_for_timeout(100)
        watched.page.mouse.wheel(0, 20_000)
        assert watched.look() == [], address


@pytest.mark.browser
def test_the_timeline_that_scripts_draw_runs_nothing(watched: Watched) -> None:
    watched.visit("timeline.html")
    for number in range(0, len(ALL), 8):
        watched.page.evaluate(
            "(to) => { location.hash = to; }",
            f"garment=dress&facet=facet-{number}&place={quote(ALL[number])}",
        )
        watched.page.wait_for_timeout(30)
        assert watched.look() == [], ALL[number]


@pytest.mark.browser
def test_a_board_of_ones_own_from_a_hostile_file_or_link_runs_nothing(watched: Watched, folder: Path) -> None:
    """Every payload's board, as it would come in a file: opened, kept, listed and shown."""
    watched.visit("boards.html")
    watched.page.set_input_files("#own-import", folder / "boards" / "b-0.yaml")
    watched.page.wait_for_url("**/my-board.html**")
    watched.page.wait_for_timeout(200)
    assert watched.look() == []
    assert watched.page.locator("#own-title").input_value() == ALL[0]
    texts = [
        (folder / "boards" / f"b-{number}.yaml").read_text(encoding="utf-8") for number in range(len(ALL))
    ]
    links = watched.page.evaluate(
        """(texts) => texts.map((text, i) => {
          const board = InPeriod.boardFile.readBoard(text);
          const entry = { format: 1, revision: 1, saved: "2026-01-02T00:00:00Z", board };
          localStorage.setItem(`inperiod-board:h${i}`, JSON.stringify(entry));
          return InPeriod.boardFile.inLink(board);
        })""",
        texts,
    )
    for number, payload in enumerate(ALL):
        watched.page.evaluate("(to) => { location.hash = to; }", f"id=h{number}")
        watched.page.wait_for_function(
            "(title) => document.getElementById('own-title').value === title", arg=payload
        )
        assert watched.look() == [], payload
    assert watched.visit("boards.html") == []
    assert watched.page.locator("#own-boards-list li").count() > len(ALL)
    for link in [each for each in links if each][::20]:
        watched.visit("data.html")
        assert watched.visit(f"my-board.html#{link}") == []


@pytest.mark.browser
def test_a_hostile_source_file_opened_on_the_recording_page_runs_nothing(
    watched: Watched, folder: Path
) -> None:
    for number in range(0, len(ALL), 16):
        watched.visit("record.html")
        watched.page.set_input_files("#record-choose-file", folder / "sources" / f"s-{number}.yaml")
        watched.page.wait_for_timeout(150)
        assert watched.look() == [], ALL[number]


@pytest.mark.browser
@pytest.mark.parametrize("first", range(0, len(ALL), 12))
def test_the_settings_run_nothing_on_any_kind_of_page(first: int, windows: Windows, tmp_path: Path) -> None:
    payloads = ALL[first : first + 12]
    words = next(
        " ".join(payloads[:most]) for most in range(12, 0, -1) if len(" ".join(payloads[:most])) < 900
    )
    folder = catalogues.write(tmp_path / "catalogue", ["plain"], of_settings=words)
    reading = read_catalogue(folder)
    assert [each for each in reading.errors if each.file == "inperiod.yaml"] == []
    site = tmp_path / "public"
    assert main(["build", "--anyway", str(folder), "--out", str(site)]) == 0
    for page in sorted(site.rglob("*.html")):
        markup = Markup()
        markup.feed(page.read_text(encoding="utf-8"))
        assert markup.odd == [], page
    for file in (*site.glob("*.xml"), *site.rglob("*.svg")):
        ElementTree.fromstring(file.read_text(encoding="utf-8"))
    window = windows.lend()
    it = Watched(window, site.as_uri() + "/")
    for path in ("index.html", "plate/s-0/p1.html", "about.html"):
        assert it.visit(path) == []
    windows.take_back(window)
