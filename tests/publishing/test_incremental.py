"""A build that makes only what has changed comes to the same bytes as one that makes everything."""

from __future__ import annotations

import os
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from inperiod.publishing import browser_data, build
from inperiod.records import read_catalogue
from inperiod.records.keeping import read_kept
from publishing.pages import contents

WHOLE = Path(__file__).parents[1] / "records" / "whole"
SOURCE = """\
title: {title}
kind: {kind}
date: {date}
date_basis: {basis}
publisher: {{name: Marl & Wend, place: {place}}}
rights: http://rightsstatements.org/vocab/NKC/1.0/
{more}plates:
"""
PLATE = """\
  - id: {id}
    locator: {{page: {page}}}
    garment: {garment}
    caption: "{caption}"
    features: [{features}]
{more}"""
VOCABULARY = {
    "garment": (
        ("dress", ""),
        ("day-dress", "broader: dress"),
        ("evening-dress", "broader: dress"),
        ("hat", ""),
    ),
    "neckline": (
        ("square", "see_also: [v]"),
        ("v", "cautions: [cords-children]"),
        ("boat", "broader: square"),
    ),
    "sleeve": (("elbow", ""), ("long", "applies_to: [dress]")),
    "fastening": (
        ("buttons", ""),
        ("slide-fastener", "not_before: {date: 1917, event: granted, source: from memory}"),
    ),
}
TERMS = tuple(
    f"{facet}/{term}" for facet in ("neckline", "sleeve", "fastening") for term, _ in VOCABULARY[facet]
)
GARMENTS = tuple(term for term, _ in VOCABULARY["garment"])
WORDS = ("serge", "voile", "<b>bold</b>", "neat", "“quoted”")
NAMES = tuple(f"source-{letter}" for letter in "abcdef")


@st.composite
def sources(draw: st.DrawFn) -> str:
    """A source file as people write them, with its reprints, reused cuts, outfits and comments."""
    more = draw(
        st.sampled_from(("", "", "market: GB\n", "# a comment\n", "publish: false\n", "note: Seen.\n"))
    )
    if draw(st.integers(0, 5)) == 0:
        more += f"reprint_of: {draw(st.sampled_from(NAMES))}\n"
    text = SOURCE.format(
        title=draw(st.sampled_from(("Spring List", "Autumn List", "Winter List"))),
        kind=draw(st.sampled_from(("trade-catalogue", "magazine-issue", "extant"))),
        date=draw(st.sampled_from(("1912", "1912-03", "1924", "1925~", "1926-22", "1938"))),
        basis=draw(st.sampled_from(("printed", "printed", "institution", "style"))),
        place=draw(st.sampled_from(("Harrowmere", "Lowick"))),
        more=more,
    )
    for number in range(draw(st.integers(1, 4))):
        plate_more = draw(
            st.sampled_from(
                (
                    *("", "", "    outfit: page\n", "    publish: false\n", "    date: 1931\n"),
                    *("    recorded: {by: T., on: 2025-01-02}\n", "    wearer: {who: girl}\n"),
                )
            )
        )
        if draw(st.integers(0, 5)) == 0:
            plate_more += f"    same_cut_as: {draw(st.sampled_from(NAMES))}/p1\n"
        text += PLATE.format(
            id=f"p{number + 1}",
            page=draw(st.integers(1, 3)),
            garment=draw(st.sampled_from(GARMENTS)),
            caption=draw(st.sampled_from(WORDS)),
            features=", ".join(draw(st.lists(st.sampled_from(TERMS), min_size=1, max_size=4, unique=True))),
            more=plate_more,
        )
    return text


Edit = Callable[[Path], None]


def _write(name: str, text: str) -> Edit:
    return lambda folder: (folder / "sources" / f"{name}.yaml").write_text(text, encoding="utf-8") and None


def _remove(name: str) -> Edit:
    return lambda folder: (folder / "sources" / f"{name}.yaml").unlink(missing_ok=True)


def _rename(old: str, new: str) -> Edit:
    def rename(folder: Path) -> None:
        file = folder / "sources" / f"{old}.yaml"
        if file.exists():
            file.replace(folder / "sources" / f"{new}.yaml")

    return rename


def _setting(line: str) -> Edit:
    def change(folder: Path) -> None:
        file = folder / "inperiod.yaml"
        name = line.partition(":")[0]
        kept = [
            each for each in file.read_text(encoding="utf-8").splitlines() if not each.startswith(f"{name}:")
        ]
        file.write_text("\n".join([*kept, line]) + "\n", encoding="utf-8")

    return change


def _template(text: str) -> Edit:
    def change(folder: Path) -> None:
        own = folder / "site" / "templates"
        own.mkdir(parents=True, exist_ok=True)
        (own / "prose.html").write_text(
            f"{{% extends 'base.html' %}}{{% block main %}}<h1>{text}</h1>{{% endblock %}}", encoding="utf-8"
        )

    return change


