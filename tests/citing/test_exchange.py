"""Exchange formats read back through other people's readers, awkward text and all."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path

import bibtexparser
import jsonschema
import pytest
import rispy
from bibtexparser.middlewares import LatexDecodingMiddleware
from hypothesis import given
from hypothesis import strategies as st
from pybtex.database import Entry, parse_string
from pylatexenc.latex2text import LatexNodes2Text

from citing.cases import SOURCES
from citing.csl_data import csl_data_schema
from inperiod.citing import FORMATS, export
from inperiod.citing.exchange import indented
from inperiod.records.model import Catalogue, Settings, Source, Vocabulary

AWKWARD_TITLES = [
    'The "Merle" frock & others: 100 % linen, $2.98 #7 _new_',
    "Crêpe à l’Œuvre — Ünderwäsche für Fräulein Žofie",
    "ملابس البحر لصيف ١٩٢٦",
    "Braces { and } and back\\slash ~ caret ^",
    "A very long title " + "of many washing frocks " * 40,
]


def catalogue_of(*sources: Source) -> Catalogue:
    by_id = {source.id: source for source in sources}
    return Catalogue(Path("."), Settings(), Vocabulary({}), by_id, {})


WHOLE = catalogue_of(*SOURCES)
PLATES = list(WHOLE.plates)


def test_an_unknown_plate_or_format_is_refused() -> None:
    with pytest.raises(KeyError):
        export(WHOLE, ["nowhere/p1"], "ris")
    with pytest.raises(KeyError):
        export(WHOLE, [], "cards")


VALUES = st.recursive(
    st.text() | st.integers() | st.booleans(),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(), inner, max_size=3),
)


@given(VALUES)
def test_items_are_laid_out_as_the_usual_writer_of_json_does(value: object) -> None:
    assert indented(value) == json.dumps(value, ensure_ascii=False, indent=2)


def test_nothing_to_export_is_an_empty_list_in_every_format() -> None:
    assert json.loads(export(WHOLE, [], "csl-json")) == []
    assert {export(WHOLE, [], fmt) for fmt in ("bibtex", "biblatex", "ris")} == {""}


def test_csl_json_is_valid_against_the_data_schema() -> None:
    items = json.loads(export(WHOLE, [*PLATES, *WHOLE.sources], "csl-json"))
    jsonschema.Draft7Validator(csl_data_schema()).validate(items)
    assert len(items) == 2 * len(SOURCES)


def test_the_data_schema_refuses_what_csl_does_not_know() -> None:
    validator = jsonschema.Draft7Validator(csl_data_schema())
    for wrong in ([{"id": "a", "type": "frock"}], [{"id": "a", "type": "book", "neckline": "v"}]):
        assert not validator.is_valid(wrong)


def test_csl_json_keeps_the_edtf_date_whole() -> None:
    items = json.loads(export(WHOLE, ["catalogue-season", "catalogue-before"], "csl-json"))
    assert [item["custom"]["edtf"] for item in items] == ["1926-23", "../1907"]


@pytest.mark.parametrize("title", AWKWARD_TITLES)
def test_awkward_titles_survive_every_format(title: str) -> None:
    one = catalogue_of(replace(SOURCES[0], title=title))
    words = " ".join(title.split())
    assert json.loads(export(one, ["catalogue"], "csl-json"))[0]["title"] == title
    assert rispy.loads(export(one, ["catalogue"], "ris"))[0]["title"] == words
    for fmt in ("bibtex", "biblatex"):
        assert read_by_bibtexparser(export(one, ["catalogue"], fmt))[0]["title"] == words
        assert from_latex(read_by_pybtex(export(one, ["catalogue"], fmt))[0].fields["title"]) == words


@given(st.text(st.characters(codec="utf-8", exclude_categories=("C", "Z")), min_size=1, max_size=60))
def test_any_title_leaves_the_formats_readable(title: str) -> None:
    pair = catalogue_of(replace(SOURCES[0], title=title), SOURCES[1])
    assert len(read_by_bibtexparser(export(pair, pair.sources, "biblatex"))) == 2
    assert len(read_by_pybtex(export(pair, pair.sources, "bibtex"))) == 2
    assert len(rispy.loads(export(pair, pair.sources, "ris"))) == 2


def test_bibtex_and_biblatex_read_back_with_every_entry() -> None:
    for fmt in ("bibtex", "biblatex"):
        text = export(WHOLE, PLATES, fmt)
        assert len(read_by_bibtexparser(text)) == len(PLATES)
        assert len(read_by_pybtex(text)) == len(PLATES)


def test_biblatex_keeps_the_edtf_date_and_bibtex_notes_what_it_cannot_hold() -> None:
    assert read_by_bibtexparser(export(WHOLE, ["catalogue-season"], "biblatex"))[0]["date"] == "1926-23"
    note = read_by_bibtexparser(export(WHOLE, ["catalogue-season"], "bibtex"))[0]["note"]
    assert note == "EDTF date 1926-23"
    assert "note" not in read_by_bibtexparser(export(WHOLE, ["catalogue"], "bibtex"))[0]


def test_people_are_cut_into_names_and_firms_are_not() -> None:
    entry = read_by_pybtex(export(WHOLE, ["manual-two"], "biblatex"))[0]
    assert [person.last_names for person in entry.persons["author"]] == [["Quillfeather"], ["Pellow"]]
    firm = read_by_pybtex(export(WHOLE, ["catalogue-corporate"], "biblatex"))[0].persons["author"]
    assert [str(person) for person in firm] == ["{Hollin \\& Wray Limited}"]


def test_ris_reads_back_with_every_entry_and_its_date_whole() -> None:
    records = rispy.loads(export(WHOLE, PLATES, "ris"))
    assert len(records) == len(PLATES)
    by_id = {record["id"]: record for record in records}
    assert by_id["catalogue-season/p1"]["date"] == "1926///1926-23"
    assert by_id["magazine/p1"]["date"] == "1926/06/12/1926-06-12"
    assert by_id["catalogue-figure/p1"]["notes"] == ["fig. 3, no. 2207"]
    assert by_id["extant/p1"]["accession_number"] == "1977.3.2"


def test_every_format_says_page_and_figure() -> None:
    for fmt in FORMATS:
        text = export(WHOLE, ["catalogue-figure/p1"], fmt)
        assert "14" in text, fmt
        assert "fig. 3" in text, fmt


def read_by_bibtexparser(text: str) -> list[dict[str, str]]:
    library = bibtexparser.parse_string(braces_known(text), append_middleware=[LatexDecodingMiddleware()])
    assert not library.failed_blocks
    return [{field.key: field.value for field in entry.fields} for entry in library.entries]


def read_by_pybtex(text: str) -> list[Entry]:
    return list(parse_string(text, "bibtex").entries.values())


def from_latex(text: str) -> str:
    return LatexNodes2Text().latex_to_text(braces_known(text))


def braces_known(text: str) -> str:
    """LaTeX's words for text braces and circumflex (LaTeX font guide) in a form that pylatexenc knows."""
    words = {r"\textbraceleft{}": r"\lbrace{}", r"\textbraceright{}": r"\rbrace{}"}
    for ours, theirs in (words | {r"\textasciicircum{}": "^"}).items():
        text = text.replace(ours, theirs)
    return text
