"""One YAML file into a tree that remembers where every value was written.

Plain scalars keep the text they were written with: what ``1912`` or ``no`` means is decided later, by what
the record asks for at that place (``shaping``) or by the YAML 1.2 core rules (``core_value``). Everything
that makes YAML dangerous or surprising is refused here, in plain words: see ``MAX_BYTES`` and its neighbours.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Any

import yaml

from inperiod.records.model import Mark
from inperiod.records.places import MAX_BYTES
from inperiod.records.problems import Problem
from inperiod.records.yaml_words import explain

MAX_DEPTH = 60
MAX_ALIASES = 100
MAX_REPEATED = 10_000
"""Values that may come into being by repeating anchored ones; a bomb needs millions."""

MOST_SLIPS = 200
"""Complaints after which reading a file stops."""

_PARSER: Any = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
_FORBIDDEN = re.compile(
    r"[^\t\n\r\x20-\x7e\xa0-\u2027\u202a-\ud7ff\ue000-\ufefe\uff00-\ufffd\U00010000-\U0010ffff]"
)
_LINE_END = re.compile(r"\r\n|\r|\n")
_NO_COMMENT = re.compile(r"[ \t]#[^\s#]")
_LOST_TEXT = re.compile(r"[ \t]*#[^\s#]")
"""A comment has a space after its sign; ``Frock #4`` was hardly meant to have one."""

_CURLY = {"“": "”", "‘": "’", "„": "“”", "«": "»", "”": "”", "’": "’"}


@dataclass(slots=True)
class Scalar:
    """A single value as written; ``plain`` when it stood there without quotes."""

    text: str
    plain: bool
    line: int
    column: int


@dataclass(slots=True)
class Items:
    """A list."""

    line: int
    column: int
    items: list[Node] = field(default_factory=list)


@dataclass(slots=True)
class Table:
    """Names with values; ``keys`` says where each name was written."""

    line: int
    column: int
    entries: dict[str, Node] = field(default_factory=dict)
    keys: dict[str, tuple[int, int]] = field(default_factory=dict)


Node = Scalar | Items | Table


@dataclass(frozen=True, slots=True)
class Document:
    """What a file held: ``root`` is None where it could not be read or was empty."""

    root: Node | None
    problems: tuple[Problem, ...]


_INT = re.compile(r"[-+]?[0-9]{1,15}")
_FLOAT = re.compile(r"[-+]?(?:\.[0-9]{1,30}|[0-9]{1,30}(?:\.[0-9]{0,30})?)(?:[eE][-+]?[0-9]{1,3})?")
_WORDS: dict[str, bool | None] = {
    **dict.fromkeys(("", "~", "null", "Null", "NULL"), None),
    **dict.fromkeys(("true", "True", "TRUE"), True),
    **dict.fromkeys(("false", "False", "FALSE"), False),
}


def core_value(scalar: Scalar) -> str | int | float | bool | None:
    """The value of a scalar by the core schema of YAML 1.2.2 (§10.3.2), less its rarities.

    Octal, hexadecimal, infinities and numbers of more than 15 digits stay text: nobody who records dress
    means them.
    """
    text = scalar.text
    if not scalar.plain:
        return text
    if text in _WORDS:
        return _WORDS[text]
    if _INT.fullmatch(text):
        return int(text)
    return float(text) if _FLOAT.fullmatch(text) else text


def plain_value(node: Node) -> Any:
    """A node as ordinary lists, dictionaries and core values, without positions."""
    if isinstance(node, Scalar):
        return core_value(node)
    if isinstance(node, Items):
        return [plain_value(each) for each in node.items]
    return {name: plain_value(each) for name, each in node.entries.items()}


class _Refused(Exception):
    def __init__(self, problem: Problem) -> None:
        self.problem = problem


def read_yaml(data: bytes, file: str) -> Document:
    """Read one YAML document. Never raises for any bytes; every problem has a line and column from 1."""
    builder = _Builder(file)
    try:
        text = _decoded(data, file)
        if _NO_COMMENT.search(text):
            builder.lines = line_ends(text)
        root = builder.build(events(text))
    except _Refused as refused:
        return Document(None, (*builder.problems, refused.problem))
    except yaml.YAMLError as error:
        return Document(None, (*builder.problems, explain(error, line_ends(text), file)))
    return Document(root, tuple(builder.problems))


def events(text: str) -> Iterator[Any]:
    """The parser's events of a text. Raises ``yaml.YAMLError``."""
    found: Iterator[Any] = yaml.parse(text, Loader=_PARSER)
    return found


def line_ends(text: str) -> list[str]:
    """The lines of a text, without their ends: those that YAML and editors agree on."""
    return _LINE_END.split(text)


