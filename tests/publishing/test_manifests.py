"""IIIF manifests, read back by the PyPI package ``iiif-prezi3`` (IIIF Presentation API 3.0)."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path

import iiif_prezi3
import pytest
from hypothesis import given
from hypothesis import strategies as st
from PIL import Image as Pillow

from inperiod.publishing import build
from inperiod.publishing.manifests import iiif_rights, manifest_files
from inperiod.publishing.pictures import picture_of
from inperiod.records.model import Catalogue, Image
from inperiod.records.pictures import region_box
from publishing.sample import HERE, sample

BASE = "https://example.org/dress"


def pictured(folder: Path, region: str | None = None) -> Catalogue:
    """The sample, with a picture of 400 × 300 on its first plate."""
    (folder / "images").mkdir(parents=True, exist_ok=True)
    Pillow.new("L", (400, 300), 200).save(folder / "images" / "p3.png")
    catalogue = sample(folder, base_address=BASE)
    first = catalogue.sources["spring-list-1924"]
    image = Image(
        "p3.png",
        HERE,
        alt="a frock",
        region=region,
        rights="http://creativecommons.org/publicdomain/mark/1.0/",
    )
    plates = (replace(first.plates[0], image=image), *first.plates[1:])
    return replace(catalogue, sources={first.id: replace(first, plates=plates)})


def manifest_of(catalogue: Catalogue) -> dict:
    return json.loads(dict(manifest_files(catalogue))["iiif/spring-list-1924.json"])


def test_every_manifest_of_the_demonstration_is_valid(demo_catalogue: Catalogue) -> None:
    settings = replace(demo_catalogue.settings, base_address=BASE)
    files = dict(manifest_files(replace(demo_catalogue, settings=settings)))
    assert len(files) == len(demo_catalogue.sources)
    for path, text in files.items():
        read = iiif_prezi3.Manifest(**json.loads(text))
        assert str(read.id) == f"{BASE}/{path}"


def test_the_reader_refuses_what_is_no_manifest(tmp_path: Path) -> None:
    broken = manifest_of(pictured(tmp_path))
    broken["items"][0]["width"] = "wide"
    with pytest.raises(ValueError, match="width"):
        iiif_prezi3.Manifest(**broken)


def test_without_an_address_there_is_none(tmp_path: Path) -> None:
    assert dict(manifest_files(sample(tmp_path))) == {}


def test_plates_are_canvases_with_their_pictures_and_rights(tmp_path: Path) -> None:
    made = manifest_of(pictured(tmp_path))
    assert made["rights"] == "http://rightsstatements.org/vocab/NKC/1.0/"
    assert made["navDate"] == "1924-03-01T00:00:00Z"
    first, second = made["items"]
    assert (first["width"], first["height"]) == (400, 300)
    assert first["rights"] == "http://creativecommons.org/publicdomain/mark/1.0/"
    assert first["summary"] == {"none": ["Frock of voile"]}
    painting = first["items"][0]["items"][0]
    picture = picture_of(pictured(tmp_path), pictured(tmp_path).plates["spring-list-1924/p3-1"])
    assert picture
    assert painting["body"]["id"] == f"{BASE}/{picture.figure.large.jpg}"
    assert painting["body"]["format"] == "image/jpeg"
    assert first["thumbnail"][0]["id"] == f"{BASE}/{picture.figure.small.jpg}"
    assert painting["target"] == first["id"]
    assert second["items"] == []


def test_a_region_makes_a_canvas_of_its_own_with_the_region_alone_on_it(tmp_path: Path) -> None:
    catalogue = pictured(tmp_path / "catalogue", "pct:25,0,50,50")
    first = manifest_of(catalogue)["items"][0]
    assert (first["width"], first["height"]) == (200, 150)
    body = first["items"][0]["items"][0]["body"]
    build(catalogue, tmp_path / "public")
    with Pillow.open(tmp_path / "public" / body["id"].removeprefix(f"{BASE}/")) as shown:
        assert shown.size == (200, 150) == (body["width"], body["height"])


@pytest.mark.parametrize(
    ("region", "box"),
    [
        ("10,20,30,40", (10, 20, 30, 40)),  # IIIF Image API 3.0, §4.1: x,y,w,h
        ("pct:10,20,50,50", (40, 60, 200, 150)),  # and pct:x,y,w,h
        ("390,290,100,100", (390, 290, 10, 10)),  # "cropped at the image's edge"
        (None, None),
        ("square", None),
    ],
)
def test_regions_are_read_as_the_image_api_has_them(region: str | None, box: tuple[int, ...] | None) -> None:
    assert region_box(region, 400, 300) == box


@given(st.tuples(*[st.floats(0, 200)] * 4), st.booleans())
def test_no_region_leaves_its_picture(numbers: tuple[float, ...], percent: bool) -> None:
    text = ("pct:" if percent else "") + ",".join(f"{number:.2f}" for number in numbers)
    box = region_box(text, 400, 300)
    assert box
    left, top, width, height = box
    assert left >= 0
    assert top >= 0
    assert 1 <= width <= 400 - left
    assert 1 <= height <= 300 - top


def test_rights_are_given_only_where_iiif_knows_them() -> None:
    assert (
        iiif_rights("https://creativecommons.org/licenses/by/4.0/")
        == "http://creativecommons.org/licenses/by/4.0/"
    )
    assert iiif_rights("https://example.org/my-own-terms") is None
    assert iiif_rights(None) is None
