"""The page on which a source is recorded: its choices, and the drawings and definitions beside its form.

The drawings of a facet come when the facet is at hand, in scripts small enough to be fetched one by one.
"""

from __future__ import annotations

import gzip
import json
from collections.abc import Iterator, Mapping
from typing import Any

from inperiod.drawing import DRAWN, draw_term
from inperiod.publishing import words
from inperiod.publishing.browser_data import data_script
from inperiod.publishing.render import layers, read_layered
from inperiod.records.model import GRADE_OF_BASIS, Catalogue, Facet
from inperiod.records.shapes import Shape, shape_of

LARGEST_SCRIPT = 7000
"""The most a script of drawings weighs, in bytes, compressed."""

BASES: Mapping[str, str] = {
    "printed": "printed in it",
    "internal": "from what it says of its own time",
    "documented": "documented elsewhere, at the time",
    "institution": "given by those who keep it",
    "seller": "given by a seller",
    "style": "judged from the dress: never counted",
    "estimate": "an estimate",
}
RIGHTS = (
    *(
        f"http://rightsstatements.org/vocab/{code}/1.0/"
        for code in ("NoC-NC", "NoC-US", "NKC", "InC", "CNE", "UND")
    ),
    "https://creativecommons.org/publicdomain/mark/1.0/",
    "https://creativecommons.org/publicdomain/zero/1.0/",
    "https://creativecommons.org/licenses/by/4.0/",
    "https://creativecommons.org/licenses/by-sa/4.0/",
    "https://creativecommons.org/licenses/by-nc/4.0/",
)


def record_view(catalogue: Catalogue) -> Mapping[str, Any]:
    """The choices of the form, each a value with its words."""
    source = shape_of("source")
    plate = source.fields["plates"].item
    assert plate is not None
    return {
        "help": read_layered(layers(catalogue, "pages"), "how-to-record.md") or "",
        "kinds": [
            (kind, words.sentence(words.KINDS[kind][0]))
            for kind in _choices(source, "kind")
            if kind in words.KINDS
        ],
        "bases": [
            (grade, [(basis, BASES[basis]) for basis, its in GRADE_OF_BASIS.items() if its == grade])
            for grade in ("A", "B", "C")
        ],
        "rights": [(address, words.rights(address)) for address in RIGHTS],
        "languages": sorted(words.LANGUAGES.items(), key=lambda each: each[1]),
        "wearers": [(who, words.WHO.get(who, who)) for who in _choices(plate.fields["wearer"], "who")],
        "views": _choices(plate, "view"),
        "media": _choices(plate, "medium"),
    }


def _choices(shape: Shape, name: str) -> tuple[str, ...]:
    """The words a field may hold, by the schema."""
    return shape.fields[name].words


def drawn_files(catalogue: Catalogue, _view: Mapping[str, Any]) -> Iterator[tuple[str, str]]:
    """Path and text of the scripts with what is shown beside the form: for each facet its definitions and how
    many scripts of drawings it has (``data/drawn/<facet>.js``), and those (``data/drawn/<facet>-1.js`` …)."""
    for facet in catalogue.vocabulary.facets.values():
        sheets = list(_sheets(facet))
        told = {term.id: [term.definition, term.told_apart or ""] for term in facet.terms}
        about = {"question": facet.question, "note": facet.note or "", "told": told, "sheets": len(sheets)}
        yield f"data/drawn/{facet.id}.js", data_script(f"drawn/{facet.id}", about)
        for number, sheet in enumerate(sheets, start=1):
            yield f"data/drawn/{facet.id}-{number}.js", data_script(f"drawn/{facet.id}-{number}", sheet)


def _sheets(facet: Facet) -> Iterator[dict[str, str]]:
    """The drawings of a facet by term, parted so that no script of them is heavy."""
    sheet: dict[str, str] = {}
    for term in facet.terms:
        if term.key not in DRAWN:
            continue
        more = {**sheet, term.id: str(draw_term(term.key, term.label))}
        if sheet and len(gzip.compress(json.dumps(more).encode(), 6)) > LARGEST_SCRIPT:
            yield sheet
            more = {term.id: more[term.id]}
        sheet = more
    if sheet:
        yield sheet
