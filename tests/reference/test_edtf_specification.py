"""Every example of the EDTF specification, levels 0 to 2, with its bounds.

Source of the examples: Library of Congress, "Extended Date/Time Format (EDTF) Specification", 4 February 2019
(the order and the sections are the specification's). It gives meanings, not bounds; the bounds written here
follow from the meanings, and are compared with two independent implementations, the packages ``edtf`` and
``undate``. Where one of them differs, ``DIFFERENCES`` says what it gives and why we do not follow.
"""

from __future__ import annotations

import math
from typing import Any

import pytest

from inperiod.dating import Span, iso_day, read_edtf

OPEN = ".."

LEVEL_0 = [
    # Date
    ("1985-04-12", "1985-04-12", "1985-04-12"),
    ("1985-04", "1985-04-01", "1985-04-30"),
    ("1985", "1985-01-01", "1985-12-31"),
    # Date and time: the day written
    ("1985-04-12T23:20:30", "1985-04-12", "1985-04-12"),
    ("1985-04-12T23:20:30Z", "1985-04-12", "1985-04-12"),
    ("1985-04-12T23:20:30-04", "1985-04-12", "1985-04-12"),
    ("1985-04-12T23:20:30+04:30", "1985-04-12", "1985-04-12"),
    # Time interval
    ("1964/2008", "1964-01-01", "2008-12-31"),
    ("2004-06/2006-08", "2004-06-01", "2006-08-31"),
    ("2004-02-01/2005-02-08", "2004-02-01", "2005-02-08"),
    ("2004-02-01/2005-02", "2004-02-01", "2005-02-28"),
    ("2004-02-01/2005", "2004-02-01", "2005-12-31"),
    ("2005/2006-02", "2005-01-01", "2006-02-28"),
]
LEVEL_1 = [
    # Letter-prefixed calendar year
    ("Y170000002", "+170000002-01-01", "+170000002-12-31"),
    ("Y-170000002", "-170000002-01-01", "-170000002-12-31"),
    # Seasons: the months are ours
    ("2001-21", "2001-03-01", "2001-05-31"),
    ("2001-22", "2001-06-01", "2001-08-31"),
    ("2001-23", "2001-09-01", "2001-11-30"),
    ("2001-24", "2001-12-01", "2002-02-28"),
    # Qualification of a date: does not move the bounds
    ("1984?", "1984-01-01", "1984-12-31"),
    ("2004-06~", "2004-06-01", "2004-06-30"),
    ("2004-06-11%", "2004-06-11", "2004-06-11"),
    # Unspecified digits from the right
    ("201X", "2010-01-01", "2019-12-31"),
    ("20XX", "2000-01-01", "2099-12-31"),
    ("2004-XX", "2004-01-01", "2004-12-31"),
    ("1985-04-XX", "1985-04-01", "1985-04-30"),
    ("1985-XX-XX", "1985-01-01", "1985-12-31"),
    # Extended interval: open end, open start, unknown end, unknown start
    ("1985-04-12/..", "1985-04-12", OPEN),
    ("1985-04/..", "1985-04-01", OPEN),
    ("1985/..", "1985-01-01", OPEN),
    ("../1985-04-12", OPEN, "1985-04-12"),
    ("../1985-04", OPEN, "1985-04-30"),
    ("../1985", OPEN, "1985-12-31"),
    ("1985-04-12/", "1985-04-12", OPEN),
    ("1985-04/", "1985-04-01", OPEN),
    ("1985/", "1985-01-01", OPEN),
    ("/1985-04-12", OPEN, "1985-04-12"),
    ("/1985-04", OPEN, "1985-04-30"),
    ("/1985", OPEN, "1985-12-31"),
    # Negative calendar year
    ("-1985", "-1985-01-01", "-1985-12-31"),
]
LEVEL_2 = [
    # Exponential year
    ("Y-17E7", "-170000000-01-01", "-170000000-12-31"),
    # Significant digits: "some year between 1900 and 1999, estimated to be 1950", and so on
    ("1950S2", "1900-01-01", "1999-12-31"),
    ("Y171010000S3", "+171000000-01-01", "+171999999-12-31"),
    ("Y3388E2S3", "+338000-01-01", "+338999-12-31"),
    # Sub-year groupings
    ("2001-25", "2001-03-01", "2001-05-31"),
    ("2001-34", "2001-04-01", "2001-06-30"),
    ("2001-37", "2001-01-01", "2001-04-30"),
    ("2001-41", "2001-07-01", "2001-12-31"),
    # One of a set, all of a set
    ("[1667,1668,1670..1672]", "1667-01-01", "1672-12-31"),
    ("[..1760-12-03]", OPEN, "1760-12-03"),
    ("[1760-12..]", "1760-12-01", OPEN),
    ("[1760-01,1760-02,1760-12..]", "1760-01-01", OPEN),
    ("[1667,1760-12]", "1667-01-01", "1760-12-31"),
    ("[..1984]", OPEN, "1984-12-31"),
    ("{1667,1668,1670..1672}", "1667-01-01", "1672-12-31"),
    ("{1960,1961-12}", "1960-01-01", "1961-12-31"),
    ("{..1984}", OPEN, "1984-12-31"),
    # Group and individual qualification
    ("2004-06~-11", "2004-06-11", "2004-06-11"),
    ("2004?-06-11", "2004-06-11", "2004-06-11"),
    ("?2004-06-~11", "2004-06-11", "2004-06-11"),
    ("2004-%06-11", "2004-06-11", "2004-06-11"),
    # Unspecified digits anywhere
    ("156X-12-25", "1560-12-25", "1569-12-25"),
    ("15XX-12-25", "1500-12-25", "1599-12-25"),
    ("XXXX-12-XX", "0000-12-01", "9999-12-31"),
    ("1XXX-XX", "1000-01-01", "1999-12-31"),
    ("1XXX-12", "1000-12-01", "1999-12-31"),
    ("1984-1X", "1984-10-01", "1984-12-31"),
    ("1984?-XX", "1984-01-01", "1984-12-31"),
    # Interval with parts of its own
    ("2004-06-~01/2004-06-~20", "2004-06-01", "2004-06-20"),
    ("2004-06-XX/2004-07-03", "2004-06-01", "2004-07-03"),
]
EXAMPLES = LEVEL_0 + LEVEL_1 + LEVEL_2

