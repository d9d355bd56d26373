"""Records in words: kinds, bases, rights, places in a source, prices, dates."""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import lru_cache
from urllib.parse import urlsplit

from inperiod.dating import in_words
from inperiod.records.model import Dated, Feature, Locator, Plate, Price, Source, Wearer

KINDS: Mapping[str, tuple[str, str]] = {
    "trade-catalogue": ("trade catalogue", "trade catalogues"),
    "magazine-issue": ("magazine issue", "magazine issues"),
    "newspaper": ("newspaper", "newspapers"),
    "pattern-sheet": ("pattern sheet", "pattern sheets"),
    "pattern-envelope": ("pattern envelope", "pattern envelopes"),
    "sewing-manual": ("sewing manual", "sewing manuals"),
    "fashion-plate": ("fashion plate", "fashion plates"),
    "advertisement": ("advertisement", "advertisements"),
    "photograph": ("photograph", "photographs"),
    "extant": ("surviving piece", "surviving pieces"),
    "sale-listing": ("sale listing", "sale listings"),
    "other": ("other source", "other sources"),
}

BASIS: Mapping[str, str] = {
    "printed": "The date is printed in the source itself.",
    "internal": "The date follows from what the source says or shows of its own time.",
    "documented": "The date is documented elsewhere, by a record of the time.",
    "institution": "The date is that given by the institution that keeps it.",
    "seller": "The date is that given by the seller.",
    "style": "The date was judged from the dress itself. It is never counted: that would date the "
    "dress by itself.",
    "estimate": "The date is an estimate.",
}

GRADES: Mapping[str, str] = {
    "A": "a firm date: printed, internal or documented",
    "B": "a date given by an institution",
    "C": "a weak date: a seller’s, an estimate, or judged from style",
}

GRADES_IN_SHORT: Mapping[str, str] = {
    "A": "A, firm",
    "B": "B, an institution’s",
    "C": "C, weak",
    "none": "none given",
}

READINGS: Mapping[str, str] = {
    "seen": "",
    "read": "from the text",
    "inferred": "inferred, not counted",
}

WHO: Mapping[str, str] = {
    "woman": "a woman",
    "man": "a man",
    "girl": "a girl",
    "boy": "a boy",
    "infant": "an infant",
}

WORN_BY: Mapping[str, str] = {
    "woman": "women",
    "man": "men",
    "girl": "girls",
    "boy": "boys",
    "infant": "infants",
    "any": "anyone",
}

LANGUAGES: Mapping[str, str] = {
    "cs": "Czech",
    "da": "Danish",
    "de": "German",
    "en": "English",
    "es": "Spanish",
    "fi": "Finnish",
    "fr": "French",
    "hu": "Hungarian",
    "it": "Italian",
    "ja": "Japanese",
    "nl": "Dutch",
    "no": "Norwegian",
    "pl": "Polish",
    "pt": "Portuguese",
    "ru": "Russian",
    "sv": "Swedish",
}

# The statements' own titles, https://rightsstatements.org/page/1.0/ (memory).
_STATEMENTS: Mapping[str, str] = {
    "InC": "In copyright",
    "InC-OW-EU": "In copyright: an EU orphan work",
    "InC-EDU": "In copyright: educational use permitted",
    "InC-NC": "In copyright: non-commercial use permitted",
    "InC-RUU": "In copyright: rights-holder unlocatable or unidentifiable",
    "NoC-CR": "No copyright, but contractual restrictions",
    "NoC-NC": "No copyright: non-commercial use only",
    "NoC-OKLR": "No copyright, but other known legal restrictions",
    "NoC-US": "No copyright in the United States",
    "CNE": "Copyright not evaluated",
    "UND": "Copyright undetermined",
    "NKC": "No known copyright",
}

# Creative Commons' own names, https://creativecommons.org/share-your-work/cclicenses/ (memory).
_CONDITIONS: Mapping[str, str] = {
    "by": "Attribution",
    "nc": "NonCommercial",
    "nd": "NoDerivatives",
    "sa": "ShareAlike",
}


def language(tag: str | None) -> str:
    """A language tag in words: ``fr-CA`` is French; one that is not known stays as written."""
    return LANGUAGES.get((tag or "").partition("-")[0].lower(), tag or "")


def pages(text: str) -> str:
    """A range of pages with a dash between figures, not a hyphen."""
    return re.sub(r"(?<=\d)-(?=\d)", "–", text)


def kind(source: Source, many: bool = False) -> str:
    """The kind of source in words; one that is not known is shown as written."""
    one, several = KINDS.get(source.kind, (source.kind.replace("-", " "), source.kind.replace("-", " ")))
    return several if many else one


