"""A span of days: what every date means here."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Literal

from inperiod.dating.days import months_later

Margin = Literal["years", "months"]

MONTHS_WHEN_FINER = 3


@dataclass(frozen=True, slots=True)
class Span:
    """Earliest and latest day, inclusive, as proleptic Gregorian day numbers (1 = 0001-01-01, as
    ``datetime.date.toordinal`` counts; zero and below for earlier years); None is an open end.

    ``approximate`` and ``uncertain`` say that some part carries ``~`` or ``?`` (``%`` is both). The margins
    say by what each end is to be widened: ``"years"`` where a year, decade or century is qualified,
    ``"months"`` where a season, month or day is, None where that end is as it is written.
    """

    earliest: int | None
    latest: int | None
    approximate: bool = False
    uncertain: bool = False
    early_margin: Margin | None = None
    late_margin: Margin | None = None


def widened(span: Span, circa_years: int = 5) -> Span:
    """The span with each qualified end moved outward, by ``circa_years`` calendar years (0 or more) where a
    year or something coarser is qualified, by three calendar months where something finer is.

    A day the month reached does not have becomes that month's last (29 February, 31 May). Open ends stay
    open, unqualified ends stay put, and what is widened already is not widened twice. Museums differ in the
    years they allow; the default of five is a convention. Raises ``ValueError`` for negative years.
    """
    if circa_years < 0:
        raise ValueError(f"circa years cannot be negative: {circa_years}")
    months = {"years": 12 * circa_years, "months": MONTHS_WHEN_FINER, None: 0}
    early, late = months[span.early_margin], months[span.late_margin]
    return replace(
        span,
        earliest=months_later(span.earliest, -early)
        if early and span.earliest is not None
        else span.earliest,
        latest=months_later(span.latest, late) if late and span.latest is not None else span.latest,
        early_margin=None,
        late_margin=None,
    )
