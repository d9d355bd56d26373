"""Date phrases as people write them, read into EDTF.

A phrase that is EDTF already is taken as such. Any other is tidied and cut into tokens (``tokens``), and read
by a chain of small rules (``wholes``, and ``rules`` for single dates); one about several events is parted at
them (``events``). What no rule reads is an error, never a guess.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from inperiod.dating import lexicon, tokens
from inperiod.dating.days import Undated, Unreadable
from inperiod.dating.edtf import Seasons, read_edtf
from inperiod.dating.events import EVENT_WORDS, with_events
from inperiod.dating.rules import Said
from inperiod.dating.span import Span
from inperiod.dating.wholes import whole
from inperiod.dating.words import in_words

_UNDATED = {each.strip() for line in lexicon.UNDATED.split("\n") for each in line.split("|")} - {""}
_LOOKS_LIKE_EDTF = re.compile(r"[0-9XYES~?%/.,\[\]{}-]*[0-9X][0-9XYES~?%/.,\[\]{}-]*")
_TWO_DIGITS = re.compile(r"([0-9]{2})([0-9]{2})-([0-9]{2})")
LATEST_BY_HYPHEN = 2030


@dataclass(frozen=True, slots=True)
class Understood:
    """What a phrase was understood to say: its EDTF, its span, the same in words, and a note on how it was
    taken or what was left aside (None where nothing needs saying)."""

    edtf: str
    span: Span
    words: str
    note: str | None = None


def read_phrase(text: str, seasons: Seasons = "northern") -> Understood:
    """What a date phrase says, EDTF itself included; ``seasons`` is "northern" or "southern".

    Raises ``Undated`` where it says that there is no date, ``Unreadable`` where it cannot be read with
    certainty; both with a plain sentence.
    """
    if len(text) > tokens.LONGEST:
        raise Unreadable(f"a phrase of {len(text)} characters is too long to be a date")
    plain = tokens.tidy(text)
    if not plain:
        raise Unreadable("there is no date here")
    said, complaint = _as_edtf(text.strip(" \t\r\n"), seasons)
    if not said:
        said = _as_phrase(text, plain, seasons, complaint)
    return Understood(
        said.edtf, read_edtf(said.edtf, seasons), in_words(said.edtf, seasons), said.note or None
    )


def _as_edtf(text: str, seasons: Seasons) -> tuple[Said | None, Unreadable | None]:
    """The text itself where it is EDTF; else the complaint, where it was plainly meant to be."""
    if not _LOOKS_LIKE_EDTF.fullmatch(text):
        return None, None
    try:
        read_edtf(text, seasons)
    except Unreadable as problem:
        return None, problem
    years = _TWO_DIGITS.fullmatch(text)
    if not years or years[2] >= years[3] or int(years[1] + years[3]) > LATEST_BY_HYPHEN:
        return Said(text), None
    first, last, meant = text[:4], years[1] + years[3], in_words(text, seasons)
    if int(years[3]) > 24:  # the finer groupings of EDTF, which nobody types; months and seasons people do
        return Said(f"{first}/{last}", f"read as the years; in EDTF it would be {meant}"), None
    return Said(text, f"read as {meant}; for the years {first} to {last} write {first}/{last}"), None


def _as_phrase(text: str, plain: str, seasons: Seasons, complaint: Unreadable | None) -> Said:
    if plain in _UNDATED:
        raise Undated("the phrase says that there is no date")
    row = tokens.tokens(plain)
    if not row or len(row) > tokens.MOST_TOKENS:
        raise Unreadable(f"“{_short(text)}” is not read as a date")
    said = whole(" ".join(each.said for each in row), seasons) or with_events(row, seasons)
    if said:
        return said
    raise complaint or Unreadable(_why(text, row))


def _why(text: str, row: list[tokens.Token]) -> str:
    unknown = [each.typed for each in row if each.said.isalpha() and each.said not in _KNOWN]
    happened = [each.typed for each in row if each.typed in EVENT_WORDS]
    if not any(each.said[-1].isdigit() or each.said.endswith("0s") for each in row):
        return f"“{_short(text)}” names no year that can be read"
    if unknown:
        return f"“{_short(text)}”: the word “{_short(unknown[0])}” is not one of those read in dates"
    if happened:
        return f"“{_short(text)}”: what happened when ({', '.join(happened)}) is not clear; give one date"
    return (
        f"“{_short(text)}” is not read as a date; write for example c. 1912, 1910–15, autumn 1912, late 1920s"
    )


_KNOWN = frozenset(tokens.WORDS.values()) | EVENT_WORDS | {"century", "circa"}


def _short(text: str) -> str:
    return text if len(text) <= 60 else text[:57] + "…"
