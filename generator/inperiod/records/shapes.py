"""The schemas of ``schemas/``, read into a form that can be walked quickly.

They use a small part of JSON Schema draft 2020-12, and exactly that part is known here: ``type`` (object,
array, string, number, integer, boolean), ``properties``, ``required``, ``additionalProperties``, ``items``,
``minItems``, ``maxItems``, ``enum``, ``const: true``, ``pattern`` (anchored at both ends), ``maxLength``,
``minimum``, ``maximum``, ``anyOf`` of one scalar and one object, ``oneOf`` of sets of fields that are
required together and fields that are then forbidden, and ``$ref`` into ``common.json``. Two keys of our own,
which other readers ignore, carry plain words: ``x-expected`` says what a value must be, ``x-called`` what a
record is called.
"""

from __future__ import annotations

import json
import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cache
from typing import Any, Literal

from inperiod.kept import kept

Kind = Literal["fields", "list", "text", "word", "integer", "flag", "true", "either"]


@dataclass(frozen=True, slots=True)
class Shape:
    """One schema, its references resolved and its pattern compiled.

    ``kind`` decides which of the other fields matter: *fields* (``fields``, ``required``, ``one_of``,
    ``open``), *list* (``item``, ``fewest``, ``most``), *text* (``pattern``, ``longest``), *word* (``words``),
    *integer* (``low``, ``high``), *flag* (true or false), *true*, *either* (``scalar`` or ``table``).
    """

    kind: Kind
    expected: str
    called: str = ""
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
    one_of: tuple[tuple[frozenset[str], frozenset[str]], ...] = ()
    open: bool = False
    scalar: Shape | None = None
    table: Shape | None = None


@cache
def _schema(name: str) -> Any:
    return json.loads((kept("schemas") / name).read_text(encoding="utf-8"))


@cache
def part(name: str, file: str = "common.json") -> Shape:
    """The shape of one shared part, by its name under ``$defs`` of a schema file."""
    return _compiled(_schema(file)["$defs"][name])


@cache
def shape_of(name: str) -> Shape:
    """The shape of ``schemas/<name>.json``; name is source, vocabulary, board, settings or mapping."""
    return _compiled(_schema(f"{name}.json"))


def _compiled(schema: Mapping[str, Any]) -> Shape:
    if "$ref" in schema:
        file, _, name = schema["$ref"].partition("#/$defs/")
        return part(name, file)
    expected = schema.get("x-expected", "")
    called = schema.get("x-called", "")
    if "enum" in schema:
        words = tuple(schema["enum"])
        return Shape("word", expected or f"one of: {', '.join(words)}", called, words=words)
    if "const" in schema:
        return Shape("true", expected, called)
    if "anyOf" in schema:
        scalar, table = (_compiled(each) for each in schema["anyOf"])
        return Shape("either", expected, called, scalar=scalar, table=table)
    match schema["type"]:
        case "object":
            return Shape(
                "fields",
                expected,
                called,
                fields={name: _compiled(each) for name, each in schema.get("properties", {}).items()},
                required=tuple(schema.get("required", ())),
                one_of=tuple(
                    (frozenset(each["required"]), frozenset(each["properties"]))
                    for each in schema.get("oneOf", ())
                ),
                open=schema.get("additionalProperties", True) is not False,
            )
        case "array":
            item = _compiled(schema["items"])
            fewest, most = schema.get("minItems", 0), schema.get("maxItems", 0)
            return Shape("list", expected, called, item=item, fewest=fewest, most=most)
        case "boolean":
            return Shape("flag", expected or "true or false", called)
        case "integer":
            low, high = schema.get("minimum"), schema.get("maximum")
            return Shape("integer", expected or "a whole number", called, low=low, high=high)
        case _:
            pattern = re.compile(schema["pattern"]) if "pattern" in schema else None
            longest = schema.get("maxLength", 0)
            return Shape("text", expected or "text", called, pattern=pattern, longest=longest)
