"""At the desk: let telephones in to measure, by a code to photograph, and out again."""

from __future__ import annotations

from typing import Any

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import Route

from jambs.page.answers import page
from jambs.page.open_job import desk_of
from jambs.page.telephone_door import NoNetwork, TelephoneDoor, code_picture

PATH = "/telephones"


async def _telephones(request: Request) -> Response:
    return await run_in_threadpool(_shown, request)


def _shown(request: Request, wrong: str = "") -> Response:
    desk = desk_of(request)
    house, door = desk.house(), _door(request)
    link = door.link if door else None
    name = house.job.name if house.job else desk.file.name
    return page(
        "telephones.html",
        name=name,
        view="telephones",
        link=link,
        code=code_picture(link) if link else "",
        wrong=wrong,
        is_all_saved=desk.is_all_saved,
    )


async def _open(request: Request) -> Response:
    """Let telephones in."""
    door = _door(request)
    try:
        if door:
            await run_in_threadpool(door.open)
    except (NoNetwork, OSError) as error:
        return await run_in_threadpool(_shown, request, str(error))
    return RedirectResponse(PATH, status_code=303)


async def _shut(request: Request) -> Response:
    """Let no telephone in any more."""
    if door := _door(request):
        await run_in_threadpool(door.close)
    return RedirectResponse(PATH, status_code=303)


def _door(request: Request) -> TelephoneDoor | None:
    """Return the door of a page that is served; one that is only tried has none."""
    state: Any = request.app.state
    found = getattr(state, "door", None)
    assert found is None or isinstance(found, TelephoneDoor)
    return found


ROUTES = [
    Route(PATH, _telephones),
    Route(f"{PATH}/open", _open, methods=["POST"]),
    Route(f"{PATH}/shut", _shut, methods=["POST"]),
]
