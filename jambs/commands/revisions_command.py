"""``jambs revisions``: what was issued so far; going back to an earlier issue."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING

import click

from jambs.commands.job_argument import JOB

if TYPE_CHECKING:
    from jambs.face import IssueRecord, Job


@click.command(epilog="\b\nExamples:\n  jambs revisions house\n  jambs revisions house --withdraw-to 3")
@JOB
@click.option("--out", type=click.Path(file_okay=False, path_type=Path), help="Output folder [output/<job>].")
@click.option("--withdraw-to", type=int, metavar="ISSUE", help="Go back to this issue; later ones are kept.")
@click.option(
    "--job-file",
    type=click.Choice(["leave", "beside", "over"]),
    help="With --withdraw-to: also write the job as it was then, beside the job file or over it.",
)
@click.option("--overwrite", is_flag=True, help="Overwrite sheets that were changed since they were written.")
def revisions(job: Path, out: Path | None, withdraw_to: int | None, job_file: str | None, overwrite: bool) -> None:
    """List what was issued of JOB, and why; or go back to an earlier issue.

    Every `jambs build` that changes a sheet is an issue. Going back makes a new issue that is the same as the earlier
    one, so that nothing issued is lost. The job file stays as it is; what differs in it is told, and it can be written
    as it was then.
    """
    from jambs.commands.errors import read, told
    from jambs.face import issues, output_folder, revisions_text

    if job_file and withdraw_to is None:
        raise click.UsageError("--job-file goes with --withdraw-to; name the issue to go back to")
    target = out or told(lambda: output_folder(job))
    found = read(job)
    if withdraw_to is not None:
        _withdraw(found, target, withdraw_to, overwrite)
    record = told(lambda: issues(found, target))
    if withdraw_to is not None:
        told(lambda: _tell_job(record, found, withdraw_to, job_file))
    click.echo(revisions_text(record))


def _withdraw(job: Job, target: Path, number: int, overwrite: bool) -> None:
    from jambs.commands.errors import told
    from jambs.face import withdraw

    for line in told(lambda: withdraw(job, target, number, overwrite=overwrite)):
        click.echo(line)


def _tell_job(record: IssueRecord, job: Job, number: int, job_file: str | None) -> None:
    """Say what differs in the job since an issue, and write it as it was then where that is asked for."""
    from jambs.face import job_then

    then = job_then(record, job, number)
    if not then.is_kept:
        click.echo(
            f"The job file of issue {number} was not kept; change back by hand what the next build is not to have"
        )
        return
    if not then.differences:
        click.echo(f"The job is as it was in issue {number}.")
        return
    head = f"The job is not as it was in issue {number}; the next build issues that again:"
    click.echo("\n".join([head, *then.differences]))
    if job_file is None and sys.stdin.isatty():
        asked = f"Write the job as it was into the folder {f'issue {number}'!r} beside it?"
        job_file = "beside" if click.confirm(asked, default=False) else "leave"
    if job_file == "beside":
        click.echo(f"{then.beside()} holds the job as it was in issue {number}")
    elif job_file == "over":
        click.echo(f"The job is again as in issue {number}; what it was until now is in {then.over()}")
    elif job_file is None:
        click.echo(f"To write it as it was: jambs revisions JOB --withdraw-to {number} --job-file beside (or over)")
