"""How far the verdicts may be trusted, for the method page: simulated truth, and one document left out."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from inperiod.evidence.calibration import Calibration, kept
from inperiod.evidence.facts import Facts
from inperiod.evidence.robustness import Robust, leave_one_out

COLUMNS = (
    ("attested never", "attested, never in use"),
    ("seen once never", "seen once, never in use"),
    ("bracketed never", "bracketed, never in use"),
    ("common unsupported", "in use at 5 %, called unsupported"),
    ("common attested", "in use at 5 %, called attested"),
    ("end covered", "true end within reach"),
    ("share covered", "true share within interval"),
)
"""The rates of every simulated world that are shown side by side."""


MOST_TRIED = 40
"""Of a term with more sightings in one kind of garment, so many are left out in turn."""


@dataclass(frozen=True, slots=True)
class Tried:
    """A simulated world: in words, how many questions, and its rates in the order of ``COLUMNS``."""

    words: str
    questions: str
    rates: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class LeftOut:
    """Sightings left out one by one, for a facet or a term: how many, how many of them would still have been
    expected, how many stood alone."""

    label: str
    documents: int
    stood: int
    alone: int

    @property
    def said(self) -> str:
        return f"{100 * self.stood / self.documents:.0f} %" if self.documents else "–"


def calibration_view() -> Mapping[str, Any]:
    """The kept figures: sentences of the plain world, a row for every world, and what was assumed."""
    figures = kept()
    plain = figures.scenario("plain")
    return {
        "questions": _thousands(plain.questions),
        "catalogues": plain.catalogues,
        "version": figures.version,
        "seed": figures.seed,
        "columns": [words for _, words in COLUMNS],
        "tried": _tried(figures),
        "said": {rate.name.replace(" ", "_"): rate.said for rate in plain.rates()},
        "world": _world(figures.world),
    }


def _tried(figures: Calibration) -> list[Tried]:
    rows = []
    for scenario in figures.scenarios:
        rates = {rate.name: rate.said for rate in scenario.rates()}
        rows.append(
            Tried(
                scenario.words,
                _thousands(scenario.questions),
                tuple(rates.get(name, "–") for name, _ in COLUMNS),
            )
        )
    return rows


def _thousands(number: int) -> str:
    return f"{number:,}"


def _world(world: Mapping[str, Any]) -> list[str]:
    """The simulated catalogues in plain words, from the parameters they were made with."""

    def percent(share: float) -> str:
        return f"{100 * share:g} %"

    low, high = world["misdated"]
    return [
        f"{world['documents'][0]} to {world['documents'][1]} documents between {world['first']} and "
        f"{world['last']}, many in one decade and few in another, of grade A about two thirds",
        f"{world['plates'][0]} to {world['plates'][1]} plates in each, {percent(world['recorded'])} of which "
        f"record a facet; plates of one document correlated by {world['alike']:g}",
        "features that rise in one to six years, hold for three to twenty-five and fall in one to eight, at "
        f"their height on 2 to 60 of 100 garments; {percent(world['revivals'])} of them come back later",
        f"{percent(low)} to {percent(high)} of the documents of grade A misdated, by 3 to 25 years; of "
        "grade B three times as many, of grade C six times",
        f"{percent(world['circa'])} dated “circa” and {percent(world['decade'])} to a decade, more "
        "in grades B and C",
        f"{percent(world['reprints'])} reprints that nobody marked, and as many that are marked",
        f"one plate in {1 / world['misread']:,.0f} said to show a given feature that it does not show",
    ]


NOT_SIMULATED = (
    "a recorder who overlooks what is there (only the opposite slip is simulated)",
    "houses that keep to one style for decades, and catalogues gathered for what they show",
    "features that exclude each other or go together: each is drawn for itself",
    "limits by kind of source, seasons and months asked about, the look of a feature changing under one name",
    "more than one revival",
)


def left_out_view(facts: Facts, grades: str) -> Mapping[str, Any]:
    """Leave-one-document-out over this catalogue: all together, by facet, and by term."""
    terms = leave_one_out(facts, grades, MOST_TRIED)
    by_facet: dict[str, list[Robust]] = {}
    for term in terms:
        by_facet.setdefault(term.facet, []).append(term)
    verdicts: Counter[str] = Counter()
    for term in terms:
        verdicts.update(term.verdicts)
    return {
        "all": _together("All features", terms),
        "most": MOST_TRIED if any(term.documents >= MOST_TRIED for term in terms) else None,
        "verdicts": verdicts.most_common(),
        "facets": [_together(facts.facets[facet], each) for facet, each in by_facet.items()],
        "terms": [
            (facts.facets[facet], [_together(term.label, [term]) for term in each])
            for facet, each in by_facet.items()
        ],
    }


def _together(label: str, terms: Sequence[Robust]) -> LeftOut:
    return LeftOut(
        label,
        sum(term.documents for term in terms),
        sum(term.stood for term in terms),
        sum(term.alone for term in terms),
    )
