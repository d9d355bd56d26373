"""The site before the last one is the ground of the next: sooner, and never anything but the whole site."""

from __future__ import annotations

import os
import subprocess
import tarfile
from collections.abc import Callable
from pathlib import Path

import pytest

from inperiod.publishing import build, spare
from inperiod.records.keeping import read_kept
from publishing.pages import contents
from publishing.test_incremental import small

LINUX = pytest.mark.skipif(
    not Path("/proc/self").exists(), reason="on a disk that takes A for a no spare is kept"
)


def built(folder: Path, site: Path, title: str) -> dict[str, bytes]:
    """The site under another title, so that every page is made anew."""
    (folder / "inperiod.yaml").write_text(f"title: {title}\n", encoding="utf-8")
    reading = read_kept(folder)
    build(reading.catalogue, site, editions=reading.editions, grounds=reading.grounds)
    return contents(site)


@pytest.fixture(scope="module")
def three(tmp_path_factory: pytest.TempPathFactory) -> dict[str, bytes]:
    """The site under the third title, built where there never was another."""
    place = tmp_path_factory.mktemp("afresh")
    return built(small(place / "records"), place / "public", "Three")


def spare_of(folder: Path) -> Path:
    (spare,) = (folder / ".inperiod" / "spare").iterdir()
    return spare


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return small(tmp_path / "records")


@LINUX
def test_the_site_before_is_set_by_out_of_sight_and_made_the_next_one(
    folder: Path, tmp_path: Path, three: dict[str, bytes]
) -> None:
    site = tmp_path / "public"
    built(folder, site, "One")
    assert not any((folder / ".inperiod" / "spare").iterdir())
    built(folder, site, "Two")
    before = spare_of(folder)
    assert b"One" in (before / "index.html").read_bytes()
    own = before.stat().st_ino
    assert built(folder, site, "Three") == three
    assert site.stat().st_ino == own
    assert b"Two" in (spare_of(folder) / "index.html").read_bytes()
    assert sorted(each.name for each in tmp_path.iterdir()) == ["public", "records"]


@LINUX
def test_what_stands_unchanged_in_both_is_not_touched(folder: Path, tmp_path: Path) -> None:
    site = tmp_path / "public"
    for title in ("One", "Two"):
        built(folder, site, title)
    style = (site / "assets" / "style.css").stat()
    built(folder, site, "Three")
    now = (site / "assets" / "style.css").stat()
    assert (now.st_ino, now.st_mtime_ns, now.st_ctime_ns) == (
        style.st_ino,
        style.st_mtime_ns,
        style.st_ctime_ns,
    )


def test_where_nothing_changed_the_site_is_left_as_it_is(folder: Path, tmp_path: Path) -> None:
    site = tmp_path / "public"
    built(folder, site, "One")
    before = {path: path.stat().st_ctime_ns for path in (site, *site.rglob("*"))}
    built(folder, site, "One")
    assert {path: path.stat().st_ctime_ns for path in (site, *site.rglob("*"))} == before


@pytest.mark.parametrize("harm", ["changed", "taken", "same size and time"])
def test_where_nothing_changed_but_a_page_it_is_made_again(harm: str, folder: Path, tmp_path: Path) -> None:
    site = tmp_path / "public"
    whole = built(folder, site, "One")
    page = site / "terms.html"
    seen = page.stat()
    if harm == "changed":
        page.write_text("mine", encoding="utf-8")
    else:
        page.rename(tmp_path / "taken.html")
    if harm.startswith("same"):
        page.write_bytes(b"x" * seen.st_size)
        os.utime(page, ns=(seen.st_atime_ns, seen.st_mtime_ns))
    assert built(folder, site, "One") == whole


def _a_link_to_a_folder(spare: Path, outside: Path) -> None:
    (spare / "source").rename(outside.with_name("moved"))
    (spare / "source").symlink_to(outside, target_is_directory=True)


def _a_link_to_a_file(spare: Path, outside: Path) -> None:
    (spare / "index.html").unlink()
    (spare / "index.html").symlink_to(outside / "mine.txt")


def _a_second_name_of_a_file(spare: Path, outside: Path) -> None:
    for name in ("index.html", ".inperiod-site"):
        (spare / name).unlink()
        (spare / name).hardlink_to(outside / "mine.txt")


