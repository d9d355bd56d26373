"""Many people, one repository: what a change touches, what merges, and what other programs are told."""

from __future__ import annotations

import json
import os
import shutil
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from inperiod.cli import main
from inperiod.importing.writing import source_yaml
from inperiod.records import read_catalogue, tidied_files

WHOLE = Path(__file__).parents[1] / "records" / "whole"
NOBODY = {
    **{
        f"GIT_{who}_{what}": "nobody@example.org"
        for who in ("AUTHOR", "COMMITTER")
        for what in ("NAME", "EMAIL")
    },
    "GIT_CONFIG_GLOBAL": os.devnull,
    "GIT_CONFIG_NOSYSTEM": "1",
}
PLATE = {"garment": "day-dress", "features": ["neckline/square"]}

pytestmark = pytest.mark.skipif(shutil.which("git") is None, reason="no git here")


class Repository:
    """A git repository with a catalogue in its folder ``records``."""

    def __init__(self, home: Path, say: Callable[[], tuple[str, str]]) -> None:
        self.home, self.say = home, say
        self.records = home / "records"
        shutil.copytree(WHOLE, self.records, ignore=shutil.ignore_patterns(".inperiod"))
        (home / "README.md").write_text("Our catalogue.\n", encoding="utf-8")
        self.write("sources/alone.yaml", source("Alone"))
        self.git("init", "-q", "-b", "main")
        self.commit("The catalogue as it stands")

    def git(self, *arguments: str) -> str:
        ran = subprocess.run(
            ["git", "-C", self.home, *arguments],
            capture_output=True,
            text=True,
            check=False,
            env={**os.environ, **NOBODY},
        )
        assert ran.returncode == 0, ran.stderr + ran.stdout
        return ran.stdout

    def commit(self, words: str) -> None:
        self.git("add", "-A")
        self.git("commit", "-q", "-m", words)

    def write(self, name: str, text: str) -> None:
        (self.records / name).write_text(text, encoding="utf-8")

    def edit(self, name: str, before: str, after: str) -> None:
        text = (self.records / name).read_text(encoding="utf-8")
        assert before in text
        self.write(name, text.replace(before, after, 1))

    def check(self, *arguments: str) -> tuple[int, dict[str, Any]]:
        status = main(("check", str(self.records), "--json", *arguments))
        return status, json.loads(self.say()[0])

    def touched(self, revision: str = "HEAD") -> dict[str, list[str]]:
        found: dict[str, list[str]] = self.check("--changed", revision)[1]["changed"]["touched"]
        return found


def source(title: str, *plates: dict[str, Any], **more: Any) -> str:
    return source_yaml({
        **{"title": title, "kind": "other", "date": "1926", "date_basis": "printed"},
        **{"rights": "http://rightsstatements.org/vocab/NKC/1.0/", **more},
        "plates": list(plates) or [{"id": "p1", **PLATE}],
    })  # fmt: skip


