"""Ends of ranges and absence against published values, a printed formula and a reference library."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from evidence.catalogues import facts, round_, source, square, window
from inperiod.evidence import Question, answer
from inperiod.evidence.absence import absence_p, silence
from inperiod.evidence.ranges import strauss_sadler

# D. Strauss and P. M. Sadler, Mathematical Geology 21 (1989) 411–427: the 95 % one-sided extension as a
# multiple of the observed range, by number of finds (values follow from the printed formula).
MULTIPLES = {
    2: 19.0,
    3: 3.472,
    4: 1.714,
    5: 1.115,
    6: 0.821,
    8: 0.534,
    10: 0.395,
    15: 0.239,
    20: 0.171,
}


@pytest.mark.parametrize(("sightings", "multiple"), MULTIPLES.items())
def test_the_guide_in_years_is_strauss_and_sadlers_multiple(sightings: int, multiple: float) -> None:
    assert strauss_sadler(sightings, 1.0) == pytest.approx(multiple, abs=5e-4)


def test_the_monk_seal_of_the_caribbean() -> None:
    # A. R. Solow, "Inferring extinction from sighting data", Ecology 74 (1993) 962–964: seen 1915, 1922,
    # 1932, 1948 and 1952; in 1992 p = (37/77)^4 = 0.053. The Strauss–Sadler bound 1993.2: by the formula.
    assert absence_p(5, 1952 - 1915, 1992 - 1952) == pytest.approx(0.053, abs=5e-4)
    assert 1952 + strauss_sadler(5, 37) == pytest.approx(1993.2, abs=0.05)


# M. A. McCarthy, Biological Conservation 83 (1998) 9–17: p = (effort while seen / effort in all)^(N − 1), by
# the printed formula. The table of effort is ours: documents looked at in each year.
EFFORT = {1901: 2, 1902: 1, 1903: 4, 1904: 0, 1905: 3, 1906: 1, 1907: 2, 1908: 0, 1909: 5, 1910: 1, 1911: 2}
SEEN = (1902, 1903, 1905)


def test_absence_follows_effort_by_mccarthys_formula() -> None:
    sources = []
    for year, documents in EFFORT.items():
        for number in range(documents):
            showing = year in SEEN and number == 0
            sources.append(source(f"{year}-{number}", str(year), square() if showing else round_()))
    found = answer(facts(*sources), Question("day-dress", ("neckline/square",), window("1911"))).findings[0]
    within = sum(documents for year, documents in EFFORT.items() if 1902 <= year <= 1905)
    between = sum(documents for year, documents in EFFORT.items() if 1905 < year < 1911)
    assert (within, between) == (8, 9)
    assert found.absence_p == pytest.approx((within / (within + between)) ** (len(SEEN) - 1), abs=1e-12)


def test_absence_before_the_first_sighting_follows_effort_as_well() -> None:
    sources = [source(f"a{year}", str(year), round_()) for year in range(1880, 1900)]
    sources += [source(f"b{year}", str(year), square()) for year in range(1900, 1904)]
    found = answer(facts(*sources), Question("day-dress", ("neckline/square",), window("1885"))).findings[0]
    assert found.absence_p == pytest.approx((4 / (4 + 14)) ** 3, abs=1e-12)


@pytest.mark.parametrize("sightings", [17, 40, 400])
def test_confidence_in_absence_is_capped(sightings: int) -> None:
    assert absence_p(sightings, 90, 10) == pytest.approx(0.9**15)
    assert absence_p(16, 90, 10) == pytest.approx(0.9**15)
    assert absence_p(15, 90, 10) == pytest.approx(0.9**14)


@settings(deadline=None)
@given(st.lists(st.integers(1, 40), max_size=12))
def test_silence_is_the_beta_binomial_chance_of_no_success(plates: list[int]) -> None:
    from scipy.stats import betabinom  # a second to load, for whoever collects the tests

    # Mean 0.05 and correlation 1/(α + β + 1) = 0.2, so α + β = 4.
    theirs = math.prod(betabinom.pmf(0, count, 0.05 * 4, 0.95 * 4) for count in plates)
    assert silence(plates) == pytest.approx(theirs, rel=1e-9, abs=1e-11)


def test_the_extension_ends_where_the_absence_becomes_unlikely() -> None:
    # Four sightings in four documents a year from 1900; then (4/(4+k))^3 < 0.05 first at k = 7 (0.048).
    sources = [source(f"b{year}", str(year), square()) for year in range(1900, 1904)]
    sources += [source(f"c{year}", str(year), round_()) for year in range(1904, 1920)]
    found = answer(facts(*sources), Question("day-dress", ("neckline/square",), window("1902"))).findings[0]
    assert (4 / 10) ** 3 >= 0.05 > (4 / 11) ** 3
    earliest, latest = found.extension
    assert earliest is None
    assert latest == pytest.approx(1910.5, abs=0.01)


def test_the_extension_before_the_range_ends_likewise() -> None:
    sources = [source(f"b{year}", str(year), square()) for year in range(1900, 1904)]
    sources += [source(f"a{year}", str(year), round_()) for year in range(1885, 1900)]
    found = answer(facts(*sources), Question("day-dress", ("neckline/square",), window("1902"))).findings[0]
    assert found.extension == (pytest.approx(1893.5, abs=0.01), None)
