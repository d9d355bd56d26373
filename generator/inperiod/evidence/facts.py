"""What evidence needs to know of a catalogue, and nothing else: small, frozen, the same in the browser."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import cached_property
from typing import Any, Literal

from inperiod.dating import Span, in_words, widened
from inperiod.evidence.constants import CIRCA_TRIED
from inperiod.records import model

Days = tuple[int | None, int | None]
"""Earliest and latest day number, included; None is an open end."""

Basis = Literal["A", "B", "C", "style", "none"]
"""What a date rests on: a grade, or one of the two bases that are never counted."""

READINGS = ("seen", "read", "inferred")


@dataclass(frozen=True, slots=True)
class MilestoneFact:
    """``day`` is the earliest day the milestone can mean; ``text`` its EDTF, ``words`` the same as said."""

    day: int
    text: str
    words: str
    event: str
    source: str


@dataclass(frozen=True, slots=True)
class TermFact:
    """A term; ``broader`` is the index of the wider term of the same facet."""

    facet: int
    id: str
    label: str
    broader: int | None = None
    not_before: MilestoneFact | None = None
    in_dress_from: MilestoneFact | None = None


@dataclass(frozen=True, slots=True)
class GarmentFact:
    """A garment type; ``plural`` is what several are called in a sentence."""

    id: str
    label: str
    plural: str
    broader: int | None = None


@dataclass(frozen=True, slots=True)
class PlateFact:
    """A plate: ``shown`` holds (term index, reading index), ``absent`` facet indices looked for and not
    there. ``cut`` is the same number for all plates printed from the same cut."""

    id: str
    garment: int
    who: str
    shown: tuple[tuple[int, int], ...] = ()
    absent: tuple[int, ...] = ()
    cut: int | None = None


@dataclass(frozen=True, slots=True)
class DocumentFact:
    """The plates of one source that share one date.

    ``days`` is the span after circa widening by the catalogue's setting, None where undated; ``tried`` the
    spans for each of ``CIRCA_TRIED``. ``root`` is the index of the document a reprint repeats, −1 where
    the catalogue does not hold it, None for what is no reprint. ``places`` are casefolded.
    """

    id: str
    source: str
    kind: str
    places: tuple[str, ...]
    basis: Basis
    days: Days | None
    tried: tuple[Days | None, ...]
    root: int | None
    plates: tuple[PlateFact, ...]


@dataclass(frozen=True)
class Facts:
    """All facts of a catalogue. Documents stand in order of id, and the plates of each likewise, so that
    position breaks ties in either language. ``facets`` maps id to label; ``decades`` are the first and
    last shown."""

    circa_years: int
    decades: tuple[int, int]
    facets: Mapping[str, str]
    garments: tuple[GarmentFact, ...]
    terms: tuple[TermFact, ...]
    documents: tuple[DocumentFact, ...]
    memo: dict[Any, Any] = field(default_factory=dict, compare=False, repr=False)
    """Surveys already made of these facts: it saves time and changes no answer."""

    @cached_property
    def plates(self) -> tuple[tuple[int, PlateFact], ...]:
        """Every plate with the index of its document; positions here are plate numbers."""
        return tuple((d, plate) for d, document in enumerate(self.documents) for plate in document.plates)

    @cached_property
    def keys(self) -> tuple[str, ...]:
        """``source-id/plate-id`` by plate number."""
        return tuple(f"{self.documents[d].source}/{plate.id}" for d, plate in self.plates)

    @cached_property
    def term_keys(self) -> tuple[str, ...]:
        """``facet/id`` by term index."""
        facets = tuple(self.facets)
        return tuple(f"{facets[term.facet]}/{term.id}" for term in self.terms)

    @cached_property
    def term_index(self) -> Mapping[str, int]:
        return {key: i for i, key in enumerate(self.term_keys)}

    @cached_property
    def garment_index(self) -> Mapping[str, int]:
        return {garment.id: i for i, garment in enumerate(self.garments)}

    @cached_property
    def shown(self) -> tuple[Mapping[int, bool], ...]:
        """By plate number: the terms shown, with broader ones, and whether seen or read (not inferred)."""
        chains = [_chain(self.terms, term) for term in range(len(self.terms))]
        return tuple(_with_broader(chains, plate) for _, plate in self.plates)

    @cached_property
    def recorded(self) -> tuple[frozenset[int], ...]:
        """By plate number: the facets recorded, by a term shown or by looking and finding none."""
        return tuple(
            frozenset([*(self.terms[term].facet for term, _ in plate.shown), *plate.absent])
            for _, plate in self.plates
        )

    @cached_property
    def plates_of(self) -> Mapping[int, tuple[int, ...]]:
        """By garment index: numbers of the plates of that garment and of every narrower one."""
        found: dict[int, list[int]] = defaultdict(list)
        for number, (_, plate) in enumerate(self.plates):
            for garment in self._chains[plate.garment]:
                found[garment].append(number)
        return {garment: tuple(numbers) for garment, numbers in found.items()}

    @cached_property
    def _chains(self) -> tuple[tuple[int, ...], ...]:
        """Each garment with the wider ones, the widest last."""
        return tuple(_chain(self.garments, garment) for garment in range(len(self.garments)))

    @cached_property
    def recording(self) -> Mapping[tuple[int, int], Sequence[int]]:
        """By garment and facet index: numbers of the plates of that garment and of every narrower one that
        record the facet."""
        found: dict[tuple[int, int], list[int]] = defaultdict(list)
        for number, (_, plate) in enumerate(self.plates):
            for garment in self._chains[plate.garment]:
                for facet in self.recorded[number]:
                    found[garment, facet].append(number)
        return dict(found)

    @cached_property
    def reused(self) -> frozenset[int]:
        """Numbers of the plates printed from a cut that another has too."""
        return frozenset(n for n, (_, plate) in enumerate(self.plates) if plate.cut is not None)

    def at_circa(self, years: int) -> Facts:
        """The same facts with "circa" read as that many years either side; one of ``CIRCA_TRIED``."""
        at = CIRCA_TRIED.index(years)
        documents = tuple(replace(each, days=each.tried[at]) for each in self.documents)
        made = replace(self, circa_years=years, documents=documents, memo={})
        # What does not depend on dates need not be worked out again.
        vars(made).update({name: vars(self)[name] for name in _UNDATED if name in vars(self)})
        return made


_UNDATED = (
    "plates",
    "keys",
    "term_keys",
    "term_index",
    "garment_index",
    "shown",
    "recorded",
    "plates_of",
    "recording",
    "reused",
)


def _with_broader(chains: Sequence[tuple[int, ...]], plate: PlateFact) -> dict[int, bool]:
    found: dict[int, bool] = {}
    for shown, reading in plate.shown:
        sure = READINGS[reading] != "inferred"
        for term in chains[shown]:
            found[term] = found.get(term, False) or sure
    return found


def _chain(entries: tuple[TermFact, ...] | tuple[GarmentFact, ...], at: int | None) -> tuple[int, ...]:
    chain: list[int] = []
    while at is not None and at not in chain:
        chain.append(at)
        at = entries[at].broader
    return tuple(chain)


def gather_facts(catalogue: model.Catalogue) -> Facts:
    """The facts of a catalogue.

    The date weighed is the source's ``date``. A plate with a date of its own stands, with its fellows of that
    date, as a document ``source-id@date`` beside the source's own. Terms and garments that plates name and
    the vocabulary lacks are taken as they stand: finding them is the business of checking.
    """
    facets, terms, term_at = _terms(catalogue)
    garments, garment_at = _garments(catalogue)
    cuts = _cuts(catalogue)
    facet_at = {facet: i for i, facet in enumerate(facets)}
    circa = catalogue.settings.circa_years

    groups = {
        name: (source, *document)
        for source in catalogue.sources.values()
        for name, document in documents_of(source).items()
    }

    order = sorted(groups)
    position = {key: i for i, key in enumerate(order)}
    documents = []
    for key in order:
        source, dated, plates = groups[key]
        span = dated.span if dated else None
        place = source.market or source.publisher.place or ""
        documents.append(
            DocumentFact(
                id=key,
                source=source.id,
                kind=source.kind,
                places=place_parts(place),
                basis=_basis(source),
                days=days_of(span, circa),
                tried=tuple(days_of(span, years) for years in CIRCA_TRIED),
                root=_root(catalogue, source, position),
                plates=tuple(_plate(plate, garment_at, term_at, facet_at, cuts) for plate in plates),
            )
        )
    return Facts(circa, catalogue.settings.decades, facets, garments, terms, tuple(documents))


def documents_of(source: model.Source) -> dict[str, tuple[model.Dated | None, list[model.Plate]]]:
    """The documents of a source by their ids, its own first, each with its date and its plates in order: a
    plate with a date of its own is weighed with its fellows of that date."""
    found: dict[str, tuple[model.Dated | None, list[model.Plate]]] = {source.id: (source.date, [])}
    for plate in sorted(source.plates, key=lambda each: each.id):
        own = plate.date
        if own is None or (source.date is not None and own.span == source.date.span):
            found[source.id][1].append(plate)
        else:
            found.setdefault(f"{source.id}@{own.text}", (own, []))[1].append(plate)
    return found


def place_parts(place: str) -> tuple[str, ...]:
    """The comma-separated parts of a place, casefolded: any of them names it."""
    return tuple(part for each in place.split(",") if (part := each.strip().casefold()))


def _plate(
    plate: model.Plate,
    garment_at: Mapping[str, int],
    term_at: Mapping[str, int],
    facet_at: Mapping[str, int],
    cuts: Mapping[str, int],
) -> PlateFact:
    shown: dict[int, int] = {}
    for feature in plate.features:
        if feature.state == "shown" and feature.term is not None:
            reading = READINGS.index(feature.reading)
            term = term_at[feature.term]
            shown[term] = min(reading, shown.get(term, reading))
    absent = {facet_at[feature.facet] for feature in plate.features if feature.state == "none"}
    return PlateFact(
        plate.id,
        garment_at[plate.garment],
        plate.wearer.who,
        tuple(sorted(shown.items())),
        tuple(sorted(absent)),
        cuts.get(plate.key),
    )


def days_of(span: Span | None, circa_years: int) -> Days | None:
    """A span as evidence weighs it, circa allowed for."""
    if span is None:
        return None
    wide = widened(span, circa_years)
    return wide.earliest, wide.latest


def _basis(source: model.Source) -> Basis:
    if source.date_basis == "style":
        return "style"
    return source.grade or "none"


def _root(catalogue: model.Catalogue, source: model.Source, position: Mapping[str, int]) -> int | None:
    """The document a reprint repeats in the end; −1 where it is missing or the chain closes on itself."""
    if source.reprint_of is None:
        return None
    seen, at = {source.id}, source.reprint_of
    while True:
        if at in seen or at not in catalogue.sources:
            return -1
        seen.add(at)
        further = catalogue.sources[at].reprint_of
        if further is None:
            return position[at]
        at = further


def _cuts(catalogue: model.Catalogue) -> dict[str, int]:
    """Plates linked by ``same_cut_as``, at any remove and in either direction, by a number they share."""
    leader: dict[str, str] = {}

    def lead(key: str) -> str:
        while leader.setdefault(key, key) != key:
            leader[key] = leader[leader[key]]
            key = leader[key]
        return key

    for plate in catalogue.all_plates():
        if plate.same_cut_as:
            one, other = sorted((lead(plate.key), lead(plate.same_cut_as)))
            leader[other] = one
    numbers: dict[str, int] = {}
    return {key: numbers.setdefault(lead(key), len(numbers)) for key in sorted(leader)}


def _terms(catalogue: model.Catalogue) -> tuple[dict[str, str], tuple[TermFact, ...], dict[str, int]]:
    known = catalogue.vocabulary.facets
    facets = {facet.id: facet.label for facet in known.values() if facet.id != "garment"}
    keys = [term.key for term in catalogue.vocabulary.terms.values() if term.facet != "garment"]
    features = [feature for plate in catalogue.all_plates() for feature in plate.features]
    named = {feature.term for feature in features if feature.term}
    for facet in sorted({feature.facet for feature in features} | {key.split("/")[0] for key in named}):
        facets.setdefault(facet, facet)
    facet_at = {facet: i for i, facet in enumerate(facets)}
    keys += sorted(named - set(keys))
    at = {key: i for i, key in enumerate(keys)}
    terms = []
    for key in keys:
        term = catalogue.vocabulary.terms.get(key)
        facet, _, own = key.partition("/")
        if term is None:
            terms.append(TermFact(facet_at[facet], own, own.replace("-", " ")))
        else:
            broader = at.get(f"{facet}/{term.broader}") if term.broader else None
            terms.append(
                TermFact(
                    facet_at[facet],
                    own,
                    term.label,
                    broader,
                    _milestone(term.not_before, catalogue.settings),
                    _milestone(term.in_dress_from, catalogue.settings),
                )
            )
    return facets, tuple(terms), at


def _milestone(milestone: model.Milestone | None, settings: model.Settings) -> MilestoneFact | None:
    """On the safe side: the earliest day the date can mean, circa allowed for."""
    if milestone is None:
        return None
    earliest = widened(milestone.date.span, settings.circa_years).earliest
    if earliest is None:
        return None
    words = in_words(milestone.date.text, settings.seasons)
    return MilestoneFact(earliest, milestone.date.text, words, milestone.event, milestone.source)


def _garments(catalogue: model.Catalogue) -> tuple[tuple[GarmentFact, ...], dict[str, int]]:
    known = catalogue.vocabulary.garments
    ids = [*known, *sorted({plate.garment for plate in catalogue.all_plates()} - set(known))]
    at = {garment: i for i, garment in enumerate(ids)}
    garments = []
    for garment in ids:
        term = known.get(garment)
        label = term.label if term else garment.replace("-", " ")
        broader = at.get(term.broader) if term and term.broader else None
        garments.append(GarmentFact(garment, label, plural(label), broader))
    return tuple(garments), at


def plural(label: str) -> str:
    """What several of a garment are called in a sentence: ``Day dress`` → ``day dresses``.

    A note in brackets is left off; what is plural already (``trousers``) or a stuff (``underwear``) keeps
    its form or becomes ``pieces of underwear``.
    """
    words = label.split("(")[0].split(",")[0].strip()
    words = words[:1].lower() + words[1:]
    if words.endswith(("wear", "hosiery", "other")):
        return f"pieces of {words}" if words != "other" else "other pieces"
    if words.endswith(("ss", "x", "sh", "ch")):
        return words + "es"
    if words.endswith("s"):
        return words
    if words.endswith("y") and words[-2:-1] not in "aeiou":
        return words[:-1] + "ies"
    return words + "s"
