"""How the pieces of a citation become HTML."""

from __future__ import annotations

import re

from hypothesis import given
from hypothesis import strategies as st

from inperiod.citing.pieces import BEGINS, ENDS, as_html, italic, plain

TEXTS = st.text(alphabet=[*"ab <>&\"'/i;", BEGINS, ENDS], max_size=12)


def test_what_a_record_says_is_escaped_once() -> None:
    piece = f"{italic('<b>Frocks</b> & “coats”')}, &amp;"

    assert as_html(piece) == "<i>&lt;b&gt;Frocks&lt;/b&gt; &amp; “coats”</i>, &amp;amp;"
    assert plain(piece) == "<b>Frocks</b> & “coats”, &amp;"


@given(TEXTS, TEXTS)
def test_there_is_no_tag_but_italics_and_each_is_closed(title: str, rest: str) -> None:
    """Even where a record holds the marks that stand for them."""
    html = as_html(italic(title) + rest)

    assert "<" not in re.sub("<i>([^<>]*)</i>", r"\1", html)
