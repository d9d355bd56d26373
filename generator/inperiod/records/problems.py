"""A complaint about a record is a value; printing it is someone else's job."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from difflib import get_close_matches
from functools import lru_cache
from typing import Literal

from inperiod.records.model import Mark

Severity = Literal["error", "warning"]


@dataclass(frozen=True, slots=True, order=True)
class Problem:
    """One complaint: where, how grave, what is wrong in plain words, and what would put it right."""

    file: str
    line: int
    column: int
    severity: Severity
    message: str
    hint: str = ""

    @staticmethod
    def error(mark: Mark, message: str, hint: str = "") -> Problem:
        return Problem(mark.file, mark.line, mark.column, "error", message, hint)

    @staticmethod
    def warning(mark: Mark, message: str, hint: str = "") -> Problem:
        return Problem(mark.file, mark.line, mark.column, "warning", message, hint)


def nearest(word: str, words: Iterable[str], likeness: float = 0.6) -> str | None:
    """The valid word most like ``word``, or None where nothing comes near.

    ``likeness`` lies between 0 (anything) and 1 (the same): the share of letters two words have in common.
    """
    return _nearest(word[:100], tuple(words), likeness)


@lru_cache(maxsize=4096)
def _nearest(word: str, words: tuple[str, ...], likeness: float) -> str | None:
    """Remembered, because one slip is often made a hundred times."""
    matches = get_close_matches(word, words, n=1, cutoff=likeness)
    return matches[0] if matches else None
