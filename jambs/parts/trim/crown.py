"""A crown at its spring angle: its board beveled to stand on the frieze and under the cap, its ends returned.

Across the wall a crown is a board that leans out by its spring angle, between back and wall. Its lower edge is beveled
to lie on the frieze, its upper edge to lie under the cap. At each end of the frieze it turns back to the wall: two
boards meet in the upright plane that halves the corner, which cuts both at a compound angle.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from jambs.findings import Subject, SubjectKind
from jambs.geometry import RIGHT, UP, Plane
from jambs.job.models.built_up import CrownEntry
from jambs.length import ROUND_OFF
from jambs.parts.board.cuts import CannotBeCut, Crosscut, Cut, Edge, EdgeBevel, End, PlaneCut, Rip
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part, PartBlank, Seat
from jambs.parts.findings.built_up_findings import CrownTallerThanFrieze, CrownTooNarrow
from jambs.sides import Side

RIGHT_ANGLE_DEG = 90.0
FAR_DOWN = 1.0


@dataclass(frozen=True, slots=True, kw_only=True)
class CrownSizes:
    """What a crown takes on a wall [in]: ``height`` down from the cap, ``projection`` out from the frieze.

    ``foot``: of its lower edge on the frieze; ``top``: of its upper edge under the cap.
    """

    height: float
    projection: float
    foot: float
    top: float


def crown_sizes(entry: CrownEntry) -> CrownSizes:
    """Work out a crown from its face and its spring angle.

    Its back is narrower than its face by what the two bevels take: ``thickness (tan + cot)`` of the spring.

    Raises:
        CannotBeCut: the bevels meet before they reach the back.
    """
    spring = math.radians(entry.spring_deg)
    back = entry.width - entry.thickness * (math.tan(spring) + 1 / math.tan(spring))
    if back <= ROUND_OFF:
        about = Subject(kind=SubjectKind.PART, name=PartKind.CROWN.words)
        raise CannotBeCut(CrownTooNarrow(subject=about, width=entry.width, least=entry.width - back))
    foot, top = entry.thickness / math.sin(spring), entry.thickness / math.cos(spring)
    return CrownSizes(
        height=back * math.cos(spring) + foot, projection=back * math.sin(spring) + top, foot=foot, top=top
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class FriezeFace:
    """The face a crown stands on [in]: ends and top of the frieze, its face and the back of the casing, as depths."""

    left: float
    right: float
    top: float
    height: float
    face: float
    back: float


def crown_parts(frieze: FriezeFace, entry: CrownEntry) -> tuple[Part, ...]:
    """Make the crown across the frieze and its two returns to the wall.

    Raises:
        CannotBeCut: it is taller than the frieze, or no board is left between its bevels.
    """
    sizes = crown_sizes(entry)
    if sizes.height > frieze.height + ROUND_OFF:
        about = Subject(kind=SubjectKind.PART, name=PartKind.CROWN.words)
        raise CannotBeCut(CrownTallerThanFrieze(subject=about, height=sizes.height, frieze=frieze.height))
    return (_front(frieze, entry, sizes), *(_return(frieze, entry, sizes, side) for side in (Side.LEFT, Side.RIGHT)))


def _front(frieze: FriezeFace, entry: CrownEntry, sizes: CrownSizes) -> Part:
    sine, cosine = _sine(entry), _cosine(entry)
    seat = Seat(
        origin=(frieze.left - sizes.projection, frieze.top - sizes.height, frieze.face),
        along=RIGHT,
        across=(0.0, cosine, -sine),
        through=(0.0, sine, cosine),
    )
    length = frieze.right - frieze.left + 2 * sizes.projection
    planes = ((End.START, frieze.left, -1.0), (End.FINISH, frieze.right, 1.0))
    cuts = (
        PlaneCut(at=end, flat=seat.plane_on_board(_corner(frieze, at, way, on_front=True))) for end, at, way in planes
    )
    return _part(entry, length, seat, tuple(cuts), member=1)


def _return(frieze: FriezeFace, entry: CrownEntry, sizes: CrownSizes, side: Side) -> Part:
    """Make a return: at the right it runs from its miter into the wall, at the left from the wall to its miter."""
    sine, cosine, at_right = _sine(entry), _cosine(entry), side is Side.RIGHT
    out = 1.0 if at_right else -1.0
    x = frieze.right if at_right else frieze.left
    front, level = frieze.face - sizes.projection, frieze.top - sizes.height
    seat = Seat(
        origin=(x, level, front if at_right else frieze.back),
        along=(0.0, 0.0, out),
        across=(out * sine, cosine, 0.0),
        through=(-out * cosine, sine, 0.0),
    )
    plane = seat.plane_on_board(_corner(frieze, x, out, on_front=False))
    cut = PlaneCut(at=End.START if at_right else End.FINISH, flat=plane)
    return _part(entry, frieze.back - front, seat, (cut,), member=3 if at_right else 2)


def _corner(frieze: FriezeFace, x: float, way: float, *, on_front: bool) -> Plane:
    """The upright plane that halves a corner of the frieze; what is kept lies before the frieze, or beside it."""
    keep = (x - way, frieze.top, frieze.face) if on_front else (x, frieze.top, frieze.face + FAR_DOWN)
    return Plane(start=(x, frieze.top, frieze.face), finish=(x + way, frieze.top, frieze.face - 1.0), way=UP, keep=keep)


def _part(entry: CrownEntry, length: float, seat: Seat, ends: tuple[Cut, ...], *, member: int) -> Part:
    bevels = (
        EdgeBevel(edge=Edge.NEAR, angle_deg=RIGHT_ANGLE_DEG - entry.spring_deg, face_short=False),
        EdgeBevel(edge=Edge.FAR, angle_deg=entry.spring_deg, face_short=False),
    )
    part = Part(
        kind=PartKind.CROWN,
        side=Side.HEAD,
        where=Where.INTERIOR,
        members=3,
        blank=PartBlank(stock=entry.stock, thickness=entry.thickness),
        cuts=(Rip(width=entry.width), Crosscut(length=length), *bevels, *ends),
        seat=seat,
    )
    return replace(part, member=member)


def _sine(entry: CrownEntry) -> float:
    return math.sin(math.radians(entry.spring_deg))


def _cosine(entry: CrownEntry) -> float:
    return math.cos(math.radians(entry.spring_deg))
