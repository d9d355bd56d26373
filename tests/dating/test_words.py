"""Dates as people say them."""

from __future__ import annotations

import pytest

from inperiod.dating import Seasons, Span, Unreadable, in_words, read_edtf


@pytest.mark.parametrize(
    ("edtf", "words"),
    [
        ("1912", "1912"),
        ("1912-23", "autumn 1912"),
        ("1912-24", "winter 1912–13"),
        ("1999-24", "winter 1999–00"),
        ("1912-23/1912-24", "autumn 1912 to winter 1912–13"),
        ("1926-21/1926-22", "spring to summer 1926"),
        ("1910~", "about 1910"),
        ("1910?", "perhaps 1910"),
        ("1910%", "perhaps about 1910"),
        ("?1926-05", "perhaps May 1926"),
        ("1910?-05~", "perhaps about May 1910"),
        ("1924/1927", "1924 to 1927"),
        ("1885~/1890~", "about 1885 to 1890"),
        ("1908/1910~", "1908 to about 1910"),
        ("1908~/1910", "about 1908 to 1910"),
        ("../1906", "before 1907"),
        ("/1906", "before 1907"),
        ("../1909~", "before about 1910"),
        ("../1911?", "perhaps before 1912"),
        ("../1926-04", "April 1926 or earlier"),
        ("1921/..", "1921 or later"),
        ("1921/", "1921 or later"),
        ("192X", "the 1920s"),
        ("18XX", "the 19th century"),
        ("00XX", "the 1st century"),
        ("20XX", "the 21st century"),
        ("10XX", "the 11th century"),
        ("-04XX", "the 5th century BC"),
        ("17XX/18XX", "the 18th to the 19th century"),
        ("1926-05", "May 1926"),
        ("1926-05-12", "12 May 1926"),
        ("1926-05-12/1926-06-01", "12 May to 1 June 1926"),
        ("1926-05-01/1926-05-10", "1 to 10 May 1926"),
        ("1926-33", "the first quarter of 1926"),
        ("1926-36", "the last quarter of 1926"),
        ("1926-37", "early 1926"),
        ("1926-41", "the second half of 1926"),
        ("1926-29", "spring 1926 (southern)"),
        ("1926-30", "summer 1926–27 (southern)"),
        ("[1926,1927]", "1926 or 1927"),
        ("{1933,1937}", "1933 and 1937"),
        ("[1667,1670..1672]", "1667 or 1670 to 1672"),
        ("[..1760]", "before 1761"),
        ("-0043", "44 BC"),
        ("0000", "1 BC"),
        ("0079", "AD 79"),
        ("Y170000002", "the year 170000002"),
        ("Y-17E7", "the year -17×10^7"),
        ("1950S2", "the year 1950 to 2 significant digits"),
        ("1984-1X", "October to December 1984"),
        ("1984-XX", "1984"),
        ("156X-12-25", "25 December 1560 to 25 December 1569"),
        ("9999", "9999"),
        ("../9999", "9999 or earlier"),
    ],
)
def test_edtf_is_said_as_people_say_it(edtf: str, words: str) -> None:
    assert in_words(edtf) == words


@pytest.mark.parametrize(
    ("edtf", "words"),
    [
        ("1912", "1912"),
        ("1924/1927", "1924 to 1927"),
        ("192X", "1920 to 1929"),
        ("1912-23", "September to November 1912"),
        ("1926-05", "May 1926"),
        ("1926-05-12", "12 May 1926"),
        ("1910~", "about 1910"),
        ("1910~/1915", "about 1910 to 1915"),
        ("1910/1915?", "1910 to perhaps 1915"),
        ("../1906", "before 1907"),
        ("../1926-04", "April 1926 or earlier"),
        ("1921/..", "1921 or later"),
        ("1921-05-02/..", "2 May 1921 or later"),
    ],
)
def test_a_bare_span_is_said_by_the_whole_years_months_or_days_it_covers(edtf: str, words: str) -> None:
    assert in_words(read_edtf(edtf)) == words


def test_a_span_without_ends_is_no_date() -> None:
    assert in_words(Span(None, None)) == "no date"


@pytest.mark.parametrize(
    ("seasons", "edtf", "words"),
    [
        ("northern", "1912-22", "summer 1912"),
        ("southern", "1912-22", "summer 1912–13"),
        ("southern", "1912-24", "winter 1912"),
    ],
)
def test_the_season_over_new_year_names_both_years(seasons: Seasons, edtf: str, words: str) -> None:
    assert in_words(edtf, seasons) == words


def test_what_is_no_edtf_has_no_words() -> None:
    with pytest.raises(Unreadable):
        in_words("1912-13")
