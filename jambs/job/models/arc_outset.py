"""Paths with arcs moved out or in: arcs stay concentric and straight edges parallel, and they meet as before."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace

from jambs.geometry import Circle, Point
from jambs.job.models.path_edge import FrameEdge, FramePath
from jambs.sides import LEGS, Side

TOUCHES = 1e-9
"""A line no farther outside its circle than this touches it [sq in]."""
GOES_ON = 1e-8
"""Two edges go on from each other where the sine of their turn is less than this."""


def arcs_outset(path: FramePath, out: Mapping[Side, float]) -> FramePath:
    """Move a path with arcs by so much at each side [in].

    Arcs that go on from two legs take their places across from the legs, which rounding has moved by a hair more or
    less than the crown. A whole circle goes by head and sill.
    """
    (dx, dy), grown = _move(path, out)
    moved = [_moved_edge(edge, out[edge.side], dx, dy) for edge in path]
    corners = [_corner(path, i, moved, (dx, dy), grown) for i in range(len(path))]
    ends = corners[1:] + corners[:1]
    return tuple(replace(edge, start=a, finish=b) for edge, a, b in zip(moved, corners, ends, strict=True))


def _move(path: FramePath, out: Mapping[Side, float]) -> tuple[Point, float]:
    """How far the centers of all arcs go, and by how much their radii grow [in]."""
    if all(edge.center for edge in path):
        return (0.0, (out[Side.HEAD] - out[Side.SILL]) / 2), (out[Side.HEAD] + out[Side.SILL]) / 2
    legs = [edge for edge in path if edge.side in LEGS]
    if len(legs) == len(LEGS) and all(_goes_on(path, path.index(leg)) for leg in legs):
        grown = (out[Side.LEFT] + out[Side.RIGHT]) / 2
        return ((out[Side.RIGHT] - out[Side.LEFT]) / 2, out[Side.HEAD] - grown), grown
    return (0.0, 0.0), out[Side.HEAD]


def _goes_on(path: FramePath, i: int) -> bool:
    """Say whether an arc goes on from a straight edge, at one of its ends."""
    return any(abs(turn_sine(path, at)) < GOES_ON for at in (i, (i + 1) % len(path)))


def turn_sine(path: FramePath, i: int) -> float:
    """Sine of the angle by which a path turns right where its edge ``i`` starts."""
    corner = path[i].start
    (ax, ay), (bx, by) = path[i - 1].way_at(corner), path[i].way_at(corner)
    return ay * bx - ax * by


def _moved_edge(edge: FrameEdge, out: float, dx: float, dy: float) -> FrameEdge:
    """Return an edge with its center or its line moved; its ends are found after it."""
    if edge.center:
        return replace(edge, center=(edge.center[0] + dx, edge.center[1] + dy))
    x, y = edge.outward
    (ax, ay), (bx, by) = edge.start, edge.finish
    return replace(edge, start=(ax + x * out, ay + y * out), finish=(bx + x * out, by + y * out))


def _corner(path: FramePath, i: int, moved: list[FrameEdge], by: Point, grown: float) -> Point:
    """Return where two moved edges meet, by where they met."""
    before, after, was = moved[i - 1], moved[i], path[i].start
    circles = [_circle(one, two, grown) for one, two in ((path[i - 1], before), (path[i], after))]
    if circles[0] and circles[1]:
        (x, y), center = was, path[i].center
        assert center is not None
        share = grown / math.dist(was, center)
        return (x + by[0] + (x - center[0]) * share, y + by[1] + (y - center[1]) * share)
    if circles[0] or circles[1]:
        circle, line = (circles[0], after) if circles[0] else (circles[1], before)
        assert circle is not None
        return on_circle(circle, line, was)
    return meet(before, after)


def _circle(was: FrameEdge, moved: FrameEdge, grown: float) -> Circle | None:
    if was.circle is None or moved.center is None:
        return None
    return Circle(center=moved.center, radius=was.circle.radius + grown)


def on_circle(circle: Circle, line: FrameEdge, near: Point) -> Point:
    """Return where a line meets a circle, the nearer place to a point; where it misses it, the place next to it."""
    (nx, ny), (cx, cy) = line.outward, circle.center
    off = -line.out(circle.center)
    foot = (cx + nx * off, cy + ny * off)
    left = circle.radius**2 - off**2
    half = math.sqrt(left) if left > TOUCHES else 0.0
    places = [(foot[0] + sign * half * ny, foot[1] - sign * half * nx) for sign in (-1.0, 1.0)]
    return min(places, key=lambda place: math.dist(place, near))


def meet(one: FrameEdge, two: FrameEdge) -> Point:
    """Return where two straight edges meet, drawn out."""
    (ax, ay), (bx, by) = one.outward, two.outward
    past_one, past_two = (edge.outward[0] * edge.start[0] + edge.outward[1] * edge.start[1] for edge in (one, two))
    over = ax * by - ay * bx
    return ((past_one * by - past_two * ay) / over + 0.0, (ax * past_two - bx * past_one) / over + 0.0)


def arc_outside(path: FramePath, i: int, out: float) -> FrameEdge:
    """Return the arc so far outside the one of edge ``i`` [in], from the joint at its start to that at its finish.

    Joints of arcs that go on from each other point at their center. With two legs it ends on the line between both
    corners of the miter; on the sill it stands, and the sill's board runs through.
    """
    edge = path[i]
    circle = edge.circle
    assert circle is not None and edge.center is not None
    grown = Circle(center=edge.center, radius=circle.radius + out)
    start = _joint(path, i, i - 1, grown, out)
    finish = _joint(path, (i + 1) % len(path), (i + 1) % len(path), grown, out)
    return replace(edge, start=start, finish=finish)


def _joint(path: FramePath, at: int, other: int, grown: Circle, out: float) -> Point:
    corner, neighbor = path[at].start, path[other]
    if neighbor.center is not None:
        return grown.at(grown.angle(corner))
    return on_circle(grown, neighbor if stands_on(path, at) else _moved_edge(neighbor, out, 0.0, 0.0), corner)


def stands_on(path: FramePath, i: int) -> bool:
    """Say whether an arc stands on a straight edge where edge ``i`` starts: on the sill, and a quarter on its leg too.

    With two legs it is mitered.
    """
    before, after = path[i - 1], path[i]
    line = after if before.center else before
    has_one_leg = sum(edge.side in LEGS for edge in path) == 1
    return bool(before.center) != bool(after.center) and (line.side is Side.SILL or has_one_leg)


def backs_of(path: FramePath, out: float) -> FramePath:
    """Return the outer edges of boards of one width that go all round on a path [in].

    Where an arc stands on a board, that ends square, flush with the outer edge of the arc.
    """
    found: list[FrameEdge] = []
    for i, edge in enumerate(path):
        if stands_on(path, i):
            found += _square_end(path, i, out)
        start, finish = (_back_corner(path, i, at, out) for at in (i, (i + 1) % len(path)))
        found.append(replace(edge, start=start, finish=finish))
    return tuple(found)


def _square_end(path: FramePath, i: int, out: float) -> list[FrameEdge]:
    """Return the end of the board that an arc stands on, from the edge before a corner to the one after it."""
    start, finish = (_back_corner(path, at, i, out) for at in ((i - 1) % len(path), i))
    return [FrameEdge(side=Side.SILL, start=start, finish=finish)]


def _back_corner(path: FramePath, i: int, at: int, out: float) -> Point:
    """Return where the back of edge ``i`` ends at the corner where edge ``at`` starts."""
    edge, other = path[i], path[(at - 1) % len(path)] if at == i else path[at]
    arc = i if edge.center else path.index(other)
    if not path[arc].center:
        moved = [_moved_edge(one, out, 0.0, 0.0) for one in (path[at - 1], path[at])]
        return meet(*moved)
    outer = arc_outside(path, arc, out)
    corner = outer.start if at == arc else outer.finish
    if edge.center or not stands_on(path, at):
        return corner
    x, y = edge.outward
    return (corner[0] + x * out, corner[1] + y * out)
