"""From a record to a flat: the parts in the order they lie on one another."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field

from markupsafe import Markup

from inperiod.drawing.flats import bodices, closures, collars, lower, necks, skirts, sleeves, trims
from inperiod.drawing.flats.bodies import GROWN_ON, Legs, body_of, legs_of
from inperiod.drawing.flats.cloth import cloth_of
from inperiod.drawing.flats.figure import Figure, figure_for
from inperiod.drawing.flats.garments import SKIRT, Build, build_of
from inperiod.drawing.flats.heads import draw_head
from inperiod.drawing.flats.ink import Mark, whole
from inperiod.drawing.flats.outline import Outline
from inperiod.drawing.flats.periods import NEUTRAL_YEAR, Period, period_of
from inperiod.drawing.flats.record import Choice, Record
from inperiod.drawing.flats.rules import apply_rules
from inperiod.drawing.flats.work import Chosen, Work
from inperiod.drawing.hand import LINE, Path
from inperiod.records.model import Feature


@dataclass(frozen=True, slots=True)
class View:
    """One side of the garment: its marks, its outline (None for legs and hats), its legs, the line it opens
    along."""

    marks: tuple[Mark, ...]
    outline: Outline | None
    legs: Legs | None
    opening: Path | None


@dataclass(frozen=True, slots=True)
class Drawn:
    """A flat as geometry. ``frame`` is left, top, width and height in centimetres of the figure;
    ``undrawn`` pairs each recorded feature that is not drawn with the reason; ``assumed`` are the terms
    (``facet/id``) that were drawn although the plate does not say."""

    front: View
    back: View | None
    frame: tuple[float, float, float, float]
    pattern: str | None
    definition: Markup
    undrawn: tuple[tuple[Feature, str], ...]
    drawn: tuple[Feature, ...]
    assumed: tuple[str, ...] = field(default=())


FRAMES: dict[str, tuple[float, float, float]] = {
    # Half the width, top and foot of the frame, of a woman's figure.
    "whole": (56.0, -12.0, 146.0),
    "bather": (48.0, -12.0, 116.0),
    "suit": (34.0, -10.0, 98.0),
    "upper": (48.0, -12.0, 80.0),
    "jacket": (52.0, -12.0, 86.0),
    "lower": (56.0, 32.0, 146.0),
    "seat": (34.0, 34.0, 112.0),
    "head": (30.0, -14.0, 22.0),
}


CHILDRENS = ("child-frock", "child-suit", "romper")
MENS = ("lounge-suit", "nightshirt", "flannels", "shirt")


def draw(features: Sequence[Feature], chain: Sequence[str], who: str, year: float | None) -> Drawn | None:
    """The flat of a garment with these features; None for types that have no flat."""
    told = NEUTRAL_YEAR if year is None else year
    build = build_of(chain, told)
    if build is None:
        return None
    figure = _figure(chain, who)
    record = Record(tuple(features))
    apply_rules(record, build)
    period = period_of(told)
    chosen = _choose(record, build, period, figure)
    outline, legs = _outlines(record, build, figure, period, told, chosen, chain)
    pattern, definition = cloth_of(record)
    front = _side(Work(record, build, figure, period, told, chosen, outline, legs))
    back = None
    if outline is not None and _shows_back(record):
        back = _side(Work(record, build, figure, period, told, chosen, outline, legs, back=True))
    frame = _frame(build, figure)
    return Drawn(
        front,
        back,
        frame,
        pattern,
        definition,
        tuple(record.left()),
        tuple(record.drawn()),
        tuple(record.assumed),
    )


def frame_for(chain: Sequence[str], who: str, year: float | None) -> tuple[float, float, float, float] | None:
    """The frame a flat will have, without drawing it; None for types that have no flat."""
    build = build_of(chain, NEUTRAL_YEAR if year is None else year)
    return None if build is None else _frame(build, _figure(chain, who))


def _figure(chain: Sequence[str], who: str) -> Figure:
    """The wearer's figure; a child's for children's garments where the plate does not say."""
    if "infant-gown" in chain:
        return figure_for("infant")
    if who in ("any", "woman", "man") and any(each in chain for each in CHILDRENS):
        return figure_for("girl")
    if who == "any" and any(each in chain for each in MENS):
        return figure_for("man")
    return figure_for(who)


