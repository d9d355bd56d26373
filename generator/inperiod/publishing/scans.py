"""What the site shows of the pictures in ``images/``: smaller copies of them and of their regions.

The originals are never published. A copy is made in the box sizes below and never enlarged, as WebP and as
JPEG, upright, in sRGB (grey stays grey), on paper where the original is transparent, and without metadata:
where it was taken, with what and by whom stays behind. Copies are kept in the catalogue's own folder by what
they are made from and how, so that the next build finds them; the same original gives the same bytes.
"""

from __future__ import annotations

import hashlib
import io
import os
import tempfile
import threading
import time
from collections.abc import Iterable, Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

import PIL
from PIL import Image as Pillow
from PIL import ImageCms

from inperiod.own_folder import own_folder
from inperiod.records.model import Catalogue
from inperiod.records.pictures import Box, Original, UnfitPicture, decoded, quietly

BOXES = ((360, 480), (960, 1440), (2000, 3000))
"""The largest width and height of each copy in pixels: in a list, on a page, for looking closely."""

KINDS = ("webp", "jpg")
_OPTIONS: dict[str, tuple[str, dict[str, int | bool]]] = {
    "webp": ("WEBP", {"quality": 78, "method": 4}),
    "jpg": ("JPEG", {"quality": 82, "optimize": True, "progressive": True}),
}
_HARDLY_LARGER = 1.25
_PAPER = (0xF4, 0xF1, 0xE9)
_RECIPE = f"1 {_OPTIONS} {_PAPER} Pillow {PIL.__version__}"
"""Whatever changes the bytes of a copy: a copy made by another recipe is made anew."""

_KEPT_FOR = 30 * 24 * 3600
"""Seconds for which copies that are no longer asked for are kept."""


@dataclass(frozen=True, slots=True)
class Size:
    """A copy's size in pixels, and its paths in the site without their endings."""

    width: int
    height: int
    stem: str

    @property
    def webp(self) -> str:
        return f"{self.stem}.webp"

    @property
    def jpg(self) -> str:
        return f"{self.stem}.jpg"


@dataclass(frozen=True, slots=True)
class Scan:
    """A picture, or the part of it in ``box``, as the site has it; sizes from the smallest to the largest."""

    original: Original
    box: Box | None
    sizes: tuple[Size, ...]

    @property
    def small(self) -> Size:
        return self.sizes[0]

    @property
    def middle(self) -> Size:
        return self.sizes[min(1, len(self.sizes) - 1)]

    @property
    def large(self) -> Size:
        return self.sizes[-1]


def scan_of(original: Original, box: Box | None = None) -> Scan:
    """What will be made of an original, or of a part of it. Nothing is made yet.

    The paths follow from the original's bytes alone: they tell nothing of its name, and a page that is on
    many plates is there once.
    """
    width, height = box[2:] if box else (original.width, original.height)
    stem = f"images/{_hashed(original.digest, str(box))}"
    return Scan(original, box, tuple(Size(*size, f"{stem}-{size[0]}") for size in sizes_for(width, height)))


def sizes_for(width: int, height: int) -> list[tuple[int, int]]:
    """Width and height of each copy: within its box, never enlarged, none hardly larger than another."""
    sizes: list[tuple[int, int]] = []
    for wide, high in BOXES:
        scale = min(1.0, wide / width, high / height)
        size = max(1, round(width * scale)), max(1, round(height * scale))
        if sizes and size[0] < sizes[-1][0] * _HARDLY_LARGER:
            sizes.pop()
        sizes.append(size)
    return sizes


def _hashed(*parts: str) -> str:
    return hashlib.sha256("\n".join(parts).encode()).hexdigest()[:20]


@contextmanager
def place_for_scans(catalogue: Catalogue) -> Iterator[Path]:
    """The folder copies are kept in between builds; one for this build alone where nothing can be kept."""
    pictured = any(plate.image for plate in catalogue.entangled_plates())
    folder = own_folder(catalogue.folder, "pictures") if pictured else None
    if folder:
        yield folder
        return
    with tempfile.TemporaryDirectory(prefix="inperiod-") as place:
        yield Path(place)


@dataclass(frozen=True, slots=True)
class Made:
    """Every copy by its path in the site, and the originals that turned out to be damaged, by their files."""

    files: dict[str, Path]
    damaged: dict[Path, UnfitPicture]


def make_scans(scans: Iterable[Scan], folder: Path) -> Made:
    """Make what the folder does not hold yet, several originals at a time: Pillow lets other threads work."""
    copies = {scan: _copies(scan, folder) for scan in scans}
    wanted: dict[Path, list[Scan]] = {}
    for scan, made in copies.items():
        if not all(_is_whole(copy) for copy in made.values()):
            wanted.setdefault(scan.original.file, []).append(scan)
    damaged: dict[Path, UnfitPicture] = {}
    with quietly(), ThreadPoolExecutor(max_workers=min(4, os.cpu_count() or 1)) as pool:
        for unfit, file in zip(
            pool.map(lambda each: _make_all(each, folder), wanted.values()), wanted, strict=True
        ):
            if unfit:
                damaged[file] = unfit
    sound = [made for scan, made in copies.items() if scan.original.file not in damaged]
    files = {path: copy for made in sound for path, copy in made.items()}
    _tidy(folder, {copy.name for copy in files.values()})
    return Made(files, damaged)


