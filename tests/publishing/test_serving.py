"""The site on this machine, for this machine."""

from __future__ import annotations

import contextlib
import http.client
import re
import socket
import struct
import threading
import time
from collections.abc import Iterator
from pathlib import Path

import pytest

from inperiod.publishing.serving import serve, server, watched


@pytest.fixture
def port(tmp_path: Path) -> Iterator[int]:
    site = tmp_path / "public"
    (site / "plate").mkdir(parents=True)
    (site / "index.html").write_text("home")
    (site / "404.html").write_text("nothing here")
    (site / ".inperiod-site").write_text("marker")
    (tmp_path / "secret.txt").write_text("secret")
    (site / "link.txt").symlink_to(tmp_path / "secret.txt")
    (tmp_path / "letters").mkdir()
    (tmp_path / "letters" / "index.html").write_text("secret")
    (site / "letters").symlink_to(tmp_path / "letters")
    (site / "circle").symlink_to("circle")
    (site / ".git").mkdir()
    (site / ".git" / "config").write_text("secret")
    with server(site) as http_server:
        threading.Thread(target=http_server.serve_forever, args=(0.01,), daemon=True).start()
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
        "/%252e%252e/secret.txt",
        "/..%5csecret.txt",
        "/..\\secret.txt",
        "/....//secret.txt",
        "/./../secret.txt",
        "/%2e%2e%2f%2e%2e%2fetc/passwd",
        "//etc/passwd",
        "/%2fetc/passwd",
        "/plate/%c0%ae%c0%ae/secret.txt",
        "/link.txt",
        "/letters/",
        "/letters/index.html",
        "/circle",
        "/.inperiod-site",
        "/%2einperiod-site",
        "/.git/config",
        "/index.html%00.txt",
        "/" + "a" * 5000,
        "/" + "a/" * 2000,
    ],
)
def test_nothing_outside_the_site_is_served(port: int, path: str) -> None:
    status, body = ask(port, path)
    assert status == 404
    assert "secret" not in body


def test_no_folder_is_listed(port: int) -> None:
    assert ask(port, "/plate/")[0] == 404


@pytest.mark.parametrize(
    "host",
    [
        *("elsewhere.example", "elsewhere.example:80", "", "127.0.0.1:1", "127.0.0.1.elsewhere.example"),
        *("localhost", "localhost.:{port}", "elsewhere.example:{port}", "127.0.0.1:{port}:{port}"),
        *("user@127.0.0.1:{port}", "[::1]:{port}", "0.0.0.0:{port}", "127.1:{port}", "localhost:0{port}"),
    ],
)
def test_a_request_for_another_host_is_refused(port: int, host: str) -> None:
    status, body = ask(port, "/", host.format(port=port))
    assert status == 421
    assert "home" not in body


def raw(port: int, request: str) -> str:
    """What the server answers to a request written by hand; empty where it closes without a word."""
    answer = b""
    connection = socket.create_connection(("127.0.0.1", port), timeout=5)
    with connection, contextlib.suppress(ConnectionError):  # it may close before it has read everything
        connection.sendall(request.encode("latin-1").replace(b"PORT", str(port).encode()))
        connection.shutdown(socket.SHUT_WR)
        while part := connection.recv(65536):
            answer += part
    return answer.decode("latin-1")


@pytest.mark.parametrize(
    "request_line",
    [
        "GET http://elsewhere.example/ HTTP/1.1\r\nHost: 127.0.0.1:PORT\r\n\r\n",
        "GET / HTTP/1.1\r\nHost: 127.0.0.1:PORT\r\nHost: elsewhere.example\r\n\r\n",
        "GET / HTTP/1.1\r\n\r\n",
        "GET / HTTP/1.0\r\n\r\n",
        "POST / HTTP/1.1\r\nHost: 127.0.0.1:PORT\r\nContent-Length: 0\r\n\r\n",
        "PUT /index.html HTTP/1.1\r\nHost: 127.0.0.1:PORT\r\nContent-Length: 1\r\n\r\nx",
        "DELETE /index.html HTTP/1.1\r\nHost: 127.0.0.1:PORT\r\n\r\n",
        "CONNECT elsewhere.example:80 HTTP/1.1\r\nHost: 127.0.0.1:PORT\r\n\r\n",
        "GET " + "a" * 70_000 + " HTTP/1.1\r\n\r\n",
        "GET / HTTP/1.1\r\n" + "X: y\r\n" * 300 + "\r\n",
        "\x00\xff\r\n\r\n",
    ],
)
def test_no_other_kind_of_request_gets_a_page(port: int, request_line: str) -> None:
    answer = raw(port, request_line)
    assert "home" not in answer
    assert " 200 " not in answer.partition("\r\n")[0]
    assert ask(port, "/") == (200, "home")


def test_no_redirect_leads_elsewhere(port: int) -> None:
    paths = ("//elsewhere.example", "//elsewhere.example/%2e%2e", "/plate", "//plate", "/\\elsewhere.example")
    for path in paths:
        answer = raw(port, f"GET {path} HTTP/1.1\r\nHost: 127.0.0.1:PORT\r\n\r\n")
        places = [line for line in answer.split("\r\n") if line.lower().startswith("location:")]
        assert all(re.fullmatch(r"Location: /(?![/\\]).*", each) for each in places), places


def test_a_broken_connection_prints_nothing(port: int, capfd: pytest.CaptureFixture[str]) -> None:
    for _ in range(3):
        connection = socket.create_connection(("127.0.0.1", port))
        connection.setsockopt(socket.SOL_SOCKET, socket.SO_LINGER, struct.pack("ii", 1, 0))
        connection.sendall(f"GET / HTTP/1.1\r\nHost: 127.0.0.1:{port}\r\n\r\n".encode())
        connection.close()
    assert ask(port, "/") == (200, "home")
    assert tuple(capfd.readouterr()) == ("", "")


def test_nothing_the_server_sends_is_guessed_at_or_kept(port: int) -> None:
    answer = raw(port, "GET /index.html HTTP/1.0\r\nHost: 127.0.0.1:PORT\r\n\r\n")
    assert "X-Content-Type-Options: nosniff" in answer
    assert "Cache-Control: no-store" in answer
    assert "Python" not in answer


def test_a_port_there_is_not_gives_another(tmp_path: Path) -> None:
    said: list[str] = []
    stop = threading.Event()
    stop.set()
    for port in (99_999, -1):
        serve(tmp_path, [], lambda: None, said.append, port=port, every=0.01, stop=stop)
    assert len(said) == 2
    assert all(re.fullmatch(r"http://127\.0\.0\.1:\d+/", each) for each in said)


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


def test_what_the_program_keeps_for_itself_is_no_change(tmp_path: Path) -> None:
    """Else every build would call for the next."""
    (tmp_path / "sources").mkdir()
    (tmp_path / "sources" / "list.yaml").write_text("title: A list\n")
    before = watched([tmp_path])
    (tmp_path / ".inperiod" / "site").mkdir(parents=True)
    (tmp_path / ".inperiod" / "site" / "note.json").write_text("{}")
    assert watched([tmp_path]) == before
    assert len(before) == 1
