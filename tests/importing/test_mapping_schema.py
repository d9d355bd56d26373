"""The schema of mappings says the same as the reader, so that an editor can help while one is written."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
import yaml
from jsonschema import Draft202012Validator
from referencing import Registry, Resource

from inperiod.importing.writing import PLATE_ORDER, SOURCE_ORDER
from inperiod.kept import kept


def load(name: str) -> Any:
    return json.loads((kept("schemas") / name).read_text(encoding="utf-8"))


@pytest.fixture(scope="module")
def validator() -> Draft202012Validator:
    resources = [(name, Resource.from_contents(load(name))) for name in ("common.json", "mapping.json")]
    return Draft202012Validator(load("mapping.json"), registry=Registry().with_resources(resources))


def test_it_is_a_schema(validator: Draft202012Validator) -> None:
    Draft202012Validator.check_schema(load("mapping.json"))


def test_the_museums_mapping_is_valid(validator: Draft202012Validator) -> None:
    mapping = yaml.safe_load((Path(__file__).parent / "museum-mapping.yaml").read_text(encoding="utf-8"))
    assert [each.message for each in validator.iter_errors(mapping)] == []


@pytest.mark.parametrize(
    "change", [{"id": None}, {"rows": "cells"}, {"extra": 1}, {"garment": {"rules": []}}]
)
def test_a_wrong_mapping_is_not(validator: Draft202012Validator, change: dict[str, Any]) -> None:
    assert list(validator.iter_errors({"id": "{a}", "source": {"title": "{b}"}, **change}))


def test_every_field_of_a_source_and_a_plate_has_a_place_in_the_order() -> None:
    source = load("source.json")
    assert set(source["properties"]) == set(SOURCE_ORDER)
    plates = source["properties"]["plates"]["items"]
    plate = load("common.json")["$defs"][plates["$ref"].rpartition("/")[2]] if "$ref" in plates else plates
    assert set(plate["properties"]) == set(PLATE_ORDER)
