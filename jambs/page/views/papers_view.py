"""The papers: what is there, what of it holds no longer and why, each to look at; and the verbs that write them.

A paper is served by a key from the table of the record, never by a path that a request names.
"""

from __future__ import annotations

import mimetypes
from pathlib import PurePosixPath

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from jambs.face import Record
from jambs.face.screen import SHOWN, paper_file, papers_record
from jambs.page.answers import body_of, data, page
from jambs.page.open_job import desk_of, work_of

KINDS = {".dxf": "image/vnd.dxf", ".step": "model/step", ".glb": "model/gltf-binary", ".csv": "text/csv"}
POLICY = "default-src 'self'; object-src 'self'; base-uri 'none'; frame-ancestors 'self'"
"""A browser's own viewer of PDF is an object."""


def list_record(request: Request) -> Record:
    """Return the papers, and how far the verb is that writes some."""
    return {**papers_record(desk_of(request)), "work": work_of(request).state}


async def _papers(request: Request) -> Response:
    desk = desk_of(request)
    name = await run_in_threadpool(lambda: desk.name)
    return page("papers.html", view="papers", name=name, record=await run_in_threadpool(list_record, request))


async def _list(request: Request) -> Response:
    return data(await run_in_threadpool(list_record, request))


async def _paper_file(request: Request) -> Response:
    found = await run_in_threadpool(paper_file, desk_of(request), request.path_params["key"])
    if found is None:
        return page("sentence.html", status=404, said="There is no such paper.")
    content, name = found
    suffix = PurePosixPath(name).suffix
    kind = KINDS.get(suffix) or mimetypes.guess_type(name)[0] or "application/octet-stream"
    plain = name.encode("ascii", "replace").decode().replace('"', "")
    way = "inline" if suffix in SHOWN else "attachment"
    headers = {"content-disposition": f'{way}; filename="{plain}"', "content-security-policy": POLICY}
    return Response(content, media_type=kind, headers=headers)


async def _work(request: Request) -> Response:
    desk, work, asked = desk_of(request), work_of(request), await body_of(request)
    if await run_in_threadpool(lambda: bool(desk.draft.changed)):
        return data({"said": "Save first: papers are made from the job file."}, status=409)
    if not work.start(str(asked.get("verb")), overwrite=bool(asked.get("overwrite"))):
        return data({"said": "Other papers are being written; wait for them, or stop them."}, status=409)
    return data(work.state)


async def _state(request: Request) -> Response:
    return data(work_of(request).state)


async def _stop(request: Request) -> Response:
    work_of(request).stop()
    return data(work_of(request).state)


ROUTES = [
    Route("/papers", _papers),
    Route("/papers/list", _list),
    Route("/papers/work", _state),
    Route("/papers/work", _work, methods=["POST"]),
    Route("/papers/stop", _stop, methods=["POST"]),
    Route("/paper/{key}", _paper_file),
]
