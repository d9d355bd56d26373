"""What a reader has to fetch, compressed as a host would (gzip), pictures left out.

Bounded are: each page with the one stylesheet; all the demonstration's data together; the scripts of every
single page apart from those for writing boards; and both shelves of scripts whole. The scripts that answer,
list and draw do not fit 40 KB all together (the reading of date phrases in eight languages is a third of
them), so their sum has a bound of its own that fails when it grows.
"""

from __future__ import annotations

import gzip
import json
import re
import subprocess
from functools import cache
from pathlib import Path

import pytest

from conftest import CHECKOUT, missing

KB = 1024
OF_BOARDS = re.compile(r"board-|making|cautions")
ACORN = CHECKOUT / "tests/node_modules/acorn"


@cache
def weight(file: Path) -> int:
    return len(gzip.compress(file.read_bytes(), 9))


def scripts_of(page: Path, folder: str = "assets") -> set[Path]:
    """The scripts a page names that stand in that folder of the site."""
    named = re.findall(rf'<script src="([^"]*{folder}/[^"]+)"', page.read_text(encoding="utf-8"))
    return {(page.parent / name).resolve() for name in named}


def test_a_page_with_its_look_is_at_most_60_kb(demo_site):
    look = weight(demo_site / "assets/style.css")
    heaviest = max(demo_site.rglob("*.html"), key=weight)
    assert weight(heaviest) + look <= 60 * KB, heaviest


def test_the_demonstrations_data_is_at_most_40_kb(demo_site):
    """All data that any page names. What is fetched on asking alone, a file at a time, has its own bound."""
    named = {each for page in demo_site.rglob("*.html") for each in scripts_of(page, "data")}
    assert {file.stem for file in named} >= {"facts", "plates", "vocabulary"}
    assert sum(map(weight, named)) <= 40 * KB
    others = set((demo_site / "data").rglob("*.js")) - named
    assert max(map(weight, others), default=0) <= 8 * KB


def test_the_scripts_of_any_page_are_at_most_40_kb_without_the_boards(demo_site):
    sums = {
        page: sum(weight(each) for each in scripts_of(page) if not OF_BOARDS.match(each.name))
        for page in demo_site.rglob("*.html")
    }
    heaviest = max(sums, key=lambda page: sums[page])
    assert sums[heaviest] > 10 * KB, "the scripts were not found"
    assert sums[heaviest] <= 40 * KB, heaviest


def test_the_scripts_grow_no_further(demo_site):
    """Caps just above what the scripts are; the board's come only to pages on which one gathers or writes."""
    scripts = sorted((demo_site / "assets").glob("*.js"))
    boards = [each for each in scripts if OF_BOARDS.match(each.name)]
    answering = [each for each in scripts if each not in boards]
    assert sum(map(weight, answering)) <= 51 * KB
    assert sum(map(weight, boards)) <= 42 * KB
    gathering = sum(weight(each) for each in scripts_of(demo_site / "index.html"))
    assert gathering <= 42 * KB


@pytest.mark.node
def test_scripts_are_made_smaller_and_say_the_same(demo_site, node):
    """Parsed by acorn, source and sent script are one syntax tree."""
    if not ACORN.is_dir():
        missing(f"{ACORN} is absent: run npm ci in tests/")
    program = """
      const [acorn, ...files] = process.argv.slice(1);
      const { parse } = require(acorn), { readFileSync } = require("fs");
      const tree = (file) => JSON.stringify(parse(readFileSync(file, "utf8"), { ecmaVersion: 2022 }),
        (name, value) => name === "start" || name === "end" ? undefined
          : value instanceof RegExp || typeof value === "bigint" ? String(value) : value);
      const same = (one, other) => {
        try { return tree(one) === tree(other) } catch (wrong) { return String(wrong) }
      };
      const found = [];
      for (let i = 0; i < files.length; i += 2) found.push(same(files[i], files[i + 1]));
      console.log(JSON.stringify(found));
    """
    sources = sorted((CHECKOUT / "site/assets").glob("*.js"))
    pairs = [str(each) for source in sources for each in (source, demo_site / "assets" / source.name)]
    told = subprocess.run(
        [node, "-e", program, str(ACORN), *pairs], capture_output=True, text=True, check=True
    )
    found = dict(zip([source.name for source in sources], json.loads(told.stdout), strict=True))
    assert {name: same for name, same in found.items() if same is not True} == {}
    sent = sum((demo_site / "assets" / source.name).stat().st_size for source in sources)
    assert sent < 0.85 * sum(source.stat().st_size for source in sources)
