"""Plain helpers for checks that the browser's files and the Python side say the same.

``tests/`` is on the import path: ``from parity import in_node, differences``.
"""

from __future__ import annotations

import json
import math
import subprocess
from pathlib import Path
from typing import Any

from inperiod.dating import lexicon


def in_node(node: str, expression: str, modules: dict[str, Path], given: Any = None) -> Any:
    """Evaluate a JavaScript expression under Node.js and return what it gives, through JSON.

    ``modules`` maps names to the browser's own files, each loaded with ``require``; ``given`` arrives
    as the variable ``given``. The words of dates are there, as a page loads them. Raises
    ``AssertionError`` with Node's own words where it fails.
    """
    loads = "".join(
        f"const {name} = require({json.dumps(str(path.resolve()))});\n" for name, path in modules.items()
    )
    script = (
        f'"use strict";\n{given_words()}\n{loads}'
        'const given = JSON.parse(require("fs").readFileSync(0, "utf8"));\n'
        f"const result = ({expression});\n"
        "process.stdout.write(JSON.stringify(result === undefined ? null : result));\n"
    )
    ran = subprocess.run(
        [node, "-e", script],
        input=json.dumps(given),
        capture_output=True,
        text=True,
        check=False,
        timeout=300,
    )
    assert ran.returncode == 0, ran.stderr
    return json.loads(ran.stdout)


def given_words() -> str:
    """A line of script that gives the browser's files the words of dates, as the page's data do."""
    return f"globalThis.InPeriod = {{ data: {{ dates: {json.dumps(lexicon.as_data())} }} }};"


def differences(ours: Any, theirs: Any, tolerance: float = 1e-9, at: str = "") -> list[str]:
    """Where two JSON values differ, as sentences; numbers may differ by ``tolerance``."""
    if isinstance(ours, bool) or isinstance(theirs, bool) or ours is None or theirs is None:
        return [] if ours is theirs else [f"{at or 'value'}: {ours!r} against {theirs!r}"]
    if isinstance(ours, int | float) and isinstance(theirs, int | float):
        close = math.isclose(ours, theirs, rel_tol=tolerance, abs_tol=tolerance)
        return [] if close else [f"{at or 'value'}: {ours!r} against {theirs!r}"]
    if isinstance(ours, dict) and isinstance(theirs, dict):
        found = [f"{at}.{key}: only on one side" for key in sorted(ours.keys() ^ theirs.keys())]
        for key in ours.keys() & theirs.keys():
            found += differences(ours[key], theirs[key], tolerance, f"{at}.{key}")
        return found
    if isinstance(ours, list | tuple) and isinstance(theirs, list | tuple):
        if len(ours) != len(theirs):
            return [f"{at or 'list'}: {len(ours)} entries against {len(theirs)}"]
        return [
            each
            for number, (left, right) in enumerate(zip(ours, theirs, strict=True))
            for each in differences(left, right, tolerance, f"{at}[{number}]")
        ]
    return [] if ours == theirs else [f"{at or 'value'}: {ours!r} against {theirs!r}"]
