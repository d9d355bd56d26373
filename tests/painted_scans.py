"""The demonstration's scans: invented catalogue pages, printed, aged and photographed askew.

    python tests/painted_scans.py FOLDER

writes a picture for every page of ``PAGES`` into FOLDER and prints, for every plate on it, the region of its
figure. The pages are composed of the flats of their plates, set by Chromium, and aged with numbers drawn from
the page's own name, so that the same records give the same picture. Every figure bears a stamp that it is
invented. The pictures in ``catalogue/images`` were made so; regions and descriptions stand in the records.
"""

from __future__ import annotations

import io
import math
import random
import sys
from dataclasses import dataclass
from pathlib import Path

from PIL import Image, ImageChops, ImageDraw, ImageFilter
from playwright.sync_api import Browser, sync_playwright

from conftest import CHECKOUT, CHROMIUM_ARGUMENTS, find_chromium
from inperiod.drawing.flats import draw_flat
from inperiod.drawing.flats.page import Entry, catalogue_page
from inperiod.publishing import words
from inperiod.publishing.flats import middle_year
from inperiod.publishing.sheets import NOTICE
from inperiod.records import read_catalogue
from inperiod.records.model import Catalogue, Plate

SCALE = 2.6
BED = 34
"""Pixels of the dark bed around the sheet."""


@dataclass(frozen=True)
class Page:
    """A page to be made: its file, its plates, its tilt in degrees, its paper and its ink."""

    file: str
    source: str
    plates: tuple[str, ...]
    tilt: float
    paper: tuple[int, int, int] = (235, 224, 201)
    ink: tuple[int, int, int] = (44, 37, 32)


PAGES = (
    Page("pellisworth-1926/p3.jpg", "pellisworth-regatta-1926", ("p3-1", "p3-1b"), 0.7),
    Page("pellisworth-1926/p9.jpg", "pellisworth-regatta-1926", ("p9-1", "p9-3", "p9-4"), -0.5),
    Page(
        "thimble-hour-1926/p204.jpg",
        "thimble-hour-1926-06",
        ("p204-1", "p204-1h", "p204-2"),
        0.4,
        (229, 222, 205),
        (38, 40, 46),
    ),
    Page("harrowmere-1926/p2.jpg", "harrowmere-washing-frocks-1926", ("p2-1", "p2-2"), -0.9),
    Page(
        "harrowmere-1912/p4.webp",
        "harrowmere-washing-frocks-1912",
        ("p4-1", "p4-2"),
        0.6,
        (226, 209, 176),
        (52, 38, 28),
    ),
    Page(
        "needlewife-1927/p8.jpg",
        "home-needlewife-1927-05",
        ("p8-1", "p8-2"),
        -0.3,
        (238, 230, 212),
        (50, 44, 44),
    ),
    Page(
        "ormsgarth-1901/p10.png",
        "ormsgarth-vey-spring-1901",
        ("p10-1", "p10-4"),
        1.1,
        (224, 214, 190),
        (36, 33, 30),
    ),
    Page(
        "navette-1925/p3.jpg",
        "navette-mondaine-1925-07",
        ("p3-1", "p3-2"),
        -0.6,
        (233, 227, 215),
        (40, 46, 62),
    ),
)

Box = tuple[float, float, float, float]

_MEASURE = """() => {
  const box = (each) => {
    const { left, top, right, bottom } = each.getBoundingClientRect();
    return [left, top, right, bottom];
  };
  const joined = (a, b) => [
    Math.min(a[0], b[0]), Math.min(a[1], b[1]), Math.max(a[2], b[2]), Math.max(a[3], b[3])];
  const page = document.querySelector("svg");
  const texts = [...page.querySelectorAll(":scope > text")].map(box);
  return [...page.querySelectorAll("svg")].map((cut) => {
    const [x, y, wide, high] = ["x", "y", "width", "height"].map((name) => Number(cut.getAttribute(name)));
    const figure = box(cut);
    const stamp = document.createElementNS("http://www.w3.org/2000/svg", "g");
    const right = Math.min(x + wide - 36, figure[2]);
    stamp.setAttribute("transform", `translate(${right} ${figure[1] - 16}) rotate(-9)`);
    stamp.innerHTML = `<g fill="none" stroke="#444">
      <rect x="-33" y="-10" width="66" height="20" rx="10" stroke-width="1.4"/>
      <rect x="-30.5" y="-7.7" width="61" height="15.4" rx="7.7" stroke-width="0.6"/></g>
      <text y="3.5" text-anchor="middle" font-family="sans-serif" font-size="9.6" letter-spacing="0.9"
        fill="#444">INVENTED</text>`;
    page.append(stamp);
    const words = texts.filter((text) => {
      const middle = (text[0] + text[2]) / 2;
      return middle > x && middle < x + wide && text[1] > y + high - 4 && text[3] < y + high + 110;
    });
    return [figure, box(stamp), ...words].reduce(joined);
  });
}"""
"""Stamps every cut, and gives the box of each with its stamp and the words under it."""


def composed(catalogue: Catalogue, page: Page) -> str:
    """The page as markup."""
    source = catalogue.sources[page.source]
    entries = [_entry(catalogue, catalogue.plates[f"{page.source}/{plate}"]) for plate in page.plates]
    number = catalogue.plates[f"{page.source}/{page.plates[0]}"].locator.page
    firm = source.publisher.name or words.sentence(words.kind(source))
    svg = catalogue_page(firm, source.title, f"Page {number}" if number else "", entries, NOTICE)
    return f"<!doctype html><style>body {{ margin: 0 }} svg {{ display: block }}</style>{svg}"


