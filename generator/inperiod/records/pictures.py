"""What a picture file is: of which kind, how large, whether it is whole; and which part of it a plate is.

Pictures come from anywhere, so only the kinds named here are opened at all, and the header is asked for the
size before anything is decoded. Pillow is imported where a picture is met, because most answers need none.
"""

from __future__ import annotations

import hashlib
import re
import warnings
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path, PurePosixPath
from typing import TYPE_CHECKING

from inperiod.records.model import Catalogue, Image, Plate

if TYPE_CHECKING:
    from PIL import Image as Pillow

KINDS: Mapping[str, tuple[str, ...]] = {
    "JPEG": (".jpg", ".jpeg"),
    "PNG": (".png",),
    "TIFF": (".tif", ".tiff"),
    "WEBP": (".webp",),
    "GIF": (".gif",),
}
"""The kinds that are read, by the endings of their names. Of several frames or pages the first is read."""

MOST_PIXELS = 89_000_000
"""No larger picture is opened: an A3 page at 600 dots an inch has 70 million. Pillow warns above this."""

Box = tuple[int, int, int, int]
"""Left, top, width and height in pixels of the upright picture."""

_ORIENTATION = 0x0112
_TURNS = {
    2: "FLIP_LEFT_RIGHT",
    3: "ROTATE_180",
    4: "FLIP_TOP_BOTTOM",
    5: "TRANSPOSE",
    6: "ROTATE_270",
    7: "TRANSVERSE",
    8: "ROTATE_90",
}
"""EXIF 2.32, 4.6.4, tag Orientation: how Pillow calls what makes the picture upright; in 5 to 8 the rows of
the file are columns of the picture."""


class UnfitPicture(ValueError):
    """A picture that cannot be used; ``message`` says why in plain words, ``hint`` what to do."""

    def __init__(self, message: str, hint: str) -> None:
        super().__init__(message)
        self.message, self.hint = message, hint


@dataclass(frozen=True, slots=True)
class Original:
    """A picture as it was put into the folder: its file, the SHA-256 of its bytes, its size when upright, and
    how its EXIF data says it lies (1 upright)."""

    file: Path
    digest: str
    width: int
    height: int
    orientation: int


def picture_file(catalogue: Catalogue, image: Image) -> Path | None:
    """The file in ``images/`` that the record names; None where it is missing or lies outside."""
    folder = catalogue.folder / "images"
    file = folder / image.file
    try:
        outside = ".." in PurePosixPath(image.file).parts or not file.resolve().is_relative_to(
            folder.resolve()
        )
        return file if not outside and file.is_file() else None
    except (OSError, RuntimeError, ValueError):
        return None


def original_of(catalogue: Catalogue, image: Image) -> Original | None:
    """The picture a record names, by its header alone; None where it is missing or lies outside.

    Raises ``UnfitPicture`` where it is empty, too large, of no known kind, or not what its name says.
    """
    file = picture_file(catalogue, image)
    if file is None:
        return None
    about = file.stat()
    found = _read(file, image.file, about.st_size, about.st_mtime_ns)
    if isinstance(found, UnfitPicture):
        raise UnfitPicture(found.message, found.hint)
    return found


@lru_cache(maxsize=65536)
def _read(file: Path, name: str, length: int, changed: int) -> Original | UnfitPicture:
    """Remembered for a file of that length and time of change, because pages ask for a picture many times."""
    from PIL import Image as Pillow
    from PIL import UnidentifiedImageError

    if length == 0:
        return UnfitPicture(f"The picture {name} is empty.", "Put it into the folder images again.")
    try:
        with quietly(), Pillow.open(file, formats=tuple(KINDS)) as opened:
            kind = "JPEG" if opened.format == "MPO" else str(opened.format)
            width, height = opened.size
            # The header's own: a PNG asked for it would decode itself first. Pillow turns a TIFF unasked.
            turned = 1 if kind == "TIFF" else Pillow.Image.getexif(opened).get(_ORIENTATION)
            orientation = turned if turned in _TURNS else 1
    except Pillow.DecompressionBombError:
        return _too_large(name, None)
    except UnidentifiedImageError:
        return _unknown(name, file)
    except Exception:  # a damaged header makes decoders raise whatever they happen upon
        return broken(name)
    if not name.lower().endswith(KINDS[kind]):
        ending = KINDS[kind][0]
        better = PurePosixPath(name).with_suffix(ending)
        return UnfitPicture(
            f"The picture {name} is not what its name says: it is of the kind {kind}.",
            f"Rename it to {better}, in the folder and in the record.",
        )
    if width * height > MOST_PIXELS:
        return _too_large(name, width * height)
    with file.open("rb") as stream:
        digest = hashlib.file_digest(stream, "sha256").hexdigest()
    size = (height, width) if orientation >= 5 else (width, height)
    return Original(file, digest, *size, orientation)


def decoded(original: Original, name: str) -> Pillow.Image:
    """The first frame, upright, in the colours of the file. Raises ``UnfitPicture`` where it is damaged."""
    from PIL import Image as Pillow

    try:
        with Pillow.open(original.file, formats=tuple(KINDS)) as opened:
            opened.load()
            turn = _TURNS.get(original.orientation)
            upright: Pillow.Image = opened.transpose(Pillow.Transpose[turn]) if turn else opened
        if upright.mode == "F" or (upright.mode == "I" and not _fits_16_bits(upright)):
            raise UnfitPicture(
                f"The picture {name} holds measurements and no colours or greys.",
                "Save it with 8 or 16 bits to a channel.",
            )
        if upright.size != (original.width, original.height):
            raise broken(name)
    except UnfitPicture:
        raise
    except Exception as error:  # as above: damaged data makes decoders raise whatever they happen upon
        raise broken(name) from error
    return upright


