"""Patterns of cloth, on a swatch with pinked edges. Colours themselves are not drawn."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from inperiod.drawing.hand import (
    FAINT,
    GROUND,
    LINE,
    TINT,
    WASH,
    Drawing,
    Path,
    box,
    hatch,
    path,
    ring,
    smooth,
    waved,
)
from inperiod.drawing.terms.motifs import flower, leaf

AREA = box(12, 12, 72, 72)


def swatch() -> Drawing:
    """The piece of cloth."""
    corners = ((12.0, 12.0), (84.0, 12.0), (84.0, 84.0), (12.0, 84.0))
    edge: Path | None = None
    for begin, end in zip(corners, (*corners[1:], corners[0]), strict=True):
        side = waved(path(begin, end), -3, 12, "points")
        edge = side if edge is None else edge.then(side)
    assert edge is not None
    return WASH(edge.close()) + LINE(edge.close())


def checked() -> Drawing:
    made = swatch()
    for i in range(4):
        made += WASH(box(16 + 18 * i, 12, 9, 72), box(12, 16 + 18 * i, 72, 9))
        made += LINE([path((16 + 18 * i + d, 12), (16 + 18 * i + d, 84)) for d in (0, 9)])
        made += LINE([path((12, 16 + 18 * i + d), (84, 16 + 18 * i + d)) for d in (0, 9)])
    return made


def striped() -> Drawing:
    bars = [box(16 + 14.0 * i, 12, 7, 72) for i in range(5)]
    return swatch() + TINT(bars)


def tennis_stripe() -> Drawing:
    return swatch() + LINE([path((21 + 18.0 * i, 12), (21 + 18.0 * i, 84)) for i in range(4)])


def floral_print() -> Drawing:
    made = swatch()
    for x, y, far in ((28, 28, 11), (64, 34, 13), (36, 62, 13), (70, 70, 10)):
        made += LINE(leaf(x, y, far * 1.6, 20), leaf(x, y, far * 1.5, 160)) + GROUND(flower(x, y, far))
    return made + LINE(
        [ring(spot, 1.6) for spot in ((46, 20), (20, 46), (52, 52), (78, 52), (20, 78), (54, 80))]
    )


def spotted() -> Drawing:
    spots = [
        ring((20 + 14.0 * i + (7 if row % 2 else 0), 20 + 14.0 * row), 3.6)
        for row in range(5)
        for i in range(5)
        if i < 4 or row % 2 == 0
    ]
    return swatch() + GROUND(spots)


def contrast_two_colour() -> Drawing:
    """Two plain colours in distinct parts."""
    lower = path((12, 56), (84, 34), (84, 84), (12, 84)).close()
    return swatch() + LINE(path((12, 56), (84, 34))) + LINE(hatch(lower, 45, 3.4))


def jacquard_woven() -> Drawing:
    """A figure built of squares, as woven from cards."""
    cells = []
    figure = ("...##...", "..####..", ".##..##.", "##.##.##", "##.##.##", ".##..##.", "..####..", "...##...")
    for row, text in enumerate(figure):
        for column, mark in enumerate(text):
            if mark == "#":
                cells.append(box(16 + 8.0 * column, 16 + 8.0 * row, 8, 8))
    fill = [line for cell in cells for line in hatch(cell, 0, 2)]
    return swatch() + LINE(cells) + FAINT(fill)


def border_print() -> Drawing:
    """The pattern along one edge only."""
    made = swatch() + LINE(path((12, 52), (84, 52)), path((12, 80), (84, 80)))
    for i in range(3):
        made += GROUND(flower(24 + 24 * i, 66, 10))
    for i in range(2):
        made += LINE(leaf(36 + 24 * i, 74, 12, -90))
    return made + LINE([smooth((16 + 8 * i, 50), (18 + 8 * i, 46), (20 + 8 * i, 50)) for i in range(8)])


DRAWINGS: Mapping[str, Callable[[], Drawing]] = {
    "checked": checked,
    "striped": striped,
    "floral-print": floral_print,
    "spotted": spotted,
    "contrast-two-colour": contrast_two_colour,
    "jacquard-woven": jacquard_woven,
    "border-print": border_print,
    "tennis-stripe": tennis_stripe,
}
