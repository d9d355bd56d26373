"""Where each page lives. Ids become file names, so an id that could leave its folder is refused here."""

from __future__ import annotations

import re
from functools import lru_cache

_SAFE = re.compile(r"[A-Za-z0-9][A-Za-z0-9._-]*\Z")

HOME = "index.html"
PLATES = "plates.html"
TIMELINE = "timeline.html"
TERMS = "terms.html"
SOURCES = "sources.html"
BOARDS = "boards.html"
MY_BOARD = "my-board.html"
RECORD = "record.html"
METHOD = "method.html"
CAUTIONS = "cautions.html"
ABOUT = "about.html"
DATA = "data.html"
HOW_TO_RECORD = "how-to-record.html"
SPREADSHEET = "from-a-spreadsheet.html"
NOT_FOUND = "404.html"
SITE_CARD = "share/card.png"


class UnsafeName(ValueError):
    """An id that cannot be a file name."""


@lru_cache(maxsize=65536)
def _safe(name: str) -> str:
    if not _SAFE.match(name) or name.endswith("."):
        raise UnsafeName(
            f"{name!r} cannot be part of an address: use letters, digits, hyphens, underscores and full stops"
        )
    return name


def plate_path(key: str) -> str:
    """The page of the plate ``source-id/plate-id``."""
    source, _, plate = key.partition("/")
    return f"plate/{_safe(source)}/{_safe(plate)}.html"


def flat_path(key: str) -> str:
    """The drawing of the plate ``source-id/plate-id``, a file of its own."""
    source, _, plate = key.partition("/")
    return f"flat/{_safe(source)}/{_safe(plate)}.svg"


def card_path(key: str) -> str:
    """The picture of dots that stands for the plate ``source-id/plate-id`` where its page is shared."""
    source, _, plate = key.partition("/")
    return f"share/{_safe(source)}/{_safe(plate)}.png"


def sheet_path(source: str, number: int) -> str:
    """A composed page of an invented source, counted from 1."""
    return f"sheet/{_safe(source)}/{number}.svg"


def source_path(source: str) -> str:
    return f"source/{_safe(source)}.html"


def term_path(key: str) -> str:
    """The page of the term ``facet/id``; garment types have pages of their own kind."""
    facet, _, term = key.partition("/")
    return garment_path(term) if facet == "garment" else f"term/{_safe(facet)}/{_safe(term)}.html"


def facet_path(facet: str) -> str:
    return f"facet/{_safe(facet)}.html"


def garment_path(garment: str) -> str:
    return f"garment/{_safe(garment)}.html"


def board_path(board: str) -> str:
    return f"board/{_safe(board)}.html"


def timeline_path(garment: str, facet: str) -> str:
    """The page of the timeline of a facet on a garment."""
    return f"timeline/{_safe(garment)}/{_safe(facet)}.html"


def relative(target: str, page: str) -> str:
    """``target`` as seen from ``page``, both from the root of the site; what follows ``#`` stays."""
    folder, _, _ = page.rpartition("/")
    if folder and target.startswith(folder + "/"):
        return target[len(folder) + 1 :]
    return "../" * page.count("/") + target
