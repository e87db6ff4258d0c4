"""The draft: what would change in the job file, line by line; back, forth, save; and a file changed meanwhile."""

from __future__ import annotations

from collections.abc import Callable

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import Route

from jambs.commands.errors import os_sentence
from jambs.face import Record, Units
from jambs.face.screen import ChangedMeanwhile, Desk, EditRefused, draft_record, take_up
from jambs.page.answers import body_of, data
from jambs.page.open_job import desk_of


def _done(desk: Desk, work: Callable[[], None]) -> tuple[Record, int]:
    try:
        work()
    except ChangedMeanwhile as error:
        return {**draft_record(desk), "said": f"{error}."}, 409
    except EditRefused as error:
        return {**draft_record(desk), "said": str(error)}, 409
    except OSError as error:
        return {**draft_record(desk), "said": os_sentence(error)}, 409
    return draft_record(desk), 200


async def _draft(request: Request) -> Response:
    return data(await run_in_threadpool(draft_record, desk_of(request)))


def _post(path: str, work_of: Callable[[Desk], Callable[[], None]]) -> Route:
    async def act(request: Request) -> Response:
        desk = desk_of(request)
        found, status = await run_in_threadpool(_done, desk, work_of(desk))
        return data(found, status=status)

    return Route(path, act, methods=["POST"])


async def _again(request: Request) -> Response:
    """Take up what this browser kept of changes that an earlier run was not asked to save."""
    desk, kept = desk_of(request), (await body_of(request)).get("steps")
    found, status = await run_in_threadpool(_done, desk, lambda: take_up(desk, kept))
    return data(found, status=status)


async def _begin(request: Request) -> Response:
    """Begin a new job with a house in other units."""
    asked = request.query_params.get("units", "")
    if asked in [*Units]:
        await run_in_threadpool(desk_of(request).begin_in, Units(asked))
    return RedirectResponse("/", status_code=303)


ROUTES = [
    Route("/draft/begin", _begin, methods=["POST"]),
    Route("/draft", _draft),
    Route("/draft/again", _again, methods=["POST"]),
    _post("/draft/back", lambda desk: desk.back),
    _post("/draft/forth", lambda desk: desk.forth),
    _post("/draft/save", lambda desk: desk.save),
    _post("/draft/theirs", lambda desk: desk.take_theirs),
    _post("/draft/onto", lambda desk: desk.put_onto_theirs),
]
