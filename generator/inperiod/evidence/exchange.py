"""The facts as JSON, compact enough for a browser: the data file of the site's question form.

One object::

    {"format": 2, "circa_years": 5, "decades": [1890, 1930],
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
     "plates":    [[id, garment, wearer, feature, …], …]
         in order of document; a feature is term × 3 + reading (seen, read, inferred), or −1 − facet for a
         facet looked for and absent
     "counts":    [plates of each document, …],
     "cuts":      [[plate number, …], …]}   plates from one and the same cut
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence
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

FORMAT = 2
BASES: tuple[Basis, ...] = ("A", "B", "C", "style", "none")


def facts_to_json(facts: Facts) -> dict[str, Any]:
    """The facts as plain lists, numbers and strings; see the module for their meaning."""
    kinds = sorted({each.kind for each in facts.documents})
    places = sorted({each.places for each in facts.documents})
    wearers = sorted({plate.who for _, plate in facts.plates})
    cuts: dict[int, list[int]] = defaultdict(list)
    for number, (_, plate) in enumerate(facts.plates):
        if plate.cut is not None:
            cuts[plate.cut].append(number)
    return {
        "format": FORMAT,
        "circa_years": facts.circa_years,
        "decades": list(facts.decades),
        "facets": [[facet, label] for facet, label in facts.facets.items()],
        "garments": [[each.id, each.label, each.plural, _or(each.broader, -1)] for each in facts.garments],
        "terms": [_term_out(term) for term in facts.terms],
        "kinds": kinds,
        "wearers": wearers,
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
        "plates": [
            [
                plate.id,
                plate.garment,
                wearers.index(plate.who),
                *(term * 3 + reading for term, reading in plate.shown),
                *(-1 - facet for facet in plate.absent),
            ]
            for _, plate in facts.plates
        ],
        "cuts": [cuts[cut] for cut in sorted(cuts)],
    }


def facts_from_json(data: Mapping[str, Any]) -> Facts:
    """The facts back from their JSON form. Raises ValueError for another format."""
    if data.get("format") != FORMAT:
        raise ValueError(f"facts of format {data.get('format')!r}; this reads {FORMAT}")
    cut_of = {number: cut for cut, numbers in enumerate(data["cuts"]) for number in numbers}
    plates = [
        PlateFact(
            own,
            garment,
            data["wearers"][who],
            tuple(divmod(code, 3) for code in codes if code >= 0),
            tuple(-1 - code for code in codes if code < 0),
            cut_of.get(number),
        )
        for number, (own, garment, who, *codes) in enumerate(data["plates"])
    ]
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
        tuple(_term_in(each) for each in data["terms"]),
        tuple(documents),
    )


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
