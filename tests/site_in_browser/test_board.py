"""Boards of one's own in Chromium: made, written, gathered for, kept, carried, printed; what can go wrong."""

from __future__ import annotations

import json
import re
import subprocess
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from inperiod.boards import read_board_file, resolve

if TYPE_CHECKING:
    from playwright.sync_api import Page

pytestmark = pytest.mark.browser

WIDTHS = (320, 390, 820, 1280)
SOLD = "thimble-hour-1926-06/p219-2"
ONE_PLATE = f"""\
title: One
garment: nightdress
target: 1926
features: []
plates:
  - {{plate: {SOLD}, reason: It was sold.}}
"""


def begin(opened) -> Page:
    """A new board, by the button on the page of boards."""
    page = opened("boards.html")
    page.get_by_role("button", name="Begin a board").click()
    page.wait_for_url("**/my-board.html#id=*")
    page.wait_for_selector("#own-saved:has-text('Saved')")
    return page


def fill(page: Page, title: str = "Nightdress for a test", garment: str = "nightdress", when: str = "1926"):
    page.locator("#own-title").fill(title)
    page.locator("#own-garment").select_option(garment)
    page.locator("#own-target").fill(when)


def plan(page: Page, word: str) -> None:
    page.locator("#own-feature").fill(word)
    page.keyboard.press("ArrowDown")
    page.keyboard.press("Enter")


def exported(page: Page, tmp_path: Path) -> Path:
    """By key: what comes late may move the button from under a pointer."""
    with page.expect_download() as download:
        page.get_by_role("button", name="Save as a file").press("Enter")
    file = tmp_path / download.value.suggested_filename
    download.value.save_as(file)
    return file


def bring(opened, file: Path) -> Page:
    page = opened("boards.html")
    page.locator("#own-import").set_input_files(file)
    page.wait_for_url("**/my-board.html#*", timeout=8000)
    page.wait_for_selector("#own-saved:has-text('Saved')")
    return page


def kept(page: Page) -> dict:
    """What the browser's storage holds of the board on the page."""
    key = "inperiod-board:" + page.evaluate("new URLSearchParams(location.hash.slice(1)).get('id')")
    return json.loads(page.evaluate("(key) => localStorage.getItem(key)", key))


def listed(page: Page, name: str, inside: str) -> list[str]:
    """What stands in a list, once there is anything: it waits for what is said of the plates."""
    found = page.locator(f"[data-list={name}] > li {inside}")
    found.first.wait_for()
    return found.all_inner_texts()


ROWS = "() => [...document.scripts].filter((each) => each.src.includes('/data/rows/')).length"


def test_a_board_asks_only_for_what_is_said_of_the_plates_it_names(opened, demo_site, tmp_path):
    """Plates lie together in blocks by their dates."""
    file = tmp_path / "one.yaml"
    file.write_text(ONE_PLATE, encoding="utf-8")
    assert len(list((demo_site / "data" / "rows").glob("*.js"))) > 1
    page = begin(opened)
    assert page.evaluate(ROWS) == 0
    page = bring(opened, file)
    page.locator("[data-list=plates] .gathered-cite", has_text="1926").wait_for()
    assert page.evaluate(ROWS) == 1


def test_a_board_says_when_what_is_said_of_its_plates_does_not_come(chromium, demo_site, tmp_path):
    context = chromium.new_context()
    context.route("**/data/rows/*", lambda route: route.abort())
    page = context.new_page()
    page.goto(f"{demo_site.as_uri()}/boards.html")
    file = tmp_path / "one.yaml"
    file.write_text(ONE_PLATE, encoding="utf-8")
    page.locator("#own-import").set_input_files(file)
    page.get_by_text("could not be loaded").wait_for()
    assert page.locator("#own-title").input_value() == "One"
    context.close()


