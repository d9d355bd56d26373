"""The table and mapping that the site offers are taken whole, and what they make is sound."""

from __future__ import annotations

import csv
import re
from pathlib import Path

import pytest

from inperiod.importing import import_table, new_folder
from inperiod.kept import kept
from inperiod.records import read_catalogue

TABLE = kept("site") / "assets" / "spreadsheet.csv"
MAPPING = kept("site") / "assets" / "spreadsheet-mapping.yaml"
PAGE = kept("site") / "pages" / "from-a-spreadsheet.md"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    new_folder(tmp_path / "mine")
    return tmp_path / "mine"


def test_every_row_of_the_table_to_start_from_is_taken_without_remark(folder: Path) -> None:
    report = import_table(TABLE, MAPPING, folder)
    assert [each.outcome for each in report.rows] == ["new"] * len(list(csv.DictReader(TABLE.open())))
    assert [each.remarks for each in report.rows if each.remarks] == []
    assert report.complaints == ()
    reading = read_catalogue(folder)
    assert [each for each in reading.problems if each.file in report.files] == []
    assert {each.plate for each in report.rows} <= set(reading.catalogue.plates)


def test_the_page_explains_every_column(folder: Path) -> None:
    with TABLE.open(encoding="utf-8") as rows:
        columns = set(next(csv.reader(rows)))
    first_cells = re.findall(r"^\| ([^|]+) \|", PAGE.read_text(encoding="utf-8"), re.MULTILINE)[1:]
    assert {name.strip() for cell in first_cells for name in cell.split(",")} == columns


def test_a_dry_run_says_what_the_checker_would_say(folder: Path, tmp_path: Path) -> None:
    """The same complaints before and after: a source that does not say its rights, a term before its time."""
    table = tmp_path / "table.csv"
    table.write_text(
        TABLE.read_text(encoding="utf-8")
        .replace("https://rightsstatements.org/vocab/NoC-NC/1.0/", "")
        .replace("Spring and Summer 1926", "1805")
        .replace("slip-on", "slip-on; front opening")
    )
    dry = import_table(table, MAPPING, folder, dry_run=True)
    assert any("who may use it" in each.message for each in dry.complaints)
    import_table(table, MAPPING, folder)
    said = [each for each in read_catalogue(folder).problems if each.file in dry.files]
    assert list(dry.complaints) == said
