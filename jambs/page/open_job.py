"""The open job of a request: its desk, and the one verb that may be writing papers of it."""

from __future__ import annotations

from starlette.requests import HTTPConnection, Request

from jambs.face.screen import Desk
from jambs.page.paper_work import PaperWork


def desk_of(connection: HTTPConnection) -> Desk:
    """Return the open job of a request or a web socket."""
    found = connection.app.state.desk
    assert isinstance(found, Desk)
    return found


def work_of(request: Request) -> PaperWork:
    """Return the verb that writes papers of the open job."""
    found = request.app.state.work
    assert isinstance(found, PaperWork)
    return found
