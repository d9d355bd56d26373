"""Linings and supports: mostly a bodice opened out and seen from the inside."""

from __future__ import annotations

from collections.abc import Callable, Mapping

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
    Stroke,
    clipped,
    hatch,
    path,
    ring,
    stitches,
    ticks,
)
from inperiod.drawing.terms.figures import DRESS_ARMHOLE, DRESS_TIP, FRONT_NECK, whole

FOOT = 84.0
SIDE_SEAM = Path((24, 42)).bend((27, 62), (26, FOOT))
HALF = (
    Path((CENTRE, 14))
    .bend((44, 14), (41, 11))
    .to((31, 16))
    .curve((31, 26), (29, 38), (24, 42))
    .curve((18, 38), (17, 28), (17, 17))
    .to((10, 13))
    .bend((10, 26), (4, 32))
    .to((4, FOOT), (CENTRE, FOOT))
)
INSIDE = whole(HALF)
LINING = (
    Path((CENTRE, 17.6))
    .bend((44.6, 17.6), (42, 15))
    .to((34.4, 18.8))
    .curve((34.4, 30), (32, 40), (24.4, 46))
    .curve((15.4, 41), (13.6, 30), (13.6, 19.4))
    .bend((12.6, 28), (7.4, 33.4))
    .to((7.4, FOOT - 3.4), (CENTRE, FOOT - 3.4))
)


def _inside(*, toned: bool = True) -> Drawing:
    """The opened bodice: fronts outside, back in the middle, the armholes between."""
    return (TINT(INSIDE) if toned else LINE(INSIDE)) + FAINT(
        path((CENTRE, 14), (CENTRE, FOOT)), SIDE_SEAM, SIDE_SEAM.mirror()
    )


def unlined() -> Drawing:
    """One layer: the seams finished to be seen."""
    seams = [path((CENTRE, 15), (CENTRE, FOOT)), SIDE_SEAM, SIDE_SEAM.mirror()]
    over = [tick for seam in seams for tick in ticks(seam, 3.4, 5, 60)]
    return _inside() + LINE(seams, over)


def lined() -> Drawing:
    """Lining from edge to edge."""
    inner = whole(LINING)
    return _inside() + MASK(inner) + LINE(inner) + FAINT(hatch(inner, 45, 4))


def part_lined() -> Drawing:
    """Lining across the upper back and the shoulders only."""
    upper = [
        piece
        for piece in hatch(INSIDE, 45, 4)
        for piece in clipped(piece, path((0, 0), (96, 0), (96, 44), (0, 44)).close())
    ]
    edge = clipped(path((0, 44), (96, 44)), INSIDE)
    return _inside() + FAINT(upper) + LINE(edge)


def boned_bodice() -> Drawing:
    """Bones in casings on seams and darts."""
    made = _inside()
    for x, top in ((11.0, 46.0), (17.4, 50.0), (25.4, 46.0), (36.0, 40.0), (CENTRE, 38.0)):
        case = (
            path((x - 1.7, FOOT - 2), (x - 1.7, top + 1.6))
            .bend((x, top - 1.6), (x + 1.7, top + 1.6))
            .to((x + 1.7, FOOT - 2))
            .close()
        )
        sewn = [path((x - 2.6, y), (x + 2.6, y + 2)) for y in (top + 8, top + 20, top + 32) if y < FOOT - 6]
        cases = (case,) if x == CENTRE else (case, case.mirror())
        made += GROUND(cases) + LINE(sewn, [one.mirror() for one in sewn] if x != CENTRE else [])
    return made


def foundation_bodice() -> Drawing:
    """A fitted lining with its own hooks, the loose bodice mounted on it."""
    outer = (
        FRONT_NECK.reverse()
        .to(DRESS_TIP)
        .then(DRESS_ARMHOLE)
        .curve((27, 42), (26, 58), (35, 64))
        .to((CENTRE, 66))
    )
    inner = (
        Path((CENTRE, 22)).bend((42, 22), (38, 12.4)).to((31.4, 14)).curve((34.4, 20), (32.6, 27), (34, 31))
    )
    inner = inner.curve((35.4, 42), (37, 50), (37, 62)).to((CENTRE, 64))
    darts = [path((42.6, 63), (41.4, 44)), path((44.6, 63), (41.4, 44))]
    hooks = [path((46.4, y), (49.6, y)) for y in range(27, 62, 5)]
    made = (
        WASH(whole(outer))
        + DOTTED(whole(outer))
        + GROUND(whole(inner))
        + LINE.both(darts)
        + LINE(path((CENTRE, 22), (CENTRE, 64)), hooks)
    )
    return _larger(made)


def _larger(drawing: Drawing, factor: float = 1.36) -> Drawing:
    return tuple(Stroke(one.path.scale(factor, about=(CENTRE, 6)), one.pen) for one in drawing)


