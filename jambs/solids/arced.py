"""A board whose two sides are sawn to arcs, by closed form from its cut list: its corners, its measures, its volume."""

from __future__ import annotations

import math
from dataclasses import dataclass

from jambs.geometry import Circle, Point
from jambs.parts.board.cuts import ArcCut, Edge, End, EndBevel, Miter, PlaneCut
from jambs.parts.board.part import Part


@dataclass(frozen=True, slots=True, kw_only=True)
class ArcedSection:
    """The corners of such a board in one plane of its arcs, along it and out from its inner side [in].

    At each end the inner and the outer one.
    """

    hollow: Circle
    round: Circle
    start: tuple[Point, Point]
    finish: tuple[Point, Point]

    @property
    def corners(self) -> tuple[Point, ...]:
        """All four."""
        return (*self.start, *self.finish)

    @property
    def area(self) -> float:
        """What is left [sq in]: the corners' area, more what the round side bows, less what the hollow side does."""
        (a, b), (d, c) = self.start, self.finish
        ring = (a, d, c, b)
        ends = zip(ring, (*ring[1:], ring[0]), strict=True)
        flat = sum(one[0] * two[1] - two[0] * one[1] for one, two in ends) / 2
        return flat + _bow(self.round, b, c) - _bow(self.hollow, a, d)


@dataclass(frozen=True, slots=True, kw_only=True)
class ArcedBoard:
    """Such a board: its sections at both of its flat sides and halfway, which differ where it stands on a sloping sill.

    ``through``: its measure square to the arcs [in].
    """

    sections: tuple[ArcedSection, ArcedSection, ArcedSection]
    through: float

    @property
    def length(self) -> float:
        """Greatest measure along [in]."""
        us = [corner[0] for section in self.sections for corner in section.corners]
        return max(us) - min(us)

    @property
    def depth(self) -> float:
        """Lowest corner → crown of the round side [in]."""
        low = min(corner[1] for section in self.sections for corner in section.corners)
        outer = self.sections[0].round
        return outer.center[1] + outer.radius - low

    @property
    def volume(self) -> float:
        """What is left [cu in]: by three sections, which is exact where the ends lie alike in all (Simpson's rule)."""
        first, middle, last = (section.area for section in self.sections)
        return (first + 4 * middle + last) / 6 * self.through


def _bow(circle: Circle, start: Point, finish: Point) -> float:
    """Area between an arc and its chord, ``r² (θ - sin θ) / 2`` with ``θ = 2 arcsin (c / 2r)`` [sq in]."""
    sweep = 2 * math.asin(min(math.dist(start, finish) / 2 / circle.radius, 1.0))
    return circle.radius**2 * (sweep - math.sin(sweep)) / 2


@dataclass(frozen=True, slots=True, kw_only=True)
class BentInOne:
    """A lamination that is bent to several arcs: its measures [in], and what is left of its block [cu in].

    ``area``: seen on its edge, of pieces of rings, ``θ (R² - r²) / 2`` each [sq in].
    """

    length: float
    depth: float
    through: float
    area: float

    @property
    def volume(self) -> float:
        """What is left [cu in]."""
        return self.area * self.through


def _bent_in_one(part: Part) -> BentInOne:
    """Return its measures by its arcs, hollow and round side of each in turn, the crown first, and by its plies."""
    assert part.blank.plies
    hollow, outer = part.arcs[::2], part.arcs[1::2]
    middle = len(hollow) // 2
    # As the plies have them, from left to right.
    order = (*hollow[1 : middle + 1], hollow[0], *hollow[middle + 1 :])
    rounds = {one: two for one, two in zip(hollow, outer, strict=True)}
    area = 0.0
    pieces = part.blank.plies.pieces
    for one, (_, long) in zip(order, pieces, strict=True):
        area += long / one.radius * (rounds[one].radius ** 2 - one.radius**2) / 2
    end = rounds[order[0]]
    return BentInOne(
        length=2 * (outer[0].center[0] - end.center[0] + end.radius),
        depth=outer[0].center[1] + outer[0].radius,
        through=part.width,
        area=area,
    )


def arced_board(part: Part) -> ArcedBoard | BentInOne | None:
    """Return a board whose sides are sawn to arcs, or bent to them; none where they are straight."""
    if part.is_bent_in_one:
        return _bent_in_one(part)
    arcs = [cut for cut in part.shown_cuts if isinstance(cut, ArcCut)]
    if len(arcs) != 2:
        return None
    hollow, outer = sorted(arcs, key=lambda cut: cut.radius)
    circles = (hollow.circle, outer.circle)
    through = part.thickness if hollow.side.is_on_face else part.width
    first, middle, last = (_section(part, circles, share * through) for share in (0.0, 0.5, 1.0))
    return ArcedBoard(sections=(first, middle, last), through=through)


def _section(part: Part, circles: tuple[Circle, Circle], at: float) -> ArcedSection:
    """Return the corners of a board so far from its face, or its near edge [in]."""
    start, finish = (_end(part, end, circles, at) for end in End)
    return ArcedSection(hollow=circles[0], round=circles[1], start=start, finish=finish)


def _end(part: Part, end: End, circles: tuple[Circle, Circle], at: float) -> tuple[Point, Point]:
    """Return where the line of an end meets both circles."""
    if part.is_laminated:
        return _bent_end(part, end, circles)
    plane = next((cut for cut in part.cuts if isinstance(cut, PlaneCut) and cut.at is end), None)
    if plane:
        foot, lean = _line_of(plane, at, on_edge=part.is_sawn_on_edge)
    else:
        foot, lean = _square_line(part, end)
    one, two = (_meet(circle, foot, lean) for circle in circles)
    return one, two


def _square_line(part: Part, end: End) -> tuple[Point, float]:
    """Return where an end cut square through the board leaves its inner side, and its lean for each inch out."""
    lean = 0.0
    for cut in part.cuts:
        if isinstance(cut, Miter) and cut.end is end:
            lean = math.tan(math.radians(cut.angle_deg)) * (1.0 if cut.long_edge is Edge.FAR else -1.0)
        if isinstance(cut, EndBevel) and cut.end is end:
            lean = math.tan(math.radians(cut.angle_deg)) * (1.0 if cut.face_short else -1.0)
    # The long point keeps the full length.
    across = part.silhouettes.sizes.thickness if part.is_sawn_on_edge else part.width
    sign, full = (-1.0, 0.0) if end is End.START else (1.0, part.length)
    long_out = across if lean > 0 else 0.0
    return (full - sign * lean * long_out, 0.0), sign * lean


def _line_of(cut: PlaneCut, at: float, *, on_edge: bool) -> tuple[Point, float]:
    """The same of an end that is cut to a plane, so far from the face or the near edge [in]."""
    (along, across, through), (u, v, w) = cut.flat.normal, cut.flat.start
    out, level = (through, across) if on_edge else (across, through)
    out_at, level_at = (w, v) if on_edge else (v, w)
    foot = u + (out * out_at - level * (at - level_at)) / along
    return (foot, 0.0), -out / along


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
