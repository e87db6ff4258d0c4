"""A frame's outline as a closed path of edges, and paths that lie off it.

Paths lie in the plane of the window, x right and y up from the frame's lower left corner, and run clockwise as seen
from inside: up the left leg, along the head, down the right leg, back along the sill.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace

from jambs.geometry import Point
from jambs.job.models.fields import Size
from jambs.job.models.shape import ShapeEntry, ShapeKind
from jambs.sides import Side


@dataclass(frozen=True, slots=True, kw_only=True)
class FrameEdge:
    """One straight edge of a path, from corner to corner (x, y) [in].

    ``side``: the side of the opening it belongs to. A side may be parted into several edges, as the head of a gable:
    ``run`` counts its ``runs`` from left to right.
    """

    side: Side
    start: Point
    finish: Point
    run: int = 1
    runs: int = 1

    @property
    def length(self) -> float:
        """From corner to corner [in]."""
        return math.dist(self.start, self.finish)

    @property
    def way(self) -> Point:
        """The direction in which it runs, of length one."""
        length = self.length
        return ((self.finish[0] - self.start[0]) / length + 0.0, (self.finish[1] - self.start[1]) / length + 0.0)

    @property
    def outward(self) -> Point:
        """The direction out of the opening, of length one."""
        x, y = self.way
        return (-y + 0.0, x)

    def out(self, point: Point) -> float:
        """How far a point lies outside this edge [in]."""
        (x, y), (across, up) = self.start, self.outward
        return (point[0] - x) * across + (point[1] - y) * up

    @property
    def is_middle(self) -> bool:
        """Say whether a section through the middle of its side cuts it."""
        return self.run == (self.runs + 1) // 2


FramePath = tuple[FrameEdge, ...]
"""A closed path: every edge begins where the one before it ends."""


def shaped_path(frame: Size, shape: ShapeEntry | None) -> FramePath:
    """Return the outer edge of a frame of a width × height [in] and a shape; without one a rectangle."""
    return _joined(_CORNERS[shape.kind](frame, shape) if shape else _rectangle(frame))


_Corners = tuple[tuple[Side, Point], ...]
"""Where each edge of a path starts, and the side it belongs to."""


def _rectangle(frame: Size) -> _Corners:
    return (
        (Side.LEFT, (0.0, 0.0)),
        (Side.HEAD, (0.0, frame.height)),
        (Side.RIGHT, (frame.width, frame.height)),
        (Side.SILL, (frame.width, 0.0)),
    )


def _raked(frame: Size, shape: ShapeEntry) -> _Corners:
    return (
        (Side.LEFT, (0.0, 0.0)),
        (Side.HEAD, (0.0, shape.height_left or 0.0)),
        (Side.RIGHT, (frame.width, shape.height_right or 0.0)),
        (Side.SILL, (frame.width, 0.0)),
    )


def _gable(frame: Size, shape: ShapeEntry) -> _Corners:
    return (
        (Side.LEFT, (0.0, 0.0)),
        (Side.HEAD, (0.0, shape.height_left or 0.0)),
        (Side.HEAD, (shape.peak(frame), frame.height)),
        (Side.RIGHT, (frame.width, shape.height_right or 0.0)),
        (Side.SILL, (frame.width, 0.0)),
    )


def _octagon(frame: Size, shape: ShapeEntry) -> _Corners:
    cut, wide, high = shape.cut_in(frame), frame.width, frame.height
    return (
        (Side.LEFT, (0.0, cut)),
        (Side.HEAD, (0.0, high - cut)),
        (Side.HEAD, (cut, high)),
        (Side.HEAD, (wide - cut, high)),
        (Side.RIGHT, (wide, high - cut)),
        (Side.SILL, (wide, cut)),
        (Side.SILL, (wide - cut, 0.0)),
        (Side.SILL, (cut, 0.0)),
    )


_CORNERS = {ShapeKind.RAKED: _raked, ShapeKind.GABLE: _gable, ShapeKind.OCTAGON: _octagon}


def _joined(corners: _Corners) -> FramePath:
    sides = [side for side, _ in corners]
    edges = []
    for i, (side, corner) in enumerate(corners):
        runs, before = sides.count(side), sides[:i].count(side)
        run = runs - before if side is Side.SILL else before + 1
        finish = corners[(i + 1) % len(corners)][1]
        edges.append(FrameEdge(side=side, start=corner, finish=finish, run=run, runs=runs))
    return tuple(edges)


def outset(path: FramePath, out: Mapping[Side, float]) -> FramePath:
    """Return a path whose edges lie so far outside those of another, by side [in]; negative inside of it."""
    lines = [(edge.outward, _past(edge) + out[edge.side]) for edge in path]
    corners = [_meet(*lines[i - 1], *lines[i]) for i in range(len(path))]
    ends = corners[1:] + corners[:1]
    return tuple(replace(edge, start=a, finish=b) for edge, a, b in zip(path, corners, ends, strict=True))


def _past(edge: FrameEdge) -> float:
    return edge.outward[0] * edge.start[0] + edge.outward[1] * edge.start[1]


def _meet(one: Point, past_one: float, two: Point, past_two: float) -> Point:
    """Return where two lines ``normal · point = past`` meet."""
    over = one[0] * two[1] - one[1] * two[0]
    x, y = past_one * two[1] - past_two * one[1], one[0] * past_two - two[0] * past_one
    return (x / over + 0.0, y / over + 0.0)


def corner_turn_deg(path: FramePath, i: int) -> float:
    """How far the path turns right where its edge ``i`` starts: 90 in a rectangle [degrees]."""
    (ax, ay), (bx, by) = path[i - 1].way, path[i].way
    return math.degrees(math.atan2(ay * bx - ax * by, ax * bx + ay * by))


def corners_of(path: FramePath) -> tuple[Point, ...]:
    """Return the corners of a path (x, y) [in]."""
    return tuple(edge.start for edge in path)


def area_of(path: FramePath) -> float:
    """Area inside a path [sq in]."""
    return sum(edge.start[1] * edge.finish[0] - edge.start[0] * edge.finish[1] for edge in path) / 2


def has_collapsed(path: FramePath, frame: FramePath) -> bool:
    """Say whether an edge ran out of length, or turned round, when the path was moved in from the frame's."""
    return any(
        one.length == 0.0 or one.way[0] * two.way[0] + one.way[1] * two.way[1] <= 0.0
        for one, two in zip(path, frame, strict=True)
    )


def size_over_all(path: FramePath) -> Size:
    """Return the width × height of the rectangle round a path [in]."""
    xs, ys = [x for x, _ in corners_of(path)], [y for _, y in corners_of(path)]
    return Size(width=max(xs) - min(xs), height=max(ys) - min(ys))
