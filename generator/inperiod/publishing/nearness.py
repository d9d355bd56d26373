"""Which plates stand near one another in time and style."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass
from hashlib import blake2b
from heapq import nsmallest
from typing import NamedTuple

from inperiod.publishing.digests import digest
from inperiod.publishing.lookup import Lookup
from inperiod.records.model import Plate

YEARS = 12
"""Plates further apart than this are not near."""
AROUND = 48
"""A plate is held against so many plates before it and so many after it in order of date, of the same widest
garment type: in a small catalogue those are all within ``YEARS``, in a large one those of its own seasons."""
FADE = 4.0
"""The years after which closeness in time counts half. All three are ours."""
SAME = 1.25
"""What a plate of the same garment type, and not only of its widest one, counts for. Ours."""


MOST = 6
"""So many plates are shown as near."""


@dataclass(frozen=True, slots=True)
class Near:
    """A plate near another: the terms both show, and the years between the middles of their spans."""

    plate: Plate
    shared: tuple[str, ...]
    years: float


class _Stand(NamedTuple):
    """What nearness asks of a dated plate, and a digest of that."""

    key: str
    garment: str
    middle: float
    terms: frozenset[str]
    told: bytes


class Neighbours:
    """Plates near a plate: the same root garment, shared terms weighed by their rarity (how often the plates
    that show one can be doubled before they are all the plates there are), halved every ``FADE`` years."""

    def __init__(self, look: Lookup) -> None:
        self._look = look
        widest = look.catalogue.vocabulary.broader_garments
        roots = {garment: widest(garment)[-1] for garment in look.of_garment}
        rows: dict[str, list[_Stand]] = defaultdict(list)
        self._at: dict[str, tuple[list[_Stand], int]] = {}
        for plate in look.ordered:
            key, middle = plate.key, look.middle(plate)
            if middle is not None:
                row, terms = rows[roots[plate.garment]], look.shown[key]
                self._at[key] = (row, len(row))
                told = digest((key, plate.garment, middle, sorted(terms)))
                row.append(_Stand(key, plate.garment, middle, terms, told))
        total = len(look.ordered)
        self._known: dict[str, tuple[str, ...]] = {}
        # Whole numbers, so that one plate more or less in a large catalogue leaves nearly all as they are.
        self._rarity = {term: (total // len(plates)).bit_length() for term, plates in look.showing.items()}

    def _around(self, plate: Plate) -> list[_Stand]:
        """The plates it is held against, in order of date, itself among them; none for an undated plate."""
        row, at = self._at.get(plate.key, ([], 0))
        return row[max(0, at - AROUND) : at + AROUND + 1]

    def of(self, plate: Plate) -> tuple[Near, ...]:
        """The nearest plates, best first; none for an undated plate. Plates of the same cut are left out."""
        look = self._look
        own, middle = look.shown[plate.key], look.middle(plate) or 0.0
        plates = (look.catalogue.plates[key] for key in self.keys(plate))
        return tuple(
            Near(
                other,
                tuple(sorted(own & look.shown[other.key])),
                abs((look.middle(other) or 0.0) - middle),
            )
            for other in plates
        )

    def keys(self, plate: Plate) -> tuple[str, ...]:
        """The keys of the nearest plates; worked out once, or told before by ``learn``."""
        if plate.key not in self._known:
            self._known[plate.key] = self._nearest(plate)
        return self._known[plate.key]

    def learn(self, plate: str, keys: Iterable[str]) -> None:
        """What was worked out elsewhere from the same grounds."""
        self._known[plate] = tuple(keys)

    def grounds(self, plate: Plate) -> str:
        """A digest of all that decides which plates are nearest to this one."""
        cuts = [other.key for other in self._look.cuts.get(plate.key, ())]
        rarities = [self._rarity[term] for term in sorted(self._look.shown[plate.key])]
        own = digest((plate.key, cuts, rarities))
        told = b"".join([other.told for other in self._around(plate)])
        return blake2b(own + told, digest_size=16).hexdigest()

    def _nearest(self, plate: Plate) -> tuple[str, ...]:
        look = self._look
        middle, own = look.middle(plate), look.shown[plate.key]
        if middle is None or not own:
            return ()
        skipped = {plate.key, *(other.key for other in look.cuts.get(plate.key, ()))}
        scored: list[tuple[float, int]] = []
        around, rarity = self._around(plate), self._rarity
        for number, other in enumerate(around):
            shared = own & other.terms
            years = abs(other.middle - middle)
            if shared and years <= YEARS and other.key not in skipped:
                score = sum([rarity[term] for term in shared]) * 0.5 ** (years / FADE)
                scored.append((-score * (SAME if other.garment == plate.garment else 1.0), number))
        return tuple(around[number].key for _, number in nsmallest(MOST, scored))
