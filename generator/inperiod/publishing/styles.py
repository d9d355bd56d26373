"""One stylesheet from many small ones."""

from __future__ import annotations

import re
from collections.abc import Iterable
from pathlib import Path

_KEPT_OR_NOT = re.compile(
    r"""("(?:[^"\\\n]|\\.)*"?|'(?:[^'\\\n]|\\.)*'?|url\([^)]*\)?)|/\*.*?(?:\*/|\Z)|(?<=\n)\s+""", re.DOTALL
)
"""What stands for itself, as a group; and comments and the space that lines begin with."""


def stylesheet(folders: Iterable[Path]) -> str:
    """``*.css`` of the folders in order of name, joined. A later folder's file replaces an earlier one's
    of the same name, so a user's folder can change a single part of the look. Without comments and needless
    space, which a reader would have to fetch."""
    parts: dict[str, Path] = {}
    for folder in folders:
        if folder.is_dir():
            parts |= {file.name: file for file in folder.glob("*.css")}
    return "".join(short(parts[name].read_text(encoding="utf-8")) for name in sorted(parts))


def short(style: str) -> str:
    """The same style without its comments and the space its lines begin with."""
    return _KEPT_OR_NOT.sub(lambda found: found[1] or "", style).strip() + "\n"
