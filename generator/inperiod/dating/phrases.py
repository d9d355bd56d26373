"""Date phrases as people write them, read into EDTF."""

from __future__ import annotations

from dataclasses import dataclass

from inperiod.dating.edtf import Seasons, read_edtf
from inperiod.dating.span import Span


@dataclass(frozen=True, slots=True)
class Understood:
    """What a phrase was understood to say: its EDTF, its span, the same in words, and what was left aside."""

    edtf: str
    span: Span
    words: str
    note: str | None = None


def read_phrase(text: str, seasons: Seasons = "northern") -> Understood:
    """What the phrase says; raises ``Unreadable`` where that is not certain."""
    span = read_edtf(text.strip(), seasons)
    return Understood(text.strip(), span, text.strip())
