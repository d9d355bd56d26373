"""The words that plates are found by."""

from __future__ import annotations

import re
import unicodedata

from inperiod.publishing.words import short_place
from inperiod.records.model import Plate, Source


def words_of(source: Source) -> dict[str, str]:
    """By plate: the words of its source's title, its place in it, its caption, translation and note, each
    once and in order. They are folded as the browser folds what is typed."""
    title = fold(source.title).split()
    found = {}
    for plate in source.plates:
        own = fold(f"{short_place(plate.locator)} {said_of(plate)}").split()
        found[plate.id] = " ".join(sorted({*title, *own}))
    return found


_LIGATURES = str.maketrans(
    {"æ": "ae", "œ": "oe", "ß": "ss", "ø": "o", "ł": "l", "đ": "d", "ð": "d", "þ": "th"}
)
_MARKS = re.compile("['’]")
_OTHER = re.compile("[\x00-/:-@\\[-`{-\x7f]+")


def fold(text: str) -> str:
    """Lower case, without diacritics, every other sign a space: the same as ``fold`` in ``base.js``."""
    plain = text.lower()
    if not plain.isascii():
        plain = unicodedata.normalize("NFD", plain)
        plain = "".join(sign for sign in plain if unicodedata.category(sign)[0] != "M").translate(_LIGATURES)
        plain = "".join(
            sign if sign in "'’" or unicodedata.category(sign)[0] in "LN" else " " for sign in plain
        )
    return " ".join(_OTHER.sub(" ", _MARKS.sub("", plain)).split())


def said_of(plate: Plate) -> str:
    """All that is written about a plate: caption, translation and note."""
    return " ".join(part.strip() for part in (plate.caption, plate.translation, plate.note) if part)
