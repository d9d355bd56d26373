"""Collars, as they lie on the front, and on the back where that is drawn."""

from __future__ import annotations

from inperiod.drawing.flats.ink import whole
from inperiod.drawing.flats.necks import neckline
from inperiod.drawing.flats.work import Work
from inperiod.drawing.hand import FAINT, GROUND, LINE, TINT, Path, Pen, Point, evenly, ring, smooth, waved

__all__ = ["draw_bow", "draw_collar"]

# A collar of another colour than the garment is toned.
TONED = Pen(fill="tint")


def draw_collar(work: Work) -> None:
    """The chosen collar; ``collar_edge`` tells trims where its edge is."""
    outline = work.outline
    kind = work.chosen.collar.id
    if outline is None or work.build.skirt or kind == "none":
        return
    if work.back and kind not in ("sailor", "bertha", "boned-stand", "stand", "mandarin", "wing"):
        if kind in BACKS:
            _back_collar(work, BACKS[kind])
        return
    make = _MAKERS.get(kind)
    if make is not None:
        make(work)


BACKS = {
    "peter-pan": 5.6,
    "turnover": 4.4,
    "shirt-collar": 3.4,
    "eton": 6.0,
    "shawl": 5.0,
    "notched": 4.4,
    "ruffle": 3.4,
}
"""How deep the collars that go round the neck lie on the back, in centimetres."""


def _back_collar(work: Work, wide: float) -> None:
    assert work.outline is not None
    (x, y), _, s = _points(work)
    w = wide * s
    tip = (x + w * 0.75, work.outline.on_shoulder(x + w * 0.75))
    half = Path((0.0, y - 1.6 * s)).bend((x * 0.6, y - 1.6 * s), (x - 0.3, y - 0.6 * s)).to(tip)
    half = half.curve((tip[0] - 0.4, y + w * 1.1), (x * 0.6, y + w + 1.2), (0.0, y + w + 1.2))
    _lay(work, whole(half), both=False)
    work.collar_edge = Path(tip).curve(
        (tip[0] - 0.4, y + w * 1.1), (x * 0.6, y + w + 1.2), (0.0, y + w + 1.2)
    )


def _lay(work: Work, *areas: Path, both: bool = True) -> None:
    """A piece of collar over what is below it."""
    lay = work.sheet.both if both else work.sheet.put
    lay("collar", GROUND, *areas)
    if work.record.has("colour/contrast-two-colour") or any(
        feature.at == "collar" for feature in work.record.all("fabric")
    ):
        lay("collar", TINT, *areas)
        for feature in (*work.record.all("fabric"), *work.record.all("colour")):
            if feature.at == "collar":
                work.record.drew(feature)


def _points(work: Work) -> tuple[Point, float, float]:
    assert work.outline is not None
    return work.outline.neck, work.outline.depth, work.s


def _stand(work: Work, height: float, spread: float) -> None:
    (x, y), d, s = _points(work)
    front = y + 1.0 if work.back else min(d, 7.0 * s)
    dip = -0.6 if work.back else 3.4
    rise = height * s
    area = (
        Path((x, y + 0.4))
        .to((x - spread * s, y - rise))
        .bend((0.0, y - rise + dip * s), (-x + spread * s, y - rise))
        .to((-x, y + 0.4))
        .curve((-x * 0.9, front), (-x * 0.3, front + 1), (0.0, front + 1))
        .curve((x * 0.3, front + 1), (x * 0.9, front), (x, y + 0.4))
        .close()
    )
    top = Path((x - spread * s, y - rise)).bend((0.0, y - rise - 2.0 * s), (-x + spread * s, y - rise))
    if not work.back:
        work.sheet.put("collar", FAINT, top)
    _lay(work, area, both=False)
    work.collar_edge = Path((x - spread * s, y - rise)).curve(
        (x * 0.5, y - rise + 1.6 * s), (x * 0.2, y - rise + 1.7 * s), (0.0, y - rise + 1.7 * s)
    )