def _a_file_more(spare: Path, _: Path) -> None:
    (spare / "source" / "planted.html").write_text("planted", encoding="utf-8")


def _a_link_more(spare: Path, outside: Path) -> None:
    (spare / "more").symlink_to(outside, target_is_directory=True)


def _another_page(spare: Path, _: Path) -> None:
    (spare / "about.html").write_text("planted", encoding="utf-8")


def _a_folder_for_a_page(spare: Path, _: Path) -> None:
    (spare / "about.html").unlink()
    (spare / "about.html").mkdir()
    (spare / "about.html" / "planted.html").write_text("planted", encoding="utf-8")


def _a_page_for_a_folder(spare: Path, outside: Path) -> None:
    (spare / "source").rename(outside.with_name("moved"))
    (spare / "source").write_text("planted", encoding="utf-8")


def _a_link_in_its_own_place(spare: Path, outside: Path) -> None:
    spare.rename(outside.with_name("moved"))
    spare.symlink_to(outside, target_is_directory=True)


@LINUX
@pytest.mark.parametrize(
    "plant",
    [
        _a_link_to_a_folder,
        _a_link_to_a_file,
        _a_second_name_of_a_file,
        _a_file_more,
        _a_link_more,
        _another_page,
        _a_folder_for_a_page,
        _a_page_for_a_folder,
        _a_link_in_its_own_place,
    ],
    ids=lambda plant: plant.__name__.strip("_").replace("_", " "),
)
def test_a_spare_that_someone_tampered_with_changes_nothing(
    plant: Callable[[Path, Path], None], folder: Path, tmp_path: Path, three: dict[str, bytes]
) -> None:
    site, outside = tmp_path / "public", tmp_path / "outside"
    outside.mkdir()
    (outside / "mine.txt").write_text("mine", encoding="utf-8")
    for title in ("One", "Two"):
        built(folder, site, title)
    plant(spare_of(folder), outside)
    assert built(folder, site, "Three") == three
    assert not any(path.is_symlink() for path in (site, *site.rglob("*")))
    assert [(each.name, each.read_text()) for each in outside.iterdir()] == [("mine.txt", "mine")]


def test_where_files_cannot_have_two_names_no_spare_takes_up_room(
    folder: Path, tmp_path: Path, three: dict[str, bytes], monkeypatch: pytest.MonkeyPatch
) -> None:
    def no_links(*_: object, **__: object) -> None:
        raise OSError("Operation not supported")

    monkeypatch.setattr(os, "link", no_links)
    site = tmp_path / "public"
    for title in ("One", "Two", "Three"):
        made = built(folder, site, title)
    assert not any((folder / ".inperiod" / "spare").iterdir())
    assert made == three


def test_what_is_kept_stays_out_of_backups_and_no_link_leads_its_marks_astray(
    folder: Path, tmp_path: Path
) -> None:
    """Held to GNU tar, which knows the tag of cache directories by its signature."""
    (folder / ".inperiod").mkdir()
    (folder / ".inperiod" / ".gitignore").symlink_to(tmp_path / "elsewhere")
    built(folder, tmp_path / "public", "One")
    assert not (tmp_path / "elsewhere").exists()
    assert any((folder / ".inperiod" / "records").iterdir())
    if (
        "GNU tar"
        not in subprocess.run(["tar", "--version"], capture_output=True, text=True, check=True).stdout
    ):
        pytest.skip("this tar is not GNU's")
    subprocess.run(
        ["tar", "--exclude-caches-all", "-cf", tmp_path / "backup.tar", "-C", folder, "."],
        capture_output=True,
        check=True,
    )
    with tarfile.open(tmp_path / "backup.tar") as backup:
        names = backup.getnames()
    assert "./sources/list-0.yaml" in names
    assert [name for name in names if ".inperiod" in name] == []


@LINUX
def test_for_a_few_targets_only_a_spare_is_kept(
    folder: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(spare, "MOST", 1)
    for number in range(2):
        for title in ("One", "Two"):
            built(folder, tmp_path / f"public-{number}", title)
    assert len(list((folder / ".inperiod" / "spare").iterdir())) == 1
