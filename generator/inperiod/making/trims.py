"""Trimming: gathered edging and frills, insertion, braid, ribbon through beading, thread for hand work."""

from __future__ import annotations

import math
from collections.abc import Sequence
from fractions import Fraction

from inperiod.making.asking import Asked, Edge
from inperiod.making.drafts import Draft
from inperiod.making.measures import METRE, YARD, decimal, said, shown, to_cut

TURNING = ("1/2 in", "1 cm")


def gathered_length(edge: Fraction, fullness: Fraction, turning: Fraction, strips: int = 1) -> Fraction:
    """What to cut to gather on to ``edge``: edge × fullness, and two turnings for each strip.

    A strip joined in a ring loses two turnings in its join, an open one two at its ends; so every further
    strip costs two more. Gathered trim at 1.5 times its edge: common practice, no source.
    """
    return edge * fullness + strips * 2 * turning


def strips_across(edge: Fraction, fullness: Fraction, turning: Fraction, width: Fraction) -> int:
    """How many strips of that width, each losing two turnings, give edge × fullness."""
    return max(1, math.ceil(edge * fullness / (width - 2 * turning)))


def trim_length(
    edge: Fraction, turning: Fraction, mitre: Fraction = Fraction(0), mitres: int = 0
) -> Fraction:
    """Flat trim along ``edge``: a turning at either end or for the overlap, and ``mitre`` for each corner."""
    return edge + 2 * turning + mitres * mitre


def thread_length(line: Fraction, factor: Fraction, strands: int = 1) -> Fraction:
    """Thread for a line of hand work: its length × a factor tried out × the strands in the needle."""
    return line * factor * strands


def _total(edges: Sequence[Edge]) -> Fraction:
    return sum((edge.inches for edge in edges), Fraction(0))


def _per_edge(asked: Asked, draft: Draft, edges: Sequence[Edge], each: Sequence[Fraction]) -> None:
    if len(edges) > 1:
        for number, (edge, length) in enumerate(zip(edges, each, strict=True), 1):
            draft.number(edge.name or f"Length {number}", length, to_cut(length, asked.metric))


def frill(asked: Asked) -> Draft:
    """``edge`` (one or several), ``fullness``, ``turning``; ``open`` where the ends are not joined.

    Cut from cloth: ``depth`` finished, ``hem``, and ``cloth_width`` across which the strips are cut.
    """
    edges = asked.edges("edge")
    fullness = asked.number("fullness", "1.5", least="1", most="6")
    turning = asked.measure("turning", TURNING, least="0 in")
    depth = asked.measure("depth") if asked.has("depth") else Fraction(0)
    hem = asked.measure("hem", ("0 in", "0 cm"), least="0 in")
    width = asked.measure("cloth_width") if asked.has("cloth_width") else None
    is_open = asked.flag("open")
    metric = asked.metric
    if width is not None and not depth:
        asked.wrong("depth", "depth is missing: how deep the finished frill is.", "Expected depth: 2 in.")
    asked.settle()
    if width is not None and width <= 2 * turning:
        asked.wrong("cloth_width", "cloth_width is used up by the turnings.", "Expected a wider cloth.")
    asked.settle()

    strips = [strips_across(e.inches, fullness, turning, width) if width else 1 for e in edges]
    lengths = [gathered_length(e.inches, fullness, turning, n) for e, n in zip(edges, strips, strict=True)]
    edge, count, total = _total(edges), sum(strips), sum(lengths, Fraction(0))
    draft = asked.draft("Frill")
    summed = asked.sum_in_words(edges)
    start = summed if len(edges) == 1 else f"{summed}; {said(edge, metric)}"
    lost = said(2 * turning, metric)
    ends = ("join", "joins") if not is_open else ("ends", "joins and ends")
    allowed = f"{lost} for the {ends[0]}" if count == 1 else f"{count} × {lost} for the {ends[1]}"
    draft.formula = (
        f"{start} × {decimal(fullness)} = {said(edge * fullness, metric)}, and {allowed}: "
        f"{said(total, metric)}."
    )
    _per_edge(asked, draft, edges, lengths)
    draft.number("Together", total, to_cut(total, metric))
    deep = depth + hem + turning
    if width is None:
        draft.cut = f"Cut or buy {to_cut(total, metric)} of edging"
        draft.need(total)
    else:
        strip_words = "strip" if count == 1 else "strips"
        draft.cut = (
            f"Cut {count} {strip_words} {to_cut(deep, metric)} deep, across cloth {shown(width, metric)} wide"
        )
        draft.number("Cloth taken along the selvedge", count * deep, to_cut(count * deep, metric))
        draft.need(count * deep, only_named=True)
    if depth:
        draft.formula += (
            f" Depth {said(depth, metric)} + hem {said(hem, metric)} + turning {said(turning, metric)}"
            f" = {said(deep, metric)}."
        )
        draft.number("Depth to cut", deep, to_cut(deep, metric))
    draft.note("1.5 times the edge is light; 2 is fuller, 2.5 to 3 fullest.")
    return draft