def sentence(text: str) -> str:
    """With its first letter large, the rest untouched."""
    return text[:1].upper() + text[1:]


def counted(number: int, one: str, many: str | None = None) -> str:
    """``1 plate``, ``3 plates``; thousands are set apart."""
    return f"{number:,} {one if number == 1 else many or one + 's'}"


def rights(address: str | None) -> str | None:
    """A rights statement or licence address in words; None where there is none; others as written."""
    if not address:
        return None
    parts = urlsplit(address.strip())
    steps = [step for step in parts.path.split("/") if step]
    if parts.netloc.lower().endswith("rightsstatements.org") and len(steps) >= 2:
        return _STATEMENTS.get(steps[1], address)
    if parts.netloc.lower().endswith("creativecommons.org") and len(steps) >= 2:
        version = steps[2] if len(steps) > 2 else ""
        if steps[:2] == ["publicdomain", "zero"]:
            return f"Given to the public domain (CC0 {version})".replace(" )", ")")
        if steps[:2] == ["publicdomain", "mark"]:
            return "Public domain"
        words = [_CONDITIONS.get(part, part) for part in steps[1].split("-")]
        return f"Creative Commons {'-'.join(words)} {version}".strip()
    return address


_SEVERAL_PAGES = re.compile(r"\d\s*[-–]\s*\d")


def place(locator: Locator) -> str:
    """Where in the source, as a citation says it: ``p. 14, Pl. 3, fig. 2, no. 2207``."""
    sign = "pp." if _SEVERAL_PAGES.search(locator.page or "") else "p."
    parts = [
        f"{sign} {pages(locator.page)}" if locator.page else "",
        f"Pl. {locator.plate}" if locator.plate else "",
        f"fig. {locator.figure}" if locator.figure else "",
        f"col. {locator.column}" if locator.column else "",
        f"no. {locator.item}" if locator.item else "",
    ]
    return ", ".join(part for part in parts if part)


def short_place(locator: Locator) -> str:
    """The two coarsest parts of the place, for a line of a list."""
    return ", ".join(place(locator).split(", ")[:2])


_ONE_YEAR = re.compile(r"(.+) (\d{4}) to (.+) \2\Z")
_MONTH = re.compile(r"\b(Jan|Feb|Mar|Apr|Aug|Sept|Oct|Nov|Dec)[a-z]+\b")


def when(dated: Dated | None) -> str:
    """A date in words, or ``undated``: ``March to August 1926``."""
    return _when(dated.text) if dated else "undated"


@lru_cache(maxsize=4096)
def _when(edtf: str) -> str:
    return _ONE_YEAR.sub(r"\1 to \3 \2", in_words(edtf))


def brief(dated: Dated | None) -> str:
    """A date in few words, for the end of a line: ``Mar–Aug 1926``."""
    return _MONTH.sub(r"\1", when(dated)).replace(" to ", "–")


def shortened(text: str, most: int = 64) -> str:
    """The text, cut at a word with an ellipsis where it is longer than ``most`` characters."""
    return text if len(text) <= most else text[:most].rsplit(" ", 1)[0].rstrip(" ,;:.") + " …"


def wearer(who: Wearer) -> str | None:
    """Whom it is for, in words; None where nothing is known."""
    parts = [WHO.get(who.who, ""), who.status or "", who.age or "", f"sizes {who.sizes}" if who.sizes else ""]
    return ", ".join(part for part in parts if part) or None


def price(value: Price | None) -> str | None:
    """The price as printed, its currency where the figure does not show it already."""
    if value is None:
        return None
    shown = bool(re.search(r"[^\d.,/\s-]", value.amount)) or "/" in value.amount
    return value.amount if shown or not value.currency else f"{value.amount} {value.currency}"


def detail(feature: Feature) -> str:
    """Where a feature sits, how wide, how many, of what colour, how it was read."""
    reading = READINGS.get(feature.reading, feature.reading)
    if not (feature.at or feature.width or feature.count or feature.colour):  # as most are
        return reading
    parts = [
        f"at the {feature.at}"
        if feature.at and not feature.at.startswith(("at ", "the "))
        else feature.at or "",
        f"{feature.width} wide" if feature.width else "",
        f"{feature.count} of them" if feature.count else "",
        feature.colour or "",
        reading,
    ]
    return ", ".join(part for part in parts if part)


def medium(plate: Plate) -> str | None:
    """``front view, cut, retouched``: what kind of picture the plate is; None where nothing is recorded."""
    view = {"text only": "words alone", "detail": "a detail"}.get(plate.view or "") or (
        f"{plate.view} view" if plate.view else ""
    )
    parts = [view, plate.medium or "", *plate.treatment]
    return ", ".join(part for part in parts if part) or None
