"""A catalogue folder into one ``Catalogue`` and everything there is to complain of.

What a file says depends on its bytes, its name and the hemisphere of the seasons alone (``read_source`` and
its neighbours are pure functions of them), so a parsed file can be kept and used again. Files are read in
the order of their names; nothing outside the folder is ever opened.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import TypeVar

from inperiod.dating import Seasons, Span
from inperiod.kept import kept
from inperiod.records.building import Builder
from inperiod.records.checks import check_catalogue
from inperiod.records.files import bytes_of, files
from inperiod.records.model import Board, Catalogue, Facet, Mark, Settings, Source, Vocabulary
from inperiod.records.outcome import Reading
from inperiod.records.places import SETTINGS_FILE
from inperiod.records.problems import Problem
from inperiod.records.shapes import shape_of
from inperiod.records.shaping import Fields, shape
from inperiod.records.yaml_reading import read_yaml

Dates = dict[str, Span | str]
Record = TypeVar("Record")
Read = tuple[Record | None, list[Problem]]
"""A record, or None where the file holds none that is sound, and what is wrong with the file."""

Files = Iterable[tuple[str, bytes]]
"""Names of files relative to the catalogue folder, with what is in them."""

ReadAll = Callable[[Files, Seasons, Dates], Iterable[Read[Record]]]
"""Reads files one after another, each by itself."""


def read_catalogue(folder: Path, sources: ReadAll[Source] | None = None) -> Reading:
    """Read and check a catalogue folder. Never raises for what the folder holds; see ``Reading.problems``.

    ``sources`` reads source files, with the same results as ``read_source`` of each."""
    folder = Path(folder)
    problems: list[Problem] = []
    if not folder.is_dir():
        problem = Problem.error(
            Mark("."), f"There is no folder {folder}.", "Check the name, or make one with: new"
        )
        return Reading(Catalogue(folder, Settings(), Vocabulary({}), {}, {}), (problem,))
    settings = _settings(folder, problems)
    reader = _Reader(folder, settings.seasons, {}, problems)
    vocabulary = reader.vocabulary()
    found = {each.id: each for each in reader.records("sources", sources or each_by(read_source))}
    boards = {each.id: each for each in reader.records("boards", each_by(read_board))}
    catalogue = Catalogue(folder, settings, vocabulary, found, boards)
    problems.extend(check_catalogue(catalogue))
    return Reading(catalogue, tuple(sorted(set(problems))))


def each_by(read: Callable[[bytes, str, Seasons, Dates], Read[Record]]) -> ReadAll[Record]:
    """Files read one by one."""

    def read_all(found: Files, seasons: Seasons, dates: Dates) -> Iterator[Read[Record]]:
        for file, data in found:
            yield read(data, file, seasons, dates)

    return read_all


def read_source(
    data: bytes, file: str, seasons: Seasons, dates: Dates
) -> tuple[Source | None, list[Problem]]:
    """One source file. ``file`` is its name relative to the catalogue folder, ``sources/<id>.yaml``."""
    return _read(data, file, "source", seasons, dates, Builder.source)


def read_board(data: bytes, file: str, seasons: Seasons, dates: Dates) -> Read[Board]:
    """One board file; None also where its target cannot be read."""
    return _read(data, file, "board", seasons, dates, Builder.board)


def read_facet(data: bytes, file: str, seasons: Seasons, dates: Dates) -> Read[tuple[int, Facet]]:
    """One vocabulary file: its place in the order of facets (by ``order``, else last), and the facet."""

    def build(builder: Builder, fields: Fields) -> tuple[int, Facet]:
        return fields.get("order", 1_000_000), builder.facet(fields)

    return _read(data, file, "vocabulary", seasons, dates, build)


def read_settings(data: bytes) -> Read[Settings]:
    """The settings file."""
    return _read(data, SETTINGS_FILE, "settings", "northern", {}, Builder.settings)


def _read(
    data: bytes,
    file: str,
    schema: str,
    seasons: Seasons,
    dates: Dates,
    build: Callable[[Builder, Fields], Record | None],
) -> Read[Record]:
    document = read_yaml(data, file)
    problems = list(document.problems)
    if document.root is None:
        if not problems:
            first = next(iter(shape_of(schema).fields))
            hint = f"Start with a line such as {first}: …, or delete the file."
            problems.append(Problem.error(Mark(file), "This file is empty.", hint))
        return None, problems
    fields, faults = shape(document.root, shape_of(schema), file)
    if fields is None:
        return None, [*problems, *faults]
    builder = Builder(file, seasons, dates)
    record = build(builder, fields)
    return record, [*problems, *faults, *builder.problems]


def _settings(folder: Path, problems: list[Problem]) -> Settings:
    file = folder / SETTINGS_FILE
    if not file.exists() and not file.is_symlink():
        message = f"There is no {SETTINGS_FILE} in this folder; the usual settings are used."
        hint = "Make one that holds at least a line title: …"
        problems.append(Problem.warning(Mark(SETTINGS_FILE), message, hint))
        return Settings()
    data = bytes_of(folder, file, SETTINGS_FILE, problems)
    if data is None:
        return Settings()
    settings, faults = read_settings(data)
    problems.extend(faults)
    return settings or Settings()


@dataclass(frozen=True, slots=True)
class _Reader:
    """Reads the files of one folder, with one memory of dates, into one list of problems."""

    folder: Path
    seasons: Seasons
    dates: Dates
    problems: list[Problem]

    def vocabulary(self) -> Vocabulary:
        """The folder's own vocabulary, or the one that comes with the program where it has none."""
        own = self.folder / "vocabulary"
        place = self.folder if own.is_dir() else kept("vocabulary").parent
        found = sorted(
            self.records("vocabulary", each_by(read_facet), place),
            key=lambda each: (each[0], each[1].mark.file),
        )
        facets: dict[str, Facet] = {}
        for _, facet in found:
            if facet.id in facets:
                first = facets[facet.id].mark.file
                message = f"The facet {facet.id} is defined already in {first}."
                self.problems.append(Problem.error(facet.mark, message, "Put all its terms into one file."))
            else:
                facets[facet.id] = facet
        return Vocabulary(facets)

    def records(self, name: str, read: ReadAll[Record], place: Path | None = None) -> Iterator[Record]:
        """Every record of a sub-folder, in the order of file names."""
        found = files(place or self.folder, name, self.problems)
        for record, faults in read(found, self.seasons, self.dates):
            self.problems.extend(faults)
            if record is not None:
                yield record
