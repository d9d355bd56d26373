"""The page of plates: every plate by year, a histogram of years, and the choices of the filters."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping
from typing import Any

from inperiod.dating import day_number, iso_day
from inperiod.drawing.small_charts import draw_histogram
from inperiod.evidence import Facts
from inperiod.evidence.calendar import year_of
from inperiod.evidence.weights import Window, weight
from inperiod.publishing import paths, words
from inperiod.publishing.browser_data import has_captions_apart
from inperiod.publishing.found_by import said_of
from inperiod.records.model import Catalogue, Plate

UNDATED = "Undated"
YEAR_BY_YEAR = 240
"""Over more years than these the histogram counts by ten years."""


def plates_view(catalogue: Catalogue, facts: Facts) -> Mapping[str, Any]:
    """What ``plates.html`` shows. A very large catalogue lists its sources by year in place of its plates."""
    first, last = year_range(facts)
    apart = has_captions_apart(catalogue)
    by_year: dict[str, list[Mapping[str, Any]]] = defaultdict(list)
    if apart:
        for source in catalogue.sources.values():
            year = _year(source.date.span.earliest if source.date else None)
            by_year[year].append(
                {
                    "key": None,
                    "said": "",
                    "label": source.title,
                    "path": paths.source_path(source.id),
                    "note": words.counted(len(source.plates), "plate"),
                }
            )
    else:
        for plate in catalogue.plates.values():
            dated = catalogue.dated(plate)
            by_year[_year(dated.span.earliest if dated else None)].append(_entry(catalogue, plate))
    step = 1 if last - first < YEAR_BY_YEAR else 10
    counts = per_step(facts, first, last, step)
    return {
        "plates": len(catalogue.plates),
        "first": first,
        "last": last,
        "histogram": draw_histogram(first, counts, step),
        "years": sorted(by_year.items()),
        "captions_apart": apart,
    }


def _entry(catalogue: Catalogue, plate: Plate) -> Mapping[str, Any]:
    source = catalogue.sources[plate.source]
    garment = catalogue.vocabulary.garments.get(plate.garment)
    return {
        "key": plate.key,
        "label": words.sentence(garment.label if garment else plate.garment.replace("-", " ")),
        "path": paths.plate_path(plate.key),
        "note": f"{source.title}, {words.short_place(plate.locator)}".rstrip(", "),
        "said": said_of(plate),
    }


def _year(day: int | None) -> str:
    return UNDATED if day is None else iso_day(day)[:-6]


def year_range(facts: Facts) -> tuple[int, int]:
    """First and last year any plate may lie in; the settings' decades where none is dated."""
    ends = [day for document in facts.documents if document.days for day in document.days if day is not None]
    if not ends:
        return facts.decades[0], facts.decades[1] + 9
    return year_of(min(ends)), year_of(max(ends))


def per_step(facts: Facts, first: int, last: int, step: int) -> list[float]:
    """Plates in every ``step`` years from the first, by weight: one that may lie in several of them is shared
    out."""
    counts = [0.0] * ((last - first) // step + 1)
    for document in facts.documents:
        earliest, latest = document.days or (None, None)
        if earliest is None or latest is None:
            continue
        for index in range((year_of(earliest) - first) // step, (year_of(latest) - first) // step + 1):
            year = first + index * step
            part = weight(earliest, latest, Window(day_number(year), day_number(year + step) - 1))
            counts[index] += part * len(document.plates)
    return counts
