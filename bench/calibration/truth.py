"""What is true: when terms are in use, and how much. Years are decimal; shares lie between 0 and 1."""

from __future__ import annotations

from dataclasses import dataclass, replace
from random import Random


@dataclass(frozen=True, slots=True)
class Spell:
    """One time of use: the share rises from ``begins``, holds at ``peak``, and falls to nothing."""

    begins: float
    full: float
    wanes: float
    ends: float
    peak: float

    def at(self, year: float) -> float:
        """The share of garments made in that year that have the feature."""
        if not self.begins < year < self.ends:
            return 0.0
        if year < self.full:
            return self.peak * (year - self.begins) / (self.full - self.begins)
        if year > self.wanes:
            return self.peak * (self.ends - year) / (self.ends - self.wanes)
        return self.peak

    def later(self, years: float) -> Spell:
        """The same rise and fall so many years later."""
        return replace(
            self,
            begins=self.begins + years,
            full=self.full + years,
            wanes=self.wanes + years,
            ends=self.ends + years,
        )


@dataclass(frozen=True, slots=True)
class Use:
    """Rise, plateau and fall, and for some terms a revival. Spells do not overlap."""

    spells: tuple[Spell, ...]

    @property
    def begins(self) -> float:
        return self.spells[0].begins

    @property
    def ends(self) -> float:
        return self.spells[-1].ends

    def at(self, year: float) -> float:
        return sum(spell.at(year) for spell in self.spells)

    def later(self, years: float) -> Use:
        return Use(tuple(spell.later(years) for spell in self.spells))

    def in_use(self, first: float, end: float) -> bool:
        """Whether it is in use at any time from ``first`` up to ``end``."""
        return any(spell.begins < end and spell.ends > first for spell in self.spells)

    def mean(self, first: float, end: float, steps: int = 12) -> float:
        """The average share over that time, from equal steps."""
        return sum(self.at(first + (i + 0.5) * (end - first) / steps) for i in range(steps)) / steps


def use_by_chance(chance: Random, first: float, last: float, revivals: float) -> Use:
    """A term's use. Its first spell begins between fifteen years before ``first`` and five before ``last``.

    The peak is log-uniform from 2 to 60 %: most features are rare, few are on every other garment. A
    revival, where there is one, comes 8 to 30 years after the first spell has ended.
    """
    spell = _spell(chance, chance.uniform(first - 15, last - 5))
    spells = [spell]
    if chance.random() < revivals:
        spells.append(_spell(chance, spell.ends + chance.uniform(8, 30)))
    return Use(tuple(spells))


def _spell(chance: Random, begins: float) -> Spell:
    full = begins + chance.uniform(1, 6)
    wanes = full + chance.uniform(3, 25)
    ends = wanes + chance.uniform(1, 8)
    return Spell(begins, full, wanes, ends, 0.02 * 30 ** chance.random())
