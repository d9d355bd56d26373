"""Trimmings, at their recorded places and widths; where the plate names no place, at their usual one."""

from __future__ import annotations

import math

from inperiod.drawing.flats.collars import draw_bow
from inperiod.drawing.flats.lower import width_in_cm
from inperiod.drawing.flats.necks import back_neck, neckline
from inperiod.drawing.flats.record import term_id
from inperiod.drawing.flats.work import Work
from inperiod.drawing.hand import (
    FAINT,
    GROUND,
    LINE,
    TINT,
    Path,
    Point,
    at,
    beside,
    evenly,
    length,
    path,
    ring,
    waved,
)
from inperiod.records.model import Feature

USUAL: dict[str, tuple[str, ...]] = {
    "sash": ("waist",),
    "bow": ("neckline",),
    "rosette": ("waist",),
    "lace-edging": ("neckline", "sleeve"),
    "frill": ("hem",),
    "braid": ("collar", "hem"),
    "stripes-knitted": ("bodice", "hem"),
    "contrast-band": ("hem",),
    "ribbon": ("waist",),
    "beading-slotted": ("neckline",),
    "embroidery-white": ("bodice",),
    "embroidery-colour": ("bodice",),
    "beads": ("bodice",),
    "sequins": ("bodice",),
    "soutache": ("front",),
    "buttons-ornamental": ("front",),
    "fringe-trim": ("hem",),
    "tassel": ("waist",),
    "fur-band": ("hem",),
    "smocking-band": ("bodice",),
    "fagoting": ("yoke",),
    "binding": ("neckline", "sleeve"),
    "piping": ("neckline", "sleeve"),
}

SINGLE = ("anchor-motif", "monogram", "applique", "bow", "rosette", "tassel")
WIDTHS = {"insertion": 2.0, "contrast-band": 4.0, "ribbon": 1.8, "beading-slotted": 1.8, "fur-band": 5.0,
          "lace-edging": 2.2, "frill": 3.4, "ruching": 2.6, "tape": 1.0, "stripes-knitted": 1.8,
          "embroidery-white": 3.0, "embroidery-colour": 3.0, "fringe-trim": 4.5}  # fmt: skip


def draw_trims(work: Work) -> None:
    """Every trim that can be drawn on this side of the garment."""
    for feature in work.record.all("trim"):
        kind = term_id(feature)
        if (feature.at == "back") != work.back and not (work.back and feature.at == "collar"):
            continue
        if kind == "sash":
            done = _sash(work, feature)
        elif kind in SINGLE:
            done = _single(work, kind, feature)
        else:
            done = _along(work, kind, feature)
        if done:
            work.record.drew(feature)


Line = tuple[Path, bool]
"""A line to trim, the cloth on its left going along it; and whether it has an image on the other side."""


