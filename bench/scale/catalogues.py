"""Catalogues of any size, made by seed: sources of every kind with plates whose fashions come and go.

What they hold is invented from the vocabulary alone. Each term has a time in which it is worn, so that
timelines, verdicts and pages have something to say; some dates are circa, some sources undated, reprints or
judged from the dress, as in a catalogue that people write.
"""

from __future__ import annotations

import shutil
from collections.abc import Iterator, Mapping
from pathlib import Path
from random import Random
from typing import Any

from inperiod.dating import decimal_year
from inperiod.importing.writing import source_yaml, to_yaml
from inperiod.kept import kept
from inperiod.records import read_catalogue
from inperiod.records.model import Facet, Vocabulary

PLATES_EACH = 20
"""Plates of a source on the average: 500 sources hold 10,000."""

FIRST, LAST = 1885, 1945
KINDS = (
    *("trade-catalogue",) * 9,
    *("magazine-issue",) * 5,
    *("pattern-sheet", "fashion-plate", "sewing-manual", "newspaper", "advertisement", "photograph"),
    "extant",
)
BASES = (
    *("printed",) * 12,
    *("internal", "internal", "documented", "institution", "institution", "style", "estimate"),
)
FIRMS = ("Marl", "Wend", "Tarrow", "Ibbet", "Skell", "Orme", "Hathe", "Quill", "Brack", "Loam", "Pyre")
PLACES = ("Harrowmere", "Lowick", "Stannet", "Vell", "Port Ansel", "Crake")
STUFF = (
    *("serge", "voile", "cut", "full", "skirt", "neat", "finish", "pleats", "hem", "new", "line", "sleeve"),
    *("button", "trimmed", "braid", "smart", "washing", "season", "figure", "gathered", "model", "shade"),
)
LEAST_FACETS, MOST_FACETS = 6, 13


