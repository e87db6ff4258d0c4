"""The job that is open: its file, the draft that is not saved yet, and the house that was made of it.

One thread makes the house at a time; everything it hands out is frozen. The file belongs to the user: it is read anew
whenever it changed, as long as there is no draft.
"""

from __future__ import annotations

import threading
from dataclasses import dataclass
from pathlib import Path

from starlette.requests import HTTPConnection

from jambs.app.build import Asked as AskedOfBuild
from jambs.app.build import ask
from jambs.app.chain import Unbuildable
from jambs.job import Job, JobFaults, read_job


@dataclass(frozen=True, slots=True, kw_only=True)
class House:
    """What was made of one state of the job. ``number`` grows with each; ``wrong``: why there is no job or no house.

    ``text``: of the job file, saved or not.
    """

    number: int
    text: str
    job: Job | None = None
    asked: AskedOfBuild | None = None
    wrong: tuple[str, ...] = ()


class Desk:
    """The job file at ``file`` with its papers in ``target``."""

    def __init__(self, *, file: Path, target: Path) -> None:
        self.file, self.target = file, target
        self.lock = threading.RLock()
        self._house: House | None = None
        self._seen: tuple[object, ...] = ()
        self.draft: str | None = None

    @property
    def text(self) -> str:
        """The text of the job: the draft, or what the file holds."""
        return self.file.read_text(encoding="utf-8") if self.draft is None else self.draft

    def house(self) -> House:
        """Return the house as the job stands now; it is made anew only where something changed."""
        with self.lock:
            try:
                text = self.text
            except (OSError, UnicodeDecodeError):
                text = ""
            seen = (text, self._tables())
            if self._house is None or seen != self._seen:
                number = self._house.number + 1 if self._house else 1
                self._house = self._made(text, number)
                self._seen = (text, self._tables())
            return self._house

    def _tables(self) -> tuple[object, ...]:
        """Return when the tables beside the job file were written last."""
        sources = self._house.job.sources if self._house and self._house.job else ()
        return tuple((one, one.stat().st_mtime_ns) for one in sources[1:] if one.exists())

    def _made(self, text: str, number: int) -> House:
        job = None
        try:
            job = read_job(self.file, draft=text or None)
            asked = ask(job, only=(), target=self.target)
        except JobFaults as error:
            return House(number=number, text=text, job=job, wrong=tuple(map(str, error.faults)))
        except Unbuildable as error:
            return House(number=number, text=text, job=job, wrong=error.sentences)
        return House(number=number, text=text, job=job, asked=asked)


def desk_of(connection: HTTPConnection) -> Desk:
    """Return the open job of a request or a web socket."""
    found = connection.app.state.desk
    assert isinstance(found, Desk)
    return found
