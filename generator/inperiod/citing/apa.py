"""APA references and in-text citations (Publication Manual of the APA, 7th edition)."""

from __future__ import annotations

from inperiod.citing.pieces import (
    MONTHS,
    SEASONS,
    Item,
    capitalised,
    day_of,
    genre_of,
    initials,
    is_article,
    is_printed_book,
    italic,
    join,
    listed,
    locator_of,
    ordinal,
    people_of,
    plain,
    short,
    title_of,
    year_of,
)
from inperiod.records.model import Locator


def reference(item: Item, locator: Locator) -> str:
    """An entry of the reference list; APA names the place in the source only in the text."""
    names, genre = _names(item), f"[{capitalised(genre_of(item))}]" if genre_of(item) else ""
    title = _title(item) + _bracketed(item)
    parts: list[str | None] = (
        [names, _date(item), join([title, genre], " ")] if names else [title, _date(item), genre]
    )
    parts += [_container(item), None if is_article(item) else item.get("publisher"), _held(item)]
    first = year_of(item, "original-date")
    ended = join((_stopped(part) for part in parts if part), " ")
    return join([ended, _address(item), f"(Original work published {first})" if first else None], " ")


def in_text(item: Item, locator: Locator) -> str:
    """The reference in brackets: name or title, year, place in the source."""
    who = _short_names(item) or _short_title(item)
    years = join([year_of(item, "original-date", bracketed=False), _year(item)], "/")
    rest = join([years, locator_of(locator, page_label=True)], ", ")
    return f"({join([who, rest], ' ' if plain(who).endswith(',”') else ', ')})"


def _stopped(part: str) -> str:
    return part if part.endswith(".") else part + "."


def _names(item: Item) -> str:
    people = people_of(item)
    shown = [initials(name) for name in people]
    text = f"{shown[0]}, & {shown[1]}" if len(shown) == 2 else listed(shown, "&")
    if people and not item.get("author"):
        text += " (Ed.)" if len(people) == 1 else " (Eds.)"
    return text


def _short_names(item: Item) -> str:
    people = people_of(item)
    if len(people) > 2:
        return f"{short(people[0])} et al."
    return " & ".join(short(name) for name in people)


def _short_title(item: Item) -> str:
    if not item.get("title"):
        return italic(item.get("container-title", ""))
    if is_article(item):
        return f"“{title_of(item, '‘’')},”"
    return italic(title_of(item))


def _year(item: Item) -> str:
    circa = "ca. " if item.get("issued", {}).get("circa") else ""
    return circa + year_of(item, bracketed=False) or "n.d."


def _date(item: Item) -> str:
    date = item.get("issued", {})
    year = _year(item)
    parts = date.get("date-parts", [[]])
    if "season" in date and item["type"] != "book":
        return f"({year}, {SEASONS[date['season'] - 1]})"
    if len(parts) > 1 or len(parts[0]) < 2 or item["type"] in ("book", "graphic"):
        return f"({year})"
    return f"({year}, {' '.join([MONTHS[parts[0][1] - 1], *map(str, parts[0][2:])])})"


def _title(item: Item) -> str:
    if not item.get("title"):
        return ""
    title = title_of(item, headline=False)
    return title if is_article(item) else italic(title)


def _bracketed(item: Item) -> str:
    if not is_printed_book(item):
        return ""
    edition = str(item.get("edition", ""))
    edition = f"{ordinal(edition)} ed." if edition.isdigit() else edition
    volume = f"Vol. {item['volume']}" if item.get("volume") else ""
    text = ", ".join(part for part in (edition, volume) if part)
    return f" ({text})" if text else ""


def _container(item: Item) -> str:
    if not is_article(item):
        return ""
    name = italic(item.get("container-title", ""))
    if item.get("volume"):
        name += f", {italic(item['volume'])}"
    issue = f"({item['issue']})" if item.get("issue") else ""
    pages = item["page"].replace("-", "–") if item.get("page") and item.get("title") else ""
    return name + issue + (f", {pages}" if pages else "")


def _held(item: Item) -> str:
    place, shelf = item.get("archive"), item.get("archive_location")
    return f"{place} ({shelf})" if place and shelf else str(place or shelf or "")


def _address(item: Item) -> str:
    url = item.get("URL")
    if not url:
        return ""
    if item.get("issued") or not item.get("accessed"):
        return str(url)
    return f"Retrieved {day_of(item, 'month day, year', field='accessed')}, from {url}"
