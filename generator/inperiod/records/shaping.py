"""A tree of YAML nodes held against a schema: values as it wants them, complaints in plain words.

Unlike a general validator this one knows where each value was written, keeps text as written where the
schema wants text, goes on after a fault with all that is sound, and is fast enough for tens of thousands of
plates. The tests hold its judgement against a general validator's.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import Any, Final

from inperiod.records.model import Mark
from inperiod.records.problems import Problem, nearest
from inperiod.records.shapes import Shape
from inperiod.records.yaml_reading import Items, Node, Scalar, Table, core_value, plain_value

MOST_COMPLAINTS = 200
"""Of one file; what is wrong with so many things is wrong with one, and the rest is only counted."""


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


def shape(node: Node, wanted: Shape, file: str) -> tuple[Fields | None, list[Problem]]:
    """The fields of a whole file and all that is wrong with them; unsound parts are left out.

    None where the file holds no fields at all.
    """
    work = _Work(file)
    if not isinstance(node, Table):
        hint = f"Start with a line such as {next(iter(wanted.fields))}: …"
        work.error(node, "This file must hold fields, each as name: value.", hint)
        return None, work.problems
    value = work.table(node, wanted, wanted.called)
    if work.unsaid:
        message = f"There is more wrong in this file: {work.unsaid} more complaints."
        work.problems.append(
            Problem.error(Mark(file), message, "Put the first ones right, then check again.")
        )
    return value, work.problems


class _Work:
    """One walk over one file. ``subject`` is how a complaint begins: a field's name, or “This plate”."""

    def __init__(self, file: str) -> None:
        self.file = file
        self.problems: list[Problem] = []
        self.unsaid = 0

    def error(self, node: Node, message: str, hint: str = "") -> Any:
        return self.error_at((node.line, node.column), message, hint)

    def error_at(self, at: tuple[int, int], message: str, hint: str) -> Any:
        if len(self.problems) < MOST_COMPLAINTS:
            self.problems.append(Problem.error(Mark(self.file, *at), message, hint))
        else:
            self.unsaid += 1
        return _INVALID

    def near(self, word: str, words: Iterable[str]) -> str | None:
        return nearest(word, words) if not self.unsaid else None

    def value(self, node: Node, wanted: Shape, subject: str) -> Any:
        match wanted.kind:
            case "either":
                return self.either(node, wanted, subject)
            case "fields":
                if isinstance(node, Table):
                    return self.table(node, wanted, subject)
                return self.no_fields(node, wanted, subject)
            case "list":
                return self.items(node, wanted, subject)
        if not isinstance(node, Scalar):
            return self.not_text(node, wanted, subject)
        match wanted.kind:
            case "text":
                return self.text(node, wanted, subject)
            case "word":
                return self.word(node, wanted, subject)
            case "integer":
                return self.integer(node, wanted, subject)
        return self.flag(node, wanted, subject)

    def either(self, node: Node, wanted: Shape, subject: str) -> Any:
        if isinstance(node, Scalar) and wanted.scalar:
            return self.value(node, wanted.scalar, subject)
        if isinstance(node, Items) or not wanted.table or not isinstance(node, Table):
            return self.not_text(node, wanted, subject)
        known = [key for key in node.entries if key in wanted.table.fields]
        if node.entries and not known:
            return self.not_text(node, wanted, subject)
        return self.table(node, wanted.table, subject)

    def text(self, node: Scalar, wanted: Shape, subject: str) -> Any:
        text = node.text
        if wanted.longest and len(text) > wanted.longest:
            message = f"{subject} is {len(text)} characters long; at most {wanted.longest} are allowed."
            return self.error(node, message, "Shorten it.")
        if node.plain and isinstance(core_value(node), bool):
            message = f"{subject} must be {wanted.expected}; {text} without quotation marks means yes or no."
            return self.error(node, message, f"If you mean the word, write '{text}'.")
        if wanted.pattern and not wanted.pattern.fullmatch(text):
            message = f"{subject} must be {wanted.expected}, not {_quoted(text)}."
            return self.error(node, message, _rewritten(text, wanted))
        return text

    def word(self, node: Scalar, wanted: Shape, subject: str) -> Any:
        if node.text in wanted.words:
            return node.text
        near = self.near(re.sub(r"\s+", "-", node.text[:100].strip().lower()), wanted.words)
        hint = f"It must be {wanted.expected}."
        if near:
            hint = f"Did you mean {near}?" + (f" {hint}" if len(wanted.words) <= 12 else "")
        return self.error(node, f"{subject} cannot be {_quoted(node.text)}.", hint)

    def integer(self, node: Scalar, wanted: Shape, subject: str) -> Any:
        value, low, high = core_value(node), wanted.low, wanted.high
        if not isinstance(value, int) or isinstance(value, bool):
            return self.error(node, f"{subject} must be {wanted.expected}, not {_quoted(node.text)}.")
        if (low is not None and value < low) or (high is not None and value > high):
            return self.error(node, f"{subject} cannot be {value}.", f"It must lie between {low} and {high}.")
        return value

    def flag(self, node: Scalar, wanted: Shape, subject: str) -> Any:
        value = core_value(node)
        if isinstance(value, bool) and (wanted.kind == "flag" or value):
            return value
        message = f"{subject} must be {wanted.expected}, not {_quoted(node.text)}."
        return self.error(node, message, _flag_hint(node.text))

    def items(self, node: Node, wanted: Shape, subject: str) -> Any:
        assert wanted.item is not None
        if not isinstance(node, Items):
            hint = "" if wanted.expected else _as_list(node)
            return self.error(node, f"{subject} must be {wanted.expected or 'a list'}.", hint)
        count = len(node.items)
        if count < wanted.fewest or (wanted.most and count > wanted.most):
            allowed = wanted.expected or f"a list of at most {wanted.most} entries"
            return self.error(node, f"{subject} must be {allowed}; here are {count} entries.")
        called = wanted.item.called.partition(" ")[2]
        entry = f"This {called}" if called else f"An entry of {subject}"
        shaped = Entries()
        for each in node.items:
            if _empty(each):
                value = self.error(
                    each, f"An entry of {subject} is empty.", "Fill it in, or take the hyphen out."
                )
            else:
                value = self.value(each, wanted.item, entry)
            if value is _INVALID:
                shaped.lost = True
            else:
                shaped.append(value)
                shaped.spots.append((each.line, each.column))
        return _INVALID if len(shaped) < wanted.fewest else shaped

    def table(self, node: Table, wanted: Shape, subject: str) -> Any:
        if not wanted.fields:
            return plain_value(node)
        fields = Fields(node.line, node.column)
        for key, each in node.entries.items():
            known = wanted.fields.get(key)
            if known is None:
                if wanted.open:
                    fields[key] = plain_value(each)
                else:
                    fields.left_out.append(self.unknown_field(node, key, wanted, subject))
            elif _empty(each):
                if key in wanted.required:
                    self.error(each, f"{key} has no value.", "Write it after the colon.")
            else:
                value = self.value(each, known, key)
                if value is not _INVALID:
                    fields[key] = value
                    fields.spots[key] = (each.line, each.column)
                if value is _INVALID or (isinstance(value, Entries) and value.lost):
                    fields.left_out.append(key)
        for key in wanted.required:
            if key not in node.entries and key not in fields.left_out:
                self.error(
                    node, f"{_capital(wanted.called) or subject} must have the field {key}.", _add(key)
                )
        if wanted.one_of:
            given = {key for key, each in node.entries.items() if not _empty(each)}
            if not any(required <= given and not forbidden & given for required, forbidden in wanted.one_of):
                message = f"{subject} is not complete, or says two things at once."
                return self.error(node, message, f"It must be {wanted.expected}.")
        return fields

    def unknown_field(self, node: Table, key: str, wanted: Shape, subject: str) -> str:
        """Complains of a field nobody knows; gives the field that was probably meant."""
        near = self.near(re.sub(r"[\s-]+", "_", key[:100].strip().lower()), wanted.fields)
        hint = f"Did you mean {near}?" if near else f"The fields here are: {', '.join(wanted.fields)}."
        if key != key.strip():
            hint = "An odd kind of blank stands beside the name: type ordinary spaces."
        elif not near and _empty(node.entries[key]):
            hint = "If it belongs to the text before the comma, put that text in quotation marks."
        self.error_at(node.keys[key], f"{_quoted(key)} is not a field of {wanted.called or subject}.", hint)
        return near or key

    def not_text(self, node: Node, wanted: Shape, subject: str) -> Any:
        """A list or a group of fields where neither can be, most often for want of quotation marks."""
        if isinstance(node, Items):
            message = f"{subject} must be {wanted.expected}, but a list stands here."
            return self.error(
                node,
                message,
                "Write it after the colon; text that starts with a bracket goes in quotation marks.",
            )
        but = "" if wanted.table else ", but a group of fields stands here"
        message = f"{subject} must be {wanted.expected}{but}."
        return self.error(node, message, _one_line(node, wanted))

    def no_fields(self, node: Node, wanted: Shape, subject: str) -> Any:
        found = "a list" if isinstance(node, Items) else _quoted(getattr(node, "text", ""))
        names = f" ({', '.join(list(wanted.fields)[:6])})" if wanted.fields else ""
        hint = "Write them below it, each as name: value, indented by two spaces."
        return self.error(node, f"{subject} must hold fields{names}, but {found} stands here.", hint)


