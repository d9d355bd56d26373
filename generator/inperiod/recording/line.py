"""One line, one feature: ``square neck``, ``insertion @hem 1 in read``, ``no collar``, ``closure ?``.

The same line as on the recording page: a name, and beside it where the term sits (``@hem``), its width, how
many (``x6``), its colour (``#white``), how it was read, and after a semicolon a note.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any

from inperiod.records.finding import NotFound, find_facet, find_feature, plain
from inperiod.records.model import Term, Vocabulary
from inperiod.records.problems import nearest
from inperiod.records.shapes import part

_NUMBER = r"[0-9]{1,4}(?:\.[0-9]{1,3}|[ -][0-9]{1,2}/[0-9]{1,2}|/[0-9]{1,2})?"
_READINGS = {"seen": "seen", "read": "read", "inferred": "inferred", "inf": "inferred"}
_NOT_VISIBLE = re.compile(r"\?|\b(?:nv|not visible)$", re.IGNORECASE)
_NONE = re.compile(r"^no(?:ne)?\s+|\bnone$", re.IGNORECASE)
_COLOUR = re.compile(r"\s#(\S+)")
_PLACE = re.compile(r"\s(?:@ ?|at )([\w-]+)", re.IGNORECASE)
_WIDTH = re.compile(rf"\s({_NUMBER}) ?(in|cm|mm|\")(?=\s|$)")
_COUNT = re.compile(r"\sx ?([1-9][0-9]{0,4})(?=\s|$)", re.IGNORECASE)
_READING = re.compile(r"\s(seen|read|inferred|inf)(?=\s|$)", re.IGNORECASE)


class Unclear(ValueError):
    """The line is no feature; the text says why, and what comes near."""


def places() -> tuple[str, ...]:
    """Where a feature may sit, as the schema has it."""
    table = part("feature").table
    return table.fields["at"].words if table else ()


def read_line(text: str, vocabulary: Vocabulary, garment: str | None = None) -> str | dict[str, Any]:
    """The feature a line means, as a source file has it: a term alone, or a table. Raises ``Unclear``."""
    rest, _, note = text.partition(";")
    said: dict[str, Any] = {}
    rest, not_visible = _taken(rest.strip(), _NOT_VISIBLE)
    rest, none = _taken(rest, _NONE)
    for name, pattern, value in _PARTS:
        rest, found = _taken(rest, pattern)
        if found:
            said[name] = value(found)
    if said.get("reading") == "seen":
        del said["reading"]
    if note.strip():
        said["note"] = note.strip()
    try:
        if none or not_visible:
            state = {"none": True} if none else {"not_visible": True}
            return {"facet": find_facet(vocabulary, rest.strip()), **state, **said}
        term = _begun(rest.strip(), vocabulary, garment) or find_feature(vocabulary, rest.strip(), garment)
    except NotFound as error:
        raise Unclear(str(error)) from None
    return {"term": term, **said} if said else term


def _begun(text: str, vocabulary: Vocabulary, garment: str | None) -> str | None:
    """The one term that a few letters mean: ``sq n`` begins the words of *square neck*."""
    letters = plain(text).split()
    found = [
        term.key
        for term in vocabulary.terms.values()
        if term.facet != "garment" and (garment is None or vocabulary.applies(term, garment))
        if letters and all(any(word.startswith(each) for word in _words(term)) for each in letters)
    ]
    return found[0] if len(found) == 1 else None


def _words(term: Term) -> list[str]:
    return plain(f"{term.label} {term.facet}").split()


def _taken(text: str, pattern: re.Pattern[str]) -> tuple[str, re.Match[str] | None]:
    """The text without what the pattern finds, and what it found."""
    found = pattern.search(text)
    if found is None:
        return text, None
    return f"{text[: found.start()]} {text[found.end() :]}".strip(), found


def _place(found: re.Match[str]) -> str:
    known, word = places(), found[1].lower()
    meant = next((each for each in known if each == word), None)
    meant = meant or next((each for each in known if each.startswith(word)), None)
    if meant:
        return meant
    near = nearest(word, known)
    others = f"Did you mean {near}?" if near else f"There are: {', '.join(known)}."
    raise Unclear(f"No place is called “{found[1]}”. {others}")


def _width(found: re.Match[str]) -> str:
    unit = "in" if found[2] == '"' else found[2]
    return f"{found[1]} {unit}"


_PARTS: tuple[tuple[str, re.Pattern[str], Callable[[re.Match[str]], Any]], ...] = (
    ("at", _PLACE, _place),
    ("width", _WIDTH, _width),
    ("count", _COUNT, lambda found: int(found[1])),
    ("colour", _COLOUR, lambda found: found[1].replace("_", " ")),
    ("reading", _READING, lambda found: _READINGS[found[1].lower()]),
)
"""What may stand beside the name, in the order a record has it."""