def _frame(build: Build, figure: Figure) -> tuple[float, float, float, float]:
    half, top, foot = FRAMES[build.frame]
    if figure.name == "infant":
        half += 14.0  # An infant is broad for its height.
    k = 1.0 if build.frame == "head" else 1.05 if figure.name == "man" else min(1.0, figure.scale)
    return (-half * k, top * k, 2 * half * k, (foot - top) * k)


def _shows_back(record: Record) -> bool:
    if record.has("closure/back", "closure/back-yoke", "yoke/back-yoke") is not None:
        return True
    return any(f.at == "back" and f.state == "shown" for f in record.features)


def _choose(record: Record, build: Build, period: Period, figure: Figure) -> Chosen:
    """The terms the outline is made of; the period speaks only for grown women's dress."""
    grown = figure.name == "woman"

    def usual(own: str, of_period: str, plain: str) -> str:
        return own or (of_period if grown else plain)

    if build.head:
        return Chosen()
    trunk = bool(build.body) and not build.skirt
    skirted = build.skirt or build.body == "skirt" or build.under
    chosen = Chosen(
        silhouette=record.choose("silhouette", usual(build.shape, period.silhouette, "tubular"))
        if trunk or skirted
        else Chosen().silhouette,
        neckline=_neckline(record, usual(build.neck, period.neckline, "round"))
        if trunk
        else Chosen().neckline,
        collar=record.choose("collar", build.collar) if trunk else Chosen().collar,
        sleeve=_sleeve(record, usual(build.sleeve, period.sleeve, "set-in-long"))
        if trunk
        else Chosen().sleeve,
        waist=record.choose("waist", usual(build.waist, period.waist, "natural"))
        if trunk or skirted
        else Chosen().waist,
        cut=record.choose("skirt-cut", usual(build.cut, period.cut, "straight")) if skirted else Chosen().cut,
        length=record.choose("skirt-length", usual(build.length, period.length, "knee"))
        if skirted
        else Chosen().length,
    )
    return chosen


def _neckline(record: Record, default: str) -> Choice:
    """A standing collar tells a high neck where no neckline is recorded, a shawl or lapels a V."""
    if record.has(*(f"collar/{name}" for name in necks.STANDING), "collar/shirt-collar"):
        default = "high"
    elif record.has("collar/notched", "collar/shawl", "collar/revers", "collar/sailor"):
        default = "v"
    choice = record.choose("neckline", default)
    return choice if choice.id != "none" else Choice("round")


def _sleeve(record: Record, default: str) -> Choice:
    if record.has("neckline/halter", "neckline/one-shoulder"):
        default = "sleeveless"
    choice = record.choose("sleeve", default)
    return Choice("sleeveless", choice.feature) if choice.id == "none" else choice


def _outlines(
    record: Record,
    build: Build,
    figure: Figure,
    period: Period,
    year: float,
    chosen: Chosen,
    chain: Sequence[str],
) -> tuple[Outline | None, Legs | None]:
    outline = None
    if build.body or build.skirt:
        neckline = chosen.neckline.id
        if (
            build.open
            and neckline in ("round", "jewel")
            and chosen.collar.id in ("notched", "shawl", "revers")
        ):
            neckline = "v"
        outline = body_of(
            build,
            figure,
            period,
            silhouette=chosen.silhouette.id,
            neckline=neckline,
            sleeve=chosen.sleeve.id,
            waist=chosen.waist,
            cut="" if build.under else chosen.cut.id,
            length=chosen.length.id,
        )
    legs = None
    if build.legs:
        edge = "short-skirt-leg" if record.has("lower-edge/short-skirt-leg") else ""
        wide = 1.5 if "beach-pyjamas" in chain else 1.2 if "pyjamas" in chain else 1.0
        legs = legs_of(build, figure, year, outline, edge, wide)
    return outline, legs


def _side(work: Work) -> View:
    for part in PARTS:
        part(work)
    return View(tuple(work.sheet.marks), work.outline, work.legs, work.opening)


