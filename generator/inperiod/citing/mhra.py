"""MHRA notes (Modern Humanities Research Association, MHRA Style Guide)."""

from __future__ import annotations

from inperiod.citing.pieces import (
    Item,
    closed,
    day_of,
    genre_of,
    held_of,
    inverted,
    is_article,
    is_printed_book,
    italic,
    join,
    listed,
    locator_of,
    ordinal,
    people_of,
    straight,
    title_of,
    year_of,
)
from inperiod.records.model import Locator


def note(item: Item, locator: Locator) -> str:
    """A full note, to the figure."""
    names = [straight(name) for name in item.get("author", ())]
    who = f"{names[0]} and others" if len(names) > 3 else listed(names)
    editors = [straight(name) for name in item.get("editor", ())]
    edited = f"ed. by {listed(editors)}" if editors else ""
    where = locator_of(locator, page_label=True)
    if item["type"] != "book" and item.get("title") and item.get("page") and where:
        where = f"{_pages(item)} ({where})"
    return closed(_entry(item, who, edited, where))


def bibliography(item: Item, locator: Locator) -> str:
    """A bibliography entry, without a closing stop, as the guide has it."""
    people = people_of(item)
    shown = [inverted(name) if place == 0 else straight(name) for place, name in enumerate(people)]
    who = f"{shown[0]}, and {shown[1]}" if len(shown) == 2 else listed(shown)
    if people and not item.get("author"):
        who += " (ed.)" if len(people) == 1 else " (eds)"
    where = _pages(item) if is_article(item) and item.get("title") else ""
    return _entry(item, who, "", where)


def _entry(item: Item, who: str, edited: str, where: str) -> str:
    edition = str(item.get("edition", ""))
    edition = f"{ordinal(edition)} edn" if edition.isdigit() else edition
    parts: list[str | None] = [who, _title(item), genre_of(item), edited, edition]
    if is_printed_book(item):
        head = join([join(parts, ", "), _imprint(item)], " ")
        parts = [head, _volume(item), where, held_of(item)]
    elif is_article(item):
        parts = [*parts, _container(item), where, held_of(item)]
    else:
        parts = [*parts, item.get("publisher"), _date(item), where, held_of(item)]
    return join([join(parts, ", "), _address(item)], " ")


def _title(item: Item) -> str:
    if not item.get("title"):
        return ""
    if is_printed_book(item) or item["type"] == "graphic":
        return italic(title_of(item, "‘’"))
    return f"‘{title_of(item, '“”')}’"


def _container(item: Item) -> str:
    name = italic(item.get("container-title", ""))
    if item.get("volume") or item.get("issue"):
        number = ".".join(item[key] for key in ("volume", "issue") if item.get(key))
        return name + f", {number} ({year_of(item) or 'n.d.'})"
    place = item.get("publisher-place")
    return name + (f" ({place})" if place and not item.get("publisher") else "") + ", " + _date(item)


def _imprint(item: Item) -> str:
    year = year_of(item) or "n.d."
    first = year_of(item, "original-date")
    text = ", ".join(part for part in (item.get("publisher"), year) if part)
    return f"({text}; first publ. {first})" if first else f"({text})"


def _volume(item: Item) -> str:
    volume = str(item.get("volume", ""))
    return _roman(int(volume)) if volume.isdigit() and int(volume) < 4000 else volume


def _roman(number: int) -> str:
    text = ""
    signs = zip(
        (1000, 900, 500, 400, 100, 90, 50, 40, 10, 9, 5, 4, 1),
        ("m", "cm", "d", "cd", "c", "xc", "l", "xl", "x", "ix", "v", "iv", "i"),
        strict=True,
    )
    for value, sign in signs:
        text += sign * (number // value)
        number %= value
    return text


def _pages(item: Item) -> str:
    return locator_of(Locator(page=item.get("page")), page_label=True)


def _date(item: Item) -> str:
    date = item.get("issued", {})
    if date.get("circa") and not is_printed_book(item):
        return italic("c.") + f" {year_of(item, bracketed=False)}"
    return day_of(item, "day month year") or "n.d."


def _address(item: Item) -> str:
    if not item.get("URL"):
        return ""
    read = day_of(item, "day month year", field="accessed")
    return f"<{item['URL']}>" + (f" [accessed {read}]" if read else "")
