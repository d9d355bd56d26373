"""Pages of terms, facets and garment types, and the list of all terms."""

from __future__ import annotations

import re
from collections import Counter, defaultdict
from collections.abc import Mapping
from dataclasses import dataclass
from itertools import chain
from typing import Any

from inperiod.drawing import draw_term
from inperiod.evidence.facts import Facts, plural
from inperiod.making import caution_name
from inperiod.publishing import paths, words
from inperiod.publishing.lookup import NOWHERE, Lookup
from inperiod.publishing.page import Link
from inperiod.publishing.tapes import Tape, decade_cells, scale_of, sightings, tape, years
from inperiod.publishing.view_answer import address
from inperiod.publishing.view_lineup import decades_line, lineup, typical
from inperiod.records.model import Facet, Milestone, Plate, Term

MOST_GARMENTS = 8
_SLUG = re.compile(r"[a-z0-9-]+\Z")
MOST_PLATES = 60


@dataclass(frozen=True, slots=True)
class Span:
    """A row of a table of tapes: what it is, and its tape."""

    link: Link
    tape: Tape


@dataclass(frozen=True, slots=True)
class Known:
    """A documented date: what happened, when, who says so."""

    label: str
    when: str
    source: str
    note: str | None


def term_view(look: Lookup, facts: Facts, term: Term) -> Mapping[str, Any]:
    """What the template ``term.html`` shows."""
    facet = look.catalogue.vocabulary.facets[term.facet]
    plates = look.showing.get(term.key, ())
    spans = spans_by_garment(look, facts, term.key)
    chief = max(spans, key=lambda span: span.tape.sightings).link if spans else None
    chief_id = chief.path.removeprefix("garment/").removesuffix(".html") if chief else None
    grades = look.catalogue.settings.grades
    return {
        "term": term,
        "facet": Link(facet.label, paths.facet_path(facet.id)),
        "drawing": draw_term(term.key, term.label),
        "names": names(term),
        "broader": look.term_link(f"{term.facet}/{term.broader}") if term.broader else None,
        "narrower": tuple(look.term_link(each.key) for each in facet.terms if each.broader == term.id),
        "see_also": tuple(
            look.term_link(key if "/" in key else f"{term.facet}/{key}") for key in term.see_also
        ),
        "milestones": milestones(term),
        "cautions": cautions(term),
        "applies": tuple(look.garment_link(garment) for garment in term.applies_to),
        "spans": spans,
        "ticks": scale_of(facts).ticks(),
        "chief": chief,
        "chief_plural": plural(chief.label) if chief else "",
        "decades": decade_cells(facts, chief_id, term.key, grades) if chief_id else (),
        "together": look.together(term.key),
        "around": around(look, facts, term, chief_id),
        "plates": tuple(look.line(plate) for plate in plates[:MOST_PLATES]),
        "count": len(plates),
        "all_plates": Link("All of them, to sort and filter", f"{paths.PLATES}#feature={term.key}"),
        "ask": ask_link(spans, term.key),
        "answer": answer_sentence(look, term, spans, len(plates)),
        "lineup": lineup(look, plates),
    }


def ask_link(spans: tuple[Span, ...], key: str) -> Link | None:
    """To the question, with the term on the garment that has it most, in the middle of its years."""
    if not spans or spans[0].tape.first is None or spans[0].tape.last is None:
        return None
    garment = spans[0].link.path.removeprefix("garment/").removesuffix(".html")
    year = int((spans[0].tape.first + spans[0].tape.last) / 2)
    asked = address([("garment", garment), ("when", str(year)), ("feature", key)])
    return Link("Ask about a year of your own", f"{paths.HOME}#{asked}")


def answer_sentence(look: Lookup, term: Term, spans: tuple[Span, ...], plates: int) -> str:
    """When it was shown, in one sentence, before any table."""
    if not spans:
        if plates:
            return (
                f"{words.sentence(words.counted(plates, 'plate shows', 'plates show'))} it, but none "
                "of a date firm "
                "enough to count."
            )
        return "No plate in this catalogue shows it yet. If you have one, it would be the first."
    best = max(spans, key=lambda span: span.tape.sightings)
    return f"{best.tape.words} That is on {plural(best.link.label)}, where it is recorded most."


