"""What pages say, from the records: words, places, rights, nearness, tapes."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from inperiod.evidence import Question, Window, answer, gather_facts
from inperiod.publishing import words
from inperiod.publishing.lookup import Lookup
from inperiod.publishing.nearness import YEARS, Neighbours
from inperiod.publishing.tapes import decade_cells, scale_of, tape
from inperiod.records.model import Catalogue, Locator, Price
from publishing.sample import dated, plate, sample, source


@pytest.mark.parametrize(
    ("written", "words_of_it", "in_brief"),
    [
        ("1926", "1926", "1926"),
        ("1926-03/1926-08", "March to August 1926", "Mar–Aug 1926"),
        ("1912-08/1913-01", "August 1912 to January 1913", "Aug 1912–Jan 1913"),
        ("1908-21/1908-22", "spring to summer 1908", "spring–summer 1908"),
        ("1895~", "about 1895", "about 1895"),
        ("../1907", "before 1908", "before 1908"),
        ("1926-05-03", "3 May 1926", "3 May 1926"),
    ],
)
def test_dates_are_said_as_people_say_them(written: str, words_of_it: str, in_brief: str) -> None:
    assert words.when(dated(written)) == words_of_it
    assert words.brief(dated(written)) == in_brief


def test_an_undated_source_is_called_undated() -> None:
    assert words.when(None) == "undated"


@pytest.mark.parametrize(
    ("locator", "said"),
    [
        (Locator("14", "3", "2", "2207"), "p. 14, Pl. 3, fig. 2, no. 2207"),
        (Locator(page="14-15"), "pp. 14–15"),
        (Locator(page="xii", column="2"), "p. xii, col. 2"),
        (Locator(), ""),
    ],
)
def test_a_place_is_said_as_a_citation_says_it(locator: Locator, said: str) -> None:
    assert words.place(locator) == said


# Titles of the statements and names of the licences, as their publishers give them (memory).
@pytest.mark.parametrize(
    ("address", "said"),
    [
        ("http://rightsstatements.org/vocab/InC/1.0/", "In copyright"),
        ("http://rightsstatements.org/vocab/NoC-US/1.0/", "No copyright in the United States"),
        (
            "https://creativecommons.org/licenses/by-nc-sa/4.0/",
            "Creative Commons Attribution-NonCommercial-ShareAlike 4.0",
        ),
        ("https://creativecommons.org/publicdomain/zero/1.0/", "Given to the public domain (CC0 1.0)"),
        ("https://creativecommons.org/publicdomain/mark/1.0/", "Public domain"),
        ("Ask the family", "Ask the family"),
        (None, None),
    ],
)
def test_rights_are_said_in_words(address: str | None, said: str | None) -> None:
    assert words.rights(address) == said


@pytest.mark.parametrize(
    ("price", "said"),
    [
        (Price("8/11", "GBP"), "8/11"),
        (Price("$4.98", "USD"), "$4.98"),
        (Price("3.50", "USD"), "3.50 USD"),
        (None, None),
    ],
)
def test_a_price_is_given_as_printed(price: Price | None, said: str | None) -> None:
    assert words.price(price) == said


def test_long_titles_are_cut_at_a_word() -> None:
    assert words.shortened("one two three", 20) == "one two three"
    assert words.shortened("one two, three", 9) == "one two …"


def near_catalogue(folder: Path) -> Catalogue:
    """Like plates close by and far away, one of another garment, one of the same cut."""
    plates = {
        "asked": ("1924", "day-dress", ("neckline/v", "fastening/buttons")),
        "close": ("1925", "day-dress", ("neckline/v", "fastening/buttons")),
        "later": ("1931", "day-dress", ("neckline/v", "fastening/buttons")),
        "ancient": ("1890", "day-dress", ("neckline/v", "fastening/buttons")),
        "coat": ("1924", "coat", ("neckline/v", "fastening/buttons")),
        "less": ("1925", "day-dress", ("neckline/v",)),
        "wider": ("1925", "dress", ("neckline/v", "fastening/buttons")),
        "unlike": ("1924", "day-dress", ("neckline/boat",)),
    }
    sources = {
        name: source(name, date, plate(name, "p1-1", *terms, garment=garment))
        for name, (date, garment, terms) in plates.items()
    }
    sources["copy"] = source(
        "copy", "1924", plate("copy", "p1-1", "neckline/v", "fastening/buttons", same_cut_as="asked/p1-1")
    )
    return replace(sample(folder), sources=sources, boards={})


def test_what_stands_near_is_alike_and_of_its_time(tmp_path: Path) -> None:
    look = Lookup(near_catalogue(tmp_path))
    asked = look.catalogue.plates["asked/p1-1"]
    found = Neighbours(look).of(asked.key)
    order = [near.plate.source for near in found]
    assert order[:2] == ["close", "wider"]
    assert order.index("close") < order.index("later")
    assert order.index("close") < order.index("less")
    assert not {"asked", "ancient", "coat", "unlike", "copy"} & set(order)
    assert found[0].shared == ("fastening/buttons", "neckline/v")
    assert all(near.years <= YEARS for near in found)


def test_an_undated_plate_has_no_neighbours(tmp_path: Path) -> None:
    look = Lookup(sample(tmp_path))
    assert Neighbours(look).of("undated-leaf/p1-1") == ()


def test_a_tape_says_what_the_answer_says(demo_catalogue: Catalogue) -> None:
    facts = gather_facts(demo_catalogue)
    for term in ("neckline/v", "waist/low", "collar/boned-stand", "fabric/voile"):
        drawn = tape(facts, "day-dress", term, "A")
        found = answer(facts, Question("day-dress", (term,), Window(None, None))).findings[0]
        assert drawn is not None
        assert found.first is not None
        assert found.last is not None
        assert drawn.sightings == found.sightings
        assert drawn.first == pytest.approx(found.first.date, abs=0.01)
        assert drawn.last == pytest.approx(found.last.date, abs=0.01)
        assert len(drawn.stitches) + len(drawn.aside) <= drawn.sightings


def test_places_on_a_tape_stay_on_it(demo_catalogue: Catalogue) -> None:
    facts = gather_facts(demo_catalogue)
    for term in facts.term_index:
        drawn = tape(facts, "dress", term, "A")
        assert drawn is not None
        for place in (*drawn.stitches, *drawn.aside, *(drawn.possible or ())):
            assert 0 <= float(place) <= 100
        if drawn.band:
            # A band is at least 0.4 % wide, so that one of a single year can be seen.
            assert float(drawn.band[0]) + float(drawn.band[1]) <= 100.41


def test_a_decade_nobody_looked_at_is_not_one_without_it(tmp_path: Path) -> None:
    facts = gather_facts(near_catalogue(tmp_path))
    cells = {cell.label: cell for cell in decade_cells(facts, "day-dress", "neckline/boat", "A")}
    assert cells["1900s"].kind == "unlooked"
    assert cells["1900s"].word == "not looked"
    assert cells["1930s"].kind == "absent"
    assert cells["1930s"].word == "not seen"
    assert cells["1920s"].kind == "shown"


def test_the_scale_is_ruled_by_years_and_labelled_by_decades(demo_catalogue: Catalogue) -> None:
    ticks = scale_of(gather_facts(demo_catalogue)).ticks()
    assert [tick.label for tick in ticks if tick.label][:3] == ["1890", "1900", "1910"]
    assert ticks[0].x == "0"
    assert ticks[-1].x == "100"