def _fits_16_bits(image: Pillow.Image) -> bool:
    least, most = image.getextrema()
    return bool(least >= 0 and most <= 65535)  # type: ignore[operator]


@contextmanager
def quietly() -> Iterator[None]:
    """Without what Pillow has to remark on odd metadata: it prints, and we complain in our own words."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        yield


def broken(name: str) -> UnfitPicture:
    """What is said of a picture that ends too early or is damaged."""
    return UnfitPicture(
        f"The picture {name} is damaged or not whole.", "Copy it from where it came from, or scan it again."
    )


def _too_large(name: str, pixels: int | None) -> UnfitPicture:
    size = f"has {pixels // 1_000_000:,} million pixels" if pixels else "claims to be of enormous size"
    return UnfitPicture(
        f"The picture {name} {size}; more than {MOST_PIXELS // 1_000_000} million are not read.",
        "Save a smaller copy: half as wide and half as high is a quarter of the pixels.",
    )


def _unknown(name: str, file: Path) -> UnfitPicture:
    with file.open("rb") as stream:
        head = stream.read(512).lstrip(b"\xef\xbb\xbf \t\r\n")
    guesses = (
        (head[:5] == b"%PDF-", "; it is a PDF"),
        (head[:5].lower() in (b"<!doc", b"<html"), "; it is a web page"),
        (head[:4] == b"<svg" or head[:5] == b"<?xml", "; it is a drawing or another text"),
        (head[4:8] == b"ftyp", "; it is a HEIC or AVIF picture, or a film"),
        (head[:4] == b"8BPS", "; it is a Photoshop file"),
        (head[:2] == b"BM", "; it is a bitmap"),
    )
    what = next((words for is_it, words in guesses if is_it), "")
    return UnfitPicture(
        f"The picture {name} cannot be read as a picture{what}.",
        "Open it in a picture editor and save it as .jpg, .png, .tif, .webp or .gif.",
    )


_REGION = re.compile(r"(pct:)?(\d+(?:\.\d+)?),(\d+(?:\.\d+)?),(\d+(?:\.\d+)?),(\d+(?:\.\d+)?)")


def region_numbers(region: str | None, width: int, height: int) -> tuple[float, ...] | None:
    """``x,y,w,h`` in pixels, or ``pct:x,y,w,h``, as pixels of a picture of that size, wherever they lie.

    The forms are those of the IIIF Image API 3.0, 4.1. None where there is no region, or none that is read.
    """
    written = _REGION.fullmatch(region or "")
    if not written:
        return None
    x, y, w, h = (float(number) for number in written.groups()[1:])
    if written[1]:
        return x * width / 100, y * height / 100, w * width / 100, h * height / 100
    return x, y, w, h


def region_box(region: str | None, width: int, height: int) -> Box | None:
    """The region as whole pixels inside the picture; None where there is no region.

    A region that runs over the edge is cut at it, as the IIIF Image API 3.0 has it.
    """
    numbers = region_numbers(region, width, height)
    if numbers is None:
        return None
    x, y, w, h = numbers
    left, top = min(round(x), width - 1), min(round(y), height - 1)
    return left, top, max(1, min(round(w), width - left)), max(1, min(round(h), height - top))


_IN_COPYRIGHT = re.compile(r"https?://(www\.)?rightsstatements\.org/(vocab|page)/InC\b")


def may_be_shown(catalogue: Catalogue, plate: Plate) -> bool:
    """Whether the plate's picture may be published: the record is, and its rights do not say that it is in
    copyright (an ``InC`` statement). Who has leave writes so into the picture's own rights."""
    source = catalogue.sources[plate.source]
    rights = (plate.image.rights if plate.image else None) or source.rights or ""
    return plate.publish and source.publish and not _IN_COPYRIGHT.match(rights)


@dataclass(frozen=True, slots=True)
class HeldBack:
    """What of the pictures is not shown: plates without theirs, each with the plate it would give away
    (itself where its own rights forbid it), and files of which only regions are shown, never the whole."""

    plates: Mapping[str, str]
    files: frozenset[str]


def held_back(catalogue: Catalogue) -> HeldBack:
    """A picture that several plates share is not shown where it would show one that may not be."""
    sharing: dict[str, list[Plate]] = {}
    for plate in catalogue.entangled_plates():
        if plate.image:
            sharing.setdefault(plate.image.file, []).append(plate)
    plates: dict[str, str] = {}
    files: set[str] = set()
    for file, users in sharing.items():
        secret = {plate.key: plate for plate in users if not may_be_shown(catalogue, plate)}
        plates |= {key: key for key in secret}
        for plate in users if secret else ():
            if plate.key in secret:
                continue
            given_away = next(
                (each.key for each in secret.values() if _overlap(catalogue, plate, each)), None
            )
            if given_away:
                plates[plate.key] = given_away
            else:
                files.add(file)
    return HeldBack(plates, frozenset(files))


def _overlap(catalogue: Catalogue, one: Plate, other: Plate) -> bool:
    """Whether the two plates' parts of one picture have any spot in common."""
    assert one.image is not None
    assert other.image is not None
    try:
        original = original_of(catalogue, one.image)
    except UnfitPicture:
        original = None
    if original is None:
        return False
    boxes = [
        region_box(image.region, original.width, original.height) or (0, 0, original.width, original.height)
        for image in (one.image, other.image)
    ]
    (x, y, w, h), (left, top, wide, high) = boxes
    return x < left + wide and left < x + w and y < top + high and top < y + h
