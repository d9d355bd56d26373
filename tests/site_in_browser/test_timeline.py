"""The timelines, in Chromium: drawing, table, filters, range and files say what the evidence says."""

from __future__ import annotations

import csv
import io
from typing import TYPE_CHECKING
from xml.etree import ElementTree

import pytest

from inperiod.dating import day_number
from inperiod.drawing.marks import per_cent
from inperiod.evidence import Question, Window, timeline, usual_in_window
from inperiod.evidence.sentences import not_counted

if TYPE_CHECKING:
    from playwright.sync_api import Page

pytestmark = pytest.mark.browser

NECKLINES = "timeline/day-dress/neckline.html"
FASTENINGS = "timeline/dress/fabric.html"


def settled(page: Page) -> None:
    """Waits until whatever data the page has asked for is there and shown."""
    page.wait_for_function("() => !document.querySelector('[aria-busy=true]')")


def table(page: Page) -> dict[str, list[str]]:
    """The table's rows by style: the share in every decade."""
    settled(page)
    rows = page.locator("#table-body tr").evaluate_all(
        """rows => rows.map((row) => {
          const said = (cell) => (cell.querySelector("a") || cell).firstChild?.textContent.trim() || "";
          return [said(row.querySelector("th") || row), [...row.querySelectorAll("td")].map(said)];
        })"""
    )
    return dict(rows)


def shares(row) -> list[str]:
    return ["nobody looked" if share is None else per_cent(share) if share else "–" for share in row.shares]


@pytest.mark.parametrize("address", ["timeline.html", NECKLINES, FASTENINGS])
def test_the_scripts_draw_what_the_build_drew(opened, as_tree, address):
    trees = []
    for scripts in (False, True):
        page = opened(address, scripts=scripts)
        if scripts:
            for place in (page.locator("#timeline-place option").last.get_attribute("value"), ""):
                page.locator("#timeline-place").select_option(place)
                settled(page)
        parts = ("#drawing", "#table", "#timeline-scale", "#left-out")
        trees.append([page.locator(part).evaluate(as_tree) for part in parts])
    assert 'class="chart-band' in trees[0][0]
    assert trees[0] == trees[1]


def test_the_table_says_what_the_evidence_says_and_follows_the_filters(opened, shown_facts):
    page = opened(NECKLINES)
    whole = timeline(shown_facts, "day-dress", "neckline")
    assert {name: cells[:5] for name, cells in table(page).items()} == {
        row.label: shares(row) for row in whole.rows
    }
    page.locator("#timeline-place").select_option("us")
    decades = (whole.decades[0], whole.decades[-1])
    there = timeline(shown_facts, "day-dress", "neckline", place="us", decades=decades)
    assert there.rows != whole.rows
    assert {name: cells[:5] for name, cells in table(page).items()} == {
        row.label: shares(row) for row in there.rows
    }
    page.locator("#timeline-kind").select_option("magazine-issue")
    both = timeline(shown_facts, "day-dress", "neckline", place="us", kind="magazine-issue", decades=decades)
    found = table(page)
    if both.rows:
        assert {name: cells[:5] for name, cells in found.items()} == {
            row.label: shares(row) for row in both.rows
        }
    else:
        assert list(found.values()) == [["Nothing from there was looked at for this."]]
    page.go_back()
    page.go_back()
    assert page.locator("#timeline-place").input_value() == ""
    assert {name: cells[:5] for name, cells in table(page).items()} == {
        row.label: shares(row) for row in whole.rows
    }


def test_decades_nobody_looked_at_are_hatched_and_those_without_the_style_are_a_thread(opened, shown_facts):
    page = opened(NECKLINES)
    for kind in page.locator("#timeline-kind option").evaluate_all("all => all.map((each) => each.value)"):
        page.locator("#timeline-kind").select_option(kind)
        settled(page)
        drawn = timeline(shown_facts, "day-dress", "neckline", kind=kind or None, decades=(1890, 1930))
        unlooked = sum(recorded == 0 for recorded in drawn.recorded)
        assert page.locator("#drawing .chart-unseen").count() == unlooked
        bare = sum(share == 0 for row in drawn.rows for share in row.shares)
        assert page.locator("#drawing .chart-thread").count() == bare


