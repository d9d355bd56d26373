"""Fastenings close up, on the edges they close."""

from __future__ import annotations

import math
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
    beside,
    box,
    path,
    ring,
    smooth,
    stitches,
    waved,
)
from inperiod.drawing.terms import buttons
from inperiod.drawing.terms.cloths import cloth, two_edges


def _hook(x: float, y: float) -> list[Path]:
    """A bent wire hook pointing right, its two loops at the left."""
    return [
        Path((x, y - 2))
        .to((x + 22, y - 2))
        .curve((x + 30, y - 2), (x + 30, y + 3), (x + 24, y + 3))
        .to((x + 14, y + 3)),
        Path((x, y - 2)).curve((x - 4, y - 10), (x - 12, y - 6), (x - 4, y - 2)).to((x, y - 2)),
        Path((x, y + 2)).curve((x - 4, y + 10), (x - 12, y + 6), (x - 4, y + 2)).to((x + 14, y + 2)),
    ]


def hooks_and_eyes() -> Drawing:
    made = (
        cloth(6, 8, 38, 80, "tbl")
        + cloth(58, 8, 32, 80, "tbr")
        + LINE(path((44, 8), (44, 88)), path((58, 8), (58, 88)))
    )
    for y in (28, 68):
        eye = (
            Path((70, y - 3))
            .curve((56, y - 12), (44, y - 8), (44, y))
            .curve((44, y + 8), (56, y + 12), (70, y + 3))
        )
        loops = [ring((73, y - 4.6), 3.2), ring((73, y + 4.6), 3.2)]
        made += LINE(eye, loops, _hook(22, y))
    return made


def hooks_and_bars() -> Drawing:
    """Flat and stout, on a waistband."""
    upper, lower = cloth(6, 18, 50, 60, "l"), cloth(56, 18, 34, 60, "r")
    plate = path((18, 38), (40, 38)).curve((54, 38), (54, 58), (40, 58)).to((18, 58)).close()
    tongue = path((26, 44), (50, 44)).curve((58, 44), (58, 52), (50, 52)).to((26, 52))
    holes = [ring((23, 42), 1.4), ring((23, 54), 1.4), ring((36, 41.6), 1.4), ring((36, 54.4), 1.4)]
    bar = path((72, 34), (76, 34), (76, 62), (72, 62)).close()
    feet = [ring((74, 31), 3.4), ring((74, 65), 3.4)]
    edges = LINE(
        path((6, 18), (56, 18)),
        path((6, 78), (56, 78)),
        path((56, 18), (56, 78)),
        path((56, 18), (90, 18)),
        path((56, 78), (90, 78)),
    )
    return upper + lower + edges + GROUND(plate) + LINE(tongue, holes) + GROUND(bar, feet)


def press_studs() -> Drawing:
    """Socket and knob, and above them how they go together."""
    made: Drawing = ()
    for x, inner in ((26.0, "socket"), (70.0, "knob")):
        holes = [
            ring((x + 13.4 * math.cos(a), 62 + 13.4 * math.sin(a)), 2)
            for a in (math.pi / 4 * k for k in (1, 3, 5, 7))
        ]
        made += GROUND(ring((x, 62), 19)) + LINE(holes, ring((x, 62), 6.4))
        if inner == "socket":
            made += LINE(path((x - 4.4, 58), (x - 4.4, 66)), path((x + 4.4, 58), (x + 4.4, 66)))
        else:
            made += LINE(ring((x, 62), 3), Path((x - 1, 60.4)).bend((x + 0.6, 59.6), (x + 1.4, 61)))
    upper = (
        Path((30, 12))
        .to((66, 12))
        .to((66, 16), (55, 16))
        .bend((54, 20), (51, 18))
        .bend((CENTRE, 15), (45, 18))
    )
    upper = upper.bend((42, 20), (41, 16)).to((30, 16)).close()
    lower = (
        Path((30, 32))
        .to((30, 28), (44, 28))
        .curve((43, 20), (53, 20), (52, 28))
        .to((66, 28), (66, 32))
        .close()
    )
    return made + TINT(upper, lower)


