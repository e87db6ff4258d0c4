"""Where the page listens: this computer alone, or its network; and how it is served there."""

from __future__ import annotations

import hashlib
import socket
from pathlib import Path

import uvicorn
from starlette.types import ASGIApp

from jambs.page.connections import BoundedConnection
from jambs.page.guard import LARGEST_BODY

LOOPBACK, EVERYWHERE = "127.0.0.1", "0.0.0.0"
GRACE = 2
"""So long a connection may take to end when the page stops [s]."""
FIRST_PORT, PORTS = 20_000, 6_000
"""Ports of telephones, then those of desks: under those that systems hand out by themselves (RFC 6335 and common
settings, from memory)."""


def hosts_at(port: int, *, telephone: bool = False) -> set[str]:
    """Return the addresses that a browser may call the page by."""
    names = {LOOPBACK, "localhost", *([own_address()] if telephone else [])}
    return {f"{name}:{port}" for name in names}


def own_address() -> str:
    """Return this computer's address in its network, or its own alone; nothing is sent for it."""
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as asking:
        try:
            asking.connect(("192.0.2.1", 9))  # an address of RFC 5737, which nobody has
        except OSError:
            return LOOPBACK
        return str(asking.getsockname()[0])


def listening_on(port: int, *, everywhere: bool) -> socket.socket:
    """Listen on a port of this computer, 0 for any that is free; ``everywhere``: to its network too."""
    return socket.create_server((EVERYWHERE if everywhere else LOOPBACK, port))


def listening_for(file: Path, *, everywhere: bool) -> socket.socket:
    """Listen on the same port for the same job every day, where nobody else has it; ``everywhere``: for telephones.

    What a browser keeps until it is written down, it keeps for one address: only there it finds it again.
    """
    number = int(hashlib.sha256(str(file.resolve()).encode()).hexdigest()[:8], 16)
    first = FIRST_PORT if everywhere else FIRST_PORT + PORTS
    try:
        return listening_on(first + number % PORTS, everywhere=everywhere)
    except OSError:
        return listening_on(0, everywhere=everywhere)


def config_of(application: ASGIApp) -> uvicorn.Config:
    """Return how the page is served: quiet, bounded, and without a word about itself."""
    return uvicorn.Config(
        application,
        log_level="critical",
        access_log=False,
        server_header=False,
        date_header=False,
        lifespan="off",
        http=BoundedConnection,
        ws="websockets-sansio",
        ws_max_size=LARGEST_BODY,
        timeout_graceful_shutdown=GRACE,
        proxy_headers=False,
    )
