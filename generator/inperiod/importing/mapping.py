"""A mapping file: which column of a table is which field of a source or plate."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from inperiod.dating import Unreadable, read_edtf
from inperiod.importing.words import Words, words
from inperiod.importing.writing import PLATE_ORDER, SOURCE_ORDER
from inperiod.records.model import Mark, Vocabulary
from inperiod.records.problems import Problem, nearest
from inperiod.records.shapes import shape_of
from inperiod.records.shaping import Fields, shape
from inperiod.records.yaml_reading import read_yaml

UNDATED = "undated"
_COLUMN = re.compile(r"\{([^{}]*)\}")
_PLATE_FIELDS = tuple(each for each in PLATE_ORDER if each not in ("garment", "features"))
_SOURCE_FIELDS = tuple(each for each in SOURCE_ORDER if each != "plates")


class MappingFault(ValueError):
    """The mapping cannot be used; ``problems`` say where and why."""

    def __init__(self, problems: Sequence[Problem]) -> None:
        super().__init__("; ".join(f"{each.line}:{each.column} {each.message}" for each in problems))
        self.problems = tuple(sorted(problems))


@dataclass(frozen=True, slots=True)
class Rule:
    """Words that stand for a garment or a term; ``details`` are further fields of the feature."""

    words: Words
    gives: str
    details: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class ByWords:
    """Rules over the text of some columns. A garment takes the first that fits, features take all."""

    columns: tuple[str, ...]
    rules: tuple[Rule, ...]
    otherwise: str | None = None


@dataclass(frozen=True, slots=True)
class ByName:
    """A column that holds names of terms of one facet (or of any), separated by ``split``."""

    column: str
    facet: str | None = None
    split: str = ";"
    reading: str = "read"


@dataclass(frozen=True, slots=True)
class LeaveOut:
    columns: tuple[str, ...]
    words: Words
    because: str


@dataclass(frozen=True, slots=True)
class ColumnMapping:
    """A whole mapping. ``source`` and ``plate`` hold texts with columns in braces, and tables of them."""

    id: str
    source: Mapping[str, Any]
    plate: Mapping[str, Any] = field(default_factory=dict)
    garment: str | ByWords = "other"
    features: tuple[ByWords | ByName, ...] = ()
    dates: Mapping[str, str] = field(default_factory=dict)
    leave_out: tuple[LeaveOut, ...] = ()
    rows: str = "sources"
    encoding: str | None = None
    delimiter: str | None = None

    def columns(self) -> set[str]:
        """Every column that the mapping names."""
        named = {*columns_in(self.id), *columns_in(self.source), *columns_in(self.plate)}
        parts = (self.garment, *self.features, *self.leave_out)
        for part in parts:
            if isinstance(part, str):
                named |= columns_in(part)
            else:
                named |= {part.column} if isinstance(part, ByName) else set(part.columns)
        return named


def columns_in(template: Any) -> set[str]:
    """Columns that a text, or the texts of a table or list, names in braces."""
    if isinstance(template, Mapping):
        return {name for each in template.values() for name in columns_in(each)}
    if isinstance(template, list | tuple):
        return {name for each in template for name in columns_in(each)}
    return set(_COLUMN.findall(template)) if isinstance(template, str) else set()


def filled(template: str, cells: Mapping[str, str]) -> str | None:
    """The text with its columns filled in; None where it names columns and all of those are empty.

    Where some are empty, the marks that would have stood between them are taken off both ends.
    """
    names = _COLUMN.findall(template)
    if names and not any(cells.get(name) for name in names):
        return None
    text = _COLUMN.sub(lambda found: cells.get(found[1], ""), template)
    return text if all(cells.get(name) for name in names) else text.strip(" ,;:·–-/")


def read_mapping(path: Path, vocabulary: Vocabulary) -> ColumnMapping:
    """Read a mapping file and hold it against the vocabulary. Raises ``MappingFault``, ``OSError``."""
    document = read_yaml(path.read_bytes(), path.name)
    problems = list(document.problems)
    if document.root is None:
        raise MappingFault(problems or [Problem.error(Mark(path.name), "This file is empty.")])
    fields, faults = shape(document.root, shape_of("mapping"), path.name)
    problems += faults
    if fields is not None:
        problems += _Checker(path.name, vocabulary).problems(fields)
    if errors := [each for each in problems if each.severity == "error"]:
        raise MappingFault(errors)
    assert fields is not None
    return _mapping(fields)


def _mapping(fields: Fields) -> ColumnMapping:
    garment = fields.get("garment", "other")
    if isinstance(garment, Fields):
        rules = tuple(_rule(each, each["garment"], {}) for each in garment["rules"])
        garment = ByWords(tuple(garment["read"]), rules, garment.get("otherwise"))
    return ColumnMapping(
        id=fields["id"],
        source=fields["source"],
        plate=fields.get("plate", {}),
        garment=garment,
        features=tuple(_features(each) for each in fields.get("features", ())),
        dates={str(phrase): str(meaning) for phrase, meaning in fields.get("dates", {}).items()},
        leave_out=tuple(
            LeaveOut(tuple(each["read"]), words(each["words"]), each["because"])
            for each in fields.get("leave_out", ())
        ),
        rows=fields.get("rows", "sources"),
        encoding=fields.get("encoding"),
        delimiter={"tab": "\t"}.get(fields.get("delimiter", ""), fields.get("delimiter")),
    )


def _features(entry: Fields) -> ByWords | ByName:
    reading = entry.get("reading", "read")
    if "column" in entry:
        return ByName(entry["column"], entry.get("facet"), entry.get("split", ";"), reading)
    return ByWords(
        tuple(entry["read"]),
        tuple(_rule(each, each["term"], {"reading": reading}) for each in entry["rules"]),
    )


def _rule(entry: Fields, gives: str, details: Mapping[str, str]) -> Rule:
    own = {name: entry[name] for name in ("reading", "at", "note") if name in entry}
    return Rule(words(entry["words"], entry.get("unless", ())), gives, {**details, **own})


@dataclass(frozen=True, slots=True)
class _Checker:
    """What a schema cannot say: the names of fields, garments and terms, and dates."""

    file: str
    vocabulary: Vocabulary

    def problems(self, fields: Fields) -> Iterator[Problem]:
        yield from self.names(fields, "source", _SOURCE_FIELDS)
        yield from self.names(fields, "plate", _PLATE_FIELDS)
        garment = fields.get("garment")
        if isinstance(garment, Fields):
            for rule in garment.get("rules", ()):
                yield from self.word(rule, "garment", self.vocabulary.garments)
            if "otherwise" in garment:
                yield from self.word(garment, "otherwise", self.vocabulary.garments)
        for entry in fields.get("features", ()):
            yield from self.feature(entry)
        for phrase, meaning in fields.get("dates", {}).items():
            if meaning != UNDATED and not _readable(str(meaning)):
                message = f"dates: “{meaning}”, given for “{phrase}”, is no date in EDTF form."
                yield Problem.error(self.at(fields, "dates"), message, "Write EDTF, or the word undated.")

    def feature(self, entry: Fields) -> Iterator[Problem]:
        if ("column" in entry) == ("read" in entry) or ("read" in entry) != ("rules" in entry):
            message = "An entry of features is not complete or says two things at once."
            hint = "Give column (and facet), or else read and rules."
            yield Problem.error(Mark(self.file, entry.line, entry.column), message, hint)
            return
        if "facet" in entry:
            yield from self.word(entry, "facet", self.vocabulary.facets)
        for rule in entry.get("rules", ()):
            yield from self.word(rule, "term", self.vocabulary.terms)

    def word(self, entry: Fields, name: str, known: Mapping[str, Any]) -> Iterator[Problem]:
        if name not in entry:
            yield Problem.error(
                Mark(self.file, entry.line, entry.column), f"A rule here must have the field {name}."
            )
        elif entry[name] not in known:
            near = nearest(entry[name], known)
            message = f"{name}: “{entry[name]}” is not in the vocabulary."
            yield Problem.error(self.at(entry, name), message, f"Did you mean {near}?" if near else "")

    def names(self, fields: Fields, part: str, known: Sequence[str]) -> Iterator[Problem]:
        for name in fields.get(part, {}):
            if name not in known:
                near = nearest(name, known)
                message = f"“{name}” is not a field of a {part} that a mapping can fill."
                hint = f"Did you mean {near}?" if near else f"There are: {', '.join(known)}."
                yield Problem.error(self.at(fields, part), message, hint)

    def at(self, fields: Fields, name: str) -> Mark:
        return Mark(self.file, *fields.spots.get(name, (fields.line, fields.column)))


def _readable(text: str) -> bool:
    try:
        read_edtf(text)
    except Unreadable:
        return False
    return True
