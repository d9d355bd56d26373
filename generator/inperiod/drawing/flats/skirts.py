"""Skirts below the waist: hems, gores, folds, pleats, tiers, drapery; and the seam of the waist itself."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from inperiod.drawing.flats.outline import Outline
from inperiod.drawing.flats.work import Work
from inperiod.drawing.hand import FAINT, LINE, Path, smooth, waved


def draw_hem(work: Work) -> None:
    """The lower edge of the body: its own form first, else the curve of a hem."""
    outline = work.outline
    if outline is None or (work.build.legs == "trunk" and work.build.body == "crotch"):
        return
    pen = work.edge(work.chosen.length) if work.has_skirt else LINE
    work.sheet.put("hem", pen, hem_edge(work, outline))


def hem_edge(work: Work, outline: Outline) -> Path:
    """The hem from the right side to the left, as the recorded lower edge shapes it."""
    line = outline.hem_line()
    edges = [feature for feature in work.record.all("lower-edge") if feature.at in (None, "skirt", "hem")]
    half, y, dip = outline.halves[-1], outline.hem, outline.dip
    if not work.has_skirt:
        return line
    for feature in edges:
        kind = (feature.term or "").partition("/")[2]
        if kind == "scalloped":
            work.record.drew(feature)
            return waved(line, -1.7 * work.s, 11, "scallops")
        if kind == "vandyked":
            work.record.drew(feature)
            return waved(line, -2.4 * work.s, 11, "points")
        if kind == "handkerchief":
            work.record.drew(feature)
            return hem_of_points(outline)
    if work.chosen.length.id == "handkerchief-uneven":
        return hem_of_points(outline)
    if work.chosen.length.id == "train":
        return (
            Path((half, y))
            .curve((half + 3, y + 1.4), (half * 0.5, y + 3 + dip), (0.0, y + 2 * dip))
            .curve((-half * 0.5, y + 3 + dip), (-half - 3, y + 1.4), (-half, y))
        )
    return line


def hem_of_points(outline: Outline) -> Path:
    """A hem that falls in points, from the right side to the left."""
    half, y = outline.halves[-1], outline.hem
    return (
        Path((half, y))
        .bend((half * 0.86, y + 8), (half * 0.8, y + 10))
        .bend((half * 0.6, y + 1), (half * 0.38, y - 3))
        .bend((half * 0.14, y + 3), (0.0, y + 4))
        .bend((-half * 0.14, y + 3), (-half * 0.38, y - 3))
        .bend((-half * 0.6, y + 1), (-half * 0.8, y + 10))
        .bend((-half * 0.86, y + 8), (-half, y))
    )


def draw_waist(work: Work) -> None:
    """The seam of the waist: straight across, pointed, hanging over, or a band."""
    outline, choice = work.outline, work.chosen.waist
    if outline is None:
        return
    pen, sheet, s = work.edge(choice), work.sheet, work.s
    if work.build.skirt:
        sheet.put("waist", pen, outline.across(outline.top), outline.across(outline.top + 3.2 * s))
        return
    y = outline.waist
    if choice.id == "princess":
        for share in (0.42,):
            sheet.both(
                "waist",
                pen,
                smooth(
                    (outline.shoulder[0] * 0.62, outline.on_shoulder(outline.shoulder[0] * 0.62)),
                    *(
                        (outline.half(level) * share, level)
                        for level in (
                            outline.underarm[1],
                            work.figure.y("waist"),
                            work.figure.y("hip"),
                            outline.hem - 1,
                        )
                    ),
                ),
            )
        return
    if y is None or y > outline.hem - 3:
        return
    half = outline.half(y)
    if choice.id == "basque-point":
        sheet.both(
            "waist",
            pen,
            Path((half, y)).curve((half * 0.6, y + 1), (half * 0.3, y + 5 * s), (0.0, y + 8 * s)),
        )
    elif choice.id == "pouched":
        deep = 6.0 * s if 1890 <= work.year < 1908 else 2.0 * s
        wide = outline.half(y - 1.6)
        sheet.put(
            "waist",
            pen,
            Path((wide, y - 1.6))
            .curve((wide * 0.6, y + 1.5), (wide * 0.35, y + deep), (0.0, y + deep))
            .curve((-wide * 0.35, y + deep), (-wide * 0.6, y + 1.5), (-wide, y - 1.6)),
        )
        for share in (0.2, 0.46, 0.72):
            sheet.faint(
                "waist",
                Path((wide * share, y + deep * (1 - share * share) - 0.8)).bend(
                    (wide * share * 1.05, y - 4 * s), (wide * share * 1.1, y - 9 * s)
                ),
            )
    elif choice.id == "yoked-waist":
        low = y + 9 * s
        sheet.put("waist", pen, outline.across(y), outline.across(low))
    else:
        sheet.put("waist", pen, outline.across(y))


def draw_folds(work: Work) -> None:
    """The cut of the skirt, by its seams and folds."""
    outline, choice = work.outline, work.chosen.cut
    if outline is None or not work.has_skirt:
        return
    top = (outline.top + 3.2 * work.s) if work.build.skirt else (outline.waist or work.figure.y("hip"))
    if outline.hem - top < 8:
        return
    make = _CUTS.get(choice.id)
    if make is None:
        return
    make(work, outline, top)


def _folds(work: Work, outline: Outline, shares: tuple[float, ...], reach: float, top: float) -> None:
    """Folds rising from the hem, ``reach`` of the way up, on both sides."""
    hem = outline.hem
    for share in shares:
        lift = outline.dip * 2 * (1 - share * share) * 0.55
        work.sheet.faint(
            "folds", outline.down(share * 0.94, hem - (hem - top) * reach, hem - 0.6 + lift, share * 0.06)
        )


def _straight(work: Work, outline: Outline, top: float) -> None:
    _folds(work, outline, (0.45,), 0.22, top)


def _gored(work: Work, outline: Outline, top: float) -> None:
    hem = outline.hem + outline.dip
    for share in (0.34,) if outline.halves[-1] < 30 else (0.3, 0.66):
        work.sheet.both("seam", work.edge(work.chosen.cut), outline.down(share, top, hem - 0.5))
    if outline.halves[-1] > 28:
        _folds(work, outline, (0.16, 0.48, 0.84), 0.36, top)


def _circular(work: Work, outline: Outline, top: float) -> None:
    _folds(work, outline, (0.2, 0.46, 0.74), 0.72, top)
    _folds(work, outline, (0.33, 0.6, 0.88), 0.4, top)


def _gathered(work: Work, outline: Outline, top: float) -> None:
    if outline.waist is None and not work.build.skirt:
        # No seam to gather into: the fullness falls from above in long folds.
        _folds(work, outline, (0.16, 0.5, 0.82), 0.62, outline.underarm[1] + 8)
        _folds(work, outline, (0.33, 0.66), 0.34, outline.underarm[1] + 8)
        return
    long = (outline.hem - top) * 0.3
    for place in range(6):
        share = 0.08 + 0.16 * place
        reach = long * (1.0, 0.55)[place % 2]
        start = top + 2 * _bend(outline, top) * (1 - share * share) * 0.5
        work.sheet.faint("gathers", outline.down(share, start, top + reach, 0.02))
    _folds(work, outline, (0.24, 0.55, 0.82), 0.34, top)


def _bend(outline: Outline, y: float) -> float:
    return min(0.05 * outline.half(y), 1.6)


def _pleated(work: Work, outline: Outline, top: float) -> None:
    hem = outline.hem + outline.dip
    for place in range(6):
        share = 0.08 + 0.16 * place
        work.sheet.both(
            "pleats", work.edge(work.chosen.cut), outline.down(share, top, hem - outline.dip * share * share)
        )


def _tiered(work: Work, outline: Outline, top: float, count: int = 3) -> None:
    step = (outline.hem - top) / count
    for tier in range(count):
        y = top + step * tier
        if tier:
            work.sheet.put("tiers", work.edge(work.chosen.cut), outline.across(y))
        for place in range(5):
            share = 0.1 + 0.2 * place
            work.sheet.faint(
                "gathers",
                outline.down(
                    share,
                    y + 2 * _bend(outline, y) * (1 - share * share) * 0.5 + 0.3,
                    y + step * (0.5, 0.3)[place % 2],
                ),
            )


def _flounced(work: Work, outline: Outline, top: float) -> None:
    y = outline.hem - (outline.hem - top) * 0.24
    work.sheet.put("tiers", work.edge(work.chosen.cut), outline.across(y))
    for place in range(7):
        share = 0.06 + 0.135 * place
        work.sheet.faint(
            "gathers",
            outline.down(
                share,
                y + 2 * _bend(outline, y) * (1 - share * share) * 0.5 + 0.3,
                y + (outline.hem - y) * (0.66, 0.4)[place % 2],
            ),
        )


def _draped(work: Work, outline: Outline, top: float) -> None:
    """Cloth drawn up to one hip."""
    sheet = work.sheet
    x, y = outline.half(top + 8) - 0.6, top + 8
    for deep, share in ((8, 0.95), (16, 0.92), (25, 0.86), (36, 0.7)):
        low = min(y + deep, outline.hem - 3)
        end = (-outline.half(low) * share, low)
        sheet.put("folds", FAINT, Path((x, y)).curve((x * 0.4, y + deep * 0.9), (-x * 0.3, low + 2), end))


def _tunic(work: Work, outline: Outline, top: float) -> None:
    y = top + (outline.hem - top) * 0.58
    work.sheet.put("tunic", work.edge(work.chosen.cut), outline.across(y))
    work.sheet.put("tunic", FAINT, outline.across(y - 0.9))
    for share in (0.35, 0.72):
        work.sheet.faint("folds", outline.down(share, y - (y - top) * 0.35, y - 0.2))


def _hobble(work: Work, outline: Outline, top: float) -> None:
    y = work.figure.y("knee") + 3
    if y < outline.hem - 6:
        work.sheet.put("band", work.edge(work.chosen.cut), outline.across(y))
    _folds(work, outline, (0.4,), 0.5, top)


def _bias(work: Work, outline: Outline, top: float) -> None:
    """A seam on the slant from hip to hip, and flares that begin at the knee."""
    start = top + (15 if work.record.has("yoke/hip-yoke") else 11)
    half = outline.half(start)
    work.sheet.both(
        "seam",
        work.edge(work.chosen.cut),
        Path((half, start)).bend((half * 0.5, start + 8), (0.0, start + 13)),
    )
    _folds(work, outline, (0.18, 0.42, 0.66, 0.88), 0.42, top)


def _godets(work: Work, outline: Outline, top: float) -> None:
    draw_godets(work, 3)


def draw_godets(work: Work, count: int) -> None:
    """Wedges let in from the hem."""
    outline = work.outline
    if outline is None:
        return
    hem = outline.hem
    high = hem - min(30.0 * work.figure.scale, (hem - work.waist) * 0.42)
    shares = (0.36, 0.78) if count > 2 else (0.55,)
    for share in shares:
        tip = (outline.half(high) * share, high)
        low = hem + outline.dip * (1 - share * share)
        left, right = outline.half(hem) * (share - 0.15), outline.half(hem) * min(0.98, share + 0.15)
        work.sheet.both(
            "godet",
            LINE,
            Path((left, low))
            .bend((tip[0] - 0.4, high + 9), tip)
            .bend((tip[0] + 0.6, high + 9), (right, low - 0.5)),
        )


def _wrapped(work: Work, outline: Outline, top: float) -> None:
    hem = outline.hem + outline.dip
    work.sheet.put(
        "seam",
        work.edge(work.chosen.cut),
        smooth(
            (outline.half(top) * 0.5, top + 0.6),
            (outline.half(top + 20) * 0.46, top + 20),
            (outline.half(outline.hem) * 0.4, hem - 0.5),
        ),
    )
    _folds(work, outline, (0.7,), 0.3, top)


def _divided(work: Work, outline: Outline, top: float) -> None:
    hem = outline.hem + outline.dip
    work.sheet.put("seam", work.edge(work.chosen.cut), Path((0.0, top + 1)).to((0.0, hem)))
    work.sheet.faint("folds", Path((0.4, top + 16)).bend((3, hem - 20), (outline.half(hem) * 0.2, hem - 1)))


_CUTS: Mapping[str, Callable[[Work, Outline, float], None]] = {
    "straight": _straight,
    "gored": _gored,
    "circular": _circular,
    "umbrella": _circular,
    "gathered": _gathered,
    "pleated-all": _pleated,
    "tiered": _tiered,
    "flounced": _flounced,
    "draped": _draped,
    "tunic-over": _tunic,
    "hobble-cut": _hobble,
    "bias-cut": _bias,
    "godet-skirt": _godets,
    "wrap-skirt": _wrapped,
    "divided": _divided,
}
