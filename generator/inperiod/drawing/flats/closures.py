"""Openings, and what fastens them: buttons sit on the opening's line."""

from __future__ import annotations

import itertools

from inperiod.drawing.flats.collars import draw_bow
from inperiod.drawing.flats.necks import back_top
from inperiod.drawing.flats.outline import Outline
from inperiod.drawing.flats.record import term_id
from inperiod.drawing.flats.work import Work
from inperiod.drawing.hand import FAINT, GROUND, LINE, Path, Point, at, box, length, ring, smooth
from inperiod.records.model import Feature

BUTTONS = ("buttons", "pearl-buttons", "shank-buttons", "celluloid-buttons", "phenolic-buttons")


def draw_closure(work: Work) -> None:
    """Where the garment opens. A garment that parts down the front does so where nothing else is recorded."""
    outline, record = work.outline, work.record
    found = [feature for feature in record.all("closure")]
    parted = work.build.open and not any(term_id(f) in ("side-front", "wrap-over") for f in found)
    if parted and not work.back and outline is not None:
        _front(work, outline, outline.hem + outline.dip)
    for feature in found:
        if _open(work, outline, term_id(feature), feature):
            record.drew(feature)


def _open(work: Work, outline: Outline | None, kind: str, feature: Feature) -> bool:
    sheet, s = work.sheet, work.s
    if kind == "slip-on":
        return True  # Drawn by there being no opening.
    if kind == "crotch" and work.legs is not None:
        y = work.legs.fork
        sheet.put("opening", LINE, Path((-3.0 * s, y - 2.2)).bend((0.0, y - 1.2), (3.0 * s, y - 2.2)))
        if work.opening is None:
            work.opening = Path((-2.4 * s, y - 2.0)).to((2.4 * s, y - 2.0))
        return True
    if outline is None:
        return _on_legs(work, kind)
    if kind == "back":
        if not work.back:
            return False
        low = min(outline.hem - 1, work.waist + (16 * s if work.has_skirt else 0))
        top = outline.top + 0.4 if work.build.skirt else back_top(outline) + 1.5
        work.opening = Path((0.0, top)).to((0.0, low))
        sheet.put("opening", LINE, work.opening)
        return True
    if kind == "back-yoke":
        if not work.back:
            return False
        top = back_top(outline) + 1.5
        work.opening = Path((0.0, top)).to((0.0, max(outline.underarm[1] - 4, top + 6 * s)))
        sheet.put("opening", LINE, work.opening)
        return True
    if work.back:
        return False
    if kind in ("front", "front-placket"):
        if work.build.open:
            return True
        top = outline.top + 0.4 if work.build.skirt else outline.depth
        low = outline.hem + outline.dip
        if kind == "front-placket" or work.record.has("closure/front-placket"):
            low = min(low, top + (18 if kind == "front-placket" else 20) * s)
        elif work.has_skirt and not _to_hem(work):
            low = work.waist + (6.0 if work.chosen.waist.id == "pouched" else 0.6) * s
            if low < top + 8:
                low = min(outline.hem, top + 22 * s)
        if kind == "front-placket":
            sheet.put(
                "opening", LINE, Path((-1.5 * s, top)).to((-1.5 * s, low), (1.5 * s, low), (1.5 * s, top))
            )
            work.opening = Path((0.0, top + 1)).to((0.0, low - 1))
            return True
        _front(work, outline, low)
        return True
    if kind == "side-front":
        x = min(7.5 * s, outline.half(work.waist) * 0.6)
        top = outline.top if work.build.skirt else outline.on_shoulder(outline.neck[0]) + 3
        start = (outline.neck[0] * 0.9, top) if not work.build.skirt else (x, top)
        if work.chosen.collar.id in ("notched", "shawl", "revers", "sailor") and not work.build.skirt:
            start = (2.2 * s, outline.depth + 2.0)  # Below the lapels, and slanting over.
        low = outline.hem if _to_hem(work) or work.build.skirt else min(work.waist, outline.hem)
        if work.build.open:
            low = outline.hem - 0.4
        x2 = min(x * 1.15, outline.half(low) * 0.7)
        line = (
            smooth(start, (x, max(outline.underarm[1] + 3, start[1] + 7 * s)), (x2, low))
            if not work.build.skirt
            else smooth((x, top), (x2, low))
        )
        work.opening = line
        sheet.put("opening", LINE, line)
        return True
    if kind == "wrap-over":
        if outline.neckline == "surplice":
            work.opening = Path((-outline.half(work.waist) * 0.5, work.waist - 1)).to(
                (-outline.half(work.waist) * 0.56, work.waist)
            )
            if work.has_skirt:
                _wrapped(work, outline, work.waist)
            return True
        begin = (0.0, outline.depth)
        waist = (-min(outline.half(work.waist) * 0.55, 8 * s), min(work.waist, outline.hem - 2))
        if work.build.skirt:
            _wrapped(work, outline, outline.top)
            return True
        line = Path(begin).curve((-1.5 * s, begin[1] + 3), (waist[0] * 0.8, waist[1] - 6), waist)
        sheet.put("opening", LINE, line)
        work.opening = line
        if work.has_skirt or work.build.body == "crotch":
            _wrapped(work, outline, waist[1], waist[0])
        return True
    if kind == "shoulder":
        (nx, ny), (sx, sy) = outline.neck, outline.shoulder
        strap = sx - nx < 5
        line = Path((nx + 0.4, ny + 1.2)).to((sx - 0.6, sy + 1.2 if not strap else ny + 1.4))
        sheet.put("opening", LINE, line)
        work.opening = line
        return True
    if kind == "side":
        top = outline.top + 0.6 if work.build.skirt else outline.underarm[1] + 4 * s
        low = min(top + 17 * s, outline.hem - 1)
        if not work.build.skirt and work.waist < outline.hem:
            low = min(outline.hem - 1, max(low, work.waist + 5 * s))
        line = smooth(*((outline.half(y) - 1.1, y) for y in (top, (top + low) / 2, low)))
        sheet.put(
            "opening",
            LINE,
            line,
            Path((outline.half(top) - 0.1, top)).to((outline.half(top) - 1.1, top)),
            Path((outline.half(low) - 0.1, low)).to((outline.half(low) - 1.1, low)),
        )
        work.opening = line
        return True
    return False


