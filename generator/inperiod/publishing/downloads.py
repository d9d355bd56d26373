"""The catalogue as data: tables with a Frictionless Data Package descriptor, one JSON file, citation files.

Tables are CSV (RFC 4180, UTF-8). A cell that a spreadsheet would take for a formula is written behind an
apostrophe, so that a record can never run anything on the reader's machine.
"""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

import yaml

from inperiod.citing import DOWNLOADS, downloads, entry_for, joined
from inperiod.dating import iso_day
from inperiod.publishing.lookup import Lookup
from inperiod.publishing.prose import site_root, web_address
from inperiod.records.model import Board, Catalogue, Dated, Feature, Milestone, Plate, Source, Vocabulary

Row = Sequence[str | int | None]

FORMULA_STARTS = ("=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠")
"""After OWASP, "CSV Injection" (from memory); wide forms mean the same to programs set up for East Asia."""


@dataclass(frozen=True, slots=True)
class Column:
    """A column of a table: its name, its Table Schema type and what it holds."""

    name: str
    holds: str
    type: str = "string"


def _nothing(*_: object) -> Iterable[Row]:
    return ()


@dataclass(frozen=True, slots=True)
class TableOfData:
    """One downloadable table. ``key``: the columns that name a row; ``links``: a column to a table's key. Its
    rows are those of all sources in their order, then those of the vocabulary."""

    name: str
    title: str
    columns: tuple[Column, ...]
    key: tuple[str, ...]
    of_source: Callable[[Catalogue, Source], Iterable[Row]]
    links: Mapping[str, tuple[str, str]]
    of_vocabulary: Callable[[Vocabulary], Iterable[Row]] = _nothing


def tables_and_whole(
    catalogue: Catalogue, of_sources: Iterable[Mapping[str, tuple[str, str]]]
) -> Iterator[tuple[str, str]]:
    """Every table, what describes them, and all of them in one file. ``of_sources`` has of every source, by
    table, its rows as CSV and as JSON records (see ``excerpts``)."""
    parts = {table.name: _Parts(table) for table in TABLES}
    for tables in of_sources:
        for name, (rows, records) in tables.items():
            parts[name].rows.append(rows)
            parts[name].records.append(records)
    for each in parts.values():
        each.add(each.table.of_vocabulary(catalogue.vocabulary))
        yield f"download/{each.table.name}.csv", "".join(each.rows)
    yield "download/datapackage.json", _json(descriptor(catalogue))
    yield "download/catalogue.json", _whole(catalogue, {name: each.records for name, each in parts.items()})


class _Parts:
    """A table being put together: its rows as CSV and as JSON records."""

    def __init__(self, table: TableOfData) -> None:
        self.table = table
        self.rows = [as_csv_rows([[column.name for column in table.columns]])]
        self.records: list[str] = []

    def add(self, found: Iterable[Row]) -> None:
        rows = list(found)
        if rows:
            self.rows.append(as_csv_rows(rows))
            self.records.append(as_records(self.table, rows))


def citation_files(catalogue: Catalogue) -> Iterator[tuple[str, str]]:
    """How to cite the catalogue, and the citations of each board."""
    yield "download/CITATION.cff", citation_cff(catalogue)
    for board in catalogue.boards.values():
        records = [downloads(entry_for(catalogue, key)) for key in board_keys(catalogue, board)]
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


def as_csv_rows(rows: Iterable[Row]) -> str:
    """Rows as CSV."""
    out = io.StringIO()
    csv.writer(out, lineterminator="\r\n").writerows(map(_safe, rows))
    return out.getvalue()


def as_records(table: TableOfData, rows: Iterable[Row]) -> str:
    """Rows as JSON objects, empty cells left out, one on a line."""
    write = json.JSONEncoder(ensure_ascii=False, separators=(", ", ": ")).encode
    return ",\n".join([write(_record(table, row)) for row in rows])


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


def _source_row(_: Catalogue, source: Source) -> Iterator[Row]:
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


def _plate_rows(catalogue: Catalogue, source: Source) -> Iterator[Row]:
    for plate in source.each_once:
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


def _feature_rows(_: Catalogue, source: Source) -> Iterator[Row]:
    for plate in source.each_once:
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


def _term_rows(vocabulary: Vocabulary) -> Iterator[Row]:
    for term in vocabulary.terms.values():
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
        _source_row,
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
        _nothing,
        {},
        _term_rows,
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


def _whole(catalogue: Catalogue, tables: Mapping[str, Sequence[str]]) -> str:
    """All tables in one JSON object: a list of records for each table, one record on a line."""
    head = {"title": catalogue.settings.title, "about": _description(catalogue)}
    parts = ["{"]
    for name, value in head.items():
        parts += ["\n", json.dumps(name), ": ", json.dumps(value, ensure_ascii=False), ","]
    for name, records in tables.items():
        parts += ["\n", json.dumps(name), ": [", *_lines(records), "],"]
    parts[-1] = parts[-1].removesuffix(",")
    return "".join([*parts, "\n}\n"])


def _lines(records: Sequence[str]) -> Iterator[str]:
    for number, text in enumerate(records):
        yield ",\n" if number else "\n"
        yield text
    if records:
        yield "\n"


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
