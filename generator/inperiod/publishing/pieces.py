"""A site in pieces that can each be made by themselves, in any order and by any process."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import partial
from pathlib import Path

from inperiod.evidence import Facts
from inperiod.publishing import feeds, paths
from inperiod.publishing.browser_data import browser_parts
from inperiod.publishing.citations import source_lists, source_records
from inperiod.publishing.downloads import source_downloads, tables, whole_and_boards
from inperiod.publishing.lookup import Lookup
from inperiod.publishing.made_from import MadeFrom
from inperiod.publishing.manifests import source_manifest
from inperiod.publishing.page import Page
from inperiod.publishing.plan import Plan
from inperiod.publishing.render import environment, layers, rendered, site_view
from inperiod.publishing.scripts import is_shipped_script, minified_scripts
from inperiod.publishing.share_cards import site_card_file
from inperiod.publishing.sheets import source_sheets
from inperiod.publishing.styles import stylesheet
from inperiod.records.model import Source

Texts = Iterable[tuple[str, str | bytes]]
"""Files by their paths from the root of the site, with what is in them."""


@dataclass(frozen=True, slots=True)
class Piece:
    """Some files of the site that are made together, or one that is copied from ``origin`` to ``path``.
    ``name`` is the piece's own; ``made_from`` is what it depends on (see ``made_from.Ingredients``); ``page``
    is the page it makes, if it makes one; pieces of one ``kin`` share what ``Lookup`` keeps of what was made
    last, and are best made one after another."""

    name: str
    make: Callable[[], Texts]
    made_from: MadeFrom = ()
    page: Page | None = None
    path: str = ""
    origin: Path | None = None
    kin: str = ""


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
        yield Piece(f"data {part.name}", part.make, part.made_from)
    yield Piece("lists of sources", partial(source_lists, catalogue))
    base = site_view(catalogue)["base_address"]
    if base:
        yield Piece("site map", lambda: [("sitemap.xml", feeds.site_map(base, plan.pages))])
        yield Piece("card", lambda: site_card_file(catalogue))
        yield Piece("feed", lambda: [("feed.xml", feeds.feed(base, plan.look))])

    def of_page(page: Page, kin: str = "") -> Piece:
        return Piece(f"page {page.path}", partial(page_texts, page), page.made_from, page, kin=kin)

    of_plates = {page.path: page for page in plan.pages if page.made_from[:1] == ("plate",)}
    others = [page for page in plan.pages if page.path not in of_plates]
    yield from map(of_page, sorted(others, key=lambda each: bool(each.made_from)))
    for source in catalogue.sources.values():
        for plate in source.plates:
            yield of_page(of_plates[paths.plate_path(plate.key)], source.id)
        records = partial(_of_source, plan.look, source)
        yield Piece(f"records of {source.id}", records, ("records of", source.id), kin=source.id)
    style = layers(catalogue, "assets/css")
    yield Piece("style", lambda: [("assets/style.css", stylesheet(style))], ("base",))
    yield Piece("scripts", partial(minified_scripts, copies), ("base", *copies))
    for path, file in copies.items():
        if not is_shipped_script(file):
            yield Piece(f"copy {path}", tuple, ("file", str(file)), path=path, origin=file)


def _of_source(look: Lookup, source: Source) -> Texts:
    """What a source has beside its page and those of its plates."""
    yield source_records(look, source)
    yield from source_downloads(look, source)
    yield from source_sheets(look, source)
    yield from source_manifest(look.catalogue, source)
