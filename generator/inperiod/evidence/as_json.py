"""Answers and timelines as the JSON other tools may rely on."""

from __future__ import annotations

from collections.abc import Mapping
from functools import singledispatch
from typing import Any

from inperiod.dating import iso_day
from inperiod.evidence.facts import MilestoneFact
from inperiod.evidence.questions import Answer, Finding, Sighted
from inperiod.evidence.sensitivity import Change
from inperiod.evidence.shares import Share
from inperiod.evidence.timelines import Alternative, Row, Timeline
from inperiod.evidence.weights import Window


@singledispatch
def as_json(value: Any, when: Mapping[str, Any] | None = None) -> dict[str, Any]:
    """The JSON form of an Answer, a Finding, a Timeline, an Alternative or a Change.

    ``when`` is what is to stand under that key of an answer (the date as asked, as ``inperiod when`` gives
    it); left out, it is the window's ends as days. Raises TypeError for anything else.
    """
    raise TypeError(f"no JSON form for {type(value).__name__}")


@as_json.register
def _(value: Answer, when: Mapping[str, Any] | None = None) -> dict[str, Any]:
    question = value.question
    return {
        "when": dict(when) if when is not None else _window(question.window),
        "garment": question.garment,
        "place": question.place,
        "wearer": question.wearer,
        "kind": question.kind,
        "grades": question.grades,
        "worn_for": question.worn_for,
        "features": [as_json(finding) for finding in value.findings],
        "together": as_json(value.together) if value.together else None,
    }


@as_json.register
def _(value: Finding, when: Mapping[str, Any] | None = None) -> dict[str, Any]:
    return {
        "term": value.term,
        "verdict": value.verdict,
        "frequency": value.frequency,
        "share": _share(value.share),
        "sightings": value.sightings,
        "in_window": value.in_window,
        "documents_in_window": value.documents_in_window,
        "set_aside": list(value.set_aside),
        "worn": list(value.worn),
        "first": _sighted(value.first),
        "last": _sighted(value.last),
        "guide_years": value.guide_years,
        "extension": {"earliest": value.extension[0], "latest": value.extension[1]},
        "absence_p": value.absence_p,
        "direct_absence": value.direct_absence,
        "not_before": value.not_before.text if value.not_before else None,
        "not_before_because": _because(value.not_before),
        "in_dress_from": value.in_dress_from.text if value.in_dress_from else None,
        "left_out": [
            {"reason": each.reason, "recording": each.recording, "showing": each.showing}
            for each in value.left_out
        ],
        "cite": list(value.cite),
        "reasons": list(value.reasons),
    }


@as_json.register
def _(value: Timeline, when: Mapping[str, Any] | None = None) -> dict[str, Any]:
    return {
        "garment": value.garment,
        "facet": value.facet,
        "decades": list(value.decades),
        "rows": [_row(row) for row in value.rows],
        "recorded": list(value.recorded),
        "looked": list(value.looked),
        "left_out": [{"reason": reason, "recording": plates} for reason, plates in value.left_out],
    }


@as_json.register
def _(value: Alternative, when: Mapping[str, Any] | None = None) -> dict[str, Any]:
    return {
        "term": value.term,
        "label": value.label,
        "share": _share(value.share),
        "documents": value.documents,
    }


@as_json.register
def _(value: Change, when: Mapping[str, Any] | None = None) -> dict[str, Any]:
    return {
        "term": value.term,
        "condition": value.condition,
        "verdict": value.verdict,
        "sentence": value.sentence,
    }


def _row(row: Row) -> dict[str, Any]:
    return {
        "term": row.term,
        "label": row.label,
        "weights": list(row.weights),
        "shares": list(row.shares),
        "documents": list(row.documents),
        "sightings": row.sightings,
        "first": _sighted(row.first),
        "last": _sighted(row.last),
        "extension": {"earliest": row.extension[0], "latest": row.extension[1]},
        "set_aside": [_sighted(each) for each in row.set_aside],
        "not_before": row.not_before.text if row.not_before else None,
    }


def _share(share: Share) -> dict[str, float | None]:
    return {
        "showing": share.showing,
        "recorded": share.recorded,
        "effective": share.effective,
        "value": share.value,
        "low": share.low,
        "high": share.high,
    }


def _sighted(sighted: Sighted | None) -> dict[str, Any] | None:
    return {"plate": sighted.plate, "date": sighted.date} if sighted else None


def _because(milestone: MilestoneFact | None) -> str | None:
    return f"{milestone.event}; {milestone.source}" if milestone else None


def _window(window: Window) -> dict[str, str | None]:
    return {
        "earliest": None if window.earliest is None else iso_day(window.earliest),
        "latest": None if window.latest is None else iso_day(window.latest),
    }