def _boned(work: Work) -> None:
    _stand(work, 6.2, 0.9)
    (x, y), _, s = _points(work)
    for share in (0.33, 0.78):
        bone = Path((x * share, y + 5 * s - 3.6 * share * s)).to(
            (x * share * 0.95, y - 4.4 * s - share * 0.8 * s)
        )
        work.sheet.faint("collar", bone)


def _low_stand(work: Work) -> None:
    _stand(work, 3.4, 0.6)


def _mandarin(work: Work) -> None:
    _stand(work, 3.2, 0.5)
    (_, y), d, s = _points(work)
    work.sheet.put("collar", LINE, Path((0.0, min(d, 7 * s) + 1)).to((0.0, y - 1.4 * s)))


def _wing(work: Work) -> None:
    _stand(work, 4.6, 0.6)
    (x, y), _, s = _points(work)
    tip = Path((0.4, y - 2.6 * s)).to((x * 0.72, y + 0.6 * s)).to((x * 0.72, y - 3.1 * s)).close()
    _lay(work, tip)


def _turned(work: Work, wide: float, tip: float, round_end: bool) -> None:
    """A collar turned down all round: ``wide`` at the shoulder, its front end ``tip`` below the neckline."""
    assert work.outline is not None
    (x, y), d, s = _points(work)
    line = neckline(work.outline)
    w = wide * s
    shoulder = (x + w, work.outline.on_shoulder(x + w) + 0.4)
    end = (max(1.0, x * 0.16), d + tip * s)
    if round_end:
        edge = Path(shoulder).curve(
            (x + w + 0.6, y + (d - y) * 0.6 + w * 0.4), (x * 0.85 + w * 0.5, d + tip * 1.3 * s), end
        )
        edge = edge.curve((0.4, d + tip * 0.8 * s), (0.0, d + tip * 0.3 * s), (0.0, d))
    else:
        corner = (x * 0.62 + w * 0.35, d + tip * s)
        edge = Path(shoulder).curve((x + w, y + (d - y) * 0.5), (corner[0] + w * 0.4, d), corner).to((0.0, d))
    back = Path((x - 0.4, y - 1.2 * s)).bend((x + w * 0.6, y - 0.6 * s), shoulder)
    inner = line.reverse()
    area = back.then(edge).then(inner).close()
    _lay(work, area)
    work.sheet.both(
        "collar", LINE, Path((x - 0.4, y - 1.2 * s)).bend((x * 0.5, y - 1.9 * s), (0.0, y - 1.9 * s))
    )
    work.collar_edge = edge


def _peter_pan(work: Work) -> None:
    _turned(work, 5.4, 5.4, True)


def _turnover(work: Work) -> None:
    _turned(work, 4.0, 4.2, False)


def _shirt(work: Work) -> None:
    _turned(work, 2.6, 6.0, False)


def _eton(work: Work) -> None:
    _turned(work, 6.0, 6.0, True)


def _sailor(work: Work) -> None:
    """Broad over the shoulder, its fronts running down to the point of the opening."""
    assert work.outline is not None
    outline = work.outline
    (x, y), d, s = _points(work)
    if work.back:
        w = min(outline.shoulder[0] - 0.6, x + 9.0 * s)
        deep = outline.underarm[1] - 2.0 * s
        half = Path((0.0, y + 1.2)).bend((x * 0.5, y + 1.2), (x, y)).to((w, outline.on_shoulder(w)))
        half = half.to((w - 1.0 * s, deep)).to((0.0, deep))
        _lay(work, whole(half), both=False)
        work.collar_edge = Path((w, outline.on_shoulder(w))).to((w - 1.0 * s, deep)).to((0.0, deep))
        return
    w = min(outline.shoulder[0] - 0.4, x + 8.6 * s)
    low = (w - 1.6 * s, min(outline.underarm[1] - 3.0 * s, d * 0.75))
    end = d + 2.0 * s
    edge = (
        Path((w, outline.on_shoulder(w)))
        .to(low)
        .curve((low[0] * 0.7, low[1] + 1.6 * s), (2.5 * s, end - 4 * s), (0.0, end))
    )
    area = (
        Path((x - 0.4, y - 1.0))
        .to((w, outline.on_shoulder(w)))
        .then(edge)
        .then(neckline(outline).reverse())
        .close()
    )
    _lay(work, area)
    work.sheet.both("collar", LINE, Path((x - 0.4, y - 1.0)).bend((x * 0.5, y - 1.6 * s), (0.0, y - 1.6 * s)))
    work.collar_edge = edge


