"""Which pages a site has, and in which order they follow one another."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import partial
from typing import Any, TypeVar

from inperiod.publishing import paths, words
from inperiod.publishing.browser_pages import browser_pages
from inperiod.publishing.downloads import data_view
from inperiod.publishing.flats import flat_file
from inperiod.publishing.lookup import Lookup
from inperiod.publishing.nearness import Neighbours
from inperiod.publishing.outlines import SourceOutline
from inperiod.publishing.page import Link, Page
from inperiod.publishing.render import layers, read_layered
from inperiod.publishing.share_cards import plate_card, plate_card_file
from inperiod.publishing.view_board import board_view, boards_view, editor_view
from inperiod.publishing.view_method import method_view
from inperiod.publishing.view_plate import plate_view
from inperiod.publishing.view_record import drawn_files, record_view
from inperiod.publishing.view_source import source_view, sources_view
from inperiod.publishing.view_term import facet_view, garment_view, term_view, terms_view
from inperiod.publishing.view_timeline import Shown, shown_timelines
from inperiod.records.model import Catalogue, Plate, Source

TERMS = Link("Terms", paths.TERMS)
SOURCES = Link("Sources", paths.SOURCES)
BOARDS = Link("Boards", paths.BOARDS)
ABOUT = Link("About", paths.ABOUT)

Thing = TypeVar("Thing")


@dataclass(frozen=True, slots=True)
class Plan:
    """Every page of a site, and what was worked out to plan them. ``first`` are those that come before the
    pages of plates, ``last`` those that come after."""

    first: tuple[Page, ...]
    last: tuple[Page, ...]
    look: Lookup
    near: Neighbours
    timelines: tuple[Shown, ...]

    def of_plates(self, source: str) -> list[Page]:
        """The pages of a source's plates."""
        return _plates(self.look, self.near, self.look.catalogue.sources[source])

    @property
    def pages(self) -> Iterator[Page]:
        """All of them."""
        yield from self.first
        for source in self.look.in_order:
            yield from self.of_plates(source.id)
        yield from self.last

    @property
    def listed(self) -> Iterator[str]:
        """The paths of all that are to be found."""
        yield from (each.path for each in self.first if each.listed)
        for source in self.look.in_order:
            yield from (paths.plate_path(f"{source.id}/{plate.id}") for plate in source.plates)
        yield from (each.path for each in self.last if each.listed)


def plan_pages(
    look: Lookup, near: Neighbours | None = None, timelines: Sequence[Shown] | None = None
) -> Plan:
    """Every page of the site. ``look`` is of what may be published; ``timelines`` are those worth showing,
    and ``near`` the neighbours, where that is known before."""
    catalogue = look.catalogue
    if timelines is None:
        timelines = shown_timelines(look.facts, catalogue.settings.grades)
    look = look.with_timelines(frozenset(each.path for each in timelines))
    first = (*browser_pages(look, timelines), *_lists(look), *_prose(catalogue), _data(catalogue))
    last = (*_sources(look), *_vocabulary(look), *_boards(look))
    return Plan(first, last, look, near or Neighbours(look), tuple(timelines))


def _with_facts(view: Callable[..., Mapping[str, Any]], look: Lookup, *given: Any) -> Mapping[str, Any]:
    """The view of a page that evidence is asked for, which is gathered when the first of them is made."""
    return view(look, look.facts, *given)


def _neighbours(entries: Sequence[Thing]) -> list[tuple[Thing | None, Thing, Thing | None]]:
    """Each entry with the one before it and the one after."""
    padded: list[Thing | None] = [None, *entries, None]
    return [(padded[at], entry, padded[at + 2]) for at, entry in enumerate(entries)]


def _lists(look: Lookup) -> list[Page]:
    title = look.catalogue.settings.title
    return [
        Page(
            paths.TERMS,
            "terms.html",
            "Terms",
            partial(terms_view, look),
            paths.TERMS,
            f"Every term of dress that {title} records, by what it belongs to.",
            made_from=("lists",),
        ),
        Page(
            paths.SOURCES,
            "sources.html",
            "Sources",
            partial(sources_view, look),
            paths.SOURCES,
            f"The dated sources of {title}, in order of date.",
            made_from=("heads",),
        ),
        Page(
            paths.BOARDS,
            "boards.html",
            "Boards",
            partial(_with_facts, boards_view, look),
            paths.BOARDS,
            "Planned garments, each with the plates gathered for it and what the evidence says.",
            made_from=("boards",),
        ),
        Page(
            paths.MY_BOARD,
            "board_editor.html",
            "A board of your own",
            lambda: editor_view(look.facts),
            paths.BOARDS,
            "A research board written in the browser and kept there.",
            (BOARDS,),
            listed=False,
            made_from=("lists",),
        ),
        Page(
            paths.RECORD,
            "record.html",
            "Record a source",
            partial(record_view, look.catalogue),
            paths.SOURCES,
            "Record the figures of a scanned source beside its pages, in the browser.",
            (SOURCES,),
            made_from=("base",),
            files=partial(drawn_files, look.catalogue),
        ),
        Page(
            paths.METHOD,
            "method.html",
            "Method",
            lambda: method_view(look.catalogue, look.facts),
            paths.METHOD,
            "How dates are weighed and what each verdict means.",
            made_from=("evidence",),
        ),
    ]


