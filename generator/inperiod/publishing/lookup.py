"""What many pages ask of a catalogue, worked out once."""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, replace
from functools import cache, cached_property, lru_cache

from inperiod.citing import Entry, downloads, entry_for
from inperiod.drawing.flats import Flat
from inperiod.evidence import Facts, gather_facts
from inperiod.publishing import paths, words
from inperiod.publishing.flats import FlatPicture, flat_of, middle_year, shown_picture
from inperiod.publishing.outlines import SourceOutline, outlines_of
from inperiod.publishing.page import Link
from inperiod.publishing.pictures import Picture
from inperiod.records.model import Catalogue, Facet, Plate, Source, State, Term

RECORDS_KEPT = 512
"""The pages of a source's plates come shortly before the lists of its records."""
PICTURES_KEPT = 16384
"""Pages of terms ask for the pictures of many of the same plates."""
FLATS_KEPT = 64
"""The pages of a source's plates come shortly before the pages that are set from their flats."""


@dataclass(frozen=True, slots=True)
class Line:
    """A plate as one line of a list."""

    label: str
    path: str
    source: str
    place: str
    when: str
    grade: str | None
    note: str | None = None


@dataclass(frozen=True, slots=True)
class Recorded:
    """Of a facet: the plates that show a term of it, that have none of it, and on which it cannot be seen;
    and the widest garment type with most plates that show it or have none of it, if any do."""

    shown: int
    none: int
    hidden: int
    chief: str | None


NOWHERE = Recorded(0, 0, 0, None)


