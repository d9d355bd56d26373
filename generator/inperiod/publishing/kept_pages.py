"""What the last build into a target made, noted in the catalogue's own folder, so that the next one makes
again only what has changed.

It is a note of keys (see ``made_from``) and of how files stood when they were written; the files themselves
are those of the last site. A note that is missing, broken, foreign or of another program is passed over (see
``records.keeping``): then everything is made. Where the folder cannot be written nothing is noted.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, fields
from pathlib import Path
from typing import Any, TypeVar

from inperiod.publishing.digests import digest
from inperiod.publishing.write import Standing
from inperiod.records.keeping import Store

PART = "site"
TARGETS = 12
"""For so many targets the last build is noted."""


@dataclass(frozen=True, slots=True)
class Kept:
    """What a build knows of the last one, and notes for the next.

    ``pieces``: by name a piece's key and its files as they stand. ``groups``: by name of a group of pieces
    the digest of what it is made from by itself, its key, and the names of the pieces. ``lists`` is the
    digest of what evidence and lists knew, ``timelines`` the fields of those that were shown. ``whole`` is
    the digest of all that was built from, empty where it is not known; ``counts`` are those of the report.
    """

    pieces: Mapping[str, tuple[str, Sequence[Sequence[Any]]]] = field(default_factory=dict)
    groups: Mapping[str, tuple[str, str, Sequence[str]]] = field(default_factory=dict)
    lists: str = ""
    timelines: Sequence[Sequence[Any]] = ()
    whole: str = ""
    counts: Mapping[str, int] = field(default_factory=dict)

    def still_stands(self, whole: str, last: Mapping[str, Standing]) -> bool:
        """Whether the same would be built again, and the last site is there as it was written."""
        if not whole or whole != self.whole:
            return False
        made = {path: tuple(standing) for _, files in self.pieces.values() for path, *standing in files}
        return made == last

    def altered(self, last: Mapping[str, Standing]) -> frozenset[str]:
        """The files that do not stand in the last site as they were written."""
        return frozenset(
            path
            for _, files in self.pieces.values()
            for path, *standing in files
            if last.get(path) != tuple(standing)
        )


@dataclass(frozen=True, slots=True)
class Worked:
    """What the last build worked out of what evidence and lists knew; it is as good as long as they know the
    same, and of use for what is the same where they do not.

    ``rows``: by widest garment type the digest of what decides which plates are near to its plates,
    ``grounds``: by plate the same for it alone. ``surveyed``: by garment and facet, with a space between, the
    digest of what was looked at, and the weight of the timeline.
    """

    rows: Mapping[str, str] = field(default_factory=dict)
    grounds: Mapping[str, str] = field(default_factory=dict)
    surveyed: Mapping[str, tuple[str, float]] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Nearest:
    """By plate the keys of those near to it, of a catalogue of whose ``lists`` that is the digest."""

    lists: str = ""
    plates: Mapping[str, Sequence[str]] = field(default_factory=dict)


Note = TypeVar("Note", Kept, Worked, Nearest)


@dataclass(frozen=True, slots=True)
class Notes:
    """The notes of builds into ``target`` with the same ``base`` (see ``made_from``)."""

    catalogue_folder: Path
    target: Path
    base: str

    def read(self, kind: type[Note]) -> Note:
        """A note of the last build; an empty one where there is none that can be used."""
        store = Store.of(self.catalogue_folder, PART)
        note = store.read(self._name(kind)) if store else None
        if note is None or note["base"] != self.base:
            return kind()
        return kind(**{each.name: note[each.name] for each in fields(kind)})

    def write(self, note: Kept | Worked | Nearest) -> None:
        """Note what was made; nothing where that cannot be written."""
        store = Store.of(self.catalogue_folder, PART)
        if store:
            values = {each.name: getattr(note, each.name) for each in fields(note)}
            store.write(self._name(type(note)), {"base": self.base} | values)
            store.tidy(3 * TARGETS)

    def _name(self, kind: type) -> str:
        return f"{digest(str(self.target.absolute())).hex()}-{kind.__name__.lower()}"