def _shawl(work: Work) -> None:
    assert work.outline is not None
    (x, y), d, s = _points(work)
    w = 4.6 * s
    shoulder = (x + w * 0.8, work.outline.on_shoulder(x + w * 0.8))
    edge = Path(shoulder).curve(
        (x + w * 1.3, y + (d - y) * 0.42), (x * 0.7 + w * 0.6, d * 0.8), (0.0, d + 3.2 * s)
    )
    area = Path((x - 0.3, y - 1.6 * s)).bend((x + 1.6 * s, y - 1.0 * s), shoulder).then(edge)
    area = area.then(neckline(work.outline).reverse()).close()
    _lay(work, area)
    work.sheet.both(
        "collar", LINE, Path((x - 0.3, y - 1.6 * s)).bend((x * 0.5, y - 2.3 * s), (0.0, y - 2.3 * s))
    )
    work.collar_edge = edge


def _notched(work: Work) -> None:
    """Collar and lapel with a notch between."""
    assert work.outline is not None
    (x, y), d, s = _points(work)
    gorge = y + (d - y) * 0.42
    shoulder = (x + 2.6 * s, work.outline.on_shoulder(x + 2.6 * s))
    collar_tip = (x + 2.4 * s, gorge + 0.4 * s)
    lapel_tip = (x + 4.8 * s, gorge + 1.6 * s)
    notch = (x + 0.4 * s, gorge + 2.6 * s)
    inner = neckline(work.outline)
    area = Path((x - 0.3, y - 1.6 * s)).to(shoulder).to(collar_tip, notch, lapel_tip)
    area = (
        area.curve((x + 2.6 * s, d * 0.78), (2.0 * s, d + 0.5), (0.0, d + 2.4 * s))
        .then(inner.reverse())
        .close()
    )
    _lay(work, area)
    on_roll = (x * 0.72, gorge - 0.6 * s)
    work.sheet.both(
        "collar",
        LINE,
        Path(notch).to(on_roll),
        Path((x - 0.3, y - 1.6 * s)).bend((x * 0.5, y - 2.3 * s), (0.0, y - 2.3 * s)),
    )
    work.collar_edge = Path(lapel_tip).curve((x + 2.6 * s, d * 0.78), (2.0 * s, d + 0.5), (0.0, d + 2.4 * s))


def _revers(work: Work) -> None:
    """Fronts turned back, without a collar piece above them."""
    assert work.outline is not None
    (x, y), d, s = _points(work)
    tip = (min(x + 6.4 * s, work.outline.shoulder[0] - 1), y + (d - y) * 0.4)
    area = Path((x, y)).to(tip).curve((x + 3 * s, d * 0.72), (2.6 * s, d), (0.0, d + 1.6 * s))
    area = area.then(neckline(work.outline).reverse()).close()
    _lay(work, area)
    work.collar_edge = Path(tip).curve((x + 3 * s, d * 0.72), (2.6 * s, d), (0.0, d + 1.6 * s))


def _bertha(work: Work) -> None:
    """A deep fall round the shoulders."""
    assert work.outline is not None
    outline = work.outline
    (x, y), d, s = _points(work)
    tip = (outline.shoulder[0] + 1.6 * s, outline.shoulder[1] + 5.0 * s)
    deep = max(d + 6.5 * s, 16.0 * s)
    edge = Path(tip).curve((tip[0] - 2.0, deep - 2), (x, deep), (0.0, deep))
    outer = Path((x, y)).to(outline.shoulder).bend((tip[0] + 0.4, tip[1] - 3), tip)
    _lay(work, outer.then(edge).then(neckline(outline).reverse()).close())
    for share in (0.34, 0.68):
        work.sheet.faint(
            "collar",
            Path((tip[0] * share, deep - 0.4 - 3.0 * share * share)).to(
                (x * share * 0.98 + 1.2 * share, d * (1 - share * 0.4) + 2.4)
            ),
        )
    work.collar_edge = edge


