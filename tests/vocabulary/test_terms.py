"""The vocabulary is whole, defined, linked and unambiguous."""

from __future__ import annotations

import re
from collections import defaultdict

import pytest

from inperiod.records import Reading, Vocabulary

# What a record of dress has to be able to say: one line a facet, with terms no such list could lack.
# Common practice, no source.
NEEDED = {
    "garment": "day-dress blouse skirt bathing-suit boating-jacket nightdress child-frock sailor-suit fan",
    "silhouette": "s-bend columnar hobble tubular bias-cling crinoline-bell bustle-back",
    "neckline": "high round square v boat cowl halter",
    "collar": "stand boned-stand peter-pan sailor shawl notched revers",
    "closure": "front back side shoulder slip-on wrap-over",
    "fastening": "buttons hooks-and-eyes press-studs lacing slide-fastener safety-pin busk-front",
    "sleeve": "sleeveless short elbow long-fitted bishop gigot kimono raglan flutter",
    "yoke": "round-yoke hip-yoke vestee plastron godet gusset chemisette",
    "waist": "natural raised low dropped-hip no-waist princess pouched",
    "skirt-cut": "gored circular pleated-all tiered hobble-cut bias-cut",
    "skirt-length": "train ground instep ankle mid-calf knee above-knee",
    "lower-edge": "straight-hem scalloped handkerchief picot-edge trunk-leg",
    "trim": "insertion lace-edging braid piping binding beading-slotted beads soutache rickrack fagoting",
    "fullness": "pin-tucks blind-tucks knife-pleats box-pleats gathers shirring smocking gauging",
    "fabric": "lawn voile muslin calico serge wool-jersey velvet artificial-silk rayon net-bobbin nylon",
    "colour": "white navy striped mauve-aniline synthetic-indigo-blue",
    "lining": "unlined lined boned-bodice waist-stay steel-cage",
    "seam": "french-seam felled-seam plain-seam mantua-maker-seam overlocked lockstitch-seam",
    "work": "hand-sewn lockstitch-machine schiffli chemical-lace machine-knitted mercerised",
}
ONE_AT_A_TIME = {"silhouette", "neckline", "collar", "sleeve", "waist", "skirt-length"}
FOR_EVERYTHING = {"trim", "fullness", "fabric", "colour", "seam", "work"}

# Words that mean one thing here and another there, and the terms a reader may have meant by them.
# Common practice, no source.
CLASHES = {
    "muslin": ["fabric/muslin", "fabric/calico"],
    "calico": ["fabric/calico", "fabric/muslin"],
    "vest": ["yoke/vestee", "garment/shirt", "garment/lounge-suit"],
    "jumper": ["garment/jumper", "garment/jumper-blouse"],
    "knickers": ["garment/drawers", "garment/knickerbockers"],
    "suspenders": ["garment/hosiery"],
    "pants": ["garment/trousers", "garment/drawers"],
    "waist": ["garment/blouse", "waist/natural"],
    "shirtwaist": ["garment/blouse"],
    "costume": ["garment/costume-suit", "garment/dress"],
    "beading": ["trim/beading-slotted", "trim/beads"],
    "gauging": ["fullness/gauging", "fullness/shirring", "fullness/cartridge-pleats"],
    "shirring": ["fullness/shirring", "trim/ruching"],
    "on the cross": ["skirt-cut/bias-cut"],
    "pin tucks": ["fullness/pin-tucks"],
    "rayon": ["fabric/artificial-silk", "fabric/rayon"],
    "crinoline": ["garment/crinoline", "silhouette/crinoline-bell"],
    "guipure": ["work/chemical-lace"],
    "poplin": ["fabric/poplin"],
    "overalls": ["garment/overall"],
}


def test_the_vocabulary_reads_without_a_complaint(reading: Reading) -> None:
    assert [str(problem) for problem in reading.problems if problem.file.startswith("vocabulary/")] == []


def test_at_least_180_terms_describe_dress(vocabulary: Vocabulary) -> None:
    assert len(vocabulary.terms) >= 180
    assert len(vocabulary.terms) - len(vocabulary.garments) >= 180


@pytest.mark.parametrize("facet", NEEDED)
def test_each_facet_has_the_terms_no_record_can_do_without(facet: str, vocabulary: Vocabulary) -> None:
    have = {term.id for term in vocabulary.facets[facet].terms}
    assert set(NEEDED[facet].split()) - have == set()


def test_ids_and_labels_are_unique_within_a_facet(vocabulary: Vocabulary) -> None:
    for facet in vocabulary.facets.values():
        for each in ("id", "label"):
            values = [getattr(term, each) for term in facet.terms]
            assert len(values) == len(set(values)), f"{facet.id}: a repeated {each}"


def test_every_facet_asks_a_question_and_stands_in_its_own_place(vocabulary: Vocabulary) -> None:
    assert list(vocabulary.facets) == list(NEEDED), "in the order a garment is looked at"
    for facet in vocabulary.facets.values():
        assert facet.question.endswith("?"), facet.id


def test_every_term_is_defined_in_a_sentence_of_its_own(vocabulary: Vocabulary) -> None:
    seen: dict[str, str] = {}
    for key, term in vocabulary.terms.items():
        text = term.definition
        assert re.fullmatch(r"[A-Z].*[.]", text, re.DOTALL), f"{key}: {text}"
        assert len(text) >= 16, f"{key} is defined too shortly: {text}"
        assert "to be written" not in text.lower(), key
        assert seen.setdefault(text, key) == key, f"{key} is defined as {seen[text]} is"
        assert term.source, f"{key} does not say where its definition comes from"


