"""How often the verdicts are right, by simulated catalogues whose truth is known: figures kept with the code.

``python -m bench.calibration --write`` makes ``calibration.json`` anew. It holds counts, and everything said
of them is computed here: ``verdict/truth`` counts questions by what was answered and what was true in the
window (``common``: 5 % or more of the garments; ``rare``: in use below that; ``never``).
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any, get_args

from inperiod.evidence.verdicts import Verdict

TRUTHS = ("common", "rare", "never")


@dataclass(frozen=True, slots=True)
class Rate:
    """``hits`` of ``of``; ``words`` say what is counted."""

    name: str
    words: str
    hits: int
    of: int

    @property
    def value(self) -> float | None:
        """Between 0 and 1; None where nothing was counted."""
        return self.hits / self.of if self.of else None

    @property
    def said(self) -> str:
        """In per cent: to a tenth below 10 %, and to a hundredth below 1 %."""
        if self.value is None:
            return "–"
        percent = 100 * self.value
        return (
            f"{percent:.0f} %"
            if percent >= 10
            else f"{percent:.1f} %"
            if percent >= 1
            else f"{percent:.2f} %"
        )


@dataclass(frozen=True, slots=True)
class Scenario:
    """One simulated world and what was asked of it, with the counts."""

    id: str
    words: str
    catalogues: int
    counts: Mapping[str, int]
    slice: Mapping[str, int]

    @property
    def questions(self) -> int:
        return sum(count for name, count in self.counts.items() if "/" in name)

    def rate(self, name: str) -> Rate:
        """The rate of that name; KeyError where there is none."""
        return next(rate for rate in self.rates() if rate.name == name)

    def rates(self) -> tuple[Rate, ...]:
        """Every rate of this scenario, in the order in which they are shown."""
        return tuple(rate for rate in _rates(self.counts) if rate.of)


@dataclass(frozen=True, slots=True)
class Calibration:
    """``version`` of the package that made the figures, the ``seed``, the simulated ``world``'s parameters,
    and how many catalogues of each scenario the ``slice`` counts hold."""

    version: str
    seed: int
    slice: int
    world: Mapping[str, Any]
    scenarios: tuple[Scenario, ...]

    def scenario(self, id: str) -> Scenario:
        """The scenario of that id; KeyError where there is none."""
        for each in self.scenarios:
            if each.id == id:
                return each
        raise KeyError(id)


def _rates(counts: Mapping[str, int]) -> tuple[Rate, ...]:
    def of(verdict: str) -> int:
        return sum(counts.get(f"{verdict}/{truth}", 0) for truth in TRUTHS)

    def never(verdict: str) -> Rate:
        return Rate(
            f"{verdict} never",
            f"“{verdict}”, and never in use then",
            counts.get(f"{verdict}/never", 0),
            of(verdict),
        )

    verdicts = get_args(Verdict)
    common = sum(counts.get(f"{verdict}/common", 0) for verdict in verdicts)

    def called(verdict: str) -> Rate:
        words = f"at 5 % or more, and called “{verdict}”"
        return Rate(f"common {verdict}", words, counts.get(f"{verdict}/common", 0), common)

    one_plate = [counts.get(f"{verdict}/never", 0) for verdict in ("attested", "seen once")]
    return (
        never("attested"),
        Rate(
            "one plate never",
            "never in use then, had one plate been enough",
            sum(one_plate),
            of("attested") + of("seen once"),
        ),
        never("seen once"),
        never("bracketed"),
        never("lapsed"),
        never("plausible"),
        never("unsupported"),
        called("attested"),
        called("bracketed"),
        called("lapsed"),
        called("unsupported"),
        Rate(
            "end covered", "true ends within the reach", counts.get("end covered", 0), counts.get("ends", 0)
        ),
        Rate("end open", "ends left open", counts.get("end open", 0), counts.get("ends", 0)),
        Rate(
            "end covered by years",
            "true ends within the guide in years alone",
            counts.get("end covered by years", 0),
            counts.get("ends", 0),
        ),
        Rate(
            "share covered",
            "true averages within the interval of the share",
            counts.get("share covered", 0),
            counts.get("shares", 0),
        ),
        Rate(
            "share covered as if independent",
            "true averages within it, were plates independent",
            counts.get("share covered as if independent", 0),
            counts.get("shares", 0),
        ),
    )


def from_json(data: Mapping[str, Any]) -> Calibration:
    """The figures from their JSON form."""
    scenarios = tuple(
        Scenario(each["id"], each["words"], each["catalogues"], each["counts"], each["slice"])
        for each in data["scenarios"]
    )
    return Calibration(data["version"], data["seed"], data["slice"], data["world"], scenarios)


@cache
def kept() -> Calibration:
    """The figures that come with the package."""
    return from_json(json.loads(Path(__file__).with_suffix(".json").read_text(encoding="utf-8")))
