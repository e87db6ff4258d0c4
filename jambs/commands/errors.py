"""What is wrong is told in whole sentences, one a line, and the command ends with exit code 1."""

from __future__ import annotations

import errno
import sys
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, NoReturn, TypeVar

import click

if TYPE_CHECKING:
    from jambs.face import Job

FULL = (errno.ENOSPC, errno.EDQUOT)
"""The disk has no room, or the user may take no more of it."""
Found = TypeVar("Found")


def read(path: Path) -> Job:
    """Read a job, and tell what its papers cannot print; tell its faults, if it has any, and stop."""
    from jambs.face import read_job, unprintable

    job = told(lambda: read_job(path))
    for finding in unprintable(job):
        click.echo(f"{finding.severity}  {finding.sentence(job.units)}", err=True)
    return job


def told(work: Callable[[], Found]) -> Found:
    """Do some work; tell what is wrong with the job or its folders, if anything is, and stop."""
    from jambs.face import InTheWay, JobFaults, Unbuildable

    try:
        return work()
    except JobFaults as error:
        stop([str(fault) for fault in error.faults])
    except (Unbuildable, InTheWay) as error:
        stop(error.sentences)
    except OSError as error:
        stop([os_sentence(error)])


def os_sentence(error: OSError) -> str:
    """Say which file the system could not read or write, why, and what to do."""
    file, why = error.filename or "a file", error.strerror or type(error).__name__
    if error.errno in FULL:
        return f"{file}: {why}; make room on the disk, or choose another folder with --out, and run this again"
    return f"{file}: {why}; close it or choose another folder with --out"


def stop(sentences: Sequence[str]) -> NoReturn:
    """Say why, and leave with exit code 1."""
    for sentence in sentences:
        click.echo(sentence, err=True)
    sys.exit(1)
