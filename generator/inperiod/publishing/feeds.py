"""Site map and feed of new plates, made only where the site has an address of its own."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from heapq import nlargest
from xml.sax import saxutils
from xml.sax.saxutils import quoteattr

from inperiod.publishing import paths, words
from inperiod.publishing.lookup import Lookup

NEWEST = 30
_DAY = re.compile(r"\d{4}-\d{2}-\d{2}\Z")
_NOT_XML = re.compile("[^\t\n\r\x20-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")


def escape(text: str) -> str:
    """The text for XML, without the characters that XML 1.0 (production 2) has no way to write."""
    return saxutils.escape(_NOT_XML.sub("", text))


def site_map(base: str, listed: Iterable[str]) -> str:
    """Every listed page, given by its path, by its full address (sitemaps.org protocol 0.9)."""
    rows = "".join(f"<url><loc>{escape(base + path)}</loc></url>\n" for path in listed)
    head = '<?xml version="1.0" encoding="UTF-8"?>\n'
    space = "http://www.sitemaps.org/schemas/sitemap/0.9"
    return f'{head}<urlset xmlns="{space}">\n{rows}</urlset>\n'


def newest(look: Lookup) -> list[tuple[str, str]]:
    """The plates recorded last, with the day, latest first. Plates without a full day of recording are left
    out."""
    dated = [
        (plate.recorded, f"{source.id}/{plate.id}")
        for source in look.outlines.values()
        for plate in source.plates
        if plate.recorded and _DAY.match(plate.recorded)
    ]
    return nlargest(NEWEST, dated)


def feed(base: str, look: Lookup, plates: Sequence[tuple[str, str]]) -> str:
    """Those plates, the newest first, as an Atom feed (RFC 4287)."""
    settings = look.catalogue.settings
    updated = f"{plates[0][0]}T00:00:00Z" if plates else "1970-01-01T00:00:00Z"
    author = ", ".join(settings.editors) or settings.title
    entries = []
    for day, key in plates:
        plate = look.catalogue.plates[key]
        address = base + paths.plate_path(key)
        said = f"{look.source_of(plate).title}, {words.when(look.catalogue.dated(plate))}"
        entries.append(
            f"<entry><title>{escape(look.plate_title(plate))}</title><id>{escape(address)}</id>"
            f"<link href={quoteattr(address)}/><updated>{day}T00:00:00Z</updated>"
            f"<summary>{escape(said)}</summary></entry>\n"
        )
    return (
        '<?xml version="1.0" encoding="UTF-8"?>\n<feed xmlns="http://www.w3.org/2005/Atom">\n'
        f"<title>{escape(settings.title)}: new plates</title><id>{escape(base)}</id>"
        f'<link href={quoteattr(base)}/><link rel="self" href={quoteattr(base + "feed.xml")}/>'
        f"<updated>{updated}</updated><author><name>{escape(author)}</name></author>\n"
        f"{''.join(entries)}</feed>\n"
    )
