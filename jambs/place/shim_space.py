"""The space between a frame and its rough opening on each side."""

from __future__ import annotations

from jambs.job.models.openings import Opening
from jambs.job.models.path import has_two_legs, outset, shaped_path, size_over_all
from jambs.length import Grid
from jambs.place.placement import Sides
from jambs.sides import Side


def shims(opening: Opening, grid: Grid | None = None) -> Sides:
    """Frame → rough opening on each side, the frame in the middle [in]; a door's frame stands on the sill.

    With a grid of the framing the rough sill lies on it, as near to that middle as it can.
    """
    side = (opening.rough_opening.width - opening.frame.width) / 2
    if opening.shape:
        return _shims_of_shape(opening, side)
    spare = opening.rough_opening.height - opening.frame.height
    if opening.floor_below_frame is not None:
        return Sides(left=side, right=side, head=spare, sill=0.0)
    sill = spare / 2
    if grid and opening.sill_height is not None:
        sill = min(max(opening.sill_height - grid.round(opening.sill_height - sill), 0.0), spare)
    return Sides(left=side, right=side, head=spare - sill, sill=sill)


def _shims_of_shape(opening: Opening, side: float) -> Sides:
    """Space round a shape, the same along every edge; where its widest place is a sharp corner, less than is there."""
    path = shaped_path(opening.frame, opening.shape)
    if not has_two_legs(path):
        grown = size_over_all(outset(path, dict.fromkeys(Side, 1.0))).width - size_over_all(path).width
        side *= 2 / grown
    return Sides(left=side, right=side, head=side, sill=side)
