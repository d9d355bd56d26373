"""The worlds that are tried and the questions put to them, and the file the results are kept in.

Catalogue number i of any scenario comes from the seed and i alone, so that a few of them can be made again
and held against the file, and so that scenarios of one world differ only in what is asked.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import asdict, dataclass
from math import ceil
from random import Random
from typing import Any

from bench.calibration.asking import Asking, Tally, ask, questions_in
from bench.calibration.worlds import World, make

SEED = 1926
QUESTIONS = 44_480
OTHER_QUESTIONS = 9_600
SLICE = 4
"""So many catalogues of each scenario are kept apart in the file, for a test to make again."""


BASE, ONE = World(), Asking()


@dataclass(frozen=True, slots=True)
class Scenario:
    """A world, what is asked of it, and both in plain words."""

    id: str
    words: str
    world: World = BASE
    asking: Asking = ONE


SCENARIOS = (
    Scenario("plain", "one feature, grade A"),
    Scenario(
        "slips",
        "twice as many misdates, five times the misreadings",
        World(misdated=(0.04, 0.10), misread=0.001),
    ),
    Scenario("revivals", "half of all features come back", World(revivals=0.5)),
    Scenario("one-publisher", "all misdates run through one publisher", World(one_publisher=True)),
    Scenario("many-documents", "150 to 400 documents", World(documents=(150, 400))),
    Scenario("together", "two features on one plate", asking=Asking(together=True)),
    Scenario("any-group", "fashions that differ by place and wearer, no limit", World(lag=6)),
    Scenario("place", "the same, limited to one place", World(lag=6), Asking(limited="place")),
    Scenario("wearer", "the same, limited to one wearer", World(lag=6), Asking(limited="wearer")),
    Scenario("worn", "with an allowance of five years for wear", asking=Asking(worn_for=5)),
    Scenario("ab", "grades A and B", asking=Asking(grades="AB")),
    Scenario("abc", "grades A, B and C", asking=Asking(grades="ABC")),
)


def tally(scenario: Scenario, catalogues: range, seed: int = SEED) -> Tally:
    """The counts over those catalogues of the scenario."""
    counts: Tally = Counter()
    for number in catalogues:
        chance = Random(f"{seed}/{number}")
        made = make(scenario.world, chance)
        counts.update(ask(made, scenario.asking, Random(f"{seed}/{number}/questions")))
    return counts


def run(
    questions: int = QUESTIONS, others: int = OTHER_QUESTIONS, seed: int = SEED, say: Any = None
) -> dict[str, Any]:
    """All scenarios, as the file holds them. ``say`` is told each as it is done."""
    found = []
    for scenario in SCENARIOS:
        wanted = questions if scenario.id == "plain" else others
        first = tally(scenario, range(SLICE), seed)
        count = max(SLICE, ceil(wanted * SLICE / questions_in(first)))
        rest = tally(scenario, range(SLICE, count), seed)
        found.append(
            {
                "id": scenario.id,
                "words": scenario.words,
                "catalogues": count,
                "counts": _sorted(first + rest),
                "slice": _sorted(first),
            }
        )
        if say:
            say(scenario.id)
    return {"seed": seed, "slice": SLICE, "world": asdict(BASE), "scenarios": found}


def _sorted(counts: Tally) -> dict[str, int]:
    return {name: counts[name] for name in sorted(counts) if counts[name]}
