"""The whole errand without a mouse: ask, open the plate, copy its citation, come back to the answer."""

from __future__ import annotations

import pytest

from inperiod.citing import cite

pytestmark = pytest.mark.browser


@pytest.mark.parametrize("over_http", [False, True], ids=["file", "http"])
def test_question_plate_citation_and_back_by_keyboard(opened, served, demo_catalogue, over_http):
    page = opened("index.html", **({"at": served} if over_http else {}))
    page.context.grant_permissions(["clipboard-read", "clipboard-write"])
    press = page.keyboard.press

    def tab_to(selector: str, most: int = 90) -> None:
        for _ in range(most):
            press("Tab")
            if page.evaluate("(s) => document.activeElement.matches(s)", selector):
                outline = page.evaluate(
                    "(() => { const s = getComputedStyle(document.activeElement);"
                    " return s.outlineStyle !== 'none' && parseFloat(s.outlineWidth) > 0"
                    " || s.boxShadow !== 'none'; })()"
                )
                assert outline, f"{selector} does not show that it has the focus"
                return
        pytest.fail(f"{selector} was not reached by the Tab key")

    press("Tab")
    assert page.evaluate("document.activeElement.className") == "skip"
    press("Enter")
    assert page.evaluate("document.activeElement.id") == "main"
    tab_to("#ask-garment")
    for _ in range(5):  # a slow machine leaves so long between two letters that a list begins anew
        page.keyboard.type("a nightdress")
        if page.locator("#ask-garment").input_value() == "nightdress":
            break
        page.wait_for_timeout(1500)
    assert page.locator("#ask-garment").input_value() == "nightdress"
    tab_to("#ask-when")
    press("ControlOrMeta+a")
    page.keyboard.type("1926")
    tab_to("#ask-feature")
    for _ in range(page.locator(".chip").count()):
        press("Backspace")
    page.wait_for_function("() => !document.querySelector('.chip')")  # when the facts are there
    page.keyboard.type("lawn")
    page.locator("#ask-found [role=option]").first.wait_for()
    for _ in range(5):  # the list is made anew when the facts come
        press("ArrowDown")
        press("Enter")
        page.wait_for_timeout(300)
        if page.locator(".chip").count():
            break
    page.locator('#answer:not([aria-busy]) .fit[data-term="fabric/lawn"]').wait_for()
    tab_to(".fit .trade-what")
    asked = page.url
    key = page.locator(".fit [data-plate]").first.get_attribute("data-plate")
    press("Enter")
    page.wait_for_url(f"**/plate/{key}.html")
    tab_to("section[aria-labelledby=cite] button.copy")
    press("Enter")
    page.locator(".copied", has_text="Copied").first.wait_for()
    copied = page.evaluate("navigator.clipboard.readText()")
    assert copied == cite(demo_catalogue, key, "chicago-note")
    page.go_back()  # the browser's own key for this reaches no page, so no test can press it
    page.locator('.fit[data-term="fabric/lawn"]').wait_for()
    assert page.url == asked
    assert page.locator("#ask-when").input_value() == "1926"
