"""What files of the whole catalogue take from each source, kept so that after an edit one is asked."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from inperiod.publishing.downloads import TABLES, as_csv_rows, as_records
from inperiod.publishing.found_by import words_of
from inperiod.records.keeping import Store
from inperiod.records.model import Catalogue

PART = "excerpts"
_BETWEEN = "\0"
SPARE = 200
"""So many of what sources gave before are left."""


@dataclass(frozen=True, slots=True)
class Excerpt:
    """``tables``: by table, the source's rows as CSV and as JSON records. ``words``: by plate, those it is
    found by."""

    tables: Mapping[str, tuple[str, str]]
    words: Mapping[str, str]

    def to_text(self) -> str:
        """As it is kept: all parts one after another, with NUL between, which no record holds."""
        tables = [part for name, (rows, records) in self.tables.items() for part in (name, rows, records)]
        words = [part for pair in self.words.items() for part in pair]
        return _BETWEEN.join([str(len(self.tables)), *tables, *words])

    @staticmethod
    def from_text(text: str) -> Excerpt:
        """The excerpt back."""
        count, *parts = text.split(_BETWEEN)
        end = 3 * int(count)
        tables = zip(parts[0:end:3], zip(parts[1:end:3], parts[2:end:3], strict=True), strict=True)
        return Excerpt(dict(tables), dict(zip(parts[end::2], parts[end + 1 :: 2], strict=True)))


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
        note = self._store.read_text(name) if self._store and name else None
        if note is not None:
            return Excerpt.from_text(note)
        made = excerpt_of(self._catalogue, source)
        if self._store and name:
            self._store.write_text(name, made.to_text())
        return made

    def __iter__(self) -> Iterator[str]:
        return iter(self._catalogue.sources)

    def __len__(self) -> int:
        return len(self._catalogue.sources)

    def tidy(self) -> None:
        """Take away most of what is no longer used."""
        if self._store:
            self._store.tidy(SPARE, self._names.values())
