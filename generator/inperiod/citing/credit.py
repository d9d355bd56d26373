"""A short credit line for captions and posts: what, when, how that is known, and where in it."""

from __future__ import annotations

from inperiod.citing.pieces import Item, held_of, italic, join, locator_of, people_of, quotes_turned, short
from inperiod.dating import in_words
from inperiod.records.model import Locator, Source

# How the date is known, in words a reader of a caption understands.
BASIS_WORDS = {
    "printed": "date printed on it",
    "internal": "dated from what it says",
    "documented": "dated by a document",
    "institution": "dated by the museum that holds it",
    "seller": "dated by its seller",
    "style": "dated by its style",
    "estimate": "date estimated",
}


def credit(item: Item, locator: Locator, source: Source) -> str:
    """E.g. ``Hollin & Wray, Boating Coats, autumn 1926 (date printed on it), p. 14. Lake Ennor Museum.``"""
    people = people_of(item)
    maker = " and ".join(short(name) for name in people[:2]) + (" et al." if len(people) > 2 else "")
    maker = maker or item.get("publisher", "")
    title = quotes_turned(str(item.get("title") or item.get("container-title")), "“", "”")
    names = [maker, italic(title)]
    if item.get("title") and item.get("container-title"):
        names.append(italic(item["container-title"]))
    head = join([*names, dating_line(source), locator_of(locator, page_label=True)], ", ")
    return join([head, held_of(item)], ". ") + "."


def dating_line(source: Source) -> str:
    """The date in words and how it is known, e.g. ``autumn 1926 (date printed on it)``."""
    if not source.date:
        return "undated"
    basis = BASIS_WORDS.get(source.date_basis or "")
    when = source.date_printed or in_words(source.date.text)
    return f"{when} ({basis})" if basis else when
