"""Tidying changes how a record looks and nothing of what it says."""

from __future__ import annotations

import random
import re
from pathlib import Path
from typing import Any

import pytest
import yaml
from hypothesis import example, given, settings
from hypothesis import strategies as st

from inperiod.records import tidying
from inperiod.records.tidying import laid_out, tidied_files, tidy, write_tidied
from inperiod.records.yaml_reading import plain_value, read_yaml

HOME = Path(__file__).parents[2]
WHOLE = Path(__file__).parent / "whole"
FILES = sorted(WHOLE.rglob("*.yaml"))
SHIPPED = sorted((HOME / "catalogue").rglob("*.yaml"))


def meaning(data: bytes) -> Any:
    root = read_yaml(data, "file.yaml").root
    assert root is not None
    return plain_value(root)


CROOKED = """title:   A



plates:
-   id:  p1
    # about the garment
    garment:   dress \t
    note: |
           one
             two
    features:
        - neckline/square # seen
        -   {term: a/b,
             at: hem}
    caption: "one
  two \x20

      three"
    # the end of p1
# now p2
- id: p2


"""
STRAIGHT = """title: A

plates:
  - id: p1
    # about the garment
    garment: dress
    note: |
      one
        two
    features:
      - neckline/square # seen
      - {term: a/b,
         at: hem}
    caption: "one
      two

      three"
    # the end of p1
  # now p2
  - id: p2
"""


@pytest.mark.parametrize("start", ["", "\ufeff"])
@pytest.mark.parametrize("end", ["\n", "\r\n"])
def test_a_crooked_file_is_straightened(start: str, end: str) -> None:
    data = (start + CROOKED.replace("\n", end)).encode()
    assert tidy(data).decode() == STRAIGHT
    assert meaning(data) == meaning(STRAIGHT.encode())


@pytest.mark.parametrize("file", [*FILES, *SHIPPED], ids=lambda file: str(file.relative_to(HOME)))
def test_tidy_files_stay_as_they_are(file: Path) -> None:
    data = file.read_bytes()
    assert laid_out(data) == data


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.name)
@settings(max_examples=40, deadline=None)
@given(seed=st.integers(0, 2**32), step=st.integers(1, 4))
def test_however_a_file_is_laid_out_it_comes_out_the_same(file: Path, seed: int, step: int) -> None:
    chance = random.Random(seed)
    assert tidy(crooked(file.read_text(encoding="utf-8"), step, chance)) == file.read_bytes()


def crooked(text: str, step: int, chance: random.Random) -> bytes:
    """The same record with another step of indentation, stray blanks, empty lines and line ends."""
    lines = []
    for line in text.splitlines():
        bare = line.lstrip(" ")
        indent = (len(line) - len(bare)) * step
        hyphens = re.match(r"(?:- )*", bare)
        assert hyphens is not None
        bare = hyphens[0].replace("- ", "-" + " " * (2 * step - 1)) + bare[hyphens.end() :]
        if re.match(r"[- ]*[a-z_]+: [^\s|>]", bare):
            bare = bare.replace(": ", ":" + " " * chance.randint(1, 3), 1) + " " * chance.randint(0, 2)
            if chance.random() < 0.1 and lines and not lines[-1].strip():
                lines.append(" " * chance.randint(0, 3))
        lines.append(" " * indent + bare)
    end = chance.choice(["\n", "\r\n"])
    start = chance.choice(["", "\ufeff"])
    return (start + end.join(lines) + end * chance.randint(0, 3)).encode()


TEXTS = st.one_of(
    st.text(st.characters(codec="utf-8", exclude_categories=["Cs", "Cc"]), max_size=60),
    st.sampled_from(
        ["no", "1912", "a: b", "# no comment", "two\nlines", "ends\n\n", "  starts", " \n x\n", "- x", "it's"]
    ),
    st.lists(st.sampled_from(["word", "  ", "\n", "“", ":", "'", '"', "\\", "#", "\n\n "]), max_size=20).map(
        "".join
    ),
)
RECORDS = st.recursive(
    TEXTS | st.integers(-5, 3000) | st.booleans() | st.none(),
    lambda inner: (
        st.lists(inner, max_size=4)
        | st.dictionaries(st.text("abc", min_size=1, max_size=3), inner, max_size=4)
    ),
    max_leaves=20,
)


