"""What the demonstration catalogue answers: every verdict, the shapes it was drawn to show, known history."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import TYPE_CHECKING

import pytest

from inperiod.dating import read_edtf
from inperiod.evidence import Finding, Question, Window, answer, gather_facts

if TYPE_CHECKING:
    from inperiod.evidence import Facts
    from inperiod.records.model import Catalogue, Source


def ask(facts: Facts, garment: str, feature: str, when: str, grades: str = "A") -> Finding:
    span = read_edtf(when)
    window = Window(span.earliest, span.latest)
    return answer(facts, Question(garment, (feature,), window, grades=grades)).findings[0]


NINE = [
    ("day-dress", "collar/jabot", "1926", "attested"),
    ("day-dress", "collar/stand", "1926", "seen once"),  # one old lady in one photograph
    ("day-dress", "sleeve/virago", "1926", "unrecorded"),
    ("day-dress", "sleeve/gigot", "1926", "lapsed"),
    (
        "day-dress",
        "fabric/linen",
        "1926",
        "bracketed",
    ),  # before and after, and the year itself holds too little
    ("day-dress", "neckline/cowl", "1926", "plausible"),
    ("day-dress", "collar/boned-stand", "1926", "unsupported"),
    ("nightdress", "neckline/halter", "1926", "unproven"),
    ("day-dress", "fastening/slide-fastener", "1910", "too early"),
]


@pytest.mark.parametrize(("garment", "feature", "when", "verdict"), NINE)
def test_each_verdict_is_given_at_least_once(
    demo_facts: Facts, garment: str, feature: str, when: str, verdict: str
) -> None:
    assert ask(demo_facts, garment, feature, when).verdict == verdict


def test_the_nine_are_nine() -> None:
    assert len({verdict for *_, verdict in NINE}) == 9


def test_the_boned_collar_dies_out(demo_facts: Facts) -> None:
    assert ask(demo_facts, "day-dress", "collar/boned-stand", "1900").verdict == "attested"
    assert ask(demo_facts, "day-dress", "collar/boned-stand", "1922").verdict == "unsupported"


def test_the_cowl_arrives(demo_facts: Facts) -> None:
    assert ask(demo_facts, "day-dress", "neckline/cowl", "1918").verdict == "unsupported"
    assert ask(demo_facts, "day-dress", "neckline/cowl", "1931").verdict == "attested"


def test_the_gigot_has_two_spells(demo_facts: Facts) -> None:
    assert ask(demo_facts, "day-dress", "sleeve/gigot", "1896").verdict == "attested"
    assert ask(demo_facts, "day-dress", "sleeve/gigot", "1905/1928").verdict == "lapsed"
    assert ask(demo_facts, "day-dress", "sleeve/gigot", "1936/1939").verdict == "attested"


def test_a_lone_misdated_cutting_is_set_aside(demo_facts: Facts) -> None:
    knee = ask(demo_facts, "day-dress", "skirt-length/knee", "1926")
    assert knee.set_aside == ("lake-gazette-cutting-1908/f1",)
    assert knee.first is not None
    assert knee.first.date > 1920
    assert ask(demo_facts, "day-dress", "skirt-length/knee", "1908").verdict == "seen once"


def test_the_reissue_and_the_borrowed_cuts_are_no_new_witnesses(
    demo_catalogue: Catalogue, demo_facts: Facts
) -> None:
    """Without either, the same is counted; were the reissue not marked as one, more would be."""
    reissue, leaflet = "harrowmere-washing-frocks-1927-reissue", "osselby-drapers-leaflet-1927"
    sources = demo_catalogue.sources
    fewer = {key: each for key, each in sources.items() if key not in (reissue, leaflet)}
    unmarked = {**sources, reissue: replace(sources[reissue], reprint_of=None)}
    unmarked[reissue] = replace(
        unmarked[reissue], plates=tuple(replace(p, same_cut_as=None) for p in sources[reissue].plates)
    )

    def counted(sources: Mapping[str, Source]) -> int:
        facts = gather_facts(replace(demo_catalogue, sources=sources))
        return ask(facts, "day-dress", "silhouette/tubular", "1927").sightings

    assert counted(fewer) == ask(demo_facts, "day-dress", "silhouette/tubular", "1927").sightings
    assert counted(unmarked) == counted(fewer) + 1


def test_the_back_fastened_blouse_of_about_1905_waits_for_grade_b(demo_facts: Facts) -> None:
    strict = ask(demo_facts, "blouse", "work/hand-lace", "1905")
    wider = ask(demo_facts, "blouse", "work/hand-lace", "1905", grades="AB")
    assert strict.verdict == "unrecorded"
    assert wider.sightings == 1


# Memory of the literature of dress; rough, and meant only to catch a demonstration that looks wrong.
RIGHT = [
    ("sleeve/gigot", "1895"),
    ("waist/pouched", "1902"),
    ("waist/raised", "1911"),
    ("silhouette/hobble", "1911"),
    ("skirt-length/above-ankle", "1917"),
    ("waist/low", "1926"),
    ("skirt-length/knee", "1927"),
    ("closure/slip-on", "1926"),
    ("silhouette/tubular", "1925"),
    ("neckline/boat", "1925"),
    ("sleeve/kimono", "1911"),
    ("skirt-cut/godet-skirt", "1927"),
    ("skirt-length/mid-calf", "1932"),
    ("waist/natural", "1935"),
    ("fastening/slide-fastener", "1938"),
    ("sleeve/puff-short", "1938"),
]
WRONG = [
    ("silhouette/hobble", "1903"),
    ("silhouette/hobble", "1926"),
    ("waist/low", "1905"),
    ("skirt-length/knee", "1912"),
    ("skirt-length/ground", "1926"),
    ("collar/boned-stand", "1926"),
    ("fastening/slide-fastener", "1926"),
    ("silhouette/s-bend", "1926"),
    ("silhouette/tubular", "1905"),
    ("waist/raised", "1926"),
    ("waist/pouched", "1926"),
    ("neckline/cowl", "1912"),
    ("sleeve/puff-short", "1926"),
    ("neckline/boat", "1905"),
    ("skirt-cut/godet-skirt", "1912"),
]


@pytest.mark.parametrize(("feature", "year"), RIGHT)
def test_what_was_worn_is_attested(demo_facts: Facts, feature: str, year: str) -> None:
    assert ask(demo_facts, "day-dress", feature, year).verdict == "attested"


@pytest.mark.parametrize(("feature", "year"), WRONG)
def test_what_was_not_worn_is_not_supported(demo_facts: Facts, feature: str, year: str) -> None:
    assert ask(demo_facts, "day-dress", feature, year).verdict in ("unsupported", "too early")
