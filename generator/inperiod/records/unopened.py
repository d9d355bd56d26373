"""Sources that were read before, each opened when it is asked for."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Any, TypeVar

from inperiod.records.model import Board, Catalogue, Plate, Source
from inperiod.records.problems import Problem

Record = TypeVar("Record")


@dataclass(frozen=True, slots=True)
class Entry:
    """What is known of a source file without opening what it holds: its name, the name of the note that is
    kept of it, the ids of its source and of the plates (None and none where it holds no sound source),
    whether the source is entangled (see ``model.is_entangled``), and what is wrong with it by itself."""

    file: str
    note: str
    source: str | None
    plates: tuple[str, ...]
    entangled: bool
    problems: tuple[Problem, ...]

    def to_json(self) -> list[Any]:
        problems = [problem_to_json(each) for each in self.problems]
        return [self.file, self.note, self.source, self.plates, self.entangled, problems]

    @staticmethod
    def from_json(value: list[Any]) -> Entry:
        file, note, source, plates, entangled, problems = value
        return Entry(file, note, source, tuple(plates), entangled, tuple(Problem(*each) for each in problems))


def problem_to_json(each: Problem) -> list[Any]:
    return [each.file, each.line, each.column, each.severity, each.message, each.hint]


def unopened(
    rules: Catalogue, entries: Iterable[Entry], boards: Mapping[str, Board], read: Callable[[Entry], Source]
) -> Catalogue:
    """The catalogue of what those entries stand for, with the settings and the vocabulary of ``rules``."""
    known = {each.source: each for each in entries if each.source is not None}
    sources = _Sources(known, read)
    made = Catalogue(rules.folder, rules.settings, rules.vocabulary, sources, boards)
    # In the place of what the catalogue would work out, which would open every source to ask for one.
    vars(made)["plates"] = _Plates(sources, known)
    vars(made)["entangled"] = _Changed(sources, {}, [key for key, each in known.items() if each.entangled])
    return made


def with_others(
    catalogue: Catalogue,
    changed: Mapping[str, Source | None],
    boards: Mapping[str, Board],
    only_regions_of: frozenset[str],
) -> Catalogue:
    """The same catalogue with other boards, and with other sources in the place of some (None: with none);
    the rest as they are, open or not."""
    names = [key for key in catalogue.sources if changed.get(key, catalogue) is not None]
    sources = _Changed(catalogue.sources, changed, names)
    made = replace(catalogue, sources=sources, boards=boards, only_regions_of=only_regions_of)
    others = {each.key: each for source in changed.values() if source for each in source.plates}
    keys = [key for key in catalogue.plates if key in others or key.partition("/")[0] not in changed]
    vars(made)["plates"] = _Changed(catalogue.plates, others, keys)
    vars(made)["entangled"] = _Changed(
        catalogue.sources, changed, [key for key in catalogue.entangled if key in sources]
    )
    return made


class _Named(Mapping[str, Record]):
    """A mapping whose names are ``_known``, and what they stand for is not at hand yet."""

    _known: Mapping[str, Any]

    def __contains__(self, name: object) -> bool:
        return name in self._known

    def __iter__(self) -> Iterator[str]:
        return iter(self._known)

    def __len__(self) -> int:
        return len(self._known)


class _Sources(_Named[Source]):
    def __init__(self, entries: Mapping[str, Entry], read: Callable[[Entry], Source]) -> None:
        self._known: Mapping[str, Entry] = entries
        self._read = read
        self._open: dict[str, Source] = {}

    def __getitem__(self, name: str) -> Source:
        if name not in self._open:
            self._open[name] = self._read(self._known[name])
        return self._open[name]


class _Changed(_Named[Record]):
    """Those records of a mapping that have the names, some of them in other shape."""

    def __init__(
        self, records: Mapping[str, Record], others: Mapping[str, Record | None], names: Iterable[str]
    ) -> None:
        self._records = records
        self._others = others
        self._known = dict.fromkeys(names)

    def __getitem__(self, name: str) -> Record:
        if name not in self._known:
            raise KeyError(name)
        return self._others.get(name) or self._records[name]


class _Plates(_Named[Plate]):
    """The plates of sources that are opened when they are asked for."""

    def __init__(self, sources: Mapping[str, Source], entries: Mapping[str, Entry]) -> None:
        self._sources = sources
        self._known: Mapping[str, tuple[str, int]] = {
            f"{name}/{plate}": (name, at)
            for name, entry in entries.items()
            for at, plate in enumerate(entry.plates)
        }

    def __getitem__(self, key: str) -> Plate:
        name, at = self._known[key]
        return self._sources[name].plates[at]
