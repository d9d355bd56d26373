"""A board resolved against the catalogue and its facts."""

from __future__ import annotations

from dataclasses import dataclass

from inperiod.boards.bibliography import Entry, bibliography, listing
from inperiod.boards.remarks import Remark, remarks
from inperiod.boards.standing import Standing, not_weighed, numbers, shown_of, standing
from inperiod.dating import widened
from inperiod.evidence import Alternative, Facts, Finding, Question, Window, answer, usual_in_window
from inperiod.evidence.constants import MOSTLY
from inperiod.evidence.weights import weight
from inperiod.making import Caution, MakingSheet, cautions_for, sheet
from inperiod.records.model import Board, Catalogue, Feature

SUGGESTED = 6
ALTERNATIVES = 4
CITED = 3


@dataclass(frozen=True, slots=True)
class Planned:
    """A planned feature: what the evidence says of it (None where it cannot be asked, as of an absence or an
    unknown term), the plates gathered for it, what was usual instead where it is not attested, and the best
    plates of the window that bear it out."""

    feature: Feature
    finding: Finding | None
    supports: tuple[Standing, ...]
    usual: tuple[Alternative, ...]
    to_cite: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Suggested:
    """A plate not gathered yet that shows much of the plan in the window, with the planned terms it shows."""

    plate: str
    shows: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ResolvedBoard:
    """A board with all that is worked out for it. ``style`` is that of the bibliography."""

    board: Board
    window: Window
    grades: str
    planned: tuple[Planned, ...]
    together: Finding | None
    gathered: tuple[Standing, ...]
    remarks: tuple[Remark, ...]
    suggested: tuple[Suggested, ...]
    bibliography: tuple[Entry, ...]
    style: str
    sheet: MakingSheet
    cautions: tuple[Caution, ...]

    @property
    def findings(self) -> tuple[Finding, ...]:
        """The finding for each planned feature that can be asked about."""
        return tuple(each.finding for each in self.planned if each.finding)


@dataclass(frozen=True, slots=True)
class Plan:
    """What the remarks look at."""

    board: Board
    catalogue: Catalogue
    findings: tuple[Finding, ...]
    unknown: tuple[str, ...]
    standings: tuple[Standing, ...]

    def label(self, term: str) -> str:
        """A term as it stands in a sentence: its label, or its name with spaces where it is not known."""
        facet, _, name = term.partition("/")
        if name in ("none", "not visible"):
            return f"no {self.facet_label(facet).lower()}" if name == "none" else f"{facet} not visible"
        known = self.catalogue.vocabulary.terms.get(term)
        return known.label if known else name.replace("-", " ")

    def raised(self, term: str) -> str:
        label = self.label(term)
        return label[:1].upper() + label[1:]

    def facet_label(self, facet: str) -> str:
        known = self.catalogue.vocabulary.facets.get(facet)
        return known.label if known else facet

    def garment(self, garment: str) -> str:
        known = self.catalogue.vocabulary.garments.get(garment)
        return known.label if known else garment.replace("-", " ")


def resolve(board: Board, catalogue: Catalogue, facts: Facts) -> ResolvedBoard:
    """Work out a board.

    It is asked as ``inperiod fit`` asks: of the grades the catalogue's settings weigh, circa allowed for in
    the target, wherever the plates were published. ``facts`` are those of the same catalogue.
    """
    span = widened(board.target.span, catalogue.settings.circa_years)
    window, grades = Window(span.earliest, span.latest), catalogue.settings.grades
    named = tuple(dict.fromkeys(feature.term for feature in board.features if feature.term))
    asked = tuple(term for term in named if term in facts.term_index)
    garment = next((i for i, each in enumerate(facts.garments) if each.id == board.garment), None)
    question = Question(board.garment, asked, window, grades=grades)
    answered = answer(facts, question) if asked and garment is not None else None
    findings = answered.findings if answered else ()
    together = answered.together if answered else None
    standings = tuple(standing(facts, each, asked, garment, window, grades) for each in board.plates)
    unknown = tuple(term for term in named if term not in asked)
    plan = Plan(board, catalogue, findings, unknown, standings)
    planned = _planned(board, facts, question, {each.term: each for each in findings}, standings)
    cited = [each.gathered.plate for each in standings]
    cited += [key for each in planned if not each.supports for key in each.to_cite]
    suggested = _suggested(board, facts, asked, garment, window, grades)
    return ResolvedBoard(
        board=board,
        window=window,
        grades=grades,
        planned=planned,
        together=together,
        gathered=standings,
        remarks=remarks(plan),
        suggested=suggested,
        bibliography=bibliography(catalogue, cited, board.citation_style),
        style=listing(board.citation_style),
        sheet=sheet(board.making),
        cautions=cautions_for(board, catalogue),
    )


def _planned(
    board: Board,
    facts: Facts,
    question: Question,
    findings: dict[str, Finding],
    standings: tuple[Standing, ...],
) -> tuple[Planned, ...]:
    found = []
    for feature in board.features:
        word = feature.term or f"{feature.facet}/{feature.state}"
        finding = findings.get(feature.term or "")
        usual: tuple[Alternative, ...] = ()
        if finding and finding.verdict != "attested":
            others = usual_in_window(facts, question, feature.facet)
            usual = tuple(each for each in others if each.term != feature.term)[:ALTERNATIVES]
        supports = tuple(each for each in standings if each.gathered.supports == word)
        found.append(Planned(feature, finding, supports, usual, _to_cite(facts, finding, question.window)))
    return tuple(found)


def _to_cite(facts: Facts, finding: Finding | None, window: Window) -> tuple[str, ...]:
    if finding is None or finding.verdict not in ("attested", "seen once"):
        return ()
    number = numbers(facts)
    inside = [key for key in finding.cite if _part(facts, number[key], window) >= MOSTLY]
    return tuple(inside or finding.cite)[:CITED]


def _part(facts: Facts, number: int, window: Window) -> float:
    days = facts.documents[facts.plates[number][0]].days
    return weight(*days, window) if days else 0.0


def _suggested(
    board: Board, facts: Facts, asked: tuple[str, ...], garment: int | None, window: Window, grades: str
) -> tuple[Suggested, ...]:
    """Plates of the garment, dated well enough and mostly in the window, that show most of the plan: at
    least two of its terms (one, where only one is planned); most terms first, then most of the date in
    the window, then by key."""
    least = min(2, len(asked))
    gathered = {each.plate for each in board.plates}
    ranked = []
    for number in facts.plates_of.get(garment, ()) if garment is not None and asked else ():
        document = facts.documents[facts.plates[number][0]]
        if facts.keys[number] in gathered or not_weighed(document, grades):
            continue
        part = _part(facts, number, window)
        shows = shown_of(facts, number, asked)
        if part >= MOSTLY and len(shows) >= least:
            ranked.append((-len(shows), -part, facts.keys[number], shows))
    return tuple(Suggested(key, shows) for _, _, key, shows in sorted(ranked)[:SUGGESTED])
