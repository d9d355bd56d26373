"""Which files of a folder hold records, their bytes, and how a file is written. Nothing outside the folder is
ever opened."""

from __future__ import annotations

import contextlib
import os
import stat
from collections.abc import Iterator
from pathlib import Path

from inperiod.records.model import Mark
from inperiod.records.places import FOLDERS, MAX_BYTES, SETTINGS_FILE
from inperiod.records.problems import Problem
from inperiod.records.shapes import part


def record_files(folder: Path, problems: list[Problem]) -> Iterator[tuple[str, bytes]]:
    """Every file of a catalogue folder that should hold records: its name inside the folder, its bytes."""
    if (folder / SETTINGS_FILE).exists():
        data = bytes_of(folder, folder / SETTINGS_FILE, SETTINGS_FILE, problems)
        if data is not None:
            yield SETTINGS_FILE, data
    for name in FOLDERS:
        yield from files(folder, name, problems)


def files(place: Path, name: str, problems: list[Problem]) -> Iterator[tuple[str, bytes]]:
    """The files of a sub-folder, in the order of their names, with what is in them; what is no record is
    complained of."""
    for file, path in paths(place, name, problems):
        data = bytes_of(place, path, file, problems)
        if data is not None:
            yield file, data


def paths(place: Path, name: str, problems: list[Problem]) -> Iterator[tuple[str, Path]]:
    """The same files by their names inside the folder, with where they are."""
    home = place / name
    if not home.exists() and not home.is_symlink():
        return
    if not home.is_dir() or not _inside(home, place):
        message = f"{name} must be a folder inside the catalogue folder."
        problems.append(Problem.error(Mark(name), message, "Links out of the folder are not followed."))
        return
    for path in sorted(home.iterdir(), key=lambda each: each.name):
        if path.name.startswith(".") or path.name.endswith(("~", ".md", ".txt")):
            continue
        file = f"{name}/{path.name}"
        if problem := _bad_name(path, file):
            problems.append(problem)
        else:
            yield file, path


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


def bytes_of(folder: Path, path: Path, file: str, problems: list[Problem]) -> bytes | None:
    """The bytes of a plain file that lies in the folder, or of one inside it that a link there leads to;
    anything else is complained of."""
    try:
        seen = path.lstat()
        is_link = stat.S_ISLNK(seen.st_mode)
        if is_link and not _inside(path, folder):
            message, hint = "This file is a link out of the folder.", "Put a copy here."
        elif not stat.S_ISREG((path.stat() if is_link else seen).st_mode):
            message, hint = "This is not an ordinary file.", "Take it out of here."
        else:
            with path.open("rb") as stream:
                return stream.read(MAX_BYTES + 1)
    except (OSError, RuntimeError) as error:
        reason = getattr(error, "strerror", None) or "it leads in a circle"
        message, hint = f"This file cannot be read: {reason}.", "Check that it is there and who may read it."
    problems.append(Problem.error(Mark(file), message, hint))
    return None


def write_whole(path: Path, data: bytes) -> None:
    """Write a file so that it is there whole or not at all; one that is replaced keeps its mode. Raises
    ``OSError``."""
    path.parent.mkdir(parents=True, exist_ok=True)
    aside = path.with_name(f".{path.name}.{os.getpid()}.new")
    try:
        aside.write_bytes(data)
        if path.exists():
            os.chmod(aside, path.stat().st_mode & 0o777)
        os.replace(aside, path)
    except BaseException:
        with contextlib.suppress(OSError):
            aside.unlink()
        raise
