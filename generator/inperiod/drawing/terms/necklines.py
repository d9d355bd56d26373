"""Necklines, all on one bust in a plain sleeveless bodice."""

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
    path,
    ring,
    smooth,
    stitches,
)
from inperiod.drawing.terms.bust import (
    ARMHOLE,
    FOOT,
    NECK,
    SIDE,
    TIP,
    UNDERARM,
    back_neck,
    bare_neck,
    bodice,
    body,
    enlarged,
    on_shoulder,
)


def _plain(edge: Path, back: Path | None = None) -> Drawing:
    return body() + bodice(edge, back=back)


def high() -> Drawing:
    """The cloth runs on up the throat to a level edge."""
    edge = Path((41.3, 19.5)).bend((44, 21.6), (CENTRE, 21.8))
    shoulder = Path((41.3, 19.5)).through((41.2, 23.5), NECK, (33.5, 29.4), TIP)
    half = edge.reverse().then(shoulder).then(ARMHOLE).then(SIDE)
    cloth = half.then(half.mirror().reverse()).close()
    behind = Path((41.3, 19.5)).bend((44, 18.2), (CENTRE, 18))
    creases = [smooth((42.6, 27.5), (44.6, 28.8), (46.6, 29.2)), smooth((41.8, 31), (43.6, 33), (45.4, 34))]
    return (
        body()
        + WASH(cloth)
        + LINE.both(edge, part_of(shoulder))
        + FAINT.both(ARMHOLE, SIDE, creases)
        + (DOTTED.both(behind))
    )


def part_of(shoulder: Path) -> Path:
    """The throat's side of the shoulder line."""
    return Path(shoulder.start, shoulder.steps[:2])


def round_neck() -> Drawing:
    start = on_shoulder(0.2)
    return _plain(Path(start).curve((36.4, 36), (41, 41), (CENTRE, 41)), back_neck(0.2))


def jewel() -> Drawing:
    return _plain(bare_neck(), back_neck())


def square() -> Drawing:
    return _plain(path(on_shoulder(0.34), (34, 47), (CENTRE, 47)), back_neck(0.34))


def v_neck() -> Drawing:
    return _plain(path(on_shoulder(0.12), (CENTRE, 58)), back_neck(0.12))


def sweetheart() -> Drawing:
    edge = path(on_shoulder(0.4), (31.2, 45)).curve((34, 44.6), (44.4, 45), (CENTRE, 54))
    return _plain(edge, back_neck(0.4))


def boat() -> Drawing:
    edge = Path(on_shoulder(0.86)).bend((32, 34.8), (CENTRE, 34.8))
    return _plain(edge, Path(on_shoulder(0.86)).bend((34, 32.4), (CENTRE, 32.2)))


def scoop() -> Drawing:
    edge = Path(on_shoulder(0.62)).curve((28, 46), (36, 55), (CENTRE, 55))
    return _plain(edge, back_neck(0.62, 3))


def cowl() -> Drawing:
    """Slack folds hanging from shoulder to shoulder."""
    edge = Path(on_shoulder(0.3)).curve((35, 38), (42, 45), (CENTRE, 45))
    folds = [
        Path(on_shoulder(0.42)).curve((32, 44), (40, 53.5), (CENTRE, 53.5)),
        Path(on_shoulder(0.56)).curve((28.6, 46), (36, 60), (45, 62.6)),
        Path(on_shoulder(0.7)).curve((25.6, 46), (31, 62), (40, 69)),
    ]
    return _plain(edge, back_neck(0.3)) + LINE.both(folds)


def halter() -> Drawing:
    """The front runs up to a band behind the neck; shoulders bare."""
    outer = Path((40.6, 24.6)).curve((36, 33), (27, 46), UNDERARM)
    inner = path((43.2, 28.4), (CENTRE, 50))
    half = inner.reverse().to((40.6, 24.6)).then(outer).then(SIDE)
    cloth = half.then(half.mirror().reverse()).close()
    band = Path((40.6, 24.6)).bend((44, 22.8), (CENTRE, 22.6))
    low = Path(UNDERARM).bend((36, 71), (CENTRE, 72))
    lines = LINE.both(outer, inner, path((40.6, 24.6), (43.2, 28.4)))
    return body() + WASH(cloth) + lines + FAINT.both(SIDE) + DOTTED.both(band, low)


