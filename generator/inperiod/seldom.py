"""Looking for refuse less often, where a great many values are made that all stay."""

from __future__ import annotations

import gc
from collections.abc import Iterator
from contextlib import contextmanager


@contextmanager
def refuse_seldom() -> Iterator[None]:
    """While this holds, Python looks for what nobody uses any more so seldom that it hardly costs; what is
    there already is passed over. Reading ten thousand plates takes a third less time so."""
    usual = gc.get_threshold()
    gc.freeze()
    gc.set_threshold(50_000, 20, 100)
    try:
        yield
    finally:
        gc.unfreeze()
        gc.set_threshold(*usual)
