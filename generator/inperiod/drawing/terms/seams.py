"""Seams and edge finishes as handbooks show them: above, the layers cut across the seam; below, the cloth
from its right side, or from the wrong side where the finish is there. The seam runs up and down."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from inperiod.drawing.hand import (
    CENTRE,
    DOTTED,
    FAINT,
    LINE,
    MASK,
    TINT,
    WASH,
    Drawing,
    Path,
    Point,
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

THICK = 4.0
LARGER = 1.25
FACE_TOP, FACE_FOOT = 62.0, 92.0


def near(place: Point) -> Point:
    """The sections are drawn a quarter larger than they are written."""
    return (CENTRE + (place[0] - CENTRE) * LARGER, 48.0 + (place[1] - 48.0) * LARGER)


def layer(*places: Point, raw: bool = False) -> Drawing:
    """A layer of cloth in section along straight runs, its corners rounded as folds. ``raw``: threads fray
    from its last end."""
    points = tuple(near(place) for place in places)
    line = _rounded(points)
    left, right = beside(line, -THICK / 2), beside(line, THICK / 2)
    ribbon = left.then(right.reverse()).close()
    frayed = LINE(_frays(points[-2], points[-1])) if raw else ()
    return MASK(ribbon) + TINT(ribbon) + frayed


def _rounded(points: tuple[Point, ...], turn: float = 2.6) -> Path:
    line = Path(points[0])
    for (ax, ay), (bx, by), (cx, cy) in zip(points, points[1:], points[2:], strict=False):
        before, after = ((bx - ax) ** 2 + (by - ay) ** 2) ** 0.5, ((cx - bx) ** 2 + (cy - by) ** 2) ** 0.5
        into, out = min(turn, before / 2) / before, min(turn, after / 2) / after
        begin = (bx - (bx - ax) * into, by - (by - ay) * into)
        end = (bx + (cx - bx) * out, by + (cy - by) * out)
        line = line.to(begin).bend((bx, by), end)
    return line.to(points[-1])


def _frays(before: Point, end: Point) -> list[Path]:
    (ax, ay), (x, y) = before, end
    long = ((x - ax) ** 2 + (y - ay) ** 2) ** 0.5
    dx, dy = (x - ax) / long, (y - ay) / long
    found = []
    for side, reach in ((-1.2, 2.0), (0.0, 2.8), (1.2, 2.0)):
        begin = (x - dy * side, y + dx * side)
        found.append(
            path(begin, (begin[0] + dx * reach - dy * side * 0.4, begin[1] + dy * reach + dx * side * 0.4))
        )
    return found


def stitch(begin: Point, end: Point) -> Drawing:
    """A row of stitching in section: the thread through the layers, and a knot of it on either side."""
    begin, end = near(begin), near(end)
    upright = abs(begin[0] - end[0]) < abs(begin[1] - end[1])
    bars = [
        path((x - 2, y), (x + 2, y)) if upright else path((x, y - 2), (x, y + 2)) for x, y in (begin, end)
    ]
    return LINE(path(begin, end), bars)


def face(*, seam: float | None = CENTRE, rows: tuple[float, ...] = ()) -> Drawing:
    """The cloth below, the seam line and its rows of stitching running up and down."""
    lines = [upright(near((x, 0))[0]) for x in ((seam,) if seam is not None else ())]
    sewn = [stitches(upright(near((x, 0))[0]), 2.6, 1.8) for x in rows]
    return cloth(6, FACE_TOP, 84, FACE_FOOT - FACE_TOP, "lr") + LINE(lines, *sewn)


def upright(x: float) -> Path:
    """A line down the cloth below."""
    return path((x, FACE_TOP), (x, FACE_FOOT))


def _open_allowances(raw: bool = True) -> Drawing:
    """A seam with its allowances pressed open."""
    left = layer((14.4, 44), (46.2, 44), (46.2, 39.4), (26, 39.4), raw=raw)
    right = layer((81.6, 44), (49.8, 44), (49.8, 39.4), (70, 39.4), raw=raw)
    return left + right + stitch((42.4, 41.6), (53.6, 41.6))


def _standing(top: float = 16.0, raw: bool = True) -> Drawing:
    """A seam with its allowances standing together."""
    left = layer((14.4, 46), (46, 46), (46, top), raw=raw)
    right = layer((81.6, 46), (50, 46), (50, top), raw=raw)
    return left + right + stitch((41, 38), (55, 38))


def _back(half: float, edge: Path | None = None) -> Drawing:
    """The wrong side below with open allowances ``half`` wide; ``edge`` the left one's outer edge."""
    left = edge or upright(CENTRE - half)
    strip = left.then(left.mirror().reverse()).close()
    return face() + MASK(strip) + TINT(strip) + LINE(upright(CENTRE))


