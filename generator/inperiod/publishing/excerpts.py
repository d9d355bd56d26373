"""What files of the whole catalogue take from each source, kept so that after an edit one is asked."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from inperiod.publishing.downloads import TABLES, as_csv_rows, as_records
from inperiod.publishing.found_by import words_of
from inperiod.records.keeping import Store
from inperiod.records.model import Catalogue

PART = "excerpts"
SPARE = 200
"""So many of what sources gave before are left."""


@dataclass(frozen=True, slots=True)
class Excerpt:
    """``tables``: by table, the source's rows as CSV and as JSON records. ``words``: by plate, those it is
    found by."""

    tables: Mapping[str, tuple[str, str]]
    words: Mapping[str, str]


def excerpt_of(catalogue: Catalogue, source: str) -> Excerpt:
    """The excerpt of a source of the catalogue as it is published."""
    record = catalogue.sources[source]
    tables = {}
    for table in TABLES:
        rows = list(table.of_source(catalogue, record))
        if rows:
            tables[table.name] = (as_csv_rows(rows), as_records(table, rows))
    return Excerpt(tables, words_of(record))


class Excerpts(Mapping[str, Excerpt]):
    """The excerpts of all sources. ``names`` are digests of all that each is made of; what is noted under its
    name is not made again."""

    def __init__(self, catalogue: Catalogue, names: Mapping[str, str] | None = None) -> None:
        self._catalogue = catalogue
        self._names = names or {}
        self._store = Store.of(catalogue.folder, PART) if names else None

    def __getitem__(self, source: str) -> Excerpt:
        name = self._names.get(source)
        note = self._store.read(name) if self._store and name else None
        if note is not None:
            tables, words = note
            return Excerpt(tables, words)
        made = excerpt_of(self._catalogue, source)
        if self._store and name:
            self._store.write(name, [made.tables, made.words])
        return made

    def __iter__(self) -> Iterator[str]:
        return iter(self._catalogue.sources)

    def __len__(self) -> int:
        return len(self._catalogue.sources)

    def tidy(self) -> None:
        """Take away most of what is no longer used."""
        if self._store:
            self._store.tidy(SPARE, self._names.values())