def interlined() -> Drawing:
    """Three layers, turned back one by one: lining, hidden canvas, cloth."""
    under = path((6, 8), (90, 8), (90, 88), (6, 88)).close()
    middle = path((6, 8), (68, 8), (68, 66), (6, 66)).close()
    top = path((6, 8), (46, 8), (46, 44), (6, 44)).close()
    return (
        TINT(under)
        + MASK(middle)
        + LINE(middle)
        + FAINT(hatch(middle, 0, 3.2), hatch(middle, 90, 3.2))
        + MASK(top)
        + LINE(top)
        + FAINT(hatch(top, 45, 4.4))
        + LINE(stitches(path((9, 8), (9, 88)), 2.6, 2))
    )


def net_foundation() -> Drawing:
    """An underbodice of net."""
    return _inside(toned=False) + FAINT(hatch(INSIDE, 45, 3.4), hatch(INSIDE, -45, 3.4)) + LINE(INSIDE)


def waist_stay() -> Drawing:
    """A firm band inside, held at the seams, hooked by itself."""
    band = path((2, 62), (94, 62), (94, 70), (2, 70)).close()
    crosses = []
    for x in (26.4, 48, 69.6):
        crosses += [path((x - 3, 62.8), (x + 3, 69.2)), path((x + 3, 62.8), (x - 3, 69.2))]
    hooks = [ring((4.4, 66), 1.3), ring((91.6, 66), 1.3)]
    return _inside() + GROUND(band) + LINE(crosses, hooks)


def underslip() -> Drawing:
    """A slip inside a sheer dress, joined at the shoulder."""
    outer = (
        FRONT_NECK.reverse()
        .to(DRESS_TIP)
        .then(DRESS_ARMHOLE)
        .then(Path((32.6, 30)).bend((30, 60), (22, 91)))
        .to((CENTRE, 91))
    )
    inner = (
        Path((CENTRE, 28))
        .bend((42, 28), (38.4, 20))
        .to((37.4, 10.6), (35, 11.2))
        .to((35.6, 22))
        .bend((35, 28), (33.4, 31))
    )
    inner = inner.bend((32, 60), (28, 82)).to((CENTRE, 82))
    return LINE(whole(outer)) + TINT(whole(inner))


def brassiere_built_in() -> Drawing:
    """Cups and band inside the garment."""
    outer = (
        Path((CENTRE, 40))
        .bend((38, 36), (32, 16))
        .to((26, 16))
        .bend((27, 34), (18, 42))
        .curve((22, 56), (25, 64), (24, 90))
        .to((CENTRE, 90))
    )
    cup = (
        Path((46.6, 44))
        .bend((38, 36), (31, 31))
        .curve((26, 40), (21, 44), (20.4, 47))
        .curve((22, 60), (40, 64), (46.6, 54))
        .close()
    )
    band = path((21, 55), (22.6, 64)).bend((36, 70), (CENTRE, 64))
    seam = Path((28, 38)).bend((33, 50), (40, 58))
    return (
        WASH(whole(outer))
        + FAINT(whole(outer))
        + GROUND(cup, cup.mirror())
        + LINE.both(band, stitches(seam, 2, 1.6))
    )


def steel_cage() -> Drawing:
    """Hoops of sprung steel hung on tapes from a band."""
    hoops = []
    levels = ((24.0, 16.0), (37.0, 24.0), (50.0, 31.0), (63.0, 36.0), (76.0, 39.0), (87.0, 41.0))
    for y, wide in levels:
        hoops.append(Path((CENTRE - wide, y)).bend((CENTRE, y + wide * 0.24), (CENTRE + wide, y)))
    behind = [
        Path((CENTRE - wide, y)).bend((CENTRE, y - wide * 0.16), (CENTRE + wide, y)) for y, wide in levels
    ]
    sides = Path((37, 10)).through(*((CENTRE - wide, y) for y, wide in levels))
    tapes = [Path((44, 11.4)).through((41, 36), (37, 66), (34, 90)), Path((CENTRE, 11.8)).to((CENTRE, 91))]
    band = Path((37, 6)).bend((CENTRE, 9), (59, 6)).to((59, 10)).bend((CENTRE, 13), (37, 10)).close()
    return FAINT(behind) + LINE(hoops) + LINE.both(sides, tapes[0]) + LINE(tapes[1]) + GROUND(band)


DRAWINGS: Mapping[str, Callable[[], Drawing]] = {
    "unlined": unlined,
    "lined": lined,
    "part-lined": part_lined,
    "boned-bodice": boned_bodice,
    "foundation-bodice": foundation_bodice,
    "interlined": interlined,
    "net-foundation": net_foundation,
    "waist-stay": waist_stay,
    "underslip": underslip,
    "brassiere-built-in": brassiere_built_in,
    "steel-cage": steel_cage,
}
