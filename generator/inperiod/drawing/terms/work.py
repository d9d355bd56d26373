"""Hand work and machine work, close up."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from inperiod.drawing.hand import (
    DOTTED,
    FAINT,
    GROUND,
    LINE,
    TINT,
    WASH,
    Drawing,
    Path,
    beside,
    box,
    hatch,
    path,
    ring,
    smooth,
    stitches,
)
from inperiod.drawing.terms.cloths import across, cloth
from inperiod.drawing.terms.motifs import flower, leaf


def _ground() -> Drawing:
    return cloth(6, 8, 84, 80, "tblr")


def _needle(x: float, y: float, angle: float, long: float = 34) -> Drawing:
    """A needle whose point is at the place given."""
    shaft = (
        Path((x, y))
        .bend((x + long * 0.5, y - 1.6), (x + long, y - 1.5))
        .bend((x + long + 3, y), (x + long, y + 1.5))
    )
    shaft = shaft.bend((x + long * 0.5, y + 1.6), (x, y)).close()
    eye = path((x + long - 4, y), (x + long, y))
    return GROUND(shaft.turn(angle, (x, y))) + LINE(eye.turn(angle, (x, y)))


def hand_sewn() -> Drawing:
    """Stitches slightly uneven, the needle in the work."""
    row = []
    x = 10.0
    for index, long in enumerate((5.4, 4.4, 5.0, 5.8, 4.6, 5.2)):
        row.append(path((x, 56 + (0.7, -0.5, 0.3)[index % 3]), (x + long, 56 + (-0.4, 0.5, 0.2)[index % 3])))
        x += long + (4.2, 3.4, 3.9)[index % 3]
    thread = smooth((82, 40), (90, 26), (74, 18), (58, 24), (46, 16))
    return _ground() + LINE(row, thread) + _needle(62, 58, -30, 22) + LINE(path((60, 59), (66, 55.6)))


def lockstitch_machine() -> Drawing:
    """Even stitches, alike on both sides; below, the two threads cut through."""
    made = cloth(6, 8, 84, 32, "tblr") + LINE(stitches(across(24, 8, 88), 7, 2.4))
    layers = [box(6, 60, 84, 8), box(6, 68, 84, 8)]
    upper, lower = Path((6, 57)), Path((6, 79))
    for x in (18.0, 33.0, 48.0, 63.0, 78.0):
        upper = upper.to((x - 2, 57)).bend((x, 80.5), (x + 2, 57))
        lower = lower.to((x - 2, 79)).bend((x, 55.5), (x + 2, 79))
    return made + TINT(layers) + LINE(upper.to((90, 57)), lower.to((90, 79)))


def chainstitch_machine() -> Drawing:
    """Stitches above; a chain of loops on the under side."""
    made = cloth(6, 8, 84, 32, "tblr") + LINE(stitches(across(24, 8, 88), 7, 2.4))
    made += cloth(6, 52, 84, 36, "tblr")
    loops = []
    for i in range(7):
        x = 10 + 11.0 * i
        loops.append(
            Path((x + 3, 70))
            .curve((x, 61), (x + 13, 61), (x + 14, 70))
            .curve((x + 13, 79), (x, 79), (x + 3, 70))
        )
    return made + LINE(loops)


def hand_embroidered() -> Drawing:
    """In a frame, needle and thread in the hand's way."""
    motif = flower(42, 44, 15)
    leaves = [leaf(42, 62, 14, 30), leaf(42, 62, 14, 150)]
    stem = smooth((42, 50), (42.6, 60), (41, 72))
    fill = [line for shape in motif[:3] for line in hatch(shape, 35, 2.4)] + hatch(leaves[0], 10, 2.2)
    thread = smooth((76, 26), (86, 34), (70, 44), (57, 62))
    return (
        WASH(ring((44, 50), 36))
        + LINE(ring((44, 50), 36), ring((44, 50), 39))
        + LINE(stem)
        + GROUND(motif, leaves)
        + LINE(fill, thread)
        + _needle(56, 36, -28, 22)
    )


def machine_embroidered() -> Drawing:
    """Motifs all alike, their stitches close and even."""
    made = _ground()
    for x in (26.0, 70.0):
        for y in (28.0, 68.0):
            shapes = [leaf(x, y, 14, angle) for angle in (0, 90, 180, 270)]
            made += GROUND(shapes) + LINE([line for shape in shapes for line in hatch(shape, 60, 1.9)])
    return made


def schiffli() -> Drawing:
    """A row of needles side by side working the same pattern."""
    made = cloth(6, 40, 84, 48, "blr") + LINE(across(40))
    for x in (18.0, 38.0, 58.0, 78.0):
        needle = path((x - 1.4, 8), (x + 1.4, 8), (x + 1.2, 30), (x, 38), (x - 1.2, 30)).close()
        made += GROUND(needle) + LINE(path((x, 33), (x, 44)))
        shapes = flower(x, 54, 8)
        made += GROUND(shapes) + LINE(
            smooth((x, 58), (x + 5, 68), (x, 78), (x - 4, 72)), leaf(x + 3, 68, 8, 10)
        )
    return made + LINE(path((6, 12), (90, 12)))


