"""The silhouette of a garment on its figure, and the named places other parts hang on.

An ``Outline`` is the right half of a garment from the front: neck point, shoulder, armhole, side seam, hem.
A part asks it for a line *across* the body at some height, a line *down* it at some share of the breadth, or
the half breadth at a height; so what a part draws lies inside the garment by construction. Units as in
``figure``.
"""

from __future__ import annotations

import itertools
from bisect import bisect_left
from dataclasses import dataclass

from inperiod.drawing.flats.figure import LEVELS, Figure
from inperiod.drawing.flats.periods import SILHOUETTES
from inperiod.drawing.hand import Path, Point, smooth

CUTS: dict[str, float] = {
    "straight": 0.72,
    "hobble-cut": 0.8,
    "wrap-skirt": 0.85,
    "circular": 1.12,
    "umbrella": 1.15,
    "gathered": 1.08,
    "godet-skirt": 1.06,
    "divided": 1.05,
    "tiered": 1.1,
    "flounced": 1.06,
}
"""How much of the silhouette's spread below the hip each cut of skirt keeps; 1 where it is not named."""


@dataclass(frozen=True, slots=True)
class Outline:
    """``side`` runs down the right side from the underarm (or the waistband) to the hem; ``heights`` and
    ``halves`` are the same line as numbers. ``neck`` is where the neckline meets the shoulder, ``depth`` how
    far it comes down in front; ``waist`` is the height of the waist seam, None where there is none."""

    figure: Figure
    neck: Point
    shoulder: Point
    underarm: Point
    side: Path
    heights: tuple[float, ...]
    halves: tuple[float, ...]
    hem: float
    dip: float
    waist: float | None
    neckline: str = "round"
    depth: float = 0.0
    top: float = 0.0

    def half(self, y: float) -> float:
        """Half the breadth at a height, measured to the side seam; the nearest end beyond it."""
        at = bisect_left(self.heights, y)
        if at == 0:
            return self.halves[0]
        if at == len(self.heights):
            return self.halves[-1]
        low, high = self.heights[at - 1], self.heights[at]
        share = (y - low) / (high - low) if high > low else 0.0
        return self.halves[at - 1] + (self.halves[at] - self.halves[at - 1]) * share

    def across(self, y: float, dip: float | None = None) -> Path:
        """A line across the body from side to side, bent down in the middle as the body turns away."""
        half = self.half(y)
        bend = min(0.05 * half, 1.6) if dip is None else dip
        return Path((-half, y)).bend((0.0, y + 2 * bend), (half, y))

    def down(self, share: float, top: float, bottom: float, lean: float = 0.0) -> Path:
        """A line down the body at a share of its half breadth, ``lean`` more at the bottom."""
        places = [top + (bottom - top) * step / 3 for step in range(4)]
        return smooth(*((self.half(y) * (share + lean * step / 3), y) for step, y in enumerate(places)))

    def on_shoulder(self, x: float) -> float:
        """The height of the shoulder line at a distance from the middle."""
        neck, slope = self.figure.neck, self.figure.slope
        span = max(1.0, self.shoulder[0] - neck)
        return slope * max(0.0, x - neck) / span

    def armhole(self) -> Path:
        """From the shoulder down to the underarm."""
        (sx, sy), (ux, uy) = self.shoulder, self.underarm
        if self.neckline == "halter":
            return Path((sx, sy)).curve((sx + 0.6, sy + (uy - sy) * 0.5), (ux * 0.72, uy - 4.0), (ux, uy))
        if self.neckline == "off-shoulder":
            return Path((sx, sy)).bend((sx + 0.2, uy - 3.0), (ux, uy))
        return Path((sx, sy)).curve(
            (min(sx, ux) - 0.8, sy + (uy - sy) * 0.45), (min(sx, ux) - 0.9, uy - 2.2), (ux, uy)
        )

    def hem_line(self, inset: float = 0.0) -> Path:
        """The hem from the right side to the left, or a line so far above it."""
        y = self.hem - inset
        half = self.half(y)
        return Path((half, y)).bend((0.0, y + 2 * self.dip), (-half, y))


def profile(
    figure: Figure, silhouette: str, cut: str | None, waist: float | None, ease: float
) -> list[Point]:
    """Half breadths by height: the silhouette on that figure, spread below the hip as the cut spreads it.

    A raised or dropped waist seam moves the narrowest place of a waisted silhouette to itself.
    """
    breadths = SILHOUETTES[silhouette]
    hip = breadths[LEVELS.index("hip")]
    keep = CUTS.get(cut or "", 1.0)
    if silhouette in ("barrel", "hobble", "crinoline-bell", "s-bend") and keep < 1:
        keep = (keep + 1) / 2
    found = []
    for level, breadth in zip(LEVELS, breadths, strict=True):
        y, wide = figure.y(level), breadth
        if y > figure.y("hip"):
            wide = hip + (breadth - hip) * keep if breadth > hip else breadth
        if level == "waist":
            wide += (breadths[0] - breadth) * figure.straight if breadths[0] > breadth else 0.0
            if waist is not None and waist < y and silhouette not in ("loose", "a-line"):
                y = waist
        if waist is not None and waist > figure.y("waist") + 4 and level in ("waist", "high-hip"):
            # A seam at the hips leaves nothing drawn in above it.
            wide = max(min(wide, breadths[0] + 1.2), breadths[0] * 0.96)
        found.append((wide * figure.girth * ease, y))
    return found


def trimmed(points: list[Point], top: float, bottom: float) -> list[Point]:
    """The profile between two heights, with a point on each."""

    def at(y: float) -> Point:
        for (a, low), (b, high) in itertools.pairwise(points):
            if low <= y <= high:
                return (a + (b - a) * (y - low) / (high - low), y)
        return (points[-1][0], y) if y > points[-1][1] else (points[0][0], y)

    inner = [point for point in points if top + 1.5 < point[1] < bottom - 1.5]
    return [at(top), *inner, at(bottom)]


def sampled(side: Path) -> tuple[tuple[float, ...], tuple[float, ...]]:
    """Heights, ever growing, and half breadths along a side."""
    heights: list[float] = []
    halves: list[float] = []
    for x, y in side.points(4):
        if not heights or y > heights[-1]:
            heights.append(y)
            halves.append(x)
    return tuple(heights), tuple(halves)
