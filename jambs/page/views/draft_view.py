"""The draft: what would change in the job file, line by line; back, forth, save; and a file changed meanwhile."""

from __future__ import annotations

from collections.abc import Callable

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from jambs.commands.errors import os_sentence
from jambs.job.editing.file_text import EditRefused, changed_lines
from jambs.page.answers import data
from jambs.page.desk import Desk, desk_of
from jambs.page.saving import ChangedMeanwhile, read_file
from jambs.values import Record


def draft_record(desk: Desk) -> Record:
    """Return what is not saved yet, and what can be taken back or done again."""
    with desk.lock:
        draft, house = desk.draft, desk.house()
        mine = [_lines(before.content if before else b"", after.content) for before, after in draft.changed if after]
        return {
            "number": house.number,
            "file": str(desk.file),
            "lines": [group for groups in mine for group in groups],
            "back": draft.done[-1].words if draft.done else "",
            "forth": draft.undone[-1].words if draft.undone else "",
            "steps": [step.words for step in draft.done],
            "theirs": _theirs(desk) if desk.is_changed_meanwhile else None,
            "wrong": list(house.wrong),
        }


def _theirs(desk: Desk) -> list[list[Record]]:
    """Return what somebody else changed in the file since the draft was begun."""
    there, saved = read_file(desk.file), desk.draft.saved.get(desk.file.name)
    return _lines(saved.content if saved else b"", there.content if there else b"")


def _lines(before: bytes, after: bytes) -> list[list[Record]]:
    return [
        [{"kind": line.kind.value, "number": line.number, "text": line.text} for line in group]
        for group in changed_lines(before, after)
    ]


def _done(desk: Desk, work: Callable[[], None]) -> tuple[Record, int]:
    try:
        work()
    except ChangedMeanwhile as error:
        return {**draft_record(desk), "said": f"{error}."}, 409
    except EditRefused as error:
        return {**draft_record(desk), "said": str(error)}, 409
    except OSError as error:
        return {**draft_record(desk), "said": os_sentence(error)}, 409
    return draft_record(desk), 200


async def _draft(request: Request) -> Response:
    return data(await run_in_threadpool(draft_record, desk_of(request)))


def _post(path: str, work_of: Callable[[Desk], Callable[[], None]]) -> Route:
    async def act(request: Request) -> Response:
        desk = desk_of(request)
        found, status = await run_in_threadpool(_done, desk, work_of(desk))
        return data(found, status=status)

    return Route(path, act, methods=["POST"])


ROUTES = [
    Route("/draft", _draft),
    _post("/draft/back", lambda desk: desk.back),
    _post("/draft/forth", lambda desk: desk.forth),
    _post("/draft/save", lambda desk: desk.save),
    _post("/draft/theirs", lambda desk: desk.take_theirs),
    _post("/draft/onto", lambda desk: desk.put_onto_theirs),
]