def lacing() -> Drawing:
    left, right = cloth(6, 8, 30, 80, "tbl"), cloth(60, 8, 30, 80, "tbr")
    made = left + right + LINE(path((36, 8), (36, 88)), path((60, 8), (60, 88)))
    ys = (18.0, 34.0, 50.0, 66.0)
    cords = []
    for a, b in pairwise(ys):
        for begin, end in (((29, a), (67, b)), ((67, a), (29, b))):
            line = path(begin, end)
            cords.append(beside(line, 1.1).then(beside(line, -1.1).reverse()).close())
    ends = [smooth((30, 66), (44, 74), (40, 87)), smooth((66, 66), (52, 74), (56, 87))]
    bar = path((29, 16.8), (67, 16.8), (67, 19.2), (29, 19.2)).close()
    eyelets = [ring((x, y), 3) for x in (29, 67) for y in ys]
    return made + GROUND(bar, *cords) + GROUND(eyelets) + LINE(ends)


def _bow(x: float, y: float, size: float = 1.0) -> Drawing:
    loop = (
        Path((x - 2, y - 2))
        .curve((x - 10, y - 12), (x - 24, y - 10), (x - 23, y))
        .curve((x - 22, y + 8), (x - 10, y + 6), (x - 2, y + 2))
        .close()
    )
    tail = (
        Path((x - 2, y + 2))
        .bend((x - 8, y + 12), (x - 13, y + 22))
        .to((x - 9, y + 23), (x - 6, y + 26))
        .bend((x - 2, y + 14), (x + 1, y + 3))
        .close()
    )
    pieces = [tail, tail.mirror(x), loop, loop.mirror(x), box(x - 3, y - 3.4, 6, 6.8)]
    creases = [path((x - 4, y - 1.4), (x - 12, y - 3)), path((x - 4, y + 1), (x - 11, y + 2.4))]
    placed = [piece.scale(size, about=(x, y)) for piece in pieces]
    lines = [one.scale(size, about=(x, y)) for one in (*creases, *(one.mirror(x) for one in creases))]
    return GROUND(placed) + LINE(lines)


def ribbon_tie() -> Drawing:
    made = two_edges(6)
    for y in (28, 66):
        for line in (path((20, y), (45, y)), path((51, y), (76, y))):
            made += GROUND(box(line.start[0], y - 2.6, 25, 5.2))
        made += _bow(CENTRE, y, 0.82)
    return made


def tape_ties() -> Drawing:
    """Narrow tapes, a single knot and hanging ends."""
    made = two_edges(8)
    for y in (26, 62):
        left = path((14, y - 2), (44, y - 2), (46, y + 2), (14, y + 2)).close()
        crossed = [
            path((14, y - 2), (18, y + 2)),
            path((14, y + 2), (18, y - 2)),
            path((18, y - 2), (18, y + 2)),
        ]
        ends = (
            Path((46, y))
            .bend((42, y + 8), (40, y + 20))
            .to((44, y + 21))
            .bend((45, y + 10), (49, y + 1))
            .close()
        )
        knot = path((44, y - 3.4), (52, y - 2.6), (51.4, y + 3.4), (44.6, y + 3)).close()
        made += (
            GROUND(left, left.mirror(), ends, ends.mirror(), knot)
            + LINE.both(crossed)
            + LINE(path((45, y + 2.4), (51, y - 2)))
        )
    return made


