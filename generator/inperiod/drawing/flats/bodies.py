"""From a build, its record and a year to the outline of the garment and of its legs."""

from __future__ import annotations

from dataclasses import dataclass

from inperiod.drawing.flats.figure import Figure
from inperiod.drawing.flats.garments import Build
from inperiod.drawing.flats.outline import Outline, profile, sampled, trimmed
from inperiod.drawing.flats.periods import SILHOUETTES, Period, leg_width
from inperiod.drawing.flats.record import Choice
from inperiod.drawing.hand import Path, Point, smooth

# Heights of a hem: a level and how far towards the next named one, all of a standing figure.
LENGTHS: dict[str, tuple[str, float]] = {
    "train": ("floor", 0.0),
    "ground": ("floor", -0.5),
    "instep": ("floor", -4.5),
    "ankle": ("floor", -9.5),
    "above-ankle": ("floor", -15.0),
    "mid-calf": ("calf", 0.0),
    "below-knee": ("knee", 7.0),
    "knee": ("knee", 0.5),
    "above-knee": ("knee", -9.0),
    "handkerchief-uneven": ("calf", -4.0),
}

# Sleeves cut in one with the body, without a seam at the armhole, and how much lower they leave the side.
GROWN_ON: dict[str, float] = {"kimono": 4.5, "dolman": 11.0}

WAISTS: dict[str, tuple[str, float]] = {
    "natural": ("waist", 0.0),
    "raised": ("waist", -5.5),
    "low": ("hip", -4.0),
    "dropped-hip": ("hip", 3.5),
    "basque-point": ("waist", 0.0),
    "pouched": ("waist", 0.0),
    "yoked-waist": ("waist", 0.0),
}

# How far beyond the neck the opening meets the shoulder, and how deep it comes in front: centimetres of a
# woman's figure.
NECKS: dict[str, tuple[float, float]] = {
    "high": (0.0, 6.6),
    "jewel": (0.6, 8.2),
    "round": (1.6, 11.0),
    "square": (3.0, 15.0),
    "v": (1.0, 22.0),
    "sweetheart": (3.8, 18.5),
    "boat": (6.6, 6.2),
    "scoop": (3.8, 19.0),
    "cowl": (3.2, 14.5),
    "halter": (-1.6, 17.0),
    "surplice": (1.0, 25.0),
    "keyhole": (0.6, 8.2),
    "slit": (0.6, 8.2),
    "off-shoulder": (9.0, 17.0),
    "one-shoulder": (3.0, 11.6),
    "u": (3.0, 22.0),
    "henley": (1.0, 9.6),
}


@dataclass(frozen=True, slots=True)
class Legs:
    """The right leg, closed: from the top of the side to the hem, back up to the fork. ``free`` is the height
    above which another part hides them."""

    path: Path
    waist: float
    fork: float
    hem: float
    outer: float
    inner: float
    free: float

    def across(self, inset: float) -> Path:
        """A line across the leg so far above its hem."""
        y = self.hem - inset
        outer, inner = self._at(y)
        return Path((inner, y)).bend(((inner + outer) / 2, y + 1.2), (outer, y))

    def _at(self, y: float) -> tuple[float, float]:
        points = self.path.points(4)
        found = [
            a[0] + (b[0] - a[0]) * (y - a[1]) / (b[1] - a[1])
            for a, b in zip(points, (*points[1:], points[0]), strict=True)
            if (a[1] <= y) != (b[1] <= y)
        ]
        return (max(found), min(found)) if found else (self.outer, self.inner)


def level_of(figure: Figure, place: tuple[str, float]) -> float:
    """A level and an offset of a woman's figure, as a height of this one."""
    return figure.y(place[0]) + place[1] * figure.scale


def neck_of(figure: Figure, neckline: str, sleeve: str, shoulder: Point) -> tuple[Point, float]:
    """Where the neckline meets the shoulder, and its depth."""
    wide, depth = NECKS.get(neckline, NECKS["round"])
    size = figure.girth
    x = figure.neck + wide * size
    if sleeve == "strap":
        x = max(x, figure.neck + 3.4 * size)
        depth = max(depth, 15.5)
    x = min(x, shoulder[0] - 1.6)
    slope = figure.slope * max(0.0, x - figure.neck) / max(1.0, shoulder[0] - figure.neck)
    return (x, slope), depth * min(1.0, 0.35 + 0.65 * figure.levels["waist"] / 40)


