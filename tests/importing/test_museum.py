"""Real input: all textiles and costume of one museum's data release, from table to answers.

Source: collection data release of the Carnegie Museum of Art, Pittsburgh (CC0 1.0), beside the checkout.
"""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from inperiod.dating import day_number
from inperiod.evidence import Question, Window, answer, gather_facts, timeline
from inperiod.importing import ImportReport, import_table, new_folder
from inperiod.records import Catalogue, Reading, read_catalogue

MAPPING = Path(__file__).parent / "museum-mapping.yaml"
CENTURY_18 = Window(day_number(1700), day_number(1800) - 1)


@pytest.fixture(scope="module")
def table(shared: Path) -> Path:
    return shared / "data/museum-dates/textiles.csv"


@pytest.fixture(scope="module")
def rows(table: Path) -> list[dict[str, str]]:
    with table.open(encoding="utf-8-sig", newline="") as stream:
        return list(csv.DictReader(stream))


@pytest.fixture(scope="module")
def imported(table: Path, tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, ImportReport]:
    folder = tmp_path_factory.mktemp("museum") / "museum"
    new_folder(folder)
    (folder / "sources/example-source.yaml").unlink()
    return folder, import_table(table, MAPPING, folder)


@pytest.fixture(scope="module")
def reading(imported: tuple[Path, ImportReport]) -> Reading:
    return read_catalogue(imported[0])


@pytest.fixture(scope="module")
def catalogue(reading: Reading) -> Catalogue:
    return reading.catalogue


def test_every_row_is_taken(imported: tuple[Path, ImportReport], rows: list[dict[str, str]]) -> None:
    report = imported[1]
    assert len(rows) == 563
    assert len(report.rows) == report.count("new") == 563
    assert len({each.plate for each in report.rows}) == 563


def test_a_second_run_changes_nothing(imported: tuple[Path, ImportReport], table: Path) -> None:
    folder, _ = imported
    before = {each: each.stat().st_mtime_ns for each in folder.rglob("*")}
    assert import_table(table, MAPPING, folder).count("same") == 563
    assert {each: each.stat().st_mtime_ns for each in folder.rglob("*")} == before


def test_the_checker_finds_no_error(reading: Reading) -> None:
    assert reading.errors == ()


def test_every_object_is_there_as_the_museum_describes_it(
    catalogue: Catalogue, rows: list[dict[str, str]]
) -> None:
    by_accession = {each.held_by.accession: each for each in catalogue.sources.values()}
    assert set(by_accession) == {row["accession_number"] for row in rows}
    for row in rows:
        source = by_accession[row["accession_number"]]
        assert (source.kind, source.date_basis) == ("extant", "institution")
        assert source.title == " ".join(row["title"].split())
        assert source.held_by.url == (row["web_url"] or None)


def test_undated_rows_are_undated_and_counted_nowhere(
    catalogue: Catalogue, rows: list[dict[str, str]]
) -> None:
    wanted = {row["accession_number"] for row in rows if row["creation_date"] in ("", "no date")}
    undated = {each.held_by.accession for each in catalogue.sources.values() if each.date is None}
    assert undated == wanted
    assert len(wanted) == 20
    facts = gather_facts(catalogue)
    assert sum(each.days is None for each in facts.documents) == 20


def test_what_title_and_medium_say_is_read_and_nothing_else(
    catalogue: Catalogue, rows: list[dict[str, str]]
) -> None:
    text = {row["accession_number"]: f"{row['title']} {row['medium']}".lower() for row in rows}
    for word, term in [
        ("velvet", "fabric/velvet"),
        ("satin", "fabric/satin"),
        ("damask", "fabric/damask"),
        ("lace", "fabric/lace-cloth"),
    ]:
        said = {number for number, words in text.items() if word in words.replace("necklace", "")}
        found = {
            source.held_by.accession
            for source in catalogue.sources.values()
            for feature in source.plates[0].features
            if feature.term == term and feature.reading == "read"
        }
        assert found == said, word


@pytest.mark.parametrize(
    ("title", "garment"),
    [
        ("Fan", "fan"),
        ("Fan Mount", "fan"),
        ("Pleated Fan", "accessory"),
        ("Collar (Fichu)", "collar-piece"),
        ("Cuffs", "cuff-piece"),
        ("Textile fragment", "textile"),
        ("Edging (Dress Trim)", "textile"),
        ("Two-piece dress with belt", "dress"),
        ("Dress Fronts", "other"),
        ("Half Lappets", "headwear"),
        ("Stole", "other"),
        ("Stole or Mantilla", "wrap"),
        ("Textile fragment, Maniple/ Stole End", "other"),
        ("Sandals, Pair", "accessory"),
    ],
)
def test_garments_are_what_the_titles_say(catalogue: Catalogue, title: str, garment: str) -> None:
    found = {each.plates[0].garment for each in catalogue.sources.values() if each.title == title}
    assert found == {garment}


def test_velvet_in_the_eighteenth_century_is_answered_with_what_was_not_counted(catalogue: Catalogue) -> None:
    facts = gather_facts(catalogue)
    (finding,) = answer(facts, Question("textile", ("fabric/velvet",), CENTURY_18, grades="AB")).findings
    assert finding.verdict == "attested"
    not_counted = {each.reason: each.recording for each in finding.left_out}
    assert not_counted["wide"] > 100
    assert not_counted["undated"] > 0
    assert any("Not counted" in each and "spans more than 12 years" in each for each in finding.reasons)
    assert set(finding.cite) <= set(catalogue.plates)


def test_the_museums_dates_alone_count_for_nothing_where_grade_a_is_asked(catalogue: Catalogue) -> None:
    (finding,) = answer(gather_facts(catalogue), Question("textile", ("fabric/velvet",), CENTURY_18)).findings
    assert finding.verdict == "unrecorded"
    assert finding.sightings == 0


def test_a_timeline_of_fabrics_has_velvet_in_it(catalogue: Catalogue) -> None:
    line = timeline(gather_facts(catalogue), "textile", "fabric", grades="AB")
    velvet = next(row for row in line.rows if row.term == "fabric/velvet")
    assert sum(velvet.documents) > 10
    assert all(w <= n + 1e-9 for w, n in zip(velvet.weights, line.recorded, strict=True))


def test_the_site_of_the_import_is_built(catalogue: Catalogue, tmp_path: Path) -> None:
    from inperiod.publishing import build

    report = build(catalogue, tmp_path / "public")
    assert (report.sources, report.plates) == (563, 563)
    assert report.first.is_file()
