"""A question asked of the facts, and its answer."""

from __future__ import annotations

from dataclasses import dataclass

from inperiod.evidence.calendar import decimal_year
from inperiod.evidence.constants import CITED
from inperiod.evidence.facts import Facts, MilestoneFact
from inperiod.evidence.ranges import Attested, Seen, attested, seen
from inperiod.evidence.sentences import Case, reasons
from inperiod.evidence.shares import Frequency, Share, frequency, share
from inperiod.evidence.surveys import LeftOut, Limits, Survey, left_out, survey
from inperiod.evidence.verdicts import Judged, Verdict, judge
from inperiod.evidence.weights import Window


class Unknown(ValueError):
    """The question names a garment or a term the catalogue does not know. ``word`` is the name."""

    def __init__(self, kind: str, word: str) -> None:
        super().__init__(f"no {kind} “{word}” in the vocabulary")
        self.kind = kind
        self.word = word


@dataclass(frozen=True, slots=True)
class Question:
    """Is this right for that time? ``features`` are ``facet/term``; ``worn_for`` is a wear allowance in
    years; ``grades`` the grades of dating that are weighed: ``"A"``, ``"AB"`` or ``"ABC"``."""

    garment: str
    features: tuple[str, ...]
    window: Window
    place: str | None = None
    wearer: str | None = None
    kind: str | None = None
    grades: str = "A"
    worn_for: float = 0


@dataclass(frozen=True, slots=True)
class Sighted:
    """A plate and its date: the middle of its document's span as a decimal year."""

    plate: str
    date: float


@dataclass(frozen=True, slots=True)
class Finding:
    """The answer for one term, or for several together (``term`` is then their keys joined by `` + ``).

    ``sightings`` are counted in documents, over all time; ``in_window`` those that decide the verdict.
    ``extension``: decimal years at which absence becomes unlikely to be chance, None where open.
    ``absence_p`` is None where the window is not outside the attested range. ``not_before`` is the milestone.
    """

    term: str
    verdict: Verdict
    frequency: Frequency | None
    share: Share
    sightings: int
    in_window: int
    documents_in_window: int
    set_aside: tuple[str, ...]
    worn: tuple[str, ...]
    first: Sighted | None
    last: Sighted | None
    guide_years: float
    extension: tuple[float | None, float | None]
    absence_p: float | None
    direct_absence: bool
    not_before: MilestoneFact | None
    in_dress_from: MilestoneFact | None
    left_out: tuple[LeftOut, ...]
    cite: tuple[str, ...]
    reasons: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Answer:
    """A finding for each feature, and for all of them together where there are several."""

    question: Question
    findings: tuple[Finding, ...]
    together: Finding | None


def answer(facts: Facts, question: Question) -> Answer:
    """Weigh the question. Raises Unknown for a garment or feature the catalogue does not know, ValueError
    for grades other than A, AB and ABC or a negative wear allowance."""
    if question.grades not in ("A", "AB", "ABC"):
        raise ValueError(f"grades are A, AB or ABC, not “{question.grades}”")
    if not question.worn_for >= 0:
        raise ValueError("a wear allowance is a number of years, not less than 0")
    findings = tuple(_finding(facts, question, (feature,)) for feature in dict.fromkeys(question.features))
    together = _finding(facts, question, question.features) if len(findings) > 1 else None
    return Answer(question, findings, together)


def limits_of(facts: Facts, question: Question, facets: tuple[int, ...]) -> Limits:
    """The question's limits over these facets. Raises Unknown for its garment."""
    garment = facts.garment_index.get(question.garment)
    if garment is None:
        raise Unknown("garment", question.garment)
    return Limits(garment, facets, question.place, question.wearer, question.kind, question.grades)


def share_in(looked: Survey, of: Seen, window: Window) -> Share:
    """The share of the plates showing the term among those recorded in the window."""
    return share(
        (part, len(looked.entries[position].plates), len(of.showing.get(position, ())))
        for position, part in looked.weighed(window)
    )


