"""Tucks, pleats and gathers: the cloth from the front and, where a fold has one, its section below."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from itertools import pairwise

from inperiod.drawing.hand import (
    CENTRE,
    DOTTED,
    FAINT,
    GROUND,
    LINE,
    MASK,
    TINT,
    WASH,
    Drawing,
    Path,
    box,
    path,
    smooth,
    stitches,
    waved,
)
from inperiod.drawing.terms.cloths import across, cloth

TOP, LOW = 8.0, 64.0
SECTION = 80.0


def _down(x: float, top: float = TOP, low: float = LOW) -> Path:
    return path((x, top), (x, low))


def _front(*lines: Path | list[Path]) -> Drawing:
    return cloth(6, TOP, 84, LOW - TOP, "tblr") + LINE(*lines)


def pin_tucks() -> Drawing:
    xs = [15 + 11.0 * i for i in range(7)]
    return _front([_down(x) for x in xs], *[stitches(_down(x - 1.9), 2, 1.6) for x in xs]) + LINE(
        _ridges(xs, 2.2)
    )


def _ridges(xs: list[float], high: float) -> Path:
    """Narrow stitched folds in section."""
    line = Path((6, SECTION + 4))
    for x in xs:
        line = (
            line.to((x - 1.4, SECTION + 4), (x - 1.4, SECTION + 4 - high - 3))
            .bend((x, SECTION - high - 1), (x + 0.2, SECTION + 4 - high - 3))
            .to((x + 0.2, SECTION + 4))
        )
    return line.to((90, SECTION + 4))


def wide_tucks() -> Drawing:
    """Broad stitched folds with cloth between them."""
    folds = [26.0, 54.0, 82.0]
    shades = [box(x - 12, TOP + 0.6, 12, LOW - TOP - 1.2) for x in folds]
    simple = _laid(folds, 12)
    return (
        cloth(6, TOP, 84, LOW - TOP, "tblr")
        + WASH(shades)
        + LINE([_down(x) for x in folds], *[stitches(_down(x - 12), 2.6, 1.8) for x in folds])
        + LINE(simple)
    )


def _laid(edges: list[float], deep: float, base: float = SECTION + 6) -> Path:
    """Folds lying to the right in section, their outer edges at ``edges``."""
    line = Path((6, base))
    for x in edges:
        line = line.to((x - deep, base)).curve(
            (x - deep, base - 6), (x - deep + 1, base - 6), (x - deep + 3, base - 6)
        )
        line = (
            line.to((x - 1, base - 6))
            .curve((x + 1, base - 6), (x + 1, base - 3), (x - 1, base - 3))
            .to((x - deep + 2.4, base - 3))
            .bend((x - deep + 1, base - 3), (x - deep + 1, base))
        )
    return line.to((90, base))


def blind_tucks() -> Drawing:
    """Each fold covers the stitching of the next: no seam is seen."""
    folds = [20.0 + 14 * i for i in range(6)]
    return (
        _front([_down(x) for x in folds])
        + DOTTED([_down(x + 1.6) for x in folds[:-1]])
        + LINE(_laid(folds, 14))
    )


def growth_tucks() -> Drawing:
    """Tucks round the hem of a child's frock, in long easy stitches."""
    half = (
        path((CENTRE, 20), (42, 20), (40, 14), (34, 17), (22, 28))
        .to((28, 35), (34, 31))
        .to((34, 40), (16, 88), (CENTRE, 88))
    )
    outline = half.then(half.mirror().reverse()).close()
    waist = path((34, 40), (62, 40))
    hem, tucks = path((17.2, 84.6), (78.8, 84.6)), []
    for y in (66.0, 75.0):
        left = 34 - (y - 40) * 18 / 48
        tucks += [
            path((left, y), (96 - left, y)),
            *stitches(path((left + 0.8, y - 4), (95.2 - left, y - 4)), 3.4, 2.4),
        ]
    gathers = [path((x, 40.6), (48 + (x - 48) * 1.1, 48)) for x in (38, 43, 48, 53, 58)]
    return WASH(outline) + FAINT(outline, waist, gathers, stitches(hem, 2, 2)) + LINE(tucks)


def knife_pleats() -> Drawing:
    """All laid one way."""
    xs = [6 + 12.0 * i for i in range(8)]
    hem = Path((6, LOW))
    for x in xs[1:]:
        hem = hem.to((x, LOW + 2.6), (x - 2.6, LOW - 0.6)) if x < 90 else hem.to((x, LOW + 2.6))
    outline = path((6, TOP)).to((90, TOP)).to(hem.end).then(hem.reverse()).close()
    return (
        WASH(outline)
        + FAINT(across(TOP))
        + LINE(hem, [_down(x, TOP, LOW + 2.6) for x in xs[1:-1]], _z(xs[1:-1], 8))
    )


