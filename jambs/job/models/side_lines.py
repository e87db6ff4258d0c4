"""The sides of an opening as lines along which depths are read: over one edge of its path, or over several.

Depths of a side stand in one list, left → right on head and sill, bottom → top on the legs. A side that is parted into
edges, as the head of a gable, has as many equal steps along each of them, so that its corners have places of their own.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from jambs.geometry import Point
from jambs.job.models.fields import Size
from jambs.job.models.path import shaped_path
from jambs.job.models.path_edge import FrameEdge, FramePath
from jambs.job.models.shape import ShapeEntry
from jambs.sides import Side

CLOCKWISE = (Side.HEAD, Side.RIGHT, Side.SILL, Side.LEFT)
TURNED = (Side.RIGHT, Side.SILL)
"""Sides along which a path runs against the way in which they are read."""

Meeting = tuple[tuple[Side, int], tuple[Side, int]]
"""A corner that two sides share: each side, and its place in the side's list, 0 or -1."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SideLine:
    """One side of an opening: its edges, in the order in which depths along it are read."""

    side: Side
    edges: FramePath

    @property
    def runs(self) -> int:
        """How many edges it has."""
        return len(self.edges)

    @property
    def is_arc(self) -> bool:
        """Say whether it is curved: of one arc, or of several that go on from each other."""
        return self.edges[0].center is not None

    def fits(self, count: int) -> bool:
        """Say whether so many depths stand at equal steps along each edge; along an arc with one at its middle."""
        steps = count - 1
        return steps > 0 and steps % self.runs == 0 and not (self.is_arc and steps % 2)

    def corners(self, count: int) -> tuple[int, ...]:
        """Return which of so many places have to be read: the ends of all edges; of an arc both, and its middle."""
        last = count - 1
        return (0, last // 2, last) if self.is_arc else tuple(range(0, count, last // self.runs))

    def steps(self, count: int) -> int:
        """Return how many steps lie along each edge of so many places."""
        return (count - 1) // self.runs

    def point(self, at: int, count: int, *, of: Size | None = None) -> Point:
        """Return where one of so many places is (x, y) [in]; ``of`` a frame: as shares of its width and height."""
        steps, size = self.steps(count), of or Size(width=1.0, height=1.0)
        run = min(at // steps, self.runs - 1)
        share = (at - run * steps) / steps
        return _along(self.edges[run], 1 - share if self.side in TURNED else share, size)


def _along(edge: FrameEdge, share: float, of: Size) -> Point:
    """Return the point of an edge at a share of its way."""
    (x0, y0), (x1, y1) = ((x / of.width, y / of.height) for x, y in (edge.start, edge.finish))
    if share in (0, 1):
        return (x1, y1) if share else (x0, y0)
    if circle := edge.circle:
        x, y = circle.at(circle.angle(edge.start) - share * circle.sweep(edge.start, edge.finish, clockwise=True))
        return (x / of.width, y / of.height)
    return (x0 + share * (x1 - x0), y0 + share * (y1 - y0))


def side_lines(frame: Size, shape: ShapeEntry | None) -> dict[Side, SideLine]:
    """Return the sides of a frame of a width × height [in] and a shape, clockwise from the head."""
    path = shaped_path(frame, shape)
    found = {}
    for side in CLOCKWISE:
        own = tuple(edge for edge in path if edge.side is side)
        if own:
            found[side] = SideLine(side=side, edges=own[::-1] if side in TURNED else own)
    return found


def told_lines(lines: Mapping[Side, SideLine]) -> Mapping[Side, SideLine]:
    """Return the sides of a shape; nothing of a rectangle, whose sides are told by their two ends."""
    edges = [edge for line in lines.values() for edge in line.edges]
    is_square = all(edge.center is None and 0.0 in edge.way for edge in edges)
    return {} if is_square and len(edges) == len(CLOCKWISE) else lines


def meetings(lines: Mapping[Side, SideLine]) -> tuple[Meeting, ...]:
    """Return the corners that two sides share."""
    ends = [(side, at) for side in lines for at in (0, -1)]
    points = {end: _end_point(lines, end) for end in ends}
    return tuple(
        (one, two)
        for i, one in enumerate(ends)
        for two in ends[i + 1 :]
        if one[0] is not two[0] and points[one] == points[two]
    )


def _end_point(lines: Mapping[Side, SideLine], end: tuple[Side, int]) -> Point:
    side, at = end
    edge = lines[side].edges[at]
    return edge.start if (at == 0) is (side not in TURNED) else edge.finish
