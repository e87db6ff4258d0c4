"""The papers: what is there, what of it holds no longer and why, each to look at; and the verbs that write them.

A paper is served by a key from the table of the record, never by a path that a request names.
"""

from __future__ import annotations

import hashlib
import mimetypes
from pathlib import PurePosixPath

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from jambs.app.stale_words import things_words
from jambs.app.writing import suppress_record_faults
from jambs.issued.entry import WrittenPaper
from jambs.issued.record import Record as PaperRecord
from jambs.page.answers import body_of, data, page
from jambs.page.desk import Desk, desk_of
from jambs.page.house_data import stale_of
from jambs.values import Record

WORDS = {
    "build": ("Build", "shop drawings, cut sheets, cut files, lists of the house"),
    "measure": ("Measure", "measure sheets to fill in on the site, and the table for the readings"),
    "buy": ("Buy", "what to buy and how to cut it"),
    "compare": ("Compare", "the positions side by side: heat, damp, sun"),
    "labels": ("Labels", "a label for every part"),
}
"""Each verb as its button, and what it writes."""
KINDS = {".dxf": "image/vnd.dxf", ".step": "model/step", ".glb": "model/gltf-binary", ".csv": "text/csv"}
SHOWN = (".pdf",)
"""What a browser shows in the page; all else is taken home."""
POLICY = "default-src 'self'; object-src 'self'; base-uri 'none'; frame-ancestors 'self'"
"""A browser's own viewer of PDF is an object."""
KEY_LETTERS = 24
FOLDERS = ("", "cut sheets", "drawings", "install sheets", "site", "cutting", "placement", "templates", "outside")


def written(desk: Desk) -> dict[str, WrittenPaper]:
    """Return what the record of the folder of papers has, by path."""
    with suppress_record_faults():
        return dict(PaperRecord.open(desk.target).papers)
    return {}


def key_of(path: str) -> str:
    """Return the key by which a paper is asked for."""
    return hashlib.sha256(path.encode()).hexdigest()[:KEY_LETTERS]


def papers_record(desk: Desk) -> Record:
    """Return the papers by verb and folder, each with what changed since it was made."""
    house = desk.house()
    stale = stale_of(house.asked) if house.asked else []
    why = {path: things_words(one) for one in stale for path in one.paths}
    groups: dict[str, dict[str, list[Record]]] = {}
    for path, paper in sorted(written(desk).items()):
        if (desk.target / path).is_file():
            folder = str(PurePosixPath(path).parent)
            groups.setdefault(paper.verb, {}).setdefault("" if folder == "." else folder, []).append(
                _paper(path, paper, why)
            )
    return {
        "folder": str(desk.target),
        "verbs": [{"verb": verb, "words": words, "writes": writes} for verb, (words, writes) in WORDS.items()],
        "groups": [
            {"verb": verb, "words": WORDS.get(verb, (verb, ""))[0], "folders": _folders(folders)}
            for verb, folders in groups.items()
        ],
        "stale": [{"verb": one.verb, "count": len(one.paths), "why": things_words(one, in_full=True)} for one in stale],
        "unsaved": bool(desk.draft.changed),
        "wrong": list(house.wrong),
        "work": desk.papers.state,
    }


def _folders(folders: dict[str, list[Record]]) -> list[Record]:
    """Put what is read most first; a folder that is not named comes after those that are."""
    names = sorted(folders, key=lambda name: (FOLDERS.index(name) if name in FOLDERS else len(FOLDERS), name))
    return [{"name": name, "papers": folders[name]} for name in names]


def _paper(path: str, paper: WrittenPaper, why: dict[str, str]) -> Record:
    name = PurePosixPath(path)
    return {
        "key": key_of(path),
        "name": name.name,
        "kind": paper.kind,
        "marks": list(paper.marks),
        "issue": paper.issue,
        "is_shown": name.suffix in SHOWN,
        "why": why.get(path, ""),
    }


def paper_file(desk: Desk, key: str) -> tuple[bytes, str] | None:
    """Return a paper of the table and its name; nothing where there is none of that key."""
    path = next((one for one in written(desk) if key_of(one) == key), None)
    file = desk.target / path if path else None
    if file is None or not file.is_file() or not file.resolve().is_relative_to(desk.target.resolve()):
        return None
    return file.read_bytes(), file.name


async def _papers(request: Request) -> Response:
    desk = desk_of(request)
    name = await run_in_threadpool(lambda: desk.name)
    return page("papers.html", view="papers", name=name, record=await run_in_threadpool(papers_record, desk))


async def _list(request: Request) -> Response:
    return data(await run_in_threadpool(papers_record, desk_of(request)))


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
    desk, asked = desk_of(request), await body_of(request)
    if await run_in_threadpool(lambda: bool(desk.draft.changed)):
        return data({"said": "Save first: papers are made from the job file."}, status=409)
    if not desk.papers.start(str(asked.get("verb")), overwrite=bool(asked.get("overwrite"))):
        return data({"said": "Other papers are being written; wait for them, or stop them."}, status=409)
    return data(desk.papers.state)


async def _state(request: Request) -> Response:
    return data(desk_of(request).papers.state)


async def _stop(request: Request) -> Response:
    desk_of(request).papers.stop()
    return data(desk_of(request).papers.state)


ROUTES = [
    Route("/papers", _papers),
    Route("/papers/list", _list),
    Route("/papers/work", _state),
    Route("/papers/work", _work, methods=["POST"]),
    Route("/papers/stop", _stop, methods=["POST"]),
    Route("/paper/{key}", _paper_file),
]