@pytest.fixture
def repository(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Repository:
    return Repository(tmp_path / "repository", lambda: tuple(capsys.readouterr()))  # type: ignore[arg-type, return-value]


# --- what a change touches ----------------------------------------------------------------------------


def test_nothing_changed_touches_nothing(repository: Repository) -> None:
    status, data = repository.check("--changed", "HEAD")
    assert (status, data["changed"]["files"], data["problems"], data["sources"]) == (0, [], [], 0)
    assert main(("check", str(repository.records), "--changed", "HEAD")) == 0
    assert "No record has changed since HEAD" in repository.say()[0]


def test_a_changed_source_is_checked_and_no_other_that_does_not_refer_to_it(repository: Repository) -> None:
    repository.edit("sources/alone.yaml", "square", "squre")
    repository.edit("sources/summer-list.yaml", "title:", "titel:")
    repository.commit("Two slips")
    repository.git("checkout", "-q", "HEAD~1", "--", "records/sources/summer-list.yaml")
    status, data = repository.check("--changed", "HEAD~1")
    assert status == 1
    assert data["changed"]["files"] == ["sources/alone.yaml"]
    assert [each["file"] for each in data["problems"]] == ["sources/alone.yaml"]
    assert (data["sources"], data["plates"]) == (1, 1)


@pytest.mark.parametrize("how", ["committed", "staged", "in the folder", "new", "deleted", "renamed"])
def test_every_kind_of_change_is_seen(how: str, repository: Repository) -> None:
    expected = {"sources/alone.yaml"}
    if how == "new":
        repository.write("sources/another.yaml", source("Another"))
        expected = {"sources/another.yaml"}
    elif how == "deleted":
        (repository.records / "sources/alone.yaml").unlink()
    elif how == "renamed":
        repository.git("mv", "records/sources/alone.yaml", "records/sources/lonely.yaml")
        expected |= {"sources/lonely.yaml"}
    else:
        repository.edit("sources/alone.yaml", "Alone", "Alone still")
    if how == "staged":
        repository.git("add", "-A")
    if how == "committed":
        repository.commit("A change")
    assert set(repository.touched("HEAD~1" if how == "committed" else "HEAD")) == expected


def test_what_refers_to_a_changed_source_is_checked_with_it_however_far(repository: Repository) -> None:
    repository.write("sources/again.yaml", source("Again", reprint_of="alone"))
    repository.write(
        "sources/and-again.yaml", source("And again", {"id": "p1", "same_cut_as": "again/p1", **PLATE})
    )
    repository.edit("boards/saturday.yaml", "plates:\n", "plates:\n  - and-again/p1\n")
    repository.commit("A chain")
    (repository.records / "sources/alone.yaml").unlink()
    status, data = repository.check("--changed", "HEAD")
    assert status == 1
    assert data["changed"]["touched"] == {
        "boards/saturday.yaml": ["gathers from and-again"],
        "sources/again.yaml": ["reprints alone"],
        "sources/alone.yaml": [],
        "sources/and-again.yaml": ["has a cut of again again"],
    }
    assert [each["message"] for each in data["problems"] if each["severity"] == "error"] == [
        "again is a reprint of alone, and there is no such source."
    ]


def test_a_changed_term_touches_what_uses_it_and_nothing_else(repository: Repository) -> None:
    repository.write(
        "sources/round.yaml",
        source("Round", {"id": "p1", "garment": "dress", "features": ["neckline/round"]}),
    )
    repository.commit("A round neck")
    repository.edit("vocabulary/neckline.yaml", "id: round", "id: ronud")
    status, data = repository.check("--changed", "HEAD")
    assert status == 1
    touched = data["changed"]["touched"]
    assert touched["sources/round.yaml"] == ["uses neckline/round"]
    assert "sources/alone.yaml" not in touched
    assert {"vocabulary/garment.yaml", "vocabulary/neckline.yaml", "vocabulary/trim.yaml"} <= set(touched)
    assert [each["message"] for each in data["problems"] if each["file"] == "sources/round.yaml"] == [
        "The vocabulary has no term neckline/round."
    ]


def test_a_changed_broader_garment_touches_the_narrower_ones_plates(repository: Repository) -> None:
    repository.edit("vocabulary/garment.yaml", "id: dress", "definition_: x, id: dress")
    assert "uses garment/dress" in repository.touched()["sources/alone.yaml"]


def test_changed_settings_touch_everything_and_a_changed_picture_what_shows_it(
    repository: Repository,
) -> None:
    repository.edit("inperiod.yaml", "title:", "# a comment\ntitle:")
    assert len(repository.touched()) == 1 + sum(
        1 for name in ("sources", "boards", "vocabulary") for _ in (repository.records / name).iterdir()
    )
    repository.git("checkout", "-q", ".")
    picture = next(each for each in sorted((repository.records / "images").rglob("*.png")))
    picture.unlink()
    assert repository.touched()["sources/autumn-list.yaml"] == [
        f"shows {picture.relative_to(repository.records / 'images').as_posix()}"
    ]


def test_what_others_did_meanwhile_is_not_ones_own_change(repository: Repository) -> None:
    repository.git("checkout", "-q", "-b", "mine")
    repository.write("sources/mine.yaml", source("Mine"))
    repository.commit("Mine")
    repository.git("checkout", "-q", "main")
    repository.edit("sources/alone.yaml", "Alone", "Alone as ever")
    repository.commit("Theirs")
    repository.git("checkout", "-q", "mine")
    assert set(repository.touched("main")) == {"sources/mine.yaml"}


def test_files_that_are_no_records_and_odd_names_are_taken_calmly(repository: Repository) -> None:
    (repository.home / "README.md").write_text("Changed.\n", encoding="utf-8")
    (repository.records / "notes.txt").write_text("x", encoding="utf-8")
    assert repository.touched() == {}
    repository.write("sources/Jahres Übersicht “1926”.yaml", "title: x\n")
    status, data = repository.check("--changed", "HEAD")
    assert status == 1
    assert [each["message"] for each in data["problems"]] == ["The name of this file cannot serve as an id."]


# --- where git cannot say -----------------------------------------------------------------------------


def refused(arguments: tuple[str, ...], capsys: pytest.CaptureFixture[str]) -> str:
    assert main(("check", *arguments)) == 2
    out, err = capsys.readouterr()
    assert out == ""
    return err


def test_an_unknown_revision_is_named(repository: Repository, capsys: pytest.CaptureFixture[str]) -> None:
    for revision in ("mian", "", "HEAD~99", "main:records", "--output=/tmp/x", "-h", "a b", "$(id)", "\n"):
        said = refused((str(repository.records), f"--changed={revision}"), capsys)
        assert f"git knows no revision {revision} here" in said


def test_a_folder_outside_any_repository_is_named(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("GIT_CEILING_DIRECTORIES", str(tmp_path))
    shutil.copytree(WHOLE, tmp_path / "records")
    said = refused((str(tmp_path / "records"), "--changed", "HEAD"), capsys)
    assert "is in no git repository" in said
    assert "fatal" not in said


def test_a_machine_without_git_is_told(
    repository: Repository, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("PATH", str(repository.home))
    assert "git is not installed" in refused((str(repository.records), "--changed", "HEAD"), capsys)


def test_a_repository_without_commits_is_told(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    shutil.copytree(WHOLE, tmp_path / "records")
    subprocess.run(["git", "init", "-q", tmp_path], check=True, capture_output=True)
    assert "git knows no revision HEAD here" in refused(
        (str(tmp_path / "records"), "--changed", "HEAD"), capsys
    )


def test_no_program_that_a_repository_names_is_run(repository: Repository) -> None:
    trap = repository.home / "trap.sh"
    trap.write_text(f"#!/bin/sh\ntouch '{repository.home}/sprung'\n", encoding="utf-8")
    trap.chmod(0o755)
    for name in (
        "core.fsmonitor",
        "diff.external",
        "core.pager",
        "diff.trap.textconv",
        "diff.trap.command",
        "core.sshCommand",
    ):
        repository.git("config", name, str(trap))
    (repository.home / ".gitattributes").write_text("*.yaml diff=trap\n", encoding="utf-8")
    repository.edit("sources/alone.yaml", "Alone", "Alone again")
    repository.edit("vocabulary/neckline.yaml", "id: round", "id: ronud")
    repository.touched()
    assert not (repository.home / "sprung").exists()


# --- merging ------------------------------------------------------------------------------------------


def test_two_branches_that_add_plates_and_sources_merge_cleanly_and_the_whole_checks(
    repository: Repository,
) -> None:
    """One source a file, one plate a block of lines: additions at different plates and files do not meet."""
    many = [{"id": f"p{number}", "caption": f"Number {number}", **PLATE} for number in range(1, 9)]
    repository.write("sources/shared.yaml", source("Shared", *many))
    repository.commit("A list to work on together")
    for branch, at in (("one", 2), ("two", 6)):
        repository.git("checkout", "-q", "-b", branch, "main")
        repository.write(f"sources/of-{branch}.yaml", source(f"Of {branch}"))
        added = [*many[:at], {"id": f"p{at}-b", "caption": f"Found by {branch}", **PLATE}, *many[at:]]
        repository.write("sources/shared.yaml", source("Shared", *added))
        repository.edit(
            "vocabulary/neckline.yaml",
            "terms:\n",
            "terms:\n" if branch == "one" else "terms:\n  - {id: boat, label: boat, definition: Wide.}\n",
        )
        repository.commit(f"The work of {branch}")
    repository.git("checkout", "-q", "main")
    repository.git("merge", "-q", "--no-edit", "one")
    repository.git("merge", "-q", "--no-edit", "two")
    reading = read_catalogue(repository.records)
    assert reading.errors == ()
    assert [each.id for each in reading.catalogue.sources["shared"].plates] == [
        *("p1", "p2", "p2-b", "p3", "p4", "p5", "p6", "p6-b", "p7", "p8")
    ]
    assert {"of-one", "of-two"} <= set(reading.catalogue.sources)
    untidy, _ = tidied_files(repository.records)
    assert not {"sources/shared.yaml", "sources/of-one.yaml", "sources/of-two.yaml"} & {
        each.file for each in untidy
    }
    assert repository.check("--changed", "HEAD~2")[0] == 0


def test_a_merge_that_gives_one_id_twice_is_found_by_checking(repository: Repository) -> None:
    """What git cannot see: both add a plate, in different places, under the same id."""
    many = [{"id": f"p{number}", "caption": f"Number {number}", **PLATE} for number in range(1, 9)]
    repository.write("sources/shared.yaml", source("Shared", *many))
    repository.commit("A list")
    for branch, at in (("one", 1), ("two", 7)):
        repository.git("checkout", "-q", "-b", branch, "main")
        repository.write(
            "sources/shared.yaml", source("Shared", *many[:at], {"id": "p9", **PLATE}, *many[at:])
        )
        repository.commit(branch)
    repository.git("merge", "-q", "--no-edit", "one")
    status, data = repository.check("--changed", "one")
    assert status == 1
    assert "is used already" in " ".join(each["message"] for each in data["problems"])


def test_a_file_with_the_marks_of_a_conflict_is_refused_with_its_line(repository: Repository) -> None:
    repository.edit(
        "sources/alone.yaml",
        "title: Alone\n",
        "<<<<<<< HEAD\ntitle: Alone\n=======\ntitle: Two\n>>>>>>> two\n",
    )
    status, data = repository.check("--changed", "HEAD")
    assert status == 1
    assert {(each["file"], each["severity"]) for each in data["problems"]} == {
        ("sources/alone.yaml", "error")
    }
    assert 1 <= data["problems"][0]["line"] <= 5


# --- what other programs are told ---------------------------------------------------------------------


def test_problems_in_json_name_a_place_an_editor_can_go_to(repository: Repository) -> None:
    repository.edit("sources/alone.yaml", "neckline/square", "neckline/squar")
    status, data = repository.check()
    assert status == 1
    (problem,) = [each for each in data["problems"] if each["severity"] == "error"]
    assert set(problem) == {"file", "line", "column", "severity", "message", "hint"}
    line = (repository.records / problem["file"]).read_text(encoding="utf-8").split("\n")[problem["line"] - 1]
    assert line[problem["column"] - 1 :].startswith("neckline/squar")
    assert problem["hint"] == "Did you mean neckline/square?"


def test_sentences_begin_with_the_place_as_editors_and_terminals_read_it(
    repository: Repository, capsys: pytest.CaptureFixture[str]
) -> None:
    repository.edit("sources/alone.yaml", "neckline/square", "neckline/squar")
    assert main(("check", str(repository.records))) == 1
    lines = capsys.readouterr().out.splitlines()
    file, line, column, severity = lines[0].split(":")[:4]
    assert Path(file) == repository.records / "sources/alone.yaml"
    assert int(line) > 1
    assert int(column) > 1
    assert severity.strip() == "error"


def test_warnings_alone_are_no_failure(repository: Repository) -> None:
    repository.edit("sources/alone.yaml", "date_basis: printed\n", "")
    status, data = repository.check("--changed", "HEAD")
    assert (status, [each["severity"] for each in data["problems"]]) == (0, ["warning"])


@pytest.mark.skipif(os.name == "nt", reason="arguments are bytes on POSIX systems alone")
def test_an_argument_that_is_no_text_breaks_no_document() -> None:
    ran = subprocess.run(
        [sys.executable, "-m", "inperiod", "when", b"caf\xff 1926", "--json"],
        capture_output=True,
        check=False,
        env={**os.environ, "PYTHONIOENCODING": "utf-8:strict"},
    )
    assert ran.returncode in (0, 1)
    assert ran.stderr == b""
    assert json.loads(ran.stdout)["input"] == "caf\udcff 1926"
