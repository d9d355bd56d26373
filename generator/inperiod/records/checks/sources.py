"""Checks of sources and of how they and their plates refer to one another."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping

from inperiod.records.checks.words import did_you_mean
from inperiod.records.model import Catalogue, Mark
from inperiod.records.problems import Problem

_ODD_ADDRESS = re.compile(r"\s*[A-Za-z][A-Za-z0-9+.-]{0,30}:(?![\s])")
_WEB_ADDRESS = re.compile(r"https?://[^\s\"'<>]+")
_LIKENESS = str.maketrans("01", "ol")


def plate_ids_are_unique(catalogue: Catalogue) -> Iterator[Problem]:
    for source in catalogue.sources.values():
        first: dict[str, int] = {}
        for plate in source.plates:
            if plate.id in first:
                message = f"The plate id {plate.id} is used already on line {first[plate.id]}."
                yield Problem.error(plate.mark, message, f"Give this plate another id, such as {plate.id}-b.")
            else:
                first[plate.id] = plate.mark.line


def ids_do_not_look_alike(catalogue: Catalogue) -> Iterator[Problem]:
    yield from _look_alikes((source.id, source.mark) for source in catalogue.sources.values())
    for source in catalogue.sources.values():
        yield from _look_alikes((plate.id, plate.mark) for plate in source.plates)


def _look_alikes(ids: Iterable[tuple[str, Mark]]) -> Iterator[Problem]:
    first: dict[str, str] = {}
    for each, mark in ids:
        other = first.setdefault(each.translate(_LIKENESS), each)
        if other != each:
            message = f"The ids {each} and {other} look alike: they differ in 0 and o, or 1 and l, alone."
            yield Problem.warning(mark, message, "Give one of them a clearer id.")


def sources_have_plates(catalogue: Catalogue) -> Iterator[Problem]:
    for source in catalogue.sources.values():
        if not source.plates and source.examined is None and not {"plates", "examined"} & {*source.left_out}:
            message = f"The source {source.id} has no plates."
            hint = "Add plates:, or examined: with the pages that were looked at in vain."
            yield Problem.warning(source.mark, message, hint)


def sources_say_their_rights(catalogue: Catalogue) -> Iterator[Problem]:
    for source in catalogue.sources.values():
        if not source.rights and "rights" not in source.left_out:
            message = f"The source {source.id} does not say who may use it."
            hint = "Add rights: with an address from rightsstatements.org or of a Creative Commons licence."
            yield Problem.warning(source.mark, message, hint)


def rights_are_no_odd_address(catalogue: Catalogue) -> Iterator[Problem]:
    for source in catalogue.sources.values():
        pictures = ((plate.image.rights, plate.image.mark) for plate in source.plates if plate.image)
        for rights, mark in ((source.rights, source.mark), *pictures):
            if rights and _ODD_ADDRESS.match(rights) and not _WEB_ADDRESS.fullmatch(rights):
                message = f"The rights “{rights[:60]}” are no web address that can be followed."
                yield Problem.error(mark, message, "Write an address that starts with https:// or http://.")


def reprints_point_to_a_source(catalogue: Catalogue) -> Iterator[Problem]:
    onward = {each.id: each.reprint_of for each in catalogue.sources.values() if each.reprint_of}
    for source in catalogue.sources.values():
        target = source.reprint_of
        if target is None:
            continue
        if target == source.id:
            yield Problem.error(source.mark, f"{source.id} is given as a reprint of itself.", "Take it out.")
        elif target not in catalogue.sources:
            if not _unread(catalogue, target):
                message = f"{source.id} is a reprint of {target}, and there is no such source."
                yield Problem.error(source.mark, message, did_you_mean(target, catalogue.sources))
        elif _returns(source.id, onward):
            message = f"{source.id} is, by way of other reprints, a reprint of itself."
            yield Problem.error(source.mark, message, "Take reprint_of out of the earliest of them.")


def reused_cuts_point_to_a_plate(catalogue: Catalogue) -> Iterator[Problem]:
    plates = catalogue.plates
    onward = {key: plate.same_cut_as for key, plate in plates.items() if plate.same_cut_as}
    for key, plate in plates.items():
        target = plate.same_cut_as
        if target is None:
            continue
        if target == key:
            yield Problem.error(plate.mark, f"{key} is given as the same cut as itself.", "Take it out.")
        elif target not in plates:
            source = target.partition("/")[0]
            if source not in catalogue.sources and _unread(catalogue, source):
                continue
            near = (
                [f"{source}/{each.id}" for each in catalogue.sources[source].plates]
                if (source in catalogue.sources)
                else plates
            )
            message = f"{key} is the same cut as {target}, and there is no such plate."
            yield Problem.error(plate.mark, message, did_you_mean(target, near))
        elif _returns(key, onward):
            message = f"{key} is, by way of other plates, the same cut as itself."
            yield Problem.error(plate.mark, message, "Take same_cut_as out of the earliest of them.")


def _unread(catalogue: Catalogue, source: str) -> bool:
    """Whether the source is there but could not be read; that has been complained of already."""
    return (catalogue.folder / "sources" / f"{source}.yaml").exists()


def _returns(start: str, onward: Mapping[str, str | None]) -> bool:
    seen: set[str] = set()
    at = onward.get(start)
    while at and at not in seen:
        if at == start:
            return True
        seen.add(at)
        at = onward.get(at)
    return False


def outfits_have_company(catalogue: Catalogue) -> Iterator[Problem]:
    for source in catalogue.sources.values():
        sizes = Counter(plate.outfit for plate in source.plates)
        for plate in source.plates:
            if plate.outfit and sizes[plate.outfit] == 1:
                message = f"The outfit {plate.outfit} has this one plate only."
                hint = "Give the same outfit id to the other garments of the figure, or take it out here."
                yield Problem.warning(plate.mark, message, hint)
