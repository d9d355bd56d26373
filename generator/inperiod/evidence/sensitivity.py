"""Whether a verdict hangs on a convention: how wide "circa" is read, and which datings are trusted."""

from __future__ import annotations

from dataclasses import dataclass, replace

from inperiod.evidence.constants import CIRCA_TRIED
from inperiod.evidence.facts import Facts
from inperiod.evidence.questions import Question, answer
from inperiod.evidence.verdicts import Verdict


@dataclass(frozen=True, slots=True)
class Change:
    """One finding that would be judged otherwise, and under what condition; ``sentence`` says it."""

    term: str
    condition: str
    verdict: Verdict
    sentence: str


def sensitivity(facts: Facts, question: Question) -> tuple[Change, ...]:
    """The changes of verdict were circa read as 0 or 10 years either side, or grade C counted as well.

    Empty where the answer stands firm. The question's own window is left as it was asked.
    """
    trials = []
    for years in CIRCA_TRIED:
        if years != facts.circa_years:
            condition = f"“circa” were read as {years} years either side"
            trials.append((condition, _at_circa(facts, years), question))
    if "C" not in question.grades:
        trials.append(("dates of grade C were counted too", facts, replace(question, grades="ABC")))
    asked = answer(facts, question)
    changes = []
    for condition, other_facts, other_question in trials:
        other = answer(other_facts, other_question)
        pairs = [*zip(asked.findings, other.findings, strict=True)]
        if asked.together and other.together:
            pairs.append((asked.together, other.together))
        for was, would_be in pairs:
            if was.verdict != would_be.verdict:
                sentence = f"If {condition}, the verdict would be {would_be.verdict}, not {was.verdict}."
                changes.append(Change(was.term, condition, would_be.verdict, sentence))
    return tuple(changes)


def _at_circa(facts: Facts, years: int) -> Facts:
    key = ("circa", years)
    if key not in facts.memo:
        facts.memo[key] = facts.at_circa(years)
    made: Facts = facts.memo[key]
    return made
