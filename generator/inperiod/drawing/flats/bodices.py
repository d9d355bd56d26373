"""Yokes and pieces let in, and fullness taken up: tucks, pleats, gathers, where they are recorded."""

from __future__ import annotations

import itertools

from inperiod.drawing.flats.ink import whole
from inperiod.drawing.flats.necks import neckline
from inperiod.drawing.flats.outline import Outline
from inperiod.drawing.flats.record import term_id
from inperiod.drawing.flats.skirts import draw_godets
from inperiod.drawing.flats.work import Work
from inperiod.drawing.hand import FAINT, LINE, TINT, WASH, Path, ring, smooth
from inperiod.records.model import Feature


def draw_yokes(work: Work) -> None:
    """Every yoke and insert that is recorded and has a place on this garment."""
    outline = work.outline
    for feature in work.record.all("yoke"):
        name = term_id(feature)
        if name == "gusset":
            if outline is not None and feature.at is None and work.legs is None:
                (x, y), s = outline.underarm, work.s
                work.sheet.both(
                    "yoke",
                    LINE,
                    Path((x - 0.2, y + 0.2)).to(
                        (x - 3.0 * s, y + 3.4 * s), (outline.half(y + 7 * s), y + 7 * s)
                    ),
                )
                work.record.drew(feature)
            elif work.legs is not None:
                legs = work.legs
                work.sheet.both("yoke", LINE, Path((0.0, legs.fork - 5)).to((3.4 * work.s, legs.fork + 0.6)))
                work.record.drew(feature)
            continue
        if outline is None:
            continue
        if name == "godet":
            if work.has_skirt:
                draw_godets(work, feature.count or 3)
                work.record.drew(feature)
            continue
        if _yoke(work, outline, name, feature):
            work.record.drew(feature)


def _yoke(work: Work, outline: Outline, name: str, feature: Feature) -> bool:
    sheet, s = work.sheet, work.s
    (sx, sy), (ux, uy) = outline.shoulder, outline.underarm
    on_armhole = (min(sx, ux) - 0.75, sy + (uy - sy) * 0.55)
    neck = neckline(outline)
    (nx, ny), d = outline.neck, outline.depth
    if name == "back-yoke":
        if not work.back:
            return False
        seam = Path((0.0, uy - 5 * s)).to((on_armhole[0], uy - 5.6 * s))
        sheet.both("yoke", LINE, seam)
        return True
    if work.back:
        return False
    if work.build.skirt:
        if name != "hip-yoke":
            return False
        y = outline.top + 15 * s
        sheet.put("yoke", LINE, outline.across(y))
        work.seams.append(Path((outline.half(y), y)).bend((outline.half(y) * 0.5, y + 1), (0.0, y + 1)))
        return True
    if name in ("shoulder-yoke", "shirt-yoke"):
        y = sy + (3.6 if name == "shoulder-yoke" else 2.0) * s
        start = Path((nx + (d - ny) * 0.0 + 0.3, max(ny + 2.0 * s, y - 0.6 * s)))
        seam = start.bend(((nx + on_armhole[0]) / 2, y), (min(sx, ux) - 0.55, sy + (uy - sy) * 0.26))
    elif name == "hip-yoke":
        y = min(work.waist + 13 * s, outline.hem - 8)
        seam = Path((outline.half(y), y)).bend((outline.half(y) * 0.5, y + 1.4), (0.0, y + 1.4))
    elif name in ("square-yoke", "lace-yoke"):
        y = max(uy - 5.0 * s, d + 2.5 * s if d < uy else 0.0)
        if y > uy + 3:
            y = uy - 3.0 * s
        seam = Path((on_armhole[0], y - 0.4)).to((0.0 if d < y else nx * 0.2, y))
        if name == "lace-yoke":
            half = (
                neck.reverse()
                .to((sx, sy))
                .bend((min(sx, ux) - 0.8, sy + 4), (on_armhole[0], y - 0.4))
                .to((0.0, y))
            )
            _lace(work, half, y)
    elif name == "round-yoke":
        seam = Path((on_armhole[0], sy + (uy - sy) * 0.4)).curve(
            (on_armhole[0] - 2, d + 6 * s), (nx * 0.7, d + 7 * s), (0.0, d + 7 * s)
        )
    elif name == "pointed-yoke":
        seam = Path((on_armhole[0], uy - 8 * s)).to((0.0, max(uy + 1.0, d + 4 * s)))
    elif name in ("vestee", "plastron", "chemisette"):
        low = (
            work.waist
            if name == "plastron"
            else max(d, 8 * s)
            if name == "chemisette"
            else max(d, min(work.waist, outline.hem) - 2)
        )
        wide = 5.5 * s if name == "plastron" else min(nx, 6.0 * s)
        top = 7.5 * s
        if outline.neckline in ("v", "surplice", "scoop", "square", "u", "sweetheart") and d > top + 3:
            # Filled in within the opening, up to its own straight edge.
            edge = min(d * 0.5, 11 * s) if name == "vestee" else top
            x = _neck_half(outline, edge)
            area = (
                Path((0.0, edge + 0.4))
                .to((x, edge))
                .curve((x * 0.8, edge + (d - edge) * 0.4), (x * 0.4, edge + (d - edge) * 0.8), (0.0, d))
            )
            sheet.put("yoke", WASH, whole(area))
            sheet.both("yoke", LINE, Path((0.0, edge + 0.4)).to((x, edge)))
            if name == "chemisette":
                for share in (0.3, 0.6):
                    sheet.faint(
                        "yoke",
                        Path((x * share, edge)).to(
                            (x * share * 0.7, edge + (d - edge) * (0.8 - share * 0.5))
                        ),
                    )
            return True
        half = (
            Path((0.0, d))
            .bend((wide * 0.6, d), (wide, min(d, ny + 6 * s)))
            .to((wide * 0.7, low))
            .to((0.0, low + 0.6))
        )
        sheet.put("yoke", TINT, whole(half))
        work.seams.append(Path((wide, d)).to((wide * 0.7, low)))
        return True
    elif name == "panel":
        top = work.waist if feature.at == "skirt" and work.has_skirt else max(d, uy - 2)
        low = outline.hem + outline.dip if work.has_skirt else outline.hem
        panel = outline.down(0.3, top, low - 0.3)
        sheet.both("yoke", LINE, panel)
        work.seams.append(panel)
        return True
    else:
        return False
    sheet.both("yoke", LINE, seam)
    work.seams.append(seam)
    return True


