"""What EDTF means here: spans, margins, decisions of our own, and what is said about bad input."""

from __future__ import annotations

import json
from dataclasses import asdict
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inperiod.dating import Seasons, Span, Unreadable, iso_day, read_edtf, widened


def ends(text: str, seasons: Seasons = "northern") -> tuple[str, str]:
    return days(read_edtf(text, seasons))


def days(span: Span) -> tuple[str, str]:
    first, last = (".." if each is None else iso_day(each) for each in (span.earliest, span.latest))
    return first, last


# Northern months: the project's own, EDTF fixes none.
@pytest.mark.parametrize(
    ("text", "first", "last"),
    [
        ("1912-21", "1912-03-01", "1912-05-31"),
        ("1912-22", "1912-06-01", "1912-08-31"),
        ("1912-23", "1912-09-01", "1912-11-30"),
        ("1912-24", "1912-12-01", "1913-02-28"),
        ("1911-24", "1911-12-01", "1912-02-29"),
    ],
)
def test_seasons_are_the_northern_ones_unless_a_setting_says_otherwise(
    text: str, first: str, last: str
) -> None:
    assert ends(text) == (first, last)


@pytest.mark.parametrize(
    ("text", "first", "last"),
    [
        ("1912-21", "1912-09-01", "1912-11-30"),
        ("1912-22", "1912-12-01", "1913-02-28"),
        ("1912-23", "1912-03-01", "1912-05-31"),
        ("1912-24", "1912-06-01", "1912-08-31"),
    ],
)
def test_the_southern_setting_turns_the_seasons_round(text: str, first: str, last: str) -> None:
    assert ends(text, "southern") == (first, last)


def test_seasons_named_for_a_hemisphere_do_not_follow_the_setting() -> None:
    for northern, southern in ((25, 29), (26, 30), (27, 31), (28, 32)):
        assert ends(f"1912-{northern}", "southern") == ends(f"1912-{northern - 4}")
        assert ends(f"1912-{southern}") == ends(f"1912-{southern - 8}", "southern")


def test_quarters_thirds_and_halves_cut_the_year_without_gap_or_overlap() -> None:
    for codes in ((33, 34, 35, 36), (37, 38, 39), (40, 41)):
        spans = [read_edtf(f"1912-{code}") for code in codes]
        assert days(spans[0])[0] == "1912-01-01"
        assert days(spans[-1])[1] == "1912-12-31"
        for one, next_one in pairwise(spans):
            assert one.latest is not None
            assert next_one.earliest == one.latest + 1


def test_autumn_and_winter_are_one_interval() -> None:
    assert ends("1912-23/1912-24") == ("1912-09-01", "1913-02-28")


def test_unknown_digits_reach_from_the_lowest_to_the_highest_day_that_exists() -> None:
    assert ends("192X-02-29") == ("1920-02-29", "1928-02-29")
    assert ends("1926-02-2X") == ("1926-02-20", "1926-02-28")
    assert ends("-01XX") == ("-0199-01-01", "-0100-12-31")
    assert ends("1926-XX-31") == ("1926-01-31", "1926-12-31")


# ---- margins -----------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("text", "first", "last"),
    [
        ("1910", "1910-01-01", "1910-12-31"),
        ("1910~", "1905-01-01", "1915-12-31"),
        ("1910?", "1905-01-01", "1915-12-31"),
        ("1910%", "1905-01-01", "1915-12-31"),
        ("192X~", "1915-01-01", "1934-12-31"),
        ("18XX?", "1795-01-01", "1904-12-31"),
        ("1910~/1915", "1905-01-01", "1915-12-31"),
        ("1910/1915~", "1910-01-01", "1920-12-31"),
        ("1910~/1915~", "1905-01-01", "1920-12-31"),
        ("1910~/..", "1905-01-01", ".."),
        ("../1910~", "..", "1915-12-31"),
        ("1926-05~", "1926-02-01", "1926-08-31"),
        ("1912-23?", "1912-06-01", "1913-02-28"),
        ("1926-05-31~", "1926-02-28", "1926-08-31"),
        ("2004~-06", "1999-06-01", "2009-06-30"),
        ("2004-~06", "2004-03-01", "2004-09-30"),
        ("2004~-06-11", "1999-06-11", "2009-06-11"),
        ("2004-06-~11", "2004-03-11", "2004-09-11"),
        ("1984?-XX", "1979-01-01", "1989-12-31"),
        ("1984-XX~", "1979-01-01", "1989-12-31"),
        ("[1910~,1920]", "1905-01-01", "1920-12-31"),
        ("{1910,1920-05~}", "1910-01-01", "1920-08-31"),
    ],
)
def test_a_circa_widens_the_side_and_by_the_unit_it_qualifies(text: str, first: str, last: str) -> None:
    assert days(widened(read_edtf(text))) == (first, last)


