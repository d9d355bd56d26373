"""A page of a catalogue that never was: flats set as cuts, with hatching, numbers, captions and prices.

It is for invented sources only, and says so on its face.
"""

from __future__ import annotations

import textwrap
from collections.abc import Sequence
from dataclasses import dataclass

from markupsafe import Markup

from inperiod.drawing.flats.drawn import View
from inperiod.drawing.flats.flat import Flat, printed
from inperiod.drawing.flats.ink import INK, PAPER, Mark, markup
from inperiod.drawing.hand import FAINT, Path, Stroke
from inperiod.drawing.marks import tag

WIDTH = 640
MARGIN = 36
HEAD = 92
LINE = 14.5
CAPTION_LINES = 5


@dataclass(frozen=True, slots=True)
class Entry:
    """One article of the page: its flat, its number, what is printed under it, its price; empty where the
    record gives none."""

    flat: Flat
    number: str
    caption: str
    price: str


def catalogue_page(firm: str, title: str, folio: str, entries: Sequence[Entry], notice: str) -> Markup:
    """The page as an SVG file of its own, ink on paper; ``notice`` says that it is invented."""
    columns = 1 if len(entries) == 1 else 2 if len(entries) in (2, 4) else 3
    wide = (WIDTH - 2 * MARGIN) / columns
    signs = _signs(wide)
    rows = [entries[at : at + columns] for at in range(0, len(entries), columns)]
    parts = [_heading(firm, title)]
    y, cut = float(HEAD), _cut_height(len(entries))
    patterns: dict[str, Markup] = {}
    for row in rows:
        lines = [wrapped(entry.caption, signs) for entry in row]
        # A short last row stands in the middle of the page.
        left = MARGIN + wide * (columns - len(row)) / 2
        for at, (entry, caption) in enumerate(zip(row, lines, strict=True)):
            if entry.flat.drawn.pattern:
                patterns[entry.flat.drawn.pattern] = printed(entry.flat.drawn.definition)
            x = left + wide * at
            if at:
                parts.append(_rule(x, y + 8, x, y + cut + 20))
            parts += _cut(entry, x, y, wide, cut)
            parts += _words(entry, caption, x + wide / 2, y + cut + 16)
        y += cut + 44 + LINE * max(len(caption) for caption in lines) + 16
    high = y + 40
    parts += _foot(folio, notice, high)
    frame = {
        "xmlns": "http://www.w3.org/2000/svg",
        "viewBox": f"0 0 {WIDTH} {round(high)}",
        "width": WIDTH,
        "height": round(high),
        "role": "img",
        "aria-label": f"{notice}: {firm}, {title}, {folio}",
    }
    ground = tag("rect", {"width": WIDTH, "height": round(high), "fill": PAPER})
    border = tag(
        "rect",
        {
            "x": 14,
            "y": 14,
            "width": WIDTH - 28,
            "height": round(high) - 28,
            "fill": "none",
            "stroke": INK,
            "stroke-width": 1.6,
        },
    )
    return tag(
        "svg",
        frame,
        tag("title", {}, f"{notice}: {firm}, {title}"),
        tag("defs", {}, *patterns.values()),
        ground,
        border,
        *parts,
    )


def page_size(captions: Sequence[str]) -> tuple[int, int]:
    """The size of a page with such captions, as ``catalogue_page`` makes it."""
    count = len(captions)
    columns = 1 if count == 1 else 2 if count in (2, 4) else 3
    signs = _signs((WIDTH - 2 * MARGIN) / columns)
    y, cut = float(HEAD), _cut_height(count)
    for at in range(0, count, columns):
        lines = max(len(wrapped(caption, signs)) for caption in captions[at : at + columns])
        y += cut + 44 + LINE * lines + 16
    return WIDTH, round(y + 40)


def _signs(wide: float) -> int:
    """How many signs of a caption go into a column; never a line too long to read."""
    return min(62, max(16, int(wide / 6.6)))


def _cut_height(count: int) -> float:
    """How high the cuts stand: the fewer articles, the larger, so that every page is an upright one."""
    return {1: 520.0, 2: 430.0, 3: 330.0}.get(count, 270.0)


def wrapped(text: str, signs: int) -> list[str]:
    """The text in lines of at most so many signs; what is too long ends in an ellipsis."""
    return textwrap.wrap(text, signs, max_lines=CAPTION_LINES, placeholder=" …") or [""]


