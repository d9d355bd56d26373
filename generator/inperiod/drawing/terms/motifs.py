"""Trimmings that are set on singly or in patterns: embroidery, beads, bows, tassels, badges."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping

from inperiod.drawing.hand import (
    CENTRE,
    FAINT,
    GROUND,
    LINE,
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
    waved,
)
from inperiod.drawing.terms.cloths import across, cloth


def flower(x: float, y: float, far: float, petals: int = 5) -> list[Path]:
    """A flower of rounded petals round an eye."""
    petal = Path((x, y - far * 0.28)).curve(
        (x - far * 0.6, y - far * 0.7), (x - far * 0.42, y - far * 1.2), (x, y - far)
    )
    petal = petal.curve((x + far * 0.42, y - far * 1.2), (x + far * 0.6, y - far * 0.7), (x, y - far * 0.28))
    return [petal.turn(360 * i / petals, (x, y)) for i in range(petals)] + [ring((x, y), far * 0.2)]


def leaf(x: float, y: float, long: float, angle: float) -> Path:
    """A pointed leaf from its stalk."""
    shape = (
        Path((x, y))
        .bend((x + long / 2, y - long * 0.42), (x + long, y))
        .bend((x + long / 2, y + long * 0.42), (x, y))
    )
    return shape.close().turn(angle, (x, y))


def _ground() -> Drawing:
    return cloth(6, 8, 84, 80, "tblr")


def embroidery_white() -> Drawing:
    """Eyelets and raised leaves, white on white; a scalloped edge."""
    low = waved(across(74), 8, 5, "scallops")
    piece = path((6, 8), (90, 8)).to((90, 74)).then(low.reverse()).close()
    eyes: list[Path] = []
    for x in (23, 48, 73):
        for i in range(6):
            a = math.radians(60 * i)
            eyes.append(ring((x + 8 * math.cos(a), 36 + 8 * math.sin(a)), 2.8))
        eyes.append(ring((x, 36), 2.8))
    leaves = [leaf(x, 58, 9, a) for x in (35.5, 60.5) for a in (200, 270, 340)]
    small = [ring((x, 70), 2) for x in (14.4, 31.2, 48, 64.8, 81.6)]
    overcast = waved(across(74), 5, 5, "scallops")
    return (
        WASH(piece)
        + LINE(low, overcast)
        + GROUND(eyes, leaves, small)
        + FAINT(path((6, 74), (6, 8)), across(8), path((90, 8), (90, 74)))
    )


def embroidery_colour() -> Drawing:
    """A spray of flowers, filled with stitches."""
    stems = [
        smooth((20, 84), (34, 62), (52, 50), (70, 30)),
        smooth((38, 60), (34, 44), (30, 32)),
        smooth((50, 52), (62, 60), (74, 64)),
    ]
    leaves = [
        leaf(28, 71, 15, 200),
        leaf(33, 66, 15, 30),
        leaf(44, 55, 14, 215),
        leaf(58, 44, 13, 40),
        leaf(32, 46, 11, 170),
    ]
    flowers = [one for x, y, far in ((68, 28, 14), (29, 27, 11), (76, 66, 9)) for one in flower(x, y, far)]
    fill = [line for shape in leaves for line in hatch(shape, 20, 2)]
    petals = [line for shape in flowers if not _is_eye(shape) for line in hatch(shape, -30, 3)]
    return _ground() + LINE(stems) + GROUND(leaves, flowers) + LINE(fill) + FAINT(petals)


def _is_eye(shape: Path) -> bool:
    return len(shape.steps) == 4


def beads() -> Drawing:
    """Round and tube beads sewn on in a pattern."""
    rounds, tubes = [], []
    for i in range(7):
        x = 12 + 12.0 * i
        rounds += [ring((x, 20), 2.6), ring((x, 76), 2.6)]
    for x in (28.0, 68.0):
        for i in range(8):
            tubes.append(box(x + 5, 46.8, 9, 2.4).turn(45 * i, (x, 48)))
            rounds.append(
                ring(
                    (x + 17.4 * math.cos(math.radians(45 * i)), 48 + 17.4 * math.sin(math.radians(45 * i))),
                    2.2,
                )
            )
        rounds.append(ring((x, 48), 3.4))
    return (
        _ground()
        + GROUND(rounds, tubes)
        + LINE(
            [
                Path((p.start[0] - 1.6, p.start[1] - 1)).bend(
                    (p.start[0] - 2.4, p.start[1] - 2.2), (p.start[0] - 3.4, p.start[1] - 1.6)
                )
                for p in rounds[:14]
            ]
        )
    )


def sequins() -> Drawing:
    """Overlapping discs, each with its hole and thread."""
    made = _ground()
    for row in range(5):
        y = 20 + 13.0 * row
        for i in range(6):
            x = 15 + 13.0 * i + (6.5 if row % 2 else 0)
            if x < 86:
                made += (
                    GROUND(ring((x, y), 7.6))
                    + LINE(ring((x, y - 1), 1.3))
                    + LINE(path((x, y - 2.3), (x, y - 6)))
                )
    return made


def applique() -> Drawing:
    """A cut shape sewn on round its edge."""
    petals = [one for one in flower(48, 36, 23, 5) if not _is_eye(one)]
    whole = [leaf(48, 66, 26, 205), leaf(48, 66, 26, -25)]
    stem = path((46.6, 46), (49.4, 46), (49.6, 88), (46.4, 88)).close()
    sewn = [stitches(one.scale(0.82, about=_middle(one)), 2, 1.8) for one in (*petals, *whole)]
    return _ground() + GROUND(stem, whole, petals, ring((48, 36), 6.4)) + LINE(*sewn)


def _middle(shape: Path) -> tuple[float, float]:
    points = shape.points()
    return (sum(x for x, _ in points) / len(points), sum(y for _, y in points) / len(points))


def monogram() -> Drawing:
    """Two letters worked one through the other."""
    first = [path((20, 76), (42, 20), (64, 76)), path((28.6, 54), (55.4, 54))]
    second = [path((38, 76), (38, 34), (56, 62), (74, 34), (74, 76))]
    feet = [
        path((15, 76), (25, 76)),
        path((59, 76), (69, 76)),
        path((33, 76), (43, 76)),
        path((69, 76), (79, 76)),
    ]
    made = _ground()
    for line in (*first, *second, *feet):
        wide = 1.2 if line in feet else 2.6
        ribbon = beside(line, -wide).then(beside(line, wide).reverse()).close()
        made += GROUND(ribbon) + LINE(hatch(ribbon, -30, 2.8))
    return made


def buttons_ornamental() -> Drawing:
    """A row of small buttons, no buttonhole and no opening."""
    places = [(18.0 + 12 * i, 22 + 10.0 * i) for i in range(6)]
    lower = [(30.0 + 12 * i, 16 + 10.0 * i) for i in range(5)]
    discs = [ring((x, y), 5) for x, y in (*places, *lower) if y < 80 and x < 84]
    return (
        _ground()
        + GROUND(discs)
        + LINE(
            [
                Path((d.start[0] - 8, d.start[1] - 1)).bend(
                    (d.start[0] - 7.4, d.start[1] - 3.4), (d.start[0] - 5, d.start[1] - 3.4)
                )
                for d in discs
            ]
        )
    )


def tassel() -> Drawing:
    """Threads bound at the top, hung from a cord."""
    cord = smooth((48, 4), (46.6, 12), (48, 20))
    head = (
        Path((41, 21))
        .curve((33, 25), (34, 35), (41, 38))
        .to((55, 38))
        .curve((62, 35), (63, 25), (55, 21))
        .close()
    )
    neck = box(41, 38, 14, 5)
    left = Path((42, 43)).curve((32, 50), (27, 68), (25, 90))
    skirt = left.to((71, 90)).then(left.mirror().reverse()).close()
    threads = [
        Path((42.6 + 1.8 * i, 43.6)).bend((37.5 + 3.5 * i, 56), (27 + 7 * i, 90 - i % 2)) for i in range(7)
    ]
    bind = [path((41.4, 39.6 + 1.7 * i), (54.6, 39.6 + 1.7 * i)) for i in range(2)]
    lines = [path((45, 25), (44.6, 36)), path((48, 24), (48, 36)), path((51, 25), (51.4, 36))]
    return WASH(skirt) + LINE(cord, cord.move(1.8), threads) + GROUND(head, neck) + LINE(bind, lines)


def bow() -> Drawing:
    """Ribbon made up in loops."""
    loop = Path((44, 42)).curve((32, 22), (8, 20), (8, 36)).curve((8, 52), (30, 56), (44, 48)).close()
    inner = Path((44, 44)).curve((34, 36), (20, 32), (16, 36)).curve((18, 44), (32, 46), (44, 46))
    tail = Path((44, 50)).bend((34, 66), (22, 80)).to((32, 80), (36, 88)).bend((44, 72), (50, 51)).close()
    knot = (
        path((43, 38))
        .bend((48, 36), (53, 38))
        .bend((55, 45), (53, 52))
        .bend((48, 54), (43, 52))
        .bend((41, 45), (43, 38))
        .close()
    )
    creases = [path((42, 42), (28, 34)), path((42, 48), (30, 49))]
    return (
        GROUND(tail, tail.mirror(), loop, loop.mirror())
        + LINE.both(inner, creases)
        + GROUND(knot)
        + LINE(path((46, 41), (46, 49)), path((50, 41), (50, 49)))
    )


def sash() -> Drawing:
    """A wide soft band about the waist, its bow and ends at the side."""
    side = Path((22, 4)).curve((24, 14), (28, 22), (28, 30)).to((28, 50)).curve((26, 60), (16, 76), (12, 92))
    far = Path((70, 4)).curve((68, 14), (64, 22), (64, 30)).to((64, 50)).curve((66, 60), (76, 76), (80, 92))
    dress = side.to(far.end).then(far.reverse()).close()
    belt = Path((28, 30)).bend((46, 34), (64, 30)).to((64, 50)).bend((46, 54), (28, 50)).close()
    folds = [Path((28, 30 + d)).bend((46, 34 + d), (64, 30 + d)) for d in (5, 10, 15)]
    loop = Path((66, 40)).curve((70, 26), (86, 24), (86, 34)).curve((86, 42), (76, 44), (66, 41)).close()
    low = Path((66, 41)).curve((76, 44), (86, 50), (82, 57)).curve((76, 60), (68, 52), (66, 42)).close()
    tails = [
        Path((64, 44)).bend((66, 64), (60, 86)).to((71, 88)).bend((73, 64), (68, 44)).close(),
        Path((67, 44)).bend((76, 60), (76, 78)).to((86, 76)).bend((83, 58), (69, 43)).close(),
    ]
    return (
        WASH(dress)
        + FAINT(side, far)
        + GROUND(belt, *reversed(tails), loop, low)
        + LINE(folds)
        + GROUND(ring((66, 41), 3.6, 4.6))
    )


def rosette() -> Drawing:
    """Ribbon gathered round into a flower."""
    made: Drawing = ()
    for far, count, shift in ((40.0, 18, 0.0), (28.0, 14, 6.0), (16.0, 10, 3.0)):
        edge: Path | None = None
        for i in range(count):
            a, b, m = (math.radians(360 * k / count + shift) for k in (i, i + 1, i + 0.5))
            begin = (CENTRE + far * 0.93 * math.cos(a), CENTRE + far * 0.93 * math.sin(a))
            end = (CENTRE + far * 0.93 * math.cos(b), CENTRE + far * 0.93 * math.sin(b))
            peak = (CENTRE + far * 1.1 * math.cos(m), CENTRE + far * 1.1 * math.sin(m))
            edge = (edge or Path(begin)).bend(peak, end)
        assert edge is not None
        rays = []
        for i in range(count):
            a = math.radians(360 * i / count + shift)
            rays.append(
                path(
                    (CENTRE + far * 0.93 * math.cos(a), CENTRE + far * 0.93 * math.sin(a)),
                    (CENTRE + far * 0.72 * math.cos(a), CENTRE + far * 0.72 * math.sin(a)),
                )
            )
        made += GROUND(edge.close()) + LINE(rays)
    return made + GROUND(ring((CENTRE, CENTRE), 6)) + LINE(ring((CENTRE, CENTRE), 2.4))


def anchor_motif() -> Drawing:
    """An anchor on the corner of a collar, with rows of tape."""
    corner = path((6, 8), (90, 8), (90, 88), (6, 88)).close()
    rows = [path((90 - d, 8), (90 - d, 88 - d), (6, 88 - d)) for d in (5, 9)]
    shank = path((44, 24), (48, 24), (48, 66), (44, 66)).close()
    stock = path((34, 30), (58, 30), (58, 34), (34, 34)).close()
    arms = (
        Path((46, 72))
        .curve((32, 70), (26, 62), (24, 50))
        .to((19, 56))
        .to((24, 46), (32, 54), (27.6, 54))
        .curve((31, 62), (38, 66), (46, 66))
        .close()
    )
    star = ring((46, 19), 5)
    return (
        WASH(corner)
        + LINE(path((90, 8), (90, 88), (6, 88)), rows)
        + GROUND(arms, arms.mirror(46), shank, stock, star)
        + LINE(ring((46, 19), 2))
    )


DRAWINGS: Mapping[str, Callable[[], Drawing]] = {
    "embroidery-white": embroidery_white,
    "embroidery-colour": embroidery_colour,
    "beads": beads,
    "sequins": sequins,
    "applique": applique,
    "monogram": monogram,
    "buttons-ornamental": buttons_ornamental,
    "tassel": tassel,
    "bow": bow,
    "sash": sash,
    "rosette": rosette,
    "anchor-motif": anchor_motif,
}