def test_a_board_is_made_written_saved_as_it_goes_and_found_again(opened):
    page = begin(opened)
    fill(page, when="the summer of 1926")
    page.get_by_text("Understood as summer 1926.").wait_for()
    plan(page, "kimono")
    plan(page, "V neck")
    assert listed(page, "features", ".verdict-word")
    page.locator("#own-notes").fill("First line\n\n**Second**")
    page.get_by_role("button", name="Add a question").click()
    page.keyboard.type("How wide is the sleeve?")
    assert page.locator("#own-saved").inner_text().startswith("Saved ")
    page.reload()
    assert page.locator("#own-title").input_value() == "Nightdress for a test"
    assert page.locator("#own-notes").input_value() == "First line\n\n**Second**"
    assert kept(page)["board"]["questions"] == ["How wide is the sleeve?"]
    assert page.locator("[data-list=features] > li").count() == 2
    page.get_by_role("link", name="All your boards").click()
    page.get_by_role("link", name="Nightdress for a test").click()
    page.wait_for_url("**/my-board.html#id=*")


def test_verdicts_and_what_is_to_settle_are_those_of_the_command_line(
    opened, demo_folder, shown_catalogue, shown_facts
):
    for name in sorted(shown_catalogue.boards):
        found = resolve(shown_catalogue.boards[name], shown_catalogue, shown_facts)
        page = bring(opened, demo_folder / "boards" / f"{name}.yaml")
        assert listed(page, "features", ".planned-verdict .verdict-word") == [
            each.verdict for each in found.findings
        ]
        settled = " ".join(page.locator("#own-settle").inner_text().split())
        for each in found.remarks:
            assert each.sentence in settled
        assert page.locator("#own-together .verdict-word").inner_text() == found.together.verdict
        listed_sources = page.locator("#own-sources li")
        if found.gathered:
            listed_sources.first.wait_for()
            gathered = {shown_catalogue.plates[each.gathered.plate].source for each in found.gathered}
            texts = {each.text for each in found.bibliography if each.source in gathered}
            assert set(listed_sources.all_text_contents()) == texts
        made = page.locator("[data-list=making] .making-cut").all_text_contents()
        assert made == [line.cut for line in found.sheet.lines]
        shown = set(page.locator("#own .caution-word[href]").all_inner_texts())
        assert shown == {each.name for each in found.cautions}


def test_a_plate_is_gathered_from_an_answer_for_the_feature_it_answers(opened):
    page = opened("index.html#garment=nightdress&when=1926&feature=sleeve/kimono")
    page.locator(".cite .gather-button").first.click()
    page.locator("#gather-reason").fill("It is the one.")
    page.locator(".gather-do").click()
    page.get_by_role("link", name="Open the board").click()
    page.wait_for_url("**/my-board.html#id=*")
    board = kept(page)["board"]
    assert board["garment"] == "nightdress"
    assert board["features"] == [{"term": "sleeve/kimono"}]
    assert board["plates"][0]["reason"] == "It is the one."
    assert board["plates"][0]["supports"] == "sleeve/kimono"
    page.go_back()
    page.wait_for_selector(".cite")
    page.locator(".cite .gather-button").first.click()
    page.locator(".gather-do").click()
    assert "already" in page.locator(".gather-said").inner_text()
    page.keyboard.press("Escape")
    page.locator("dialog").wait_for(state="detached")


def test_a_plate_is_gathered_from_its_own_page_for_a_board_that_is_there(opened):
    page = begin(opened)
    fill(page)
    page.goto(page.url.split("my-board")[0] + f"plate/{SOLD}.html")
    page.locator(".gather-button").click()
    assert page.locator("#gather-board option").first.inner_text() == "Nightdress for a test"
    page.locator(".gather-do").click()
    page.get_by_role("link", name="Open the board").click()
    page.wait_for_url("**/my-board.html#id=*")
    assert [each["plate"] for each in kept(page)["board"]["plates"]] == [SOLD]
    assert listed(page, "plates", ".gathered-stands") == ["inside the window"]


def test_plates_are_put_in_another_order_by_drag_and_by_keyboard_and_undone(opened, demo_folder):
    page = bring(opened, demo_folder / "boards" / "womans-regatta-frock-1926.yaml")

    def order() -> list[str]:
        keys = [each["plate"] for each in kept(page)["board"]["plates"]]
        shown = page.evaluate(
            "[...document.querySelectorAll('[data-list=plates] > li')].map((each) => each.dataset.plate)"
        )
        assert keys == shown
        return keys

    first = order()
    items = page.locator("[data-list=plates] > li")
    items.nth(0).locator(".own-handle").drag_to(items.nth(2).locator(".gathered-name"))
    dragged = order()
    assert dragged == [first[1], first[2], first[0], *first[3:]]
    items.nth(2).locator("select").focus()
    page.keyboard.press("Alt+ArrowUp")
    assert order() == [first[1], first[0], *first[2:]]
    assert page.evaluate("document.activeElement.closest('li').dataset.plate") == first[0]
    page.keyboard.press("Enter")
    assert order() == first
    for _ in range(3):
        page.get_by_role("button", name="Undo").click()
    assert order() == first
    assert page.get_by_role("button", name="Undo").is_disabled()
    page.get_by_role("button", name="Redo").click()
    assert order() == dragged


