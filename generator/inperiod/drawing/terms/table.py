"""A small line drawing for every term that can be drawn, one module to a facet.

Each module has ``DRAWINGS``: term id to a function without arguments that gives the strokes. What the term
names is drawn in full line, what is only there to be recognised (body, ground, floor) faintly.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import lru_cache

from markupsafe import Markup

from inperiod.drawing.hand import Drawing, svg
from inperiod.drawing.terms import (
    closures,
    collars,
    edges,
    fabrics,
    fastenings,
    fullness,
    linings,
    necklines,
    patterns,
    seams,
    silhouettes,
    skirts,
    sleeves,
    trims,
    waists,
    work,
    yokes,
)

_FACETS: Mapping[str, Mapping[str, Callable[[], Drawing]]] = {
    "neckline": necklines.DRAWINGS,
    "collar": collars.DRAWINGS,
    "closure": closures.DRAWINGS,
    "fastening": fastenings.DRAWINGS,
    "sleeve": sleeves.DRAWINGS,
    "yoke": yokes.DRAWINGS,
    "waist": waists.DRAWINGS,
    "skirt-length": skirts.LENGTHS,
    "skirt-cut": skirts.CUTS,
    "lower-edge": edges.DRAWINGS,
    "trim": trims.DRAWINGS,
    "fullness": fullness.DRAWINGS,
    "seam": seams.DRAWINGS,
    "silhouette": silhouettes.DRAWINGS,
    "lining": linings.DRAWINGS,
    "work": work.DRAWINGS,
    "fabric": fabrics.DRAWINGS,
    "colour": patterns.DRAWINGS,
}

DRAWN: frozenset[str] = frozenset(f"{facet}/{term}" for facet, terms in _FACETS.items() for term in terms)


def strokes_of(term_key: str) -> Drawing | None:
    """The strokes of a term's drawing in a box of 96 by 96; None where there is none."""
    facet, _, term = term_key.partition("/")
    draw = _FACETS.get(facet, {}).get(term)
    return draw() if draw else None


@lru_cache(maxsize=512)
def draw_term(term_key: str, label: str) -> Markup | None:
    """The drawing of ``facet/term`` as an SVG element titled ``label``; None where there is none."""
    strokes = strokes_of(term_key)
    return None if strokes is None else svg(strokes, label, name="term-drawing")
