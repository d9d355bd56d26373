"""Fastenings close up, on the edges they close."""

from __future__ import annotations

import math
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
    Point,
    beside,
    box,
    path,
    ring,
    smooth,
    stitches,
    waved,
)
from inperiod.drawing.terms.cloths import cloth

BUTTONHOLE_WIDE = 15.0


def button(x: float, y: float, wide: float, holes: int = 4) -> Drawing:
    """A flat sewn-through button."""
    spread = wide * 0.24
    if holes == 4:
        spots = [(x + a * spread, y + b * spread) for a in (-1, 1) for b in (-1, 1)]
    else:
        spots = [(x - spread, y), (x + spread, y)]
    return GROUND(ring((x, y), wide)) + LINE(
        ring((x, y), wide * 0.74), [ring(spot, wide * 0.1) for spot in spots]
    )


def buttonhole(x: float, y: float, wide: float = BUTTONHOLE_WIDE) -> Drawing:
    """A worked buttonhole: the slit, and the purl stitches round it."""
    worked = box(x, y - 3, wide, 6)
    stitched = [
        path((x + 2 + 2.4 * i, y - 3), (x + 2 + 2.4 * i, y + 3)) for i in range(int((wide - 2) / 2.4))
    ]
    return MASK(worked) + LINE(worked, stitched) + LINE(path((x + 1, y), (x + wide - 1, y)))


def _two_edges(gap: float = 4.0) -> Drawing:
    """Two edges of cloth side by side."""
    half = (84 - gap) / 2
    left, right = cloth(6, 8, half, 80, "tbl"), cloth(90 - half, 8, half, 80, "tbr")
    return left + right + LINE(path((6 + half, 8), (6 + half, 88)), path((90 - half, 8), (90 - half, 88)))


def _lapped(edge: float = 44.0) -> Drawing:
    """One edge over the other."""
    return (
        cloth(6, 8, 84, 80, "tblr")
        + LINE(path((edge, 8), (edge, 88)))
        + FAINT(path((edge + 5, 8), (edge + 5, 88)))
    )


def buttons() -> Drawing:
    made = _two_edges(8)
    for y in (28, 68):
        made += buttonhole(26, y) + button(68, y, 11)
    return made


def shank_buttons() -> Drawing:
    """No thread on the face; from the side, the loop behind."""
    dome = Path((52, 30)).curve((54, 10), (82, 10), (84, 30)).close()
    shank = Path((63, 30)).curve((60, 42), (76, 42), (73, 30))
    ring_inside = Path((65.6, 30)).curve((64.6, 37), (71.4, 37), (70.4, 30))
    face = GROUND(ring((26, 26), 17)) + LINE(Path((15, 22)).bend((19, 12), (30, 12.6)))
    section = cloth(6, 78, 84, 10, "lr") + LINE(path((6, 78), (90, 78)))
    sewn = Path((31, 62)).curve((33, 48), (63, 48), (65, 62)).close()
    loop = Path((44, 62)).curve((41, 76), (55, 76), (52, 62))
    threads = [path((46, 72), (45, 84)), path((48, 73), (48, 84)), path((50, 72), (51, 84))]
    return face + GROUND(dome) + LINE(shank, ring_inside) + section + GROUND(sewn) + LINE(loop, threads)


def celluloid_buttons() -> Drawing:
    """Moulded, with the streaks of imitated horn."""
    made = GROUND(ring((CENTRE, CENTRE), 38)) + LINE(ring((CENTRE, CENTRE), 30))
    streaks = [
        smooth((30, 30), (40, 36), (50, 30), (62, 36)),
        smooth((22, 44), (34, 50), (44, 44), (54, 50), (68, 46), (74, 50)),
        smooth((26, 60), (38, 66), (50, 60), (62, 66), (70, 62)),
        smooth((38, 74), (48, 70), (58, 74)),
    ]
    holes = [ring((CENTRE + d, CENTRE + 7), 3) for d in (-9, 9)]
    return made + FAINT(streaks) + GROUND(holes)


