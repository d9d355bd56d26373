"""Addresses that run something are refused where they stand; formulas of a spreadsheet stay text."""

from __future__ import annotations

import csv
import io
import json
import shutil
from pathlib import Path

import pytest
import yaml

from hostile.payloads import PAYLOADS
from inperiod.cli import main
from inperiod.importing import import_table
from inperiod.records import read_catalogue
from inperiod.records.reading import read_settings, read_source
from parity import in_node

ASSETS = Path(__file__).parents[2] / "site" / "assets"
WHOLE = Path(__file__).parents[1] / "records" / "whole"
MAPPING = 'id: "{no}"\nsource: {title: "{title}", kind: other}\nplate: {caption: "{title}"}\ngarment: dress\n'


@pytest.mark.parametrize("address", PAYLOADS["address"])
def test_an_address_that_runs_something_is_refused_with_its_line_and_column(address: str) -> None:
    """Not only javascript: and data:; nothing but http and https is an address here."""
    quoted = json.dumps(address)
    _, said = read_source(
        f"title: x\nkind: other\nheld_by:\n  url: {quoted}\n".encode(), "sources/a.yaml", "northern", {}
    )
    assert [(each.line, each.column, each.severity) for each in said] == [(4, 8, "error")]
    _, said = read_settings(f"title: x\nbase_address: {quoted}\n".encode())
    assert [(each.line, each.column, each.severity) for each in said] == [(2, 15, "error")]


def test_formulas_come_in_as_text_and_go_out_behind_an_apostrophe(tmp_path: Path) -> None:
    catalogue = shutil.copytree(WHOLE, tmp_path / "catalogue", ignore=shutil.ignore_patterns(".inperiod"))
    table = io.StringIO(newline="")
    csv.writer(table).writerows([("no", "title"), *enumerate(PAYLOADS["spreadsheet"])])
    (tmp_path / "table.csv").write_text(table.getvalue(), encoding="utf-8", newline="")
    (tmp_path / "map.yaml").write_text(MAPPING, encoding="utf-8")
    report = import_table(tmp_path / "table.csv", tmp_path / "map.yaml", catalogue, dry_run=False)
    assert report.count("new") == len(PAYLOADS["spreadsheet"])
    for number, payload in enumerate(PAYLOADS["spreadsheet"]):
        written = yaml.safe_load((catalogue / "sources" / f"{number}.yaml").read_text(encoding="utf-8"))
        assert written["title"] == payload.strip()
    assert len(read_catalogue(catalogue).catalogue.sources) == len(PAYLOADS["spreadsheet"]) + 2
    assert main(["build", "--anyway", str(catalogue), "--out", str(tmp_path / "public")]) == 0
    with (tmp_path / "public/download/sources.csv").open(encoding="utf-8", newline="") as stream:
        titles = [row["title"] for row in csv.DictReader(stream)]
    guarded = [each for each in titles if each.startswith("'")]
    assert len(guarded) == sum(
        each[0] in "=+-@＝" for each in (one.strip() for one in PAYLOADS["spreadsheet"])
    )
    assert "'=1+1" in guarded


@pytest.mark.node
def test_the_table_that_the_timeline_page_makes_guards_them_too(node: str) -> None:
    row = {
        **{"term": "a/b", "first": None, "last": None, "not_before": None},
        **{
            "shares": [0.5],
            "weights": [-1],
            "documents": [1],
            "extension": {"earliest": None, "latest": None},
        },
    }
    given = {
        **{"decades": [1920], "recorded": [2], "looked": [2]},
        "rows": [{**row, "label": each} for each in PAYLOADS["spreadsheet"]],
    }
    text = in_node(node, "timeline.asCsv(given)", {"timeline": ASSETS / "timeline.js"}, given)
    rows = list(csv.DictReader(io.StringIO(text, newline="")))
    assert [each["label"].removeprefix("'") for each in rows] == list(PAYLOADS["spreadsheet"])
    assert not [each for each in rows if each["label"].startswith(("=", "+", "-", "@", "＝"))]
    assert {each["showing"] for each in rows} == {"-1"}
