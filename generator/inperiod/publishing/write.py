"""Files onto the disk: built aside, then put in place in one step."""

from __future__ import annotations

import ctypes
import os
import shutil
import sys
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path

MARKER = ".inperiod-site"
_OF_THE_SYSTEM = frozenset({".DS_Store", "Thumbs.db", "desktop.ini"})
_FIRST_LINE = "In Period wrote this folder and replaces it whole. The files it wrote:"


class WillNotWrite(Exception):
    """The target holds something that is not ours, or stands where it must not; nothing was touched."""


def refuse_foreign(target: Path, catalogue_folder: Path) -> None:
    """Raise ``WillNotWrite`` unless ``target`` is absent, empty, or a site this program wrote and nobody
    added to."""
    place, records = target.resolve(), catalogue_folder.resolve()
    if place == records or place in records.parents:
        raise WillNotWrite(f"{target} holds the records themselves: name another folder for the site")
    if any(place == records / part or records / part in place.parents for part in _KEPT_FOLDERS):
        raise WillNotWrite(f"{target} is among the records: name another folder for the site")
    if target.is_symlink() or (target.exists() and not target.is_dir()):
        raise WillNotWrite(f"{target} is not a folder: name another one for the site")
    if not target.exists():
        return
    present = _files(target)
    if not present:
        return
    marker = target / MARKER
    if not marker.is_file() or not marker.read_text(encoding="utf-8").startswith(_FIRST_LINE):
        raise WillNotWrite(
            f"{target} is not empty and was not made by In Period: name another folder, or empty this "
            "one yourself"
        )
    ours = set(marker.read_text(encoding="utf-8").splitlines()[1:]) | {MARKER}
    foreign = sorted(present - ours)
    if foreign:
        raise WillNotWrite(
            f"{target} holds files that In Period did not write ({', '.join(foreign[:3])}"
            f"{' …' if len(foreign) > 3 else ''}): move them; files of your own for the site belong in "
            f"{catalogue_folder / 'site' / 'static'}"
        )


_KEPT_FOLDERS = ("vocabulary", "sources", "boards", "images", "site")


def _files(folder: Path) -> set[str]:
    return {
        file.relative_to(folder).as_posix()
        for file in folder.rglob("*")
        if (file.is_symlink() or not file.is_dir()) and file.name not in _OF_THE_SYSTEM
    }


@dataclass(frozen=True, slots=True)
class Written:
    """How many files were written, and their bytes in all."""

    files: int
    size: int


def replace_site(target: Path, texts: Iterable[tuple[str, str]], copies: Mapping[str, Path]) -> Written:
    """Write the whole site beside ``target``, then swap it in.

    ``texts`` are paths from the root of the site with their contents, taken one at a time so that a large
    site need not be held; ``copies`` maps such paths to files. A failure before the swap, in making a text
    as well, leaves the last site as it was; the swap itself is one step where the system offers one. Raises
    ``WillNotWrite`` for a path that leaves the site, and for two that some file systems take for one.
    """
    target.parent.mkdir(parents=True, exist_ok=True)
    aside, old = _beside(target, "new"), _beside(target, "old")
    _recover(target, old)
    _remove(aside)
    try:
        written = _write(aside, texts, copies)
        _swap(aside, target, old)
    finally:
        _remove(aside)
        _remove(old)
    return written


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


def _write(folder: Path, texts: Iterable[tuple[str, str]], copies: Mapping[str, Path]) -> Written:
    names: dict[str, str] = {}
    size = 0
    folder.mkdir()
    for path, text in texts:
        file = _inside(folder, path, names)
        size += file.write_bytes(text.encode("utf-8"))
    for path, origin in copies.items():
        file = _inside(folder, path, names)
        shutil.copyfile(origin, file)
        size += file.stat().st_size
    lines = [_FIRST_LINE, *sorted(names.values())]
    (folder / MARKER).write_text("\n".join(lines) + "\n", encoding="utf-8", newline="\n")
    return Written(len(names), size)


def _inside(folder: Path, path: str, names: dict[str, str]) -> Path:
    """The file of that path, its folders made; the path joins ``names`` by its form without large letters."""
    parts = path.split("/")
    if any(part in ("", ".", "..") or "\\" in part or ":" in part for part in parts):
        raise WillNotWrite(f"{path!r} would leave the folder of the site")
    other = names.get(path.casefold())
    if other is not None:
        raise WillNotWrite(
            f"two pages would have the address {path}: rename one of the records"
            if other == path
            else f"{path} differs from {other} only in large and small letters: rename one of the records"
        )
    names[path.casefold()] = path
    file = folder.joinpath(*parts)
    file.parent.mkdir(parents=True, exist_ok=True)
    return file


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
