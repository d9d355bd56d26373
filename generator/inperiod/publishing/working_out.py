"""What is worked out for the whole site before anything is made, from the last build where that will do."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from inperiod.hands import done_by_all
from inperiod.publishing.kept_pages import Worked
from inperiod.publishing.lookup import Lookup
from inperiod.publishing.made_from import Ingredients
from inperiod.publishing.nearness import Neighbours
from inperiod.publishing.view_timeline import Shown, shown_timelines

NEAR_TOGETHER = 200
"""Plates whose neighbours one process looks for at a time."""


def worth_showing(look: Lookup, ingredients: Ingredients, worked: Worked) -> list[Shown]:
    """The timelines worth showing, with the weights that are known: of those for which the same was looked at
    as last time, and of those for which nothing was."""
    known = {}
    for garment in look.facts.garments:
        for facet in look.facts.facets:
            looked = ingredients.surveyed.get((garment.id, facet))
            noted = worked.surveyed.get(f"{garment.id} {facet}")
            if looked is None:
                known[garment.id, facet] = 0.0
            elif noted and noted[0] == looked.hex():
                known[garment.id, facet] = noted[1]
    return shown_timelines(look.facts, look.catalogue.settings.grades, known)


def surveyed(timelines: Iterable[Shown], ingredients: Ingredients) -> dict[str, tuple[str, float]]:
    """What ``worth_showing`` goes by the next time."""
    weights = {(each.garment, each.facet): each.weight for each in timelines}
    return {
        f"{garment} {facet}": (looked.hex(), weights.get((garment, facet), 0.0))
        for (garment, facet), looked in ingredients.surveyed.items()
    }


def work_out_near(
    near: Neighbours, noted: Mapping[str, Sequence[str]], worked: Worked, hands: int
) -> dict[str, str]:
    """Find out which plates are near to each, or take it as it was ``noted`` by the last build where the same
    decides it. By plate: the digest of what does."""
    grounds: dict[str, str] = {}
    unknown: list[str] = []
    for garment, row in near.rows.items():
        the_same = worked.rows.get(garment) == near.grounds_of_row(garment)
        for plate in (stand.key for stand in row):
            known = worked.grounds.get(plate) if plate in noted else None
            grounds[plate] = known if known and the_same else near.grounds(plate)
            if grounds[plate] == known:
                near.learn(plate, noted[plate])
            else:
                unknown.append(plate)
    parts = [unknown[at : at + NEAR_TOGETHER] for at in range(0, len(unknown), NEAR_TOGETHER)]

    def work(part: Sequence[str]) -> list[Sequence[str]]:
        return [near.keys(plate) for plate in part]

    for number, found in done_by_all(parts, work, hands, lambda _: None):
        for plate, keys in zip(parts[number], found, strict=True):
            near.learn(plate, keys)
    return grounds