def _lines(work: Work, place: str, inset: float) -> list[Line]:
    """The lines of a place on the garment, so far inside the edge."""
    outline, legs, s = work.outline, work.legs, work.s
    if (
        place == "leg"
        and legs is not None
        or outline is None
        and legs is not None
        and place in ("hem", "edge")
    ):
        return [(legs.across(inset), True)]
    if place in ("sleeve", "cuff", "armhole"):
        return _on_sleeve(work, inset)
    if outline is None:
        if legs is not None and place in ("side",):
            outer = path(*legs.path.points(3)[: len(legs.path.steps[:-3]) * 3])
            return [(beside(outer, 1.0 + inset), True)]
        if legs is not None and place in ("waist", "hip"):
            half = legs.path.start[0]
            return [
                (
                    Path((-half, legs.waist + 1 + inset)).bend(
                        (0, legs.waist + 2.4 + inset), (half, legs.waist + 1 + inset)
                    ),
                    False,
                )
            ]
        return []
    if place == "collar" and work.collar_edge is not None:
        return [(_right_of_centre(beside(work.collar_edge, 0.9 + inset)), True)]
    if place in ("neckline", "collar") and not work.build.skirt:
        if work.back:
            return [(back_neck(outline, inset + 0.6), True)]
        if work.collar_edge is not None:
            return [(_right_of_centre(beside(work.collar_edge, 0.7 + inset)), True)]
        return [(neckline(outline, inset + 0.7), True)]
    if place == "chest" and not work.build.skirt:
        y = min(max(outline.underarm[1] + 1.5, outline.depth + 2.0), outline.hem - 8)
        return [(outline.across(y + inset), False)]
    if place == "yoke":
        if work.seams:
            return [
                (
                    seam.move(0.0, 0.9 + inset)
                    if abs(seam.start[1] - seam.end[1]) < 8
                    else seam.move(0.9 + inset),
                    True,
                )
                for seam in work.seams[:2]
            ]
        y = min(outline.underarm[1] + 1.5, outline.hem - 2)
        return [(outline.across(y + inset, 0.6), False)]
    if place in ("hem", "skirt", "edge"):
        if place == "hem" or place == "edge":
            if place == "edge" and work.build.open:
                return [
                    (Path((2.4 + inset, outline.depth + 3)).to((2.4 + inset, outline.hem - 2.5)), False),
                    (outline.hem_line(1.6 + inset).reverse(), False),
                ]
            if work.build.legs == "trunk" and legs is not None and work.build.body == "crotch":
                return [(legs.across(1.0 + inset), True)]
            return [(outline.hem_line(1.4 + inset), False)]
        top = work.waist
        y = top + (outline.hem - top) * 0.7
        return [(outline.across(y - inset).reverse(), False)]
    if place == "waist":
        y = (outline.top + 1.6) if work.build.skirt else min(work.waist, outline.hem - 2)
        return [(outline.across(y + inset), False)]
    if place == "hip":
        y = min(max(work.figure.y("hip"), work.waist + 2.0), outline.hem - 3)
        return [(outline.across(y + inset), False)]
    if place == "shoulder":
        (nx, ny), (sx, sy) = outline.neck, outline.shoulder
        return [(Path((nx + 0.6, ny + 1.0 + inset)).to((sx - 0.5, sy + 1.0 + inset)), True)]
    if place == "side":
        top, low = outline.underarm[1] + 2, outline.hem - 1
        return [
            (
                Path((outline.half(top) - 1 - inset, top)).through(
                    *((outline.half(y) - 1 - inset, y) for y in ((top + low) / 2, low))
                ),
                True,
            )
        ]
    if place == "pocket":
        return [
            (Path((9.5 * s, p + inset)).to((15.0 * s, p + inset)), True)
            for p in (min(outline.hem - 9 * s, work.figure.y("high-hip")),)
        ]
    # Bodice and front: upright lines from the yoke or the neck to the waist.
    if work.build.skirt:
        return [(outline.down(0.12, outline.top + 4, outline.hem - 1).move(inset), True)]
    low = min(work.waist, outline.hem) - 1
    x = (3.0 if place == "front" else 6.0) * s + inset
    top = max(_reach(work, x), outline.on_shoulder(x) + 0.8)
    if low - top < 6:
        y = outline.underarm[1] + 2
        return [(outline.across(y + inset), False)] if y < outline.hem - 2 else []
    return [(Path((x, top)).to((min(x, outline.half(low) * 0.85), low)), True)]


def _right_of_centre(line: Path) -> Path:
    """The line without what runs over the middle of the body, where its image would cross it."""
    points = [point for point in line.points() if point[0] > 0.15]
    return path(*points) if len(points) > 1 else line


def _reach(work: Work, x: float) -> float:
    """Below the neckline and the collar at a distance from the middle."""
    assert work.outline is not None
    lines = [neckline(work.outline)] + ([work.collar_edge] if work.collar_edge is not None else [])
    found = [y for line in lines for px, y in line.points(6) if px >= x - 1.2]
    return max(found, default=work.outline.depth) + 1.2


def _on_sleeve(work: Work, inset: float) -> list[Line]:
    outline = work.outline
    if work.sleeve_end is None:
        if outline is None or work.build.skirt:
            return []
        (sx, sy), (ux, uy) = outline.shoulder, outline.underarm
        line = outline.armhole()
        return [(line.move(-0.8 - inset), True)]
    end = work.sleeve_end
    (ax, ay), (bx, by) = end.start, end.end
    span = math.dist((ax, ay), (bx, by)) or 1.0
    up = ((by - ay) / span, -(bx - ax) / span)
    if up[1] > 0:
        up = (-up[0], -up[1])
    # The sleeve widens or narrows upwards; keep a little inside it.
    k = 1.1 + inset
    a = (ax + up[0] * k - 0.5 * (ax - bx) / span, ay + up[1] * k - 0.5 * (ay - by) / span)
    b = (bx + up[0] * k + 0.3 * (ax - bx) / span, by + up[1] * k + 0.3 * (ay - by) / span)
    return [(Path(b).to(a), True)]


