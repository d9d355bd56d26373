"""Sleeves, all on one shoulder and hanging arm; the bodice beside is faint."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from itertools import pairwise

from inperiod.drawing.hand import (
    DOTTED,
    FAINT,
    LINE,
    MASK,
    TINT,
    WASH,
    Drawing,
    Path,
    Point,
    at,
    path,
    ring,
    smooth,
)

NECK: Point = (74.0, 13.0)
TIP: Point = (47.0, 22.0)
UNDERARM: Point = (58.0, 45.0)
ARMHOLE = Path(TIP).curve((52.6, 28.0), (52.6, 38.0), UNDERARM)
AXIS = smooth((53.0, 32.0), (37.5, 58.0), (28.0, 82.0))
LONG = 59.0
RIGHT, FOOT = 92.0, 93.0

Profile = Iterable[tuple[float, float]]


def spot(along: float, out: float) -> Point:
    """A place by the arm: ``along`` from 0 at the shoulder to 1 at the wrist, ``out`` from its middle,
    positive away from the body."""
    (x, y), (dx, dy) = at(AXIS, max(0.0, along) * LONG)
    if along < 0 or along > 1:
        beyond = (along if along < 0 else along - 1) * LONG
        x, y = x + dx * beyond, y + dy * beyond
    return (x + dy * out, y - dx * out) if dy < 0 else (x - dy * out, y + dx * out)


def spots(profile: Profile) -> list[Point]:
    return [spot(along, out) for along, out in profile]


def arm() -> Drawing:
    """Neck, arm and hand."""
    outer = smooth(TIP, *spots(((0.1, 8.6), (0.3, 6.8), (0.5, 5.4), (0.7, 5.0), (1, 3.4))))
    inner = smooth(*spots(((0.2, -7), (0.34, -6.2), (0.5, -5), (0.7, -4.6), (1, -3.2))))
    hand = Path(spot(1, 3.4)).through(*spots(((1.06, 4.2), (1.15, 3), (1.19, 0.4), (1.13, -2.2), (1, -3.2))))
    neck = Path((75.4, 4.0)).bend((75.4, 11), NECK)
    return FAINT(outer, inner, hand, neck)


def bodice(armhole: Path = ARMHOLE, shoulder: Path | None = None) -> Drawing:
    """The part of a bodice beside the sleeve."""
    side = Path(UNDERARM).bend((60.6, 66), (60, FOOT))
    neck = Path((RIGHT, 25.0)).bend((77, 25), NECK)
    top = shoulder or path(NECK, TIP)
    cloth = neck.then(top).then(armhole).then(side).to((RIGHT, FOOT)).close()
    return WASH(cloth) + FAINT(neck, top, side)


def sleeve(outer: Profile, inner: Profile, bulge: float = 1.6, ease: float = 1.0) -> tuple[Path, Path]:
    """Outline of a set-in sleeve and its lower edge, which bulges a little towards the hand."""
    down = Path(TIP).through(*spots(outer), ease=ease)
    back = Path(UNDERARM).through(*spots(inner), ease=ease)
    edge = Path(down.end).bend(_hang(down.end, back.end, bulge), back.end)
    return down.then(edge).then(back.reverse()).then(ARMHOLE.reverse()).close(), edge


def _hang(a: Point, b: Point, bulge: float) -> Point:
    middle = ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
    (_, way) = at(AXIS, LONG)
    return (middle[0] + way[0] * bulge * 2, middle[1] + way[1] * bulge * 2)


def cloth(*pieces: Path) -> Drawing:
    """Cloth that hides the arm."""
    return tuple(stroke for piece in pieces for stroke in MASK(piece) + TINT(piece))


def _set_in(outer: Profile, inner: Profile, bulge: float = 1.6, ease: float = 1.0) -> Drawing:
    return arm() + bodice() + cloth(sleeve(outer, inner, bulge, ease)[0])


def across(along: float, out: float, into: float, bulge: float = 1.6) -> Path:
    """A line round the sleeve."""
    a, b = spot(along, out), spot(along, into)
    return Path(a).bend(_hang(a, b, bulge), b)


def folds(*ends: tuple[tuple[float, float], tuple[float, float]]) -> list[Path]:
    """Straight creases between places by the arm."""
    return [path(spot(*a), spot(*b)) for a, b in ends]


def sleeveless() -> Drawing:
    return arm() + bodice() + LINE(ARMHOLE, path(NECK, TIP))


def cap() -> Drawing:
    tip = spot(0.16, 10)
    over = Path(TIP).bend(spot(0.04, 10.6), tip)
    edge = Path(tip).bend(spot(0.22, -4), UNDERARM)
    return arm() + bodice() + cloth(over.then(edge).then(ARMHOLE.reverse()).close())


def short() -> Drawing:
    return _set_in([(0.12, 10), (0.3, 9)], [(0.3, -8.6)])


def elbow() -> Drawing:
    return _set_in([(0.12, 9.4), (0.3, 8), (0.52, 7)], [(0.34, -7.4), (0.52, -6.6)])


def three_quarter() -> Drawing:
    return _set_in([(0.12, 9.4), (0.4, 7.4), (0.76, 6.6)], [(0.34, -7.4), (0.5, -6.4), (0.76, -6)])


def long_fitted() -> Drawing:
    """Close to the arm, an elbow dart."""
    made = _set_in(
        [(0.1, 9), (0.3, 7.2), (0.5, 6), (0.72, 5.4), (1, 3.9)],
        [(0.3, -7), (0.5, -5.4), (0.72, -5), (1, -3.7)],
        0.8,
    )
    dart = [path(spot(0.5, 6), spot(0.51, 0.8)), path(spot(0.545, 5.9), spot(0.51, 0.8))]
    buttons = [ring(spot(u, 3.2), 0.7) for u in (0.84, 0.9, 0.96)]
    return made + LINE(dart, buttons)


def set_in_long() -> Drawing:
    return _set_in([(0.12, 10), (0.4, 8.6), (0.7, 7.8), (1, 6.6)], [(0.34, -8.4), (0.6, -7.4), (1, -6.2)])


def _cuff(out: float, into: float, begin: float = 0.92, end: float = 1.02) -> Path:
    upper, lower = across(begin, out, into, 0.8), across(end, out, into, 0.8)
    return upper.then(lower.reverse()).close()


def bishop() -> Drawing:
    """Modest above, full below, gathered into a cuff."""
    made = _set_in(
        [(0.12, 9.6), (0.4, 8.8), (0.7, 11.6), (0.86, 13.4), (0.95, 10), (0.93, 4.2)],
        [(0.34, -8), (0.64, -9.4), (0.84, -12.6), (0.95, -9.4), (0.93, -4.2)],
        0.4,
    )
    lines = folds(
        ((0.91, 2.8), (0.74, 6.6)),
        ((0.91, 0.6), (0.66, 1.4)),
        ((0.91, -2.4), (0.74, -5.6)),
        ((0.93, 4), (0.84, 9)),
        ((0.93, -3.8), (0.85, -8)),
    )
    return made + LINE(lines) + cloth(_cuff(4.2, -4.2))


def gigot() -> Drawing:
    """Very full above, close from the elbow, in one piece."""
    made = _set_in(
        [(-0.16, 16), (-0.01, 24), (0.22, 24), (0.43, 13), (0.54, 7), (0.72, 5.4), (1, 3.9)],
        [(0.3, -12), (0.46, -10), (0.56, -5.6), (0.72, -5), (1, -3.7)],
        0.6,
    )
    lines = [
        smooth((49.4, 25), spot(0.02, 11), spot(0.2, 14)),
        smooth((51.4, 29), spot(0.12, 5), spot(0.32, 8)),
        smooth((52, 34), spot(0.2, 0), spot(0.36, 1.4)),
        path(spot(0.52, 4), spot(0.36, 8)),
        path(spot(0.52, -3), spot(0.4, -5)),
    ]
    return made + LINE(lines)


def puff_short() -> Drawing:
    made = _set_in(
        [(-0.1, 13.4), (0.06, 18.4), (0.24, 16.6), (0.34, 8.6)], [(0.26, -13), (0.36, -11), (0.37, -7.8)], 0.8
    )
    lines = [
        smooth((49.6, 25.4), spot(0.02, 10), spot(0.12, 12)),
        smooth((51.6, 30), spot(0.12, 4.6), spot(0.2, 6)),
        smooth((52.2, 36), spot(0.2, -2), spot(0.25, -1)),
        path(spot(0.34, 6), spot(0.22, 10)),
        path(spot(0.35, 1.6), spot(0.24, 2.4)),
        path(spot(0.36, -4), spot(0.29, -7)),
    ]
    band = across(0.34, 8.6, -7.8, 0.8).then(across(0.42, 8.2, -7.4, 0.8).reverse()).close()
    return made + LINE(lines) + cloth(band)


def kimono() -> Drawing:
    """Cut in one with the body: no seam between."""
    over = Path(NECK).through((60, 17.6), TIP, *spots(((0.14, 12), (0.6, 10))), ease=0.8)
    under = Path((60, FOOT)).bend((60.4, 72), (59, 62)).curve((57.6, 53), (51, 55), spot(0.6, -9))
    neck = Path((RIGHT, 25.0)).bend((77, 25), NECK)
    edge = Path(over.end).bend(_hang(over.end, under.end, 1.6), under.end)
    piece = neck.then(over).then(edge).then(under.reverse()).to((RIGHT, FOOT)).close()
    return arm() + MASK(piece) + WASH(piece) + FAINT(neck) + LINE(over, edge, under)


def raglan() -> Drawing:
    """Joined by a slanting seam from neck to underarm."""
    seam = Path((76.4, 19)).curve((68, 25), (60, 34), UNDERARM)
    over = Path(NECK).through((60, 17.4), TIP, *spots(((0.14, 10), (0.5, 8), (1, 6.4))), ease=0.9)
    under = Path(UNDERARM).through(*spots(((0.36, -8), (0.62, -7), (1, -6))))
    edge = Path(over.end).bend(_hang(over.end, under.end, 1.4), under.end)
    piece = over.then(edge).then(under.reverse()).then(seam.reverse()).close()
    side = Path(UNDERARM).bend((60.6, 66), (60, FOOT))
    neck = Path((RIGHT, 25.0)).bend((79, 25), (76.4, 19))
    body = neck.then(seam).then(side).to((RIGHT, FOOT)).close()
    return arm() + WASH(body) + FAINT(neck, side) + cloth(piece)


def dolman() -> Drawing:
    """Very deep, from the waist, narrowing to the wrist."""
    over = Path(NECK).through((60, 17.4), TIP, *spots(((0.14, 11), (0.5, 8.4), (1, 4.6))), ease=0.9)
    waist = (61.0, 80.0)
    under = Path(waist).curve((58, 62), (42, 68), spot(1, -4.4))
    edge = Path(over.end).bend(_hang(over.end, under.end, 0.8), under.end)
    neck = Path((RIGHT, 25.0)).bend((77, 25), NECK)
    piece = neck.then(over).then(edge).then(under.reverse()).to((RIGHT, 80)).close()
    creases = [smooth((57, 62), (62, 52), (64, 42)), smooth((62, 66), (66, 55), (67.6, 46))]
    belt = path(waist, (RIGHT, 80))
    skirt = path(waist, (58, FOOT))
    return arm() + MASK(piece) + WASH(piece) + FAINT(neck, belt, skirt) + LINE(over, edge, under, creases)


def _ripples(over: Path, under: Path, bulges: tuple[Point, ...], lines: list[Path]) -> Drawing:
    edge = Path(over.end)
    for control, end in zip(bulges[::2], (*bulges[1::2], under.end), strict=True):
        edge = edge.bend(control, end)
    piece = over.then(edge).then(under.reverse()).then(ARMHOLE.reverse()).close()
    return arm() + bodice() + cloth(piece) + LINE(lines)


def flutter() -> Drawing:
    """Short, falling in ripples, open below."""
    over = Path(TIP).through(*spots(((0.1, 12), (0.34, 18))))
    under = Path(UNDERARM).through(spot(0.37, -10))
    bulges = tuple(spots(((0.4, 15), (0.37, 9), (0.44, 5), (0.39, 0.6), (0.44, -4))))
    lines = [
        path(spot(0.37, 9), spot(0.1, 7)),
        path(spot(0.39, 0.6), spot(0.14, 2.4)),
        path(spot(0.4, 14), spot(0.2, 11)),
    ]
    return _ripples(over, under, bulges, lines)


def cape_sleeve() -> Drawing:
    """A circular piece hung over the upper arm, free beneath."""
    over = Path(TIP).through(*spots(((0.12, 13), (0.4, 18), (0.58, 21))))
    under = Path(UNDERARM).through(*spots(((0.4, -10), (0.6, -15))))
    bulges = tuple(spots(((0.64, 17), (0.61, 10), (0.67, 5), (0.62, 0), (0.67, -5), (0.62, -9), (0.65, -13))))
    lines = [
        path(spot(0.61, 10), spot(0.2, 7)),
        path(spot(0.62, 0), spot(0.22, 1.6)),
        path(spot(0.62, -9), spot(0.34, -5)),
    ]
    return _ripples(over, under, bulges, lines)


def bell() -> Drawing:
    """Close above, flaring evenly to a wide open edge."""
    over, under = [(0.12, 9), (0.4, 9.4), (0.7, 12.4), (0.92, 15.6)], [(0.34, -8), (0.64, -11), (0.92, -15)]
    outline, edge = sleeve(over, under, 3.2)
    mouth = Path(edge.start).bend(_hang(edge.start, edge.end, -1.6), edge.end)
    lines = folds(((0.94, 6), (0.62, 4)), ((0.94, -6), (0.66, -4)))
    return arm() + bodice() + cloth(outline) + LINE(lines) + DOTTED(mouth)


def pagoda() -> Drawing:
    """Narrow to the elbow, very wide below, over a white undersleeve."""
    under_piece = sleeve(
        [(0.4, 6), (0.7, 8), (0.9, 9), (0.99, 4.4)], [(0.5, -6), (0.74, -8), (0.92, -8.4), (1, -4.2)], 0.6
    )[0]
    over = (
        Path(TIP)
        .through(*spots(((0.12, 9), (0.34, 7.4), (0.46, 7.6))))
        .through(*spots(((0.6, 13), (0.8, 20))))
    )
    under = (
        Path(UNDERARM)
        .through(*spots(((0.34, -6.6), (0.46, -6.4))))
        .through(*spots(((0.6, -11), (0.76, -19))))
    )
    edge = Path(over.end).curve(spot(0.88, 9), spot(0.8, -8), under.end)
    piece = over.then(edge).then(under.reverse()).then(ARMHOLE.reverse()).close()
    lines = folds(((0.82, 8), (0.58, 4)), ((0.79, -8), (0.58, -4)))
    cuff = folds(((0.97, 1.8), (0.9, 2.6)), ((0.97, -1.6), (0.9, -2.4)))
    return arm() + bodice() + MASK(under_piece) + LINE(under_piece, cuff) + cloth(piece) + LINE(lines)


def shirt_sleeve() -> Drawing:
    """Straight, from a dropped armhole, with placket and buttoned cuff."""
    hole = Path((43.6, 27)).curve((49.6, 32), (51.6, 40), UNDERARM)
    over = Path(hole.start).through(*spots(((0.3, 10), (0.6, 9), (0.9, 8.4), (0.92, 5.4))), ease=0.7)
    under = Path(UNDERARM).through(*spots(((0.4, -8.8), (0.7, -8), (0.9, -7.4), (0.92, -5.2))), ease=0.7)
    edge = across(0.92, 5.4, -5.2, 0.8)
    piece = over.then(edge).then(under.reverse()).then(hole.reverse()).close()
    placket = path(spot(0.93, 2.6), spot(0.74, 2.6), spot(0.72, 1.5), spot(0.74, 0.4), spot(0.93, 0.4))
    tucks = folds(((0.93, -1.6), (0.85, -1.8)), ((0.93, -3.4), (0.86, -3.8)), ((0.93, 4.2), (0.86, 5)))
    shoulder = path(NECK, TIP, hole.start)
    cuff = cloth(_cuff(5.4, -5.2, 0.92, 1.03)) + LINE(ring(spot(0.985, 1.6), 0.9))
    return arm() + bodice(hole, shoulder) + cloth(piece) + LINE(placket, tucks) + cuff


def strap() -> Drawing:
    """A strap over the shoulder, no sleeve and no armhole."""
    left, right = path((66.6, 15.6), (66, 39)), path((70.4, 14.4), (70, 39.4))
    top = Path((57.6, 46)).bend((60, 39), (66, 39)).bend((80, 39), (RIGHT, 42))
    side = Path((57.6, 46)).bend((60.6, 66), (60, FOOT))
    body = top.to((RIGHT, FOOT)).then(side.reverse()).close()
    ribbon = left.then(right.reverse()).close()
    shoulder = FAINT(path(NECK, TIP))
    return arm() + shoulder + WASH(body) + FAINT(side) + LINE(top) + cloth(ribbon)


def virago() -> Drawing:
    """Banded into puffs down the arm."""
    puffs: list[Path] = []
    bands: list[Path] = []
    lines: list[Path] = []
    stops = (0.02, 0.36, 0.66, 0.94)
    for index, (begin, end) in enumerate(pairwise(stops)):
        full = (15.0, 12.6, 10.4)[index]
        middle = (begin + end) / 2
        over = (TIP if index == 0 else spot(begin, 5.6), spot(middle - 0.06, full), spot(middle + 0.08, full))
        under = (UNDERARM if index == 0 else spot(begin, -5.4), spot(middle + 0.08, -full + 1))
        down = smooth(*over, spot(end, 5.6), ease=1.3)
        back = smooth(*under, spot(end, -5.4), ease=1.3)
        piece = down.to(back.end).then(back.reverse())
        puffs.append(piece.then(ARMHOLE.reverse()).close() if index == 0 else piece.close())
        bands.append(_cuff(5.8, -5.6, end - 0.015, end + 0.03))
        for out in (3.6, 0, -3.6):
            lines.append(path(spot(end - 0.02, out), spot(end - 0.12, out * 1.9)))
            if index:
                lines.append(path(spot(begin + 0.03, out), spot(begin + 0.1, out * 1.9)))
    lines += [smooth((49.8, 26), spot(0.06, 8)), path((52, 32), spot(0.14, 2))]
    return arm() + bodice() + cloth(*puffs) + LINE(lines) + cloth(*bands)


def two_piece_coat() -> Drawing:
    """Upper and under piece, curved to the bent arm; the second seam shown."""
    made = _set_in(
        [(0.1, 10.6), (0.3, 9.4), (0.5, 9.4), (0.72, 8.2), (1.0, 5.8)],
        [(0.34, -8), (0.54, -5.4), (0.76, -5.6), (1.0, -6.2)],
        0.6,
    )
    front = smooth((55, 42.6), *spots(((0.34, -5), (0.56, -2.4), (0.78, -2.8), (1.0, -3.6))))
    buttons = [ring(spot(u, 3.6), 0.9) for u in (0.86, 0.92, 0.98)]
    vent = path(spot(1.01, 1.6), spot(0.82, 1.8), spot(0.82, 5.6))
    return made + LINE(front, buttons, vent)


DRAWINGS: Mapping[str, Callable[[], Drawing]] = {
    "sleeveless": sleeveless,
    "cap": cap,
    "short": short,
    "elbow": elbow,
    "three-quarter": three_quarter,
    "long-fitted": long_fitted,
    "set-in-long": set_in_long,
    "bishop": bishop,
    "gigot": gigot,
    "puff-short": puff_short,
    "kimono": kimono,
    "raglan": raglan,
    "dolman": dolman,
    "flutter": flutter,
    "cape-sleeve": cape_sleeve,
    "bell": bell,
    "pagoda": pagoda,
    "shirt-sleeve": shirt_sleeve,
    "strap": strap,
    "virago": virago,
    "two-piece-coat": two_piece_coat,
}