_TRIMS = ("insertion", "beading", "ribbon", "braid", "tape", "piping", "lace")


def trimming(asked: Asked) -> Draft:
    """``of`` what, ``along`` one line or several, ``turning``, ``corners`` mitred in a ``width``.

    Ribbon through beading goes over and under, and takes up a little: ``take_up``; ``ties`` hang loose.
    """
    of = asked.choice("of", _TRIMS, "insertion")
    edges = asked.edges("along")
    corners = asked.count("corners", 0, least=0)
    width = asked.measure("width") if corners or asked.has("width") else Fraction(0)
    turning = asked.measure("turning", TURNING, least="0 in")
    take_up = asked.share("take_up")
    ties = asked.measure("ties", ("0 in", "0 cm"), least="0 in")
    metric = asked.metric
    asked.settle()

    edge, pieces = _total(edges), len(edges)
    lengths = [trim_length(e.inches * (1 + take_up), turning) for e in edges]
    mitred = corners * 2 * width
    total = sum(lengths, Fraction(0)) + mitred + ties
    draft = asked.draft(of.capitalize())
    parts = [asked.sum_in_words(edges)]
    if take_up:
        parts.append(f"{decimal(take_up * 100)} % taken up: {said(edge * (1 + take_up), metric)}")
    lost = said(2 * turning, metric)
    times = f"{pieces} × " if pieces > 1 else ""
    parts.append(f"and {times}{lost} for the ends or the overlap")
    if corners:
        mitre = said(2 * width, metric)
        parts.append(
            f"and {corners} × {mitre} for the {'mitre' if corners == 1 else 'mitres'}, twice the width each"
        )
    if ties:
        parts.append(f"and {said(ties, metric)} for the ties")
    draft.formula = f"{', '.join(parts)}: {said(total, metric)}."
    draft.cut = f"Cut or buy {to_cut(total, metric)} of {of}"
    _per_edge(asked, draft, edges, lengths)
    draft.number("Together", total, to_cut(total, metric))
    if of == "insertion" and width:
        draft.note(
            f"It sets {shown(width, metric)} into the cloth: take as much away, less the turnings beneath it."
        )
    draft.need(total)
    return draft


def stitching(asked: Asked) -> Draft:
    """``stitch`` by name, ``along`` one line or several; ``factor``, thread for a length of it, which the
    worker finds out; ``strands`` in the needle; ``skein``, the length bought at once.
    """
    stitch = asked.text("stitch", "hand work")
    edges = asked.edges("along")
    factor = asked.number("factor", least="1", most="40")
    strands = asked.count("strands", 1, most=12)
    skein = asked.measure("skein") if asked.has("skein") else None
    metric = asked.metric
    asked.settle()

    edge = _total(edges)
    total = thread_length(edge, factor, strands)
    draft = asked.draft(stitch[:1].upper() + stitch[1:])
    summed = asked.sum_in_words(edges)
    start = summed if len(edges) == 1 else f"{summed}; {said(edge, metric)}"
    strand_words = f" × {strands} strands" if strands > 1 else ""
    draft.formula = f"{start} × {decimal(factor)}{strand_words} = {said(total, metric)} of thread."
    large = f"{decimal(total / METRE, 1)} m ({decimal(total / YARD, 1)} yd)"
    draft.cut = f"About {large} of thread"
    draft.number("Thread", total, large)
    draft.note("The factor is the worker’s own: work 10 in, unpick it, and measure the thread.")
    if skein:
        skeins = math.ceil(total / skein)
        draft.formula += f" ÷ {decimal(skein / METRE, 1)} m in a skein: {skeins}."
        draft.need_count(skeins)
    else:
        draft.need(total)
    return draft