def _static(path: str, text: str) -> Edit:
    """A file to be copied as it is; one that needs a folder where there is a file takes that away first, and
    the other way round."""

    def change(folder: Path) -> None:
        file = folder / "site" / "static" / path
        for above in file.parents:
            if above.is_file():
                above.unlink()
        if file.is_dir():
            shutil.rmtree(file)
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(text, encoding="utf-8")

    return change


def _word(label: str) -> Edit:
    def change(folder: Path) -> None:
        file = folder / "vocabulary" / "neckline.yaml"
        text = file.read_text(encoding="utf-8").replace("label: square", f"label: {label}")
        file.write_text(text, encoding="utf-8")

    return change


def _gather(name: str, reason: str) -> Edit:
    """Another plate on the board, which may not be there."""

    def change(folder: Path) -> None:
        file = folder / "boards" / "tea.yaml"
        kept = file.read_text(encoding="utf-8").partition("plates:\n")[0]
        plates = (
            f"plates:\n  - {{plate: {name}/p1, reason: {reason}}}\n  - {{plate: list-5/p1, reason: near}}\n"
        )
        file.write_text(kept + plates, encoding="utf-8")

    return change


NAMED = st.sampled_from(NAMES)
EDITS = st.one_of(
    *[st.builds(_write, NAMED, sources())] * 5,
    st.builds(_remove, NAMED),
    st.builds(_rename, NAMED, NAMED),
    st.builds(
        _setting,
        st.sampled_from(
            (
                *("title: Another", "circa_years: 3", "grades: AB", "language: de"),
                *("base_address: https://example.org/", "base_address: https://example.net/"),
            )
        ),
    ),
    st.builds(_gather, NAMED, st.sampled_from(("near", "dear"))),
    st.builds(_template, st.sampled_from(("Mine", "Ours"))),
    st.builds(_word, st.sampled_from(("angular", "carré"))),
    st.builds(_static, st.sampled_from(("own", "own/a.txt", "own/b/c.txt")), st.sampled_from(WORDS)),
)


def small(folder: Path) -> Path:
    """A catalogue folder with a board, before any edit."""
    shutil.rmtree(folder, ignore_errors=True)
    (folder / "sources").mkdir(parents=True)
    (folder / "boards").mkdir()
    (folder / "vocabulary").mkdir()
    (folder / "inperiod.yaml").write_text("title: Small\n", encoding="utf-8")
    for facet, terms in VOCABULARY.items():
        lines = [f"facet: {facet}", f"label: {facet}", "question: What?", "exclusive: true", "terms:"]
        for term, more in terms:
            lines += [
                f"  - id: {term}",
                f"    label: {term}",
                "    definition: So.",
                *([f"    {more}"] if more else []),
            ]
        (folder / "vocabulary" / f"{facet}.yaml").write_text("\n".join(lines) + "\n", encoding="utf-8")
    # Enough documents for timelines, which no edit below touches.
    for number, year in enumerate((1908, 1911, 1914, 1919, 1923, 1926, 1929, 1934)):
        text = SOURCE.format(
            title=f"List {number}", kind="trade-catalogue", date=year, basis="printed", place="Vell", more=""
        )
        for plate, terms in (("p1", "neckline/v, sleeve/long"), ("p2", "neckline/square, fastening/buttons")):
            text += PLATE.format(id=plate, page=1, garment="day-dress", caption="x", features=terms, more="")
        (folder / "sources" / f"list-{number}.yaml").write_text(text, encoding="utf-8")
    (folder / "boards" / "tea.yaml").write_text(
        "title: Tea\ntarget: 1926\ngarment: day-dress\nfeatures: [neckline/square]\n"
        "plates:\n  - {plate: list-5/p1, reason: near}\n",
        encoding="utf-8",
    )
    return folder


def built(folder: Path, site: Path) -> dict[str, bytes]:
    """As the command builds."""
    reading = read_kept(folder)
    build(reading.catalogue, site, editions=reading.editions, grounds=reading.grounds)
    return contents(site)


def built_afresh(folder: Path, place: Path) -> dict[str, bytes]:
    """The same records built where nothing is known of any other build."""
    shutil.rmtree(place, ignore_errors=True)
    shutil.copytree(folder, place / "records", ignore=shutil.ignore_patterns(".inperiod"))
    build(read_catalogue(place / "records").catalogue, place / "site", hands=1)
    made = contents(place / "site")
    shutil.rmtree(place)
    return made


