"""A tree of YAML nodes held against a JSON Schema: values as it wants them, complaints in plain words.

The schemas in ``schemas/`` are the contract. They use a small part of draft 2020-12 (see ``Shape``), and this
module reads exactly that part: unlike a general validator it knows where each value was written, keeps text
as written where the schema wants text, goes on after a fault with all that is sound, and is fast enough for
tens of thousands of plates. The tests hold its judgement against a general validator's.
"""

from __future__ import annotations

import json
import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cache
from typing import Any, Final

from inperiod.kept import kept
from inperiod.records.model import Mark
from inperiod.records.problems import Problem, nearest
from inperiod.records.yaml_reading import Items, Node, Scalar, Table, core_value, plain_value


class Fields(dict[str, Any]):
    """Shaped fields by name. ``spots`` holds line and column of each value, ``left_out`` the names of
    fields that were written but not soundly, so that their absence means nothing."""

    __slots__ = ("column", "left_out", "line", "spots")

    def __init__(self, line: int = 1, column: int = 1) -> None:
        super().__init__()
        self.line, self.column = line, column
        self.spots: dict[str, tuple[int, int]] = {}
        self.left_out: list[str] = []


class Entries(list[Any]):
    """A shaped list. ``spots`` holds line and column of each entry; ``lost`` says that some were unsound."""

    __slots__ = ("lost", "spots")

    def __init__(self) -> None:
        super().__init__()
        self.spots: list[tuple[int, int]] = []
        self.lost = False


_INVALID: Final = object()


@dataclass(frozen=True, slots=True)
class Shape:
    """One schema, its references resolved and its patterns compiled."""

    kind: str
    expected: str
    title: str = ""
    words: tuple[str, ...] = ()
    pattern: re.Pattern[str] | None = None
    longest: int = 0
    low: int | None = None
    high: int | None = None
    fewest: int = 0
    most: int = 0
    item: Shape | None = None
    fields: Mapping[str, Shape] = field(default_factory=dict)
    required: tuple[str, ...] = ()
    one_of: tuple[frozenset[str], ...] = ()
    open: bool = False
    scalar: Shape | None = None
    table: Shape | None = None


@cache
def _schema(name: str) -> Any:
    return json.loads((kept("schemas") / name).read_text(encoding="utf-8"))


@cache
def part(name: str) -> Shape:
    """The shape of one shared part, by its name under ``$defs`` of ``common.json``."""
    return _compiled({"$ref": f"common.json#/$defs/{name}"})


@cache
def shape_of(name: str) -> Shape:
    """The shape of ``schemas/<name>.json``; name is source, vocabulary, board or settings."""
    return _compiled(_schema(f"{name}.json"))


def _compiled(schema: Mapping[str, Any]) -> Shape:
    if "$ref" in schema:
        file, _, pointer = schema["$ref"].partition("#/$defs/")
        return _compiled(_schema(file)["$defs"][pointer])
    expected = schema.get("x-expected", "")
    title = schema.get("title", "")
    if "enum" in schema:
        words = tuple(schema["enum"])
        return Shape("word", expected or _either(words), title, words=words)
    if "const" in schema:
        return Shape("true", expected, title)
    if "anyOf" in schema:
        branches = [_compiled(each) for each in schema["anyOf"]]
        scalar = next((each for each in branches if each.kind == "text"), None)
        table = next((each for each in branches if each.kind == "fields"), None)
        return Shape("either", expected, title, scalar=scalar, table=table)
    kind = schema["type"]
    if kind == "object":
        fields = {name: _compiled(each) for name, each in schema.get("properties", {}).items()}
        return Shape(
            "fields",
            expected,
            title,
            fields=fields,
            required=tuple(schema.get("required", ())),
            one_of=tuple(frozenset(each["required"]) for each in schema.get("oneOf", ())),
            open=schema.get("additionalProperties", True) is not False,
        )
    if kind == "array":
        item = _compiled(schema["items"])
        return Shape(
            "list",
            expected,
            title,
            item=item,
            fewest=schema.get("minItems", 0),
            most=schema.get("maxItems", 0),
        )
    if kind == "boolean":
        return Shape("flag", expected or "true or false", title)
    if kind == "integer":
        return Shape(
            "integer",
            expected or "a whole number",
            title,
            low=schema.get("minimum"),
            high=schema.get("maximum"),
        )
    pattern = re.compile(schema["pattern"]) if "pattern" in schema else None
    return Shape("text", expected or "text", title, pattern=pattern, longest=schema.get("maxLength", 0))


