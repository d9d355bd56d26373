"""Putting a figure together from exact lengths: boxes, lines and words in inches, and a scale to read it."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction
from typing import Literal

from inperiod.making.measures import CENTIMETRE, decimal
from inperiod.making.values import Figure, Shape

_BARS = (100, 50, 20, 10, 5, 2, 1)


@dataclass
class Plan:
    """A figure being drawn. ``pixel`` is the inches one drawn unit stands for."""

    pixel: Fraction
    shapes: list[Shape] = field(default_factory=list)

    def box(self, look: str, x: Fraction, y: Fraction, width: Fraction, height: Fraction) -> None:
        self.shapes.append(Shape("box", (float(x), float(y), float(width), float(height)), look))

    def line(self, look: str, x1: Fraction, y1: Fraction, x2: Fraction, y2: Fraction) -> None:
        self.shapes.append(Shape("line", (float(x1), float(y1), float(x2), float(y2)), look))

    def word(self, look: str, x: Fraction, y: Fraction, text: str) -> None:
        self.shapes.append(Shape("word", (float(x), float(y)), look, text))

    def scale_bar(self, y: Fraction, most: Fraction, metric: bool) -> None:
        """A bar of round length, at most ``most``, with its length beside it; none where all are too long."""
        unit = CENTIMETRE if metric else Fraction(1)
        count = next((bar for bar in _BARS if bar * unit <= most), None)
        if count is None:
            return
        long, tick = count * unit, 4 * self.pixel
        self.line("scale", Fraction(0), y, long, y)
        self.line("scale", Fraction(0), y - tick, Fraction(0), y)
        self.line("scale", long, y - tick, long, y)
        inches = decimal(count * CENTIMETRE, 1) if metric else str(count)
        centimetres = str(count) if metric else decimal(Fraction(count) / CENTIMETRE, 1)
        text = f"{centimetres} cm ({inches} in)" if metric else f"{inches} in ({centimetres} cm)"
        self.word("label start", long + 6 * self.pixel, y, text)

    def figure(
        self, name: Literal["tucks", "bias", "lay-plan"], title: str, width: Fraction, height: Fraction
    ) -> Figure:
        return Figure(name, title, float(width), float(height), float(1 / self.pixel), tuple(self.shapes))
