"""Data inside a script element or file."""

from __future__ import annotations

import json

_write = json.JSONEncoder(ensure_ascii=False, separators=(",", ":")).encode
_UNSAFE = {"<": "\\u003c", ">": "\\u003e", "&": "\\u0026", "\u2028": "\\u2028", "\u2029": "\\u2029"}


def json_in_script(value: object) -> str:
    """``value`` as JSON in which no text can end the script it stands in, or a line of it."""
    text = _write(value)
    for sign, written in _UNSAFE.items():
        text = text.replace(sign, written)
    return text
