"""A build is whole or it is not there."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest
from jinja2 import TemplateError

from inperiod.publishing import WillNotWrite, build
from inperiod.publishing import write as writing
from inperiod.publishing.write import MARKER, replace_site
from inperiod.records import read_catalogue
from publishing.pages import contents, html_pages
from publishing.sample import sample


def test_the_same_records_give_the_same_bytes(tmp_path: Path) -> None:
    build(sample(tmp_path / "catalogue"), tmp_path / "one")
    build(sample(tmp_path / "catalogue"), tmp_path / "two")
    assert contents(tmp_path / "one") == contents(tmp_path / "two")


def test_building_again_replaces_the_whole_site(tmp_path: Path) -> None:
    site = tmp_path / "public"
    replace_site(site, {"old.html": "old", "index.html": "one"}.items(), {})
    replace_site(site, {"index.html": "two"}.items(), {})
    assert sorted(contents(site)) == [MARKER, "index.html"]
    assert sorted(each.name for each in tmp_path.iterdir()) == ["public"]


def test_a_failed_build_leaves_the_last_site(tmp_path: Path) -> None:
    catalogue, site = sample(tmp_path / "catalogue"), tmp_path / "public"
    build(catalogue, site)
    before = contents(site)
    own = tmp_path / "catalogue/site/templates"
    own.mkdir(parents=True)
    (own / "plate.html").write_text("{{ no_such_name }}")
    with pytest.raises(TemplateError):
        build(catalogue, site)
    assert contents(site) == before


def test_a_disk_that_fails_in_the_middle_leaves_the_last_site(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    site = tmp_path / "public"
    replace_site(site, {"index.html": "good"}.items(), {})
    written = []
    honest = Path.write_bytes

    def failing(self: Path, data: bytes) -> int:
        if len(written) == 3:
            raise OSError(28, "No space left on device")
        written.append(self)
        return honest(self, data)

    monkeypatch.setattr(Path, "write_bytes", failing)
    with pytest.raises(OSError, match="No space"):
        replace_site(site, {f"{n}.html": "new" for n in range(9)}.items(), {})
    assert (site / "index.html").read_text() == "good"
    assert sorted(each.name for each in tmp_path.iterdir()) == ["public"]


@pytest.mark.parametrize("exchange", [True, False])
def test_a_system_that_cannot_exchange_folders_is_served_as_well(
    exchange: bool, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    if not exchange:
        monkeypatch.setattr(writing, "_exchanged", lambda one, other: False)
    site = tmp_path / "public"
    replace_site(site, {"index.html": "one"}.items(), {})
    replace_site(site, {"index.html": "two"}.items(), {})
    assert (site / "index.html").read_text() == "two"


def test_a_swap_cut_off_in_its_middle_is_mended_by_the_next_build(tmp_path: Path) -> None:
    site = tmp_path / "public"
    replace_site(site, {"index.html": "last good"}.items(), {})
    site.rename(
        tmp_path / ".public.old"
    )  # what the slower of the two ways leaves when killed between its steps
    with pytest.raises(WillNotWrite):
        replace_site(site, {"../index.html": "bad"}.items(), {})
    assert (site / "index.html").read_text() == "last good"


KILLED = """
import sys
from pathlib import Path
from inperiod.publishing import write
honest = Path.write_bytes
count = 0
def slow(self, data):
    global count
    count += 1
    if count == 5:
        print("in the middle", flush=True)
        import time; time.sleep(60)
    return honest(self, data)
