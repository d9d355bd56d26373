"""Plan pages, render them, give the browser its data, write the site in one step, serve it on this
machine."""

from __future__ import annotations

from importlib import import_module
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from inperiod.publishing.building import BuildReport, build, watched_folders
    from inperiod.publishing.serving import serve
    from inperiod.publishing.write import WillNotWrite

_DOORS = {
    "BuildReport": "building",
    "WillNotWrite": "write",
    "build": "building",
    "serve": "serving",
    "watched_folders": "building",
}

__all__ = ["BuildReport", "WillNotWrite", "build", "serve", "watched_folders"]


def __getattr__(name: str) -> Any:
    """Each door is opened when it is first asked for: an answer on the command line needs the words of this
    room and none of its templates."""
    if name not in _DOORS:
        raise AttributeError(name)
    return getattr(import_module(f"{__name__}.{_DOORS[name]}"), name)
