"""The bust that necklines, collars and yokes are shown on: neck, shoulders and arms to above the waist."""

from __future__ import annotations

from collections.abc import Callable

from inperiod.drawing.hand import (
    CENTRE,
    DOTTED,
    FAINT,
    LINE,
    WASH,
    Drawing,
    Path,
    Point,
    Stroke,
    path,
    smooth,
)

NECK: Point = (39.8, 27.0)
TIP: Point = (19.0, 34.0)
UNDERARM: Point = (25.0, 60.0)
FOOT: Point = (27.4, 80.0)
ARMHOLE = Path(TIP).curve((23.4, 41.0), (21.4, 53.0), UNDERARM)
SIDE = Path(UNDERARM).bend((26.6, 70.0), FOOT)


def on_shoulder(share: float) -> Point:
    """A place on the shoulder, from 0 at the neck to 1 at the tip."""
    return (NECK[0] + (TIP[0] - NECK[0]) * share, NECK[1] + (TIP[1] - NECK[1]) * share)


def body() -> Drawing:
    """Jaw, neck, shoulders and arms."""
    jaw = smooth(
        (37.2, 8.0), (39.6, 12.0), (44.5, 15.6), (CENTRE, 16.4), (51.5, 15.6), (56.4, 12.0), (58.8, 8.0)
    )
    neck = Path((41.0, 13.4)).through((41.4, 19.0), (41.2, 23.5), NECK).to(TIP)
    arm = Path(TIP).through((13.2, 39.0), (10.6, 52.0), (9.7, 66.0), (9.4, 80.0))
    inner = Path((24.4, 59.0)).bend((22.0, 69.0), (21.2, 80.0))
    return FAINT.both(jaw, neck, arm, inner)


def bodice_outline(edge: Path, armhole: Path = ARMHOLE, side: Path = SIDE) -> Path:
    """The closed outline of a bodice; ``edge`` is the left half at the neck, from shoulder to centre."""
    half = edge.reverse().to(armhole.start).then(armhole).then(side)
    return half.then(half.mirror().reverse()).close()


def bodice(edge: Path, *, bold: bool = True, armhole: Path = ARMHOLE, back: Path | None = None) -> Drawing:
    """A plain bodice on the bust. ``edge``: see ``bodice_outline``; ``bold`` False where the bodice itself is
    not what is shown; ``back``: the left half of the edge behind, dotted where the body hides it."""
    pen = LINE if bold else FAINT
    seam = path(edge.start, armhole.start)
    found = WASH(bodice_outline(edge, armhole)) + pen.both(edge)
    found += FAINT.both(seam, armhole, SIDE)
    return found + (DOTTED.both(back) if back else ())


def enlarged(draw: Callable[[], Drawing]) -> Callable[[], Drawing]:
    """The same drawing enlarged about the neck, to fill the box."""

    def larger() -> Drawing:
        return tuple(Stroke(one.path.scale(1.2, about=(CENTRE, 29.0)), one.pen) for one in draw())

    return larger


def bare_neck() -> Path:
    """The left half of the edge of a plain neck, at the base of the throat."""
    return Path(NECK).curve((40.6, 31.0), (44.0, 33.2), (CENTRE, 33.2))


def back_neck(share: float = 0.0, drop: float = 1.4) -> Path:
    """The left half of the edge behind the neck, beginning on the shoulder."""
    begin = on_shoulder(share)
    return Path(begin).bend(((begin[0] + CENTRE) / 2, begin[1] + drop), (CENTRE, begin[1] + drop))
