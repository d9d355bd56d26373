"""The sources behind a board, cited in the style the board asks for."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from markupsafe import Markup

from inperiod.citing import STYLES, cite, cite_source
from inperiod.records.model import Catalogue

DEFAULT = "chicago-bibliography"
# A style for notes has a sister for the list at the end, and the other way about.
_LISTS = {
    "chicago-note": "chicago-bibliography",
    "mhra-note": "mhra-bibliography",
    "mla-in-text": "mla",
    "apa-in-text": "apa",
    "credit": "chicago-bibliography",
}
_NOTES = {"chicago-bibliography": "chicago-note", "mhra-bibliography": "mhra-note"}


@dataclass(frozen=True, slots=True)
class Entry:
    """One source of the bibliography: its id, and the citation as text and as safe HTML."""

    source: str
    text: str
    html: Markup


def listing(style: str | None) -> str:
    """The style of the list of sources that goes with a style; Chicago's where none is known."""
    if style is None or style not in STYLES:
        return DEFAULT
    return style if STYLES[style].listing else _LISTS.get(style, DEFAULT)


def for_plates(style: str | None) -> str:
    """The style in which single plates are cited beside that list."""
    if style is None or style not in STYLES:
        return _NOTES[DEFAULT]
    if style.endswith("-in-text"):
        return listing(style)  # an in-text citation needs its list; a plate on its own is cited in full
    return _NOTES.get(style, style)


def bibliography(catalogue: Catalogue, plates: Iterable[str], style: str | None) -> tuple[Entry, ...]:
    """The sources of these plates, each once, in the order of their citations' letters."""
    sources = dict.fromkeys(catalogue.plates[key].source for key in plates if key in catalogue.plates)
    named = listing(style)
    entries = [
        Entry(each, cite_source(catalogue, each, named), Markup(cite_source(catalogue, each, named, "html")))
        for each in sources
    ]
    return tuple(sorted(entries, key=lambda each: (each.text.casefold().lstrip("“‘\"'«‹*_"), each.source)))


def plate_citation(catalogue: Catalogue, key: str, style: str | None) -> Markup:
    """One plate cited in the board's style, as safe HTML."""
    return Markup(cite(catalogue, key, for_plates(style), "html"))
