"""``inperiod check --changed REV``: only what a change touches, by what git says has changed."""

from __future__ import annotations

import os
import subprocess
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from inperiod.cli_reply import CannotDo, counted
from inperiod.records import Reading
from inperiod.records.places import SETTINGS_FILE
from inperiod.records.problems import Problem
from inperiod.records.touching import Touched, touched

MOST_LISTED = 20
_FOLDERS = (".", "sources", "boards", "vocabulary")


@dataclass(frozen=True, slots=True)
class Change:
    """What differs from a revision: ``commit`` is where counting began, ``files`` are relative to the
    catalogue folder, ``touched`` holds them and what refers to them."""

    since: str
    commit: str
    files: tuple[str, ...]
    touched: Touched

    def concerns(self, problem: Problem) -> bool:
        """Whether a problem stands in a file that is touched, or in none in particular."""
        return problem.file in self.touched or problem.file in _FOLDERS

    def as_json(self) -> dict[str, Any]:
        return {
            "since": self.since,
            "commit": self.commit,
            "files": list(self.files),
            "touched": {file: [each for each in why if each] for file, why in self.touched.items()},
        }


def change_since(folder: Path, revision: str, reading: Reading) -> Change:
    """What the working folder holds now against a git revision, or against where the two parted.

    Raises ``CannotDo`` where git is not installed, the folder is in no repository, or it knows no such
    revision.
    """
    _git(
        folder,
        "rev-parse",
        "--git-dir",
        otherwise=f"{folder} is in no git repository, so nothing is known of changes",
    )
    commit = _commit(folder, revision)
    differ = ("diff", "--no-ext-diff", "--no-renames", "--name-only", "--relative", "-z", commit)
    new = ("ls-files", "--others", "--exclude-standard", "-z")
    files = _records(_git(folder, *differ, "--", ".") + _git(folder, *new, "--", "."))
    before = {
        file: _git(folder, "show", "--no-ext-diff", "--no-textconv", f"{commit}:./{file}", otherwise="")
        for file in files
        if file.startswith("vocabulary/")
    }
    return Change(revision, commit, files, touched(reading.catalogue, files, before))


def _records(names: bytes) -> tuple[str, ...]:
    """Of the files named, those that a catalogue is read from."""
    parts = ("sources/", "boards/", "vocabulary/", "images/")
    named = {os.fsdecode(each) for each in names.split(b"\0")}
    return tuple(sorted(each for each in named if each == SETTINGS_FILE or each.startswith(parts)))


def _commit(folder: Path, revision: str) -> str:
    """The commit where the working state and the revision parted; the revision where they share none."""
    unknown = (
        f"git knows no revision {revision} here. A branch, a tag or a commit is wanted, such as main or "
        "HEAD~1; a copy fetched without its history needs it first: git fetch --unshallow"
    )
    named = _git(
        folder,
        "rev-parse",
        "--verify",
        "--quiet",
        "--end-of-options",
        f"{revision}^{{commit}}",
        otherwise=unknown,
    )
    found = named.decode().strip()
    parted = _git(folder, "merge-base", found, "HEAD", otherwise="").decode().split()
    return parted[0] if parted else found


def _git(folder: Path, *arguments: str, otherwise: str | None = None) -> bytes:
    """What git prints. Where it fails: ``CannotDo`` with ``otherwise`` and git's own words, or nothing for an
    empty ``otherwise``. No program that a repository names is run."""
    quiet = ("-c", "core.fsmonitor=false", "-c", "core.quotePath=false")
    environment = {**os.environ, "LC_ALL": "C", "GIT_OPTIONAL_LOCKS": "0"}
    try:
        ran = subprocess.run(
            ["git", "-C", str(folder), *quiet, *arguments], capture_output=True, check=False, env=environment
        )
    except FileNotFoundError:
        raise CannotDo("--changed asks git what has changed, and git is not installed here.") from None
    if ran.returncode == 0:
        return ran.stdout
    if otherwise == "":
        return b""
    said = ran.stderr.decode("utf-8", "replace").strip().splitlines()
    dubious = f" git says: {said[0]}" if said and "not a git repository" not in said[0] else ""
    raise CannotDo(f"{otherwise or 'git cannot say what has changed'}.{dubious}")


def words(folder: Path, change: Mapping[str, Any]) -> str:
    """What was checked and why, before the complaints."""
    since = f"{change['since']} ({change['commit'][:9]})"
    if not change["touched"]:
        return f"No record has changed since {since}."
    others = {file: why for file, why in change["touched"].items() if why and file not in change["files"]}
    lines = [f"Since {since} {counted(len(change['files']), 'file')} changed."]
    if others:
        lines.append(f"Checked with them, because they hang on what changed: {counted(len(others), 'file')}.")
        lines += [
            f"  {(folder / file).as_posix()}: {', '.join(why[:3])}"
            for file, why in list(others.items())[:MOST_LISTED]
        ]
        if len(others) > MOST_LISTED:
            lines.append(f"  … and {len(others) - MOST_LISTED} more")
    return "\n".join(lines)