def _finding(facts: Facts, question: Question, features: tuple[str, ...]) -> Finding:
    for feature in features:
        if feature not in facts.term_index:
            raise Unknown("term", feature)
    terms = tuple(dict.fromkeys(facts.term_index[feature] for feature in features))
    facets = tuple(sorted({facts.terms[term].facet for term in terms}))
    looked_for = limits_of(facts, question, facets)
    looked = survey(facts, looked_for)
    of = seen(facts, looked, terms)
    found = attested(looked, of)
    not_before = _latest([facts.terms[term].not_before for term in terms])
    in_dress = _latest([facts.terms[term].in_dress_from for term in terms])
    judged = judge(
        looked, of, found, question.window, question.worn_for, not_before.day if not_before else None
    )
    of_all = share_in(looked, of, question.window)
    away = left_out(facts, looked, terms)
    return Finding(
        term=" + ".join(dict.fromkeys(features)),
        verdict=judged.verdict,
        frequency=frequency(of_all),
        share=of_all,
        sightings=len(of.sighted),
        in_window=len(judged.inside),
        documents_in_window=len(judged.looked),
        set_aside=_plates(facts, of, found.set_aside if found else ()),
        worn=_plates(facts, of, judged.worn),
        first=_sighted(facts, looked, of, found.first) if found else None,
        last=_sighted(facts, looked, of, found.last) if found else None,
        guide_years=found.guide_years if found else 0.0,
        extension=found.extension if found else (None, None),
        absence_p=judged.absence_p,
        direct_absence=judged.silent,
        not_before=not_before,
        in_dress_from=in_dress,
        left_out=away,
        cite=tuple(facts.keys[number] for number in _best(facts, looked, of, found, judged, question.window)),
        reasons=reasons(
            Case(
                facts=facts,
                garment=facts.garments[looked_for.garment],
                terms=terms,
                window=question.window,
                worn_for=question.worn_for,
                looked=looked,
                of=of,
                found=found,
                judged=judged,
                share=of_all,
                left_out=away,
                not_before=not_before,
                in_dress_from=in_dress,
            )
        ),
    )


def _latest(milestones: list[MilestoneFact | None]) -> MilestoneFact | None:
    known = [each for each in milestones if each is not None]
    return max(known, key=lambda each: each.day) if known else None


def _plates(facts: Facts, of: Seen, positions: tuple[int, ...]) -> tuple[str, ...]:
    return tuple(facts.keys[number] for position in positions for number in of.sighted[position])


def _sighted(facts: Facts, looked: Survey, of: Seen, position: int) -> Sighted:
    return Sighted(facts.keys[of.sighted[position][0]], decimal_year(looked.middles[position] / 2))


def _best(
    facts: Facts, looked: Survey, of: Seen, found: Attested | None, judged: Judged, window: Window
) -> list[int]:
    """Plates to cite, best first: inside the window, then within the wear allowance, then elsewhere, and
    those set aside last of all; better grade, narrower date, at or before the target day (the window's
    middle) rather than after it, nearer to it."""
    if window.earliest is None and window.latest is None:
        target = None
    else:
        earliest = window.latest if window.earliest is None else window.earliest
        latest = window.earliest if window.latest is None else window.latest
        assert earliest is not None
        assert latest is not None
        target = earliest + latest
    places = judged.inside if len(judged.inside) >= CITED else tuple(of.sighted)

    def rank(position: int) -> tuple[int, str, int, bool, int, int]:
        entry = looked.entries[position]
        away = 0 if target is None else entry.twice_middle - target
        where = 0 if position in inside else 1 if position in worn else 3 if position in aside else 2
        basis = facts.documents[entry.document].basis
        return where, basis, entry.latest - entry.earliest, away > 0, abs(away), position

    worn, aside = set(judged.worn), set(found.set_aside if found else ())
    inside = set(judged.inside) - worn
    best: list[int] = []
    for position in sorted(places, key=rank):
        best.extend(of.sighted[position])
        if len(best) >= CITED:
            break
    return best[:CITED]
