"""Reads a built site back, for tests."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from html.parser import HTMLParser
from os.path import normpath
from pathlib import Path
from urllib.parse import unquote, urlsplit


@dataclass
class Read(HTMLParser):
    """What a test asks of a page: elements with their attributes, ids, and text by element."""

    elements: list[tuple[str, dict[str, str | None]]] = field(default_factory=list)
    words: dict[str, list[str]] = field(default_factory=dict)
    open: list[str] = field(default_factory=list)

    def __post_init__(self) -> None:
        super().__init__(convert_charrefs=True)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.elements.append((tag, dict(attrs)))
        self.open.append(tag)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.elements.append((tag, dict(attrs)))

    def handle_endtag(self, tag: str) -> None:
        while self.open and self.open.pop() != tag:
            pass

    def handle_data(self, data: str) -> None:
        for tag in set(self.open[-6:]):
            self.words.setdefault(tag, []).append(data)

    @property
    def ids(self) -> list[str]:
        return [value for _, attributes in self.elements if (value := attributes.get("id"))]

    def text(self, tag: str) -> str:
        return " ".join("".join(self.words.get(tag, [])).split())


def read(file: Path) -> Read:
    parser = Read()
    parser.feed(file.read_text(encoding="utf-8"))
    parser.close()
    return parser


def read_all(site: Path) -> dict[Path, Read]:
    """Every page of a site by its file. Of the demonstration that takes seconds: ``demo_pages`` has it."""
    return {file: read(file) for file in html_pages(site)}


def html_pages(site: Path) -> list[Path]:
    return sorted(site.rglob("*.html"))


def contents(site: Path) -> dict[str, bytes]:
    """Every file of the site by its path, the marker included."""
    return {
        file.relative_to(site).as_posix(): file.read_bytes()
        for file in sorted(site.rglob("*"))
        if file.is_file()
    }


def local_links(page: Path, parsed: Read) -> Iterator[tuple[str, Path, str]]:
    """Every link that stays in the site: as written, the file it leads to, and its fragment."""
    for _, attributes in parsed.elements:
        for name in ("href", "src"):
            written = attributes.get(name)
            if not written:
                continue
            parts = urlsplit(written)
            if parts.scheme or parts.netloc:
                continue
            target = Path(normpath(page.parent / unquote(parts.path))) if parts.path else page
            yield written, target, unquote(parts.fragment)
