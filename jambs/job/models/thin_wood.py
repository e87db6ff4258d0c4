"""Where a section leaves wood too thin to run or to last: pinched between two edges, or ending in a feather."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from itertools import chain

from jambs.geometry import Point

LEAST_WOOD = 1 / 16
"""What a section leaves between two of its edges [in]; common practice, no source."""
LEAST_CORNER_DEG = 20.0
"""A sharper corner is a feather edge, which chips [degrees]; common practice, no source."""
AS_THE_EDGE_RUNS = 3.0
"""Points of one curve lie near each other; a pinch is where the way round the section is this many times longer."""


def thin_place(points: Sequence[Point]) -> Point | None:
    """Return a corner of a section, counter-clockwise, where its wood is too thin; none where it nowhere is."""
    return next(chain(_feathers(points), _pinches(points)), None)


def _feathers(points: Sequence[Point]) -> Iterator[Point]:
    for before, here, after in zip((points[-1], *points[:-1]), points, (*points[1:], points[0]), strict=True):
        (ax, ay), (bx, by) = _way(here, after), _way(here, before)
        inside = math.degrees(math.atan2(ax * by - ay * bx, ax * bx + ay * by)) % 360
        if inside < LEAST_CORNER_DEG:
            yield here


def _pinches(points: Sequence[Point]) -> Iterator[Point]:
    runs = [0.0]
    for here, after in zip(points, (*points[1:], points[0]), strict=True):
        runs.append(runs[-1] + math.dist(here, after))
    for at, corner in enumerate(points):
        for edge in range(len(points)):
            one, two = points[edge], points[(edge + 1) % len(points)]
            if _is_far(corner, one, two):
                continue
            share = _nearest(corner, one, two)
            place = (one[0] + share * (two[0] - one[0]), one[1] + share * (two[1] - one[1]))
            across = math.dist(corner, place)
            along = abs(runs[edge] + share * (runs[edge + 1] - runs[edge]) - runs[at])
            along = min(along, runs[-1] - along)
            if across < LEAST_WOOD and along > AS_THE_EDGE_RUNS * across and _in_wood(corner, place, points):
                yield corner


def _way(start: Point, end: Point) -> Point:
    return end[0] - start[0], end[1] - start[1]


def _is_far(corner: Point, one: Point, two: Point) -> bool:
    """Say quickly that an edge cannot come near a corner."""
    return any(
        corner[axis] < min(one[axis], two[axis]) - LEAST_WOOD or corner[axis] > max(one[axis], two[axis]) + LEAST_WOOD
        for axis in (0, 1)
    )


def _nearest(corner: Point, one: Point, two: Point) -> float:
    """Return the share of an edge, 0 to 1, at which it is nearest to a corner."""
    (dx, dy), (px, py) = _way(one, two), _way(one, corner)
    length = dx * dx + dy * dy
    return min(max((px * dx + py * dy) / length, 0.0), 1.0) if length else 0.0


def _in_wood(corner: Point, place: Point, points: Sequence[Point]) -> bool:
    """Say whether wood, not air, lies between a corner and a place on another edge; where they touch it is pinched."""
    x, y = (corner[0] + place[0]) / 2, (corner[1] + place[1]) / 2
    if math.dist(corner, place) == 0:
        return True
    crossings = (
        one[0] + (y - one[1]) * (two[0] - one[0]) / (two[1] - one[1]) > x
        for one, two in zip(points, (*points[1:], points[0]), strict=True)
        if (one[1] > y) != (two[1] > y)
    )
    return sum(crossings) % 2 == 1
