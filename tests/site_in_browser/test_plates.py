"""The page of plates, in Chromium: what a filter leaves is what the records say."""

from __future__ import annotations

import random
from typing import TYPE_CHECKING

import pytest

from inperiod.dating import day_number
from inperiod.evidence import Facts

if TYPE_CHECKING:
    from playwright.sync_api import Page

pytestmark = pytest.mark.browser


def settled(page: Page) -> None:
    """Waits until whatever data the page has asked for is there and shown."""
    page.wait_for_function("() => !document.querySelector('[aria-busy=true]')")


def shown(page: Page) -> set[str]:
    """The keys of all plates found, every further page of them asked for."""
    return set(
        page.evaluate(
            """async () => {
              const more = document.getElementById("more"), ends = performance.now() + 15000;
              const busy = () => document.querySelector("[aria-busy=true]");
              while (busy() || more.checkVisibility()) {
                if (performance.now() > ends) throw Error("the plates are never all there");
                if (!busy()) more.click();
                await new Promise((next) => setTimeout(next));
              }
              const listed = document.querySelectorAll("#results [data-plate]");
              return [...listed].map((each) => each.dataset.plate);
            }"""
        )
    )


def ask(page: Page, question: str) -> None:
    """Puts a question after the # of the address, and waits until the page has taken it in."""
    page.evaluate(
        """(question) => new Promise((taken) => {
          if (location.hash.slice(1) === question) return taken();
          addEventListener("hashchange", () => setTimeout(taken), { once: true });
          location.hash = question;
        })""",
        question,
    )


def expected(
    facts: Facts,
    garment: str | None = None,
    feature: str | None = None,
    years: tuple[int, int] | None = None,
    kind: str | None = None,
) -> set[str]:
    """The plates the facts say a filter leaves."""
    found = set()
    narrower = {i for i, each in enumerate(facts.garments) if garment in _wider(facts, i)}
    for number, (document, plate) in enumerate(facts.plates):
        days = facts.documents[document].days
        terms = {facts.term_keys[wide] for wide in facts.shown[number]}
        if garment and plate.garment not in narrower:
            continue
        if feature and feature not in terms:
            continue
        if kind and facts.documents[document].kind != kind:
            continue
        if years:
            first, last = day_number(years[0], 1, 1), day_number(years[1] + 1, 1, 1) - 1
            if days is None or (days[1] is not None and days[1] < first):
                continue
            if days[0] is not None and days[0] > last:
                continue
        found.add(facts.keys[number])
    return found


def _wider(facts: Facts, garment: int) -> list[str]:
    chain: list[str] = []
    at: int | None = garment
    while at is not None:
        chain.append(facts.garments[at].id)
        at = facts.garments[at].broader
    return chain


def value(page: Page, label: str, group: str) -> tuple[Page, int]:
    """The checkbox of a value of a group, its group opened, and the count beside it."""
    box = page.locator(".sift-group").filter(has=page.locator("summary", has_text=group)).first
    if box.get_attribute("open") is None:
        box.locator("summary").click()
    item = box.locator(".sift-value").filter(has_text=label).first
    return item.locator("input"), int(item.locator(".sift-count").inner_text())


def test_an_address_finds_what_the_records_hold(opened, shown_facts):
    draw = random.Random(7)
    page = opened("plates.html")
    assert shown(page) == set(shown_facts.keys)
    for _ in range(12):
        document, plate = draw.choice(shown_facts.plates)
        garment = shown_facts.garments[plate.garment].id
        feature = shown_facts.term_keys[draw.choice(plate.shown)[0]]
        first = draw.randrange(1895, 1930)
        kind = shown_facts.documents[document].kind
        for limits in (
            {"garment": garment},
            {"garment": garment, "feature": feature},
            {"years": (first, first + 8)},
            {"feature": feature, "kind": kind, "years": (first, 1939)},
        ):
            pairs = {**limits}
            years = pairs.pop("years", None)
            if years:
                pairs |= {"from": str(years[0]), "to": str(years[1])}
            ask(page, "&".join(f"{name}={each}" for name, each in pairs.items()))
            assert page.locator("#sifted-by li").count() >= len(limits)
            assert shown(page) == expected(shown_facts, **limits), limits


def test_the_count_beside_a_value_is_what_choosing_it_leaves(opened):
    page = opened("plates.html#from=1920&to=1930")
    for group, label in (("Kind of source", "magazine"), ("Garment", "blouse"), ("Neckline", "V neck")):
        box, count = value(page, label, group)
        assert count > 0, label
        box.check()
        assert len(shown(page)) == count
        assert page.locator("#said").inner_text() == f"{count} {'plate' if count == 1 else 'plates'}."


def test_counts_follow_the_years(opened):
    page = opened("plates.html")
    _, before = value(page, "day dress", "Garment")
    page.locator("#from").fill("1925")
    page.locator("#from").press("Tab")
    _, after = value(page, "day dress", "Garment")
    assert 0 < after < before
    assert page.locator("#from-handle").input_value() == "1925"


def test_within_a_facet_any_value_will_do_and_facets_narrow_each_other(opened):
    page = opened("plates.html#feature=neckline/round")
    rounds = shown(page)
    ask(page, "feature=neckline/round&feature=neckline/v")
    assert page.locator("#sifted-by li").count() == 3
    either = shown(page)
    ask(page, "feature=neckline/round&feature=neckline/v&feature=closure/slip-on")
    assert page.locator("#sifted-by li").count() == 4
    assert rounds < either
    assert shown(page) < either


