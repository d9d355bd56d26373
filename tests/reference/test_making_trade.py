"""The making sheet against rules of the trade. Each says where it is from."""

from __future__ import annotations

import math
from typing import Any

import pytest

from inperiod.making import Line, sheet


def line(**fields: Any) -> Line:
    made = sheet([fields])
    assert made.problems == ()
    return made.lines[0]


def value(found: Line, label: str) -> float:
    return next(number.value for number in found.numbers if number.label == label)


# Common practice, no source: trim is gathered at one and a half times its edge, plus a seam allowance.
@pytest.mark.parametrize("edge", [12, 34, 72])
def test_trim_is_gathered_at_one_and_a_half_times_the_edge(edge: int) -> None:
    found = line(kind="frill", edge=f"{edge} in", turning="1/2 in")
    assert value(found, "Together") == 1.5 * edge + 1


# Common practice, no source: pin tucks 1/4 inch wide set 1/2 inch apart.
def test_quarter_inch_pin_tucks_half_an_inch_apart() -> None:
    found = line(kind="tucks", style="pin", width="1/4 in", fold_to_fold="1/2 in", number=8, finished="6 in")
    # Eight tucks double 8 × 1/2 in of cloth; as much cloth shows between two as lies in one.
    assert value(found, "Flat") == 6 + 8 * 0.5
    assert value(found, "Gap") == 0.25


# Common practice, no source: a 1-inch strip cut on the bias covers a raw seam, trimmed allowances inside.
def test_an_inch_wide_bias_strip_for_a_raw_seam() -> None:
    found = line(kind="bias", width="1 in", length="17 in")
    assert value(found, "Wanted") == 18
    assert value(found, "Yield") >= 18
    assert value(found, "Apart along the selvedge") == pytest.approx(math.sqrt(2))


# Memory (dressmaking handbooks): a square of side a yields at most a²/w of bias of width w, before joins.
@pytest.mark.parametrize("method", ["pieced", "continuous"])
@pytest.mark.parametrize(("side", "width"), [(18, 1), (24, 1.5), (36, 2), (36, 0.75)])
def test_a_square_yields_at_most_its_area_over_the_width(side: float, width: float, method: str) -> None:
    fields = {"kind": "bias", "width": f"{width} in", "remnant": [f"{side} in"] * 2, "method": method}
    found = line(**fields, seam="0 in", shortest="0 in")
    assert value(found, "At most") == side**2 / width
    # Before joins only the two corners and the last part of a turn are lost.
    assert 0.85 * side**2 / width < value(found, "Yield") <= side**2 / width


# Memory (quilters' and dressmakers' rule for a continuous strip): the square root of length × width is the
# side of the square to begin with, and seams make it a little more.
@pytest.mark.parametrize(("length", "width"), [(180, 1), (360, 1.5), (288, 2)])
def test_the_square_for_a_length_is_near_the_root_of_length_times_width(length: int, width: float) -> None:
    found = line(kind="bias", width=f"{width} in", length=f"{length} in", turning="0 in", method="continuous")
    root = math.sqrt(length * width)
    assert root < value(found, "Across") <= root + 2 * width + 1


# Memory (dressmaking handbooks): full-depth touching knife pleats take three times the finished width, and so
# do box pleats whose folds meet behind.
@pytest.mark.parametrize(("style", "pleat"), [("knife", "1 in"), ("box", "2 in"), ("knife", "3/4 in")])
def test_full_touching_pleats_take_three_times_the_finished_width(style: str, pleat: str) -> None:
    assert value(line(kind="pleats", style=style, finished="24 in", pleat=pleat), "Flat") == 72


# Memory (dressmaking handbooks): an inverted pleat is a box pleat seen from behind, and takes as much.
def test_an_inverted_pleat_takes_as_much_as_a_box_pleat() -> None:
    box, inverted = (
        value(line(kind="pleats", style=style, finished="24 in", number=1, depth="2 in"), "Flat")
        for style in ("box", "inverted")
    )
    assert box == inverted == 32


# Worked by hand: 12 tucks of 1/8 in, 1/4 in between, on a yoke side of 5 in. Each takes 1/4 in: 3 in.
def test_a_worked_yoke() -> None:
    found = line(kind="tucks", width="1/8 in", gap="1/4 in", number=12, finished="5 in", turning="1/2 in")
    assert (value(found, "Taken up"), value(found, "Flat"), value(found, "Fold to fold")) == (3, 9, 0.375)


# Worked by hand: cloth that loses 4 per cent of its length: 48 in finished needs 50 in.
def test_a_worked_shrinkage() -> None:
    found = line(kind="cloth", width="36 in", pieces=[{"width": "30 in", "length": "48 in"}], warp="4 %")
    assert value(found, "Laid") == 50


# International yard and pound agreement, 1959: an inch is 2.54 cm, a yard 0.9144 m, exactly.
def test_the_inch_and_the_yard_are_those_of_1959() -> None:
    for imperial, metric in (("1 in", "2.54 cm"), ("1 yd", "0.9144 m"), ("1 ft", "304.8 mm")):
        inches = value(line(kind="frill", edge=imperial, turning="0 in"), "Together")
        assert inches == value(line(kind="frill", edge=metric, turning="0 in"), "Together")
