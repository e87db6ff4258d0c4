"""Frames that are round: full circles, quarters, arcs on their sill, ellipse arches by three or five arcs."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from itertools import pairwise

from jambs.geometry import Point, radius_of
from jambs.job.models.fields import Size
from jambs.job.models.path_edge import FrameEdge, FramePath
from jambs.job.models.shape import Centers, HighSide, ShapeEntry, ShapeKind
from jambs.length import ROUND_OFF
from jambs.sides import Side


def arc_on_sill(frame: Size, rise: float) -> FramePath:
    """Return an arc over the whole width that springs from the sill itself, a half circle or less of one."""
    left, right = (0.0, 0.0), (frame.width, 0.0)
    below = radius_of(frame.width, rise) - rise
    center = (frame.width / 2, -below if below > ROUND_OFF else 0.0)
    return (
        FrameEdge(side=Side.HEAD, start=left, finish=right, center=center),
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


def five_arcs(half_span: float, rise: float) -> tuple[QuarterArc, ...]:
    """Lay out a five-centered arch over half a span and a rise [in]: its arcs from the spring point to the crown.

    End and crown have the radii by which the ellipse over the same axes bends there, ``b²/a`` and ``a²/b``, the arc
    between them their mean proportional, ``√(ab)``; centers of arcs that go on from each other lie as far apart as
    their radii differ. Drafting books have the mean proportional (from memory).
    """
    a, b = half_span, rise
    end, middle, crown = b * b / a, math.sqrt(a * b), a * a / b
    first, last = (end, 0.0), (a, b - crown)
    between = _nearer(_crossing(first, middle - end, last, crown - middle), (a, 0.0))
    return tuple(
        QuarterArc(radius=radius, center=center) for radius, center in ((end, first), (middle, between), (crown, last))
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class QuarterArc:
    """One of the arcs of half an arch: its radius, and its center, in from the spring point and up from there [in]."""

    radius: float
    center: Point

    def meets(self, after: QuarterArc) -> Point:
        """Return where it goes on into the next one toward the crown: on the line through both centers [in]."""
        (x, y), (x2, y2) = self.center, after.center
        share = self.radius / (after.radius - self.radius)
        return (x + (x - x2) * share, y + (y - y2) * share)


def _crossing(one: Point, radius: float, two: Point, other: float) -> tuple[Point, Point]:
    """Return where circles about two points cross."""
    (x, y), apart = one, math.dist(one, two)
    along = (apart**2 + radius**2 - other**2) / (2 * apart)
    off = math.sqrt(max(radius**2 - along**2, 0.0))
    across, up = (two[0] - x) / apart, (two[1] - y) / apart
    foot = (x + across * along, y + up * along)
    return (foot[0] - up * off, foot[1] + across * off), (foot[0] + up * off, foot[1] - across * off)


def _nearer(points: tuple[Point, Point], to: Point) -> Point:
    return min(points, key=lambda point: math.dist(point, to))


def _half_arch(frame: Size, shape: ShapeEntry) -> tuple[list[Point], list[Point]]:
    """Return the centers of the arcs of half an ellipse arch, and where they meet, from its spring point on."""
    half, rise = frame.width / 2, shape.rise_in(frame)
    if shape.centers is Centers.FIVE:
        arcs = five_arcs(half, rise)
        return [arc.center for arc in arcs], [one.meets(two) for one, two in pairwise(arcs)]
    found = three_arcs(half, rise)
    return [(found.end_radius, 0.0), (half, rise - found.crown_radius)], [found.meet]


def _ellipse_arch(frame: Size, shape: ShapeEntry) -> FramePath:
    """Two legs, and over them three or five arcs that go on from each other."""
    wide, spring = frame.width, frame.height - shape.rise_in(frame)
    centers, meets = _half_arch(frame, shape)
    halves = [(0.0, 0.0), *meets], centers
    tops, middles = ([(x, spring + y) for x, y in points] for points in halves)
    tops += [(wide - x, y) for x, y in tops[::-1]]
    middles += [(wide - x, y) for x, y in middles[-2::-1]]
    heads = tuple(
        FrameEdge(side=Side.HEAD, start=tops[i], finish=tops[i + 1], run=i + 1, runs=len(middles), center=center)
        for i, center in enumerate(middles)
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
