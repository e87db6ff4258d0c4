"""Casing on a measured wall: it lies on the plane that the jambs' edges make, not on the planned one.

A kit is laid out for a flat, plumb wall. Where depths were measured, the jambs follow the wall and so must what is
nailed to them: casing and apron inside, casing and flashing outside, each set moved as one rigid thing.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from jambs.geometry import OUTWARD, Vector, added, cross, dot, minus, unit
from jambs.parts.board.cuts import Edge
from jambs.parts.board.kinds import BUILT_UP, PartKind, Where
from jambs.parts.board.part import Part, Seat
from jambs.parts.kit.kit import Kit

NAILED_ON = (PartKind.CASING, PartKind.APRON, PartKind.HEAD_FLASHING, *BUILT_UP)


@dataclass(frozen=True, slots=True, kw_only=True)
class Slack:
    """How far joints of the casing can be off because the measured wall is out of plane [in].

    ``hollow``: the most a jamb's edge stands behind the flat casing. ``slope``: how far the wall leans over an inch,
    where it is out of plumb. ``thickness``: of the casing. Nothing on a planned wall.
    """

    hollow: float = 0.0
    slope: float = 0.0
    thickness: float = 0.0

    @property
    def lean(self) -> float:
        """How much the casing leans over its own thickness [in]."""
        return self.slope * self.thickness

    def lean_of(self, part: Part) -> float:
        """How much a part that is hung with the casing leans: one that is thicker leans by more [in]."""
        return self.slope * max(part.thickness, self.thickness)

    def seen_shorter(self, length: float) -> float:
        """How much less a length of the casing takes of the wall's breadth because it leans [in]."""
        return self.slope**2 / 2 * length

    @property
    def gap(self) -> float:
        """The most that casing and jamb may stand apart [in]."""
        return self.hollow + self.lean


