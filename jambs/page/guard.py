"""Stands before every route: checks Host, Origin, cookie and size of a request, and sets the policy of an answer.

A page elsewhere can point its own name at 127.0.0.1 (so ``Host`` is checked), or send a form or open a web socket from
the user's browser (so ``Origin`` is checked on everything that changes something, and on sockets). A telephone gets to
``/telephone`` and nowhere else. What nobody foresaw is a sentence in the page, its traceback goes into a file.
"""

from __future__ import annotations

import asyncio
import html
from collections.abc import Callable
from contextlib import suppress
from http.cookies import CookieError, SimpleCookie

from starlette.datastructures import Headers
from starlette.responses import HTMLResponse, Response
from starlette.types import ASGIApp, Message, Receive, Scope, Send
from starlette.websockets import WebSocketClose

from jambs.page.keys import KeyRing, KeyRole

LARGEST_BODY = 1_000_000
"""Of what a browser may send at once [bytes]; a view that takes photos says so in ``LARGER``."""
LARGER: dict[str, int] = {}
"""Paths that may take more, and how much [bytes]."""
PATIENCE = 30.0
"""So long nothing may come of a body that is not whole yet [s]."""
SAFE = ("GET", "HEAD")
OPEN = ("/enter/", "/static/")
"""Where one comes without a cookie: the exchange of a token, and what is the same for everybody."""
TELEPHONE = "/telephone"
POLICY = "; ".join(
    (
        "default-src 'self'",
        "img-src 'self' data: blob:",
        "object-src 'none'",
        "base-uri 'none'",
        "form-action 'self'",
        "frame-ancestors 'self'",
    )
)
HEADERS = {
    "content-security-policy": POLICY,
    "x-content-type-options": "nosniff",
    "x-frame-options": "SAMEORIGIN",
    "referrer-policy": "same-origin",
    "cross-origin-opener-policy": "same-origin",
    "cross-origin-resource-policy": "same-origin",
    "cache-control": "no-store",
}
STYLE = (
    '<meta name="viewport" content="width=device-width, initial-scale=1">'
    '<meta name="color-scheme" content="light dark">'
    '<link rel="stylesheet" href="/static/page.css"><script src="/static/scheme.js"></script>'
)
"""Of the page that says why somebody is not let in: as all others."""
Report = Callable[[Exception], str]
"""Writes down what nobody foresaw; returns the file's name, or nothing."""


class TooLarge(Exception):
    """A body is larger than it may be; the application says so where it is read."""


class TooSlow(Exception):
    """Nothing came of a body for too long; the application says so where it is read."""


class Guard:
    """The application behind its checks. ``hosts``: the addresses it listens on, with their ports, as browsers send
    them.
    """

    def __init__(self, inner: ASGIApp, *, keys: KeyRing, hosts: set[str], cookie: str, report: Report) -> None:
        self._inner, self._keys, self._hosts = inner, keys, hosts
        self._cookie, self._report = cookie, report

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Let in what may come in."""
        if scope["type"] == "lifespan":
            await self._inner(scope, receive, send)
        elif refused := self._refused(scope):
            await _refuse(refused, scope, receive, send)
        else:
            await self._let_in(scope, receive, send)

    def _refused(self, scope: Scope) -> tuple[int, str] | None:
        """Return the status and the sentence with which a request is refused; nothing where it may come in."""
        headers = Headers(scope=scope)
        host = headers.get("host", "")
        if host not in self._hosts or len(headers.getlist("host")) != 1:
            return 421, f"{host or 'No address'} is not an address of this page. Use the link that the program printed."
        changes = scope["type"] == "websocket" or scope["method"] not in SAFE
        if changes and headers.get("origin") != f"http://{host}":
            return 403, "This was not sent by the page itself, so nothing was done."
        if int(_digits(headers.get("content-length"))) > largest(scope["path"]):
            return 413, f"More than {largest(scope['path'])} bytes at once are not taken."
        role = self._keys.role_of(_cookie_in(headers, self._cookie))
        scope.setdefault("state", {})["role"] = role
        return None if scope["path"].startswith(OPEN) else _role_refused(role, scope["path"])

    async def _let_in(self, scope: Scope, receive: Receive, send: Send) -> None:
        started = False

        async def answered(message: Message) -> None:
            nonlocal started
            if message["type"] == "http.response.start":
                started = True
                _add_headers(message)
            await send(message)

        try:
            bounded = receive if scope["type"] == "websocket" else _bounded(receive, largest(scope["path"]))
            await self._inner(scope, bounded, answered)
        except Exception as error:
            if not started:  # else it was told and written down where the answer was made
                said = unforeseen(self._report(error))
                with suppress(RuntimeError):  # of a socket that is closed already
                    await _refuse((500, said), scope, receive, send)


def unforeseen(report: str) -> str:
    """Say that something happened which nobody foresaw; ``report``: the file that says what, if there is one."""
    where = f" {report} says what happened; send it to whoever gave you jambs." if report else ""
    return f"Something unexpected happened, which is a fault of jambs.{where}"


def largest(path: str) -> int:
    """Return how large a body may be that is sent to a path. [bytes]"""
    return next((size for start, size in LARGER.items() if path.startswith(start)), LARGEST_BODY)


def _role_refused(role: KeyRole | None, path: str) -> tuple[int, str] | None:
    is_for_telephones = path == TELEPHONE or path.startswith(f"{TELEPHONE}/")
    if role is None and is_for_telephones:
        return 403, (
            "This telephone has not come in, or the program was started anew since: point its camera at the code that "
            "the program shows. Readings that it keeps stay in it, and go out then."
        )
    if role is None:
        return 403, "Open the page with the link that the program printed: this browser has not come in by it."
    if role is KeyRole.TELEPHONE and not is_for_telephones:
        return 403, "A telephone may read and enter measures, nothing else."
    return None


def _digits(text: str | None) -> str:
    return text if text and text.isascii() and text.isdigit() and len(text) < 16 else "0"


def _cookie_in(headers: Headers, name: str) -> str | None:
    try:
        found = SimpleCookie(headers.get("cookie", "")).get(name)
    except CookieError:
        return None
    return found.value if found else None


def _bounded(receive: Receive, most: int) -> Receive:
    """Count what comes in, also where nobody said how much it will be, and wait for it only so long."""
    taken, is_whole = 0, False

    async def bounded() -> Message:
        nonlocal taken, is_whole
        try:
            message = await (receive() if is_whole else asyncio.wait_for(receive(), PATIENCE))
        except TimeoutError:
            raise TooSlow from None
        is_whole = not message.get("more_body", False)
        taken += len(message.get("body", b""))
        if taken > most:
            raise TooLarge
        return message

    return bounded


def _add_headers(message: Message) -> None:
    given = {name for name, _ in message["headers"]}
    message["headers"] = [
        *message["headers"],
        *((name.encode(), value.encode()) for name, value in HEADERS.items() if name.encode() not in given),
    ]


async def _refuse(refused: tuple[int, str], scope: Scope, receive: Receive, send: Send) -> None:
    status, sentence = refused
    answer: Response | WebSocketClose = WebSocketClose(code=1008, reason=sentence[:100])
    if scope["type"] == "http":
        said = f"<main class=sentence><h1>jambs</h1><p>{html.escape(sentence)}</p></main>"
        text = f"<!doctype html><html lang=en><title>jambs</title>{STYLE}{said}</html>"
        answer = HTMLResponse(text, status_code=status, headers=HEADERS)
    await answer(scope, receive, send)
