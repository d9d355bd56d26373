"""Where the waist of a dress is marked: the wearer's own waist is dotted beside it."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from inperiod.drawing.hand import CENTRE, GROUND, LINE, Drawing, Path, path, smooth
from inperiod.drawing.terms.figures import (
    DRESS_FOOT,
    DRESS_UNDERARM,
    DRESS_WAIST,
    STRAIGHT_SIDE,
    dress,
    natural_waist,
    whole,
)


def _belt(left: tuple[float, float], high: float = 3.4, sag: float = 1.2) -> Drawing:
    """A narrow belt whose upper edge begins at ``left``."""
    x, y = left
    half = path((CENTRE, y + sag)).bend(((x + CENTRE) / 2, y + sag), left).to((x - 0.2, y + high))
    half = half.bend(((x + CENTRE) / 2, y + high + sag), (CENTRE, y + high + sag))
    return GROUND(whole(half))


def natural() -> Drawing:
    return natural_waist() + dress() + _belt((36.4, 44.4))


def raised() -> Drawing:
    side = Path(DRESS_UNDERARM).through((34, 36), (33, 48), (29, 68), DRESS_FOOT)
    return natural_waist() + dress(side) + _belt((34, 34.6))


def low() -> Drawing:
    side = Path(DRESS_UNDERARM).through((33, 44), (31.6, 56), (29.4, 70), (27, 91))
    return natural_waist() + dress(side) + _belt((31.9, 53.4), 4)


def dropped_hip() -> Drawing:
    side = Path(DRESS_UNDERARM).through((32.4, 44), (30.6, 65), (29.2, 74), (27, 91))
    return natural_waist() + dress(side) + _belt((30.6, 64), 4.4)


def no_waist() -> Drawing:
    return natural_waist() + dress(STRAIGHT_SIDE) + LINE.both(STRAIGHT_SIDE)


def princess() -> Drawing:
    """Long seams from armhole to hem, nothing across."""
    long_seam = Path((32.4, 22)).curve((38, 30), (43, 38), (42.6, 46)).curve((42.4, 56), (38, 70), (36.6, 91))
    return natural_waist() + dress() + LINE.both(long_seam) + LINE(path((CENTRE, 18), (CENTRE, 91)))


def basque_point() -> Drawing:
    """The bodice runs down in a point over the skirt."""
    edge = Path((36.2, 47)).bend((43, 51), (CENTRE, 64))
    skirt = [path((x, y), (x - (CENTRE - x) * 0.9, 88)) for x, y in ((39, 51), (42.4, 55.6), (45.6, 61))]
    return natural_waist() + dress() + LINE.both(edge, skirt)


def pouched() -> Drawing:
    """Loose in front and hanging over the belt."""
    side = (
        Path(DRESS_UNDERARM).through((32, 38), (31, 46), (36.6, 50)).through((32, 58), (28.6, 68), DRESS_FOOT)
    )
    made = dress(side)
    pouch = Path(DRESS_UNDERARM).through((32, 38), (30.4, 45.4), (34.6, 49.4), (42, 51.4), (CENTRE, 51.8))
    belt = path((36.8, 50.4), (36.6, 54.4)).bend((42, 56), (CENTRE, 56))
    folds = [
        smooth((36.6, 46), (35.6, 42), (36, 37)),
        smooth((41.6, 49), (40.8, 44), (41, 39)),
        path((46, 49.6), (46, 42)),
    ]
    return natural_waist() + made + LINE.both(pouch, belt, folds)


def yoked_waist() -> Drawing:
    """A wide shaped band instead of one seam."""
    half = Path((CENTRE, 34)).bend((40, 39), (34.6, 38.6)).curve((36, 42), (36.4, 45), DRESS_WAIST)
    half = half.curve((36.5, 49), (34.4, 52), (33.2, 55)).bend((40, 56), (CENTRE, 61))
    return natural_waist() + dress() + GROUND(whole(half))


DRAWINGS: Mapping[str, Callable[[], Drawing]] = {
    "natural": natural,
    "raised": raised,
    "low": low,
    "dropped-hip": dropped_hip,
    "no-waist": no_waist,
    "princess": princess,
    "basque-point": basque_point,
    "pouched": pouched,
    "yoked-waist": yoked_waist,
}
