"""Drawings are to scale, legible unstyled, safe to put on a page, and tell what they show."""

from __future__ import annotations

from itertools import pairwise
from typing import Any
from xml.etree import ElementTree

import pytest

from inperiod.making import Line, draw, draw_bias, draw_lay_plan, draw_tucks, sheet

SVG = "{http://www.w3.org/2000/svg}"
TUCKS = {
    "kind": "tucks",
    "width": "1/4 in",
    "gap": "1/4 in",
    "number": 6,
    "finished": "8 in",
    "turning": "1/2 in",
}
BIAS = {"kind": "bias", "width": "1 in", "remnant": ["12 in", "20 in"]}
CLOTH = {
    "kind": "cloth",
    "width": "36 in",
    "pieces": [{"name": "<b>front & back</b>", "width": "20 in", "length": "40 in", "number": 2}],
}


def line(fields: dict[str, Any]) -> Line:
    return sheet([fields]).lines[0]


def whole(fields: dict[str, Any]) -> str:
    figure = line(fields).figure
    assert figure is not None
    return draw(figure)


def drawn(fields: dict[str, Any]) -> ElementTree.Element:
    return ElementTree.fromstring(whole(fields))


@pytest.mark.parametrize("fields", [TUCKS, BIAS, CLOTH], ids=["tucks", "bias", "cloth"])
def test_a_drawing_has_a_title_no_style_and_the_colour_of_the_text(fields: dict[str, Any]) -> None:
    svg = drawn(fields)
    title = svg.find(f"{SVG}title")
    assert title is not None
    assert svg.get("role") == "img"
    assert title.text == svg.get("aria-label")
    colours = {each.get(name) for each in svg.iter() for name in ("fill", "stroke")} - {None}
    assert colours <= {"none", "currentColor"}
    assert all("style" not in each.attrib for each in svg.iter())


@pytest.mark.parametrize("fields", [TUCKS, BIAS, CLOTH], ids=["tucks", "bias", "cloth"])
def test_everything_drawn_lies_inside_the_view(fields: dict[str, Any]) -> None:
    svg = drawn(fields)
    left, top, width, height = map(float, svg.attrib["viewBox"].split())
    for each in svg.iter():
        for across in ("x", "x1", "x2"):
            assert left <= float(each.get(across, 0)) <= left + width
        for down in ("y", "y1", "y2"):
            assert top <= float(each.get(down, 0)) <= top + height


def test_names_are_escaped() -> None:
    figure = line(CLOTH).figure
    assert figure is not None
    assert "<b>" not in draw(figure)
    assert "1 <b>front & back</b>" in [each.text for each in drawn(CLOTH).iter(f"{SVG}text")]


def test_tucks_are_drawn_to_scale() -> None:
    found = line(TUCKS)
    assert found.figure is not None
    scale = found.figure.scale
    folds = [
        float(each.get("x1", 0)) for each in drawn(TUCKS).iter(f"{SVG}line") if each.get("class") == "fold"
    ]
    said = [number.value for number in found.numbers if number.label.startswith("Tuck ")]
    assert folds[: len(said)] == pytest.approx([value * scale for value in said], abs=0.006)
    assert len(folds) == 2 * len(said)


def test_bias_cuts_lie_at_half_a_right_angle_and_evenly() -> None:
    figure = line(BIAS).figure
    assert figure is not None
    cuts = [shape.at for shape in figure.shapes if shape.look in ("cut", "diagonal")]
    assert len(cuts) > 10
    assert all(x2 - x1 == pytest.approx(y1 - y2) for x1, y1, x2, y2 in cuts)
    sums = [x1 + y1 for x1, y1, _, _ in cuts]
    steps = [b - a for a, b in pairwise(sums)]
    assert steps == pytest.approx([2**0.5] * len(steps))


def test_the_lay_plan_shows_every_box_inside_the_cloth() -> None:
    figure = line(CLOTH).figure
    assert figure is not None
    (cloth,) = [shape.at for shape in figure.shapes if shape.look == "cloth"]
    pieces = [shape.at for shape in figure.shapes if shape.look == "piece"]
    assert len(pieces) == 2
    for x, y, wide, high in pieces:
        assert cloth[0] <= x
        assert x + wide <= cloth[0] + cloth[2] + 1e-9
        assert cloth[1] <= y
        assert y + high <= cloth[1] + cloth[3] + 1e-9


def test_each_drawing_is_of_its_own_kind_of_line() -> None:
    assert draw_tucks(line(TUCKS)) == whole(TUCKS)
    assert draw_bias(line(BIAS)) == whole(BIAS)
    assert draw_lay_plan(line(CLOTH)) == whole(CLOTH)
    assert draw_tucks(line(BIAS)) is None
    assert draw_bias(line(CLOTH)) is None
    assert draw_lay_plan(line({"kind": "frill", "edge": "1 yd"})) is None
