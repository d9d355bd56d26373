"""Records as JSON and back, whole: every field of ``model`` and the place each was written at.

A record is a list of its fields in their order, without what stands at its end as it would be anyway. A
``Mark`` is line and column alone: all marks of a file name that file. What is read back is taken at its word,
so it must come from where it was written (see ``keeping``).
"""

from __future__ import annotations

import types
from collections.abc import Callable, Mapping
from dataclasses import MISSING, Field, fields, is_dataclass
from functools import cache
from operator import attrgetter
from typing import Any, TypeVar, Union, get_args, get_origin, get_type_hints

from inperiod.records.model import Mark

Record = TypeVar("Record")
Out = Callable[[Any], Any]
In = Callable[[Any, str], Any]


def to_json(record: Any) -> Any:
    """A record as lists, numbers, strings, true, false and None."""
    kind: Any = type(record)
    return _out(kind)(record)


def from_json(kind: type[Record], value: Any, file: str) -> Record:
    """The record back; ``file`` is the one its marks name. Uses up ``value``."""
    asked: Any = kind
    made: Record = _in(asked)(value, file)
    return made


@cache
def _out(kind: Any) -> Out:
    """What turns a value of that type into JSON."""
    if kind is Mark:
        return lambda mark: [mark.line, mark.column]
    if is_dataclass(kind):
        return _record_out(kind)
    if get_origin(kind) is tuple:
        inner = get_args(kind)[0]
        return (lambda value: list(map(_out(inner), value))) if _special(inner) else list
    return _as_it_is


def _as_it_is(value: Any) -> Any:
    return value


def _record_out(kind: Any) -> Out:
    known, hints = fields(kind), get_type_hints(kind)
    get = attrgetter(*[each.name for each in known])
    usual = [_usual(each) for each in known]
    special = [
        (at, _out(_without_none(hints[each.name])))
        for at, each in enumerate(known)
        if _special(_without_none(hints[each.name]))
    ]

    def out(record: Any) -> list[Any]:
        values = list(get(record)) if len(known) > 1 else [get(record)]
        while values and values[-1] == usual[len(values) - 1]:
            values.pop()
        for at, make in special:
            if at < len(values) and values[at] is not None:
                values[at] = make(values[at])
        return values

    return out


def _usual(each: Field[Any]) -> Any:
    if each.default_factory is not MISSING:
        return each.default_factory()
    return each.default  # MISSING equals nothing else


@cache
def _in(kind: Any) -> In:
    """What turns JSON into a value of that type."""
    if kind is Mark:
        return lambda value, file: Mark(file, *value)
    if is_dataclass(kind):
        return _record_in(kind)
    if get_origin(kind) is tuple:
        inner = get_args(kind)[0]
        if not _special(inner):
            return lambda value, _: tuple(value)
        make = _in(inner)
        return lambda value, file: tuple([make(each, file) for each in value])
    # The one mapping of typed values: where each field was written.
    return lambda value, _: {name: tuple(place) for name, place in value.items()}


def _record_in(kind: Any) -> In:
    hints = get_type_hints(kind)
    special = [
        (at, _in(_without_none(hints[each.name])))
        for at, each in enumerate(fields(kind))
        if _special(_without_none(hints[each.name]))
    ]

    def make(values: list[Any], file: str) -> Any:
        for at, read in special:
            if at < len(values) and values[at] is not None:
                values[at] = read(values[at], file)
        return kind(*values)

    return make


def _special(kind: Any) -> bool:
    """Whether JSON has no such value itself."""
    if get_origin(kind) is tuple or is_dataclass(kind):
        return True
    return get_origin(kind) is Mapping and get_origin(get_args(kind)[1]) is tuple


def _without_none(kind: Any) -> Any:
    if get_origin(kind) in (Union, types.UnionType):
        rest = [each for each in get_args(kind) if each is not types.NoneType]
        return rest[0] if len(rest) == 1 else Union[tuple(rest)]  # noqa: UP007
    return kind
