"""The boards round an opening that is no rectangle: extension jambs inside and outside, and its buck.

Each lies along an edge of the opening's path, between the planes of its corners (``opening_path.py``). Outside the same
path is walked the other way round, seen from outside; so no board is mirrored.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from jambs.geometry import Point, Vector, tangent
from jambs.job.models.exterior_trim import ExteriorTrim
from jambs.job.models.layers import BuckKind
from jambs.job.models.openings import Opening
from jambs.job.models.path import corner_turn_deg, is_arched
from jambs.job.models.path_edge import FrameEdge, FramePath
from jambs.job.models.side_lines import TURNED
from jambs.job.models.straight_round import straight_round
from jambs.job.models.trim import InteriorTrim, Joint
from jambs.length import ROUND_OFF
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part, PartBlank, Seat
from jambs.parts.board.touches import Scribe
from jambs.parts.jambs.arched_jambs import arched_jamb
from jambs.parts.jambs.flat_jambs import flat_path, hold_metal_round, hold_round
from jambs.parts.kit.kit import FittedSide, JambFrame
from jambs.parts.shapes.arch import Rack
from jambs.parts.shapes.arched_jamb import ArchedJamb
from jambs.parts.shapes.clear import ClearOpening
from jambs.parts.shapes.flat_segments import FlatPath
from jambs.parts.shapes.opening_path import BoardPlanes, CornerJoint, PathEdge, path_boards
from jambs.parts.shapes.path_cuts import sawn_board
from jambs.parts.shapes.stand_ins import straight_path
from jambs.place.flares import SQUARE, Flares
from jambs.place.frame_path import path_at, rough_path
from jambs.place.placement import Placement
from jambs.sides import Side

SQUARE_DEG = 90.0
MITERED_UNDER_DEG = 60.0
"""A corner that turns by less takes less tilt of the blade mitered than butted, turn/2 against 90° less turn."""
PRINTED = (Side.HEAD, Side.LEFT, Side.RIGHT, Side.SILL)
"""The order in which the parts of an opening are listed; the boards of one side from left to right."""


def clear_path(opening: Opening, clear: ClearOpening) -> FramePath:
    """Return the path of an opening's clear opening."""
    return path_at(opening, left=clear.left, right=clear.right, bottom=clear.bottom, top=clear.top)


def shaped_jambs(
    placement: Placement, frame: JambFrame, trim: InteriorTrim, flares: Flares, rack: Rack
) -> tuple[Part, ...]:
    """Make the interior extension jambs, one along every edge; on a stool or a floor there is none at the sill."""
    opening, has_bottom = placement.opening, trim.style.has_bottom
    path = clear_path(opening, frame.clear)
    flat = flat_path(opening, path, frame, flares)
    if flat:
        hold_round(opening, path, flat, trim.jamb.thickness, is_outside=False)
        path = flat.path
    leaned = flat.flares if flat else {}
    straight = straight_path(path, trim.jamb.thickness)
    edges = tuple(
        PathEdge(
            side=one.edge.side,
            run=one.edge.run,
            runs=one.edge.runs,
            corner=one.edge.start,
            flare_deg=leaned.get(-1 if one.at is None else one.at, flares.at(one.edge.side)),
            joint=one.joint or _joint(path, one.at or 0, trim.jamb.joint, has_bottom=has_bottom),
            rabbet=0.0 if one.joint else _rabbet(path, one.at or 0, trim, has_bottom=has_bottom),
            thickness=trim.jamb.thickness if one.at is not None else one.thickness,
            depths=_depths(frame.sides, one.edge, frame.proud),
            is_board=one.at is not None and (one.edge.side is not Side.SILL or has_bottom),
        )
        for one in straight
    )
    blank = PartBlank(stock=trim.jamb.stock, thickness=trim.jamb.thickness)
    boards = path_boards(edges) if edges else ()
    parts = [
        _part(board, frame.edge, PartKind.EXTENSION_JAMB, Where.INTERIOR, blank, _scribed(frame.sides, board))
        for board in boards
    ]
    if is_arched(path):
        jamb = ArchedJamb(
            opening=placement.opening,
            kind=PartKind.EXTENSION_JAMB,
            where=Where.INTERIOR,
            stock=trim.jamb.stock,
            thickness=trim.jamb.thickness,
            width=frame.sides[Side.HEAD].greatest + frame.proud,
            edge=frame.edge,
            curved=trim.jamb.curved,
            scribe=frame.sides[Side.HEAD].scribe_allowance,
        )
        parts += arched_jamb(jamb, path, rack)
    return _in_order(parts)


