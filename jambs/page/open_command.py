"""The verb ``open``: the whole job on one page in the browser. Nothing heavy is loaded until it runs."""

from __future__ import annotations

from pathlib import Path

import click

from jambs.commands.job_argument import JOB_NAMES


@click.command(
    "open",
    epilog="\b\nExamples:\n  jambs open house\n  jambs open examples/harbour-house\n  jambs open my-house --units mm\n"
    "  jambs open house --telephone\n\n"
    "The page is for this computer alone, unless --telephone lets telephones of the same network in to measure.",
)
@click.argument("job", required=False, default=Path(), type=click.Path(path_type=Path))
@click.option("--units", type=click.Choice(["inch", "mm"]), default="inch", help="Units of a new job [inch].")
@click.option("--out", type=click.Path(file_okay=False, path_type=Path), help="Folder of the papers [output/<job>].")
@click.option("--telephone", is_flag=True, help="Let telephones in the same network read and enter measures.")
@click.option("--port", type=click.IntRange(0, 65535), default=0, help="Port to listen on [the job's own, else any].")
@click.option("--no-browser", is_flag=True, help="Print the link only; do not open the browser.")
def open_page(job: Path, units: str, out: Path | None, telephone: bool, port: int, no_browser: bool) -> None:
    """Show JOB in the browser: place the windows by hand, see every figure, print the papers.

    A folder that holds no job yet begins with a small house, to be changed; it is written when you save. Ctrl-C stops
    the page, or its own button does.
    """
    from jambs.commands.errors import told
    from jambs.face import Units, job_file, new_job_text, output_folder
    from jambs.page.server import PageAsked, serve

    begin = None if _holds_job(job) else new_job_text(Units(units))
    file = told(lambda: job_file(job)) if begin is None else job / "job.yaml"
    target = out or told(lambda: output_folder(file))
    asked = PageAsked(file=file, target=target, telephone=telephone, port=port, browser=not no_browser, begin=begin)
    told(lambda: serve(asked))


def _holds_job(job: Path) -> bool:
    """Say whether a path is a job file, or a folder that holds one; else a new job begins there."""
    if job.suffix in (".yaml", ".yml") or job.is_file():
        return True
    return any(file for pattern in JOB_NAMES for file in job.glob(pattern))