def _prose(catalogue: Catalogue) -> list[Page]:
    """Pages written in Markdown; a user's folder may hold its own text for any of them."""
    folders = layers(catalogue, "pages")
    wanted = (
        (paths.ABOUT, "about.html", "About", "about.md", "What this catalogue is and how to cite it.", True),
        (
            paths.CAUTIONS,
            "prose.html",
            "Cautions",
            "cautions.md",
            "What to be careful of when making or wearing.",
            True,
        ),
        (
            paths.HOW_TO_RECORD,
            "prose.html",
            "How do I record …",
            "how-to-record.md",
            "What to write for the cases that are awkward: outfits, details, reprints, undated pages.",
            True,
        ),
        (
            paths.SPREADSHEET,
            "prose.html",
            "From a spreadsheet",
            "from-a-spreadsheet.md",
            "How the rows of a spreadsheet become dated records, with a table to start from.",
            True,
        ),
        (paths.NOT_FOUND, "prose.html", "No such page", "404.md", "", False),
    )
    return [
        Page(
            path,
            template,
            title,
            partial(
                dict, text=read_layered(folders, file) or "", licence=words.rights(catalogue.settings.licence)
            ),
            path,
            description,
            listed=listed,
            made_from=("base",),
        )
        for path, template, title, file, description, listed in wanted
    ]


def _data(catalogue: Catalogue) -> Page:
    return Page(
        paths.DATA,
        "data.html",
        "The catalogue as data",
        partial(data_view, catalogue),
        paths.ABOUT,
        "Tables, citations and manifests of the whole catalogue, to download.",
        (ABOUT,),
        made_from=("lists",),
    )


def _plates(look: Lookup, near: Neighbours, source: Source) -> list[Page]:
    trail = (SOURCES, Link(source.title, paths.source_path(source.id)))
    links = [Link(look.plate_title(plate), paths.plate_path(plate.key)) for plate in source.plates]
    return [
        Page(
            own.path,
            "plate.html",
            own.label,
            partial(plate_view, look, near, plate),
            paths.PLATES,
            _plate_description(look, plate),
            trail,
            before,
            after,
            picture=plate_card(look.catalogue, plate),
            made_from=("plate", plate.key),
            files=partial(_plate_files, look.catalogue, plate),
        )
        for plate, (before, own, after) in zip(source.plates, _neighbours(links), strict=True)
    ]


def _plate_files(
    catalogue: Catalogue, plate: Plate, view: Mapping[str, Any]
) -> Iterator[tuple[str, str | bytes]]:
    yield from flat_file(plate, view)
    yield from plate_card_file(catalogue, plate, view)


def _plate_description(look: Lookup, plate: Plate) -> str:
    terms = ", ".join(look.term_label(term) for term in sorted(plate.shown)[:6])
    dated = words.when(look.catalogue.dated(plate))
    said = f"{words.sentence(look.garment(plate.garment))}, {dated}, in {look.source_of(plate).title}"
    return f"{said}: {terms}." if terms else f"{said}."


def _sources(look: Lookup) -> list[Page]:
    def link(source: SourceOutline | None) -> Link | None:
        return Link(source.title, paths.source_path(source.id)) if source else None

    def view(source: str) -> Mapping[str, Any]:
        return source_view(look, look.catalogue.sources[source])

    return [
        Page(
            paths.source_path(source.id),
            "source.html",
            source.title,
            partial(view, source.id),
            paths.SOURCES,
            source.described,
            (SOURCES,),
            link(before),
            link(after),
            made_from=("source", source.id),
        )
        for before, source, after in _neighbours(look.in_order)
    ]


def _vocabulary(look: Lookup) -> list[Page]:
    facets = list(look.catalogue.vocabulary.facets.values())
    pages = []
    for before, facet, after in _neighbours([facet for facet in facets if facet.id != "garment"]):
        pages.append(
            Page(
                paths.facet_path(facet.id),
                "facet.html",
                facet.label,
                partial(_with_facts, facet_view, look, facet),
                paths.TERMS,
                facet.question,
                (TERMS,),
                Link(before.label, paths.facet_path(before.id)) if before else None,
                Link(after.label, paths.facet_path(after.id)) if after else None,
                made_from=("facet", facet.id),
            )
        )
    for facet in facets:
        garments = facet.id == "garment"
        trail = (TERMS,) if garments else (TERMS, Link(facet.label, paths.facet_path(facet.id)))
        for term_before, term, term_after in _neighbours(facet.terms):
            view = partial(_with_facts, garment_view if garments else term_view, look, term)
            pages.append(
                Page(
                    paths.term_path(term.key),
                    "garment.html" if garments else "term.html",
                    words.sentence(term.label),
                    view,
                    paths.TERMS,
                    term.definition,
                    trail,
                    Link(term_before.label, paths.term_path(term_before.key)) if term_before else None,
                    Link(term_after.label, paths.term_path(term_after.key)) if term_after else None,
                    made_from=("garment", term.id) if garments else ("term", term.key),
                )
            )
    return pages


def _boards(look: Lookup) -> list[Page]:
    return [
        Page(
            paths.board_path(board.id),
            "board.html",
            board.title,
            partial(_with_facts, board_view, look, board),
            paths.BOARDS,
            f"{words.sentence(look.garment(board.garment))} for {words.when(board.target)}.",
            (BOARDS,),
            Link(before.title, paths.board_path(before.id)) if before else None,
            Link(after.title, paths.board_path(after.id)) if after else None,
            made_from=("boards",),
        )
        for before, board, after in _neighbours(list(look.catalogue.boards.values()))
    ]
