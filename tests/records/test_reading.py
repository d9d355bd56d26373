"""Good files become the records they say, as written; what is odd about a folder is complained of."""

from __future__ import annotations

import os
import pickle
import shutil
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

import pytest
import yaml

from inperiod.dating import read_edtf
from inperiod.kept import kept
from inperiod.records import Catalogue, read_catalogue
from inperiod.records.model import Mark
from inperiod.records.shapes import Shape, shape_of

WHOLE = Path(__file__).parent / "whole"

MINIMAL = """title: A list
kind: other
date: 1912
date_basis: printed
rights: in copyright
plates:
  - {id: p1, garment: dress, features: [neckline/square]}
"""


@pytest.fixture(scope="module")
def whole() -> Catalogue:
    reading = read_catalogue(WHOLE)
    assert reading.problems == ()
    return reading.catalogue


def a_folder(at: Path, source: str | bytes = MINIMAL) -> Path:
    """A small sound catalogue folder with one source."""
    shutil.copytree(WHOLE / "vocabulary", at / "vocabulary")
    (at / "inperiod.yaml").write_text("title: A catalogue\n")
    (at / "sources").mkdir()
    data = source if isinstance(source, bytes) else source.encode()
    (at / "sources" / "list.yaml").write_bytes(data)
    return at


def complaints(folder: Path) -> list[str]:
    return [f"{each.file}:{each.line} {each.message}" for each in read_catalogue(folder).problems]


def test_text_that_looks_like_a_number_or_a_word_of_logic_is_kept_as_written(whole: Catalogue) -> None:
    source = whole.sources["autumn-list"]
    assert (source.volume, source.issue, source.edition, source.pages) == ("3", "007", "1.10", "48")
    assert source.note == "no"
    plate = source.plates[0]
    assert (plate.locator.page, plate.locator.item) == ("14", "2207")
    assert plate.price is not None
    assert plate.price.amount == "8/11"


def test_an_empty_value_is_no_value(whole: Catalogue) -> None:
    assert whole.plates["autumn-list/p14-3"].note is None


def test_dates_are_read_as_written(whole: Catalogue) -> None:
    source = whole.sources["autumn-list"]
    assert source.date is not None
    assert (source.date.text, source.date.span) == ("1912-23", read_edtf("1912-23"))
    assert source.date.mark == Mark("sources/autumn-list.yaml", 4, 7)
    assert source.on_sale is not None
    assert source.on_sale.span == read_edtf("1912-08/1913-01")
    assert source.grade == "A"
    plate = whole.plates["autumn-list/p14-3"]
    assert whole.dated(plate) == plate.date
    assert whole.dated(whole.plates["autumn-list/p15"]) == source.date


def test_features_are_read_in_every_form(whole: Catalogue) -> None:
    first, second = whole.plates["autumn-list/p14-3"].features
    assert (first.term, first.facet, first.state, first.reading) == (
        "neckline/square",
        "neckline",
        "shown",
        "seen",
    )
    assert (second.term, second.at, second.width, second.count) == (
        "trim/insertion",
        "neckline",
        "1 1/2 in",
        2,
    )
    assert (second.colour, second.reading, second.note) == ("white", "read", "See caption.")
    hidden, absent = whole.plates["autumn-list/p14-4"].features
    assert (hidden.facet, hidden.term, hidden.state) == ("neckline", None, "not visible")
    assert (absent.facet, absent.term, absent.state) == ("trim", None, "none")
    (also_absent,) = whole.plates["autumn-list/p15"].features
    assert (also_absent.facet, also_absent.term, also_absent.state) == ("trim", None, "none")


def test_the_place_of_every_value_is_known(whole: Catalogue) -> None:
    plate = whole.plates["autumn-list/p14-3"]
    file = "sources/autumn-list.yaml"
    lines = (WHOLE / file).read_text().splitlines()
    assert lines[plate.mark.line - 1][plate.mark.column - 1 :].startswith("id: p14-3")
    garment = plate.mark_of("garment")
    assert lines[garment.line - 1][garment.column - 1 :] == "day-dress"
    feature = plate.features[1].mark
    assert lines[feature.line - 1][feature.column - 1 :].startswith("{term: trim/insertion")


