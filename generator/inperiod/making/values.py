"""What a making sheet is made of, as frozen values."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal


@dataclass(frozen=True, slots=True)
class MakingProblem:
    """What could not be worked out, in plain words; ``index`` is the mapping's place in the list, from 0."""

    index: int
    field: str | None
    message: str
    hint: str


@dataclass(frozen=True, slots=True)
class Number:
    """One figure of a line. ``value`` is in inches, or a count; ``text`` says it in both units."""

    label: str
    value: float
    text: str


@dataclass(frozen=True, slots=True)
class Shape:
    """One mark of a figure, in inches, y downwards.

    A ``box`` has x, y, width, height; a ``line`` x1, y1, x2, y2; a ``word`` x, y and its ``text``.
    ``look`` says what it stands for, and is its class: cloth, selvedge, fold, stitch, tuck, cut, piece …
    """

    form: Literal["box", "line", "word"]
    at: tuple[float, ...]
    look: str
    text: str = ""


@dataclass(frozen=True, slots=True)
class Figure:
    """A drawing to scale. ``width`` and ``height`` are in inches, ``scale`` is drawn units for each inch."""

    name: Literal["tucks", "bias", "lay-plan"]
    title: str
    width: float
    height: float
    scale: float
    shapes: tuple[Shape, ...]


@dataclass(frozen=True, slots=True)
class Line:
    """One line of the sheet: what to cut or buy, its formula in words, its figures."""

    index: int
    kind: str
    title: str
    cut: str
    formula: str
    numbers: tuple[Number, ...] = ()
    notes: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    figure: Figure | None = None


@dataclass(frozen=True, slots=True)
class Purchase:
    """One thing to buy. ``value`` is in inches (after rounding up) or a count; ``lines`` who asked for it."""

    what: str
    value: float
    text: str
    cost: str | None
    lines: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class MakingSheet:
    """The whole sheet. ``cautions`` are those of its lines, each once, in their order."""

    lines: tuple[Line, ...] = ()
    shopping: tuple[Purchase, ...] = ()
    cautions: tuple[str, ...] = ()
    problems: tuple[MakingProblem, ...] = ()
