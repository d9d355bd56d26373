"""What holds of every page, on the sample and on the demonstration."""

from __future__ import annotations

import itertools
import re
from pathlib import Path

import pytest

from inperiod.records.model import Catalogue
from publishing.pages import Read, html_pages, local_links, read, read_all
from publishing.sample import NOTICE

# Fragments that scripts read as a question rather than a place on the page.
ASKED = re.compile(r"[\w-]+=")
Pages = dict[Path, Read]


@pytest.fixture(scope="module", params=["sample", "demonstration"])
def pages(request: pytest.FixtureRequest, small_site: Path) -> Pages:
    """Every page of a site by its file."""
    if request.param == "sample":
        return read_all(small_site)
    found: Pages = request.getfixturevalue("demo_pages")
    return found


def test_every_page_says_what_it_is(pages: Pages) -> None:
    for page, parsed in pages.items():
        tags = [tag for tag, _ in parsed.elements]
        assert tags.count("h1") == 1, page
        assert tags.count("main") == 1, page
        assert parsed.text("h1"), page
        assert parsed.text("title"), page
        assert next(attributes for tag, attributes in parsed.elements if tag == "html").get("lang"), page
        assert not _doubled(parsed.ids), page


def _doubled(names: list[str]) -> set[str]:
    return {name for name in names if names.count(name) > 1}


def test_headings_never_skip_a_level(pages: Pages) -> None:
    for page, parsed in pages.items():
        levels = [int(tag[1]) for tag, _ in parsed.elements if re.fullmatch(r"h[1-6]", tag)]
        assert levels[0] == 1, page
        assert all(later - earlier <= 1 for earlier, later in itertools.pairwise(levels)), (
            page,
            levels,
        )


def test_no_page_carries_style_or_script_of_its_own(pages: Pages) -> None:
    for page, parsed in pages.items():
        for tag, attributes in parsed.elements:
            assert tag not in ("style", "iframe", "object", "embed", "base", "form") or (
                tag == "form" and "action" not in attributes
            ), (page, tag)
            assert (
                tag != "script" or attributes.get("src") or attributes.get("type") == "application/ld+json"
            ), page
            for name in attributes:
                assert name != "style", (page, tag)
                assert not name.startswith("on"), (page, tag, name)


def test_every_page_forbids_what_is_not_its_own(pages: Pages) -> None:
    for parsed in pages.values():
        policy = next(
            attributes["content"] or ""
            for tag, attributes in parsed.elements
            if tag == "meta" and attributes.get("http-equiv") == "Content-Security-Policy"
        )
        rules = dict(rule.strip().split(" ", 1) for rule in policy.split(";"))
        assert rules["default-src"] == "'none'"
        assert rules["script-src"] == rules["style-src"] == rules["img-src"] == "'self'"
        assert rules["base-uri"] == rules["form-action"] == "'none'"


def test_every_link_leads_somewhere(pages: Pages) -> None:
    ids = {page: set(parsed.ids) for page, parsed in pages.items()}
    there = {*pages}
    for page, parsed in pages.items():
        for written, target, fragment in local_links(page, parsed):
            assert target in there or target.is_file(), f"{page} leads to {written}, which is not there"
            there.add(target)
            if fragment and target in ids and not ASKED.match(fragment):
                assert fragment in ids[target], f"{page} leads to {written}: no such place"


def test_nothing_is_fetched_from_elsewhere(pages: Pages) -> None:
    for page, parsed in pages.items():
        for tag, attributes in parsed.elements:
            for name in ("src", "srcset", "poster", "data"):
                assert "//" not in (attributes.get(name) or ""), (page, tag)
            if tag == "link" and attributes.get("rel") in ("stylesheet", "icon", "preload"):
                assert "//" not in (attributes["href"] or ""), page


def test_invented_data_is_said_to_be_invented_on_every_page(small_site: Path) -> None:
    for page in html_pages(small_site):
        assert NOTICE in read(page).text("p"), page


def test_the_demonstration_says_so_on_every_page(demo_pages: Pages, demo_catalogue: Catalogue) -> None:
    notice = demo_catalogue.settings.demonstration
    assert notice
    for page, parsed in demo_pages.items():
        assert " ".join(notice.split()) in parsed.text("p"), page


def test_every_record_has_its_page(small_site: Path) -> None:
    for path in (
        "plate/spring-list-1924/p3-1.html",
        "source/spring-list-1924.html",
        "term/neckline/v.html",
        "facet/neckline.html",
        "garment/day-dress.html",
        "board/regatta.html",
    ):
        assert (small_site / path).is_file(), path


def test_a_plate_page_answers_its_own_questions(small_site: Path) -> None:
    page = (small_site / "plate/spring-list-1924/p3-1.html").read_text(encoding="utf-8")
    assert "March to August 1924" in page
    assert "The date is printed in the source itself." in page
    assert "8/11" in page
    assert "Disputed by B. U., 1 February 2026: v, would read round" in page
    assert "disputed by B. U., who reads round" in page
    assert "until that is settled it counts as recorded" in page
    assert "No known copyright" in page
    assert "Nobody &amp; Daughters" in page
    assert (
        'href="../../plate/autumn-list-1925/p9-1.html"' in page
        or 'href="../autumn-list-1925/p9-1.html"' in page
    )


def test_a_plate_shows_its_outfit_and_the_other_uses_of_its_cut(small_site: Path) -> None:
    page = (small_site / "plate/spring-list-1924/p3-1.html").read_text(encoding="utf-8")
    assert "Worn with it" in page
    assert "The same cut elsewhere" in page


def test_a_source_that_was_looked_through_in_vain_says_that_somebody_looked(small_site: Path) -> None:
    page = (small_site / "source/looked-through-1926.html").read_text(encoding="utf-8")
    assert "somebody looked" in page
    assert "pages 1–40" in page


def test_a_date_from_style_is_shown_and_said_not_to_count(small_site: Path) -> None:
    page = (small_site / "plate/from-style/p1-1.html").read_text(encoding="utf-8")
    assert "never helps to date a feature" in page


def test_a_term_gives_its_other_names_its_floor_and_its_years(small_site: Path) -> None:
    round_neck = (small_site / "term/neckline/round.html").read_text(encoding="utf-8")
    assert "jewel neck" in round_neck
    assert "US, 1920s" in round_neck
    fastener = (small_site / "term/fastening/slide-fastener.html").read_text(encoding="utf-8")
    assert "US patent 1,219,881" in fastener
    assert "No plate in this catalogue shows it yet." in fastener
    assert re.search(
        r"Shown from 1924 to 192\d by", (small_site / "term/neckline/v.html").read_text(encoding="utf-8")
    )


def test_a_board_gives_a_verdict_for_every_planned_feature(small_site: Path) -> None:
    page = (small_site / "board/regatta.html").read_text(encoding="utf-8")
    assert page.count('class="planned"') == 2
    assert page.count("planned-verdict") == 3  # two features and the combination
    assert "machine sewing" in page


def test_the_method_page_explains_every_verdict(small_site: Path) -> None:
    from typing import get_args

    from inperiod.evidence import Verdict

    ids = read(small_site / "method.html").ids
    for verdict in get_args(Verdict):
        assert verdict.replace(" ", "-") in ids
        assert f"mark-{verdict.replace(' ', '-')}" in ids
