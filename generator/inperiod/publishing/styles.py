"""One stylesheet from many small ones."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path


def stylesheet(folders: Iterable[Path]) -> str:
    """``*.css`` of the folders in order of name, joined. A later folder's file replaces an earlier one's
    of the same name, so a user's folder can change a single part of the look."""
    parts: dict[str, Path] = {}
    for folder in folders:
        if folder.is_dir():
            parts |= {file.name: file for file in folder.glob("*.css")}
    return "\n".join(parts[name].read_text(encoding="utf-8").strip() + "\n" for name in sorted(parts))