def test_facets_stand_in_the_order_they_give_and_then_by_name(whole: Catalogue) -> None:
    assert list(whole.vocabulary.facets) == ["garment", "neckline", "trim"]


def test_a_board_is_read(whole: Catalogue) -> None:
    board = whole.boards["saturday"]
    assert board.target.span == read_edtf("1912/1913")
    assert [each.plate for each in board.plates] == ["autumn-list/p15", "summer-list/p3"]
    assert board.making == ({"kind": "frill", "edge": "40 in", "fullness": 1.5},)
    assert board.departures[0].shows_at == "at arm's length"


def test_settings_are_read(whole: Catalogue) -> None:
    settings = whole.settings
    assert (settings.decades, settings.grades, settings.build_date) == ((1890, 1930), "AB", "2026-03-14")


def fields_of(shape: Shape, value: Any, path: str) -> Iterator[str]:
    """The paths of all fields a schema knows that a value never uses."""
    if shape.kind == "either":
        shape = next(each for each in (shape.table, shape.scalar) if each)
    if shape.kind == "list" and shape.item:
        used = [each for each in value or () if isinstance(each, Mapping)]
        merged: dict[str, Any] = {}
        for each in used:
            merged = {**merged, **{key: each[key] for key in each if key not in merged}}
        if shape.item.kind in ("fields", "either"):
            yield from fields_of(shape.item, merged, f"{path}[]")
    elif shape.kind == "fields":
        for name, inner in shape.fields.items():
            if name not in (value or {}):
                yield f"{path}.{name}"
            else:
                yield from fields_of(inner, value[name], f"{path}.{name}")


@pytest.mark.parametrize(
    ("schema", "file"),
    [
        ("source", "sources/autumn-list.yaml"),
        ("board", "boards/saturday.yaml"),
        ("settings", "inperiod.yaml"),
        ("vocabulary", "vocabulary/neckline.yaml"),
    ],
)
def test_the_whole_catalogue_uses_every_field_there_is(schema: str, file: str) -> None:
    """So that the tests above and the formatter's are about all of the format."""
    value = yaml.load((WHOLE / file).read_text(), Loader=yaml.BaseLoader)
    unused = set(fields_of(shape_of(schema), value, ""))
    allowed = {
        ".examined.pages", ".signed_off.pages", ".wearer.age", ".wearer.sizes", ".wearer.status",
        ".features[].term", ".features[].facet", ".features[].not_visible", ".features[].none",
        ".features[].at", ".features[].width", ".features[].count", ".features[].colour",
        ".features[].reading", ".features[].note", ".terms[].broader", ".terms[].in_dress_from.note",
        ".plates[].features[].facet", ".plates[].features[].none", ".plates[].features[].not_visible",
    }  # fmt: skip
    assert unused <= allowed


@pytest.mark.parametrize("start", [b"", b"\xef\xbb\xbf"], ids=["plain", "byte order mark"])
@pytest.mark.parametrize("end", [b"\n", b"\r\n"], ids=["Unix line ends", "Windows line ends"])
def test_byte_order_marks_and_windows_line_ends_change_nothing(
    tmp_path: Path, start: bytes, end: bytes
) -> None:
    data = start + MINIMAL.encode().replace(b"\n", end)
    reading = read_catalogue(a_folder(tmp_path / "it", data))
    assert reading.problems == ()
    plain = read_catalogue(a_folder(tmp_path / "plain"))
    assert reading.catalogue.sources == plain.catalogue.sources


def test_a_folder_without_a_vocabulary_has_the_one_that_comes_along(tmp_path: Path) -> None:
    folder = a_folder(tmp_path / "it")
    shutil.rmtree(folder / "vocabulary")
    found = set(read_catalogue(folder).catalogue.vocabulary.facets)
    assert found == {each.stem for each in kept("vocabulary").glob("*.yaml")}


