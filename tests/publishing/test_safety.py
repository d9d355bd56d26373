"""What must never get out, and what must never get in."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from PIL import Image as Pillow

from inperiod.publishing import build
from inperiod.publishing.paths import UnsafeName, plate_path, relative
from inperiod.publishing.pictures import picture_of
from inperiod.publishing.prose import prose, web_address
from inperiod.publishing.published import published
from inperiod.records.model import Catalogue, Image, Mark
from publishing.pages import contents, html_pages, read
from publishing.sample import SECRET, dated, hostile, plate, sample, source

PAYLOADS = (
    "<script>alert(1)</script>",
    '"><img src=x onerror=alert(1)>',
    "' onmouseover='alert(1)",
    "</title><svg/onload=alert(1)>",
    "{{ 7 * 7 }}{% for x in y %}",
    "javascript:alert(1)",
    "[here](javascript:alert(1)) ![p](https://elsewhere.example/p.png) <b onclick=alert(1)>b</b>",
    "]]></summary><script>alert(1)</script>",
    "\u2028</script><script>alert(1)</script>",
)


def test_what_is_not_to_be_published_is_nowhere_in_the_output(small_site: Path) -> None:
    for path, data in contents(small_site).items():
        assert SECRET not in path
        assert SECRET.encode() not in data, path


def test_not_even_a_pointer_to_what_is_withheld_passes_the_door(tmp_path: Path) -> None:
    shown = published(sample(tmp_path))
    assert SECRET in repr(sample(tmp_path))
    assert SECRET not in repr(shown)


def test_the_withheld_plate_is_in_the_sample_at_all(tmp_path: Path) -> None:
    whole = sample(tmp_path)
    assert f"half-hidden-1926/{SECRET}" in whole.plates
    assert f"{SECRET}-source" in whole.sources
    assert f"{SECRET}-board" in whole.boards


@pytest.mark.parametrize("payload", PAYLOADS)
def test_hostile_text_stays_text(payload: str, tmp_path: Path) -> None:
    site = tmp_path / "public"
    build(hostile(sample(tmp_path / "catalogue"), payload), site)
    for page in html_pages(site):
        parsed = read(page)
        for tag, attributes in parsed.elements:
            assert tag != "b", page
            assert tag != "img" or (attributes.get("src") or "").startswith(("../", "images/", "flat/")), page
            assert tag != "script" or attributes.get("src") or attributes.get("type"), page
            assert not any(name.startswith("on") for name in attributes), (page, tag, attributes)
            assert not (attributes.get("href") or "").lower().startswith(("javascript:", "data:")), page
        assert "49{%" not in page.read_text(encoding="utf-8")


@pytest.mark.parametrize("name", ["../up", "a/b", "..", "", "a\\b", "c:d", "con.", "-x", "a b"])
def test_an_id_that_would_leave_its_folder_is_refused(name: str) -> None:
    with pytest.raises(UnsafeName):
        plate_path(f"good/{name}")


def test_a_build_with_such_an_id_writes_nothing(tmp_path: Path) -> None:
    catalogue = sample(tmp_path / "catalogue")
    bad = source("good", "1924", replace(plate("good", "p1-1", "neckline/v"), id="../../escaped"))
    with pytest.raises(UnsafeName):
        build(replace(catalogue, sources={"good": bad}), tmp_path / "public")
    assert not (tmp_path / "public").exists()


def catalogue_with_picture(folder: Path, file: str) -> Catalogue:
    """One plate pointing at ``file``; a true picture lies beside ``images/`` and one inside it."""
    (folder / "images").mkdir(parents=True)
    Pillow.new("RGB", (40, 30), "red").save(folder / "secret.png")
    Pillow.new("RGB", (40, 30), "blue").save(folder / "images" / "plate.png")
    (folder / "images" / "link.png").symlink_to(folder / "secret.png")
    (folder / "images" / "broken.png").write_bytes(b"no picture")
    shown = plate("list", "p1-1", "neckline/v", image=Image(file, Mark("x"), alt="a frock"))
    return replace(sample(folder), sources={"list": source("list", "1924", shown)}, boards={})


def test_a_picture_is_shown_with_its_size_and_the_original_is_not_copied(tmp_path: Path) -> None:
    catalogue = catalogue_with_picture(tmp_path / "catalogue", "plate.png")
    build(catalogue, tmp_path / "public")
    picture = picture_of(catalogue, catalogue.plates["list/p1-1"])
    assert picture
    assert (tmp_path / "public" / picture.figure.large.jpg).is_file()
    assert not [path for path in contents(tmp_path / "public") if path.endswith(".png")]
    page = read(tmp_path / "public/plate/list/p1-1.html")
    shown = next(each for tag, each in page.elements if tag == "img")
    assert (shown["alt"], shown["width"], shown["height"]) == ("a frock", "40", "30")


@pytest.mark.parametrize(
    "file", ["../secret.png", "{folder}/secret.png", "link.png", "broken.png", "none.png"]
)
def test_a_picture_elsewhere_or_broken_leaves_its_place_empty(file: str, tmp_path: Path) -> None:
    folder = tmp_path / "catalogue"
    build(catalogue_with_picture(folder, file.format(folder=folder)), tmp_path / "public")
    assert not [path for path in contents(tmp_path / "public") if path.startswith("images/")]
    assert "<img" not in (tmp_path / "public/plate/list/p1-1.html").read_text(encoding="utf-8")


@pytest.mark.parametrize(
    "address",
    ["javascript:alert(1)", "data:text/html,x", "//elsewhere.example", "ftp://x.example"],
)
def test_only_plain_web_addresses_are_linked(address: str) -> None:
    assert web_address(address) is None
    assert "<a " not in prose(f"[x]({address})")


def test_markdown_takes_links_to_the_web_and_to_the_site_but_no_html_and_no_pictures() -> None:
    written = prose(
        "[a](https://example.org/) [b](method.html#dates) <i>x</i> ![p](p.png)", lambda path: "../" + path
    )
    assert '<a href="https://example.org/" rel="noopener noreferrer">a</a>' in written
    assert '<a href="../method.html#dates">b</a>' in written
    assert "<i>" not in written
    assert "<img" not in written


@pytest.mark.parametrize(
    ("target", "page", "expected"),
    [
        ("index.html", "plate/a/b.html", "../../index.html"),
        ("plate/a/c.html", "plate/a/b.html", "c.html"),
        ("plates.html#has=a/b", "term/a/b.html", "../../plates.html#has=a/b"),
        ("assets/style.css", "index.html", "assets/style.css"),
    ],
)
def test_links_are_relative_to_their_page(target: str, page: str, expected: str) -> None:
    assert relative(target, page) == expected


def test_dates_that_are_open_or_far_away_break_no_page(tmp_path: Path) -> None:
    catalogue = sample(tmp_path / "catalogue")
    odd = {
        name: source(name, date, plate(name, "p1-1", "neckline/v"))
        for name, date in (
            ("open-start", "../1907"),
            ("open-end", "1920/.."),
            ("ancient", "-0044"),
            ("century", "18XX"),
            ("far", "2150"),
        )
    }
    build(replace(catalogue, sources=odd), tmp_path / "public")
    assert "before 1908" in (tmp_path / "public/plate/open-start/p1-1.html").read_text(encoding="utf-8")
    assert dated("../1907").span.earliest is None
