"""Aoristic weights: over windows that tile time they sum to 1 for every span.

J. H. Ratcliffe, "Aoristic analysis: the spatial interpretation of unspecific temporal events", International
Journal of Geographical Information Science 14 (2000) 669–679.
"""

from __future__ import annotations

from datetime import date

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inperiod.dating import read_edtf, widened
from inperiod.evidence import Window
from inperiod.evidence.weights import weight

DAYS = st.integers(date(1850, 1, 1).toordinal(), date(1950, 12, 31).toordinal())
SEASONS = st.builds("{}-{}".format, st.integers(1850, 1950), st.integers(21, 24))
OTHERS = st.sampled_from(("1912", "1912~", "191X", "1912-02", "1912?", "../1912", "1912/..", "1905/1913"))


@st.composite
def spans(draw: st.DrawFn) -> tuple[int | None, int | None]:
    if draw(st.booleans()):
        span = widened(read_edtf(draw(SEASONS | OTHERS)), 5)
        return span.earliest, span.latest
    first, last = sorted((draw(DAYS), draw(DAYS)))
    return draw(st.sampled_from((first, None))), draw(st.sampled_from((last, None)))


@settings(deadline=None)
@given(spans(), st.lists(DAYS, min_size=0, max_size=12, unique=True))
def test_weights_over_windows_that_tile_time_sum_to_one(
    span: tuple[int | None, int | None], cuts: list[int]
) -> None:
    edges = sorted(cuts)
    begins = [None, *edges]
    ends = [*(edge - 1 for edge in edges), None]
    parts = [weight(*span, Window(first, last)) for first, last in zip(begins, ends, strict=True)]
    assert all(0 <= part <= 1 for part in parts)
    assert sum(parts) == pytest.approx(1.0, abs=1e-9)


def test_the_weight_is_the_share_of_days() -> None:
    # Ratcliffe's case: an event between two times weighs equally in each unit of time it may lie in.
    autumn = read_edtf("1912-23")  # September to November: 30 + 31 + 30 days
    october = Window(date(1912, 10, 1).toordinal(), date(1912, 10, 31).toordinal())
    assert weight(autumn.earliest, autumn.latest, october) == pytest.approx(31 / 91)


def test_a_winter_lies_in_two_years() -> None:
    winter = read_edtf("1911-24")  # December 1911 to February 1912, a leap year: 31 + 31 + 29 days
    year = Window(date(1912, 1, 1).toordinal(), date(1912, 12, 31).toordinal())
    assert weight(winter.earliest, winter.latest, year) == pytest.approx(60 / 91)


@pytest.mark.parametrize(
    ("span", "window", "expected"),
    [
        ((None, 10), (None, 5), 1.0),
        ((None, 10), (1, 10), 0.0),
        ((None, 10), (1, None), 0.0),
        ((10, None), (50, None), 1.0),
        ((10, None), (1, 90), 0.0),
        ((None, None), (None, 5), 0.5),
        ((None, None), (6, None), 0.5),
        ((None, None), (1, 5), 0.0),
        ((None, None), (None, None), 1.0),
        ((1, 10), (None, None), 1.0),
        ((1, 10), (11, 20), 0.0),
        ((1, 10), (10, 20), 0.1),
    ],
)
def test_open_spans_weigh_as_the_limit_of_long_ones(
    span: tuple[int | None, int | None], window: tuple[int | None, int | None], expected: float
) -> None:
    assert weight(*span, Window(*window)) == pytest.approx(expected)


def test_a_window_cannot_end_before_it_begins() -> None:
    with pytest.raises(ValueError, match="ends before it begins"):
        Window(5, 4)