def _heading(firm: str, title: str) -> Markup:
    return tag(
        "g",
        {"font-family": "Georgia, serif", "fill": INK, "text-anchor": "middle"},
        tag(
            "text",
            {"x": WIDTH / 2, "y": 50, "font-size": 21 if len(firm) < 28 else 15, "letter-spacing": 3},
            firm.upper()[:40],
        ),
        tag(
            "text",
            {"x": WIDTH / 2, "y": 71, "font-size": 13.5, "font-style": "italic"},
            textwrap.shorten(title, 84, placeholder=" …"),
        ),
        tag(
            "path",
            {
                "d": f"M{MARGIN} 82H{WIDTH - MARGIN}M{MARGIN} 85H{WIDTH - MARGIN}",
                "stroke": INK,
                "stroke-width": 0.8,
            },
        ),
    )


def _rule(x1: float, y1: float, x2: float, y2: float) -> Markup:
    return tag("path", {"d": f"M{x1:.1f} {y1:.1f}L{x2:.1f} {y2:.1f}", "stroke": INK, "stroke-width": 0.5})


def _cut(entry: Entry, x: float, y: float, wide: float, tall: float) -> list[Markup]:
    """The flat as a cut: its lines, its shaded side, its shadow."""
    drawn = entry.flat.drawn
    left, top, across, high = drawn.frame
    shading = markup((Mark("hatching", Stroke(path, FAINT)) for path in hatching(drawn.front)), None)
    weight = 1.35 * high * 10 / tall
    inner = tag(
        "g",
        {
            "fill": "none",
            "stroke": INK,
            "stroke-width": weight,
            "stroke-linecap": "round",
            "stroke-linejoin": "round",
        },
        entry.flat.printed,
        *map(printed, shading),
    )
    box = {
        "x": round(x + 6, 1),
        "y": round(y + 6, 1),
        "width": round(wide - 12, 1),
        "height": tall,
        "viewBox": f"{round(left * 10)} {round(top * 10)} {round(across * 10)} {round(high * 10)}",
    }
    return [tag("svg", box, inner)]


def hatching(view: View) -> list[Path]:
    """An engraver's shading: strokes along the right side of the cloth, and a shadow on the ground."""
    outline = view.outline
    if outline is None:
        return []
    found = []
    y = outline.top + 4.0
    while y < outline.hem - 1.5:
        half = outline.half(y)
        long = half * (0.3 if int(y * 10) % 3 else 0.22)
        found.append(Path((half - 0.3, y)).to((half - long, y + long * 0.42)))
        found.append(Path((-half + 0.3, y)).to((-half + long * 0.4, y + long * 0.16)))
        y += 1.5
    half = outline.halves[-1]
    if view.legs is None and outline.hem > outline.figure.y("hip"):
        for step in range(4):
            level = outline.hem + 2 * outline.dip + 1.0 + step * 1.1
            found.append(Path((-half * (0.7 - 0.15 * step), level)).to((half * (1.1 - 0.16 * step), level)))
    # Strokes that would run past the hem are shortened to it.
    return [path for path in found if path.end[1] < outline.hem - 0.4 or path.start[1] > outline.hem]


def _words(entry: Entry, caption: list[str], x: float, y: float) -> list[Markup]:
    face = {"font-family": "Georgia, serif", "fill": INK, "text-anchor": "middle", "x": round(x, 1)}
    number = f"No. {entry.number}" if entry.number else ""
    head = " · ".join(part for part in (number, entry.price) if part)
    found = [tag("text", {**face, "y": round(y, 1), "font-size": 13, "font-weight": "bold"}, head[:44])]
    for at, line in enumerate(caption):
        found.append(tag("text", {**face, "y": round(y + 17 + LINE * at, 1), "font-size": 12}, line))
    return found


def _foot(folio: str, notice: str, high: float) -> list[Markup]:
    face = {"font-family": "Georgia, serif", "fill": INK, "text-anchor": "middle", "x": WIDTH / 2}
    return [
        tag(
            "text",
            {**face, "y": round(high - 26), "font-size": 12.5, "font-style": "italic"},
            f"{notice}.  {folio}",
        ),
    ]
