"""Which plates stand near one another in time and style."""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache, cached_property
from heapq import nsmallest
from typing import NamedTuple

from inperiod.publishing.digests import digest
from inperiod.publishing.lookup import Lookup
from inperiod.publishing.outlines import PlateOutline
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
    told: str


Row = list[_Stand]
"""The dated plates of one widest garment type, in order of date."""


class Neighbours:
    """Plates near a plate: the same root garment, shared terms weighed by their rarity (how often the plates
    that show one can be doubled before they are all the plates there are), halved every ``FADE`` years."""

    def __init__(self, look: Lookup) -> None:
        self._look = look
        self._known: dict[str, Sequence[str]] = {}
        self._noted: Mapping[str, Sequence[str]] = {}
        self._plates = cache(lambda source: {plate.id: plate for plate in look.outlines[source].plates})

    @cached_property
    def rows(self) -> Mapping[str, Row]:
        """By widest garment type: its plates."""
        root = cache(lambda garment: self._look.catalogue.vocabulary.broader_garments(garment)[-1])
        found: dict[str, Row] = defaultdict(list)
        for source in self._look.outlines.values():
            for plate in source.plates:
                if plate.middle is not None:
                    key = f"{source.id}/{plate.id}"
                    stand = _Stand(key, plate.garment, plate.middle, frozenset(plate.terms), plate.evidence)
                    found[root(plate.garment)].append(stand)
        return {
            garment: sorted(row, key=lambda each: (each.middle, each.key)) for garment, row in found.items()
        }

    @cached_property
    def _at(self) -> Mapping[str, tuple[Row, int]]:
        return {each.key: (row, at) for row in self.rows.values() for at, each in enumerate(row)}

    @cached_property
    def _rarity(self) -> Mapping[str, int]:
        """Whole numbers, so that one plate more in a large catalogue leaves nearly all as they are."""
        broader = cache(self._look.catalogue.vocabulary.broader_terms)
        count: Counter[str] = Counter()
        total = 0
        for source in self._look.outlines.values():
            total += len(source.plates)
            for plate in source.plates:
                count.update({broad for term in plate.terms for broad in broader(term)})
        return {term: (total // plates).bit_length() for term, plates in count.items()}

    def _stand(self, plate: str) -> _Stand | None:
        row, at = self._at.get(plate, ([], 0))
        return row[at] if row else None

    def _around(self, plate: str) -> Row:
        """The plates it is held against, in order of date, itself among them; none for an undated plate."""
        row, at = self._at.get(plate, ([], 0))
        return row[max(0, at - AROUND) : at + AROUND + 1]

    def of(self, plate: str) -> tuple[Near, ...]:
        """The nearest plates of a plate by its key, best first; none for an undated plate. Plates of the same
        cut are left out."""
        own = self._outline(plate)
        others = [(key, self._outline(key)) for key in self.keys(plate)]
        return tuple(
            Near(
                self._look.catalogue.plates[key],
                tuple(sorted({*own.terms} & {*other.terms})),
                abs((other.middle or 0.0) - (own.middle or 0.0)),
            )
            for key, other in others
        )

    def _outline(self, plate: str) -> PlateOutline:
        source, _, name = plate.partition("/")
        return self._plates(source)[name]

    def keys(self, plate: str) -> Sequence[str]:
        """The keys of the nearest plates; worked out once, or told before by ``learn`` or ``believe``."""
        if plate not in self._known:
            noted = self._noted.get(plate)
            self._known[plate] = self._nearest(plate) if noted is None else noted
        return self._known[plate]

    def learn(self, plate: str, keys: Sequence[str]) -> None:
        """What was worked out elsewhere from the same grounds."""
        self._known[plate] = keys

    def believe(self, noted: Mapping[str, Sequence[str]]) -> None:
        """The same of every plate."""
        self._noted = noted

    def grounds_of_row(self, garment: str) -> str:
        """A digest of all that decides which plates are nearest to those of a row."""
        row = self.rows[garment]
        cuts = [(each.key, self._cuts(each.key)) for each in row if each.key in self._look.cuts]
        terms = {term for each in row for term in each.terms}
        rarities = [(term, self._rarity[term]) for term in sorted(terms)]
        told = "".join([each.told for each in row])
        return digest((garment, cuts, rarities, told)).hex()

    def grounds(self, plate: str) -> str:
        """A digest of all that decides which plates are nearest to this one."""
        own = self._stand(plate)
        rarities = [self._rarity[term] for term in sorted(own.terms)] if own else []
        told = "".join([other.told for other in self._around(plate)])
        return digest((plate, self._cuts(plate), rarities, told)).hex()

    def _cuts(self, plate: str) -> list[str]:
        return [other.key for other in self._look.cuts.get(plate, ())]

    def _nearest(self, plate: str) -> tuple[str, ...]:
        stand = self._stand(plate)
        if stand is None or not stand.terms:
            return ()
        skipped = {plate, *self._cuts(plate)}
        scored: list[tuple[float, int]] = []
        around, rarity, own = self._around(plate), self._rarity, stand.terms
        for number, other in enumerate(around):
            shared = own & other.terms
            years = abs(other.middle - stand.middle)
            if shared and years <= YEARS and other.key not in skipped:
                score = sum([rarity[term] for term in shared]) * 0.5 ** (years / FADE)
                scored.append((-score * (SAME if other.garment == stand.garment else 1.0), number))
        return tuple(around[number].key for _, number in nsmallest(MOST, scored))
