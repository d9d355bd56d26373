"""The question and its answer, in Chromium."""

from __future__ import annotations

import gzip
import random
from typing import TYPE_CHECKING, Any
from urllib.parse import urlencode

import pytest

from inperiod.dating import read_phrase, widened
from inperiod.drawing.marks import per_cent
from inperiod.evidence import (
    Change,
    Facts,
    Question,
    Window,
    answer,
    as_json,
    sensitivity,
    usual_in_window,
)
from inperiod.publishing.wording import LEADS, amount
from inperiod.records.model import Catalogue

if TYPE_CHECKING:
    from playwright.sync_api import Page

pytestmark = pytest.mark.browser

TIMES = ("1926", "the 1920s", "1912/1915", "late 1890s", "about 1905", "summer 1909", "before 1900", "1938")

READ_ANSWER = """() => [...document.querySelectorAll(".fit")].map((fit) => ({
  term: fit.dataset.term,
  verdict: fit.dataset.verdict,
  word: fit.querySelector(".verdict-word").textContent,
  says: fit.querySelector(".fit-says").textContent,
  reasons: [...fit.querySelectorAll(".fit-why li:not(.fit-hangs)")].map((each) => each.textContent),
  hangs: [...fit.querySelectorAll(".fit-hangs")].map((each) => each.textContent),
  share: fit.querySelector(".fit-share figcaption")?.textContent ?? null,
  cite: [...fit.querySelectorAll(".cite")].map((each) => each.dataset.plate),
}))"""


def expected(finding: dict[str, Any], changes: tuple[Change, ...]) -> dict[str, Any]:
    """What the page must say of a finding, from the JSON that ``inperiod fit --json`` prints."""
    share = finding["share"]
    said = None
    if share["value"] is not None:
        interval = f"{per_cent(share['low'])} to {per_cent(share['high'])}"
        counted = f"{amount(share['showing'])} of {amount(share['recorded'])} plates by weight"
        word = finding["frequency"] or "not seen"
        said = f"{per_cent(share['value'])}, {word}: {counted}; 95 % interval {interval}."
    return {
        "term": finding["term"],
        "verdict": finding["verdict"],
        "word": finding["verdict"],
        "says": f"{LEADS[finding['verdict']]} {finding['reasons'][0]}",
        "reasons": finding["reasons"][1:],
        "hangs": [change.sentence for change in changes if change.term == finding["term"]],
        "share": said,
        "cite": finding["cite"][:3],
    }


def questions(facts: Facts, count: int) -> list[tuple[dict[str, Any], str]]:
    """Random questions: of garments that have plates, mostly with terms that were recorded on them."""
    draw = random.Random(1926)
    held: dict[int, list[str]] = {}
    for _, plate in facts.plates:
        held.setdefault(plate.garment, []).extend(facts.term_keys[term] for term, _ in plate.shown)
    asked = []
    for _ in range(count):
        garment = draw.choice(sorted(held))
        terms = draw.sample(sorted(set(held[garment])), k=draw.choice((1, 1, 2, 3)))
        if draw.random() < 0.25:
            terms[0] = draw.choice(facts.term_keys)
        limits: dict[str, Any] = {"grades": draw.choice(("A", "A", "AB", "ABC"))}
        if draw.random() < 0.25:
            limits["place"] = draw.choice(sorted({each for d in facts.documents for each in d.places}))
        if draw.random() < 0.2:
            limits["kind"] = draw.choice(sorted({d.kind for d in facts.documents}))
        if draw.random() < 0.2:
            limits["worn_for"] = draw.choice((2, 5, 10))
        features = tuple(dict.fromkeys(terms))
        asked.append(
            ({"garment": facts.garments[garment].id, "features": features, **limits}, draw.choice(TIMES))
        )
    return asked


def settled(page: Page) -> None:
    """Waits until whatever data the page has asked for is there and shown."""
    page.wait_for_function("() => !document.querySelector('[aria-busy=true]')")


