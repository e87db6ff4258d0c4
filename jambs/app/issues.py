"""``jambs issues``: what was issued so far; going back to an earlier issue."""

from __future__ import annotations

import datetime
from pathlib import Path

import click

from jambs.app.job_argument import JOB


@click.command(epilog="\b\nExamples:\n  jambs issues house\n  jambs issues house --withdraw-to 3")
@JOB
@click.option("--out", type=click.Path(file_okay=False, path_type=Path), help="Folder of the papers [output/<job>].")
@click.option("--withdraw-to", type=int, metavar="ISSUE", help="Go back to this issue; later ones are kept.")
@click.option("--overwrite", is_flag=True, help="Overwrite papers that were changed since they were written.")
def issues(job: Path, out: Path | None, withdraw_to: int | None, overwrite: bool) -> None:
    """List what was issued of JOB, and why; or go back to an earlier issue.

    Every `jambs build` that changes a sheet is an issue. Going back makes a new issue that is the same as the earlier
    one, so that nothing issued is lost.
    """
    from jambs.app.build import output_folder
    from jambs.app.errors import told as stopping
    from jambs.app.issuing import issues_text, told
    from jambs.issued.store import FOLDER, Store

    target = out or stopping(lambda: output_folder(job))
    store = Store(folder=target / FOLDER)
    if withdraw_to is not None:
        _withdraw(job, target, store, withdraw_to, overwrite)

    def listed() -> str:
        with told():
            return issues_text(store)

    click.echo(stopping(listed))


def _withdraw(path: Path, target: Path, store: object, number: int, overwrite: bool) -> None:
    from jambs.app.errors import read, told
    from jambs.app.in_the_way import InTheWay
    from jambs.app.issuing import lay_out_earlier, withdraw
    from jambs.app.writing import conflicts, fresh_folder, move_in
    from jambs.interrupts import held_back
    from jambs.issued.store import Issue, Store

    assert isinstance(store, Store)
    found, today = read(path), datetime.date.today().isoformat()

    def withdrawn() -> Issue:
        with fresh_folder(target) as folder:
            lay_out_earlier(store, number, found, folder, day=today)
            changed = conflicts(folder, target)
            if changed and not overwrite:
                raise InTheWay(changed, target)
            with held_back():
                issue = withdraw(store, number, folder, day=today)
                move_in(folder, target, is_whole=True)
        return issue

    issue = told(withdrawn)
    click.echo(f"issue {issue.number} is the same as issue {number}; papers of other issues are void")
