"""Fastenings: how many, how far apart, and where each sits."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inperiod.making import Line, sheet
from inperiod.making.fastenings import number_for, placed

rooms = st.fractions(min_value=Fraction(1, 4), max_value=60, max_denominator=16)


def line(**fields: Any) -> Line:
    made = sheet([{"kind": "fastenings", **fields}])
    assert made.problems == ()
    return made.lines[0]


def test_a_number_is_spread_evenly_between_top_and_bottom() -> None:
    found = line(of="buttons", opening="10 in", number=4, top="1/2 in", bottom="1/2 in")
    assert found.formula == (
        "10 in − 1/2 in at the top − 1/2 in at the bottom = 9 in; ÷ 3 spaces = 3 in apart."
    )
    assert [number.text for number in found.numbers if number.label.startswith("Button ")] == [
        "1/2 in (1.3 cm) from the top",
        "3 1/2 in (8.9 cm) from the top",
        "6 1/2 in (16.5 cm) from the top",
        "9 1/2 in (24.1 cm) from the top",
    ]


def test_a_spacing_is_the_most_that_gapes() -> None:
    found = line(of="press studs", opening="12 in", spacing="1 1/2 in")
    assert found.cut == "Set 9 press studs."
    assert next(number.value for number in found.numbers if number.label == "Apart") == 1.375


def test_sets_and_spares_are_bought_too() -> None:
    made = sheet([{"kind": "fastenings", "opening": "4 in", "number": 3, "sets": 2, "spare": 1}])
    assert made.lines[0].cut == "Set 2 openings, each with 3 buttons, and 1 to spare."
    assert (made.shopping[0].what, made.shopping[0].text) == ("Buttons", "7")


def test_one_alone_sits_at_the_top() -> None:
    found = line(of="hooks and eyes", opening="2 in", number=1)
    assert found.cut == "Set 1 hook and eye."
    assert found.formula.endswith("one alone sits at the top.")


@settings(deadline=None)
@given(rooms, rooms)
def test_no_two_are_further_apart_than_asked_and_none_is_needless(room: Fraction, spacing: Fraction) -> None:
    number = number_for(room, spacing)
    assert room / (number - 1) <= spacing
    assert number == 2 or room / (number - 2) > spacing


@settings(deadline=None)
@given(rooms, st.integers(2, 60), rooms)
def test_the_first_and_last_sit_at_the_ends_and_all_between_are_even(
    room: Fraction, number: int, top: Fraction
) -> None:
    positions = placed(room, number, top)
    assert (len(positions), positions[0], positions[-1]) == (number, top, top + room)
    assert {b - a for a, b in pairwise(positions)} == {room / (number - 1)}


@pytest.mark.parametrize(
    ("fields", "field", "message"),
    [
        ({"number": 3}, "opening", "opening is missing"),
        ({"opening": "9 in"}, "number", "number is missing"),
        ({"opening": "9 in", "number": 3, "spacing": "1 in"}, "spacing", "both given"),
        ({"opening": "9 in", "number": 3, "top": "9 in"}, "top", "more than the opening"),
        ({"opening": "1 in", "number": 3}, "number", "no room"),
        ({"opening": "99 in", "spacing": "1/8 in"}, "spacing", "too many"),
        ({"opening": "9 in", "number": 3, "of": "zips"}, "of", "is not known"),
    ],
)
def test_what_cannot_be_set_is_said(fields: dict[str, Any], field: str, message: str) -> None:
    made = sheet([{"kind": "fastenings", **fields}])
    assert made.lines == ()
    assert made.problems[0].field == field
    assert message in made.problems[0].message
