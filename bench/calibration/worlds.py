"""Catalogues by chance, with what was true when each plate was drawn."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from random import Random

from bench.calibration.truth import Use, use_by_chance

from inperiod.dating import day_number, read_edtf, widened
from inperiod.evidence.facts import Basis, Days, DocumentFact, Facts, GarmentFact, PlateFact, TermFact

CIRCA_YEARS = 5
RUN_YEARS = 20
FACETS, TERMS_EACH = 3, 4
PLAIN = TERMS_EACH
"""Each facet has one term more, which a plate shows where it shows none of the others."""

PLACES = ("London", "Paris")
WEARERS = ("woman", "girl")
Group = tuple[str, str]
"""A place and a wearer: fashion comes to each in its own time."""


@dataclass(frozen=True, slots=True)
class World:
    """The parameters of a simulated catalogue. Shares and rates are between 0 and 1."""

    first: int = 1880
    last: int = 1940
    documents: tuple[int, int] = (50, 200)
    uneven: float = 0.8
    """Spread of the logarithm of a decade's share of the documents: one decade has ten times another's."""
    plates: tuple[int, int] = (3, 30)
    recorded: float = 0.85
    """How often a plate records a facet: otherwise it is not visible."""
    alike: float = 0.2
    """Correlation of the plates of one document."""
    misdated: tuple[float, float] = (0.02, 0.05)
    """Share of documents of grade A with a wrong date, drawn for each catalogue."""
    misread: float = 0.0002
    """Chance that a plate is said to show a term it does not, for each term of a recorded facet."""
    reprints: float = 0.04
    """Share of documents that repeat an earlier one's plates with nothing said of it; as many are marked."""
    circa: float = 0.08
    decade: float = 0.04
    """Shares of documents dated "circa", and to a decade alone; the rest to a year, season or month."""
    revivals: float = 0.08
    lag: float = 0.0
    """Fashion comes to another place, or another wearer, up to so many years earlier or later."""
    one_publisher: bool = False
    """Whether misdates run through one publisher: as many as else, but all within twenty years, and all
    wrong by the same years."""


@dataclass(frozen=True)
class Made:
    """A catalogue, and the truth of it: use by term and group; true year and group by plate key."""

    facts: Facts
    uses: Mapping[str, Mapping[Group, Use]]
    drawn: Mapping[str, tuple[float, Group]]

    @property
    def first_year(self) -> float:
        """True year of the earliest document."""
        return min(year for year, _ in self.drawn.values())

    @property
    def last_year(self) -> float:
        """True year of the latest document."""
        return max(year for year, _ in self.drawn.values())


def term_keys() -> tuple[str, ...]:
    """The terms that are asked about."""
    return tuple(f"f{facet}/t{term}" for facet in range(FACETS) for term in range(TERMS_EACH))


@dataclass(frozen=True, slots=True)
class _Drawn:
    """The plates of a document as drawn: the year they show, where, for whom, and what they show."""

    year: float
    place: str
    plates: tuple[tuple[str, tuple[tuple[int, ...] | None, ...]], ...]


def make(world: World, chance: Random) -> Made:
    """One catalogue of that world."""
    uses = {key: _uses(world, chance) for key in term_keys()}
    slips = Slips(world, chance)
    years = _years(world, chance)
    documents: list[DocumentFact] = []
    drawn: list[_Drawn] = []
    truth: dict[str, tuple[float, Group]] = {}
    for number, year in enumerate(years):
        id = f"s{number:04d}"
        repeated = _repeated(world, chance, drawn, year)
        root: int | None = None
        if repeated is None:
            held = _draw(world, chance, uses, year)
        else:
            held = drawn[repeated]
            root = repeated if chance.random() < 0.5 else None
        drawn.append(held)
        basis: Basis = chance.choices(("A", "B", "C"), weights=(65, 20, 15))[0]
        days = _dated(world, chance, year, basis, slips.years_off(chance, year, basis))
        plates = []
        for at, (who, facets) in enumerate(held.plates):
            plate = _plate(world, chance, f"p{at:02d}", who, facets)
            plates.append(plate)
            truth[f"{id}/{plate.id}"] = (held.year, (held.place, who))
        documents.append(
            DocumentFact(
                id,
                id,
                "trade-catalogue",
                (held.place.casefold(),),
                basis,
                days,
                (days, days),
                root,
                tuple(plates),
            )
        )
    return Made(_facts(world, documents), uses, truth)


def _facts(world: World, documents: list[DocumentFact]) -> Facts:
    terms = tuple(
        TermFact(facet, f"t{term}", f"t{term}") for facet in range(FACETS) for term in range(PLAIN + 1)
    )
    facets = {f"f{facet}": f"F{facet}" for facet in range(FACETS)}
    garment = GarmentFact("dress", "Dress", "dresses")
    return Facts(CIRCA_YEARS, (world.first, world.last), facets, (garment,), terms, tuple(documents))


