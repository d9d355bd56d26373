"""The catalogue as data: tables with a Frictionless Data Package descriptor, one JSON file, citation files.

Tables are CSV (RFC 4180, UTF-8). A cell that a spreadsheet would take for a formula is written behind an
apostrophe, so that a record can never run anything on the reader's machine.
"""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

import yaml

from inperiod.citing import DOWNLOADS, downloads, joined
from inperiod.dating import iso_day
from inperiod.publishing.lookup import Lookup
from inperiod.publishing.prose import site_root, web_address
from inperiod.records.model import Board, Catalogue, Dated, Feature, Milestone, Plate, Source

Row = Sequence[str | int | None]

FORMULA_STARTS = ("=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠")
"""After OWASP, "CSV Injection" (from memory); wide forms mean the same to programs set up for East Asia."""


@dataclass(frozen=True, slots=True)
class Column:
    """A column of a table: its name, its Table Schema type and what it holds."""

    name: str
    holds: str
    type: str = "string"


@dataclass(frozen=True, slots=True)
class TableOfData:
    """One downloadable table. ``key``: the columns that name a row; ``links``: a column to a table's key."""

    name: str
    title: str
    columns: tuple[Column, ...]
    key: tuple[str, ...]
    rows: Callable[[Catalogue], Iterator[Row]]
    links: Mapping[str, tuple[str, str]]


def download_files(catalogue: Catalogue) -> Iterator[tuple[str, str]]:
    """Every download of the site, as path from its root and text."""
    yield from tables(catalogue)
    yield from whole_and_boards(catalogue)
    look = Lookup(catalogue)
    for source in catalogue.sources.values():
        yield from source_downloads(look, source)


def tables(catalogue: Catalogue) -> Iterator[tuple[str, str]]:
    """Every table, and what describes them."""
    for table in TABLES:
        yield f"download/{table.name}.csv", as_csv(table, catalogue)
    yield "download/datapackage.json", _json(descriptor(catalogue))


def whole_and_boards(catalogue: Catalogue) -> Iterator[tuple[str, str]]:
    """All tables in one file, how to cite them, and the citations of each board."""
    yield "download/catalogue.json", whole(catalogue)
    yield "download/CITATION.cff", citation_cff(catalogue)
    for board in catalogue.boards.values():
        records = [downloads(catalogue, [key]) for key in board_keys(catalogue, board)]
        yield from _cited(f"download/board/{board.id}", records)


def source_downloads(look: Lookup, source: Source) -> Iterator[tuple[str, str]]:
    """The citations of a source and its plates."""
    records = [look.records(key) for key in (source.id, *(plate.key for plate in source.plates))]
    yield from _cited(f"download/source/{source.id}", records)


def data_view(catalogue: Catalogue) -> Mapping[str, Any]:
    """What the template ``data.html`` shows."""
    return {
        "tables": TABLES,
        "counts": {
            "sources": len(catalogue.sources),
            "plates": len(catalogue.plates),
            "features": sum(len(plate.features) for plate in catalogue.plates.values()),
            "terms": len(catalogue.vocabulary.terms),
        },
        "manifests": bool(site_root(catalogue.settings)),
    }


def board_keys(catalogue: Catalogue, board: Board) -> list[str]:
    """The plates gathered on a board that exist, each once, in its order."""
    return list(dict.fromkeys(each.plate for each in board.plates if each.plate in catalogue.plates))


def _cited(path: str, records: Sequence[Mapping[str, str]]) -> Iterator[tuple[str, str]]:
    for fmt, ending in DOWNLOADS.items():
        yield f"{path}.{ending}", joined([each[fmt] for each in records], fmt)


