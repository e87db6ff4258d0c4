"""Connections that say nothing, are too many, or break off: the page goes on, and nobody is told of a fault."""

from __future__ import annotations

import asyncio
import socket
import threading
import time
from collections.abc import Iterator
from contextlib import ExitStack
from pathlib import Path

import pytest
import uvicorn
from pages import HOST, ORIGIN, OpenPage, open_page
from starlette.types import Message

from jambs.page import connections
from jambs.page.keys import KeyRole
from jambs.page.listening import config_of, listening_on


@pytest.fixture
def opened(tmp_path: Path) -> OpenPage:
    return open_page(tmp_path)


@pytest.fixture
def port(opened: OpenPage) -> Iterator[int]:
    """Serve the page as the program does."""
    with listening_on(0, everywhere=False) as listening:
        server = uvicorn.Server(config_of(opened.application))
        thread = threading.Thread(target=server.run, kwargs={"sockets": [listening]}, daemon=True)
        thread.start()
        while not server.started:
            time.sleep(0.01)
        yield listening.getsockname()[1]
        server.should_exit = True
        thread.join(5)


def asked(port: int) -> bytes:
    """Ask for a file of the page, and return how the answer begins."""
    with socket.create_connection(("127.0.0.1", port), 5) as one:
        one.sendall(b"GET /static/page.css HTTP/1.1\r\nHost: %s\r\nConnection: close\r\n\r\n" % HOST.encode())
        return one.recv(12)


def is_shut(one: socket.socket, within: float) -> bool:
    one.settimeout(within)
    try:
        return one.recv(1) == b""
    except TimeoutError:
        return False
    except OSError:
        return True


def test_too_many_connections_are_shut_and_the_files_of_the_program_are_not_used_up(
    port: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(connections, "MOST", 5)
    with ExitStack() as stack:
        held = [stack.enter_context(socket.create_connection(("127.0.0.1", port), 5)) for _ in range(20)]
        assert sum(is_shut(one, 0.3) for one in held) == 15
    time.sleep(0.2)
    assert asked(port) == b"HTTP/1.1 200"


def test_a_connection_that_asks_nothing_is_shut_and_one_that_asks_is_not(
    port: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(connections, "PATIENCE", 0.3)
    with (
        socket.create_connection(("127.0.0.1", port), 5) as silent,
        socket.create_connection(("127.0.0.1", port), 5) as asking,
    ):
        silent.sendall(b"GET /static/page.css HTTP/1.1\r\nHost:")
        asking.sendall(b"GET /static/page.css HTTP/1.1\r\nHost: %s\r\n\r\n" % HOST.encode())
        assert asking.recv(12) == b"HTTP/1.1 200"
        assert is_shut(silent, 2.0)
        while len(asking.recv(65536)) == 65536:
            pass
        assert not is_shut(asking, 0.5)


@pytest.mark.parametrize("path", ["/telephone/photo/W1", "/telephone/code", "/telephone/reading"])
def test_a_network_that_drops_in_the_middle_is_no_fault(path: str, opened: OpenPage) -> None:
    telephone = opened.client(KeyRole.TELEPHONE)
    cookie = "; ".join(f"{name}={value}" for name, value in telephone.cookies.items())
    headers = [(b"host", HOST.encode()), (b"origin", ORIGIN.encode()), (b"cookie", cookie.encode())]
    scope = {
        "type": "http", "asgi": {"version": "3.0"}, "http_version": "1.1", "method": "POST", "path": path,
        "raw_path": path.encode(), "query_string": b"", "headers": headers, "scheme": "http", "root_path": "",
        "client": ("127.0.0.1", 1), "server": ("127.0.0.1", 8123), "state": {},
    }  # fmt: skip
    messages: list[Message] = [
        {"type": "http.request", "body": b"\xff\xd8 half", "more_body": True},
        {"type": "http.disconnect"},
    ]

    async def receive() -> Message:
        return messages.pop(0)

    async def send(message: Message) -> None:
        pass

    asyncio.run(opened.application(scope, receive, send))
    assert opened.reported == [] and not (opened.file.parent / "photos").exists()