def french_seam() -> Drawing:
    left = layer((14.4, 46), (41, 46), (41, 13), (45.6, 13), (45.6, 28), raw=True)
    right = layer((81.6, 46), (55, 46), (55, 13), (50.4, 13), (50.4, 28), raw=True)
    return (
        left
        + right
        + stitch((43.6, 19), (52.4, 19))
        + stitch((37, 36), (59, 36))
        + face()
        + DOTTED(upright(CENTRE + 12))
    )


def felled_seam() -> Drawing:
    under = layer((81.6, 47), (35, 47), (35, 42.4), (50, 42.4), raw=True)
    over = layer((14.4, 47), (29, 47), (32, 33), (64, 33), (64, 37.6), (53, 37.6), raw=True)
    return (
        under
        + over
        + stitch((38.6, 30), (38.6, 45))
        + stitch((60, 30), (60, 50))
        + face(seam=32, rows=(37, 60))
    )


def plain_seam() -> Drawing:
    return _open_allowances() + face()


def bound_seam() -> Drawing:
    """Both raw edges together in a folded strip."""
    tape = layer((40.6, 32), (40.6, 12.6), (55.4, 12.6), (55.4, 32))
    strip = path((CENTRE, FACE_TOP), (66, FACE_TOP), (66, FACE_FOOT), (CENTRE, FACE_FOOT)).close()
    return (
        _standing(18, raw=False)
        + tape
        + stitch((37, 26), (59, 26))
        + face()
        + MASK(strip)
        + TINT(strip)
        + LINE(stitches(upright(59), 2.6, 1.8), path((56, FACE_TOP), (56, FACE_FOOT)))
    )


def overcast_seam() -> Drawing:
    """Slanting hand stitches over the raw edges."""
    thread = Path((41.6, 27)).curve((40, 10), (56, 8), (54.4, 25))
    needle = [path((41.6, 27), (54.4, 25))]
    allowance = path((CENTRE, FACE_TOP), (62, FACE_TOP), (62, FACE_FOOT), (CENTRE, FACE_FOOT)).close()
    over = [path((56, FACE_TOP + 3 + 5 * i), (63.4, FACE_TOP + 1 + 5 * i)) for i in range(6)]
    return (
        _standing(17)
        + LINE([line.mapped(near) for line in (thread, *needle)])
        + face()
        + MASK(allowance)
        + TINT(allowance)
        + LINE(over)
    )


def pinked_seam() -> Drawing:
    """Open allowances cut in points."""
    return _open_allowances() + _back(16, waved(upright(24), 3, 7, "points"))


def mantua_maker_seam() -> Drawing:
    """The longer edge folded twice over the other; one row through all."""
    short = layer((14.4, 46), (46, 46), (46, 19), raw=True)
    long = layer((81.6, 46), (50.4, 46), (50.4, 13), (36.6, 13), (36.6, 31), (41.4, 31), (41.4, 20))
    return short + long + stitch((33, 27), (54.4, 27)) + face()


def lapped_seam() -> Drawing:
    under = layer((14.4, 38), (60, 38), raw=True)
    over = layer((81.6, 47), (38, 47), (38, 42.4), (56, 42.4), raw=True)
    return under + over + stitch((42, 35), (42, 50)) + face(seam=38, rows=(42,))