def _uses(world: World, chance: Random) -> dict[Group, Use]:
    """The first group sets the fashion; the others follow, or lead, by their own years."""
    use = use_by_chance(chance, world.first, world.last, world.revivals)
    found = {}
    for place in PLACES:
        for wearer in WEARERS:
            own = 0.0 if (place, wearer) == (PLACES[0], WEARERS[0]) else chance.uniform(-world.lag, world.lag)
            found[place, wearer] = use.later(own)
    return found


def _years(world: World, chance: Random) -> list[float]:
    decades = range(world.first, world.last, 10)
    weights = [chance.lognormvariate(0, world.uneven) for _ in decades]
    count = chance.randint(*world.documents)
    return sorted(chance.choices(decades, weights=weights)[0] + 10 * chance.random() for _ in range(count))


def _repeated(world: World, chance: Random, drawn: list[_Drawn], year: float) -> int | None:
    """The earlier document, two to twelve years old, that this one only repeats; None for most."""
    if chance.random() >= 2 * world.reprints:
        return None
    old = [at for at, each in enumerate(drawn) if 2 <= year - each.year <= 12]
    return chance.choice(old) if old else None


def _draw(world: World, chance: Random, uses: Mapping[str, Mapping[Group, Use]], year: float) -> _Drawn:
    """The plates of a document. Each term has, in each document, a share of its own about the true one
    (beta, with the correlation of the world): a house has its own taste."""
    place = chance.choices(PLACES, weights=(3, 1))[0] if world.lag else PLACES[0]
    precision = 1 / world.alike - 1
    taste: dict[tuple[str, str], float] = {}
    plates = []
    for _ in range(chance.randint(*world.plates)):
        who = chance.choices(WEARERS, weights=(3, 1))[0] if world.lag else WEARERS[0]
        facets: list[tuple[int, ...] | None] = []
        for facet in range(FACETS):
            if chance.random() >= world.recorded:
                facets.append(None)
                continue
            shown = []
            for term in range(TERMS_EACH):
                key = f"f{facet}/t{term}"
                if (key, who) not in taste:
                    p = uses[key][place, who].at(year)
                    taste[key, who] = chance.betavariate(p * precision, (1 - p) * precision) if p > 0 else 0.0
                if taste[key, who] > 0 and chance.random() < taste[key, who]:
                    shown.append(term)
            facets.append(tuple(shown))
        plates.append((who, tuple(facets)))
    return _Drawn(year, place, tuple(plates))


def _plate(
    world: World, chance: Random, id: str, who: str, facets: tuple[tuple[int, ...] | None, ...]
) -> PlateFact:
    """A plate as somebody wrote it down, slips of reading among it."""
    shown = []
    for facet, terms in enumerate(facets):
        if terms is None:
            continue
        read = set(terms) | {term for term in range(TERMS_EACH) if chance.random() < world.misread}
        shown += [(facet * (PLAIN + 1) + term, 0) for term in sorted(read or {PLAIN})]
    return PlateFact(id, 0, who, tuple(shown))


class Slips:
    """How the dates of one catalogue go wrong. Institutions err about three times as often as print, sellers
    and estimates six times."""

    WORSE: Mapping[Basis, int] = {"A": 1, "B": 3, "C": 6}

    def __init__(self, world: World, chance: Random) -> None:
        self.world = world
        self.rate = chance.uniform(*world.misdated)
        self.run_begins = chance.uniform(world.first, world.last - RUN_YEARS)
        self.run_off = _years_off(chance)

    def years_off(self, chance: Random, year: float, basis: Basis) -> int:
        """By how many years the date of this document is wrong: 0 for most."""
        rate = self.rate * self.WORSE[basis]
        if not self.world.one_publisher:
            return _years_off(chance) if chance.random() < rate else 0
        if not self.run_begins <= year < self.run_begins + RUN_YEARS:
            return 0
        often = (self.world.last - self.world.first) / RUN_YEARS
        return self.run_off if chance.random() < rate * often else 0


def _years_off(chance: Random) -> int:
    """3 to 25 years, either way."""
    return chance.choice((-1, 1)) * chance.randint(3, 25)


def _dated(world: World, chance: Random, year: float, basis: Basis, off: int) -> Days:
    """The days of the recorded date. What institutions and sellers say is oftener circa or a decade."""
    said = year + off
    vague = {"A": 1, "B": 2, "C": 3}[basis]
    form = chance.random()
    if form < world.circa * vague:
        text = f"{int(said + chance.triangular(-CIRCA_YEARS, CIRCA_YEARS))}~"
    elif form < (world.circa + world.decade) * vague:
        text = f"{int(said) // 10}X"
    else:
        month = int(said % 1 * 12) + 1
        text = chance.choice(
            (f"{int(said)}", f"{int(said)}", _season(int(said), month), f"{int(said)}-{month:02d}")
        )
    span = widened(read_edtf(text), CIRCA_YEARS)
    return span.earliest, span.latest


def _season(year: int, month: int) -> str:
    """EDTF's season of a month; January and February belong to the winter before."""
    return f"{year - 1}-24" if month < 3 else f"{year}-{min(24, 21 + (month - 3) // 3)}"


def days_of(first: int, last: int) -> tuple[int, int]:
    """First and last day of whole years."""
    return day_number(first), day_number(last + 1) - 1
