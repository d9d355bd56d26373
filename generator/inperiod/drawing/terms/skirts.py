"""Skirt lengths on the standing figure, and skirt cuts on a skirt alone."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from inperiod.drawing.hand import (
    CENTRE,
    DOTTED,
    FAINT,
    GROUND,
    LINE,
    MASK,
    WASH,
    Drawing,
    Path,
    Point,
    hatch,
    path,
    ring,
    smooth,
)
from inperiod.drawing.terms.figures import (
    ANKLE,
    CALF,
    FLOOR,
    KNEE,
    WAIST,
    body,
    cloth,
    floor,
    small_bodice,
)

# Lengths


def _length(level: float) -> Drawing:
    """A skirt to ``level``, its hem in full line."""
    low = CENTRE - 7 - (level - WAIST) * 0.24
    side = Path((41.4, WAIST)).curve((40, 42), (37.6, 47), (low, level))
    hem = Path((low, level)).bend((CENTRE, level + 2.4), (2 * CENTRE - low, level))
    outline = side.then(hem).then(side.mirror().reverse()).close()
    waist = path((41.4, WAIST), (54.6, WAIST))
    under = body() + MASK(outline) + small_bodice() + WASH(outline)
    guide = FAINT(path((hem.end[0] + 3, level), (79, level)))
    return floor() + under + FAINT.both(side) + FAINT(waist) + guide + LINE(hem)


def train() -> Drawing:
    """Lies on the floor behind; seen from the side."""
    head = ring((34, 8.6), 4.4, 5.4)
    front = Path((33, 14)).through((31.6, 18), (28.4, 28), (32.6, 37))
    back = Path((37.4, 14)).through((38.6, 18), (42, 24), (41, 31), (38.6, 37))
    face = front.then(Path((32.6, 37)).bend((31.4, 60), (27, 90)))
    sweep = Path((38.6, 37)).curve((46, 44), (48, 70), (58, 82)).curve((64, 88), (76, 89.6), (87, 90))
    outline = face.to((87, 90)).then(sweep.reverse()).then(back.reverse()).close()
    folds = [smooth((38, 44), (44, 68), (54, 86)), smooth((35, 50), (37, 70), (42, 87))]
    arm = Path((36, 22)).through((38, 32), (35, 42), (31, 48))
    return (
        FAINT(path((8, FLOOR), (90, FLOOR)), head)
        + WASH(outline)
        + FAINT(face, back, arm, path((32.6, 37), (38.6, 37)), folds)
        + LINE(sweep, path((27, 90), (87, 90)))
    )


def uneven() -> Drawing:
    """A hem of points."""
    side = Path((41.4, WAIST)).curve((40, 42), (37.6, 47), (34, 66))
    points = [
        (34.0, 66.0),
        (33, 82),
        (38.6, 70),
        (43, 84),
        (48, 70),
        (53, 84),
        (57.4, 70),
        (63, 82),
        (62, 66),
    ]
    hem = path(*points)
    outline = side.then(hem).then(side.mirror().reverse()).close()
    folds = [
        path((41, 50), (43, 82)),
        path((55, 50), (53, 82)),
        path((39, 56), (33.6, 78)),
        path((57, 56), (62.4, 78)),
    ]
    waist = path((41.4, WAIST), (54.6, WAIST))
    return (
        floor()
        + body()
        + MASK(outline)
        + small_bodice()
        + WASH(outline)
        + FAINT.both(side)
        + FAINT(waist, folds)
        + LINE(hem)
    )


LENGTHS: Mapping[str, Callable[[], Drawing]] = {
    "train": train,
    "ground": lambda: _length(89.2),
    "instep": lambda: _length(86.8),
    "ankle": lambda: _length(ANKLE - 1),
    "above-ankle": lambda: _length(79.4),
    "mid-calf": lambda: _length(CALF),
    "below-knee": lambda: _length(69.4),
    "knee": lambda: _length(KNEE - 0.4),
    "above-knee": lambda: _length(58),
    "handkerchief-uneven": uneven,
}

# Cuts

TOP: Point = (36.0, 12.0)
BELT = Path((36.2, 8.0)).bend((CENTRE, 10.0), (59.8, 8.0)).to((60.0, 12.0)).bend((CENTRE, 14.4), TOP).close()


def _skirt(side: Path, hem: Path, *lines: Path | list[Path], far: Path | None = None) -> Drawing:
    """A skirt hung from a belt: its left side, its hem from left to right, and the lines on it."""
    right = far or side.mirror()
    outline = side.then(hem).then(right.reverse()).close()
    return cloth(outline) + LINE(*lines) + GROUND(BELT)


def _flared(foot: float, level: float = 86.0) -> Path:
    return Path(TOP).curve((34, 24), (27, 30), (foot, level))


def _level(side: Path, sag: float = 3.0) -> Path:
    x, y = side.end
    return Path(side.end).bend((CENTRE, y + sag), (2 * CENTRE - x, y))


def _rippled(left: Point, count: int, deep: float = 4.0, sag: float = 3.0) -> Path:
    """A hem of folds, hanging and going in by turns."""
    x, y = left
    wide = 2 * (CENTRE - x)
    hem = Path(left)
    for index in range(count):
        end = x + wide * (index + 1) / count
        middle = x + wide * (index + 0.5) / count
        drop = sag * (1 - ((middle - CENTRE) / (wide / 2)) ** 2)
        last = sag * (1 - ((end - CENTRE) / (wide / 2)) ** 2)
        hem = hem.bend((middle, y + drop + deep), (end, y + last))
    return hem


def gored() -> Drawing:
    side = _flared(16)
    seams = [Path((43, 13.4)).bend((40, 40), (36, 88)), Path((53, 13.4)).bend((56, 40), (60, 88))]
    outer = [Path((38.6, 12.8)).curve((34, 34), (29, 60), (24, 87))]
    return _skirt(side, _level(side), seams, outer, [one.mirror() for one in outer])


def circular() -> Drawing:
    side = Path(TOP).curve((33, 26), (20, 50), (6, 78))
    hem = _rippled((6, 78), 7, 6, 8)
    folds = [
        smooth((18, 81.9), (29, 56), (36, 36)),
        smooth((30, 84.5), (38, 56), (42, 38)),
        smooth((42, 85.8), (45, 62), (46, 46)),
    ]
    return _skirt(side, hem, folds, [one.mirror() for one in folds])


def straight() -> Drawing:
    side = Path(TOP).curve((33, 20), (30.6, 28), (30.6, 38)).to((30.6, 86))
    return _skirt(side, _level(side, 1.6))


def pleated_all() -> Drawing:
    hem = Path((18, 84))
    xs = [18 + 60 * index / 10 for index in range(11)]
    for b in xs[1:]:
        hem = hem.to((b - 0.4, 86.4), (b - 0.2, 84)) if b < 77 else hem.to((b, 86))
    lines = [
        smooth((36 + 24 * i / 10, 13.4), (29.6 + 36.8 * i / 10, 36), (18 + 60 * i / 10, 85))
        for i in range(1, 10)
    ]
    return _skirt(
        Path(TOP).curve((34, 24), (26, 32), (18, 84)),
        hem,
        lines,
        far=Path((60, 12)).curve((62, 24), (70, 32), (78, 86)),
    )


def flounced() -> Drawing:
    side = _flared(20, 86)
    made = _skirt(side, _level(side))
    for y, left, low in ((68.0, 23.6, 16.0), (52.0, 25.6, 20.0)):
        top = Path((left, y)).bend((CENTRE, y + 3), (96 - left, y))
        hem = _rippled((low, y + 17), 9, 3, 3)
        piece = top.reverse().to((low, y + 17)).then(hem).to((96 - left, y)).close()
        gathers = [
            path((x, y + 2.4 - abs(x - 48) / 20), (x + (x - 48) * 0.1, y + 9))
            for x in (30, 36, 42, 48, 54, 60, 66)
        ]
        made += cloth(piece) + LINE(gathers)
    return made


def tiered() -> Drawing:
    """Three gathered layers, each joined to the one above."""
    made: Drawing = ()
    rows = ((12.0, 36.0, 34.0, 28.0), (36.0, 29.0, 60.0, 21.0), (61.0, 22.0, 86.0, 13.0))
    for top, left, foot, low in rows:
        upper = Path((left, top)).bend((CENTRE, top + 2.6), (96 - left, top))
        lower = Path((low, foot)).bend((CENTRE, foot + 4), (96 - low, foot))
        piece = upper.reverse().to((low, foot)).then(lower).close()
        count = round((96 - 2 * left) / 5)
        step = (96 - 2 * left) / count
        gathers = [
            path(
                (left + step * (i + 0.5), top + 2),
                (left + step * (i + 0.5) + (left + step * (i + 0.5) - 48) * 0.14, top + 10),
            )
            for i in range(count)
        ]
        made += cloth(piece) + LINE(gathers)
    return made + GROUND(BELT)


def draped() -> Drawing:
    """Caught up to one side in swathed folds."""
    left = Path(TOP).curve((30, 22), (26, 34), (28, 50)).to((33, 86))
    right = Path((60, 12)).curve((66, 20), (72, 28), (69, 42)).to((61, 86))
    hem = Path((33, 86)).bend((CENTRE, 88), (61, 86))
    folds = [
        Path((66, 20)).curve((54, 30), (38, 30), (29.6, 28)),
        Path((68.4, 25)).curve((56, 40), (40, 42), (27.4, 40)),
        Path((70, 31)).curve((58, 52), (44, 58), (29, 56)),
        Path((69.6, 38)).curve((62, 60), (50, 72), (36, 76)),
    ]
    tail = (
        Path((70, 31))
        .curve((80, 40), (80, 56), (76, 68))
        .to((70, 64))
        .curve((72, 54), (72, 44), (69, 38))
        .close()
    )
    return cloth(tail) + _skirt(left, hem, folds, far=right)


def tunic_over() -> Drawing:
    under = Path((31, 40)).to((33, 87))
    lower = under.to((63, 87), (65, 40)).close()
    side = Path(TOP).curve((34, 22), (28, 30), (20, 56))
    piece = side.then(_level(side, 5)).then(side.mirror().reverse()).close()
    folds = [smooth((42, 15), (38, 36), (33, 56)), smooth((54, 15), (58, 36), (63, 56))]
    return cloth(lower) + cloth(piece) + LINE(folds) + GROUND(BELT)


def hobble_cut() -> Drawing:
    """Wider above, banded below the knee."""
    side = Path(TOP).curve((30, 20), (24, 34), (27, 50)).curve((29, 62), (36, 64), (36.6, 70)).to((37, 88))
    hem = _level(side, 1.4)
    band = path((36.6, 68), (59.4, 68), (59.4, 74), (36.6, 74)).close()
    creases = [
        path((38, 66), (34, 54)),
        path((43, 66.4), (41, 56)),
        path((53, 66.4), (55, 56)),
        path((58, 66), (62, 54)),
    ]
    return _skirt(side, hem, creases) + GROUND(band)


def bias_cut() -> Drawing:
    """Close and slantwise, rippling below; a patch shows the slanting grain."""
    side = Path(TOP).curve((31, 22), (28.6, 32), (30, 46)).curve((31, 60), (26, 72), (18, 84))
    hem = _rippled((18, 84), 5, 4, 4)
    folds = [smooth((30, 86), (36, 70), (38, 58)), smooth((42, 88), (44.6, 74), (45, 62))]
    patch = ring((CENTRE, 34), 8)
    grain = hatch(patch, 45, 2.7) + hatch(patch, -45, 2.7)
    return _skirt(side, hem, folds, [one.mirror() for one in folds]) + FAINT(patch, grain)


def gathered() -> Drawing:
    side = Path(TOP).curve((26, 18), (18, 40), (15, 84))
    hem = _rippled((15, 84), 9, 2.6, 3)
    long = [
        smooth((38 + i * 20 / 5, 14), (33.6 + i * 28.8 / 5, 34), (27 + i * 42 / 5, 70 - i % 2 * 12))
        for i in range(6)
    ]
    short = [path((36.6 + i * 22.8 / 12, 13.6), (34 + i * 28 / 12, 22 + i % 3)) for i in range(13)]
    return _skirt(side, hem, long, short)


def godet_skirt() -> Drawing:
    """Close to the knee, wedges let in at the hem."""
    side = Path(TOP).curve((33, 20), (29, 30), (29, 44)).to((29, 54)).bend((25, 72), (14, 82))
    hem = (
        Path((14, 82))
        .bend((22, 90), (29, 85))
        .to((38, 85))
        .bend((CENTRE, 94), (58, 85))
        .to((67, 85))
        .bend((74, 90), (82, 82))
    )
    wedges = [path((38, 85), (CENTRE, 54), (58, 85)), path((29, 85), (29, 54)), path((67, 85), (67, 54))]
    folds = [path((CENTRE, 88), (CENTRE, 66)), path((22, 85), (26.4, 70)), path((74, 85), (69.6, 70))]
    return _skirt(side, hem, wedges, folds)


def wrap_skirt() -> Drawing:
    side = _flared(21)
    lap = Path((53, 13.6)).bend((58, 46), (60, 88))
    ties = [smooth((53, 12), (47, 20), (49, 30)), smooth((53, 12), (56, 20), (54.6, 29))]
    under = DOTTED(Path((40, 13.6)).bend((37, 46), (34, 87)))
    return _skirt(side, _level(side), lap) + under + LINE(ties, ring((53, 11), 1.6))


def divided() -> Drawing:
    """Full legs that hang as a skirt."""
    side = _flared(15)
    hem = Path((15, 86)).bend((30, 91), (46, 87)).to((CENTRE, 62), (50, 87)).bend((66, 91), (81, 86))
    front = path((CENTRE, 13.2), (CENTRE, 62))
    folds = [smooth((40, 14), (37, 50), (33, 88)), smooth((56, 14), (59, 50), (63, 88))]
    return _skirt(side, hem, [front], folds)


def umbrella() -> Drawing:
    """Smooth in front, flaring all round, in one piece; the one seam is behind."""
    side = Path(TOP).curve((34, 30), (26, 58), (8, 84))
    hem = Path((8, 84)).bend((20, 93), (34, 86.6)).bend((CENTRE, 88), (62, 86.6)).bend((76, 93), (88, 84))
    folds = [smooth((34, 86.6), (38.6, 64), (40, 50)), smooth((20, 88.6), (31, 66), (35, 50))]
    return _skirt(side, hem, folds, [one.mirror() for one in folds]) + DOTTED(
        path((CENTRE, 14), (CENTRE, 86))
    )


CUTS: Mapping[str, Callable[[], Drawing]] = {
    "gored": gored,
    "circular": circular,
    "straight": straight,
    "pleated-all": pleated_all,
    "flounced": flounced,
    "tiered": tiered,
    "draped": draped,
    "tunic-over": tunic_over,
    "hobble-cut": hobble_cut,
    "bias-cut": bias_cut,
    "gathered": gathered,
    "godet-skirt": godet_skirt,
    "wrap-skirt": wrap_skirt,
    "divided": divided,
    "umbrella": umbrella,
}
