"""A board whose two sides are sawn to arcs, by closed form from its cut list: its corners, its measures, its volume."""

from __future__ import annotations

import math
from dataclasses import dataclass

from jambs.geometry import Circle, Point
from jambs.parts.board.cuts import ArcCut, Edge, End, EndBevel, Miter, PlaneCut
from jambs.parts.board.part import Part


@dataclass(frozen=True, slots=True, kw_only=True)
class ArcedBoard:
    """The corners of such a board, along it and out from its inner side [in], at each end the inner and the outer one.

    ``through``: its measure square to the arcs [in].
    """

    hollow: Circle
    round: Circle
    start: tuple[Point, Point]
    finish: tuple[Point, Point]
    through: float

    @property
    def length(self) -> float:
        """Greatest measure along [in]."""
        us = [corner[0] for corner in (*self.start, *self.finish)]
        return max(us) - min(us)

    @property
    def depth(self) -> float:
        """Lowest corner → crown of the round side [in]."""
        low = min(corner[1] for corner in (*self.start, *self.finish))
        return self.round.center[1] + self.round.radius - low

    @property
    def volume(self) -> float:
        """What is left [cu in]: the corners' area, more what the round side bows, less what the hollow side does."""
        (a, b), (d, c) = self.start, self.finish
        ring = (a, d, c, b)
        ends = zip(ring, (*ring[1:], ring[0]), strict=True)
        flat = sum(one[0] * two[1] - two[0] * one[1] for one, two in ends) / 2
        return (flat + _bow(self.round, b, c) - _bow(self.hollow, a, d)) * self.through


def _bow(circle: Circle, start: Point, finish: Point) -> float:
    """Area between an arc and its chord, ``r² (θ - sin θ) / 2`` with ``θ = 2 arcsin (c / 2r)`` [sq in]."""
    sweep = 2 * math.asin(min(math.dist(start, finish) / 2 / circle.radius, 1.0))
    return circle.radius**2 * (sweep - math.sin(sweep)) / 2


def arced_board(part: Part) -> ArcedBoard | None:
    """Return a board whose sides are sawn to arcs; none where they are straight."""
    arcs = [cut for cut in part.shown_cuts if isinstance(cut, ArcCut)]
    if len(arcs) != 2:
        return None
    hollow, outer = sorted(arcs, key=lambda cut: cut.radius)
    on_face = hollow.side.is_on_face
    across = part.width if on_face else part.silhouettes.sizes.thickness
    corners = [_end(part, end, across, (hollow.circle, outer.circle)) for end in End]
    return ArcedBoard(
        hollow=hollow.circle,
        round=outer.circle,
        start=corners[0],
        finish=corners[1],
        through=part.thickness if on_face else part.width,
    )


def _end(part: Part, end: End, across: float, circles: tuple[Circle, Circle]) -> tuple[Point, Point]:
    """Return where the line of an end meets both circles."""
    if part.is_laminated:
        return _bent_end(part, end, circles)
    lean = 0.0
    for cut in part.cuts:
        if isinstance(cut, Miter) and cut.end is end:
            lean = math.tan(math.radians(cut.angle_deg)) * (1.0 if cut.long_edge is Edge.FAR else -1.0)
        if isinstance(cut, EndBevel) and cut.end is end:
            lean = math.tan(math.radians(cut.angle_deg)) * (1.0 if cut.face_short else -1.0)
    # The long point keeps the full length; ``lean`` is how much farther the end lies for each inch out.
    sign, full = (-1.0, 0.0) if end is End.START else (1.0, part.length)
    long_out = across if lean > 0 else 0.0
    one, two = (_meet(circle, (full - sign * lean * long_out, 0.0), sign * lean) for circle in circles)
    return one, two


def _bent_end(part: Part, end: End, circles: tuple[Circle, Circle]) -> tuple[Point, Point]:
    """Return the corners of a bent piece: on the plane it is sawn along, or level with its lower side."""
    for cut in part.shown_cuts:
        if isinstance(cut, PlaneCut) and cut.at is end:
            (u0, _, w0), (u1, _, w1) = cut.flat.start, cut.flat.finish
            return (u0, w0), (u1, w1)
    sign = -1.0 if end is End.START else 1.0
    one, two = (
        (circle.center[0] + sign * math.sqrt(circle.radius**2 - circle.center[1] ** 2), 0.0) for circle in circles
    )
    return one, two


def _meet(circle: Circle, foot: Point, lean: float) -> Point:
    """Where a line from a foot, leaned along so much for each inch out, leaves a circle."""
    x, y = foot[0] - circle.center[0], foot[1] - circle.center[1]
    a, b, c = 1 + lean * lean, x * lean + y, x * x + y * y - circle.radius**2
    out = (-b + math.sqrt(b * b - a * c)) / a
    return (foot[0] + lean * out, foot[1] + out)
