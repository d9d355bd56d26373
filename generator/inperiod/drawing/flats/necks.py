"""Necklines, from the shoulder to the middle of the front; and the back of the neck seen behind them."""

from __future__ import annotations

from inperiod.drawing.flats.ink import whole
from inperiod.drawing.flats.outline import Outline
from inperiod.drawing.flats.work import Work
from inperiod.drawing.hand import FAINT, LINE, WASH, Path, evenly, ring, smooth

STANDING = ("boned-stand", "stand", "mandarin", "wing", "eton")


def neckline(outline: Outline, inset: float = 0.0) -> Path:
    """The right half of the opening, or a line so far inside the cloth from it: from the shoulder to the
    middle of the front."""
    (x, y), d = outline.neck, outline.depth
    x += inset
    y = outline.on_shoulder(x) if outline.neckline not in ("off-shoulder", "halter") else y + inset * 0.3
    d += inset * (1.6 if outline.neckline in ("v", "surplice") else 1.0)
    start, kind = Path((x, y)), outline.neckline
    fall = d - y
    if kind in ("v", "surplice"):
        return start.curve((x - 0.6, y + fall * 0.3), (x * 0.45, y + fall * 0.72), (0.0, d))
    if kind == "square":
        return start.to((x - 0.9, d)).bend((x * 0.5, d + 0.5), (0.0, d + 0.5))
    if kind == "sweetheart":
        lobe = (x - 0.4, d - fall * 0.42)
        return start.to(lobe).curve((x - 1.4, d - 1.2), (x * 0.4, d - 2.2), (0.0, d))
    if kind == "boat":
        return start.curve((x * 0.7, y + fall * 0.75), (x * 0.3, d), (0.0, d))
    if kind == "u":
        return start.curve((x - 0.6, y + fall * 0.75), (x * 0.85, d), (0.0, d))
    if kind == "off-shoulder":
        return start.curve((x * 0.7, y + 2.0), (x * 0.3, d - 3.2), (0.0, d - 3.0))
    if kind == "halter":
        return start.curve((x + 0.2, y + fall * 0.45), (x * 0.45, y + fall * 0.8), (0.0, d))
    if kind == "one-shoulder":
        return start.curve((x - 1.0, y + fall * 0.4), (x * 0.5, d - x * 0.26), (0.0, d))
    if kind == "cowl":
        return start.curve((x - 0.4, y + fall * 0.5), (x * 0.7, d), (0.0, d))
    return start.curve((x + 0.2, y + fall * 0.58), (x * 0.62, d), (0.0, d))


def slant(outline: Outline, inset: float = 0.0) -> Path:
    """The whole edge of a garment with one shoulder: from its neck point to the other side's underarm."""
    line, (x, y) = neckline(outline, inset), outline.underarm
    low = y + inset
    return line.curve((-x * 0.35, line.end[1] + x * 0.18), (-x * 0.78, low - 2.4), (0.4 * inset - x, low))


def back_top(outline: Outline) -> float:
    """The height of the middle of the back's upper edge; a halter leaves the back bare to below the arms."""
    if outline.neckline == "halter":
        return outline.underarm[1] + 3.0
    return outline.depth if outline.neckline in ("off-shoulder", "one-shoulder") else outline.neck[1]


def back_neck(outline: Outline, inset: float = 0.0) -> Path:
    """The right half of the back of the neck; of a halter, of the edge below the bare back."""
    x, y = outline.neck
    if outline.neckline in ("off-shoulder", "one-shoulder"):
        return neckline(outline, inset)
    if outline.neckline == "halter":
        (ux, uy), low = outline.underarm, back_top(outline) + inset
        return Path((ux, uy + inset)).bend((ux * 0.6, low), (0.0, low))
    deep = y + 1.4 + (1.0 if outline.neckline in ("boat", "scoop", "off-shoulder") else 0.0)
    return Path((x + inset, y)).bend((x * 0.5, deep + inset), (0.0, deep + inset))


