"""Every term drawing on one sheet, small and large, light and dark, and pictures of it by Chromium.

    python tests/contact_sheet.py FOLDER [FACET …]

writes FOLDER/index.html and, for every facet, FOLDER/FACET-light.png and FOLDER/FACET-dark.png.
"""

from __future__ import annotations

import sys
from html import escape
from pathlib import Path

from playwright.sync_api import sync_playwright

from inperiod.drawing.terms import draw_term
from inperiod.records import read_catalogue

CATALOGUE = Path(__file__).parent.parent / "catalogue"
LAUNCH = "--no-sandbox --disable-gpu --disable-quic --no-first-run --disable-background-networking".split()
STYLE = """
body { margin: 0; font: 13px/1.3 system-ui, sans-serif; }
section { padding: 12px; display: flex; flex-wrap: wrap; gap: 8px; }
section.light { color-scheme: light; background: #f2efe7; color: #21242c; --paper: #f2efe7; }
section.dark { color-scheme: dark; background: #16181d; color: #e8e2d5; --paper: #16181d; }
h2 { flex-basis: 100%; margin: 0; font-size: 15px; }
figure { margin: 0; width: 272px; }
figure svg { width: 200px; height: 200px; }
figure svg + svg { width: 64px; height: 64px; margin-left: 6px; }
svg .ground { fill: var(--paper); }
"""


def sheet(terms: dict[str, list[tuple[str, str]]]) -> str:
    """The page: for every facet a light and a dark section."""
    parts = [f'<!doctype html><meta charset="utf-8"><title>Term drawings</title><style>{STYLE}</style>']
    for facet, entries in terms.items():
        for scheme in ("light", "dark"):
            figures = "".join(_figure(key, label) for key, label in entries)
            parts.append(
                f'<section id="{facet}-{scheme}" class="{scheme}"><h2>{facet}</h2>{figures}</section>'
            )
    return "".join(parts)


def _figure(key: str, label: str) -> str:
    drawn = draw_term(key, label) or "<p>no drawing</p>"
    return f"<figure>{drawn}{drawn}<figcaption>{escape(label)}</figcaption></figure>"


def main(arguments: list[str]) -> None:
    """Write the sheet and its pictures."""
    folder, wanted = Path(arguments[0]), arguments[1:]
    folder.mkdir(parents=True, exist_ok=True)
    terms: dict[str, list[tuple[str, str]]] = {}
    for key, term in read_catalogue(CATALOGUE).catalogue.vocabulary.terms.items():
        facet = key.partition("/")[0]
        if facet != "garment" and (not wanted or facet in wanted):
            terms.setdefault(facet, []).append((key, term.label))
    page = folder / "index.html"
    page.write_text(sheet(terms), encoding="utf-8")
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path="/usr/bin/chromium", args=LAUNCH)
        tab = browser.new_page(viewport={"width": 1432, "height": 1000})
        tab.goto(page.resolve().as_uri())
        for facet in terms:
            for scheme in ("light", "dark"):
                tab.locator(f"#{facet}-{scheme}").screenshot(path=str(folder / f"{facet}-{scheme}.png"))
        browser.close()


if __name__ == "__main__":
    main(sys.argv[1:])
