"""A spreadsheet becomes source files: nothing is lost silently, nothing of anybody's is overwritten."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from inperiod.importing import CannotImport, ImportReport, import_table, new_folder
from inperiod.importing.ledger import LEDGER_FILE
from inperiod.records import Source, read_catalogue, tidied_files

MAPPING = """\
id: "list-{no}"
source:
  {title: "{title}", kind: trade-catalogue, date: "{date}", date_basis: printed, publisher: {place: "{town}"}}
plate: {id: fig, caption: "{text}"}
garment: "{garment}"
features:
  - {column: neck, facet: neckline}
  - read: [text]
    rules:
      - {words: [velvet], term: fabric/velvet, unless: [velvet ribbon]}
      - {words: [pin tuck], term: fullness/pin-tucks, at: bodice, reading: seen}
"""
HEADER = "no,title,date,town,garment,neck,text\n"
ROW = "12,Autumn List,autumn 1912,London,day-dress,square,In velvet; pin-tucked? No: pin tucks\n"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    new_folder(tmp_path / "research")
    (tmp_path / "research/sources/example-source.yaml").unlink()
    return tmp_path / "research"


def take(folder: Path, table: str | bytes, mapping: str = MAPPING, *, dry_run: bool = False) -> ImportReport:
    file, map_file = folder.parent / "table.csv", folder.parent / "mapping.yaml"
    file.write_bytes(table if isinstance(table, bytes) else table.encode())
    map_file.write_text(mapping, encoding="utf-8")
    return import_table(file, map_file, folder, dry_run=dry_run)


def sources(folder: Path) -> dict[str, Source]:
    reading = read_catalogue(folder)
    assert not reading.errors
    return dict(reading.catalogue.sources)


def test_what_an_import_writes_is_tidy(folder: Path) -> None:
    take(
        folder, HEADER + ROW.replace("In velvet", "\"In velvet, 'x': \n y").replace("pin tucks", 'pin tucks"')
    )
    assert sources(folder)
    assert tidied_files(folder) == ([], [])


def tree(folder: Path) -> dict[str, bytes]:
    return {str(each.relative_to(folder)): each.read_bytes() for each in folder.rglob("*") if each.is_file()}


def test_a_row_becomes_a_source_with_its_plate(folder: Path) -> None:
    report = take(folder, HEADER + ROW)
    assert [each.outcome for each in report.rows] == ["new"]
    source = sources(folder)["list-12"]
    assert (source.title, source.kind, source.publisher.place) == ("Autumn List", "trade-catalogue", "London")
    assert source.date is not None
    assert (source.date.text, source.date_printed) == ("1912-23", "autumn 1912")
    (plate,) = source.plates
    assert (plate.key, plate.garment) == ("list-12/fig", "day-dress")
    assert [(each.term, each.reading, each.at) for each in plate.features] == [
        ("neckline/square", "read", None),
        ("fabric/velvet", "read", None),
        ("fullness/pin-tucks", "seen", "bodice"),
    ]


def test_running_it_twice_changes_nothing(folder: Path) -> None:
    take(folder, HEADER + ROW)
    before = tree(folder)
    report = take(folder, HEADER + ROW)
    assert [each.outcome for each in report.rows] == ["same"]
    assert tree(folder) == before


def test_a_changed_table_changes_what_the_import_wrote(folder: Path) -> None:
    take(folder, HEADER + ROW)
    report = take(folder, HEADER + ROW.replace("Autumn List", "Autumn and Winter List"))
    assert [each.outcome for each in report.rows] == ["changed"]
    assert sources(folder)["list-12"].title == "Autumn and Winter List"


@pytest.mark.parametrize("forget", [False, True])
def test_a_hand_edit_is_never_overwritten(folder: Path, forget: bool) -> None:
    take(folder, HEADER + ROW)
    file = folder / "sources/list-12.yaml"
    file.write_text(file.read_text(encoding="utf-8") + "note: my own\n", encoding="utf-8")
    if forget:
        (folder / LEDGER_FILE).unlink()
    edited = file.read_bytes()
    for table in (HEADER + ROW, HEADER + ROW.replace("London", "Leeds")):
        report = take(folder, table)
        assert [each.outcome for each in report.rows] == ["kept"]
        assert "edited by hand" in report.rows[0].remarks[-1]
        assert file.read_bytes() == edited


def test_a_file_someone_wrote_before_the_first_import_is_left_alone(folder: Path) -> None:
    file = folder / "sources/list-12.yaml"
    file.write_text("title: Mine\nkind: other\n", encoding="utf-8")
    assert take(folder, HEADER + ROW).count("kept") == 1
    assert file.read_text(encoding="utf-8") == "title: Mine\nkind: other\n"


def test_a_file_that_was_deleted_is_made_anew(folder: Path) -> None:
    take(folder, HEADER + ROW)
    (folder / "sources/list-12.yaml").unlink()
    assert take(folder, HEADER + ROW).count("new") == 1


def test_a_row_that_left_the_table_keeps_its_file_and_is_named(folder: Path) -> None:
    take(folder, HEADER + ROW + ROW.replace("12,", "13,", 1))
    report = take(folder, HEADER + ROW)
    assert report.left == ("sources/list-13.yaml",)
    assert "list-13" in sources(folder)


def test_a_dry_run_reports_the_same_and_writes_nothing(folder: Path) -> None:
    before = tree(folder)
    dry = take(folder, HEADER + ROW, dry_run=True)
    assert tree(folder) == before
    wet = take(folder, HEADER + ROW)
    assert dry.rows == wet.rows
    assert dry.dry_run


@pytest.mark.parametrize(
    ("row", "reason"),
    [
        ("12,T,some day soon,,day-dress,,", "the date “some day soon” cannot be read"),
        (",T,1912,,day-dress,,", "nothing to make an id from"),
        ("?!,T,1912,,day-dress,,,,,", None),
        ("12,T,1912,,day-dres,,", "Did you mean day-dress"),
        ("12,T,1912,,,,", "does not say what garment"),
        ("12,T,1912,,day-dress,,,slipped", "8 cells"),
        ("12,,1912,,day-dress,,", "must have the field title"),
        ("12,T,1912-13-45,,day-dress,,", "cannot be read"),
    ],
)
def test_a_row_that_cannot_be_taken_says_why(folder: Path, row: str, reason: str | None) -> None:
    report = take(folder, HEADER + row + "\n" + ROW.replace("12,", "99,", 1))
    refused = [each for each in report.rows if each.outcome == "not taken"]
    if reason is None:
        assert [each.plate for each in report.rows] == ["list/fig", "list-99/fig"]
        return
    assert [each.line for each in refused] == [2]
    assert reason in refused[0].reasons[0]
    assert list(sources(folder)) == ["list-99"]


def test_two_rows_never_share_an_id_unnoticed(folder: Path) -> None:
    report = take(
        folder, HEADER + ROW + ROW.replace("12,", '"1-2",', 1) + ROW + ROW.replace("12,", '"1/2",', 1)
    )
    assert [each.outcome for each in report.rows] == ["new", "new", "not taken", "not taken"]
    assert "is that of line 2 too" in report.rows[2].reasons[0]
    assert "made from “list-1-2”" in report.rows[3].reasons[0]


def test_rows_of_one_document_can_be_its_plates(folder: Path) -> None:
    mapping = MAPPING.replace("id: fig", 'id: "{text}"') + "rows: plates\n"
    rows = "".join(
        f"12,List,1912,{town},day-dress,,{text}\n" for town, text in [("A", "p1"), ("A", ""), ("B", "p3")]
    )
    report = take(folder, HEADER + rows, mapping)
    assert [each.plate for each in report.rows] == ["list-12/p1", "list-12/p2", "list-12/p3"]
    assert "publisher differs from line 2" in report.rows[2].remarks[0]
    assert len(sources(folder)["list-12"].plates) == 3


def test_a_plate_id_is_used_once_in_a_source(folder: Path) -> None:
    mapping = MAPPING.replace("id: fig", 'id: "{text}"') + "rows: plates\n"
    report = take(folder, HEADER + "12,List,1912,,day-dress,,p1\n12,List,1912,,day-dress,,P1\n", mapping)
    assert [each.outcome for each in report.rows] == ["new", "not taken"]


def test_undated_is_not_unreadable(folder: Path) -> None:
    report = take(
        folder,
        HEADER + "1,T,n.d.,,day-dress,,\n2,T,,,day-dress,,\n3,T,who knows,,day-dress,,\n",
        MAPPING + "dates: {who knows: undated}\n",
    )
    assert [each.outcome for each in report.rows] == ["new"] * 3
    assert [each.date for each in sources(folder).values()] == [None] * 3
    assert sources(folder)["list-1"].date_printed == "n.d."


def test_a_date_only_the_mapping_can_know_is_taken_from_it(folder: Path) -> None:
    take(folder, HEADER + "1,T,Jubilee year,,day-dress,,\n", MAPPING + "dates: {Jubilee year: 1897}\n")
    source = sources(folder)["list-1"]
    assert source.date is not None
    assert (source.date.text, source.date_printed) == ("1897", "Jubilee year")


def test_words_are_whole_words_in_any_case_and_number_unless_another_is_there(folder: Path) -> None:
    texts = ["VELVETS.", "velveteen", "velvet with velvet ribbon", "Pin-Tucks", "pin  tuck", "pintucks"]
    take(folder, HEADER + "".join(f"{i},T,1912,,day-dress,,{text}\n" for i, text in enumerate(texts)))
    found = [[each.term for each in source.plates[0].features] for source in sources(folder).values()]
    assert found == [["fabric/velvet"], [], [], ["fullness/pin-tucks"], ["fullness/pin-tucks"], []]


def test_terms_are_found_by_any_of_their_names(folder: Path) -> None:
    report = take(folder, HEADER + "1,T,1912,,Day Dress,neckline/square; no such neck,\n")
    (plate,) = sources(folder)["list-1"].plates
    assert [each.term for each in plate.features] == ["neckline/square"]
    assert "“no such neck” in neck was left out" in report.rows[0].remarks[0]


def test_only_one_term_of_an_exclusive_facet_is_taken(folder: Path) -> None:
    report = take(folder, HEADER + "1,T,1912,,day-dress,square; round,\n")
    assert report.rows[0].remarks == (
        "neckline/round was left out: neckline/square is there and only one can be",
    )


def test_a_term_that_cannot_apply_is_left_out_and_named(folder: Path) -> None:
    report = take(folder, HEADER + "1,T,1912,,trousers,square,\n")
    assert report.rows[0].remarks == ("neckline/square was left out: it does not apply to trousers",)


def test_rows_can_be_left_out_by_words(folder: Path) -> None:
    rule = "leave_out: [{read: [text], words: [furnishing], because: not dress}]\n"
    report = take(folder, HEADER + "1,T,1912,,other,,Furnishing fabric\n", MAPPING + rule)
    assert report.rows[0].reasons == ("the mapping leaves it out: not dress",)


def test_a_cell_that_looks_like_a_formula_is_plain_text(folder: Path) -> None:
    take(folder, HEADER + '1,"=HYPERLINK(""x"")",1912,@town,day-dress,,+1-1\n')
    source = sources(folder)["list-1"]
    assert (source.title, source.publisher.place) == ('=HYPERLINK("x")', "@town")
    assert source.plates[0].caption == "+1-1"


def test_text_full_of_yaml_signs_comes_through_unchanged(folder: Path) -> None:
    title = "no: - [x] {y} # z & *w !v 'u' | > % ` \\ “curly”"
    take(folder, HEADER + f'1,"{title}",1912,,day-dress,,"two\nlines: here"\n')
    source = sources(folder)["list-1"]
    assert (source.title, source.plates[0].caption) == (title, "two\nlines: here")


@pytest.mark.parametrize(
    ("encoded", "noted"),
    [
        ((HEADER + ROW.replace("London", "Zürich")).encode("utf-8-sig"), None),
        (
            (HEADER + ROW.replace("London", "Zürich"))
            .replace(",", ";")
            .replace("velvet;", "velvet,")
            .encode(),
            "semicolons",
        ),
        ((HEADER + ROW.replace("London", "Zürich")).replace(",", "\t").encode(), "tabs"),
        ((HEADER + ROW.replace("London", "Zürich")).encode("cp1252"), "Windows-1252"),
        ((HEADER + ROW.replace("London", "Zürich")).encode("utf-16"), "UTF-16"),
        ((HEADER + ROW.replace("London", "Zürich")).replace("\n", "\r\n").encode(), None),
        (("\n,,\n" + HEADER + "\n" + ROW.replace("London", "Zürich") + ",,,,,,\n").encode(), None),
    ],
)
def test_files_of_other_programs_are_read_and_what_was_assumed_is_said(
    folder: Path, encoded: bytes, noted: str | None
) -> None:
    report = take(folder, encoded)
    assert [each.outcome for each in report.rows] == ["new"]
    assert sources(folder)["list-12"].publisher.place == "Zürich"
    assert (noted is None and not report.notes) or (noted is not None and noted in report.notes[0])


@pytest.mark.parametrize(
    ("table", "says"),
    [
        (b"", "is empty"),
        (b"PK\x03\x04rest", "is a spreadsheet file, not CSV"),
        (b"a,a\n1,2\n", "more than one column called a"),
        (b"no,title,date,town,garment,neck\n", "text"),
        (b"no,title,date,town,garment,necc,text\n", "did you mean necc?"),
        (HEADER.encode() + b"1,a\0b,1912,,,,\n", "NUL"),
    ],
)
def test_a_table_that_cannot_be_used_says_why(folder: Path, table: bytes, says: str) -> None:
    with pytest.raises(CannotImport, match=says.replace("?", r"\?")):
        take(folder, table)


@pytest.mark.parametrize(
    ("mapping", "says"),
    [
        ("", "empty"),
        ("id: x\n", "source"),
        (
            MAPPING.replace("fabric/velvet", "fabric/velvt"),
            "mapping.yaml:10:33: term: “fabric/velvt” is not in the vocabulary. Did you mean fabric/velvet",
        ),
        (MAPPING.replace("facet: neckline", "facet: necline"), "Did you mean neckline"),
        (MAPPING.replace("kind:", "knid:"), "Did you mean kind"),
        (MAPPING + "dates: {soon: 19x}\n", "no date in EDTF"),
        (MAPPING.replace("column: neck, facet: neckline", "facet: neckline"), "says two things at once"),
        (MAPPING + "rows: cells\n", "rows"),
        (MAPPING.replace("plate:", "\tplate:"), "tab"),
        (MAPPING.replace("garment: ", "garments: "), "garment"),
    ],
)
def test_a_mapping_that_cannot_be_used_says_where_and_why(folder: Path, mapping: str, says: str) -> None:
    with pytest.raises(CannotImport, match="mapping cannot be used") as error:
        take(folder, HEADER + ROW, mapping)
    assert says in str(error.value)


def test_no_cell_can_name_a_path(folder: Path) -> None:
    outside = set(folder.parent.iterdir()) | {folder.parent / "table.csv", folder.parent / "mapping.yaml"}
    take(
        folder, HEADER + ROW.replace("12,", '"../../../etc/evil",', 1) + ROW.replace("12,", '"C:\\evil",', 1)
    )
    assert set(folder.parent.iterdir()) == outside
    assert sorted(sources(folder)) == ["list-c-evil", "list-etc-evil"]


def test_a_folder_that_leads_elsewhere_is_refused(folder: Path, tmp_path: Path) -> None:
    elsewhere = tmp_path / "elsewhere"
    elsewhere.mkdir()
    (folder / "sources").rmdir()
    (folder / "sources").symlink_to(elsewhere)
    with pytest.raises(CannotImport, match="leads out of the folder"):
        take(folder, HEADER + ROW)


def test_the_record_of_an_import_is_plain_json(folder: Path) -> None:
    take(folder, HEADER + ROW)
    assert list(json.loads((folder / LEDGER_FILE).read_text(encoding="utf-8"))["written"]) == [
        "sources/list-12.yaml"
    ]


def test_dates_that_the_settings_do_not_weigh_are_pointed_out(folder: Path) -> None:
    weaker = MAPPING.replace("date_basis: printed", "date_basis: institution")
    (note,) = take(folder, HEADER + ROW, weaker).notes
    assert "1 of 1 dated sources will not be counted: their dates rest on institution" in note
    settings = folder / "inperiod.yaml"
    settings.write_text(
        settings.read_text(encoding="utf-8").replace("grades: A ", "grades: AB "), encoding="utf-8"
    )
    assert take(folder, HEADER + ROW, weaker).notes == ()