def _draw_body(work: Work) -> None:
    """The cloth of the trunk and its side seams."""
    outline = work.outline
    if outline is None:
        return
    hem = outline.hem_line()
    middle = (0.0, outline.hem + outline.dip)
    foot = Path((outline.halves[-1], outline.hem)).bend((outline.halves[-1] * 0.5, middle[1]), middle)
    if work.build.skirt:
        half = Path((0.0, outline.top)).to(outline.side.start).then(outline.side).then(foot)
        work.sheet.cloth("body", whole(half))
        work.sheet.line("side", outline.side)
        return
    edge = skirts.hem_edge(work, outline)
    if outline.neckline == "one-shoulder":
        area = necks.slant(outline).reverse().to(outline.shoulder).then(outline.armhole()).then(outline.side)
        area = area.then(edge).then(outline.side.mirror(0).reverse()).close()
        work.sheet.cloth("body", area.mirror(0) if work.back else area)
        work.sheet.line("side", outline.side)
        shoulder = Path(outline.neck).to(outline.shoulder)
        work.sheet.put("shoulder", LINE, shoulder.mirror(0) if work.back else shoulder)
        return
    neck = necks.back_neck(outline) if work.back else necks.neckline(outline)
    half = neck.reverse()
    if not (work.back and outline.neckline == "halter"):
        half = half.to(outline.shoulder).then(outline.armhole())
    if edge == hem:
        work.sheet.cloth("body", whole(half.then(outline.side).then(foot)))
    else:
        # A shaped hem is one line from side to side: the cloth is closed along it.
        right = half.then(outline.side).then(edge)
        work.sheet.cloth("body", right.then(half.then(outline.side).mirror(0).reverse()).close())
    work.sheet.line("side", outline.side)
    if work.chosen.sleeve.id not in GROWN_ON and not (work.back and outline.neckline == "halter"):
        work.sheet.line("shoulder", Path(outline.neck).to(outline.shoulder))


def _draw_pockets(work: Work) -> None:
    """Jackets and pyjamas have patch pockets drawn where a trim sits on one."""
    outline, s = work.outline, work.s
    if outline is None or work.back or not any(feature.at == "pocket" for feature in work.record.features):
        return
    y = min(outline.hem - 10 * s, work.figure.y("high-hip"))
    pocket = (
        Path((9.0 * s, y))
        .to((15.5 * s, y), (15.5 * s, y + 8 * s))
        .bend((12.2 * s, y + 9.4 * s), (9.0 * s, y + 8 * s))
        .close()
    )
    if 15.5 * s < outline.half(y + 8 * s):
        work.sheet.both("pocket", LINE, pocket)


def _draw_under(work: Work) -> None:
    """The skirt of a costume, below its jacket."""
    if not work.build.under:
        return
    chosen = work.chosen
    outline = body_of(
        SKIRT,
        work.figure,
        work.period,
        silhouette=chosen.silhouette.id,
        neckline="",
        sleeve="",
        waist=Choice("natural"),
        cut=chosen.cut.id,
        length=chosen.length.id,
    )
    under = Work(
        work.record, SKIRT, work.figure, work.period, work.year, chosen, outline, None, work.back, work.sheet
    )
    _draw_body(under)
    skirts.draw_folds(under)
    skirts.draw_hem(under)
    work.under = under


def _only_heads(work: Work) -> None:
    if work.build.head:
        draw_head(work)


PARTS: tuple[Callable[[Work], None], ...] = (
    _only_heads,
    necks.draw_behind,
    lower.draw_legs,
    _draw_under,
    sleeves.draw_sleeves,
    _draw_body,
    sleeves.draw_armholes,
    skirts.draw_folds,
    skirts.draw_waist,
    skirts.draw_hem,
    necks.draw_neckline,
    bodices.draw_yokes,
    closures.draw_closure,
    bodices.draw_fullness,
    _draw_pockets,
    lower.draw_lower_edges,
    collars.draw_collar,
    trims.draw_trims,
    closures.draw_fastenings,
)
"""In the order they lie on one another."""
