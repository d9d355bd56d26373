"""Trimmings, as a piece along an edge or on the surface: bands and edgings."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from inperiod.drawing.hand import (
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
    clipped,
    hatch,
    path,
    ring,
    smooth,
    stitches,
    waved,
)
from inperiod.drawing.terms import motifs
from inperiod.drawing.terms.cloths import across, band, cloth
from inperiod.drawing.terms.motifs import flower

LEFT, RIGHT = 6.0, 90.0


def _ground() -> Drawing:
    return cloth(LEFT, 8, RIGHT - LEFT, 80, "tblr")


def _above(level: float) -> Drawing:
    """Cloth down to an edge."""
    return cloth(LEFT, 8, RIGHT - LEFT, level - 8, "tlr") + LINE(across(level))


def _mesh(area: Path, gap: float = 3.6) -> list[Path]:
    return hatch(area, 45, gap) + hatch(area, -45, gap)


def insertion() -> Drawing:
    """Lace with two straight edges between two pieces of cloth."""
    strip = band(32, 32)
    upper, lower = cloth(LEFT, 8, 84, 24, "tlr"), cloth(LEFT, 64, 84, 24, "blr")
    motif = [one for x in (20, 48, 76) for one in flower(x, 48, 9)]
    stems = waved(across(48, 6, 90), 8, 6, "wave")
    return (
        upper
        + lower
        + FAINT(_mesh(strip))
        + LINE(across(32), across(64), across(35), across(61))
        + FAINT(stems)
        + GROUND(motif)
    )


def lace_edging() -> Drawing:
    """One straight edge sewn on, one shaped edge hanging free."""
    low = waved(across(66), 14, 4, "scallops")
    area = path((LEFT, 38), (RIGHT, 38)).to((RIGHT, 66)).then(low.reverse()).close()
    inner = waved(across(64, 8, 88), 9, 4, "scallops")
    motif = [one for i in range(4) for one in flower(16.5 + 21 * i, 59, 7.4)]
    dots = [ring((6 + 21 * i, 60), 2) for i in range(1, 4)]
    return _above(38) + FAINT(_mesh(area)) + LINE(low, inner, across(41)) + GROUND(motif, dots)


def braid() -> Drawing:
    """A plaited band sewn on."""
    strip = band(34, 28)
    plaits = []
    for i in range(14):
        x = 6 + 6 * i
        plaits += [
            smooth((x, 34.6), (x + 5, 42), (x + 4, 48)),
            smooth((x + 3, 61.4), (x + 8, 54), (x + 4, 48)),
        ]
    inside = [piece for one in plaits for piece in clipped(one, strip)]
    edges = [stitches(across(37), 2, 2.6), stitches(across(59), 2, 2.6)]
    return _ground() + GROUND(strip) + LINE(inside) + FAINT(*edges)


def piping() -> Drawing:
    """A fold of bias cloth, corded, standing out along the edge; its end cut to show the cord."""
    roll = path((LEFT, 62), (78, 62)).curve((86, 62), (86, 78), (78, 78)).to((LEFT, 78)).close()
    slants = [path((8 + 7 * i, 77), (14 + 7 * i, 63)) for i in range(10)]
    return (
        _above(62)
        + GROUND(roll)
        + FAINT(slants)
        + GROUND(ring((79, 70), 6, 8), ring((79, 70), 3.2, 4.4))
        + LINE(stitches(across(58), 2.6, 2))
    )


def binding() -> Drawing:
    """A strip folded over the raw edge, showing on both sides; open at the end."""
    strip = path((LEFT, 54), (64, 54), (64, 80), (LEFT, 80)).close()
    behind = Path((64, 54)).to((74, 57), (74, 77)).bend((72, 82), (64, 80)).close()
    edge = [
        path((64, 76), (90, 76)),
        path((78, 76), (78, 79)),
        path((83, 76), (83, 79)),
        path((88, 76), (88, 79)),
    ]
    made = cloth(LEFT, 8, 84, 68, "tlr") + LINE(edge)
    return (
        made
        + GROUND(behind)
        + GROUND(strip)
        + LINE(stitches(path((LEFT, 58), (64, 58)), 2.6, 2))
        + FAINT(path((LEFT, 77), (64, 77)))
    )


def contrast_band() -> Drawing:
    """A flat strip of other cloth near the edge."""
    strip = band(46, 22)
    return _above(84) + LINE(strip) + LINE(hatch(strip, -45, 3.4))


def ribbon() -> Drawing:
    """Sewn flat along both edges, with a cut end."""
    strip = path((LEFT, 38), (78, 38), (70, 49), (78, 60), (LEFT, 60)).close()
    sewn = [stitches(path((8, 40.6), (74, 40.6)), 1.8, 2), stitches(path((8, 57.4), (74, 57.4)), 1.8, 2)]
    gloss = [path((14, 46), (26, 46)), path((30, 50), (50, 50)), path((38, 46), (60, 46))]
    return _ground() + GROUND(strip) + LINE(*sewn) + FAINT(gloss)


def beading_slotted() -> Drawing:
    """An embroidered band with slots, ribbon run through them."""
    top, low = waved(across(30), -5, 7, "scallops"), waved(across(66), 5, 7, "scallops")
    strip = top.to((RIGHT, 66)).then(low.reverse()).close()
    made = _ground() + GROUND(strip) + LINE(across(36), across(60))
    for i in range(4):
        made += TINT(box(9 + 21.6 * i, 41, 12, 14)) + LINE(hatch(box(9 + 21.6 * i, 41, 12, 14), 0, 2.8))
    slots = [box(8 + 21.6 * i + d, 39.4, 1.6, 17.2) for i in range(4) for d in (0, 12.6)]
    eyes = [ring((12 + 12 * i, y), 1.5) for i in range(7) for y in (32.6, 63.4)]
    return made + GROUND(slots) + LINE(eyes)


def fringe_trim() -> Drawing:
    """A woven heading with threads hanging from it, on the surface."""
    heading = band(26, 12)
    threads = [path((x, 38), (x + (0.4, -0.4)[i % 2], 76)) for i, x in enumerate(range(8, 90, 3))]
    knots = [ring((9.4 + 6 * i, 46), 1.3) for i in range(14)]
    lattice = waved(across(26.6), 10.8, 14, "points")
    return _ground() + MASK(band(38, 38)) + LINE(threads) + GROUND(heading) + LINE(lattice) + GROUND(knots)


def frill() -> Drawing:
    """A narrow gathered strip sewn by one edge."""
    low = waved(across(66), 3.6, 10, "wave")
    strip = path((LEFT, 40), (RIGHT, 40)).to((RIGHT, 66)).then(low.reverse()).close()
    gathers = [path((9 + 4 * i, 42), (9 + 4 * i + (i % 3 - 1), 48 + i * 7 % 5)) for i in range(20)]
    folds = [path((8.1 + 8.4 * i, 64 + (2 if i % 2 else -1)), (8.6 + 8.4 * i, 55)) for i in range(10)]
    return _ground() + GROUND(strip) + LINE(gathers, folds, stitches(across(42.4), 2, 1.6))


def ruching() -> Drawing:
    """Gathered along the middle, both edges free."""
    top, low = waved(across(32), 3, 9, "wave"), waved(across(64), -3, 9, "wave")
    strip = top.to((RIGHT, 64)).then(low.reverse()).close()
    folds = []
    for i in range(17):
        x = 8.6 + 4.9 * i
        folds += [
            smooth((x, 46.6), (x + 0.8, 42), (x - 0.4, 35 + i % 3 * 2)),
            smooth((x, 49.4), (x + 0.8, 54), (x - 0.4, 61 - i % 3 * 2)),
        ]
    return _ground() + GROUND(strip) + LINE(folds, stitches(across(48), 2.2, 1.4))


def soutache() -> Drawing:
    """A grooved braid in a curling pattern."""
    curls = Path((8, 62))
    for i in range(4):
        x = 8 + 20.0 * i
        curls = (
            curls.curve((x + 14, 62), (x + 20, 50), (x + 14, 40))
            .curve((x + 8, 30), (x - 2, 40), (x + 6, 48))
            .curve((x + 10, 53), (x + 16, 62), (x + 20, 62))
        )
    left, right = beside(curls, -1.5), beside(curls, 1.5)
    return (
        _ground()
        + MASK(left.then(right.reverse()).close())
        + LINE(left, right)
        + FAINT(curls)
        + LINE(beside(across(74), -1.5), beside(across(74), 1.5))
        + FAINT(across(74))
    )


def fur_band() -> Drawing:
    """A strip of fur: locks that end in points, over one another, and ragged at both edges."""
    top, low = waved(across(42), -1.8, 22, "points"), waved(across(74), 5.0, 15, "points")
    strip = top.to((RIGHT, 74)).then(low.reverse()).close()
    locks = []
    for row in range(4):
        for i in range(10):
            x, y = 12 + 8.0 * i + (4.0 if row % 2 else 0), 47 + 6.2 * row + (1.4 if i % 3 == 1 else 0)
            if x < 87:
                locks.append(smooth((x - 2.8, y), (x - 1.5, y + 3.4), (x, y + 6)))
                locks.append(smooth((x + 2.0, y + 1), (x + 1.4, y + 3.6), (x, y + 6)))
    return cloth(LEFT, 8, 84, 34, "tlr") + MASK(strip) + LINE(top, low) + FAINT(locks)


def tape() -> Drawing:
    """Narrow tapes in rows, turning a corner."""
    made = cloth(LEFT, 8, 74, 74, "tl") + LINE(path((LEFT, 82), (80, 82), (80, 8)))
    for out in (72, 62, 52):
        corner = path((LEFT, out + 2), (out, out + 2), (out, 8))
        inner = path((LEFT, out - 2), (out - 4, out - 2), (out - 4, 8))
        ribbon = corner.then(inner.reverse()).close()
        made += MASK(ribbon) + LINE(corner, inner, path((out, out + 2), (out - 4, out - 2)))
    return made


def rickrack() -> Drawing:
    """Braid woven in a wave."""
    middle = waved(across(48), 8, 7, "wave")
    left, right = middle.move(0, -4.6), middle.move(0, 4.6)
    strip = left.to(right.end).then(right.reverse()).close()
    threads = [
        path((LEFT + 84 * i / 56 + 0.4, y - 3.4), (LEFT + 84 * i / 56 + 1.2, y + 3.4))
        for i, (_, y) in enumerate(middle.points(4)[:56])
    ]
    return _ground() + GROUND(strip) + FAINT(threads)


def smocking_band() -> Drawing:
    """A smocked strip as ornament between plain cloth."""
    made = _ground() + GROUND(band(28, 40))
    cells = [waved(across(36 + 8 * row, 8, 88), 4 if row % 2 else -4, 10, "points") for row in range(4)]
    dots = [
        [path((8 + 8 * i - 1.6, 36 + 8 * row), (8 + 8 * i + 1.6, 36 + 8 * row)) for i in range(1, 10)]
        for row in range(4)
    ]
    gathers = [path((10 + 4 * i, 22), (10 + 4 * i, 27)) for i in range(20)]
    below = [path((10 + 4 * i, 69), (10 + 4 * i, 74)) for i in range(20)]
    return made + LINE(cells, *dots) + FAINT(gathers, below)


def fagoting() -> Drawing:
    """Open stitches across a gap between two finished edges."""
    upper, lower = cloth(LEFT, 8, 84, 28, "tlr"), cloth(LEFT, 60, 84, 28, "blr")
    crossing = Path((10, 36))
    for i in range(1, 13):
        crossing = crossing.to((10 + 6.4 * i, 60 if i % 2 else 36))
    second = [path((10 + 6.4 * i, 60 if i % 2 else 36), (13.6 + 6.4 * i, 48)) for i in range(12)]
    return (
        upper
        + lower
        + LINE(across(36), across(60), crossing, second)
        + FAINT(across(33), across(63))
        + DOTTED(across(28), across(68))
    )


def stripes_knitted() -> Drawing:
    """Bands of another colour knitted in: the stitches show."""
    made: Drawing = ()
    for row in range(8):
        y = 10 + 9.6 * row
        dark = row in (2, 3, 5)
        stitches_ = []
        for i in range(8):
            x = 10 + 9.6 * i
            left = (
                Path((x, y))
                .bend((x + 0.6, y + 6), (x + 4.6, y + 9))
                .bend((x + 5, y + 4), (x + 0.4, y))
                .close()
            )
            stitches_ += [left, left.mirror(x + 4.6)]
        made += TINT(stitches_) if dark else FAINT(stitches_)
        if dark:
            made += WASH(band(y, 9.2, 9, 87))
    return made


DRAWINGS: Mapping[str, Callable[[], Drawing]] = {
    "insertion": insertion,
    "lace-edging": lace_edging,
    "braid": braid,
    "piping": piping,
    "binding": binding,
    "contrast-band": contrast_band,
    "ribbon": ribbon,
    "beading-slotted": beading_slotted,
    "fringe-trim": fringe_trim,
    "frill": frill,
    "ruching": ruching,
    "soutache": soutache,
    "fur-band": fur_band,
    "tape": tape,
    "rickrack": rickrack,
    "smocking-band": smocking_band,
    "fagoting": fagoting,
    "stripes-knitted": stripes_knitted,
    **motifs.DRAWINGS,
}