def as_csv(table: TableOfData, catalogue: Catalogue) -> str:
    """The table as CSV with a header line."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\r\n")
    writer.writerow(column.name for column in table.columns)
    writer.writerows(map(_safe, table.rows(catalogue)))
    return out.getvalue()


def _safe(row: Row) -> Row:
    return [f"'{cell}" if isinstance(cell, str) and cell.startswith(FORMULA_STARTS) else cell for cell in row]


def _json(value: object) -> str:
    return json.dumps(value, ensure_ascii=False, indent=1) + "\n"


# --- the tables -------------------------------------------------------------------------------------


def _dates(dated: Dated | None) -> tuple[str | None, ...]:
    if dated is None:
        return None, None, None
    ends = (dated.span.earliest, dated.span.latest)
    return dated.text, *(None if end is None else iso_day(end) for end in ends)


DATE_COLUMNS = (
    Column("date", "the date, EDTF; empty where undated"),
    Column("earliest", "its earliest day, before any allowance for circa; empty where open"),
    Column("latest", "its latest day, likewise"),
)


def _source_rows(catalogue: Catalogue) -> Iterator[Row]:
    for source in catalogue.sources.values():
        yield (
            source.id,
            source.kind,
            source.title,
            *_dates(source.date),
            source.date_basis,
            source.grade,
            source.publisher.name,
            source.publisher.place,
            source.market,
            "; ".join(creator.name for creator in source.creators),
            source.language,
            source.held_by.name,
            source.held_by.accession or source.held_by.shelfmark,
            web_address(source.held_by.url),
            source.rights,
            source.reprint_of,
            len(source.plates),
        )


def _plate_rows(catalogue: Catalogue) -> Iterator[Row]:
    for plate in catalogue.plates.values():
        where, price = plate.locator, plate.price
        yield (
            plate.key,
            plate.source,
            where.page,
            where.plate,
            where.figure,
            where.item,
            plate.garment,
            *_dates(catalogue.dated(plate)),
            plate.wearer.who,
            plate.caption,
            price.amount if price else None,
            price.currency if price else None,
            plate.view,
            plate.medium,
            plate.same_cut_as,
        )


def _feature_rows(catalogue: Catalogue) -> Iterator[Row]:
    for plate in catalogue.plates.values():
        for number, feature in enumerate(plate.features, start=1):
            yield _feature_row(plate, number, feature)


def _feature_row(plate: Plate, number: int, feature: Feature) -> Row:
    return (
        plate.key,
        number,
        feature.facet,
        feature.term,
        feature.state,
        feature.reading,
        feature.at,
        feature.width,
        feature.count,
        feature.note,
    )


def _term_rows(catalogue: Catalogue) -> Iterator[Row]:
    for term in catalogue.vocabulary.terms.values():
        yield (
            term.key,
            term.facet,
            term.label,
            term.definition,
            "; ".join(name.name for name in term.names),
            term.broader,
            *_milestone(term.not_before),
            *_milestone(term.in_dress_from),
        )


def _milestone(milestone: Milestone | None) -> tuple[str | None, str | None, str | None]:
    return (milestone.date.text, milestone.event, milestone.source) if milestone else (None, None, None)


TABLES = (
    TableOfData(
        "sources",
        "Dated sources",
        (
            Column("source", "the source's id"),
            Column("kind", "what it is"),
            Column("title", "its title"),
            *DATE_COLUMNS,
            Column("date_basis", "what the date rests on"),
            Column("grade", "the grade of the dating: A, B or C"),
            Column("publisher", "who published it"),
            Column("place", "where"),
            Column("market", "where it was sold or worn, if elsewhere"),
            Column("creators", "who made it, with semicolons between"),
            Column("language", "its language (BCP 47)"),
            Column("held_by", "who keeps it"),
            Column("shelfmark", "its shelfmark or accession number"),
            Column("url", "where it can be seen"),
            Column("rights", "a rights statement or licence, as an address"),
            Column("reprint_of", "the source it reprints"),
            Column("plates", "how many plates of it are recorded", "integer"),
        ),
        ("source",),
        _source_rows,
        {},
    ),
    TableOfData(
        "plates",
        "Plates",
        (
            Column("plate", "the plate's key, source/plate"),
            Column("source", "the source it is in"),
            Column("page", "page, as printed"),
            Column("plate_number", "plate number, as printed"),
            Column("figure", "figure, as printed"),
            Column("item", "item number, as printed"),
            Column("garment", "the garment's type"),
            *DATE_COLUMNS,
            Column("wearer", "whom it is for"),
            Column("caption", "the caption, as printed"),
            Column("price", "the price, as printed"),
            Column("currency", "its currency (ISO 4217)"),
            Column("view", "front, back, side, detail or text only"),
            Column("medium", "cut, photograph, drawing, colour plate or object"),
            Column("same_cut_as", "the plate whose engraving is used again here"),
        ),
        ("plate",),
        _plate_rows,
        {"source": ("sources", "source")},
    ),
    TableOfData(
        "features",
        "Features",
        (
            Column("plate", "the plate that shows it"),
            Column("number", "its place among the plate's features", "integer"),
            Column("facet", "the family of terms"),
            Column("term", "the term, facet/id; empty where nothing is shown"),
            Column("state", "shown, none (looked for and absent) or not visible"),
            Column("reading", "seen, read or inferred"),
            Column("at", "where on the garment"),
            Column("width", "its width, as recorded"),
            Column("count", "how many", "integer"),
            Column("note", "a note"),
        ),
        ("plate", "number"),
        _feature_rows,
        {"plate": ("plates", "plate")},
    ),
    TableOfData(
        "terms",
        "Vocabulary",
        (
            Column("term", "the term's key, facet/id"),
            Column("facet", "the family of terms"),
            Column("label", "its name"),
            Column("definition", "what it is"),
            Column("other_names", "other names, with semicolons between"),
            Column("broader", "the broader term"),
            Column("not_before", "the date it cannot precede, EDTF"),
            Column("not_before_event", "what that date is"),
            Column("not_before_source", "where that is known from"),
            Column("in_dress_from", "from when it is known in dress, EDTF"),
            Column("in_dress_from_event", "what that date is"),
            Column("in_dress_from_source", "where that is known from"),
        ),
        ("term",),
        _term_rows,
        {},
    ),
)


# --- what describes them ------------------------------------------------------------------------------


def descriptor(catalogue: Catalogue) -> dict[str, Any]:
    """A Frictionless Data Package (v1) descriptor of the tables."""
    settings = catalogue.settings
    package: dict[str, Any] = {
        "profile": "tabular-data-package",
        "name": "catalogue",
        "title": settings.title,
        "description": _description(catalogue),
        "resources": [_resource(table) for table in TABLES],
    }
    licence = web_address(settings.licence)
    if licence:
        package["licenses"] = [{"path": licence, "title": settings.licence}]
    return package


def _description(catalogue: Catalogue) -> str:
    settings = catalogue.settings
    parts = (
        settings.demonstration,
        settings.subtitle,
        "A cell that begins like a formula stands behind an apostrophe.",
    )
    return " ".join(part for part in parts if part)


def _resource(table: TableOfData) -> dict[str, Any]:
    schema: dict[str, Any] = {
        "fields": [
            {"name": column.name, "type": column.type, "description": column.holds}
            for column in table.columns
        ],
        "primaryKey": list(table.key),
        "missingValues": [""],
    }
    if table.links:
        schema["foreignKeys"] = [
            {"fields": field, "reference": {"resource": resource, "fields": there}}
            for field, (resource, there) in table.links.items()
        ]
    return {
        "profile": "tabular-data-resource",
        "name": table.name,
        "title": table.title,
        "path": f"{table.name}.csv",
        "encoding": "utf-8",
        "dialect": {"delimiter": ",", "lineTerminator": "\r\n", "quoteChar": '"', "doubleQuote": True},
        "schema": schema,
    }


def whole(catalogue: Catalogue) -> str:
    """All tables in one JSON object: a list of records for each table, empty cells left out, one record on a
    line."""
    write = json.JSONEncoder(ensure_ascii=False, separators=(", ", ": ")).encode
    head = {"title": catalogue.settings.title, "about": _description(catalogue)}
    parts = [f"{write(name)}: {write(value)}" for name, value in head.items()]
    for table in TABLES:
        records = ",\n".join([write(_record(table, row)) for row in table.rows(catalogue)])
        parts.append(f"{write(table.name)}: " + (f"[\n{records}\n]" if records else "[]"))
    return "{\n" + ",\n".join(parts) + "\n}\n"


def _record(table: TableOfData, row: Row) -> dict[str, str | int]:
    pairs = zip(table.columns, row, strict=True)
    return {column.name: value for column, value in pairs if value is not None and value != ""}


def citation_cff(catalogue: Catalogue) -> str:
    """How to cite the catalogue as a whole, in the Citation File Format 1.2.0 (a data set)."""
    settings = catalogue.settings
    known: dict[str, Any] = {
        "cff-version": "1.2.0",
        "message": "Cite the plate; where the catalogue as a whole is meant, cite it like this.",
        "type": "dataset",
        "title": f"{settings.title}: {settings.subtitle}" if settings.subtitle else settings.title,
        "authors": [{"name": editor} for editor in settings.editors] or [{"name": settings.title}],
        "abstract": settings.demonstration,
        "date-released": settings.build_date,
        "url": web_address(settings.base_address),
        "license-url": web_address(settings.licence),
    }
    filled = {key: value for key, value in known.items() if value}
    return yaml.safe_dump(filled, allow_unicode=True, sort_keys=False, width=100)
