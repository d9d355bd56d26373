"""The recipe in the documentation does what it says, in a real repository."""

from __future__ import annotations

import json
import os
import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from hostile.test_many_hands import NOBODY
from inperiod.cli import make_parser

DOCS = Path(__file__).parents[2] / "docs"
WHOLE = Path(__file__).parents[1] / "records" / "whole"
ROUND = """\
title: Round
kind: other
date: 1926
date_basis: printed
rights: CC0
plates:
  - id: p1
    garment: dress
    features:
      - neckline/round
"""

pytestmark = pytest.mark.skipif(
    os.name == "nt" or not shutil.which("git"), reason="a shell and git are wanted"
)


@pytest.fixture
def home(tmp_path: Path) -> Path:
    """A repository with a catalogue, the recipe, and a program of its own name."""
    shutil.copytree(
        WHOLE, tmp_path / "records", ignore=shutil.ignore_patterns(".inperiod", "autumn-list.yaml")
    )
    (tmp_path / "records" / "boards" / "saturday.yaml").unlink()
    shutil.copy(DOCS / "check-and-build.sh", tmp_path)
    program = tmp_path / "program"
    program.write_text(f'#!/bin/sh\nexec "{sys.executable}" -m inperiod "$@"\n', encoding="utf-8")
    program.chmod(0o755)
    subprocess.run([program, "tidy", tmp_path / "records"], check=True, capture_output=True)
    git(tmp_path, "init", "-q", "-b", "main")
    git(tmp_path, "add", "-A")
    git(tmp_path, "commit", "-q", "-m", "All of it")
    return tmp_path


def git(home: Path, *arguments: str) -> None:
    subprocess.run(
        ["git", "-C", home, *arguments], check=True, capture_output=True, env={**os.environ, **NOBODY}
    )


def recipe(home: Path, *arguments: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        ["sh", "check-and-build.sh", "records", "public", *arguments],
        cwd=home, capture_output=True, text=True, check=False, env={**os.environ, "INPERIOD": "./program"},
    )  # fmt: skip


def test_a_sound_catalogue_is_checked_and_built(home: Path) -> None:
    ran = recipe(home)
    assert ran.returncode == 0, ran.stderr + ran.stdout
    assert (home / "public" / "index.html").is_file()
    assert json.loads((home / "public.problems.json").read_text(encoding="utf-8"))["sources"] == 1


def test_a_change_with_an_error_is_not_built_and_a_fault_from_before_holds_nobody_up(home: Path) -> None:
    (home / "records/sources/old.yaml").write_text(
        ROUND.replace("neckline/round", "neckline/ruond"), encoding="utf-8"
    )
    git(home, "add", "-A")
    git(home, "commit", "-q", "-m", "A slip that got in")
    (home / "records/sources/mine.yaml").write_text(
        ROUND.replace("neckline/round", "neckline/rnd"), encoding="utf-8"
    )
    ran = recipe(home, "HEAD")
    assert ran.returncode == 1
    assert "records/sources/mine.yaml:10:9: error: " in ran.stdout
    assert "old.yaml" not in ran.stdout
    assert not (home / "public").exists()
    assert len(json.loads((home / "public.problems.json").read_text(encoding="utf-8"))["problems"]) == 1
    (home / "records/sources/mine.yaml").write_text(ROUND, encoding="utf-8")
    assert recipe(home, "HEAD").returncode == 0
    assert (home / "public/source/mine.html").is_file()
    assert recipe(home).returncode == 1


def test_what_is_not_tidy_is_named_and_not_built(home: Path) -> None:
    (home / "records/sources/mine.yaml").write_text(
        ROUND.replace("kind: other", "kind:   other"), encoding="utf-8"
    )
    ran = recipe(home)
    assert ran.returncode == 1
    assert "mine.yaml: not tidy" in ran.stdout
    assert "Not built: layout." in ran.stderr


def test_an_unknown_revision_is_named(home: Path) -> None:
    ran = recipe(home, "origin/main")
    assert ran.returncode != 0
    assert "git knows no revision origin/main here" in ran.stderr


def test_the_commands_of_the_page_are_understood_and_the_file_it_names_is_there() -> None:
    text = (DOCS / "repository.md").read_text(encoding="utf-8")
    typed = re.findall(r"^inperiod (.+)$", text, re.MULTILINE)
    assert len(typed) >= 2
    for each in typed:
        make_parser().parse_args(each.split())
    for name in re.findall(r"\]\(([\w.-]+)\)", text):
        assert (DOCS / name).is_file()
