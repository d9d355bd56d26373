"""What a flat is drawn on: strokes of the one hand, kept with the part they belong to, and written as SVG.

Geometry is in centimetres; the markup is in whole millimetres, each step told from the one before, which
keeps a drawing small. Cloth is a closed line filled with the garment's own pattern.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field

from markupsafe import Markup

from inperiod.drawing.hand import FAINT, LINE, Path, Pen, Stroke
from inperiod.drawing.marks import tag

SCALE = 10.0
"""Units of the view box, millimetres, to a centimetre of the wearer."""

CLOTH = Pen(fill="tint", line=False)
"""Stands for the garment's own cloth: written as its pattern over the ground."""

INK, PAPER = "#21242c", "#f4f1e9"
"""The colours of a flat that is a file of its own: ink on a sheet, by day and by night."""


@dataclass(frozen=True, slots=True)
class Mark:
    """A stroke and the part of the garment it draws (``sleeve``, ``button`` …). Strokes of one ``group`` hide
    nothing of one another."""

    part: str
    stroke: Stroke
    group: int = 0


@dataclass
class Sheet:
    """Marks in the order they are drawn, for one flat while it is being made."""

    marks: list[Mark] = field(default_factory=list)

    def put(self, part: str, pen: Pen, *paths: Path | Iterable[Path]) -> None:
        """Draw paths as they are."""
        group = len(self.marks)
        self.marks += [Mark(part, stroke, group) for stroke in pen.strokes(*paths)]

    def both(self, part: str, pen: Pen, *paths: Path | Iterable[Path]) -> None:
        """Draw paths and their images on the other side of the body."""
        group = len(self.marks)
        self.marks += [Mark(part, stroke, group) for stroke in pen.both(*paths, axis=0)]

    def cloth(self, part: str, *areas: Path) -> None:
        """Lay cloth, without an edge."""
        self.put(part, CLOTH, areas)

    def faint(self, part: str, *paths: Path | Iterable[Path]) -> None:
        """Folds and gathers, on both sides."""
        self.both(part, FAINT, *paths)

    def line(self, part: str, *paths: Path | Iterable[Path]) -> None:
        """Seams and edges, on both sides."""
        self.both(part, LINE, *paths)


def whole(half: Path) -> Path:
    """A closed line from its right half, which runs from the middle of the body to the middle again."""
    return half.then(half.mirror(0).reverse()).close()


def data(path: Path, scale: float = SCALE, across: float = 0.0, down: float = 0.0) -> str:
    """The path as SVG writes it, in whole units, relative from step to step."""

    # Points are rounded in place: of a large site a tenth of the time goes into this.
    x, y = path.start
    x, y = round((x + across) * scale), round((y + down) * scale)
    parts = [f"M{x} {y}"]
    last = ""
    for step in path.steps:
        ex, ey = step[-1]
        ex, ey = round((ex + across) * scale), round((ey + down) * scale)
        if len(step) == 3:
            (ax, ay), (bx, by), _ = step
            ax, ay = round((ax + across) * scale), round((ay + down) * scale)
            bx, by = round((bx + across) * scale), round((by + down) * scale)
            letter, text = "c", f" {ax - x} {ay - y} {bx - x} {by - y} {ex - x} {ey - y}"
        elif ex == x and ey == y:
            continue
        else:
            letter, text = "l", f" {ex - x} {ey - y}"
        parts.append(text if letter == last else letter + text)
        last, x, y = letter, ex, ey
    if path.closed:
        parts.append("z")
    return _closer("".join(parts))


def _closer(data: str) -> str:
    """Without the spaces that a letter or a sign makes needless."""
    return data.replace(" -", "-").replace("c ", "c").replace("l ", "l")


def markup(
    marks: Iterable[Mark],
    pattern: str | None,
    *,
    scale: float = SCALE,
    across: float = 0.0,
) -> list[Markup]:
    """The marks as path elements in their order; neighbours of one pen that hide nothing share an element.
    Lines are as strong at any size."""
    found: list[Markup] = []
    pen: Pen | None = None
    group = 0
    written: list[str] = []

    def close() -> None:
        if pen is None or not written:
            return
        extra: dict[str, object] = {"vector-effect": "non-scaling-stroke"} if pen.line else {}
        if pen is CLOTH:
            fill = f"url(#{pattern})" if pattern else "Canvas"
            base: dict[str, object] = {"fill": fill, "stroke": "none"}
            if not pattern:
                base["class"] = "ground"
        else:
            base = dict(pen.attributes())
        found.append(tag("path", {**base, **extra, "d": "".join(written)}))

    for mark in marks:
        stroke = mark.stroke
        if stroke.pen is not pen or (pen.fill == "ground" and mark.group != group):
            close()
            pen, written, group = stroke.pen, [], mark.group
        written.append(data(stroke.path, scale, across))
    close()
    return found
