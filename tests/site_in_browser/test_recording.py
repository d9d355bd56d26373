"""The page on which a source is recorded, driven in Chromium as a person would: by keys, by pointer, by finger;
closed, killed, opened twice, its storage full. What it saves is judged by the checker itself."""

from __future__ import annotations

import io
import os
import re
import shutil
import subprocess
import time
import zipfile
from pathlib import Path

import pytest

from conftest import CHROMIUM_ARGUMENTS, find_chromium, missing
from inperiod.cli import main
from inperiod.publishing import build
from inperiod.records import read_catalogue
from inperiod.records.tidying import tidy
from site_in_browser.invented_pages import FIGURES, make_pages
from site_in_browser.test_every_page import AXE, TOO_WIDE

pytestmark = pytest.mark.browser

MOST_KEYS = 45
"""Keys a figure, captions aside: the aim that was set."""


class Typist:
    """Presses keys and counts them: a letter is one, a chord as many as it has keys. Text that is pasted in is
    no key of hers beyond the two that paste it."""

    def __init__(self, page):
        self.page = page
        self.keys = 0

    def press(self, *chords):
        for chord in chords:
            self.page.keyboard.press(chord)
            self.keys += len(chord.split("+")) if chord != "+" else 1

    def type(self, text):
        self.page.keyboard.type(text)
        self.keys += len(text)

    def paste(self, text):
        self.page.keyboard.insert_text(text)
        self.keys += 2


def focused(page):
    return page.evaluate("document.activeElement.id")


def work(page):
    return page.evaluate("InPeriod.recording.get()")


def until(page, script, seconds=8.0):
    """Waits until the script is true; the page's own policy forbids the way Playwright has for it."""
    ends = time.monotonic() + seconds
    while not page.evaluate(script):
        assert time.monotonic() < ends, f"never true: {script}"
        page.wait_for_timeout(15)


def tab_to(hands, id_, most=60):
    for _ in range(most):
        if focused(hands.page) == id_:
            return
        hands.press("Tab")
    raise AssertionError(f"{id_} is not reached by Tab")


@pytest.fixture(scope="module")
def images(tmp_path_factory):
    return [str(file) for file in make_pages(tmp_path_factory.mktemp("pages"))]


def choose(hands, button, files):
    """Presses a button that asks for files, and gives it these."""
    page, asked = hands.page, []

    def note(chooser):
        asked.append(chooser)

    page.on("filechooser", note)
    until(page, "document.readyState === 'complete'")
    tab_to(hands, button)
    hands.press("Enter")
    for _ in range(200):
        if asked:
            break
        page.wait_for_timeout(15)
    page.remove_listener("filechooser", note)
    asked[0].set_files(files)


def begin(page, images, hands=None):
    """Opens the pages from the first button that does so, by keys alone."""
    hands = hands or Typist(page)
    choose(hands, "record-open-pages", images)
    page.wait_for_selector("#record-work:not([hidden])")
    until(page, "!document.getElementById('record-sheet').hidden")
    return hands


def state_the_source(hands):
    hands.type("Invented List of Washing Frocks")
    hands.press("Tab")
    hands.type("Trade")
    hands.press("Tab")
    hands.type("autumn 1912")
    hands.press("Tab")
    hands.type("print")
    hands.press("Tab")
    hands.type("Engl")
    hands.press("Tab")
    hands.type("Nobody & Daughters")
    hands.press("Tab")
    hands.type("Harrowmere")
    hands.press("Tab")
    hands.type("Nowhere Museum")
    hands.press("Tab", "Tab")
    hands.paste("http://rightsstatements.org/vocab/NoC-NC/1.0/")
    hands.press("Tab")
    hands.type("1-24")
    hands.press("Tab")
    hands.type("I. R.")


WHOLE = [
    ["sq n", "no col", "clo?", "elb", "nat w", "lawn r", "whi", "inser @yoke 1 in"],
    ["v n", "shawl", "back cl", "short sl", "low w", "voi r", "nav", "pin tu @bod"],
    ["round n", "peter", "front cl", "three", "raised", "zep r", "che", "pip @col"],
]
"""What the first figure of a page shows, in full."""
CHANGES = [["v n", "back cl", "nav"], ["round n", "short sl", "pip @col"], ["sq n", "three", "che"]]
"""What the next ones show otherwise than the figure before."""


