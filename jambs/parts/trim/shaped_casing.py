"""Casing round an opening that is no rectangle: one board along every edge, its ends on the bisectors of the corners.

As round a rectangle the near edge of every piece is its inner edge and its face the one people see; inside the pieces
run clockwise as seen from inside, outside counter-clockwise. A square corner of leg and level board is butted where
the trim says so, every other one is mitered at half of what the path turns there.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from jambs.geometry import Point, tangent
from jambs.job.models.arc_outset import arc_outside, backs_of, stands_on
from jambs.job.models.fields import Size
from jambs.job.models.openings import Opening
from jambs.job.models.path import corner_turn_deg, is_arched, size_over_all
from jambs.job.models.path_edge import FrameEdge, FramePath
from jambs.job.models.trim import CasingEntry, Corner
from jambs.length import ROUND_OFF
from jambs.parts.board.cuts import BoardSizes, Crosscut, Cut, Edge, End, EndBevel, Miter, PlaneCut, Rip, compound_miter
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part, PartBlank, Seat
from jambs.parts.board.touches import BackBevel
from jambs.parts.jambs.shaped_jambs import PRINTED, SQUARE_DEG
from jambs.parts.shapes.arch import Rack
from jambs.parts.trim.arched_casing import curved_casing
from jambs.parts.trim.casing import CasedOpening
from jambs.place.frame_path import path_at
from jambs.sides import Side


@dataclass(frozen=True, slots=True, kw_only=True)
class _EndOf:
    """How a piece ends at a corner: how far past it the long point lies [in], and its miter and bevel [degrees]."""

    past: float
    miter_deg: float = 0.0
    slope_deg: float = 0.0

    def cuts(self, end: End, board: BoardSizes) -> tuple[Cut, ...]:
        if self.miter_deg and self.slope_deg:
            miter, slope = self.miter_deg, self.slope_deg
            return (compound_miter(board, end, miter_deg=miter, bevel_deg=slope, long_edge=Edge.FAR),)
        if self.miter_deg:
            return (Miter(end=end, angle_deg=self.miter_deg, long_edge=Edge.FAR),)
        return (EndBevel(end=end, angle_deg=self.slope_deg),) if self.slope_deg else ()


def cased_path(opening: Opening, cased: CasedOpening) -> FramePath:
    """Return the path of the casing's inner edges."""
    return path_at(opening, left=cased.left, right=cased.right, bottom=cased.bottom, top=cased.top)


def shaped_casing(
    opening: Opening, cased: CasedOpening, entry: CasingEntry, where: Where, rack: Rack
) -> tuple[Part, ...]:
    """Make the casing of one side of the wall; without a bottom the legs stand on a stool, a sill or a floor."""
    path = cased_path(opening, cased)
    pieces = [
        _piece(path, i, cased, entry, where)
        for i, edge in enumerate(path)
        if (edge.side is not Side.SILL or cased.has_bottom) and edge.center is None
    ]
    if is_arched(path):
        pieces += curved_casing(opening, path, cased, entry, where, rack)
    return tuple(sorted(pieces, key=lambda part: (PRINTED.index(part.side), part.member)))


def casing_box(opening: Opening, cased: CasedOpening, entry: CasingEntry) -> Size:
    """Return the width × height of all casing over its outer edges [in]: on a sloping sill down to its face's feet."""
    fallen = cased.bottom - entry.thickness * tangent(cased.slope_deg)
    cased = replace(cased, bottom=fallen)
    out, inner = entry.width, cased_path(opening, cased)
    if any(stands_on(inner, i) for i in range(len(inner))):
        return size_over_all(backs_of(inner, out))
    path = path_at(
        opening,
        left=cased.left - out,
        right=cased.right + out,
        bottom=cased.bottom - (out if cased.has_bottom else 0.0),
        top=cased.top + out,
    )
    return size_over_all(path)


