"""Legs, and the lower edges of skirts and legs that are lines upon them."""

from __future__ import annotations

from inperiod.drawing.flats.necks import neckline
from inperiod.drawing.flats.record import term_id
from inperiod.drawing.flats.work import Work
from inperiod.drawing.hand import FAINT, LINE, Path, evenly, ring, smooth, waved
from inperiod.records.model import Feature


def draw_legs(work: Work) -> None:
    """Both legs with their fork and, where they stand alone, a waistband."""
    legs = work.legs
    if legs is None:
        return
    sheet, s = work.sheet, work.s
    sheet.cloth("leg", legs.path, legs.path.mirror(0))
    outer = Path(legs.path.start, legs.path.steps[:-1])
    sheet.both("leg", LINE, outer)
    if work.outline is None or work.build.body == "brassiere":
        half = legs.path.start[0]
        sheet.put(
            "waistband",
            LINE,
            Path((-half, legs.waist)).bend((0.0, legs.waist + 1.4), (half, legs.waist)),
            Path((-half - 0.4, legs.waist + 3.2)).bend(
                (0.0, legs.waist + 4.6), (half + 0.4, legs.waist + 3.2)
            ),
        )
    if not (work.build.legs == "trunk" and work.outline is not None):
        sheet.put("leg", FAINT, Path((0.0, legs.waist + 4)).to((0.0, legs.fork)))
    if work.build.legs == "floor" and work.outline is None:
        middle = (legs.inner + legs.outer) / 2
        hip = (legs.path.start[0]) * 0.55
        sheet.faint(
            "crease",
            smooth(
                (hip, legs.waist + 12 * s), (middle * 0.96, (legs.fork + legs.hem) / 2), (middle, legs.hem)
            ),
        )


def draw_lower_edges(work: Work) -> None:
    """What is recorded of lower edges beyond the form of the hem."""
    for feature in work.record.all("lower-edge"):
        if _edge(work, term_id(feature), feature):
            work.record.drew(feature)


def _edge(work: Work, kind: str, feature: Feature) -> bool:
    sheet, s, legs, outline = work.sheet, work.s, work.legs, work.outline
    if kind == "trunk-leg" and legs is not None:
        sheet.both("edge", FAINT, legs.across(1.0))
        return True
    if kind == "short-skirt-leg" and legs is not None:
        y = legs.fork + (legs.hem - legs.fork) * 0.42
        half = max(legs.outer, outline.half(outline.hem) if outline else 0) + 0.5
        top = work.figure.y("hip") - 2
        top_half = outline.half(top) if outline is not None and top < outline.hem else legs.path.start[0]
        flap = (
            Path((top_half, top))
            .bend((half, (top + y) / 2), (half, y))
            .bend((0.0, y + 2.6), (-half, y))
            .bend((-half, (top + y) / 2), (-top_half, top))
        )
        flap = flap.bend((0.0, top + 1.6), (top_half, top)).close()
        work.flap = Path((half - 0.2, y)).bend((0.0, y + 2.6), (0.2 - half, y))
        sheet.cloth("edge", flap)
        sheet.put("edge", LINE, flap)
        return True
    if kind == "cuffed" and legs is not None:
        sheet.both("edge", LINE, legs.across(4.2 * s))
        return True
    if feature.at == "sleeve" and work.sleeve_end is not None:
        return _small(work, kind, [work.sleeve_end.reverse()], both=True)
    if feature.at in ("collar", "neckline"):
        if feature.at == "collar" and work.collar_edge is not None:
            return _small(work, kind, [work.collar_edge], both=True)
        if outline is not None and not work.build.skirt:
            return _small(work, kind, [neckline(outline, 0.9).reverse()], both=True)
        return False
    if outline is None or work.back:
        if legs is not None and kind in ("straight-hem", "scalloped", "picot-edge", "faced-hem"):
            return _small(work, kind, [legs.across(1.2)], both=True)
        return False
    hem = outline.hem_line(1.4)
    if kind in ("scalloped", "vandyked", "handkerchief") and work.has_skirt:
        return True
    if kind in ("faced-hem", "deep-hem"):
        deep = _width(feature.width) or (20 if kind == "faced-hem" else 12)
        sheet.put(
            "edge",
            FAINT,
            outline.hem_line(min(deep, (outline.hem - work.waist) * 0.4) if work.has_skirt else 4.0),
        )
        return True
    if kind == "flounce" and work.has_skirt:
        for row in range(feature.count or 1):
            y = outline.hem - (outline.hem - work.waist) * (0.2 + 0.19 * row)
            sheet.put("edge", LINE, outline.across(y))
            for step in range(7):
                share = 0.07 + 0.135 * step
                sheet.faint(
                    "gathers",
                    outline.down(share, y + 1.4, y + (outline.hem - work.waist) * (0.11, 0.07)[step % 2]),
                )
        return True
    if kind == "straight-hem":
        sheet.put("edge", FAINT, outline.hem_line(3.0))
        return True
    if kind == "fringe":
        half = outline.halves[-1]
        for step in range(12):
            x = half * (step + 0.5) / 12
            y = outline.hem + outline.dip * (1 - (x / half) * (x / half))
            sheet.both("edge", LINE, Path((x, y - 5.5)).to((x, y - 0.2)))
        sheet.put("edge", LINE, outline.hem_line(5.5))
        return True
    return _small(work, kind, [hem], both=False)


def _small(work: Work, kind: str, lines: list[Path], both: bool) -> bool:
    """Edges no more than a stitch deep, drawn along the edge they finish."""
    put = work.sheet.both if both else work.sheet.put
    for line in lines:
        if kind == "picot-edge":
            put("edge", LINE, [ring(spot, 0.28) for spot, _ in evenly(line, 9 if both else 28)])
        elif kind == "scalloped":
            put("edge", LINE, waved(line, -1.1 * work.s, 6 if both else 12, "scallops"))
        elif kind in ("pinked", "vandyked"):
            put("edge", LINE, waved(line, 0.7, 9 if both else 26, "points"))
        elif kind in ("rolled-hem", "faced-hem", "straight-hem"):
            put("edge", FAINT, line)
        else:
            return False
    return True


def _width(text: str | None) -> float | None:
    """A recorded width in centimetres; None where it cannot be read."""
    return width_in_cm(text)


def width_in_cm(text: str | None) -> float | None:
    """``1 in``, ``¾ in``, ``1½ in``, ``2.5 cm``, ``12 mm`` in centimetres; None where it cannot be read."""
    if not text:
        return None
    number, _, unit = text.strip().partition(" ")
    factor = {"in": 2.54, "inch": 2.54, "inches": 2.54, "cm": 1.0, "mm": 0.1}.get(unit.strip().rstrip("."))
    if factor is None:
        return None
    total = 0.0
    for sign, share in (
        ("¼", 0.25),
        ("½", 0.5),
        ("¾", 0.75),
        ("⅛", 0.125),
        ("⅜", 0.375),
        ("⅝", 0.625),
        ("⅞", 0.875),
    ):
        if number.endswith(sign):
            total, number = share, number[:-1]
            break
    whole = _decimal(number) if number else 0.0
    if whole is None:
        return None
    total += whole
    return total * factor if 0 < total * factor < 200 else None


def _decimal(text: str) -> float | None:
    """``12`` and ``2.5`` as a number; None for anything else."""
    before, _, after = text.partition(".")
    digits = before + after
    return float(text) if digits and all(sign in "0123456789" for sign in digits) else None
