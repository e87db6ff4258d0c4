"""What of the fasteners of an opening's trim is assumed, as it is said."""

from __future__ import annotations

from collections.abc import Sequence

from jambs.job.models.openings import Assumed
from jambs.length import Grid
from jambs.outside.fastener_line import InstallFastener


def assumed_fasteners(lines: Sequence[InstallFastener], grid: Grid) -> tuple[Assumed, ...]:
    """List penetrations that nobody stated."""
    return tuple(
        Assumed(
            what=f"{line.what} fasteners",
            value=f"{line.fastener}, at least {grid.text(grid.up(line.penetration))} into {line.target}",
            why="common practice, the job does not say",
        )
        for line in lines
        if line.is_assumed
    )
