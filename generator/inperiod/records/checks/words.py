"""Sentences that several checks say."""

from __future__ import annotations

from collections.abc import Iterable

from inperiod.records.model import Feature, Mark, Vocabulary
from inperiod.records.problems import Problem, nearest


def did_you_mean(word: str, words: Iterable[str], otherwise: str = "") -> str:
    """The nearest valid word as a hint, or another hint where nothing comes near."""
    near = nearest(word, words)
    return f"Did you mean {near}?" if near else otherwise


def listed(words: Iterable[str], most: int = 8) -> str:
    """``a, b and c``; the rest of a long list is only counted."""
    shown = list(words)
    if len(shown) > most:
        return f"{', '.join(shown[:most])} and {len(shown) - most} more"
    return " and ".join(filter(None, (", ".join(shown[:-1]), shown[-1] if shown else "")))


def unknown_garment(garment: str, vocabulary: Vocabulary, mark: Mark) -> Problem | None:
    """A complaint where the vocabulary has no such garment."""
    if garment in vocabulary.garments:
        return None
    hint = did_you_mean(garment, vocabulary.garments, "Garments are listed in vocabulary/garment.yaml.")
    return Problem.error(mark, f"The vocabulary has no garment {garment}.", hint)


def unknown_feature(feature: Feature, vocabulary: Vocabulary) -> Problem | None:
    """A complaint where the vocabulary has no such term or facet."""
    if feature.facet == "garment":
        message = "The garment is not a feature."
        return Problem.error(feature.mark, message, "Write it in the field garment.")
    facet = vocabulary.facets.get(feature.facet)
    if facet is None:
        facets = [each for each in vocabulary.facets if each != "garment"]
        hint = did_you_mean(feature.facet, facets, f"The facets are {listed(facets, 40)}.")
        return Problem.error(feature.mark, f"The vocabulary has no facet {feature.facet}.", hint)
    if feature.term is None or feature.term in vocabulary.terms:
        return None
    return Problem.error(
        feature.mark, f"The vocabulary has no term {feature.term}.", _nearest_term(feature.term, vocabulary)
    )


def _nearest_term(key: str, vocabulary: Vocabulary) -> str:
    """The same id in another facet, one of its other names, or the nearest key."""
    facet, _, word = key.partition("/")
    elsewhere = [
        term.key for term in vocabulary.terms.values() if term.id == word and term.facet != "garment"
    ]
    if elsewhere:
        return f"Did you mean {listed(elsewhere)}?"
    said = word.replace("-", " ")
    for term in vocabulary.facets[facet].terms:
        if any(said == name.name.lower() for name in term.names) or said == term.label.lower():
            return f"Did you mean {term.key}? ({said} is another name of it.)"
    own = [term.key for term in vocabulary.facets[facet].terms]
    return did_you_mean(key, own, f"Terms of {facet} are {listed(each.partition('/')[2] for each in own)}.")
