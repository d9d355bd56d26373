"""Citation styles and exchange formats for plates and sources."""

from inperiod.citing.credit import dating_line
from inperiod.citing.csl import Entry, csl_item, entry_for
from inperiod.citing.exchange import DOWNLOADS, FORMATS, downloads, export, item_alone, joined
from inperiod.citing.pieces import locator_words
from inperiod.citing.styles import DEFAULT_STYLE, STYLES, Style, cite, cite_in_all, cite_source

__all__ = [
    "DEFAULT_STYLE",
    "DOWNLOADS",
    "FORMATS",
    "STYLES",
    "Entry",
    "Style",
    "cite",
    "cite_in_all",
    "cite_source",
    "csl_item",
    "dating_line",
    "downloads",
    "entry_for",
    "export",
    "item_alone",
    "joined",
    "locator_words",
]
