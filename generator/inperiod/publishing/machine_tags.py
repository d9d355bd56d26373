"""What reference managers and search engines read on a plate's page: citation tags and schema.org JSON-LD."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from markupsafe import Markup

from inperiod.citing import locator_words
from inperiod.publishing import paths, words
from inperiod.publishing.embedded import json_in_script
from inperiod.publishing.prose import site_root, web_address
from inperiod.records.model import Catalogue, Plate

Item = dict[str, Any]

# What a source of each CSL type is in schema.org.
SCHEMA_TYPES = {
    "book": "Book",
    "pamphlet": "CreativeWork",
    "article-magazine": "PublicationIssue",
    "article-newspaper": "PublicationIssue",
    "graphic": "VisualArtwork",
    "webpage": "WebPage",
    "document": "CreativeWork",
}


@dataclass(frozen=True, slots=True)
class Tag:
    """One ``<meta name content>``."""

    name: str
    content: str


def citation_tags(catalogue: Catalogue, plate: Plate, item: Item) -> tuple[Tag, ...]:
    """The ``citation_…`` tags that reference managers look for; a fact not recorded has no tag. ``item`` is
    the plate as CSL-JSON has it."""
    return tuple([Tag(name, str(content)) for name, content in _tags(catalogue, plate, item) if content])


def _tags(catalogue: Catalogue, plate: Plate, item: Item) -> Iterator[tuple[str, str | None]]:
    yield "citation_title", plate_title(catalogue, plate)
    for person in item.get("author", ()):
        yield "citation_author", person.get("literal") or f"{person['family']}, {person['given']}"
    container = item.get("container-title") or item.get("title")
    periodical = item["type"].startswith("article")
    yield ("citation_journal_title" if periodical else "citation_inbook_title"), container
    yield "citation_publication_date", _day_with_slashes(item)
    yield "citation_volume", item.get("volume")
    yield "citation_issue", item.get("issue")
    yield "citation_firstpage", plate.locator.page
    yield "citation_publisher", item.get("publisher")
    yield "citation_language", item.get("language")
    yield "citation_public_url", _address(catalogue, plate)


def plate_title(catalogue: Catalogue, plate: Plate) -> str:
    """A plate's title for machines: its garment, its place in the source and its date."""
    garment = catalogue.vocabulary.garments.get(plate.garment)
    label = garment.label if garment else plate.garment
    where = locator_words(plate.locator)
    name = f"{label[:1].upper()}{label[1:]}"
    return ", ".join(part for part in (name, where, words.when(catalogue.dated(plate))) if part)


def _day_with_slashes(item: Item) -> str | None:
    """``1926/06/12``, as far as it is known; an interval gives its first part."""
    parts = item.get("issued", {}).get("date-parts")
    return "/".join(f"{part:02d}" for part in parts[0]) if parts else None


def json_ld(catalogue: Catalogue, plate: Plate, item: Item) -> Markup:
    """The plate as a schema.org object, safe inside ``<script type="application/ld+json">``."""
    return Markup(json_in_script(_thing(catalogue, plate, item)))


def _thing(catalogue: Catalogue, plate: Plate, item: Item) -> dict[str, Any]:
    source = catalogue.sources[plate.source]
    dated = catalogue.dated(plate)
    whole: dict[str, Any] = {
        "@type": SCHEMA_TYPES[item["type"]],
        "name": source.title,
        "author": [_person(person) for person in item.get("author", ())],
        "publisher": source.publisher.name and {"@type": "Organization", "name": source.publisher.name},
        "volumeNumber": source.volume,
        "issueNumber": source.issue,
        "bookEdition": source.edition,
        "isBasedOn": web_address(source.held_by.url),
    }
    thing: dict[str, Any] = {
        "@context": "https://schema.org",
        "@type": "VisualArtwork",
        "identifier": plate.key,
        "name": plate_title(catalogue, plate),
        "description": plate.caption,
        "temporalCoverage": dated.text if dated else None,
        "inLanguage": source.language,
        "license": web_address(source.rights),
        "position": locator_words(plate.locator),
        "url": _address(catalogue, plate),
        "isPartOf": _filled(whole),
    }
    return _filled(thing)


def _address(catalogue: Catalogue, plate: Plate) -> str | None:
    root = site_root(catalogue.settings)
    return root + paths.plate_path(plate.key) if root else None


def _person(person: Item) -> dict[str, Any]:
    if "literal" in person:
        return {"@type": "Organization", "name": person["literal"]}
    return {"@type": "Person", "familyName": person["family"], "givenName": person["given"]}


def _filled(thing: dict[str, Any]) -> dict[str, Any]:
    return {key: value for key, value in thing.items() if value}