def _neck_half(outline: Outline, y: float) -> float:
    """Half the breadth of the opening at a height."""
    points = neckline(outline).points(8)
    for a, b in itertools.pairwise(points):
        if a[1] <= y <= b[1] and b[1] > a[1]:
            return a[0] + (b[0] - a[0]) * (y - a[1]) / (b[1] - a[1])
    return outline.neck[0]


def _lace(work: Work, half: Path, y: float) -> None:
    """Lace: a tone and a scatter of eyelets."""
    assert work.outline is not None
    outline = work.outline
    work.sheet.put("yoke", WASH, whole(half))
    top = outline.depth + 1.8 if outline.depth < y - 3 else y - 4
    for row, level in enumerate((top, (top + y) / 2, y - 1.4)):
        for column in range(1, 5):
            x = (column - 0.5 * (row % 2)) * 3.0 * work.s
            if x < outline.shoulder[0] - 2.5:
                work.sheet.faint("yoke", ring((x, level), 0.5))


def draw_fullness(work: Work) -> None:
    """Tucks, pleats and gathers where the plate has them; where it does not say, at their usual place."""
    for feature in work.record.all("fullness"):
        if _fullness(work, term_id(feature), feature):
            work.record.drew(feature)


def _region(work: Work, at: str | None, kind: str) -> tuple[Outline, float, float] | None:
    """Where on the body: the outline, and the heights between which the fullness lies."""
    outline = work.outline
    if outline is None:
        return None
    s, d = work.s, outline.depth
    waist = min(work.waist, outline.hem)
    bodice = (outline, max(min(d, 13 * s) + 1.5, outline.shoulder[1] + 4), min(waist, outline.hem) - 0.5)
    if work.build.skirt:
        bodice = (outline, outline.top + 3.2 * s, outline.hem - 1)
    if at in ("hem",):
        return (outline, outline.hem - 16 * work.figure.scale, outline.hem - 2)
    if at in ("skirt", "hip", "side"):
        if not work.has_skirt:
            return (outline, outline.hem - 14 * s, outline.hem - 0.6)
        top = outline.top + 3.2 * s if work.build.skirt else waist + 0.4
        return (
            outline,
            max(top, work.figure.y("high-hip") if at == "hip" and top < work.figure.y("high-hip") else top),
            outline.hem + outline.dip * 0.6,
        )
    if at == "waist":
        return (outline, waist + 0.6, min(waist + 9 * s, outline.hem - 1))
    if (
        at is None
        and kind in ("knife-pleats", "box-pleats", "inverted-pleat", "accordion-pleats")
        and work.has_skirt
    ):
        return _region(work, "skirt", kind)
    if at is None and kind in ("growth-tucks", "ruffle-tier") and work.has_skirt:
        return _region(work, "hem", kind)
    if at is None and kind == "gathers" and work.has_skirt:
        return _region(work, "waist", kind)
    return bodice


