"""The drawings of terms: there is one for every term that needs it, sound as SVG, and each says something."""

from __future__ import annotations

import re
from collections import defaultdict
from pathlib import Path
from xml.etree import ElementTree

import pytest

from inperiod.drawing import DRAWN, draw_term
from inperiod.drawing.hand import SIZE, evenly, inside, points_of
from inperiod.drawing.terms import bust, strokes_of
from inperiod.drawing.terms.necklines import DRAWINGS as NECKLINES
from inperiod.drawing.terms.sleeves import ARMHOLE
from inperiod.records import read_catalogue

CATALOGUE = Path(__file__).parents[2] / "catalogue"
LABELS = {key: term.label for key, term in read_catalogue(CATALOGUE).catalogue.vocabulary.terms.items()}
DRAWN_WHOLLY = """
    neckline collar closure fastening sleeve yoke waist skirt-length skirt-cut lower-edge trim fullness seam
    silhouette lining work
""".split()
NAMESPACE = "{http://www.w3.org/2000/svg}"
ATTRIBUTES = {
    "svg": {"class", "viewBox", "width", "height", "role", "aria-label"},
    "title": set(),
    "g": {"fill", "stroke", "stroke-width", "stroke-linecap", "stroke-linejoin"},
    "path": set("d class fill fill-opacity stroke stroke-opacity stroke-dasharray vector-effect".split()),
}


def drawn(key: str) -> str:
    """The drawing, which must be there."""
    found = draw_term(key, LABELS[key])
    assert found is not None
    return found


@pytest.mark.parametrize("facet", DRAWN_WHOLLY)
def test_every_term_of_the_facet_has_a_drawing(facet: str) -> None:
    terms = [key for key in LABELS if key.startswith(facet + "/")]
    assert terms
    assert [key for key in terms if key not in DRAWN] == []


def test_every_drawing_is_of_a_term_that_exists() -> None:
    assert sorted(DRAWN - set(LABELS)) == []


@pytest.mark.parametrize(
    "key", ["fabric/lawn", "colour/navy", "garment/day-dress", "neckline/none", "", "x", "sleeve/"]
)
def test_a_term_without_a_drawing_gives_none(key: str) -> None:
    assert key not in DRAWN
    assert draw_term(key, "anything") is None


@pytest.mark.parametrize("key", sorted(DRAWN))
def test_a_drawing_is_sound(key: str) -> None:
    text = drawn(key)
    root = ElementTree.fromstring(text)
    assert root.tag == NAMESPACE + "svg"
    for element in root.iter():
        name = element.tag.removeprefix(NAMESPACE)
        assert set(element.attrib) <= ATTRIBUTES[name], f"{name} of {key}"
        if name == "path":
            assert element.get("vector-effect") == "non-scaling-stroke"
    assert root.get("viewBox") == "0 0 96 96"
    assert root.get("role") == "img"
    title = root.find(NAMESPACE + "title")
    assert title is not None
    assert title.text == root.get("aria-label") == LABELS[key]
    assert text.count("http") == 1, "only the namespace"
    assert not re.search(r"\d\.\d{3}|nan|inf|e-\d", text.split("<g", 1)[1])


@pytest.mark.parametrize("key", sorted(DRAWN))
def test_a_drawing_stays_inside_its_box_and_fills_it(key: str) -> None:
    strokes = strokes_of(key)
    assert strokes
    points = points_of(strokes)
    xs, ys = [x for x, _ in points], [y for _, y in points]
    # Half a line's width at 64 pixels is one unit.
    assert min(xs) >= 1
    assert min(ys) >= 1
    assert max(xs) <= SIZE - 1
    assert max(ys) <= SIZE - 1
    assert max(ys) - min(ys) >= 44
    assert max(xs) - min(xs) >= 32


@pytest.mark.parametrize("key", sorted(DRAWN))
def test_a_drawing_is_small(key: str) -> None:
    assert len(drawn(key)) < 24_000


def test_no_two_terms_of_a_facet_have_the_same_drawing() -> None:
    seen: dict[tuple[str, object], list[str]] = defaultdict(list)
    for key in DRAWN:
        seen[key.partition("/")[0], strokes_of(key)].append(key)
    assert [keys for keys in seen.values() if len(keys) > 1] == []