def _on_legs(work: Work, kind: str) -> bool:
    legs = work.legs
    if legs is None:
        return False
    if kind in ("front", "front-placket", "wrap-over"):
        low = legs.fork - 2
        work.sheet.put("opening", LINE, Path((0.0, legs.waist + 3)).to((0.0, low)))
        work.sheet.put(
            "opening",
            FAINT,
            Path((3.4 * work.s, legs.waist + 3.4))
            .to((3.4 * work.s, low - 6))
            .bend((3.2 * work.s, low - 2), (0.2, low)),
        )
        work.opening = Path((0.0, legs.waist + 3)).to((0.0, low - 2))
        return not work.back
    if kind == "side":
        x, y = legs.path.start
        line = Path((x - 0.6, y + 1)).to((x + 0.6, y + 10))
        work.sheet.put("opening", LINE, line)
        work.opening = line
        return True
    return False


def _front(work: Work, outline: Outline, low: float) -> None:
    """An opening down the middle, with the overlap of its edge."""
    top = outline.top + 0.4 if work.build.skirt else outline.depth
    work.opening = Path((0.0, top)).to((0.0, low - 0.4))
    over = 1.5 * work.s
    work.fold = over
    start = top + (0.6 if outline.neckline not in ("v", "surplice") else -1.6)
    edge = Path((over, max(start, top - 2.0))).to((over, low))
    if work.build.open and low > outline.hem - 2:
        round_off = 3.0 * work.s
        edge = (
            Path((over, top - 1))
            .to((over, low - round_off))
            .bend((over, low - 0.2), (over - round_off * 0.5, low))
        )
    work.sheet.put("opening", LINE, edge)


def _wrapped(work: Work, outline: Outline, y: float, x: float | None = None) -> None:
    left = -outline.half(y) * 0.55 if x is None else x
    work.sheet.put(
        "opening",
        LINE,
        smooth(
            (left, y), (left * 1.05, (y + outline.hem) / 2), (left * 0.95, outline.hem + outline.dip * 0.8)
        ),
    )


def _to_hem(work: Work) -> bool:
    """Whether the buttons say that the opening runs to the hem."""
    counts = [feature.count or 0 for feature in work.record.all("fastening")]
    return max(counts, default=0) >= 10 and work.chosen.length.id not in ("ground", "train")


def draw_fastenings(work: Work) -> None:
    """What fastens, on the opening it belongs to; a belt or band at the waist or the hip."""
    if work.back and work.opening is None:
        return
    for feature in work.record.all("fastening"):
        if _fasten(work, term_id(feature), feature):
            work.record.drew(feature)


