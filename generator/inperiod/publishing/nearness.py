"""Which plates stand near one another in time and style."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cached_property
from hashlib import blake2b
from heapq import nsmallest

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


class Neighbours:
    """Plates near a plate: the same root garment, shared terms weighed by their rarity (how often the plates
    that show one can be doubled before they are all the plates there are), halved every ``FADE`` years."""

    def __init__(self, look: Lookup) -> None:
        self._look = look
        widest = look.catalogue.vocabulary.broader_garments
        roots = {garment: widest(garment)[-1] for garment in look.of_garment}
        rows: dict[str, list[Plate]] = defaultdict(list)
        self._at: dict[str, tuple[list[Plate], int]] = {}
        for plate in look.ordered:
            if look.middle(plate) is not None:
                row = rows[roots[plate.garment]]
                self._at[plate.key] = (row, len(row))
                row.append(plate)
        total = len(look.ordered)
        self._known: dict[str, tuple[str, ...]] = {}
        # Whole numbers, so that one plate more or less in a large catalogue leaves nearly all as they are.
        self._rarity = {term: (total // len(plates)).bit_length() for term, plates in look.showing.items()}

    def around(self, plate: Plate) -> list[Plate]:
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
        stands = self._stands
        return blake2b(
            own + b"".join([stands[other.key] for other in self.around(plate)]), digest_size=16
        ).hexdigest()

    @cached_property
    def _stands(self) -> Mapping[str, bytes]:
        """By plate key: what nearness asks of a plate."""
        look = self._look
        return {
            key: digest((key, plate.garment, look.middle(plate), sorted(look.shown[key])))
            for key, plate in look.catalogue.plates.items()
        }

    def _nearest(self, plate: Plate) -> tuple[str, ...]:
        look = self._look
        middle, own = look.middle(plate), look.shown[plate.key]
        if middle is None or not own:
            return ()
        skipped = {plate.key, *(other.key for other in look.cuts.get(plate.key, ()))}
        scored: list[tuple[float, int]] = []
        around = self.around(plate)
        for number, other in enumerate(around):
            shared = own & look.shown[other.key]
            years = abs((look.middle(other) or 0.0) - middle)
            if shared and years <= YEARS and other.key not in skipped:
                score = sum(map(self._rarity.__getitem__, shared)) * 0.5 ** (years / FADE)
                scored.append((-score * (SAME if other.garment == plate.garment else 1.0), number))
        return tuple(around[number].key for _, number in nsmallest(MOST, scored))
