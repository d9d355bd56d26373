"""The site on this machine, for this machine."""

from __future__ import annotations

import http.client
import threading
import time
from collections.abc import Iterator
from pathlib import Path

import pytest

from inperiod.publishing.serve import serve, server


@pytest.fixture
def port(tmp_path: Path) -> Iterator[int]:
    site = tmp_path / "public"
    (site / "plate").mkdir(parents=True)
    (site / "index.html").write_text("home")
    (site / "404.html").write_text("nothing here")
    (site / ".inperiod-site").write_text("marker")
    (tmp_path / "secret.txt").write_text("secret")
    (site / "link.txt").symlink_to(tmp_path / "secret.txt")
    with server(site) as http_server:
        thread = threading.Thread(target=http_server.serve_forever, daemon=True)
        thread.start()
        yield http_server.server_address[1]
        http_server.shutdown()


def ask(port: int, path: str, host: str | None = None) -> tuple[int, str]:
    connection = http.client.HTTPConnection("127.0.0.1", port, timeout=5)
    connection.putrequest("GET", path, skip_host=True)
    connection.putheader("Host", host if host is not None else f"127.0.0.1:{port}")
    connection.endheaders()
    answer = connection.getresponse()
    return answer.status, answer.read().decode()


def test_pages_are_served(port: int) -> None:
    assert ask(port, "/") == (200, "home")
    assert ask(port, "/index.html?x=1") == (200, "home")
    assert ask(port, "/", f"localhost:{port}") == (200, "home")


@pytest.mark.parametrize(
    "path",
    [
        "/../secret.txt",
        "/%2e%2e/secret.txt",
        "/..%2fsecret.txt",
        "/plate/../../secret.txt",
        "/link.txt",
        "/.inperiod-site",
    ],
)
def test_nothing_outside_the_site_is_served(port: int, path: str) -> None:
    status, body = ask(port, path)
    assert status == 404
    assert "secret" not in body


def test_no_folder_is_listed(port: int) -> None:
    assert ask(port, "/plate/")[0] == 404


@pytest.mark.parametrize(
    "host", ["elsewhere.example", "elsewhere.example:80", "", "127.0.0.1:1", "127.0.0.1.elsewhere.example"]
)
def test_a_request_for_another_host_is_refused(port: int, host: str) -> None:
    status, body = ask(port, "/", host)
    assert status == 421
    assert "home" not in body


def test_a_missing_page_gets_the_sites_own_words(port: int) -> None:
    assert ask(port, "/nowhere.html") == (404, "nothing here")


def test_the_server_listens_on_loopback_alone(tmp_path: Path) -> None:
    with server(tmp_path) as http_server:
        assert http_server.server_address[0] == "127.0.0.1"


def test_a_change_builds_again_and_a_failing_build_does_not_stop_the_server(tmp_path: Path) -> None:
    site, records = tmp_path / "public", tmp_path / "catalogue"
    site.mkdir()
    records.mkdir()
    built, said, stop = threading.Event(), [], threading.Event()
    running = threading.Thread(
        target=serve,
        args=(site, [records], built.set, said.append),
        kwargs={"port": 0, "every": 0.05, "stop": stop},
    )
    running.start()
    try:
        time.sleep(0.3)
        assert not built.is_set()
        (records / "a.yaml").write_text("title: x")
        assert built.wait(5)
    finally:
        stop.set()
        running.join(5)
    assert said[0].startswith("http://127.0.0.1:")
    assert not running.is_alive()