def surplice() -> Drawing:
    """The wearer's right front crosses over the left one and is held at the side."""
    edge = path(on_shoulder(0.12), (CENTRE, 54))
    over = path(_mirrored(on_shoulder(0.12)), (CENTRE, 54)).through((37, 68), (27, 78))
    under = path((CENTRE, 54), (56, 66))
    folds = [Path((64, 44)).through((54, 58), (40, 72)), Path((68, 58)).through((58, 66), (46, 75))]
    return body() + bodice(edge, back=back_neck(0.12)) + LINE(over, folds) + DOTTED(under)


def _mirrored(point: tuple[float, float]) -> tuple[float, float]:
    return (2 * CENTRE - point[0], point[1])


def keyhole() -> Drawing:
    edge = bare_neck()
    hole = (
        Path((CENTRE, 34.6)).curve((45, 38), (41.6, 43), (41.8, 47)).curve((42, 51), (45, 52.8), (48, 52.8))
    )
    whole = hole.then(hole.mirror().reverse()).close()
    button = ring((CENTRE, 34), 1.5)
    return _plain(edge, back_neck()) + GROUND(whole, button)


def slit() -> Drawing:
    edge = Path(NECK).curve((40.6, 31), (43.4, 33.1), (46.4, 33.1)).bend((47.5, 43), (CENTRE, 56))
    facing = path((43.6, 32.4), (44, 59.6), (CENTRE, 59.6))
    return _plain(edge, back_neck()) + LINE.both(stitches(facing, 2, 1.6))


def off_shoulder() -> Drawing:
    """The edge lies below the shoulder points and goes round the arms."""
    top = Path((10.9, 49)).curve((20, 53), (36, 56), (CENTRE, 56))
    sleeve = Path((9.8, 68)).bend((15, 70), (22, 69.4))
    outer = Path((10.9, 49)).through((9.6, 58), (9.8, 68))
    under = path((22, 69.4), (25.2, 64.5))
    side = Path((25.2, 64.5)).bend((26.6, 72), FOOT)
    half = top.reverse().then(outer).then(sleeve).then(under).then(side)
    cloth = half.then(half.mirror().reverse()).close()
    joint = Path((21.6, 52.6)).bend((22.4, 59), (25.2, 64.5))
    return body() + WASH(cloth) + LINE.both(top, outer, sleeve) + FAINT.both(under, side, joint)


def one_shoulder() -> Drawing:
    edge = Path(on_shoulder(0.15)).bend((47, 49), (71, 60))
    side = SIDE.mirror()
    cloth = edge.then(side).then(SIDE.reverse()).then(ARMHOLE.reverse()).close()
    lines = LINE(edge) + FAINT(path(on_shoulder(0.15), TIP), ARMHOLE, SIDE, side)
    behind = Path(on_shoulder(0.15)).bend((54, 40), (71, 60))
    return body() + WASH(cloth) + lines + DOTTED(behind)


def u_neck() -> Drawing:
    edge = Path(on_shoulder(0.2)).curve((36.6, 44), (36, 62), (CENTRE, 62))
    return _plain(edge, back_neck(0.2))


def henley() -> Drawing:
    edge = bare_neck()
    rib = Path(on_shoulder(0.14)).curve((38.2, 33.6), (42.6, 36.6), (CENTRE, 36.6))
    band = path((44.8, 36), (44.8, 60), (51.2, 60), (51.2, 36))
    buttons = [ring((CENTRE, y), 1.5) for y in (40, 47, 54)]
    return _plain(edge, back_neck()) + LINE.both(rib) + LINE(band, buttons)


_ALL: Mapping[str, Callable[[], Drawing]] = {
    "high": high,
    "round": round_neck,
    "jewel": jewel,
    "square": square,
    "v": v_neck,
    "sweetheart": sweetheart,
    "boat": boat,
    "scoop": scoop,
    "cowl": cowl,
    "halter": halter,
    "surplice": surplice,
    "keyhole": keyhole,
    "slit": slit,
    "off-shoulder": off_shoulder,
    "one-shoulder": one_shoulder,
    "u": u_neck,
    "henley": henley,
}

DRAWINGS: Mapping[str, Callable[[], Drawing]] = {term: enlarged(draw) for term, draw in _ALL.items()}
