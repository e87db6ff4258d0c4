"""Along which edge of a path a board lies."""

from __future__ import annotations

import math

from jambs.job.models.path_edge import FrameEdge, FramePath
from jambs.parts.board.part import Part


def edge_of(part: Part, path: FramePath) -> FrameEdge:
    """Return the edge of its side along which a board round a shape lies: of arcs the one whose center is its own.

    A straight board on the side of arcs follows the one that its middle lies on.
    """
    own = [edge for edge in path if edge.side is part.side]
    if not part.arcs:
        straight = (edge for edge in own if not edge.center and edge.run == part.member)
        return next(straight, None) or next((edge for edge in own if _follows(part, edge)), own[0])
    u, out = part.arcs[0].center
    x, y, _ = part.seat.at(u, 0.0, out) if part.is_sawn_on_edge else part.seat.at(u, out, 0.0)
    return min(own, key=lambda edge: math.dist(edge.center or edge.start, (x, y)) if edge.center else math.inf)


def _follows(part: Part, edge: FrameEdge) -> bool:
    circle = edge.circle
    x, y, _ = part.seat.at(part.length / 2, 0.0, 0.0)
    sweep = circle.sweep(edge.start, edge.finish, clockwise=True) if circle else 0.0
    return circle is not None and circle.sweep(edge.start, (x, y), clockwise=True) < sweep
