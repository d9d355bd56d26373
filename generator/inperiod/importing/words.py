"""Words in a text column that stand for a term."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Sequence
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Words:
    """Finds any of ``any_of`` in a text, unless one of ``unless`` is there too."""

    any_of: re.Pattern[str]
    unless: re.Pattern[str] | None = None

    def found_in(self, text: str) -> str | None:
        """The words as they stand in the text, or None."""
        bare = _bare(text)
        hit = self.any_of.search(bare)
        if hit is None or (self.unless is not None and self.unless.search(bare)):
            return None
        return hit[0]


def words(any_of: Sequence[str], unless: Sequence[str] = ()) -> Words:
    """A finder of whole words or phrases: any case, with or without accents, singular or plural at the end.

    A space stands for any run of spaces or a hyphen. ``velvet`` finds "Velvets" but not "velveteen".
    """
    return Words(_pattern(any_of), _pattern(unless) if unless else None)


def _pattern(phrases: Sequence[str]) -> re.Pattern[str]:
    return re.compile(rf"(?<!\w)(?:{'|'.join(_one(each) for each in phrases)})(?!\w)")


def _one(phrase: str) -> str:
    parts = [re.escape(each) for each in re.split(r"[\s-]+", _bare(phrase).strip())]
    last = parts[-1]
    if re.search(r"[^aeiou\W]y$", last):
        parts[-1] = f"{last[:-1]}(?:y|ies)"
    elif last[-1:].isalpha():
        parts[-1] = f"{last}(?:e?s)?"
    return r"[\s-]+".join(parts)


def _bare(text: str) -> str:
    decomposed = unicodedata.normalize("NFKD", text.casefold())
    return "".join(each for each in decomposed if not unicodedata.combining(each))
