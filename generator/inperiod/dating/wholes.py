"""The rules that read a whole phrase, without events: one date, dates bounded on one side, ranges, lists.

They call the rules for single dates; a part is never a whole again, so no phrase can make the work grow.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from itertools import pairwise

from inperiod.dating.days import date_of, iso_day, iso_year
from inperiod.dating.edtf import Seasons, read_edtf
from inperiod.dating.rules import Rule, Said, dated, matcher, notes_of, qualified, without_doubts

_from_to = matcher(r"(?:from|between) (.+?) (?:-|to|and) (.+)")
_after_before = matcher(r"after (.+?) (?:(?:and|,|-) )?before (.+)")


def doubted(text: str, seasons: Seasons) -> Said | None:
    """c. 1885–90: a doubt before or after the whole is about all of it"""
    rest, marks = without_doubts(text)
    said = whole(rest, seasons) if marks and rest else None
    return qualified(said, marks) if said else None


def bounded(text: str, seasons: Seasons) -> Said | None:
    """before 1907, after 1920, from 1917, no later than 1915, 1898 or later"""
    if found := _after_before(text):
        first, last = dated(found[1], seasons), dated(found[2], seasons)
        return _joined(_after(first, seasons), _before(last, seasons)) if first and last else None
    if text.startswith("from "):
        text = text.removesuffix(" onward")
    for word, rule in _BOUNDS.items():
        rest = text.removesuffix(" " + word) if word in ("onward", "upto") else text.removeprefix(word + " ")
        if rest != text and (said := dated(rest, seasons)):
            return rule(said, seasons)
    return None


def between(text: str, seasons: Seasons) -> Said | None:
    """between 1910 and 1915, from 1910 to 1915, between 1910–15"""
    if not (found := _from_to(text)):
        return None
    return _range(found[1].split(" "), found[2].split(" "), seasons)


def ranged(text: str, seasons: Seasons) -> Said | None:
    """1920s–30s, August - September 1954, June 19-20, 1964, late 19th–early 20th century"""
    words = text.split(" ")
    for at in range(1, len(words) - 1):
        if words[at] in ("-", "to", "/") and (said := _range(words[:at], words[at + 1 :], seasons)):
            return said
    return None


def chosen(text: str, seasons: Seasons) -> Said | None:
    """1926 or 1927; 1933, 1937; May and June 1926"""
    words = text.split(" ")
    if _among_decades(words):
        words = _as_decades(words)
    members: list[list[str]] = [[]]
    for word in words:
        if word not in ("or", "and", ","):
            members[-1].append(word)
        elif members[-1]:
            members.append([])
    if len(members) < 2 or not members[-1]:
        return None
    read: list[Said] = []
    for at, member in enumerate(members):
        completed = (_completed(members[at - 1], member) if at else None) or member
        members[at] = completed
        said = dated(" ".join(completed), seasons) or _first_of(completed, members[-1], seasons)
        if not said:
            return None
        read.append(said)
    inside = ",".join(each.edtf.replace("/", "..") for each in read)
    note = notes_of(*(each.note for each in read))
    if "or" in words or re.search(r"[?%]", inside):
        return Said(f"[{inside}]", note)
    return Said(f"{{{inside}}}", note) if _follow_each_other(read, seasons) else None


RULES_FOR_WHOLES: tuple[Rule, ...] = (dated, doubted, bounded, between, chosen, ranged)


def _follow_each_other(read: list[Said], seasons: Seasons) -> bool:
    """Whether no date of the list reaches into the next: "Edwardian, c. 1905" is no list."""
    spans = [read_edtf(each.edtf, seasons) for each in read]
    return all((one.latest or 0) < (other.earliest or 0) for one, other in pairwise(spans))


def whole(text: str, seasons: Seasons) -> Said | None:
    """What a whole phrase without events says."""
    for rule in RULES_FOR_WHOLES:
        if said := rule(text, seasons):
            return said
    return None


def _range(first: list[str], last: list[str], seasons: Seasons) -> Said | None:
    if last[-1] == "bc" and first[-1] not in ("bc", "ad"):
        first = [*first, "bc"]  # "2200–2100 BC"
    if _among_decades([*first, *last]):
        first, last = _as_decades(first), _as_decades(last)
    end = _last_of(first, last, seasons)
    start = _first_of(first, last, seasons)
    return _joined(start, end) if start and end else None


def _among_decades(words: list[str]) -> bool:
    """Whether a neighbour tells that "1900s" is the decade: "1890s–1900s", "1896–1900s"."""
    return any(re.fullmatch(r"\d\d[1-9]0s|\d0s|\d{4}", word, re.ASCII) for word in words)


def _as_decades(words: list[str]) -> list[str]:
    return [word[:4] + "d" if re.fullmatch(r"\d\d00s", word, re.ASCII) else word for word in words]


def _last_of(first: list[str], last: list[str], seasons: Seasons) -> Said | None:
    """The right side, with what it leaves to the left: the century of "1920s–30s", the month of "May 1-7"."""
    if said := dated(" ".join(last), seasons):
        return said
    if completed := _with_century(first, last):
        return dated(" ".join(completed), seasons)
    for count in range(min(len(first) - 1, 3), 0, -1):
        if said := dated(" ".join([*first[:count], *last]), seasons):
            return said
    return None


def _first_of(first: list[str], last: list[str], seasons: Seasons) -> Said | None:
    """The left side, with what it leaves to the right: the year of "August - September 1954"."""
    if said := dated(" ".join(first), seasons):
        return said
    for count in range(1, min(len(last), 3) + 1):
        if said := dated(" ".join([*first, *last[-count:]]), seasons):
            return said
    return None


def _completed(before: list[str], member: list[str]) -> list[str] | None:
    """What a member of a list leaves to the one before it: "1926 or 27", "May 1926 or 1927"."""
    if (
        len(member) == 1
        and len(before) > 1
        and re.fullmatch(r"\d{4} \d{4}", f"{member[0]} {before[-1]}", re.ASCII)
    ):
        return [*before[:-1], *member]
    return _with_century(before, member)


def _with_century(first: list[str], last: list[str]) -> list[str] | None:
    """``["circa", "90"]`` after ``["1885"]`` is ``["circa", "1890"]``; only a later year is a completion."""
    *others, year = [word for word in first if word not in ("circa", "poss", "?")] or [""]
    known = re.fullmatch(r"(\d{4})[sd]?", year, re.ASCII)
    if not known or not all(word in _AROUND for word in others):
        return None
    at = next((at for at, word in enumerate(last) if re.fullmatch(r"\d\d?|\d0s", word, re.ASCII)), None)
    if at is None or not all(word in _AROUND for word in last[:at] + last[at + 1 :]):
        return None
    digits = last[at].rstrip("s")
    completed = known[1][: -len(digits)] + digits
    if int(completed) <= int(known[1]):
        return None
    return [*last[:at], completed + last[at][len(digits) :], *last[at + 1 :]]


_AROUND = ("circa", "poss", "?", "early", "mid", "late")


def _joined(start: Said, end: Said) -> Said:
    first = re.split(r"/|\.\.|,", start.edtf.strip("[]{}"))[0]
    last = re.split(r"/|\.\.|,", end.edtf.strip("[]{}"))[-1]
    return Said(f"{first}/{last}", notes_of(start.note, end.note))


def _before(said: Said, seasons: Seasons) -> Said:
    """Up to the day before it begins, written as finely as the date is."""
    first = said.edtf.split("/")[0]
    earliest = read_edtf(first, seasons).earliest or 0  # a date has both ends
    return Said("../" + _as_fine_as(first, earliest - 1), said.note)


def _after(said: Said, seasons: Seasons) -> Said:
    last = said.edtf.split("/")[-1]
    latest = read_edtf(last, seasons).latest or 0
    return Said(_as_fine_as(last, latest + 1) + "/..", said.note)


def _since(said: Said, seasons: Seasons) -> Said:
    return Said(said.edtf.split("/")[0] + "/..", said.note)


def _up_to(said: Said, seasons: Seasons) -> Said:
    return Said("../" + said.edtf.split("/")[-1], said.note)


_BOUNDS: dict[str, Callable[[Said, Seasons], Said]] = {
    "before": _before,
    "after": _after,
    "from": _since,
    "to": _up_to,
    "onward": _since,
    "upto": _up_to,
}


def _as_fine_as(date: str, number: int) -> str:
    bare = date.rstrip("~?%")
    y, m, _ = date_of(number)
    parts = bare.lstrip("-").count("-")
    written = iso_year(y) if parts == 0 else f"{iso_year(y)}-{m:02d}" if parts == 1 else iso_day(number)
    return written + date[len(bare) :]
