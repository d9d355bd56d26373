"""Where a garment opens, on a plain dress, with the opening in full line and its buttons on it."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from inperiod.drawing.hand import (
    CENTRE,
    DOTTED,
    FAINT,
    GROUND,
    LINE,
    WASH,
    Drawing,
    Path,
    evenly,
    path,
    ring,
    smooth,
    ticks,
)
from inperiod.drawing.terms.bust import back_neck, bare_neck, bodice, enlarged
from inperiod.drawing.terms.bust import body as bust
from inperiod.drawing.terms.figures import (
    BACK_NECK,
    DRESS_TIP,
    STRAIGHT_SIDE,
    dress,
    whole,
)


def _buttons(line: Path, count: int, large: float = 1.2) -> list[Path]:
    return [ring(place, large) for place, _ in evenly(line, count)]


def front() -> Drawing:
    """Down the centre front, one edge over the other."""
    lap = path((50.4, 18), (50.4, 91))
    return dress() + LINE(lap, _buttons(path((CENTRE, 18), (CENTRE, 91)), 8))


def _nape() -> Drawing:
    """Hair on the nape, to say that the dress is seen from behind."""
    return FAINT(smooth((42.6, 2.4), (45, 4.6), (CENTRE, 6.6), (51, 4.6), (53.4, 2.4)))


def back() -> Drawing:
    """The dress from behind."""
    lap = path((49.8, 10.8), (49.8, 66))
    seam = FAINT(path((CENTRE, 66), (CENTRE, 91)))
    return _nape() + dress(neck=BACK_NECK) + seam + LINE(lap, _buttons(path((47.6, 10.8), (47.6, 66)), 7))


def side() -> Drawing:
    """In the wearer's left side seam, held open to show the hooks."""
    top, low = (62.4, 33.0), (64.4, 60.0)
    edge = Path(top).curve((62, 40), (59.4, 44), (59.6, 46)).curve((59.4, 50), (61.6, 54), low)
    lap = Path(top).curve((57, 40), (54.4, 44), (54.8, 47)).curve((55.4, 53), (60, 57), low)
    gap = lap.then(edge.reverse()).close()
    return dress() + GROUND(gap) + LINE(ticks(lap, -2.6, 4))


def shoulder() -> Drawing:
    """Along the shoulder seam."""
    a, b = (88 - 32.2 + 0.4, 27.0), (77.0, 34.0)
    lap = path((55.8, 28.6), (76.6, 35.8))
    line = path(a, b)
    return (
        bust()
        + bodice(bare_neck(), bold=False, back=back_neck())
        + LINE(lap, line, path(b, (76.6, 35.8)), [ring((x, y + 3), 1.1) for (x, y), _ in evenly(line, 4)])
    )


def side_front() -> Drawing:
    """Down the front beside the centre."""
    neck = smooth((48, 18), (51, 17.4), (54, 15))
    lap = Path((53.4, 15.6)).bend((58.4, 22), (58, 32)).curve((57.6, 44), (58.6, 54), (59, 91))
    return dress() + LINE(lap, neck, [ring((x - 2.2, y), 1.1) for (x, y), _ in evenly(lap, 7)])


def slip_on() -> Drawing:
    """A wide neck and no opening anywhere: only the outline."""
    neck = Path((37.6, 10.2)).curve((38, 22), (43, 25), (CENTRE, 25))
    half = neck.reverse().to(DRESS_TIP).then(Path(DRESS_TIP).curve((33.2, 18), (31, 26), (32.6, 30)))
    half = half.then(STRAIGHT_SIDE)
    behind = Path((37.6, 10.2)).bend((42, 12), (CENTRE, 12))
    throat = Path((42.6, 2.0)).curve((42.6, 8), (40, 9.4), (37.6, 10.2))
    return FAINT.both(throat) + WASH(whole(half)) + LINE(whole(half)) + DOTTED.both(behind)


def wrap_over() -> Drawing:
    """One front laid far across the other and tied at the side."""
    neck = path((41, 9), (CENTRE, 28))
    over = path((55, 9), (CENTRE, 28)).bend((40, 42), (36.8, 46))
    skirt = Path((36.8, 46)).bend((36, 70), (33, 91))
    under = path((CENTRE, 28), (55, 40))
    bow = [
        Path((36.4, 46)).curve((30, 40), (25, 43), (36.4, 46)),
        Path((36.4, 46)).curve((28, 46), (25, 51), (36.4, 46)),
        smooth((36.4, 46), (33, 53), (33.4, 60)),
        smooth((36.4, 46), (37.4, 53), (36.4, 59)),
    ]
    half_neck = Path((41, 9)).to((CENTRE, 28))
    belt = Path((36.4, 46)).bend((CENTRE, 47.6), (59.6, 46))
    return dress(neck=half_neck) + LINE(neck, over, skirt, belt, bow) + DOTTED(under)


def back_yoke() -> Drawing:
    """Behind, only as far as the yoke."""
    yoke = Path((32.2, 22)).bend((40, 25.4), (CENTRE, 25.4))
    lap = path((49.8, 10.8), (49.8, 25.4))
    gathers = [
        path((x, y), (x - 0.4, y + 8)) for x, y in ((36, 24.8), (40, 25.8), (44, 26.2), (CENTRE, 26.4))
    ]
    return (
        _nape()
        + dress(STRAIGHT_SIDE, BACK_NECK)
        + FAINT.both(yoke, gathers)
        + LINE(lap, _buttons(path((47.4, 10.8), (47.4, 25.4)), 3), path((46, 25.4), (49.8, 25.4)))
    )


def crotch() -> Drawing:
    """Between the legs, on combinations seen from the front."""

    def half(neck_y: float) -> Path:
        return (
            path((CENTRE, neck_y), (38.4, neck_y), (36.6, 6), (33.8, 6))
            .bend((35.4, 17), (32.6, 22))
            .curve((34, 34), (36.4, 38), (36, 44))
            .curve((35.4, 54), (28.6, 58), (27, 88))
            .to((45, 88), (CENTRE, 64))
        )

    outline = whole(half(15))
    flap = Path((44.4, 57)).to((51.6, 57)).to((51, 66)).bend((48, 69), (45, 66)).close()
    legs = [path((CENTRE, 68), (45, 88)), path((CENTRE, 68), (51, 88))]
    buttons = [ring((46.2, 60.4), 1.1), ring((49.8, 60.4), 1.1), ring((48, 64.4), 1.1)]
    return WASH(outline) + FAINT(outline, legs) + GROUND(flap) + LINE(buttons)


def front_placket() -> Drawing:
    """A short lapped opening from the neck."""
    band = path((45, 33), (45, 62), (CENTRE, 65), (51, 62), (51, 33)).bend((CENTRE, 33.6), (45, 33)).close()
    return (
        bust()
        + bodice(bare_neck(), bold=False, back=back_neck())
        + GROUND(band)
        + LINE([ring((CENTRE, y), 1.3) for y in (38, 46, 54)], path((45, 58), (51, 58)))
    )


DRAWINGS: Mapping[str, Callable[[], Drawing]] = {
    "front": front,
    "back": back,
    "side": side,
    "shoulder": enlarged(shoulder),
    "side-front": side_front,
    "slip-on": slip_on,
    "wrap-over": wrap_over,
    "back-yoke": back_yoke,
    "crotch": crotch,
    "front-placket": enlarged(front_placket),
}
