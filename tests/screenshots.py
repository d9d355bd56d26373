"""Pictures of every page kind, at three widths, by day and by night, to be looked at.

    python tests/screenshots.py SITE FOLDER [--widths 390,820,1280] [--only plate,term] [--full]

SITE is a built site (``public/``); the pictures go to FOLDER, one ``kind-width-theme.png`` each. With
``--full`` whole pages are taken, else the first screens down to 2,400 pixels. Opened from ``file:``, as
readers do.
"""

from __future__ import annotations

import argparse
import sys
from collections.abc import Iterator
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent))

from conftest import CHROMIUM_ARGUMENTS, find_chromium

LONGEST = 2400


def kinds(site: Path) -> Iterator[tuple[str, Path]]:
    """One page of every kind: the largest of each folder, as the one most likely to break."""
    for page in sorted(site.glob("*.html")):
        yield page.stem, page
    for folder in ("plate", "source", "term", "facet", "garment", "board", "timeline"):
        pages = sorted(
            (site / folder).rglob("*.html"), key=lambda page: (-page.stat().st_size, page.as_posix())
        )
        if pages:
            yield f"{folder}-large", pages[0]
        if len(pages) > 1:
            yield f"{folder}-small", pages[-1]


def take(site: Path, folder: Path, widths: list[int], only: set[str], full: bool) -> list[str]:
    """Take the pictures; the messages the console and pages gave, which should be none."""
    from playwright.sync_api import sync_playwright

    folder.mkdir(parents=True, exist_ok=True)
    said: list[str] = []
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=find_chromium(), args=CHROMIUM_ARGUMENTS)
        for theme in ("light", "dark"):
            for width in widths:
                context = browser.new_context(
                    viewport={"width": width, "height": 900}, color_scheme=theme, reduced_motion="reduce"
                )
                page = context.new_page()
                page.on("console", lambda message: said.append(f"{message.location}: {message.text}"))
                page.on("pageerror", lambda error: said.append(str(error)))
                for kind, file in kinds(site):
                    if only and kind not in only and kind.split("-")[0] not in only:
                        continue
                    page.goto(file.resolve().as_uri())
                    wide, tall = page.evaluate(
                        "[document.documentElement.scrollWidth, document.documentElement.scrollHeight]"
                    )
                    if wide > width:
                        said.append(f"{page.url}: {wide} px wide at {width}")
                    clip = {"x": 0, "y": 0, "width": width, "height": tall if full else min(tall, LONGEST)}
                    page.screenshot(
                        path=str(folder / f"{kind}-{width}-{theme}.png"), full_page=True, clip=clip
                    )
                context.close()
        browser.close()
    return said


def main() -> int:
    asked = argparse.ArgumentParser(description="Take pictures of every page kind of a built site.")
    asked.add_argument("site", type=Path)
    asked.add_argument("folder", type=Path)
    asked.add_argument("--widths", default="390,820,1280")
    asked.add_argument("--only", default="")
    asked.add_argument("--full", action="store_true")
    given = asked.parse_args()
    widths = [int(width) for width in given.widths.split(",")]
    said = take(given.site, given.folder, widths, set(filter(None, given.only.split(","))), given.full)
    print("\n".join(said) or "No message, and nothing wider than the window.")
    return 1 if said else 0


if __name__ == "__main__":
    sys.exit(main())
