"""Checks of sources and of their plates as a set."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Callable, Iterable, Iterator

from inperiod.records.model import Catalogue, Mark
from inperiod.records.problems import Problem

_ODD_ADDRESS = re.compile(r"[A-Za-z][A-Za-z0-9+.-]{0,30}:(?![\s])|//")
_UNSEEN = re.compile(r"^[\x00-\x20\x7f-\xa0\u200b-\u200f\u2028\u2029\ufeff]+|[\t\n\r]+")
"""What a browser passes over in an address: blanks and signs without a form before it, tabs inside it."""
_WEB_ADDRESS = re.compile(r"https?://[^\s\"'<>]+")
_LIKENESS = str.maketrans("01", "ol")


def plate_ids_are_unique(catalogue: Catalogue) -> Iterator[Problem]:
    for source in catalogue.sources.values():
        first: dict[str, int] = {}
        for plate in source.plates:
            if plate.id in first:
                message = f"The plate id {plate.id} is used already on line {first[plate.id]}."
                yield Problem.error(
                    plate.mark_of("id"), message, f"Give this plate another id, such as {plate.id}-b."
                )
            else:
                first[plate.id] = plate.mark.line


def plate_ids_do_not_look_alike(catalogue: Catalogue) -> Iterator[Problem]:
    for source in catalogue.sources.values():
        marks = {plate.id: plate.mark_of("id") for plate in source.plates}
        yield from _look_alikes(marks, marks.__getitem__)


def ids_do_not_look_alike(catalogue: Catalogue) -> Iterator[Problem]:
    sources, boards, facets = catalogue.sources, catalogue.boards, catalogue.vocabulary.facets
    yield from _look_alikes(sources, lambda source: sources[source].mark)
    yield from _look_alikes(boards, lambda board: boards[board].mark)
    yield from _look_alikes(facets, lambda facet: facets[facet].mark)
    for facet in facets.values():
        marks = {term.id: term.mark_of("id") for term in facet.terms}
        yield from _look_alikes(marks, marks.__getitem__)


def _look_alikes(ids: Iterable[str], mark_of: Callable[[str], Mark]) -> Iterator[Problem]:
    first: dict[str, str] = {}
    for each in ids:
        other = first.setdefault(each.translate(_LIKENESS), each)
        if other != each:
            message = f"The ids {each} and {other} look alike: they differ in 0 and o, or 1 and l, alone."
            yield Problem.warning(mark_of(each), message, "Give one of them a clearer id.")


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
        for rights, mark in ((source.rights, source.mark_of("rights")), *pictures):
            if rights and _ODD_ADDRESS.match(_UNSEEN.sub("", rights)) and not _WEB_ADDRESS.fullmatch(rights):
                message = f"The rights “{rights[:60]}” are no web address that can be followed."
                yield Problem.error(mark, message, "Write an address that starts with https:// or http://.")


def outfits_have_company(catalogue: Catalogue) -> Iterator[Problem]:
    for source in catalogue.sources.values():
        sizes = Counter(plate.outfit for plate in source.plates)
        for plate in source.plates:
            if plate.outfit and sizes[plate.outfit] == 1:
                message = f"The outfit {plate.outfit} has this one plate only."
                hint = "Give the same outfit id to the other garments of the figure, or take it out here."
                yield Problem.warning(plate.mark_of("outfit"), message, hint)
