"""What people write, as frozen values: settings, vocabulary, sources, plates, boards.

Nothing here reads a file or judges a record; see ``reading`` for the first and ``checks`` for the
second. Every record carries the ``Mark`` of the place it was written in, so that a later complaint
can name file, line and column.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from pathlib import Path
from typing import Any, Literal

from inperiod.dating import Span

State = Literal["shown", "none", "not visible"]
Reading = Literal["seen", "read", "inferred"]
Grade = Literal["A", "B", "C"]
Found = Literal["confirmed", "corrected", "disputed"]

GRADE_OF_BASIS: Mapping[str, Grade] = {
    "printed": "A",
    "internal": "A",
    "documented": "A",
    "institution": "B",
    "seller": "C",
    "style": "C",
    "estimate": "C",
}


@dataclass(frozen=True, slots=True)
class Mark:
    """Where a value was written: file relative to the catalogue folder, 1-based line and column."""

    file: str
    line: int = 1
    column: int = 1


Spots = Mapping[str, tuple[int, int]]
"""Line and column of each field's value, by the field's name."""


def _mark_of(mark: Mark, spots: Spots, name: str) -> Mark:
    """Where a field's value was written; the record's own place where it has no such field."""
    return Mark(mark.file, *spots[name]) if name in spots else mark


@dataclass(frozen=True, slots=True)
class Dated:
    """A date as written in a record (EDTF) and as read."""

    text: str
    span: Span
    mark: Mark


@dataclass(frozen=True, slots=True)
class Name:
    """Another name of a term. ``use`` is ``"UK"``, ``"US"`` or None; ``period`` says when it was said."""

    name: str
    use: str | None = None
    period: str | None = None
    language: str | None = None
    note: str | None = None


@dataclass(frozen=True, slots=True)
class Milestone:
    """A documented date a term cannot precede, or is known in dress from.

    ``event`` says what the date is: filed, granted, first sold, first made, in use …
    ``source`` is the citation, or ``"from memory"``.
    """

    date: Dated
    event: str
    source: str
    note: str | None = None


@dataclass(frozen=True, slots=True)
class Term:
    """One entry of a facet. ``key`` is ``facet/id``.

    ``applies_to`` names garments, narrower ones included; empty means every garment of its facet.
    """

    facet: str
    id: str
    label: str
    definition: str
    mark: Mark
    names: tuple[Name, ...] = ()
    broader: str | None = None
    applies_to: tuple[str, ...] = ()
    not_before: Milestone | None = None
    in_dress_from: Milestone | None = None
    see_also: tuple[str, ...] = ()
    told_apart: str | None = None
    cautions: tuple[str, ...] = ()
    source: str | None = None
    draw: Mapping[str, Any] = field(default_factory=dict)
    spots: Spots = field(default_factory=dict, repr=False, compare=False)

    @property
    def key(self) -> str:
        return f"{self.facet}/{self.id}"

    def mark_of(self, name: str) -> Mark:
        """Where the value of that field was written."""
        return _mark_of(self.mark, self.spots, name)


@dataclass(frozen=True, slots=True)
class Facet:
    """A family of terms. ``exclusive``: a garment has at most one of them at a time."""

    id: str
    label: str
    question: str
    exclusive: bool
    terms: tuple[Term, ...]
    mark: Mark
    applies_to: tuple[str, ...] = ()
    note: str | None = None
    spots: Spots = field(default_factory=dict, repr=False, compare=False)

    def mark_of(self, name: str) -> Mark:
        """Where the value of that field was written."""
        return _mark_of(self.mark, self.spots, name)


def _chain(start: str, onward: Callable[[str], str | None]) -> tuple[str, ...]:
    chain: list[str] = []
    at: str | None = start
    while at and at not in chain:
        chain.append(at)
        at = onward(at)
    return tuple(chain)


@dataclass(frozen=True)
class Vocabulary:
    """All facets, in the order they are shown. Garment types are the facet ``garment``."""

    facets: Mapping[str, Facet]

    @cached_property
    def terms(self) -> Mapping[str, Term]:
        """Every term by its key, in order of facet and then as written."""
        return {term.key: term for facet in self.facets.values() for term in facet.terms}

    @cached_property
    def garments(self) -> Mapping[str, Term]:
        """Garment types by id."""
        facet = self.facets.get("garment")
        return {term.id: term for term in facet.terms} if facet else {}

    def broader_garments(self, garment: str) -> tuple[str, ...]:
        """The garment itself and all broader ones, narrowest first; a circle is cut where it closes."""

        def broader(at: str) -> str | None:
            term = self.garments.get(at)
            return term.broader if term else None

        return _chain(garment, broader)

    def broader_terms(self, key: str) -> tuple[str, ...]:
        """The same of a term by its key: itself and the broader ones of its facet."""

        def broader(at: str) -> str | None:
            term = self.terms.get(at)
            return f"{term.facet}/{term.broader}" if term and term.broader else None

        return _chain(key, broader)

    def narrower_garments(self, garment: str) -> frozenset[str]:
        """The garment itself and every narrower one."""
        return frozenset(
            [garment, *(each for each in self.garments if garment in self.broader_garments(each))]
        )

    def applies(self, term: Term, garment: str) -> bool:
        """Whether the term can be recorded on that garment: its own list or else its facet's."""
        allowed = term.applies_to or self.facets[term.facet].applies_to
        return not allowed or any(each in allowed for each in self.broader_garments(garment))