def test_undo_brings_back_what_was_taken_away_and_what_was_written_over(opened, demo_folder):
    page = bring(opened, demo_folder / "boards" / "nightdress-boathouse-hotel.yaml")
    before = kept(page)["board"]
    page.locator("[data-list=departures] > li").first.locator(".own-off").click()
    page.locator("#own-notes").fill("gone")
    assert kept(page)["board"]["notes"] == "gone"
    page.get_by_role("button", name="Undo").click()
    page.get_by_role("button", name="Undo").click()
    assert kept(page)["board"] == before


@pytest.mark.parametrize(
    "name", ["boys-bathing-suit-1926", "nightdress-boathouse-hotel", "womans-regatta-frock-1926"]
)
def test_an_exported_file_is_taken_by_the_catalogue_without_complaint(
    opened, demo_folder, demo_catalogue, tmp_path, name
):
    page = bring(opened, demo_folder / "boards" / f"{name}.yaml")
    page.locator("#own-target").fill("summer 1926")
    page.locator("#own-care").fill('Tricky: "quoted" – #4, no, {braces}\nand a second line')
    file = exported(page, tmp_path)
    checked = read_board_file(file.read_bytes(), file.name, demo_catalogue)
    assert checked.problems == ()
    assert checked.board.target.text == "1926-22"
    assert checked.board.care == 'Tricky: "quoted" – #4, no, {braces}\nand a second line'
    assert len(checked.board.plates) == len(demo_catalogue.boards[name].plates)
    again = bring(opened, file)
    assert kept(again)["board"]["care"] == checked.board.care


def test_a_file_that_cannot_be_taken_is_named_with_its_line_and_nothing_is_changed(opened, tmp_path):
    page = begin(opened)
    page.get_by_role("link", name="All your boards").click()
    page.wait_for_selector("#own-boards-list li")
    for text, words in (
        ("title: T\nbanana: x\n", "Line 2: banana is not a field of a board."),
        ("title: T\n  garment: [\n", "Line 2"),
        ("", "empty"),
    ):
        file = tmp_path / "bad.yaml"
        file.write_text(text, encoding="utf-8")
        page.locator("#own-import").set_input_files(file)
        page.get_by_text("was not opened, and nothing was changed").wait_for()
        assert words in page.locator("#own-said").inner_text()
    assert page.locator("#own-boards-list li").count() == 1


def test_a_link_carries_a_board_to_another_browser(opened, demo_folder):
    page = bring(opened, demo_folder / "boards" / "boys-bathing-suit-1926.yaml")
    page.context.grant_permissions(["clipboard-read", "clipboard-write"])
    page.get_by_role("button", name="Copy a link").click()
    page.get_by_text("The link is copied").first.wait_for()
    link = page.evaluate("navigator.clipboard.readText()")
    other = opened("my-board.html#" + link.split("#")[1])
    assert other.locator("#own-title").input_value() == "Boys' swimmer with one white hoop"
    assert other.evaluate("localStorage.length") == 0
    other.get_by_role("button", name="Keep this board").click()
    there, here = kept(other)["board"], kept(page)["board"]
    assert there == here
    cut = opened("my-board.html#board=" + link.split("board=")[1][:50])
    assert "cut short" in cut.locator("#own-notice").inner_text()


def two_tabs(opened) -> tuple[Page, Page]:
    first = begin(opened)
    fill(first)
    second = first.context.new_page()
    second.goto(first.url)
    second.wait_for_selector("#own-saved:has-text('Saved')")
    second.locator("#own-notes").fill("from the second tab")
    first.bring_to_front()  # a page behind another is drawn once a second
    first.wait_for_selector("#own-notice:not([hidden])")
    return first, second


