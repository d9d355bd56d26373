"""Copies of pictures: upright, in sRGB, on paper, without metadata, kept between builds; never the original.

Every picture is made here. What is held to a standard says which: EXIF 2.32, ICC.1, ITU-T T.81 (JPEG),
RFC 9649 (WebP), the IIIF Image API 3.0.
"""

from __future__ import annotations

import io
import struct
import time
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PIL import Image as Pillow
from PIL import ImageCms, PngImagePlugin

from inperiod.cli import main
from inperiod.publishing import build, scans
from inperiod.publishing.pictures import Picture, picture_of
from inperiod.publishing.published import published
from inperiod.publishing.scans import BOXES, make_scans, scan_of, sizes_for
from inperiod.records import read_catalogue
from inperiod.records.model import Catalogue, Image, Mark, Plate
from inperiod.records.pictures import UnfitPicture, original_of
from publishing.pages import contents
from publishing.sample import plate, sample, source

RED, GREEN, BLUE, WHITE = (230, 30, 30), (30, 200, 30), (30, 30, 230), (250, 250, 250)
CORNERS = (RED, GREEN, BLUE, WHITE)
"""Of the upright picture: top left, top right, bottom left, bottom right."""

Make = Callable[..., Catalogue]


def cornered(width: int = 60, height: int = 40) -> Pillow.Image:
    """A picture that tells which way up it is."""
    picture = Pillow.new("RGB", (width, height))
    for at, colour in enumerate(CORNERS):
        x, y = at % 2 * width // 2, at // 2 * height // 2
        picture.paste(colour, (x, y, x + width // 2, y + height // 2))
    return picture


def near(colour: tuple[int, ...], other: tuple[int, ...], by: int = 24) -> bool:
    return all(abs(one - two) <= by for one, two in zip(colour, other, strict=True))


def corners(picture: Pillow.Image) -> list[tuple[int, ...]]:
    width, height = picture.size
    rgb = picture.convert("RGB")
    spots = [(width * x // 4, height * y // 4) for y in (1, 3) for x in (1, 3)]
    return [rgb.getpixel(spot) for spot in spots]  # type: ignore[misc]


def data(picture: Pillow.Image, kind: str, **options: object) -> bytes:
    written = io.BytesIO()
    picture.save(written, kind, **options)
    return written.getvalue()


def a_catalogue(folder: Path, name: str, picture: bytes, *regions: str | None) -> Catalogue:
    """A source with a plate for every region of one picture; one plate of the whole where none is given."""
    (folder / "images").mkdir(parents=True, exist_ok=True)
    (folder / "images" / name).write_bytes(picture)
    plates = [
        plate("list", f"p1-{at}", "neckline/v", image=Image(name, Mark("x"), alt="A frock.", region=region))
        for at, region in enumerate(regions or (None,), start=1)
    ]
    return replace(sample(folder), sources={"list": source("list", "1924", *plates)}, boards={})


def first_of(catalogue: Catalogue) -> Picture:
    picture = picture_of(catalogue, catalogue.plates["list/p1-1"])
    assert picture is not None
    return picture


def copies(catalogue: Catalogue, folder: Path) -> dict[str, bytes]:
    """The copies of the first plate's figure by kind, the largest ones."""
    folder.mkdir(exist_ok=True)
    figure = first_of(catalogue).figure
    made = make_scans([figure], folder)
    assert made.damaged == {}
    return {kind: made.files[f"{figure.large.stem}.{kind}"].read_bytes() for kind in ("webp", "jpg")}


def shown(catalogue: Catalogue, folder: Path) -> list[Pillow.Image]:
    return [Pillow.open(io.BytesIO(copy)) for copy in copies(catalogue, folder).values()]


# --- upright ------------------------------------------------------------------------------------------

# EXIF 2.32, 4.6.4 A, tag Orientation: where the row 0 and the column 0 of the file lie in the picture. What
# turns an upright picture into the rows of the file is the inverse of what a reader has to do.
LAID = {
    1: None,
    2: Pillow.Transpose.FLIP_LEFT_RIGHT,
    3: Pillow.Transpose.ROTATE_180,
    4: Pillow.Transpose.FLIP_TOP_BOTTOM,
    5: Pillow.Transpose.TRANSPOSE,
    6: Pillow.Transpose.ROTATE_90,
    7: Pillow.Transpose.TRANSVERSE,
    8: Pillow.Transpose.ROTATE_270,
}


@pytest.mark.parametrize("orientation", LAID)
@pytest.mark.parametrize(
    ("kind", "name"), [("JPEG", "p.jpg"), ("PNG", "p.png"), ("TIFF", "p.tif"), ("WEBP", "p.webp")]
)
def test_a_picture_that_lies_on_its_side_is_set_upright(
    orientation: int, kind: str, name: str, tmp_path: Path
) -> None:
    laid = LAID[orientation]
    file = cornered() if laid is None else cornered().transpose(laid)
    exif = Pillow.Exif()
    exif[0x0112] = orientation
    catalogue = a_catalogue(tmp_path, name, data(file, kind, exif=exif))
    for copy in shown(catalogue, tmp_path / "made"):
        assert copy.size == (60, 40)
        assert all(map(near, corners(copy), CORNERS))


def test_a_region_is_measured_on_the_upright_picture(tmp_path: Path) -> None:
    exif = Pillow.Exif()
    exif[0x0112] = 6
    lying = data(cornered().transpose(Pillow.Transpose.ROTATE_90), "JPEG", exif=exif, quality=95)
    for copy in shown(a_catalogue(tmp_path, "p.jpg", lying, "30,0,30,20"), tmp_path / "made"):
        assert copy.size == (30, 20)
        assert all(near(colour, GREEN) for colour in corners(copy))


@pytest.mark.parametrize(
    ("region", "size", "colour"),
    [
        ("0,20,30,20", (30, 20), BLUE),
        ("pct:50,50,50,50", (30, 20), WHITE),
        ("pct:0,0,50.0,50.0", (30, 20), RED),
        ("50,30,100,100", (10, 10), WHITE),  # IIIF Image API 3.0, 4.1: cropped at the image's edge
    ],
)
def test_a_region_cuts_the_figure_out(
    region: str, size: tuple[int, int], colour: tuple[int, ...], tmp_path: Path
) -> None:
    for copy in shown(a_catalogue(tmp_path, "p.png", data(cornered(), "PNG"), region), tmp_path / "made"):
        assert copy.size == size
        assert all(near(each, colour) for each in corners(copy))


# --- metadata -----------------------------------------------------------------------------------------


def jpeg_segments(data: bytes) -> list[int]:
    """The markers before the first scan: ITU-T T.81, annex B."""
    assert data[:2] == b"\xff\xd8"
    at, found = 2, []
    while True:
        marker, length = data[at + 1], struct.unpack(">H", data[at + 2 : at + 4])[0]
        if marker == 0xDA:
            return found
        found.append(marker)
        at += 2 + length


def webp_chunks(data: bytes) -> list[bytes]:
    """The names of the chunks: RFC 9649, 2.3."""
    assert (data[:4], data[8:12]) == (b"RIFF", b"WEBP")
    at, found = 12, []
    while at < len(data):
        found.append(data[at : at + 4])
        length = struct.unpack("<I", data[at + 4 : at + 8])[0]
        at += 8 + length + length % 2
    return found


def with_everything(kind: str) -> bytes:
    """A picture that says where and by whom it was taken, in every way its kind has."""
    exif = Pillow.Exif()
    exif[0x013B] = "SECRET artist"
    exif.get_ifd(0x8825)[2] = (54.0, 30.0, 0.0)  # GPSLatitude
    exif.get_ifd(0x8825)[29] = "SECRET day"
    profile = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
    options: dict[str, object] = {"exif": exif, "icc_profile": profile}
    if kind == "PNG":
        text = PngImagePlugin.PngInfo()
        text.add_text("Comment", "SECRET text")
        text.add_itxt("XML:com.adobe.xmp", "<x>SECRET xmp</x>")
        options["pnginfo"] = text
    elif kind == "GIF":
        options = {"comment": b"SECRET comment"}
    elif kind != "TIFF":
        options["xmp"] = b"<x>SECRET xmp</x>"
    if kind == "JPEG":
        options["comment"] = b"SECRET comment"
    return data(cornered(), kind, **options)


@pytest.mark.parametrize("name", ["p.jpg", "p.png", "p.tif", "p.webp", "p.gif"])
def test_nothing_that_was_written_into_a_picture_comes_through(name: str, tmp_path: Path) -> None:
    kind = {"jpg": "JPEG", "tif": "TIFF"}.get(name[2:], name[2:].upper())
    original = with_everything(kind)
    assert b"SECRET" in original
    made = copies(a_catalogue(tmp_path, name, original), tmp_path / "made")
    assert b"SECRET" not in b"".join(made.values())
    # APP0 alone beside tables and frame: no APP1 (EXIF, XMP), APP2 (profile), APP13 (IPTC), no COM.
    assert set(jpeg_segments(made["jpg"])) <= {0xE0, 0xDB, 0xC0, 0xC2, 0xC4}
    assert webp_chunks(made["webp"]) == [b"VP8 "]


# --- colours ------------------------------------------------------------------------------------------


def swapped_profile() -> bytes:
    """sRGB with the columns of its red and green primaries exchanged: ICC.1:2022, 7.3, the tag table."""
    profile = bytearray(ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes())
    count = struct.unpack(">I", profile[128:132])[0]
    tags = {bytes(profile[132 + 12 * n : 136 + 12 * n]): 132 + 12 * n for n in range(count)}
    profile[tags[b"rXYZ"] : tags[b"rXYZ"] + 4], profile[tags[b"gXYZ"] : tags[b"gXYZ"] + 4] = b"gXYZ", b"rXYZ"
    return bytes(profile)


def test_colours_are_those_the_profile_means(tmp_path: Path) -> None:
    red = data(Pillow.new("RGB", (40, 40), (255, 0, 0)), "PNG", icc_profile=swapped_profile())
    for copy in shown(a_catalogue(tmp_path, "p.png", red), tmp_path / "made"):
        assert near(corners(copy)[0], (0, 255, 0))


def test_a_broken_profile_is_left_aside(tmp_path: Path) -> None:
    red = data(Pillow.new("RGB", (40, 40), (255, 0, 0)), "PNG", icc_profile=b"no profile at all" * 20)
    for copy in shown(a_catalogue(tmp_path, "p.png", red), tmp_path / "made"):
        assert near(corners(copy)[0], (255, 0, 0))


def test_inks_are_turned_into_light(tmp_path: Path) -> None:
    inks = Pillow.new("CMYK", (40, 40), (255, 0, 0, 0))
    for name, kind in (("p.jpg", "JPEG"), ("p.tif", "TIFF")):
        for copy in shown(a_catalogue(tmp_path, name, data(inks, kind)), tmp_path / "made"):
            red, green, blue = corners(copy)[0]
            assert (red < 60, green > 120, blue > 180) == (True, True, True), name


def test_sixteen_bits_keep_their_tones(tmp_path: Path) -> None:
    ramp = Pillow.frombytes("I;16", (256, 4), b"".join(struct.pack("<H", v * 257) for v in range(256)) * 4)
    for name, kind in (("p.png", "PNG"), ("p.tif", "TIFF")):
        for copy in shown(a_catalogue(tmp_path, name, data(ramp, kind)), tmp_path / "made"):
            greys = [copy.convert("L").getpixel((x, 2)) for x in (20, 128, 235)]
            assert near(tuple(greys), (20, 128, 235), 6), name  # type: ignore[arg-type]


def test_grey_stays_grey(tmp_path: Path) -> None:
    grey = a_catalogue(tmp_path, "p.png", data(Pillow.linear_gradient("L"), "PNG"))
    jpg = Pillow.open(io.BytesIO(copies(grey, tmp_path / "made")["jpg"]))
    assert jpg.mode == "L"


@pytest.mark.parametrize("mode", ["RGBA", "LA", "P", "L"])
def test_what_can_be_seen_through_lies_on_paper(mode: str, tmp_path: Path) -> None:
    picture = Pillow.new("RGBA", (40, 40), (0, 0, 0, 0))
    picture.paste((0, 0, 0, 255), (20, 0, 40, 40))
    options: dict[str, object] = {}
    if mode == "P":
        picture = picture.convert("RGBA").quantize(4)
    elif mode == "L":
        picture = Pillow.new("L", (40, 40), 255)
        picture.paste(0, (20, 0, 40, 40))
        options = {"transparency": 255}
    else:
        picture = picture.convert(mode)
    for copy in shown(a_catalogue(tmp_path, "p.png", data(picture, "PNG", **options)), tmp_path / "made"):
        paper, black = copy.convert("RGB").getpixel((8, 20)), copy.convert("RGB").getpixel((32, 20))
        assert near(paper, (0xF4, 0xF1, 0xE9), 14)  # type: ignore[arg-type]
        assert near(black, (0, 0, 0), 14)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("name", "kind"), [("p.gif", "GIF"), ("p.webp", "WEBP"), ("p.png", "PNG"), ("p.tif", "TIFF")]
)
def test_of_several_frames_the_first_is_shown(name: str, kind: str, tmp_path: Path) -> None:
    first, second = (Pillow.new("RGB", (40, 30), colour) for colour in (RED, BLUE))
    moving = data(first, kind, save_all=True, append_images=[second])
    for copy in shown(a_catalogue(tmp_path, name, moving), tmp_path / "made"):
        assert near(corners(copy)[0], RED)


def test_a_progressive_jpeg_is_read(tmp_path: Path) -> None:
    catalogue = a_catalogue(tmp_path, "p.jpg", data(cornered(), "JPEG", progressive=True, quality=95))
    assert all(all(map(near, corners(copy), CORNERS)) for copy in shown(catalogue, tmp_path / "made"))


# --- sizes --------------------------------------------------------------------------------------------


@given(st.integers(1, 12_000), st.integers(1, 12_000))
def test_copies_grow_keep_their_shape_and_are_never_enlarged(width: int, height: int) -> None:
    sizes = sizes_for(width, height)
    assert 1 <= len(sizes) <= len(BOXES)
    assert sizes == sorted(set(sizes))
    for wide, high in sizes:
        assert 1 <= wide <= min(width, BOXES[-1][0])
        assert 1 <= high <= min(height, BOXES[-1][1])
        if min(wide, high) > 20:
            assert wide / high == pytest.approx(width / height, rel=0.05)
    if width <= BOXES[-1][0] and height <= BOXES[-1][1]:
        assert sizes[-1] == (width, height)


@pytest.mark.parametrize(
    ("size", "widths"),
    [((4000, 5600), [343, 960, 2000]), ((300, 300), [300]), ((400, 300), [400]), ((1000, 900), [360, 1000])],
)
def test_two_or_three_widths_serve_lists_pages_and_looking_closely(
    size: tuple[int, int], widths: list[int]
) -> None:
    assert [width for width, _ in sizes_for(*size)] == widths


# --- what is refused ----------------------------------------------------------------------------------


def png_claiming(width: int, height: int) -> bytes:
    """A small PNG whose header promises a large picture."""
    true = data(Pillow.new("L", (8, 8)), "PNG")
    head = struct.pack(">II", width, height) + true[24:29]
    import zlib

    return true[:16] + head + struct.pack(">I", zlib.crc32(b"IHDR" + head)) + true[33:]


UNFIT = {
    "nothing": ("p.png", b"", "is empty"),
    "half a jpeg": ("p.jpg", data(cornered(600, 400), "JPEG")[:-300], "damaged"),
    "half a png": ("p.png", data(Pillow.effect_noise((90, 90), 60), "PNG")[:-900], "damaged"),
    "half a tiff": ("p.tif", data(cornered(), "TIFF")[:2000], "damaged"),
    "half a webp": ("p.webp", data(Pillow.effect_noise((90, 90), 60), "WEBP")[:-300], "damaged"),
    "half a gif": ("p.gif", data(Pillow.effect_noise((90, 90), 60), "GIF")[:-900], "damaged"),
    "a png as jpeg": ("p.jpg", data(cornered(), "PNG"), "it is of the kind PNG"),
    "a jpeg as gif": ("p.gif", data(cornered(), "JPEG"), "it is of the kind JPEG"),
    "a web page": ("p.png", b"\n<!DOCTYPE html><html>", "it is a web page"),
    "a pdf": ("p.jpg", b"%PDF-1.7\n%", "it is a PDF"),
    "a drawing": ("p.png", b'<svg xmlns="http://www.w3.org/2000/svg"/>', "it is a drawing"),
    "a phone's heic": ("p.jpg", b"\0\0\0\x18ftypheic\0\0\0\0" + bytes(99), "HEIC"),
    "a bitmap": ("p.png", data(cornered(), "BMP"), "it is a bitmap"),
    "a postscript": ("p.jpg", b"%!PS-Adobe-3.0 EPSF-3.0\n%%BoundingBox: 0 0 9 9\n", "cannot be read"),
    "any bytes": ("p.webp", bytes(range(256)) * 40, "cannot be read"),
    "a bomb": ("p.png", png_claiming(60_000, 60_000), "enormous"),
    "a large one": ("p.png", png_claiming(12_000, 9_000), "108 million pixels"),
    "measurements": ("p.tif", data(Pillow.new("F", (9, 9), 0.5), "TIFF"), "measurements"),
}


def in_a_folder(folder: Path, name: str, picture: bytes) -> Path:
    """A catalogue on the disk whose one plate has that picture, at line 9 of its file."""
    (folder / "sources").mkdir(parents=True)
    (folder / "images").mkdir()
    (folder / "images" / name).write_bytes(picture)
    (folder / "inperiod.yaml").write_text("title: A small one\n", encoding="utf-8")
    lines = (
        *("title: A list", "kind: trade-catalogue", "date: 1912", "date_basis: printed"),
        *(
            "rights: http://rightsstatements.org/vocab/NKC/1.0/",
            "plates:",
            "  - id: p1",
            "    garment: day-dress",
        ),
        *(f"    image: {{file: {name}, alt: A frock.}}", "    features: [neckline/square]", ""),
    )
    (folder / "sources" / "list.yaml").write_text("\n".join(lines), encoding="utf-8")
    return folder


@pytest.mark.parametrize("case", UNFIT)
def test_an_unfit_picture_is_refused_by_check_and_build_with_its_place_and_what_to_do(
    case: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    name, picture, word = UNFIT[case]
    folder = in_a_folder(tmp_path / "mine", name, picture)
    begun = time.process_time()
    errors = read_catalogue(folder).errors
    assert time.process_time() - begun < 5  # no header makes it work for long
    assert [(each.file, each.line, each.column) for each in errors] == [("sources/list.yaml", 9, 19)]
    assert word in errors[0].message
    assert name in errors[0].message
    assert errors[0].hint
    assert main(["build", str(folder), "--out", str(tmp_path / "public")]) == 1
    assert f"list.yaml:9:19: {errors[0].message}" in capsys.readouterr().err
    assert not (tmp_path / "public").exists()


def test_published_anyway_the_plates_of_unfit_pictures_have_their_flats_instead(tmp_path: Path) -> None:
    catalogue = a_catalogue(tmp_path / "mine", "sound.png", data(cornered(), "PNG"))
    first = catalogue.sources["list"].plates[0]
    plates = [first]
    for at, (name, picture, _) in enumerate(UNFIT.values()):
        file = f"{at}-{name}"
        (tmp_path / "mine/images" / file).write_bytes(picture)
        plates.append(replace(first, id=f"p2-{at}", image=Image(file, Mark("x"), alt="A frock.")))
    whole = replace(catalogue.sources["list"], plates=tuple(plates))
    build(replace(catalogue, sources={"list": whole}), tmp_path / "public")
    assert len(list((tmp_path / "public/images").iterdir())) == 2  # of the sound one
    for each in plates:
        page = (tmp_path / f"public/plate/list/{each.id}.html").read_text(encoding="utf-8")
        assert ("<picture>" in page) == (each is first)
        assert (page.index("plate-flat") > page.index('id="shows"')) == (each is first)


def test_a_sound_picture_is_complained_of_in_no_way(tmp_path: Path) -> None:
    for name, kind in (
        ("p.jpg", "JPEG"),
        ("p.JPEG", "JPEG"),
        ("p.png", "PNG"),
        ("p.tiff", "TIFF"),
        ("p.gif", "GIF"),
    ):
        folder = in_a_folder(tmp_path / name, name, data(cornered(), kind))
        assert read_catalogue(folder).problems == ()


def test_a_picture_found_whole_is_not_read_through_again(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    folder = in_a_folder(tmp_path / "mine", "p.jpg", data(cornered(), "JPEG"))
    assert read_catalogue(folder).problems == ()
    monkeypatch.setattr("inperiod.records.checks.pictures.decoded", lambda *_: pytest.fail("decoded again"))
    assert read_catalogue(folder).problems == ()
    (folder / "images" / "p.jpg").write_bytes(data(cornered(80, 90), "JPEG")[:-100])
    monkeypatch.undo()
    assert len(read_catalogue(folder).errors) == 1


# --- kept between builds ------------------------------------------------------------------------------


def test_the_same_picture_is_not_worked_on_twice(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    catalogue = a_catalogue(tmp_path / "mine", "p.png", data(cornered(), "PNG"), "0,0,30,20")
    build(catalogue, tmp_path / "one")
    monkeypatch.setattr(scans, "decoded", lambda *_: pytest.fail("decoded again"))
    build(catalogue, tmp_path / "two")
    images = {path: each for path, each in contents(tmp_path / "one").items() if path.startswith("images/")}
    assert len(images) == 4  # page and figure, each of one size, as WebP and as JPEG
    assert images.items() <= contents(tmp_path / "two").items()


def test_a_figure_that_moves_on_its_page_moves_on_the_pages_of_its_neighbours_too(tmp_path: Path) -> None:
    def with_a_coat_at(region: str) -> Catalogue:
        """The coat is near the dress on the page alone, not in style."""
        made = a_catalogue(tmp_path / "mine", "p.png", data(cornered(), "PNG"), "0,0,30,40", region)
        dress, coat = made.sources["list"].plates
        plates = (dress, replace(coat, garment="coat", features=()))
        return replace(made, sources={"list": replace(made.sources["list"], plates=plates)})

    build(with_a_coat_at("30,0,30,40"), tmp_path / "public")
    build(with_a_coat_at("30,10,30,30"), tmp_path / "public")
    build(with_a_coat_at("30,10,30,30"), tmp_path / "afresh")
    assert contents(tmp_path / "public") == contents(tmp_path / "afresh")


def test_another_scan_in_place_of_the_first_is_shown_by_the_next_build(tmp_path: Path) -> None:
    build(a_catalogue(tmp_path / "mine", "p.png", data(cornered(), "PNG")), tmp_path / "public")
    other = a_catalogue(tmp_path / "mine", "p.png", data(cornered(80, 50), "PNG"))
    build(other, tmp_path / "public")
    assert (tmp_path / "public" / first_of(other).path).is_file()
    page = (tmp_path / "public/plate/list/p1-1.html").read_text(encoding="utf-8")
    assert first_of(other).path in page
    build(other, tmp_path / "afresh")
    assert contents(tmp_path / "public") == contents(tmp_path / "afresh")


def test_another_picture_of_the_same_name_is_another_picture(tmp_path: Path) -> None:
    before = first_of(a_catalogue(tmp_path, "p.png", data(cornered(), "PNG"))).path
    after = first_of(a_catalogue(tmp_path, "p.png", data(cornered(80, 50), "PNG"))).path
    assert before != after


def test_another_recipe_makes_copies_anew(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    catalogue = a_catalogue(tmp_path, "p.png", data(cornered(), "PNG"))
    copies(catalogue, tmp_path / "made")
    kept = {file.name for file in (tmp_path / "made").iterdir()}
    monkeypatch.setattr(scans, "_RECIPE", "another")
    copies(catalogue, tmp_path / "made")
    assert len({file.name for file in (tmp_path / "made").iterdir()} - kept) == 2


def test_the_same_picture_gives_the_same_bytes_wherever_it_is_made(tmp_path: Path) -> None:
    picture = data(Pillow.effect_noise((700, 500), 80), "JPEG")
    one = copies(a_catalogue(tmp_path / "a", "p.jpg", picture), tmp_path / "x")
    assert one == copies(a_catalogue(tmp_path / "b", "other.jpg", picture), tmp_path / "y")


def test_what_is_kept_keeps_itself_out_of_version_control(tmp_path: Path) -> None:
    build(a_catalogue(tmp_path / "mine", "p.png", data(cornered(), "PNG")), tmp_path / "public")
    assert "*" in (tmp_path / "mine/.inperiod/.gitignore").read_text(encoding="utf-8").splitlines()


def test_a_link_in_place_of_a_kept_copy_is_not_followed(tmp_path: Path) -> None:
    secret = tmp_path / "secret.txt"
    secret.write_text("SECRET", encoding="utf-8")
    catalogue = a_catalogue(tmp_path / "mine", "p.png", data(cornered(), "PNG"))
    build(catalogue, tmp_path / "public")
    for kept in (tmp_path / "mine/.inperiod/pictures").iterdir():
        kept.unlink()
        kept.symlink_to(secret)
    build(catalogue, tmp_path / "public")
    assert b"SECRET" not in b"".join(contents(tmp_path / "public").values())
    assert secret.read_text(encoding="utf-8") == "SECRET"


def test_a_folder_that_is_a_link_keeps_nothing(tmp_path: Path) -> None:
    catalogue = a_catalogue(tmp_path / "mine", "p.png", data(cornered(), "PNG"))
    (tmp_path / "elsewhere").mkdir()
    (tmp_path / "mine/.inperiod").symlink_to(tmp_path / "elsewhere")
    build(catalogue, tmp_path / "public")
    assert (tmp_path / "public" / first_of(catalogue).path).is_file()
    assert list((tmp_path / "elsewhere").iterdir()) == []


def test_where_nothing_can_be_kept_the_site_is_built_all_the_same(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(scans, "own_folder", lambda *_: None)
    catalogue = a_catalogue(tmp_path / "mine", "p.png", data(cornered(), "PNG"))
    build(catalogue, tmp_path / "public")
    assert (tmp_path / "public" / first_of(catalogue).path).is_file()
    assert not (tmp_path / "mine/.inperiod/pictures").exists()


# --- what must not get out ----------------------------------------------------------------------------


def test_neither_the_original_nor_its_name_is_in_the_site(tmp_path: Path) -> None:
    picture = data(cornered(900, 700), "JPEG")
    build(a_catalogue(tmp_path / "mine", "aunt-maud-in-the-attic.jpg", picture), tmp_path / "public")
    for path, each in contents(tmp_path / "public").items():
        assert picture not in each, path
        assert b"aunt-maud" not in each, path
        assert "aunt-maud" not in path


def withheld(each: Plate) -> Plate:
    return replace(each, publish=False)


def two_on_a_page(folder: Path, one: str | None, other: str | None) -> Catalogue:
    """Two plates on one picture, the second not published."""
    catalogue = a_catalogue(folder, "p.png", data(cornered(), "PNG"), one, other)
    first, second = catalogue.sources["list"].plates
    whole = replace(catalogue.sources["list"], plates=(first, withheld(second)))
    return published(replace(catalogue, sources={"list": whole}))


def test_a_figure_beside_a_withheld_one_is_shown_and_the_page_is_not(tmp_path: Path) -> None:
    picture = first_of(two_on_a_page(tmp_path, "0,0,30,40", "30,0,30,40"))
    assert picture.page is None
    assert picture.figure.box == (0, 0, 30, 40)


@pytest.mark.parametrize(
    ("one", "other"), [(None, "30,0,30,40"), ("0,0,30,40", None), ("0,0,40,40", "30,0,30,40"), (None, None)]
)
def test_a_picture_that_would_show_a_withheld_figure_is_not_shown(
    one: str | None, other: str | None, tmp_path: Path
) -> None:
    catalogue = two_on_a_page(tmp_path, one, other)
    assert picture_of(catalogue, catalogue.plates["list/p1-1"]) is None


def test_pages_are_shown_where_every_plate_on_them_is(tmp_path: Path) -> None:
    catalogue = published(a_catalogue(tmp_path, "p.png", data(cornered(), "PNG"), "0,0,30,40", "30,0,30,40"))
    picture = first_of(catalogue)
    assert picture.page is not None
    assert picture.outline == (0, 0, 50, 100)


@pytest.mark.parametrize(
    ("rights", "is_shown"),
    [
        ("http://rightsstatements.org/vocab/InC/1.0/", False),
        ("https://rightsstatements.org/page/InC-EDU/1.0/?language=en", False),
        ("http://rightsstatements.org/vocab/NKC/1.0/", True),
        ("https://creativecommons.org/licenses/by/4.0/", True),
        ("Shown by leave of the museum.", True),
        (None, True),
    ],
)
def test_a_picture_in_copyright_is_shown_only_by_leave(
    rights: str | None, is_shown: bool, tmp_path: Path
) -> None:
    catalogue = a_catalogue(tmp_path, "p.png", data(cornered(), "PNG"))
    first = catalogue.sources["list"].plates[0]
    assert first.image
    own = replace(first, image=replace(first.image, rights=rights))
    changed = published(
        replace(catalogue, sources={"list": replace(catalogue.sources["list"], plates=(own,))})
    )
    assert (picture_of(changed, changed.plates["list/p1-1"]) is not None) == is_shown


def test_what_is_unfit_says_so_before_anything_is_decoded(tmp_path: Path) -> None:
    catalogue = a_catalogue(tmp_path, "p.png", png_claiming(60_000, 60_000))
    image = catalogue.plates["list/p1-1"].image
    assert image
    with pytest.raises(UnfitPicture, match="enormous"):
        original_of(catalogue, image)


def test_paths_follow_from_the_bytes_and_the_region_alone(tmp_path: Path) -> None:
    original = first_of(a_catalogue(tmp_path, "p.png", data(cornered(), "PNG"))).figure.original
    assert scan_of(original) == scan_of(original)
    assert scan_of(original).small.webp != scan_of(original, (0, 0, 30, 40)).small.webp


# --- on the page --------------------------------------------------------------------------------------


def test_every_picture_of_the_demonstration_stands_with_its_size_its_words_and_its_copies(
    demo_catalogue: Catalogue, demo_site: Path
) -> None:
    from publishing.pages import read

    pictured = [each for each in demo_catalogue.plates.values() if each.image]
    assert len(pictured) >= 15
    for each in pictured:
        page = demo_site / f"plate/{each.key}.html"
        found = read(page).elements
        shown = [attributes for tag, attributes in found if tag == "img"]
        assert shown[0]["alt"] == each.image.alt  # type: ignore[union-attr]
        for attributes in shown[:2]:
            assert int(attributes["width"] or 0) > 0
            assert int(attributes["height"] or 0) > 0
            assert (attributes["loading"], attributes["decoding"]) == ("lazy", "async")
        for tag, attributes in found:
            for entry in (attributes.get("srcset") or "").split(", ") if tag in ("img", "source") else ():
                path, width = entry.split(" ")
                with Pillow.open(page.parent / path) as copy:
                    assert f"{copy.width}w" == width


def test_the_demonstrations_scans_are_small_and_say_that_they_are_invented(demo_folder: Path) -> None:
    files = [file for file in (demo_folder / "images").rglob("*") if file.is_file()]
    assert 6 <= len(files) <= 12
    assert sum(file.stat().st_size for file in files) <= 1_500_000
