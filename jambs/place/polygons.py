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


def _axes(polygon: Polygon) -> Iterator[Point]:
    for (x0, y0), (x1, y1) in zip(polygon, polygon[1:] + polygon[:1], strict=True):
        length = math.hypot(x1 - x0, y1 - y0)
        if length > 0:
            yield ((y1 - y0) / length, (x0 - x1) / length)


def _span(polygon: Polygon, axis: Point) -> tuple[float, float]:
    along = [x * axis[0] + y * axis[1] for x, y in polygon]
    return min(along), max(along)


def overlap(one: Polygon, other: Polygon) -> bool:
    """Say whether two convex polygons share more than a touch (separating axes)."""
    for axis in (*_axes(one), *_axes(other)):
        (low, high), (other_low, other_high) = _span(one, axis), _span(other, axis)
        if high <= other_low + TOUCH or other_high <= low + TOUCH:
            return False
    return True
