"""Plain geometry of lines: paths of straight and curved steps, and what lies along, beside and inside them.

Units are those of the view box, x to the right and y downwards. Angles are degrees, turning from x towards y.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise
from typing import Literal

from inperiod.drawing.marks import number

Point = tuple[float, float]
# A straight step is its end; a curved one two control points and its end (a cubic Bézier curve).
Step = tuple[Point] | tuple[Point, Point, Point]
Change = Callable[[Point], Point]

CENTRE = 48.0
SIZE = 96.0


@dataclass(frozen=True, slots=True)
class Path:
    """A line from ``start`` through ``steps``; ``closed`` goes straight back to the start."""

    start: Point
    steps: tuple[Step, ...] = ()
    closed: bool = False

    @property
    def end(self) -> Point:
        """Where the last step ends."""
        return self.steps[-1][-1] if self.steps else self.start

    def _on(self, steps: Sequence[Step]) -> Path:
        return Path(self.start, (*self.steps, *steps), self.closed)

    def to(self, *points: Point) -> Path:
        """On in straight lines through the points."""
        return self._on([(point,) for point in points])

    def through(self, *points: Point, ease: float = 1.0) -> Path:
        """On in one smooth curve through the points (Catmull–Rom; ``ease`` above 1 makes it rounder)."""
        return self._on(_smooth((self.end, *points), ease))

    def bend(self, control: Point, end: Point) -> Path:
        """On in one curve that leaves and arrives pointing at ``control`` (a quadratic Bézier curve)."""
        first, last = _towards(self.end, control, 2 / 3), _towards(end, control, 2 / 3)
        return self._on([(first, last, end)])

    def curve(self, first: Point, second: Point, end: Point) -> Path:
        """On in one cubic Bézier curve."""
        return self._on([(first, second, end)])

    def then(self, other: Path) -> Path:
        """On along the other path, by a straight step to its start where the two do not meet."""
        bridge: list[Step] = [] if _near(self.end, other.start) else [(other.start,)]
        return self._on([*bridge, *other.steps])

    def close(self) -> Path:
        """The same, closed."""
        return Path(self.start, self.steps, True)

    def reverse(self) -> Path:
        """The same line from its end to its start."""
        places = [self.start, *(step[-1] for step in self.steps)]
        steps: list[Step] = []
        for index in range(len(self.steps) - 1, -1, -1):
            step, back = self.steps[index], places[index]
            steps.append((step[1], step[0], back) if len(step) == 3 else (back,))
        return Path(self.end, tuple(steps), self.closed)

    def mapped(self, change: Change) -> Path:
        """The same line with every point moved by ``change``."""
        steps: list[Step] = [
            (change(step[0]), change(step[1]), change(step[2])) if len(step) == 3 else (change(step[0]),)
            for step in self.steps
        ]
        return Path(change(self.start), tuple(steps), self.closed)

    def mirror(self, axis: float = CENTRE) -> Path:
        """Its image on the other side of the upright line x = axis."""
        # Point by point, not by ``mapped``: half of all lines are such images.
        twice = 2 * axis
        steps: list[Step] = []
        for step in self.steps:
            if len(step) == 3:
                (ax, ay), (bx, by), (x, y) = step
                steps.append(((twice - ax, ay), (twice - bx, by), (twice - x, y)))
            else:
                ((x, y),) = step
                steps.append(((twice - x, y),))
        return Path((twice - self.start[0], self.start[1]), tuple(steps), self.closed)

    def move(self, across: float, down: float = 0.0) -> Path:
        """Moved."""
        return self.mapped(lambda point: (point[0] + across, point[1] + down))

    def scale(self, across: float, down: float | None = None, about: Point = (0.0, 0.0)) -> Path:
        """Larger or smaller about a point."""
        factor, (x, y) = across if down is None else down, about
        return self.mapped(lambda point: (x + (point[0] - x) * across, y + (point[1] - y) * factor))

    def turn(self, angle: float, about: Point = (0.0, 0.0)) -> Path:
        """Turned by an angle in degrees about a point."""
        cos, sin, (x, y) = math.cos(math.radians(angle)), math.sin(math.radians(angle)), about

        def turned(point: Point) -> Point:
            dx, dy = point[0] - x, point[1] - y
            return (x + dx * cos - dy * sin, y + dx * sin + dy * cos)

        return self.mapped(turned)

    def points(self, per: int = 10) -> tuple[Point, ...]:
        """The line as points, ``per`` to a curved step; the start again at the end where it is closed."""
        found = [self.start]
        for step in self.steps:
            if len(step) == 1:
                found.append(step[0])
            else:
                (ax, ay), ((bx, by), (cx, cy), (dx, dy)) = found[-1], step
                found += [
                    (p * ax + q * bx + r * cx + w * dx, p * ay + q * by + r * cy + w * dy)
                    for p, q, r, w in _shares(per)
                ]
        if self.closed and not _near(found[-1], self.start):
            found.append(self.start)
        return tuple(found)

    def d(self) -> str:
        """The path's data as SVG writes it."""
        parts = ["M" + _pair(self.start)]
        for step in self.steps:
            parts.append(("C" if len(step) == 3 else "L") + " ".join(map(_pair, step)))
        return "".join(parts) + ("Z" if self.closed else "")


