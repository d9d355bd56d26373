"""What the last build into a target made, noted in the catalogue's own folder, so that the next one makes
again only what has changed.

It is a note of keys (see ``made_from``) and of how files stood when they were written; the files themselves
are those of the last site. A note that is missing, broken, foreign or of another program is passed over: then
everything is made. Where the folder cannot be written nothing is noted.
"""

from __future__ import annotations

import contextlib
import json
import os
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from inperiod.own_folder import own_folder
from inperiod.publishing.digests import digest
from inperiod.publishing.write import Filed, Standing

FORMAT = 1
PART = "site"


@dataclass(frozen=True, slots=True)
class Kept:
    """``pieces``: by name a piece's key and its files; ``near``: by plate the digest of what decides which
    plates are near to it, and their keys."""

    pieces: Mapping[str, tuple[str, tuple[Filed, ...]]] = field(default_factory=dict)
    near: Mapping[str, tuple[str, tuple[str, ...]]] = field(default_factory=dict)

    def paths(self, name: str, key: str, last: Mapping[str, Standing]) -> list[str] | None:
        """The files of a piece, where it was made with that key and all of them stand as they were written;
        else None."""
        known = self.pieces.get(name)
        if known is None or known[0] != key:
            return None
        if any(last.get(path) != standing for path, standing in known[1]):
            return None
        return [path for path, _ in known[1]]


def read_kept(catalogue_folder: Path, target: Path, base: str) -> Kept:
    """The note of the last build into ``target`` with the same ``base`` (see ``made_from``); an empty one
    where there is none that can be used."""
    folder = own_folder(catalogue_folder, PART)
    if folder is None:
        return Kept()
    try:
        return _from_json(json.loads((folder / _name(target)).read_bytes()), base)
    except (OSError, ValueError, TypeError, KeyError, RecursionError):
        return Kept()


def write_kept(
    catalogue_folder: Path,
    target: Path,
    base: str,
    pieces: Iterable[tuple[str, str, Iterable[Filed]]],
    near: Mapping[str, tuple[str, tuple[str, ...]]],
) -> None:
    """Note what was made; nothing where that cannot be written."""
    folder = own_folder(catalogue_folder, PART)
    if folder is None:
        return
    note = {
        "format": FORMAT,
        "base": base,
        "pieces": {
            name: [key, [[path, *standing] for path, standing in files]] for name, key, files in pieces
        },
        "near": {plate: [grounds, *keys] for plate, (grounds, keys) in near.items()},
    }
    new = folder / f"{_name(target)}.new"
    with contextlib.suppress(OSError):
        new.write_text(json.dumps(note, separators=(",", ":")), encoding="utf-8")
        os.replace(new, folder / _name(target))


def _name(target: Path) -> str:
    return f"{digest(str(target.absolute())).hex()}.json"


def _from_json(note: Any, base: str) -> Kept:
    """The note, every value of the type it should be. Raises for any other."""
    if note["format"] != FORMAT or note["base"] != base:
        raise ValueError("the note of another program, or of other templates")
    pieces = {}
    for name, (key, files) in note["pieces"].items():
        pieces[name] = (
            str(key),
            tuple([(str(path), (int(size), int(time), int(number))) for path, size, time, number in files]),
        )
    return Kept(
        pieces,
        {plate: (str(grounds), tuple(map(str, keys))) for plate, (grounds, *keys) in note["near"].items()},
    )
