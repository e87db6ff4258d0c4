"""The command line. Everything heavy is imported inside the commands, so that ``--help`` answers at once."""

from __future__ import annotations

import sys
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import click

from jambs import __version__
from jambs.commands.buy_command import buy
from jambs.commands.compare_command import compare
from jambs.commands.door import Door
from jambs.commands.errors import read, stop, told
from jambs.commands.job_argument import JOB
from jambs.commands.keys_command import keys
from jambs.commands.labels_command import labels
from jambs.commands.measure_command import measure
from jambs.commands.new_command import new
from jambs.commands.revisions_command import revisions

if TYPE_CHECKING:
    from jambs.face import Asked, Conflict

EXAMPLES = """\b
Examples:
  jambs new house                    start a job: writes house/job.yaml
  jambs new house --ask              ten questions on the terminal make the job
  jambs check house                  read it, place the windows, print the summary
  jambs build house                  all drawings, cut sheets and lists in output/house
  jambs build house --only W03       the drawings and the cut sheet of one opening
  jambs measure house                measure sheets, and the table to bring the measures back
  jambs labels house --by cutting    a label for every part
  jambs revisions house              what was issued so far, and why
  jambs buy house                    what to buy and how to cut it, in output/house/cutting
  jambs keys windows                 what the keys of a job file mean; keys depths shows a picture
  jambs catalog plywood              materials and boards that a job may name

\b
Exit codes: 0 done, 1 the job cannot be built, 2 wrong use, 130 stopped by Ctrl-C.
"""


@click.group(
    "jambs",
    cls=Door,
    epilog=EXAMPLES,
    context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 100},
)
@click.version_option(__version__, prog_name="jambs")
def main() -> None:
    """Extension jambs and trim for windows in thick walls: from a job file to drawings and cut sheets.

    JOB is a job file, or a folder that holds one named job.yaml; left out, it is the folder you are in.
    """


main.add_command(buy)
main.add_command(compare)
main.add_command(keys)
main.add_command(new)


@main.command(epilog="\b\nExamples:\n  jambs check examples/harbour-house\n  jambs check house --out papers")
@JOB
@click.option("--out", type=click.Path(file_okay=False, path_type=Path), help="Folder of the papers [output/<job>].")
def check(job: Path, out: Path | None) -> None:
    """Read JOB and print every fault, or the summary.

    The windows are placed and the parts are made, so that all faults are found; papers that were written earlier and
    hold no longer are named. Nothing is written.
    """
    from jambs.face import output_folder, summary

    target = out or told(lambda: output_folder(job))
    asked = _ask(job, only=(), target=target)
    click.echo(summary(asked))
    _tell_tables(asked)
    _tell_outside(asked)
    _tell_remarked(asked)
    _tell_stale(asked, job)


@main.command(
    epilog="\b\nExamples:\n  jambs build house\n  jambs build house --only W03 --only W05\n"
    "  jambs build house --out papers"
)
@JOB
@click.option("--out", type=click.Path(file_okay=False, path_type=Path), help="Output folder [output/<job>].")
@click.option("--only", multiple=True, metavar="MARK", help="Only this opening; may be given more than once.")
@click.option("--overwrite", is_flag=True, help="Overwrite files that were changed since they were written.")
@click.option("--without-solids", is_flag=True, help="Leave out the parts in three dimensions and the fit report.")
@click.option("--all-cut-files", is_flag=True, help="A cut file for every part of wood, plain boards too.")
def build(
    job: Path, out: Path | None, only: tuple[str, ...], overwrite: bool, without_solids: bool, all_cut_files: bool
) -> None:
    """Write the drawings (DXF), cut sheets (PDF), cut files (DXF) and lists of JOB.

    With --only, the lists of the whole house stay as they are.
    """
    from jambs.face import output_folder, summary

    target = out or told(lambda: output_folder(job))
    asked = _ask(job, only=only, target=target, with_solids=not without_solids, all_cut_files=all_cut_files)
    written = _write(asked, overwrite)
    click.echo(summary(asked))
    _tell_tables(asked)
    _tell_outside(asked)
    if asked.with_solids:
        _tell_solids()
    click.echo(f"\n{len(written)} files are in {asked.target}")
    if only:
        click.echo("Lists and sheets of the whole house were left as they were; build without --only to renew them.")
    told(lambda: _tell_issue(asked))
    _tell_stale(asked, job)