def _either(words: tuple[str, ...]) -> str:
    return f"one of: {', '.join(words)}" if len(words) > 2 else " or ".join(words)


def shape(node: Node, wanted: Shape, file: str) -> tuple[Fields, list[Problem]]:
    """The fields of a whole file and all that is wrong with them; unsound parts are left out."""
    work = _Work(file)
    if not isinstance(node, Table):
        at = (node.line, node.column)
        example = next(iter(wanted.fields), "title")
        message = "This file must hold fields, each as name: value."
        return Fields(*at), [
            Problem.error(Mark(file, *at), message, f"Start with a line such as {example}: …")
        ]
    value = work.table(node, wanted, "file")
    return value, work.problems


class _Work:
    """One walk over one file."""

    def __init__(self, file: str) -> None:
        self.file = file
        self.problems: list[Problem] = []

    def error(self, node: Node, message: str, hint: str = "") -> Any:
        self.problems.append(Problem.error(Mark(self.file, node.line, node.column), message, hint))
        return _INVALID

    def value(self, node: Node, wanted: Shape, name: str) -> Any:
        kind = wanted.kind
        if kind == "either":
            branch = wanted.table if isinstance(node, Table) else wanted.scalar
            if branch is None or isinstance(node, Items):
                return self.wrong_kind(node, wanted, name)
            return self.value(node, branch, name)
        if kind == "fields":
            return (
                self.table(node, wanted, name)
                if isinstance(node, Table)
                else self.no_fields(node, wanted, name)
            )
        if kind == "list":
            return self.items(node, wanted, name) if isinstance(node, Items) else self.no_list(node, name)
        if not isinstance(node, Scalar):
            return self.wrong_kind(node, wanted, name)
        if kind == "text":
            return self.text(node, wanted, name)
        if kind == "word":
            return self.word(node, wanted, name)
        value = core_value(node)
        if kind == "integer":
            return self.integer(node, value, wanted, name)
        if not isinstance(value, bool) or (kind == "true" and value is not True):
            return self.error(
                node, f"{name} must be {wanted.expected}, not {_quoted(node.text)}.", _flag_hint(node)
            )
        return value

    def text(self, node: Scalar, wanted: Shape, name: str) -> Any:
        text = node.text
        if wanted.longest and len(text) > wanted.longest:
            return self.error(
                node,
                f"{name} is {len(text)} characters long; at most {wanted.longest} are allowed.",
                "Shorten it.",
            )
        if node.plain and isinstance(core_value(node), bool):
            return self.error(
                node,
                f"{name} must be {wanted.expected}; {text} without quotation marks means yes or no.",
                f"If you mean the word, write '{text}'.",
            )
        if wanted.pattern and not wanted.pattern.fullmatch(text):
            message = f"{name} must be {wanted.expected}, not {_quoted(text)}."
            return self.error(node, message, _suggest(text, wanted))
        return text

    def word(self, node: Scalar, wanted: Shape, name: str) -> Any:
        if node.text in wanted.words:
            return node.text
        near = nearest(node.text.strip().lower(), wanted.words)
        hint = (
            f"Did you mean {near}? It must be {wanted.expected}."
            if near
            else f"It must be {wanted.expected}."
        )
        return self.error(node, f"{name} cannot be {_quoted(node.text)}.", hint)

    def integer(self, node: Scalar, value: Any, wanted: Shape, name: str) -> Any:
        whole = isinstance(value, int) and not isinstance(value, bool)
        low, high = wanted.low, wanted.high
        if not whole or (low is not None and value < low) or (high is not None and value > high):
            limits = f" ({low} to {high})" if whole and low is not None and high is not None else ""
            return self.error(node, f"{name} must be {wanted.expected}{limits}, not {_quoted(node.text)}.")
        return value

    def items(self, node: Items, wanted: Shape, name: str) -> Any:
        shaped = Entries()
        assert wanted.item is not None
        if len(node.items) < wanted.fewest or (wanted.most and len(node.items) > wanted.most):
            allowed = wanted.expected or f"a list of at most {wanted.most} entries"
            return self.error(node, f"{name} must be {allowed}; there are {len(node.items)} entries here.")
        for each in node.items:
            if _empty(each):
                self.error(each, f"An entry of {name} is empty.", "Fill it in, or take the hyphen out.")
                continue
            value = self.value(each, wanted.item, name)
            if value is _INVALID:
                shaped.lost = True
            else:
                shaped.append(value)
                shaped.spots.append((each.line, each.column))
        return _INVALID if wanted.fewest and len(shaped) < wanted.fewest else shaped

    def table(self, node: Table, wanted: Shape, name: str) -> Any:
        if not wanted.fields and wanted.open:
            return plain_value(node)
        fields = Fields(node.line, node.column)
        for key, each in node.entries.items():
            field_shape = wanted.fields.get(key)
            if field_shape is None:
                if wanted.open:
                    fields[key] = plain_value(each)
                else:
                    fields.left_out.append(self.unknown_field(node, key, wanted))
            elif _empty(each):
                if key in wanted.required:
                    self.error(
                        each, f"{key} has no value.", f"It must be {field_shape.expected or 'filled in'}."
                    )
            else:
                value = self.value(each, field_shape, key)
                if value is _INVALID or (isinstance(value, Entries) and value.lost):
                    fields.left_out.append(key)
                if value is not _INVALID:
                    fields[key] = value
                    fields.spots[key] = (each.line, each.column)
        for key in wanted.required:
            if key not in node.entries:
                owner = (wanted.title or name).removeprefix("In Period: ").lower()
                owner = owner if owner.startswith("a ") else _with_article(owner)
                self.error(node, f"{owner.capitalize()} must have the field {key}.", f"Add a line {key}: …")
        given = {key for key, each in node.entries.items() if not _empty(each)}
        if wanted.one_of and sum(each <= given for each in wanted.one_of) != 1:
            return self.error(
                node, f"{wanted.title or name} is not complete or says two things at once.", _ONE_OF
            )
        return fields

    def unknown_field(self, node: Table, key: str, wanted: Shape) -> str:
        """Complains of a field nobody knows; gives the field that was probably meant."""
        near = nearest(key.strip().lower().replace("-", "_").replace(" ", "_"), wanted.fields)
        hint = f"Did you mean {near}?" if near else f"The fields here are: {', '.join(wanted.fields)}."
        if not near and _empty(node.entries[key]):
            hint = "If it belongs to the text before the comma, put that text in quotation marks."
        where = (wanted.title or "this group").removeprefix("In Period: ").lower()
        where = where if where.startswith(("a ", "this ")) else _with_article(where)
        message = f"{_quoted(key)} is not a field of {where}."
        self.problems.append(Problem.error(Mark(self.file, *node.keys[key]), message, hint))
        return near or key

    def wrong_kind(self, node: Node, wanted: Shape, name: str) -> Any:
        found = (
            "a list"
            if isinstance(node, Items)
            else "a group of fields"
            if isinstance(node, Table)
            else "text"
        )
        hint = "Text with a colon in it goes in quotation marks." if isinstance(node, Table) else ""
        if isinstance(node, Items):
            hint = "Text that starts with a square bracket goes in quotation marks."
        return self.error(node, f"{name} must be {wanted.expected or 'text'}, but {found} stands here.", hint)

    def no_fields(self, node: Node, wanted: Shape, name: str) -> Any:
        names = ", ".join(list(wanted.fields)[:6])
        found = "a list" if isinstance(node, Items) else _quoted(getattr(node, "text", ""))
        return self.error(
            node,
            f"{name} must hold fields{f' ({names})' if names else ''}, but {found} stands here.",
            "Write them below it, each as name: value, indented by two spaces.",
        )

    def no_list(self, node: Node, name: str) -> Any:
        return self.error(
            node,
            f"{name} must be a list.",
            "Write each entry on a line of its own that starts with a hyphen: - …",
        )


_ONE_OF = "Give term: alone, or facet: with either not_visible: true or none: true."


def _empty(node: Node) -> bool:
    return isinstance(node, Scalar) and node.plain and core_value(node) is None


def _quoted(text: str) -> str:
    shown = " ".join(text.split())
    return f"“{shown[:60]}{'…' if len(shown) > 60 else ''}”"


def _with_article(word: str) -> str:
    return f"{'an' if word[:1] in 'aeiou' else 'a'} {word}" if word else "this"


def _flag_hint(node: Scalar) -> str:
    word = node.text.strip().lower()
    if word in ("no", "off", "n", "false"):
        return "Write false."
    return "Write true." if word in ("yes", "on", "y", "true") else ""


def _suggest(text: str, wanted: Shape) -> str:
    """The same text put into the wanted form, where that is easily done."""
    if any(ord(each) > 127 and each.isalpha() for each in text) and len(text) <= 80:
        odd = next(each for each in text if ord(each) > 127 and each.isalpha())
        return f"“{odd}” is not one of the letters a–z (it may only look like one)."
    candidate = re.sub(r"[\s_]+", "-", text.strip().lower())
    if wanted.pattern and wanted.pattern.fullmatch(candidate):
        return f"Write {candidate}."
    return ""