def _along(work: Work, kind: str, feature: Feature) -> bool:
    places = (feature.at,) if feature.at else USUAL.get(kind, ("neckline",))
    drawn = False
    width = width_in_cm(feature.width) or WIDTHS.get(kind, 1.2) * max(work.s, 0.7)
    rows = max(1, min(feature.count or (3 if kind == "stripes-knitted" else 1), 6))
    for place in places:
        if kind == "stripes-knitted" and place in ("bodice", "front"):
            place = "chest"  # Stripes are knitted in rounds.
        if place == "crown" and work.build.head:
            _on_crown(work, kind)
            drawn = True
            continue
        step = 1.2 * width if kind != "braid" else 0.9 * width
        for row in range(rows):
            inset = row * max(1.0, step)
            outer = _lines(work, place or "neckline", inset)
            inner = _lines(work, place or "neckline", inset + width)
            # Where the cloth is too small for a second line the one line is all that is drawn.
            inner = inner if len(inner) == len(outer) else outer
            for (line, twin), (within, _) in zip(outer, inner, strict=True):
                if length(line) > 1.5:
                    _trim(work, kind, line, within, width, twin)
                    drawn = True
    return drawn


def _trim(work: Work, kind: str, line: Path, inner: Path, width: float, twin: bool) -> None:
    """One line of trimming; ``inner`` is the same line a width further in."""
    put = work.sheet.both if twin else work.sheet.put
    count = max(3, round(length(line) / max(2.2, width * 1.1)))
    if kind in ("braid", "soutache", "tape"):
        if kind == "soutache":
            put("trim", LINE, waved(line, 0.9, count, "wave"))
        else:
            put("trim", LINE, line)
    elif kind in ("binding", "piping"):
        put("trim", LINE, line)
        if kind == "piping":
            put(
                "trim",
                FAINT,
                [
                    Path(spot).to((spot[0] + 0.5, spot[1] - 0.5))
                    for spot, _ in evenly(line, min(count * 2, 24))
                ],
            )
    elif kind in ("contrast-band", "fur-band", "stripes-knitted", "ribbon"):
        band = line.then(inner.reverse()).close()
        put("trim", TINT, band)
        put("trim", TINT, band)
        if kind == "fur-band":
            put(
                "trim",
                LINE,
                [
                    Path(spot).to((spot[0] + 0.4, spot[1] + 1.2))
                    for spot, _ in evenly(line, min(30, count * 3))
                ],
            )
    elif kind in ("insertion", "fagoting", "beading-slotted"):
        put("trim", LINE, line, inner)
        rungs = min(26, max(4, round(length(line) / max(1.4, width))))
        pairs = list(zip(evenly(line, rungs), evenly(inner, rungs), strict=True))
        if kind == "fagoting":
            put("trim", FAINT, [Path(a).to(b) for (a, _), (b, _) in pairs])
        elif kind == "beading-slotted":
            put("trim", LINE, [Path(_mid(a, b, 0.25)).to(_mid(a, b, 0.75)) for (a, _), (b, _) in pairs])
        else:
            spots = [spot for (a, _), (b, _) in pairs for spot in (a, b)]
            put("trim", FAINT, path(*spots))
    elif kind in ("lace-edging",):
        put("trim", LINE, waved(line, 0.55 * width * _outward(work, line, inner), count, "scallops"))
        put("trim", FAINT, line)
    elif kind in ("frill", "ruching"):
        put("trim", LINE, line, waved(inner, 0.5, count, "wave"))
        rungs = min(22, count * 2)
        put(
            "trim",
            FAINT,
            [
                Path(a).to(_mid(a, b, 0.6))
                for (a, _), (b, _) in zip(evenly(line, rungs), evenly(inner, rungs), strict=True)
            ],
        )
    elif kind == "rickrack":
        put("trim", LINE, waved(line, 0.7, max(4, round(length(line) / 1.8)), "points"))
    elif kind in ("embroidery-white", "embroidery-colour", "applique"):
        for place, (spot, (dx, dy)) in enumerate(evenly(line, min(9, max(2, round(length(line) / 5))))):
            _sprig(work, spot, (dx, dy), 1.0 if place % 2 else -1.0, twin)
    elif kind in ("beads", "sequins"):
        put(
            "trim",
            LINE,
            [ring(spot, 0.26) for spot, _ in evenly(line, min(22, max(4, round(length(line) / 1.7))))],
        )
    elif kind == "fringe-trim":
        put("trim", LINE, line)
        put(
            "trim",
            FAINT,
            [Path(spot).to((spot[0], spot[1] + width)) for spot, _ in evenly(inner, min(30, count * 2))],
        )
    elif kind == "buttons-ornamental":
        put(
            "trim",
            GROUND,
            [ring(spot, 0.75 * work.s) for spot, _ in evenly(line, min(8, max(3, round(length(line) / 5))))],
        )
    elif kind == "smocking-band":
        put("trim", FAINT, waved(line, 0.8, count, "points"), waved(inner, 0.8, count, "points"))
    else:
        put("trim", LINE, line)


