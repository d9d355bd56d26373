"""The features of one plate go together as garments do. Common practice, no source."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from inperiod.records.model import Catalogue, Plate

BATHING = {"bathing-dress", "bathing-suit", "bathing-two-piece", "bathing-trunks"}


def shown(catalogue: Catalogue) -> Iterator[tuple[Plate, set[str]]]:
    for plate in catalogue.all_plates():
        yield plate, {feature.term for feature in plate.features if feature.term}


def test_what_is_slipped_on_has_nothing_to_hook(demo_catalogue: Catalogue) -> None:
    hooked = {"fastening/hooks-and-eyes", "fastening/press-studs", "fastening/slide-fastener"}
    assert [
        plate.key
        for plate, terms in shown(demo_catalogue)
        if {t for t in terms if t.startswith("closure/")} == {"closure/slip-on"} and terms & hooked
    ] == []


def test_a_low_waist_hangs_straight(demo_catalogue: Catalogue) -> None:
    straight = {"silhouette/tubular", "silhouette/barrel", "silhouette/loose"}
    assert [
        plate.key
        for plate, terms in shown(demo_catalogue)
        if plate.garment == "day-dress"
        and terms & {"waist/low", "waist/dropped-hip"}
        and not terms & straight
    ] == []


def test_nobody_bathes_in_a_train(demo_catalogue: Catalogue) -> None:
    long = {"skirt-length/train", "skirt-length/ground", "skirt-length/instep", "skirt-length/ankle"}
    assert [p.key for p, terms in shown(demo_catalogue) if p.garment in BATHING and terms & long] == []


def test_a_day_dress_seen_from_the_front_says_what_a_reader_asks_first(demo_catalogue: Catalogue) -> None:
    asked = {"silhouette", "neckline", "closure", "sleeve", "waist", "skirt-length"}
    lacking = {
        plate.key: asked - {feature.facet for feature in plate.features}
        for plate in demo_catalogue.all_plates()
        if plate.garment == "day-dress" and plate.view == "front"
    }
    assert {key: facets for key, facets in lacking.items() if facets} == {}


def test_what_a_front_view_in_a_trade_catalogue_hides_is_not_called_seen(demo_catalogue: Catalogue) -> None:
    """Hooks, linings and, where only the front is drawn, the back."""
    hidden = ("fastening/hooks-and-eyes", "lining/", "closure/back")
    wrong = [
        f"{plate.key}: {feature.term}"
        for plate in demo_catalogue.all_plates()
        for feature in plate.features
        if demo_catalogue.sources[plate.source].kind == "trade-catalogue"
        and plate.view == "front"
        and plate.medium == "cut"
        and (feature.term or "").startswith(hidden)
        and feature.reading == "seen"
    ]
    assert wrong == []