def chemical_lace() -> Drawing:
    """Only the thread left: motifs joined by bars, no ground of net."""
    made: Drawing = ()
    places = [(24.0, 24.0), (72.0, 24.0), (48.0, 50.0), (24.0, 76.0), (72.0, 76.0)]
    bars = []
    for x, y in places:
        if (x, y) != (48.0, 50.0):
            line = path((x, y), (48, 50))
            bars += [beside(line, -1), beside(line, 1)]
    for a, b in (((24, 24), (72, 24)), ((24, 76), (72, 76)), ((24, 24), (24, 76)), ((72, 24), (72, 76))):
        bars += [beside(path(a, b), -1), beside(path(a, b), 1)]
    made += LINE(bars)
    for x, y in places:
        shapes = flower(x, y, 15, 6)
        made += GROUND(ring((x, y), 8), shapes) + FAINT(
            [line for shape in shapes[:-1] for line in hatch(shape, 45, 2)]
        )
    return made


def hand_lace() -> Drawing:
    """Crossed threads on pins, the bobbins hanging."""
    made: Drawing = ()
    for i in range(5):
        x = 16 + 16.0 * i
        thread = smooth((30 + 9 * i, 10), (28 + 10 * i, 30), (x, 62))
        bobbin = (
            path((x - 1.6, 62), (x + 1.6, 62), (x + 1.4, 70))
            .bend((x + 3.4, 78), (x + 1.6, 86))
            .to((x - 1.6, 86))
            .bend((x - 3.4, 78), (x - 1.4, 70))
            .close()
        )
        made += LINE(thread) + GROUND(bobbin) + LINE(ring((x, 89), 2))
    plait = [path((26 + 11 * i, 10 + 7 * r), (31.5 + 11 * i, 17 + 7 * r)) for i in range(4) for r in range(4)]
    plait += [
        path((37 + 11 * i, 10 + 7 * r), (31.5 + 11 * i, 17 + 7 * r)) for i in range(4) for r in range(4)
    ]
    pins = [ring((26 + 11 * i, 9), 1.8) for i in range(5)]
    return LINE(plait) + made + GROUND(pins)


def _knit(x: float, y: float, rows: int, columns: int, size: float = 9.0) -> list[Path]:
    """Plain knitting: two leaning halves to a stitch."""
    found = []
    for row in range(rows):
        for column in range(columns):
            a, b = x + size * column, y + size * 0.8 * row
            half = (
                Path((a, b))
                .bend((a + size * 0.06, b + size * 0.6), (a + size * 0.48, b + size * 0.92))
                .bend((a + size * 0.52, b + size * 0.4), (a, b))
            )
            found += [half.close(), half.close().mirror(a + size * 0.48)]
    return found


def hand_knitted() -> Drawing:
    """Loops on one of two needles."""
    made = TINT(_knit(14, 42, 5, 7))
    rod = path((6, 33), (86, 33), (92, 35), (86, 37), (6, 37)).close()
    knob = ring((7, 35), 3.4)
    loops = [
        Path((14 + 9 * i, 43)).curve((12 + 9 * i, 26), (24 + 9 * i, 26), (22.6 + 9 * i, 43)) for i in range(7)
    ]
    second = path((62, 38), (90, 8), (92.6, 10), (65, 40)).close()
    return made + GROUND(rod, knob) + LINE(loops) + GROUND(second)


def machine_knitted() -> Drawing:
    """Loops on a row of hooked needles."""
    made = TINT(_knit(14, 42, 5, 7))
    needles = []
    for i in range(7):
        x = 18.4 + 9 * i
        needles += [
            path((x, 6), (x, 36)),
            Path((x, 36)).curve((x, 43), (x + 4, 43), (x + 4, 37)).to((x + 1.6, 30)),
        ]
    bed = path((8, 8), (88, 8), (88, 20), (8, 20)).close()
    loops = [
        Path((14 + 9 * i, 43)).curve((13 + 9 * i, 34), (23.6 + 9 * i, 34), (22.6 + 9 * i, 43))
        for i in range(7)
    ]
    return (
        made
        + LINE(loops)
        + LINE(needles)
        + GROUND(bed)
        + FAINT([path((18.4 + 9 * i, 8), (18.4 + 9 * i, 20)) for i in range(7)])
    )


def hand_faggoted() -> Drawing:
    """Two folded strips basted on paper, joined by the needle."""
    paper = box(6, 30, 84, 36)
    upper, lower = cloth(6, 8, 84, 28, "tlr"), cloth(6, 60, 84, 28, "blr")
    crossing = Path((10, 36))
    for i in range(1, 8):
        crossing = crossing.to((10 + 7 * i, 60 if i % 2 else 36))
    tacks = [stitches(across(31, 8, 88), 5, 4), stitches(across(65, 8, 88), 5, 4)]
    return (
        DOTTED(paper)
        + upper
        + lower
        + LINE(across(36), across(60), crossing, *tacks)
        + _needle(60, 60, -48, 30)
    )


