"""Where trimmings go: the lines along the edges and seams of a garment, and single places on it."""

from __future__ import annotations

from inperiod.drawing.flats.necks import back_neck, neckline, slant
from inperiod.drawing.flats.skirts import hem_of_points
from inperiod.drawing.flats.work import Work
from inperiod.drawing.hand import Path, Point, apart, beside, path

Line = tuple[Path, bool]
"""A line to trim, the cloth on its left going along it; and whether it has an image on the other side."""


def lines_of(work: Work, place: str, inset: float) -> list[Line]:
    """The lines of a place on the garment, so far inside the edge."""
    outline, legs, s = work.outline, work.legs, work.s
    if work.under is not None and place in ("hem", "skirt"):
        return lines_of(work.under, place, inset)
    if (place == "leg" and legs is not None) or (
        outline is None and legs is not None and place in ("hem", "edge")
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
    if place in ("neckline", "collar") and not work.build.skirt and outline.neckline == "one-shoulder":
        edge = slant(outline, inset + 0.7)
        return [(edge.mirror(0).reverse() if work.back else edge, False)]
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
                front = Path((2.4 + inset, outline.depth + 3)).to((2.4 + inset, outline.hem - 2.5))
                if work.opening is not None and work.record.has("closure/side-front", "closure/wrap-over"):
                    front = beside(work.opening, -0.9 - inset)
                return [
                    (front, False),
                    (outline.hem_line(1.6 + inset).reverse(), False),
                ]
            if work.build.legs == "trunk" and legs is not None and work.flap is None:
                return [(legs.across(1.0 + inset), True)]
            if work.flap is not None:
                return [(work.flap.move(0.0, -1.0 - inset), False)]
            if work.chosen.length.id == "handkerchief-uneven" and work.has_skirt:
                return [
                    (hem_of_points(outline).scale(0.99).move(0.0, outline.hem * 0.01 - 1.4 - inset), False)
                ]
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
        (_sx, _sy), (_ux, _uy) = outline.shoulder, outline.underarm
        line = outline.armhole()
        return [(line.move(-0.8 - inset), True)]
    end = work.sleeve_end
    (ax, ay), (bx, by) = end.start, end.end
    span = apart(end.start, end.end) or 1.0
    up = ((by - ay) / span, -(bx - ax) / span)
    if up[1] > 0:
        up = (-up[0], -up[1])
    # The sleeve widens or narrows upwards; keep a little inside it.
    k = 1.1 + inset
    a = (ax + up[0] * k - 0.5 * (ax - bx) / span, ay + up[1] * k - 0.5 * (ay - by) / span)
    b = (bx + up[0] * k + 0.3 * (ax - bx) / span, by + up[1] * k + 0.3 * (ay - by) / span)
    return [(Path(b).to(a), True)]


def spot_of(work: Work, at_place: str | None, kind: str) -> Point | None:
    """One place on the garment."""
    outline, s = work.outline, work.s
    if outline is None:
        legs = work.legs
        return (
            None
            if legs is None
            else (
                legs.outer * 0.6,
                min((legs.fork + legs.hem) / 2, legs.hem - 5.5 * s)
                if at_place == "leg"
                else legs.waist + 9 * s,
            )
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