def _empty(node: Node) -> bool:
    return type(node) is Scalar and node.plain and (not node.text or core_value(node) is None)


def _as_list(node: Node) -> str:
    """How to write as a list what stands there as text."""
    text = node.text if isinstance(node, Scalar) else ""
    if text and text[0] in _LIKE_HYPHENS:
        return f"Start each entry with a plain hyphen and a space; {text[0]} is another sign."
    if text.startswith("-"):
        return "Put a space after each hyphen."
    if text and len(text) <= 60 and not re.search(r"[\[\]{}:#]", text):
        return f"Write [{text}], or each entry on a line of its own that starts with a hyphen: - …"
    return "Write each entry on a line of its own that starts with a hyphen: - …"


_LIKE_HYPHENS = "–—‐‑‒−•·*"


def _add(key: str) -> str:
    return f"Add a line {key}: …"


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


def _quoted(text: str) -> str:
    shown = " ".join(text[:200].split())
    return f"“{shown[:60]}{'…' if len(shown) > 60 else ''}”"


def _one_line(node: Node, wanted: Shape) -> str:
    """What to write instead of a group that holds a single name and value."""
    pairs = list(node.entries.items()) if isinstance(node, Table) else []
    if len(pairs) == 1 and isinstance(pairs[0][1], Scalar):
        key, text = (" ".join(each[:60].split()) for each in (pairs[0][0], pairs[0][1].text))
        pattern = (wanted.scalar or wanted).pattern
        if pattern and pattern.fullmatch(f"{key}/{text}") and not pattern.fullmatch(f"{key}: {text}"):
            return f"Write {key}/{text}, with a slash."
        return f'If it is text with a colon in it, put it in quotation marks: "{key}: {text}".'
    return "Text with a colon or braces in it goes in quotation marks."


def _flag_hint(text: str) -> str:
    word = text[:10].strip().lower()
    if word in ("no", "off", "n", "false"):
        return "Write false."
    return "Write true." if word in ("yes", "on", "y", "true") else ""


def _rewritten(text: str, wanted: Shape) -> str:
    """The same text put into the wanted form, where that is easily done."""
    if wanted.longest and len(text) <= 200 and wanted.pattern:
        candidate = re.sub(r"\s*/\s*", "/", re.sub(r"(?<![\s/])[\s_]+(?![\s/])", "-", text.strip().lower()))
        if wanted.pattern.fullmatch(candidate):
            return f"Write {candidate}."
    odd = next((each for each in text[:200] if ord(each) > 127 and each.isalpha()), None)
    if odd and "letters" in wanted.expected:
        return f"“{odd}” is not one of the letters a–z; it may only look like one."
    return ""
