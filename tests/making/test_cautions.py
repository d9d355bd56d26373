"""What can hurt is said beside what it concerns, points at a published rule, and defers to those who know."""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from inperiod.dating import read_edtf
from inperiod.making.cautions import ALWAYS, CORDS, SENTENCES, SMALL, WOOL, caution_name, cautions_for
from inperiod.records.model import Board, Catalogue, Dated, Feature, Mark, Wearer

PAGE = Path(__file__).parents[2] / "site" / "pages" / "cautions.md"
MARK = Mark("boards/test.yaml")


def board(garment: str = "day-dress", *terms: str, who: str = "woman", **fields: Any) -> Board:
    return Board(
        "test",
        "A test",
        Dated("1926", read_edtf("1926"), MARK),
        garment,
        MARK,
        wearer=Wearer(who),
        features=tuple(Feature(term.split("/")[0], term, MARK) for term in terms),
        **fields,
    )


def found(given: Board) -> list[tuple[str, str]]:
    return [(caution.id, caution.where) for caution in cautions_for(given)]


def test_a_harmless_board_has_no_caution() -> None:
    assert cautions_for(board("blouse", "neckline/v", "fabric/pongee")) == ()


@pytest.mark.parametrize(
    ("given", "caution", "where"),
    [
        (board("child-frock", "fastening/drawstring"), "cords-children", "fastening/drawstring"),
        (board("shirt", "fastening/ribbon-tie", who="boy"), "cords-children", "fastening/ribbon-tie"),
        (board("romper", making=({"kind": "insertion", "of": "ribbon"},)), "cords-children", "making 1"),
        (board("overall", who="girl", notes="Draw the neck up on a cord."), "cords-children", "words"),
        (board("infant-gown", "fastening/pearl-buttons"), "small-parts", "fastening/pearl-buttons"),
        (board("nightdress"), "nightwear", "garment"),
        (board("skirt", "skirt-length/train"), "long-skirts", "skirt-length/train"),
        (board("bathing-suit", "fabric/worsted-knit", who="man"), "wet-wool", "fabric/worsted-knit"),
        (board("bathing-dress"), "wet-wool", "garment"),
        (board("jacket", "fabric/serge", notes="For the river."), "wet-wool", "fabric/serge"),
        (board("blouse", "fastening/celluloid-buttons"), "celluloid", "fastening/celluloid-buttons"),
        (board("blouse", notes="The old ones are celluloid."), "celluloid", "words"),
        (board("hat"), "hatpins", "garment"),
        (board("corset"), "tight-lacing", "garment"),
        (board("dress", "lining/boned-bodice"), "tight-lacing", "lining/boned-bodice"),
        (board("dress", "fabric/organdie"), "flammable-cloth", "fabric/organdie"),
        (board("dress", notes="Copied from an extant frock."), "old-garments", "words"),
        (board("dress", making=({"kind": "frill"},)), "hot-iron-sharp-tools", "making"),
    ],
)
def test_what_can_hurt_is_said_beside_what_it_concerns(given: Board, caution: str, where: str) -> None:
    assert (caution, where) in found(given)


@pytest.mark.parametrize(
    ("given", "caution"),
    [
        (board("shirt", "fastening/drawstring", who="man"), "cords-children"),
        (board("shirt", "fastening/buttons"), "small-parts"),
        (board("jacket", "fabric/serge"), "wet-wool"),
        (board("bathing-suit", "fabric/cotton-knit"), "wet-wool"),
        (board("child-suit", "fastening/lacing"), "tight-lacing"),
    ],
)
def test_what_does_not_concern_the_wearer_is_not_said(given: Board, caution: str) -> None:
    assert caution not in [which for which, _ in found(given)]


def test_flame_and_water_on_the_board_sharpen_the_sentence() -> None:
    plain = board("nightdress", "fabric/lawn")
    lit = replace(plain, notes="There will be lanterns.")
    assert not any("flame or heat near it" in caution.sentence for caution in cautions_for(plain))
    assert sum("flame or heat near it" in caution.sentence for caution in cautions_for(lit)) == 2
    wet = board("skirt", "skirt-length/ground", notes="On the landing stage.")
    assert cautions_for(wet)[0].sentence.endswith("The board speaks of water near it.")


def test_a_caution_is_told_once_for_each_thing() -> None:
    given = board("dress", "fabric/lawn", "fabric/lawn", "fabric/voile")
    assert found(given) == [("flammable-cloth", "fabric/lawn"), ("flammable-cloth", "fabric/voile")]


def test_every_caution_has_its_section_on_the_page() -> None:
    headings = re.findall(r"^## (.*)$", PAGE.read_text(encoding="utf-8"), re.MULTILINE)
    assert {which: caution_name(which) for which in SENTENCES} == {
        "-".join(re.findall(r"\w+", heading.lower())): heading for heading in headings
    }


def test_every_sentence_points_on_and_defers() -> None:
    for which, sentence in SENTENCES.items():
        assert re.search(r"\bask\b|local rules|the rules on workplace safety", sentence, re.IGNORECASE), which


def test_every_published_rule_named_is_on_the_page() -> None:
    page = " ".join(PAGE.read_text(encoding="utf-8").replace("**", "").split())
    named = [rule for said in SENTENCES.values() for rule in re.findall(r"16 CFR \d+|ASTM F\d+|EN \d+", said)]
    assert len(named) >= 6
    assert all(rule in page for rule in named)


def test_the_tables_here_and_the_vocabulary_agree(demo_catalogue: Catalogue) -> None:
    """What the vocabulary marks on a feature is called for here too, so that the browser knows it as well."""
    terms = demo_catalogue.vocabulary.terms
    tables = {**{which: keys.split() for which, keys in ALWAYS.items()}, "cords-children": CORDS}
    tables |= {"small-parts": SMALL, "wet-wool": WOOL}
    for which, keys in tables.items():
        assert [key for key in keys if key not in terms] == []
        marked = [
            key for key, term in terms.items() if which in term.cautions and not key.startswith("garment/")
        ]
        # Flannelette is marked nightwear because it was used for it; the garment decides.
        assert set(marked) - {"fabric/flannelette"} <= set(keys), which


def test_with_the_catalogue_extant_garments_and_its_own_terms_count(demo_catalogue: Catalogue) -> None:
    by_id = {each.id: cautions_for(each, demo_catalogue) for each in demo_catalogue.boards.values()}
    nightdress = [(each.id, each.where) for each in by_id["nightdress-boathouse-hotel"]]
    assert ("old-garments", "plates") in nightdress
    assert ("nightwear", "garment") in nightdress
    assert ("flammable-cloth", "fabric/lawn") in nightdress
    assert ("wet-wool", "fabric/worsted-knit") in [
        (each.id, each.where) for each in by_id["boys-bathing-suit-1926"]
    ]
