"""The help on awkward cases: its examples are sound records, and it answers what people ask."""

from __future__ import annotations

import re

import pytest

from inperiod.kept import kept
from inperiod.records.checks.words import unknown_feature, unknown_garment
from inperiod.records.model import Catalogue
from inperiod.records.reading import read_source

PAGE = (kept("site") / "pages" / "how-to-record.md").read_text(encoding="utf-8")
EXAMPLES = re.findall(r"```yaml\n(.*?)```", PAGE, re.DOTALL)


@pytest.mark.parametrize("example", EXAMPLES)
def test_every_example_is_a_sound_record(example: str, demo_catalogue: Catalogue) -> None:
    plates = "".join(f"  {line}\n" for line in example.splitlines())
    text = f"title: An example\nkind: trade-catalogue\ndate: 1912\ndate_basis: printed\nplates:\n{plates}"
    source, problems = read_source(text.encode(), "sources/example.yaml", "northern", {})
    assert problems == []
    assert source is not None
    for plate in source.plates:
        assert unknown_garment(plate.garment, demo_catalogue.vocabulary, plate.mark) is None
        for feature in plate.features:
            assert unknown_feature(feature, demo_catalogue.vocabulary) is None


@pytest.mark.parametrize(
    "case",
    [
        *("outfit", "detail", "text without", "same cut", "reprint", "undated page", "retouched"),
        *("price for each size", "not visible, or none"),
    ],
)
def test_the_awkward_cases_have_an_answer_of_their_own(case: str) -> None:
    headings = [line.lower() for line in PAGE.splitlines() if line.startswith("## ")]
    assert [heading for heading in headings if case in heading]
