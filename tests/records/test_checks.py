"""The checks across a catalogue: each can be seen to fail, and none complains of what is right."""

from __future__ import annotations

import re
import shutil
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inperiod.records import Catalogue, check_catalogue, read_catalogue
from inperiod.records.checks import CHECKS, Check, check_source, check_together
from inperiod.records.checks.features import widths_are_understood
from inperiod.records.checks.references import in_circles
from inperiod.records.model import Feature, Vocabulary
from inperiod.records.problems import nearest

BROKEN = Path(__file__).parents[1] / "broken"
WHOLE = Path(__file__).parent / "whole"


@pytest.fixture(scope="module")
def whole() -> Catalogue:
    return read_catalogue(WHOLE).catalogue


@pytest.fixture(scope="module")
def broken(tmp_path_factory: pytest.TempPathFactory) -> list[Catalogue]:
    """All the small broken catalogues, those without a vocabulary with the shared one."""
    cases = shutil.copytree(BROKEN / "cases", tmp_path_factory.mktemp("broken") / "cases", symlinks=True)
    for case in cases.iterdir():
        if not (case / "vocabulary").exists():
            shutil.copytree(BROKEN / "vocabulary", case / "vocabulary")
    return [read_catalogue(case).catalogue for case in sorted(cases.iterdir())]


@pytest.mark.parametrize(
    "check", CHECKS, ids=lambda check: f"{check.__module__.rpartition('.')[2]}.{check.__name__}"
)
def test_every_check_finds_what_it_is_there_to_find(
    check: Check, broken: list[Catalogue], whole: Catalogue
) -> None:
    """Some broken catalogue makes it speak, and the whole one does not."""
    assert any(True for catalogue in broken for _ in check(catalogue))
    assert not list(check(whole))


def test_problems_come_sorted_and_once(broken: list[Catalogue]) -> None:
    for catalogue in broken:
        found = check_catalogue(catalogue)
        assert found == sorted(set(found))


def test_sources_by_themselves_and_records_together_are_all_there_is_to_check(
    broken: list[Catalogue],
) -> None:
    """What is kept of sources that have not changed is as good as asking them again."""
    for catalogue in broken:
        rules = replace(catalogue, sources={}, boards={})
        alone = [each for source in catalogue.sources.values() for each in check_source(source, rules)]
        assert sorted({*alone, *check_together(catalogue)}) == check_catalogue(catalogue)


def test_checks_do_not_need_a_vocabulary(whole: Catalogue) -> None:
    check_catalogue(replace(whole, vocabulary=Vocabulary({})))


@pytest.mark.parametrize(
    "width",
    [
        "1 in",
        "1/2 in",
        "1 1/2 in",
        "1-1/2 in",
        "½ in",
        "1½ in",
        "2.5 cm",
        "12 mm",
        "1-2 in",
        "1 to 2 cm",
        "3/4–1 in",
    ],
)
def test_widths_as_people_write_them_are_understood(width: str, whole: Catalogue) -> None:
    assert complaints_about_width(width, whole) == []


@pytest.mark.parametrize(
    "width", ["1", "wide", "in", "1 foot", "one in", "1in wide", "-1 in", "1" * 900 + "x", ""]
)
def test_widths_that_say_nothing_are_complained_of(width: str, whole: Catalogue) -> None:
    assert len(complaints_about_width(width, whole)) == 1


def complaints_about_width(width: str, whole: Catalogue) -> list[str]:
    source = whole.sources["summer-list"]
    plate = source.plates[0]
    feature = Feature("trim", "trim/insertion", plate.mark, width=width)
    changed = replace(source, plates=(replace(plate, features=(feature,)),))
    return [each.message for each in widths_are_understood(replace(whole, sources={source.id: changed}))]


@given(onward=st.dictionaries(st.sampled_from("abcdefgh"), st.sampled_from("abcdefgh")))
def test_circles_are_those_that_lead_back_to_their_start(onward: dict[str, str]) -> None:
    def leads_back(start: str) -> bool:
        at = onward.get(start)
        for _ in range(len(onward) + 1):
            if at == start:
                return True
            at = onward.get(at) if at else None
        return False

    assert in_circles(onward) == {start for start in onward if leads_back(start)}


def test_a_chain_of_a_hundred_thousand_is_followed_once() -> None:
    chain = {str(each): str(each + 1) for each in range(100_000)}
    assert in_circles(chain) == frozenset()
    assert len(in_circles({**chain, "100000": "0"})) == 100_001


def test_a_plate_is_not_before_its_time_where_its_circa_date_reaches_it() -> None:
    case = read_catalogue(BROKEN / "cases" / "before-its-time").catalogue
    source = case.sources["autumn-list"]
    vocabulary = read_catalogue(BROKEN).catalogue.vocabulary
    from inperiod.dating import read_edtf

    def complaints(date: str) -> int:
        assert source.date is not None
        dated = replace(source, date=replace(source.date, text=date, span=read_edtf(date)))
        changed = replace(case, vocabulary=vocabulary, sources={source.id: dated})
        return sum("not before" in each.message for each in check_catalogue(changed))

    assert [complaints(date) for date in ("1931~", "1933~", "1936", "1937", "193X", "1930/..")] == [
        1,
        0,
        1,
        0,
        0,
        0,
    ]


def test_the_nearest_word_is_near() -> None:
    assert nearest("sqare", ["round", "square"]) == "square"
    assert nearest("zzz", ["round", "square"]) is None
    assert nearest("x" * 100_000, ["round", "square"]) is None


def test_every_complaint_is_a_plain_sentence_with_a_capital_or_a_field_name() -> None:
    for expected in BROKEN.glob("cases/*/expected.txt"):
        for line in expected.read_text(encoding="utf-8").splitlines():
            if not line.startswith("    "):
                message = re.sub(r"^.*?:\d+:\d+ (error|warning): ", "", line)
                assert message[-1] in ".?", message
