"""Which plates stand near one another in time and style."""

from __future__ import annotations

from collections import defaultdict
from dataclasses import dataclass
from math import log

from inperiod.publishing.lookup import Lookup
from inperiod.records.model import Plate

YEARS = 12
"""Plates further apart than this are not near."""
FADE = 4.0
"""The years after which closeness in time counts half. Both are ours."""


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
        vocabulary = look.catalogue.vocabulary
        self._root = {plate.key: vocabulary.broader_garments(plate.garment)[-1] for plate in look.ordered}
        self._postings: dict[tuple[str, str, int], list[Plate]] = defaultdict(list)
        for plate in look.ordered:
            middle = look.middle(plate)
            if middle is not None:
                for term in look.shown[plate.key]:
                    self._postings[self._root[plate.key], term, int(middle // YEARS)].append(plate)
        total = max(1, len(look.ordered))
        self._rarity = {term: log(1 + total / len(plates)) for term, plates in look.showing.items()}

    def of(self, plate: Plate, most: int = 6) -> tuple[Near, ...]:
        """The nearest plates, best first; none for an undated plate. Plates of the same cut are left out."""
        look, middle = self._look, self._look.middle(plate)
        if middle is None:
            return ()
        root, own = self._root[plate.key], look.shown[plate.key]
        skip = {plate.key, *(other.key for other in look.cuts.get(plate.key, ()))}
        scores: dict[str, float] = defaultdict(float)
        bins = range(int(middle // YEARS) - 1, int(middle // YEARS) + 2)
        for term in sorted(own):
            for each in bins:
                for other in self._postings.get((root, term, each), ()):
                    scores[other.key] += self._rarity[term]
        near = []
        for key, score in scores.items():
            other = look.catalogue.plates[key]
            years = abs((look.middle(other) or 0.0) - middle)
            if key in skip or years > YEARS:
                continue
            same = 1.25 if other.garment == plate.garment else 1.0
            near.append((-same * score * 0.5 ** (years / FADE), key, years))
        return tuple(
            Near(look.catalogue.plates[key], tuple(sorted(own & look.shown[key])), years)
            for _, key, years in sorted(near)[:most]
        )