def ask(page: Page, question: dict[str, Any], when: str) -> None:
    """Puts a question into the address bar."""
    pairs = [("garment", question["garment"]), ("when", when)]
    pairs += [("feature", feature) for feature in question["features"]]
    pairs += [("place", question.get("place", "")), ("kind", question.get("kind", ""))]
    pairs += [("wearer", question.get("wearer", ""))]
    pairs += [("grades", question["grades"]), ("worn", str(question.get("worn_for", "")))]
    page.evaluate("(hash) => { location.hash = hash; }", urlencode(pairs))
    page.wait_for_function(
        "(garment) => document.getElementById('ask-garment').value === garment", arg=question["garment"]
    )
    settled(page)


def window_of(catalogue: Catalogue, when: str) -> Window:
    span = widened(read_phrase(when).span, catalogue.settings.circa_years)
    return Window(span.earliest, span.latest)


def test_the_page_answers_as_the_command_line_does(opened, shown_catalogue, shown_facts):
    page = opened("index.html")
    verdicts = set()
    for question, when in questions(shown_facts, 50):
        ask(page, question, when)
        page.wait_for_function("(when) => document.getElementById('ask-when').value === when", arg=when)
        settled(page)
        whole = Question(window=window_of(shown_catalogue, when), **question)
        given, changes = as_json(answer(shown_facts, whole)), sensitivity(shown_facts, whole)
        findings = given["features"] + ([given["together"]] if given["together"] else [])
        assert page.evaluate(READ_ANSWER) == [expected(each, changes) for each in findings], (
            question,
            when,
        )
        verdicts |= {each["verdict"] for each in findings}
    assert len(verdicts) >= 6, "the questions are to bring out different verdicts"


def test_each_way_of_narrowing_changes_the_answer_as_it_does_on_the_command_line(
    opened, shown_catalogue, shown_facts
):
    """For every limit a question is looked for whose answer the limit changes."""
    page = opened("index.html")
    draw = random.Random(3)
    limits = {
        "place": lambda: draw.choice(sorted({each for d in shown_facts.documents for each in d.places})),
        "kind": lambda: draw.choice(sorted({d.kind for d in shown_facts.documents})),
        "wearer": lambda: draw.choice(("woman", "girl", "man")),
        "grades": lambda: draw.choice(("AB", "ABC")),
        "worn_for": lambda: draw.choice((3, 8)),
    }
    for name, value in limits.items():
        for question, when in questions(shown_facts, 400):
            plain = {"garment": question["garment"], "features": question["features"][:1], "grades": "A"}
            limited = {**plain, name: value()}
            window = window_of(shown_catalogue, when)
            without, given = (
                as_json(answer(shown_facts, Question(window=window, **each)))["features"]
                for each in (plain, limited)
            )
            if without[0]["reasons"] != given[0]["reasons"]:
                break
        else:
            pytest.fail(f"no question whose answer changes with {name}")
        changes = sensitivity(shown_facts, Question(window=window, **limited))
        ask(page, limited, when)
        address = """(value) => [...document.querySelectorAll("#narrow select, #ask-worn")]
            .some((each) => each.value === value)"""
        page.wait_for_function(address, arg=str(limited[name]))
        settled(page)
        assert page.evaluate(READ_ANSWER) == [expected(each, changes) for each in given], (limited, when)


def test_the_answer_made_at_build_time_is_the_one_the_scripts_make(opened, as_tree):
    still, lively = opened("index.html", scripts=False), opened("index.html#garment=blouse&when=1911")
    assert lively.locator("#answer-head").inner_text() == "Blouse for 1911"
    example = lively.locator("#answer").get_attribute("data-question")
    lively.evaluate("(hash) => { location.hash = hash; }", example)
    lively.wait_for_function("() => document.getElementById('answer-head').textContent !== 'Blouse for 1911'")
    settled(lively)
    trees = []
    for page in (still, lively):
        # Evaluation works in a page whose own scripts are switched off.
        trees.append(page.locator("#answer").evaluate(as_tree))
    assert trees[0].count('class="fit"') >= 1
    assert trees[0] == trees[1]


def test_the_features_chosen_stand_there_before_the_scripts_do(opened, as_tree):
    still, lively = opened("index.html", scripts=False), opened("index.html")
    lively.locator("#ask-worn").evaluate("(each) => each.dispatchEvent(new Event('change'))")
    lively.wait_for_function("() => location.hash")
    trees = [page.locator("#ask-chosen").evaluate(as_tree) for page in (still, lively)]
    assert "chip" in trees[0]
    assert trees[0] == trees[1]


