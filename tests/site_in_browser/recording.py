"""What tests of the recording page share: hands that count, a source begun, a file with every field."""

from __future__ import annotations

import json
import time
from pathlib import Path

from inperiod.cli import main


class Typist:
    """Presses keys and counts them: a letter is one, a chord as many as it has keys, and pasting two."""

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


def one_figure(page, images):
    """A source stated, with one figure that shows a square neckline."""
    hands = begin(page, images)
    state_the_source(hands)
    hands.press("Control+Enter")
    until(page, "(InPeriod.recording.get().source.plates || []).length === 1")
    tab_to(hands, "record-garment")
    hands.type("day d")
    hands.press("Tab")
    assert focused(page) == "record-line"
    hands.type("sq n")
    hands.press("Enter")
    return hands


LAST_IS_KEPT = """(async () => {
  const { id, source } = InPeriod.recording.get(), kept = await InPeriod.recordKeep.read(id);
  return Boolean(kept) && JSON.stringify(kept.source) === JSON.stringify(source);
})()"""


def settled(page):
    """Waits until the last change is kept, and the page says so: then it has nothing left to write."""
    until(page, LAST_IS_KEPT)
    until(page, "document.getElementById('record-kept').textContent.startsWith('Kept in this browser, ')")


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


def checked(folder, capsys):
    """What ``inperiod check`` has to say, each problem as one line."""
    capsys.readouterr()
    main(["check", "--json", str(folder)])
    return [each["message"] for each in json.loads(capsys.readouterr().out)["problems"]]


EVERY_FIELD = """\
# A source with every field there is, in an order of its own.
kind: magazine-issue   # as printed on the cover
title: "Every Field, a Quarterly"
date: 1912-23
on_sale: 1912-08/1913-01
made: 1912
photographed: 1912~
altered: 1920
worn: 1913/1914
date_basis: printed
date_note: |
  On the cover: Autumn.
  Agreed by the list of plates.
date_printed: Autumn, 1912
publisher: {name: Nobody & Daughters, place: Harrowmere}
creators:
  - A. Nobody
  - {name: B. Nobody, role: engraver}
container: The Invented Quarterly
volume: 3
issue: "007"
pages: 1-48
edition: second
drafting_system: invented
market: GB
language: en-GB
held_by: {name: Nowhere Museum, shelfmark: P, accession: 1912.1, url: "https://example.org", accessed: 2026}
rights: http://rightsstatements.org/vocab/NoC-NC/1.0/
examined: {pages: 1-48, by: I. R., on: 2026-02-03}
reprint_of: harrowmere-washing-frocks-1912
publish: false
note: Invented, all of it.
plates:
  # the first
  - id: p1
    locator: {page: 1, plate: II, figure: 3, item: "2207", column: b}
    date: 1911
    garment: day-dress
    outfit: o1
    wearer: {who: girl, age: 6 to 14 years, sizes: "24, 26 in.", status: mourning}
    occasion: a walk
    caption: "“Une robe” – 8/11"
    translation: A frock
    price: {amount: 8/11, currency: GBP, note: per size}
    view: front
    medium: cut
    treatment: [retouched, tinted]
    features:
      - neckline/square
      - {term: trim/insertion, at: neckline, width: 1 in, count: 2, colour: white, reading: read, note: twice}
      - {facet: sleeve, not_visible: true}
      - facet: collar
        none: true
    same_cut_as: harrowmere-washing-frocks-1912/p4-1
    image: {file: every-field/p1.png, alt: A frock., region: "1,2,30,40", rights: "https://example.org/by"}
    publish: true
    recorded: {by: I. R., on: 2026-02-03, pages: 1-2}
    confirmations:
      - {by: K. S., on: 2026-03-04, reading: confirmed, feature: neckline/square, note: seen too}
    note: the end
"""
