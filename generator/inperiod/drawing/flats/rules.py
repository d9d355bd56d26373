"""What hides or excludes what: every rule in one place, each with the sentence that is put under the flat."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from inperiod.drawing.flats.garments import Build
from inperiod.drawing.flats.record import Record
from inperiod.records.model import Feature


@dataclass(frozen=True, slots=True)
class Rule:
    """``hides`` says of a feature, on that garment with that record, whether the rule keeps it out."""

    says: str
    hides: Callable[[Feature, Record, Build], bool]


def _in(*facets: str) -> Callable[[Feature, Record, Build], bool]:
    return lambda feature, record, build: feature.facet in facets


def _no_trunk(feature: Feature, record: Record, build: Build) -> bool:
    trunk = ("neckline", "collar", "sleeve")
    return not build.body and not build.head and feature.facet in trunk


def _second_of_one(feature: Feature, record: Record, build: Build) -> bool:
    """Facets of which a garment has one at a time; closures and yokes may be several."""
    single = ("silhouette", "neckline", "collar", "waist", "skirt-length", "sleeve", "skirt-cut")
    if feature.facet not in single:
        return False
    shown = [each for each in record.features if each.facet == feature.facet and each.state == "shown"]
    return len(shown) > 1 and feature is not shown[0]


def _slip_on(feature: Feature, record: Record, build: Build) -> bool:
    return (
        feature.term in ("fastening/hooks-and-eyes", "fastening/press-studs", "fastening/slide-fastener")
        and record.has("closure/slip-on") is not None
        and len(record.all("closure")) == 1
    )


def _no_skirt(feature: Feature, record: Record, build: Build) -> bool:
    skirted = build.skirt or build.body == "skirt" or build.under
    return feature.facet in ("skirt-cut", "skirt-length") and not skirted


def _inside_waist(feature: Feature, record: Record, build: Build) -> bool:
    return feature.facet == "waist" and not build.body and not build.skirt


def _no_silhouette(feature: Feature, record: Record, build: Build) -> bool:
    return feature.facet == "silhouette" and not build.body and not build.skirt


def _sleeveless_cuff(feature: Feature, record: Record, build: Build) -> bool:
    return feature.at == "cuff" and (
        record.has("sleeve/sleeveless", "sleeve/strap") is not None or not build.body
    )


def _unseen_seam(feature: Feature, record: Record, build: Build) -> bool:
    shows = (
        "seam/hem-stitched",
        "seam/slot-seam",
        "seam/lapped-seam",
        "seam/welt-seam",
        "seam/picot-machine",
    )
    return feature.facet == "seam" and feature.term not in shows


RULES: tuple[Rule, ...] = (
    Rule("a lining or its boning lies inside", _in("lining")),
    Rule("how it was worked does not show in outline", _in("work")),
    Rule("the inside of a seam does not show", _unseen_seam),
    Rule("nothing above the waist is drawn of this garment", _no_trunk),
    Rule("another term of the same kind is drawn; only one can be", _second_of_one),
    Rule("a garment slipped on has no opening for it to close", _slip_on),
    Rule("this garment has no skirt", _no_skirt),
    Rule("legs are drawn by their own width and length", _inside_waist),
    Rule("legs are drawn by their own width and length", _no_silhouette),
    Rule("there is no sleeve for it to be on", _sleeveless_cuff),
)


def apply_rules(record: Record, build: Build) -> None:
    """Mark what is hidden, each by the first rule that hides it."""
    for feature in record.features:
        if feature.state != "shown":
            continue
        for rule in RULES:
            if rule.hides(feature, record, build):
                record.leave(feature, rule.says)
                break
