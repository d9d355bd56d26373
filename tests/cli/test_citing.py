"""Citing many plates, a board, and all that an answer lists, from the command line."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from inperiod.citing import STYLES, cite
from inperiod.cli import main
from inperiod.records import Catalogue

BOARD = "womans-regatta-frock-1926"


@pytest.fixture
def run(capsys: pytest.CaptureFixture[str], demo_folder: Path) -> Any:
    def _run(*arguments: str) -> tuple[int, str, str]:
        try:
            status = main((*arguments, str(demo_folder)))
        except SystemExit as ended:
            status = int(ended.code or 0)
        out, err = capsys.readouterr()
        return status, out, err

    return _run


@pytest.mark.parametrize("style", STYLES)
def test_many_plates_are_cited_in_the_order_given(run: Any, demo_catalogue: Catalogue, style: str) -> None:
    keys = [list(demo_catalogue.plates)[place] for place in (40, 3, 200)]
    status, out, _ = run("cite", *keys, "--style", style)
    assert status == 0
    assert out.splitlines() == [cite(demo_catalogue, key, style) for key in keys]


def test_a_source_is_cited_by_its_id_and_options_may_stand_anywhere(run: Any) -> None:
    before = run("cite", "--style", "mla", "harrowmere-washing-frocks-1926")
    after = run("cite", "harrowmere-washing-frocks-1926", "--style", "mla")
    assert before == after
    assert before[0] == 0
    assert before[1].startswith("Washing Frocks for Lake & Lawn.")


def test_a_boards_plates_are_exported_each_once(run: Any, demo_catalogue: Catalogue) -> None:
    status, out, _ = run("cite", "--board", BOARD, "--format", "csl-json")
    assert status == 0
    gathered = [each.plate for each in demo_catalogue.boards[BOARD].plates]
    assert [item["id"] for item in json.loads(out)] == list(dict.fromkeys(gathered))


def test_what_does_not_exist_is_named_with_the_nearest_that_does(run: Any) -> None:
    status, _, err = run("cite", "--board", BOARD[:-1])
    assert status == 2
    assert BOARD in err
    status, _, err = run("cite", "--style", "mla")
    assert status == 2
    assert "name a PLATE" in err


def test_an_answer_cites_every_plate_it_lists(run: Any, demo_catalogue: Catalogue) -> None:
    asked = ("fit", "--garment", "day-dress", "--feature", "v", "--feature", "tubular", "--when", "1926")
    status, out, _ = run(*asked, "--cite", "mla", "--json")
    assert status == 0
    answer = json.loads(out)
    listed = {key for finding in (*answer["features"], answer["together"]) for key in finding["cite"]}
    assert listed
    assert answer["citations"] == {key: cite(demo_catalogue, key, "mla") for key in answer["citations"]}
    assert set(answer["citations"]) == listed
    _, words, _ = run(*asked, "--cite", "mla")
    unwrapped = " ".join(words.split())
    assert all(" ".join(text.split()) in unwrapped for text in answer["citations"].values())


def test_an_unknown_style_is_refused_with_the_known_ones(run: Any) -> None:
    status, _, err = run("fit", "--garment", "dress", "--feature", "v", "--when", "1926", "--cite", "cards")
    assert status == 2
    assert "chicago-note" in err
