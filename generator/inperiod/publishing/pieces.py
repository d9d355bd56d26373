"""A site in pieces that can each be made by themselves, in any order and by any process."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import partial
from pathlib import Path

from inperiod.evidence import Facts
from inperiod.publishing import feeds
from inperiod.publishing.browser_data import Part, browser_parts
from inperiod.publishing.citations import source_lists, source_records
from inperiod.publishing.downloads import source_downloads, tables, whole_and_boards
from inperiod.publishing.made_from import MadeFrom
from inperiod.publishing.manifests import source_manifest
from inperiod.publishing.page import Page
from inperiod.publishing.plan import Plan
from inperiod.publishing.render import environment, layers, rendered, site_view
from inperiod.publishing.scripts import is_shipped_script, minified_scripts
from inperiod.publishing.share_cards import site_card_file
from inperiod.publishing.sheets import source_sheets
from inperiod.publishing.styles import stylesheet
from inperiod.records.model import Catalogue, Source

Texts = Iterable[tuple[str, str | bytes]]
"""Files by their paths from the root of the site, with what is in them."""


@dataclass(frozen=True, slots=True)
class Piece:
    """Some files of the site that are made together, or one that is copied from ``origin`` to ``path``.
    ``name`` is the piece's own; ``made_from`` is what it depends on (see ``made_from.Ingredients``); ``page``
    is the page it makes, if it makes one."""

    name: str
    make: Callable[[], Texts]
    made_from: MadeFrom = ()
    page: Page | None = None
    path: str = ""
    origin: Path | None = None


def pieces_of(plan: Plan, facts: Facts, copies: Mapping[str, Path]) -> Iterator[Piece]:
    """Everything a site holds; what is made from all there is first, as that takes longest."""
    catalogue = plan.look.catalogue
    env = environment(catalogue)

    def page_texts(page: Page) -> Texts:
        view = page.context()
        yield page.path, rendered(env, page, view)
        yield from page.files(view)

    yield Piece("whole", partial(whole_and_boards, catalogue))
    yield Piece("tables", partial(tables, catalogue))
    for part in browser_parts(catalogue, facts):
        yield Piece(f"data {part.name}", partial(_data, part, catalogue), part.made_from)
    yield Piece("lists of sources", partial(source_lists, catalogue))
    base = site_view(catalogue)["base_address"]
    if base:
        yield Piece("site map", lambda: [("sitemap.xml", feeds.site_map(base, plan.pages))])
        yield Piece("card", lambda: site_card_file(catalogue))
        yield Piece("feed", lambda: [("feed.xml", feeds.feed(base, plan.look))])
    for page in sorted(plan.pages, key=lambda each: bool(each.made_from)):
        yield Piece(f"page {page.path}", partial(page_texts, page), page.made_from, page)
    for source in catalogue.sources.values():
        yield Piece(
            f"records of {source.id}", partial(_of_source, catalogue, source), ("records of", source.id)
        )
    style = layers(catalogue, "assets/css")
    yield Piece("style", lambda: [("assets/style.css", stylesheet(style))], ("base",))
    yield Piece("scripts", partial(minified_scripts, copies), ("base", *copies))
    for path, file in copies.items():
        if not is_shipped_script(file):
            yield Piece(f"copy {path}", tuple, ("file", str(file)), path=path, origin=file)


def _data(part: Part, catalogue: Catalogue) -> Texts:
    return part.make(catalogue).items()


def _of_source(catalogue: Catalogue, source: Source) -> Texts:
    """What a source has beside its page and those of its plates."""
    yield source_records(catalogue, source)
    yield from source_downloads(catalogue, source)
    yield from source_sheets(catalogue, source)
    yield from source_manifest(catalogue, source)