def draw_behind(work: Work) -> None:
    """The inside of the back, seen through the opening."""
    outline = work.outline
    if outline is None or work.build.skirt or work.back:
        return
    if outline.neckline in ("halter", "one-shoulder"):
        return
    front, back = neckline(outline), back_neck(outline)
    seen = back.reverse().then(front)
    area = seen.then(seen.mirror(0).reverse()).close()
    work.sheet.put("neck", WASH, area)
    work.sheet.both("neck", FAINT, back)


def draw_neckline(work: Work) -> None:
    """The edge of the opening, and what belongs to it below: a slit, a keyhole, folds."""
    outline = work.outline
    if outline is None or work.build.skirt:
        return
    pen, sheet, d = work.edge(work.chosen.neckline), work.sheet, outline.depth
    if outline.neckline == "one-shoulder":
        sheet.put("neck", LINE, slant(outline).mirror(0) if work.back else slant(outline))
        return
    if work.back:
        sheet.both("neck", LINE, back_neck(outline))
        if outline.neckline == "halter":
            _round_the_neck(work, outline)
        return
    line = neckline(outline)
    sheet.both("neck", pen, line)
    kind = outline.neckline
    if kind == "keyhole":
        sheet.put(
            "neck",
            pen,
            Path((0.0, d))
            .curve((3.4, d + 3), (2.6, d + 8), (0, d + 8))
            .curve((-2.6, d + 8), (-3.4, d + 3), (0.0, d)),
        )
    elif kind in ("slit", "henley"):
        sheet.put("neck", pen, Path((0.0, d)).to((0.0, d + 11 * work.s)))
        if kind == "henley":
            sheet.both("neck", pen, Path((1.4, d)).to((1.4, d + 11.6)).to((0.0, d + 11.6)))
    elif kind == "surplice":
        waist = work.waist
        start = outline.depth * 0.86
        end = (-outline.half(waist) * 0.55, waist)
        sheet.put(
            "neck", pen, Path((0.0, d)).curve((-2.5, d + 3), (end[0] * 0.8, (start + waist) / 2 + 4), end)
        )
    elif kind == "cowl":
        x, y = outline.neck
        for deep, wide in ((3.2, 0.2), (7.0, 1.2), (11.0, 2.6)):
            sheet.put(
                "neck",
                FAINT,
                smooth((-x - wide, y + 2 + deep * 0.5), (0, d + deep), (x + wide, y + 2 + deep * 0.5)),
            )
    elif kind == "halter":
        x, y = outline.neck
        sheet.both("neck", pen, Path((x, y)).bend((x * 0.6, y - 1.4), (0.0, y - 1.6)))


def _round_the_neck(work: Work, outline: Outline) -> None:
    """The band of a halter where it lies on the nape."""
    (x, y), (sx, sy) = outline.neck, outline.shoulder
    band = Path((0.0, y - 0.8)).bend((x * 0.6, y - 0.6), (x, y)).to((sx, sy + 0.8))
    work.sheet.cloth("collar", whole(band.bend((x * 0.7, sy + 1.4), (0.0, sy + 1.2))))
    work.sheet.both("neck", LINE, band.bend((x * 0.7, sy + 1.4), (0.0, sy + 1.2)))


def draw_gathers(work: Work, line: Path, long: float, count: int) -> None:
    """Short gathers falling from a line; the lines keep to the right half and its image."""
    found = []
    for place, (spot, _) in enumerate(evenly(line, count)):
        reach = long * (0.7 if place % 2 else 1.0)
        found.append(Path(spot).to((spot[0] * 1.02, spot[1] + reach)))
    work.sheet.faint("gathers", *found)


def eyelet(x: float, y: float, size: float) -> Path:
    """A small ring: a button, a stud, an eyelet."""
    return ring((x, y), size)