def _outward(work: Work, line: Path, inner: Path) -> float:
    """Whether scallops on the line's right hang outwards (-1) or into the cloth (1)."""
    (x, y), (dx, dy) = at(line, length(line) / 2)
    bx, by = at(inner, length(inner) / 2)[0]
    right = (bx - x) * -dy + (by - y) * dx
    return 1.0 if right > 0 else -1.0


def _mid(a: Point, b: Point, share: float) -> Point:
    return (a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share)


def _sprig(work: Work, spot: Point, way: Point, side: float, twin: bool) -> None:
    """A small stem with a flower."""
    (x, y), (dx, dy) = spot, way
    s = 1.0 * work.s
    nx, ny = -dy * side, dx * side
    stem = Path((x - dx * 1.8 * s, y - dy * 1.8 * s)).bend(
        (x + nx * 1.0 * s, y + ny * 1.0 * s), (x + dx * 1.2 * s, y + dy * 1.2 * s)
    )
    put = work.sheet.both if twin else work.sheet.put
    put("trim", LINE, stem, ring((x + dx * 1.7 * s, y + dy * 1.7 * s), 0.55 * s))
    put("trim", FAINT, Path((x, y)).to((x - nx * 1.0 * s - dx * 0.5, y - ny * 1.0 * s - dy * 0.5)))


def _sash(work: Work, feature: Feature) -> bool:
    """A sash round the waist or hip, tied at the side in front or, on the back, in a bow."""
    outline, s = work.outline, work.s
    if outline is None:
        return False
    y = (outline.top + 2) if work.build.skirt else min(work.waist, outline.hem - 6)
    if feature.at == "hip":
        y = min(max(work.figure.y("hip"), y), outline.hem - 6)
    high = 5.0 * s
    top, low = outline.across(y - high / 2), outline.across(y + high / 2)
    work.sheet.put("sash", GROUND, top.to(low.end).then(low.reverse()).close())
    for share in (0.33, 0.66):
        work.sheet.put("sash", FAINT, outline.across(y - high / 2 + high * share))
    x = outline.half(y) * 0.5
    long = min(30 * s, (outline.hem - y) * 0.6)
    for lean in (0.0, 2.4):
        end = (
            Path((x - 1, y + 1))
            .bend((x + lean, y + long * 0.5), (x + lean, y + long))
            .to((x + lean + 4.4 * s, y + long - 1))
            .bend((x + lean + 2.5, y + long * 0.5), (x + 1.4, y + 1))
            .close()
        )
        work.sheet.put("sash", GROUND, end)
    work.sheet.put("sash", GROUND, ring((x, y + 0.8), 2.0 * s, 2.4 * s))
    return True


def _single(work: Work, kind: str, feature: Feature) -> bool:
    outline, s = work.outline, work.s
    if work.build.head:
        if kind in ("bow", "rosette", "applique"):
            draw_bow(work, "trim", (9.0, 3.0), 4.0, 6.0) if kind == "bow" else _rosette(work, (9.0, 3.0), 2.6)
            return True
        return False
    spot = _spot(work, feature.at, kind)
    if spot is None:
        return False
    x, y = spot
    if kind == "bow":
        draw_bow(work, "trim", spot, 4.6 * s, 8.0 * s)
        if feature.count and feature.count > 1 and outline is not None:
            draw_bow(work, "trim", (x, min(y + 13 * s, outline.hem - 8)), 4.0 * s, 6.5 * s)
    elif kind == "rosette":
        _rosette(work, spot, 3.0 * s)
    elif kind == "tassel":
        work.sheet.put("trim", LINE, Path((x, y - 5 * s)).to((x, y)), Path((x - 1 * s, y)).to((x - 1.5 * s, y + 5 * s), (x + 1.5 * s, y + 5 * s), (x + 1 * s, y)).close(),
                       Path((x - 0.4, y + 0.8)).to((x - 0.6, y + 4.6 * s)), Path((x + 0.4, y + 0.8)).to((x + 0.6, y + 4.6 * s)))  # fmt: skip
    elif kind == "anchor-motif":
        r = 2.6 * s
        work.sheet.put("trim", LINE, ring((x, y - r), 0.55 * s), Path((x, y - r + 0.5)).to((x, y + r)), Path((x - r * 0.6, y - r * 0.45)).to((x + r * 0.6, y - r * 0.45)),
                       Path((x - r * 0.9, y + r * 0.35)).bend((x - r * 0.5, y + r), (x, y + r)).bend((x + r * 0.5, y + r), (x + r * 0.9, y + r * 0.35)))  # fmt: skip
    elif kind == "monogram":
        r = 1.9 * s
        work.sheet.put(
            "trim",
            LINE,
            Path((x - r, y + r)).to((x - r, y - r), (x, y + r * 0.4), (x + r, y - r), (x + r, y + r)),
            Path((x - r * 1.3, y + r * 1.6)).bend((x, y + r * 1.1), (x + r * 1.3, y + r * 1.6)),
        )
    else:
        _rosette(work, spot, 2.4 * s)
        work.sheet.put(
            "trim", LINE, Path((x, y + 2.4 * s)).bend((x + 1.4, y + 4.6 * s), (x + 0.4, y + 7 * s))
        )
    return True


