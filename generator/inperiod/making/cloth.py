"""How much cloth: boxes with turnings, let out for shrinking, laid on a width, rounded up to be bought."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from inperiod.making.asking import Asked
from inperiod.making.drafts import Draft
from inperiod.making.figures import Plan
from inperiod.making.measures import CENTIMETRE, decimal, said, shown, to_buy, to_cut
from inperiod.making.packing import Box, Laid, lay, length_of
from inperiod.making.values import Figure

GRAINS = ("lengthwise", "crosswise", "any")
MOST_BOXES = 200


@dataclass(frozen=True, slots=True)
class Piece:
    """One kind of piece. ``across`` and ``along`` are what is cut, in steps of the lay (1/16 in or 1 mm)."""

    name: str
    number: int
    across: int
    along: int
    turns: bool
    at_fold: bool


@dataclass(frozen=True, slots=True)
class Cloth:
    """The cloth as it lies: its usable width in steps, and whether it is doubled or has an up and a down."""

    width: int
    step: Fraction
    doubled: bool
    one_way: bool


def let_out(finished: Fraction, shrinks: Fraction) -> Fraction:
    """What to cut so that ``finished`` is left when a share ``shrinks`` (0 to below 1/2) is lost."""
    return finished / (1 - shrinks)


def boxes_of(pieces: tuple[Piece, ...], doubled: bool) -> tuple[Box, ...]:
    """Every box to be laid. Doubled cloth gives two at once; a piece on the fold opens out to one."""
    return tuple(
        Box(index, piece.across, piece.along, piece.turns, piece.at_fold)
        for index, piece in enumerate(pieces)
        for _ in range(math.ceil(piece.number / 2) if doubled and not piece.at_fold else piece.number)
    )


def _pieces(asked: Asked, cloth: Cloth, warp: Fraction, weft: Fraction) -> tuple[Piece, ...]:
    given = asked.given.get("pieces")
    if not asked.has("pieces") or not isinstance(given, list | tuple) or not given:
        hint = "Expected a list, such as pieces: [{name: front, width: 20 in, length: 44 in, number: 2}]."
        asked.wrong("pieces", "pieces are missing.", hint)
        return ()
    found = []
    for place, each in enumerate(given[:MOST_BOXES], 1):
        if not isinstance(each, Mapping):
            asked.wrong(
                "pieces",
                f"Piece {place} has no fields.",
                "Expected {name: front, width: 20 in, length: 44 in}.",
            )
            continue
        found.append(_piece(asked, each, place, cloth, warp, weft))
    return tuple(found)


def _piece(
    asked: Asked, given: Mapping[str, object], place: int, cloth: Cloth, warp: Fraction, weft: Fraction
) -> Piece:
    inner = Asked(asked.index, given, _metric=asked.metric)
    name = inner.text("name", f"piece {place}")
    width, length = inner.measure("width"), inner.measure("length")
    turning = inner.measure("turning", ("0 in", "0 cm"), least="0 in")
    number = inner.count("number", 1, most=MOST_BOXES)
    grain = inner.choice("grain", GRAINS, "lengthwise")
    at_fold = inner.flag("fold")
    if at_fold and not cloth.doubled:
        inner.wrong("fold", "fold needs cloth that is doubled.", "Give doubled: true, or the whole piece.")
    asked.take(inner, f"pieces, {name}")
    # On the fold only one side has a turning across.
    wide, long = width + turning * (1 if at_fold else 2), length + 2 * turning
    if grain == "crosswise":
        wide, long = long, wide
    turns = grain == "any" and not cloth.one_way and not at_fold
    if turns:
        # Which way it will lie is not known yet: let out for the greater loss.
        warp = weft = max(warp, weft)
    return Piece(
        name,
        number,
        math.ceil(let_out(wide, weft) / cloth.step),
        math.ceil(let_out(long, warp) / cloth.step),
        turns,
        at_fold,
    )


def cloth(asked: Asked) -> Draft:
    """``width`` of the cloth, ``pieces`` to lay on it; ``doubled``, ``one_way``, ``selvedge``; ``warp`` and
    ``weft`` (shares lost in washing); ``sold_by``, ``price`` for a yard or metre, ``currency``.
    """
    full = asked.measure("width", least="2 in")
    selvedge = asked.measure("selvedge", ("0 in", "0 cm"), least="0 in")
    warp, weft = asked.share("warp"), asked.share("weft")
    doubled, one_way = asked.flag("doubled"), asked.flag("one_way")
    sold_by = asked.measure("sold_by", least="1 in", most="10 yd") if asked.has("sold_by") else None
    price = asked.number("price") if asked.has("price") else None
    currency = asked.text("currency")
    metric = asked.metric
    step = CENTIMETRE / 10 if metric else Fraction(1, 16)
    usable = (full - 2 * selvedge) / (2 if doubled else 1)
    lying = Cloth(max(1, math.floor(usable / step)), step, doubled, one_way)
    pieces = _pieces(asked, lying, warp, weft)
    asked.settle()
    if usable < step:
        asked.wrong("selvedge", "The selvedges leave no cloth between them.", "Expected narrower selvedges.")
    asked.settle()
    boxes = boxes_of(pieces, doubled)
    if len(boxes) > MOST_BOXES:
        asked.wrong(
            "pieces", f"{len(boxes)} pieces are too many for one lay.", f"Expected at most {MOST_BOXES}."
        )
    for piece in pieces:
        if piece.across > lying.width and not (piece.turns and piece.along <= lying.width):
            half = "half the cloth" if doubled else "the cloth"
            across = shown(piece.across * step, metric)
            asked.wrong(
                "pieces",
                f"{piece.name} is {across} across; {half} is {shown(usable, metric)}.",
                "Piece it, turn it if the grain allows, or take wider cloth.",
            )
    asked.settle()

    laid = lay(boxes, lying.width)
    length = length_of(laid) * step
    draft = asked.draft("Cloth")
    _say(draft, pieces, boxes, laid, lying, length)
    words = to_buy(length, metric, sold_by)[1]
    draft.cut = f"Buy {words} of cloth {shown(full, metric)} wide; the lay takes {to_cut(length, metric)}"
    if warp or weft:
        draft.formula += (
            f" Let out for shrinking, ÷ (1 − {decimal(warp)}) along and ÷ (1 − {decimal(weft)}) across: "
            "cut = finished ÷ (1 − s)."
        )
        draft.note("The shares are your own: wash a square of the cloth and measure it again.")
    if one_way:
        draft.note("One-way design: every piece points the same way, and none is turned.")
    if doubled:
        draft.note("The cloth lies doubled, right sides together: each box is cut through both layers.")
    draft.note("Shaped pieces are laid as their boxes; they may nest closer than this.")
    draft.figure = lay_figure(pieces, laid, lying, length, metric)
    if not draft.named:
        draft.buy = f"{draft.title}, {shown(full, metric)} wide"
    draft.need(length, step=sold_by, price=price, currency=currency)
    return draft


def _say(
    draft: Draft,
    pieces: tuple[Piece, ...],
    boxes: tuple[Box, ...],
    laid: tuple[Laid, ...],
    cloth: Cloth,
    length: Fraction,
) -> None:
    metric, step = draft.metric, cloth.step
    area = sum(box.across * box.along for box in boxes)
    simple = sum(box.along for box in boxes) * step
    longest = max(min(box.along, box.across) if box.turns else box.along for box in boxes)
    least = max(Fraction(area, cloth.width), Fraction(longest)) * step
    count = len(boxes)
    draft.formula = (
        f"{count} {'box' if count == 1 else 'boxes'} laid on {said(cloth.width * step, metric)}: "
        f"{said(length, metric)}. One behind the other they would take {said(simple, metric)}; "
        f"no lay can take less than {said(least, metric)} (area ÷ width, or the longest piece)."
    )
    draft.number("Laid", length, to_cut(length, metric))
    draft.number("One behind the other", simple, to_cut(simple, metric))
    draft.number("No lay takes less than", least, shown(least, metric))
    used = Fraction(area * 100, cloth.width) * step / length
    draft.number("Cloth used", used, f"{decimal(used, 0)} %")
    for number, piece in enumerate(pieces, 1):
        across, along = piece.across * step, piece.along * step
        text = f"{piece.number} × {shown(across, metric)} across by {shown(along, metric)} along"
        if piece.at_fold:
            text = f"{text}, on the fold"
        draft.number(f"{number}. {piece.name}", piece.number, text)


def lay_figure(
    pieces: tuple[Piece, ...], laid: tuple[Laid, ...], cloth: Cloth, length: Fraction, metric: bool
) -> Figure:
    """The lay plan to scale, the length of the cloth from left to right, its fold or one selvedge on top."""
    step, nought = cloth.step, Fraction(0)
    width = cloth.width * step
    plan = Plan(length / 640)
    px = plan.pixel
    top = 18 * px
    upper = "Fold" if cloth.doubled else "Selvedge"
    plan.word("label start", nought, 12 * px, upper)
    plan.box("cloth", nought, top, length, width)
    plan.line("fold" if cloth.doubled else "selvedge", nought, top, length, top)
    plan.line("selvedge", nought, top + width, length, top + width)
    for each in laid:
        x, y = each.y * step, top + each.x * step
        wide, high = each.along * step, each.across * step
        plan.box("piece", x, y, wide, high)
        _grain(plan, x, y, wide, high, cloth.one_way)
        name, number = pieces[each.piece].name, str(each.piece + 1)
        # Seven drawn units a letter, about, in the label's size.
        text = f"{number} {name}" if 7 * (len(name) + len(number) + 1) * px < wide else number
        if min(wide, high) > 13 * px:
            lift = -3 if _has_arrow(wide, high, px) else 4
            plan.word("label middle", x + wide / 2, y + high / 2 + lift * px, text)
    foot = top + width + 20 * px
    plan.scale_bar(foot, length / 4, metric)
    title = (
        f"Lay plan: {len(laid)} {'box' if len(laid) == 1 else 'boxes'} on cloth {shown(width, metric)} wide"
    )
    if cloth.doubled:
        title = f"{title}, doubled"
    return plan.figure("lay-plan", title, length, foot + 4 * px)


def _grain(plan: Plan, x: Fraction, y: Fraction, wide: Fraction, high: Fraction, one_way: bool) -> None:
    """An arrow along the selvedge; one head where all pieces must point the same way."""
    px = plan.pixel
    if not _has_arrow(wide, high, px):
        return
    left, right, at, head = x + wide / 4, x + wide * 3 / 4, y + high / 2 + 6 * px, 4 * px
    plan.line("grain", left, at, right, at)
    for side in (-1, 1):
        plan.line("grain", right, at, right - head, at + side * head)
        if not one_way:
            plan.line("grain", left, at, left + head, at + side * head)


def _has_arrow(wide: Fraction, high: Fraction, px: Fraction) -> bool:
    """Whether a box is large enough for an arrow beside its name."""
    return wide >= 30 * px and high >= 28 * px
