"""The reasons of a finding, in sentences. The browser's file holds the same templates, word for word, but
for what is left out, which it is given with the facts."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from math import floor

from inperiod.evidence.absence import unlikely
from inperiod.evidence.calendar import window_in_words, year_of
from inperiod.evidence.constants import BACKING, NEAR_YEARS, WIDEST_YEARS
from inperiod.evidence.facts import Facts, GarmentFact, MilestoneFact
from inperiod.evidence.ranges import Attested, Seen
from inperiod.evidence.shares import Share, frequency
from inperiod.evidence.surveys import LeftOut, Survey
from inperiod.evidence.verdicts import Judged
from inperiod.evidence.weights import Window

NAMED = 5
"""At most so many plates are named in one sentence."""

WHY_LEFT_OUT = {
    "undated": "undated",
    "style": "dated from the look of the dress itself, which would argue in a circle",
    "no basis": "with nothing said about what the date rests on",
    "grade B": "of grade B, not weighed here",
    "grade C": "of grade C, not weighed here",
    "wide": f"with a date that spans more than {WIDEST_YEARS} years",
    "reprint": "in reprints, which count under their original",
    "reused cut": "printed from a cut already counted",
}


@dataclass(frozen=True, slots=True)
class Case:
    """All that a finding's sentences speak of."""

    facts: Facts
    garment: GarmentFact
    terms: tuple[int, ...]
    window: Window
    worn_for: float
    looked: Survey
    of: Seen
    found: Attested | None
    judged: Judged
    share: Share
    left_out: tuple[LeftOut, ...]
    not_before: MilestoneFact | None
    in_dress_from: MilestoneFact | None

    @property
    def it(self) -> str:
        return "it" if len(self.terms) == 1 else "them all together"

    @property
    def when(self) -> str:
        return window_in_words(self.window.earliest, self.window.latest)


def reasons(case: Case) -> tuple[str, ...]:
    """Why the verdict is what it is, the deciding sentence first."""
    said = [*_deciding(case), *_looked_at(case), *_worn(case)]
    if case.found:
        said += _range(case.looked, case.found)
    dress, latest = case.in_dress_from, case.window.latest
    if dress and latest is not None and latest < dress.day:
        said.append(f"Known in dress only from {_milestone(dress)}.")
    if case.found and case.found.set_aside:
        said.append(_set_aside(case, case.found))
    said += _not_counted(case)
    return tuple(said)


def _deciding(case: Case) -> list[str]:
    judged, when, it = case.judged, case.when, case.it
    if judged.verdict == "too early" and case.not_before:
        it = "It" if len(case.terms) == 1 else "All together they"
        return [f"{it} cannot be earlier than {_milestone(case.not_before)}."]
    if judged.verdict == "attested":
        if len(judged.inside) == 1:
            return [f"A document in {when} shows {it}, and others close to it in time agree."]
        return [f"{len(judged.inside)} documents in {when} show {it}."]
    if judged.verdict == "seen once":
        return [
            f"One document alone in {when} shows {it}, and none of the {BACKING} before it or the {BACKING} "
            "after it agrees: cite it, and doubt it."
        ]
    if case.found is None:
        return [_never_seen(case)]
    if judged.position == "inside":
        before, after = _neighbours(case, case.found)
        seen = f"seen before it ({_year(before)}) and after it ({_year(after)})"
        between = _number(case.looked.between(before, after), "document")
        if judged.verdict == "lapsed":
            where = "although enough was looked at"
            if not judged.silent:
                where = f"nor in any of the {between} about it, and that is enough to have looked at"
            return [f"Not found in {when}, {where}, yet {seen}: a gap, or an old use and a revival."]
        return [f"Not seen in {when} itself, but {seen}, with {between} between and no sighting in them."]
    if judged.position == "overlapping":
        ends = _span(_year(case.found.first_twice), _year(case.found.last_twice))
        return [f"Not seen in {when} itself, but {when} reaches an end of the attested range, {ends}."]
    return _outside(case, case.found)


def _never_seen(case: Case) -> str:
    things, entries = case.garment.plural, case.looked.entries
    if not entries:
        names = tuple(case.facts.facets.values())
        facets = dict.fromkeys(_lower(names[case.facts.terms[term].facet]) for term in case.terms)
        return (
            f"No document weighed here records the {' and the '.join(facets)} of {things}: "
            "nobody has looked, so nothing can be said."
        )
    plates = _number(sum(len(entry.plates) for entry in entries), "plate")
    return f"Not seen at any time among {plates} of {things} in {_number(len(entries), 'document')}."


def _outside(case: Case, found: Attested) -> list[str]:
    """The deciding sentences for a window before or after the attested range."""
    judged, when, it = case.judged, case.when, case.it
    if judged.position == "after":
        end, in_use = f"after the last sighting ({_year(found.last_twice)})", "still in use as before"
    else:
        end, in_use = f"before the first sighting ({_year(found.first_twice)})", "in use as it was later"
    away = f"{when[:1].upper()}{when[1:]} lies {_years(judged.beyond_years)} {end}"
    if judged.verdict == "unsupported":
        said = []
        if judged.absence_p is not None and unlikely(judged.absence_p):
            said.append(
                f"{away}, and {_number(judged.gap, 'document')} between without {it}: were it {in_use}, "
                f"the chance of that is at most {_percent_up(judged.absence_p)}."
            )
        if judged.silent:
            said.append(
                f"Enough was looked at in {when} that a use by one in twenty would probably have shown."
            )
        said.append("Not found, and use at 5 % or more is unlikely; that is not the same as not in use.")
        return said
    if judged.verdict == "plausible":
        reach = _years(min(found.guide_years, NEAR_YEARS))
        return [
            f"{away}; after {found.sightings} sightings a use up to {reach} further would be no surprise, "
            "and nothing looked at speaks against it."
        ]
    between = _number(judged.gap, "document")
    return [f"{away}, and too little was looked at to say ({between} between)."]