def names(term: Term) -> tuple[tuple[str, str], ...]:
    """Other names, each with who said it and when."""
    made = []
    for name in term.names:
        language = words.language(name.language)
        parts = [name.use or "", name.period or "", language, name.note or ""]
        made.append((name.name, ", ".join(part for part in parts if part)))
    return tuple(made)


def cautions(term: Term) -> tuple[Link, ...]:
    """Each caution with its place on the page of cautions; one that is a sentence stands for itself."""
    return tuple(
        Link(caution_name(caution), f"{paths.CAUTIONS}#{caution}")
        if _SLUG.match(caution)
        else Link(caution, paths.CAUTIONS)
        for caution in term.cautions
    )


def milestones(term: Term) -> tuple[Known, ...]:
    """The dates before which it cannot be, or is not known in dress."""
    made = []
    if term.not_before:
        made.append(_known("Not before", term.not_before))
    if term.in_dress_from:
        made.append(_known("In dress from", term.in_dress_from))
    return tuple(made)


def _known(label: str, milestone: Milestone) -> Known:
    said = f"{words.when(milestone.date)}, {milestone.event}"
    return Known(label, said, milestone.source, milestone.note)


def spans_by_garment(look: Lookup, facts: Facts, term: str) -> tuple[Span, ...]:
    """One tape for each garment type on which it was sighted, most sightings first; a wide type is left
    out where a narrower one holds all the same sightings."""
    garments = dict.fromkeys(
        garment
        for narrow in dict.fromkeys(plate.garment for plate in look.showing.get(term, ()))
        for garment in look.catalogue.vocabulary.broader_garments(narrow)
    )
    grades = look.catalogue.settings.grades
    counted = ((garment, sightings(facts, garment, term, grades)) for garment in garments)
    found = {garment: count for garment, count in counted if count}
    # A wider type with as many as one of its narrower types.
    same = {
        wide
        for narrow, count in found.items()
        for wide in look.catalogue.vocabulary.broader_garments(narrow)[1:]
        if found.get(wide) == count
    }
    kept = sorted(found.keys() - same, key=lambda garment: (-found[garment], garment))
    tapes = ((garment, tape(facts, garment, term, grades)) for garment in kept[:MOST_GARMENTS])
    return tuple(Span(look.garment_link(garment), made) for garment, made in tapes if made)


def around(
    look: Lookup, facts: Facts, term: Term, garment: str | None
) -> tuple[tuple[str, tuple[Link, ...]], ...]:
    """What stands before, beside and after it: terms of its facet on the same garment, by the middle of
    their years."""
    if garment is None:
        return ()
    grades = look.catalogue.settings.grades
    own = years(facts, garment, term.key, grades)
    if own is None:
        return ()
    middle = (own[0] + own[1]) / 2
    before, beside, after = [], [], []
    for other in look.catalogue.vocabulary.facets[term.facet].terms:
        if other.id == term.id:
            continue
        count = sightings(facts, garment, other.key, grades)
        its = years(facts, garment, other.key, grades) if count >= 2 else None
        if its is None:
            continue
        first, last = its
        link = look.term_link(other.key, f"{int(first)}–{int(last)}")
        if last < middle:
            before.append((last, link))
        elif first > middle:
            after.append((-first, link))
        else:
            beside.append((count, link))

    def best(found: list[tuple[float, Link]] | list[tuple[int, Link]]) -> tuple[Link, ...]:
        return tuple(link for _, link in sorted(found, key=lambda item: (-item[0], item[1].label))[:5])

    made_rows = (("Before it", best(before)), ("Beside it", best(beside)), ("After it", best(after)))
    return tuple((label, links) for label, links in made_rows if links)


