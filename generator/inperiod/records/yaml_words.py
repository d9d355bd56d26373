"""What a YAML parser's error means, in the words of someone who never heard of YAML.

The parser says where it gave up, seldom what went wrong; the line itself usually tells. Each slip is one
small function; the first that recognises the line speaks. The order of ``SLIPS`` is the order of trust.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass

import yaml

from inperiod.records.model import Mark
from inperiod.records.problems import Problem


@dataclass(frozen=True, slots=True)
class Stop:
    """Where the parser stopped: 0-based line and column, the lines, and what it said."""

    lines: Sequence[str]
    line: int
    column: int
    said: str
    since: tuple[int, int] | None

    @property
    def text(self) -> str:
        return self.lines[self.line] if self.line < len(self.lines) else ""


LONGEST_LINE = 2000
"""Characters of a line that are looked at for a slip: patterns stay quick, and nobody reads further."""

Said = tuple[int, int, str, str]
"""0-based line and column, message, hint."""


def explain(error: yaml.YAMLError, lines: Sequence[str], file: str) -> Problem:
    """One parser error as a problem with a 1-based position inside the file."""
    stop = _stop(error, [each[:LONGEST_LINE] for each in lines])
    for slip in SLIPS:
        if said := slip(stop):
            line, column, message, hint = said
            return Problem.error(Mark(file, line + 1, column + 1), message, hint)
    return Problem.error(
        Mark(file, stop.line + 1, stop.column + 1),
        "This line, or the one above it, is not written the way records are.",
        "Each field is name: value; what belongs to it is indented by two spaces. Text with a colon, a # or "
        "other signs in it goes in quotation marks.",
    )


def _stop(error: yaml.YAMLError, lines: Sequence[str]) -> Stop:
    mark = getattr(error, "problem_mark", None)
    context = getattr(error, "context_mark", None)
    said = f"{getattr(error, 'context', '') or ''} {getattr(error, 'problem', '') or error}"
    last = max(len(lines) - 1, 0)
    line = min(mark.line, last) if mark else 0
    column = mark.column if mark else 0
    since = (min(context.line, last), context.column) if context else None
    return Stop(lines, line, column, said, since)


def _tab(stop: Stop) -> Said | None:
    for line in (stop.line, stop.line - 1):
        text = stop.lines[line] if 0 <= line < len(stop.lines) else ""
        indent = text[: len(text) - len(text.lstrip())]
        if "\t" in indent and ("tab" in stop.said or "token" in stop.said or "expected" in stop.said):
            return (
                line,
                indent.index("\t"),
                "This line is indented with a tab.",
                "Indent with spaces: two for each step.",
            )
    return None


def _other_tab(stop: Stop) -> Said | None:
    if stop.text[stop.column : stop.column + 1] == "\t":
        return stop.line, stop.column, "A tab stands here where a space belongs.", "Type one space instead."
    return None


def _text_after_bar(stop: Stop) -> Said | None:
    """``note: | text`` and, on the lines after ``note: |``, text that is not indented."""
    if "block scalar" in stop.said and "comment or line break" in stop.said:
        message = "Nothing may follow the sign | or > on its line."
        return stop.line, stop.column, message, "Start the text on the next line, two spaces further in."
    line = stop.since[0] if stop.since and "could not find" in stop.said else stop.line
    before = next((each for each in reversed(stop.lines[:line]) if each.strip()), "")
    if re.search(r":\s+[|>][-+0-9]*\s*$", before) and ("expected" in stop.said or "find" in stop.said):
        message = "The text after | or > must be indented more deeply than the name of its field."
        indent = len(stop.lines[line]) - len(stop.lines[line].lstrip())
        return line, indent, message, "Indent all its lines by two more spaces."
    return None


def _open_quote(stop: Stop) -> Said | None:
    if "quoted scalar" in stop.said and stop.since:
        line, column = stop.since
        return line, column, "The quotation mark opened here is never closed.", _CLOSE_QUOTE
    return None


_CLOSE_QUOTE = (
    "Close it with the same mark at the end of the value. If it is an apostrophe, put double marks "
    "around the whole value."
)


def _escape(stop: Stop) -> Said | None:
    if "escape" in stop.said or "hexdecimal" in stop.said:
        return (
            stop.line,
            stop.column,
            "A backslash inside double quotation marks has a technical meaning, and this one is not known.",
            "Use single quotation marks '…' around text with a backslash.",
        )
    return None


def _text_after_end(stop: Stop) -> Said | None:
    """``caption: "Frock" in white``, ``note: 'the lady's own'``, ``note: [sic] frock``: text after an end."""
    before = stop.text[: stop.column]
    bracketed = re.match(r"\s*(?:-\s+)*[\w-]+:\s+(\[[^\]]*\]|\{[^}]*\})\s*(?=[^\s#])", stop.text)
    if bracketed and "expected" in stop.said:
        return (
            stop.line,
            bracketed.end(),
            "The value ended at the closing bracket, but the line goes on.",
            "If the brackets are part of the text, put the whole value in quotation marks.",
        )
    if re.search(r"(?:^|[:\-]\s+)(['\"]).*\1\s*$", before) and "expected" in stop.said:
        return (
            stop.line,
            stop.column,
            "The value ended at the quotation mark, but the line goes on.",
            "Put the whole value between one pair of marks, of the kind that does not occur inside it; "
            "inside '…' an apostrophe is written twice.",
        )
    return None


