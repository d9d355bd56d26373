"""What reading a catalogue folder comes to."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from inperiod.records.model import Catalogue
from inperiod.records.problems import Problem


@dataclass(frozen=True, slots=True)
class Reading:
    """What was read: the catalogue as far as it is sound, and all problems, sorted by file and line.

    ``grounds`` is a digest of all it was read from, and ``editions`` by source one of its file, where
    something is kept of it (see ``keeping``)."""

    catalogue: Catalogue
    problems: tuple[Problem, ...]
    grounds: str | None = None
    editions: Mapping[str, str] = field(default_factory=dict)

    @property
    def errors(self) -> tuple[Problem, ...]:
        return tuple(each for each in self.problems if each.severity == "error")

    @property
    def warnings(self) -> tuple[Problem, ...]:
        return tuple(each for each in self.problems if each.severity == "warning")
