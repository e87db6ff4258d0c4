"""Boxes and line pieces on paper: do they touch?"""

from __future__ import annotations

import itertools
from collections.abc import Iterable
from dataclasses import dataclass

from jambs.geometry import Point

Segment = tuple[Point, Point]
NEAR = 1e-9
"""Edges nearer than this touch [in]."""
NO_STEP = 1e-15
"""A line piece that goes no farther one way runs square to it [in]."""
NO_TURN = 1e-9
"""Twice the area that three points enclose, under which they lie on one line [sq in]."""


@dataclass(frozen=True, slots=True)
class Box:
    """An upright rectangle."""

    left: float
    bottom: float
    right: float
    top: float

    @property
    def width(self) -> float:
        """From left to right."""
        return self.right - self.left

    @property
    def height(self) -> float:
        """From bottom to top."""
        return self.top - self.bottom

    @property
    def center(self) -> Point:
        """The middle."""
        return ((self.left + self.right) / 2, (self.bottom + self.top) / 2)

    def grown(self, by: float) -> Box:
        """Return the box with a margin all round."""
        return Box(self.left - by, self.bottom - by, self.right + by, self.top + by)

    def moved(self, dx: float, dy: float) -> Box:
        """Return the box moved."""
        return Box(self.left + dx, self.bottom + dy, self.right + dx, self.top + dy)

    def joined(self, other: Box) -> Box:
        """Return the least box that holds both."""
        return Box(
            min(self.left, other.left),
            min(self.bottom, other.bottom),
            max(self.right, other.right),
            max(self.top, other.top),
        )

    def holds(self, other: Box) -> bool:
        """Say whether the other box lies inside."""
        return (
            self.left <= other.left + NEAR
            and self.bottom <= other.bottom + NEAR
            and other.right <= self.right + NEAR
            and other.top <= self.top + NEAR
        )

    def overlaps(self, other: Box) -> bool:
        """Say whether the two boxes share more than an edge."""
        return (
            self.left < other.right - NEAR
            and other.left < self.right - NEAR
            and self.bottom < other.top - NEAR
            and other.bottom < self.top - NEAR
        )

    def is_hit_by(self, segment: Segment) -> bool:
        """Say whether a line piece enters the box (touching its edge does not count)."""
        (x0, y0), (x1, y1) = segment
        enter, leave = 0.0, 1.0
        for start, step, low, high in (
            (x0, x1 - x0, self.left + NEAR, self.right - NEAR),
            (y0, y1 - y0, self.bottom + NEAR, self.top - NEAR),
        ):
            if abs(step) < NO_STEP:
                if not low < start < high:
                    return False
                continue
            ends = sorted(((low - start) / step, (high - start) / step))
            enter, leave = max(enter, ends[0]), min(leave, ends[1])
        return enter < leave


def box_around(points: Iterable[Point]) -> Box:
    """Return the least box around points."""
    xs, ys = zip(*points, strict=True)
    return Box(min(xs), min(ys), max(xs), max(ys))


def boxes_joined(boxes: Iterable[Box]) -> Box:
    """Return the least box around boxes."""
    some = list(boxes)
    return Box(
        min(box.left for box in some),
        min(box.bottom for box in some),
        max(box.right for box in some),
        max(box.top for box in some),
    )


def segments_of(points: tuple[Point, ...], *, closed: bool = False) -> list[Segment]:
    """Return the pieces of a line through points."""
    pairs = list(itertools.pairwise(points))
    return [*pairs, (points[-1], points[0])] if closed and len(points) > 2 else pairs


def crossing(first: Segment, second: Segment) -> bool:
    """Say whether two line pieces cross at a point inside both."""
    a, b = first
    c, d = second
    return _turn(a, b, c) * _turn(a, b, d) < -(NO_TURN**2) and _turn(c, d, a) * _turn(c, d, b) < -(NO_TURN**2)


def _turn(a: Point, b: Point, c: Point) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
