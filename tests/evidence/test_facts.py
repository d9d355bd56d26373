"""Gathering the facts, their JSON form, and asking what they do not hold."""

from __future__ import annotations

import json
from datetime import date

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from evidence.catalogues import (
    catalogue,
    dated,
    facts,
    plate,
    round_,
    shown,
    source,
    square,
    vocabulary,
    window,
)
from evidence.chance import chance_facts
from inperiod.dating import decimal_year as whole_days
from inperiod.evidence import (
    Question,
    Unknown,
    Window,
    answer,
    facts_from_json,
    facts_to_json,
    gather_facts,
    timeline,
    usual_in_window,
)
from inperiod.evidence.calendar import decimal_year, window_in_words, year_of
from inperiod.evidence.facts import plural
from inperiod.records.model import Facet, Feature, Term, Vocabulary


@pytest.mark.parametrize("seed", range(12))
def test_facts_come_back_whole_from_their_json_form(seed: int) -> None:
    gathered = chance_facts(seed)
    assert facts_from_json(json.loads(json.dumps(facts_to_json(gathered)))) == gathered


def test_facts_of_another_format_are_refused() -> None:
    data = {**facts_to_json(facts()), "format": 1}
    with pytest.raises(ValueError, match="format 1"):
        facts_from_json(data)


def test_circa_widens_by_the_catalogues_setting() -> None:
    about = source("a", "1910~", square())
    assert facts(about, circa_years=3).documents[0].days == _days("1907", "1913")
    assert facts(about, circa_years=5).documents[0].days == _days("1905", "1915")
    assert facts(about).documents[0].tried == (_days("1910", "1910"), _days("1900", "1920"))


def _days(first: str, last: str) -> tuple[int | None, int | None]:
    return window(first).earliest, window(last).latest


def test_the_order_of_the_sources_in_the_folder_changes_nothing() -> None:
    sources = [source(each, "1912", square(2)) for each in "bca"]
    assert facts(*sources) == facts(*reversed(sources))


def test_a_term_seen_on_a_plate_counts_for_the_broader_term_of_its_facet() -> None:
    words = vocabulary()
    fastening = words.facets["fastening"]
    shank = Term("fastening", "shank-buttons", "Shank buttons", "…", fastening.mark, broader="buttons")
    words = Vocabulary(
        {
            **words.facets,
            "fastening": Facet(
                "fastening", "Fastening", "?", False, (*fastening.terms, shank), fastening.mark
            ),
        }
    )
    gathered = facts(source("a", "1912", [plate(shown("fastening/shank-buttons"))]), words=words)
    counts = [
        answer(gathered, Question("dress", (term,), window("1912"))).findings[0].sightings
        for term in ("fastening/buttons", "fastening/shank-buttons", "fastening/press-studs")
    ]
    assert counts == [1, 1, 0]


def test_words_the_vocabulary_lacks_are_taken_as_they_stand() -> None:
    mark = vocabulary().facets["neckline"].mark
    odd = plate(Feature("hemline", "hemline/odd-hem", mark), garment="over-all")
    gathered = gather_facts(catalogue(source("a", "1912", [odd])))
    assert (
        answer(gathered, Question("over-all", ("hemline/odd-hem",), window("1912"))).findings[0].sightings
        == 1
    )


def test_a_name_nobody_knows_is_refused_by_name() -> None:
    gathered = facts(source("a", "1912", square()))
    with pytest.raises(Unknown, match="no garment “toga”"):
        answer(gathered, Question("toga", ("neckline/square",), window("1912")))
    with pytest.raises(Unknown, match="no term “neckline/oval”"):
        answer(gathered, Question("dress", ("neckline/oval",), window("1912")))
    with pytest.raises(Unknown, match="no facet “hat”"):
        timeline(gathered, "dress", "hat")
    with pytest.raises(Unknown, match="no facet “hat”"):
        usual_in_window(gathered, Question("dress", (), window("1912")), "hat")


