"""No bytes make the reader crash, hang or swell; every complaint points into the file."""

from __future__ import annotations

import json
import os
import random
import shutil
import subprocess
import sys
import tempfile
import time
import tracemalloc
from pathlib import Path

import pytest
import yaml
from hypothesis import example, given, settings
from hypothesis import strategies as st

from inperiod.records import Problem, read_catalogue, yaml_reading
from inperiod.records.reading import read_board, read_facet, read_settings, read_source
from inperiod.records.yaml_reading import (
    MAX_ALIASES,
    MAX_BYTES,
    MAX_DEPTH,
    Items,
    Scalar,
    Table,
    core_value,
    plain_value,
    read_yaml,
)

WHOLE = Path(__file__).parent / "whole"
GOOD = (WHOLE / "sources" / "autumn-list.yaml").read_text(encoding="utf-8")


def everything(data: bytes) -> list[Problem]:
    """What all readers say of the same bytes."""
    said = read_source(data, "sources/a.yaml", "northern", {})[1]
    said += read_board(data, "boards/a.yaml", "northern", {})[1]
    said += read_facet(data, "vocabulary/a.yaml", "northern", {})[1]
    return said + read_settings(data)[1]


def check_places(problems: list[Problem], data: bytes) -> None:
    lines = max(1, len(data.replace(b"\r\n", b"\n").replace(b"\r", b"\n").split(b"\n")))
    for each in problems:
        assert 1 <= each.line <= lines, each
        assert each.column >= 1, each
        assert each.message.endswith((".", "?")), each
        assert "\n" not in each.message + each.hint, each
        (each.message + each.hint).encode("utf-8")


PIECES = st.sampled_from(
    ["title: ", "plates:", "- ", "  ", "\n", "\n  ", "\t", ": ", ":", "#", "'", '"', "“", "”", "[", "]", "{",
     "}", ",", "&a ", "*a", "!!", "!x ", "|", ">", "%", "@", "`", "---", "...", "?", "<<: ", "id: ",
     "features:", "neckline/square", "\ufeff", "\r\n", "\r", "\x00", "\x85", "\u2028", "é", "\\", "\\x",
     "\\ud800", "~", "null", "no", "1912", "0x1F", ".inf", "not_before: {date: 1912}", "\U0001f457",
     "plates: [{id: p, garment: dress}]", "date: 1912-23\n"]
)  # fmt: skip


@settings(max_examples=400, deadline=None)
@given(text=st.one_of(st.lists(PIECES, max_size=40).map("".join), st.text(max_size=200)))
@example(text="\ufeff")
@example(text="a: \x85b\n: c")
@example(text="? [a]\n: b")
@example(text="title: 'a\n")
def test_any_text_is_read_or_complained_of(text: str) -> None:
    data = text.encode("utf-8", errors="surrogatepass")
    check_places(everything(data), data)


@settings(max_examples=200, deadline=None)
@given(data=st.binary(max_size=300))
def test_any_bytes_are_read_or_complained_of(data: bytes) -> None:
    check_places(everything(data), data)


@settings(max_examples=300, deadline=None)
@given(seed=st.integers(0, 2**32))
def test_a_good_file_with_slips_is_read_or_complained_of(seed: int) -> None:
    chance = random.Random(seed)
    data = bytearray(GOOD.encode())
    for _ in range(chance.randint(1, 4)):
        changed(data, chance)
    check_places(everything(bytes(data)), bytes(data))


def changed(data: bytearray, chance: random.Random) -> None:
    """One slip somewhere."""
    at = chance.randrange(len(data))
    match chance.randrange(5):
        case 0:
            data[at] = chance.randrange(256)
        case 1:
            del data[at : at + chance.randint(1, 40)]
        case 2:
            data[at:at] = chance.choice(
                [b"\t", b": ", b"\n", b'"', b"'", b"- ", b"\xff", b"[", b"{", b"\r", b"~"]
            )
        case 3:
            lines = bytes(data).split(b"\n")
            del lines[chance.randrange(len(lines))]
            data[:] = b"\n".join(lines)
        case _:
            data[at:at] = data[at : at + chance.randint(1, 60)]


@settings(max_examples=150, deadline=None)
@given(seed=st.integers(0, 2**32))
def test_a_catalogue_with_slips_anywhere_is_read_and_checked(seed: int) -> None:
    chance = random.Random(seed)
    with tempfile.TemporaryDirectory() as scratch:
        folder = Path(scratch) / "it"
        shutil.copytree(WHOLE, folder)
        for file in chance.sample(sorted(folder.rglob("*.yaml")), 2):
            data = bytearray(file.read_bytes())
            for _ in range(chance.randint(1, 3)):
                changed(data, chance)
            file.write_bytes(bytes(data))
        for each in read_catalogue(folder).problems:
            check_places([each], (folder / each.file).read_bytes())


