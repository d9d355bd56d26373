"""Looking closely at a picture: with keys, wheel, mouse and fingers, and without the script. Pictures that
come late move nothing."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import pytest

from conftest import missing
from inperiod.publishing import paths
from inperiod.publishing.pictures import picture_of
from inperiod.records.model import Catalogue
from site_in_browser.test_every_page import AXE

if TYPE_CHECKING:
    from playwright.sync_api import Locator, Page

pytestmark = pytest.mark.browser

_WATCH = """
  window.moved = 0;
  new PerformanceObserver((list) => {
    for (const each of list.getEntries()) window.moved += each.value;
  }).observe({ type: "layout-shift", buffered: true });
"""
_VIEW = """async (image) => {
  const frame = () => new Promise(requestAnimationFrame);
  await frame();
  await frame();
  await Promise.allSettled(image.getAnimations().map((each) => each.finished));
  const stage = image.parentElement.getBoundingClientRect(), box = image.getBoundingClientRect();
  return { x: box.left - stage.left, y: box.top - stage.top, width: box.width, height: box.height,
    wide: stage.width, high: stage.height };
}"""


@pytest.fixture(scope="session")
def pictured(shown_catalogue: Catalogue) -> str:
    """The page of a plate whose figure is cut out of a page with others."""
    key = next(key for key, plate in shown_catalogue.plates.items() if plate.image and plate.image.region)
    return paths.plate_path(key)


def look(page: Page) -> Locator:
    """Opens the page's first picture by keyboard and gives the large one, once it stands still."""
    page.locator("a.scan").first.focus()
    page.keyboard.press("Enter")
    image = page.locator(".zoom-stage img")
    image.wait_for()
    return image


def view(image: Locator) -> dict[str, float]:
    """Where the picture stands in its stage, after any movement."""
    seen: dict[str, float] = image.evaluate(_VIEW)
    return seen


def test_keys_enlarge_move_and_put_back(opened, pictured):
    page = opened(pictured)
    image = look(page)
    assert page.evaluate("document.activeElement.className") == "zoom-stage"
    whole = view(image)
    assert whole["width"] <= whole["wide"] + 1
    assert whole["height"] <= whole["high"] + 1
    page.keyboard.press("+")
    page.keyboard.press("+")
    page.keyboard.press("+")
    larger = view(image)
    assert larger["width"] == pytest.approx(whole["width"] * 1.5**3, rel=0.01)
    page.keyboard.press("ArrowDown")
    assert view(image)["y"] == pytest.approx(larger["y"] - 80, abs=1)
    page.keyboard.press("-")
    assert view(image)["width"] == pytest.approx(whole["width"] * 1.5**2, rel=0.01)
    page.keyboard.press("0")
    assert view(image) == pytest.approx(whole, abs=1)
    assert page.locator(".zoom-how").inner_text().endswith("%")


def test_the_picture_stays_within_reach(opened, pictured):
    page = opened(pictured)
    image = look(page)
    for key in ("+", "+", *["ArrowRight"] * 40, *["ArrowDown"] * 40):
        page.keyboard.press(key)
    end = view(image)
    assert end["y"] + end["height"] >= end["high"] - 1
    for _ in range(30):
        page.keyboard.press("-")
    small = view(image)
    assert small["height"] == pytest.approx(min(small["high"], small["height"]), abs=1)
    assert small["width"] <= small["wide"] + 1


def test_the_wheel_enlarges_about_the_pointer(opened, pictured):
    page = opened(pictured)
    image = look(page)
    page.keyboard.press("+")
    page.keyboard.press("+")
    before = view(image)
    box = page.locator(".zoom-stage").bounding_box()
    at = (before["wide"] * 0.5, before["high"] * 0.4)
    page.mouse.move(box["x"] + at[0], box["y"] + at[1])
    page.mouse.wheel(0, -200)
    after = view(image)
    assert after["width"] > before["width"] * 1.2
    for way, size, place in (("x", "width", at[0]), ("y", "height", at[1])):
        on_picture = [(place - seen[way]) / seen[size] for seen in (before, after)]
        assert on_picture[0] == pytest.approx(on_picture[1], abs=0.01)


def test_dragging_moves_it(opened, pictured):
    page = opened(pictured)
    image = look(page)
    for _ in range(4):
        page.keyboard.press("+")
    before = view(image)
    box = page.locator(".zoom-stage").bounding_box()
    page.mouse.move(box["x"] + 400, box["y"] + 400)
    page.mouse.down()
    page.mouse.move(box["x"] + 380, box["y"] + 330, steps=4)
    page.mouse.up()
    page.mouse.move(box["x"] + 200, box["y"] + 200)
    after = view(image)
    assert (after["x"] - before["x"], after["y"] - before["y"]) == pytest.approx((-20, -70), abs=1)