def _piece(path: FramePath, i: int, cased: CasedOpening, entry: CasingEntry, where: Where) -> Part:
    edge, inside = path[i], where is Where.INTERIOR
    corners = (i, (i + 1) % len(path))
    # Outside a piece runs the other way, so it starts where its edge finishes.
    start, finish = (_end(path, i, corner, cased, entry) for corner in (corners if inside else corners[::-1]))
    sign, out_of_wall = (1.0, -1.0) if inside else (-1.0, 1.0)
    along = (sign * edge.way[0] + 0.0, sign * edge.way[1] + 0.0, 0.0)
    x, y = edge.start if inside else edge.finish
    length = start.past + edge.length + finish.past
    board = BoardSizes(
        length=length,
        width=entry.width,
        thickness=entry.thickness,
        start_width=entry.width,
        finish_width=entry.width,
    )
    ends = (*start.cuts(End.START, board), *finish.cuts(End.FINISH, board))
    is_mitered = any(isinstance(cut, Miter | PlaneCut) for cut in ends)
    return Part(
        kind=PartKind.CASING,
        side=edge.side,
        where=where,
        member=edge.run,
        runs=edge.runs,
        blank=PartBlank(stock=entry.stock, thickness=entry.thickness),
        cuts=(Rip(width=entry.width), Crosscut(length=length), *ends),
        touches=(BackBevel(angle_deg=entry.back_bevel_deg),) if is_mitered and entry.back_bevel_deg else (),
        seat=Seat(
            origin=(x - along[0] * start.past, y - along[1] * start.past, cased.back + out_of_wall * entry.thickness),
            along=along,
            across=(*edge.outward, 0.0),
            through=(0.0, 0.0, -out_of_wall),
        ),
    )


def _end(path: FramePath, i: int, corner: int, cased: CasedOpening, entry: CasingEntry) -> _EndOf:
    """How the piece of edge ``i`` ends at one of its corners."""
    sides = (path[corner - 1].side, path[corner].side)
    if Side.SILL in sides and not cased.has_bottom:
        drop = _drop_at_right(cased) if path[corner].side is Side.SILL else 0.0
        if not path[i].side.is_leg:
            return _on_level(path[i], entry, cased.slope_deg, drop)
        # The face of a leg on a sloping sill reaches lower than its back.
        return _EndOf(past=entry.thickness * tangent(cased.slope_deg) + drop, slope_deg=cased.slope_deg)
    if path[corner - 1].center or path[corner].center:
        if stands_on(path, corner):
            return _under_arc(path, corner, entry, is_leg=path[i].side.is_leg)
        return _at_spring(path, corner, entry)
    turn = corner_turn_deg(path, corner)
    if entry.corner is Corner.BUTT and sides[0] is not sides[1] and abs(turn - SQUARE_DEG) < ROUND_OFF:
        return _EndOf(past=0.0 if path[i].side.is_leg else entry.width + entry.overhang)
    return _EndOf(past=entry.width * tangent(turn / 2), miter_deg=turn / 2)


def _drop_at_right(cased: CasedOpening) -> float:
    """How much farther a sill has fallen where the right end of the casing stands on it [in]."""
    return 0.0 if cased.right_bottom is None else cased.bottom - cased.right_bottom


def _on_level(edge: FrameEdge, entry: CasingEntry, slope_deg: float, drop: float) -> _EndOf:
    """How a slope ends that comes down on a stool or a sill: level, its outer edge the longer.

    On a sill that falls outward its face is the longer too, by the sill's slope through its thickness.
    """
    up, along = abs(edge.way[1]), abs(edge.way[0])
    past = (entry.width * along + entry.thickness * tangent(slope_deg) + drop) / up
    return _EndOf(past=past, miter_deg=math.degrees(math.atan2(along, up)), slope_deg=slope_deg)


def _outer_corner(path: FramePath, corner: int, entry: CasingEntry) -> Point:
    """Where the outer edge of the casing along an arc ends, at the corner where edge ``corner`` starts."""
    if path[corner].center:
        return arc_outside(path, corner, entry.width).start
    return arc_outside(path, (corner - 1) % len(path), entry.width).finish


def _at_spring(path: FramePath, corner: int, entry: CasingEntry) -> _EndOf:
    """How a leg ends under an arch: on the line from the inner corner of arc and leg to the outer one."""
    past = _outer_corner(path, corner, entry)[1] - path[corner].start[1]
    if abs(past) < ROUND_OFF:
        return _EndOf(past=0.0)
    return _EndOf(past=past, miter_deg=math.degrees(math.atan2(past, entry.width)))


def _under_arc(path: FramePath, corner: int, entry: CasingEntry, *, is_leg: bool) -> _EndOf:
    """How the board under an arc ends: square, flush with the edge of what stands on it; a level one may run past."""
    overhang = 0.0 if is_leg else entry.overhang
    return _EndOf(past=math.dist(_outer_corner(path, corner, entry), path[corner].start) + overhang)
