"""Where boards that do not stand upright, or an arc, end on a stool or a sill."""

from __future__ import annotations

from collections.abc import Mapping

from jambs.geometry import Point
from jambs.job.models.path import outset
from jambs.job.models.path_edge import FramePath
from jambs.sides import Side


def feet(path: FramePath, out: float | Mapping[Side, float]) -> Point:
    """Return where edges so far outside a path, all or by side [in], cross the line of its sill (x), left and right."""
    by_side = out if isinstance(out, Mapping) else dict.fromkeys(Side, out)
    moved = outset(path, {**by_side, Side.SILL: 0.0})
    sill = next(edge for edge in moved if edge.side is Side.SILL)
    return (sill.finish[0], sill.start[0])


def feet_over(paths: tuple[FramePath, FramePath], out: float | Mapping[Side, float]) -> Point:
    """Return how far they reach at most on a sill that slopes, by the paths where it is highest and lowest."""
    lefts, rights = zip(*(feet(path, out) for path in paths), strict=True)
    return (min(lefts), max(rights))
