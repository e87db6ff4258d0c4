"""An opening as a closed path of straight edges, each at its own flare: where every board lies and what planes end it.

The path lies in the plane of the frame's inside edge and runs clockwise as seen from inside. A board lies along every
edge: its face leaves the frame at the edge and leans out by the flare toward the room; frame and finished wall are the
planes of its long edges, its ends are planes of its corners. A rectangle without flare is the plain case.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import Enum

from jambs.geometry import Point, Vector, dot
from jambs.sides import Side

NEARLY_LINE_DEG = 1.0
"""Two edges that turn by less than this are one edge [degrees]."""


class CornerJoint(Enum):
    """How the boards of two edges meet, the one before the corner and the one after it, as the path runs."""

    MITER = "miter"
    BEFORE_RUNS_THROUGH = "the board before runs through"
    AFTER_RUNS_THROUGH = "the board after runs through"

    def runs_through(self, *, is_after: bool) -> bool:
        """Say whether one of the two boards covers the other's end."""
        return self is (CornerJoint.AFTER_RUNS_THROUGH if is_after else CornerJoint.BEFORE_RUNS_THROUGH)


@dataclass(frozen=True, slots=True, kw_only=True)
class PathEdge:
    """One edge of an opening's path, from its corner to the next.

    ``corner``: where it starts (x, y) [in]. ``flare_deg``: how far its board leans out, off the window's normal.
    ``joint``: of the corner where it starts; ``rabbet``: how far the stopped board runs into the other's face there
    [in]. ``thickness``: of its board [in]. ``depths``: frame's inside edge → room edge of the board at its start and
    at its finish [in]. ``is_board``: False where the others stand on something else: a stool, a floor.
    ``run``, ``runs``: which edge of its side it is, from the left, in a shape that is no rectangle.
    """

    side: Side
    corner: Point
    flare_deg: float = 0.0
    joint: CornerJoint
    rabbet: float = 0.0
    thickness: float
    depths: Point
    is_board: bool = True
    run: int = 1
    runs: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Lie:
    """The three directions of a board on its edge, and of the way from the opening into the wall (x, y, d)."""

    along: Vector
    across: Vector
    through: Vector
    outward: Vector


