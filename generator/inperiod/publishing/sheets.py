"""Pages of invented trade catalogues, set from the flats of their plates: for a demonstration only."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from inperiod.drawing.flats.page import Entry, catalogue_page, page_size
from inperiod.publishing import paths, words
from inperiod.publishing.flats import FlatPicture, shown_picture
from inperiod.publishing.lookup import Lookup
from inperiod.records.model import Catalogue, Plate, Source

NOTICE = "Invented for the demonstration"
MOST = 9
"""No more articles than these are set on one page."""


@dataclass(frozen=True, slots=True)
class SheetPicture:
    """A composed page: its path in the site, size in pixels, what it is called."""

    path: str
    width: int
    height: int
    label: str


def sheets_of(catalogue: Catalogue, source: Source) -> tuple[SheetPicture, ...]:
    """The composed pages of a source; none for real catalogues and for other kinds of source."""
    return tuple(
        SheetPicture(
            paths.sheet_path(source.id, at),
            *page_size([_caption(plate) for plate in plates]),
            f"Page {page}" if page else "A page",
        )
        for at, (page, plates) in enumerate(_pages(catalogue, source), start=1)
    )


def source_sheets(look: Lookup, source: Source) -> Iterator[tuple[str, str]]:
    """The composed pages of one source by their paths."""
    for at, (page, plates) in enumerate(_pages(look.catalogue, source), start=1):
        entries = [
            Entry(flat, plate.locator.item or "", _caption(plate), words.price(plate.price) or "")
            for plate in plates
            if (flat := look.flat(plate.key)) is not None
        ]
        firm = source.publisher.name or words.sentence(words.kind(source))
        folio = f"Page {page}" if page else ""
        yield (
            paths.sheet_path(source.id, at),
            str(catalogue_page(firm, source.title, folio, entries, NOTICE)),
        )


def _pages(catalogue: Catalogue, source: Source) -> list[tuple[str, list[Plate]]]:
    """The plates that have a flat, by the page they are on; pages that hold one article follow on another."""
    if not catalogue.settings.demonstration or source.kind != "trade-catalogue":
        return []
    found: dict[str, list[Plate]] = {}
    for plate in source.plates:
        if isinstance(shown_picture(catalogue, plate), FlatPicture):
            found.setdefault(plate.locator.page or "", []).append(plate)
    return [(page, plates[:MOST]) for page, plates in found.items()]


def _caption(plate: Plate) -> str:
    return re.sub(r"\s+", " ", plate.caption or "").strip()
