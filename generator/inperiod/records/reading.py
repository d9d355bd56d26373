"""A catalogue folder into one ``Catalogue`` and everything there is to complain of.

What a file says depends on its bytes, its name and the hemisphere of the seasons alone (``read_source`` and
its neighbours are pure functions of them), so a parsed file can be kept and used again. Files are read in
the order of their names; nothing outside the folder is ever opened.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from pathlib import Path
from typing import TypeVar

from inperiod.dating import Seasons, Span
from inperiod.kept import kept
from inperiod.records.building import Builder
from inperiod.records.checks import check_source, check_together
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


def read_catalogue(folder: Path) -> Reading:
    """Read and check a catalogue folder. Never raises for what the folder holds; see ``Reading.problems``."""
    folder = Path(folder)
    problems: list[Problem] = []
    rules = read_rules(folder, problems)
    sources: dict[str, Source] = {}
    for source in _records(folder, "sources", read_source, rules.settings.seasons, problems):
        sources[source.id] = source
        problems.extend(check_source(source, rules))
    boards = read_boards(rules, problems)
    return checked(Catalogue(folder, rules.settings, rules.vocabulary, sources, boards), problems)


def _records(
    place: Path,
    name: str,
    read: Callable[[bytes, str, Seasons, Dates], Read[Record]],
    seasons: Seasons,
    problems: list[Problem],
) -> Iterator[Record]:
    """Every record of a sub-folder, in the order of file names, read with one memory of dates."""
    dates: Dates = {}
    for file, data in files(place, name, problems):
        record, faults = read(data, file, seasons, dates)
        problems.extend(faults)
        if record is not None:
            yield record


def read_rules(folder: Path, problems: list[Problem]) -> Catalogue:
    """What all records are read by: a catalogue of the settings and the vocabulary alone."""
    if not folder.is_dir():
        hint = "Check the name, or make one with: new"
        problems.append(Problem.error(Mark("."), f"There is no folder {folder}.", hint))
        return Catalogue(folder, Settings(), Vocabulary({}), {}, {})
    settings = _settings(folder, problems)
    return Catalogue(folder, settings, _vocabulary(folder, settings, problems), {}, {})


def read_boards(rules: Catalogue, problems: list[Problem]) -> dict[str, Board]:
    """The boards of the folder."""
    found = _records(rules.folder, "boards", read_board, rules.settings.seasons, problems)
    return {board.id: board for board in found}


def checked(catalogue: Catalogue, problems: Iterable[Problem]) -> Reading:
    """The reading of a catalogue whose sources were checked, each by itself; ``problems`` are those found so
    far."""
    return Reading(catalogue, tuple(sorted({*problems, *check_together(catalogue)})))


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


def _vocabulary(folder: Path, settings: Settings, problems: list[Problem]) -> Vocabulary:
    """The folder's own vocabulary, or the one that comes with the program where it has none."""
    own = folder / "vocabulary"
    place = folder if own.is_dir() else kept("vocabulary").parent
    found = _records(place, "vocabulary", read_facet, settings.seasons, problems)
    facets: dict[str, Facet] = {}
    for _, each in sorted(found, key=lambda each: (each[0], each[1].mark.file)):
        if each.id in facets:
            message = f"The facet {each.id} is defined already in {facets[each.id].mark.file}."
            problems.append(Problem.error(each.mark, message, "Put all its terms into one file."))
        else:
            facets[each.id] = each
    return Vocabulary(facets)
