"""Flats: whole garments drawn from their recorded features, as a cutter would draw them.

``draw_flat`` for a plate, ``draw_plan`` for features that no plate shows together.
"""

from inperiod.drawing.flats.flat import CAPTION, Flat, draw_flat, draw_plan, flat_size

__all__ = ["CAPTION", "Flat", "draw_flat", "draw_plan", "flat_size"]