def welt_seam() -> Drawing:
    """Allowances one way, the under one trimmed; stitched through beside the seam."""
    under = layer((81.6, 47), (35, 47), (35, 42.4), (47, 42.4), raw=True)
    over = layer((14.4, 47), (29, 47), (32, 37.8), (68, 37.8), raw=True)
    return under + over + stitch((39, 35), (39, 45)) + stitch((58, 35), (58, 50)) + face(seam=33, rows=(58,))


def slot_seam() -> Drawing:
    """Two folds over a strip, a slot between."""
    strip = layer((24, 37.6), (72, 37.6))
    left = layer((14.4, 46.8), (44.6, 46.8), (44.6, 42.2), (28, 42.2), raw=True)
    right = layer((81.6, 46.8), (51.4, 46.8), (51.4, 42.2), (68, 42.2), raw=True)
    slot = box(45, FACE_TOP, 6, FACE_FOOT - FACE_TOP)
    return (
        strip
        + left
        + right
        + stitch((37, 34.6), (37, 49.8))
        + stitch((59, 34.6), (59, 49.8))
        + face(seam=None, rows=(37, 59))
        + MASK(slot)
        + LINE(upright(45), upright(51))
    )


def overlocked() -> Drawing:
    """Looped threads over the trimmed edges."""
    loop = Path((42, 30)).curve((38, 8), (58, 8), (54, 30))
    lower = Path((42, 22)).curve((42, 12), (54, 12), (54, 22))
    allowance = path((CENTRE, FACE_TOP), (66, FACE_TOP), (66, FACE_FOOT), (CENTRE, FACE_FOOT)).close()
    zig = Path((55, FACE_TOP))
    for i in range(1, 13):
        zig = zig.to((65 if i % 2 else 55, FACE_TOP + 2.5 * i))
    return (
        _standing(17, raw=False)
        + LINE([line.mapped(near) for line in (loop, lower, path((42, 30), (54, 30)))])
        + face()
        + MASK(allowance)
        + TINT(allowance)
        + LINE(upright(55), zig)
    )


def bias_faced() -> Drawing:
    """A strip sewn to the edge, turned wholly inside and sewn down."""
    goods = layer((14.4, 47), (72, 47), (72, 42.4), (57, 42.4), raw=True)
    strip = layer((44, 37.8), (36, 37.8), (36, 33.2), (68, 33.2), (68, 37.8), (56, 37.8), raw=True)
    hemmed = LINE(smooth((38.4, 31), (34, 36), (31.6, 45), (29, 46.4)).mapped(near))
    piece = cloth(6, FACE_TOP, 66, FACE_FOOT - FACE_TOP, "l")
    facing = box(36, FACE_TOP, 36, FACE_FOOT - FACE_TOP)
    grain = hatch(facing, 45, 6)
    slants = [path((34.6, FACE_TOP + 4 + 5 * i), (37.6, FACE_TOP + 2 + 5 * i)) for i in range(6)]
    return (
        goods
        + strip
        + stitch((63, 35.4), (63, 45))
        + hemmed
        + piece
        + FAINT(grain)
        + TINT(facing)
        + LINE(slants)
    )


def rolled_whipped() -> Drawing:
    """The raw edge rolled very small and overcast."""
    line = (
        Path((14.4, 44)).to((58, 44)).curve((76, 44), (78, 22), (64, 22)).curve((52, 22), (52, 38), (63, 38))
    )
    line = line.curve((70, 38), (70, 28), (64, 28))
    line = line.mapped(near)
    left, right = beside(line, -THICK / 2), beside(line, THICK / 2)
    ribbon = left.then(right.reverse()).close()
    thread = (
        Path((50, 47))
        .curve((56, 56), (84, 50), (80, 28))
        .curve((77, 12), (58, 12), (53, 24))
        .curve((50, 32), (50, 40), (50, 47))
    )
    piece = cloth(6, FACE_TOP, 66, FACE_FOOT - FACE_TOP, "l")
    roll = [path((60, FACE_TOP + 4 + 5 * i), (72.6, FACE_TOP + 1 + 5 * i)) for i in range(6)]
    return (
        MASK(ribbon)
        + TINT(ribbon)
        + LINE(thread.mapped(near))
        + piece
        + LINE(path((72, FACE_TOP), (72, FACE_FOOT)), upright(61), roll)
    )


