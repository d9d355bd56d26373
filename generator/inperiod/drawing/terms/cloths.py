"""Pieces of cloth that edges, trims, tucks and fastenings are shown on."""

from __future__ import annotations

import math

from inperiod.drawing.hand import FAINT, LINE, WASH, Drawing, Path, Point, box, path, waved


def torn(begin: Point, end: Point, high: float = 1.2, count: int = 5) -> Path:
    """A piece of cloth goes on beyond this edge."""
    return waved(path(begin, end), high, count, "wave")


def cloth(x: float, y: float, wide: float, high: float, torn_sides: str = "tlr") -> Drawing:
    """A toned piece of cloth; the sides named (t, b, l, r) are torn off, the others left to be drawn."""
    corners = {"t": ((x, y), (x + wide, y)), "r": ((x + wide, y), (x + wide, y + high))}
    corners |= {"b": ((x + wide, y + high), (x, y + high)), "l": ((x, y + high), (x, y))}
    outline: Path | None = None
    lines = []
    for side in "trbl":
        begin, end = corners[side]
        edge = (
            torn(begin, end, 0.9, round(math.dist(begin, end) / 16))
            if side in torn_sides
            else path(begin, end)
        )
        outline = edge if outline is None else outline.then(edge)
        if side in torn_sides:
            lines.append(edge)
    assert outline is not None
    return WASH(outline.close()) + FAINT(lines)


def band(y: float, high: float, left: float = 6.0, right: float = 90.0) -> Path:
    """A strip across the drawing."""
    return box(left, y, right - left, high)


def across(y: float, left: float = 6.0, right: float = 90.0) -> Path:
    """A line across the drawing."""
    return path((left, y), (right, y))


def rows(*levels: float, left: float = 6.0, right: float = 90.0) -> Drawing:
    """Lines across the drawing."""
    return LINE([across(y, left, right) for y in levels])


def two_edges(gap: float = 4.0) -> Drawing:
    """Two edges of cloth side by side."""
    half = (84 - gap) / 2
    left, right = cloth(6, 8, half, 80, "tbl"), cloth(90 - half, 8, half, 80, "tbr")
    return left + right + LINE(path((6 + half, 8), (6 + half, 88)), path((90 - half, 8), (90 - half, 88)))
