"""MLA works cited and in-text references (MLA Handbook, 9th edition)."""

from __future__ import annotations

from inperiod.citing.pieces import (
    SHORT_MONTHS,
    Item,
    capitalised,
    closed,
    day_of,
    genre_of,
    inverted,
    is_article,
    italic,
    join,
    locator_of,
    ordinal,
    people_of,
    sentence,
    short,
    straight,
    title_of,
    year_of,
)
from inperiod.records.model import Locator


def works_cited(item: Item, locator: Locator) -> str:
    """An entry of the list of works cited; MLA's element "location" carries the page and figure."""
    first = year_of(item, "original-date")
    where = _pages(item) if item.get("title") and is_article(item) else locator_of(locator, page_label=True)
    container = join(
        [_container(item), _edition(item), *_number(item), *_imprint(item), where, *_held(item)], ", "
    )
    if is_article(item) and not item.get("title"):
        return sentence([_names(item), container, _accessed(item)])
    genre = capitalised(genre_of(item))
    title = _title(item)
    return sentence([_names(item), title, genre, first, _upper_start(container), _accessed(item)])


def in_text(item: Item, locator: Locator) -> str:
    """The reference in brackets, by name or, without one, by title."""
    who = _short_names(item) or _title(item, stop="") or _container(item)
    return f"({join([who, locator_of(locator, page_label=False)], ' ')})"


def _short_names(item: Item) -> str:
    people = people_of(item)
    if len(people) > 2:
        return f"{short(people[0])} et al."
    return " and ".join(short(name) for name in people)


def _names(item: Item) -> str:
    people = people_of(item)
    if not people:
        return ""
    text = inverted(people[0])
    if len(people) == 2:
        text = f"{text}, and {straight(people[1])}"
    elif len(people) > 2:
        text = f"{text}, et al."
    return text if item.get("author") else f"{text}, {'editor' if len(people) == 1 else 'editors'}"


def _title(item: Item, stop: str = ".") -> str:
    if not item.get("title"):
        return ""
    if is_article(item) or item["type"] == "document":
        return f"“{title_of(item, '‘’')}{stop}”"
    return italic(title_of(item))


def _container(item: Item) -> str:
    if not item.get("container-title"):
        return ""
    place = item.get("publisher-place") if is_article(item) and not item.get("publisher") else None
    return italic(item["container-title"]) + (f" [{place}]" if place else "")


def _edition(item: Item) -> str:
    edition = str(item.get("edition", ""))
    return f"{ordinal(edition)} ed." if edition.isdigit() else edition


def _number(item: Item) -> tuple[str, str]:
    if item["type"] == "book":
        return (f"vol. {item['volume']}" if item.get("volume") else "", "")
    return (
        f"vol. {item['volume']}" if item.get("volume") else "",
        f"no. {item['issue']}" if item.get("issue") else "",
    )


def _imprint(item: Item) -> tuple[str, str]:
    publisher = "" if is_article(item) else str(item.get("publisher", ""))
    date = item.get("issued", {})
    if item["type"] == "book":
        return publisher, year_of(item)
    if date.get("circa") and item["type"] == "graphic":
        return publisher, f"circa {year_of(item, bracketed=False)}"
    return publisher, day_of(item, "day month year", SHORT_MONTHS)


def _pages(item: Item) -> str:
    return locator_of(Locator(page=item.get("page")), page_label=True)


def _held(item: Item) -> tuple[str | None, ...]:
    return item.get("archive"), item.get("archive_location"), item.get("URL")


def _upper_start(container: str) -> str:
    return container if container.startswith("http") else capitalised(container)


def _accessed(item: Item) -> str | None:
    """Only an undated page is given the day it was read."""
    if item.get("issued") or not item.get("accessed"):
        return None
    return closed(f"Accessed {day_of(item, 'day month year', SHORT_MONTHS, field='accessed')}")
