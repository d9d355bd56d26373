"""Questions put to a simulated catalogue, and the tally of what came back against the truth."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass
from itertools import combinations
from random import Random

from bench.calibration.truth import Use
from bench.calibration.worlds import PLACES, WEARERS, Group, Made, days_of, term_keys

from inperiod.evidence import Finding, Question, Window, answer
from inperiod.evidence.constants import USE
from inperiod.evidence.questions import limits_of
from inperiod.evidence.shares import wilson
from inperiod.evidence.surveys import survey

Tally = Counter[str]
"""Counts by name. ``verdict/truth`` counts questions; truth is ``common`` (5 % or more of the garments made
in the window), ``rare`` (in use below that) or ``never``. ``end…`` counts ends of ranges, ``share…``
intervals."""


@dataclass(frozen=True, slots=True)
class Asking:
    """How questions are put: for one term or ``together``, limited to a place or a wearer, with what
    allowance for wear, and at which grades."""

    together: bool = False
    limited: str | None = None
    worn_for: int = 0
    grades: str = "A"
    windows: int = 8
    """Windows asked about for each term, or for each pair."""


def ask(made: Made, asking: Asking, chance: Random) -> Tally:
    """All questions to one catalogue."""
    tally: Tally = Counter()
    place = PLACES[0] if asking.limited == "place" else None
    wearer = WEARERS[0] if asking.limited == "wearer" else None
    for features in _asked_of(asking, chance):
        uses = _uses(made, features, place, wearer)
        for number in range(asking.windows):
            first, last = _window(chance)
            days = days_of(first, last)
            question = Question(
                "dress", features, Window(*days), place, wearer, None, asking.grades, asking.worn_for
            )
            given = answer(made.facts, question)
            finding = given.together or given.findings[0]
            tally[f"{finding.verdict}/{_truth(uses, first - asking.worn_for, last + 1)}"] += 1
            if number == 0 and not asking.together:
                tally.update(_ends(made, uses, finding))
            if not asking.together:
                tally.update(_share(made, question, finding))
    return tally


def _asked_of(asking: Asking, chance: Random) -> list[tuple[str, ...]]:
    keys = term_keys()
    if not asking.together:
        return [(key,) for key in keys]
    return chance.sample(list(combinations(keys, 2)), len(keys))


def _window(chance: Random) -> tuple[int, int]:
    """First and last year: mostly one year, now and then three, or a decade."""
    length = chance.choices((1, 3, 10), weights=(70, 15, 15))[0]
    first = chance.randint(1882, 1938 - length)
    if length == 10:
        first = first // 10 * 10
    return first, first + length - 1


Joint = tuple[Use, ...]
"""The uses of several terms in one group: on one garment with the product of their shares."""


def _uses(made: Made, features: tuple[str, ...], place: str | None, wearer: str | None) -> list[Joint]:
    groups: list[Group] = [
        (each, who) for each in PLACES for who in WEARERS if place in (None, each) and wearer in (None, who)
    ]
    return [tuple(made.uses[key][group] for key in features) for group in groups]


def _truth(uses: Iterable[Joint], first: float, end: float) -> str:
    """``common`` where it is so in any group that is asked about, ``never`` where it is in use in none."""
    at_all = False
    for joint in uses:
        steps = [first + (i + 0.5) * (end - first) / 12 for i in range(12)]
        shares = [_product(use.at(year) for use in joint) for year in steps]
        if sum(shares) / len(shares) >= USE:
            return "common"
        at_all = at_all or any(shares) or (len(joint) == 1 and joint[0].in_use(first, end))
    return "rare" if at_all else "never"


def _product(shares: Iterable[float]) -> float:
    product = 1.0
    for share in shares:
        product *= share
    return product


def _ends(made: Made, uses: list[Joint], finding: Finding) -> Tally:
    """Whether the extension, and the guide in years alone, reach the true ends; only ends with documents
    beyond them are counted, since any range reaches an end nobody looked past."""
    tally: Tally = Counter()
    if finding.first is None or finding.last is None or finding.sightings < 2:
        return tally
    begins, ends = min(each[0].begins for each in uses), max(each[0].ends for each in uses)
    earliest, latest = finding.extension
    if made.first_year < begins:
        tally["ends"] += 1
        tally["end covered"] += earliest is None or earliest <= begins
        tally["end open"] += earliest is None
        tally["end covered by years"] += finding.first.date - finding.guide_years <= begins
    if ends < made.last_year:
        tally["ends"] += 1
        tally["end covered"] += latest is None or latest >= ends
        tally["end open"] += latest is None
        tally["end covered by years"] += finding.last.date + finding.guide_years >= ends
    return tally


def _share(made: Made, question: Question, finding: Finding) -> Tally:
    """Whether the interval holds the true average over the very plates that were counted, and whether it
    would were every plate taken as independent. Windows where it was in use alone."""
    tally: Tally = Counter()
    found = finding.share
    if found.value is None or found.low is None or found.high is None:
        return tally
    term = question.features[0]
    looked = survey(made.facts, limits_of(made.facts, question, (int(term[1]),)))
    total = 0.0
    for position, part in looked.weighed(question.window):
        for number in looked.entries[position].plates:
            year, group = made.drawn[made.facts.keys[number]]
            total += part * made.uses[term][group].at(year)
    true = total / found.recorded
    if true <= 0:
        return tally
    low, high = wilson(found.value, found.recorded)
    tally["shares"] += 1
    tally["share covered"] += found.low <= true <= found.high
    tally["share covered as if independent"] += low <= true <= high
    return tally


def questions_in(tally: Tally) -> int:
    """How many questions a tally counts."""
    return sum(count for name, count in tally.items() if "/" in name)
