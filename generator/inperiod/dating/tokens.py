"""From a phrase as typed or scanned to a row of plain tokens the rules can read.

A token is a number, ``m5`` (May), ``s23`` (autumn), ``r12`` (a Roman numeral), ``1920s``, one of the words on
the left of ``lexicon.WORDS``, a mark of punctuation, or a word nobody knows.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator, Mapping
from typing import NamedTuple

from inperiod.dating import lexicon

LONGEST = 200
MOST_TOKENS = 40

_SPACES = re.compile("[\t-\r\x1c- \x85\xa0\u1680\u2000-\u200b\u2028\u2029\u202f\u205f\u3000\ufeff]+")
_DASHES = re.compile("[\u2010-\u2015\u2212\ufe58\ufe63\uff0d]")
_APOSTROPHES = re.compile("['`\u00b4\u2018\u2019\u201b\u2032]")
_MARKS_ABOVE = re.compile("[\u0300-\u036f]")
_TOKEN = re.compile(
    r"[0-9]+(?:st|nd|rd|th|ste|de|eme|ere|re|ies|ern|er|s|e|o|a)?(?![a-z0-9])|[0-9]+|[a-z]+|[^ a-z0-9]",
    re.ASCII,
)
_ROMAN = re.compile(r"(x{0,2})(ix|iv|v?i{0,3})(?:e|eme|th|o)?", re.ASCII)
_UNITS = {"": 0, "i": 1, "ii": 2, "iii": 3, "iv": 4, "v": 5, "vi": 6, "vii": 7, "viii": 8, "ix": 9}
_SPELT_OUT = re.compile(r"\b([0-9]) ([0-9]) ([0-9]) ([0-9])\b", re.ASCII)
_AFTER_CENTURY = {"", "-", "/", "to", "and", "or", ",", ")", "(", "?", ";", "bc", "ad", "circa"}
_YEARLESS = re.compile(r"(?:^| )(?:s\d\d|m\d+(?: \d\d?(?: (?:-|to|and|or|/) \d\d?)?)?)$", re.ASCII)
_DOUBTS = ("circa", "poss", "?")
_COUNTED = re.compile(r"r?[0-9]{1,2}", re.ASCII).fullmatch
_DECADE = re.compile(r"[0-9]{3}0", re.ASCII).fullmatch
_YEAR = re.compile(r"[0-9]{4}", re.ASCII).fullmatch
_PARTS = {"early", "mid", "late", "later", "earlier", "circa", "before", "after"}


class Token(NamedTuple):
    """What a word is read as, and the word itself."""

    said: str
    typed: str


def _month_words() -> Mapping[str, str]:
    numbers: dict[str, set[int]] = {}
    for number, line in enumerate(lexicon.MONTHS.split("\n")[1:-1], start=1):
        for word in line.split():
            for length in range(3, len(word) + 1):
                numbers.setdefault(word[:length], set()).add(number)
    return {word: f"m{min(found)}" for word, found in numbers.items() if len(found) == 1}


def _words() -> Mapping[str, str]:
    words = dict(_month_words())
    for line in lexicon.WORDS.split("\n")[1:-1]:
        said, *others = line.split()
        words.update(dict.fromkeys(others, said))
        if said.isalpha():
            words[said] = said
    return words


WORDS = _words()
FILLERS = frozenset(lexicon.FILLERS.split())
DECADE_WORDS = frozenset(lexicon.DECADE_WORDS.split())
_IDIOMS = [(re.compile(pattern, re.ASCII), instead) for pattern, instead in lexicon.IDIOMS]


def tidy(text: str) -> str:
    """Lower case, plain letters, single spaces, one dash, no apostrophes; a dot between digits becomes #."""
    plain = unicodedata.normalize("NFKD", _DASHES.sub("-", text).lower())
    plain = _MARKS_ABOVE.sub("", _SPACES.sub(" ", plain)).replace("\u00df", "ss")
    plain = re.sub(r"([0-9]) ?' ?s\b", r"\1s", _APOSTROPHES.sub("'", plain), flags=re.ASCII)
    plain = re.sub(r"\b[dl]'", "", plain, flags=re.ASCII).replace("'", " ")
    plain = re.sub(r"[\[\]\"“”„«»]", " ", re.sub(r"([0-9]) ?\. ?(?=[0-9])", r"\1 # ", plain))
    plain = " ".join(plain.replace(".", " ").split())
    return _SPELT_OUT.sub(r"\1\2\3\4", plain)


def tokens(plain: str) -> list[Token]:
    """The tokens of a tidied phrase, those without meaning left out."""
    for pattern, instead in _IDIOMS:
        plain = pattern.sub(instead, plain)
    found = [Token(_said(word), word) for word in _TOKEN.findall(plain)]
    return list(_joined([each for each in found if each.typed not in FILLERS and each.typed != ":"]))


def _said(word: str) -> str:
    if word[0].isdigit():
        digits = re.match(r"[0-9]+", word, re.ASCII)
        number = digits[0] if digits else word
        ending = word[len(number) :]
        if ending in ("s", "er", "ern", "ies") and len(number) in (2, 4) and number[-1] == "0":
            return number + "s"
        return number if len(number) <= 2 else word
    if word in WORDS:
        return WORDS[word]
    roman = _ROMAN.fullmatch(word)
    if roman and roman[1] + roman[2]:
        return f"r{10 * len(roman[1]) + _UNITS[roman[2]]}"
    return word


def _joined(row: list[Token]) -> Iterator[Token]:
    """What can only be told from the neighbours: "c." for century or circa, the decade of "années 1920" and
    "1920 s"; dashes and commas that separate nothing are left out."""
    before = ""
    decades = _tells_decades(row)
    for at, token in enumerate(row):
        said, typed = token
        after, next_after = (row[each].said if each < len(row) else "" for each in (at + 1, at + 2))
        if typed == "c":
            counted = _COUNTED(before) and after in _AFTER_CENTURY
            counts = (
                _COUNTED(after) and next_after in _AFTER_CENTURY and not (at > 1 and _YEAR(row[at - 2].said))
            )
            said = "century" if counted or counts else "circa"
        elif typed == "s" and before.startswith("r"):
            said = "century"
        elif _DECADE(said) and (after == "s" or decades):
            said += "s"
        elif (
            typed in DECADE_WORDS
            or (said == "s" and before.endswith("0s"))
            or (typed == "-" and _joins_words(before, after))
            or (typed == "(" and after in _DOUBTS and next_after == ")")
            or (typed == ")" and before in _DOUBTS)
            or (typed == "," and _YEAR(after) and _awaits_year(row, at))
        ):
            continue
        yield Token(said, typed)
        before = said


def _tells_decades(row: list[Token]) -> bool:
    """Whether the round years are decades: "années 1920", "années 1920-1930", but not "années 1910-1914"."""
    years = [each.said for each in row if _YEAR(each.said)]
    return any(each.typed in DECADE_WORDS for each in row) and all(each[-1] == "0" for each in years)


def _joins_words(before: str, after: str) -> bool:
    """Whether the dash is inside a word: "mid-18th", "18th-century", "mid- to late"; not in "early-mid"."""
    if "to" in (before, after) or (after == "century" and _COUNTED(before)):
        return True
    return before in _PARTS and bool(re.match(r"[0-9]|[mrs][0-9]|century", after, re.ASCII))


def _awaits_year(row: list[Token], at: int) -> bool:
    """Whether what stands before the comma is a day, a month or a season without its year."""
    near = " ".join(each.said for each in row[max(0, at - 4) : at])
    return bool(_YEARLESS.search(near))
