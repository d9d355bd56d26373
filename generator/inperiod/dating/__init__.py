"""Spans of days, EDTF, and the date phrases people type. Imports nothing else of the project."""

from inperiod.dating.span import Span

__all__ = ["Span"]
