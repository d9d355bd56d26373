"""The pages in a real browser: from a folder, from a sub-path, by day and by night."""

from __future__ import annotations

import shutil
import threading
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from inperiod.publishing.serving import server
from publishing.pages import html_pages
from screenshots import kinds

if TYPE_CHECKING:
    from playwright.sync_api import Page

    from windows import Windows

pytestmark = pytest.mark.browser


@pytest.fixture
def page(windows: Windows) -> Iterator[Page]:
    """A page that keeps what the console said and what was asked for beyond the site, as ``page.said``."""
    context = windows.lend(still=True)
    context.grant_permissions(["clipboard-read", "clipboard-write"])
    opened = context.new_page()
    said: list[str] = []
    opened.on("console", lambda message: said.append(message.text))
    opened.on("pageerror", lambda error: said.append(str(error)))
    opened.on(
        "request",
        lambda request: (
            None if request.url.startswith(("file:", "http://127.0.0.1:")) else said.append(request.url)
        ),
    )
    opened.said = said  # type: ignore[attr-defined]
    yield opened
    windows.take_back(context)


@pytest.mark.parametrize("width", [390, 820, 1280])
def test_no_page_kind_scrolls_sideways_or_complains(page: Page, demo_site: Path, width: int) -> None:
    page.set_viewport_size({"width": width, "height": 900})
    for kind, file in kinds(demo_site):
        page.goto(file.resolve().as_uri())
        wide = page.evaluate("document.documentElement.scrollWidth")
        assert wide <= width, (kind, wide)
        assert page.said == [], kind  # type: ignore[attr-defined]


def test_at_twice_the_size_nothing_is_lost_sideways(page: Page, demo_site: Path) -> None:
    page.set_viewport_size({"width": 640, "height": 450})  # 1280 × 900 at 200 %
    for kind, file in kinds(demo_site):
        page.goto(file.resolve().as_uri())
        assert page.evaluate("document.documentElement.scrollWidth") <= 640, kind


def test_the_site_works_from_a_sub_path(page: Page, small_site: Path, tmp_path: Path) -> None:
    shutil.copytree(small_site, tmp_path / "www" / "deep" / "down")
    with server(tmp_path / "www") as http:
        threading.Thread(target=http.serve_forever, daemon=True).start()
        page.goto(f"http://127.0.0.1:{http.server_address[1]}/deep/down/index.html")
        page.click("text=Sources")
        page.click("text=Spring List 1924")
        page.click("ol.trade-list a >> nth=0")
        page.wait_for_url("**/deep/down/plate/spring-list-1924/p3-1.html")
        assert page.evaluate("getComputedStyle(document.body).backgroundColor") == "rgb(242, 239, 231)"
        assert page.said == []  # type: ignore[attr-defined]
        http.shutdown()


def test_the_policy_is_in_force_from_a_folder(page: Page, small_site: Path) -> None:
    page.goto((small_site / "method.html").as_uri())
    page.evaluate(
        "() => { const bad = document.createElement('script'); bad.textContent = 'window.broken = true';"
        " document.body.append(bad); }"
    )
    assert page.evaluate("window.broken") is None
    assert any("Content Security Policy" in each for each in page.said)  # type: ignore[attr-defined]


def test_night_is_chosen_by_button_and_remembered(page: Page, small_site: Path) -> None:
    page.emulate_media(color_scheme="light")
    page.goto((small_site / "method.html").as_uri())
    day = page.evaluate("getComputedStyle(document.body).backgroundColor")
    page.click("button.theme")
    night = page.evaluate("getComputedStyle(document.body).backgroundColor")
    assert night != day
    page.goto((small_site / "plate/spring-list-1924/p3-1.html").as_uri())
    assert page.evaluate("getComputedStyle(document.body).backgroundColor") == night
    page.emulate_media(media="print")
    assert page.evaluate("getComputedStyle(document.documentElement).colorScheme") == "light"


def test_a_citation_is_copied_as_it_stands(page: Page, small_site: Path) -> None:
    page.goto((small_site / "plate/spring-list-1924/p3-1.html").as_uri())
    page.click(".citations button.copy >> nth=0")
    page.locator(".citations .copied:not(:empty)").wait_for()
    assert page.text_content(".citations .copied >> nth=0") == "Copied"
    shown = " ".join((page.text_content(".citation >> nth=0") or "").split())
    assert page.evaluate("navigator.clipboard.readText()") == shown
    assert "Nobody & Daughters" in shown


def test_the_keyboard_alone_reaches_the_text_and_the_links(page: Page, small_site: Path) -> None:
    page.goto((small_site / "plate/spring-list-1924/p3-1.html").as_uri())
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.className") == "skip"
    page.keyboard.press("Enter")
    assert page.evaluate("document.activeElement.id") == "main"
    page.keyboard.press("Tab")
    assert page.evaluate("document.querySelector('main').contains(document.activeElement)")
    assert page.evaluate("getComputedStyle(document.activeElement).outlineStyle") == "solid"


def test_every_page_can_be_read_without_scripts(windows: Windows, small_site: Path) -> None:
    context = windows.lend(scripts=False)
    page = context.new_page()
    for file in html_pages(small_site)[:12]:
        page.goto(file.as_uri())
        assert page.is_visible("h1"), file
        assert len(page.inner_text("main")) > 40, file
    windows.take_back(context)
