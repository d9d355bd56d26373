"""Citations for pages, through the citing room's door."""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup

from inperiod.citing import STYLES, cite, cite_source
from inperiod.records.model import Catalogue


@dataclass(frozen=True, slots=True)
class Cited:
    """One citation: the style's id and label, and the text as safe HTML."""

    style: str
    label: str
    html: Markup


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
