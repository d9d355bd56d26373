"""The pictures that plates point at, as the site shows them: the figure, and the page it is on."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from pathlib import Path

from inperiod.publishing import words
from inperiod.publishing.scans import Scan, scan_of
from inperiod.records.model import Catalogue, Plate, Source
from inperiod.records.pictures import UnfitPicture, original_of, region_box
from inperiod.records.unopened import with_others

Outline = tuple[float, float, float, float]
"""Left, top, width and height in per cent of the page."""


@dataclass(frozen=True, slots=True)
class Picture:
    """A plate's picture. ``figure`` is the plate's region, or the whole where it has none; ``page`` the whole
    around a region, None where there is none or it may not be shown; ``outline`` where the region lies on it.

    ``path``, ``width`` and ``height`` are of the smallest copy, for lists.
    """

    figure: Scan
    page: Scan | None
    outline: Outline | None
    alt: str
    rights: str | None

    @property
    def path(self) -> str:
        return self.figure.small.webp

    @property
    def width(self) -> int:
        return self.figure.small.width

    @property
    def height(self) -> int:
        return self.figure.small.height


def picture_of(catalogue: Catalogue, plate: Plate) -> Picture | None:
    """The plate's picture; None where there is none, or where it is missing, unfit or outside ``images/``."""
    if plate.image is None:
        return None
    try:
        original = original_of(catalogue, plate.image)
    except UnfitPicture:
        return None
    if original is None:
        return None
    box = region_box(plate.image.region, original.width, original.height)
    shown_whole = box is not None and plate.image.file not in catalogue.only_regions_of
    outline = None
    if box and shown_whole:
        (left, top, width, height), wide, high = box, original.width / 100, original.height / 100
        outline = (left / wide, top / high, width / wide, height / high)
    return Picture(
        figure=scan_of(original, box),
        page=scan_of(original) if shown_whole else None,
        outline=outline,
        alt=plate.image.alt or plate.caption or "",
        rights=words.rights(plate.image.rights or catalogue.sources[plate.source].rights),
    )


def on_the_same_page(catalogue: Catalogue, plate: Plate) -> tuple[Plate, ...]:
    """The other plates of the source that are parts of the same picture, where its whole may be shown."""
    picture = picture_of(catalogue, plate)
    if picture is None or picture.page is None or plate.image is None:
        return ()
    return tuple(
        other
        for other in catalogue.sources[plate.source].plates
        if other.id != plate.id
        and other.image
        and other.image.file == plate.image.file
        and other.image.region
    )


def outlines_on_page(catalogue: Catalogue, plates: Iterable[Plate]) -> tuple[Outline, ...]:
    """Where those plates lie on their page; plates of one spot (a figure's several garments) once."""
    pictures = (picture_of(catalogue, plate) for plate in plates)
    return tuple(dict.fromkeys(each.outline for each in pictures if each and each.outline))


@dataclass(frozen=True, slots=True)
class PageScan:
    """A page of a source that may be shown whole: its scan, what it is called, the plates on it."""

    scan: Scan
    label: str
    plates: tuple[Plate, ...]


def pages_of(catalogue: Catalogue, source: Source) -> tuple[PageScan, ...]:
    """The scans of a source's pages, in the order of its plates. A picture that is one figure alone, cut out
    before it was put into the folder, is no page."""
    found: dict[Scan, list[Plate]] = {}
    for plate in source.plates:
        picture = picture_of(catalogue, plate)
        if picture and picture.page:
            found.setdefault(picture.page, []).append(plate)
    return tuple(
        PageScan(
            scan, f"Page {plates[0].locator.page}" if plates[0].locator.page else "A page", tuple(plates)
        )
        for scan, plates in found.items()
    )


def scans_in(catalogue: Catalogue) -> Iterator[Scan]:
    """Everything that has to be made of pictures."""
    for plate in catalogue.entangled_plates():
        picture = picture_of(catalogue, plate)
        if picture:
            yield picture.figure
            if picture.page:
                yield picture.page


def without_pictures(catalogue: Catalogue, files: frozenset[Path]) -> Catalogue:
    """The same catalogue, its plates no longer pointing at those files, which could not be read."""
    if not files:
        return catalogue
    folder = catalogue.folder / "images"

    def freed(plate: Plate) -> Plate:
        lost = plate.image is not None and folder / plate.image.file in files
        return replace(plate, image=None) if lost else plate

    changed = {
        key: replace(source, plates=tuple(map(freed, source.plates)))
        for key, source in catalogue.entangled.items()
    }
    return with_others(catalogue, changed, catalogue.boards, catalogue.only_regions_of)
