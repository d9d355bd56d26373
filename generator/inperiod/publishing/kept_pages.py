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
from typing import Any

from inperiod.publishing.digests import digest
from inperiod.publishing.write import Standing
from inperiod.records.keeping import Store

PART = "site"
TARGETS = 12
"""For so many targets the last build is noted."""


@dataclass(frozen=True, slots=True)
class Kept:
    """What a build knows of the last one, and notes for the next.

    ``pieces``: by name a piece's key and its files as they stand. ``groups``: by source the key of all that
    belongs to it, and the names of those pieces. ``rows``: by widest garment type the digest of what decides
    which plates are near to its plates, ``near``: by plate the digest of that for it alone, then their keys.
    ``surveyed``: by garment and facet, with a space between, the digest of what was looked at, and the weight
    of the timeline; ``timelines``: the fields of those that were shown. ``whole`` is the digest of all that
    was built from, empty where it is not known; ``counts`` are those of the report.
    """

    pieces: Mapping[str, tuple[str, Sequence[Sequence[Any]]]] = field(default_factory=dict)
    groups: Mapping[str, tuple[str, Sequence[str]]] = field(default_factory=dict)
    rows: Mapping[str, str] = field(default_factory=dict)
    near: Mapping[str, Sequence[str]] = field(default_factory=dict)
    surveyed: Mapping[str, tuple[str, float]] = field(default_factory=dict)
    timelines: Sequence[Sequence[Any]] = ()
    whole: str = ""
    counts: Mapping[str, int] = field(default_factory=dict)

    def still_stands(self, whole: str, last: Mapping[str, Standing]) -> bool:
        """Whether the same would be built again, and the last site is there as it was written."""
        if not whole or whole != self.whole:
            return False
        made = {path: tuple(standing) for _, files in self.pieces.values() for path, *standing in files}
        return made == last

    def paths(self, name: str, key: str, last: Mapping[str, Standing]) -> list[str] | None:
        """The files of a piece, where it was made with that key and all of them stand as they were written;
        else None."""
        known = self.pieces.get(name)
        if known is None or known[0] != key:
            return None
        if any(last.get(path) != tuple(standing) for path, *standing in known[1]):
            return None
        return [path for path, *_ in known[1]]

    def of_group(self, source: str, key: str) -> Sequence[str]:
        """The names of the pieces that belong to a source, where it had that key; none where it had not."""
        known = self.groups.get(source)
        return known[1] if known and known[0] == key else ()


def read_kept(catalogue_folder: Path, target: Path, base: str) -> Kept:
    """The note of the last build into ``target`` with the same ``base`` (see ``made_from``); an empty one
    where there is none that can be used."""
    store = Store.of(catalogue_folder, PART)
    note = store.read(_name(target)) if store else None
    if note is None or note["base"] != base:
        return Kept()
    return Kept(**{each.name: note[each.name] for each in fields(Kept)})


def write_kept(catalogue_folder: Path, target: Path, base: str, kept: Kept) -> None:
    """Note what was made; nothing where that cannot be written."""
    store = Store.of(catalogue_folder, PART)
    if store:
        store.write(
            _name(target), {"base": base} | {each.name: getattr(kept, each.name) for each in fields(Kept)}
        )
        store.tidy(TARGETS)


def _name(target: Path) -> str:
    return digest(str(target.absolute())).hex()
