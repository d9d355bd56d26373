"""A CSV file into rows of text, whichever program saved it. Nothing in a cell is ever computed."""

from __future__ import annotations

import codecs
import csv
import io
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

MAX_BYTES = 100_000_000
DELIMITERS = {",": "commas", ";": "semicolons", "\t": "tabs", "|": "upright strokes"}


class NoTable(ValueError):
    """The file cannot be read as a table; the text says why and what to do."""


@dataclass(frozen=True, slots=True)
class Row:
    """``line``: where the row begins in the file, from 1. ``fault``: why its cells cannot be trusted."""

    line: int
    cells: Mapping[str, str]
    fault: str | None = None


@dataclass(frozen=True, slots=True)
class Table:
    """``notes`` say what was assumed about the file."""

    columns: tuple[str, ...]
    rows: tuple[Row, ...]
    notes: tuple[str, ...] = ()


def read_table(path: Path, encoding: str | None = None, delimiter: str | None = None) -> Table:
    """Read a CSV file: UTF-8 with or without a mark, UTF-16 with one, else Windows-1252, which is noted.

    The delimiter is the one that the first line holds most of. Cells lose the spaces around them; rows with
    nothing in them are passed over. Raises ``NoTable``.
    """
    try:
        data = path.read_bytes()
    except OSError as error:
        raise NoTable(f"{path} cannot be read: {error.strerror}.") from None
    if len(data) > MAX_BYTES:
        raise NoTable(f"{path} is larger than {MAX_BYTES // 1_000_000} MB: split it.")
    if data.startswith((b"PK\x03\x04", b"\xd0\xcf\x11\xe0")):
        raise NoTable(f"{path} is a spreadsheet file, not CSV: open it and save it as CSV (UTF-8).")
    text, notes = _decoded(data, path, encoding)
    if "\0" in text:
        raise NoTable(f"{path} holds NUL characters, so it is not text: save it as CSV (UTF-8).")
    if delimiter is None:
        delimiter, more = _delimiter(text)
        notes += more
    return _parsed(text, delimiter, path, tuple(notes))


def _decoded(data: bytes, path: Path, encoding: str | None) -> tuple[str, list[str]]:
    if encoding is not None:
        try:
            return data.decode(encoding).removeprefix("\ufeff"), []
        except LookupError:
            raise NoTable(f"{encoding} is not an encoding that Python knows: try utf-8 or cp1252.") from None
        except UnicodeDecodeError as error:
            line = data.count(b"\n", 0, error.start) + 1
            raise NoTable(
                f"{path} is not in {encoding}: byte 0x{data[error.start]:02X} on line {line}."
            ) from None
    if data.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)):
        try:
            return data.decode("utf-16"), ["The file is UTF-16; it was read as that."]
        except UnicodeDecodeError:
            raise NoTable(f"{path} says it is UTF-16 and is not: save it as CSV (UTF-8).") from None
    try:
        return data.decode("utf-8-sig"), []
    except UnicodeDecodeError as error:
        line = data.count(b"\n", 0, error.start) + 1
        note = (
            f"The file is not UTF-8 (byte 0x{data[error.start]:02X} on line {line}); it was read as "
            "Windows-1252. If accented letters look wrong, save it as CSV (UTF-8) and import that."
        )
        return data.decode("cp1252", errors="replace"), [note]


def _delimiter(text: str) -> tuple[str, list[str]]:
    first = text.partition("\n")[0]
    outside = "".join(first.split('"')[::2])
    counts = {each: outside.count(each) for each in DELIMITERS}
    best = max(counts, key=lambda each: counts[each])
    if not counts[best] or best == ",":
        return ",", []
    return best, [f"The columns are separated by {DELIMITERS[best]}; they were read so."]


def _parsed(text: str, delimiter: str, path: Path, notes: tuple[str, ...]) -> Table:
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=delimiter)
    try:
        header = next((cells for cells in reader if any(each.strip() for each in cells)), None)
        if header is None:
            raise NoTable(f"{path} is empty: the first line must hold the names of the columns.")
        columns = _columns(header, path)
        rows = []
        last = reader.line_num
        for cells in reader:
            line, last = last + 1, reader.line_num
            if any(each.strip() for each in cells):
                rows.append(_row(line, columns, cells))
    except csv.Error as error:
        raise NoTable(f"{path} cannot be read as CSV near line {reader.line_num}: {error}.") from None
    return Table(columns, tuple(rows), notes)


def _columns(header: list[str], path: Path) -> tuple[str, ...]:
    columns = [each.strip() for each in header]
    while columns and not columns[-1]:
        columns.pop()
    twice = sorted({each for each in columns if each and columns.count(each) > 1})
    if twice:
        raise NoTable(f"{path} has more than one column called {', '.join(twice)}: rename one.")
    return tuple(columns)


def _row(line: int, columns: tuple[str, ...], cells: list[str]) -> Row:
    values = [each.strip() for each in cells]
    fault = None
    if any(values[len(columns) :]):
        fault = (
            f"it has {len(cells)} cells and the table {len(columns)} columns, so its cells may have slipped; "
            "a cell with a delimiter in it must stand in quotation marks"
        )
    padded = values[: len(columns)] + [""] * (len(columns) - len(values))
    return Row(line, {name: value for name, value in zip(columns, padded, strict=True) if name}, fault)
