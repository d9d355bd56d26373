"""The facts as JSON, compact enough for a browser: an index, and plates in columns that go with it.

The index (``index_to_json``) is what every question needs::

    {"format": 4, "circa_years": 5, "decades": [1890, 1930],
     "facets":    [[id, label], …],
     "garments":  [[id, label, plural, broader], …], broader: index, −1 for none
     "terms":     [[facet, id, label, broader, not_before, in_dress_from], …]
         a milestone is 0 or [day, EDTF, in words, event, source]
     "kinds": [kind, …], "wearers": [who, …], "places": [[part, …], …],
     "documents": [[source, suffix, kind, place, basis, root, days, …tried], …]
         suffix: what follows "@" in the id of a document that has not its source's own date, else "";
         kind, place: indices; basis: one of A B C style none by position; root: as in DocumentFact, −2: None;
         days: 0 (undated) or [earliest, length in days], open ends are [null, latest] and [earliest, null];
         tried: only where another reading of "circa" gives other days
     "counts":    [plates of each document, …],
     "left_out":  {reason: why in words, …}}

Plates are numbered through all documents. Columns (``columns_to_json``) hold some of them, in that order:
those of one garment and all narrower ones are enough to answer any question about it::

    {"ids":      "id id …",
     "numbers":  each less the one before, less 1 (before the first: −1); empty where these are all plates,
     "garments": index, "wearers": index,
     "features": by facet [shown, absent], so that a question reads those it asks about and no others;
                 shown: of each term on each plate the plate's position here, less that of the one before
                 (before the first: −1), then its place among the n terms of the facet + n × reading (0 seen,
                 1 read, 2 inferred);
                 absent: the positions of plates where it was looked for and absent, each less the one before
     "cuts":     of each plate whose cut is used elsewhere too: its position here, less that of the one before
                 (first: 0), then the number of the cut}

All but ``ids`` are packed (``packed``): whole numbers from 0 up in groups of five bits, the lowest first, a
group as one of 64 signs, with 32 added where another follows.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import accumulate, pairwise
from typing import Any

from inperiod.evidence.facts import (
    Basis,
    Days,
    DocumentFact,
    Facts,
    GarmentFact,
    MilestoneFact,
    PlateFact,
    TermFact,
)
from inperiod.evidence.sentences import WHY_LEFT_OUT

FORMAT = 4
BASES: tuple[Basis, ...] = ("A", "B", "C", "style", "none")


_SIGNS = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_"
_VALUES = {sign: value for value, sign in enumerate(_SIGNS)}
_SHORT = [_SIGNS[n] if n < 32 else _SIGNS[32 + n % 32] + _SIGNS[n // 32] for n in range(1024)]


def packed(numbers: Iterable[int]) -> str:
    """Whole numbers from 0 up as a short text; see the module for its form."""
    return "".join([_SHORT[n] if n < 1024 else _packed(n) for n in numbers])


def _packed(number: int) -> str:
    text = ""
    while number >= 32:
        text += _SIGNS[32 + number % 32]
        number //= 32
    return text + _SIGNS[number]


def unpacked(text: str) -> Iterator[int]:
    """The numbers of a packed text."""
    number = shift = 0
    for sign in text:
        value = _VALUES[sign]
        number += (value & 31) << shift
        shift += 5
        if value < 32:
            yield number
            number = shift = 0


def facts_to_json(facts: Facts) -> dict[str, Any]:
    """The index, with the columns of all plates under ``plates``."""
    return {**index_to_json(facts), "plates": columns_to_json(facts, range(len(facts.plates)))}


def index_to_json(facts: Facts) -> dict[str, Any]:
    """All facts but the plates as plain lists, numbers and strings; see the module for their meaning."""
    kinds = sorted({each.kind for each in facts.documents})
    places = sorted({each.places for each in facts.documents})
    return {
        "format": FORMAT,
        "circa_years": facts.circa_years,
        "decades": list(facts.decades),
        "facets": [[facet, label] for facet, label in facts.facets.items()],
        "garments": [[each.id, each.label, each.plural, _or(each.broader, -1)] for each in facts.garments],
        "terms": [_term_out(term) for term in facts.terms],
        "kinds": kinds,
        "wearers": _wearers(facts),
        "places": [list(parts) for parts in places],
        "documents": [
            [
                each.source,
                each.id[len(each.source) + 1 :],
                kinds.index(each.kind),
                places.index(each.places),
                BASES.index(each.basis),
                _or(each.root, -2),
                _days_out(each.days),
                *(map(_days_out, each.tried) if any(tried != each.days for tried in each.tried) else ()),
            ]
            for each in facts.documents
        ],
        "counts": [len(each.plates) for each in facts.documents],
        "left_out": WHY_LEFT_OUT,
    }


def columns_to_json(facts: Facts, numbers: Sequence[int]) -> dict[str, Any]:
    """The plates of those numbers, ascending, in columns; see the module for their meaning."""
    plates = [facts.plates[number][1] for number in numbers]
    wearer = {who: i for i, who in enumerate(_wearers(facts))}
    cut = [(position, plate.cut) for position, plate in enumerate(plates) if plate.cut is not None]
    steps = _steps([position for position, _ in cut])
    every = len(plates) == len(facts.plates)
    return {
        "ids": " ".join(plate.id for plate in plates),
        "numbers": "" if every else packed(step - 1 for step in _steps([number + 1 for number in numbers])),
        "garments": packed(plate.garment for plate in plates),
        "wearers": packed(wearer[plate.who] for plate in plates),
        "features": _features_out(facts, plates),
        "cuts": packed(each for step, (_, of) in zip(steps, cut, strict=True) for each in (step, of)),
    }


def _features_out(facts: Facts, plates: Sequence[PlateFact]) -> list[list[str]]:
    terms = _terms_of(facts.terms, len(facts.facets))
    place = {term: i for own in terms for i, term in enumerate(own)}
    facet = [term.facet for term in facts.terms]
    shown: list[list[int]] = [[] for _ in facts.facets]
    absent: list[list[int]] = [[] for _ in facts.facets]
    last = [-1] * len(shown)
    for position, plate in enumerate(plates):
        for term, reading in plate.shown:
            of = facet[term]
            shown[of] += (position - last[of], place[term] + len(terms[of]) * reading)
            last[of] = position
        for of in plate.absent:
            absent[of].append(position)
    return [[packed(one), packed(_steps(other))] for one, other in zip(shown, absent, strict=True)]


def _terms_of(terms: Iterable[TermFact], facets: int) -> list[list[int]]:
    """By facet: the indices of its terms."""
    found: list[list[int]] = [[] for _ in range(facets)]
    for index, term in enumerate(terms):
        found[term.facet].append(index)
    return found


def _wearers(facts: Facts) -> list[str]:
    return sorted({plate.who for _, plate in facts.plates})


def _steps(ascending: Sequence[int]) -> list[int]:
    """Each number less the one before."""
    return [each - before for before, each in pairwise([0, *ascending])]


def facts_from_json(data: Mapping[str, Any]) -> Facts:
    """The facts back from the JSON form of all plates. Raises ValueError for another format."""
    if data.get("format") != FORMAT:
        raise ValueError(f"facts of format {data.get('format')!r}; this reads {FORMAT}")
    terms = tuple(_term_in(each) for each in data["terms"])
    plates = _plates_in(data, terms)
    documents = []
    start = 0
    for (source, suffix, kind, place, basis, root, days, *tried), count in zip(
        data["documents"], data["counts"], strict=True
    ):
        documents.append(
            DocumentFact(
                id=f"{source}@{suffix}" if suffix else source,
                source=source,
                kind=data["kinds"][kind],
                places=tuple(data["places"][place]),
                basis=BASES[basis],
                days=_days_in(days),
                tried=tuple(_days_in(each) for each in tried or (days, days)),
                root=None if root == -2 else root,
                plates=tuple(plates[start : start + count]),
            )
        )
        start += count
    return Facts(
        data["circa_years"],
        (data["decades"][0], data["decades"][1]),
        dict(data["facets"]),
        tuple(
            GarmentFact(each[0], each[1], each[2], None if each[3] == -1 else each[3])
            for each in data["garments"]
        ),
        terms,
        tuple(documents),
    )


def _plates_in(data: Mapping[str, Any], terms: Sequence[TermFact]) -> list[PlateFact]:
    columns = data["plates"]
    ids = columns["ids"].split()
    cuts = unpacked(columns["cuts"])
    cut_of: dict[int, int] = {}
    position = 0
    for step in cuts:
        position += step
        cut_of[position] = next(cuts)
    shown: list[list[tuple[int, int]]] = [[] for _ in ids]
    absent: list[list[int]] = [[] for _ in ids]
    facets = _terms_of(terms, len(data["facets"]))
    for facet, (own, (there, not_there)) in enumerate(zip(facets, columns["features"], strict=True)):
        codes, position = unpacked(there), -1
        for step in codes:
            position += step
            reading, place = divmod(next(codes), len(own))
            shown[position].append((own[place], reading))
        for position in accumulate(unpacked(not_there)):
            absent[position].append(facet)
    garments, wearers = unpacked(columns["garments"]), unpacked(columns["wearers"])
    return [
        PlateFact(own, garment, data["wearers"][who], tuple(sorted(seen)), tuple(lacks), cut_of.get(number))
        for number, (own, garment, who, seen, lacks) in enumerate(
            zip(ids, garments, wearers, shown, absent, strict=True)
        )
    ]


def _or(index: int | None, instead: int) -> int:
    return instead if index is None else index


def _days_out(days: Days | None) -> Any:
    if days is None:
        return 0
    earliest, latest = days
    return [earliest, latest if earliest is None or latest is None else latest - earliest + 1]


def _days_in(days: Any) -> Days | None:
    if days == 0:
        return None
    earliest, other = days
    return earliest, other if earliest is None or other is None else earliest + other - 1


def _term_out(term: TermFact) -> list[Any]:
    return [
        term.facet,
        term.id,
        term.label,
        _or(term.broader, -1),
        _milestone_out(term.not_before),
        _milestone_out(term.in_dress_from),
    ]


def _term_in(term: Sequence[Any]) -> TermFact:
    facet, own, label, broader, not_before, in_dress = term
    return TermFact(
        facet,
        own,
        label,
        None if broader == -1 else broader,
        MilestoneFact(*not_before) if not_before else None,
        MilestoneFact(*in_dress) if in_dress else None,
    )


def _milestone_out(milestone: MilestoneFact | None) -> Any:
    if milestone is None:
        return 0
    return [milestone.day, milestone.text, milestone.words, milestone.event, milestone.source]
