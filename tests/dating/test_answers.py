"""The answer to "when is that?", as other programs get it."""

from __future__ import annotations

import json

from hypothesis import given
from hypothesis import strategies as st

from inperiod.dating import when_json


def test_an_answer_has_the_stable_keys_in_order_with_days_before_and_after_widening() -> None:
    assert when_json("Ca. 1910") == {
        "input": "Ca. 1910",
        "edtf": "1910~",
        "earliest": "1910-01-01",
        "latest": "1910-12-31",
        "approximate": True,
        "uncertain": False,
        "widened": {"earliest": "1905-01-01", "latest": "1915-12-31"},
        "words": "about 1910",
        "note": None,
    }
    keys = "input edtf earliest latest approximate uncertain widened words note"
    assert " ".join(when_json("1912")) == keys


def test_an_open_end_is_null_before_and_after() -> None:
    answer = when_json("before c. 1910")
    assert answer["earliest"] is None
    assert answer["latest"] == "1909-12-31"
    assert answer["widened"] == {"earliest": None, "latest": "1914-12-31"}


def test_the_circa_years_and_the_hemisphere_are_settings() -> None:
    assert when_json("c. 1910", 10)["widened"] == {"earliest": "1900-01-01", "latest": "1920-12-31"}
    assert when_json("Autumn 1912", seasons="southern")["earliest"] == "1912-03-01"


def test_the_note_keeps_what_was_not_taken() -> None:
    assert when_json("1939, printed 1946")["note"] == "also printed 1946"


def test_what_cannot_be_read_gives_the_input_and_the_reason() -> None:
    assert when_json("n.d.") == {"input": "n.d.", "error": "the phrase says that there is no date"}
    assert list(when_json("turn of the century")) == ["input", "error"]


@given(st.text(max_size=40))
def test_every_answer_is_json(text: str) -> None:
    answer = when_json(text)
    assert json.loads(json.dumps(answer)) == answer
    assert ("error" in answer) != ("edtf" in answer)
