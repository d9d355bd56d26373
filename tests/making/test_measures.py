"""Lengths are read as people write them, kept exactly, and said in both units."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inperiod.making.measures import (
    CENTIMETRE,
    UnreadableMeasure,
    decimal,
    mixed,
    read_measure,
    read_number,
    said,
    shown,
    to_buy,
    to_cut,
)

READ = [
    ("34 1/2 in", "69/2"),
    ("34½ in", "69/2"),
    ("34-1/2 inches", "69/2"),
    ("1/4 in", "1/4"),
    ("¼″", "1/4"),
    ('2 3/8"', "19/8"),
    ("2.5 in.", "5/2"),
    ("1 yd", "36"),
    ("1 yd 4 1/2 in", "81/2"),
    ("1 yd, 4 in", "40"),
    ("3/8 yd", "27/2"),
    ("5 ft 2 in", "62"),
    ("5′ 2″", "62"),
    ("2.54 cm", "1"),
    ("2,54 cm", "1"),
    ("254mm", "10"),
    ("1.27 m", "50"),
    ("  12   IN ", "12"),
    ("0.9144 metres", "36"),
]


@pytest.mark.parametrize(("text", "inches"), READ)
def test_a_length_is_read_as_written(text: str, inches: str) -> None:
    assert read_measure(text).inches == Fraction(inches)


@pytest.mark.parametrize(
    ("text", "metric"), [("2.5 cm", True), ("40 mm", True), ("2 m", True), ("1 yd", False)]
)
def test_the_writers_own_units_are_remembered(text: str, metric: bool) -> None:
    assert read_measure(text).metric is metric


@pytest.mark.parametrize(
    ("value", "message", "expected"),
    [
        ("40", "“40” has no unit.", "40 in or 40 cm"),
        (40, "“40” has no unit.", "40 in or 40 cm"),
        (1.5, "“1.5” has no unit.", "1.5 in or 1.5 cm"),
        ("about a yard", "“about a yard” is not a measure.", "such as 34 1/2 in"),
        ("34-36 in", "“34-36 in” is not a measure.", "such as 34 1/2 in"),
        ("1,000 in", "“1,000 in” is not a measure.", "such as 34 1/2 in"),
        ("1/0 in", "“1/0 in” is not a measure.", "such as 34 1/2 in"),
        ("3 ells", "“3 ells” is not a measure.", "such as 34 1/2 in"),
        ("-3 in", "“-3 in” is not a measure.", "such as 34 1/2 in"),
        ("", "“” is not a measure.", "such as 34 1/2 in"),
        (None, "Nothing is not a measure.", "such as 34 1/2 in"),
        (True, "“true” is not a measure.", "such as 34 1/2 in"),
        (["3 in"], "A list is not a measure.", "such as 34 1/2 in"),
        ({"a": 1}, "A set of fields is not a measure.", "such as 34 1/2 in"),
        (float("nan"), "This number is not a measure.", "such as 34 1/2 in"),
        ("2000 yd", "“2000 yd” is longer than 1000 yards.", "such as 34 1/2 in"),
    ],
)
def test_what_cannot_be_read_says_what_was_expected(value: object, message: str, expected: str) -> None:
    with pytest.raises(UnreadableMeasure) as caught:
        read_measure(value)
    assert str(caught.value) == message
    assert expected in caught.value.expected


@pytest.mark.parametrize(
    ("value", "number"),
    [(2, "2"), (1.5, "3/2"), ("1 1/2", "3/2"), ("2½", "5/2"), (0.1, "1/10"), ("2,5", "5/2")],
)
def test_a_number_is_exact(value: object, number: str) -> None:
    assert read_number(value) == Fraction(number)


BEYOND = [float("inf"), float("nan"), 10**400, 1_000_000, 1e-5]


@pytest.mark.parametrize("value", BEYOND, ids=["infinite", "none", "vast", "large", "small"])
def test_numbers_beyond_all_garments_are_refused(value: float) -> None:
    with pytest.raises(UnreadableMeasure, match="beyond all garments"):
        read_number(value)


@pytest.mark.parametrize("value", ["two", None, True, "1.5 in", [], "1/0", -1])
def test_what_is_no_number_is_refused(value: object) -> None:
    with pytest.raises(UnreadableMeasure):
        read_number(value)


@settings(deadline=None)
@given(st.integers(0, 36_000 * 16))
def test_inches_come_back_from_their_own_words(sixteenths: int) -> None:
    length = Fraction(sixteenths, 16)
    assert read_measure(f"{mixed(length)} in").inches == length


@settings(deadline=None)
@given(st.integers(0, 900_000))
def test_centimetres_come_back_from_their_own_words(millimetres: int) -> None:
    length = Fraction(millimetres, 10) * CENTIMETRE
    assert read_measure(f"{decimal(length / CENTIMETRE)} cm").inches == length
    assert read_measure(f"{millimetres} mm").inches == length


lengths = st.fractions(min_value=0, max_value=30_000, max_denominator=5000)


@settings(deadline=None)
@given(lengths, st.booleans())
def test_what_is_shown_is_within_half_a_step_in_both_units(length: Fraction, metric: bool) -> None:
    own, other = shown(length, metric)[:-1].split(" (")
    steps = {"in": Fraction(1, 16), "cm": CENTIMETRE / 10}
    for text in (own, other):
        assert abs(read_measure(text).inches - length) <= steps[text[-2:]] / 2
    assert read_measure(own).metric is metric


@settings(deadline=None)
@given(lengths, st.booleans())
def test_what_is_to_cut_is_never_too_short_in_either_unit(length: Fraction, metric: bool) -> None:
    for text in to_cut(length, metric)[:-1].split(" ("):
        assert 0 <= read_measure(text).inches - length < Fraction(1, 8)


@settings(deadline=None)
@given(lengths, st.booleans())
def test_what_is_said_in_a_formula_is_exact_or_says_about(length: Fraction, metric: bool) -> None:
    text = said(length, metric)
    exact = read_measure(text.removeprefix("about ")).inches == length
    assert exact is not text.startswith("about ")


@settings(deadline=None)
@given(lengths, st.booleans())
def test_what_is_bought_is_enough_and_in_steps_of_a_shop(length: Fraction, metric: bool) -> None:
    bought, text = to_buy(length, metric)
    step = Fraction(500, 127) / 1 if metric else Fraction(9, 2)
    assert 0 <= bought - length < step
    assert (bought / step).denominator == 1
    assert read_measure(text.split(" (")[0]).inches == bought
    assert read_measure(text[:-1].split(" (")[1]).inches >= length


@pytest.mark.parametrize(
    ("length", "metric", "step", "text"),
    [
        ("100 in", False, None, "2 7/8 yd (2.6 m)"),
        ("100 in", False, "1/4 yd", "3 yd (2.6 m)"),
        ("254 cm", True, None, "2.6 m (2 7/8 yd)"),
        ("254 cm", True, "50 cm", "3 m (2 7/8 yd)"),
        ("36 in", False, None, "1 yd (1 m)"),
    ],
)
def test_cloth_is_bought_by_the_eighth_of_a_yard_or_the_tenth_of_a_metre(
    length: str, metric: bool, step: str | None, text: str
) -> None:
    sold = read_measure(step).inches if step else None
    assert to_buy(read_measure(length).inches, metric, sold)[1] == text
