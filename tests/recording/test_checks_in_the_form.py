"""A complaint finds its field in the form, and nothing is complained of that the page cannot know."""

from __future__ import annotations

import json
import re
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from inperiod.publishing.published import published
from inperiod.publishing.recording_data import recording_data, shapes_data
from inperiod.records.model import Catalogue
from inperiod.records.yaml_reading import read_yaml
from parity import in_node
from recording.checks_in_node import ASSETS, as_json, said_by_the_page

HEAD = """title: A list
kind: trade-catalogue
date: 1912-23
date_basis: printed
rights: http://rightsstatements.org/vocab/NKC/1.0/
"""

READ = """(() => {
  const plain = (node) =>
    node.is === "items" ? { ...node, items: node.items.map(plain) }
    : node.is === "table" ? { ...node, keys: [...node.keys], entries: [...node.entries].map(pair) }
    : node;
  const pair = ([name, each]) => [name, plain(each)];
  return given.map((text) => plain(reader.read(text).root));
})()"""


def found(node: str, catalogue: Catalogue, text: str, **more: Any) -> list[tuple[list[Any], str]]:
    """Path and message of all the page says of a source called a-list."""
    root = read_yaml(text.encode(), "sources/a-list.yaml").root
    assert root is not None
    context = {**recording_data(catalogue), "pictures": [], **more}
    said = said_by_the_page(node, [("sources/a-list.yaml", root, 0)], [context])[0]
    return [(each["path"], each["message"]) for each in said]


@pytest.mark.node
@pytest.mark.parametrize(
    ("text", "path"),
    [
        (HEAD.replace("printed", "prnted"), ["date_basis"]),
        (HEAD.replace("date: 1912-23\n", ""), ["date"]),
        (HEAD.replace("date_basis: printed\n", ""), ["date_basis"]),
        (HEAD.replace("title: A list\n", ""), ["title"]),
        (HEAD.replace("date: 1912-23", "date: autumn 1912"), ["date"]),
        (re.sub("rights.*\n", "", HEAD), ["rights"]),
        (HEAD, ["plates"]),
        (f"titel: A\n{HEAD}", ["titel"]),
        (f"{HEAD}held_by: {{name: A library, ulr: x}}\n", ["held_by", "ulr"]),
        (f"{HEAD}held_by: {{name: A library, accessed: lately}}\n", ["held_by", "accessed"]),
    ],
)
def test_a_complaint_of_the_source_leads_to_its_field(
    node: str, demo_catalogue: Catalogue, text: str, path: list[Any]
) -> None:
    assert path in [at for at, _ in found(node, demo_catalogue, text)]


@pytest.mark.node
@pytest.mark.parametrize(
    ("plate", "path"),
    [
        ("{id: p1, garment: blowse, features: [neckline/v]}", ["garment"]),
        ("{id: p1, features: [neckline/v]}", ["garment"]),
        ("{garment: blouse, features: [neckline/v]}", ["id"]),
        ("{id: p1, garment: blouse}", ["features"]),
        ("{id: p1, garment: blouse, features: [neckline/v, neckline/wide]}", ["features", 1]),
        ("{id: p1, garment: blouse, features: [{term: neckline/v, at: nek}]}", ["features", 0, "at"]),
        ("{id: p1, garment: blouse, features: [neckline/v], price: {amout: 5}}", ["price", "amout"]),
        ("{id: p1, garment: blouse, features: [neckline/v], image: {file: a.png}}", ["image", "alt"]),
        ("{id: p1, garment: blouse, features: [neckline/v], outfit: a}", ["outfit"]),
        ("{id: p1, garment: blouse, features: [neckline/v], same_cut_as: a-list/p2}", ["same_cut_as"]),
        (
            "{id: p1, garment: blouse, features: [trim/none], confirmations: [{by: A, reading: disputed}]}",
            ["confirmations", 0],
        ),
    ],
)
def test_a_complaint_of_a_plate_leads_to_its_field(
    node: str, demo_catalogue: Catalogue, plate: str, path: list[Any]
) -> None:
    text = f"{HEAD}plates:\n  - {{id: p0, garment: blouse, features: [neckline/v]}}\n  - {plate}\n"
    assert ["plates", 1, *path] in [at for at, _ in found(node, demo_catalogue, text)]


@pytest.mark.node
def test_where_the_pictures_are_not_known_none_is_missed(node: str, demo_catalogue: Catalogue) -> None:
    plate = "{id: p1, garment: blouse, features: [neckline/v], image: {file: a.png, alt: A blouse.}}"
    text = f"{HEAD}plates:\n  - {plate}\n"
    assert [message for _, message in found(node, demo_catalogue, text)] == [
        "The picture a.png is not in the folder images."
    ]
    assert found(node, demo_catalogue, text, pictures=None) == []


@pytest.mark.node
def test_of_a_source_known_by_its_name_alone_no_plate_is_missed(node: str, demo_catalogue: Catalogue) -> None:
    plate = "{id: p1, garment: blouse, features: [neckline/v], same_cut_as: other-list/p9}"
    text = f"{HEAD}plates:\n  - {plate}\n"
    assert "there is no such plate" in found(node, demo_catalogue, text)[0][1]
    assert found(node, demo_catalogue, text, sources={"other-list": None}) == []


@pytest.mark.node
def test_what_the_readers_of_both_sides_find_is_checked_alike(node: str, demo_folder: Path) -> None:
    """The page's own reader gives the trees that the checker's gives."""
    texts = [each.read_text("utf-8") for each in sorted((demo_folder / "sources").glob("*.yaml"))[::7]]
    theirs = in_node(node, READ, {"reader": ASSETS / "record-yaml.js"}, texts)
    roots = [read_yaml(text.encode(), "x.yaml").root for text in texts]
    assert theirs == [json.loads(json.dumps(as_json(root))) for root in roots if root]


def test_the_shapes_are_given_each_once_and_after_their_parts() -> None:
    shapes = shapes_data()
    assert len({json.dumps(each, sort_keys=True) for each in shapes}) == len(shapes)
    for place, each in enumerate(shapes):
        parts = [
            *each.get("fields", {}).values(),
            *(each[name] for name in ("item", "scalar", "table") if name in each),
        ]
        assert all(part < place for part in parts)
    assert [*shapes[-1]["fields"]][:2] == ["title", "kind"]


def test_nothing_in_the_shapes_needs_what_the_walk_in_the_page_does_not_know() -> None:
    for each in shapes_data():
        assert each["kind"] in ("fields", "list", "text", "word", "integer", "flag", "true", "either")
        assert each["kind"] != "fields" or each["fields"], "a table of any fields is not walked in the page"
        assert "\\s" not in each.get("pattern", "")
        assert "(?<" not in each.get("pattern", "")


def test_what_is_withheld_is_not_handed_over(demo_catalogue: Catalogue) -> None:
    key, source = next(iter(demo_catalogue.sources.items()))
    withheld = {**demo_catalogue.sources, key: replace(source, publish=False)}
    assert key in recording_data(published(demo_catalogue))["sources"]
    shown = json.dumps(recording_data(published(replace(demo_catalogue, sources=withheld))))
    assert f'"{key}' not in shown
