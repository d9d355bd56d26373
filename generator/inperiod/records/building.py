"""Shaped fields into typed records.

Each function takes the fields of one record and gives the record; what is missing although required has
been complained of by then, and is filled with something harmless so that the other checks can go on.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from pathlib import PurePosixPath
from typing import Any, cast

from inperiod.dating import Seasons, Span, Unreadable, in_words, read_edtf, read_phrase
from inperiod.records.model import (
    Board,
    Confirmation,
    Creator,
    Dated,
    Departure,
    Facet,
    Feature,
    Gathered,
    HeldBy,
    Image,
    Locator,
    Mark,
    Milestone,
    Name,
    Plate,
    Price,
    Publisher,
    Recorded,
    Settings,
    Source,
    State,
    Term,
    Wearer,
)
from inperiod.records.problems import Problem
from inperiod.records.shaping import Entries, Fields


@dataclass(slots=True)
class Builder:
    """Builds the records of one file; ``problems`` collects what only reading a value shows."""

    file: str
    seasons: Seasons = "northern"
    dates: dict[str, Span | str] = field(default_factory=dict)
    """Dates read before, or why they could not be: may be shared by the builders of one run."""
    problems: list[Problem] = field(default_factory=list)

    def mark(self, fields: Fields, key: str | None = None) -> Mark:
        line, column = (
            fields.spots.get(key, (fields.line, fields.column)) if key else (fields.line, fields.column)
        )
        return Mark(self.file, line, column)

    def date(self, fields: Fields, key: str) -> Dated | None:
        """The date under ``key``; an unreadable one is complained of and left out."""
        if key not in fields:
            return None
        text: str = fields[key]
        mark = self.mark(fields, key)
        span = self.span(text)
        if isinstance(span, str):
            self.problems.append(Problem.error(mark, *_about_date(key, text, span)))
            fields.left_out.append(key)
            return None
        return Dated(text, span, mark)

    def span(self, text: str) -> Span | str:
        if text not in self.dates:
            try:
                self.dates[text] = read_edtf(text, self.seasons)
            except Unreadable as error:
                self.dates[text] = str(error) or f"“{text}” cannot be read as a date."
        return self.dates[text]

    def recorded(self, fields: Fields, key: str) -> Recorded | None:
        inner = fields.get(key)
        if not inner:
            return None
        return Recorded(**self.with_date(inner, "on"))

    def with_date(self, fields: Fields, key: str) -> dict[str, Any]:
        """The fields, without the date under ``key`` where it cannot be read: nothing cites it then."""
        self.date(fields, key)
        return {name: value for name, value in fields.items() if name not in fields.left_out}

    # --- vocabulary -------------------------------------------------------------------------------

    def facet(self, fields: Fields) -> Facet:
        facet_id = fields.get("facet") or PurePosixPath(self.file).stem
        return Facet(
            id=facet_id,
            label=fields.get("label", facet_id),
            question=fields.get("question", ""),
            exclusive=fields.get("exclusive", False),
            terms=tuple(self.term(each, facet_id) for each in fields.get("terms", ()) if "id" in each),
            mark=self.mark(fields, "facet"),
            applies_to=tuple(fields.get("applies_to", ())),
            note=fields.get("note"),
            spots=fields.spots,
        )

    def term(self, fields: Fields, facet: str) -> Term:
        return Term(
            facet=facet,
            id=fields["id"],
            label=fields.get("label", fields["id"]),
            definition=fields.get("definition", ""),
            mark=self.mark(fields),
            names=tuple(
                Name(each) if isinstance(each, str) else Name(**each)
                for each in fields.get("names", ())
                if isinstance(each, str) or "name" in each
            ),
            broader=fields.get("broader"),
            applies_to=tuple(fields.get("applies_to", ())),
            not_before=self.milestone(fields, "not_before"),
            in_dress_from=self.milestone(fields, "in_dress_from"),
            see_also=tuple(fields.get("see_also", ())),
            told_apart=fields.get("told_apart"),
            cautions=tuple(fields.get("cautions", ())),
            source=fields.get("source"),
            draw=fields.get("draw", {}),
            spots=fields.spots,
        )

    def milestone(self, fields: Fields, key: str) -> Milestone | None:
        inner = fields.get(key)
        if inner is None:
            return None
        date = self.date(inner, "date")
        if date is None:
            return None
        return Milestone(date, inner.get("event", ""), inner.get("source", ""), inner.get("note"))

    # --- sources ----------------------------------------------------------------------------------

    def source(self, fields: Fields) -> Source:
        source_id = PurePosixPath(self.file).stem
        return Source(
            id=source_id,
            title=fields.get("title", source_id),
            kind=fields.get("kind", "other"),
            mark=self.mark(fields),
            date=self.date(fields, "date"),
            on_sale=self.date(fields, "on_sale"),
            made=self.date(fields, "made"),
            photographed=self.date(fields, "photographed"),
            altered=self.date(fields, "altered"),
            worn=self.date(fields, "worn"),
            date_basis=fields.get("date_basis"),
            date_note=fields.get("date_note"),
            date_printed=fields.get("date_printed"),
            publisher=Publisher(**fields.get("publisher", {})),
            creators=tuple(
                Creator(each) if isinstance(each, str) else Creator(**each)
                for each in fields.get("creators", ())
                if isinstance(each, str) or "name" in each
            ),
            container=fields.get("container"),
            volume=fields.get("volume"),
            issue=fields.get("issue"),
            pages=fields.get("pages"),
            edition=fields.get("edition"),
            drafting_system=fields.get("drafting_system"),
            market=fields.get("market"),
            language=fields.get("language"),
            held_by=self.held_by(fields),
            rights=fields.get("rights"),
            examined=self.recorded(fields, "examined"),
            reprint_of=fields.get("reprint_of"),
            publish=fields.get("publish", True),
            note=fields.get("note"),
            plates=self.plates(fields, source_id),
            left_out=tuple(fields.left_out),
            spots=fields.spots,
        )

    def plates(self, fields: Fields, source: str) -> tuple[Plate, ...]:
        entries = fields.get("plates", ())
        if not all("id" in each for each in entries):
            fields.left_out.append("plates")
        return tuple(self.plate(each, source) for each in entries if "id" in each)

    def held_by(self, fields: Fields) -> HeldBy:
        inner = fields.get("held_by")
        if not inner:
            return HeldBy()
        return HeldBy(**self.with_date(inner, "accessed"))

    def plate(self, fields: Fields, source: str) -> Plate:
        price = fields.get("price")
        return Plate(
            id=fields["id"],
            source=source,
            garment=fields.get("garment", ""),
            mark=self.mark(fields),
            features=self.features(fields),
            locator=Locator(**fields["locator"]) if "locator" in fields else _NOWHERE,
            date=self.date(fields, "date"),
            outfit=fields.get("outfit"),
            wearer=Wearer(**fields["wearer"]) if "wearer" in fields else _ANYONE,
            occasion=fields.get("occasion"),
            caption=fields.get("caption"),
            translation=fields.get("translation"),
            price=Price(**price) if price and "amount" in price else None,
            view=fields.get("view"),
            medium=fields.get("medium"),
            treatment=tuple(fields.get("treatment", ())),
            same_cut_as=fields.get("same_cut_as"),
            image=self.image(fields),
            publish=fields.get("publish", True),
            recorded=self.recorded(fields, "recorded"),
            confirmations=tuple(
                self.confirmation(each) for each in fields.get("confirmations", ()) if "reading" in each
            ),
            note=fields.get("note"),
            left_out=tuple(fields.left_out),
            spots=fields.spots,
        )

    def image(self, fields: Fields) -> Image | None:
        inner = fields.get("image")
        if not inner or "file" not in inner:
            return None
        return Image(mark=self.mark(inner, "file"), **inner)

    def confirmation(self, fields: Fields) -> Confirmation:
        return Confirmation(
            by=fields.get("by", ""),
            reading=fields["reading"],
            mark=self.mark(fields),
            on=self.date(fields, "on"),
            feature=fields.get("feature"),
            instead=fields.get("instead"),
            note=fields.get("note"),
        )

    def features(self, fields: Fields) -> tuple[Feature, ...]:
        entries = fields.get("features")
        if not entries:
            return ()
        return tuple(
            self.feature(each, Mark(self.file, *spot))
            for each, spot in zip(entries, cast(Entries, entries).spots, strict=True)
        )

    def feature(self, entry: str | Fields, mark: Mark) -> Feature:
        if isinstance(entry, str):
            facet, term, state = _split(entry)
            return Feature(facet, term, mark, state)
        rest = {
            key: entry[key] for key in ("reading", "at", "width", "count", "colour", "note") if key in entry
        }
        if "term" in entry:
            facet, term, state = _split(entry["term"])
            return Feature(facet, term, mark, state, **rest)
        return Feature(
            entry.get("facet", ""), None, mark, "none" if "none" in entry else "not visible", **rest
        )

    # --- boards and settings ----------------------------------------------------------------------

    def board(self, fields: Fields) -> Board | None:
        """The board, or None where its target cannot be read: without a target there is no question."""
        target = self.date(fields, "target")
        if target is None:
            return None
        board_id = PurePosixPath(self.file).stem
        entries = fields.get("plates", Entries())
        return Board(
            id=board_id,
            title=fields.get("title", board_id),
            target=target,
            garment=fields.get("garment", ""),
            mark=self.mark(fields),
            wearer=Wearer(**fields.get("wearer", {})),
            place=fields.get("place"),
            features=self.features(fields),
            plates=tuple(
                Gathered(each, Mark(self.file, *spot))
                if isinstance(each, str)
                else Gathered(each["plate"], Mark(self.file, *spot), each.get("reason"), each.get("supports"))
                for each, spot in zip(entries, entries.spots, strict=True)
                if isinstance(each, str) or "plate" in each
            ),
            notes=fields.get("notes"),
            questions=tuple(fields.get("questions", ())),
            departures=tuple(self.departure(each) for each in fields.get("departures", ())),
            worn_under=fields.get("worn_under"),
            measures=fields.get("measures", {}),
            making=tuple(dict(each) for each in fields.get("making", ()) if "kind" in each),
            care=fields.get("care"),
            revisions=tuple(dict(each) for each in fields.get("revisions", ())),
            signed_off=self.recorded(fields, "signed_off"),
            permanent_mark=fields.get("permanent_mark"),
            citation_style=fields.get("citation_style"),
            publish=fields.get("publish", True),
            spots=fields.spots,
        )

    def departure(self, fields: Fields) -> Departure:
        return Departure(
            original=fields.get("original", ""),
            stand_in=fields.get("stand_in", ""),
            reason=fields.get("reason", ""),
            mark=self.mark(fields),
            shows_at=fields.get("shows_at"),
            feature=fields.get("feature"),
        )

    def settings(self, fields: Fields) -> Settings:
        known = dict(fields)
        if "decades" in known:
            first, last = known["decades"]
            if first > last:
                self.problems.append(
                    Problem.error(
                        self.mark(fields, "decades"),
                        "decades ends before it begins.",
                        f"Write [{last}, {first}].",
                    )
                )
                first, last = last, first
            known["decades"] = (first, last)
        if "editors" in known:
            known["editors"] = tuple(known["editors"])
        return Settings(**known)


_NOWHERE, _ANYONE = Locator(), Wearer()
_EDTF = "Write a date such as 1912, 1912-09, 1912-23 (autumn), 1925~ (about) or 1912/1913."
_OF_FEATURE = ("reading", "at", "width", "count", "colour", "note")


def _split(word: str) -> tuple[str, str | None, State]:
    """``neckline/square`` into facet, term and state; ``trim/none`` and ``trim/not visible`` have no term."""
    facet, _, term = word.partition("/")
    if term in ("none", "not visible"):
        return facet, None, cast(State, term)
    return facet, word, "shown"


def _about_date(key: str, text: str, reason: str) -> tuple[str, str]:
    """Message and hint about an unreadable date; what it is in EDTF where the phrase reader knows it."""
    sentence = reason if reason.endswith((".", "?")) else f"{reason}."
    try:
        understood = read_phrase(text) if "for example" in reason else None
    except Unreadable:
        understood = None
    if understood is not None:
        hint = f"For {in_words(understood.span)} write {understood.edtf}."
        return f"{key}: “{text[:60]}” is not an EDTF date.", hint
    return f"{key}: {sentence}", "" if "write" in reason or sentence.endswith("?") else _EDTF
