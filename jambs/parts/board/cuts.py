"""The cuts that make a part out of its blank.

Board coordinates [in]: ``u`` along the grain from the start end, ``v`` across the width, ``w`` through the thickness
from the board's face (w = 0) to its back (w = thickness). A cut off square is a plane in them: a miter and an edge
taper contain the way through the thickness, an end bevel the way across, an edge bevel the grain. A plane that
contains none of the three is a compound angle, miter and bevel at once (``PlaneCut``, ``saw_angles``).
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import Enum

from jambs.findings import FindingsError
from jambs.geometry import Circle, Outline, Plane, Point, Vector, tangent

ALONG: Vector = (1.0, 0.0, 0.0)
ACROSS: Vector = (0.0, 1.0, 0.0)
THROUGH: Vector = (0.0, 0.0, 1.0)


class End(Enum):
    """The start (u = 0) or the finish (u = length) of a board."""

    START = "start"
    FINISH = "finish"


class Edge(Enum):
    """The near edge (v = 0) or the far edge (v = width) of a board."""

    NEAR = "near"
    FAR = "far"


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardSizes:
    """A board as ripped, tapered and cut to length [in]: what an angled cut is laid out on."""

    length: float
    width: float
    thickness: float
    start_width: float
    finish_width: float

    def width_at(self, end: End) -> float:
        """Width of the board at one end [in]."""
        return self.start_width if end is End.START else self.finish_width

    def in_from(self, end: End, along: float) -> float:
        """Place along the grain a way in from one end [in]."""
        return along if end is End.START else self.length - along

    def short_side(self, end: End, back: float) -> float:
        """Place along the grain at which a slanted end's short side stops, taped from the other end [in]."""
        short = self.length - back
        return short if end is End.FINISH else self.length - short

    @property
    def middle(self) -> float:
        """Half the length [in]."""
        return self.length / 2


@dataclass(frozen=True, slots=True, kw_only=True)
class Rip:
    """Rip along the grain to a parallel width."""

    width: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Taper:
    """Rip the far edge to a taper: width at the start and at the finish end."""

    start_width: float
    finish_width: float

    def plane(self, board: BoardSizes) -> Plane:
        """The plane along the far edge."""
        start, finish = (0.0, self.start_width, 0.0), (board.length, self.finish_width, 0.0)
        return Plane(start=start, finish=finish, way=THROUGH, keep=(0.0, 0.0, 0.0))


@dataclass(frozen=True, slots=True, kw_only=True)
class Crosscut:
    """Cut both ends square to a length."""

    length: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Miter:
    """Cut one end at an angle across the face, off square; ``long_edge`` keeps the full length."""

    end: End
    angle_deg: float
    long_edge: Edge

    def plane(self, board: BoardSizes) -> Plane:
        """The plane from the long point across the face."""
        wide = board.width_at(self.end)
        long_v, short_v = (wide, 0.0) if self.long_edge is Edge.FAR else (0.0, wide)
        short_u = board.short_side(self.end, wide * tangent(self.angle_deg))
        start, finish = (board.in_from(self.end, 0.0), long_v, 0.0), (short_u, short_v, 0.0)
        return Plane(start=start, finish=finish, way=THROUGH, keep=(board.middle, long_v, 0.0))


@dataclass(frozen=True, slots=True, kw_only=True)
class EndBevel:
    """Cut one end at an angle through the thickness, off square; the back is the short side unless ``face_short``."""

    end: End
    angle_deg: float
    face_short: bool = False

    def plane(self, board: BoardSizes) -> Plane:
        """The plane from the long side through the thickness."""
        long_w, short_w = (board.thickness, 0.0) if self.face_short else (0.0, board.thickness)
        short_u = board.short_side(self.end, board.thickness * tangent(self.angle_deg))
        start, finish = (board.in_from(self.end, 0.0), 0.0, long_w), (short_u, 0.0, short_w)
        return Plane(start=start, finish=finish, way=ACROSS, keep=(board.middle, 0.0, long_w))


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgeBevel:
    """Plane or rip one edge at an angle through the thickness; ``face_short``: material goes at the face."""

    edge: Edge
    angle_deg: float
    face_short: bool

    def plane(self, board: BoardSizes) -> Plane:
        """The plane from the long side through the thickness."""
        v, inward = (0.0, 1.0) if self.edge is Edge.NEAR else (board.width, -1.0)
        long_w, short_w = (board.thickness, 0.0) if self.face_short else (0.0, board.thickness)
        back = board.thickness * tangent(self.angle_deg) * inward
        start, finish = (0.0, v, long_w), (0.0, v + back, short_w)
        return Plane(start=start, finish=finish, way=ALONG, keep=(0.0, board.width / 2, long_w))


@dataclass(frozen=True, slots=True, kw_only=True)
class PlaneCut:
    """Cut one end or one edge along any plane, laid out on the board as ripped and cut to length: a compound angle."""

    at: End | Edge
    flat: Plane

    def plane(self, board: BoardSizes) -> Plane:
        """The plane as laid out."""
        return self.flat


