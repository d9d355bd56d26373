"""Citations for pages, through the citing room's door."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from markupsafe import Markup

from inperiod.citing import DOWNLOADS, STYLES, Entry, cite_in_all, cite_source, item_alone
from inperiod.publishing.browser_data import data_script
from inperiod.publishing.lookup import Lookup
from inperiod.records.model import Catalogue, Source


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


def records_of(look: Lookup, key: str) -> tuple[Record, ...]:
    """The plate as reference managers take it."""
    name = key.replace("/", "-")
    return tuple(
        Record(fmt, FORMAT_LABELS[fmt], f"{name}.{DOWNLOADS[fmt]}", text)
        for fmt, text in look.records(key).items()
    )


def of_plate(entry: Entry) -> tuple[Cited, ...]:
    """A plate in every style. The citing room escapes what it writes."""
    cited = cite_in_all(entry, "html")
    return tuple(Cited(style, STYLES[style].label, Markup(html)) for style, html in cited.items())


def of_source(catalogue: Catalogue, source: str) -> tuple[Cited, ...]:
    """The source in the styles that list sources."""
    return tuple(
        Cited(style.id, style.label, Markup(cite_source(catalogue, source, style.id, "html")))
        for style in STYLES.values()
        if style.listing
    )


def source_records(look: Lookup, source: Source) -> tuple[str, str]:
    """The data script with the records of a source's plates, loaded when a list of plates is to be cited. Of
    CSL-JSON it has the items without their lists, so that they can be joined anew."""
    texts = {plate.id: look.records(plate.key) for plate in source.plates}
    held = {key: {**each, "csl-json": item_alone(each["csl-json"])} for key, each in texts.items()}
    return f"data/cite/{source.id}.js", data_script(f"cite/{source.id}", held)


def source_lists(catalogue: Catalogue) -> Iterator[tuple[str, str]]:
    """The data scripts with every source in a style, loaded when a board lists its own."""
    for style in (each.id for each in STYLES.values() if each.listing):
        cited = {source: cite_source(catalogue, source, style) for source in catalogue.sources}
        yield f"data/sources/{style}.js", data_script(f"sources/{style}", cited)
