"""What an import wrote last, so that a file someone has edited since is recognised and left alone."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Literal

from inperiod.records.files import write_whole

LEDGER_FILE = ".inperiod-import.json"

Fate = Literal["new", "changed", "same", "kept"]
"""What becomes of a file: written first, written anew, as it was, or left because a hand has been at it."""


@dataclass(slots=True)
class Ledger:
    """The files an import wrote into a folder, each with a digest of what it wrote."""

    folder: Path
    written: dict[str, str] = field(default_factory=dict)

    @staticmethod
    def of(folder: Path) -> Ledger:
        """The ledger of a folder; empty where none can be read: then every file counts as edited."""
        try:
            held = json.loads((folder / LEDGER_FILE).read_text(encoding="utf-8"))
            files = held["written"]
            known = {str(name): str(digest) for name, digest in files.items()}
        except (OSError, ValueError, KeyError, TypeError, AttributeError):
            known = {}
        return Ledger(folder, known)

    def fate(self, name: str, text: str) -> Fate:
        """What writing ``text`` to the file would do."""
        try:
            present = (self.folder / name).read_bytes()
        except FileNotFoundError:
            return "new"
        if present == text.encode("utf-8"):
            return "same"
        return "changed" if _digest(present) == self.written.get(name) else "kept"

    def write(self, name: str, text: str) -> None:
        write_whole(self.folder / name, text.encode("utf-8"))
        self.remember(name, text)

    def remember(self, name: str, text: str) -> None:
        self.written[name] = _digest(text.encode("utf-8"))

    def save(self) -> None:
        """Nothing is written where nothing changed."""
        held: Mapping[str, object] = {
            "about": "What inperiod import wrote here; it leaves files alone that differ from this.",
            "written": dict(sorted(self.written.items())),
        }
        data = (json.dumps(held, indent=1, ensure_ascii=False) + "\n").encode("utf-8")
        path = self.folder / LEDGER_FILE
        if not path.is_file() or path.read_bytes() != data:
            write_whole(path, data)


def _digest(data: bytes) -> str:
    return hashlib.sha256(data).hexdigest()
