"""Cutting and trimming arithmetic for a board: what to cut, what to buy, how it was reckoned, what to mind.

``sheet(board.making)`` works out every mapping under ``making:``; ``cautions_for(board)`` says what on the
board can hurt; ``draw(line.figure)`` makes a drawing to scale of a line that has one.
"""

from inperiod.making.cautions import Caution, caution_name, cautions_for
from inperiod.making.drawings import draw, draw_bias, draw_lay_plan, draw_tucks
from inperiod.making.measures import Measure, UnreadableMeasure, read_measure
from inperiod.making.sheets import KINDS, as_json, sheet
from inperiod.making.values import Figure, Line, MakingProblem, MakingSheet, Number, Purchase, Shape

__all__ = [
    "KINDS",
    "Caution",
    "Figure",
    "Line",
    "MakingProblem",
    "MakingSheet",
    "Measure",
    "Number",
    "Purchase",
    "Shape",
    "UnreadableMeasure",
    "as_json",
    "caution_name",
    "cautions_for",
    "draw",
    "draw_bias",
    "draw_lay_plan",
    "draw_tucks",
    "read_measure",
    "sheet",
]