@main.command(epilog="\b\nExample:\n  jambs schema job.schema.json")
@click.argument("file", required=False, type=click.Path(dir_okay=False, path_type=Path))
def schema(file: Path | None) -> None:
    """Print the JSON Schema of job files, or write it to FILE.

    Editors complete and check a job by it.
    """
    import json

    from jambs.face import schema as job_schema
    from jambs.face import write_whole

    text = json.dumps(job_schema(), indent=2, ensure_ascii=False) + "\n"
    if file is None:
        click.echo(text, nl=False)
    else:
        told(lambda: write_whole(file, text.encode()))
        click.echo(f"{file} is written. First line of a job file: # yaml-language-server: $schema={file.name}")


@main.command(epilog="\b\nExamples:\n  jambs catalog\n  jambs catalog stud\n  jambs catalog plywood --units mm")
@click.argument("word", required=False, default="")
@click.option("--units", type=click.Choice(["inch", "mm"]), default="inch", show_default=True, help="Units to print.")
@click.option("--sources", is_flag=True, help="Also print where the values are from.")
def catalog(word: str, units: str, sources: bool) -> None:
    """List the layers and boards that a job may name.

    With WORD, those that have it in their name.
    """
    from jambs.face import Units, catalog_text

    text = catalog_text(word, units=Units(units), with_sources=sources)
    if not text:
        stop([f"nothing in the catalog has {word!r} in its name; `jambs catalog` lists everything"])
    click.echo(text)


main.add_command(measure)
main.add_command(labels)
main.add_command(revisions)


def _ask(
    path: Path, *, only: Sequence[str], target: Path, with_solids: bool = True, all_cut_files: bool = False
) -> Asked:
    from jambs.face import UnknownMark
    from jambs.face import check as check_job

    job = read(path)
    try:
        return told(lambda: check_job(job, target, only=only, with_solids=with_solids, all_cut_files=all_cut_files))
    except UnknownMark as error:
        raise click.BadParameter(str(error), param_hint="'--only'") from None


def _tell_tables(asked: Asked) -> None:
    """Say how many rows were read of each table: one that is not whole looks like a smaller house."""
    if asked.job.tables:
        click.echo("\n" + "\n".join(table.words for table in asked.job.tables))


def _tell_issue(asked: Asked) -> None:
    """Say what was issued; until that is done it is said again by every build."""
    from jambs.face import tell_issue

    click.echo(tell_issue(asked.job, asked.target))


def _tell_remarked(asked: Asked) -> None:
    """Say before anything is built which openings have another mark, and whose boards carry which labels."""
    from jambs.face import remarked

    for line in remarked(asked):
        click.echo(line)


def _tell_stale(asked: Asked, path: Path) -> None:
    """Say in one line for each verb which of its papers hold no longer, and what to run."""
    from jambs.face import stale

    for line in stale(asked, job_words=str(path)):
        click.echo(line)


def _tell_solids() -> None:
    """Say in one line what was left out where solids cannot be made, and how to get it."""
    from jambs.face import Units, left_out

    reason = left_out()
    if reason:
        click.echo(f"\n{reason.sentence(Units.INCH)}")


def _tell_outside(asked: Asked) -> None:
    """Print a line for each elevation with courses, where the whole house is asked for."""
    from jambs.face import outside_summary

    text = outside_summary(asked)
    if text and not asked.only:
        click.echo(f"\n{text}")


def _write(asked: Asked, overwrite: bool) -> Sequence[Path]:
    from jambs.face import steps, write_papers

    with click.progressbar(
        length=steps(asked), label="Drawing and printing", file=sys.stderr, item_show_func=str
    ) as bar:
        return told(
            lambda: write_papers(
                asked,
                may_overwrite=lambda files: overwrite or _may_overwrite(files, asked.target),
                progress=lambda done: bar.update(1, done),
            )
        )


def _may_overwrite(files: Sequence[Conflict], target: Path) -> bool:
    """Ask on a terminal whether files of the user's may be overwritten; elsewhere they may not."""
    from jambs.face import Units

    if not _on_terminal():
        return False
    click.echo(f"\nIn {target}:\n" + "\n".join(f"  {one.sentence(Units.INCH)}" for one in files), err=True)
    return click.confirm("Overwrite them?", default=False, err=True)


def _on_terminal() -> bool:
    return sys.stdin.isatty()
