"""What was looked at for a garment and its facets: the documents that count, in their order.

The steps, each in its own function, in this order: plates of the garment and wearer that record every facet;
reprints give way to their original; limits of place and kind; dates and grades; reused cuts fold into the
earliest. What falls away for its dating is kept by reason, so that an answer can say so.
"""

from __future__ import annotations

import math
from bisect import bisect_left, bisect_right
from collections import defaultdict
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from inperiod.evidence.constants import MOSTLY, WIDEST_DAYS
from inperiod.evidence.facts import Facts, place_parts
from inperiod.evidence.weights import Window, weight

REASONS = ("undated", "style", "no basis", "grade B", "grade C", "wide", "reprint", "reused cut")
"""Why a plate that records the facet is not counted, in the order the reasons are tried."""

HELD = 200_000
"""Surveys of one catalogue are kept while they count no more documents together. In a large catalogue all of
them would take more room than the records."""


@dataclass(frozen=True, slots=True)
class Limits:
    """``facets`` are indices, ``grades`` letters; None is no limit. ``place`` matches any comma-separated
    part of the market, or else of the publisher's place, whatever the case; a wearer also matches plates for
    ``any``."""

    garment: int
    facets: tuple[int, ...]
    place: str | None = None
    wearer: str | None = None
    kind: str | None = None
    grades: str = "A"


@dataclass(frozen=True, slots=True)
class Entry:
    """A document that counts: its index, its span, and the numbers of its plates that record the facets.
    ``twice_middle`` is earliest + latest: twice the middle of the span, kept whole."""

    document: int
    earliest: int
    latest: int
    plates: tuple[int, ...]

    @property
    def twice_middle(self) -> int:
        return self.earliest + self.latest


@dataclass(frozen=True)
class Survey:
    """``entries`` in order of the middle of their span, then id; ``middles`` are twice those middles;
    ``showing`` gives, by term, the plates showing it by position among the entries."""

    entries: tuple[Entry, ...]
    middles: tuple[int, ...]
    showing: Mapping[int, Mapping[int, tuple[int, ...]]]
    left_out: Mapping[str, tuple[int, ...]]
    memo: dict[Any, Any] = field(default_factory=dict, compare=False, repr=False)

    def near(self, window: Window) -> range:
        """Positions of all entries that can overlap the window: none spans more than a document may."""
        low = 0 if window.earliest is None else bisect_left(self.middles, 2 * window.earliest - WIDEST_DAYS)
        high = (
            len(self.middles)
            if window.latest is None
            else bisect_right(self.middles, 2 * window.latest + WIDEST_DAYS)
        )
        return range(low, max(low, high))

    def weighed(self, window: Window) -> list[tuple[int, float]]:
        """(position, weight) of the entries with any weight in the window, in order."""
        begins = -math.inf if window.earliest is None else window.earliest
        ends = math.inf if window.latest is None else window.latest
        found = []
        for position in self.near(window):
            entry = self.entries[position]
            if entry.earliest <= ends and begins <= entry.latest:
                found.append((position, weight(entry.earliest, entry.latest, window)))
        return found

    def mostly(self, window: Window) -> tuple[int, ...]:
        """Positions of the documents that lie mostly in the window, in order."""
        if window not in self.memo:
            self.memo[window] = tuple([at for at, part in self.weighed(window) if part >= MOSTLY])
        return self.memo[window]  # type: ignore[no-any-return]

    def between(self, after: int, before: int) -> int:
        """Documents whose doubled middle lies strictly between the two."""
        return max(0, bisect_left(self.middles, before) - bisect_right(self.middles, after))

    def within(self, first: int, last: int) -> int:
        """Documents whose doubled middle lies from the one to the other, both included."""
        return bisect_right(self.middles, last) - bisect_left(self.middles, first)


@dataclass(frozen=True, slots=True)
class LeftOut:
    """Plates recording the facets that are not counted, and how many of them show the term (seen or read)."""

    reason: str
    recording: int
    showing: int


def left_out(facts: Facts, looked: Survey, terms: tuple[int, ...]) -> tuple[LeftOut, ...]:
    """What is not counted for these terms, by reason."""
    return tuple(
        LeftOut(
            reason,
            len(numbers),
            sum(all(facts.shown[number].get(term, False) for term in terms) for number in numbers),
        )
        for reason, numbers in looked.left_out.items()
    )


def survey(facts: Facts, limits: Limits) -> Survey:
    """What counts within the limits. Those made last are kept with the facts, up to ``HELD``."""
    known: dict[Limits, Survey] = facts.memo.setdefault("surveys", {})
    if limits not in known:
        made = _survey(facts, limits)
        held = facts.memo.get("held", 0) + len(made.entries)
        while known and held > HELD:
            held -= len(known.pop(next(iter(known))).entries)
        known[limits], facts.memo["held"] = made, held
    return known[limits]


