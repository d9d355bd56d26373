"""A schema for CSL-JSON 1.0.2.

Types and variables come from the CSL schema that the PyPI package ``citeproc-py`` carries (csl-types.rnc,
csl-variables.rnc); the shapes of names and dates from the CSL-JSON data schema, from memory.
"""

from __future__ import annotations

import importlib.util
import re
from pathlib import Path
from typing import Any

NAME = {
    "type": "object",
    "properties": {
        key: {"type": "string"}
        for key in ("family", "given", "dropping-particle", "non-dropping-particle", "suffix", "literal")
    },
    "additionalProperties": False,
}
DATE = {
    "type": "object",
    "properties": {
        "date-parts": {
            "type": "array",
            "minItems": 1,
            "maxItems": 2,
            "items": {
                "type": "array",
                "minItems": 1,
                "maxItems": 3,
                "items": {"type": ["string", "number"]},
            },
        },
        "season": {"type": ["string", "number"]},
        "circa": {"type": ["string", "number", "boolean"]},
        "literal": {"type": "string"},
        "raw": {"type": "string"},
    },
    "additionalProperties": False,
}


def csl_data_schema() -> dict[str, Any]:
    """A JSON Schema of an array of CSL items."""
    variables = _rules("csl-variables.rnc")
    fields: dict[str, Any] = {
        "id": {"type": "string"},
        "type": {"enum": _rules("csl-types.rnc")["item-types"]},
    }
    shapes: dict[str, Any] = {
        "dates": DATE,
        "names": {"type": "array", "items": NAME},
        "numbers": {"type": ["string", "number"]},
        "titles": {"type": "string"},
        "strings": {"type": "string"},
    }
    for group, shape in shapes.items():
        fields |= {name: shape for name in variables[f"variables.{group}"]}
    fields["custom"] = {"type": "object"}
    item = {"type": "object", "required": ["id", "type"], "properties": fields, "additionalProperties": False}
    return {"type": "array", "items": item}


def _rules(name: str) -> dict[str, list[str]]:
    """The quoted words of each rule of a RELAX NG compact file."""
    found = importlib.util.find_spec("citeproc")
    assert found
    assert found.origin
    text = (Path(found.origin).parent / "data/schema/schemas/styles" / name).read_text("utf-8")
    rules = re.split(r"^\s*([\w.-]+) =\s*$", text, flags=re.MULTILINE)
    return {rule: re.findall(r'"([^"]+)"', body) for rule, body in zip(rules[1::2], rules[2::2], strict=True)}
