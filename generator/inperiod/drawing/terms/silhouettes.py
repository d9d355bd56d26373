"""Outlines of the dressed figure: head, arm and floor faint, the outline in full line."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from inperiod.drawing.hand import CENTRE, DOTTED, FAINT, LINE, Drawing, Path, path, ring, smooth
from inperiod.drawing.terms.figures import FLOOR, cloth, whole

SHOULDER = Path((45.0, 17.0)).bend((43.0, 18.4), (38.4, 20.0))


def _floor() -> Drawing:
    return FAINT(path((10, FLOOR), (86, FLOOR)))


def _front(half: Path, *lines: Path | list[Path], level: float = 90.0) -> Drawing:
    """An outline from the front; ``half`` runs on from the shoulder to the hem's left end."""
    head = FAINT(ring((CENTRE, 8.6), 4.2, 5.4), path((45.8, 13.4), (45, 17)), path((50.2, 13.4), (51, 17)))
    legs = (
        FAINT.both(
            smooth((43, level), (42.6, (level + 86) / 2), (44.4, 86), (43, 90)),
            path((46.8, level + 1), (46.8, 90)),
        )
        if level < 86
        else ()
    )
    neck = Path((CENTRE, 21.2)).curve((46.4, 21.2), (45, 19.6), (45, 17))
    outline = neck.then(SHOULDER).then(half)
    hem = Path(half.end).bend(((half.end[0] + CENTRE) / 2, half.end[1] + 1.2), (CENTRE, half.end[1] + 1.2))
    arm = FAINT.both(
        smooth((38.4, 20), (34.4, 30), (32.8, 40), (34, 50)), smooth((40, 30), (37.4, 40), (36.4, 49))
    )
    return _floor() + head + arm + legs + cloth(whole(outline.then(hem))) + LINE(*lines)


def hourglass() -> Drawing:
    half = Path((38.4, 20)).through((40, 28), (43.4, 36.6)).through((38, 44), (31, 66), (25, 88))
    sleeve = Path((38.4, 20)).curve((27, 16), (24, 30), (34, 33)).to((40.4, 29.6), (38.4, 20)).close()
    return _front(half, waist_line(43.4, 36.6)) + cloth(sleeve, sleeve.mirror())


def waist_line(x: float, y: float) -> list[Path]:
    """A seam across the waist."""
    return [Path((x, y)).bend((CENTRE, y + 1.4), (2 * CENTRE - x, y))]


def columnar() -> Drawing:
    half = Path((38.4, 20)).through((39.6, 27), (40.6, 32)).through((38.6, 44), (38, 60), (37, 88))
    return _front(half, waist_line(40.6, 32))


def hobble() -> Drawing:
    half = (
        Path((38.4, 20)).through((39.6, 27), (41, 35)).through((35, 44), (34.6, 56), (39.6, 70), (40.8, 86))
    )
    return _front(half, waist_line(41, 35), [path((40.2, 71), (55.8, 71))], level=86)


def tubular() -> Drawing:
    half = Path((38.4, 20)).bend((39.6, 26), (39.2, 32)).to((38, 70))
    return _front(half, [path((38.6, 50), (57.4, 50))], level=70)


def barrel() -> Drawing:
    half = (
        Path((38.4, 20))
        .bend((39.8, 26), (40, 31))
        .curve((36, 40), (28, 50), (29, 60))
        .curve((30, 68), (35, 74), (37, 79))
    )
    return _front(half, waist_line(40, 32), level=79)


def bias_cling() -> Drawing:
    half = Path((38.4, 20)).through((40, 27), (42, 36.4), (38.8, 48), (39.6, 62), (35, 78), (27, 89))
    folds = [smooth((33, 89), (39.6, 76), (42, 64)), smooth((43, 90), (45.4, 78), (46, 68))]
    return _front(half, folds, [one.mirror() for one in folds])


def a_line() -> Drawing:
    half = Path((38.4, 20)).bend((39.8, 25), (39, 30)).to((26, 70))
    return _front(half, level=70)


def fitted_flared() -> Drawing:
    half = Path((38.4, 20)).through((39.8, 28), (42.6, 37)).through((36, 46), (26, 73), ease=0.8)
    folds = [path((42, 72), (45, 48)), path((34, 72), (40, 50))]
    return _front(half, waist_line(42.6, 37), folds, [one.mirror() for one in folds], level=73)