def _depths(sides: dict[Side, FittedSide], edge: FrameEdge, more: float) -> Point:
    """Return the depths where an edge starts and where it finishes, and ``more`` [in]; of one without depths nothing.

    What stands in for an arc has that of all arcs.
    """
    if edge.side not in sides:
        return (0.0, 0.0)
    fitted = sides[edge.side].run(edge.run)
    first, last = fitted.start_depth + more, fitted.finish_depth + more
    return (last, first) if edge.side in TURNED else (first, last)


def _scribed(sides: dict[Side, FittedSide], board: BoardPlanes) -> float:
    """How much is scribed off the board of an edge to fit it to a crooked wall [in]."""
    return sides[board.edge.side].run(board.edge.run).scribe_allowance


def _joint(path: FramePath, i: int, joint: Joint, *, has_bottom: bool) -> CornerJoint:
    """How the boards meet where edge ``i`` starts: as the trim says where a butt takes less tilt than a miter."""
    before, after = path[i - 1], path[i]
    if not has_bottom and Side.SILL in (before.side, after.side):
        return _sill_runs_through(after)
    if joint is Joint.MITER or before.side is after.side or corner_turn_deg(path, i) < MITERED_UNDER_DEG:
        return CornerJoint.MITER
    if not (before.side.is_leg or after.side.is_leg):
        return _sill_runs_through(after)
    if joint is Joint.LEGS_THROUGH:
        return CornerJoint.AFTER_RUNS_THROUGH if after.side.is_leg else CornerJoint.BEFORE_RUNS_THROUGH
    return _level_runs_through(after)


def _sill_runs_through(after: FrameEdge) -> CornerJoint:
    """The board of the sill covers the end of a slope that comes down on it."""
    return CornerJoint.AFTER_RUNS_THROUGH if after.side is Side.SILL else CornerJoint.BEFORE_RUNS_THROUGH


def _level_runs_through(after: FrameEdge) -> CornerJoint:
    """The board of head or sill covers the end of the leg."""
    return CornerJoint.BEFORE_RUNS_THROUGH if after.side.is_leg else CornerJoint.AFTER_RUNS_THROUGH


def _rabbet(path: FramePath, i: int, trim: InteriorTrim, *, has_bottom: bool) -> float:
    """Depth of the rabbet where edge ``i`` starts [in]: in square corners only; on a slant it would take the point."""
    before, after = path[i - 1], path[i]
    at_floor = not has_bottom and Side.SILL in (before.side, after.side)
    is_square = before.side is not after.side and abs(corner_turn_deg(path, i) - SQUARE_DEG) < ROUND_OFF
    if trim.jamb.joint is not Joint.RABBET or at_floor or not is_square:
        return 0.0
    return trim.jamb.rabbet_depth or 0.0


def _part(
    board: BoardPlanes, edge_depth: float, kind: PartKind, where: Where, blank: PartBlank, scribe: float = 0.0
) -> Part:
    sawn = sawn_board(board, edge_depth)
    return Part(
        kind=kind,
        side=board.edge.side,
        where=where,
        member=board.edge.run,
        runs=board.edge.runs,
        blank=blank,
        cuts=sawn.cuts,
        touches=(Scribe(most=scribe),) if scribe else (),
        seat=sawn.seat,
    )


