"""Many plates of one document, reprints, reused cuts lend no weight; what nobody looked at is not absent."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from evidence.catalogues import (
    absent,
    dated,
    facts,
    hidden,
    plate,
    round_,
    shown,
    source,
    square,
    window,
    yearly,
)
from inperiod.evidence import Finding, Question, answer
from inperiod.records.model import Source

WHENS = ("1898", "1903", "1907", "1911", "1916", "1925")


def find(sources: list[Source], when: str, **more: Any) -> Finding:
    return answer(
        facts(*sources), Question("day-dress", ("neckline/square",), window(when), **more)
    ).findings[0]


def core(found: Finding) -> tuple[object, ...]:
    """What must not be inflated: counts of sightings, the range with its extension, the absence p."""
    return (
        found.sightings,
        found.in_window,
        found.first and found.first.date,
        found.last and found.last.date,
        found.guide_years,
        found.extension,
        found.absence_p,
    )


def catalogue_of(years: list[int]) -> list[Source]:
    return yearly(1898, 1926, years)


YEARS = st.lists(st.integers(1900, 1924), min_size=1, max_size=12, unique=True)


@settings(deadline=None)
@given(YEARS, st.integers(0, 28), st.sampled_from(WHENS))
def test_doubling_the_plates_of_a_document_changes_no_sighting_range_or_absence(
    years: list[int], which: int, when: str
) -> None:
    sources = catalogue_of(years)
    before = find(sources, when)
    doubled = sources[which]
    more = tuple(replace(each, id=f"{each.id}-again") for each in doubled.plates)
    sources[which] = replace(doubled, plates=doubled.plates + more)
    assert core(find(sources, when)) == core(before)


@settings(deadline=None)
@given(YEARS, st.integers(0, 28), st.integers(1898, 1930), st.sampled_from(WHENS))
def test_adding_a_reprint_of_a_document_changes_no_sighting_range_or_absence(
    years: list[int], which: int, reprinted: int, when: str
) -> None:
    sources = catalogue_of(years)
    before = find(sources, when)
    copy = source("again", str(reprinted), square(5), reprint_of=sources[which].id)
    assert core(find([*sources, copy], when)) == core(before)
    assert find([*sources, copy], when).share == before.share


@settings(deadline=None)
@given(YEARS, st.integers(0, 11), st.integers(1, 6), st.sampled_from(WHENS))
def test_a_cut_used_again_later_counts_where_it_was_first_met(
    years: list[int], which: int, later: int, when: str
) -> None:
    sources = catalogue_of(years)
    first = sorted(years)[which % len(years)]
    reused = source("reused", str(first + later), square(1, same_cut_as=f"list-{first}/p001"))
    assert core(find([*sources, reused], when)) == core(find(sources, when))
    assert find([*sources, reused], when).share == find(sources, when).share


def test_of_plates_from_one_cut_the_earliest_counts_whichever_names_the_other() -> None:
    early = source("early", "1905", square(1, same_cut_as="late/p001"))
    late = source("late", "1912", square())
    later = source("z-later", "1915", square(1, same_cut_as="late/p001"))
    found = find([late, later, early], "1905")
    assert (found.sightings, found.cite) == (1, ("early/p001",))
    assert [(each.reason, each.recording) for each in found.left_out] == [("reused cut", 2)]


def test_limits_are_laid_on_before_reused_cuts_fold() -> None:
    early = source("early", "1905", square(), basis="seller")
    late = source("late", "1912", square(1, same_cut_as="early/p001"))
    assert find([early, late], "1912").verdict == "seen once"
    assert find([early, late], "1912", grades="ABC").in_window == 0


def test_a_reprint_stands_in_for_an_original_that_records_nothing() -> None:
    original = source("original", "1905", [plate(hidden("neckline"))])
    reprint = source("reprint", "1912", square(3), reprint_of="original")
    again = source("z-again", "1920", square(3), reprint_of="reprint")
    found = find([original, reprint, again], "1905")
    assert (found.verdict, found.in_window, found.share.recorded) == ("seen once", 1, 3)
    assert found.cite == ("reprint/p001", "reprint/p002", "reprint/p003")
    assert find([original, reprint, again], "1912").in_window == 0


@pytest.mark.parametrize("of", ["nowhere", "itself"])
def test_a_reprint_of_nothing_we_hold_counts_nowhere(of: str) -> None:
    found = find([source("itself", "1912", square(), reprint_of=of)], "1912")
    assert (found.verdict, found.left_out[0].reason) == ("unrecorded", "reprint")


def test_plates_with_a_date_of_their_own_stand_as_a_document_of_that_date() -> None:
    album = source(
        "album", "1925", [*square(2, date=dated("1908")), *round_(), *square(1, date=dated("1925"))]
    )
    found = find([album], "1908")
    assert (found.sightings, found.in_window, found.share.recorded) == (2, 1, 2)
    assert find([album], "1925").share.recorded == 2


def test_what_nobody_looked_at_is_never_called_unused() -> None:
    seen = [source(f"s{year}", str(year), square()) for year in range(1900, 1910)]
    elsewhere = [
        source(f"c{year}", str(year), [plate(shown("sleeve/short"))] * 40) for year in range(1910, 1940)
    ]
    unseen = [source(f"h{year}", str(year), [plate(hidden("neckline"))] * 40) for year in range(1910, 1940)]
    coats = [source(f"k{year}", str(year), round_(40, garment="coat")) for year in range(1910, 1940)]
    for others in (elsewhere, unseen, coats):
        for when in ("1912", "192X", "1935", "1911/1939"):
            found = find([*seen, *others], when)
            assert found.verdict in ("plausible", "unproven")
            assert (found.absence_p, found.direct_absence, found.share.value) == (1.0, False, None)
            assert found.extension[1] is None
            assert "No document dated mostly in" in " ".join(found.reasons)


def test_looked_for_and_not_there_does_count_against_it() -> None:
    seen = [source(f"s{year}", str(year), square()) for year in range(1900, 1910)]
    looked = [source(f"n{year}", str(year), [plate(absent("neckline"))]) for year in range(1910, 1940)]
    assert find([*seen, *looked], "1935").verdict == "unsupported"


def test_no_document_at_all_says_that_nobody_looked() -> None:
    found = find([source("a", "1912", [plate(shown("sleeve/short"))])], "1912")
    assert found.verdict == "unrecorded"
    assert found.reasons == (
        "No document weighed here records the neckline of day dresses: "
        "nobody has looked, so nothing can be said.",
    )


def test_a_date_from_the_style_of_the_dress_counts_at_no_grade() -> None:
    found = find([source("a", "1912", square(3), basis="style")], "1912", grades="ABC")
    assert (found.verdict, found.sightings, found.share.recorded) == ("unrecorded", 0, 0)
    assert "3 plates dated from the look of the dress itself" in found.reasons[-1]


def test_what_is_not_counted_is_named_with_its_reason() -> None:
    sources = [
        source("undated", None, square()),
        source("style", "1912", square(), basis="style"),
        source("basis", "1912", square(), basis=None),
        source("seller", "1912", square(), basis="seller"),
        source("museum", "1912", square(2) + round_(), basis="institution"),
        source("wide", "1900/1912", square()),
        source("open", "../1912", round_()),
    ]
    found = find(sources, "1912")
    assert [(each.reason, each.recording, each.showing) for each in found.left_out] == [
        ("undated", 1, 1),
        ("style", 1, 1),
        ("no basis", 1, 1),
        ("grade B", 3, 2),
        ("grade C", 1, 1),
        ("wide", 2, 1),
    ]
    assert found.reasons[-1].startswith("Not counted: 1 plate undated (1 shows it); ")
    assert find(sources, "1912", grades="AB").in_window == 1
    assert find(sources, "1912", grades="ABC").in_window == 2


@pytest.mark.parametrize(
    ("date", "counts"),
    [("1901/1912", True), ("1901-01-01/1913-01-01", False), ("1910~", True), ("190X", True), ("19XX", False)],
)
def test_a_document_spans_twelve_years_at_most_circa_included(date: str, counts: bool) -> None:
    assert find([source("a", date, square())], "1906").sightings == counts