def _decoded(data: bytes, file: str) -> str:
    """The file's text without a byte order mark, or a refusal that says which byte is wrong and where."""
    if len(data) > MAX_BYTES:
        raise _Refused(
            Problem.error(
                Mark(file),
                f"This file is larger than {MAX_BYTES // 1_000_000} MB, too large for a record.",
                "Split it into several files, and keep pictures in the folder images.",
            )
        )
    if data.startswith((b"\xff\xfe", b"\xfe\xff")):
        raise _Refused(Problem.error(Mark(file), "This file is saved as UTF-16.", "Save the file as UTF-8."))
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        # The bytes that were read: without the mark, which ``error.start`` does not count.
        raise _Refused(_bad_byte(error.object, error.start, file)) from None
    if bad := _FORBIDDEN.search(text):
        line, column = _position(text, bad.start())
        raise _Refused(
            Problem.error(
                Mark(file, line, column),
                f"There is an invisible character here that does not belong in text (U+{ord(bad[0]):04X}).",
                "Delete it; it often comes along when text is pasted.",
            )
        )
    return text


def _position(text: str, index: int) -> tuple[int, int]:
    before = _LINE_END.split(text[:index])
    return len(before), len(before[-1]) + 1


def _bad_byte(data: bytes, start: int, file: str) -> Problem:
    line, column = _position(data[:start].decode("utf-8", errors="replace"), start)
    byte = data[start]
    guess = bytes([byte]).decode("cp1252", errors="replace")
    meant = f" (perhaps meant as {guess})" if guess.isprintable() and guess != "\ufffd" else ""
    return Problem.error(
        Mark(file, line, column),
        f"This file is not saved as UTF-8: byte 0x{byte:02X} stands here{meant}.",
        "Save the file as UTF-8 in your editor.",
    )


@dataclass(slots=True)
class _Open:
    """A list or table still being read.

    ``key`` is the name that awaits its value, with its place; a name of None is one that was refused.
    """

    node: Items | Table
    anchor: str | None
    started: int
    height: int = 1
    """How many lists and tables lie inside each other here, this one included."""
    key: tuple[str | None, tuple[int, int]] | None = None


