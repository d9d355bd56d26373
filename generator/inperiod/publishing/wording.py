"""The words answers are put in, for the pages built here and for the browser alike."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from inperiod.drawing.marks import per_cent

__all__ = ["LEADS", "amount", "cite_head", "per_cent", "place_name", "says"]

LEADS: Mapping[str, str] = {
    "attested": "Yes.",
    "seen once": "Perhaps.",
    "bracketed": "Probably.",
    "plausible": "Possibly.",
    "lapsed": "Doubtful.",
    "unsupported": "Not supported.",
    "unproven": "Cannot say.",
    "unrecorded": "No record.",
    "too early": "No.",
}
"""How the sentence of a verdict begins; its first reason follows."""


def says(verdict: str, reasons: Sequence[str]) -> str:
    """A verdict in a sentence or two."""
    return " ".join([LEADS[verdict], *reasons[:1]])


def cite_head(verdict: str, plates: int) -> str:
    """What stands over the plates of an answer: those of the window to cite, or only the nearest."""
    if verdict in ("attested", "seen once"):
        return "A plate to cite" if plates == 1 else "Plates to cite, best first"
    return "The one plate that shows it" if plates == 1 else "The nearest plates that show it"


def amount(weight: float) -> str:
    """A summed weight with one decimal at most, a half going up."""
    rounded = int(weight * 10 + 0.5) / 10
    return str(int(rounded)) if rounded == int(rounded) else str(rounded)


# ISO 3166-1 alpha-2 codes a market is likely to be given as; any other place is shown as written.
_COUNTRIES: Mapping[str, str] = {
    "AT": "Austria",
    "AU": "Australia",
    "BE": "Belgium",
    "CA": "Canada",
    "CH": "Switzerland",
    "DE": "Germany",
    "DK": "Denmark",
    "ES": "Spain",
    "FR": "France",
    "GB": "Great Britain",
    "IE": "Ireland",
    "IT": "Italy",
    "JP": "Japan",
    "NL": "the Netherlands",
    "NO": "Norway",
    "NZ": "New Zealand",
    "SE": "Sweden",
    "US": "United States",
}


def place_name(place: str) -> str:
    """A place as people say it."""
    return _COUNTRIES.get(place, place)
