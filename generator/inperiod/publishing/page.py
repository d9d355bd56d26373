"""One planned page, before it is rendered.

A room that adds pages gives a list of these; ``context`` is called once, when the page is rendered,
and its names stand in the template beside ``site``, ``page``, ``rel`` and the macros.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from typing import Any


@dataclass(frozen=True, slots=True)
class Link:
    """A label and the path of the page it leads to, from the root of the site (``plate/a/b.html``)."""

    label: str
    path: str
    note: str | None = None


@dataclass(frozen=True, slots=True)
class Card:
    """A picture for where a page is shared: its path from the root of the site, its size in pixels, and what
    it shows in words."""

    path: str
    width: int
    height: int
    alt: str


def _nothing() -> Mapping[str, Any]:
    return {}


def _no_files(_: Mapping[str, Any]) -> Iterable[tuple[str, str | bytes]]:
    return ()


@dataclass(frozen=True, slots=True)
class Page:
    """A file of the site to be rendered.

    ``path`` is relative to the root of the site, with ``/`` between its parts and an explicit
    ``.html``. ``section`` is the path of the entry of the main navigation it belongs to.
    ``trail`` leads from the home page to the page above this one. ``listed`` false keeps the page out
    of the site map; ``picture`` is its own picture for share cards.

    ``files`` gives files that belong to the page and are made from the same context, as path and text.
    ``made_from`` says what the page and its files are made from, so that a build can leave them as they
    are: see ``made_from.Ingredients.of``. Empty is always right, and costs time at every build.
    """

    path: str
    template: str
    title: str
    context: Callable[[], Mapping[str, Any]] = _nothing
    section: str = ""
    description: str = ""
    trail: tuple[Link, ...] = ()
    previous: Link | None = None
    following: Link | None = None
    listed: bool = True
    picture: Card | None = None
    made_from: tuple[str, ...] = ()
    files: Callable[[Mapping[str, Any]], Iterable[tuple[str, str | bytes]]] = _no_files
