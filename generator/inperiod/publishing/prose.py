"""Markdown into HTML, without raw HTML, pictures, or links that lead anywhere but to the web or the site."""

from __future__ import annotations

import re
from collections.abc import Callable

from markdown_it import MarkdownIt
from markupsafe import Markup

from inperiod.records.model import Settings

_SCHEME = re.compile(r"[A-Za-z][A-Za-z0-9+.-]*:")


def web_address(text: str | None) -> str | None:
    """The address when it is a plain http or https one; None for anything else, so that it is not linked."""
    if text and re.match(r"https?://[^\s\"'<>]+\Z", text.strip(), re.IGNORECASE):
        return text.strip()
    return None


def site_root(settings: Settings) -> str | None:
    """The public address of the site with one slash at its end; None where it has none."""
    base = web_address(settings.base_address)
    return base.rstrip("/") + "/" if base else None


def anchor(heading: str) -> str:
    """What a heading is called in an address: ``Cords, children`` is ``cords-children``."""
    return "-".join(re.findall(r"[\w]+", heading.lower()))


def _allowed(url: str) -> bool:
    address = url.strip()
    return web_address(address) is not None or not (
        _SCHEME.match(address) or address.startswith(("//", "\\", "/"))
    )


def _reader() -> MarkdownIt:
    markdown = MarkdownIt("commonmark", {"html": False, "typographer": False}).enable("table")
    markdown.disable(["image", "html_block", "html_inline"])
    markdown.validateLink = _allowed  # type: ignore[method-assign]
    return markdown


_MARKDOWN = _reader()


def prose(text: str | None, link: Callable[[str], str] | None = None, lowest: int = 0) -> Markup:
    """A Markdown text as HTML. ``link`` turns a path of the site into one relative to the page;
    ``lowest`` is added to heading levels so that a text fits under the headings of its page."""
    if not text or not text.strip():
        return Markup("")
    tokens = _MARKDOWN.parse(text)
    if tokens[:1] and tokens[0].type == "heading_open" and tokens[0].tag == "h1":
        tokens = tokens[3:]  # the page has its title already
    for at, token in enumerate(tokens):
        if token.type == "heading_open":
            token.attrSet("id", anchor(tokens[at + 1].content))
        if token.type in ("heading_open", "heading_close"):
            token.tag = f"h{min(6, int(token.tag[1]) + lowest)}"
        if token.type == "table_open":
            token.attrSet("class", "table")
        for child in token.children or ():
            href = child.attrGet("href") if child.type == "link_open" else None
            if isinstance(href, str):
                if web_address(href):
                    child.attrSet("rel", "noopener noreferrer")
                elif link and not href.startswith("#"):
                    child.attrSet("href", link(href))
    # Nothing unescaped can be in it: raw HTML is off and every link has been looked at.
    return Markup(_MARKDOWN.renderer.render(tokens, _MARKDOWN.options, {}))
