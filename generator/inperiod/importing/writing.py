"""Records as YAML, in the house style: fields in a fixed order, quoted only where plain text would mislead.

What is written reads back equal, for any text; ``tests/importing`` tries thousands.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from typing import Any

SOURCE_ORDER = (
    *("title", "kind", "date", "on_sale", "made", "photographed", "altered", "worn"),
    *("date_basis", "date_note", "date_printed", "publisher", "creators", "container", "volume", "issue"),
    *("pages", "edition", "drafting_system", "market", "language", "held_by", "rights", "examined"),
    *("reprint_of", "publish", "note", "plates"),
)
PLATE_ORDER = (
    *("id", "locator", "date", "garment", "outfit", "wearer", "occasion", "caption", "translation", "price"),
    *("view", "medium", "treatment", "features", "same_cut_as", "image", "publish", "recorded"),
    *("confirmations", "note"),
)
DATE_FIELDS = frozenset({"date", "on_sale", "made", "photographed", "altered", "worn", "on", "accessed"})
WIDTH = 110

_PLAIN = re.compile(r"[^\W_](?:[\w .,()/'’&+;–—-]*[\w.)'’])?")
_PLAIN_ADDRESS = re.compile(r"https?://[\w./~%?=&+-]+")
_PLAIN_DATE = re.compile(r"[0-9.][0-9X./~-]*")
_NUMBER_LIKE = re.compile(r"[-+.]?[0-9][0-9a-fA-FxXoO_.,:+-]*")
# What some reader of YAML or other takes for more than text.
_OTHER_MEANING = frozenset(["true", "false", "yes", "no", "on", "off", "y", "n", "null", "nan", "inf"])


def to_yaml(value: Mapping[str, Any]) -> str:
    """A record as a YAML document: text, numbers, true, false, None, lists and tables of them.

    Short tables without tables inside are written on one line. Raises ``TypeError`` for anything else.
    """
    return "".join(f"{line}\n" for line in _table(value)) or "{}\n"


def source_yaml(source: Mapping[str, Any]) -> str:
    """A source with its plates, the fields of each in the house order, empty ones left out.

    A field that is not in the order comes last. A feature that is a term alone is written short.
    """
    ordered = in_order(source, SOURCE_ORDER)
    if plates := ordered.get("plates"):
        ordered["plates"] = [_plate(each) for each in plates]
    return to_yaml(ordered)


def in_order(record: Mapping[str, Any], order: Sequence[str]) -> dict[str, Any]:
    """The fields that have something in them, by ``order``, unknown ones last."""
    names = [name for name in order if name in record] + [name for name in record if name not in order]
    return {name: record[name] for name in names if record[name] not in (None, "", {}, [], ())}


def _plate(plate: Mapping[str, Any]) -> dict[str, Any]:
    ordered = in_order(plate, PLATE_ORDER)
    if features := ordered.get("features"):
        ordered["features"] = [_feature(each) for each in features]
    return ordered


def _feature(feature: str | Mapping[str, Any]) -> str | Mapping[str, Any]:
    if isinstance(feature, str) or feature.keys() != {"term"}:
        return feature
    return str(feature["term"])


def _table(table: Mapping[str, Any]) -> Iterable[str]:
    for name, value in table.items():
        lead = f"{scalar(name)}:"
        if isinstance(value, Mapping):
            yield from _nested(lead, value, _table(value))
        elif isinstance(value, list | tuple):
            yield from _nested(lead, value, _items(value))
        else:
            yield f"{lead} {_date(value) if name in DATE_FIELDS else scalar(value)}"


def _items(items: Sequence[Any]) -> Iterable[str]:
    for item in items:
        if not isinstance(item, Mapping | list | tuple):
            yield f"- {scalar(item)}"
            continue
        if (line := _one_line(item)) and len(line) < WIDTH - 20:
            yield f"- {line}"
            continue
        inner = list(_table(item) if isinstance(item, Mapping) else _items(item))
        yield f"- {inner[0]}"
        yield from (f"  {line}" for line in inner[1:])


def _nested(lead: str, value: Mapping[str, Any] | Sequence[Any], inner: Iterable[str]) -> Iterable[str]:
    line = _one_line(value)
    if line and (isinstance(value, Mapping) or not value) and len(lead) + len(line) < WIDTH - 20:
        yield f"{lead} {line}"
        return
    yield lead
    yield from (f"  {line}" for line in inner)


def _one_line(value: Mapping[str, Any] | Sequence[Any]) -> str | None:
    """A table or list without tables and lists inside, in braces or brackets; None for any other."""
    if isinstance(value, Mapping):
        if any(isinstance(each, Mapping | list | tuple) for each in value.values()):
            return None
        pairs = (f"{_inside(name, '')}: {_inside(each, name)}" for name, each in value.items())
        return "{" + ", ".join(pairs) + "}"
    if any(isinstance(each, Mapping | list | tuple) for each in value):
        return None if value else "[]"
    return "[" + ", ".join(_inside(each, "") for each in value) + "]"


def _inside(value: Any, name: str) -> str:
    """A single value between braces, where a comma would end it."""
    text = _date(value) if name in DATE_FIELDS else scalar(value)
    return text if text.startswith('"') or not re.search(r"[,\[\]{}?]", text) else _quoted(value)


def _date(value: Any) -> str:
    """A date stands plain (``1926``, ``1912-23``): what it means is settled by the field it is in."""
    return value if isinstance(value, str) and _PLAIN_DATE.fullmatch(value) else scalar(value)


def scalar(value: str | int | float | bool | None) -> str:
    """A single value: plain where any reader of YAML takes it for the same text, else in double quotes."""
    if value is None:
        return "null"
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, int | float):
        return repr(value)
    if not isinstance(value, str):
        raise TypeError(f"a record holds text, numbers, lists and tables, not {type(value).__name__}")
    return value if _stands_plain(value) else _quoted(value)


def _stands_plain(text: str) -> bool:
    if _PLAIN_ADDRESS.fullmatch(text):
        return True
    return bool(
        _PLAIN.fullmatch(text)
        and text.lower() not in _OTHER_MEANING
        and not _NUMBER_LIKE.fullmatch(text)
        and "\n" not in text
    )


_ESCAPED = re.compile('[\x00-\x1f\x7f-\x9f\u2028\u2029\ufeff\ud800-\udfff\ufffe\uffff"\\\\]')


def _quoted(text: str) -> str:
    """Double-quoted, with every letter of every language left legible and nothing invisible left bare."""
    return f'"{_ESCAPED.sub(_escape, text)}"'


def _escape(found: re.Match[str]) -> str:
    character = found[0]
    return f"\\{character}" if character in '"\\' else _SHORT.get(character, f"\\u{ord(character):04x}")


_SHORT = {"\n": "\\n", "\t": "\\t", "\r": "\\r"}
