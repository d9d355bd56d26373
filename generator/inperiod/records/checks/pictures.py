"""Checks of the pictures that plates point at."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import PurePosixPath

from inperiod.records.model import Catalogue
from inperiod.records.problems import Problem


def pictures_are_there(catalogue: Catalogue) -> Iterator[Problem]:
    home = catalogue.folder / "images"
    real_home = home.resolve()
    for plate in catalogue.all_plates():
        if plate.image is None:
            continue
        name, mark = plate.image.file, plate.image.mark
        path = home / name
        try:
            if ".." in PurePosixPath(name).parts or not path.resolve().is_relative_to(real_home):
                message = f"The picture {name} lies outside the folder images."
                yield Problem.error(mark, message, "Put a copy into the folder images.")
            elif not path.is_file():
                message = f"The picture {name} is not in the folder images."
                yield Problem.error(mark, message, "Check its name, capitals included, or put it there.")
        except (OSError, RuntimeError, ValueError):
            yield Problem.error(mark, f"The picture {name} cannot be opened.", "Check the file.")


def pictures_are_described(catalogue: Catalogue) -> Iterator[Problem]:
    for plate in catalogue.all_plates():
        if plate.image and not plate.image.alt:
            message = f"The picture of {plate.key} has no description for those who cannot see it."
            yield Problem.warning(
                plate.image.mark, message, "Add alt: with a sentence that says what it shows."
            )
