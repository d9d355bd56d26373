"""What is kept of a reading gives the same answers, and nothing but what was kept here is believed."""

from __future__ import annotations

import json
import os
import shutil
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from inperiod.evidence import gather_facts, kept_facts
from inperiod.records import Reading, keeping, read_catalogue, reading
from inperiod.records.keeping import Store, read_kept
from inperiod.records.model import Source

WHOLE = Path(__file__).parent / "whole"
BROKEN = Path(__file__).parents[1] / "broken" / "cases"


@pytest.fixture(autouse=True)
def own_key(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A key of the test's own, so that nothing is made in the home of whoever runs it."""
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))


@pytest.fixture
def folder(tmp_path: Path, demo_folder: Path) -> Path:
    """A copy of the demonstration without what was kept of it."""
    return shutil.copytree(demo_folder, tmp_path / "records", ignore=shutil.ignore_patterns(".inperiod"))


def everything(reading: Reading) -> object:
    """All of a reading, with the places that comparing records passes over."""
    catalogue = reading.catalogue
    return (
        catalogue,
        list(catalogue.plates.items()),
        [(source.spots, [plate.spots for plate in source.plates]) for source in catalogue.sources.values()],
        [
            (facet.spots, [term.spots for term in facet.terms])
            for facet in catalogue.vocabulary.facets.values()
        ],
        [board.spots for board in catalogue.boards.values()],
        reading.problems,
    )


def notes(folder: Path) -> list[Path]:
    return sorted((folder / ".inperiod" / "records").glob("*.json"))


def test_what_is_kept_reads_the_same(folder: Path) -> None:
    cold = everything(read_catalogue(folder))
    for _ in range(2):
        assert everything(read_kept(folder)) == cold
    assert len(notes(folder)) > 50


@pytest.mark.parametrize("case", sorted(each.name for each in BROKEN.iterdir())[::8])
def test_every_complaint_is_kept_too(case: str, tmp_path: Path) -> None:
    place = shutil.copytree(BROKEN / case, tmp_path / "records", ignore=shutil.ignore_patterns(".inperiod"))
    cold = read_catalogue(place).problems
    assert read_kept(place).problems == cold
    assert read_kept(place).problems == cold


