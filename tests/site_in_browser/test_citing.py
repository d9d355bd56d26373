"""Citations on the page, in Chromium: a style chosen and remembered, links copied, files kept."""

from __future__ import annotations

import json
from pathlib import Path
from typing import TYPE_CHECKING

import bibtexparser
import pytest
import rispy

from inperiod.citing import STYLES, cite, export
from inperiod.records.model import Catalogue

if TYPE_CHECKING:
    from playwright.sync_api import Page

pytestmark = pytest.mark.browser
KEY = "harrowmere-washing-frocks-1926/p2-1"
PLATE = f"plate/{KEY}.html"


def shown_citations(page: Page) -> list[str]:
    texts = page.locator(".citation:visible").all_inner_texts()
    return [" ".join(text.split()) for text in texts]


def kept(page: Page, button: str) -> str:
    with page.expect_download() as waiting:
        page.locator(button).click()
    return Path(waiting.value.path()).read_text(encoding="utf-8")


def test_every_style_stands_in_the_page_without_scripts(opened, demo_catalogue: Catalogue) -> None:  # type: ignore[no-untyped-def]
    page = opened(PLATE, scripts=False)
    written = [" ".join(text.split()) for text in page.locator(".citation").all_text_contents()]
    assert written == [cite(demo_catalogue, KEY, style) for style in STYLES]


def test_the_chosen_style_shows_alone_and_is_remembered(opened, demo_catalogue: Catalogue) -> None:  # type: ignore[no-untyped-def]
    page = opened(PLATE)
    assert shown_citations(page) == [cite(demo_catalogue, KEY, "chicago-note")]
    page.locator(".cite-style select").select_option("mhra-note")
    assert shown_citations(page) == [cite(demo_catalogue, KEY, "mhra-note")]
    page.reload()
    assert shown_citations(page) == [cite(demo_catalogue, KEY, "mhra-note")]


def test_a_plates_records_are_kept_as_they_stand(opened, demo_catalogue: Catalogue) -> None:  # type: ignore[no-untyped-def]
    page = opened(PLATE)
    page.locator(".for-managers summary").click()
    for fmt in ("csl-json", "biblatex", "ris"):
        text = kept(page, f'[data-format="{fmt}"] button')
        assert text == export(demo_catalogue, [KEY], fmt)


@pytest.mark.parametrize("from_http", [False, True])
def test_a_filtered_list_is_cited_whole(opened, served: str, from_http: bool) -> None:  # type: ignore[no-untyped-def]
    page = opened("plates.html#garment=day-dress&from=1926&to=1926", **({"at": served} if from_http else {}))
    found = int(page.locator("#sifted-count").inner_text().split()[0])
    assert found > 10
    for fmt, count in (
        ("biblatex", lambda text: len(bibtexparser.parse_string(text).entries)),
        ("ris", lambda text: len(rispy.loads(text))),
        ("csl-json", lambda text: len(json.loads(text))),
    ):
        page.locator("#cite-format").select_option(fmt)
        assert count(kept(page, ".cite-list button")) == found
