"""What the browser is given: nothing that could end a script, nothing lost, and not too much."""

from __future__ import annotations

import gzip
import json
import re
from itertools import accumulate, islice, pairwise
from pathlib import Path
from typing import Any

import pytest

from inperiod.citing import cite
from inperiod.evidence import Facts, facts_from_json, gather_facts
from inperiod.evidence.exchange import unpacked
from inperiod.publishing import browser_data
from inperiod.publishing.browser_data import browser_parts, data_script, words_files
from inperiod.publishing.browser_pages import browser_pages
from inperiod.publishing.found_by import fold, said_of, words_of
from inperiod.publishing.lookup import Lookup
from inperiod.publishing.published import published
from inperiod.publishing.render import environment, render
from inperiod.publishing.words import short_place
from inperiod.records.model import Catalogue
from parity import in_node

KILOBYTE = 1024
ASSETS = Path(__file__).parents[2] / "site" / "assets"


@pytest.fixture(scope="module")
def shown(demo_catalogue: Catalogue) -> Catalogue:
    return published(demo_catalogue)


@pytest.fixture(scope="module")
def facts(shown: Catalogue) -> Facts:
    return gather_facts(shown)


@pytest.fixture(scope="module")
def files(shown: Catalogue) -> dict[str, str]:
    return browser_files(shown)


def browser_files(shown: Catalogue) -> dict[str, str]:
    look = Lookup(shown)
    found_by = {key: words_of(source) for key, source in shown.sources.items()}
    files = [*words_files(look, found_by), *(file for part in browser_parts(look) for file in part.make())]
    return dict(files)


def received(script: str) -> Any:
    """What the script hands over."""
    found = re.fullmatch(r'InPeriod\.receive\("[a-z0-9/-]+",(.*)\);\n', script, re.DOTALL)
    assert found
    return json.loads(found[1])


def test_no_text_can_end_the_script_or_the_line_it_stands_on():
    nasty = '</script><!-- <b> & \u2028\u2029 "quoted" \\ ]]>'
    script = data_script("plates", {nasty: nasty})
    assert not re.search("[<>&\u2028\u2029]", script)
    assert received(script) == {nasty: nasty}


