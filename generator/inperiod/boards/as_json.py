"""A resolved board as the JSON other programs may rely on."""

from __future__ import annotations

from typing import Any

from inperiod.boards.resolving import Planned, ResolvedBoard
from inperiod.boards.standing import Standing
from inperiod.evidence import as_json as evidence_json
from inperiod.making import as_json as sheet_json
from inperiod.records.model import Board


def as_json(resolved: ResolvedBoard) -> dict[str, Any]:
    """Everything worked out for the board. Plates are ``source-id/plate-id``, terms ``facet/id``."""
    board = resolved.board
    return {
        "id": board.id,
        "title": board.title,
        "target": board.target.text,
        "garment": board.garment,
        "grades": resolved.grades,
        "features": [_planned(each) for each in resolved.planned],
        "together": evidence_json(resolved.together) if resolved.together else None,
        "plates": [_standing(each) for each in resolved.gathered],
        "remarks": [
            {"kind": each.kind, "term": each.term, "plate": each.plate, "sentence": each.sentence}
            for each in resolved.remarks
        ],
        "suggested": [{"plate": each.plate, "shows": list(each.shows)} for each in resolved.suggested],
        "departures": _departures(board),
        "questions": list(board.questions),
        "style": resolved.style,
        "bibliography": [{"source": each.source, "text": each.text} for each in resolved.bibliography],
        "making": sheet_json(resolved.sheet),
        "cautions": [
            {"id": each.id, "where": each.where, "sentence": each.sentence} for each in resolved.cautions
        ],
    }


def _planned(planned: Planned) -> dict[str, Any]:
    feature = planned.feature
    found: dict[str, Any] = evidence_json(planned.finding) if planned.finding else {}
    return {
        "term": feature.term or f"{feature.facet}/{feature.state}",
        "verdict": None,
        **found,
        "supports": [each.gathered.plate for each in planned.supports],
        "usual": [evidence_json(each) for each in planned.usual],
    }


def _standing(each: Standing) -> dict[str, Any]:
    return {
        "plate": each.gathered.plate,
        "reason": each.gathered.reason,
        "supports": each.gathered.supports,
        "known": each.known,
        "weight": each.weight,
        "side": each.side if each.known else None,
        "set_aside": each.aside,
        "shows": list(each.shows),
    }


def _departures(board: Board) -> list[dict[str, Any]]:
    return [
        {
            "original": each.original,
            "stand_in": each.stand_in,
            "reason": each.reason,
            "shows_at": each.shows_at,
            "feature": each.feature,
        }
        for each in board.departures
    ]
