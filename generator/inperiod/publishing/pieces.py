"""A site in pieces that can each be made by themselves, in any order and by any process."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import partial
from pathlib import Path

from jinja2 import Environment

from inperiod.publishing import feeds
from inperiod.publishing.browser_data import browser_parts, words_files
from inperiod.publishing.citations import source_lists, source_records
from inperiod.publishing.downloads import citation_files, source_downloads, tables_and_whole
from inperiod.publishing.excerpts import Excerpts
from inperiod.publishing.lookup import Lookup
from inperiod.publishing.made_from import MadeFrom
from inperiod.publishing.manifests import source_manifest
from inperiod.publishing.page import Page
from inperiod.publishing.plan import Plan
from inperiod.publishing.render import environment, layers, rendered, site_view
from inperiod.publishing.scripts import is_shipped_script, minified_scripts
from inperiod.publishing.share_cards import site_card_file, site_card_plates
from inperiod.publishing.sheets import source_sheets
from inperiod.publishing.styles import stylesheet

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


def pieces_of(plan: Plan, copies: Mapping[str, Path], excerpts: Excerpts) -> Iterator[Piece]:
    """Everything a site holds but for what belongs to one source (see ``pieces_of_source``); what is made
    from all there is first, as that takes longest."""
    look = plan.look
    catalogue = look.catalogue
    yield Piece("tables and words", partial(_of_all_sources, look, excerpts))
    yield Piece("citations", partial(citation_files, catalogue), ("boards",))
    for part in browser_parts(look):
        yield Piece(f"data {part.name}", part.make, part.made_from)
    yield Piece("lists of sources", partial(source_lists, catalogue), ("heads",))
    base = site_view(catalogue)["base_address"]
    if base:
        yield Piece("site map", lambda: [("sitemap.xml", feeds.site_map(base, plan.listed))], ("boards",))
        newest = feeds.newest(look)
        entries = [word for entry in newest for word in entry]
        yield Piece("feed", lambda: [("feed.xml", feeds.feed(base, look, newest))], ("lists", *entries))
        shown = site_card_plates(look)
        of_them = [word for key in shown for word in (key, key.partition("/")[0])]
        yield Piece("card", partial(site_card_file, look, shown), ("block", "card", *of_them))
    env = environment(catalogue)
    for page in sorted((*plan.first, *plan.last), key=lambda each: bool(each.made_from)):
        yield _of_page(env, page)
    style = layers(catalogue, "assets/css")
    yield Piece("style", lambda: [("assets/style.css", stylesheet(style))], ("base",))
    yield Piece("scripts", partial(minified_scripts, copies), ("base", *copies))
    for path, file in copies.items():
        if not is_shipped_script(file):
            yield Piece(f"copy {path}", tuple, ("file", str(file)), path=path, origin=file)


def pieces_of_source(plan: Plan, env: Environment, source: str) -> Iterator[Piece]:
    """The pages of a source's plates, and what it has beside its own page and those."""
    for page in plan.of_plates(source):
        yield _of_page(env, page, source)
    records = partial(_records, plan.look, source)
    yield Piece(f"records of {source}", records, ("records of", source), kin=source)


def _of_all_sources(look: Lookup, excerpts: Excerpts) -> Texts:
    """The files of the whole catalogue that are put together from what each source gives."""
    found: dict[str, Mapping[str, str]] = {}

    def tables() -> Iterator[Mapping[str, tuple[str, str]]]:
        for source, excerpt in excerpts.items():
            found[source] = excerpt.words
            yield excerpt.tables

    yield from tables_and_whole(look.catalogue, tables())
    yield from words_files(look, found)
    excerpts.tidy()


def _of_page(env: Environment, page: Page, kin: str = "") -> Piece:
    def texts() -> Texts:
        view = page.context()
        yield page.path, rendered(env, page, view)
        yield from page.files(view)

    return Piece(f"page {page.path}", texts, page.made_from, page, kin=kin)


def _records(look: Lookup, name: str) -> Texts:
    source = look.catalogue.sources[name]
    yield source_records(look, source)
    yield from source_downloads(look, source)
    yield from source_sheets(look, source)
    yield from source_manifest(look.catalogue, source)
