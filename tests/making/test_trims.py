"""Frills, flat trim and thread: what is cut, and how the sheet words it."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inperiod.making import Line, sheet
from inperiod.making.trims import gathered_length, strips_across, thread_length, trim_length

lengths = st.fractions(min_value=Fraction(1, 8), max_value=300, max_denominator=32)
turnings = st.fractions(min_value=0, max_value=2, max_denominator=16)


def line(**fields: Any) -> Line:
    made = sheet([fields])
    assert made.problems == ()
    return made.lines[0]


def test_a_frill_is_its_edge_times_its_fullness_and_a_join() -> None:
    found = line(kind="frill", edge="34 in")
    assert found.formula == "34 in × 1.5 = 51 in, and 1 in for the join: 52 in."
    assert found.cut == "Cut or buy 52 in (132.1 cm) of edging."


def test_an_open_frill_has_ends_and_no_join() -> None:
    assert line(kind="frill", edge="34 in", open=True).formula.endswith("and 1 in for the ends: 52 in.")


def test_edges_are_summed_by_name() -> None:
    found = line(kind="frill", edge={"neck": "34 in", "armholes": ["17 in", "17 in"]}, fullness=2)
    assert found.formula.startswith(
        "neck 34 in + armholes 2 × 17 in = 68 in; 68 in × 2 = 136 in, and 3 × 1 in for the joins: 139 in."
    )
    assert [(number.label, number.value) for number in found.numbers] == [
        ("neck", 69),
        ("armholes", 35),
        ("armholes", 35),
        ("Together", 139),
    ]


def test_a_frill_from_cloth_says_how_many_strips_and_how_deep() -> None:
    found = line(kind="frill", edge="72 in", fullness=2, depth="4 in", hem="1/2 in", cloth_width="36 in")
    # 144 in from strips that give 35 in each: five.
    assert found.cut.startswith("Cut 5 strips 5 in (12.7 cm) deep, across cloth 36 in (91.4 cm) wide")
    assert "5 × 1 in for the joins: 149 in." in found.formula


def test_metric_boards_reckon_in_centimetres() -> None:
    found = line(kind="frill", edge="86 cm", fullness=2.5)
    assert found.formula == "86 cm × 2.5 = 215 cm, and 2 cm for the join: 217 cm."
    assert found.cut == "Cut or buy 217 cm (85 1/2 in) of edging."


@settings(deadline=None)
@given(lengths, st.fractions(min_value=1, max_value=4, max_denominator=8), turnings)
def test_what_is_cut_is_never_less_than_the_edge(
    edge: Fraction, fullness: Fraction, turning: Fraction
) -> None:
    assert gathered_length(edge, fullness, turning) >= edge * fullness >= edge


@settings(deadline=None)
@given(lengths, st.fractions(min_value=1, max_value=4, max_denominator=8), turnings)
def test_strips_across_the_cloth_are_just_enough(
    edge: Fraction, fullness: Fraction, turning: Fraction
) -> None:
    width = Fraction(36)
    count = strips_across(edge, fullness, turning, width)
    assert count * width >= gathered_length(edge, fullness, turning, count)
    assert count == 1 or (count - 1) * width < gathered_length(edge, fullness, turning, count - 1)


@settings(deadline=None)
@given(lengths, turnings, st.integers(0, 8), turnings)
def test_flat_trim_is_never_less_than_its_line(
    edge: Fraction, turning: Fraction, mitres: int, width: Fraction
) -> None:
    assert trim_length(edge, turning, 2 * width, mitres) >= edge


def test_mitres_take_twice_the_width_each() -> None:
    found = line(kind="insertion", of="braid", along="60 in", width="3/4 in", corners=4)
    assert found.formula == (
        "60 in, and 1 in for the ends or the overlap, "
        "and 4 × 1 1/2 in for the mitres, twice the width each: 67 in."
    )


def test_ribbon_through_beading_takes_up_and_has_ties() -> None:
    found = line(kind="insertion", of="ribbon", along="40 in", take_up="5 %", ties="24 in")
    assert found.formula == (
        "40 in, 5 % taken up: 42 in, and 1 in for the ends or the overlap, and 24 in for the ties: 67 in."
    )


def test_insertion_says_how_much_cloth_it_replaces() -> None:
    found = line(kind="insertion", along="30 in", width="1 in")
    assert "It sets 1 in (2.5 cm) into the cloth" in found.notes[0]


def test_thread_is_the_line_times_a_factor_that_must_be_stated() -> None:
    found = line(kind="stitching", stitch="feather stitch", along="72 in", factor=4, strands=2, skein="8 m")
    assert found.formula == "72 in × 4 × 2 strands = 576 in of thread. ÷ 8 m in a skein: 2."
    missing = sheet([{"kind": "stitching", "along": "72 in"}])
    assert missing.lines == ()
    assert missing.problems[0].message == "factor is missing."


@settings(deadline=None)
@given(lengths, st.integers(1, 20), st.integers(1, 6))
def test_thread_is_never_less_than_its_line(edge: Fraction, factor: int, strands: int) -> None:
    assert thread_length(edge, Fraction(factor), strands) >= edge


@pytest.mark.parametrize(
    ("fields", "field", "message"),
    [
        ({"kind": "frill"}, "edge", "edge is missing."),
        ({"kind": "frill", "edge": []}, "edge", "edge is missing."),
        ({"kind": "frill", "edge": "34"}, "edge", "edge: “34” has no unit."),
        ({"kind": "frill", "edge": "0 in"}, "edge", "edge: “0 in” is too little."),
        ({"kind": "frill", "edge": "34 in", "fullness": 0.5}, "fullness", "fullness: “0.5” is out of reach."),
        (
            {"kind": "frill", "edge": "34 in", "fullness": "full"},
            "fullness",
            "fullness: “full” is not a number.",
        ),
        ({"kind": "frill", "edge": "9 in", "cloth_width": "36 in"}, "depth", "depth is missing: how deep"),
        ({"kind": "frill", "edge": "9 in", "depth": "1 in", "cloth_width": "1 in"}, "cloth_width", "used up"),
        ({"kind": "frill", "edge": "9 in", "open": "yes"}, "open", "open: “yes” is neither true nor false."),
        ({"kind": "insertion", "along": "9 in", "of": "string"}, "of", "of: “string” is not known."),
        (
            {"kind": "insertion", "along": "9 in", "corners": 1.5},
            "corners",
            "corners: “1.5” is not a number of",
        ),
        ({"kind": "insertion", "along": "9 in", "corners": 2}, "width", "width is missing."),
        ({"kind": "insertion", "along": "9 in", "take_up": "80 %"}, "take_up", "not a share below a half"),
        ({"kind": "frill", "edge": ["1 in"] * 61}, "edge", "edge has more than 60 lengths."),
    ],
)
def test_what_is_wrong_is_said_and_gives_no_line(fields: dict[str, Any], field: str, message: str) -> None:
    made = sheet([fields])
    assert made.lines == ()
    assert [problem.field for problem in made.problems] == [field]
    assert message in made.problems[0].message
    assert made.problems[0].hint


def test_a_field_nobody_asked_for_is_named_once() -> None:
    made = sheet([{"kind": "tucks", "width": "1/4 in", "gap": "1/4 in", "number": 4, "colour": "white"}])
    assert [problem.field for problem in made.problems] == ["colour"]


def test_a_field_nobody_asked_for_is_named_and_the_line_stands() -> None:
    made = sheet([{"kind": "frill", "edge": "34 in", "fulness": 2}])
    assert made.problems[0].message == "“fulness” is not a field here."
    assert "fullness" in made.problems[0].hint
    assert made.lines[0].cut == "Cut or buy 52 in (132.1 cm) of edging."
