"""Not-before dates: each sourced, each agreeing with the document named, none on a mere form.

The documents are patents and first makings. A grant is no floor where goods or a filing could precede
it, so a term may carry an earlier date than its patent's grant; the patent is then named beside it.
"""

from __future__ import annotations

import pytest

from inperiod.dating import day_number
from inperiod.evidence import Facts, Finding, Question, Window, answer, gather_facts
from inperiod.records import Reading, Vocabulary

# Term: the date, and what its source or note must name.
# Those marked "patent" are printed on the patent; the rest are from memory of the literature of dress.
DOCUMENTED = {
    "seam/lockstitch-seam": ("1846-09-10", "US patent 4,750"),  # memory
    "work/lockstitch-machine": ("1846-09-10", "US patent 4,750"),  # memory
    "fastening/safety-pin": ("1849-04-10", "US patent 6,281"),  # patent
    "fastening/clasp-locker": ("1893-08-29", "US patent 504,038"),  # patent
    "fastening/slide-fastener": ("1914-08-27", "1,219,881, filed 27 August 1914"),  # patent; filing: memory
    "fastening/press-studs": ("1885-03-05", "German patent 32496"),  # memory
    "fabric/net-bobbin": ("1808", "3151 (1808) and 3216 (1809)"),  # memory
    "work/schiffli": ("1863", "memory"),  # memory
    "work/chemical-lace": ("1883", "memory"),  # memory
    "colour/mauve-aniline": ("1856-08-26", "British patent 1984 of 1856"),  # memory
    "fastening/celluloid-buttons": ("1870-07-12", "US patent 105,338"),  # memory
    "fastening/phenolic-buttons": ("1907-07-13", "US patent 942,699"),  # memory
    "fabric/nylon": ("1937-02-16", "US patent 2,071,250"),  # memory
    "fastening/hook-and-loop": ("1951", "US patent 2,717,437, granted 13 September 1955"),  # memory
    "fastening/eyelets-metal": ("1828~", "memory"),  # memory
    "fastening/busk-front": ("1829", "memory"),  # memory
    "silhouette/crinoline-bell": ("1856", "memory"),  # memory
    "lining/steel-cage": ("1856", "memory"),  # memory
    "work/mercerised": ("1890~", "memory"),  # memory
    "colour/synthetic-indigo-blue": ("1897", "memory"),  # memory
    "fabric/artificial-silk": ("1889/1891", "8,700 of 1892"),  # memory
    "fabric/rayon": ("1924", "memory"),  # memory
    "fabric/elastic-knit": ("1931~", "memory"),  # memory
    "fabric/polyester": ("1941", "memory"),  # memory
    "fabric/elastane": ("1958", "memory"),  # memory
}

# Year, term, right or wrong: what historians of dress say of an invention (memory; the dates above).
TOO_EARLY = [
    ("seam/lockstitch-seam", 1840),
    ("work/lockstitch-machine", 1840),
    ("colour/mauve-aniline", 1850),
    ("fabric/net-bobbin", 1800),
    ("silhouette/crinoline-bell", 1850),
    ("lining/steel-cage", 1850),
    ("fastening/eyelets-metal", 1810),
    ("fastening/busk-front", 1820),
    ("fastening/celluloid-buttons", 1860),
    ("fastening/phenolic-buttons", 1900),
    ("work/chemical-lace", 1870),
    ("work/mercerised", 1880),
    ("colour/synthetic-indigo-blue", 1890),
    ("fastening/press-studs", 1880),
    ("fastening/slide-fastener", 1890),
    ("fastening/slide-fastener", 1912),
    ("fabric/rayon", 1915),
    ("fabric/elastic-knit", 1925),
    ("fabric/nylon", 1930),
    ("fastening/hook-and-loop", 1940),
    ("fabric/polyester", 1930),
    ("fabric/elastane", 1950),
]
NOT_TOO_EARLY = [
    ("colour/mauve-aniline", 1860),
    ("silhouette/crinoline-bell", 1860),
    ("work/chemical-lace", 1905),
    ("work/mercerised", 1910),
    ("fastening/press-studs", 1914),
    ("fastening/slide-fastener", 1938),
    ("fabric/elastic-knit", 1936),
    ("fabric/nylon", 1941),
    ("fabric/artificial-silk", 1915),  # the stuff is older than the word rayon
    ("sleeve/gigot", 1835),
    ("sleeve/gigot", 1895),
    ("fabric/velvet", 1700),
]
BEFORE_ITS_USE_IN_DRESS = [
    ("fastening/slide-fastener", 1926, True),
    ("fastening/slide-fastener", 1938, False),
    ("fastening/press-studs", 1914, False),
    ("fabric/nylon", 1938, True),
    ("fabric/nylon", 1941, False),
]
FORMS = ("neckline", "collar", "closure", "sleeve", "yoke", "waist", "skirt-cut", "skirt-length", "fullness")