def _z(xs: list[float], deep: float) -> Path:
    """One-way pleats in section."""
    base = SECTION + 8
    line = Path((6, base - 6))
    for x in xs:
        line = line.to((x, base - 6), (x - deep, base - 3), (x + 0.6, base - 0.4))
        line = line.to((x + 2, base - 6))
    return line.to((90, base - 6))


def box_pleats() -> Drawing:
    """Pairs turned away from each other: raised panels."""
    panels = [(12.0, 28.0), (40.0, 56.0), (68.0, 84.0)]
    shapes = [path((a, TOP), (b, TOP), (b, LOW + 2), (a, LOW + 2)).close() for a, b in panels]
    line = Path((6, SECTION + 8))
    for a, b in panels:
        line = line.to((a + 6, SECTION + 8), (a, SECTION + 2), (b, SECTION + 2), (b - 6, SECTION + 8))
    line = line.to((90, SECTION + 8))
    return cloth(6, TOP, 84, LOW - TOP, "tb") + MASK(shapes) + TINT(shapes) + LINE(line)


def inverted_pleat() -> Drawing:
    """A pair turned towards each other, meeting on the surface."""
    line = path(
        (6, SECTION), (47.2, SECTION), (28, SECTION + 8), (68, SECTION + 8), (48.8, SECTION), (90, SECTION)
    )
    opening = path((40, LOW), (CENTRE, 26), (56, LOW)).close()
    return (
        cloth(6, TOP, 84, LOW - TOP, "tblr")
        + MASK(opening)
        + LINE(
            path((CENTRE, TOP), (CENTRE, 26)),
            path((40, LOW), (CENTRE, 26), (56, LOW)),
            path((CENTRE, LOW), (CENTRE, 40)),
            line,
        )
        + DOTTED(_down(28), _down(68))
    )


def accordion_pleats() -> Drawing:
    """Narrow and sharp, standing like bellows."""
    count = 10
    top = waved(path((20, TOP), (76, TOP)), 2.4, count, "points")
    low = waved(path((6, LOW), (90, LOW)), 5, count, "points")
    lines = []
    for i in range(2 * count + 1):
        a, b = 20 + 56 * i / (2 * count), 6 + 84 * i / (2 * count)
        lines.append(path((a, TOP + (2.4 if i % 2 else 0)), (b, LOW + (5 if i % 2 else 0))))
    outline = top.to((90, LOW)).then(low.reverse()).close()
    section = waved(path((6, SECTION - 2), (90, SECTION - 2)), 9, 10, "points")
    return WASH(outline) + LINE(top, low, lines[::2], section) + FAINT(lines[1::2])


def cartridge_pleats() -> Drawing:
    """Deep even tubes, sewn to the band by the edge of each fold."""
    xs = [10 + 10.9 * i for i in range(8)]
    band = box(6, TOP, 84, 12)
    tubes = []
    tops = [smooth((x - 4.4, 25), (x - 3.6, 21.6), (x, 20.6), (x + 3.6, 21.6), (x + 4.4, 25)) for x in xs]
    for x in xs:
        tubes += [path((x - 4.6, 26), (x - 5, LOW + 4)), path((x + 4.6, 26), (x + 5, LOW + 4))]
    sewn = stitches(across(27, 8, 88), 2.2, 3.2) + stitches(across(32, 8, 88), 2.2, 3.2)
    section = waved(path((6, SECTION + 6), (90, SECTION + 6)), 5, 8, "wave")
    ground = path((6, 20), (90, 20), (90, LOW + 4), (6, LOW + 4)).close()
    return WASH(ground) + LINE(tops, tubes, sewn) + GROUND(band) + LINE(section)


def _gathered_cloth(top: float, low: float = 88.0) -> Drawing:
    hem = waved(path((6, low), (90, low)), 2, 8, "scallops")
    outline = path((12, top), (84, top)).bend((88, (top + low) / 2), (90, low)).then(hem.reverse())
    outline = outline.bend((8, (top + low) / 2), (12, top)).close()
    return WASH(outline) + FAINT(hem)


def gathers() -> Drawing:
    """Drawn up and held in a band."""
    band = box(10, TOP, 76, 14)
    folds = []
    for i in range(17):
        x = 13 + 4.4 * i
        folds.append(smooth((x, 22.6), (x + (x - 48) * 0.04, 34), (x + (x - 48) * 0.1, 44 + i * 11 % 5 * 8)))
    return _gathered_cloth(22) + LINE(folds) + GROUND(band)


def _puckers(levels: list[float], every: float = 5.2) -> list[Path]:
    """Small folds between rows of gathering."""
    found = []
    for a, b in pairwise(levels):
        for i in range(int(76 / every)):
            x = 12 + every * (i + 0.5)
            found.append(smooth((x, a + 1.4), (x + 0.9, (a + b) / 2), (x - 0.2, b - 1.4)))
    return found


