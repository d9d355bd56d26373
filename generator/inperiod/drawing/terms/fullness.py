"""To come."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from inperiod.drawing.hand import Drawing

DRAWINGS: Mapping[str, Callable[[], Drawing]] = {}
