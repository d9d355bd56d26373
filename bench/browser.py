"""How fast the pages one asks of are in a real Chromium, for catalogues of any size.

    python -m bench.browser                  the demonstration, and invented ones of 10,000 and 100,000 plates
    python -m bench.browser 10000 --into DIR   one size, its folders kept in DIR and used again

Of each site only what the pages load is made. They are opened from the folder, as a double click does.

``data``: what a page has asked for so far, gzipped. ``first answer``, wall clock: from DOMContentLoaded, when
page and scripts are there, to the answer in the page, the loading of its data and the page's first drawing
included; and the same from when the facts are there that are asked about. The steps: the longest task of
the main thread from the event until all is drawn, of script, style, layout and paint, in its own processor
time (so that a busy machine does not count), as Chromium's own tracing tells it: so long the page stands
still. ``together`` is the sum of all tasks, most of it for later frames and for taking in pictures. Median
and 95th centile of 40 steps, in milliseconds.
"""

from __future__ import annotations

import argparse
import gzip
import json
import random
import statistics
import tempfile
from bisect import bisect_right
from collections import Counter
from collections.abc import Callable, Iterator, Mapping, Sequence
from itertools import repeat
from pathlib import Path
from typing import TYPE_CHECKING, Any
from urllib.parse import urlencode

from bench.scale.catalogues import write_catalogue

from inperiod.evidence import Facts, gather_facts
from inperiod.kept import kept
from inperiod.publishing.browser_data import browser_parts, words_files
from inperiod.publishing.browser_pages import browser_pages
from inperiod.publishing.flats import flat_of
from inperiod.publishing.found_by import words_of
from inperiod.publishing.lookup import Lookup
from inperiod.publishing.published import published
from inperiod.publishing.render import environment, layers, render
from inperiod.publishing.scripts import minified_scripts
from inperiod.publishing.styles import stylesheet
from inperiod.publishing.view_timeline import shown_timelines
from inperiod.records import read_catalogue
from inperiod.records.model import Catalogue

if TYPE_CHECKING:
    from playwright.sync_api import Page

CHROMIUM = "/usr/bin/chromium"
ARGUMENTS: tuple[str, ...] = ("--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run")
ARGUMENTS += ("--disable-background-networking", "--disable-component-update", "--disable-sync")
OPENED = ("index.html", "plates.html", "timeline.html")
STEPS, OPENINGS = 40, 15
SIZES = [0, 10_000, 100_000]

# Notes when the document was there and when what was asked for first stood in it.
WATCH = """
  addEventListener("DOMContentLoaded", () => {
    window.begun = window.there = performance.now();
    const example = document.querySelector("#answer-head");
    const watcher = new MutationObserver(() => {
      const answer = document.querySelector("#answer-head");
      if (!document.querySelector("#results > li") && (!answer || answer === example)) return;
      window.shown = performance.now();
      watcher.disconnect();
    });
    watcher.observe(document.body, { subtree: true, childList: true });
    const receive = window.InPeriod && InPeriod.receive;
    if (receive) InPeriod.receive = (name, value) => {
      if (!/^(rows|said)/.test(name) && !window.shown) window.there = performance.now();
      receive(name, value);
    };
  }, true);
"""
TRACED = ["disabled-by-default-devtools.timeline", "devtools.timeline", "blink.user_timing"]
Spent = tuple[list[float], list[float]]
"""The longest task and the sum of all, of every step."""
TWO_FRAMES = (
    "() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(done))))"
)


def make_site(catalogue_folder: Path, site: Path) -> Facts:
    """The pages one asks of, with their scripts and data and nothing else; the facts they are made of."""
    catalogue = published(read_catalogue(catalogue_folder).catalogue)
    facts = gather_facts(catalogue)
    env = environment(catalogue)
    look = Lookup(catalogue)
    texts = {path: text for part in browser_parts(look) for path, text in part.make()}
    texts |= words_files(look, {key: words_of(source) for key, source in catalogue.sources.items()})
    for page in browser_pages(look, shown_timelines(facts, catalogue.settings.grades)):
        if page.path in OPENED:
            texts[page.path] = render(env, page)
    scripts = {f"assets/{file.name}": file for file in (kept("site") / "assets").glob("*.js")}
    texts |= dict(minified_scripts(scripts))
    texts["assets/style.css"] = stylesheet(layers(catalogue, "assets/css"))
    for path, text in texts.items():
        (site / path).parent.mkdir(parents=True, exist_ok=True)
        (site / path).write_text(text, encoding="utf-8")
    _pictures(catalogue, facts, site)
    return facts


def _pictures(catalogue: Catalogue, facts: Facts, site: Path) -> None:
    """One flat in the place of every plate's: a page takes in as many pictures as it would."""
    flats = (flat_of(catalogue, plate) for plate in catalogue.plates.values())
    one = site / "flat.svg"
    one.write_text(next(str(flat.file) for flat in flats if flat), encoding="utf-8")
    for source in {document.source for document in facts.documents}:
        (site / "flat" / source).mkdir(parents=True, exist_ok=True)
    for key in facts.keys:
        place = site / "flat" / f"{key}.svg"
        if not place.is_symlink():
            place.symlink_to(one)


