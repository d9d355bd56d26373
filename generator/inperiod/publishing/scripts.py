"""The shipped scripts as they are sent: without comments, needless space and long names.

``site/shipped/`` holds a short form of every script of ``site/assets/``, made by the contributor who changed
it (``python tests/shipping.py``), so that building a site needs no tool for it. ``made-from.json`` there
says which text each was made from; a script that has since changed is sent as it was written.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterator, Mapping
from pathlib import Path

from inperiod.kept import kept

SHORT = "shipped"
MADE_FROM = "made-from.json"


def is_shipped_script(file: Path) -> bool:
    """Whether the file is a script of this program; the user's own are copied as they stand."""
    return file.suffix == ".js" and file.is_relative_to(kept("site"))


def minified_scripts(copies: Mapping[str, Path]) -> Iterator[tuple[str, str]]:
    """Path and text of every shipped script among the files that would be copied."""
    folder = kept("site") / SHORT
    made_from = json.loads((folder / MADE_FROM).read_text(encoding="utf-8"))
    for path, file in copies.items():
        if is_shipped_script(file):
            short = made_from.get(file.name) == fingerprint(file)
            yield path, (folder / file.name if short else file).read_text(encoding="utf-8")


def fingerprint(script: Path) -> str:
    """What a short form is known to be made from: the SHA-256 of the script's text, lines ending in one
    line feed however the checkout ends them."""
    return hashlib.sha256(script.read_text(encoding="utf-8").encode()).hexdigest()
