"""Pictures that a telephone takes: a photo of an opening to keep, and a code on paper to find its opening by."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from urllib.parse import quote

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from jambs.face import JobFaults, Unbuildable
from jambs.face.screen import Measuring, MeasuringAside, OnPaper, opening_on_paper
from jambs.page.answers import data
from jambs.page.codes import NoCode, mark_in
from jambs.page.guard import LARGER, TELEPHONE
from jambs.page.photos import LARGEST_PHOTO, NoPhoto, keep_photo, kept_file, kept_photo
from jambs.page.views.telephone_view import measuring_of

LARGER[f"{TELEPHONE}/photo/"] = LARGEST_PHOTO
LARGER[f"{TELEPHONE}/code"] = LARGEST_PHOTO


Answered = Callable[..., Response]


def _or_waits(answered: Answered, *given: object) -> Response:
    """Answer a picture; while the job is at fault there is nobody who knows its openings, and the telephone waits."""
    try:
        return answered(*given)
    except JobFaults as error:
        faults = "; ".join(map(str, error.faults))
        return data({"said": f"The job has faults now, so the picture has to wait: {faults}"}, status=503)
    except Unbuildable as error:
        return data({"said": f"The picture has to wait: {' '.join(error.sentences)}"}, status=503)


async def _photo(request: Request) -> Response:
    """Show the photo of an opening."""
    return await run_in_threadpool(_or_waits, _seen, measuring_of(request), request.path_params["mark"])


def _seen(measuring: Measuring | MeasuringAside, named: str) -> Response:
    mark = measuring.ask(Measuring.mark, named)
    file = kept_file(measuring.folder, mark) if mark else None
    if file is None:
        return Response("There is no photo.", status_code=404, media_type="text/plain")
    return Response(file.read_bytes(), media_type="image/jpeg")


async def _keep(request: Request) -> Response:
    """Keep a photo of an opening beside the job; the one before goes."""
    content = await request.body()
    return await run_in_threadpool(_or_waits, _kept, measuring_of(request), request.path_params["mark"], content)


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
    return await run_in_threadpool(_or_waits, _found, measuring_of(request), await request.body())


def _found(measuring: Measuring | MeasuringAside, content: bytes) -> Response:
    try:
        found = measuring.ask(opening_on_paper, *mark_in(content, measuring.ask(Measuring.job_name)))
    except NoCode as error:
        return data({"said": str(error)}, status=422)
    if found.mark is None:
        return data({"said": _gone(found)}, status=422)
    path = {"path": f"{TELEPHONE}/opening/{quote(found.mark, safe='')}"}
    if measuring.ask(Measuring.mark, found.printed) == found.mark:
        return data(path)
    said = f"This paper calls the opening {found.printed}; its mark is {found.mark} now."
    return data({**path, "said": said, "mark": found.mark})


def _gone(found: OnPaper) -> str:
    """Say what became of an opening that a paper has and the job has not."""
    if not found.room:
        return (
            f"Nothing on record says which opening was {found.printed} when this paper was printed: "
            "find it in the list by its room."
        )
    return (
        f"The opening of this paper, {found.printed} in {found.room}, is no longer in the job: it was taken out, "
        "or its mark and its sizes changed at once. Where it is still in the wall, find it in the list by its room."
    )


ROUTES = [
    Route(f"{TELEPHONE}/photo/{{mark}}", _photo),
    Route(f"{TELEPHONE}/photo/{{mark}}", _keep, methods=["POST"]),
    Route(f"{TELEPHONE}/code", _code, methods=["POST"]),
]
