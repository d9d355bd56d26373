"""Each verdict, by a small catalogue one can read."""

from __future__ import annotations

from typing import Any

import pytest

from evidence.catalogues import facts, plate, round_, shown, source, square, vocabulary, window, yearly
from inperiod.evidence import Finding, Question, answer
from inperiod.records.model import Source

SLIDE = "fastening/slide-fastener"


def ask(when: str, *sources: Source, term: str = "neckline/square", **more: Any) -> Finding:
    words = more.pop("words", None)
    asked = Question("day-dress", (term,), window(when), **more)
    return answer(facts(*sources, words=words), asked).findings[0]


def test_too_early_when_the_window_ends_before_the_patent() -> None:
    words = vocabulary({SLIDE: "1917-03-20"})
    slide = source("a", "1913", [plate(shown(SLIDE))])
    assert ask("1917-03-19", slide, term=SLIDE, words=words).verdict == "too early"
    assert ask("1913", slide, term=SLIDE, words=words).verdict == "too early"
    assert ask("1917", slide, term=SLIDE, words=words).verdict != "too early"
    assert ask("1917-03-20", slide, term=SLIDE, words=words).verdict != "too early"


def test_a_circa_patent_date_is_taken_at_its_earliest() -> None:
    words = vocabulary({SLIDE: "1917~"})
    assert ask("1912", term=SLIDE, words=words).verdict == "unrecorded"
    assert ask("1911", term=SLIDE, words=words).verdict == "too early"


def test_attested_by_two_documents_in_the_window() -> None:
    found = ask("1912", source("a", "1912-03", square()), source("b", "1912-09", square()))
    assert (found.verdict, found.in_window) == ("attested", 2)


def test_attested_by_two_documents_in_the_window_however_many_others_lie_between() -> None:
    others = [source(f"o{month}", f"1912-{month:02d}", round_()) for month in range(2, 12)]
    found = ask("1912", source("a", "1912-01", square()), *others, source("z", "1912-12", square()))
    assert (found.verdict, found.in_window) == ("attested", 2)


def test_attested_by_one_document_that_another_close_by_backs() -> None:
    found = ask("1912", source("a", "1912", square()), source("b", "1914", square()))
    assert (found.verdict, found.in_window) == ("attested", 1)


@pytest.mark.parametrize(("between", "verdict"), [(4, "attested"), (5, "seen once")])
def test_backing_reaches_five_documents_and_no_further(between: int, verdict: str) -> None:
    others = [source(f"o{year}", str(year), round_()) for year in range(1913, 1913 + between)]
    found = ask("1912", source("a", "1912", square()), *others, source("z", "1930", square()))
    assert found.verdict == verdict


def test_seen_once_where_one_document_alone_shows_it() -> None:
    found = ask("1912", source("a", "1912", square(9)), source("b", "1913", round_()))
    assert found.verdict == "seen once"
    assert found.cite[0] == "a/p001"


def test_unrecorded_where_no_document_shows_it() -> None:
    assert ask("1912", source("a", "1912", round_())).verdict == "unrecorded"


def test_an_inferred_reading_is_no_sighting_but_counts_in_the_share() -> None:
    found = ask("1912", source("a", "1912", [plate(shown("neckline/square", "inferred"))]))
    assert (found.verdict, found.sightings) == ("unrecorded", 0)
    assert found.share.showing == 1


def test_lapsed_where_enough_was_looked_at_in_a_gap() -> None:
    sources = yearly(1900, 1935, [*range(1901, 1908), *range(1928, 1934)], plates=40)
    assert ask("1910/1925", *sources).verdict == "lapsed"


def test_bracketed_where_too_little_was_looked_at_in_a_gap() -> None:
    sources = yearly(1900, 1935, [*range(1901, 1908), *range(1928, 1934)], plates=1)
    found = ask("1915", *sources)
    assert found.verdict == "bracketed"
    assert found.reasons[0] == (
        "Not seen in 1915 itself, but seen before it (1907) and after it (1928), "
        "with 20 documents between and no sighting in them."
    )


def test_plausible_where_the_window_reaches_an_end_of_the_range() -> None:
    sources = [source("a", "1912-09", square()), source("b", "1914", square())]
    assert ask("1912-09-10/1912-09-20", *sources).verdict == "plausible"


