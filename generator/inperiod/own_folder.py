"""The program's own folder in a catalogue folder, ``.inperiod/``: what it made once and need not make again.

Nothing in it is a record, and all of it may be deleted at any time. It keeps itself out of version control,
and by the Cache Directory Tagging Specification (https://bford.info/cachedir/, from memory) out of backups.
"""

from __future__ import annotations

import os
from contextlib import suppress
from pathlib import Path

NAME = ".inperiod"
_OWN_FILES = {
    ".gitignore": "# Made by In Period to be quicker the next time; safe to delete.\n*\n",
    "CACHEDIR.TAG": "Signature: 8a477f597d28d172789f06886806bc55\n# Made by In Period; safe to delete.\n",
}


def own_folder(catalogue_folder: Path, part: str) -> Path | None:
    """The folder ``.inperiod/<part>`` of a catalogue, made where it is missing; None where it cannot be
    written or is a link, so that nothing is kept and nothing outside is touched."""
    home = catalogue_folder / NAME
    folder = home / part
    try:
        if not catalogue_folder.is_dir() or home.is_symlink() or folder.is_symlink():
            return None
        folder.mkdir(parents=True, exist_ok=True)
        for name, text in _OWN_FILES.items():
            with suppress(FileExistsError), open(home / name, "x", encoding="utf-8", newline="\n") as file:
                file.write(text)
    except OSError:
        return None
    return folder if os.access(folder, os.W_OK) else None
