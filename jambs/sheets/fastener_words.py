"""How the fasteners of an opening's trim are said: their way in, and what of them is assumed."""

from __future__ import annotations

from collections.abc import Sequence

from jambs.job.models.openings import Assumed, Job
from jambs.length import length_text
from jambs.outside.trim_fasteners import InstallFastener


def way_words(line: InstallFastener, job: Job) -> str:
    """Say the way of a fastener: ``jamb (3/4") + shims (1 7/8") + 1 1/4" into the framing``."""
    steps = [f"{one.name} ({length_text(one.thickness, units=job.units)})" for one in line.through]
    into = f"{length_text(line.penetration, units=job.units)} into the framing"
    return " + ".join([*steps, into])


def assumed_fasteners(lines: Sequence[InstallFastener], job: Job) -> tuple[Assumed, ...]:
    """List penetrations that nobody stated."""
    grid = job.shop.grid
    return tuple(
        Assumed(
            what=f"{line.what} fasteners",
            value=f"{line.fastener}, at least {grid.text(grid.up(line.penetration))} into the framing",
            why="common practice, the job does not say",
        )
        for line in lines
        if line.is_assumed
    )
