"""Shares against published intervals and a reference library."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inperiod.evidence.shares import effective_plates, share, wilson

# R. G. Newcombe, "Two-sided confidence intervals for the single proportion: comparison of seven methods",
# Statistics in Medicine 17 (1998) 857–872: the score interval without continuity correction, 95 %.
NEWCOMBE = [
    (81, 263, 0.2553, 0.3662),
    (15, 148, 0.0624, 0.1605),
    (0, 20, 0.0, 0.1611),
    (1, 29, 0.0061, 0.1718),
]


@pytest.mark.parametrize(("showing", "recorded", "low", "high"), NEWCOMBE)
def test_the_interval_is_newcombes_worked_example(
    showing: int, recorded: int, low: float, high: float
) -> None:
    found = wilson(showing / recorded, recorded)
    assert found == pytest.approx((low, high), abs=5e-5)


def reference_interval(showing: float, recorded: float) -> tuple[float, float]:
    # Here, as it takes a second to load, for everybody who collects the tests.
    from statsmodels.stats.proportion import proportion_confint

    low, high = proportion_confint(showing, recorded, alpha=0.05, method="wilson")
    return low, high


@settings(deadline=None)
@given(st.integers(1, 2000), st.floats(0, 1))
def test_the_interval_agrees_with_statsmodels(recorded: int, part: float) -> None:
    showing = round(part * recorded)
    theirs = reference_interval(showing, recorded)
    assert wilson(showing / recorded, recorded) == pytest.approx(theirs, abs=1e-12)


@settings(deadline=None)
@given(st.floats(0.05, 500), st.floats(0, 1))
def test_the_interval_agrees_with_statsmodels_for_weights_that_are_no_whole_numbers(
    recorded: float, part: float
) -> None:
    low, high = reference_interval(part * recorded, recorded)
    theirs = max(0.0, low), min(1.0, high)
    assert wilson(part, recorded) == pytest.approx(theirs, abs=1e-9)


@pytest.mark.parametrize("each", [1, 3, 12, 30])
def test_documents_of_one_size_shrink_by_kishs_design_effect(each: int) -> None:
    # L. Kish, Survey Sampling (1965), §5.4: deff = 1 + (b̄ − 1)·roh for clusters of one size b̄ (memory).
    documents = 7
    found = share([(1.0, each, 0)] * documents)
    assert found.effective == pytest.approx(documents * each / (1 + (each - 1) * 0.2))


def test_unequal_documents_shrink_by_the_size_a_plate_lives_in() -> None:
    # By hand: n = 1·10 + 0.5·4 = 12; m = (1·100 + 0.5·16) / 12 = 9; n' = 12 / (1 + 8·0.2) = 4.615…
    assert effective_plates(12, 108) == pytest.approx(12 / 2.6)
    assert share([(1.0, 10, 5), (0.5, 4, 1)]).effective == pytest.approx(12 / 2.6)
    assert share([(1.0, 10, 5), (0.5, 4, 1)]).value == pytest.approx(5.5 / 12)
