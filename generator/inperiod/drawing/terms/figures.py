"""The standing figure for lengths and outlines, and the plain dress for waists and closures."""

from __future__ import annotations

from inperiod.drawing.hand import (
    CENTRE,
    FAINT,
    FAINT_DOTTED,
    LINE,
    MASK,
    TINT,
    WASH,
    Drawing,
    Path,
    Point,
    path,
    ring,
    smooth,
)

FLOOR = 90.6
# Levels of the standing figure.
WAIST, HIP, KNEE, CALF, ANKLE = 37.0, 48.0, 65.4, 73.6, 84.8

# The plain dress: its left half.
DRESS_NECK: Point = (41.0, 9.0)
DRESS_TIP: Point = (29.0, 13.0)
DRESS_UNDERARM: Point = (32.6, 30.0)
DRESS_WAIST: Point = (36.4, 46.0)
DRESS_FOOT: Point = (25.0, 91.0)
DRESS_ARMHOLE = Path(DRESS_TIP).curve((33.2, 18.0), (31.0, 26.0), DRESS_UNDERARM)
DRESS_SIDE = (
    Path(DRESS_UNDERARM)
    .curve((33.4, 38.0), (36.0, 42.0), DRESS_WAIST)
    .curve((36.8, 51.0), (29.4, 58.0), (28.6, 68.0))
    .to(DRESS_FOOT)
)
STRAIGHT_SIDE = Path(DRESS_UNDERARM).bend((31.0, 60.0), (29.0, 91.0))
FRONT_NECK = Path(DRESS_NECK).curve((41.2, 15.0), (44.0, 18.0), (CENTRE, 18.0))
BACK_NECK = Path(DRESS_NECK).bend((44.0, 10.8), (CENTRE, 10.8))


def whole(half: Path) -> Path:
    """A symmetrical outline from its left half, which runs from centre to centre."""
    return half.then(half.mirror().reverse()).close()


def dress(side: Path = DRESS_SIDE, neck: Path = FRONT_NECK, *, bold: bool = False) -> Drawing:
    """The plain dress without sleeves, from the front or, with ``BACK_NECK``, from behind."""
    half = neck.reverse().to(DRESS_TIP).then(DRESS_ARMHOLE).then(side)
    foot = path(side.end, (CENTRE, side.end[1]))
    pen = LINE if bold else FAINT
    throat = Path((42.6, 2.0)).bend((42.6, 6.4), DRESS_NECK)
    lines = pen.both(neck, path(DRESS_NECK, DRESS_TIP), DRESS_ARMHOLE, side, foot)
    return FAINT.both(throat) + WASH(whole(half.then(foot))) + lines


def natural_waist() -> Drawing:
    """The wearer's waist, dotted on either side of the dress."""
    return FAINT_DOTTED.both(path((14, 46), (27.6, 46)))


def body() -> Drawing:
    """The standing figure from the front, arms left out."""
    head = ring((CENTRE, 8.6), 4.2, 5.4)
    neck = Path((46.0, 13.6)).through((45.6, 16.4), (42.4, 18.2), (38.0, 20.4))
    trunk = Path((38.0, 20.4)).through((39.4, 28), (41.6, WAIST), (38.6, HIP), (41.0, KNEE))
    leg = trunk.through((40.8, CALF), (43.8, ANKLE), (42.4, 90.0)).to((46.6, 90.0))
    inner = Path((47.6, 51.0)).through((46.8, KNEE), (46.9, CALF), (46.6, ANKLE), (46.6, 90.0))
    return FAINT(head) + FAINT.both(neck, leg, inner)


def floor() -> Drawing:
    """The ground under the figure, and the levels of waist, knee, calf and ankle beside it."""
    levels = [path((82, y), (85, y)) for y in (WAIST, KNEE, CALF, ANKLE)]
    return FAINT(path((8, FLOOR), (88, FLOOR)), levels)


def cloth(*pieces: Path) -> Drawing:
    """Cloth in full line that hides what is behind it."""
    return tuple(stroke for piece in pieces for stroke in MASK(piece) + TINT(piece))


def small_bodice() -> Drawing:
    """The upper part of a dress on the standing figure, down to the waist."""
    neck = Path((43.4, 17.8)).bend((44.6, 22), (CENTRE, 22))
    side = smooth((39.4, 29), (41.0, 33), (41.4, WAIST))
    shoulder = path((43.4, 17.8), (38.0, 20.4))
    armhole = Path((38.0, 20.4)).bend((40.4, 25), (39.4, 29))
    half = neck.reverse().then(shoulder).then(armhole).then(side)
    return MASK(whole(half)) + WASH(whole(half)) + FAINT.both(neck, shoulder, armhole, side)