def _level(work: Work, at_place: str | None) -> float:
    if at_place == "hip":
        return min(work.figure.y("hip"), (work.outline.hem - 4) if work.outline else 999)
    if work.outline is not None and work.build.skirt:
        return work.outline.top + 1.6
    if work.outline is None and work.legs is not None:
        return work.legs.waist + 1.5
    return work.waist


def _fasten(work: Work, kind: str, feature: Feature) -> bool:
    sheet, s, outline = work.sheet, work.s, work.outline
    opening = work.opening
    if kind in ("buckle", "belt-tie") and not work.back:
        return _belt(work, kind, feature)
    if kind == "elastic" and not work.back:
        return _elastic(work, feature)
    if kind == "drawstring" and not work.back:
        return _drawstring(work, feature)
    if (
        kind == "ribbon-tie"
        and feature.at in (None, "neckline", "waist", "front")
        and not work.back
        and opening is None
    ) or (kind == "tape-ties" and opening is None):
        y = outline.depth + 0.5 if outline is not None and feature.at != "waist" else _level(work, "waist")
        draw_bow(work, "tie", (0.0, y), 3.6 * s, 6.5 * s)
        return True
    if opening is None or ((feature.at == "back") and not work.back):
        return False
    whole = length(opening)
    if kind in BUTTONS or kind in ("loops-and-buttons", "toggle", "frogs"):
        count = feature.count or max(
            2 if whole > 6 else 1,
            min(9, round(whole / ((7.5 if whole > 30 else 4.5) * s)) + (1 if whole > 30 else 0)),
        )
        spots = _spread(opening, min(count, 40), whole)
        size = (
            (0.62 if count > 14 else 0.95 if whole > 12 else 0.75)
            * s
            * (1.25 if kind == "shank-buttons" else 1)
        )
        for x, y in spots:
            if kind in ("frogs", "toggle"):
                loop = (
                    Path((x, y))
                    .curve((x + 2, y - 2), (x + 5.4 * s, y - 1.6), (x + 5.4 * s, y))
                    .curve((x + 5.4 * s, y + 1.6), (x + 2, y + 2), (x, y))
                )
                sheet.put("fastening", LINE, loop, loop.mirror(x))
            if kind == "loops-and-buttons":
                sheet.put("fastening", LINE, Path((x, y)).bend((x - 2.4 * s, y - 1.4), (x - 2.0 * s, y)))
        sheet.put("button", GROUND, [ring(spot, size) for spot in spots])
        if size > 0.8 and kind in ("pearl-buttons", "buttons"):
            sheet.put("button", FAINT, [Path((x - 0.15, y)).to((x + 0.15, y)) for x, y in spots])
        return True
    if kind in ("hooks-and-eyes", "hooks-and-bars", "press-studs", "safety-pin", "hook-and-loop"):
        count = feature.count or max(2, min(9, round(whole / (6 * s))))
        for x, y in _spread(opening, count, whole):
            if kind == "press-studs":
                sheet.put("stud", LINE, ring((x + 0.9, y), 0.32 * s))
            else:
                sheet.put(
                    "hook",
                    LINE,
                    Path((x - 0.1, y)).to((x + 1.1, y)).bend((x + 1.6, y + 0.1), (x + 1.2, y + 0.55)),
                )
        return True
    if kind in ("lacing", "eyelets-metal", "busk-front"):
        count = max(4, min(10, round(whole / (3.2 * s))))
        spots = _spread(opening, count, whole)
        for x, y in spots:
            sheet.put("lacing", LINE, ring((x - 1.4, y), 0.3), ring((x + 1.4, y), 0.3))
        if kind == "lacing":
            for (x, y), (x2, y2) in itertools.pairwise(spots):
                sheet.put(
                    "lacing",
                    LINE,
                    Path((x - 1.4, y)).to((x2 + 1.4, y2)),
                    Path((x + 1.4, y)).to((x2 - 1.4, y2)),
                )
        return True
    if kind == "slide-fastener":
        count = max(6, round(whole / 0.9))
        teeth = [at(opening, whole * (n + 0.5) / count) for n in range(count)]
        sheet.put(
            "slide",
            LINE,
            [
                Path((x - 0.7 * dy, y + 0.7 * dx)).to((x + 0.7 * dy, y - 0.7 * dx))
                for (x, y), (dx, dy) in teeth
            ],
        )
        (x, y), _ = at(opening, 0.0)
        sheet.put("slide", GROUND, box(x - 0.7, y + 0.5, 1.4, 2.4))
        return True
    if kind in ("ribbon-tie", "tape-ties"):
        count = feature.count or (1 if whole < 12 else 2)
        for x, y in _spread(opening, count, whole)[:4]:
            draw_bow(work, "tie", (x, y), 2.8 * s, 4.8 * s)
        return True
    return False


