"""Pages into HTML."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from functools import partial
from pathlib import Path
from typing import Any

from jinja2 import Environment, FileSystemLoader, StrictUndefined

from inperiod.kept import kept
from inperiod.publishing import compiled, paths
from inperiod.publishing.page import Link, Page
from inperiod.publishing.prose import prose, site_root, web_address
from inperiod.publishing.share_cards import site_card
from inperiod.records.keeping import Store
from inperiod.records.model import Catalogue

NAVIGATION = (
    Link("The question", paths.HOME),
    Link("Timeline", paths.TIMELINE),
    Link("Plates", paths.PLATES),
    Link("Terms", paths.TERMS),
    Link("Sources", paths.SOURCES),
    Link("Boards", paths.BOARDS),
    Link("Method", paths.METHOD),
)
COLOPHON = (
    Link("Record a source", paths.RECORD),
    Link("About and how to cite", paths.ABOUT),
    Link("Cautions", paths.CAUTIONS),
    Link("The catalogue as data", paths.DATA),
    Link("How to record", paths.HOW_TO_RECORD),
    Link("From a spreadsheet", paths.SPREADSHEET),
    Link("Method", paths.METHOD),
)


def layers(catalogue: Catalogue, part: str) -> list[Path]:
    """The folders that part of the site is made of, the shipped one first and the user's own last."""
    return [kept("site") / part, catalogue.folder / "site" / part]


def environment(catalogue: Catalogue) -> Environment:
    """Templates of the user's folder go before the shipped ones; everything is escaped; a missing name is
    an error."""
    store = Store.of(catalogue.folder, compiled.PART)
    env = Environment(
        loader=FileSystemLoader([str(folder) for folder in reversed(layers(catalogue, "templates"))]),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        auto_reload=False,
        bytecode_cache=compiled.Compiled(store) if store else None,
    )
    env.filters["web_address"] = web_address
    env.globals["site"] = site_view(catalogue)
    env.globals["paths"] = {
        "plate": paths.plate_path,
        "source": paths.source_path,
        "term": paths.term_path,
        "facet": paths.facet_path,
        "garment": paths.garment_path,
        "board": paths.board_path,
    }
    return env


def site_view(catalogue: Catalogue) -> Mapping[str, Any]:
    """What every page knows of the site."""
    settings = catalogue.settings
    return {
        "title": settings.title,
        "subtitle": settings.subtitle,
        "language": settings.language,
        "demonstration": settings.demonstration,
        "licence": settings.licence,
        "editors": settings.editors,
        "build_date": settings.build_date,
        "base_address": site_root(settings),
        "card": site_card(settings.title),
        "navigation": NAVIGATION,
        "colophon": COLOPHON,
        "plates": len(catalogue.plates),
        "sources": len(catalogue.sources),
    }


def _linker(page: Page, base: str | None) -> Callable[[str], str]:
    """Links of a page are relative. A host shows the page of lost addresses at any depth, where relative
    links would lead nowhere, so its links are whole where the site has an address."""
    if page.path == paths.NOT_FOUND and base:
        return lambda target: base + target
    return partial(paths.relative, page=page.path)


def render(env: Environment, page: Page) -> str:
    """The page as HTML, with one newline at its end."""
    return rendered(env, page, page.context())


def rendered(env: Environment, page: Page, view: Mapping[str, Any]) -> str:
    """The same from what ``page.context`` gave."""
    rel = _linker(page, env.globals["site"]["base_address"])  # type: ignore[index]

    def prose_here(text: str | None, lowest: int = 0) -> str:
        return prose(text, rel, lowest)

    context = {"page": page, "rel": rel, "prose": prose_here, **view}
    return env.get_template(page.template).render(context).strip() + "\n"


def read_layered(folders: Sequence[Path], name: str) -> str | None:
    """The text of the last of the folders' files of that name; None where there is none."""
    for folder in reversed(folders):
        file = folder / name
        if file.is_file():
            return file.read_text(encoding="utf-8")
    return None