def test_the_years_are_moved_by_keyboard_and_one_handle_never_passes_the_other(opened):
    page = opened("plates.html#from=1925&to=1926")
    page.locator("#from-handle").focus()
    for _ in range(3):
        page.keyboard.press("ArrowRight")
    assert page.locator("#from").input_value() == "1926"
    page.keyboard.press("Home")
    assert page.locator("#from").input_value() == page.locator("#from").get_attribute("min")
    page.locator("#to").fill("1900")
    page.locator("#to").press("Enter")
    assert page.evaluate("location.hash") == "#to=1900"


def test_words_find_by_beginning_without_accents_and_by_other_names(opened, shown_catalogue):
    page = opened("plates.html")
    accented = next(
        plate
        for plate in shown_catalogue.plates.values()
        if plate.caption and "é" in plate.caption.split()[-1] + plate.caption
    )
    word = next(
        word for word in accented.caption.split() if "é" in word and word.strip(".,;").isalpha()
    ).strip(".,;")
    plain = word.replace("é", "e").replace("è", "e").replace("ê", "e")[: max(4, len(word) - 1)]
    page.locator("#sift-words").fill(plain.upper())
    page.wait_for_function("() => location.hash.includes('words=')")
    assert accented.key in shown(page)

    term = shown_catalogue.vocabulary.terms["closure/slip-on"]
    name = next(each.name for each in term.names if each.name.lower() not in term.label)
    showing = {
        plate.key
        for plate in shown_catalogue.plates.values()
        if any(feature.term == term.key for feature in plate.features)
    }
    page.locator("#sift-words").fill(name)
    page.wait_for_function(
        "(name) => new URLSearchParams(location.hash.slice(1)).get('words') === name", arg=name
    )
    assert showing <= shown(page)


def test_order_view_and_back_are_in_the_address(opened):
    page = opened("plates.html")
    first = page.locator("#results [data-plate]").first.get_attribute("data-plate")
    page.locator("#sort").select_option("latest")
    settled(page)
    assert page.locator("#results [data-plate]").first.get_attribute("data-plate") != first
    page.locator("#as-list").click()
    settled(page)
    assert page.evaluate("location.hash") == "#sort=latest&view=list"
    assert page.locator("#results").get_attribute("class") == "trade-list"
    page.go_back()
    settled(page)
    assert page.locator("#results").get_attribute("class") == "cards"
    page.go_back()
    settled(page)
    assert page.locator("#results [data-plate]").first.get_attribute("data-plate") == first


def test_a_filter_no_plate_meets_finds_nothing_and_can_be_taken_away(opened, shown_facts):
    page = opened("plates.html#feature=neckline/nonesuch")
    assert page.locator("#results").inner_text().startswith("No plate has all of this.")
    page.locator("#sifted-by button").first.click()
    assert shown(page) == set(shown_facts.keys)


def test_further_plates_come_by_keyboard_and_keep_the_focus(opened):
    page = opened("plates.html")
    before = page.locator("#results > li").count()
    page.locator("#more").focus()
    page.keyboard.press("Enter")
    settled(page)
    assert page.locator("#results > li").count() > before
    inside = "(n) => document.querySelectorAll('#results > li')[n].contains(document.activeElement)"
    assert page.evaluate(inside, before)


def test_without_scripts_every_plate_is_listed_by_year(opened, shown_catalogue):
    page = opened("plates.html", scripts=False)
    assert not page.locator("#sift").is_visible()
    links = page.locator("#all-plates a").evaluate_all("all => all.map((each) => each.getAttribute('href'))")
    assert set(links) == {f"plate/{key}.html" for key in shown_catalogue.plates}
    assert page.locator("#all-plates h2").first.is_visible()


def test_from_a_server_a_plate_is_reached(opened, served):
    page = opened("plates.html#garment=day-dress&from=1926&to=1926", at=served)
    settled(page)
    key = page.locator("#results [data-plate]").first.get_attribute("data-plate")
    page.locator("#results a").first.click()
    page.wait_for_url(f"{served}plate/{key}.html")


@pytest.mark.parametrize("width", [320, 390, 820, 1280])
def test_nothing_is_wider_than_the_window(opened, width):
    page = opened("plates.html#garment=day-dress&feature=neckline/round&words=frock", width=width)
    page.locator("#sift-more").evaluate("(each) => { each.open = true; }")
    for group in page.locator(".sift-group").all():
        group.evaluate("(each) => { each.open = true; }")
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")


def test_bars_of_what_is_left_are_those_of_all_until_something_is_filtered(opened):
    page = opened("plates.html")
    heights = (
        """(name) => [...document.querySelectorAll(name)].map((bar) => Number(bar.getAttribute("height")))"""
    )
    everything = page.evaluate(heights, ".years-all")
    assert page.evaluate(heights, ".years-left") == pytest.approx(everything, abs=0.01)
    assert max(everything) > 0
    ask(page, "feature=neckline/v")
    left = page.evaluate(heights, ".years-left")
    assert sum(left) < sum(everything)
    assert all(some <= every + 0.01 for some, every in zip(left, everything, strict=True))