def machine_hemstitched() -> Drawing:
    """A row of square holes, pierced and bound."""
    made = _ground()
    holes = [box(9.6 + 9 * i, 42, 5.4, 12) for i in range(9)]
    bound = [
        path((7.8 + 9 * i + d, y), (7.8 + 9 * i - d, y + e))
        for i in range(10)
        for d, y, e in ((1.6, 38, 4), (-1.6, 38, 4), (1.6, 54, 4), (-1.6, 54, 4))
    ]
    bars = [path((7.8 + 9 * i, 42), (7.8 + 9 * i, 54)) for i in range(10)]
    return made + GROUND(holes) + LINE(bound, bars, across(37.4), across(58.6))


def mercerised() -> Drawing:
    """A cotton fibre flat and twisted before, round and bright after; both in section."""
    flat: list[Path] = []
    for i in range(4):
        x = 8 + 15.0 * i
        flat += [
            Path((x, 20)).curve((x + 5, 20), (x + 10, 34), (x + 15, 34)),
            Path((x, 34)).curve((x + 5, 34), (x + 10, 20), (x + 15, 20)),
        ]
    before = (
        Path((76, 27))
        .curve((76, 20), (92, 20), (92, 24))
        .curve((92, 27), (84, 25), (83, 27))
        .curve((84, 30), (92, 28), (92, 31))
    )
    before = before.curve((92, 36), (76, 34), (76, 27)).close()
    tube = path((8, 62), (68, 62), (68, 80), (8, 80)).close()
    gloss = [path((12, 67), (40, 67)), path((46, 67), (60, 67)), path((18, 70), (52, 70))]
    return (
        LINE(flat)
        + TINT(before)
        + TINT(tube)
        + FAINT(gloss)
        + TINT(ring((84, 71), 8))
        + LINE(ring((84, 71), 1.2))
    )


def quilted() -> Drawing:
    """Layers held by crossing lines of stitches, puffed between; the wadding in section."""
    piece = box(8, 8, 80, 62)
    rows = [stitches(line, 2.6, 1.8) for angle in (45, -45) for line in hatch(piece, angle, 15)]
    top = Path((8, 80))
    for i in range(5):
        top = top.bend((16 + 16 * i, 70), (24 + 16 * i, 80))
    low = path((8, 86), (88, 86))
    return (
        WASH(piece)
        + LINE(piece, *rows)
        + LINE(top, low)
        + LINE([path((8 + 16 * i, 78), (8 + 16 * i, 88)) for i in range(6)])
        + FAINT([smooth((12 + 16 * i, 82), (16 + 16 * i, 79.6), (20 + 16 * i, 82)) for i in range(5)])
    )


def knotted() -> Drawing:
    """Netting: meshes with a knot at each crossing."""
    lines, knots = [], []
    for row in range(5):
        for column in range(5):
            x, y = 8 + 20.0 * column + (10 if row % 2 else 0), 10 + 17.0 * row
            if x > 90:
                continue
            knots.append(ring((x, y), 2.4))
            for step in (-10, 10):
                if row < 4 and 4 < x + step < 92:
                    line = path((x, y), (x + step, y + 17))
                    lines += [beside(line, -0.9), beside(line, 0.9)]
    return LINE(lines) + GROUND(knots)


def hand_painted() -> Drawing:
    """A brush, and strokes broad and narrow."""
    petals = [
        Path((36, 50))
        .curve((26, 38), (30, 24), (38, 24))
        .curve((46, 26), (44, 40), (36, 50))
        .turn(72 * i, (36, 50))
        for i in range(5)
    ]
    streaks = [smooth((36, 46), (34, 38), (37, 30)).turn(72 * i, (36, 50)) for i in range(5)]
    stem = Path((38, 58)).curve((44, 70), (40, 80), (32, 86)).curve((44, 80), (48, 70), (40, 56)).close()
    handle = path((70, 34), (88, 6), (92, 8), (75, 37)).close()
    ferrule = path((64, 43), (70, 34), (75, 37), (69, 46)).close()
    hair = Path((64, 43)).curve((58, 48), (58, 52), (54, 58)).curve((62, 56), (66, 52), (69, 46)).close()
    return (
        _ground()
        + TINT(petals, stem)
        + FAINT(streaks)
        + GROUND(ring((36, 50), 3.4), handle, ferrule, hair)
        + LINE(smooth((64, 47), (60, 52), (57, 56)), smooth((67, 48), (62, 53), (57, 56)))
    )


DRAWINGS: Mapping[str, Callable[[], Drawing]] = {
    "hand-sewn": hand_sewn,
    "lockstitch-machine": lockstitch_machine,
    "chainstitch-machine": chainstitch_machine,
    "hand-embroidered": hand_embroidered,
    "machine-embroidered": machine_embroidered,
    "schiffli": schiffli,
    "chemical-lace": chemical_lace,
    "hand-lace": hand_lace,
    "hand-knitted": hand_knitted,
    "machine-knitted": machine_knitted,
    "hand-faggoted": hand_faggoted,
    "machine-hemstitched": machine_hemstitched,
    "mercerised": mercerised,
    "quilted": quilted,
    "knotted": knotted,
    "hand-painted": hand_painted,
}
