"""A term's years laid along a scale: sightings, attested range, how far it may reach, and its decades."""

from __future__ import annotations

from dataclasses import dataclass, replace

from inperiod.dating import day_number, decimal_year
from inperiod.evidence.facts import Facts
from inperiod.evidence.ranges import Attested, attested, seen
from inperiod.evidence.shares import frequency, share
from inperiod.evidence.surveys import Limits, Survey, survey
from inperiod.evidence.weights import Window
from inperiod.publishing import words

THIN = 3
"""A share counted from fewer documents than this is drawn thinly. Ours."""


@dataclass(frozen=True, slots=True)
class Tick:
    """A year on the scale: its place in per cent, and its label where it opens a decade that has room for
    one."""

    x: str
    label: str
    half: bool
    anchor: str


@dataclass(frozen=True, slots=True)
class Tape:
    """Places are in per cent of the scale, as text. ``possible`` are two places, ``band`` a place and a
    width. ``first`` and ``last`` are decimal years, None without sightings."""

    words: str
    short: str
    grid: tuple[str, ...]
    possible: tuple[str, str] | None
    band: tuple[str, str] | None
    stitches: tuple[str, ...]
    aside: tuple[str, ...]
    floor: str | None
    sightings: int
    first: float | None
    last: float | None


@dataclass(frozen=True, slots=True)
class Cell:
    """A decade: ``kind`` is ``unlooked``, ``absent``, ``thin`` or ``shown``; ``height`` is 0 to 64 pixels."""

    label: str
    kind: str
    height: int
    word: str
    counts: str
    documents: int


