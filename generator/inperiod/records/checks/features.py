"""Checks of the garments and features that plates record and boards plan."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterator

from inperiod.records.checks.words import listed, unknown_feature, unknown_garment
from inperiod.records.model import Board, Catalogue, Feature, Plate
from inperiod.records.problems import Problem

_NUMBER = r"(?:[0-9]{1,4}(?:\.[0-9]{1,3}|[ -][0-9]{1,2}/[0-9]{1,2}|/[0-9]{1,2}| ?[¼½¾⅛⅜⅝⅞])?|[¼½¾⅛⅜⅝⅞])"
_WIDTH = re.compile(rf"{_NUMBER}(?: ?(?:-|–|to) ?{_NUMBER})? ?(?:in|cm|mm)")


def _described(catalogue: Catalogue) -> Iterator[Plate | Board]:
    yield from catalogue.all_plates()
    yield from catalogue.boards.values()


def _kind(described: Plate | Board) -> str:
    return "plate" if isinstance(described, Plate) else "plan"


def garments_are_known(catalogue: Catalogue) -> Iterator[Problem]:
    for each in _described(catalogue):
        mark = each.mark_of("garment")
        if each.garment and (problem := unknown_garment(each.garment, catalogue.vocabulary, mark)):
            yield problem


def features_are_known(catalogue: Catalogue) -> Iterator[Problem]:
    for each in _described(catalogue):
        for feature in each.features:
            if problem := unknown_feature(feature, catalogue.vocabulary):
                yield problem


def features_apply_to_the_garment(catalogue: Catalogue) -> Iterator[Problem]:
    vocabulary = catalogue.vocabulary
    applies: dict[tuple[str, str], bool] = {}
    for each in _described(catalogue):
        if each.garment not in vocabulary.garments:
            continue
        for feature in each.features:
            term = vocabulary.terms.get(feature.term or "")
            if term is None or term.facet == "garment":
                continue
            asked = (term.key, each.garment)
            if asked not in applies:
                applies[asked] = vocabulary.applies(term, each.garment)
            if not applies[asked]:
                allowed = term.applies_to or vocabulary.facets[term.facet].applies_to
                message = f"{term.key} does not apply to the garment {each.garment}."
                yield Problem.error(feature.mark, message, f"It applies to {listed(allowed)}.")


def _by_facet(described: Plate | Board) -> dict[str, list[Feature]]:
    grouped: dict[str, list[Feature]] = defaultdict(list)
    for feature in described.features:
        grouped[feature.facet].append(feature)
    return grouped


def exclusive_facets_have_one_term(catalogue: Catalogue) -> Iterator[Problem]:
    exclusive = {key: facet for key, facet in catalogue.vocabulary.facets.items() if facet.exclusive}
    for described in _described(catalogue):
        for facet, features in _by_facet(described).items():
            if len(features) < 2 or facet not in exclusive:
                continue
            terms = list(dict.fromkeys(each.term for each in features if each.term))
            if len(terms) > 1:
                second = next(each for each in features if each.term == terms[1])
                label, kind = exclusive[facet].label.lower(), _kind(described)
                message = f"A garment has one {label} at a time, and this {kind} has {listed(terms)}."
                yield Problem.error(second.mark, message, "Keep one, and put the other in note:.")


def absence_is_not_mixed_with_presence(catalogue: Catalogue) -> Iterator[Problem]:
    for described in _described(catalogue):
        for facet, features in _by_facet(described).items():
            absent = next((each for each in features if each.state == "none"), None)
            if absent is None:
                continue
            others = sorted({each.word for each in features if each.state != "none"})
            if others:
                message = f"This {_kind(described)} says that there is no {facet}, and also {listed(others)}."
                yield Problem.error(absent.mark, message, "Keep one of the two.")


def features_are_listed_once(catalogue: Catalogue) -> Iterator[Problem]:
    for described in _described(catalogue):
        seen: set[tuple[str, str | None]] = set()
        for feature in described.features:
            same = (feature.word, feature.at)
            if same in seen:
                at = f" at {feature.at}" if feature.at else ""
                message = f"{feature.word} is listed twice on this {_kind(described)}{at}."
                hint = "Keep one, or say with at: where the other sits."
                yield Problem.warning(feature.mark, message, hint)
            seen.add(same)


def plates_have_features(catalogue: Catalogue) -> Iterator[Problem]:
    for plate in catalogue.all_plates():
        if not plate.features and "features" not in plate.left_out:
            message = f"The plate {plate.key} records no features, so it answers nothing."
            yield Problem.warning(
                plate.mark, message, "Add features: with a term for each thing that can be seen."
            )


def widths_are_understood(catalogue: Catalogue) -> Iterator[Problem]:
    for described in _described(catalogue):
        for feature in described.features:
            if feature.width is not None and not _WIDTH.fullmatch(feature.width):
                message = f"The width “{feature.width[:60]}” is not understood."
                hint = "Write a number and in, cm or mm: 1 in, 1/2 in, 2.5 cm."
                yield Problem.error(feature.mark, message, hint)
