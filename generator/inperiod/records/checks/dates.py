"""Checks of dates: that there are any, what they rest on, and whether the terms allow them."""

from __future__ import annotations

from collections.abc import Iterator

from inperiod.dating import widened
from inperiod.records.model import Catalogue, Plate, Term
from inperiod.records.problems import Problem


def sources_are_dated(catalogue: Catalogue) -> Iterator[Problem]:
    for source in catalogue.sources.values():
        if source.date is None and "date" not in source.left_out:
            message = f"The source {source.id} has no date, so it is counted nowhere."
            hint = "Add date: in EDTF form, such as 1912 or 1925~; for a guess, with date_basis: estimate."
            yield Problem.warning(source.mark, message, hint)


def dates_rest_on_something(catalogue: Catalogue) -> Iterator[Problem]:
    for source in catalogue.sources.values():
        if source.date and source.date_basis is None and "date_basis" not in source.left_out:
            message = f"The source {source.id} does not say what its date rests on, so it is not weighed."
            hint = "Add date_basis: printed, internal, documented, institution, seller, style or estimate."
            yield Problem.warning(source.date.mark, message, hint)


def no_plate_precedes_its_terms(catalogue: Catalogue) -> Iterator[Problem]:
    limited = {key: term for key, term in catalogue.vocabulary.terms.items() if term.not_before}
    for plate in catalogue.all_plates():
        for feature in plate.features:
            term = limited.get(feature.term or "")
            if term and (problem := _precedes(catalogue, plate, term)):
                complain = Problem.error if _well_dated(catalogue, plate) else Problem.warning
                yield complain(feature.mark, *problem)


def _precedes(catalogue: Catalogue, plate: Plate, term: Term) -> tuple[str, str] | None:
    """Message and hint where even the widened date of the plate ends before the term can begin."""
    date, limit = catalogue.dated(plate), term.not_before
    if date is None or limit is None:
        return None
    latest = widened(date.span, catalogue.settings.circa_years).latest
    earliest = limit.date.span.earliest
    if latest is None or earliest is None or latest >= earliest:
        return None
    said = f"{limit.event}; {limit.source}".strip("; ")
    message = (
        f"{term.key} is recorded on a plate dated {date.text}, but not before {limit.date.text} ({said})."
    )
    return message, "Check the date, the reading and the term; one of the three is wrong."


def _well_dated(catalogue: Catalogue, plate: Plate) -> bool:
    return catalogue.sources[plate.source].grade in ("A", "B")
