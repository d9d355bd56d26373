"""What the scripts add finds its room kept: nothing that is being read moves when they arrive."""

from __future__ import annotations

import pytest

from inperiod.publishing import paths

pytestmark = pytest.mark.browser

# Shifts as browsers count them (Layout Instability API), those before the question was put included.
_MOVED = """() => new Promise((done) => {
  let moved = 0;
  new PerformanceObserver((list) => {
    for (const each of list.getEntries()) moved += each.value;
  }).observe({ type: "layout-shift", buffered: true });
  setTimeout(() => done(moved), 250);
})"""


@pytest.mark.parametrize("width", [390, 1280])
@pytest.mark.parametrize(
    "kind", ["home", "plates", "boards", "terms", "a plate with a scan", "a plate without"]
)
def test_nothing_moves_when_the_scripts_arrive(opened, shown_catalogue, kind, width):
    plates = shown_catalogue.plates
    if kind.startswith("a plate"):
        path = paths.plate_path(
            next(key for key in plates if bool(plates[key].image) == (kind[-4:] == "scan"))
        )
    else:
        path = "index.html" if kind == "home" else f"{kind}.html"
    assert opened(path, width=width).evaluate(_MOVED) < 0.002
