"""The worked example of the method page: fifteen invented documents, and every step in figures."""

from __future__ import annotations

from dataclasses import dataclass

from inperiod.dating import day_number
from inperiod.evidence import Finding, Question, Window, answer
from inperiod.evidence import constants as c
from inperiod.evidence.absence import absence_p, silence
from inperiod.evidence.facts import DocumentFact, Facts, GarmentFact, PlateFact, TermFact
from inperiod.evidence.ranges import attested, seen
from inperiod.evidence.surveys import Limits, survey
from inperiod.evidence.weights import Window as Days
from inperiod.evidence.weights import weight
from inperiod.publishing.wording import says

LOOKED = (
    (1910, 6, 0),
    (1911, 8, 1),
    (1912, 4, 1),
    (1913, 10, 4),
    (1914, 6, 2),
    (1915, 5, 2),
    (1916, 8, 3),
    (1917, 6, 1),
    (1918, 7, 2),
    (1919, 9, 0),
    (1920, 12, 0),
    (1921, 8, 0),
    (1922, 10, 0),
    (1923, 14, 0),
    (1924, 9, 0),
)
"""Year, plates that record the neckline, and how many of these show a square one: one catalogue a year."""

SHARE_YEARS = (1913, 1915)
ASKED = 1924


@dataclass(frozen=True, slots=True)
class Step:
    """One step: its name, the figures put into the formula, and what comes out."""

    name: str
    figures: str
    result: str


def example_facts() -> Facts:
    """The example as facts: facet ``neckline``, terms ``square`` and ``round``, day dresses."""
    documents = []
    for year, plates, showing in LOOKED:
        days = (day_number(year), day_number(year + 1) - 1)
        held = tuple(PlateFact(f"p{i:02d}", 0, "woman", ((int(i >= showing), 0),)) for i in range(plates))
        id = f"list-{year}"
        documents.append(
            DocumentFact(id, id, "trade-catalogue", (), "A", days, (days,) * len(c.CIRCA_TRIED), None, held)
        )
    return Facts(
        5,
        (1910, 1920),
        {"neckline": "Neckline"},
        (GarmentFact("day-dress", "Day dress", "day dresses"),),
        (TermFact(0, "square", "Square"), TermFact(0, "round", "Round")),
        tuple(documents),
    )


def example_finding(first: int, last: int) -> Finding:
    """What is answered about a square neck in those years."""
    window = Window(day_number(first), day_number(last + 1) - 1)
    return answer(example_facts(), Question("day-dress", ("neckline/square",), window)).findings[0]


def example_says() -> tuple[str, ...]:
    """The answer about the year asked for, as any page gives it."""
    finding = example_finding(ASKED, ASKED)
    return (says(finding.verdict, finding.reasons), *finding.reasons[1:])


def example_steps() -> tuple[Step, ...]:
    """Every step in figures, in the order of the arithmetic."""
    facts = example_facts()
    looked = survey(facts, Limits(0, (0,)))
    found = attested(looked, seen(facts, looked, (0,)))
    share, finding = example_finding(*SHARE_YEARS).share, example_finding(ASKED, ASKED)
    assert found is not None
    assert share.value is not None
    assert share.low is not None
    assert share.high is not None
    first, last = SHARE_YEARS
    counted = [(plates, showing) for year, plates, showing in LOOKED if first <= year <= last]
    squares = sum(plates * plates for plates, _ in counted)
    gap = ASKED - 1 - 1918
    n = found.sightings
    years = (found.last_twice - found.first_twice) / 2 / c.DAYS_PER_YEAR
    in_asked = next(plates for year, plates, _ in LOOKED if year == ASKED)
    autumn = (day_number(1912, 9), day_number(1913, 3) - 1)
    in_1912 = weight(*autumn, Days(day_number(1912), day_number(1913) - 1))
    days, all_days = day_number(1913) - autumn[0], autumn[1] - autumn[0] + 1
    return (
        Step(
            "Weight",
            f"a list for September 1912 to February 1913 has {all_days} days, {days} of them in 1912",
            f"w = {days} ÷ {all_days} = {in_1912:.3f} in 1912, {1 - in_1912:.3f} in 1913",
        ),
        Step(
            f"Share, {first}–{last}",
            "the plates of three catalogues, each of weight 1: "
            + ", ".join(f"{showing} of {plates}" for plates, showing in counted),
            f"{share.showing:.0f} ÷ {share.recorded:.0f} = {100 * share.value:.1f} %",
        ),
        Step(
            "Effective plates",
            f"the squares of the plates {' + '.join(f'{plates}²' for plates, _ in counted)} = {squares}; "
            f"m = {squares} ÷ {share.recorded:.0f} = {squares / share.recorded:.3f}",
            f"n′ = {share.recorded:.0f} ÷ (1 + {squares / share.recorded - 1:.3f} · {c.ALIKE:g}) = "
            f"{share.effective:.2f}",
        ),
        Step(
            "Interval",
            f"{100 * share.value:.1f} % of {share.effective:.2f} plates",
            f"{100 * share.low:.1f} % to {100 * share.high:.1f} %",
        ),
        Step(
            "Attested range",
            f"every document from 1911 to 1918 shows it, each backed by its neighbours: N = {n}, "
            f"E in = {found.documents}",
            f"1911–1918, R = {years:.2f} years",
        ),
        Step(
            "Absence",
            f"{gap} documents between 1918 and {ASKED} without it",
            f"p = ({found.documents} ÷ ({found.documents} + {gap})) ^ {n - 1} = "
            f"{absence_p(n, found.documents, gap):.4f}, below {c.ALPHA:g}: unsupported",
        ),
        Step(
            "Reach",
            f"with {gap - 1} documents beyond 1918 p is {absence_p(n, found.documents, gap - 1):.4f}, with "
            f"{gap} it is {absence_p(n, found.documents, gap):.4f}",
            f"to the middle of the fifth, {finding.extension[1]:.1f}",
        ),
        Step(
            "Guide in years",
            f"{years:.2f} · ({c.ALPHA:g} ^ (−1 ÷ {n - 1}) − 1)",
            f"{found.guide_years:.2f} years",
        ),
        Step(
            "Direct absence",
            f"{in_asked} plates of one catalogue in {ASKED}, none showing it",
            f"chance of that at a use of one in twenty {silence([in_asked]):.3f}, not below {c.ALPHA:g}: "
            "that year alone proves nothing",
        ),
    )
