"""What was issued so far, and the way back to an earlier issue."""

from __future__ import annotations

import datetime
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from jambs.app.earlier_job import JobFiles, earlier_job, job_differences, write_beside, write_over
from jambs.app.issue_text import changed_lines, issued_text
from jambs.app.issuing import run_then, stale_then, withdrawal
from jambs.app.stale_words import papers_words, things_words
from jambs.app.writing import PaperFolder, hand_in, writing_turn
from jambs.issued.entry import BUILD
from jambs.issued.record import Record
from jambs.job import Job

VERB = "revisions"


def issues(job: Job, folder: str | Path) -> Record:
    """Return the record of a folder of papers, put right where that can be done; nothing is made where there is none.

    ``record.issues`` has every issue by its number: day, openings that changed, and why.

    Raises:
        Unbuildable: the folder belongs to another job, or its record cannot be read.
    """
    root = Path(folder)
    if not root.is_dir():
        return Record.open(root)
    with writing_turn(PaperFolder(root=root), job, verb=VERB) as writing:
        return writing.record


def withdraw(job: Job, folder: str | Path, number: int, *, overwrite: bool = False) -> tuple[str, ...]:
    """Make an issue that is the same as an earlier one, so that nothing issued is lost; return it in sentences.

    Raises:
        Unbuildable: there is no such issue, or the folder cannot be written.
        InTheWay: files of the user's would be overwritten.
    """
    today = datetime.date.today().isoformat()
    place = PaperFolder(root=Path(folder))
    with writing_turn(place, job, verb=BUILD) as writing, writing.fresh_folder() as staged:
        earlier = writing.record.issue(number)
        stale = [
            f"stale  {papers_words(one)}: {things_words(one)}; run {run_then(one, earlier)}"
            for one in stale_then(writing.record, earlier)
        ]
        work = withdrawal(writing, earlier, job, staged, day=today)
        hand_in(writing, work, overwrite=overwrite)
        issue = writing.record.latest_issue
        assert issue
        said = f"issue {issue.issue} is the same as issue {number}; papers of other issues are void"
        lines = changed_lines(writing.record, job)
        writing.mark_told()
    return (said, *lines, *stale)


def tell_issue(job: Job, folder: str | Path) -> str:
    """Say what was issued and nobody has told yet; from then on it counts as told.

    Raises:
        Unbuildable: the record of the folder cannot be read or written.
    """
    with writing_turn(PaperFolder(root=Path(folder)), job, verb=BUILD) as writing:
        said = issued_text(writing.record, job)
        writing.mark_told()
    return said


@dataclass(frozen=True, slots=True, kw_only=True)
class JobThen:
    """The job as it was in an issue; ``is_kept``: its files are on record. ``differences``: from now, in lines."""

    record: Record
    job: Job
    number: int
    is_kept: bool
    differences: Sequence[str]

    def beside(self) -> Path:
        """Write the job as it was into a folder beside the job file; return the file."""
        return write_beside(self._files(), self.job, f"issue {self.number}")

    def over(self) -> Path:
        """Write the job as it was over the job file; return where what it was until now is kept."""
        return write_over(self._files(), self.job, f"before issue {self.number} came back")

    def _files(self) -> JobFiles:
        return earlier_job(self.record, self.record.issue(self.number))


def job_then(record: Record, job: Job, number: int) -> JobThen:
    """Return the job as it was in an issue."""
    files = earlier_job(record, record.issue(number))
    differences = job_differences(files, job) if files else ()
    return JobThen(record=record, job=job, number=number, is_kept=bool(files), differences=differences)
