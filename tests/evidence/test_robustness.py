"""Leaving a document out: the rest of the catalogue, judged as if it had never held it."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from evidence.catalogues import catalogue, source, square, yearly
from inperiod.evidence import Facts, Question, Window, answer, gather_facts
from inperiod.evidence.robustness import leave_one_out
from inperiod.records.model import Catalogue

if TYPE_CHECKING:
    from inperiod.evidence.robustness import Robust


def squares(facts: Facts) -> Robust:
    return next(each for each in leave_one_out(facts) if each.term == "neckline/square")


def test_a_term_in_one_document_leaves_nothing_to_say() -> None:
    one = squares(gather_facts(catalogue(source("a", "1912", square(3)))))
    assert (one.documents, one.stood, one.alone) == (1, 0, 1)


def test_inside_a_long_use_each_document_would_have_been_expected() -> None:
    found = squares(gather_facts(catalogue(*yearly(1900, 1930, range(1910, 1920)))))
    assert found.documents == 10
    assert found.verdicts == {"bracketed": 8, "plausible": 2}


def test_a_stray_would_not_have_been_expected() -> None:
    found = squares(gather_facts(catalogue(*yearly(1900, 1930, (1901, *range(1918, 1928))))))
    assert found.verdicts["unsupported"] == 1
    assert found.stood == 10


def test_it_agrees_with_asking_a_catalogue_that_never_held_the_document(demo_catalogue: Catalogue) -> None:
    """For every sighting of two terms of the demonstration, by taking the source, its reprints and
    the plates printed from its cuts out of the records."""
    facts = gather_facts(demo_catalogue)
    for term in ("sleeve/gigot", "skirt-length/knee"):
        expected: dict[str, int] = {}
        for document in facts.documents:
            widest = {_widest(facts, plate.garment) for plate in document.plates}
            for garment in widest:
                given = _verdict_without(demo_catalogue, facts, document.id, garment, term)
                if given:
                    expected[given] = expected.get(given, 0) + 1
        found = next(each for each in leave_one_out(facts) if each.term == term)
        assert found.verdicts == expected, term


def _widest(facts: Facts, garment: int) -> int:
    while (broader := facts.garments[garment].broader) is not None:
        garment = broader
    return garment


def _verdict_without(held: Catalogue, facts: Facts, id: str, garment: int, term: str) -> str | None:
    """None where the document is no sighting of the term."""
    document = next(each for each in facts.documents if each.id == id)
    at = facts.term_index[term]
    shows = any(shown == at for plate in document.plates for shown, _ in plate.shown)
    if not shows or document.days is None or None in document.days or document.root is not None:
        return None
    everything = Window(None, None)
    asked = Question(facts.garments[garment].id, (term,), everything)
    rest = {
        key: replace(
            each, plates=tuple(p for p in each.plates if not (p.same_cut_as or "").startswith(f"{id}/"))
        )
        for key, each in held.sources.items()
        if key != id and each.reprint_of != id
    }
    fewer = gather_facts(replace(held, sources=rest))
    before, after = answer(facts, asked).findings[0], answer(fewer, asked).findings[0]
    if before.sightings == after.sightings:
        return None
    window = Window(document.days[0], document.days[1])
    return answer(fewer, replace(asked, window=window)).findings[0].verdict
