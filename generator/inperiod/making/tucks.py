"""Tucks: how many, how much cloth they take, and where they fall on the flat cloth.

A tuck of width w takes 2w of cloth. On the finished panel the stitching lines stand s apart, and so do the
folds: that is *fold to fold*. The *gap* is the plain cloth that shows between the fold of one tuck and the
stitching of the next: s − w. The two are not the same, and handbooks seldom say which they mean.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from fractions import Fraction

from inperiod.making.asking import MOST, Asked
from inperiod.making.drafts import Draft
from inperiod.making.figures import Plan
from inperiod.making.measures import said, shown, to_cut
from inperiod.making.values import Figure

STYLES = ("pin", "wide", "blind", "growth")


@dataclass(frozen=True, slots=True)
class Tucks:
    """Tucks on one panel, all in inches.

    ``spacing`` is fold to fold on the finished panel; ``finished`` and ``flat`` are the panel's width without
    turnings, after and before tucking; ``start`` the plain cloth before the first stitching line.
    """

    number: int
    width: Fraction
    spacing: Fraction
    finished: Fraction
    start: Fraction

    @property
    def gap(self) -> Fraction:
        """Plain cloth between a fold and the next stitching; below nothing where tucks lap."""
        return self.spacing - self.width

    @property
    def taken_up(self) -> Fraction:
        """Cloth in the tucks: twice the width of each."""
        return 2 * self.width * self.number

    @property
    def flat(self) -> Fraction:
        return self.finished + self.taken_up

    @property
    def lines(self) -> tuple[tuple[Fraction, Fraction, Fraction], ...]:
        """On the flat panel, for each tuck: first stitching line, fold, second stitching line."""
        step = self.spacing + 2 * self.width
        starts = (self.start + number * step for number in range(self.number))
        return tuple((at, at + self.width, at + 2 * self.width) for at in starts)


def span(number: int, width: Fraction, spacing: Fraction) -> Fraction:
    """From the first stitching line to the last fold, on the finished panel."""
    return (number - 1) * spacing + width


def fit_finished(
    finished: Fraction, width: Fraction, spacing: Fraction, margin: Fraction = Fraction(0)
) -> int:
    """The most tucks that fit a finished panel with ``margin`` plain on either side."""
    return max(0, math.floor((finished - 2 * margin - width) / spacing) + 1)


def fit_flat(flat: Fraction, width: Fraction, spacing: Fraction, margin: Fraction = Fraction(0)) -> int:
    """The most tucks that fit a flat panel, counting what they take up themselves."""
    return max(0, math.floor((flat - 2 * margin - width + spacing) / (spacing + 2 * width)))


def tucks(asked: Asked) -> Draft:
    """``style``, ``width``, and ``gap`` or ``fold_to_fold``; ``number``, or else as many as fit.

    ``finished`` or ``flat`` width of the panel; ``margin`` plain at the sides; ``turning``; ``panels`` alike.
    """
    style = asked.choice("style", STYLES, "pin")
    width = asked.measure("width")
    spacing = _spacing(asked, style, width)
    number = asked.count("number") if asked.has("number") else None
    finished = asked.measure("finished") if asked.has("finished") else None
    flat = asked.measure("flat") if asked.has("flat") else None
    margin = asked.measure("margin", least="0 in") if asked.has("margin") else None
    turning = asked.measure("turning", ("0 in", "0 cm"), least="0 in")
    panels = asked.count("panels", 1)
    if finished is not None and flat is not None:
        asked.wrong("flat", "finished and flat are both given.", "Give one; the other follows from it.")
    if number is None and finished is None and flat is None:
        asked.wrong(
            "number", "number is missing.", "Give number:, or finished: or flat: to see how many fit."
        )
    asked.settle()

    least = margin or Fraction(0)
    fits = number
    if number is None:
        fits = (
            fit_flat(flat - 2 * turning, width, spacing, least)
            if flat is not None
            else fit_finished(finished or width, width, spacing, least)
        )
    count = fits or 0
    if finished is None:
        finished = span(count, width, spacing) + 2 * least
        if flat is not None:
            finished = flat - 2 * turning - 2 * width * count
    room = finished - span(count, width, spacing) - 2 * least
    if not count or room < 0 or count > MOST:
        _say_it_does_not_fit(asked, count, finished, width, spacing, least)
    asked.settle()
    start = margin if margin is not None else (finished - span(count, width, spacing)) / 2
    made = Tucks(count, width, spacing, finished, start)
    return _draft(asked, made, style, turning, panels, counted=number is None)


def _spacing(asked: Asked, style: str, width: Fraction) -> Fraction:
    """Fold to fold, from whichever is stated; blind and growth tucks touch unless it says otherwise."""
    if asked.has("fold_to_fold") and asked.has("gap"):
        asked.wrong("gap", "gap and fold_to_fold are both given.", "Give one; the other follows from it.")
    if asked.has("fold_to_fold"):
        return asked.measure("fold_to_fold")
    if asked.has("gap"):
        return width + asked.measure("gap", least="0 in")
    if style not in ("blind", "growth"):
        hint = "Give gap: (plain cloth that shows between two tucks) or fold_to_fold: (one fold to the next)."
        asked.wrong("gap", "The spacing is missing.", hint)
    return width


def _say_it_does_not_fit(
    asked: Asked, count: int, finished: Fraction, width: Fraction, spacing: Fraction, margin: Fraction
) -> None:
    metric = asked.metric
    if count > MOST:
        asked.wrong("number", f"{count} tucks are too many for one line.", f"Expected at most {MOST}.")
        return
    if finished <= 0:
        asked.wrong("flat", f"{count} tucks take up all of the cloth.", "Give fewer tucks, or a wider flat.")
        return
    needs = said(span(max(1, count), width, spacing) + 2 * margin, metric)
    tucks_word = "tuck needs" if max(1, count) == 1 else "tucks need"
    asked.wrong(
        "number",
        f"{max(1, count)} {tucks_word} {needs}; the finished panel is {said(finished, metric)}.",
        "Give fewer or narrower tucks, a smaller margin, or a wider panel.",
    )


def _draft(asked: Asked, made: Tucks, style: str, turning: Fraction, panels: int, counted: bool) -> Draft:
    metric, count = asked.metric, made.number
    flat = made.flat + 2 * turning
    growth = style == "growth"
    draft = asked.draft(f"{style.capitalize()} tucks")
    across = "long" if growth else "wide"
    times = f"{panels} panels, each " if panels > 1 else ""
    draft.cut = (
        f"Cut {times}{to_cut(flat, metric)} {across} before tucking, "
        f"for {shown(made.finished, metric)} finished"
    )
    word = "tuck" if count == 1 else "tucks"
    sentences = []
    if counted:
        sentences.append(f"{count} {word} fit.")
    sentences.append(
        f"{count} {word} × 2 × {said(made.width, metric)} = {said(made.taken_up, metric)} taken up; "
        f"{said(made.finished, metric)} finished + {said(made.taken_up, metric)} = {said(made.flat, metric)}"
        + (f", and 2 × {said(turning, metric)} for the seams: {said(flat, metric)}." if turning else ".")
    )
    if count > 1:
        sentences.append(_spacing_words(made, metric))
    draft.formula = " ".join(sentences)
    draft.number("Tucks", count, str(count))
    draft.number("Taken up", made.taken_up, shown(made.taken_up, metric))
    draft.number("Flat", flat, to_cut(flat, metric))
    draft.number("Finished", made.finished, shown(made.finished, metric))
    draft.number("Fold to fold", made.spacing, shown(made.spacing, metric))
    if made.gap >= 0:
        draft.number("Gap", made.gap, shown(made.gap, metric))
    else:
        draft.caution(
            "Each tuck laps over the stitching of the next: it is thick, and must be stitched in order."
        )
    for number, (first, fold, second) in enumerate(made.lines, 1):
        first, fold, second = first + turning, fold + turning, second + turning
        text = f"fold at {shown(fold, metric)}; stitch at {shown(first, metric)} and {shown(second, metric)}"
        draft.number(f"Tuck {number}", fold, text)
    if growth:
        draft.note(
            f"Let out, the tucks give back {shown(made.taken_up, metric)}; stitch them so that they come out."
        )
    if not turning:
        draft.note("Seam allowances are not counted: give turning for them.")
    if panels > 1:
        draft.number("All panels", flat * panels, to_cut(flat * panels, metric))
    draft.figure = tucks_figure(made, turning, metric)
    draft.need(flat * panels, only_named=True)
    return draft


def _spacing_words(made: Tucks, metric: bool) -> str:
    both = f"{said(made.spacing, metric)} fold to fold"
    if made.gap > 0:
        gap = said(made.gap, metric)
        return f"They stand {both}, with a gap of {gap} between a fold and the next stitching."
    if made.gap == 0:
        return f"They stand {both} and touch: each fold lies on the next stitching."
    return f"They stand {both} and lap by {said(-made.gap, metric)}."


def tucks_figure(made: Tucks, turning: Fraction, metric: bool) -> Figure:
    """The flat cloth with every fold and stitching line, and the panel as it is when tucked, to one scale."""
    flat = made.flat + 2 * turning
    plan = Plan(flat / 640)
    px = plan.pixel
    nought, high = Fraction(0), 84 * px
    top = 16 * px
    plan.word("label start", nought, 11 * px, f"Flat, {shown(flat, metric)}")
    plan.box("cloth", nought, top, flat, high)
    if turning:
        plan.line("seam", turning, top, turning, top + high)
        plan.line("seam", flat - turning, top, flat - turning, top + high)
    label_end = -px
    for number, (first, fold, second) in enumerate(made.lines, 1):
        plan.box("tuck", first + turning, top, second - first, high)
        plan.line("stitch", first + turning, top, first + turning, top + high)
        plan.line("fold", fold + turning, top, fold + turning, top + high)
        plan.line("stitch", second + turning, top, second + turning, top + high)
        # Figures stand under the folds while there is room for them.
        if fold + turning - 9 * px > label_end:
            plan.word("label middle", fold + turning, top + high + 13 * px, str(number))
            label_end = fold + turning + 9 * px
    below = top + high + 36 * px
    plan.word("label start", nought, below - 5 * px, f"Tucked, {shown(made.finished, metric)}")
    plan.box("cloth", nought, below, made.finished + 2 * turning, high)
    for number in range(made.number):
        at = turning + made.start + number * made.spacing
        plan.box("tuck", at, below, made.width, high)
        plan.line("stitch", at, below, at, below + high)
        plan.line("fold", at + made.width, below, at + made.width, below + high)
    foot = below + high + 18 * px
    plan.scale_bar(foot, flat / 4, metric)
    word = "tuck" if made.number == 1 else "tucks"
    title = f"{made.number} {word} on the flat cloth and when tucked, to scale"
    return plan.figure("tucks", title, flat, foot + 4 * px)
