"""A flat as SVG: for a page, in the colours around it, or as a file with a ground of its own."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

from markupsafe import Markup

from inperiod.drawing.flats.drawn import Drawn, View, draw, frame_for
from inperiod.drawing.flats.ink import INK, PAPER, SCALE, markup
from inperiod.drawing.marks import number, tag
from inperiod.records.model import Feature, Plate, Vocabulary

CAPTION = "Drawn from the record, not from the plate"
PIXELS = 4
"""To a centimetre, in a picture that is shown at its own size."""


@dataclass(frozen=True)
class Flat:
    """A garment drawn from its record. ``undrawn`` says of each recorded feature that is not in the drawing
    why not; ``assumed`` what was drawn as usual then because the record does not say. ``width`` and
    ``height`` are in units of the view box."""

    drawn: Drawn
    title: str
    undrawn: tuple[str, ...]
    assumed: tuple[str, ...]

    @property
    def width(self) -> int:
        return round(self.drawn.frame[2] * SCALE)

    @property
    def height(self) -> int:
        return round(self.drawn.frame[3] * SCALE)

    @property
    def svg(self) -> Markup:
        """For a page: front and, where it is recorded, back; the colour is that of the text around it."""
        return self._inline(self.drawn.back, 1.25)

    @property
    def small(self) -> Markup:
        """For a row of flats on a page: the front alone, with a finer line."""
        return self._inline(None, 1.0)

    @cached_property
    def _front(self) -> Markup:
        return _view(self.drawn, self.drawn.front, 0.0)

    def _inline(self, back: View | None, weight: float) -> Markup:
        left, top, wide, high = self.drawn.frame
        body, definition = [self._front], self.drawn.definition
        if back is None:
            return self._svg((left, top, wide, high), body, "currentColor", weight, definition)
        body.append(_view(self.drawn, back, wide))
        return self._svg((left, top, 2 * wide, high), body, "currentColor", weight, definition)

    @property
    def file(self) -> Markup:
        """A small picture for lists: the front alone on a sheet of its own, its line growing with it."""
        left, top, wide, high = self.drawn.frame
        ground = tag(
            "rect",
            {
                "x": round(left * SCALE),
                "y": round(top * SCALE),
                "width": self.width,
                "height": self.height,
                "fill": PAPER,
                "stroke": "none",
            },
        )
        body, definition = [ground, self.printed], printed(self.drawn.definition)
        return self._svg((left, top, wide, high), body, INK, 0.0088 * high * SCALE, definition)

    @cached_property
    def printed(self) -> Markup:
        """The lines of the front as they are printed."""
        return printed(self._front)

    def _svg(
        self,
        frame: tuple[float, float, float, float],
        body: list[Markup],
        ink: str,
        weight: float,
        defs: Markup,
    ) -> Markup:
        _, _, wide, high = frame
        box = {
            "xmlns": "http://www.w3.org/2000/svg",
            "class": "flat",
            "viewBox": " ".join(str(round(each * SCALE)) for each in frame),
            "width": round(wide * PIXELS),
            "height": round(high * PIXELS),
            "role": "img",
            "aria-label": self.title,
        }
        lines = {
            "fill": "none",
            "stroke": ink,
            "stroke-width": number(weight),
            "stroke-linecap": "round",
            "stroke-linejoin": "round",
        }
        parts = [tag("title", {}, self.title)]
        if defs:
            parts.append(tag("defs", {}, defs))
        return tag("svg", box, *parts, tag("g", lines, *body))


def _view(drawn: Drawn, view: View, across: float) -> Markup:
    return Markup("".join(markup(view.marks, drawn.pattern, across=across)))


def printed(drawing: Markup) -> Markup:
    """Ink on paper whatever is around it, its lines growing with it: for a file of its own."""
    inked = str(drawing).replace("currentColor", INK).replace("Canvas", PAPER)
    return Markup(inked.replace(' vector-effect="non-scaling-stroke"', ""))


def draw_flat(plate: Plate, vocabulary: Vocabulary, year: float | None) -> Flat | None:
    """The flat of a plate's garment in a year (decimal; None for an undated plate). None for garments that
    have no flat: accessories, uncut cloth and the like."""
    chain = vocabulary.broader_garments(plate.garment)
    return _flat(plate.features, chain, plate.wearer.who, year, vocabulary, "the record")


def flat_size(plate: Plate, vocabulary: Vocabulary, year: float | None) -> tuple[int, int] | None:
    """Width and height in pixels of the plate's small picture, without drawing it; None where it has none."""
    frame = frame_for(vocabulary.broader_garments(plate.garment), plate.wearer.who, year)
    return None if frame is None else (round(frame[2] * PIXELS), round(frame[3] * PIXELS))


def draw_plan(
    features: Sequence[Feature],
    garment: str,
    vocabulary: Vocabulary,
    year: float | None,
    who: str = "any",
    by: str = "the records",
) -> Flat | None:
    """The flat of a garment that no one plate shows; ``by`` says what it is drawn from: the plan, the
    question."""
    return _flat(features, vocabulary.broader_garments(garment), who, year, vocabulary, by)


def _flat(
    features: Sequence[Feature],
    chain: tuple[str, ...],
    who: str,
    year: float | None,
    vocabulary: Vocabulary,
    by: str,
) -> Flat | None:
    drawn = draw(features, chain, who, year)
    if drawn is None:
        return None

    def label(key: str) -> str:
        term = vocabulary.terms.get(key)
        return term.label if term else key.partition("/")[2].replace("-", " ")

    garment = vocabulary.garments.get(chain[0])
    name = garment.label if garment else chain[0].replace("-", " ")
    shown = ", ".join(dict.fromkeys(label(f.term) for f in drawn.drawn if f.term))
    title = f"{name[:1].upper()}{name[1:]}, a flat drawn from {by}" + (f": {shown}" if shown else "")
    undrawn = tuple(
        f"{label(f.term or '')}{f' ({f.at})' if f.at else ''}: {reason}" for f, reason in drawn.undrawn
    )
    return Flat(drawn, title, undrawn, tuple(label(key) for key in drawn.assumed))
