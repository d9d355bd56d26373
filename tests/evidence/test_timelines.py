"""Styles against decades, the usual alternatives, and what a verdict hangs on."""

from __future__ import annotations

import pytest

from evidence.catalogues import TERMS, facts, plate, round_, shown, source, square, window, yearly
from evidence.chance import chance_facts
from inperiod.evidence import Question, answer, as_json, sensitivity, timeline, usual_in_window


def test_a_timeline_sums_weights_by_decade() -> None:
    gathered = facts(
        source("a", "1909/1910", square()),
        source("b", "1912", square() + round_(3)),
        source("c", "1935", round_()),
    )
    found = timeline(gathered, "dress", "neckline")
    assert found.decades == (1890, 1900, 1910, 1920, 1930)
    assert found.recorded == pytest.approx((0, 0.5, 4.5, 0, 1))
    assert found.looked == (0, 1, 2, 0, 1)
    square_row, round_row = found.rows
    assert (square_row.term, square_row.weights) == ("neckline/square", pytest.approx((0, 0.5, 1.5, 0, 0)))
    assert square_row.shares == (None, 1.0, pytest.approx(1.5 / 4.5), None, 0.0)
    assert square_row.documents == (0, 1, 2, 0, 0)
    assert (round_row.weights, round_row.documents) == ((0, 0, 3, 0, 1), (0, 0, 1, 0, 1))


def test_a_timeline_reaches_as_far_as_the_documents_unless_told() -> None:
    gathered = facts(source("a", "1745", square()), source("b", "1912", square()))
    assert timeline(gathered, "dress", "neckline").decades[0] == 1740
    assert timeline(gathered, "dress", "neckline", decades=(1900, 1920)).decades == (1900, 1910, 1920)


def test_a_timeline_of_nothing_shows_its_decades_empty() -> None:
    found = timeline(facts(), "coat", "sleeve")
    assert (found.rows, set(found.recorded), set(found.looked)) == ((), {0}, {0})


@pytest.mark.parametrize("seed", range(6))
def test_the_decades_of_a_facet_hold_all_its_weight(seed: int) -> None:
    gathered = chance_facts(seed)
    for facet in TERMS:
        found = timeline(gathered, "dress", facet, grades="ABC", decades=(1860, 1960))
        asked = Question("dress", (), window("1860/1969"), grades="ABC")
        for each in usual_in_window(gathered, asked, facet):
            row = next(row for row in found.rows if row.term == each.term)
            assert sum(row.weights) == pytest.approx(each.share.showing)
            assert sum(found.recorded) == pytest.approx(each.share.recorded)


def test_a_row_tells_what_a_finding_tells() -> None:
    gathered = facts(*yearly(1900, 1930, range(1905, 1915)), source("stray", "1928", square()))
    row = next(
        each for each in timeline(gathered, "dress", "neckline").rows if each.term == "neckline/square"
    )
    found = answer(gathered, Question("dress", ("neckline/square",), window("1910"))).findings[0]
    assert (row.first, row.last, row.extension) == (found.first, found.last, found.extension)
    assert [each.plate for each in row.set_aside] == ["stray/p001"]


def test_the_usual_alternatives_stand_commonest_first() -> None:
    vees = [plate(shown("neckline/v"))]
    gathered = facts(source("a", "1926", [*square(), *round_(5), *vees * 2]), source("b", "1912", square(9)))
    found = usual_in_window(gathered, Question("dress", ("neckline/square",), window("1926")), "neckline")
    assert [(each.term, each.share.showing) for each in found] == [
        ("neckline/round", 5),
        ("neckline/v", 2),
        ("neckline/square", 1),
    ]
    assert {each.share.recorded for each in found} == {8}


def test_sensitivity_names_what_the_verdict_hangs_on() -> None:
    gathered = facts(
        source("about", "1910~", square()),
        source("year", "1912", square()),
        source("seller", "1925", square(), basis="seller"),
        *yearly(1915, 1930, []),
    )

    def changes(when: str) -> list[str]:
        asked = Question("dress", ("neckline/square",), window(when))
        return [each.sentence for each in sensitivity(gathered, asked)]

    assert changes("1912") == [
        "If “circa” were read as 10 years either side, the verdict would be seen once, not attested."
    ]
    assert any("grade C were counted too, the verdict would be seen once" in each for each in changes("1925"))


def test_sensitivity_is_silent_where_the_answer_stands_firm() -> None:
    gathered = facts(*yearly(1900, 1930, range(1905, 1915)))
    assert sensitivity(gathered, Question("dress", ("neckline/square",), window("1910"))) == ()


def test_the_json_of_an_answer_has_the_keys_others_rely_on() -> None:
    gathered = facts(*yearly(1900, 1930, range(1905, 1915)))
    asked = Question("dress", ("neckline/square", "neckline/round"), window("1910"))
    found = as_json(answer(gathered, asked))
    assert {"when", "garment", "features", "together"} <= found.keys()
    keys = {
        "term",
        "verdict",
        "frequency",
        "share",
        "sightings",
        "in_window",
        "set_aside",
        "first",
        "last",
        "extension",
        "absence_p",
        "not_before",
        "cite",
        "reasons",
    }
    for each in (*found["features"], found["together"]):
        assert keys <= each.keys()
        assert each["share"].keys() == {"showing", "recorded", "effective", "value", "low", "high"}
        assert each["extension"].keys() == {"earliest", "latest"}
    assert found["features"][0]["first"].keys() == {"plate", "date"}
    assert found["when"] == {"earliest": "1910-01-01", "latest": "1910-12-31"}
    assert as_json(answer(gathered, asked), when={"edtf": "1910"})["when"] == {"edtf": "1910"}


def test_the_json_of_a_timeline_has_the_keys_others_rely_on() -> None:
    found = as_json(timeline(facts(*yearly(1900, 1930, range(1905, 1915))), "dress", "neckline"))
    assert {"decades", "rows", "recorded"} <= found.keys()
    assert {"term", "weights", "documents"} <= found["rows"][0].keys()


def test_nothing_else_has_a_json_form() -> None:
    with pytest.raises(TypeError, match="no JSON form for int"):
        as_json(3)
