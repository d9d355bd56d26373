"""A new research folder works as it stands, and nothing that is there already is touched."""

from __future__ import annotations

from pathlib import Path

import pytest

from inperiod.evidence import Question, Window, answer, gather_facts
from inperiod.importing import FolderInUse, new_folder
from inperiod.kept import kept
from inperiod.records import read_catalogue, tidied_files


def test_a_new_folder_is_read_without_a_complaint(tmp_path: Path) -> None:
    new_folder(tmp_path / "my-research")
    reading = read_catalogue(tmp_path / "my-research")
    assert reading.problems == ()
    assert reading.catalogue.settings.title == "My research"
    assert list(reading.catalogue.sources) == ["example-source"]


def test_a_new_folder_is_tidy(tmp_path: Path) -> None:
    new_folder(tmp_path / "new")
    assert tidied_files(tmp_path / "new") == ([], [])


def test_it_carries_the_whole_vocabulary_to_add_to(tmp_path: Path) -> None:
    files = new_folder(tmp_path / "new")
    ours = {each.name: each.read_bytes() for each in kept("vocabulary").glob("*.yaml")}
    theirs = {each.name: each.read_bytes() for each in (tmp_path / "new/vocabulary").glob("*.yaml")}
    assert ours == theirs
    assert {"inperiod.yaml", "README.md", "sources/example-source.yaml"} <= set(files)


def test_the_invented_example_is_counted_only_where_estimates_are_asked_for(tmp_path: Path) -> None:
    new_folder(tmp_path / "new")
    facts = gather_facts(read_catalogue(tmp_path / "new").catalogue)
    for grades, sightings in [("A", 0), ("AB", 0), ("ABC", 1)]:
        question = Question("day-dress", ("neckline/square",), Window(None, None), grades=grades)
        assert answer(facts, question).findings[0].sightings == sightings


def test_the_site_of_a_new_folder_is_built(tmp_path: Path) -> None:
    from inperiod.publishing import build

    new_folder(tmp_path / "new")
    report = build(read_catalogue(tmp_path / "new").catalogue, tmp_path / "public")
    assert report.first.is_file()


@pytest.mark.parametrize("name", ["my research: 'a'", "no", "1926", "crêpe & <b>", "a\nb", "`x`|y", "-"])
def test_any_name_of_a_folder_gives_settings_that_can_be_read(tmp_path: Path, name: str) -> None:
    new_folder(tmp_path / name)
    assert read_catalogue(tmp_path / name).problems == ()


def test_an_empty_folder_is_filled(tmp_path: Path) -> None:
    (tmp_path / "empty").mkdir()
    assert new_folder(tmp_path / "empty")


@pytest.mark.parametrize("what", ["folder", "file"])
def test_what_is_there_already_is_not_touched(tmp_path: Path, what: str) -> None:
    place = tmp_path / "mine"
    if what == "folder":
        place.mkdir()
        (place / ".hidden").write_text("mine", encoding="utf-8")
    else:
        place.write_text("mine", encoding="utf-8")
    before = sorted(tmp_path.rglob("*"))
    with pytest.raises(FolderInUse, match="give another name"):
        new_folder(place)
    assert sorted(tmp_path.rglob("*")) == before
