"""A flat as a picture of dots, for where no drawing of lines can go: cards shown where a page is shared."""

from __future__ import annotations

import io
from collections.abc import Iterable

from PIL import Image, ImageColor, ImageDraw

from inperiod.drawing.flats.drawn import Drawn
from inperiod.drawing.flats.ink import CLOTH, INK, PAPER
from inperiod.drawing.hand import Point

WIDTH, HEIGHT = 800, 420
"""Pixels of a card, in the proportions in which shared pages are shown."""

_MARGIN = 28
_LARGEST = 7.0
"""Pixels to a centimetre, so that a hat is not as large as a coat."""

_FINE = 2
"""Drawn so many times as large, and made smaller, for smooth lines."""

# Greys stand for tones between ink and paper until the end; the topmost three for the threads at the edge.
_PAPER, _CLOTH, _TINT, _FAINT, _INK = 252, 232, 222, 130, 0
_Stroke = tuple[tuple[Point, ...], int | None, int | None]
_THREADS = ((253, "#2b5880"), (254, "#94332a"), (255, "#b58f22"))


def card(flats: Iterable[Drawn]) -> bytes:
    """A PNG with the fronts of flats side by side, ink on paper, threads along its left edge."""
    drawn = list(flats)
    large = Image.new("L", (WIDTH * _FINE, HEIGHT * _FINE), _PAPER)
    pen = ImageDraw.Draw(large)
    room = (WIDTH - 2 * _MARGIN) / max(1, len(drawn))
    for at, one in enumerate(drawn):
        strokes = _strokes(one)
        xs, ys = zip(*(point for points, _, _ in strokes for point in points), strict=True)
        wide, high = max(xs) - min(xs), max(ys) - min(ys)
        scale = min(_LARGEST, (HEIGHT - 2 * _MARGIN) / high, 0.9 * room / wide)
        across = _MARGIN + room * (at + 0.5) - (min(xs) + wide / 2) * scale
        down = HEIGHT / 2 - (min(ys) + high / 2) * scale
        for points, fill, tone in strokes:
            _draw(
                pen,
                [((x * scale + across) * _FINE, (y * scale + down) * _FINE) for x, y in points],
                fill,
                tone,
            )
    picture = large.reduce(_FINE)
    edge = ImageDraw.Draw(picture)
    for at, (tone, _) in enumerate(_THREADS):
        edge.rectangle((at * 6, 0, at * 6 + 3, HEIGHT), fill=tone)
    picture.putpalette(_palette())
    written = io.BytesIO()
    picture.save(written, "PNG", compress_level=6)
    return written.getvalue()


def _strokes(drawn: Drawn) -> list[_Stroke]:
    """The front's lines as points, each with the tone it is filled with and the tone it is drawn in."""
    found: list[_Stroke] = []
    for mark in drawn.front.marks:
        hand = mark.stroke.pen
        if hand is CLOTH:
            fill: int | None = _CLOTH if drawn.pattern else _PAPER
        else:
            fill = {"ground": _PAPER, "tint": _TINT}.get(hand.fill)
        tone = (_FAINT if hand.faint or hand.dotted else _INK) if hand.line else None
        found.append((mark.stroke.path.points(6), fill, tone))
    return found


def _draw(pen: ImageDraw.ImageDraw, points: list[Point], fill: int | None, tone: int | None) -> None:
    if fill is not None and len(points) > 2:
        pen.polygon(points, fill=fill)
    if tone is not None and len(points) > 1:
        pen.line(points, fill=tone, width=round(1.6 * _FINE), joint="curve")


def _palette() -> list[int]:
    """The colour of every tone: from ink to paper, then the threads."""
    ink, paper = ImageColor.getrgb(INK), ImageColor.getrgb(PAPER)
    tones = [
        round(ink[part] + (paper[part] - ink[part]) * tone / _PAPER)
        for tone in range(_PAPER + 1)
        for part in range(3)
    ]
    return tones + [part for _, colour in _THREADS for part in ImageColor.getrgb(colour)[:3]]
