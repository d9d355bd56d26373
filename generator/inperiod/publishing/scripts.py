"""The shipped scripts as they are sent: without comments and needless space.

The minifier takes a template inside another's ``${}`` for the end of the outer one, and a regular expression
right after ``=>`` for a division: the shipped scripts write neither, and a test holds what is sent to the
syntax tree of what was written."""

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
