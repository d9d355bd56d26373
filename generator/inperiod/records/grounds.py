"""What a catalogue folder is read from, as a digest: where that is the same, so is the reading."""

from __future__ import annotations

import os
import stat
import sys
from hashlib import blake2b
from pathlib import Path
from typing import Any

from inperiod.kept import kept
from inperiod.records.places import MAX_BYTES, SETTINGS_FILE

Standing = tuple[int, int, int]


def digest_of(data: bytes) -> str:
    """A digest of what is in a file."""
    return blake2b(data, digest_size=16).hexdigest()


class Grounds:
    """Looks at the files of one folder, as often as it is asked. A file that stands as it did when it was
    looked at last (its size, when it was written, its number on the disk) is not read again."""

    def __init__(self, folder: Path) -> None:
        self._folder = folder
        self._known: dict[str, tuple[Standing, str]] = {}

    def of_all(self) -> str | None:
        """A digest of all that reading and checking look at; None where some of it cannot be read."""
        rules = self.of_rules()
        if rules is None:
            return None
        found = blake2b(rules.encode(), digest_size=16)
        try:
            for name in ("sources", "boards"):
                self._add(found, f"{self._folder}/{name}", name, b"")
            add_standing(found, self._folder / "images")
        except (OSError, RuntimeError):  # the latter of links that lead in a circle
            return None
        return found.hexdigest()

    def of_rules(self) -> str | None:
        """A digest of what the settings and the vocabulary are read from; None where it cannot be read."""
        found = blake2b(program(), digest_size=16)
        try:
            self._add(found, f"{self._folder}/{SETTINGS_FILE}", SETTINGS_FILE, b"")
            own = self._folder / "vocabulary"
            self._add(found, str(own), "own", b"")
            if not own.is_dir():
                self._add(found, str(kept("vocabulary")), "kept", b"")
        except (OSError, RuntimeError):
            return None
        return found.hexdigest()

    def of_file(self, name: str) -> str | None:
        """The digest of a file of the folder as it was looked at last; None of one that was not, and of
        links."""
        place = f"{self._folder}/{name}"
        return None if os.path.islink(place) else self._known.get(place, (None, None))[1]

    def _add(self, found: Any, place: str, name: str, before: bytes) -> None:
        """A file by its name and bytes, a folder by those of its entries, a link also by where it leads."""
        label = before + b"/" + os.fsencode(name)
        try:
            seen = os.lstat(place)
            if stat.S_ISLNK(seen.st_mode):
                found.update(label + b"\0link\0" + os.fsencode(Path(place).resolve()))
                seen = os.stat(place)
        except (FileNotFoundError, NotADirectoryError):
            return
        if stat.S_ISDIR(seen.st_mode):
            if before:  # nothing below is read
                found.update(label + b"\0folder\0")
                return
            for entry in sorted(os.listdir(place)):
                self._add(found, f"{place}/{entry}", entry, label)
        elif not stat.S_ISREG(seen.st_mode):
            found.update(label + b"\0other\0")
        else:
            found.update(label + b"\0file\0" + self._digest(place, seen).encode())

    def _digest(self, place: str, seen: os.stat_result) -> str:
        standing = (seen.st_size, seen.st_mtime_ns, seen.st_ino)
        known = self._known.get(place)
        if known and known[0] == standing:
            return known[1]
        with open(place, "rb") as stream:
            found = digest_of(stream.read(MAX_BYTES + 1))
        self._known[place] = (standing, found)
        return found


def add_standing(found: Any, folder: Path) -> None:
    """Add to a digest the files of a folder at any depth, by name, size and the time they were last
    written."""
    if not folder.is_dir():
        return
    for place, folders, names in os.walk(folder):
        folders.sort()
        for name in sorted(each for each in names if not each.endswith(".pyc")):
            seen = os.stat(os.path.join(place, name), follow_symlinks=True)
            found.update(
                os.fsencode(os.path.join(place, name)) + b"\0%d\0%d" % (seen.st_size, seen.st_mtime_ns)
            )


def program() -> bytes:
    """What tells this program from another, or from itself before a change."""
    from inperiod import __version__

    found = blake2b(f"{__version__} {sys.version}".encode(), digest_size=16)
    for folder in (Path(__file__).parents[1] / "dating", Path(__file__).parent, kept("schemas")):
        add_standing(found, folder)
    return found.digest()
