"""Flats are drawn inside their own silhouette, from the record and nothing else, and say what they leave out.

The limits are geometry: an outline is the authority for what lies on it.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise
from pathlib import Path
from xml.etree import ElementTree

import pytest

from inperiod.drawing.flats import CAPTION, Flat, draw_flat, draw_plan
from inperiod.drawing.flats.bodies import GROWN_ON
from inperiod.drawing.flats.drawn import View
from inperiod.drawing.flats.garments import GARMENTS
from inperiod.drawing.flats.ink import whole
from inperiod.drawing.flats.lower import width_in_cm
from inperiod.drawing.flats.necks import neckline
from inperiod.drawing.flats.page import Entry, catalogue_page
from inperiod.drawing.flats.periods import PERIODS
from inperiod.drawing.flats.rules import RULES
from inperiod.drawing.hand import Path as Line
from inperiod.publishing.flats import middle_year
from inperiod.records import read_catalogue
from inperiod.records.model import Catalogue, Feature, Mark, Plate

FOLDER = Path(__file__).parents[2] / "catalogue"
SVG = "{http://www.w3.org/2000/svg}"
# What hangs beyond the side or the hem of the cloth it belongs to: ends of sashes, edges of lace and frills.
HANGING = {"trim", "sash", "belt", "tie", "drawstring", "fastening", "elastic"}
# A line drawn on the cloth may swing out between two of its points by no more than this, in centimetres.
SWING = 1.2


@pytest.fixture(scope="module")
def catalogue() -> Catalogue:
    found = read_catalogue(FOLDER).catalogue
    assert found is not None
    return found


@pytest.fixture(scope="module")
def flats(catalogue: Catalogue) -> dict[str, Flat | None]:
    return {
        key: draw_flat(plate, catalogue.vocabulary, middle_year(catalogue.dated(plate)))
        for key, plate in catalogue.plates.items()
    }


def plan(catalogue: Catalogue, garment: str, year: float, *terms: str, who: str = "woman") -> Flat:
    nowhere = Mark("")
    features = [Feature(term.partition("/")[0], term, nowhere) for term in terms]
    made = draw_plan(features, garment, catalogue.vocabulary, year, who)
    assert made is not None
    return made


def views(flats: dict[str, Flat | None]) -> Iterator[tuple[str, View]]:
    for key, flat in flats.items():
        if flat is not None:
            yield key, flat.drawn.front
            if flat.drawn.back is not None:
                yield key + " (back)", flat.drawn.back


def parts_of(view: View, *names: str) -> Iterator[tuple[str, Line]]:
    for mark in view.marks:
        if not names or mark.part in names:
            yield mark.part, mark.stroke.path


Points = tuple[tuple[float, float], ...]


def silhouettes(view: View) -> list[Points]:
    """The closed pieces of cloth a view is made of: trunk, legs, sleeves, collars, cuffs; as points."""
    found = [
        path for _, path in parts_of(view, "body", "leg", "sleeve", "cuff", "collar", "edge") if path.closed
    ]
    if view.outline is not None:
        outline = view.outline
        # The trunk with its neck filled in, for what stands in the opening.
        top = min(outline.neck[1], outline.shoulder[1]) - 0.4
        half = Line((0.0, top)).to(outline.neck).to(outline.shoulder)
        half = half.to(outline.underarm).then(outline.side).to((0.0, outline.hem + 2 * outline.dip))
        found.append(whole(half))
    return [path.points(6) for path in found]


def beyond(point: tuple[float, float], pieces: list[Points]) -> float:
    """How far outside all of the pieces a point lies."""
    if any(_within(point, piece) for piece in pieces):
        return 0.0
    return min(_to_segment(point, a, b) for piece in pieces for a, b in pairwise(piece))


def _within(point: tuple[float, float], piece: Points) -> bool:
    x, y = point
    odd = False
    for (ax, ay), (bx, by) in pairwise(piece):
        if (ay <= y) != (by <= y) and x < ax + (y - ay) * (bx - ax) / (by - ay):
            odd = not odd
    return odd


def _to_segment(p: tuple[float, float], a: tuple[float, float], b: tuple[float, float]) -> float:
    dx, dy = b[0] - a[0], b[1] - a[1]
    span = dx * dx + dy * dy
    t = 0.0 if span == 0 else max(0.0, min(1.0, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / span))
    return math.dist(p, (a[0] + t * dx, a[1] + t * dy))


def test_every_plate_of_a_garment_with_a_flat_is_drawn(
    catalogue: Catalogue, flats: dict[str, Flat | None]
) -> None:
    for key, plate in catalogue.plates.items():
        has_flat = any(each in GARMENTS for each in catalogue.vocabulary.broader_garments(plate.garment))
        assert (flats[key] is not None) == has_flat, key
    assert sum(flat is not None for flat in flats.values()) > 500


def test_every_recorded_feature_is_drawn_or_said_to_be_undrawn(
    catalogue: Catalogue, flats: dict[str, Flat | None]
) -> None:
    for key, plate in catalogue.plates.items():
        flat = flats[key]
        if flat is None:
            continue
        shown = [id(feature) for feature in plate.features if feature.state == "shown"]
        told = [id(f) for f in flat.drawn.drawn] + [id(f) for f, _ in flat.drawn.undrawn]
        assert sorted(told) == sorted(shown), key
        assert len(flat.undrawn) == len(flat.drawn.undrawn)
        assert all(sentence.split(": ", 1)[1] for sentence in flat.undrawn)


# Drawn by there being no line (a slip-on has no opening, white cloth no tone), or by a line that another
# feature asks for as well (a jacket parts in front anyhow; two terms tell of a hem of points).
NO_LINE_OF_THEIR_OWN = {
    "closure/slip-on",
    "closure/front",
    "colour/white",
    "colour/plain",
    "lower-edge/handkerchief",
}


def looks(flat: Flat) -> tuple[object, ...]:
    """All that is seen of a flat; its title, which names what is drawn, is not."""
    drawn = flat.drawn
    return (drawn.front.marks, drawn.back and drawn.back.marks, drawn.definition)


def test_what_is_called_drawn_changes_the_drawing(catalogue: Catalogue) -> None:
    """Leaving it out of the record gives another picture; so nothing is called drawn that is not."""
    unchanged = []
    tried = 0
    for plate in list(catalogue.plates.values())[::3]:
        year = middle_year(catalogue.dated(plate))
        flat = draw_flat(plate, catalogue.vocabulary, year)
        if flat is None:
            continue
        for feature in flat.drawn.drawn:
            if feature.term in NO_LINE_OF_THEIR_OWN or feature.at == "collar":
                continue
            tried += 1
            rest = tuple(each for each in plate.features if each is not feature)
            other = draw_flat(replace(plate, features=rest), catalogue.vocabulary, year)
            assert other is not None
            # What is drawn anyhow, as usual then, is named as taken for granted instead.
            if looks(other) == looks(flat) and feature.term not in other.drawn.assumed:
                unchanged.append(f"{plate.key} {feature.term}")
    assert tried > 500
    assert not unchanged, unchanged[:20]


def test_no_drawn_feature_leaves_the_silhouette_it_belongs_to(flats: dict[str, Flat | None]) -> None:
    astray: list[str] = []
    for key, view in views(flats):
        if view.outline is None:
            continue
        pieces = silhouettes(view)
        for part, line in parts_of(view):
            if part in HANGING or part in ("hem", "hat"):
                continue
            for point in line.points(3):
                if part in ("collar", "neck") and point[1] < view.outline.neck[1]:
                    continue  # Collars and halters stand up round the neck.
                away = beyond(point, pieces)
                if away > SWING:
                    astray.append(f"{key}: {part} {away:.1f} cm out at {point[0]:.0f}, {point[1]:.0f}")
                    break
    assert not astray, astray[:20]


def test_what_hangs_stays_near_the_garment(flats: dict[str, Flat | None]) -> None:
    for key, view in views(flats):
        if view.outline is None:
            continue
        pieces = silhouettes(view)
        for part, line in parts_of(view, *HANGING):
            assert max(beyond(point, pieces) for point in line.points(4)) < 10.0, (key, part)


def test_everything_lies_in_its_frame(flats: dict[str, Flat | None]) -> None:
    for key, flat in flats.items():
        if flat is None:
            continue
        left, top, wide, high = flat.drawn.frame
        for view in (flat.drawn.front, flat.drawn.back):
            for part, line in parts_of(view) if view else ():
                for x, y in line.points(4):
                    assert left <= x <= left + wide, (key, part, x, y)
                    assert top <= y <= top + high, (key, part, x, y)


def test_sleeves_meet_armholes(flats: dict[str, Flat | None]) -> None:
    met = 0
    for key, view in views(flats):
        outline = view.outline
        if outline is None:
            continue
        for part, line in parts_of(view, "sleeve"):
            if not line.closed:
                continue
            met += 1
            ends = [outline.shoulder, outline.underarm]
            for x, y in ends:
                mirrored = min(math.dist((abs(px), py), (x, y)) for px, py in line.points(8))
                assert mirrored < 0.6, (key, part, (x, y), mirrored)
    assert met > 500


def test_buttons_sit_on_the_opening(flats: dict[str, Flat | None]) -> None:
    sat = 0
    for key, view in views(flats):
        buttons = [line for _, line in parts_of(view, "button") if line.closed]
        if not buttons:
            continue
        assert view.opening is not None, key
        for button in buttons:
            points = button.points(2)
            middle = (
                sum(x for x, _ in points[:-1]) / (len(points) - 1),
                sum(y for _, y in points[:-1]) / (len(points) - 1),
            )
            away = min(_to_segment(middle, a, b) for a, b in pairwise(view.opening.points(6)))
            assert away < 0.4, (key, middle, away)
            sat += 1
    assert sat > 300


def test_a_count_of_buttons_is_kept(catalogue: Catalogue) -> None:
    nowhere = Mark("")
    features = [
        Feature("closure", "closure/front", nowhere),
        Feature("fastening", "fastening/buttons", nowhere, count=7),
    ]
    flat = draw_plan(features, "blouse", catalogue.vocabulary, 1912)
    assert flat is not None
    assert len([line for _, line in parts_of(flat.drawn.front, "button") if line.closed]) == 7


def test_a_recorded_width_is_drawn_so_wide() -> None:
    assert width_in_cm("1 in") == pytest.approx(2.54)  # One inch is 25.4 mm exactly (1959 agreement).
    assert width_in_cm("¾ in") == pytest.approx(1.905)
    assert width_in_cm("1½ in") == pytest.approx(3.81)
    assert width_in_cm("12 mm") == pytest.approx(1.2)
    assert width_in_cm("broad") is None
    assert width_in_cm("-3 in") is None


def test_the_neckline_ends_on_the_shoulder_and_in_the_middle(flats: dict[str, Flat | None]) -> None:
    for key, view in views(flats):
        if view.outline is None or view.outline.neckline in ("off-shoulder", "halter"):
            continue
        line = neckline(view.outline)
        assert line.end[0] == pytest.approx(0.0), key
        assert line.start[1] == pytest.approx(view.outline.on_shoulder(line.start[0]), abs=0.01), key


@pytest.mark.parametrize(
    ("earlier", "later", "what"),
    [
        # Common practice, as every history of dress has it.
        (1905, 1926, "hem"),
        (1912, 1926, "waist"),
        (1926, 1934, "hem-falls"),
    ],
)
def test_the_period_tells_where_the_record_does_not(
    catalogue: Catalogue, earlier: int, later: int, what: str
) -> None:
    first = plan(catalogue, "day-dress", earlier).drawn.front.outline
    second = plan(catalogue, "day-dress", later).drawn.front.outline
    assert first is not None
    assert second is not None
    assert first.waist is not None
    assert second.waist is not None
    if what == "hem":
        assert first.hem > second.hem + 30
    elif what == "waist":
        assert second.waist > first.waist + 15
    else:
        assert second.hem > first.hem + 10
        assert second.waist < first.waist


def test_1895_has_the_fullest_sleeves(catalogue: Catalogue) -> None:
    def reach(year: int) -> float:
        view = plan(catalogue, "day-dress", year, "sleeve/gigot").drawn.front
        return max(x for _, line in parts_of(view, "sleeve") for x, y in line.points(6) if y < 25)

    assert reach(1895) > reach(1890) + 3
    assert reach(1895) > reach(1900) + 3


def test_what_is_assumed_is_said_and_what_is_recorded_is_not(catalogue: Catalogue) -> None:
    nothing = plan(catalogue, "day-dress", 1926)
    assert len(nothing.assumed) >= 6
    told = plan(catalogue, "day-dress", 1926, "sleeve/bell", "waist/natural")
    assert not any("sleeve" in each or "waist" in each for each in told.assumed)


def test_grown_on_sleeves_have_no_seam_at_the_armhole(catalogue: Catalogue) -> None:
    for sleeve in GROWN_ON:
        view = plan(catalogue, "day-dress", 1921, f"sleeve/{sleeve}").drawn.front
        assert not list(parts_of(view, "armhole"))
    assert list(parts_of(plan(catalogue, "day-dress", 1921, "sleeve/short").drawn.front, "armhole"))


def test_hidden_features_are_named_with_their_rule(catalogue: Catalogue) -> None:
    flat = plan(catalogue, "skirt", 1912, "neckline/v", "lining/unlined", "skirt-cut/gored")
    said = " ".join(flat.undrawn)
    assert RULES[0].says in said
    assert "above the waist" in said
    assert not any("gored" in each for each in flat.undrawn)


def test_garments_without_a_flat_have_none(catalogue: Catalogue) -> None:
    assert draw_plan((), "textile", catalogue.vocabulary, 1900) is None
    assert draw_plan((), "fan", catalogue.vocabulary, 1900) is None


@pytest.mark.parametrize("garment", sorted(GARMENTS))
@pytest.mark.parametrize("year", [None, 1700.0, *(period.start + 0.5 for period in PERIODS[1:])])
def test_every_garment_can_be_drawn_in_every_period(
    catalogue: Catalogue, garment: str, year: float | None
) -> None:
    flat = draw_plan((), garment, catalogue.vocabulary, year)
    assert flat is not None
    assert flat.drawn.front.marks
    numbers = [n for _, line in parts_of(flat.drawn.front) for point in line.points(2) for n in point]
    assert all(math.isfinite(n) for n in numbers)


def test_every_term_can_be_drawn_on_every_garment_it_applies_to(catalogue: Catalogue) -> None:
    """Nothing fails, whatever is recorded; and whatever is left out is said."""
    vocabulary = catalogue.vocabulary
    for garment in GARMENTS:
        if garment not in vocabulary.garments:
            continue
        for term in vocabulary.terms.values():
            if term.facet == "garment" or not vocabulary.applies(term, garment):
                continue
            flat = plan(catalogue, garment, 1926, term.key)
            assert len(flat.drawn.drawn) + len(flat.drawn.undrawn) == 1


def safe(svg: str) -> ElementTree.Element:
    """The parsed drawing, after checking that it holds nothing that acts or leads elsewhere."""
    root = ElementTree.fromstring(svg)
    ids = {element.get("id") for element in root.iter() if element.get("id")}
    for element in root.iter():
        assert element.tag.removeprefix(SVG) in {
            "svg",
            "title",
            "defs",
            "pattern",
            "rect",
            "path",
            "g",
            "text",
        }
        for name, value in element.attrib.items():
            assert name != "style", value
            assert not name.startswith("on"), (name, value)
            assert "href" not in name, value
            if "url(" in value:
                assert value.startswith("url(#"), value
                assert value[5:-1] in ids, value
    return root


def test_the_markup_is_valid_and_holds_nothing_that_acts(flats: dict[str, Flat | None]) -> None:
    for flat in flats.values():
        if flat is None:
            continue
        for text in (str(flat.svg), str(flat.small), str(flat.file)):
            root = safe(text)
            title = root.find(f"{SVG}title")
            assert root.get("role") == "img"
            assert title is not None
            assert title.text == flat.title
        assert "currentColor" not in flat.file
        assert "Canvas" not in flat.file


def test_flats_are_small_and_always_the_same(catalogue: Catalogue, flats: dict[str, Flat | None]) -> None:
    sizes = sorted(len(flat.file) for flat in flats.values() if flat)
    assert sizes[len(sizes) // 2] < 4600
    assert sizes[int(len(sizes) * 0.97)] < 6144
    for key, plate in list(catalogue.plates.items())[::40]:
        again = draw_flat(plate, catalogue.vocabulary, middle_year(catalogue.dated(plate)))
        assert (again and again.svg) == (flats[key] and flats[key].svg)  # type: ignore[union-attr]


def test_hostile_words_on_a_composed_page_stay_words(
    catalogue: Catalogue, flats: dict[str, Flat | None]
) -> None:
    flat = next(flat for flat in flats.values() if flat)
    hostile = '"><script>alert(1)</script><image href="http://example.org/x"/> ]]> &lt; ' * 4
    page = catalogue_page(hostile, hostile, hostile, [Entry(flat, hostile, hostile, hostile)] * 5, "Invented")
    root = safe(str(page))
    text = " ".join(element.text or "" for element in root.iter(f"{SVG}text"))
    assert "<script>" in text


def test_the_caption_says_what_a_flat_is() -> None:
    assert CAPTION == "Drawn from the record, not from the plate"


def test_a_plate_of_nothing_but_a_garment_is_drawn(catalogue: Catalogue) -> None:
    plate = Plate("p", "s", "day-dress", Mark(""))
    flat = draw_flat(plate, catalogue.vocabulary, None)
    assert flat is not None
    assert not flat.undrawn
    assert flat.assumed


def test_one_shoulder_is_bare_on_the_other_side(catalogue: Catalogue) -> None:
    flat = plan(catalogue, "evening-dress", 1938, "neckline/one-shoulder", "closure/back")
    assert flat.drawn.back is not None
    for view, side in ((flat.drawn.front, 1), (flat.drawn.back, -1)):
        [(_, body)] = [each for each in parts_of(view, "body") if each[1].closed]
        assert view.outline is not None
        (neck_x, neck_y), (under_x, under_y) = view.outline.neck, view.outline.underarm
        top = min(body.points(), key=lambda point: point[1])
        assert side * top[0] == pytest.approx(neck_x)
        assert top[1] == pytest.approx(neck_y)
        # On the bare side the cloth begins no higher than the underarm.
        bare = [y for x, y in body.points() if side * x < -under_x * 0.9]
        assert min(bare) > under_y - 2


def test_a_halter_leaves_the_back_bare(catalogue: Catalogue) -> None:
    flat = plan(catalogue, "evening-dress", 1934, "neckline/halter", "closure/back")
    assert flat.drawn.back is not None
    outline, opening = flat.drawn.back.outline, flat.drawn.back.opening
    assert outline is not None
    assert opening is not None
    [(_, body)] = [each for each in parts_of(flat.drawn.back, "body") if each[1].closed]
    assert min(y for _, y in body.points()) >= outline.underarm[1] - 0.01
    assert opening.start[1] > outline.underarm[1]


def test_a_two_piece_bathing_suit_is_two_pieces(catalogue: Catalogue) -> None:
    view = plan(catalogue, "bathing-two-piece", 1938).drawn.front
    assert view.outline is not None
    assert view.legs is not None
    assert view.legs.waist > view.outline.hem + 2


def test_a_costume_is_a_jacket_and_a_skirt(catalogue: Catalogue) -> None:
    flat = plan(catalogue, "costume-suit", 1911, "skirt-length/ankle", "skirt-cut/gored", "trim/braid")
    assert not flat.undrawn
    view = flat.drawn.front
    assert view.outline is not None
    bodies = [line for _, line in parts_of(view, "body") if line.closed]
    hems = sorted(max(y for _, y in body.points()) for body in bodies)
    assert hems[0] == pytest.approx(view.outline.hem, abs=3)
    assert hems[1] > view.outline.hem + 30


def test_what_trims_an_edge_follows_the_opening(catalogue: Catalogue) -> None:
    nowhere = Mark("")
    braid = Feature("trim", "trim/braid", nowhere, at="edge")
    features = [
        Feature("closure", "closure/side-front", nowhere),
        Feature("collar", "collar/notched", nowhere),
        braid,
    ]
    flat = draw_plan(features, "jacket", catalogue.vocabulary, 1914.0, "woman")
    assert flat is not None
    view = flat.drawn.front
    assert view.opening is not None
    upright = [line for _, line in parts_of(view, "trim") if line.end[1] - line.start[1] > 15]
    assert upright
    for (ax, ay), (bx, by) in zip(upright[0].points()[2:], view.opening.points()[2:], strict=False):
        assert math.dist((ax, ay), (bx, by)) < 3
