"""The program's own folder in a catalogue folder, ``.inperiod/``: what it made once and need not make again.

Nothing in it is a record, and all of it may be deleted at any time. It keeps itself out of version control.
"""

from __future__ import annotations

import os
from pathlib import Path

NAME = ".inperiod"
_IGNORE_ALL = "# Made by In Period to be quicker the next time; safe to delete.\n*\n"


def own_folder(catalogue_folder: Path, part: str) -> Path | None:
    """The folder ``.inperiod/<part>`` of a catalogue, made where it is missing; None where it cannot be
    written or is a link, so that nothing is kept and nothing outside is touched."""
    home = catalogue_folder / NAME
    folder = home / part
    try:
        if not catalogue_folder.is_dir() or home.is_symlink() or folder.is_symlink():
            return None
        folder.mkdir(parents=True, exist_ok=True)
        ignore = home / ".gitignore"
        if not ignore.exists():
            ignore.write_text(_IGNORE_ALL, encoding="utf-8", newline="\n")
    except OSError:
        return None
    return folder if os.access(folder, os.W_OK) else None