def found(facts: Facts, key: str, year: int) -> Finding:
    """The answer for that year where no plate says anything, so that only the vocabulary's dates speak."""
    window = Window(day_number(year, 1, 1), day_number(year, 12, 31))
    return answer(facts, Question("other", (key,), window)).findings[0]


@pytest.fixture(scope="module")
def facts(reading: Reading) -> Facts:
    return gather_facts(reading.catalogue)


@pytest.mark.parametrize("key", DOCUMENTED)
def test_a_not_before_date_is_that_of_its_document(key: str, vocabulary: Vocabulary) -> None:
    date, named = DOCUMENTED[key]
    milestone = vocabulary.terms[key].not_before
    assert milestone is not None
    assert milestone.date.text == date
    assert named in f"{milestone.source}; {milestone.note}"


def test_every_milestone_says_what_happened_and_on_whose_word(vocabulary: Vocabulary) -> None:
    for key, term in vocabulary.terms.items():
        for milestone in (term.not_before, term.in_dress_from):
            if milestone is None:
                continue
            assert milestone.event, key
            assert any(word in milestone.source for word in ("patent", "memory")), (
                f"{key}: {milestone.source}"
            )
            assert milestone.date.span.earliest is not None, f"{key}: a floor needs a first day"


def test_dress_use_never_begins_before_the_thing_exists(vocabulary: Vocabulary) -> None:
    for key, term in vocabulary.terms.items():
        if term.not_before and term.in_dress_from:
            first, used = term.not_before.date.span.earliest, term.in_dress_from.date.span.latest
            assert first is not None, key
            assert used is not None, key
            assert first <= used, key


@pytest.mark.parametrize(("key", "year"), TOO_EARLY)
def test_a_use_before_the_invention_is_too_early(key: str, year: int, facts: Facts) -> None:
    assert found(facts, key, year).verdict == "too early"


@pytest.mark.parametrize(("key", "year"), NOT_TOO_EARLY)
def test_a_use_after_the_invention_is_not_called_too_early(key: str, year: int, facts: Facts) -> None:
    assert found(facts, key, year).verdict == "unrecorded"


@pytest.mark.parametrize(("key", "year", "before"), BEFORE_ITS_USE_IN_DRESS)
def test_invention_and_use_in_dress_are_two_dates(key: str, year: int, before: bool, facts: Facts) -> None:
    finding = found(facts, key, year)
    assert finding.verdict == "unrecorded"
    assert finding.in_dress_from is not None
    assert (day_number(year, 12, 31) < finding.in_dress_from.day) is before


def test_the_trouser_fly_is_told_to_be_later_than_the_slide_fastener(vocabulary: Vocabulary) -> None:
    milestone = vocabulary.terms["fastening/slide-fastener"].in_dress_from
    assert milestone is not None
    assert "trouser flies in the mid-1930s" in (milestone.note or "")


@pytest.mark.parametrize("facet", FORMS)
def test_a_form_has_no_not_before_date(facet: str, vocabulary: Vocabulary) -> None:
    """Lengths, waists and sleeves come round again: only dated plates can answer for them."""
    assert [term.key for term in vocabulary.facets[facet].terms if term.not_before] == []


def test_of_the_silhouettes_only_the_steel_cage_rests_on_an_invention(vocabulary: Vocabulary) -> None:
    dated = [term.id for term in vocabulary.facets["silhouette"].terms if term.not_before]
    assert dated == ["crinoline-bell"]
