"""``jambs measure``: measure sheets for the site, and the table that brings the measures back."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from jambs.commands.job_argument import JOB

if TYPE_CHECKING:
    from jambs.face import MeasureTable


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
    from jambs.commands.errors import read, told
    from jambs.face import (
        job_file,
        openings_to_measure,
        output_folder,
        readings_in_question,
        write_measure_sheets,
        write_measure_table,
    )

    found = read(job)
    target = out or told(lambda: output_folder(job))
    openings = told(lambda: openings_to_measure(found, target))
    sheets = told(lambda: write_measure_sheets(found, openings, target, overwrite=overwrite))
    click.echo("\n".join(map(str, sheets)))
    beside = job_file(job).parent
    _tell_table(told(lambda: write_measure_table(found, openings, beside, kind="xlsx" if table == "xlsx" else "csv")))
    for question in told(lambda: readings_in_question(found, openings)):
        click.echo(f"asked  {question}")


def _tell_table(table: MeasureTable) -> None:
    if table.is_new:
        click.echo(f"{table.file} is written. Fill it in, then add to the job file:  measures: {table.file.name}")
    else:
        click.echo(f"{table.file} is there already and is left as it is")
    if table.of_another_plan:
        marks = ", ".join(table.of_another_plan)
        click.echo(f"its column planned is of an earlier plan for {marks}: go by the measure sheets")
    if table.lacking:
        marks = ", ".join(table.lacking)
        click.echo(f"it has no rows for {marks}: write them below the others, numbered as on the measure sheets")
