"""``jambs measure``: measure sheets for the site, and the table that brings the measures back."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import click

from jambs.app.job_argument import JOB

if TYPE_CHECKING:
    from jambs.job import Job
    from jambs.place.placement import Placement

TABLE = "measures"


@click.command(
    epilog="\b\nExamples:\n  jambs measure house\n  jambs measure house --table xlsx\n\n\b\n"
    "Then name the table in the job file, beside its openings:\n  measures: measures.csv"
)
@JOB
@click.option("--out", type=click.Path(file_okay=False, path_type=Path), help="Output folder [output/<job>].")
@click.option(
    "--table", type=click.Choice(["csv", "xlsx"]), default="csv", show_default=True, help="Kind of the empty table."
)
@click.option("--overwrite", is_flag=True, help="Overwrite sheets that were changed since they were written.")
def measure(job: Path, out: Path | None, table: str, overwrite: bool) -> None:
    """Print measure sheets of JOB, and write the table to fill in.

    The table stands beside the job file, its marks and places filled in; one that is there already is left as it is.
    Readings that look like misreadings are queried.
    """
    from jambs.app.basis import placed_basis
    from jambs.app.chain import placed
    from jambs.app.errors import read, told, write_site_papers
    from jambs.app.first_reads import first_reads
    from jambs.app.house_issue import stamp_of
    from jambs.app.output_folder import output_folder

    found = read(job)
    target = out or told(lambda: output_folder(job))
    openings = told(lambda: first_reads(found, target).held(placed(found)))
    basis = placed_basis(openings, found)
    stamp = told(lambda: stamp_of(target, "measure", basis))
    sheets = told(lambda: _sheets(found, openings, stamp))
    write_site_papers(sheets, target, found, basis, verb="measure", overwrite=overwrite)
    told(lambda: _write_table(found, openings, job, table))
    for sentence in told(lambda: _questions(found, openings)):
        click.echo(sentence)


def _sheets(job: Job, placements: Sequence[Placement], stamp: str) -> dict[str, bytes]:
    from jambs.sheets.measure_sheet import measure_list_pdf, measure_sheets_pdf

    return {
        "measure sheets.pdf": measure_sheets_pdf(placements, job, stamp=stamp),
        "depths to measure.pdf": measure_list_pdf(placements, job, stamp=stamp),
    }


def _write_table(job: Job, placements: Sequence[Placement], path: Path, kind: str) -> None:
    """Write the empty table beside the job file unless there is one."""
    from jambs.app.whole_file import write_new
    from jambs.job.measured.measures import measures_csv, measures_rows, measures_xlsx
    from jambs.job.reading.read import job_file
    from jambs.sheets.measure_sheet import planned_texts

    folder = job_file(path).parent
    there = [file for file in (folder / f"{TABLE}.csv", folder / f"{TABLE}.xlsx") if file.exists()]
    if there:
        click.echo(f"{there[0]} is there already and is left as it is")
        return
    planned = {one.opening.mark: planned_texts(one, units=job.units) for one in placements}
    unread = [one.opening for one in placements if one.opening.measured is None]
    rows = measures_rows(unread, planned, units=job.units)
    file = folder / f"{TABLE}.{kind}"
    if not write_new(file, measures_csv(rows) if kind == "csv" else measures_xlsx(rows)):
        click.echo(f"{file} is there by now and is left as it is")
        return
    click.echo(f"{file} is written. Fill it in, then add to the job file:  measures: {file.name}")


def _questions(job: Job, placements: Sequence[Placement]) -> list[str]:
    from jambs.parts.as_built import questions

    return [
        f"asked  {one.opening.mark}: {question.words(units=job.units)}"
        for one in placements
        for question in questions(one, units=job.units)
    ]
