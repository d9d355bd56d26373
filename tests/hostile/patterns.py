"""Regular expressions, wherever they stand, and texts made from their own parts that make bad ones slow."""

from __future__ import annotations

import ast
import importlib
import json
import pkgutil
import re
import time
from collections.abc import Callable, Iterator
from pathlib import Path
from re import _constants as sre  # type: ignore[attr-defined]
from re import _parser as parser  # type: ignore[attr-defined]
from typing import Any

import inperiod
from inperiod.kept import kept

PACKAGE = Path(inperiod.__file__).parent
METHODS = ("match", "fullmatch", "search", "sub", "split", "findall", "finditer", "subn")
DOUBLED = (1000, 2000, 4000, 8000)
"""Characters of the texts that are tried, after very short ones; no text of a record is much longer."""

SLOW, LIMIT = 0.2, 2.0
"""Seconds of the processor that a very short text may take, and a long one."""

QUICK = 0.02
"""Seconds of the processor below which growth is not looked at."""

STEEPEST = 3.0
"""How many times longer twice the text may take: 2 is in proportion, 4 is the square."""


def of_the_package() -> Iterator[tuple[str, str, str, int]]:
    """Place, method, pattern and flags of every regular expression of the Python side that is written out."""
    for each in pkgutil.walk_packages([str(PACKAGE)], "inperiod."):
        if each.name == "inperiod.__main__":
            continue
        module = importlib.import_module(each.name)
        tree = ast.parse(Path(str(module.__file__)).read_text(encoding="utf-8"))
        used = _methods(tree)
        for name, value in vars(module).items():
            for pattern in _held(value):
                for method in used.get(name, {"search"}):
                    yield f"{each.name}.{name}", method, pattern.pattern, pattern.flags
        for node in ast.walk(tree):
            match node:
                case ast.Call(
                    func=ast.Attribute(value=ast.Name(id="re"), attr=method),
                    args=[ast.Constant(value=str(given)), *_],
                ) if method in METHODS:
                    yield f"{each.name}:{node.lineno}", method, given, 0


def _methods(tree: ast.AST) -> dict[str, set[str]]:
    """The methods by which each name of a module is used."""
    found: dict[str, set[str]] = {}
    for node in ast.walk(tree):
        if isinstance(node, ast.Attribute) and isinstance(node.value, ast.Name) and node.attr in METHODS:
            found.setdefault(node.value.id, set()).add(node.attr)
    return found


def _held(value: Any, depth: int = 0) -> Iterator[re.Pattern[str]]:
    """Patterns that a name holds, in lists, tables and records too."""
    if isinstance(value, re.Pattern):
        yield value
    elif depth < 4 and isinstance(value, list | tuple | set | frozenset):
        for each in value:
            yield from _held(each, depth + 1)
    elif depth < 4 and isinstance(value, dict):
        yield from _held(list(value.values()), depth + 1)
    elif depth < 4 and hasattr(value, "__dataclass_fields__") and not isinstance(value, type):
        yield from _held([getattr(value, each) for each in value.__dataclass_fields__], depth + 1)


def of_the_schemas() -> Iterator[tuple[str, str]]:
    """Every ``pattern`` of every schema."""
    for file in sorted(kept("schemas").glob("*.json")):
        yield from (
            (f"{file.name}", each) for each in _patterns(json.loads(file.read_text(encoding="utf-8")))
        )


def _patterns(value: Any) -> Iterator[str]:
    if isinstance(value, dict):
        if isinstance(value.get("pattern"), str):
            yield value["pattern"]
        for each in value.values():
            yield from _patterns(each)
    elif isinstance(value, list):
        for each in value:
            yield from _patterns(each)


# --- texts made of a pattern's own parts ----------------------------------------------------------------


