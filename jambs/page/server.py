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

from jambs.face.screen import Desk, MeasuringAside
from jambs.page.application import Application, make_application
from jambs.page.keys import KeyRole
from jambs.page.listening import LOOPBACK, config_of, hosts_at, listening_for, listening_on
from jambs.page.telephone_door import NoNetwork, TelephoneDoor, code_lines


@dataclass(frozen=True, slots=True, kw_only=True)
class PageAsked:
    """What the verb is asked for. ``telephone``: telephones of the same network may come in and measure.

    ``begin``: the text that a new job begins with, where there is no job file yet.
    """

    file: Path
    target: Path
    telephone: bool = False
    port: int = 0
    browser: bool = True
    begin: str | None = None


class _Server(uvicorn.Server):
    """The server; Ctrl-C ends it as the page's own button does, and is not raised once more."""

    @contextlib.contextmanager
    def capture_signals(self) -> Iterator[None]:
        with super().capture_signals():
            yield
            self._captured_signals.clear()


def serve(asked: PageAsked) -> None:
    """Serve the page until somebody stops it."""
    with _listening(asked) as listening:
        port = listening.getsockname()[1]
        desk, hosts = Desk(file=asked.file, target=asked.target, begin=asked.begin), hosts_at(port)
        measuring = MeasuringAside(file=asked.file, target=asked.target)
        application = make_application(desk, hosts=hosts, cookie=f"jambs-{port}", report=_report, measuring=measuring)
        door = TelephoneDoor(application, file=asked.file, keys=application.keys, hosts=hosts)
        application.give_door(door)
        server = _Server(config_of(application))
        application.stop = lambda: setattr(server, "should_exit", True)
        _say_links(application, asked, port, door)
        try:
            server.run(sockets=[listening])
        finally:
            was_writing = application.close()
            door.close()
            measuring.close()
            desk.close()
            unsaved = len(desk.unsaved or ())
    click.echo("The page is closed.")
    if was_writing:
        click.echo("Papers were being written: each folder of papers is as it was before, or whole and new.")
    if unsaved:
        changes = f"{unsaved} change{'s' if unsaved > 1 else ''}"
        click.echo(f"{changes} not saved: the browser keeps what it saw, and offers it when the job is opened again.")


def _listening(asked: PageAsked) -> socket.socket:
    if asked.port:
        return listening_on(asked.port, everywhere=False)
    return listening_for(asked.file, everywhere=False)


def _say_links(application: Application, asked: PageAsked, port: int, door: TelephoneDoor) -> None:
    link = f"http://{LOOPBACK}:{port}/enter/{application.keys.token(KeyRole.DESK)}"
    click.echo(
        f"{asked.file} is open at\n\n  {link}\n\nCtrl-C closes the page; the job file changes only when you save."
    )
    if asked.telephone:
        _say_code(door)
    if asked.browser:
        with contextlib.suppress(webbrowser.Error):
            webbrowser.open(link)


def _say_code(door: TelephoneDoor) -> None:
    """Let telephones in, and print the code that a telephone is pointed at."""
    try:
        link = door.open()
    except (NoNetwork, OSError) as error:
        click.echo(f"\n{error}", err=True)
        return
    click.echo(f"\nTelephones of the same network, to measure:\n\n{code_lines(link)}\n  {link}")


def _report(error: Exception) -> str:
    """Write what nobody foresaw into a file among the temporary ones, and return its name."""
    text = "A fault of jambs, in the page.\n\n" + "".join(traceback.format_exception(error))
    with contextlib.suppress(OSError):
        number, name = tempfile.mkstemp(prefix=f"jambs-report-{datetime.date.today()}-", suffix=".txt")
        with open(number, "w", encoding="utf-8") as file:
            file.write(text)
        click.echo(f"Something unexpected happened; {name} says what. The page goes on.", err=True)
        return name
    return ""
