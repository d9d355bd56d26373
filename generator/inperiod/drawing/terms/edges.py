"""Lower edges, as the bottom of a piece of cloth."""

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
    path,
    ring,
    smooth,
    stitches,
    ticks,
    waved,
)
from inperiod.drawing.terms.cloths import across, band, torn

LEFT, RIGHT = 6.0, 90.0


def _piece(edge: Path, top: float = 14.0) -> Drawing:
    """Cloth above an edge that runs from left to right."""
    upper = torn((LEFT, top), (RIGHT, top), 0.9)
    left, right = (
        torn((LEFT, edge.start[1]), (LEFT, top), 0.9, 4),
        torn((RIGHT, top), (RIGHT, edge.end[1]), 0.9, 4),
    )
    outline = upper.then(right).then(edge.reverse()).then(left).close()
    return WASH(outline) + FAINT(upper, left, right) + LINE(edge)


def straight_hem() -> Drawing:
    """Turned up inside: the turning dotted, its stitches just seen."""
    return _piece(across(76)) + DOTTED(across(62)) + LINE(stitches(across(61), 1.4, 5.4))


def scalloped() -> Drawing:
    edge = waved(across(66), 12, 5, "scallops")
    return _piece(edge) + LINE(waved(across(62), 12, 5, "scallops"))


def handkerchief() -> Drawing:
    """Points that hang as of squares held by a corner, in folds."""
    edge = path((LEFT, 58), (20, 86), (34, 56), (48, 88), (62, 56), (76, 86), (RIGHT, 58))
    folds = [
        smooth((20, 82), (21, 60), (20, 40)),
        smooth((48, 84), (47, 58), (48, 36)),
        smooth((76, 82), (75, 60), (76, 40)),
    ]
    light = [path((34, 56), (33, 36)), path((62, 56), (63, 36))]
    return _piece(edge) + LINE(folds, light)


def faced_hem() -> Drawing:
    """The corner turned back to show the separate facing inside."""
    edge = path((LEFT, 76), (60, 76))
    upper = torn((LEFT, 14), (RIGHT, 14), 0.9)
    outline = upper.to((RIGHT, 40), (60, 76), (LEFT, 76)).close()
    turned = path((60, 76), (RIGHT, 40), (84, 22), (48, 56)).close()
    strip = path((60, 76), (RIGHT, 40), (86.8, 30.6), (53.6, 65.6)).close()
    return (
        WASH(outline)
        + FAINT(upper, torn((LEFT, 76), (LEFT, 14), 0.9, 4))
        + LINE(edge)
        + DOTTED(path((LEFT, 62), (50, 62)))
        + GROUND(turned)
        + TINT(strip)
        + LINE(stitches(path((84.6, 27), (51, 61.6)), 2, 1.6), ticks(path((60, 76), (RIGHT, 40)), -6, 4, 60))
    )


def flounce() -> Drawing:
    """A gathered strip set on as the lowest part."""
    hem = waved(path((LEFT, 80), (RIGHT, 80)), 4, 7, "scallops")
    strip = path((LEFT, 42), (RIGHT, 42)).to((RIGHT, 80)).then(hem.reverse()).close()
    gathers = [path((x, 42.6), (x + (i % 3 - 1), 52 + i * 7 % 5)) for i, x in enumerate(range(9, 90, 5))]
    folds = [path((LEFT + 12 * i, 80), (LEFT + 12 * i + 0.6, 60)) for i in range(1, 7)]
    return _piece(across(42)) + MASK(strip) + TINT(strip) + LINE(gathers, folds)


def pinked() -> Drawing:
    """Small cut points, left raw: no hem, no stitch."""
    return _piece(waved(across(74), 4.4, 14, "points"))


def rolled_hem() -> Drawing:
    """The very edge rolled and whipped."""
    edge = waved(across(76), 0.7, 14, "wave")
    roll = path((LEFT, 71), (RIGHT, 71))
    return _piece(edge) + LINE(roll, [path((x, 69.4), (x + 3.4, 76)) for x in range(8, 88, 5)])


