"""Trimmings, at their recorded places and widths; where the plate names no place, at their usual one."""

from __future__ import annotations

import math

from inperiod.drawing.flats.collars import draw_bow
from inperiod.drawing.flats.lower import width_in_cm
from inperiod.drawing.flats.record import term_id
from inperiod.drawing.flats.trim_places import lines_of, spot_of
from inperiod.drawing.flats.work import Work
from inperiod.drawing.hand import (
    FAINT,
    GROUND,
    LINE,
    TINT,
    Path,
    Point,
    at,
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
WIDTHS = {
    "insertion": 2.0,
    "contrast-band": 4.0,
    "ribbon": 1.8,
    "beading-slotted": 1.8,
    "fur-band": 5.0,
    "lace-edging": 2.2,
    "frill": 3.4,
    "ruching": 2.6,
    "tape": 1.0,
    "stripes-knitted": 1.8,
    "embroidery-white": 3.0,
    "embroidery-colour": 3.0,
    "fringe-trim": 4.5,
}


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
            outer = lines_of(work, place or "neckline", inset)
            inner = lines_of(work, place or "neckline", inset + width)
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
    spot = spot_of(work, feature.at, kind)
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
        work.sheet.put(
            "trim",
            LINE,
            Path((x, y - 5 * s)).to((x, y)),
            Path((x - 1 * s, y))
            .to((x - 1.5 * s, y + 5 * s), (x + 1.5 * s, y + 5 * s), (x + 1 * s, y))
            .close(),
            Path((x - 0.4, y + 0.8)).to((x - 0.6, y + 4.6 * s)),
            Path((x + 0.4, y + 0.8)).to((x + 0.6, y + 4.6 * s)),
        )
    elif kind == "anchor-motif":
        r = 2.6 * s
        work.sheet.put(
            "trim",
            LINE,
            ring((x, y - r), 0.55 * s),
            Path((x, y - r + 0.5)).to((x, y + r)),
            Path((x - r * 0.6, y - r * 0.45)).to((x + r * 0.6, y - r * 0.45)),
            Path((x - r * 0.9, y + r * 0.35))
            .bend((x - r * 0.5, y + r), (x, y + r))
            .bend((x + r * 0.5, y + r), (x + r * 0.9, y + r * 0.35)),
        )
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


def _on_crown(work: Work, kind: str) -> None:
    """Round the crown of a hat."""
    band = Path((-8.4, 4.0)).bend((0.0, 6.6), (8.4, 4.0)).to((8.7, 7.2)).bend((0.0, 9.8), (-8.7, 7.2)).close()
    work.sheet.put("trim", TINT, band)
