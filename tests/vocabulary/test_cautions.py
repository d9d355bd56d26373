"""Each caution named by a term has its place on the cautions page, and the page points at published rules."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from inperiod.records import Vocabulary

PAGE = Path(__file__).parents[2] / "site" / "pages" / "cautions.md"

# Published rules on the safety of clothing (memory), and the caution each belongs under.
RULES = [
    ("flammable-cloth", "16 CFR 1610"),
    ("nightwear", "16 CFR 1615"),
    ("nightwear", "16 CFR 1616"),
    ("nightwear", "Nightwear (Safety) Regulations 1985"),
    ("cords-children", "16 CFR 1120"),
    ("cords-children", "ASTM F1816"),
    ("cords-children", "EN 14682"),
]
# A term that calls for a caution, by its nature (common practice, no source).
CALLED_FOR = [
    ("garment/nightdress", "nightwear"),
    ("garment/corset", "tight-lacing"),
    ("garment/bathing-dress", "wet-wool"),
    ("garment/hat", "hatpins"),
    ("garment/infant-gown", "small-parts"),
    ("fastening/celluloid-buttons", "celluloid"),
    ("fastening/drawstring", "cords-children"),
    ("fabric/flannelette", "flammable-cloth"),
    ("fabric/net-bobbin", "flammable-cloth"),
    ("skirt-length/train", "long-skirts"),
    ("lining/steel-cage", "flammable-cloth"),
]


def slug(heading: str) -> str:
    return re.sub(r"[^a-z0-9]+", "-", heading.lower()).strip("-")


def sections() -> dict[str, str]:
    parts = re.split(r"^## (.+)$", PAGE.read_text(encoding="utf-8"), flags=re.MULTILINE)
    return {slug(heading): text for heading, text in zip(parts[1::2], parts[2::2], strict=True)}


def test_every_caution_of_a_term_has_a_section_and_every_section_a_term(vocabulary: Vocabulary) -> None:
    named = {caution for term in vocabulary.terms.values() for caution in term.cautions}
    assert named == set(sections())


@pytest.mark.parametrize(("key", "caution"), CALLED_FOR)
def test_a_term_that_can_hurt_says_so(key: str, caution: str, vocabulary: Vocabulary) -> None:
    assert caution in vocabulary.terms[key].cautions


@pytest.mark.parametrize(("caution", "rule"), RULES)
def test_a_published_rule_is_pointed_at(caution: str, rule: str) -> None:
    assert rule in " ".join(sections()[caution].split())


def test_every_section_defers_to_someone_who_knows() -> None:
    for caution, text in sections().items():
        assert re.search(r"\bask\b|local rules|qualified", text, re.IGNORECASE), caution


def test_the_page_is_markdown_without_raw_html() -> None:
    assert re.search(r"<[a-zA-Z/!]", PAGE.read_text(encoding="utf-8")) is None