def _in_order(parts: list[Part]) -> tuple[Part, ...]:
    return tuple(sorted(parts, key=lambda part: (PRINTED.index(part.side), part.member)))


# ---- outside, and what carries the window


def shaped_exterior_jambs(
    placement: Placement,
    clear: ClearOpening,
    sides: dict[Side, FittedSide],
    trim: ExteriorTrim,
    slope_deg: float,
    rack: Rack,
    flares: Flares = SQUARE,
    flat: FlatPath | None = None,
) -> tuple[Part, ...]:
    """Make the exterior extension jambs; ``clear.bottom``: top of the sill at the frame's outside edge [in].

    ``flat``: their path where they follow arcs in flat segments.

    The sill is an edge without a board that leans out by its slope; without a sill the boards go all round where the
    lower corners are cut, and else end at the bottom of the clear opening, as legs do.
    """
    path, start = jambs_begin(placement.opening, clear, trim, slope_deg), placement.outside_edge + trim.sealant_joint
    if flat and trim.returns:
        hold_metal_round(placement.opening, path, flat, trim.frame_reveal)
    elif flat:
        hold_round(placement.opening, path, flat, trim.jamb.thickness, is_outside=True)
    path = flat.path if flat else path
    leans = _outside_leans(path, flat, slope_deg, flares)
    edges = _outside_edges(path, placement.opening, sides, trim, leans)
    blank = PartBlank(stock=trim.jamb.stock, thickness=trim.jamb.thickness)
    laid = path_boards(edges) if edges else ()
    boards = [
        _part(board, -start, PartKind.EXTERIOR_JAMB, Where.EXTERIOR, blank, _scribed(sides, board)) for board in laid
    ]
    parts = [replace(part, seat=_turned_seat(part.seat)) for part in boards]
    if is_arched(path):
        width, opening = sides[Side.HEAD].greatest - trim.sealant_joint, placement.opening
        stands = opening.shape is not None and opening.shape.is_cut_below(opening.frame)
        rise = width * tangent(slope_deg) if stands else 0.0
        jamb = ArchedJamb(
            opening=placement.opening,
            kind=PartKind.EXTERIOR_JAMB,
            where=Where.EXTERIOR,
            stock=trim.jamb.stock,
            thickness=trim.jamb.thickness,
            width=width,
            edge=start,
            curved=trim.jamb.curved,
            scribe=sides[Side.HEAD].scribe_allowance,
            rise=rise,
        )
        far_edge = replace(clear, bottom=clear.bottom - rise)
        parts += arched_jamb(jamb, jambs_begin(opening, far_edge, trim, slope_deg), rack)
    return _in_order(parts)


def jambs_begin(opening: Opening, clear: ClearOpening, trim: ExteriorTrim, slope_deg: float) -> FramePath:
    """Return the clear opening's path where exterior jambs begin: a sealant joint out, to which the sill has fallen.

    ``clear.bottom``: top of the sill at the frame's outside edge [in].
    """
    fallen = trim.sealant_joint * tangent(slope_deg)
    return clear_path(opening, replace(clear, bottom=clear.bottom - fallen))


def _outside_leans(path: FramePath, flat: FlatPath | None, slope_deg: float, flares: Flares) -> list[float]:
    """Return how far what lies along each edge leans out: a sill by its slope, a flat segment by its own angle."""
    own = flat.flares if flat else {}
    return [own.get(i, slope_deg if edge.side is Side.SILL else flares.at(edge.side)) for i, edge in enumerate(path)]


