"""Citations for pages, through the citing room's door."""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup

from inperiod.citing import DOWNLOADS, STYLES, cite, cite_source, export
from inperiod.records.model import Catalogue


@dataclass(frozen=True, slots=True)
class Cited:
    """One citation: the style's id and label, and the text as safe HTML."""

    style: str
    label: str
    html: Markup


FORMAT_LABELS = {"csl-json": "CSL-JSON", "biblatex": "BibLaTeX", "ris": "RIS"}


@dataclass(frozen=True, slots=True)
class Record:
    """One citation in an exchange format: the format's id and label, the name of its file, its text."""

    format: str
    label: str
    file: str
    text: str


def records_of(catalogue: Catalogue, key: str) -> tuple[Record, ...]:
    """The plate as reference managers take it."""
    name = key.replace("/", "-")
    return tuple(
        Record(fmt, FORMAT_LABELS[fmt], f"{name}.{ending}", export(catalogue, [key], fmt))
        for fmt, ending in DOWNLOADS.items()
    )


def of_plate(catalogue: Catalogue, key: str) -> tuple[Cited, ...]:
    """The plate in every style. The citing room escapes what it writes."""
    return tuple(
        Cited(style.id, style.label, Markup(cite(catalogue, key, style.id, "html")))
        for style in STYLES.values()
    )


def of_source(catalogue: Catalogue, source: str) -> tuple[Cited, ...]:
    """The source in the styles that list sources."""
    return tuple(
        Cited(style.id, style.label, Markup(cite_source(catalogue, source, style.id, "html")))
        for style in STYLES.values()
        if style.listing
    )
