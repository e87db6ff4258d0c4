"""The house: its elevations with the openings where they stand, and the list of them."""

from __future__ import annotations

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from jambs.face.screen import house_data
from jambs.page.answers import page
from jambs.page.open_job import desk_of


async def _house(request: Request) -> Response:
    return page("house.html", view="house", **await run_in_threadpool(house_data, desk_of(request)))


ROUTES = [Route("/", _house)]
