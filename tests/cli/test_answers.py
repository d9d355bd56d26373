"""What the command line answers, in sentences and in JSON, and how it ends."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from inperiod.cli import main, make_parser
from inperiod.importing import new_folder
from inperiod.records import Catalogue

FINDING = {
    *("term", "verdict", "frequency", "share", "sightings", "in_window", "set_aside", "first", "last"),
    *("extension", "absence_p", "not_before", "cite", "reasons"),
}
FIT = ("fit", "--garment", "day-dress", "--feature", "neckline/square", "--when", "1926")


@pytest.fixture
def run(capsys: pytest.CaptureFixture[str], demo_folder: Path, monkeypatch: pytest.MonkeyPatch) -> Any:
    """Run a command from the checkout; its exit status, standard output and standard error."""
    monkeypatch.chdir(demo_folder.parent)

    def _run(*arguments: str) -> tuple[int, str, str]:
        try:
            status = main(arguments)
        except SystemExit as ended:
            status = int(ended.code or 0)
        out, err = capsys.readouterr()
        return status, out, err

    return _run


def test_when_says_what_was_understood(run: Any) -> None:
    status, out, _ = run("when", "ca. 1885–90")
    assert status == 0
    assert "1885~/1890~" in out
    assert "1 January 1885" in out
    assert "counted as 1 January 1880 to 31 December 1895" in out


def test_when_in_json_has_the_keys_other_programs_rely_on(run: Any) -> None:
    status, out, _ = run("when", "1912-23", "--json")
    data = json.loads(out)
    assert status == 0
    assert {"input", "edtf", "earliest", "latest", "approximate", "uncertain", "widened"} <= set(data)
    # EDTF leaves the months of a season open; September to November is the convention of the project.
    assert (data["earliest"], data["latest"]) == ("1912-09-01", "1912-11-30")


def test_when_gives_the_days_before_circa_and_after_it(run: Any) -> None:
    data = json.loads(run("when", "1925~", "--json")[1])
    assert (data["earliest"], data["widened"]["earliest"]) == ("1925-01-01", "1920-01-01")
    data = json.loads(run("when", "1925~", "--json", "--circa-years", "10")[1])
    assert data["widened"] == {"earliest": "1915-01-01", "latest": "1935-12-31"}


def test_a_phrase_that_cannot_be_read_is_no_guess(run: Any) -> None:
    status, out, _ = run("when", "when granny was young", "--json")
    assert status == 1
    assert set(json.loads(out)) == {"input", "error"}
    assert run("when", "when granny was young")[0] == 1


def test_lines_are_answered_one_by_one(run: Any, tmp_path: Path) -> None:
    file = tmp_path / "phrases.txt"
    file.write_bytes("\ufeff1912\r\nnonsense\nlate 1920s".encode())
    status, out, _ = run("when", "--lines", str(file))
    answers = [json.loads(line) for line in out.splitlines()]
    assert status == 0
    assert [each["input"] for each in answers] == ["1912", "nonsense", "late 1920s"]
    assert ["error" in each for each in answers] == [False, True, False]


def test_lines_come_from_standard_input_too(demo_folder: Path) -> None:
    command = [sys.executable, "-m", "inperiod", "when", "--lines", "-"]
    ran = subprocess.run(command, input="1912\nÄ\n".encode(), capture_output=True, check=True)
    assert [json.loads(line)["input"] for line in ran.stdout.splitlines()] == ["1912", "Ä"]


@pytest.mark.parametrize(
    "arguments", [("when",), ("when", "1912", "--lines", "x"), ("when", "--lines", "/no/such")]
)
def test_when_wants_one_phrase_or_a_file(run: Any, arguments: tuple[str, ...]) -> None:
    status, out, err = run(*arguments)
    assert (status, out) == (2, "")
    assert err.startswith("inperiod: ")


def test_fit_answers_first_and_names_plates(run: Any, demo_catalogue: Catalogue) -> None:
    status, out, _ = run(*FIT)
    assert status == 0
    assert out.splitlines()[0].startswith("Day dress, 1926")
    assert "Square neck (neckline/square): " in out
    assert any(key in out for key in demo_catalogue.plates)


def test_fit_in_json_has_the_keys_other_programs_rely_on(run: Any, demo_catalogue: Catalogue) -> None:
    data = json.loads(run(*FIT, "--feature", "closure/back", "--json")[1])
    assert {"when", "garment", "features", "together"} <= set(data)
    assert {"input", "edtf", "earliest", "latest", "widened"} <= set(data["when"])
    for finding in (*data["features"], data["together"]):
        assert set(finding) >= FINDING
        assert set(finding["share"]) == {"showing", "recorded", "effective", "value", "low", "high"}
        assert set(finding["extension"]) == {"earliest", "latest"}
        assert all(plate in demo_catalogue.plates for plate in finding["cite"])
    assert [each["term"] for each in data["features"]] == ["neckline/square", "closure/back"]


def test_one_feature_has_no_together(run: Any) -> None:
    assert json.loads(run(*FIT, "--json")[1])["together"] is None


def test_sentences_and_json_say_the_same(run: Any) -> None:
    (finding,) = json.loads(run(*FIT, "--json")[1])["features"]
    words = " ".join(run(*FIT)[1].split())
    assert finding["verdict"].upper() in words
    assert all(" ".join(reason.split()) in words for reason in finding["reasons"])


@pytest.mark.parametrize(
    "typed", ["neckline/square", "square neck", "Neckline/Square neck", "SQUARE", "neckline/square-neck"]
)
def test_features_go_by_any_of_their_names(run: Any, typed: str) -> None:
    status, out, err = run("fit", "--garment", "Day Dress", "--feature", typed, "--when", "1926", "--json")
    assert (status, err and json.loads(out)["features"][0]["term"]) in ((0, ""), (0, "neckline/square"))
    assert json.loads(out)["garment"] == "day-dress"
    assert json.loads(out)["features"][0]["term"] == "neckline/square"


def test_every_other_name_in_the_vocabulary_leads_to_its_term_or_is_said_to_be_ambiguous(
    demo_catalogue: Catalogue,
) -> None:
    from inperiod.records.finding import NotFound, find_feature

    found = ambiguous = names = 0
    for term in demo_catalogue.vocabulary.terms.values():
        for name in term.names if term.facet != "garment" else ():
            names += 1
            try:
                key = find_feature(demo_catalogue.vocabulary, f"{term.facet}/{name.name}")
            except NotFound as error:
                ambiguous += term.key in str(error)
            else:
                other = demo_catalogue.vocabulary.terms[key]
                assert key == term.key or name.name.casefold() in (other.label.casefold(), other.id)
                found += 1
    assert found > 100
    assert found + ambiguous == names
    assert ambiguous < found / 4


@pytest.mark.parametrize(
    ("change", "says"),
    [
        (("--feature", "necline/square"), "Did you mean neckline/square?"),
        (("--feature", "neckline/sqare"), "Did you mean neckline/square"),
        (("--feature", "sqare neck"), "Did you mean neckline/square"),
        (("--garment", "day-dres"), "Did you mean day-dress"),
        (("--when", "soonish"), "cannot be read"),
        (("--worn-for", "-1"), "0 to 200"),
        (("--worn-for", "nan"), "0 to 200"),
        (("--kind", "catalogue"), "trade-catalogue"),
        (("--grades", "D"), "invalid choice"),
        (("no-such-folder",), "there is no folder no-such-folder"),
        (("--jsn",), "unrecognized"),
    ],
)
def test_a_slip_in_the_question_is_named_with_what_was_meant(
    run: Any, change: tuple[str, ...], says: str
) -> None:
    status, out, err = run(*FIT, *change)
    assert (status, out) == (2, "")
    assert says in err


def test_an_unknown_place_is_noted_beside_the_answer(run: Any) -> None:
    status, out, err = run(*FIT, "--place", "Atlantis")
    assert status == 0
    assert "no source here is from Atlantis" in err
    assert "UNRECORDED" in out


def test_a_qualified_window_is_widened(run: Any) -> None:
    exact = json.loads(run(*FIT[:-1], "1926", "--json")[1])["features"][0]["documents_in_window"]
    about = json.loads(run(*FIT[:-1], "1926~", "--json")[1])["features"][0]["documents_in_window"]
    assert about > exact


def test_timeline_in_json_has_the_keys_other_programs_rely_on(run: Any) -> None:
    data = json.loads(run("timeline", "--garment", "dress", "--facet", "neckline", "--json")[1])
    assert {"decades", "rows", "recorded", "left_out"} <= set(data)
    for row in data["rows"]:
        assert {"term", "weights", "documents"} <= set(row)
        assert len(row["weights"]) == len(row["documents"]) == len(data["decades"]) == len(data["recorded"])


def test_timeline_is_a_table_and_says_what_was_not_counted(run: Any) -> None:
    status, out, _ = run("timeline", "--garment", "dress", "--facet", "Neckline")
    assert status == 0
    assert "1920s" in out
    assert "square neck" in out
    assert "Not counted: " in out


def test_an_empty_timeline_says_so(run: Any, tmp_path: Path) -> None:
    new_folder(tmp_path / "new")
    status, out, _ = run("timeline", "--garment", "fan", "--facet", "fabric", str(tmp_path / "new"))
    assert status == 0
    assert "Nothing that is counted records it." in out


def test_check_ends_well_with_warnings_alone_and_with_one_where_there_is_an_error(
    run: Any, tmp_path: Path
) -> None:
    folder = tmp_path / "new"
    new_folder(folder)
    assert run("check", str(folder))[:2] == (0, "1 source, 1 plate: 0 errors, 0 warnings.\n")
    file = folder / "sources/example-source.yaml"
    file.write_text(file.read_text(encoding="utf-8").replace("rights:", "# rights:"), encoding="utf-8")
    assert run("check", str(folder))[0] == 0
    file.write_text(
        file.read_text(encoding="utf-8").replace("neckline/square", "neckline/sqare"), encoding="utf-8"
    )
    line = file.read_text(encoding="utf-8").splitlines().index("      - neckline/sqare") + 1
    status, out, _ = run("check", str(folder))
    assert status == 1
    assert f"{file.as_posix()}:{line}:9: error: " in out
    assert (
        "square"
        in out.splitlines()[out.splitlines().index(next(x for x in out.splitlines() if "error: " in x)) + 1]
    )


def test_check_in_json_names_every_problem(run: Any, tmp_path: Path) -> None:
    folder = tmp_path / "new"
    new_folder(folder)
    (folder / "sources/b.yaml").write_text("title: B\nkind: book\ndate: soon\n", encoding="utf-8")
    status, out, _ = run("check", str(folder), "--json")
    data = json.loads(out)
    assert status == 1
    assert {"sources", "plates", "problems"} == set(data)
    assert all(
        {"file", "line", "column", "severity", "message", "hint"} == set(each) for each in data["problems"]
    )
    assert {(each["file"], each["line"]) for each in data["problems"] if each["severity"] == "error"} == {
        ("sources/b.yaml", 2),
        ("sources/b.yaml", 3),
    }


def test_an_answer_from_records_with_errors_says_so(run: Any, tmp_path: Path) -> None:
    folder = tmp_path / "new"
    new_folder(folder)
    (folder / "sources/b.yaml").write_text("title: [\n", encoding="utf-8")
    status, _, err = run(*FIT, str(folder))
    assert status == 0
    assert (
        f"1 error in the records; the answer rests on what could be read. See: inperiod check {folder}" in err
    )


def test_the_demonstration_catalogue_has_no_errors(run: Any) -> None:
    status, out, _ = run("check", "catalogue")
    assert (status, ", 0 errors" in out or ": 0 errors" in out) == (0, True), out


@pytest.mark.parametrize("form", ["text", "html", "csl-json", "bibtex", "biblatex", "ris"])
def test_a_plate_is_cited_in_every_form(run: Any, demo_catalogue: Catalogue, form: str) -> None:
    key = next(iter(demo_catalogue.plates))
    status, out, _ = run("cite", key, "--format", form)
    assert status == 0
    assert out.strip()


def test_an_unknown_plate_or_style_is_named_with_what_there_is(run: Any, demo_catalogue: Catalogue) -> None:
    key = next(iter(demo_catalogue.plates))
    status, _, err = run("cite", key + "x")
    assert (status, f"Did you mean {key}" in err) == (2, True)
    status, _, err = run("cite", key, "--style", "none")
    assert (status, "chicago-note" in err) == (2, True)


def test_without_a_folder_the_current_one_or_catalogue_is_taken(
    run: Any, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    new_folder(tmp_path / "catalogue")
    for place in (tmp_path, tmp_path / "catalogue"):
        monkeypatch.chdir(place)
        assert run("check")[1].startswith("1 source, ")
    (tmp_path / "none").mkdir()
    monkeypatch.chdir(tmp_path / "none")
    status, _, err = run("check")
    assert (status, "inperiod new my-research" in err) == (2, True)


def commands() -> list[str]:
    (actions,) = [each for each in make_parser()._actions if each.dest not in ("help", "version")]
    return list(actions.choices or ())


@pytest.mark.parametrize("command", commands())
def test_every_command_explains_itself_with_examples(run: Any, command: str) -> None:
    status, out, _ = run(command, "--help")
    assert status == 0
    examples = [each for each in out.splitlines() if each.startswith("  inperiod " + command)]
    assert "examples:" in out
    assert examples


@pytest.mark.parametrize("arguments", [(), ("fit",), ("nonsense",), ("check", "a", "b")])
def test_a_command_not_understood_ends_with_two_and_says_where_help_is(
    run: Any, arguments: tuple[str, ...]
) -> None:
    status, out, err = run(*arguments)
    assert (status, out) == (2, "")
    assert "--help" in err


def test_a_reader_that_goes_away_is_no_error(demo_folder: Path) -> None:
    command = f'"{sys.executable}" -m inperiod when --lines - | head -n 1; echo "${{PIPESTATUS[0]}}"'
    lines = "1912\n" * 50_000
    ran = subprocess.run(["bash", "-c", command], input=lines, capture_output=True, text=True, check=True)
    assert ran.stdout.splitlines()[-1] == "0"
    assert ran.stderr == ""


def test_letters_a_terminal_lacks_do_not_end_the_answer(demo_folder: Path) -> None:
    command = [sys.executable, "-m", "inperiod", "when", "ca. 1885–90"]
    ran = subprocess.run(
        [*command, "--json"], env={"PYTHONIOENCODING": "ascii"}, capture_output=True, check=True
    )
    assert json.loads(ran.stdout)["input"] == "ca. 1885–90"
    assert subprocess.run(command, env={"PYTHONIOENCODING": "ascii"}, capture_output=True, check=True).stdout


def test_nothing_but_the_answer_is_printed_where_output_is_piped(demo_folder: Path) -> None:
    command = [sys.executable, "-m", "inperiod", "check", str(demo_folder), "--json"]
    ran = subprocess.run(command, capture_output=True, check=False)
    assert ran.stderr == b""
    json.loads(ran.stdout)
