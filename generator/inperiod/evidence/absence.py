"""How unlikely it is that a thing in use was not seen."""

from __future__ import annotations

from collections.abc import Iterable

from inperiod.evidence.constants import ALPHA, GAP_ALPHA, SPREAD, STRONGEST, USE


def absence_p(sightings: int, within: int, gap: int) -> float:
    """p = (E_in / (E_in + E_gap))^min(N − 1, 15), and 1 where N < 2.

    M. A. McCarthy, Biological Conservation 83 (1998) 9–17, after A. R. Solow, Ecology 74 (1993) 962–964:
    the chance that all N sightings fall in the first part of the effort spent. Effort is counted in
    documents: ``within`` the attested range, and in the ``gap`` beyond it. The cap of the exponent is ours.
    """
    if sightings < 2:
        return 1.0
    part = within / (within + gap)
    p = 1.0
    for _ in range(min(sightings - 1, STRONGEST)):
        p *= part
    return p


def silence(plates: Iterable[int]) -> float:
    """The chance that none of these documents, given by their number of plates, shows a term in use at 5 %.

    Beta-binomial, plates of one document correlated by 0.2: Π over documents Π_{j<n} (0.95φ + j) / (φ + j),
    φ = 4. (J. G. Skellam, J. R. Statist. Soc. B 10 (1948) 257–261, probability of no success.)
    """
    p = 1.0
    for count in plates:
        for j in range(count):
            p *= ((1 - USE) * SPREAD + j) / (SPREAD + j)
        if p < 1e-12:
            return p
    return p


def unlikely(p: float) -> bool:
    """Whether p lies below the level at which absence is held to be more than chance."""
    return p < ALPHA


def unlikely_gap(p: float) -> bool:
    """Whether the silence of a whole gap between two sightings is more than chance."""
    return p < GAP_ALPHA
