"""Boards written in a test, read as a file of the demonstration catalogue would be."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from inperiod.boards import ResolvedBoard, read_board_file, resolve
from inperiod.evidence import Facts
from inperiod.records.model import Catalogue

Resolved = Callable[..., ResolvedBoard]


@pytest.fixture
def resolved(demo_catalogue: Catalogue, demo_facts: Facts) -> Resolved:
    """``resolved(features, plates, …)``: a board for a nightdress of 1926, or what ``head`` says instead."""

    def make(
        features: str = "[]",
        plates: str = "[]",
        head: str = "target: 1926\ngarment: nightdress",
        more: str = "",
    ) -> ResolvedBoard:
        text = f"title: Tried\n{head}\nfeatures: {features}\nplates: {plates}\n{more}"
        checked = read_board_file(text.encode(), "tried.yaml", demo_catalogue)
        assert checked.board is not None, checked.problems
        return resolve(checked.board, demo_catalogue, demo_facts)

    return make
