"""Leave one document out: would the rest of the catalogue have expected it?"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from functools import cache, partial

from inperiod.evidence.facts import Facts
from inperiod.evidence.ranges import attested, seen, seen_without
from inperiod.evidence.surveys import Limits, Survey, survey
from inperiod.evidence.verdicts import Verdict, judge
from inperiod.evidence.weights import Window

STOOD: tuple[Verdict, ...] = ("attested", "bracketed", "plausible")
"""The verdicts by which a document left out would still have been expected."""


@dataclass(frozen=True, slots=True)
class Robust:
    """One term. ``verdicts`` counts what each of its sightings' own date is called when that document is left
    out; their sum is ``documents``."""

    term: str
    facet: str
    label: str
    verdicts: Mapping[Verdict, int]

    @property
    def documents(self) -> int:
        return sum(self.verdicts.values())

    @property
    def stood(self) -> int:
        """How many would still have been attested, bracketed or plausible."""
        return sum(self.verdicts.get(verdict, 0) for verdict in STOOD)

    @property
    def alone(self) -> int:
        """How many were the only document to show the term: with it gone nothing is left to say."""
        return self.verdicts.get("unrecorded", 0)


def leave_one_out(facts: Facts, grades: str = "A", most: int | None = None) -> tuple[Robust, ...]:
    """For every term sighted at all, in the vocabulary's order.

    Each sighting is left out in turn, with its reprints and the cuts that others took from it, and the term
    is judged for the days of that document's own date, among the widest garment type its plates fall under
    (a tea-gown among dresses). A document with plates of several such types counts once for each. Of more
    than ``most`` sightings of a term in one type, so many are tried, spread evenly over their order: to try
    them all costs the square of their number.
    """
    found: dict[int, Counter[Verdict]] = {}
    widest = [g for g, garment in enumerate(facts.garments) if garment.broader is None]
    for garment in widest:
        for facet in range(len(facts.facets)):
            looked = survey(facts, Limits(garment, (facet,), grades=grades))
            without = cache(partial(_without, looked))
            for term in looked.showing:
                if facts.terms[term].facet == facet:
                    verdicts = _verdicts(facts, looked, without, term, most)
                    found.setdefault(term, Counter()).update(verdicts)
    labels = tuple(facts.facets)
    return tuple(
        Robust(facts.term_keys[term], labels[facts.terms[term].facet], facts.terms[term].label, found[term])
        for term in sorted(found)
        if found[term]
    )


def _verdicts(
    facts: Facts, looked: Survey, without: Callable[[int], Survey], term: int, most: int | None
) -> Iterator[Verdict]:
    not_before = facts.terms[term].not_before
    whole = seen(facts, looked, (term,))
    sighted = list(whole.sighted)
    if most is not None and len(sighted) > most:
        sighted = [sighted[round(at * (len(sighted) - 1) / (most - 1))] for at in range(most)]
    for position in sighted:
        entry = looked.entries[position]
        rest, of = without(position), seen_without(whole, position)
        window = Window(entry.earliest, entry.latest)
        day = not_before.day if not_before else None
        yield judge(rest, of, attested(rest, of), window, 0, day).verdict


def _without(looked: Survey, out: int) -> Survey:
    """The documents of the survey without one of them, and nothing of what they show."""
    return Survey(
        looked.entries[:out] + looked.entries[out + 1 :],
        looked.middles[:out] + looked.middles[out + 1 :],
        showing={},
        left_out={},
    )
