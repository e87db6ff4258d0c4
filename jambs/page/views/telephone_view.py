"""The telephone at the opening: the list, one opening large, readings in and answers out."""

from __future__ import annotations

from collections.abc import Callable
from typing import TypeVar

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from jambs.face import JobFaults, Record, Unbuildable
from jambs.face.screen import (
    Changed,
    Measuring,
    MeasuringAside,
    NotTaken,
    ReadOtherwise,
    SentReading,
    list_data,
    measured_opening_data,
)
from jambs.page.answers import body_of, data, page
from jambs.page.guard import TELEPHONE
from jambs.page.photos import FOR_TELEPHONES, has_photo

LONGEST = 200
"""Letters of any text that a telephone sends with a reading."""
Made = TypeVar("Made")


def measuring_of(request: Request) -> Measuring | MeasuringAside:
    """Return the readings of the open job."""
    found = request.app.state.measuring
    assert isinstance(found, Measuring | MeasuringAside)
    return found


async def _list(request: Request) -> Response:
    measuring = measuring_of(request)
    return await _shown(lambda: page("telephone_list.html", **measuring.ask(list_data), photo_rules=FOR_TELEPHONES))


async def _opening(request: Request) -> Response:
    measuring, mark = measuring_of(request), request.path_params["mark"]
    return await _shown(lambda: _opening_page(measuring, mark), mark)


def _opening_page(measuring: Measuring | MeasuringAside, mark: str) -> Response:
    shown = measuring.ask(measured_opening_data, mark)
    if shown is None:
        return page(
            "telephone_sentence.html",
            status=404,
            waits=False,
            mark=mark,
            said=[f"There is no opening {mark} in this job."],
        )
    there = has_photo(measuring.folder, shown["mark"])
    return page("telephone_opening.html", **shown, has_photo=there, photo_rules=FOR_TELEPHONES)


async def _reading(request: Request) -> Response:
    entry = _entry(await body_of(request))
    if entry is None:
        return data({"said": "This is no reading."}, status=400)
    measuring = measuring_of(request)
    return await run_in_threadpool(_taken, measuring, entry)


def _taken(measuring: Measuring | MeasuringAside, entry: SentReading) -> Response:
    """Write a reading down: 200 with the answer, 409 where another reading stands there, 422 where it is none.

    ``changed``: its place is another one by now, so the telephone has to show the opening anew.
    """
    try:
        return data({"id": entry.id, "answer": measuring.ask(Measuring.take, entry)})
    except ReadOtherwise as error:
        return data({"id": entry.id, "there": error.there, "by": error.by}, status=409)
    except NotTaken as error:
        return data({"id": entry.id, "said": str(error), "changed": isinstance(error, Changed)}, status=422)
    except JobFaults as error:
        return data(
            {"said": "The job has faults now, so this has to wait: " + "; ".join(map(str, error.faults))}, status=503
        )
    except Unbuildable as error:
        return data(
            {"said": "The job cannot be built now, so this has to wait: " + " ".join(error.sentences)}, status=503
        )
    except OSError as error:
        return data(
            {"said": f"{error.strerror}: the table cannot be written now; close it where it is open."}, status=503
        )


def _entry(said: Record) -> SentReading | None:
    """Return a reading as it was sent; nothing where it is none."""
    texts = {name: said.get(name, "") for name in ("id", "mark", "text", "was", "day", "by", "asked", "units")}
    place = said.get("place")
    if not all(_is_text(text) for text in texts.values()):
        return None
    if not isinstance(place, int) or isinstance(place, bool) or not texts["id"] or not texts["text"]:
        return None
    return SentReading(place=place, is_sure=said.get("sure") is True, **texts)


def _is_text(sent: object) -> bool:
    """Say whether what was sent is a text that can be written down: half of a letter of two halves is none."""
    return isinstance(sent, str) and len(sent) <= LONGEST and not any("\ud800" <= one <= "\udfff" for one in sent)


async def _shown(made: Callable[[], Response], mark: str = "") -> Response:
    """Make a page aside; where there is no job to show, or this opening cannot be, say why."""
    try:
        return await run_in_threadpool(made)
    except JobFaults as error:
        return page("telephone_sentence.html", waits=True, mark="", said=[str(fault) for fault in error.faults])
    except Unbuildable as error:
        return page("telephone_sentence.html", waits=True, mark=mark, said=list(error.sentences))


ROUTES = [
    Route(TELEPHONE, _list),
    Route(f"{TELEPHONE}/opening/{{mark}}", _opening),
    Route(f"{TELEPHONE}/reading", _reading, methods=["POST"]),
]
