"""Hats and caps, simply, by the decade."""

from __future__ import annotations

from inperiod.drawing.flats.work import Work
from inperiod.drawing.hand import FAINT, GROUND, LINE, Path, ring


def draw_head(work: Work) -> None:
    """A hat or cap on its own, from the front."""
    kind, year, sheet = work.build.head, work.year, work.sheet
    if kind == "bathing-cap":
        sheet.cloth(
            "hat", Path((-9.2, 6)).curve((-11, -8), (11, -8), (9.2, 6)).bend((0, 9), (-9.2, 6)).close()
        )
        sheet.put(
            "hat", LINE, Path((-9.2, 6)).curve((-11, -8), (11, -8), (9.2, 6)).bend((0, 9), (-9.2, 6)).close()
        )
        sheet.put("hat", FAINT, Path((-9.4, 3.6)).bend((0, 6.6), (9.4, 3.6)))
        return
    if kind == "cap":
        sheet.put(
            "hat",
            GROUND,
            Path((-9, 5)).curve((-15, -2), (-9, -7), (0, -7)).curve((9, -7), (15, -2), (9, 5)).close(),
        )
        sheet.put(
            "hat", GROUND, Path((-9, 5)).bend((0, 2.6), (9, 5)).curve((7, 9.6), (-7, 9.6), (-9, 5)).close()
        )
        return
    if 1922 <= year < 1932:
        crown = Path((-9.6, 9)).curve((-12.5, -9), (12.5, -9), (9.6, 9))
        brim = (
            Path((-9.6, 6))
            .curve((-15, 11), (-7, 15), (0, 13))
            .curve((7, 15), (15, 11), (9.6, 6))
            .bend((0, 10), (-9.6, 6))
            .close()
        )
        sheet.put("hat", GROUND, crown, brim)
    elif 1908 <= year < 1915:
        sheet.put("hat", GROUND, ring((0, 7), 26, 5.5))
        sheet.put(
            "hat",
            GROUND,
            Path((-11, 7)).curve((-14, -8), (14, -8), (11, 7)).bend((0, 10.5), (-11, 7)).close(),
        )
    elif year < 1908:
        sheet.put("hat", GROUND, ring((0, 8), 18, 3.8))
        sheet.put(
            "hat",
            GROUND,
            Path((-8.8, 8))
            .to((-8.4, -1.5))
            .bend((0, -3), (8.4, -1.5))
            .to((8.8, 8))
            .bend((0, 11), (-8.8, 8))
            .close(),
        )
    else:
        sheet.put("hat", GROUND, ring((0, 8), 20, 4.4))
        sheet.put(
            "hat", GROUND, Path((-9, 8)).curve((-10.5, -6), (10.5, -6), (9, 8)).bend((0, 11), (-9, 8)).close()
        )
