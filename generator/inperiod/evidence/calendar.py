"""Decimal years of middles, and windows in words: the same few lines exist in the browser's file.

Day numbers as in ``dating``; halves of days occur here, as middles of spans.
"""

from __future__ import annotations

from math import floor

from inperiod.dating.days import MONTH_NAMES, date_of, day_number


def year_of(day: float) -> int:
    """The calendar year a day number falls in."""
    return date_of(floor(day))[0]


def decimal_year(day: float) -> float:
    """A day number, halves allowed, as a decimal year: 1 January is the year itself."""
    year = year_of(day)
    start = day_number(year)
    return year + (day - start) / (day_number(year + 1) - start)


def day_in_words(day: int) -> str:
    """``14 June 1926``."""
    year, month, date = date_of(day)
    return f"{date} {MONTH_NAMES[month - 1]} {year}"


def window_in_words(earliest: int | None, latest: int | None) -> str:
    """A window as said: ``1926``, ``1924–1928``, ``the 1920s``, ``June 1926``, ``the time from 1920``."""
    if earliest is None and latest is None:
        return "all time"
    if earliest is None:
        assert latest is not None
        return f"the time up to {_edge(latest, latest + 1)}"
    if latest is None:
        return f"the time from {_edge(earliest, earliest)}"
    first, last = year_of(earliest), year_of(latest)
    if earliest == day_number(first) and latest == day_number(last + 1) - 1:
        if first == last:
            return str(first)
        if last == first + 9 and first % 10 == 0:
            return f"the {first}s"
        return f"{first}–{last}"
    if earliest == latest:
        return day_in_words(earliest)
    begins, ends = date_of(earliest), date_of(latest)
    if begins[2] == 1 and date_of(latest + 1)[2] == 1:
        from_month, to_month = MONTH_NAMES[begins[1] - 1], MONTH_NAMES[ends[1] - 1]
        if begins[:2] == ends[:2]:
            return f"{from_month} {begins[0]}"
        if first == last:
            return f"{from_month}–{to_month} {first}"
        return f"{from_month} {first} – {to_month} {last}"
    return f"{day_in_words(earliest)} – {day_in_words(latest)}"


def _edge(day: int, turn: int) -> str:
    """The year alone where ``turn`` is a new year's day, else the day in full."""
    return str(year_of(day)) if turn == day_number(year_of(turn)) else day_in_words(day)
