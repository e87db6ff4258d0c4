"""One edge of a frame's outline, straight or an arc, and the closed path that edges make.

Paths lie in the plane of the window, x right and y up from the frame's lower left corner, and run clockwise as seen
from inside: up the left leg, along the head, down the right leg, back along the sill.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from jambs.geometry import FULL_TURN, Circle, Point
from jambs.sides import Side


@dataclass(frozen=True, slots=True, kw_only=True)
class FrameEdge:
    """One edge of a path, from corner to corner (x, y) [in]: straight, or an arc that bows out round ``center``.

    ``side``: the side of the opening it belongs to. A side may be parted into several edges, as the head of a gable:
    ``run`` counts its ``runs`` from left to right.
    """

    side: Side
    start: Point
    finish: Point
    run: int = 1
    runs: int = 1
    center: Point | None = None

    @property
    def circle(self) -> Circle | None:
        """The circle of an arc; nothing where the edge is straight."""
        return Circle(center=self.center, radius=math.dist(self.center, self.start)) if self.center else None

    @property
    def length(self) -> float:
        """From corner to corner, along an arc [in]."""
        if circle := self.circle:
            return circle.radius * circle.sweep(self.start, self.finish, clockwise=True)
        return math.dist(self.start, self.finish)

    @property
    def crown(self) -> Point:
        """Its middle: of a level arch its highest point."""
        (x0, y0), (x1, y1) = self.start, self.finish
        middle = ((x0 + x1) / 2, (y0 + y1) / 2)
        if circle := self.circle:
            across, up = self.outward
            (x, y), radius = circle.center, circle.radius
            return (x + radius * across, y + radius * up)
        return middle

    @property
    def extremes(self) -> tuple[Point, ...]:
        """Where an arc lies farthest left, up, right and down, of those places that are on it."""
        circle = self.circle
        if circle is None:
            return ()
        sweep = circle.sweep(self.start, self.finish, clockwise=True)
        places = [circle.at(quarter * FULL_TURN / 4) for quarter in range(4)]
        return tuple(one for one in places if circle.sweep(self.start, one, clockwise=True) < sweep)

    @property
    def points(self) -> tuple[Point, ...]:
        """Its start, and the points of a fine outline along an arc, without its finish."""
        circle = self.circle
        return (self.start, *(circle.between(self.start, self.finish, clockwise=True) if circle else ()))

    def way_at(self, corner: Point) -> Point:
        """The direction in which it runs at one of its corners, of length one."""
        if self.center is None:
            return self.way
        (x, y), (cx, cy) = corner, self.center
        radius = math.dist(corner, self.center)
        return ((y - cy) / radius, (cx - x) / radius)

    @property
    def way(self) -> Point:
        """The direction in which it runs, of an arc as a whole, of length one."""
        length = math.dist(self.start, self.finish)
        return ((self.finish[0] - self.start[0]) / length + 0.0, (self.finish[1] - self.start[1]) / length + 0.0)

    @property
    def outward(self) -> Point:
        """The direction out of the opening, of length one."""
        x, y = self.way
        return (-y + 0.0, x)

    def out(self, point: Point) -> float:
        """How far a point lies outside this edge [in]."""
        if circle := self.circle:
            return circle.past(point)
        (x, y), (across, up) = self.start, self.outward
        return (point[0] - x) * across + (point[1] - y) * up

    @property
    def is_middle(self) -> bool:
        """Say whether a section through the middle of its side cuts it."""
        return self.run == (self.runs + 1) // 2


FramePath = tuple[FrameEdge, ...]
"""A closed path: every edge begins where the one before it ends."""
