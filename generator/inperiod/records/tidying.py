"""Records laid out alike: two spaces a step, hyphens under their field, no stray blanks. Nothing else.

Order, comments, quotation marks and line breaks inside text stay as they are. What comes out is read again
and compared with what went in; a file whose meaning would change, or that cannot be read, is left alone.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, Literal

import yaml

from inperiod.records.files import record_files, write_whole
from inperiod.records.problems import Problem
from inperiod.records.yaml_reading import Items, Node, Scalar, Table, events, line_ends, read_yaml


@dataclass(frozen=True, slots=True)
class Tidied:
    """One file that can be laid out better: its name inside the folder, and its bytes before and after."""

    file: str
    before: bytes
    after: bytes


def tidied_files(folder: Path) -> tuple[list[Tidied], list[Problem]]:
    """The files of a catalogue folder that are not tidy, and complaints about those that cannot be read."""
    problems: list[Problem] = []
    untidy: list[Tidied] = []
    for file, data in record_files(Path(folder), problems):
        problems.extend(each for each in read_yaml(data, file).problems if each.severity == "error")
        after = tidy(data)
        if after != data:
            untidy.append(Tidied(file, data, after))
    return untidy, problems


def write_tidied(folder: Path, tidied: Tidied) -> None:
    """Put the tidy file in the place of the other, whole or not at all. Raises ``OSError``."""
    write_whole(Path(folder) / tidied.file, tidied.after)


def tidy(data: bytes) -> bytes:
    """The same record laid out tidily; the same bytes where that cannot be done safely."""
    after = laid_out(data)
    return data if after is None else after


def laid_out(data: bytes) -> bytes | None:
    """The same record laid out tidily; None where it cannot be read, or would come to mean something else."""
    before = read_yaml(data, "")
    if before.root is None or any(each.severity == "error" for each in before.problems):
        return None
    text = data.decode("utf-8-sig")
    lines = line_ends(text)
    after = _Layout(lines, _anatomy(text, lines)).text().encode("utf-8")
    root = read_yaml(after, "").root
    same_letters = "".join(text.split()) == "".join(after.decode("utf-8").split())
    return after if root is not None and same_letters and _same(before.root, root) else None


def _same(one: Node, other: Node) -> bool:
    """Whether two trees hold the same, wherever it was written."""
    if isinstance(one, Scalar):
        return isinstance(other, Scalar) and (one.text, one.plain) == (other.text, other.plain)
    if isinstance(one, Items):
        return (
            isinstance(other, Items)
            and len(one.items) == len(other.items)
            and all(map(_same, one.items, other.items))
        )
    return (
        isinstance(other, Table)
        and list(one.entries) == list(other.entries)
        and all(map(_same, one.entries.values(), other.entries.values()))
    )


@dataclass(frozen=True, slots=True)
class _Span:
    """A value of several lines (0-based, inclusive), by what its later lines are.

    *brackets*: a list or group in brackets; *text*: quoted or plain, where indentation means nothing;
    *block*: after ``|`` or ``>``, where it does.
    """

    kind: Literal["brackets", "text", "block"]
    first: int
    last: int
    column: int
    header: str = ""


@dataclass(slots=True)
class _Anatomy:
    """Where values of several lines are, and the gaps between a field's name and its value on one line."""

    spans: dict[int, _Span] = field(default_factory=dict)
    gaps: dict[int, list[tuple[int, int]]] = field(default_factory=dict)


def _anatomy(text: str, lines: list[str]) -> _Anatomy:
    found = _Anatomy()
    # Of each open list or table: whether its children alternate as name and value, and the name last met.
    open_: list[tuple[bool, list[Any]]] = []
    brackets: list[Any] = []
    for event in events(text):
        starts = isinstance(event, (yaml.ScalarEvent, yaml.AliasEvent, yaml.CollectionStartEvent))
        if starts and not brackets and open_ and open_[-1][0]:
            _note_gap(found, lines, open_[-1][1], event)
        if isinstance(event, yaml.CollectionStartEvent):
            open_.append((isinstance(event, yaml.MappingStartEvent), []))
            if event.flow_style or brackets:
                brackets.append(event)
        elif isinstance(event, yaml.CollectionEndEvent):
            open_.pop()
            if brackets:
                start, end = brackets.pop().start_mark, event.end_mark
                if not brackets and end and end.line > start.line:
                    found.spans[start.line] = _Span("brackets", start.line, end.line, start.column)
        elif isinstance(event, yaml.ScalarEvent) and not brackets:
            _note_text(found, lines, event)
    return found


def _note_gap(found: _Anatomy, lines: list[str], names: list[Any], event: Any) -> None:
    """Names and values alternate: a value closes the gap that its name opened."""
    if not names:
        names.append(event.end_mark)
        return
    end, start = names.pop(), event.start_mark
    between = lines[end.line][end.column : start.column] if end.line == start.line else ""
    # The last value of a file may be an empty one, after its last line.
    starts = lines[start.line][start.column : start.column + 1] if start.line < len(lines) else ""
    if re.fullmatch(r"[ \t]*:[ \t]+", between) and starts not in ("", "#"):
        found.gaps.setdefault(end.line, []).append((end.column, start.column))


