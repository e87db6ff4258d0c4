"""``jambs revisions``: what was issued so far; going back to an earlier issue."""

from __future__ import annotations

import datetime
import sys
from pathlib import Path
from typing import TYPE_CHECKING

import click

from jambs.app.job_argument import JOB

if TYPE_CHECKING:
    from jambs.issued.record import Record
    from jambs.job import Job

VERB = "revisions"


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
    from jambs.app.errors import read, told
    from jambs.app.issue_text import revisions_text
    from jambs.app.output_folder import output_folder

    if job_file and withdraw_to is None:
        raise click.UsageError("--job-file goes with --withdraw-to; name the issue to go back to")
    target = out or told(lambda: output_folder(job))
    found = read(job)
    if withdraw_to is not None:
        told(lambda: _withdraw(found, target, withdraw_to, overwrite))
    record = told(lambda: _put_right(found, target))
    if withdraw_to is not None:
        told(lambda: _tell_job(record, found, withdraw_to, job_file))
    click.echo(revisions_text(record))


def _put_right(job: Job, target: Path) -> Record:
    """Return the record of a folder, put right where that can be done; nothing is made where there is none."""
    from jambs.app.writing import PaperFolder, writing_turn
    from jambs.issued.record import Record

    if not target.is_dir():
        return Record.open(target)
    with writing_turn(PaperFolder(root=target), job, verb=VERB) as writing:
        return writing.record


def _withdraw(job: Job, target: Path, number: int, overwrite: bool) -> None:
    from jambs.app.issue_text import changed_lines
    from jambs.app.issuing import withdrawal
    from jambs.app.writing import PaperFolder, hand_in, writing_turn
    from jambs.issued.entry import BUILD

    today = datetime.date.today().isoformat()
    with writing_turn(PaperFolder(root=target), job, verb=BUILD) as writing, writing.fresh_folder() as folder:
        work = withdrawal(writing, writing.record.issue(number), job, folder, day=today)
        hand_in(writing, work, overwrite=overwrite)
        issue = writing.record.latest_issue
        assert issue
        click.echo(f"issue {issue.issue} is the same as issue {number}; papers of other issues are void")
        for line in changed_lines(writing.record, job):
            click.echo(line)
        writing.mark_told()


def _tell_job(record: Record, job: Job, number: int, job_file: str | None) -> None:
    """Say what differs in the job since an issue, and write it as it was then where that is asked for."""
    from jambs.app.earlier_job import earlier_job, job_differences, write_beside, write_over

    files = earlier_job(record, record.issue(number))
    if not files:
        click.echo(
            f"The job file of issue {number} was not kept; change back by hand what the next build is not to have"
        )
        return
    differences = job_differences(files, job)
    if not differences:
        click.echo(f"The job is as it was in issue {number}.")
        return
    click.echo(
        "\n".join([f"The job is not as it was in issue {number}; the next build issues that again:", *differences])
    )
    folder = f"issue {number}"
    if job_file is None and sys.stdin.isatty():
        is_wanted = click.confirm(f"Write the job as it was into the folder {folder!r} beside it?", default=False)
        job_file = "beside" if is_wanted else "leave"
    if job_file == "beside":
        click.echo(f"{write_beside(files, job, folder)} holds the job as it was in issue {number}")
    elif job_file == "over":
        kept = write_over(files, job, f"before issue {number} came back")
        click.echo(f"The job is again as in issue {number}; what it was until now is in {kept}")
    elif job_file is None:
        click.echo(f"To write it as it was: jambs revisions JOB --withdraw-to {number} --job-file beside (or over)")
