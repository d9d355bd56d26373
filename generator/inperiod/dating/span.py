"""A span of days: what every date means here."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Span:
    """Earliest and latest day, inclusive, as proleptic Gregorian day numbers (1 = 0001-01-01, as
    ``datetime.date.toordinal`` counts; zero and below for earlier years); None is an open end."""

    earliest: int | None
    latest: int | None
    approximate: bool = False
    uncertain: bool = False