def path(*points: Point) -> Path:
    """Straight lines through the points."""
    return Path(points[0]).to(*points[1:])


def smooth(*points: Point, ease: float = 1.0) -> Path:
    """One smooth curve through the points."""
    return Path(points[0]).through(*points[1:], ease=ease)


def ring(centre: Point, across: float, down: float | None = None) -> Path:
    """A circle or ellipse by its half axes, closed."""
    (x, y), rx, ry = centre, across, across if down is None else down
    k = 0.5523
    return Path(
        (x + rx, y),
        (
            ((x + rx, y + k * ry), (x + k * rx, y + ry), (x, y + ry)),
            ((x - k * rx, y + ry), (x - rx, y + k * ry), (x - rx, y)),
            ((x - rx, y - k * ry), (x - k * rx, y - ry), (x, y - ry)),
            ((x + k * rx, y - ry), (x + rx, y - k * ry), (x + rx, y)),
        ),
        True,
    )


def box(x: float, y: float, wide: float, high: float) -> Path:
    """An upright rectangle by its top left corner, closed."""
    return path((x, y), (x + wide, y), (x + wide, y + high), (x, y + high)).close()


# What lies along, beside and inside a line --------------------------------------------------------


def apart(a: Point, b: Point) -> float:
    """How far two points are from one another. By the plain formula, which gives the same last digit in every
    language; the library's own are each exact in another way."""
    across, down = a[0] - b[0], a[1] - b[1]
    return math.sqrt(across * across + down * down)


def length(line: Path) -> float:
    """How long the line is."""
    return _whole(_spans(line))


Span = tuple[Point, Point, float]
"""A straight piece of a line: its ends, and how long it is."""


def _spans(line: Path) -> list[Span]:
    return [(a, b, apart(a, b)) for a, b in pairwise(line.points())]


def _whole(spans: Sequence[Span]) -> float:
    gone = 0.0
    for _, _, span in spans:
        gone += span
    return gone


def at(line: Path, distance: float) -> tuple[Point, Point]:
    """The place so far along the line, and the direction (of length 1) in which the line goes there."""
    return _at(line.start, _spans(line), distance)


def _at(start: Point, spans: Sequence[Span], distance: float) -> tuple[Point, Point]:
    left = distance
    place, way = start, (1.0, 0.0)
    for a, b, span in spans:
        if span == 0:
            continue
        way = ((b[0] - a[0]) / span, (b[1] - a[1]) / span)
        if left <= span:
            return (a[0] + way[0] * left, a[1] + way[1] * left), way
        left, place = left - span, b
    return place, way


def evenly(line: Path, count: int, ends: bool = False) -> list[tuple[Point, Point]]:
    """``count`` places at equal distances, with directions; from end to end, or half a distance inside."""
    start, spans = line.start, _spans(line)
    whole = _whole(spans)
    if ends:
        return [_at(start, spans, whole * index / max(1, count - 1)) for index in range(count)]
    return [_at(start, spans, whole * (index + 0.5) / count) for index in range(count)]


def part(line: Path, begin: float, end: float) -> Path:
    """The piece of the line between two distances along it, as straight steps."""
    points, gone = [at(line, begin)[0]], 0.0
    for a, b in pairwise(line.points()):
        gone += apart(a, b)
        if begin < gone < end:
            points.append(b)
    return path(*points, at(line, end)[0])


def stitches(line: Path, long: float = 2.6, gap: float = 1.7) -> list[Path]:
    """A row of stitches along the line, evened out to begin and end with one."""
    whole = length(line)
    count = max(1, round((whole + gap) / (long + gap)))
    grow = whole / (count * long + (count - 1) * gap)
    begins = [index * (long + gap) * grow for index in range(count)]
    return [part(line, begin, begin + long * grow) for begin in begins]


def ticks(line: Path, long: float, every: float, lean: float = 90.0) -> list[Path]:
    """Short strokes standing on the line (to the right of its direction where ``long`` is positive)."""
    found = []
    for (x, y), (dx, dy) in evenly(line, max(1, round(length(line) / every))):
        cos, sin = math.cos(math.radians(lean)), math.sin(math.radians(lean))
        found.append(path((x, y), (x + long * (dx * cos - dy * sin), y + long * (dx * sin + dy * cos))))
    return found


def beside(line: Path, distance: float) -> Path:
    """A parallel line, to the right of its direction where ``distance`` is positive."""
    points = _distinct(line.points())
    found: list[Point] = []
    for index, (x, y) in enumerate(points):
        before, after = points[max(0, index - 1)], points[min(len(points) - 1, index + 1)]
        if line.closed and index in (0, len(points) - 1):
            before, after = points[-2], points[1]
        first, second = _way(before, (x, y)), _way((x, y), after)
        first, second = first or second or (1.0, 0.0), second or first or (1.0, 0.0)
        across, down = -(first[1] + second[1]) / 2, (first[0] + second[0]) / 2
        # At a corner the parallel lines meet further out; never more than twice as far.
        reach = distance / max(0.25, across * across + down * down)
        found.append((x + across * reach, y + down * reach))
    made = path(*found)
    return made.close() if line.closed else made


