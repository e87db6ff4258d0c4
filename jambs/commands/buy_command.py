"""The verb ``buy``: what to buy and how to cut it, with a bound that anyone can check."""

from __future__ import annotations

import math
import sys
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from jambs.commands.job_argument import JOB

if TYPE_CHECKING:
    from jambs.face import Effort, Job, Lot, LotProgress, PaperFolder, Progress, Record, Spoiled


class Seconds(click.FloatRange):
    """A time to search from a tenth of a second to a day; ``nan``, which no range keeps out, is none."""

    def __init__(self) -> None:
        super().__init__(0.1, 86_400)

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> float:
        """Read a number of seconds."""
        seconds = float(super().convert(value, param, ctx))
        if math.isnan(seconds):
            self.fail(f"{value!r} is not a time; write seconds, like 60", param, ctx)
        return seconds


@click.command(
    epilog="\b\nExamples:\n  jambs buy house\n  jambs buy house --seconds 60\n"
    "  jambs buy house --spoiled A7 --cut A1-A6 --saved W03-2\n\n"
    "\b\nCtrl-C stops the search and writes the best plan so far; the exit code is 130."
)
@JOB
@click.option("--out", type=click.Path(file_okay=False, path_type=Path), help="Output folder [output/<job>/cutting].")
@click.option("--seconds", type=Seconds(), default=10, show_default=True, help="Time to search.")
@click.option(
    "--stages", type=click.IntRange(0, 1000), help="Search so many stages instead: the same plan on every machine."
)
@click.option("--seed", type=click.IntRange(0), default=0, show_default=True, help="Another seed, another search.")
@click.option("--spoiled", multiple=True, metavar="BOARD", help="Re-plan the rest: this board of the plan is spoiled.")
@click.option("--cut", multiple=True, metavar="BOARD", help="With --spoiled: boards that are cut already, like A1-A6.")
@click.option("--saved", multiple=True, metavar="MARK", help="With --spoiled: a piece saved from it.")
@click.option("--overwrite", is_flag=True, help="Overwrite files that were changed since they were written.")
def buy(
    job: Path,
    out: Path | None,
    seconds: float,
    stages: int | None,
    seed: int,
    spoiled: tuple[str, ...],
    cut: tuple[str, ...],
    saved: tuple[str, ...],
    overwrite: bool,
) -> None:
    """Plan what to buy for JOB and how to cut it.

    Writes the buying list and the cutting plan (PDF), lists (CSV), and the plan with its certificate (JSON).
    Prices, lengths and boards on hand are under shop: in the job file; what is missing is assumed and says so.
    """
    from jambs.commands.errors import read, told
    from jambs.commands.stopped import INTERRUPTED
    from jambs.face import Effort, output_folder, place_of, plan_text, spoiled_of, stale_after_buying

    if (cut or saved) and not spoiled:
        raise click.UsageError("--cut and --saved go with --spoiled; name the spoiled board")
    waste = told(lambda: spoiled_of(spoiled, cut, saved))
    effort = Effort(seconds=seconds, stages=stages, seed=seed)
    found = read(job)
    place = told(lambda: place_of(found, out, output_folder(job), inside="cutting"))
    record = told(lambda: _planned(found, place, effort, waste, overwrite))
    click.echo(plan_text(record))
    click.echo(f"\nThe buying list, the cutting plan and their lists are in {place.path}")
    for line in told(lambda: stale_after_buying(found, place.root, job_words=str(job))):
        click.echo(line)
    if record["is_interrupted"]:
        sys.exit(INTERRUPTED)


def _planned(job: Job, place: PaperFolder, effort: Effort, waste: Spoiled, overwrite: bool) -> Record:
    from jambs.face import buy as buy_job

    progress = _progress()
    try:
        return buy_job(job, place, effort=effort, spoiled=waste, overwrite=overwrite, progress=progress)
    finally:
        if progress:
            click.echo("\r\x1b[K", nl=False, err=True)


def _progress() -> LotProgress | None:
    """Tell cost and gap on one line of a terminal; elsewhere nothing."""
    if not sys.stderr.isatty():
        return None

    def tell(lot: Lot, state: Progress) -> None:
        click.echo(f"\r\x1b[K{progress_text(lot, state)}", nl=False, err=True)

    return tell


def progress_text(lot: Lot, state: Progress) -> str:
    """Return how far a lot is: ``B  cedar 1", ripped from boards: 940.80, at most 1.2 % left, 3 s``."""
    found = "no plan yet"
    if state.cost_cents is not None and state.gap is not None:
        found = f"{state.cost_cents / 100:.2f}, at most {100 * state.gap:.1f} % left"
    return f"{lot.letter}  {lot.title}: {found}, {state.seconds:.0f} s"[:100]
