"""Flats on the site: a picture drawn from the record for every plate that has no scan."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from inperiod.dating import decimal_year
from inperiod.drawing.flats import Flat, draw_flat, flat_size
from inperiod.publishing import paths
from inperiod.publishing.pictures import Picture, picture_of
from inperiod.records.model import Catalogue, Dated, Plate


@dataclass(frozen=True, slots=True)
class FlatPicture:
    """A flat as a file of the site, for lists: its path, and its size in pixels. Lists name the plate beside
    it, so it has no text of its own."""

    path: str
    width: int
    height: int
    alt: str = ""


def middle_year(dated: Dated | None) -> float | None:
    """The middle of a date in decimal years; the closed end where the other is open; None without a date."""
    if dated is None:
        return None
    ends = [decimal_year(day) for day in (dated.span.earliest, dated.span.latest) if day is not None]
    return sum(ends) / len(ends) if ends else None


def flat_of(catalogue: Catalogue, plate: Plate) -> Flat | None:
    """The plate's flat; None for a garment that has no flat."""
    return draw_flat(plate, catalogue.vocabulary, middle_year(catalogue.dated(plate)))


def shown_picture(catalogue: Catalogue, plate: Plate) -> Picture | FlatPicture | None:
    """What a list shows of a plate: its scan, else its flat."""
    picture = picture_of(catalogue, plate)
    if picture is not None:
        return picture
    size = flat_size(plate, catalogue.vocabulary, middle_year(catalogue.dated(plate)))
    return FlatPicture(paths.flat_path(plate.key), *size) if size else None


def in_its_place(view: Mapping[str, Any]) -> Flat | None:
    """The flat that stands for the plate of that page; None where its scan does, or nothing."""
    flat: Flat | None = view["flat"]
    return flat if view["picture"] is None else None


def flat_file(plate: Plate, view: Mapping[str, Any]) -> Iterator[tuple[str, str]]:
    """The flat of a plate's page as a file for lists, by its path in the site; nothing where it has none, or
    where its scan is shown."""
    if (flat := in_its_place(view)) is not None:
        yield paths.flat_path(plate.key), str(flat.file)
