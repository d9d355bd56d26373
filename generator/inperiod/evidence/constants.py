"""Every number the arithmetic of evidence rests on, with where it comes from."""

from __future__ import annotations

DAYS_PER_YEAR = 365.25
"""Days in a year where a length in years is wanted (Julian year); dates themselves use the calendar."""

WIDEST_YEARS = 12
"""A source whose span is longer is no document. Ours, from simulation."""

WIDEST_DAYS = 4383
"""Days in any 12 whole calendar years at most (three leap days among them)."""

MOSTLY = 0.5
"""A plate lies in a window when at least this much of its span does."""

BACKING = 5
"""A sighting is backed by another among this many documents before it or after it. Ours, from simulation."""

Z_95 = 1.959963984540054
"""Two-sided 95 % point of the normal distribution."""

ALIKE = 0.2
"""Correlation of the plates of one document. Ours, from simulation; also sets the beta-binomial below."""

SPREAD = 4.0
"""Beta-binomial precision for that correlation: 1 / ALIKE − 1."""

USE = 0.05
"""The least use that direct absence argues against: one garment in twenty."""

ALPHA = 0.05
"""The level below which absence is called unlikely to be chance."""

GAP_ALPHA = 0.0087
"""The same level for the whole gap a window lies in. A gap found about a given time is not one chosen for
its length: were a thing in use, the chance that all looked at about that time is silent to the degree
s = e^−x is (1 + x)·e^−x (two waiting times, back and forth), and that is 0.05 at s = 0.0087. Ours."""

STRONGEST = 15
"""Cap on the exponent N − 1 of the absence p: no more than sixteen sightings' worth of confidence. Ours."""

NEAR_YEARS = 10
"""A window further than this outside the attested range is never plausible. Ours."""

USUAL, OCCASIONAL = 0.20, 0.05
"""Shares from which a term is called usual, and occasional; below it is rare. Ours."""

CITED = 12
"""At most so many plates are offered for citing, and alternatives for a facet."""

CIRCA_TRIED = (0, 10)
"""The readings of "circa", in years either side, that sensitivity tries."""