@pytest.fixture(scope="module")
def large(shown: Catalogue) -> dict[str, str]:
    """The files as they would be were the demonstration a large catalogue."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(browser_data, "CAPTIONS_ON_PAGE", 10)
        patch.setattr(browser_data, "PLATES_IN_BLOCK", 40)
        return browser_files(shown)


def whole(files: dict[str, str], folder: str) -> dict[str, Any]:
    """What all blocks of a folder hold together."""
    found: dict[str, Any] = {}
    for path, text in files.items():
        if path.startswith(f"data/{folder}/"):
            block = received(text)
            assert not found.keys() & block.keys()
            found |= block
    return found


def test_the_facts_come_back_whole(files, facts):
    index, every = received(files["data/index.js"]), received(files["data/every.js"])
    assert facts_from_json({**index, "plates": every}) == facts


def test_a_garments_plates_are_those_of_it_and_of_every_narrower_one(large, facts):
    for garment, numbers in facts.plates_of.items():
        held = received(large[f"data/garment/{facts.garments[garment].id}.js"])
        assert held["ids"].split() == [facts.plates[number][1].id for number in numbers]
        steps = unpacked(held["numbers"])
        assert [number + place for place, number in enumerate(accumulate(steps))] == list(numbers)
    assert len([path for path in large if path.startswith("data/garment/")]) == len(facts.plates_of)


def test_every_citation_can_be_put_together_again(files, facts, shown):
    given = whole(files, "rows")
    left = {document: iter(rows) for document, (*_, rows) in given.items()}
    for key, (document, _) in zip(facts.keys, facts.plates, strict=True):
        _, beginning, end, *_ = given[str(document)]
        _, middle, *_ = next(left[str(document)])
        assert beginning + middle + end == cite(shown, key)
    assert not any(list(rest) for rest in left.values())


def test_plates_of_one_time_lie_in_one_block_and_the_index_says_in_which(large, facts):
    numbers = unpacked(received(large["data/index.js"])["blocks"])
    blocks = {document: block for block, many in enumerate(numbers) for document in islice(numbers, many)}
    assert sorted(blocks) == list(range(len(facts.documents)))
    middles: dict[int, list[float]] = {}
    for document, block in blocks.items():
        fact = facts.documents[document]
        if fact.plates:
            assert str(document) in received(large[f"data/rows/{block}.js"])
        if fact.days and None not in fact.days:
            middles.setdefault(block, []).append(sum(fact.days) / 2)
    order = [middles[block] for block in sorted(middles)]
    assert all(each == sorted(each) for each in order)
    assert len(order) > 5
    assert all(max(one) <= min(other) for one, other in pairwise(order))


def test_every_word_leads_to_the_plates_that_have_it(large, facts, shown):
    words: dict[str, set[int]] = {}
    for letter in received(large["data/every.js"])["letters"]:
        for word, packed in received(large[f"data/words/{ord(letter)}.js"]).items():
            assert word.startswith(letter)
            words[word] = set(accumulate(unpacked(packed)))
    for number, key in enumerate(facts.keys):
        plate = shown.plates[key]
        text = f"{shown.sources[plate.source].title} {short_place(plate.locator)} {said_of(plate)}"
        held = set(fold(text).split())
        assert held
        assert {word for word in held if number not in words[word]} == set()
    assert sum(map(len, words.values())) > 0
    some = fold(shown.plates[facts.keys[0]].caption or "").split()[-1]
    having = {n for n, key in enumerate(facts.keys) if some in fold(said_of(shown.plates[key])).split()}
    assert having <= words[some]


@pytest.mark.node
def test_words_are_folded_as_the_browser_folds_them(node, shown):
    texts = [said_of(plate) for plate in shown.plates.values()]
    texts += [
        "Crêpe de Chine",
        "Gürtelschließe",
        "œuvre, Ærmer & Łódź",
        "the “Pierhead’s” own",
        "№ 5 ½ — ²",
        "ÅΔЖ 漢字",
    ]
    modules = {"base": ASSETS / "base.js", "search": ASSETS / "search.js"}
    assert in_node(node, "given.map(search.fold)", modules, texts) == [fold(text) for text in texts]


def test_other_names_of_terms_are_there_to_be_searched(files, shown):
    given = received(files["data/vocabulary.js"])
    held = {facet["id"]: facet.get("names", {}) for facet in given["facets"]}
    for term in shown.vocabulary.terms.values():
        if term.facet != "garment" and term.names:
            assert set(held[term.facet][term.id]) == {name.name for name in term.names}


def test_what_is_not_to_be_published_is_nowhere(files, demo_catalogue):
    hidden = [
        plate.caption
        for plate in demo_catalogue.plates.values()
        if not (plate.publish and demo_catalogue.sources[plate.source].publish) and plate.caption
    ]
    keys = [key for key, plate in demo_catalogue.plates.items() if not plate.publish]
    assert keys, "the demonstration is to hold a plate that is withheld"
    everything = "".join(files.values())
    assert not any(caption in everything for caption in hidden)
    for key in keys:
        source, _, plate = key.partition("/")
        listed = {**received(files["data/index.js"]), "plates": received(files["data/every.js"])}
        assert (source, plate) not in _plates(listed)


def _plates(facts: dict[str, Any]) -> set[tuple[str, str]]:
    """(source, plate) of all plates in the facts' JSON form."""
    return {
        (document.source, plate.id)
        for document in facts_from_json(facts).documents
        for plate in document.plates
    }


def test_the_demonstration_data_is_small(files):
    sizes = {path: len(gzip.compress(text.encode(), 9)) for path, text in files.items()}
    # What only the page for recording loads has a bound of its own.
    assert sizes.pop("data/recording.js") <= 16 * KILOBYTE
    assert sum(sizes.values()) <= 40 * KILOBYTE


def test_a_catalogue_too_large_for_one_page_gives_its_captions_as_data(monkeypatch, large, shown, facts):
    given = whole(large, "said")
    expected: dict[str, list[str]] = {}
    for key, (document, _) in zip(facts.keys, facts.plates, strict=True):
        expected.setdefault(str(document), []).append(said_of(shown.plates[key]))
    assert given == expected
    monkeypatch.setattr(browser_data, "CAPTIONS_ON_PAGE", 10)
    page = next(page for page in browser_pages(Lookup(shown)) if page.path == "plates.html")
    text = render(environment(shown), page)
    assert all(f'href="source/{source}.html"' in text for source in shown.sources)
    assert 'href="plate/' not in text


def test_a_small_catalogue_has_no_more_files_than_it_needs(files):
    folders = {path.split("/")[1] for path in files if path.count("/") == 2}
    assert folders == {"rows"}