class Watched:
    """A page and what its main thread does."""

    def __init__(self, page: Page, site: Path) -> None:
        self.page, self.site = page, site
        self.data: list[str] = []
        page.on("request", lambda request: self._asked(request.url))

    def _asked(self, url: str) -> None:
        path = url.removeprefix(self.site.as_uri() + "/")
        if path.startswith("data/"):
            self.data.append(path)

    def open(self, address: str) -> tuple[float, float]:
        """Open a page anew; milliseconds to its first answer, from when the page was there and from when the
        data of the question were."""
        self.page.goto("about:blank")
        self.data.clear()
        self.page.goto(f"{self.site.as_uri()}/{address}")
        self.page.wait_for_function("() => window.shown")
        self.page.evaluate(TWO_FRAMES)
        begun, there, shown = self.page.evaluate("[window.begun, window.there, window.shown]")
        return shown - begun, shown - there

    def weight(self) -> int:
        """Bytes of the data the page has asked for, gzipped."""
        return sum(len(gzip.compress((self.site / path).read_bytes(), 9)) for path in self.data)

    def step(self, act: str, given: Any = None) -> None:
        """An act, and all that comes of it."""
        self.page.evaluate("() => performance.mark('step')")
        self.page.evaluate(act, given)
        self.page.wait_for_function("() => !document.querySelector('[aria-busy=true]')")
        self.page.evaluate(TWO_FRAMES)

    def steps(self, act: str, given: Iterator[Any]) -> Spent:
        """The act with each of the things given, after a few to warm up."""
        browser = self.page.context.browser
        assert browser
        for _ in range(5):
            self.step(act, next(given))
        browser.start_tracing(page=self.page, categories=TRACED)
        for _ in range(STEPS):
            self.step(act, next(given))
        return spent(json.loads(browser.stop_tracing())["traceEvents"])


def spent(events: Sequence[Mapping[str, Any]]) -> Spent:
    """By step, what a trace says of the tasks of the thread on which the steps were marked."""
    marks = sorted((e for e in events if e["name"] == "step"), key=lambda e: e["ts"])
    thread = marks[0]["pid"], marks[0]["tid"]
    tasks = [e for e in events if e["name"] == "RunTask" and (e["pid"], e["tid"]) == thread]
    starts = [e["ts"] for e in marks]
    found: list[list[float]] = [[] for _ in marks]
    for task in tasks:
        step = bisect_right(starts, task["ts"]) - 1
        if step >= 0:
            found[step].append(task.get("tdur", task.get("dur", 0)) / 1000)
    return [max(each) for each in found], [sum(each) for each in found]


def questions(facts: Facts, garment: int, seed: int) -> Iterator[str]:
    """Addresses that ask about a garment: one to three of its features, a year, now and then a place."""
    draw = random.Random(seed)
    numbers = facts.plates_of[garment]
    places = sorted({place for document in facts.documents for place in document.places})
    while True:
        shown = facts.plates[draw.choice(numbers)][1].shown
        terms = [facts.term_keys[term] for term, _ in draw.sample(shown, min(len(shown), draw.randint(1, 3)))]
        pairs = [("garment", facts.garments[garment].id), ("when", str(draw.randint(1890, 1940)))]
        pairs += [("feature", term) for term in terms]
        yield urlencode(pairs + ([("place", draw.choice(places))] if draw.random() < 0.2 else []))


def opened(
    page: str, times: Sequence[tuple[float, float]], weight: int
) -> Iterator[tuple[str, str, Spent, int]]:
    """First answers from the page's being there, and from the data's."""
    yield "first answer", page, ([each for each, _ in times], []), weight
    yield "  from the data's arrival", page, ([each for _, each in times], []), 0