def test_no_data_come_before_somebody_asks(opened):
    page = opened("index.html")
    scripts = "() => [...document.scripts].filter((each) => each.src.includes('/data/')).length"
    assert page.evaluate(scripts) == 0
    page.locator("#ask-chosen button").first.click()
    page.wait_for_function("() => location.hash")
    settled(page)
    assert page.evaluate(scripts) > 0


def test_data_that_do_not_come_are_said_to_be_missing(chromium, demo_site):
    context = chromium.new_context()
    context.route("**/data/rows/*", lambda route: route.abort())
    page = context.new_page()
    page.goto(f"{demo_site.as_uri()}/index.html#garment=day-dress&when=1926&feature=neckline/square")
    page.locator("#answer", has_text="could not be loaded").wait_for()
    context.close()


def test_the_pages_one_asks_of_are_light(shown_facts, demo_site):
    for page in ("index.html", "plates.html", "timeline.html"):
        assert len(gzip.compress((demo_site / page).read_bytes(), 9)) <= 60 * 1024, page
    timelines = list((demo_site / "timeline").rglob("*.html"))
    assert len(timelines) > 100
    assert max(len(gzip.compress(each.read_bytes(), 9)) for each in timelines) <= 60 * 1024


def test_without_scripts_there_is_an_answer_and_no_form(opened):
    page = opened("index.html", scripts=False)
    assert page.locator(".fit").first.is_visible()
    assert not page.locator("#ask").is_visible()
    assert page.locator(".home-noscript").is_visible()


def test_another_name_finds_a_feature_and_the_answer_appears(opened, shown_catalogue):
    page = opened("index.html#garment=day-dress&when=1926")
    assert page.locator(".fit").count() == 0
    term = next(
        term
        for term in shown_catalogue.vocabulary.terms.values()
        if term.facet == "neckline"
        and any(name.name.split()[0].lower() not in term.label for name in term.names)
    )
    name = next(name.name for name in term.names if name.name.split()[0].lower() not in term.label)
    page.locator("#ask-feature").fill(name)
    assert page.locator("#ask-found [role=option]").filter(has_text=name).first.is_visible()
    page.keyboard.press("ArrowDown")
    page.keyboard.press("Enter")
    settled(page)
    assert page.locator(".fit").first.get_attribute("data-term")
    assert "feature=" in page.evaluate("location.hash")


def test_a_name_nothing_has_is_said_and_cannot_be_taken(opened):
    page = opened("index.html#garment=day-dress&when=1926")
    page.locator("#ask-feature").fill("zzz")
    assert page.locator("#ask-found").inner_text() == "No other feature of that name"
    page.keyboard.press("ArrowDown")
    page.keyboard.press("Enter")
    assert page.locator(".chip").count() == 0
    page.keyboard.press("Escape")
    assert not page.locator("#ask-found").is_visible()
    page.keyboard.press("Escape")
    assert page.locator("#ask-feature").input_value() == ""


def test_the_whole_way_by_keyboard(opened):
    page = opened("index.html#garment=day-dress&when=1926")

    def tab_to(selector: str, most: int = 80) -> None:
        for _ in range(most):
            page.keyboard.press("Tab")
            if page.evaluate("(s) => document.activeElement.matches(s)", selector):
                return
        pytest.fail(f"{selector} was not reached by the Tab key")

    tab_to("#ask-feature")
    page.keyboard.type("slip-on")
    page.keyboard.press("ArrowDown")
    active = page.locator("#ask-feature").get_attribute("aria-activedescendant")
    assert page.locator(f"#{active}").get_attribute("aria-selected") == "true"
    page.keyboard.press("Enter")
    settled(page)
    assert page.locator(".chip").inner_text().startswith("Closure")
    assert page.locator(".fit").get_attribute("data-term") == "closure/slip-on"
    assert "slip-on" in page.locator("#said").inner_text()
    tab_to(".trade-what")
    cited = page.locator(".cite").first.get_attribute("data-plate")
    page.keyboard.press("Enter")
    page.wait_for_url(f"**/plate/{cited}.html")
    page.go_back()
    page.wait_for_selector(".fit")
    assert page.locator(".fit").get_attribute("data-term") == "closure/slip-on"
    assert page.locator("#ask-when").input_value() == "1926"


