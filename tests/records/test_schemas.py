"""The reader's own judgement held against a general validator of JSON Schema (the package jsonschema)."""

from __future__ import annotations

import copy
import json
from pathlib import Path
from typing import Any

import jsonschema
import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st
from referencing import Registry, Resource
from referencing.jsonschema import DRAFT202012

from inperiod.kept import kept
from inperiod.records.shapes import shape_of
from inperiod.records.shaping import shape
from inperiod.records.yaml_reading import plain_value, read_yaml

NAMES = ("source", "board", "settings", "vocabulary")
WHOLE = Path(__file__).parent / "whole"
FILES = {
    "source": "sources/autumn-list.yaml",
    "board": "boards/saturday.yaml",
    "settings": "inperiod.yaml",
    "vocabulary": "vocabulary/neckline.yaml",
}


def schema(name: str) -> Any:
    return json.loads((kept("schemas") / f"{name}.json").read_text(encoding="utf-8"))


COMMON = Resource(contents=schema("common"), specification=DRAFT202012)
REGISTRY: Registry[Any] = Registry().with_resource("common.json", COMMON)
VALIDATORS = {name: jsonschema.Draft202012Validator(schema(name), registry=REGISTRY) for name in NAMES}


def good(name: str) -> Any:
    root = read_yaml((WHOLE / FILES[name]).read_bytes(), "file.yaml").root
    assert root is not None
    return plain_value(root)


def without_empty(value: Any) -> Any:
    """An empty value counts as no value: the one thing the reader is kinder about than the schemas."""
    if isinstance(value, dict):
        return {key: without_empty(each) for key, each in value.items() if each is not None}
    return [without_empty(each) for each in value] if isinstance(value, list) else value


@pytest.mark.parametrize("name", [*NAMES, "common"])
def test_the_schemas_are_schemas(name: str) -> None:
    jsonschema.Draft202012Validator.check_schema(schema(name))
    assert schema(name)["$schema"] == "https://json-schema.org/draft/2020-12/schema"


@pytest.mark.parametrize("name", NAMES)
def test_a_general_validator_takes_what_the_reader_takes(name: str) -> None:
    assert list(VALIDATORS[name].iter_errors(without_empty(good(name)))) == []


def fields_without_help(value: Any, path: str = "") -> list[str]:
    """Fields of a schema that tell an editor nothing: no description, no reference, no title."""
    if isinstance(value, list):
        return [found for each in value for found in fields_without_help(each, f"{path}[]")]
    if not isinstance(value, dict):
        return []
    fields = value.get("properties", {})
    silent = [
        f"{path}.{key}"
        for key, each in fields.items()
        if isinstance(each, dict) and not {"description", "title", "$ref", "required"} & set(each)
    ]
    return silent + [
        found for key, each in value.items() for found in fields_without_help(each, f"{path}.{key}")
    ]


@pytest.mark.parametrize("name", [*NAMES, "common"])
def test_every_field_helps_an_editor(name: str) -> None:
    assert fields_without_help(schema(name)) == []


WORDS = st.sampled_from(
    ["", "x", "neckline/square", "trim/none", "p1", "P1", "1912", "front", "printed", "https://example.org/",
     "javascript:alert(1)", "no", "true", "a b", "a\nb", "x" * 90, "x" * 1100, "р1", "en", "woman", "A"]
)  # fmt: skip
LEAVES = st.one_of(
    WORDS, st.booleans(), st.integers(-3, 3000), st.sampled_from([1.5, -0.25]), st.text(max_size=5)
)
VALUES = st.recursive(
    LEAVES,
    lambda inner: (
        st.lists(inner, max_size=3)
        | st.dictionaries(
            st.sampled_from(["id", "term", "facet", "none", "name", "file", "x", "kind"]), inner, max_size=3
        )
    ),
    max_leaves=6,
)


ADDED = ("titel", "x", "term", "none", "facet", "id")


