"""What is still to be settled on a board: each kind of remark by a function of its own, in one list."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from inperiod.boards.standing import AWAY, Standing

if TYPE_CHECKING:
    from inperiod.boards.resolving import Plan

Kind = Literal["contradiction", "gap", "outside", "weak", "not shown", "garment", "unplanned", "unknown"]

KINDS: dict[Kind, str] = {
    "contradiction": "Contradictions",
    "gap": "Gaps: planned, and not attested",
    "outside": "Supports that lie outside the window",
    "weak": "Supports whose date is not weighed",
    "not shown": "Supports that do not show it",
    "garment": "Supports from other garments",
    "unplanned": "Supports for what is not planned",
    "unknown": "Plates this catalogue does not have",
}
"""Every kind of remark in the order they are shown, with the heading it stands under."""


@dataclass(frozen=True, slots=True)
class Remark:
    """One thing to settle. ``term`` is the planned term and ``plate`` the gathered plate it concerns."""

    kind: Kind
    sentence: str
    term: str | None = None
    plate: str | None = None


def exclusive_facets(plan: Plan) -> Iterator[Remark]:
    by_facet: dict[str, list[str]] = {}
    for feature in plan.board.features:
        if feature.term:
            by_facet.setdefault(feature.facet, []).append(feature.term)
    for facet_id, terms in by_facet.items():
        facet = plan.catalogue.vocabulary.facets.get(facet_id)
        once = list(dict.fromkeys(terms))
        if facet and facet.exclusive and len(once) > 1:
            names = " and ".join(plan.label(term) for term in once)
            sentence = f"A garment has one {facet.label.lower()} at a time, and {names} are planned."
            yield Remark("contradiction", sentence, once[1])


def absent_and_present(plan: Plan) -> Iterator[Remark]:
    absent = [each.facet for each in plan.board.features if each.state == "none"]
    for feature in plan.board.features:
        if feature.term and feature.facet in absent:
            facet = plan.facet_label(feature.facet).lower()
            sentence = f"The plan says that there is no {facet}, and also {plan.label(feature.term)}."
            yield Remark("contradiction", sentence, feature.term)


def before_its_time(plan: Plan) -> Iterator[Remark]:
    for finding in plan.findings:
        if finding.verdict == "too early" and finding.not_before:
            because = f"{finding.not_before.words} ({finding.not_before.event})"
            sentence = f"{plan.raised(finding.term)} cannot be before {because}, which is after the window."
            yield Remark("contradiction", sentence, finding.term)


def gaps(plan: Plan) -> Iterator[Remark]:
    for finding in plan.findings:
        if finding.verdict not in ("attested", "too early"):
            yield Remark("gap", f"{plan.raised(finding.term)}: {finding.verdict}.", finding.term)
    for term in plan.unknown:
        yield Remark("gap", f"{plan.raised(term)}: this catalogue has no such term.", term)


def outside(plan: Plan) -> Iterator[Remark]:
    said = {
        "before": "Its date lies before the window.",
        "after": "Its date lies after the window.",
        "mostly outside": "Its date lies mostly outside the window.",
    }
    for each in _supports(plan):
        if each.side in said:
            yield _remark("outside", said[each.side], each)


def weakly_dated(plan: Plan) -> Iterator[Remark]:
    for each in _supports(plan):
        if each.aside:
            yield _remark("weak", AWAY[each.aside], each)


def not_shown(plan: Plan) -> Iterator[Remark]:
    for each in _supports(plan):
        term = each.gathered.supports or ""
        facet = plan.facet_label(term.partition("/")[0]).lower()
        said = {
            "inferred": f"It shows {plan.label(term)} only by inference, which is not counted.",
            "not shown": f"It does not show {plan.label(term)}.",
            "not recorded": f"Nothing is recorded of its {facet}.",
        }
        if each.supported in said:
            yield _remark("not shown", said[each.supported], each)


def other_garments(plan: Plan) -> Iterator[Remark]:
    for each in _supports(plan):
        if not each.of_garment and plan.board.garment in plan.catalogue.vocabulary.garments:
            plate = plan.catalogue.plates[each.gathered.plate]
            sentence = f"It is recorded as {plan.garment(plate.garment)}, so it does not count for this one."
            yield _remark("garment", sentence, each)


def unplanned(plan: Plan) -> Iterator[Remark]:
    words = {each.term or f"{each.facet}/{each.state}" for each in plan.board.features}
    for each in plan.standings:
        if each.gathered.supports and each.gathered.supports not in words:
            sentence = f"It supports {plan.label(each.gathered.supports)}, which is not planned."
            yield _remark("unplanned", sentence, each)


def not_in_the_catalogue(plan: Plan) -> Iterator[Remark]:
    for each in plan.standings:
        if not each.known:
            yield _remark("unknown", "There is no such plate in this catalogue.", each)


def _supports(plan: Plan) -> list[Standing]:
    """The plates gathered for something that is planned."""
    words = {each.term for each in plan.board.features if each.term}
    return [each for each in plan.standings if each.known and each.gathered.supports in words]


def _remark(kind: Kind, sentence: str, standing: Standing) -> Remark:
    return Remark(kind, sentence, standing.gathered.supports, standing.gathered.plate)


FINDERS: tuple[Callable[[Plan], Iterator[Remark]], ...] = (
    exclusive_facets,
    absent_and_present,
    before_its_time,
    gaps,
    outside,
    weakly_dated,
    not_shown,
    other_garments,
    unplanned,
    not_in_the_catalogue,
)


def remarks(plan: Plan) -> tuple[Remark, ...]:
    """Everything there is to settle, in the order of ``FINDERS``."""
    return tuple(dict.fromkeys(remark for find in FINDERS for remark in find(plan)))
