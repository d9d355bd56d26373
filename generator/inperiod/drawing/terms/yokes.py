"""Yokes and insets, on the bust or where they belong; the inset is the plain part, the garment is toned."""

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
    box,
    hatch,
    path,
    ring,
    smooth,
    stitches,
    waved,
)
from inperiod.drawing.terms.bust import (
    NECK,
    TIP,
    back_neck,
    bare_neck,
    bodice,
    body,
    enlarged,
    on_shoulder,
)

JEWEL = bare_neck()


def _on_bust(edge: Path = JEWEL) -> Drawing:
    return body() + bodice(edge, bold=False)


def _piece(lower: Path, edge: Path = JEWEL) -> Path:
    """A yoke from the neck edge to ``lower``, whose left half runs from shoulder or armhole to the centre."""
    half = lower.reverse().to(edge.start).then(edge) if lower.start[1] < 36 else _by_armhole(lower, edge)
    return half.then(half.mirror().reverse()).close()


def _by_armhole(lower: Path, edge: Path) -> Path:
    return lower.reverse().to(TIP).to(edge.start).then(edge)


def _gathers(lower: Path, *shares: float, long: float = 11) -> list[Path]:
    """Folds falling from below a seam."""
    points = lower.points(12)
    found = []
    for share in shares:
        x, y = points[round(share * (len(points) - 1))]
        found.append(path((x, y + 0.6), (x - (CENTRE - x) * 0.06, y + long)))
    return found


def round_yoke() -> Drawing:
    lower = Path((22.2, 42)).curve((26, 50), (36, 54), (CENTRE, 54))
    return _on_bust() + GROUND(_piece(lower)) + LINE.both(_gathers(lower, 0.3, 0.55, 0.8, 0.97))


def square_yoke() -> Drawing:
    lower = path(on_shoulder(0.78), (25.6, 52), (CENTRE, 52))
    gathers = [path((x, 52.6), (x - 0.6, 63 - n % 2 * 3)) for n, x in enumerate((30, 35, 40, 45))]
    return _on_bust() + GROUND(_piece(lower)) + LINE.both(gathers)


def pointed_yoke() -> Drawing:
    lower = path((22.2, 42), (CENTRE, 61))
    return _on_bust() + GROUND(_piece(lower))


def shoulder_yoke() -> Drawing:
    """Shallow, the lower edge level with the top of the armhole."""
    lower = path((22, 40.4), (42, 42))
    edge = Path(NECK).curve((40.6, 31), (42, 36), (CENTRE, 52))
    piece = path(TIP, NECK).bend((40.2, 34), (42.2, 41.4)).to((22, 40.4)).bend((21.6, 37.4), TIP).close()
    folds = [path((x, 42), (x - 0.4, 52 - n % 2 * 2)) for n, x in enumerate((26, 30, 34, 38))]
    return _on_bust(edge) + GROUND(piece, piece.mirror()) + LINE.both(folds, lower) + DOTTED.both(back_neck())


def _hips() -> Path:
    return Path((36, 12)).curve((33, 24), (26, 30), (25, 46)).to((15, 90))


def hip_yoke() -> Drawing:
    side = _hips()
    skirt = side.to((81, 90)).then(side.mirror().reverse()).close()
    upper = Path((36, 12)).bend((CENTRE, 15.4), (60, 12))
    left = Path((36, 12)).curve((33, 24), (26, 30), (25, 42))
    lower = Path((25, 42)).bend((CENTRE, 50), (71, 42))
    yoke = upper.reverse().then(left).then(lower).then(left.mirror().reverse()).close()
    folds = [
        path((x, y), (x - (CENTRE - x) * 0.36, 88)) for x, y in ((30, 44.4), (36, 46), (42, 46.6), (47, 46.8))
    ]
    waist = FAINT.both(smooth((33, 2), (36, 8), (36, 12)))
    return (
        waist
        + WASH(skirt)
        + FAINT(_hips(), _hips().mirror(), path((15, 90), (81, 90)))
        + GROUND(yoke)
        + (LINE.both(folds))
    )


def shirt_yoke() -> Drawing:
    """Across the back, coming over the shoulders; seen from behind, with its second row of stitching."""
    edge = back_neck(0, 1.4)
    lower = path((22.4, 45), (CENTRE, 45))
    folds = [path((46, 45.6), (46, 70)), path((43.4, 45.6), (43.6, 63))]
    sewn = stitches(path((23.2, 43), (72.8, 43)), 2, 1.5)
    band = (
        path((41, 22.4), NECK)
        .bend((44, 28.4), (CENTRE, 28.4))
        .to((CENTRE, 24))
        .bend((44, 24), (41, 22.4))
        .close()
    )
    return (
        _from_behind()
        + bodice(edge, bold=False)
        + GROUND(_piece(lower, edge), band, band.mirror())
        + LINE(sewn)
        + LINE.both(folds)
    )


def _from_behind() -> Drawing:
    """The bust without its jaw."""
    return tuple(stroke for stroke in body() if stroke.path.start[1] > 9)


def back_yoke() -> Drawing:
    """Across the back only: the shoulder seam ends it."""
    edge = back_neck(0, 1.4)
    lower = Path((22.4, 46)).bend((36, 50), (CENTRE, 50))
    opening = LINE(path((CENTRE, 28.6), (CENTRE, 50)), [ring((49.8, y), 0.9) for y in (32, 38, 44)])
    gathers = _gathers(lower, 0.3, 0.55, 0.8, 0.97)
    return (
        _from_behind() + bodice(edge, bold=False) + GROUND(_piece(lower, edge)) + opening + LINE.both(gathers)
    )


