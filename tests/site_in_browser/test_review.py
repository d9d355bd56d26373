"""Reading a source again: what a second reader confirms, corrects or disputes is in the record afterwards."""

from __future__ import annotations

import json

import pytest

from conftest import CHECKOUT, missing
from inperiod.records.checks.readings import open_disputes
from inperiod.records.reading import read_source
from inperiod.records.tidying import tidy
from parity import in_node
from site_in_browser.test_every_page import AXE

SOURCE = "harrowmere-washing-frocks-1926"
SCRIPTS = CHECKOUT / "site" / "assets"
BY = {"by": "C. D.", "on": "2026-11-25"}


def review(node, expression, given):
    return in_node(node, expression, {"review": SCRIPTS / "record-review.js"}, given)


@pytest.mark.node
def test_readings_are_the_garment_and_every_feature(node):
    plate = {
        "garment": "blouse",
        "features": [
            "neckline/v",
            {"term": "trim/braid", "at": "hem"},
            {"facet": "collar", "none": True},
            {"facet": "sleeve", "not_visible": True},
        ],
    }
    words = review(node, "review.readingsOf(given).map((each) => each.word)", plate)
    assert words == ["garment/blouse", "neckline/v", "trim/braid", "collar/none", "sleeve/not visible"]


@pytest.mark.node
@pytest.mark.parametrize(
    ("word", "instead", "features"),
    [
        ("neckline/v", "neckline/round", ["neckline/round", {"term": "trim/braid", "at": "hem"}]),
        ("trim/braid", "trim/piping", ["neckline/v", {"term": "trim/piping", "at": "hem"}]),
        ("trim/braid", "trim/none", ["neckline/v", {"facet": "trim", "none": True}]),
        (
            "neckline/v",
            "neckline/not visible",
            [{"facet": "neckline", "not_visible": True}, {"term": "trim/braid", "at": "hem"}],
        ),
        ("neckline/v", None, [{"term": "trim/braid", "at": "hem"}]),
    ],
)
def test_a_correction_keeps_what_stood_beside_the_reading(node, word, instead, features):
    plate = {"features": ["neckline/v", {"term": "trim/braid", "at": "hem"}]}
    told = review(
        node,
        "review.corrected(given.plate, given.word, given.instead)",
        {"plate": plate, "word": word, "instead": instead},
    )
    assert told["features"] == features


@pytest.mark.node
def test_a_figure_is_read_again_when_every_reading_is_and_none_is_disputed(node):
    plate = {"garment": "blouse", "features": ["neckline/v"]}
    told = [
        [],
        [{**BY, "reading": "confirmed", "feature": "garment/blouse"}],
        [{**BY, "reading": "confirmed"}],
        [{**BY, "reading": "confirmed"}, {**BY, "reading": "disputed", "feature": "neckline/v"}],
    ]
    given = [{**plate, "confirmations": each} for each in told]
    assert review(node, "given.map(review.isReadAgain)", given) == [False, False, True, False]


@pytest.mark.browser
def test_a_second_reader_goes_through_a_source_by_keys_alone(opened, demo_catalogue):
    if not AXE.is_file():
        missing(f"{AXE} is absent: run npm ci in tests/")
    file = demo_catalogue.folder / "sources" / f"{SOURCE}.yaml"
    page = opened("record.html")
    page.set_input_files("#record-choose-file", str(file))
    page.wait_for_selector("#record-review-open")
    page.focus("#record-review-open")
    keys = page.keyboard
    keys.press("Enter")
    keys.type("C. D.")
    keys.press("Enter")
    keys.press("y")  # the garment
    keys.press("y")
    keys.press("o")
    keys.type("round n")
    keys.press("Tab")
    keys.type("The edge is curved.")
    keys.press("Tab")
    keys.press("Enter")  # dispute it
    plate = page.evaluate("InPeriod.recording.figure()")
    words = [(each["reading"], each["feature"]) for each in plate["confirmations"]]
    assert [reading for reading, _ in words] == ["confirmed", "confirmed", "disputed"]
    assert words[0][1] == f"garment/{plate['garment']}"
    page.wait_for_selector("#record-problems li")
    assert "C. D. disputes the reading of" in page.inner_text("#record-wrong")
    page.evaluate(AXE.read_text(encoding="utf-8"))
    violations = page.evaluate("axe.run(document, { preload: false })")["violations"]
    assert [(each["id"], each["nodes"][0]["html"]) for each in violations] == []
    keys.press("n")
    assert page.evaluate("InPeriod.recording.get().at") == 1
    keys.press("a")
    assert page.inner_text("#record-review [role=status]").startswith("1 of")
    keys.press("Control+z")
    assert page.inner_text("#record-review [role=status]").startswith("0 of")
    text = page.evaluate(
        "InPeriod.recordYaml.updated(InPeriod.recording.get().file.text, InPeriod.recording.get().source)"
    )
    assert tidy(text.encode()) == text.encode()
    source, problems = read_source(text.encode(), f"sources/{SOURCE}.yaml", "northern", {})
    assert source is not None
    assert [each for each in problems if each.severity == "error"] == []
    (dispute,) = open_disputes(source.plates[0])
    assert (dispute.by, dispute.instead, dispute.note) == ("C. D.", "neckline/round", "The edge is curved.")
    before = file.read_text(encoding="utf-8").splitlines()
    assert set(before) <= set(text.splitlines()), json.dumps(sorted(set(before) - set(text.splitlines())))
