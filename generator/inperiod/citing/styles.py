"""The citation styles by name, and the door through which a plate or a source is cited."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from markupsafe import Markup

from inperiod.citing import apa, chicago, mhra, mla
from inperiod.citing.credit import credit
from inperiod.citing.csl import csl_item
from inperiod.citing.pieces import Item, plain
from inperiod.records.model import Catalogue, Locator, Source


@dataclass(frozen=True, slots=True)
class Style:
    """A citation style: its id on the command line, its label, and whether it is for a list of sources."""

    id: str
    label: str
    write: Callable[[Item, Locator, Source], Markup]
    listing: bool = False


def _plainly(write: Callable[[Item, Locator], Markup]) -> Callable[[Item, Locator, Source], Markup]:
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
    plate = catalogue.plates[plate_key]
    source = catalogue.sources[plate.source]
    original = catalogue.sources.get(source.reprint_of or "")
    return _shaped(STYLES[style].write(csl_item(source, plate, original), plate.locator, source), form)


def cite_source(
    catalogue: Catalogue, source_id: str, style: str = "chicago-bibliography", form: str = "text"
) -> str:
    """A whole source cited. Raises KeyError for a source or a style that does not exist."""
    source = catalogue.sources[source_id]
    original = catalogue.sources.get(source.reprint_of or "")
    return _shaped(STYLES[style].write(csl_item(source, None, original), Locator(), source), form)


def _shaped(written: Markup, form: str) -> str:
    return str(written) if form == "html" else plain(written)
