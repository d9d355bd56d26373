"""Spans and EDTF in words: "autumn 1912", "about 1910", "1924 to 1927", "before 1907"."""

from __future__ import annotations

import re
from functools import lru_cache

from inperiod.dating import lexicon
from inperiod.dating.days import MONTH_NAMES, date_of, month_length
from inperiod.dating.edtf import Seasons, read_edtf
from inperiod.dating.span import Span

_OVER_NEW_YEAR = {"northern": 24, "southern": 22}
_PLAIN = re.compile(r"(-?)([0-9]{4})(?:-([0-9]{2})(?:-([0-9]{2}))?)?")
_DECADE = re.compile(r"([0-9]{3})X")
_CENTURY = re.compile(r"(-?)([0-9]{2})XX")


@lru_cache(maxsize=4096)
def in_words(date: Span | str, seasons: Seasons = "northern") -> str:
    """A span, or a readable EDTF text, as people say it. Seasons and decades are named where EDTF names them;
    a bare span is told by its years, months or days, whichever its ends are whole ones of. ``seasons`` tells
    which of them runs over New Year: "winter 1912–13". Raises ``Unreadable`` for what is no EDTF."""
    if isinstance(date, Span):
        return _span_in_words(date)
    read_edtf(date, seasons)
    if date[:1] in ("[", "{"):
        members = [_member(each, seasons) for each in date[1:-1].split(",")]
        return (" or " if date[0] == "[" else " and ").join(members)
    first, slash, last = date.partition("/")
    return _between(first, last, seasons) if slash else _date(date, seasons)


def _between(first: str, last: str, seasons: Seasons) -> str:
    if first in ("", ".."):
        return _before(last, seasons)
    if last in ("", ".."):
        return f"{_date(first, seasons)} or later"
    return _to(_date(first, seasons), _date(last, seasons))


def _member(text: str, seasons: Seasons) -> str:
    first, dots, last = text.partition("..")
    return _between(first, last, seasons) if dots else _date(text, seasons)


def _before(last: str, seasons: Seasons) -> str:
    """``../1906`` is what people call "before 1907"."""
    bare = last.rstrip("~?%")
    if re.fullmatch(r"[0-9]{4}", bare) and bare != "9999":
        told = _date(f"{int(bare) + 1:04d}{last[len(bare) :]}", seasons)
        perhaps = "perhaps " if told.startswith("perhaps ") else ""
        return f"{perhaps}before {told.removeprefix('perhaps ')}"
    return f"{_date(last, seasons)} or earlier"


def _to(first: str, last: str) -> str:
    """Both ends, what they share said once: "about 1910 to 1915", "May to June 1926", "1 to 10 May 1926"."""
    for doubt in ("perhaps about ", "about ", "perhaps "):
        if first.startswith(doubt) and last.startswith(doubt):
            last = last.removeprefix(doubt)
            break
    front, back = first.split(" "), last.split(" ")
    while len(front) > 1 and len(back) > 1 and front[-1] == back[-1]:
        front.pop()
        back.pop()
    return f"{' '.join(front)} to {last}"


def _date(text: str, seasons: Seasons) -> str:
    doubt = {"~": "about ", "?": "perhaps ", "%": "perhaps about "}
    marks = set(re.findall(r"[~?%]", text))
    mark = "" if not marks else "%" if len(marks) > 1 else marks.pop()
    return doubt.get(mark, "") + _bare(re.sub(r"[~?%]", "", text), seasons)


def _bare(text: str, seasons: Seasons) -> str:
    if found := _DECADE.fullmatch(text):
        return f"the {found[1]}0s"
    if found := _CENTURY.fullmatch(text):
        return f"the {_ordinal(int(found[2]) + 1)} century{' BC' if found[1] else ''}"
    if found := _PLAIN.fullmatch(text):
        year = _year(int(found[1] + found[2]))
        number = int(found[3] or 0)
        if number in (_OVER_NEW_YEAR[seasons], 28, 30):
            return lexicon.GROUPINGS[number - 21].format(f"{year}–{(int(found[2]) + 1) % 100:02d}")
        if number > 20:
            return lexicon.GROUPINGS[number - 21].format(year)
        month = f"{MONTH_NAMES[number - 1]} " if number else ""
        return f"{int(found[4])} {month}{year}" if found[4] else f"{month}{year}"
    if found := re.fullmatch(r"Y?(-?[0-9E]+)(?:S([0-9]+))?", text):
        figures = f" to {found[2]} significant {'digit' if found[2] == '1' else 'digits'}" if found[2] else ""
        return f"the year {found[1].replace('E', '×10^')}{figures}"
    return _span_in_words(read_edtf(text, seasons))


def _year(year: int) -> str:
    return f"{1 - year} BC" if year < 1 else f"AD {year}" if year < 1000 else str(year)


def _ordinal(number: int) -> str:
    ending = "th" if 10 < number % 100 < 14 else {1: "st", 2: "nd", 3: "rd"}.get(number % 10, "th")
    return f"{number}{ending}"


def _span_in_words(span: Span) -> str:
    first = None if span.earliest is None else date_of(span.earliest)
    last = None if span.latest is None else date_of(span.latest)
    years = (not first or first[1:] == (1, 1)) and (not last or last[1:] == (12, 31))
    months = (not first or first[2] == 1) and (not last or last[2] == month_length(last[0], last[1]))

    def told(day: tuple[int, int, int], margin: object) -> str:
        doubt = (
            ("perhaps " if span.uncertain else "") + ("about " if span.approximate else "") if margin else ""
        )
        month = "" if years else f"{MONTH_NAMES[day[1] - 1]} "
        return f"{doubt}{'' if years or months else f'{day[2]} '}{month}{_year(day[0])}"

    start = told(first, span.early_margin) if first else ""
    end = told(last, span.late_margin) if last else ""
    if start and end:
        return start if start == end else _to(start, end)
    if end:
        return (
            f"before {told((last[0] + 1, 1, 1), span.late_margin)}" if years and last else f"{end} or earlier"
        )
    return f"{start} or later" if start else "no date"
