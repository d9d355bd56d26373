"""Strips cut on the true cross: how much cloth for a length wanted, and what a remnant yields.

Strips of width w lie w·√2 apart along the selvedge. The first cut is on the diagonal from a corner, and the
others are parallel to it on both sides. A strip whose two long edges are of different length counts as long
as the shorter one; its ends stay on the straight grain, as they are joined. No strip, and so no yield, can be
longer than area ÷ width: a square of side a yields at most a²/w (dressmaking handbooks, from memory).
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction

from inperiod.making.asking import Asked
from inperiod.making.drafts import Draft
from inperiod.making.figures import Plan
from inperiod.making.measures import CENTIMETRE, said, shown, to_cut
from inperiod.making.trims import TURNING
from inperiod.making.values import Figure

# To eighteen places, so that both languages reckon with the same fraction.
ROOT_2 = Fraction(1_414_213_562_373_095_049, 10**18)
METHODS = ("pieced", "continuous")
STRETCHES = (
    "Bias stretches as it is sewn and narrows as it stretches. Cut and sew a trial strip first, and cut a "
    "little wider where the finished width matters."
)


@dataclass(frozen=True, slots=True)
class Strips:
    """What a rectangle of cloth gives: number of strips, and their length when joined, in inches."""

    pieces: int
    length: Fraction


def apart(width: Fraction) -> Fraction:
    """How far apart the cuts lie along the selvedge."""
    return width * ROOT_2


def pieced(across: Fraction, along: Fraction, width: Fraction, seam: Fraction, shortest: Fraction) -> Strips:
    """Strips cut one by one and joined; those below ``shortest`` are left out.

    A join crosses the strip at 45°, so that two seam allowances cost 2·√2·seam of its length.
    """
    small, large, step = min(across, along), max(across, along), apart(width)
    lost = 2 * ROOT_2 * seam
    least = max(shortest, lost) / ROOT_2
    # In units of √2 inches. The middle strips run from side to side; those in the two corners shorten by a
    # step each, towards the corner (below the diagonal) and beyond the far end of the long side (above it).
    middle = math.floor((large - small) / step) if small >= least else 0
    below = max(0, math.floor((small - least) / step))
    first, last = math.floor((large - small) / step) + 1, math.floor((large - least) / step)
    above = max(0, last - first + 1)
    total = middle * small + below * small - step * below * (below + 1) / 2
    if above:
        total += above * large - step * (first + last) * above / 2
    pieces = middle + below + above
    return Strips(pieces, max(Fraction(0), ROOT_2 * total - max(0, pieces - 1) * lost))


def continuous(across: Fraction, along: Fraction, width: Fraction, seam: Fraction) -> Strips:
    """One strip from a tube: two seams on the straight grain, the second shifted by one strip.

    ``pieces`` are the turns of the strip. Both seams take two allowances: (a − 2q)²/w at most of a square.
    """
    small, large = min(across, along) - 2 * seam, max(across, along) - 2 * seam
    if small <= 0:
        return Strips(0, Fraction(0))
    turns = math.floor(large / apart(width))
    return Strips(turns, turns * ROOT_2 * small)


def bias(asked: Asked) -> Draft:
    """``width``; ``length`` wanted (one or several), or ``remnant`` [across, along] for what it yields.

    ``method`` pieced or continuous; ``cloth_width`` for a rectangle across the cloth and not a square;
    ``seam`` of the joins; ``turning`` at each end; ``shortest`` strip that counts.
    """
    width = asked.measure("width", least="1/4 in", most="1 yd")
    wanted = asked.edges("length") if asked.has("length") else ()
    method = asked.choice("method", METHODS, "pieced")
    seam = asked.measure("seam", ("1/4 in", "6 mm"), least="0 in", most="2 in")
    turning = asked.measure("turning", TURNING, least="0 in")
    cloth = asked.measure("cloth_width") if asked.has("cloth_width") else None
    remnant = asked.edges("remnant") if asked.has("remnant") else ()
    if asked.has("remnant") and len(remnant) != 2:
        asked.wrong("remnant", "remnant has not two sides.", "Expected remnant: [18 in, 24 in].")
    if not wanted and not remnant:
        asked.wrong(
            "length", "length is missing.", "Give length: what is wanted, or remnant: [18 in, 24 in]."
        )
    ends = sum((edge.inches for edge in wanted), Fraction(0)) + 2 * turning * len(wanted)
    if ends > 3600:
        asked.wrong("length", "length is more than 100 yards of strip.", "Make several lines of it.")
    shortest = asked.measure("shortest", ("6 in", "15 cm"), least="0 in", most="1 yd")
    if wanted:
        shortest = min(shortest, ends)
    metric = asked.metric
    asked.settle()

    def gives(across: Fraction, along: Fraction) -> Strips:
        if method == "continuous":
            return continuous(across, along, width, seam)
        return pieced(across, along, width, seam, shortest)

    draft = asked.draft("Bias strip")
    if wanted:
        lost = said(2 * turning, metric)
        times = f"{len(wanted)} × " if len(wanted) > 1 else ""
        draft.formula = (
            f"{asked.sum_in_words(wanted)}, and {times}{lost} for the ends: {said(ends, metric)}. "
        )
        draft.number("Wanted", ends, to_cut(ends, metric))
    if remnant:
        across, along = remnant[0].inches, remnant[1].inches
        found = gives(across, along)
        place = f"{shown(across, metric)} by {shown(along, metric)}"
        enough = f"; {'enough' if found.length >= ends else 'not enough'}" if wanted else ""
        draft.cut = (
            f"A remnant {place} yields {_length(found, metric)} of strip {shown(width, metric)} wide{enough}"
        )
    else:
        across, along = _cloth_for(asked, ends, width, cloth, gives)
        asked.settle()
        found = gives(across, along)
        shape = "a square of" if cloth is None else "a rectangle of"
        place = (
            shown(across, metric) if cloth is None else f"{shown(across, metric)} by {shown(along, metric)}"
        )
        draft.cut = (
            f"Cut strip {shown(width, metric)} wide from {shape} {place}; it gives {_length(found, metric)}"
        )
        draft.need(along, only_named=True)
    _finish(asked, draft, found, across, along, width, seam, method, shortest)
    return draft


def _length(found: Strips, metric: bool) -> str:
    """Rounded to the nearest: a yield is no length to cut."""
    return shown(found.length, metric)


def _cloth_for(
    asked: Asked,
    ends: Fraction,
    width: Fraction,
    cloth: Fraction | None,
    gives: Callable[[Fraction, Fraction], Strips],
) -> tuple[Fraction, Fraction]:
    """A square, or a length of the cloth across its whole width, in steps of 1/2 in or 1 cm, that is enough.

    Grows from area ÷ width by half of what is still missing each time, so that it stops a step or two late
    at most.
    """
    step = CENTIMETRE if asked.metric else Fraction(1, 2)
    area = ends * width
    side = cloth or Fraction(math.isqrt(math.floor(area)))
    along = _up(area / cloth if cloth else side, step)
    for _ in range(2000):
        across = cloth or along
        missing = ends - gives(across, along).length
        if missing <= 0:
            return across, along
        grown = missing * width / ((2 if cloth else 4) * across)
        along += max(step, math.floor(grown / step) * step)
    asked.wrong(
        "cloth_width", "No such strip can be cut from cloth of this width.", "Expected a wider cloth."
    )
    return Fraction(1), Fraction(1)


def _up(value: Fraction, step: Fraction) -> Fraction:
    return max(step, math.ceil(value / step) * step)


def _finish(
    asked: Asked,
    draft: Draft,
    found: Strips,
    across: Fraction,
    along: Fraction,
    width: Fraction,
    seam: Fraction,
    method: str,
    shortest: Fraction,
) -> None:
    """What square, rectangle and remnant have in common."""
    metric = asked.metric
    most = across * along / width
    draft.formula += (
        f"Cuts lie {said(width, metric)} × √2 = {said(apart(width), metric)} apart along the selvedge. "
        f"{said(across, metric)} × {said(along, metric)} ÷ {said(width, metric)} = "
        f"{said(most, metric)} at most"
    )
    if method == "continuous":
        turns = "turn" if found.pieces == 1 else "turns"
        draft.formula += (
            f"; the two seams and whole turns leave {said(found.length, metric)} in {found.pieces} {turns}."
        )
        draft.number("Turns", found.pieces, str(found.pieces))
        draft.note("Shift the second seam by one strip, so that the cut runs on round the tube.")
    else:
        joins = max(0, found.pieces - 1)
        strips = "strip" if found.pieces == 1 else "strips"
        joined = "join" if joins == 1 else "joins"
        draft.formula += f"; {found.pieces} {strips} with {joins} {joined} give {said(found.length, metric)}."
        draft.number("Strips", found.pieces, str(found.pieces))
        draft.number("Joins", joins, str(joins))
        draft.note(
            f"Strips shorter than {shown(shortest, metric)} are not counted. Join on the straight grain."
        )
    draft.number("Yield", found.length, _length(found, metric))
    draft.number("At most", most, shown(most, metric))
    draft.number("Apart along the selvedge", apart(width), shown(apart(width), metric))
    draft.number("Across", across, shown(across, metric))
    draft.number("Along the selvedge", along, shown(along, metric))
    draft.caution(STRETCHES)
    draft.figure = bias_figure(across, along, width, metric)


def bias_figure(across: Fraction, along: Fraction, width: Fraction, metric: bool) -> Figure:
    """The cloth with its selvedge upright and every cut, to scale; very long cloth is drawn in part."""
    shown_along = min(along, 2 * across)
    plan = Plan(max(across, shown_along) / 420)
    px, nought, step = plan.pixel, Fraction(0), apart(width)
    plan.box("cloth", nought, nought, across, shown_along)
    plan.line("selvedge", nought, nought, nought, shown_along)
    if shown_along < along:
        plan.line("torn", nought, shown_along, across, shown_along)
    small = min(across, along)
    # Each cut is a line x + y = c; the first goes through the corner of the short side.
    first = -math.floor(small / step)
    last = math.floor((across + shown_along - small) / step)
    if last - first <= 600:
        for number in range(first, last + 1):
            c = small + number * step
            left, right = max(nought, c - shown_along), min(across, c)
            if left < right:
                plan.line("diagonal" if number == 0 else "cut", left, c - left, right, c - right)
    foot = shown_along + 18 * px
    plan.scale_bar(foot, across / 2, metric)
    title = f"Strips {shown(width, metric)} wide on the cross, to scale"
    if shown_along < along:
        title = f"{title}; the cloth goes on below"
    return plan.figure("bias", title, across, foot + 4 * px)