def test_two_tabs_ask_before_the_newer_one_wins_and_the_other_can_be_had_back(opened):
    first, _ = two_tabs(opened)
    assert first.locator("#own-notes").input_value() == ""
    first.get_by_role("button", name="Show the other").click()
    assert first.locator("#own-notes").input_value() == "from the second tab"
    first.get_by_role("button", name="Undo").click()
    assert first.locator("#own-notes").input_value() == ""


def test_what_is_written_while_two_tabs_differ_is_saved_only_after_choosing(opened):
    first, _ = two_tabs(opened)
    first.locator("#own-care").fill("written in the first")
    assert first.locator("#own-saved").inner_text().startswith("Not saved")
    assert kept(first)["board"]["notes"] == "from the second tab"
    first.get_by_role("button", name="Keep this one").click()
    assert kept(first)["board"]["care"] == "written in the first"
    assert kept(first)["board"]["notes"] == ""
    first.get_by_role("button", name="Undo").click()
    assert first.locator("#own-notes").input_value() == "from the second tab"


def test_both_of_two_tabs_can_be_kept(opened):
    first, _ = two_tabs(opened)
    first.locator("#own-care").fill("written in the first")
    first.get_by_role("button", name="Keep both").click()
    first.wait_for_selector("#own-saved:has-text('Saved')")
    assert kept(first)["board"]["title"] == "Nightdress for a test (second copy)"
    assert first.evaluate("localStorage.length") == 2


def test_a_full_store_loses_nothing_and_says_so(opened, tmp_path):
    page = begin(opened)
    fill(page)
    page.evaluate(
        """() => { for (let size = 1 << 22; size >= 1; size >>= 1) for (;;) try {
          localStorage.setItem("other" + localStorage.length, "x".repeat(size));
        } catch (full) { break; } }"""
    )
    page.locator("#own-notes").fill("too much for it " * 20)
    assert "storage for this site is full" in page.locator("#own-saved").inner_text()
    assert page.locator("#own-notes").input_value().startswith("too much for it")
    assert "too much for it" in exported(page, tmp_path).read_text(encoding="utf-8")
    page.evaluate(
        """Object.keys(localStorage).filter((key) => key.startsWith("other"))
          .forEach((key) => localStorage.removeItem(key))"""
    )
    page.locator("#own-care").fill("room again")
    assert page.locator("#own-saved").inner_text().startswith("Saved")
    assert kept(page)["board"]["notes"].startswith("too much for it")


def test_a_store_that_is_switched_off_is_said_and_the_board_can_still_be_carried(opened, tmp_path):
    page = opened("404.html")
    page.add_init_script(
        """Object.defineProperty(window, "localStorage", {
          get() { throw new DOMException("no", "SecurityError"); },
        })"""
    )
    page.goto(page.url.replace("404.html", "my-board.html"))
    fill(page)
    assert "switched off" in page.locator("#own-saved").inner_text()
    assert "title: Nightdress for a test" in exported(page, tmp_path).read_text(encoding="utf-8")
    page.evaluate("window.onbeforeunload = null")


@pytest.mark.parametrize(
    ("saved", "words"),
    [("{broken", "cannot be read"), ("[]", "not a board"), ('{"format": 99, "board": {}}', "newer version")],
)
def test_a_board_that_cannot_be_opened_is_left_as_it_is(opened, saved, words):
    page = begin(opened)
    page.evaluate("(text) => localStorage.setItem('inperiod-board:old', text)", saved)
    page.get_by_role("link", name="All your boards").click()
    page.locator("#own-boards-list li").filter(has_text=words).wait_for()
    with page.expect_download() as download:
        page.get_by_role("button", name="Save its text as a file").click()
    assert Path(download.value.path()).read_text(encoding="utf-8") == saved
    page.goto(page.url.split("boards.html")[0] + "my-board.html#id=old")
    page.locator("#own-notice").filter(has_text=words).wait_for()
    page.locator("#own-title").fill("Something new")
    assert page.evaluate("localStorage.getItem('inperiod-board:old')") == saved


def test_a_board_saved_in_an_older_shape_is_taken(opened):
    page = begin(opened)
    older = json.dumps(
        {"title": "Older", "target": 1926, "garment": "nightdress", "features": ["neckline/v"]}
    )
    page.evaluate("(text) => localStorage.setItem('inperiod-board:older', text)", older)
    page.goto(page.url.split("#")[0] + "#id=older")
    page.wait_for_function("document.getElementById('own-title').value === 'Older'")
    assert listed(page, "features", ".verdict-word") == ["attested"]


