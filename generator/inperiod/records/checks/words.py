"""Sentences that several checks say."""

from __future__ import annotations

from collections.abc import Iterable

from inperiod.records.model import Feature, Mark, Term, Vocabulary
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


SEE_GARMENTS = "Garments are listed in vocabulary/garment.yaml."


def unknown_garment(garment: str, vocabulary: Vocabulary, mark: Mark) -> Problem | None:
    """A complaint where the vocabulary has no such garment."""
    if garment in vocabulary.garments:
        return None
    same = _named(garment, vocabulary.garments.values())
    hint = f"Did you mean {same.id}?" if same else did_you_mean(garment, vocabulary.garments, SEE_GARMENTS)
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
    message = f"The vocabulary has no term {feature.term}."
    return Problem.error(feature.mark, message, _nearest_term(feature.term, vocabulary))


def _nearest_term(key: str, vocabulary: Vocabulary) -> str:
    """The term that goes by this name, the same id in another facet, or the one most like it."""
    facet, _, word = key.partition("/")
    own = vocabulary.facets[facet].terms
    if same := _named(word, own):
        return f"Did you mean {same.key}? ({word.replace('-', ' ')} is another name of it.)"
    if near := nearest(word, (term.id for term in own), 0.75):
        return f"Did you mean {facet}/{near}?"
    others = [term for term in vocabulary.terms.values() if term.facet not in (facet, "garment")]
    if near := nearest(word, dict.fromkeys(term.id for term in others), 0.75):
        return f"Did you mean {' or '.join(term.key for term in others if term.id == near)}?"
    return f"Terms of {facet} are {listed((term.id for term in own), 40)}."


def _named(word: str, terms: Iterable[Term]) -> Term | None:
    """The term that has the word for its label or another name."""
    said = word.replace("-", " ")
    for term in terms:
        if said == term.label.lower() or any(said == name.name.lower() for name in term.names):
            return term
    return None
