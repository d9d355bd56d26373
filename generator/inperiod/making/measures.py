"""Lengths: read as people write them, kept as exact fractions of an inch, said in inches and centimetres.

One inch is 2.54 cm exactly (the international yard and pound agreement of 1959), so nothing is lost between
the two. Only what is said is rounded: to 1/16 in, or 1/8 in from six inches up, and to 0.1 cm. What is to be
cut is rounded up, never down.
"""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

CENTIMETRE = Fraction(50, 127)
METRE = 100 * CENTIMETRE
YARD = Fraction(36)
LONGEST = 36_000
LARGEST = 1_000_000
SMALLEST = Fraction(1, 10_000)

_UNITS: Mapping[str, Fraction] = {
    **dict.fromkeys(("in", "ins", "inch", "inches"), Fraction(1)),
    **dict.fromkeys(("ft", "foot", "feet"), Fraction(12)),
    **dict.fromkeys(("yd", "yds", "yard", "yards"), YARD),
    **dict.fromkeys(("mm", "millimetre", "millimetres", "millimeter", "millimeters"), CENTIMETRE / 10),
    **dict.fromkeys(("cm", "cms", "centimetre", "centimetres", "centimeter", "centimeters"), CENTIMETRE),
    **dict.fromkeys(("m", "metre", "metres", "meter", "meters"), METRE),
}
_METRIC = re.compile("^[cm]")
_SPACES = re.compile("[ \t\r\n\u00a0\u2007\u2009\u200a\u202f]+")
_SIGNS: Mapping[str, str] = {
    **{"½": " 1/2", "¼": " 1/4", "¾": " 3/4", "⅓": " 1/3", "⅔": " 2/3"},
    **{"⅛": " 1/8", "⅜": " 3/8", "⅝": " 5/8", "⅞": " 7/8", "⁄": "/", "″": " in ", "”": " in ", '"': " in "},
    **{"′": " ft ", "’": " ft ", "'": " ft "},
}
_DIGITS = "[0-9]{1,9}"
_QUANTITY = (
    f"{_DIGITS}[ -]{_DIGITS}/{_DIGITS}|{_DIGITS}/{_DIGITS}|{_DIGITS}[.][0-9]{{1,20}}"
    # A comma before three digits may be a thousand: not guessed at.
    f"|{_DIGITS},[0-9]{{1,2}}|{_DIGITS}"
)
_NUMBER = re.compile(f"^(?:{_QUANTITY})$")
_PART = re.compile(f"^({_QUANTITY}) ?([a-z]+)[.,]?(?: |$)")
EXPECTED = "a length with its unit, such as 34 1/2 in, 1/4 in, 1 yd 4 in, 2.5 cm or 1.2 m"


class UnreadableMeasure(ValueError):
    """What was written is no measure. ``expected`` says what would have been."""

    def __init__(self, message: str, expected: str) -> None:
        super().__init__(message)
        self.expected = expected


@dataclass(frozen=True, slots=True)
class Measure:
    """A length in inches, and whether it was written in metric units."""

    inches: Fraction
    metric: bool


def quoted(value: object) -> str:
    """A value from a record in a message, shortened; the browser's side says it in the same words."""
    if value is None:
        return "Nothing"
    if isinstance(value, bool):
        return "“true”" if value else "“false”"
    if isinstance(value, int | float):
        text = number_text(value)
        return f"“{text}”" if text else "This number"
    if isinstance(value, str):
        text = tidied(value)
        return f"“{text if len(text) <= 60 else text[:59] + '…'}”"
    return "A list" if isinstance(value, list | tuple) else "A set of fields"


def number_text(value: float) -> str | None:
    """A number as both sides write it; None for one no garment has need of."""
    if not abs(value) < LARGEST or 0 < abs(value) < SMALLEST:  # no NaN passes the first
        return None
    return str(int(value)) if value == int(value) else repr(float(value))


def read_number(value: object) -> Fraction:
    """A number without a unit: 1.5, 1 1/2, 2½. Raises ``UnreadableMeasure``."""
    expected = "a number, such as 2, 1.5 or 1 1/2"
    text = number_text(value) if isinstance(value, int | float) and not isinstance(value, bool) else value
    if isinstance(text, str):
        text = _plain(text)
        if _NUMBER.match(text) and (found := _quantity(text)) is not None:
            return found
    wrong = "This number is beyond all garments." if text is None and value is not None else None
    raise UnreadableMeasure(wrong or f"{quoted(value)} is not a number.", expected)


