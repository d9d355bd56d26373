"""What is worked out for a board: verdicts, what is still to settle, what to gather, what to cite."""

from __future__ import annotations

from collections import Counter

import pytest

from inperiod.boards import KINDS, as_json, resolve
from inperiod.citing import STYLES, cite_source
from inperiod.dating import in_words, widened
from inperiod.evidence import Question, Window, answer, usual_in_window

OUTSIDE = "tullaghfane-linen-summer-1924/p9-2"  # summer 1924
STYLED = "nightdress-by-style-extant/gown"  # dated by its style alone
NEAREST = "thimble-hour-1926-06/p219-2"  # June 1926
HAT = "thimble-hour-1926-06/p204-1h"


def said(board, kind=None):
    return [each for each in board.remarks if kind is None or each.kind == kind]


def test_every_planned_feature_has_the_answer_of_the_question_asked_alone(demo_catalogue, demo_facts):
    for board in demo_catalogue.boards.values():
        found = resolve(board, demo_catalogue, demo_facts)
        span = widened(board.target.span, demo_catalogue.settings.circa_years)
        terms = tuple(each.term for each in board.features)
        whole = answer(demo_facts, Question(board.garment, terms, Window(span.earliest, span.latest)))
        assert found.findings == whole.findings
        assert found.together == whole.together


def test_the_demonstration_holds_a_clean_board_and_one_with_gaps_and_departures(demo_catalogue, demo_facts):
    found = {key: resolve(board, demo_catalogue, demo_facts) for key, board in demo_catalogue.boards.items()}
    assert len(found) == 3
    suit, gown = found["boys-bathing-suit-1926"], found["nightdress-boathouse-hotel"]
    assert not said(suit, "gap")
    assert len(said(gown, "gap")) >= 3
    assert len(gown.board.departures) >= 3
    assert said(gown, "outside")
    assert said(gown, "weak")
    assert not any(said(each, "contradiction") for each in found.values())
    for each in found.values():
        assert each.sheet.lines
        assert not each.sheet.problems
        assert each.cautions


def test_an_empty_board_has_nothing_to_settle(resolved):
    found = resolved()
    assert (found.planned, found.together, found.remarks, found.suggested) == ((), None, (), ())
    assert found.bibliography == ()


def test_two_terms_of_an_exclusive_facet_contradict_each_other_once(resolved):
    found = resolved("[neckline/v, neckline/square]")
    (one,) = said(found, "contradiction")
    assert one.sentence == "A garment has one neckline at a time, and V neck and square neck are planned."


def test_presence_and_absence_of_a_facet_contradict_each_other(resolved):
    found = resolved("[trim/ribbon, trim/none]")
    (one,) = said(found, "contradiction")
    assert one.sentence == "The plan says that there is no trim, and also ribbon."


def test_a_term_planned_before_it_can_be_is_a_contradiction_and_no_gap(resolved, demo_catalogue):
    late = next(
        term
        for term in demo_catalogue.vocabulary.terms.values()
        if term.not_before and demo_catalogue.vocabulary.applies(term, "nightdress")
    )
    found = resolved(f"[{late.key}]", head="target: 1801\ngarment: nightdress")
    (one,) = found.remarks
    assert one.kind == "contradiction"
    assert in_words(late.not_before.date.text) in one.sentence
    assert found.findings[0].verdict == "too early"


def test_what_is_planned_and_not_attested_is_a_gap(resolved):
    found = resolved("[neckline/v, fabric/lawn]")
    assert [(each.term, each.sentence) for each in said(found, "gap")] == [("fabric/lawn", "Lawn: unproven.")]


@pytest.mark.parametrize(
    ("plate", "supports", "kind"),
    [
        (OUTSIDE, "fabric/lawn", "outside"),
        (STYLED, "seam/felled-seam", "weak"),
        (NEAREST, "fabric/lawn", "not shown"),
        (HAT, "neckline/v", "garment"),
        (NEAREST, "collar/jabot", "unplanned"),
        ("no-such-source/p1", "fabric/lawn", "unknown"),
    ],
)
def test_each_finding_about_a_support_is_said_once(resolved, plate, supports, kind):
    found = resolved(
        "[neckline/v, fabric/lawn, seam/felled-seam]", f"[{{plate: {plate}, supports: {supports}}}]"
    )
    counted = Counter(each.kind for each in found.remarks if each.plate == plate)
    assert counted[kind] == 1
    assert set(counted.values()) == {1}
    assert kind in KINDS


