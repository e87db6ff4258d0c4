"""Pictures that a telephone takes: a photo of an opening to keep, and a code on paper to find its opening by."""

from __future__ import annotations

from pathlib import Path
from urllib.parse import quote

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from jambs.face.screen import Measuring, MeasuringAside
from jambs.page.answers import data
from jambs.page.codes import NoCode, mark_in
from jambs.page.guard import LARGER, TELEPHONE
from jambs.page.photos import LARGEST_PHOTO, NoPhoto, keep_photo, kept_file, kept_photo
from jambs.page.views.telephone_view import measuring_of

LARGER[f"{TELEPHONE}/photo/"] = LARGEST_PHOTO
LARGER[f"{TELEPHONE}/code"] = LARGEST_PHOTO


async def _photo(request: Request) -> Response:
    """Show the photo of an opening."""
    measuring = measuring_of(request)
    mark = await run_in_threadpool(measuring.ask, Measuring.mark, request.path_params["mark"])
    file = await run_in_threadpool(kept_file, measuring.folder, mark) if mark else None
    if file is None:
        return Response("There is no photo.", status_code=404, media_type="text/plain")
    return Response(await run_in_threadpool(file.read_bytes), media_type="image/jpeg")


async def _keep(request: Request) -> Response:
    """Keep a photo of an opening beside the job; the one before goes."""
    return await run_in_threadpool(_kept, measuring_of(request), request.path_params["mark"], await request.body())


def _kept(measuring: Measuring | MeasuringAside, named: str, content: bytes) -> Response:
    mark = measuring.ask(Measuring.mark, named)
    if mark is None:
        return data({"said": f"There is no opening {named} in this job."}, status=404)
    try:
        file = keep_photo(measuring.folder, mark, kept_photo(content))
    except NoPhoto as error:
        return data({"said": str(error)}, status=422)
    except OSError as error:
        return data(
            {"said": f"{error.filename}: {error.strerror}; the photo cannot be written beside the job."}, status=503
        )
    return data({"said": f"Kept beside the job: {Path(file.parent.name) / file.name}"})


async def _code(request: Request) -> Response:
    """Say which opening the code on a measure sheet or a label is of."""
    return await run_in_threadpool(_found, measuring_of(request), await request.body())


def _found(measuring: Measuring | MeasuringAside, content: bytes) -> Response:
    try:
        mark = measuring.ask(Measuring.mark, mark_in(content, measuring.ask(Measuring.job_name)))
    except NoCode as error:
        return data({"said": str(error)}, status=422)
    if mark is None:
        return data({"said": "The opening of this code is no longer in the job."}, status=422)
    return data({"path": f"{TELEPHONE}/opening/{quote(mark, safe='')}"})


ROUTES = [
    Route(f"{TELEPHONE}/photo/{{mark}}", _photo),
    Route(f"{TELEPHONE}/photo/{{mark}}", _keep, methods=["POST"]),
    Route(f"{TELEPHONE}/code", _code, methods=["POST"]),
]
