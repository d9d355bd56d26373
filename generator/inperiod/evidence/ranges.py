"""Sightings of a term in a survey, the attested range, and how far it may reach."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from itertools import pairwise

from inperiod.evidence.absence import absence_p, unlikely
from inperiod.evidence.calendar import decimal_year
from inperiod.evidence.constants import ALPHA, BACKING, DAYS_PER_YEAR
from inperiod.evidence.facts import Facts
from inperiod.evidence.surveys import Survey


@dataclass(frozen=True, slots=True)
class Seen:
    """Where a term, or several terms together, stand in a survey.

    ``showing``: plates by position of their document, every reading. ``sighted``: those seen or read.
    ``backed``: positions of sightings another of which is among the five documents before or after.
    """

    showing: Mapping[int, tuple[int, ...]]
    sighted: Mapping[int, tuple[int, ...]]
    backed: frozenset[int]


@dataclass(frozen=True, slots=True)
class Attested:
    """The attested range: positions of its first and last sighting, and their doubled middles in days.

    ``sightings`` (N) and ``documents`` (E_in) within it; ``set_aside`` are positions of sightings outside;
    ``guide_years`` are Strauss and Sadler's; ``before`` and ``after`` are the doubled middles of the
    documents at which the term's absence becomes unlikely to be chance, None where the end stays open.
    """

    first: int
    last: int
    first_twice: int
    last_twice: int
    sightings: int
    documents: int
    set_aside: tuple[int, ...]
    guide_years: float
    before: int | None
    after: int | None

    @property
    def extension(self) -> tuple[float | None, float | None]:
        """``before`` and ``after`` as decimal years."""
        before = None if self.before is None else decimal_year(self.before / 2)
        return before, None if self.after is None else decimal_year(self.after / 2)


def seen(facts: Facts, looked: Survey, terms: tuple[int, ...]) -> Seen:
    """Sightings of plates that show all the terms."""
    if terms in looked.memo:
        known: Seen = looked.memo[terms]
        return known
    showing = looked.showing.get(terms[0], {})
    if len(terms) > 1:
        together = {
            position: tuple(n for n in numbers if all(term in facts.shown[n] for term in terms))
            for position, numbers in showing.items()
        }
        showing = {position: numbers for position, numbers in together.items() if numbers}
    sighted: dict[int, tuple[int, ...]] = {}
    for position, numbers in showing.items():
        surely = [n for n in numbers if all([facts.shown[n][term] for term in terms])]
        if surely:
            sighted[position] = tuple(surely)
    looked.memo[terms] = Seen(showing, sighted, _backed(sighted))
    return looked.memo[terms]  # type: ignore[no-any-return]


def _backed(order: Iterable[int]) -> frozenset[int]:
    backed: set[int] = set()
    for earlier, later in pairwise(order):
        if later - earlier <= BACKING:
            backed.update((earlier, later))
    return frozenset(backed)


def seen_without(of: Seen, out: int) -> Seen:
    """The same in the survey without one of its documents: those after it move up."""

    def moved(places: Mapping[int, tuple[int, ...]]) -> dict[int, tuple[int, ...]]:
        return {at - (at > out): numbers for at, numbers in places.items() if at != out}

    sighted = moved(of.sighted)
    return Seen(moved(of.showing), sighted, _backed(sighted))


def attested(looked: Survey, of: Seen) -> Attested | None:
    """From the first to the last backed sighting, or of all sightings if none is backed; None if none."""
    order = [position for position in of.sighted if position in of.backed] or list(of.sighted)
    if not order:
        return None
    first, last = order[0], order[-1]
    begins, ends = looked.middles[first], looked.middles[last]
    # The documents within stand in one row: from the first of the middle that begins to the last that ends.
    before, documents = bisect_left(looked.middles, begins), looked.within(begins, ends)
    set_aside = tuple([each for each in of.sighted if not before <= each < before + documents])
    inside = len(of.sighted) - len(set_aside)
    years = (ends - begins) / 2 / DAYS_PER_YEAR
    after = len(looked.middles) - before - documents
    out = _documents_needed(inside, documents, before)
    onward = _documents_needed(inside, documents, after)
    return Attested(
        first,
        last,
        begins,
        ends,
        inside,
        documents,
        set_aside,
        strauss_sadler(inside, years),
        looked.middles[before - out] if out else None,
        looked.middles[before + documents + onward - 1] if onward else None,
    )


def strauss_sadler(sightings: int, years: float) -> float:
    """R·(0.05^(−1/(N−1)) − 1): the 95 % one-sided extension in years, were looking even through time.

    D. Strauss and P. M. Sadler, Mathematical Geology 21 (1989) 411–427. With N < 2 it is 0 here: a single
    sighting gives no scale, so nothing is granted.
    """
    if sightings < 2:
        return 0.0
    return float(years * (ALPHA ** (-1 / (sightings - 1)) - 1))


def _documents_needed(sightings: int, within: int, beyond: int) -> int:
    """How many documents beyond an end make absence unlikely, 0 where there are not so many."""
    if beyond == 0 or not unlikely(absence_p(sightings, within, beyond)):
        return 0
    low, high = 1, beyond
    while low < high:
        middle = (low + high) // 2
        if unlikely(absence_p(sightings, within, middle)):
            high = middle
        else:
            low = middle + 1
    return low