Path.write_bytes = slow
write.replace_site(Path(sys.argv[1]), {f"{n}.html": "new" for n in range(9)}.items(), {})
"""


@pytest.mark.skipif(os.name == "nt", reason="the signal is of POSIX systems")
def test_a_build_killed_in_the_middle_leaves_the_last_site_and_the_next_one_works(tmp_path: Path) -> None:
    site = tmp_path / "public"
    replace_site(site, {"index.html": "good"}.items(), {})
    with subprocess.Popen(
        [sys.executable, "-c", KILLED, str(site)], stdout=subprocess.PIPE, text=True
    ) as running:
        assert running.stdout is not None
        assert running.stdout.readline().strip() == "in the middle"
        running.send_signal(signal.SIGKILL)
    assert (site / "index.html").read_text() == "good"
    replace_site(site, {"index.html": "after"}.items(), {})
    assert sorted(contents(site)) == [MARKER, "index.html"]
    assert sorted(each.name for each in tmp_path.iterdir()) == ["public"]


def test_two_records_whose_pages_some_systems_take_for_one_are_refused(tmp_path: Path) -> None:
    with pytest.raises(WillNotWrite, match="large and small letters"):
        replace_site(tmp_path / "public", [("a/List.html", ""), ("a/list.html", "")], {})
    with pytest.raises(WillNotWrite, match="two pages"):
        replace_site(tmp_path / "public", [("a/list.html", "")] * 2, {})
    assert not (tmp_path / "public").exists()


def test_a_folder_with_files_of_others_is_refused_and_untouched(tmp_path: Path) -> None:
    site = tmp_path / "public"
    site.mkdir()
    (site / "thesis.txt").write_text("years of work")
    with pytest.raises(WillNotWrite, match="not empty"):
        build(sample(tmp_path / "catalogue"), site)
    assert contents(site) == {"thesis.txt": b"years of work"}


def test_a_file_added_to_a_built_site_is_not_lost(tmp_path: Path) -> None:
    catalogue, site = sample(tmp_path / "catalogue"), tmp_path / "public"
    build(catalogue, site)
    (site / "CNAME").write_text("dress.example")
    with pytest.raises(WillNotWrite, match="CNAME"):
        build(catalogue, site)
    assert (site / "CNAME").read_text() == "dress.example"


def test_a_file_of_ones_own_for_the_site_is_copied(tmp_path: Path) -> None:
    own = tmp_path / "catalogue/site/static"
    own.mkdir(parents=True)
    (own / "CNAME").write_text("dress.example")
    build(sample(tmp_path / "catalogue"), tmp_path / "public")
    assert (tmp_path / "public/CNAME").read_text() == "dress.example"


@pytest.mark.parametrize("target", [".", "..", "sources", "images/site"])
def test_the_records_themselves_are_never_written_over(target: str, tmp_path: Path) -> None:
    folder = tmp_path / "catalogue"
    (folder / "sources").mkdir(parents=True)
    with pytest.raises(WillNotWrite):
        build(sample(folder), folder / target)


def test_a_template_a_page_and_a_colour_can_be_ones_own(tmp_path: Path) -> None:
    own = tmp_path / "catalogue/site"
    for folder in ("templates", "pages", "assets/css"):
        (own / folder).mkdir(parents=True)
    (own / "templates/prose.html").write_text(
        "{% extends 'base.html' %}{% block main %}<h1>Mine</h1>{{ prose(text) }}{% endblock %}"
    )
    (own / "pages/cautions.md").write_text("# Cautions\n\nAsk the *wardrobe mistress*.")
    (own / "assets/css/95-mine.css").write_text(":root { --accent: purple; }")
    build(sample(tmp_path / "catalogue"), tmp_path / "public")
    page = (tmp_path / "public/cautions.html").read_text()
    assert "<h1>Mine</h1>" in page
    assert "<em>wardrobe mistress</em>" in page
    assert "--accent: purple" in (tmp_path / "public/assets/style.css").read_text()


@pytest.mark.parametrize("text", ["// mine\n", ""], ids=["another", "empty"])
def test_a_script_of_ones_own_takes_its_place_among_those_sent_as_one(text: str, tmp_path: Path) -> None:
    folder = tmp_path / "records"
    (folder / "site" / "assets").mkdir(parents=True)
    (folder / "inperiod.yaml").write_text("title: Mine\n", encoding="utf-8")
    build(read_catalogue(folder).catalogue, tmp_path / "before")
    (folder / "site" / "assets" / "answer.js").write_text(text, encoding="utf-8")
    build(read_catalogue(folder).catalogue, tmp_path / "public")
    sent, before = (
        (tmp_path / site / "assets" / "answering.js").read_text(encoding="utf-8")
        for site in ("public", "before")
    )
    assert sent.startswith(text)
    assert before.endswith(sent.removeprefix(text))
    assert len(sent) < len(before)


def test_an_empty_catalogue_makes_a_whole_site(tmp_path: Path) -> None:
    from dataclasses import replace

    empty = replace(sample(tmp_path / "catalogue"), sources={}, boards={})
    report = build(empty, tmp_path / "public")
    assert report.plates == report.sources == 0
    assert "No source has been recorded yet" in (tmp_path / "public/sources.html").read_text()
    assert "No board yet" in (tmp_path / "public/boards.html").read_text()
    assert len(html_pages(tmp_path / "public")) == report.pages


def test_site_map_feed_and_share_cards_come_with_an_address_and_not_without(
    small_site: Path, tmp_path: Path
) -> None:
    assert not (small_site / "sitemap.xml").exists()
    assert 'property="og:' not in (small_site / "index.html").read_text()
    build(sample(tmp_path / "catalogue", base_address="https://dress.example/regatta"), tmp_path / "public")
    from xml.etree import ElementTree

    site_map = ElementTree.parse(tmp_path / "public/sitemap.xml")
    addresses = [
        each.text or "" for each in site_map.iter("{http://www.sitemaps.org/schemas/sitemap/0.9}loc")
    ]
    assert "https://dress.example/regatta/plate/spring-list-1924/p3-1.html" in addresses
    assert not any("404" in address for address in addresses)
    feed = ElementTree.parse(tmp_path / "public/feed.xml")
    atom = "{http://www.w3.org/2005/Atom}"
    entries = feed.findall(f"{atom}entry")
    assert entries[0].findtext(f"{atom}updated") == "2026-01-03T00:00:00Z"
    assert all(entry.findtext(f"{atom}{name}") for entry in entries for name in ("id", "title", "updated"))
    assert feed.findtext(f"{atom}author/{atom}name")
    page = (tmp_path / "public/plate/spring-list-1924/p3-1.html").read_text()
    assert (
        '<meta property="og:url" content="https://dress.example/regatta/plate/spring-list-1924/p3-1.html">'
        in page
    )


def test_the_page_of_lost_addresses_works_at_any_depth_of_a_site_with_an_address(tmp_path: Path) -> None:
    build(sample(tmp_path / "catalogue", base_address="https://dress.example/regatta/"), tmp_path / "public")
    page = (tmp_path / "public/404.html").read_text()
    assert 'href="https://dress.example/regatta/assets/style.css"' in page
    assert 'href="https://dress.example/regatta/plates.html"' in page


def test_the_demonstration_is_built_in_a_few_seconds(demo_catalogue: object, tmp_path: Path) -> None:
    began = time.process_time()
    report = build(demo_catalogue, tmp_path / "public")  # type: ignore[arg-type]
    assert report.plates >= 400
    assert time.process_time() - began < 20  # three seconds on a quiet machine