def test_a_cell_leads_to_its_plates(opened, shown_facts):
    page = opened(NECKLINES)
    link = page.locator("#drawing a.chart-link").filter(has_not_text="none").last
    words = link.get_attribute("aria-label")
    link.focus()
    page.keyboard.press("Enter")
    page.wait_for_url("**/plates.html#**")
    page.wait_for_selector("#results [data-plate]")
    keys = page.locator("#results [data-plate]").evaluate_all("all => all.map((each) => each.dataset.plate)")
    label, decade = words.split(":")[0].rsplit(", ", 1)
    term = next(
        i
        for i, each in enumerate(shown_facts.terms)
        if each.label == label and shown_facts.term_keys[i].startswith("neckline/")
    )
    year = int(decade.removesuffix("s"))
    window = day_number(year, 1, 1), day_number(year + 10, 1, 1) - 1
    for key in keys:
        number = shown_facts.keys.index(key)
        document, _ = shown_facts.plates[number]
        days = shown_facts.documents[document].days
        assert term in shown_facts.shown[number]
        assert days[0] <= window[1]
        assert days[1] >= window[0]
    assert keys


def test_a_range_of_years_is_chosen_by_keyboard_and_read_out(opened, shown_facts):
    page = opened(NECKLINES)
    assert not page.locator("#range").is_visible()
    page.locator("#from").fill("1920")
    page.locator("#from").press("Tab")
    page.locator("#to-handle").focus()
    for _ in range(10):
        page.keyboard.press("ArrowLeft")
    page.locator("#range-head", has_text="In 1920–1929").wait_for()
    window = Window(day_number(1920, 1, 1), day_number(1930, 1, 1) - 1)
    usual = usual_in_window(shown_facts, Question("day-dress", (), window), "neckline")
    assert page.locator("#range-body .trade-what").all_inner_texts() == [each.label for each in usual]
    assert (
        page.locator("#range-body .trade-when").first.inner_text().startswith(per_cent(usual[0].share.value))
    )
    page.wait_for_function("() => location.hash === '#from=1920&to=1929'")
    assert page.locator("#drawing .chart-row").first.locator(".chart-veil").count() == 2


def test_the_numbers_are_kept_as_csv(opened, shown_facts):
    page = opened(NECKLINES)
    with page.expect_download() as kept:
        page.locator("#keep-csv").click()
    assert kept.value.suggested_filename == "day-dress-neckline.csv"
    rows = list(csv.DictReader(io.StringIO(kept.value.path().read_text(encoding="utf-8"))))
    drawn = timeline(shown_facts, "day-dress", "neckline")
    assert len(rows) == len(drawn.rows) * len(drawn.decades)
    wanted = [
        (row.term, decade, share, looked)
        for row in drawn.rows
        for decade, share, looked in zip(drawn.decades, row.shares, drawn.looked, strict=True)
    ]
    for row, (term, decade, share, looked) in zip(rows, wanted, strict=True):
        assert (row["term"], row["decade"], row["documents_looked"]) == (term, str(decade), str(looked))
        assert (float(row["share"]) if row["share"] else None) == pytest.approx(share)


def test_the_drawing_is_kept_as_svg_that_stands_alone(opened):
    page = opened(NECKLINES)
    with page.expect_download() as kept:
        page.locator("#keep-svg").click()
    root = ElementTree.fromstring(kept.value.path().read_text(encoding="utf-8"))
    assert root.tag == "{http://www.w3.org/2000/svg}svg"
    assert root.get("width") == "960"
    everything = list(root.iter())
    assert not any(each.get("class") or each.tag.endswith("}a") for each in everything)
    bands = [
        each for each in everything if each.tag.endswith("rect") and each.get("stroke", "none") != "none"
    ]
    assert bands
    texts = [each for each in everything if each.tag.endswith("text")]
    assert all(each.get("font-family") for each in texts)


def test_without_scripts_drawing_table_and_links_stand(opened):
    page = opened(NECKLINES, scripts=False)
    assert page.locator("#drawing .chart").is_visible()
    assert page.locator("#table").is_visible()
    assert not page.locator("#timeline-form").is_visible()
    page.locator(".timeline-choice summary").first.click()
    assert page.locator(".timeline-choice a").first.is_visible()


def test_from_a_server_and_dark(opened, served):
    page = opened("timeline.html", at=served, dark=True)
    page.locator("#table-body a").first.click()
    page.wait_for_url(f"{served}term/**")


@pytest.mark.parametrize("width", [320, 390, 820, 1280])
def test_nothing_is_wider_than_the_window(opened, width):
    page = opened(NECKLINES + "#from=1910&to=1920", width=width)
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")


def test_what_is_not_counted_is_said_as_on_the_command_line(opened, shown_facts):
    page = opened(NECKLINES)
    data = "() => [...document.scripts].filter((each) => each.src.includes('/data/')).length"
    assert page.evaluate(data) == 0, "the drawing stands there without any data"
    for kind in ("", "magazine-issue"):
        if kind:
            page.locator("#timeline-kind").select_option(kind)
            settled(page)
        left_out = timeline(shown_facts, "day-dress", "neckline", kind=kind or None).left_out
        assert left_out
        wanted = not_counted((reason, plates, "") for reason, plates in left_out)
        assert page.locator("#left-out").inner_text() == wanted
