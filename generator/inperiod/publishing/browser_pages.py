"""The three pages one asks of: home with its question, the plates, the timelines.

Each is whole without scripts: the home page carries a worked answer, the page of plates a list by year,
every timeline its drawing and its table. The browser's side says the same things in the same words.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from functools import cache
from typing import Any

from inperiod.dating import decimal_year
from inperiod.drawing.flats import Flat, draw_plan
from inperiod.drawing.timeline_chart import weaves
from inperiod.evidence import Facts, Question
from inperiod.publishing import paths
from inperiod.publishing.browser_data import has_captions_apart, places_of
from inperiod.publishing.lookup import Lookup
from inperiod.publishing.page import Link, Page
from inperiod.publishing.view_answer import Asked, address, answer_view, ask_window
from inperiod.publishing.view_plates import plates_view
from inperiod.publishing.view_timeline import Shown, timeline_view
from inperiod.publishing.words import KINDS
from inperiod.records.model import Catalogue, Feature, Mark

WEARERS: Mapping[str, str] = {
    "woman": "a woman",
    "man": "a man",
    "girl": "a girl",
    "boy": "a boy",
    "infant": "an infant",
}


def browser_pages(look: Lookup, shown: Sequence[Shown] = ()) -> list[Page]:
    """Home, plates, the entrance to the timelines, and every timeline that is shown."""
    catalogue = look.catalogue
    pages = [
        Page(
            paths.HOME,
            "home.html",
            catalogue.settings.title,
            lambda: home_view(catalogue, look.facts),
            section=paths.HOME,
            description="Is this feature right for that year, and which dated plate says so?",
            made_from=("lists",),
        ),
        Page(
            paths.PLATES,
            "plates.html",
            "Plates",
            lambda: plates_view(catalogue, look.facts),
            section=paths.PLATES,
            description="Every plate, by date, garment, feature, place and kind of source.",
            made_from=("lists",) if has_captions_apart(catalogue) else (),
        ),
    ]
    choices = cache(lambda: {"places": place_choices(catalogue), "kinds": kinds_of(look.facts)})
    return [
        *pages,
        _timeline_page(look, shown, choices, None),
        *(_timeline_page(look, shown, choices, each) for each in shown),
    ]


def _timeline_page(
    look: Lookup, shown: Sequence[Shown], choices: Callable[[], Mapping[str, Any]], one: Shown | None
) -> Page:
    """The page of a timeline; of none, the entrance to all of them, which shows the one it opens with."""
    path = one.path if one else paths.TIMELINE

    def view() -> Mapping[str, Any]:
        facts = look.facts
        drawn = one or _opening(example(look.catalogue, facts), shown)
        return {
            **timeline_view(look.catalogue, facts, shown, drawn, path),
            **choices(),
            "entrance": one is None,
            "all": [] if one else _by_garment(shown),
        }

    return Page(
        path,
        "timeline.html",
        f"{one.facet_label} of {one.garments}" if one else "Timeline",
        view,
        section=paths.TIMELINE,
        description="Which styles were shown in which decade, and on how much that rests.",
        trail=(Link("Timeline", paths.TIMELINE),) if one else (),
        made_from=("timeline", one.garment, one.facet) if one else ("lists",),
    )


def _by_garment(shown: Sequence[Shown]) -> list[Mapping[str, Any]]:
    """Every timeline under its garment."""
    found: dict[str, list[Shown]] = {}
    for each in shown:
        found.setdefault(each.garment_label, []).append(each)
    return [{"label": label, "facets": facets} for label, facets in found.items()]


def _opening(asked: Asked, shown: Sequence[Shown]) -> Shown | None:
    """The timeline the entrance shows: that of the example's garment and first feature, else the fullest."""
    facets = [feature.partition("/")[0] for feature in asked.question.features]
    for facet in facets:
        for each in shown:
            if (each.garment, each.facet) == (asked.garment, facet):
                return each
    return max(shown, key=lambda each: (each.weight, each.garment, each.facet), default=None)


def home_view(catalogue: Catalogue, facts: Facts) -> Mapping[str, Any]:
    """What the home page shows: the choices of the form and one whole answer."""
    asked = example(catalogue, facts)
    return {
        "garments": garments_of(facts),
        "places": place_choices(catalogue),
        "kinds": kinds_of(facts),
        "wearers": wearers_of(facts),
        "question": asked,
        "chosen": [_named(facts, feature) for feature in asked.question.features],
        "reading": asked.reading,
        "seasons": catalogue.settings.seasons,
        "apart": has_captions_apart(catalogue),
        "address": address(asked.pairs),
        "answer": answer_view(catalogue, facts, asked),
        "flat": asked_flat(catalogue, asked),
        "weaves": weaves(),
    }


