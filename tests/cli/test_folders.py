"""The commands that write: nothing of anybody's is lost, and what went wrong is said."""

from __future__ import annotations

import json
import threading
import urllib.request
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from inperiod import cli_folders
from inperiod.cli import main

MAPPING = 'id: "{no}"\nsource: {title: "{title}", kind: other}\ngarment: dress\n'


@pytest.fixture
def run(capsys: pytest.CaptureFixture[str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Any:
    """Run a command in an empty folder; its exit status, standard output and standard error."""
    monkeypatch.chdir(tmp_path)

    def _run(*arguments: str) -> tuple[int, str, str]:
        status = main(arguments)
        out, err = capsys.readouterr()
        return status, out, err

    return _run


def test_new_then_build_makes_a_site_to_open(run: Any, tmp_path: Path) -> None:
    status, out, _ = run("new", "mine")
    assert (status, "mine/README.md" in out) == (0, True)
    status, out, err = run("build", "mine")
    assert (status, err) == (0, "")
    assert Path(out.splitlines()[-1]) == tmp_path / "public" / "index.html"
    assert Path(out.splitlines()[-1]).is_file()


def test_new_refuses_a_folder_that_is_in_use(run: Any) -> None:
    run("new", "mine")
    status, _, err = run("new", "mine")
    assert (status, "not empty" in err) == (2, True)


def test_build_refuses_records_with_errors_and_leaves_the_last_site(run: Any, tmp_path: Path) -> None:
    run("new", "mine")
    run("build", "mine")
    before = (tmp_path / "public/index.html").read_bytes()
    (tmp_path / "mine/sources/bad.yaml").write_text("title: Bad\nkind: book\n", encoding="utf-8")
    status, out, err = run("build", "mine")
    assert (status, out) == (1, "")
    assert "mine/sources/bad.yaml:2:7: " in err
    assert (tmp_path / "public/index.html").read_bytes() == before
    status, out, err = run("build", "mine", "--anyway")
    assert status == 0
    assert "1 error in the records" in err


def test_build_never_replaces_a_folder_that_is_not_a_site(run: Any, tmp_path: Path) -> None:
    run("new", "mine")
    (tmp_path / "public").mkdir()
    (tmp_path / "public/letter.txt").write_text("dear", encoding="utf-8")
    status, _, err = run("build", "mine")
    assert status == 1
    assert "public" in err
    assert [each.name for each in (tmp_path / "public").iterdir()] == ["letter.txt"]
    assert run("build", "mine", "--out", "mine")[0] == 1


def test_build_is_the_same_whatever_folder_it_is_called_from(
    run: Any, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    run("new", "mine")
    run("build", "mine")
    monkeypatch.chdir(tmp_path / "mine")
    run("build", "--out", "../other")
    one, other = (
        {each.relative_to(root): each.read_bytes() for each in root.rglob("*") if each.is_file()}
        for root in (tmp_path / "public", tmp_path / "other")
    )
    assert one == other


def test_import_reports_rows_and_ends_with_one_where_some_were_not_taken(run: Any, tmp_path: Path) -> None:
    run("new", "mine")
    (tmp_path / "map.yaml").write_text(MAPPING, encoding="utf-8")
    (tmp_path / "table.csv").write_text("no,title\n1,One\n,Two\n", encoding="utf-8")
    command = ("import", "table.csv", "--mapping", "map.yaml", "--into", "mine")
    status, out, _ = run(*command, "--dry-run")
    assert status == 1
    assert "nothing was written" in out
    assert not (tmp_path / "mine/sources/1.yaml").exists()
    status, out, _ = run(*command)
    assert status == 1
    assert "line 3: it has nothing to make an id from." in out
    data = json.loads(run(*command, "--json")[1])
    assert [(each["line"], each["outcome"]) for each in data["rows"]] == [(2, "same"), (3, "not taken")]


@pytest.mark.parametrize(
    ("change", "says"),
    [
        ({"table.csv": None}, "table.csv cannot be read"),
        ({"map.yaml": None}, "map.yaml cannot be read"),
        ({"map.yaml": "id: [\n"}, "map.yaml:"),
        ({"--into": "nowhere"}, "inperiod new nowhere"),
    ],
)
def test_an_import_that_cannot_be_says_why(
    run: Any, tmp_path: Path, change: dict[str, str | None], says: str
) -> None:
    run("new", "mine")
    files = {"map.yaml": MAPPING, "table.csv": "no,title\n1,One\n", **change}
    for name, text in files.items():
        if text is not None and not name.startswith("--"):
            (tmp_path / name).write_text(text, encoding="utf-8")
    into = change.get("--into") or "mine"
    status, _, err = run("import", "table.csv", "--mapping", "map.yaml", "--into", into)
    assert status == 2
    assert says in err


@pytest.fixture
def served(run: Any, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[tuple[str, list[str]]]:
    """A site being served: its address, and what has been said so far."""
    run("new", "mine")
    said: list[str] = []
    known = threading.Event()
    stop = threading.Event()

    def say(text: str) -> None:
        said.append(text)
        if text.startswith("http://"):
            known.set()

    from inperiod import publishing

    serve = publishing.serve
    monkeypatch.setattr(cli_folders, "_say", say)
    monkeypatch.setattr(publishing, "serve", lambda *given: serve(*given[:4], port=0, every=0.05, stop=stop))
    thread = threading.Thread(target=main, args=(["serve", "mine"],))
    thread.start()
    assert known.wait(180)
    yield next(each for each in said if each.startswith("http://")), said
    stop.set()
    thread.join(60)


def fetched(address: str) -> str:
    with urllib.request.urlopen(address, timeout=30) as answer:
        return str(answer.read().decode("utf-8"))


def until(holds: Any) -> None:
    pause = threading.Event()
    for _ in range(3600):
        if holds():
            return
        pause.wait(0.05)
    raise AssertionError("it did not come to pass within three minutes")


def test_serve_shows_the_site_and_builds_it_again_when_a_record_changes(
    served: tuple[str, list[str]], tmp_path: Path
) -> None:
    address, said = served
    assert address.startswith("http://127.0.0.1:")
    assert "<title>" in fetched(address)
    settings = tmp_path / "mine/inperiod.yaml"
    settings.write_text(
        settings.read_text(encoding="utf-8").replace("title: Mine", "title: Renamed"), encoding="utf-8"
    )
    until(lambda: "Renamed" in fetched(address))
    settings.write_text("title: [\n", encoding="utf-8")
    until(lambda: any("inperiod.yaml:" in each for each in said))
    assert "<title>" in fetched(address)


def test_tidy_lays_out_records_and_keeps_what_they_say(run: Any, tmp_path: Path) -> None:
    run("new", "mine")
    assert run("tidy", "mine") == (0, "0 files tidied.\n", "")
    file = tmp_path / "mine/sources/b.yaml"
    file.write_text("title:   B   # mine\nkind: other\nnote:  x\n\n\n", encoding="utf-8")
    untidy = file.read_bytes()
    status, out, _ = run("tidy", "mine", "--check")
    assert (status, file.read_bytes()) == (1, untidy)
    assert "mine/sources/b.yaml: not tidy" in out
    assert run("tidy", "mine")[:2] == (0, "mine/sources/b.yaml: tidied\n1 file tidied.\n")
    assert "# mine" in file.read_text(encoding="utf-8")
    assert run("tidy", "mine", "--check")[0] == 0


def test_tidy_names_what_it_cannot_read_and_leaves_it(run: Any, tmp_path: Path) -> None:
    run("new", "mine")
    file = tmp_path / "mine/sources/b.yaml"
    file.write_text("title: [\n", encoding="utf-8")
    status, out, _ = run("tidy", "mine")
    assert status == 1
    assert "mine/sources/b.yaml:" in out
    assert file.read_text(encoding="utf-8") == "title: [\n"
