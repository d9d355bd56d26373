"""What a command gives back to be printed, and how it says that it cannot."""

from __future__ import annotations

import sys
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from inperiod.records import Reading


@dataclass(frozen=True, slots=True)
class Reply:
    """``words`` for people, ``data`` for ``--json``; ``documents`` are printed one a line as they come.

    ``notes`` go to standard error, so that they never end up in a file of answers.
    """

    words: str = ""
    data: Any = None
    status: int = 0
    notes: tuple[str, ...] = ()
    documents: Iterable[Any] | None = None


class CannotDo(Exception):
    """The command ends here; the text says why. ``status`` is 1, or 2 where the command is at fault."""

    def __init__(self, text: str, status: int = 2) -> None:
        super().__init__(text)
        self.status = status


def find_folder(given: str | None) -> Path:
    """The catalogue folder: the one given, the current one or ``./catalogue``. Raises ``CannotDo``."""
    if given is not None:
        folder = Path(given)
        if not folder.is_dir():
            raise CannotDo(f"there is no folder {given}.")
        return folder
    for folder in (Path(), Path("catalogue")):
        if (folder / "inperiod.yaml").is_file():
            return folder
    raise CannotDo(
        "no catalogue here: neither this folder nor ./catalogue has an inperiod.yaml.\n"
        "Name the folder, or make one: inperiod new my-research"
    )


def read_folder(given: str | None) -> Reading:
    """The catalogue in a folder with everything that is wrong in it."""
    from inperiod.records.keeping import read_kept

    return read_kept(find_folder(given))


def progress(text: str) -> None:
    """One line on a terminal, written over by the next; nothing where output goes elsewhere."""
    if sys.stderr.isatty():
        sys.stderr.write(f"\r\033[K{text}" if text else "\r\033[K")
        sys.stderr.flush()


def counted(number: int, one: str, several: str | None = None) -> str:
    """``1 plate``, ``12 plates``, ``1,200 plates``."""
    return f"{number:,} {one if number == 1 else several or one + 's'}"