def waved(line: Path, high: float, count: int, shape: Literal["wave", "points", "scallops"]) -> Path:
    """The line as a wave about it, as points standing on it, or as scallops hanging to its right."""
    spans, found = _spans(line), Path(line.start)
    whole = _whole(spans)

    def place(index: float, rise: float) -> Point:
        (x, y), (dx, dy) = _at(line.start, spans, whole * index / count)
        return (x - dy * rise, y + dx * rise)

    if shape == "wave":
        knots = [
            place(index / 2, high * (1 if index % 4 == 1 else -1) * (index % 2))
            for index in range(2 * count + 1)
        ]
        return smooth(*knots)
    for index in range(count):
        if shape == "points":
            found = found.to(place(index + 0.5, high), place(index + 1, 0))
        else:
            # 4/3: a cubic curve whose controls stand that much higher reaches the height asked for.
            found = found.curve(
                place(index, high * 4 / 3), place(index + 1, high * 4 / 3), place(index + 1, 0)
            )
    return found


def hatch(area: Path, angle: float = 45.0, gap: float = 2.6) -> list[Path]:
    """Lines at an angle inside a closed line (even-odd where it crosses itself)."""
    cos, sin = math.cos(math.radians(angle)), math.sin(math.radians(angle))
    turned = [(x * cos + y * sin, y * cos - x * sin) for x, y in area.close().points()]
    low, high = min(y for _, y in turned), max(y for _, y in turned)
    found = []
    # Rows stand at whole multiples of the gap, so that two areas side by side are hatched alike.
    for row in range(math.ceil(low / gap), math.floor(high / gap) + 1):
        level = row * gap + 1e-6
        crossings = sorted(
            a[0] + (level - a[1]) * (b[0] - a[0]) / (b[1] - a[1])
            for a, b in pairwise(turned)
            if (a[1] <= level) != (b[1] <= level)
        )
        for left, right in zip(crossings[::2], crossings[1::2], strict=False):
            if right - left > 0.4:
                ends = ((left, level), (right, level))
                found.append(path(*((x * cos - y * sin, x * sin + y * cos) for x, y in ends)))
    return found


def inside(area: Path, point: Point) -> bool:
    """Whether the point lies inside the closed line (even-odd)."""
    x, y = point
    odd = False
    for (ax, ay), (bx, by) in pairwise(area.close().points()):
        if (ay <= y) != (by <= y) and x < ax + (y - ay) * (bx - ax) / (by - ay):
            odd = not odd
    return odd


def clipped(line: Path, area: Path, fine: float = 0.5) -> list[Path]:
    """The pieces of the line that lie inside the closed line, cut to within ``fine``."""
    whole = length(line)
    count = max(1, math.ceil(whole / fine))
    pieces: list[list[Point]] = [[]]
    for index in range(count + 1):
        place = at(line, whole * index / count)[0]
        if inside(area, place):
            pieces[-1].append(place)
        elif pieces[-1]:
            pieces.append([])
    return [path(*piece) for piece in pieces if len(piece) > 1]


# Small arithmetic ---------------------------------------------------------------------------------


def _pair(point: Point) -> str:
    return f"{number(point[0])} {number(point[1])}"


def _near(a: Point, b: Point) -> bool:
    return apart(a, b) < 1e-6


def _towards(a: Point, b: Point, share: float) -> Point:
    return (a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share)


def _way(a: Point, b: Point) -> Point | None:
    span = apart(a, b)
    return None if span == 0 else ((b[0] - a[0]) / span, (b[1] - a[1]) / span)


def _distinct(points: Sequence[Point]) -> list[Point]:
    return [point for index, point in enumerate(points) if index == 0 or not _near(point, points[index - 1])]


def _smooth(points: Sequence[Point], ease: float) -> tuple[Step, ...]:
    steps: list[Step] = []
    for index in range(len(points) - 1):
        a, b = points[index], points[index + 1]
        before, after = points[max(0, index - 1)], points[min(len(points) - 1, index + 2)]
        first = (a[0] + (b[0] - before[0]) * ease / 6, a[1] + (b[1] - before[1]) * ease / 6)
        second = (b[0] - (after[0] - a[0]) * ease / 6, b[1] - (after[1] - a[1]) * ease / 6)
        steps.append((first, second, b))
    return tuple(steps)


@lru_cache(maxsize=16)
def _shares(per: int) -> tuple[tuple[float, float, float, float], ...]:
    """What each of the four points of a cubic Bézier curve has in ``per`` places along it."""
    along = [(place / per, 1 - place / per) for place in range(1, per + 1)]
    return tuple([(s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t) for t, s in along])