def crinoline_bell() -> Drawing:
    half = Path((38.4, 20)).through((39.8, 28), (43, 36.4)).curve((26, 40), (13, 62), (11, 87))
    hoops = [
        Path((25, 48)).bend((CENTRE, 54), (71, 48)),
        Path((16.4, 64)).bend((CENTRE, 72), (79.6, 64)),
        Path((12, 79)).bend((CENTRE, 87), (84, 79)),
    ]
    return _front(half, waist_line(43, 36.4)) + DOTTED(hoops)


def empire() -> Drawing:
    half = Path((38.4, 20)).bend((40, 24), (40.4, 29)).through((37, 50), (33, 88), ease=0.8)
    folds = [smooth((45, 31), (43.6, 56), (42, 84)), smooth((51, 31), (52.4, 56), (54, 84))]
    sleeve = Path((38.4, 20)).curve((33, 19), (32, 27), (40, 28))
    return _front(half, waist_line(40.4, 29), folds, [sleeve, sleeve.mirror()])


def loose() -> Drawing:
    half = Path((38.4, 20)).curve((38, 26), (30, 50), (20, 88))
    folds = [smooth((44, 26), (40, 56), (36, 87)), smooth((40.4, 26), (34, 56), (28, 87))]
    yoke = Path((39, 24)).bend((CENTRE, 27.4), (57, 24))
    return _front(half, folds, [one.mirror() for one in folds], [yoke])


def _side(front: Path, back: Path, *lines: Path | list[Path], head: float = 46.0) -> Drawing:
    """An outline from the side, facing left."""
    outline = front.to(back.end).then(back.reverse()).close()
    skull = ring((head, 8.6), 4.6, 5.4)
    nose = path((head - 4.4, 8), (head - 5.6, 10.4), (head - 4.2, 10.8))
    neck = [path((head - 1.6, 13.8), front.start), path((head + 2.4, 13.2), back.start)]
    return _floor() + FAINT(skull, nose, neck) + cloth(outline) + LINE(*lines)


def s_bend() -> Drawing:
    """Bust forward and low, hips back."""
    front = Path((43.6, 17)).curve((38, 22), (29, 30), (32, 36)).curve((33, 39.4), (37, 40), (39.6, 41))
    front = front.curve((39, 56), (36, 76), (30, 89.6))
    back = (
        Path((49.4, 17))
        .curve((55, 22), (54, 32), (50.4, 40))
        .curve((60, 44), (63, 54), (64, 66))
        .curve((65, 78), (72, 86), (84, 89.6))
    )
    sleeve = FAINT(
        smooth((47, 20), (52, 29), (49, 40), (42, 47)), smooth((43.6, 24), (45.4, 32), (42, 40), (39, 45))
    )
    return _side(front, back, [path((39.6, 41), (50.4, 40))], [smooth((47, 46), (52, 66), (58, 88))]) + sleeve


def bustle_back() -> Drawing:
    """Straight in front, fullness carried out behind."""
    front = Path((43.6, 17)).curve((38, 22), (34.6, 28), (40, 38.6)).curve((38.4, 50), (36.4, 74), (33, 89.6))
    back = (
        Path((49.4, 17))
        .curve((54.6, 22), (53, 32), (50.4, 38.6))
        .curve((58, 37), (68, 38), (71, 46))
        .curve((72, 56), (71, 74), (76, 89.6))
    )
    folds = [
        Path((52, 40)).curve((58, 46), (64, 47), (71, 46)),
        Path((49, 41)).curve((54, 54), (62, 57), (71.6, 57)),
        Path((46, 42)).curve((48, 60), (56, 68), (71.6, 68)),
    ]
    arm = FAINT(smooth((47, 20), (51.6, 29), (47, 39), (39, 42)), smooth((44, 24), (45, 31), (41, 37)))
    return _side(front, back, [path((40, 38.6), (50.4, 38.6))], folds) + arm


DRAWINGS: Mapping[str, Callable[[], Drawing]] = {
    "s-bend": s_bend,
    "hourglass": hourglass,
    "columnar": columnar,
    "hobble": hobble,
    "tubular": tubular,
    "barrel": barrel,
    "bias-cling": bias_cling,
    "a-line": a_line,
    "fitted-flared": fitted_flared,
    "crinoline-bell": crinoline_bell,
    "bustle-back": bustle_back,
    "empire": empire,
    "loose": loose,
}