def test_two_fingers_enlarge_and_one_moves(chromium, demo_site, pictured):
    context = chromium.new_context(viewport={"width": 390, "height": 800}, has_touch=True, is_mobile=True)
    page = context.new_page()
    page.goto(f"{demo_site.as_uri()}/{pictured}")
    page.locator("a.scan").first.tap()
    image = page.locator(".zoom-stage img")
    image.wait_for()
    whole = view(image)
    touch = context.new_cdp_session(page)

    def fingers(kind: str, *points: tuple[int, int]) -> None:
        touches: list[dict[str, Any]] = [{"x": x, "y": y, "id": at} for at, (x, y) in enumerate(points)]
        touch.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": touches})

    fingers("touchStart", (190, 380))
    fingers("touchStart", (190, 380), (200, 480))
    for step in range(1, 11):
        fingers("touchMove", (190, 380 - 10 * step), (200, 480 + 10 * step))
    fingers("touchEnd")
    larger = view(image)
    assert larger["height"] > whole["height"] * 1.8
    fingers("touchStart", (200, 400))
    for step in range(1, 6):
        fingers("touchMove", (200, 400 - 10 * step))
    fingers("touchEnd")
    assert view(image)["y"] == pytest.approx(larger["y"] - 50, abs=3)
    context.close()


def test_it_is_left_as_it_was_come_to(opened, pictured):
    """Nothing holds the keyboard: Tab goes round the buttons, Escape and Close give the focus back."""
    page = opened(pictured)
    for leave in ("Escape", "Close"):
        look(page)
        names = []
        for _ in range(5):
            page.keyboard.press("Tab")
            names.append(
                page.evaluate("document.activeElement.ariaLabel || document.activeElement.textContent")
            )
        assert {"Smaller", "Larger", "The whole picture", "Close"} <= set(names)
        if leave == "Close":
            page.get_by_role("button", name="Close").click()
        else:
            page.keyboard.press("Escape")
        page.locator("dialog.zoom").wait_for(state="detached")
        assert page.evaluate("document.activeElement.matches('a.scan')")


def test_axe_finds_nothing_in_it(opened, pictured):
    if not AXE.is_file():
        missing("axe-core is not installed: run sh tests/run.sh")
    for width, dark in ((1280, False), (390, True)):
        page = opened(pictured, width=width, dark=dark)
        look(page)
        page.evaluate(AXE.read_text(encoding="utf-8"))
        found = page.evaluate("axe.run(document, { resultTypes: ['violations'], preload: false })")
        assert [(each["id"], each["nodes"][0]["html"]) for each in found["violations"]] == []


def test_who_wants_no_motion_sees_none(windows, demo_site, pictured):
    for still in (True, False):
        context = windows.lend(still=still)
        page = context.new_page()
        page.goto(f"{demo_site.as_uri()}/{pictured}")
        image = look(page)
        page.keyboard.press("+")
        duration = image.evaluate("(each) => getComputedStyle(each).transitionDuration")
        assert (duration == "0s") is still
        windows.take_back(context)


def test_without_the_script_the_link_leads_to_the_largest_copy(opened, pictured):
    page = opened(pictured, scripts=False)
    link = page.locator("a.scan").first
    link.click()
    assert page.url.endswith(".jpg")


@pytest.mark.parametrize("width", [390, 1280])
def test_pictures_that_come_late_move_nothing(opened, served, pictured, width):
    """Held back until the page stands still without them, then let come one after the other."""
    page = opened("about.html", at=served, width=width)
    held: list[Any] = []
    page.route("**/images/*", lambda route: held.append(route))
    page.add_init_script(_WATCH)
    page.goto(served + pictured, wait_until="domcontentloaded")
    page.wait_for_timeout(400)
    before = page.evaluate("window.moved")
    for place in ("h1", "h2#page", ".colophon"):
        page.locator(place).scroll_into_view_if_needed()
        page.wait_for_timeout(150)
        while held:
            held.pop(0).continue_()
            page.wait_for_timeout(100)
    pictures = page.locator("main img")
    assert pictures.count() >= 2
    widths = "(all) => Promise.all(all.map((each) => each.decode().then(() => each.naturalWidth)))"
    assert all(pictures.evaluate_all(widths))
    assert page.evaluate("window.moved") == before


def test_the_frame_lies_on_the_figure(opened, pictured, shown_catalogue):
    page = opened(pictured)
    page.locator("h2#page").scroll_into_view_if_needed()
    whole = page.locator(".outlined img").bounding_box()
    frame = page.locator(".outline").bounding_box()
    key = pictured.removeprefix("plate/").removesuffix(".html")
    outline = picture_of(shown_catalogue, shown_catalogue.plates[key]).outline
    assert outline
    for side, way, size, at in (("x", "x", "width", 0), ("y", "y", "height", 1)):
        along = (frame[side] - whole[way]) / whole[size] * 100
        assert along == pytest.approx(outline[at], abs=1)
        assert frame[size] / whole[size] * 100 == pytest.approx(outline[at + 2], abs=1.5)
