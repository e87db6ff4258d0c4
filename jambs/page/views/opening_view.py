"""One opening: its sections, its figures, and the window that is taken hold of and pushed through the wall.

While it is held the browser sends where the hand is, numbered, through a web socket; only the newest is answered.
Nothing of that is written: letting go puts the place into the draft, and only *save* writes the job file.
"""

from __future__ import annotations

import asyncio
import json
from typing import Any

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route, WebSocketRoute
from starlette.websockets import WebSocket, WebSocketDisconnect

from jambs.face.screen import (
    InHand,
    heat_record,
    in_hand,
    moved_record,
    opening_record_of,
    part_records,
    put,
    unmade_record,
)
from jambs.page.answers import as_json, body_of, data, page
from jambs.page.open_job import desk_of


async def _opening(request: Request) -> Response:
    mark = request.path_params["mark"]
    desk = desk_of(request)
    found = await run_in_threadpool(in_hand, desk, mark, alone=False)
    if found is None:
        if unmade := await run_in_threadpool(unmade_record, desk, mark):
            return page("unmade.html", view="opening", **unmade)
        wrong = desk.house().wrong
        said = " ".join(wrong) if wrong else f"There is no opening {mark} in this job."
        return page("sentence.html", status=404, said=said, leads_home=True)
    marks = [one.mark for one in found.hand.job.openings]
    at = marks.index(mark)
    return page(
        "opening.html",
        view="opening",
        name=found.hand.job.name,
        mark=mark,
        room=found.hand.opening.room,
        before=marks[at - 1] if at else None,
        after=marks[at + 1] if at + 1 < len(marks) else None,
        record=await run_in_threadpool(opening_record_of, found),
    )


async def _record(request: Request) -> Response:
    """Return an opening as it stands, for a page that is open already."""
    alone = request.query_params.get("alone") == "yes"
    found = await run_in_threadpool(in_hand, desk_of(request), request.path_params["mark"], alone=alone)
    if found is None:
        house = await run_in_threadpool(desk_of(request).house)
        why = house.unmade.get(request.path_params["mark"], ())
        return data({"wrong": [*house.wrong, *why], "is_unmade": bool(why)}, status=404)
    return data(await run_in_threadpool(opening_record_of, found))


async def _parts(request: Request) -> Response:
    """Return the parts in space."""
    found = await run_in_threadpool(in_hand, desk_of(request), request.path_params["mark"], alone=True)
    return data([] if found is None else await run_in_threadpool(part_records, found.kit))


async def _heat(request: Request) -> Response:
    return data(await run_in_threadpool(heat_record, desk_of(request), request.path_params["mark"]))


async def _hand(socket: WebSocket) -> None:
    """Answer where the hand is, the newest place only."""
    await socket.accept()
    newest: asyncio.Queue[dict[str, Any]] = asyncio.Queue(maxsize=1)
    listening = asyncio.create_task(_listen(socket, newest))
    found: InHand | None = None
    try:
        while not listening.done() or not newest.empty():
            taking = asyncio.create_task(newest.get())
            await asyncio.wait({taking, listening}, return_when=asyncio.FIRST_COMPLETED)
            if not taking.done():
                taking.cancel()
                break
            asked = taking.result()
            if found is None or asked.get("first"):
                found = await run_in_threadpool(
                    in_hand, desk_of(socket), str(asked.get("mark")), alone=bool(asked.get("alone")), moves=True
                )
            if found is not None:
                await socket.send_text(as_json(await run_in_threadpool(moved_record, found, asked)))
    except (WebSocketDisconnect, RuntimeError):
        pass  # the browser went away in the middle of an answer
    finally:
        listening.cancel()


async def _listen(socket: WebSocket, newest: asyncio.Queue[dict[str, Any]]) -> None:
    """Keep the newest message; those in between are never worked out."""
    try:
        while True:
            asked = _read(await socket.receive_text())
            if asked is None:
                continue
            if newest.full():
                dropped = newest.get_nowait()
                asked["first"] = asked.get("first") or dropped.get("first")
            newest.put_nowait(asked)
    except (WebSocketDisconnect, KeyError):
        return


def _read(text: str) -> dict[str, Any] | None:
    """Return a message of the hand; nothing where it is none."""
    try:
        found = json.loads(text)
    except (ValueError, RecursionError):
        return None
    return found if isinstance(found, dict) else None


async def _put(request: Request) -> Response:
    asked = await body_of(request)
    found, status = await run_in_threadpool(put, desk_of(request), request.path_params["mark"], asked)
    return data(found, status=status)


ROUTES = [
    Route("/openings/{mark}", _opening),
    Route("/openings/{mark}/record", _record),
    Route("/openings/{mark}/parts", _parts),
    Route("/openings/{mark}/heat", _heat),
    Route("/openings/{mark}/position", _put, methods=["POST"]),
    WebSocketRoute("/hand", _hand),
]
