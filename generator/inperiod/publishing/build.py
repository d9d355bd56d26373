"""From a catalogue to a site on the disk."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from itertools import chain
from pathlib import Path

from inperiod.evidence import Facts, gather_facts
from inperiod.kept import kept
from inperiod.publishing import feeds
from inperiod.publishing.browser_data import browser_files
from inperiod.publishing.citations import citation_scripts
from inperiod.publishing.downloads import download_files
from inperiod.publishing.flats import flat_files
from inperiod.publishing.lookup import Lookup
from inperiod.publishing.manifests import manifest_files
from inperiod.publishing.page import Page
from inperiod.publishing.pictures import picture_of
from inperiod.publishing.plan import plan_pages
from inperiod.publishing.published import published
from inperiod.publishing.render import environment, layers, render, site_view
from inperiod.publishing.scripts import is_shipped_script, minified_scripts
from inperiod.publishing.sheets import sheet_files
from inperiod.publishing.styles import stylesheet
from inperiod.publishing.write import refuse_foreign, replace_site
from inperiod.records.model import Catalogue

Progress = Callable[[int, int], None]


@dataclass(frozen=True, slots=True)
class BuildReport:
    """What a build wrote. ``first`` is the page to open; ``size`` is in bytes."""

    target: Path
    first: Path
    pages: int
    plates: int
    sources: int
    files: int
    size: int


def build(catalogue: Catalogue, target: Path, progress: Progress | None = None) -> BuildReport:
    """Build the whole site into ``target`` and swap it in at the end.

    Deterministic: the same records give the same bytes. ``progress`` is told how many pages are done, of
    how many. Raises ``WillNotWrite`` where the target holds what is not ours, and whatever a template of
    the user's own raises; the last good site stays in either case.
    """
    target = Path(target)
    refuse_foreign(target, catalogue.folder)
    shown = published(catalogue)
    facts = gather_facts(shown)
    pages = plan_pages(shown, facts)
    copies = _copies(shown)
    texts = chain(_texts(shown, facts, pages, progress), minified_scripts(copies))
    as_they_stand = {path: file for path, file in copies.items() if not is_shipped_script(file)}
    written = replace_site(target, texts, as_they_stand)
    return BuildReport(
        target=target,
        first=target / "index.html",
        pages=len(pages),
        plates=len(shown.plates),
        sources=len(shown.sources),
        files=written.files,
        size=written.size,
    )


def _texts(
    catalogue: Catalogue, facts: Facts, pages: Sequence[Page], progress: Progress | None
) -> Iterator[tuple[str, str]]:
    """Everything that is made and not copied, one file at a time."""
    env = environment(catalogue)
    for done, page in enumerate(pages, start=1):
        yield page.path, render(env, page)
        if progress:
            progress(done, len(pages))
    yield from browser_files(catalogue, facts).items()
    yield from flat_files(catalogue)
    yield from sheet_files(catalogue)
    yield from citation_scripts(catalogue)
    yield from download_files(catalogue)
    yield from manifest_files(catalogue)
    yield "assets/style.css", stylesheet(layers(catalogue, "assets/css"))
    base = site_view(catalogue)["base_address"]
    if base:
        yield "sitemap.xml", feeds.site_map(base, pages)
        yield "feed.xml", feeds.feed(base, Lookup(catalogue))


def _copies(catalogue: Catalogue) -> dict[str, Path]:
    """Scripts and other assets, pictures that plates point at, and the user's own files in
    ``site/static``."""
    copies: dict[str, Path] = {}
    for folder in layers(catalogue, "assets"):
        if folder.is_dir():
            for file in sorted(folder.iterdir()):
                if file.is_file() and not file.name.startswith("."):
                    copies[f"assets/{file.name}"] = file
    for plate in catalogue.plates.values():
        picture = picture_of(catalogue, plate)
        if picture:
            copies[picture.path] = picture.file
    own = catalogue.folder / "site" / "static"
    if own.is_dir():
        for file in sorted(own.rglob("*")):
            if file.is_file() and not file.name.startswith("."):
                copies[file.relative_to(own).as_posix()] = file
    return copies


def watched_folders(catalogue_folder: Path) -> list[Path]:
    """What a served site is built from."""
    return [catalogue_folder, kept("site")]