class _Builder:
    """Builds the tree from parser events, without recursion, so that deep nesting costs nothing."""

    def __init__(self, file: str) -> None:
        self.file = file
        self.problems: list[Problem] = []
        self.anchors: dict[str, tuple[Node, int, int]] = {}
        """By name: the node, how many values it holds, how many levels."""
        self.aliases = self.repeated = self.count = self.height = 0
        self.lines: list[str] = []
        """The lines, where some text may have been taken for a comment; else none."""

    def complain(self, at: tuple[int, int], message: str, hint: str) -> None:
        if len(self.problems) >= MOST_SLIPS:
            raise self.refuse(
                at, "From here on this file is not read: too much is wrong.", "Mend the top first."
            )
        self.problems.append(Problem.error(Mark(self.file, *at), message, hint))

    def refuse(self, at: tuple[int, int], message: str, hint: str) -> _Refused:
        return _Refused(Problem.error(Mark(self.file, *at), message, hint))

    def build(self, events: Iterator[Any]) -> Node | None:
        """The root of the document; None for an empty one."""
        root: Node | None = None
        stack: list[_Open] = []
        documents = 0
        for event in events:
            match event:
                case yaml.ScalarEvent():
                    node: Node = self.scalar(event)
                case yaml.AliasEvent():
                    node = self.alias(event, len(stack))
                case yaml.MappingStartEvent() | yaml.SequenceStartEvent():
                    stack.append(self.opened(event, len(stack)))
                    continue
                case yaml.MappingEndEvent() | yaml.SequenceEndEvent():
                    node = self.closed(stack.pop())
                case yaml.DocumentStartEvent():
                    documents += 1
                    if documents > 1:
                        raise self.refuse(_at(event), *_SECOND)
                    continue
                case _:
                    continue
            if stack:
                stack[-1].height = max(stack[-1].height, self.height + 1)
                self.place(stack[-1], node)
            else:
                root = node
        empty = isinstance(root, Scalar) and root.plain and not root.text
        return None if empty else root

    def opened(self, event: Any, depth: int) -> _Open:
        at = _at(event)
        if depth >= MAX_DEPTH:
            raise self.refuse(at, *_DEEP)
        self.tag(event, at)
        self.count += 1
        node = Table(*at) if isinstance(event, yaml.MappingStartEvent) else Items(*at)
        return _Open(node, event.anchor, self.count)

    def closed(self, it: _Open) -> Node:
        self.height = it.height
        if it.anchor:
            self.anchors[it.anchor] = (it.node, self.count - it.started + 1, it.height)
        return it.node

    def scalar(self, event: Any) -> Scalar:
        at = _at(event)
        self.tag(event, at)
        self.count += 1
        self.height = 0
        text: str = event.value
        plain = not event.style
        if plain and text[:1] in _CURLY and len(text) > 1 and text[-1] in _CURLY[text[0]]:
            self.curly(at, text)
        if plain and self.lines:
            self.lost_text(event)
        if not text.isascii() and any("\ud800" <= each <= "\udfff" for each in text):
            raise self.refuse(at, "This text holds half a character (a lone surrogate).", "Type it again.")
        if not plain and "\0" in text:
            raise self.refuse(at, "This text holds a NUL character (\\0).", "Take it out.")
        node = Scalar(text, plain, *at)
        if event.anchor:
            self.anchors[event.anchor] = (node, 1, 0)
        return node

    def curly(self, at: tuple[int, int], text: str) -> None:
        if len(self.problems) < MOST_SLIPS:
            message = f"The curly quotation marks {text[0]} and {text[-1]} are kept as part of the text here."
            hint = 'Take them out, or put straight ones around them: "…".'
            self.problems.append(Problem.warning(Mark(self.file, *at), message, hint))

    def lost_text(self, event: Any) -> None:
        """Warn where the end of a value may have been taken for a comment."""
        end = event.end_mark
        line = self.lines[end.line] if end.line < len(self.lines) else ""
        # Matched where it stands: a line may be long and hold a million values.
        if len(self.problems) < MOST_SLIPS and (found := _LOST_TEXT.match(line, end.column)):
            at = (end.line + 1, found.end() - 1)
            short = _short(line[end.column :].strip())
            message = f"What follows the sign # is taken for a comment, not for text: {short}"
            hint = "Put the whole value in quotation marks, or a space after the sign if it is a comment."
            self.problems.append(Problem.warning(Mark(self.file, *at), message, hint))

    def alias(self, event: Any, depth: int) -> Node:
        at = _at(event)
        self.aliases += 1
        if event.anchor not in self.anchors:
            message = f"*{event.anchor} repeats something marked &{event.anchor}, and nothing above is."
            hint = "If the asterisk is part of your text, put the text in quotation marks."
            raise self.refuse(at, message, hint)
        node, size, self.height = self.anchors[event.anchor]
        if depth + self.height > MAX_DEPTH:
            raise self.refuse(at, *_DEEP)
        self.repeated += size
        self.count += size
        if self.aliases > MAX_ALIASES or self.repeated > MAX_REPEATED:
            raise self.refuse(at, "Too much is repeated by & and * in this file.", "Write the repeats out.")
        return node

    def tag(self, event: Any, at: tuple[int, int]) -> None:
        if event.tag is not None and event.tag != "!":
            raise self.refuse(
                at,
                "An exclamation mark at the start of a value has a technical meaning that is not used here.",
                "Put the value in quotation marks.",
            )

    def place(self, it: _Open, node: Node) -> None:
        """Put a finished node into the list or table that is open around it."""
        if isinstance(it.node, Items):
            it.node.items.append(node)
        elif it.key is None:
            it.key = self.key(it.node, node)
        else:
            name, at = it.key
            it.key = None
            if name is not None:
                it.node.entries[name] = node
                it.node.keys[name] = at

    def key(self, table: Table, node: Node) -> tuple[str | None, tuple[int, int]]:
        """The name of the next entry; None as the name of one that is refused and left out."""
        at = (node.line, node.column)
        if not isinstance(node, Scalar):
            self.complain(at, "A list or group stands here where a field name was expected.", _BRACES)
            return None, at
        name = node.text
        if name == "<<" and node.plain:
            self.complain(at, "Merging with << is not used here.", "Write the fields out.")
            return None, at
        if name in table.entries:
            first = table.keys[name][0]
            self.complain(
                at,
                f"{name} is given twice; it stands on line {first} already.",
                "Keep one of the two, or put several values in a list.",
            )
            return None, at
        return name, at


def _short(text: str) -> str:
    return f"“{text[:40]}{'…' if len(text) > 40 else ''}”."


_DEEP = (f"Lists and entries are nested more than {MAX_DEPTH} deep here.", "Make it flatter.")
_SECOND = (
    "A second document starts here: one file holds one record.",
    "Take out the line --- or move what follows it into a file of its own.",
)
_BRACES = "Curly braces {…} need name: value pairs; put text that starts with a brace in quotation marks."


def _at(event: Any) -> tuple[int, int]:
    mark = event.start_mark
    return mark.line + 1, mark.column + 1