@dataclass(frozen=True)
class Scale:
    """The years drawn, from the first of January of ``start`` to that of ``end``."""

    start: int
    end: int

    def place(self, year: float) -> float:
        """0 to 1, kept within the scale."""
        return min(1.0, max(0.0, (year - self.start) / (self.end - self.start)))

    def at(self, year: float) -> str:
        return _per_cent(self.place(year))

    @property
    def labelled(self) -> int:
        """The years from one labelled tick to the next: the least round number that leaves few labels."""
        rounds = (10, 20, 50, 100, 200, 500, 1000)
        return next((years for years in rounds if (self.end - self.start) / years <= 6), rounds[-1])

    def ticks(self) -> tuple[Tick, ...]:
        """Every year where there is room, else every fifth or tenth; decades are labelled."""
        length, labelled = self.end - self.start, self.labelled
        step = 1 if length <= 60 else 5 if length <= 150 else 10 if length <= 600 else labelled // 5
        made = []
        for year in range(self.start, self.end + 1, step):
            anchor = "start" if year == self.start else "end" if year == self.end else "middle"
            label = str(year) if year % labelled == 0 else ""
            made.append(Tick(self.at(year), label, year % (5 * step) == 0, anchor))
        return tuple(made)

    def grid(self) -> tuple[str, ...]:
        first = -(-self.start // self.labelled) * self.labelled
        return tuple(self.at(year) for year in range(first, self.end + 1, self.labelled))


def scale_of(facts: Facts) -> Scale:
    """The scale of all tapes of a site: the decades its settings show."""
    first, last = facts.decades
    return Scale(first, last + 10)


def _per_cent(part: float) -> str:
    return f"{100 * part:.2f}".rstrip("0").rstrip(".")


def sightings(facts: Facts, garment: str, term: str, grades: str) -> int:
    """How many documents show the term on the garment."""
    looked = _looked(facts, garment, term, grades)
    return 0 if looked is None else len(seen(facts, looked, (facts.term_index[term],)).sighted)


def years(facts: Facts, garment: str, term: str, grades: str) -> tuple[float, float] | None:
    """The first and the last of the term's attested years on the garment, decimal; None without sightings."""
    looked = _looked(facts, garment, term, grades)
    found = looked and attested(looked, seen(facts, looked, (facts.term_index[term],)))
    return _ends(found) if found else None


def _ends(found: Attested) -> tuple[float, float]:
    return decimal_year(found.first_twice // 2), decimal_year(found.last_twice // 2)


def tape(facts: Facts, garment: str, term: str, grades: str) -> Tape | None:
    """The term on the garment. None where the catalogue does not know one of them."""
    looked = _looked(facts, garment, term, grades)
    if looked is None:
        return None
    of = seen(facts, looked, (facts.term_index[term],))
    found = attested(looked, of)
    scale = scale_of(facts)
    fact = facts.terms[facts.term_index[term]]
    floor = decimal_year(fact.not_before.day) if fact.not_before else None
    bare = Tape(
        words="Not shown by any document that counts.",
        short="no sighting",
        grid=scale.grid(),
        possible=None,
        band=None,
        stitches=(),
        aside=(),
        floor=scale.at(floor) if floor is not None and scale.start < floor < scale.end else None,
        sightings=0,
        first=None,
        last=None,
    )
    if found is None:
        return bare
    first, last = _ends(found)
    reach = (
        scale.start if found.before is None else decimal_year(found.before // 2),
        scale.end if found.after is None else decimal_year(found.after // 2),
    )
    left, right = scale.place(first), scale.place(last)
    aside = set(found.set_aside)
    return replace(
        bare,
        words=_said(first, last, found.before, found.after, found.sightings, len(aside)),
        short=f"{_years(first, last)}, {words.counted(found.sightings, 'document')}",
        possible=(scale.at(reach[0]), scale.at(reach[1])),
        band=(_per_cent(left), _per_cent(max(0.004, right - left))),
        stitches=_places(scale, looked, [each for each in of.sighted if each not in aside]),
        aside=_places(scale, looked, list(found.set_aside)),
        sightings=len(of.sighted),
        first=first,
        last=last,
    )


def _looked(facts: Facts, garment: str, term: str, grades: str) -> Survey | None:
    index = facts.term_index.get(term)
    at = facts.garment_index.get(garment)
    if index is None or at is None:
        return None
    return survey(facts, Limits(at, (facts.terms[index].facet,), grades=grades))


def _places(scale: Scale, looked: Survey, positions: list[int]) -> tuple[str, ...]:
    """Each place once, those off the scale left out."""
    years = (decimal_year(looked.middles[position] // 2) for position in positions)
    return tuple(dict.fromkeys(scale.at(year) for year in years if scale.start <= year <= scale.end))


def _years(first: float, last: float) -> str:
    return str(int(first)) if int(first) == int(last) else f"{int(first)}–{int(last)}"


def _said(
    first: float, last: float, before: int | None, after: int | None, sightings: int, aside: int
) -> str:
    one_year = int(first) == int(last)
    said = f"Shown {'in' if one_year else 'from'} {_years(first, last).replace('–', ' to ')}"
    said += f" by {words.counted(sightings, 'document')}"
    back = None if before is None else int(decimal_year(before // 2))
    on = None if after is None else int(decimal_year(after // 2))
    if back is None and on is None:
        said += ". How much earlier it began and how much later it lasted is open"
    elif back is None:
        said += f". It may have lasted to {on}; how much earlier it began is open"
    elif on is None:
        said += f". It may reach back to {back}; how much later it lasted is open"
    else:
        said += f". It may reach back to {back} and on to {on}"
    if aside:
        said += f"; {words.counted(aside, 'sighting')} set aside"
    return said + "."


def decade_cells(facts: Facts, garment: str, term: str, grades: str) -> tuple[Cell, ...]:
    """How usual the term is on the garment, decade by decade."""
    looked = _looked(facts, garment, term, grades)
    if looked is None:
        return ()
    of = seen(facts, looked, (facts.term_index[term],))
    first, last = facts.decades
    cells = []
    for decade in range(first, last + 1, 10):
        window = Window(day_number(decade, 1, 1), day_number(decade + 9, 12, 31))
        weighed = looked.weighed(window)
        here = share(
            (part, len(looked.entries[position].plates), len(of.showing.get(position, ())))
            for position, part in weighed
        )
        if here.value is None:
            cells.append(Cell(f"{decade}s", "unlooked", 0, "not looked", "–", 0))
            continue
        word = frequency(here) or "not seen"
        cells.append(
            Cell(
                f"{decade}s",
                ("thin" if len(weighed) < THIN else "shown") if here.showing > 0 else "absent",
                max(2, round(64 * here.value)) if here.showing > 0 else 0,
                f"{round(100 * here.value)} %" if here.showing > 0 else word,
                f"{_weight(here.showing)} of {_weight(here.recorded)}",
                len(weighed),
            )
        )
    return tuple(cells)


def _weight(value: float) -> str:
    return f"{value:.1f}".removesuffix(".0")
