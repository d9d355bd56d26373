"""A small line drawing for every term that can be drawn; ``DRAWN`` are the keys of those."""

from inperiod.drawing.terms.table import DRAWN, draw_term, strokes_of

__all__ = ["DRAWN", "draw_term", "strokes_of"]
