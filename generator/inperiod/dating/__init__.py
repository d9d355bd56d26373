"""Spans of days, EDTF, and the date phrases people type. Imports nothing else of the project."""

from inperiod.dating.answers import when_json
from inperiod.dating.days import Undated, Unreadable, day_number, decimal_year, iso_day
from inperiod.dating.edtf import Seasons, read_edtf
from inperiod.dating.phrases import Understood, read_phrase
from inperiod.dating.span import Span, widened
from inperiod.dating.words import in_words

__all__ = [
    "Seasons",
    "Span",
    "Undated",
    "Understood",
    "Unreadable",
    "day_number",
    "decimal_year",
    "in_words",
    "iso_day",
    "read_edtf",
    "read_phrase",
    "when_json",
    "widened",
]
