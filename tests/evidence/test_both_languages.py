"""The browser's file gives the answers of the Python side: same verdicts, same sentences, numbers to 1e-9."""

from __future__ import annotations

import os
import subprocess
from pathlib import Path

import pytest

from evidence.vectors import write_vectors

VERDICTS = (
    "too early",
    "attested",
    "seen once",
    "unrecorded",
    "lapsed",
    "bracketed",
    "plausible",
    "unsupported",
    "unproven",
)


@pytest.mark.node
def test_browser_and_python_answer_alike(node: str, tmp_path: Path) -> None:
    vectors = tmp_path / "vectors.json"
    counts = write_vectors(vectors)
    print(dict(counts))
    assert counts["cases"] >= 2000
    assert all(counts[verdict] >= 5 for verdict in VERDICTS), counts
    run = subprocess.run(
        [node, "--test", str(Path(__file__).with_name("run_vectors.js"))],
        env={**os.environ, "INPERIOD_VECTORS": str(vectors)},
        capture_output=True,
        text=True,
        check=False,
        timeout=300,
    )
    assert run.returncode == 0, run.stdout[-6000:] + run.stderr
    ran = sum(int(line.split("cases: ")[1]) for line in run.stdout.splitlines() if "cases: " in line)
    assert ran == counts["cases"]
