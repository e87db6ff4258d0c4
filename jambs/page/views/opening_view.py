"""One opening: its sections, its figures, and the window that is taken hold of and pushed through the wall.

While it is held the browser sends where the hand is, numbered, through a web socket; only the newest is answered.
Nothing of that is written: letting go puts the place into the draft, and only *save* writes the job file.
"""

from __future__ import annotations

import asyncio
import json
import math
from dataclasses import dataclass
from typing import Any

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route, WebSocketRoute
from starlette.websockets import WebSocket, WebSocketDisconnect

from jambs.findings import FindingsError
from jambs.job.editing.file_text import EditRefused
from jambs.page.answers import as_json, body_of, data, page
from jambs.page.desk import CannotStand, Desk, House, desk_of
from jambs.page.opening_data import fixed_record, settled_record, stood_record
from jambs.page.placing import HeldWindow, Named, held, named_places, settle, stand
from jambs.page.position_edits import position_edits
from jambs.page.shapes import part_records
from jambs.parts.cut_kit import CutKit
from jambs.values import Record

MOST_REACH = 1.0
"""No named place takes a window from further away than this [in], whatever a browser asks for."""


@dataclass(frozen=True, slots=True, kw_only=True)
class InHand:
    """An opening that is looked at: the house it stands in, what is held, its kit as printed, the named places."""

    house: House
    hand: HeldWindow
    kit: CutKit
    places: tuple[Named, ...]


def in_hand(desk: Desk, mark: str, *, alone: bool) -> InHand | None:
    """Take hold of an opening of the house as it is now; nothing where there is no such opening."""
    house = desk.house()
    kit = next((one for one in house.asked.kits if one.mark == mark), None) if house.asked else None
    if house.asked is None or kit is None:
        return None
    opening, job = kit.placement.opening, house.asked.job
    hand = held(opening, kit.placement, job, alone=alone or opening.position_is_own, book=house.asked.marked.book)
    least = desk.heat.least(hand.lead, job)
    places = named_places(hand, now=kit.placement.flange_plane, least_heat=least)
    return InHand(house=house, hand=hand, kit=kit, places=places)


def opening_record_of(found: InHand) -> Record:
    """Return everything the view shows of an opening as it stands in the job."""
    assert found.house.asked
    return {
        "number": found.house.number,
        "fixed": fixed_record(found.hand, found.kit, found.places),
        "now": settled_record(found.hand, found.kit, found.house.asked.register),
    }


def moved_record(found: InHand, asked: dict[str, Any]) -> Record:
    """Return what a window does that is wanted near a plane; where it cannot stand, why."""
    number, wanted, reach = asked.get("n", 0), _number(asked.get("plane")), _number(asked.get("reach"))
    plane, named = settle(found.hand, wanted, found.places, reach=min(reach, MOST_REACH))
    try:
        stood = stand(found.hand, plane, named)
    except FindingsError as error:
        return {"n": number, "wrong": list(error.sentences(found.hand.job.units))}
    return {"n": number, "now": stood_record(found.hand, stood, with_parts=bool(asked.get("rests")))}


def _number(value: Any) -> float:
    found = float(value) if isinstance(value, int | float) else 0.0
    return found if math.isfinite(found) else 0.0


async def _opening(request: Request) -> Response:
    mark = request.path_params["mark"]
    desk = desk_of(request)
    found = await run_in_threadpool(in_hand, desk, mark, alone=False)
    if found is None:
        wrong = desk.house().wrong
        said = " ".join(wrong) if wrong else f"There is no opening {mark} in this job."
        return page("sentence.html", status=404, said=said)
    marks = [kit.mark for kit in found.house.asked.kits] if found.house.asked else []
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
        return data({"wrong": list(desk_of(request).house().wrong)}, status=404)
    return data(await run_in_threadpool(opening_record_of, found))


async def _parts(request: Request) -> Response:
    """Return the parts in space."""
    found = await run_in_threadpool(in_hand, desk_of(request), request.path_params["mark"], alone=True)
    return data([] if found is None else await run_in_threadpool(part_records, found.kit))


def heat_record(desk: Desk, mark: str) -> Record:
    """Return the curves of an opening, or that they are being worked out."""
    found = in_hand(desk, mark, alone=False)
    if found is None:
        return {"said": ""}
    draft, lead = found.house.text, found.hand.lead
    if lead.mark != mark:
        desk.heat.curves(desk.file, draft, lead, found.hand.job)
    return desk.heat.curves(desk.file, draft, found.hand.opening, found.hand.job)


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
                    in_hand, desk_of(socket), str(asked.get("mark")), alone=bool(asked.get("alone"))
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
            asked = json.loads(await socket.receive_text())
            if not isinstance(asked, dict):
                continue
            if newest.full():
                dropped = newest.get_nowait()
                asked["first"] = asked.get("first") or dropped.get("first")
            newest.put_nowait(asked)
    except (WebSocketDisconnect, ValueError, KeyError):
        return


def put(desk: Desk, mark: str, asked: dict[str, Any]) -> tuple[Record, int]:
    """Put a window where the hand let it go: a step of the draft; where it cannot stand, why, and nothing changes."""
    alone = bool(asked.get("alone"))
    with desk.lock:
        found = in_hand(desk, mark, alone=alone)
        if found is None:
            return {"wrong": [f"There is no opening {mark} in this job."]}, 404
        alone = alone or found.hand.opening.position_is_own
        reach = min(_number(asked.get("reach")), MOST_REACH)
        plane, named = settle(found.hand, _number(asked.get("plane")), found.places, reach=reach)
        moved = mark if alone else f"all windows of wall {found.hand.opening.wall.name}"
        try:
            edits = position_edits(desk.draft.files[desk.file.name], found.hand, plane, named, alone=alone)
            desk.change(f"place {moved}", edits)
        except EditRefused as error:
            return {"wrong": [str(error)]}, 409
        except CannotStand as error:
            return {"wrong": list(error.sentences)}, 409
        now = in_hand(desk, mark, alone=alone)
        assert now is not None
        return opening_record_of(now), 200


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
