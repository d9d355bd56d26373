"""The hand every drawing is made with: paths, five pens and their fills, one line weight.

A drawing is a tuple of strokes; a stroke is a path and the pen it is drawn with. Paths are plain geometry, so
that tests can ask where a line goes; only ``svg`` and ``markup`` know about markup.

Line weight does not grow with the drawing (``non-scaling-stroke``): a cut printed small or large is cut by
the same hand. Stitches, hatching and ticks are lines of their own, and grow with the cloth they lie on.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

from markupsafe import Markup

from inperiod.drawing.marks import number, tag
from inperiod.drawing.paths import (
    CENTRE,
    SIZE,
    Change,
    Path,
    Point,
    Step,
    apart,
    at,
    beside,
    box,
    clipped,
    evenly,
    hatch,
    inside,
    length,
    part,
    path,
    ring,
    smooth,
    stitches,
    ticks,
    waved,
)

__all__ = [
    "CENTRE",
    "DOTTED",
    "FAINT",
    "FAINT_DOTTED",
    "FAINT_GROUND",
    "GROUND",
    "LINE",
    "MASK",
    "SIZE",
    "TINT",
    "WASH",
    "Change",
    "Drawing",
    "Fill",
    "Path",
    "Pen",
    "Point",
    "Step",
    "Stroke",
    "apart",
    "at",
    "beside",
    "box",
    "clipped",
    "evenly",
    "hatch",
    "inside",
    "length",
    "markup",
    "part",
    "path",
    "points_of",
    "ring",
    "smooth",
    "stitches",
    "svg",
    "ticks",
    "waved",
]

Fill = Literal["none", "ground", "tint"]


@dataclass(frozen=True, slots=True)
class Stroke:
    """A path and the pen that draws it."""

    path: Path
    pen: Pen


@dataclass(frozen=True, slots=True)
class Pen:
    """``faint`` for what is there to be recognised (body, floor), ``dotted`` for what lies behind. A fill of
    ``ground`` hides what was drawn before, ``tint`` lays a tone on it. ``line`` False: the fill alone."""

    faint: bool = False
    dotted: bool = False
    fill: Fill = "none"
    line: bool = True

    def __call__(self, *paths: Path | Iterable[Path]) -> tuple[Stroke, ...]:
        """Strokes of this pen, of paths and of lists of paths."""
        return self.strokes(*paths)

    def strokes(self, *paths: Path | Iterable[Path]) -> tuple[Stroke, ...]:
        """The same, by a name."""
        return tuple([Stroke(one, self) for one in _flat(paths)])

    def both(self, *paths: Path | Iterable[Path], axis: float = CENTRE) -> tuple[Stroke, ...]:
        """The same paths and their images on the other side of the centre line."""
        kept = _flat(paths)
        images = [one.mirror(axis) for one in kept]
        return tuple([Stroke(one, self) for one in [*kept, *images]])

    def attributes(self) -> dict[str, str]:
        """What the SVG element says of this pen beyond what all have in common."""
        found: dict[str, str] = {}
        if self.fill == "ground":
            # The page's own ground where no stylesheet says which.
            found = {"class": "ground", "fill": "Canvas"}
        elif self.fill == "tint":
            found = {"class": "tint", "fill": "currentColor", "fill-opacity": "0.1"}
        if not self.line:
            return {**found, "stroke": "none"}
        if self.faint:
            found["stroke-opacity"] = "0.45"
        if self.dotted:
            found["stroke-dasharray"] = "0.1 2.9"
        return found


LINE = Pen()
FAINT = Pen(faint=True)
DOTTED = Pen(dotted=True)
FAINT_DOTTED = Pen(faint=True, dotted=True)
GROUND = Pen(fill="ground")
FAINT_GROUND = Pen(faint=True, fill="ground")
TINT = Pen(fill="tint")
WASH = Pen(fill="tint", line=False)
MASK = Pen(fill="ground", line=False)

Drawing = tuple[Stroke, ...]


def points_of(drawing: Iterable[Stroke]) -> list[Point]:
    """Every point of a drawing, curves included, for asking where it goes."""
    return [point for stroke in drawing for point in stroke.path.points()]


def svg(
    drawing: Iterable[Stroke],
    title: str,
    *,
    name: str = "drawing",
    view: tuple[float, float, float, float] = (0.0, 0.0, SIZE, SIZE),
    weight: float = 1.25,
) -> Markup:
    """The drawing as an SVG element with its title read out; ``name`` is its class, ``weight`` the width of
    its lines in screen pixels. Its colour is that of the text around it."""
    lines = {
        "fill": "none",
        "stroke": "currentColor",
        "stroke-width": weight,
        "stroke-linecap": "round",
        "stroke-linejoin": "round",
    }
    frame = {
        "xmlns": "http://www.w3.org/2000/svg",
        "class": name,
        "viewBox": " ".join(map(number, view)),
        "width": view[2],
        "height": view[3],
        "role": "img",
        "aria-label": title,
    }
    return tag("svg", frame, tag("title", {}, title), tag("g", lines, *markup(drawing)))


def markup(drawing: Iterable[Stroke]) -> list[Markup]:
    """The strokes as path elements in their order, neighbours of one pen in one element."""
    found: list[Markup] = []
    pen: Pen | None = None
    data: list[str] = []
    for stroke in (*drawing, None):
        if pen is not None and (stroke is None or stroke.pen != pen or pen.fill != "none"):
            attributes = {**pen.attributes(), "vector-effect": "non-scaling-stroke", "d": "".join(data)}
            found.append(tag("path", attributes))
            data = []
        if stroke is not None:
            pen = stroke.pen
            data.append(stroke.path.d())
    return found


def _flat(paths: Iterable[Path | Iterable[Path]]) -> list[Path]:
    found: list[Path] = []
    for one in paths:
        if isinstance(one, Path):
            found.append(one)
        else:
            found += list(one)
    return found
