"""Writes the file both languages are held to: facts, questions, and what the Python side answers."""

from __future__ import annotations

import json
from collections import Counter
from pathlib import Path
from random import Random
from typing import Any

from evidence.catalogues import TERMS
from evidence.chance import chance_facts, chance_question
from evidence.edges import named_edges
from inperiod.evidence import (
    Facts,
    Question,
    answer,
    as_json,
    facts_to_json,
    sensitivity,
    timeline,
    usual_in_window,
)

CATALOGUES = 56
QUESTIONS_EACH = 40


def write_vectors(target: Path, seed: int = 1926) -> Counter[str]:
    """Write some 2,300 cases; returns how often each verdict occurs, and ``cases``."""
    counts: Counter[str] = Counter()
    chance = Random(seed)
    sets = []
    for name, facts, questions in named_edges():
        sets.append(_set(name, facts, questions, chance, counts))
    for number in range(CATALOGUES):
        facts = chance_facts(seed + number)
        questions = [chance_question(chance) for _ in range(QUESTIONS_EACH)]
        sets.append(_set(f"by chance {number}", facts, questions, chance, counts))
    target.write_text(json.dumps(sets, ensure_ascii=False), encoding="utf-8")
    return counts


def _set(
    name: str, facts: Facts, questions: list[Question], chance: Random, counts: Counter[str]
) -> dict[str, Any]:
    cases = []
    for number, question in enumerate(questions):
        given = answer(facts, question)
        facet = chance.choice(list(TERMS))
        counts["cases"] += 1
        counts.update(finding.verdict for finding in given.findings)
        counts.update(f"together {given.together.verdict}" for _ in [0] if given.together)
        cases.append(
            {
                "question": {
                    "garment": question.garment,
                    "features": list(question.features),
                    "window": {"earliest": question.window.earliest, "latest": question.window.latest},
                    "place": question.place,
                    "wearer": question.wearer,
                    "kind": question.kind,
                    "grades": question.grades,
                    "worn_for": question.worn_for,
                },
                "answer": as_json(given),
                "facet": facet,
                "usual": [as_json(each) for each in usual_in_window(facts, question, facet)],
                "sensitivity": [as_json(each) for each in sensitivity(facts, question)],
                "timeline": _timeline(facts, question, facet) if number % 4 == 0 else None,
            }
        )
    return {"name": name, "facts": facts_to_json(facts), "cases": cases}


def _timeline(facts: Facts, question: Question, facet: str) -> dict[str, Any]:
    limits = (question.place, question.kind, question.wearer, question.grades)
    return as_json(timeline(facts, question.garment, facet, *limits))
