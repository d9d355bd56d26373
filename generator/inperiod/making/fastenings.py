"""Buttons, hooks, press studs and the like: how many an opening needs, and where each sits."""

from __future__ import annotations

import math
from fractions import Fraction

from inperiod.making.asking import MOST, Asked
from inperiod.making.drafts import Draft
from inperiod.making.measures import said, shown

KINDS = {
    "buttons": "button",
    "hooks and eyes": "hook and eye",
    "hooks and bars": "hook and bar",
    "press studs": "press stud",
    "eyelets": "eyelet",
    "tape ties": "tape tie",
    "toggles": "toggle",
}


def placed(room: Fraction, number: int, first: Fraction) -> tuple[Fraction, ...]:
    """Where each sits from the top of the opening: evenly over ``room``, from ``first``."""
    if number == 1:
        return (first,)
    return tuple(first + room * each / (number - 1) for each in range(number))


def number_for(room: Fraction, spacing: Fraction) -> int:
    """The fewest with no two further apart than ``spacing``."""
    return math.ceil(room / spacing) + 1


def fastenings(asked: Asked) -> Draft:
    """``of`` what, along an ``opening``; ``number`` of them, or ``spacing`` at most.

    ``top`` and ``bottom`` stay plain; ``sets`` of like openings; ``spare`` ones to buy.
    """
    of = asked.choice("of", tuple(KINDS), "buttons")
    opening = asked.measure("opening")
    number = asked.count("number") if asked.has("number") else None
    spacing = asked.measure("spacing") if asked.has("spacing") else None
    top = asked.measure("top", ("1/2 in", "1 cm"), least="0 in")
    bottom = asked.measure("bottom", ("1/2 in", "1 cm"), least="0 in")
    sets = asked.count("sets", 1)
    spare = asked.count("spare", 0, least=0)
    metric = asked.metric
    if number is not None and spacing is not None:
        asked.wrong("spacing", "number and spacing are both given.", "Give one; the other follows from it.")
    if number is None and spacing is None:
        asked.wrong(
            "number", "number is missing.", "Give number: how many, or spacing: how far apart at most."
        )
    asked.settle()
    room = opening - top - bottom
    if room < 0:
        message = f"top and bottom take more than the opening of {said(opening, metric)}."
        asked.wrong("top", message, "Expected less at the top and the bottom.")
    asked.settle()
    count = number if number is not None else number_for(room, spacing or room)
    if count > MOST:
        asked.wrong("spacing", f"{count} {of} are too many for one line.", f"Expected at most {MOST}.")
    if count > 1 and not room:
        message = f"{count} {of} have no room between top and bottom."
        asked.wrong("number", message, "Expected less at the top and the bottom.")
    asked.settle()

    positions = placed(room, count, top)
    one, total = KINDS[of], count * sets + spare
    name = one if count == 1 else of
    draft = asked.draft(of[:1].upper() + of[1:])
    times = f"{sets} openings, each with " if sets > 1 else ""
    draft.cut = f"Set {times}{count} {name}" + (f", and {spare} to spare" if spare else "")
    start = f"{said(opening, metric)} − {said(top, metric)} at the top − {said(bottom, metric)} at the bottom"
    draft.formula = f"{start} = {said(room, metric)}"
    if count > 1:
        gap = room / (count - 1)
        draft.formula += f"; ÷ {count - 1} {'space' if count == 2 else 'spaces'} = {said(gap, metric)} apart."
        draft.number("Apart", gap, shown(gap, metric))
    else:
        draft.formula += "; one alone sits at the top."
    draft.number("Together", total, str(total))
    for each, position in enumerate(positions, 1):
        text = f"{shown(position, metric)} from the top"
        draft.number(f"{one[:1].upper()}{one[1:]} {each}", position, text)
    if spacing is not None:
        draft.note(f"No two are further apart than {said(spacing, metric)}.")
    draft.need_count(total)
    return draft
