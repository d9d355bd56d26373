"""The main job done in a real Chromium: from a double-clicked file, and from under a path over http."""

from __future__ import annotations

import re
import threading
from collections.abc import Iterator
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import TYPE_CHECKING
from urllib.parse import urlsplit

import pytest

from inperiod.dating import day_number
from inperiod.evidence import Facts, Question, Window, answer
from inperiod.records import Catalogue

if TYPE_CHECKING:
    from playwright.sync_api import Page, Request

    from windows import Windows

pytestmark = pytest.mark.browser


class _Quiet(SimpleHTTPRequestHandler):
    def log_message(self, format: str, *args: object) -> None:
        pass


@pytest.fixture(scope="module", params=["file:", "http, under a path"])
def home(
    request: pytest.FixtureRequest, demo_site: Path, tmp_path_factory: pytest.TempPathFactory
) -> Iterator[str]:
    """The address of the site, with a slash at its end."""
    if request.param == "file:":
        yield f"{demo_site.as_uri()}/"
        return
    root = tmp_path_factory.mktemp("server")
    (root / "lent").mkdir()
    (root / "lent/a site").symlink_to(demo_site)
    with ThreadingHTTPServer(("127.0.0.1", 0), partial(_Quiet, directory=str(root))) as server:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        yield f"http://127.0.0.1:{server.server_port}/lent/a%20site/"
        server.shutdown()


@pytest.fixture
def page(windows: Windows, home: str) -> Iterator[Page]:
    """A page not let out: whatever goes wrong in it, or asks for anything elsewhere, fails the test."""
    context = windows.lend()
    faults: list[str] = []
    opened = context.new_page()
    opened.set_viewport_size({"width": 1280, "height": 900})
    opened.on("console", lambda said: faults.append(said.text) if said.type in ("error", "warning") else None)
    opened.on("pageerror", lambda error: faults.append(str(error)))
    opened.on("requestfailed", lambda failed: faults.extend(fault_of(failed)))
    opened.on(
        "request", lambda sent: None if _at_home(sent.url, home) else faults.append(f"outside: {sent.url}")
    )
    yield opened
    windows.take_back(context)
    assert faults == []


def fault_of(failed: Request) -> list[str]:
    """A request given up because the page was left is no fault."""
    return [] if failed.failure == "net::ERR_ABORTED" else [f"failed: {failed.url}"]


def _at_home(url: str, home: str) -> bool:
    return url.startswith(home) or urlsplit(url).scheme in ("data", "blob", "about")


def shown_plates(page: Page) -> list[str]:
    """Every plate of the results, all of them fetched."""
    while page.locator("#more").is_visible():
        page.locator("#more").click()
    keys = page.locator("#results [data-plate]").evaluate_all("all => all.map(each => each.dataset.plate)")
    return [str(key) for key in keys]


def plates_between(facts: Facts, first: int, last: int) -> set[str]:
    """Plates whose date, circa allowed for, may lie in those years."""
    earliest, latest = day_number(first), day_number(last + 1) - 1
    found = set()
    for key, (document, _) in zip(facts.keys, facts.plates, strict=True):
        days = facts.documents[document].days
        if days and (days[0] is None or days[0] <= latest) and (days[1] is None or days[1] >= earliest):
            found.add(key)
    return found


def published(catalogue: Catalogue) -> set[str]:
    return {
        key
        for key, plate in catalogue.plates.items()
        if plate.publish and catalogue.sources[plate.source].publish
    }


@pytest.mark.parametrize(
    ("typed", "term"), [("boat neck", "neckline/boat"), ("zip", "fastening/slide-fastener")]
)
def test_the_question_is_answered_as_the_command_line_answers_it(
    page: Page, home: str, demo_facts: Facts, typed: str, term: str
) -> None:
    page.goto(f"{home}index.html")
    page.locator("#ask-garment").select_option("day-dress")
    page.locator("#ask-when").fill("1926")
    page.locator("#ask-feature").fill(typed)
    page.locator("#ask-found [role=option]").first.wait_for()
    page.locator("#ask-feature").press("Enter")
    fit = page.locator(f'#answer [data-term="{term}"]')
    fit.wait_for()
    question = Question("day-dress", (term,), Window(day_number(1926), day_number(1927) - 1))
    (finding,) = answer(demo_facts, question).findings
    assert fit.get_attribute("data-verdict") == finding.verdict
    assert finding.reasons[0] in (fit.locator(".fit-says").text_content() or "")
    cited = fit.locator("[data-plate]").evaluate_all("all => all.map(each => each.dataset.plate)")
    assert cited == list(finding.cite[: len(cited)])
    assert cited