def _fullness(work: Work, kind: str, feature: Feature) -> bool:
    at = feature.at
    if at == "leg" and work.legs is not None:
        return _on_leg(work, kind)
    if at == "sleeve":
        return _on_sleeve(work, kind)
    if (at == "back") != work.back:
        return False
    place = _region(work, at, kind)
    if place is None:
        return _on_leg(work, kind) if work.legs is not None else False
    outline, top, low = place
    if low - top < 2:
        return False
    sheet, s = work.sheet, work.s
    if kind in ("pin-tucks", "wide-tucks", "blind-tucks", "cross-tucks", "growth-tucks", "darts"):
        return _tucks(work, outline, kind, feature, top, low)
    count = feature.count or 0
    if kind in ("knife-pleats", "accordion-pleats"):
        if at == "side":
            shares = [0.62, 0.7, 0.78, 0.86]
        else:
            half = max(2, min(10, (count or (10 if kind == "knife-pleats" else 18)) // 2))
            shares = [(place + 0.5) / half * 0.94 for place in range(half)]
        for share in shares:
            sheet.both("pleats", LINE, outline.down(share, top, low - outline.dip * share * share))
    elif kind in ("box-pleats", "inverted-pleat", "cartridge-pleats"):
        number = count or (1 if kind == "inverted-pleat" else 2)
        centres = (
            [0.0] if number == 1 else [0.3] if number == 2 else [0.0, 0.5] if number == 3 else [0.22, 0.62]
        )
        for centre in centres:
            wide = 0.09 if kind != "inverted-pleat" else 0.035
            for share in (centre - wide, centre + wide):
                if share > 0:
                    sheet.both(
                        "pleats", LINE, outline.down(share, top, low, 0.03 if share > centre else -0.02)
                    )
            if kind == "inverted-pleat":
                x = outline.half(top) * centre
                if centre:
                    sheet.both("pleats", LINE, outline.down(centre, top, low))
                else:
                    sheet.put("pleats", LINE, Path((x, top)).to((x, low)))
    elif kind in ("gathers", "gauging", "shirring", "ruffle-tier"):
        rows = 4 if kind in ("shirring", "gauging") else feature.count or 3 if kind == "ruffle-tier" else 0
        if kind == "ruffle-tier":
            for row in range(rows):
                sheet.put("tiers", LINE, outline.across(low - (low - top) * (row + 1) / (rows + 0.4)))
        for row in range(rows if kind != "ruffle-tier" else 0):
            sheet.put("gathers", FAINT, _row(outline, top + 0.6 + row * 1.3 * s))
        long = min(7.5 * s, low - top - 0.5)
        for place_on in range(7):
            share = 0.07 + 0.13 * place_on
            if top < outline.underarm[1] and outline.half(top) * share > outline.shoulder[0] - 1.5:
                continue  # Beside the armhole there is no cloth to gather.
            sheet.faint("gathers", outline.down(share, top + 0.5, top + long * (1.0, 0.6)[place_on % 2]))
    elif kind in ("smocking",):
        deep = min(9 * s, low - top)
        rows = 4
        for row in range(rows):
            y = top + 0.6 + deep * row / rows
            wide = outline.half(y) * 0.62
            sheet.put("smocking", FAINT, _zigzag(-wide, wide, y, deep / rows, 12, row % 2 == 1))
    else:
        return False
    return True


def _row(outline: Outline, y: float) -> Path:
    """A row of gathering stitches; between the armholes where it lies above their lower end."""
    half = outline.half(y) if y > outline.underarm[1] else min(outline.half(y), outline.shoulder[0] - 2.0)
    return Path((-half, y)).bend((0.0, y + 0.8), (half, y))


def _zigzag(left: float, right: float, y: float, high: float, count: int, flip: bool) -> Path:
    step = (right - left) / count
    return Path((left, y + (high if flip else 0))).to(
        *((left + step * (n + 1), y + (high if (n % 2 == 0) != flip else 0)) for n in range(count))
    )


def _tucks(work: Work, outline: Outline, kind: str, feature: Feature, top: float, low: float) -> bool:
    sheet, s = work.sheet, work.s
    if kind == "darts":
        for share in (0.5,):
            x = outline.half(work.waist) * share
            sheet.both(
                "tucks", LINE, Path((x - 0.7, work.waist)).to((x, work.waist - 11 * s), (x + 0.7, work.waist))
            )
        return True
    if kind in ("growth-tucks",) or feature.at == "hem":
        for row in range(feature.count or (2 if kind == "growth-tucks" else 3)):
            y = outline.hem - (5 + 3.2 * row) * work.figure.scale
            sheet.put("tucks", LINE, outline.across(y, outline.dip))
        return True
    if kind in ("wide-tucks", "blind-tucks") and feature.at in ("skirt", "hip"):
        for row in range(feature.count or 3):
            sheet.put("tucks", LINE, outline.across(low - (6 + 4.0 * row) * work.figure.scale))
        return True
    gap = {"pin-tucks": 1.1, "cross-tucks": 2.4, "wide-tucks": 3.0, "blind-tucks": 2.4}[kind] * s
    half = max(2, min(11 if kind == "pin-tucks" else 4, round((feature.count or 10) / 2)))
    if feature.at == "shoulder":
        first = outline.neck[0] + 1.2
    elif work.opening is not None or outline.depth > 16 * s:
        first = 1.6 * s
    else:
        first = gap / 2
    end = min(low, top + (15 * s if kind == "pin-tucks" and feature.at in ("yoke", "neckline") else 60))
    lines = []
    for place in range(half):
        x = first + gap * place
        if x > outline.shoulder[0] - 2:
            break
        begin = max(
            top if x < outline.neck[0] * 0.5 else _opening_at(outline, x) + 1.0, outline.on_shoulder(x) + 0.4
        )
        stop = end if x < outline.half(end) - 1 else (begin + end) / 2
        if stop - begin > 3:
            lines.append(Path((x, begin)).bend((x, stop - 4), (min(x, outline.half(stop) * 0.92), stop)))
    sheet.both("tucks", LINE if kind != "pin-tucks" else FAINT, *lines)
    if kind == "cross-tucks":
        for row in range(4):
            y = top + 3 + row * 2.6 * s
            x = first + gap * half
            sheet.put("tucks", FAINT, Path((-x, y)).to((x, y)))
    return bool(lines)


def _opening_at(outline: Outline, x: float) -> float:
    """The height of the neckline at a distance from the middle; the shoulder beyond its end."""
    best = outline.on_shoulder(x)
    for px, py in neckline(outline).points(6):
        if abs(px - x) < 1.3:
            best = max(best, py)
    return best


def _on_leg(work: Work, kind: str) -> bool:
    legs = work.legs
    if legs is None:
        return False
    middle = (legs.inner + legs.outer) / 2
    if kind in ("knife-pleats", "box-pleats", "inverted-pleat"):
        top = legs.waist + 3
        x = legs.outer * 0.42
        work.sheet.both(
            "pleats", LINE, smooth((x, top), (middle, (legs.fork + legs.hem) / 2), (middle, legs.hem))
        )
        work.sheet.faint("pleats", Path((x + 2.2, top)).to((x + 2.6, top + 9)))
        return True
    if kind in ("gathers", "shirring", "gauging", "smocking"):
        for share in (0.2, 0.4, 0.6, 0.8):
            x = legs.inner + (legs.outer - legs.inner) * share
            work.sheet.faint("gathers", Path((x, legs.hem)).to((x * 1.01, legs.hem - 4)))
        return True
    if kind in ("wide-tucks", "pin-tucks", "growth-tucks"):
        work.sheet.both("tucks", LINE, legs.across(3.0), legs.across(4.6))
        return True
    return False


def _on_sleeve(work: Work, kind: str) -> bool:
    end = work.sleeve_end
    if end is None:
        return False
    (ax, ay), (bx, by) = end.start, end.end
    for share in (0.2, 0.4, 0.6, 0.8):
        x, y = ax + (bx - ax) * share, ay + (by - ay) * share
        work.sheet.faint("gathers", Path((x - 0.3, y - 0.6)).to((x - 1.3, y - 5.0)))
    return True
