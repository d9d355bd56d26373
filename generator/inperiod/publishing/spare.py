"""The site before the last one, set by: the next one is made from it.

Its files are for the greatest part the very files of the last site, under second names. So a build puts aside
only what differs, and does not give ten thousand files new names for the sake of one. It is never relied
upon: a file counts as there only where it is the last site's own file (see ``write.Standing``).
"""

from __future__ import annotations

import contextlib
import os
import shutil
from pathlib import Path

from inperiod.own_folder import own_folder
from inperiod.publishing.digests import digest

PART = "spare"
MOST = 3
"""For so many targets one is set by."""


def place_for_spare(catalogue_folder: Path, target: Path) -> Path | None:
    """Where the spare of that target lies; None where nothing can be kept."""
    home = own_folder(catalogue_folder, PART)
    return home / digest(str(target.absolute())).hex() if home else None


def take_spare(spare: Path | None, aside: Path) -> bool:
    """Move the spare to ``aside``, which is not there yet; False where there is none that can be moved."""
    if spare is None or spare.is_symlink() or not spare.is_dir():
        return False
    try:
        os.replace(spare, aside)
    except OSError:  # on another disk, for one
        return False
    return True


def set_by(site: Path, spare: Path | None, marker: str) -> None:
    """Make a site that is no longer shown the spare; where that cannot be, it stays where it is. ``marker``
    is the name of one of its files."""
    if spare is None or not _serves(site / marker):
        return
    with contextlib.suppress(OSError):
        os.replace(site, spare)
        os.utime(spare)
        others = sorted(spare.parent.iterdir(), key=lambda each: each.stat().st_mtime_ns)
        for other in others[:-MOST]:
            shutil.rmtree(other)


def _serves(file: Path) -> bool:
    """Whether the file system can give a file a second name, so that a spare takes no room, and tells names
    apart that differ in large and small letters, so that an old file is never taken for a new one."""
    other, shouted = file.with_name(f"{file.name}.link"), file.with_name(file.name.upper())
    try:
        os.link(file, other, follow_symlinks=False)
        os.unlink(other)
    except (OSError, NotImplementedError):
        return False
    return not shouted.exists()
