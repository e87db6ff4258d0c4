"""A frame's outline as a closed path of edges, and paths that lie off it.

Paths lie in the plane of the window, x right and y up from the frame's lower left corner, and run clockwise as seen
from inside: up the left leg, along the head, down the right leg, back along the sill.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace

from jambs.geometry import Point, radius_of
from jambs.job.models.arc_outset import arcs_outset
from jambs.job.models.fields import Size
from jambs.job.models.path_edge import FrameEdge, FramePath
from jambs.job.models.round_paths import ROUND_PATHS, arc_on_sill
from jambs.job.models.shape import OVER_LEGS, ShapeEntry, ShapeKind
from jambs.length import HALF_64TH
from jambs.sides import LEGS, Side


def shaped_path(frame: Size, shape: ShapeEntry | None) -> FramePath:
    """Return the outer edge of a frame of a width × height [in] and a shape; without one a rectangle."""
    if shape and shape.kind in ROUND_PATHS:
        return ROUND_PATHS[shape.kind](frame, shape)
    if shape and shape.kind in OVER_LEGS:
        return arched_path(frame, shape.rise_in(frame))
    return _joined(_CORNERS[shape.kind](frame, shape) if shape else _rectangle(frame))


def arched_path(frame: Size, rise: float) -> FramePath:
    """Return the outer edge of a frame whose head is one arc of a rise [in] over two upright legs, or over none."""
    radius = radius_of(frame.width, rise)
    if frame.height - rise < HALF_64TH:
        return arc_on_sill(frame, rise)
    legs_and_sill = _joined(_rectangle(Size(width=frame.width, height=frame.height - rise)))
    center = (frame.width / 2, frame.height - radius)
    return tuple(replace(edge, center=center) if edge.side is Side.HEAD else edge for edge in legs_and_sill)


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


def _triangle(frame: Size, shape: ShapeEntry) -> _Corners:
    """Its peak over the middle, or where it is said; over a side the edge there is a leg, else the head has two."""
    peak, wide, high = shape.peak(frame), frame.width, frame.height
    if peak < HALF_64TH:
        return ((Side.LEFT, (0.0, 0.0)), (Side.HEAD, (0.0, high)), (Side.SILL, (wide, 0.0)))
    if peak > wide - HALF_64TH:
        return ((Side.HEAD, (0.0, 0.0)), (Side.RIGHT, (wide, high)), (Side.SILL, (wide, 0.0)))
    return ((Side.HEAD, (0.0, 0.0)), (Side.HEAD, (peak, high)), (Side.SILL, (wide, 0.0)))


_CORNERS = {
    ShapeKind.RAKED: _raked,
    ShapeKind.GABLE: _gable,
    ShapeKind.OCTAGON: _octagon,
    ShapeKind.TRIANGLE: _triangle,
}


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
    if is_arched(path):
        return _arch_outset(path, out) if _is_over_legs(path) else arcs_outset(path, out)
    lines = [(edge.outward, _past(edge) + out[edge.side]) for edge in path]
    corners = [_meet(*lines[i - 1], *lines[i]) for i in range(len(path))]
    ends = corners[1:] + corners[:1]
    return tuple(replace(edge, start=a, finish=b) for edge, a, b in zip(path, corners, ends, strict=True))


TANGENT_DEG = 1e-6
"""An arc that turns by less where its leg ends goes on from it: a half circle."""


def is_arched(path: FramePath) -> bool:
    """Say whether an edge of a path is an arc."""
    return any(edge.center for edge in path)


def _is_over_legs(path: FramePath) -> bool:
    """Say whether one arc springs from two legs."""
    return [bool(edge.center) for edge in path] == [False, True, False, False]


def _arch_outset(path: FramePath, out: Mapping[Side, float]) -> FramePath:
    """Move an arched path: legs and sill as straight edges, the arc concentric.

    A half circle stays one between legs that rounding has moved by a hair more or less than its crown.
    """
    left, head, right, sill = path
    circle = head.circle
    assert circle is not None
    low = sill.start[1] - out[Side.SILL]
    x0, x1 = left.start[0] - out[Side.LEFT], right.start[0] + out[Side.RIGHT]
    (x, y), radius = circle.center, circle.radius + out[Side.HEAD]
    if abs(corner_turn_deg(path, 1)) < TANGENT_DEG:
        moved = (x1 - x0) / 2
        x, y, radius = (x0 + x1) / 2, y + radius - moved, moved
        tops = [y, y]  # by their root they would differ by a hair, and legs get a miter of nothing
    else:
        tops = [y + math.sqrt(max(radius**2 - (at - x) ** 2, 0.0)) for at in (x0, x1)]
    corners = ((x0, low), (x0, tops[0]), (x1, tops[1]), (x1, low))
    ends = corners[1:] + corners[:1]
    return tuple(
        replace(edge, start=a, finish=b, center=(x, y) if edge.center else None)
        for edge, a, b in zip(path, corners, ends, strict=True)
    )


def _past(edge: FrameEdge) -> float:
    return edge.outward[0] * edge.start[0] + edge.outward[1] * edge.start[1]


def _meet(one: Point, past_one: float, two: Point, past_two: float) -> Point:
    """Return where two lines ``normal · point = past`` meet."""
    over = one[0] * two[1] - one[1] * two[0]
    x, y = past_one * two[1] - past_two * one[1], one[0] * past_two - two[0] * past_one
    return (x / over + 0.0, y / over + 0.0)


def corner_turn_deg(path: FramePath, i: int) -> float:
    """How far the path turns right where its edge ``i`` starts: 90 in a rectangle [degrees]."""
    corner = path[i].start
    (ax, ay), (bx, by) = path[i - 1].way_at(corner), path[i].way_at(corner)
    return math.degrees(math.atan2(ay * bx - ax * by, ax * bx + ay * by))


def has_two_legs(path: FramePath) -> bool:
    """Say whether it stands between two upright legs, so that it has one width."""
    return sum(edge.side.is_leg for edge in path) == len(LEGS)


def corners_of(path: FramePath) -> tuple[Point, ...]:
    """Return the corners of a path (x, y) [in]."""
    return tuple(edge.start for edge in path)


def points_of(path: FramePath) -> tuple[Point, ...]:
    """Return the outline of a path (x, y) [in]: its corners, and between them the points of fine arcs."""
    return tuple(point for edge in path for point in edge.points)


def area_of(path: FramePath) -> float:
    """Area inside a path [sq in]."""
    return (
        sum(map(_bow, path)) + sum(edge.start[1] * edge.finish[0] - edge.start[0] * edge.finish[1] for edge in path) / 2
    )


def _bow(edge: FrameEdge) -> float:
    """Area between an arc and its chord, ``r² (θ - sin θ) / 2`` [sq in]."""
    circle = edge.circle
    if circle is None:
        return 0.0
    sweep = circle.sweep(edge.start, edge.finish, clockwise=True)
    return circle.radius**2 * (sweep - math.sin(sweep)) / 2


def has_collapsed(path: FramePath, frame: FramePath) -> bool:
    """Say whether an edge ran out of length, or turned round, when the path was moved in from the frame's."""
    return any(
        one.start == one.finish or one.way[0] * two.way[0] + one.way[1] * two.way[1] <= 0.0
        for one, two in zip(path, frame, strict=True)
    )


def size_over_all(path: FramePath) -> Size:
    """Return the width × height of the rectangle round a path [in]."""
    points = [*corners_of(path), *(edge.crown for edge in path if edge.center)]
    points += [point for edge in path for point in edge.extremes]
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return Size(width=max(xs) - min(xs), height=max(ys) - min(ys))