def lie(start: Point, finish: Point, flare_deg: float) -> Lie:
    """Return how a board lies from one corner of the path to the next: its near edge at the frame, its face inward."""
    x, y = finish[0] - start[0], finish[1] - start[1]
    length = math.hypot(x, y)
    x, y = x / length, y / length
    sine, cosine = math.sin(math.radians(flare_deg)), math.cos(math.radians(flare_deg))
    # 0.0 is added so that no direction is minus nothing.
    return Lie(
        along=(x, y, 0.0),
        across=(-y * sine + 0.0, x * sine + 0.0, -cosine),
        through=(-y * cosine + 0.0, x * cosine, sine),
        outward=(-y + 0.0, x, 0.0),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class EndPlane:
    """The plane that ends a board at a corner, in directions of the board: ``along·u + across·v + through·w = past``.

    u from the corner along the board, v from the frame across its face, w from its face to its back [in].
    """

    along: float
    across: float
    through: float
    past: float

    def at(self, v: float, w: float) -> float:
        """Place along the board, from the corner, where a line along the grain ends [in]."""
        return (self.past - self.across * v - self.through * w) / self.along


def end_plane(board: Lie, other: Lie, one: PathEdge, two: PathEdge, corner: PathEdge, *, is_after: bool) -> EndPlane:
    """Return the plane that ends a board where it meets the other board of a corner.

    Mitered, it holds both arrises in which the faces and the backs meet; butted, it is the other's face (or lies
    ``rabbet`` behind it) or its back.
    """
    along, across, through = (dot(way, other.through) for way in (board.along, board.across, board.through))
    if corner.joint is not CornerJoint.MITER:
        past = two.thickness if corner.joint.runs_through(is_after=is_after) else corner.rabbet
        return EndPlane(along=along, across=across, through=through, past=past)
    share = one.thickness / two.thickness
    return EndPlane(along=share * along, across=share * across, through=share * through - 1.0, past=0.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardPlanes:
    """A board of a path before it is cut: how it lies, from which corner, how long its edge is, what ends it.

    ``start_corner``, ``finish_corner``: the edges that begin where this one begins and ends.
    """

    edge: PathEdge
    lie: Lie
    span: float
    start: EndPlane
    finish: EndPlane
    start_corner: PathEdge
    finish_corner: PathEdge
    before: Lie
    after: Lie


def path_boards(path: tuple[PathEdge, ...]) -> tuple[BoardPlanes, ...]:
    """Lay a board along every edge of a closed path that is one, ended by the planes of its corners.

    Raises:
        ValueError: the path does not close round an opening.
    """
    if fault := path_fault(tuple(edge.corner for edge in path)):
        raise ValueError(fault)
    count = len(path)
    lies = [lie(path[i].corner, path[(i + 1) % count].corner, path[i].flare_deg) for i in range(count)]
    return tuple(_board(path, lies, i) for i in range(count) if path[i].is_board)


def _board(path: tuple[PathEdge, ...], lies: list[Lie], i: int) -> BoardPlanes:
    after = (i + 1) % len(path)
    edge, before, finish = path[i], path[i - 1], path[after]
    return BoardPlanes(
        edge=edge,
        lie=lies[i],
        span=math.dist(edge.corner, finish.corner),
        start=end_plane(lies[i], lies[i - 1], edge, before, edge, is_after=True),
        finish=end_plane(lies[i], lies[after], edge, finish, finish, is_after=False),
        start_corner=edge,
        finish_corner=finish,
        before=lies[i - 1],
        after=lies[after],
    )


def path_fault(corners: tuple[Point, ...]) -> str:
    """Say what is wrong with a path of corners; nothing where it runs clockwise once round an opening."""
    count = len(corners)
    if count < 3:
        return f"a path of {count} corners closes round nothing; give three or more"
    for i in range(count):
        if math.dist(corners[i], corners[(i + 1) % count]) == 0.0:
            return f"corners {i + 1} and {(i + 1) % count + 1} are one point; leave one out"
    if any(_cross(corners, i, j) for i in range(count) for j in range(i + 2, count) if (j + 1) % count != i):
        return "the path crosses itself; list its corners in order, clockwise as seen from inside"
    if _area(corners) > 0:
        return "the path runs counterclockwise; list its corners clockwise as seen from inside"
    for i in range(count):
        if abs(turn_deg(corners, i)) < NEARLY_LINE_DEG:
            return f"corner {i + 1} lies on a straight edge; leave it out"
    return ""


def turn_deg(corners: tuple[Point, ...], i: int) -> float:
    """How far the path turns right at a corner: 90 in a rectangle, negative where the wall juts in [degrees]."""
    a, b, c = corners[i - 1], corners[i], corners[(i + 1) % len(corners)]
    ahead, then = math.atan2(b[1] - a[1], b[0] - a[0]), math.atan2(c[1] - b[1], c[0] - b[0])
    return (math.degrees(ahead - then) + 180.0) % 360.0 - 180.0


def _area(corners: tuple[Point, ...]) -> float:
    pairs = zip(corners, corners[1:] + corners[:1], strict=True)
    return sum(a[0] * b[1] - b[0] * a[1] for a, b in pairs) / 2


def _cross(corners: tuple[Point, ...], i: int, j: int) -> bool:
    count = len(corners)
    a, b, c, d = corners[i], corners[(i + 1) % count], corners[j], corners[(j + 1) % count]
    return _sided(a, b, c) * _sided(a, b, d) <= 0 and _sided(c, d, a) * _sided(c, d, b) <= 0


def _sided(a: Point, b: Point, c: Point) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
