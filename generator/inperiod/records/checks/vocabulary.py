"""Checks of the vocabulary itself."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import PurePosixPath

from inperiod.records.checks.references import in_circles
from inperiod.records.checks.words import SEE_GARMENTS, did_you_mean
from inperiod.records.model import Catalogue, Facet, Term
from inperiod.records.problems import Problem


def facets_are_named_after_their_files(catalogue: Catalogue) -> Iterator[Problem]:
    for facet in catalogue.vocabulary.facets.values():
        if PurePosixPath(facet.mark.file).stem != facet.id:
            message = f"The facet {facet.id} stands in a file of another name."
            yield Problem.error(facet.mark, message, f"Rename the file to {facet.id}.yaml.")


def terms_are_defined_once(catalogue: Catalogue) -> Iterator[Problem]:
    for facet in catalogue.vocabulary.facets.values():
        first: dict[str, int] = {}
        for term in facet.terms:
            if term.id in first:
                message = f"The term {term.key} is defined already on line {first[term.id]}."
                yield Problem.error(term.mark, message, "Give one of the two another id, or join them.")
            else:
                first[term.id] = term.mark.line


def no_term_is_called_none(catalogue: Catalogue) -> Iterator[Problem]:
    for term in catalogue.vocabulary.terms.values():
        if term.id == "none":
            message = "No term can have the id none: it says that a facet was looked at and is absent."
            yield Problem.error(term.mark, message, "Choose another id.")


def broader_terms_exist(catalogue: Catalogue) -> Iterator[Problem]:
    for facet in catalogue.vocabulary.facets.values():
        ids = [term.id for term in facet.terms]
        known = set(ids)
        for term in facet.terms:
            if term.broader and term.broader not in known:
                message = (
                    f"{term.key} names {term.broader} as its broader term, which {facet.id} does not have."
                )
                yield Problem.error(term.mark_of("broader"), message, did_you_mean(term.broader, ids))


def broader_terms_make_no_circle(catalogue: Catalogue) -> Iterator[Problem]:
    for facet in catalogue.vocabulary.facets.values():
        circles = in_circles({term.id: term.broader for term in facet.terms if term.broader})
        for term in facet.terms:
            if term.id in circles:
                message = f"{term.key} is broader than itself, by way of its broader terms."
                hint = "Take broader: out of the term that is widest."
                yield Problem.error(term.mark_of("broader"), message, hint)


def related_terms_exist(catalogue: Catalogue) -> Iterator[Problem]:
    terms = catalogue.vocabulary.terms
    for term in terms.values():
        for other in term.see_also:
            if other == term.key:
                yield Problem.warning(
                    term.mark_of("see_also"), f"{other} refers to itself under see_also.", "Take it out."
                )
            elif other not in terms:
                message = f"{term.key} refers to {other} under see_also, which the vocabulary does not have."
                yield Problem.error(term.mark_of("see_also"), message, did_you_mean(other, terms))


def garments_applied_to_exist(catalogue: Catalogue) -> Iterator[Problem]:
    garments = catalogue.vocabulary.garments
    for facet in catalogue.vocabulary.facets.values():
        owners: list[Facet | Term] = [facet, *facet.terms]
        for owner in owners:
            for garment in owner.applies_to:
                if garment not in garments:
                    message = f"{owner.id} applies to {garment}, which is no garment of the vocabulary."
                    yield Problem.error(
                        owner.mark_of("applies_to"), message, did_you_mean(garment, garments, SEE_GARMENTS)
                    )


def not_before_dates_have_a_source(catalogue: Catalogue) -> Iterator[Problem]:
    for term in catalogue.vocabulary.terms.values():
        for name, milestone in (("not_before", term.not_before), ("in_dress_from", term.in_dress_from)):
            if milestone is None:
                continue
            if not milestone.source:
                message = f"{term.key} has a {name} date without a source."
                yield Problem.error(
                    milestone.date.mark, message, "Add source: with a citation, or: from memory."
                )
            if not milestone.event:
                message = f"The {name} date of {term.key} does not say what happened then."
                yield Problem.warning(
                    milestone.date.mark,
                    message,
                    "Add event: filed, granted, first sold, first made or in use.",
                )