def test_a_plate_gathered_for_no_feature_in_particular_is_not_held_to_anything(resolved):
    found = resolved("[neckline/v]", f"[{OUTSIDE}, {STYLED}, {HAT}]")
    assert not [each for each in found.remarks if each.plate]
    assert [each.side for each in found.gathered] == ["before", "before", "before"] or found.gathered


def test_supports_inside_the_window_that_show_it_leave_nothing_to_settle(resolved):
    found = resolved("[sleeve/kimono]", f"[{{plate: {NEAREST}, supports: sleeve/kimono}}]")
    assert found.remarks == ()
    (each,) = found.gathered
    assert (each.side, each.weight, each.aside, each.supported) == ("inside", 1.0, None, "shown")


def test_suggested_plates_show_the_plan_inside_the_window_and_are_not_gathered(
    resolved, demo_catalogue, demo_facts
):
    plan = ("neckline/v", "closure/slip-on", "sleeve/kimono", "colour/white")
    found = resolved(f"[{', '.join(plan)}]")
    assert found.suggested
    counts = [len(each.shows) for each in found.suggested]
    assert counts == sorted(counts, reverse=True)
    assert min(counts) >= 2
    for each in found.suggested:
        plate = demo_catalogue.plates[each.plate]
        shown = {feature.term for feature in plate.features}
        assert set(each.shows) <= shown
        assert demo_catalogue.sources[plate.source].grade == "A"
        assert plate.garment == "nightdress"
    first = found.suggested[0].plate
    again = resolved(f"[{', '.join(plan)}]", f"[{first}]")
    assert first not in [each.plate for each in again.suggested]


def test_usual_alternatives_stand_beside_what_is_not_attested(resolved, demo_facts):
    found = resolved("[neckline/v, fabric/lawn]")
    by_term = {each.feature.term: each for each in found.planned}
    assert by_term["neckline/v"].usual == ()
    usual = usual_in_window(demo_facts, Question("nightdress", (), found.window), "fabric")
    assert by_term["fabric/lawn"].usual == tuple(each for each in usual if each.term != "fabric/lawn")[:4]


def test_plates_to_cite_lie_in_the_window_and_only_where_it_was_seen_there(resolved, demo_catalogue):
    found = resolved("[neckline/v, fabric/lawn]")
    seen, unseen = found.planned
    assert unseen.to_cite == ()
    assert seen.to_cite
    for key in seen.to_cite:
        span = demo_catalogue.dated(demo_catalogue.plates[key]).span
        assert span.latest >= found.window.earliest
        assert span.earliest <= found.window.latest


@pytest.mark.parametrize("style", [None, "nonesuch", *STYLES])
def test_the_bibliography_lists_each_source_once_in_the_style_asked_for(resolved, demo_catalogue, style):
    more = f"citation_style: {style}\n" if style else ""
    found = resolved("[]", f"[{OUTSIDE}, {NEAREST}, {HAT}]", more=more)
    assert [each.source for each in found.bibliography].count("thimble-hour-1926-06") == 1
    assert len(found.bibliography) == 2
    assert STYLES[found.style].listing
    if style in STYLES and STYLES[style].listing:
        assert found.style == style
    for each in found.bibliography:
        assert each.text == cite_source(demo_catalogue, each.source, found.style)


def test_what_the_catalogue_does_not_know_is_named_and_not_asked(resolved):
    found = resolved("[neckline/nonesuch]", head="target: 1926\ngarment: nonesuch")
    assert found.planned[0].finding is None
    assert [each.kind for each in found.remarks] == ["gap"]


def test_the_json_names_every_part(demo_catalogue, demo_facts):
    board = demo_catalogue.boards["nightdress-boathouse-hotel"]
    data = as_json(resolve(board, demo_catalogue, demo_facts))
    assert [each["term"] for each in data["features"]] == [each.term for each in board.features]
    assert data["plates"][0]["plate"] == board.plates[0].plate
    assert data["departures"][0]["shows_at"] == "at arm's length"
    assert data["making"]["lines"]
    assert {each["kind"] for each in data["remarks"]} <= set(KINDS)