def read_measure(value: object) -> Measure:
    """A length: one or more numbers, each with its unit. Raises ``UnreadableMeasure``.

    The numbers may have fractions (2 1/2, 2-1/2, 2½, 1/4) or a decimal point. A number without a unit is not
    guessed at. Longest 1000 yards.
    """
    if not isinstance(value, str):
        if isinstance(value, int | float) and not isinstance(value, bool) and (text := number_text(value)):
            raise UnreadableMeasure(f"“{text}” has no unit.", f"{text} in or {text} cm")
        raise UnreadableMeasure(f"{quoted(value)} is not a measure.", EXPECTED)
    rest = _plain(value)
    if _NUMBER.match(rest):
        raise UnreadableMeasure(f"{quoted(value)} has no unit.", f"{rest} in or {rest} cm")
    total, units = Fraction(0), []
    while rest and (part := _PART.match(rest)):
        amount, unit = _quantity(part[1]), part[2]
        if unit not in _UNITS or amount is None:
            break
        total += amount * _UNITS[unit]
        units.append(unit)
        rest = rest[part.end() :]
    if rest or not units:
        raise UnreadableMeasure(f"{quoted(value)} is not a measure.", EXPECTED)
    if total > LONGEST:
        raise UnreadableMeasure(f"{quoted(value)} is longer than 1000 yards.", EXPECTED)
    return Measure(total, bool(_METRIC.match(units[0])))


def tidied(text: str) -> str:
    """Without spaces at the ends, and one space where there were several."""
    return _SPACES.sub(" ", text).strip(" ")


def _plain(text: str) -> str:
    return tidied("".join(_SIGNS.get(sign, sign) for sign in text).lower())


def _quantity(text: str) -> Fraction | None:
    """``2 1/2``, ``2-1/2``, ``1/4``, ``2.5``, ``2,5`` or ``2``; None where it divides by nothing."""
    if "/" not in text:
        return Fraction(text.replace(",", "."))
    whole, _, part = text.replace("-", " ").rpartition(" ")
    above, below = part.split("/")
    return Fraction(int(whole or 0)) + Fraction(int(above), int(below)) if int(below) else None


# Saying them ---------------------------------------------------------------------------------------


def nearest(value: Fraction) -> int:
    """The nearest whole number, a half going up."""
    return math.floor(value + Fraction(1, 2))


def mixed(value: Fraction) -> str:
    """A whole number and a fraction in its lowest terms: ``2 1/4``."""
    whole = math.floor(value)
    part = value - whole
    if not part:
        return str(whole)
    return f"{whole} {part}" if whole else str(part)


def decimal(value: Fraction, places: int = 3) -> str:
    """A decimal of at most that many places, without needless noughts."""
    scale = int(10**places)
    count = nearest(value * scale)
    text = f"{count // scale}.{count % scale:0{places}d}".rstrip("0").rstrip(".")
    return text


def _inches(value: Fraction, up: bool, fine: bool) -> Fraction:
    parts = 16 if fine or value < 6 else 8
    return Fraction(math.ceil(value * parts) if up else nearest(value * parts), parts)


def _centimetres(value: Fraction, up: bool) -> Fraction:
    tenths = value / CENTIMETRE * 10
    return Fraction(math.ceil(tenths) if up else nearest(tenths), 10)


def _both(value: Fraction, metric: bool, up: bool, fine: bool) -> str:
    imperial = f"{mixed(_inches(value, up, fine))} in"
    other = f"{decimal(_centimetres(value, up), 1)} cm"
    return f"{other} ({imperial})" if metric else f"{imperial} ({other})"


def shown(value: Fraction, metric: bool) -> str:
    """Both units, the writer's own first, to the nearest 1/16 in and 0.1 cm: ``2 1/4 in (5.7 cm)``."""
    return _both(value, metric, up=False, fine=True)


def to_cut(value: Fraction, metric: bool) -> str:
    """Both units, rounded up: what is cut is never too short."""
    return _both(value, metric, up=True, fine=False)


def said(value: Fraction, metric: bool) -> str:
    """One unit, the writer's own, for a formula in words; ``about`` where it is rounded."""
    if metric:
        rounded = _centimetres(value, up=False)
        text, exact = f"{decimal(rounded, 1)} cm", rounded * CENTIMETRE == value
    else:
        rounded = _inches(value, up=False, fine=True)
        text, exact = f"{mixed(rounded)} in", rounded == value
    return text if exact else f"about {text}"


def to_buy(value: Fraction, metric: bool, step: Fraction | None = None) -> tuple[Fraction, str]:
    """Inches to buy and how a shop would say it: rounded up to 1/8 yd or 0.1 m, or to ``step`` (inches)."""
    if metric:
        bought = _rounded_up(value, step or METRE / 10)
        other = f"{mixed(_rounded_up(value, YARD / 8) / YARD)} yd"
        return bought, f"{decimal(bought / METRE)} m ({other})"
    bought = _rounded_up(value, step or YARD / 8)
    return bought, f"{mixed(bought / YARD)} yd ({decimal(_rounded_up(value, METRE / 10) / METRE)} m)"


def _rounded_up(value: Fraction, step: Fraction) -> Fraction:
    return math.ceil(value / step) * step
