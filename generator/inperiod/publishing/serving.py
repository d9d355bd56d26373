"""The site on this machine alone, built again when something changes."""

from __future__ import annotations

import os
import stat
import threading
from collections.abc import Callable, Iterator
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path

from inperiod.own_folder import NAME

LOOPBACK = "127.0.0.1"


class Handler(SimpleHTTPRequestHandler):
    """Files of the built site, to requests that name this machine. A foreign Host header is refused, so that
    no page elsewhere can reach the site by pointing a name of its own at this address."""

    server_version = "InPeriod"
    sys_version = ""
    timeout = 30
    """Seconds after which a connection on which nothing comes is closed."""
    extensions_map = {  # noqa: RUF012
        **SimpleHTTPRequestHandler.extensions_map,
        ".html": "text/html; charset=utf-8",
        ".js": "text/javascript; charset=utf-8",
        ".css": "text/css; charset=utf-8",
        ".json": "application/json; charset=utf-8",
        ".svg": "image/svg+xml",
        ".webp": "image/webp",
        ".xml": "application/xml; charset=utf-8",
    }

    def send_head(self):  # type: ignore[no-untyped-def]
        if not self._for_us():
            self.send_error(421, "This site answers on this machine only")
            return None
        if not self._inside():
            self.send_error(404, "No such page")
            return None
        return super().send_head()

    def _for_us(self) -> bool:
        """Whether the request names this machine and this port, once, and asks for a path."""
        named = self.headers.get_all("Host") or []
        if len(named) != 1 or not self.path.startswith("/"):
            return False
        host, _, port = named[0].strip().lower().partition(":")
        return host in (LOOPBACK, "localhost") and (port or "80") == str(self.server.server_address[1])  # type: ignore[index]

    def _inside(self) -> bool:
        """Whether the path asked for is one of the site, links followed, and none of its hidden files."""
        root = Path(self.directory).resolve()
        try:
            place = Path(self.translate_path(self.path)).resolve()
            place.exists()
        except (OSError, RuntimeError, ValueError):  # too long, a circle of links, or NUL
            return False
        return place.is_relative_to(root) and not any(
            part.startswith(".") for part in place.relative_to(root).parts
        )

    def list_directory(self, path):  # type: ignore[no-untyped-def]
        self.send_error(404, "No such page")
        return None

    def end_headers(self) -> None:
        self.send_header("Cache-Control", "no-store")
        self.send_header("X-Content-Type-Options", "nosniff")
        super().end_headers()

    def send_error(self, code: int, message: str | None = None, explain: str | None = None) -> None:
        page = Path(self.directory) / "404.html"
        body = page.read_bytes() if code == 404 and page.is_file() else b""
        # Its links are relative to the root of the site, or lead to the address the site has elsewhere.
        if b'href="https://' in body or b'href="http://' in body or not body or self.path.count("/") > 1:
            super().send_error(code, message, explain)
            return
        self.send_response(404)
        self.send_header("Content-Type", "text/html; charset=utf-8")
        self.send_header("Content-Length", str(len(body)))
        self.end_headers()
        if self.command != "HEAD":
            self.wfile.write(body)

    def log_message(self, format: str, *args: object) -> None:
        """Only ``cli`` prints."""


class _Server(ThreadingHTTPServer):
    daemon_threads = True

    def handle_error(self, request: object, client_address: object) -> None:
        """A connection that broke off concerns nobody; only ``cli`` prints."""


def server(site: Path, port: int = 0) -> ThreadingHTTPServer:
    """A server of that folder on loopback; port 0 takes a free one (see ``server_address``).

    Raises ``OSError`` where the port is in use, ``OverflowError`` where there is none of that number.
    """
    return _Server((LOOPBACK, port), partial(Handler, directory=str(site)))


def watched(folders: list[Path]) -> dict[Path, tuple[int, int]]:
    """Time of change and size of every file in the folders."""
    return {file: (seen.st_mtime_ns, seen.st_size) for file, seen in _stats(folders)}


def _stats(folders: list[Path]) -> Iterator[tuple[Path, os.stat_result]]:
    """What the program itself keeps beside the records is no change of theirs."""
    for folder in folders:
        for place, below, names in os.walk(folder):
            below[:] = [each for each in below if each != NAME]
            for name in names:
                file = Path(place, name)
                try:
                    seen = file.stat()
                except OSError:  # removed between listing and looking
                    continue
                if stat.S_ISREG(seen.st_mode):
                    yield file, seen


def serve(
    site: Path,
    watch: list[Path],
    rebuild: Callable[[], None],
    say: Callable[[str], None],
    port: int = 8000,
    every: float = 1.0,
    stop: threading.Event | None = None,
) -> None:
    """Serve ``site`` until ``stop`` is set (or the keyboard interrupts), calling ``rebuild`` when a file
    under ``watch`` changes; ``every`` is the pause between looks, in seconds. ``rebuild`` reports its own
    failures; the last good site stays. ``say`` gets one line for the address and one for each rebuild."""
    stop = stop or threading.Event()
    try:
        http = server(site, port)
    except (OSError, OverflowError):
        http = server(site, 0)
    with http:
        thread = threading.Thread(target=http.serve_forever, daemon=True)
        thread.start()
        say(f"http://{LOOPBACK}:{http.server_address[1]}/")
        before = watched(watch)
        try:
            while not stop.wait(every):
                now = watched(watch)
                if now != before:
                    before = now
                    say("Something changed: building again.")
                    rebuild()
        except KeyboardInterrupt:
            say("Stopped.")
        finally:
            http.shutdown()
