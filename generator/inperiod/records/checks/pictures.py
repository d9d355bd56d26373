"""Checks of the pictures that plates point at."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path, PurePosixPath

from inperiod.own_folder import own_folder
from inperiod.records.model import Catalogue, Image, Plate
from inperiod.records.pictures import (
    Original,
    UnfitPicture,
    decoded,
    held_back,
    original_of,
    quietly,
    region_numbers,
)
from inperiod.records.problems import Problem

_NO_DESCRIPTION = re.compile(
    r"\s*((an? |the )?(image|picture|photo|photograph|scan|plate|figure|img|untitled)[\s\d._-]*"
    r"|\S+\.(png|jpe?g|tiff?|webp|gif)\s*)",
    re.IGNORECASE,
)


def pictures_are_there(catalogue: Catalogue) -> Iterator[Problem]:
    home = catalogue.folder / "images"
    real_home = home.resolve()
    for plate in catalogue.entangled_plates():
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


def pictures_are_sound(catalogue: Catalogue) -> Iterator[Problem]:
    """Each picture is read once through, at its first plate; one found whole before is not read again."""
    from concurrent.futures import ThreadPoolExecutor  # here, because most catalogues start without it

    readable: list[tuple[Image, Original]] = []
    for image in _by_file(catalogue).values():
        try:
            original = original_of(catalogue, image)
        except UnfitPicture as unfit:
            yield Problem.error(image.mark, unfit.message, unfit.hint)
        else:
            if original:
                readable.append((image, original))
    if not readable:
        return
    folder = own_folder(catalogue.folder, "pictures")
    with quietly(), ThreadPoolExecutor(max_workers=2) as pool:
        found = pool.map(lambda each: _damage(each[0], each[1], folder), readable)
        for (image, _), damage in zip(readable, found, strict=True):
            if damage:
                yield Problem.error(image.mark, damage.message, damage.hint)


def _by_file(catalogue: Catalogue) -> dict[str, Image]:
    """The first mention of every picture."""
    found: dict[str, Image] = {}
    for plate in catalogue.entangled_plates():
        if plate.image:
            found.setdefault(plate.image.file, plate.image)
    return found


def _damage(image: Image, original: Original, folder: Path | None) -> UnfitPicture | None:
    """What is wrong with the picture's data; None where it is whole, which is noted in the folder."""
    noted = folder / f"{original.digest[:32]}.whole" if folder else None
    if noted and noted.exists():
        return None
    try:
        decoded(original, image.file)
    except UnfitPicture as unfit:
        return unfit
    if noted:
        noted.touch()
    return None


def regions_lie_in_their_pictures(catalogue: Catalogue) -> Iterator[Problem]:
    for plate in catalogue.entangled_plates():
        image = plate.image
        if image is None or image.region is None:
            continue
        try:
            original = original_of(catalogue, image)
        except UnfitPicture:
            continue
        numbers = region_numbers(image.region, original.width, original.height) if original else None
        if not original or not numbers:
            continue
        x, y, w, h = numbers
        size = f"{image.file} is {original.width} pixels wide and {original.height} high when upright"
        if x >= original.width or y >= original.height or w == 0 or h == 0:
            message = f"The region {image.region} holds nothing of the picture."
            yield Problem.error(image.mark, message, f"{size}; a region is x,y,w,h or pct:x,y,w,h.")
        elif x + w > original.width + 1 or y + h > original.height + 1:
            message = f"The region {image.region} runs over the edge of the picture."
            yield Problem.warning(image.mark, message, f"{size}; what lies outside is cut off.")


def pictures_are_described(catalogue: Catalogue) -> Iterator[Problem]:
    for plate in catalogue.all_plates():
        if plate.image is None:
            continue
        if not plate.image.alt:
            message = f"The picture of {plate.key} has no description for those who cannot see it."
            yield Problem.warning(
                plate.image.mark, message, "Add alt: with a sentence that says what it shows."
            )
        elif _NO_DESCRIPTION.fullmatch(plate.image.alt):
            said = " ".join(plate.image.alt[:200].split())[:60]
            message = f"“{said}” does not describe the picture of {plate.key}."
            hint = "Say in alt: what it shows, for example: Front of a frock with a square neck."
            yield Problem.warning(plate.image.mark, message, hint)


def pictures_show_nothing_withheld(catalogue: Catalogue) -> Iterator[Problem]:
    held = held_back(catalogue)
    for key, other in held.plates.items():
        plate = catalogue.plates[key]
        if plate.image is None or not _is_published(catalogue, plate):
            continue
        if other == key:
            message = f"The picture of {key} stays out of the site: its rights say that it is in copyright."
            hint = "With leave to show it, say so in the rights of the picture: rights: Shown by leave of …"
        else:
            message = f"The picture of {key} stays out of the site: it would show {other} as well."
            hint = "Give both a region, so that neither holds a part of the other."
        yield Problem.warning(plate.image.mark, message, hint)


def _is_published(catalogue: Catalogue, plate: Plate) -> bool:
    return plate.publish and catalogue.sources[plate.source].publish