def _ruffle(work: Work) -> None:
    """A gathered frill round the neck."""
    assert work.outline is not None
    line = neckline(work.outline, 3.0 * work.s)
    edge = waved(line, 0.8 * work.s, 7, "wave")
    inner = neckline(work.outline)
    _lay(work, Path(inner.start).then(edge).then(inner.reverse()).close())
    inner_spots, outer_spots = evenly(inner, 8), evenly(line, 8)
    for (a, _), (b, _) in zip(inner_spots, outer_spots, strict=True):
        work.sheet.faint("collar", Path(a).to(((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)))
    work.collar_edge = line


def _jabot(work: Work) -> None:
    """A fall of frills down the front from a band at the neck."""
    (x, y), d, s = _points(work)
    deep_neck = d > 11 * s
    top = d - 7.0 * s if deep_neck else min(d, 8 * s)
    deep = top + (19 if deep_neck else 17) * s
    wide = (x * 7.0 * s / max(1.0, d - y)) if deep_neck else 0.4
    fall = Path((0.0, top + (1.2 if deep_neck else 0.0))).to((wide, top))
    fall = fall.curve((wide + 2.2 * s, top + 2), (5.4 * s, top + 5 * s), (4.8 * s, top + 8 * s))
    fall = fall.curve((3.4 * s, top + 7.4 * s), (6.2 * s, top + 12 * s), (4.6 * s, top + 14 * s))
    _lay(work, whole(fall.curve((3.2 * s, top + 13 * s), (3.6 * s, deep), (0.0, deep))), both=False)
    for lean in (0.0, 1.0):
        work.sheet.faint(
            "collar",
            smooth(
                (wide * 0.5 + 0.3 + lean, top + 2),
                (1.4 * s + lean, top + 7 * s),
                (1.0 * s + 1.4 * lean, top + 13 * s),
            ),
        )
    work.collar_edge = Path((x, y)).curve((x * 0.9, top), (2, top), (0.0, top))


def _tie(work: Work) -> None:
    """A band tied in a bow at the point of the neckline."""
    _, d, s = _points(work)
    draw_bow(work, "collar", (0.0, min(d, 24 * s)), 5.6 * s, 9.5 * s)


def draw_bow(work: Work, part: str, spot: Point, wide: float, fall: float) -> None:
    """A bow with two ends."""
    x, y = spot
    loop = Path((x, y)).curve((x + wide * 0.4, y - wide * 0.62), (x + wide, y - wide * 0.5), (x + wide, y))
    loop = loop.curve((x + wide, y + wide * 0.42), (x + wide * 0.4, y + wide * 0.3), (x, y)).close()
    end = Path((x + 0.2, y + 0.4)).curve(
        (x + wide * 0.3, y + fall * 0.4), (x + wide * 0.3, y + fall * 0.7), (x + wide * 0.5, y + fall)
    )
    end = (
        end.to((x + wide * 0.08, y + fall * 0.96))
        .curve((x + wide * 0.1, y + fall * 0.6), (x - wide * 0.02, y + fall * 0.3), (x - 0.1, y + 0.4))
        .close()
    )
    for piece in (end, loop):
        work.sheet.put(part, GROUND, piece, piece.mirror(x))
    work.sheet.put(part, GROUND, ring((x, y), wide * 0.16, wide * 0.19))


_MAKERS = {
    "boned-stand": _boned,
    "stand": _low_stand,
    "mandarin": _mandarin,
    "wing": _wing,
    "peter-pan": _peter_pan,
    "turnover": _turnover,
    "shirt-collar": _shirt,
    "eton": _eton,
    "sailor": _sailor,
    "shawl": _shawl,
    "notched": _notched,
    "revers": _revers,
    "bertha": _bertha,
    "ruffle": _ruffle,
    "jabot": _jabot,
    "tie-bow": _tie,
}
