"""The door for telephones: a second ear of the page, on the network of this computer, opened and shut by the desk."""

from __future__ import annotations

import io
import threading
import time
from dataclasses import dataclass
from pathlib import Path

import segno
import uvicorn
from starlette.types import ASGIApp

from jambs.page.keys import KeyRing, KeyRole
from jambs.page.listening import GRACE, LOOPBACK, config_of, listening_for, own_address

PATIENCE = 0.01
"""Between two looks whether the door is open [s]."""


class NoNetwork(Exception):
    """This computer is in no network, so no telephone can reach it; the message is a sentence."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Ear:
    """What listens to the network, and the address it has there."""

    server: uvicorn.Server
    thread: threading.Thread
    host: str


class TelephoneDoor:
    """Lets telephones of the same network in. ``hosts``: the addresses the page is called by; its own is added."""

    def __init__(self, application: ASGIApp, *, file: Path, keys: KeyRing, hosts: set[str]) -> None:
        self._application, self._file, self._keys, self._hosts = application, file, keys, hosts
        self._lock = threading.Lock()
        self._ear: _Ear | None = None

    @property
    def link(self) -> str | None:
        """The link that lets a telephone in; nothing where the door is shut."""
        ear = self._ear
        return f"http://{ear.host}/enter/{self._keys.token(KeyRole.TELEPHONE)}" if ear else None

    def open(self) -> str:
        """Let telephones in; return the link.

        Raises:
            NoNetwork: there is no network to be reached in.
            OSError: it cannot be listened to.
        """
        with self._lock:
            if self._ear is None:
                self._ear = self._listening()
        found = self.link
        assert found is not None
        return found

    def close(self) -> None:
        """Let no telephone in any more; those that are in are out."""
        with self._lock:
            ear, self._ear = self._ear, None
            if ear is None:
                return
            self._hosts.discard(ear.host)
            self._keys.renew(KeyRole.TELEPHONE)
            ear.server.should_exit = True
            ear.thread.join(GRACE + 1)

    def _listening(self) -> _Ear:
        address = own_address()
        if address == LOOPBACK:
            raise NoNetwork("This computer is in no network, so no telephone can reach it. Join one, then try again.")
        listening = listening_for(self._file, everywhere=True)
        host = f"{address}:{listening.getsockname()[1]}"
        server = uvicorn.Server(config_of(self._application))
        thread = threading.Thread(target=server.run, kwargs={"sockets": [listening]}, daemon=True)
        self._hosts.add(host)
        thread.start()
        while not server.started and thread.is_alive():
            time.sleep(PATIENCE)
        return _Ear(server=server, thread=thread, host=host)


def code_picture(link: str) -> str:
    """Return the square code of a link as SVG for a page."""
    return segno.make(link, error="m", micro=False).svg_inline(border=4, omitsize=True, lineclass=None, svgclass=None)


def code_lines(link: str) -> str:
    """Return the square code of a link as lines for a terminal, two modules in a letter's height."""
    out = io.StringIO()
    segno.make(link, error="m", micro=False).terminal(out, compact=True)
    return out.getvalue()
