"""The house: its openings as the summary prints them."""

from __future__ import annotations

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from jambs.page.answers import page
from jambs.page.desk import Desk, desk_of
from jambs.sheets.house import summary_data
from jambs.values import Record


def house_data(desk: Desk) -> Record:
    """Return what the first page shows of the house."""
    house = desk.house()
    summary = summary_data(house.asked.kits, house.asked.register, house.asked.job) if house.asked else None
    name = house.job.name if house.job else desk.file.name
    return {"name": name, "rows": summary["rows"] if summary else [], "wrong": house.wrong}


async def _house(request: Request) -> Response:
    return page("house.html", view="house", **await run_in_threadpool(house_data, desk_of(request)))


ROUTES = [Route("/", _house)]
