"""Files onto the disk: built aside, then put in place in one step."""

from __future__ import annotations

import contextlib
import ctypes
import os
import shutil
import sys
import time
from collections.abc import Callable, Collection, Iterable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from inperiod.publishing.spare import set_by, take_spare

MARKER = ".inperiod-site"
_OF_THE_SYSTEM = frozenset({".DS_Store", "Thumbs.db", "desktop.ini"})
_FIRST_LINE = "In Period wrote this folder and replaces it whole. The files it wrote:"
_KEPT_FOLDERS = ("vocabulary", "sources", "boards", "images", "site", ".inperiod")

PATIENCE = 120.0
"""Seconds to wait for another build beside this one."""

Standing = tuple[int, int, int]
"""A file as it stands: its size, when it was last written (nanoseconds), its number on the disk. Whoever
writes into a file, or puts another in its place, changes one of them."""


class WillNotWrite(Exception):
    """The target holds something that is not ours, or stands where it must not; nothing was touched."""


def refuse_place(target: Path, catalogue_folder: Path) -> None:
    """Raise ``WillNotWrite`` where a site must not stand: on or among the records, or in a file's place."""
    place, records = target.resolve(), catalogue_folder.resolve()
    if place == records or place in records.parents:
        raise WillNotWrite(f"{target} holds the records themselves: name another folder for the site")
    if any(place == records / part or records / part in place.parents for part in _KEPT_FOLDERS):
        raise WillNotWrite(f"{target} is among the records: name another folder for the site")
    if target.is_symlink() or (target.exists() and not target.is_dir()):
        raise WillNotWrite(f"{target} is not a folder: name another one for the site")


def refuse_foreign(target: Path, catalogue_folder: Path) -> Mapping[str, Standing]:
    """Raise ``WillNotWrite`` unless ``target`` is absent, empty, or a site this program wrote and nobody
    added to. Every file of that site as it stands, by its path; links are left out."""
    refuse_place(target, catalogue_folder)
    present = standing(target)
    if not present:
        return {}
    marker = target / MARKER
    if not marker.is_file() or not marker.read_text(encoding="utf-8").startswith(_FIRST_LINE):
        raise WillNotWrite(
            f"{target} is not empty and was not made by In Period: name another folder, or empty this "
            "one yourself"
        )
    ours = set(marker.read_text(encoding="utf-8").splitlines()[1:]) | {MARKER}
    foreign = sorted(present.keys() - ours)
    if foreign:
        raise WillNotWrite(
            f"{target} holds files that In Period did not write ({', '.join(foreign[:3])}"
            f"{' …' if len(foreign) > 3 else ''}): move them; files of your own for the site belong in "
            f"{catalogue_folder / 'site' / 'static'}"
        )
    return {path: each for path, each in present.items() if each is not None and path != MARKER}


def standing(folder: Path) -> dict[str, Standing | None]:
    """Every file under a folder as it stands, by its path; None for what is no ordinary file. Links are not
    followed, and what the system itself drops into folders is passed over."""
    return {
        path: _as_it_stands(entry.stat(follow_symlinks=False))
        if entry.is_file(follow_symlinks=False)
        else None
        for path, entry in _entries(folder)
    }


def numbers(folder: Path) -> dict[str, int | None]:
    """Of the same files their numbers on the disk alone, which the folder itself tells."""
    return {
        path: entry.inode() if entry.is_file(follow_symlinks=False) else None
        for path, entry in _entries(folder)
    }


def _entries(folder: Path) -> Iterator[tuple[str, os.DirEntry[str]]]:
    todo = [("", str(folder))] if folder.is_dir() else []
    while todo:
        at, place = todo.pop()
        with os.scandir(place) as entries:
            for entry in entries:
                path = f"{at}{entry.name}"
                if entry.is_dir(follow_symlinks=False):
                    todo.append((f"{path}/", entry.path))
                elif entry.name not in _OF_THE_SYSTEM:
                    yield path, entry


def _as_it_stands(seen: os.stat_result) -> Standing:
    return seen.st_size, seen.st_mtime_ns, seen.st_ino


@dataclass(frozen=True, slots=True)
class Written:
    """How many files the site has, and their bytes in all."""

    files: int
    size: int


Filed = tuple[str, Standing]
"""A file of the new site, by its path, as it stands."""


