"""Windows, and the weight of a dated plate in one."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Window:
    """The days asked about, both included, as day numbers; None is an open end."""

    earliest: int | None
    latest: int | None

    def __post_init__(self) -> None:
        if self.earliest is not None and self.latest is not None and self.latest < self.earliest:
            raise ValueError("a window ends before it begins")


def weight(earliest: int | None, latest: int | None, window: Window) -> float:
    """Aoristic weight: the share of a span's days that lies in the window, 0 to 1.

    J. H. Ratcliffe, "Aoristic analysis", Int. J. Geographical Information Science 14 (2000) 669–679.
    A span open at one end is the limit of ever longer spans: all its weight lies in the window that is
    open at the same end, none in any other. A span open at both ends lies half in each. So the weights
    over windows that tile time sum to 1 for every span.
    """
    if earliest is None and latest is None:
        return (0.5 if window.earliest is None else 0.0) + (0.5 if window.latest is None else 0.0)
    if earliest is None:
        return 1.0 if window.earliest is None else 0.0
    if latest is None:
        return 1.0 if window.latest is None else 0.0
    begins = earliest if window.earliest is None else max(earliest, window.earliest)
    ends = latest if window.latest is None else min(latest, window.latest)
    return max(0, ends - begins + 1) / (latest - earliest + 1)
