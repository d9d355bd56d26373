"""The door to the site: what is not to be published is taken out here, once, before anything is made of
it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from inperiod.records.model import Board, Catalogue, Plate, Source
from inperiod.records.pictures import HeldBack, held_back


def published(catalogue: Catalogue) -> Catalogue:
    """The catalogue without sources, plates and boards marked ``publish: false``, and without what points
    at them.

    A plate whose ``same_cut_as`` and a source whose ``reprint_of`` name something withheld lose that line, so
    that not even the name of a withheld record reaches the output. A picture is taken from every plate whose
    picture would show something withheld, and from those whose rights forbid it.
    """
    held = held_back(catalogue)
    sources = {key: source for key, source in catalogue.sources.items() if source.publish}
    shown = {
        plate.key for source in sources.values() for plate in source.plates if plate.publish
    }  # keys that may be named
    return Catalogue(
        folder=catalogue.folder,
        settings=catalogue.settings,
        vocabulary=catalogue.vocabulary,
        sources={key: _source(source, sources, shown, held) for key, source in sources.items()},
        boards={key: _board(board, shown) for key, board in catalogue.boards.items() if board.publish},
        only_regions_of=held.files,
    )


def _source(source: Source, sources: Mapping[str, Source], shown: set[str], held: HeldBack) -> Source:
    return replace(
        source,
        reprint_of=source.reprint_of if source.reprint_of in sources else None,
        plates=tuple(_plate(plate, shown, held) for plate in source.plates if plate.publish),
    )


def _plate(plate: Plate, shown: set[str], held: HeldBack) -> Plate:
    return replace(
        plate,
        same_cut_as=plate.same_cut_as if plate.same_cut_as in shown else None,
        image=None if plate.key in held.plates else plate.image,
    )


def _board(board: Board, shown: set[str]) -> Board:
    return replace(board, plates=tuple(gathered for gathered in board.plates if gathered.plate in shown))
