"""Sleeves, each along an arm that hangs a little away from the body.

A sleeve is a row of stations down the arm: how far along it, how far the outer edge stands off the arm's
line, and how wide the sleeve is there, in centimetres of a woman's figure.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass

from inperiod.drawing.flats.bodies import GROWN_ON
from inperiod.drawing.flats.periods import gigot_fullness
from inperiod.drawing.flats.work import Work
from inperiod.drawing.hand import FAINT, GROUND, LINE, TINT, Path, Point, smooth

Station = tuple[float, float, float]
NO_SLEEVE = ("none", "sleeveless", "strap")


@dataclass(frozen=True, slots=True)
class Shape:
    """``lean`` is the arm's angle from upright in degrees; ``rise`` how far the top stands above the
    shoulder; ``cuff`` the length of a cuff below the last station and ``wrist`` its width; ``gathers`` at
    the top and at the end."""

    stations: tuple[Station, ...]
    lean: float = 17.0
    rise: float = 0.0
    cuff: float = 0.0
    wrist: float = 0.0
    gathers: tuple[bool, bool] = (False, False)


def _gigot(year: float) -> Shape:
    f = gigot_fullness(year)
    return Shape(
        (
            (5, 4 + 9 * f, 19 + 7 * f),
            (14, 4 + 11 * f, 20 + 13 * f),
            (23, 2 + 7 * f, 16 + 10 * f),
            (31, 1 + 1.5 * f, 12 + 2 * f),
            (42, 0.2, 10),
            (57, -0.4, 7.0),
        ),
        lean=15,
        rise=1.6 + 3.6 * f,
        gathers=(True, False),
    )


def _bishop(year: float) -> Shape:
    full = 1.0 if year < 1912 else 0.7
    return Shape(
        (
            (12, 0.6, 14),
            (26, 1.6, 15.5),
            (40, 2 + 2.2 * full, 16 + 5 * full),
            (48, 2 + 2.4 * full, 17 + 5 * full),
            (53, 0.4, 9.5),
        ),
        cuff=5.0,
        wrist=8.4,
        gathers=(False, True),
    )


def _puff(year: float) -> Shape:
    high = 1.0 if year < 1911 else 0.6
    return Shape(
        ((3, 3.4 + 1.5 * high, 18.5), (9, 4.4 + 1.6 * high, 20.5), (15, 2.8, 18.0), (18, -0.4, 12.5)),
        rise=2.2 + 1.6 * high,
        cuff=2.2,
        wrist=12.0,
        gathers=(True, True),
        lean=19,
    )


def _elbow(year: float) -> Shape:
    if year >= 1909:
        return Shape(((14, 0.8, 14.2), (31, 1.4, 13.6)))
    return Shape(
        ((10, 1.0, 14.6), (22, 3.0, 18), (29, 3.2, 18.6), (33, 0.2, 12)),
        cuff=2.4,
        wrist=11.4,
        gathers=(False, True),
    )


def _always(shape: Shape) -> Callable[[float], Shape]:
    """A sleeve that is cut alike in every year."""
    return lambda year: shape


SHAPES: Mapping[str, Callable[[float], Shape]] = {
    "set-in-long": _always(Shape(((14, 0.7, 14), (30, 0.6, 12.2), (57, 0.0, 9.2)))),
    "long-fitted": _always(Shape(((12, 0.5, 12.5), (30, 0.6, 10.2), (44, 0.1, 8.6), (58, -0.2, 6.4)))),
    "two-piece-coat": _always(Shape(((13, 1.0, 15), (30, 1.4, 13.4), (45, 0.6, 12.0), (58, -0.8, 10.6)))),
    "shirt-sleeve": _always(
        Shape(((14, 0.8, 15), (32, 0.8, 14), (50, 0.9, 12.8), (53, -0.6, 9.6)), cuff=5.0, wrist=9.2)
    ),
    "bishop": _bishop,
    "gigot": _gigot,
    "puff-short": _puff,
    "virago": _always(
        Shape(((8, 4, 20), (18, 0.6, 12), (28, 4.4, 20), (38, 0.4, 11), (42, 0, 10)), rise=1.5)
    ),
    "short": _always(Shape(((9, 0.8, 15), (17, 1.3, 15.2)), lean=22)),
    "cap": _always(Shape(((7.5, 0.9, 11.5),), lean=30)),
    "elbow": _elbow,
    "three-quarter": _always(Shape(((14, 0.8, 14), (42, 0.8, 12.4)))),
    "raglan": _always(Shape(((14, 0.9, 14.6), (30, 0.9, 13.0), (57, 0.0, 9.6)))),
    "kimono": _always(Shape(((14, 1.0, 17), (27, 2.0, 17.6)), lean=25)),
    "dolman": _always(Shape(((20, 1.0, 20), (40, 0.6, 12), (57, 0.0, 7.6)), lean=22)),
    "bell": _always(Shape(((14, 0.6, 14), (30, 1.8, 16.4), (44, 4.6, 24)))),
    "pagoda": _always(Shape(((14, 0.3, 13), (32, 1.6, 17), (48, 7.5, 33)))),
    "flutter": _always(Shape(((7, 1.8, 15.5), (17, 6.2, 25)), lean=22)),
    "cape-sleeve": _always(Shape(((12, 2.4, 19), (30, 8.0, 33)), lean=18)),
}


def draw_sleeves(work: Work) -> None:
    """Both sleeves; drawn before the body, which covers where they go behind it."""
    outline, choice = work.outline, work.chosen.sleeve
    if outline is None or work.build.skirt or choice.id in NO_SLEEVE:
        return
    shape = SHAPES.get(choice.id, SHAPES["set-in-long"])(work.year)
    if (
        choice.id == "kimono"
        and work.build.body == "skirt"
        and work.build.open
        and work.build.shape == "loose"
    ):
        shape = Shape(((14, 1.0, 19), (46, 3.0, 22)), lean=22.0)
    arm = _Arm(work, shape)
    pen = work.edge(choice)
    area, outer, inner, end = arm.pieces(choice.id in GROWN_ON or choice.id == "raglan")
    sheet = work.sheet
    sheet.cloth("sleeve", area, area.mirror(0))
    sheet.both("sleeve", pen, outer, inner, end)
    work.sleeve_end, work.sleeve_outer = end, outer
    if shape.cuff:
        cuff, foot = arm.cuff()
        sheet.both("cuff", GROUND if work.chosen.sleeve.feature else FAINT, cuff)
        if work.record.has("colour/contrast-two-colour"):
            sheet.both("cuff", TINT, cuff)
        work.sleeve_end = foot
    _gathers(work, arm, shape)
    if choice.id == "two-piece-coat":
        sheet.faint(
            "sleeve", smooth(arm.spot(12, -9), arm.spot(31, -7.4), arm.spot(46, -7.0), arm.spot(56.5, -7.4))
        )
    if choice.id in ("flutter", "cape-sleeve", "pagoda", "bell"):
        t, o, w = shape.stations[-1]
        for share in (0.3, 0.6):
            sheet.faint(
                "sleeve", Path(arm.spot(t - 0.4, o - w * share)).to(arm.spot(t * 0.45, -4.5 - 6 * share))
            )
    if choice.id == "virago":
        for share in (0.25, 0.5, 0.75):
            sheet.faint(
                "sleeve",
                smooth(
                    arm.spot(4, 2 - 14 * share), arm.spot(18, 0.4 - 11 * share), arm.spot(40, -10 * share)
                ),
            )
        for t, w in ((18, 12), (38, 11)):
            sheet.both("sleeve", LINE, Path(arm.spot(t, 0.4)).to(arm.spot(t, 0.6 - w)))


def draw_armholes(work: Work) -> None:
    """The seam where the sleeve is set in, or the edge where there is none."""
    outline, choice = work.outline, work.chosen.sleeve
    if outline is None or work.build.skirt or choice.id in GROWN_ON:
        return
    pen = work.edge(choice)
    if choice.id == "raglan":
        (x, y), (ux, uy) = outline.neck, outline.underarm
        work.sheet.both(
            "armhole", pen, Path((x * 0.92, y + 2.5)).curve((x + 3, y + 6), (ux - 3, uy - 5), (ux, uy))
        )
        return
    if outline.neckline in ("halter", "off-shoulder") and not (work.back and outline.neckline == "halter"):
        work.sheet.both("armhole", LINE, outline.armhole())
    elif outline.neckline == "one-shoulder":
        work.sheet.put("armhole", LINE, outline.armhole().mirror(0) if work.back else outline.armhole())
    elif outline.neckline != "halter":
        pen = pen if choice.id not in NO_SLEEVE or choice.assumed else LINE
        work.sheet.both("armhole", pen, outline.armhole())


class _Arm:
    """The right arm: places along and across it."""

    def __init__(self, work: Work, shape: Shape) -> None:
        assert work.outline is not None
        self.outline, self.shape = work.outline, shape
        self.size = work.figure.girth
        self.long = work.figure.arm / 57
        self.way = (0.0, 1.0)
        for degrees in range(round(shape.lean), 34, 2):
            lean = math.radians(degrees)
            self.way = (math.sin(lean), math.cos(lean))
            if work.has_skirt or self._clears():
                break

    def _clears(self) -> bool:
        """Whether the whole inner edge hangs beside a jacket or blouse and not behind it."""
        places = [self.spot(t, o - w) for t, o, w in self.shape.stations[1:]]
        return all(x > self.outline.half(y) - 0.5 for x, y in places if y < self.outline.hem)

    def spot(self, along: float, out: float) -> Point:
        """So far down the arm, so far off its line (outwards; the sleeve lies on the other side)."""
        (sx, sy), (dx, dy) = self.outline.shoulder, self.way
        t, o = along * self.long, out * self.size
        return (sx + dx * t + dy * o, sy + dy * t - dx * o)

    def pieces(self, from_neck: bool) -> tuple[Path, Path, Path, Path]:
        """The area, the outer edge from the shoulder, the inner edge up to the underarm, the end."""
        shape, outline = self.shape, self.outline
        under = outline.underarm
        outs = [self.spot(t, o) for t, o, _ in shape.stations]
        ins = [self.spot(t, o - w) for t, o, w in shape.stations]
        # Nothing of the inner edge may lie left of the body's side at the underarm.
        ins = [(max(x, under[0] + 0.4 * index), y) for index, (x, y) in enumerate(ins)]
        start = outline.shoulder
        if from_neck:
            outer = smooth(outline.neck, outline.shoulder, *outs)
        elif shape.rise:
            up = shape.rise * self.size
            head = (start[0] + 3.2 * self.size, start[1] - up)
            outer = smooth(start, head, *outs)
        else:
            outer = smooth(start, *outs)
        end = Path(outs[-1]).bend(
            ((outs[-1][0] + ins[-1][0]) / 2 + 0.5, (outs[-1][1] + ins[-1][1]) / 2 + 1.2), ins[-1]
        )
        inner = smooth(*reversed(ins), under)
        return outer.then(end).then(inner).close(), outer, inner, end

    def cuff(self) -> tuple[Path, Path]:
        """The cuff below the last station, and its lower edge."""
        t, o, w = self.shape.stations[-1]
        middle, half = o - w / 2, self.shape.wrist / 2
        top_out, top_in = self.spot(t, middle + half + 0.3), self.spot(t, middle - half - 0.3)
        low_out, low_in = (
            self.spot(t + self.shape.cuff, middle + half),
            self.spot(t + self.shape.cuff, middle - half),
        )
        return Path(top_out).to(low_out, low_in, top_in).close(), Path(low_out).to(low_in)


def _gathers(work: Work, arm: _Arm, shape: Shape) -> None:
    top, end = shape.gathers
    lines = []
    if top:
        t, o, w = shape.stations[min(1, len(shape.stations) - 1)]
        for share in (0.12, 0.36, 0.6):
            head = arm.spot(1.0 + 7 * share, shape.rise * (0.7 - share) - 1.5 * share)
            lines.append(
                Path(head).bend(
                    arm.spot(t * 0.5, o * 0.7 - w * share * 0.7), arm.spot(t * 0.95, o * 0.75 - w * share)
                )
            )
    if end:
        t, o, w = shape.stations[-1]
        t2, o2, w2 = shape.stations[-2]
        for share in (0.16, 0.34, 0.52):
            lines.append(
                Path(arm.spot(t, o - w * share)).bend(
                    arm.spot(t2 + 1, o2 - w2 * share), arm.spot(t2 - 5, o2 * 0.8 - w2 * (share * 0.8 + 0.1))
                )
            )
    work.sheet.faint("sleeve", *lines)
