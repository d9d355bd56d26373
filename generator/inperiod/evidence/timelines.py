"""Styles against decades, and the usual alternatives in a window."""

from __future__ import annotations

from dataclasses import dataclass

from inperiod.dating.days import day_number
from inperiod.evidence.calendar import decimal_year, year_of
from inperiod.evidence.constants import CITED, MOSTLY
from inperiod.evidence.facts import Facts, MilestoneFact
from inperiod.evidence.questions import Question, Sighted, Unknown, limits_of, share_in
from inperiod.evidence.ranges import attested, seen
from inperiod.evidence.shares import Share
from inperiod.evidence.surveys import Survey, survey
from inperiod.evidence.weights import Window


@dataclass(frozen=True, slots=True)
class Row:
    """One term over the decades: summed ``weights`` of plates showing it, ``shares`` of the weight recorded
    (None where nothing was), ``documents`` showing it that lie mostly in the decade. Its attested range and
    extension are over all time, as in a finding."""

    term: str
    label: str
    weights: tuple[float, ...]
    shares: tuple[float | None, ...]
    documents: tuple[int, ...]
    sightings: int
    first: Sighted | None
    last: Sighted | None
    extension: tuple[float | None, float | None]
    set_aside: tuple[Sighted, ...]
    not_before: MilestoneFact | None


@dataclass(frozen=True, slots=True)
class Timeline:
    """``recorded`` is the summed weight of plates recording the facet in each decade, ``looked`` the
    documents that lie mostly in it. Rows are the terms shown at all, in the vocabulary's order. ``left_out``
    is why plates that record the facet are not counted, and how many."""

    garment: str
    facet: str
    decades: tuple[int, ...]
    rows: tuple[Row, ...]
    recorded: tuple[float, ...]
    looked: tuple[int, ...]
    left_out: tuple[tuple[str, int], ...]


@dataclass(frozen=True, slots=True)
class Extent:
    """What a timeline stands on: the documents that lie mostly in one of its decades, the summed weight of
    the plates in them all, and how many terms are shown at all."""

    documents: int
    plates: float
    terms: int


@dataclass(frozen=True, slots=True)
class Alternative:
    """A term of the facet in the window: its share, and the documents in the window that show it."""

    term: str
    label: str
    share: Share
    documents: int


def timeline(
    facts: Facts,
    garment: str,
    facet: str,
    place: str | None = None,
    kind: str | None = None,
    wearer: str | None = None,
    grades: str = "A",
    decades: tuple[int, int] | None = None,
) -> Timeline:
    """Term against decade. ``decades`` are the first and last shown (1890, 1930); left out, the catalogue's
    own, stretched to every decade a document that counts lies in. Raises Unknown for garment or facet."""
    question = Question(garment, (), Window(None, None), place, wearer, kind, grades)
    at = _facet(facts, facet)
    looked = survey(facts, limits_of(facts, question, (at,)))
    shown = _decades(facts, looked, decades)
    weighed = _weighed(looked, shown)
    recorded, documents = _recorded(looked, weighed), _documents(weighed)
    parts = _parts(weighed)
    rows = tuple([_row(facts, looked, term, parts, recorded) for term in _shown(facts, looked, at)])
    left_out = tuple((reason, len(plates)) for reason, plates in looked.left_out.items() if plates)
    return Timeline(garment, facet, shown, rows, recorded, documents, left_out)


def extent(facts: Facts, garment: str, facet: str, grades: str = "A") -> Extent:
    """What the timeline stands on, without making it. Raises Unknown for garment or facet."""
    question, at = Question(garment, (), Window(None, None), grades=grades), _facet(facts, facet)
    looked = survey(facts, limits_of(facts, question, (at,)))
    weighed = _weighed(looked, _decades(facts, looked, None))
    shown = _shown(facts, looked, at)
    return Extent(sum(_documents(weighed)), sum(_recorded(looked, weighed)), len(shown))


def _weighed(looked: Survey, decades: tuple[int, ...]) -> list[list[tuple[int, float]]]:
    return [looked.weighed(Window(day_number(each), day_number(each + 10) - 1)) for each in decades]


def _parts(weighed: list[list[tuple[int, float]]]) -> dict[int, list[tuple[int, float]]]:
    """By position of a document: the decades it lies in, by their number, and the part of it in each."""
    parts: dict[int, list[tuple[int, float]]] = {}
    for decade, each in enumerate(weighed):
        for position, part in each:
            parts.setdefault(position, []).append((decade, part))
    return parts


def _recorded(looked: Survey, weighed: list[list[tuple[int, float]]]) -> tuple[float, ...]:
    return tuple(
        sum(part * len(looked.entries[position].plates) for position, part in each) for each in weighed
    )


def _documents(weighed: list[list[tuple[int, float]]]) -> tuple[int, ...]:
    return tuple(sum(part >= MOSTLY for _, part in each) for each in weighed)


def _shown(facts: Facts, looked: Survey, facet: int) -> list[int]:
    """The terms of the facet that are shown at all, in the vocabulary's order."""
    return [term for term, fact in enumerate(facts.terms) if fact.facet == facet and term in looked.showing]


def _row(
    facts: Facts,
    looked: Survey,
    term: int,
    parts: dict[int, list[tuple[int, float]]],
    recorded: tuple[float, ...],
) -> Row:
    of = seen(facts, looked, (term,))
    found = attested(looked, of)
    # Only of the documents that show the term, not of all that were looked at for it.
    weights = [each * 0 for each in recorded]
    documents = [0] * len(recorded)
    for position, numbers in of.showing.items():
        for decade, part in parts.get(position, ()):
            weights[decade] += part * len(numbers)
            documents[decade] += part >= MOSTLY

    def sighted(position: int) -> Sighted:
        return Sighted(facts.keys[of.sighted[position][0]], decimal_year(looked.middles[position] / 2))

    return Row(
        term=facts.term_keys[term],
        label=facts.terms[term].label,
        weights=tuple(weights),
        shares=tuple([w / n if n > 0 else None for w, n in zip(weights, recorded, strict=True)]),
        documents=tuple(documents),
        sightings=len(of.sighted),
        first=sighted(found.first) if found else None,
        last=sighted(found.last) if found else None,
        extension=found.extension if found else (None, None),
        set_aside=tuple(sighted(position) for position in (found.set_aside if found else ())),
        not_before=facts.terms[term].not_before,
    )


def usual_in_window(facts: Facts, question: Question, facet: str) -> tuple[Alternative, ...]:
    """The commonest terms of a facet in the question's window, most usual first, twelve at most."""
    at = _facet(facts, facet)
    looked = survey(facts, limits_of(facts, question, (at,)))
    mostly = set(looked.mostly(question.window))
    found = []
    for term in sorted(looked.showing):
        of = seen(facts, looked, (term,))
        share = share_in(looked, of, question.window)
        if share.showing > 0:
            documents = sum(position in mostly for position in of.showing)
            found.append(Alternative(facts.term_keys[term], facts.terms[term].label, share, documents))
    return tuple(sorted(found, key=lambda each: -each.share.showing)[:CITED])


def _facet(facts: Facts, facet: str) -> int:
    if facet not in facts.facets:
        raise Unknown("facet", facet)
    return tuple(facts.facets).index(facet)


def _decades(facts: Facts, looked: Survey, given: tuple[int, int] | None) -> tuple[int, ...]:
    first, last = given or facts.decades
    if given is None and looked.entries:
        first = min(first, year_of(looked.middles[0] / 2) // 10 * 10)
        last = max(last, year_of(looked.middles[-1] / 2) // 10 * 10)
    return tuple(range(first, last + 1, 10))