def test_a_plate_that_is_cited_leads_to_its_page(page: Page, home: str, demo_catalogue: Catalogue) -> None:
    page.goto(f"{home}index.html")
    first = page.locator("#answer [data-plate]").first
    key = first.get_attribute("data-plate") or ""
    first.locator("a.trade-what").click()
    page.wait_for_url(re.compile("plate/"))
    assert demo_catalogue.sources[key.partition("/")[0]].title in page.locator("main").inner_text()


def test_a_date_nobody_can_read_is_said_and_not_guessed(page: Page, home: str) -> None:
    page.goto(f"{home}index.html")
    page.locator("#ask-when").fill("when granny was young")
    page.locator("#ask-reading", has_text="granny").wait_for()


def test_moving_the_range_of_years_leaves_the_plates_of_those_years(
    page: Page, home: str, demo_facts: Facts, demo_catalogue: Catalogue
) -> None:
    page.goto(f"{home}plates.html")
    everything = page.locator("#sifted-count").text_content()
    for handle, year in [("from", 1926), ("to", 1927)]:
        slider = page.locator(f"#{handle}-handle")
        slider.focus()
        start = int(slider.input_value())
        for _ in range(abs(year - start)):
            page.keyboard.press("ArrowRight" if year > start else "ArrowLeft")
    assert [page.locator(f"#{each}").input_value() for each in ("from", "to")] == ["1926", "1927"]
    assert page.locator("#sifted-count").text_content() != everything
    wanted = plates_between(demo_facts, 1926, 1927) & published(demo_catalogue)
    assert set(shown_plates(page)) == wanted
    page.reload()
    assert set(shown_plates(page)) == wanted


def test_words_and_garments_narrow_the_plates(page: Page, home: str, demo_catalogue: Catalogue) -> None:
    page.goto(f"{home}plates.html#garment=nightdress")
    page.locator("#sift-words").fill("lawn")
    page.wait_for_url(re.compile("words=lawn"))
    found = shown_plates(page)
    assert found
    assert {demo_catalogue.plates[key].garment for key in found} == {"nightdress"}


@pytest.mark.parametrize("where", ["#drawing", "#table"])
def test_a_cell_of_the_timeline_leads_to_its_plates(
    page: Page, home: str, demo_facts: Facts, demo_catalogue: Catalogue, where: str
) -> None:
    page.goto(f"{home}timeline.html")
    cell = page.locator(f'{where} a[href*="plates.html#"][href*="from=1920"]').first
    term = re.search(r"feature=([a-z-]+(?:/|%2F)[a-z-]+)", cell.get_attribute("href") or "")
    assert term
    cell.focus()
    page.keyboard.press("Enter")
    page.wait_for_url(re.compile(r"plates\.html"))
    page.locator("#results [data-plate]").first.wait_for()
    found = shown_plates(page)
    assert found
    assert set(found) <= plates_between(demo_facts, 1920, 1929)
    wanted = term[1].replace("%2F", "/")
    assert all(wanted in {feature.term for feature in demo_catalogue.plates[key].features} for key in found)


def test_every_kind_of_page_opens_without_a_fault(page: Page, home: str, demo_site: Path) -> None:
    pages = [each.name for each in demo_site.glob("*.html")]
    for folder in ("plate", "source", "term", "facet", "garment", "board", "timeline"):
        pages += [
            each.relative_to(demo_site).as_posix()
            for each in sorted((demo_site / folder).rglob("*.html"))[:1]
        ]
    assert len(pages) > 12
    for name in pages:
        page.goto(home + name)
        assert page.locator("h1").first.inner_text().strip(), name


def test_the_pages_can_be_read_without_scripts(windows: Windows, home: str) -> None:
    context = windows.lend(scripts=False)
    page = context.new_page()
    page.goto(f"{home}index.html")
    assert page.locator("#answer [data-verdict]").count() > 0
    page.goto(f"{home}plates.html")
    assert page.locator("#all-plates [data-plate]").count() > 100
    windows.take_back(context)
