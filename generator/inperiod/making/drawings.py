"""Figures of a making sheet as SVG: to scale, in the colour of the text around them, and legible unstyled."""

from __future__ import annotations

from markupsafe import Markup

from inperiod.drawing.marks import number, tag
from inperiod.making.values import Figure, Line, Shape

_LABEL = 11
_EDGE = 2
# What each look is drawn with, so that a drawing is legible where no stylesheet reaches it.
_DRAWN: dict[str, dict[str, object]] = {
    "cloth": {"fill": "currentColor", "fill-opacity": "0.04"},
    "tuck": {"fill": "currentColor", "fill-opacity": "0.12", "stroke": "none"},
    "piece": {"fill": "currentColor", "fill-opacity": "0.1"},
    "selvedge": {"stroke-width": 3},
    "fold": {"stroke-width": 2, "stroke-dasharray": "10 3"},
    "stitch": {"stroke-dasharray": "3 3"},
    "seam": {"stroke-opacity": "0.5", "stroke-dasharray": "1 3"},
    "torn": {"stroke-dasharray": "2 4"},
    "diagonal": {"stroke-width": 2},
}


def draw(figure: Figure) -> Markup:
    """The figure as one SVG element with its title."""
    across, down = figure.width * figure.scale + 2 * _EDGE, figure.height * figure.scale + 2 * _EDGE
    frame = {
        "xmlns": "http://www.w3.org/2000/svg",
        "class": f"making-figure making-{figure.name}",
        "viewBox": f"{-_EDGE} {-_EDGE} {number(across)} {number(down)}",
        "width": across,
        "height": down,
        "role": "img",
        "aria-label": figure.title,
    }
    common = {"fill": "none", "stroke": "currentColor", "stroke-width": 1, "font-size": _LABEL}
    shapes = (_shape(shape, figure.scale) for shape in figure.shapes)
    return tag("svg", frame, tag("title", {}, figure.title), tag("g", common, *shapes))


def _shape(shape: Shape, scale: float) -> Markup:
    at = [number(each * scale) for each in shape.at]
    if shape.form == "box":
        names = ("x", "y", "width", "height")
        return tag(
            "rect", {"class": shape.look, **dict(zip(names, at, strict=True)), **_DRAWN.get(shape.look, {})}
        )
    if shape.form == "line":
        names = ("x1", "y1", "x2", "y2")
        return tag(
            "line", {"class": shape.look, **dict(zip(names, at, strict=True)), **_DRAWN.get(shape.look, {})}
        )
    look, _, anchor = shape.look.partition(" ")
    drawn = {"fill": "currentColor", "stroke": "none", "text-anchor": anchor}
    return tag("text", {"class": look, "x": at[0], "y": at[1], **drawn}, shape.text)


def _drawn(line: Line, name: str) -> Markup | None:
    return draw(line.figure) if line.figure and line.figure.name == name else None


def draw_tucks(line: Line) -> Markup | None:
    """Where the tucks fall on the flat cloth; None for a line of another kind."""
    return _drawn(line, "tucks")


def draw_bias(line: Line) -> Markup | None:
    """Where the strips are cut; None for a line of another kind."""
    return _drawn(line, "bias")


def draw_lay_plan(line: Line) -> Markup | None:
    """How the pieces lie on the cloth; None for a line of another kind."""
    return _drawn(line, "lay-plan")