def attacks(pattern: str, flags: int = 0) -> list[tuple[str, str, str]]:
    """Beginnings, parts to repeat, and ends that fit nowhere, from the repeats of a pattern."""
    tree = parser.parse(pattern, flags & ~re.DEBUG)
    found: dict[tuple[str, str, str], None] = {}
    for before, part in _repeats(tree):
        for end in ("", "\x01", " "):
            found[("", part, end)] = None
            found[(before, part, end)] = None
    for filler in (
        " ",
        "a",
        "0",
        "-",
        "a-",
        "a b ",
        '"',
        "'",
        ":",
        "a: ",
        "\t",
        "é",
        "[",
        "{",
        "/",
        ".",
        "\n",
        "<",
        "#",
    ):
        found[("", filler, "\x01")] = None
    return list(found)


def _repeats(tree: Any, before: str = "") -> Iterator[tuple[str, str]]:
    """For each part that may come many times: what may stand before it, and the part; also two in a row."""
    for at, (kind, given) in enumerate(tree):
        lead = before + "".join(_sample([each]) for each in tree[:at])
        if kind in (sre.MAX_REPEAT, sre.MIN_REPEAT):
            _, most, inner = given
            if most > 8:
                yield lead, _sample(inner) or "a"
                yield lead, "".join(_sample([each]) for each in tree[at : at + 3]) or "a"
            yield from _repeats(inner, lead)
        elif kind == sre.SUBPATTERN:
            yield from _repeats(given[3], lead)
        elif kind == sre.BRANCH:
            for branch in given[1]:
                yield from _repeats(branch, lead)
        elif kind in (sre.ASSERT, sre.ASSERT_NOT):
            yield from _repeats(given[1], lead)
        elif kind == getattr(sre, "ATOMIC_GROUP", None):
            yield from _repeats(given, lead)


def _sample(tree: Any) -> str:
    """A text that the parts match, more or less."""
    made = ""
    for kind, given in tree:
        if kind == sre.LITERAL:
            made += chr(given)
        elif kind == sre.NOT_LITERAL:
            made += "a" if given != ord("a") else "b"
        elif kind == sre.ANY:
            made += "a"
        elif kind == sre.IN:
            made += _one_of(given)
        elif kind in (sre.MAX_REPEAT, sre.MIN_REPEAT):
            made += _sample(given[2]) * max(1, given[0])
        elif kind == sre.SUBPATTERN:
            made += _sample(given[3])
        elif kind == sre.BRANCH:
            made += _sample(given[1][0])
    return made


def _one_of(members: Any) -> str:
    classes = {
        sre.CATEGORY_DIGIT: "0",
        sre.CATEGORY_SPACE: " ",
        sre.CATEGORY_WORD: "a",
        sre.CATEGORY_NOT_SPACE: "a",
    }
    if members[0][0] == sre.NEGATE:
        excluded = {chr(given) for kind, given in members if kind == sre.LITERAL}
        return next(each for each in "a0 -.,é" if each not in excluded)
    kind, given = members[0]
    if kind == sre.LITERAL:
        return chr(given)
    return chr(given[0]) if kind == sre.RANGE else classes.get(given, "!")


# --- how long they take -------------------------------------------------------------------------------


def steepness(run: Callable[[str], object], attack: tuple[str, str, str]) -> str | None:
    """None where the time grows in proportion to the text; else how it grew."""
    before, part, end = attack
    took = 0.0
    for length in (*range(8, 33, 4), *DOUBLED):
        text = before + part * (length // len(part) + 1) + end
        now = _seconds(run, text)
        if now > (SLOW if length < DOUBLED[0] else LIMIT):
            return f"{length} characters took {now:.1f} s: {attack!r}"
        # A single measure may be a slip of the machine, so that a bad one is taken twice.
        if (
            now > QUICK
            and took > QUICK / 8
            and now / took > STEEPEST
            and _seconds(run, text) / took > STEEPEST
        ):
            return f"{length} characters took {now * 1000:.0f} ms, half of them {took * 1000:.0f}: {attack!r}"
        took = now
    return None


def _seconds(run: Callable[[str], object], text: str) -> float:
    began = time.thread_time()
    run(text)
    return time.thread_time() - began