@dataclass(frozen=True, slots=True)
class Feature:
    """One term recorded on a plate, or a facet looked for and found absent or not visible.

    ``term`` is ``facet/id`` for state "shown" and None otherwise; ``word`` is how it is written in short.
    ``at`` is a place on the garment, ``width`` a measure as written (``"1 in"``, ``"2.5 cm"``).
    """

    facet: str
    term: str | None
    mark: Mark
    state: State = "shown"
    reading: Reading = "seen"
    at: str | None = None
    width: str | None = None
    count: int | None = None
    colour: str | None = None
    note: str | None = None

    @property
    def word(self) -> str:
        """``neckline/square``, ``trim/none`` or ``trim/not visible``."""
        return self.term or f"{self.facet}/{self.state}"


@dataclass(frozen=True, slots=True)
class Locator:
    """Where in the source: as printed, so all are text."""

    page: str | None = None
    plate: str | None = None
    figure: str | None = None
    item: str | None = None
    column: str | None = None


@dataclass(frozen=True, slots=True)
class Wearer:
    """Whom the garment is for. ``who``: woman, man, girl, boy, infant or any."""

    who: str = "any"
    age: str | None = None
    sizes: str | None = None
    status: str | None = None


@dataclass(frozen=True, slots=True)
class Price:
    """A price as printed; ``currency`` an ISO 4217 code."""

    amount: str
    currency: str | None = None
    note: str | None = None


@dataclass(frozen=True, slots=True)
class Image:
    """A picture under ``images/``.

    ``region`` is ``x,y,w,h`` in pixels or ``pct:x,y,w,h`` (the form of the IIIF Image API).
    """

    file: str
    mark: Mark
    alt: str | None = None
    region: str | None = None
    rights: str | None = None


@dataclass(frozen=True, slots=True)
class Recorded:
    """Who recorded or examined something, and when (EDTF)."""

    by: str | None = None
    on: str | None = None
    pages: str | None = None


@dataclass(frozen=True, slots=True)
class Confirmation:
    """What a second reader found of one reading, or of the whole plate where ``feature`` is None.

    ``feature`` and ``instead`` are written as features are: ``neckline/square``, ``trim/none``,
    ``trim/not visible``; or ``garment/day-dress`` for the garment. ``instead`` is what the second reader
    reads in the place of ``feature``.
    """

    by: str
    reading: Found
    mark: Mark
    on: Dated | None = None
    feature: str | None = None
    instead: str | None = None
    note: str | None = None


@dataclass(frozen=True, slots=True)
class Plate:
    """One figure, cut or entry inside a source that shows or describes one garment."""

    id: str
    source: str
    garment: str
    mark: Mark
    features: tuple[Feature, ...] = ()
    locator: Locator = Locator()
    date: Dated | None = None
    outfit: str | None = None
    wearer: Wearer = Wearer()
    occasion: str | None = None
    caption: str | None = None
    translation: str | None = None
    price: Price | None = None
    view: str | None = None
    medium: str | None = None
    treatment: tuple[str, ...] = ()
    same_cut_as: str | None = None
    image: Image | None = None
    publish: bool = True
    recorded: Recorded | None = None
    confirmations: tuple[Confirmation, ...] = ()
    note: str | None = None
    left_out: tuple[str, ...] = ()
    """Fields that were written but could not be read: their absence means nothing."""
    spots: Spots = field(default_factory=dict, repr=False, compare=False)

    @property
    def key(self) -> str:
        return f"{self.source}/{self.id}"

    @property
    def shown(self) -> frozenset[str]:
        """The terms it shows, broader ones not added."""
        return frozenset(each.term for each in self.features if each.state == "shown" and each.term)

    def mark_of(self, name: str) -> Mark:
        """Where the value of that field was written."""
        return _mark_of(self.mark, self.spots, name)


@dataclass(frozen=True, slots=True)
class Publisher:
    name: str | None = None
    place: str | None = None


@dataclass(frozen=True, slots=True)
class Creator:
    name: str
    role: str | None = None


@dataclass(frozen=True, slots=True)
class HeldBy:
    """Who keeps it. ``accessed`` is the day the address was read (EDTF)."""

    name: str | None = None
    shelfmark: str | None = None
    accession: str | None = None
    url: str | None = None
    accessed: str | None = None


