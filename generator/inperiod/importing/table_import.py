"""A spreadsheet, saved as CSV, into source files: every row is taken, or the report says why not."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any, Literal

from inperiod.importing.composing import Composed, Composer, NotTaken, safe_id
from inperiod.importing.ledger import Fate, Ledger
from inperiod.importing.mapping import ColumnMapping, MappingFault, read_mapping
from inperiod.importing.table import NoTable, Row, Table, read_table
from inperiod.importing.writing import source_yaml
from inperiod.records import read_catalogue
from inperiod.records.checks import check_catalogue
from inperiod.records.model import GRADE_OF_BASIS, Catalogue, Settings, Source
from inperiod.records.problems import Problem, nearest
from inperiod.records.reading import read_source

Outcome = Literal["new", "changed", "same", "kept", "not taken"]


class CannotImport(ValueError):
    """Nothing was imported; the text says why."""


@dataclass(frozen=True, slots=True)
class RowReport:
    """What became of one row. ``plate`` is ``source-id/plate-id``, None for a row not taken.

    ``outcome``: the source file was written first, written anew, was so already, was kept because someone
    edited it, or the row was not taken. ``makes`` is what the plate records, ``reasons`` are why a row
    was not taken; ``remarks`` what was left out or assumed.
    """

    line: int
    outcome: Outcome
    plate: str | None = None
    makes: str = ""
    reasons: tuple[str, ...] = ()
    remarks: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class ImportReport:
    """``left`` are files of an earlier import that the table no longer has; they stay. ``notes`` are about
    the table as a whole, ``complaints`` what the checker says of the files that were or would be
    written."""

    rows: tuple[RowReport, ...]
    files: dict[str, Fate]
    notes: tuple[str, ...] = ()
    left: tuple[str, ...] = ()
    complaints: tuple[Problem, ...] = ()
    dry_run: bool = False

    def count(self, outcome: Outcome) -> int:
        return sum(each.outcome == outcome for each in self.rows)


@dataclass(slots=True)
class _Gathered:
    """The rows of one source, in the order of the table."""

    raw_id: str
    source: dict[str, Any]
    rows: list[tuple[int, Composed]] = field(default_factory=list)


def import_table(file: Path, mapping: Path, into: Path, *, dry_run: bool = False) -> ImportReport:
    """Import a CSV file into the catalogue folder ``into`` by a mapping file.

    A source file is written only where it is new or stands as this import wrote it last; one edited by hand
    is left alone. Every record is read back as the checker reads it before it is written. A dry run writes
    nothing and reports the same. Raises ``CannotImport`` where table, mapping or folder is unusable.
    """
    if not into.is_dir():
        raise CannotImport(f"there is no folder {into}; make one with: inperiod new {into}")
    if not (into / "sources").resolve().is_relative_to(into.resolve()):
        raise CannotImport(f"{into / 'sources'} leads out of the folder.")
    catalogue = read_catalogue(into).catalogue
    try:
        wanted = read_mapping(mapping, catalogue.vocabulary)
        table = read_table(file, wanted.encoding, wanted.delimiter)
    except MappingFault as fault:
        lines = (
            f"{each.file}:{each.line}:{each.column}: {each.message} {each.hint}".rstrip()
            for each in fault.problems
        )
        raise CannotImport("the mapping cannot be used.\n" + "\n".join(lines)) from None
    except NoTable as error:
        raise CannotImport(str(error)) from None
    except OSError as error:
        raise CannotImport(f"{mapping} cannot be read: {error.strerror}.") from None
    _columns_present(table, wanted, file)
    composer = Composer(wanted, catalogue.vocabulary, catalogue.settings.seasons)
    gathered, reports = _gather(table.rows, composer, by_plates=wanted.rows == "plates")
    return _write(gathered, reports, table, catalogue, dry_run)


def _columns_present(table: Table, mapping: ColumnMapping, file: Path) -> None:
    missing = sorted(mapping.columns() - set(table.columns))
    if not missing:
        return
    near = {each: nearest(each, table.columns) for each in missing}
    words = [f"{each}{f' (did you mean {near[each]}?)' if near[each] else ''}" for each in missing]
    raise CannotImport(
        f"the mapping names columns that {file.name} does not have: {', '.join(words)}.\n"
        f"It has: {', '.join(each for each in table.columns if each)}."
    )


def _gather(
    rows: tuple[Row, ...], composer: Composer, *, by_plates: bool
) -> tuple[dict[str, _Gathered], list[RowReport]]:
    """Rows by the id of their source, and reports of those not taken."""
    gathered: dict[str, _Gathered] = {}
    refused: list[RowReport] = []
    for row in rows:
        try:
            if row.fault:
                raise NotTaken(row.fault)
            composed = composer.compose(row.cells)
            home = gathered.setdefault(composed.id, _Gathered(composed.raw_id, composed.source))
            _fits(home, composed, by_plates)
            home.rows.append((row.line, _placed(home, composed, by_plates)))
        except NotTaken as reason:
            refused.append(RowReport(row.line, "not taken", reasons=(str(reason),)))
    return gathered, refused


def _fits(home: _Gathered, composed: Composed, by_plates: bool) -> None:
    if not home.rows:
        return
    line = home.rows[0][0]
    if home.raw_id != composed.raw_id:
        raise NotTaken(f"its id {composed.id} is that of line {line} too, made from “{home.raw_id}”")
    if not by_plates:
        raise NotTaken(
            f"its id {composed.id} is that of line {line} too (if both are one source, set rows: plates)"
        )


def _placed(home: _Gathered, composed: Composed, by_plates: bool) -> Composed:
    """The plate with an id of its own inside the source, and remarks where rows disagree about the source."""
    own = safe_id(str(composed.plate.get("id", "")))
    taken = {str(each.plate["id"]) for _, each in home.rows}
    if own and own in taken:
        raise NotTaken(f"its plate id {own} is used already in {composed.id}")
    number = len(home.rows) + 1
    while not own or own in taken:
        own, number = (f"p{number}" if by_plates else "object"), number + 1
    remarks = list(composed.remarks)
    for name, value in composed.source.items():
        if home.source.setdefault(name, value) != value:
            remarks.append(f"{name} differs from line {home.rows[0][0]}, whose {name} was kept")
    return replace(composed, plate={**composed.plate, "id": own}, remarks=tuple(remarks))


def _write(
    gathered: dict[str, _Gathered],
    refused: list[RowReport],
    table: Table,
    catalogue: Catalogue,
    dry_run: bool,
) -> ImportReport:
    into, settings = catalogue.folder, catalogue.settings
    ledger = Ledger.of(into)
    made: dict[str, Source] = {}
    complaints: list[Problem] = []
    reports = list(refused)
    files: dict[str, Fate] = {}
    for identity, home in gathered.items():
        name = f"sources/{identity}.yaml"
        text = source_yaml({**home.source, "plates": [each.plate for _, each in home.rows]})
        source, problems = read_source(text.encode("utf-8", errors="replace"), name, settings.seasons, {})
        if faults := tuple(each.message.rstrip(".") for each in problems if each.severity == "error"):
            reports += (RowReport(line, "not taken", reasons=faults) for line, _ in home.rows)
            continue
        fate = files[name] = ledger.fate(name, text)
        if fate in ("new", "changed") and not dry_run:
            ledger.write(name, text)
        elif fate == "same":
            ledger.remember(name, text)
        reports += _reports(identity, home, fate)
        if source is not None and fate != "kept":
            made[identity] = source
            complaints += problems
    left = tuple(sorted(name for name in ledger.written if name not in files and (into / name).is_file()))
    if not dry_run:
        ledger.save()
    notes = (*table.notes, *_not_weighed(gathered, settings))
    rows = tuple(sorted(reports, key=lambda each: each.line))
    complaints += _checked(replace(catalogue, sources={**catalogue.sources, **made}), made)
    return ImportReport(rows, files, notes, left, tuple(sorted(set(complaints))), dry_run)


def _checked(catalogue: Catalogue, made: Mapping[str, Source]) -> Iterator[Problem]:
    """What the checker says of the sources that were made, among all the others."""
    for problem in check_catalogue(catalogue):
        if problem.file.removeprefix("sources/").removesuffix(".yaml") in made:
            yield problem


def _not_weighed(gathered: dict[str, _Gathered], settings: Settings) -> Iterator[str]:
    """That dates of these sources are of a grade the settings pass over: nothing would be counted."""
    bases = [home.source.get("date_basis", "") for home in gathered.values() if home.source.get("date")]
    passed = [each for each in bases if GRADE_OF_BASIS.get(each, "-") not in settings.grades]
    if passed:
        named = ", ".join(sorted({each or "no date_basis" for each in passed}))
        yield (
            f"{len(passed)} of {len(bases)} dated sources will not be counted: their dates rest on {named}, "
            f"and the settings weigh grade {settings.grades}. Set grades in inperiod.yaml or ask by --grades."
        )


def _reports(identity: str, home: _Gathered, fate: Fate) -> Iterator[RowReport]:
    for line, composed in home.rows:
        remarks = composed.remarks
        if fate == "kept":
            remarks = (
                *remarks,
                f"sources/{identity}.yaml was edited by hand, or is not from an import: it was left",
            )
        yield RowReport(line, fate, f"{identity}/{composed.plate['id']}", _makes(composed), remarks=remarks)


def _makes(composed: Composed) -> str:
    """The plate in a line: its source's date, its garment, its terms."""
    features = composed.plate.get("features", ())
    terms = [each.get("term") or f"{each['facet']}: none" for each in features]
    date = composed.source.get("date") or "undated"
    return f"{date}, {composed.plate.get('garment', 'no garment')}: {', '.join(terms) or 'no features'}"
