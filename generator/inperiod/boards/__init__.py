"""A research board resolved against the catalogue: verdicts, gaps, contradictions, plates, what to cite.

``resolve(board, catalogue, facts)`` works out all that a board's page, the terminal and the JSON show of it.
"""

from inperiod.boards.as_json import as_json
from inperiod.boards.bibliography import Entry
from inperiod.boards.reading import Checked, read_board_file
from inperiod.boards.remarks import KINDS, Remark
from inperiod.boards.resolving import Planned, ResolvedBoard, Suggested, resolve
from inperiod.boards.standing import Standing

__all__ = [
    "KINDS",
    "Checked",
    "Entry",
    "Planned",
    "Remark",
    "ResolvedBoard",
    "Standing",
    "Suggested",
    "as_json",
    "read_board_file",
    "resolve",
]
