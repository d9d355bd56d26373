"""A line of the sheet while it is being written, and what it asks the shop for."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction

from inperiod.making.values import Figure, Line, Number


@dataclass(frozen=True, slots=True)
class Need:
    """Something to buy: a length in inches, or a count. Those ``named`` alike are summed before rounding.

    ``step`` is how the shop sells it, in inches; ``price`` for each yard, metre (``metric``) or piece.
    """

    what: str
    named: bool
    amount: Fraction
    counted: bool
    metric: bool
    index: int
    step: Fraction | None = None
    price: Fraction | None = None
    currency: str = ""


@dataclass
class Draft:
    """What a kind fills in. ``cut`` says what to cut or buy, ``formula`` how it was reached."""

    index: int
    kind: str
    title: str
    metric: bool
    buy: str
    named: bool
    cut: str = ""
    formula: str = ""
    figure: Figure | None = None
    numbers: list[Number] = field(default_factory=list)
    notes: list[str] = field(default_factory=list)
    cautions: list[str] = field(default_factory=list)
    needs: list[Need] = field(default_factory=list)

    def number(self, label: str, value: Fraction | int, text: str) -> None:
        """A figure of the line, in inches or a count."""
        self.numbers.append(Number(label, float(value), text))

    def note(self, sentence: str) -> None:
        """Something to know that is no danger."""
        self.notes.append(sentence)

    def caution(self, sentence: str) -> None:
        """Something that goes wrong easily, or hurts."""
        self.cautions.append(sentence)

    def need(
        self,
        amount: Fraction,
        *,
        only_named: bool = False,
        step: Fraction | None = None,
        price: Fraction | None = None,
        currency: str = "",
    ) -> None:
        """Ask the shop for a length; with ``only_named`` only where the board says what to ``buy``."""
        if self.named or not only_named:
            need = Need(self.buy, self.named, amount, False, self.metric, self.index, step, price, currency)
            self.needs.append(need)

    def need_count(self, count: int) -> None:
        """Ask the shop for a number of things."""
        self.needs.append(Need(self.buy, self.named, Fraction(count), True, self.metric, self.index))

    def line(self) -> Line:
        """The line as it is shown."""
        return Line(
            self.index,
            self.kind,
            self.title,
            f"{self.cut}.",
            self.formula,
            tuple(self.numbers),
            tuple(self.notes),
            tuple(self.cautions),
            self.figure,
        )