def _spread(opening: Path, count: int, whole: float) -> list[Point]:
    """Places on the opening at equal distances, the first a little below its top."""
    if count == 1:
        return [at(opening, min(1.6, whole / 2))[0]]
    first, last = min(2.0, whole * 0.1), whole - min(3.5, whole * 0.1)
    return [at(opening, first + (last - first) * n / (count - 1))[0] for n in range(count)]


def _belt(work: Work, kind: str, feature: Feature) -> bool:
    y, s = _level(work, feature.at), work.s
    high = 3.4 * s
    half, half_low = _half(work, y - high / 2), _half(work, y + high / 2)
    if half is None or half_low is None:
        return False
    bend = 1.4
    band = (
        Path((-half, y - high / 2))
        .bend((0, y - high / 2 + bend), (half, y - high / 2))
        .to((half_low, y + high / 2))
    )
    band = band.bend((0, y + high / 2 + bend), (-half_low, y + high / 2)).close()
    work.sheet.put("belt", GROUND, band)
    y += bend / 2
    if kind == "buckle":
        work.sheet.put("buckle", GROUND, box(-2.2 * s, y - 2.3 * s, 4.4 * s, 4.6 * s))
        work.sheet.put(
            "buckle", LINE, box(-1.2 * s, y - 1.3 * s, 2.4 * s, 2.6 * s), Path((0.0, y)).to((2.0 * s, y))
        )
    else:
        x = half * 0.35
        for lean in (0.1, 0.5):
            end = (
                Path((x, y))
                .bend((x + lean * 4, y + 7), (x + lean * 5 + 0.5, y + 15 * s))
                .to((x + lean * 5 + 2.6 * s, y + 14.6 * s))
                .bend((x + lean * 4 + 2, y + 7), (x + 1.2, y))
                .close()
            )
            work.sheet.put("belt", GROUND, end)
        work.sheet.put("belt", GROUND, box(x - 1.0 * s, y - 1.9 * s, 3.0 * s, 3.8 * s))
    return True


def _half(work: Work, y: float) -> float | None:
    if work.outline is not None and y < work.outline.hem:
        return work.outline.half(y)
    if work.legs is not None:
        return max(x for x, _ in (work.legs.path.start, (work.legs.path.start[0], 0)))
    return None


def _elastic(work: Work, feature: Feature) -> bool:
    legs, outline = work.legs, work.outline
    if feature.at == "leg" and legs is not None:
        for step in range(8):
            x = legs.inner + (legs.outer - legs.inner) * (step + 0.7) / 8.6
            work.sheet.faint("elastic", Path((x, legs.hem - 0.2)).to((x, legs.hem - 3.2)))
        work.sheet.both("elastic", LINE, legs.across(1.6))
        return True
    if feature.at == "sleeve" and work.sleeve_end is not None:
        (ax, ay), (bx, by) = work.sleeve_end.start, work.sleeve_end.end
        for share in (0.2, 0.4, 0.6, 0.8):
            x, y = ax + (bx - ax) * share, ay + (by - ay) * share
            work.sheet.faint("elastic", Path((x, y - 0.3)).to((x - 0.8, y - 3)))
        return True
    y = _level(work, feature.at)
    half = _half(work, y)
    if half is None:
        return False
    for step in range(7):
        x = half * (step + 0.5) / 7.4
        work.sheet.faint(
            "elastic", Path((x, y + 0.5)).to((x * 1.02, y + 4.0)), Path((x, y - 0.4)).to((x, y - 1.6))
        )
    return outline is not None or legs is not None


def _drawstring(work: Work, feature: Feature) -> bool:
    if feature.at in ("neckline",) and work.outline is not None:
        y, half = work.outline.depth, 3.0
    else:
        y = _level(work, feature.at)
        found = _half(work, y)
        if found is None:
            return False
        half = found
    for step in range(6):
        x = half * (step + 0.5) / 6.4
        work.sheet.faint("drawstring", Path((x, y + 0.6)).to((x * 1.02, y + 3.4)))
    draw_bow(work, "drawstring", (0.0, y + 0.6), 3.0 * work.s, 7.0 * work.s)
    return True
