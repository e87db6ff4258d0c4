"""All routes of the page together, behind the guard.

**Where routes are added**: a view is a module in ``jambs/page/views/`` with a list ``ROUTES`` (starlette ``Route`` and
``WebSocketRoute``); add the module to ``VIEWS`` here. Paths at or under ``/telephone`` are open to telephones, all
others to the desk alone; the guard sees to it. A view finds the open job with ``desk_of(request)``.
"""

from __future__ import annotations

from collections.abc import Callable

from starlette.applications import Starlette
from starlette.datastructures import State
from starlette.requests import ClientDisconnect, Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import Route
from starlette.types import Receive, Scope, Send

from jambs.commands.errors import os_sentence
from jambs.face.screen import Desk, Measuring, MeasuringAside
from jambs.page.answers import data, page, static
from jambs.page.guard import TELEPHONE, Guard, Report, TooLarge, TooSlow, unforeseen
from jambs.page.keys import KeyRing, KeyRole, TooManyWrong
from jambs.page.paper_work import PaperWork
from jambs.page.telephone_door import TelephoneDoor
from jambs.page.views import (
    draft_view,
    house_view,
    job_view,
    opening_view,
    papers_view,
    telephone_pictures_view,
    telephone_view,
    telephones_view,
)

VIEWS = (
    house_view,
    opening_view,
    job_view,
    papers_view,
    draft_view,
    telephone_view,
    telephone_pictures_view,
    telephones_view,
)
FIRST_PAGE = {KeyRole.DESK: "/", KeyRole.TELEPHONE: TELEPHONE}


class Application:
    """The page as an ASGI application; ``stop`` is called when the page says so."""

    def __init__(self, guard: Guard, keys: KeyRing, state: State) -> None:
        self._guard, self.keys, self._state = guard, keys, state
        self.stop: Callable[[], None] = lambda: None

    def give_door(self, door: TelephoneDoor) -> None:
        """Let the desk open and shut the door for telephones."""
        self._state.door = door

    def close(self) -> bool:
        """Stop papers that are being written, and say whether some were."""
        work: PaperWork = self._state.work
        return work.close()

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answer one request."""
        await self._guard(scope, receive, send)


def make_application(
    desk: Desk, *, hosts: set[str], cookie: str, report: Report, measuring: MeasuringAside | None = None
) -> Application:
    """Put the views together for one job.

    ``hosts``: addresses it is called by, ``cookie``: the name of its cookie, ``measuring``: where readings are taken
    down, if not in this process.
    """
    keys = KeyRing()
    routes = [route for view in VIEWS for route in view.ROUTES]
    own = [
        Route("/enter/{token}", _enter),
        Route("/static/{name}", static),
        Route("/stop", _stop, methods=["POST"]),
    ]

    async def on_fault(request: Request, error: Exception) -> Response:
        return page("sentence.html", status=500, said=unforeseen(report(error)))

    handlers = {404: _not_found, 405: _not_found, TooLarge: _too_large, TooSlow: _too_slow, OSError: _unreadable}
    handlers |= {ClientDisconnect: _gone_away, Exception: on_fault}
    inner = Starlette(routes=[*routes, *own], exception_handlers=handlers)
    inner.state.desk, inner.state.keys, inner.state.cookie, inner.state.hosts = desk, keys, cookie, hosts
    inner.state.measuring = measuring or Measuring(desk)
    inner.state.work = PaperWork(file=desk.file, target=desk.target)
    application = Application(Guard(inner, keys=keys, hosts=hosts, cookie=cookie, report=report), keys, inner.state)
    inner.state.stop = lambda: application.stop()
    return application


async def _enter(request: Request) -> Response:
    """Exchange the token of a link for a cookie, and go to the first page of its role."""
    state = request.app.state
    try:
        found = state.keys.exchange(request.path_params["token"])
    except TooManyWrong:
        return page("sentence.html", status=429, said="Too many wrong links were tried; wait a minute, then try again.")
    if found is None:
        said = "This link no longer holds: it was for a page that is closed. Use the one that the program printed last."
        return page("sentence.html", status=403, said=said)
    value, role = found
    answer: Response = RedirectResponse(FIRST_PAGE[role], status_code=303)
    if (
        role is KeyRole.TELEPHONE
    ):  # it comes from the camera's program: a strict cookie goes along only from our own page on
        answer = page("telephone_enter.html", path=FIRST_PAGE[role])
    answer.set_cookie(state.cookie, value, httponly=True, samesite="strict", path="/")
    return answer


async def _stop(request: Request) -> Response:
    """Close the page, as Ctrl-C does."""
    request.app.state.stop()
    return data({"said": "The page is closed; you may close this window. Start it again with `jambs open`."})


async def _too_large(request: Request, error: Exception) -> Response:
    return page("sentence.html", status=413, said="That is too much at once.")


async def _too_slow(request: Request, error: Exception) -> Response:
    return page("sentence.html", status=408, said="Nothing came any more of what was sent; send it again.")


async def _gone_away(request: Request, error: Exception) -> Response:
    """Answer nobody: a network dropped in the middle of what was sent, which is no fault of anything here."""
    return Response(status_code=400)


async def _unreadable(request: Request, error: Exception) -> Response:
    """Say which file of the job the system does not let us read, and why."""
    assert isinstance(error, OSError)
    return page("sentence.html", status=503, said=f"{os_sentence(error)}.")


async def _not_found(request: Request, error: Exception) -> Response:
    return page("sentence.html", status=404, said="There is no such page here.", leads_home=True)
