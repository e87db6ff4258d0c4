"""Walls, windows, openings, trim and shop as fields and pictures, and a new job from nothing."""

from __future__ import annotations

from typing import Any

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from jambs.face import JobFaults, Record
from jambs.face.screen import (
    CannotStand,
    Desk,
    EditRefused,
    asked_edits,
    carried_sentence,
    form_record,
    is_moved,
    is_told,
    key_pictures,
    key_tables,
)
from jambs.page.answers import body_of, data, page
from jambs.page.open_job import desk_of

MOVED = "The job was changed elsewhere meanwhile, and this place has moved. It is drawn anew: look, and do it again."

NUMBERLESS = (
    "Nothing was changed: a change tells in which state of the job its place was seen (number of /job/form), since "
    "places are numbers of lists, and another window may have shifted them meanwhile. Load the page anew."
)


def change(desk: Desk, asked: dict[str, Any]) -> tuple[Record, int]:
    """Put what a field asks for into the draft, right or wrong: what is wrong is told beside the field.

    What was meant for a place that has moved since the state that its window shows is refused.
    """
    with desk.lock:
        if not is_told(asked):
            return {**form_record(desk), "said": NUMBERLESS}, 409
        if is_moved(desk, asked):
            return {**form_record(desk), "said": MOVED, "moved": True}, 409
        try:
            house = desk.house()
            job, is_whole = house.job, not house.wrong and not house.unmade and not house.unplanned
            marks = [one.mark for one in job.openings] if job else []
            words, edits = asked_edits(desk.draft.files[desk.file.name], asked, desk.table, marks=marks)
            desk.change(words, edits, may_be_wrong=asked.get("act") != "rename" or not is_whole)
        except (EditRefused, JobFaults) as error:
            return {**form_record(desk), "said": str(error)}, 409
        except CannotStand as error:
            return {**form_record(desk), "said": " ".join(error.sentences)}, 409
        said = carried_sentence(edits)
        return {**form_record(desk), **({"said": said} if said else {})}, 200


async def _job(request: Request) -> Response:
    desk = desk_of(request)
    name = await run_in_threadpool(lambda: desk.name)
    record = await run_in_threadpool(form_record, desk)
    return page("job.html", view="job", name=name, record=record, pictures=key_pictures(), tables=key_tables())


async def _form(request: Request) -> Response:
    return data(await run_in_threadpool(form_record, desk_of(request)))


async def _change(request: Request) -> Response:
    found, status = await run_in_threadpool(change, desk_of(request), await body_of(request))
    return data(found, status=status)


ROUTES = [
    Route("/job", _job),
    Route("/job/form", _form),
    Route("/job/change", _change, methods=["POST"]),
]
