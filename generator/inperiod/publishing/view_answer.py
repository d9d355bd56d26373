"""An answer as the home page shows it. The browser makes the same of the same answer (``home.js``)."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any
from urllib.parse import urlencode

from inperiod.citing import cite
from inperiod.dating import Unreadable, day_number, decimal_year, read_phrase, widened
from inperiod.drawing.small_charts import Strip, draw_share, draw_strip
from inperiod.evidence import Extent, Facts, Question, answer, extent, sensitivity, timeline, usual_in_window
from inperiod.evidence.calendar import window_in_words
from inperiod.evidence.questions import Finding
from inperiod.evidence.weights import Window
from inperiod.publishing import paths, words
from inperiod.publishing.flats import shown_picture
from inperiod.publishing.wording import amount, cite_head, per_cent, says
from inperiod.records.model import Catalogue

CITED = 3
"""Plates offered for citing under each finding; the rest are one link away."""

USUAL = 6
"""Terms named for a facet under "usual", and half as many where no feature was asked about."""

LEAST_DOCUMENTS = 3
"""A garment and facet with fewer documents looked at gets no timeline of its own."""

NOTHING = "No feature asked about yet: add one above, or ask about what was usual, below."

FRAMED = "By decade; the mark under the line is the time asked about. Hatched: nobody looked."


@dataclass(frozen=True, slots=True)
class Understood:
    """A window as read from what was typed, and what was understood, in words."""

    window: Window
    reading: str


@dataclass(frozen=True, slots=True)
class Asked:
    """A question with its target as typed and as understood. ``grades`` are those weighed when not said."""

    question: Question
    when: str
    reading: str
    grades: str = "A"

    @property
    def garment(self) -> str:
        return self.question.garment

    @property
    def pairs(self) -> list[tuple[str, str]]:
        """The question as its address says it."""
        return question_pairs(self.question, self.when, self.grades)


def ask_window(catalogue: Catalogue, text: str) -> Understood | None:
    """The window a year, a range or a phrase asks for, circa widened; None where it cannot be read."""
    try:
        read = read_phrase(text, catalogue.settings.seasons)
    except Unreadable:
        return None
    span = widened(read.span, catalogue.settings.circa_years)
    return Understood(Window(span.earliest, span.latest), reading(read.words, read.note))


def reading(understood: str, note: str | None) -> str:
    """What is shown under the box one types a time into."""
    return f"Understood as {understood}. {note}" if note else f"Understood as {understood}."


def address(pairs: Iterable[tuple[str, str]]) -> str:
    """Pairs as the part of an address after the ``#``: as the browser writes them (``base.js``)."""
    text = urlencode([pair for pair in pairs if pair[1] != ""], safe="/,*")
    return text.replace("~", "%7E")


def question_pairs(question: Question, when: str, grades: str) -> list[tuple[str, str]]:
    """A question as the pairs of its address; what is at its default is left out."""
    return [
        ("garment", question.garment),
        ("when", when),
        *(("feature", feature) for feature in question.features),
        ("place", question.place or ""),
        ("kind", question.kind or ""),
        ("wearer", question.wearer or ""),
        ("grades", "" if question.grades == grades else question.grades),
        ("worn", f"{question.worn_for:g}" if question.worn_for else ""),
    ]


def answer_view(catalogue: Catalogue, facts: Facts, asked: Asked) -> Mapping[str, Any]:
    """The answer whole: a heading, a finding for every feature, one for all together, what else was usual."""
    question = asked.question
    garment = next((each for each in facts.garments if each.id == question.garment), None)
    if garment is None:
        return {
            "head": "Nothing to ask yet",
            "fits": [],
            "nothing": "This catalogue does not know any garment yet.",
            "usual_head": "",
            "usual": [],
        }
    when = window_in_words(question.window.earliest, question.window.latest)
    given = answer(facts, question)
    findings = [*given.findings, *([given.together] if given.together else [])]
    fits = [finding_view(catalogue, facts, asked, found, index) for index, found in enumerate(findings)]
    changes = sensitivity(facts, question)
    for shown in fits:
        shown["hangs"] = [change.sentence for change in changes if change.term == shown["term"]]
    return {
        "head": f"{garment.label[:1].upper()}{garment.label[1:]} for {when}",
        "fits": fits,
        "nothing": NOTHING,
        "usual_head": f"Also usual in {when}" if question.features else f"Usual in {when}",
        "usual": usual_view(catalogue, facts, asked),
    }


def finding_view(
    catalogue: Catalogue, facts: Facts, asked: Asked, found: Finding, index: int
) -> dict[str, Any]:
    """One finding. ``index`` keeps the ids of its citations apart from those of other findings."""
    together = " + " in found.term
    facets = list(facts.facets)
    term = None if together else facts.terms[facts.term_index[found.term]]
    label = "All of them on one garment" if term is None else term.label
    features = tuple(found.term.split(" + "))
    return {
        "term": found.term,
        "together": together,
        "facet": "" if term is None else facts.facets[facets[term.facet]],
        "label": label,
        "short": "together" if term is None else label,
        "path": None if term is None else paths.term_path(found.term),
        "verdict": found.verdict,
        "says": says(found.verdict, found.reasons),
        "reasons": found.reasons[1:],
        "share": share_view(found),
        "strip": strip_view(facts, asked, features, label),
        "cite_head": cite_head(found.verdict, len(found.cite)),
        "cite": [
            cited_view(catalogue, key, f"cite-{index}-{number}")
            for number, key in enumerate(found.cite[:CITED])
        ],
        "more": {
            "label": "Every plate that shows it" if term else "Every plate that shows them all",
            "path": f"{paths.PLATES}#"
            + address([("garment", asked.question.garment), *(("feature", feature) for feature in features)]),
        },
    }


