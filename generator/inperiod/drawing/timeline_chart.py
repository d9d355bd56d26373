"""The chart of a timeline: style against decade.

Every style has a band. Its weight is the share of the plates looked at that show the style; its weave
tells how many documents were looked at, thin as net for one or two and full as cloth for a dozen. A
decade nobody looked at is hatched from top to bottom; a decade that was looked at, without the style,
is a bare thread. Horizontal places are per cent and vertical ones pixels, so that the chart fits any
width and its lettering keeps its size. The browser draws the same chart, mark for mark (``timeline.js``).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache

from markupsafe import Markup

from inperiod.drawing.marks import number, tag

TOP = 40
ROW = 66
FOOT = 12
BAND = 18.0
FEW = 8
"""More decades than these leave no room for words over every one."""

SCALES = (5, 10, 20, 25, 40, 50, 75, 100)
# The least number of documents looked at for each weave: net, canvas, twill, cloth.
WEAVES = (1, 3, 6, 12)


@dataclass(frozen=True, slots=True)
class Cell:
    """One style in one decade. ``share`` is 0 to 1 of the plates looked at, None where none was;
    ``href`` leads to the plates that show it; ``says`` is the cell in words."""

    share: float | None
    href: str | None
    says: str


@dataclass(frozen=True, slots=True)
class Row:
    """One style. Years are decimal; ``reach`` is how far beyond first and last it may have been in use
    (None: open); ``alone`` are sightings set aside."""

    label: str
    href: str | None
    note: str
    cells: tuple[Cell, ...]
    first: float | None = None
    last: float | None = None
    reach: tuple[float | None, float | None] = (None, None)
    not_before: float | None = None
    alone: tuple[float, ...] = ()


@dataclass(frozen=True, slots=True)
class Chart:
    """``decades`` are their first years, without a gap; ``looked`` the documents that lie mostly in each. One
    where that is 0 may still have been looked at, in documents that reach into it; one nobody looked at has
    no share in any row."""

    decades: tuple[int, ...]
    looked: tuple[int, ...]
    rows: tuple[Row, ...]
    name: str


def weave(documents: int) -> int:
    """0 where nobody looked, then 1 (net) to 4 (cloth)."""
    return sum(documents >= least for least in WEAVES)


def scale_of(shares: Sequence[float | None]) -> int:
    """The share, in per cent, of a band at full weight: the least round one that holds them all."""
    most = 100 * max((share for share in shares if share is not None), default=0.0)
    return next((scale for scale in SCALES if most <= scale), 100)


def scale_of_rows(rows: Sequence[Row]) -> int:
    """``scale_of`` every cell of the rows."""
    return scale_of([cell.share for row in rows for cell in row.cells])


@cache
def weaves() -> Markup:
    """The four weaves and the hatching of what nobody looked at, to be drawn once on a page."""

    def pattern(name: str, size: int, *strokes: Markup) -> Markup:
        ground = tag("rect", {"width": size, "height": size, "class": "weave-ground"})
        units = {"id": name, "width": size, "height": size, "patternUnits": "userSpaceOnUse"}
        return tag("pattern", units, ground, *strokes)

    def thread(path: str, heavy: bool = False) -> Markup:
        return tag("path", {"d": path, "class": "weave-thread weave-heavy" if heavy else "weave-thread"})

    return tag(
        "defs",
        {},
        pattern("weave-1", 9, thread("M0 4.5H9M4.5 0V9")),
        pattern("weave-2", 5, thread("M0 2.5H5M2.5 0V5")),
        pattern("weave-3", 6, thread("M-1.5 1.5L1.5 -1.5M0 6L6 0M4.5 7.5L7.5 4.5", heavy=True)),
        tag(
            "pattern",
            {"id": "unseen", "width": 8, "height": 8, "patternUnits": "userSpaceOnUse"},
            tag("path", {"d": "M-2 2L2 -2M0 8L8 0M6 10L10 6", "class": "unseen-stroke"}),
        ),
    )


def draw_timeline(chart: Chart) -> Markup:
    """The chart as an SVG element, its colours left to the stylesheet's classes."""
    if not chart.decades:
        return Markup("")
    height = TOP + ROW * len(chart.rows) + FOOT
    start, end = chart.decades[0], chart.decades[-1] + 10
    scale = scale_of_rows(chart.rows)
    places = _places(len(chart.decades))
    columns = [_column(chart, index, height, place) for index, place in enumerate(places)]
    rows = [
        _row(chart, row, TOP + ROW * index, scale, start, end, places) for index, row in enumerate(chart.rows)
    ]
    size = {"class": "chart", "width": "100%", "height": height, "role": "group", "aria-label": chart.name}
    return tag("svg", size, weaves(), *columns, *rows)


@dataclass(frozen=True, slots=True)
class _Place:
    """Where a decade stands, in per cent."""

    left: str
    middle: str
    right: str
    width: str


@cache
def _places(count: int) -> tuple[_Place, ...]:
    def at(decades: float) -> str:
        return number(100 * decades / count) + "%"

    return tuple(_Place(at(index), at(index + 0.5), at(index + 1), at(1)) for index in range(count))


