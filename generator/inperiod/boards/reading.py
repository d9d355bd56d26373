"""One board file read by itself and checked against a catalogue, wherever the file lies."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from pathlib import Path

from inperiod.records.checks import check_catalogue
from inperiod.records.model import Board, Catalogue
from inperiod.records.problems import Problem
from inperiod.records.reading import read_board


@dataclass(frozen=True, slots=True)
class Checked:
    """A board as far as it is sound (None where it is not), and what is wrong in its file alone."""

    board: Board | None
    problems: tuple[Problem, ...]


def read_board_file(data: bytes, name: str, catalogue: Catalogue) -> Checked:
    """Read a board from its bytes and check it against the catalogue, whether or not that holds it.

    ``name`` is the file's own, with or without ``.yaml``; it gives the board its id. Never raises for any
    bytes: see ``problems``, whose file is ``boards/<id>.yaml``.
    """
    stem = re.sub(r"[^a-z0-9]+", "-", Path(name).stem.lower()).strip("-") or "board"
    file = f"boards/{stem}.yaml"
    board, problems = read_board(data, file, catalogue.settings.seasons, {})
    if board is not None:
        alone = replace(catalogue, boards={board.id: board})
        problems = [*problems, *(each for each in check_catalogue(alone) if each.file == file)]
    return Checked(board, tuple(sorted(set(problems))))
