"""The shipped scripts as they are sent: without comments and needless space."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from pathlib import Path

import rjsmin

from inperiod.kept import kept


def is_shipped_script(file: Path) -> bool:
    """Whether the file is a script of this program; the user's own are copied as they stand."""
    return file.suffix == ".js" and file.is_relative_to(kept("site"))


def minified_scripts(copies: Mapping[str, Path]) -> Iterator[tuple[str, str]]:
    """Path and text of every shipped script among the files that would be copied."""
    for path, file in copies.items():
        if is_shipped_script(file):
            yield path, rjsmin.jsmin(file.read_text(encoding="utf-8")).strip() + "\n"
