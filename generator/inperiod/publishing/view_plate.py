"""A plate's page: what it shows, when, how that is known, how to cite it, what stands near it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from inperiod.drawing.flats import CAPTION
from inperiod.publishing import citations, machine_tags, paths, words
from inperiod.publishing.lookup import Lookup
from inperiod.publishing.nearness import Neighbours
from inperiod.publishing.page import Link
from inperiod.publishing.pictures import on_the_same_page, outlines_on_page, picture_of
from inperiod.publishing.prose import web_address
from inperiod.records.checks.readings import open_disputes
from inperiod.records.model import Confirmation, Feature, Plate, Recorded, Source

GROUPS: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("Form", ("silhouette", "waist", "skirt-cut", "skirt-length", "lower-edge")),
    ("Neck and sleeve", ("neckline", "collar", "yoke", "sleeve")),
    ("Opening", ("closure", "fastening")),
    ("Ornament", ("trim", "fullness")),
    ("Cloth", ("fabric", "colour", "lining")),
    ("Making", ("seam", "work")),
)


QUOTES = tuple("\"'“‘„«‹»")


@dataclass(frozen=True, slots=True)
class Shown:
    """A feature on the page: a link to its term or a plain word, what is said beside it, and its note."""

    link: Link | None
    word: str
    detail: str
    inferred: bool
    note: str | None


@dataclass(frozen=True, slots=True)
class FacetRow:
    label: str
    path: str | None
    shown: tuple[Shown, ...]


@dataclass(frozen=True, slots=True)
class Group:
    label: str
    rows: tuple[FacetRow, ...]


@dataclass(frozen=True, slots=True)
class Fact:
    """A label, a value, a smaller note under it, and where the value leads (a path of the site or an
    address)."""

    label: str
    value: str
    note: str | None = None
    path: str | None = None
    address: str | None = None


def plate_view(look: Lookup, near: Neighbours, plate: Plate) -> Mapping[str, Any]:
    """What the template ``plate.html`` shows."""
    source = look.source_of(plate)
    page_mates = on_the_same_page(look.catalogue, plate)
    entry = look.entry(plate.key)
    return {
        "garment": look.garment_link(plate.garment),
        "source": source,
        "source_link": Link(words.shortened(source.title, 96), paths.source_path(source.id)),
        "number": words.place(plate.locator),
        "when": words.when(look.catalogue.dated(plate)),
        "caption": plate.caption,
        "quoted": (plate.caption or "").lstrip()[:1] in QUOTES,
        "translation": plate.translation,
        "language": plate_language(source, look.catalogue.settings.language),
        "groups": groups(look, plate),
        "facts": facts(look, plate),
        "dating": dating(source, plate),
        "grade": source.grade,
        "grade_words": words.GRADES.get(source.grade or ""),
        "weighed": weighed(source),
        "citations": citations.of_plate(entry),
        "records": citations.records_of(look, plate.key),
        "tags": machine_tags.citation_tags(look.catalogue, plate, entry.item),
        "json_ld": machine_tags.json_ld(look.catalogue, plate, entry.item),
        "rights": rights(source),
        "disputed": bool(open_disputes(plate)),
        "picture": picture_of(look.catalogue, plate),
        "page_mates": look.lines(page_mates),
        "page_outlines": outlines_on_page(look.catalogue, page_mates),
        "flat": look.flat(plate.key),
        "flat_caption": CAPTION,
        "note": plate.note,
        "mates": look.lines(look.outfit(plate)),
        "cuts": look.lines(look.cuts.get(plate.key, ())),
        "near": tuple(
            look.line(each.plate, ", ".join(look.term_label(term) for term in each.shared))
            for each in near.of(plate.key)
        ),
        "key": plate.key,
    }


def plate_language(source: Source, language: str) -> str | None:
    """The language of the caption where it differs from the page's."""
    return source.language if source.language and source.language != language else None


def groups(look: Lookup, plate: Plate) -> tuple[Group, ...]:
    """The features by groups of facets; facets no group names come last."""
    by_facet: dict[str, list[Feature]] = {}
    for feature in plate.features:
        by_facet.setdefault(feature.facet, []).append(feature)
    grouped = {facet for _, facets in GROUPS for facet in facets}
    rest = tuple(facet for facet in by_facet if facet not in grouped)
    disputes = {each.feature: each for each in open_disputes(plate)}
    made = []
    for label, facets in (*GROUPS, ("Also recorded", rest)):
        rows = tuple(_row(look, facet, by_facet[facet], disputes) for facet in facets if facet in by_facet)
        if rows:
            made.append(Group(label, rows))
    return tuple(made)


def _row(
    look: Lookup, facet_id: str, features: list[Feature], disputes: Mapping[str | None, Confirmation]
) -> FacetRow:
    facet = look.facet(facet_id)
    return FacetRow(
        facet.label if facet else words.sentence(facet_id.replace("-", " ")),
        paths.facet_path(facet_id) if facet else None,
        tuple(_shown(look, feature, disputes) for feature in features),
    )


