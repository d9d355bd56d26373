"""Tucks: cloth taken up, spacing said both ways, how many fit, and where each falls on the flat."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from inperiod.making import Line, sheet
from inperiod.making.tucks import Tucks, fit_finished, fit_flat, span

widths = st.fractions(min_value=Fraction(1, 32), max_value=4, max_denominator=32)
numbers = st.integers(1, 60)
margins = st.fractions(min_value=0, max_value=6, max_denominator=16)


def line(**fields: Any) -> Line:
    made = sheet([{"kind": "tucks", **fields}])
    assert made.problems == ()
    return made.lines[0]


def value(found: Line, label: str) -> float:
    return next(number.value for number in found.numbers if number.label == label)


def test_a_tuck_takes_twice_its_width() -> None:
    found = line(width="1/4 in", fold_to_fold="1/2 in", number=12, finished="8 in")
    assert found.formula.startswith("12 tucks × 2 × 1/4 in = 6 in taken up; 8 in finished + 6 in = 14 in.")
    assert (value(found, "Taken up"), value(found, "Flat")) == (6, 14)


def test_gap_and_fold_to_fold_differ_by_the_width_and_the_sheet_says_which() -> None:
    as_folds = line(width="1/4 in", fold_to_fold="1/2 in", number=12)
    as_gap = line(width="1/4 in", gap="1/2 in", number=12)
    assert "They stand 1/2 in fold to fold, with a gap of 1/4 in between" in as_folds.formula
    assert "They stand 3/4 in fold to fold, with a gap of 1/2 in between" in as_gap.formula
    assert as_folds.formula != as_gap.formula


def test_spacing_stated_either_way_is_the_same_work() -> None:
    as_folds = line(width="1/4 in", fold_to_fold="3/4 in", number=5, finished="8 in")
    as_gap = line(width="1/4 in", gap="1/2 in", number=5, finished="8 in")
    assert as_folds == as_gap


def test_blind_tucks_touch() -> None:
    found = line(style="blind", width="1/2 in", number=4, finished="6 in")
    assert value(found, "Gap") == 0
    assert "touch: each fold lies on the next stitching" in found.formula


def test_growth_tucks_say_what_they_give_back() -> None:
    found = line(style="growth", width="1 in", number=3, finished="20 in")
    assert found.cut.startswith("Cut 26 in (66.1 cm) long before tucking")
    assert "Let out, the tucks give back 6 in (15.2 cm)" in found.notes[0]


def test_tucks_that_lap_are_allowed_and_warned_of() -> None:
    found = line(width="1/2 in", fold_to_fold="1/4 in", number=3, finished="6 in")
    assert "lap by 1/4 in" in found.formula
    assert "laps over the stitching" in found.cautions[0]


def test_folds_and_stitching_fall_where_the_sheet_says() -> None:
    found = line(width="1/4 in", fold_to_fold="1/2 in", number=2, finished="4 in", margin="1 in")
    assert [number.text for number in found.numbers if number.label.startswith("Tuck ")] == [
        "fold at 1 1/4 in (3.2 cm); stitch at 1 in (2.5 cm) and 1 1/2 in (3.8 cm)",
        "fold at 2 1/4 in (5.7 cm); stitch at 2 in (5.1 cm) and 2 1/2 in (6.4 cm)",
    ]


def test_seams_move_the_tucks_and_are_counted_once_on_each_side() -> None:
    bare = line(width="1/4 in", gap="1/4 in", number=2, finished="4 in")
    seamed = line(width="1/4 in", gap="1/4 in", number=2, finished="4 in", turning="1/2 in")
    assert value(seamed, "Flat") == value(bare, "Flat") + 1
    assert value(seamed, "Tuck 1") == value(bare, "Tuck 1") + 0.5


def test_the_reverse_says_how_many_fit() -> None:
    found = line(width="1/4 in", gap="1/4 in", finished="6 in")
    assert found.formula.startswith("12 tucks fit.")
    assert line(width="1/4 in", gap="1/4 in", flat="12 in").formula.startswith("12 tucks fit.")


@settings(deadline=None)
@given(numbers, widths, widths, margins)
def test_forward_and_reverse_agree(number: int, width: Fraction, spacing: Fraction, margin: Fraction) -> None:
    finished = span(number, width, spacing) + 2 * margin
    made = Tucks(number, width, spacing, finished, margin)
    assert fit_finished(finished, width, spacing, margin) == number
    assert fit_flat(made.flat, width, spacing, margin) == number
    just_less = Fraction(1, 10_000)
    assert fit_finished(finished - just_less, width, spacing, margin) == number - 1
    assert fit_flat(made.flat - just_less, width, spacing, margin) == number - 1


@settings(deadline=None)
@given(numbers, widths, widths, margins)
def test_stitched_on_their_lines_the_tucks_come_out_as_spaced(
    number: int, width: Fraction, spacing: Fraction, margin: Fraction
) -> None:
    """The flat cloth folded up: each pair of stitching lines meets, and all before it has been taken up."""
    finished = span(number, width, spacing) + 2 * margin
    made = Tucks(number, width, spacing, finished, margin)
    for place, (first, fold, second) in enumerate(made.lines):
        assert fold - first == second - fold == width
        assert first - place * 2 * width == margin + place * spacing
    assert made.lines[-1][2] <= made.flat
    assert made.flat - made.taken_up == made.finished


@settings(deadline=None)
@given(numbers, widths, widths)
def test_lines_on_the_flat_stand_in_order(number: int, width: Fraction, gap: Fraction) -> None:
    made = Tucks(number, width, width + gap, span(number, width, width + gap), Fraction(0))
    places = [place for three in made.lines for place in three]
    assert places == sorted(places)


@settings(deadline=None)
@given(st.fractions(1, 60, max_denominator=16), widths, widths)
def test_as_many_as_fit_never_overrun_the_cloth(flat: Fraction, width: Fraction, spacing: Fraction) -> None:
    number = fit_flat(flat, width, spacing)
    assume(number)
    finished = flat - 2 * width * number
    assert span(number, width, spacing) <= finished


@pytest.mark.parametrize(
    ("fields", "field", "message"),
    [
        ({"width": "1/4 in", "number": 3}, "gap", "The spacing is missing."),
        ({"width": "1/4 in", "gap": "0 in", "fold_to_fold": "1 in", "number": 3}, "gap", "both given"),
        ({"width": "1/4 in", "gap": "1/4 in"}, "number", "number is missing."),
        ({"width": "1/4 in", "gap": "1/4 in", "flat": "9 in", "finished": "6 in"}, "flat", "both given"),
        (
            {"width": "1/4 in", "gap": "1/4 in", "number": 9, "finished": "2 in"},
            "number",
            "9 tucks need 4 1/4 in",
        ),
        (
            {"width": "1 in", "gap": "1/4 in", "number": 9, "flat": "12 in"},
            "flat",
            "take up all of the cloth",
        ),
        ({"width": "1 in", "gap": "1/4 in", "finished": "1/2 in"}, "number", "1 tuck needs 1 in"),
        ({"width": "1/64 in", "gap": "0 in", "finished": "60 in"}, "number", "too many"),
        ({"width": "1/4 in", "gap": "1/4 in", "number": 0}, "number", "whole number"),
        ({"width": "1/4 in", "gap": "1/4 in", "number": 2, "style": "big"}, "style", "is not known"),
        ({"width": "0 in", "gap": "1/4 in", "number": 2}, "width", "too little"),
    ],
)
def test_what_cannot_be_made_is_said(fields: dict[str, Any], field: str, message: str) -> None:
    made = sheet([{"kind": "tucks", **fields}])
    assert made.lines == ()
    problem = made.problems[0]
    assert problem.field == field
    assert message in f"{problem.message} {problem.hint}"