def facet_view(look: Lookup, facts: Facts, facet: Facet) -> Mapping[str, Any]:
    """What the template ``facet.html`` shows: every term with its years, on the garment that records it
    most."""
    recorded = look.recorded.get(facet.id, NOWHERE)
    chief = recorded.chief
    grades = look.catalogue.settings.grades
    rows = []
    unseen = []
    for term in facet.terms:
        made = tape(facts, chief, term.key, grades) if chief else None
        link = look.term_link(term.key)
        if made and made.sightings:
            rows.append(Span(link, made))
        else:
            unseen.append(link)
    return {
        "facet": facet,
        "chief": look.garment_link(chief) if chief else None,
        "rows": tuple(rows),
        "unseen": tuple(unseen),
        "terms": tuple(
            (look.term_link(term.key), term, draw_term(term.key, term.label)) for term in facet.terms
        ),
        "ticks": scale_of(facts).ticks(),
        "applies": tuple(look.garment_link(garment) for garment in facet.applies_to),
        "recorded": (recorded.shown, recorded.none, recorded.hidden),
        "timeline": look.timeline_link(chief, facet.id, "The same by decade, on the timeline")
        if chief
        else None,
    }


def garment_view(look: Lookup, facts: Facts, term: Term) -> Mapping[str, Any]:
    """What the template ``garment.html`` shows."""
    vocabulary = look.catalogue.vocabulary
    plates = look.of_garment.get(term.id, ())
    usual = typical(look, facts, term.id) if plates else ()
    features = [[each for each in plate.features if each.state != "not visible"] for plate in plates]
    recorded = Counter(facet for own in features for facet in {each.facet for each in own})
    count: dict[str, Counter[str]] = defaultdict(Counter)
    for each in chain.from_iterable(features):
        if each.term and each.state == "shown":
            count[each.facet][each.term] += 1
    facets = []
    for facet in vocabulary.facets.values():
        if facet.id != "garment" and recorded[facet.id]:
            best = sorted(count[facet.id].items(), key=lambda item: (-item[1], item[0]))[:6]
            facets.append(
                (
                    look.timeline_link(term.id, facet.id, facet.label)
                    or Link(facet.label, paths.facet_path(facet.id)),
                    recorded[facet.id],
                    tuple((look.term_link(key), number) for key, number in best),
                )
            )
    return {
        "term": term,
        "names": names(term),
        "broader": tuple(look.garment_link(each) for each in vocabulary.broader_garments(term.id)[1:]),
        "narrower": tuple(
            (look.garment_link(each.id), len(look.of_garment.get(each.id, ())))
            for each in vocabulary.garments.values()
            if each.broader == term.id
        ),
        "milestones": milestones(term),
        "cautions": cautions(term),
        "facets": tuple(facets),
        "typical": usual,
        "typical_line": decades_line(term.label, usual),
        "decades": by_decade(look, plates),
        "count": len(plates),
        "sources": len({plate.source for plate in plates}),
        "all_plates": Link("All of them, to sort and filter", f"{paths.PLATES}#garment={term.id}"),
    }


def by_decade(look: Lookup, plates: tuple[Plate, ...]) -> tuple[tuple[str, tuple[Any, ...], int], ...]:
    """Plates by the decade their date's middle lies in: label, the first lines, how many in all."""
    found: dict[str, list[Plate]] = {}
    for plate in plates:
        middle = look.middle(plate)
        label = "Undated" if middle is None else f"{int(middle // 10 * 10)}s"
        found.setdefault(label, []).append(plate)
    return tuple(
        (label, tuple(look.line(each) for each in members[:40]), len(members))
        for label, members in found.items()
    )


def terms_view(look: Lookup) -> Mapping[str, Any]:
    """Every facet with its terms and how many plates show each; garment types as a tree."""
    vocabulary = look.catalogue.vocabulary
    facets = []
    for facet in vocabulary.facets.values():
        if facet.id == "garment":
            continue
        terms = tuple((look.term_link(term.key), len(look.showing.get(term.key, ()))) for term in facet.terms)
        facets.append((Link(facet.label, paths.facet_path(facet.id)), facet.question, terms))
    tops = [term for term in vocabulary.garments.values() if not term.broader]
    garments = tuple(
        (
            look.garment_link(top.id),
            len(look.of_garment.get(top.id, ())),
            tuple(
                (look.garment_link(each.id), len(look.of_garment.get(each.id, ())))
                for each in vocabulary.garments.values()
                if each.id != top.id and vocabulary.broader_garments(each.id)[-1] == top.id
            ),
        )
        for top in tops
    )
    return {"facets": tuple(facets), "garments": garments, "terms": sum(len(terms) for _, _, terms in facets)}