def test_one_changed_source_is_read_and_the_others_are_not(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    read_kept(folder)
    changed = next((folder / "sources").glob("corrisande-pell-spring-1920.yaml"))
    changed.write_text(changed.read_text(encoding="utf-8").replace("Peace", "Quiet"), encoding="utf-8")
    opened: list[str] = []
    from inperiod.records import reading as reader

    honest = reader.read_source

    def told(data: bytes, file: str, *more: object) -> tuple[Source | None, list[object]]:
        opened.append(file)
        return honest(data, file, *more)  # type: ignore[arg-type,return-value]

    monkeypatch.setattr(reader, "read_source", told)
    reading = read_kept(folder)
    assert opened == ["sources/corrisande-pell-spring-1920.yaml"]
    assert everything(reading) == everything(read_catalogue(folder))
    assert "Quiet" in reading.catalogue.sources["corrisande-pell-spring-1920"].title


def test_after_an_edit_no_source_is_opened_that_stands_by_itself(
    tmp_path: Path, opened_sources: list[str]
) -> None:
    """Of sources that have not changed only those that point at others, are withheld or have pictures."""
    text = (WHOLE / "sources" / "summer-list.yaml").read_text(encoding="utf-8")
    plain = "title: A list\nkind: other\ndate: 1912\ndate_basis: printed\nrights: Free.\nplates: []\n"
    folder = shutil.copytree(WHOLE, tmp_path / "records", ignore=shutil.ignore_patterns(".inperiod"))
    for number in range(5):
        (folder / "sources" / f"plain-{number}.yaml").write_text(plain, encoding="utf-8")
    read_kept(folder)
    (folder / "sources" / "summer-list.yaml").write_text(text + "\n# seen\n", encoding="utf-8")
    opened_sources.clear()
    reading = read_kept(folder)
    assert opened_sources, "what points at others is asked again"
    assert not [each for each in opened_sources if each.startswith("plain")]
    assert everything(reading) == everything(read_catalogue(folder))


def test_where_a_word_changes_every_record_is_checked_again(folder: Path) -> None:
    read_kept(folder)
    _other_word(folder)
    problems = read_kept(folder).problems
    assert problems == read_catalogue(folder).problems
    assert any("neckline/square" in each.message for each in problems)


def test_many_hands_read_the_same_as_one(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (folder / "sources" / "not-yet.yaml").write_text("title: [", encoding="utf-8")
    monkeypatch.setattr("inperiod.hands.hands_here", lambda: 3)
    forked = []
    fork = os.fork

    def counted() -> int:
        forked.append(True)
        return fork()

    monkeypatch.setattr(os, "fork", counted)
    by_many = read_kept(folder)
    assert len(forked) == 2
    assert everything(by_many) == everything(read_catalogue(folder))
    assert everything(read_kept(folder)) == everything(by_many)
    assert len(forked) == 2, "what is known is not read again"


def test_what_a_lost_hand_has_not_read_is_read_all_the_same(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    mine = os.getpid()
    read = reading.read_source

    def lost(*given: Any) -> Any:
        return read(*given) if os.getpid() == mine else os._exit(1)

    monkeypatch.setattr("inperiod.hands.hands_here", lambda: 2)
    monkeypatch.setattr(reading, "read_source", lost)
    assert everything(read_kept(folder)) == everything(read_catalogue(folder))


def test_files_are_held_in_lots(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    lots = []
    by_all = keeping._Memory._by_all

    def counted(self: Any, lot: Any) -> Any:
        lots.append([len(data) for _, data in lot])
        return by_all(self, lot)

    monkeypatch.setattr(keeping, "HELD", 20_000)
    monkeypatch.setattr(keeping._Memory, "_by_all", counted)
    assert everything(read_kept(folder)) == everything(read_catalogue(folder))
    assert len(lots) > 5
    assert all(sum(lot[:-1]) <= 20_000 for lot in lots)


def _add_source(folder: Path) -> None:
    (folder / "sources" / "new.yaml").write_text("title: New\nkind: other\nplates: []\n", encoding="utf-8")


def _remove_source(folder: Path) -> None:
    next((folder / "sources").glob("*.yaml")).unlink()


def _rename_source(folder: Path) -> None:
    file = next((folder / "sources").glob("*.yaml"))
    file.rename(file.with_name("renamed.yaml"))


def _other_seasons(folder: Path) -> None:
    file = folder / "inperiod.yaml"
    file.write_text(file.read_text(encoding="utf-8").replace("northern", "southern"), encoding="utf-8")


def _other_word(folder: Path) -> None:
    file = folder / "vocabulary" / "neckline.yaml"
    file.write_text(file.read_text(encoding="utf-8").replace("id: square", "id: box"), encoding="utf-8")


def _no_vocabulary(folder: Path) -> None:
    shutil.rmtree(folder / "vocabulary")


def _odd_file(folder: Path) -> None:
    (folder / "sources" / "list.csv").write_text("a,b\n", encoding="utf-8")


def _picture(folder: Path) -> None:
    source = sorted((folder / "sources").glob("*.yaml"))[0]
    text = source.read_text(encoding="utf-8")
    source.write_text(
        text.replace("    garment:", "    image: {file: a.png}\n    garment:", 1), encoding="utf-8"
    )
    read_kept(folder)
    (folder / "images").mkdir(exist_ok=True)
    (folder / "images" / "a.png").write_bytes(b"no picture")


def _board(folder: Path) -> None:
    next((folder / "boards").glob("*.yaml")).unlink()


@pytest.mark.parametrize(
    "change",
    [
        *(_add_source, _remove_source, _rename_source, _other_seasons, _other_word, _no_vocabulary),
        *(_odd_file, _picture, _board),
    ],
)
def test_whatever_is_changed_is_seen(change: Callable[[Path], None], folder: Path) -> None:
    read_kept(folder)
    change(folder)
    assert everything(read_kept(folder)) == everything(read_catalogue(folder))
    assert everything(read_kept(folder)) == everything(read_catalogue(folder))


def test_a_note_of_an_older_program_is_passed_over(folder: Path) -> None:
    read_kept(folder)
    store = Store.of(folder)
    assert store is not None
    store.write("catalogue", {"grounds": "of another time", "sources": []})
    assert everything(read_kept(folder)) == everything(read_catalogue(folder))


def _torn(data: bytes) -> bytes:
    return data[: len(data) // 2]


def _other_text(data: bytes) -> bytes:
    return data.replace(b"Spring", b"Winter").replace(b"19", b"18")


def _unsealed(data: bytes) -> bytes:
    return data[64:]


@pytest.mark.parametrize("spoil", [_torn, _other_text, _unsealed, lambda _: b"", lambda _: b"\xff" * 300])
def test_a_note_that_was_touched_is_passed_over(spoil: Callable[[bytes], bytes], folder: Path) -> None:
    cold = everything(read_catalogue(folder))
    read_kept(folder)
    for note in notes(folder):
        note.write_bytes(spoil(note.read_bytes()))
    assert everything(read_kept(folder)) == cold


def test_a_note_of_another_user_is_passed_over(
    folder: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A folder that comes with notes from elsewhere cannot say what its records do not."""
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "theirs"))
    read_kept(folder)
    store = Store.of(folder)
    assert store is not None
    known = store.read("catalogue")
    known["problems"] = [["inperiod.yaml", 1, 1, "error", "All is lost.", ""]]
    store.write("catalogue", known)
    assert [each.message for each in read_kept(folder).problems] == ["All is lost."]
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "ours"))
    assert read_kept(folder).problems == read_catalogue(folder).problems


def test_a_note_taken_away_while_it_is_in_use_is_no_loss(folder: Path) -> None:
    read_kept(folder)
    reading = read_kept(folder)
    shutil.rmtree(folder / ".inperiod")
    assert reading.catalogue == read_catalogue(folder).catalogue


@pytest.mark.skipif(os.name == "nt" or os.geteuid() == 0, reason="root may write anywhere")
def test_a_folder_that_may_only_be_read_is_read_all_the_same(folder: Path) -> None:
    folder.chmod(0o555)
    try:
        assert read_kept(folder).problems == read_catalogue(folder).problems
        assert not (folder / ".inperiod").exists()
    finally:
        folder.chmod(0o755)


def test_without_a_home_nothing_is_kept_and_nothing_is_lost(
    folder: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "file").write_text("")
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "file"))
    reading = read_kept(folder)
    assert reading.grounds is None
    assert everything(reading) == everything(read_catalogue(folder))
    assert notes(folder) == []


def test_the_facts_that_are_kept_are_those_of_the_records(folder: Path) -> None:
    facts = gather_facts(read_catalogue(folder).catalogue)
    for _ in range(2):
        kept = kept_facts(read_kept(folder))
        assert replace(kept, memo={}) == facts
    note = folder / ".inperiod" / "records" / "facts.json"
    assert json.loads(note.read_bytes()[64:])["grounds"]


def test_a_missing_folder_is_complained_of_as_ever(tmp_path: Path) -> None:
    assert read_kept(tmp_path / "none").problems == read_catalogue(tmp_path / "none").problems