def record(hands, number, first_on_page):
    """One figure, from the line of features of the figure before to the same line."""
    page = hands.page
    plates = len(work(page)["source"].get("plates", []))
    if first_on_page and number:
        hands.press("PageDown")
    # From the line of features an empty Enter goes on; from elsewhere Control and Enter.
    hands.press("Enter" if focused(page) == "record-line" else "Control+Enter")
    until(page, f"(InPeriod.recording.get().source.plates || []).length === {plates + 1}")
    hands.type(str(2200 + number))
    hands.press("Tab")
    hands.type(f"{number % 12 + 1}/11")
    hands.press("Tab")
    before = hands.keys
    hands.paste(f"A charming frock, number {2200 + number}, in lawn with insertion.")
    hands.keys = before  # captions aside
    hands.press("Tab")
    if number == 0:
        hands.type("day d")
        hands.press("Enter")
    hands.press("Tab")
    assert focused(page) == "record-line"
    if not first_on_page:
        hands.press("=")
    for line in WHOLE[number % 3] if first_on_page else CHANGES[number % 3]:
        hands.type(line)
        hands.press("Enter")


def test_twenty_figures_by_keys_alone(opened, images, demo_folder, tmp_path, capsys):
    page = opened("record.html")
    hands = begin(page, images)
    assert focused(page) == "record-source-title"
    state_the_source(hands)
    assert "Autumn 1912: 1912-23" in page.inner_text("#record-reading")
    before, started, number = hands.keys, time.monotonic(), 0
    for figures in FIGURES:
        for each in range(figures):
            record(hands, number, each == 0)
            number += 1
    took = time.monotonic() - started
    each = (hands.keys - before) / number
    with capsys.disabled():
        print(f"\n{number} figures, {each:.1f} keys a figure, captions aside; driven in {took:.1f} s")
    assert number == 20
    assert each <= MOST_KEYS
    source = work(page)["source"]
    assert [plate["id"] for plate in source["plates"]][:5] == ["p11-1", "p11-2", "p11-3", "p11-4", "p12-1"]
    assert min(len(plate["features"]) for plate in source["plates"]) >= 8
    assert len({(plate["image"]["file"], plate["image"]["region"]) for plate in source["plates"]}) == 20
    until(page, "document.getElementById('record-wrong').hidden")
    archive = save_by_keys(hands)
    folder = catalogue_with(archive, tmp_path, demo_folder)
    assert checked(folder, capsys) == []
    file = folder / "sources/invented-list-of-washing-frocks-1912.yaml"
    assert tidy(file.read_bytes()) == file.read_bytes()
    site = build(read_catalogue(folder).catalogue, tmp_path / "public")
    assert (site.sources, site.plates) == (1, 20)
    # Opened again from its own file, saved again: not a byte is other.
    again = opened("record.html")
    hands = Typist(again)
    open_file(hands, [{"name": "list.zip", "mimeType": "application/zip", "buffer": archive}])
    assert len(work(again)["source"]["plates"]) == 20
    assert contents(save_by_keys(hands)) == contents(archive)


def open_file(hands, files):
    choose(hands, "record-open-file", files)
    hands.page.wait_for_selector("#record-work:not([hidden])")


def save_by_keys(hands):
    """Control S; where a folder could be chosen, the download is the first that is offered."""
    page = hands.page
    with page.expect_download() as download:
        hands.press("Control+s")
        page.wait_for_timeout(50)
        if page.is_visible("#record-notice"):
            hands.press("Enter")
    return Path(download.value.path()).read_bytes()


def contents(archive):
    with zipfile.ZipFile(io.BytesIO(archive)) as inside:
        assert inside.testzip() is None
        return {name: inside.read(name) for name in inside.namelist()}


def catalogue_with(archive, tmp_path, demo_folder):
    """A catalogue's folder with the demonstration's vocabulary and what was saved, unpacked."""
    folder = tmp_path / "catalogue"
    folder.mkdir()
    shutil.copytree(demo_folder / "vocabulary", folder / "vocabulary")
    (folder / "inperiod.yaml").write_text("title: Tried\n", encoding="utf-8")
    for name, data in contents(archive).items():
        file = folder / name
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_bytes(data)
    return folder


def checked(folder, capsys):
    """What ``inperiod check`` has to say, each problem as one line."""
    capsys.readouterr()
    main(["check", "--json", str(folder)])
    import json

    return [each["message"] for each in json.loads(capsys.readouterr().out)["problems"]]