def hem_stitched() -> Drawing:
    """Threads drawn beside the hem, those left tied in groups."""
    upper, lower = cloth(6, 8, 84, 30, "tlr"), cloth(6, 58, 84, 26, "lr")
    bars: list[Path] = []
    for i in range(9):
        x = 10.6 + 9.35 * i
        bars += [smooth((x + d, 38), (x + d * 0.3, 52), (x + d, 58)) for d in (-3.2, -1.1, 1.1, 3.2)]
        bars.append(path((x - 2, 51.6), (x + 2, 51.6)))
    hem = stitches(across(60.4), 1.6, 7.75)
    return upper + lower + LINE(across(38), across(58), across(84), bars, hem) + DOTTED(across(80))


def picot_machine() -> Drawing:
    """A row of bound holes: left whole, and cut through the middle."""
    holes = [ring((12 + 9 * i, 30), 2.1, 3.2) for i in range(9)]
    binds = [
        [path((12 + 9 * i - 4.5, y), (12 + 9 * i, y + d)) for y, d in ((24.4, 2), (35.6, -2))]
        for i in range(9)
    ]
    more = [
        [path((12 + 9 * i + 4.5, y), (12 + 9 * i, y + d)) for y, d in ((24.4, 2), (35.6, -2))]
        for i in range(9)
    ]
    points = Path((7.5, 82))
    for i in range(9):
        x = 12 + 9 * i
        points = points.to((x - 2.1, 82)).curve((x - 2.1, 75), (x + 2.1, 75), (x + 2.1, 82)).to((x + 4.5, 82))
    spikes = [path((7.5 + 9 * i, 82), (7.5 + 9 * i, 86)) for i in range(10)]
    whole, cut = box(6, 8, 84, 44), path((7.5, 60)).to((7.5, 82)).then(points).to((88.5, 60)).close()
    return (
        WASH(whole, cut)
        + LINE(holes, *binds, *more, points, spikes)
        + FAINT(across(24.4), across(35.6), across(52), across(8), across(60))
    )


def lockstitch_seam() -> Drawing:
    """Two threads locked within the cloth, alike on both sides; cut along the seam."""
    cloths = [box(6, 20, 84, 14), box(6, 34, 84, 14)]
    upper, lower = Path((6, 18)), Path((6, 50))
    for x in (20.0, 36.0, 52.0, 68.0, 84.0):
        upper = (
            upper.to((x - 3, 18))
            .curve((x + 0.6, 18), (x - 2.6, 35.4), (x, 35.4))
            .curve((x + 2.6, 35.4), (x - 0.6, 18), (x + 3, 18))
        )
        lower = (
            lower.to((x - 3, 50))
            .curve((x + 0.6, 50), (x - 2.6, 32.6), (x, 32.6))
            .curve((x + 2.6, 32.6), (x - 0.6, 50), (x + 3, 50))
        )
    rows = face(seam=None)
    sewn = stitches(across(77, 8, 88), 9, 3)
    return TINT(cloths) + LINE(upper.to((90, 18)), lower.to((90, 50))) + rows + LINE(sewn)


DRAWINGS: Mapping[str, Callable[[], Drawing]] = {
    "french-seam": french_seam,
    "felled-seam": felled_seam,
    "plain-seam": plain_seam,
    "bound-seam": bound_seam,
    "overcast-seam": overcast_seam,
    "pinked-seam": pinked_seam,
    "mantua-maker-seam": mantua_maker_seam,
    "lapped-seam": lapped_seam,
    "welt-seam": welt_seam,
    "slot-seam": slot_seam,
    "overlocked": overlocked,
    "bias-faced": bias_faced,
    "rolled-whipped": rolled_whipped,
    "hem-stitched": hem_stitched,
    "picot-machine": picot_machine,
    "lockstitch-seam": lockstitch_seam,
}