def drawstring() -> Drawing:
    """A cord through a casing gathers the edge."""
    casing = path((8, 14), (88, 14), (88, 32), (8, 32)).close()
    folds = [
        smooth((12 + 6 * i, 33), (12.6 + 6 * i, 44), (48 + (12 + 6 * i - 48) * 1.08, 58 + i * 7 % 5 * 5))
        for i in range(13)
    ]
    small = [path((13 + 6 * i, 15), (13.6 + 6 * i, 20)) for i in range(13) if i not in (5, 6, 7)]
    below = [path((13 + 6 * i, 31), (12.4 + 6 * i, 26)) for i in range(13) if i not in (5, 6, 7)]
    ground = path((8, 32), (88, 32), (90, 88), (6, 88)).close()
    holes = [ring((43, 23), 2.4), ring((53, 23), 2.4)]
    cords = [smooth((43, 23), (40, 40), (42, 56), (38, 74)), smooth((53, 23), (57, 42), (54, 60), (60, 72))]
    knots = [ring((38, 76), 2.4), ring((60, 74), 2.4)]
    dotted = DOTTED(path((8, 23), (40, 23)), path((56, 23), (88, 23)))
    return (
        WASH(ground)
        + TINT(casing)
        + LINE(folds, small, below)
        + dotted
        + GROUND(holes)
        + LINE(cords)
        + GROUND(knots)
    )


def slide_fastener() -> Drawing:
    """Teeth locked above the slider and parted below."""
    tape_left = path((20, 6), (45, 6), (45, 52)).bend((42, 74), (30, 90)).to((20, 90)).close()
    teeth: list[Path] = []
    for i in range(11):
        x, y = 44.0 if i % 2 == 0 else 47.0, 8.0 + 4 * i
        teeth.append(box(x, y - 1.4, 5, 2.8))
    spread: list[Path] = []
    for i in range(1, 8):
        t = i / 8
        x = (1 - t) ** 2 * 45 + 2 * t * (1 - t) * 42 + t * t * 30
        y = (1 - t) ** 2 * 56 + 2 * t * (1 - t) * 74 + t * t * 90
        spread.append(box(x, y - 1.4, 5, 2.8))
    slider = path((41, 50), (55, 50), (53, 62), (43, 62)).close()
    pull = path((46, 56), (50, 56), (51, 76), (45, 76)).close()
    hole = ring((CENTRE, 71), 1.5)
    return (
        TINT(tape_left, tape_left.mirror())
        + GROUND(teeth, spread, [one.mirror() for one in spread])
        + GROUND(slider, pull)
        + LINE(hole)
        + LINE.both(stitches(path((26, 6), (26, 88)), 3, 2))
    )


def clasp_locker() -> Drawing:
    """A row of hooks and eyes closed by a sliding guide."""
    left, right = box(10, 6, 26, 84), box(60, 6, 26, 84)
    made = TINT(left, right)
    for i, y in enumerate((14.0, 27.0, 40.0, 66.0, 79.0)):
        closed = i < 3
        shift = 7.0 if closed else 0.0
        hook = [
            Path((30, y))
            .to((42 + shift, y))
            .curve((48 + shift, y), (48 + shift, y + 5), (42 + shift, y + 5)),
            ring((27, y), 2.6),
        ]
        eye = [
            Path((66, y - 3))
            .to((56, y - 3))
            .curve((49 - shift * 0.2, y - 3), (49 - shift * 0.2, y + 4), (56, y + 4))
            .to((66, y + 4)),
            ring((68.6, y + 0.4), 2.6),
        ]
        made += LINE(hook, eye)
    guide = path((40, 46), (57, 46), (60, 58), (37, 58)).close()
    return (
        made
        + GROUND(guide, path((46.4, 54), (50.6, 54), (51.4, 69), (45.6, 69)).close())
        + LINE(ring((48.5, 65.6), 1.4))
    )


def buckle() -> Drawing:
    """A frame with a tongue, the belt's end passed through."""
    left = path((4, 36), (30, 36), (30, 60), (4, 60)).close()
    window = path((30, 36), (48, 36), (48, 60), (30, 60)).close()
    end = path((54, 36), (86, 36)).bend((93, 48), (86, 60)).to((54, 60))
    holes = [ring((x, 48), 1.8) for x in (64, 74, 84)]
    tongue = path((26, 46.4), (54, 46.4), (54, 49.6), (26, 49.6)).close()
    belt = WASH(left, window, end) + LINE(
        left, path((30, 36), (48, 36)), path((30, 60), (48, 60)), end, holes
    )
    return GROUND(box(24, 26, 30, 44), box(30, 32, 18, 32)) + belt + GROUND(tongue)


