"""A research board's page, the list of all boards, and the page on which one's own are written."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any

from markupsafe import Markup

from inperiod import boards
from inperiod.boards.bibliography import listing, plate_citation
from inperiod.citing import STYLES
from inperiod.dating import Unreadable, in_words, read_phrase
from inperiod.drawing.flats import Flat, draw_plan
from inperiod.evidence import Facts, Finding
from inperiod.making import Caution, Line, Purchase, UnreadableMeasure, draw, read_measure
from inperiod.making.measures import shown as both_units
from inperiod.publishing import paths, words
from inperiod.publishing.browser_pages import garments_of
from inperiod.publishing.flats import FlatPicture, middle_year, shown_picture
from inperiod.publishing.lookup import Line as PlateLine
from inperiod.publishing.lookup import Lookup
from inperiod.publishing.page import Link
from inperiod.publishing.pictures import Picture
from inperiod.publishing.view_lineup import lineup
from inperiod.publishing.wording import per_cent, place_name, says
from inperiod.records.model import Board

SIDES = {
    "inside": "inside the window",
    "mostly outside": "mostly outside the window",
    "before": "before the window",
    "after": "after the window",
    "undated": "undated",
}


@dataclass(frozen=True, slots=True)
class Warned:
    """A caution: what it is called, its place on the page of cautions, and its sentence."""

    link: Link
    sentence: str


@dataclass(frozen=True, slots=True)
class Planned:
    """A planned feature with what the evidence says of it, and the plates gathered for it."""

    link: Link
    facet: str
    detail: str
    note: str | None
    verdict: str | None
    sentence: str
    reasons: tuple[str, ...]
    usual: tuple[tuple[Link, str], ...]
    cite: tuple[PlateLine, ...]
    supports: tuple[PlateLine, ...]
    cautions: tuple[Warned, ...]


@dataclass(frozen=True, slots=True)
class GatheredCard:
    """A gathered plate: its line, picture, citation, how it stands to the window, what it is for."""

    line: PlateLine
    key: str
    picture: Picture | FlatPicture | None
    citation: Markup
    stands: str
    aside: bool
    supports: Link | None
    shows: tuple[Link, ...]


@dataclass(frozen=True, slots=True)
class Settle:
    """A group of remarks under one heading: for each the plate and the term it concerns, and its sentence."""

    heading: str
    kind: str
    remarks: tuple[tuple[Link | None, Link | None, str], ...]


@dataclass(frozen=True, slots=True)
class Made:
    """A line of the making sheet with its drawing and its cautions."""

    line: Line
    figure: Markup | None
    cautions: tuple[Warned, ...]


PLANNED = "The planned garment, drawn from what is planned"


def planned_flat(look: Lookup, board: Board) -> Flat | None:
    """The flat of the garment a board plans; None for garments that have none or plan nothing."""
    if not board.features:
        return None
    return draw_plan(
        board.features,
        board.garment,
        look.catalogue.vocabulary,
        middle_year(board.target),
        board.wearer.who,
        "the plan",
    )


def board_view(look: Lookup, facts: Facts, board: Board) -> Mapping[str, Any]:
    """What the template ``board.html`` shows."""
    found = boards.resolve(board, look.catalogue, facts)
    together = found.together
    return {
        "board": board,
        "when": words.when(board.target),
        "garment": Link(words.sentence(look.garment(board.garment)), look.garment_link(board.garment).path),
        "wearer": words.wearer(board.wearer),
        "place": place_name(board.place) if board.place else None,
        "grades": " and ".join(found.grades),
        "planned": tuple(_planned(look, found, each) for each in found.planned),
        "tally": tally(found.findings),
        "together": together,
        "together_sentence": says(together.verdict, together.reasons) if together else None,
        "together_cite": _lines(look, together.cite[:6]) if together else (),
        "flat": planned_flat(look, board),
        "flat_caption": PLANNED,
        "lineup": lineup(
            look, [look.catalogue.plates[each.gathered.plate] for each in found.gathered if each.known]
        ),
        "gathered": tuple(_card(look, board, each) for each in found.gathered if each.known),
        "settle": tuple(_settle(look, found)),
        "suggested": tuple(
            (
                look.line(look.catalogue.plates[each.plate]),
                tuple(look.term_link(term) for term in each.shows),
            )
            for each in found.suggested
        ),
        "departures": tuple(
            (each, look.term_link(each.feature) if each.feature and look.term(each.feature) else None)
            for each in board.departures
        ),
        "measures": tuple((name, _measure(value)) for name, value in board.measures.items()),
        "made": tuple(
            Made(
                each,
                draw(each.figure) if each.figure else None,
                _cautions(found.cautions, f"making {each.index + 1}"),
            )
            for each in found.sheet.lines
        ),
        "shopping": tuple(_bought(each) for each in found.sheet.shopping),
        "not_made": found.sheet.problems,
        "cautions": {
            where: _cautions(found.cautions, where) for where in ("garment", "words", "plates", "making")
        },
        "revisions": tuple(_revision(each) for each in board.revisions),
        "signed_off": _revision({"on": board.signed_off.on, "by": board.signed_off.by})
        if board.signed_off
        else None,
        "bibliography": found.bibliography,
        "style": STYLES[found.style].label,
    }


def _planned(look: Lookup, found: boards.ResolvedBoard, each: boards.Planned) -> Planned:
    feature, finding = each.feature, each.finding
    facet = look.facet(feature.facet)
    if feature.term:
        link = look.term_link(feature.term)
    else:
        name = "none" if feature.state == "none" else "not to be seen"
        link = Link(name, paths.facet_path(feature.facet) if facet else paths.TERMS)
    unknown = "This catalogue has no such term." if feature.term else "An absence is not asked about."
    return Planned(
        link=link,
        facet=facet.label if facet else feature.facet,
        detail=words.detail(feature),
        note=feature.note,
        verdict=finding.verdict if finding else None,
        sentence=says(finding.verdict, finding.reasons) if finding else unknown,
        reasons=finding.reasons[1:] if finding else (),
        usual=tuple((look.term_link(other.term), per_cent(other.share.value or 0)) for other in each.usual),
        cite=_lines(look, each.to_cite) if not each.supports else (),
        supports=tuple(
            look.line(look.catalogue.plates[support.gathered.plate], SIDES[support.side])
            for support in each.supports
            if support.known
        ),
        cautions=_cautions(found.cautions, feature.term or ""),
    )


def _card(look: Lookup, board: Board, each: boards.Standing) -> GatheredCard:
    plate = look.catalogue.plates[each.gathered.plate]
    supports = each.gathered.supports
    return GatheredCard(
        line=look.line(plate, each.gathered.reason),
        key=plate.key,
        picture=shown_picture(look.catalogue, plate),
        citation=plate_citation(look.catalogue, plate.key, board.citation_style),
        stands=SIDES[each.side] + (", not weighed" if each.aside and each.side != "undated" else ""),
        aside=bool(each.aside) or not each.inside,
        supports=look.term_link(supports) if supports and look.term(supports) else None,
        shows=tuple(look.term_link(term) for term in each.shows if term != supports),
    )


def _settle(look: Lookup, found: boards.ResolvedBoard) -> Iterable[Settle]:
    for kind, heading in boards.KINDS.items():
        rows = tuple(_remark(look, each) for each in found.remarks if each.kind == kind)
        if rows:
            yield Settle(heading, kind, rows)


def _remark(look: Lookup, each: boards.Remark) -> tuple[Link | None, Link | None, str]:
    term = look.term_link(each.term) if each.term and look.term(each.term) else None
    plate = look.catalogue.plates.get(each.plate or "")
    if plate is None:
        return None, term, f"{each.plate}: {each.sentence}" if each.plate else each.sentence
    return Link(look.plate_title(plate), paths.plate_path(plate.key)), term, each.sentence


def _cautions(found: tuple[Caution, ...], where: str) -> tuple[Warned, ...]:
    return tuple(
        Warned(Link(each.name, f"{paths.CAUTIONS}#{each.id}"), each.sentence)
        for each in found
        if each.where == where
    )


def _measure(value: object) -> str:
    """A measure in both units where it can be read, else as it was written."""
    try:
        read = read_measure(value)
    except UnreadableMeasure:
        return str(value)
    return both_units(read.inches, read.metric)


def _bought(each: Purchase) -> tuple[str, str, str]:
    return words.sentence(each.what), each.text, each.cost or ""


def _revision(given: Mapping[str, Any]) -> tuple[str, str, str]:
    """When, who, what: of a revision as it was written."""
    rest = [str(value) for name, value in given.items() if name not in ("on", "by") and value is not None]
    return _day(given.get("on")), str(given.get("by") or ""), "; ".join(rest)


def _day(value: object) -> str:
    try:
        return in_words(read_phrase(str(value)).span) if value is not None else ""
    except Unreadable:
        return str(value)


def _lines(look: Lookup, keys: tuple[str, ...]) -> tuple[PlateLine, ...]:
    return tuple(look.line(look.catalogue.plates[key]) for key in keys if key in look.catalogue.plates)


def tally(found: tuple[Finding, ...]) -> tuple[tuple[str, int], ...]:
    """How many planned features have each verdict, most first."""
    count = Counter(finding.verdict for finding in found)
    return tuple(sorted(count.items(), key=lambda item: (-item[1], item[0])))


def editor_view(facts: Facts) -> Mapping[str, Any]:
    """The choices on the page on which one's own boards are written."""
    return {
        "garments": garments_of(facts),
        "wearers": tuple(words.WHO.items()),
        "styles": tuple((style.id, style.label, listing(style.id)) for style in STYLES.values()),
        "listing": listing(None),
    }


def boards_view(look: Lookup, facts: Facts) -> Mapping[str, Any]:
    """Every board with its target, garment, and the tally of its verdicts."""
    rows = []
    for board in look.catalogue.boards.values():
        found = boards.resolve(board, look.catalogue, facts)
        rows.append(
            (
                Link(board.title, paths.board_path(board.id)),
                words.sentence(look.garment(board.garment)),
                words.when(board.target),
                words.counted(len(board.plates), "plate gathered", "plates gathered"),
                tally(found.findings),
            )
        )
    return {"boards": tuple(rows)}
