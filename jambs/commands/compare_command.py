"""The verb ``compare``: what each position of a window does to heat, damp and sun, side by side."""

from __future__ import annotations

from pathlib import Path

import click

from jambs.commands.job_argument import JOB


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
    from jambs.commands.errors import read, told
    from jambs.face import comparison_text, output_folder, place_of, write_comparison

    found = read(job)
    place = told(lambda: place_of(found, out, output_folder(job), inside="placement"))
    record = told(lambda: write_comparison(found, place, overwrite=overwrite))
    click.echo(comparison_text(record))
    click.echo(f"\nThe pages, all figures and the table are in {place.path}")
