"""Small catalogues built in code: ``facts(source("a", "1912", square(2)), source("b", "1914"))``."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import Any

from inperiod.dating import read_edtf
from inperiod.evidence import Facts, Window, gather_facts
from inperiod.records.model import (
    Catalogue,
    Dated,
    Facet,
    Feature,
    Mark,
    Milestone,
    Plate,
    Publisher,
    Settings,
    Source,
    Term,
    Vocabulary,
    Wearer,
)

HERE = Mark("made-in-a-test.yaml")
TERMS: Mapping[str, tuple[str, ...]] = {
    "neckline": ("square", "round", "v", "boat"),
    "fastening": ("buttons", "press-studs", "slide-fastener"),
    "sleeve": ("short", "long"),
}
BROADER_GARMENT = {"day-dress": "dress", "house-dress": "day-dress", "dress": None, "coat": None}


def dated(text: str) -> Dated:
    return Dated(text, read_edtf(text), HERE)


def window(text: str) -> Window:
    span = read_edtf(text)
    return Window(span.earliest, span.latest)


def shown(term: str, reading: str = "seen") -> Feature:
    facet = term.partition("/")[0]
    return Feature(facet, term, HERE, reading=reading)  # type: ignore[arg-type]


def absent(facet: str) -> Feature:
    return Feature(facet, None, HERE, state="none")


def hidden(facet: str) -> Feature:
    return Feature(facet, None, HERE, state="not visible")


def plate(*features: Feature, garment: str = "day-dress", who: str = "woman", **more: Any) -> dict[str, Any]:
    """A plate to be, without its id and source."""
    return {"features": features, "garment": garment, "wearer": Wearer(who), **more}


def square(count: int = 1, **more: Any) -> list[dict[str, Any]]:
    return [plate(shown("neckline/square"), **more) for _ in range(count)]


def round_(count: int = 1, **more: Any) -> list[dict[str, Any]]:
    return [plate(shown("neckline/round"), **more) for _ in range(count)]


def source(
    id: str,
    date: str | None,
    plates: Iterable[dict[str, Any]] = (),
    basis: str | None = "printed",
    kind: str = "trade-catalogue",
    place: str | None = "London, England",
    **more: Any,
) -> Source:
    made = tuple(
        Plate(id=f"p{number:03d}", source=id, mark=HERE, **each) for number, each in enumerate(plates, 1)
    )
    return Source(
        id=id,
        title=id,
        kind=kind,
        mark=HERE,
        date=dated(date) if date else None,
        date_basis=basis,
        publisher=Publisher(place=place),
        plates=made,
        **more,
    )


def vocabulary(
    not_before: Mapping[str, str] | None = None, in_dress_from: Mapping[str, str] | None = None
) -> Vocabulary:
    def milestone(dates: Mapping[str, str] | None, key: str) -> Milestone | None:
        text = (dates or {}).get(key)
        return Milestone(dated(text), "granted", "a test") if text else None

    facets = {
        facet: Facet(
            facet,
            facet.capitalize(),
            f"What {facet}?",
            facet == "neckline",
            tuple(
                Term(
                    facet,
                    term,
                    term.capitalize(),
                    f"A {term}.",
                    HERE,
                    not_before=milestone(not_before, f"{facet}/{term}"),
                    in_dress_from=milestone(in_dress_from, f"{facet}/{term}"),
                )
                for term in terms
            ),
            HERE,
        )
        for facet, terms in TERMS.items()
    }
    garments = tuple(
        Term("garment", id, id.replace("-", " ").capitalize(), id, HERE, broader=broader)
        for id, broader in BROADER_GARMENT.items()
    )
    facets["garment"] = Facet("garment", "Garment", "What garment?", True, garments, HERE)
    return Vocabulary(facets)


def catalogue(*sources: Source, words: Vocabulary | None = None, **settings: Any) -> Catalogue:
    return Catalogue(
        Path("."),
        Settings(**settings),
        words or vocabulary(),
        {each.id: each for each in sources},
        {},
    )


def facts(*sources: Source, words: Vocabulary | None = None, **settings: Any) -> Facts:
    return gather_facts(catalogue(*sources, words=words, **settings))


def yearly(first: int, last: int, showing: Iterable[int], plates: int = 1, step: int = 1) -> list[Source]:
    """One catalogue a year, its plates with a square neckline in the years given, with a round one else."""
    years = set(showing)
    return [
        source(f"list-{year}", str(year), (square if year in years else round_)(plates))
        for year in range(first, last + 1, step)
    ]