def _shown(look: Lookup, feature: Feature, disputes: Mapping[str | None, Confirmation]) -> Shown:
    dispute = _disputed(look, disputes.get(feature.word))
    if feature.state == "none":
        return Shown(None, "none", f"looked for, and not there{dispute}", False, feature.note)
    if feature.state == "not visible" or feature.term is None:
        return Shown(None, "not visible", f"cannot be told from this plate{dispute}", False, feature.note)
    return Shown(
        look.term_link(feature.term),
        look.term_label(feature.term),
        f"{words.detail(feature)}{dispute}".removeprefix(", "),
        feature.reading == "inferred",
        feature.note,
    )


def _disputed(look: Lookup, dispute: Confirmation | None) -> str:
    """That a second reader reads it otherwise, to stand after what else is said of the reading."""
    if dispute is None:
        return ""
    other = f", who reads {_reading(look, dispute.instead)}" if dispute.instead else ""
    return f", disputed by {dispute.by}{other}"


def facts(look: Lookup, plate: Plate) -> tuple[Fact, ...]:
    """What else the plate says of itself."""
    made = [
        Fact("Garment", look.garment(plate.garment), path=look.garment_link(plate.garment).path),
        Fact("For", words.sentence(words.wearer(plate.wearer) or "")),
        Fact("Occasion", plate.occasion or ""),
        Fact("Price", words.price(plate.price) or "", plate.price.note if plate.price else None),
        Fact("Picture", words.sentence(words.medium(plate) or "")),
        Fact("Recorded", recorded(plate.recorded) or ""),
        *(_read_again(look, each) for each in plate.confirmations),
    ]
    return tuple(fact for fact in made if fact.value)


def _read_again(look: Lookup, found: Confirmation) -> Fact:
    """What a second reader found, of one reading or of the whole plate."""
    on = f", {words.when(found.on)}" if found.on else ""
    what = f": {_reading(look, found.feature)}" if found.feature else ""
    instead = {"corrected": "now", "disputed": "would read"}.get(found.reading, "or")
    other = f", {instead} {_reading(look, found.instead)}" if found.instead else ""
    said = f"{words.sentence(found.reading)} by {found.by}{on}{what}{other}"
    term = look.catalogue.vocabulary.terms.get(found.feature or "")
    return Fact("Read again", said, found.note, look.term_link(term.key).path if term else None)


def _reading(look: Lookup, word: str) -> str:
    """A reading as written, ``trim/none`` for one, in words."""
    facet, _, term = word.partition("/")
    if facet == "garment":
        return look.garment(term)
    return f"{facet.replace('-', ' ')} {term}" if term in ("none", "not visible") else look.term_label(word)


def recorded(value: Recorded | None) -> str | None:
    """``by T. O., 2025-11-24``; None where nobody is named."""
    if value is None:
        return None
    parts = [f"by {value.by}" if value.by else "", f"on {value.on}" if value.on else ""]
    return words.sentence(" ".join(part for part in parts if part)) or None


def dating(source: Source, plate: Plate | None = None) -> tuple[Fact, ...]:
    """How the date is known, step by step."""
    own = plate.date if plate else None
    date = own or source.date
    made = [
        Fact("As printed", source.date_printed or ""),
        Fact(
            "Date",
            words.sentence(words.when(date)) if date else "Undated",
            f"Written {date.text} in the record." if date else "It is counted nowhere.",
        ),
    ]
    if own:
        made.append(
            Fact(
                "Of the plate", "This plate has a date of its own; the source’s is " + words.when(source.date)
            )
        )
    for label, other in (
        ("On sale", source.on_sale),
        ("Made", source.made),
        ("Photographed", source.photographed),
        ("Altered", source.altered),
        ("Worn", source.worn),
    ):
        if other and not (date and other.text == date.text):
            made.append(Fact(label, words.sentence(words.when(other))))
    basis = words.BASIS.get(source.date_basis or "")
    made.append(
        Fact("Known from", basis or "Nothing is recorded of what the date rests on, so it is not counted.")
    )
    if source.grade:
        made.append(Fact("Grade", f"{source.grade}: {words.GRADES[source.grade]}"))
    made.append(Fact("Argument", source.date_note or ""))
    return tuple(fact for fact in made if fact.value)


def weighed(source: Source) -> str | None:
    """Why evidence leaves the source out; None where it does not for a reason seen here."""
    if source.date is None:
        return "An undated source is shown but counted nowhere."
    if source.date_basis == "style":
        return (
            "A date judged from the dress itself never helps to date a feature: the argument would go "
            "round in a circle."
        )
    if source.reprint_of:
        return "A reprint is counted once, with the source it repeats."
    return None


def rights(source: Source) -> Fact:
    """Rights in words, leading to the statement itself."""
    said = words.rights(source.rights)
    return Fact("Rights", said or "No rights statement is recorded.", address=web_address(source.rights))
