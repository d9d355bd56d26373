"""Bias strips: what a piece of cloth yields, strip by strip, and how much cloth a length needs."""

from __future__ import annotations

import math
from fractions import Fraction
from itertools import pairwise
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inperiod.making import Line, sheet
from inperiod.making.bias import ROOT_2, STRETCHES, apart, continuous, pieced

sides = st.fractions(min_value=4, max_value=80, max_denominator=8)
strip_widths = st.fractions(min_value=Fraction(1, 4), max_value=6, max_denominator=16)
seams = st.fractions(min_value=0, max_value=1, max_denominator=8)
shortests = st.fractions(min_value=Fraction(1, 4), max_value=12, max_denominator=4)


def line(**fields: Any) -> Line:
    made = sheet([{"kind": "bias", **fields}])
    assert made.problems == ()
    return made.lines[0]


def value(found: Line, label: str) -> float:
    return next(number.value for number in found.numbers if number.label == label)


def cut_out(across: float, along: float, width: float, seam: float, shortest: float) -> tuple[int, float]:
    """The same cloth cut with ruler and scissors: every line x + y = c drawn, every strip measured."""
    small = min(across, along)
    step = width * math.sqrt(2)
    first = -math.ceil(small / step) - 1
    cuts = [small + number * step for number in range(first, math.ceil((across + along) / step) + 2)]

    def chord(c: float) -> float:
        left, right = max(0.0, c - along), min(across, c)
        return max(0.0, right - left) * math.sqrt(2)

    lost = 2 * math.sqrt(2) * seam
    least = max(shortest, lost)
    strips = [min(chord(a), chord(b)) for a, b in pairwise(cuts)]
    kept = [strip for strip in strips if strip >= least and strip > 0]
    return len(kept), max(0.0, sum(kept) - lost * max(0, len(kept) - 1))


@settings(deadline=None)
@given(sides, sides, strip_widths, seams, shortests)
def test_the_yield_is_that_of_cutting_it_out_strip_by_strip(
    across: Fraction, along: Fraction, width: Fraction, seam: Fraction, shortest: Fraction
) -> None:
    found = pieced(across, along, width, seam, shortest)
    pieces, length = cut_out(*map(float, (across, along, width, seam, shortest)))
    assert found.pieces == pieces
    assert float(found.length) == pytest.approx(length, abs=1e-6)


@settings(deadline=None)
@given(sides, sides, strip_widths, seams, shortests)
def test_no_yield_exceeds_area_over_width(
    across: Fraction, along: Fraction, width: Fraction, seam: Fraction, shortest: Fraction
) -> None:
    most = across * along / width
    assert pieced(across, along, width, seam, shortest).length <= most
    assert continuous(across, along, width, seam).length <= most


@settings(deadline=None)
@given(sides, sides, strip_widths)
def test_a_remnant_yields_the_same_either_way_round(
    across: Fraction, along: Fraction, width: Fraction
) -> None:
    seam, shortest = Fraction(1, 4), Fraction(6)
    assert pieced(across, along, width, seam, shortest) == pieced(along, across, width, seam, shortest)


@settings(deadline=None)
@given(strip_widths)
def test_cuts_lie_root_two_apart(width: Fraction) -> None:
    assert float(apart(width)) == pytest.approx(float(width) * math.sqrt(2), rel=1e-15)


def test_root_two_is_true_to_eighteen_places() -> None:
    assert abs(ROOT_2**2 - 2) < Fraction(3, 10**18)


@settings(max_examples=60, deadline=None)
@given(
    st.fractions(min_value=4, max_value=600, max_denominator=8),
    st.fractions(min_value=Fraction(1, 2), max_value=4, max_denominator=8),
    st.sampled_from(["pieced", "continuous"]),
    st.sampled_from([None, "18 in", "36 in", "60 in"]),
)
def test_the_cloth_named_is_enough_and_not_wasteful(
    wanted: Fraction, width: Fraction, method: str, cloth: str | None
) -> None:
    fields = {"width": f"{float(width)} in", "length": f"{float(wanted)} in", "method": method}
    found = line(**fields, **({"cloth_width": cloth} if cloth else {}))
    across, along = value(found, "Across"), value(found, "Along the selvedge")
    assert value(found, "Yield") >= value(found, "Wanted")
    cut = continuous if method == "continuous" else pieced
    extra = () if method == "continuous" else (min(Fraction(6), wanted + 1),)
    # Whole strips cost a strip or so too much: four inches and two strips' breadth less are too few.
    less = along - 4 - 2 * float(apart(width))
    if less > 0:
        smaller = cut(Fraction(across if cloth else less), Fraction(less), width, Fraction(1, 4), *extra)
        assert float(smaller.length) < value(found, "Wanted")


def test_a_length_wanted_gives_a_square() -> None:
    found = line(width="1 in", length=["34 in", "17 in", "17 in"])
    assert found.formula.startswith(
        "34 in + 2 × 17 in = 68 in, and 3 × 1 in for the ends: 71 in. "
        "Cuts lie 1 in × √2 = about 1 7/16 in apart along the selvedge."
    )
    assert value(found, "Across") == value(found, "Along the selvedge")


def test_a_remnant_says_whether_it_is_enough() -> None:
    assert line(width="1 in", length="2 yd", remnant=["12 in", "14 in"]).cut.endswith("; enough.")
    assert line(width="1 in", length="9 yd", remnant=["12 in", "14 in"]).cut.endswith("; not enough.")
    assert "enough" not in line(width="1 in", remnant=["12 in", "14 in"]).cut


def test_bias_always_warns_that_it_stretches_and_narrows() -> None:
    made = sheet([{"kind": "bias", "width": "1 in", "length": "2 yd"}] * 2)
    assert made.cautions == (STRETCHES,)
    assert "stretches" in STRETCHES
    assert "narrows" in STRETCHES


@pytest.mark.parametrize(
    ("fields", "field", "message"),
    [
        ({"width": "1 in"}, "length", "length is missing"),
        ({"width": "1/8 in", "length": "1 yd"}, "width", "too little"),
        ({"width": "2 yd", "length": "1 yd"}, "width", "too much"),
        ({"width": "1 in", "remnant": ["12 in"]}, "remnant", "has not two sides"),
        ({"width": "1 in", "length": "101 yd"}, "length", "more than 100 yards"),
        ({"width": "1 in", "length": "1 yd", "cloth_width": "1/2 in"}, "cloth_width", "No such strip"),
        ({"width": "1 in", "length": "1 yd", "method": "torn"}, "method", "is not known"),
    ],
)
def test_what_cannot_be_cut_is_said(fields: dict[str, Any], field: str, message: str) -> None:
    made = sheet([{"kind": "bias", **fields}])
    assert made.lines == ()
    assert made.problems[0].field == field
    assert message in made.problems[0].message
