"""The method page tells what the code does: its example is recomputed here by the printed formulas alone."""

from __future__ import annotations

from math import prod, sqrt
from pathlib import Path

import pytest

from inperiod.evidence import Facts
from inperiod.evidence import constants as c
from inperiod.evidence.calibration import kept
from inperiod.evidence.robustness import leave_one_out
from inperiod.publishing.method_example import LOOKED, Step, example_says, example_steps
from inperiod.publishing.method_figures import COLUMNS, MOST_TRIED, calibration_view, left_out_view
from inperiod.publishing.view_method import formulas, verdicts

SHOWING = {year: showing for year, _, showing in LOOKED}
PLATES = {year: plates for year, plates, _ in LOOKED}


def step(name: str) -> Step:
    return next(each for each in example_steps() if each.name.startswith(name))


def test_the_weight_is_the_share_of_the_days() -> None:
    """1 September 1912 to 28 February 1913: 30 + 31 + 30 + 31 days in 1912, 31 + 28 after."""
    assert f"{122 / (122 + 59):.3f} in 1912" in step("Weight").result


def test_the_share_and_its_interval() -> None:
    """Kish's design effect with 0.2, then Wilson's interval as printed in Newcombe (1998), z = 1.96."""
    years = (1913, 1914, 1915)
    n, k = sum(PLATES[year] for year in years), sum(SHOWING[year] for year in years)
    m = sum(PLATES[year] ** 2 for year in years) / n
    effective = n / (1 + (m - 1) * 0.2)
    p, z = k / n, 1.959964
    middle, half = p + z**2 / (2 * effective), z * sqrt(p * (1 - p) / effective + z**2 / (4 * effective**2))
    low, high = (middle - half) / (1 + z**2 / effective), (middle + half) / (1 + z**2 / effective)
    assert step("Share").result == f"{k} ÷ {n} = {100 * p:.1f} %"
    assert step("Effective").result.endswith(f"= {effective:.2f}")
    assert step("Interval").result == f"{100 * low:.1f} % to {100 * high:.1f} %"


def test_range_absence_and_reach() -> None:
    """McCarthy (1998): (E in ÷ (E in + E gap))^(N − 1). Strauss and Sadler (1989), N = 8: 0.534 R."""
    seen = [year for year, showing in SHOWING.items() if showing]
    between = [year for year in SHOWING if seen[-1] < year < 1924]
    looked = [year for year in SHOWING if seen[0] <= year <= seen[-1]]

    def p(gap: int) -> float:
        return (len(looked) / (len(looked) + gap)) ** (len(seen) - 1)

    assert f"= {p(len(between)):.4f}, below 0.05: unsupported" in step("Absence").result
    assert p(4) >= 0.05 > p(5)
    assert step("Reach").result.endswith("1923.5")
    assert float(step("Guide").result.split()[0]) == pytest.approx(7 * 0.534, abs=0.006)


def test_direct_absence() -> None:
    silent = prod((0.95 * 4 + j) / (4 + j) for j in range(PLATES[1924]))
    assert f"{silent:.3f}" in step("Direct").result


def test_the_answer_of_the_example_is_the_tools_own() -> None:
    assert example_says()[0].startswith("Not supported. 1924 lies 6 years after the last sighting (1918)")


def test_the_formulas_are_those_of_the_constants() -> None:
    text = " ".join(f"{each.words} {each.formula}" for each in formulas())
    for number in (c.ALIKE, c.STRONGEST, c.ALPHA, c.GAP_ALPHA, c.SPREAD, c.WIDEST_YEARS, 1 - c.USE):
        assert f"{number:g}" in text
    assert len(verdicts()) == 9


def test_the_table_shows_the_kept_counts() -> None:
    view = calibration_view()
    plain = kept().scenario("plain")
    attested = [plain.counts.get(f"attested/{truth}", 0) for truth in ("common", "rare", "never")]
    assert view["said"]["attested_never"] == f"{100 * attested[2] / sum(attested):.1f} %"
    assert [len(row.rates) for row in view["tried"]] == [len(COLUMNS)] * len(kept().scenarios)


def test_what_is_left_out_adds_up(demo_facts: Facts) -> None:
    view = left_out_view(demo_facts, "A")
    robust = leave_one_out(demo_facts, most=MOST_TRIED)
    assert view["all"].documents == sum(each.documents for each in robust)
    assert sum(row.stood for row in view["facets"]) == view["all"].stood
    assert sum(len(rows) for _, rows in view["terms"]) == len(robust)


def test_the_page_says_it_all(small_site: Path) -> None:
    page = (small_site / "method.html").read_text(encoding="utf-8")
    for heading in ("example", "trust", "left-out"):
        assert f'id="{heading}"' in page
    for each in example_steps():
        assert each.result in page
    assert kept().scenario("plain").rate("attested never").said in page