@settings(max_examples=400, deadline=None)
@given(
    value=st.dictionaries(st.text("abc", min_size=1, max_size=3), RECORDS, min_size=1, max_size=4),
    indent=st.integers(2, 7),
    width=st.sampled_from([20, 40, 1000]),
    style=st.sampled_from([None, '"', "'", "|", ">"]),
    flow=st.sampled_from([None, False, True]),
)
@example(value={"a": " \n x\n"}, indent=4, width=20, style="|", flow=False)
@example(value={"a": "x\n\n"}, indent=4, width=20, style="|", flow=False)
@example(value={"a": {"b": "x\n\n"}, "c": "d"}, indent=4, width=20, style="|", flow=False)
@example(value={"a": [["x\ny\n", "z"]]}, indent=6, width=20, style=">", flow=False)
def test_whatever_is_written_keeps_its_meaning(
    value: Any, indent: int, width: int, style: str | None, flow: bool | None
) -> None:
    """Files as a general writer of YAML (PyYAML) lays them out, in all its styles."""
    text = yaml.dump(
        value, indent=indent, width=width, default_style=style, default_flow_style=flow, allow_unicode=True
    )
    data = text.encode("utf-8")
    document = read_yaml(data, "file.yaml")
    if document.root is None or any(each.severity == "error" for each in document.problems):
        assert tidy(data) == data
        return
    after = laid_out(data)
    assert after is not None, text
    assert meaning(after) == meaning(data)
    assert tidy(after) == after


@settings(max_examples=300, deadline=None)
@given(seed=st.integers(0, 2**32))
def test_no_slip_makes_it_change_a_meaning_or_lose_a_comment(seed: int) -> None:
    chance = random.Random(seed)
    file = chance.choice(FILES)
    data = bytearray(file.read_bytes())
    for _ in range(chance.randint(1, 3)):
        at = chance.randrange(len(data))
        extra = chance.choice(
            [b"\n", b" ", b"  ", b"\n# a comment\n", b"# a comment\n", b"'", b"- ", b": ", b"\n\n\n", b"|"]
        )
        data[at:at] = extra
    before = bytes(data)
    after = tidy(before)
    assert "".join(after.decode().split()) == "".join(before.decode().split())
    assert tidy(after) == after
    if read_yaml(before, "file.yaml").root is not None:
        assert meaning(after) == meaning(before)
    else:
        assert after == before


def test_a_file_that_cannot_be_read_is_left_alone() -> None:
    for data in (b"title: a: b   \n", b"\xff\xfe", b"", b"# only a comment   \n", b"a: 1   \na: 2\n"):
        assert tidy(data) == data


def test_a_layout_that_would_change_a_meaning_is_not_used(monkeypatch: pytest.MonkeyPatch) -> None:
    """Break the layout on purpose: the comparison with what went in must notice."""
    data = b"plates:\n-   id: p1\n    note: x\n"
    assert tidy(data) != data
    real = tidying._Layout.text
    monkeypatch.setattr(tidying._Layout, "text", lambda self: real(self).replace("    note", "note"))
    assert tidy(data) == data
    monkeypatch.setattr(tidying._Layout, "text", lambda self: real(self).replace("p1", "p2"))
    assert tidy(data) == data


def test_a_folder_is_tidied_file_by_file(tmp_path: Path) -> None:
    (tmp_path / "sources").mkdir()
    (tmp_path / "inperiod.yaml").write_text("title:   A\n")
    (tmp_path / "sources" / "good.yaml").write_text("title: A\n")
    (tmp_path / "sources" / "untidy.yaml").write_text("title: A  \n")
    (tmp_path / "sources" / "broken.yaml").write_text("title: A: B  \n")
    (tmp_path / "sources" / "untidy.yaml").chmod(0o640)
    untidy, problems = tidied_files(tmp_path)
    assert [each.file for each in untidy] == ["inperiod.yaml", "sources/untidy.yaml"]
    assert [each.file for each in problems] == ["sources/broken.yaml"]
    for each in untidy:
        write_tidied(tmp_path, each)
    assert (tmp_path / "sources" / "untidy.yaml").read_text() == "title: A\n"
    assert (tmp_path / "sources" / "untidy.yaml").stat().st_mode & 0o777 == 0o640
    assert sorted(each.name for each in (tmp_path / "sources").iterdir()) == [
        "broken.yaml",
        "good.yaml",
        "untidy.yaml",
    ]
    assert tidied_files(tmp_path)[0] == []
