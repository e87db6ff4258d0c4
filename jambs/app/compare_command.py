"""The verb ``compare``: what each position of a window does to heat, damp and sun, side by side."""

from __future__ import annotations

import sys
from collections.abc import Sequence
from pathlib import Path
from typing import NoReturn

import click

from jambs.app.job_argument import JOB


@click.command(
    epilog="\b\nExamples:\n  jambs compare house\n  jambs compare house --out papers/positions\n\n"
    "\b\nSay where the house stands under site: in the job file; what is missing is assumed, and printed so."
)
@JOB
@click.option(
    "--out", type=click.Path(file_okay=False, path_type=Path), help="Folder for the papers [output/<job>/placement]."
)
@click.option("--overwrite", is_flag=True, help="Overwrite files that were changed since they were written.")
def compare(job: Path, out: Path | None, overwrite: bool) -> None:
    """Compare the positions the windows of JOB could have: depths, heat, damp, sun.

    Writes pages to pin up (PDF), all figures (JSON), and a table of the candidates (CSV).
    """
    from jambs.app.build import output_folder
    from jambs.app.chain import Unbuildable
    from jambs.app.positions import ComparisonInTheWay, comparison_text
    from jambs.app.positions import compare as compare_job
    from jambs.job import JobFaults, read_job

    try:
        target = out or output_folder(job) / "placement"
        record = compare_job(read_job(job), target, overwrite=overwrite)
    except JobFaults as error:
        _stop([str(fault) for fault in error.faults])
    except Unbuildable as error:
        _stop(error.sentences)
    except ComparisonInTheWay as error:
        _stop([*map(str, error.conflicts), f"nothing was written to {target}; move them away, or give --overwrite"])
    except OSError as error:
        _stop([f"{error.filename or 'a file'}: {error.strerror}; close it or choose another folder with --out"])
    click.echo(comparison_text(record))
    click.echo(f"\nThe pages, all figures and the table are in {target}")


def _stop(sentences: Sequence[str]) -> NoReturn:
    """Say why nothing can be compared, and leave with exit code 1."""
    for sentence in sentences:
        click.echo(sentence, err=True)
    sys.exit(1)
