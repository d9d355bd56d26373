"""A site in pieces that can each be made by themselves, in any order and by any process."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import partial
from pathlib import Path

from inperiod.evidence import Facts
from inperiod.publishing import feeds
from inperiod.publishing.browser_data import browser_files
from inperiod.publishing.citations import source_lists, source_records
from inperiod.publishing.downloads import source_downloads, tables_and_board_downloads
from inperiod.publishing.lookup import Lookup
from inperiod.publishing.manifests import source_manifest
from inperiod.publishing.page import Page
from inperiod.publishing.render import environment, layers, rendered, site_view
from inperiod.publishing.scripts import minified_scripts
from inperiod.publishing.sheets import source_sheets
from inperiod.publishing.styles import stylesheet
from inperiod.records.model import Catalogue, Source

Texts = Iterable[tuple[str, str]]
"""Files by their paths from the root of the site, with what is in them."""


@dataclass(frozen=True, slots=True)
class Piece:
    """Some files of the site that are made together. ``name`` is the piece's own."""

    name: str
    make: Callable[[], Texts]


def pieces_of(
    catalogue: Catalogue, facts: Facts, pages: Sequence[Page], copies: dict[str, Path]
) -> Iterator[Piece]:
    """Everything that is made and not copied."""
    env = environment(catalogue)

    def page_texts(page: Page) -> Texts:
        view = page.context()
        yield page.path, rendered(env, page, view)
        yield from page.files(view)

    for page in pages:
        yield Piece(f"page {page.path}", partial(page_texts, page))
    for source in catalogue.sources.values():
        yield Piece(f"source {source.id}", partial(_of_source, catalogue, source))
    yield Piece("browser", lambda: browser_files(catalogue, facts).items())
    yield Piece("lists of sources", partial(source_lists, catalogue))
    yield Piece("tables", partial(tables_and_board_downloads, catalogue))
    yield Piece("style", lambda: [("assets/style.css", stylesheet(layers(catalogue, "assets/css")))])
    yield Piece("scripts", partial(minified_scripts, copies))
    base = site_view(catalogue)["base_address"]
    if base:
        yield Piece("site map", lambda: [("sitemap.xml", feeds.site_map(base, pages))])
        yield Piece("feed", lambda: [("feed.xml", feeds.feed(base, Lookup(catalogue)))])


def _of_source(catalogue: Catalogue, source: Source) -> Texts:
    """What a source has beside its page and those of its plates."""
    yield source_records(catalogue, source)
    yield from source_downloads(catalogue, source)
    yield from source_sheets(catalogue, source)
    yield from source_manifest(catalogue, source)
