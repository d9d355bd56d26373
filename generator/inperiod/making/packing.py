"""Laying rectangles on a strip of given width: bottom-left on a skyline, several orders tried, the best kept.

Everything is a whole number of steps (1/16 in or 1 mm), so that a lay is the same on every machine. A skyline
is the edge of what has been laid, as level stretches from left to right; each box goes where its far edge
comes lowest, and leftmost of equals. No box ever ends beyond the far edge so far plus its own length, so a
lay is never longer than the boxes one behind the other.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Box:
    """What is to be laid. ``across`` and ``along`` the cloth; ``turns`` if it may be turned a quarter.

    ``at_fold`` boxes keep one side on the fold, at the left edge.
    """

    piece: int
    across: int
    along: int
    turns: bool = False
    at_fold: bool = False


@dataclass(frozen=True, slots=True)
class Laid:
    """One box in its place: left and near edge, and its sides as it lies."""

    piece: int
    x: int
    y: int
    across: int
    along: int
    turned: bool


ORDERS: tuple[Callable[[Box], int], ...] = (
    lambda box: -box.along,
    lambda box: -box.across,
    lambda box: -box.across * box.along,
    lambda box: -max(box.across, box.along),
    lambda box: 0,
)


def length_of(laid: Sequence[Laid]) -> int:
    """How much cloth a lay takes."""
    return max((each.y + each.along for each in laid), default=0)


def lay(boxes: Sequence[Box], width: int) -> tuple[Laid, ...]:
    """The shortest lay found. Every box must fit ``width`` one way at least: else ``ValueError``."""
    tried = [_laid_in_order(sorted(boxes, key=order), width) for order in ORDERS]
    return min(tried, key=length_of)


def _laid_in_order(boxes: Sequence[Box], width: int) -> tuple[Laid, ...]:
    skyline = [(0, 0)]  # (where a level stretch begins, how far along it lies), left to right
    found = []
    for box in boxes:
        ways = [(box.across, box.along, False)]
        if box.turns:
            ways.append((box.along, box.across, True))
        best: tuple[int, int, int] | None = None
        place: Laid | None = None
        for rank, (across, along, turned) in enumerate(ways):
            for x, _ in skyline[:1] if box.at_fold else skyline:
                if x + across > width:
                    continue
                y = max(level for begin, level in _under(skyline, x, x + across, width))
                if best is None or (y + along, x, rank) < best:
                    best, place = (y + along, x, rank), Laid(box.piece, x, y, across, along, turned)
        if place is None:
            raise ValueError(f"piece {box.piece} is wider than the cloth")
        found.append(place)
        skyline = _raised(skyline, place, width)
    return tuple(found)


def _under(skyline: Sequence[tuple[int, int]], left: int, right: int, width: int) -> list[tuple[int, int]]:
    """The stretches that lie between left and right."""
    ends = [begin for begin, _ in skyline[1:]] + [width]
    return [each for each, end in zip(skyline, ends, strict=True) if each[0] < right and end > left]


def _raised(skyline: Sequence[tuple[int, int]], place: Laid, width: int) -> list[tuple[int, int]]:
    """The skyline with a box on it."""
    left, right, level = place.x, place.x + place.across, place.y + place.along
    before = [each for each in skyline if each[0] < left]
    after = [each for each in skyline if each[0] > right]
    at_right = _under(skyline, right, right + 1, width) if right < width else []
    return [*before, (left, level), *((right, each[1]) for each in at_right), *after]
