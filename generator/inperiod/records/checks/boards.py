"""Checks of research boards against the catalogue."""

from __future__ import annotations

from collections.abc import Iterator

from inperiod.records.checks.words import did_you_mean
from inperiod.records.model import Catalogue
from inperiod.records.problems import Problem


def supported_features_are_planned(catalogue: Catalogue) -> Iterator[Problem]:
    for board in catalogue.boards.values():
        planned = [feature.word for feature in board.features]
        for gathered in board.plates:
            if gathered.supports and gathered.supports not in planned:
                message = f"This plate supports {gathered.supports}, which is not planned on the board."
                hint = did_you_mean(gathered.supports, planned, "Add it to features:, or take supports: out.")
                yield Problem.warning(gathered.mark, message, hint)
        for departure in board.departures:
            if departure.feature and departure.feature not in planned:
                message = f"This departure concerns {departure.feature}, which is not planned on the board."
                hint = did_you_mean(departure.feature, planned, "Add it to features:, or take feature: out.")
                yield Problem.warning(departure.mark, message, hint)