def bomb(levels: int) -> str:
    lines = ["l0: &l0 [x, x, x, x, x, x, x, x, x, x]"]
    for level in range(1, levels):
        inner = ", ".join([f"*l{level - 1}"] * 10)
        lines.append(f"l{level}: &l{level} [{inner}]")
    return "\n".join(lines)


HOSTILE = {
    "alias bomb": bomb(30).encode(),
    "alias bomb of fields": ("a: &a {x: 1}\n" + "".join(f"b{n}: {{<<: *a}}\n" for n in range(5000))).encode(),
    "deep lists": b"a: " + b"[" * 100_000,
    "deep fields": b"{a: " * 100_000,
    "deep by hyphens": b"- " * 100_000,
    "deep by indent": b"".join(b" " * n + b"a:\n" for n in range(1500)),
    "one enormous key": b"a" * 2_000_000 + b": b",
    "no colon in two megabytes": b"word " * 400_000,
    "quote never closed": b'a: "' + b"x\n " * 600_000,
    "a hundred thousand duplicate keys": b"title: a\n" * 100_000,
    "a hundred thousand unknown fields": b"".join(b"field%d: a\n" % n for n in range(100_000)),
    "a hundred thousand anchors": b"".join(b"- &a%d x\n" % n for n in range(100_000)),
    "a long line of quotes": b"a: " + b"'" * 1_000_001,
    "a long line of brackets": b"a: " + b"]" * 1_000_000,
    "spaces": b" " * 4_000_000 + b"x",
    "tabs": b"\t" * 4_000_000 + b"x",
    "line ends": b"\n" * 4_000_000 + b"\tx: y",
    "all NUL": b"\0" * 4_000_000,
    "all 0xFF": b"\xff" * 4_000_000,
    "an id that backtracks": b"title: a\nkind: other\nplates: [{garment: " + b"a-" * 30_000 + b"!, id: p}]",
    "an address that backtracks": b"title: a\nkind: other\nheld_by: {url: http://" + b"a" * 100_000 + b" }",
    "a line that ends its quotes a million times": b"a: 'b' : '" * 500_000,
    "a line of colons and brackets": b"a: [b] [" * 500_000,
    "blanks and number signs": b"a: " + b" #" * 2_000_000,
    "a blank line before a number sign": b"a: b" + b" " * 4_000_000 + b"#x\n\tc",
    "fifty megabytes": b"title: " + b"x" * 50_000_000,
}  # fmt: skip


@pytest.mark.parametrize("name", HOSTILE)
def test_hostile_files_are_refused_in_bounded_time_and_memory(name: str) -> None:
    data = HOSTILE[name]
    tracemalloc.start()
    started = time.process_time()
    said = read_source(data, "sources/a.yaml", "northern", {})[1]
    took = time.process_time() - started
    peak = tracemalloc.get_traced_memory()[1]
    tracemalloc.stop()
    assert said
    check_places(said, data)
    # Seconds of the processor, so that a busy machine changes nothing; tracing memory slows it many times.
    assert took < 60, f"{took:.1f} s"
    assert peak < 60 * MAX_BYTES, f"{peak / 1e6:.0f} MB"
    assert len(said) < 500


WITHIN = """
import resource, sys
resource.setrlimit(resource.RLIMIT_AS, (1_000_000_000, 1_000_000_000))
resource.setrlimit(resource.RLIMIT_CPU, (60, 60))
from inperiod.cli import main
status = main(sys.argv[1:])
print(resource.getrusage(resource.RUSAGE_SELF).ru_maxrss, file=sys.stderr)
sys.exit(status)
"""


def within_limits(*arguments: str | Path) -> tuple[int, str, str]:
    """A command in a process that may take a gigabyte and a minute: exit status, output and complaints."""
    command = [sys.executable, "-c", WITHIN, *map(str, arguments)]
    ran = subprocess.run(command, capture_output=True, text=True, check=False, timeout=300)
    assert "Traceback" not in ran.stderr, ran.stderr[-2000:]
    return ran.returncode, ran.stdout, ran.stderr