def belt_tie() -> Drawing:
    """A belt knotted at the waist, its ends hanging."""
    belt = path((6, 30), (90, 30), (90, 44), (6, 44)).close()
    left = Path((43, 42)).bend((34, 60), (30, 88)).to((42, 90)).bend((44, 64), (51, 44)).close()
    right = Path((47, 44)).bend((58, 60), (58, 84)).to((69, 82)).bend((66, 58), (54, 42)).close()
    knot = (
        path((40, 27))
        .bend((50, 24), (56, 29))
        .bend((60, 38), (54, 47))
        .bend((46, 50), (40, 45))
        .bend((37, 36), (40, 27))
        .close()
    )
    creases = [
        path((14, 34), (38, 36)),
        path((22, 40), (38, 40)),
        path((58, 36), (82, 33)),
        path((59, 40), (74, 40)),
    ]
    folds = [
        smooth((46, 50), (40, 66), (37, 86)),
        smooth((53, 50), (61, 64), (63, 80)),
        path((44, 32), (52, 44)),
    ]
    sides = FAINT.both(smooth((10, 6), (13, 20), (14, 30)), smooth((14, 44), (11, 66), (6, 90)))
    return sides + TINT(belt) + GROUND(left, right, knot) + LINE(creases, folds)


def elastic() -> Drawing:
    """Woven elastic in a casing, drawing the cloth in; its end shown."""
    casing = path((6, 22), (70, 22), (70, 50), (6, 50)).close()
    band = path((70, 26), (90, 26), (90, 46), (70, 46)).close()
    ribs = [path((70, y), (90, y)) for y in (30, 34, 38, 42)]
    wave = waved(path((6, 22), (70, 22)), 1, 8, "wave")
    puckers = [smooth((9 + 5 * i, 23), (10.4 + 5 * i, 36), (9 + 5 * i, 49)) for i in range(12)]
    folds = [smooth((9 + 5 * i, 51), (9.4 + 5 * i, 62), (7 + 5.6 * i, 70 + i * 5 % 4 * 4)) for i in range(12)]
    ground = path((6, 50), (70, 50), (80, 90), (6, 90)).close()
    return (
        WASH(ground)
        + WASH(casing)
        + LINE(wave, path((6, 50), (70, 50)), path((70, 22), (70, 50)), puckers, folds)
        + (GROUND(band) + LINE(ribs))
    )


def safety_pin() -> Drawing:
    """The bent wire, its spring and guard, through a fold."""
    piece = cloth(6, 26, 84, 58, "tblr")
    wire = Path((74, 40)).to((20, 40)).curve((8, 40), (8, 56), (18, 56)).curve((26, 56), (26, 46), (18, 46))
    wire = wire.curve((13, 46), (13, 54), (20, 56)).to((36, 56))
    point = path((60, 56), (78, 52))
    guard = (
        Path((73, 35))
        .to((80, 35))
        .curve((89, 36), (89, 58), (80, 58))
        .to((74, 58))
        .bend((78, 46), (73, 35))
        .close()
    )
    wires = [beside(line, -1.1).then(beside(line, 1.1).reverse()).close() for line in (wire, point)]
    holes = [path((36, 53), (36, 59)), path((60, 53), (60, 59))]
    return (
        piece
        + MASK(wires)
        + LINE(*[[beside(line, d) for d in (-1.1, 1.1)] for line in (wire, point)], holes)
        + DOTTED(path((38, 56), (59, 56)))
        + GROUND(guard)
    )


DRAWINGS: Mapping[str, Callable[[], Drawing]] = {
    **buttons.DRAWINGS,
    "hooks-and-eyes": hooks_and_eyes,
    "hooks-and-bars": hooks_and_bars,
    "press-studs": press_studs,
    "lacing": lacing,
    "ribbon-tie": ribbon_tie,
    "drawstring": drawstring,
    "slide-fastener": slide_fastener,
    "clasp-locker": clasp_locker,
    "buckle": buckle,
    "belt-tie": belt_tie,
    "elastic": elastic,
    "safety-pin": safety_pin,
    "tape-ties": tape_ties,
}
