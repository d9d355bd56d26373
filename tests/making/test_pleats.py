"""Pleats take up what their folds hide; gathers, shirring and cartridge pleats go by fullness."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inperiod.making import Line, sheet
from inperiod.making.pleats import full_depth, pleated_flat

lengths = st.fractions(min_value=Fraction(1, 8), max_value=100, max_denominator=16)


def line(**fields: Any) -> Line:
    made = sheet([{"kind": "pleats", **fields}])
    assert made.problems == ()
    return made.lines[0]


def value(found: Line, label: str) -> float:
    return next(number.value for number in found.numbers if number.label == label)


def test_knife_pleats_hide_twice_their_depth() -> None:
    found = line(finished="24 in", pleat="2 in", depth="1 in")
    assert found.formula == "12 pleats × 2 × 1 in deep = 24 in taken up; 24 in + 24 in = 48 in."


def test_box_and_inverted_pleats_hide_four_times_their_depth() -> None:
    assert value(line(style="box", finished="24 in", number=6, depth="1 in"), "Flat") == 48
    found = line(style="inverted", finished="24 in", number=1, depth="2 in", turning="1/2 in")
    assert found.formula == (
        "1 pleat × 4 × 2 in deep = 8 in taken up; 24 in + 8 in = 32 in, and 2 × 1/2 in for the seams: 33 in."
    )


def test_what_does_not_divide_is_left_plain() -> None:
    found = line(finished="24 1/2 in", pleat="2 in")
    assert (value(found, "Pleats"), value(found, "Left plain")) == (12, 0.5)


def test_deeper_than_full_is_warned_of() -> None:
    assert "deeper than full" in line(finished="24 in", pleat="1 in", depth="2 in").cautions[0]


@pytest.mark.parametrize(("style", "flat"), [("gathers", 36), ("shirring", 48), ("cartridge", 72)])
def test_drawn_up_cloth_goes_by_fullness(style: str, flat: int) -> None:
    assert value(line(style=style, finished="24 in"), "Flat") == flat
    assert value(line(style=style, finished="24 in", fullness=4), "Flat") == 96


@settings(deadline=None)
@given(lengths, st.integers(1, 40), lengths, st.sampled_from(["knife", "box", "inverted"]))
def test_flat_is_never_less_than_finished(
    finished: Fraction, number: int, depth: Fraction, style: str
) -> None:
    assert pleated_flat(finished, number, depth, style) > finished


@settings(deadline=None)
@given(lengths, st.integers(1, 40), st.sampled_from(["knife", "box", "inverted"]))
def test_full_touching_pleats_lie_three_deep_everywhere(pleat: Fraction, number: int, style: str) -> None:
    finished = number * pleat
    assert pleated_flat(finished, number, full_depth(pleat, style), style) == 3 * finished


@pytest.mark.parametrize(
    ("fields", "field", "message"),
    [
        ({"finished": "24 in"}, "pleat", "pleat is missing"),
        ({"pleat": "1 in"}, "finished", "finished is missing"),
        ({"finished": "24 in", "pleat": "30 in"}, "pleat", "0 pleats of 30 in fit 24 in"),
        (
            {"finished": "24 in", "pleat": "3 in", "number": 9},
            "number",
            "9 pleats of 3 in are wider than 24 in",
        ),
        ({"finished": "24 in", "style": "inverted", "number": 1}, "depth", "depth is missing"),
        ({"finished": "24 in", "style": "sunray"}, "style", "is not known"),
    ],
)
def test_what_cannot_be_pleated_is_said(fields: dict[str, Any], field: str, message: str) -> None:
    made = sheet([{"kind": "pleats", **fields}])
    assert made.lines == ()
    assert made.problems[0].field == field
    assert message in made.problems[0].message
