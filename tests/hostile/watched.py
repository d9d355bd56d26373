"""A page in Chromium under watch: whatever runs, asks, is blocked, or has found its way into the markup."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any
from urllib.parse import unquote, urlsplit

if TYPE_CHECKING:
    from playwright.sync_api import BrowserContext, Page

# Runs before anything of the page. The browser reports what the Content-Security-Policy stopped as an event.
TRIPWIRE = """(() => {
  const seen = [];
  Object.defineProperty(window, "__seen", { value: seen });
  const trip = (name) => () => { seen.push(name); };
  Object.defineProperty(window, "boom", { value: trip("boom ran") });
  for (const name of ["alert", "confirm", "prompt", "print", "open"]) window[name] = trip(`${name} called`);
  document.addEventListener("securitypolicyviolation", (event) => seen.push(
    `policy: ${event.violatedDirective} ${event.blockedURI} ${event.sample}`.trim()));
})()"""

# What a record's text must never have become. Styles set by our own scripts are properties, which Chromium
# shows as an attribute: those that fetch something are not ours.
ODD = """() => {
  const odd = [];
  const never = /^(iframe|object|embed|base|marquee|math|foreignobject|animate|set|frame|applet|style)$/i;
  const leads = /^(href|src|action|formaction|xlink:href|data|srcdoc|background|poster)$/;
  const fetches = /url|expression|import|position:\\s*fixed/i;
  const allowed = /^(https?|file|blob|mailto):$/;
  const schemeOf = (value) => {
    try { return new URL(value, location.href).protocol; } catch (slip) { return "unreadable"; }
  };
  for (const element of document.querySelectorAll("*")) {
    const tag = element.localName, script = tag === "script" && !element.src;
    if (never.test(tag)) odd.push(tag);
    if (script && element.type !== "application/ld+json") odd.push("script inside the page");
    if (tag === "meta" && element.httpEquiv.toLowerCase() === "refresh") odd.push("refresh");
    for (const { name, value } of element.attributes) {
      const slip = name.startsWith("on") || (name === "style" && fetches.test(value));
      if (slip || (leads.test(name) && !allowed.test(schemeOf(value)))) odd.push(`${tag} ${name}=${value}`);
    }
  }
  return [...window.__seen, ...odd];
}"""


class Watched:
    """One page; ``look()`` gives what was seen since the page was opened, and forgets it."""

    def __init__(self, context: BrowserContext, base: str) -> None:
        self.base = base
        self.noted: list[str] = []
        self.page: Page = context.new_page()
        self.page.add_init_script(TRIPWIRE)
        self.page.on("console", lambda said: self.noted.append(f"console: {said.text}"))
        self.page.on("pageerror", lambda slip: self.noted.append(f"error: {slip}"))
        self.page.on("dialog", self.dialog)
        self.page.on("popup", lambda other: self.noted.append(f"window: {other.url}"))
        self.page.on("request", self.asked)

    def dialog(self, found: Any) -> None:
        self.noted.append(f"dialog: {found.message}")
        found.dismiss()

    def asked(self, request: Any) -> None:
        if not request.url.startswith((self.base, "blob:")):
            self.noted.append(f"asked for: {request.url}")

    def visit(self, path: str) -> list[str]:
        """Open a page of the site; what was seen."""
        self.page.goto(self.base + path, wait_until="load")
        return self.look()

    def visit_all(self, paths: Sequence[str]) -> dict[str, list[str]]:
        """Open several pages of a local folder at once, each in a frame of its own; what was seen, by page,
        and under "" what cannot be said of one of them."""
        holder = Path(unquote(urlsplit(self.base).path)) / "frames-for-a-test.html"
        frames = "".join(f'<iframe width="300" height="60" src="{path}"></iframe>' for path in paths)
        holder.write_text(
            f"<!doctype html><meta charset=utf-8><title>frames</title>{frames}", encoding="utf-8"
        )
        self.page.goto(self.base + holder.name, wait_until="load")
        holder.unlink()
        seen = {
            each.url.removeprefix(self.base): each.evaluate(ODD) for each in self.page.main_frame.child_frames
        }
        assert seen.keys() == set(paths)
        seen[""] = [*self.noted]
        self.noted.clear()
        return seen

    def look(self) -> list[str]:
        """What has been seen on the page as it stands now."""
        seen = [*self.noted, *self.page.evaluate(ODD)]
        self.noted.clear()
        return list(dict.fromkeys(seen))
