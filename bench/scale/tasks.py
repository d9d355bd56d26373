"""What is measured, each in a process of its own: ``python -m bench.scale.tasks TASK FOLDER [SITE]``.

A task prints one JSON object: what it says of itself, times in seconds.
"""

from __future__ import annotations

import contextlib
import io
import json
import shutil
import sys
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any


def build(folder: Path, site: Path) -> dict[str, Any]:
    """A build as the command does it, from reading to the site in its place. ``work`` is what it takes beyond
    the start of Python and its modules, in seconds and in processor seconds of this process and its hands."""
    from inperiod.publishing import build as build_site  # with all its modules, which are else opened late
    from inperiod.records import read_catalogue  # noqa: F401
    from inperiod.records.keeping import read_kept

    began, busy = time.perf_counter(), _busy()
    reading = read_kept(folder)
    read = time.perf_counter() - began
    report = build_site(reading.catalogue, site, editions=reading.editions, grounds=reading.grounds)
    return {
        "work": time.perf_counter() - began,
        "busy": _busy() - busy,
        "read": read,
        "files": report.files,
        "size": report.size,
        "pages": report.pages,
    }


def bare(folder: Path, site: Path) -> dict[str, Any]:
    """The same pages rendered from ready data by the template engine alone, in one process, and the same
    bytes written: every view is made beforehand and not counted."""
    from inperiod.publishing.lookup import Lookup
    from inperiod.publishing.plan import plan_pages
    from inperiod.publishing.published import published
    from inperiod.publishing.render import environment, rendered
    from inperiod.records import read_catalogue

    shown = published(read_catalogue(folder).catalogue)
    pages = tuple(plan_pages(Lookup(shown)).pages)
    env = environment(shown)
    written = {
        file.relative_to(site).as_posix(): file.read_bytes() for file in site.rglob("*") if file.is_file()
    }
    aside = site.with_name(f"{site.name}-bare")
    shutil.rmtree(aside, ignore_errors=True)
    wall = busy = 0.0
    # Views of many pages at a time, so that they need not all be held at once.
    for start in range(0, len(pages), 500):
        views = [(page, page.context()) for page in pages[start : start + 500]]
        began, spent = time.perf_counter(), _busy()
        for page, view in views:
            text = rendered(env, page, view)
            _put(aside / page.path, text.encode())
            written.pop(page.path, None)
        wall, busy = wall + time.perf_counter() - began, busy + _busy() - spent
    began, spent = time.perf_counter(), _busy()
    for path, data in written.items():
        _put(aside / path, data)
    wall, busy = wall + time.perf_counter() - began, busy + _busy() - spent
    shutil.rmtree(aside)
    return {"work": wall, "busy": busy}


def _put(file: Path, data: bytes) -> None:
    file.parent.mkdir(parents=True, exist_ok=True)
    file.write_bytes(data)


def fit(folder: Path, _: Path) -> dict[str, Any]:
    """The command ``fit``, its answer thrown away."""
    return _command(
        "fit", "--garment", "dress", "--feature", "neckline/square", "--when", "1926", str(folder)
    )


def check(folder: Path, _: Path) -> dict[str, Any]:
    """The command ``check``, its answer thrown away."""
    return _command("check", str(folder))


def _command(*arguments: str) -> dict[str, Any]:
    from inperiod.cli import main

    with contextlib.redirect_stdout(io.StringIO()), contextlib.redirect_stderr(io.StringIO()):
        main(arguments)
    return {}


def _busy() -> float:
    import resource

    spent = 0.0
    for whose in (resource.RUSAGE_SELF, resource.RUSAGE_CHILDREN):
        used = resource.getrusage(whose)
        spent += used.ru_utime + used.ru_stime
    return spent


TASKS: dict[str, Callable[[Path, Path], dict[str, Any]]] = {
    each.__name__: each for each in (build, bare, fit, check)
}


if __name__ == "__main__":
    print(json.dumps(TASKS[sys.argv[1]](Path(sys.argv[2]), Path(sys.argv[3]))))