@pytest.mark.parametrize("grades", ["", "B", "CA", "abc"])
def test_grades_are_counted_from_the_best_down(grades: str) -> None:
    with pytest.raises(ValueError, match="grades are A, AB or ABC"):
        answer(facts(), Question("dress", ("neckline/square",), window("1912"), grades=grades))


@pytest.mark.parametrize("years", [-1, float("nan")])
def test_a_wear_allowance_is_not_less_than_nothing(years: float) -> None:
    with pytest.raises(ValueError, match="wear allowance"):
        answer(facts(), Question("dress", ("neckline/square",), window("1912"), worn_for=years))


def test_circles_among_garments_reprints_and_cuts_come_to_an_end() -> None:
    a = source("a", "1912", square(1, same_cut_as="b/p001"), reprint_of="b")
    b = source("b", "1913", square(1, same_cut_as="a/p001"), reprint_of="a")
    found = answer(facts(a, b), Question("dress", ("neckline/square",), window("1912"))).findings[0]
    assert found.verdict == "unrecorded"
    assert found.left_out[0].recording == 2


@pytest.mark.parametrize(
    ("label", "several"),
    [
        ("Day dress", "day dresses"),
        ("Blouse", "blouses"),
        ("Trousers", "trousers"),
        ("Jacket", "jackets"),
        ("Underwear", "pieces of underwear"),
        ("Accessory", "accessories"),
        ("Lay figure", "lay figures"),
        ("Textile (uncut cloth)", "textiles"),
        ("Beach pyjamas", "beach pyjamas"),
    ],
)
def test_several_of_a_garment(label: str, several: str) -> None:
    assert plural(label) == several


@settings(deadline=None)
@given(st.integers(-200_000, 1_200_000))
def test_decimal_years_agree_with_dating_on_whole_days(day: int) -> None:
    assert decimal_year(day) == whole_days(day)


@settings(deadline=None)
@given(st.dates())
def test_the_year_of_a_day_is_the_calendars(day: date) -> None:
    assert year_of(day.toordinal() + 0.5) == day.year


@pytest.mark.parametrize(
    ("when", "words"),
    [
        ("1926", "1926"),
        ("1924/1928", "1924–1928"),
        ("192X", "the 1920s"),
        ("1921/1930", "1921–1930"),
        ("1926-06", "June 1926"),
        ("1926-21", "March–May 1926"),
        ("1926-24", "December 1926 – February 1927"),
        ("1926-06-14", "14 June 1926"),
        ("1926-06-14/1926-07-31", "14 June 1926 – 31 July 1926"),
        ("../1900", "the time up to 1900"),
        ("1920-05-03/..", "the time from 3 May 1920"),
        ("1920/..", "the time from 1920"),
    ],
)
def test_a_window_is_said_as_people_say_it(when: str, words: str) -> None:
    asked = window(when)
    assert window_in_words(asked.earliest, asked.latest) == words


def test_a_window_open_at_both_ends_is_all_time() -> None:
    found = answer(
        facts(source("a", "1912", square()), source("b", "1950", round_())),
        Question("dress", ("neckline/square",), Window(None, None)),
    ).findings[0]
    assert (found.verdict, found.share.value) == ("seen once", 0.5)
    assert "in all time" in found.reasons[0]


def test_the_same_question_asked_twice_has_the_same_answer() -> None:
    gathered = chance_facts(4)
    asked = Question("dress", ("neckline/round", "sleeve/short"), window("1912"))
    first = answer(gathered, asked)
    assert answer(gathered, asked) == first
    gathered.memo.clear()
    assert answer(gathered, asked) == first


def test_an_own_date_equal_to_the_sources_is_the_same_document() -> None:
    album = source("a", "1912", [*square(1, date=dated("1912")), *square(1, date=dated("1911"))])
    assert [each.id for each in facts(album).documents] == ["a", "a@1911"]
