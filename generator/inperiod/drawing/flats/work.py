"""One flat while it is being made: what the parts read, and where they draw."""

from __future__ import annotations

from dataclasses import dataclass, field

from inperiod.drawing.flats.bodies import Legs
from inperiod.drawing.flats.figure import Figure
from inperiod.drawing.flats.garments import Build
from inperiod.drawing.flats.ink import Sheet
from inperiod.drawing.flats.outline import Outline
from inperiod.drawing.flats.periods import Period
from inperiod.drawing.flats.record import Choice, Record
from inperiod.drawing.hand import FAINT, LINE, Path, Pen

NONE = Choice("none")


@dataclass(frozen=True, slots=True)
class Chosen:
    """The term each part of the outline is drawn as."""

    silhouette: Choice = NONE
    neckline: Choice = NONE
    collar: Choice = NONE
    sleeve: Choice = NONE
    waist: Choice = NONE
    cut: Choice = NONE
    length: Choice = NONE
    closure: Choice = NONE


@dataclass
class Work:
    """``sleeve_end`` is the line across the right sleeve's end (or its cuff); ``opening`` the line an opening
    runs along, from its top; ``collar_edge`` the right half of the collar's outer edge; ``flap`` the lower
    edge of a short skirt over legs; ``under`` a skirt of its own below the trunk; ``seams`` the yoke seams,
    right halves. ``back`` is True while the back is drawn."""

    record: Record
    build: Build
    figure: Figure
    period: Period
    year: float
    chosen: Chosen
    outline: Outline | None
    legs: Legs | None
    back: bool = False
    sheet: Sheet = field(default_factory=Sheet)
    sleeve_end: Path | None = None
    sleeve_outer: Path | None = None
    opening: Path | None = None
    fold: float = 0.0
    collar_edge: Path | None = None
    flap: Path | None = None
    under: Work | None = None
    seams: list[Path] = field(default_factory=list)

    @property
    def s(self) -> float:
        """Centimetres of this figure to one of a woman's, for sizes that go with the body."""
        return self.figure.girth

    def edge(self, choice: Choice) -> Pen:
        """Lighter where the plate does not say."""
        return FAINT if choice.assumed else LINE

    @property
    def waist(self) -> float:
        """The height of the waist seam, or of the natural waist."""
        if self.outline is not None and self.outline.waist is not None:
            return self.outline.waist
        return self.figure.y("waist")

    @property
    def has_skirt(self) -> bool:
        """Whether there is cloth below the waist that hangs free as a skirt."""
        return self.outline is not None and (self.build.skirt or self.build.body == "skirt")