def test_back_takes_one_step_of_the_question_back(opened):
    page = opened("index.html#garment=day-dress&when=1926&feature=neckline/v")
    page.locator("#ask-garment").select_option("blouse")
    settled(page)
    page.locator("#narrow summary").click()
    page.locator("#ask-place").select_option(index=1)
    assert page.locator("#narrow-said").inner_text().startswith(":")
    settled(page)
    page.go_back()
    settled(page)
    assert page.locator("#ask-place").input_value() == ""
    assert page.locator("#answer-head").inner_text().startswith("Blouse")
    page.go_back()
    settled(page)
    assert page.locator("#answer-head").inner_text() == "Day dress for 1926"
    assert page.locator(".chip").count() == 1


def test_a_time_that_cannot_be_read_is_said_and_not_guessed(opened):
    page = opened("index.html#garment=day-dress&when=1926&feature=neckline/v")
    page.locator("#ask-when").fill("the year dot")
    page.wait_for_selector("#ask-when[aria-invalid=true]")
    assert page.locator(".fit").count() == 0
    assert page.locator("#ask-reading").inner_text().strip()
    page.locator("#ask-when").fill("late 1920s")
    page.wait_for_selector("#ask-when[aria-invalid=false]")
    settled(page)
    assert page.locator("#answer-head").inner_text() == "Day dress for 1927–1929"


def test_names_an_address_should_not_have_are_named_and_left_out(opened):
    page = opened("index.html#garment=day-dress&when=1926&feature=neckline/nonesuch&feature=%3Cb%3Ex")
    assert "neckline/nonesuch, <b>x" in page.locator("#ask-reading").inner_text()
    assert page.locator(".fit").count() == 0
    assert page.locator(".usual-group").count() > 3


def test_usual_alternatives_are_those_of_the_evidence_and_can_be_asked_about(opened, shown_facts):
    page = opened("index.html#garment=day-dress&when=1926&feature=neckline/square")
    window = Window(*(span := read_phrase("1926").span) and (span.earliest, span.latest))
    usual = usual_in_window(shown_facts, Question("day-dress", (), window), "neckline")
    others = [each for each in usual if each.term != "neckline/square"][:6]
    assert page.locator(".usual-name").all_inner_texts() == [each.label for each in others]
    shares = [per_cent(each.share.value or 0) for each in others]
    assert page.locator(".usual-share").all_inner_texts() == shares
    page.locator(".usual-ask").first.click()
    page.wait_for_function("(term) => location.hash.includes(term)", arg=others[0].term)
    settled(page)
    assert page.locator(".fit").get_attribute("data-term") == others[0].term
    assert page.evaluate("document.activeElement.id") == "answer-head"


def test_a_citation_can_be_copied(opened):
    page = opened("index.html#garment=day-dress&when=1926&feature=neckline/v")
    page.context.grant_permissions(["clipboard-read", "clipboard-write"])
    cite = page.locator(".cite").first
    cite.locator("button.copy").first.click()
    cite.get_by_text("Copied").wait_for()
    assert (
        page.evaluate("navigator.clipboard.readText()") == cite.locator(".cite-text span").first.inner_text()
    )


def test_the_question_works_below_a_path_on_a_server(opened, served):
    page = opened("index.html#garment=day-dress&when=1926&feature=neckline/v", at=served)
    assert page.locator(".fit").get_attribute("data-verdict") == "attested"
    page.locator(".cite .trade-what").first.click()
    page.wait_for_url(f"{served}plate/**")


@pytest.mark.parametrize("width", [320, 390, 820, 1280])
def test_nothing_is_wider_than_the_window(opened, width):
    page = opened(
        "index.html#garment=day-dress&when=1926&feature=neckline/v&feature=closure/back", width=width
    )
    page.locator("#narrow summary").click()
    page.locator("#ask-feature").click()
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