def shirring() -> Drawing:
    """Several rows of gathering on the surface, uneven."""
    levels = [20.0, 31.0, 42.0, 53.0]
    rows = [waved(across(y, 11, 85), 0.8, 9, "wave") for y in levels]
    above = [path((x, 8), (x + 0.6, 18.4)) for x in range(14, 86, 6)]
    below = [
        smooth((x, 54.4), (x + (x - 48) * 0.06, 66), (x + (x - 48) * 0.1, 72 + x * 7 % 13))
        for x in range(14, 86, 6)
    ]
    return _gathered_cloth(8) + LINE(rows, _puckers(levels), above, below)


def smocking() -> Drawing:
    """Folds caught together in lozenges by stitches."""
    rows, lines, knots = 5, [], []
    for i in range(13):
        x = 12 + 6 * i
        line = Path((x, 8))
        for r in range(rows):
            y = 18 + 9 * r
            line = line.to((x + (2.6 if (i + r) % 2 else -2.6), y))
            if (i + r) % 2 and i < 12:
                knots += [path((x + 1.4, y - 1), (x + 4.6, y - 1)), path((x + 1.4, y + 1), (x + 4.6, y + 1))]
        lines.append(line.bend((x, 66), (x + (x - 48) * 0.14, 84)))
    return _gathered_cloth(8) + FAINT(lines) + LINE(lines_within(lines), knots)


def lines_within(lines: list[Path]) -> list[Path]:
    """The smocked part of the folds."""
    return [Path(line.start, line.steps[:5]) for line in lines]


def darts() -> Drawing:
    """Wedges sewn to nothing at the point: marked on the flat, and sewn."""
    flat = path((20, 84), (30, 30), (40, 84))
    left = path((6, 12), (44, 12), (44, 84), (6, 84)).close()
    right = path((54, 12), (90, 12)).to((90, 84)).bend((74, 88), (56, 84)).close()
    sewn = path((73, 84.8), (73, 30))
    shade = [path((73.6, 32 + 8 * i), (76.4, 35 + 8 * i)) for i in range(6)]
    return (
        WASH(left, right)
        + FAINT(left, right)
        + LINE(stitches(flat, 2.6, 1.8))
        + DOTTED(path((30, 30), (30, 84)))
        + LINE(sewn, shade)
    )


def cross_tucks() -> Drawing:
    """In two directions, making squares."""
    xs, ys = (20.0, 39.0, 58.0, 77.0), (20.0, 39.0, 58.0, 77.0)
    made = cloth(8, 8, 80, 80, "tblr")
    for x in xs:
        made += LINE(path((x, 8), (x, 88)), stitches(path((x - 2.6, 8), (x - 2.6, 88)), 2, 1.8))
    for y in ys:
        strip = box(8, y - 2.6, 80, 2.6)
        made += (
            MASK(strip)
            + WASH(strip)
            + LINE(path((8, y), (88, y)), stitches(path((8, y - 2.6), (88, y - 2.6)), 2, 1.8))
        )
    return made


def ruffle_tier() -> Drawing:
    """Gathered strips one above another."""
    made: Drawing = ()
    for y in (62.0, 36.0, 10.0):
        hem = waved(path((6, y + 22), (90, y + 22)), 3.4, 8, "scallops")
        strip = path((8, y), (88, y), (90, y + 22)).then(hem.reverse()).close()
        folds = [
            path((x, y + 1), (x + (i % 3 - 1) * 0.8, y + 8 + i * 5 % 4))
            for i, x in enumerate(range(11, 88, 5))
        ]
        deep = [path((6 + 10.5 * i, y + 21), (7 + 10.2 * i, y + 13)) for i in range(1, 8)]
        made += MASK(strip) + TINT(strip) + LINE(folds, deep)
    return made


def gauging() -> Drawing:
    """Rows of stitches exactly under one another, so that the folds lie like organ pipes."""
    xs = [14 + 6.8 * i for i in range(11)]
    folds = [path((x, 8), (x, 58)).bend((x, 72), (x + (x - 48) * 0.12, 86)) for x in xs]
    sewn = [path((x - 4.9, y), (x - 1.9, y)) for x in xs[1:] for y in (18, 28, 38, 48)]
    return _gathered_cloth(8) + LINE(folds, sewn)


DRAWINGS: Mapping[str, Callable[[], Drawing]] = {
    "pin-tucks": pin_tucks,
    "wide-tucks": wide_tucks,
    "blind-tucks": blind_tucks,
    "growth-tucks": growth_tucks,
    "knife-pleats": knife_pleats,
    "box-pleats": box_pleats,
    "inverted-pleat": inverted_pleat,
    "accordion-pleats": accordion_pleats,
    "cartridge-pleats": cartridge_pleats,
    "gathers": gathers,
    "shirring": shirring,
    "smocking": smocking,
    "darts": darts,
    "cross-tucks": cross_tucks,
    "ruffle-tier": ruffle_tier,
    "gauging": gauging,
}
