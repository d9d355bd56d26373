"""Chicago, notes and bibliography (The Chicago Manual of Style, 17th edition, chapter 14)."""

from __future__ import annotations

from inperiod.citing.pieces import (
    Item,
    capitalised,
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
    sentence,
    straight,
    title_of,
    year_of,
)
from inperiod.records.model import Locator


def note(item: Item, locator: Locator) -> str:
    """A full note, to the figure."""
    volume = item.get("volume") if item["type"] == "book" else None
    where = locator_of(locator, page_label=False)
    where = f"{volume}:{where}" if volume and where else f"vol. {volume}" if volume else where
    parts: list[str | None] = [_note_names(item), _title(item, ","), genre_of(item)]
    if is_printed_book(item):
        parts.append(_edition(item))
        imprint = join([_head(parts), _imprint(item, brackets=True)], " ")
        return closed(join([imprint, where, held_of(item), item.get("URL")], ", "))
    if is_article(item):
        parts.append(_container(item))
    parts += [_publisher(item), _date(item), where, held_of(item)]
    return closed(_head([*parts, _accessed(item, "accessed"), item.get("URL")]))


def bibliography(item: Item, locator: Locator) -> str:
    """A bibliography entry; it names the source, so the place in it is left out."""
    parts: list[str | None] = [_inverted_names(item), _title(item, "."), capitalised(genre_of(item))]
    if is_article(item):
        return sentence(_article_entry(item))
    if is_printed_book(item):
        parts += [capitalised(_edition(item))]
        if item["type"] == "book" and item.get("volume"):
            parts.append(f"Vol. {item['volume']}")
        parts.append(_imprint(item, brackets=False))
    else:
        parts.append(join([_publisher(item), _date(item)], ", "))
    parts += [held_of(item), capitalised(_accessed(item, "accessed")), item.get("URL")]
    return sentence(parts)


def _article_entry(item: Item) -> list[str | None]:
    names, title, container = _inverted_names(item), _title(item, "."), _container(item)
    tail: list[str | None] = [held_of(item), item.get("URL")]
    if names and title:
        return [names, title, capitalised(genre_of(item)), join([container, _date(item)], ", "), *tail]
    return [names or container, title, capitalised(genre_of(item)), _date(item), *tail]


def _head(parts: list[str | None]) -> str:
    """Parts with commas between, save after a quoted title, which carries its own."""
    text = ""
    for part in filter(None, parts):
        text += part if not text else f" {part}" if text.endswith(",”") else f", {part}"
    return text


def _title(item: Item, stop: str) -> str:
    if not item.get("title"):
        return ""
    if is_printed_book(item) or item["type"] == "graphic":
        return italic(title_of(item))
    return f"“{title_of(item, '‘’')}{stop}”"


def _container(item: Item) -> str:
    place = item.get("publisher-place") if not item.get("publisher") else None
    name = italic(item.get("container-title", ""))
    return name + (f" ({place})" if place else "")


def _note_names(item: Item) -> str:
    authors = [straight(name) for name in item.get("author", ())]
    if authors:
        return f"{authors[0]} et al." if len(authors) > 3 else listed(authors)
    editors = [straight(name) for name in item.get("editor", ())]
    return f"{listed(editors)}, {'ed.' if len(editors) == 1 else 'eds.'}" if editors else ""


def _inverted_names(item: Item) -> str:
    people = people_of(item)
    if not people:
        return ""
    shown = [inverted(people[0]), *(straight(name) for name in people[1:])]
    text = f"{', '.join(shown[:7])}, et al." if len(shown) > 10 else _serial(shown)
    return text if item.get("author") else f"{text}, {'ed.' if len(people) == 1 else 'eds.'}"


def _serial(names: list[str]) -> str:
    return f"{names[0]}, and {names[1]}" if len(names) == 2 else listed(names)


def _edition(item: Item) -> str:
    edition = str(item.get("edition", ""))
    return f"{ordinal(edition)} ed." if edition.isdigit() else edition


def _publisher(item: Item) -> str:
    if is_article(item):
        return ""
    return ": ".join(item[key] for key in ("publisher-place", "publisher") if item.get(key))


def _imprint(item: Item, brackets: bool) -> str:
    year = year_of(item) or "n.d."
    text = ", ".join(part for part in (_publisher(item), year) if part)
    first = year_of(item, "original-date")
    if first:
        text = f"{first}; repr., {text}" if brackets else f"{first}. Reprint, {text}"
    return f"({text})" if brackets else text


def _date(item: Item) -> str:
    return day_of(item, "month day, year")


def _accessed(item: Item, word: str) -> str:
    """Only an undated page is given the day it was read."""
    if item.get("issued") or not item.get("accessed"):
        return ""
    return f"{word} {day_of(item, 'month day, year', field='accessed')}"
