"""Pages of the demonstration site opened in Chromium and watched: no page may say anything on the console,
raise an error, or ask for anything outside its own site."""

from __future__ import annotations

import threading
from collections.abc import Callable, Iterator
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest

from inperiod.evidence import Facts, gather_facts
from inperiod.publishing.published import published
from inperiod.records.model import Catalogue
from site_in_browser.invented_pages import make_pages

if TYPE_CHECKING:
    from playwright.sync_api import Page, Request

    from windows import Windows

Open = Callable[..., "Page"]


class _Quiet(SimpleHTTPRequestHandler):
    def log_message(self, format: str, *args: Any) -> None:
        pass


@pytest.fixture(scope="session")
def served(demo_site: Path) -> Iterator[str]:
    """The address of the demonstration site on a loopback server, below a path and not at its top."""
    server = ThreadingHTTPServer(("127.0.0.1", 0), partial(_Quiet, directory=str(demo_site.parent)))
    threading.Thread(target=server.serve_forever, daemon=True).start()
    yield f"http://127.0.0.1:{server.server_port}/{demo_site.name}/"
    server.shutdown()
    server.server_close()


@pytest.fixture(scope="session")
def shown_catalogue(demo_catalogue: Catalogue) -> Catalogue:
    """What of the demonstration catalogue may be published: what the site is made of."""
    return published(demo_catalogue)


@pytest.fixture(scope="session")
def shown_facts(shown_catalogue: Catalogue) -> Facts:
    """The facts the site is given."""
    return gather_facts(shown_catalogue)


@pytest.fixture
def opened(windows: Windows, demo_site: Path) -> Iterator[Open]:
    """Opens a page of the site: ``opened("plates.html#from=1920")``. ``at`` is an http address to open it
    from in place of the folder; ``width``, ``dark`` and ``scripts`` set up the browser."""
    contexts, complaints = [], []

    def failed(request: Request) -> None:
        # A request given up because the page was left is no failure.
        if request.failure != "net::ERR_ABORTED":
            complaints.append(f"failed: {request.url}: {request.failure}")

    def open_page(
        page: str, at: str | None = None, width: int = 1280, dark: bool = False, scripts: bool = True
    ) -> Page:
        base = at or demo_site.as_uri() + "/"
        context = windows.lend(dark=dark, scripts=scripts)
        contexts.append(context)
        opened_page = context.new_page()
        opened_page.set_viewport_size({"width": width, "height": 900})
        opened_page.on("console", lambda message: complaints.append(f"console: {message.text}"))
        opened_page.on("pageerror", lambda error: complaints.append(f"error: {error}"))
        opened_page.on("requestfailed", failed)
        opened_page.on(
            "request",
            lambda request: (
                None
                if request.url.startswith((base, "blob:", "data:"))
                else complaints.append(f"outside: {request.url}")
            ),
        )
        opened_page.goto(base + page)
        return opened_page

    yield open_page
    for context in contexts:
        windows.take_back(context)
    assert complaints == []


@pytest.fixture(scope="session")
def images(tmp_path_factory: pytest.TempPathFactory) -> list[str]:
    """The files of six pages of an invented catalogue, twenty figures on them."""
    return [str(file) for file in make_pages(tmp_path_factory.mktemp("pages"))]


@pytest.fixture(scope="session")
def as_tree() -> str:
    """A JavaScript function: an element as tags, sorted attributes and text, without copying buttons."""
    return """(root) => {
      const tree = (node) => {
        if (node.nodeType === 3) return node.textContent.replace(/\\s+/g, " ");
        if (node.nodeType !== 1 || node.matches("button.copy, .copied")) return "";
        const names = [...node.attributes].map((each) => `${each.name}="${each.value}"`).sort().join(" ");
        const inside = [...node.childNodes].map(tree).join("").replace(/ +/g, " ");
        const made = `<${node.tagName.toLowerCase()} ${names}>${inside}</>`;
        return made.replace(/> </g, "><").replace(/> /g, ">").replace(/ <\\//g, "</");
      };
      return tree(root);
    }"""