def _copies(scan: Scan, folder: Path) -> dict[str, Path]:
    """Each copy's path in the site and its file in the folder, named after all it depends on."""
    name = _hashed(_RECIPE, scan.original.digest, str(scan.original.orientation), str(scan.box))
    return {
        f"{size.stem}.{kind}": folder / f"{name}-{size.width}x{size.height}.{kind}"
        for size in scan.sizes
        for kind in KINDS
    }


def _is_whole(copy: Path) -> bool:
    return copy.is_file() and not copy.is_symlink() and copy.stat().st_size > 0


def _make_all(scans: list[Scan], folder: Path) -> UnfitPicture | None:
    """All that is wanted of one original, which is decoded once; what is wrong with it, else None."""
    original = scans[0].original
    try:
        image = decoded(original, original.file.name)
        for scan in scans:
            _make(scan, image, folder)
    except UnfitPicture as unfit:
        return unfit
    return None


def _make(scan: Scan, image: Pillow.Image, folder: Path) -> None:
    profile = image.info.get("icc_profile")
    if scan.box:
        left, top, width, height = scan.box
        image = image.crop((left, top, left + width, top + height))
    image = _smoothed(_plain(image), scan.large)
    image = _on_paper(_in_srgb(image, profile))
    copies = _copies(scan, folder)
    for size in reversed(scan.sizes):
        image = _smoothed(image, size)
        image.info = {}
        for kind in KINDS:
            format_name, options = _OPTIONS[kind]
            written = io.BytesIO()
            image.save(written, format_name, **options)
            _put(copies[f"{size.stem}.{kind}"], written.getvalue())


def _put(file: Path, data: bytes) -> None:
    """In one step, so that a build that is cut off or runs beside this one never finds half a copy."""
    aside = file.with_name(f".{os.getpid()}-{threading.get_ident()}-{file.name}")
    try:
        aside.write_bytes(data)
        os.replace(aside, file)
    except BaseException:
        aside.unlink(missing_ok=True)
        raise


def _smoothed(image: Pillow.Image, size: Size) -> Pillow.Image:
    if image.size == (size.width, size.height):
        return image
    return image.resize((size.width, size.height), Pillow.Resampling.LANCZOS, reducing_gap=3.0)


def _plain(image: Pillow.Image) -> Pillow.Image:
    """In one of the modes L, RGB, RGBA, CMYK and LAB, with 8 bits to a channel."""
    if image.mode.startswith("I"):
        # Greys of 16 bits; Pillow's own conversion would cut them off at 255.
        return image.point(lambda grey: grey * (1 / 256)).convert("L")
    if image.has_transparency_data:
        return image.convert("RGBA")
    if image.mode in ("L", "RGB", "CMYK", "LAB"):
        return image
    return image.convert("L" if image.mode == "1" else "RGB")


def _in_srgb(image: Pillow.Image, profile: bytes | None) -> Pillow.Image:
    """The same colours as L, RGB or RGBA for a screen that knows of no profile."""
    alpha = image.getchannel("A") if image.mode == "RGBA" else None
    base = image.convert("RGB") if alpha else image
    turned = _by_profile(base, profile)
    turned = turned.convert("L" if base.mode == "L" else "RGB")
    if alpha:
        turned.putalpha(alpha)
    return turned


def _by_profile(image: Pillow.Image, profile: bytes | None) -> Pillow.Image:
    if not profile and image.mode != "LAB":
        return image
    try:
        given = ImageCms.ImageCmsProfile(io.BytesIO(profile)) if profile else ImageCms.createProfile("LAB")
        made = ImageCms.profileToProfile(
            image,
            given,
            ImageCms.createProfile("sRGB"),
            ImageCms.Intent.RELATIVE_COLORIMETRIC,
            "RGB",
            flags=ImageCms.Flags.BLACKPOINTCOMPENSATION,
        )
    except (ImageCms.PyCMSError, OSError, ValueError, TypeError):
        # A profile that is broken or of another kind of colour: the numbers are taken as they stand.
        if image.mode == "LAB":
            return image.getchannel("L")
        return image
    return made or image


def _on_paper(image: Pillow.Image) -> Pillow.Image:
    if image.mode != "RGBA":
        return image
    paper = Pillow.new("RGB", image.size, _PAPER)
    paper.paste(image, mask=image.getchannel("A"))
    return paper


def _tidy(folder: Path, used: set[str]) -> None:
    """Take away copies that have not been asked for in a month."""
    before = time.time() - _KEPT_FOR
    for file in folder.iterdir():
        if file.name not in used and file.is_file() and file.stat().st_mtime < before:
            file.unlink(missing_ok=True)