def test_the_years_of_a_circa_are_a_setting_and_its_months_are_not() -> None:
    assert days(widened(read_edtf("1910~"), 10)) == ("1900-01-01", "1920-12-31")
    assert days(widened(read_edtf("1910~"), 0)) == ("1910-01-01", "1910-12-31")
    assert days(widened(read_edtf("1926-05~"), 10)) == ("1926-02-01", "1926-08-31")


def test_widening_twice_widens_once() -> None:
    once = widened(read_edtf("1910~"))
    assert widened(once) == once


def test_negative_circa_years_are_refused() -> None:
    with pytest.raises(ValueError, match="negative"):
        widened(read_edtf("1910~"), -1)


def test_the_29th_of_february_widens_to_the_28th_where_there_is_no_other() -> None:
    assert days(widened(read_edtf("~1924-02-29"))) == ("1919-02-28", "1929-02-28")


# ---- bad input ---------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("1912-13", "for 1912 to 1913 write 1912/1913"),
        ("1912-1913", "for 1912 to 1913 write 1912/1913"),
        ("1912/13", "for 1912 to 1913 write 1912/1913"),
        ("1926-5", "write 1926-05"),
        ("1926-00", "months are 01 to 12"),
        ("1926-02-30", "there is no 30 February"),
        ("1926-02-29", "no leap year"),
        ("1926-05-32", "no day 32"),
        ("1926-23-01", "a day in a season"),
        ("1915/1910", "did you mean 1910/1915"),
        ("[1915..1910]", "did you mean 1910..1915"),
        ("1920s", "write 192X"),
        ("192x", "write 192X"),
        ("c. 1910", "write 1910~"),
        ("before 1910", "write ../1910"),
        ("912", "four digits"),
        ("/", "neither a beginning nor an end"),
        ("../..", "neither a beginning nor an end"),
        ("[]", "not a set"),
        ("[1910", "not a set"),
        ("-0000", "without a minus"),
        ("Y99999999999999999", "not an EDTF date"),
        ("Y9E99", "too far away"),
        ("1985-04-12T25:00:00", "does not exist"),
        ("", "no date"),
        ("  ", "no date"),
        ("1910/1915/1920", "not an EDTF date"),
        ("١٩١٢", "not an EDTF date"),
        ("x" * 5000, "too long"),
    ],
)
def test_what_is_no_edtf_is_refused_in_words_that_help(text: str, said: str) -> None:
    with pytest.raises(Unreadable, match=said.replace(".", r"\.")):
        read_edtf(text)


@given(st.text(max_size=40) | st.text("0123456789X-/.~?%[]{},YES", max_size=25))
def test_any_text_is_read_or_refused(text: str) -> None:
    try:
        span = read_edtf(text)
    except Unreadable:
        return
    assert span.earliest is not None or span.latest is not None


# ---- properties --------------------------------------------------------------------------------------------

PARTS = st.sampled_from(["1912", "192X", "18XX", "1926-05", "1912-23", "1912-24", "1926-05-31", "1985-XX-XX"])
MARKED = st.builds("{}{}".format, PARTS, st.sampled_from(["", "~", "?", "%"]))
DATES = MARKED | st.builds("{}/..".format, MARKED) | st.builds("../{}".format, MARKED)


@given(DATES, st.integers(0, 50), st.sampled_from(["northern", "southern"]))
def test_a_widened_span_contains_the_span(text: str, circa_years: int, seasons: Seasons) -> None:
    span = read_edtf(text, seasons)
    wide = widened(span, circa_years)
    assert (wide.earliest is None) == (span.earliest is None)
    assert (wide.latest is None) == (span.latest is None)
    if wide.earliest is not None and span.earliest is not None:
        assert wide.earliest <= span.earliest
    if wide.latest is not None and span.latest is not None:
        assert wide.latest >= span.latest


@given(MARKED, MARKED)
def test_an_interval_runs_from_the_first_day_of_one_to_the_last_of_the_other(first: str, last: str) -> None:
    start, end = read_edtf(first), read_edtf(last)
    assert start.earliest is not None
    assert end.latest is not None
    if start.earliest > end.latest:
        with pytest.raises(Unreadable):
            read_edtf(f"{first}/{last}")
        return
    span = read_edtf(f"{first}/{last}")
    assert (span.earliest, span.latest) == (start.earliest, end.latest)
    assert (span.early_margin, span.late_margin) == (start.early_margin, end.late_margin)
    assert span.approximate == (start.approximate or end.approximate)


@given(st.lists(MARKED, min_size=1, max_size=5))
def test_a_set_spans_all_its_members(members: list[str]) -> None:
    span = read_edtf("[" + ",".join(members) + "]")
    read = [read_edtf(each) for each in members]
    assert span.earliest == min(each.earliest for each in read if each.earliest is not None)
    assert span.latest == max(each.latest for each in read if each.latest is not None)


@given(DATES)
def test_a_span_goes_through_json_unchanged(text: str) -> None:
    span = read_edtf(text)
    assert Span(**json.loads(json.dumps(asdict(span)))) == span
