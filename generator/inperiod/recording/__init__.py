"""Recording plates one question at a time, for those who like a terminal.

``add(folder, terminal)`` asks what a source is and what its plates show, and writes a source file that
``inperiod tidy`` leaves alone. ``read_line`` reads one feature from one line; ``with_plates`` puts plates
into a file that is there, its comments and order kept.
"""

from inperiod.recording.keeping import CannotAdd, with_plates
from inperiod.recording.line import Unclear, read_line
from inperiod.recording.questions import Added, Enough, Terminal, add

__all__ = ["Added", "CannotAdd", "Enough", "Terminal", "Unclear", "add", "read_line", "with_plates"]
