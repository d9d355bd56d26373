"""A research board's page, and the list of all boards."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from inperiod.evidence import Facts, Finding, Question, Window, answer
from inperiod.publishing import paths, words
from inperiod.publishing.lookup import Line, Lookup
from inperiod.publishing.page import Link
from inperiod.publishing.wording import place_name, says
from inperiod.records.model import Board


@dataclass(frozen=True, slots=True)
class Planned:
    """A planned feature with what the evidence says of it, and the plates gathered for it."""

    link: Link
    facet: str
    detail: str
    verdict: str
    sentence: str
    reasons: tuple[str, ...]
    cite: tuple[Line, ...]
    supports: tuple[Line, ...]


def findings(facts: Facts, board: Board) -> tuple[tuple[Finding, ...], Finding | None]:
    """What the evidence says of each planned feature the catalogue knows, and of all together."""
    known = tuple(
        dict.fromkeys(
            feature.term for feature in board.features if feature.term and feature.term in facts.term_index
        )
    )
    if not known or board.garment not in {garment.id for garment in facts.garments}:
        return (), None
    span = board.target.span
    found = answer(facts, Question(board.garment, known, Window(span.earliest, span.latest), place=None))
    return found.findings, found.together


def board_view(look: Lookup, facts: Facts, board: Board) -> Mapping[str, Any]:
    """What the template ``board.html`` shows."""
    found, together = findings(facts, board)
    by_term = {finding.term: finding for finding in found}
    when = words.when(board.target)
    planned = []
    for feature in board.features:
        finding = by_term.get(feature.term or "")
        if finding is None or feature.term is None:
            continue
        facet = look.facet(feature.facet)
        planned.append(
            Planned(
                look.term_link(feature.term),
                facet.label if facet else feature.facet,
                words.detail(feature),
                finding.verdict,
                says(finding.verdict, finding.reasons),
                finding.reasons[1:],
                _lines(look, finding.cite[:3]),
                tuple(
                    look.line(look.catalogue.plates[each.plate], each.reason)
                    for each in board.plates
                    if each.supports == feature.term and each.plate in look.catalogue.plates
                ),
            )
        )
    return {
        "board": board,
        "when": when,
        "garment": Link(words.sentence(look.garment(board.garment)), look.garment_link(board.garment).path),
        "wearer": words.wearer(board.wearer),
        "place": place_name(board.place) if board.place else None,
        "planned": tuple(planned),
        "tally": tally(found),
        "together": together,
        "together_sentence": says(together.verdict, together.reasons) if together else None,
        "together_cite": _lines(look, together.cite[:6]) if together else (),
        "gathered": tuple(
            look.line(look.catalogue.plates[each.plate], each.reason)
            for each in board.plates
            if each.plate in look.catalogue.plates
        ),
        "departures": board.departures,
        "questions": board.questions,
    }


def _lines(look: Lookup, keys: tuple[str, ...]) -> tuple[Line, ...]:
    return tuple(look.line(look.catalogue.plates[key]) for key in keys if key in look.catalogue.plates)


def tally(found: tuple[Finding, ...]) -> tuple[tuple[str, int], ...]:
    """How many planned features have each verdict, most first."""
    count = Counter(finding.verdict for finding in found)
    return tuple(sorted(count.items(), key=lambda item: (-item[1], item[0])))


def boards_view(look: Lookup, facts: Facts) -> Mapping[str, Any]:
    """Every board with its target, garment, and the tally of its verdicts."""
    rows = []
    for board in look.catalogue.boards.values():
        found, _ = findings(facts, board)
        rows.append(
            (
                Link(board.title, paths.board_path(board.id)),
                words.sentence(look.garment(board.garment)),
                words.when(board.target),
                words.counted(len(board.plates), "plate gathered", "plates gathered"),
                tally(found),
            )
        )
    return {"boards": tuple(rows)}
