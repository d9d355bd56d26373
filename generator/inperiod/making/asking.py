"""Reading the fields of one mapping on a board: every slip becomes a problem, none stops the next field."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from fractions import Fraction
from itertools import groupby
from typing import Any

from inperiod.making.drafts import Draft
from inperiod.making.measures import (
    EXPECTED,
    Measure,
    UnreadableMeasure,
    number_text,
    quoted,
    read_measure,
    read_number,
    said,
    tidied,
)
from inperiod.making.values import MakingProblem

COMMON = ("kind", "what", "at", "note", "buy")
MOST = 400
MOST_EDGES = 60
LONGEST_TEXT = 300


class CannotWorkOut(Exception):
    """This mapping's problems are already noted; there is no line for it."""


@dataclass(frozen=True, slots=True)
class Edge:
    """One named length of a list; ``name`` is empty where none was given."""

    name: str
    inches: Fraction


@dataclass
class Asked:
    """One mapping being read. ``metric`` is that of the first measure read; imperial until then.

    Each reader notes a problem and gives a harmless value where it cannot read; ``settle`` then stops.
    """

    index: int
    given: Mapping[str, Any]
    problems: list[MakingProblem] = field(default_factory=list)
    _metric: bool | None = None
    _used: list[str] = field(default_factory=list)
    _stop: bool = False
    _looked: bool = False

    @property
    def metric(self) -> bool:
        return bool(self._metric)

    @property
    def asked_for(self) -> tuple[str, ...]:
        """The fields looked for so far."""
        return tuple(self._used)

    def has(self, name: str) -> bool:
        self._use(name)
        return self.given.get(name) is not None

    def wrong(self, name: str | None, message: str, hint: str) -> None:
        """Note a problem that stops this line."""
        self.problems.append(MakingProblem(self.index, name, message, hint))
        self._stop = True

    def settle(self) -> None:
        """Stop where anything was wrong; name fields that nothing asked for. Raises ``CannotWorkOut``."""
        self._look()
        if self._stop:
            raise CannotWorkOut

    def _look(self) -> None:
        if self._looked:
            return
        self._looked = True
        known = {*COMMON, *self._used}
        for name in self.given:
            if name not in known:
                message, hint = f"{quoted(name)} is not a field here.", f"One of: {', '.join(self._used)}."
                self.problems.append(MakingProblem(self.index, name, message, hint))

    def take(self, inner: Asked, place: str) -> None:
        """Take over the problems of a mapping inside this one; ``place`` says where it stands."""
        inner._look()
        for problem in inner.problems:
            self.problems.append(replace(problem, field=place, message=f"{place}: {problem.message}"))
        self._stop = self._stop or inner._stop

    def measure(
        self,
        name: str,
        default: tuple[str, str] | None = None,
        *,
        least: str | None = None,
        most: str | None = None,
    ) -> Fraction:
        """A length in inches. ``default`` is (imperial, metric); without one the field must be there.

        Lengths are above nothing, except where ``least`` is given: then from that up.
        """
        if not self.has(name):
            if default is None:
                self.wrong(name, f"{name} is missing.", f"Expected {EXPECTED}.")
                return Fraction(1)
            return read_measure(default[self.metric]).inches
        return self._length(name, self.given[name], least, most)

    def _length(
        self, name: str, value: object, least: str | None = None, most: str | None = None
    ) -> Fraction:
        try:
            read = Measure(Fraction(0), self.metric) if _nothing(value) else read_measure(value)
        except UnreadableMeasure as slip:
            self.wrong(name, f"{name}: {slip}", f"Expected {slip.expected}.")
            return Fraction(1)
        low = read_measure(least).inches if least else None
        if (low is None and read.inches <= 0) or (low is not None and read.inches < low):
            self.wrong(
                name, f"{name}: {quoted(value)} is too little.", f"Expected {least or 'more than nothing'}."
            )
            return Fraction(1)
        if most and read.inches > read_measure(most).inches:
            self.wrong(name, f"{name}: {quoted(value)} is too much.", f"Expected at most {most}.")
            return Fraction(1)
        if self._metric is None and not _nothing(value):
            self._metric = read.metric
        return read.inches

    def edges(self, name: str) -> tuple[Edge, ...]:
        """One length, a list of them, or names with a length or a list each; at least one."""
        value = self.given.get(name)
        self._use(name)
        entries: list[tuple[str, object]]
        if isinstance(value, Mapping):
            entries = [(str(key), each) for key, at_key in value.items() for each in _listed(at_key)]
        else:
            entries = [("", each) for each in _listed(value)]
        if value is None or not entries:
            self.wrong(
                name,
                f"{name} is missing.",
                f"Expected {EXPECTED}; or several, in a list or each with its name.",
            )
            entries = []
        if len(entries) > MOST_EDGES:
            self.wrong(
                name, f"{name} has more than {MOST_EDGES} lengths.", "Expected fewer; make another line."
            )
            entries = []
        return tuple(Edge(called, self._length(name, each)) for called, each in entries)

    def number(
        self, name: str, default: str | None = None, *, least: str | None = None, most: str | None = None
    ) -> Fraction:
        """A number without a unit, from ``least`` to ``most``."""
        if not self.has(name):
            if default is None:
                self.wrong(name, f"{name} is missing.", "Expected a number, such as 2, 1.5 or 1 1/2.")
                return Fraction(1)
            return read_number(default)
        value = self.given[name]
        try:
            found = read_number(value)
        except UnreadableMeasure as slip:
            self.wrong(name, f"{name}: {slip}", f"Expected {slip.expected}.")
            return Fraction(1)
        if (least and found < read_number(least)) or (most and found > read_number(most)):
            reach = (
                f"from {least} to {most}"
                if least and most
                else f"from {least} up"
                if least
                else f"up to {most}"
            )
            self.wrong(name, f"{name}: {quoted(value)} is out of reach.", f"Expected a number {reach}.")
            return Fraction(1)
        return found

    def count(self, name: str, default: int | None = None, *, least: int = 1, most: int = MOST) -> int:
        """A whole number from ``least`` to ``most``."""
        found = self.number(name, None if default is None else str(default))
        if not self.has(name):
            return int(found)
        if found.denominator != 1 or not least <= found <= most:
            if not any(problem.field == name for problem in self.problems):
                message = f"{name}: {quoted(self.given[name])} is not a number of pieces."
                self.wrong(name, message, f"Expected a whole number from {least} to {most}.")
            return least
        return int(found)

    def share(self, name: str) -> Fraction:
        """A part of the whole, below a half: ``5 %`` or ``0.05``; nothing where it is not given."""
        if not self.has(name):
            return Fraction(0)
        value = self.given[name]
        try:
            per_cent = isinstance(value, str) and value.strip(" ").endswith("%")
            found = read_number(str(value).strip(" ")[:-1] if per_cent else value) / (100 if per_cent else 1)
        except UnreadableMeasure:
            found = Fraction(1)
        if not 0 <= found < Fraction(1, 2):
            self.wrong(name, f"{name}: {quoted(value)} is not a share below a half.", "Expected 5 % or 0.05.")
            return Fraction(0)
        return found

    def choice(self, name: str, words: Sequence[str], default: str | None = None) -> str:
        """One of the words."""
        if not self.has(name) and default is not None:
            return default
        value = self.given.get(name)
        if isinstance(value, str) and value in words:
            return value
        message = f"{name}: {quoted(value)} is not known." if self.has(name) else f"{name} is missing."
        self.wrong(name, message, f"Expected one of: {', '.join(words)}.")
        return words[0]

    def flag(self, name: str) -> bool:
        """true or false; false where it is not given."""
        value = self.given.get(name)
        if self.has(name) and not isinstance(value, bool):
            self.wrong(name, f"{name}: {quoted(value)} is neither true nor false.", "Expected true or false.")
        return value is True

    def text(self, name: str, default: str = "") -> str:
        """Words on one line, as written."""
        if not self.has(name):
            return default
        return name_text(self.given[name]) or default

    def draft(self, title: str) -> Draft:
        """The line to be filled in: its title is the board's ``what``, else the given one; then ``at``."""
        called = self.text("what", title)
        place = self.text("at")
        draft = Draft(
            index=self.index,
            kind=str(self.given.get("kind")),
            title=f"{called}, {place}" if place else called,
            metric=self.metric,
            buy=self.text("buy", called),
            named=self.has("buy"),
        )
        if note := self.text("note"):
            draft.note(note)
        return draft

    def sum_in_words(self, edges: Sequence[Edge]) -> str:
        """``neck 34 in + armholes 2 × 17 in = 68 in``; the one length alone where there is one."""
        parts = []
        for (name, inches), alike in groupby(edges, key=lambda each: (each.name, each.inches)):
            count = len(list(alike))
            times = f"{count} × " if count > 1 else ""
            parts.append(f"{name} {times}{said(inches, self.metric)}".strip(" "))
        if len(edges) == 1:
            return parts[0]
        return f"{' + '.join(parts)} = {said(sum((each.inches for each in edges), Fraction(0)), self.metric)}"

    def _use(self, name: str) -> None:
        if name not in self._used:
            self._used.append(name)


def name_text(value: object) -> str:
    """A value used as a name; anything but text and numbers is none."""
    if isinstance(value, int | float) and not isinstance(value, bool):
        return number_text(value) or ""
    return tidied(value)[:LONGEST_TEXT] if isinstance(value, str) else ""


def _nothing(value: object) -> bool:
    """0, with or without quotation marks, needs no unit."""
    return value in ("0", 0) and not isinstance(value, bool)


def _listed(value: object) -> list[object]:
    return list(value) if isinstance(value, list | tuple) else [value]