def test_links_between_terms_lead_to_other_terms(vocabulary: Vocabulary) -> None:
    for key, term in vocabulary.terms.items():
        for other in term.see_also:
            assert other in vocabulary.terms, f"{key} points at {other}"
            assert other != key, f"{key} points at itself"
        assert len(set(term.see_also)) == len(term.see_also), f"{key} points somewhere twice"


def test_garments_stand_under_garments_and_never_in_a_circle(vocabulary: Vocabulary) -> None:
    for garment in vocabulary.garments.values():
        at, steps = garment.broader, 0
        while at is not None:
            assert at in vocabulary.garments, f"{garment.id}: {at}"
            at, steps = vocabulary.garments[at].broader, steps + 1
            assert steps < 10, f"{garment.id} stands in a circle"


def test_terms_apply_only_to_garments_that_exist_and_within_their_facet(vocabulary: Vocabulary) -> None:
    for facet in vocabulary.facets.values():
        assert set(facet.applies_to) <= set(vocabulary.garments), facet.id
        for term in facet.terms:
            assert set(term.applies_to) <= set(vocabulary.garments), term.key
            for garment in term.applies_to:
                within = not facet.applies_to or any(
                    each in facet.applies_to for each in vocabulary.broader_garments(garment)
                )
                assert within, f"{term.key} applies to {garment}, its facet does not"


def test_only_facets_with_one_answer_at_a_time_are_exclusive(vocabulary: Vocabulary) -> None:
    assert {facet.id for facet in vocabulary.facets.values() if facet.exclusive} == ONE_AT_A_TIME


def test_cloth_colour_and_work_can_be_recorded_on_anything(vocabulary: Vocabulary) -> None:
    for facet in FOR_EVERYTHING:
        assert vocabulary.facets[facet].applies_to == (), facet


@pytest.mark.parametrize(
    ("garment", "term"),
    [
        ("bathing-suit", "neckline/u"),
        ("bathing-suit", "closure/shoulder"),
        ("bathing-dress", "collar/sailor"),
        ("bathing-trunks", "lower-edge/trunk-leg"),
        ("sailor-suit", "collar/sailor"),
        ("romper", "closure/crotch"),
        ("infant-gown", "fastening/drawstring"),
        ("child-frock", "fullness/growth-tucks"),
        ("flannels", "lower-edge/cuffed"),
        ("boating-jacket", "collar/notched"),
        ("nightshirt", "closure/front-placket"),
        ("corset", "fastening/busk-front"),
        ("crinoline", "lining/steel-cage"),
        ("nightdress", "yoke/lace-yoke"),
        ("collar-piece", "collar/bertha"),
        ("textile", "fabric/velvet"),
        ("fan", "trim/sequins"),
        ("hosiery", "fabric/nylon"),
    ],
)
def test_a_term_can_be_recorded_where_it_is_found(garment: str, term: str, vocabulary: Vocabulary) -> None:
    assert vocabulary.applies(vocabulary.terms[term], garment)


@pytest.mark.parametrize(
    ("garment", "term"),
    [
        ("textile", "sleeve/gigot"),
        ("shirt", "fastening/busk-front"),
        ("hat", "skirt-length/knee"),
        ("day-dress", "lower-edge/trunk-leg"),
        ("shirt", "neckline/halter"),
    ],
)
def test_a_term_is_refused_where_it_cannot_be(garment: str, term: str, vocabulary: Vocabulary) -> None:
    assert not vocabulary.applies(vocabulary.terms[term], garment)


@pytest.mark.parametrize("word", CLASHES)
def test_a_word_that_means_two_things_is_told_apart(word: str, vocabulary: Vocabulary) -> None:
    for key in CLASHES[word]:
        term = vocabulary.terms[key]
        assert word in (term.told_apart or "").casefold(), f"{key} does not tell “{word}” apart"


def test_a_name_shared_by_two_terms_is_told_apart_or_leads_from_one_to_the_other(
    vocabulary: Vocabulary,
) -> None:
    called: dict[str, set[str]] = defaultdict(set)
    for key, term in vocabulary.terms.items():
        called[term.label.casefold()].add(key)
        for name in term.names:
            called[name.name.casefold()].add(key)
    shared = {word: keys for word, keys in called.items() if len(keys) > 1}
    assert shared, "beading, knickers and pants at least are shared"
    for word, keys in shared.items():
        for key in keys:
            term = vocabulary.terms[key]
            linked = any(key in vocabulary.terms[other].see_also or other in term.see_also for other in keys)
            assert linked or word in (term.told_apart or "").casefold(), f"“{word}”: {sorted(keys)}"


def test_names_say_where_when_and_in_what_language_they_were_said(vocabulary: Vocabulary) -> None:
    names = [name for term in vocabulary.terms.values() for name in term.names]
    assert {name.use for name in names} == {None, "UK", "US"}
    assert sum(name.use is not None for name in names) >= 100
    assert sum(name.period is not None for name in names) >= 80
    assert sum(name.language is not None for name in names) >= 30
    blouse = {name.name: name for name in vocabulary.terms["garment/blouse"].names}
    assert blouse["shirtwaist"].use == "US"
