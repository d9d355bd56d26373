"""Which plates stand near one another in time and style."""

from __future__ import annotations

from collections import defaultdict
from dataclasses import dataclass
from heapq import nsmallest
from math import log

from inperiod.publishing.lookup import Lookup
from inperiod.records.model import Plate

YEARS = 12
"""Plates further apart than this are not near."""
FADE = 4.0
"""The years after which closeness in time counts half. Both are ours."""
SAME = 1.25
"""What a plate of the same garment type, and not only of its widest one, counts for. Ours."""


@dataclass(frozen=True, slots=True)
class Near:
    """A plate near another: the terms both show, and the years between the middles of their spans."""

    plate: Plate
    shared: tuple[str, ...]
    years: float


class Neighbours:
    """Plates near a plate: the same root garment, shared terms weighed by their rarity (the logarithm of
    how many plates there are to each one that shows it), halved every ``FADE`` years."""

    def __init__(self, look: Lookup) -> None:
        self._look = look
        root = look.catalogue.vocabulary.broader_garments
        # Dated plates by their place in order of date: numbers, as each is held against hundreds.
        self._plates = [plate for plate in look.ordered if look.middle(plate) is not None]
        self._at = {plate.key: number for number, plate in enumerate(self._plates)}
        self._middles = [look.middle(plate) or 0.0 for plate in self._plates]
        self._roots = [root(plate.garment)[-1] for plate in self._plates]
        self._postings: dict[tuple[str, str, int], list[int]] = defaultdict(list)
        for number, plate in enumerate(self._plates):
            years = int(self._middles[number] // YEARS)
            for term in look.shown[plate.key]:
                self._postings[self._roots[number], term, years].append(number)
        total = max(1, len(look.ordered))
        self._rarity = {term: log(1 + total / len(plates)) for term, plates in look.showing.items()}

    def of(self, plate: Plate, most: int = 6) -> tuple[Near, ...]:
        """The nearest plates, best first; none for an undated plate. Plates of the same cut are left out."""
        look, number = self._look, self._at.get(plate.key)
        if number is None:
            return ()
        middle, own, middles = self._middles[number], look.shown[plate.key], self._middles
        scores: dict[int, float] = {}
        around = int(middle // YEARS)
        for term in sorted(own):
            rarity = self._rarity[term]
            for span in (around - 1, around, around + 1):
                for other in self._postings.get((self._roots[number], term, span), ()):
                    scores[other] = scores.get(other, 0.0) + rarity
        for skipped in (plate, *look.cuts.get(plate.key, ())):
            scores.pop(self._at.get(skipped.key, -1), None)
        plates, garment = self._plates, plate.garment
        near = (
            (-score * 0.5 ** (years / FADE) * (SAME if plates[other].garment == garment else 1.0), other)
            for other, score in scores.items()
            if (years := abs(middles[other] - middle)) <= YEARS
        )
        return tuple(
            Near(
                plates[other],
                tuple(sorted(own & look.shown[plates[other].key])),
                abs(middles[other] - middle),
            )
            for _, other in nsmallest(most, near)
        )