@dataclass(frozen=True)
class Lookup:
    """A catalogue with the indexes its pages need, and the paths of the timelines that have a page.
    ``outlined`` says what can be told of each source without opening it, where that is known."""

    catalogue: Catalogue
    timelines: frozenset[str] = frozenset()
    outlined: Mapping[str, SourceOutline] | None = None

    def with_timelines(self, timelines: frozenset[str]) -> Lookup:
        """The same, knowing which timelines have a page, with all that was worked out already."""
        made = replace(self, timelines=timelines)
        vars(made).update({name: value for name, value in vars(self).items() if name not in vars(made)})
        return made

    @cached_property
    def ordered(self) -> tuple[Plate, ...]:
        """Every plate in order of date, undated ones last."""
        return tuple(sorted(self.catalogue.plates.values(), key=self._order))

    def _order(self, plate: Plate) -> tuple[float, str]:
        middle = self.middle(plate)
        return (float("inf") if middle is None else middle, plate.key)

    def middle(self, plate: Plate) -> float | None:
        """The middle of a plate's span in decimal years; the closed end where the other is open."""
        return middle_year(self.catalogue.dated(plate))

    @cached_property
    def shown(self) -> Mapping[str, frozenset[str]]:
        """The terms each plate shows, broader ones not added."""
        return {key: plate.shown for key, plate in self.catalogue.plates.items()}

    @cached_property
    def showing(self) -> Mapping[str, tuple[Plate, ...]]:
        """By term key: the plates that show it or a narrower term of its facet, in order of date."""
        broader = cache(self.catalogue.vocabulary.broader_terms)
        found: dict[str, list[Plate]] = defaultdict(list)
        for plate in self.ordered:
            wide: set[str] = set()
            for term in self.shown[plate.key]:
                wide.update(broader(term))
            for term in sorted(wide):
                found[term].append(plate)
        return {term: tuple(plates) for term, plates in found.items()}

    @cached_property
    def of_garment(self) -> Mapping[str, tuple[Plate, ...]]:
        """By garment id: its plates and those of narrower types, in order of date."""
        found: dict[str, list[Plate]] = defaultdict(list)
        for plate in self.ordered:
            for garment in self.catalogue.vocabulary.broader_garments(plate.garment):
                found[garment].append(plate)
        return {garment: tuple(plates) for garment, plates in found.items()}

    def outfit(self, plate: Plate) -> tuple[Plate, ...]:
        """The other plates of the figure."""
        return tuple(
            other
            for other in self.source_of(plate).plates
            if plate.outfit and other.outfit == plate.outfit and other.key != plate.key
        )

    @cached_property
    def facts(self) -> Facts:
        """What evidence knows of the catalogue."""
        return gather_facts(self.catalogue)

    @cached_property
    def outlines(self) -> Mapping[str, SourceOutline]:
        """By source id: what can be told of it without opening it."""
        return outlines_of(self.catalogue) if self.outlined is None else self.outlined

    @cached_property
    def in_order(self) -> tuple[SourceOutline, ...]:
        """Every source in order of date, undated ones last, then of title."""
        return tuple(sorted(self.outlines.values(), key=lambda each: tuple(each.order)))

    @cached_property
    def recorded(self) -> Mapping[str, Recorded]:
        """What there is of each facet that any plate records."""
        counts: dict[str, Counter[State]] = defaultdict(Counter)
        widest: dict[str, Counter[str]] = defaultdict(Counter)
        broader = self.catalogue.vocabulary.broader_garments
        roots = {garment: broader(garment)[-1] for garment in self.of_garment}
        for plate in self.ordered:
            states: dict[str, State] = {}
            for feature in plate.features:
                if states.get(feature.facet) in (None, "not visible") or feature.state == "shown":
                    states[feature.facet] = feature.state
            for facet, state in states.items():
                counts[facet][state] += 1
                if state != "not visible":
                    widest[facet][roots[plate.garment]] += 1
        return {
            facet: Recorded(
                count["shown"],
                count["none"],
                count["not visible"],
                min(widest[facet], key=lambda garment: (-widest[facet][garment], garment), default=None),
            )
            for facet, count in counts.items()
        }

    @cached_property
    def sources(self) -> tuple[Source, ...]:
        """Every source in that order, opened."""
        return tuple(self.catalogue.sources[each.id] for each in self.in_order)

    @cached_property
    def reprints(self) -> Mapping[str, tuple[Source, ...]]:
        """By source id: the sources that reprint it, in order of date."""
        found: dict[str, list[Source]] = defaultdict(list)
        for each in self.in_order:
            if each.reprint_of:
                found[each.reprint_of].append(self.catalogue.sources[each.id])
        return {key: tuple(sources) for key, sources in found.items()}

    @cached_property
    def cuts(self) -> Mapping[str, tuple[Plate, ...]]:
        """By plate key: the other plates printed from the same cut."""
        groups: dict[str, set[str]] = {}
        for plate in self.catalogue.entangled_plates():
            if plate.same_cut_as and plate.same_cut_as in self.catalogue.plates:
                group = groups.get(plate.key, {plate.key}) | groups.get(
                    plate.same_cut_as, {plate.same_cut_as}
                )
                for key in group:
                    groups[key] = group
        return {
            key: tuple(self.catalogue.plates[other] for other in sorted(group) if other != key)
            for key, group in groups.items()
        }

    @cached_property
    def picture(self) -> Callable[[str], Picture | FlatPicture | None]:
        """What a list shows of a plate by its key: its scan, else its flat."""
        return lru_cache(PICTURES_KEPT)(lambda key: shown_picture(self.catalogue, self.catalogue.plates[key]))

    @cached_property
    def flat(self) -> Callable[[str], Flat | None]:
        """The flat of a plate by its key; None for a garment that has no flat."""
        return lru_cache(FLATS_KEPT)(lambda key: flat_of(self.catalogue, self.catalogue.plates[key]))

    @cached_property
    def entry(self) -> Callable[[str], Entry]:
        """What a plate or source is cited from, by its key."""
        return lru_cache(RECORDS_KEPT)(lambda key: entry_for(self.catalogue, key))

    @cached_property
    def records(self) -> Callable[[str], Mapping[str, str]]:
        """A plate or source by its key, as each of the formats of ``DOWNLOADS`` has it."""
        return lru_cache(RECORDS_KEPT)(lambda key: downloads(self.entry(key)))

    # Names and links.

    def garment(self, garment: str) -> str:
        """What a garment type is called; its id with spaces where the vocabulary lacks it."""
        term = self.catalogue.vocabulary.garments.get(garment)
        return term.label if term else garment.replace("-", " ")

    def term(self, key: str) -> Term | None:
        return self.catalogue.vocabulary.terms.get(key)

    def term_label(self, key: str) -> str:
        term = self.term(key)
        return term.label if term else key.partition("/")[2].replace("-", " ")

    def term_link(self, key: str, note: str | None = None) -> Link:
        """To the page of a term; a term the vocabulary lacks leads to its facet list."""
        return replace(self._term_links(key), note=note) if note else self._term_links(key)

    @cached_property
    def _term_links(self) -> Callable[[str], Link]:
        def link(key: str) -> Link:
            return Link(self.term_label(key), paths.term_path(key) if self.term(key) else paths.TERMS)

        return cache(link)

    def garment_link(self, garment: str) -> Link:
        """To the page of a garment type; one the vocabulary lacks leads to the list of all terms."""
        known = garment in self.catalogue.vocabulary.garments
        return Link(self.garment(garment), paths.garment_path(garment) if known else paths.TERMS)

    def timeline_link(self, garment: str, facet: str, label: str) -> Link | None:
        """To the timeline of a facet on a garment; None where too little was looked at for one."""
        path = paths.timeline_path(garment, facet)
        return Link(label, path) if path in self.timelines else None

    def facet(self, facet: str) -> Facet | None:
        return self.catalogue.vocabulary.facets.get(facet)

    def plate_title(self, plate: Plate) -> str:
        """``Day dress, p. 14, fig. 3``."""
        only = len(self.source_of(plate).plates) == 1
        where = words.short_place(plate.locator) or ("" if only else plate.id)
        garment = words.sentence(self.garment(plate.garment))
        return f"{garment}, {where}" if where else garment

    def source_of(self, plate: Plate) -> Source:
        return self.catalogue.sources[plate.source]

    def line(self, plate: Plate, note: str | None = None) -> Line:
        """A plate as a line of a list."""
        key = plate.key
        made = self._lines.get(key)
        if made is None:
            made = self._lines[key] = self._line(plate)
        if note is None:
            return made
        return Line(made.label, made.path, made.source, made.place, made.when, made.grade, note)

    @cached_property
    def _lines(self) -> dict[str, Line]:
        """The lines that were asked for: most plates stand in a dozen lists."""
        return {}

    def _line(self, plate: Plate) -> Line:
        from_source = self.source_of(plate)
        return Line(
            label=words.sentence(self.garment(plate.garment)),
            path=paths.plate_path(plate.key),
            source=words.shortened(from_source.title),
            place=words.short_place(plate.locator),
            when=words.brief(self.catalogue.dated(plate)),
            grade=from_source.grade,
        )

    def lines(self, plates: Iterable[Plate]) -> tuple[Line, ...]:
        return tuple(self.line(plate) for plate in plates)

    def together(self, key: str, most: int = 12) -> tuple[tuple[Link, int], ...]:
        """The terms of other facets most often on the same plates, with how many of them; at least two."""
        count: Counter[str] = Counter()
        for plate in self.showing.get(key, ()):
            count.update(self.shown[plate.key])
        facet = key.partition("/")[0] + "/"
        others = [each for each in count.items() if not each[0].startswith(facet)]
        best = sorted(others, key=lambda item: (-item[1], item[0]))
        return tuple((self.term_link(term), number) for term, number in best[:most] if number >= 2)
