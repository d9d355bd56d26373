"""The kept figures are those of the shipped rules, and say what the rules are meant to hold."""

from __future__ import annotations

from collections import Counter
from math import sqrt
from random import Random

import pytest
from bench.calibration.scenarios import SCENARIOS, tally
from bench.calibration.truth import Spell, Use
from bench.calibration.worlds import World, make

from inperiod.evidence import Question, Window, absence, answer, ranges, shares, surveys, verdicts
from inperiod.evidence.calibration import Calibration, Rate, Scenario, kept

IDS = [scenario.id for scenario in SCENARIOS]


@pytest.fixture(scope="module")
def figures() -> Calibration:
    return kept()


def rerun(figures: Calibration, id: str) -> Counter[str]:
    scenario = next(each for each in SCENARIOS if each.id == id)
    counts = tally(scenario, range(figures.slice), figures.seed)
    return Counter({name: count for name, count in counts.items() if count})


@pytest.mark.parametrize("id", IDS)
def test_the_first_catalogues_made_again_count_as_they_did(id: str, figures: Calibration) -> None:
    """To the last question: a changed rule or parameter wants ``python -m bench.calibration --write``."""
    assert rerun(figures, id) == Counter(figures.scenario(id).slice)


@pytest.mark.parametrize("name", ["end covered", "share covered", "common attested", "bracketed never"])
def test_other_catalogues_agree_with_the_kept_figures_within_their_noise(
    name: str, figures: Calibration
) -> None:
    """Another seed, 12 catalogues. Questions to one catalogue hang together: a design effect of 8 is
    allowed for, and three standard errors."""
    plain = next(each for each in SCENARIOS if each.id == "plain")
    fresh = Scenario("fresh", "", 12, tally(plain, range(12), figures.seed + 1), {}).rate(name)
    long = figures.scenario("plain").rate(name)
    assert fresh.value is not None
    assert long.value is not None
    error = sqrt(long.value * (1 - long.value) * 8 / fresh.of)
    print(f"{name}: {fresh.value:.3f} against {long.value:.3f}, standard error {error:.3f}")
    assert abs(fresh.value - long.value) <= 3 * error


def test_the_file_holds_every_scenario_and_questions_enough(figures: Calibration) -> None:
    assert [each.id for each in figures.scenarios] == IDS
    assert figures.scenario("plain").questions >= 44_480
    assert all(each.questions >= 9_000 for each in figures.scenarios)


AIMS = [
    ("attested never", 0, 0.03),
    ("common unsupported", 0, 0.003),
    ("end covered", 0.94, 1),
    ("share covered", 0.94, 0.98),
    ("common lapsed", 0, 0.003),
]


@pytest.mark.parametrize(("name", "low", "high"), AIMS)
def test_the_rules_hold_what_they_are_meant_to(
    name: str, low: float, high: float, figures: Calibration
) -> None:
    value = figures.scenario("plain").rate(name).value
    assert value is not None
    assert low <= value <= high


def test_a_second_sighting_and_a_wider_reach_are_worth_their_trouble(figures: Calibration) -> None:
    """One plate alone would be wrong three times as often; years alone miss more ends; plates taken as
    independent miss more shares."""
    plain = figures.scenario("plain")

    def value(name: str) -> float:
        return plain.rate(name).value or 0

    assert value("one plate never") > 3 * value("attested never")
    assert value("end covered by years") < value("end covered") - 0.1
    assert value("share covered as if independent") < value("share covered") - 0.1


# ---- a broken formula changes the counts of the very first catalogues

BREAKS = {
    "absence without its exponent": (ranges, "absence_p", lambda n, within, gap: within / (within + gap)),
    "absence in verdicts twice as strong": (
        verdicts,
        "absence_p",
        lambda n, within, gap: absence.absence_p(n, within, gap) ** 2,
    ),
    "silence as if plates were independent": (
        verdicts,
        "silence",
        lambda plates: 0.95 ** sum(plates),
    ),
    "gaps at the level of a chosen window": (verdicts, "unlikely_gap", lambda p: p < 0.05),
    "backed by anything": (ranges, "BACKING", 1000),
    "backed by neighbours alone": (ranges, "BACKING", 1),
    "years that grow faster": (ranges, "strauss_sadler", lambda n, years: 2 * years),
    "a plate anywhere near": (surveys, "MOSTLY", 0.1),
    "plausible for twenty years": (verdicts, "NEAR_YEARS", 20),
    "plates taken as independent": (shares, "ALIKE", 0.0),
    "an interval of 90 per cent": (shares, "Z_95", 1.645),
}


@pytest.mark.parametrize("broken", BREAKS)
def test_a_broken_formula_shows(broken: str, figures: Calibration, monkeypatch: pytest.MonkeyPatch) -> None:
    module, name, other = BREAKS[broken]
    monkeypatch.setattr(module, name, other)
    worlds = ("plain", "revivals", "many-documents")
    assert any(rerun(figures, id) != Counter(figures.scenario(id).slice) for id in worlds)


# ---- the simulator itself


def test_a_use_rises_holds_and_falls() -> None:
    use = Use((Spell(1900, 1904, 1910, 1912, 0.4), Spell(1930, 1931, 1935, 1936, 0.1)))
    assert [use.at(year) for year in (1899, 1902, 1907, 1911, 1920)] == pytest.approx([0, 0.2, 0.4, 0.2, 0])
    assert use.at(1933) == 0.1
    assert not use.in_use(1913, 1930)
    assert use.in_use(1911, 1913)
    assert use.mean(1905, 1909) == pytest.approx(0.4)


def test_catalogues_have_the_blemishes_they_are_said_to_have() -> None:
    world = World()
    made = [make(world, Random(number)) for number in range(10)]
    documents = [document for each in made for document in each.facts.documents]
    sizes = [len(document.plates) for document in documents]
    assert (min(sizes), max(sizes)) == world.plates
    marked = sum(document.root is not None for document in documents) / len(documents)
    assert 0.01 < marked < 0.07
    spans = [days[1] - days[0] for document in documents if (days := document.days) and None not in days]  # type: ignore[operator]
    assert sum(span > 3000 for span in spans) > 50  # circa, and decades
    assert len({document.basis for document in documents}) == 3


def test_the_simulator_asks_the_shipped_answer() -> None:
    made = make(World(), Random(3))
    finding = answer(made.facts, Question("dress", ("f0/t0",), Window(None, None))).findings[0]
    assert finding.sightings > 0


def test_a_rate_of_nothing_is_no_rate() -> None:
    assert Rate("x", "x", 0, 0).value is None
    assert Rate("x", "x", 0, 0).said == "–"
    assert [Rate("x", "x", hits, 1000).said for hits in (1, 25, 500)] == ["0.10 %", "2.5 %", "50 %"]
