"""Pleats and fullness: what they take up, and the flat width a finished width needs.

A knife pleat of depth d hides 2d of cloth, a box or inverted pleat 4d (two folds each side). At full depth a
knife pleat is as deep as it is wide, a box pleat half as deep, so that pleats which touch take three times
the finished width: dressmaking handbooks, from memory.
"""

from __future__ import annotations

import math
from fractions import Fraction

from inperiod.making.asking import MOST, Asked
from inperiod.making.drafts import Draft
from inperiod.making.measures import decimal, said, shown, to_cut

_FOLDS = {"knife": 2, "box": 4, "inverted": 4}
# Common practice, no source; from memory.
_FULLNESS = {"gathers": "1.5", "shirring": "2", "cartridge": "3"}


def pleated_flat(finished: Fraction, number: int, depth: Fraction, style: str) -> Fraction:
    """Flat width without turnings: finished + number × 2 (knife) or 4 (box, inverted) × depth."""
    return finished + number * _FOLDS[style] * depth


def full_depth(pleat: Fraction, style: str) -> Fraction:
    """The depth at which neighbours touch behind: the pleat's width (knife), half of it (box, inverted)."""
    return pleat if style == "knife" else pleat / 2


def pleats(asked: Asked) -> Draft:
    """``style``, ``finished``; folded: ``pleat`` or ``number``, ``depth``; gathered: ``fullness``."""
    style = asked.choice("style", (*_FOLDS, *_FULLNESS), "knife")
    finished = asked.measure("finished")
    turning = asked.measure("turning", ("0 in", "0 cm"), least="0 in")
    return (
        _folded(asked, style, finished, turning)
        if style in _FOLDS
        else _drawn_up(asked, style, finished, turning)
    )


def _seams(turning: Fraction, flat: Fraction, metric: bool) -> str:
    if not turning:
        return "."
    return f", and 2 × {said(turning, metric)} for the seams: {said(flat + 2 * turning, metric)}."


def _folded(asked: Asked, style: str, finished: Fraction, turning: Fraction) -> Draft:
    pleat = asked.measure("pleat") if asked.has("pleat") else None
    number = asked.count("number") if asked.has("number") else None
    depth = asked.measure("depth") if asked.has("depth") else None
    metric = asked.metric
    if pleat is None and number is None:
        asked.wrong(
            "pleat", "pleat is missing: how wide one pleat shows.", "Give pleat: 1 in, or number: 12."
        )
    if style == "inverted" and pleat is None and depth is None:
        asked.wrong("depth", "depth is missing: how deep each fold lies behind.", "Give depth: 2 in.")
    asked.settle()
    if number is None and pleat is not None:
        number = math.floor(finished / pleat)
        if not 1 <= number <= MOST:
            message = f"{number} pleats of {said(pleat, metric)} fit {said(finished, metric)}."
            asked.wrong("pleat", message, f"Expected from 1 to {MOST} pleats.")
    count = number or 1
    width = pleat or finished / count
    plain = finished - count * width
    if plain < 0:
        message = f"{count} pleats of {said(width, metric)} are wider than {said(finished, metric)}."
        asked.wrong("number", message, "Give fewer or narrower pleats.")
    asked.settle()

    full = full_depth(width, style)
    deep = depth or full
    flat = pleated_flat(finished, count, deep, style)
    cut = flat + 2 * turning
    draft = asked.draft(f"{style.capitalize()} {'pleat' if count == 1 else 'pleats'}")
    draft.cut = f"Cut {to_cut(cut, metric)} before pleating, for {shown(finished, metric)} finished"
    taken = count * _FOLDS[style] * deep
    word = "pleat" if count == 1 else "pleats"
    draft.formula = (
        f"{count} {word} × {_FOLDS[style]} × {said(deep, metric)} deep = {said(taken, metric)} taken up; "
        f"{said(finished, metric)} + {said(taken, metric)} = {said(flat, metric)}"
        f"{_seams(turning, flat, metric)}"
    )
    draft.number("Pleats", count, str(count))
    draft.number("One pleat shows", width, shown(width, metric))
    draft.number("Depth", deep, shown(deep, metric))
    draft.number("Taken up", taken, shown(taken, metric))
    draft.number("Flat", cut, to_cut(cut, metric))
    draft.number("Finished", finished, shown(finished, metric))
    if plain:
        draft.number("Left plain", plain, shown(plain, metric))
    if deep == full and not plain:
        draft.note("Full depth and touching: three times the finished width.")
    if deep > full:
        draft.caution(
            "The pleats are deeper than full: they lap over each other behind and make the band thick."
        )
    draft.need(cut, only_named=True)
    return draft


def _drawn_up(asked: Asked, style: str, finished: Fraction, turning: Fraction) -> Draft:
    fullness = asked.number("fullness", _FULLNESS[style], least="1", most="20")
    metric = asked.metric
    asked.settle()
    flat = finished * fullness
    cut = flat + 2 * turning
    draft = asked.draft("Cartridge pleats" if style == "cartridge" else style.capitalize())
    draft.cut = f"Cut {to_cut(cut, metric)} before drawing up, for {shown(finished, metric)} finished"
    start = f"{said(finished, metric)} × {decimal(fullness)} = {said(flat, metric)}"
    draft.formula = f"{start}{_seams(turning, flat, metric)}"
    draft.number("Fullness", fullness, decimal(fullness))
    draft.number("Flat", cut, to_cut(cut, metric))
    draft.number("Finished", finished, shown(finished, metric))
    if style == "cartridge":
        draft.note("How much draws up depends on the cloth and the stitch: try a hand’s breadth first.")
    draft.need(cut, only_named=True)
    return draft