@dataclass(frozen=True, slots=True)
class Source:
    """A dated document or object, with its plates. ``date`` is the date evidence weighs; None is undated."""

    id: str
    title: str
    kind: str
    mark: Mark
    date: Dated | None = None
    on_sale: Dated | None = None
    made: Dated | None = None
    photographed: Dated | None = None
    altered: Dated | None = None
    worn: Dated | None = None
    date_basis: str | None = None
    date_note: str | None = None
    date_printed: str | None = None
    publisher: Publisher = Publisher()
    creators: tuple[Creator, ...] = ()
    container: str | None = None
    volume: str | None = None
    issue: str | None = None
    pages: str | None = None
    edition: str | None = None
    drafting_system: str | None = None
    market: str | None = None
    language: str | None = None
    held_by: HeldBy = HeldBy()
    rights: str | None = None
    examined: Recorded | None = None
    reprint_of: str | None = None
    publish: bool = True
    note: str | None = None
    plates: tuple[Plate, ...] = ()
    left_out: tuple[str, ...] = ()
    """Fields that were written but could not be read: their absence means nothing."""
    spots: Spots = field(default_factory=dict, repr=False, compare=False)

    @property
    def each_once(self) -> Collection[Plate]:
        """The plates by their ids: where two have one, the last in the place of the first."""
        return {plate.id: plate for plate in self.plates}.values()

    @property
    def grade(self) -> Grade | None:
        """A, B or C by what the date rests on; None where no basis is given."""
        return GRADE_OF_BASIS.get(self.date_basis or "")

    def mark_of(self, name: str) -> Mark:
        """Where the value of that field was written."""
        return _mark_of(self.mark, self.spots, name)


@dataclass(frozen=True, slots=True)
class Gathered:
    """A plate gathered on a board, why, and the planned feature it supports."""

    plate: str
    mark: Mark
    reason: str | None = None
    supports: str | None = None


@dataclass(frozen=True, slots=True)
class Departure:
    """An honest departure from the evidence. ``shows_at``: across the field, at arm's length or inside."""

    original: str
    stand_in: str
    reason: str
    mark: Mark
    shows_at: str | None = None
    feature: str | None = None


@dataclass(frozen=True, slots=True)
class Board:
    """A research board: a target, a planned garment, the plates gathered for it, notes."""

    id: str
    title: str
    target: Dated
    garment: str
    mark: Mark
    wearer: Wearer = Wearer()
    place: str | None = None
    features: tuple[Feature, ...] = ()
    plates: tuple[Gathered, ...] = ()
    notes: str | None = None
    questions: tuple[str, ...] = ()
    departures: tuple[Departure, ...] = ()
    worn_under: str | None = None
    measures: Mapping[str, Any] = field(default_factory=dict)
    making: tuple[Mapping[str, Any], ...] = ()
    care: str | None = None
    revisions: tuple[Mapping[str, Any], ...] = ()
    signed_off: Recorded | None = None
    permanent_mark: str | None = None
    citation_style: str | None = None
    publish: bool = True
    spots: Spots = field(default_factory=dict, repr=False, compare=False)

    def mark_of(self, name: str) -> Mark:
        """Where the value of that field was written."""
        return _mark_of(self.mark, self.spots, name)


@dataclass(frozen=True, slots=True)
class Settings:
    """``inperiod.yaml``. ``demonstration`` is the notice shown on every page of invented data."""

    title: str = "Untitled catalogue"
    subtitle: str | None = None
    language: str = "en"
    decades: tuple[int, int] = (1890, 1930)
    circa_years: int = 5
    seasons: Literal["northern", "southern"] = "northern"
    grades: str = "A"
    base_address: str | None = None
    build_date: str | None = None
    editors: tuple[str, ...] = ()
    licence: str | None = None
    demonstration: str | None = None
    publishing: Mapping[str, Any] = field(default_factory=dict)


@dataclass(frozen=True)
class Catalogue:
    """Everything in one folder, whole and indexed."""

    folder: Path
    settings: Settings
    vocabulary: Vocabulary
    sources: Mapping[str, Source]
    boards: Mapping[str, Board]
    only_regions_of: frozenset[str] = frozenset()
    """Files in ``images/`` that also show what is withheld: regions of them may be shown, the whole never."""

    @cached_property
    def plates(self) -> Mapping[str, Plate]:
        """Every plate by its key ``source-id/plate-id``, in order of source id and then as written."""
        return {plate.key: plate for plate in self.all_plates()}

    @cached_property
    def entangled(self) -> Mapping[str, Source]:
        """The sources that concern more than themselves: see ``is_entangled``."""
        return {key: source for key, source in self.sources.items() if is_entangled(source)}

    def all_plates(self) -> Iterator[Plate]:
        for source in self.sources.values():
            yield from source.plates

    def entangled_plates(self) -> Iterator[Plate]:
        """The plates of entangled sources: all that have a picture or repeat another's cut are among them."""
        for source in self.entangled.values():
            yield from source.plates

    def dated(self, plate: Plate) -> Dated | None:
        """The plate's own date where it has one, else its source's."""
        return plate.date or self.sources[plate.source].date


def is_entangled(source: Source) -> bool:
    """Whether a source concerns more than itself: it or a plate of it is withheld, repeats another record, or
    has a picture, which others may share. Of all other sources only what points at them need be asked."""
    return (
        not source.publish
        or source.reprint_of is not None
        or any(not each.publish or each.same_cut_as or each.image for each in source.plates)
    )
