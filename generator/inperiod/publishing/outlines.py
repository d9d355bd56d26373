"""What the rest of a site needs to know of a source without opening it, so that a build opens those alone of
which it makes something.

Digests here are of what is recorded, not of where in a file it was written. They hold for one base (see
``made_from.base_digest``): by other settings or another vocabulary an outline is another.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import fields
from math import inf
from typing import Any, NamedTuple

from inperiod.evidence.facts import Days, days_of, documents_of
from inperiod.hands import done_by_all
from inperiod.publishing import words
from inperiod.publishing.digests import PLACES, digest, plain
from inperiod.publishing.flats import FlatPicture, middle_year, shown_picture
from inperiod.publishing.found_by import words_of
from inperiod.publishing.pictures import picture_of
from inperiod.records.keeping import Store
from inperiod.records.model import Catalogue, Plate, Source

PART = "outlines"
TOGETHER = 16
"""Sources that one process makes outlines of at a time."""


class PlateOutline(NamedTuple):
    """A plate. ``middle`` is the middle of its span in decimal years; ``terms`` are those shown, in order,
    without broader ones; ``absent`` and ``unseen`` the facets looked for in vain, and not to be seen;
    ``flat`` says whether lists show its flat; ``recorded`` is when it was recorded, as written. Digests:
    ``evidence`` of what evidence knows of it but for cuts and reprints, ``line`` of what lists say."""

    id: str
    garment: str
    middle: float | None
    terms: Sequence[str]
    absent: Sequence[str]
    unseen: Sequence[str]
    flat: bool
    recorded: str | None
    evidence: str
    line: str

    @property
    def looked(self) -> set[str]:
        """The facets that were looked at."""
        return {*(term.partition("/")[0] for term in self.terms), *self.absent}


class SourceOutline(NamedTuple):
    """A source. ``order`` is its place by date, title and id; ``described`` says in a line what it is;
    ``letters`` are those its plates' words begin with; ``documents`` are those of evidence, each with the
    middle of its days (infinite where undated) and its plates in order.

    Digests: ``head`` of all that is recorded of it but its plates, ``document`` of what evidence knows of it,
    ``evidence`` and ``lines`` of those of its plates."""

    id: str
    title: str
    described: str
    order: Sequence[Any]
    kind: str
    place: str | None
    reprint_of: str | None
    letters: str
    documents: Sequence[tuple[str, float, Sequence[str]]]
    head: str
    document: str
    evidence: str
    lines: str
    plates: Sequence[PlateOutline]


class Outliner:
    """Makes outlines of the sources of one catalogue as it is published."""

    def __init__(self, catalogue: Catalogue) -> None:
        self._catalogue = catalogue

    def of(self, source: Source) -> SourceOutline:
        document = _document(source)
        head = (source.title, plain(source.date), source.grade, len(source.plates) == 1)
        plates = [self._plate(plate, source, document, head) for plate in source.each_once]
        about = words.counted(len(source.plates), "plate")
        return SourceOutline(
            source.id,
            source.title,
            f"{words.sentence(words.kind(source))}, {words.when(source.date)}, with {about} recorded.",
            _order(source),
            source.kind,
            source.market or source.publisher.place,
            source.reprint_of,
            "".join(sorted({word[0] for words in words_of(source).values() for word in words.split()})),
            self._documents(source),
            _short((_head(source), len(source.plates))),
            _short(document),
            _short([each.evidence for each in plates]),
            _short([each.line for each in plates]),
            plates,
        )

    def _documents(self, source: Source) -> list[tuple[str, float, list[str]]]:
        circa = self._catalogue.settings.circa_years
        return [
            (name, _middle(days_of(dated.span if dated else None, circa)), [plate.id for plate in plates])
            for name, (dated, plates) in documents_of(source).items()
        ]

    def _plate(
        self, plate: Plate, source: Source, document: tuple[Any, ...], head: tuple[Any, ...]
    ) -> PlateOutline:
        absent = {each.facet for each in plate.features if each.state == "none"}
        unseen = {each.facet for each in plate.features if each.state == "not visible"}
        date, who, picture = plate.date, plate.wearer.who, self._picture(plate)
        features = [(each.facet, each.term, each.state, each.reading) for each in plate.features]
        return PlateOutline(
            plate.id,
            plate.garment,
            middle_year(date or source.date),
            sorted(plate.shown),
            sorted(absent),
            sorted(unseen),
            isinstance(shown_picture(self._catalogue, plate), FlatPicture),
            _recorded(plate, source),
            _short((document, date.text if date else None, plate.id, plate.garment, who, features)),
            _short((head, plate.key, plain(date), plate.garment, plain(plate.locator), who, picture)),
        )

    def _picture(self, plate: Plate) -> str | None:
        return repr(picture_of(self._catalogue, plate)) if plate.image else None


def outlines_of(
    catalogue: Catalogue, editions: Mapping[str, str] | None = None, base: bytes = b"", hands: int = 1
) -> dict[str, SourceOutline]:
    """The outlines of all sources of a catalogue as it is published, made by so many processes. ``editions``
    tell what a source was read from; of those that stand by themselves, what was noted for the same edition
    and base is not made again, and what is made is noted."""
    outliner = Outliner(catalogue)
    known = editions or {}
    alone = {key: known[key] for key in catalogue.sources if key in known and key not in catalogue.entangled}
    store = Store.of(catalogue.folder, PART) if alone else None
    if store is None:
        return {key: outliner.of(source) for key, source in catalogue.sources.items()}
    notes = _Notes(store, base.hex())
    found = {key: notes.outline(alone[key]) if key in alone else None for key in catalogue.sources}
    new = [key for key, outline in found.items() if outline is None]
    parts = [new[at : at + TOGETHER] for at in range(0, len(new), TOGETHER)]

    def work(part: Sequence[str]) -> list[SourceOutline]:
        return [outliner.of(catalogue.sources[key]) for key in part]

    for number, made in done_by_all(parts, work, hands, lambda _: None):
        found.update(zip(parts[number], map(_outline, made), strict=True))
    outlines = {key: outline for key, outline in found.items() if outline is not None}
    notes.write({alone[key]: outlines[key] for key in alone}, {alone[key] for key in new if key in alone})
    return outlines


class _Notes:
    """The outlines that are kept, in several notes, so that where one has changed not all are written."""

    def __init__(self, store: Store, base: str) -> None:
        self._store = store
        self._base = base
        self._read: dict[str, dict[str, Any]] = {}

    def outline(self, edition: str) -> SourceOutline | None:
        """What is noted of that edition."""
        name = edition[0]
        if name not in self._read:
            note = self._store.read(name)
            self._read[name] = note["outlines"] if note and note["base"] == self._base else {}
        known = self._read[name].get(edition)
        return None if known is None else _outline(known)

    def write(self, outlines: Mapping[str, SourceOutline], new: Iterable[str]) -> None:
        """Note the outlines, where any is new, by their editions."""
        for name in {edition[0] for edition in new}:
            held = {edition: each for edition, each in outlines.items() if edition[0] == name}
            self._store.write(name, {"base": self._base, "outlines": held})


def _outline(fields: Sequence[Any]) -> SourceOutline:
    """An outline from its fields."""
    made = SourceOutline(*fields)
    return made._replace(plates=[PlateOutline(*each) for each in made.plates])


def _recorded(plate: Plate, source: Source) -> str | None:
    """The day of its record; where none is given, of the whole source's."""
    own = plate.recorded.on if plate.recorded else None
    return own or (source.examined.on if source.examined else None)


def _middle(days: Days | None) -> float:
    ends = [day for day in days or () if day is not None]
    return sum(ends) / len(ends) if ends else inf


def _short(value: object) -> str:
    return digest(value).hex()[:16]


def _document(source: Source) -> tuple[Any, ...]:
    """What evidence knows of a source."""
    place = source.market or source.publisher.place
    return source.id, source.kind, place, source.date_basis, plain(source.date), source.reprint_of


def _head(source: Source) -> tuple[Any, ...]:
    return tuple(
        (each.name, plain(getattr(source, each.name)))
        for each in fields(source)
        if each.name != "plates" and each.name not in PLACES
    )


def _order(source: Source) -> tuple[float, str, str]:
    """By date, undated sources last, then by title."""
    ends = [source.date.span.earliest, source.date.span.latest] if source.date else []
    known = [day for day in ends if day is not None]
    return sum(known) / len(known) if known else float("inf"), source.title, source.id
