"""Short digests of values and of files, to tell whether anything has changed."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import fields, is_dataclass
from functools import lru_cache
from hashlib import blake2b
from operator import attrgetter
from pathlib import Path
from typing import Any

PLACES = frozenset({"mark", "spots"})
"""Fields of records that say where something was written, and nothing of what it says."""


def digest(value: object) -> bytes:
    """Sixteen bytes that differ where the values' written forms do."""
    return blake2b(repr(value).encode("utf-8", "surrogatepass"), digest_size=16).digest()


@lru_cache(maxsize=256)
def _getter(kind: type) -> tuple[Callable[[Any], Any], bool]:
    """What gives the fields of a record as a tuple, without the places they were written at."""
    names = [each.name for each in fields(kind) if each.name not in PLACES]
    return attrgetter(*names), len(names) > 1


def plain(value: Any) -> Any:
    """A record as nested tuples of plain values."""
    if value is None or isinstance(value, str | int):  # as most are
        return value
    if isinstance(value, tuple | list):
        return tuple(map(plain, value))
    if is_dataclass(value) and not isinstance(value, type):
        get, several = _getter(type(value))
        got = get(value)
        return (type(value).__name__, *map(plain, got if several else (got,)))
    if isinstance(value, Mapping):
        return tuple((key, plain(each)) for key, each in value.items())
    if isinstance(value, set | frozenset):
        return tuple(sorted(value))
    return value


def files_digest(folders: Iterable[Path], *endings: str) -> bytes:
    """All files of the folders by name and bytes."""
    found = blake2b(digest_size=16)
    for folder in folders:
        for file in sorted(each for each in folder.rglob("*") if each.is_file()):
            if not endings or file.suffix in endings:
                data = file.read_bytes()
                found.update(f"{file.relative_to(folder).as_posix()}\0{len(data)}\0".encode())
                found.update(data)
    return found.digest()
