"""The user's own files for the site: templates, pages, assets, and what is copied as it stands."""

from __future__ import annotations

import os
from pathlib import Path

from inperiod.publishing.write import WillNotWrite


def refuse_links(catalogue_folder: Path) -> None:
    """Raise ``WillNotWrite`` where something below ``site`` leads out of the catalogue folder: a change from
    a stranger could otherwise publish any file of the machine that builds."""
    own = catalogue_folder / "site"
    home = catalogue_folder.resolve()
    found = [own] if own.is_symlink() else []
    for folder, folders, files in os.walk(own):
        found += (path for name in (*folders, *files) if (path := Path(folder, name)).is_symlink())
    for path in sorted(found):
        try:
            inside = path.resolve().is_relative_to(home)
        except (OSError, RuntimeError):  # the latter of links that lead in a circle
            inside = False
        if not inside:
            raise WillNotWrite(f"{path} is a link out of the folder of the catalogue: put a copy there")
