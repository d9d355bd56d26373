"""The verdict for one term, or several together, in one window: the first rule that holds."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from inperiod.evidence.absence import absence_p, silence, unlikely, unlikely_gap
from inperiod.evidence.constants import DAYS_PER_YEAR, MOSTLY, NEAR_YEARS
from inperiod.evidence.ranges import Attested, Seen
from inperiod.evidence.surveys import Survey
from inperiod.evidence.weights import Window

Verdict = Literal[
    "too early",
    "attested",
    "seen once",
    "unrecorded",
    "lapsed",
    "bracketed",
    "plausible",
    "unsupported",
    "unproven",
]

Position = Literal["inside", "overlapping", "before", "after"]
"""Where the window lies to the attested range, by the middles of its first and last sighting."""


@dataclass(frozen=True, slots=True)
class Judged:
    """A verdict with what it was judged from.

    ``inside``: positions of the sightings in the window, those within the wear allowance included;
    ``worn``: those that are inside by that allowance alone. ``looked`` : positions of the documents that lie
    mostly in the window. ``gap``: documents strictly between range and window. ``beyond_years``: how far
    outside the range the window lies. ``absence_p`` is None unless the window lies outside. ``silent``:
    direct absence holds in the window; ``silent_gap``: in all between the sightings on either side of it.
    """

    verdict: Verdict
    position: Position | None
    inside: tuple[int, ...]
    worn: tuple[int, ...]
    looked: tuple[int, ...]
    gap: int
    beyond_years: float
    absence_p: float | None
    silent: bool
    silent_gap: bool


def judge(
    survey: Survey, of: Seen, found: Attested | None, window: Window, worn_for: float, not_before: int | None
) -> Judged:
    """The verdict. ``not_before`` is the earliest day the term can occur; ``worn_for`` is in years."""
    looked = survey.mostly(window)
    inside, worn = _inside(survey, of, looked, window, worn_for)
    silent = not any(position in of.showing for position in looked) and unlikely(
        silence(len(survey.entries[position].plates) for position in looked)
    )
    position = _position(found, window) if found else None
    gap, beyond_years, p = 0, 0.0, None
    if found and position == "after" and window.earliest is not None:
        gap = survey.between(found.last_twice, 2 * window.earliest)
        beyond_years = (window.earliest - found.last_twice / 2) / DAYS_PER_YEAR
    elif found and position == "before" and window.latest is not None:
        gap = survey.between(2 * window.latest, found.first_twice)
        beyond_years = (found.first_twice / 2 - window.latest) / DAYS_PER_YEAR
    if found and position in ("before", "after"):
        p = absence_p(found.sightings, found.documents, gap)

    silent_gap = position == "inside" and not inside and bool(looked) and _silent_gap(survey, of, looked)
    verdict: Verdict
    if not_before is not None and window.latest is not None and window.latest < not_before:
        verdict = "too early"
    elif len(inside) >= 2 or any(each in of.backed for each in inside):
        verdict = "attested"
    elif inside:
        verdict = "seen once"
    elif found is None:
        verdict = "unrecorded"
    elif position == "inside":
        verdict = "lapsed" if silent or silent_gap else "bracketed"
    elif p is not None and (unlikely(p) or silent):
        verdict = "unsupported"
    elif position == "overlapping" or beyond_years <= min(found.guide_years, NEAR_YEARS):
        verdict = "plausible"
    else:
        verdict = "unproven"
    return Judged(verdict, position, inside, worn, looked, gap, beyond_years, p, silent, silent_gap)


def _silent_gap(survey: Survey, of: Seen, looked: tuple[int, ...]) -> bool:
    """Whether the documents from the sighting before to the sighting after those of the window show enough
    plates, and never the term, that its absence is more than chance. Where the window itself was not looked
    at the question does not arise: silence elsewhere in the gap says nothing of it."""
    before = max((position for position in of.sighted if position < looked[0]), default=-1)
    after = min((position for position in of.sighted if position > looked[-1]), default=len(survey.entries))
    between = range(before + 1, after)
    return not any(position in of.showing for position in between) and unlikely_gap(
        silence(len(survey.entries[position].plates) for position in between)
    )


def _inside(
    survey: Survey, of: Seen, looked: tuple[int, ...], window: Window, worn_for: float
) -> tuple[tuple[int, ...], tuple[int, ...]]:
    """Sightings in the window, and those by the wear allowance alone: garments outlive the catalogue."""
    inside = tuple(position for position in looked if position in of.sighted)
    if worn_for <= 0 or window.earliest is None:
        return inside, ()
    longer = Window(window.earliest - int(worn_for * DAYS_PER_YEAR + 0.5), window.latest)
    both = tuple(
        position
        for position, part in survey.weighed(longer)
        if (part >= MOSTLY and position in of.sighted) or position in inside
    )
    return both, tuple(position for position in both if position not in inside)


def _position(found: Attested, window: Window) -> Position:
    if window.earliest is not None and 2 * window.earliest > found.last_twice:
        return "after"
    if window.latest is not None and 2 * window.latest < found.first_twice:
        return "before"
    if (
        window.earliest is not None
        and window.latest is not None
        and 2 * window.earliest > found.first_twice
        and 2 * window.latest < found.last_twice
    ):
        return "inside"
    return "overlapping"