def asked_flat(catalogue: Catalogue, asked: Asked) -> Flat | None:
    """The garment asked about, drawn from the features asked about."""
    window = asked.question.window
    ends = [decimal_year(day) for day in (window.earliest, window.latest) if day is not None]
    features = [Feature(each.partition("/")[0], each, Mark("")) for each in asked.question.features]
    if not features or not ends:
        return None
    return draw_plan(
        features,
        asked.question.garment,
        catalogue.vocabulary,
        sum(ends) / len(ends),
        asked.question.wearer or "any",
        "the question",
    )


def example(catalogue: Catalogue, facts: Facts) -> Asked:
    """The question the page opens with: ``publishing.example`` of the settings where it can be asked, or
    the garment with most plates, in the year most of them lie in, with the commonest terms of two facets."""
    given = catalogue.settings.publishing.get("example")
    if isinstance(given, Mapping):
        garment, when = str(given.get("garment", "")), str(given.get("when", ""))
        features = tuple(str(each) for each in given.get("features", ()))
        known = any(each.id == garment for each in facts.garments)
        window = ask_window(catalogue, when)
        if known and window and all(feature in facts.term_index for feature in features):
            question = Question(garment, features, window.window, grades=catalogue.settings.grades)
            return Asked(question, when, window.reading, catalogue.settings.grades)
    return _commonest(catalogue, facts)


def _commonest(catalogue: Catalogue, facts: Facts) -> Asked:
    garments = Counter(plate.garment for _, plate in facts.plates)
    garment = garments.most_common(1)[0][0] if garments else 0
    when = Counter[int]()
    terms = Counter[int]()
    for document, plate in facts.plates:
        days = facts.documents[document].days
        if plate.garment == garment:
            terms.update(term for term, _ in plate.shown)
            year_of = int(days[0] // 365.2425) + 1 if days and days[0] is not None else 0
            if year_of >= 1000:  # a year of four figures: what one can type into the box
                when[year_of] += 1
    year = str(when.most_common(1)[0][0]) if when else str(catalogue.settings.decades[0])
    keys: list[str] = []
    facets: set[int] = set()
    for term, _ in terms.most_common():
        if facts.terms[term].facet not in facets and len(keys) < 2:
            facets.add(facts.terms[term].facet)
            keys.append(facts.term_keys[term])
    window = ask_window(catalogue, year)
    assert window is not None
    name = facts.garments[garment].id if facts.garments else ""
    question = Question(name, tuple(keys), window.window, grades=catalogue.settings.grades)
    return Asked(question, year, window.reading, catalogue.settings.grades)


def _named(facts: Facts, feature: str) -> dict[str, str]:
    term = facts.terms[facts.term_index[feature]]
    return {"facet": facts.facets[feature.partition("/")[0]], "label": term.label}


def garments_of(facts: Facts) -> list[dict[str, Any]]:
    """Garment types for the form, in the vocabulary's order, broad ones grouped with their narrower ones."""
    roots: dict[int, list[int]] = {}
    for index in range(len(facts.garments)):
        roots.setdefault(_root(facts, index), []).append(index)
    return [
        {
            "label": facts.garments[root].label if len(members) > 1 else "",
            "garments": [
                {"id": facts.garments[each].id, "label": with_article(facts, each)} for each in members
            ],
        }
        for root, members in roots.items()
    ]


def _root(facts: Facts, garment: int) -> int:
    seen: list[int] = []
    at: int | None = garment
    while at is not None and at not in seen:
        seen.append(at)
        at = facts.garments[at].broader
    return seen[-1]


def with_article(facts: Facts, garment: int) -> str:
    """As one says what one makes: ``a day dress``, ``an overall``, ``trousers``, ``underwear``."""
    label, plural = facts.garments[garment].label, facts.garments[garment].plural
    if plural.startswith(("pieces of", "other")) or plural == label[:1].lower() + label[1:]:
        return label
    return f"{'an' if label[:1].lower() in 'aeiou' else 'a'} {label}"


def place_choices(catalogue: Catalogue) -> list[dict[str, str]]:
    """The places a question can be narrowed to."""
    return [{"id": key, "label": label} for key, label in places_of(catalogue).items()]


def kinds_of(facts: Facts) -> list[dict[str, str]]:
    """The kinds of source the facts hold."""
    held = {document.kind for document in facts.documents}
    return [
        {"id": kind, "label": KINDS[kind][1] if kind in KINDS else kind} for kind in _ordered(held, KINDS)
    ]


def wearers_of(facts: Facts) -> list[dict[str, str]]:
    """Whom the plates' garments are for."""
    held = {plate.who for _, plate in facts.plates}
    return [{"id": who, "label": label} for who, label in WEARERS.items() if who in held]


def _ordered(held: set[str], order: Mapping[str, Any]) -> list[str]:
    return [each for each in order if each in held] + sorted(held - set(order))