@pytest.mark.skipif(os.name == "nt", reason="limits and special files are of POSIX systems")
def test_a_folder_of_hostile_files_is_checked_in_a_minute_and_a_gigabyte(tmp_path: Path) -> None:
    folder = tmp_path / "catalogue"
    shutil.copytree(WHOLE, folder)
    place = folder / "sources"
    names = {}
    for number, (name, data) in enumerate(HOSTILE.items()):
        (place / f"h-{number}.yaml").write_bytes(data)
        names[f"sources/h-{number}.yaml"] = name
    special = {
        f"sources/{each}.yaml" for each in ("pipe", "zero", "circle", "far", "sparse", "folder", "out")
    }
    os.mkfifo(place / "pipe.yaml")
    (place / "zero.yaml").symlink_to("/dev/zero")
    (place / "circle.yaml").symlink_to("circle.yaml")
    (place / "far.yaml").symlink_to(tmp_path / "nowhere")
    (place / "folder.yaml").mkdir()
    (place / "out.yaml").symlink_to("/etc/hostname")
    with (place / "sparse.yaml").open("wb") as stream:
        stream.truncate(50_000_000_000)
    status, out, err = within_limits("check", folder, "--json")
    assert status == 1
    problems = json.loads(out)["problems"]
    said = {each["file"] for each in problems if each["severity"] == "error"}
    assert {names[each] for each in names.keys() - said} <= {
        name for name in HOSTILE if "number sign" in name or name in ("tabs", "spaces")
    }
    assert special <= said
    assert {each["file"] for each in problems} >= names.keys()
    for each in problems:
        assert each["line"] >= 1
        assert each["column"] >= 1
        assert len(each["message"]) < 500, each["message"][:200]
    assert int(err.split()[-1]) < 700_000  # kilobytes at its highest


PICTURES = (
    "../secret.png",
    "a/../../secret.png",
    "/etc/passwd.png",
    "link.png",
    "out/secret.png",
    "C:\\x.png",
)


@pytest.mark.parametrize("file", PICTURES)
def test_a_picture_out_of_the_folder_is_refused_at_its_place(file: str, tmp_path: Path) -> None:
    shutil.copytree(WHOLE, tmp_path / "catalogue")
    folder = tmp_path / "catalogue"
    (tmp_path / "secret.png").write_bytes(b"x")
    (folder / "images" / "link.png").symlink_to(tmp_path / "secret.png")
    (folder / "images" / "out").symlink_to(tmp_path)
    source = (
        f"title: x\nkind: other\nplates:\n  - id: p1\n    garment: dress\n    image: {{file: '{file}'}}\n"
    )
    (folder / "sources" / "leads-out.yaml").write_text(source, encoding="utf-8")
    found = [each for each in read_catalogue(folder).errors if each.file == "sources/leads-out.yaml"]
    assert [(each.line, each.column) for each in found] == [(6, 19)], found


LOOK_ALIKES = (
    "autumn-lіst",
    "аutumn-list",
    "autumn–list",
    "autumn‐list",
    "ａutumn-list",
    "autumn-list\u200b",
    "ﬁn",
    "i\u0307d",
)


@pytest.mark.parametrize("name", LOOK_ALIKES)
def test_an_id_that_only_looks_like_one_is_refused_wherever_it_stands(name: str, tmp_path: Path) -> None:
    """Letters of other alphabets, other hyphens, wide and joined letters, signs without a form."""
    folder = tmp_path / "catalogue"
    shutil.copytree(WHOLE, folder)
    (folder / "sources" / f"{name}.yaml").write_text("title: x\nkind: other\n", encoding="utf-8")
    quoted = json.dumps(name)
    for field, line in (("id", 4), ("garment", 5), ("outfit", 6), ("same_cut_as", 6)):
        fields = {"id": "p1", "garment": "dress"} | {field: f"{name}/p1" if field == "same_cut_as" else name}
        rest = "".join(f"    {each}: {json.dumps(value)}\n" for each, value in fields.items() if each != "id")
        text = f"title: x\nkind: other\nplates:\n  - id: {json.dumps(fields['id'])}\n{rest}"
        (folder / "sources" / "other.yaml").write_text(text, encoding="utf-8")
        found = [each for each in read_catalogue(folder).errors if each.file == "sources/other.yaml"]
        assert [each.line for each in found] == [line], (field, found)
        assert found[0].column > 8
    files = [each for each in read_catalogue(folder).errors if "cannot serve as an id" in each.message]
    assert len(files) == 1, quoted


