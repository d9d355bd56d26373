"""What a reference manager finds on a plate's page, found by reading the page as it would."""

from __future__ import annotations

import json
import re
from pathlib import Path

from inperiod.citing import csl_item
from inperiod.publishing import build
from inperiod.publishing.machine_tags import citation_tags, json_ld
from inperiod.records.model import Catalogue, Creator, Locator, Publisher, Settings, Source
from publishing.pages import read
from publishing.sample import hostile, plate, sample, source


def tags_of(page: Path) -> dict[str, str]:
    found = read(page).elements
    return {
        str(attributes["name"]): str(attributes["content"])
        for tag, attributes in found
        if tag == "meta" and str(attributes.get("name", "")).startswith("citation_")
    }


def object_of(page: Path) -> dict[str, object]:
    holder = r'<script type="application/ld\+json">(.*?)</script>'
    text = re.search(holder, page.read_text("utf-8"), re.DOTALL)
    assert text
    found: dict[str, object] = json.loads(text[1])
    return found


def of_one(only: Source, folder: Path, **settings: str) -> Catalogue:
    return Catalogue(folder, Settings(**settings), sample(folder).vocabulary, {only.id: only}, {})  # type: ignore[arg-type]


def test_every_plate_page_carries_both(demo_site: Path, demo_catalogue: Catalogue) -> None:
    shown = [each for each in demo_catalogue.plates.values() if each.publish]
    for each in shown:
        page = demo_site / "plate" / f"{each.key}.html"
        thing, tags = object_of(page), tags_of(page)
        assert thing["identifier"] == each.key
        assert thing["name"] == tags["citation_title"]
        dated = demo_catalogue.dated(each)
        assert thing.get("temporalCoverage") == (dated.text if dated else None)


def test_a_magazine_plate_is_found_in_its_issue(tmp_path: Path) -> None:
    issue = source(
        "weekly-1926-06-12",
        "1926-06-12",
        plate("weekly-1926-06-12", "p4-2", "neckline/v"),
        kind="magazine-issue",
        volume="12",
        issue="3",
        creators=(Creator("Quillfeather, Ada"),),
        language="en",
    )
    catalogue = of_one(issue, tmp_path, base_address="https://example.org/dress")
    build(catalogue, tmp_path / "public")
    page = tmp_path / "public/plate/weekly-1926-06-12/p4-2.html"
    assert tags_of(page) == {
        "citation_title": "Day dress, p. 4, fig. 2, 12 June 1926",
        "citation_author": "Quillfeather, Ada",
        "citation_journal_title": "Weekly 1926 06 12",
        "citation_publication_date": "1926/06/12",
        "citation_volume": "12",
        "citation_issue": "3",
        "citation_firstpage": "4",
        "citation_publisher": "Nobody & Daughters",
        "citation_language": "en",
        "citation_public_url": "https://example.org/dress/plate/weekly-1926-06-12/p4-2.html",
    }
    thing = object_of(page)
    assert thing["@type"] == "VisualArtwork"
    assert thing["license"] == "http://rightsstatements.org/vocab/NKC/1.0/"
    part = thing["isPartOf"]
    assert isinstance(part, dict)
    assert part["@type"] == "PublicationIssue"
    assert part["author"] == [{"@type": "Person", "familyName": "Quillfeather", "givenName": "Ada"}]


def test_a_fact_not_recorded_has_no_tag(tmp_path: Path) -> None:
    bare = source(
        "bare",
        None,
        plate("bare", "p1-1", "neckline/v", locator=Locator()),
        publisher=Publisher(),
        rights=None,
    )
    catalogue = of_one(bare, tmp_path)
    names = {tag.name for tag in citation_tags(catalogue, bare.plates[0], csl_item(bare, bare.plates[0]))}
    assert names == {"citation_title", "citation_inbook_title"}


def test_no_record_can_end_the_element_its_data_stands_in(tmp_path: Path) -> None:
    catalogue = hostile(sample(tmp_path), "</script><script>alert(1)</script>\u2028")
    for each in catalogue.plates.values():
        text = str(json_ld(catalogue, each, csl_item(catalogue.sources[each.source], each)))
        assert "<" not in text
        assert json.loads(text)["identifier"] == each.key
