"""The space between a frame and its rough opening on each side."""

from __future__ import annotations

from jambs.job.models.openings import Opening
from jambs.length import Grid
from jambs.place.placement import Sides


def shims(opening: Opening, grid: Grid | None = None) -> Sides:
    """Frame → rough opening on each side, the frame in the middle [in]; a door's frame stands on the sill.

    With a grid of the framing the rough sill lies on it, as near to that middle as it can.
    """
    side = (opening.rough_opening.width - opening.frame.width) / 2
    if opening.shape:
        return Sides(left=side, right=side, head=side, sill=side)
    spare = opening.rough_opening.height - opening.frame.height
    if opening.floor_below_frame is not None:
        return Sides(left=side, right=side, head=spare, sill=0.0)
    sill = spare / 2
    if grid and opening.sill_height is not None:
        sill = min(max(opening.sill_height - grid.round(opening.sill_height - sill), 0.0), spare)
    return Sides(left=side, right=side, head=spare - sill, sill=sill)
