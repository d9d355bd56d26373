"""IIIF manifests of versions 2 and 3 into a source file. The manifests are invented; their shape is that of
the IIIF Presentation API 2.1 and 3.0."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inperiod.importing import CannotImport, import_manifest, new_folder
from inperiod.importing.manifest import text_of
from inperiod.records import read_catalogue

VERSION_2 = {
    "@context": "http://iiif.io/api/presentation/2/context.json",
    "@id": "https://example.org/iiif/77/manifest",
    "@type": "sc:Manifest",
    "label": "Washing Frocks for the Shore",
    "metadata": [
        {"label": "Date", "value": "Autumn and Winter 1912-13"},
        {"label": [{"@value": "Publisher", "@language": "en"}], "value": "Nobody <b>& Daughters</b>"},
    ],
    "attribution": "A reading room",
    "license": "http://rightsstatements.org/vocab/NKC/1.0/",
    "related": {"@id": "https://example.org/objects/77"},
    "sequences": [
        {
            "@type": "sc:Sequence",
            "canvases": [
                {
                    "@id": "https://example.org/iiif/77/c1",
                    "@type": "sc:Canvas",
                    "label": "p. 14",
                    "images": [{"resource": {"@id": "https://example.org/image/14.jpg"}}],
                },
                {"@id": "https://example.org/iiif/77/c2", "@type": "sc:Canvas", "label": "Front cover"},
            ],
        }
    ],
}
VERSION_3 = {
    "@context": "http://iiif.io/api/presentation/3/context.json",
    "id": "https://example.org/iiif/78",
    "type": "Manifest",
    "label": {"fr": ["Robes de plage"], "en": ["Beach frocks"]},
    "metadata": [{"label": {"en": ["Date"]}, "value": {"none": ["ca. 1926"]}}],
    "provider": [{"id": "https://example.org", "type": "Agent", "label": {"en": ["A museum"]}}],
    "rights": "http://creativecommons.org/publicdomain/mark/1.0/",
    "homepage": [{"id": "https://example.org/objects/78", "type": "Text"}],
    "items": [
        {
            "id": "https://example.org/iiif/78/1",
            "type": "Canvas",
            "label": {"none": ["3"]},
            "summary": {"en": ["A frock: “with” bands"]},
            "items": [{"items": [{"body": {"id": "https://example.org/image/3.jpg", "type": "Image"}}]}],
        }
    ],
}


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    new_folder(tmp_path / "research")
    return tmp_path / "research"


def saved(folder: Path, manifest: object) -> Path:
    file = folder.parent / "manifest.json"
    file.write_text(json.dumps(manifest), encoding="utf-8")
    return file


def test_version_2_becomes_a_source_with_a_stub_for_each_canvas(folder: Path) -> None:
    report = import_manifest(saved(folder, VERSION_2), folder)
    reading = read_catalogue(folder)
    assert not [each for each in reading.problems if each.severity == "error"]
    source = reading.catalogue.sources[report.source]
    assert source.title == "Washing Frocks for the Shore"
    assert source.date
    assert source.date.text == "1912-23/1912-24"
    assert source.date_printed == "Autumn and Winter 1912-13"
    assert source.publisher.name == "Nobody & Daughters"
    assert source.held_by.url == "https://example.org/objects/77"
    assert source.rights == "http://rightsstatements.org/vocab/NKC/1.0/"
    first, second = source.plates
    assert (first.id, first.locator.page, first.note) == (
        "c1",
        "14",
        "The picture: https://example.org/image/14.jpg",
    )
    assert (second.locator.page, second.note) == (None, "Front cover")


def test_version_3_likewise(folder: Path) -> None:
    report = import_manifest(saved(folder, VERSION_3), folder)
    source = read_catalogue(folder).catalogue.sources[report.source]
    assert (source.title, report.source) == ("Beach frocks", "beach-frocks")
    assert source.date
    assert source.date.span.approximate
    assert source.held_by.name == "A museum"
    assert source.plates[0].caption == "A frock: “with” bands"


def test_twice_changes_nothing_and_a_hand_edit_stays(folder: Path) -> None:
    file = saved(folder, VERSION_3)
    report = import_manifest(file, folder)
    written = folder / report.file
    assert import_manifest(file, folder).fate == "same"
    written.write_text(written.read_text("utf-8").replace("kind: other", "kind: trade-catalogue"), "utf-8")
    edited = written.read_bytes()
    assert import_manifest(file, folder).fate == "kept"
    assert written.read_bytes() == edited


def test_a_dry_run_writes_nothing(folder: Path) -> None:
    report = import_manifest(saved(folder, VERSION_3), folder, dry_run=True)
    assert report.fate == "new"
    assert not (folder / report.file).exists()


def test_what_could_not_be_taken_is_said(folder: Path) -> None:
    unread = {"label": "Date", "value": "in the days of the old pier"}
    odd = VERSION_3 | {"metadata": [unread], "rights": None}
    remarks = " ".join(import_manifest(saved(folder, odd), folder).remarks)
    assert "in the days of the old pier" in remarks
    assert "no rights statement" in remarks


@pytest.mark.parametrize("wrong", [[], {}, {"type": "Collection"}, "Manifest", None])
def test_what_is_no_manifest_is_refused(folder: Path, wrong: object) -> None:
    with pytest.raises(CannotImport, match="manifest"):
        import_manifest(saved(folder, wrong), folder)


def test_what_is_not_json_is_refused(folder: Path) -> None:
    file = folder.parent / "manifest.json"
    for text in ("{", "", "[" * 100_000):
        file.write_text(text, encoding="utf-8")
        with pytest.raises(CannotImport, match="JSON"):
            import_manifest(file, folder)


ANY_JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | st.text(max_size=20),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.sampled_from(
        ["label", "items", "type", "id", "@id", "body", "value", "en", "none", "@value", "canvases", "images"]
    ), inner, max_size=4),
    max_leaves=20,
)  # fmt: skip


@settings(max_examples=60)
@given(st.dictionaries(st.sampled_from(sorted({*VERSION_2, *VERSION_3})), ANY_JSON, max_size=6))
def test_any_manifest_is_taken_or_refused_in_words(
    tmp_path_factory: pytest.TempPathFactory, manifest: dict[str, object]
) -> None:
    into = tmp_path_factory.mktemp("any")
    (into / "sources").mkdir()
    (into / "inperiod.yaml").write_text("title: Any\n", encoding="utf-8")
    file = into / "manifest.json"
    file.write_text(json.dumps(manifest | {"type": "Manifest"}), encoding="utf-8")
    try:
        report = import_manifest(file, into)
    except CannotImport:
        return
    assert report.source in read_catalogue(into).catalogue.sources
    assert (into / report.file).is_file()


def test_labels_of_both_versions_give_their_words() -> None:
    assert text_of([{"@value": "Frocks", "@language": "en"}, "Robes"]) == "Frocks; Robes"
    assert text_of({"de": ["Kleider"]}) == "Kleider"
    assert text_of(None) == ""
