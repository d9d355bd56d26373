"""The phrase reader on real phrases of museum cataloguers, with the museum's own bounds.

Source: collection data of the Carnegie Museum of Art, Pittsburgh (2015 ff.), CC0 1.0, 1,457 distinct phrases
from 1400 onward; not part of the project, so these checks are skipped where the data is absent.

A phrase is *right* when it is read and both ends, before any widening, lie within the museum's own
smallest–largest bounds, in whole years, with a slack of one year, or of twenty where the phrase itself is
vague (``VAGUE``); an open end is right when the other is. *Strictly right* asks each end to lie within the
bounds the museum gives for that end: where the museum spans two events ("1930, cast 1955") and we take one by
rule, that counts against us. The museum's bounds hold slips of their own, so neither figure can reach 100 %.
"""

from __future__ import annotations

import csv
import re
from pathlib import Path

import pytest

from inperiod.dating import Unreadable, iso_day, read_phrase

VAGUE = re.compile(
    r"\b(?:c|ca)\.|\b(?:ca|circa|about|early|mid|late|before|after|earlier|later|half|quarter|possibly|probably)\b|\?",
    re.IGNORECASE,
)
RIGHT_AT_LEAST = 0.98
STRICTLY_RIGHT_AT_LEAST = 0.945

Row = dict[str, str]


@pytest.fixture(scope="module")
def rows(shared: Path) -> list[Row]:
    with (shared / "data" / "museum-dates" / "dates.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def within(day: int | None, first: str, last: str, slack: int) -> bool | None:
    """Whether the day's year lies within the years of two days of the museum; None for an open end."""
    if day is None:
        return None
    return int(first[:4]) - slack <= int(iso_day(day)[:4]) <= int(last[:4]) + slack


def judged(row: Row, strictly: bool) -> bool:
    try:
        span = read_phrase(row["date_text"]).span
    except Unreadable:
        return False
    slack = 20 if VAGUE.search(row["date_text"]) else 1
    first, last = row["earliest_min"], row["latest_max"]
    ends = (
        within(span.earliest, first, row["earliest_max"] if strictly else last, slack),
        within(span.latest, row["latest_min"] if strictly else first, last, slack),
    )
    return any(ends) and False not in ends


def share(rows: list[Row], strictly: bool) -> tuple[float, list[str]]:
    wrong = [row["date_text"] for row in rows if not judged(row, strictly)]
    return 1 - len(wrong) / len(rows), wrong


def test_nearly_every_museum_phrase_is_read_within_the_museums_bounds(
    rows: list[Row], capsys: pytest.CaptureFixture[str]
) -> None:
    right, wrong = share(rows, strictly=False)
    strictly_right, _ = share(rows, strictly=True)
    with capsys.disabled():
        print(f"\nmuseum phrases: {right:.1%} of {len(rows):,} right, {strictly_right:.1%} strictly right")
    assert right >= RIGHT_AT_LEAST, wrong
    assert strictly_right >= STRICTLY_RIGHT_AT_LEAST


def test_few_museum_phrases_are_refused_and_each_with_a_reason(rows: list[Row]) -> None:
    refused = {}
    for row in rows:
        try:
            read_phrase(row["date_text"])
        except Unreadable as problem:
            refused[row["date_text"]] = str(problem)
    assert set(refused) == {
        "c. 1650/after 1661",  # two dates or two states of one thing?
        "c. 1660 UPH 1641-1655",  # a house abbreviation
        "late Qing?",  # how much of 268 years is late?
        "posthumous reprint",  # no year at all
    }
    assert all(refused.values())


def test_undated_textiles_are_told_from_unreadable_ones(shared: Path) -> None:
    with (shared / "data" / "museum-dates" / "textiles.csv").open(encoding="utf-8", newline="") as file:
        phrases = {row["creation_date"] for row in csv.DictReader(file)}
    unread = {phrase for phrase in phrases if phrase.strip() and not can_be_read(phrase)}
    assert len(unread) <= 0.02 * len(phrases), sorted(unread)


def can_be_read(phrase: str) -> bool:
    try:
        read_phrase(phrase)
    except Unreadable:
        return False
    return True
