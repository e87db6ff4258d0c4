"""The outline of an opening: the frame's outer edge as a closed path of edges, and paths that lie off it.

The one place that knows where an opening's outline lies. Rough opening, clear opening and inner edge of the casing are
the frame's path (``jambs.job.models.path``), its sides moved.
"""

from __future__ import annotations

from jambs.geometry import Point
from jambs.job.models.layers import BuckKind
from jambs.job.models.openings import Opening
from jambs.job.models.path import outset, shaped_path
from jambs.job.models.path_edge import FramePath
from jambs.place.placement import Placement
from jambs.sides import Side


def frame_path(opening: Opening) -> FramePath:
    """Return the outer edge of an opening's frame."""
    return shaped_path(opening.frame, opening.shape)


def path_at(opening: Opening, *, left: float, right: float, bottom: float, top: float) -> FramePath:
    """Return an opening's path with its sides at other places: x of left and right, y of bottom and top [in].

    The head is moved as far as the top lies from the frame's, square to each of its edges, and so the sill.
    """
    frame = opening.frame
    out = {Side.LEFT: -left, Side.RIGHT: right - frame.width, Side.SILL: -bottom, Side.HEAD: top - frame.height}
    return outset(frame_path(opening), out)


def rough_path(placement: Placement, more: float = 0.0) -> FramePath:
    """Return the edges of the rough opening: the frame's and the shim space of each side; ``more``: outside it [in]."""
    shims = placement.shims
    out = {Side.LEFT: shims.left, Side.RIGHT: shims.right, Side.HEAD: shims.head, Side.SILL: shims.sill}
    return outset(frame_path(placement.opening), {side: shim + more for side, shim in out.items()})


def rough_size(placement: Placement) -> Point:
    """Return the rough opening for the window as papers give it, width and height [in]: of a shape to the next mark.

    Where no liner lies between it is the hole in the framing, whose bottom may be framed lower than it need be.
    """
    rough, grid, hole = placement.opening.rough_opening, placement.framed_to, placement.framing_opening
    if grid is None:
        return rough.width, rough.height
    is_lined = placement.buck is not None and placement.buck.kind is BuckKind.LINER
    return (grid.up(rough.width), grid.up(rough.height)) if is_lined else (hole.width, hole.height)
