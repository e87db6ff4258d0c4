"""A board that lies along an edge of an opening's path, as it is sawn: blank, bevels of its edges, planes of its ends.

Seen on its end the board is a parallelogram as soon as it leans: its near edge lies on the frame, its far edge on the
finished wall, both off square by the flare. Its width is the slant and what both bevels need of the blank.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from jambs.geometry import Plane, Point, Vector, tangent
from jambs.length import ROUND_OFF
from jambs.parts.board.cuts import (
    Crosscut,
    Cut,
    Edge,
    EdgeBevel,
    End,
    EndBevel,
    EndRabbet,
    Miter,
    PlaneCut,
    PlaneRabbet,
    Rip,
    Taper,
)
from jambs.parts.board.part import Seat
from jambs.parts.shapes.opening_path import BoardPlanes, EndPlane, PathEdge


@dataclass(frozen=True, slots=True, kw_only=True)
class PathBoard:
    """A board of a path as sawn: its length from long point to long point, its blank's width, its cuts, its seat [in].

    ``slant``: width of its face at the start and at the finish [in].
    """

    length: float
    width: float
    slant: Point
    cuts: tuple[Cut, ...]
    seat: Seat


def sawn_board(board: BoardPlanes, inside_edge: float) -> PathBoard:
    """Saw the board of one edge; ``inside_edge``: depth of the plane in which the path lies [in]."""
    edge = board.edge
    slant = tuple(depth / math.cos(math.radians(edge.flare_deg)) for depth in edge.depths)
    lead = edge.thickness * tangent(edge.flare_deg)
    starts, finishes = _reach(board, End.START, slant[0], lead), _reach(board, End.FINISH, slant[1], lead)
    length = _length(edge, board.span, starts, finishes)
    width = max(slant) + lead
    sizes = _Blank(length=length, width=width, start_out=starts, span=board.span, thickness=edge.thickness)
    ends = [cut for end in End for cut in _end_cuts(board, end, sizes)]
    x, y = edge.corner
    along = board.lie.along
    return PathBoard(
        length=length,
        width=width,
        slant=(slant[0], slant[1]),
        cuts=(*_ripped(edge, slant[0], slant[1], lead, length), *ends),
        seat=Seat(
            origin=(x - along[0] * starts, y - along[1] * starts, inside_edge),
            along=along,
            across=board.lie.across,
            through=board.lie.through,
        ),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Blank:
    """A blank as ripped and cut to length; ``start_out``: its start → the corner of the path [in]."""

    length: float
    width: float
    start_out: float
    span: float
    thickness: float

    def place(self, end: End, from_corner: float) -> float:
        """Place along the blank of what is said from a corner of the path [in]."""
        return self.start_out + from_corner if end is End.START else self.start_out + self.span + from_corner


def _length(edge: PathEdge, span: float, starts: float, finishes: float) -> float:
    """Add what both ends reach past their corners [in], as the tape adds them: equal to the last bit."""
    return span + starts + finishes if edge.side.is_leg else span + (starts + finishes)


def _reach(board: BoardPlanes, end: End, slant: float, lead: float) -> float:
    """How far the board's long point lies past the corner of its path at one end; negative short of it [in]."""
    plane, thick = _plane(board, end), board.edge.thickness
    sign = -1.0 if end is End.START else 1.0
    corners = ((0.0, 0.0), (lead, thick), (slant, 0.0), (slant + lead, thick))
    return max(sign * plane.at(v, w) for v, w in corners)


def _plane(board: BoardPlanes, end: End) -> EndPlane:
    return board.start if end is End.START else board.finish


def _ripped(edge: PathEdge, start: float, finish: float, lead: float, length: float) -> list[Cut]:
    """Rip, taper where the wall is deeper at one end, bevel the edges where the board leans, cut to length."""
    cuts: list[Cut] = [Rip(width=max(start, finish) + lead)]
    is_tapered = edge.depths[0] != edge.depths[1]
    if not edge.flare_deg:
        tapers = [Taper(start_width=start, finish_width=finish)] if is_tapered else []
        return [*cuts, *tapers, Crosscut(length=length)]
    cuts.append(EdgeBevel(edge=Edge.NEAR, angle_deg=edge.flare_deg, face_short=False))
    if not is_tapered:
        cuts.append(EdgeBevel(edge=Edge.FAR, angle_deg=edge.flare_deg, face_short=True))
    cuts.append(Crosscut(length=length))
    if is_tapered:
        cuts.append(_bevelled_taper(edge, start + lead, finish + lead, length))
    return cuts


