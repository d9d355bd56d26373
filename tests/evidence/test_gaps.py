"""A gap between two uses is told from a use that a few documents happened to miss."""

from __future__ import annotations

from math import exp
from random import Random

import pytest

from evidence.catalogues import facts, round_, source, square, window, yearly
from inperiod.evidence import Facts, Finding, Question, answer
from inperiod.evidence.constants import ALPHA, GAP_ALPHA


def ask(given: Facts, when: str) -> Finding:
    return answer(given, Question("day-dress", ("neckline/square",), window(when))).findings[0]


def gap(plates: int, looked: bool = True) -> Facts:
    """Square necks from 1900 to 1903 and again from 1926 to 1929, between them none in 22 documents."""
    lists = yearly(1900, 1929, (*range(1900, 1904), *range(1926, 1930)), plates=plates)
    return facts(*(each for each in lists if looked or each.id != "list-1915"))


def test_a_year_in_a_long_silent_gap_is_lapsed_though_the_year_alone_proves_nothing() -> None:
    finding = ask(gap(plates=16), "1915")
    assert finding.verdict == "lapsed"
    assert not finding.direct_absence
    assert finding.reasons[0] == (
        "Not found in 1915, nor in any of the 22 documents about it, and that is enough to have looked at, "
        "yet seen before it (1903) and after it (1926): a gap, or an old use and a revival."
    )


def test_a_gap_little_looked_at_stays_bracketed() -> None:
    assert ask(gap(plates=2), "1915").verdict == "bracketed"


def test_a_year_nobody_looked_at_stays_bracketed_however_silent_its_neighbours() -> None:
    assert ask(gap(plates=16, looked=False), "1915").verdict == "bracketed"


def test_the_level_for_a_gap_is_that_of_two_waiting_times() -> None:
    """The larger of nothing: solve (1 + x)·e^−x = 0.05 (gamma distribution, shape 2; any table of it)."""
    low, high = 1.0, 20.0
    for _ in range(80):
        x = (low + high) / 2
        low, high = (x, high) if (1 + x) * exp(-x) > ALPHA else (low, x)
    assert pytest.approx(exp(-low), abs=5e-5) == GAP_ALPHA


def test_a_steady_use_by_one_in_twenty_is_seldom_called_lapsed() -> None:
    """Plates independent of each other are the arithmetic's own worst case turned mild: at most 5 % of the
    questions about a time within a steady use may be answered so."""
    chance, lapsed, asked = Random(5), 0, 0
    for _ in range(60):
        lists = []
        for number in range(150):
            showing = sum(chance.random() < 0.05 for _ in range(5))
            plates = square(showing) + round_(5 - showing)
            lists.append(source(f"s{number:03d}", f"{1900 + number // 5}-{number % 5 + 1:02d}", plates))
        made = facts(*lists)
        for year in range(1906, 1925, 2):
            asked += 1
            lapsed += ask(made, str(year)).verdict == "lapsed"
    assert asked == 600
    assert lapsed <= 0.05 * asked
