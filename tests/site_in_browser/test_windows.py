"""A window that was lent to another test before is as good as new."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from windows import Windows

if TYPE_CHECKING:
    from playwright.sync_api import Browser

pytestmark = pytest.mark.browser

KEEP = """async () => {
  localStorage.setItem("kept", "1");
  sessionStorage.setItem("kept", "1");
  document.cookie = "kept=1";
  await new Promise((done) => { indexedDB.open("kept").onsuccess = done; });
  await caches.open("kept");
  const folder = await navigator.storage.getDirectory();
  await folder.getFileHandle("kept", { create: true });
}"""
KEPT = """async () => {
  const folder = await navigator.storage.getDirectory();
  const permission = await navigator.permissions.query({ name: "clipboard-read" });
  return [localStorage.length, sessionStorage.length, Number(document.cookie === "kept=1"),
    (await indexedDB.databases()).length, (await caches.keys()).length,
    (await Array.fromAsync(folder.keys())).length, Number(permission.state === "granted")];
}"""


def test_nothing_is_left_of_the_test_before(chromium: Browser, served: str) -> None:
    windows = Windows(chromium)
    first = windows.lend()
    page = first.new_page()
    page.goto(served)
    first.grant_permissions(["clipboard-read"])
    page.evaluate(KEEP)
    assert page.evaluate(KEPT) == [1] * 7
    windows.take_back(first)
    again = windows.lend()
    assert again is first
    assert len(again.pages) == 1
    page = again.new_page()
    page.goto(served)
    assert page.evaluate(KEPT) == [0] * 7
    again.close()


def test_no_two_tests_have_the_same_window_and_each_has_the_kind_it_asked_for(chromium: Browser) -> None:
    windows = Windows(chromium)
    first, second, dark = windows.lend(), windows.lend(), windows.lend(dark=True)
    assert first is not second
    assert dark.new_page().evaluate("matchMedia('(prefers-color-scheme: dark)').matches")
    windows.take_back(dark)
    assert windows.lend() is not dark
    for context in (first, second, dark):
        context.close()
