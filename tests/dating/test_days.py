"""Days as plain integers, against the standard library's calendar and worked dates."""

from __future__ import annotations

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inperiod.dating import Unreadable, day_number, decimal_year, iso_day
from inperiod.dating.days import date_of, month_length, months_later

ANY_DAY = st.integers(-(10**9), 10**9)


@given(st.dates())
def test_days_are_numbered_as_the_standard_library_numbers_them(day: date) -> None:
    number = day_number(day.year, day.month, day.day)
    assert number == day.toordinal()
    assert date_of(number) == (day.year, day.month, day.day)
    assert iso_day(number) == day.isoformat()


@given(ANY_DAY)
def test_every_day_number_comes_back_from_its_date(number: int) -> None:
    assert day_number(*date_of(number)) == number


@given(ANY_DAY)
def test_the_calendar_repeats_every_four_hundred_years(number: int) -> None:
    year, month, day = date_of(number)
    assert date_of(number + 146_097) == (year + 400, month, day)


def test_the_year_before_1_is_0_and_is_a_leap_year() -> None:
    # ISO 8601: year 0000 is 1 BC; the proleptic Gregorian calendar makes it a leap year.
    assert day_number(0, 12, 31) == 0
    assert month_length(0, 2) == 29
    assert iso_day(day_number(-43, 3, 15)) == "-0043-03-15"


@pytest.mark.parametrize(("month", "day"), [(0, 1), (13, 1), (1, 0), (4, 31), (2, 29)])
def test_a_day_that_does_not_exist_is_refused(month: int, day: int) -> None:
    with pytest.raises(Unreadable):
        day_number(1926, month, day)


def test_a_decimal_year_is_the_share_of_its_own_year_gone_by_when_the_day_begins() -> None:
    assert decimal_year(day_number(1912)) == 1912.0
    assert decimal_year(day_number(1912, 7, 1)) == 1912 + 182 / 366  # 31+29+31+30+31+30 days of a leap year
    assert decimal_year(day_number(1913, 7, 2)) == 1913 + 182 / 365
    assert decimal_year(day_number(1913, 12, 31) + 1) == 1914.0


@given(ANY_DAY)
def test_decimal_years_rise_with_the_days_and_keep_to_their_year(number: int) -> None:
    year = date_of(number)[0]
    assert year <= decimal_year(number) < year + 1
    assert decimal_year(number) < decimal_year(number + 1)


def test_a_month_later_keeps_the_day_or_takes_the_last_one() -> None:
    assert iso_day(months_later(day_number(1926, 1, 15), 1)) == "1926-02-15"
    assert iso_day(months_later(day_number(1926, 1, 31), 1)) == "1926-02-28"
    assert iso_day(months_later(day_number(1924, 2, 29), 12)) == "1925-02-28"
    assert iso_day(months_later(day_number(1926, 3, 31), -4)) == "1925-11-30"
