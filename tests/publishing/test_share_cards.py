"""The pictures shown where pages are shared: local, of dots, on every page of a site that has an address.

The tags are those of the Open Graph protocol (ogp.me, from memory): og:image with its width, height and alt.
"""

from __future__ import annotations

import io
from dataclasses import replace
from pathlib import Path

import pytest
from PIL import Image as Pillow

from inperiod.drawing.flats import draw_flat, raster
from inperiod.publishing import build, paths
from inperiod.publishing.pictures import picture_of
from inperiod.records.model import Catalogue, Image, Mark
from publishing.pages import html_pages, read
from publishing.sample import sample

BASE = "https://dress.example/regatta/"


@pytest.fixture(scope="module")
def shared_site(tmp_path_factory: pytest.TempPathFactory) -> tuple[Catalogue, Path]:
    """The sample with an address, and a scan for one of its plates."""
    folder = tmp_path_factory.mktemp("shared")
    (folder / "mine/images").mkdir(parents=True)
    Pillow.linear_gradient("L").resize((700, 900)).save(folder / "mine/images/p.png")
    catalogue = sample(folder / "mine", base_address=BASE)
    first = catalogue.sources["spring-list-1924"]
    scanned = replace(first.plates[0], image=Image("p.png", Mark("x"), alt="A frock, cut."))
    changed = replace(first, plates=(scanned, *first.plates[1:]))
    catalogue = replace(catalogue, sources={**catalogue.sources, first.id: changed})
    build(catalogue, folder / "public")
    return catalogue, folder / "public"


def card_of(page: Path) -> dict[str, str]:
    """The page's og:image tags by what follows the colon."""
    tags = [attributes for tag, attributes in read(page).elements if tag == "meta"]
    return {
        str(each["property"]): str(each["content"])
        for each in tags
        if (each.get("property") or "").startswith("og:image")
    }


def test_every_page_has_a_card_that_is_there_and_as_large_as_it_says(
    shared_site: tuple[Catalogue, Path],
) -> None:
    _, site = shared_site
    for page in html_pages(site):
        card = card_of(page)
        assert card["og:image"].startswith(BASE), page
        with Pillow.open(site / card["og:image"].removeprefix(BASE)) as picture:
            assert picture.format in ("PNG", "JPEG"), page
            size = (card["og:image:width"], card["og:image:height"])
            assert size == (str(picture.width), str(picture.height)), page
        assert card["og:image:alt"], page


def test_a_plate_shows_its_scan_else_its_flat_and_other_pages_the_sites_card(
    shared_site: tuple[Catalogue, Path],
) -> None:
    catalogue, site = shared_site
    scanned = picture_of(catalogue, catalogue.plates["spring-list-1924/p3-1"])
    assert scanned

    def shown(path: str) -> str:
        return card_of(site / path)["og:image"].removeprefix(BASE)

    assert shown("plate/spring-list-1924/p3-1.html") == scanned.figure.middle.jpg
    assert shown("plate/autumn-list-1925/p9-1.html") == paths.card_path("autumn-list-1925/p9-1")
    assert shown("index.html") == shown("plates.html") == paths.SITE_CARD
    assert not (site / paths.card_path("spring-list-1924/p3-1")).exists()


def test_there_are_none_without_an_address(tmp_path: Path) -> None:
    build(sample(tmp_path / "mine"), tmp_path / "public")
    assert not (tmp_path / "public/share").exists()
    assert card_of(tmp_path / "public/index.html") == {}


def test_a_card_shows_the_garment_in_its_middle_the_same_each_time(demo_catalogue: Catalogue) -> None:
    dress = next(each for each in demo_catalogue.plates.values() if each.garment == "day-dress")
    flat = draw_flat(dress, demo_catalogue.vocabulary, 1926.5)
    assert flat
    card = raster.card([flat.drawn])
    assert card == raster.card([flat.drawn])
    picture = Pillow.open(io.BytesIO(card)).convert("L").crop((30, 0, raster.WIDTH, raster.HEIGHT))
    inked = picture.point(lambda tone: 255 if tone < 120 else 0).getbbox()
    assert inked
    left, top, right, bottom = inked
    assert (left + right) / 2 + 30 == pytest.approx(raster.WIDTH / 2, abs=3)
    assert (top + bottom) / 2 == pytest.approx(raster.HEIGHT / 2, abs=3)
    assert bottom - top > raster.HEIGHT * 0.6


def test_a_card_without_a_flat_is_paper_and_threads() -> None:
    picture = Pillow.open(io.BytesIO(raster.card([]))).convert("RGB")
    assert picture.size == (raster.WIDTH, raster.HEIGHT)
    assert picture.getpixel((400, 200)) == (0xF4, 0xF1, 0xE9)
    assert picture.getpixel((1, 200)) == (0x2B, 0x58, 0x80)