def _outside_edges(
    path: FramePath, opening: Opening, sides: dict[Side, FittedSide], trim: ExteriorTrim, leans: Sequence[float]
) -> tuple[PathEdge, ...]:
    """Return the path's straight edges as they are walked outside, the other way round.

    ``leans``: of what lies along each edge of the path [degrees].
    """
    joint = trim.sealant_joint
    all_round = goes_all_round(opening, trim)
    straight = straight_path(path, trim.jamb.thickness)
    return tuple(
        PathEdge(
            side=one.edge.side,
            run=one.edge.run,
            runs=one.edge.runs,
            corner=_seen_from_outside(one.edge.finish),
            flare_deg=0.0 if one.at is None else leans[one.at],
            # Walked the other way round, the edge starts at the corner where the next one does.
            joint=_turned(after.joint or _joint(path, after.at or 0, Joint.HEAD_OVER_LEGS, has_bottom=all_round)),
            thickness=trim.jamb.thickness if one.at is not None else one.thickness,
            depths=_depths(sides, one.edge, -joint)[::-1],
            is_board=one.at is not None and (one.edge.side is not Side.SILL or all_round),
        )
        for one, after in reversed([*zip(straight, straight[1:] + straight[:1], strict=True)])
    )


def goes_all_round(opening: Opening, trim: ExteriorTrim) -> bool:
    """Say whether exterior jambs and casing go all round: where no two legs stand upright, and on no sill."""
    return trim.sill is None and opening.shape is not None and opening.shape.is_cut_below(opening.frame)


def _seen_from_outside(point: Point) -> Point:
    return (-point[0], point[1])


def _turned(joint: CornerJoint) -> CornerJoint:
    """The same joint of a corner, walked the other way round."""
    return {
        CornerJoint.MITER: CornerJoint.MITER,
        CornerJoint.BEFORE_RUNS_THROUGH: CornerJoint.AFTER_RUNS_THROUGH,
        CornerJoint.AFTER_RUNS_THROUGH: CornerJoint.BEFORE_RUNS_THROUGH,
    }[joint]


def _turned_seat(seat: Seat) -> Seat:
    """Turn a seat half round about the upright: from the wall seen from outside to the wall seen from inside."""

    def turn(way: Vector) -> Vector:
        return (-way[0] + 0.0, way[1], -way[2] + 0.0)

    return Seat(origin=turn(seat.origin), along=turn(seat.along), across=turn(seat.across), through=turn(seat.through))


def shaped_buck(placement: Placement) -> tuple[Part, ...]:
    """Make the boards of the buck round the rough opening, opening faces inward, edges at the flange plane.

    Round an arc they are straight and touch it with their middles.
    """
    buck = placement.buck
    if buck is None:
        return ()
    path = straight_round(rough_path(placement, buck.set_back))
    depth = buck.outer - buck.inner
    edges = tuple(
        PathEdge(
            side=edge.side,
            run=edge.run,
            runs=edge.runs,
            corner=edge.start,
            joint=_joint(path, i, Joint.HEAD_OVER_LEGS, has_bottom=True),
            thickness=buck.thickness,
            depths=(depth, depth),
        )
        for i, edge in enumerate(path)
    )
    kind = PartKind.LINER_BUCK if buck.kind is BuckKind.LINER else PartKind.OUTBOARD_BUCK
    blank = PartBlank(stock=buck.stock, thickness=buck.thickness)
    return _in_order([_part(board, buck.outer, kind, Where.BUCK, blank) for board in path_boards(edges)])


def jamb_corners(
    opening: Opening, clear: ClearOpening, joint: Joint, *, has_bottom: bool
) -> tuple[tuple[FrameEdge, FrameEdge, CornerJoint], ...]:
    """Return how straight boards meet: the edge before a corner, the one after it, and which covers the other's end."""
    path = clear_path(opening, clear)
    return tuple(
        (path[i - 1], edge, _joint(path, i, joint, has_bottom=has_bottom))
        for i, edge in enumerate(path)
        if edge.center is None and path[i - 1].center is None
        if has_bottom or Side.SILL not in (edge.side, path[i - 1].side)
    )
