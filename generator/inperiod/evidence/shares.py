"""Shares with their interval, and the word for how frequent."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from math import sqrt
from typing import Literal

from inperiod.evidence.constants import ALIKE, OCCASIONAL, USUAL, Z_95

Frequency = Literal["usual", "occasional", "rare"]


@dataclass(frozen=True, slots=True)
class Share:
    """``showing`` of ``recorded`` plates by weight, over documents alone; ``effective`` is how many
    independent plates that is worth. ``value``, ``low`` and ``high`` (0–1) are None where nothing was
    recorded in the window."""

    showing: float
    recorded: float
    effective: float
    value: float | None
    low: float | None
    high: float | None


def share(counts: Iterable[tuple[float, int, int]]) -> Share:
    """The share of a term over documents given as (weight, plates recording, plates showing)."""
    showing = recorded = squares = 0.0
    for weight, recording, shown in counts:
        showing += weight * shown
        recorded += weight * recording
        squares += weight * recording * recording
    if recorded <= 0:
        return Share(0.0, 0.0, 0.0, None, None, None)
    effective = effective_plates(recorded, squares)
    low, high = wilson(showing / recorded, effective)
    return Share(showing, recorded, effective, showing / recorded, low, high)


def effective_plates(recorded: float, squares: float) -> float:
    """n' = n / (1 + (m − 1)·ρ), m = Σ wᵢnᵢ² / Σ wᵢnᵢ, never above n.

    L. Kish, Survey Sampling (1965), design effect of unequal clusters; ρ is ours.
    ``recorded`` is Σ wᵢnᵢ and ``squares`` Σ wᵢnᵢ².
    """
    return min(recorded, recorded / (1 + (squares / recorded - 1) * ALIKE))


def wilson(p: float, n: float) -> tuple[float, float]:
    """95 % score interval of a share p of n, within 0–1. E. B. Wilson, JASA 22 (1927) 209–212."""
    z2 = Z_95 * Z_95
    middle = p + z2 / (2 * n)
    half = Z_95 * sqrt(max(0.0, p * (1 - p)) / n + z2 / (4 * n * n))
    whole = 1 + z2 / n
    return max(0.0, (middle - half) / whole), min(1.0, (middle + half) / whole)


def frequency(of: Share) -> Frequency | None:
    """Usual from 20 %, occasional from 5 %, rare below; None where nothing showing it was recorded,
    for a thing not seen is not thereby rare."""
    if of.value is None or of.showing <= 0:
        return None
    return "usual" if of.value >= USUAL else "occasional" if of.value >= OCCASIONAL else "rare"