def test_reading_twice_gives_the_same_whatever_the_order_of_the_file_system(tmp_path: Path) -> None:
    names = ["c", "a", "b"]
    for round_, order in enumerate((names, sorted(names))):
        folder = a_folder(tmp_path / str(round_))
        for name in order:
            (folder / "sources" / f"{name}.yaml").write_text(MINIMAL.replace("square", "sqare"))
    first, second = read_catalogue(tmp_path / "0"), read_catalogue(tmp_path / "1")
    assert list(first.catalogue.sources) == ["a", "b", "c", "list"]
    assert first.problems == second.problems
    assert first.catalogue.sources == second.catalogue.sources


def test_records_can_be_kept_and_used_again(whole: Catalogue) -> None:
    assert pickle.loads(pickle.dumps(whole)).sources == whole.sources


def test_a_folder_that_is_not_there_is_one_complaint(tmp_path: Path) -> None:
    reading = read_catalogue(tmp_path / "nowhere")
    assert [each.message for each in reading.problems] == [f"There is no folder {tmp_path / 'nowhere'}."]
    assert reading.errors
    assert not reading.catalogue.sources


def test_an_empty_folder_is_an_empty_catalogue(tmp_path: Path) -> None:
    reading = read_catalogue(tmp_path)
    assert not reading.errors
    assert not reading.catalogue.sources
    assert reading.catalogue.vocabulary.terms


def test_links_out_of_the_folder_are_not_followed(tmp_path: Path) -> None:
    folder = a_folder(tmp_path / "it")
    secret = tmp_path / "secret.yaml"
    secret.write_text(MINIMAL)
    (folder / "sources" / "out.yaml").symlink_to(secret)
    (folder / "sources" / "round.yaml").symlink_to("round.yaml")
    (folder / "sources" / "gone.yaml").symlink_to("nothing.yaml")
    (folder / "boards").symlink_to(tmp_path)
    found = complaints(folder)
    assert "sources/out.yaml:1 This file is a link out of the folder." in found
    assert any(each.startswith("sources/round.yaml:1 This file cannot be read") for each in found)
    assert any(each.startswith("sources/gone.yaml:1 This file cannot be read") for each in found)
    assert "boards:1 boards must be a folder inside the catalogue folder." in found
    assert list(read_catalogue(folder).catalogue.sources) == ["list"]


def test_a_link_inside_the_folder_is_followed(tmp_path: Path) -> None:
    folder = a_folder(tmp_path / "it")
    (folder / "sources" / "same.yaml").symlink_to("list.yaml")
    assert list(read_catalogue(folder).catalogue.sources) == ["list", "same"]


def test_a_picture_that_is_a_link_out_of_the_folder_is_refused(tmp_path: Path) -> None:
    image = "image: {file: p.png, alt: A frock.}"
    folder = a_folder(tmp_path / "it", MINIMAL.replace("garment: dress", f"garment: dress, {image}"))
    (folder / "images").mkdir()
    (tmp_path / "p.png").write_bytes(b"")
    (folder / "images" / "p.png").symlink_to(tmp_path / "p.png")
    assert complaints(folder) == ["sources/list.yaml:7 The picture p.png lies outside the folder images."]


def test_what_is_no_ordinary_file_is_never_opened(tmp_path: Path) -> None:
    folder = a_folder(tmp_path / "it")
    os.mkfifo(folder / "sources" / "pipe.yaml")
    assert complaints(folder) == ["sources/pipe.yaml:1 This is not an ordinary file."]


def test_a_file_nobody_may_read_is_a_complaint(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    folder = a_folder(tmp_path / "it")
    real = Path.open

    def refusing(self: Path, *args: Any, **others: Any) -> Any:
        if self.name == "list.yaml":
            raise PermissionError(13, "Permission denied")
        return real(self, *args, **others)

    monkeypatch.setattr(Path, "open", refusing)
    assert complaints(folder) == ["sources/list.yaml:1 This file cannot be read: Permission denied."]
