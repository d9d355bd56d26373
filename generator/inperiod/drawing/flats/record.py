"""What a plate records, while it is drawn: every feature ends up drawn, hidden by a rule, or named."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field

from inperiod.records.model import Feature

UNDRAWN = {
    "fabric": "a line does not tell this cloth from another",
    "colour": "not told by line or tone",
    "closure": "no place for such an opening on this garment",
    "fastening": "no opening recorded that it could close",
    "trim": "no place for it on this garment as drawn",
    "seam": "too small to show in a whole garment",
}
"""Why a feature is not drawn where no rule says so."""


@dataclass(frozen=True, slots=True)
class Choice:
    """The term a part is drawn as. ``feature`` is None where the plate does not say and the period's usual
    one is drawn."""

    id: str
    feature: Feature | None = None

    @property
    def assumed(self) -> bool:
        return self.feature is None and self.id != "none"


@dataclass
class Record:
    """The features of one plate and what became of each."""

    features: tuple[Feature, ...]
    fate: dict[int, str] = field(default_factory=dict)
    """By place: an empty text for what is drawn, otherwise why it is not."""
    assumed: list[str] = field(default_factory=list)
    """``facet/id`` of what was drawn without being recorded."""

    def _shown(self, facet: str) -> list[Feature]:
        return [
            feature
            for place, feature in enumerate(self.features)
            if feature.facet == facet and feature.state == "shown" and not self.fate.get(place)
        ]

    def all(self, facet: str) -> list[Feature]:
        """The facet's features that are shown and not hidden by a rule."""
        return self._shown(facet)

    def has(self, *keys: str) -> Feature | None:
        """The first feature with one of these terms that is shown and not hidden."""
        for place, feature in enumerate(self.features):
            if feature.term in keys and feature.state == "shown" and not self.fate.get(place):
                return feature
        return None

    def none(self, facet: str) -> bool:
        """Whether it was looked for and found absent."""
        return any(feature.facet == facet and feature.state == "none" for feature in self.features)

    def choose(self, facet: str, default: str, allowed: Callable[[str], bool] | None = None) -> Choice:
        """The facet's term to draw: the first recorded one, ``none`` where it is absent, else the default."""
        for feature in self._shown(facet):
            name = _id(feature)
            if allowed is None or allowed(name):
                self.drew(feature)
                return Choice(name, feature)
        if self.none(facet):
            return Choice("none")
        if default != "none":
            self.assumed.append(f"{facet}/{default}")
        return Choice(default)

    def drew(self, *features: Feature | None) -> None:
        """Say that these are in the drawing."""
        for feature in features:
            if feature is not None:
                self.fate.setdefault(self._place(feature), "")

    def leave(self, feature: Feature, reason: str) -> None:
        """Say why this one is not in the drawing."""
        self.fate[self._place(feature)] = reason

    def _place(self, feature: Feature) -> int:
        for place, each in enumerate(self.features):
            if each is feature:
                return place
        raise ValueError("a feature of another plate")

    def left(self) -> list[tuple[Feature, str]]:
        """What is recorded as shown and not drawn, each with the reason."""
        return [
            (feature, self.fate.get(place) or UNDRAWN.get(feature.facet, "no line for it on this garment"))
            for place, feature in enumerate(self.features)
            if feature.state == "shown" and self.fate.get(place, "-") != ""
        ]

    def drawn(self) -> list[Feature]:
        """What is recorded as shown and drawn."""
        return [feature for place, feature in enumerate(self.features) if self.fate.get(place) == ""]


def _id(feature: Feature) -> str:
    return (feature.term or "").partition("/")[2]


def term_id(feature: Feature) -> str:
    """The term without its facet."""
    return _id(feature)