def test_the_ends_of_the_range_are_the_middles_of_its_documents() -> None:
    sources = [
        source("a", "1912", square()),
        source("b", "1914", square()),
    ]  # middles 1 July 1912, 2 July 1914
    assert ask("1912-06-01/1912-07-01", *sources).verdict == "plausible"
    assert ask("1912-07-02/1912-07-31", *sources).verdict == "bracketed"
    assert ask("1914-06-01/1914-07-01", *sources).verdict == "bracketed"
    assert ask("1914-06-01/1914-07-02", *sources).verdict == "plausible"
    assert ask("1914-06-01/1914-07-02", *sources).absence_p is None
    assert ask("1914-07-03/1914-07-31", *sources).absence_p == 1
    assert ask("1912-06-01/1912-06-30", *sources).absence_p == 1


def test_one_sighting_reaches_to_the_middle_of_its_document_and_no_further() -> None:
    assert ask("1912-07-01/1912-07-31", source("a", "1912", square())).verdict == "plausible"
    assert ask("1912-08", source("a", "1912", square())).verdict == "unproven"


def test_the_guide_in_years_is_of_the_range_from_middle_to_middle() -> None:
    # Six yearly sightings, R = 5 years: Strauss and Sadler's multiple for N = 6 is 0.821.
    found = ask("1911", *(source(f"s{year}", str(year), square()) for year in range(1904, 1910)))
    assert found.guide_years == pytest.approx(5 * 0.821, abs=0.005)


def test_an_inferred_showing_is_enough_against_direct_absence() -> None:
    sources = yearly(1900, 1935, [*range(1901, 1908), *range(1928, 1934)], plates=40)
    inferred = source("i", "1917", [plate(shown("neckline/square", "inferred"))])
    found = ask("1910/1925", *sources, inferred)
    assert (found.verdict, found.direct_absence) == ("bracketed", False)


def test_plausible_a_little_outside_while_nothing_speaks_against_it() -> None:
    sources = [source(f"s{year}", str(year), square()) for year in range(1904, 1910)]
    assert ask("1911", *sources).verdict == "plausible"
    assert ask("1902", *sources).verdict == "plausible"


def test_never_plausible_more_than_ten_years_outside() -> None:
    sources = [source("a", "1900", square()), source("b", "1908", square())]
    assert ask("1918", *sources).verdict == "plausible"  # 9.5 years after; the guide would allow 152
    assert ask("1919", *sources).verdict == "unproven"


def test_unsupported_where_many_documents_beyond_do_not_show_it() -> None:
    found = ask("1922", *yearly(1900, 1930, range(1905, 1915)))
    assert found.verdict == "unsupported"
    assert found.absence_p is not None
    assert found.absence_p < 0.05
    assert "not the same as not in use" in " ".join(found.reasons)


def test_unsupported_by_direct_absence_alone() -> None:
    lists = [source(f"b{number:02d}", "1925", round_(40)) for number in range(12)]
    found = ask("1925", source("a", "1912", square()), *lists)
    assert (found.verdict, found.absence_p, found.direct_absence) == ("unsupported", 1.0, True)


def test_unsupported_goes_before_plausible_outside_the_range() -> None:
    sources = yearly(1904, 1909, range(1904, 1910))
    looked = [source(f"z{number:02d}", "1911", round_(40)) for number in range(12)]
    assert ask("1911", *sources, *looked).verdict == "unsupported"


def test_unproven_where_too_little_was_looked_at() -> None:
    assert ask("1950", source("a", "1912", square()), source("b", "1913", square())).verdict == "unproven"


def test_a_single_sighting_grants_no_years_beyond_it() -> None:
    found = ask("1913", source("a", "1912", square()))
    assert (found.verdict, found.guide_years, found.absence_p) == ("unproven", 0, 1)


def test_sightings_outside_the_backed_range_are_set_aside_and_never_hidden() -> None:
    sources = [*yearly(1900, 1930, range(1905, 1911)), source("stray", "1927", square())]
    found = ask("1907", *sources)
    assert found.set_aside == ("stray/p001",)
    assert found.last is not None
    assert found.last.plate == "list-1910/p001"
    assert found.sightings == 7
    assert found.guide_years == pytest.approx(5 * 0.821, abs=0.005)  # N = 6 within the range, R = 5 years
    assert found.cite[-1] == "stray/p001"  # offered last: its date is doubtful
    assert any("stands alone; check its date: stray/p001 (1927)" in each for each in found.reasons)


def test_the_frequency_word_is_said_of_what_was_seen() -> None:
    assert ask("1912", source("a", "1912", square(2) + round_(8))).frequency == "usual"
    assert ask("1912", source("a", "1912", square() + round_(14))).frequency == "occasional"
    assert ask("1912", source("a", "1912", square() + round_(30))).frequency == "rare"
    assert ask("1912", source("a", "1912", round_(30))).frequency is None
    assert ask("1920", source("a", "1912", square())).frequency is None