def _bevelled_taper(edge: PathEdge, start: float, finish: float, length: float) -> PlaneCut:
    """Lay the far edge on a finished wall that is deeper at one end: a taper, its blade tilted by the flare."""
    flare, thick = math.radians(edge.flare_deg), edge.thickness
    plane = Plane(
        start=(0.0, start, thick),
        finish=(length, finish, thick),
        way=(0.0, -math.sin(flare), -math.cos(flare)),
        keep=(length / 2, 0.0, thick),
    )
    return PlaneCut(at=Edge.FAR, flat=plane)


def _end_cuts(board: BoardPlanes, end: End, blank: _Blank) -> list[Cut]:
    """Cut one end along the plane of its corner, and the rabbet that takes the end of the other board."""
    plane = _plane(board, end)
    cut = _end_cut(plane, end, blank)
    return [*([cut] if cut else []), *_rabbet(board, end, blank)]


def _end_cut(plane: EndPlane, end: End, blank: _Blank) -> Cut | None:
    """Return the plainest cut that follows a plane: nothing, a bevel, a miter, or a compound miter."""
    inward = 1.0 if end is End.START else -1.0
    # How much longer the board gets across its face, and through its thickness.
    by_across, by_through = inward * plane.across / plane.along, inward * plane.through / plane.along
    if abs(by_across) < ROUND_OFF and abs(by_through) < ROUND_OFF:
        return None
    if abs(by_across) < ROUND_OFF:
        return EndBevel(end=end, angle_deg=_off_square(plane.through, plane.along), face_short=by_through > 0)
    if abs(by_through) < ROUND_OFF:
        long_edge = Edge.FAR if by_across > 0 else Edge.NEAR
        return Miter(end=end, angle_deg=_off_square(plane.across, plane.along), long_edge=long_edge)
    return PlaneCut(at=end, flat=_laid_out(plane, end, blank, on_back=by_through > 0))


def _off_square(over: float, along: float) -> float:
    return math.degrees(math.atan2(abs(over), abs(along)))


def _laid_out(plane: EndPlane, end: End, blank: _Blank, *, on_back: bool) -> Plane:
    """Lay a plane out on the blank: a line across the face or the back, whichever is longer, and down from there."""

    def corner(v: float, w: float) -> Vector:
        return (blank.place(end, plane.at(v, w)), v, w)

    long_w, short_w = (blank.thickness, 0.0) if on_back else (0.0, blank.thickness)
    start, down = corner(0.0, long_w), corner(0.0, short_w)
    return Plane(
        start=start,
        finish=corner(blank.width, long_w),
        way=(down[0] - start[0], 0.0, short_w - long_w),
        keep=(blank.length / 2, blank.width / 2, blank.thickness / 2),
    )


def _rabbet(board: BoardPlanes, end: End, blank: _Blank) -> list[Cut]:
    """Take out what the stopped board of a corner is let in by: from its face plane on, as deep."""
    corner = board.start_corner if end is End.START else board.finish_corner
    if not (corner.rabbet and corner.joint.runs_through(is_after=end is End.START)):
        return []
    plane = _plane(board, end)
    if abs(plane.across / plane.along) < ROUND_OFF and abs(plane.through / plane.along) < ROUND_OFF:
        return [EndRabbet(end=end, along=plane.past, depth=corner.rabbet)]
    face = EndPlane(along=plane.along, across=plane.across, through=plane.through, past=0.0)
    on_back = (plane.through / plane.along < 0) is (end is End.FINISH)
    return [PlaneRabbet(end=end, flat=_laid_out(face, end, blank, on_back=on_back), depth=corner.rabbet)]