def phenolic_buttons() -> Drawing:
    """Thick and turned: from above and from the side."""
    face = GROUND(ring((CENTRE, 34), 27)) + LINE(ring((CENTRE, 34), 20), ring((CENTRE, 34), 13))
    holes = LINE([ring((CENTRE + a * 4, 34 + b * 4), 1.6) for a in (-1, 1) for b in (-1, 1)])
    side = (
        Path((21, 74))
        .to((21, 80))
        .bend((21, 88), (30, 88))
        .to((66, 88))
        .bend((75, 88), (75, 80))
        .to((75, 74))
    )
    side = side.bend((70, 70), (64, 72)).bend((CENTRE, 78), (32, 72)).bend((26, 70), (21, 74)).close()
    return face + holes + TINT(side) + LINE(path((23, 81), (73, 81)))


def pearl_buttons() -> Drawing:
    """Cut from shell: the lustre in short strokes, a dished middle."""
    made = GROUND(ring((CENTRE, CENTRE), 38)) + LINE(ring((CENTRE, CENTRE), 22))
    rays = []
    for i in range(40):
        angle = math.radians(i * 9)
        near, far = 25 + i * 5 % 3, 33 + i * 7 % 3
        if i % 8 < 5:
            rays.append(path(_polar(near, angle), _polar(far, angle)))
    holes = [ring((CENTRE + a * 7, CENTRE + b * 7), 2.6) for a in (-1, 1) for b in (-1, 1)]
    lustre = [smooth((34, 40), (42, 34), (52, 34)), smooth((44, 62), (54, 62), (61, 56))]
    return made + FAINT(rays, lustre) + LINE(holes)


def _polar(far: float, angle: float) -> Point:
    return (CENTRE + far * math.cos(angle), CENTRE + far * math.sin(angle))


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
    for a, b in zip(ys, ys[1:], strict=False):
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
    made = _two_edges(6)
    for y in (28, 66):
        for line in (path((20, y), (45, y)), path((51, y), (76, y))):
            made += GROUND(box(line.start[0], y - 2.6, 25, 5.2))
        made += _bow(CENTRE, y, 0.82)
    return made


def tape_ties() -> Drawing:
    """Narrow tapes, a single knot and hanging ends."""
    made = _two_edges(8)
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
        y = 8 + 4 * i
        x = 44 if i % 2 == 0 else 47
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
    guide = path((40, 48), (58, 48), (61, 60), (37, 60)).close()
    return made + GROUND(guide) + LINE(path((CENTRE, 50), (CENTRE, 58)), ring((CENTRE, 64), 3))


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


def loops_and_buttons() -> Drawing:
    """Loops standing out from the edge in place of buttonholes."""
    made = (
        cloth(6, 8, 34, 80, "tbl")
        + cloth(48, 8, 42, 80, "tbr")
        + LINE(path((40, 8), (40, 88)), path((48, 8), (48, 88)))
    )
    for y in (20, 39, 58, 77):
        made += GROUND(ring((57, y), 7)) + LINE(Path((53, y - 1)).bend((54, y - 4.6), (58, y - 4.4)))
        outer = Path((40, y - 5.4)).curve((74, y - 10), (74, y + 10), (40, y + 5.4))
        inner = Path((40, y - 3.2)).curve((70, y - 7.6), (70, y + 7.6), (40, y + 3.2))
        made += LINE(outer, inner)
    return made


def toggle() -> Drawing:
    """Bars passed crosswise through loops."""
    made = _two_edges(4)
    for y in (28, 68):
        loop = [
            Path((12, y - 6))
            .bend((40, y - 7), (60, y - 3.4))
            .bend((66, y), (60, y + 3.4))
            .bend((40, y + 7), (12, y + 6)),
            Path((12, y - 3))
            .bend((40, y - 3.6), (55, y - 1))
            .bend((58, y), (55, y + 1))
            .bend((40, y + 3.6), (12, y + 3)),
        ]
        cord = [path((66, y - 1.6), (84, y - 1.6)), path((66, y + 1.6), (84, y + 1.6))]
        bar = Path((56, y - 13)).curve((57, y - 17), (63, y - 17), (64, y - 13)).bend((67, y), (64, y + 13))
        bar = bar.curve((63, y + 17), (57, y + 17), (56, y + 13)).bend((53, y), (56, y - 13)).close()
        made += (
            LINE(loop, cord)
            + GROUND(bar)
            + LINE(path((59, y - 3), (61, y - 3)), path((59, y + 3), (61, y + 3)))
        )
    return made


