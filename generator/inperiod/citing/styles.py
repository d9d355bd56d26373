"""The citation styles by name, and the door through which a plate or a source is cited."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from inperiod.citing import apa, chicago, mhra, mla
from inperiod.citing.credit import credit
from inperiod.citing.csl import Entry, entry_for
from inperiod.citing.pieces import Item, as_html, plain
from inperiod.records.model import Catalogue, Locator, Source


@dataclass(frozen=True, slots=True)
class Style:
    """A citation style: its id on the command line, its label, and whether it is for a list of sources."""

    id: str
    label: str
    write: Callable[[Item, Locator, Source], str]
    listing: bool = False


def _plainly(write: Callable[[Item, Locator], str]) -> Callable[[Item, Locator, Source], str]:
    return lambda item, locator, source: write(item, locator)


STYLES: Mapping[str, Style] = {
    style.id: style
    for style in (
        Style("chicago-note", "Chicago, note", _plainly(chicago.note)),
        Style("chicago-bibliography", "Chicago, bibliography", _plainly(chicago.bibliography), listing=True),
        Style("mla", "MLA, works cited", _plainly(mla.works_cited), listing=True),
        Style("mla-in-text", "MLA, in the text", _plainly(mla.in_text)),
        Style("apa", "APA, reference", _plainly(apa.reference), listing=True),
        Style("apa-in-text", "APA, in the text", _plainly(apa.in_text)),
        Style("mhra-note", "MHRA, note", _plainly(mhra.note)),
        Style("mhra-bibliography", "MHRA, bibliography", _plainly(mhra.bibliography), listing=True),
        Style("credit", "Credit line", credit),
    )
}
DEFAULT_STYLE = "chicago-note"


def cite(catalogue: Catalogue, plate_key: str, style: str = DEFAULT_STYLE, form: str = "text") -> str:
    """A plate cited down to its figure. ``form`` is ``"text"`` or ``"html"`` (escaped; ``<i>`` its only tag).

    Raises KeyError for a plate or a style that does not exist.
    """
    return _written(STYLES[style], entry_for(catalogue, catalogue.plates[plate_key].key), form)


def cite_in_all(entry: Entry, form: str = "text") -> dict[str, str]:
    """The same in every style, by the style's id."""
    return {style.id: _written(style, entry, form) for style in STYLES.values()}


def cite_source(
    catalogue: Catalogue, source_id: str, style: str = "chicago-bibliography", form: str = "text"
) -> str:
    """A whole source cited. Raises KeyError for a source or a style that does not exist."""
    return _written(STYLES[style], entry_for(catalogue, catalogue.sources[source_id].id), form)


def _written(style: Style, entry: Entry, form: str) -> str:
    written = style.write(entry.item, entry.locator, entry.source)
    return as_html(written) if form == "html" else plain(written)
