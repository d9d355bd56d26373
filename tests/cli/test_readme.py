"""What the README says is so: its commands run, its answer is the answer, its record is a good record.

Run as a program this puts the answer as the demonstration now gives it into the README:
``.venv/bin/python tests/cli/test_readme.py``.
"""

from __future__ import annotations

import contextlib
import io
import os
import re
import shlex
from pathlib import Path

import pytest

from inperiod.cli import main, make_parser
from inperiod.importing import new_folder
from inperiod.records import read_catalogue

CHECKOUT = Path(__file__).parents[2]
README = (CHECKOUT / "README.md").read_text(encoding="utf-8")


def blocks(language: str) -> list[str]:
    return re.findall(rf"^```{language}\n(.*?)^```$", README, re.MULTILINE | re.DOTALL)


def commands() -> list[str]:
    """Every ``inperiod …`` the README tells people to type, in blocks and in running text."""
    typed = [
        line.removeprefix("$ ")
        for kind in ("sh", "console")
        for block in blocks(kind)
        for line in block.splitlines()
    ]
    typed += re.findall(r"`(inperiod [^`]+)`", README)
    return [each.partition("inperiod ")[2] for each in typed if re.match(r"(\.venv/bin/)?inperiod ", each)]


def test_the_first_two_commands_are_there_to_run() -> None:
    first, second = (block.split()[1] for block in blocks("sh")[:2])
    assert (CHECKOUT / first).is_file()
    assert (CHECKOUT / second).is_file()


@pytest.mark.parametrize("command", sorted(set(commands())))
def test_every_command_is_understood(command: str) -> None:
    arguments = shlex.split(command)
    if "--help" not in arguments:
        make_parser().parse_args(arguments)


def test_the_answer_shown_is_the_answer_given(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(CHECKOUT)
    monkeypatch.setenv("COLUMNS", "80")
    typed, _, shown = blocks("console")[0].partition("\n")
    assert main(shlex.split(typed.partition("inperiod ")[2])) == 0
    assert capsys.readouterr().out == shown, "run: .venv/bin/python tests/cli/test_readme.py"


def test_the_record_shown_is_a_good_record(tmp_path: Path) -> None:
    new_folder(tmp_path / "mine")
    (tmp_path / "mine/sources/shown.yaml").write_text(blocks("yaml")[0], encoding="utf-8")
    reading = read_catalogue(tmp_path / "mine")
    assert reading.problems == ()
    assert len(reading.catalogue.sources["shown"].plates[0].features) == 5


def test_the_files_it_points_at_are_there() -> None:
    for target in re.findall(r"\]\(([^)#:]+)\)", README):
        assert (CHECKOUT / target).exists(), target


def _refresh() -> None:
    os.environ["COLUMNS"] = "80"
    os.chdir(CHECKOUT)
    typed, _, shown = blocks("console")[0].partition("\n")
    printed = io.StringIO()
    with contextlib.redirect_stdout(printed):
        main(shlex.split(typed.partition("inperiod ")[2]))
    (CHECKOUT / "README.md").write_text(README.replace(shown, printed.getvalue()), encoding="utf-8")


if __name__ == "__main__":
    _refresh()
