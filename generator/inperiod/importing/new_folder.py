"""A new research folder to start from."""

from __future__ import annotations

import shutil
from pathlib import Path

from inperiod.importing.writing import scalar
from inperiod.kept import kept

STARTER = Path(__file__).parent / "starter"
_WITH_NAME = frozenset({"inperiod.yaml", "README.md"})


class FolderInUse(ValueError):
    """There is something at that place already; nothing was touched."""


def new_folder(path: Path) -> tuple[str, ...]:
    """Make a working research folder at ``path``; the files written, relative to it.

    It holds settings, a copy of the vocabulary, one example source with comments and a README. A folder that
    is there already must be empty. Raises ``FolderInUse``, and ``OSError`` where it cannot be written.
    """
    if path.is_file() or (path.is_dir() and any(path.iterdir())):
        raise FolderInUse(f"{path} is there already and not empty: give another name.")
    name = path.resolve().name
    for origin in sorted(STARTER.rglob("*")):
        target = path / origin.relative_to(STARTER)
        if origin.is_dir():
            target.mkdir(parents=True, exist_ok=True)
        elif origin.name in _WITH_NAME:
            _write_named(origin, target, name)
        elif origin.suffix == ".yaml":
            target.parent.mkdir(parents=True, exist_ok=True)
            shutil.copyfile(origin, target)
    (path / "images").mkdir(exist_ok=True)
    shutil.copytree(kept("vocabulary"), path / "vocabulary")
    return tuple(sorted(each.relative_to(path).as_posix() for each in path.rglob("*") if each.is_file()))


def _write_named(origin: Path, target: Path, name: str) -> None:
    title = scalar(" ".join(name.replace("-", " ").replace("_", " ").split()).capitalize() or "My research")
    shown = "".join(each if each.isprintable() and each not in "`|" else " " for each in name)
    text = origin.read_text(encoding="utf-8").replace("@TITLE@", title).replace("@NAME@", shown)
    target.parent.mkdir(parents=True, exist_ok=True)
    target.write_text(text, encoding="utf-8", newline="\n")