def _entry(catalogue: Catalogue, plate: Plate) -> Entry:
    flat = draw_flat(plate, catalogue.vocabulary, middle_year(catalogue.dated(plate)))
    assert flat is not None
    caption = " ".join((plate.caption or "").split())
    return Entry(flat, plate.locator.item or "", caption, words.price(plate.price) or "")


def printed(browser: Browser, markup: str) -> tuple[Image.Image, list[Box]]:
    """The page in black on white, and where each figure with its words lies on it, in pixels."""
    tab = browser.new_page(device_scale_factor=SCALE)
    tab.set_content(markup)
    boxes = tab.evaluate(_MEASURE)
    picture = tab.locator("body > svg").screenshot()
    tab.close()
    grey = (
        Image.open(io.BytesIO(picture))
        .convert("L")
        .point(lambda v: min(255, round(max(0, v - 30) * 255 / 206)))
    )
    return grey, [(a * SCALE, b * SCALE, c * SCALE, d * SCALE) for a, b, c, d in boxes]


def cloud(size: tuple[int, int], grain: int, chance: random.Random) -> Image.Image:
    """Soft light and dark, as in old paper; ``grain`` is the size of its patches in pixels."""
    few = (size[0] // grain + 2, size[1] // grain + 2)
    dots = Image.frombytes("L", few, bytes(chance.randrange(256) for _ in range(few[0] * few[1])))
    return dots.resize(size, Image.Resampling.BICUBIC)


def aged(grey: Image.Image, page: Page) -> Image.Image:
    """Ink on old paper: spread a little, worn in places, the sheet browner at its edges and foxed."""
    chance = random.Random(page.file)
    size = grey.size
    ink = ImageChops.invert(grey.filter(ImageFilter.GaussianBlur(0.9)))
    worn = cloud(size, 5, chance).point(lambda v: 222 + v // 8)
    ink = ImageChops.multiply(
        ink, ImageChops.multiply(worn, cloud(size, 160, chance).point(lambda v: 232 + v // 11))
    )
    paper = Image.new("RGB", size, page.paper)
    shade = cloud(size, 90, chance).point(lambda v: 238 + v // 16)
    paper = ImageChops.multiply(paper, Image.merge("RGB", (shade, shade, shade)))
    browned = Image.new("L", size, 0)
    draw = ImageDraw.Draw(browned)
    draw.rectangle((0, 0, *size), outline=150, width=18)
    for _ in range(14):
        x, y, r = chance.randrange(size[0]), chance.randrange(size[1]), chance.randrange(3, 9)
        draw.ellipse((x - r, y - r, x + r, y + r), fill=chance.randrange(60, 120))
    browned = browned.filter(ImageFilter.GaussianBlur(11))
    paper = Image.composite(Image.new("RGB", size, (166, 132, 88)), paper, browned)
    return Image.composite(Image.new("RGB", size, page.ink), paper, ink)


def photographed(sheet: Image.Image, tilt: float) -> Image.Image:
    """The sheet on a dark bed, a little askew, darker towards the inner margin."""
    width, height = sheet.size
    gutter = Image.linear_gradient("L").rotate(90).resize((width, height)).point(lambda v: min(255, 205 + v))
    sheet = ImageChops.multiply(sheet, Image.merge("RGB", (gutter, gutter, gutter)))
    bed = Image.new("RGB", (width + 2 * BED, height + 2 * BED), (58, 56, 54))
    bed.paste(sheet, (BED, BED))
    return bed.rotate(tilt, Image.Resampling.BICUBIC, fillcolor=(58, 56, 54))


def region(box: Box, size: tuple[int, int], tilt: float) -> str:
    """The figure's box on the picture, a little wider than itself, as the records write it."""
    left, top, right, bottom = (each + BED for each in box)
    middle_x, middle_y = size[0] / 2, size[1] / 2
    cos, sin = math.cos(math.radians(tilt)), math.sin(math.radians(tilt))
    corners = [
        (
            (x - middle_x) * cos + (y - middle_y) * sin + middle_x,
            (y - middle_y) * cos - (x - middle_x) * sin + middle_y,
        )
        for x in (left, right)
        for y in (top, bottom)
    ]
    x1, x2 = min(x for x, _ in corners) - 12, max(x for x, _ in corners) + 12
    y1, y2 = min(y for _, y in corners) - 8, max(y for _, y in corners) + 12
    return f"{round(x1)},{round(y1)},{round(x2 - x1)},{round(y2 - y1)}"


def save(picture: Image.Image, file: Path) -> None:
    file.parent.mkdir(parents=True, exist_ok=True)
    if file.suffix == ".png":
        picture.convert("L").quantize(16).save(file, optimize=True)
    elif file.suffix == ".webp":
        picture.save(file, quality=52, method=6)
    else:
        picture.save(file, quality=58, optimize=True, progressive=True)


def main(folder: Path) -> None:
    """Make them all."""
    catalogue = read_catalogue(CHECKOUT / "catalogue").catalogue
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=find_chromium(), args=CHROMIUM_ARGUMENTS)
        for page in PAGES:
            grey, boxes = printed(browser, composed(catalogue, page))
            picture = photographed(aged(grey, page), page.tilt)
            save(picture, folder / page.file)
            print(f"{page.file}: {picture.size}, {(folder / page.file).stat().st_size // 1024} KB")
            for plate, box in zip(page.plates, boxes, strict=True):
                print(f"  {page.source}/{plate}: region: {region(box, picture.size, page.tilt)}")
        browser.close()


if __name__ == "__main__":
    main(Path(sys.argv[1]))
