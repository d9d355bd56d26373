"""A short run of the fuzzer, and every input that once made something fall over."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from bench.fuzz.browser import browser_targets
from bench.fuzz.loop import InPython, fuzz
from bench.fuzz.targets import python_targets

KEPT = Path(__file__).parent / "kept"
CASES = sorted(each for each in KEPT.rglob("*") if each.is_file())
SECONDS = 0.5
"""For each target, after its sound inputs; a long run is ``python -m bench.fuzz``."""


@pytest.fixture(scope="module")
def targets() -> Iterator[dict[str, Any]]:
    with python_targets() as found:
        yield found


@pytest.fixture(scope="module")
def in_browser(node: str) -> Iterator[dict[str, Any]]:
    with browser_targets(node) as found:
        yield found


@pytest.mark.parametrize(
    "name", ["reader", "answers", "dates", "phrases", "layout", "tables", "mappings", "manifests"]
)
def test_nothing_falls_over_in_half_a_second(name: str, targets: dict[str, Any]) -> None:
    figures = fuzz(targets[name], count=20_000, seed=1926, seconds=SECONDS)
    assert {kind: fault.words for kind, fault in figures.faults.items()} == {}
    assert figures.inputs > 50
    assert len(figures.reached) > 50


@pytest.mark.node
@pytest.mark.parametrize("name", ["browser-boards", "browser-links", "browser-dates"])
def test_nothing_falls_over_in_the_browsers_files_either(name: str, in_browser: dict[str, Any]) -> None:
    figures = fuzz(in_browser[name], count=20_000, seed=1926, seconds=SECONDS)
    assert {kind: fault.words for kind, fault in figures.faults.items()} == {}
    assert figures.inputs > 50


@pytest.mark.parametrize("case", CASES, ids=lambda case: f"{case.parent.name}-{case.name}")
def test_what_once_fell_over_does_so_no_more(
    case: Path, targets: dict[str, Any], request: pytest.FixtureRequest
) -> None:
    name = case.parent.name
    known = request.getfixturevalue("in_browser") if name.startswith("browser") else targets
    (outcome,) = known[name].run([case.read_bytes()], [False])
    assert outcome.fault is None, outcome.fault
    assert outcome.seconds < 2


def test_every_kind_of_target_has_kept_cases() -> None:
    fallen = {"reader", "answers", "layout", "manifests", "browser-boards"}
    assert {each.parent.name for each in CASES} >= fallen


@pytest.mark.parametrize(
    ("slip", "words"),
    [
        (lambda data: 1 / (len(data) % 7), "ZeroDivisionError"),
        (lambda data: "x".index("y") if b"19" in data else None, "ValueError"),
    ],
)
def test_the_loop_finds_what_falls_over_and_keeps_the_shortest(slip: Any, words: str) -> None:
    figures = fuzz(InPython("a slip", slip, [b"1912-23", b"192X"], [b"19"]), count=3_000, seed=1)
    (fault,) = figures.faults.values()
    assert words in fault.words
    assert fault.times > 10
    assert len(fault.data) <= 4


def test_the_loop_finds_what_hangs(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("bench.fuzz.loop.LONGEST", 0.2)

    def hang(data: bytes) -> None:
        while b"!" in data:
            pass

    figures = fuzz(InPython("a hang", hang, [b"a", b"b!"], []), count=2, seed=1)
    assert [each.words.partition(":")[0] for each in figures.faults.values()] == ["TooSlow"]


def test_the_loop_keeps_what_reaches_new_code(targets: dict[str, Any]) -> None:
    figures = fuzz(targets["dates"], count=6_000, seed=3)
    assert figures.kept > 3
    assert shutil.which("python3") or figures.inputs == 6_000