def write_catalogue(folder: Path, plates: int, seed: int = 1) -> int:
    """Write a catalogue of about so many plates into ``folder``; how many it has. The same numbers give the
    same bytes."""
    shutil.rmtree(folder, ignore_errors=True)
    (folder / "sources").mkdir(parents=True)
    (folder / "boards").mkdir()
    shutil.copytree(kept("vocabulary"), folder / "vocabulary")
    (folder / "inperiod.yaml").write_text(
        to_yaml(
            {
                "title": f"An invented catalogue of {plates} plates",
                "decades": [FIRST // 10 * 10, LAST // 10 * 10],
            }
        )
    )
    made, keys = 0, []
    writer = _Writer(read_catalogue(folder).catalogue.vocabulary, Random(seed))
    for number in range(max(1, round(plates / PLATES_EACH))):
        last = number == max(1, round(plates / PLATES_EACH)) - 1
        count = plates - made if last else min(plates - made, writer.random.randint(4, 2 * PLATES_EACH - 4))
        name, source = writer.source(number, count)
        (folder / "sources" / f"{name}.yaml").write_text(source_yaml(source), encoding="utf-8")
        made += count
        keys += [f"{name}/{plate['id']}" for plate in source["plates"][:2]]
    for number in range(min(12, 2 + plates // 1000)):
        (folder / "boards" / f"board-{number}.yaml").write_text(to_yaml(writer.board(number, keys)))
    return made


class _Writer:
    """Writes sources that follow one another, with one run of chance."""

    def __init__(self, vocabulary: Vocabulary, random: Random) -> None:
        self.random = random
        self.vocabulary = vocabulary
        self.facets = [facet for facet in vocabulary.facets.values() if facet.id != "garment"]
        self.garments = list(vocabulary.garments)
        common = random.sample(self.garments, min(6, len(self.garments)))
        self.weights = [12 if garment in common else 1 for garment in self.garments]
        self.worn = dict(self._lives())
        self.fitting: dict[str, list[tuple[Facet, list[str]]]] = {}
        self.originals: list[str] = []

    def _lives(self) -> Iterator[tuple[str, tuple[int, int, float]]]:
        """By term: the first and last year it is worn, and how much."""
        for key in self.vocabulary.terms:
            first = self.random.randint(FIRST - 40, LAST - 8)
            yield key, (first, first + self.random.randint(12, 70), self.random.uniform(0.1, 1.0))

    def source(self, number: int, plates: int) -> tuple[str, dict[str, Any]]:
        random = self.random
        kind, firm = random.choice(KINDS), f"{random.choice(FIRMS)} & {random.choice(FIRMS)}"
        year = random.randint(FIRST, LAST)
        name = f"s{number:05}-{kind}-{year}"
        basis = random.choice(BASES)
        source: dict[str, Any] = {
            "title": f"{firm}: {random.choice(('Spring', 'Summer', 'Autumn', 'Winter'))} List, No. {number}",
            "kind": kind,
            "date": None if random.random() < 0.01 else self._date(year),
            "date_basis": basis,
            "publisher": {"name": firm, "place": random.choice(PLACES)},
            "market": random.choice(("GB", "Harrowmere", None)),
            "language": "en",
            "pages": random.randint(8, 120),
            "rights": "http://rightsstatements.org/vocab/NKC/1.0/",
            "held_by": {"name": "Harrowmere Lake Museum", "shelfmark": f"HLM TC.{number}"},
            "examined": {"pages": "1-40", "by": "I. F.", "on": "2026-02-12"},
        }
        if self.originals and random.random() < 0.02:
            source["reprint_of"] = random.choice(self.originals)
        else:
            self.originals.append(name)
        source["plates"] = [self._plate(year, at, plates) for at in range(plates)]
        return name, source

    def _date(self, year: int) -> str:
        shape = self.random.random()
        if shape < 0.55:
            month = self.random.randint(1, 12)
            return f"{year}-{month:02}"
        if shape < 0.75:
            return f"{year}-{self.random.choice((21, 22, 23))}"
        return f"{year}~" if shape < 0.85 else f"{year}"

    def _plate(self, year: int, at: int, of: int) -> dict[str, Any]:
        random = self.random
        garment = random.choices(self.garments, self.weights)[0]
        page = 1 + at // 3
        plate: dict[str, Any] = {
            "id": f"p{page}-{at + 1}",
            "locator": {"page": page, "figure": at % 3 + 1, "item": str(2000 + at)},
            "garment": garment,
            "wearer": {"who": random.choice(("woman", "woman", "woman", "girl", "man"))},
            "caption": f"The frock {at} of {of}: {' '.join(random.choices(STUFF, k=14))}.",
            "price": {"amount": f"{random.randint(3, 90)}/{random.randint(0, 11)}", "currency": "GBP"},
            "view": random.choice(("front", "front", "back")),
            "medium": "cut",
            "features": list(self._features(garment, year)),
        }
        if page % 5 == 0 and 3 * page <= of:
            plate["outfit"] = f"page-{page}"
        return plate

    def _features(self, garment: str, year: int) -> Iterator[Mapping[str, Any] | str]:
        random, fitting = self.random, self._fitting(garment)
        chosen = random.sample(fitting, min(len(fitting), random.randint(LEAST_FACETS, MOST_FACETS)))
        for facet, terms in chosen:
            weights = [self._popular(term, year) for term in terms]
            if not any(weights) or random.random() < 0.04:
                yield {"facet": facet.id, "none" if random.random() < 0.6 else "not_visible": True}
                continue
            term = random.choices(terms, weights)[0]
            reading = random.choice(("seen",) * 8 + ("read", "inferred"))
            yield term if reading == "seen" else {"term": term, "reading": reading}

    def _fitting(self, garment: str) -> list[tuple[Facet, list[str]]]:
        if garment not in self.fitting:
            found = [
                (facet, [term.key for term in facet.terms if self.vocabulary.applies(term, garment)])
                for facet in self.facets
            ]
            self.fitting[garment] = [(facet, terms) for facet, terms in found if terms]
        return self.fitting[garment]

    def _popular(self, term: str, year: int) -> float:
        first, last, much = self.worn[term]
        known = self.vocabulary.terms[term].not_before
        floor = known.date.span.latest if known else None
        if not first <= year <= last or (floor is not None and year <= decimal_year(floor)):
            return 0.0
        return much * min(year - first + 1, last - year + 1)

    def board(self, number: int, keys: list[str]) -> dict[str, Any]:
        random = self.random
        garment = random.choices(self.garments, self.weights)[0]
        year = random.randint(FIRST + 10, LAST - 10)
        features = [each for each in self._features(garment, year) if isinstance(each, str)]
        return {
            "title": f"Board {number}",
            "target": str(year),
            "garment": garment,
            "features": features[:5] or ["closure/front"],
            "plates": [{"plate": key, "reason": "near"} for key in random.sample(keys, min(6, len(keys)))],
        }
