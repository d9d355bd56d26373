"""What comes with the package: schemas, the site's templates and assets, and the vocabulary."""

from __future__ import annotations

from pathlib import Path

_INSTALLED = Path(__file__).parent / "_kept"
_CHECKOUT = Path(__file__).parents[2]


def kept(name: str) -> Path:
    """The folder of that name: ``schemas``, ``site`` or ``vocabulary``.

    An installed package carries copies; a checkout uses its own top-level folders.
    """
    if _INSTALLED.is_dir():
        return _INSTALLED / name
    return _CHECKOUT / ("catalogue/vocabulary" if name == "vocabulary" else name)
