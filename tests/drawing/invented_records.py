"""Invented records to draw on both sides: every garment, every term, places and widths good and bad."""

from __future__ import annotations

import json
import random
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from conftest import CHECKOUT
from inperiod.records.model import Feature, Mark, Vocabulary

NOWHERE = Mark("")
WIDTHS = (
    None,
    None,
    "1 in",
    "½ in",
    "1½ in",
    "2.5 cm",
    "12 mm",
    "3",
    "wide",
    "4. cm",
    ".5 in",
    "1.2.3 cm",
    "0 cm",
)
WEARERS = ("any", "woman", "man", "girl", "boy", "infant")


@dataclass(frozen=True)
class Asked:
    """What a flat is drawn from."""

    features: tuple[Feature, ...]
    garment: str
    year: float | None
    who: str

    def as_json(self) -> dict[str, Any]:
        """As a page hands it to the browser's side."""
        return {
            "features": [_plain(each) for each in self.features],
            "garment": self.garment,
            "year": self.year,
            "who": self.who,
        }


def _plain(feature: Feature) -> dict[str, Any]:
    said = {"term": feature.term, "at": feature.at, "width": feature.width, "count": feature.count}
    absent = {"facet": feature.facet, "none": feature.state == "none", "not_visible": feature.state != "none"}
    return said if feature.term else absent


def places() -> list[str]:
    """Every place on a garment that a feature may be recorded at."""
    schema = json.loads((CHECKOUT / "schemas/common.json").read_text(encoding="utf-8"))
    return list(schema["$defs"]["place"]["enum"])


def records(vocabulary: Vocabulary, count: int, seed: int) -> Iterator[Asked]:
    """So many records; the garments go round, the rest is drawn by lot."""
    lot = random.Random(seed)
    garments = [*vocabulary.garments, "no-such-garment"]
    terms: dict[str, list[str]] = {}
    for key in vocabulary.terms:
        terms.setdefault(key.partition("/")[0], []).append(key)
    terms.pop("garment", None)
    known = places()
    for number in range(count):
        facets = [facet for facet in terms for _ in range(lot.choice((0, 0, 1, 1, 2)))]
        lot.shuffle(facets)
        features = tuple(_feature(lot, facet, terms[facet], known) for facet in facets)
        year = lot.choice((None, lot.uniform(1700, 2010), lot.uniform(1885, 1940), lot.randint(1780, 1980)))
        yield Asked(features, garments[number % len(garments)], year, lot.choice(WEARERS))


def _feature(lot: random.Random, facet: str, terms: Sequence[str], known: Sequence[str]) -> Feature:
    if lot.random() < 0.08:
        return Feature(facet, None, NOWHERE, lot.choice(("none", "not visible")))
    at = lot.choice((None, lot.choice(known)))
    count = lot.choice((None, None, lot.randint(1, 12), 40))
    return Feature(facet, lot.choice(terms), NOWHERE, at=at, width=lot.choice(WIDTHS), count=count)