def _note_text(found: _Anatomy, lines: list[str], event: Any) -> None:
    first, last = event.start_mark.line, event.end_mark.line
    if event.style in ("|", ">"):
        if event.end_mark.column == 0:
            last -= 1
        header = re.match(r"[|>][-+0-9]*", lines[first][event.start_mark.column :])
        shown = header[0] if header else ""
        last = min(last, len(lines) - 1)
        if "+" not in shown:
            while last > first and not lines[last].strip():
                last -= 1
        if last > first:
            found.spans[first] = _Span("block", first, last, event.start_mark.column, shown)
    elif last > first:
        found.spans[first] = _Span("text", first, last, event.start_mark.column)


@dataclass(frozen=True, slots=True)
class _Level:
    """A column where entries start, as written and as laid out; ``dash`` for the hyphens of a list."""

    old: int
    new: int
    dash: bool


class _Layout:
    """Lays out one file, line by line from the top."""

    def __init__(self, lines: list[str], anatomy: _Anatomy) -> None:
        self.lines = lines
        self.anatomy = anatomy
        self.levels: list[_Level] = []
        self.waiting: list[str] = []
        self.done: list[str] = []

    def text(self) -> str:
        at = 0
        while at < len(self.lines):
            line = self.lines[at]
            bare = line.strip(" \t")
            if not bare or bare.startswith("#"):
                self.waiting.append(line)
                at += 1
            elif line.startswith(("---", "...", "%")):
                self.flush(0, 0)
                self.done.append(line.rstrip(" \t"))
                at += 1
            else:
                at = self.entry(at)
        self.flush(0, 0, self.levels)
        while self.done and not self.done[-1] and not self.ends_in_kept_blanks():
            self.done.pop()
        return "\n".join(self.done) + "\n"

    def ends_in_kept_blanks(self) -> bool:
        last = max(self.anatomy.spans.values(), key=lambda span: span.last, default=None)
        return last is not None and "+" in last.header and last.last >= len(self.lines) - 1

    def flush(self, old: int, new: int, levels: Sequence[_Level] = ()) -> None:
        """Write the blank lines and comments before an entry that moves from column ``old`` to ``new``.

        A comment moves with the entry, or with the other lines that start in its column.
        """
        columns = {**{each.old: each.new for each in levels}, old: new}
        for line in self.waiting:
            bare = line.strip(" \t")
            if bare:
                column = len(line) - len(line.lstrip(" \t"))
                self.done.append(" " * columns.get(column, new) + bare)
            elif self.done and self.done[-1]:
                self.done.append("")
        self.waiting.clear()

    def entry(self, at: int) -> int:
        """Lay out the line where an entry starts, and the later lines of its value; gives the next line."""
        line = self.lines[at]
        columns = list(_columns(line))
        ended = list(self.levels)
        level = first = self.level(*columns[0])
        self.flush(columns[0][0], first.new, ended)
        for column, dash in columns[1:]:
            level = self.level(column, dash)
        start, bare_hyphen = columns[-1]
        rest = line[start + 1 :].lstrip(" \t") if bare_hyphen else self.closed_gaps(at, start)
        hyphens = "- " * sum(dash for _, dash in columns)
        self.done.append(_stripped(" " * first.new + hyphens + rest))
        span = self.anatomy.spans.get(at)
        if span is None:
            return at + 1
        self.later_lines(span, level)
        return span.last + 1

    def closed_gaps(self, at: int, start: int) -> str:
        line = self.lines[at]
        for left, right in sorted(self.anatomy.gaps.get(at, ()), reverse=True):
            line = f"{line[:left]}: {line[right:]}"
        return line[start:]

    def level(self, column: int, dash: bool) -> _Level:
        """The level that starts at a column as written, opened where there is none yet."""
        levels = self.levels
        while levels and (
            levels[-1].old > column or (levels[-1].old == column and levels[-1].dash and not dash)
        ):
            levels.pop()
        if not levels or levels[-1].old != column or levels[-1].dash != dash:
            levels.append(_Level(column, levels[-1].new + 2 if levels else 0, dash))
        return levels[-1]

    def later_lines(self, span: _Span, level: _Level) -> None:
        lines = self.lines[span.first + 1 : span.last + 1]
        inside = level.new if span.column == level.old else level.new + 2
        if span.kind == "text":
            self.done.extend(_stripped(" " * inside + each.lstrip(" \t")) for each in lines)
            return
        shift = level.new - level.old
        if span.kind == "block" and not re.search("[0-9]", span.header):
            indents = [len(each) - len(each.lstrip(" ")) for each in lines if each.strip(" ")]
            shift = inside - min(indents, default=inside)
        for each in lines:
            indent = len(each) - len(each.lstrip(" "))
            moved = " " * max(0, indent + shift) + each[indent:]
            only_indent = len(each) == indent and indent + shift <= inside
            self.done.append(_stripped(moved) if span.kind == "brackets" or only_indent else moved)


def _columns(line: str) -> Iterator[tuple[int, bool]]:
    """Where each hyphen of a line stands, and what follows the last of them: column, and whether a hyphen."""
    at = len(line) - len(line.lstrip(" "))
    while line[at : at + 1] == "-" and line[at + 1 : at + 2] in ("", " ", "\t"):
        yield at, True
        after = line[at + 1 :]
        at += 1 + len(after) - len(after.lstrip(" \t"))
        if at >= len(line) or line[at] == "#":
            return
    yield at, False


def _stripped(line: str) -> str:
    """Without blanks at its end, unless a backslash makes the first of them part of the text."""
    bare = line.rstrip(" \t")
    return line if bare.endswith("\\") and bare != line else bare
