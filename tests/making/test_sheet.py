"""A whole sheet: lines in their order, what to buy for them all, problems with their place, nothing lost."""

from __future__ import annotations

import json
import re
from contextlib import suppress
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inperiod.making import KINDS, MakingSheet, as_json, read_measure, sheet
from inperiod.making.asking import Asked, CannotWorkOut
from inperiod.records.model import Catalogue

FRILL = {"kind": "frill", "edge": "34 in"}


def test_an_empty_board_has_an_empty_sheet() -> None:
    assert sheet(()) == MakingSheet()


def test_lines_stand_in_the_boards_order_and_carry_its_words() -> None:
    made = sheet(
        [{**FRILL, "what": "Neck frill", "at": "neck", "note": "By hand."}, {**FRILL, "edge": "17 in"}]
    )
    assert [line.title for line in made.lines] == ["Neck frill, neck", "Frill"]
    assert made.lines[0].notes[0] == "By hand."


def test_what_is_bought_under_one_name_is_summed_before_it_is_rounded_up() -> None:
    lace = {**FRILL, "buy": "Cotton lace, 5/8 in"}
    made = sheet([lace, {**lace, "edge": "17 in"}, {**FRILL, "edge": "17 in"}])
    # 52 in + 26 1/2 in = 78 1/2 in, which is above 2 1/8 yd; each alone would make 1 1/2 + 3/4 yd.
    assert [(each.what, each.text, each.lines) for each in made.shopping] == [
        ("Cotton lace, 5/8 in", "2 1/4 yd (2 m)", (0, 1)),
        ("Frill", "3/4 yd (0.7 m)", (2,)),
    ]


def test_a_problem_has_the_place_of_its_line_and_the_others_stand() -> None:
    made = sheet([FRILL, {"kind": "frill", "edge": "wide"}, {"kind": "lace"}, {"edge": "3 in"}, FRILL])
    assert [line.index for line in made.lines] == [0, 4]
    assert [(problem.index, problem.field) for problem in made.problems] == [
        (1, "edge"),
        (2, "kind"),
        (3, "kind"),
    ]
    assert made.problems[1].message == "“lace” is not a kind of work known here."
    assert made.problems[1].hint == f"Expected one of: {', '.join(KINDS)}."


def test_all_that_is_wrong_with_a_line_is_said_at_once() -> None:
    made = sheet([{"kind": "tucks", "width": "wide", "style": "big", "turning": 1}])
    assert [problem.field for problem in made.problems] == ["style", "width", "gap", "turning", "number"]


def test_cautions_of_lines_are_told_once() -> None:
    bias = {"kind": "bias", "width": "1 in", "length": "2 yd"}
    assert len(sheet([bias, bias]).cautions) == 1


def test_markup_in_a_record_stays_text() -> None:
    made = sheet([{**FRILL, "what": "<script>alert(1)</script>"}])
    assert made.lines[0].title == "<script>alert(1)</script>"


junk = st.recursive(
    st.none()
    | st.booleans()
    | st.integers()
    | st.floats()
    | st.text(max_size=20)
    | st.sampled_from(["3 in", "2.5 cm", "1/4 in", "5 %", "pin", "any", 2, 1.5, "0 in", "1000 yd", "9"]),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=8), inner, max_size=3),
    max_leaves=6,
)
FIELDS = (
    "edge fullness turning depth hem cloth_width open of along corners width take_up ties stitch factor "
    "strands skein style gap fold_to_fold number finished flat margin panels pleat length method seam "
    "remnant shortest opening spacing top bottom sets spare selvedge warp weft doubled one_way sold_by "
    "price currency pieces what at note buy "
).split()


@settings(deadline=None)
@given(st.sampled_from(list(KINDS)), st.dictionaries(st.sampled_from(FIELDS), junk, max_size=8))
def test_whatever_is_written_gives_a_sheet_or_a_problem(kind: str, fields: dict[str, Any]) -> None:
    made = sheet([{"kind": kind, **fields}])
    assert made.lines or made.problems
    json.dumps(as_json(made), allow_nan=False)


@settings(deadline=None)
@given(junk)
def test_whatever_the_kind_is_called_is_answered(kind: Any) -> None:
    made = sheet([{"kind": kind}])
    assert made.problems


def lengths_in(text: str) -> list[str]:
    return text.removesuffix(".").split("Cut or buy ")[1].split(" of ")[0][:-1].split(" (")


@settings(deadline=None)
@given(st.integers(1, 4000), st.sampled_from(["1", "1.5", "2", "2.5", "3"]))
def test_what_the_sheet_says_to_cut_is_enough_in_both_units(sixteenths: int, fullness: str) -> None:
    edge = sixteenths / 16
    found = sheet([{"kind": "frill", "edge": f"{edge} in", "fullness": fullness}]).lines[0]
    for text in lengths_in(found.cut):
        assert float(read_measure(text).inches) >= edge * float(fullness) + 1


def test_every_board_of_the_demonstration_is_worked_out_whole(demo_catalogue: Catalogue) -> None:
    for board in demo_catalogue.boards.values():
        made = sheet(board.making)
        assert made.problems == (), board.id
        assert len(made.lines) == len(board.making) >= 3, board.id
        assert made.shopping, board.id


def test_the_contract_of_boards_knows_every_kind() -> None:
    schema = json.loads((Path(__file__).parents[2] / "schemas" / "board.json").read_text(encoding="utf-8"))
    kind = schema["properties"]["making"]["items"]["properties"]["kind"]
    assert kind["enum"] == list(KINDS)
    # Each field a kind asks for is named in its description, which editors show.
    for name, work in KINDS.items():
        asked = Asked(0, {"kind": name})
        with suppress(CannotWorkOut):
            work(asked)
        part = re.search(rf"\b{name}: ([^.]*)\.", kind["description"])
        assert part is not None
        assert set(asked.asked_for) - {"fullness"} <= set(re.findall(r"[a-z_]+", part[1])), name


@pytest.mark.parametrize("kind", KINDS)
def test_every_kind_says_what_it_misses(kind: str) -> None:
    made = sheet([{"kind": kind}])
    assert made.lines == ()
    assert all(problem.message and problem.hint and problem.field for problem in made.problems)
