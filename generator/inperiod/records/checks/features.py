"""Checks of what plates record."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterator

from inperiod.records.checks.words import listed, unknown_feature, unknown_garment
from inperiod.records.model import Catalogue, Feature, Plate
from inperiod.records.problems import Problem

_NUMBER = r"(?:[0-9]{1,4}(?:\.[0-9]{1,3}|[ -][0-9]{1,2}/[0-9]{1,2}|/[0-9]{1,2}| ?[¼½¾⅛⅜⅝⅞])?|[¼½¾⅛⅜⅝⅞])"
_WIDTH = re.compile(rf"{_NUMBER}(?: ?(?:-|–|to) ?{_NUMBER})? ?(?:in|cm|mm)")


def garments_are_known(catalogue: Catalogue) -> Iterator[Problem]:
    for plate in catalogue.all_plates():
        mark = plate.mark_of("garment")
        if plate.garment and (problem := unknown_garment(plate.garment, catalogue.vocabulary, mark)):
            yield problem


def features_are_known(catalogue: Catalogue) -> Iterator[Problem]:
    for plate in catalogue.all_plates():
        for feature in plate.features:
            if problem := unknown_feature(feature, catalogue.vocabulary):
                yield problem


def features_apply_to_the_garment(catalogue: Catalogue) -> Iterator[Problem]:
    vocabulary = catalogue.vocabulary
    verdicts: dict[tuple[str, str], bool] = {}
    for plate in catalogue.all_plates():
        if plate.garment not in vocabulary.garments:
            continue
        for feature in plate.features:
            term = vocabulary.terms.get(feature.term or "")
            if term is None or term.facet == "garment":
                continue
            asked = (term.key, plate.garment)
            if asked not in verdicts:
                verdicts[asked] = vocabulary.applies(term, plate.garment)
            if not verdicts[asked]:
                allowed = term.applies_to or vocabulary.facets[term.facet].applies_to
                message = f"{term.key} is not recorded on the garment {plate.garment}."
                yield Problem.error(feature.mark, message, f"It applies to {listed(allowed)}.")


def _by_facet(plate: Plate) -> dict[str, list[Feature]]:
    grouped: dict[str, list[Feature]] = defaultdict(list)
    for feature in plate.features:
        grouped[feature.facet].append(feature)
    return grouped


def exclusive_facets_have_one_term(catalogue: Catalogue) -> Iterator[Problem]:
    facets = catalogue.vocabulary.facets
    for plate in catalogue.all_plates():
        for facet_id, features in _by_facet(plate).items():
            facet = facets.get(facet_id)
            terms = list(dict.fromkeys(each.term for each in features if each.term))
            if facet and facet.exclusive and len(terms) > 1:
                second = next(each for each in features if each.term == terms[1])
                message = (
                    f"A garment has one {facet.label.lower()} at a time, and this plate has {listed(terms)}."
                )
                yield Problem.error(
                    second.mark, message, "Keep the one that is seen, and put the other in note:."
                )


def absence_is_not_mixed_with_presence(catalogue: Catalogue) -> Iterator[Problem]:
    for plate in catalogue.all_plates():
        for facet, features in _by_facet(plate).items():
            states = {each.state for each in features}
            if len(states) > 1 and "none" in states:
                absent = next(each for each in features if each.state == "none")
                others = sorted(
                    {each.term or f"{facet}/{each.state}" for each in features if each.state != "none"}
                )
                message = f"This plate says that there is no {facet}, and also {listed(others)}."
                yield Problem.error(absent.mark, message, "Keep one of the two.")


def features_are_listed_once(catalogue: Catalogue) -> Iterator[Problem]:
    for plate in catalogue.all_plates():
        seen: set[tuple[str | None, str, str, str | None]] = set()
        for feature in plate.features:
            same = (feature.term, feature.facet, feature.state, feature.at)
            if same in seen:
                said = feature.term or f"{feature.facet}/{feature.state}"
                message = f"{said} is listed twice on this plate{f' at {feature.at}' if feature.at else ''}."
                yield Problem.warning(
                    feature.mark, message, "Keep one, or say with at: where the other sits."
                )
            seen.add(same)


def plates_have_features(catalogue: Catalogue) -> Iterator[Problem]:
    for plate in catalogue.all_plates():
        if not plate.features and "features" not in plate.left_out:
            message = f"The plate {plate.key} records no features, so it answers nothing."
            yield Problem.warning(
                plate.mark, message, "Add features: with a term for each thing that can be seen."
            )


def widths_are_understood(catalogue: Catalogue) -> Iterator[Problem]:
    for plate in catalogue.all_plates():
        for feature in plate.features:
            if feature.width is not None and not _WIDTH.fullmatch(feature.width):
                message = f"The width “{feature.width[:60]}” is not understood."
                yield Problem.error(
                    feature.mark, message, "Write a number and in, cm or mm: 1 in, 1/2 in, 2.5 cm."
                )
