"""A complaint about a record is a value; printing it is someone else's job."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from difflib import get_close_matches
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


def nearest(word: str, words: Iterable[str]) -> str | None:
    """The valid word most like ``word``, or None where nothing comes near."""
    matches = get_close_matches(word, list(words), n=1, cutoff=0.6)
    return matches[0] if matches else None
