"""Collars, all on one bust; the garment below is only hinted at, the collar is left white upon it."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from inperiod.drawing.hand import (
    CENTRE,
    DOTTED,
    FAINT,
    GROUND,
    LINE,
    Drawing,
    Path,
    beside,
    path,
    ring,
    smooth,
    waved,
)
from inperiod.drawing.terms.bust import NECK, back_neck, bare_neck, bodice, body, enlarged, on_shoulder

BASE = bare_neck()
FALL = Path((41.2, 22.6)).bend((44.5, 22.0), (CENTRE, 21.8))


def _under(edge: Path = BASE) -> Drawing:
    return body() + bodice(edge, bold=False)


def _opening(top: float = 33.2) -> Drawing:
    return FAINT(path((CENTRE, top), (CENTRE, 80)))


def _whole(half: Path) -> Path:
    """A collar in one piece from its left half, which runs from centre to centre."""
    return half.then(half.mirror().reverse()).close()


def _stand(top: float, foot: Path = BASE) -> Path:
    edge = Path((41.2, top)).bend((44, top + 2), (CENTRE, top + 2.2))
    return _whole(edge.reverse().to(foot.start).then(foot))


def stand() -> Drawing:
    return _under() + GROUND(_stand(19.6)) + DOTTED.both(Path((41.2, 19.6)).bend((44, 18), (CENTRE, 17.9)))


def boned_stand() -> Drawing:
    """To under the jaw, rising at the sides, its bones shown."""
    edge = Path((40.2, 12.6)).curve((42, 17), (45, 18.6), (CENTRE, 19))
    band = _whole(edge.reverse().to(NECK).then(BASE))
    bones = [Path((41.6, 16)).bend((41.4, 23), (41.6, 30)), path((45, 18.6), (45, 32.6))]
    return _under() + GROUND(band) + LINE.both(bones)


def turnover() -> Drawing:
    """Rises and falls over itself; points spread, the fold high behind."""
    leaf = FALL.reverse().to((41.2, 22.6)).bend((38.6, 25), (34.6, 31.2)).bend((36, 37), (39.4, 42))
    leaf = leaf.bend((43, 36), (CENTRE, 33.4)).close()
    return _under() + _opening() + GROUND(leaf, leaf.mirror()) + LINE(path((CENTRE, 21.8), (CENTRE, 33.4)))


def peter_pan() -> Drawing:
    """Lies flat, rounded ends meeting in front."""
    leaf = bare_neck().reverse().to(on_shoulder(0.42))
    leaf = leaf.through((31, 39.4), (38.4, 45.4), (45.2, 45.6), (47.6, 40), (CENTRE, 33)).close()
    return _under() + _opening() + GROUND(leaf, leaf.mirror()) + DOTTED.both(back_neck())


def sailor() -> Drawing:
    """Square behind, so that it stands out over the shoulders, to a V in front; rows of tape."""
    inner = path((CENTRE, 62), NECK)
    outer = path((24, 33), (24.4, 42)).bend((34, 52), (46.2, 68))
    leaf = inner.to((24, 33)).then(outer).to((CENTRE, 62)).close()
    rows = [beside(outer, d) for d in (-2.4, -4.4)]
    tie = path((CENTRE, 64), (44.4, 80), (49, 83), (51.6, 80), (CENTRE, 64)).close()
    knot = path((46, 62), (50, 62), (50.6, 66.6), (45.4, 66.6)).close()
    return (
        _under(path(NECK, (CENTRE, 62)))
        + GROUND(leaf, leaf.mirror())
        + LINE.both(rows)
        + GROUND(tie, knot)
        + DOTTED.both(back_neck())
    )


def shawl() -> Drawing:
    """One unbroken curve, no notch."""
    leaf = Path((41.2, 23)).bend((40.2, 29), (CENTRE, 66)).curve((42, 62), (31, 54), (32.4, 41))
    leaf = leaf.curve((33, 35), (36, 29), (41.2, 23)).close()
    return _under(path(NECK, (CENTRE, 66))) + _opening(66) + GROUND(leaf, leaf.mirror()) + _behind()


def _behind() -> Drawing:
    return LINE.both(Path((41.2, 23)).bend((44, 21), (CENTRE, 20.9)))


def notched() -> Drawing:
    """Collar and lapel with the angle between them open."""
    lapel = path((CENTRE, 66), (29.6, 48), (34.6, 43.6), (42.6, 37)).close()
    collar = path((41.2, 23), (43, 38), (36.6, 42), (30.4, 41.4), (33.4, 31.4)).close()
    return (
        _under(path(NECK, (CENTRE, 66)))
        + _opening(66)
        + GROUND(lapel, lapel.mirror(), collar, collar.mirror())
        + _behind()
    )


def bertha() -> Drawing:
    """Falls all round from a low neck over the shoulders."""
    neck = Path(on_shoulder(0.5)).curve((30, 41), (38, 48), (CENTRE, 48))
    low = Path((13.4, 49)).through((20, 58), (34, 65), (CENTRE, 67))
    outer = Path(on_shoulder(0.5)).through((18, 35.6), (13.6, 41), (13.4, 49))
    half = neck.reverse().then(outer).then(waved(low, -1.4, 9, "scallops"))
    folds = [path((27, 45), (22, 57)), path((33, 48.6), (29.6, 60)), path((40, 51.6), (38.6, 63))]
    return _under(neck) + GROUND(_whole(half)) + LINE.both(folds)


def wing() -> Drawing:
    """Stiff and high; only the points turned down."""
    band = _stand(16.4)
    point = path((CENTRE, 19.4), (41.9, 21.6), (46, 25.6)).close()
    return _under() + _opening() + GROUND(band, point, point.mirror()) + LINE(path((48, 19), (48, 33)))


def revers() -> Drawing:
    """The fronts simply turned back; no collar."""
    leaf = path((CENTRE, 62), on_shoulder(0.08)).to((29, 38)).bend((33, 47), (CENTRE, 62)).close()
    inside = [path((36, 33.6), (34, 45)), path((39, 39), (38, 48.6)), path((42, 46), (41.4, 52.6))]
    return (
        _under(path(on_shoulder(0.08), (CENTRE, 62)))
        + _opening(62)
        + GROUND(leaf, leaf.mirror())
        + LINE.both(inside)
        + DOTTED.both(back_neck())
    )


def eton() -> Drawing:
    """Broad, stiff and white, lying flat over the coat."""
    leaf = FALL.reverse().to((41.2, 22.6)).bend((35, 27), (25.4, 31.2)).bend((27, 38), (31.4, 46.4))
    leaf = leaf.bend((38, 45), (46.6, 48)).to((CENTRE, 30)).close()
    lapel = [path((31, 47), (36, 58), (CENTRE, 78))]
    tie = path((46.4, 33), (49.6, 33), (51.4, 74), (CENTRE, 78), (44.6, 74)).close()
    return (
        _under()
        + FAINT.both(lapel)
        + FAINT(tie)
        + GROUND(leaf, leaf.mirror())
        + LINE(ring((CENTRE, 31.5), 2.2, 2))
    )


def ruffle() -> Drawing:
    """A frill standing and lying round the neck."""
    outer = Path((34, 22.4)).through((33.4, 30), (39, 37.6), (CENTRE, 40.2))
    wavy = waved(outer, 1.5, 8, "wave")
    foot = Path(NECK).through((41.6, 29.4), (CENTRE, 31.6), ease=1.2)
    half = foot.reverse().to((41.2, 21)).to((34, 22.4)).then(wavy)
    pleats = [path(a, b) for a, b in (((40.4, 26), (36, 27)), ((41.2, 28.4), (37.4, 32.4)))]
    pleats += [path((43.4, 30.4), (41.6, 36)), path((46.2, 31.6), (45.6, 37.2))]
    top = Path((41.2, 21)).bend((44, 22.6), (CENTRE, 22.8))
    return _under() + GROUND(_whole(half)) + LINE.both(pleats, foot, top)


def jabot() -> Drawing:
    """A fall of lace down the front from a low stand."""
    left = smooth((46.4, 33), (41, 41), (43.6, 46), (39.6, 54), (42.6, 60), (38.4, 70))
    foot = waved(path((38.4, 70), (57.6, 70)), 2, 5, "scallops")
    fall = left.then(foot).then(left.mirror().reverse()).close()
    folds = [
        smooth((47.2, 35), (45.4, 48), (43, 58), (43.4, 71)),
        smooth((CENTRE, 35), (49.4, 52), (47, 62), (48, 71)),
        smooth((48.8, 35), (51.6, 50), (52.8, 60), (52.8, 71)),
    ]
    return _under() + GROUND(_stand(24), fall) + LINE(folds, ring((CENTRE, 33.4), 2, 1.6))


def tie_bow() -> Drawing:
    """The collar's own ends tied in a bow."""
    band = _stand(24)
    loop = Path((46, 36)).curve((40, 28), (29, 29), (30, 37)).curve((31, 44), (41, 42), (46, 38.4)).close()
    tail = Path((46.6, 39)).bend((41, 52), (36.6, 66)).to((43.6, 69)).bend((46, 54), (48, 40)).close()
    knot = path((45.6, 35), (50.4, 35), (51, 39.6), (45, 39.6)).close()
    creases = [path((44.6, 36.6), (38, 35.4)), path((44, 38.4), (39, 39.2)), path((46, 43), (42.6, 54))]
    return _under() + GROUND(band, tail, tail.mirror(), loop, loop.mirror(), knot) + LINE.both(creases)