@dataclass(frozen=True, slots=True, kw_only=True)
class Hung:
    """Seats of all parts of a kit as hung, and the slack that the wall makes inside and outside.

    ``beside``: those of the boards at openings that are trimmed as one with it.
    """

    seats: tuple[Seat, ...]
    inside: Slack = Slack()
    outside: Slack = Slack()
    beside: tuple[Seat, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class CasingPlane:
    """The plane ``d = at + across·x + up·y`` in the wall, and how far the points it rests on lie behind it [in]."""

    at: float
    across: float
    up: float
    hollow: float

    def depth(self, x: float, y: float) -> float:
        """Depth of the plane at a place of the wall [in]."""
        return self.at + self.across * x + self.up * y


def hung(kit: Kit) -> Hung:
    """Hang the casing of a measured kit on its jambs; a planned kit stays as it was laid out.

    What goes past several openings hangs on the jambs of them all, as soon as one of them was measured.
    """
    found = Hung(seats=tuple(part.seat for part in kit.parts), beside=tuple(part.seat for part in kit.beside))
    for where in (Where.INTERIOR, Where.EXTERIOR):
        if hangs_as_read(kit, where):
            found = _hang(kit, found, where)
    return found


def farthest_behind(kit: Kit, where: Where) -> tuple[str, float] | None:
    """Return the opening whose jamb ends farthest behind the casing that goes past several, and how far [in].

    None where nothing was read on that side of the wall, or nothing lies over jambs.
    """
    jambs = [part for part in (*kit.parts, *kit.beside) if part.where is where and part.kind.is_jamb]
    if kit.run is None or not jambs or not hangs_as_read(kit, where):
        return None
    sign = -1.0 if where is Where.INTERIOR else 1.0
    edges = [(part.opening, point) for part in jambs for point in outer_edge(part)]
    plane = plane_over([point for _, point in edges], sign)
    return max(((mark, sign * (plane.depth(x, y) - d)) for mark, (x, y, d) in edges), key=lambda one: one[1])


def hangs_as_read(kit: Kit, where: Where) -> bool:
    """Say whether casing on one side of the wall hangs on a measured one: of any opening that it goes past."""
    members = kit.run.members if kit.run else ()
    openings = [one.placement.opening for one in members] or [kit.placement.opening]
    read = [one.measured for one in openings if one.measured]
    return any(one.interior_depth if where is Where.INTERIOR else one.exterior_depth for one in read)


def _hang(kit: Kit, found: Hung, where: Where) -> Hung:
    sign = -1.0 if where is Where.INTERIOR else 1.0
    jambs = [part for part in (*kit.parts, *kit.beside) if part.where is where and part.kind.is_jamb]
    edges = [point for part in jambs for point in outer_edge(part)]
    casing = [part for part in kit.parts if part.where is where and part.kind is PartKind.CASING]
    if not edges or not casing:
        return found
    plane = plane_over(edges, sign)
    x, y = (sum(point[axis] for point in edges) / len(edges) for axis in (0, 1))
    back = casing[0].seat.at(0.0, 0.0, casing[0].thickness)[2]
    turn = _turn(plane, (x, y, back))
    hangs = nailed_on(kit, where)
    seats, beside = (
        tuple(
            turn(seat) if part.where is where and part.kind in hangs else seat
            for part, seat in zip(parts, stood, strict=True)
        )
        for parts, stood in ((kit.parts, found.seats), (kit.beside, found.beside))
    )
    loose = Slack(hollow=plane.hollow, slope=abs(plane.across) + abs(plane.up), thickness=casing[0].thickness)
    if where is Where.INTERIOR:
        return replace(found, seats=seats, beside=beside, inside=loose)
    return replace(found, seats=seats, beside=beside, outside=loose)


def nailed_on(kit: Kit, where: Where) -> frozenset[PartKind]:
    """Return what is nailed to the edges of the jambs on one side of the wall: the casing of a boxed mull too.

    So is that on a wall between openings that are trimmed as one.
    """
    is_boxed = kit.run is not None or any(part.where is where and part.kind is PartKind.MULL_JAMB for part in kit.parts)
    return frozenset((*NAILED_ON, PartKind.MULL_CASING) if is_boxed else NAILED_ON)


def outer_edge(part: Part) -> list[Vector]:
    """Corners of a jamb's far edge, face and back, at both ends (x, y, d) [in]."""
    if part.is_leaned:
        far = (ends for arris, ends in part.corners.items() if arris.edge is Edge.FAR)
        return [part.seat.at(*point) for ends in far for point in ends]
    board = part.silhouettes.sizes
    ends = ((0.0, board.start_width), (board.length, board.finish_width))
    return [part.seat.at(u, v, w) for u, v in ends for w in (0.0, part.thickness)]


def plane_over(points: Sequence[Vector], sign: float) -> CasingPlane:
    """Lay a plane over points: least squares, then moved along the depth axis until none stands past it.

    ``sign``: -1 where the plane lies on the room side, 1 where it lies outside.
    """
    import numpy as np

    rows = np.array([(1.0, x, y) for x, y, _ in points])
    depths = np.array([d for _, _, d in points])
    at, across, up = (float(value) for value in np.linalg.lstsq(rows, depths, rcond=None)[0])
    off = [sign * (d - at - across * x - up * y) for x, y, d in points]
    return CasingPlane(at=at + sign * max(off), across=across, up=up, hollow=max(off) - min(off))


def _turn(plane: CasingPlane, pivot: Vector) -> Callable[[Seat], Seat]:
    """Return the rigid move that lays the plane ``d = pivot's depth`` on the plane given."""
    normal = unit((-plane.across, -plane.up, 1.0))
    axis, cosine = cross(OUTWARD, normal), dot(OUTWARD, normal)
    target = (pivot[0], pivot[1], plane.depth(pivot[0], pivot[1]))

    def turned(way: Vector) -> Vector:
        once = cross(axis, way)
        return added(added(way, once), cross(axis, once), 1 / (1 + cosine))

    def move(seat: Seat) -> Seat:
        return Seat(
            origin=added(target, turned(minus(seat.origin, pivot))),
            along=turned(seat.along),
            across=turned(seat.across),
            through=turned(seat.through),
        )

    return move