class Aside:
    """The folder beside the target in which a site is made. Several processes may write into it at once.

    ``last`` says how the files of the last site stand, ``present`` which are in the folder already, by their
    numbers on the disk: one that has the number of the last site's is that very file. What is to be the same
    is not written again but given a second name, where the file system can: nothing here ever writes into a
    file that is there already.
    """

    def __init__(
        self,
        folder: Path,
        target: Path,
        last: Mapping[str, Standing],
        present: Mapping[str, int | None],
    ) -> None:
        self._folder = str(folder)
        self._target = str(target)
        self._last = last
        self._present = present
        self._made = {""}

    def put(self, path: str, content: str | bytes) -> Filed:
        """A file with that text, or with those bytes. Raises ``WillNotWrite`` for a path that leaves the
        site."""
        data = content if isinstance(content, bytes) else content.encode("utf-8")
        if self._is_last(path, data):
            return self.keep(path)
        place = self._place(path)
        Path(place).write_bytes(data)
        return path, self._stands(place)

    def copy(self, path: str, origin: Path) -> Filed:
        """A copy of a file."""
        last = self._last.get(path)
        if last and last[0] == origin.stat().st_size and self._is_last(path, origin.read_bytes()):
            return self.keep(path)
        place = self._place(path)
        shutil.copyfile(origin, place)
        return path, self._stands(place)

    def keep(self, path: str) -> Filed:
        """The file of the last site as it stands."""
        return next(self.keep_all([path]))

    def keep_all(self, paths: Iterable[str]) -> Iterator[Filed]:
        """The same of many."""
        present, last = self._present, self._last
        for path in paths:
            stands = last[path]
            yield path, stands if present.get(path) == stands[2] else self._kept(path, stands)

    def _kept(self, path: str, stands: Standing) -> Standing:
        place, origin = self._place(path), f"{self._target}/{path}"
        try:
            os.link(origin, place, follow_symlinks=False)
        except (OSError, NotImplementedError):
            shutil.copy2(origin, place, follow_symlinks=False)
            return self._stands(place)
        return stands

    def clear(self, wanted: Collection[str]) -> None:
        """Take away what was in the folder and is not wanted, with folders that are left empty."""
        for path in self._present.keys() - wanted:
            place = f"{self._folder}/{path}"
            if os.path.isfile(place):  # and neither gone already nor a folder by now
                os.unlink(place)
            with contextlib.suppress(OSError):  # not empty
                os.removedirs(os.path.dirname(place))

    def _is_last(self, path: str, data: bytes) -> bool:
        last = self._last.get(path)
        if last is None or last[0] != len(data):
            return False
        return Path(f"{self._target}/{path}").read_bytes() == data

    @staticmethod
    def _stands(place: str) -> Standing:
        return _as_it_stands(os.lstat(place))

    def _place(self, path: str) -> str:
        """Where a file is to be written: in a folder that is there, and under a name that is not."""
        folder, _, name = path.rpartition("/")
        _refuse_leaving(path, [name] if folder in self._made else path.split("/"))
        if self._present:
            self._make_way(path)
        if folder not in self._made:
            os.makedirs(f"{self._folder}/{folder}", exist_ok=True)
            self._made.add(folder)
        return f"{self._folder}/{path}"

    def _make_way(self, path: str) -> None:
        """Take away what was in the folder where a new file is to stand: one of its name, one where it needs
        a folder, a folder where it needs a file."""
        steps = path.split("/")
        for length in range(1, len(steps) + 1):
            if (other := "/".join(steps[:length])) in self._present:
                with contextlib.suppress(OSError):  # gone already, or a folder by now
                    os.unlink(f"{self._folder}/{other}")
        shutil.rmtree(f"{self._folder}/{path}", ignore_errors=True)


def _refuse_leaving(path: str, steps: Iterable[str]) -> None:
    if any(step in ("", ".", "..") or "\\" in step or ":" in step for step in steps):
        raise WillNotWrite(f"{path!r} would leave the folder of the site")


def replace_site(target: Path, texts: Iterable[tuple[str, str]], copies: Mapping[str, Path]) -> Written:
    """Write the whole site beside ``target``, then swap it in.

    ``texts`` are paths from the root of the site with their contents, taken one at a time so that a large
    site need not be held; ``copies`` maps such paths to files. A failure before the swap, in making a text
    as well, leaves the last site as it was; the swap itself is one step where the system offers one. Raises
    ``WillNotWrite`` for a path that leaves the site, and for two that some file systems take for one.
    """

    def fill(aside: Aside) -> Iterator[Filed]:
        for path, text in texts:
            yield aside.put(path, text)
        for path, origin in copies.items():
            yield aside.copy(path, origin)

    with alone(target):
        return swap_in(target, {}, fill)


