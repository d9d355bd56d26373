"""Checks of what second readers found: what is still disputed, and what the record does not follow."""

from __future__ import annotations

from collections.abc import Iterator

from inperiod.records.checks.words import unknown_feature, unknown_garment
from inperiod.records.model import Catalogue, Confirmation, Feature, Plate
from inperiod.records.problems import Problem


def disputes_are_settled(catalogue: Catalogue) -> Iterator[Problem]:
    for plate in catalogue.all_plates():
        for each in open_disputes(plate):
            message = f"{_reader(each)} disputes {_what(each)} of {plate.key}"
            message += f", and reads {each.instead}." if each.instead else "."
            hint = "Look at the plate together; then add an entry below: reading: confirmed, or corrected."
            yield Problem.warning(each.mark, message, hint)


def open_disputes(plate: Plate) -> tuple[Confirmation, ...]:
    """The disputes that no later entry settles: one that confirms or corrects the same reading, what was read
    instead of it, or the whole plate."""
    said = list(enumerate(plate.confirmations))
    return tuple(
        each
        for place, each in said
        if each.reading == "disputed"
        and not any(
            other.reading != "disputed" and _covers(other, each) and _is_later(other, each, at > place)
            for at, other in said
        )
    )


def _covers(one: Confirmation, dispute: Confirmation) -> bool:
    """Whether they speak of the same reading; one of the whole plate speaks of all."""
    return one.feature is None or (
        dispute.feature is not None and one.feature in (dispute.feature, dispute.instead)
    )


def _is_later(one: Confirmation, than: Confirmation, below: bool) -> bool:
    """By their dates where these do not overlap, else by their places in the list."""
    if one.on and than.on:
        begins, ends = one.on.span.earliest, one.on.span.latest
        other_begins, other_ends = than.on.span.earliest, than.on.span.latest
        if begins is not None and other_ends is not None and begins > other_ends:
            return True
        if ends is not None and other_begins is not None and ends < other_begins:
            return False
    return below


def second_readings_name_known_terms(catalogue: Catalogue) -> Iterator[Problem]:
    vocabulary = catalogue.vocabulary
    for plate in catalogue.all_plates():
        for each in plate.confirmations:
            for word in filter(None, (each.feature, each.instead)):
                facet, _, term = word.partition("/")
                if facet == "garment":
                    problem = unknown_garment(term, vocabulary, each.mark)
                else:
                    shown = term not in ("none", "not visible")
                    problem = unknown_feature(Feature(facet, word if shown else None, each.mark), vocabulary)
                if problem:
                    yield problem


def second_readings_agree_with_the_record(catalogue: Catalogue) -> Iterator[Problem]:
    """What a second reader confirmed or put right is recorded, unless another found that wrong."""
    for plate in catalogue.all_plates():
        if not plate.confirmations or {"features", "garment"} & {*plate.left_out}:
            continue
        recorded = {f"garment/{plate.garment}", *(feature.word for feature in plate.features)}
        doubted = {each.feature for each in plate.confirmations if each.reading != "confirmed"}
        for each in plate.confirmations:
            word = {"confirmed": each.feature, "corrected": each.instead}.get(each.reading)
            if word and word not in recorded and word not in doubted:
                found = "confirms" if each.reading == "confirmed" else f"corrects {_what(each)} to"
                message = f"{_reader(each)} {found} {word}, and {plate.key} does not record that."
                hint = "Change the record, or add an entry below that says who found it wrong: corrected."
                yield Problem.warning(each.mark, message, hint)


def _reader(confirmation: Confirmation) -> str:
    return confirmation.by or "A second reader"


def _what(confirmation: Confirmation) -> str:
    return f"the reading of {confirmation.feature}" if confirmation.feature else "the reading"
