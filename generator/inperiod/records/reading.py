"""A catalogue folder into one ``Catalogue`` and everything there is to complain of.

What a file says depends on its bytes, its name and the hemisphere of the seasons alone (``read_source`` and
its neighbours are pure functions of them), so a parsed file can be kept and used again. Files are read in
the order of their names; nothing outside the folder is ever opened.
"""

from __future__ import annotations

import stat
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import TypeVar

from inperiod.dating import Seasons, Span
from inperiod.kept import kept
from inperiod.records.building import Builder
from inperiod.records.checks import check_catalogue
from inperiod.records.model import Board, Catalogue, Facet, Mark, Settings, Source, Vocabulary
from inperiod.records.problems import Problem
from inperiod.records.shapes import part, shape_of
from inperiod.records.shaping import Fields, shape
from inperiod.records.yaml_reading import MAX_BYTES, read_yaml

SETTINGS_FILE = "inperiod.yaml"
Dates = dict[str, Span | str]
Record = TypeVar("Record")
Read = tuple[Record | None, list[Problem]]
"""A record, or None where the file holds none that is sound, and what is wrong with the file."""


@dataclass(frozen=True, slots=True)
class Reading:
    """What was read: the catalogue as far as it is sound, and all problems, sorted by file and line."""

    catalogue: Catalogue
    problems: tuple[Problem, ...]

    @property
    def errors(self) -> tuple[Problem, ...]:
        return tuple(each for each in self.problems if each.severity == "error")

    @property
    def warnings(self) -> tuple[Problem, ...]:
        return tuple(each for each in self.problems if each.severity == "warning")


def read_catalogue(folder: Path) -> Reading:
    """Read and check a catalogue folder. Never raises for what the folder holds; see ``Reading.problems``."""
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
    sources = {each.id: each for each in reader.records("sources", read_source)}
    boards = {each.id: each for each in reader.records("boards", read_board)}
    catalogue = Catalogue(folder, settings, vocabulary, sources, boards)
    problems.extend(check_catalogue(catalogue))
    return Reading(catalogue, tuple(sorted(set(problems))))


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
        problems.append(
            Problem.warning(
                Mark(SETTINGS_FILE),
                f"There is no {SETTINGS_FILE} in this folder; the usual settings are used.",
                "Make one that holds at least a line title: …",
            )
        )
        return Settings()
    data = _bytes(folder, file, SETTINGS_FILE, problems)
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
            self.records("vocabulary", read_facet, place),
            key=lambda each: (each[0], each[1].id, each[1].mark),
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

    def records(
        self,
        name: str,
        read: Callable[[bytes, str, Seasons, Dates], Read[Record]],
        place: Path | None = None,
    ) -> Iterator[Record]:
        """Every record of a sub-folder, in the order of file names."""
        place = place or self.folder
        home = place / name
        if not home.exists() and not home.is_symlink():
            return
        if not home.is_dir() or not _inside(home, place):
            message = f"{name} must be a folder inside the catalogue folder."
            self.problems.append(
                Problem.error(Mark(name), message, "Links out of the folder are not followed.")
            )
            return
        for path in sorted(home.iterdir(), key=lambda each: each.name):
            if path.name.startswith(".") or path.name.endswith(("~", ".md", ".txt")):
                continue
            file = f"{name}/{path.name}"
            if problem := _bad_name(path, file):
                self.problems.append(problem)
                continue
            data = _bytes(place, path, file, self.problems)
            if data is None:
                continue
            record, faults = read(data, file, self.seasons, self.dates)
            self.problems.extend(faults)
            if record is not None:
                yield record


def _bad_name(path: Path, file: str) -> Problem | None:
    if path.suffix != ".yaml":
        return Problem.warning(
            Mark(_printable(file)),
            "This is not a record, so it is not read.",
            f"Records are files that end in .yaml, directly in the folder {file.partition('/')[0]}.",
        )
    stem = path.stem
    wanted = part("id")
    if wanted.pattern and wanted.pattern.fullmatch(stem) and len(stem) <= wanted.longest:
        return None
    return Problem.error(
        Mark(_printable(file)),
        "The name of this file cannot serve as an id.",
        "Use small letters a–z without accents, digits and single hyphens, at most 80 characters.",
    )


def _printable(name: str) -> str:
    """A file name that can be shown: what cannot be printed is escaped."""
    return "".join(
        each if each.isprintable() and not "\ud800" <= each <= "\udfff" else f"\\u{ord(each):04x}"
        for each in name
    )


def _inside(path: Path, folder: Path) -> bool:
    return path.resolve().is_relative_to(folder.resolve())


def _bytes(folder: Path, path: Path, file: str, problems: list[Problem]) -> bytes | None:
    """The bytes of a plain file inside the folder; anything else is complained of."""
    try:
        if not _inside(path, folder):
            message, hint = "This file is a link out of the folder.", "Put a copy here."
        elif not stat.S_ISREG(path.stat().st_mode):
            message, hint = "This is not an ordinary file.", "Take it out of here."
        else:
            with path.open("rb") as stream:
                return stream.read(MAX_BYTES + 1)
    except (OSError, RuntimeError) as error:
        reason = getattr(error, "strerror", None) or "it leads in a circle"
        message, hint = f"This file cannot be read: {reason}.", "Check that it is there and who may read it."
    problems.append(Problem.error(Mark(file), message, hint))
    return None
