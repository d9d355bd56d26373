"""What is known of the history of dress, put to the tool: wrong uses are called wrong, right ones are not.

Inventions are answered by the vocabulary's not-before dates alone (``tests/vocabulary/test_dates.py`` holds
each date to its document; the facts there are taken over). Forms have no inventor: they are answered by
dated documents, so a small invented set stands below, drawn after the times at which each form was worn.
These times are from memory of the literature of dress, rough, as are the facts marked "memory".
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from random import Random

import pytest

from evidence.catalogues import HERE, plate, shown, source
from inperiod.dating import read_edtf
from inperiod.evidence import Facts, Finding, Question, Window, answer, gather_facts
from inperiod.records.model import Catalogue, Feature
from vocabulary.test_dates import NOT_TOO_EARLY, TOO_EARLY

WRONG = ("too early", "unsupported", "lapsed")
"""``lapsed`` is how a form between its two spells is called wrong."""

# Feature: the spells in which it was worn, and the share of dresses at their height.
WORN: Mapping[str, tuple[tuple[int, int, float], ...]] = {
    "sleeve/gigot": ((1828, 1837, 0.6), (1891, 1897, 0.6)),  # memory
    "sleeve/bishop": ((1898, 1908, 0.4),),  # memory
    "sleeve/long-fitted": ((1838, 1890, 0.5), (1909, 1940, 0.4)),  # memory
    "skirt-length/ground": ((1825, 1914, 0.8),),  # memory; always a few shorter, on girls and at work
    "skirt-length/knee": ((1925, 1929, 0.7),),  # memory
    "skirt-length/mid-calf": ((1915, 1924, 0.5), (1930, 1940, 0.7)),  # memory
    "waist/natural": ((1825, 1907, 0.8), (1929, 1940, 0.8)),  # memory
    "waist/raised": ((1908, 1914, 0.6),),  # memory
    "waist/low": ((1919, 1929, 0.7),),  # memory; children's frocks earlier
    "silhouette/hobble": ((1910, 1914, 0.5),),  # memory
    "silhouette/crinoline-bell": ((1856, 1867, 0.8),),  # memory: the cage, 1856
    "silhouette/bustle-back": ((1870, 1876, 0.6), (1883, 1889, 0.6)),  # memory
    "silhouette/s-bend": ((1900, 1908, 0.6),),  # memory
    "silhouette/tubular": ((1920, 1929, 0.7),),  # memory
    "silhouette/bias-cling": ((1930, 1937, 0.5),),  # memory
    "fastening/press-studs": (
        (1903, 1940, 0.4),
    ),  # 1885 by German patent 32496; dressmaking after 1900, memory
    "fastening/slide-fastener": (
        (1934, 1940, 0.3),
    ),  # US patent 1,219,881 (1917); frocks from the 1930s, memory
    "fastening/hooks-and-eyes": ((1825, 1940, 0.4),),  # memory
    "neckline/cowl": ((1929, 1937, 0.4),),  # memory
    "neckline/boat": ((1920, 1929, 0.4),),  # memory
    "collar/boned-stand": ((1895, 1909, 0.7),),  # memory
    "sleeve/sleeveless": ((1922, 1940, 0.3),),  # memory: summer and sport
}
# Feature, year, right: is it right for that year? Facts of forms, memory unless said.
FORMS = (
    ("sleeve/gigot", 1835, True),
    ("sleeve/gigot", 1895, True),
    ("sleeve/gigot", 1860, False),
    ("sleeve/gigot", 1926, False),
    ("sleeve/bishop", 1904, True),
    ("sleeve/bishop", 1928, False),
    ("sleeve/sleeveless", 1926, True),
    ("sleeve/sleeveless", 1905, False),
    ("skirt-length/knee", 1912, False),
    ("skirt-length/knee", 1927, True),
    ("skirt-length/ground", 1900, True),
    ("skirt-length/ground", 1938, False),  # after so long a use, ten years of silence prove too little
    ("skirt-length/mid-calf", 1934, True),
    ("skirt-length/mid-calf", 1890, False),
    ("waist/low", 1912, False),
    ("waist/low", 1926, True),
    ("waist/raised", 1911, True),
    ("waist/raised", 1926, False),
    ("waist/natural", 1935, True),
    ("waist/natural", 1926, False),
    ("silhouette/hobble", 1903, False),
    ("silhouette/hobble", 1911, True),
    ("silhouette/hobble", 1926, False),
    ("silhouette/crinoline-bell", 1850, False),
    ("silhouette/crinoline-bell", 1860, True),
    ("silhouette/crinoline-bell", 1890, False),
    ("silhouette/bustle-back", 1873, True),
    ("silhouette/bustle-back", 1886, True),
    ("silhouette/bustle-back", 1905, False),
    ("silhouette/s-bend", 1904, True),
    ("silhouette/s-bend", 1926, False),
    ("silhouette/tubular", 1926, True),
    ("silhouette/tubular", 1895, False),
    ("silhouette/bias-cling", 1934, True),
    ("silhouette/bias-cling", 1915, False),
    ("neckline/cowl", 1933, True),
    ("neckline/cowl", 1912, False),
    ("neckline/boat", 1925, True),
    ("neckline/boat", 1900, False),
    ("collar/boned-stand", 1904, True),
    ("collar/boned-stand", 1928, False),
    ("fastening/press-studs", 1880, False),
    ("fastening/press-studs", 1914, True),
    ("fastening/slide-fastener", 1926, False),
    ("fastening/slide-fastener", 1938, True),
    ("fastening/hooks-and-eyes", 1890, True),
)


@pytest.fixture(scope="module")
def known(demo_catalogue: Catalogue) -> Facts:
    """The shipped vocabulary, and 460 invented issues of 1825–1939, four a year, five figures each."""
    chance, issues = Random(1926), []
    for year in range(1825, 1940):
        for quarter in range(1, 5):
            figures = [plate(*_drawn(chance, year)) for _ in range(5)]
            issues.append(
                source(f"issue-{year}-{quarter}", f"{year}-{3 * quarter:02d}", figures, kind="magazine-issue")
            )
    return gather_facts(replace(demo_catalogue, sources={each.id: each for each in issues}, boards={}))


def _drawn(chance: Random, year: int) -> list[Feature]:
    """What one figure of that year wears: in each facet one of the forms worn then, or something else."""
    features = []
    for facet in dict.fromkeys(key.split("/")[0] for key in WORN):
        left = chance.random()
        for key, spells in WORN.items():
            if key.split("/")[0] != facet:
                continue
            left -= sum(share for first, last, share in spells if first <= year <= last)
            if left < 0:
                features.append(shown(key))
                break
        else:
            features.append(Feature(facet, None, HERE, state="none"))
    return features


def ask(facts: Facts, feature: str, year: int, garment: str = "day-dress") -> Finding:
    span = read_edtf(str(year))
    return answer(facts, Question(garment, (feature,), Window(span.earliest, span.latest))).findings[0]


def test_the_facts_are_many_enough() -> None:
    """About thirty were asked for; some features stand in both lists."""
    assert len({*FORMS, *((key, year, False) for key, year in TOO_EARLY)}) >= 60


@pytest.mark.parametrize(("feature", "year", "right"), FORMS)
def test_a_form_is_right_when_it_was_worn_and_wrong_when_not(
    known: Facts, feature: str, year: int, right: bool
) -> None:
    verdict = ask(known, feature, year).verdict
    assert (verdict not in WRONG) is right, verdict


@pytest.mark.parametrize(("feature", "year"), TOO_EARLY)
def test_an_invention_is_wrong_before_its_time_whatever_else_was_looked_at(
    known: Facts, feature: str, year: int
) -> None:
    assert ask(known, feature, year, "other").verdict == "too early"


@pytest.mark.parametrize(("feature", "year"), NOT_TOO_EARLY)
def test_an_invention_is_not_wrong_after_its_time(known: Facts, feature: str, year: int) -> None:
    assert ask(known, feature, year, "other").verdict not in WRONG


def test_the_gigot_is_told_as_two_spells_and_not_one_long_use(known: Facts) -> None:
    assert ask(known, "sleeve/gigot", 1835).verdict == "attested"
    assert ask(known, "sleeve/gigot", 1895).verdict == "attested"
    between = ask(known, "sleeve/gigot", 1860)
    assert between.verdict == "lapsed"
    assert "seen before it (1837) and after it (1891)" in between.reasons[0]


def test_a_slide_fastener_in_a_frock_of_1926_is_told_to_be_before_its_use_in_dress(known: Facts) -> None:
    """The thing (US patent 1,219,881 of 20 March 1917) is older than its use in frocks (1930s, memory)."""
    finding = ask(known, "fastening/slide-fastener", 1926)
    assert finding.verdict == "unsupported"
    assert any("Known in dress only from the 1930s" in reason for reason in finding.reasons)