UNKNOWN_END = "takes an unknown end for ten years away; the specification only says that it is unknown"
FIGURES = (
    "keeps the estimate itself and leaves the significant digits aside; the specification names the range"
)
NOT_READ = "does not read it"
DIFFERENCES: dict[tuple[str, str], tuple[tuple[str, str] | None, str]] = {
    ("edtf", "1985-04-12/"): (("1985-04-12", "1995-04-12"), UNKNOWN_END),
    ("edtf", "1985-04/"): (("1985-04-01", "1995-04-01"), UNKNOWN_END),
    ("edtf", "1985/"): (("1985-01-01", "1995-01-01"), UNKNOWN_END),
    ("edtf", "/1985-04-12"): (("1975-04-12", "1985-04-12"), UNKNOWN_END),
    ("edtf", "/1985-04"): (("1975-04-30", "1985-04-30"), UNKNOWN_END),
    ("edtf", "/1985"): (("1975-12-31", "1985-12-31"), UNKNOWN_END),
    ("edtf", "2001-24"): (
        ("2001-12-01", "2001-12-31"),
        "cuts winter at New Year, one month long; a winter list of 2001 sells into February 2002",
    ),
    ("edtf", "1950S2"): (("1950-01-01", "1950-12-31"), FIGURES),
    ("edtf", "Y171010000S3"): (("+171010000-01-01", "+171010000-12-31"), FIGURES),
    ("edtf", "Y3388E2S3"): (("+338800-01-01", "+338800-12-31"), FIGURES),
    ("edtf", "1984-1X"): (None, NOT_READ),
    ("edtf", "1984?-XX"): (None, NOT_READ),
    ("undate", "XXXX-12-XX"): (
        ("-24999999999999999-12-01", "+25000000000000000-12-31"),
        "takes an unknown four-digit year for any year it can count; four X are the years 0000 to 9999",
    ),
    **{
        ("undate", text): (None, NOT_READ)
        for text in (
            *("1985-04-12T23:20:30", "1985-04-12T23:20:30Z"),
            *("1985-04-12T23:20:30-04", "1985-04-12T23:20:30+04:30"),
            *("2001-21", "2001-22", "2001-23", "2001-24", "2001-25", "2001-34", "2001-37", "2001-41"),
            *("Y-17E7", "1950S2", "Y171010000S3", "Y3388E2S3"),
            *("[1667,1668,1670..1672]", "[..1760-12-03]", "[1760-12..]", "[1760-01,1760-02,1760-12..]"),
            *("[1667,1760-12]", "[..1984]", "{1667,1668,1670..1672}", "{1960,1961-12}", "{..1984}"),
            *("2004-06~-11", "2004?-06-11", "?2004-06-~11", "2004-%06-11", "1984?-XX"),
            "2004-06-~01/2004-06-~20",
        )
    },
}


