"""Phrases as catalogues and people write them, what they mean, and what is refused.

What the words mean is common cataloguing practice; thirds of decades and centuries, the months of seasons and
"NN00s is the century" are conventions of the project.
"""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dating.meanings import PAIRS
from inperiod.dating import Undated, Unreadable, in_words, iso_day, lexicon, read_edtf, read_phrase


@pytest.mark.parametrize(("phrase", "edtf"), PAIRS)
def test_a_phrase_is_read_as_it_is_meant(phrase: str, edtf: str) -> None:
    understood = read_phrase(phrase)
    assert understood.edtf == edtf
    assert understood.span == read_edtf(edtf)
    assert understood.words == in_words(edtf)


@pytest.mark.parametrize(("phrase", "edtf"), PAIRS)
def test_capitals_spaces_and_the_kind_of_dash_change_nothing(phrase: str, edtf: str) -> None:
    typed = phrase.upper() if phrase != phrase.upper() else phrase
    assert read_phrase(f"\u00a0 {typed}  ".replace(" ", "\u2009 ")).edtf == edtf
    if "–" in phrase:
        assert read_phrase(phrase.replace("–", "—")).edtf == edtf


@pytest.mark.parametrize(
    "edtf", ["1912", "1912-09", "1912-23", "1910~", "1910/1915", "../1906", "[1926,1927]", "192X"]
)
def test_edtf_itself_is_a_phrase(edtf: str) -> None:
    assert read_phrase(f" {edtf} ").edtf == edtf


@pytest.mark.parametrize(
    ("phrase", "edtf", "note"),
    [
        ("1912-23", "1912-23", "read as autumn 1912; for the years 1912 to 1923 write 1912/1923"),
        ("1905-10", "1905-10", "read as October 1905; for the years 1905 to 1910 write 1905/1910"),
        ("1920-25", "1920/1925", "read as the years; in EDTF it would be spring 1920 (northern)"),
        ("1926-45", "1926/1945", None),
        ("1912-09", "1912-09", None),
        ("2001-34", "2001-34", None),
        ("5/12/1926", "1926-05-12", "the month is read first, then the day"),
        ("5/31/1926", "1926-05-31", None),
        ("1900s", "19XX", "1900s is read as the century; for the decade write 190X"),
        ("Meiji period", "1868/1912", "Meiji is read as 1868 to 1912"),
    ],
)
def test_what_can_be_meant_in_two_ways_says_how_it_was_taken(
    phrase: str, edtf: str, note: str | None
) -> None:
    understood = read_phrase(phrase)
    assert (understood.edtf, understood.note) == (edtf, note)


def test_winter_runs_over_new_year_in_the_north_and_summer_in_the_south() -> None:
    assert read_phrase("Winter 1912-13").edtf == "1912-24"
    assert read_phrase("Summer 1912-13", "southern").edtf == "1912-22"
    southern = read_phrase("Spring and Summer 1912-13", "southern")
    assert southern.edtf == "1912-21/1912-22"
    assert southern.span.latest is not None
    assert iso_day(southern.span.latest) == "1913-02-28"
    assert southern.words == "spring 1912 to summer 1912–13"
    for phrase, seasons in (("Summer 1912-13", "northern"), ("Winter 1912-13", "southern")):
        with pytest.raises(Unreadable):
            read_phrase(phrase, seasons)  # type: ignore[arg-type]


# ---- several events ----------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("phrase", "edtf", "note"),
    [
        ("designed 1938, made 1955", "1955", "the date given for “made”; also designed 1938"),
        (
            "1934 (designed) 1941 (manufactured)",
            "1941",
            "the date given for “manufactured”; also designed 1934",
        ),
        ("designed in 1926 and made in 1927", "1927", "the date given for “made”; also designed 1926"),
        ("1953-1957 (manufactured)", "1953/1957", "the date given for “manufactured”"),
        ("1984 (manufactured 1985)", "1985", "the date given for “manufactured”; also 1984"),
        ("2005, designed 1988", "2005", "also designed 1988"),
        ("1848 (designed 1847)", "1848", "also designed 1847"),
        ("designed 1984", "1984", "the date given for “designed”"),
        ("1991 designed", "1991", "the date given for “designed”"),
        ("1939, printed 1946", "1939", "also printed 1946"),
        ("1939, published 1946", "1939", "also published 1946"),
        ("1827, published May 7, 1856", "1827", "also published 7 May 1856"),
        ("published May 7, 1856", "1856-05-07", "the date given for “published”"),
        ("1585, printed c. 1650", "1585", "also printed about 1650"),
        ("1925, printed later", "1925", "also printed later"),
        ("1658, later impression", "1658", "also later impression"),
        ("1653 (dated in the third state)", "1653", "also third state"),
        (
            "modeled c. 1878, cast after c.1915",
            "1878~",
            "the date given for “modeled”; also cast about 1916 or later",
        ),
        ("modelled 1884-1887 cast 1912", "1884/1887", "the date given for “modelled”; also cast 1912"),
        ("1880s, altered 1920s", "188X", "also altered the 1920s"),
        ("c. 1840 (altered c. 1860)", "1840~", "also altered about 1860"),
        ("1905, worn 1912", "1905", "also worn 1912"),
        ("1734 (woven), 1740s (sewn)", "174X", "the date given for “sewn”; also woven 1734"),
        (
            "Project: 1902-1907; Drawn December 10, 1904",
            "1904-12-10",
            "the date given for “drawn”; also project 1902 to 1907",
        ),
        ("1960, Design Patent 191,300, 1961", "1960", "also patented 1961"),
        ("patented 1893", "1893", "the date given for “patented”"),
        ("19th century in the style of 16th century", "18XX", "also copying an older style"),
    ],
)
def test_of_several_events_the_making_counts_and_the_others_are_noted(
    phrase: str, edtf: str, note: str
) -> None:
    understood = read_phrase(phrase)
    assert (understood.edtf, understood.note) == (edtf, note)


