"""One row of a table into a source and a plate, by a mapping, with all that could not be taken along."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from inperiod.dating import Seasons, Undated, Unreadable, read_edtf, read_phrase
from inperiod.importing.mapping import UNDATED, ByName, ByWords, ColumnMapping, Rule, filled
from inperiod.importing.writing import DATE_FIELDS
from inperiod.records.finding import NotFound, find_feature, find_garment
from inperiod.records.model import Vocabulary

_LONG_TEXTS = frozenset({"caption", "translation", "note", "date_note"})
LONGEST_ID = 80


class NotTaken(Exception):
    """The row cannot become a record; the text says why, as the end of a sentence about the row."""


@dataclass(frozen=True, slots=True)
class Composed:
    """A row as records. ``raw_id`` is the id before it was made safe; ``remarks`` are sentences."""

    id: str
    raw_id: str
    source: dict[str, Any]
    plate: dict[str, Any]
    remarks: tuple[str, ...]


def safe_id(text: str) -> str:
    """Small letters a–z, digits and single hyphens, at most 80 characters; empty where nothing is left."""
    bare = unicodedata.normalize("NFKD", text.casefold())
    kept = re.sub(r"[^a-z0-9]+", "-", "".join(each for each in bare if not unicodedata.combining(each)))
    return kept.strip("-")[:LONGEST_ID].strip("-")


@dataclass(slots=True)
class Composer:
    """Turns rows into records; holds what is the same for every row."""

    mapping: ColumnMapping
    vocabulary: Vocabulary
    seasons: Seasons = "northern"
    _remarks: list[str] = field(default_factory=list)

    def compose(self, cells: Mapping[str, str]) -> Composed:
        """Raises ``NotTaken`` with the reason where the row cannot be taken."""
        self._remarks = []
        for each in self.mapping.leave_out:
            if any(each.words.found_in(cells.get(column, "")) for column in each.columns):
                raise NotTaken(f"the mapping leaves it out: {each.because}")
        raw_id = filled(self.mapping.id, cells) or ""
        identity = safe_id(raw_id)
        if not identity or not any(cells.get(each) for each in _columns_of_id(self.mapping)):
            raise NotTaken("it has nothing to make an id from")
        source = self._fields(self.mapping.source, cells)
        plate = self._fields(self.mapping.plate, cells)
        plate["garment"] = self._garment(cells)
        features = self._features(cells, plate["garment"])
        if features:
            plate["features"] = features
        return Composed(identity, raw_id, source, plate, tuple(self._remarks))

    def _fields(self, templates: Mapping[str, Any], cells: Mapping[str, str]) -> dict[str, Any]:
        made: dict[str, Any] = {}
        for name, template in templates.items():
            value = self._value(name, template, cells)
            if value in (None, "", {}, []):
                continue
            if name in DATE_FIELDS and isinstance(value, str):
                self._date(made, name, value)
            else:
                made[name] = value
        return made

    def _value(self, name: str, template: Any, cells: Mapping[str, str]) -> Any:
        if isinstance(template, Mapping):
            return self._fields(template, cells)
        if isinstance(template, list):
            return [
                made for each in template if (made := self._value(name, each, cells)) not in (None, "", {})
            ]
        if not isinstance(template, str):
            return template
        text = filled(template, cells)
        if text is None or name in _LONG_TEXTS:
            return text
        return " ".join(text.split())

    def _date(self, made: dict[str, Any], name: str, phrase: str) -> None:
        """The date in EDTF, and beside a source's own date the words it was read from."""
        edtf = self._edtf(name, phrase)
        if edtf is None:
            self._remarks.append(f"undated: the table says “{phrase}”")
        else:
            made[name] = edtf
        if name == "date" and edtf != phrase:
            made["date_printed"] = phrase

    def _edtf(self, name: str, phrase: str) -> str | None:
        """By the mapping, as typed where it is EDTF already, else as the reader of phrases understands it."""
        meant = self.mapping.dates.get(phrase)
        if meant is not None:
            return None if meant == UNDATED else meant
        try:
            read_edtf(phrase, self.seasons)
            return phrase
        except Unreadable:
            pass
        try:
            return read_phrase(phrase, self.seasons).edtf
        except Undated:
            return None
        except Unreadable as error:
            raise NotTaken(f"the {name} “{phrase}” cannot be read: {error}") from None

    def _garment(self, cells: Mapping[str, str]) -> str:
        wanted = self.mapping.garment
        if isinstance(wanted, ByWords):
            text = _joined(wanted.columns, cells)
            found = next((rule.gives for rule in wanted.rules if rule.words.found_in(text)), wanted.otherwise)
            if found is None:
                raise NotTaken(f"no rule says what garment “{text}” is")
            return found
        name = filled(wanted, cells)
        if not name:
            raise NotTaken("it does not say what garment it is")
        try:
            return find_garment(self.vocabulary, name)
        except NotFound as error:
            raise NotTaken(f"its garment is not known: {error}") from None

    def _features(self, cells: Mapping[str, str], garment: str) -> list[dict[str, str]]:
        found: dict[str, dict[str, str]] = {}
        for part in self.mapping.features:
            for feature in (
                self._named(part, cells, garment) if isinstance(part, ByName) else _read(part, cells)
            ):
                found.setdefault(feature["term"], feature)
        kept: dict[str, dict[str, str]] = {}
        for key, feature in found.items():
            term = self.vocabulary.terms[key]
            rivals = [each for each in kept if each.startswith(f"{term.facet}/")]
            if not self.vocabulary.applies(term, garment):
                self._remarks.append(f"{key} was left out: it does not apply to {garment}")
            elif rivals and self.vocabulary.facets[term.facet].exclusive:
                self._remarks.append(f"{key} was left out: {rivals[0]} is there and only one can be")
            else:
                kept[key] = feature
        return list(kept.values())

    def _named(self, part: ByName, cells: Mapping[str, str], garment: str) -> list[dict[str, str]]:
        features = []
        for name in cells.get(part.column, "").split(part.split):
            if not name.strip():
                continue
            wanted = name.strip() if "/" in name or not part.facet else f"{part.facet}/{name.strip()}"
            try:
                features.append(
                    {"term": find_feature(self.vocabulary, wanted, garment), "reading": part.reading}
                )
            except NotFound as error:
                self._remarks.append(
                    f"“{name.strip()}” in {part.column} was left out: {str(error).rstrip('.')}"
                )
        return features


def _columns_of_id(mapping: ColumnMapping) -> list[str]:
    return re.findall(r"\{([^{}]*)\}", mapping.id)


def _read(part: ByWords, cells: Mapping[str, str]) -> list[dict[str, str]]:
    text = _joined(part.columns, cells)
    return [_feature(rule) for rule in part.rules if rule.words.found_in(text)]


def _feature(rule: Rule) -> dict[str, str]:
    return {"term": rule.gives, **rule.details}


def _joined(columns: tuple[str, ...], cells: Mapping[str, str]) -> str:
    """The texts of several columns; a bar keeps words of one from making a phrase with words of the next."""
    return " | ".join(cells[each] for each in columns if each in cells)
