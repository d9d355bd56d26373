"""Fabrics that a few lines can tell apart, on a swatch: weave, knit, mesh, pile or figure, much enlarged.

Cloths that differ by fibre or fineness alone (lawn from batiste, serge from any other twill) have no
drawing: a line cannot show it.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping

from inperiod.drawing.hand import (
    FAINT,
    GROUND,
    LINE,
    MASK,
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
from inperiod.drawing.terms.patterns import AREA, swatch

FIRST, LAST = 12.0, 84.0


def _across(*levels: float) -> list[Path]:
    return [path((FIRST, y), (LAST, y)) for y in levels]


def _down(*places: float) -> list[Path]:
    return [path((x, FIRST), (x, LAST)) for x in places]


def _steps(begin: float, step: float, end: float = LAST) -> list[float]:
    return [begin + step * i for i in range(int((end - begin) / step) + 1)]


def plain_weave() -> Drawing:
    """Threads over and under by turns."""
    cells = []
    for row in range(6):
        for column in range(6):
            x, y = 12 + 12.0 * column, 12 + 12.0 * row
            if (row + column) % 2:
                cells += [path((x + 2, y), (x + 2, y + 12)), path((x + 10, y), (x + 10, y + 12))]
            else:
                cells += [path((x, y + 2), (x + 12, y + 2)), path((x, y + 10), (x + 12, y + 10))]
    return swatch() + LINE(cells)


def gingham() -> Drawing:
    made = swatch()
    for i in range(4):
        for j in range(4):
            x, y = 12 + 18.0 * i, 12 + 18.0 * j
            made += LINE(hatch(box(x, y, 9, 9), 45, 1.9), hatch(box(x, y, 9, 9), -45, 1.9)) + FAINT(
                hatch(box(x + 9, y, 9, 9), 45, 2.2), hatch(box(x, y + 9, 9, 9), -45, 2.2)
            )
    return made


def zephyr() -> Drawing:
    """Fine stripes with a corded line between."""
    fine = _down(*[x + d for x in _steps(20, 16, 80) for d in (-3, 0, 3)])
    cord = _down(*[x + d for x in _steps(28, 16, 80) for d in (-0.9, 0.9)])
    return swatch() + FAINT(fine) + LINE(cord)


def pique() -> Drawing:
    """Raised cords."""
    cords = _down(*_steps(21, 9, 80))
    shade = [path((x + 1.4, y), (x + 3.6, y)) for x in _steps(21, 9, 80) for y in _steps(15, 4, 82)]
    return swatch() + LINE(cords) + FAINT(shade)


def dimity() -> Drawing:
    """Fine cords in stripes on a thin ground."""
    cords = _down(*[x + d for x in _steps(20, 14, 80) for d in (-1.1, 1.1)])
    return swatch() + FAINT(_across(*_steps(16, 4, 82))) + LINE(cords)


def twill() -> Drawing:
    return swatch() + LINE(hatch(AREA, -45, 6))


def gaberdine() -> Drawing:
    """A steep close twill."""
    return swatch() + LINE(hatch(AREA, -63, 4.4))


def drill() -> Drawing:
    """A stout twill: each warp thread lies over three of the weft, a step higher than its neighbour."""
    steps = []
    for column in range(12):
        for row in range(5):
            x, y = 15 + 6.0 * column, 24 + 16.0 * row - (column * 4) % 16
            if 15 < y < 81:
                steps.append(path((x, y), (x, min(81, y + 11))))
    return swatch() + LINE(steps)


def poplin() -> Drawing:
    """Fine cross ribs."""
    return swatch() + LINE(_across(*_steps(18, 6, 80))) + FAINT(_across(*_steps(19.6, 6, 80)))


def taffeta() -> Drawing:
    """Crisp: sharp folds, a slight cross rib."""
    folds = [
        path((30, 12), (24, 84)),
        path((46, 12), (58, 84)),
        path((70, 12), (66, 84)),
        path((30, 12), (38, 60)),
        path((70, 12), (76, 54)),
    ]
    return swatch() + FAINT(_across(*_steps(16, 4, 82))) + LINE(folds)


def crepe() -> Drawing:
    """Crinkled all over."""
    marks = []
    for row in range(9):
        for column in range(8):
            x, y = 15 + 9.0 * column + (4 if row % 2 else 0), 16 + 8.0 * row
            if x < 78:
                bend = (2.4, -2.0, 1.4, -2.6, 0.8)[(row * 3 + column * 2) % 5]
                turn = ((row * 5 + column * 7) % 6) * 30
                marks.append(smooth((x, y), (x + 2.4, y + bend), (x + 5, y)).turn(turn, (x + 2.4, y)))
    return swatch() + LINE(marks)


def crepe_marocain() -> Drawing:
    """A plain cross rib that wavers."""
    return swatch() + LINE(
        [waved(line, 0.9, 5 + i % 3, "wave") for i, line in enumerate(_across(*_steps(17, 6, 82)))]
    )


def flannel() -> Drawing:
    """A soft nap."""
    hairs = []
    for row in range(12):
        for column in range(11):
            x, y = 15 + 6.4 * column + (3 if row % 2 else 0), 16 + 5.8 * row
            if x < 81:
                hairs.append(path((x, y), (x + 1.6, y + (1.8, 2.6, 1.2)[(row + 2 * column) % 3])))
    return swatch() + LINE(hairs)


def tweed() -> Drawing:
    """Herring-bone and flecks."""
    lines = []
    for column in range(6):
        x = 12 + 12.0 * column
        for y in _steps(14, 5, 80):
            lines.append(path((x + 1, y + (4 if column % 2 else 0)), (x + 11, y + (0 if column % 2 else 4))))
    flecks = [ring((20 + i * 17 % 60, 20 + i * 29 % 60), 1.2) for i in range(9)]
    return swatch() + LINE(lines) + GROUND(flecks)


def velvet() -> Drawing:
    """Pile standing from the ground, in section, and its soft shade above."""
    ground = waved(path((12, 76), (84, 76)), 2, 9, "wave")
    pile = [path((14 + 2.4 * i, 74), (13.6 + 2.4 * i + (0.5 if i % 2 else -0.3), 58)) for i in range(30)]
    shade = [
        smooth((22, 18), (34, 26), (30, 44)),
        smooth((50, 16), (58, 30), (52, 48)),
        smooth((72, 20), (78, 32), (74, 46)),
    ]
    near = [line for one in shade for line in (one.move(3), one.move(6))]
    return swatch() + LINE(pile, ground) + FAINT(shade, near)


def satin() -> Drawing:
    """Long floats, and the gloss along a fold."""
    floats = []
    for column in range(12):
        for row in range(3):
            x, y = 15 + 6.0 * column, 14 + 25.0 * row + (column * 10) % 25
            floats.append(path((x, y), (x, min(82, y + 19))))
    return swatch() + LINE(floats)


def voile() -> Drawing:
    """Thin and open: single threads, wide apart."""
    return swatch() + FAINT(_across(*_steps(17, 6, 82)), _down(*_steps(17, 6, 82)))


def gauze() -> Drawing:
    """Warps crossing each other between the wefts."""
    made = swatch() + LINE(_across(*_steps(20, 14, 80)))
    for x in _steps(20, 14, 80):
        for dx in (-2.4, 2.4):
            line = Path((x + dx, 12))
            for i in range(6):
                line = line.curve(
                    (x + dx, 16 + 14 * i), (x - dx, 16 + 14 * i), (x - dx, min(84, 26 + 14 * i))
                )
                dx = -dx
            made += LINE(Path(line.start, line.steps[:5]))
    return made


def net_bobbin() -> Drawing:
    """Six-sided meshes."""
    sides = []
    for row in range(6):
        for column in range(5):
            x, y = 19 + 14.0 * column + (7 if row % 2 else 0), 18 + 12.0 * row
            if x < 80:
                sides.append(
                    path(
                        *(
                            (x + dx, y + dy)
                            for dx, dy in ((-7, -4), (0, -8), (7, -4), (7, 4), (0, 8), (-7, 4), (-7, -4))
                        )
                    ).scale(0.97, about=(x, y))
                )
    return LINE(sides)


def lace_cloth() -> Drawing:
    """Flowers on a net ground, over the whole cloth."""
    made = swatch() + FAINT(hatch(AREA, 45, 4), hatch(AREA, -45, 4))
    for x, y in ((30, 30), (66, 30), (48, 50), (30, 70), (66, 70)):
        made += GROUND(leaf(x, y, 15, 45), leaf(x, y, 15, 225)) + GROUND(flower(x, y, 9))
    return made


def _figure() -> list[Path]:
    outline = Path((48, 16)).curve((66, 26), (74, 44), (48, 80)).curve((22, 44), (30, 26), (48, 16)).close()
    return [outline, leaf(48, 70, 24, 235), leaf(48, 70, 24, 305)]


def brocade() -> Drawing:
    """The figure carried by extra threads, raised on the ground."""
    outline, left, right = _figure()
    inner = flower(48, 40, 15)
    return (
        swatch()
        + FAINT(hatch(AREA, 0, 4))
        + GROUND(outline, left, right)
        + LINE(hatch(outline, 90, 3.4))
        + GROUND(inner)
    )


def damask() -> Drawing:
    """Figure and ground in one colour: warp face against weft face."""
    figure = _figure()
    rows = [line for one in figure for line in hatch(one, 0, 4)]
    return swatch() + FAINT(hatch(AREA, 90, 4)) + MASK(figure) + WASH(figure) + FAINT(rows) + LINE(figure)


def jersey() -> Drawing:
    """Plain knitting."""
    found = []
    for row in range(9):
        for column in range(7):
            x, y = 15 + 9.6 * column, 14 + 7.6 * row
            half = (
                Path((x, y))
                .bend((x + 0.6, y + 5.4), (x + 4.6, y + 8.6))
                .bend((x + 5, y + 3.8), (x, y))
                .close()
            )
            found += [half, half.mirror(x + 4.6)]
    return swatch() + LINE(found)


def ribbed_knit() -> Drawing:
    """Ribs of plain and purl by turns."""
    found, purl = [], []
    for column in range(4):
        x = 15 + 18.0 * column
        for row in range(9):
            y = 14 + 7.6 * row
            half = (
                Path((x, y))
                .bend((x + 0.6, y + 5.4), (x + 4.6, y + 8.6))
                .bend((x + 5, y + 3.8), (x, y))
                .close()
            )
            found += [half, half.mirror(x + 4.6)]
            if column < 4:
                purl.append(Path((x + 10.6, y + 5)).bend((x + 13.4, y + 1.6), (x + 16, y + 5)))
    return swatch() + LINE(found) + FAINT([one for one in purl if one.end[0] < 84])


def elastic_knit() -> Drawing:
    """A covered rubber thread laid through the knitting."""
    rubber = [waved(line, 1.6, 9, "wave") for line in _across(26, 42, 58, 74)]
    cover = [path((14 + 4 * i, y - 3), (16.4 + 4 * i, y + 3)) for y in (26, 42, 58, 74) for i in range(17)]
    loops = [
        Path((15 + 8 * i, y + 12)).curve((14 + 8 * i, y + 4), (22 + 8 * i, y + 4), (21 + 8 * i, y + 12))
        for y in (10, 26, 42, 58)
        for i in range(8)
    ]
    return swatch() + FAINT(loops) + LINE(rubber, cover)


def towelling() -> Drawing:
    """Uncut loops."""
    loops = []
    for row in range(6):
        for column in range(8):
            x, y = 16 + 8.4 * column + (4 if row % 2 else 0), 24 + 11.0 * row
            if x < 80:
                loops.append(Path((x - 1, y)).curve((x - 5, y - 11), (x + 5, y - 11), (x + 1, y)))
    return swatch() + LINE(loops)


def seersucker() -> Drawing:
    """Puckered stripes between flat ones."""
    edges = _down(*[x + d for x in _steps(18, 18, 80) for d in (0, 8)])
    puckers = [
        smooth((x + 1, y), (x + 3.4, y - 2.4), (x + 5, y + 0.8), (x + 7.2, y - 0.8))
        for x in _steps(18, 18, 80)
        for y in _steps(17, 6, 82)
    ]
    return swatch() + FAINT(edges) + LINE(puckers)


def slubbed() -> Drawing:
    """Wefts with thick places."""
    made = swatch() + FAINT(_across(*_steps(18, 6, 80)))
    slubs = []
    for i in range(13):
        x, y = 16 + i * 23 % 54, 18 + 6.0 * (i * 5 % 11)
        slubs.append(Path((x, y)).bend((x + 6, y - 3), (x + 13, y)).bend((x + 6, y + 3), (x, y)).close())
    return made + GROUND(slubs)


def linen() -> Drawing:
    """Slightly uneven threads both ways."""
    ups = [
        smooth((x, 12), (x + (0.8, -0.7, 0.3)[i % 3], 40), (x + (-0.6, 0.5, 0.9)[i % 3], 84))
        for i, x in enumerate(_steps(16, 5, 82))
    ]
    rows = [
        smooth((12, y), (44, y + (0.8, -0.6, 0.3)[i % 3]), (84, y + (-0.5, 0.7, 0)[i % 3]))
        for i, y in enumerate(_steps(16, 5, 82))
    ]
    return swatch() + LINE(ups[::2], rows[::2]) + FAINT(ups[1::2], rows[1::2])


def tapestry_weave() -> Drawing:
    """Wefts turned back within their own areas, in steps and slits."""
    area = path((30, 24), (48, 24), (48, 36), (66, 36), (66, 60), (48, 60), (48, 72), (30, 72)).close()
    return (
        swatch()
        + FAINT(_across(*_steps(15, 3, 82)))
        + MASK(area)
        + TINT(area)
        + LINE(hatch(area, 0, 3))
        + FAINT(_down(*_steps(18, 6, 80)))
    )


DRAWINGS: Mapping[str, Callable[[], Drawing]] = {
    "duck": plain_weave,
    "gingham": gingham,
    "zephyr": zephyr,
    "pique": pique,
    "dimity": dimity,
    "twill": twill,
    "gaberdine": gaberdine,
    "drill": drill,
    "poplin": poplin,
    "taffeta": taffeta,
    "cotton-crepe": crepe,
    "crepe-marocain": crepe_marocain,
    "flannel": flannel,
    "tweed": tweed,
    "velvet": velvet,
    "satin": satin,
    "voile": voile,
    "gauze": gauze,
    "net-bobbin": net_bobbin,
    "lace-cloth": lace_cloth,
    "brocade": brocade,
    "damask": damask,
    "wool-jersey": jersey,
    "worsted-knit": ribbed_knit,
    "elastic-knit": elastic_knit,
    "towelling": towelling,
    "seersucker": seersucker,
    "shantung": slubbed,
    "linen": linen,
    "tapestry-weave": tapestry_weave,
}