def _colon(stop: Stop) -> Said | None:
    if "mapping values are not allowed" not in stop.said:
        return None
    before = stop.text[: stop.column]
    first = re.match(r"\s*(?:-\s+)*[^\s:][^:]*:\s+(?=\S)", before)
    if first:
        curly = " Curly marks “ ” do not count as quotation marks." if "“" in before else ""
        return (
            stop.line,
            stop.column,
            "There is a second colon in this line, so the value cannot be told from a field name.",
            f'Put the whole value in straight quotation marks: "…".{curly}',
        )
    return (
        stop.line,
        len(before) - len(before.lstrip()),
        "This line is indented more deeply than the fields it belongs with.",
        "Start it in the same column as its neighbours above.",
    )


def _no_colon(stop: Stop) -> Said | None:
    if "could not find expected ':'" not in stop.said:
        return None
    line = stop.since[0] if stop.since else stop.line
    text = stop.lines[line]
    message = "This line has no colon after the name of a field."
    if re.match(r"\s*(?:-\s+)*[\w-]+:\S", text):
        message = "There is no space after the colon in this line."
    return line, len(text) - len(text.lstrip()), message, "Write name: value, with a space after the colon."


def _sign_at_start(stop: Stop) -> Said | None:
    sign = stop.text[stop.column : stop.column + 1]
    if sign in ("@", "`", "%", "|", ">") and "token" in stop.said:
        return (
            stop.line,
            stop.column,
            f"A value cannot start with {sign}.",
            "Put the value in quotation marks.",
        )
    if "anchor" in stop.said or "alias" in stop.said:
        return (
            stop.line,
            stop.column,
            "A value that starts with * or & has a technical meaning.",
            "Put the value in quotation marks.",
        )
    if "tag" in stop.said:
        return (
            stop.line,
            stop.column,
            "A value that starts with an exclamation mark has a technical meaning.",
            "Put the value in quotation marks.",
        )
    return None


def _bracket(stop: Stop) -> Said | None:
    if "flow" not in stop.said:
        return None
    line, column = stop.since or (stop.line, stop.column)
    return (
        line,
        column,
        "The bracket opened here is not closed, or a comma is missing inside it.",
        "Close it on the same line, with commas between the parts; put text that holds a comma, a colon or a "
        "bracket in quotation marks.",
    )


def _list_among_fields(stop: Stop) -> Said | None:
    text = stop.text
    if re.search(r":\s+-\s", text[: stop.column + 2]) and "not allowed" in stop.said:
        message = "A list cannot start on the line of its field."
        hint = "Start each entry on a line of its own below it, indented by two spaces."
        return stop.line, stop.column, message, hint
    if text.lstrip().startswith("-") and ("expected" in stop.said or "not allowed" in stop.said):
        return (
            stop.line,
            len(text) - len(text.lstrip()),
            "A list entry starts here (a hyphen) where a field or the end of the group was expected.",
            "Indent all entries of a list alike, below the field they belong to.",
        )
    return None


def _indent(stop: Stop) -> Said | None:
    if "expected" not in stop.said or not stop.text.strip():
        return None
    return (
        stop.line,
        len(stop.text) - len(stop.text.lstrip()),
        "This line does not start in the same column as the lines it belongs with.",
        "Fields of one group start in one column; what belongs to a field is indented by two spaces.",
    )


SLIPS: tuple[Callable[[Stop], Said | None], ...] = (
    _tab,
    _other_tab,
    _text_after_bar,
    _escape,
    _open_quote,
    _text_after_end,
    _colon,
    _no_colon,
    _sign_at_start,
    _bracket,
    _list_among_fields,
    _indent,
)
