"""The shipped scripts as they are sent: without comments, needless space and long names.

``site/shipped/`` holds a short form of every script of ``site/assets/``, made by the contributor who changed
it (``python tests/shipping.py``), so that building a site needs no tool for it. ``made-from.json`` there
says which text each was made from; a script that has since changed is sent as it was written.

Scripts that belong together are sent as one file, which is fetched once and compressed better.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterator, Mapping
from pathlib import Path

from inperiod.kept import kept

SHORT = "shipped"
MADE_FROM = "made-from.json"

JOINED = {
    "assets/weighing.js": ("evidence.js", "holdings.js", "years.js", "charts.js"),
    "assets/asking.js": ("dating.js", "question.js", "search.js"),
    "assets/answering.js": ("answer.js", "home.js"),
    "assets/listing.js": ("sifting.js", "plates.js"),
}
"""By its path in the site: the scripts that are sent as one, in their order."""


def is_shipped_script(file: Path) -> bool:
    """Whether the file is a script of this program; the user's own are copied as they stand."""
    return file.suffix == ".js" and file.is_relative_to(kept("site"))


def minified_scripts(copies: Mapping[str, Path]) -> Iterator[tuple[str, str]]:
    """Path and text of every script that is sent, made of the files that would be copied; a script of the
    user's own takes its place in what is sent as one."""
    texts = dict(_short_forms(copies))
    for path, names in JOINED.items():
        parts = [f"assets/{name}" for name in names]
        own = {part: copies[part].read_text(encoding="utf-8") for part in parts if part not in texts}
        yield path, "".join([own[part] if part in own else texts.pop(part) for part in parts])
    yield from texts.items()


def _short_forms(copies: Mapping[str, Path]) -> Iterator[tuple[str, str]]:
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
