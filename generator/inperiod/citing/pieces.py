"""The pieces every citation style is put together from: titles, names, dates, places in a source.

A piece is text as it stands in the records, its italics between two marks of our own. ``as_html`` escapes
the whole once, ``plain`` leaves the marks out.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from functools import lru_cache
from typing import Any

from markupsafe import escape

from inperiod.records.model import Locator

Item = dict[str, Any]

# Code points that Unicode sets aside for a program's own use.
BEGINS, ENDS = "\ufdd0", "\ufdd1"
_ITALIC = re.compile(f"{BEGINS}([^{BEGINS}{ENDS}]*){ENDS}")
_ENDED = re.compile(r"[.?!][”’]?$")

# Words CSL leaves in lower case inside a title (Citation Style Language 1.0.2, appendix on title case).
STOP_WORDS = frozenset(
    """
    a according across afore after against along alongside amid amidst among and anenst apropos apud
    around as aside astride at athwart atop be before behind below beneath beside besides between beyond
    but by ca circa de despite down during et except for forenenst from given in inside into lest like
    modulo near next nor notwithstanding of off on onto or out over per plus pro qua sans since so than
    that the thorough through throughout thru till to toward towards under underneath until unto up upon
    v van versus via vis-à-vis von vs with within without yet
    """.split()
)

SHORT_MONTHS = "Jan. Feb. Mar. Apr. May June July Aug. Sept. Oct. Nov. Dec.".split()
MONTHS = "January February March April May June July August September October November December".split()
SEASONS = ("Spring", "Summer", "Autumn", "Winter")


def join(parts: Iterable[str | None], between: str) -> str:
    """The parts that are there, with ``between`` between them."""
    return between.join([part for part in parts if part])


def sentence(parts: Iterable[str | None]) -> str:
    """The parts as sentences, each closed by one full stop."""
    return join([closed(part) for part in parts if part], " ")


def closed(part: str) -> str:
    """The part with one full stop at its end, unless its words already end in a stop."""
    return part if _ENDED.search(plain(part)) else part + "."


def plain(piece: str) -> str:
    """The words without italics."""
    return piece.replace(BEGINS, "").replace(ENDS, "")


def as_html(piece: str) -> str:
    """The words escaped, with ``<i>`` for italics; there is no other tag, and each that opens is closed."""
    return _ITALIC.sub(_set_in_italics, str(escape(piece)))


def _set_in_italics(found: re.Match[str]) -> str:
    return f"<i>{found[1]}</i>"


def italic(text: str) -> str:
    return f"{BEGINS}{text}{ENDS}"


def capitalised(text: str) -> str:
    return text[:1].upper() + text[1:]


@lru_cache(maxsize=1024)
def title_case(text: str, language: str | None) -> str:
    """Headline capitals, for English only: other languages keep the capitals they were written with.

    Words that hold a capital already are left alone, as CSL 1.0.2 has it.
    """
    if language and not language.lower().startswith("en"):
        return text
    words = text.split(" ")
    last = len(words) - 1

    def headline(place: int, word: str) -> str:
        bare = word.strip("\"'“”‘’().,:;!?")
        inside = 0 < place < last and not words[place - 1].endswith((":", "?", "!", "—"))
        if bare != bare.lower() or (inside and bare.lower() in STOP_WORDS):
            return word
        return re.sub(r"^(\W*)([^\W\d_])", lambda start: start[1] + start[2].upper(), word)

    return " ".join(headline(place, word) for place, word in enumerate(words))


def quotes_turned(text: str, opening: str, closing: str) -> str:
    """Straight quotation marks turned into the style's own pair, apostrophes into ’."""
    if '"' in text:
        text = re.sub(r'"([^"]*)"', rf"{opening}\1{closing}", text)
    return text.replace("'", "’")


def title_of(item: Item, pair: str = "“”", headline: bool = True) -> str:
    """The title with its own quotation marks turned; ``pair`` is the style's pair."""
    text = item.get("title", "")
    text = title_case(text, item.get("language")) if headline else text
    return quotes_turned(text, pair[0], pair[1])


def genre_of(item: Item) -> str:
    return str(item.get("genre", ""))


def people_of(item: Item) -> Sequence[Item]:
    """Its authors, or else its editors."""
    return item.get("author") or item.get("editor") or ()


# --- names ----------------------------------------------------------------------------------------


def straight(name: Item) -> str:
    """Given name first."""
    return str(name.get("literal") or f"{name['given']} {name['family']}")


