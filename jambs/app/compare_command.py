"""The verb ``compare``: what each position of a window does to heat, damp and sun, side by side."""

from __future__ import annotations

from pathlib import Path

import click

from jambs.app.job_argument import JOB


@click.command(
    epilog="\b\nExamples:\n  jambs compare house\n  jambs compare house --out papers/positions\n\n"
    "\b\nSite data are under site: in the job file; what is missing is assumed and says so."
)
@JOB
@click.option("--out", type=click.Path(file_okay=False, path_type=Path), help="Output folder [output/<job>/placement].")
@click.option("--overwrite", is_flag=True, help="Overwrite files that were changed since they were written.")
def compare(job: Path, out: Path | None, overwrite: bool) -> None:
    """Compare the positions the windows of JOB could have: depths, heat, damp, sun.

    Writes pages to pin up (PDF), all figures (JSON), and a table of the candidates (CSV).
    """
    from jambs.app.errors import read, told
    from jambs.app.output_folder import output_folder
    from jambs.app.positions import compare as compare_job
    from jambs.app.positions import comparison_text
    from jambs.app.writing import place_of

    found = read(job)
    place = told(lambda: place_of(found, out, output_folder(job), inside="placement"))
    record = told(lambda: compare_job(found, place, overwrite=overwrite))
    click.echo(comparison_text(record))
    click.echo(f"\nThe pages, all figures and the table are in {place.path}")
