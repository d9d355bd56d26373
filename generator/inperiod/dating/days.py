"""Days counted as plain integers in the proleptic Gregorian calendar, for any year.

Day 1 is 0001-01-01, as ``datetime.date.toordinal`` counts; year 0 is 1 BC (ISO 8601). No day here
is a time of day, and nothing knows about the Julian calendar: records give the date as it is printed.
"""

from __future__ import annotations

from functools import lru_cache


class Unreadable(ValueError):
    """What was written is no date that can be understood. The message is a plain sentence for the writer."""


class Undated(Unreadable):
    """The phrase says that there is no date ("n.d.", "undated"): nothing is wrong, nothing is known."""


MONTH_NAMES = (
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
)

_BEFORE_MONTH = (0, 0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334)
_LENGTHS = (0, 31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)


def is_leap(year: int) -> bool:
    return year % 4 == 0 and (year % 100 != 0 or year % 400 == 0)


def month_length(year: int, month: int) -> int:
    """Days in the month (1–12)."""
    return 29 if month == 2 and is_leap(year) else _LENGTHS[month]


def day_number(year: int, month: int = 1, day: int = 1) -> int:
    """The number of a day; raises ``Unreadable`` for a month or a day that does not exist."""
    if not 1 <= month <= 12:
        raise Unreadable(f"there is no month {month}")
    if not 1 <= day <= month_length(year, month):
        raise Unreadable(f"there is no {day} {MONTH_NAMES[month - 1]} in the year {year}")
    past = year - 1
    leap_day = 1 if month > 2 and is_leap(year) else 0
    return past * 365 + past // 4 - past // 100 + past // 400 + _BEFORE_MONTH[month] + leap_day + day


def date_of(number: int) -> tuple[int, int, int]:
    """Year, month and day of a day number: the reverse of ``day_number``."""
    cycles, rest = divmod(number - 1, 146097)  # 400 years
    centuries = min(rest // 36524, 3)
    rest -= centuries * 36524
    fours, rest = divmod(rest, 1461)
    years = min(rest // 365, 3)
    rest -= years * 365
    year = cycles * 400 + centuries * 100 + fours * 4 + years + 1
    month = min(rest // 29 + 1, 12)
    while rest < _BEFORE_MONTH[month] + (1 if month > 2 and is_leap(year) else 0):
        month -= 1
    return year, month, rest - _BEFORE_MONTH[month] - (1 if month > 2 and is_leap(year) else 0) + 1


def iso_year(year: int) -> str:
    """Four digits at least; a minus before BC years, a plus before years beyond 9999 (ISO 8601 expanded)."""
    sign = "-" if year < 0 else "+" if year > 9999 else ""
    return f"{sign}{abs(year):04d}"


def iso_day(number: int) -> str:
    """``YYYY-MM-DD``, with the expanded years of ``iso_year``."""
    year, month, day = date_of(number)
    return f"{iso_year(year)}-{month:02d}-{day:02d}"


@lru_cache(maxsize=16384)
def decimal_year(number: int) -> float:
    """The moment the day begins, as year + (days of that year past) / (days of that year: 365 or 366).

    So 1 January 1912 is 1912.0 exactly, 2 July 1913 is 1913 + 182/365, and the end of a span is
    ``decimal_year(latest + 1)`` where its end rather than its last day's beginning is meant.
    """
    year = date_of(number)[0]
    return year + (number - day_number(year)) / (366 if is_leap(year) else 365)


def months_later(number: int, months: int) -> int:
    """The same day so many calendar months later (negative: earlier), or that month's last day."""
    year, month, day = date_of(number)
    year, index = divmod(year * 12 + month - 1 + months, 12)
    return day_number(year, index + 1, min(day, month_length(year, index + 1)))
