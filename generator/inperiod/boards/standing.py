"""How a gathered plate stands to the board: its date to the window, its dating, what of the plan it shows."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from inperiod.evidence import Facts, Window
from inperiod.evidence.constants import MOSTLY, WIDEST_DAYS
from inperiod.evidence.facts import DocumentFact
from inperiod.evidence.weights import weight
from inperiod.records.model import Gathered

Side = Literal["inside", "mostly outside", "before", "after", "undated"]
Shows = Literal["shown", "inferred", "not shown", "not recorded"]


@dataclass(frozen=True, slots=True)
class Standing:
    """A gathered plate against the board.

    ``known`` is false where the catalogue has no such plate; the rest is then empty. ``weight`` is the share
    of its date in the window, 0 to 1. ``aside`` says why its date is not weighed (None: it is): a reason
    of ``AWAY``. ``shows`` holds the planned terms it shows, seen or read; ``supported`` says how it
    stands to the one it was gathered for; ``of_garment`` whether it shows the planned garment or a
    narrower one.
    """

    gathered: Gathered
    known: bool
    weight: float = 0.0
    side: Side = "undated"
    aside: str | None = None
    shows: tuple[str, ...] = ()
    supported: Shows | None = None
    of_garment: bool = False

    @property
    def inside(self) -> bool:
        return self.side == "inside"


AWAY = {
    "undated": "It has no date, so it dates nothing.",
    "style": "Its date rests on the style of the dress itself, so it dates nothing.",
    "no basis": "Nobody says what its date rests on, so it is set aside.",
    "grade B": "It is dated only by the institution that keeps it (grade B), so it is set aside.",
    "grade C": "It is weakly dated (grade C: a seller’s word or an estimate), so it is set aside.",
    "wide": "Its date spans more than twelve years, so it is set aside.",
    "reprint": "It is a reprint, and counts only as its original.",
}


def standing(
    facts: Facts,
    gathered: Gathered,
    planned: tuple[str, ...],
    garment: int | None,
    window: Window,
    grades: str,
) -> Standing:
    """The plate's standing. ``planned`` are term keys, ``garment`` an index of the facts."""
    number = numbers(facts).get(gathered.plate)
    if number is None:
        return Standing(gathered, known=False)
    document = facts.documents[facts.plates[number][0]]
    part = weight(*document.days, window) if document.days else 0.0
    return Standing(
        gathered,
        known=True,
        weight=part,
        side=_side(document, part, window),
        aside=not_weighed(document, grades),
        shows=shown_of(facts, number, planned),
        supported=_supported(facts, number, gathered.supports) if gathered.supports else None,
        of_garment=garment is not None and number in facts.plates_of.get(garment, ()),
    )


def numbers(facts: Facts) -> dict[str, int]:
    """Plate numbers by key, made once for the facts and kept with them."""
    if "numbers by key" not in facts.memo:
        facts.memo["numbers by key"] = {key: number for number, key in enumerate(facts.keys)}
    found: dict[str, int] = facts.memo["numbers by key"]
    return found


def shown_of(facts: Facts, number: int, planned: tuple[str, ...]) -> tuple[str, ...]:
    """The planned terms a plate shows, seen or read."""
    shown = facts.shown[number]
    return tuple(term for term in planned if shown.get(facts.term_index[term], False))


def not_weighed(document: DocumentFact, grades: str) -> str | None:
    """Why a document's date is not weighed; None where it is. The order is that of the evidence."""
    if document.root is not None:
        return "reprint"
    if document.days is None:
        return "undated"
    if document.basis in ("style", "none"):
        return "style" if document.basis == "style" else "no basis"
    if document.basis not in grades:
        return f"grade {document.basis}"
    earliest, latest = document.days
    return "wide" if earliest is None or latest is None or latest - earliest + 1 > WIDEST_DAYS else None


def _side(document: DocumentFact, part: float, window: Window) -> Side:
    if document.days is None:
        return "undated"
    if part >= MOSTLY:
        return "inside"
    earliest, latest = document.days
    if part > 0:
        return "mostly outside"
    if window.earliest is not None and latest is not None and latest < window.earliest:
        return "before"
    if window.latest is not None and earliest is not None and earliest > window.latest:
        return "after"
    return "mostly outside"


def _supported(facts: Facts, number: int, term: str) -> Shows | None:
    """How the plate stands to a term; None for a term the catalogue does not know (or ``facet/none``)."""
    index = facts.term_index.get(term)
    if index is None:
        return None
    seen = facts.shown[number].get(index)
    if seen is not None:
        return "shown" if seen else "inferred"
    return "not shown" if facts.terms[index].facet in facts.recorded[number] else "not recorded"
