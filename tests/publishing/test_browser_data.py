"""What the browser is given: nothing that could end a script, nothing lost, and not too much."""

from __future__ import annotations

import gzip
import json
import re
from typing import Any

import pytest

from inperiod.citing import cite
from inperiod.evidence import Facts, facts_from_json, gather_facts
from inperiod.publishing import browser_data
from inperiod.publishing.browser_data import browser_files, data_script
from inperiod.publishing.browser_pages import browser_pages
from inperiod.publishing.published import published
from inperiod.publishing.render import environment, render
from inperiod.records.model import Catalogue

KILOBYTE = 1024


@pytest.fixture(scope="module")
def shown(demo_catalogue: Catalogue) -> Catalogue:
    return published(demo_catalogue)


@pytest.fixture(scope="module")
def facts(shown: Catalogue) -> Facts:
    return gather_facts(shown)


@pytest.fixture(scope="module")
def files(shown: Catalogue, facts: Facts) -> dict[str, str]:
    return browser_files(shown, facts)


def received(script: str) -> Any:
    """What the script hands over."""
    found = re.fullmatch(r'InPeriod\.receive\("[a-z]+",(.*)\);\n', script, re.DOTALL)
    assert found
    return json.loads(found[1])


def test_no_text_can_end_the_script_or_the_line_it_stands_on():
    nasty = '</script><!-- <b> & \u2028\u2029 "quoted" \\ ]]>'
    script = data_script("plates", {nasty: nasty})
    assert not re.search("[<>&\u2028\u2029]", script)
    assert received(script) == {nasty: nasty}


def test_the_facts_come_back_whole(files, facts):
    assert facts_from_json(received(files["data/facts.js"])) == facts


def test_every_citation_can_be_put_together_again(files, facts, shown):
    given = received(files["data/plates.js"])
    assert len(given["rows"]) == len(facts.keys)
    for key, (_, middle, *_) in zip(facts.keys, given["rows"], strict=True):
        _, beginning, end = given["sources"][key.split("/")[0]]
        assert beginning + middle + end == cite(shown, key)


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
        listed = received(files["data/facts.js"])
        assert (source, plate) not in _plates(listed)


def _plates(facts: dict[str, Any]) -> set[tuple[str, str]]:
    """(source, plate) of all plates in the facts' JSON form."""
    found, start = set(), 0
    for document, count in zip(facts["documents"], facts["counts"], strict=True):
        found |= {(document[0], plate[0]) for plate in facts["plates"][start : start + count]}
        start += count
    return found


def test_the_demonstration_data_is_small(files):
    sizes = {path: len(gzip.compress(text.encode(), 9)) for path, text in files.items()}
    # What only the page for recording loads has a bound of its own.
    assert sizes.pop("data/recording.js") <= 16 * KILOBYTE
    assert sum(sizes.values()) <= 40 * KILOBYTE


def test_a_catalogue_too_large_for_one_page_gives_its_captions_as_data(monkeypatch, shown, facts):
    monkeypatch.setattr(browser_data, "CAPTIONS_ON_PAGE", 10)
    captions = received(browser_files(shown, facts)["data/captions.js"])
    assert captions == [browser_data.said_of(shown.plates[key]) for key in facts.keys]
    page = next(page for page in browser_pages(shown, facts) if page.path == "plates.html")
    text = render(environment(shown), page)
    assert "data/captions.js" in text
    assert all(f'href="source/{source}.html"' in text for source in shown.sources)
    assert 'href="plate/' not in text
