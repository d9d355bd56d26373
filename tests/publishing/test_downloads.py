"""The catalogue as data: read back by other people's readers."""

from __future__ import annotations

import csv
import json
from dataclasses import replace
from pathlib import Path

import bibtexparser
import frictionless
import jsonschema
import pytest
import rispy
import yaml

from inperiod.publishing import build
from inperiod.publishing.downloads import TABLES, as_csv_rows, tables_and_whole
from inperiod.records.model import Catalogue
from publishing.pages import contents
from publishing.sample import SECRET, sample

# The required fields of the Citation File Format 1.2.0 (https://citation-file-format.github.io, from memory).
CFF = {
    "type": "object",
    "required": ["cff-version", "message", "title", "authors"],
    "properties": {
        "cff-version": {"const": "1.2.0"},
        "type": {"enum": ["software", "dataset"]},
        "authors": {"type": "array", "minItems": 1, "items": {"type": "object", "minProperties": 1}},
    },
}


@pytest.fixture(scope="module")
def downloads(demo_site: Path) -> Path:
    return demo_site / "download"


def test_the_tables_are_a_valid_data_package(downloads: Path) -> None:
    # Authority: the reference implementation of the Frictionless standards, PyPI ``frictionless``.
    report = frictionless.Package(str(downloads / "datapackage.json")).validate()
    assert report.valid, report.flatten(["type", "message"])
    assert {task.name for task in report.tasks} == {table.name for table in TABLES}


def test_a_broken_table_would_be_found(downloads: Path, tmp_path: Path) -> None:
    for file in downloads.iterdir():
        if file.is_file():
            (tmp_path / file.name).write_bytes(file.read_bytes())
    lines = (tmp_path / "plates.csv").read_bytes().split(b"\r\n")
    (tmp_path / "plates.csv").write_bytes(b"\r\n".join([*lines[:2], *lines[1:]]))
    assert not frictionless.Package(str(tmp_path / "datapackage.json")).validate().valid


def test_the_tables_hold_every_published_record(downloads: Path, demo_catalogue: Catalogue) -> None:
    shown = [plate for plate in demo_catalogue.plates.values() if plate.publish]
    assert len(rows(downloads / "plates.csv")) == len(shown)
    assert len(rows(downloads / "features.csv")) == sum(len(plate.features) for plate in shown)
    assert len(rows(downloads / "terms.csv")) == len(demo_catalogue.vocabulary.terms)
    assert len(rows(downloads / "sources.csv")) == len(demo_catalogue.sources)


def test_the_one_file_says_what_the_tables_say(downloads: Path) -> None:
    whole = json.loads((downloads / "catalogue.json").read_text("utf-8"))
    for table in TABLES:
        written = rows(downloads / f"{table.name}.csv")
        assert len(whole[table.name]) == len(written)
        for record, row in zip(whole[table.name], written, strict=True):
            said = {key: str(value) for key, value in record.items()}
            assert said == {key: value.removeprefix("'") if key in said else value
                            for key, value in row.items() if value}  # fmt: skip


@pytest.mark.parametrize("start", ["=", "+", "-", "@", "\t"])
def test_no_cell_begins_like_a_formula(start: str, tmp_path: Path) -> None:
    # Practice: OWASP, "CSV Injection" (from memory).
    catalogue = sample(tmp_path)
    first = next(iter(catalogue.sources.values()))
    plate = replace(first.plates[0], caption=f"{start}cmd|' /C calc'!A0")
    shown = replace(catalogue, sources={first.id: replace(first, plates=(plate,))})
    for table in TABLES:
        rows = [*table.of_source(shown, shown.sources[first.id]), *table.of_vocabulary(shown.vocabulary)]
        for row in csv.reader(as_csv_rows(rows).splitlines()):
            assert not [cell for cell in row if cell.startswith(("=", "+", "-", "@", "\t"))]


def test_what_is_withheld_is_in_no_download(tmp_path: Path) -> None:
    build(sample(tmp_path / "c", base_address="https://example.org/"), tmp_path / "public")
    found = contents(tmp_path / "public")
    assert "download/plates.csv" in found
    assert "iiif/spring-list-1924.json" in found
    for path, data in found.items():
        assert SECRET not in path
        assert SECRET.encode() not in data, path


def test_the_citation_file_has_what_the_format_requires(downloads: Path) -> None:
    cff = yaml.safe_load((downloads / "CITATION.cff").read_text("utf-8"))
    jsonschema.Draft202012Validator(CFF).validate(cff)
    assert not jsonschema.Draft202012Validator(CFF).is_valid({**cff, "authors": []})


def test_every_source_and_board_has_its_citations_as_files(
    downloads: Path, demo_catalogue: Catalogue
) -> None:
    for source in demo_catalogue.sources.values():
        stem = downloads / "source" / source.id
        expected = 1 + sum(plate.publish for plate in source.plates)
        assert len(bibtexparser.parse_string(read(f"{stem}.bib")).entries) == expected
        assert len(rispy.loads(read(f"{stem}.ris"))) == expected
        assert len(json.loads(read(f"{stem}.csl.json"))) == expected
    for board in demo_catalogue.boards.values():
        assert len(json.loads(read(f"{downloads / 'board' / board.id}.csl.json"))) == len(board.plates)


def test_a_catalogue_of_nothing_still_gives_whole_tables(tmp_path: Path) -> None:
    empty = replace(sample(tmp_path), sources={}, boards={})
    files = dict(tables_and_whole(empty, ()))
    assert files["download/plates.csv"].startswith("plate,source,page")
    assert json.loads(files["download/catalogue.json"])["plates"] == []


def read(path: str) -> str:
    return Path(path).read_text(encoding="utf-8")


def rows(file: Path) -> list[dict[str, str]]:
    with file.open(encoding="utf-8", newline="") as opened:
        return list(csv.DictReader(opened))
