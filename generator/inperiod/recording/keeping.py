"""Plates into a source file that is there already: what stands in it stays as it is."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from typing import Any

from inperiod.importing.writing import source_yaml
from inperiod.records.tidying import tidy
from inperiod.records.yaml_reading import Table, plain_value, read_yaml

_LINES = re.compile(r"[^\n]*\n|[^\n]+")
_NO_PLATES = re.compile(r"^plates: \[ *\]")


class CannotAdd(ValueError):
    """The file is left as it is; the text says why."""


def with_plates(data: bytes, plates: Sequence[Mapping[str, Any]]) -> bytes:
    """The file with more plates after its last one, laid out as ``inperiod tidy`` would.

    Comments, order and layout of what was there are kept. Raises ``CannotAdd`` where the file has errors, or
    its plates are written in a way that cannot be added to safely.
    """
    before = tidy(data)
    root = _sound(before)
    lines = _LINES.findall(before.decode("utf-8"))
    added = source_yaml({"plates": list(plates)})
    if "plates" in root.entries:
        at = _end_of_plates(root, len(lines))
        lines[at:at] = _LINES.findall(added)[1:]
        own = root.keys["plates"][0] - 1
        lines[own] = _NO_PLATES.sub("plates:", lines[own])
    else:
        lines.append(added)
    after = tidy("".join(lines).encode("utf-8"))
    wanted = plain_value(root)
    wanted["plates"] = [*(wanted.get("plates") or []), *plain_value(_sound(added.encode()))["plates"]]
    if plain_value(_sound(after)) != wanted:
        raise CannotAdd("its plates are written in a way that cannot be added to safely; add them by hand.")
    return after


def _sound(data: bytes) -> Table:
    document = read_yaml(data, "")
    errors = [each for each in document.problems if each.severity == "error"]
    if errors or not isinstance(document.root, Table):
        where = f"line {errors[0].line}: {errors[0].message}" if errors else "it holds no source."
        raise CannotAdd(f"it cannot be read: {where}")
    return document.root


def _end_of_plates(root: Table, lines: int) -> int:
    """How many lines there are up to the end of the plates: where the next field begins, or all."""
    own = root.keys["plates"][0]
    later = [line for line, _ in root.keys.values() if line > own]
    return min(later) - 1 if later else lines
