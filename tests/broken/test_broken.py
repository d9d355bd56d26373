"""Every slip has its complaint: each folder of ``cases`` is a small broken catalogue.

``expected.txt`` in it holds every complaint it must give, and no other. A case without a vocabulary of its
own is read with the one beside this file. After a complaint has been reworded on purpose, run this file as
a program to write what is said now, and read the difference before it is committed.
"""

from __future__ import annotations

import shutil
import sys
import tempfile
from pathlib import Path

import pytest

from inperiod.records import read_catalogue

HERE = Path(__file__).parent
CASES = sorted(each for each in (HERE / "cases").iterdir() if each.is_dir())


def said(case: Path, into: Path) -> str:
    """All complaints of a case, one a line, a hint after each."""
    folder = into / case.name
    shutil.copytree(case, folder, ignore=shutil.ignore_patterns("expected.txt"), symlinks=True)
    if not (folder / "vocabulary").exists():
        shutil.copytree(HERE / "vocabulary", folder / "vocabulary")
    lines: list[str] = []
    for each in read_catalogue(folder).problems:
        lines.append(f"{each.file}:{each.line}:{each.column} {each.severity}: {each.message}")
        lines.extend([f"    {each.hint}"] if each.hint else [])
    return "".join(f"{line}\n" for line in lines)


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.name)
def test_a_broken_catalogue_gives_exactly_its_complaints(case: Path, tmp_path: Path) -> None:
    assert said(case, tmp_path) == (case / "expected.txt").read_text(encoding="utf-8")


def test_there_are_forty_ways_to_slip_at_least_and_each_is_complained_of() -> None:
    assert len(CASES) >= 40
    for case in CASES:
        assert ":" in (case / "expected.txt").read_text(encoding="utf-8"), case.name


def test_no_complaint_speaks_in_the_words_of_a_parser() -> None:
    jargon = ("mapping", "scalar", "block", "token", "schema", "null", "NoneType", "Traceback", "YAML")
    for case in CASES:
        text = (case / "expected.txt").read_text(encoding="utf-8")
        assert not [word for word in jargon if word in text], case.name


if __name__ == "__main__":
    for each_case in CASES:
        with tempfile.TemporaryDirectory() as scratch:
            (each_case / "expected.txt").write_text(said(each_case, Path(scratch)), encoding="utf-8")
    sys.exit(0)
