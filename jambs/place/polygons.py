"""Convex polygons in a plane: turning and overlap."""

from __future__ import annotations

import math
from collections.abc import Iterator

from jambs.geometry import Point

Polygon = tuple[Point, ...]

TOUCH = 1e-6
"""Two polygons nearer than this touch and do not overlap [in]."""


def rectangle(low: Point, high: Point) -> Polygon:
    """Return the corners of an upright rectangle, counter-clockwise."""
    return (low, (high[0], low[1]), high, (low[0], high[1]))


def turned(polygon: Polygon, *, about: Point, degrees: float) -> Polygon:
    """Return the polygon turned counter-clockwise about a point."""
    cosine, sine = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
    moved = ((x - about[0], y - about[1]) for x, y in polygon)
    return tuple((about[0] + x * cosine - y * sine, about[1] + x * sine + y * cosine) for x, y in moved)


def overlap(one: Polygon, other: Polygon) -> bool:
    """Say whether two convex polygons, counter-clockwise, share more than a touch: no edge has the other outside it."""
    return not (_is_outside(one, other) or _is_outside(other, one))


def _is_outside(one: Polygon, other: Polygon) -> bool:
    """Say whether an edge of one polygon has all of the other outside it (separating axes)."""
    return any(_reach(one, axis) <= -_reach(other, (-axis[0], -axis[1])) + TOUCH for axis in _outward(one))


def _outward(polygon: Polygon) -> Iterator[Point]:
    for (x0, y0), (x1, y1) in zip(polygon, polygon[1:] + polygon[:1], strict=True):
        length = math.hypot(x1 - x0, y1 - y0)
        if length > 0:
            yield ((y1 - y0) / length, (x0 - x1) / length)


def _reach(polygon: Polygon, axis: Point) -> float:
    """How far a polygon reaches along a direction."""
    return max(x * axis[0] + y * axis[1] for x, y in polygon)