def _survey(facts: Facts, limits: Limits) -> Survey:
    away: dict[str, list[int]] = defaultdict(list)
    held = _standing(facts, _recording(facts, limits), away)
    dated = []
    for document, plates in held.items():
        if not _matches(facts, document, limits):
            continue
        reason = _not_weighed(facts, document, limits.grades)
        if reason:
            away[reason].extend(plates)
        else:
            earliest, latest = facts.documents[document].days or (None, None)
            assert earliest is not None
            assert latest is not None
            dated.append(Entry(document, earliest, latest, tuple(plates)))
    dated.sort(key=lambda entry: (entry.twice_middle, entry.document))
    entries = _without_reused_cuts(facts, dated, away)
    return Survey(
        entries,
        tuple(entry.twice_middle for entry in entries),
        _showing(facts, entries, limits.facets),
        {reason: tuple(away[reason]) for reason in REASONS if away[reason]},
    )


def _recording(facts: Facts, limits: Limits) -> dict[int, list[int]]:
    """Plates of the garment and wearer that record every facet, by document."""
    found: dict[int, list[int]] = {}
    others = limits.facets[1:]
    numbers = (
        facts.recording.get((limits.garment, limits.facets[0]), ())
        if limits.facets
        else facts.plates_of.get(limits.garment, ())
    )
    for number in numbers:
        document, plate = facts.plates[number]
        if limits.wearer not in (None, "any", plate.who) and plate.who != "any":
            continue
        if not others or facts.recorded[number].issuperset(others):
            found.setdefault(document, []).append(number)
    return found


def _standing(
    facts: Facts, recording: dict[int, list[int]], away: dict[str, list[int]]
) -> dict[int, list[int]]:
    """Without reprints: they are no documents. Where the original itself records nothing, the earliest of its
    reprints stands in for it, under the original's id and date."""
    held: dict[int, list[int]] = {}
    reprints: dict[int, list[int]] = {}
    originals = set()
    for document, plates in recording.items():
        root = facts.documents[document].root
        if root is None:
            held[document] = plates
            originals.add(facts.documents[document].source)
        else:
            reprints.setdefault(root, []).append(document)
    for root, documents in reprints.items():
        if root >= 0 and facts.documents[root].source not in originals:
            stand_in = min(documents, key=lambda each: _middle_or_last(facts, each))
            documents = [each for each in documents if each != stand_in]
            held[root] = recording[stand_in]
        for document in documents:
            away["reprint"].extend(recording[document])
    return held


def _middle_or_last(facts: Facts, document: int) -> tuple[bool, int, int]:
    earliest, latest = facts.documents[document].days or (None, None)
    if earliest is None or latest is None:
        return True, 0, document
    return False, earliest + latest, document


def _matches(facts: Facts, document: int, limits: Limits) -> bool:
    """Whether the document is of the place and the kind asked for."""
    fact = facts.documents[document]
    if limits.kind is not None and fact.kind != limits.kind:
        return False
    return limits.place is None or all(part in fact.places for part in place_parts(limits.place))


def _not_weighed(facts: Facts, document: int, grades: str) -> str | None:
    """Why the document cannot be weighed, or None. A date from the dress's style would argue in a circle, and
    one that rests on nothing named cannot be judged: neither counts at any grade."""
    fact = facts.documents[document]
    if fact.days is None:
        return "undated"
    if fact.basis == "style":
        return "style"
    if fact.basis == "none":
        return "no basis"
    if fact.basis not in grades:
        return f"grade {fact.basis}"
    earliest, latest = fact.days
    if earliest is None or latest is None or latest - earliest + 1 > WIDEST_DAYS:
        return "wide"
    return None


def _without_reused_cuts(facts: Facts, entries: list[Entry], away: dict[str, list[int]]) -> tuple[Entry, ...]:
    """One engraving counts once, where it is first met. Entries come in order."""
    met: set[int] = set()
    kept = []
    for entry in entries:
        if facts.reused.isdisjoint(entry.plates):
            kept.append(entry)
            continue
        plates = []
        for number in entry.plates:
            cut = facts.plates[number][1].cut
            if cut is not None and cut in met:
                away["reused cut"].append(number)
                continue
            if cut is not None:
                met.add(cut)
            plates.append(number)
        if plates:
            kept.append(Entry(entry.document, entry.earliest, entry.latest, tuple(plates)))
    return tuple(kept)


def _showing(
    facts: Facts, entries: tuple[Entry, ...], facets: tuple[int, ...]
) -> dict[int, dict[int, tuple[int, ...]]]:
    found: dict[int, dict[int, list[int]]] = {}
    of_facets = {term for term, fact in enumerate(facts.terms) if fact.facet in facets}
    for position, entry in enumerate(entries):
        for number in entry.plates:
            for term in facts.shown[number]:
                if term in of_facets:
                    found.setdefault(term, {}).setdefault(position, []).append(number)
    return {
        term: {position: tuple(numbers) for position, numbers in places.items()}
        for term, places in found.items()
    }
