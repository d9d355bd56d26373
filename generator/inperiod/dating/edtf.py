"""Extended Date/Time Format, levels 0 to 2, read into spans.

After the Library of Congress specification of 4 February 2019 (ISO 8601-2:2019). Decisions of our own
where it leaves the choice:

- *Seasons* (21–24) have no months in EDTF. Northern: 21 March–May, 22 June–August, 23 September–November,
  24 December–February of the next year; ``seasons="southern"`` turns them round (21 September–November, 22
  December–February of the next year, 23 March–May, 24 June–August). 25–28 are always northern, 29–32 always
  southern, 33–36 quarters, 37–39 thirds and 40–41 halves of a year.
- *Open* (``..``) and *unknown* (nothing) ends are both open ends of the span; an interval with neither end
  says nothing and is refused.
- *Sets* span from their first member's beginning to their last member's end.
- *Qualification* of a part counts for the whole date. What is widened later follows the finest part that
  is qualified and known: ``2004-06~`` by months, ``2004~-06`` and ``1984~-XX`` by years. Either end of an
  interval has its own.
- *Significant digits*: ``1950S2`` is some year of 1900–1999.
- A *time of day* is accepted and left aside; the day is the one written.
- Years beyond a million million are refused, so that every number is exact in a browser too.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from functools import lru_cache
from itertools import product
from typing import Literal

from inperiod.dating import lexicon
from inperiod.dating.days import MONTH_NAMES, Unreadable, day_number, month_length
from inperiod.dating.span import Margin, Span

Seasons = Literal["northern", "southern"]

MOST_YEARS = 10**12
LONGEST = 1000

_DATE = re.compile(
    r"(?P<q1>[?~%]?)(?P<year>-?[0-9X]{4}|Y-?(?:[0-9]{5,13}|[0-9]{1,13}E[0-9]{1,2}))(?:S(?P<figures>[1-9][0-9]?))?(?P<g1>[?~%]?)"
    r"(?:-(?P<q2>[?~%]?)(?P<month>[0-9X]{2})(?P<g2>[?~%]?)"
    r"(?:-(?P<q3>[?~%]?)(?P<day>[0-9X]{2})(?P<g3>[?~%]?))?)?"
)
_TIME = re.compile(
    r"(-?[0-9]{4}-[0-9]{2}-[0-9]{2})T([0-9]{2}):([0-9]{2}):([0-9]{2})(Z|[+-][0-9]{2}(?::?[0-9]{2})?)?"
)

# First month and number of months of each grouping below the year.
_NORTHERN = {21: (3, 3), 22: (6, 3), 23: (9, 3), 24: (12, 3)}
_SOUTHERN = {21: (9, 3), 22: (12, 3), 23: (3, 3), 24: (6, 3)}
_GROUPINGS = {
    **{code + 4: months for code, months in _NORTHERN.items()},
    **{code + 8: months for code, months in _SOUTHERN.items()},
    **{33 + each: (1 + 3 * each, 3) for each in range(4)},
    **{37 + each: (1 + 4 * each, 4) for each in range(3)},
    **{40 + each: (1 + 6 * each, 6) for each in range(2)},
}


@lru_cache(maxsize=8192)
def read_edtf(text: str, seasons: Seasons = "northern") -> Span:
    """The span of an EDTF date, interval or set; raises ``Unreadable`` with a plain sentence and, where there
    is one, the likely right way to write it."""
    if len(text) > LONGEST:
        raise Unreadable(f"a date of {len(text)} characters is too long to be one")
    if text[:1] in ("[", "{"):
        return _set(text, seasons)
    if "/" in text:
        return _interval(text, seasons)
    return _date(text, text, seasons)


def _interval(text: str, seasons: Seasons) -> Span:
    if text.count("/") != 1:
        raise Unreadable(_advice(text))
    first, last = text.split("/")
    if first in ("", "..") and last in ("", ".."):
        raise Unreadable(f"“{text}” has neither a beginning nor an end: give one of them")
    start = Span(None, None) if first in ("", "..") else _date(first, text, seasons)
    end = Span(None, None) if last in ("", "..") else _date(last, text, seasons)
    return _from_to(start, end, f"“{text}” ends before it begins: did you mean {last}/{first}?")


def _set(text: str, seasons: Seasons) -> Span:
    if text[-1] != {"[": "]", "{": "}"}[text[0]] or not text[1:-1]:
        raise Unreadable(f"“{text}” is not a set: write [1926,1927] for one of them, {{1926,1927}} for all")
    members = [_member(each, text, seasons) for each in text[1:-1].split(",")]
    starts = [(each.earliest, each.early_margin) for each in members]
    ends = [(each.latest, each.late_margin) for each in members]
    earliest = (
        None if any(day is None for day, _ in starts) else min(day for day, _ in starts if day is not None)
    )
    latest = None if any(day is None for day, _ in ends) else max(day for day, _ in ends if day is not None)
    return Span(
        earliest,
        latest,
        any(each.approximate for each in members),
        any(each.uncertain for each in members),
        _widest(margin for day, margin in starts if day == earliest),
        _widest(margin for day, margin in ends if day == latest),
    )


def _member(text: str, whole: str, seasons: Seasons) -> Span:
    if ".." not in text:
        return _date(text, whole, seasons)
    first, _, last = text.partition("..")
    if not first and not last:
        raise Unreadable(f"“{whole}” has a member with neither a beginning nor an end")
    start = _date(first, whole, seasons) if first else Span(None, None)
    end = _date(last, whole, seasons) if last else Span(None, None)
    return _from_to(start, end, f"“{text}” ends before it begins: did you mean {last}..{first}?")


def _from_to(start: Span, end: Span, complaint: str) -> Span:
    if start.earliest is not None and end.latest is not None and start.earliest > end.latest:
        raise Unreadable(complaint)
    return Span(
        start.earliest,
        end.latest,
        start.approximate or end.approximate,
        start.uncertain or end.uncertain,
        start.early_margin,
        end.late_margin,
    )


def _widest(margins: Iterable[Margin | None]) -> Margin | None:
    found = set(margins)
    return "years" if "years" in found else "months" if "months" in found else None


def _date(text: str, whole: str, seasons: Seasons) -> Span:
    found = _DATE.fullmatch(text)
    if not found:
        return _date_with_time(text, whole, seasons)
    year, month, day = found["year"], found["month"], found["day"]
    if (found["figures"] or year[0] == "Y") and (month or "X" in year):
        raise Unreadable(f"“{text}” mixes a year of its own kind with other parts: give the year alone")
    marks = "".join(found[name] or "" for name in ("q1", "g1", "q2", "g2", "q3", "g3"))
    margin = _margin(found) if marks else None
    low, high = _bounds(text, seasons, year, found["figures"], month, day)
    return Span(
        low,
        high,
        "~" in marks or "%" in marks,
        "?" in marks or "%" in marks,
        margin,
        margin,
    )


def _date_with_time(text: str, whole: str, seasons: Seasons) -> Span:
    found = _TIME.fullmatch(text)
    if not found:
        raise Unreadable(_advice(whole if len(whole) < 60 else text))
    if int(found[2]) > 24 or int(found[3]) > 59 or int(found[4]) > 60:
        raise Unreadable(f"“{text}” gives a time of day that does not exist")
    return _date(found[1], whole, seasons)


def _margin(found: re.Match[str]) -> Margin:
    """By what the finest qualified part asks to be widened. A mark to the right of a part reaches all parts
    to its left, so it is the finest of them that counts; a part of X alone adds no precision."""
    known_month = bool(found["month"]) and found["month"] != "XX"
    known_day = bool(found["day"]) and found["day"] != "XX"
    if known_day and (found["q3"] or found["g3"]):
        return "months"
    if known_month and (found["q2"] or found["g2"] or found["g3"]):
        return "months"
    return "years"


def _bounds(
    text: str, seasons: Seasons, year: str, figures: str | None, month: str | None, day: str | None
) -> tuple[int, int]:
    if figures or year[0] == "Y":
        first_year, last_year = _counted_years(text, year, int(figures or 0))
        return day_number(first_year), day_number(last_year, 12, 31)
    if year in ("-0000", "-000X", "-00XX", "-0XXX", "-XXXX"):
        raise Unreadable(f"“{text}”: the year before 0001 is 0000, without a minus")
    if month and "X" not in month and int(month) > 20:
        if day:
            raise Unreadable(f"“{text}” gives a day in a season: give a month, or leave the day out")
        return _grouping(text, int(month), next(_years(year, False)), next(_years(year, True)), seasons)
    months = _fits(month or "XX", 12)
    days = _fits(day or "XX", 31)
    if not months:
        raise Unreadable(_no_month(text, year, month or ""))
    if not days:
        raise Unreadable(f"“{text}”: there is no day {day} in any month")
    if not any(d <= month_length(4, m) for m in months for d in days):
        raise Unreadable(f"“{text}”: there is no {days[0]} {MONTH_NAMES[months[0] - 1]}")
    first = _first_that_exists(_years(year, False), months, days)
    last = _first_that_exists(_years(year, True), months[::-1], days[::-1])
    if first is None or last is None:
        raise Unreadable(
            f"“{text}”: {days[0]} {MONTH_NAMES[months[0] - 1]} is not in that year: it is no leap year"
        )
    return first, last


def _first_that_exists(years: Iterator[int], months: Sequence[int], days: Sequence[int]) -> int | None:
    for year in years:
        for month in months:
            for day in days:
                if day <= month_length(year, month):
                    return day_number(year, month, day)
    return None


def _years(pattern: str, falling: bool) -> Iterator[int]:
    """Every year that fits digits and X, in rising or falling order."""
    sign = -1 if pattern[0] == "-" else 1
    digits = "0123456789"[:: -1 if falling == (sign > 0) else 1]
    for each in product(*(digits if letter == "X" else letter for letter in pattern.lstrip("-"))):
        yield sign * int("".join(each))


@lru_cache(maxsize=512)
def _fits(pattern: str, most: int) -> tuple[int, ...]:
    """The months or days that fit two digits or X, from 1."""
    fitting = re.compile(pattern.replace("X", "[0-9]")).fullmatch
    return tuple(n for n in range(1, most + 1) if fitting(f"{n:02d}"))


def _counted_years(text: str, year: str, figures: int) -> tuple[int, int]:
    """Bounds of a ``Y`` year, with exponent, and of a year of so many significant digits."""
    number, _, exponent = year.lstrip("Y").partition("E")
    if "X" in number:
        raise Unreadable(f"“{text}” has both X and S: use one of them")
    size = abs(int(number)) * 10 ** int(exponent or 0)
    if size > MOST_YEARS:
        raise Unreadable(f"“{text}” is too far away in time to be counted")
    step = 10 ** max(len(str(size)) - figures, 0) if figures else 1
    low, high = size // step * step, size // step * step + step - 1
    return (-high, -low) if number[0] == "-" else (low, high)


def _grouping(text: str, code: int, first_year: int, last_year: int, seasons: Seasons) -> tuple[int, int]:
    months = (_SOUTHERN if seasons == "southern" else _NORTHERN).get(code) or _GROUPINGS.get(code)
    if not months:
        raise Unreadable(_no_month(text, text[:4], f"{code:02d}"))
    start, length = months
    carry, index = divmod(start + length - 2, 12)
    end_year = last_year + carry
    return day_number(first_year, start), day_number(end_year, index + 1, month_length(end_year, index + 1))


def _no_month(text: str, year: str, month: str) -> str:
    said = f"“{text}”: {month} is not a month or a season"
    if year.isdigit() and month.isdigit() and month > year[2:]:
        return f"{said}; for {year} to {year[:2]}{month} write {year}/{year[:2]}{month}"
    return f"{said}; months are 01 to 12, seasons 21 (spring) to 24 (winter)"


def _advice(text: str) -> str:
    for pattern, advice in lexicon.SLIPS:
        if found := re.fullmatch(pattern, text.strip(), re.IGNORECASE):
            return f"“{text}” is not an EDTF date: " + advice.format(*found.groups())
    if not text.strip():
        return "there is no date here"
    shown = text if len(text) <= 60 else text[:57] + "…"
    return (
        f"“{shown}” is not an EDTF date; write for example 1912, 1912-09, 1912-23 (autumn 1912),"
        " 1910~ (about 1910), 1910/1915 or ../1906"
    )
