"""Plates side by side in order of date, and the usual look of a garment decade by decade."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from markupsafe import Markup

from inperiod.drawing.flats import draw_plan
from inperiod.drawing.marks import per_cent
from inperiod.evidence import Facts, timeline
from inperiod.publishing import paths, words
from inperiod.publishing.flats import FlatPicture
from inperiod.publishing.lookup import Lookup
from inperiod.publishing.pictures import Picture
from inperiod.records.model import Feature, Mark, Plate

MOST = 18
"""No more plates than these stand side by side."""

TYPICAL_FACETS = (
    "silhouette",
    "waist",
    "skirt-length",
    "skirt-cut",
    "neckline",
    "collar",
    "sleeve",
    "closure",
)
"""What the flat of a decade is made of: facets a garment has one term of, and where it opens."""

LEAST_SHARE = 0.2
"""A term shown by fewer is no part of what was usual; so small a share is called occasional elsewhere too."""


@dataclass(frozen=True, slots=True)
class Stood:
    """A plate in a lineup."""

    path: str
    label: str
    when: str
    picture: Picture | FlatPicture | None


@dataclass(frozen=True, slots=True)
class Lineup:
    """Plates in order of date; ``of`` is how many there are in all."""

    plates: tuple[Stood, ...]
    of: int


@dataclass(frozen=True, slots=True)
class Usual:
    """A term that makes up a decade's usual look, or none of its facet: its share of what was recorded."""

    label: str
    path: str | None
    share: str
    facet: str
    term: str | None


@dataclass(frozen=True, slots=True)
class Decade:
    """A garment as a decade's plates mostly show it. ``documents`` is the greatest number looked at for any
    of its facets."""

    decade: int
    flat: Markup
    usual: tuple[Usual, ...]
    documents: int
    assumed: tuple[str, ...]


def lineup(look: Lookup, plates: Sequence[Plate]) -> Lineup | None:
    """The plates side by side by date, undated ones left out; where there are many, a choice spread evenly
    over them. None for fewer than two."""
    dated = sorted(
        (plate for plate in plates if look.middle(plate) is not None),
        key=lambda plate: (look.middle(plate) or 0.0, plate.key),
    )
    pictured = [plate for plate in dated if look.picture(plate.key) is not None]
    if len(pictured) < 2:
        return None
    count = min(MOST, len(pictured))
    chosen = [pictured[round(at * (len(pictured) - 1) / (count - 1))] for at in range(count)]
    return Lineup(tuple(_stood(look, plate) for plate in chosen), len(dated))


def _stood(look: Lookup, plate: Plate) -> Stood:
    return Stood(
        paths.plate_path(plate.key),
        words.sentence(look.garment(plate.garment)),
        words.brief(look.catalogue.dated(plate)),
        look.picture(plate.key),
    )


def typical(look: Lookup, facts: Facts, garment: str) -> tuple[Decade, ...]:
    """The garment's usual look in every decade of which two documents or more were looked at: of each facet
    the term with the greatest share, drawn as one flat. Empty for garments that have no flat."""
    shares: dict[int, list[tuple[float, Usual]]] = {}
    looked: dict[int, int] = {}
    for facet in TYPICAL_FACETS:
        if look.facet(facet) is None:
            continue
        seen = timeline(facts, garment, facet, grades=look.catalogue.settings.grades)
        for at, decade in enumerate(seen.decades):
            if seen.looked[at] < 2 or seen.recorded[at] <= 0:
                continue
            looked[decade] = max(looked.get(decade, 0), seen.looked[at])
            best = _best(look, facet, [(row.term, row.shares[at] or 0.0) for row in seen.rows])
            if best:
                shares.setdefault(decade, []).append(best)
    found = []
    for decade in sorted(shares):
        usual = tuple(each for _, each in shares[decade])
        flat = draw_plan(_features(usual), garment, look.catalogue.vocabulary, decade + 5.0)
        if flat is not None:
            found.append(Decade(decade, flat.small, usual, looked[decade], flat.assumed))
    return tuple(found)


def _best(look: Lookup, facet: str, shares: list[tuple[str, float]]) -> tuple[float, Usual] | None:
    """The most usual term of a facet, or its absence where that is more usual still."""
    known = look.facet(facet)
    label = known.label if known else facet
    none = 1.0 - sum(share for _, share in shares)
    term, share = max(shares, key=lambda each: each[1], default=("", 0.0))
    if facet == "collar" and none > max(share, LEAST_SHARE):
        return none, Usual(f"no {label.lower()}", None, per_cent(none), facet, None)
    if share < LEAST_SHARE:
        return None
    return share, Usual(look.term_label(term), look.term_link(term).path, per_cent(share), facet, term)


def _features(usual: Iterable[Usual]) -> tuple[Feature, ...]:
    nowhere = Mark("")
    return tuple(Feature(each.facet, each.term, nowhere, "shown" if each.term else "none") for each in usual)


def decades_line(garment: str, decades: Sequence[Decade]) -> str:
    """``The day dress, 1890s to 1930s, as these plates show it``."""
    if not decades:
        return ""
    first, last = decades[0].decade, decades[-1].decade
    when = f"{first}s" if first == last else f"{first}s to {last}s"
    return f"The {garment}, {when}, as these plates show it"
