"""Making SVG markup: numbers and elements written one way, so two drawings of a thing are the same text."""

from __future__ import annotations

import math
from collections.abc import Mapping
from functools import lru_cache
from typing import Any

from markupsafe import Markup, escape


def number(value: float) -> str:
    """At most two decimals, a half going up, no needless zeros: as the browser's side writes it."""
    if isinstance(value, int):
        return str(value)
    rounded = math.floor(value * 100 + 0.5) / 100
    return str(int(rounded)) if rounded == int(rounded) else repr(rounded)


@lru_cache(maxsize=512, typed=True)
def _escaped(text: str) -> str:
    return str(escape(text))


def tag(name: str, attributes: Mapping[str, Any], *children: str | Markup) -> Markup:
    """An element. Attributes of None are left out; text children are escaped, and so are values."""
    # A site has hundreds of thousands of these, and most attributes are one of a few words.
    written = "".join(
        [
            f' {key}="{_escaped(value) if isinstance(value, str) else number(value)}"'
            for key, value in attributes.items()
            if value is not None
        ]
    )
    inside = "".join([child if isinstance(child, Markup) else escape(child) for child in children])
    return Markup(f"<{name}{written}>{inside}</{name}>")


def per_cent(share: float) -> str:
    """``34 %``; more than nothing but below one in a hundred is ``under 1 %``."""
    return "under 1 %" if 0 < share < 0.01 else f"{int(100 * share + 0.5)} %"
