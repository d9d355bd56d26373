"""The answer to "when is that?" in the stable keys other programs rely on."""

from __future__ import annotations

from typing import Any

from inperiod.dating.days import Unreadable, iso_day
from inperiod.dating.edtf import Seasons
from inperiod.dating.phrases import read_phrase
from inperiod.dating.span import Span, widened


def when_json(text: str, circa_years: int = 5, seasons: Seasons = "northern") -> dict[str, Any]:
    """What is understood, under ``input``, ``edtf``, ``earliest``, ``latest``, ``approximate``,
    ``uncertain``, ``widened`` (with ``earliest`` and ``latest``), ``words`` and ``note``; days are
    ``YYYY-MM-DD``, None where open. A phrase that cannot be read gives ``input`` and ``error``."""
    try:
        understood = read_phrase(text, seasons)
    except Unreadable as problem:
        return {"input": text, "error": str(problem)}
    span = understood.span
    return {
        "input": text,
        "edtf": understood.edtf,
        **_ends(span),
        "approximate": span.approximate,
        "uncertain": span.uncertain,
        "widened": _ends(widened(span, circa_years)),
        "words": understood.words,
        "note": understood.note,
    }


def _ends(span: Span) -> dict[str, str | None]:
    return {
        "earliest": None if span.earliest is None else iso_day(span.earliest),
        "latest": None if span.latest is None else iso_day(span.latest),
    }
