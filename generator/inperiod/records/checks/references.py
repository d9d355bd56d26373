"""Checks of how records refer to one another: reprints, reused cuts, plates on boards."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from inperiod.records.checks.words import did_you_mean
from inperiod.records.model import Catalogue
from inperiod.records.problems import Problem


def reprints_point_to_a_source(catalogue: Catalogue) -> Iterator[Problem]:
    onward = {each.id: each.reprint_of for each in catalogue.entangled.values() if each.reprint_of}
    circles = in_circles(onward)
    for source_id, target in onward.items():
        source = catalogue.sources[source_id]
        mark = source.mark_of("reprint_of")
        if target == source_id:
            yield Problem.error(mark, f"{source_id} is given as a reprint of itself.", "Take it out.")
        elif target not in catalogue.sources and not _unread(catalogue, target):
            message = f"{source_id} is a reprint of {target}, and there is no such source."
            others = [each for each in catalogue.sources if each != source_id]
            yield Problem.error(mark, message, did_you_mean(target, others, _NO_SOURCE))
        elif source_id in circles:
            message = f"{source_id} is, by way of other reprints, a reprint of itself."
            yield Problem.error(mark, message, "Take reprint_of out of the earliest of them.")


def reused_cuts_point_to_a_plate(catalogue: Catalogue) -> Iterator[Problem]:
    plates = catalogue.plates
    onward = {each.key: each.same_cut_as for each in catalogue.entangled_plates() if each.same_cut_as}
    circles = in_circles(onward)
    for key, target in onward.items():
        mark = plates[key].mark_of("same_cut_as")
        if target == key:
            yield Problem.error(mark, f"{key} is given as the same cut as itself.", "Take it out.")
        elif target not in plates and not _unread(catalogue, target.partition("/")[0]):
            message = f"{key} is the same cut as {target}, and there is no such plate."
            yield Problem.error(mark, message, _near_plate(catalogue, target, key))
        elif key in circles:
            message = f"{key} is, by way of other plates, the same cut as itself."
            yield Problem.error(mark, message, "Take same_cut_as out of the earliest of them.")


def gathered_plates_exist(catalogue: Catalogue) -> Iterator[Problem]:
    for board in catalogue.boards.values():
        for gathered in board.plates:
            key = gathered.plate
            if key not in catalogue.plates and not _unread(catalogue, key.partition("/")[0]):
                message = f"The board gathers the plate {key}, and there is no such plate."
                yield Problem.error(gathered.mark, message, _near_plate(catalogue, key))


def in_circles(onward: Mapping[str, str]) -> frozenset[str]:
    """All that lead back to themselves by following ``onward``; each is visited once."""
    found: set[str] = set()
    settled: set[str] = set()
    for start in onward:
        path: dict[str, int] = {}
        at: str | None = start
        while at is not None and at not in settled and at not in path:
            path[at] = len(path)
            at = onward.get(at)
        if at is not None and at in path:
            found.update(list(path)[path[at] :])
        settled.update(path)
    return frozenset(found)


_NO_SOURCE = "A source goes by the name of its file, without .yaml."


def _unread(catalogue: Catalogue, source: str) -> bool:
    """Whether the source is there but could not be read; that has been complained of already."""
    return source not in catalogue.sources and (catalogue.folder / "sources" / f"{source}.yaml").exists()


def _near_plate(catalogue: Catalogue, key: str, but: str = "") -> str:
    """The nearest plate of the source that is named, or the nearest source where there is none such."""
    source_id, _, _ = key.partition("/")
    source = catalogue.sources.get(source_id)
    if source is None:
        return did_you_mean(source_id, catalogue.sources, _NO_SOURCE)
    keys = [each.key for each in source.plates if each.key != but]
    return did_you_mean(key, keys, f"The plates are those of the file sources/{source_id}.yaml.")
