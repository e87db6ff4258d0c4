"""Where papers go, and a verb's turn to write them there: faults of the record become sentences on the terminal."""

from __future__ import annotations

import datetime
import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from jambs.app.chain import Unbuildable
from jambs.app.in_the_way import InTheWay
from jambs.findings import Finding
from jambs.interrupts import held_back
from jambs.issued.entry import JobIdentity
from jambs.issued.errors import RecordError, Unreadable
from jambs.issued.paths import FOLDER, WITNESS
from jambs.issued.record import Record
from jambs.issued.writing import Commit, Writing, begin, refuse_other_job
from jambs.job import Job
from jambs.length import Units


@dataclass(frozen=True, slots=True, kw_only=True)
class PaperFolder:
    """Where a verb writes: ``root`` has the record, ``inside`` is the verb's own folder within it, empty: none."""

    root: Path
    inside: str = ""

    @property
    def path(self) -> Path:
        """The folder that the papers are in."""
        return self.root / self.inside


def place_of(job: Job, out: Path | None, usual: Path, *, inside: str) -> PaperFolder:
    """Return where a verb writes: a folder of its own among the usual papers of the job, or where it was asked to."""
    return paper_folder(job, out) if out else PaperFolder(root=usual, inside=inside)


def paper_folder(job: Job, target: Path) -> PaperFolder:
    """Return where the papers of a folder that was asked for belong.

    A folder within the papers of the same job shares their record, unless it has one of its own.
    """
    above = target.absolute().parent
    if not (target / FOLDER).is_dir() and ((above / FOLDER).is_dir() or (above / WITNESS).is_file()):
        with suppress_record_faults():
            record = Record.open(above)
            refuse_other_job(record, identity(job, above))
            if record.latest:
                return PaperFolder(root=target.parent, inside=target.absolute().name)
    return PaperFolder(root=target)


def check_place(place: PaperFolder, job: Job) -> None:
    """See before a long work that its papers may go where they are to go.

    Raises:
        Unbuildable: the folder belongs to another job, or its record is of a later version.
    """
    with record_faults():
        refuse_other_job(Record.open(place.root), identity(job, place.root))


@contextmanager
def suppress_record_faults() -> Iterator[None]:
    """Go on where a record cannot be read or is another job's."""
    try:
        yield
    except RecordError:
        return


def identity(job: Job, folder: Path) -> JobIdentity:
    """Return what tells a job from others, as seen from a folder of papers."""
    if not job.sources:
        return JobIdentity(name=job.name, file="")
    file = job.sources[0].resolve()
    try:
        return JobIdentity(name=job.name, file=Path(os.path.relpath(file, folder.resolve())).as_posix())
    except ValueError:  # on another drive
        return JobIdentity(name=job.name, file=file.as_posix())


@contextmanager
def writing_turn(place: PaperFolder, job: Job, *, verb: str) -> Iterator[Writing]:
    """Take a verb's turn to write; what was put right in the record is said on the terminal.

    Raises:
        Unbuildable: the folder belongs to another job, or something of it cannot be read or written.
    """
    turn = begin(place.root, identity(job, place.root), verb=verb, inside=place.inside, tell=_told)
    with record_faults(), turn as writing:
        yield writing


def _told(one: Finding) -> None:
    said(one.sentence(Units.INCH))  # none of them holds a length


def said(sentence: str) -> None:
    """Say something beside the work."""
    print(sentence, file=sys.stderr, flush=True)


@contextmanager
def record_faults() -> Iterator[None]:
    """Tell a fault of the record as what keeps a job from being built."""
    try:
        yield
    except (RecordError, Unreadable) as error:
        raise Unbuildable(*error.sentences(Units.INCH)) from None


def hand_in(writing: Writing, work: Commit, *, overwrite: bool) -> None:
    """Commit a verb's papers unless files of the user's are in the way.

    Raises:
        InTheWay: they are; nothing was written.
    """
    found = [] if overwrite else writing.conflicts(work.staged)
    if found:
        raise InTheWay(found, writing.papers_folder)
    with held_back():
        writing.commit(work)


def today() -> str:
    """Return the day that a paper is recorded under."""
    return datetime.date.today().isoformat()
