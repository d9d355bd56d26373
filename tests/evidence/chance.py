"""Small catalogues and questions by chance, from a seed: every kind of date, grade, reprint, reused cut."""

from __future__ import annotations

from random import Random
from typing import Any

from evidence.catalogues import TERMS, absent, dated, facts, hidden, plate, shown, source, vocabulary, window
from inperiod.evidence import Facts, Question, Window
from inperiod.records.model import Source

ALL_TERMS = tuple(f"{facet}/{term}" for facet, terms in TERMS.items() for term in terms)
PLACES = ("London, England", "Paris", "Chicago, Illinois", None)
KINDS = ("trade-catalogue", "magazine-issue", "photograph")


def chance_facts(seed: int) -> Facts:
    """A catalogue of 3 to 160 sources between 1890 and 1935, its terms in use for a time or two."""
    chance = Random(seed)
    spells = {term: _spells(chance) for term in ALL_TERMS}
    rate = {term: chance.choice((0.1, 0.4, 0.7)) for term in ALL_TERMS}
    most = chance.choice((3, 8, 30))
    sources: list[Source] = []
    for number in range(chance.choice((3, 60, 160, 160, 160))):
        year = chance.randint(1890, 1935)
        plates = [_plate(chance, year, spells, rate, sources) for _ in range(chance.randint(0, most))]
        reprint = chance.choice(sources).id if sources and chance.random() < 0.12 else None
        sources.append(
            source(
                f"s{number:02d}",
                _date(chance, year),
                plates,
                basis=chance.choice(
                    (
                        "printed",
                        "printed",
                        "internal",
                        "documented",
                        "printed",
                        "institution",
                        "seller",
                        "style",
                        None,
                    )
                ),
                kind=chance.choice(KINDS),
                place=chance.choice(PLACES),
                reprint_of=reprint,
            )
        )
    words = vocabulary(
        not_before={"fastening/slide-fastener": "1917-03-20", "fastening/press-studs": "1885~"},
        in_dress_from={"fastening/slide-fastener": "1925"},
    )
    return facts(*sources, words=words, circa_years=chance.choice((5, 5, 3, 0, 10)))


def _spells(chance: Random) -> set[int]:
    """The years a term is in use: one spell, or an old one and a revival."""
    first, length = chance.randint(1880, 1920), chance.randint(8, 40)
    years = set(range(first, first + length))
    if chance.random() < 0.5:
        years -= set(range(first + 4, first + 4 + chance.randint(3, 20)))
    return years


def _date(chance: Random, year: int) -> str | None:
    forms = (
        f"{year}",
        f"{year}-{chance.randint(21, 24)}",
        f"{year}-{chance.randint(1, 12):02d}",
        f"{year}-{chance.randint(1, 12):02d}-{chance.randint(1, 28):02d}",
        f"{year}~",
        f"{year}-05?",
        f"{year // 10}X",
        f"{year - 2}/{year + 2}",
        f"{year - 8}/{year + 8}",
        f"../{year}",
        f"{year}/..",
        None,
    )
    return chance.choices(forms, weights=(8, 4, 4, 4, 3, 1, 1, 2, 1, 0.5, 0.5, 0.7))[0]


def _plate(
    chance: Random, year: int, spells: dict[str, set[int]], rate: dict[str, float], sources: list[Source]
) -> dict[str, Any]:
    features = []
    for facet, terms in TERMS.items():
        state = chance.random()
        if state < 0.12:
            continue
        if state < 0.22:
            features.append(hidden(facet))
        elif state < 0.32:
            features.append(absent(facet))
        else:
            for term in terms:
                key = f"{facet}/{term}"
                usual = rate[key] if year in spells[key] else 0.0005
                if chance.random() < usual:
                    reading = chance.choices(("seen", "read", "inferred"), weights=(8, 3, 1))[0]
                    features.append(shown(key, reading))
    more: dict[str, Any] = {}
    if chance.random() < 0.06:
        more["date"] = dated(_date(chance, year + chance.randint(-4, 4)) or "1910")
    earlier = [each for each in sources if each.plates]
    if earlier and chance.random() < 0.06:
        more["same_cut_as"] = chance.choice(chance.choice(earlier).plates).key
    garment = chance.choices(("day-dress", "house-dress", "dress", "coat"), weights=(8, 3, 2, 1))[0]
    who = chance.choices(("woman", "girl", "any"), weights=(8, 2, 1))[0]
    return plate(*features, garment=garment, who=who, **more)


def chance_question(chance: Random) -> Question:
    """A question such as people ask, limited now and then."""
    year = chance.randint(1880, 1945)
    when = chance.choice(
        (
            f"{year}",
            f"{year}",
            f"{year - 1}/{year + 1}",
            f"{year // 10}X",
            f"{year}-06",
            f"{year}-05-12",
            f"{year}-22",
            f"{year}-11/{year + 1}-02",
            f"../{year}",
            f"{year}/..",
        )
    )
    return Question(
        chance.choices(("dress", "day-dress", "house-dress", "coat"), weights=(6, 4, 1, 1))[0],
        tuple(chance.sample(ALL_TERMS, chance.choice((1, 1, 1, 2)))),
        window(when) if chance.random() > 0.02 else Window(None, None),
        place=chance.choices((None, "LONDON", "Illinois", "paris"), weights=(20, 1, 1, 1))[0],
        wearer=chance.choices((None, "woman", "girl"), weights=(20, 1, 1))[0],
        kind=chance.choices((None, "trade-catalogue"), weights=(12, 1))[0],
        grades=chance.choices(("A", "AB", "ABC"), weights=(5, 2, 2))[0],
        worn_for=chance.choices((0, 3, 7.5), weights=(5, 1, 1))[0],
    )
