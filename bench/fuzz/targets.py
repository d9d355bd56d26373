"""What is tried in Python: the reader, dates, phrases, tables, manifests, the layout of files, answers."""

from __future__ import annotations

import json
import re
import shutil
import tempfile
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from dataclasses import replace
from pathlib import Path
from typing import Any

import yaml
from bench.fuzz import words
from bench.fuzz.loop import InPython

from inperiod.citing import STYLES, cite, cite_source, export
from inperiod.dating import Unreadable, in_words, read_edtf, read_phrase, when_json, widened
from inperiod.evidence import Question, Window, answer, as_json, gather_facts
from inperiod.importing import CannotImport, import_manifest, import_table
from inperiod.records import Problem, read_catalogue
from inperiod.records.checks import check_catalogue
from inperiod.records.model import Catalogue, Source
from inperiod.records.reading import read_board, read_facet, read_settings, read_source
from inperiod.records.tidying import tidy
from inperiod.records.yaml_reading import read_yaml

KINDS = {
    "source": lambda data: read_source(data, "sources/a.yaml", "northern", {}),
    "board": lambda data: read_board(data, "boards/a.yaml", "northern", {}),
    "facet": lambda data: read_facet(data, "vocabulary/a.yaml", "southern", {}),
    "settings": read_settings,
}

# --- the reader ---------------------------------------------------------------------------------------


def places(problems: list[Problem], data: bytes) -> None:
    """Every complaint is a sentence, points into the file and can be printed."""
    lines = 1 + data.replace(b"\r\n", b"\n").replace(b"\r", b"\n").count(b"\n")
    for each in problems:
        assert 1 <= each.line <= lines, f"line {each.line} of {lines}: {each.message}"
        assert each.column >= 1, each
        assert each.message.endswith((".", "?", "…")), each.message
        assert "\n" not in each.message + each.hint, each.message
        (each.message + each.hint).encode("utf-8")


def reader(whole: Catalogue) -> Callable[[bytes], None]:
    """Whatever the bytes: read or complained of, and what was read is checked against a whole catalogue."""

    def check(data: bytes) -> None:
        for read in KINDS.values():
            record, problems = read(data)
            places(problems, data)
            if isinstance(record, Source):
                among = replace(whole, sources={**whole.sources, "a": record})
                places([each for each in check_catalogue(among) if each.file == "sources/a.yaml"], data)

    return check


def answers(whole: Catalogue) -> Callable[[bytes], None]:
    """What was read can be weighed and cited in every style and format, and told as JSON."""

    def check(data: bytes) -> None:
        record, _ = KINDS["source"](data)
        if record is None:
            return
        plates = {each.id: each for each in record.plates if each.garment in whole.vocabulary.garments}
        record = replace(record, plates=tuple(plates.values()))
        catalogue = replace(whole, sources={**whole.sources, "a": record})
        question = Question("dress", ("neckline/square",), Window(690_000, 702_000), grades="ABC")
        json.dumps(as_json(answer(gather_facts(catalogue), question)), allow_nan=False)
        keys = ["a", *(each.key for each in record.plates[:2])]
        for style in STYLES:
            for form in ("text", "html"):
                assert "<script" not in cite_source(catalogue, "a", style, form).lower() or form == "text"
                for key in keys[1:]:
                    cite(catalogue, key, style, form)
        for fmt in ("csl-json", "bibtex", "biblatex", "ris"):
            export(catalogue, keys, fmt).encode("utf-8")

    return check


# --- dates --------------------------------------------------------------------------------------------


def _text(data: bytes) -> str:
    return data.decode("utf-8", "surrogateescape")


def told(refused: Exception) -> None:
    """A refusal says why."""
    if not str(refused).strip():
        raise AssertionError("refused without a word") from refused


def sound(span: Any) -> None:
    """A span does not end before it begins, and widening it never makes it narrower."""
    wide = widened(span, 5)
    for each in (span, wide):
        if each.earliest is not None and each.latest is not None:
            assert each.earliest <= each.latest, each
    assert (wide.earliest is None) == (span.earliest is None), (span, wide)
    assert span.earliest is None or wide.earliest <= span.earliest, (span, wide)
    assert span.latest is None or wide.latest >= span.latest, (span, wide)
    in_words(span)


def dates(data: bytes) -> None:
    for seasons in ("northern", "southern"):
        try:
            sound(read_edtf(_text(data), seasons))
        except Unreadable as refused:
            told(refused)


def phrases(data: bytes) -> None:
    """What is understood is EDTF that means the same; the answer for programs can always be told."""
    text = _text(data)
    json.dumps(when_json(text), allow_nan=False)
    try:
        understood = read_phrase(text)
    except Unreadable as refused:
        told(refused)
        return
    sound(understood.span)
    assert read_edtf(understood.edtf) == understood.span, understood
    assert understood.words, understood


