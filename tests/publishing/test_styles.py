"""The stylesheet that is sent says what the files it is made of say."""

from __future__ import annotations

import pytest

from conftest import CHECKOUT
from inperiod.publishing.styles import short, stylesheet

STYLES = CHECKOUT / "site/assets/css"


def test_comments_and_indents_are_left_out() -> None:
    assert short("/* why */\n.a {\n  color: red; /* so */\n}\n/* and no end") == ".a {\ncolor: red; \n}\n"


def test_what_looks_like_a_comment_in_a_text_or_an_address_stays() -> None:
    style = '.a::before { content: "/* \\" */"; }\n.b { background: url(a/*.png); cursor: url(b*/c); }\n'
    assert short(style) == style


@pytest.mark.browser
def test_a_browser_reads_the_same_rules(chromium) -> None:
    """Chromium's own reading of the files as they are written is the measure (CSSOM, ``cssText``). Of custom
    properties, which it does not read, it keeps the space, which says nothing."""
    written = "\n".join(file.read_text(encoding="utf-8") for file in sorted(STYLES.glob("*.css")))
    page = chromium.new_page()
    read = (
        "(text) => { const sheet = new CSSStyleSheet(); sheet.replaceSync(text);"
        " return [...sheet.cssRules].map((rule) => rule.cssText.replace(/\\s+/g, ' ')); }"
    )
    rules = page.evaluate(read, written)
    assert len(rules) > 300
    assert page.evaluate(read, stylesheet([STYLES])) == rules
    page.close()
