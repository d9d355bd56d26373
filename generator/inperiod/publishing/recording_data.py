"""What the page for recording is given beside the facts: the shapes of a source file, and what checks ask.

``data/recording.js`` hands over, under the name ``recording``:

``shapes``      every part of the schema of a source once, its own parts by their place in the list; the
                source is the last. Keys are those of ``records.shapes.Shape``, empty ones left out.
``vocabulary``  the facets in order: ``id``, ``label``, ``exclusive``, ``applies`` (garments; left out: all)
                and ``terms``, each ``id``, ``label``, ``names``, ``broader``, ``applies`` and ``notBefore``:
                the ``date`` as written, its first ``day`` (a day number) and what is ``said`` of it.
``settings``    ``seasons`` and ``circaYears``.
``grades``      the grade of each basis of a date.
``sources``     the plates' ids of each source; ``reprints`` and ``cuts`` say what repeats what.

Definitions and drawings are not here: they come with the facet that is looked at.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from typing import Any

from inperiod.records.model import GRADE_OF_BASIS, Catalogue, Facet, Milestone, Term
from inperiod.records.shapes import Shape, shape_of

SPACE = r"\t-\r\x1c-\x20\x85\xa0\u1680\u2000-\u200a\u2028\u2029\u202f\u205f\u3000"
"""What ``\\s`` is to Python, for an engine to which it is something else."""


def recording_data(catalogue: Catalogue) -> Mapping[str, Any]:
    """What the script hands over; see above."""
    entangled, plates = catalogue.entangled, catalogue.entangled_plates()
    ids: dict[str, list[str]] = {key: [] for key in catalogue.sources}
    for key in catalogue.plates:
        source, _, plate = key.partition("/")
        ids[source].append(plate)
    return {
        "shapes": shapes_data(),
        "vocabulary": [_facet(facet) for facet in catalogue.vocabulary.facets.values()],
        "settings": {"seasons": catalogue.settings.seasons, "circaYears": catalogue.settings.circa_years},
        "grades": dict(GRADE_OF_BASIS),
        "sources": ids,
        "reprints": {key: source.reprint_of for key, source in entangled.items() if source.reprint_of},
        "cuts": {plate.key: plate.same_cut_as for plate in plates if plate.same_cut_as},
    }


def shapes_data() -> list[dict[str, Any]]:
    """The parts of a source's schema, each once and after those it is made of."""
    known: dict[str, int] = {}
    parts: list[dict[str, Any]] = []

    def at(shape: Shape) -> int:
        part = _shape(shape)
        part |= {name: at(each) for name in ("item", "scalar", "table") if (each := getattr(shape, name))}
        if shape.fields:
            part["fields"] = {name: at(each) for name, each in shape.fields.items()}
        written = json.dumps(part)
        if written not in known:
            known[written] = len(parts)
            parts.append(part)
        return known[written]

    at(shape_of("source"))
    return parts


def _shape(shape: Shape) -> dict[str, Any]:
    """One part without the parts it is made of, in the words of the script."""
    part = {
        "kind": shape.kind,
        "expected": shape.expected,
        "called": shape.called,
        "words": list(shape.words),
        "pattern": for_scripts(shape.pattern.pattern) if shape.pattern else None,
        "longest": shape.longest,
        "fewest": shape.fewest,
        "most": shape.most,
        "required": list(shape.required),
        "oneOf": [[sorted(must), sorted(must_not)] for must, must_not in shape.one_of],
    }
    limits = {name: limit for name in ("low", "high") if (limit := getattr(shape, name)) is not None}
    return {name: value for name, value in part.items() if value} | limits


def for_scripts(pattern: str) -> str:
    """A pattern that means in a browser what it means here. ``\\s`` stands in it inside brackets only."""
    return pattern.replace(r"\s", SPACE)


def _facet(facet: Facet) -> dict[str, Any]:
    fields = {
        "id": facet.id,
        "label": facet.label,
        "exclusive": facet.exclusive,
        "applies": list(facet.applies_to),
        "terms": [_term(term) for term in facet.terms],
    }
    return {name: value for name, value in fields.items() if value or name == "terms"}


def _term(term: Term) -> dict[str, Any]:
    fields = {
        "id": term.id,
        "label": term.label,
        "names": list(dict.fromkeys(name.name for name in term.names)),
        "broader": term.broader,
        "applies": list(term.applies_to),
        "notBefore": _limit(term.not_before) if term.not_before else None,
    }
    return {name: value for name, value in fields.items() if value or name == "names"}


def _limit(milestone: Milestone) -> dict[str, Any]:
    return {
        "date": milestone.date.text,
        "day": milestone.date.span.earliest,
        "said": f"{milestone.event}; {milestone.source}".strip("; "),
    }