def pages_of(pdf: bytes, tmp_path: Path) -> tuple[int, str]:
    """How many pages a PDF has and its words, by poppler; the words are empty where that is not there."""
    count = len(re.findall(rb"/Type\s*/Page\b", pdf))
    file = tmp_path / "printed.pdf"
    file.write_bytes(pdf)
    try:
        text = subprocess.run(
            ["pdftotext", "-layout", file, "-"], capture_output=True, check=True
        ).stdout.decode()
    except FileNotFoundError:
        text = ""
    return count, text


@pytest.mark.parametrize("size", ["A4", "Letter"])
def test_a_board_is_printed_whole(opened, shown_catalogue, tmp_path, size):
    page = opened("board/nightdress-boathouse-hotel.html")
    count, text = pages_of(page.pdf(format=size), tmp_path)
    assert 5 <= count <= 14
    assert_nothing_is_cut_off(page)
    board = shown_catalogue.boards["nightdress-boathouse-hotel"]
    if text:
        words = " ".join(text.split())
        assert board.permanent_mark in words
        for departure in board.departures:
            assert departure.original.split()[0] in words
        assert "Gathered lace edging" in words


def test_a_board_of_ones_own_is_printed_with_its_words_and_without_its_buttons(opened, demo_folder, tmp_path):
    page = bring(opened, demo_folder / "boards" / "nightdress-boathouse-hotel.yaml")
    count, text = pages_of(page.pdf(format="A4"), tmp_path)
    assert 5 <= count <= 14
    assert_nothing_is_cut_off(page)
    assert not page.get_by_role("button", name="Undo").is_visible()
    if text:
        words = " ".join(text.split())
        assert "Nightdress for the alarm at the boathouse hotel" in words
        assert "Kept as a warning" in words
        assert "Save as a file" not in words


def assert_nothing_is_cut_off(page: Page) -> None:
    """On a sheet as wide as the print area no part is wider than the sheet."""
    page.emulate_media(media="print")
    page.set_viewport_size({"width": 672, "height": 900})  # 178 mm at 96 px an inch
    wide = page.evaluate(
        """() => [...document.querySelectorAll("main *")].filter((each) => {
          const box = each.getBoundingClientRect();
          const over = box.right > document.documentElement.clientWidth + 1;
          return box.width > 0 && over && !each.closest("svg, .unseen");
        }).map((each) => each.className || each.tagName)"""
    )
    assert wide == []


def test_nothing_is_wider_than_the_window(opened, demo_folder):
    page = bring(opened, demo_folder / "boards" / "womans-regatta-frock-1926.yaml")
    for width in WIDTHS:
        page.set_viewport_size({"width": width, "height": 900})
        assert page.evaluate("document.documentElement.scrollWidth <= innerWidth"), width
    page.goto(page.url.split("my-board")[0] + "board/womans-regatta-frock-1926.html")
    for width in WIDTHS:
        page.set_viewport_size({"width": width, "height": 900})
        page.reload()
        assert page.evaluate("document.documentElement.scrollWidth <= innerWidth"), width


def test_without_scripts_the_page_says_so_and_the_catalogues_boards_can_be_read(opened):
    page = opened("my-board.html", scripts=False)
    assert "needs scripts" in page.locator("main").inner_text()
    assert not page.locator("#own").is_visible()
    page = opened("board/nightdress-boathouse-hotel.html", scripts=False)
    assert page.locator("#gathered").is_visible()


def test_text_of_a_board_is_never_markup(opened, tmp_path):
    file = tmp_path / "x.yaml"
    evil = '<img src=x onerror="document.title=1">'
    file.write_text(
        f"title: '{evil}'\ntarget: '{evil}'\ngarment: day-dress\nplace: '{evil}'\nfeatures: ['{evil}']\n"
        f"plates: [{{plate: '{evil}', reason: '{evil}'}}]\nmeasures: {{'{evil}': '{evil}'}}\n"
        f"making: [{{kind: '{evil}', what: '{evil}'}}]\n",
        encoding="utf-8",
    )
    page = bring(opened, file)
    assert page.locator("#own img[src=x]").count() == 0
    assert evil in page.locator("[data-list=plates]").inner_text()