def body_of(
    build: Build,
    figure: Figure,
    period: Period,
    *,
    silhouette: str,
    neckline: str,
    sleeve: str,
    waist: Choice,
    cut: str,
    length: str,
) -> Outline:
    """The outline of what is worn on the trunk, or of a skirt."""
    level = WAISTS.get(waist.id)
    seam = None if level is None else level_of(figure, level)
    silhouette = silhouette if silhouette in SILHOUETTES else "tubular"
    ease = build.ease
    if silhouette == "loose" and build.body not in ("skirt", "") and build.shape != "loose":
        silhouette, ease = "tubular", ease * 1.07  # A loose jacket or blouse is roomy, not spread.
    points = profile(figure, silhouette, cut or None, seam, ease)
    top = figure.y("underarm")
    shoulder_half = (period.shoulder if figure.name == "woman" else 17.0 * figure.girth) * min(
        1.06, build.ease
    )
    if figure.name in ("child", "infant"):
        shoulder_half = 13.8 * figure.girth / 0.78
    if sleeve in ("sleeveless", "strap"):
        shoulder_half -= 1.6 * figure.girth
    if sleeve == "strap":
        shoulder_half = figure.neck + 5.4 * figure.girth
    bottom = _bottom(build, figure, length)
    if build.skirt:
        top = seam if seam is not None else figure.y("waist")
    if sleeve in ("sleeveless", "strap"):
        top += 1.5 * figure.scale if not build.skirt else 0.0
    if sleeve in GROWN_ON and not build.skirt:
        top += GROWN_ON[sleeve] * figure.scale
    points = trimmed(points, top, bottom)
    side = smooth(*points)
    if waist.id == "pouched" and not build.skirt and seam is not None:
        side = _pouch(points, seam, figure)
    heights, halves = sampled(side)
    shoulder = (shoulder_half, figure.slope)
    neck, depth = neck_of(figure, neckline, sleeve, shoulder)
    if neckline == "off-shoulder":
        neck, shoulder = (points[0][0] - 1.2, top - 5.5), (points[0][0] - 0.4, top - 5.0)
    if neckline == "halter":
        neck = (neck[0], -0.6)
        shoulder = (neck[0] + 2.2 * figure.girth, neck[1] + 0.3)
    depth = min(depth, (seam or bottom) - 4.0)
    half = halves[-1]
    dip = min(0.04 * half, 2.2) + (0.4 if half > 30 else 0)
    return Outline(
        figure, neck, shoulder, points[0], side, heights, halves, bottom, dip, seam, neckline, depth, top
    )


def _bottom(build: Build, figure: Figure, length: str) -> float:
    if build.body == "brassiere":
        return figure.y("bust") + 6 * figure.scale
    if build.body == "skirt" or build.skirt:
        return level_of(figure, LENGTHS.get(length, LENGTHS["knee"]))
    return figure.y(build.body)


def _pouch(points: list[Point], seam: float, figure: Figure) -> Path:
    """A bodice that hangs over the waist before it is caught in."""
    s = figure.girth
    above = [point for point in points if point[1] < seam - 4]
    below = [point for point in points if point[1] > seam + 2]
    narrow = min(x for x, _ in points)
    fold = (above[-1][0] * 0.5 + narrow * 0.5 + 0.6 * s, seam - 1.6)
    path = smooth(*above, (above[-1][0] * 0.94, seam - 7), fold)
    path = path.curve((fold[0] - 0.6, seam - 0.2), (narrow + 0.4, seam - 0.4), (narrow, seam + 0.2))
    return path.through(*below) if below else path


def legs_of(
    build: Build, figure: Figure, year: float, outline: Outline | None, edge: str, wide: float
) -> Legs:
    """The right leg: by the build, the year and the recorded lower edge; ``wide`` is how many times as wide
    as an ordinary trouser leg."""
    s, size = figure.scale, figure.girth
    waist = figure.y("waist") - 1.0 * s
    fork = figure.y("crotch") + 2.0 * s
    hip = figure.y("hip")
    waist_half = (13.0 + 2.6 * figure.straight) * size
    hip_half = 18.2 * size
    kind = build.legs
    if kind == "trunk":
        hem = fork + (11.0 if year < 1924 else 7.5 if year < 1932 else 2.5) * s
        if edge == "short-skirt-leg":
            hem += 3.0 * s
        outer, inner = hip_half + 0.6 * s, 1.6 * s
    elif kind == "thigh":
        hem, outer, inner = figure.y("thigh") + 8 * s, 21.0 * size, 1.4
    elif kind == "knee":
        hem, outer, inner = figure.y("knee") - 4 * s, 21.5 * size, 2.2
    elif kind == "below-knee":
        hem, outer, inner = figure.y("knee") + 9 * s, 16.5 * size, 3.4
    else:
        width = leg_width(year) * s * wide
        hem = figure.y("floor") - 3.0 * s
        outer, inner = 1.8 + width, 1.8
    top = waist
    if outline is not None and build.body != "brassiere":
        # Below a bodice the leg begins where the bodice ends, or under its waist.
        top = outline.waist if build.body == "hip" and outline.waist is not None else outline.hem
        top = min(top, fork - 1.5)
        waist_half, hip_half = outline.half(top), max(hip_half, outline.half(hip) - 0.4)
        if build.body == "hip":
            # The blouse lies over the top of the legs, and hides it.
            waist_half, hip_half = waist_half - 0.4, outline.half(outline.hem) - 0.4
        if build.body == "crotch" and kind == "trunk":
            hip_half = outline.half(hip)
            outer = max(outer, hip_half)
            top = outline.hem
    side = [(waist_half, top)]
    if top < hip - 4:
        side += [((waist_half + hip_half) / 2 + 1.1 * s, (top + hip) / 2), (hip_half, hip)]
    elif top < hip + 4:
        side += [(hip_half, hip + 3)]
    if hem > hip + 30 * s:
        middle = (hip_half + outer) / 2 if outer > hip_half else hip_half * 0.45 + outer * 0.55
        side.append((middle, (hip + hem) / 2))
    side.append((outer, hem))
    right = smooth(*side)
    inside = right.bend(((inner + outer) / 2, hem + 1.4), (inner, hem))
    inside = inside.curve((inner, hem - (hem - fork) * 0.4), (0.9, fork + (hem - fork) * 0.25), (0.0, fork))
    return Legs(inside.to((0.0, top)).close(), top, fork, hem, outer, inner, top)