def fringe() -> Drawing:
    """Threads drawn from the cloth itself."""
    threads = [
        smooth((x, 60), (x + (0.7, -0.6, 0.2)[i % 3], 73), (x + (-0.5, 0.8, 0)[i % 3], 86))
        for i, x in enumerate(range(8, 90, 3))
    ]
    return _piece(across(60)) + LINE(threads) + FAINT([across(y) for y in (56, 52)])


def picot_edge() -> Drawing:
    """A line of tiny points left by cutting hemstitching through the middle."""
    holes = [ring((x + 3, 69.6), 0.9, 1.3) for x in range(6, 90, 6)]
    points = [path((x, 72), (x, 77)) for x in range(6, 91, 6)]
    return _piece(across(72)) + LINE(holes, points, across(67))


def _legs(level: float, inside: float) -> tuple[Path, Path]:
    side = Path((28, 8)).curve((25, 22), (19, 30), (17, level))
    half = side.to((45, level), (CENTRE, inside))
    return half.then(half.mirror().reverse()).close(), side


def trunk_leg() -> Drawing:
    """Short straight legs joined to the body."""
    outline, _ = _legs(70, 50)
    hems = [path((17.4, 65), (45.4, 65)), path((50.6, 65), (78.6, 65))]
    flesh = FAINT.both(Path((19, 70)).bend((22, 84), (24, 92)), Path((43, 70)).bend((42, 82), (41, 92)))
    top = path((28, 8), (68, 8))
    return flesh + TINT(outline) + LINE(hems, top)


def short_skirt_leg() -> Drawing:
    """A short skirt over the legs."""
    outline, _ = _legs(78, 52)
    flesh = FAINT.both(path((20, 78), (24, 92)), path((42, 78), (41, 92)))
    side = Path((28, 8)).curve((25, 22), (15, 34), (9, 58))
    hem = Path((9, 58)).bend((CENTRE, 66), (87, 58))
    skirt = side.then(hem).then(side.mirror().reverse()).close()
    folds = [smooth((38, 20), (33, 44), (29, 60)), smooth((58, 20), (63, 44), (67, 60))]
    return flesh + TINT(outline) + MASK(skirt) + TINT(skirt) + LINE(folds)


def cuffed() -> Drawing:
    """A turned-up cuff about the leg."""
    leg = path((28, 8), (24, 66), (72, 66), (68, 8)).close()
    cuff = path((20.6, 66), (75.4, 66)).to((75, 84)).bend((CENTRE, 88), (21, 84)).close()
    return (
        WASH(leg)
        + FAINT(path((28, 8), (24, 66)), path((68, 8), (72, 66)), torn((28, 8), (68, 8), 0.8, 3))
        + FAINT(path((44, 10), (43, 66)))
        + GROUND(cuff)
        + LINE(smooth((75.4, 66), (72, 69), (66, 70)), smooth((20.6, 66), (24, 69), (30, 70)))
    )


def vandyked() -> Drawing:
    edge = waved(across(60), 20, 5, "points")
    return _piece(edge) + LINE(waved(across(54), 20, 5, "points"))


def deep_hem() -> Drawing:
    """A turning broad enough to show as a band."""
    return _piece(across(82)) + WASH(band(40, 42)) + LINE(stitches(across(40), 3, 2)) + DOTTED(across(43.4))


DRAWINGS: Mapping[str, Callable[[], Drawing]] = {
    "straight-hem": straight_hem,
    "scalloped": scalloped,
    "handkerchief": handkerchief,
    "faced-hem": faced_hem,
    "flounce": flounce,
    "pinked": pinked,
    "rolled-hem": rolled_hem,
    "fringe": fringe,
    "picot-edge": picot_edge,
    "trunk-leg": trunk_leg,
    "short-skirt-leg": short_skirt_leg,
    "cuffed": cuffed,
    "vandyked": vandyked,
    "deep-hem": deep_hem,
}
