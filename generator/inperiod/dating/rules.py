"""The rules that read one date from a row of tokens: each a plain function, tried in the order of
``RULES_FOR_DATES``.

A rule is given the tokens joined by single spaces and returns what was ``Said``, or None where it does not
apply. Thirds are a convention of our own: early, mid and late are 0–3, 4–6 and 7–9 of a decade; 00–33, 34–66
and 67–99 of a century; the thirds of a year (EDTF 37–39); days 1–10, 11–20 and the rest of a month.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import NamedTuple

from inperiod.dating import lexicon
from inperiod.dating.days import Unreadable, day_number, iso_year, month_length
from inperiod.dating.edtf import Seasons


class Said(NamedTuple):
    """EDTF, and a remark on how it was understood ("" where nothing needs saying)."""

    edtf: str
    note: str = ""


Rule = Callable[[str, Seasons], Said | None]

WRAPPING = {"northern": 24, "southern": 22}  # the season that runs over New Year


def matcher(pattern: str) -> Callable[[str], re.Match[str] | None]:
    return re.compile(pattern, re.ASCII).fullmatch


# ---- one date ----------------------------------------------------------------------------------------------

_year = matcher(r"\d{4}")
_decade = matcher(r"(\d{3})0(?:(s)|d|s \( decade \))")
_century = matcher(r"(?:r?(\d\d?) century|century r?(\d\d?))( bc| ad)?")
_blank = matcher(r"(\d{3}) -|(\d\d) - -")
_era = matcher(r"(\d{1,4}) (bc|ad)|ad (\d{1,4})")
_part = matcher(r"(early|mid|late|later|earlier) (.+)")
_fraction = matcher(r"(\d|third|last) (quarter|half|third) (?:, )?(.+)")
_part_last = matcher(
    r"(.+?) [,(] (early|mid|late|later|earlier|[ms]\d+|(?:\d|third|last) (?:quarter|half|third))(?: \))?"
)
_nth_decade = matcher(r"(\d\d?|third|last) decade (\d\d? century)")
_month_year = matcher(
    r"[mr](\d+) (\d{4})|(\d{4}) m(\d+)|(\d{4}) / r(\d+)|(\d\d?) [/#-] (\d{4})|(\d{4}) / (\d\d?)"
)
_DAYS = (
    (matcher(r"(\d\d?) m(\d+) (\d{4})"), "dmy"),
    (matcher(r"m(\d+) (\d\d?) (\d{4})"), "mdy"),
    (matcher(r"(\d{4}) (?:, )?m(\d+) (\d\d?)"), "ymd"),
    (matcher(r"(\d\d?) (?:[/#-] )?r(\d+) (?:[/#-] )?(\d{4})"), "dmy"),
    (matcher(r"(\d{4}) [/#-] (\d\d?) [/#-] (\d\d?)"), "ymd"),
    (matcher(r"(\d\d?) # (\d\d?) # (\d{4})"), "dmy"),
)
_numeric = matcher(r"(\d\d?) ([/-]) (\d\d?) \2 (\d{4})")
_season = matcher(r"s(\d\d) (\d{4})(?: [-/] (\d\d|\d{4}))?")
_two_seasons = matcher(r"s(\d\d)(?: (?:and|-|/|to))? s(\d\d) (\d{4})(?: [-/] (\d\d|\d{4}))?")
_year_first = matcher(r"(\d{4}(?: [-/] (?:\d\d|\d{4}))?) (s\d\d.*)")
_of_century, _of_decade, _of_year, _of_month = (
    matcher(form) for form in (r"\d\dXX", r"\d{3}X", r"\d{4}", r"\d{4}-(?:0[1-9]|1[0-2])")
)


def year(text: str, seasons: Seasons) -> Said | None:
    """1926"""
    return Said(text) if _year(text) else None


def decade(text: str, seasons: Seasons) -> Said | None:
    """1920s; 1900s is the century, which has the decade in it, unless a neighbour told ("1900d")"""
    found = _decade(text)
    if not found:
        return None
    if found[1].endswith("0") and found[2]:
        hundred = found[1][:2]
        return Said(f"{hundred}XX", f"{hundred}00s is read as the century; for the decade write {hundred}0X")
    return Said(f"{found[1]}X")


def century(text: str, seasons: Seasons) -> Said | None:
    """19th century, XIXe siècle, siglo XIX, 5th century BC"""
    found = _century(text)
    number = int(found[1] or found[2]) if found else 0
    if not found or not 1 <= number <= 21:
        return None
    if found[3] == " bc":
        return Said("-0099/0000" if number == 1 else f"-{number - 1:02d}XX")
    return Said(f"{number - 1:02d}XX")


def with_blanks(text: str, seasons: Seasons) -> Said | None:
    """192- and 19--, as library catalogues have them"""
    found = _blank(text)
    return Said(f"{found[1]}X" if found[1] else f"{found[2]}XX") if found else None


def with_era(text: str, seasons: Seasons) -> Said | None:
    """44 BC, AD 79"""
    found = _era(text)
    if not found:
        return None
    number = int(found[1] or found[3])
    return Said(iso_year(1 - number if found[2] == "bc" else number)) if number else None


def part(text: str, seasons: Seasons) -> Said | None:
    """early, mid, late, earlier, later: of a century, decade, year or month"""
    found = _part(text)
    whole = _divisible(found[2], seasons) if found else None
    if not found or not whole:
        return None
    if found[1] in ("earlier", "later"):
        return _piece(whole, 2, 1 + (found[1] == "later"))
    return _piece(whole, 3, 1 + ("early", "mid", "late").index(found[1]))


def fraction(text: str, seasons: Seasons) -> Said | None:
    """second quarter of the 19th century, first half of the 1920s, last third of 1926"""
    found = _fraction(text)
    whole = _divisible(found[3], seasons) if found else None
    if not found or not whole:
        return None
    pieces = {"half": 2, "third": 3, "quarter": 4}[found[2]]
    return _piece(whole, pieces, _count(found[1], pieces))


def part_last(text: str, seasons: Seasons) -> Said | None:
    """19th century, second half; 1920s (early); 1926, spring"""
    found = _part_last(text)
    turned = f"{found[2]} {found[1]}" if found else ""
    rules = (part, fraction, month_and_year, season)
    return next((said for rule in rules if (said := rule(turned, seasons))), None)


def nth_decade(text: str, seasons: Seasons) -> Said | None:
    """first decade of the 20th century"""
    found = _nth_decade(text)
    whole = century(found[2], seasons) if found else None
    if not found or not whole:
        return None
    number = _count(found[1], 10)
    return Said(f"{whole.edtf[:2]}{number - 1}X") if 1 <= number <= 10 else None


def month_and_year(text: str, seasons: Seasons) -> Said | None:
    """Sept. 1926, 1926 September, 1852/XII, 5/1926, 1858/2"""
    found = _month_year(text)
    if not found:
        return None
    y = found[2] or found[3] or found[5] or found[8] or found[9]
    m = int(found[1] or found[4] or found[6] or found[7] or found[10])
    if found[10] and int(found[10]) > int(y[-len(found[10]) :]):
        later = y[: -len(found[10])] + found[10]
        if m > 12:
            return Said(f"{y}/{later}")
        raise Unreadable(f"“{y}/{found[10]}” can be a month or a year: write {y}-{m:02d} or {y}/{later}")
    return Said(f"{y}-{m:02d}") if 1 <= m <= 12 else None


def day(text: str, seasons: Seasons) -> Said | None:
    """12 May 1926, May 12, 1926, 12.V.1926, 12.5.1926, 1926/05/12"""
    for match, order in _DAYS:
        if found := match(text):
            parts = dict(zip(order, map(int, found.groups()), strict=True))
            return _existing_day(parts["y"], parts["m"], parts["d"])
    return None


def numeric_day(text: str, seasons: Seasons) -> Said | None:
    """5/12/1926, the month first as the United States write it, unless only the other order is possible"""
    found = _numeric(text)
    if not found:
        return None
    first, second, y = int(found[1]), int(found[3]), int(found[4])
    if first > 12:
        return _existing_day(y, second, first)
    if found[2] == "-" and first != second and second <= 12:
        raise Unreadable(f"{first}-{second}-{y} can be read in two ways: write the month as a word")
    said = _existing_day(y, first, second)
    doubtful = first != second and second <= 12
    return Said(said.edtf, "the month is read first, then the day" if doubtful else "")


def season(text: str, seasons: Seasons) -> Said | None:
    """Autumn 1912, Winter 1912-13"""
    found = _season(_year_last(text))
    if not found:
        return None
    code, y = int(found[1]), found[2]
    if not found[3]:
        return Said(f"{y}-{code}")
    follows = int(y[: -len(found[3])] + found[3]) == int(y) + 1
    return Said(f"{y}-{code}") if follows and code == WRAPPING[seasons] else None


def two_seasons(text: str, seasons: Seasons) -> Said | None:
    """Autumn and Winter 1912-13, Spring–Summer 1926: two that follow each other are one interval"""
    found = _two_seasons(_year_last(text))
    if not found:
        return None
    first, second, y = int(found[1]), int(found[2]), int(found[3])
    if second != (first - 20) % 4 + 21:
        return None
    wrapping = WRAPPING[seasons]
    pair = found[4] and int(found[3][: -len(found[4])] + found[4]) == y + 1
    if found[4] and (not pair or wrapping not in (first, second)):
        return None
    if first == wrapping and not pair:
        y -= 1  # "Winter and Spring 1913": the winter that ends in that year
    crossing = first == wrapping or second == 21
    return Said(f"{iso_year(y)}-{first}/{iso_year(y + crossing)}-{second}")


def period(text: str, seasons: Seasons) -> Said | None:
    """Victorian, Meiji period"""
    name = text.removesuffix(" period").removesuffix(" dynasty").removesuffix(" era")
    dates = PERIODS.get(name)
    return Said(dates, f"{name.title()} is read as {dates.replace('/', ' to ')}") if dates else None


RULES_FOR_DATES: tuple[Rule, ...] = (
    year,
    decade,
    century,
    with_blanks,
    with_era,
    part,
    fraction,
    part_last,
    nth_decade,
    day,
    numeric_day,
    month_and_year,
    season,
    two_seasons,
    period,
)

PERIODS = dict(line.rsplit(" ", 1) for line in lexicon.PERIODS.split("\n")[1:-1])


def _divisible(text: str, seasons: Seasons) -> Said | None:
    for rule in (year, decade, century, month_and_year):
        if said := rule(text, seasons):
            return said
    return None


def _year_last(text: str) -> str:
    found = _year_first(text)
    return f"{found[2]} {found[1]}" if found else text


def _count(word: str, of: int) -> int:
    return of if word == "last" else 3 if word == "third" else int(word)


def _piece(whole: Said, pieces: int, number: int) -> Said | None:
    """The so-manieth of so many pieces of a century, decade, year or month, as EDTF."""
    if not 1 <= number <= pieces:
        return None
    edtf = whole.edtf
    if _of_century(edtf):
        cuts = {2: (0, 50, 100), 3: (0, 34, 67, 100), 4: (0, 25, 50, 75, 100)}[pieces]
        return Said(f"{edtf[:2]}{cuts[number - 1]:02d}/{edtf[:2]}{cuts[number] - 1:02d}", whole.note)
    if _of_decade(edtf) and pieces < 4:
        tens = {2: (0, 5, 10), 3: (0, 4, 7, 10)}[pieces]
        return Said(f"{edtf[:3]}{tens[number - 1]}/{edtf[:3]}{tens[number] - 1}", whole.note)
    if _of_year(edtf):
        return Said(f"{edtf}-{ {2: 39, 3: 36, 4: 32}[pieces] + number }")
    if _of_month(edtf) and pieces == 3:
        last = month_length(int(edtf[:4]), int(edtf[5:]))
        days = ("01", "10", "11", "20", "21", str(last))
        return Said(f"{edtf}-{days[2 * number - 2]}/{edtf}-{days[2 * number - 1]}")
    return None


def _existing_day(y: int, m: int, d: int) -> Said:
    day_number(y, m, d)  # complains of the 30th of February
    return Said(f"{y:04d}-{m:02d}-{d:02d}")


# ---- a date with its doubts --------------------------------------------------------------------------------


def dated(text: str, seasons: Seasons) -> Said | None:
    """One date, with circa, possibly and question marks about it."""
    text, marks = without_doubts(text)
    for rule in RULES_FOR_DATES:
        if said := rule(text, seasons):
            return qualified(said, marks)
    return None


def without_doubts(text: str) -> tuple[str, str]:
    words, marks = text.split(" "), ""
    while words and words[0] in ("circa", "poss", "?"):
        marks += "~" if words.pop(0) == "circa" else "?"
    while words and words[-1] in ("circa", "poss", "?"):
        marks += "~" if words.pop() == "circa" else "?"
    return " ".join(words), marks


def qualified(said: Said, marks: str) -> Said:
    """Every date in the EDTF with the marks added to those it has."""
    if not marks:
        return said
    return Said(re.sub(r"[^\[\]{},/.]+", lambda found: _marked(found[0], marks), said.edtf), said.note)


def _marked(date: str, marks: str) -> str:
    bare = date.rstrip("~?%")
    marks += date[len(bare) :]
    both = "%" in marks or ("~" in marks and "?" in marks)
    return bare + ("%" if both else "~" if "~" in marks else "?")


def notes_of(*notes: str) -> str:
    return "; ".join(dict.fromkeys(each for each in notes if each))
