"""The small charts beside an answer: a share with its interval, a strip of decades, plates per year.

As in the timeline, horizontal places are per cent and vertical ones pixels, and the browser draws the
same marks (``home.js``, ``plates.js``).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from markupsafe import Markup

from inperiod.drawing.marks import number, per_cent, tag
from inperiod.drawing.timeline_chart import scale_of

STRIP = 82
STRIP_FOOT = 24
STRIP_HEAD = 16
STRIP_FEW = 6
"""A strip has room for so many names and numbers; of more decades every second, third … is named."""
SHARE = 18
SHARE_FOOT = 14
SCALE_MARKS = (("0%", "start", "none"), ("20%", "middle", "20 %"), ("100%", "end", "all"))
HISTOGRAM = 72


@dataclass(frozen=True, slots=True)
class Strip:
    """One term over all decades. ``shares`` 0 to 1, None where nobody looked; ``window`` decimal years."""

    decades: tuple[int, ...]
    shares: tuple[float | None, ...]
    window: tuple[float | None, float | None]
    says: str


def draw_share(value: float, low: float, high: float, says: str) -> Markup:
    """A share, 0 to 1, as a point on a line from none to all, its interval, and the bounds of the words."""
    middle = SHARE / 2

    def x(share: float) -> str:
        return number(100 * share) + "%"

    def tick(share: float) -> Markup:
        return tag(
            "line",
            {"x1": x(share), "x2": x(share), "y1": middle - 5, "y2": middle + 5, "class": "share-tick"},
        )

    return tag(
        "svg",
        {
            "class": "share-bar",
            "width": "100%",
            "height": SHARE + SHARE_FOOT,
            "role": "img",
            "aria-label": says,
        },
        tag("line", {"x1": "0%", "x2": "100%", "y1": middle, "y2": middle, "class": "share-line"}),
        tick(0.05),
        tick(0.20),
        tag(
            "rect",
            {
                "x": x(low),
                "y": middle - 4,
                "width": x(max(0.0, high - low)),
                "height": 8,
                "class": "share-interval",
            },
        ),
        tag("line", {"x1": x(value), "x2": x(value), "y1": 1, "y2": SHARE - 1, "class": "share-point"}),
        *(
            tag(
                "text",
                {"x": place, "y": SHARE + SHARE_FOOT - 3, "text-anchor": anchor, "class": "share-scale"},
                text,
            )
            for place, anchor, text in (
                ("0%", "start", "none"),
                ("20%", "middle", "20 %"),
                ("100%", "end", "all"),
            )
        ),
    )


def _scale_mark(place: str, anchor: str, text: str) -> Markup:
    where = {"x": place, "y": SHARE + SHARE_FOOT - 3, "text-anchor": anchor}
    return tag("text", {**where, "class": "share-scale"}, text)


def _box(name: str, height: float) -> dict[str, object]:
    return {"class": name, "width": "100%", "height": height}


def draw_strip(strip: Strip) -> Markup:
    """Columns of the share by decade with the window marked, hatched where nobody looked."""
    count = len(strip.decades)
    if not count:
        return Markup("")
    start, end = strip.decades[0], strip.decades[-1] + 10
    ground = STRIP - STRIP_FOOT
    scale = scale_of(strip.shares)
    parts: list[Markup] = []
    left, right = (
        min(100.0, max(0.0, 100 * ((edge if edge is not None else far) - start) / (end - start)))
        for edge, far in zip(strip.window, (start, end), strict=True)
    )
    for index, (decade, share) in enumerate(zip(strip.decades, strip.shares, strict=True)):
        x, width = number(100 * index / count + 0.4) + "%", number(100 / count - 0.8) + "%"
        middle = number(100 * (index + 0.5) / count) + "%"
        if share is None:
            box = {
                "x": x,
                "y": STRIP_HEAD,
                "width": width,
                "height": ground - STRIP_HEAD,
                "fill": "url(#unseen)",
            }
            parts.append(tag("rect", {**box, "class": "strip-unseen"}))
        elif share > 0:
            tall = max(2.0, (ground - STRIP_HEAD) * min(1.0, 100 * share / scale))
            box = {"x": x, "y": ground - tall, "width": width, "height": tall}
            parts.append(tag("rect", {**box, "class": "strip-share"}))
            value = {"x": middle, "y": ground - tall - 4, "class": "strip-value"}
            if count <= STRIP_FEW:
                parts.append(tag("text", value, per_cent(share)))
        if index % -(-count // STRIP_FEW) == 0:
            parts.append(tag("text", {"x": middle, "y": STRIP - 3, "class": "strip-decade"}, f"{decade}s"))
    parts.append(tag("line", {"x1": "0%", "x2": "100%", "y1": ground, "y2": ground, "class": "strip-line"}))
    if right > left:
        box = {"x": number(left) + "%", "y": ground + 2, "width": number(right - left) + "%", "height": 5}
        parts.append(tag("rect", {**box, "class": "strip-window"}))
    size = {**_box("strip", STRIP), "role": "img", "aria-label": strip.says}
    return tag("svg", size, *parts)


def draw_histogram(first_year: int, plates: Sequence[float], step: int = 1) -> Markup:
    """Plates per ``step`` years, a plate of several years shared out among them. Each column has two bars,
    all plates and, over it, those the filters leave; the browser lowers the second."""
    count = len(plates)
    most = max(plates, default=0.0) or 1.0
    parts: list[Markup] = []
    for index, value in enumerate(plates):
        tall = (HISTOGRAM - 4) * value / most
        place = {"x": number(100 * index / count + 10 / count) + "%", "width": number(80 / count) + "%"}
        box = {**place, "y": HISTOGRAM - tall, "height": tall}
        parts.append(tag("rect", {**box, "class": "years-all"}))
        parts.append(tag("rect", {**box, "class": "years-left"}))
    size = {**_box("years", HISTOGRAM), "aria-hidden": "true"}
    return tag(
        "svg",
        {**size, "data-first": str(first_year), "data-step": str(step), "data-most": number(most)},
        *parts,
    )
