"""To come."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from inperiod.drawing.hand import Drawing

LENGTHS: Mapping[str, Callable[[], Drawing]] = {}
CUTS: Mapping[str, Callable[[], Drawing]] = {}
