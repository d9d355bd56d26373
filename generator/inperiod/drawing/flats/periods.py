"""What a garment is taken to be where its plate does not say: the usual line of dress by year.

Common practice as any history of Western dress tells it, no single source; it is never evidence, and a flat
says what it has taken from here.
"""

from __future__ import annotations

import itertools
from bisect import bisect_right
from collections.abc import Mapping
from dataclasses import dataclass

NEUTRAL_YEAR = 1920.0
"""The lines an undated plate is drawn on."""


@dataclass(frozen=True, slots=True)
class Period:
    """The usual silhouette, waist, skirt and sleeve of women's dress from ``start`` on. ``shoulder`` is half
    the breadth from armhole to armhole in centimetres."""

    start: float
    silhouette: str
    waist: str
    length: str
    cut: str
    sleeve: str
    neckline: str
    shoulder: float


PERIODS: tuple[Period, ...] = (
    Period(0, "fitted-flared", "natural", "ground", "gathered", "elbow", "square", 15),
    Period(1795, "empire", "raised", "instep", "gathered", "puff-short", "scoop", 14.5),
    Period(1822, "fitted-flared", "natural", "ankle", "gathered", "gigot", "boat", 15),
    Period(1837, "fitted-flared", "basque-point", "ground", "gathered", "long-fitted", "high", 15.5),
    Period(1852, "crinoline-bell", "natural", "ground", "gathered", "pagoda", "high", 15.5),
    Period(1868, "bustle-back", "natural", "ground", "draped", "long-fitted", "high", 14.5),
    Period(1889, "hourglass", "natural", "ground", "gored", "gigot", "high", 14),
    Period(1897.5, "s-bend", "pouched", "ground", "gored", "bishop", "high", 14.5),
    Period(1907.5, "columnar", "raised", "ground", "gored", "set-in-long", "high", 15),
    Period(1910.5, "columnar", "raised", "instep", "straight", "kimono", "round", 15.5),
    Period(1914.5, "fitted-flared", "raised", "above-ankle", "gored", "set-in-long", "v", 15.5),
    Period(1918.5, "barrel", "natural", "above-ankle", "gathered", "kimono", "round", 16),
    Period(1921.5, "tubular", "low", "mid-calf", "straight", "short", "round", 16.6),
    Period(1925.5, "tubular", "low", "knee", "straight", "set-in-long", "v", 16.6),
    Period(1929.5, "bias-cling", "natural", "mid-calf", "bias-cut", "set-in-long", "v", 16.6),
    Period(1936.5, "fitted-flared", "natural", "below-knee", "gored", "puff-short", "v", 18.6),
    Period(1947, "fitted-flared", "natural", "mid-calf", "circular", "short", "round", 16.4),
    Period(1958, "a-line", "natural", "knee", "straight", "sleeveless", "round", 16.2),
    Period(1965, "a-line", "no-waist", "above-knee", "straight", "sleeveless", "round", 15.8),
    Period(1972, "loose", "natural", "mid-calf", "gathered", "set-in-long", "v", 16.2),
)


def period_of(year: float) -> Period:
    """The period a year falls in."""
    return PERIODS[max(0, bisect_right([period.start for period in PERIODS], year) - 1)]


def gigot_fullness(year: float) -> float:
    """How full the top of a gigot sleeve was, 0 to 1: fullest in the middle of the 1830s and the 1890s."""
    if year < 1860:
        return _between(year, ((1818, 0.3), (1829, 1.0), (1836, 1.0), (1838, 0.25)))
    return _between(
        year, ((1888, 0.28), (1892, 0.55), (1894, 0.95), (1896.6, 1.0), (1898, 0.42), (1909, 0.4))
    )


def leg_width(year: float) -> float:
    """The width of a trouser leg at its hem, laid flat, in centimetres."""
    return _between(
        year, ((1885, 19), (1905, 21), (1915, 20), (1923, 22), (1926, 26), (1934, 27), (1950, 24))
    )


def _between(year: float, knots: tuple[tuple[float, float], ...]) -> float:
    """Straight lines between the knots, level beyond their ends."""
    if year <= knots[0][0]:
        return knots[0][1]
    for (left, low), (right, high) in itertools.pairwise(knots):
        if year <= right:
            return low + (high - low) * (year - left) / (right - left)
    return knots[-1][1]


# Half the breadth of a woman's figure dressed so, in centimetres, at the levels of ``figure.LEVELS``:
#                            underarm bust waist high-hip hip crotch thigh knee calf floor
SILHOUETTES: Mapping[str, tuple[float, ...]] = {
    "hourglass": (14.6, 15.4, 10.0, 15.6, 19.8, 23.0, 25.8, 32.0, 38.0, 47.0),
    "s-bend": (14.6, 16.0, 10.4, 14.8, 18.4, 20.2, 21.6, 25.5, 31.0, 45.5),
    "columnar": (15.6, 16.0, 13.4, 16.2, 17.6, 18.2, 18.5, 19.0, 19.6, 21.5),
    "hobble": (15.6, 16.0, 13.4, 18.4, 20.4, 20.6, 20.0, 17.0, 14.8, 14.4),
    "tubular": (15.6, 16.0, 15.6, 16.4, 17.6, 18.1, 18.5, 19.4, 20.0, 21.0),
    "barrel": (15.8, 16.2, 14.2, 19.5, 23.6, 25.2, 25.2, 22.6, 19.2, 16.0),
    "bias-cling": (15.2, 15.4, 11.8, 15.2, 17.4, 17.4, 17.2, 19.2, 24.0, 34.0),
    "a-line": (15.4, 16.0, 14.8, 18.8, 22.0, 25.4, 28.0, 34.0, 38.5, 45.0),
    "fitted-flared": (15.4, 16.0, 11.6, 17.0, 21.0, 24.8, 27.6, 33.5, 38.5, 45.0),
    "crinoline-bell": (15.4, 16.0, 10.8, 25.0, 34.0, 39.5, 43.0, 48.0, 50.5, 52.0),
    "bustle-back": (14.8, 15.6, 11.0, 16.0, 18.8, 20.6, 22.0, 24.6, 27.5, 33.0),
    "empire": (15.0, 15.6, 15.4, 17.2, 18.6, 19.8, 20.8, 22.6, 24.4, 28.0),
    "loose": (16.4, 17.4, 19.8, 22.0, 24.0, 26.2, 28.0, 31.5, 34.5, 38.5),
}
