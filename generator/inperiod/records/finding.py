"""From what someone types to the term or garment meant: ids, labels and every other name are accepted."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable

from inperiod.records.model import Term, Vocabulary
from inperiod.records.problems import nearest


class NotFound(ValueError):
    """No term, or more than one, goes by that name. The text says which come near."""


def plain(text: str) -> str:
    """A name for comparing: lower case, no accents, one space for every run of spaces, hyphens and marks."""
    bare = "".join(each for each in unicodedata.normalize("NFKD", text) if not unicodedata.combining(each))
    return " ".join(re.findall(r"[^\W_]+", bare.casefold()))


def find_garment(vocabulary: Vocabulary, text: str) -> str:
    """The id of a garment type, by id, label or another name. Raises ``NotFound``."""
    terms = vocabulary.garments.values()
    return _only(text, "garment", _named(text, terms), terms).id


def find_feature(vocabulary: Vocabulary, text: str, garment: str | None = None) -> str:
    """The key ``facet/id`` of a term: by key, or by id, label or other name, in one facet or in all.

    Where several facets have the name, those that apply to the garment are preferred. Raises ``NotFound``.
    """
    if text in vocabulary.terms:
        return text
    facet_text, slash, word = text.partition("/")
    facet = next(
        (each for each in vocabulary.facets.values() if _is_facet(each.id, each.label, facet_text)), None
    )
    terms = [each for each in vocabulary.terms.values() if each.facet != "garment"]
    if slash and facet:
        inside = [each for each in terms if each.facet == facet.id]
        return _only(text, "feature", _named(word, inside), inside, facet.id).key
    if slash:
        raise NotFound(_no_facet(vocabulary, facet_text, _named(word, terms)))
    found = _named(text, terms)
    if garment and len(found) > 1:
        found = [each for each in found if vocabulary.applies(each, garment)] or found
    return _only(text, "feature", found, terms).key


def find_facet(vocabulary: Vocabulary, text: str) -> str:
    """The id of a facet, by id or label. Raises ``NotFound``."""
    for facet in vocabulary.facets.values():
        if _is_facet(facet.id, facet.label, text):
            return facet.id
    names = [each for each in vocabulary.facets if each != "garment"]
    near = nearest(text, names)
    raise NotFound(
        f"No facet is called “{text}”. "
        + (f"Did you mean {near}?" if near else f"There are: {', '.join(names)}.")
    )


def _no_facet(vocabulary: Vocabulary, text: str, same_word: list[Term]) -> str:
    """That no facet is called so, with the term that may have been meant."""
    near = nearest(plain(text), [plain(each) for each in vocabulary.facets])
    meant = next((each.key for each in same_word if plain(each.facet) == near), None)
    meant = meant or (same_word[0].key if len(same_word) == 1 else near)
    return f"No facet is called “{text}”." + (f" Did you mean {meant}?" if meant else "")


def _is_facet(identity: str, label: str, text: str) -> bool:
    return plain(text) in (plain(identity), plain(label))


def _named(text: str, terms: Iterable[Term]) -> list[Term]:
    """Terms of that id or label; only where there are none, terms of which it is another name."""
    wanted = plain(text)
    terms = list(terms)
    own = [each for each in terms if wanted in (plain(each.id), plain(each.label))]
    return own or [each for each in terms if any(plain(name.name) == wanted for name in each.names)]


def _only(text: str, what: str, found: list[Term], all_terms: Iterable[Term], facet: str = "") -> Term:
    if len(found) == 1:
        return found[0]
    if found:
        choices = ", ".join(each.key if what == "feature" else each.id for each in found)
        raise NotFound(f"“{text}” is a name of several terms: {choices}. Write the one you mean.")
    word = plain(text.rpartition("/")[2])
    names: dict[str, Term] = {}
    for term in all_terms:
        for name in (term.id, term.label, *(each.name for each in term.names)):
            names.setdefault(plain(name), term)
    near = nearest(word, names)
    if near is None:
        where = f"in {facet}" if facet else "in the vocabulary"
        raise NotFound(f"No {what} {where} is called “{text}”.")
    meant = names[near]
    identity = meant.key if what == "feature" else meant.id
    raise NotFound(f"No {what} is called “{text}”. Did you mean {identity} ({meant.label})?")
