"""The bodies that flats hang on: levels and breadths of a standing figure, seen from the front.

Units are centimetres of the wearer. x runs from the middle of the body to the viewer's right, y downwards
from the nape of the neck. The proportions are those of drawn figures, a little long in the leg; common
practice, no source.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

LEVELS = ("underarm", "bust", "waist", "high-hip", "hip", "crotch", "thigh", "knee", "calf", "floor")


@dataclass(frozen=True, slots=True)
class Figure:
    """``levels`` are the heights of LEVELS; ``girth`` scales a woman's breadths; ``straight`` is how far the
    waist is filled out towards the chest, 0 to 1; ``arm`` the length from shoulder to wrist."""

    name: str
    levels: Mapping[str, float]
    girth: float
    straight: float
    neck: float
    slope: float
    arm: float

    def y(self, level: str) -> float:
        """The height of a level."""
        return self.levels[level]

    @property
    def scale(self) -> float:
        """How long the figure is beside a woman's."""
        return self.levels["floor"] / 138


def _figure(
    name: str,
    heights: tuple[float, ...],
    girth: float,
    straight: float,
    neck: float,
    slope: float,
    arm: float,
) -> Figure:
    return Figure(name, dict(zip(LEVELS, heights, strict=True)), girth, straight, neck, slope, arm)


WOMAN = _figure("woman", (20, 27, 40, 50, 60, 71, 80, 99, 115, 138), 1.0, 0.0, 6.4, 4.4, 57)
MAN = _figure("man", (22, 29, 44, 53, 62, 75, 84, 103, 120, 145), 1.12, 0.62, 7.0, 4.2, 62)
CHILD = _figure("child", (14, 19, 27, 34, 40, 48, 54, 66, 78, 94), 0.78, 0.55, 5.3, 3.0, 39)
INFANT = _figure("infant", (10.5, 13, 18, 22, 26, 31, 35, 42, 49, 58), 0.62, 0.8, 4.6, 2.2, 25)

FIGURES: Mapping[str, Figure] = {
    "woman": WOMAN,
    "man": MAN,
    "girl": CHILD,
    "boy": CHILD,
    "infant": INFANT,
    "any": WOMAN,
}


def figure_for(who: str) -> Figure:
    """The figure of a wearer; a woman's where it is not said."""
    return FIGURES.get(who, WOMAN)
