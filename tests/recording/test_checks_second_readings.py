"""What a second reader found is kept in the record, and a dispute stays open until somebody settles it."""

from __future__ import annotations

from pathlib import Path

import pytest

from inperiod.records import read_catalogue
from inperiod.records.checks.readings import open_disputes
from inperiod.records.reading import read_source

HEAD = """title: Autumn List
kind: trade-catalogue
date: 1912-23
date_basis: printed
rights: http://rightsstatements.org/vocab/NKC/1.0/
plates:
  - id: p1
    garment: blouse
    features: [neckline/square, trim/none]
    confirmations:
"""
DISPUTE = "{by: A. B., on: 2026-03-14, reading: disputed, feature: neckline/square, instead: neckline/round}"


def still_open(*entries: str) -> list[str]:
    """Who still disputes, after these confirmations."""
    text = HEAD + "".join(f"      - {entry}\n" for entry in entries)
    source, problems = read_source(text.encode(), "sources/autumn-list.yaml", "northern", {})
    assert source is not None
    assert problems == []
    return [each.by for each in open_disputes(source.plates[0])]


def test_a_dispute_alone_is_open() -> None:
    assert still_open(DISPUTE) == ["A. B."]


@pytest.mark.parametrize(
    "settling",
    [
        "{by: C. D., on: 2026-03-20, reading: confirmed, feature: neckline/square}",
        "{by: C. D., on: 2026-03-20, reading: corrected, feature: neckline/square, instead: neckline/round}",
        "{by: C. D., on: 2026-03-20, reading: confirmed, feature: neckline/round}",
        "{by: C. D., on: 2026-03-20, reading: confirmed}",
        "{by: A. B., reading: confirmed, feature: neckline/square, note: I was wrong.}",
    ],
)
def test_a_later_word_on_the_same_reading_settles_it(settling: str) -> None:
    assert still_open(DISPUTE, settling) == []


@pytest.mark.parametrize(
    "other",
    [
        "{by: C. D., on: 2026-03-20, reading: confirmed, feature: trim/none}",
        "{by: C. D., on: 2026-03-01, reading: confirmed, feature: neckline/square}",
        "{by: C. D., on: 2025, reading: confirmed}",
    ],
)
def test_a_word_on_another_reading_or_of_before_settles_nothing(other: str) -> None:
    assert still_open(DISPUTE, other) == ["A. B."]


def test_where_days_are_not_told_apart_the_order_of_the_list_tells() -> None:
    confirmed = "{by: C. D., on: 2026-03, reading: confirmed, feature: neckline/square}"
    assert still_open(DISPUTE, confirmed) == []
    assert still_open(confirmed, DISPUTE) == ["A. B."]


def test_a_later_day_settles_wherever_it_stands_in_the_list() -> None:
    assert still_open("{by: C. D., on: 2026-04-01, reading: confirmed}", DISPUTE) == []


def test_a_doubted_plate_is_settled_by_a_word_on_the_whole_plate_alone() -> None:
    doubt = "{by: A. B., reading: disputed, note: Is it the same figure?}"
    assert still_open(doubt, "{by: C. D., reading: confirmed, feature: neckline/square}") == ["A. B."]
    assert still_open(doubt, "{by: C. D., reading: confirmed}") == []


def test_a_second_dispute_after_a_settlement_is_open_again() -> None:
    settled = "{by: C. D., on: 2026-03-20, reading: confirmed, feature: neckline/square}"
    again = "{by: E. F., on: 2026-04-02, reading: disputed, feature: neckline/square}"
    assert still_open(DISPUTE, settled, again) == ["E. F."]


def test_the_demonstration_shows_a_dispute_that_was_settled(demo_folder: Path) -> None:
    plates = read_catalogue(demo_folder).catalogue.plates.values()
    disputed = [p for p in plates if any(each.reading == "disputed" for each in p.confirmations)]
    assert disputed
    assert not any(open_disputes(plate) for plate in disputed)