def compound_miter(
    board: BoardSizes, end: End, *, miter_deg: float, bevel_deg: float, long_edge: Edge, face_short: bool = False
) -> PlaneCut:
    """Lay out an end by the settings of the saw, miter and bevel at once [degrees off square].

    The long point stands at ``long_edge``, on the face unless ``face_short``, and keeps the full length.
    """
    wide = board.width_at(end)
    long_v, short_v = (wide, 0.0) if long_edge is Edge.FAR else (0.0, wide)
    long_w, short_w = (board.thickness, 0.0) if face_short else (0.0, board.thickness)
    long_u, short_u = board.in_from(end, 0.0), board.short_side(end, wide * tangent(miter_deg))
    inward = 1.0 if end is End.START else -1.0
    back = tangent(bevel_deg) / math.cos(math.radians(miter_deg))
    way = (inward * back, 0.0, 1.0 if short_w > long_w else -1.0)
    plane = Plane(
        start=(long_u, long_v, long_w),
        finish=(short_u, short_v, long_w),
        way=way,
        keep=(board.middle, long_v, long_w),
    )
    return PlaneCut(at=end, flat=plane)


@dataclass(frozen=True, slots=True, kw_only=True)
class EndRabbet:
    """Rabbet across one end, into the face: ``along`` the grain from the end, ``depth`` from the face."""

    end: End
    along: float
    depth: float


@dataclass(frozen=True, slots=True, kw_only=True)
class PlaneRabbet:
    """Rabbet across one end, into the face, its shoulder along any plane; ``depth`` from the face."""

    end: End
    flat: Plane
    depth: float


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgeRabbet:
    """Rabbet along one edge, into the face or the back: ``across`` from the edge, ``depth`` from that face."""

    edge: Edge
    across: float
    depth: float
    from_back: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Notch:
    """Cut a rectangle out of one corner: ``along`` the grain from the end, ``across`` from the edge."""

    end: End
    edge: Edge
    along: float
    across: float


@dataclass(frozen=True, slots=True, kw_only=True)
class SlantedNotch(Notch):
    """A notch whose inner end is not square to the edge: ``along`` at the edge, ``along_inside`` at its far side."""

    along_inside: float


@dataclass(frozen=True, slots=True, kw_only=True)
class MidNotch:
    """Cut a rectangle out of an edge between the ends: ``along`` the grain, ``across`` from the edge.

    ``start``: start end of the board → where it begins.
    """

    edge: Edge
    start: float
    along: float
    across: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Groove:
    """A kerf along the whole length in the back: its near side ``from_edge``, ``width`` wide, ``depth`` deep."""

    edge: Edge
    from_edge: float
    width: float
    depth: float


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgeGroove:
    """A groove along the whole length of an edge: its near side ``from_face``, ``width`` wide, ``depth`` deep."""

    edge: Edge
    from_face: float
    width: float
    depth: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Tenon:
    """Thin one end to a tenon, or to a tongue: ``along`` the grain, ``face`` and ``back`` off those sides."""

    end: End
    along: float
    face: float
    back: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Molded:
    """Run the face to a section along the whole length: ``section`` (v, w), what stays of the board's end."""

    section: Outline


class CurvedSide(Enum):
    """Which side of a board is sawn to an arc: an edge, the board lying flat; its face or back, the board on edge."""

    NEAR = "near edge"
    FAR = "far edge"
    FACE = "face"
    BACK = "back"

    @property
    def is_hollow(self) -> bool:
        """Say whether the side is sawn hollow: what looks into the opening. The side away from it is sawn round."""
        return self in (CurvedSide.NEAR, CurvedSide.FACE)

    @property
    def is_on_face(self) -> bool:
        """Say whether the arc is laid out on the board's face (u, v), not on its edge (u, w)."""
        return self in (CurvedSide.NEAR, CurvedSide.FAR)


@dataclass(frozen=True, slots=True, kw_only=True)
class ArcCut:
    """Saw one side to an arc by its template: ``center`` (u, v) for an edge, (u, w) for face or back [in]."""

    side: CurvedSide
    center: Point
    radius: float

    @property
    def circle(self) -> Circle:
        """The circle of the arc, on the face or on the edge of the board."""
        return Circle(center=self.center, radius=self.radius)


@dataclass(frozen=True, slots=True, kw_only=True)
class Bent:
    """Bend the board along its length: ``outline``, what is seen of it on its edge (u, w), arcs in fine points [in]."""

    outline: Outline


@dataclass(frozen=True, slots=True, kw_only=True)
class BentArc(ArcCut):
    """One of the arcs that a board is bent to: it takes nothing off."""


Cut = (
    Rip
    | Taper
    | Crosscut
    | Miter
    | EndBevel
    | EdgeBevel
    | PlaneCut
    | EndRabbet
    | PlaneRabbet
    | EdgeRabbet
    | Notch
    | MidNotch
    | Groove
    | EdgeGroove
    | Tenon
    | Molded
    | ArcCut
    | Bent
)


def end_of(cut: Cut) -> End | None:
    """Return the end that a cut takes off at an angle; nothing for any other cut."""
    if isinstance(cut, Miter | EndBevel):
        return cut.end
    return cut.at if isinstance(cut, PlaneCut) and isinstance(cut.at, End) else None


def edge_of(cut: Cut) -> Edge | None:
    """Return the edge along which a cut leaves a plane other than the blank's; nothing for any other cut."""
    if isinstance(cut, EdgeBevel):
        return cut.edge
    if isinstance(cut, Taper):
        return Edge.FAR
    return cut.at if isinstance(cut, PlaneCut) and isinstance(cut.at, Edge) else None


def saw_angles(plane: Plane) -> tuple[float, float]:
    """Return how a saw is set for a plane across a board that lies on its back: miter and bevel, off square [degrees].

    The blade is turned by the miter about the upright, then leaned by the bevel.
    """
    u, v, w = plane.normal
    return math.degrees(math.atan2(abs(v), abs(u))), math.degrees(math.atan2(abs(w), math.hypot(u, v)))


class CannotBeCut(FindingsError):
    """A part that cannot be cut as asked."""
