"""``inperiod board``: the board in the terminal, and its exit status."""

from __future__ import annotations

import json

import pytest

from inperiod.cli import main


def run(capsys, *arguments):
    status = main(["board", *map(str, arguments)])
    printed = capsys.readouterr()
    return status, printed.out, printed.err


def test_a_board_of_the_catalogue_is_shown_whole(capsys, demo_folder):
    status, out, _ = run(capsys, demo_folder / "boards" / "nightdress-boathouse-hotel.yaml")
    assert status == 0
    for words in ("V neck (neckline/v): ATTESTED", "To settle:", "Departures:", "Making sheet:", "To buy:"):
        assert words in out
    assert "Cautions:" in out
    assert out.rstrip().endswith("4 of 9 planned features attested; 0 contradictions, 0 errors.")


def test_a_board_is_found_by_its_id_and_answers_in_json(capsys, demo_folder):
    status, out, _ = run(capsys, "boys-bathing-suit-1926", demo_folder, "--json")
    data = json.loads(out)
    assert status == 0
    assert data["id"] == "boys-bathing-suit-1926"
    assert data["problems"] == []


@pytest.mark.parametrize(
    ("text", "status"),
    [
        ("title: T\ntarget: 1926\ngarment: day-dress\n", 0),
        ("title: T\ntarget: 1926\ngarment: day-dress\nfeatures: [neckline/v, neckline/square]\n", 1),
        ("title: T\ntarget: 1926\ngarment: day-dress\nmaking: [{kind: frill}]\n", 1),
        ("title: T\ntarget: 1926\ngarment: day-dress\nplates: [no-such/p1]\n", 1),
        ("title: T\ntarget: the year dot\ngarment: day-dress\n", 1),
        ("title: [\n", 1),
        ("", 1),
    ],
)
def test_the_exit_status_says_whether_the_board_holds(capsys, tmp_path, demo_folder, text, status):
    file = tmp_path / "From The Browser.yaml"
    file.write_text(text, encoding="utf-8")
    given, out, _ = run(capsys, file, demo_folder)
    assert given == status
    assert out.strip()
    again, out, _ = run(capsys, file, demo_folder, "--json")
    assert again == status
    assert "problems" in json.loads(out)


def test_a_complaint_names_the_file_and_the_line(capsys, tmp_path, demo_folder):
    file = tmp_path / "b.yaml"
    file.write_text("title: T\ntarget: 1926\ngarment: day-dres\n", encoding="utf-8")
    _, out, _ = run(capsys, file, demo_folder)
    assert f"{file.as_posix()}:3:10: error:" in out


def test_a_board_that_is_not_there_is_the_commands_fault(capsys, demo_folder):
    status, out, err = run(capsys, "nonesuch", demo_folder)
    assert (status, out) == (2, "")
    assert "there is no board nonesuch" in err
