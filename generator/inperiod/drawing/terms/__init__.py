"""A small line drawing for every term that can be drawn: ``draw_term``; ``DRAWN`` are the keys that have one."""

from inperiod.drawing.terms.table import DRAWN, draw_term, strokes_of

__all__ = ["DRAWN", "draw_term", "strokes_of"]