@st.composite
def slightly_wrong(draw: st.DrawFn, name: str) -> Any:
    """The good file with one to three of its values changed, added or taken out."""
    value = copy.deepcopy(good(name))
    for _ in range(draw(st.integers(1, 3))):
        at: Any = value
        while True:
            keys = list(at) if isinstance(at, dict) else list(range(len(at)))
            if not keys:
                break
            key = draw(st.sampled_from(keys))
            if isinstance(at[key], (dict, list)) and draw(st.booleans()):
                at = at[key]
                continue
            if draw(st.integers(0, 3)) == 0:
                del at[key]
            elif isinstance(at, dict) and draw(st.integers(0, 3)) == 0:
                at[draw(st.sampled_from(ADDED))] = draw(VALUES)
            else:
                may_be_empty = isinstance(at, dict) and key not in ADDED
                at[key] = draw(VALUES | st.none() if may_be_empty else VALUES)
            break
    return value


def ends_with_line_break(value: Any) -> bool:
    """Python's ``$`` matches before a last line break; that of JSON Schema does not."""
    if isinstance(value, dict):
        return any(ends_with_line_break(each) for each in value.values())
    if isinstance(value, list):
        return any(ends_with_line_break(each) for each in value)
    return isinstance(value, str) and value.endswith("\n")


@pytest.mark.parametrize("name", NAMES)
@settings(max_examples=300, deadline=None)
@given(data=st.data())
def test_the_reader_and_a_general_validator_agree(name: str, data: st.DataObject) -> None:
    value = data.draw(slightly_wrong(name))
    if ends_with_line_break(value):
        return
    document = read_yaml(json.dumps(value, ensure_ascii=True).encode(), "file.yaml")
    if document.root is None:
        return  # what JSON may hold and YAML records may not, such as a NUL
    ours = shape(document.root, shape_of(name), "file.yaml")[1]
    theirs = list(VALIDATORS[name].iter_errors(without_empty(value)))
    assert bool(ours) == bool(theirs), (ours, theirs)


@pytest.mark.parametrize("name", ["demonstration", "vocabulary"])
def test_the_general_validator_takes_every_file_that_is_shipped(name: str) -> None:
    home = Path(__file__).parents[2] / "catalogue"
    if name == "vocabulary":
        files = [(each, "vocabulary") for each in sorted(kept("vocabulary").glob("*.yaml"))]
    else:
        files = [(each, "source") for each in sorted((home / "sources").glob("*.yaml"))]
        files += [(each, "board") for each in sorted((home / "boards").glob("*.yaml"))]
    assert files
    for file, kind in files:
        root = read_yaml(file.read_bytes(), file.name).root
        assert root is not None
        errors = list(VALIDATORS[kind].iter_errors(without_empty(plain_value(root))))
        assert not errors, (file.name, errors[0].message)


def test_plain_scalars_mean_to_the_reader_what_they_mean_to_yaml_1_2() -> None:
    """Tag resolution of the core schema: YAML 1.2.2, §10.3.2, its example and its regular expressions."""
    text = (
        "A null: null\nAlso a null:\nNot a null: ''\n"
        "Booleans: [ true, True, false, FALSE ]\nIntegers: [ 0, -19 ]\n"
        "Floats: [ 0., -0.0, .5, +12e03, -2E+05 ]\n"
        "Text: [ no, on, yes, y, 12:30, 1912-09-01, 0b1, 1_000, =, <, N ]\n"
    )
    root = read_yaml(text.encode(), "file.yaml").root
    assert root is not None
    assert plain_value(root) == {
        "A null": None,
        "Also a null": None,
        "Not a null": "",
        "Booleans": [True, True, False, False],
        "Integers": [0, -19],
        "Floats": [0.0, -0.0, 0.5, 12000.0, -200000.0],
        "Text": ["no", "on", "yes", "y", "12:30", "1912-09-01", "0b1", "1_000", "=", "<", "N"],
    }
    # The 1.1 rules turn times and ordinary words into something else: that is what is avoided.
    assert yaml.safe_load("[no, on, 12:30]") == [False, True, 750]
