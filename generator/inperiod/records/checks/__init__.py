"""What is wrong with records that are each soundly written.

One check is one function from a catalogue to its problems. Those ``OF_ONE`` find in a whole catalogue what
they find in each source and board by itself, so that of records that have not changed they need not be asked
again; those ``OF_ALL`` hold records against one another.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace

from inperiod.records.checks import (
    boards,
    dates,
    features,
    pictures,
    readings,
    references,
    sources,
    vocabulary,
)
from inperiod.records.model import Catalogue, Source
from inperiod.records.problems import Problem

Check = Callable[[Catalogue], Iterator[Problem]]

OF_ONE: tuple[Check, ...] = (
    sources.plate_ids_are_unique,
    sources.plate_ids_do_not_look_alike,
    sources.sources_have_plates,
    sources.sources_say_their_rights,
    sources.rights_are_no_odd_address,
    sources.outfits_have_company,
    readings.disputes_are_settled,
    readings.second_readings_name_known_terms,
    readings.second_readings_agree_with_the_record,
    dates.sources_are_dated,
    dates.dates_rest_on_something,
    dates.no_plate_precedes_its_terms,
    features.garments_are_known,
    features.features_are_known,
    features.features_apply_to_the_garment,
    features.exclusive_facets_have_one_term,
    features.absence_is_not_mixed_with_presence,
    features.features_are_listed_once,
    features.plates_have_features,
    features.widths_are_understood,
    pictures.pictures_are_described,
    boards.supported_features_are_planned,
)

OF_ALL: tuple[Check, ...] = (
    vocabulary.facets_are_named_after_their_files,
    vocabulary.terms_are_defined_once,
    vocabulary.no_term_is_called_none,
    vocabulary.broader_terms_exist,
    vocabulary.broader_terms_make_no_circle,
    vocabulary.related_terms_exist,
    vocabulary.garments_applied_to_exist,
    vocabulary.not_before_dates_have_a_source,
    sources.ids_do_not_look_alike,
    references.reprints_point_to_a_source,
    references.reused_cuts_point_to_a_plate,
    references.gathered_plates_exist,
    pictures.pictures_are_there,
    pictures.pictures_are_sound,
    pictures.regions_lie_in_their_pictures,
    pictures.pictures_show_nothing_withheld,
)

CHECKS = (*OF_ONE, *OF_ALL)


def check_catalogue(catalogue: Catalogue) -> list[Problem]:
    """All problems of a catalogue, sorted by file, line and column, none twice."""
    return sorted({problem for check in CHECKS for problem in check(catalogue)})


def check_source(source: Source, rules: Catalogue) -> list[Problem]:
    """What is wrong with a source by itself. ``rules`` is a catalogue of its settings and vocabulary."""
    alone = replace(rules, sources={source.id: source}, boards={})
    return [problem for check in OF_ONE for problem in check(alone)]


def check_together(catalogue: Catalogue) -> list[Problem]:
    """What is wrong with boards, and with records as they stand to one another. Of the sources only those
    are opened that are entangled, or that there is something to say of."""
    planned = replace(catalogue, sources={})
    return [
        *(problem for check in OF_ONE for problem in check(planned)),
        *(problem for check in OF_ALL for problem in check(catalogue)),
    ]


__all__ = ["CHECKS", "OF_ALL", "OF_ONE", "check_catalogue", "check_source", "check_together"]
