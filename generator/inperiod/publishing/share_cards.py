"""The picture shown where a page is shared: the plate's scan, else its flat in dots, else three flats.

Services that show such cards fetch them by their whole address and draw no SVG, so there are none until the
catalogue has a ``base_address``.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import Any

from inperiod.drawing.flats import raster
from inperiod.publishing import paths, words
from inperiod.publishing.flats import FlatPicture, in_its_place, shown_picture
from inperiod.publishing.lookup import Lookup
from inperiod.publishing.page import Card
from inperiod.publishing.prose import site_root
from inperiod.records.model import Catalogue, Plate


def plate_card(catalogue: Catalogue, plate: Plate) -> Card | None:
    """What is shown of a plate's page; None where it has neither scan nor flat, or the site no address."""
    if not site_root(catalogue.settings):
        return None
    picture = shown_picture(catalogue, plate)
    if picture is None:
        return None
    if isinstance(picture, FlatPicture):
        garment = catalogue.vocabulary.garments.get(plate.garment)
        what = words.sentence(garment.label if garment else plate.garment)
        return Card(paths.card_path(plate.key), raster.WIDTH, raster.HEIGHT, f"{what}, drawn from the record")
    copy = picture.figure.middle
    return Card(copy.jpg, copy.width, copy.height, picture.alt)


def plate_card_file(
    catalogue: Catalogue, plate: Plate, view: Mapping[str, Any]
) -> Iterator[tuple[str, bytes]]:
    """The card of a plate that has a flat, from what its page shows."""
    if (flat := in_its_place(view)) is not None and site_root(catalogue.settings):
        yield paths.card_path(plate.key), raster.card([flat.drawn])


def site_card(title: str) -> Card:
    """What is shown of every page that has no picture of its own."""
    return Card(paths.SITE_CARD, raster.WIDTH, raster.HEIGHT, title)


def site_card_plates(look: Lookup) -> list[str]:
    """The plates on it: an early, a middle and a late one of the garment most plates show."""
    found: dict[str, list[tuple[float, str]]] = {}
    for source in look.outlines.values():
        for plate in source.plates:
            if plate.flat and plate.middle is not None:
                found.setdefault(plate.garment, []).append((plate.middle, f"{source.id}/{plate.id}"))
    of_most: list[tuple[float, str]] = max(found.values(), key=len, default=[])
    plates = sorted(of_most)
    return list(dict.fromkeys(plates[len(plates) * part // 6][1] for part in (1, 3, 5))) if plates else []


def site_card_file(look: Lookup, plates: Iterable[str]) -> Iterator[tuple[str, bytes]]:
    """The flats of those plates."""
    flats = map(look.flat, plates)
    yield paths.SITE_CARD, raster.card([flat.drawn for flat in flats if flat])
