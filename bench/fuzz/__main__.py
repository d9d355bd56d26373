"""Run: python -m bench.fuzz [--inputs N] [--seed S] [--seconds S] [--target NAME …] [--keep FOLDER].

Inputs are spread over the targets by their speed. Prints, for each, how many inputs were run, the faults, the
slowest input and how much code was reached; every fault's shortest input can be kept as a file. Exit status
1 where there was a fault. On one core, kindly: nice -n 19 python -m bench.fuzz --inputs 1000000
"""

from __future__ import annotations

import argparse
import hashlib
import shutil
import sys
from contextlib import ExitStack
from pathlib import Path
from typing import Any

from bench.fuzz.browser import browser_targets
from bench.fuzz.loop import Figures, fuzz
from bench.fuzz.targets import python_targets

SHARES = {
    **{"reader": 14, "answers": 4, "dates": 22, "phrases": 16, "layout": 14},
    **{"tables": 3, "mappings": 3, "manifests": 6},
    **{"browser-boards": 7, "browser-links": 4, "browser-dates": 7},
}
"""Parts of a hundred."""


def main() -> int:
    parser = argparse.ArgumentParser(
        prog="python -m bench.fuzz", description=sys.modules["bench.fuzz"].__doc__
    )
    parser.add_argument("--inputs", type=int, default=100_000, help="in all (%(default)s)")
    parser.add_argument("--seconds", type=float, default=0.0, help="at most so many for each target")
    parser.add_argument("--seed", type=int, default=1926)
    parser.add_argument("--target", action="append", choices=SHARES, help="only this one; may be repeated")
    parser.add_argument("--keep", type=Path, help="a folder for the shortest input of every fault")
    asked = parser.parse_args()
    wanted = asked.target or list(SHARES)
    parts = sum(SHARES[each] for each in wanted)
    done: list[Figures] = []
    print("target             inputs  faults  a second  slowest ms    code   kept     MB")
    with ExitStack() as stack:
        targets: dict[str, Any] = {**stack.enter_context(python_targets())}
        if node := shutil.which("node"):
            targets.update(stack.enter_context(browser_targets(node)))
        elif any(each.startswith("browser") for each in wanted):
            print("No Node.js: the browser's targets are left out.", file=sys.stderr)
        for name in (each for each in wanted if each in targets):
            figures = fuzz(targets[name], asked.inputs * SHARES[name] // parts, asked.seed, asked.seconds)
            done.append(figures)
            print(row(figures), flush=True)
    total = sum(each.inputs for each in done)
    faults = sum(len(each.faults) for each in done)
    print(f"{total:,} inputs, {faults} faults, {sum(each.seconds for each in done):.0f} s, seed {asked.seed}")
    for each in done:
        tell(each, asked.keep)
    return 1 if faults else 0


def row(figures: Figures) -> str:
    speed = figures.inputs / figures.seconds if figures.seconds else 0
    return (
        f"{figures.target:15}{figures.inputs:>10,}{len(figures.faults):>8}{speed:>10,.0f}"
        f"{figures.slowest * 1000:>12.1f}{len(figures.reached):>8,}{figures.kept:>7,}{figures.memory:>7.0f}"
    )


def tell(figures: Figures, keep: Path | None) -> None:
    for fault in figures.faults.values():
        print(f"\n{figures.target} ({fault.times} times): {fault.words}\n  {fault.data[:400]!r}")
        if keep:
            name = hashlib.sha256(fault.data).hexdigest()[:12]
            folder = keep / figures.target
            folder.mkdir(parents=True, exist_ok=True)
            (folder / name).write_bytes(fault.data)


if __name__ == "__main__":
    sys.exit(main())