def _per_cent(year: float, start: float, end: float) -> str:
    """Where a year stands, kept within the chart."""
    return number(min(100.0, max(0.0, 100 * (year - start) / (end - start)))) + "%"


def _column(chart: Chart, index: int, height: int, place: _Place) -> Markup:
    """A decade's ground: its name, what was looked at, and the hatching where that is nothing."""
    count, looked = len(chart.decades), chart.looked[index]
    unseen = looked == 0 and all(row.cells[index].share is None for row in chart.rows)
    word = "" if count > FEW else " document" if looked == 1 else " documents"
    ground = tag(
        "rect",
        {
            "x": place.left,
            "y": TOP - 4,
            "width": place.width,
            "height": height - TOP + 4,
            "class": "chart-unseen" if unseen else "chart-seen",
            "fill": "url(#unseen)" if unseen else "none",
        },
    )
    rule = tag("line", {"x1": place.left, "x2": place.left, "y1": 4, "y2": height, "class": "chart-rule"})
    named = []
    if index % (1 + count // (2 * FEW + 1)) == 0:
        named = [
            tag("text", {"x": place.middle, "y": 14, "class": "chart-decade"}, f"{chart.decades[index]}s"),
            tag(
                "text",
                {"x": place.middle, "y": 29, "class": "chart-looked"},
                str(looked),
                tag("tspan", {"class": "chart-word"}, word),
            ),
        ]
    return tag("g", {"class": "chart-column"}, ground, rule, *named)


def _row(
    chart: Chart, row: Row, top: int, scale: int, start: int, end: int, places: Sequence[_Place]
) -> Markup:
    """A style: its name above, then thread, bands and marks on one line."""
    middle = top + 44

    def at(year: float) -> str:
        return _per_cent(year, start, end)

    def line(left: float, right: float, name: str) -> Markup:
        return tag("line", {"x1": at(left), "x2": at(right), "y1": middle, "y2": middle, "class": name})

    label = tag("text", {"x": 4, "y": top + 17, "class": "chart-label"}, row.label)
    if row.href:
        label = tag("a", {"href": row.href}, label)
    parts = [
        tag("line", {"x1": "0%", "x2": "100%", "y1": top, "y2": top, "class": "chart-line"}),
        label,
        tag("text", {"x": "100%", "dx": -6, "y": top + 17, "class": "chart-note"}, row.note),
    ]
    for cell, place, looked in zip(row.cells, places, chart.looked, strict=True):
        parts += _cell(cell, place, looked, middle, scale)
    if row.first is not None and row.last is not None:
        earliest, latest = row.reach
        parts.append(line(start if earliest is None else earliest, row.first, "chart-reach"))
        parts.append(line(row.last, end if latest is None else latest, "chart-reach"))
        parts.append(line(row.first, row.last, "chart-range"))
        ends = (row.first,) if row.first == row.last else (row.first, row.last)
        parts += [tag("circle", {"cx": at(x), "cy": middle, "r": 3.5, "class": "chart-end"}) for x in ends]
    parts += [
        tag("circle", {"cx": at(x), "cy": middle, "r": 3, "class": "chart-alone"})
        for x in row.alone
        if start <= x <= end
    ]
    if row.not_before is not None and start <= row.not_before <= end:
        x = at(row.not_before)
        parts.append(
            tag("line", {"x1": x, "x2": x, "y1": middle - 20, "y2": middle + 20, "class": "chart-not-before"})
        )
        flag = tag("path", {"d": "M0 -20L8 -16L0 -12Z", "class": "chart-flag"})
        parts.append(tag("svg", {"x": x, "y": middle, "overflow": "visible", "width": 8, "height": 8}, flag))
    return tag("g", {"class": "chart-row"}, *parts)


def _cell(cell: Cell, place: _Place, looked: int, middle: int, scale: int) -> list[Markup]:
    """The band of one decade, a bare thread where it was looked for in vain, nothing where nobody looked."""
    if cell.share is None:
        return []
    if cell.share <= 0:
        ends = {"x1": place.left, "x2": place.right, "y1": middle, "y2": middle}
        return [tag("line", {**ends, "class": "chart-thread"})]
    half = max(1.0, BAND * min(1.0, 100 * cell.share / scale))
    kind = weave(max(1, looked))
    band = tag(
        "rect",
        {
            "x": place.left,
            "y": middle - half,
            "width": place.width,
            "height": 2 * half,
            "class": f"chart-band chart-weave-{kind}",
            "fill": None if kind == 4 else f"url(#weave-{kind})",
        },
    )
    box = {"x": place.left, "y": middle - 21, "width": place.width, "height": 42}
    whole = tag("rect", {**box, "class": "chart-cell", "fill": "none"})
    if not cell.href:
        return [tag("g", {"class": "chart-link"}, tag("title", {}, cell.says), whole, band)]
    return [tag("a", {"href": cell.href, "class": "chart-link", "aria-label": cell.says}, whole, band)]