# --- layout -------------------------------------------------------------------------------------------


class _Strings(getattr(yaml, "CSafeLoader", yaml.SafeLoader)):  # type: ignore[misc]
    """PyYAML's own loader, every plain value taken as text: what tidying must not change."""

    yaml_implicit_resolvers: dict[str, Any] = {}  # noqa: RUF012


def comments(data: bytes) -> list[str]:
    """What follows a number sign, wherever one stands after a blank: comments, and parts of text alike."""
    return re.findall(r"(?:^|[ \t])(#[^\r\n]*)", data.decode("utf-8-sig"), re.MULTILINE)


def layout(data: bytes) -> None:
    """Tidying changes no meaning by another reader's judgement, loses no comment, and is done at once."""
    after = tidy(data)
    if after == data:
        return
    assert tidy(after) == after, f"not tidy yet: {after[:200]!r}"
    with suppress(yaml.YAMLError):  # it takes no anchor twice, which the specification allows
        assert yaml.load(data, _Strings) == yaml.load(after, _Strings), after
    kept = [[" ".join(each.split()) for each in comments(one)] for one in (data, after)]
    assert kept[0] == kept[1], kept
    assert b"\t" in data or b"\r" in data or after.count(b"\n") <= data.count(b"\n") + 1, after


# --- import -------------------------------------------------------------------------------------------


class Importing:
    """Import into a small catalogue of its own, nothing written."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.catalogue = folder / "catalogue"
        shutil.copytree(words.WHOLE, self.catalogue)
        shutil.rmtree(self.catalogue / "sources")
        self.mapping, self.table, self.manifest = (folder / each for each in ("m.yaml", "t.csv", "m.json"))

    def tables(self, data: bytes) -> None:
        """A mutated table by a sound mapping."""
        self.mapping.write_text(words.MAPPING, encoding="utf-8")
        self.table.write_bytes(data)
        self.taken()

    def mappings(self, data: bytes) -> None:
        """A sound table by a mutated mapping."""
        self.table.write_text(words.TABLE, encoding="utf-8")
        self.mapping.write_bytes(data)
        self.taken()

    def taken(self) -> None:
        try:
            report = import_table(self.table, self.mapping, self.catalogue, dry_run=True)
        except CannotImport as refused:
            told(refused)
            return
        for row in report.rows:
            assert row.outcome != "not taken" or row.reasons, row
            json.dumps([row.reasons, row.remarks], ensure_ascii=False).encode("utf-8")
        assert all(re.fullmatch(r"sources/[a-z0-9]+(-[a-z0-9]+)*\.yaml", each) for each in report.files), (
            report.files
        )
        assert not (self.catalogue / "sources").exists()

    def manifests(self, data: bytes) -> None:
        self.manifest.write_bytes(data)
        try:
            report = import_manifest(self.manifest, self.catalogue, dry_run=False)
        except CannotImport as refused:
            told(refused)
            return
        made = self.catalogue / report.file
        _, problems = read_source(made.read_bytes(), report.file, "northern", {})
        shutil.rmtree(made.parent)
        (self.catalogue / ".inperiod-import.json").unlink()
        assert not [each for each in problems if each.severity == "error"], problems


# --- all of them --------------------------------------------------------------------------------------


@contextmanager
def python_targets() -> Iterator[dict[str, InPython]]:
    """Every target by its name; import works in a folder that lasts as long as the context."""
    whole = read_catalogue(words.WHOLE).catalogue
    tables = [words.TABLE.encode(), words.TABLE.replace(",", ";").encode("utf-16")]
    with tempfile.TemporaryDirectory(prefix="fuzz-") as folder:
        importing = Importing(Path(folder))
        all_of_them = (
            InPython("reader", reader(whole), words.yaml_files(), words.YAML_WORDS),
            InPython("answers", answers(whole), words.source_files(), words.YAML_WORDS),
            InPython("dates", dates, words.EDTF, words.EDTF_WORDS),
            InPython("phrases", phrases, words.PHRASES, words.PHRASE_WORDS),
            InPython("layout", layout, words.yaml_files(), words.YAML_WORDS),
            InPython("tables", importing.tables, tables, words.TABLE_WORDS),
            InPython("mappings", importing.mappings, [words.MAPPING.encode()], words.MAPPING_WORDS),
            InPython("manifests", importing.manifests, words.MANIFESTS, words.JSON_WORDS),
        )
        yield {each.name: each for each in all_of_them}


def is_sound(data: bytes) -> bool:
    """Whether the catalogue's own reader takes a text without an error."""
    document = read_yaml(data, "")
    return document.root is not None and not any(each.severity == "error" for each in document.problems)
