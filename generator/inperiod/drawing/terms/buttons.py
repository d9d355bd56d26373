"""Buttons and what else passes a loop, a stud or a hole, close up."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping

from inperiod.drawing.hand import (
    CENTRE,
    FAINT,
    GROUND,
    LINE,
    MASK,
    TINT,
    Drawing,
    Path,
    Point,
    box,
    path,
    ring,
    smooth,
)
from inperiod.drawing.terms.cloths import cloth, two_edges

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


def buttons() -> Drawing:
    made = two_edges(8)
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
    side = Path((21, 72)).curve((21, 68), (30, 70), (34, 72)).bend((CENTRE, 76), (62, 72))
    side = side.curve((66, 70), (75, 68), (75, 72)).to((75, 80)).bend((75, 88), (66, 88)).to((30, 88))
    side = side.bend((21, 88), (21, 80)).close()
    return face + holes + TINT(side) + LINE(path((21, 79), (75, 79)))


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


def loops_and_buttons() -> Drawing:
    """Loops standing out from the edge in place of buttonholes."""
    made = (
        cloth(6, 8, 34, 80, "tbl")
        + cloth(48, 8, 42, 80, "tbr")
        + LINE(path((40, 8), (40, 88)), path((48, 8), (48, 88)))
    )
    for y in (20, 39, 58, 77):
        outer = Path((40, y - 5)).curve((72, y - 12), (72, y + 12), (40, y + 5))
        inner = Path((40, y - 2.8)).curve((67, y - 8.6), (67, y + 8.6), (40, y + 2.8))
        made += (
            LINE(outer, inner)
            + GROUND(ring((54, y), 5.6))
            + LINE(Path((51, y - 0.6)).bend((51.6, y - 3.4), (54.6, y - 3.4)))
        )
    return made


def toggle() -> Drawing:
    """Bars passed crosswise through loops."""
    made = two_edges(4)
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
    made = two_edges(3)
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
    "loops-and-buttons": loops_and_buttons,
    "toggle": toggle,
    "frogs": frogs,
    "hook-and-loop": hook_and_loop,
    "eyelets-metal": eyelets_metal,
    "busk-front": busk_front,
}
