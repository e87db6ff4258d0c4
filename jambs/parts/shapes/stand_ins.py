"""Straight edges that stand in for the arcs of a path, where the boards beside them are laid out.

The planes that end a board (``opening_path.py``) are those of straight neighbors. An arc over legs is a level edge
from spring point to spring point, as thick as its outer corner lies higher than its inner one; one that stands on the
sill is upright there, as thick as it is on the sill; a quarter is one of each.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from jambs.geometry import Point
from jambs.job.models.arc_outset import arc_outside, stands_on
from jambs.job.models.path import TANGENT_DEG, corner_turn_deg
from jambs.job.models.path_edge import FrameEdge, FramePath
from jambs.parts.shapes.opening_path import CornerJoint
from jambs.sides import Side


@dataclass(frozen=True, slots=True, kw_only=True)
class StandIn:
    """An edge of a path, or what stands in for its arcs.

    ``at``: number of the edge in its path; none of what stands in for an arc. ``joint``: of the corner where it starts,
    where an arc meets it there; ``thickness``: of what stands in [in].
    """

    edge: FrameEdge
    at: int | None = None
    joint: CornerJoint | None = None
    thickness: float = 0.0


def straight_path(path: FramePath, out: float) -> tuple[StandIn, ...]:
    """Return a path whose arcs have straight edges in their place; ``out``: thickness of the boards along it [in].

    Nothing of a path of arcs alone.
    """
    if all(edge.center for edge in path):
        return ()
    found: list[StandIn] = []
    for i, edge in enumerate(path):
        if edge.center is None:
            found.append(StandIn(edge=edge, at=i, joint=_after_arc(path, i)))
        elif path[i - 1].center is None:
            found += _for_arcs(path, i, _last_arc(path, i), out)
    return tuple(found)


def _last_arc(path: FramePath, i: int) -> int:
    """Return the last of the arcs that go on from edge ``i``."""
    while path[(i + 1) % len(path)].center:
        i = (i + 1) % len(path)
    return i


def _after_arc(path: FramePath, i: int) -> CornerJoint | None:
    """How a straight edge begins where an arc ends: its board runs through under one that stands on it."""
    if path[i - 1].center is None:
        return None
    if stands_on(path, i):
        return CornerJoint.AFTER_RUNS_THROUGH
    return CornerJoint.BEFORE_RUNS_THROUGH if _goes_on(path, i) else CornerJoint.MITER


def _goes_on(path: FramePath, i: int) -> bool:
    return abs(corner_turn_deg(path, i)) < TANGENT_DEG


def _for_arcs(path: FramePath, first: int, last: int, out: float) -> Iterator[StandIn]:
    """Yield what stands in for the arcs from one edge to another."""
    after = (last + 1) % len(path)
    start, finish = path[first].start, path[last].finish
    over, past = arc_outside(path, first, out).start, arc_outside(path, last, out).finish
    from_sill, to_sill = path[first - 1].side is Side.SILL, path[after].side is Side.SILL
    top = finish[1] if from_sill else start[1]
    if from_sill and to_sill:
        top = max(edge.crown[1] for edge in path)
    joint, level = _before_arc(path, first), out
    if from_sill:
        yield _stand_in(start, (start[0], top), joint, abs(over[0] - start[0]))
        joint = CornerJoint.MITER
    else:
        level = over[1] - start[1]
    if not to_sill:
        level = past[1] - finish[1]
    yield _stand_in((start[0], top), (finish[0], top), joint, level)
    if to_sill:
        yield _stand_in((finish[0], top), finish, CornerJoint.MITER, abs(past[0] - finish[0]))


def _before_arc(path: FramePath, i: int) -> CornerJoint:
    """How the board before an arc ends where the arc begins: it runs through under one that stands on it."""
    if stands_on(path, i):
        return CornerJoint.BEFORE_RUNS_THROUGH
    return CornerJoint.AFTER_RUNS_THROUGH if _goes_on(path, i) else CornerJoint.MITER


def _stand_in(start: Point, finish: Point, joint: CornerJoint, thickness: float) -> StandIn:
    return StandIn(edge=FrameEdge(side=Side.HEAD, start=start, finish=finish), joint=joint, thickness=thickness)