def vestee() -> Drawing:
    """A false front in the opening of the dress."""
    edge = path(on_shoulder(0.15), (CENTRE, 72))
    filling = path((38.6, 34), (57.4, 34), (CENTRE, 72)).close()
    buttons = [ring((CENTRE, y), 1.2) for y in (40, 47, 54)]
    top = path((38.4, 34), (57.6, 34))
    return (
        _on_bust(edge) + GROUND(filling) + LINE(top, buttons) + LINE.both(edge) + DOTTED.both(back_neck(0.15))
    )


def plastron() -> Drawing:
    """A flat panel on the front, wider above."""
    panel = bare_neck().reverse().to(on_shoulder(0.34)).curve((32, 50), (41, 66), (42, 80)).to((CENTRE, 80))
    whole = panel.then(panel.mirror().reverse()).close()
    return _on_bust() + GROUND(whole)


def _skirt_piece() -> Drawing:
    outline = path((22, 8), (74, 8), (84, 88), (12, 88)).close()
    return WASH(outline) + FAINT(path((22, 8), (12, 88)), path((74, 8), (84, 88)))


def godet() -> Drawing:
    """A wedge let into a slit, flaring the edge."""
    wedge = (
        path((CENTRE, 32), (28, 84))
        .bend((34, 92), (40, 86))
        .bend((48, 94), (56, 86))
        .bend((62, 92), (68, 84))
        .close()
    )
    seam = path((CENTRE, 8), (CENTRE, 32))
    hem = path((12, 88), (28, 84)), path((68, 84), (84, 88))
    folds = [path((40, 86), (46.4, 44)), path((56, 86), (49.6, 44))]
    return _skirt_piece() + FAINT(seam, *hem) + GROUND(wedge) + LINE(folds)


def gusset() -> Drawing:
    """A small diamond let in under the arm, where four seams meet."""
    upper = smooth((88, 10), (66, 14), (38, 26), (12, 48), ease=0.8)
    sleeve = path((12, 48), (22, 78)).bend((32, 72), (37, 59))
    side = Path((58.6, 66)).bend((61, 76), (62, 92))
    armhole = Path((58, 17)).bend((47, 36), (48.6, 51))
    piece = path((48.6, 50), (58.6, 66), (46, 72), (37, 59)).close()
    cloth = upper.then(sleeve).to((46, 72)).then(side).to((88, 92)).close()
    sewn = stitches(piece.scale(0.72, about=(47.6, 61.6)), 2, 1.6)
    return WASH(cloth) + FAINT(upper, sleeve, side, armhole) + GROUND(piece) + LINE(sewn)


def panel() -> Drawing:
    """A straight length hung down the front of the skirt."""
    side = path((36, 10)).curve((34, 24), (28, 30), (26, 46)).to((20, 90))
    skirt = side.to((76, 90)).then(side.mirror().reverse()).close()
    length = box(38, 11.6, 20, 72.4)
    waist = Path((36, 10)).bend((CENTRE, 13), (60, 10))
    bodice_sides = FAINT.both(smooth((32, 2), (35, 6), (36, 10)))
    return (
        bodice_sides
        + WASH(skirt)
        + FAINT(side, side.mirror(), path((20, 90), (76, 90)))
        + GROUND(length)
        + LINE(waist)
    )


def lace_yoke() -> Drawing:
    lower = Path((22.2, 42)).curve((26, 50), (36, 54), (CENTRE, 54))
    piece = _piece(lower)
    mesh = hatch(piece, 45, 2.8) + hatch(piece, 135, 2.8)
    edge = waved(lower, 1.8, 8, "scallops")
    return _on_bust() + GROUND(piece) + FAINT(mesh) + LINE.both(edge)


def chemisette() -> Drawing:
    """A white half-bodice filling a low neck, with its own collar; it ends under the dress."""
    edge = path(on_shoulder(0.34), (35, 54), (CENTRE, 58))
    filling = bare_neck().reverse().to(on_shoulder(0.34), (35, 54), (CENTRE, 58))
    whole = filling.then(filling.mirror().reverse()).close()
    collar = bare_neck().reverse().to((37.6, 28.6)).bend((38, 36), (45, 38)).close()
    rows = [path((44.6, 38), (44.6, 56.8)), path((41.2, 37), (41.2, 55.8)), path((37.8, 35), (37.8, 54.8))]
    under = path((35, 54), (33, 72), (CENTRE, 73))
    return _on_bust(edge) + GROUND(whole, collar, collar.mirror()) + LINE.both(rows) + DOTTED.both(under)


DRAWINGS: Mapping[str, Callable[[], Drawing]] = {
    "round-yoke": enlarged(round_yoke),
    "square-yoke": enlarged(square_yoke),
    "pointed-yoke": enlarged(pointed_yoke),
    "shoulder-yoke": enlarged(shoulder_yoke),
    "hip-yoke": hip_yoke,
    "shirt-yoke": enlarged(shirt_yoke),
    "vestee": enlarged(vestee),
    "plastron": enlarged(plastron),
    "godet": godet,
    "gusset": gusset,
    "panel": panel,
    "lace-yoke": enlarged(lace_yoke),
    "chemisette": enlarged(chemisette),
    "back-yoke": enlarged(back_yoke),
}
