"""Listens on this computer, opens the browser, and stops by Ctrl-C or when the page says so."""

from __future__ import annotations

import contextlib
import datetime
import socket
import tempfile
import traceback
import webbrowser
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import click
import uvicorn

from jambs.page.application import Application, make_application
from jambs.page.desk import Desk
from jambs.page.guard import LARGEST_BODY
from jambs.page.keys import Role

LOOPBACK, EVERYWHERE = "127.0.0.1", "0.0.0.0"
GRACE = 2
"""So long a connection may take to end when the page stops [s]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What the verb is asked for. ``telephone``: telephones of the same network may come in and measure."""

    file: Path
    target: Path
    telephone: bool = False
    port: int = 0
    browser: bool = True


class _Server(uvicorn.Server):
    """The server; Ctrl-C ends it as the page's own button does, and is not raised once more."""

    @contextlib.contextmanager
    def capture_signals(self) -> Iterator[None]:
        with super().capture_signals():
            yield
            self._captured_signals.clear()


def serve(asked: Asked) -> None:
    """Serve the page until somebody stops it."""
    with listening_on(asked.port, everywhere=asked.telephone) as listening:
        port = listening.getsockname()[1]
        desk = Desk(file=asked.file, target=asked.target)
        application = make_application(
            desk,
            hosts=hosts_at(port, telephone=asked.telephone),
            cookie=f"jambs-{port}",
            report=_report,
        )
        server = _Server(config_of(application))
        application.stop = lambda: setattr(server, "should_exit", True)
        _say_links(application, asked, port)
        try:
            server.run(sockets=[listening])
        finally:
            desk.close()
    click.echo("The page is closed.")


def hosts_at(port: int, *, telephone: bool) -> set[str]:
    """Return the addresses that a browser may call the page by."""
    names = {LOOPBACK, "localhost", *([own_address()] if telephone else [])}
    return {f"{name}:{port}" for name in names}


def own_address() -> str:
    """Return this computer's address in its network; nothing is sent for it."""
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as asking:
        try:
            asking.connect(("192.0.2.1", 9))  # an address of RFC 5737, which nobody has
        except OSError:
            return LOOPBACK
        return str(asking.getsockname()[0])


def listening_on(port: int, *, everywhere: bool) -> socket.socket:
    """Listen on a port of this computer, 0 for any that is free; ``everywhere``: to its network too."""
    return socket.create_server((EVERYWHERE if everywhere else LOOPBACK, port))


def config_of(application: Application) -> uvicorn.Config:
    """Return how the page is served: quiet, bounded, and without a word about itself."""
    return uvicorn.Config(
        application,
        log_level="critical",
        access_log=False,
        server_header=False,
        date_header=False,
        lifespan="off",
        ws="websockets-sansio",
        ws_max_size=LARGEST_BODY,
        timeout_graceful_shutdown=GRACE,
        proxy_headers=False,
    )


def _say_links(application: Application, asked: Asked, port: int) -> None:
    link = f"http://{LOOPBACK}:{port}/enter/{application.keys.token(Role.DESK)}"
    click.echo(
        f"{asked.file} is open at\n\n  {link}\n\nCtrl-C closes the page; the job file changes only when you save."
    )
    if asked.telephone:
        token = application.keys.token(Role.TELEPHONE)
        click.echo(f"\nTelephones of the same network, to measure:\n\n  http://{own_address()}:{port}/enter/{token}")
    if asked.browser:
        with contextlib.suppress(webbrowser.Error):
            webbrowser.open(link)


def _report(error: Exception) -> str:
    """Write what nobody foresaw into a file among the temporary ones, and return its name."""
    name = Path(tempfile.gettempdir()) / f"jambs-report-{datetime.datetime.now():%Y-%m-%d-%H%M%S}.txt"
    with contextlib.suppress(OSError):
        name.write_text(
            "A fault of jambs, in the page.\n\n" + "".join(traceback.format_exception(error)), encoding="utf-8"
        )
        click.echo(f"Something unexpected happened; {name} says what. The page goes on.", err=True)
        return str(name)
    return ""
