"""What the page says of a source while it is recorded is what the checker says of its file."""

from __future__ import annotations

import shutil
from dataclasses import asdict, replace
from pathlib import Path
from typing import Any

import pytest

from inperiod.records import read_catalogue
from inperiod.records.checks import CHECKS
from inperiod.records.model import Catalogue
from recording.checks_in_node import (
    IN_THE_PAGE,
    NOT_IN_THE_PAGE,
    context_of,
    said_by_the_checker,
    said_by_the_page,
)

TESTS = Path(__file__).parents[1]
CASES = TESTS / "broken" / "cases"


def without_path(found: list[dict[str, Any]]) -> list[dict[str, Any]]:
    return [{name: value for name, value in each.items() if name not in ("path", "field")} for each in found]


def compared(node: str, files: list[tuple[str, bytes, Catalogue]]) -> tuple[list[str], int]:
    """Where page and checker differ, as sentences, and how many problems they agree on."""
    contexts: list[Any] = []
    known: dict[int, int] = {}
    asked, expected = [], []
    for file, data, catalogue in files:
        root, problems = said_by_the_checker(data, file, catalogue)
        if root is None:
            continue
        if id(catalogue) not in known:
            known[id(catalogue)] = len(contexts)
            folder = catalogue.folder / "sources"
            unread = {each.stem for each in folder.glob("*.yaml")} - {*catalogue.sources, Path(file).stem}
            contexts.append(context_of(catalogue, unread))
        asked.append((file, root, known[id(catalogue)]))
        expected.append((catalogue.folder.name, [asdict(each) for each in problems]))
    differences, agreed = [], 0
    for (name, ours), theirs in zip(expected, said_by_the_page(node, asked, contexts), strict=True):
        theirs = without_path(theirs)
        agreed += len([each for each in ours if each in theirs])
        differences += [f"{name}: only the checker says {each}" for each in ours if each not in theirs]
        differences += [f"{name}: only the page says {each}" for each in theirs if each not in ours]
        if not differences and ours != theirs:
            differences.append(f"{name}: another order")
    return differences, agreed


def sources_of(catalogue: Catalogue) -> list[tuple[str, bytes, Catalogue]]:
    files = sorted((catalogue.folder / "sources").glob("*.yaml"))
    return [(f"sources/{each.name}", each.read_bytes(), catalogue) for each in files]


def test_every_check_is_made_in_the_page_or_has_a_reason_not_to_be() -> None:
    assert {*IN_THE_PAGE, *NOT_IN_THE_PAGE} == {*CHECKS}
    assert all(NOT_IN_THE_PAGE.values())


@pytest.mark.node
def test_of_the_demonstration_both_say_the_same(node: str, demo_catalogue: Catalogue) -> None:
    assert compared(node, sources_of(demo_catalogue))[0] == []


@pytest.mark.node
def test_of_a_record_with_every_field_both_say_the_same(node: str) -> None:
    assert compared(node, sources_of(read_catalogue(TESTS / "records" / "whole").catalogue))[0] == []


@pytest.mark.node
def test_of_every_broken_catalogue_both_say_the_same(node: str, tmp_path: Path) -> None:
    files = []
    for case in sorted(each for each in CASES.iterdir() if (each / "sources").is_dir()):
        folder = tmp_path / case.name
        shutil.copytree(case, folder, symlinks=True)
        if not (folder / "vocabulary").exists():
            shutil.copytree(TESTS / "broken" / "vocabulary", folder / "vocabulary")
        files += sources_of(read_catalogue(folder).catalogue)
    differences, agreed = compared(node, files)
    assert differences == []
    assert agreed > 80


HEAD = "title: A list\nkind: other\ndate: 1912\nrights: x\nplates:\n"
RARE = [
    "title: A list\nkind: other\nreprint_of: a-list\n",
    f"{HEAD}  - {{id: p1, garment: blouse, features: [{{term: trim/lace, count: 0}}]}}\n",
    f"{HEAD}  - {{id: p1, garment: blouse, features: [{{term: trim/lace, count: 10001}}]}}\n",
    f"{HEAD}  - {{id: p1, garment: blouse, treatment: [tinted, tinted, tinted, reversed]}}\n",
    f"{HEAD}{'  - {id: p1, garmet: blouse, titel: x}' + chr(10)}" * 150,
    HEAD + "".join(f"  - {{id: P{n}, garment: {n}louse}}\n" for n in range(300)),
    "- a\n- b\n",
    "a text\n",
    "plates: []\n",
]


@pytest.mark.node
def test_of_rare_slips_both_say_the_same(node: str, demo_catalogue: Catalogue) -> None:
    source = next(iter(demo_catalogue.sources.values()))
    others = {each: replace(source, id=each, plates=()) for each in ("a-1ist", "a-iist", "b-list")}
    few = replace(demo_catalogue, sources=others)
    files = [("sources/a-list.yaml", text.encode(), few) for text in RARE]
    differences, agreed = compared(node, files)
    assert differences == []
    assert agreed > 200