def share_view(found: Finding) -> Mapping[str, Any] | None:
    """The share drawn and said; None where nothing was recorded in the window."""
    share = found.share
    if share.value is None or share.low is None or share.high is None:
        return None
    interval = f"{per_cent(share.low)} to {per_cent(share.high)}"
    text = (
        f"{per_cent(share.value)}, {found.frequency or 'not seen'}: {amount(share.showing)} of "
        f"{amount(share.recorded)} plates by weight; 95 % interval {interval}."
    )
    return {"drawing": draw_share(share.value, share.low, share.high, f"Share: {text}"), "words": text}


def worth_drawing(stands_on: Extent) -> bool:
    """Whether enough was looked at for a timeline to have a page of its own."""
    return stands_on.documents >= LEAST_DOCUMENTS and stands_on.terms > 0


def strip_view(facts: Facts, asked: Asked, features: tuple[str, ...], label: str) -> Mapping[str, Any]:
    """The share in every decade, the window marked, and the path of the facet's timeline if it has one."""
    question = asked.question
    decades, shares = decade_shares(facts, question, features)
    window = (_year(question.window.earliest), _year(question.window.latest, 1))
    told = ", ".join(
        f"{decade}s {'not looked at' if share is None else per_cent(share)}"
        for decade, share in zip(decades, shares, strict=True)
    )
    strip = Strip(decades, shares, window, f"{label} by decade: {told}.")
    facet = features[0].partition("/")[0]
    path = None
    if len(features) == 1 and worth_drawing(extent(facts, question.garment, facet, asked.grades)):
        path = paths.timeline_path(question.garment, facet)
    return {"drawing": draw_strip(strip), "words": FRAMED, "path": path}


def _year(day: int | None, after: int = 0) -> float | None:
    return None if day is None else decimal_year(day + after)


def decade_shares(
    facts: Facts, question: Question, features: Sequence[str]
) -> tuple[tuple[int, ...], tuple[float | None, ...]]:
    """Decades and the share of the feature, or of all of them together, in each."""
    first, last = facts.decades
    decades = tuple(range(first, last + 1, 10))
    if len(features) == 1:
        facet = features[0].partition("/")[0]
        drawn = timeline(
            facts,
            question.garment,
            facet,
            question.place,
            question.kind,
            question.wearer,
            question.grades,
            facts.decades,
        )
        row = next((row for row in drawn.rows if row.term == features[0]), None)
        if row:
            return decades, row.shares
        return decades, tuple(0.0 if looked > 0 else None for looked in drawn.recorded)
    shares: list[float | None] = []
    for decade in decades:
        window = Window(day_number(decade, 1, 1), day_number(decade + 10, 1, 1) - 1)
        found = answer(facts, replace(question, features=tuple(features), window=window)).together
        shares.append(found.share.value if found else None)
    return decades, tuple(shares)


def cited_view(catalogue: Catalogue, key: str, element: str) -> Mapping[str, Any]:
    """A plate to cite: what and where it is, its date, and its citation as text."""
    plate = catalogue.plates[key]
    source = catalogue.sources[plate.source]
    garment = catalogue.vocabulary.garments.get(plate.garment)
    return {
        "key": key,
        "id": element,
        "path": paths.plate_path(key),
        "label": words.sentence(garment.label if garment else plate.garment.replace("-", " ")),
        "source": source.title,
        "where": words.short_place(plate.locator),
        "when": words.when(catalogue.dated(plate)),
        "grade": source.grade or "",
        "text": cite(catalogue, key),
        "picture": shown_picture(catalogue, plate),
    }


def usual_view(catalogue: Catalogue, facts: Facts, asked: Asked) -> list[Mapping[str, Any]]:
    """By facet, the commonest terms of the window that were not asked about. Without a feature asked about,
    the commonest of every facet."""
    question = asked.question
    chosen = set(question.features)
    facets = list(dict.fromkeys(feature.partition("/")[0] for feature in question.features))
    most = USUAL if facets else USUAL // 2

    def ask(term: str) -> str:
        changed = with_term(catalogue, question, term)
        return "#" + address(question_pairs(changed, asked.when, asked.grades))

    groups: list[Mapping[str, Any]] = []
    for facet in facets or list(facts.facets):
        others = [each for each in usual_in_window(facts, question, facet) if each.term not in chosen][:most]
        if others:
            terms = [
                {
                    "label": each.label,
                    "path": paths.term_path(each.term),
                    "share": per_cent(each.share.value or 0.0),
                    "ask": "#"
                    + address(
                        question_pairs(with_term(catalogue, question, each.term), asked.when, asked.grades)
                    ),
                }
                for each in others
            ]
            groups.append({"facet": facts.facets[facet], "terms": terms})
    return groups


def with_term(catalogue: Catalogue, question: Question, term: str) -> Question:
    """The question with that term; in a facet that allows one at a time it takes the place of the other."""
    facet = catalogue.vocabulary.facets.get(term.partition("/")[0])
    gone = f"{facet.id}/" if facet and facet.exclusive else term
    kept = tuple(feature for feature in question.features if not feature.startswith(gone))
    return replace(question, features=(*kept, term))