@pytest.mark.parametrize(
    "phrase",
    [
        "made 1910, made 1915",
        "printed 1939, published 1946",
        "made 1910, printed in the reign of Gustav",
        "made 1910, 1912 revised",
        "1910, made sometime early",
        "Edo period (1603-1867), 20th century",
    ],
)
def test_events_that_cannot_be_told_apart_are_refused(phrase: str) -> None:
    with pytest.raises(Unreadable):
        read_phrase(phrase)


# ---- never a guess -----------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "phrase", ["n.d.", "N.D.", "nd", "undated", "no date", "s. f.", "o. J.", "sans date"]
)
def test_a_phrase_that_says_there_is_no_date_is_told_apart(phrase: str) -> None:
    with pytest.raises(Undated):
        read_phrase(phrase)


@pytest.mark.parametrize(
    ("phrase", "said"),
    [
        ("turn of the century", "names no year"),
        ("interwar", "names no year"),
        ("mid-century", "names no year"),
        ("the twenties", "names no year"),
        ("late Victorian", "names no year"),
        ("'20s", "not read as a date"),
        ("Easter 1912", "“easter”"),
        ("London, 1926", "“london”"),
        ("1926 (spring catalogue)", "“catalogue”"),
        ("c. 1660 UPH 1641-1655", "“uph”"),
        ("1905/10", "write 1905-10 or 1905/1910"),
        ("1898/9", "write 1898-09 or 1898/1899"),
        ("9-1-1926", "two ways"),
        ("12/10/26", "four digits"),
        ("30 February 1926", "no 30 February"),
        ("35 May 1926", "no 35 May"),
        ("13/13/1926", "no month 13"),
        ("1915-1910", "did you mean 1910/1915"),
        ("1920s-1910s", "ends before it begins"),
        ("Autumn 1912-13", ""),
        ("Spring and Summer 1912-13", ""),
        ("late summer 1926", ""),
        ("1895-1905, probably 1898", ""),
        ("22nd century BCE 19", ""),
        ("25th century", ""),
        ("190", "four digits"),
        ("", "no date"),
        ("   ", "no date"),
        ("…", "no date"),
        ("1912 " * 60, "too long"),
        ("1 " * 60, ""),
        ("before after 1912", ""),
        ("circa", ""),
        ("c. c. c.", ""),
    ],
)
def test_what_cannot_be_read_is_refused_with_a_reason(phrase: str, said: str) -> None:
    with pytest.raises(Unreadable, match=said or None):
        read_phrase(phrase)


WORDS = sorted(
    {
        word
        for table in (lexicon.MONTHS, lexicon.WORDS, lexicon.EVENTS, lexicon.FILLERS, lexicon.PERIODS)
        for word in table.split()
    }
    | {
        "1912",
        "1920s",
        "30s",
        "19th",
        "XIX",
        "5",
        "12",
        "-",
        "–",
        "/",
        ",",
        "(",
        ")",
        "?",
        "1900s",
        "1912-13",
    }
)


@given(st.text(max_size=60) | st.lists(st.sampled_from(WORDS), max_size=9).map(" ".join))
def test_any_text_is_understood_or_refused_and_nothing_else(text: str) -> None:
    try:
        understood = read_phrase(text)
    except Unreadable:
        return
    assert understood.span == read_edtf(understood.edtf)
    assert understood.words


@given(st.integers(1000, 2030), st.integers(0, 80))
def test_every_way_of_writing_two_years_means_the_same(first: int, more: int) -> None:
    last = first + more
    for phrase in (
        f"{first}–{last}",
        f"{first} to {last}",
        f"from {first} to {last}",
        f"between {first} and {last}",
    ):
        span = read_phrase(phrase).span
        assert (span.earliest, span.latest) == (read_edtf(f"{first}").earliest, read_edtf(f"{last}").latest)
