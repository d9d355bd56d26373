"""What several tests share: the demonstration catalogue, its site, a browser, Node.js, outside data.

A tool that is missing fails a test where ``CI`` is set and skips it with a reason elsewhere, so that
nothing is passed over silently on the machine that decides.
"""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import time
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING, NoReturn

import pytest
from hypothesis import settings

if TYPE_CHECKING:
    from playwright.sync_api import Browser

    from inperiod.evidence import Facts
    from inperiod.records.model import Catalogue, Source
    from inperiod.records.unopened import Entry
    from windows import Windows

# No clock in property tests: a busy machine is slow, not wrong.
settings.register_profile("inperiod", deadline=None)
settings.load_profile("inperiod")

CHECKOUT = Path(__file__).parents[1]
CHROMIUM_NAMES = ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable")
CHROMIUM_PATHS = (
    "/usr/bin/chromium",
    "/Applications/Chromium.app/Contents/MacOS/Chromium",
    "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
)
CHROMIUM_ARGUMENTS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]
OLDEST_NODE = 18


@pytest.fixture
def opened_sources(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """The ids of the sources that are opened from what was kept of them, as they are."""
    from inperiod.records.keeping import _Memory

    found: list[str] = []
    honest = _Memory.source

    def told(self: _Memory, entry: Entry) -> Source:
        found.append(str(entry.source))
        return honest(self, entry)

    monkeypatch.setattr(_Memory, "source", told)
    return found


def missing(what: str) -> NoReturn:
    """Fail where CI is set, skip elsewhere: the reason is printed either way."""
    if os.environ.get("CI"):
        pytest.fail(f"{what}; CI is set, so this is a failure and not a skip", pytrace=False)
    pytest.skip(what)


def find_chromium() -> str | None:
    """A Chromium or Chrome to drive: ``INPERIOD_CHROMIUM``, then the path, then the usual places."""
    named = os.environ.get("INPERIOD_CHROMIUM")
    if named:
        return named
    on_path = (shutil.which(name) for name in CHROMIUM_NAMES)
    in_place = (path for path in CHROMIUM_PATHS if os.access(path, os.X_OK))
    return next((path for path in (*on_path, *in_place) if path), None)


def find_node() -> str | None:
    """A Node.js of at least version 18, or None."""
    found = shutil.which("node") or shutil.which("nodejs")
    if not found:
        return None
    printed = subprocess.run([found, "--version"], capture_output=True, text=True, check=False).stdout
    version = re.match(r"v(\d+)", printed)
    return found if version and int(version[1]) >= OLDEST_NODE else None


@pytest.fixture(scope="session")
def demo_folder() -> Path:
    """The demonstration catalogue's own folder. Never write into it."""
    return CHECKOUT / "catalogue"


@pytest.fixture(scope="session")
def demo_catalogue(demo_folder: Path) -> Catalogue:
    """The demonstration catalogue, read once."""
    from inperiod.records import read_catalogue

    return read_catalogue(demo_folder).catalogue


@pytest.fixture(scope="session")
def demo_facts(demo_catalogue: Catalogue) -> Facts:
    """The demonstration catalogue's facts, gathered once."""
    from inperiod.evidence import gather_facts

    return gather_facts(demo_catalogue)


@pytest.fixture(scope="session")
def demo_site(demo_catalogue: Catalogue, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The demonstration site, built once; the folder that holds its ``index.html``. Never write into it."""
    from inperiod.publishing import build

    place = tmp_path_factory.getbasetemp()
    if "PYTEST_XDIST_WORKER" in os.environ:
        place = place.parent  # which all workers share
    target = place / "demonstration" / "public"
    try:
        target.parent.mkdir()
    except FileExistsError:  # another worker builds it; a site is swapped in whole
        ends = time.monotonic() + 120
        while not (target / "index.html").exists():
            assert time.monotonic() < ends, "the worker that builds the demonstration site never ends"
            time.sleep(0.05)
    else:
        build(demo_catalogue, target)
    return target


@pytest.fixture(scope="session")
def chromium() -> Iterator[Browser]:
    """A running headless Chromium. A context of one's own is dear: most tests borrow one of ``windows``."""
    from playwright.sync_api import sync_playwright

    with sync_playwright() as playwright:
        own = playwright.chromium.executable_path
        program = find_chromium() or (own if os.access(own, os.X_OK) else None)
        if program is None:
            missing("no Chromium or Chrome found; install one or name it in INPERIOD_CHROMIUM")
        browser = playwright.chromium.launch(executable_path=program, args=CHROMIUM_ARGUMENTS)
        yield browser
        browser.close()


@pytest.fixture(scope="session")
def windows(chromium: Browser) -> Windows:
    """Contexts of the browser to borrow: ``windows.lend()``, then ``windows.take_back(context)``."""
    from windows import Windows

    return Windows(chromium)


@pytest.fixture(scope="session")
def node() -> str:
    """The path of Node.js, version 18 or newer."""
    found = find_node()
    if found is None:
        missing(f"no Node.js of version {OLDEST_NODE} or newer found")
    return found


@pytest.fixture(scope="session")
def shared() -> Path:
    """The folder of outside data beside the checkout; tests that need it are skipped without it."""
    folder = CHECKOUT.parent / "shared"
    if not folder.is_dir():
        pytest.skip(f"{folder} is absent: this check needs outside data that is not part of the project")
    return folder
