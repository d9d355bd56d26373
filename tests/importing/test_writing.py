"""What the writer writes, the catalogue's own reader reads back, and another YAML reader too."""

from __future__ import annotations

from typing import Any

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as some

from inperiod.importing.writing import DATE_FIELDS, PLATE_ORDER, SOURCE_ORDER, source_yaml, to_yaml
from inperiod.records import tidy
from inperiod.records.yaml_reading import plain_value, read_yaml

AWKWARD = [
    *(
        "no",
        "on",
        "Yes",
        "null",
        "~",
        "1912",
        "0x1F",
        "1_000",
        "12:30",
        "1e5",
        ".5",
        "-",
        "- a",
        "a: b",
        "a #b",
    ),
    *(
        "=1+1",
        "@home",
        "*star",
        "&amp",
        "!tag",
        "%x",
        "`",
        "'",
        '"',
        "\\",
        "{",
        "[a",
        "a, b",
        "?",
        "? a",
        ":",
    ),
    *(
        " lead",
        "trail ",
        "two\nlines",
        "\ttab",
        "a\r\nb",
        "“curly”",
        "’tis",
        "crêpe de chine",
        "綾",
        "🪡",
        "\u2028",
    ),
    *("8/11", "1912-09-01", "1912-23", "ends with:", "---", "...", "\ufeffx", "\x85", "<<", "£2 2s.", "it's"),
]
texts = some.one_of(
    some.sampled_from(AWKWARD),
    some.text(some.characters(exclude_categories=("Cs",), exclude_characters="\0"), max_size=40),
)
scalars = some.one_of(
    texts,
    some.none(),
    some.booleans(),
    some.integers(-(10**14), 10**14),
    some.floats(-1e9, 1e9).map(lambda x: round(x, 3)),
)
# A date stands plain on purpose; "<<" as a name is not used here.
names = texts.filter(lambda name: name != "<<" and name not in DATE_FIELDS)
values = some.recursive(
    scalars,
    lambda inner: some.one_of(some.lists(inner, max_size=4), some.dictionaries(names, inner, max_size=4)),
    max_leaves=12,
)
records = some.dictionaries(
    names.filter(lambda name: name not in {"date", "on"}), values, min_size=1, max_size=5
)


@given(records)
def test_whatever_is_written_reads_back_equal(record: dict[str, Any]) -> None:
    document = read_yaml(to_yaml(record).encode("utf-8"), "made.yaml")
    assert not document.problems
    assert document.root is not None
    assert plain_value(document.root) == record


@given(records)
def test_another_reader_of_yaml_agrees(record: dict[str, Any]) -> None:
    # PyYAML resolves by YAML 1.1, where more words mean more than themselves.
    assert yaml.safe_load(to_yaml(record)) == record


@pytest.mark.parametrize("text", AWKWARD)
def test_awkward_text_keeps_every_character(text: str) -> None:
    document = read_yaml(
        to_yaml({"note": text, "list": [text], "inside": {"note": text}}).encode(), "made.yaml"
    )
    assert document.root is not None
    assert plain_value(document.root) == {"note": text, "list": [text], "inside": {"note": text}}


def test_a_source_is_written_in_the_house_order_with_short_features() -> None:
    written = source_yaml(
        {
            "plates": [
                {
                    "features": [{"term": "neckline/square"}, {"term": "trim/insertion", "at": "neckline"}],
                    "garment": "day-dress",
                    "id": "p14-3",
                    "locator": {"page": 14, "item": "2207"},
                    "caption": "No. 2207: in white",
                    "price": {},
                }
            ],
            "date": "1912-23",
            "kind": "trade-catalogue",
            "title": "Autumn List of Washing Frocks",
            "publish": None,
        }
    )
    assert written == (
        "title: Autumn List of Washing Frocks\n"
        "kind: trade-catalogue\n"
        "date: 1912-23\n"
        "plates:\n"
        "  - id: p14-3\n"
        '    locator: {page: 14, item: "2207"}\n'
        "    garment: day-dress\n"
        '    caption: "No. 2207: in white"\n'
        "    features:\n"
        "      - neckline/square\n"
        "      - {term: trim/insertion, at: neckline}\n"
    )


def test_a_year_alone_stands_plain_as_a_date() -> None:
    assert to_yaml({"date": "1926", "price": "1926"}) == 'date: 1926\nprice: "1926"\n'


def test_a_value_no_record_can_hold_is_refused() -> None:
    with pytest.raises(TypeError, match="bytes"):
        to_yaml({"title": b"bytes"})


def test_every_field_has_its_place_in_the_order() -> None:
    assert len(set(SOURCE_ORDER)) == len(SOURCE_ORDER)
    assert len(set(PLATE_ORDER)) == len(PLATE_ORDER)


@given(records)
def test_what_is_written_is_tidy(record: dict[str, Any]) -> None:
    written = to_yaml(record).encode("utf-8")
    assert tidy(written) == written
