"""Build, edit, ask and check catalogues of several sizes, and print what each costs as a table.

    python -m bench.scale                       1,000, 3,000 and 10,000 plates
    python -m bench.scale 1000 30000 100000     other sizes; the largest takes long, and gigabytes of disk
    python -m bench.scale --into /var/tmp/x     where catalogues and sites are made; they are removed again

Times depend on the machine and on what else it does. Ratios are of one run on one machine, and the last line
says how each cost grows: the exponent of the number of plates between the smallest and the largest size.
"""

from __future__ import annotations

import argparse
import os
import shutil
import tempfile
from collections.abc import Sequence
from math import log
from pathlib import Path

from bench.scale.catalogues import write_catalogue
from bench.scale.measuring import Cost, cost_of

SIZES = (1_000, 3_000, 10_000)
LIMIT_RATIO, LIMIT_EDIT, LIMIT_ANSWER = 2.0, 0.5, 0.3


def main(given: Sequence[str] | None = None) -> int:
    parser = argparse.ArgumentParser(
        prog="python -m bench.scale", description=__doc__, formatter_class=argparse.RawTextHelpFormatter
    )
    parser.add_argument("sizes", nargs="*", type=int, default=SIZES, metavar="PLATES")
    parser.add_argument("--into", type=Path, help="a folder for what is made; a temporary one else")
    parser.add_argument("--seed", type=int, default=1)
    arguments = parser.parse_args(given)
    print(f"{os.cpu_count()} cores, load {os.getloadavg()[0]:.1f} at first; seconds, and (processor seconds)")
    rows = []
    with tempfile.TemporaryDirectory(prefix="inperiod-scale-", dir=arguments.into) as place:
        for size in arguments.sizes:
            rows.append(measured(Path(place), size, arguments.seed))
            print(_told(size, rows[-1]), flush=True)
    if len(rows) > 1:
        print(_growth(arguments.sizes, rows))
    return 0


def measured(place: Path, size: int, seed: int) -> dict[str, Cost]:
    """What each thing costs at that size."""
    folder, site = place / "records", place / "site"
    write_catalogue(folder, size, seed)
    costs = {"cold": cost_of("build", str(folder), str(site))}
    costs["bare"] = cost_of("bare", str(folder), str(site))
    costs["same"] = cost_of("build", str(folder), str(site))
    file = sorted((folder / "sources").iterdir())[7 % max(1, size // 20)]
    text = file.read_text(encoding="utf-8")
    file.write_text(text.replace("The frock", "The gown", 1), encoding="utf-8")
    costs["caption"] = cost_of("build", str(folder), str(site))
    lines = file.read_text(encoding="utf-8").splitlines(keepends=True)
    at = next(i for i, line in enumerate(lines) if line.startswith("      - ") and "/" in line)
    file.write_text("".join(lines[:at] + lines[at + 1 :]), encoding="utf-8")
    costs["feature"] = cost_of("build", str(folder), str(site))
    for name in ("fit", "check"):
        cost_of(name, str(folder), str(site))
        costs[name] = min(
            (cost_of(name, str(folder), str(site)) for _ in range(3)), key=lambda each: each.wall
        )
    shutil.rmtree(folder)
    shutil.rmtree(site)
    return costs


def _told(size: int, costs: dict[str, Cost]) -> str:
    cold, bare = costs["cold"], costs["bare"]
    lines = [
        f"\n{size:,} plates: {cold.told['files']:,} files, {cold.told['size'] / 1e6:,.0f} MB",
        f"  cold build           {_work(cold)}  most memory {cold.memory:,.0f} MB",
        f"  bare templates       {_work(bare)}  the build takes "
        f"{cold.told['work'] / bare.told['work']:.2f} times as long ({LIMIT_RATIO:g} allowed), with "
        f"{cold.told['busy'] / bare.told['busy']:.2f} times the work",
        f"  nothing changed      {_work(costs['same'])}",
        f"  a caption changed    {_work(costs['caption'])}  {LIMIT_EDIT:g} s wanted",
        f"  a feature changed    {_work(costs['feature'])}",
    ]
    lines += [
        f"  {name:<20} {costs[name].wall:8.2f} ({costs[name].cpu:.2f})  from start to answer; "
        f"{LIMIT_ANSWER:g} s wanted at 10,000"
        for name in ("fit", "check")
    ]
    return "\n".join(lines)


def _work(cost: Cost) -> str:
    return f"{cost.told['work']:8.2f} ({cost.told['busy']:.2f})"


def _growth(sizes: Sequence[int], rows: Sequence[dict[str, Cost]]) -> str:
    """The exponent of each cost, by processor seconds; 1 is in proportion."""

    def exponent(name: str) -> float:
        first, last = (row[name].told.get("busy", row[name].cpu) for row in (rows[0], rows[-1]))
        return log(last / first) / log(sizes[-1] / sizes[0])

    told = ", ".join(f"{name} {exponent(name):.2f}" for name in rows[0])
    memory = log(rows[-1]["cold"].memory / rows[0]["cold"].memory) / log(sizes[-1] / sizes[0])
    return f"\nGrowth from {sizes[0]:,} to {sizes[-1]:,} plates, as an exponent: {told}, memory {memory:.2f}"


if __name__ == "__main__":
    raise SystemExit(main())
