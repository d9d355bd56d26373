"""Which pages a site has, and in which order they follow one another."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import partial
from typing import Any, TypeVar

from inperiod.evidence.facts import Facts
from inperiod.publishing import paths, words
from inperiod.publishing.browser_pages import browser_pages
from inperiod.publishing.downloads import data_view
from inperiod.publishing.flats import flat_file
from inperiod.publishing.lookup import Lookup
from inperiod.publishing.nearness import Neighbours
from inperiod.publishing.page import Link, Page
from inperiod.publishing.render import layers, read_layered
from inperiod.publishing.share_cards import plate_card, plate_card_file
from inperiod.publishing.view_board import board_view, boards_view, editor_view
from inperiod.publishing.view_method import method_view
from inperiod.publishing.view_plate import plate_view
from inperiod.publishing.view_record import drawn_files, record_view
from inperiod.publishing.view_source import source_view, sources_view
from inperiod.publishing.view_term import facet_view, garment_view, term_view, terms_view
from inperiod.publishing.view_timeline import shown_timelines
from inperiod.records.model import Catalogue, Plate, Source

TERMS = Link("Terms", paths.TERMS)
SOURCES = Link("Sources", paths.SOURCES)
BOARDS = Link("Boards", paths.BOARDS)
ABOUT = Link("About", paths.ABOUT)

Thing = TypeVar("Thing")


@dataclass(frozen=True, slots=True)
class Plan:
    """Every page of a site, and what was worked out to plan them."""

    pages: tuple[Page, ...]
    look: Lookup
    near: Neighbours
    timelines: Mapping[tuple[str, str], float]
    """By garment and facet: the weight of the timeline."""


def plan_pages(look: Lookup, facts: Facts, weights: Mapping[tuple[str, str], float] | None = None) -> Plan:
    """Every page of the site. ``look`` is of what may be published, ``facts`` are its own; ``weights`` those
    of timelines that are known before."""
    catalogue = look.catalogue
    timelines = shown_timelines(facts, catalogue.settings.grades, weights)
    asked = browser_pages(catalogue, facts, timelines)
    look = look.with_timelines(frozenset(each.path for each in timelines))
    near = Neighbours(look)
    pages = (
        *asked,
        *_lists(look, facts),
        *_prose(catalogue),
        _data(catalogue),
        *_plates(look, near),
        *_sources(look),
        *_vocabulary(look, facts),
        *_boards(look, facts),
    )
    return Plan(pages, look, near, {(each.garment, each.facet): each.weight for each in timelines})


def _neighbours(entries: Sequence[Thing]) -> list[tuple[Thing | None, Thing, Thing | None]]:
    """Each entry with the one before it and the one after."""
    padded: list[Thing | None] = [None, *entries, None]
    return [(padded[at], entry, padded[at + 2]) for at, entry in enumerate(entries)]


def _lists(look: Lookup, facts: Facts) -> list[Page]:
    title = look.catalogue.settings.title
    return [
        Page(
            paths.TERMS,
            "terms.html",
            "Terms",
            partial(terms_view, look),
            paths.TERMS,
            f"Every term of dress that {title} records, by what it belongs to.",
        ),
        Page(
            paths.SOURCES,
            "sources.html",
            "Sources",
            partial(sources_view, look),
            paths.SOURCES,
            f"The dated sources of {title}, in order of date.",
        ),
        Page(
            paths.BOARDS,
            "boards.html",
            "Boards",
            partial(boards_view, look, facts),
            paths.BOARDS,
            "Planned garments, each with the plates gathered for it and what the evidence says.",
        ),
        Page(
            paths.MY_BOARD,
            "board_editor.html",
            "A board of your own",
            partial(editor_view, facts),
            paths.BOARDS,
            "A research board written in the browser and kept there.",
            (BOARDS,),
            listed=False,
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
            partial(method_view, look.catalogue, facts),
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
    )


def _plates(look: Lookup, near: Neighbours) -> list[Page]:
    pages = []
    for source in look.sources:
        trail = (SOURCES, Link(source.title, paths.source_path(source.id)))
        links = [Link(look.plate_title(plate), paths.plate_path(plate.key)) for plate in source.plates]
        for plate, (before, own, after) in zip(source.plates, _neighbours(links), strict=True):
            pages.append(
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
            )
    return pages


def _plate_files(
    catalogue: Catalogue, plate: Plate, view: Mapping[str, Any]
) -> Iterator[tuple[str, str | bytes]]:
    yield from flat_file(plate, view)
    yield from plate_card_file(catalogue, plate, view)


def _plate_description(look: Lookup, plate: Plate) -> str:
    terms = ", ".join(look.term_label(term) for term in sorted(look.shown[plate.key])[:6])
    dated = words.when(look.catalogue.dated(plate))
    said = f"{words.sentence(look.garment(plate.garment))}, {dated}, in {look.source_of(plate).title}"
    return f"{said}: {terms}." if terms else f"{said}."


def _sources(look: Lookup) -> list[Page]:
    def link(source: Source | None) -> Link | None:
        return Link(source.title, paths.source_path(source.id)) if source else None

    return [
        Page(
            paths.source_path(source.id),
            "source.html",
            source.title,
            partial(source_view, look, source),
            paths.SOURCES,
            f"{words.sentence(words.kind(source))}, {words.when(source.date)}, with "
            f"{words.counted(len(source.plates), 'plate')} recorded.",
            (SOURCES,),
            link(before),
            link(after),
            made_from=("source", source.id),
        )
        for before, source, after in _neighbours(look.sources)
    ]


def _vocabulary(look: Lookup, facts: Facts) -> list[Page]:
    facets = list(look.catalogue.vocabulary.facets.values())
    pages = []
    for before, facet, after in _neighbours([facet for facet in facets if facet.id != "garment"]):
        pages.append(
            Page(
                paths.facet_path(facet.id),
                "facet.html",
                facet.label,
                partial(facet_view, look, facts, facet),
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
            view = partial(garment_view if garments else term_view, look, facts, term)
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


def _boards(look: Lookup, facts: Facts) -> list[Page]:
    return [
        Page(
            paths.board_path(board.id),
            "board.html",
            board.title,
            partial(board_view, look, facts, board),
            paths.BOARDS,
            f"{words.sentence(look.garment(board.garment))} for {words.when(board.target)}.",
            (BOARDS,),
            Link(before.title, paths.board_path(before.id)) if before else None,
            Link(after.title, paths.board_path(after.id)) if after else None,
        )
        for before, board, after in _neighbours(list(look.catalogue.boards.values()))
    ]