def test_tables_and_manifests_of_fifty_megabytes_are_read_or_refused_in_a_minute(tmp_path: Path) -> None:
    shutil.copytree(WHOLE, tmp_path / "catalogue")
    (tmp_path / "map.yaml").write_text(
        'id: "{no}"\nsource: {title: "{title}", kind: other}\ngarment: dress\n', encoding="utf-8"
    )
    tables = {
        "quote.csv": b'no,title\n1,"' + b"x" * 50_000_000,
        "commas.csv": b"no,title\n" + b"," * 50_000_000,
        "nul.csv": b"no,title\n" + b"\0" * 1_000_000,
        "deep.json": b"[" * 5_000_000,
        "long.json": b'{"type": "Manifest", "label": "' + b"x" * 50_000_000 + b'"}',
    }
    for name, data in tables.items():
        (tmp_path / name).write_bytes(data)
        more = ("--mapping", tmp_path / "map.yaml") if name.endswith("csv") else ()
        status, out, err = within_limits(
            "import", tmp_path / name, *more, "--into", tmp_path / "catalogue", "--dry-run"
        )
        assert status in ((0,) if name == "commas.csv" else (1, 2)), name
        assert (out + err).strip(), name


def test_what_is_repeated_a_little_may_be_repeated() -> None:
    root = read_yaml(b"a: &frock {garment: dress}\nb: [*frock, *frock]\n", "a.yaml").root
    assert root is not None
    assert plain_value(root) == {"a": {"garment": "dress"}, "b": [{"garment": "dress"}, {"garment": "dress"}]}


def test_the_limits_lie_where_they_are_said_to_lie() -> None:
    inside = b"[" * MAX_DEPTH + b"]" * MAX_DEPTH
    assert not read_yaml(inside, "a.yaml").problems
    assert read_yaml(b"[" + inside + b"]", "a.yaml").problems
    few = b"- &a x\n" + b"- *a\n" * MAX_ALIASES
    assert not read_yaml(few, "a.yaml").problems
    assert read_yaml(few + b"- *a\n", "a.yaml").problems
    comment = b"a: b\n#"
    assert not read_yaml(comment + b"x" * (MAX_BYTES - len(comment)), "a.yaml").problems
    assert read_yaml(comment + b"x" * (MAX_BYTES - len(comment) + 1), "a.yaml").problems


@pytest.mark.parametrize(
    "tag", ["!!python/object/apply:os.system [ls]", "!!binary aGk=", "!local x", "!!str 1912"]
)
def test_no_tag_is_obeyed(tag: str) -> None:
    (problem,) = read_yaml(f"title: {tag}\n".encode(), "a.yaml").problems
    assert (problem.line, problem.column) == (1, 8)
    assert "exclamation mark" in problem.message


def test_positions_are_those_an_editor_shows() -> None:
    root = read_yaml("title: é👗 list\nplates:\n  - {id: p1}\n".encode(), "a.yaml").root
    assert isinstance(root, Table)
    assert root.keys == {"title": (1, 1), "plates": (2, 1)}
    plates = root.entries["plates"]
    assert isinstance(plates, Items)
    plate = plates.items[0]
    assert isinstance(plate, Table)
    assert (plate.line, plate.column) == (3, 5)
    assert (plate.entries["id"].line, plate.entries["id"].column) == (3, 10)


@given(number=st.integers(-(10**14), 10**14))
def test_whole_numbers_are_whole_numbers(number: int) -> None:
    assert core_value(Scalar(str(number), True, 1, 1)) == number


def test_a_number_too_long_to_be_one_stays_text() -> None:
    digits = "9" * 5000
    assert core_value(Scalar(digits, True, 1, 1)) == digits


def test_the_reader_works_without_the_c_library(monkeypatch: pytest.MonkeyPatch) -> None:
    """Slower, and its wording of the rarer slips may differ; the records are the same."""
    with_it = read_source(GOOD.encode(), "sources/a.yaml", "northern", {})
    monkeypatch.setattr(yaml_reading, "_PARSER", yaml.SafeLoader)
    assert read_source(GOOD.encode(), "sources/a.yaml", "northern", {}) == with_it
    half = read_yaml(b'note: "\\ud83d"\n', "a.yaml")
    assert [each.line for each in half.problems] == [1]
    slips = ["a: b: c\n", "a: 'b\n", "\ta: b\n", "a: [b\n", "a: *b\n", "a: @b\n", "a\nb: c\n"]
    for slip in slips:
        said = read_yaml(slip.encode(), "a.yaml").problems
        assert said, slip
        check_places(list(said), slip.encode())