def _rosette(work: Work, spot: Point, size: float) -> None:
    x, y = spot
    petals = [
        ring(
            (x + size * 0.6 * math.cos(n * math.tau / 6), y + size * 0.6 * math.sin(n * math.tau / 6)),
            size * 0.34,
        )
        for n in range(6)
    ]
    work.sheet.put("trim", GROUND, petals)
    work.sheet.put("trim", GROUND, ring(spot, size * 0.32))


def _spot(work: Work, at_place: str | None, kind: str) -> Point | None:
    """One place on the garment."""
    outline, s = work.outline, work.s
    if outline is None:
        legs = work.legs
        return (
            None
            if legs is None
            else (legs.outer * 0.6, (legs.fork + legs.hem) / 2 if at_place == "leg" else legs.waist + 9 * s)
        )
    if kind in ("anchor-motif", "monogram") and at_place in (None, "front", "bodice", "pocket"):
        if work.build.skirt:
            return (outline.half(outline.top + 14) * 0.5, outline.top + 14)
        y = max(outline.underarm[1] + 3.5 * s, 0.0)
        return (
            (outline.half(y) * 0.52, y)
            if outline.depth > 12 * s or work.opening is not None or kind == "monogram"
            else (0.0, y)
        )
    if at_place == "waist":
        return (
            outline.half(work.waist) * (0.55 if kind != "bow" else 0.0),
            min(work.waist, outline.hem - 4) + 1,
        )
    if at_place == "hip":
        y = min(max(work.figure.y("hip"), work.waist), outline.hem - 6)
        return (outline.half(y) * 0.62, y)
    if at_place in ("sleeve", "cuff"):
        if work.sleeve_end is None:
            return None
        (ax, ay), (bx, by) = work.sleeve_end.start, work.sleeve_end.end
        return ((ax + bx) / 2 - 0.8, (ay + by) / 2 - 4.5)
    if at_place == "shoulder":
        return (outline.shoulder[0] - 4, outline.shoulder[1] + 4)
    if at_place in ("skirt", "hem"):
        y = work.waist + (outline.hem - work.waist) * (0.4 if at_place == "skirt" else 0.85)
        return (outline.half(y) * 0.45, y)
    if at_place == "collar" and kind in ("anchor-motif", "monogram", "applique"):
        return (outline.neck[0] + 3.4 * s, outline.on_shoulder(outline.neck[0] + 3.4 * s) + 6.0 * s)
    if at_place == "leg" and work.legs is not None:
        return (work.legs.outer * 0.6, work.legs.hem - 5 * s)
    if at_place in ("bodice", "front", "yoke"):
        y = max(outline.depth + 5 * s, outline.underarm[1] - 2)
        return (0.0, min(y, outline.hem - 5))
    if work.build.skirt:
        return (outline.half(outline.top) * 0.6, outline.top + 4)
    return (0.0, min(outline.depth + 1.0, outline.hem - 6))


def _on_crown(work: Work, kind: str) -> None:
    """Round the crown of a hat."""
    band = Path((-8.4, 4.0)).bend((0.0, 6.6), (8.4, 4.0)).to((8.7, 7.2)).bend((0.0, 9.8), (-8.7, 7.2)).close()
    work.sheet.put("trim", TINT, band)
