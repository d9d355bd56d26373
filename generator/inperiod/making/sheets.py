"""The making sheet of a board: each mapping under ``making:`` by its kind, then what to buy for them all."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence
from contextlib import suppress
from dataclasses import asdict
from fractions import Fraction
from typing import Any

from inperiod.making.asking import Asked, CannotWorkOut
from inperiod.making.bias import bias
from inperiod.making.cloth import cloth
from inperiod.making.drafts import Draft, Need
from inperiod.making.fastenings import fastenings
from inperiod.making.measures import METRE, YARD, nearest, quoted, to_buy
from inperiod.making.pleats import pleats
from inperiod.making.trims import frill, stitching, trimming
from inperiod.making.tucks import tucks
from inperiod.making.values import MakingProblem, MakingSheet, Purchase

KINDS: Mapping[str, Callable[[Asked], Draft]] = {
    "frill": frill,
    "tucks": tucks,
    "pleats": pleats,
    "bias": bias,
    "insertion": trimming,
    "fastenings": fastenings,
    "stitching": stitching,
    "cloth": cloth,
}


def sheet(making: Sequence[Mapping[str, Any]]) -> MakingSheet:
    """The sheet of a board's ``making``, untrusted as it was read: what is amiss becomes a problem.

    A line is left out where anything it needs cannot be read; the others stand.
    """
    drafts: list[Draft] = []
    problems: list[MakingProblem] = []
    for index, given in enumerate(making):
        kind = given.get("kind")
        work = KINDS.get(kind) if isinstance(kind, str) else None
        if work is None:
            said = (
                f"{quoted(kind)} is not a kind of work known here."
                if kind is not None
                else "kind is missing."
            )
            problems.append(MakingProblem(index, "kind", said, f"Expected one of: {', '.join(KINDS)}."))
            continue
        asked = Asked(index, given)
        with suppress(CannotWorkOut):
            drafts.append(work(asked))
        problems.extend(asked.problems)
    lines = tuple(draft.line() for draft in drafts)
    cautions = tuple(dict.fromkeys(caution for line in lines for caution in line.cautions))
    needs = [need for draft in drafts for need in draft.needs]
    return MakingSheet(lines, shopping(needs), cautions, tuple(problems))


def shopping(needs: Sequence[Need]) -> tuple[Purchase, ...]:
    """Needs the board names alike (lengths apart from counts) summed, rounded up as sold, and priced."""
    groups: dict[tuple[object, bool], list[Need]] = {}
    for need in needs:
        groups.setdefault((need.what if need.named else need.index, need.counted), []).append(need)
    return tuple(_purchase(group) for group in groups.values())


def _purchase(group: Sequence[Need]) -> Purchase:
    first = group[0]
    total = sum((need.amount for need in group), Fraction(0))
    priced = next((need for need in group if need.price is not None), None)
    step = next((need.step for need in group if need.step is not None), None)
    lines = tuple(need.index for need in group)
    if first.counted:
        return Purchase(first.what, float(total), str(total), None, lines)
    bought, text = to_buy(total, first.metric, step)
    cost = None
    if priced is not None and priced.price is not None:
        unit = METRE if first.metric else YARD
        cost = f"{money(bought / unit * priced.price)} {priced.currency}".rstrip(" ")
    return Purchase(first.what, float(bought), text, cost, lines)


def money(amount: Fraction) -> str:
    """Two decimals, a half going up."""
    hundredths = nearest(amount * 100)
    return f"{math.floor(hundredths / 100)}.{hundredths % 100:02d}"


def as_json(made: MakingSheet) -> dict[str, Any]:
    """The sheet as JSON values; ``InPeriod.making.sheet`` gives the same."""
    found: dict[str, Any] = asdict(made)
    return found