def inverted(name: Item) -> str:
    """Family name first."""
    return str(name.get("literal") or f"{name['family']}, {name['given']}")


def short(name: Item) -> str:
    return str(name.get("literal") or name["family"])


def initials(name: Item) -> str:
    """``Family, A. B.``; a hyphen between given names is kept."""
    if "literal" in name:
        return str(name["literal"])
    given = re.sub(r"([^\W\d_])[^\s\-]*", r"\1.", name["given"])
    return f"{name['family']}, {given}"


def listed(names: Sequence[str], conjunction: str = "and") -> str:
    """``A``, ``A and B``, ``A, B, and C``."""
    if len(names) < 2:
        return "".join(names)
    if len(names) == 2:
        return f"{names[0]} {conjunction} {names[1]}"
    return f"{', '.join(names[:-1])}, {conjunction} {names[-1]}"


# --- dates ----------------------------------------------------------------------------------------


def year_of(item: Item, field: str = "issued", bracketed: bool = True) -> str:
    """The year or years, in brackets where a book does not print them, with ``?`` where doubtful."""
    date = item.get(field)
    if not date:
        return ""
    if "literal" in date:
        return str(date["literal"])
    years = [str(parts[0]) for parts in date["date-parts"]]
    text = years[0] if len(set(years)) == 1 else "–".join(years)
    if bracketed and date.get("circa"):
        return f"[{text}?]"
    return f"[{text}]" if bracketed and field == "issued" and not_printed(item) else text


def not_printed(item: Item) -> bool:
    """Whether a book's date is known from elsewhere, so that bibliographies put it in brackets."""
    return is_printed_book(item) and bool(item.get("custom", {}).get("date-not-printed"))


def day_of(item: Item, order: str, months: Sequence[str] = MONTHS, field: str = "issued") -> str:
    """The whole date. ``order`` is ``"month day, year"`` or ``"day month year"``."""
    date = item.get(field)
    if not date or "literal" in date:
        return year_of(item, field)
    if "season" in date:
        return f"{SEASONS[date['season'] - 1]} {year_of(item, field)}"
    written = [_one_day(parts, order, months) for parts in date["date-parts"]]
    if len(written) == 1 and len(date["date-parts"][0]) > 1:
        return f"[{written[0]}?]" if date.get("circa") else written[0]
    if all(len(parts) == 1 for parts in date["date-parts"]):
        return year_of(item, field)
    return "–".join(written)


def _one_day(parts: Sequence[int], order: str, months: Sequence[str]) -> str:
    year = str(parts[0])
    if len(parts) == 1:
        return year
    month = months[parts[1] - 1]
    if len(parts) == 2:
        return f"{month} {year}"
    return f"{month} {parts[2]}, {year}" if order.startswith("month") else f"{parts[2]} {month} {year}"


def ordinal(edition: str) -> str:
    """``2`` as ``2nd``."""
    number = int(edition)
    if number % 100 in (11, 12, 13):
        return f"{number}th"
    return f"{number}{ {1: 'st', 2: 'nd', 3: 'rd'}.get(number % 10, 'th') }"


# --- where in the source ----------------------------------------------------------------------------


@lru_cache(maxsize=64)
def locator_of(locator: Locator, page_label: bool) -> str:
    """Page, plate, figure and item: ``p. 14, fig. 3, no. 2207``; the page bare without ``page_label``."""
    page = locator.page
    if page and page_label:
        page = f"{'pp.' if re.search(r'[-–,]', page) else 'p.'} {page}"
    return join([page.replace("-", "–") if page else None, figure_of(locator)], ", ")


def figure_of(locator: Locator) -> str:
    """The same without the page: ``fig. 3, no. 2207``."""
    parts = (
        locator.column and f"col. {locator.column}",
        locator.plate and f"pl. {locator.plate}",
        locator.figure and f"fig. {locator.figure}",
        locator.item and f"no. {locator.item}",
    )
    return join(parts, ", ")


def locator_words(locator: Locator) -> str:
    """The place in the source with its page labelled, e.g. ``p. 14, fig. 3``; "" where none is recorded."""
    return locator_of(locator, page_label=True)


def held_of(item: Item) -> str:
    """Holding institution and shelfmark or accession number."""
    return ", ".join(item[key] for key in ("archive", "archive_location") if item.get(key))


def is_article(item: Item) -> bool:
    return item["type"] in ("article-magazine", "article-newspaper")


def is_printed_book(item: Item) -> bool:
    return item["type"] in ("book", "pamphlet")
