"""The verb ``open``: the whole job on one page in the browser. Nothing heavy is loaded until it runs."""

from __future__ import annotations

from pathlib import Path

import click

from jambs.commands.job_argument import JOB


@click.command(
    "open",
    epilog="\b\nExamples:\n  jambs open house\n  jambs open examples/harbour-house\n  jambs open house --telephone\n\n"
    "The page is for this computer alone, unless --telephone lets telephones of the same network in to measure.",
)
@JOB
@click.option("--out", type=click.Path(file_okay=False, path_type=Path), help="Folder of the papers [output/<job>].")
@click.option("--telephone", is_flag=True, help="Let telephones in the same network read and enter measures.")
@click.option("--port", type=click.IntRange(0, 65535), default=0, help="Port to listen on [any that is free].")
@click.option("--no-browser", is_flag=True, help="Print the link only; do not open the browser.")
def open_page(job: Path, out: Path | None, telephone: bool, port: int, no_browser: bool) -> None:
    """Show JOB in the browser: place the windows by hand, see every figure, print the papers.

    Ctrl-C stops it, or the page does.
    """
    from jambs.app.output_folder import output_folder
    from jambs.commands.errors import told
    from jambs.job.reading.read import job_file
    from jambs.page.server import Asked, serve

    file = told(lambda: job_file(job))
    target = out or told(lambda: output_folder(file))
    told(lambda: serve(Asked(file=file, target=target, telephone=telephone, port=port, browser=not no_browser)))
