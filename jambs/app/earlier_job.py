"""The job as it was in an earlier issue: what differs in it, written beside today's or over it."""

from __future__ import annotations

import difflib
from collections.abc import Iterator, Mapping
from pathlib import Path

from jambs.app.issuing import job_documents
from jambs.issued.durable import write_durably
from jambs.issued.entry import JOB_FILES, Entry
from jambs.issued.paths import safe_path
from jambs.issued.record import Record
from jambs.job import Job

MOST = 20
"""More lines than this are counted, not told."""
JobFiles = Mapping[str, bytes]
"""The files of a job by their path beside the job file."""


def earlier_job(record: Record, issue: Entry) -> JobFiles:
    """Return the files of the job as they were in an issue; none where they were not kept.

    Raises:
        Unreadable: a kept file is damaged, or its name leads out of the folder of the job.
    """
    names = [name for name in issue.documents if name.startswith(JOB_FILES)]
    return {safe_path(name.removeprefix(JOB_FILES)): record.document(issue, name) for name in names}


def job_differences(files: JobFiles, job: Job) -> list[str]:
    """Say line by line what differs between the files of a job as they were and as they are."""
    now = {name.removeprefix(JOB_FILES): content for name, content in job_documents(job).items()}
    names = dict.fromkeys((*files, *now))
    lines = [line for name in names for line in _differences(name, files.get(name), now.get(name))]
    return lines if len(lines) <= MOST else [*lines[:MOST], f"  and {len(lines) - MOST} more"]


def _differences(name: str, was: bytes | None, now: bytes | None) -> Iterator[str]:
    if was == now:
        return
    if was is None or now is None:
        yield f"  {name}: {'was not part of the job then' if was is None else 'is no longer part of the job'}"
        return
    try:
        old, new = was.decode("utf-8-sig").splitlines(), now.decode("utf-8-sig").splitlines()
    except UnicodeDecodeError:
        yield f"  {name}: another table"
        return
    matcher = difflib.SequenceMatcher(a=old, b=new, autojunk=False)
    for kind, start, end, first, last in matcher.get_opcodes():
        if kind != "equal":
            yield from (f"  {name}, then: {line.strip()}" for line in old[start:end])
            yield from (f"  {name}, line {number + 1} now: {new[number].strip()}" for number in range(first, last))


def write_beside(files: JobFiles, job: Job, folder: str) -> Path:
    """Write the files of a job into a new folder beside it, and return that."""
    beside = job.sources[0].parent
    names = (folder, *(f"{folder} ({number})" for number in range(2, 1000)))
    target = next(beside / name for name in names if not (beside / name).exists())
    for name, content in files.items():
        write_durably(target / name, content)
    return target


def write_over(files: JobFiles, job: Job, folder: str) -> Path:
    """Write the files of a job over today's, which are kept in a new folder beside them; return that."""
    today = {name.removeprefix(JOB_FILES): content for name, content in job_documents(job).items()}
    kept = write_beside(today, job, folder)
    for name, content in files.items():
        write_durably(job.sources[0].parent / name, content)
    return kept