def frogs() -> Drawing:
    """Knots and loops of cord in pairs."""
    made = _two_edges(3)
    for y in (26, 68):
        petals = []
        for angle in (140, 180, 220):
            petals.append(
                Path((34, y))
                .curve((22, y - 9), (10, y - 7), (10, y))
                .curve((10, y + 7), (22, y + 9), (34, y))
                .turn(angle - 180, (34, y))
            )
        loop = Path((34, y)).curve((44, y - 8), (56, y - 7), (56, y)).curve((56, y + 7), (44, y + 8), (34, y))
        stem = path((52, y), (62, y))
        right = [petal.mirror() for petal in petals]
        made += (
            LINE(petals, right, loop, stem)
            + GROUND(ring((52, y), 4.6))
            + LINE(
                Path((49, y - 1.6)).bend((52, y + 1), (55, y - 1.6)),
                Path((49, y + 1.6)).bend((52, y - 1), (55, y + 1.6)),
            )
            + GROUND(ring((34, y), 2.4), ring((62, y), 2.4))
        )
    return made


def hook_and_loop() -> Drawing:
    """One tape of stiff hooks, one of soft loops."""
    lower = path((6, 66), (90, 66), (90, 76), (6, 76)).close()
    upper = (
        path((6, 22), (56, 22))
        .bend((74, 22), (86, 8))
        .to((91, 14))
        .bend((78, 31), (56, 31))
        .to((6, 31))
        .close()
    )
    loops = [
        Path((9 + 4.4 * i, 66)).curve(
            (6 + 4.4 * i, 54 + i % 3 * 2), (16 + 4.4 * i, 54 + i % 2 * 3), (11.6 + 4.4 * i, 66)
        )
        for i in range(18)
    ]
    hooks = [
        Path((10 + 6 * i, 31))
        .to((10 + 6 * i, 41))
        .curve((10 + 6 * i, 46), (15 + 6 * i, 46), (15 + 6 * i, 41))
        for i in range(9)
    ]
    return TINT(lower, upper) + LINE(loops, hooks)


def eyelets_metal() -> Drawing:
    """A hole lined with a hammered ring, and one in section."""
    made = cloth(6, 6, 84, 52, "tblr")
    for x in (28, 68):
        made += GROUND(ring((x, 32), 15)) + LINE(ring((x, 32), 9))
        made += LINE([path(_around(x, 32, 10.4, a), _around(x, 32, 13.4, a + 8)) for a in range(0, 360, 30)])
    left = path((6, 76), (40, 76), (40, 82), (6, 82)).close()
    flange = (
        Path((30, 72))
        .bend((38, 68), (42, 72))
        .to((42, 84))
        .bend((38, 90), (30, 86))
        .to((32, 84))
        .bend((38, 86), (39, 82))
        .to((39, 76))
        .bend((38, 72), (32, 74))
        .close()
    )
    return made + TINT(left, left.mirror()) + GROUND(flange, flange.mirror())


def _around(x: float, y: float, far: float, degrees: float) -> Point:
    angle = math.radians(degrees)
    return (x + far * math.cos(angle), y + far * math.sin(angle))


def busk_front() -> Drawing:
    """Steels with studs and loops."""
    left, right = box(30, 6, 12, 84), box(54, 6, 12, 84)
    made = cloth(6, 6, 38, 84, "l") + cloth(52, 6, 38, 84, "r") + TINT(left, right)
    for y in (20, 40, 60, 80):
        loop = Path((42, y - 4)).to((52, y - 4)).curve((66, y - 6), (66, y + 6), (52, y + 4)).to((42, y + 4))
        hole = Path((54, y - 1)).curve((62, y - 5), (62, y + 5), (54, y + 1)).close()
        made += GROUND(loop) + LINE(hole) + GROUND(ring((59.6, y), 2.6)) + LINE(ring((37, y), 1.4))
    return made + LINE(path((44, 6), (44, 90)), path((52, 6), (52, 90)))


DRAWINGS: Mapping[str, Callable[[], Drawing]] = {
    "buttons": buttons,
    "shank-buttons": shank_buttons,
    "celluloid-buttons": celluloid_buttons,
    "phenolic-buttons": phenolic_buttons,
    "pearl-buttons": pearl_buttons,
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
    "loops-and-buttons": loops_and_buttons,
    "toggle": toggle,
    "frogs": frogs,
    "hook-and-loop": hook_and_loop,
    "tape-ties": tape_ties,
    "eyelets-metal": eyelets_metal,
    "busk-front": busk_front,
}
