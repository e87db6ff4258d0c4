"""Frames that are round: full circles, quarters, half circles on their sill, and ellipse arches by three arcs."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

from jambs.geometry import Point
from jambs.job.models.fields import Size
from jambs.job.models.path_edge import FrameEdge, FramePath
from jambs.job.models.shape import HighSide, ShapeEntry, ShapeKind
from jambs.sides import Side


def half_on_sill(frame: Size) -> FramePath:
    """Return a half circle over the whole width that springs from the sill itself."""
    left, right = (0.0, 0.0), (frame.width, 0.0)
    return (
        FrameEdge(side=Side.HEAD, start=left, finish=right, center=(frame.width / 2, 0.0)),
        FrameEdge(side=Side.SILL, start=right, finish=left),
    )


def _full_round(frame: Size, shape: ShapeEntry) -> FramePath:
    """Its upper half is the head and its lower half the sill; both begin on the level diameter."""
    radius = frame.width / 2
    left, right, center = (0.0, radius), (frame.width, radius), (radius, radius)
    return (
        FrameEdge(side=Side.HEAD, start=left, finish=right, center=center),
        FrameEdge(side=Side.SILL, start=right, finish=left, center=center),
    )


def _quarter_round(frame: Size, shape: ShapeEntry) -> FramePath:
    """One upright leg, a quarter circle down from its top to the far end of the sill."""
    wide, high = frame.width, frame.height
    low_left, low_right = (0.0, 0.0), (wide, 0.0)
    sill = FrameEdge(side=Side.SILL, start=low_right, finish=low_left)
    if shape.high_side is HighSide.LEFT:
        top = (0.0, high)
        head = FrameEdge(side=Side.HEAD, start=top, finish=low_right, center=low_left)
        return (FrameEdge(side=Side.LEFT, start=low_left, finish=top), head, sill)
    top = (wide, high)
    head = FrameEdge(side=Side.HEAD, start=low_left, finish=top, center=low_right)
    return (head, FrameEdge(side=Side.RIGHT, start=top, finish=low_right), sill)


@dataclass(frozen=True, slots=True, kw_only=True)
class ThreeArcs:
    """An ellipse arch by three arcs [in]: the radius of both ends, of the crown, and where they meet.

    ``meet``: in from the spring point and up from the spring line.
    """

    end_radius: float
    crown_radius: float
    meet: Point


def three_arcs(half_span: float, rise: float) -> ThreeArcs:
    """Lay out the three arcs over half a span and a rise [in], as drafting books have the three-centered arch.

    From the crown, lay the difference of half span and rise off along the line to the spring point; the line square to
    the middle of what is left goes through the centers of end and crown, and where they meet (from memory).
    """
    long = math.hypot(half_span, rise)
    half = (long - (half_span - rise)) / 2
    end = half * long / half_span
    crown = (long - half) * long / rise
    # From the crown's center, below the spring line, through the center of the end and on to where they meet.
    across, up = half_span - end, crown - rise
    reach = math.hypot(across, up)
    meet = (half_span - across * crown / reach, up * crown / reach - up)
    return ThreeArcs(end_radius=end, crown_radius=crown, meet=meet)


def _ellipse_arch(frame: Size, shape: ShapeEntry) -> FramePath:
    """Two legs, and over them three arcs that go on from each other."""
    wide, rise = frame.width, shape.rise_in(frame)
    spring, arcs = frame.height - rise, three_arcs(frame.width / 2, rise)
    across, up = arcs.meet
    tops = [(0.0, spring), (across, spring + up), (wide - across, spring + up), (wide, spring)]
    centers = [
        (arcs.end_radius, spring),
        (wide / 2, frame.height - arcs.crown_radius),
        (wide - arcs.end_radius, spring),
    ]
    heads = tuple(
        FrameEdge(side=Side.HEAD, start=tops[i], finish=tops[i + 1], run=i + 1, runs=len(centers), center=centers[i])
        for i in range(len(centers))
    )
    left, right = (0.0, 0.0), (wide, 0.0)
    return (
        FrameEdge(side=Side.LEFT, start=left, finish=tops[0]),
        *heads,
        FrameEdge(side=Side.RIGHT, start=tops[-1], finish=right),
        FrameEdge(side=Side.SILL, start=right, finish=left),
    )


ROUND_PATHS: dict[ShapeKind, Callable[[Size, ShapeEntry], FramePath]] = {
    ShapeKind.FULL_ROUND: _full_round,
    ShapeKind.QUARTER_ROUND: _quarter_round,
    ShapeKind.ELLIPSE_ARCH: _ellipse_arch,
}
"""How the outer edge of a round frame runs."""
