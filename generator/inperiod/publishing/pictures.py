"""The pictures that plates point at."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from PIL import Image as Pillow
from PIL import UnidentifiedImageError

from inperiod.publishing import words
from inperiod.records.model import Catalogue, Plate

SHOWN = frozenset({".jpg", ".jpeg", ".png", ".webp", ".gif", ".svg"})


@dataclass(frozen=True, slots=True)
class Picture:
    """A picture on a page: its path from the root of the site, the file it is copied from, size in pixels
    (None for a drawing without one), alternative text, and its rights in words."""

    path: str
    file: Path
    alt: str
    width: int | None
    height: int | None
    rights: str | None


def picture_of(catalogue: Catalogue, plate: Plate) -> Picture | None:
    """The plate's picture; None where there is none, where the file is missing, or where it lies outside
    ``images/``."""
    if plate.image is None:
        return None
    folder = (catalogue.folder / "images").resolve()
    file = (folder / plate.image.file).resolve()
    if folder not in file.parents or not file.is_file() or file.suffix.lower() not in SHOWN:
        return None
    width: int | None = None
    height: int | None = None
    if file.suffix.lower() != ".svg":
        try:
            with Pillow.open(file) as opened:
                width, height = opened.size
        except (OSError, UnidentifiedImageError, Pillow.DecompressionBombError):
            return None
    return Picture(
        path="images/" + file.relative_to(folder).as_posix(),
        file=file,
        alt=plate.image.alt or plate.caption or "",
        width=width,
        height=height,
        rights=words.rights(plate.image.rights or catalogue.sources[plate.source].rights),
    )
