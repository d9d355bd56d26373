"""Run: python -m bench.calibration [--questions N] [--others N] [--write]."""

from __future__ import annotations

import argparse
import json
import sys
from pathlib import Path

from bench.calibration.scenarios import OTHER_QUESTIONS, QUESTIONS, SEED, run

from inperiod import __version__
from inperiod.evidence import calibration

KEPT = Path(calibration.__file__).with_suffix(".json")


def main() -> None:
    parser = argparse.ArgumentParser(
        prog="python -m bench.calibration", description=sys.modules["bench.calibration"].__doc__
    )
    parser.add_argument(
        "--questions", type=int, default=QUESTIONS, help="of the plain scenario (%(default)s)"
    )
    parser.add_argument("--others", type=int, default=OTHER_QUESTIONS, help="of every other (%(default)s)")
    parser.add_argument("--seed", type=int, default=SEED)
    parser.add_argument(
        "--write", action="store_true", help=f"keep the figures in {KEPT.name}, for the method page"
    )
    asked = parser.parse_args()
    found = run(asked.questions, asked.others, asked.seed, lambda name: print(f"… {name}", file=sys.stderr))
    found = {"version": __version__, **found}
    for scenario in calibration.from_json(found).scenarios:
        print(f"\n{scenario.words} — {scenario.questions} questions, {scenario.catalogues} catalogues")
        for rate in scenario.rates():
            print(f"  {rate.words:68} {rate.said:>9}  ({rate.hits} of {rate.of})")
    if asked.write:
        KEPT.write_text(json.dumps(found, indent=1, ensure_ascii=False) + "\n", encoding="utf-8")
        print(f"\nwritten: {KEPT}")


if __name__ == "__main__":
    main()
