"""Captions read as printed, no two alike, and say what their plates record."""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import replace
from typing import TYPE_CHECKING

from demonstration.agreement import CLOTHS, RULES, disagreements, says_cloth

if TYPE_CHECKING:
    from inperiod.records.model import Catalogue


def captions(catalogue: Catalogue) -> list[str]:
    return [plate.caption for plate in catalogue.all_plates() if plate.caption]


def test_no_two_captions_are_alike(demo_catalogue: Catalogue) -> None:
    plainly = Counter(re.sub(r"\W+", " ", caption).casefold().strip() for caption in captions(demo_catalogue))
    assert [caption for caption, times in plainly.items() if times > 1] == []


def test_no_turn_of_phrase_is_worn_out(demo_catalogue: Catalogue) -> None:
    """Seven words running that come in more than two captions would smell of a template."""
    runs: Counter[tuple[str, ...]] = Counter()
    for caption in captions(demo_catalogue):
        words = re.findall(r"\w+", caption.casefold())
        runs.update({tuple(words[at : at + 7]) for at in range(len(words) - 6)})
    assert [" ".join(run) for run, times in runs.items() if times > 2] == []


def test_nearly_every_plate_has_a_caption(demo_catalogue: Catalogue) -> None:
    silent = [p for p in demo_catalogue.all_plates() if not p.caption]
    assert all(demo_catalogue.sources[plate.source].kind == "extant" for plate in silent)


def test_no_caption_contradicts_its_plate(demo_catalogue: Catalogue) -> None:
    assert [each for plate in demo_catalogue.all_plates() for each in disagreements(plate)] == []


def test_a_square_neck_over_a_v_would_be_noticed(demo_catalogue: Catalogue) -> None:
    plate = demo_catalogue.plates["harrowmere-washing-frocks-1926/p2-1"]
    spoilt = tuple(
        replace(f, term="neckline/v") if f.term == "neckline/square" else f for f in plate.features
    )
    assert disagreements(replace(plate, features=spoilt)) == [
        "harrowmere-washing-frocks-1926/p2-1: “square neck” but not neckline/square"
    ]


def test_the_rules_are_used(demo_catalogue: Catalogue) -> None:
    """A rule that no caption ever meets checks nothing."""
    said = [plate.translation or plate.caption or "" for plate in demo_catalogue.all_plates()]
    unused = [words for words, _ in RULES if not any(re.search(words, each, re.IGNORECASE) for each in said)]
    assert unused == []


def test_a_cloth_is_called_read_only_where_words_name_it(demo_catalogue: Catalogue) -> None:
    """Or where the source's note says from which table or page the cloths were read."""
    unsaid = [
        f"{plate.key}: {f.term}"
        for plate in demo_catalogue.all_plates()
        for f in plate.features
        if f.facet == "fabric" and f.term and f.reading == "read" and not says_cloth(plate, f.term)
    ]
    without_note = [each for each in unsaid if not demo_catalogue.sources[each.split("/")[0]].note]
    assert without_note == []
    assert "fabric/pique" in CLOTHS