def shirt_collar() -> Drawing:
    """Turned down from a band that buttons at the throat; the edges stitched."""
    leaf = path((CENTRE, 24), (41.2, 21.4), (38, 28.4), (38.4, 43), (CENTRE, 30.6)).close()
    band = path((44.8, 31.6), (CENTRE, 29), (51.2, 31.6), (51.2, 36), (44.8, 36)).close()
    front = FAINT(path((44.8, 36), (44.8, 80)), path((51.2, 36), (51.2, 80)))
    buttons = LINE(ring((CENTRE, 33.6), 1.2)) + FAINT(ring((CENTRE, 48), 1.2), ring((CENTRE, 64), 1.2))
    return _under() + front + GROUND(band, leaf, leaf.mirror()) + buttons


def mandarin() -> Drawing:
    """Low and upright, the rounded ends a little apart."""
    end = Path((41.2, 22.4)).bend((44, 23.6), (45.4, 24.4)).curve((47.2, 25.2), (47.2, 30), (46.8, 32.8))
    leaf = end.through((41.8, 30.8), NECK, ease=1.1).close()
    behind = Path((41.2, 22.4)).bend((44, 20.8), (CENTRE, 20.7))
    return _under() + _opening() + GROUND(leaf, leaf.mirror()) + DOTTED.both(behind)


_ALL: Mapping[str, Callable[[], Drawing]] = {
    "stand": stand,
    "boned-stand": boned_stand,
    "turnover": turnover,
    "peter-pan": peter_pan,
    "sailor": sailor,
    "shawl": shawl,
    "notched": notched,
    "bertha": bertha,
    "wing": wing,
    "revers": revers,
    "eton": eton,
    "ruffle": ruffle,
    "jabot": jabot,
    "tie-bow": tie_bow,
    "shirt-collar": shirt_collar,
    "mandarin": mandarin,
}

DRAWINGS: Mapping[str, Callable[[], Drawing]] = {term: enlarged(draw) for term, draw in _ALL.items()}
