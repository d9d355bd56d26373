"""Spans and EDTF in words."""

from __future__ import annotations

from inperiod.dating.days import iso_day
from inperiod.dating.span import Span


def in_words(date: Span | str) -> str:
    """A span or an EDTF text as people say it."""
    if isinstance(date, str):
        return date
    ends = [iso_day(each) if each is not None else "" for each in (date.earliest, date.latest)]
    return " to ".join(ends)
