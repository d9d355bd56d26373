"""A plate or source as an item of the Citation Style Language 1.0.2 (CSL-JSON).

This is the one place that decides what kind of publication a source is for the purpose of citing;
the printed styles and the exchange formats all start from here.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Any

from inperiod.dating import in_words
from inperiod.records.model import Catalogue, Creator, Dated, Locator, Plate, Source

Item = dict[str, Any]

# What each kind of source is in CSL, and the words that name it where a style asks for a genre.
CSL_TYPES: dict[str, tuple[str, str | None]] = {
    "trade-catalogue": ("book", None),
    "magazine-issue": ("article-magazine", None),
    "newspaper": ("article-newspaper", None),
    "pattern-sheet": ("pamphlet", "pattern sheet"),
    "pattern-envelope": ("pamphlet", "pattern envelope"),
    "sewing-manual": ("book", None),
    "fashion-plate": ("graphic", "fashion plate"),
    "advertisement": ("article-magazine", "advertisement"),
    "photograph": ("graphic", "photograph"),
    "extant": ("graphic", "garment"),
    "sale-listing": ("webpage", "sale listing"),
    "other": ("document", None),
}

PERIODICALS = ("magazine-issue", "newspaper", "advertisement")


@dataclass(frozen=True, slots=True)
class Entry:
    """One thing cited, from which every style and format is written: its CSL item, where in the source it is,
    its date as EDTF ("" if undated), and the source."""

    item: Item
    locator: Locator
    edtf: str
    source: Source

    @property
    def page(self) -> str:
        return str(self.locator.page or self.item.get("page", ""))


def entry_for(catalogue: Catalogue, key: str) -> Entry:
    """The entry for a plate's key (``source/plate``) or a source's id. Raises KeyError for neither."""
    plate = catalogue.plates.get(key)
    source = catalogue.sources[plate.source if plate else key]
    item = csl_item(source, plate, catalogue.sources.get(source.reprint_of or ""))
    date = (plate.date if plate else None) or source.date
    return Entry(item, plate.locator if plate else Locator(), date.text if date else "", source)


def csl_item(source: Source, plate: Plate | None = None, original: Source | None = None) -> Item:
    """The CSL-JSON item for a source, or for one plate of it (with the plate's key and own date).

    ``original`` is the source this one reprints. Absent facts are left out, never filled in.
    """
    kind, genre = CSL_TYPES[source.kind]
    if source.kind == "advertisement" and not source.container:
        kind = "pamphlet"
    item: Item = {"id": plate.key if plate else source.id, "type": kind}
    item.update(_titles(source, kind))
    item["author"] = [csl_name(creator) for creator in source.creators if not _is_editor(creator)]
    item["editor"] = [csl_name(creator) for creator in source.creators if _is_editor(creator)]
    item["issued"] = csl_date((plate.date if plate else None) or source.date)
    item["original-date"] = csl_date(original.date) if original else None
    item["genre"] = genre
    item["edition"] = source.edition
    item["volume"] = source.volume
    item["issue"] = source.issue
    item["publisher"] = source.publisher.name
    item["publisher-place"] = source.publisher.place
    item["archive"] = source.held_by.name
    item["archive_location"] = source.held_by.accession or source.held_by.shelfmark
    item["URL"] = source.held_by.url
    item["accessed"] = _parts(source.held_by.accessed) if source.held_by.url else None
    item["language"] = source.language
    item["page"] = source.pages
    if source.date and source.date_basis and source.date_basis != "printed":
        item["custom"] = {"date-not-printed": True}
    return {key: value for key, value in item.items() if value not in (None, [], "")}


def _titles(source: Source, kind: str) -> Item:
    if kind not in ("article-magazine", "article-newspaper"):
        return {"title": source.title, "container-title": source.container}
    if source.container and source.container != source.title:
        return {"title": source.title, "container-title": source.container}
    return {"container-title": source.title}


def _is_editor(creator: Creator) -> bool:
    return (creator.role or "").casefold() in ("editor", "ed.", "editors")


def csl_name(creator: Creator) -> Item:
    """A name as CSL has it: ``Family, Given`` is a person; anything else (a firm, a body) is literal."""
    family, comma, given = creator.name.partition(",")
    if comma and given.strip():
        return {"family": family.strip(), "given": given.strip()}
    return {"literal": creator.name}


_YEAR = r"(-?\d{4})"
_PART = re.compile(rf"^{_YEAR}(?:-(\d\d)(?:-(\d\d))?)?([~?%]?)$")


def csl_date(dated: Dated | None) -> Item | None:
    """An EDTF date as a CSL date variable; one that CSL's parts cannot carry becomes a literal in words."""
    return _parts(dated.text) if dated else None


def _parts(edtf: str | None) -> Item | None:
    if not edtf:
        return None
    ends = [_PART.match(end) for end in edtf.split("/")]
    if not 1 <= len(ends) <= 2 or not all(ends):
        return {"literal": in_words(edtf).removeprefix("the ")}
    found = [end for end in ends if end]
    date: Item = {"date-parts": []}
    for end in found:
        year, month, day, qualifier = end.groups()
        if month and int(month) > 12:
            if len(found) == 1 and 21 <= int(month) <= 24:
                date["season"] = int(month) - 20
            month = None
        date["date-parts"].append([int(part) for part in (year, month, day) if part])
        if qualifier:
            date["circa"] = True
    return date