def test_the_same_term_is_drawn_the_same_twice() -> None:
    assert [draw_term(key, "x") for key in sorted(DRAWN)] == [draw_term(key, "x") for key in sorted(DRAWN)]


def test_a_label_cannot_break_out() -> None:
    text = draw_term("sleeve/bell", '"><script>alert(1)</script>')
    assert text is not None
    assert "<script" not in text
    ElementTree.fromstring(text)


def _rounded(points: tuple[tuple[float, float], ...]) -> set[tuple[float, float]]:
    return {(round(x, 6), round(y, 6)) for x, y in points}


def _full(key: str) -> list[tuple[float, float]]:
    """The points of what is drawn in full line."""
    strokes = strokes_of(key)
    assert strokes
    return points_of(
        stroke for stroke in strokes if stroke.pen.line and not stroke.pen.faint and not stroke.pen.dotted
    )


def test_skirt_lengths_stand_in_their_order() -> None:
    # The order of the definitions: ground, instep (1 to 3 inches clear), ankle bone, and so on up.
    order = "ground instep ankle above-ankle mid-calf below-knee knee above-knee".split()
    levels = [max(y for _, y in _full(f"skirt-length/{term}")) for term in order]
    assert levels == sorted(levels, reverse=True)
    assert len(set(levels)) == len(levels)


def test_waists_stand_in_their_order() -> None:
    order = "raised natural low dropped-hip".split()
    levels = [min(y for _, y in _full(f"waist/{term}")) for term in order]
    assert levels == sorted(levels)
    assert len(set(levels)) == len(levels)


def test_sleeves_reach_as_far_as_they_say() -> None:
    order = "sleeveless cap short elbow three-quarter set-in-long".split()
    levels = [max(y for _, y in _full(f"sleeve/{term}")) for term in order]
    assert levels == sorted(levels)


@pytest.mark.parametrize(
    "term",
    "short elbow three-quarter long-fitted set-in-long bishop gigot puff-short bell two-piece-coat".split(),
)
def test_a_set_in_sleeve_meets_its_armhole(term: str) -> None:
    # The sleeve is outlined; the bodice beside it, which has the same armhole, is only toned.
    outlined = [stroke.path for stroke in strokes_of(f"sleeve/{term}") or () if stroke.pen.line]
    outlines = [_rounded(line.points()) for line in outlined if line.closed]
    assert any(_rounded(ARMHOLE.points()) <= points for points in outlines)


@pytest.mark.parametrize("term", sorted(set(NECKLINES) - {"high", "off-shoulder", "one-shoulder", "halter"}))
def test_the_neck_edge_lies_on_the_bodice(term: str) -> None:
    body = bust.bodice_outline(bust.back_neck())
    larger = body.scale(1.2, about=(48.0, 29.0)).scale(1.01, about=(48.0, 50.0))
    for point in _full(f"neckline/{term}"):
        assert inside(larger, point)


@pytest.mark.parametrize("term", ["front", "back", "side-front", "back-yoke"])
def test_buttons_sit_beside_the_edge_they_close(term: str) -> None:
    strokes = [
        stroke for stroke in strokes_of(f"closure/{term}") or () if not stroke.pen.faint and stroke.pen.line
    ]
    rings = [stroke.path for stroke in strokes if stroke.path.closed]
    edges = [point for stroke in strokes if not stroke.path.closed for point, _ in evenly(stroke.path, 200)]
    assert len(rings) >= 3
    top, low = min(y for _, y in edges), max(y for _, y in edges)
    for one in rings:
        xs, ys = zip(*one.points(), strict=True)
        x, y = sum(xs) / len(xs), sum(ys) / len(ys)
        assert top < y < low
        nearest = min(abs(x - ex) for ex, ey in edges if abs(ey - y) < 1)
        assert nearest < 3.4


def test_what_lies_behind_is_dotted_and_never_filled() -> None:
    for key in DRAWN:
        for stroke in strokes_of(key) or ():
            assert not (stroke.pen.dotted and stroke.pen.fill != "none"), key