def ours(text: str) -> tuple[str, str]:
    return tuple_of_days(read_edtf(text))


def tuple_of_days(span: Span) -> tuple[str, str]:
    first, last = (OPEN if each is None else iso_day(each) for each in (span.earliest, span.latest))
    return first, last


def written(year: int, month: int, day: int) -> str:
    sign = "-" if year < 0 else "+" if year > 9999 else ""
    return f"{sign}{abs(year):04d}-{month:02d}-{day:02d}"


def edtf_bounds(text: str) -> tuple[str, str] | None:
    """The strict bounds of the package ``edtf``; None where it does not read the text."""
    import edtf

    try:
        date = edtf.parse_edtf(text)
        ends = date.lower_strict(), date.upper_strict()
    except Exception:  # a package may fail in any way it likes: it does not read the text
        return None
    first, last = (
        OPEN
        if isinstance(each, float) and math.isinf(each)
        else written(each.tm_year, each.tm_mon, each.tm_mday)
        for each in ends
    )
    return first, last


def undate_bounds(text: str) -> tuple[str, str] | None:
    """The bounds of the package ``undate``; None where it does not read the text."""
    from undate import Undate

    try:
        date: Any = Undate.parse(text, "EDTF")
    except Exception:
        return None
    first, last = date.earliest, date.latest
    first = first.earliest if hasattr(first, "earliest") else first
    last = last.latest if hasattr(last, "latest") else last
    return (
        OPEN if first is None else written(int(first.year), int(first.month), int(first.day)),
        OPEN if last is None else written(int(last.year), int(last.month), int(last.day)),
    )


@pytest.mark.parametrize(("text", "earliest", "latest"), EXAMPLES)
def test_the_bounds_are_what_the_specification_means(text: str, earliest: str, latest: str) -> None:
    assert ours(text) == (earliest, latest)


@pytest.mark.filterwarnings("ignore")
@pytest.mark.parametrize("text", [text for text, _, _ in EXAMPLES])
@pytest.mark.parametrize(("package", "bounds"), [("edtf", edtf_bounds), ("undate", undate_bounds)])
def test_the_bounds_agree_with_other_implementations_or_the_difference_is_argued(
    package: str, bounds: Any, text: str
) -> None:
    pytest.importorskip(package)
    theirs = bounds(text)
    if (package, text) in DIFFERENCES:
        recorded, why = DIFFERENCES[package, text]
        assert theirs == recorded, f"the package no longer {why}: look at the case again"
        assert theirs != ours(text)
    else:
        assert theirs == ours(text)


# "~" approximate, "?" uncertain, "%" both: specification, level 1, "Qualification of a date (complete)".
@pytest.mark.parametrize(
    ("text", "approximate", "uncertain"),
    [
        ("1984", False, False),
        ("1984?", False, True),
        ("2004-06~", True, False),
        ("2004-06-11%", True, True),
        ("2004-06~-11", True, False),
        ("2004?-06-11", False, True),
        ("?2004-06-~11", True, True),
        ("2004-%06-11", True, True),
        ("1984~/2004-06", True, False),
        ("1984/2004-06?", False, True),
        ("2004-06-~01/2004-06-~20", True, False),
    ],
)
def test_qualifiers_are_kept(text: str, approximate: bool, uncertain: bool) -> None:
    span = read_edtf(text)
    assert (span.approximate, span.uncertain) == (approximate, uncertain)
