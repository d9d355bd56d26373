"""SVG made by code: drawings of terms, flats of garments, charts."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from inperiod.drawing.terms import DRAWN, draw_term

__all__ = ["DRAWN", "draw_term"]


def __getattr__(name: str) -> Any:
    """The drawings of terms are many files: they are opened when one is first asked for."""
    if name not in __all__:
        raise AttributeError(name)
    from inperiod.drawing import terms

    return getattr(terms, name)
