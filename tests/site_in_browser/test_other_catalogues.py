"""The pages one asks of, made of other catalogues: with pictures and nasty text, without a plate, empty."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from PIL import Image as Pillow

from inperiod.evidence.calendar import window_in_words
from inperiod.publishing import build
from inperiod.publishing.view_answer import ask_window
from inperiod.records.model import Catalogue, Image, Mark, Vocabulary
from publishing.sample import sample

pytestmark = pytest.mark.browser


def of(site: Path) -> dict[str, str]:
    """Where ``opened`` finds the pages of another site."""
    return {"at": f"{site.as_uri()}/"}


@pytest.fixture(scope="module")
def pictured(tmp_path_factory: pytest.TempPathFactory) -> tuple[Catalogue, Path]:
    """The sample catalogue with a picture and a caption that tries to be markup on its first plate."""
    folder = tmp_path_factory.mktemp("pictured")
    catalogue = sample(folder / "catalogue")
    images = folder / "catalogue" / "images"
    images.mkdir(parents=True, exist_ok=True)
    Pillow.new("L", (30, 40), 220).save(images / "cut.png")
    source = next(each for each in catalogue.sources.values() if each.publish and each.plates)
    nasty = "</script><img src=x onerror=alert(1)> & <b>bold</b>"
    first = replace(
        source.plates[0], publish=True, caption=nasty, image=Image("cut.png", Mark("a"), alt="A cut")
    )
    made = replace(source, title=nasty, plates=(first, *source.plates[1:]))
    catalogue = replace(catalogue, sources={**catalogue.sources, source.id: made})
    build(catalogue, folder / "public")
    return catalogue, folder / "public"


def test_a_plate_with_a_picture_shows_it(opened, pictured):
    _, site = pictured
    page = opened("plates.html", **of(site))
    width = page.locator(".card-picture").first.evaluate(
        "(each) => each.decode().then(() => each.naturalWidth)"
    )
    assert width > 0


def test_text_from_records_is_shown_as_text(opened, pictured):
    catalogue, site = pictured
    page = opened("plates.html", **of(site))
    said = page.locator(".card-said").filter(has_text="</script><img src=x")
    said.wait_for()
    assert said.count() == 1
    assert page.locator("img[src=x]").count() == 0
    plate = next(p for s in catalogue.sources.values() for p in s.plates if p.image)
    term = next(feature.term for feature in plate.features if feature.term)
    home = opened(f"index.html#garment={plate.garment}&when=1926&feature={term}&grades=ABC", **of(site))
    home.locator(".fit").wait_for()
    assert home.locator(".fit").count() == 1
    assert home.locator("img[src=x]").count() == 0


@pytest.mark.parametrize("seasons", ["northern", "southern"])
def test_the_seasons_are_those_of_the_catalogue(opened, tmp_path, seasons):
    catalogue = sample(tmp_path / "catalogue")
    catalogue = replace(catalogue, settings=replace(catalogue.settings, seasons=seasons))
    build(catalogue, tmp_path / "public")
    page = opened("index.html#garment=day-dress&when=summer 1926", **of(tmp_path / "public"))
    asked = ask_window(catalogue, "summer 1926")
    assert asked
    when = window_in_words(asked.window.earliest, asked.window.latest)
    assert page.locator("#answer-head").inner_text().endswith(f"for {when}")
    assert ("December" in when) is (seasons == "southern")


@pytest.mark.parametrize("words", [True, False], ids=["no plates", "nothing at all"])
def test_a_catalogue_without_plates_says_so_and_breaks_nothing(opened, tmp_path, words):
    catalogue = sample(tmp_path / "catalogue")
    vocabulary = catalogue.vocabulary if words else Vocabulary({})
    build(replace(catalogue, sources={}, boards={}, vocabulary=vocabulary), tmp_path / "public")
    said = {}
    for name in ("index.html", "plates.html", "timeline.html"):
        page = opened(name, **of(tmp_path / "public"))
        assert page.locator("h1").is_visible()
        said[name] = page.locator("main").inner_text()
        assert said[name].strip()
        if name == "index.html":
            assert page.locator("#answer").inner_text().strip()
    assert "No plate" in said["plates.html"]