def measured(watched: Watched, facts: Facts) -> Iterator[tuple[str, str, Spent, int]]:
    """What was done, on which page, what each time cost, and the bytes of data asked for so far."""
    garment = Counter(plate.garment for _, plate in facts.plates).most_common(1)[0][0]
    draw = random.Random(3)
    asked = questions(facts, garment, 1)
    first = [f"index.html#{next(asked)}" for _ in range(OPENINGS)]
    yield from opened("question", [watched.open(each) for each in first], watched.weight())
    yield "(nothing at all)", "question", watched.steps("() => {}", repeat(None)), 0
    hash_ = "(hash) => { location.hash = hash; return new Promise((done) => setTimeout(done)); }"
    for hash_given in [next(asked) for _ in range(STEPS)]:
        watched.step(hash_, hash_given)  # brings what is said of the plates to cite
    yield "another question", "question", watched.steps(hash_, asked), watched.weight()
    typed = """(text) => { const box = document.getElementById("ask-feature"); box.focus();
                box.value = text; box.dispatchEvent(new Event("input")); }"""
    letters = (draw.choice(("ne", "sl", "fr", "pl", "b", "co", "s")) for _ in iter(int, 1))
    yield "a letter of a feature", "question", watched.steps(typed, letters), 0

    sifted = [f"plates.html#feature={draw.choice(facts.term_keys)}" for _ in range(OPENINGS)]
    yield from opened("sifted", [watched.open(each) for each in sifted], watched.weight())
    yield from opened("plates", [watched.open("plates.html") for _ in range(OPENINGS)], watched.weight())
    watched.page.evaluate(
        """() => { document.getElementById("sift-more").open = true;
                   document.querySelectorAll(".sift-group").forEach((each, i) => { each.open = i < 7; }); }"""
    )
    tick = """(at) => { const boxes = [...document.querySelectorAll(".sift-group[open] input")];
                boxes[Math.floor(at * boxes.length)].click(); }"""
    yield "a filter", "plates", watched.steps(tick, (draw.random() for _ in iter(int, 1))), 0
    clear = "() => { location.hash = ''; return new Promise((done) => setTimeout(done)); }"
    watched.step(clear)
    drag = """([name, part]) => { const handle = document.getElementById(name);
                const least = Number(handle.min), most = Number(handle.max);
                handle.value = String(Math.round(least + part * (most - least)));
                handle.dispatchEvent(new Event("input")); }"""

    def drags() -> Iterator[tuple[str, float]]:
        while True:
            yield from (("from-handle", part / 60) for part in range(0, 30, 2))
            yield from (("to-handle", 1 - part / 60) for part in range(0, 26, 2))
            yield from (("from-handle", 0.0), ("to-handle", 1.0))

    yield "a drag of the years", "plates", watched.steps(drag, drags()), 0
    watched.step(clear)
    order = """(sort) => { const box = document.getElementById("sort"); box.value = sort;
                box.dispatchEvent(new Event("change")); }"""
    sorts = (sort for _ in iter(int, 1) for sort in ("latest", "garment", "source", ""))
    yield "another order", "plates", watched.steps(order, sorts), 0
    words = """(text) => { const box = document.getElementById("sift-words"); box.value = text;
                box.dispatchEvent(new Event("input"));
                return new Promise((done) => setTimeout(done, 200)); }"""
    said = (
        draw.choice(("fr", "fro", "serge", "p", "braid hem", "marl", "wend sk", "slip")) for _ in iter(int, 1)
    )
    yield "words typed", "plates", watched.steps(words, said), watched.weight()

    watched.page.goto("about:blank")
    watched.data.clear()
    watched.page.goto(f"{watched.site.as_uri()}/timeline.html")
    choose = """(at) => { const box = document.getElementById("timeline-place");
                box.value = box.options[Math.floor(at * box.options.length)].value;
                box.dispatchEvent(new Event("change")); }"""
    yield (
        "another place",
        "timeline",
        watched.steps(choose, (draw.random() for _ in iter(int, 1))),
        watched.weight(),
    )
    yield "a drag of the years", "timeline", watched.steps(drag, drags()), 0


def report(name: str, plates: int, rows: Sequence[tuple[str, str, Spent, int]]) -> None:
    print(f"\n{name}: {plates:,} plates")
    print(f"{'':34}{'median':>9}{'95 %':>9}{'most':>9}   {'together':>10}{'95 %':>9}  {'data, KB':>9}")
    for what, page, (longest, together), weight in rows:
        sums = "".join(f"{each:9.1f}" for each in _centre(together)) if together else f"{'':18}"
        figures = "".join(f"{each:9.1f}" for each in (*_centre(longest), max(longest)))
        print(
            f"{page:10}{what:24}{figures}    {sums}  {f'{weight / 1024:9.1f}' if weight else ''}", flush=True
        )


def _centre(spent: Sequence[float]) -> tuple[float, float]:
    """Median and 95th centile."""
    return statistics.median(spent), statistics.quantiles(spent, n=20, method="inclusive")[-1]


def in_chromium(site: Path, work: Callable[[Watched], list[Any]]) -> list[Any]:
    from playwright.sync_api import sync_playwright

    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=CHROMIUM, args=list(ARGUMENTS))
        page = browser.new_page(viewport={"width": 1280, "height": 900})
        page.on("pageerror", lambda error: print("error on the page:", error))
        page.add_init_script(WATCH)
        try:
            return work(Watched(page, site))
        finally:
            browser.close()


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0] if __doc__ else "")
    parser.add_argument("plates", type=int, nargs="*", default=SIZES, help="0: the demonstration")
    parser.add_argument("--into", type=Path, help="keep catalogues and sites there")
    arguments = parser.parse_args()
    with tempfile.TemporaryDirectory() as scratch:
        place = arguments.into or Path(scratch)
        for plates in arguments.plates:
            folder = place / f"catalogue-{plates}" if plates else Path(__file__).parents[1] / "catalogue"
            if plates and not folder.is_dir():
                write_catalogue(folder, plates)
            site = place / f"site-{plates}"
            facts = make_site(folder, site)
            rows = in_chromium(site, lambda watched, facts=facts: list(measured(watched, facts)))  # type: ignore[misc]
            report("an invented catalogue" if plates else "the demonstration", len(facts.plates), rows)


if __name__ == "__main__":
    main()