@settings(
    max_examples=int(os.environ.get("INPERIOD_EDITS", "8")),
    suppress_health_check=[HealthCheck.function_scoped_fixture],
    derandomize="INPERIOD_EDITS" not in os.environ,
)
@given(st.lists(st.lists(EDITS, min_size=1, max_size=3), min_size=1, max_size=4))
def test_after_any_edits_what_is_made_again_and_what_is_kept_are_the_whole_site(
    tmp_path: Path, rounds: list[list[Edit]]
) -> None:
    folder, site = small(tmp_path / "records"), tmp_path / "public"
    shutil.rmtree(site, ignore_errors=True)
    built(folder, site)
    for edits in rounds:
        for edit in edits:
            edit(folder)
        made = built(folder, site)
        afresh = built_afresh(folder, tmp_path / "afresh")
        assert made.keys() == afresh.keys()
        assert [name for name in made if made[name] != afresh[name]] == []


@pytest.mark.parametrize("part", ["records", "outlines", "excerpts", "templates", "site"])
def test_notes_that_somebody_else_wrote_are_neither_believed_nor_run(part: str, tmp_path: Path) -> None:
    """Compiled templates are run, the rest decides what is shown: all of it must bear this user's seal."""
    folder, site = small(tmp_path / "records"), tmp_path / "public"
    honest = built(folder, site)
    notes = sorted((folder / ".inperiod" / part).glob("*.json"))
    assert notes
    for one, other in zip(notes, [*notes[1:], notes[0]], strict=True):
        one.write_bytes(b"0" * 64 + other.read_bytes()[64:])
    shutil.rmtree(site)
    assert built(folder, site) == honest


def test_an_edit_of_one_source_opens_few_others(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, opened_sources: list[str]
) -> None:
    """A new caption opens its own source and those of plates that are near, or in the same block of data: in
    a catalogue so large that the page of plates has no captions, a hundred others stay closed."""
    monkeypatch.setattr(browser_data, "CAPTIONS_ON_PAGE", 17)
    monkeypatch.setattr(browser_data, "PLATES_IN_BLOCK", 8)
    folder, site = small(tmp_path / "records"), tmp_path / "public"
    for number in range(100):
        _write(f"far-{number}", _one(date=1700 + number, title=f"Far {number}"))(folder)
    built(folder, site)
    file = folder / "sources" / "list-3.yaml"
    file.write_text(file.read_text(encoding="utf-8").replace('"x"', '"x, far list"'), encoding="utf-8")
    opened_sources.clear()
    reading = read_kept(folder)
    build(reading.catalogue, site, editions=reading.editions, grounds=reading.grounds, hands=1)
    assert "x, far list" in (site / "plate" / "list-3" / "p1.html").read_text(encoding="utf-8")
    assert "list-3" in opened_sources
    assert not [each for each in opened_sources if each.startswith("far")]


def _one(more: str = "", plate_more: str = "", **given: object) -> str:
    usual = {
        "title": "One",
        "kind": "extant",
        "date": 1925,
        "basis": "printed",
        "place": "Vell",
        "more": more,
    }
    return SOURCE.format(**(usual | given)) + PLATE.format(
        id="p1", page=1, garment="dress", caption="x", features="neckline/v", more=plate_more
    )


def test_what_one_record_says_of_another_reaches_the_other_s_page(tmp_path: Path) -> None:
    """Reprints, cuts used again, titles and dates in lists: edits of one source, seen on pages of others."""
    folder, site = small(tmp_path / "records"), tmp_path / "public"
    built(folder, site)
    for text in (
        _one(),
        _one(more="reprint_of: list-0\n"),
        _one(more="reprint_of: list-0\n", title="Another title"),
        _one(plate_more="    same_cut_as: list-1/p1\n"),
        _one(plate_more="    same_cut_as: list-1/p1\n", date=1931),
        _one(more="publish: false\n"),
    ):
        _write("one", text)(folder)
        made, afresh = built(folder, site), built_afresh(folder, tmp_path / "afresh")
        assert made.keys() == afresh.keys()
        assert [name for name in made if made[name] != afresh[name]] == []


def test_data_in_blocks_follow_the_numbers_of_documents_and_the_size_of_the_catalogue(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """One source more gives all others new numbers; one plate more, and captions become data of their own."""
    monkeypatch.setattr(browser_data, "PLATES_IN_BLOCK", 4)
    monkeypatch.setattr(browser_data, "CAPTIONS_ON_PAGE", 17)
    folder, site = small(tmp_path / "records"), tmp_path / "public"
    built(folder, site)
    for name, date, apart in (("first", 1940, False), ("second", 1941, True)):
        _write(name, _one(kind="trade-catalogue", date=date))(folder)
        made, afresh = built(folder, site), built_afresh(folder, tmp_path / "afresh")
        assert made.keys() == afresh.keys()
        assert [path for path in made if made[path] != afresh[path]] == []
        assert ("data/said/0.js" in made) is apart
        assert "data/rows/3.js" in made