def test_a_window_before_its_first_use_in_dress_says_so() -> None:
    words = vocabulary(in_dress_from={SLIDE: "1925"})
    slide = source("a", "1920", [plate(shown(SLIDE))])
    assert any(
        "Known in dress only from 1925" in each
        for each in ask("1920", slide, term=SLIDE, words=words).reasons
    )
    assert not any("Known in dress" in each for each in ask("1926", slide, term=SLIDE, words=words).reasons)


def test_a_narrower_garment_counts_for_a_broader_one_and_not_the_other_way() -> None:
    gathered = facts(
        source("a", "1912", square(garment="house-dress")), source("b", "1912", square(garment="dress"))
    )
    counts = {
        garment: answer(gathered, Question(garment, ("neckline/square",), window("1912")))
        .findings[0]
        .sightings
        for garment in ("house-dress", "day-dress", "dress", "coat")
    }
    assert counts == {"house-dress": 1, "day-dress": 1, "dress": 2, "coat": 0}


def test_limits_by_place_wearer_and_kind() -> None:
    sources = [
        source("a", "1912", square(), place="London, England"),
        source("b", "1913", square(who="girl"), place="Paris", market="London"),
        source("c", "1914", square(who="any"), kind="photograph"),
    ]
    assert ask("1912", *sources, place="LONDON").sightings == 3
    assert ask("1912", *sources, place="England").sightings == 2
    assert ask("1912", *sources, place="Paris").sightings == 0  # sold in London: the market says where
    assert ask("1912", *sources, wearer="girl").sightings == 2
    assert ask("1912", *sources, wearer="woman").sightings == 2
    assert ask("1912", *sources, kind="photograph").sightings == 1


def test_a_wear_allowance_counts_an_earlier_sighting_as_inside_and_dilutes_no_weight() -> None:
    sources = [source("a", "1910", square()), source("b", "1911", square()), source("c", "1914", round_(3))]
    without, with_it = ask("1914", *sources), ask("1914", *sources, worn_for=3)
    assert (without.verdict, without.in_window) == ("plausible", 0)
    assert (with_it.verdict, with_it.in_window, with_it.worn) == ("attested", 1, ("b/p001",))
    assert with_it.share == without.share
    assert any("wear allowance of 3 years: b/p001 (1911)" in each for each in with_it.reasons)


def test_plates_to_cite_stand_best_first() -> None:
    sources = [
        source("outside", "1911-05-06", square()),
        source("grade-b", "1912-05-06", square(), basis="institution"),
        source("year", "1912", square()),
        source("day-after", "1912-08-01", square()),
        source("day-before", "1912-05-01", square()),
        source("nearer", "1912-06-20", square()),
    ]
    found = ask("1912", *sources, grades="AB")
    assert [key.split("/")[0] for key in found.cite] == [
        "nearer",
        "day-before",
        "day-after",
        "year",
        "grade-b",
        "outside",
    ]


def test_features_together_are_judged_on_plates_that_show_them_all() -> None:
    both = plate(shown("neckline/square"), shown("sleeve/short"))
    apart = [
        plate(shown("neckline/square"), shown("sleeve/long")),
        plate(shown("neckline/round"), shown("sleeve/short")),
    ]
    half = plate(shown("neckline/square"))
    gathered = facts(source("a", "1912", [both]), source("b", "1913", apart), source("c", "1914", [half]))
    found = answer(gathered, Question("day-dress", ("neckline/square", "sleeve/short"), window("1912")))
    assert [each.sightings for each in found.findings] == [3, 2]
    assert found.together is not None
    assert (found.together.sightings, found.together.verdict) == (1, "seen once")
    assert found.together.share.recorded == 1  # c records no sleeve, b lies in 1913


def test_together_cannot_be_earlier_than_the_later_of_its_not_before_dates() -> None:
    words = vocabulary({SLIDE: "1917-03-20", "neckline/square": "1900"})
    asked = Question("day-dress", ("neckline/square", SLIDE), window("1910"))
    found = answer(facts(words=words), asked)
    assert [each.verdict for each in found.findings] == ["unrecorded", "too early"]
    assert found.together is not None
    assert (found.together.verdict, found.together.not_before) == ("too early", found.findings[1].not_before)


def test_one_feature_alone_has_no_together() -> None:
    assert answer(facts(), Question("day-dress", ("neckline/square",) * 2, window("1912"))).together is None
