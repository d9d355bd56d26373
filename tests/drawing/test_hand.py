"""The hand's geometry: paths go where they say, and what is drawn along and inside them stays there."""

from __future__ import annotations

import math
from xml.etree import ElementTree

import pytest

from inperiod.drawing import hand
from inperiod.drawing.hand import LINE, Path, path, ring, smooth

CURVE = smooth((10, 80), (30, 20), (60, 50), (86, 12))


def test_a_smooth_line_goes_through_its_points() -> None:
    for point in ((10, 80), (30, 20), (60, 50), (86, 12)):
        assert min(math.dist(point, other) for other in CURVE.points(20)) < 1e-9


def test_turning_a_line_round_twice_gives_it_back() -> None:
    line = CURVE.to((90, 40)).bend((80, 60), (70, 40))
    assert line.reverse().reverse() == line
    assert line.reverse().points(6)[0] == pytest.approx(line.end)


def test_mirrored_twice_is_the_same_line() -> None:
    for point, again in zip(CURVE.points(), CURVE.mirror().mirror().points(), strict=True):
        assert again == pytest.approx(point)
    assert CURVE.mirror(48).start == (86, 80)


def test_a_ring_is_a_circle_within_three_parts_in_ten_thousand() -> None:
    # 0.027 %: the known greatest error of a circle of four cubic curves (constant 0.5522847…), from memory.
    for point in ring((48, 48), 20).points(30):
        assert math.dist(point, (48, 48)) == pytest.approx(20, rel=3e-4)


def test_length_of_a_circle() -> None:
    assert hand.length(ring((0, 0), 10)) == pytest.approx(2 * math.pi * 10, rel=2e-3)


def test_a_quarter_turn_carries_right_to_down() -> None:
    assert path((10, 0), (20, 0)).turn(90).end == pytest.approx((0, 20))


def test_a_quadratic_bend_passes_half_way_to_its_control() -> None:
    assert path((0, 0)).bend((5, 10), (10, 0)).points(2)[1] == pytest.approx((5, 5))


def test_a_parallel_keeps_its_distance_and_its_side() -> None:
    assert hand.beside(path((0, 0), (10, 0)), 2).points() == ((0, 2), (10, 2))
    for point in hand.beside(ring((48, 48), 20), -3).points():
        assert math.dist(point, (48, 48)) == pytest.approx(23, abs=0.05)


def test_hatching_stays_inside_and_covers() -> None:
    area = ring((48, 48), 20)
    lines = hand.hatch(area, 30, 2.5)
    for line in lines:
        for point in line.points():
            assert math.dist(point, (48, 48)) < 20.01
    assert len(lines) == pytest.approx(2 * 20 / 2.5, abs=1)
    # Area by the hatching's own sum of strips against the circle's.
    assert sum(map(hand.length, lines)) * 2.5 == pytest.approx(math.pi * 400, rel=0.03)


def test_a_hollow_is_left_unhatched() -> None:
    hollow = path((0, 0), (30, 0), (30, 30), (20, 30), (20, 10), (10, 10), (10, 30), (0, 30)).close()
    for line in hand.hatch(hollow, 0, 3):
        (left, y), (right, _) = line.points()
        assert y < 10 or right <= 10.01 or left >= 19.99


def test_stitches_begin_and_end_the_row() -> None:
    row = hand.stitches(path((0, 0), (50, 0)), 3, 2)
    assert row[0].start == (0, 0)
    assert row[-1].end == pytest.approx((50, 0))
    long = {round(hand.length(one), 6) for one in row}
    assert len(long) == 1


def test_scallops_hang_as_deep_as_asked_and_points_stand_as_high() -> None:
    edge = path((0, 0), (60, 0))
    assert max(y for _, y in hand.waved(edge, 5, 6, "scallops").points(20)) == pytest.approx(5, abs=0.01)
    assert min(y for _, y in hand.waved(edge, -5, 6, "points").points()) == pytest.approx(-5)


def test_clipping_keeps_what_is_inside() -> None:
    pieces = hand.clipped(path((0, 48), (96, 48)), ring((48, 48), 20), 0.1)
    assert len(pieces) == 1
    assert hand.length(pieces[0]) == pytest.approx(40, abs=0.3)


def test_titles_are_escaped_and_read_out() -> None:
    root = ElementTree.fromstring(hand.svg(LINE(CURVE), '<b>"A" & b</b>'))
    assert root[0].text == '<b>"A" & b</b>'
    assert root.get("aria-label") == root[0].text
    assert root.get("role") == "img"


def test_neighbours_of_one_pen_share_an_element_but_fills_do_not() -> None:
    assert len(hand.markup(LINE(CURVE, CURVE.mirror()))) == 1
    assert len(hand.markup(hand.GROUND(ring((9, 9), 3), ring((9, 9), 2)))) == 2


def test_an_empty_drawing_is_still_an_image_with_a_title() -> None:
    assert ElementTree.fromstring(hand.svg((), "nothing"))[0].text == "nothing"


def test_a_path_writes_its_data_with_two_decimals_at_most() -> None:
    assert Path((1 / 3, 2)).to((4, 5.555)).close().d() == "M0.33 2L4 5.56Z"
