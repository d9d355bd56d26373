"""Windows of Chromium that are lent to one test after another: a new browser context costs as much as two or
three pages opened in one that is there."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from playwright.sync_api import Browser, BrowserContext


class Kind(NamedTuple):
    dark: bool
    still: bool
    scripts: bool


class Windows:
    """Browser contexts, each lent to one test at a time and as good as new: nothing of the tests before is
    open, stored or permitted in it. A test that sets up more (routes, a phone) makes a context of its own."""

    def __init__(self, browser: Browser) -> None:
        self.browser = browser
        self.free: dict[Kind, list[BrowserContext]] = {}
        self.kinds: dict[BrowserContext, Kind] = {}

    def lend(self, dark: bool = False, still: bool = False, scripts: bool = True) -> BrowserContext:
        """A context for readers who want it dark, want no motion, or have no scripts. Its first page stays
        open and empty, so that the processes of the context stay alive: open others."""
        kind = Kind(dark, still, scripts)
        if self.free.get(kind):
            return self.free[kind].pop()
        context = self.browser.new_context(
            color_scheme="dark" if dark else "light",
            reduced_motion="reduce" if still else "no-preference",
            java_script_enabled=scripts,
        )
        context.new_page()
        self.kinds[context] = kind
        return context

    def take_back(self, context: BrowserContext) -> None:
        """Closes what was opened in it, and takes away what was stored and permitted."""
        empty, *opened = context.pages
        for page in opened:
            page.close()
        context.clear_permissions()
        context.clear_cookies()
        browser = context.new_cdp_session(empty)
        browser.send("Storage.clearDataForOrigin", {"origin": "*", "storageTypes": "all"})
        browser.detach()
        self.free.setdefault(self.kinds[context], []).append(context)
