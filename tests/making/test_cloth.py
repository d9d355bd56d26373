"""The lay: pieces never overlap or leave the cloth, keep their grain, and take no more than they must."""

from __future__ import annotations

from fractions import Fraction
from itertools import combinations
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inperiod.making import Line, MakingSheet, sheet
from inperiod.making.cloth import let_out
from inperiod.making.packing import Box, Laid, lay, length_of

WIDTH = 100


@st.composite
def several_boxes(draw: st.DrawFn) -> list[Box]:
    sizes = draw(st.lists(st.tuples(st.integers(1, WIDTH), st.integers(1, 150)), min_size=1, max_size=14))
    found = []
    for place, (across, along) in enumerate(sizes):
        at_fold = draw(st.booleans()) and draw(st.booleans())
        turns = not at_fold and draw(st.booleans())
        found.append(Box(place, across, along, turns, at_fold))
    return found


def overlap(a: Laid, b: Laid) -> bool:
    return a.x < b.x + b.across and b.x < a.x + a.across and a.y < b.y + b.along and b.y < a.y + a.along


@settings(deadline=None)
@given(several_boxes())
def test_no_two_pieces_overlap_and_none_leaves_the_cloth(boxes: list[Box]) -> None:
    laid = lay(boxes, WIDTH)
    assert sorted(each.piece for each in laid) == list(range(len(boxes)))
    assert not any(overlap(a, b) for a, b in combinations(laid, 2))
    for each in laid:
        assert 0 <= each.x <= each.x + each.across <= WIDTH
        assert each.y >= 0


@settings(deadline=None)
@given(several_boxes())
def test_pieces_keep_their_size_their_grain_and_the_fold(boxes: list[Box]) -> None:
    for each in lay(boxes, WIDTH):
        box = boxes[each.piece]
        sides = (each.across, each.along)
        assert sides == ((box.along, box.across) if each.turned else (box.across, box.along))
        assert box.turns or not each.turned
        assert not box.at_fold or each.x == 0


@settings(deadline=None)
@given(several_boxes())
def test_a_lay_stands_between_the_area_and_one_behind_the_other(boxes: list[Box]) -> None:
    length = length_of(lay(boxes, WIDTH))
    assert length * WIDTH >= sum(box.across * box.along for box in boxes)
    assert length <= sum(box.along for box in boxes)


@settings(deadline=None)
@given(several_boxes())
def test_a_lay_is_the_same_every_time(boxes: list[Box]) -> None:
    assert lay(boxes, WIDTH) == lay(list(boxes), WIDTH)


# Lays whose shortest length anyone can see (worked by hand).
@pytest.mark.parametrize(
    ("sizes", "length"),
    [
        ([(100, 30)], 30),
        ([(50, 40), (50, 40)], 40),
        ([(60, 50), (40, 50), (100, 10)], 60),
        ([(50, 20)] * 6, 60),
        ([(40, 60), (60, 30), (60, 30)], 60),
        ([(70, 10), (70, 10)], 20),
    ],
)
def test_lays_seen_at_a_glance_are_found(sizes: list[tuple[int, int]], length: int) -> None:
    boxes = [Box(place, *size) for place, size in enumerate(sizes)]
    assert length_of(lay(boxes, WIDTH)) == length


def test_a_piece_is_turned_only_where_that_helps_and_may_be() -> None:
    assert length_of(lay([Box(0, 20, 90, turns=True)], WIDTH)) == 20
    assert length_of(lay([Box(0, 20, 90)], WIDTH)) == 90


PIECES = [
    {"name": "front", "width": "20 in", "length": "44 in"},
    {"name": "back", "width": "20 in", "length": "44 in"},
    {"name": "sleeve", "width": "16 in", "length": "20 in", "number": 2},
]


def made(**fields: Any) -> MakingSheet:
    return sheet([{"kind": "cloth", "width": "36 in", "pieces": PIECES, **fields}])


def line(**fields: Any) -> Line:
    found = made(**fields)
    assert found.problems == ()
    return found.lines[0]


def value(found: Line, label: str) -> float:
    return next(number.value for number in found.numbers if number.label == label)


def test_the_lay_is_told_against_the_simple_sum_and_the_area() -> None:
    found = line()
    # Front and back leave 16 in beside them: one sleeve each, and nothing else is needed.
    assert value(found, "Laid") == 88
    assert value(found, "One behind the other") == 128
    assert value(found, "No lay takes less than") == pytest.approx((2 * 880 + 2 * 320) / 36)
    assert found.cut.startswith("Buy 2 1/2 yd (2.3 m) of cloth 36 in (91.4 cm) wide")


@pytest.mark.parametrize(
    "width", ["18 in", "21 in", "27 in", "36 in", "54 in", "45 in", "60 in", "115 cm", "150 cm"]
)
def test_period_and_modern_widths_are_laid(width: str) -> None:
    found = sheet(
        [{"kind": "cloth", "width": width, "pieces": [{"width": "17 in", "length": "44 in", "number": 4}]}]
    )
    assert found.problems == ()
    assert value(found.lines[0], "Laid") >= 44


