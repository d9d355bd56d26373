"""SVG made by code: drawings of terms, flats of garments, charts."""

from inperiod.drawing.terms import DRAWN, draw_term

__all__ = ["DRAWN", "draw_term"]
