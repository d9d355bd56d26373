"""Phrases with more than one event in them: "designed 1938, made 1955", "1939, printed 1946", "Edo period
(1603-1867), 19th century".

The making dates a thing; then the date that has no name; then its design; last what was printed, cast or
altered from it afterwards. Whatever is not taken is kept in the note. Two dates of the same rank are refused.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field

from inperiod.dating import lexicon
from inperiod.dating.days import Unreadable
from inperiod.dating.edtf import Seasons, read_edtf
from inperiod.dating.rules import PERIODS, Said, notes_of
from inperiod.dating.tokens import Token
from inperiod.dating.wholes import whole
from inperiod.dating.words import in_words

_RANKS = {
    word: lexicon.RANKS[rank]
    for rank, *words in (line.split() for line in lexicon.EVENTS.split("\n")[1:-1])
    for word in words
}
EVENT_WORDS = frozenset(_RANKS)
_KINDS = ("period", "dynasty", "era", "reign")
_LOOSE = {"-", "/", "and"}
_ABOUT_TIME = re.compile(
    r"[mrs]\d+|\d.*|early|mid|late|before|after|from|to|century|decade|quarter|half|circa|poss"
)


@dataclass
class _Clause:
    """One stretch of the phrase: its tokens, the events it names, the other tokens; how it is set off."""

    opening: str = ""
    row: list[Token] = field(default_factory=list)
    events: list[str] = field(default_factory=list)
    rest: list[Token] = field(default_factory=list)

    @property
    def has_date(self) -> bool:
        return any(each.said[-1].isdigit() or each.said.endswith("0s") for each in self.rest)

    @property
    def is_period(self) -> bool:
        return any(each.said in _KINDS for each in self.rest) or self.name in PERIODS

    @property
    def name(self) -> str:
        return " ".join(each.said for each in self.rest if each.said not in _KINDS)

    @property
    def rank(self) -> int:
        return min((_RANKS[each] for each in self.events), default=lexicon.RANKS["unnamed"])

    def read(self, seasons: Seasons) -> Said | None:
        return whole(" ".join(each.said for each in self.rest), seasons)

    def typed(self) -> str:
        return " ".join(each.typed for each in self.row)


def with_events(row: list[Token], seasons: Seasons) -> Said | None:
    """The date of the event that counts, the others in the note; None for a phrase of another kind."""
    clauses, period = _gathered(row)
    if clauses is None:
        return None
    dates = [each for each in clauses if each.has_date]
    asides = [each.typed() for each in clauses if not each.has_date]
    if period is not None:
        return _within_period(period, dates, asides, seasons)
    if not dates:
        return None
    best = min(each.rank for each in dates)
    taken, *more = [each for each in dates if each.rank == best]
    said = taken.read(seasons)
    told = [_told(each, seasons) for each in dates if each is not taken]
    if more or not said or not all(told):
        return None
    named = f"the date given for “{' '.join(taken.events)}”" if taken.events else ""
    also = f"also {', '.join([*told, *asides])}" if told or asides else ""
    return Said(said.edtf, notes_of(said.note, named, also))


def _gathered(row: list[Token]) -> tuple[list[_Clause] | None, _Clause | None]:
    """The clauses, bare names of events joined to the date they follow; and the name of a period, apart. None
    for the clauses where one of them is neither a date, nor an event, nor a remark that tells no time."""
    clauses: list[_Clause] = []
    period = None
    for clause in _cut(row):
        if clause.is_period and not clause.has_date:
            period = clause
        elif clause.has_date:
            clauses.append(clause)
        elif any(_ABOUT_TIME.fullmatch(each.said) for each in clause.rest):
            return None, None
        elif clause.events and not clause.rest:
            if clauses and clause.opening != "," and not clauses[-1].events:
                clauses[-1].events = clause.events
            else:
                clauses.append(clause)
        elif clause.events or clause.opening == "(":
            clauses.append(clause)
        else:
            return None, None
    return clauses, period


def _cut(row: list[Token]) -> list[_Clause]:
    clauses = [_Clause()]
    for token in row:
        now = clauses[-1]
        if token.said in (",", ";", "(", ")"):
            clauses.append(_Clause("," if token.said == ";" else token.said))
            continue
        event = token.typed in _RANKS
        if event and now.has_date:
            now = _Clause()
            clauses.append(now)
        now.row.append(token)
        if event:
            now.events.append(token.typed)
        else:
            now.rest.append(token)
    for clause in clauses:
        while clause.rest and clause.rest[-1].said in _LOOSE:
            clause.rest.pop()
        while clause.rest and clause.rest[0].said in _LOOSE:
            clause.rest.pop(0)
    return [each for each in clauses if each.rest or each.events]


def _told(clause: _Clause, seasons: Seasons) -> str:
    said = clause.read(seasons)
    return " ".join([*clause.events, in_words(said.edtf, seasons)]) if said else ""


def _within_period(period: _Clause, dates: list[_Clause], asides: list[str], seasons: Seasons) -> Said | None:
    """A named period with its own dates, and a date within it: what both have in common."""
    read = [each.read(seasons) for each in dates if not each.events]
    known = PERIODS.get(period.name)
    if known and len(dates) < 2 and (not dates or dates[0].opening != "("):
        read.insert(0, Said(known))
    if not read or not all(read) or len(read) > 2 or len(read) < len(dates):
        return None
    first, last = (each for each in (read[0], read[-1]) if each)
    name = " ".join(each.typed if each.said in _KINDS else each.typed.title() for each in period.rest)
    name += "" if any(each.said in _KINDS for each in period.rest) else " period"
    note = notes_of(last.note, f"within the {name}" if first is not last else name, *asides)
    return Said(_common(first.edtf, last.edtf, seasons), note)


def _common(outer: str, inner: str, seasons: Seasons) -> str:
    wide, narrow = read_edtf(outer, seasons), read_edtf(inner, seasons)
    ends = wide.earliest, wide.latest, narrow.earliest, narrow.latest
    if any(each is None for each in ends):
        raise Unreadable("a period and a date with an open end cannot be compared")
    begins, stops, earliest, latest = (each or 0 for each in ends)
    if earliest > stops or latest < begins:
        raise Unreadable("the date does not lie in the period it is given for")
    if begins <= earliest and latest <= stops:
        return inner
    start = outer if begins > earliest else inner
    end = outer if stops < latest else inner
    return f"{start.split('/')[0].replace('X', '0')}/{end.split('/')[-1].replace('X', '9')}"
