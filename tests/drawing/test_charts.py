"""Charts as SVG: what is drawn stands for the numbers, and no text gets out of its place."""

from __future__ import annotations

from xml.etree import ElementTree

import pytest

from inperiod.drawing.marks import number, per_cent, tag
from inperiod.drawing.small_charts import Strip, draw_histogram, draw_share, draw_strip
from inperiod.drawing.timeline_chart import BAND, Cell, Chart, Row, draw_timeline, scale_of, weave


def drawn(svg: str) -> ElementTree.Element:
    return ElementTree.fromstring(svg)


def of_class(root: ElementTree.Element, name: str) -> list[ElementTree.Element]:
    return [each for each in root.iter() if name in each.get("class", "").split()]


def chart(*shares: float | None, looked: tuple[int, ...] | None = None, **row: object) -> Chart:
    cells = tuple(
        Cell(share, "plates.html#x" if share else None, f"cell {i}") for i, share in enumerate(shares)
    )
    decades = tuple(1890 + 10 * i for i in range(len(shares)))
    looked = looked or tuple(0 if share is None else 4 for share in shares)
    return Chart(decades, looked, (Row("square neck", None, "note", cells, **row),), "Necklines")


def test_a_band_is_as_high_as_its_share_on_the_scale():
    root = drawn(draw_timeline(chart(0.1, 0.2, 0.4)))
    heights = [float(band.get("height", "")) for band in of_class(root, "chart-band")]
    assert scale_of([0.1, 0.2, 0.4]) == 40
    assert heights == pytest.approx([2 * BAND * 0.25, 2 * BAND * 0.5, 2 * BAND])


def test_a_decade_nobody_looked_at_differs_from_one_without_the_style():
    root = drawn(draw_timeline(chart(None, 0.0, 0.3)))
    assert len(of_class(root, "chart-unseen")) == 1
    assert len(of_class(root, "chart-thread")) == 1
    assert len(of_class(root, "chart-band")) == 1


def test_a_decade_only_reached_into_is_drawn_thin_and_not_hatched():
    root = drawn(draw_timeline(chart(0.5, 0.5, looked=(0, 2))))
    assert not of_class(root, "chart-unseen")
    assert [band.get("fill") for band in of_class(root, "chart-band")] == ["url(#weave-1)"] * 2


def test_the_weave_tells_how_many_documents_were_looked_at():
    assert [weave(documents) for documents in (0, 1, 2, 3, 5, 6, 11, 12, 400)] == [0, 1, 1, 2, 2, 3, 3, 4, 4]
    root = drawn(draw_timeline(chart(0.1, 0.1, 0.1, 0.1, looked=(1, 3, 6, 12))))
    assert [band.get("fill") for band in of_class(root, "chart-band")] == [
        "url(#weave-1)",
        "url(#weave-2)",
        "url(#weave-3)",
        None,
    ]


def test_sightings_extension_and_floor_stand_at_their_years():
    root = drawn(
        draw_timeline(
            chart(
                0.1, 0.2, first=1895.0, last=1905.0, reach=(1892.0, None), not_before=1891.0, alone=(1909.5,)
            )
        )
    )
    assert [end.get("cx") for end in of_class(root, "chart-end")] == ["25%", "75%"]
    assert [(each.get("x1"), each.get("x2")) for each in of_class(root, "chart-reach")] == [
        ("10%", "25%"),
        ("75%", "100%"),
    ]
    assert of_class(root, "chart-not-before")[0].get("x1") == "5%"
    assert of_class(root, "chart-alone")[0].get("cx") == "97.5%"


def test_a_floor_or_a_sighting_off_the_chart_is_not_drawn_at_its_edge():
    root = drawn(
        draw_timeline(chart(0.1, 0.2, first=1895.0, last=1905.0, not_before=1846.0, alone=(1940.0,)))
    )
    assert not of_class(root, "chart-not-before")
    assert not of_class(root, "chart-alone")


def test_only_a_cell_with_plates_is_a_link_and_says_its_numbers():
    links = [each for each in drawn(draw_timeline(chart(0.0, 0.3))).iter() if each.tag == "a"]
    assert [link.get("aria-label") for link in links] == ["cell 1"]


def test_text_from_records_stays_text():
    nasty = '<script>x</script>"&'
    row = Row(nasty, None, nasty, (Cell(0.2, 'x"onload="y', nasty),))
    root = drawn(draw_timeline(Chart((1920,), (3,), (row,), nasty)))
    assert not [each for each in root.iter() if each.tag == "script" or each.get("onload")]
    assert of_class(root, "chart-label")[0].text == nasty


def test_no_drawing_carries_a_style_attribute():
    strip = Strip((1910, 1920), (0.1, None), (1912.0, 1913.0), "says")
    for svg in (
        draw_timeline(chart(0.1, None)),
        draw_share(0.2, 0.1, 0.4, "s"),
        draw_strip(strip),
        draw_histogram(1900, [1, 2]),
    ):
        assert "style=" not in svg


def test_a_share_stands_between_the_ends_of_its_interval():
    root = drawn(draw_share(0.34, 0.2, 0.51, "34 %"))
    interval, point = of_class(root, "share-interval")[0], of_class(root, "share-point")[0]
    assert (interval.get("x"), interval.get("width")) == ("20%", "31%")
    assert point.get("x1") == "34%"
    assert root.get("aria-label") == "34 %"


@pytest.mark.parametrize(
    ("window", "place"),
    [
        ((1915.0, 1920.0), ("25%", "25%")),
        ((None, 1920.0), ("0%", "50%")),
        ((1925.0, None), ("75%", "25%")),
        ((1890.0, 1911.0), ("0%", "5%")),
    ],
)
def test_the_window_is_marked_where_it_lies_even_half_outside(window, place):
    root = drawn(draw_strip(Strip((1910, 1920), (0.1, 0.2), window, "")))
    mark = of_class(root, "strip-window")[0]
    assert (mark.get("x"), mark.get("width")) == place


def test_a_window_off_the_strip_is_not_marked():
    assert not of_class(
        drawn(draw_strip(Strip((1910, 1920), (0.1, 0.2), (1850.0, 1851.0), ""))), "strip-window"
    )


def test_bars_of_years_are_in_proportion():
    bars = of_class(drawn(draw_histogram(1900, [1.0, 0.0, 2.0])), "years-all")
    heights = [float(bar.get("height", "")) for bar in bars]
    assert heights[0] * 2 == heights[2]
    assert heights[1] == 0


def test_nothing_to_draw_is_drawn_as_nothing():
    assert draw_timeline(Chart((), (), (), "")) == ""
    assert draw_strip(Strip((), (), (None, None), "")) == ""
    assert len(of_class(drawn(draw_histogram(1900, [])), "years-all")) == 0


def test_numbers_are_short():
    assert [number(each) for each in (1.0, 0.125, 33.333333, 2.0049, -1.5, 100)] == [
        "1",
        "0.13",
        "33.33",
        "2",
        "-1.5",
        "100",
    ]
    assert [per_cent(each) for each in (0, 0.004, 0.01, 0.345, 1)] == [
        "0 %",
        "under 1 %",
        "1 %",
        "35 %",
        "100 %",
    ]
    assert tag("a", {"x": None, "y": 1}) == '<a y="1"></a>'