def test_doubled_cloth_cuts_two_at_once_and_keeps_pieces_on_the_fold() -> None:
    pieces = [
        {"name": "front", "width": "10 in", "length": "44 in", "fold": True},
        {"name": "sleeve", "width": "15 in", "length": "20 in", "number": 2},
    ]
    found = line(width="54 in", doubled=True, pieces=pieces)
    assert value(found, "Laid") == 44
    assert "The cloth lies doubled" in found.notes[0]
    assert found.figure is not None
    front = next(shape for shape in found.figure.shapes if shape.look == "piece")
    cloth = next(shape for shape in found.figure.shapes if shape.look == "cloth")
    assert front.at[1] == pytest.approx(cloth.at[1])


@settings(deadline=None)
@given(
    st.fractions(min_value=1, max_value=60, max_denominator=16),
    st.fractions(min_value=0, max_value=Fraction(49, 100), max_denominator=100),
)
def test_what_is_left_after_shrinking_is_what_was_wanted(finished: Fraction, share: Fraction) -> None:
    cut = let_out(finished, share)
    assert cut >= finished
    assert cut * (1 - share) == finished


def test_shrinking_is_counted_along_the_warp_and_across_the_weft() -> None:
    pieces = [{"width": "19 in", "length": "45 in"}]
    assert value(line(pieces=pieces, warp="10 %"), "Laid") == 50
    assert value(line(pieces=pieces, weft="5 %"), "Laid") == 45
    found = line(pieces=pieces, warp=0.1, weft=0.05)
    assert "÷ (1 − 0.1) along and ÷ (1 − 0.05) across: cut = finished ÷ (1 − s)." in found.formula
    assert "1 × 20 in (50.8 cm) across by 50 in (127 cm) along" in [each.text for each in found.numbers]


def test_crosswise_pieces_lie_across_and_any_grain_may_turn_unless_the_design_is_one_way() -> None:
    piece = {"width": "10 in", "length": "30 in"}
    assert value(line(pieces=[piece]), "Laid") == 30
    assert value(line(pieces=[{**piece, "grain": "crosswise"}]), "Laid") == 10
    assert value(line(pieces=[{**piece, "grain": "any"}]), "Laid") == 10
    found = line(pieces=[{**piece, "grain": "any"}], one_way=True)
    assert value(found, "Laid") == 30
    assert "every piece points the same way" in found.notes[0]


def test_turnings_are_added_on_both_sides() -> None:
    assert value(line(pieces=[{"width": "10 in", "length": "30 in", "turning": "1/2 in"}]), "Laid") == 31


def test_cost_is_that_of_what_is_bought() -> None:
    bought = made(price="1.25", currency="GBP").shopping[0]
    assert (bought.what, bought.text, bought.cost) == (
        "Cloth, 36 in (91.4 cm) wide",
        "2 1/2 yd (2.3 m)",
        "3.13 GBP",
    )
    metric = sheet(
        [
            {
                "kind": "cloth",
                "width": "115 cm",
                "pieces": [{"width": "50 cm", "length": "112 cm"}],
                "price": 10,
            }
        ]
    )
    assert (metric.shopping[0].text, metric.shopping[0].cost) == ("1.2 m (1 1/4 yd)", "12.00")


def test_like_cloth_named_alike_is_bought_in_one() -> None:
    two = [{"kind": "cloth", "width": "36 in", "pieces": PIECES, "buy": "lawn"}] * 2
    (bought,) = sheet(two).shopping
    assert (bought.text, bought.lines) == ("5 yd (4.5 m)", (0, 1))


@pytest.mark.parametrize(
    ("fields", "field", "message"),
    [
        ({"pieces": []}, "pieces", "pieces are missing"),
        ({"pieces": "front"}, "pieces", "pieces are missing"),
        ({"pieces": ["front"]}, "pieces", "Piece 1 has no fields"),
        ({"pieces": [{"name": "front", "width": "20 in"}]}, "pieces, front", "front: length is missing."),
        ({"pieces": [{"width": "20 in", "length": "20"}]}, "pieces, piece 1", "has no unit"),
        ({"pieces": [{"width": "40 in", "length": "20 in"}]}, "pieces", "piece 1 is 40 in (101.6 cm) across"),
        (
            {"pieces": [{"width": "9 in", "length": "9 in", "fold": True}]},
            "pieces, piece 1",
            "fold needs cloth",
        ),
        (
            {"pieces": [{"width": "9 in", "length": "9 in", "number": 201}]},
            "pieces, piece 1",
            "number of pieces",
        ),
        (
            {"pieces": [{"width": "9 in", "length": "9 in", "number": 150}] * 2},
            "pieces",
            "300 pieces are too many",
        ),
        ({"selvedge": "18 in"}, "selvedge", "leave no cloth"),
        ({"weft": "60 %"}, "weft", "not a share below a half"),
        ({"price": "one pound"}, "price", "is not a number"),
        ({"doubled": "yes"}, "doubled", "neither true nor false"),
    ],
)
def test_what_cannot_be_laid_is_said(fields: dict[str, Any], field: str, message: str) -> None:
    found = made(**fields)
    assert found.lines == ()
    assert found.problems[0].field == field
    assert message in found.problems[0].message
