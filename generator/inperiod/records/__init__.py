"""What people write: typed records, reading them, and checking them."""

from __future__ import annotations

from importlib import import_module
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from inperiod.records.checks import check_catalogue
    from inperiod.records.model import (
        Board,
        Catalogue,
        Creator,
        Dated,
        Departure,
        Facet,
        Feature,
        Gathered,
        HeldBy,
        Image,
        Locator,
        Mark,
        Milestone,
        Name,
        Plate,
        Price,
        Publisher,
        Recorded,
        Settings,
        Source,
        Term,
        Vocabulary,
        Wearer,
    )
    from inperiod.records.outcome import Reading
    from inperiod.records.problems import Problem
    from inperiod.records.reading import read_catalogue
    from inperiod.records.tidying import Tidied, tidied_files, tidy, write_tidied

__all__ = [
    "Board",
    "Catalogue",
    "Creator",
    "Dated",
    "Departure",
    "Facet",
    "Feature",
    "Gathered",
    "HeldBy",
    "Image",
    "Locator",
    "Mark",
    "Milestone",
    "Name",
    "Plate",
    "Price",
    "Problem",
    "Publisher",
    "Reading",
    "Recorded",
    "Settings",
    "Source",
    "Term",
    "Tidied",
    "Vocabulary",
    "Wearer",
    "check_catalogue",
    "read_catalogue",
    "tidied_files",
    "tidy",
    "write_tidied",
]

_ELSEWHERE = {
    "Problem": "problems",
    "Reading": "outcome",
    "Tidied": "tidying",
    "check_catalogue": "checks",
    "read_catalogue": "reading",
    "tidied_files": "tidying",
    "tidy": "tidying",
    "write_tidied": "tidying",
}


def __getattr__(name: str) -> Any:
    """Each name is fetched when it is first asked for: what was read before can be answered from without the
    reader, the checks and the formatter."""
    if name not in __all__:
        raise AttributeError(name)
    return getattr(import_module(f"{__name__}.{_ELSEWHERE.get(name, 'model')}"), name)