def _looked_at(case: Case) -> list[str]:
    """What was looked at in the window, with the share by weight."""
    judged, when, it, things = case.judged, case.when, case.it, case.garment.plural
    if not case.looked.entries:
        return []
    plates = sum(len(case.looked.entries[position].plates) for position in judged.looked)
    if not plates:
        return [f"No document dated mostly in {when} was looked at for this."]
    documents = _number(len(judged.looked), "document")
    showing = [len(case.of.showing[position]) for position in judged.looked if position in case.of.showing]
    shown, of = sum(showing), f"recorded in {when}"
    if plates == 1:
        does = "shows" if shown else "does not show"
        return [f"The one plate of {things} {of} {does} {it}."]
    if not shown:
        return [f"None of the {plates} {things} {of} shows {it}, in {documents}."]
    said = [f"{shown} of the {plates} {things} {of} {_show(shown)} {it}, in {len(showing)} of {documents}."]
    share = case.share
    if share.value is not None and share.low is not None and share.high is not None:
        between = f"{_percent(share.low)} to {_percent(share.high)}"
        word = frequency(share)
        said.append(f"By weight that is {_percent(share.value)} (95 % interval {between}): {word}.")
    inferred = shown - sum(len(case.of.sighted.get(position, ())) for position in judged.looked)
    if inferred:
        said.append(
            f"{inferred} of these {'is' if inferred == 1 else 'are'} inferred: counted in the share, "
            "never as a sighting."
        )
    return said


def _worn(case: Case) -> list[str]:
    if not case.judged.worn:
        return []
    return [f"Counted by the wear allowance of {_years(case.worn_for)}: {_named(case, case.judged.worn)}."]


def _range(looked: Survey, found: Attested) -> list[str]:
    said = (
        f"Attested {_span(_year(found.first_twice), _year(found.last_twice))}: "
        f"{_number(found.sightings, 'sighting')} in {_number(found.documents, 'document')} looked at"
    )
    ends = []
    if found.before is not None:
        ends.append(f"before {_year(found.before)}")
    if found.after is not None:
        ends.append(f"after {_year(found.after)}")
    if not ends:
        return [f"{said}. Both ends stay open: too little was looked at beyond them."]
    return [f"{said}. Use {' or '.join(ends)} is unlikely, by what was looked at."]


def _set_aside(case: Case, found: Attested) -> str:
    count = len(found.set_aside)
    named = _named(case, found.set_aside)
    if count == 1:
        return f"Outside that range one sighting stands alone; check its date: {named}."
    return f"Outside that range {count} sightings stand alone; check their dates: {named}."


def _not_counted(case: Case) -> list[str]:
    """What shows the term and is not counted; all that is not counted where little or nothing was."""
    little = not case.judged.looked or case.judged.verdict in ("unrecorded", "unproven")
    parts = []
    for each in case.left_out:
        if not each.showing and not little:
            continue
        shows = f" ({each.showing} {_show(each.showing)} {case.it})" if each.showing else ""
        parts.append((each.reason, each.recording, shows))
    return [not_counted(parts)] if parts else []


def not_counted(parts: Iterable[tuple[str, int, str]]) -> str:
    """What is not counted: by each reason how many plates, and what else is said of them."""
    said = [f"{_number(plates, 'plate')} {WHY_LEFT_OUT[reason]}{more}" for reason, plates, more in parts]
    return f"Not counted: {'; '.join(said)}."


def _neighbours(case: Case, found: Attested) -> tuple[int, int]:
    """Doubled middles of the nearest sightings on either side of a window inside the range."""
    before, after = found.first_twice, found.last_twice
    assert case.window.earliest is not None
    assert case.window.latest is not None
    for position in case.of.sighted:
        middle = case.looked.middles[position]
        if middle < 2 * case.window.earliest:
            before = max(before, middle)
        elif middle > 2 * case.window.latest:
            after = min(after, middle)
    return before, after


def _named(case: Case, positions: tuple[int, ...]) -> str:
    parts = [
        f"{case.facts.keys[case.of.sighted[position][0]]} ({_year(case.looked.middles[position])})"
        for position in positions[:NAMED]
    ]
    if len(positions) > NAMED:
        parts.append(f"and {len(positions) - NAMED} more")
    return ", ".join(parts)


def _milestone(of: MilestoneFact) -> str:
    return f"{of.words} ({of.event}; {of.source})"


def _show(count: int) -> str:
    return "shows" if count == 1 else "show"


def _number(count: int, thing: str) -> str:
    return f"{count} {thing}" if count == 1 else f"{count} {thing}s"


def _years(years: float) -> str:
    whole = floor(years + 0.5)
    if whole < 1:
        return "less than a year"
    return _number(whole, "year")


def _year(twice_middle: int) -> int:
    return year_of(twice_middle / 2)


def _span(first: int, last: int) -> str:
    return str(first) if first == last else f"{first}–{last}"


def _percent(share: float) -> str:
    return f"{floor(share * 100 + 0.5)} %"


def _percent_up(p: float) -> str:
    """A bound is rounded up: 0.032 → ``4 %``, and never to nothing."""
    return f"{max(1, floor(p * 100) + 1)} %"


def _lower(label: str) -> str:
    words = label.split("(")[0].strip()
    return words[:1].lower() + words[1:]
