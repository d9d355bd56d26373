"""The door to the site: what is not to be published is taken out here, once, before anything is made of
it."""

from __future__ import annotations

from dataclasses import replace

from inperiod.records.model import Catalogue, Plate, Source
from inperiod.records.pictures import held_back
from inperiod.records.unopened import with_others


def published(catalogue: Catalogue) -> Catalogue:
    """The catalogue without sources, plates and boards marked ``publish: false``, and without what points
    at them.

    A plate whose ``same_cut_as`` and a source whose ``reprint_of`` name something withheld lose that line, so
    that not even the name of a withheld record reaches the output. A picture is taken from every plate whose
    picture would show something withheld, and from those whose rights forbid it.
    """
    held = held_back(catalogue)
    entangled = catalogue.entangled
    gone = {key for key, source in entangled.items() if not source.publish}
    withheld = {each.key for each in catalogue.entangled_plates() if not each.publish or each.source in gone}

    def is_shown(plate: str) -> bool:
        return plate in catalogue.plates and plate not in withheld

    def source_shown(source: Source) -> Source:
        original = source.reprint_of
        named = original if original in catalogue.sources and original not in gone else None
        plates = tuple(plate_shown(each) for each in source.plates if each.publish)
        return replace(source, reprint_of=named, plates=plates)

    def plate_shown(plate: Plate) -> Plate:
        same = plate.same_cut_as if is_shown(plate.same_cut_as or "") else None
        return replace(plate, same_cut_as=same, image=None if plate.key in held.plates else plate.image)

    boards = {
        key: replace(board, plates=tuple(each for each in board.plates if is_shown(each.plate)))
        for key, board in catalogue.boards.items()
        if board.publish
    }
    changed = {key: None if key in gone else source_shown(source) for key, source in entangled.items()}
    return with_others(catalogue, changed, boards, held.files)
