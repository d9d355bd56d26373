"""What is being recorded is not lost: the browser killed, the source open twice, the storage full, another
version of the page."""

from __future__ import annotations

import subprocess
import time
from pathlib import Path

import pytest

from conftest import CHROMIUM_ARGUMENTS, find_chromium, missing
from site_in_browser.recording import (
    Typist,
    one_figure,
    settled,
    until,
    work,
)

pytestmark = pytest.mark.browser


def started(program, home, address):
    """A Chromium of its own, and the address its remote control answers at."""
    port = home / "DevToolsActivePort"
    port.unlink(missing_ok=True)
    arguments = [
        *CHROMIUM_ARGUMENTS,
        "--headless=new",
        "--remote-debugging-port=0",
        f"--user-data-dir={home}",
    ]
    process = subprocess.Popen(
        [program, *arguments, address], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL
    )
    ends = time.monotonic() + 20
    while not (port.is_file() and port.read_text().count("\n")):
        assert time.monotonic() < ends, "the browser does not start"
        time.sleep(0.05)
    return process, f"http://127.0.0.1:{port.read_text().splitlines()[0]}"


def test_a_killed_browser_loses_the_last_field_at_most(chromium, demo_site, images, tmp_path):
    """SIGKILL in the middle of typing; what was there half a second before is there again."""
    program = find_chromium()
    if program is None:
        missing("no Chromium to be killed")
    home = tmp_path / "home"
    home.mkdir()
    address = f"{demo_site.as_uri()}/record.html"
    process, control = started(program, home, "about:blank")
    try:
        browser = chromium.browser_type.connect_over_cdp(control)
        page = browser.contexts[0].new_page()
        page.goto(address)
        hands = one_figure(page, images)
        hands.type("back c")
        hands.press("Enter")
        page.wait_for_timeout(500)
        before = work(page)["source"]
        hands.press("F4")
        hands.type("sleeveless")
        hands.press("Enter")
    finally:
        process.kill()
        process.wait()
    process, control = started(program, home, "about:blank")
    try:
        browser = chromium.browser_type.connect_over_cdp(control)
        page = browser.contexts[0].new_page()
        page.goto(address)
        page.wait_for_selector(".record-begun-name")
        assert page.inner_text(".record-begun-name") == "Invented List of Washing Frocks"
        page.click(".record-begun-name")
        until(page, "InPeriod.recording.get().id !== ''")
        after = work(page)["source"]
        last = {"features": [*before["plates"][0]["features"], "sleeve/sleeveless"]}
        for each in (before, after):
            each["plates"][0]["image"].pop("alt")
        assert after in (before, {**before, "plates": [{**before["plates"][0], **last}]})
        # Pictures are not kept: it says which are to be opened again.
        assert "p011.png" in page.inner_text("#record-missing")
        page.click("#record-undo")
        assert work(page)["source"] != after
    finally:
        process.kill()
        process.wait()


def test_only_one_of_two_tabs_writes_a_source(opened, images):
    page = opened("record.html")
    one_figure(page, images)
    settled(page)
    other = page.context.new_page()
    other.goto(page.url)
    until(other, "document.getElementById('record-work').inert")
    assert "open in another tab" in other.inner_text("#record-notice")
    assert work(other)["source"] == work(page)["source"]
    other.get_by_role("button", name="Go on here").click()
    until(other, "!document.getElementById('record-work').inert")
    until(page, "document.getElementById('record-work').inert")
    assert "taken over" in page.inner_text("#record-notice")
    Typist(other).press("F4")
    other.keyboard.type("back c")
    other.keyboard.press("Enter")
    settled(other)
    # What the first tab would still write does not reach the store; taking back, it has the other's words.
    page.evaluate("InPeriod.recording.set(['source', 'note'], 'written behind the back')")
    page.get_by_role("button", name="Go on here").click()
    until(page, "!document.getElementById('record-work').inert")
    until(page, "(InPeriod.recording.get().source.plates[0].features || []).length === 2")
    assert "note" not in work(page)["source"]
    until(other, "document.getElementById('record-work').inert")
    # A tab that is closed leaves its source to the one that waits.
    page.close()
    until(other, "!document.getElementById('record-work').inert")


FULL = """() => {
  const put = IDBObjectStore.prototype.put;
  window.full = true;
  IDBObjectStore.prototype.put = function (...given) {
    if (window.full) throw new DOMException("no room", "QuotaExceededError");
    return put.apply(this, given);
  };
}"""


def test_a_full_store_is_said_and_the_file_is_offered(opened, images):
    page = opened("record.html")
    hands = one_figure(page, images)
    settled(page)
    page.evaluate(FULL)
    hands.type("back c")
    hands.press("Enter")
    page.wait_for_selector("#record-notice:not([hidden])")
    assert "storage for this site is full" in page.inner_text("#record-notice")
    assert page.inner_text("#record-kept").startswith("Not kept")
    with page.expect_download() as download:
        page.get_by_role("button", name="Save it as a file").click()
    assert "closure/back" in Path(download.value.path()).read_text(encoding="utf-8")
    # Once there is room again, the next change keeps everything.
    page.evaluate("window.full = false")
    hands.press("F4")
    hands.type("elb")
    hands.press("Enter")
    settled(page)
    page.reload()
    until(
        page, "((InPeriod.recording.get().source.plates || [])[0] || { features: [] }).features.length === 3"
    )


PUT = """(work) => new Promise((done) => {
  const request = indexedDB.open("inperiod-recording");
  request.onsuccess = () => {
    const all = request.result.transaction("works", "readwrite");
    all.objectStore("works").put(work, work.id);
    all.oncomplete = () => { request.result.close(); done(); };
  };
})"""
GET = """(id) => new Promise((done) => {
  const request = indexedDB.open("inperiod-recording");
  request.onsuccess = () => {
    const read = request.result.transaction("works").objectStore("works").get(id);
    read.onsuccess = () => { request.result.close(); done(read.result); };
  };
})"""


def test_another_version_of_the_page_finds_its_work(opened):
    """What an older page did not keep is filled in, what is unknown is kept; a newer one's is left alone."""
    page = opened("record.html")
    old = {"id": "old", "saved": "2026-01-02T03:04:05Z", "source": {"title": "Old", "kind": "other"}}
    page.evaluate(PUT, {**old, "revision": 7, "unheard_of": {"kept": [1, 2]}})
    new = {
        "id": "new",
        "format": 99,
        "revision": 1,
        "saved": "2026-01-02T03:04:06Z",
        "source": {"title": "New"},
    }
    page.evaluate(PUT, new)
    page.reload()
    page.get_by_role("button", name="New", exact=True).click()
    assert "newer version of this page" in page.inner_text("#record-notice")
    page.get_by_role("button", name="Good").click()
    page.get_by_role("button", name="Old", exact=True).click()
    until(page, "InPeriod.recording.get().id === 'old'")
    page.fill("#record-source-title", "Old and new")
    settled(page)
    found = page.evaluate(GET, "old")
    assert found["source"] == {"title": "Old and new", "kind": "other"}
    assert found["unheard_of"] == {"kept": [1, 2]}
    assert found["revision"] > 7
    assert page.evaluate(GET, "new") == new
