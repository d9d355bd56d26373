"""The timelines: style against decade for a garment and a facet, as a drawing and as a table."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, fields
from functools import partial
from typing import Any

from inperiod.dating import decimal_year
from inperiod.drawing.timeline_chart import Cell, Chart, Row, draw_timeline, scale_of_rows
from inperiod.evidence import Facts, Timeline, extent, timeline
from inperiod.evidence import timelines as evidence_timelines
from inperiod.evidence.sentences import not_counted
from inperiod.publishing import paths, words
from inperiod.publishing.view_answer import address, worth_drawing
from inperiod.publishing.wording import amount, per_cent
from inperiod.records.model import Catalogue


@dataclass(frozen=True, slots=True)
class Shown:
    """A garment and facet worth a timeline. ``garments`` is what several are called; ``weight`` is the plates
    looked at times the terms shown."""

    garment: str
    garment_label: str
    garments: str
    facet: str
    facet_label: str
    weight: float

    @property
    def path(self) -> str:
        return paths.timeline_path(self.garment, self.facet)

    def to_json(self) -> list[str | float]:
        """The fields in their order."""
        return [getattr(self, each.name) for each in fields(self)]


def shown_timelines(
    facts: Facts, grades: str, weights: Mapping[tuple[str, str], float] | None = None
) -> list[Shown]:
    """Every garment and facet of which enough was looked at, in the vocabulary's order. ``weights`` are those
    known before, 0 for what has no timeline."""
    known = weights or {}
    found = []
    for garment in facts.garments:
        several = garment.plural.removeprefix("pieces of ")
        for facet, label in facts.facets.items():
            weight = known.get((garment.id, facet))
            if weight is None:
                stands_on = extent(facts, garment.id, facet, grades)
                weight = stands_on.plates * stands_on.terms if worth_drawing(stands_on) else 0.0
            if weight:
                found.append(Shown(garment.id, garment.label, several, facet, label, weight))
    return found


def timeline_view(
    catalogue: Catalogue, facts: Facts, shown: Sequence[Shown], one: Shown | None, page: str
) -> Mapping[str, Any]:
    """What ``timeline.html`` shows on the page of that path; no ``one`` where too little was looked at."""
    rel = partial(paths.relative, page=page)
    if one is None:
        return {"one": None, "garments": [], "facets": []}
    drawn = timeline(facts, one.garment, one.facet, grades=catalogue.settings.grades)
    # The plates of the grades that were counted, so that a cell and its list agree.
    limits = [("grade", grade) for grade in catalogue.settings.grades]
    name = f"{one.facet_label} of {one.garments} by decade"
    chart = chart_of(drawn, rel, name, limits)
    return {
        "one": one,
        "grades": catalogue.settings.grades,
        "drawing": draw_timeline(chart),
        "chart": chart,
        "table": table_of(drawn, chart),
        "scale": scale_of_rows(chart.rows),
        "left_out": not_counted((reason, plates, "") for reason, plates in drawn.left_out)
        if drawn.left_out
        else "",
        "facets": [each for each in shown if each.garment == one.garment],
        "garments": [each for each in shown if each.facet == one.facet],
        "first": chart.decades[0],
        "last": chart.decades[-1] + 9,
    }


def chart_of(
    drawn: Timeline, rel: Callable[[str], str], name: str, limits: Sequence[tuple[str, str]]
) -> Chart:
    """A timeline made ready to draw. ``limits`` go into the addresses its cells lead to."""
    rows = []
    limited = "".join(f"&{address([limit])}" for limit in limits if limit[1])
    for row in drawn.rows:
        plates = f"{rel(paths.PLATES)}#{address([('garment', drawn.garment), ('feature', row.term)])}"
        cells = tuple(
            Cell(
                share=row.shares[index],
                href=f"{plates}&from={decade}&to={decade + 9}{limited}" if row.weights[index] > 0 else None,
                says=cell_says(drawn, row, index),
            )
            for index, decade in enumerate(drawn.decades)
        )
        rows.append(
            Row(
                label=row.label,
                href=rel(paths.term_path(row.term)),
                note=row_note(drawn, row),
                cells=cells,
                first=row.first.date if row.first else None,
                last=row.last.date if row.last else None,
                reach=row.extension,
                not_before=decimal_year(row.not_before.day) if row.not_before else None,
                alone=tuple(each.date for each in row.set_aside),
            )
        )
    return Chart(drawn.decades, drawn.looked, tuple(rows), name)


def cell_says(drawn: Timeline, row: evidence_timelines.Row, index: int) -> str:
    """A cell in words."""
    share = row.shares[index]
    where = f"{row.label}, {drawn.decades[index]}s"
    if share is None:
        return f"{where}: nobody looked"
    of = f"{amount(row.weights[index])} of {amount(drawn.recorded[index])} plates by weight"
    return f"{where}: {per_cent(share)}, {of}, {words.counted(drawn.looked[index], 'document')} looked at"


def row_note(drawn: Timeline, row: evidence_timelines.Row) -> str:
    """When a style was seen, and in which decade most: ``1911–1938, most in the 1920s, 34 %``."""
    if row.first is None or row.last is None:
        return "inferred only"
    first, last = int(row.first.date), int(row.last.date)
    seen = str(first) if first == last else f"{first}–{last}"
    shares = [share or 0.0 for share in row.shares]
    most = max(shares, default=0.0)
    return f"{seen}, most in the {drawn.decades[shares.index(most)]}s, {per_cent(most)}" if most else seen


def table_of(drawn: Timeline, chart: Chart) -> list[Mapping[str, Any]]:
    """The same as rows of a table."""
    return [
        {
            "label": row.label,
            "href": made.href,
            "cells": [
                {
                    "href": cell.href,
                    "share": "nobody looked"
                    if cell.share is None
                    else per_cent(cell.share)
                    if cell.share
                    else "–",
                    "of": ""
                    if cell.share is None
                    else f"{amount(row.weights[index])} of {amount(drawn.recorded[index])}",
                }
                for index, cell in enumerate(made.cells)
            ],
            "first": _year(row.first.date if row.first else None),
            "last": _year(row.last.date if row.last else None),
            "reach": reach_says(row),
            "not_before": row.not_before.text if row.not_before else "",
        }
        for row, made in zip(drawn.rows, chart.rows, strict=True)
    ]


def reach_says(row: evidence_timelines.Row) -> str:
    """How far the range may extend: ``1905–1941``; an open end is ``open``."""
    if row.first is None:
        return ""
    early, late = row.extension
    if early is None and late is None:
        return "open"
    return f"{'open' if early is None else int(early)}–{'open' if late is None else int(late)}"


def _year(date: float | None) -> str:
    return "" if date is None else str(int(date))