def swap_in(
    target: Path,
    last: Mapping[str, Standing],
    fill: Callable[[Aside], Iterable[Filed]],
    spare: Path | None = None,
) -> Written:
    """As ``replace_site``, with the files that ``fill`` puts aside and gives back one by one. ``last`` are
    the files of the last site as they stand. ``spare`` is where the site before it is set by, for the next
    one to be made from. To be called while ``alone``."""
    new, old = _beside(target, "new"), _beside(target, "old")
    _recover(target, old)
    _remove(new)
    try:
        aside = Aside(new, target, last, _begun(new, spare))
        written = _whole(new, aside, fill(aside))
        _swap(new, target, old)
        set_by(old if old.is_dir() else new, spare, MARKER)
    finally:
        _remove(new)
        _remove(old)
    return written


def _begun(new: Path, spare: Path | None) -> Mapping[str, int | None]:
    """The folder of a new site, with what the spare holds or empty: its files by their numbers. One that
    holds links and the like is not ours."""
    if take_spare(spare, new):
        present = numbers(new)
        if None not in present.values():
            return present
        _remove(new)
    new.mkdir()
    return {}


@contextmanager
def alone(target: Path) -> Iterator[None]:
    """While no other build writes beside ``target``: waits for one that does, for ``PATIENCE`` seconds.

    The folder that holds the target is locked, so that nothing is left lying about and the lock goes with the
    last process that holds it. Raises ``WillNotWrite`` where patience ends; a file system without locks has
    none.
    """
    target.parent.mkdir(parents=True, exist_ok=True)
    folder = os.open(target.parent, os.O_RDONLY)
    try:
        until = time.monotonic() + PATIENCE
        while not _locked(folder):
            if time.monotonic() > until:
                raise WillNotWrite(f"another build is at work beside {target}: try again when it has ended")
            time.sleep(0.05)
        yield
    finally:
        os.close(folder)


def _locked(folder: int) -> bool:
    """Whether this process has the lock of an open folder; True as well where there are none."""
    try:
        import fcntl

        fcntl.flock(folder, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except BlockingIOError:
        return False
    except (ImportError, OSError):
        return True
    return True


def _whole(folder: Path, aside: Aside, files: Iterable[Filed]) -> Written:
    """Take stock of what was put aside, take away what was not, and write it down in the marker."""
    names: dict[str, str] = {}
    size = 0
    for path, (length, _, _) in files:
        form = path.casefold()  # some file systems take two names that share it for one
        if other := names.get(form):
            raise WillNotWrite(
                f"two pages would have the address {path}: rename one of the records"
                if other == path
                else f"{path} differs from {other} only in large and small letters: rename one of the records"
            )
        names[form] = path
        size += length
    aside.clear(set(names.values()))
    lines = [_FIRST_LINE, *sorted(names.values())]
    (folder / MARKER).write_text("\n".join(lines) + "\n", encoding="utf-8", newline="\n")
    return Written(len(names), size)


def _beside(target: Path, word: str) -> Path:
    return target.parent / f".{target.name}.{word}"


def _recover(target: Path, old: Path) -> None:
    """A swap cut off in its middle left the last site under its second name: put it back."""
    if old.is_dir() and not target.exists():
        os.replace(old, target)
    _remove(old)


def _remove(folder: Path) -> None:
    if folder.is_dir() and not folder.is_symlink():
        shutil.rmtree(folder)


def _swap(aside: Path, target: Path, old: Path) -> None:
    if not target.exists():
        os.replace(aside, target)
        return
    if _exchanged(aside, target):
        return
    os.replace(target, old)
    try:
        os.replace(aside, target)
    except OSError:
        os.replace(old, target)
        raise


def _exchanged(one: Path, other: Path) -> bool:
    """Exchange two folders' names in one step, where Linux and the file system can; False where they
    cannot."""
    if not sys.platform.startswith("linux"):
        return False
    exchange, here = 2, -100  # RENAME_EXCHANGE and AT_FDCWD of <linux/fs.h> and <fcntl.h>
    try:
        rename = ctypes.CDLL(None).renameat2
    except (AttributeError, OSError):
        return False
    return bool(rename(here, os.fsencode(one), here, os.fsencode(other), exchange) == 0)
