"""``inperiod add``: what is typed at the questions is what the file says, and nothing finished is lost."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path

import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from inperiod.cli import main
from inperiod.importing import new_folder
from inperiod.importing.writing import source_yaml
from inperiod.recording import CannotAdd, Enough, Unclear, add, read_line, with_plates
from inperiod.records import read_catalogue
from inperiod.records.model import Catalogue, Vocabulary
from inperiod.records.tidying import tidy

SOURCE = "River List|trade|Autumn and Winter 1912-13||A draper|Leeds|My shelf||1-48|".split("|")
FROCK = "day dress|14|3|2207||square neck|lawn read|no collar|sleeve ?||Lawn.|8/11|".split("|")
BLOUSE = ["blouse", "", "4", "", "", "v neck", "", "", "", ""]


class Typed:
    """A terminal at which somebody has typed these lines; it ends after the last."""

    def __init__(self, *lines: str) -> None:
        self.lines: Iterator[str] = iter(lines)
        self.said: list[str] = []
        self.offered: dict[str, Sequence[str]] = {}

    def ask(self, question: str, usual: str = "", words: Sequence[str] = ()) -> str:
        self.offered[question] = words
        line = next(self.lines, None)
        if line is None:
            raise Enough
        return line or usual

    def say(self, text: str) -> None:
        self.said.append(text)


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    new_folder(tmp_path / "mine")
    for file in (tmp_path / "mine" / "sources").iterdir():
        file.unlink()
    return tmp_path / "mine"


@pytest.fixture(scope="module")
def vocabulary(demo_catalogue: Catalogue) -> Vocabulary:
    return demo_catalogue.vocabulary


def test_what_is_typed_is_what_the_file_says(folder: Path) -> None:
    terminal = Typed(*SOURCE, *FROCK, *BLOUSE, "")
    added = add(folder, terminal)
    assert (added.file, added.plates) == ("sources/river-list-1912.yaml", 2)
    data = (folder / added.file).read_bytes()
    assert tidy(data) == data
    record = yaml.load(data, yaml.BaseLoader)
    assert record["date"] == "1912-23/1912-24"
    assert record["date_printed"] == "Autumn and Winter 1912-13"
    frock, blouse = record["plates"]
    assert frock["features"] == [
        "neckline/square",
        {"term": "fabric/lawn", "reading": "read"},
        {"facet": "collar", "none": "true"},
        {"facet": "sleeve", "not_visible": "true"},
    ]
    assert frock["price"] == {"amount": "8/11", "currency": "GBP"}
    assert (blouse["id"], blouse["locator"]["page"]) == ("p14-4", "14")
    assert not [each for each in read_catalogue(folder).problems if each.severity == "error"]


def test_the_reading_of_a_date_is_shown_and_an_unreadable_one_asked_again(folder: Path) -> None:
    terminal = Typed("A list", "trade", "the year dot", "ca. 1913", *SOURCE[3:], *FROCK)
    add(folder, terminal)
    assert any("1913~" in each and "about 1913" in each for each in terminal.said)


def test_stopping_in_the_middle_loses_the_unfinished_plate_alone(folder: Path) -> None:
    for typed in range(len(BLOUSE)):
        for file in (folder / "sources").iterdir():
            file.unlink()
        added = add(folder, Typed(*SOURCE, *FROCK, *BLOUSE[:typed]))
        assert added.plates == 1
        assert list(read_catalogue(folder).catalogue.plates) == ["river-list-1912/p14-3"]


def test_a_source_that_is_there_is_added_to_with_its_comments(folder: Path) -> None:
    file = folder / "sources" / "old.yaml"
    file.write_text(
        "# kept by hand\ntitle: Old list\nkind: magazine-issue\ndate: 1911   # on the cover\n"
        "date_basis: printed\nplates:\n  - id: p1   # the best of them\n    garment: blouse\n"
        "    features: [neckline/v]\n\nnote: The last word.\n"
    )
    assert add(folder, Typed("old", *FROCK)).plates == 1
    text = file.read_text()
    for kept in ("# kept by hand", "# on the cover", "# the best of them", "note: The last word."):
        assert kept in text
    assert [each.id for each in read_catalogue(folder).catalogue.sources["old"].plates] == ["p1", "p14-3"]


def test_names_for_completion_are_those_the_garment_can_have(folder: Path) -> None:
    terminal = Typed(*SOURCE, "blouse", "1", "", "", "", "")
    add(folder, terminal)
    offered = terminal.offered["Feature (Enter when there are no more)"]
    assert "square neck" in offered
    assert not [name for name in offered if "train" in name.split()]


@pytest.mark.parametrize(
    ("line", "feature"),
    [
        ("square neck", "neckline/square"),
        ("sq n", "neckline/square"),
        ("neckline/square", "neckline/square"),
        (
            "insertion @hem 1 in read",
            {"term": "trim/insertion", "at": "hem", "width": "1 in", "reading": "read"},
        ),
        ('insertion at hem 1/2" seen', {"term": "trim/insertion", "at": "hem", "width": "1/2 in"}),
        ("insertion x3 #white", {"term": "trim/insertion", "count": 3, "colour": "white"}),
        ("no collar", {"facet": "collar", "none": True}),
        ("collar none", {"facet": "collar", "none": True}),
        ("sleeve ?", {"facet": "sleeve", "not_visible": True}),
        (
            "square neck inferred; the text is torn",
            {"term": "neckline/square", "reading": "inferred", "note": "the text is torn"},
        ),
    ],
)
def test_a_line_is_read(line: str, feature: object, vocabulary: Vocabulary) -> None:
    assert read_line(line, vocabulary, "day-dress") == feature


@pytest.mark.parametrize(
    ("line", "near"),
    [
        ("sqare neck", "neckline/square"),
        ("insertion @hme", "hem"),
        ("no colar", "collar"),
        ("", "called"),
        ("read", "called"),
    ],
)
def test_a_line_that_is_no_feature_says_what_comes_near(line: str, near: str, vocabulary: Vocabulary) -> None:
    with pytest.raises(Unclear, match=near):
        read_line(line, vocabulary, "day-dress")


@settings(max_examples=200, deadline=None)
@given(line=st.text(max_size=60))
def test_any_line_is_read_or_refused(line: str, demo_catalogue: Catalogue) -> None:
    try:
        feature = read_line(line, demo_catalogue.vocabulary, "day-dress")
    except Unclear:
        return
    assert feature


def test_plates_go_into_every_demonstration_source(demo_catalogue: Catalogue) -> None:
    """What was there reads as before, line for line, and the new plate stands last."""
    plate = {"id": "new-one", "garment": "blouse", "features": ["neckline/v"]}
    for source in demo_catalogue.sources:
        before = tidy((demo_catalogue.folder / "sources" / f"{source}.yaml").read_bytes())
        after = with_plates(before, [plate])
        lines = {line.replace(b"plates: [] ", b"plates:    ") for line in before.splitlines()}
        assert {b" ".join(line.split()) for line in lines} <= {
            b" ".join(line.split()) for line in after.splitlines()
        }
        record = yaml.load(after, yaml.BaseLoader)
        assert record["plates"][-1] == plate
        assert record["plates"][:-1] == (yaml.load(before, yaml.BaseLoader).get("plates") or [])


@pytest.mark.parametrize("text", ["title: [", "title: A list\nplates: none of them\n", "a: 1\na: 2\n", ""])
def test_a_file_that_cannot_be_added_to_is_left(text: str) -> None:
    with pytest.raises(CannotAdd):
        with_plates(text.encode(), [{"id": "p1", "garment": "blouse", "features": ["neckline/v"]}])


def test_the_command_asks_and_answers(
    folder: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    answers = iter([*SOURCE, *FROCK, ""])
    monkeypatch.setattr("builtins.input", lambda prompt: next(answers))
    assert main(["add", str(folder)]) == 0
    out = capsys.readouterr().out
    assert "Understood as autumn 1912 to winter 1912–13" in out
    assert "1 plate recorded in" in out
    assert source_yaml(yaml.load((folder / "sources/river-list-1912.yaml").read_bytes(), yaml.BaseLoader))
